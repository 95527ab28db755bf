#include "app/window/find_bar.h"

#include "app/panels/field.h"

#include "core/plan/edits_objects.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>

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
  auto* label = new QLabel(tr("Find"), this);
  line_ = new QLineEdit(this);
  line_->setObjectName("find-text");
  line_->setAccessibleName(tr("Id, name or kind"));
  line_->setPlaceholderText(tr("Id, name or kind; Enter looks at the next, Esc closes"));
  label->setBuddy(line_);
  count_ = new QLabel(this);
  count_->setObjectName("find-count");
  row->addWidget(label);
  row->addWidget(line_, 1);
  row->addWidget(count_);
  connect(line_, &QLineEdit::textChanged, this, &FindBar::typed);
  connect(line_, &QLineEdit::returnPressed, this, &FindBar::next);
  hide();
}

void FindBar::open() {
  show();
  line_->setFocus();
  line_->selectAll();
  typed();
}

void FindBar::typed() {
  at_ = 0;
  const std::size_t count = findObjects(document_.plan(), line_->text()).size();
  count_->setText(line_->text().trimmed().isEmpty() ? QString() : tr("%1 found").arg(count));
}

void FindBar::next() {
  const std::vector<Id> found = findObjects(document_.plan(), line_->text());
  if (found.empty()) return;
  const std::size_t index = at_++ % found.size();
  canvas_.select({found[index]});
  canvas_.lookAt({found[index]}, std::nullopt);
  count_->setText(tr("%1 of %2").arg(index + 1).arg(found.size()));
}

void FindBar::keyPressEvent(QKeyEvent* event) {
  if (event->key() != Qt::Key_Escape) return QWidget::keyPressEvent(event);
  hide();
  canvas_.setFocus();
}

} // namespace sump
