#pragma once
// 'Long section': the section with its switch between the vault train and a line, in step with what
// is selected on the drawing.

#include "app/canvas/canvas.h"
#include "app/panels/in_front.h"
#include "app/section/long_section.h"

#include <QWidget>

class QComboBox;
class QLabel;
class QToolButton;

namespace sump {

class SectionPanel : public QWidget, public Fronted {
  Q_OBJECT

public:
  /// Both must outlive the panel.
  SectionPanel(Document& document, Canvas& canvas, QWidget* parent = nullptr);
  LongSection& section() { return *section_; }
  void setDark(bool dark) { section_->setDark(dark); }
  void cameToFront() override { fillLines(); }

signals:
  void refused(const QString& reason);

protected:
  void showEvent(QShowEvent* event) override;

private:
  QWidget* makeStrip();
  void follow();
  void reviewArrived();
  void replaced();
  void fillLines();
  void showTrain();
  void showLine(const Id& run);
  void picked(const Id& object);

  Document& document_;
  Canvas& canvas_;
  LongSection* section_ = nullptr;
  QToolButton* train_ = nullptr;
  QToolButton* line_ = nullptr;
  QComboBox* lines_ = nullptr;
  QComboBox* stretch_ = nullptr;
  std::vector<std::pair<Id, std::string>> listed_; ///< id and name of what lines_ holds
  bool picking_ = false;                           ///< the selection comes from the section itself
};

} // namespace sump
