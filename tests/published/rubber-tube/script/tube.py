"""An incompressible rubber tube on a rigid frictionless cylinder, as finite elements of the half-plane (R, Z), with NGSolve.

Why its own room: the cases are lists (solve_with_ngsolve.py); here is the mechanics, the same for all of them.
Invariants: lengths in mm, moduli and pressures in MPa; nothing about the deformed shape is assumed but that it is a body of revolution.
Not here: closed forms, quadrature over a radius (quadrature.py).
Source: large-deformation elasticity, textbook; energy W(F) + p(J - 1), displacement of degree k, pressure of degree k - 2 and free to jump.

    Z
    |   +--------+ "end"      u_z = 0, or the same unknown all over it ("free": no net force), or no traction ("open")
    |   |  rings |
    |   |        | no traction
    |   +--------+ "start"    u_z = 0
    +---A-------------> R     "bore": u_r = (stretch - 1)·A, u_z free
"""

import ngsolve as ng
import numpy as np
from netgen.meshing import Element1D, Element2D, FaceDescriptor, Mesh, MeshPoint, Pnt

NEWTON_MOST = 25
# A Newton step this small, mm, is the last one: what is left is its square.
SETTLED_MM = 1e-10
STRETCH_STEP = 0.25


def quadrilaterals(radii, heights, matter):
    """Mesh of rectangles between the lines; `matter(r, z)` is the number of the material at a middle, 0 for none."""
    mesh = Mesh(dim=2)
    points = {}

    def point(i, j):
        if (i, j) not in points:
            points[i, j] = mesh.Add(MeshPoint(Pnt(radii[i], heights[j], 0)))
        return points[i, j]

    cells = {}
    for i in range(len(radii) - 1):
        for j in range(len(heights) - 1):
            number = matter((radii[i] + radii[i + 1]) / 2, (heights[j] + heights[j + 1]) / 2)
            if number:
                cells[i, j] = number
    n_matters = max(cells.values())
    for number in range(1, n_matters + 1):
        mesh.Add(FaceDescriptor(bc=number, domin=number, surfnr=number))
        mesh.SetMaterial(number, f"m{number}")
    for (i, j), number in cells.items():
        mesh.Add(Element2D(number, [point(i, j), point(i + 1, j), point(i + 1, j + 1), point(i, j + 1)]))
    names = ["bore", "start", "end", "outside"]
    for number, name in enumerate(names):
        mesh.SetBCName(number, name)
    last = len(heights) - 1
    for (i, j) in cells:
        for other, ends, name in [
            ((i - 1, j), ((i, j + 1), (i, j)), "bore" if i == 0 else "outside"),
            ((i + 1, j), ((i + 1, j), (i + 1, j + 1)), "outside"),
            ((i, j - 1), ((i, j), (i + 1, j)), "start" if j == 0 else "outside"),
            ((i, j + 1), ((i + 1, j + 1), (i, j + 1)), "end" if j + 1 == last else "outside"),
        ]:
            if other not in cells:
                mesh.Add(Element1D([point(*ends[0]), point(*ends[1])], index=names.index(name) + 1))
    return ng.Mesh(mesh)


def energy(law, first, second):
    """W of a law, a function of the invariants, MPa."""
    if law["kind"] == "mooney-rivlin":
        return law["c1_mpa"] * (first - 3) + law["c2_mpa"] * (second - 3)
    if law["kind"] == "neo-hookean":
        return law["mu_mpa"] / 2 * (first - 3)
    return -law["mu_mpa"] * law["limit"] / 2 * ng.log(1 - (first - 3) / law["limit"])


