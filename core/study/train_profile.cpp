// The long section of the vault train: the vaults one behind the other along the flow.

#include "core/study/cut_line.h"
#include "core/study/down_legs.h"
#include "core/study/profile.h"

#include "core/geometry/polygon.h"
#include "core/plan/edits_levels.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kSameStub = 1e-6;   // m
constexpr double kBeyondStubs = 0.5; ///< shown beyond the stubs, m
constexpr int kOutside = -1;         ///< in no vault

/// A run's point, or where it goes through a vault's outside face.
struct WayPoint {
  Point3 at;
  int vertex = kNoVertex;
};

/// Consecutive points of a run in one vault, or outside all. Neighbours share a point in a face.
struct WayPiece {
  int vault = kOutside;
  std::vector<WayPoint> points;
};

class TrainProfiler {
public:
  TrainProfiler(const Plan& plan, const Study& study, const Catalog& catalog)
      : plan_(plan), study_(study), catalog_(catalog) {
    for (const Vault& vault : plan.vaults)
      outlines_.push_back(outline(vault));
  }

  TrainProfile make();

private:
  void addVaults();
  double gapAfter(std::size_t vault) const;
  void addVault(const Vault& vault, const VaultStudy& shell, double from);
  void addGround();
  void addRun(const Run& run, const RunStudy& study);
  std::vector<WayPiece> pieces(const RunStudy& study) const;
  void addLeg(Point3 a, Point3 b, int vertexOfB, std::vector<WayPiece>& pieces) const;
  int vaultAt(Point2 p, int before) const;
  double station(int vault, Point2 site) const;
  void alongFlow(const std::vector<WayPiece>& pieces, TrainRun& run) const;
  void outside(const WayPiece& piece, std::optional<double> from, std::optional<double> to,
               TrainRun& run) const;
  void acrossFlow(const std::vector<WayPiece>& pieces, bool fromChamber, TrainRun& run) const;
  void addPoint(const WayPoint& point, double station, TrainRun& run) const;

  const Plan& plan_;
  const Study& study_;
  const Catalog& catalog_;
  std::vector<Ring> outlines_;
  TrainProfile profile_;
};

bool leadsOn(const Run& run, const Plan& plan, std::size_t vault) {
  return run.service == Service::Link && run.from.kind == EndKind::Chamber &&
         run.to.kind == EndKind::Chamber && run.from.target == plan.vaults[vault].id &&
         run.to.target == plan.vaults[vault + 1].id;
}

double TrainProfiler::gapAfter(std::size_t vault) const {
  for (const Run& run : plan_.runs) {
    const RunStudy* found = leadsOn(run, plan_, vault) ? study_.run(run.id) : nullptr;
    if (found == nullptr || !found->resolved) continue;
    double length = 0;
    for (const WayPiece& piece : pieces(*found)) {
      if (piece.vault != kOutside) continue;
      for (std::size_t i = 1; i < piece.points.size(); ++i)
        length += distance(flat(piece.points[i - 1].at), flat(piece.points[i].at));
    }
    return length;
  }
  return distance(outlines_[vault], outlines_[vault + 1]);
}

void TrainProfiler::addVault(const Vault& vault, const VaultStudy& shell, double from) {
  ProfileVault cut = profileShell(vault, shell);
  const double middle = from + inMetres(vault.length) / 2;
  cut.from = from;
  cut.to = from + inMetres(vault.length);
  cut.insideFrom = from + inMetres(vault.wall);
  cut.insideTo = cut.to - inMetres(vault.wall);
  for (const ChamberBox& box : chambers(vault)) {
    cut.chambers.push_back(
        profileChamber(study_, vault.id, box.number, {middle + box.low.x, middle + box.high.x}));
  }
  for (const Baffle& baffle : vault.baffles) {
    const double near = cut.insideFrom + inMetres(baffle.offset);
    cut.baffles.push_back({baffle.id, near, near + inMetres(baffle.thickness),
                           cut.floor + baffle.bottomGap, cut.lidUnderside - baffle.topGap});
  }
  for (const Manway& manway : vault.manways) {
    cut.manways.push_back(profileManway(manway, shell, middle + manway.at.x));
    cut.manways.back().beyond = std::abs(manway.at.y) > inMetres(manway.diameter) / 2;
  }
  profile_.vaults.push_back(std::move(cut));
}

void TrainProfiler::addVaults() {
  double from = 0;
  for (std::size_t i = 0; i < plan_.vaults.size(); ++i) {
    addVault(plan_.vaults[i], study_.vaults[i], from);
    from = profile_.vaults.back().to;
    if (i + 1 < plan_.vaults.size()) from += gapAfter(i);
  }
  profile_.from = -kTrainStub - kBeyondStubs;
  profile_.to = from + kTrainStub + kBeyondStubs;
}

