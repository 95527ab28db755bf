#pragma once
// The file of a plan, seen from outside: whether it changed behind the program's back, and who else
// has it open.

#include <QByteArray>
#include <QFileSystemWatcher>
#include <QLockFile>
#include <QObject>
#include <QString>
#include <QTimer>

#include <memory>
#include <optional>

namespace sump {

/// Compares contents, not times: a file that was touched or copied over itself has not changed.
class FileWatch : public QObject {
  Q_OBJECT

public:
  explicit FileWatch(QObject* parent = nullptr);
  /// Follows this file, as `contents` (fingerprint()) or else as it is now. Empty: none.
  void follow(const QString& path, std::optional<QByteArray> contents = std::nullopt);
  /// The file as it is now is known and no news.
  void accept();
  /// It is not what it was; a file that is gone differs.
  bool differs() const;
  /// Of the file's bytes; empty when it is not there.
  static QByteArray fingerprint(const QString& path);

signals:
  /// Once for each other content.
  void changedOutside();

private:
  void look();
  void listen();

  QString path_;
  QByteArray known_;
  QByteArray told_;
  QFileSystemWatcher watcher_;
  QTimer settle_;
};

/// Says to other windows, programs and computers that this plan file is open here: a lock file
/// beside it, hidden. Locks of processes that died on this computer are taken over.
class FileHold {
public:
  /// Nothing when it is held now, or cannot be (a folder that cannot be written: then nobody can
  /// save there either). Else who holds it.
  std::optional<QString> take(const QString& path);
  bool holds(const QString& path) const;
  void release();

private:
  QString file_;
  std::unique_ptr<QLockFile> lock_;
};

/// No one may write it: not even an owner who could give himself the right.
bool isWriteProtected(const QString& path);

} // namespace sump
