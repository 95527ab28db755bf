#include "app/panels/finding_filter.h"

#include "app/core_text.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLineEdit>

#include <algorithm>

namespace sump {

namespace {

constexpr int kAny = 0, kOpen = 1, kAccepted = 2;

/// Of `about_`: everything, then the trades, then the services.
constexpr int kEverything = -1, kServices = 100;

QString tradeName(Trade trade) {
  switch (trade) {
  case Trade::SiteWork:
    return FindingFilter::tr("Site work");
  case Trade::Plumbing:
    return FindingFilter::tr("Plumbing");
  case Trade::Electrical:
    return FindingFilter::tr("Electrical");
  case Trade::General:
    break;
  }
  return FindingFilter::tr("No one trade");
}

QString searched(const Finding& finding) {
  QString text = messageText(finding.what) + ' ' + QString::fromStdString(finding.rule) + ' ' +
                 QString::fromStdString(finding.which);
  for (const Id& id : finding.objects)
    text += ' ' + QString::fromStdString(id);
  return text;
}

} // namespace

FindingFilter::FindingFilter(QWidget* parent) : QWidget(parent) {
  weight_ = new QComboBox(this);
  weight_->setObjectName("finding-weight");
  weight_->setAccessibleName(tr("Weight of the findings shown"));
  weight_->addItem(tr("All weights"), static_cast<int>(Severity::Note));
  weight_->addItem(tr("Warnings and errors"), static_cast<int>(Severity::Warning));
  weight_->addItem(tr("Errors only"), static_cast<int>(Severity::Error));
  about_ = new QComboBox(this);
  fillAbout();
  state_ = new QComboBox(this);
  state_->setObjectName("finding-state");
  state_->setAccessibleName(tr("Accepted or open findings"));
  state_->addItem(tr("Any state"), kAny);
  state_->addItem(tr("Open"), kOpen);
  state_->addItem(tr("Accepted"), kAccepted);
  text_ = new QLineEdit(this);
  text_->setObjectName("finding-text");
  text_->setAccessibleName(tr("Words in the finding"));
  text_->setPlaceholderText(tr("Words"));
  text_->setClearButtonEnabled(true);
  text_->setMinimumWidth(text_->fontMetrics().horizontalAdvance(text_->placeholderText()) + 24);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(4, 4, 4, 4);
  row->addWidget(weight_);
  row->addWidget(about_);
  row->addWidget(state_);
  row->addWidget(text_, 1);
  for (QComboBox* box : {weight_, about_, state_})
    connect(box, &QComboBox::currentIndexChanged, this, &FindingFilter::changed);
  connect(text_, &QLineEdit::textChanged, this, &FindingFilter::changed);
}

void FindingFilter::fillAbout() {
  about_->setObjectName("finding-about");
  about_->setAccessibleName(tr("Trade or line that the findings are about"));
  about_->addItem(tr("All trades"), kEverything);
  for (Trade trade : {Trade::SiteWork, Trade::Plumbing, Trade::Electrical, Trade::General})
    about_->addItem(tradeName(trade), static_cast<int>(trade));
  about_->insertSeparator(about_->count());
  for (const ServiceFacts& service : serviceTable()) {
    about_->addItem(coreText(service.name), kServices + static_cast<int>(service.service));
  }
  // Long names of lines do not widen the row; the list that drops down shows them whole.
  about_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  about_->setMinimumContentsLength(11);
}

bool FindingFilter::isAbout(const Finding& finding) const {
  const int about = about_->currentData().toInt();
  if (about == kEverything) return true;
  if (about < kServices) return finding.trade == static_cast<Trade>(about);
  const auto service = static_cast<Service>(about - kServices);
  return std::ranges::find(finding.services, service) != finding.services.end();
}

bool FindingFilter::passes(const Finding& finding, bool accepted) const {
  if (static_cast<int>(finding.severity) < weight_->currentData().toInt()) return false;
  if (!isAbout(finding)) return false;
  const int state = state_->currentData().toInt();
  if (state != kAny && (state == kAccepted) != accepted) return false;
  const QStringList words = text_->text().split(' ', Qt::SkipEmptyParts);
  if (words.isEmpty()) return true;
  const QString text = searched(finding);
  for (const QString& word : words) {
    if (!text.contains(word, Qt::CaseInsensitive)) return false;
  }
  return true;
}

} // namespace sump
