#include "core/exchange/plan_differ.h"

#include "core/geometry/polygon.h"

namespace sump {

void DiffJob::note(ChangeKind kind, const DiffPlace& place, std::string b, std::string a,
                   std::string difference) {
  changes.push_back({place.forced.value_or(kind), place.object, place.part, place.noun,
                     place.called, place.path, std::move(b), std::move(a), std::move(difference),
                     place.extent, place.line});
}

namespace {

Polyline partPoints(const Baffle& baffle, const Vault& vault) {
  const double x = inMetres(baffle.offset) + inMetres(vault.wall) - inMetres(vault.length) / 2;
  const double y = inMetres(vault.width) / 2;
  return vault.frame().rectangle({x, -y}, {x + inMetres(baffle.thickness), y});
}

Polyline partPoints(const Manway& manway, const Vault& vault) {
  const Point2 at = vault.frame().toSite(manway.at);
  const double r = inMetres(manway.diameter) / 2;
  return {at - Point2{r, r}, at + Point2{r, r}};
}

Polyline partPoints(const InlinePart& part, const Run& run, const Locator& locator) {
  const auto line = locator.centreline(run);
  const auto leg = static_cast<std::size_t>(std::max(part.leg, 0));
  if (!line || leg + 1 >= line->size()) return {};
  return {lerp((*line)[leg], (*line)[leg + 1], part.along)};
}

bool isRing(std::string_view key) {
  return key == "outline" || key == "boundary" || key == "spoil";
}

double lengthOf(Polyline line, bool closed) {
  if (closed && !line.empty()) line.push_back(line.front());
  return planLength(line);
}

std::string outlineText(std::string_view key, const Ring& line, UnitSystem units) {
  if (line.empty()) return kNotGiven;
  const std::string count = std::to_string(line.size());
  if (key == "ladders") return count;
  return count + " corners, " + printLength(metres(lengthOf(line, isRing(key))), units) +
         (isRing(key) ? " round" : " long");
}

/// The largest move of a corner, and whether all moved alike.
struct CornerMove {
  Point2 by;
  bool alike = true;
};

CornerMove cornerMove(const Ring& b, const Ring& a) {
  CornerMove move{a[0] - b[0], true};
  for (std::size_t i = 0; i < b.size(); ++i) {
    const Point2 by = a[i] - b[i];
    if (distance(by, a[0] - b[0]) > 1e-6) move.alike = false;
    if (norm(by) > norm(move.by)) move.by = by;
  }
  return move;
}

std::string limitText(const Limits& limits, const std::string& id, double v, UnitSystem units) {
  switch (limits.has(id) ? limits.at(id).kind : LimitKind::Number) {
  case LimitKind::Length:
    return printLength(metres(v), units);
  case LimitKind::Volume:
    return printVolume(cubicMetres(v), units);
  case LimitKind::Slope:
    return printSlope(v, units);
  case LimitKind::Angle:
    return printAngle(radians(v));
  case LimitKind::Number:
  case LimitKind::Count:
    break;
  }
  return numberText(v);
}

} // namespace

std::optional<Box> partExtent(const Plan& plan, const Locator& locator, const Id& id) {
  const auto place = locator.find(id);
  if (!place) return std::nullopt;
  Polyline points;
  const std::size_t i = place->index, k = place->part;
  switch (place->kind) {
  case ObjectKind::Baffle:
    points = partPoints(plan.vaults[i].baffles[k], plan.vaults[i]);
    break;
  case ObjectKind::Manway:
    points = partPoints(plan.vaults[i].manways[k], plan.vaults[i]);
    break;
  case ObjectKind::Port:
    points = {plan.rooms[i].frame().toSite(plan.rooms[i].ports[k].at)};
    break;
  case ObjectKind::Part:
    points = partPoints(plan.runs[i].parts[k], plan.runs[i], locator);
    break;
  default:
    break;
  }
  if (points.empty()) return std::nullopt;
  return boxOf(points);
}

void diffOutline(DiffJob& job, const DiffPlace& place, std::string_view key, const Ring& b,
                 const Ring& a) {
  const bool alike = std::equal(b.begin(), b.end(), a.begin(), a.end(),
                                [](Point2 p, Point2 q) { return sameValue(p, q); });
  if (alike) return;
  DiffPlace where = place.inside(fieldWords(key));
  if (!where.extent && !(a.empty() && b.empty())) where.extent = boxOf(a.empty() ? b : a);
  const std::string before = outlineText(key, b, job.units), after = outlineText(key, a, job.units);
  if (b.size() != a.size()) {
    job.note(ChangeKind::Count, where, before, after);
    return;
  }
  const CornerMove move = cornerMove(b, a);
  const std::string by = printedMove(move.by, true, job.units);
  if (move.alike) {
    job.note(ChangeKind::Moved, where, printedPoint(b[0], false, job.units),
             printedPoint(a[0], false, job.units), by);
  } else {
    job.note(ChangeKind::Resized, where, before, after, "a corner by " + by);
  }
}

void diffLimits(DiffJob& job, const DiffPlace& place, const std::map<std::string, double>& b,
                const std::map<std::string, double>& a) {
  std::map<std::string, std::pair<std::optional<double>, std::optional<double>>> all;
  for (const auto& [id, value] : b)
    all[id].first = value;
  for (const auto& [id, value] : a)
    all[id].second = value;
  for (const auto& [id, pair] : all) {
    const auto& [was, is] = pair;
    if (was && is && sameNumber(*was, *is)) continue;
    const auto text = [&, &key = id](const std::optional<double>& v) {
      return v ? limitText(job.limits, key, *v, job.units) : std::string(kNotGiven);
    };
    std::string before = text(was), after = text(is);
    if (before == after) {
      before += " (" + numberText(*was) + ")";
      after += " (" + numberText(*is) + ")";
    }
    DiffPlace where = place.inside(job.limits.has(id) ? job.limits.at(id).title : id);
    where.part = id; // by which other programs know it
    job.note(ChangeKind::Limits, where, before, after);
  }
}

Angle targetAngle(const DiffJob& job, const RunEnd& end) {
  switch (end.kind) {
  case EndKind::Chamber: {
    const Vault* vault = job.inAfter.vault(end.target);
    return vault != nullptr ? vault->angle : Angle();
  }
  case EndKind::Basin: {
    const Basin* basin = job.inAfter.basin(end.target);
    return basin != nullptr ? basin->angle : Angle();
  }
  case EndKind::Wash: {
    const WashEquipment* wash = job.inAfter.wash(end.target);
    return wash != nullptr ? wash->angle : Angle();
  }
  default:
    return Angle();
  }
}

std::string summaryOf(const Run& run) {
  return std::string(facts(run.service).name) + (run.size.empty() ? "" : ", " + run.size + " in");
}

std::string summaryOf(const Vault& vault, UnitSystem units) {
  return printLength(vault.length, units) + " x " + printLength(vault.width, units) + ", floor " +
         printElevation(vault.floor, units);
}

} // namespace sump
