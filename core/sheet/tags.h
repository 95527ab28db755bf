#pragma once
// The names by which the sheet calls runs and vaults, and their figures as text. Private to
// core/sheet.

#include "core/rules/review.h"
#include "core/study/object_names.h"

#include <string>
#include <unordered_map>
#include <utility>

namespace sump {

/// `IC-1`, `IC-2`: the service's letters and a count in the plan's order, by run id.
std::unordered_map<Id, std::string> runTags(const Plan& plan);
/// `6" PVC SDR 35`.
std::string sizeAndMaterial(const Run& run, const Catalog& catalog);
std::string sizeText(const std::string& nominal);
/// Its own name, else that of what it carries; the same on every sheet.
std::string runName(const std::string& name, Service service);
/// `23.4 ft`, or `?` when the run could not be worked out.
std::string lengthText(const RunStudy& run, UnitSystem units);
/// Nobody lays to so small a slope.
bool isLevel(double slope);
/// How pipe that carries water nobody may drink is marked, as the codes word it: 2018 IRC
/// P2901.2.2.3, which the bill of materials counts the tape by.
inline constexpr const char* kNonpotableMarking =
    "NONPOTABLE: purple tape 'CAUTION: NONPOTABLE WATER - DO NOT DRINK' along the whole pipe";
/// `1/4 in/ft`, `mean 1/4 in/ft` of legs that slope differently; empty for level lines and where a
/// slope means nothing (conduits, pressure).
std::string slopeText(const RunStudy& run, UnitSystem units);
/// What the level that sets a vault's water is: `Overflow inv.` of the vault that the overflow
/// leaves, `Outlet inv. (LK-1)` of the others.
std::string outletName(const VaultStudy& vault, const Plan& plan);
/// A supply's own name, or what it feeds.
std::string supplyName(const Supply& supply);
/// `V1-1` to `V1-4`: a vault's outside corners, counter-clockwise from the low corner of its own
/// frame.
std::string cornerName(const Id& vault, std::size_t corner);
/// What the sheet calls any object: a run's mark, another's name; its id where it has none.
std::string objectName(const Id& id, const Plan& plan);
std::string levelText(const std::optional<Length>& level, UnitSystem units);
/// Where an end is attached, in words: `Vault 1, chamber 2`.
std::string endText(const RunEnd& end, const Plan& plan);

/// The words for a pipe's end, in the legend's order.
inline constexpr std::pair<EndFitting, const char*> kEndWords[] = {
    {EndFitting::Tee, "Tee, open top and bottom"},
    {EndFitting::ElbowDown, "Elbow, or pipe turned down"},
    {EndFitting::ElbowUp, "Elbow, or pipe turned up"},
    {EndFitting::FootValve, "Foot valve"},
    {EndFitting::Strainer, "End strainer"},
    {EndFitting::Eductor, "Air-drawing eductor (sparger)"},
    {EndFitting::Cap, "Cap"},
    {EndFitting::ScreenedVent, "Screened vent"},
};
std::string endWords(EndFitting fitting);

} // namespace sump
