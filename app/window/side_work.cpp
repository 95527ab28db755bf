#include "app/window/side_work.h"

#include <algorithm>
#include <exception>

namespace sump {

SideWork::SideWork(QObject* parent) : QObject(parent) {
  thread_ = std::thread([this] { work(); });
}

SideWork::~SideWork() {
  {
    const std::lock_guard lock(mutex_);
    stopping_ = true;
  }
  wake_.notify_one();
  thread_.join();
}

void SideWork::ask(QObject* owner, Work work) {
  {
    const std::lock_guard lock(mutex_);
    const auto mine =
        std::ranges::find_if(waiting_, [owner](const Job& job) { return job.owner == owner; });
    if (mine != waiting_.end()) {
      mine->work = std::move(work);
    } else {
      waiting_.push_back({owner, std::move(work)});
    }
  }
  wake_.notify_one();
}

bool SideWork::isBusy() const {
  const std::lock_guard lock(mutex_);
  return !waiting_.empty() || underWay_ > 0;
}

void SideWork::work() {
  std::unique_lock lock(mutex_);
  while (true) {
    wake_.wait(lock, [this] { return stopping_ || !waiting_.empty(); });
    if (stopping_) return;
    Job job = std::move(waiting_.front());
    waiting_.erase(waiting_.begin());
    ++underWay_;
    lock.unlock();
    // The owner may be gone by then: only the window's thread can tell.
    const auto deliver = [this, owner = job.owner, delivery = done(job)] {
      if (owner && delivery) delivery();
      const std::lock_guard guard(mutex_);
      --underWay_;
    };
    job.work = nullptr; // what it held goes here, not on the window's thread
    QMetaObject::invokeMethod(this, deliver, Qt::QueuedConnection);
    lock.lock();
  }
}

SideWork::Delivery SideWork::done(const Job& job) {
  try {
    return job.work();
  } catch (const std::exception& e) {
    return [this, reason = QString::fromUtf8(e.what())] { emit failed(reason); };
  }
}

} // namespace sump
