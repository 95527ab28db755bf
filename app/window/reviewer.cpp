#include "app/window/reviewer.h"

#include "app/panels/finding_rows.h"

#include <exception>

namespace sump {

ReviewedPtr reviewNow(const Plan& plan, Revision revision, const Catalog& catalog, Ticket ticket) {
  auto reviewed = std::make_shared<Reviewed>();
  reviewed->revision = revision;
  reviewed->ticket = ticket;
  reviewed->review = review(plan, catalog);
  reviewed->marks = planMarks(reviewed->review.plan, reviewed->review.study);
  reviewed->findingRows = findingRows(reviewed->review);
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

Ticket Reviewer::ask(std::shared_ptr<const Plan> plan, Revision revision) {
  Ticket ticket = 0;
  {
    const std::lock_guard lock(mutex_);
    waiting_ = std::move(plan);
    waitingRevision_ = revision;
    ticket = ++lastTicket_;
  }
  wake_.notify_one();
  return ticket;
}

void Reviewer::letGo(ReviewedPtr reviewed) {
  {
    const std::lock_guard lock(mutex_);
    gone_.push_back(std::move(reviewed));
  }
  wake_.notify_one();
}

void Reviewer::work() {
  std::unique_lock lock(mutex_);
  while (true) {
    wake_.wait(lock, [this] { return stopping_ || waiting_ != nullptr || !gone_.empty(); });
    if (stopping_) return;
    std::vector<ReviewedPtr> gone = std::move(gone_);
    gone_.clear();
    const std::shared_ptr<const Plan> plan = std::move(waiting_);
    waiting_ = nullptr;
    const Revision revision = waitingRevision_;
    const Ticket ticket = lastTicket_;
    lock.unlock();
    gone.clear();
    if (plan != nullptr) reviewOne(*plan, revision, ticket);
    lock.lock();
  }
}

void Reviewer::reviewOne(const Plan& plan, Revision revision, Ticket ticket) {
  // Receivers live on the window's thread, so Qt queues both signals.
  try {
    emit done(reviewNow(plan, revision, catalog_, ticket));
  } catch (const std::exception& e) {
    emit failed(QString::fromUtf8(e.what()), ticket);
  }
}

} // namespace sump
