#pragma once
// Light and dark palettes of the window, and icons drawn in the palette's text colour.

#include <QIcon>
#include <QPalette>
#include <QString>

namespace sump {

QPalette windowPalette(bool dark);
/// Sets palette and style of the whole application.
void applyAppearance(bool dark);
/// True when the desktop's own palette is dark.
bool desktopIsDark();
/// `:/icons/<name>.svg` in the colours of the palette; a null icon for an empty name.
QIcon themedIcon(const QString& name, const QPalette& palette);

} // namespace sump
