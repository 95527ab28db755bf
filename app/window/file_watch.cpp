#include "app/window/file_watch.h"

#include <QCoreApplication>
#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QSysInfo>

namespace sump {

namespace {

/// Programs write in several steps; the file is looked at when it has been quiet this long.
constexpr int kQuietMs = 150;

QString lockBeside(const QString& path) {
  const QFileInfo info(path);
  const QString real = info.exists() ? info.canonicalFilePath() : info.absoluteFilePath();
  const QFileInfo target(real);
  return target.absoluteDir().filePath("." + target.fileName() + ".open-here");
}

QString holder(const QLockFile& lock) {
  qint64 process = 0;
  QString host, program;
  if (!lock.getLockInfo(&process, &host, &program)) {
    return QCoreApplication::translate("FileHold", "another program");
  }
  if (process == QCoreApplication::applicationPid() && host == QSysInfo::machineHostName()) {
    return QCoreApplication::translate("FileHold", "another window of this program");
  }
  return QCoreApplication::translate("FileHold", "%1 (process %2) on %3")
      .arg(program, QString::number(process), host);
}

} // namespace

FileWatch::FileWatch(QObject* parent) : QObject(parent) {
  settle_.setSingleShot(true);
  settle_.setInterval(kQuietMs);
  connect(&settle_, &QTimer::timeout, this, &FileWatch::look);
  const auto soon = [this] { settle_.start(); };
  connect(&watcher_, &QFileSystemWatcher::fileChanged, this, soon);
  connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, soon);
}

QByteArray FileWatch::fingerprint(const QString& path) {
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly)) return {};
  QCryptographicHash hash(QCryptographicHash::Sha256);
  hash.addData(&file);
  return hash.result();
}

void FileWatch::follow(const QString& path, std::optional<QByteArray> contents) {
  const QStringList before = watcher_.files() + watcher_.directories();
  if (!before.isEmpty()) watcher_.removePaths(before);
  settle_.stop();
  path_ = path.isEmpty() ? QString() : QFileInfo(path).absoluteFilePath();
  accept();
  if (contents) known_ = told_ = *contents;
  listen();
  if (contents && differs()) settle_.start(); // it changed while it was being read
}

void FileWatch::accept() {
  known_ = told_ = path_.isEmpty() ? QByteArray() : fingerprint(path_);
}

bool FileWatch::differs() const {
  return !path_.isEmpty() && fingerprint(path_) != known_;
}

void FileWatch::listen() {
  if (path_.isEmpty()) return;
  // The folder too: a file that is replaced by renaming is another file to the watcher.
  const QStringList wanted{path_, QFileInfo(path_).absolutePath()};
  for (const QString& one : wanted) {
    if (QFileInfo::exists(one) && !watcher_.files().contains(one) &&
        !watcher_.directories().contains(one)) {
      watcher_.addPath(one);
    }
  }
}

void FileWatch::look() {
  listen();
  if (path_.isEmpty()) return;
  const QByteArray now = fingerprint(path_);
  if (now == told_) return;
  told_ = now;
  if (now != known_) emit changedOutside();
}

std::optional<QString> FileHold::take(const QString& path) {
  const QString file = lockBeside(path);
  if (lock_ && file == file_) return std::nullopt;
  auto lock = std::make_unique<QLockFile>(file);
  lock->setStaleLockTime(0); // however long a window is open, the lock is good while it lives
  if (lock->tryLock(0)) {
    lock_ = std::move(lock);
    file_ = file;
    return std::nullopt;
  }
  if (lock->error() != QLockFile::LockFailedError) {
    release();
    return std::nullopt;
  }
  return holder(*lock);
}

bool FileHold::holds(const QString& path) const {
  return lock_ && file_ == lockBeside(path);
}

void FileHold::release() {
  lock_.reset();
  file_.clear();
}

bool isWriteProtected(const QString& path) {
  const QFileInfo info(path);
  if (!info.exists()) return false;
  // Root may write everything; a file without any write bit is still meant to stay.
  const QFileDevice::Permissions any =
      QFileDevice::WriteOwner | QFileDevice::WriteGroup | QFileDevice::WriteOther;
  return !info.isWritable() || !(info.permissions() & any);
}

} // namespace sump