/// Over each vault's middle line; straight on before the first and after the last.
void TrainProfiler::addGround() {
  for (std::size_t i = 0; i < plan_.vaults.size(); ++i) {
    const Vault& vault = plan_.vaults[i];
    const ProfileVault& cut = profile_.vaults[i];
    const double before = i == 0 ? cut.from - profile_.from : 0;
    const double after = i + 1 == plan_.vaults.size() ? profile_.to - cut.to : 0;
    const double half = inMetres(vault.length) / 2;
    const CutLine line({vault.frame().toSite({-half, 0}), vault.frame().toSite({half, 0})}, before,
                       after);
    for (ProfileGround ground : groundAlong(study_.ground, line, line.from(), line.to())) {
      ground.station += cut.from;
      profile_.ground.push_back(ground);
    }
  }
}

/// Vaults may stand wall to wall; the one before is kept as long as it holds the place.
int TrainProfiler::vaultAt(Point2 p, int before) const {
  if (before != kOutside && contains(outlines_[static_cast<std::size_t>(before)], p)) return before;
  for (std::size_t i = 0; i < outlines_.size(); ++i) {
    if (contains(outlines_[i], p)) return static_cast<int>(i);
  }
  return kOutside;
}

void TrainProfiler::addLeg(Point3 a, Point3 b, int vertexOfB, std::vector<WayPiece>& pieces) const {
  std::vector<double> cuts = {0, 1};
  const double length = distance(flat(a), flat(b));
  for (const Ring& ring : outlines_) {
    for (std::size_t i = 0; i < ring.size() && length > kSameStub; ++i) {
      const auto hit = crossSegments(flat(a), flat(b), ring[i], ring[(i + 1) % ring.size()]);
      if (hit) cuts.push_back(std::clamp(hit->alongFirst, 0.0, 1.0));
    }
  }
  std::ranges::sort(cuts);
  double last = 0;
  for (std::size_t i = 1; i < cuts.size(); ++i) {
    const bool final = i + 1 == cuts.size();
    if (!final && (cuts[i] - last) * length < kSameStub) continue;
    if (!final && (1 - cuts[i]) * length < kSameStub) continue;
    const int vault = vaultAt(flat(lerp(a, b, (last + cuts[i]) / 2)), pieces.back().vault);
    if (pieces.back().points.size() > 1 && vault != pieces.back().vault) {
      const WayPoint shared = pieces.back().points.back();
      pieces.push_back({vault, {shared}});
    }
    pieces.back().vault = vault;
    pieces.back().points.push_back({lerp(a, b, cuts[i]), final ? vertexOfB : kNoVertex});
    last = cuts[i];
  }
}

std::vector<WayPiece> TrainProfiler::pieces(const RunStudy& study) const {
  std::vector<WayPiece> pieces{{kOutside, {{study.points[0].at, study.points[0].vertex}}}};
  for (std::size_t i = 1; i < study.points.size(); ++i)
    addLeg(study.points[i - 1].at, study.points[i].at, study.points[i].vertex, pieces);
  return pieces;
}

double TrainProfiler::station(int vault, Point2 site) const {
  const auto i = static_cast<std::size_t>(vault);
  const ProfileVault& cut = profile_.vaults[i];
  return (cut.from + cut.to) / 2 + plan_.vaults[i].frame().toLocal(site).x;
}

void TrainProfiler::addPoint(const WayPoint& point, double station, TrainRun& run) const {
  const TrainPoint added{point.vertex, station, metres(point.at.z),
                         statedInvert(*plan_.runs.find(run.id), point.vertex).has_value()};
  if (!run.points.empty()) {
    const TrainPoint& last = run.points.back();
    // The point in a face that two pieces share.
    if (std::abs(last.station - station) < kSameStub && last.invert == added.invert &&
        (added.vertex == kNoVertex || last.vertex == added.vertex))
      return;
  }
  run.points.push_back(added);
}

/// Between two faces in proportion to plan length; else as far as the stub goes.
void TrainProfiler::outside(const WayPiece& piece, std::optional<double> from,
                            std::optional<double> to, TrainRun& run) const {
  if (!from && !to) return;
  std::vector<double> along = {0};
  for (std::size_t i = 1; i < piece.points.size(); ++i)
    along.push_back(along.back() +
                    distance(flat(piece.points[i - 1].at), flat(piece.points[i].at)));
  const double length = along.back();
  double low = 0, high = length;
  if (!from) low = std::max(0.0, length - kTrainStub);
  if (!to) high = std::min(length, kTrainStub);
  run.comesFromElsewhere = run.comesFromElsewhere || (!from && low > 0);
  run.goesElsewhere = run.goesElsewhere || (!to && high < length);
  const auto place = [&](double s) {
    if (from && to) return length > 0 ? *from + (*to - *from) * s / length : *from;
    return from ? *from + s : *to - (length - s);
  };
  for (std::size_t i = 0; i < piece.points.size(); ++i) {
    const auto cutAt = [&](double s) {
      const double t = (s - along[i - 1]) / (along[i] - along[i - 1]);
      addPoint({lerp(piece.points[i - 1].at, piece.points[i].at, t), kNoVertex}, place(s), run);
    };
    if (i > 0 && along[i - 1] < low && along[i] > low) cutAt(low);
    if (i > 0 && along[i - 1] < high && along[i] > high) cutAt(high);
    if (along[i] >= low && along[i] <= high) addPoint(piece.points[i], place(along[i]), run);
  }
}

