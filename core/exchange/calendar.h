#pragma once
// A calendar file after RFC 5545 (iCalendar): all-day events, some of them recurring.
//
// Lines end with CRLF and are folded at 75 octets, never inside a character (3.1); text is escaped
// (3.3.11). There is no clock in here: the caller says when the file is made.

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

using Date = std::chrono::year_month_day;

/// `2026-12-01` (ISO 8601, years 1900 to 9999); nothing for what is no day of the calendar.
std::optional<Date> dateFrom(std::string_view text);

enum class RepeatUnit { Days, Weeks, Months };
struct Repeat {
  RepeatUnit unit = RepeatUnit::Days;
  int every = 1;
};

struct CalendarEvent {
  std::string uid; ///< the same whenever the calendar is written anew (3.8.4.7)
  Date day;        ///< the first one
  std::optional<Repeat> repeat;
  std::string summary; ///< UTF-8
  std::string description;
};

/// One content line with its CRLF, folded.
std::string foldedLine(std::string_view line);
/// A value of type TEXT: backslash, semicolon, comma and line breaks escaped; other control
/// characters, which no line may hold, become blanks.
std::string escapedText(std::string_view text);

/// `stamp` is when it is written, UTC, to the second.
std::string calendarText(const std::vector<CalendarEvent>& events, std::chrono::sys_seconds stamp);

} // namespace sump
