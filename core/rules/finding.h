#pragma once
// What a rule says about a plan.

#include "core/catalog/limits.h"
#include "core/geometry/point.h"
#include "core/plan/plan.h"
#include "core/rules/trade.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sump {

/// Note: a statement that a reader should see (a length, 'within the usual rounding'), no fault.
enum class Severity { Note, Warning, Error };

/// Text by id and arguments, so that another language is another table. See resources/messages/.
struct Message {
  std::string id;
  std::map<std::string, std::string> arguments;
  bool operator==(const Message&) const = default;
};

/// The English text: `{name}` in the table's pattern is replaced by the argument. An unknown id
/// renders as the id itself in angle brackets (a test forbids it).
std::string render(const Message& message);

struct Finding {
  std::string rule; ///< Rule::id
  Severity severity = Severity::Warning;
  std::vector<Id> objects; ///< most telling first; may be empty (nothing of the kind exists)
  /// Tells findings of one message and the same objects apart: a service, a chamber, a bend.
  std::string which;
  Message what;
  Message mend;
  std::optional<std::string> measured; ///< with unit, in the project's units
  std::optional<std::string> required;
  std::optional<Point2> place; ///< where to look, site
  /// Of the limit that was compared with, else of the rule; with edition.
  std::string source;
  Confidence confidence = Confidence::CommonPractice; ///< of that source
  /// True by geometry or physics alone: an error whatever figures and sources say.
  bool impossible = false;
  bool decided = true; ///< false: the plan lacks what the rule needs to know
  std::optional<Acceptance> accepted;
  /// Whose work it is: the rule's trade, or where the rule is general, that of the lines concerned.
  Trade trade = Trade::General;
  std::vector<Service> services; ///< of the lines concerned, each once; empty when about none
  /// Stable across runs of the program: rule, message, objects and `which`; never a
  /// measured value. For acceptance with a reason.
  std::string key() const;
};

std::string_view name(Severity severity); ///< `note`, `warning`, `error`

} // namespace sump
