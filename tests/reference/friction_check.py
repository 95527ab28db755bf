#!/usr/bin/env python3
"""A second opinion on the samples' suction and product losses.

Reads what tests/reference/friction_export_test.cpp wrote (bores, lengths, coefficients, flow,
water; and the program's own losses) and works the losses out on its own: Colebrook-White by
halving the interval (the program uses Newton's method), Darcy-Weisbach in pressure instead of head,
water by Kell's density and the Vogel viscosity equation instead of IAPWS. Demands agreement within
0.5 %.

Usage: friction_check.py FILE.json
"""

import json
import math
import sys

TOLERANCE = 0.005
GRAVITY = 9.80665


def kell_density(celsius):
    """Kell (1975), J. Chem. Eng. Data 20, 97 (from memory): kg/m3 at 1 atm, 0 to 100 C."""
    t = celsius
    top = (999.83952 + 16.945176 * t - 7.9870401e-3 * t**2 - 46.170461e-6 * t**3
           + 105.56302e-9 * t**4 - 280.54253e-12 * t**5)
    return top / (1 + 16.879850e-3 * t)


def vogel_viscosity(celsius):
    """2.414e-5 x 10^(247.8/(T - 140)) Pa s (textbook form, from memory; within 2.5 %)."""
    return 2.414e-5 * 10 ** (247.8 / (celsius + 273.15 - 140))


def colebrook(reynolds, roughness_ratio):
    """The root of Colebrook-White between friction factors of 0.001 and 1, by halving."""
    low, high = 0.001, 1.0
    for _ in range(200):
        f = (low + high) / 2
        rest = 1 / math.sqrt(f) + 2 * math.log10(roughness_ratio / 3.7 + 2.51 / (reynolds * math.sqrt(f)))
        if rest > 0:
            low = f
        else:
            high = f
    return (low + high) / 2


def loss(run, celsius):
    """Head lost in pipe and fittings, m."""
    rho, mu = kell_density(celsius), vogel_viscosity(celsius)
    pressure = 0.0
    for pipe in run["pipe"]:
        area = math.pi * pipe["inside"] ** 2 / 4
        velocity = run["flow"] / area
        reynolds = rho * velocity * pipe["inside"] / mu
        f = 64 / reynolds if reynolds < 2300 else colebrook(reynolds, pipe["roughness"] / pipe["inside"])
        pressure += f * pipe["length"] / pipe["inside"] * rho * velocity**2 / 2
    for fitting in run["fittings"]:
        velocity = run["flow"] / (math.pi * fitting["inside"] ** 2 / 4)
        pressure += fitting["count"] * fitting["k"] * rho * velocity**2 / 2
    return pressure / (rho * GRAVITY)


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        data = json.load(file)
    checked, worst = 0, 0.0
    for sample in data["samples"]:
        for run in sample["runs"]:
            own, theirs = loss(run, sample["celsius"]), run["loss"]
            off = abs(own - theirs) / own
            worst = max(worst, off)
            checked += 1
            print(f"{sample['name']} {run['id']}: program {theirs:.5f} m, here {own:.5f} m, {100 * off:.3f} % apart")
    if checked < 6:
        sys.exit(f"only {checked} runs were exported: nothing is proved")
    if worst > TOLERANCE:
        sys.exit(f"the worst is {100 * worst:.3f} % apart, more than {100 * TOLERANCE} %")
    print(f"{checked} runs agree within {100 * TOLERANCE} %")


if __name__ == "__main__":
    main()
