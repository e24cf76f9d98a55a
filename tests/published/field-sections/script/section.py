"""One axisymmetric section as its case file describes it: geometry, materials, and where the field is singular.

Why its own room: both solvers read the same file, and neither may add its own reading of it.
Invariants: lengths in mm, potentials in kV, angles in radians; points count from 0, curves from 1, region 0 is what lies outside.
Not here: meshes, fields, wanted numbers.
Source: docs of the case format; exponents by the transfer matrix of a fan of wedges about a point, closed form.
"""

import json
import math
from dataclasses import dataclass, field

VACUUM_PERMITTIVITY_PF_PER_MM = 8.8541878128e-3
# A sector thinner than this is a cusp: two curves that leave a point in one direction.
CUSP_ANGLE = 0.01


@dataclass
class Curve:
    """A line, or an arc shorter than half a turn, run from `start` to `end`."""

    number: int
    start: int
    end: int
    tag: str
    a: tuple
    b: tuple
    center: tuple | None = None
    # Regions on the left and on the right of the run; 0 is outside.
    sides: list = field(default_factory=lambda: [0, 0])

    @property
    def radius(self):
        return math.dist(self.a, self.center) if self.center else math.inf

    @property
    def angles(self):
        """First angle about the centre, and the signed sweep."""
        first = math.atan2(self.a[1] - self.center[1], self.a[0] - self.center[0])
        last = math.atan2(self.b[1] - self.center[1], self.b[0] - self.center[0])
        return first, (last - first + math.pi) % (2 * math.pi) - math.pi

    @property
    def length(self):
        return self.radius * abs(self.angles[1]) if self.center else math.dist(self.a, self.b)

    def point(self, share):
        """Point at a share 0..1 of the run; the ends are exact."""
        if share in (0, 1):
            return self.b if share else self.a
        if not self.center:
            return tuple(p + share * (q - p) for p, q in zip(self.a, self.b))
        first, sweep = self.angles
        radius = self.radius + share * (math.dist(self.b, self.center) - self.radius)
        angle = first + share * sweep
        return (self.center[0] + radius * math.cos(angle), self.center[1] + radius * math.sin(angle))


