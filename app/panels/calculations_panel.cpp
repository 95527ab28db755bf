#include "app/panels/calculations_panel.h"

#include "app/core_text.h"
#include "app/panels/calculation_tree.h"

#include <QCheckBox>
#include <QEvent>
#include <QLabel>
#include <QLineEdit>
#include <QSplitter>
#include <QTextBrowser>
#include <QUrl>
#include <QVBoxLayout>

#include <algorithm>
#include <functional>

namespace sump {

namespace {

/// A study that takes longer than this is announced as being worked on.
constexpr int kStaleAfterMs = 200;

QString searchedIn(const NumberedCalculation& entry) {
  const Calculation& c = entry.calculation;
  return shown(entry.number + ' ' + c.title + ' ' + c.object + ' ' + c.section + ' ' + c.formula +
               ' ' + c.id + ' ' + c.needs) +
         ' ' + coreText(c.title);
}

/// Qt rounds the columns of a table up to whole dots each, so that a table as wide as the page can
/// come out a little wider: it is laid out for a page as much narrower.
class PageBrowser : public QTextBrowser {
public:
  /// `resized` when the page has another width.
  PageBrowser(QWidget* parent, std::function<void()> resized)
      : QTextBrowser(parent), resized_(std::move(resized)) {
    setLineWrapMode(QTextEdit::FixedPixelWidth);
    setWordWrapMode(pageOption().wrapMode());
  }

protected:
  void resizeEvent(QResizeEvent* event) override {
    constexpr int kRounding = 3;
    const int width = std::max(1, viewport()->width() - kRounding);
    const bool changed = width != lineWrapColumnOrWidth();
    setLineWrapColumnOrWidth(width);
    QTextBrowser::resizeEvent(event);
    if (changed) resized_();
  }

private:
  std::function<void()> resized_;
};

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
  words_->setPlaceholderText(tr("Words"));
  words_->setClearButtonEnabled(true);
  only_ = new QCheckBox(tr("Only what is selected"), side);
  only_->setObjectName("calculation-only");
  only_->setChecked(true);
  only_->setToolTip(tr("While something is selected in the drawing, list only its calculations"));
  tree_ = new CalculationTree(side);
  connect(tree_, &CalculationTree::chosen, this, &CalculationsPanel::open);
  auto* top = new QHBoxLayout;
  top->setContentsMargins(4, 4, 4, 4);
  top->setSpacing(8);
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

QWidget* CalculationsPanel::makePage() {
  page_ = new PageBrowser(this, [this] {
    if (worked_.reviewed) showPage();
  });
  page_->setObjectName("calculation-page");
  page_->setAccessibleName(tr("The calculation"));
  page_->setOpenLinks(false);
  page_->setFrameShape(QFrame::NoFrame);
  // A bar that comes and goes lays wide tables out for the width without it.
  page_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
  page_->document()->setDocumentMargin(10);
  connect(page_, &QTextBrowser::anchorClicked, this, &CalculationsPanel::follow);
  return page_;
}

PageSource CalculationsPanel::source() const {
  const int margins = 2 * static_cast<int>(page_->document()->documentMargin());
  return {worked_.reviewed->review,
          worked_.outline,
          worked_.groups,
          worked_.names,
          palette().color(QPalette::PlaceholderText),
          page_->lineWrapColumnOrWidth() - margins,
          page_->document()->defaultFont()};
}

void CalculationsPanel::documentChanged() {
  if (isBehind() && !stale_.isActive()) stale_.start();
}

void CalculationsPanel::tellIfStale() {
  staleNote_->setVisible(isBehind());
}

void CalculationsPanel::reviewArrived() {
  // A drag brings a review each frame: behind another tab this waits until it is shown.
  if (isInFront(*this)) refresh();
}

void CalculationsPanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  cameToFront();
}

/// What is called for is shown at once; what changes while it is looked at follows from aside.
void CalculationsPanel::cameToFront() {
  const ReviewedPtr newest = document_.reviewed();
  if (!newest || newest == worked_.reviewed || !isInFront(*this)) return;
  asked_ = newest;
  take(workOut(newest, document_.catalog()));
}

void CalculationsPanel::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange && worked_.reviewed) showPage();
}

