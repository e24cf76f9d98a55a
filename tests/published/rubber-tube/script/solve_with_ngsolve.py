"""Solves uniform and composite rubber tubes with NGSolve, holds them against quadrature, and solves tubes that change along the axis.

Usage: python solve_with_ngsolve.py [--into FOLDER] [--compare] [--given FILE] [--only tubes|profiles]
Writes tubes.json and profiles.json beside this folder, or into FOLDER; `--compare` writes nothing and prints the largest difference from what stands there.
`--given` reads tubes of one ring (`outer_mm`, `law`) with a `pressure_mpa` from elsewhere and prints how far ours are from it.
It ends with 1 where a tube differs from its quadrature, or where the same check does not refuse a wrong formula.

Why its own room: the lists of cases; the mechanics are in tube.py, the second witness in quadrature.py.
Invariants: `error_estimate` is the relative difference of the last two refinements, not below 1e-13; no bound.
Not here: any product's dimensions; all are invented.
"""

import argparse
import json
import math
import sys
from datetime import date
from importlib.metadata import version
from pathlib import Path

import numpy as np

sys.dont_write_bytecode = True  # no caches beside the sources
import quadrature  # noqa: E402
from tube import Tube, quadrilaterals  # noqa: E402

SOFT = {"kind": "neo-hookean", "mu_mpa": 0.5}
TWO_TERMS = {"kind": "mooney-rivlin", "c1_mpa": 0.18, "c2_mpa": 0.04}
MUCH_C2 = {"kind": "mooney-rivlin", "c1_mpa": 0.1, "c2_mpa": 0.15}
LOOSE_CHAIN = {"kind": "gent", "mu_mpa": 0.5, "limit": 40.0}
SHORT_CHAIN = {"kind": "gent", "mu_mpa": 0.5, "limit": 9.0}
STIFF = {"kind": "neo-hookean", "mu_mpa": 1.5}
LAWS = {
    "neo-hookean": SOFT,
    "mooney-rivlin": TWO_TERMS,
    "mooney-rivlin-much-c2": MUCH_C2,
    "gent-40": LOOSE_CHAIN,
    "gent-9": SHORT_CHAIN,
}
BORE = 8.0
OUTERS = [11.0, 20.0, 40.0]
STRETCHES = [1.05, 1.2, 1.5, 2.0, 2.5]
COMPOSITES = {
    "stiff-in-soft": [(11.0, STIFF), (20.0, SOFT)],
    "soft-in-stiff": [(14.0, SOFT), (20.0, STIFF)],
    "gent-in-mooney-rivlin": [(12.0, SHORT_CHAIN), (24.0, TWO_TERMS)],
    "three-rings": [(10.0, STIFF), (26.0, LOOSE_CHAIN), (29.0, {"kind": "mooney-rivlin", "c1_mpa": 0.4, "c2_mpa": 0.1})],
}
COMPOSITE_STRETCHES = [1.1, 1.3, 1.6, 2.0]
ENDS = ["fixed-length", "free"]
HEIGHT = 8.0
# (degree, elements across a ring) of the two refinements of a tube that is the same all along.
LEVELS = [(6, 3), (8, 4)]
# What ours and the quadrature may differ by, relative; a formula without the axial stretch is off by 1e-4 at least.
CLOSE = 1e-9


def between(low, high, n):
    """n + 1 radii from low to high, each the same factor above the last."""
    return [low * (high / low) ** (k / n) for k in range(n + 1)]


def uniform_cases():
    """(name, rings, stretches) of every tube that is the same all along."""
    for name, law in LAWS.items():
        for outer in OUTERS:
            yield f"{name}-to-{outer:g}", [(outer, law)], STRETCHES
    for name, rings in COMPOSITES.items():
        yield name, rings, COMPOSITE_STRETCHES


def solved(bore, rings, ends, stretches, level):
    """[(mean pressure, spread along the bore, axial stretch)] at each stretch, which rise."""
    order, n = level
    radii = [bore]
    for outer, _ in rings:
        radii += between(radii[-1], outer, n)[1:]

    def matter(r, _):
        return next(k for k, (outer, _) in enumerate(rings, 1) if r < outer)

    tube = Tube(quadrilaterals(radii, [0.0, HEIGHT], matter), [law for _, law in rings], ends, order)
    found, reached = [], 1.0
    for stretch in stretches:
        tube.widen_to(stretch, reached)
        reached = stretch
        along = [p for p, _ in tube.along([0.01 * HEIGHT, 0.3 * HEIGHT, 0.77 * HEIGHT, 0.99 * HEIGHT], [1] * 4)]
        mean = tube.mean_pressure()
        found.append((mean, (max(along) - min(along)) / mean, tube.axial_stretch))
    return found


