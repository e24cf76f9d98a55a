"""Solves the field of a coaxial body with an arm at right angles, and says how far along the body the arm is felt.

Usage: python junction_reach_with_ngsolve.py [--into FILE] [--compare]
Writes junction-reach.json beside this folder, or FILE; `--compare` writes nothing and prints the differences from the numbers that stand there.
It ends with 1 where a disturbance does not decay as its closed form says, or where the same check does not refuse the other mode's constant.

Why its own room: the sections beside it are axisymmetric, a junction is not.
Invariants: lengths in mm; the potential is 1 on the conductor and 0 on the screen; a deviation is |E| over that of endless coaxial cylinders, less 1.
What is printed as `error_estimate` is the difference of the last two refinements, no more.
Not here: any joint's real inside; only two cylinders meeting at right angles.
Source: separation of variables in an annulus, textbook.

            z                   body along z, endless both ways; arm along +x
      |  |  |  |                a  conductor's radius, b  screen's radius
      |  |  |  +---- screen     a quarter is solved: y > 0, z > 0
      |  |  +------- conductor
      |  |  ........ x
"""

import argparse
import json
import math
import sys
import time
from datetime import date
from importlib.metadata import version
from pathlib import Path

import netgen.meshing as netgen_meshing
import ngsolve as ng
import numpy as np
from netgen.occ import Box, Cylinder, Dir, OCCGeometry, Pnt
from scipy.optimize import brentq
from scipy.special import jv, yv

CONDUCTOR, SCREEN, MID = 10.0, 30.0, 20.0
# Where the body and the arm are cut without flux: so far off that an echo is below 1e-6 of what it is an echo of.
BODY_END, ARM_END = 180.0, 120.0
# (order, largest element, element at the edge where the screens meet) of the refinements, mm; a third of the largest on the conductors.
LEVELS = [(5, 12.0, 1.5), (6, 10.0, 1.0), (7, 9.0, 0.7)]
# Lines along the body: (name, side towards the arm or away, radius). Just off the surfaces, where the mesh surely reaches.
LINES = [
    (f"{place} {side}", sign, radius)
    for side, sign in (("towards the arm", 1), ("away from the arm", -1))
    for place, radius in (("conductor", CONDUCTOR + 0.01), ("middle", MID), ("screen", SCREEN - 0.01))
]
# Distances that are written, in body radii.
SHOWN = [1.0, 1.25, 1.5, 1.75, 2.0, 2.25, 2.5, 3.0]
# Where a mode's decay is fitted, mm: nearer there are others, farther there is the mesh's own error.
FITTED = (45.0, 75.0)
# What a fitted decay constant may differ from its closed form; the constants of m = 0 and 1 are 5.6 % apart.
RATE_CLOSE = 0.01
N_ANGLES = 48


def decay_constant(order, ratio):
    """Least k·b of exp(-kz)·(J_m(kr)·Y_m(ka) − J_m(ka)·Y_m(kr))·cos mθ that vanishes at r = a and b; `ratio` is a/b."""

    def at_screen(x):
        return jv(order, x) * yv(order, x * ratio) - jv(order, x * ratio) * yv(order, x)

    steps = np.arange(1.0, 40.0, 0.05)
    for low, high in zip(steps, steps[1:]):
        if at_screen(low) * at_screen(high) < 0:
            return brentq(at_screen, low, high, xtol=1e-13)
    raise ValueError(f"no root below 40 for m = {order}, a/b = {ratio}")


def quarter():
    """What lies between conductor and screen, of y > 0 and z > 0."""

    def arms(radius):
        body = Cylinder(Pnt(0, 0, -10), Dir(0, 0, 1), r=radius, h=BODY_END + 20)
        return body + Cylinder(Pnt(0, 0, 0), Dir(1, 0, 0), r=radius, h=ARM_END + 10)

    outer, inner = arms(SCREEN), arms(CONDUCTOR)
    outer.faces.name, inner.faces.name = "screen", "conductor"
    box = Box(Pnt(-100, 0, 0), Pnt(ARM_END, 100, BODY_END))
    box.faces.name = "cut"
    return (outer - inner) * box


