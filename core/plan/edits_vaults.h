#pragma once
// Edits of what a vault holds, baffles and manways: a Plan in, a Plan out. Chambers are numbered
// along the flow, so run ends in them are renumbered or pushed along with every change. An unknown
// id leaves the plan as it is.

#include "core/plan/plan.h"

#include <optional>
#include <string_view>

namespace sump {

/// Thickness of the vault's other baffles, or 6 in (common practice, no source).
Length usualBaffleThickness(const Vault& vault);

/// The offset nearest to `wanted` at which a baffle of this thickness leaves a chamber of an inch
/// or more on both sides, within the chamber that `wanted` lies in. Nothing when that is too short.
std::optional<Length> baffleOffset(const Vault& vault, Length wanted, Length thickness);

/// A baffle across the vault, at the offset nearest to `wanted`: of the vault's others' height, or
/// full height where it is the first. Run ends keep their place as far as the baffle leaves it. The
/// new id is returned in `made`, which stays empty where there is no room.
Plan addBaffle(const Plan& plan, std::string_view vault, Length wanted, Id& made);

/// Moves a baffle between its neighbours. Interconnects through it go along; other run ends stay in
/// their chamber and are pushed where it gets too short.
Plan moveBaffle(const Plan& plan, std::string_view baffle, Length wanted);

/// Takes a baffle out; interconnects between the two chambers that become one go with it.
Plan eraseBaffle(const Plan& plan, std::string_view baffle);

/// The place nearest to `local` where the whole opening lies within the inside faces; a vault
/// narrower than that gets it in its middle.
Point2 manwayPlace(const Vault& vault, Point2 local, Length diameter);

/// A 24 in opening (common practice, no source) with its rim at grade, traffic cover as the lid.
Plan addManway(const Plan& plan, std::string_view vault, Point2 local, Id& made);
Plan moveManway(const Plan& plan, std::string_view manway, Point2 local);
/// An eductor that hung in it keeps its run, without its mount.
Plan eraseManway(const Plan& plan, std::string_view manway);

/// The vault that the site point lies in, the last drawn of several; null for none.
const Vault* vaultHolding(const Plan& plan, Point2 site);

} // namespace sump
