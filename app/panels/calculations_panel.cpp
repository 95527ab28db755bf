#include "app/panels/calculations_panel.h"

#include "core/study/calculation_print.h"

#include <QCheckBox>
#include <QEvent>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QScrollBar>
#include <QSplitter>
#include <QTextBrowser>
#include <QTreeWidget>
#include <QTreeWidgetItemIterator>
#include <QUrl>
#include <QVBoxLayout>

#include <algorithm>

namespace sump {

namespace {

/// A study that takes longer than this is announced as being worked on.
constexpr int kStaleAfterMs = 200;
constexpr int kNumberRole = Qt::UserRole;

QString searched(const NumberedCalculation& entry) {
  const Calculation& c = entry.calculation;
  return shown(entry.number + ' ' + c.title + ' ' + c.object + ' ' + c.section + ' ' + c.formula +
               ' ' + c.id + ' ' + c.needs);
}

QString numberOf(const QTreeWidgetItem* item) {
  return item == nullptr ? QString() : item->data(0, kNumberRole).toString();
}

} // namespace

CalculationsPanel::CalculationsPanel(Document& document, QWidget* parent)
    : QWidget(parent), document_(document) {
  setObjectName("calculations");
  setAccessibleName(tr("How it works out"));
  makeHead();
  auto* both = new QSplitter(Qt::Horizontal, this);
  both->addWidget(makeList());
  both->addWidget(makePage());
  both->setStretchFactor(0, 2);
  both->setStretchFactor(1, 3);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(summary_);
  column->addWidget(staleNote_);
  column->addWidget(both, 1);
  stale_.setSingleShot(true);
  stale_.setInterval(kStaleAfterMs);
  connect(&stale_, &QTimer::timeout, this, &CalculationsPanel::tellIfStale);
  connect(&document_, &Document::changed, this, &CalculationsPanel::documentChanged);
  connect(&document_, &Document::reviewArrived, this, &CalculationsPanel::reviewArrived);
}

void CalculationsPanel::makeHead() {
  summary_ = new QLabel(this);
  summary_->setObjectName("calculation-summary");
  summary_->setWordWrap(true);
  summary_->setMargin(6);
  summary_->setTextFormat(Qt::RichText);
  summary_->setTextInteractionFlags(Qt::TextBrowserInteraction);
  connect(summary_, &QLabel::linkActivated, this, [this](const QString& to) { follow(QUrl(to)); });
  staleNote_ = new QLabel(
      tr("Being worked out anew: these figures are of the plan before the last change."), this);
  staleNote_->setObjectName("calculation-stale");
  staleNote_->setMargin(6);
  staleNote_->hide();
}

QWidget* CalculationsPanel::makeList() {
  auto* side = new QWidget(this);
  words_ = new QLineEdit(side);
  words_->setObjectName("calculation-words");
  words_->setAccessibleName(tr("Words in the calculation"));
  words_->setPlaceholderText(tr("Words, line or vault"));
  words_->setClearButtonEnabled(true);
  only_ = new QCheckBox(tr("Only what is selected"), side);
  only_->setObjectName("calculation-only");
  only_->setChecked(true);
  only_->setToolTip(tr("While something is selected in the drawing, list only its calculations"));
  makeTree(side);
  auto* top = new QHBoxLayout;
  top->setContentsMargins(4, 4, 4, 4);
  top->addWidget(words_, 1);
  top->addWidget(only_);
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addLayout(top);
  column->addWidget(tree_, 1);
  connect(words_, &QLineEdit::textChanged, this, &CalculationsPanel::list);
  connect(only_, &QCheckBox::toggled, this, &CalculationsPanel::list);
  return side;
}

void CalculationsPanel::makeTree(QWidget* parent) {
  tree_ = new QTreeWidget(parent);
  tree_->setObjectName("calculation-tree");
  tree_->setAccessibleName(tr("Calculations"));
  tree_->setColumnCount(3);
  tree_->setHeaderLabels({tr("Quantity"), tr("Of"), tr("Result")});
  tree_->header()->setSectionResizeMode(0, QHeaderView::Stretch);
  tree_->header()->setSectionResizeMode(1, QHeaderView::ResizeToContents);
  tree_->header()->setSectionResizeMode(2, QHeaderView::ResizeToContents);
  tree_->header()->setStretchLastSection(false);
  tree_->setFrameShape(QFrame::NoFrame);
  tree_->setUniformRowHeights(true);
  connect(tree_, &QTreeWidget::currentItemChanged, this, [this](const QTreeWidgetItem* item) {
    if (!listing_ && item != nullptr) open(numberOf(item).toStdString());
  });
  const auto fold = [this](bool open) {
    return [this, open](const QTreeWidgetItem* item) {
      if (listing_) return;
      if (open) {
        unfolded_.insert(item->text(0));
      } else {
        unfolded_.erase(item->text(0));
      }
    };
  };
  connect(tree_, &QTreeWidget::itemExpanded, this, fold(true));
  connect(tree_, &QTreeWidget::itemCollapsed, this, fold(false));
}

QWidget* CalculationsPanel::makePage() {
  page_ = new QTextBrowser(this);
  page_->setObjectName("calculation-page");
  page_->setAccessibleName(tr("The calculation"));
  page_->setOpenLinks(false);
  page_->setFrameShape(QFrame::NoFrame);
  page_->document()->setDocumentMargin(10);
  connect(page_, &QTextBrowser::anchorClicked, this, &CalculationsPanel::follow);
  return page_;
}

PageSource CalculationsPanel::source() const {
  return {reviewed_->review, outline_, groups_, palette().color(QPalette::PlaceholderText)};
}

void CalculationsPanel::documentChanged() {
  if (document_.isReviewStale() && !stale_.isActive()) stale_.start();
}

void CalculationsPanel::tellIfStale() {
  staleNote_->setVisible(document_.isReviewStale());
}

void CalculationsPanel::reviewArrived() {
  if (!document_.isReviewStale()) {
    stale_.stop();
    staleNote_->hide();
  }
  // A drag brings a review each frame: behind another tab this waits until it is shown.
  if (isVisible()) refresh();
}

void CalculationsPanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  refresh();
}

