"""A section being drawn: points that are told apart by their place, curves that are chained into loops, wanted numbers.

Why its own room: sections.py should read like a list of shapes, without bookkeeping.
Invariants: a point within 1e-9 mm of an earlier one is that one; a loop's signs follow from its chain.
Not here: any shape of the trade.
"""

import json
import math

# Every section is one of ours; nobody's product was measured for it.
INVENTED = "invented for this check: "


class Drawing:
    def __init__(self, name, about):
        self.case = {
            "case": name,
            "about": INVENTED + about,
            "units": {"length": "mm", "potential": "kV"},
            "points": [],
            "curves": [],
            "regions": [],
            "materials": {},
            "potentials_kv": {},
            "leave_out": [],
            "wanted": [],
        }

    def _point(self, at):
        for index, point in enumerate(self.case["points"]):
            if math.dist(point, at) < 1e-9:
                return index
        self.case["points"].append([float(x) for x in at])
        return len(self.case["points"]) - 1

    def line(self, a, b, tag):
        """Number of a new line."""
        self.case["curves"].append({"from": self._point(a), "to": self._point(b), "tag": tag})
        return len(self.case["curves"])

    def lines(self, points, tag):
        """Numbers of new lines through points."""
        return [self.line(a, b, tag) for a, b in zip(points, points[1:])]

    def arc(self, a, b, center, tag):
        """Number of a new arc, the one shorter than half a turn."""
        if abs(math.dist(a, center) - math.dist(b, center)) > 1e-6:
            raise ValueError(f"arc from {a} to {b}: radii {math.dist(a, center)}, {math.dist(b, center)}")
        number = self.line(a, b, tag)
        self.case["curves"][-1]["arc_center"] = [float(x) for x in center]
        return number

    def region(self, name, curves, eps_r, sigma=None, material=None):
        """A region bounded by curves in order; the first may run either way."""
        rows = self.case["curves"]
        ends = [(rows[n - 1]["from"], rows[n - 1]["to"]) for n in curves]
        for is_forward in (True, False):
            at = ends[0][1 if is_forward else 0]
            boundary = [curves[0] if is_forward else -curves[0]]
            for number, (start, end) in zip(curves[1:], ends[1:]):
                if at not in (start, end):
                    break
                boundary.append(number if at == start else -number)
                at = end if at == start else start
            if len(boundary) == len(curves) and at == ends[0][0 if is_forward else 1]:
                break
        else:
            raise ValueError(f"{self.case['case']}: the curves of {name} are no loop: {curves} {ends}")
        material = material or name
        self.case["regions"].append({"name": name, "material": material, "boundary": boundary})
        self.case["materials"][material] = {"eps_r": eps_r}
        if sigma is not None:
            self.case["materials"][material]["sigma_s_per_m"] = sigma

    def hold(self, value, *tags):
        for tag in tags:
            self.case["potentials_kv"][tag] = value

    def float(self, *tags):
        self.case.setdefault("floating", []).extend(tags)

    def frequency(self, hertz):
        self.case["frequency_hz"] = hertz

    def leave_out(self, at, radius):
        self.case["leave_out"].append({"at": list(at), "radius": radius})

    # Wanted numbers.

    def want(self, name, kind, **more):
        self.case["wanted"].append({"name": name, "kind": kind, **more})

    def capacitance(self):
        self.want("C", "capacitance")

    def peaks_in(self, *regions):
        for region in regions:
            self.want(f"Emax_{region}", "peak-in-region", region=region)

    def peaks_on(self, *tags):
        for tag in tags:
            self.want(f"Emax_on_{tag}", "peak-on-curve", tag=tag)

    def tangential(self, name, a, b):
        self.want(name, "peak-tangential-on-line", **{"from": list(a), "to": list(b)})

    def at(self, name, point, side=None):
        """Potential and |E| at a point; the side counts for the field only."""
        more = {"side": side} if side else {}
        self.want(f"phi_{name}", "potential-at", at=list(point))
        self.want(f"E_{name}", "field-at", at=list(point), **more)

    def field(self, name, point, side):
        self.want(f"E_{name}", "field-at", at=list(point), side=side)

    def axial(self, name, point):
        self.want(f"Ez_{name}", "axial-field-at", at=list(point))

    def text(self):
        return json.dumps(self.case, indent=1) + "\n"
