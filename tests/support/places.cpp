#include "tests/support/places.h"

namespace sump {

const std::string& sourceFolder() {
  static const std::string folder = SUMPWRIGHT_SOURCE_DIR;
  return folder;
}

const std::string& builtProgram() {
  static const std::string program = SUMPWRIGHT_PROGRAM;
  return program;
}

std::string sampleFile(const std::string& name) {
  return sourceFolder() + "/samples/" + name + ".sump";
}

} // namespace sump
