#pragma once
// The texts of findings apart from their values, so that a window can put another language's
// pattern in place of the English one before they are joined.

#include <map>
#include <string>
#include <string_view>

namespace sump {

/// The English pattern of a message's id from resources/messages/en.json, such as `No link joins
/// {from} and {to}.`; empty for an unknown id.
std::string_view messagePattern(const std::string& id);

/// The pattern with each `{name}` replaced by the argument of that name; what has none stays.
std::string filledMessage(std::string_view pattern,
                          const std::map<std::string, std::string>& arguments);

} // namespace sump
