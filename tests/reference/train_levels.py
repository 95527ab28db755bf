#!/usr/bin/env python3
"""A second opinion on the water levels of the transit depot at the peak, pump stopped.

Reads the sample plan and works the levels out by itself: heads of the overflow by integrating the
energy line dE/dx = Sf with the classical Runge-Kutta method in small steps (the program takes
implicit Euler steps), depths by bisection, losses of the drowned interconnects and link by adding
up K and full-pipe friction. Bores: ASTM D1785 average inside diameter of 6 in Sch 80; K after
TP-410 with fT 0.015: tee through branch 60 fT, 90 elbow 30 fT, 45 elbow 16 fT, clearway swing check
50 fT, tee through run 20 fT, entry 0.78, exit 1. Prints: rest level, normal depth of the overflow,
then the level of each chamber from the last to the first, all in metres.
"""
import json
import math
import sys

G, N, D, FT = 9.80665, 0.013, 5.709 * 0.0254, 0.015
TEE, ELBOW, ELBOW45, SWING, CLEANOUT, ENTRY = (60 * FT, 30 * FT, 16 * FT, 50 * FT, 20 * FT, 0.78)


def area_radius(y):
    """Area, hydraulic radius and surface width by the full central angle."""
    theta = 2 * math.acos(max(-1.0, min(1.0, 1 - 2 * y / D)))
    a = D * D * (theta - math.sin(theta)) / 8
    return a, a / (D * theta / 2), D * math.sin(theta / 2)


def head(q, y):
    return (q / area_radius(min(y, D))[0]) ** 2 / (2 * G)


def friction_free(q, y):
    a, r, _ = area_radius(y)
    return (q * N / (a * r ** (2 / 3))) ** 2


def friction(q, y):
    return max(friction_free(q, min(y, D)), friction_free(q, D))


def bisect(f, low, high):
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if f(middle) < 0 else (low, middle)
    return (low + high) / 2


def critical(q):
    return bisect(lambda y: G * area_radius(y)[0] ** 3 - q * q * area_radius(y)[2], 1e-6, D * 0.999)


def normal(q, slope):
    return bisect(lambda y: slope - friction_free(q, y), 1e-6, 0.938 * D)


def depth(q, energy, yc):
    return bisect(lambda y: y + head(q, y) - energy, yc, 10)


def leg(q, energy, low, high, length, yc):
    """Energy at the upstream end of a leg; `energy` is at the downstream end."""
    steps = 4000
    dx, ec = length / steps, yc + head(q, yc)
    for i in range(steps):
        z = lambda part: low + (high - low) * (i + part) / steps
        slope = lambda e, part: friction(q, depth(q, max(e - z(part), ec), yc))
        k1 = slope(energy, 0)
        k2 = slope(energy + dx * k1 / 2, 0.5)
        k3 = slope(energy + dx * k2 / 2, 0.5)
        k4 = slope(energy + dx * k3, 1)
        energy = max(energy + dx * (k1 + 2 * k2 + 2 * k3 + k4) / 6, z(1) + ec)
        if i > 50 and energy == z(1) + ec and high > low:
            return high + ec  # steep: critical all the way up
    return energy


def main(path):
    plan = json.load(open(path))
    demand = plan["basis"]["demand"]
    drawn = sum(d["flow"] * d["count"] for d in demand["devices"]) * demand["simultaneity"]
    q = drawn * (1 - demand["lostFraction"]) + demand["otherInflow"]
    overflow = next(r for r in plan["runs"] if r["id"] == "OF-1")
    sewer = next(s for s in plan["sewers"] if s["id"] == "SW-1")
    vault = next(v for v in plan["vaults"] if v["id"] == "V2")
    dx, dy = overflow["from"]["at"]  # the vault is turned by 180 degrees
    start = (vault["centre"][0] - dx, vault["centre"][1] - dy)
    corner, end = overflow["vertices"][0]["at"], sewer["at"]
    plan1, plan2 = math.dist(start, corner), math.dist(corner, end)
    top, bottom = overflow["from"]["invert"], sewer["invert"]
    middle = top - (top - bottom) * plan1 / (plan1 + plan2)

    yc = critical(q)
    ec, hc = yc + head(q, yc), head(q, yc)
    energy = leg(q, bottom + ec, bottom, middle, math.hypot(plan2, middle - bottom), yc)
    energy = max(energy + ELBOW45 * head(q, depth(q, energy - middle, yc)),
                 middle + ec + ELBOW45 * hc)
    energy = leg(q, energy, middle, top, math.hypot(plan1, top - middle), yc)
    for k in (SWING + CLEANOUT, TEE + ENTRY):
        energy = max(energy + k * head(q, depth(q, energy - top, yc)), top + ec + k * hc)
    levels = [energy]

    full, slope = head(q, D), friction(q, D)
    crossing = (ENTRY + TEE + ELBOW + 1) * full + 0.6096 * slope
    levels.append(levels[-1] + crossing)
    # Plain start, one elbow at the top of the riser, a tee at the end.
    riser = 29.5656 - 29.0322
    across = math.hypot(vault["centre"][1] - plan["vaults"][0]["centre"][1] - 2 * 0.3048,
                        29.5656 - 29.53512)
    levels.append(levels[-1] + (ENTRY + ELBOW + TEE + 1) * full + (riser + across) * slope)
    levels.append(levels[-1] + crossing)
    print(top, normal(q, (top - bottom) / (plan1 + plan2)), *levels)


if __name__ == "__main__":
    main(sys.argv[1])
