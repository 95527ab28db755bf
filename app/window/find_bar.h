#pragma once
// Finds objects by id, name or kind: type, Enter or 'Next' selects the next one and looks at it,
// Shift+Enter or 'Previous' the one before, Esc closes.

#include "app/canvas/canvas.h"
#include "app/window/document.h"

#include <QWidget>

class QLabel;
class QLineEdit;
class QPushButton;

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
  QPushButton* makeButton(const QString& text, const char* name, const QString& tip);
  void typed();
  /// Looks at the one so many further on; round and round.
  void step(int by);
  void shut();

  Document& document_;
  Canvas& canvas_;
  QLineEdit* line_ = nullptr;
  QLabel* count_ = nullptr;
  QPushButton* previous_ = nullptr;
  QPushButton* next_ = nullptr;
  std::optional<std::size_t> at_; ///< of the matches, which is looked at
};

} // namespace sump
