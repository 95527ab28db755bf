#pragma once
// A sentence under a field: what is missing there, or why what was typed is not taken.

#include <QLabel>

namespace sump {

/// In the colour of errors, and with a sign in front, so that it does not rest on the colour alone.
class FieldNote : public QLabel {
  Q_OBJECT

public:
  /// Hidden until it says something.
  explicit FieldNote(QWidget* parent = nullptr);
  /// A plain remark, in the colour of texts.
  void remark(const QString& text);
  void complain(const QString& text);

protected:
  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  void say(const QString& text, bool wrong);
  void colour();
  bool wrong_ = true;
};

/// The field has an edge in the colour of errors until it is told otherwise.
void markWrong(QWidget* field, bool wrong);

} // namespace sump
