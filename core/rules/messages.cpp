#include "core/rules/finding.h"

#include "core/catalog/embedded.h"
#include "core/rules/messages.h"

#include <nlohmann/json.hpp>

namespace sump {

namespace {

const std::map<std::string, std::string>& english() {
  static const auto table = nlohmann::json::parse(embeddedText("messages/en.json"))
                                .get<std::map<std::string, std::string>>();
  return table;
}

} // namespace

std::string_view messagePattern(const std::string& id) {
  const auto found = english().find(id);
  return found == english().end() ? std::string_view() : found->second;
}

std::string filledMessage(std::string_view pattern,
                          const std::map<std::string, std::string>& arguments) {
  std::string text;
  for (std::size_t i = 0; i < pattern.size(); ++i) {
    const std::size_t close = pattern[i] == '{' ? pattern.find('}', i) : std::string_view::npos;
    if (close == std::string_view::npos) {
      text += pattern[i];
      continue;
    }
    const auto argument = arguments.find(std::string(pattern.substr(i + 1, close - i - 1)));
    text += argument == arguments.end() ? pattern.substr(i, close - i + 1)
                                        : std::string_view(argument->second);
    i = close;
  }
  return text;
}

std::string render(const Message& message) {
  const std::string_view pattern = messagePattern(message.id);
  return pattern.empty() ? "<" + message.id + ">" : filledMessage(pattern, message.arguments);
}

std::string Finding::key() const {
  std::string key = rule + "/" + what.id;
  for (const Id& id : objects)
    key += "/" + id;
  return which.empty() ? key : key + "/" + which;
}

std::string_view name(Severity severity) {
  switch (severity) {
  case Severity::Note:
    return "note";
  case Severity::Warning:
    return "warning";
  case Severity::Error:
    return "error";
  }
  return {};
}

} // namespace sump