def mesh_of(largest, at_edge):
    """Mesh, fine where the two screens meet: there the dielectric is re-entrant and the field has no bound."""
    solid = quarter()
    for face in solid.faces:
        if face.name == "conductor":
            face.maxh = largest / 3
    n_edges = 0
    for edge in solid.edges:
        c = edge.center
        if abs(c.x - c.z) < 1e-6 and math.hypot(c.x, c.y) > 0.8 * SCREEN:
            edge.maxh = at_edge
            n_edges += 1
    if not n_edges:
        raise SystemExit("the edge where the screens meet was not found")
    mesh = ng.Mesh(OCCGeometry(solid).GenerateMesh(maxh=largest, grading=0.35))
    return mesh, solid.mass


class Solution:
    """Potential of one refinement."""

    def __init__(self, order, largest, at_edge):
        self.mesh, volume = mesh_of(largest, at_edge)
        self.mesh.Curve(order)
        found = ng.Integrate(1, self.mesh)
        if abs(found - volume) > 1e-5 * volume:
            raise SystemExit(f"the mesh holds {found} mm3, the drawing {volume}")
        space = ng.H1(self.mesh, order=order, dirichlet="conductor|screen")
        self.n_unknowns = space.ndof
        trial, test = space.TnT()
        form = ng.BilinearForm(space, symmetric=True, condense=True)
        form += ng.grad(trial) * ng.grad(test) * ng.dx
        form.Assemble()
        potential = ng.GridFunction(space)
        potential.Set(self.mesh.BoundaryCF({"conductor": 1.0}, default=0.0), definedon=self.mesh.Boundaries("conductor|screen"))
        load = (-form.mat * potential.vec).Evaluate()
        load.data += form.harmonic_extension_trans * load
        inverse = form.mat.Inverse(space.FreeDofs(coupling=True), inverse="sparsecholesky")
        potential.vec.data += inverse * load
        potential.vec.data += form.harmonic_extension * potential.vec
        self.potential = potential
        self.strength = ng.Norm(ng.grad(potential))

    def deviation(self, sign, radius, distances):
        """|E| over the coaxial value, less 1, at distances along the body."""
        n = len(distances)
        places = self.mesh(np.full(n, sign * radius), np.zeros(n), np.array(distances))
        return self.strength(places).ravel() * radius * math.log(SCREEN / CONDUCTOR) - 1

    def amplitude(self, order, distances):
        """Share of cos mθ in the potential at the middle radius, without the coaxial potential."""
        angles = np.linspace(0.0, math.pi, N_ANGLES + 1)
        weights = np.full(N_ANGLES + 1, (2.0 if order else 1.0) / N_ANGLES)
        weights[[0, -1]] /= 2
        coaxial = math.log(SCREEN / MID) / math.log(SCREEN / CONDUCTOR)
        found = []
        for z in distances:
            x, y = MID * np.cos(angles), np.maximum(MID * np.sin(angles), 0.0)
            values = self.potential(self.mesh(x, y, np.full(N_ANGLES + 1, z))).ravel() - coaxial
            found.append(float(np.sum(weights * values * np.cos(order * angles))))
        return np.array(found)


def reach(distances, deviations, bound):
    """Distance in body radii past which the deviation stays below a bound, between samples by its logarithm; None where it is below on the whole line."""
    above = np.flatnonzero(np.abs(deviations) >= bound)
    if not len(above):
        return None
    last = above[-1]
    if last + 1 == len(distances):
        raise SystemExit(f"the deviation is above {bound} to the end of the line")
    high, low = (math.log(abs(deviations[k])) for k in (last, last + 1))
    share = (high - math.log(bound)) / (high - low)
    return (distances[last] + share * (distances[last + 1] - distances[last])) / SCREEN


def numbers(solution):
    """All numbers of one refinement by name."""
    found = {}
    for name, sign, radius in LINES:
        # On the arm's side the line begins beyond the arm, whose screen has its sharp edge at 1 b.
        start = 1.0 if sign < 0 else 1.05 * SCREEN
        shown = [x for x in SHOWN if x * SCREEN > start]
        for x, value in zip(shown, solution.deviation(sign, radius, [x * SCREEN for x in shown])):
            found[f"deviation, {name}, {x:g} b"] = float(value)
        along = np.arange(start, 4.0 * SCREEN, 0.25)
        deviations = solution.deviation(sign, radius, along)
        for bound, label in ((1e-2, "1 %"), (1e-3, "0.1 %")):
            found[f"reach to {label}, {name}, b"] = reach(along, deviations, bound)
    low, high = FITTED
    distances = np.arange(low, high + 0.1, 2.5)
    for order in (0, 1):
        amplitudes = solution.amplitude(order, distances)
        slope = np.polyfit(distances, np.log(np.abs(amplitudes)), 1)[0]
        found[f"decay constant times b, m = {order}, fitted"] = float(-slope * SCREEN)
        at_axis = float(amplitudes[0] * math.exp(decay_constant(order, CONDUCTOR / SCREEN) * low / SCREEN))
        found[f"amplitude at the arm's axis, m = {order}"] = at_axis
    return found


