#include "app/window/window_style.h"

#include <QApplication>
#include <QIconEngine>
#include <QPainter>
#include <QStyleOption>

#include <functional>

namespace sump {

namespace {

bool isDark(const QPalette& palette) {
  return palette.color(QPalette::Window).lightness() < 128;
}

void drawEdge(QPainter* painter, const QStyleOption* option, const QWidget* widget) {
  const bool wrong = widget != nullptr && widget->property(kWrong).toBool();
  const bool enabled = option->state.testFlag(QStyle::State_Enabled);
  const bool focused = option->state.testFlag(QStyle::State_HasFocus);
  QColor color = focused ? focusColor(option->palette) : edgeColor(option->palette);
  if (wrong) color = errorColor(option->palette);
  if (!enabled) color.setAlphaF(0.45f);
  const bool bold = focused || wrong;
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setPen(QPen(color, bold ? 2 : 1));
  painter->setBrush(Qt::NoBrush);
  const double in = bold ? 1 : 0.5;
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

/// A sign in the window's colours of the moment: Qt keeps a style's icons when the palette changes.
class Sign : public QIconEngine {
public:
  using Paint = std::function<void(QPainter&, const QPalette&)>;
  /// `paint` draws in a square of this side.
  Sign(double side, Paint paint) : side_(side), paint_(std::move(paint)) {}

  void paint(QPainter* painter, const QRect& rect, QIcon::Mode, QIcon::State) override {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->translate(rect.topLeft());
    painter->scale(rect.width() / side_, rect.height() / side_);
    paint_(*painter, QApplication::palette());
    painter->restore();
  }
  QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
    QPixmap pixmap(size);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    paint(&painter, QRect(QPoint(), size), mode, state);
    return pixmap;
  }
  QSize actualSize(const QSize& size, QIcon::Mode, QIcon::State) override {
    return size.boundedTo(QSizeF(side_, side_).toSize());
  }
  QList<QSize> availableSizes(QIcon::Mode, QIcon::State) override {
    return {QSizeF(side_, side_).toSize()};
  }
  QIconEngine* clone() const override { return new Sign(*this); }

private:
  double side_;
  Paint paint_;
};

/// Two arrow heads that say "more of this bar".
QIcon moreIcon(bool down) {
  constexpr double kSide = 12;
  return QIcon(new Sign(kSide, [down](QPainter& painter, const QPalette& palette) {
    painter.setPen(QPen(palette.color(QPalette::WindowText), 1.5));
    if (down) {
      painter.translate(kSide, 0);
      painter.rotate(90);
    }
    for (const double x : {2.0, 6.5})
      painter.drawPolyline(QPolygonF({{x, 2}, {x + 3.5, 6}, {x, 10}}));
  }));
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

void drawSeparator(QPainter* painter, const QStyleOption* option) {
  constexpr int kIn = 6; // pixels from the menu's sides
  QColor color = edgeColor(option->palette);
  color.setAlphaF(0.7f);
  const QRect& rect = option->rect;
  painter->fillRect(QRect(rect.left() + kIn, rect.center().y(), rect.width() - 2 * kIn, 1), color);
}

/// Parts of a status bar are told apart by a line before each but the first.
void drawPartEdge(QPainter* painter, const QStyleOption* option) {
  constexpr int kFirst = 8, kIn = 3; // pixels
  const QRect& rect = option->rect;
  if (rect.left() <= kFirst) return;
  QColor color = edgeColor(option->palette);
  color.setAlphaF(0.7f);
  painter->fillRect(QRect(rect.left(), rect.top() + kIn, 1, rect.height() - 2 * kIn), color);
}

/// A ring with a letter.
QIcon signIcon(const QString& letter) {
  constexpr double kSide = 40;
  return QIcon(new Sign(kSide, [letter](QPainter& painter, const QPalette& palette) {
    painter.setPen(QPen(palette.color(QPalette::Link), 2.5));
    const QRectF ring(4, 4, kSide - 8, kSide - 8);
    painter.drawEllipse(ring);
    QFont font = QApplication::font();
    font.setPixelSize(20);
    font.setBold(true);
    painter.setFont(font);
    painter.setPen(palette.color(QPalette::WindowText));
    painter.drawText(ring, Qt::AlignCenter, letter);
  }));
}

} // namespace

/// Between a choice and the edges of its field.
constexpr int kBesideChoice = 4;

QColor edgeColor(const QPalette& palette) {
  return isDark(palette) ? QColor(0x7C, 0x86, 0x8F) : QColor(0x7D, 0x86, 0x8E);
}

QColor focusColor(const QPalette& palette) {
  return palette.color(QPalette::Link);
}

QColor errorColor(const QPalette& palette) {
  return isDark(palette) ? QColor(0xFF, 0x8A, 0x80) : QColor(0xB3, 0x14, 0x1D);
}

void WindowStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option,
                                QPainter* painter, const QWidget* widget) const {
  switch (element) {
  case PE_IndicatorCheckBox:
  case PE_IndicatorItemViewItemCheck:
    return drawCheckBox(painter, option);
  case PE_FrameStatusBarItem:
    return drawPartEdge(painter, option);
  case PE_PanelButtonCommand:
  case PE_FrameLineEdit:
    QProxyStyle::drawPrimitive(element, option, painter, widget);
    // A flat button has no edge, and a field without a frame neither.
    if (widget != nullptr && !widget->property("flat").toBool()) drawEdge(painter, option, widget);
    return;
  case PE_PanelButtonTool:
    QProxyStyle::drawPrimitive(element, option, painter, widget);
    if (option->state.testFlag(State_On) &&
        isDark(option->palette)) // plain enough on a light ground
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
  if (type == CT_ComboBox) needs.rwidth() += kBesideChoice;
  return needs;
}

QIcon WindowStyle::standardIcon(StandardPixmap which, const QStyleOption* option,
                                const QWidget* widget) const {
  switch (which) {
  case SP_MessageBoxQuestion:
    return signIcon("?");
  case SP_MessageBoxWarning:
  case SP_MessageBoxCritical:
    return signIcon("!");
  case SP_ToolBarHorizontalExtensionButton:
  case SP_ToolBarVerticalExtensionButton:
    return moreIcon(which == SP_ToolBarVerticalExtensionButton);
  default:
    return QProxyStyle::standardIcon(which, option, widget);
  }
}

/// A choice that is longer than its box ends in dots; its tooltip has the whole of it. What parts
/// the groups of a menu can be seen on dark ones too.
void WindowStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                              const QWidget* widget) const {
  const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(option);
  if (element == CE_MenuItem && item != nullptr &&
      item->menuItemType == QStyleOptionMenuItem::Separator && item->text.isEmpty()) {
    return drawSeparator(painter, option);
  }
  const auto* combo = qstyleoption_cast<const QStyleOptionComboBox*>(option);
  if (element != CE_ComboBoxLabel || combo == nullptr) {
    return QProxyStyle::drawControl(element, option, painter, widget);
  }
  QStyleOptionComboBox fitted(*combo);
  const int room = subControlRect(CC_ComboBox, combo, SC_ComboBoxEditField, widget).width() -
                   (combo->currentIcon.isNull() ? kBesideChoice : combo->iconSize.width() + 8);
  fitted.currentText = combo->fontMetrics.elidedText(combo->currentText, Qt::ElideRight, room);
  QProxyStyle::drawControl(element, &fitted, painter, widget);
}

void WindowStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                                     QPainter* painter, const QWidget* widget) const {
  QProxyStyle::drawComplexControl(control, option, painter, widget);
  if (control == CC_ComboBox) drawEdge(painter, option, widget);
}

} // namespace sump
