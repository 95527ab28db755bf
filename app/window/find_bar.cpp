#include "app/window/find_bar.h"

#include "app/panels/field.h"

#include "core/plan/edits_objects.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include <algorithm>

namespace sump {

namespace {

template <class T> const std::string* nameIn(const Items<T>& items, const Id& id) {
  const T* found = items.find(id);
  return found == nullptr ? nullptr : &found->name;
}

QString nameOf(const Plan& plan, const Id& id) {
  for (const std::string* name :
       {nameIn(plan.buildings, id), nameIn(plan.pavements, id), nameIn(plan.utilities, id),
        nameIn(plan.wells, id), nameIn(plan.basins, id), nameIn(plan.sewers, id),
        nameIn(plan.washes, id), nameIn(plan.rooms, id), nameIn(plan.vaults, id),
        nameIn(plan.runs, id), nameIn(plan.underlays, id)}) {
    if (name != nullptr) return QString::fromStdString(*name);
  }
  return {};
}

} // namespace

std::vector<Id> findObjects(const Plan& plan, const QString& text) {
  std::vector<Id> found;
  const QString wanted = text.trimmed();
  if (wanted.isEmpty()) return found;
  for (const Id& id : allObjects(plan)) {
    const QString words = objectTitle(plan, id) + ' ' + nameOf(plan, id);
    if (words.contains(wanted, Qt::CaseInsensitive)) found.push_back(id);
  }
  std::stable_partition(found.begin(), found.end(), [&wanted](const Id& id) {
    return QString::fromStdString(id).compare(wanted, Qt::CaseInsensitive) == 0;
  });
  return found;
}

FindBar::FindBar(Document& document, Canvas& canvas, QWidget* parent)
    : QWidget(parent), document_(document), canvas_(canvas) {
  setObjectName("find-bar");
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(10, 4, 10, 4);
  row->setSpacing(8);
  auto* label = new QLabel(tr("Find"), this);
  line_ = new QLineEdit(this);
  line_->setObjectName("find-text");
  line_->setAccessibleName(tr("Id, name or kind"));
  line_->setPlaceholderText(tr("Id, name or kind"));
  label->setBuddy(line_);
  count_ = new QLabel(this);
  count_->setObjectName("find-count");
  previous_ = makeButton(tr("Previous"), "find-previous", tr("Look at the one before (Shift+F3)"));
  next_ = makeButton(tr("Next"), "find-next", tr("Look at the next one (F3)"));
  QPushButton* close = makeButton(tr("Close"), "find-close", tr("Back to the drawing (Esc)"));
  row->addWidget(label);
  row->addWidget(line_, 1);
  for (QWidget* widget : std::initializer_list<QWidget*>{count_, previous_, next_, close})
    row->addWidget(widget);
  connect(line_, &QLineEdit::textChanged, this, &FindBar::typed);
  connect(previous_, &QPushButton::clicked, this, [this] { step(-1); });
  connect(next_, &QPushButton::clicked, this, [this] { step(1); });
  connect(close, &QPushButton::clicked, this, &FindBar::shut);
  hide();
}

QPushButton* FindBar::makeButton(const QString& text, const char* name, const QString& tip) {
  auto* button = new QPushButton(text, this);
  button->setObjectName(name);
  button->setToolTip(tip);
  button->setAutoDefault(true); // Enter presses it
  return button;
}

void FindBar::open() {
  show();
  line_->setFocus();
  line_->selectAll();
  typed();
}

void FindBar::shut() {
  hide();
  canvas_.setFocus();
}

void FindBar::typed() {
  at_.reset();
  const std::size_t count = findObjects(document_.plan(), line_->text()).size();
  count_->setText(line_->text().trimmed().isEmpty() ? QString() : tr("%1 found").arg(count));
  previous_->setEnabled(count > 0);
  next_->setEnabled(count > 0);
}

void FindBar::step(int by) {
  const std::vector<Id> found = findObjects(document_.plan(), line_->text());
  if (found.empty()) return typed(); // the last one may have been deleted since
  const std::size_t first = by > 0 ? 0 : found.size() - 1;
  const std::size_t forward = by > 0 ? 1 : found.size() - 1;
  at_ = at_ ? (*at_ + forward) % found.size() : first;
  canvas_.select({found[*at_]});
  canvas_.lookAt({found[*at_]}, std::nullopt);
  count_->setText(tr("%1 of %2").arg(*at_ + 1).arg(found.size()));
}

void FindBar::keyPressEvent(QKeyEvent* event) {
  const bool back = event->modifiers().testFlag(Qt::ShiftModifier);
  switch (event->key()) {
  case Qt::Key_Escape:
    return shut();
  case Qt::Key_F3:
  case Qt::Key_Return:
  case Qt::Key_Enter:
    return step(back ? -1 : 1);
  default:
    QWidget::keyPressEvent(event);
  }
}

} // namespace sump
