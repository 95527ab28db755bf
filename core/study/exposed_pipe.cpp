#include "core/study/exposed_pipe.h"

#include "core/geometry/polygon.h"
#include "core/plan/nonpotable.h"
#include "core/study/riser_passes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace sump {

namespace {

constexpr double kPipeHair = 1e-9;

/// The share of the way from `a` to `b` on which a height that goes evenly from one to the other
/// lies over one that does the same.
double shareOver(double a, double b, double overA, double overB) {
  const double from = a - overA, to = b - overB;
  if (from <= kPipeHair && to <= kPipeHair) return 0;
  if (from >= -kPipeHair && to >= -kPipeHair) return 1;
  return std::max(from, to) / std::abs(to - from);
}

/// A piece of a leg that is in one kind of place from end to end, seen from above.
struct Piece {
  Point3 a, b;
  Point2 middle() const { return lerp(flat(a), flat(b), 0.5); }
};

/// Sorts one leg's pieces.
class LegSorter {
public:
  LegSorter(const Plan& plan, const Study& study) : plan_(plan), study_(study) {}

  using Shares = std::array<double, 4>; ///< of the leg, by ExposedIn
  Shares sort(Point3 a, Point3 b);

private:
  void cutAt(const Ring& ring, Point2 a, Point2 b);
  void put(ExposedIn where, double share) { shares_[static_cast<std::size_t>(where)] += share; }
  bool inVault(const Piece& piece, double share);
  double inRiser(const VaultStudy& shell, const Vault& vault, const Piece& piece) const;
  bool inside(const Piece& piece, double share);
  void inAir(const Piece& piece, double share);

  const Plan& plan_;
  const Study& study_;
  std::vector<double> cuts_;
  Shares shares_{};
};

Ring insideOf(const Vault& vault) {
  const Point2 half{inMetres(vault.length / 2.0 - vault.wall),
                    inMetres(vault.width / 2.0 - vault.wall)};
  return vault.frame().rectangle(half * -1.0, half);
}

void LegSorter::cutAt(const Ring& ring, Point2 a, Point2 b) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    if (const auto hit = crossSegments(a, b, ring[i], ring[(i + 1) % ring.size()]))
      cuts_.push_back(hit->alongFirst);
  }
}

/// The share of the piece that stands in the lid's opening or the riser over it, up to the rim.
double LegSorter::inRiser(const VaultStudy& shell, const Vault& vault, const Piece& piece) const {
  const double lid = inMetres(shell.lidUnderside);
  for (std::size_t i = 0; i < shell.manways.size(); ++i) {
    const ManwayStudy& manway = shell.manways[i];
    const double radius = inMetres(vault.manways[i].diameter) / 2;
    if (!manway.rim || distance(piece.middle(), manway.at) >= radius) continue;
    const double rim = inMetres(*manway.rim);
    return std::max(0.0, shareOver(piece.a.z, piece.b.z, lid, lid) -
                             shareOver(piece.a.z, piece.b.z, rim, rim));
  }
  return 0;
}

/// Under the lid and in risers it is in the vault, in walls, base and lid it is in concrete.
bool LegSorter::inVault(const Piece& piece, double share) {
  for (std::size_t i = 0; i < plan_.vaults.size(); ++i) {
    const Vault& vault = plan_.vaults[i];
    const VaultStudy& shell = study_.vaults[i];
    if (!contains(shell.outline, piece.middle())) continue;
    const double riser = inRiser(shell, vault, piece);
    put(ExposedIn::Vault, share * riser);
    const double top = inMetres(shell.lidTop);
    if (std::min(piece.a.z, piece.b.z) >= top) return riser > 0;
    if (!contains(insideOf(vault), piece.middle())) return true;
    const double floor = inMetres(shell.floor), lid = inMetres(shell.lidUnderside);
    const double overFloor = shareOver(piece.a.z, piece.b.z, floor, floor);
    const double overLid = shareOver(piece.a.z, piece.b.z, lid, lid);
    put(ExposedIn::Vault, share * std::max(0.0, overFloor - overLid));
    return true;
  }
  return false;
}

