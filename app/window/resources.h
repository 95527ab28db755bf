#pragma once

namespace sump {

/// Names the application for settings and titles and makes its built-in icons known. Call once,
/// after the QApplication was made.
void nameApplication();

} // namespace sump
