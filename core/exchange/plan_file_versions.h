#pragma once
// Older plan files are brought up to the newest version on their JSON, one version at a time,
// before a field is read. Private to exchange/.

#include "core/exchange/json_document.h"

#include <span>
#include <string>

namespace sump {

/// Turns a document of version `from` into one of version `from + 1`; the version number itself is
/// written by migrate().
struct VersionStep {
  int from = 0;
  void (*apply)(JsonNode& document);
};

/// The steps of this program, by rising `from`; version 1 is the first, so there is none yet.
std::span<const VersionStep> versionSteps();

/// Throws InputError when `document` is no plan, is newer than `newest` (named in the message), or
/// is older than the first step.
void migrate(JsonNode& document, std::span<const VersionStep> steps, int newest,
             const std::string& fileName);

} // namespace sump