/// A line that leads through the train: faces stand for the walls that it goes through.
void TrainProfiler::alongFlow(const std::vector<WayPiece>& pieces, TrainRun& run) const {
  const auto vaultOf = [&](std::size_t piece) -> const ProfileVault* {
    if (piece >= pieces.size() || pieces[piece].vault == kOutside) return nullptr;
    return &profile_.vaults[static_cast<std::size_t>(pieces[piece].vault)];
  };
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const ProfileVault *before = i > 0 ? vaultOf(i - 1) : nullptr, *after = vaultOf(i + 1);
    const ProfileVault* here = vaultOf(i);
    const std::vector<WayPoint>& points = pieces[i].points;
    if (here == nullptr) {
      outside(pieces[i], before != nullptr ? std::optional(before->to) : std::nullopt,
              after != nullptr ? std::optional(after->from) : std::nullopt, run);
      continue;
    }
    for (std::size_t k = 0; k < points.size(); ++k) {
      const bool enters = k == 0 && i > 0, leaves = k + 1 == points.size() && i + 1 < pieces.size();
      const double inside = station(pieces[i].vault, flat(points[k].at));
      addPoint(points[k], enters ? here->from : leaves ? here->to : inside, run);
    }
  }
}

/// A line that only ends in the train: what of it is in that vault, up to the wall.
void TrainProfiler::acrossFlow(const std::vector<WayPiece>& pieces, bool fromChamber,
                               TrainRun& run) const {
  const WayPiece& piece = fromChamber ? pieces.front() : pieces.back();
  if (piece.vault == kOutside) return;
  for (const WayPoint& point : piece.points)
    addPoint(point, station(piece.vault, flat(point.at)), run);
  if (pieces.size() < 2) return;
  (fromChamber ? run.goesElsewhere : run.comesFromElsewhere) = true;
  const Vault& vault = plan_.vaults[static_cast<std::size_t>(piece.vault)];
  const Point3 wall = fromChamber ? piece.points.back().at : piece.points.front().at;
  const Point2 local = vault.frame().toLocal(flat(wall));
  run.throughSide = std::abs(local.x) < inMetres(vault.length) / 2 - kSameStub;
}

bool carriesTheFlow(Service service) {
  return service == Service::Inlet || service == Service::Interconnect ||
         service == Service::Link || service == Service::Overflow;
}

void TrainProfiler::addRun(const Run& run, const RunStudy& study) {
  const bool fromChamber = run.from.kind == EndKind::Chamber;
  const bool toChamber = run.to.kind == EndKind::Chamber;
  if ((!fromChamber && !toChamber) || !study.resolved || study.points.size() < 2) return;
  TrainRun found;
  found.id = run.id;
  found.name = run.name;
  found.service = run.service;
  found.size = run.size;
  found.bore = profileBore(catalog_, run.pipe, run.size);
  found.startFitting = run.from.fitting;
  found.endFitting = run.to.fitting;
  found.startLeg = legEnd(study, true);
  found.endLeg = legEnd(study, false);
  const std::vector<WayPiece> way = pieces(study);
  found.carriesFlow = carriesTheFlow(run.service);
  if (found.carriesFlow || (fromChamber && toChamber)) {
    alongFlow(way, found);
  } else {
    acrossFlow(way, fromChamber, found);
  }
  if (found.points.empty()) return;
  for (std::size_t i = 1; i < found.points.size(); ++i) {
    const TrainPoint &a = found.points[i - 1], &b = found.points[i];
    if (std::abs(a.station - b.station) < kSameStub && a.invert != b.invert)
      found.drops.push_back({i - 1, a.station, a.invert, b.invert});
  }
  profile_.runs.push_back(std::move(found));
}

TrainProfile TrainProfiler::make() {
  addVaults();
  addGround();
  for (const Run& run : plan_.runs) {
    if (const RunStudy* study = study_.run(run.id)) addRun(run, *study);
  }
  profile_.groundwater = plan_.site.groundwater;
  for (const SuctionStudy& suction : study_.hydraulics.suctions) {
    if (suction.lowWater && !profile_.lowWater) profile_.lowWater = *suction.lowWater;
  }
  return std::move(profile_);
}

} // namespace

std::optional<TrainProfile> trainProfile(const Plan& plan, const Study& study,
                                         const Catalog& catalog) {
  if (plan.vaults.empty() || study.vaults.size() != plan.vaults.size()) return std::nullopt;
  return TrainProfiler(plan, study, catalog).make();
}

} // namespace sump
