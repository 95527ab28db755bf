#pragma once
// The widget with which a field is typed, chosen or ticked; shared by every form of the window.

#include "app/panels/field.h"

#include <QWidget>

namespace sump {

/// `write` gets the new text (Choice: the item's index; Toggle: `1` or `0`) when it was changed.
/// Not for headings.
QWidget* makeFieldEditor(const Field& field, std::function<void(const QString&)> write);
/// Puts the field's value into its editor without telling anybody.
void showInEditor(QWidget* editor, const Field& field);

} // namespace sump
