#!/usr/bin/env python3
"""Writes samples/faulty/<rule>.sump: the transit depot with one thing wrong for each rule.

Usage: make_faulty.py DEPOT.sump FOLDER
The plans are then brought into canonical form by the program's own writer (see the test).
"""

import copy
import json
import pathlib
import sys

FOOT = 0.3048


def by_id(items, wanted):
    return next(item for item in items if item["id"] == wanted)


def run(plan, wanted):
    return by_id(plan["runs"], wanted)


def drop_run(plan, wanted):
    plan["runs"] = [r for r in plan["runs"] if r["id"] != wanted]
    wiring = plan["basis"]["wiring"]
    for circuit in wiring["supplies"] + wiring["signalCircuits"]:
        if circuit.get("run") == wanted:
            del circuit["run"]


def drop_part(plan, wanted, kind):
    target = run(plan, wanted)
    target["parts"] = [p for p in target["parts"] if p["kind"] != kind]


def code_profile(plan):
    plan["project"]["profile"] = "no-such-code"


def level_known(plan):
    del run(plan, "VT-1")["to"]["invert"]


def lines_present(plan):
    drop_run(plan, "FC-1")


def storage_volume(plan):
    for vault in plan["vaults"]:
        vault["floor"] = round(vault["floor"] + 0.5 * FOOT, 9)
        vault["insideHeight"] = round(vault["insideHeight"] - 0.5 * FOOT, 9)
    plan["limits"]["duty.pump-out-days"] = 5  # less water, fuller sooner
    run(plan, "OF-1")["from"].pop("legEnd")  # as shallow water asks


def flow_order(plan):
    inlet = run(plan, "WW-1")
    inlet["to"] = {"kind": "chamber", "target": "V1", "chamber": 2,
                   "at": [0.9144, round(-0.7 * FOOT, 9)], "invert": inlet["to"]["invert"], "fitting": "tee"}
    inlet["vertices"] = inlet["vertices"][:4] + [
        {"at": [round(75 * FOOT, 9), round(42 * FOOT, 9)]},
        {"at": [round(71 * FOOT, 9), round(46 * FOOT, 9)]}]
    plan["limits"]["manway.clear-way"] = 0.25  # beside the eductor


def gravity_slope(plan):
    plan["sewers"][0]["invert"] = round(96.9 * FOOT, 9)


def vault_link(plan):
    link = run(plan, "LK-1")
    link["vertices"] = []
    link["from"]["invert"] = round(97.0 * FOOT, 9)


def interconnect_depth(plan):
    for end in ("from", "to"):
        run(plan, "IC-1")[end]["invert"] = round(93.6 * FOOT, 9)


def baffle_full_height(plan):
    plan["vaults"][0]["baffles"][0]["topGap"] = round(0.5 * FOOT, 9)


def lid_airspace(plan):
    plan["limits"]["vault.airspace"] = 0.31


def eductor_mount(plan):
    mount = run(plan, "RC-1")["eductor"]
    mount["bracketFoot"] = round(mount["bracketFoot"] + 0.5 * FOOT, 9)


def manway_clear(plan):
    conduit = run(plan, "FC-1")
    conduit["from"]["at"] = [0.65, 0.38]  # still in reach
    conduit["from"]["invert"] = round(97.7 * FOOT, 9)  # and clear of the lid at the wall
    conduit["vertices"][0]["at"][0] = round(68 * FOOT - 0.65, 9)


def sleeve_room(plan):
    plan["limits"]["sleeve.clear"] = 0.2  # both suctions


def bend_in_wall(plan):
    for port in plan["rooms"][0]["ports"]:
        if port["id"] == "P-PC":
            port["at"][1] = round(0.4 * FOOT, 9)
    run(plan, "PC-1")["vertices"][-1]["at"][1] = round(68.4 * FOOT, 9)


def wall_along(plan):
    vent = copy.deepcopy(run(plan, "VT-1"))  # in the west wall of the maintenance building
    east = by_id(plan["buildings"], "B-MAINT")["outline"][0][0] + 0.1
    vent.update(id="VT-9", name="Spare vent", vertices=[], parts=[])
    vent["from"] = {"kind": "free", "target": "", "chamber": 0, "at": [east, 28], "invert": 32,
                    "fitting": "plain"}
    vent["to"].update(at=[east, 30], invert=32)
    plan["buildings"][1]["roof"] = 31.5  # it ends over it
    plan["runs"].append(vent)


def basin_opening(plan):
    underflow = run(plan, "UF-1")
    underflow["vertices"] = underflow["vertices"][:1]
    underflow["to"]["at"][0] = 1.2  # slants across


