#!/usr/bin/env python3
"""A second opinion on part-full flow in round pipe.

Reads what tests/reference/part_full_export_test.cpp wrote (bore, slope, roughness and flow of drains,
and the program's own depths, velocities and capacities) and works them out on its own: area and
wetted perimeter by summing thin strips of the circle (the program uses the angle's closed form),
Manning in the US form with 1.49 replaced by its exact 0.3048^(-1/3), depths by halving (the program
uses false position), critical depth as the least specific energy by golden section (the program
solves Q^2 T = g A^3). Demands agreement within 0.5 %.

Usage: part_full_check.py FILE.json
"""

import json
import math
import sys

TOLERANCE = 0.005
GRAVITY = 9.80665
FOOT = 0.3048
STRIPS = 300


def strips(bore, depth):
    """Area and wetted perimeter up to a depth, strip by strip. Strips are even in the angle of the
    wall, so that they are thin at the invert and at the crown."""
    radius = bore / 2
    end = math.acos(max(-1.0, min(1.0, 1 - depth / radius)))
    area = wall = 0.0
    last_x, last_y = 0.0, 0.0
    for i in range(1, STRIPS + 1):
        angle = end * i / STRIPS
        x, y = radius * math.sin(angle), radius * (1 - math.cos(angle))
        area += (x + last_x) * (y - last_y)
        wall += 2 * math.hypot(x - last_x, y - last_y)
        last_x, last_y = x, y
    return area, wall


def manning(bore, depth, slope, n):
    """m3/s; Manning in feet, V = 0.3048^(-1/3)/n R^(2/3) S^(1/2)."""
    area, wall = strips(bore, depth)
    if wall == 0:
        return 0.0
    feet = FOOT ** (-1 / 3) / n * (area / wall / FOOT) ** (2 / 3) * math.sqrt(slope)
    return feet * FOOT * area


def halve(rises, low, high):
    for _ in range(60):
        middle = (low + high) / 2
        if rises(middle) < 0:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def energy(bore, depth, flow):
    area, _ = strips(bore, depth)
    return depth + (flow / area) ** 2 / (2 * GRAVITY)


def critical(bore, flow):
    """The depth of least specific energy."""
    low, high = bore * 1e-3, bore * (1 - 1e-6)
    share = (math.sqrt(5) - 1) / 2
    for _ in range(60):
        a, b = high - share * (high - low), low + share * (high - low)
        if energy(bore, a, flow) < energy(bore, b, flow):
            high = b
        else:
            low = a
    return (low + high) / 2


def own(drain):
    bore, slope, n, flow = (drain[k] for k in ("bore", "slope", "n", "flow"))
    depth = halve(lambda y: manning(bore, y, slope, n) - flow, 0.0, 0.938 * bore)
    area, _ = strips(bore, depth)
    full = manning(bore, bore, slope, n)
    return {
        "full": full,
        "fullVelocity": full / (math.pi * bore**2 / 4),
        "depth": depth,
        "velocity": flow / area,
        "critical": critical(bore, flow),
    }


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        drains = json.load(file)["drains"]
    worst, compared = 0.0, 0
    for drain in drains:
        here = own(drain)
        for key, theirs in drain["program"].items():
            off = abs(here[key] - theirs) / here[key]
            worst = max(worst, off)
            compared += 1
            if off > TOLERANCE:
                print(f"{drain['id']} {key}: program {theirs:.6g}, here {here[key]:.6g}")
    if compared < 100:
        sys.exit(f"only {compared} figures were exported: nothing is proved")
    if worst > TOLERANCE:
        sys.exit(f"the worst is {100 * worst:.3f} % apart, more than {100 * TOLERANCE} %")
    print(f"{compared} figures agree, the worst within {100 * worst:.4f} %")


if __name__ == "__main__":
    main()