def is_rate(fitted, order):
    """Whether a fitted decay constant is the closed form's."""
    return abs(fitted / decay_constant(order, CONDUCTOR / SCREEN) - 1) < RATE_CLOSE


def solve():
    """The document: all refinements, their last difference, and the closed forms."""
    levels, meshes = [], []
    for order, largest, at_edge in LEVELS:
        started = time.process_time()
        solution = Solution(order, largest, at_edge)
        levels.append(numbers(solution))
        meshes.append({"order": order, "largest_mm": largest, "at_edge_mm": at_edge, "elements": solution.mesh.ne, "unknowns": solution.n_unknowns})
        print(f"# {meshes[-1]}, {time.process_time() - started:.1f} s", flush=True)
    rows = []
    for name, value in levels[-1].items():
        before = levels[-2][name]
        is_number = value is not None and before is not None
        rows.append({"name": name, "value": value, "error_estimate": abs(value - before) if is_number else None})
    ratios = (0.2, 0.3, CONDUCTOR / SCREEN, 0.4, 0.5, 0.6)
    return {
        "about": "invented for this check: two coaxial cylinders and an arm of the same radii at right angles",
        "geometry_mm": {"conductor": CONDUCTOR, "screen": SCREEN, "middle": MID, "body_end": BODY_END, "arm_end": ARM_END},
        "distance": "from the arm's axis, in radii b of the screen",
        "refinements": meshes,
        "versions": {p: version(p) for p in ("ngsolve", "netgen-mesher", "netgen_occt", "numpy", "scipy")},
        "date": date.today().isoformat(),
        "closed_form_decay_times_b": [
            {"ratio_a_b": round(ratio, 6), **{f"m{m}": decay_constant(m, ratio) for m in (0, 1, 2)}} for ratio in ratios
        ],
        "numbers": rows,
    }


def rates_hold(document):
    """Whether each mode decays as its closed form says, and each is told from the other's."""
    fitted = [
        next(row["value"] for row in document["numbers"] if row["name"] == f"decay constant times b, m = {m}, fitted")
        for m in (0, 1)
    ]
    holds = all(is_rate(fitted[m], m) for m in (0, 1))
    is_told_apart = not any(is_rate(fitted[m], 1 - m) for m in (0, 1))
    for m in (0, 1):
        closed = decay_constant(m, CONDUCTOR / SCREEN)
        print(f"m = {m}: fitted {fitted[m]:.6f}, closed form {closed:.6f}, relative {fitted[m] / closed - 1:+.1e}")
    return holds and is_told_apart


def compare(document, path):
    """Prints each number beside the one that stands in a file."""
    given = {row["name"]: row for row in json.loads(path.read_text(encoding="utf-8"))["numbers"]}
    for row in document["numbers"]:
        other = given[row["name"]]["value"]
        if row["value"] is None or other is None:
            print(f"{row['name']:45} {row['value']} given {other}")
            continue
        print(f"{row['name']:45} {row['value']:.8g} given {other:.8g} difference {row['value'] - other:+.1e}")


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--into")
    parser.add_argument("--compare", action="store_true")
    options = parser.parse_args()
    ng.SetNumThreads(1)
    netgen_meshing.SetMessageImportance(0)
    document = solve()
    beside = Path(__file__).resolve().parent.parent / "junction-reach.json"
    if options.compare:
        compare(document, beside)
    else:
        target = Path(options.into) if options.into else beside
        target.write_text(json.dumps(document, indent=1) + "\n", encoding="utf-8")
    if not rates_hold(document):
        sys.exit("a disturbance does not decay as its closed form says, or the check tells no mode from the other")


if __name__ == "__main__":
    main()
