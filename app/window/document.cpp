#include "app/window/document.h"

#include "app/plain_text.h"

#include "core/exchange/plan_file.h"

#include <QFileInfo>

#include <filesystem>

namespace sump {

Document::Document(const Catalog& catalog, QObject* parent)
    : QObject(parent), catalog_(catalog), reviewer_(catalog) {
  connect(&reviewer_, &Reviewer::done, this, &Document::take, Qt::QueuedConnection);
  const auto failed = [this](const QString& reason, Ticket ticket) {
    if (ticket >= oldestTicket_) emit reviewFailed(reason);
  };
  connect(&reviewer_, &Reviewer::failed, this, failed, Qt::QueuedConnection);
  connect(&sideWork_, &SideWork::failed, this, &Document::reviewFailed);
  become(Plan{}, QString());
}

std::optional<Problem> Document::commit(const QString& step, Plan next) {
  const bool hadPreview = preview_ != nullptr;
  preview_ = nullptr;
  std::vector<Problem> problems;
  if (next == plan()) {
    if (hadPreview) announce();
    return std::nullopt;
  }
  problems = inconsistencies(next);
  if (!problems.empty()) {
    if (hadPreview) announce();
    return problems.front();
  }
  states_.resize(current_ + 1);
  states_.push_back({++lastRevision_, std::make_shared<const Plan>(std::move(next)), step});
  ++current_;
  announce();
  return std::nullopt;
}

void Document::preview(std::optional<Plan> plan) {
  if (!plan && !preview_) return;
  // A gesture may pass through plans that are none; those are not shown.
  if (plan && !inconsistencies(*plan).empty()) return;
  preview_ = plan ? std::make_shared<const Plan>(std::move(*plan)) : nullptr;
  if (preview_) previewRevision_ = ++lastRevision_;
  announce();
  if (!preview_) forgetEarlier();
}

QString Document::undoStep() const {
  return canUndo() ? states_[current_].step : QString();
}

QString Document::redoStep() const {
  return canRedo() ? states_[current_ + 1].step : QString();
}

void Document::undo() {
  if (canUndo()) step(current_ - 1);
}

void Document::redo() {
  if (canRedo()) step(current_ + 1);
}

void Document::step(std::size_t to) {
  preview_ = nullptr;
  current_ = to;
  announce();
  forgetEarlier();
}

QString Document::displayName() const {
  return filePath_.isEmpty() ? tr("New plan") : QFileInfo(filePath_).fileName();
}

void Document::startNew(Plan plan) {
  become(std::move(plan), QString());
  emit replaced();
}

void Document::open(const QString& path) {
  Plan plan = readPlanFile(pathOf(path)); // throws before anything changes
  become(std::move(plan), path);
  emit replaced();
}

void Document::resume(Plan plan, const QString& path) {
  become(std::move(plan), path);
  fileDiffers();
  emit replaced();
}

void Document::fileDiffers() {
  savedRevision_ = 0;
  emit changed();
}

void Document::save(const QString& path) {
  savePlanFile(plan(), pathOf(path));
  filePath_ = path;
  savedRevision_ = states_[current_].revision;
  emit changed();
}

void Document::become(Plan plan, const QString& path) {
  preview_ = nullptr;
  states_.clear();
  states_.push_back({++lastRevision_, std::make_shared<const Plan>(std::move(plan)), QString()});
  current_ = 0;
  savedRevision_ = lastRevision_;
  filePath_ = path;
  announce();
  forgetEarlier();
}

void Document::announce() {
  lastTicket_ = reviewer_.ask(preview_ ? preview_ : states_[current_].plan, revision());
  emit changed();
}

void Document::take(const ReviewedPtr& reviewed) {
  // An earlier step of a drag is better than none, marked as stale. What was on its way when the
  // plan went back to another state is of a plan that is left for good.
  if (isOfLeftPlan(*reviewed)) return reviewer_.letGo(reviewed);
  replaceReview(reviewed);
}

void Document::replaceReview(ReviewedPtr reviewed) {
  std::swap(reviewed_, reviewed);
  emit reviewArrived();
  if (reviewed) reviewer_.letGo(std::move(reviewed)); // whoever still shows it keeps it
}

/// Reviews that were asked for before the newest question are of no use any more.
void Document::forgetEarlier() {
  oldestTicket_ = lastTicket_;
}

ReviewedPtr Document::freshReview() {
  const Revision wanted = states_[current_].revision;
  if (!reviewed_ || reviewed_->revision != wanted) {
    if (!preview_) forgetEarlier(); // what is on its way is no newer than this
    replaceReview(reviewNow(plan(), wanted, catalog_, lastTicket_));
  }
  return reviewed_;
}

} // namespace sump
