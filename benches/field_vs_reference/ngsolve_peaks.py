"""The opponent: how soon NGSolve, one thread, has the peaks of the half joint A4-15 to 1 %.

Usage: python ngsolve_peaks.py [--runs N] [--sweep] [--json FILE]
`--sweep` tries every combination, keeps those within 1 % of the stored answers, and times the quickest again (some ten minutes).
Without it the plans of BEST are timed, which a sweep found; a plan that misses 1 % is shown and never wins.
`--json` writes the row of the best median.
Timed is the CPU time of this thread: geometry, mesh, curving, space, assembly, factorisation, solution, peaks; imports and the reading of the case are not.
Invariants: the opponent gets every help: nothing is sampled that no wanted number needs, and what can be prepared before the clock starts is.
Not here: our own solver's time (compare.sh).
"""

import argparse
import itertools
import json
import math
import os
import statistics
import sys
import time
from pathlib import Path

# One thread also in the libraries below; they read this once, when they are loaded.
for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"

import netgen.meshing as netgen_meshing
import ngsolve as ng
import numpy as np
from netgen.geom2d import SplineGeometry

ROOT = Path(__file__).resolve().parents[2]
SECTIONS = ROOT / "tests" / "published" / "field-sections"
sys.path.insert(0, str(SECTIONS / "script"))
sys.dont_write_bytecode = True  # no caches beside the sources
from section import VACUUM_PERMITTIVITY_PF_PER_MM, Section  # noqa: E402

TOLERANCE = 0.01
PEAKS = ("C", "Emax_ins", "Emax_body", "Emax_electrode_end", "Emax_tip", "Et_max")
STAGES = ("mesh", "assemble", "solve", "evaluate")
# Curves that can carry a wanted peak, the interface last.
SAMPLED = ("electrode_end", "defl_tip", "cond", "iface")
# Coordinates of a point, made once: making an expression costs more than evaluating it.
PLACE = ng.CoefficientFunction((ng.x, ng.y))
# Samples on an edge, by order; ends included.
SHARES = {2: 4, 3: 5, 4: 6, 5: 7, 6: 8}


class Prepared:
    """What the clock does not count: the case, its curves as pieces, the stored answers."""

    def __init__(self):
        section = Section(SECTIONS / "A4-15.case.json")
        answers = json.loads((SECTIONS / "A4-15.answers.json").read_text(encoding="utf-8"))
        self.wanted = {a["name"]: a["value"] for a in answers["answers"] if a["name"] in PEAKS}
        self.points = section.points
        self.section = section
        self.pieces = [(curve, self.cut(curve)) for curve in section.curves.values()]
        self.voltage = section.voltage()
        self.discs = [(d["at"], d["radius"]) for d in section.leave_out]
        self.permittivity = {r["name"]: section.permittivity(i) for i, r in enumerate(section.regions, 1)}
        scale = 2 * math.pi * VACUUM_PERMITTIVITY_PF_PER_MM
        self.weight = ng.CoefficientFunction([scale * e for e in self.permittivity.values()]) * ng.x
        self.held = "|".join(section.potentials)
        values = set(section.potentials.values()) - {0.0}
        self.raised = [("|".join(t for t, v in section.potentials.items() if v == value), value) for value in values]

    @staticmethod
    def cut(curve):
        """Arcs as rational pieces of a quarter turn at most: [(knee, end or None)]."""
        if not curve.center:
            return []
        _, sweep = curve.angles
        n_pieces = max(1, math.ceil(abs(sweep) / math.radians(91)))
        found = []
        for k in range(n_pieces):
            reach = 1 / math.cos(sweep / n_pieces / 2)
            middle = curve.point((k + 0.5) / n_pieces)
            knee = [c + reach * (m - c) for c, m in zip(curve.center, middle)]
            found.append((knee, curve.point((k + 1) / n_pieces) if k < n_pieces - 1 else None))
        return found


