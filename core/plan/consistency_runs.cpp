// Consistency of the runs: ends that lead somewhere, legs that exist.

#include "core/geometry/polygon.h"
#include "core/plan/consistency_checks.h"
#include "core/plan/keys.h"

#include <algorithm>

namespace sump {

namespace {

/// The kind of object that an end of this kind must lead to.
ObjectKind targetKind(EndKind kind) {
  switch (kind) {
  case EndKind::Chamber:
    return ObjectKind::Vault;
  case EndKind::Basin:
    return ObjectKind::Basin;
  case EndKind::Sewer:
    return ObjectKind::Sewer;
  case EndKind::Port:
    return ObjectKind::Port;
  case EndKind::Wash:
    return ObjectKind::Wash;
  case EndKind::Free:
  case EndKind::Run:
    break;
  }
  return ObjectKind::Run;
}

std::string_view targetName(EndKind kind) {
  switch (kind) {
  case EndKind::Chamber:
    return "a vault";
  case EndKind::Basin:
    return "a basin";
  case EndKind::Sewer:
    return "a sewer connection";
  case EndKind::Port:
    return "a port of an equipment room";
  case EndKind::Wash:
    return "wash equipment";
  case EndKind::Free:
  case EndKind::Run:
    break;
  }
  return "a run";
}

/// A purely vertical run has no plan length but two inverts that differ.
bool risesOrFalls(const Run& run) {
  double low = INFINITY, high = -INFINITY;
  const auto take = [&](const std::optional<Length>& invert) {
    if (!invert) return;
    low = std::min(low, inMetres(*invert));
    high = std::max(high, inMetres(*invert));
  };
  take(run.from.invert);
  for (const Vertex& vertex : run.vertices)
    take(vertex.invert);
  take(run.to.invert);
  return high - low >= kLeastLength;
}

/// Ports and wash inlets know their own height, so a run between two objects may be vertical even
/// if the plan says no invert.
bool heightsAreElsewhere(const Run& run) {
  const auto knows = [](const RunEnd& end) {
    return !end.invert && end.kind != EndKind::Free && end.kind != EndKind::Chamber;
  };
  return knows(run.from) || knows(run.to);
}

} // namespace

void ConsistencyCheck::runs(const FilePlace& root) {
  const FilePlace list = root / "runs";
  std::size_t i = 0;
  for (const Run& run : plan_.runs) {
    const FilePlace at = list[i++];
    id(run.id, at);
    runOf(run, at);
  }
  if (problems_.empty()) circles(list);
}

/// Asked only when every end leads somewhere: then a run without a centreline hangs in a circle.
void ConsistencyCheck::circles(const FilePlace& list) {
  std::size_t i = 0;
  for (const Run& run : plan_.runs) {
    const FilePlace at = list[i++];
    if (where_.centreline(run)) continue;
    const FilePlace end = at / (run.from.kind == EndKind::Run ? "from" : "to");
    demand(false, end / "target",
           "tees into runs that tee into runs, in a circle or more than " +
               std::to_string(kDeepestBranching) + " deep",
           "attach one of them to something else");
  }
}

void ConsistencyCheck::runOf(const Run& run, const FilePlace& at) {
  const std::size_t before = problems_.size();
  end(run, run.from, at / "from");
  end(run, run.to, at / "to");
  const FilePlace vertices = at / "vertices";
  for (std::size_t i = 0; i < run.vertices.size(); ++i) {
    point(run.vertices[i].at, vertices[i] / "at");
  }
  if (problems_.size() == before) length(run, at);
  parts(run, at);
  if (run.eductor) {
    const std::optional<ObjectPlace> manway = where_.find(run.eductor->manway);
    demand(manway && manway->kind == ObjectKind::Manway, at / "eductor" / "manway",
           "is \"" + run.eductor->manway + "\", which is no manway of a vault",
           "give the id of the manway in which the eductor hangs");
  }
}

void ConsistencyCheck::end(const Run& run, const RunEnd& end, const FilePlace& at) {
  point(end.at, at / "at");
  if (end.legEnd) downLeg(run, end, at);
  if (end.kind == EndKind::Free) {
    if (end.target.empty()) return;
    demand(false, at / "target", "is \"" + end.target + "\", but the end is free",
           "give the kind of the target, or leave the target out");
    return;
  }
  if (end.kind == EndKind::Run && end.target == run.id) {
    demand(false, at / "target", "is the run itself", "give the id of another run");
    return;
  }
  if (target(end, at) && end.kind == EndKind::Chamber) chamberEnd(end, at);
}

/// It hangs in the lower arm of what the pipe ends with, over the vault's floor.
void ConsistencyCheck::downLeg(const Run& run, const RunEnd& end, const FilePlace& at) {
  const FilePlace place = at / "legEnd";
  if (end.kind != EndKind::Chamber || !turnsDown(end.fitting)) {
    demand(false, place, "belongs to no tee or elbow that turns down in a chamber",
           "end the pipe with one there, or leave the level out");
    return;
  }
  const std::optional<Point2> here = where_.position(end);
  if (here && !run.vertices.empty()) {
    const Vertex& next = &end == &run.from ? run.vertices.front() : run.vertices.back();
    demand(distance(next.at, *here) >= kLeastLength, place,
           "belongs to a fitting whose arms lie level, as its pipe is upright there",
           "leave the level out, and give the end the invert at which the pipe is to be open");
  }
  if (end.invert)
    demand(*end.legEnd < *end.invert, place, "is not under the pipe's invert",
           "give the elevation of the leg's open lower end");
  if (const Vault* vault = where_.vault(end.target))
    demand(*end.legEnd > vault->floor, place, "is not over the vault's floor",
           "give an elevation, not how deep it reaches under the water");
}

bool ConsistencyCheck::target(const RunEnd& end, const FilePlace& at) {
  const std::optional<ObjectPlace> place = where_.find(end.target);
  if (place && place->kind == targetKind(end.kind)) return true;
  const std::string mend = "give the id of " + std::string(targetName(end.kind)) +
                           ", as the kind \"" + std::string(keyIn(kEndKindKeys, end.kind)) +
                           "\" asks";
  if (!place) {
    const std::string what =
        end.target.empty() ? "is missing" : "is \"" + end.target + "\", which no object has";
    return demand(false, at / "target", what, mend);
  }
  return demand(false, at / "target",
                "is \"" + end.target + "\", which is not " + std::string(targetName(end.kind)),
                mend);
}

void ConsistencyCheck::chamberEnd(const RunEnd& end, const FilePlace& at) {
  const Vault& vault = *where_.vault(end.target);
  const std::vector<ChamberBox> boxes = chambers(vault);
  const bool exists = end.chamber >= 1 && end.chamber <= static_cast<int>(boxes.size());
  if (!exists) {
    const std::string count = std::to_string(boxes.size());
    demand(false, at / "chamber",
           "is " + std::to_string(end.chamber) + ", but vault " + vault.id + " has " + count +
               (boxes.size() == 1 ? " chamber" : " chambers"),
           "give a chamber from 1 to " + count + ", counted along the flow");
    return;
  }
  const ChamberBox& box = boxes[static_cast<std::size_t>(end.chamber) - 1];
  const bool inside = end.at.x >= box.low.x - kSlack && end.at.x <= box.high.x + kSlack &&
                      end.at.y >= box.low.y - kSlack && end.at.y <= box.high.y + kSlack;
  if (inside) return;
  demand(false, at / "at",
         "lies outside chamber " + std::to_string(end.chamber) + " of vault " + vault.id,
         "give x from " + brief(box.low.x) + " to " + brief(box.high.x) + " and y from " +
             brief(box.low.y) + " to " + brief(box.high.y) + ", from the vault's centre");
}

void ConsistencyCheck::length(const Run& run, const FilePlace& at) {
  const std::optional<Polyline> line = where_.centreline(run);
  if (!line) return; // the end that leads nowhere is reported where it stands, or in circles()
  demand(planLength(*line) >= kLeastLength || risesOrFalls(run) || heightsAreElsewhere(run), at,
         "is shorter than 1 mm", "set its ends apart");
}

void ConsistencyCheck::parts(const Run& run, const FilePlace& at) {
  const FilePlace list = at / "parts";
  const int legs = static_cast<int>(run.vertices.size()) + 1;
  for (std::size_t i = 0; i < run.parts.size(); ++i) {
    const InlinePart& part = run.parts[i];
    const FilePlace place = list[i];
    id(part.id, place);
    // Sentences are made only when they are needed: every step of a drag is checked.
    if (part.leg < 0 || part.leg >= legs) {
      demand(false, place / "leg",
             "is " + std::to_string(part.leg) + ", but the run has " + std::to_string(legs) +
                 (legs == 1 ? " leg" : " legs"),
             "give a leg from 0 to " + std::to_string(legs - 1));
    }
    if (!(part.along >= 0 && part.along <= 1)) {
      demand(false, place / "along", "is " + brief(part.along) + ", must lie from 0 to 1",
             "give the fraction along the leg, 0.5 for its middle");
    }
    demand(part.kind != PartKind::Reducer || !part.toSize.empty(), place / "toSize",
           "is missing on a reducer", "give the nominal size after it, as \"4\"");
  }
}

} // namespace sump
