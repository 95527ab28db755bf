#include "app/window/recovery.h"

#include "app/plain_text.h"

#include "core/exchange/plan_file.h"

#include <QLabel>
#include <QLocale>

#include <chrono>
#include <filesystem>

namespace sump {

namespace {

using namespace std::chrono_literals;

/// Between two writes. With a slow disk's write time this stays well below the 2 s in which every
/// change has to be on disk.
constexpr auto kRest = 300ms;
constexpr auto kRetry = 1s;

} // namespace

RecoveryWriter::RecoveryWriter(QString folder, QObject* parent)
    : QObject(parent), folder_(std::move(folder)) {
  thread_ = std::thread([this] { work(); });
}

RecoveryWriter::~RecoveryWriter() {
  {
    const std::lock_guard lock(mutex_);
    stopping_ = true;
  }
  wake_.notify_one();
  thread_.join();
}

void RecoveryWriter::keep(PlanPtr plan, Revision revision, const QString& title,
                          const QString& original) {
  ask({std::move(plan), revision, title, original});
}

void RecoveryWriter::forget() {
  ask({});
}

void RecoveryWriter::ask(Wish wish) {
  {
    const std::lock_guard lock(mutex_);
    waiting_ = std::move(wish);
  }
  wake_.notify_one();
}

void RecoveryWriter::work() {
  std::unique_lock lock(mutex_);
  while (true) {
    wake_.wait(lock, [this] { return stopping_ || waiting_; });
    if (!waiting_) return;
    const Wish wish = std::move(*waiting_);
    waiting_.reset();
    lock.unlock();
    const bool done = fulfil(wish);
    lock.lock();
    if (!done && !waiting_ && !stopping_) waiting_ = wish;
    // Only the end cuts the rest short; a wish that comes in it waits.
    wake_.wait_for(lock, done ? kRest : kRetry, [this] { return stopping_; });
  }
}

bool RecoveryWriter::fulfil(const Wish& wish) {
  if (!wish.plan) {
    if (slot_) slot_->discard();
    slot_.reset();
    return true;
  }
  try {
    write(wish);
  } catch (const std::exception& e) {
    emit failed(QString::fromUtf8(e.what()));
    return false;
  }
  return true;
}

void RecoveryWriter::write(const Wish& wish) {
  QString reason;
  if (!slot_) slot_ = RecoverySlot::fresh(folder_, &reason);
  if (!slot_) {
    throw InputError(folder_.toStdString(), "", 0, "cannot be written: " + reason.toStdString(),
                     "make room in it or change its permissions");
  }
  const QDateTime now = QDateTime::currentDateTime();
  const std::string text = recoveryText({wish.title, wish.original, now}, *wish.plan);
  writeFileAtomically(pathOf(slot_->file()), text);
  emit written(wish.revision, now);
}

Recovery::Recovery(Document& document, QObject* parent)
    : QObject(parent), document_(document), writer_(recoveryFolder()) {
  connect(&document_, &Document::changed, this, &Recovery::follow);
  connect(&writer_, &RecoveryWriter::written, this, &Recovery::wrote, Qt::QueuedConnection);
  connect(&writer_, &RecoveryWriter::failed, this, &Recovery::couldNotWrite, Qt::QueuedConnection);
}

void Recovery::wrote(Revision revision, const QDateTime& at) {
  troubled_ = false;
  if (kept_ == 0) return;
  if (resumed_) resumed_->discard();
  resumed_.reset();
  say(tr("Kept %1").arg(QLocale().toString(at.time(), "HH:mm:ss")));
  emit written(revision);
}

void Recovery::couldNotWrite(const QString& reason) {
  say(tr("Changes are NOT kept"));
  if (!troubled_) {
    emit troubled(tr("Changes cannot be kept for recovery. Save the plan soon. %1").arg(reason));
  }
  troubled_ = true;
}

void Recovery::follow() {
  if (!document_.isModified()) {
    if (kept_ == 0) return;
    kept_ = 0;
    if (resumed_) resumed_->discard();
    resumed_.reset();
    writer_.forget();
    say({});
    return;
  }
  if (kept_ == document_.committedRevision()) return; // a preview, or another view of it
  kept_ = document_.committedRevision();
  const QString project = QString::fromStdString(document_.plan().project.title);
  const bool named = !document_.filePath().isEmpty() || project.isEmpty();
  writer_.keep(document_.shared(), kept_, named ? document_.displayName() : project,
               document_.filePath());
}

void Recovery::resume(std::unique_ptr<RecoverySlot> slot) {
  RecoveredPlan recovered = readRecovery(slot->file());
  resumed_ = std::move(slot);
  document_.resume(std::move(recovered.plan), recovered.head.original);
}

void Recovery::finish() {
  document_.disconnect(this);
  writer_.disconnect(this);
  kept_ = 0;
  if (resumed_) resumed_->discard();
  writer_.forget();
}

void Recovery::say(const QString& state) {
  if (state == state_) return;
  state_ = state;
  emit stateChanged(state_);
}

QLabel* recoveryLabel(Recovery& recovery, QWidget* parent) {
  auto* label = new QLabel(recovery.state(), parent);
  label->setObjectName("recovery-state");
  label->setToolTip(Recovery::tr("Every change is kept in a recovery file within two seconds. "
                                 "Saving the plan writes it to its own file."));
  label->setVisible(!label->text().isEmpty());
  QObject::connect(&recovery, &Recovery::stateChanged, label, [label](const QString& state) {
    label->setText(state);
    label->setVisible(!state.isEmpty());
  });
  return label;
}

} // namespace sump
