#include "core/exchange/calendar.h"

#include <array>
#include <charconv>
#include <cstdio>

namespace sump {

namespace {

constexpr std::size_t kMostOctets = 75; // RFC 5545 3.1, without the line break

std::string number(int value, int digits) {
  std::array<char, 16> text{};
  std::snprintf(text.data(), text.size(), "%0*d", digits, value);
  return text.data();
}

std::string dateText(Date date) {
  return number(static_cast<int>(date.year()), 4) +
         number(static_cast<int>(static_cast<unsigned>(date.month())), 2) +
         number(static_cast<int>(static_cast<unsigned>(date.day())), 2);
}

std::string timeText(std::chrono::sys_seconds time) {
  const auto day = std::chrono::floor<std::chrono::days>(time);
  const std::chrono::hh_mm_ss clock(time - day);
  return dateText(Date(day)) + "T" + number(static_cast<int>(clock.hours().count()), 2) +
         number(static_cast<int>(clock.minutes().count()), 2) +
         number(static_cast<int>(clock.seconds().count()), 2) + "Z";
}

std::string ruleText(const Repeat& repeat) {
  const char* frequency = repeat.unit == RepeatUnit::Days    ? "DAILY"
                          : repeat.unit == RepeatUnit::Weeks ? "WEEKLY"
                                                             : "MONTHLY";
  std::string text = std::string("RRULE:FREQ=") + frequency;
  if (repeat.every != 1) text += ";INTERVAL=" + std::to_string(repeat.every);
  return text;
}

bool continues(char c) {
  return (static_cast<unsigned char>(c) & 0xC0) == 0x80; // inside a UTF-8 sequence
}

std::optional<int> digits(std::string_view text) {
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  const bool whole = end == text.data() + text.size() && text.front() != '-';
  return error == std::errc{} && whole ? std::optional(value) : std::nullopt;
}

} // namespace

std::optional<Date> dateFrom(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = digits(text.substr(0, 4)), month = digits(text.substr(5, 2)),
             day = digits(text.substr(8, 2));
  if (!year || !month || !day || *year < 1900) return std::nullopt;
  const Date date{std::chrono::year(*year), std::chrono::month(static_cast<unsigned>(*month)),
                  std::chrono::day(static_cast<unsigned>(*day))};
  return date.ok() ? std::optional(date) : std::nullopt;
}

std::string foldedLine(std::string_view line) {
  std::string folded;
  std::size_t room = kMostOctets;
  while (line.size() > room) {
    std::size_t cut = room;
    while (cut > 0 && continues(line[cut]))
      --cut;
    if (cut == 0) cut = room; // no UTF-8 at all
    folded += std::string(line.substr(0, cut)) + "\r\n ";
    line.remove_prefix(cut);
    room = kMostOctets - 1; // after the blank that marks a continuation
  }
  return folded + std::string(line) + "\r\n";
}

std::string escapedText(std::string_view text) {
  std::string escaped;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '\r' && i + 1 < text.size() && text[i + 1] == '\n') continue;
    if (c == '\n' || c == '\r') {
      escaped += "\\n";
    } else if (c == '\\' || c == ';' || c == ',') {
      escaped += '\\';
      escaped += c;
    } else {
      const auto octet = static_cast<unsigned char>(c);
      escaped += octet < 0x20 || octet == 0x7F ? ' ' : c;
    }
  }
  return escaped;
}

std::string calendarText(const std::vector<CalendarEvent>& events, std::chrono::sys_seconds stamp) {
  std::string text;
  const auto line = [&text](const std::string& content) { text += foldedLine(content); };
  line("BEGIN:VCALENDAR");
  line("VERSION:2.0");
  line("PRODID:-//Sumpwright//Upkeep calendar//EN");
  line("CALSCALE:GREGORIAN");
  for (const CalendarEvent& event : events) {
    line("BEGIN:VEVENT");
    line("UID:" + escapedText(event.uid));
    line("DTSTAMP:" + timeText(stamp));
    line("DTSTART;VALUE=DATE:" + dateText(event.day));
    if (event.repeat) line(ruleText(*event.repeat));
    line("SUMMARY:" + escapedText(event.summary));
    if (!event.description.empty()) line("DESCRIPTION:" + escapedText(event.description));
    line("TRANSP:TRANSPARENT"); // an all-day reminder keeps nobody busy
    line("END:VEVENT");
  }
  line("END:VCALENDAR");
  return text;
}

} // namespace sump
