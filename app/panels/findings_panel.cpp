#include "app/panels/findings_panel.h"

#include "app/core_text.h"

#include "app/canvas/mark_painter.h"
#include "app/panels/acceptance.h"
#include "app/panels/finding_filter.h"
#include "app/plain_text.h"
#include "core/rules/rule.h"

#include <QHBoxLayout>
#include <QIcon>
#include <QPainter>
#include <QPushButton>
#include <QStackedLayout>
#include <QVBoxLayout>

#include <array>

namespace sump {

namespace {

QIcon severityIcon(Severity severity, bool dark) {
  QIcon icon;
  for (double ratio : {1.0, 2.0}) {
    QPixmap pixmap(QSize(18, 18) * ratio);
    pixmap.setDevicePixelRatio(ratio);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    paintSeverity(painter, {9, 9}, 16, severity, canvasTheme(dark));
    painter.end();
    icon.addPixmap(pixmap);
  }
  return icon;
}

std::array<QIcon, 3> severityIcons(bool dark) {
  return {severityIcon(Severity::Note, dark), severityIcon(Severity::Warning, dark),
          severityIcon(Severity::Error, dark)};
}

} // namespace

FindingsPanel::FindingsPanel(QWidget* parent) : QWidget(parent) {
  table_ = new ObjectTable({tr("Weight"), tr("What"), tr("Found"), tr("Asked for"), tr("Where")},
                           tr("What is wrong"), this);
  table_->setObjectName("findings");
  detail_ = new QLabel(this);
  detail_->setObjectName("finding-detail");
  detail_->setWordWrap(true);
  detail_->setMargin(6);
  detail_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  auto* full = new QWidget(this);
  auto* column = new QVBoxLayout(full);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  makeTop(full, *column);
  column->addWidget(table_, 1);
  column->addWidget(detail_);
  stack_ = new QStackedLayout(this);
  stack_->addWidget(full);
  stack_->addWidget(emptyNote(tr("Nothing is wrong as far as the checks can tell. They do not "
                                 "replace the local code or a licensed designer."),
                              this));
  connect(table_, &ObjectTable::chosen, this, [this](int row) {
    const Finding* finding = findingAt(row);
    if (finding == nullptr) return;
    emit chosen(std::set<Id>(finding->objects.begin(), finding->objects.end()), finding->place);
  });
  connect(table_, &QTableWidget::currentCellChanged, this, &FindingsPanel::showDetail);
}

void FindingsPanel::makeTop(QWidget* parent, QVBoxLayout& column) {
  filter_ = new FindingFilter(parent);
  connect(filter_, &FindingFilter::changed, this, &FindingsPanel::list);
  accept_ = new QPushButton(tr("Accept..."), parent);
  accept_->setObjectName("finding-accept");
  accept_->setToolTip(tr("Answer for this finding with a written reason"));
  takeBack_ = new QPushButton(tr("Take back"), parent);
  takeBack_->setObjectName("finding-take-back");
  takeBack_->setToolTip(tr("Nobody answers for this finding any more"));
  auto* row = new QHBoxLayout;
  row->setContentsMargins(0, 0, 4, 0);
  row->setSpacing(8);
  row->addWidget(filter_, 1);
  row->addWidget(accept_);
  row->addWidget(takeBack_);
  column.addLayout(row);
  connect(accept_, &QPushButton::clicked, this, [this] {
    if (const Finding* finding = findingAt(table_->currentRow())) emit acceptWanted(*finding);
  });
  connect(takeBack_, &QPushButton::clicked, this, [this] {
    if (const Finding* finding = findingAt(table_->currentRow())) emit takeBackWanted(*finding);
  });
}

const Finding* FindingsPanel::findingAt(int row) const {
  if (!reviewed_ || row < 0 || row >= static_cast<int>(listed_.size())) return nullptr;
  return &reviewed_->review.findings[listed_[static_cast<std::size_t>(row)]];
}

void FindingsPanel::show(const ReviewedPtr& reviewed) {
  newest_ = reviewed;
  if (isInFront(*this)) cameToFront();
}

void FindingsPanel::cameToFront() {
  if (newest_ == reviewed_) return;
  reviewed_ = newest_;
  list();
}

void FindingsPanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  cameToFront();
}

