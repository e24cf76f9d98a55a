"""Solves electric sections with scikit-fem on gmsh's meshes: a second witness, coarser than the first.

Usage: python solve_with_scikit_fem.py CASE.json [MORE.case.json …] [--fine FACTOR]
Prints each answer beside the one in NAME.answers.json; the answers are never written by this one.
Cubic elements on quadratic triangles (mid-nodes on the arcs), weight 2πr, three refinements.
Shared with the first solver: the reading of the file and the search for peaks. Its own: mesher, elements, assembly, solver, evaluation.
"""

import argparse
import json
import math
import sys
import time
from pathlib import Path

import gmsh
import numpy as np
import scipy.sparse
import scipy.sparse.linalg
import skfem
from scipy.spatial import cKDTree
from skfem.helpers import dot, grad

sys.dont_write_bytecode = True  # no caches beside the sources
import peaks  # noqa: E402
from section import VACUUM_PERMITTIVITY_PF_PER_MM, Section, is_smooth  # noqa: E402

SIZES = [1.0, 0.7, 0.5]
# Element size on an arc as a share of its radius, at the rim and centre of a disc as a share of its radius.
ARC_SHARE = 0.2
RIM_SHARE = 0.25
CENTER_SHARE = 0.15
# Element size at a singular point and at a jump of curvature, as a share of what surrounds it.
SINGULAR_SHARE = 2e-4
JUMP_SHARE = 0.03
# How fast the size may grow with the distance, and the largest as a share of the section's radius.
GROWTH = 0.25
LARGEST_SHARE = 0.1
# Shape functions of the mesh's own map.
QUADRATIC = skfem.ElementTriP2()
# How many elements around a point are tried before it counts as outside.
N_CANDIDATES = 60


def size_sources(section):
    """Points (r, z, size) from which the element size grows."""
    sources = []
    for vertex, point in enumerate(section.points):
        near = [c for c in section.curves.values() if vertex in (c.start, c.end)]
        around = min(min(c.length, c.radius) for c in near)
        if not is_smooth(section.exponent(vertex)):
            sources.append((*point, SINGULAR_SHARE * around))
        elif len({round(min(c.radius, 1e9), 6) for c in near}) > 1:
            sources.append((*point, JUMP_SHARE * around))
    for curve in section.curves.values():
        if curve.center:
            size = ARC_SHARE * curve.radius
            n_points = 2 + math.ceil(curve.length / size)
            sources += [(*curve.point(k / n_points), size) for k in range(n_points + 1)]
    for disc in section.leave_out:
        sources.append((*disc["at"], CENTER_SHARE * disc["radius"]))
        for k in range(24):
            angle = math.pi * k / 12
            x, y = (c + disc["radius"] * f(angle) for c, f in zip(disc["at"], (math.cos, math.sin)))
            sources.append((x, y, RIM_SHARE * disc["radius"]))
    return np.array(sources) if sources else np.zeros((0, 3))


def raw_mesh(section, factor):
    """Nodes, six-node triangles, their regions, and edges by curve, from gmsh."""
    gmsh.initialize()
    gmsh.option.setNumber("General.Terminal", 0)
    gmsh.option.setNumber("General.NumThreads", 1)
    for name in ("MeshSizeFromPoints", "MeshSizeExtendFromBoundary", "MeshSizeFromCurvature"):
        gmsh.option.setNumber(f"Mesh.{name}", 0)
    gmsh.option.setNumber("Mesh.Algorithm", 6)
    kernel = gmsh.model.geo
    handles = [kernel.addPoint(*p, 0) for p in section.points]
    for curve in section.curves.values():
        ends = handles[curve.start], handles[curve.end]
        if curve.center:
            kernel.addCircleArc(ends[0], kernel.addPoint(*curve.center, 0), ends[1], curve.number)
        else:
            kernel.addLine(*ends, curve.number)
    for index, region in enumerate(section.regions, 1):
        kernel.addPlaneSurface([kernel.addCurveLoop(region["boundary"], reorient=True)], index)
    kernel.synchronize()
    sources = size_sources(section)
    largest = LARGEST_SHARE * max(p[0] for p in section.points)

    def size_at(_dim, _tag, x, y, _z, _size):
        if not len(sources):
            return factor * largest
        distance = np.hypot(sources[:, 0] - x, sources[:, 1] - y)
        return factor * min(largest, float(np.min(sources[:, 2] + GROWTH * distance)))

    gmsh.model.mesh.setSizeCallback(size_at)
    gmsh.model.mesh.generate(2)
    gmsh.model.mesh.setOrder(2)
    tags, coordinates, _ = gmsh.model.mesh.getNodes()
    order = {tag: k for k, tag in enumerate(tags)}
    nodes = np.array(coordinates).reshape(-1, 3)[:, :2]
    triangles, region_of = [], []
    for index in range(1, len(section.regions) + 1):
        _, _, found = gmsh.model.mesh.getElements(2, index)
        rows = np.array([order[t] for t in found[0]]).reshape(-1, 6)
        triangles.append(rows)
        region_of += [index] * len(rows)
    edges = {}
    for number in section.curves:
        _, _, found = gmsh.model.mesh.getElements(1, number)
        edges[number] = np.array([order[t] for t in found[0]]).reshape(-1, 3)
    gmsh.finalize()
    return nodes, np.vstack(triangles), np.array(region_of), edges


