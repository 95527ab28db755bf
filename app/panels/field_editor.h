#pragma once
// The widget with which a field is typed, chosen or ticked; shared by every form of the window.

#include "app/panels/field.h"

#include <QWidget>

#include <limits>

namespace sump {

/// `write` gets the new text (Choice: the item's index; Toggle: `1` or `0`) when it was changed.
/// Not for headings. A text that is wider than `room` (pixels) wraps.
QWidget* makeFieldEditor(const Field& field, std::function<void(const QString&)> write,
                         int room = std::numeric_limits<int>::max());
/// Pixels in which the field shows its text, or the longest of its choices, whole; 0 for others.
int wholeWidth(const Field& field);
/// A typed text that a field of one line and this width would cut.
inline bool isWider(const Field& field, int room) {
  return field.kind == FieldKind::Text && wholeWidth(field) > room;
}
/// Puts the field's value into its editor without telling anybody.
void showInEditor(QWidget* editor, const Field& field);
/// What is typed is what the plan has.
void setUnmodified(QWidget* editor);

} // namespace sump
