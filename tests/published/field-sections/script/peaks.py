"""Largest fields of a solution: in a region, on curves, along a line, without the discs that a section leaves out.

Why its own room: where a peak is looked for decides what it is, whatever the solver.
In a region of one material |E|² is the sum of squares of harmonic Cartesian components, so it has no maximum inside:
a region's peak lies on its curves, or on the rim of a disc that is left out. Only these are sampled, from the region's own side.
Invariants: a disc is open, so its rim counts; the peak of coarse samples is then polished between its neighbours.
Not here: how a solution evaluates itself (`edges`, `on_edge`, `at`).
Source: maximum principle for subharmonic functions, textbook.
"""

import math

# Samples on an element's edge before polishing; ends included.
N_SHARES = 25
# Every edge whose best sample reaches this share of the best of all is polished.
POLISH_FROM = 0.98
GOLDEN = (math.sqrt(5) - 1) / 2
N_POLISH = 45


def is_left_out(section, point):
    return any(math.dist(d["at"], point) < d["radius"] * (1 - 1e-9) for d in section.leave_out)


def strength(field):
    return math.hypot(abs(field[0]), abs(field[1]))


def along(field, direction):
    """Component along a unit vector, complex where the field is."""
    return field[0] * direction[0] + field[1] * direction[1]


def polished(measure, low, high):
    """Maximum of a function with one peak on an interval, by golden section: (value, argument)."""
    a, b = high - GOLDEN * (high - low), low + GOLDEN * (high - low)
    at_a, at_b = measure(a), measure(b)
    for _ in range(N_POLISH):
        if at_a > at_b:
            high, b, at_b = b, a, at_a
            a = high - GOLDEN * (high - low)
            at_a = measure(a)
        else:
            low, a, at_a = a, b, at_b
            b = low + GOLDEN * (high - low)
            at_b = measure(b)
    return max((at_a, a), (at_b, b))


def rim_shares(section, locate, shares):
    """Shares at which a run crosses a rim, just outside the disc, by bisection."""
    found = []
    for disc in section.leave_out:
        gap = [math.dist(disc["at"], locate(share)) - disc["radius"] for share in shares]
        for s, t, before, after in zip(shares, shares[1:], gap, gap[1:]):
            if before * after >= 0:
                continue
            inside, outside = (s, t) if before < 0 else (t, s)
            for _ in range(50):
                middle = (inside + outside) / 2
                if math.dist(disc["at"], locate(middle)) < disc["radius"]:
                    inside = middle
                else:
                    outside = middle
            found.append(outside)
    return found


def on_edges(solution, edges, measured):
    """Best (value, place, signed or complex value) over edges of a measure of the field."""
    section = solution.section
    base = [0.5 - 0.5 * math.cos(math.pi * k / (N_SHARES - 1)) for k in range(N_SHARES)]
    coarse = []
    for edge in edges:
        samples = solution.on_edge(edge, base)
        shares = base
        is_near = any(
            math.dist(d["at"], p) < d["radius"] + math.dist(samples[0][0], samples[-1][0])
            for d in section.leave_out
            for p, _ in samples
        )
        if is_near:
            extra = rim_shares(section, lambda s, e=edge: solution.on_edge(e, [s])[0][0], base)
            shares = sorted(base + extra)
            samples = solution.on_edge(edge, shares)
        values = [
            -1.0 if is_left_out(section, point) else abs(measured(field)) for point, field in samples
        ]
        best = max(range(len(values)), key=values.__getitem__)
        coarse.append((values[best], best, edge, shares))
    if not coarse:
        return None
    top = max(row[0] for row in coarse)
    if top < 0:
        return None
    found = []
    for value, best, edge, shares in coarse:
        if value < POLISH_FROM * top:
            continue

        def measure(share, edge=edge):
            point, field = solution.on_edge(edge, [share])[0]
            return -1.0 if is_left_out(section, point) else abs(measured(field))

        low, high = shares[max(best - 1, 0)], shares[min(best + 1, len(shares) - 1)]
        found.append((*max(polished(measure, low, high), (value, shares[best])), edge))
    _, share, edge = max(found, key=lambda row: row[0])
    point, field = solution.on_edge(edge, [share])[0]
    signed = measured(field)
    return abs(signed), point, signed