/// In a room, a building or a basin.
bool LegSorter::inside(const Piece& piece, double share) {
  const auto over = [&](Length floor) {
    return share * shareOver(piece.a.z, piece.b.z, inMetres(floor), inMetres(floor));
  };
  for (const EquipmentRoom& room : plan_.rooms) {
    if (!contains(outline(room), piece.middle())) continue;
    put(ExposedIn::Room, over(room.floor));
    return true;
  }
  for (const Building& building : plan_.buildings) {
    if (!contains(building.outline, piece.middle())) continue;
    if (building.floor) put(ExposedIn::Building, over(*building.floor));
    return true;
  }
  for (const Basin& basin : plan_.basins) {
    if (contains(outline(basin), piece.middle())) return true;
  }
  return false;
}

void LegSorter::inAir(const Piece& piece, double share) {
  const auto a = study_.ground.elevation(flat(piece.a)), b = study_.ground.elevation(flat(piece.b));
  if (a && b) put(ExposedIn::Air, share * shareOver(piece.a.z, piece.b.z, *a, *b));
}

LegSorter::Shares LegSorter::sort(Point3 a, Point3 b) {
  cuts_ = {0, 1};
  shares_ = {};
  const Point2 from = flat(a), to = flat(b);
  const double length = distance(from, to);
  for (double at = 1; at < length; at += 1) // the ground bends: looked at each metre
    cuts_.push_back(at / length);
  for (const EquipmentRoom& room : plan_.rooms)
    cutAt(outline(room), from, to);
  for (const Building& building : plan_.buildings)
    cutAt(building.outline, from, to);
  for (const Basin& basin : plan_.basins)
    cutAt(outline(basin), from, to);
  for (std::size_t i = 0; i < plan_.vaults.size(); ++i) {
    const Vault& vault = plan_.vaults[i];
    cutAt(outline(vault), from, to);
    cutAt(insideOf(vault), from, to);
    for (std::size_t k = 0; k < vault.manways.size(); ++k) {
      const double radius = inMetres(vault.manways[k].diameter) / 2;
      for (double at : circleCrossings(from, to, study_.vaults[i].manways[k].at, radius))
        cuts_.push_back(at);
    }
  }
  std::ranges::sort(cuts_);
  for (std::size_t i = 1; i < cuts_.size(); ++i) {
    const double share = cuts_[i] - cuts_[i - 1];
    if (share < kPipeHair) continue;
    const Piece piece{lerp(a, b, cuts_[i - 1]), lerp(a, b, cuts_[i])};
    if (!inVault(piece, share) && !inside(piece, share)) inAir(piece, share);
  }
  return shares_;
}

bool onLeg(Point3 p, Point3 a, Point3 b) {
  const Foot foot = nearestOnSegment(flat(p), flat(a), flat(b));
  return foot.distance < 1e-6 && std::abs(lerp(a, b, foot.along).z - p.z) < 1e-6;
}

/// Where connectors in manways' risers hold the run.
std::vector<Point3> riserHolds(const Plan& plan, const Study& all, const RunStudy& study) {
  std::vector<Point3> holds;
  for (std::size_t i = 0; i < all.vaults.size(); ++i) {
    const VaultStudy& shell = all.vaults[i];
    for (std::size_t k = 0; k < shell.manways.size(); ++k) {
      for (const RiserPass& pass :
           riserPasses(study, shell, shell.manways[k], plan.vaults[i].manways[k].diameter))
        holds.push_back(pass.at);
    }
  }
  return holds;
}

bool onBracket(const Run& run, const RunStudy& study, std::size_t leg) {
  return run.eductor && leg + 1 == study.legs.size();
}

