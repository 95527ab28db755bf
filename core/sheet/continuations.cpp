#include "core/sheet/continuations.h"

#include "core/geometry/polygon.h"
#include "core/geometry/unit.h"
#include "core/plan/ends.h"
#include "core/sheet/end_names.h"
#include "core/sheet/sheet_refs.h"
#include "core/sheet/tags.h"
#include "core/study/connections.h"
#include "core/units/print.h"

#include <algorithm>

namespace sump {

namespace {

constexpr double kSame = 1e-6; // m

/// The stretches of a line that lie outside a box.
std::vector<Polyline> outside(const Polyline& line, const PaperBox& box) {
  std::vector<Polyline> parts;
  Polyline part{line.front()};
  const auto end = [&] {
    if (part.size() > 1) parts.push_back(part);
    part.clear();
  };
  for (std::size_t i = 1; i < line.size(); ++i) {
    const auto within = clipLine({line[i - 1], line[i]}, box);
    if (!within.empty() && distance(within.front().front(), within.front().back()) > kSame) {
      const Point2 in = within.front().front(), out = within.front().back();
      if (!part.empty() && distance(part.back(), in) > kSame) part.push_back(in);
      end();
      if (distance(out, line[i]) < kSame) continue;
      part.push_back(out);
    }
    if (part.empty()) part.push_back(line[i - 1]);
    part.push_back(line[i]);
  }
  end();
  return parts;
}

/// A neighbour goes on from there.
bool isMatched(Point2 at, const SheetView& view) {
  constexpr double kEdge = 0.5; // mm on the paper
  return view.whole && view.whole->grown(-kEdge * view.scale / 1000).holds(at);
}

/// Where its label points: off an edge under which the run goes, since no leader runs to there.
Point2 labelled(const Continuation& c, const SheetView& view) {
  constexpr double kAir = 3, kOff = 4; // mm on the paper
  const bool covered = view.hidden && view.hidden->grown(kAir).holds(view.toPaper(c.at));
  return covered ? c.at + c.seen * (kOff * view.scale / 1000) : c.at;
}

} // namespace

std::vector<Polyline> shownParts(const Polyline& line, const SheetView& view) {
  std::vector<Polyline> parts;
  const PaperBox site = view.site();
  const auto hidden =
      view.hidden
          ? std::optional(around({view.toSite(view.hidden->low), view.toSite(view.hidden->high)}))
          : std::nullopt;
  for (const Polyline& inside : clipLine(line, site)) {
    const std::vector<Polyline> free =
        hidden ? outside(inside, *hidden) : std::vector<Polyline>{inside};
    parts.insert(parts.end(), free.begin(), free.end());
  }
  return parts;
}

Polyline longestBeside(const Polyline& line, const SheetView& view) {
  std::vector<Polyline> parts = outside(line, view.site());
  const auto longest = std::ranges::max_element(parts, {}, planLength);
  return longest == parts.end() ? line : std::move(*longest);
}

std::vector<Continuation> continuations(const Plan& plan, const SheetView& view) {
  std::vector<Continuation> found;
  const Locator locator(plan);
  for (const Run& run : plan.runs) {
    const auto line = locator.centreline(run);
    if (!line || line->size() < 2) continue;
    const std::vector<Polyline> parts = shownParts(*line, view);
    for (std::size_t i = 0; i < parts.size(); ++i) {
      const Point2 first = parts[i].front(), last = parts[i].back();
      if (distance(first, line->front()) > kSame && !isMatched(first, view))
        found.push_back({first, unitWay(first, parts[i][1]), run.id, false, i == 0});
      if (distance(last, line->back()) > kSame && !isMatched(last, view))
        found.push_back(
            {last, unitWay(last, parts[i].end()[-2]), run.id, true, i + 1 == parts.size()});
    }
  }
  return found;
}

void labelContinuations(const Review& review, const SheetView& view, const std::string& elsewhere,
                        bool onlyFree, LabelBoard& board) {
  constexpr double kNear = 1.5, kReach = 60, kShort = 20; // mm
  const auto tags = runTags(review.plan);
  for (const Continuation& c : continuations(review.plan, view)) {
    const Run& run = *review.plan.runs.find(c.run);
    std::string text = tags.at(c.run);
    if (c.last) {
      text +=
          (c.onward ? " to " : " from ") + runEndText(review.plan, review.study, run, !c.onward);
    } else {
      text += " goes on";
    }
    SheetLabel label{{text}, false, false, ink(facts(run.service).color)};
    if (!elsewhere.empty()) label.lines.push_back(elsewhere);
    if (onlyFree) {
      board.whereFree(label, board.placesAbout(label, labelled(c, view), kNear, kShort));
    } else {
      board.atPoint(label, labelled(c, view), kNear, kReach);
    }
  }
}

namespace {

constexpr double kStartNear = 1.5, kStartReach = 60; // mm

SheetLabel startLabel(const Review& review, const Connection& joint) {
  const UnitSystem units = review.plan.project.units;
  const Run& run = *review.plan.runs.find(joint.run);
  SheetLabel label{{runTags(review.plan).at(joint.run) + (joint.atStart ? " from " : " to ") +
                        runEndText(review.plan, review.study, run, joint.atStart),
                    "Inv. " + printElevation(joint.invert, units)}};
  label.ink = ink(facts(run.service).color);
  for (const PressureRun& flow : review.study.hydraulics.runs) {
    if (flow.run == joint.run && flow.flow)
      label.lines.back() += ", " + printFlow(*flow.flow, units);
  }
  return label;
}

} // namespace

void labelStarts(const Review& review, const SheetView& view, const SheetView* enlarged,
                 LabelBoard& board) {
  for (const Connection& joint : connections(review.plan, review.study)) {
    const bool elsewhere = enlarged != nullptr && enlarged->shows(joint.at);
    if (joint.kind == ConnectionKind::Sewer || !view.shows(joint.at) || elsewhere) continue;
    board.withLeader(startLabel(review, joint), joint.at, kStartNear, kStartReach);
  }
}

void labelConduitStarts(const Review& review, const SheetView& view, LabelBoard& board) {
  for (const Connection& joint : connections(review.plan, review.study)) {
    if (!isConduit(review.plan.runs.find(joint.run)->service) || !view.shows(joint.at)) continue;
    SheetLabel label = startLabel(review, joint);
    label.lines.push_back("see sheet " + sheetOf(circuitAnchor()));
    board.withLeader(label, joint.at, kStartNear, kStartReach);
  }
}

} // namespace sump
