#include "core/rules/finding.h"

#include "core/catalog/embedded.h"

#include <nlohmann/json.hpp>

namespace sump {

namespace {

const std::map<std::string, std::string>& english() {
  static const auto table = nlohmann::json::parse(embeddedText("messages/en.json"))
                                .get<std::map<std::string, std::string>>();
  return table;
}

} // namespace

std::string render(const Message& message) {
  const auto found = english().find(message.id);
  if (found == english().end()) return "<" + message.id + ">";
  std::string text;
  const std::string& pattern = found->second;
  for (std::size_t i = 0; i < pattern.size(); ++i) {
    const std::size_t close = pattern[i] == '{' ? pattern.find('}', i) : std::string::npos;
    if (close == std::string::npos) {
      text += pattern[i];
      continue;
    }
    const auto argument = message.arguments.find(pattern.substr(i + 1, close - i - 1));
    text +=
        argument == message.arguments.end() ? pattern.substr(i, close - i + 1) : argument->second;
    i = close;
  }
  return text;
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
