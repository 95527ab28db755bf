#include "app/panels/cost_bar.h"

#include "app/core_text.h"
#include "app/plain_text.h"
#include "app/window/talk.h"

#include "core/exchange/cost_words.h"

#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSettings>
#include <QVBoxLayout>

namespace sump {

namespace {

constexpr const char* kKey = "prices/file";

/// One below the other.
QString lines(const std::vector<std::string>& all) {
  QString text;
  for (const std::string& line : all)
    text += (text.isEmpty() ? "" : "\n") + q(line);
  return text;
}

/// What the bar says, and its tooltip.
std::pair<QString, QString> sumOf(const CostWords& words, const QString& path) {
  const KeptWords kept({q(words.total).section(' ', 0, 0)}); // the currency
  QStringList parts;
  for (const std::string& trade : words.byTrade)
    parts << sentenceCase(coreFilled(trade, kept));
  parts << CostBar::tr("Total: %1").arg(q(words.total));
  if (words.missing.empty()) return {parts.join("   "), path};
  parts << CostBar::tr("Without a price or an amount: %1").arg(words.missing.size());
  return {parts.join("   "),
          CostBar::tr("Without a price or an amount:") + "\n" + lines(words.missing)};
}

} // namespace

CostBar::CostBar(Document& document, Talk& talk, QWidget* parent)
    : QWidget(parent), document_(document), talk_(talk) {
  setObjectName("cost-bar");
  choose_ = new QPushButton(tr("Prices..."), this);
  choose_->setToolTip(
      tr("Read a price list in CSV: item, size, unit, price, currency. The items are "
         "the keys of the bill of materials."));
  drop_ = new QPushButton(tr("Without prices"), this);
  drop_->setToolTip(tr("Put the price list aside"));
  sum_ = new QLabel(this);
  sum_->setObjectName("cost-sum");
  sum_->setTextFormat(Qt::PlainText);
  sum_->setWordWrap(true);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(6, 3, 6, 3);
  row->addWidget(sum_, 1);
  row->addWidget(choose_);
  row->addWidget(drop_);
  connect(&document_, &Document::reviewArrived, this, &CostBar::bringUpToDate);
  connect(choose_, &QPushButton::clicked, this, &CostBar::askPrices);
  connect(drop_, &QPushButton::clicked, this, [this] { usePrices(QString()); });
  QString problem;
  const QString last = QSettings().value(kKey).toString();
  // A list that has gone since is no reason for a dialog at the start.
  if (!last.isEmpty() && read(last, problem)) path_ = last;
  refresh();
}

bool CostBar::read(const QString& path, QString& problem) {
  try {
    prices_ = readPrices(path.toStdString());
    return true;
  } catch (const std::exception& error) {
    problem = errorWords(error);
    return false;
  }
}

void CostBar::askPrices() {
  const QString folder = QFileInfo(path_.isEmpty() ? document_.filePath() : path_).absolutePath();
  const QString path = talk_.askTable(this, tr("Read a price list"), folder, tr("CSV (*.csv)"));
  if (!path.isEmpty()) usePrices(path);
}

void CostBar::usePrices(const QString& path) {
  QString problem;
  if (path.isEmpty()) {
    prices_.reset();
  } else if (!read(path, problem)) {
    talk_.tellProblem(this, tr("The prices cannot be used"), problem);
    return;
  }
  path_ = path;
  QSettings().setValue(kKey, path);
  refresh();
}

void CostBar::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  bringUpToDate();
}

void CostBar::say(const QString& text, const QString& tip) {
  sum_->setText(text);
  sum_->setToolTip(tip);
}

/// Another price list, or none.
void CostBar::refresh() {
  drop_->setVisible(prices_.has_value());
  asked_.reset();
  if (!prices_) say(tr("No price list: read one to see the cost by trade and in all."), QString());
  bringUpToDate();
}

/// The sum needs the search for the least sticks, which takes longer than a frame: made aside.
void CostBar::bringUpToDate() {
  const ReviewedPtr newest = document_.reviewed();
  if (!prices_ || !newest || newest == asked_ || !isInFront(*this)) return;
  asked_ = newest;
  const auto sum = [newest, prices = *prices_, &catalog = document_.catalog(),
                    path = path_]() -> std::pair<QString, QString> {
    try {
      const BuyList buy = buyList(newest->review, {&catalog, nullptr, &prices, std::nullopt});
      return sumOf(costWords(buy), path);
    } catch (const std::exception& error) { // a price for a unit that its item is not counted in
      return {QString::fromUtf8(error.what()), QString()};
    }
  };
  document_.sideWork().ask(this, [this, newest, sum] {
    return [this, newest, told = sum()] { take(newest, told.first, told.second); };
  });
}

void CostBar::take(const ReviewedPtr& of, const QString& text, const QString& tip) {
  if (prices_ && !document_.isOfLeftPlan(*of)) say(text, tip);
}

QWidget* listWithCosts(QWidget* list, Document& document, Talk& talk, QWidget* parent) {
  auto* both = new QWidget(parent);
  auto* column = new QVBoxLayout(both);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(list, 1);
  column->addWidget(new CostBar(document, talk, both));
  return both;
}

} // namespace sump
