// Nothing is lost: by a killed process, by a full disk, by another program at the same file.

#include "app/window/recovery_dialog.h"
#include "core/exchange/plan_file.h"
#include "tests/app/recovery_child.h"
#include "tests/app/window_fixture.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFile>
#include <QLabel>
#include <QProcess>
#include <QPushButton>
#include <QSignalSpy>

#include <sys/resource.h>

#include <chrono>
#include <csignal>
#include <filesystem>
#include <random>

namespace sump {
namespace {

using ::testing::Test;

std::filesystem::path pathOf(const QString& path) {
  return std::filesystem::path(path.toStdString());
}

Plan titledPlan(Plan plan, const char* title) {
  plan.project.title = title;
  return plan;
}

QStringList recoveryFiles() {
  return QDir(recoveryFolder()).entryList({"*.sump-recovery"}, QDir::Files);
}

class RecoveryTest : public testing::WindowTest {
protected:
  bool kept() {
    return QTest::qWaitFor([this] { return window->recovery().state().startsWith("Kept"); },
                           10'000);
  }
  void edit(const char* title) {
    ASSERT_FALSE(document().commit("Edit", titledPlan(plan(), title)));
  }
  QString saved(const char* name) {
    const QString path = folder.filePath(name);
    savePlanFile(titledPlan({}, "as saved"), pathOf(path));
    return path;
  }
};

TEST_F(RecoveryTest, EveryChangeIsKeptAndASaveEndsIt) {
  EXPECT_TRUE(recoveryFiles().isEmpty());
  edit("first");
  ASSERT_TRUE(kept());
  ASSERT_EQ(recoveryFiles().size(), 1);
  const QString file = QDir(recoveryFolder()).filePath(recoveryFiles()[0]);
  EXPECT_TRUE(readRecovery(file).plan == plan());
  EXPECT_TRUE(readRecovery(file).head.original.isEmpty());
  edit("second");
  ASSERT_TRUE(
      QTest::qWaitFor([&] { return readRecovery(file).plan.project.title == "second"; }, 10'000));
  talk.saveFile = folder.filePath("plan.sump");
  ASSERT_TRUE(window->files().save());
  EXPECT_TRUE(QTest::qWaitFor([] { return recoveryFiles().isEmpty(); }, 10'000));
  document().undo();
  ASSERT_TRUE(QTest::qWaitFor([] { return !recoveryFiles().isEmpty(); }, 10'000));
  document().redo(); // the saved state again
  EXPECT_TRUE(QTest::qWaitFor([] { return recoveryFiles().isEmpty(); }, 10'000));
}

TEST_F(RecoveryTest, ALivingWindowsFileIsNotOffered) {
  edit("mine");
  ASSERT_TRUE(kept());
  EXPECT_TRUE(leftovers(recoveryFolder()).empty());
  talk.saveAnswer = SaveAnswer::Discard;
  ASSERT_TRUE(window->close());
  window.reset();
  EXPECT_TRUE(QDir(recoveryFolder()).isEmpty()) << "a window that was closed leaves nothing";
}

TEST_F(RecoveryTest, ALostWindowIsResumedModifiedAndUnderItsOwnFile) {
  const QString path = saved("depot.sump");
  open(path);
  edit("lost");
  ASSERT_TRUE(kept());
  window.reset(); // without closing: as a crash, but for the process
  std::vector<Leftover> found = leftovers(recoveryFolder());
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].head.title, "depot.sump");
  EXPECT_EQ(found[0].head.original, path);
  EXPECT_LT(found[0].head.written.secsTo(QDateTime::currentDateTime()), 60);
  EXPECT_TRUE(leftovers(recoveryFolder()).empty()) << "offered once while it is held";

  MainWindow again(talk);
  ASSERT_TRUE(again.resume(std::move(found[0].slot)));
  EXPECT_EQ(again.document().plan().project.title, "lost");
  EXPECT_EQ(again.document().filePath(), path);
  EXPECT_TRUE(again.document().isModified());
  EXPECT_FALSE(again.document().canUndo());
  ASSERT_TRUE(QTest::qWaitFor([&] { return again.recovery().state().startsWith("Kept"); }, 10'000));
  EXPECT_EQ(recoveryFiles().size(), 1) << "its own file in place of the old one";
  ASSERT_TRUE(again.files().save());
  EXPECT_EQ(readPlanFile(pathOf(path)).project.title, "lost");
}

TEST_F(RecoveryTest, AFileThatCannotBeUsedIsToldAndStays) {
  QDir().mkpath(recoveryFolder());
  const QString file = recoveryFolder() + "/broken.sump-recovery";
  QFile out(file);
  ASSERT_TRUE(out.open(QIODevice::WriteOnly));
  out.write(R"({"format":"sumpwright-recovery","version":1,"title":"x","original":""})"
            "\nno plan");
  out.close();
  QFile other(recoveryFolder() + "/other.sump-recovery");
  ASSERT_TRUE(other.open(QIODevice::WriteOnly));
  other.write("no head");
  other.close();
  std::vector<Leftover> found = leftovers(recoveryFolder());
  ASSERT_EQ(found.size(), 2U);
  int unreadable = 0;
  for (Leftover& leftover : found) {
    unreadable += leftover.problem.isEmpty() ? 0 : 1;
    EXPECT_FALSE(window->resume(std::move(leftover.slot)));
  }
  EXPECT_EQ(unreadable, 1);
  EXPECT_EQ(talk.told.size(), 2);
  EXPECT_EQ(recoveryFiles().size(), 2);
  EXPECT_FALSE(document().isModified());
}

TEST_F(RecoveryTest, TheDialogOffersOpenKeepAndThrowAway) {
  std::vector<Leftover> found;
  for (const char* title : {"one", "two"}) {
    found.push_back(
        {RecoverySlot::fresh(recoveryFolder()), {title, "", QDateTime::currentDateTime()}, {}});
  }
  found.push_back({RecoverySlot::fresh(recoveryFolder()), {}, "unreadable"});
  RecoveryDialog dialog(found);
  using enum RecoveryChoice;
  EXPECT_EQ(dialog.choices(), (std::vector{Keep, Keep, Keep})) << "closed without an answer";
  const QList<QComboBox*> boxes = dialog.findChildren<QComboBox*>();
  ASSERT_EQ(boxes.size(), 3);
  EXPECT_EQ(boxes[2]->count(), 2) << "nothing to open";
  boxes[1]->setCurrentIndex(boxes[1]->findText("Throw away"));
  dialog.accept();
  EXPECT_EQ(dialog.choices(), (std::vector{Open, Discard, Keep}));
}

TEST_F(RecoveryTest, TroubleIsToldOnceAndEndsByItself) {
  QFile blocked(folder.filePath("sumpwright")); // a file where the folder has to be
  ASSERT_TRUE(blocked.open(QIODevice::WriteOnly));
  blocked.close();
  QSignalSpy troubled(&window->recovery(), &Recovery::troubled);
  edit("unkept");
  ASSERT_TRUE(QTest::qWaitFor([&] { return troubled.size() == 1; }, 10'000));
  EXPECT_TRUE(window->recovery().state().contains("NOT"));
  EXPECT_TRUE(window->findChild<QLabel*>("recovery-state")->text().contains("NOT"));
  ASSERT_TRUE(blocked.remove());
  EXPECT_TRUE(kept()) << "tried again without another change";
  EXPECT_EQ(troubled.size(), 1);
}

TEST_F(RecoveryTest, AChangeOfTheFileFromOutsideIsAskedAbout) {
  const QString path = saved("depot.sump");
  open(path);
  edit("mine");
  talk.changedAnswer = ChangedAnswer::KeepMine;
  savePlanFile(titledPlan({}, "theirs"), pathOf(path));
  ASSERT_TRUE(QTest::qWaitFor([this] { return talk.changedAsked == 1; }, 10'000));
  EXPECT_EQ(plan().project.title, "mine");
  ASSERT_TRUE(window->files().save()) << "asked once for each change";
  EXPECT_EQ(talk.changedAsked, 1);
  EXPECT_EQ(readPlanFile(pathOf(path)).project.title, "mine");

  talk.changedAnswer = ChangedAnswer::Reload;
  savePlanFile(titledPlan({}, "theirs again"), pathOf(path));
  ASSERT_TRUE(QTest::qWaitFor([this] { return talk.changedAsked == 2; }, 10'000));
  EXPECT_EQ(plan().project.title, "theirs again");
  EXPECT_FALSE(document().isModified());

  // A touched file, and our own saves, are no change.
  savePlanFile(titledPlan({}, "theirs again"), pathOf(path));
  edit("mine again");
  ASSERT_TRUE(window->files().save());
  QTest::qWait(600);
  EXPECT_EQ(talk.changedAsked, 2);
}

TEST_F(RecoveryTest, ASaveNeverWritesOverAChangeUnasked) {
  const QString path = saved("depot.sump");
  open(path);
  edit("mine");
  talk.changedAnswer = ChangedAnswer::Reload;
  savePlanFile(titledPlan({}, "theirs"), pathOf(path));
  EXPECT_FALSE(window->files().save()) << "at once, before the watcher can tell";
  EXPECT_EQ(talk.changedAsked, 1);
  EXPECT_EQ(readPlanFile(pathOf(path)).project.title, "theirs");
  EXPECT_EQ(plan().project.title, "theirs");
}

TEST_F(RecoveryTest, AFileThatIsGoneIsWrittenAnew) {
  const QString path = saved("depot.sump");
  open(path);
  ASSERT_TRUE(QFile::remove(path));
  ASSERT_TRUE(QTest::qWaitFor([this] { return document().isModified(); }, 10'000));
  EXPECT_TRUE(window->files().save());
  EXPECT_EQ(readPlanFile(pathOf(path)).project.title, "as saved");
  EXPECT_EQ(talk.changedAsked, 0);
}

TEST_F(RecoveryTest, AWriteProtectedFileIsLeftAlone) {
  const QString path = saved("depot.sump");
  ASSERT_TRUE(QFile::setPermissions(path, QFileDevice::ReadOwner));
  open(path);
  edit("mine");
  EXPECT_FALSE(window->files().save());
  ASSERT_EQ(talk.told.size(), 1);
  EXPECT_TRUE(talk.told[0].contains("write-protected"));
  EXPECT_EQ(readPlanFile(pathOf(path)).project.title, "as saved");
  EXPECT_EQ(plan().project.title, "mine");
  EXPECT_TRUE(document().isModified());
}

TEST_F(RecoveryTest, AFullDiskIsToldOnceAndThePlanIsKept) {
  const QString path = saved("depot.sump");
  open(path);
  edit(std::string(9'000, 'x').c_str());
  ASSERT_TRUE(kept());
  rlimit before{};
  ::getrlimit(RLIMIT_FSIZE, &before);
  const auto handler = std::signal(SIGXFSZ, SIG_IGN);
  const rlimit small{5'000, before.rlim_max};
  ::setrlimit(RLIMIT_FSIZE, &small);
  const bool done = window->files().save();
  ::setrlimit(RLIMIT_FSIZE, &before);
  std::signal(SIGXFSZ, handler);
  EXPECT_FALSE(done);
  ASSERT_EQ(talk.told.size(), 1);
  EXPECT_TRUE(talk.told[0].contains("make room"));
  EXPECT_TRUE(talk.told[0].contains("still here"));
  EXPECT_TRUE(document().isModified());
  EXPECT_EQ(recoveryFiles().size(), 1);
  EXPECT_EQ(readPlanFile(pathOf(path)).project.title, "as saved");
  EXPECT_TRUE(window->files().save()) << "with room again";
}

TEST_F(RecoveryTest, TwoWindowsOnOneFileAreNoticed) {
  const QString path = saved("depot.sump");
  open(path);
  EXPECT_TRUE(window->files().open(path)) << "its own file again is no other's";
  EXPECT_TRUE(talk.holders.isEmpty());
  MainWindow other(talk);
  talk.heldAnswer = HeldAnswer::Leave;
  EXPECT_FALSE(other.files().open(path));
  EXPECT_EQ(talk.holders, QStringList("another window of this program"));
  talk.heldAnswer = HeldAnswer::Copy;
  EXPECT_TRUE(other.files().open(path));
  EXPECT_TRUE(other.document().filePath().isEmpty());
  EXPECT_EQ(other.document().plan().project.title, "as saved");
  talk.saveFile = path;
  EXPECT_FALSE(other.files().saveAs());
  EXPECT_TRUE(talk.told.last().contains("another window"));
  window->files().startNew(); // lets the file go
  EXPECT_TRUE(other.files().saveAs());
}

TEST_F(RecoveryTest, ADeadProgramsLockIsNoBar) {
  const QString path = saved("depot.sump");
  // As QLockFile writes it: process, program, host. No process has this number on Linux, where the
  // largest is 2^22 (proc(5), pid_max).
  QFile lock(folder.filePath(".depot.sump.open-here"));
  ASSERT_TRUE(lock.open(QIODevice::WriteOnly));
  lock.write("4999999\nsumpwright\n" + QSysInfo::machineHostName().toUtf8() + "\n");
  lock.close();
  open(path);
  EXPECT_TRUE(talk.holders.isEmpty());
  // Of another computer nothing can be known: it is asked.
  const QString far = saved("far.sump");
  QFile farLock(folder.filePath(".far.sump.open-here"));
  ASSERT_TRUE(farLock.open(QIODevice::WriteOnly));
  farLock.write("4999999\nsumpwright\nyard-office\n");
  farLock.close();
  EXPECT_TRUE(window->files().open(far));
  ASSERT_EQ(talk.holders.size(), 1);
  EXPECT_TRUE(talk.holders[0].contains("yard-office"));
}

/// What one killed process said, and what it left.
struct Killed {
  int edits = 0; ///< committed
  int saved = 0; ///< returned from
  int kept = 0;  ///< told as written
  std::vector<long long> at;
  long long killedAt = 0;
};

long long milliseconds() {
  using namespace std::chrono;
  return duration_cast<std::chrono::milliseconds>(steady_clock::now().time_since_epoch()).count();
}

Killed heard(const QByteArray& output) {
  Killed killed;
  for (const QByteArray& line : output.split('\n')) {
    const QList<QByteArray> words = line.split(' ');
    if (words.size() < 2) continue;
    int& count = words[0] == "E" ? killed.edits : words[0] == "S" ? killed.saved : killed.kept;
    count = words[1].toInt();
    if (words[0] == "E" && words.size() == 3) killed.at.push_back(words[2].toLongLong());
  }
  return killed;
}

/// Starts children, kills each at its moment, and checks what it leaves.
class KillTest : public Test {
protected:
  void start(int number) {
    const QString home = folder_.filePath(QString::number(number));
    QDir().mkpath(home);
    savePlanFile({}, pathOf(home + "/plan.sump"));
    auto* child = new QProcess(&owner_);
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert("XDG_STATE_HOME", home);
    child->setProcessEnvironment(environment);
    child->setProcessChannelMode(QProcess::ForwardedErrorChannel);
    QObject::connect(child, &QProcess::finished, &owner_, [this, child, home] {
      EXPECT_EQ(child->exitStatus(), QProcess::CrashExit) << "it has to be killed";
      Killed killed = heard(child->readAllStandardOutput());
      killed.killedAt = child->property("killed-at").toLongLong();
      check(killed, home);
      child->deleteLater();
      ++finished_;
      next();
    });
    child->start(QCoreApplication::applicationFilePath(),
                 {testing::kEditUntilKilled, home + "/plan.sump", QString::number(number)});
    // Three of four die young, in the first second; the others outlive the two seconds.
    const auto life = number % 4 == 0 ? 2'200 + rng_() % 2'000 : rng_() % 1'000;
    QTimer::singleShot(static_cast<int>(life), child, [child] {
      child->setProperty("killed-at", milliseconds());
      child->kill();
    });
  }
  void next() {
    if (started_ < kKills) start(started_++);
  }

  void check(const Killed& killed, const QString& home) {
    int left = readPlanFile(pathOf(home + "/plan.sump")).project.revision.empty()
                   ? 0
                   : std::stoi(readPlanFile(pathOf(home + "/plan.sump")).project.revision);
    EXPECT_GE(left, killed.saved) << "a save that returned is on disk";
    const std::vector<Leftover> found = leftovers(home + "/sumpwright/recovery");
    EXPECT_LE(found.size(), 1U);
    for (const Leftover& leftover : found) {
      ASSERT_TRUE(leftover.problem.isEmpty()) << leftover.problem.toStdString();
      const RecoveredPlan recovered = readRecovery(leftover.slot->file());
      EXPECT_EQ(recovered.head.original, home + "/plan.sump");
      EXPECT_EQ(std::to_string(recovered.plan.spots.size()), recovered.plan.project.revision);
      left = std::max(left, std::stoi(recovered.plan.project.revision));
      ++recovered_;
    }
    EXPECT_GE(left, killed.kept) << "what was told as kept is kept";
    const auto lost = static_cast<std::size_t>(left);
    if (lost < killed.at.size()) {
      // The requirement itself: at most the last two seconds are missing.
      EXPECT_GE(killed.at[lost], killed.killedAt - 2'000);
    }
    edits_ += killed.edits;
  }

  static constexpr int kKills = 200;
  static constexpr int kAtOnce = 12;
  QTemporaryDir folder_;
  QObject owner_;
  std::mt19937 rng_{20'240'611};
  int started_ = 0, finished_ = 0, recovered_ = 0, edits_ = 0;
};

TEST_F(KillTest, At200RandomMomentsAtMostTwoSecondsAreLostAndNoFileIsUnreadable) {
  for (int i = 0; i < kAtOnce; ++i)
    next();
  ASSERT_TRUE(QTest::qWaitFor([this] { return finished_ == kKills; }, 280'000));
  // Otherwise the kills would have met nothing.
  EXPECT_GT(recovered_, kKills / 4);
  EXPECT_GT(edits_, 10 * kKills);
  RecordProperty("recovered", recovered_);
  RecordProperty("edits", edits_);
}

} // namespace
} // namespace sump
