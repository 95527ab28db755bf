"""Adds a bill up again, by the take-off of each run, and by the plan file itself.

Usage: bill_sums.py PLAN.sump BILL.json LEVELS.json CUTS.csv SUPPLIES.json CATALOG_FOLDER
BILL and LEVELS are what `takeoff --json` and `levels --json` write, CUTS is the cutting list.
Nothing of the program is used: parts are counted in the plan file, joints from the fittings, pipe,
tape and sticks from the cuts. Prints how many figures agree; fails at the first that does not.
"""

import collections
import csv
import json
import math
import sys

QUART = 231 * 0.0254**3 / 4
PARTS = {
    "union", "ball-valve", "gate-valve", "check-valve", "backwater-valve",
    "reduced-pressure-assembly", "solenoid-valve", "pull-box", "cleanout",
}
BESIDE = {"access-box", "access-box-traffic", "float-switch", "conduit-seal"}  # no sockets in the line
PURPLE = {
    "interconnect", "link", "suction", "spare-suction", "recirculation", "underflow", "product",
}

agreed = 0


def same(what, bill, here, by=1e-6):
    global agreed
    if abs(bill - here) > by:
        raise SystemExit(f"{what}: the bill says {bill}, the sum is {here}")
    agreed += 1


def item(line):
    return line["item"].split(":")[-1]


def metres(text, unit):
    return float(text) * (0.0254 if unit == "in" else 0.001)


def read_cuts(path):
    """Cuts by run, and sticks by pipe name and size."""
    with open(path, encoding="utf-8") as file:
        text = file.read().replace("\r\n", "\n").split("\n\n")[0]
    rows = list(csv.DictReader(text.splitlines()))
    length = next(k for k in rows[0] if k.startswith("Length"))
    unit = "in" if "(in)" in length else "mm"
    by_run = collections.defaultdict(float)
    sticks = collections.defaultdict(set)
    for row in rows:
        if not row["Run"] or not row[length]:
            continue
        by_run[row["Run"]] += metres(row[length], unit)
        sticks[row["Pipe"], row["Size"].removesuffix(" in")].add(row["Stick"])
    return by_run, sticks


def shares(lines, wanted):
    """Of each run: how much of the lines that are wanted."""
    found = collections.Counter()
    for line in lines:
        if wanted(line):
            for share in line["from"]:
                found[share["id"], item(line), line["size"]] += share["amount"]
    return found


def check_orders(lines, metric):
    can = 0.0005 if metric else QUART / 2  # half litres, pints
    for line in lines:
        if line["from"]:
            total = sum(share["amount"] for share in line["from"])
            same(f"shares of {line['description']} {line['size']}", line["inPlace"], total)
        if line["category"] == "pipe" or "toBuy" not in line:
            continue
        net, waste = line["inPlace"], line["waste"]
        if line["unit"] == "each":
            wanted = math.ceil(net - 1e-9) + math.floor(net * waste + 0.5)
        elif line["category"] == "cement":
            wanted = math.ceil(net * (1 + waste) / can - 1e-9) * can
        else:
            wanted = net * (1 + waste)
        same(f"to buy of {line['description']} {line['size']}", line["toBuy"], wanted)


def check_parts(plan, lines):
    wanted = collections.Counter()
    for run in plan["runs"]:
        for part in run.get("parts", []):
            if part["kind"] in PARTS:
                wanted[run["id"], part["kind"]] += 1
    found = collections.Counter()
    for line in lines:
        if item(line) in PARTS:
            for share in line["from"]:
                found[share["id"], item(line)] += share["amount"]
    if found != wanted:
        raise SystemExit(f"parts: the bill has {found - wanted} more and {wanted - found} less")
    global agreed
    agreed += len(wanted)


def end_sizes(run):
    """Nominal size at the start, and behind the last reducer."""
    reducers = [p for p in run.get("parts", []) if p["kind"] == "reducer"]
    last = max(reducers, key=lambda p: (p["leg"], p["along"]), default=None)
    return run["size"], last["toSize"] if last else run["size"]


def open_arms(plan, sockets):
    """Sockets of what runs end with that no pipe goes into: all but one, and that of a down leg."""
    elbows = {"elbow-down": "elbow-90", "elbow-up": "elbow-90"}
    arms = collections.Counter()
    for run in plan["runs"]:
        for end, size in zip(("from", "to"), end_sizes(run)):
            fitting = run[end].get("fitting", "plain")
            if fitting != "plain":
                arms[run["id"], size] += sockets.get(elbows.get(fitting, fitting), 2) - 1
                arms[run["id"], size] -= "legEnd" in run[end]
    return arms


def check_joints(plan, lines, supplies, pipes):
    """Each socket with pipe in it is one joint, on runs of solvent-welded pipe."""
    sockets = {row["item"]: row["count"] for row in supplies["solvent"]["sockets"]}
    joining = {run["id"]: pipes[run["pipe"]]["joining"] for run in plan["runs"]}
    wanted = collections.Counter()
    parts = shares(lines, lambda line: line["category"] in ("fitting", "valve", "part"))
    for (run, key, size), count in parts.items():
        if joining.get(run) not in ("solvent-socket", "bell") or " x " in size:
            continue
        if key in BESIDE:
            continue
        wanted[run, size] += count * sockets.get(key, 2)
    for (run, size), count in open_arms(plan, sockets).items():
        if (run, size) in wanted:
            wanted[run, size] -= count
    found = collections.Counter()
    for (run, _, size), count in shares(lines, lambda l: l["category"] == "joint").items():
        found[run, size] += count
    for (run, size), count in found.items():
        if joining[run] == "bell":
            continue  # and a joint at each bell, which no fitting shows
        same(f"joints of {run} in {size}", count, wanted[run, size])
    for key in wanted:
        if key not in found:
            raise SystemExit(f"joints of {key} are missing")
    return found


