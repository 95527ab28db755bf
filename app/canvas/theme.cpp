#include "app/canvas/theme.h"

namespace sump {

namespace {

// Dark-screen inks keep the hue of the paper ink and are light enough to read on the background.
QColor darkInk(Ink ink) {
  switch (ink) {
  case Ink::Black:
    return QColor(0xE4, 0xE7, 0xEA);
  case Ink::Grey:
    return QColor(0x9B, 0xA5, 0xAE);
  case Ink::PaleGrey:
    return QColor(0x4C, 0x55, 0x5E);
  case Ink::White:
    return QColor(0x22, 0x28, 0x2E);
  case Ink::ServiceRed:
    return QColor(0xFF, 0x6B, 0x66);
  case Ink::ServiceYellow:
    return QColor(0xF5, 0xD2, 0x4A);
  case Ink::ServiceOrange:
    return QColor(0xFF, 0xA2, 0x4C);
  case Ink::ServiceBlue:
    return QColor(0x6C, 0xB2, 0xFF);
  case Ink::ServicePurple:
    return QColor(0xD0, 0x95, 0xFF);
  case Ink::ServiceGreen:
    return QColor(0x6F, 0xD0, 0x86);
  case Ink::Concrete:
    return QColor(0x3D, 0x45, 0x4C);
  case Ink::Water:
    return QColor(0x1F, 0x45, 0x5E);
  case Ink::Paving:
    return QColor(0x25, 0x2B, 0x30);
  case Ink::Building:
    return QColor(0x2F, 0x33, 0x36);
  }
  return QColor(0xE4, 0xE7, 0xEA);
}

CanvasTheme lightTheme() {
  CanvasTheme t;
  t.background = QColor(0xFF, 0xFF, 0xFF);
  t.gridMinor = QColor(0xF0, 0xF2, 0xF4);
  t.gridMajor = QColor(0xDF, 0xE4, 0xE8);
  t.text = QColor(0x17, 0x1C, 0x20);
  t.halo = QColor(0xFF, 0xFF, 0xFF, 215);
  t.accent = QColor(0xD8, 0x1B, 0x72);
  t.error = QColor(0xC6, 0x1A, 0x1A);
  t.warning = QColor(0xB3, 0x6A, 0x00);
  t.note = QColor(0x1D, 0x5F, 0xA8);
  return t;
}

CanvasTheme darkTheme() {
  CanvasTheme t;
  t.dark = true;
  t.background = QColor(0x17, 0x1B, 0x1F);
  t.gridMinor = QColor(0x1E, 0x23, 0x28);
  t.gridMajor = QColor(0x2A, 0x31, 0x38);
  t.text = QColor(0xEC, 0xEF, 0xF1);
  t.halo = QColor(0x17, 0x1B, 0x1F, 205);
  t.accent = QColor(0xFF, 0x5C, 0xA8);
  t.error = QColor(0xFF, 0x7B, 0x72);
  t.warning = QColor(0xF2, 0xB1, 0x3C);
  t.note = QColor(0x79, 0xB8, 0xFF);
  return t;
}

} // namespace

QColor CanvasTheme::ink(Ink ink) const {
  if (dark) return darkInk(ink);
  const Color c = paperColor(ink);
  return QColor(c.red, c.green, c.blue);
}

QColor CanvasTheme::severity(Severity severity) const {
  switch (severity) {
  case Severity::Error:
    return error;
  case Severity::Warning:
    return warning;
  case Severity::Note:
    break;
  }
  return note;
}

const CanvasTheme& canvasTheme(bool dark) {
  static const CanvasTheme light = lightTheme();
  static const CanvasTheme night = darkTheme();
  return dark ? night : light;
}

} // namespace sump