def mesh_of(prepared, plan):
    geometry = SplineGeometry()
    handles = [geometry.AppendPoint(*p) for p in prepared.points]
    for index, name in enumerate(prepared.permittivity, 1):
        geometry.SetMaterial(index, name)
    for curve, pieces in prepared.pieces:
        sides = {"leftdomain": curve.sides[0], "rightdomain": curve.sides[1], "bc": curve.tag}
        if curve.tag in plan["sizes"]:
            sides["maxh"] = plan["sizes"][curve.tag]
        if not pieces:
            geometry.Append(["line", handles[curve.start], handles[curve.end]], **sides)
            continue
        before = handles[curve.start]
        for knee, end in pieces:
            after = handles[curve.end] if end is None else geometry.AppendPoint(*end)
            geometry.Append(["spline3", before, geometry.AppendPoint(*knee), after], **sides)
            before = after
    made = geometry.GenerateMesh(
        maxh=plan["maxh"],
        grading=plan["grading"],
        optsteps2d=plan["optsteps"],
        delaunay2d=plan["delaunay"],
    )
    mesh = ng.Mesh(made)
    mesh.Curve(plan["order"])
    return mesh


def solve(prepared, plan, mesh, clock):
    """Potential, and energy form; condensed or whole, with the plan's direct solver."""
    order = plan["order"]
    space = ng.H1(mesh, order=order, dirichlet=prepared.held)
    trial, test = space.TnT()
    form = ng.BilinearForm(space, symmetric=True, condense=plan["condense"])
    form += prepared.weight * ng.grad(trial) * ng.grad(test) * ng.dx
    form.Assemble()
    potential = ng.GridFunction(space)
    # A constant needs the corners' unknowns only; the library's own Set takes half a millisecond more.
    corners = potential.vec.FV().NumPy()[: mesh.nv]
    for tags, value in prepared.raised:
        is_held = space.GetDofs(mesh.Boundaries(tags))
        corners[[k for k in range(mesh.nv) if is_held[k]]] = value
    clock("assemble")
    free = space.FreeDofs(coupling=plan["condense"])
    inverse = form.mat.Inverse(free, inverse=plan["inverse"])
    load = (form.mat * potential.vec).Evaluate()
    if plan["condense"]:
        load.data += form.harmonic_extension_trans * load
    potential.vec.data -= inverse * load
    if plan["condense"]:
        potential.vec.data += form.harmonic_extension * potential.vec
    clock("solve")
    return potential, form


def peaks_of(prepared, plan, mesh, potential, form):
    """The six numbers, from samples on the curves that can carry them."""
    n_shares = SHARES[plan["order"]]
    rule = ng.IntegrationRule(
        points=[(k / (n_shares - 1),) for k in range(n_shares)], weights=[0.0] * n_shares
    )
    slope = ng.BoundaryFromVolumeCF(ng.grad(potential))
    groups = [mesh.MapToAllElements(rule, mesh.Boundaries(tag)) for tag in SAMPLED]
    tag = np.repeat(np.arange(len(SAMPLED)), [len(group) for group in groups])
    points = np.concatenate(groups)
    r, z = PLACE(points).T
    slope_r, slope_z = slope(points).T
    strength = np.hypot(slope_r, slope_z)
    for at, radius in prepared.discs:
        strength[np.hypot(r - at[0], z - at[1]) < radius] = 0.0
    found = {}
    for k, name in enumerate(("Emax_electrode_end", "Emax_tip", "Emax_ins")):
        found[name] = float(strength[tag == k].max())
    # The body's peak lies on its electrodes, by the maximum principle and by the stored place.
    found["Emax_body"] = max(found["Emax_electrode_end"], found["Emax_tip"])
    # The interface is straight along z; an edge's slope along itself is the same from both sides.
    found["Et_max"] = float(np.abs(slope_z[(tag == len(SAMPLED) - 1) & (strength > 0)]).max())
    # Condensed or whole: inner unknowns are at rest, so both matrices give the whole energy.
    energy2 = ng.InnerProduct(form.mat * potential.vec, potential.vec)
    found["C"] = energy2 / prepared.voltage**2
    return found


