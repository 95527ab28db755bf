#include "tests/app/recovery_child.h"

#include "app/window/recovery.h"
#include "core/exchange/plan_file.h"

#include <QCoreApplication>
#include <QTimer>

#include <unistd.h>

#include <chrono>
#include <map>
#include <random>
#include <string>

namespace sump::testing {

namespace {

/// Written whole and at once: nothing stays in a buffer when the process is killed.
void tell(const std::string& line) {
  const ssize_t written = ::write(STDOUT_FILENO, line.data(), line.size());
  if (written != static_cast<ssize_t>(line.size())) ::_exit(3);
}

long long millisecondsNow() {
  using namespace std::chrono;
  return duration_cast<std::chrono::milliseconds>(steady_clock::now().time_since_epoch()).count();
}

class Editor {
public:
  Editor(const QString& file, unsigned seed) : file_(file), rng_(seed), recovery_(document_) {
    document_.open(file);
    QObject::connect(&recovery_, &Recovery::written, &recovery_, [this](Revision revision) {
      tell("K " + std::to_string(edits_.at(revision)) + "\n");
    });
    QObject::connect(&timer_, &QTimer::timeout, &timer_, [this] { edit(); });
    timer_.setSingleShot(true);
    timer_.start(0);
  }

private:
  void edit() {
    Plan plan = document_.plan();
    plan.project.revision = std::to_string(++count_);
    plan.spots.append({"SP-" + std::to_string(count_), {count_ * 0.01, 1}, metres(30)});
    document_.commit("Edit", std::move(plan));
    edits_[document_.committedRevision()] = count_;
    tell("E " + std::to_string(count_) + " " + std::to_string(millisecondsNow()) + "\n");
    if (rng_() % 40 == 0) {
      document_.save(file_);
      tell("S " + std::to_string(count_) + "\n");
    }
    // Bursts, and pauses in which everything has to come to rest on disk.
    const auto pause = rng_() % 15 == 0 ? 400 + rng_() % 400 : 5 + rng_() % 40;
    timer_.start(static_cast<int>(pause));
  }

  QString file_;
  std::mt19937 rng_;
  int count_ = 0;
  std::map<Revision, int> edits_;
  Document document_{builtinCatalog()};
  Recovery recovery_;
  QTimer timer_;
};

} // namespace

int editUntilKilled(int argc, char** argv) {
  if (argc < 4) return 2;
  QCoreApplication application(argc, argv);
  const Editor editor(QString::fromLocal8Bit(argv[2]), static_cast<unsigned>(std::stoul(argv[3])));
  return QCoreApplication::exec();
}

} // namespace sump::testing
