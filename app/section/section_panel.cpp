#include "app/section/section_panel.h"

#include <QButtonGroup>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <QToolButton>
#include <QVBoxLayout>

namespace sump {

namespace {

QToolButton* button(const QString& text, const QString& tip, const char* name, QWidget* parent) {
  auto* made = new QToolButton(parent);
  made->setObjectName(name);
  made->setText(text);
  made->setToolTip(tip);
  made->setAccessibleName(text);
  made->setAccessibleDescription(tip);
  made->setFocusPolicy(Qt::TabFocus);
  return made;
}

} // namespace

SectionPanel::SectionPanel(Document& document, Canvas& canvas, QWidget* parent)
    : QWidget(parent), document_(document), canvas_(canvas) {
  setObjectName("section-panel");
  section_ = new LongSection(document, this);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(makeStrip());
  column->addWidget(section_, 1);
  setFocusProxy(section_);
  connect(section_, &LongSection::picked, this, &SectionPanel::picked);
  connect(section_, &LongSection::refused, this, &SectionPanel::refused);
  connect(&canvas_, &Canvas::selectionChanged, this, &SectionPanel::follow);
  connect(&document_, &Document::reviewArrived, this, &SectionPanel::reviewArrived);
  connect(&document_, &Document::replaced, this, &SectionPanel::replaced);
  train_->setChecked(true);
}

QWidget* SectionPanel::makeStrip() {
  auto* strip = new QWidget(this);
  auto* row = new QHBoxLayout(strip);
  row->setContentsMargins(6, 2, 6, 2);
  row->setSpacing(4);
  train_ = button(tr("Vault train"), tr("All vaults in flow order, one behind the other"),
                  "section-train", strip);
  line_ = button(tr("Line"), tr("One pipe or conduit from end to end"), "section-line", strip);
  auto* both = new QButtonGroup(strip);
  for (QToolButton* choice : {train_, line_}) {
    choice->setCheckable(true);
    both->addButton(choice);
    row->addWidget(choice);
  }
  lines_ = new QComboBox(strip);
  lines_->setObjectName("section-lines");
  lines_->setAccessibleName(tr("Line that the section follows"));
  lines_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  lines_->setMinimumContentsLength(16);
  row->addWidget(lines_, 1);
  row->addStretch(1);
  auto* heights = new QLabel(tr("Heights"), strip);
  stretch_ = new QComboBox(strip);
  stretch_->setObjectName("section-stretch");
  stretch_->setAccessibleName(tr("How many times heights are stretched"));
  stretch_->addItem(tr("to fill"));
  for (int factor : {1, 2, 5, 10, 20})
    stretch_->addItem(tr("%1 times").arg(factor), factor);
  heights->setBuddy(stretch_);
  row->addWidget(heights);
  row->addWidget(stretch_);
  auto* whole = button(tr("Whole"), tr("Show all of it (Home)"), "section-fit", strip);
  row->addWidget(whole);
  connect(whole, &QToolButton::clicked, section_, &LongSection::fit);
  connect(train_, &QToolButton::clicked, this, &SectionPanel::showTrain);
  connect(line_, &QToolButton::clicked, this,
          [this] { showLine(lines_->currentData().toString().toStdString()); });
  connect(lines_, &QComboBox::activated, this, [this] {
    const Id run = lines_->currentData().toString().toStdString();
    showLine(run);
    canvas_.select({run});
  });
  connect(stretch_, &QComboBox::activated, this, [this] {
    const QVariant factor = stretch_->currentData();
    section_->setStretch(factor.isValid() ? std::optional(factor.toDouble()) : std::nullopt);
  });
  return strip;
}

void SectionPanel::showTrain() {
  train_->setChecked(true);
  section_->present(SectionKind::Train, {});
}

void SectionPanel::showLine(const Id& run) {
  line_->setChecked(true);
  const int item = lines_->findData(QString::fromStdString(run));
  if (item >= 0) lines_->setCurrentIndex(item);
  section_->present(SectionKind::Line, run);
}

/// One selected line shows that line; vaults or nothing show the train. Anything else changes
/// nothing.
void SectionPanel::follow() {
  const std::set<Id>& selection = canvas_.selection();
  section_->select(selection);
  if (picking_ && section_->kind() == SectionKind::Train) return;
  const Plan& plan = document_.shown();
  if (selection.size() == 1 && plan.runs.find(*selection.begin()) != nullptr) {
    showLine(*selection.begin());
  } else if (selection.empty() || plan.vaults.find(*selection.begin()) != nullptr) {
    showTrain();
  }
}

void SectionPanel::picked(const Id& object) {
  picking_ = true;
  canvas_.select(canvas_.knownObjects({object}));
  picking_ = false;
}

void SectionPanel::fillLines() {
  std::vector<std::pair<Id, std::string>> runs;
  for (const Run& run : document_.shown().runs)
    runs.emplace_back(run.id, run.name);
  if (runs == listed_) return;
  listed_ = std::move(runs);
  const QSignalBlocker blocker(lines_);
  const QVariant last = lines_->currentData();
  lines_->clear();
  for (const auto& [run, name] : listed_) {
    const QString id = QString::fromStdString(run);
    lines_->addItem(name.empty() ? id : id + "  " + QString::fromStdString(name), id);
  }
  lines_->setCurrentIndex(std::max(0, lines_->findData(last)));
}

void SectionPanel::reviewArrived() {
  if (isInFront(*this)) fillLines();
  section_->markStale();
}

void SectionPanel::replaced() {
  fillLines();
  showTrain();
  section_->fit();
}

void SectionPanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  fillLines();
  section_->refresh();
}

} // namespace sump
