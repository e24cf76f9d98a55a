"""Voltage at which five gaps of gas begin to discharge: NGSolve for the field, brute force over ways, the published gas law.

Usage: python gaps_with_ngsolve.py [--compare] [NAME …]
Writes ../gaps.json, or with --compare prints the differences from what stands there and ends with 1 past 1e-3.
Invariants: lengths in mm, potentials in kV; the half joint is drawn here from plain dimensions, the plug is S21 and S22 of
tests/published/field-sections; both are solved by what solves those sections.
Not here: the program that is checked; nothing of its drawing is read.
"""

import argparse
import json
import math
import sys
import tempfile
import time
from datetime import date
from importlib.metadata import version
from pathlib import Path

import netgen.meshing as netgen_meshing
import ngsolve as ng
import numpy as np
from scipy.interpolate import CubicHermiteSpline

sys.dont_write_bytecode = True  # no caches beside the sources
SECTIONS = Path(__file__).parents[2] / "field-sections"
sys.path.insert(0, str(SECTIONS / "script"))
from drawing import Drawing  # noqa: E402
from section import Section  # noqa: E402
from solve_with_ngsolve import Solution  # noqa: E402

TARGET = Path(__file__).parent.parent / "gaps.json"
# (order, factor on sizes) of two refinements.
LEVELS = [(4, 0.9), (6, 0.6)]

# Gas: Lieberman and Lichtenberg, table 14.1, and the measured least voltage of air; Schumann's form from memory.
A, B, GAMMA = 15.0, 365.0, 0.01
LEAST_V = 327.0
LEVEL = math.log(1 + 1 / GAMMA)
TORR_PER_BAR = 750.062
BAR_CM_PER_MM = 1.01325 / 10.0


def townsend(d):
    """Breakdown in V crest of d mm of air at one atmosphere."""
    pd = TORR_PER_BAR * BAR_CM_PER_MM * np.asarray(d, float)
    with np.errstate(divide="ignore", invalid="ignore"):
        volts = B * pd / np.log(A * pd / LEVEL)
    # Left of its own minimum the formula rises again: there the least voltage stands.
    return np.where(pd <= math.e * LEVEL / A, LEAST_V, np.maximum(volts, LEAST_V))


def lower_of_both(d):
    """The lower of that and Schumann's form."""
    pd = BAR_CM_PER_MM * np.asarray(d, float)
    return np.maximum(np.minimum(townsend(d), 1e3 * (6.72 * np.sqrt(pd) + 24.36 * pd)), LEAST_V)


CURVES = {"townsend": townsend, "lower_of_both": lower_of_both}


# The half joint.


def bend(before, corner, after, radius):
    """Where a circle touches both sides of a corner, and its centre."""
    def unit(to):
        length = math.dist(corner, to)
        return ((to[0] - corner[0]) / length, (to[1] - corner[1]) / length)

    u, v = unit(before), unit(after)
    half = 0.5 * math.acos(u[0] * v[0] + u[1] * v[1])
    reach = radius / math.tan(half)
    middle = (u[0] + v[0], u[1] + v[1])
    share = radius / math.sin(half) / math.hypot(*middle)
    center = (corner[0] + share * middle[0], corner[1] + share * middle[1])
    return [tuple(corner[k] + reach * w[k] for k in (0, 1)) for w in (u, v)] + [center]


