// RFC 5545: the letter of folding and escaping, a golden calendar, and a reader of another house.

#include "core/exchange/upkeep_calendar.h"

#include "core/exchange/plan_file.h"
#include "core/rules/review.h"
#include "tests/support/golden.h"
#include "tests/support/own_folder.h"
#include "tests/support/places.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

namespace sump::test {
namespace {

const std::string kSource = sourceFolder();

Date day(int y, unsigned m, unsigned d) {
  return {std::chrono::year(y), std::chrono::month(m), std::chrono::day(d)};
}

const std::chrono::sys_seconds kStamp =
    std::chrono::sys_days(day(2026, 3, 2)) + std::chrono::hours(7) + std::chrono::seconds(65);

std::vector<std::string> physicalLines(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text.find("\r\n", at);
    if (end == std::string::npos) throw std::runtime_error("a line without CRLF");
    lines.push_back(text.substr(at, end - at));
    at = end + 2;
  }
  return lines;
}

std::string unfolded(std::string text) {
  for (std::size_t at = text.find("\r\n "); at != std::string::npos; at = text.find("\r\n ", at))
    text.erase(at, 3);
  return text;
}

TEST(Calendar, FoldsAt75OctetsAndNeverInsideACharacter) {
  EXPECT_EQ(foldedLine(std::string(75, 'x')), std::string(75, 'x') + "\r\n");
  EXPECT_EQ(foldedLine(std::string(76, 'x')), std::string(75, 'x') + "\r\n x\r\n");
  EXPECT_EQ(foldedLine(std::string(150, 'x')),
            std::string(75, 'x') + "\r\n " + std::string(74, 'x') + "\r\n x\r\n");
  for (std::size_t before = 60; before < 80; ++before) {
    std::string line(before, 'a');
    for (int i = 0; i < 60; ++i)
      line += i % 2 == 0 ? "\xE2\x80\xA2" : "\xF0\x9F\x92\xA7"; // 3 and 4 octets
    const std::string folded = foldedLine(line);
    EXPECT_EQ(unfolded(folded), line + "\r\n");
    for (const std::string& part : physicalLines(folded)) {
      EXPECT_LE(part.size(), 75u);
      const std::size_t first = part.starts_with(' ') ? 1 : 0;
      EXPECT_NE(static_cast<unsigned char>(part.at(first)) & 0xC0, 0x80);
    }
  }
}

TEST(Calendar, EscapesText) {
  EXPECT_EQ(escapedText("a, b; c\\d\ne\r\nf\rg\th"), "a\\, b\\; c\\\\d\\ne\\nf\\ng h");
  EXPECT_EQ(escapedText("\"10:30\""), "\"10:30\"");
}

TEST(Calendar, ReadsDaysOfTheCalendarOnly) {
  EXPECT_EQ(dateFrom("2026-12-01"), day(2026, 12, 1));
  EXPECT_EQ(dateFrom("2028-02-29"), day(2028, 2, 29));
  for (const char* bad : {"2026-02-29", "2026-13-01", "2026-00-10", "26-12-01", "2026/12/01",
                          "2026-12-1", "2026-1--1", "", "2026-12-01T", "1899-01-01", "-026-01-01"})
    EXPECT_FALSE(dateFrom(bad)) << bad;
}

TEST(Calendar, MonthsNeverFallOnDaysThatSomeMonthsLack) {
  EXPECT_EQ(dayAfter(day(2026, 8, 31), {6, UpkeepUnit::Month}), day(2027, 2, 28));
  EXPECT_EQ(dayAfter(day(2026, 10, 15), {3, UpkeepUnit::Month}), day(2027, 1, 15));
  EXPECT_EQ(dayAfter(day(2026, 12, 30), {1, UpkeepUnit::Week}), day(2027, 1, 6));
  EXPECT_EQ(dayAfter(day(2028, 2, 28), {1, UpkeepUnit::Day}), day(2028, 2, 29));
}

TEST(Calendar, MatchesTheGoldenText) {
  const std::vector<CalendarEvent> events = {
      {"start-up-1@sumpwright", day(2026, 12, 1), std::nullopt, "Start-up", "One;\ntwo, three"},
      {"look-1@sumpwright", day(2026, 12, 2), Repeat{RepeatUnit::Days, 1}, "Look", ""},
      {"flush-1@sumpwright", day(2026, 12, 8), Repeat{RepeatUnit::Weeks, 1}, "Flush", "x"},
      {"out-1@sumpwright", day(2027, 3, 1), Repeat{RepeatUnit::Months, 3}, "Pump out",
       "Sludge, oil and floating dirt; at least every three months, or sooner \xE2\x80\x93 by "
       "the computed interval"}};
  const std::string now = calendarText(events, kStamp);
  testing::expectGolden("exchange/golden/upkeep.ics", now);
}

/// A python that has the reader: the first in the path, or Debian's own.
std::string pythonWithCalendar() {
  for (const std::string python : {"python3", "/usr/bin/python3"}) {
    if (std::system((python + " -c 'import icalendar' 2>/dev/null").c_str()) == 0) return python;
  }
  return {};
}

class UpkeepCalendar : public ::testing::TestWithParam<const char*> {
protected:
  const Review review_ =
      review(readPlanFile(kSource + "/samples/" + GetParam() + ".sump"), builtinCatalog());
  const UpkeepPlan upkeep_ = upkeep(review_.plan, review_.study, builtinUpkeep());
  const std::vector<CalendarEvent> events_ =
      upkeepEvents(review_.plan.project, upkeep_, day(2026, 12, 1));
};
INSTANTIATE_TEST_SUITE_P(Samples, UpkeepCalendar,
                         ::testing::Values("transit-depot", "boatyard-pad", "ferry-quay"));

TEST_P(UpkeepCalendar, HoldsStartUpAndEveryTask) {
  ASSERT_EQ(events_.size(), upkeep_.tasks.size() + 1);
  EXPECT_FALSE(events_[0].repeat);
  std::set<std::string> uids = {events_[0].uid};
  for (std::size_t i = 0; i < upkeep_.tasks.size(); ++i) {
    const CalendarEvent& event = events_[i + 1];
    ASSERT_TRUE(event.repeat);
    EXPECT_EQ(event.repeat->every, upkeep_.tasks[i].every.count);
    EXPECT_EQ(event.day, dayAfter(day(2026, 12, 1), upkeep_.tasks[i].every));
    EXPECT_NE(event.description.find(upkeep_.tasks[i].step.text), std::string::npos);
    EXPECT_NE(event.description.find("confined spaces"), std::string::npos);
    uids.insert(event.uid);
  }
  EXPECT_EQ(uids.size(), events_.size());
}

TEST_P(UpkeepCalendar, KeepsItsUidsWhenWrittenAnew) {
  Project revised = review_.plan.project;
  revised.revision = "Z";
  const auto later = upkeepEvents(revised, upkeep_, day(2027, 5, 5));
  for (std::size_t i = 0; i < events_.size(); ++i)
    EXPECT_EQ(later[i].uid, events_[i].uid);
  revised.identificationNumber += "-2";
  EXPECT_NE(upkeepEvents(revised, upkeep_, day(2027, 5, 5))[0].uid, events_[0].uid);
}

TEST_P(UpkeepCalendar, IsReadByAnotherHouse) {
  const std::string python = pythonWithCalendar();
  if (python.empty()) {
    GTEST_SKIP() << "python3-icalendar is not installed; the calendar was read by nobody else";
  }
  const testing::OwnFolder folder;
  const auto file = folder / "upkeep.ics";
  std::ofstream(file, std::ios::binary)
      << upkeepCalendar(review_.plan.project, upkeep_, day(2026, 12, 1), kStamp);
  const std::string command =
      python + " " + kSource + "/tests/exchange/calendar_check.py " + file.string();
  std::string read;
  FILE* pipe = popen(command.c_str(), "r");
  ASSERT_NE(pipe, nullptr);
  for (int c = std::fgetc(pipe); c != EOF; c = std::fgetc(pipe))
    read += static_cast<char>(c);
  EXPECT_EQ(pclose(pipe), 0);
  std::string expected;
  for (const CalendarEvent& event : events_) {
    std::ostringstream line;
    line << event.uid << "|" << static_cast<int>(event.day.year()) << "-"
         << static_cast<unsigned>(event.day.month()) << "-"
         << static_cast<unsigned>(event.day.day()) << "|";
    if (event.repeat) {
      line << (event.repeat->unit == RepeatUnit::Days    ? "DAILY"
               : event.repeat->unit == RepeatUnit::Weeks ? "WEEKLY"
                                                         : "MONTHLY")
           << "/" << event.repeat->every;
    }
    line << "|" << event.summary << "|" << event.description << "\n";
    expected += line.str();
  }
  EXPECT_EQ(read, expected);
}

} // namespace
} // namespace sump::test