def chamber_reach(plan):
    suction = run(plan, "SU-1")
    suction["parts"] = [p for p in suction["parts"] if p["id"] != "SU-1-3"]


def connector_room(plan):
    run(plan, "VT-2")["from"]["invert"] = round(97.9 * FOOT, 9)


def tap_level(plan):
    start = run(plan, "PC-1")["from"]
    plan["utilities"].append({
        "id": "U-FEED", "name": "Building feeder", "kind": "electric",
        "path": [start["at"], [start["at"][0], round(100 * FOOT, 9)]],
        "elevation": round(start["invert"] + 0.2, 9), "publicMain": False})


def suction_source(plan):
    drop_run(plan, "SS-1")


def suction_rise(plan):
    run(plan, "SU-1")["vertices"][1]["invert"] = round(97.5 * FOOT, 9)


def product_size(plan):
    run(plan, "PW-1")["parts"].append(
        {"id": "PW-1-3", "kind": "reducer", "leg": 3, "along": 0.5, "toSize": "1-1/2"})
    plan["limits"]["velocity.pressure"] = 7  # ft/s: the water is faster in the smaller size


def overflow_backflow(plan):
    drop_part(plan, "OF-1", "backwater-valve")


def make_up_protection(plan):
    for part in run(plan, "MU-1")["parts"]:
        if part["kind"] == "reduced-pressure-assembly":
            part["kind"] = "double-check"


def room_clearance(plan):
    plan["rooms"][0]["plumbingArea"]["length"] = 0.55


def pipe_cover(plan):
    for vertex in run(plan, "RC-1")["vertices"]:
        if "invert" in vertex:
            vertex["invert"] = round(vertex["invert"] + 1.3 * FOOT, 9)


def conduit_cover(plan):
    for vertex in run(plan, "PC-1")["vertices"]:
        if "invert" in vertex:
            vertex["invert"] = round(100.2 * FOOT, 9)


def traffic_lid(plan):
    plan["vaults"][0]["trafficLid"] = False


def manway_per_chamber(plan):
    plan["vaults"][1]["manways"] = plan["vaults"][1]["manways"][1:]


def vault_clash(plan):
    plan["buildings"].append({"id": "B-KIOSK", "name": "Kiosk", "outline": [
        [round(x * FOOT, 9), round(y * FOOT, 9)]
        for x, y in ((48, 45), (60, 45), (60, 51), (48, 51))],
        "footing": round(88 * FOOT, 9)})


def stock_bend(plan):
    vertices = run(plan, "OF-1")["vertices"]
    vertices[0]["at"] = [round(15.18 * FOOT, 9), vertices[0]["at"][1]]
    plan["basis"]["earth"]["ladders"].append([round(9.59 * FOOT, 9), round(43.5 * FOOT, 9)])


def short_pipe(plan):
    for part in run(plan, "SU-1")["parts"]:
        if part["kind"] == "union" and part["leg"] == 2:
            part["along"] = 0.88


def inlet_above_outlet(plan):
    run(plan, "WW-1")["to"]["invert"] = round(97.35 * FOOT, 9)


def outlet_dip(plan):
    end = run(plan, "OF-1")["from"]
    end["fitting"] = "plain"
    del end["legEnd"]


def inlet_dip(plan):
    end = run(plan, "WW-1")["to"]
    end["fitting"] = "plain"
    del end["legEnd"]


def first_chamber_share(plan):
    plan["vaults"][0]["baffles"][0]["offset"] = 1.3
    run(plan, "IC-1")["from"]["at"] = [-0.6, 0]
    plan["limits"]["duty.pump-out-days"] = 5


def liquid_depth(plan):
    plan["limits"]["liquid.least"] = 1.3


def sludge_share(plan):
    plan["basis"]["water"]["sludgeDepth"] = 0.3


def vent_air_space(plan):
    plan["vaults"][0]["baffles"][0]["topGap"] = 0


def vent_over_roof(plan):
    plan["buildings"][0]["roof"] = round(121 * FOOT, 9)


def cleanout_spacing(plan):
    plan["limits"]["cleanout.spacing"] = 18


def cleanout_turn(plan):
    run(plan, "OF-1")["vertices"][0]["at"] = [round(4 * FOOT, 9), round(57 * FOOT, 9)]
    plan["basis"]["earth"]["ladders"] += [
        [round(x * FOOT, 9), round(y * FOOT, 9)] for x, y in ((15, 57), (4, 44))]


def water_pipe(plan, path, elevation, main):
    plan["utilities"].append({
        "id": "U-W2", "name": "Yard water pipe", "kind": "potable-water",
        "path": [[round(x * FOOT, 9), round(y * FOOT, 9)] for x, y in path],
        "elevation": round(elevation * FOOT, 9), "diameter": 0.06, "publicMain": main})


