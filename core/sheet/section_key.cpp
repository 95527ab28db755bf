// What a section's words and lines mean, told with its scale.

#include "core/sheet/section_marks.h"

#include <algorithm>

namespace sump {

namespace {

bool hasBeyond(const std::vector<ProfileVault>& vaults) {
  return std::ranges::any_of(vaults, [](const ProfileVault& vault) {
    return std::ranges::any_of(vault.manways, &ProfileManway::beyond);
  });
}

constexpr const char* kBeyondKey = "Dashed riser: stands off the cut";

} // namespace

std::string sectionKey(const RunProfile& profile) {
  const bool clear = std::ranges::any_of(profile.crossings, [](const ProfileCrossing& c) {
    return !c.joined && c.clearance && *c.clearance >= metres(0);
  });
  std::string key = clear ? "Over by, under by: clear between the outsides" : "";
  if (hasBeyond(profile.vaults)) key += (clear ? ". " : "") + std::string(kBeyondKey);
  return key;
}

std::string sectionKey(const TrainProfile& profile) {
  return hasBeyond(profile.vaults) ? kBeyondKey : "";
}

} // namespace sump
