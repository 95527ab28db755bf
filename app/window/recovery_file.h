#pragma once
// The file that a plan can be got back from after a crash: one line of JSON that says whose plan it
// is and when it was written, then the plan as in its plan file.
//
// Crash points. The file is replaced as a plan file is (temporary, flush, rename), so it is always
// the old one or the new one. Beside it stands a lock that the system lets go when the process
// ends, however it ends: a recovery file whose lock is free belongs to nobody and is offered. It
// is removed before its lock, so a lock without a file is nothing to recover.

#include "core/plan/plan.h"

#include <QDateTime>
#include <QString>

#include <memory>
#include <string>
#include <vector>

namespace sump {

/// Where recovery files are kept: `$XDG_STATE_HOME/sumpwright/recovery` (XDG Base Directory
/// Specification 0.8; by default under ~/.local/state).
QString recoveryFolder();

struct RecoveryHead {
  QString title;    ///< file name or project title, for people
  QString original; ///< the plan's file; empty for a plan that was never saved
  QDateTime written;
};

struct RecoveredPlan {
  RecoveryHead head;
  Plan plan;
};

std::string recoveryText(const RecoveryHead& head, const Plan& plan);
/// Throw InputError.
RecoveryHead readRecoveryHead(const QString& file);
RecoveredPlan readRecovery(const QString& file);

/// A recovery file's name, held by this process; the file itself may not be there yet.
class RecoverySlot {
public:
  /// A name that nobody has. Null, with `reason`, when the folder cannot be used.
  static std::unique_ptr<RecoverySlot> fresh(const QString& folder, QString* reason = nullptr);
  /// Null when a living process holds it.
  static std::unique_ptr<RecoverySlot> claim(const QString& file);
  ~RecoverySlot();
  RecoverySlot(const RecoverySlot&) = delete;
  RecoverySlot& operator=(const RecoverySlot&) = delete;

  const QString& file() const { return file_; }
  /// Removes the file, then the lock. Nothing can be kept under this name any more.
  void discard();

private:
  RecoverySlot(QString file, int lock) : file_(std::move(file)), lock_(lock) {}
  QString file_;
  int lock_ = -1;
};

/// What dead processes left. While it is held no other program offers it.
struct Leftover {
  std::unique_ptr<RecoverySlot> slot;
  RecoveryHead head;
  QString problem; ///< why its first line cannot be read; empty when it can
};
/// Newest first.
std::vector<Leftover> leftovers(const QString& folder);

/// Removes temporary files of saves that were cut off, where the process is no more.
void removeDeadTemporaries(const QString& folder);

} // namespace sump
