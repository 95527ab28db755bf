#pragma once
// Qt's Fusion style with edges that can be seen on dark and light windows alike: check boxes,
// buttons, fields and choices stand out from the window by at least 3 : 1 (WCAG 2.1, 1.4.11). Boxes
// that ask or warn bear plain signs in the window's own colours.

#include <QProxyStyle>

namespace sump {

/// Of the outline of things to click and to type in, for this palette.
QColor edgeColor(const QPalette& palette);

/// Of the outline of what has the keyboard.
QColor focusColor(const QPalette& palette);

/// Of words and edges that say that something is wrong: at least 4.5 : 1 on the window and on
/// fields.
QColor errorColor(const QPalette& palette);
/// A widget's property: its edge is in the colour of errors.
inline constexpr const char* kWrong = "wrong";

class WindowStyle : public QProxyStyle {
  Q_OBJECT

public:
  WindowStyle() : QProxyStyle("Fusion") {}
  void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
  int pixelMetric(PixelMetric metric, const QStyleOption* option,
                  const QWidget* widget) const override;
  int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                QStyleHintReturn* data) const override;
  QSize sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& size,
                         const QWidget* widget) const override;
  QIcon standardIcon(StandardPixmap which, const QStyleOption* option,
                     const QWidget* widget) const override;
  void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                   const QWidget* widget) const override;
  void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                          QPainter* painter, const QWidget* widget) const override;
};

} // namespace sump