class Section:
    """A case file, with what follows from its topology."""

    def __init__(self, path):
        with open(path, encoding="utf-8") as file:
            self.case = json.load(file)
        case = self.case
        if case.get("physics", "electric") != "electric":
            raise SystemExit(f"{path}: physics {case['physics']!r}; only electric sections are read")
        self.name = case["case"]
        self.points = [tuple(p) for p in case["points"]]
        self.curves = {}
        for number, row in enumerate(case["curves"], 1):
            a, b = self.points[row["from"]], self.points[row["to"]]
            center = tuple(row["arc_center"]) if row.get("arc_center") else None
            self.curves[number] = Curve(number, row["from"], row["to"], row["tag"], a, b, center)
        self.regions = case["regions"]
        self.wanted = case["wanted"]
        self.leave_out = case.get("leave_out", [])
        self.potentials = case["potentials_kv"]
        self.floating = case.get("floating", [])
        self.frequency = case.get("frequency_hz")
        for index, region in enumerate(self.regions, 1):
            self._give_sides(index, region["boundary"])

    def _give_sides(self, index, boundary):
        area = 0.0
        for number in boundary:
            curve = self.curves[abs(number)]
            # Polygon through points on the arcs: enough for the sign.
            shares = [k / 8 for k in range(9)][:: 1 if number > 0 else -1]
            run = [curve.point(share) for share in shares]
            area += sum(p[0] * q[1] - q[0] * p[1] for p, q in zip(run, run[1:]))
        for number in boundary:
            is_left = (number > 0) == (area > 0)
            sides = self.curves[abs(number)].sides
            if sides[0 if is_left else 1]:
                raise SystemExit(f"{self.name}: two regions lie on one side of curve {abs(number)}")
            sides[0 if is_left else 1] = index

    def permittivity(self, index):
        """Relative permittivity of a region, complex where there is a frequency."""
        material = self.case["materials"][self.regions[index - 1]["material"]]
        if self.frequency is None:
            return material["eps_r"]
        omega_eps = 2 * math.pi * self.frequency * VACUUM_PERMITTIVITY_PF_PER_MM * 1e-9
        return complex(material["eps_r"], -material.get("sigma_s_per_m", 0.0) / omega_eps)

    def numbers(self, tag):
        """Numbers of the curves with this tag."""
        return [n for n, curve in self.curves.items() if curve.tag == tag]

    def is_held(self, curve):
        """Whether the potential is one value along the curve, given or floating."""
        return curve.tag in self.potentials or curve.tag in self.floating

    def voltage(self):
        """Difference of the two potentials."""
        values = sorted(set(self.potentials.values()))
        if len(values) != 2:
            raise SystemExit(f"{self.name}: capacitance wants two potentials, found {values}")
        return values[1] - values[0]

    def region_index(self, name):
        return 1 + [region["name"] for region in self.regions].index(name)

    def sectors(self, vertex):
        """Sectors about a point, counter-clockwise: (angle, region, first curve, last curve)."""
        reach = 1e-4 * min(c.length for c in self.curves.values() if vertex in (c.start, c.end))
        x, y = self.points[vertex]
        ends = []
        for curve in self.curves.values():
            for at_start in (True, False):
                if vertex != (curve.start if at_start else curve.end):
                    continue
                share = reach / curve.length
                px, py = curve.point(share if at_start else 1 - share)
                left = curve.sides[0 if at_start else 1]
                ends.append((math.atan2(py - y, px - x), curve, left))
        ends.sort(key=lambda end: end[0])
        found = []
        for index, (angle, curve, left) in enumerate(ends):
            following = ends[(index + 1) % len(ends)]
            turn = (following[0] - angle) % (2 * math.pi) or 2 * math.pi
            found.append((turn, left, curve, following[1]))
        return found

    def has_cusp(self, vertex):
        """Whether two curves leave the point in one direction with a region between them."""
        return any(turn < CUSP_ANGLE and region for turn, region, _, _ in self.sectors(vertex))

    def exponent(self, vertex):
        """Least exponent λ > 0 of r^λ in the potential about a point; below 1 the field is singular.

        Only 1 and 2 are smooth. Searched below 2; 2 where none is found.
        """
        sectors = self.sectors(vertex)
        breaks = [k for k, s in enumerate(sectors) if not s[1] or self.is_held(s[2])]
        if not breaks:
            return _least_root([_fan(self, sectors)], True, None, None)
        sectors = sectors[breaks[0]:] + sectors[: breaks[0]]
        least, fan = 2.0, []
        for turn, region, first, last in sectors:
            if not region:
                continue
            if not fan:
                first_held = self.is_held(first)
            fan.append((0.0 if turn < CUSP_ANGLE else turn, abs(self.permittivity(region))))
            if self.is_held(last) or 0 in last.sides:
                if sum(angle for angle, _ in fan) > 0:
                    least = min(least, _least_root([fan], False, first_held, self.is_held(last)))
                fan = []
        return least


def _fan(section, sectors):
    return [(0.0 if s[0] < CUSP_ANGLE else s[0], abs(section.permittivity(s[1]))) for s in sectors]


def _mismatch(fan, is_closed, first_held, last_held, exponent):
    """Zero where r^exponent solves: state (u, ε·u'/λ) carried through the sectors."""
    columns = [(1.0, 0.0), (0.0, 1.0)]
    for angle, eps in fan:
        c, s = math.cos(exponent * angle), math.sin(exponent * angle)
        columns = [(c * u + s / eps * w, -eps * s * u + c * w) for u, w in columns]
    if is_closed:
        return 2.0 - columns[0][0] - columns[1][1]
    u, w = columns[1] if first_held else columns[0]
    return u if last_held else w


def _least_root(fans, is_closed, first_held, last_held):
    fan = fans[0]
    steps = [0.02 + 0.003 * k for k in range(661)]
    values = [_mismatch(fan, is_closed, first_held, last_held, x) for x in steps]
    for x, y, before, after in zip(steps, steps[1:], values, values[1:]):
        if before * after <= 0 or abs(before) < 1e-12:
            low, high = x, y
            for _ in range(60):
                middle = (low + high) / 2
                value = _mismatch(fan, is_closed, first_held, last_held, middle)
                low, high = (middle, high) if value * before > 0 else (low, middle)
            return (low + high) / 2
    return 2.0


def is_smooth(exponent):
    """Whether the potential about the point has no root but whole powers below 2."""
    return abs(exponent - 1) < 2e-3 or exponent > 1.995