class Tube:
    """A tube that is widened step by step."""

    def __init__(self, mesh, laws, ends, order):
        self.mesh, self.ends = mesh, ends
        heights = [p[1] for v in mesh.vertices for p in [v.point]]
        self.bore = min(v.point[0] for v in mesh.vertices)
        self.start, self.height = min(heights), max(heights) - min(heights)
        fixed = "start" if ends == "open" else "start|end"
        displacement = ng.VectorH1(mesh, order=order, dirichletx="bore", dirichlety=fixed)
        spaces = [displacement, ng.L2(mesh, order=order - 2)]
        if ends == "free":
            spaces.append(ng.NumberSpace(mesh))
        self.space = ng.FESpace(spaces)
        self.state = ng.GridFunction(self.space)
        trial = self.space.TrialFunction()
        extra = trial[2] if ends == "free" else None
        gradient = self.gradient(trial[0], ng.Grad(trial[0]), extra)
        self.form = ng.BilinearForm(self.space, symmetric=False)
        for number, law in enumerate(laws, 1):
            stored = energy(law, *self.invariants(gradient)) + trial[1] * (ng.Det(gradient) - 1)
            where = ng.dx(definedon=mesh.Materials(f"m{number}"), bonus_intorder=4)
            self.form += ng.Variation((stored * ng.x).Compile() * where)
        self.laws = laws
        self.pushed = self.state.vec.CreateVector()
        shape = ng.GridFunction(self.space)
        shape.components[0].Set(ng.CF((1, 0)), definedon=mesh.Boundaries("bore"))
        self.pushed.data = shape.vec

    def gradient(self, u, slope, extra):
        """F in (R, Z, hoop); a free end's common displacement is spread evenly over the length."""
        along = 1 + slope[1, 1] + (extra if extra is not None else 0)
        return ng.CF((1 + slope[0, 0], slope[0, 1], 0, slope[1, 0], along, 0, 0, 0, 1 + u[0] / ng.x), dims=(3, 3))

    @staticmethod
    def invariants(gradient):
        cauchy = gradient.trans * gradient
        first = ng.Trace(cauchy)
        return first, (first * first - ng.InnerProduct(cauchy, cauchy)) / 2

    def widen(self, stretch_from, stretch):
        """Newton from one stretch of the bore to another; returns the last step, mm."""
        state, residual, step = self.state.vec, self.state.vec.CreateVector(), self.state.vec.CreateVector()
        free = self.space.FreeDofs()
        step.data = (stretch - stretch_from) * self.bore * self.pushed
        for turn in range(NEWTON_MOST):
            self.form.AssembleLinearization(state)
            self.form.Apply(state, residual)
            if turn == 0:
                residual.data += self.form.mat * step
            else:
                step[:] = 0
            inverse = self.form.mat.Inverse(free, inverse="umfpack")
            step.data -= inverse * residual
            state.data += step
            size = np.abs(step.FV().NumPy()[: self.space.components[0].ndof]).max()
            if size < SETTLED_MM:
                return size
        raise ArithmeticError(f"not settled at stretch {stretch}: {size} mm")

    def widen_to(self, stretch, reached=1.0):
        n_steps = max(1, int(np.ceil((stretch - reached) / STRETCH_STEP - 1e-9)))
        for step in range(n_steps):
            part = [reached + (stretch - reached) * k / n_steps for k in (step, step + 1)]
            self.widen(*part)
        self.stretch = stretch

    @property
    def axial_stretch(self):
        """Deformed over relaxed length; of an open end where it lies on the bore."""
        if self.ends == "free":
            return 1 + self.state.components[2].vec[0]
        if self.ends == "open":
            return 1 + self.state.components[0](self.mesh(self.bore, self.start + self.height))[1] / self.height
        return 1.0

    def mean_pressure(self):
        """Force on the bore over its deformed area; the force is what the energy gains when the bore alone is widened."""
        residual = self.state.vec.CreateVector()
        self.form.Apply(self.state.vec, residual)
        length = self.height * self.axial_stretch
        return ng.InnerProduct(residual, self.pushed) / (self.stretch * self.bore * length)

    def along(self, heights, numbers):
        """(pressure, deformed z) at heights of the bore; `numbers` says whose material's side is meant."""
        u, p = self.state.components[:2]
        extra = self.state.components[2] if self.ends == "free" else None
        gradient = self.gradient(u, ng.Grad(u), extra)
        found = []
        for height, number in zip(heights, numbers):
            place = self.mesh(self.bore * (1 + 1e-12), height)
            f = np.array(gradient(place)).reshape(3, 3)
            left = f @ f.T
            law = self.laws[number - 1]
            first = np.trace(left)
            by_first, by_second = slopes(law, first)
            radial = 2 * by_first * left[0, 0] + 2 * by_second * (first * left[0, 0] - (left @ left)[0, 0])
            moved = u(place)[1] + (extra.vec[0] * (height - self.start) if extra is not None else 0.0)
            found.append((-(radial / np.linalg.det(f) + p(place)), height + moved))
        return found


def slopes(law, first):
    """dW/dI1 and dW/dI2, MPa."""
    if law["kind"] == "mooney-rivlin":
        return law["c1_mpa"], law["c2_mpa"]
    if law["kind"] == "neo-hookean":
        return law["mu_mpa"] / 2, 0.0
    return law["mu_mpa"] / 2 / (1 - (first - 3) / law["limit"]), 0.0