void FindingsPanel::list() {
  if (!reviewed_) return;
  const Review& review = reviewed_->review;
  std::vector<TableRow> rows;
  listed_.clear();
  for (std::size_t i = 0; i < review.findings.size(); ++i) {
    const Finding& finding = review.findings[i];
    if (!filter_->passes(finding, finding.accepted.has_value())) continue;
    rows.push_back(reviewed_->findingRows[i]);
    listed_.push_back(i);
  }
  stack_->setCurrentIndex(review.findings.empty() ? 1 : 0);
  const bool first = table_->rowCount() == 0;
  table_->fill(rows, 1);
  fillIcons();
  if (first) table_->spread(); // later the table does so itself, when the rows have come to rest
  showDetail();
}

void FindingsPanel::setDark(bool dark) {
  dark_ = dark;
  fillIcons();
}

void FindingsPanel::fillIcons() {
  static const std::array<std::array<QIcon, 3>, 2> kIcons = {severityIcons(false),
                                                             severityIcons(true)};
  const std::array<QIcon, 3>& icons = kIcons[dark_ ? 1 : 0];
  for (int r = 0; r < table_->rowCount(); ++r) {
    const Finding* finding = findingAt(r);
    if (finding == nullptr) continue;
    // Rows that stayed have theirs; setting it again would lay the list out anew.
    const QIcon& icon = icons[static_cast<std::size_t>(finding->severity)];
    QTableWidgetItem* item = table_->item(r, 0);
    if (item->icon().cacheKey() == icon.cacheKey()) continue;
    item->setIcon(icon);
  }
}

void FindingsPanel::showDetail() {
  const Finding* finding = findingAt(table_->currentRow());
  const Acceptance* accepted =
      finding == nullptr ? nullptr : acceptanceOf(reviewed_->review.plan, finding->key());
  detail_->setVisible(finding != nullptr);
  // A note is a statement: there is nothing to answer for.
  accept_->setEnabled(finding != nullptr && finding->severity != Severity::Note);
  takeBack_->setEnabled(accepted != nullptr);
  if (finding == nullptr) return;
  const Rule* rule = ruleById(finding->rule);
  // The whole of it first: the list may have room for its beginning only.
  QString text = tr("%1<br><b>To mend it:</b> %2<br><small>%3</small>")
                     .arg(messageText(finding->what).toHtmlEscaped(),
                          messageText(finding->mend).toHtmlEscaped(),
                          rule == nullptr ? QString() : coreFilled(rule->citation).toHtmlEscaped());
  if (accepted != nullptr) {
    text.prepend(tr("<b>Accepted by %1, %2:</b> %3<br>")
                     .arg(q(accepted->by).toHtmlEscaped(), q(accepted->date).toHtmlEscaped(),
                          q(accepted->reason).toHtmlEscaped()));
  }
  detail_->setText(text);
}

QString FindingsPanel::summary(const Review& review) {
  int counts[3] = {0, 0, 0}, accepted = 0;
  for (const Finding& finding : review.findings)
    ++(finding.accepted ? accepted : counts[static_cast<std::size_t>(finding.severity)]);
  const QString errors = counts[2] == 1 ? tr("1 error") : tr("%1 errors").arg(counts[2]);
  const QString warnings = counts[1] == 1 ? tr("1 warning") : tr("%1 warnings").arg(counts[1]);
  const QString notes = counts[0] == 1 ? tr("1 note") : tr("%1 notes").arg(counts[0]);
  const QString open = tr("%1, %2, %3").arg(errors, warnings, notes);
  return accepted == 0 ? open : tr("%1, %2 accepted").arg(open).arg(accepted);
}

} // namespace sump
