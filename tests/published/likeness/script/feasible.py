"""Whether diameters exist that meet bands, thicknesses and readings: linear programmes, solved by scipy's HiGHS.

Six layers from the conductor outward. A layer has either a band of diameters by its papers, whatever lies inside,
or grows on the one inside by twice a thickness. Cases nearer than 1 um to the border are not kept.
"""

import json
import pathlib
import random

from scipy.optimize import linprog

HERE = pathlib.Path(__file__).parent.parent
LAYERS = ["conductor", "conductor-screen", "insulation", "insulation-screen", "shield", "jacket"]
BORDER_MM = 1e-3


def slack_mm(layers, readings):
    """The greatest width by which every inequality can be kept; below 0 where no diameters exist."""
    n = len(layers)
    rows, right = [], []

    def at_most(coefficients, bound):
        rows.append(coefficients + [1.0])
        right.append(bound)

    def unit(index, sign):
        return [sign if place == index else 0.0 for place in range(n)]

    for index, layer in enumerate(layers):
        kind, low, high = layer
        if kind == "over":
            at_most(unit(index, 1.0), high)
            at_most(unit(index, -1.0), -low)
        else:
            grows = unit(index, 1.0)
            grows[index - 1] = -1.0
            if low == high:
                # What has no width is an equation: both sides without slack.
                rows.append(grows + [0.0])
                right.append(2 * high)
                rows.append([-c for c in grows] + [0.0])
                right.append(-2 * low)
            else:
                at_most(grows, 2 * high)
                at_most([-c for c in grows], -2 * low)
    for index, reading in readings:
        at_most(unit(index, 1.0), reading[1])
        at_most(unit(index, -1.0), -reading[0])
    found = linprog([0.0] * n + [-1.0], A_ub=rows, b_ub=right, bounds=[(None, None)] * (n + 1))
    assert found.status == 0, found
    return found.x[-1]


def case():
    def mm(value):
        return round(value, 4)

    d = random.uniform(8, 24)
    t = random.uniform(0.3, 0.6)
    screen = (mm(t), mm(t + random.uniform(0.05, 0.3)))
    over = d + 2 * t + random.uniform(8, 13)
    t = random.uniform(0.7, 1.0)
    outer = (mm(t), mm(t + random.uniform(0.05, 0.6)))
    strap = mm(random.uniform(0.3, 1.7))
    t = random.uniform(1.3, 2.0)
    jacket = (mm(t), mm(t + random.uniform(0.1, 0.9)))
    layers = [
        ("over", mm(d), mm(d * random.uniform(1.002, 1.03))),
        ("grows", *screen),
        ("over", mm(over), mm(over + random.uniform(0.2, 2.0))),
        ("grows", *outer),
        ("grows", strap, strap),
        ("grows", *jacket),
    ]
    # Readings about diameters that the layers may have, off by a little.
    at = 0.0
    readings = []
    for index, (kind, low, high) in enumerate(layers):
        at = random.uniform(low, high) if kind == "over" else at + 2 * random.uniform(low, high)
        if index != 4 and random.random() < 0.7:
            middle = at + random.choice([0.0, 0.0, random.gauss(0, 0.5)])
            half = random.uniform(0.02, 0.25)
            readings.append((index, (mm(middle - half), mm(middle + half))))
    return layers, readings


def main():
    random.seed(11)
    cases = []
    while len(cases) < 300:
        layers, readings = case()
        if not any(index < 4 for index, _ in readings):
            continue
        slack = slack_mm(layers, readings)
        if abs(slack) < BORDER_MM:
            continue
        cases.append({
            "layers": [{"kind": kind, "least_mm": low, "greatest_mm": high} for kind, low, high in layers],
            "readings": [{"layer": index, "least_mm": low, "greatest_mm": high} for index, (low, high) in readings],
            "slack_mm": float(slack),
            "fits": bool(slack > 0),
        })
    fits = sum(case["fits"] for case in cases)
    assert 60 < fits < 240, fits
    (HERE / "cases.json").write_text(json.dumps(cases, indent=1) + "\n")
    print(fits, "of", len(cases), "fit")


main()