void CalculationsPanel::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange && reviewed_) showPage();
}

void CalculationsPanel::refresh() {
  const ReviewedPtr newest = document_.reviewed();
  if (!newest || newest == reviewed_) return;
  reviewed_ = newest;
  const Review& review = reviewed_->review;
  outline_ = CalculationOutline(calculations(review.plan, review.study));
  groups_ = basisGroups({review.plan, document_.catalog(), nullptr});
  list();
}

void CalculationsPanel::setSelection(const std::set<Id>& objects) {
  if (objects == selection_) return;
  selection_ = objects;
  if (isVisible()) list();
}

bool CalculationsPanel::filtered() const {
  return only_->isChecked() && !selection_.empty();
}

bool CalculationsPanel::passes(const NumberedCalculation& entry) const {
  if (filtered() && !selection_.contains(entry.calculation.object)) return false;
  const QString text = searched(entry);
  for (const QString& word : words_->text().split(' ', Qt::SkipEmptyParts)) {
    if (!text.contains(word, Qt::CaseInsensitive)) return false;
  }
  return true;
}

std::vector<std::string> CalculationsPanel::listed() const {
  std::vector<std::string> numbers;
  for (const CalculationSection& section : listed_) {
    for (const NumberedCalculation& entry : section.entries)
      numbers.push_back(entry.number);
  }
  return numbers;
}

/// Fills the list anew and keeps what is on the page if it is still listed.
void CalculationsPanel::list() {
  if (!reviewed_) return;
  listed_.clear();
  for (const CalculationSection& section : outline_.sections()) {
    CalculationSection kept{section.number, section.title, {}};
    std::ranges::copy_if(section.entries, std::back_inserter(kept.entries),
                         [this](const NumberedCalculation& e) { return passes(e); });
    if (!kept.entries.empty()) listed_.push_back(std::move(kept));
  }
  choose();
  fillTree();
  markInTree();
  showSummary();
  showPage();
}