def check_cement(lines, joints, supplies, pipes, plan):
    table = sorted(
        (nominal(row["nominal"]), row["joints"]) for row in supplies["solvent"]["jointsPerQuart"]
    )
    trade = {}
    for line in lines:
        if line["category"] == "joint":
            for share in line["from"]:
                trade[share["id"]] = line["item"]
    quarts = collections.Counter()
    for (run, size), count in joints.items():
        per_quart = next(n for limit, n in table if limit >= nominal(size) - 1e-9)
        quarts[trade[run]] += count / per_quart
    for line in lines:
        if line["category"] != "cement":
            continue
        share = supplies["solvent"]["primerShare"] if "primer" in line["item"] else 1
        kind = "conduit-joint" if "conduit" in line["item"] else "solvent-joint"
        same(line["description"], line["inPlace"], quarts[kind] * share * QUART)


def nominal(text):
    return sum(
        float(p.split("/")[0]) / float(p.split("/")[1]) if "/" in p else float(p)
        for p in text.split("-")
    )


def stays_in_vaults(plan, run):
    """Both ends in chambers of one vault, and no corner of the line outside of its walls."""
    ends = run["from"], run["to"]
    if any(end["kind"] != "chamber" for end in ends) or ends[0]["target"] != ends[1]["target"]:
        return False
    vault = next(v for v in plan["vaults"] if v["id"] == ends[0]["target"])
    turn = math.radians(vault["angle"])
    for corner in run["vertices"]:
        east, north = (here - centre for here, centre in zip(corner["at"], vault["centre"]))
        along = east * math.cos(turn) + north * math.sin(turn)
        across = north * math.cos(turn) - east * math.sin(turn)
        if abs(along) > vault["length"] / 2 or abs(across) > vault["width"] / 2:
            return False
    return True


def check_tape(plan, lines, levels, by_run):
    """Along nonpotable water, but not where nobody digs it up or taps it: in a vault."""
    tape = next(line for line in lines if line["item"] == "purple-tape")
    purple = {
        run["id"]
        for run in plan["runs"]
        if run["service"] in PURPLE and not stays_in_vaults(plan, run)
    }
    if {share["id"] for share in tape["from"]} != purple:
        raise SystemExit(f"purple tape is counted for others than {sorted(purple)}")
    developed = {run["id"]: run["developedLength"] for run in levels["runs"]}
    same("purple tape", tape["inPlace"], sum(developed[run] for run in purple))
    for run in purple:
        if by_run[run] >= developed[run]:
            raise SystemExit(f"{run} has more pipe than length")


def check_pipe(lines, by_run, sticks, pipes):
    for line in lines:
        if line["category"] == "pipe":
            pipe = pipes[line["item"]]
            number = len(sticks[pipe["name"], line["size"]])
            same(f"sticks of {line['description']} {line['size']}", line["sticks"], number)
            feet = float(pipe["stick"].removesuffix(" ft"))
            same(f"to buy of {line['description']}", line["toBuy"], number * feet * 0.3048)
            for share in line["from"]:
                # Cuts are to the tape's nearest mark: half of 1/16 in or of 1 mm each.
                same(f"cuts of {share['id']}", share["amount"], by_run[share["id"]], 0.03)


def check_vaults(plan, lines, levels):
    def amount(*keys):
        return sum(line["inPlace"] for line in lines if line["category"] in keys)

    vaults = plan["vaults"]
    same("vaults", amount("vault"), len(vaults))
    same("lids", amount("lid"), len(vaults))
    same("baffles", amount("baffle"), sum(len(v.get("baffles", [])) for v in vaults))
    same("manways", amount("manway"), sum(len(v.get("manways", [])) for v in vaults))
    rims = {v["id"]: v["lidTop"] for v in levels["vaults"]}
    assert set(rims) == {v["id"] for v in vaults}


def check_earth(lines):
    def net(key):
        return next(line["inPlace"] for line in lines if line["item"] == key)

    swell = net("spoil") / net("excavation")
    if not 1.05 < swell < 1.5:
        raise SystemExit(f"spoil is {swell} times what is dug")
    same("surplus", net("surplus"), swell * (net("excavation") - net("backfill")), 1e-5)
    if net("bedding") + net("pipe-zone") + net("backfill") >= net("excavation"):
        raise SystemExit("more is filled than dug, with vaults in it")
    trucks = net("surplus") / net("truckload")
    if not 5 < trucks < 12:  # m3; a truck takes about 10 yd3
        raise SystemExit(f"a truck takes {trucks} m3")


def main():
    plan, bill, levels = (json.load(open(path, encoding="utf-8")) for path in sys.argv[1:4])
    supplies = json.load(open(sys.argv[5], encoding="utf-8"))
    catalog = json.load(open(sys.argv[6] + "/pipes.json", encoding="utf-8"))
    pipes = {pipe["key"]: pipe for pipe in catalog["pipes"]}
    lines = bill["lines"]
    by_run, sticks = read_cuts(sys.argv[4])
    check_orders(lines, plan["project"]["units"] == "metric")
    check_parts(plan, lines)
    joints = check_joints(plan, lines, supplies, pipes)
    check_cement(lines, joints, supplies, pipes, plan)
    check_pipe(lines, by_run, sticks, pipes)
    check_tape(plan, lines, levels, by_run)
    check_vaults(plan, lines, levels)
    check_earth(lines)
    print(f"{agreed} figures agree")


main()
