#include "app/window/tool_strip.h"

#include "app/window/glossary.h"
#include "app/window/quiet_label.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QTimer>
#include <QVBoxLayout>

namespace sump {

namespace {

bool same(const std::vector<Choice>& a, const std::vector<Choice>& b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (a[i].label != b[i].label || a[i].items != b[i].items || a[i].current != b[i].current)
      return false;
  }
  return true;
}

} // namespace

ToolStrip::ToolStrip(QWidget* parent) : QWidget(parent) {
  setObjectName("tool-strip");
  setAutoFillBackground(true);
  // The hint has the whole width: in two lines of their own, long ones do not push the drawing
  // down.
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(10, 5, 10, 5);
  column->setSpacing(4);
  choices_ = new QWidget(this);
  column->addWidget(choices_);
  hint_ = new QuietLabel(this);
  hint_->setObjectName("hint");
  hint_->setWordWrap(true);
  hint_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  hint_->setMinimumHeight(hint_->fontMetrics().lineSpacing() * 2);
  column->addWidget(hint_);
}

void ToolStrip::setHint(const QString& hint) {
  hint_->say(hint);
  // Keys change choices too (T turns what is placed).
  if (tool_ != nullptr && !same(shown_, tool_->choices())) fill();
}

void ToolStrip::show(Tool& tool) {
  tool_ = &tool;
  fill();
  setHint(tool.hint());
}

void ToolStrip::fill() {
  shown_ = tool_->choices();
  auto* fresh = new QWidget(this);
  auto* row = new QHBoxLayout(fresh);
  row->setContentsMargins(0, 0, 0, 0);
  for (std::size_t i = 0; i < shown_.size(); ++i) {
    auto* label = new QLabel(shown_[i].label, fresh);
    auto* combo = new QComboBox(fresh);
    combo->addItems(shown_[i].items);
    combo->setCurrentIndex(shown_[i].current);
    combo->setToolTip(tipWithTerms(shown_[i].label, shown_[i].tip));
    label->setToolTip(combo->toolTip());
    combo->setAccessibleName(shown_[i].label);
    combo->setFocusPolicy(Qt::TabFocus); // keys stay with the drawing after a click
    label->setBuddy(combo);
    row->addWidget(label);
    row->addWidget(combo);
    connect(combo, &QComboBox::activated, this, [this, i](int item) {
      tool_->choose(i, item);
      QTimer::singleShot(0, this, &ToolStrip::fill); // after the combo's own signal
    });
  }
  row->addStretch();
  layout()->replaceWidget(choices_, fresh);
  choices_->hide();
  choices_->deleteLater();
  choices_ = fresh;
  choices_->setVisible(!shown_.empty());
}

} // namespace sump
