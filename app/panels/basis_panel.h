#pragma once
// 'What we know': the basis of the calculations as a form, group by group. An empty field is
// unknown, and the form says what waits for it. Every change is one step of undo.

#include "app/panels/basis_fields.h"
#include "app/panels/in_front.h"
#include "app/window/document.h"

#include <QWidget>

#include <map>

class QGridLayout;
class QListWidget;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace sump {

class FieldNote;

class BasisPanel : public QWidget, public CatchingUp {
  Q_OBJECT

public:
  explicit BasisPanel(Document& document, QWidget* parent = nullptr);
  /// Opens the group of a figure or table (BasisItem::key, BasisTable::key) and puts the keyboard
  /// there.
  void goTo(const std::string& key);
  /// Of the figure, or of a cell: `demand.devices.0.2` is row 0, column 2. Null when not shown.
  QWidget* editor(const std::string& key) const;

protected:
  void showEvent(QShowEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

private:
  /// A field on the screen.
  struct Shown {
    Field field;
    QWidget* editor = nullptr;
    FieldNote* note = nullptr; ///< what waits for it, or why it was not changed
    QString need;
    bool failed = false;
  };
  /// The widgets of a row of a table.
  struct TableLine {
    QString name;
    std::vector<QWidget*> cells;
    QPushButton* remove = nullptr;
  };
  FieldContext context() const;
  void refresh();
  void catchUp() override { refresh(); }
  void fillGroups();
  QString shape(const BasisGroup& group) const;
  void rebuild(const BasisGroup& group);
  void update(const BasisGroup& group);
  void updateOne(const std::string& key, const Field& field, bool known);
  QWidget* build(const BasisGroup& group);
  void addItems(const BasisGroup& group, QVBoxLayout& column);
  void addTable(const BasisTable& table, QVBoxLayout& column);
  void addRows(const BasisTable& table, QVBoxLayout& column);
  void addHeadings(const BasisTable& table, QGridLayout& grid);
  void addAcross(const TableLine& line, QGridLayout& grid, int row);
  void addStacked(const BasisTable& table, const TableLine& line, QVBoxLayout& column);
  TableLine lineOf(const BasisTable& table, std::size_t row);
  TableLine draftLine(const BasisTable& table);
  QWidget* make(const std::string& key, const Field& field,
                std::function<void(const QString&)> write, int room);
  bool isStacked(const BasisTable& table) const;
  int room() const;
  int fieldWidth(int across) const;
  int columns() const;
  void write(const std::string& key, const QString& text);
  void writeDraft(const BasisTable& table, int column, const QString& text);
  bool commit(const std::string& key, const QString& step, const FieldResult& result);
  void tell(const std::string& key, const QString& reason);
  FieldNote* noteOf(std::string key) const;
  void showNote(Shown& shown, bool known);
  void later();
  const BasisTable* table(const std::string& key) const;

  Document& document_;
  std::vector<BasisGroup> groups_;
  std::map<std::string, Shown> shown_;
  /// Rows that are being typed, by table; a row joins the plan when its required cells are there.
  std::map<std::string, std::vector<QString>> drafts_;
  QListWidget* list_ = nullptr;
  QScrollArea* area_ = nullptr;
  QString shape_;
  std::map<std::string, int> tableWidths_; ///< needed to show a table's columns beside each other
  bool writing_ = false;
};

} // namespace sump
