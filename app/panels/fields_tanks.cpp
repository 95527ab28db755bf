// Vaults with their baffles and manways; the equipment room with what stands in it.

#include "app/panels/field.h"

#include "app/core_text.h"

#include "core/plan/edits.h"
#include "core/plan/edits_objects.h"
#include "core/plan/edits_vaults.h"

#include <algorithm>

namespace sump {

namespace {

/// A vault that is turned or moved takes along the run corners inside it.
Place<Vault> vaultPlace(const Id& id) {
  return {[id](const Plan& plan) { return *plan.vaults.find(id); },
          [id](const Plan& plan, Vault value) {
            Plan next = reframeVault(plan, id, value.frame());
            // A baffle that is typed elsewhere takes along and pushes what a dragged one would.
            for (const Baffle& baffle : value.baffles)
              next = moveBaffle(next, baffle.id, baffle.offset);
            next.vaults.put(std::move(value));
            return next;
          }};
}

using VaultMaker = FieldMaker<Vault>;
using RoomMaker = FieldMaker<EquipmentRoom>;

void vaultFacts(const FieldContext& context, const Id& id, VaultMaker& make) {
  const VaultStudy* v = context.review == nullptr ? nullptr : context.review->study.vault(id);
  if (v == nullptr) return;
  const UnitSystem units = context.units();
  const QString unknown = fieldText("not known");
  make.heading(fieldText("Worked out"));
  make.fact(fieldText("Place in the flow"), QString::number(v->position));
  make.fact(fieldText("Water at rest"),
            v->waterLevel ? shown(printElevation(*v->waterLevel, units)) : unknown);
  make.fact(fieldText("Working volume"), shown(printVolume(v->workingVolume, units)));
  make.fact(fieldText("Top of lid"), shown(printElevation(v->lidTop, units)));
  make.fact(fieldText("Grade over it"),
            v->gradeCentre ? shown(printElevation(*v->gradeCentre, units)) : unknown);
  make.fact(fieldText("Least cover"), v->cover ? shown(printShort(*v->cover, units)) : unknown);
}

void vaultSizes(VaultMaker& make, UnitSystem units) {
  const auto length = [&make, units](const char* label, Length Vault::*member) {
    make.typed<Length>(
        fieldText(label), [member](Vault& v) -> Length& { return v.*member; },
        lengthWriting(units));
  };
  make.heading(fieldText("Sizes"));
  length("Outside length", &Vault::length);
  length("Outside width", &Vault::width);
  length("Wall", &Vault::wall);
  length("Lid", &Vault::lidThickness);
  length("Base", &Vault::floorThickness);
  length("Inside height", &Vault::insideHeight);
  make.toggle(fieldText("Lid carries traffic"), [](Vault& v) -> bool& { return v.trafficLid; });
  make.toggle(
      fieldText("Engineered"), [](Vault& v) -> bool& { return v.engineered; },
      fieldText("Designed by a licensed engineer for its load and depth"));
  make.typed<std::optional<Mass>>(
      fieldText("Empty weight"), [](Vault& v) -> std::optional<Mass>& { return v.emptyWeight; },
      optionalWriting(massWriting(units)),
      fieldText("The maker's figure with the lid on; empty: worked out from the sizes"));
  make.typed<std::optional<Length>>(
      fieldText("Base collar"), [](Vault& v) -> std::optional<Length>& { return v.collar; },
      optionalWriting(lengthWriting(units)),
      fieldText("How far the base slab reaches beyond the walls, all round; earth on it holds the "
                "vault down"));
}

void baffleFields(VaultMaker& make, UnitSystem units, std::vector<Field>& out) {
  for (std::size_t i = 0; i < make.value().baffles.size(); ++i) {
    make.heading(fieldText("Baffle %1").arg(shown(make.value().baffles[i].id)));
    const auto length = [&make, units, i](const char* label, Length Baffle::*member,
                                          const char* tip) {
      make.typed<Length>(
          fieldText(label), [member, i](Vault& v) -> Length& { return v.baffles[i].*member; },
          lengthWriting(units), fieldText(tip));
    };
    length("From the inlet wall", &Baffle::offset, "Inside face of the wall to its near face");
    length("Thickness", &Baffle::thickness, "");
    length("Gap below", &Baffle::bottomGap, "0: stands on the floor");
    length("Gap above", &Baffle::topGap, "0: reaches the lid");
    out.push_back(planButton(
        fieldText("Remove this baffle"),
        [id = make.value().baffles[i].id](const Plan& plan) { return eraseBaffle(plan, id); },
        fieldText("An interconnect through it goes with it")));
  }
}

void manwayFields(VaultMaker& make, UnitSystem units, std::vector<Field>& out) {
  for (std::size_t i = 0; i < make.value().manways.size(); ++i) {
    make.heading(fieldText("Manway %1").arg(shown(make.value().manways[i].id)));
    make.typed<double>(
        fieldText("Along the vault"), [i](Vault& v) -> double& { return v.manways[i].at.x; },
        coordinateWriting(units), fieldText("From the vault's middle, with the flow"));
    make.typed<double>(
        fieldText("Across the vault"), [i](Vault& v) -> double& { return v.manways[i].at.y; },
        coordinateWriting(units), fieldText("From the vault's middle, to the left of the flow"));
    make.typed<Length>(
        fieldText("Opening"), [i](Vault& v) -> Length& { return v.manways[i].diameter; },
        lengthWriting(units));
    make.typed<std::optional<Length>>(
        fieldText("Rim"), [i](Vault& v) -> std::optional<Length>& { return v.manways[i].rim; },
        optionalWriting(elevationWriting(units)), fieldText("Empty: at grade"));
    make.toggle(fieldText("Traffic cover"),
                [i](Vault& v) -> bool& { return v.manways[i].trafficCover; });
    out.push_back(planButton(
        fieldText("Remove this manway"),
        [id = make.value().manways[i].id](const Plan& plan) { return eraseManway(plan, id); }));
  }
}

/// Halves the longest chamber.
Plan baffleAdded(const Plan& plan, const Id& id) {
  const Vault& vault = *plan.vaults.find(id);
  const std::vector<ChamberBox> boxes = chambers(vault);
  const ChamberBox& longest = *std::ranges::max_element(
      boxes, {}, [](const ChamberBox& box) { return box.high.x - box.low.x; });
  const double middle = (longest.low.x + longest.high.x) / 2 - boxes.front().low.x;
  Id made;
  return addBaffle(plan, id, metres(middle) - 0.5 * usualBaffleThickness(vault), made);
}

void flowOrderButtons(const FieldContext& context, const Id& id, std::vector<Field>& out) {
  const int at = context.plan.vaults.indexOf(id);
  const auto add = [&out, &id](const QString& label, int position) {
    out.push_back(planButton(
        label,
        [id, position](const Plan& plan) {
          return placeVaultInFlow(plan, id, static_cast<std::size_t>(position));
        },
        fieldText("Water passes the vaults in this order")));
  };
  if (at > 0) add(fieldText("Earlier in the flow"), at - 1);
  if (at + 1 < static_cast<int>(context.plan.vaults.size()))
    add(fieldText("Later in the flow"), at + 1);
}

void boxFields(RoomMaker& make, UnitSystem units, const char* title,
               std::optional<RoomBox> EquipmentRoom::*member, const RoomBox& usual) {
  make.heading(fieldText(title));
  if (!(make.value().*member)) {
    make.button(fieldText("Add"),
                [member, usual](const Plan&, EquipmentRoom& r) { r.*member = usual; });
    return;
  }
  const auto coordinate = [&make, units, member](const char* label, double Point2::*axis) {
    make.typed<double>(
        fieldText(label),
        [member, axis](EquipmentRoom& r) -> double& { return (r.*member)->corner.*axis; },
        coordinateWriting(units), fieldText("From the room's first corner"));
  };
  const auto length = [&make, units, member](const char* label, Length RoomBox::*size) {
    make.typed<Length>(
        fieldText(label),
        [member, size](EquipmentRoom& r) -> Length& { return (*(r.*member)).*size; },
        lengthWriting(units));
  };
  coordinate("Along the room", &Point2::x);
  coordinate("Across the room", &Point2::y);
  length("Length", &RoomBox::length);
  length("Depth", &RoomBox::depth);
  length("Height", &RoomBox::height);
  make.button(fieldText("Remove"),
              [member](const Plan&, EquipmentRoom& r) { (r.*member).reset(); });
}

void doorFields(RoomMaker& make, UnitSystem units) {
  make.heading(fieldText("Door"));
  if (!make.value().door) {
    make.button(fieldText("Add"), [](const Plan&, EquipmentRoom& r) {
      r.door = Door{Side::South, 0.25 * r.length, feet(3)};
    });
    return;
  }
  make.keyed(
      fieldText("In the wall"), [](EquipmentRoom& r) -> Side& { return r.door->side; }, kSideKeys,
      fieldText("Of the room before it is turned"));
  make.typed<Length>(
      fieldText("From the wall's start"),
      [](EquipmentRoom& r) -> Length& { return r.door->offset; }, lengthWriting(units));
  make.typed<Length>(
      fieldText("Width"), [](EquipmentRoom& r) -> Length& { return r.door->width; },
      lengthWriting(units));
  make.button(fieldText("Remove"), [](const Plan&, EquipmentRoom& r) { r.door.reset(); });
}

void floorDrainFields(RoomMaker& make, UnitSystem units) {
  make.heading(fieldText("Floor drain"));
  if (!make.value().floorDrain) {
    make.button(fieldText("Add"), [](const Plan&, EquipmentRoom& r) {
      r.floorDrain = Point2{inMetres(r.length) / 2, inMetres(r.width) / 2};
    });
    return;
  }
  make.typed<double>(
      fieldText("Along the room"), [](EquipmentRoom& r) -> double& { return r.floorDrain->x; },
      coordinateWriting(units), fieldText("From the room's first corner"));
  make.typed<double>(
      fieldText("Across the room"), [](EquipmentRoom& r) -> double& { return r.floorDrain->y; },
      coordinateWriting(units), fieldText("From the room's first corner"));
  make.button(fieldText("Remove"), [](const Plan&, EquipmentRoom& r) { r.floorDrain.reset(); });
}

std::vector<Service> allServices() {
  std::vector<Service> services;
  for (const ServiceFacts& f : serviceTable())
    services.push_back(f.service);
  return services;
}

QStringList serviceNames() {
  QStringList names;
  for (const ServiceFacts& f : serviceTable())
    names << coreText(f.name);
  return names;
}

void portFields(RoomMaker& make, UnitSystem units) {
  for (std::size_t i = 0; i < make.value().ports.size(); ++i) {
    make.heading(fieldText("Port %1").arg(shown(make.value().ports[i].id)));
    make.typed<std::string>(
        fieldText("Name"), [i](EquipmentRoom& r) -> std::string& { return r.ports[i].name; },
        textWriting());
    make.choice<Service>(
        fieldText("Line"), [i](EquipmentRoom& r) -> Service& { return r.ports[i].service; },
        allServices(), serviceNames());
    make.typed<double>(
        fieldText("Along the room"), [i](EquipmentRoom& r) -> double& { return r.ports[i].at.x; },
        coordinateWriting(units));
    make.typed<double>(
        fieldText("Across the room"), [i](EquipmentRoom& r) -> double& { return r.ports[i].at.y; },
        coordinateWriting(units));
    make.typed<Length>(
        fieldText("Height over floor"),
        [i](EquipmentRoom& r) -> Length& { return r.ports[i].height; }, lengthWriting(units));
    make.typed<std::string>(
        fieldText("Size"), [i](EquipmentRoom& r) -> std::string& { return r.ports[i].size; },
        textWriting(), fieldText("Nominal, like 2 or 1-1/2"));
    make.button(fieldText("Remove this port"), [i](const Plan&, EquipmentRoom& r) {
      r.ports.erase(r.ports.begin() + static_cast<std::ptrdiff_t>(i));
    });
  }
}

} // namespace

void vaultFields(const FieldContext& context, const Id& id, std::vector<Field>& out) {
  VaultMaker make(context.plan, vaultPlace(id), out);
  const UnitSystem units = context.units();
  make.typed<std::string>(
      fieldText("Name"), [](Vault& v) -> std::string& { return v.name; }, textWriting());
  std::vector<std::string> models = {""};
  QStringList names = {fieldText("Own sizes")};
  for (const VaultModel& m : context.catalog.vaults) {
    models.push_back(m.key);
    names << coreText(m.name);
  }
  make.choice<std::string>(
      fieldText("Bought as"), [](Vault& v) -> std::string& { return v.model; }, models, names,
      fieldText("Names the catalogue item on the list; sizes stay as they are below"));
  make.typed<Length>(
      fieldText("Inside floor"), [](Vault& v) -> Length& { return v.floor; },
      elevationWriting(units), fieldText("Elevation on the site datum"));
  make.typed<double>(
      fieldText("Middle, east"), [](Vault& v) -> double& { return v.centre.x; },
      coordinateWriting(units));
  make.typed<double>(
      fieldText("Middle, north"), [](Vault& v) -> double& { return v.centre.y; },
      coordinateWriting(units));
  make.typed<Angle>(
      fieldText("Angle"), [](Vault& v) -> Angle& { return v.angle; }, angleWriting(),
      fieldText("Of the flow, counter-clockwise from east"));
  flowOrderButtons(context, id, out);
  vaultFacts(context, id, make);
  vaultSizes(make, units);
  baffleFields(make, units, out);
  manwayFields(make, units, out);
  make.heading(fieldText("More"));
  out.push_back(planButton(
      fieldText("Add a baffle"), [id](const Plan& plan) { return baffleAdded(plan, id); },
      fieldText("It halves the longest chamber")));
  out.push_back(planButton(fieldText("Add a manway"), [id](const Plan& plan) {
    Id made;
    return addManway(plan, id, {0, 0}, made);
  }));
}

void roomFields(const FieldContext& context, const Id& id, std::vector<Field>& out) {
  RoomMaker make(context.plan, placeIn(&Plan::rooms, id), out);
  const UnitSystem units = context.units();
  make.typed<std::string>(
      fieldText("Name"), [](EquipmentRoom& r) -> std::string& { return r.name; }, textWriting());
  make.typed<Length>(
      fieldText("Floor"), [](EquipmentRoom& r) -> Length& { return r.floor; },
      elevationWriting(units));
  make.typed<Length>(
      fieldText("Clear length"), [](EquipmentRoom& r) -> Length& { return r.length; },
      lengthWriting(units));
  make.typed<Length>(
      fieldText("Clear width"), [](EquipmentRoom& r) -> Length& { return r.width; },
      lengthWriting(units));
  make.typed<double>(
      fieldText("First corner, east"), [](EquipmentRoom& r) -> double& { return r.corner.x; },
      coordinateWriting(units));
  make.typed<double>(
      fieldText("First corner, north"), [](EquipmentRoom& r) -> double& { return r.corner.y; },
      coordinateWriting(units));
  make.typed<Angle>(
      fieldText("Angle"), [](EquipmentRoom& r) -> Angle& { return r.angle; }, angleWriting());
  doorFields(make, units);
  // Usual sizes: common practice, no source.
  boxFields(make, units, "Equipment skid", &EquipmentRoom::skid,
            {{inMetres(feet(4)), 0}, feet(4), feet(2), inches(52)});
  boxFields(make, units, "Plumbing area", &EquipmentRoom::plumbingArea,
            {{inMetres(feet(2)), 0}, feet(2), feet(2), feet(8)});
  boxFields(make, units, "Electrical panel", &EquipmentRoom::panel,
            {{0, 0}, feet(2), inches(9), inches(78)});
  floorDrainFields(make, units);
  portFields(make, units);
  make.heading(fieldText("More"));
  make.button(fieldText("Add a port"), [id](const Plan& plan, EquipmentRoom& r) {
    r.ports.push_back({freshId(plan, id + "-P"),
                       "Port",
                       Service::Suction,
                       {inMetres(r.length) / 2, inMetres(r.width) / 2},
                       feet(1.5),
                       "2"});
  });
}

} // namespace sump
