"""Solves electric sections with NGSolve: netgen mesh, curved elements, order 5 to 7, three refinements.

Usage: python solve_with_ngsolve.py CASE.json [MORE.case.json …] [--into FOLDER] [--fine FACTOR] [--compare]
Writes NAME.answers.json beside each case, or into FOLDER; `--compare` writes nothing and prints the differences from the answers that stand there.
Invariants: what is printed as `error_estimate` is the difference of the last two refinements, no more.
Not here: the reading of the file (section.py), the search for peaks (peaks.py).
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
import numpy
from netgen.csg import Pnt
from netgen.geom2d import SplineGeometry

sys.dont_write_bytecode = True  # no caches beside the sources
import peaks  # noqa: E402
from section import CUSP_ANGLE, VACUUM_PERMITTIVITY_PF_PER_MM, Section, is_smooth  # noqa: E402

# (order, size factor) of the three refinements.
LEVELS = [(5, 0.8), (6, 0.55), (7, 0.4)]
# Element size on an arc, as a share of its radius.
ARC_SHARE = 0.25
# Element size where curvature jumps, and where a cusp closes, as a share of the least radius there.
JUMP_SHARE = 0.04
CUSP_SHARE = 0.05
# Element size at a singular point, as a share of its surroundings, before the geometric layers.
SINGULAR_SHARE = 0.1
# Geometric layers about singular points, and the factor from one to the next.
# More layers would drown the slope in roundoff: 1e-15 of the voltage over the size of the last element.
HP_LEVELS = 7
HP_FACTOR = 0.2
# Element size at the centre of a disc that is left out, as a share of its radius.
DISC_SHARE = 0.3
# Corners of the library's reference triangle and square, by their number.
CORNERS = {
    3: ((1.0, 0.0), (0.0, 1.0), (0.0, 0.0)),
    4: ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)),
}
UNITS = {"capacitance": "pF", "potential-at": "kV"}


def vertex_size(section, vertex):
    """Element size at a point, mm; infinite where nothing asks for a small one."""
    near = [c for c in section.curves.values() if vertex in (c.start, c.end)]
    size = math.inf
    if not is_smooth(section.exponent(vertex)):
        size = SINGULAR_SHARE * min(min(c.length, c.radius) for c in near)
    if section.has_cusp(vertex):
        size = min(size, CUSP_SHARE * min(c.radius for c in near))
    elif is_jump(section, vertex):
        size = min(size, JUMP_SHARE * min(c.radius for c in near))
    for disc in section.leave_out:
        if math.dist(disc["at"], section.points[vertex]) < 1e-9:
            size = min(size, DISC_SHARE * disc["radius"])
    return size


def is_jump(section, vertex):
    """Whether curvature jumps along a curve through a point: the potential has r² log r there, its slope converges slowly."""
    if section.has_cusp(vertex):
        return False
    sectors = section.sectors(vertex)
    for first in range(len(sectors)):
        turn = 0.0
        for _, (angle, _, _, last) in zip(sectors, sectors[first:] + sectors[:first]):
            turn += angle
            radii = sectors[first][2].radius, last.radius
            is_straight_on = abs(turn - math.pi) < CUSP_ANGLE
            if is_straight_on and not math.isclose(*radii, rel_tol=1e-6):
                return True
    return False


def mesh_of(section, factor):
    """As `mesh_with`; the mesher gives up on some sizes where a cusp is thin, and slightly smaller ones cure it."""
    for attempt in range(8):
        try:
            return mesh_with(section, factor * 0.95**attempt, 0.35 - 0.02 * attempt)
        except Exception as refusal:  # the library names no narrower one
            last = refusal
    raise last


def mesh_with(section, factor, grading):
    """Mesh with one boundary name `c<number>` for each curve and one material for each region."""
    geometry = SplineGeometry()
    handles, is_any_layered = [], False
    for vertex, point in enumerate(section.points):
        size, more = factor * vertex_size(section, vertex), {}
        if size < math.inf:
            more["maxh"] = size
        if is_jump(section, vertex) or not is_smooth(section.exponent(vertex)):
            more["hpref"], is_any_layered = 1, True
        handles.append(geometry.AppendPoint(*point, **more))
    for index, region in enumerate(section.regions, 1):
        geometry.SetMaterial(index, region["name"])
    for curve in section.curves.values():
        append_curve(geometry, handles, curve, knots(section, curve, factor), factor)
    for disc in section.leave_out:
        for k in range(16):
            angle = math.pi * k / 8
            x, y = (c + disc["radius"] * f(angle) for c, f in zip(disc["at"], (math.cos, math.sin)))
            geometry.RestrictH(Pnt(x, y, 0), factor * DISC_SHARE * disc["radius"])
    span = max(p[0] for p in section.points) - min(p[0] for p in section.points)
    mesh = ng.Mesh(geometry.GenerateMesh(maxh=factor * 0.25 * span, grading=grading))
    if is_any_layered:
        mesh.RefineHP(HP_LEVELS, factor=HP_FACTOR)
    return mesh


def knots(section, curve, factor):
    """Shares at which a curve is cut: beside a cusp at the same distances on both its curves.

    Without them the chords of two arcs that part slowly may cross.
    """
    shares = {0.0, 1.0}
    if curve.center:
        n_pieces = math.ceil(abs(curve.angles[1]) / math.radians(40))
        shares.update(k / n_pieces for k in range(1, n_pieces))
    for vertex, is_start in ((curve.start, True), (curve.end, False)):
        if not any(
            turn < CUSP_ANGLE and region and curve.number in (a.number, b.number)
            for turn, region, a, b in section.sectors(vertex)
        ):
            continue
        near = [c for c in section.curves.values() if vertex in (c.start, c.end)]
        # Pieces stay below the sizes asked for elsewhere, or the mesher would cut them unevenly.
        at = section.points[vertex]
        rims = [d["radius"] for d in section.leave_out if math.dist(d["at"], at) < 1e-9]
        distance = factor * min([CUSP_SHARE * min(c.radius for c in near)] + [0.24 * r for r in rims])
        reach = 0.7 * min(min(c.length for c in near), min(c.radius for c in near))
        taken = []
        while distance < reach:
            taken.append(distance / curve.length if is_start else 1 - distance / curve.length)
            allowed = [0.24 * factor * r + 0.25 * max(distance - r, 0) for r in rims]
            distance += min([0.6 * distance] + allowed)
        if taken:
            low, high = min(taken), max(taken)
            shares = {s for s in shares if s in (0.0, 1.0) or not low - 0.02 < s < high + 0.02}
            shares.update(taken)
    return sorted(shares)


def append_curve(geometry, handles, curve, shares, factor):
    """Appends a curve cut at shares of its run, an arc as exact rational pieces."""
    sides = {"leftdomain": curve.sides[0], "rightdomain": curve.sides[1], "bc": f"c{curve.number}"}
    if curve.center:
        sides["maxh"] = factor * min(ARC_SHARE * curve.radius, curve.length / 2)
    before = handles[curve.start]
    for low, high in zip(shares, shares[1:]):
        after = handles[curve.end] if high == 1.0 else geometry.AppendPoint(*curve.point(high))
        if curve.center:
            reach = 1 / math.cos(curve.angles[1] * (high - low) / 2)
            middle = curve.point((low + high) / 2)
            knee = [c + reach * (m - c) for c, m in zip(curve.center, middle)]
            geometry.Append(["spline3", before, geometry.AppendPoint(*knee), after], **sides)
        else:
            geometry.Append(["line", before, after], **sides)
        before = after


class Solution:
    """Potential of one refinement, with what the search for peaks asks of it."""

    def __init__(self, section, order, factor):
        self.section = section
        started = time.process_time()
        self.mesh = mesh_of(section, factor)
        self.mesh.Curve(order)
        self.check_topology()
        self.seconds = {"mesh": time.process_time() - started}
        self.potential = self.solve(order)
        self.gradient = ng.grad(self.potential)
        self.seconds["solve"] = time.process_time() - started - self.seconds["mesh"]
        self._edges = None

    def check_topology(self):
        """Every region is there, and has the area of its outline: an unglued region would not show itself."""
        for region in self.section.regions:
            area = ng.Integrate(1, self.mesh, definedon=self.mesh.Materials(region["name"]))
            outline = 0.0
            for number in region["boundary"]:
                curve = self.section.curves[abs(number)]
                outline += math.copysign(1, number) * area_below(curve)
            if abs(area - abs(outline)) > 1e-6 * area:
                raise SystemExit(f"{self.section.name}: {region['name']} has area {area}, outline {outline}")

    def solve(self, order):
        """Potential in kV; floating conductors get theirs from zero charge."""
        section, mesh = self.section, self.mesh
        held = [c for c in section.curves.values() if section.is_held(c)]
        space = ng.H1(
            mesh,
            order=order,
            complex=section.frequency is not None,
            dirichlet="|".join(f"c{c.number}" for c in held),
        )
        self.n_unknowns = space.ndof
        trial, test = space.TnT()
        permittivity = mesh.MaterialCF(
            {r["name"]: section.permittivity(i) for i, r in enumerate(section.regions, 1)}
        )
        weight = 2 * math.pi * VACUUM_PERMITTIVITY_PF_PER_MM * permittivity * ng.x
        form = ng.BilinearForm(space, symmetric=True, condense=True)
        form += weight * ng.grad(trial) * ng.grad(test) * ng.dx(bonus_intorder=2)
        form.Assemble()
        inverse = form.mat.Inverse(space.FreeDofs(coupling=True), inverse="sparsecholesky")

        def lifted(values):
            """Solution with the tags at these values and every other held curve at zero."""
            function = ng.GridFunction(space)
            by_curve = {f"c{c.number}": values.get(c.tag, 0.0) for c in held}
            names = "|".join(by_curve)
            function.Set(mesh.BoundaryCF(by_curve), definedon=mesh.Boundaries(names))
            load = (-form.mat * function.vec).Evaluate()
            load.data += form.harmonic_extension_trans * load
            function.vec.data += inverse * load
            function.vec.data += form.harmonic_extension * function.vec
            return function

        full = ng.BilinearForm(space, symmetric=True)
        full += weight * ng.grad(trial) * ng.grad(test) * ng.dx(bonus_intorder=2)
        self.energy_form = full
        total = lifted(section.potentials)
        if section.floating:
            self.float_conductors(total, lifted)
        return total

    def float_conductors(self, total, lifted):
        """Adds to `total` the potentials of the floating tags that make each one's charge zero."""
        floating = self.section.floating
        units = [lifted({tag: 1.0}) for tag in floating]
        # The charge on a tag is the energy product with its own unit solution.
        charge = numpy.array([[self.product(a, b) for a in units] for b in units])
        driven = numpy.array([self.product(total, b) for b in units])
        self.floating_kv = numpy.linalg.solve(charge, -driven)
        for value, unit in zip(self.floating_kv, units):
            total.vec.data += value * unit.vec

    def product(self, first, second):
        """Energy product over the whole turn, pF·kV²; no conjugate."""
        image = first.vec.CreateVector()
        self.energy_form.Apply(first.vec, image)
        return ng.InnerProduct(image, second.vec, conjugate=False)

    # What peaks.py asks.

    def edges(self):
        """Edges on curves: {curve number: [(element, first corner, last corner, region)]}."""
        if self._edges is None:
            curve_of = {}
            for element in self.mesh.Elements(ng.BND):
                curve_of[frozenset(v.nr for v in element.vertices)] = int(element.mat[1:])
            self._edges = {number: [] for number in self.section.curves}
            for element in self.mesh.Elements(ng.VOL):
                corners = [v.nr for v in element.vertices]
                for i, j in zip(range(len(corners)), [*range(1, len(corners)), 0]):
                    number = curve_of.get(frozenset((corners[i], corners[j])))
                    if number is not None:
                        region = self.section.region_index(element.mat)
                        self._edges[number].append((element.nr, i, j, region))
        return self._edges

    def on_edge(self, edge, shares):
        """Points and fields (E_r, E_z) on an edge from its element's side, at shares 0..1."""
        element, i, j, _ = edge
        corners = CORNERS[len(self.mesh[ng.ElementId(ng.VOL, element)].vertices)]
        trafo = self.mesh.GetTrafo(ng.ElementId(ng.VOL, element))
        found = []
        for share in shares:
            xi, eta = (a + share * (b - a) for a, b in zip(corners[i], corners[j]))
            mapped = trafo(xi, eta)
            slope = self.gradient(mapped)
            found.append((tuple(mapped.point), (-slope[0], -slope[1])))
        return found

    def at(self, point, region=None):
        """(potential, E_r, E_z) at a point, from the side of a region if one is named; None outside."""
        for mapped in self.nearby(point):
            if region is None or self.mesh.GetMaterials()[self.material_index(mapped)] == region:
                slope = self.gradient(mapped)
                return self.potential(mapped), -slope[0], -slope[1]
        return None

    def beside(self, point, region):
        """As `at`, exactly on the region's side where the point lies on one of its curves."""
        for edges in self.edges().values():
            for edge in edges:
                if self.section.regions[edge[3] - 1]["name"] != region:
                    continue
                first, last = (p for p, _ in self.on_edge(edge, [0.0, 1.0]))
                if math.dist(first, point) + math.dist(point, last) > 1.2 * math.dist(first, last):
                    continue

                def nearness(share, edge=edge):
                    return -math.dist(point, self.on_edge(edge, [share])[0][0])

                distance, share = peaks.polished(nearness, 0.0, 1.0)
                if distance > -1e-7:
                    potential = self.at(point)
                    return potential[0], *self.on_edge(edge, [share])[0][1]
        return self.at(point, region)

    def nearby(self, point):
        """The point in the mesh, then points beside it at a distance that roundoff can tell apart."""
        for reach in (0.0, 1e-9, 1e-8, 1e-7):
            for k in range(1 if reach == 0 else 8):
                angle = math.pi * (k + 0.37) / 4
                x = point[0] + reach * math.cos(angle)
                y = point[1] + reach * math.sin(angle)
                try:
                    mapped = self.mesh(x, y)
                except Exception:  # the library names no narrower one
                    continue
                if mapped.nr >= 0:
                    yield mapped

    def material_index(self, mapped):
        return self.mesh[ng.ElementId(ng.VOL, mapped.nr)].index


