#include "app/window/visibility.h"

#include "app/window/glossary.h"

#include <QSettings>
#include <QSignalBlocker>

namespace sump {

namespace {

constexpr const char* kHiddenKey = "drawing/hidden";
constexpr int kKeyRole = Qt::UserRole;

} // namespace

VisibilityPanel::VisibilityPanel(QWidget* parent) : QTreeWidget(parent) {
  setObjectName("shown");
  setAccessibleName(tr("What the drawing shows"));
  setHeaderHidden(true);
  fill();
  connect(this, &QTreeWidget::itemChanged, this, &VisibilityPanel::take);
}

void VisibilityPanel::fill() {
  for (const ShownTrade& trade : shownTrades()) {
    auto* group = new QTreeWidgetItem(this, {trade.title});
    group->setFlags(group->flags() | Qt::ItemIsUserCheckable | Qt::ItemIsAutoTristate);
    for (const ShownEntry& entry : trade.entries) {
      auto* item = new QTreeWidgetItem(group, {entry.title});
      item->setData(0, kKeyRole, entry.key);
      item->setToolTip(0, tipWithTerms(entry.title, {}));
      item->setFlags(item->flags() | Qt::ItemIsUserCheckable);
      item->setCheckState(0, Qt::Checked);
    }
    group->setExpanded(true);
  }
}

void VisibilityPanel::restore() {
  const QStringList hidden = QSettings().value(kHiddenKey).toStringList();
  {
    const QSignalBlocker blocker(this);
    for (int g = 0; g < topLevelItemCount(); ++g) {
      for (int i = 0; i < topLevelItem(g)->childCount(); ++i) {
        QTreeWidgetItem* item = topLevelItem(g)->child(i);
        const bool shows = !hidden.contains(item->data(0, kKeyRole).toString());
        item->setCheckState(0, shows ? Qt::Checked : Qt::Unchecked);
      }
    }
  }
  take();
}

void VisibilityPanel::take() {
  Shown now;
  for (int g = 0; g < topLevelItemCount(); ++g) {
    for (int i = 0; i < topLevelItem(g)->childCount(); ++i) {
      const QTreeWidgetItem* item = topLevelItem(g)->child(i);
      now.set(item->data(0, kKeyRole).toString(), item->checkState(0) == Qt::Checked);
    }
  }
  if (now == shown_) return;
  shown_ = now;
  QSettings().setValue(kHiddenKey, QStringList(now.hidden().begin(), now.hidden().end()));
  emit shownChanged();
}

} // namespace sump