def water_sewer_apart(plan):
    water_pipe(plan, ((40, 60), (50, 60)), 97.5, False)


def crossing_clearance(plan):
    water_pipe(plan, ((45, 50), (45, 66)), 99, False)
    plan["limits"]["crossing.private"] = 0.6


def main_distance(plan):
    water_pipe(plan, ((55, 40), (55, 52)), 100, True)


def water_over_tank(plan):
    water_pipe(plan, ((70, 66), (70, 60.5)), 100.5, False)
    plan["acceptances"].append({
        "finding": "dig-overlap/dig-overlap.utility/V1/V2/U-W2",
        "reason": "Supported while the pit is open.", "by": "R. Okafor", "date": "2026-11-02"})


def deep_burial(plan):
    plan["pavements"][0]["traffic"] = False
    plan["vaults"][0]["engineered"] = False
    plan["limits"]["vault.burial"] = 0.5


def basis(plan):
    return plan["basis"]


def drain_capacity(plan):
    plan["limits"]["gravity.roughness"] = 0.107
    plan["limits"]["gravity.velocity"] = 0.1
    plan["limits"]["gravity.velocity.silt"] = 0.1


def drain_speed(plan):
    plan["limits"]["gravity.velocity"] = 2


def peak_level(plan):
    basin = plan["basins"][0]
    basin["rim"] = round(basin["outletInvert"] + 0.05, 9)


def peak_detention(plan):
    plan["limits"]["duty.detention"] = 300


def sand_area(plan):
    basis(plan)["demand"]["otherInflow"] = 0.0062
    plan["vaults"][0]["insideHeight"] = round(plan["vaults"][0]["insideHeight"] + 0.1, 9)
    for vertex in run(plan, "RC-1")["vertices"]:  # still through the riser
        if "invert" in vertex:
            vertex["invert"] = round(vertex["invert"] + 0.1, 9)
    plan["limits"]["cover.pipe.traffic"] = 0.5
    plan["limits"]["duty.detention"] = 10


def sludge_interval(plan):
    for kind in basis(plan)["demand"]["vehicles"]:
        kind["sediment"] = round(kind["sediment"] * 20, 9)


def low_water(plan):
    basis(plan)["water"]["lowLevel"] = 1.25  # over the water at rest


def suction_lift(plan):
    plan["limits"]["suction.lift"] = 3


def npsh_margin(plan):
    for point in basis(plan)["pump"]["curve"]:
        point["npshRequired"] = round(point["npshRequired"] * 3, 9)


def line_speed(plan):
    plan["limits"]["velocity.suction"] = 2


def line_pressure(plan):
    basis(plan)["pump"]["eductorPressure"] = 600000


def product_pressure(plan):
    basis(plan)["demand"]["devices"][0]["pressure"] = 500000


def reclaim_share(plan):
    plan["limits"]["reclaim.share"] = 0.98


def reclaimed_marking(plan):
    plan["notes"] = []


def buoyancy(plan):
    plan["site"]["groundwater"] = round(101 * FOOT, 9)
    basis(plan)["earth"]["soilHold"] = "lid-only"
    plan["vaults"][0]["emptyWeight"] = 6000


def kiosk(plan, east, footing):
    plan["buildings"].append({"id": "B-KIOSK", "name": "Kiosk", "outline": [
        [round(x * FOOT, 9), round(y * FOOT, 9)]
        for x, y in ((48, 40), (east, 40), (east, 46), (48, 46))],
        "footing": round(footing * FOOT, 9)})


def footing_pass(plan):
    level = run(plan, "PC-1")["vertices"][0]["invert"]
    by_id(plan["buildings"], "B-MAINT")["footing"] = round(level - 0.1, 9)


def footing_plane(plan):
    kiosk(plan, 56.5, 99)


def dig_overlap(plan):
    plan["wells"] = []
    plan["utilities"].append({
        "id": "U-GAS", "name": "Gas", "kind": "gas", "publicMain": False,
        "path": [[round(x * FOOT, 9), round(46 * FOOT, 9)] for x in (70, 90)]})


def dig_protection(plan):
    basis(plan)["earth"]["protection"] = "none"


def dig_egress(plan):
    basis(plan)["earth"]["ladders"] = []


def spoil_edge(plan):
    plan["limits"]["dig.spoil-distance"] = 5


def spoil_room(plan):
    low, high = plan["basis"]["earth"]["spoil"][0], plan["basis"]["earth"]["spoil"][2]
    east = round((low[0] + high[0]) / 2, 9)
    plan["basis"]["earth"]["spoil"] = [low, [east, low[1]], [east, high[1]], [low[0], high[1]]]


