// A line: pipe, ends, corners, parts and the eductor.

#include "app/panels/field.h"

#include "app/core_text.h"

#include "core/plan/edits.h"
#include "core/plan/edits_objects.h"
#include "core/plan/ends.h"

#include <algorithm>

namespace sump {

namespace {

using RunMaker = FieldMaker<Run>;

void runFacts(const FieldContext& context, const Id& id, RunMaker& make) {
  const RunStudy* r = context.review == nullptr ? nullptr : context.review->study.run(id);
  if (r == nullptr) return;
  const UnitSystem units = context.units();
  make.heading(fieldText("Worked out"));
  if (!r->resolved) {
    make.fact(fieldText("Levels"), fieldText("An end has no level yet: type its invert below."));
    return;
  }
  make.fact(fieldText("Length along the slope"), shown(printRunLength(r->developed, units)));
  const bool rises = std::ranges::any_of(r->legs, &Leg::vertical);
  make.fact(rises ? fieldText("Fall, without upright legs") : fieldText("Fall"),
            shown(printSlope(r->slope, units)));
  make.fact(fieldText("Start invert"), shown(printElevation(r->startInvert, units)));
  make.fact(fieldText("End invert"), shown(printElevation(r->endInvert, units)));
  if (r->leastCover)
    make.fact(fieldText("Least cover"), shown(printShort(r->leastCover->cover, units)));
  make.fact(fieldText("Bends"), QString::number(r->bends.size()));
  make.fact(fieldText("Whole lengths to buy"),
            QString("%1  (%2)").arg(r->sticks).arg(shown(printRunLength(r->buy, units))));
}

void pipeFields(const FieldContext& context, RunMaker& make) {
  std::vector<Service> services;
  QStringList serviceNames;
  for (const ServiceFacts& f : serviceTable()) {
    services.push_back(f.service);
    serviceNames << coreText(f.name);
  }
  make.choice<Service>(
      fieldText("Carries"), [](Run& r) -> Service& { return r.service; }, services, serviceNames);
  std::vector<std::string> keys;
  QStringList names;
  for (const PipeProduct& p : context.catalog.pipes) {
    keys.push_back(p.key);
    names << coreText(p.name);
  }
  make.choice<std::string>(
      fieldText("Pipe"), [](Run& r) -> std::string& { return r.pipe; }, keys, names);
  std::vector<std::string> sizes;
  QStringList sizeNames;
  if (const PipeProduct* pipe = context.catalog.pipe(make.value().pipe)) {
    for (const PipeSize& s : pipe->sizes) {
      sizes.push_back(s.nominal);
      sizeNames << shown(s.nominal + "\"");
    }
  }
  make.choice<std::string>(
      fieldText("Size"), [](Run& r) -> std::string& { return r.size; }, sizes, sizeNames,
      fieldText("Nominal, inches"));
}

/// Everything that an end can hang on, with the end as it would be.
struct Targets {
  std::vector<RunEnd> ends;
  QStringList names;
  void add(EndKind kind, const Id& id, int chamber, Point2 at, const QString& name) {
    RunEnd end;
    end.kind = kind;
    end.target = id;
    end.chamber = chamber;
    end.at = at;
    ends.push_back(end);
    names << name;
  }
};

void addVaultTargets(const Plan& plan, Targets& targets) {
  for (const Vault& v : plan.vaults) {
    for (const ChamberBox& box : chambers(v)) {
      targets.add(EndKind::Chamber, v.id, box.number, lerp(box.low, box.high, 0.5),
                  fieldText("Chamber %1 of %2").arg(box.number).arg(shown(v.name)));
    }
  }
}

Targets targetsFor(const Plan& plan, const Run& run, const RunEnd& end) {
  Targets targets;
  const Point2 here = sitePosition(plan, end).value_or(end.at);
  targets.add(EndKind::Free, {}, 0, here, fieldText("Nothing: a free end"));
  addVaultTargets(plan, targets);
  for (const EquipmentRoom& room : plan.rooms) {
    for (const Port& p : room.ports)
      targets.add(EndKind::Port, p.id, 0, {}, fieldText("Port: %1").arg(shown(p.name)));
  }
  for (const Basin& b : plan.basins)
    targets.add(EndKind::Basin, b.id, 0, {}, shown(b.name));
  for (const SewerConnection& s : plan.sewers)
    targets.add(EndKind::Sewer, s.id, 0, {}, shown(s.name));
  for (const WashEquipment& w : plan.washes)
    targets.add(EndKind::Wash, w.id, 0, {}, shown(w.name));
  for (const Run& other : plan.runs) {
    if (other.id != run.id)
      targets.add(EndKind::Run, other.id, 0, here, fieldText("Line %1").arg(shown(other.id)));
  }
  return targets;
}

bool sameTarget(const RunEnd& a, const RunEnd& b) {
  return a.kind == b.kind && a.target == b.target && a.chamber == b.chamber;
}

void targetField(const FieldContext& context, const Id& id, RunEnd Run::*member, RunMaker& make,
                 std::vector<Field>& out) {
  const Run& run = make.value();
  const Targets targets = targetsFor(context.plan, run, run.*member);
  Field field{FieldKind::Choice, fieldText("Hangs on"), {}, {}, targets.names, -1, {}};
  for (std::size_t i = 0; i < targets.ends.size(); ++i) {
    if (sameTarget(targets.ends[i], run.*member)) field.current = static_cast<int>(i);
  }
  field.write = [id, member, ends = targets.ends](const Plan& plan,
                                                  const QString& index) -> FieldResult {
    Plan next = plan;
    Run changed = *plan.runs.find(id);
    RunEnd end = ends.at(index.toULongLong());
    end.fitting = (changed.*member).fitting;
    end.invert = (changed.*member).invert;
    const bool same = end.kind == (changed.*member).kind && end.target == (changed.*member).target;
    if (same) end.legEnd = (changed.*member).legEnd;
    changed.*member = end;
    next.runs.put(std::move(changed));
    return {std::move(next), {}};
  };
  out.push_back(std::move(field));
}

/// A fitting without an arm that hangs down keeps no level of its leg.
std::function<FieldResult(const Plan&, const QString&)>
withoutNeedlessLeg(const Id& id, RunEnd Run::*member,
                   std::function<FieldResult(const Plan&, const QString&)> write) {
  return [id, member, write = std::move(write)](const Plan& plan, const QString& index) {
    FieldResult result = write(plan, index);
    if (!result.plan) return result;
    Run changed = *result.plan->runs.find(id);
    if (turnsDown((changed.*member).fitting)) return result;
    (changed.*member).legEnd.reset();
    result.plan->runs.put(std::move(changed));
    return result;
  };
}

void downLegField(UnitSystem units, RunEnd Run::*member, RunMaker& make) {
  const RunEnd& end = make.value().*member;
  if (end.kind != EndKind::Chamber || !turnsDown(end.fitting)) return;
  make.typed<std::optional<Length>>(
      fieldText("End of down leg"),
      [member](Run& r) -> std::optional<Length>& { return (r.*member).legEnd; },
      optionalWriting(elevationWriting(units)),
      fieldText(
          "Elevation of the open lower end of the pipe in the fitting's down leg; left empty, "
          "an inlet's or an overflow's reaches to the middle of what the check asks"));
}

void endFields(const FieldContext& context, const Id& id, const char* title, RunEnd Run::*member,
               RunMaker& make, std::vector<Field>& out) {
  const UnitSystem units = context.units();
  make.heading(fieldText(title));
  targetField(context, id, member, make, out);
  make.typed<std::optional<Length>>(
      fieldText("Invert"),
      [member](Run& r) -> std::optional<Length>& { return (r.*member).invert; },
      optionalWriting(elevationWriting(units)),
      fieldText("May be left empty where what it hangs on knows it: port, drain, sewer, wash"));
  make.keyed(
      fieldText("Ends with"), [member](Run& r) -> EndFitting& { return (r.*member).fitting; },
      kEndFittingKeys);
  out.back().write = withoutNeedlessLeg(id, member, std::move(out.back().write));
  downLegField(units, member, make);
  const bool site =
      (make.value().*member).kind == EndKind::Free || (make.value().*member).kind == EndKind::Run;
  make.typed<double>(
      site ? fieldText("East") : fieldText("Along it"),
      [member](Run& r) -> double& { return (r.*member).at.x; }, coordinateWriting(units),
      site ? QString() : fieldText("From the middle of what it hangs on"));
  make.typed<double>(
      site ? fieldText("North") : fieldText("Across it"),
      [member](Run& r) -> double& { return (r.*member).at.y; }, coordinateWriting(units));
}

void cornerFields(RunMaker& make, UnitSystem units, const Id& id, std::vector<Field>& out) {
  for (std::size_t i = 0; i < make.value().vertices.size(); ++i) {
    make.heading(fieldText("Corner %1").arg(i + 1));
    make.typed<double>(
        fieldText("East"), [i](Run& r) -> double& { return r.vertices[i].at.x; },
        coordinateWriting(units));
    make.typed<double>(
        fieldText("North"), [i](Run& r) -> double& { return r.vertices[i].at.y; },
        coordinateWriting(units));
    make.typed<std::optional<Length>>(
        fieldText("Invert"), [i](Run& r) -> std::optional<Length>& { return r.vertices[i].invert; },
        optionalWriting(elevationWriting(units)),
        fieldText("Empty: straight grade between its neighbours. Two corners at one place with two "
                  "inverts make a drop."));
    out.push_back(planButton(fieldText("Remove this corner"),
                             [id, i](const Plan& plan) { return eraseVertex(plan, id, i); }));
  }
}

/// In the middle of the leg that is longest in plan.
Plan addCorner(const Plan& plan, const Id& id) {
  const std::optional<Polyline> line = Locator(plan).centreline(*plan.runs.find(id));
  if (!line || line->size() < 2) return plan;
  std::size_t longest = 1;
  for (std::size_t i = 2; i < line->size(); ++i) {
    if (distance((*line)[i - 1], (*line)[i]) > distance((*line)[longest - 1], (*line)[longest]))
      longest = i;
  }
  const Point2 middle = lerp((*line)[longest - 1], (*line)[longest], 0.5);
  return insertVertex(plan, id, longest - 1, {middle, std::nullopt});
}

void partFields(RunMaker& make) {
  for (std::size_t i = 0; i < make.value().parts.size(); ++i) {
    make.heading(fieldText("Part %1").arg(shown(make.value().parts[i].id)));
    make.keyed(
        fieldText("Kind"), [i](Run& r) -> PartKind& { return r.parts[i].kind; }, kPartKeys);
    make.typed<int>(
        fieldText("On leg"), [i](Run& r) -> int& { return r.parts[i].leg; }, ordinalWriting(),
        fieldText("Counted from the start; leg 1 ends at the first corner"));
    make.typed<double>(
        fieldText("Along the leg"), [i](Run& r) -> double& { return r.parts[i].along; },
        percentWriting());
    if (make.value().parts[i].kind == PartKind::Reducer) {
      make.typed<std::string>(
          fieldText("To size"), [i](Run& r) -> std::string& { return r.parts[i].toSize; },
          textWriting(), fieldText("Nominal size from here on"));
    }
    if (make.value().parts[i].kind == PartKind::PullBox) {
      const bool traffic = make.value().parts[i].trafficCover.value_or(false);
      make.button(traffic ? fieldText("Cover for people only") : fieldText("Cover for traffic"),
                  [i, traffic](const Plan&, Run& r) { r.parts[i].trafficCover = !traffic; });
    }
    make.button(fieldText("Remove this part"), [i](const Plan&, Run& r) {
      r.parts.erase(r.parts.begin() + static_cast<std::ptrdiff_t>(i));
    });
  }
}

/// Hangs the eductor in the first manway of the vault that the run ends in, at the usual heights
/// over the end's invert (common practice, no source: outlet 12 in, foot 18 in over the water).
void addEductor(const Plan& plan, Run& run) {
  EductorMount mount;
  if (const Vault* v = plan.vaults.find(run.to.target); v != nullptr && !v->manways.empty()) {
    mount.manway = v->manways.front().id;
  }
  mount.outletEnd = run.to.invert.value_or(Length());
  mount.bracketFoot = mount.outletEnd + inches(6);
  mount.portSize = "1";
  run.eductor = mount;
}

void eductorFields(const FieldContext& context, RunMaker& make) {
  if (make.value().service != Service::Recirculation && !make.value().eductor) return;
  make.heading(fieldText("Eductor"));
  if (!make.value().eductor) {
    make.button(fieldText("Add an eductor"), addEductor);
    return;
  }
  std::vector<Id> manways;
  QStringList names;
  for (const Vault& v : context.plan.vaults) {
    for (const Manway& m : v.manways) {
      manways.push_back(m.id);
      names << shown(m.id);
    }
  }
  make.choice<Id>(
      fieldText("Hangs in manway"), [](Run& r) -> Id& { return r.eductor->manway; }, manways,
      names);
  make.typed<Length>(
      fieldText("Bracket foot"), [](Run& r) -> Length& { return r.eductor->bracketFoot; },
      elevationWriting(context.units()));
  make.typed<Length>(
      fieldText("Outlet end"), [](Run& r) -> Length& { return r.eductor->outletEnd; },
      elevationWriting(context.units()));
  make.typed<std::string>(
      fieldText("Port size"), [](Run& r) -> std::string& { return r.eductor->portSize; },
      textWriting());
  make.button(fieldText("Remove the eductor"), [](const Plan&, Run& r) { r.eductor.reset(); });
}

void conductorFields(RunMaker& make) {
  if (!isConduit(make.value().service) && make.value().conductors.empty()) return;
  for (std::size_t i = 0; i < make.value().conductors.size(); ++i) {
    make.heading(fieldText("Conductors %1").arg(i + 1));
    make.typed<std::string>(
        fieldText("Wire size"), [i](Run& r) -> std::string& { return r.conductors[i].size; },
        textWriting(), fieldText("American Wire Gauge, like 12 or 1/0"));
    make.typed<int>(
        fieldText("How many"), [i](Run& r) -> int& { return r.conductors[i].count; },
        countWriting());
    make.keyed(
        fieldText("Circuit"), [i](Run& r) -> CircuitKind& { return r.conductors[i].kind; },
        kCircuitKeys);
    make.button(fieldText("Remove these conductors"), [i](const Plan&, Run& r) {
      r.conductors.erase(r.conductors.begin() + static_cast<std::ptrdiff_t>(i));
    });
  }
  make.heading(fieldText("Wiring"));
  make.button(fieldText("Add conductors"), [](const Plan&, Run& r) {
    r.conductors.push_back({"12", 3, CircuitKind::Power});
  });
}

} // namespace

void runFields(const FieldContext& context, const Id& id, std::vector<Field>& out) {
  RunMaker make(context.plan, placeIn(&Plan::runs, id), out);
  make.typed<std::string>(
      fieldText("Name"), [](Run& r) -> std::string& { return r.name; }, textWriting());
  pipeFields(context, make);
  runFacts(context, id, make);
  endFields(context, id, "Start", &Run::from, make, out);
  endFields(context, id, "End", &Run::to, make, out);
  cornerFields(make, context.units(), id, out);
  partFields(make);
  eductorFields(context, make);
  conductorFields(make);
  make.heading(fieldText("More"));
  out.push_back(planButton(
      fieldText("Add a corner"), [id](const Plan& plan) { return addCorner(plan, id); },
      fieldText("In the middle of its longest leg")));
  make.button(fieldText("Add a part"), [id](const Plan& plan, Run& r) {
    r.parts.push_back({freshId(plan, id), PartKind::Union, 0, 0.5, {}});
  });
}

} // namespace sump