def half_joint(edge_mm, rho, bridging, gap_permittivity):
    """Half a joint of the 15 kV kind with a screen edge that lies before its deflector.

    Cable 13.3 / 22.2 mm, screen 1 mm thick; electrode to 75 mm, 34.2 mm across, rounded 2 and 4 mm; outside 60 mm;
    deflector from its corner on the bore at 122.388049 mm to its tip at 104.262888 mm and 47.582748 mm, rounded 40 and
    3 mm, lifted by the screen without change of volume: r² grows by 12.1² − 11.1².
    """
    draw = Drawing("gap", "gap before a screen edge")
    on, top, inner, outer, low, high = 11.1, 12.1, 6.65, 30.0, 55.0, 150.0
    foot, tip = (on, edge_mm + rho), (on, edge_mm - bridging)
    center = (top - rho, edge_mm + rho)
    distance = math.dist(tip, center)
    # From the tip the tangent leaves the way to the centre by asin(ρ/distance), away from the axis.
    angle = math.atan2(center[1] - tip[1], center[0] - tip[0]) - math.asin(rho / distance)
    reach = math.sqrt(distance**2 - rho**2)
    touch = (tip[0] + reach * math.cos(angle), tip[1] + reach * math.sin(angle))
    # Screen edge.
    face = draw.line((on + rho, edge_mm), (top - rho, edge_mm), "earth")
    up, over = [face], []
    if rho:
        up.insert(0, draw.arc(foot, (on + rho, edge_mm), (on + rho, edge_mm + rho), "earth"))
        up.append(draw.arc((top - rho, edge_mm), touch, center, "earth"))
        over.append(draw.arc(touch, (top, edge_mm + rho), center, "earth"))
    on_cable = draw.line(foot, tip, "gap_on_cable")
    on_rubber = draw.line(touch, tip, "gap_on_rubber")
    interface = draw.line(tip, (on, 73.0), "interface")
    # Deflector.
    lifted = lambda r: math.sqrt(r * r + top * top - on * on)
    corner, tip_corner = (top, 122.388049), (lifted(47.582748 / 2), 104.262888)
    back = (tip_corner[0], high)
    heel, heel_end, heel_center = bend((top, high), corner, tip_corner, 40.0)
    # Lifted, the slope is a tenth of a millimetre too short for both radii: the tip's is shortened to what is left.
    tip_radius = 3.0 * math.dist(heel_end, tip_corner) / math.dist(bend(corner, tip_corner, back, 3.0)[0], tip_corner)
    _, tip_end, tip_center = bend(corner, tip_corner, back, tip_radius)
    # The tip turns by more than a right angle: two arcs.
    half = math.hypot(tip_corner[0] - tip_center[0], tip_corner[1] - tip_center[1])
    tip_middle = tuple(tip_center[k] + tip_radius / half * (tip_corner[k] - tip_center[k]) for k in (0, 1))
    deflector = [
        draw.line((top, edge_mm + rho), heel, "earth"),
        draw.arc(heel, heel_end, heel_center, "earth"),
        draw.arc(heel_end, tip_middle, tip_center, "earth"),
        draw.arc(tip_middle, tip_end, tip_center, "earth"),
        draw.line(tip_end, back, "earth"),
    ]
    rest = [
        draw.line(back, (outer, high), "open"),
        draw.line((outer, high), (outer, low), "earth"),
        draw.line((outer, low), (17.1, low), "open"),
        draw.line((17.1, low), (17.1, 71.0), "conductor"),
        draw.arc((17.1, 71.0), (13.1, 75.0), (13.1, 71.0), "conductor"),
        draw.arc((13.1, 75.0), (on, 73.0), (13.1, 73.0), "conductor"),
    ]
    draw.region("body", [on_rubber, *over, *deflector, *rest, interface], 2.8)
    draw.region("gap", [on_cable, *up, on_rubber], gap_permittivity)
    cable = [
        draw.line((on, 73.0), (on, low), "conductor"),
        draw.line((on, low), (inner, low), "conductor"),
        draw.line((inner, low), (inner, high), "conductor"),
        draw.line((inner, high), (on, high), "open"),
        draw.line((on, high), foot, "earth"),
    ]
    draw.region("cable", [interface, *cable, on_cable], 2.3)
    draw.hold(1.0, "conductor")
    draw.hold(0.0, "earth")
    surfaces = {
        "cable": Segment(foot, tip),
        "other": Segment(touch, tip),
        "screen": Edge(on, top, edge_mm, rho),
    }
    with tempfile.NamedTemporaryFile("w", suffix=".json") as file:
        file.write(draw.text())
        file.flush()
        return Section(file.name), surfaces


def plug(name):
    """The tapered plug of a published section, in its film of 0.15 mm."""
    section = Section(SECTIONS / f"{name}.case.json")
    stretch = math.hypot(1.0, 9.0 / 80.0)
    large, small, lift = 24.0, 15.0, 0.15 * stretch
    # Ends of the film are left out by a hundredth of a millimetre: there both sides are one conductor.
    surfaces = {
        "cable": Segment((large, 0.0), (small, 80.0)),
        "other": Segment((large + lift, 0.0), (small + lift, 80.0)),
        "screen": None,
    }
    return section, surfaces


# Surfaces: places by a share, and the nearest place to another.


class Segment:
    def __init__(self, a, b):
        self.a, self.b = np.array(a), np.array(b)

    def at(self, shares):
        return self.a + np.asarray(shares)[:, None] * (self.b - self.a)

    def nearest(self, points):
        """Shares of the nearest places."""
        way = self.b - self.a
        return np.clip((points - self.a) @ way / (way @ way), 0.0, 1.0)


