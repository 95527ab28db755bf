#pragma once
// A text that changes at every move of the pointer. A QLabel asks for a new layout of the whole
// window each time; this one only when its text outgrows its place.

#include <QLabel>

namespace sump {

class QuietLabel : public QLabel {
  Q_OBJECT

public:
  using QLabel::QLabel;
  /// In place of setText.
  void say(const QString& text);
  const QString& said() const { return said_; }

protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

private:
  int flags() const;
  void makeRoom();

  QString said_;
};

} // namespace sump
