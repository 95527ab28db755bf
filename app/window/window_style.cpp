#include "app/window/window_style.h"

#include <QApplication>
#include <QIcon>
#include <QPainter>
#include <QStyleOption>

#include <functional>

namespace sump {

namespace {

void drawEdge(QPainter* painter, const QStyleOption* option) {
  const bool enabled = option->state.testFlag(QStyle::State_Enabled);
  const bool focused = option->state.testFlag(QStyle::State_HasFocus);
  QColor color = focused ? option->palette.color(QPalette::Highlight) : edgeColor(option->palette);
  if (!enabled) color.setAlphaF(0.45f);
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setPen(QPen(color, focused ? 2 : 1));
  painter->setBrush(Qt::NoBrush);
  const double in = focused ? 1 : 0.5;
  painter->drawRoundedRect(QRectF(option->rect).adjusted(in, in, -in, -in), 2, 2);
  painter->restore();
}

void drawTick(QPainter* painter, const QRectF& box, const QColor& color) {
  const double w = box.width();
  painter->setPen(QPen(color, w * 0.16, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter->drawPolyline(QPolygonF({box.topLeft() + QPointF(w * 0.22, w * 0.52),
                                   box.topLeft() + QPointF(w * 0.42, w * 0.72),
                                   box.topLeft() + QPointF(w * 0.78, w * 0.3)}));
}

void drawCheckBox(QPainter* painter, const QStyleOption* option) {
  const bool enabled = option->state.testFlag(QStyle::State_Enabled);
  const bool on = option->state.testFlag(QStyle::State_On);
  const bool partly = option->state.testFlag(QStyle::State_NoChange);
  const QPalette& palette = option->palette;
  const double side = std::min(option->rect.width(), option->rect.height()) - 1;
  QRectF box(0, 0, side, side);
  box.moveCenter(QRectF(option->rect).center());
  const QColor fill =
      on || partly ? palette.color(QPalette::Highlight) : palette.color(QPalette::Base);
  painter->save();
  painter->setOpacity(enabled ? 1 : 0.45);
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setPen(QPen(on || partly ? fill : edgeColor(palette), 1.4));
  painter->setBrush(fill);
  painter->drawRoundedRect(box.adjusted(0.7, 0.7, -0.7, -0.7), 2, 2);
  painter->setBrush(Qt::NoBrush);
  if (option->state.testFlag(QStyle::State_HasFocus)) {
    painter->setPen(QPen(palette.color(QPalette::WindowText), 1.6));
    painter->drawRoundedRect(box.adjusted(0.8, 0.8, -0.8, -0.8), 2, 2);
  }
  if (on) drawTick(painter, box, palette.color(QPalette::HighlightedText));
  if (partly) {
    painter->setPen(QPen(palette.color(QPalette::HighlightedText), side * 0.16));
    painter->drawLine(QPointF(box.left() + side * 0.25, box.center().y()),
                      QPointF(box.right() - side * 0.25, box.center().y()));
  }
  painter->restore();
}

/// Painted afresh for plain and for fine screens, so that neither sees it blurred.
QIcon paintedIcon(int side, const std::function<void(QPainter&)>& paint) {
  QIcon icon;
  for (const double ratio : {1.0, 2.0}) {
    QPixmap pixmap(QSize(side, side) * ratio);
    pixmap.setDevicePixelRatio(ratio);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    paint(painter);
    painter.end();
    icon.addPixmap(pixmap);
  }
  return icon;
}

/// Two arrow heads that say "more of this bar", in the colour of the window's words.
QIcon moreIcon(bool down, const QPalette& palette) {
  constexpr int kSide = 12;
  return paintedIcon(kSide, [&](QPainter& painter) {
    painter.setPen(QPen(palette.color(QPalette::WindowText), 1.5));
    if (down) {
      painter.translate(kSide, 0);
      painter.rotate(90);
    }
    for (const double x : {2.0, 6.5})
      painter.drawPolyline(QPolygonF({{x, 2}, {x + 3.5, 6}, {x, 10}}));
  });
}

/// A tool or choice that is on is told from its neighbours by a wash of the accent.
void drawOn(QPainter* painter, const QStyleOption* option) {
  QColor wash = option->palette.color(QPalette::Highlight);
  wash.setAlphaF(0.45f);
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setPen(QPen(edgeColor(option->palette), 1));
  painter->setBrush(wash);
  painter->drawRoundedRect(QRectF(option->rect).adjusted(0.5, 0.5, -0.5, -0.5), 2, 2);
  painter->restore();
}

/// A ring with a letter, in the colours of the window.
QIcon signIcon(const QString& letter, const QWidget* widget) {
  const QPalette palette = widget != nullptr ? widget->palette() : QApplication::palette();
  constexpr int kSide = 40;
  return paintedIcon(kSide, [&](QPainter& painter) {
    painter.setPen(QPen(palette.color(QPalette::Link), 2.5));
    const QRectF ring(4, 4, kSide - 8, kSide - 8);
    painter.drawEllipse(ring);
    QFont font = QApplication::font();
    font.setPixelSize(20);
    font.setBold(true);
    painter.setFont(font);
    painter.setPen(palette.color(QPalette::WindowText));
    painter.drawText(ring, Qt::AlignCenter, letter);
  });
}

} // namespace

QColor edgeColor(const QPalette& palette) {
  const bool dark = palette.color(QPalette::Window).lightness() < 128;
  return dark ? QColor(0x7C, 0x86, 0x8F) : QColor(0x7D, 0x86, 0x8E);
}

void WindowStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option,
                                QPainter* painter, const QWidget* widget) const {
  switch (element) {
  case PE_IndicatorCheckBox:
  case PE_IndicatorItemViewItemCheck:
    return drawCheckBox(painter, option);
  case PE_PanelButtonCommand:
  case PE_FrameLineEdit:
    QProxyStyle::drawPrimitive(element, option, painter, widget);
    // A flat button has no edge, and a field without a frame neither.
    if (widget != nullptr && !widget->property("flat").toBool()) drawEdge(painter, option);
    return;
  case PE_PanelButtonTool:
    QProxyStyle::drawPrimitive(element, option, painter, widget);
    if (option->state.testFlag(State_On) &&
        option->palette.color(QPalette::Window).lightness() < 128) // plain enough on a light ground
      drawOn(painter, option);
    return;
  default:
    QProxyStyle::drawPrimitive(element, option, painter, widget);
  }
}

int WindowStyle::pixelMetric(PixelMetric metric, const QStyleOption* option,
                             const QWidget* widget) const {
  constexpr int kTabSpace = 16; // pixels: six docks in a row fit a laptop in any language
  if (metric == PM_TabBarTabHSpace) return kTabSpace;
  return QProxyStyle::pixelMetric(metric, option, widget);
}

int WindowStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                           QStyleHintReturn* data) const {
  // What cannot be chosen now is pale, not embossed: a second, shifted text blurs it.
  if (hint == SH_EtchDisabledText) return 0;
  return QProxyStyle::styleHint(hint, option, widget, data);
}

QSize WindowStyle::sizeFromContents(ContentsType type, const QStyleOption* option,
                                    const QSize& size, const QWidget* widget) const {
  QSize needs = QProxyStyle::sizeFromContents(type, option, size, widget);
  constexpr int kLeading = 4; // pixels more for each row of a list or tree
  if (type == CT_ItemViewItem) needs.rheight() += kLeading;
  return needs;
}

QIcon WindowStyle::standardIcon(StandardPixmap which, const QStyleOption* option,
                                const QWidget* widget) const {
  switch (which) {
  case SP_MessageBoxQuestion:
    return signIcon("?", widget);
  case SP_MessageBoxWarning:
  case SP_MessageBoxCritical:
    return signIcon("!", widget);
  case SP_ToolBarHorizontalExtensionButton:
  case SP_ToolBarVerticalExtensionButton:
    return moreIcon(which == SP_ToolBarVerticalExtensionButton,
                    option != nullptr ? option->palette : QApplication::palette());
  default:
    return QProxyStyle::standardIcon(which, option, widget);
  }
}

/// A choice that is longer than its box ends in dots; its tooltip has the whole of it.
void WindowStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                              const QWidget* widget) const {
  const auto* combo = qstyleoption_cast<const QStyleOptionComboBox*>(option);
  if (element != CE_ComboBoxLabel || combo == nullptr) {
    return QProxyStyle::drawControl(element, option, painter, widget);
  }
  QStyleOptionComboBox fitted(*combo);
  const int room = subControlRect(CC_ComboBox, combo, SC_ComboBoxEditField, widget).width() -
                   (combo->currentIcon.isNull() ? 4 : combo->iconSize.width() + 8);
  fitted.currentText = combo->fontMetrics.elidedText(combo->currentText, Qt::ElideRight, room);
  QProxyStyle::drawControl(element, &fitted, painter, widget);
}

void WindowStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                                     QPainter* painter, const QWidget* widget) const {
  QProxyStyle::drawComplexControl(control, option, painter, widget);
  if (control == CC_ComboBox) drawEdge(painter, option);
}

} // namespace sump