class Edge:
    """The screen's end: lower quarter circle, face, upper quarter circle; all at earth."""

    def __init__(self, on, top, z, rho):
        self.rho = rho
        self.centers = [np.array([on + rho, z + rho]), np.array([top - rho, z + rho])]
        self.face = Segment((on + rho, z), (top - rho, z))

    def distance(self, points):
        """To the nearest place: of the face, or of the quarter circle that bulges towards the point."""
        found = np.linalg.norm(points - self.face.at(self.face.nearest(points)), axis=1)
        for center, sign in zip(self.centers, (1.0, -1.0)):
            off = points - center
            is_before = (sign * off[:, 0] <= 0) & (off[:, 1] <= 0)
            to_circle = np.abs(np.linalg.norm(off, axis=1) - self.rho)
            found = np.where(is_before, np.minimum(found, to_circle), found)
        return found


# Field.


class Ways:
    """Both surfaces of a gap with their potentials per kV of the conductor, splined between samples."""

    def __init__(self, solution, surfaces, voltage, n):
        self.surfaces, self.spline = surfaces, {}
        # Closer at both ends, none upon them.
        shares = 0.5 * (1.0 - np.cos(np.linspace(0.0, math.pi, n)))
        shares = 1e-5 + (1 - 2e-5) * shares
        for name in ("cable", "other"):
            way = surfaces[name].b - surfaces[name].a
            values, slopes = np.empty(n), np.empty(n)
            for index, point in enumerate(surfaces[name].at(shares)):
                found = solution.at(tuple(point), None)
                if found is None:
                    raise SystemExit(f"no field at {point}")
                values[index] = found[0] / voltage
                # The slope along the surface is the same on both sides of it.
                slopes[index] = -(found[1] * way[0] + found[2] * way[1]) / voltage
            self.spline[name] = CubicHermiteSpline(shares, values, slopes)

    @staticmethod
    def loading(curve, volts, length):
        """Per kV rms between conductor and earth: crest over what air withstands."""
        return math.sqrt(2) * 1e3 * np.abs(volts) / curve(length)

    def shortest(self, curve, n=400_001):
        """The greatest loading along shortest ways: from each surface to the nearest of the others; a dense grid."""
        best = (0.0, None, None)
        shares = np.linspace(1e-5, 1 - 1e-5, n)
        for name, other in (("cable", "other"), ("other", "cable")):
            points, values = self.surfaces[name].at(shares), self.spline[name](shares)
            on = np.clip(self.surfaces[other].nearest(points), 1e-5, 1 - 1e-5)
            length = np.linalg.norm(points - self.surfaces[other].at(on), axis=1)
            found = [(values - self.spline[other](on), length)]
            if self.surfaces["screen"]:
                found.append((values, self.surfaces["screen"].distance(points)))
            for volts, length in found:
                loading = self.loading(curve, volts, length)
                index = int(np.argmax(loading))
                if loading[index] > best[0]:
                    best = (float(loading[index]), points[index].tolist(), float(length[index]))
        return best

    def aslant(self, curve, n=1500, n_closer=3):
        """The greatest loading over all straight ways within 45° of the shortest from one of their ends: a grid in two parameters."""
        best = self.shortest(curve)
        ranges = [(1e-5, 1 - 1e-5)] * 2
        for _ in range(n_closer):
            shares = [np.linspace(low, high, n) for low, high in ranges]
            points = [self.surfaces[k].at(s) for k, s in zip(("cable", "other"), shares)]
            values = [self.spline[k](s) for k, s in zip(("cable", "other"), shares)]
            least = [
                np.linalg.norm(p - self.surfaces[k].at(self.surfaces[k].nearest(p)), axis=1)
                for p, k in zip(points, ("other", "cable"))
            ]
            length = np.linalg.norm(points[0][:, None, :] - points[1][None, :, :], axis=2)
            loading = self.loading(curve, values[0][:, None] - values[1][None, :], length)
            loading[length > math.sqrt(2) * np.maximum(least[0][:, None], least[1][None, :])] = 0.0
            i, j = divmod(int(np.argmax(loading)), n)
            if loading[i, j] > best[0]:
                best = (float(loading[i, j]), points[0][i].tolist(), float(length[i, j]))
            ranges = [
                (max(lo, s[k] - 20 / n * (hi - lo)), min(hi, s[k] + 20 / n * (hi - lo)))
                for s, k, (lo, hi) in zip(shares, (i, j), ranges)
            ]
        return best


    def uneven(self, solution, voltage, n=240):
        """Inception where the growth of an avalanche is integrated along ways from the cable to the screen, in the field as it is.

        Even fields give Townsend's curve. Ways shorter than 0.01 mm are left out: there the two constants mean nothing.
        """
        shares, weights = np.polynomial.legendre.leggauss(24)
        screen, best = self.surfaces["screen"], (math.inf, None, None)
        place = np.array(self.shortest(townsend)[1])
        for z in np.linspace(place[1] - 0.8, place[1] + 0.15, n):
            point = np.array([place[0], z])
            length = float(screen.distance(point[None])[0])
            center = screen.centers[0]
            if length < 0.01 or point[1] >= center[1]:
                continue
            way = (center - point) / np.linalg.norm(center - point)
            field = np.empty(len(shares))
            for index, share in enumerate(shares):
                found = solution.at(tuple(point + way * length * (0.5 + 0.5 * share)), None)
                field[index] = abs(found[1] * way[0] + found[2] * way[1]) / voltage
            low, high = 1.0, 1000.0
            for _ in range(60):
                kilovolts = 0.5 * (low + high)
                # V/cm at the crest, Torr; growth per cm, ways in mm.
                crest = np.maximum(field * kilovolts * math.sqrt(2) * 1e4, 1e-9)
                growth = A * 760.0 * np.exp(-B * 760.0 / crest)
                is_enough = float(growth @ weights) * length / 20.0 > LEVEL
                low, high = (low, kilovolts) if is_enough else (kilovolts, high)
            if high < best[0]:
                best = (high, point.tolist(), length)
        return 1.0 / best[0], best[1], best[2]


