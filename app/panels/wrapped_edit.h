#pragma once
// A field for one text that is longer than a line: it goes on in further lines, so that all of it
// is seen. Enter takes the text over as in a one-line field.

#include <QPlainTextEdit>

namespace sump {

class WrappedEdit : public QPlainTextEdit {
  Q_OBJECT

public:
  explicit WrappedEdit(QWidget* parent = nullptr);
  bool isModified() const { return document()->isModified(); }
  void setModified(bool modified) { document()->setModified(modified); }

signals:
  /// Enter was pressed, or the keyboard went elsewhere.
  void editingFinished();

protected:
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void insertFromMimeData(const QMimeData* source) override;

private:
  void fit();
};

} // namespace sump
