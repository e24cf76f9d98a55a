"""Length of tape on a cylinder, integrated along the curve itself: no formula of a turn is used.

Each pass is a spiral: its axis moves by the advance in one turn; a pass is followed turn by turn with
scipy.integrate.quad over |dr/dphi|, the middle of the tape at the radius of that pass.
"""

import csv
import math
import pathlib
import random

import numpy
from scipy.integrate import quad

HERE = pathlib.Path(__file__).parent.parent


def pass_mm(radius, advance, turns):
    def speed(phi, step=1e-4):
        def place(angle):
            along = advance * angle / (2 * math.pi)
            return numpy.array([radius * math.cos(angle), radius * math.sin(angle), along])

        return float(numpy.linalg.norm(place(phi + step) - place(phi - step)) / (2 * step))

    total = 0.0
    full = int(turns)
    for turn in range(full):
        total += quad(speed, 2 * math.pi * turn, 2 * math.pi * (turn + 1), epsrel=1e-10)[0]
    rest = turns - full
    if rest > 0:
        total += quad(speed, 2 * math.pi * full, 2 * math.pi * turns, epsrel=1e-10)[0]
    return total


def build_up_mm(thickness, lap):
    """Thickness that one pass builds: tape of volume w t over an advance w (1 - lap)."""
    return thickness / (1 - lap)


def length_m(width, thickness, under, stretch, lap, passes, drawn):
    advance = width * (1 - lap)
    radius = under / 2
    total = 0.0
    for _ in range(passes):
        grown = build_up_mm(thickness, lap)
        total += pass_mm(radius + grown / 2, advance, stretch / advance + 1)
        radius += grown
    return total / drawn / 1e3


def main():
    random.seed(7)
    rows = [(50, 1, 40, 100, 0.0, 1, 1.0), (50, 1, 40, 100, 0.5, 1, 1.0), (50, 1, 40, 100, 0.5, 2, 1.0), (50, 1, 40, 100, 0.5, 2, 2.0)]
    for _ in range(16):
        rows.append((
            random.choice([19, 25, 38, 50]),
            random.choice([0.13, 0.25, 0.76, 1.5]),
            random.randrange(120, 600) / 10,
            random.randrange(20, 400),
            random.choice([0.0, 0.25, 0.5, 0.66]),
            random.choice([1, 2, 3]),
            random.choice([1.0, 1.5, 2.0]),
        ))
    with open(HERE / "values.csv", "w", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["id", "check", "width_mm", "thickness_mm", "under_mm", "stretch_mm", "lap", "passes", "drawn", "expected", "rel_tol", "source", "sure"])
        for index, row in enumerate(rows):
            out.writerow([f"helix-{index}", "tape_length", *row, repr(length_m(*row)), 1e-7, "script/helix.py", "CF"])


main()