def on_curves(solution, numbers):
    """Largest |E| on curves, from whichever side carries the larger: (value, place)."""
    edges = [edge for number in numbers for edge in solution.edges()[number]]
    return on_edges(solution, edges, strength)[:2]


def in_region(solution, index):
    """Largest |E| in a region's closure without the open discs: (value, place)."""
    section = solution.section
    region = section.regions[index - 1]
    edges = [
        edge
        for number in region["boundary"]
        for edge in solution.edges()[abs(number)]
        if edge[3] == index
    ]
    candidates = [on_edges(solution, edges, strength)]
    for disc in section.leave_out:
        candidates.append(on_rim(solution, disc, region["name"]))
    return max((c[:2] for c in candidates if c), key=lambda c: c[0])


def on_rim(solution, disc, region_name):
    """Largest |E| on the part of a disc's rim inside a region, or None where the rim misses it."""
    section = solution.section
    # Discs may overlap; the rim inside another disc does not count.
    radius = disc["radius"] * (1 + 1e-12)

    def place(angle):
        return (
            disc["at"][0] + radius * math.cos(angle),
            disc["at"][1] + radius * math.sin(angle),
        )

    def measure(angle):
        point = place(angle)
        if is_left_out(section, point):
            return -1.0
        found = solution.at(point, region_name)
        return -1.0 if found is None else strength(found[1:])

    n_angles = 360
    values = [measure(2 * math.pi * k / n_angles) for k in range(n_angles)]
    top = max(values)
    if top < 0:
        return None
    step = 2 * math.pi / n_angles
    found = []
    for k, value in enumerate(values):
        neighbours = (values[k - 1], values[(k + 1) % n_angles])
        if value < 0.9 * top or value < max(neighbours):
            continue
        found.append((value, k * step))
        found.append(polished(measure, (k - 1) * step, (k + 1) * step))
    value, angle = max(found)
    return value, place(angle), value


def tangential_on_line(solution, start, end):
    """Largest |E·t| along a straight line where it runs in the section: (signed or complex value, place)."""
    section = solution.section
    length = math.dist(start, end)
    direction = tuple((b - a) / length for a, b in zip(start, end))

    def offset(point):
        """Distance along the line, and off it."""
        v = (point[0] - start[0], point[1] - start[1])
        return (
            v[0] * direction[0] + v[1] * direction[1],
            abs(v[0] * direction[1] - v[1] * direction[0]),
        )

    def place(share):
        return tuple(a + share * (b - a) for a, b in zip(start, end))

    def measured(field):
        return along(field, direction)

    inside = []
    for edges in solution.edges().values():
        for edge in edges:
            first, last = (p for p, _ in solution.on_edge(edge, [0.0, 1.0]))
            if max(offset(first)[1], offset(last)[1]) > 1e-7:
                continue
            middle = offset(solution.on_edge(edge, [0.5])[0][0])
            run = sorted((offset(first)[0], offset(last)[0]))
            if middle[1] < 1e-7 and run[0] > -1e-9 and run[1] < length + 1e-9:
                inside.append(edge)
    best = on_edges(solution, inside, measured)

    def measure(share):
        point = place(share)
        if is_left_out(section, point):
            return -1.0
        found = solution.at(point)
        return -1.0 if found is None else abs(measured(found[1:]))

    n_steps = 4000
    shares = [k / n_steps for k in range(n_steps + 1)]
    shares = sorted(shares + rim_shares(section, place, shares))
    values = [measure(share) for share in shares]
    top = max(values)
    candidates = [(best[0], None)] if best else []
    for k, value in enumerate(values):
        low, high = max(k - 1, 0), min(k + 1, len(values) - 1)
        if value >= 0.98 * top and value >= max(values[low], values[high]):
            candidates.append((value, shares[k]))
            candidates.append(polished(measure, shares[low], shares[high]))
    _, share = max(candidates, key=lambda c: c[0])
    if share is None:
        return best[2], best[1]
    return measured(solution.at(place(share))[1:]), place(share)
