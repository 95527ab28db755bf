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


def check_orders(lines):
    for line in lines:
        if line["from"]:
            total = sum(share["amount"] for share in line["from"])
            same(f"shares of {line['description']} {line['size']}", line["inPlace"], total)
        if line["category"] == "pipe" or "toBuy" not in line:
            continue
        net, waste = line["inPlace"], line["waste"]
        if line["unit"] == "each":
            wanted = math.ceil(net - 1e-9) + math.floor(net * waste + 0.5)
        elif line["category"] == "cement":  # whole pints
            wanted = math.ceil(net * (1 + waste) / (QUART / 2) - 1e-9) * QUART / 2
            if line["unit"] == "L":
                wanted = math.ceil(net / 1000 * (1 + waste) / (QUART / 2) - 1e-9) * QUART / 2 * 1000
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


def check_joints(plan, lines, supplies, pipes):
    """Each socket is one joint, on runs of solvent-welded pipe."""
    sockets = {row["item"]: row["count"] for row in supplies["solvent"]["sockets"]}
    joining = {run["id"]: pipes[run["pipe"]]["joining"] for run in plan["runs"]}
    wanted = collections.Counter()
    parts = shares(lines, lambda line: line["category"] in ("fitting", "valve", "part"))
    for (run, key, size), count in parts.items():
        if joining.get(run) not in ("solvent-socket", "bell") or " x " in size:
            continue
        wanted[run, size] += count * sockets.get(key, 2)
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
        scale = QUART * (1000 if line["unit"] == "L" else 1)
        share = supplies["solvent"]["primerShare"] if "primer" in line["item"] else 1
        kind = "conduit-joint" if "conduit" in line["item"] else "solvent-joint"
        same(line["description"], line["inPlace"], quarts[kind] * share * scale)


def nominal(text):
    return sum(
        float(p.split("/")[0]) / float(p.split("/")[1]) if "/" in p else float(p)
        for p in text.split("-")
    )


def check_pipe(plan, lines, by_run, sticks, pipes):
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
    services = {run["id"]: run["service"] for run in plan["runs"]}
    tape = next(line for line in lines if line["item"] == "purple-tape")
    purple = {run for run, service in services.items() if service in PURPLE}
    same("runs with purple tape", len(tape["from"]), len(purple))
    same("purple tape", tape["inPlace"], sum(by_run[run] for run in purple), 0.05)


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
    check_orders(lines)
    check_parts(plan, lines)
    joints = check_joints(plan, lines, supplies, pipes)
    check_cement(lines, joints, supplies, pipes, plan)
    check_pipe(plan, lines, by_run, sticks, pipes)
    check_vaults(plan, lines, levels)
    check_earth(lines)
    print(f"{agreed} figures agree")


main()
