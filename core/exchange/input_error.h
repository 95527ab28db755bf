#pragma once
// The one exception type at the file boundary.

#include <stdexcept>
#include <string>

namespace sump {

/// A file that cannot be read or written: what, where and how to mend it, for one person to read.
struct InputError : std::runtime_error {
  InputError(std::string file, std::string pointer, int line, std::string what, std::string mend);
  std::string file;
  std::string pointer; ///< RFC 6901, empty when the place is a line or the whole file
  int line = 0;        ///< from 1; 0 when unknown
  std::string problem;
  std::string mend;
};

} // namespace sump
