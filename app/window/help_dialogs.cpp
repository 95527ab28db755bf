#include "app/window/help_dialogs.h"

#include "app/actions.h"
#include "app/window/guide.h"

#include <QCoreApplication>
#include <QDialog>
#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QScrollBar>
#include <QTreeWidget>
#include <QTreeWidgetItemIterator>
#include <QVBoxLayout>

namespace sump {

namespace {

QString helpText(const char* source) {
  return QCoreApplication::translate("Help", source);
}

QDialog* closableDialog(QWidget* parent, const QString& title, QWidget* body) {
  auto* dialog = new QDialog(parent);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setWindowTitle(title);
  auto* column = new QVBoxLayout(dialog);
  column->addWidget(body);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close);
  QObject::connect(buttons, &QDialogButtonBox::rejected, dialog, &QDialog::close);
  column->addWidget(buttons);
  return dialog;
}

QString plain(QString menuText) {
  return menuText.remove('&').remove("...");
}

QTreeWidgetItem* group(QTreeWidget* tree, const QString& title) {
  auto* item = new QTreeWidgetItem(tree, {title});
  QFont font = item->font(0);
  font.setBold(true);
  item->setFont(0, font);
  return item;
}

void addMouse(QTreeWidget* tree) {
  QTreeWidgetItem* mouse = group(tree, helpText("Mouse and drawing keys"));
  const char* rows[][2] = {
      {QT_TRANSLATE_NOOP("Help", "Wheel"),
       QT_TRANSLATE_NOOP("Help", "Closer or farther at the pointer")},
      {QT_TRANSLATE_NOOP("Help", "Middle button, or Space and drag"),
       QT_TRANSLATE_NOOP("Help", "Move the view")},
      {QT_TRANSLATE_NOOP("Help", "Two fingers"),
       QT_TRANSLATE_NOOP("Help", "Move the view; pinch for closer or farther")},
      {QT_TRANSLATE_NOOP("Help", "Arrow keys"),
       QT_TRANSLATE_NOOP("Help", "Move what is selected by a step of the grid; with Shift by a "
                                 "tenth, with Ctrl by ten steps. Nothing selected: move the view")},
      {QT_TRANSLATE_NOOP("Help", "Shift and click"),
       QT_TRANSLATE_NOOP("Help", "Add to what is selected, or take away")},
      {QT_TRANSLATE_NOOP("Help", "Drag on open ground"),
       QT_TRANSLATE_NOOP("Help", "Select what is inside; with Ctrl what is touched")},
      {QT_TRANSLATE_NOOP("Help", "Alt while drawing or dragging"),
       QT_TRANSLATE_NOOP("Help", "Catch nothing, not even the grid")},
      {QT_TRANSLATE_NOOP("Help", "Shift while drawing or dragging"),
       QT_TRANSLATE_NOOP("Help", "Straight or at 45 degrees")},
      {QT_TRANSLATE_NOOP("Help", "Digits while drawing"),
       QT_TRANSLATE_NOOP("Help", "Type length, bearing, place or level; Tab to the next, Enter "
                                 "sets the point")},
      {QT_TRANSLATE_NOOP("Help", "E, I while drawing"),
       QT_TRANSLATE_NOOP("Help", "Type the place by east and north; type the invert or level")},
      {QT_TRANSLATE_NOOP("Help", "Ctrl and click while drawing"),
       QT_TRANSLATE_NOOP("Help", "Outline: opposite corner of a rectangle. Line: a corner even "
                                 "where an end would catch")},
      {QT_TRANSLATE_NOOP("Help", "Drag a mark of what is selected"),
       QT_TRANSLATE_NOOP("Help", "Move a corner, an end, a baffle, a manway, a part; clicked, it "
                                 "takes digits, arrow keys and Delete")},
      {QT_TRANSLATE_NOOP("Help", "Double click on a line or an edge"),
       QT_TRANSLATE_NOOP("Help", "Make a corner there")},
      {QT_TRANSLATE_NOOP("Help", "T, Shift+T"),
       QT_TRANSLATE_NOOP("Help", "Turn what is placed next, by 90 or 15 degrees; a drag while "
                                 "placing turns it too")},
      {QT_TRANSLATE_NOOP("Help", "Enter or double click"),
       QT_TRANSLATE_NOOP("Help", "End the line or close the outline")},
      {QT_TRANSLATE_NOOP("Help", "Backspace"),
       QT_TRANSLATE_NOOP("Help", "Take back the line's last corner")},
      {QT_TRANSLATE_NOOP("Help", "Esc"), QT_TRANSLATE_NOOP("Help", "Give up what is under way")},
  };
  for (const auto& row : rows) {
    auto* item = new QTreeWidgetItem(mouse, {helpText(row[0]), helpText(row[1])});
    item->setToolTip(1, helpText(row[1]));
  }
}

/// Width of the widest cell, with the indentation of its level.
int columnNeeds(const QTreeWidget& tree, int column) {
  int most = 0;
  for (QTreeWidgetItemIterator it(const_cast<QTreeWidget*>(&tree)); *it != nullptr; ++it) {
    const int inward = column == 0 && (*it)->parent() != nullptr ? tree.indentation() : 0;
    QFont font = (*it)->font(column);
    most = std::max(most, inward + QFontMetrics(font).horizontalAdvance((*it)->text(column)));
  }
  constexpr int kMargins = 12;
  return most + kMargins;
}

} // namespace

