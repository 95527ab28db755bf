#include "core/exchange/upkeep_calendar.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdio>

namespace sump {

namespace {

/// FNV-1a, 64 bit, in hexadecimal: stable across runs and machines, which std::hash is not.
std::string fingerprint(const std::string& text) {
  std::uint64_t hash = 14695981039346656037ull;
  for (char c : text) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 1099511628211ull;
  }
  std::array<char, 20> hex{};
  std::snprintf(hex.data(), hex.size(), "%016llx", static_cast<unsigned long long>(hash));
  return hex.data();
}

std::string uidOf(const Project& project, const std::string& key) {
  return key + "-" +
         fingerprint(project.identificationNumber + "\n" + project.title + "\n" +
                     project.siteAddress) +
         "@sumpwright";
}

std::string objectsText(const UpkeepStep& step) {
  if (step.noneDrawn) return "At: none drawn in the plan; look on site.\n";
  std::string text;
  for (const UpkeepObject& object : step.objects) {
    text += text.empty() ? "At: " : "; ";
    text += object.what.empty() ? object.id : object.what + " " + object.id;
    if (!object.run.empty() && object.run != object.id) text += " on " + object.run;
  }
  return text.empty() ? text : text + "\n";
}

std::string stepText(const UpkeepStep& step) {
  std::string text = step.text + "\n";
  if (!step.caution.empty()) text += "CAUTION: " + step.caution + "\n";
  return text + objectsText(step);
}

std::string cautionsText(const UpkeepPlan& upkeep) {
  std::string text;
  for (const std::string& caution : upkeep.cautions)
    text += "\n" + caution;
  return text + "\nTexts and intervals: " + upkeep.source + ".";
}

Repeat repeatOf(const UpkeepInterval& interval) {
  const RepeatUnit unit = interval.unit == UpkeepUnit::Month  ? RepeatUnit::Months
                          : interval.unit == UpkeepUnit::Week ? RepeatUnit::Weeks
                                                              : RepeatUnit::Days;
  return {unit, interval.count};
}

CalendarEvent startUp(const Project& project, const UpkeepPlan& upkeep, Date start) {
  std::string text;
  for (std::size_t i = 0; i < upkeep.startUp.size(); ++i) {
    const UpkeepStep& step = upkeep.startUp[i];
    text += std::to_string(i + 1) + ". " + step.title + ". " + stepText(step);
  }
  return {uidOf(project, "start-up"), start, std::nullopt, "Start-up: " + project.title,
          text + cautionsText(upkeep)};
}

} // namespace

Date dayAfter(Date day, const UpkeepInterval& interval) {
  if (interval.unit == UpkeepUnit::Month) {
    const Date later = day + std::chrono::months(interval.count);
    return {later.year(), later.month(), std::min(later.day(), std::chrono::day(28))};
  }
  const int one = interval.unit == UpkeepUnit::Week ? 7 : 1;
  return std::chrono::sys_days(day) + std::chrono::days(interval.count * one);
}

std::vector<CalendarEvent> upkeepEvents(const Project& project, const UpkeepPlan& upkeep,
                                        Date start) {
  std::vector<CalendarEvent> events = {startUp(project, upkeep, start)};
  for (const UpkeepTask& task : upkeep.tasks) {
    events.push_back({uidOf(project, "task-" + task.step.key), dayAfter(start, task.every),
                      repeatOf(task.every), task.step.title + ": " + project.title,
                      stepText(task.step) + "Interval: " + recurring(task.every) + ". " +
                          task.basis + ".\n" + cautionsText(upkeep)});
  }
  return events;
}

std::string upkeepCalendar(const Project& project, const UpkeepPlan& upkeep, Date start,
                           std::chrono::sys_seconds stamp) {
  return calendarText(upkeepEvents(project, upkeep, start), stamp);
}

} // namespace sump