class Solution:
    """Potential of one refinement, with what the search for peaks asks of it."""

    def __init__(self, section, factor):
        self.section = section
        nodes, triangles, self.region_of, edges = raw_mesh(section, factor)
        self.mesh, self.corner = quadratic_mesh(nodes, triangles)
        self.curve_of = {}
        for number, rows in edges.items():
            for first, last, _ in rows:
                self.curve_of[frozenset((self.corner[first], self.corner[last]))] = number
        self.basis = skfem.Basis(self.mesh, skfem.ElementTriP3(), intorder=8)
        self.n_unknowns = self.basis.N
        self.solve()
        corners = self.mesh.p[:, self.mesh.t]
        self.tree = cKDTree(corners.mean(axis=1).T)
        self._edges = None

    def held_dofs(self, tags):
        """Unknowns on the curves with these tags."""
        facets = [
            facet
            for facet, pair in enumerate(self.mesh.facets.T)
            if self.section.curves.get(self.curve_of.get(frozenset(pair), 0)) is not None
            and self.section.curves[self.curve_of[frozenset(pair)]].tag in tags
        ]
        return self.basis.get_dofs(np.array(facets)).all()

    def solve(self):
        """Potential in kV; a floating conductor joins its unknowns into one, and zero charge is its natural row."""
        section = self.section
        values = np.array([section.permittivity(i) for i in self.region_of])
        kind = np.complex128 if section.frequency is not None else np.float64

        @skfem.BilinearForm(dtype=kind)
        def energy(u, v, w):
            scale = 2 * math.pi * VACUUM_PERMITTIVITY_PF_PER_MM * w.x[0]
            return scale * w.eps * dot(grad(u), grad(v))

        eps = values.astype(kind)[:, None] * np.ones(self.basis.dx.shape)
        self.matrix = energy.assemble(self.basis, eps=eps).tocsr()
        potential = np.zeros(self.basis.N, dtype=kind)
        held = np.zeros(self.basis.N, dtype=bool)
        for tag, value in section.potentials.items():
            dofs = self.held_dofs({tag})
            potential[dofs], held[dofs] = value, True
        column = np.arange(self.basis.N)
        for tag in section.floating:
            dofs = self.held_dofs({tag})
            column[dofs] = dofs[0]
        free = np.unique(column[~held])
        place = {dof: k for k, dof in enumerate(free)}
        rows = np.flatnonzero(~held)
        spread = scipy.sparse.csr_matrix(
            (np.ones(len(rows)), (rows, [place[column[r]] for r in rows])), shape=(self.basis.N, len(free))
        )
        load = -spread.T @ (self.matrix @ potential)
        inner = (spread.T @ self.matrix @ spread).tocsc()
        self.potential = potential + spread @ scipy.sparse.linalg.spsolve(inner, load)

    def place(self, element, local):
        """Point of an element and the slope of its map, for reference points of shape (2, n)."""
        nodes = self.mesh.doflocs[:, self.mesh.dofs.element_dofs[:, element]]
        point, slope = np.zeros_like(local), np.zeros((2, 2, local.shape[1]))
        for k in range(6):
            shape, change = QUADRATIC.lbasis(local, k)
            point += nodes[:, k, None] * shape
            slope += nodes[:, k, None, None] * change[None, :, :]
        return point, slope

    def evaluate(self, element, local):
        """Points, potentials and gradients in one element at reference points of shape (2, n)."""
        point, slope = self.place(element, local)
        value = np.zeros(local.shape[1], dtype=self.potential.dtype)
        change = np.zeros((2, local.shape[1]), dtype=self.potential.dtype)
        for k, dof in enumerate(self.basis.element_dofs[:, element]):
            shape, along = self.basis.elem.lbasis(local, k)
            value += self.potential[dof] * shape
            change += self.potential[dof] * along
        area = slope[0, 0] * slope[1, 1] - slope[0, 1] * slope[1, 0]
        gradient = np.array(
            [
                slope[1, 1] * change[0] - slope[1, 0] * change[1],
                slope[0, 0] * change[1] - slope[0, 1] * change[0],
            ]
        )
        return point, value, gradient / area

    # What peaks.py asks.

    def edges(self):
        if self._edges is None:
            self._edges = {number: [] for number in self.section.curves}
            for element, corners in enumerate(self.mesh.t.T):
                for i, j in ((0, 1), (1, 2), (2, 0)):
                    number = self.curve_of.get(frozenset((corners[i], corners[j])))
                    if number is not None:
                        self._edges[number].append((element, i, j, self.region_of[element]))
        return self._edges

    def on_edge(self, edge, shares):
        element, i, j, _ = edge
        corners = np.array([[0.0, 0.0], [1.0, 0.0], [0.0, 1.0]])
        local = corners[i][:, None] + np.array(shares) * (corners[j] - corners[i])[:, None]
        points, _, slope = self.evaluate(element, local)
        return [(tuple(p), (-s[0], -s[1])) for p, s in zip(points.T, slope.T)]

    def at(self, point, region=None):
        x = np.array(point)
        n_tried = min(N_CANDIDATES, self.mesh.t.shape[1])
        _, candidates = self.tree.query(x, n_tried)
        corners = self.mesh.p[:, self.mesh.t[:, candidates]]
        a = corners[:, 0]
        u, v, d = corners[:, 1] - a, corners[:, 2] - a, x[:, None] - a
        area = u[0] * v[1] - u[1] * v[0]
        s, t = (d[0] * v[1] - d[1] * v[0]) / area, (u[0] * d[1] - u[1] * d[0]) / area
        # Straight triangles first: a curved edge moves the border by little.
        for k in np.flatnonzero(np.minimum(np.minimum(s, t), 1 - s - t) > -0.2):
            element = candidates[k]
            if region and self.section.regions[self.region_of[element] - 1]["name"] != region:
                continue
            local = self.inverse(element, np.array([s[k], t[k]]), x)
            if min(local[0], local[1], 1 - local[0] - local[1]) > -1e-7:
                _, value, slope = self.evaluate(element, local[:, None])
                return value[0], -slope[0, 0], -slope[1, 0]
        return None

    def inverse(self, element, local, x):
        """Reference point of a point, by Newton's method from the straight triangle's."""
        for _ in range(20):
            place, slope = self.place(element, local[:, None])
            step = np.linalg.solve(slope[:, :, 0], x - place[:, 0])
            local = local + step
            if np.abs(step).max() < 1e-12:
                break
        return local

    def product(self):
        return self.potential @ (self.matrix @ self.potential)