def tubes():
    """Every tube at every stretch, with the second witness beside it."""
    answers = []
    for name, rings, stretches in uniform_cases():
        for ends in ENDS:
            coarse, fine = (solved(BORE, rings, ends, stretches, level) for level in LEVELS)
            for stretch, (before, _, _), (pressure, spread, axial) in zip(stretches, coarse, fine):
                answer = {
                    "case": f"{name}/{ends}/{stretch:g}",
                    "bore_mm": BORE,
                    "rings": [{"outer_mm": outer, "law": law} for outer, law in rings],
                    "ends": ends,
                    "stretch": stretch,
                    "pressure_mpa": pressure,
                    "axial_stretch": axial,
                    "error_estimate": max(abs(pressure / before - 1), 1e-13),
                    "spread_ratio": spread,
                }
                witness, its_axial = quadrature.tube(answer)
                answer["quadrature_pressure_mpa"] = float(witness)
                answer["quadrature_axial_stretch"] = float(its_axial)
                answers.append(answer)
        print(f"{name}: {max(difference(a) for a in answers if a['case'].startswith(name + '/')):.1e} from quadrature")
    return answers


def difference(answer):
    """Relative difference of ours and the quadrature, the larger of pressure and axial stretch."""
    return max(
        abs(answer["pressure_mpa"] / answer["quadrature_pressure_mpa"] - 1),
        abs(answer["axial_stretch"] / answer["quadrature_axial_stretch"] - 1),
    )


def check(answers):
    """Whether all tubes agree with their quadrature, and every free one is refused without its axial stretch."""
    off = [a["case"] for a in answers if difference(a) > CLOSE]
    blind = []
    for answer in answers:
        if answer["ends"] == "free":
            wrong = float(quadrature.at_axial_stretch(answer, quadrature.mpf(1))[0])
            if abs(answer["pressure_mpa"] / wrong - 1) <= CLOSE:
                blind.append(answer["case"])
    print(f"{len(answers)} tubes; off: {off or 'none'}; wrong formula not refused: {blind or 'none'}")
    return not off and not blind


def given(path):
    """How far ours are from pressures computed elsewhere."""
    for case in json.loads(Path(path).read_text()):
        rings = [(case["outer_mm"], case["law"])]
        pressure, _, _ = solved(case["bore_mm"], rings, case["ends"], [case["stretch"]], LEVELS[-1])[0]
        print(f"{case['case']}: {pressure:.15g} MPa, {pressure / case['pressure_mpa'] - 1:+.1e}")


def differences(ours, stored, path=""):
    """Relative differences of all numbers of two documents of one shape."""
    if isinstance(ours, dict):
        for key, value in ours.items():
            if key not in ("error_estimate", "spread_ratio", "date", "versions", "refinements"):
                yield from differences(value, stored[key], f"{path}/{key}")
    elif isinstance(ours, list):
        assert len(ours) == len(stored), path
        for k, (one, other) in enumerate(zip(ours, stored)):
            yield from differences(one, other, f"{path}/{k}")
    elif isinstance(ours, float):
        yield abs(ours - stored) / max(abs(stored), 1e-3), path


def written(document, path, is_compared):
    if is_compared:
        print(path.name, "largest relative difference:", max(differences(document, json.loads(path.read_text()))))
    else:
        path.write_text(json.dumps(document, indent=1) + "\n")


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--into", default=str(Path(__file__).resolve().parent.parent))
    parser.add_argument("--compare", action="store_true")
    parser.add_argument("--given")
    parser.add_argument("--only", choices=["tubes", "profiles"])
    asked = parser.parse_args()
    if asked.given:
        return given(asked.given)
    is_right = True
    if asked.only != "profiles":
        answers = tubes()
        is_right = check(answers)
        written(answers, Path(asked.into) / "tubes.json", asked.compare)
    if asked.only != "tubes":
        import profiles  # noqa: PLC0415

        written(profiles.document(), Path(asked.into) / "profiles.json", asked.compare)
    return 0 if is_right else 1


if __name__ == "__main__":
    sys.exit(main())
