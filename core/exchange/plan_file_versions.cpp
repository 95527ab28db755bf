#include "core/exchange/plan_file_versions.h"

#include "core/exchange/input_error.h"
#include "core/exchange/json_text.h"
#include "core/exchange/plan_file_fields.h"

#include <cmath>

namespace sump {

namespace {

void checkFormat(const JsonNode& document, const std::string& file) {
  const std::string mend =
      "give a plan file: its first key is \"format\": \"" + std::string(kPlanFormat) + "\"";
  if (document.kind != JsonNode::Kind::Object) {
    throw InputError(file, "", document.line,
                     "is not a plan: it holds " + std::string(kindName(document.kind)), mend);
  }
  const JsonNode* format = document.member("format");
  if (format == nullptr) throw InputError(file, "/format", document.line, "is missing", mend);
  if (format->kind != JsonNode::Kind::Text || format->text != kPlanFormat) {
    throw InputError(file, "/format", format->line, "is not \"" + std::string(kPlanFormat) + "\"",
                     mend);
  }
}

int versionOf(const JsonNode& document, const std::string& file) {
  const JsonNode* version = document.member("version");
  const std::string mend = "give the version number of the plan file, 1 or more";
  if (version == nullptr) throw InputError(file, "/version", document.line, "is missing", mend);
  const double v = version->number;
  const bool whole = version->kind == JsonNode::Kind::Number && v == std::floor(v);
  if (!whole || v < 0 || v > 1e6) {
    throw InputError(file, "/version", version->line, "is not a version number", mend);
  }
  return static_cast<int>(v);
}

const VersionStep* stepFrom(std::span<const VersionStep> steps, int version) {
  for (const VersionStep& step : steps) {
    if (step.from == version) return &step;
  }
  return nullptr;
}

} // namespace

std::span<const VersionStep> versionSteps() {
  return {};
}

void migrate(JsonNode& document, std::span<const VersionStep> steps, int newest,
             const std::string& file) {
  checkFormat(document, file);
  const int line = lineAt(document, "/version");
  int version = versionOf(document, file);
  if (version > newest) {
    throw InputError(file, "/version", line,
                     "is a plan of version " + std::to_string(version) +
                         ", and this Sumpwright reads up to version " + std::to_string(newest),
                     "open it with a newer Sumpwright; the file was left as it is");
  }
  for (; version < newest; ++version) {
    const VersionStep* step = stepFrom(steps, version);
    if (step == nullptr) {
      throw InputError(file, "/version", line,
                       "is " + std::to_string(version) + ", which no plan file ever had",
                       "give version " + std::to_string(newest));
    }
    step->apply(document);
    *document.member("version") = JsonNode::of(static_cast<double>(version + 1));
  }
}

} // namespace sump