def box_access(plan):
    run(plan, "PC-1")["parts"][0].update(leg=2, along=0.5)


def basin_sump(plan):
    plan["basins"][0]["sump"] = 0.1


def relief_drain(plan):
    plan["limits"]["makeup.assembly-height"] = 2


def supplies_known(plan):
    basis(plan)["wiring"]["signalCircuits"] = basis(plan)["wiring"]["signalCircuits"][1:]


def conduit_bends(plan):
    plan["limits"]["wiring.bends"] = 3


def conduit_fill(plan):
    run(plan, "PC-1")["conductors"][1]["count"] = 60


def mixed_raceway(plan):
    run(plan, "PC-1")["conductors"].append({"size": "14", "count": 2, "kind": "class-2"})


def working_space(plan):
    plan["rooms"][0]["door"]["offset"] = round(2 * FOOT, 9)


def disconnect_in_sight(plan):
    basis(plan)["wiring"]["supplies"][0]["disconnect"] = [17.5, 22]


RULES = {
    "drain-capacity": drain_capacity,
    "drain-speed": drain_speed,
    "peak-level": peak_level,
    "peak-detention": peak_detention,
    "sand-area": sand_area,
    "sludge-interval": sludge_interval,
    "low-water": low_water,
    "suction-lift": suction_lift,
    "npsh-margin": npsh_margin,
    "line-speed": line_speed,
    "line-pressure": line_pressure,
    "product-pressure": product_pressure,
    "reclaim-share": reclaim_share,
    "reclaimed-marking": reclaimed_marking,
    "buoyancy": buoyancy,
    "footing-plane": footing_plane,
    "footing-pass": footing_pass,
    "dig-overlap": dig_overlap,
    "dig-protection": dig_protection,
    "dig-egress": dig_egress,
    "spoil-edge": spoil_edge,
    "spoil-room": spoil_room,
    "box-access": box_access,
    "basin-sump": basin_sump,
    "relief-drain": relief_drain,
    "supplies-known": supplies_known,
    "conduit-bends": conduit_bends,
    "conduit-fill": conduit_fill,
    "mixed-raceway": mixed_raceway,
    "working-space": working_space,
    "disconnect-in-sight": disconnect_in_sight,
    "inlet-above-outlet": inlet_above_outlet,
    "outlet-dip": outlet_dip,
    "inlet-dip": inlet_dip,
    "first-chamber-share": first_chamber_share,
    "liquid-depth": liquid_depth,
    "sludge-share": sludge_share,
    "vent-air-space": vent_air_space,
    "vent-over-roof": vent_over_roof,
    "cleanout-spacing": cleanout_spacing,
    "cleanout-turn": cleanout_turn,
    "water-sewer-apart": water_sewer_apart,
    "crossing-clearance": crossing_clearance,
    "main-distance": main_distance,
    "water-over-tank": water_over_tank,
    "deep-burial": deep_burial,
    "code-profile": code_profile,
    "level-known": level_known,
    "lines-present": lines_present,
    "storage-volume": storage_volume,
    "flow-order": flow_order,
    "gravity-slope": gravity_slope,
    "vault-link": vault_link,
    "interconnect-depth": interconnect_depth,
    "baffle-full-height": baffle_full_height,
    "lid-airspace": lid_airspace,
    "eductor-mount": eductor_mount,
    "manway-clear": manway_clear,
    "connector-room": connector_room,
    "chamber-reach": chamber_reach,
    "sleeve-room": sleeve_room,
    "tap-level": tap_level,
    "suction-source": suction_source,
    "suction-rise": suction_rise,
    "product-size": product_size,
    "overflow-backflow": overflow_backflow,
    "make-up-protection": make_up_protection,
    "room-clearance": room_clearance,
    "pipe-cover": pipe_cover,
    "conduit-cover": conduit_cover,
    "traffic-lid": traffic_lid,
    "manway-per-chamber": manway_per_chamber,
    "vault-clash": vault_clash,
    "stock-bend": stock_bend,
    "short-pipe": short_pipe,
    "bend-in-wall": bend_in_wall,
    "wall-along": wall_along,
    "basin-opening": basin_opening,
}


def main():
    depot = json.loads(pathlib.Path(sys.argv[1]).read_text())
    folder = pathlib.Path(sys.argv[2])
    for rule, spoil in RULES.items():
        plan = copy.deepcopy(depot)
        plan["project"]["supplementaryTitle"] = f"Faulty on purpose: {rule}"
        spoil(plan)
        (folder / f"{rule}.sump").write_text(json.dumps(plan, indent=1))


if __name__ == "__main__":
    main()
