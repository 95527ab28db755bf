#pragma once
// The plan file: UTF-8 JSON with a fixed key order, extension `.sump`, described by
// resources/schema/plan.schema.json. Lengths in metres, angles in degrees, elevations on the datum.

#include "core/exchange/input_error.h"
#include "core/plan/plan.h"

#include <filesystem>
#include <string>
#include <string_view>

namespace sump {

inline constexpr int kPlanFileVersion = 1;

/// Throws InputError (file name as given) with pointer and line for anything that is not a
/// consistent plan of a version this program knows; a newer version is refused by name.
Plan readPlanText(std::string_view text, const std::string& fileName);
Plan readPlanFile(const std::filesystem::path& file);
/// The same plan gives the same bytes. Numbers are rounded to 1e-9 (a nanometre).
std::string writePlanText(const Plan& plan);
/// Temporary file beside it, flushed to disk, renamed over it: the old file survives any failure.
/// Throws InputError.
void savePlanFile(const Plan& plan, const std::filesystem::path& file);
/// As savePlanFile for any bytes.
void writeFileAtomically(const std::filesystem::path& file, std::string_view bytes);

} // namespace sump
