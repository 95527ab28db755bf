#include "core/study/stake_points.h"

namespace sump {

namespace {

class Stakes {
public:
  explicit Stakes(const Study& study) : study_(study) {}
  /// What is added from now on is of this kind.
  void begin(StakeKind kind) { kind_ = kind; }
  void add(Point2 at, std::optional<Length> elevation, std::string what, Id object = {},
           std::string place = {}) {
    points_.push_back({at, elevation, std::move(what), std::move(object), std::move(place), kind_});
  }
  /// `V1 outside corner 2 of 4 (underside of slab)`: no commas, over which some data collectors
  /// stumble.
  void addRing(const Ring& ring, std::optional<Length> elevation, const std::string& what,
               const std::string& level) {
    for (std::size_t i = 0; i < ring.size(); ++i)
      add(ring[i], elevation, corner(what, i, ring.size()) + " (" + level + ")");
  }
  void addOnGround(const Ring& ring, const std::string& what) {
    for (std::size_t i = 0; i < ring.size(); ++i)
      add(ring[i], ground(ring[i]), corner(what, i, ring.size()) + " (ground)");
  }
  std::vector<StakePoint> take() { return std::move(points_); }

private:
  static std::string corner(const std::string& what, std::size_t i, std::size_t of) {
    return what + " " + std::to_string(i + 1) + " of " + std::to_string(of);
  }
  std::optional<Length> ground(Point2 at) const {
    const auto level = study_.ground.elevation(at);
    return level ? std::optional(metres(*level)) : std::nullopt;
  }

  const Study& study_;
  StakeKind kind_ = StakeKind::Vault;
  std::vector<StakePoint> points_;
};

void addVaultStakes(Stakes& stakes, const Vault& vault, const VaultStudy& study) {
  stakes.addRing(study.outline, study.underside, vault.id + " outside corner", "underside of slab");
  stakes.add(vault.centre, study.floor, vault.id + " centre (inside floor)");
  for (const ManwayStudy& manway : study.manways)
    stakes.add(manway.at, manway.rim, manway.id + " centre (rim)");
}

void addRunStakes(Stakes& stakes, const RunStudy& run) {
  const std::string code = run.id + " " + std::string(facts(run.service).name) + " ";
  for (std::size_t i = 0; i < run.points.size(); ++i) {
    const bool first = i == 0, last = i + 1 == run.points.size();
    if (!first && !last && distance(run.points[i].at, run.points[i + 1].at) < 1e-6) continue;
    const std::string where = first ? "start" : last ? "end" : "corner " + std::to_string(i);
    stakes.add(flat(run.points[i].at), metres(run.points[i].at.z), code + where + " (invert)",
               run.id, where);
  }
}

} // namespace

std::vector<StakePoint> stakePoints(const Plan& plan, const Study& study) {
  Stakes stakes(study);
  for (std::size_t i = 0; i < study.vaults.size(); ++i)
    addVaultStakes(stakes, plan.vaults[i], study.vaults[i]);
  stakes.begin(StakeKind::Run);
  for (const RunStudy& run : study.runs) {
    if (run.resolved) addRunStakes(stakes, run);
  }
  stakes.begin(StakeKind::Room);
  for (const EquipmentRoom& room : plan.rooms) {
    stakes.addRing(outline(room), room.floor, room.id + " inside corner", "floor");
    if (room.floorDrain)
      stakes.add(room.frame().toSite(*room.floorDrain), room.floor,
                 room.id + " floor drain (floor)");
  }
  stakes.begin(StakeKind::Drain);
  for (const Basin& basin : plan.basins)
    stakes.add(basin.at, basin.rim, basin.id + " centre (rim)", basin.id, "centre, rim");
  for (const SewerConnection& sewer : plan.sewers)
    stakes.add(sewer.at, sewer.invert, sewer.id + " connection (invert)", sewer.id, "connection");
  stakes.begin(StakeKind::Building);
  for (const Building& building : plan.buildings)
    stakes.addRing(building.outline, building.floor, building.id + " corner", "floor");
  stakes.begin(StakeKind::Pavement);
  for (const Pavement& pavement : plan.pavements)
    stakes.addOnGround(pavement.outline, pavement.id + " edge");
  return stakes.take();
}

} // namespace sump
