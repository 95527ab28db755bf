#pragma once
// The plan file, described once: for each struct of plan/plan.h its keys in file order, which must
// be there, and what each is. Reading, writing, the list of known keys and the JSON Schema are
// visitors of these functions and so cannot drift apart. Private to exchange/.
//
// A visitor has need(key, value, what) for a field that must be there, and may(key, value, what)
// for one that may be left out. `what` completes "give ..." in messages and titles the schema.

#include "core/exchange/plan_file_basis.h"
#include "core/plan/plan.h"

#include <string>

namespace sump {

inline constexpr std::string_view kPlanFormat = "sumpwright-plan";

template <class F, Is<Project> T> void describe(F& f, T& p) {
  f.may("title", p.title, "the title of the drawing");
  f.may("supplementaryTitle", p.supplementaryTitle, "the second line of the title");
  f.may("legalOwner", p.legalOwner, "the legal owner of the drawing");
  f.may("siteAddress", p.siteAddress, "the address of the site");
  f.may("identificationNumber", p.identificationNumber, "the drawing number");
  f.may("revision", p.revision, "the revision index");
  f.may("issueDate", p.issueDate, "the date of issue as YYYY-MM-DD");
  f.may("createdBy", p.createdBy, "who made the drawing");
  f.may("approvedBy", p.approvedBy, "who approved the drawing");
  f.may("documentStatus", p.documentStatus, "the status of the drawing");
  f.may("units", p.units, "the units in which people read the plan");
  f.may("profile", p.profile, "the key of the code profile, empty for the generic one");
}

template <class F, Is<Site> T> void describe(F& f, T& s) {
  f.may("boundary", s.boundary, "the property line, site points in metres");
  f.may("datum", s.datum, "what elevation 0 means, in words");
  f.may("north", s.north, "true north in degrees, counter-clockwise from +y");
  f.may("groundwater", s.groundwater, "the highest expected groundwater elevation in metres");
  f.may("frostDepth", s.frostDepth, "the frost depth below grade in metres");
  f.may("groundDefault", s.groundDefault,
        "the grade elevation in metres where no spot elevation was shot");
}

template <class F, Is<Building> T> void describe(F& f, T& b) {
  f.need("id", b.id, "an id that no other object has");
  f.may("name", b.name, "the name of the building");
  f.need("outline", b.outline, "the outline of the building, site points in metres");
  f.may("floor", b.floor, "the finished floor elevation in metres");
  f.may("footing", b.footing, "the elevation of the underside of its footing in metres");
  f.may("roof", b.roof,
        "the elevation of the highest point of its roof in metres, ridge or parapet");
}

template <class F, Is<Pavement> T> void describe(F& f, T& p) {
  f.need("id", p.id, "an id that no other object has");
  f.may("name", p.name, "the name of the pavement");
  f.need("outline", p.outline, "the outline of the pavement, site points in metres");
  f.may("traffic", p.traffic, "whether vehicles drive on it");
}

template <class F, Is<Utility> T> void describe(F& f, T& u) {
  f.need("id", u.id, "an id that no other object has");
  f.may("name", u.name, "the name of the utility line");
  f.may("kind", u.kind, "what the line carries");
  f.need("path", u.path, "the line in plan, site points in metres");
  f.may("elevation", u.elevation, "the centreline elevation in metres");
  f.may("diameter", u.diameter, "the outside diameter in metres");
  f.may("publicMain", u.publicMain, "whether it is a public main");
}

template <class F, Is<SpotElevation> T> void describe(F& f, T& s) {
  f.need("id", s.id, "an id that no other object has");
  f.need("at", s.at, "the site point [x, y] in metres");
  f.need("elevation", s.elevation, "the ground elevation in metres");
}

template <class F, Is<Well> T> void describe(F& f, T& w) {
  f.need("id", w.id, "an id that no other object has");
  f.may("name", w.name, "the name of the well");
  f.need("at", w.at, "the site point [x, y] in metres");
}

template <class F, Is<Basin> T> void describe(F& f, T& b) {
  f.need("id", b.id, "an id that no other object has");
  f.may("name", b.name, "the name of the basin");
  f.may("kind", b.kind, "the kind of basin");
  f.need("at", b.at, "the centre, a site point [x, y] in metres");
  f.need("angle", b.angle, "the angle of its length in degrees, counter-clockwise from east");
  f.need("length", b.length, "the length in metres");
  f.need("width", b.width, "the width in metres");
  f.need("rim", b.rim, "the rim elevation in metres");
  f.need("outletInvert", b.outletInvert, "the invert elevation of the outlet in metres");
  f.may("sump", b.sump, "the depth of the bottom under the outlet's invert in metres");
}

template <class F, Is<SewerConnection> T> void describe(F& f, T& s) {
  f.need("id", s.id, "an id that no other object has");
  f.may("name", s.name, "the name of the sewer connection");
  f.need("at", s.at, "the site point [x, y] in metres");
  f.need("invert", s.invert, "the invert elevation of the connection in metres");
  f.may("upstreamManholeRim", s.upstreamManholeRim,
        "the rim elevation in metres of the next manhole upstream on the public sewer");
}

template <class F, Is<WashEquipment> T> void describe(F& f, T& w) {
  f.need("id", w.id, "an id that no other object has");
  f.may("name", w.name, "the name of the wash equipment");
  f.need("at", w.at, "the centre, a site point [x, y] in metres");
  f.need("angle", w.angle, "the angle of its length in degrees, counter-clockwise from east");
  f.need("length", w.length, "the length in metres");
  f.need("width", w.width, "the width in metres");
  f.need("inletElevation", w.inletElevation,
         "the invert elevation of the product water inlet in metres");
  f.may("inletSize", w.inletSize, "the nominal size of the inlet in inches, as text");
}

template <class F, Is<Door> T> void describe(F& f, T& d) {
  f.may("side", d.side, "the side of the room, in the room's own frame");
  f.need("offset", d.offset,
         "the distance in metres from the wall's start, counter-clockwise round the room, to the "
         "door");
  f.need("width", d.width, "the clear width of the door in metres");
}

template <class F, Is<RoomBox> T> void describe(F& f, T& b) {
  f.need("corner", b.corner, "its low corner [x, y] in metres, local to the room");
  f.need("length", b.length, "the length in metres along the room's x");
  f.need("depth", b.depth, "the depth in metres along the room's y");
  f.need("height", b.height, "the height in metres");
}

template <class F, Is<Port> T> void describe(F& f, T& p) {
  f.need("id", p.id, "an id that no other object has");
  f.may("name", p.name, "the name of the port");
  f.may("service", p.service, "the service of the port");
  f.need("at", p.at, "the point [x, y] in metres, local to the room");
  f.need("height", p.height, "the height of its invert above the room floor in metres");
  f.may("size", p.size, "the nominal size in inches, as text");
}

template <class F, Is<EquipmentRoom> T> void describe(F& f, T& r) {
  f.need("id", r.id, "an id that no other object has");
  f.may("name", r.name, "the name of the room");
  f.need("corner", r.corner, "the inside low corner, a site point [x, y] in metres");
  f.need("angle", r.angle, "the angle of its length in degrees, counter-clockwise from east");
  f.need("length", r.length, "the inside length in metres");
  f.need("width", r.width, "the inside width in metres");
  f.need("floor", r.floor, "the floor elevation in metres");
  f.may("door", r.door, "the door");
  f.may("skid", r.skid, "the box of the equipment skid");
  f.may("plumbingArea", r.plumbingArea, "the box in which all pipe rises");
  f.may("panel", r.panel, "the box of the electrical panel");
  f.may("ports", r.ports, "the places on the equipment where runs end");
  f.may("floorDrain", r.floorDrain,
        "the point [x, y] of the floor drain in metres, local to the room");
}

template <class F, Is<Baffle> T> void describe(F& f, T& b) {
  f.need("id", b.id, "an id that no other object has");
  f.need("offset", b.offset,
         "the distance in metres from the inside face of the inlet end to the near face");
  f.need("thickness", b.thickness, "the thickness in metres");
  f.need("bottomGap", b.bottomGap, "the gap under the baffle in metres, 0 for none");
  f.need("topGap", b.topGap, "the gap over the baffle in metres, 0 for none");
}

template <class F, Is<Manway> T> void describe(F& f, T& m) {
  f.need("id", m.id, "an id that no other object has");
  f.need("at", m.at, "the point [x, y] in metres, local to the vault's centre");
  f.need("diameter", m.diameter, "the clear diameter in metres");
  f.may("rim", m.rim, "the rim elevation in metres");
  f.may("trafficCover", m.trafficCover, "whether vehicles may drive over the cover");
}

template <class F, Is<Vault> T> void describe(F& f, T& v) {
  f.need("id", v.id, "an id that no other object has");
  f.may("name", v.name, "the name of the vault");
  f.may("model", v.model, "the catalogue key of the vault, or an empty text for own sizes");
  f.need("centre", v.centre, "the centre, a site point [x, y] in metres");
  f.need("angle", v.angle,
         "the angle of the direction of flow in degrees, counter-clockwise from east");
  f.need("length", v.length, "the outside length in metres");
  f.need("width", v.width, "the outside width in metres");
  f.need("wall", v.wall, "the wall thickness in metres");
  f.need("lidThickness", v.lidThickness, "the lid thickness in metres");
  f.need("floorThickness", v.floorThickness, "the floor thickness in metres");
  f.need("insideHeight", v.insideHeight, "the height from floor to underside of lid in metres");
  f.need("floor", v.floor, "the elevation of the inside floor in metres");
  f.may("trafficLid", v.trafficLid, "whether vehicles may drive over the lid");
  f.may("engineered", v.engineered,
        "whether a licensed engineer designed it for its load and depth");
  f.may("emptyWeight", v.emptyWeight, "the maker's empty weight with lid in kilograms");
  f.may("collar", v.collar, "how far the base slab reaches beyond the walls in metres");
  f.may("baffles", v.baffles, "the baffles by rising offset");
  f.may("manways", v.manways, "the manways");
}

template <class F, Is<RunEnd> T> void describe(F& f, T& e) {
  f.may("kind", e.kind, "what the end is attached to");
  f.may("target", e.target, "the id of what the end is attached to, empty when free");
  f.may("chamber", e.chamber, "the chamber number from 1, 0 when the end is in no chamber");
  f.need("at", e.at,
         "the point [x, y] in metres: site when free or on a run, else local to the target");
  f.may("invert", e.invert, "the invert elevation in metres");
  f.may("fitting", e.fitting, "what the pipe ends with");
  f.may(
      "legEnd", e.legEnd,
      "the elevation in metres of the open lower end of a tee's or elbow's down leg in a chamber");
}

template <class F, Is<Vertex> T> void describe(F& f, T& v) {
  f.need("at", v.at, "the site point [x, y] in metres");
  f.may("invert", v.invert, "the invert elevation in metres");
}

template <class F, Is<InlinePart> T> void describe(F& f, T& p) {
  f.need("id", p.id, "an id that no other object has");
  f.may("kind", p.kind, "the kind of part");
  f.need("leg", p.leg, "the leg of the run, counted from 0");
  f.need("along", p.along, "the fraction along the leg, 0 to 1");
  f.may("toSize", p.toSize, "the nominal size after a reducer in inches, as text");
  f.may("trafficCover", p.trafficCover, "whether vehicles may drive over the cover of a pull box");
}

template <class F, Is<EductorMount> T> void describe(F& f, T& m) {
  f.need("manway", m.manway, "the id of the manway in which it hangs");
  f.need("bracketFoot", m.bracketFoot, "the elevation of the bracket's foot in metres");
  f.need("outletEnd", m.outletEnd, "the elevation of the eductor's outlet end in metres");
  f.may("portSize", m.portSize, "the nominal size of its port in inches, as text");
}

template <class F, Is<Run> T> void describe(F& f, T& r) {
  f.need("id", r.id, "an id that no other object has");
  f.may("name", r.name, "the name of the run");
  f.may("service", r.service, "what the run carries");
  f.may("pipe", r.pipe, "the catalogue key of the pipe");
  f.may("size", r.size, "the nominal size in inches, as text");
  f.need("from", r.from, "the end where the flow enters");
  f.need("to", r.to, "the end where the flow leaves");
  f.may("vertices", r.vertices, "the corners between the ends");
  f.may("parts", r.parts, "the parts set in the line");
  f.may("eductor", r.eductor, "how the eductor hangs in its manway");
  f.may("conductors", r.conductors, "the conductors in a conduit");
}

template <class F, Is<NoteEnd> T> void describe(F& f, T& e) {
  f.may("object", e.object, "the id of the object that it follows, empty for a site point");
  f.need("at", e.at, "the point [x, y] in metres, local to the object or on the site");
}

template <class F, Is<DimensionNote> T> void describe(F& f, T& n) {
  f.need("id", n.id, "an id that no other object has");
  f.need("from", n.from, "where the dimension starts");
  f.need("to", n.to, "where the dimension ends");
  f.need("offset", n.offset, "the offset of the dimension line to the left in metres");
  f.may("text", n.text, "the text in place of the measured length");
}

template <class F, Is<Underlay> T> void describe(F& f, T& u) {
  f.need("id", u.id, "an id that no other object has");
  f.may("name", u.name, "the name of the picture");
  f.may("file", u.file, "the picture file, relative to the plan file");
  f.may("media", u.media, "the media type of the picture held here");
  f.may("data", u.data, "the picture held here, as base64");
  f.need("at", u.at, "the site point [x, y] of its top left corner in metres");
  f.need("angle", u.angle, "the angle of its upper edge in degrees, counter-clockwise from east");
  f.need("width", u.width, "the width on the site in metres");
  f.need("height", u.height, "the height on the site in metres");
  f.may("strength", u.strength, "how strongly it shows, 0 to 1");
  f.may("shown", u.shown, "whether it shows");
  f.may("locked", u.locked, "whether gestures leave it alone");
}

template <class F, Is<Acceptance> T> void describe(F& f, T& a) {
  f.need("finding", a.finding, "the key of the finding");
  f.need("reason", a.reason, "why it is accepted");
  f.may("by", a.by, "who accepts it");
  f.may("date", a.date, "the date as YYYY-MM-DD");
}

template <class F, Is<RevisionEntry> T> void describe(F& f, T& r) {
  f.need("index", r.index, "the revision index");
  f.may("date", r.date, "the date as YYYY-MM-DD");
  f.may("text", r.text, "what changed");
  f.may("by", r.by, "who made the change");
}

/// The keys after `format` and `version`.
template <class F, Is<Plan> T> void describe(F& f, T& p) {
  f.may("project", p.project, "the title block and the units");
  f.may("site", p.site, "the site");
  f.may("buildings", p.buildings, "the buildings");
  f.may("pavements", p.pavements, "the pavements");
  f.may("utilities", p.utilities, "the lines that are already in the ground");
  f.may("spots", p.spots, "the spot elevations");
  f.may("wells", p.wells, "the wells");
  f.may("basins", p.basins, "the catch basins and trench drains");
  f.may("sewers", p.sewers, "the sewer connections");
  f.may("washes", p.washes, "the wash equipment");
  f.may("rooms", p.rooms, "the equipment rooms");
  f.may("vaults", p.vaults, "the vaults in flow order");
  f.may("runs", p.runs, "the pipe and conduit runs");
  f.may("notes", p.notes, "the dimension notes");
  f.may("underlays", p.underlays, "the pictures to draw over");
  f.may("basis", p.basis, "what the calculations need to know");
  f.may("locked", p.locked, "the ids of the objects that gestures leave alone");
  f.may("acceptances", p.acceptances, "the findings accepted with a reason");
  f.may("revisions", p.revisions, "the revision block");
  f.may("limits", p.limits, "the project's own limits by id, in SI units");
}

} // namespace sump
