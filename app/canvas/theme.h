#pragma once
// Colours of the canvas, by meaning, for a light and a dark drawing.

#include "core/rules/finding.h"
#include "core/sheet/style.h"

#include <QColor>

namespace sump {

struct CanvasTheme {
  bool dark = false;
  QColor background;
  QColor gridMinor, gridMajor;
  QColor text, halo;
  QColor accent; ///< selection and tools
  QColor error, warning, note;

  QColor ink(Ink ink) const;
  QColor severity(Severity severity) const;
};

const CanvasTheme& canvasTheme(bool dark);

} // namespace sump