void showColumnsWhole(QTreeWidget& tree) {
  tree.ensurePolished();
  int wide = tree.verticalScrollBar()->sizeHint().width() + 2 * tree.frameWidth();
  for (int c = 0; c < tree.columnCount(); ++c)
    wide += std::max(tree.header()->sectionSizeHint(c), columnNeeds(tree, c));
  constexpr int kMost = 900; // sentences beyond it are cut, and told by their tooltips
  tree.setMinimumWidth(std::min(wide, kMost));
}

QDialog* keysDialog(QWidget* parent) {
  auto* tree = new QTreeWidget;
  tree->setHeaderLabels({helpText("Key"), helpText("What it does")});
  tree->setRootIsDecorated(false);
  tree->setSelectionMode(QAbstractItemView::NoSelection);
  tree->setAccessibleName(helpText("Keys and mouse"));
  QTreeWidgetItem* menu = nullptr;
  for (const ActionRow& row : actionTable()) {
    const QString title = plain(QCoreApplication::translate("Actions", menuTitle(row.menu)));
    if (menu == nullptr || menu->text(0) != title) menu = group(tree, title);
    const QList<QKeySequence> keys = keysOf(row);
    if (keys.isEmpty()) continue;
    new QTreeWidgetItem(menu, {QKeySequence::listToString(keys, QKeySequence::NativeText),
                               plain(QCoreApplication::translate("Actions", row.text))});
  }
  addMouse(tree);
  tree->expandAll();
  tree->header()->setSectionResizeMode(0, QHeaderView::ResizeToContents);
  showColumnsWhole(*tree);
  QDialog* dialog = closableDialog(parent, helpText("Keys and mouse"), tree);
  dialog->resize(760, 680);
  return dialog;
}

QDialog* guideDialog(QWidget* parent) {
  auto* browser = new GuideBrowser;
  browser->setAccessibleName(helpText("User guide"));
  QDialog* dialog = closableDialog(parent, helpText("User guide"), browser);
  dialog->resize(900, 760);
  return dialog;
}

QDialog* aboutDialog(QWidget* parent) {
  auto* label = new QLabel(
      helpText(
          "<h3>Sumpwright %1</h3>"
          "<p>Plans underground tankage, plumbing and levels for reclaiming vehicle-wash water.</p>"
          "<p>It is a drawing aid. Its checks do not replace the adopted local code, the authority "
          "having jurisdiction or a licensed designer. Excavation, confined spaces, lifting, "
          "electricity and potable water connections are work for qualified people.</p>"
          "<p>Free software; see the file LICENSE. Built with Qt %2.</p>")
          .arg(SUMPWRIGHT_VERSION, qVersion()));
  label->setWordWrap(true);
  label->setMinimumWidth(420);
  return closableDialog(parent, helpText("About Sumpwright"), label);
}

} // namespace sump