def run(prepared, plan):
    """Seconds of each stage, the numbers, and the size."""
    seconds, last = {}, time.thread_time()

    def clock(stage):
        nonlocal last
        now = time.thread_time()
        seconds[stage] = seconds.get(stage, 0.0) + now - last
        last = now

    mesh = mesh_of(prepared, plan)
    clock("mesh")
    potential, form = solve(prepared, plan, mesh, clock)
    found = peaks_of(prepared, plan, mesh, potential, form)
    clock("evaluate")
    return seconds, found, (mesh.ne, potential.space.ndof)


def worst(prepared, found):
    errors = {name: found[name] / prepared.wanted[name] - 1 for name in PEAKS}
    name = max(errors, key=lambda key: abs(errors[key]))
    return abs(errors[name]), name


def plan_of(order, maxh, end, tip, iface, grading, optsteps, delaunay, condense=False, inverse="sparsecholesky"):
    sizes = {"electrode_end": end, "defl_tip": tip}
    if iface:
        sizes["iface"] = iface
    return {
        "label": f"p{order} h{maxh:g} end{end:g} tip{tip:g} iface{iface:g} g{grading:g} opt{optsteps} {'delaunay' if delaunay else 'front'}"
        f" {'cond' if condense else 'whole'} {inverse}",
        "order": order,
        "maxh": maxh,
        "sizes": sizes,
        "grading": grading,
        "optsteps": optsteps,
        "delaunay": delaunay,
        "condense": condense,
        "inverse": inverse,
    }


def sweep_plans():
    """Combinations of the sweep; solvers are tried on the quickest few only."""
    for order, maxh, scale, ratio, grading, optsteps, iface, delaunay in itertools.product(
        (2, 3, 4, 5),
        (6.0, 10.0, 40.0),
        (0.35, 0.5, 0.8, 1.2, 2.0, 3.0, 6.0),
        (0.5, 1.0, 2.0),
        (0.3, 0.5, 0.8),
        (0, 2),
        (0, 4.0),
        (False, True),
    ):
        yield plan_of(order, maxh, scale, scale * ratio, iface, grading, optsteps, delaunay)


# The quickest that the sweeps found, by order.
BEST = (
    plan_of(4, 40.0, 4.0, 8.0, 0, 0.8, 0, True, True),
    plan_of(4, 40.0, 4.0, 8.0, 0, 0.8, 0, True, True, "umfpack"),
    plan_of(4, 15.0, 2.0, 2.0, 0, 0.8, 0, True, True),
    plan_of(3, 25.0, 6.0, 2.0, 0, 0.6, 1, True, True),
    plan_of(5, 15.0, 2.0, 8.0, 0, 0.8, 0, True, True),
    plan_of(2, 40.0, 0.8, 0.4, 0, 0.5, 2, True),
)


def available_solvers():
    """Direct solvers of this installation that solve a small problem."""
    found = []
    mesh = ng.Mesh(netgen_square())
    space = ng.H1(mesh, order=2, dirichlet=".*")
    form = ng.BilinearForm(space, symmetric=True)
    trial, test = space.TnT()
    form += ng.grad(trial) * ng.grad(test) * ng.dx
    form.Assemble()
    for name in ("sparsecholesky", "umfpack", "pardiso"):
        try:
            form.mat.Inverse(space.FreeDofs(), inverse=name)
            found.append(name)
        except Exception:  # the library names no narrower one
            pass
    return found


def netgen_square():
    geometry = SplineGeometry()
    geometry.AddRectangle((0, 0), (1, 1), bc="rim")
    return geometry.GenerateMesh(maxh=0.3)


