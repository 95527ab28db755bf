#include "app/window/recovery_file.h"

#include "core/exchange/plan_file.h"

#include <QDir>
#include <QFile>
#include <QJsonDocument>
#include <QJsonObject>
#include <QRegularExpression>
#include <QUuid>

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <csignal>
#include <cstring>

namespace sump {

namespace {

constexpr const char* kFormat = "sumpwright-recovery";
constexpr const char* kSuffix = ".sump-recovery";
constexpr int kVersion = 1;
constexpr qint64 kLongestHead = 1 << 16;

[[noreturn]] void fail(const QString& file, const char* problem) {
  throw InputError(file.toStdString(), "", 0, problem, "nothing can be got back from it");
}

RecoveryHead headOf(const QByteArray& line, const QString& file) {
  const QJsonObject json = QJsonDocument::fromJson(line).object();
  if (json.value("format") != kFormat) fail(file, "is no recovery file");
  if (json.value("version").toInt() != kVersion) {
    fail(file, "is of a version that this program does not know");
  }
  return {json.value("title").toString(), json.value("original").toString(),
          QDateTime::fromString(json.value("written").toString(), Qt::ISODateWithMs)};
}

QString lockOf(const QString& file) {
  return file + ".lock";
}

/// -1 when a living process holds it or the folder cannot be used (errno tells).
int takeLock(const QString& file) {
  const int fd =
      ::open(QFile::encodeName(lockOf(file)).constData(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (fd < 0) return -1;
  if (::flock(fd, LOCK_EX | LOCK_NB) == 0) return fd;
  const int error = errno;
  ::close(fd);
  errno = error;
  return -1;
}

} // namespace

QString recoveryFolder() {
  // QStandardPaths knows no state folder before Qt 6.7.
  QString state = qEnvironmentVariable("XDG_STATE_HOME");
  if (!QDir::isAbsolutePath(state)) state = QDir::home().filePath(".local/state");
  return state + "/sumpwright/recovery";
}

std::string recoveryText(const RecoveryHead& head, const Plan& plan) {
  const QJsonObject json{{"format", kFormat},
                         {"version", kVersion},
                         {"title", head.title},
                         {"original", head.original},
                         {"written", head.written.toString(Qt::ISODateWithMs)}};
  return QJsonDocument(json).toJson(QJsonDocument::Compact).toStdString() + "\n" +
         writePlanText(plan);
}

RecoveryHead readRecoveryHead(const QString& file) {
  QFile in(file);
  if (!in.open(QIODevice::ReadOnly)) fail(file, "cannot be read");
  return headOf(in.readLine(kLongestHead), file);
}

RecoveredPlan readRecovery(const QString& file) {
  QFile in(file);
  if (!in.open(QIODevice::ReadOnly)) fail(file, "cannot be read");
  RecoveryHead head = headOf(in.readLine(kLongestHead), file);
  return {std::move(head), readPlanText(in.readAll().toStdString(), file.toStdString())};
}

std::unique_ptr<RecoverySlot> RecoverySlot::fresh(const QString& folder, QString* reason) {
  const QFileDevice::Permissions mine =
      QFileDevice::ReadOwner | QFileDevice::WriteOwner | QFileDevice::ExeOwner;
  if (QDir().mkpath(folder)) QFile::setPermissions(folder, mine); // plans are nobody else's matter
  const QString file = folder + "/" + QUuid::createUuid().toString(QUuid::WithoutBraces) + kSuffix;
  const int lock = takeLock(file);
  if (lock >= 0) return std::unique_ptr<RecoverySlot>(new RecoverySlot(file, lock));
  if (reason != nullptr) *reason = QString::fromLocal8Bit(std::strerror(errno));
  return nullptr;
}

std::unique_ptr<RecoverySlot> RecoverySlot::claim(const QString& file) {
  const int lock = takeLock(file);
  if (lock < 0) return nullptr;
  auto slot = std::unique_ptr<RecoverySlot>(new RecoverySlot(file, lock));
  if (QFile::exists(file)) return slot;
  slot->discard(); // its owner ended well between our looking and our locking
  return nullptr;
}

RecoverySlot::~RecoverySlot() {
  if (lock_ >= 0) ::close(lock_);
}

void RecoverySlot::discard() {
  QFile::remove(file_);
  QFile::remove(lockOf(file_));
}

std::vector<Leftover> leftovers(const QString& folder) {
  removeDeadTemporaries(folder);
  std::vector<Leftover> found;
  const QDir dir(folder);
  for (const QString& name : dir.entryList({QString("*") + kSuffix}, QDir::Files)) {
    std::unique_ptr<RecoverySlot> slot = RecoverySlot::claim(dir.filePath(name));
    if (!slot) continue;
    Leftover leftover{std::move(slot), {}, {}};
    try {
      leftover.head = readRecoveryHead(leftover.slot->file());
    } catch (const InputError& e) {
      leftover.problem = QString::fromUtf8(e.what());
    }
    found.push_back(std::move(leftover));
  }
  std::stable_sort(found.begin(), found.end(), [](const Leftover& a, const Leftover& b) {
    return a.head.written > b.head.written;
  });
  return found;
}

void removeDeadTemporaries(const QString& folder) {
  // As core/exchange/plan_file_save.cpp names them.
  static const QRegularExpression pattern("^\\.sumpwright-(\\d+)-\\d+\\.tmp$");
  // On a shared folder the number may be that of a process elsewhere: a save takes no such time.
  constexpr qint64 kSecondsOfASave = 600;
  const QDir dir(folder);
  const QDateTime now = QDateTime::currentDateTime();
  for (const QFileInfo& info :
       dir.entryInfoList({".sumpwright-*.tmp"}, QDir::Files | QDir::Hidden)) {
    const QRegularExpressionMatch match = pattern.match(info.fileName());
    if (!match.hasMatch() || info.lastModified().secsTo(now) < kSecondsOfASave) continue;
    const pid_t process = match.captured(1).toInt();
    if (process > 0 && ::kill(process, 0) != 0 && errno == ESRCH) QFile::remove(info.filePath());
  }
}

} // namespace sump
