#pragma once
// CSV after RFC 4180, read from files of people's own: quotes, CRLF or LF, a byte-order mark.

#include <string>
#include <string_view>
#include <vector>

namespace sump {

struct CsvRecord {
  int line = 0; ///< where it starts, from 1
  std::vector<std::string> cells;
};

/// Blank lines are left out. Throws InputError naming `file` and the line when a quote is not
/// closed or stands where it cannot.
std::vector<CsvRecord> readCsv(std::string_view text, const std::string& file);

} // namespace sump
