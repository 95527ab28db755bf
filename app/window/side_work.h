#pragma once
// Works things out of a review on a thread of its own, so that the window never waits for a long
// list. Of each who asks only the newest question is answered.

#include <QObject>
#include <QPointer>

#include <condition_variable>
#include <functional>
#include <mutex>
#include <thread>
#include <vector>

namespace sump {

class SideWork : public QObject {
  Q_OBJECT

public:
  /// Runs on the window's thread when the work is done.
  using Delivery = std::function<void()>;
  /// Runs on the other thread: it may touch only what it holds itself.
  using Work = std::function<Delivery()>;

  explicit SideWork(QObject* parent = nullptr);
  /// Waits for the work under way; what waits is dropped and nothing more is delivered.
  ~SideWork() override;
  SideWork(const SideWork&) = delete;
  SideWork& operator=(const SideWork&) = delete;

  /// Takes the place of what `owner` asked before and has not been begun. Delivers only while
  /// `owner` lives.
  void ask(QObject* owner, Work work);
  /// Something is waiting, under way or about to be delivered.
  bool isBusy() const;

signals:
  /// A fault of the program, told rather than hidden.
  void failed(const QString& reason);

private:
  struct Job {
    QPointer<QObject> owner;
    Work work;
  };
  void work();
  Delivery done(const Job& job);

  mutable std::mutex mutex_;
  std::condition_variable wake_;
  std::vector<Job> waiting_;
  int underWay_ = 0; ///< begun and not delivered yet
  bool stopping_ = false;
  std::thread thread_; // last: it uses everything above
};

} // namespace sump