CalculationsPanel::Worked CalculationsPanel::workOut(const ReviewedPtr& reviewed,
                                                     const Catalog& catalog) {
  const Review& review = reviewed->review;
  const QStringList names = namesIn(review.plan);
  return {reviewed, CalculationOutline(calculations(review.plan, review.study)),
          basisGroups({review.plan, catalog, nullptr}), names, KeptWords(names)};
}

void CalculationsPanel::refresh() {
  const ReviewedPtr newest = document_.reviewed();
  if (!newest || newest == asked_) return;
  asked_ = newest;
  document_.sideWork().ask(this, [this, newest, &catalog = document_.catalog()] {
    return [this, worked = workOut(newest, catalog)]() mutable { take(std::move(worked)); };
  });
}

void CalculationsPanel::take(Worked worked) {
  const Ticket ticket = worked.reviewed->ticket;
  if (document_.isOfLeftPlan(*worked.reviewed)) return;
  if (worked_.reviewed && ticket < worked_.reviewed->ticket) return; // overtaken by cameToFront
  worked_ = std::move(worked);
  if (!isBehind()) {
    stale_.stop();
    staleNote_->hide();
  }
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
  const QString text = searchedIn(entry);
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
  if (!worked_.reviewed) return;
  listed_.clear();
  for (const CalculationSection& section : worked_.outline.sections()) {
    CalculationSection kept{section.number, section.title, {}};
    std::ranges::copy_if(section.entries, std::back_inserter(kept.entries),
                         [this](const NumberedCalculation& e) { return passes(e); });
    if (!kept.entries.empty()) listed_.push_back(std::move(kept));
  }
  choose();
  tree_->fill(listed_, !words_->text().isEmpty() || filtered(),
              {worked_.reviewed->review.plan.project.units, worked_.kept});
  tree_->mark(current_);
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

bool CalculationsPanel::open(const std::string& number) {
  for (const CalculationSection& section : worked_.outline.sections()) {
    if (section.number == number) wanted_ = {"", section.title};
    const auto entry = std::ranges::find(section.entries, number, &NumberedCalculation::number);
    if (entry != section.entries.end())
      wanted_ = {entry->calculation.id, entry->calculation.object};
    if (section.number != number && entry == section.entries.end()) continue;
    current_ = number;
    tree_->mark(current_);
    showPage();
    return true;
  }
  return false;
}

void CalculationsPanel::showSummary() {
  constexpr std::size_t kMost = 3; ///< objects, one a line
  const Review& review = worked_.reviewed->review;
  QStringList lines;
  for (const Id& id : selection_) {
    if (static_cast<std::size_t>(lines.size()) == kMost) break;
    const ObjectSummary summary = objectSummary(review, id);
    if (!summary.figures.empty()) lines << summaryHtml(summary, source());
  }
  if (lines.isEmpty()) lines << summaryHtml(objectSummary(review, ""), source());
  summary_->setText(lines.join("<br>"));
}

void CalculationsPanel::showPage() {
  QString html;
  if (listed_.empty() && current_.empty())
    html = tr("<p>Nothing is worked out for this choice.</p>");
  // The section as listed, so that it shows what is selected; a calculation wherever it is.
  for (const CalculationSection& section : listed_) {
    if (section.number == current_) html = sectionPage(source(), section);
  }
  for (const CalculationSection& section : worked_.outline.sections()) {
    const auto entry = std::ranges::find(section.entries, current_, &NumberedCalculation::number);
    if (entry != section.entries.end()) html = calculationPage(source(), *entry);
  }
  if (html == html_) return;
  html_ = html;
  page_->setHtml(html_);
}

void CalculationsPanel::follow(const QUrl& url) {
  const std::string target = url.path(QUrl::FullyDecoded).toStdString();
  if (url.scheme() == "calculation") open(target);
  if (url.scheme() == "know") emit knowWanted(target);
  if (url.scheme() == "object") emit objectWanted({target});
}

} // namespace sump
