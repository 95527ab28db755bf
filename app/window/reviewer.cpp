#include "app/window/reviewer.h"

#include <exception>

namespace sump {

ReviewedPtr reviewNow(const Plan& plan, Revision revision, const Catalog& catalog) {
  auto reviewed = std::make_shared<Reviewed>();
  reviewed->revision = revision;
  reviewed->review = review(plan, catalog);
  reviewed->marks = planMarks(reviewed->review.plan, reviewed->review.study);
  return reviewed;
}

Reviewer::Reviewer(const Catalog& catalog, QObject* parent) : QObject(parent), catalog_(catalog) {
  thread_ = std::thread([this] { work(); });
}

Reviewer::~Reviewer() {
  {
    const std::lock_guard lock(mutex_);
    stopping_ = true;
  }
  wake_.notify_one();
  thread_.join();
}

void Reviewer::ask(std::shared_ptr<const Plan> plan, Revision revision) {
  {
    const std::lock_guard lock(mutex_);
    waiting_ = std::move(plan);
    waitingRevision_ = revision;
  }
  wake_.notify_one();
}

void Reviewer::work() {
  std::unique_lock lock(mutex_);
  while (true) {
    wake_.wait(lock, [this] { return stopping_ || waiting_ != nullptr; });
    if (stopping_) return;
    const std::shared_ptr<const Plan> plan = std::move(waiting_);
    waiting_ = nullptr;
    const Revision revision = waitingRevision_;
    lock.unlock();
    reviewOne(*plan, revision);
    lock.lock();
  }
}

void Reviewer::reviewOne(const Plan& plan, Revision revision) {
  // Receivers live on the window's thread, so Qt queues both signals.
  try {
    emit done(reviewNow(plan, revision, catalog_));
  } catch (const std::exception& e) {
    emit failed(QString::fromUtf8(e.what()));
  }
}

} // namespace sump
