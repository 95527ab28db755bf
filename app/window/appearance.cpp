#include "app/window/appearance.h"

#include "app/window/window_style.h"

#include <QApplication>
#include <QFile>
#include <QPainter>
#include <QSvgRenderer>

namespace sump {

namespace {

struct Shades {
  QColor window, base, alternate, text, dim, button, accent, accentText, edge;
};

constexpr int kIconSize = 24;

// The icons are drawn in these two colours; each is replaced by one of the palette.
constexpr const char* kStroke = "#101010";
constexpr const char* kAccent = "#c0186a";

Shades shades(bool dark) {
  if (dark) {
    return {QColor(0x24, 0x29, 0x2E), QColor(0x1B, 0x1F, 0x23), QColor(0x20, 0x25, 0x2A),
            QColor(0xE8, 0xEB, 0xED), QColor(0x8A, 0x94, 0x9D), QColor(0x2E, 0x35, 0x3B),
            QColor(0x9C, 0x2E, 0x68), QColor(0xFF, 0xFF, 0xFF), QColor(0x3A, 0x42, 0x49)};
  }
  return {QColor(0xF4, 0xF5, 0xF6), QColor(0xFF, 0xFF, 0xFF), QColor(0xF6, 0xF8, 0xF9),
          QColor(0x17, 0x1C, 0x20), QColor(0x6B, 0x75, 0x7E), QColor(0xF0, 0xF1, 0xF3),
          QColor(0xC9, 0x1F, 0x6E), QColor(0xFF, 0xFF, 0xFF), QColor(0xC4, 0xCA, 0xD0)};
}

QPixmap renderedIcon(const QByteArray& svg, double ratio) {
  QSvgRenderer renderer(svg);
  QPixmap pixmap(QSize(kIconSize, kIconSize) * ratio);
  pixmap.fill(Qt::transparent);
  QPainter painter(&pixmap);
  renderer.render(&painter);
  painter.end();
  pixmap.setDevicePixelRatio(ratio);
  return pixmap;
}

} // namespace

QPalette windowPalette(bool dark) {
  const Shades s = shades(dark);
  QPalette p(s.button, s.window);
  p.setColor(QPalette::Window, s.window);
  p.setColor(QPalette::WindowText, s.text);
  p.setColor(QPalette::Base, s.base);
  p.setColor(QPalette::AlternateBase, s.alternate);
  p.setColor(QPalette::Text, s.text);
  p.setColor(QPalette::PlaceholderText, s.dim);
  p.setColor(QPalette::Button, s.button);
  p.setColor(QPalette::ButtonText, s.text);
  p.setColor(QPalette::ToolTipBase, s.base);
  p.setColor(QPalette::ToolTipText, s.text);
  p.setColor(QPalette::Highlight, s.accent);
  p.setColor(QPalette::HighlightedText, s.accentText);
  // The accent is too dark for words on a dark ground.
  p.setColor(QPalette::Link, dark ? QColor(0xF2, 0x7F, 0xB8) : s.accent);
  p.setColor(QPalette::Mid, s.edge);
  for (QPalette::ColorRole role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    p.setColor(QPalette::Disabled, role, s.dim);
  return p;
}

void applyAppearance(bool dark) {
  QApplication::setStyle(new WindowStyle);
  QApplication::setPalette(windowPalette(dark));
}

bool desktopIsDark() {
  return QApplication::palette().color(QPalette::Window).lightness() < 128;
}

QIcon themedIcon(const QString& name, const QPalette& palette) {
  if (name.isEmpty()) return {};
  QFile file(":/icons/" + name + ".svg");
  if (!file.open(QIODevice::ReadOnly)) return {};
  const QByteArray drawn = file.readAll();
  QIcon icon;
  for (const auto mode : {QIcon::Normal, QIcon::Disabled}) {
    const auto group = mode == QIcon::Normal ? QPalette::Active : QPalette::Disabled;
    const QByteArray text = palette.color(group, QPalette::ButtonText).name().toLatin1();
    const QByteArray accent =
        mode == QIcon::Normal ? palette.color(QPalette::Link).name().toLatin1() : text;
    QByteArray svg = drawn;
    svg.replace(kStroke, text);
    svg.replace(kAccent, accent);
    for (double ratio : {1.0, 2.0, 3.0})
      icon.addPixmap(renderedIcon(svg, ratio), mode);
  }
  return icon;
}

} // namespace sump