def area_below(curve):
    """Integral of r dz along a curve, whose sum about a loop is its area."""
    (r0, z0), (r1, z1) = curve.a, curve.b
    chord = 0.5 * (r0 + r1) * (z1 - z0)
    if not curve.center:
        return chord
    _, sweep = curve.angles
    return chord + 0.5 * curve.radius**2 * (sweep - math.sin(sweep))


def answer(solution, wanted):
    """(value, place or None) of one wanted number; the value is complex where the section is."""
    section, kind = solution.section, wanted["kind"]
    if kind == "capacitance":
        energy2 = solution.product(solution.potential, solution.potential)
        return energy2 / section.voltage() ** 2, None
    if kind == "peak-in-region":
        return peaks.in_region(solution, section.region_index(wanted["region"]))
    if kind == "peak-on-curve":
        return peaks.on_curves(solution, section.numbers(wanted["tag"]))
    if kind == "peak-tangential-on-line":
        return peaks.tangential_on_line(solution, wanted["from"], wanted["to"])
    side = wanted.get("side")
    found = solution.beside(wanted["at"], side) if side else solution.at(wanted["at"])
    if found is None:
        raise SystemExit(f"{section.name}: {wanted['name']} lies outside the section")
    potential, radial, axial = found
    if kind == "potential-at":
        return potential, None
    if kind == "axial-field-at":
        return axial, None
    if kind == "field-at":
        return math.hypot(abs(radial), abs(axial)), None
    raise SystemExit(f"{section.name}: unknown kind {kind!r}")