GAPS = {
    "sharp-edge": lambda: half_joint(130.0, 0.0, 2.0, 1.0),
    "rounded-edge": lambda: half_joint(130.0, 0.25, 2.0, 1.0),
    "wedge-filled": lambda: half_joint(130.0, 0.1, 6.0, 3.0),
    "thin-film": lambda: plug("S22-plug-air-film"),
    "thin-film-filled": lambda: plug("S21-plug-grease-film"),
}


def values_of(name):
    """Inception in kV rms between conductor and earth, for both sets of ways and both curves."""
    levels = []
    for order, factor in LEVELS:
        started = time.process_time()
        section, surfaces = GAPS[name]()
        solution = Solution(section, order, factor)
        ways = Ways(solution, surfaces, max(section.potentials.values()), 4000)
        row = {}
        for curve_name, curve in CURVES.items():
            row[f"shortest.{curve_name}"] = ways.shortest(curve)
            row[f"aslant.{curve_name}"] = ways.aslant(curve)
        if surfaces["screen"]:
            row["uneven.townsend"] = ways.uneven(solution, max(section.potentials.values()))
        levels.append(row)
        print(
            f"# {name} order {order}: {solution.mesh.ne} elements, {solution.n_unknowns} unknowns,"
            f" {time.process_time() - started:.0f} s",
            flush=True,
        )
    document = {}
    for key, (loading, at, length) in levels[-1].items():
        value = 1.0 / loading
        document[key] = {
            "inception_kv": value,
            "error_estimate": max(abs(value - 1.0 / levels[0][key][0]), 1e-6 * value),
            "at_mm": at,
            "length_mm": length,
        }
    return document


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("names", nargs="*")
    parser.add_argument("--compare", action="store_true")
    options = parser.parse_args()
    ng.SetNumThreads(1)
    netgen_meshing.SetMessageImportance(0)
    found = {name: values_of(name) for name in options.names or GAPS}
    if not options.compare and not options.names:
        document = {
            "solved_with": "NGSolve with netgen, orders 4 and 6 on two meshes; error = difference of the two",
            "versions": {p: version(p) for p in ("ngsolve", "netgen-mesher", "numpy", "scipy")},
            "date": date.today().isoformat(),
            "gaps": found,
        }
        TARGET.write_text(json.dumps(document, indent=1) + "\n", encoding="utf-8")
    stored = json.loads(TARGET.read_text(encoding="utf-8"))["gaps"] if TARGET.exists() else {}
    worst = 0.0
    for name, rows in found.items():
        for key, row in rows.items():
            off = row["inception_kv"] / stored.get(name, {}).get(key, row)["inception_kv"] - 1
            worst = max(worst, abs(off))
            place = ", ".join(f"{x:.4f}" for x in row["at_mm"])
            print(
                f"{name:18} {key:24} {row['inception_kv']:.6g} kV ± {row['error_estimate']:.1e},"
                f" way of {row['length_mm']:.4f} mm from ({place}), off {off:+.1e}"
            )
    sys.exit(worst > 1e-3)


if __name__ == "__main__":
    main()
