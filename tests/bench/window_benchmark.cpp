// Prints how long the frames of the real window take while a vault is dragged by mouse events: in a
// small generated plan (2 vaults, 20 runs) and in one of 200 vaults and 2,000 runs. The pointer
// moves every 16 ms, as on a screen of 60 Hz. Nothing here passes or fails; the aim is that 99 % of
// the frames take at most 16 ms of the window's thread.
//
// A frame is the processor time of all that the window's thread does between two moves of the
// pointer: the move itself, taking over a review that has arrived, panels, lists and painting.
// (Time on the wall would measure what else the machine does.) Paint is the part of it in the
// canvas's paint event. Answer is the time from a move until the review of that state has arrived
// (the newest wins, so most states of a large plan get none), study the work behind it on a thread
// with nothing else to do.

#include "app/window/main_window.h"
#include "app/window/resources.h"
#include "tests/support/generated_plan.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QMouseEvent>
#include <QSettings>
#include <QTemporaryDir>
#include <QThread>
#include <QtTest/QTest>

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <map>

namespace {

using namespace sump;

constexpr int kFrames = 300;
constexpr qint64 kFrameNs = 16'000'000;
constexpr int kStudies = 10;

double milliseconds(qint64 ns) {
  return static_cast<double>(ns) / 1e6;
}

/// Nanoseconds that this thread has had the processor for.
qint64 threadTime() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return qint64(now.tv_sec) * 1'000'000'000 + now.tv_nsec;
}

/// Sums the time of all events, and of the canvas's paint events within them.
class TimedApplication : public QApplication {
public:
  using QApplication::QApplication;
  bool notify(QObject* receiver, QEvent* event) override {
    const bool paint = event->type() == QEvent::Paint && receiver->objectName() == "canvas";
    if (depth_ > 0 && !paint) return QApplication::notify(receiver, event);
    const qint64 before = threadTime();
    ++depth_;
    const bool used = QApplication::notify(receiver, event);
    --depth_;
    const qint64 took = threadTime() - before;
    if (depth_ == 0) busy_ += took;
    if (paint) painted_ += took;
    return used;
  }
  qint64 takeBusy() { return std::exchange(busy_, 0); }
  qint64 takePainted() { return std::exchange(painted_, 0); }

private:
  int depth_ = 0;
  qint64 busy_ = 0, painted_ = 0;
};

struct Times {
  std::vector<double> frames, paints, answers, studies;
};

double share(std::vector<double> times, double part) {
  if (times.empty()) return 0;
  std::sort(times.begin(), times.end());
  const auto last = static_cast<double>(times.size() - 1);
  return times[static_cast<std::size_t>(part * last + 0.5)];
}

void moveTo(Canvas& canvas, QPointF at) {
  QMouseEvent move(QEvent::MouseMove, at, canvas.mapToGlobal(at), Qt::NoButton, Qt::LeftButton,
                   Qt::NoModifier);
  QCoreApplication::sendEvent(&canvas, &move);
}

/// A vault in the middle of the plan and a place on it that no line or manway covers.
QPointF grip(Canvas& canvas, const Vault& vault) {
  const double reach = kReachPixels / canvas.view().scale();
  for (int i = 1; i < 40; ++i) {
    for (int k = 1; k < 40; ++k) {
      const Point2 local{inMetres(vault.length) * (i / 40.0 - 0.5),
                         inMetres(vault.width) * (k / 40.0 - 0.5)};
      const Point2 site = vault.frame().toSite(local);
      if (canvas.scene()->objectAt(site, reach) == vault.id) return canvas.view().toScreen(site);
    }
  }
  std::puts("the vault is covered: the drag moves something else");
  return canvas.view().toScreen(vault.centre);
}