def quadratic_mesh(nodes, triangles):
    """scikit-fem's mesh with mid-nodes on the arcs, and its number of each corner node."""
    used = np.unique(triangles[:, :3])
    corner = {node: k for k, node in enumerate(used)}
    rows = np.vectorize(corner.get)(triangles[:, :3])
    mesh = skfem.MeshTri2.from_mesh(skfem.MeshTri(nodes[used].T, rows.T))
    middle = {}
    for row, six in zip(rows, triangles):
        for k, (i, j) in enumerate(((0, 1), (1, 2), (2, 0))):
            middle[frozenset((row[i], row[j]))] = nodes[six[3 + k]]
    places = mesh.doflocs.copy()
    for facet, pair in enumerate(mesh.facets.T):
        places[:, mesh.dofs.facet_dofs[0, facet]] = middle[frozenset(pair)]
    return skfem.MeshTri2(places, mesh.t), corner


def answer(solution, wanted):
    """Value of one wanted number, complex where the section is."""
    section, kind = solution.section, wanted["kind"]
    if kind == "capacitance":
        return solution.product() / section.voltage() ** 2
    if kind == "peak-in-region":
        return peaks.in_region(solution, section.region_index(wanted["region"]))[0]
    if kind == "peak-on-curve":
        return peaks.on_curves(solution, section.numbers(wanted["tag"]))[0]
    if kind == "peak-tangential-on-line":
        return abs(peaks.tangential_on_line(solution, wanted["from"], wanted["to"])[0])
    potential, radial, axial = solution.at(wanted["at"], wanted.get("side"))
    if kind == "potential-at":
        return potential
    return axial if kind == "axial-field-at" else math.hypot(abs(radial), abs(axial))


def compare(path, fine):
    """Solves a case three times and prints its answers beside those that stand."""
    section = Section(path)
    target = Path(str(path).replace(".case.json", ".answers.json"))
    given = {a["name"]: a for a in json.loads(target.read_text(encoding="utf-8"))["answers"]}
    levels = []
    for factor in SIZES:
        started = time.process_time()
        solution = Solution(section, factor * fine)
        levels.append([answer(solution, w) for w in section.wanted])
        print(
            f"# {section.name}: {len(solution.region_of)} elements, {solution.n_unknowns} unknowns,"
            f" {time.process_time() - started:.1f} s",
            flush=True,
        )
    for wanted, value, before in zip(section.wanted, levels[-1], levels[-2]):
        other = given[wanted["name"]]
        shown = abs(value) if section.frequency else value
        estimate = abs(value - before) / (abs(value) or 1)
        line = f"{section.name:6} {wanted['name']:22} {shown:.8g} given {other['value']:.8g}"
        line += f" relative {(shown - other['value']) / (abs(other['value']) or 1):+.1e} own estimate {estimate:.1e}"
        if "phase_deg" in other and wanted["kind"] != "peak-tangential-on-line":
            line += f" phase {math.degrees(np.angle(value)) - other['phase_deg']:+.1e} deg"
        print(line)


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("cases", nargs="+")
    parser.add_argument("--fine", type=float, default=1.0, help="factor on every element size")
    options = parser.parse_args()
    for case in options.cases:
        compare(case, options.fine)


if __name__ == "__main__":
    main()