void CalculationsPanel::choose() {
  current_ = listed_.empty() ? std::string() : listed_.front().number;
  for (const CalculationSection& section : listed_) {
    if (wanted_ == std::pair<std::string, std::string>("", section.title))
      current_ = section.number;
    for (const NumberedCalculation& entry : section.entries) {
      if (wanted_ == std::pair(entry.calculation.id, entry.calculation.object))
        current_ = entry.number;
    }
  }
}

void CalculationsPanel::fillTree() {
  const int scroll = tree_->verticalScrollBar()->value();
  listing_ = true;
  tree_->clear();
  for (const CalculationSection& section : listed_)
    addSection(section);
  listing_ = false;
  tree_->verticalScrollBar()->setValue(scroll);
}

void CalculationsPanel::addSection(const CalculationSection& section) {
  const UnitSystem units = reviewed_->review.plan.project.units;
  auto* head = new QTreeWidgetItem(tree_, {shown(section.title)});
  head->setData(0, kNumberRole, shown(section.number));
  QFont bold = head->font(0);
  bold.setBold(true);
  head->setFont(0, bold);
  for (const NumberedCalculation& entry : section.entries) {
    const Calculation& c = entry.calculation;
    const QString result = c.decided ? shown(printResult(c, units)) : tr("cannot be decided");
    auto* item = new QTreeWidgetItem(head, {shown(c.title), shown(c.object), result});
    item->setData(0, kNumberRole, shown(entry.number));
    item->setTextAlignment(2, Qt::AlignRight | Qt::AlignVCenter);
    item->setToolTip(0, shown(entry.number + "  " + c.title));
    if (!c.decided) item->setToolTip(2, tr("Needs %1").arg(shown(c.needs)));
  }
  const bool search = !words_->text().isEmpty() || filtered();
  head->setExpanded(search || unfolded_.contains(head->text(0)));
}

void CalculationsPanel::markInTree() {
  listing_ = true;
  tree_->setCurrentItem(nullptr);
  for (QTreeWidgetItemIterator at(tree_); *at != nullptr; ++at) {
    if (numberOf(*at).toStdString() == current_) tree_->setCurrentItem(*at);
  }
  listing_ = false;
}

bool CalculationsPanel::open(const std::string& number) {
  for (const CalculationSection& section : outline_.sections()) {
    if (section.number == number) wanted_ = {"", section.title};
    const auto entry = std::ranges::find(section.entries, number, &NumberedCalculation::number);
    if (entry != section.entries.end())
      wanted_ = {entry->calculation.id, entry->calculation.object};
    if (section.number != number && entry == section.entries.end()) continue;
    current_ = number;
    markInTree();
    showPage();
    return true;
  }
  return false;
}

void CalculationsPanel::showSummary() {
  constexpr std::size_t kMost = 3; ///< objects, one a line
  const Review& review = reviewed_->review;
  QStringList lines;
  for (const Id& id : selection_) {
    if (static_cast<std::size_t>(lines.size()) == kMost) break;
    const ObjectSummary summary = objectSummary(review, id);
    if (!summary.figures.empty()) lines << summaryHtml(summary, groups_);
  }
  if (lines.isEmpty()) lines << summaryHtml(objectSummary(review, ""), groups_);
  summary_->setText(lines.join("<br>"));
}

void CalculationsPanel::showPage() {
  if (listed_.empty() && current_.empty()) {
    page_->setHtml(tr("<p>Nothing is worked out for this choice.</p>"));
    return;
  }
  // The section as listed, so that it shows what is selected; a calculation wherever it is.
  for (const CalculationSection& section : listed_) {
    if (section.number == current_) page_->setHtml(sectionPage(source(), section));
  }
  for (const CalculationSection& section : outline_.sections()) {
    const auto entry = std::ranges::find(section.entries, current_, &NumberedCalculation::number);
    if (entry != section.entries.end()) page_->setHtml(calculationPage(source(), *entry));
  }
}

void CalculationsPanel::follow(const QUrl& url) {
  const std::string target = url.path(QUrl::FullyDecoded).toStdString();
  if (url.scheme() == "calculation") open(target);
  if (url.scheme() == "know") emit knowWanted(target);
  if (url.scheme() == "object") emit objectWanted({target});
}

} // namespace sump