def timed(prepared, plans, n_runs):
    """Rows of medians; plans take turns, so that a busy spell of the machine meets them all."""
    taken = [[] for _ in plans]
    for round_index in range(n_runs + 2):
        for plan, rows in zip(plans, taken):
            seconds, found, size = run(prepared, plan)
            # The first two rounds fill caches and are not counted.
            if round_index >= 2:
                rows.append((sum(seconds.values()), seconds))
                plan["size"], plan["found"] = size, found
    return [row_of(prepared, plan, rows) for plan, rows in zip(plans, taken)]


def row_of(prepared, plan, rows):
    error, name = worst(prepared, plan["found"])
    return {
        "label": plan["label"],
        "total_ms": 1e3 * statistics.median(row[0] for row in rows),
        "least_ms": 1e3 * min(row[0] for row in rows),
        **{f"{s}_ms": 1e3 * statistics.median(row[1][s] for row in rows) for s in STAGES},
        "elements": plan["size"][0],
        "unknowns": plan["size"][1],
        "worst": error,
        "worst_name": name,
    }


def sweep(prepared, n_runs):
    """The quickest plans within tolerance, timed again, with every solver and with condensation."""
    passing, n_tried = [], 0
    for plan in sweep_plans():
        try:
            seconds, found, _ = run(prepared, plan)
        except Exception:  # some meshes fail; they are no result
            continue
        n_tried += 1
        total = sum(seconds.values())
        error, _ = worst(prepared, found)
        if error <= TOLERANCE:
            passing.append((total, plan))
    passing.sort(key=lambda row: row[0])
    print(f"# {n_tried} combinations solved, {len(passing)} within {TOLERANCE:.0%}", flush=True)
    chosen = [plan for _, plan in passing[:12]]
    for order in (2, 3, 4, 5):
        chosen += [p for _, p in passing if p["order"] == order and p not in chosen][:3]
    rows = timed(prepared, chosen, n_runs)
    ranked = sorted(zip(rows, chosen), key=lambda row: row[0]["total_ms"])
    more = []
    for _, plan in ranked[:4]:
        for condense, inverse in itertools.product((False, True), available_solvers()):
            if (condense, inverse) != (plan["condense"], plan["inverse"]):
                ending = f"{'cond' if condense else 'whole'} {inverse}"
                label = plan["label"].rsplit(" ", 2)[0] + " " + ending
                more.append({**plan, "condense": condense, "inverse": inverse, "label": label})
    return rows + timed(prepared, more, n_runs)


def table(rows):
    print("| plan | total ms | least | mesh | assemble | solve | evaluate | elements | unknowns | worst error |")
    print("|---|---|---|---|---|---|---|---|---|---|")
    for row in rows:
        print(
            f"| {row['label']} | {row['total_ms']:.1f} | {row['least_ms']:.1f} | "
            + " | ".join(f"{row[f'{stage}_ms']:.1f}" for stage in STAGES)
            + f" | {row['elements']} | {row['unknowns']} | {row['worst']:.2%} {row['worst_name']} |"
        )


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--runs", type=int, default=25)
    parser.add_argument("--sweep", action="store_true")
    parser.add_argument("--json", help="file for the best row")
    options = parser.parse_args()
    ng.SetNumThreads(1)
    netgen_meshing.SetMessageImportance(0)
    prepared = Prepared()
    rows = sweep(prepared, options.runs) if options.sweep else timed(prepared, list(BEST), options.runs)
    rows.sort(key=lambda row: row["total_ms"])
    table(rows)
    winners = [row for row in rows if row["worst"] <= TOLERANCE]
    if not winners:
        sys.exit("no plan reached the tolerance; run with --sweep")
    print(f"# best median {winners[0]['total_ms']:.2f} ms CPU, load {os.getloadavg()[0]:.1f}")
    if options.json:
        Path(options.json).write_text(json.dumps(winners[0], indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