def solve_case(path, fine):
    """All refinements of a case, and the document of its answers."""
    section = Section(path)
    levels = []
    for order, factor in LEVELS:
        started = time.process_time()
        solution = Solution(section, order, factor * fine)
        levels.append([answer(solution, w) for w in section.wanted])
        print(
            f"# {section.name} order {order}: {solution.mesh.ne} elements, {solution.n_unknowns} unknowns,"
            f" {time.process_time() - started:.1f} s",
            flush=True,
        )
    answers = []
    for wanted, (value, place), (before, _) in zip(section.wanted, levels[-1], levels[-2]):
        row = {"name": wanted["name"]}
        is_complex = section.frequency is not None and wanted["kind"] in (
            "potential-at",
            "axial-field-at",
            "peak-tangential-on-line",
        )
        is_modulus = is_complex or wanted["kind"].startswith("peak")
        row["value"] = abs(value) if is_modulus else value.real
        row["unit"] = UNITS.get(wanted["kind"], "kV/mm")
        difference = abs(abs(value) - abs(before)) if is_modulus else abs(value - before)
        row["error_estimate"] = max(difference, 1e-12 * abs(value))
        row["at"] = list(place) if place else None
        if is_complex:
            row["phase_deg"] = math.degrees(math.atan2(value.imag, value.real))
        answers.append(row)
    return section, {
        "case": section.name,
        "solved_with": "NGSolve with netgen, high-order (p 5 to 7), curved, three refinements;"
        " error = difference of the last two",
        "versions": {p: version(p) for p in ("ngsolve", "netgen-mesher", "numpy")},
        "date": date.today().isoformat(),
        "answers": answers,
    }


def compare(document, path):
    """Prints each answer beside the one that stands in a file."""
    given = {a["name"]: a for a in json.loads(Path(path).read_text(encoding="utf-8"))["answers"]}
    for row in document["answers"]:
        other = given[row["name"]]
        relative = (row["value"] - other["value"]) / (abs(other["value"]) or 1)
        print(
            f"{document['case']:16} {row['name']:22} {row['value']:.10g} given {other['value']:.10g}"
            f" relative {relative:+.1e} own estimate {row['error_estimate'] / (abs(row['value']) or 1):.1e}"
        )


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("cases", nargs="+")
    parser.add_argument("--into")
    parser.add_argument("--fine", type=float, default=1.0, help="factor on every element size")
    parser.add_argument("--compare", action="store_true")
    options = parser.parse_args()
    ng.SetNumThreads(1)
    netgen_meshing.SetMessageImportance(0)
    for case in options.cases:
        section, document = solve_case(case, options.fine)
        folder = Path(options.into) if options.into else Path(case).parent
        target = folder / f"{Path(case).name.removesuffix('.case.json')}.answers.json"
        if options.compare:
            compare(document, target)
        else:
            target.write_text(json.dumps(document, indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