void drag(TimedApplication& app, MainWindow& window, QPointF from, Times& times) {
  Canvas& canvas = window.canvas();
  Document& document = window.document();
  QElapsedTimer clock;
  clock.start();
  std::map<Revision, qint64> asked;
  const auto connection =
      QObject::connect(&document, &Document::reviewArrived, [&document, &asked, &clock, &times] {
        const auto found = asked.find(document.reviewed()->revision);
        if (found != asked.end())
          times.answers.push_back(milliseconds(clock.nsecsElapsed() - found->second));
      });
  QTest::mousePress(&canvas, Qt::LeftButton, Qt::NoModifier, from.toPoint());
  app.takeBusy();
  app.takePainted();
  for (int i = 0; i < kFrames; ++i) {
    const qint64 next = clock.nsecsElapsed() + kFrameNs;
    const double turn = 2 * kPi * i / 100;
    moveTo(canvas, from + QPointF(60 * std::sin(turn) + 0.31 * i, 40 - 40 * std::cos(turn)));
    asked[document.revision()] = clock.nsecsElapsed();
    do {
      QCoreApplication::processEvents();
      QThread::usleep(200);
    } while (clock.nsecsElapsed() < next);
    times.frames.push_back(milliseconds(app.takeBusy()));
    times.paints.push_back(milliseconds(app.takePainted()));
  }
  QTest::mouseRelease(&canvas, Qt::LeftButton, Qt::NoModifier, from.toPoint());
  QObject::disconnect(connection);
}

void study(const Document& document, Times& times) {
  for (int i = 0; i < kStudies; ++i) {
    const qint64 before = threadTime();
    const ReviewedPtr reviewed = reviewNow(document.plan(), 1, document.catalog());
    times.studies.push_back(milliseconds(threadTime() - before));
    if (reviewed->marks.empty()) std::puts("nothing was drawn");
  }
}

void settle(const Document& document) {
  const bool done = QTest::qWaitFor([&document] { return !document.isReviewStale(); }, 60000);
  if (!done) std::puts("no review within a minute");
}

Times measure(TimedApplication& app, int runs, bool close) {
  Talk talk;
  MainWindow window(talk);
  window.resize(1600, 1000);
  window.show();
  Document& document = window.document();
  document.startNew(test::generatedPlan(runs));
  settle(document);
  QCoreApplication::processEvents();
  const Vault vault = document.plan().vaults[document.plan().vaults.size() / 2];
  if (close) window.canvas().lookAt({vault.id}, vault.centre);
  QCoreApplication::processEvents();
  Times times;
  drag(app, window, grip(window.canvas(), vault), times);
  settle(document);
  study(document, times);
  std::printf("%5zu runs %4zu vaults, %s: %zu frames, %zu reviews arrived\n",
              document.plan().runs.size(), document.plan().vaults.size(),
              close ? "one vault in view" : "whole site in view", times.frames.size(),
              times.answers.size());
  return times;
}

void print(const char* what, const std::vector<double>& times, const std::vector<double>& small) {
  std::printf("  %-6s", what);
  for (const auto& [name, part] :
       {std::pair{"p50", 0.5}, {"p90", 0.9}, {"p99", 0.99}, {"max", 1.0}}) {
    const double base = share(small, part);
    std::printf("  %s %8.2f ms (%5.1f x)", name, share(times, part),
                base > 0 ? share(times, part) / base : 0);
  }
  std::puts("");
  std::fflush(stdout);
}

void printAll(const Times& times, const Times& small) {
  print("frame", times.frames, small.frames);
  print("paint", times.paints, small.paints);
  print("answer", times.answers, small.answers);
  print("study", times.studies, small.studies);
}

} // namespace

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QTemporaryDir folder; // the user's settings and recovery files are left alone
  QSettings::setPath(QSettings::NativeFormat, QSettings::UserScope, folder.path());
  qputenv("XDG_STATE_HOME", folder.path().toLocal8Bit());
  TimedApplication app(argc, argv);
  nameApplication();
  std::puts("in brackets: times the small plan's");
  const Times small = measure(app, 20, false);
  printAll(small, small);
  printAll(measure(app, 2000, false), small);
  printAll(measure(app, 2000, true), small);
}
