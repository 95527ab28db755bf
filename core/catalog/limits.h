#pragma once
// Every figure that a rule or a study compares with, by id, with where it comes from. Defaults come
// from resources/limits/generic.json; a plan may carry its own value for any of them.

#include "core/units/quantity.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

enum class LimitKind { Length, Volume, Slope, Angle, Number, Count };
/// Printed confidence marks: seen in print, seen quoted, from memory, common practice, and the
/// value that a project itself decided on.
enum class Confidence { Seen, SeenSecondHand, FromMemory, CommonPractice, ProjectsOwn };
/// `seen in print`, `seen quoted`, ...
std::string_view words(Confidence confidence);
/// Firm enough for an error: all but what is from memory or common practice.
bool isFirm(Confidence confidence);

struct Limit {
  std::string id; ///< `storage.minimum`
  std::string title;
  LimitKind kind = LimitKind::Number;
  double value = 0;    ///< SI; slope as rise over run, angle in radians
  std::string edition; ///< of what is cited; empty where it has none or none is known
  std::string citation;
  Confidence confidence = Confidence::CommonPractice;
  std::string source() const; ///< citation with its edition
};

/// An immutable set of limits. Asking for an unknown id or with the wrong kind is a programmer
/// error and throws std::logic_error naming the id.
class Limits {
public:
  Limits() = default;
  explicit Limits(std::vector<Limit> table);
  const Limit& at(std::string_view id) const;
  bool has(std::string_view id) const;
  Length length(std::string_view id) const;
  Volume volume(std::string_view id) const;
  Angle angle(std::string_view id) const;
  double number(std::string_view id) const; ///< Slope, Number or Count
  const std::vector<Limit>& table() const { return table_; }
  /// A copy with the plan's own values; unknown ids are ignored here (consistency reports them).
  Limits with(const std::map<std::string, double>& own) const;
  /// A copy with the rows of a code profile; rows of unknown id are ignored.
  Limits withRows(const std::vector<Limit>& rows) const;

private:
  std::vector<Limit> table_;
  std::map<std::string, std::size_t, std::less<>> index_;
};

} // namespace sump
