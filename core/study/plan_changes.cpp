#include "core/study/plan_changes.h"

#include <algorithm>
#include <cctype>

namespace sump {

std::string_view name(ChangeKind kind) {
  switch (kind) {
  case ChangeKind::Added:
    return "added";
  case ChangeKind::Removed:
    return "removed";
  case ChangeKind::Moved:
    return "moved";
  case ChangeKind::Turned:
    return "turned";
  case ChangeKind::Resized:
    return "resized";
  case ChangeKind::Level:
    return "level";
  case ChangeKind::Count:
    return "count";
  case ChangeKind::Specified:
    return "specified";
  case ChangeKind::Reconnected:
    return "reconnected";
  case ChangeKind::Reordered:
    return "reordered";
  case ChangeKind::Renamed:
    return "renamed";
  case ChangeKind::Project:
    return "project";
  case ChangeKind::Basis:
    return "basis";
  case ChangeKind::Limits:
    return "limits";
  case ChangeKind::Record:
    break;
  }
  return "record";
}

std::optional<double> BillChange::difference() const {
  if (!before || !after) return std::nullopt;
  return *after - *before;
}

std::string objectWords(const PlanChange& change) {
  if (change.called.empty()) return change.noun;
  const auto same = [](unsigned char a, unsigned char b) {
    return std::tolower(a) == std::tolower(b);
  };
  const std::string& noun = change.noun;
  const bool said = change.called.size() >= noun.size() &&
                    std::equal(noun.begin(), noun.end(), change.called.begin(), same) &&
                    (change.called.size() == noun.size() || change.called[noun.size()] == ' ');
  return said ? change.called : noun + " " + change.called;
}

std::string subject(const PlanChange& change) {
  std::string text = objectWords(change);
  if (!change.what.empty()) text += ": " + change.what;
  return text;
}

std::string told(const PlanChange& change) {
  std::string text = subject(change) + ": ";
  if (change.kind == ChangeKind::Added) {
    text += "added (" + change.after + ")";
  } else if (change.kind == ChangeKind::Removed) {
    text += "removed (" + change.before + ")";
  } else {
    text += change.before + " to " + change.after;
  }
  return change.difference.empty() ? text : text + " (" + change.difference + ")";
}

} // namespace sump