/// What carries the leg inside vaults and their risers besides supports.
int holders(const std::vector<Point3>& risers, const Run& run, const RunStudy& study,
            std::size_t leg) {
  const Point3 a = study.points[leg].at, b = study.points[leg + 1].at;
  int held = 0;
  for (const Penetration& hole : study.penetrations) {
    if (!study.legs[leg].vertical && onLeg(hole.at, a, b)) held += hole.baffle.empty() ? 1 : 2;
  }
  for (Point3 at : risers)
    held += !study.legs[leg].vertical && onLeg(at, a, b) ? 1 : 0;
  return held + (onBracket(run, study, leg) ? 2 : 0);
}

} // namespace

std::string_view name(ExposedIn where) {
  static constexpr std::string_view kNames[] = {"room", "building", "above ground", "vault"};
  return kNames[static_cast<std::size_t>(where)];
}

std::vector<ExposedLeg> exposedLegs(const Plan& plan, const Study& study, const RunStudy& run) {
  const Run& given = *plan.runs.find(run.id);
  LegSorter sorter(plan, study);
  const std::vector<Point3> risers = riserHolds(plan, study, run);
  std::vector<ExposedLeg> exposed;
  for (std::size_t i = 0; i < run.legs.size(); ++i) {
    const Leg& leg = run.legs[i];
    const LegSorter::Shares shares = sorter.sort(run.points[i].at, run.points[i + 1].at);
    for (std::size_t k = 0; k < shares.size(); ++k) {
      const Length length = std::min(1.0, shares[k]) * leg.developed;
      if (inMetres(length) <= 1e-6) continue;
      const auto where = static_cast<ExposedIn>(k);
      const int held = where == ExposedIn::Vault ? holders(risers, given, run, i) : 0;
      const bool bracket = where == ExposedIn::Vault && onBracket(given, run, i);
      exposed.push_back({length, leg.vertical, leg.size, where, held, bracket});
    }
  }
  return exposed;
}

bool isTaped(const Run& run, const RunStudy& studied) {
  return isNonpotable(run.service) &&
         (!studied.resolved || std::ranges::any_of(studied.legs, &Leg::outsideVault));
}

Decided<Length> supportSpacing(const Plan& plan, const Supplies& supplies, const Run& run,
                               const ExposedLeg& leg) {
  if (isConduit(run.service)) {
    return given(supplies.conduitSpacing(leg.size),
                 "support spacing of conduit of size " + leg.size);
  }
  if (leg.vertical) return supplies.codeVertical;
  return decide(
      [&](Temperature water) {
        return given(supplies.supportSpacing(leg.size, water),
                     "support spacing of size " + leg.size + " for water this warm");
      },
      given(plan.basis.water.temperature, "water temperature"));
}

int supportsOf(const ExposedLeg& leg, Length spacing) {
  const Length free = leg.length - (leg.held / 2.0) * spacing;
  const int count = static_cast<int>(std::ceil(free / spacing - kPipeHair));
  return std::max(leg.held > 0 ? 0 : 1, count);
}

std::vector<ExposedPipe> exposedPipes(const Plan& plan, const Study& study,
                                      const Supplies& supplies) {
  std::vector<ExposedPipe> all;
  for (std::size_t i = 0; i < study.runs.size(); ++i) {
    if (!study.runs[i].resolved) continue;
    const Run& run = plan.runs[i];
    for (const ExposedLeg& leg : exposedLegs(plan, study, study.runs[i])) {
      const Decided<Length> spacing = supportSpacing(plan, supplies, run, leg);
      const Decided<int> supports =
          decide([&](Length apart) { return supportsOf(leg, apart); }, spacing);
      const auto alike = std::ranges::find_if(all, [&](const ExposedPipe& known) {
        return known.run == run.id && known.all.size == leg.size &&
               known.all.vertical == leg.vertical && known.all.where == leg.where;
      });
      if (alike == all.end()) {
        all.push_back({run.id, leg, spacing, supports});
        continue;
      }
      alike->all.length += leg.length;
      alike->all.held += leg.held;
      alike->all.bracket = alike->all.bracket || leg.bracket;
      if (supports) alike->supports = *alike->supports + *supports;
    }
  }
  return all;
}

} // namespace sump
