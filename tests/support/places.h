#pragma once

#include <string>

namespace sump {

// Where this checkout stands, and the program built from it. Functions, not macros: a folder's name
// on the compiler's command line would keep checkouts from sharing their cached objects.
const std::string& sourceFolder();
const std::string& builtProgram();

// The file of one of the samples: "transit-depot" is samples/transit-depot.sump.
std::string sampleFile(const std::string& name);

} // namespace sump
