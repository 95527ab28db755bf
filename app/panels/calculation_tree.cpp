#include "app/panels/calculation_tree.h"

#include "app/panels/field.h"
#include "core/study/calculation_print.h"

#include <QHeaderView>
#include <QScopedValueRollback>
#include <QScrollBar>
#include <QTreeWidgetItemIterator>

namespace sump {

namespace {

constexpr int kNumberRole = Qt::UserRole;

QString numberOf(const QTreeWidgetItem* item) {
  return item == nullptr ? QString() : item->data(0, kNumberRole).toString();
}

void put(QTreeWidgetItem& item, int column, int role, const QString& text) {
  // Every change lays the list out anew.
  if (item.data(column, role).toString() != text) item.setData(column, role, text);
}

void fillItem(QTreeWidgetItem& item, const NumberedCalculation& entry,
              const ResultWriting& writing) {
  const Calculation& c = entry.calculation;
  put(item, 0, kNumberRole, shown(entry.number));
  put(item, 0, Qt::DisplayRole, coreText(c.title));
  put(item, 0, Qt::ToolTipRole, shown(entry.number) + "  " + coreText(c.title));
  put(item, 1, Qt::DisplayRole, shown(c.object));
  put(item, 2, Qt::DisplayRole,
      c.decided ? coreFilled(printResult(c, writing.units))
                : CalculationTree::tr("cannot be decided"));
  put(item, 2, Qt::ToolTipRole,
      c.decided ? QString()
                : CalculationTree::tr("Needs %1").arg(coreFilled(c.needs, writing.kept)));
}

} // namespace

CalculationTree::CalculationTree(QWidget* parent) : WrappingTree(0, parent) {
  setObjectName("calculation-tree");
  setAccessibleName(tr("Calculations"));
  setColumnCount(3);
  setHeaderLabels({tr("Quantity"), tr("Of"), tr("Result")});
  header()->setSectionResizeMode(0, QHeaderView::Stretch);
  header()->setSectionResizeMode(1, QHeaderView::ResizeToContents);
  header()->setSectionResizeMode(2, QHeaderView::ResizeToContents);
  header()->setStretchLastSection(false);
  setFrameShape(QFrame::NoFrame);
  connect(this, &QTreeWidget::currentItemChanged, this, [this](const QTreeWidgetItem* item) {
    if (filling_ || item == nullptr) return;
    followCurrent(); // its section may only now be unfolded, and its rows not be wrapped yet
    emit chosen(numberOf(item).toStdString());
  });
  connect(this, &QTreeWidget::itemExpanded, this,
          [this](const QTreeWidgetItem* item) { fold(*item, true); });
  connect(this, &QTreeWidget::itemCollapsed, this,
          [this](const QTreeWidgetItem* item) { fold(*item, false); });
}

void CalculationTree::fold(const QTreeWidgetItem& item, bool open) {
  if (filling_) return;
  if (open) {
    unfolded_.insert(item.text(0));
  } else {
    unfolded_.erase(item.text(0));
  }
}

void CalculationTree::fill(const std::vector<CalculationSection>& listed, bool open,
                           const ResultWriting& writing) {
  const QScopedValueRollback filling(filling_, true);
  all_ = open;
  if (isSameAs(listed)) {
    update(listed, writing);
  } else {
    rebuild(listed, writing);
  }
}

/// A drag changes results, seldom what there is to work out.
bool CalculationTree::isSameAs(const std::vector<CalculationSection>& listed) const {
  if (topLevelItemCount() != static_cast<int>(listed.size())) return false;
  for (std::size_t s = 0; s < listed.size(); ++s) {
    const QTreeWidgetItem& head = *topLevelItem(static_cast<int>(s));
    const CalculationSection& section = listed[s];
    if (head.text(0) != coreText(section.title) || numberOf(&head) != shown(section.number) ||
        head.childCount() != static_cast<int>(section.entries.size()))
      return false;
  }
  return true;
}

void CalculationTree::update(const std::vector<CalculationSection>& listed,
                             const ResultWriting& writing) {
  for (std::size_t s = 0; s < listed.size(); ++s) {
    QTreeWidgetItem& head = *topLevelItem(static_cast<int>(s));
    for (std::size_t e = 0; e < listed[s].entries.size(); ++e)
      fillItem(*head.child(static_cast<int>(e)), listed[s].entries[e], writing);
    head.setExpanded(all_ || unfolded_.contains(head.text(0)));
  }
}

void CalculationTree::rebuild(const std::vector<CalculationSection>& listed,
                              const ResultWriting& writing) {
  const int scroll = verticalScrollBar()->value();
  clear();
  for (const CalculationSection& section : listed) {
    auto* head = new QTreeWidgetItem(this, {coreText(section.title)});
    head->setData(0, kNumberRole, shown(section.number));
    QFont bold = head->font(0);
    bold.setBold(true);
    head->setFont(0, bold);
    for (const NumberedCalculation& entry : section.entries) {
      auto* item = new QTreeWidgetItem(head);
      item->setTextAlignment(2, Qt::AlignRight | Qt::AlignVCenter);
      fillItem(*item, entry, writing);
    }
    head->setExpanded(all_ || unfolded_.contains(head->text(0)));
  }
  verticalScrollBar()->setValue(scroll);
}

void CalculationTree::mark(const std::string& number) {
  if (numberOf(currentItem()).toStdString() == number && !number.empty()) return;
  {
    const QScopedValueRollback filling(filling_, true);
    setCurrentItem(nullptr);
    for (QTreeWidgetItemIterator at(this); *at != nullptr; ++at) {
      if (numberOf(*at).toStdString() == number) setCurrentItem(*at);
    }
  }
  followCurrent();
}

} // namespace sump
