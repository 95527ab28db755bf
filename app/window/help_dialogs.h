#pragma once

class QWidget;
class QDialog;
class QTreeWidget;

namespace sump {

/// Every key and what the mouse does, from the table of actions. The caller shows it; it deletes
/// itself when closed.
QDialog* guideDialog(QWidget* parent);
QDialog* keysDialog(QWidget* parent);
QDialog* aboutDialog(QWidget* parent);

/// Makes the list so wide that no cell is cut, within reason.
void showColumnsWhole(QTreeWidget& tree);

} // namespace sump
