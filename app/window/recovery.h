#pragma once
// Keeps every change of a document in its recovery file, written on a thread of its own.

#include "app/window/document.h"
#include "app/window/recovery_file.h"

#include <QDateTime>
#include <QObject>

#include <condition_variable>
#include <functional>
#include <mutex>
#include <thread>

class QLabel;

namespace sump {

/// Writes the newest plan that it was given: at once, and then no sooner than `rest` after the
/// write before, so that a burst of edits costs a few writes. A write that fails is tried again.
class RecoveryWriter : public QObject {
  Q_OBJECT

public:
  explicit RecoveryWriter(QString folder, QObject* parent = nullptr);
  /// Leaves the file unless forget() was the last that was asked; waits for a write under way.
  ~RecoveryWriter() override;
  RecoveryWriter(const RecoveryWriter&) = delete;
  RecoveryWriter& operator=(const RecoveryWriter&) = delete;

  void keep(PlanPtr plan, Revision revision, const QString& title, const QString& original);
  /// The plan is safe elsewhere, or is wanted no more: removes the file.
  void forget();

signals:
  void written(sump::Revision revision, const QDateTime& at);
  void failed(const QString& reason);

private:
  struct Wish {
    PlanPtr plan; ///< null: forget
    Revision revision = 0;
    QString title;
    QString original;
  };
  void ask(Wish wish);
  void work();
  bool fulfil(const Wish& wish);
  void write(const Wish& wish);

  const QString folder_;
  std::mutex mutex_;
  std::condition_variable wake_;
  std::optional<Wish> waiting_;
  bool stopping_ = false;
  std::unique_ptr<RecoverySlot> slot_; ///< of the thread
  std::thread thread_;                 // last: it uses everything above
};

/// Joins a document to its writer.
class Recovery : public QObject {
  Q_OBJECT

public:
  explicit Recovery(Document& document, QObject* parent = nullptr);
  /// The document goes on where a crash ended it. Throws InputError and changes nothing when the
  /// file cannot be used; the slot then is let go and its file stays.
  void resume(std::unique_ptr<RecoverySlot> slot);
  /// The window closes with everything saved or given up.
  void finish();
  /// One sentence for the status line: when the last change was kept, or why it was not.
  const QString& state() const { return state_; }

signals:
  void stateChanged(const QString& state);
  /// A change cannot be kept; told once until it works again.
  void troubled(const QString& sentence);
  void written(sump::Revision revision);

private:
  void follow();
  void wrote(Revision revision, const QDateTime& at);
  void couldNotWrite(const QString& reason);
  void say(const QString& state);

  Document& document_;
  Revision kept_ = 0; ///< asked for last; 0: nothing is kept
  bool troubled_ = false;
  QString state_;
  /// What was resumed; its file goes when the plan has one of its own, so there is always one.
  std::unique_ptr<RecoverySlot> resumed_;
  RecoveryWriter writer_;
};

/// Shows the state of recovery.
QLabel* recoveryLabel(Recovery& recovery, QWidget* parent);

} // namespace sump
