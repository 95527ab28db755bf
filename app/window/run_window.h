#pragma once
// The door from main into the window.

#include <QString>

#include <vector>

namespace sump {

/// Opens a window for each file (or one on a new plan) and runs until the last is closed. Returns
/// the process's exit status. The application object is created here.
int runWindow(int argc, char** argv, const std::vector<QString>& files);

} // namespace sump
