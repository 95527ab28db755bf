#include "core/sheet/fitted_symbols.h"
#include "core/sheet/mark_pen.h"
#include "core/sheet/part_symbol.h"
#include "core/sheet/sample_strip.h"
#include "core/sheet/schedules.h"
#include "core/sheet/tags.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <iterator>
#include <set>

namespace sump {

namespace {

constexpr double kSample = 34; // mm of line, enough for one repeat of every pattern

PaperStrip lineStrip(const LineStyle& line, const std::string& code, const std::string& text) {
  PaperStrip strip{5.2, {}};
  strip.items.push_back(PageShape{{{2, 2.6}, {2 + kSample, 2.6}}, false, false, line, {}});
  strip.items.push_back(words({kSample + 6, 3.9}, code, kTextHeight, true));
  strip.items.push_back(words({kSample + 15, 3.9}, text));
  return strip;
}

PaperStrip subHeading(const std::string& text) {
  return {kLinePitch + 1.5, {words({0, 4.2}, text, kTextHeight, true)}};
}

/// A symbol's height over and under the line that it stands on, mm.
struct SymbolHeight {
  double over = 0, under = 0;
};

/// A symbol as marks in mm about its place, y up.
template <class Draw> std::vector<Mark> symbolMarks(Draw draw) {
  std::vector<Mark> marks;
  SymbolPen pen(MarkPen(marks, {}, Layer::Part), Frame{}, kSymbolHalf,
                LineStyle{Ink::Black, 0.35, {}});
  draw(pen);
  return marks;
}

void takeHeight(const std::vector<Mark>& marks, SymbolHeight& height) {
  for (const Mark& mark : marks) {
    const double r = mark.round ? distance(mark.points[0], mark.points[1]) : 0;
    for (Point2 p : mark.points) {
      height.over = std::max(height.over, p.y + r);
      height.under = std::max(height.under, r - p.y);
    }
  }
}

void addSymbol(PaperStrip& strip, Point2 at, std::vector<Mark> marks) {
  for (Mark& mark : marks) {
    for (Point2& p : mark.points)
      p = {at.x + p.x, at.y - p.y};
    strip.items.push_back(
        PageShape{std::move(mark.points), mark.closed, mark.round, mark.line, mark.fill});
  }
}

constexpr std::pair<PartKind, const char*> kParts[] = {
    {PartKind::Union, "Union"},
    {PartKind::BallValve, "Ball valve"},
    {PartKind::GateValve, "Gate valve"},
    {PartKind::CheckValve, "Check valve"},
    {PartKind::BackwaterValve, "Backwater valve"},
    {PartKind::ReducedPressureAssembly, "Reduced-pressure backflow assembly"},
    {PartKind::DoubleCheck, "Double check"},
    {PartKind::AirGap, "Air gap"},
    {PartKind::Strainer, "Strainer"},
    {PartKind::Cleanout, "Cleanout"},
    {PartKind::Reducer, "Reducer"},
    {PartKind::PullBox, "Pull box"},
    {PartKind::SolenoidValve, "Solenoid valve"},
};

using NamedSymbols = std::vector<std::pair<const char*, std::function<void(SymbolPen&)>>>;

void bars(SymbolPen& pen) {
  pen.open({{-1, -0.7}, {1, -0.7}, {1, 0.7}, {-1, 0.7}});
  for (double x : {-0.5, 0.0, 0.5})
    pen.path({{x, -0.7}, {x, 0.7}});
}

void crossed(SymbolPen& pen) {
  pen.open({{-1, -0.8}, {1, -0.8}, {1, 0.8}, {-1, 0.8}});
  pen.path({{-1, -0.8}, {1, 0.8}});
  pen.path({{-1, 0.8}, {1, -0.8}});
}

void sewer(SymbolPen& pen) {
  pen.openCircle({0, 0}, 1);
  Ring quarter{{0, 0}};
  constexpr int kSteps = 6;
  for (int i = 0; i <= kSteps; ++i)
    quarter.push_back({std::cos(kPi / 2 * i / kSteps), std::sin(kPi / 2 * i / kSteps)});
  pen.solid(quarter);
}

void port(SymbolPen& pen) {
  pen.open({{-0.6, -0.6}, {0.6, -0.6}, {0.6, 0.6}, {-0.6, 0.6}});
}

void manway(SymbolPen& pen) {
  pen.openCircle({0, 0}, 1);
  pen.openCircle({0, 0}, 0.8);
}

void plus(SymbolPen& pen) {
  pen.path({{-0.8, 0}, {0.8, 0}});
  pen.path({{0, -0.8}, {0, 0.8}});
}

const Ring kArrow{{1, 0}, {-1, 0.55}, {-1, -0.55}};

/// What stands on the site, as far as the plan has it.
void addSiteSymbols(const Plan& plan, NamedSymbols& used) {
  const auto add = [&](bool there, const char* text, void (*draw)(SymbolPen&)) {
    if (there) used.emplace_back(text, draw);
  };
  bool pipes = false, conduits = false, manways = false;
  for (const Run& run : plan.runs)
    (isConduit(run.service) ? conduits : pipes) = true;
  for (const Vault& vault : plan.vaults)
    manways = manways || !vault.manways.empty();
  bool drains = false, ports = false;
  for (const EquipmentRoom& room : plan.rooms) {
    drains = drains || room.floorDrain.has_value();
    ports = ports || !room.ports.empty();
  }
  add(!plan.basins.empty(), "Catch basin or trench drain", bars);
  add(drains, "Floor drain", drawFloorDrain);
  add(ports, "Port of the equipment", port);
  add(!plan.washes.empty(), "Wash equipment", crossed);
  add(!plan.sewers.empty(), "Sewer connection", sewer);
  add(manways, "Manway, cover in its frame", manway);
  add(pipes, "Flow", [](SymbolPen& pen) { pen.solid(kArrow); });
  add(conduits, "Pull of a conduit", [](SymbolPen& pen) { pen.open(kArrow); });
  add(!plan.spots.empty(), "Spot level of the ground", plus);
}

/// A run that turns up or down has the sign of such an elbow there, whether it ends there or not.
void addTurns(const Study& study, std::set<EndFitting>& ends, bool (*counts)(Service)) {
  for (const RunStudy& run : study.runs) {
    if (!counts(run.service)) continue;
    for (std::size_t i = 0; i < run.legs.size(); ++i) {
      if (!run.legs[i].vertical) continue;
      ends.insert(turnsUp(run, i) ? EndFitting::ElbowUp : EndFitting::ElbowDown);
    }
  }
}

NamedSymbols usedSymbols(const Plan& plan, const Study& study) {
  std::set<PartKind> parts;
  std::set<EndFitting> ends;
  for (const Run& run : plan.runs) {
    for (const InlinePart& part : run.parts)
      parts.insert(part.kind);
    ends.insert({run.from.fitting, run.to.fitting});
  }
  addTurns(study, ends, [](Service) { return true; });
  NamedSymbols used;
  for (const auto& [kind, text] : kParts) {
    if (parts.contains(kind)) used.emplace_back(text, [k = kind](SymbolPen& p) { drawPart(p, k); });
  }
  for (const auto& [kind, text] : kEndWords) {
    if (ends.contains(kind)) used.emplace_back(text, [k = kind](SymbolPen& p) { drawEnd(p, k); });
  }
  addSiteSymbols(plan, used);
  return used;
}

/// The existing utilities of the plan, one line a kind, drawn as on the plan.
void addUtilities(const Plan& plan, Block& block) {
  static constexpr const char* kNames[] = {
      "Existing potable water", "Existing sewer",         "Existing storm drain", "Existing gas",
      "Existing electric",      "Existing communication", "Existing, other"};
  Plan probe;
  std::set<UtilityKind> seen;
  for (const Utility& utility : plan.utilities) {
    if (seen.insert(utility.kind).second) probe.utilities.append(utility);
  }
  if (seen.empty()) return;
  block.body.push_back(subHeading("EXISTING, by records: long dashes, mains heavier"));
  for (const Mark& mark : planMarks(probe, Study{})) {
    const Utility& utility = *probe.utilities.find(mark.object);
    LineStyle line = *mark.line;
    line.width = kExistingLine; // a public main is only drawn heavier
    block.body.push_back(lineStrip(line, "EX", kNames[static_cast<std::size_t>(utility.kind)]));
  }
}

/// What stands on the site, as filled on the plan.
void addGround(const Plan& plan, double width, Block& block) {
  std::vector<PaperStrip> samples;
  const auto add = [&](bool there, const LineStyle& line, const FillStyle& fill, const char* text) {
    if (there) samples.push_back(sampleStrip(sampleBox(line, fill), text));
  };
  bool paved = false, traffic = false;
  for (const Pavement& pavement : plan.pavements)
    (pavement.traffic ? traffic : paved) = true;
  const LineStyle edge{Ink::Grey, 0.25, {}};
  add(!plan.buildings.empty(), {Ink::Black, 0.5, {}}, {Ink::Building},
      "Building, existing or by others");
  add(paved, edge, {Ink::Paving}, "Paving");
  add(traffic, edge, {Ink::PaleGrey, Hatch::Diagonal}, "Paving under traffic");
  addInPairs(std::move(samples), width, block);
}

/// The words of the labels that more than one trade reads.
void addTerms(double width, Block& block) {
  constexpr double kAir = 1.5; // mm under the symbols
  block.body.push_back({kAir, {}});
  for (const std::string& line :
       wrapped("Floor: finished (room, building) or inside (vault). Rim: top of cover or grate. "
               "Inv.: inside bottom of a pipe.",
               width, kTextHeight, false))
    block.body.push_back({kLinePitch, {words({0, 3}, line)}});
}

} // namespace

Block legend(const Review& review, double width) {
  Block block = paragraphs("LEGEND: LINES", {}, width, false);
  block.body.push_back(subHeading("NEW: heavier lines, with their letter code"));
  std::set<Service> used;
  for (const Run& run : review.plan.runs)
    used.insert(run.service);
  for (Service service : used) {
    const ServiceFacts& f = facts(service);
    block.body.push_back(lineStrip(serviceLine(service), std::string(f.code), std::string(f.name)));
  }
  addUtilities(review.plan, block);
  if (!review.plan.site.boundary.empty()) {
    block.body.push_back(
        lineStrip({Ink::Black, 0.5, {12, 2, 0.8, 2, 0.8, 2}}, "", "Property line"));
  }
  addGround(review.plan, width, block);
  return block;
}

Block symbolKey(const Review& review, double width) {
  Block block = paragraphs("LEGEND: SYMBOLS", {}, width, false);
  const NamedSymbols used = usedSymbols(review.plan, review.study);
  for (std::size_t i = 0; i < used.size(); i += 2) {
    constexpr double kAir = 1.5; // mm over and under the symbols of a row
    SymbolHeight height{1.5, 1.5};
    for (std::size_t k = i; k < std::min(i + 2, used.size()); ++k)
      takeHeight(symbolMarks(used[k].second), height);
    const double y = height.over + kAir;
    PaperStrip strip{y + height.under + kAir, {}};
    for (std::size_t k = i; k < std::min(i + 2, used.size()); ++k) {
      const double x = static_cast<double>(k - i) * width / 2;
      addSymbol(strip, {x + 6, y}, symbolMarks(used[k].second));
      strip.items.push_back(words({x + 13, y + 1.3}, used[k].first));
    }
    block.body.push_back(std::move(strip));
  }
  addInPairs(roomSamples(review.plan), width, block);
  addTerms(width, block);
  return block;
}

std::vector<PaperStrip> roomSamples(const Plan& plan) {
  bool skid = false, panel = false, rise = false;
  for (const EquipmentRoom& room : plan.rooms) {
    skid = skid || room.skid;
    panel = panel || room.panel;
    rise = rise || room.plumbingArea;
  }
  std::vector<PaperStrip> samples;
  const LineStyle edge{Ink::Black, 0.35, {}};
  const Ring box{{3, 1.3}, {13, 1.3}, {13, 4.3}, {3, 4.3}};
  if (skid)
    samples.push_back(sampleStrip({PageShape{box, true, false, edge, FillStyle{Ink::PaleGrey}},
                                   PageShape{{box[3], box[1]}, false, false, edge, {}}},
                                  "Equipment skid"));
  if (panel)
    samples.push_back(sampleStrip(
        {PageShape{box, true, false, edge, {}},
         PageShape{{box[3], box[2], box[1]}, true, false, edge, FillStyle{Ink::PaleGrey}}},
        "Panel"));
  if (rise)
    samples.push_back(
        sampleStrip({PageShape{box, true, false, LineStyle{Ink::Black, 0.35, {2, 1}}, {}}},
                    "Area where pipe rises"));
  return samples;
}

void addElectricalSigns(const Plan& drawn, const Study& study, Block& block) {
  const auto isShown = [](const char* text) {
    static constexpr std::string_view kShown[] = {"Floor drain", "Port of the equipment",
                                                  "Wash equipment", "Manway, cover in its frame"};
    return std::ranges::find(kShown, std::string_view(text)) != std::end(kShown);
  };
  NamedSymbols site, shown;
  addSiteSymbols(drawn, site);
  std::ranges::copy_if(site, std::back_inserter(shown),
                       [&](const auto& named) { return isShown(named.first); });
  std::set<EndFitting> turns;
  addTurns(study, turns, isConduit);
  for (const EndFitting turn : turns)
    shown.emplace_back(turn == EndFitting::ElbowUp ? "Conduit turned up" : "Conduit turned down",
                       [turn](SymbolPen& pen) { drawEnd(pen, turn); });
  for (const auto& [text, draw] : shown) {
    PaperStrip strip = sampleStrip({}, text);
    addSymbol(strip, {8, 2.8}, symbolMarks(draw));
    block.body.push_back(std::move(strip));
  }
  addUtilities(drawn, block);
}

} // namespace sump
