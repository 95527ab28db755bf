#include "app/panels/findings_panel.h"

#include "app/canvas/mark_painter.h"
#include "core/rules/rule.h"

#include <QIcon>
#include <QPainter>
#include <QStackedLayout>
#include <QVBoxLayout>

namespace sump {

namespace {

QString q(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString severityWord(Severity severity) {
  switch (severity) {
  case Severity::Error:
    return FindingsPanel::tr("Error");
  case Severity::Warning:
    return FindingsPanel::tr("Warning");
  case Severity::Note:
    break;
  }
  return FindingsPanel::tr("Note");
}

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

TableRow rowOf(const Finding& finding) {
  TableRow row;
  QStringList objects;
  for (const Id& id : finding.objects)
    objects << q(id);
  row.cells << severityWord(finding.severity) << q(sump::render(finding.what))
            << q(finding.measured.value_or("")) << q(finding.required.value_or(""))
            << objects.join(", ");
  row.objects = std::set<Id>(finding.objects.begin(), finding.objects.end());
  row.tip = QString("<p>%1</p><p>%2</p>")
                .arg(q(sump::render(finding.what)).toHtmlEscaped(),
                     q(sump::render(finding.mend)).toHtmlEscaped());
  return row;
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
  column->addWidget(table_, 1);
  column->addWidget(detail_);
  stack_ = new QStackedLayout(this);
  stack_->addWidget(full);
  stack_->addWidget(emptyNote(tr("Nothing is wrong as far as the checks can tell. They do not "
                                 "replace the local code or a licensed designer."),
                              this));
  connect(table_, &ObjectTable::chosen, this, [this](int row) {
    if (!reviewed_) return;
    const Finding& finding = reviewed_->review.findings[static_cast<std::size_t>(row)];
    emit chosen(std::set<Id>(finding.objects.begin(), finding.objects.end()), finding.place);
  });
  connect(table_, &QTableWidget::currentCellChanged, this, &FindingsPanel::showDetail);
}

void FindingsPanel::show(const ReviewedPtr& reviewed) {
  reviewed_ = reviewed;
  std::vector<TableRow> rows;
  for (const Finding& finding : reviewed->review.findings)
    rows.push_back(rowOf(finding));
  stack_->setCurrentIndex(rows.empty() ? 1 : 0);
  table_->fill(rows, 1);
  fillIcons();
  showDetail();
}

void FindingsPanel::setDark(bool dark) {
  dark_ = dark;
  fillIcons();
}

void FindingsPanel::fillIcons() {
  if (!reviewed_) return;
  const std::vector<Finding>& findings = reviewed_->review.findings;
  const QIcon icons[] = {severityIcon(Severity::Note, dark_),
                         severityIcon(Severity::Warning, dark_),
                         severityIcon(Severity::Error, dark_)};
  for (int r = 0; r < table_->rowCount(); ++r) {
    const Severity severity = findings[static_cast<std::size_t>(r)].severity;
    table_->item(r, 0)->setIcon(icons[static_cast<std::size_t>(severity)]);
  }
}

void FindingsPanel::showDetail() {
  const int row = table_->currentRow();
  const bool any =
      reviewed_ && row >= 0 && row < static_cast<int>(reviewed_->review.findings.size());
  detail_->setVisible(any);
  if (!any) return;
  const Finding& finding = reviewed_->review.findings[static_cast<std::size_t>(row)];
  const Rule* rule = ruleById(finding.rule);
  detail_->setText(tr("<b>To mend it:</b> %1<br><small>%2</small>")
                       .arg(q(sump::render(finding.mend)).toHtmlEscaped(),
                            rule == nullptr ? QString() : q(rule->citation).toHtmlEscaped()));
}

QString FindingsPanel::summary(const Review& review) {
  int counts[3] = {0, 0, 0};
  for (const Finding& finding : review.findings)
    ++counts[static_cast<std::size_t>(finding.severity)];
  return tr("%1 errors, %2 warnings, %3 notes").arg(counts[2]).arg(counts[1]).arg(counts[0]);
}

} // namespace sump
