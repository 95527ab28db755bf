#pragma once
// 'What is this': every property of the selected object, or of the project when nothing is
// selected. A text that cannot be used stays with its reason below; the plan keeps the old value.

#include "app/panels/field.h"
#include "app/panels/in_front.h"
#include "app/window/document.h"

#include <QScrollArea>

#include <set>
#include <vector>

class QVBoxLayout;

namespace sump {

class FieldNote;

class PropertiesPanel : public QScrollArea, public CatchingUp {
  Q_OBJECT

public:
  explicit PropertiesPanel(Document& document, QWidget* parent = nullptr);
  void show(const std::set<Id>& selection);

protected:
  void showEvent(QShowEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

private:
  /// A field on the screen.
  struct Row {
    Field field;
    QWidget* editor = nullptr; ///< none for headings
    FieldNote* error = nullptr;
    bool below = false; ///< the editor has a line of its own
    bool wraps = false; ///< and goes on in further lines
  };
  void refresh();
  void catchUp() override { refresh(); }
  std::vector<Field> currentFields() const;
  bool needsAll(const Field& field) const;
  int fullWidth() const;
  bool sameShape(const std::vector<Field>& fields) const;
  void rebuild(std::vector<Field> fields);
  void update(std::vector<Field> fields);
  void addRow(QVBoxLayout& column, Field field);
  void write(std::size_t row, const QString& text);
  void fail(std::size_t row, const QString& reason);

  Document& document_;
  std::set<Id> selection_;
  std::vector<Row> rows_;
  QString title_;
  QString group_; ///< heading above the row that is being made
  bool writing_ = false;
};

} // namespace sump
