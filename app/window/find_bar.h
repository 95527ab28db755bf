#pragma once
// Finds objects by id, name or kind: type, Enter selects the next one and looks at it, Esc closes.

#include "app/canvas/canvas.h"
#include "app/window/document.h"

#include <QWidget>

class QLabel;
class QLineEdit;

namespace sump {

/// Objects whose id, name or kind holds the text, whatever its case; exact ids first.
std::vector<Id> findObjects(const Plan& plan, const QString& text);

class FindBar : public QWidget {
  Q_OBJECT

public:
  FindBar(Document& document, Canvas& canvas, QWidget* parent = nullptr);
  void open();

protected:
  void keyPressEvent(QKeyEvent* event) override;

private:
  void typed();
  void next();

  Document& document_;
  Canvas& canvas_;
  QLineEdit* line_ = nullptr;
  QLabel* count_ = nullptr;
  std::size_t at_ = 0; ///< of the matches, which Enter takes next
};

} // namespace sump
