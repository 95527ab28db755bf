#include "app/panels/review_table.h"

namespace sump {

namespace {

/// Rows that are older than this are shown as old.
constexpr int kOldAfterMs = 200;

} // namespace

ReviewTable::ReviewTable(Document& document, const QStringList& headings,
                         const QString& accessibleName, Rows makeRows, int wide, QWidget* parent)
    : ObjectTable(headings, accessibleName, parent), document_(document),
      makeRows_(std::move(makeRows)), wideColumn_(wide) {
  tellOld_.setSingleShot(true);
  tellOld_.setInterval(kOldAfterMs);
  connect(&tellOld_, &QTimer::timeout, this, [this] { setOld(isBehind()); });
  connect(&document_, &Document::changed, this, &ReviewTable::planChanged);
  connect(&document_, &Document::reviewArrived, this, &ReviewTable::bringUpToDate);
}

void ReviewTable::showEvent(QShowEvent* event) {
  ObjectTable::showEvent(event);
  bringUpToDate();
}

void ReviewTable::planChanged() {
  if (isBehind() && !tellOld_.isActive()) tellOld_.start();
}

void ReviewTable::bringUpToDate() {
  const ReviewedPtr newest = document_.reviewed();
  if (!newest || newest == asked_ || !isInFront(*this)) return;
  asked_ = newest;
  document_.sideWork().ask(this, [this, newest, make = makeRows_] {
    return [this, newest, rows = make(newest->review)] { take(newest, rows); };
  });
}

void ReviewTable::take(const ReviewedPtr& of, const std::vector<TableRow>& rows) {
  if (document_.isOfLeftPlan(*of)) return;
  fill(rows, wideColumn_);
  shownRevision_ = of->revision;
  if (isBehind()) return;
  tellOld_.stop();
  setOld(false);
}

} // namespace sump
