"""Arms that meet in a bus with a loss of its own: three fins as a boundary value problem, by scipy.integrate.solve_bvp.

k A T'' = h P (T - Ta) - I^2 r (1 + a (T - 20)) along each arm from the hub (x = 0) to its end (x = L, nothing flows).
At the hub all arms have one temperature, and what flows into them is the loss of the hub:
    sum_i -k A T_i'(0) = R mean(I^2) (1 + a (T - 20)).
Nothing of the project's network enters; all numbers are invented.
"""

import json
import math
import pathlib

import numpy
from scipy.integrate import solve_bvp

HERE = pathlib.Path(__file__).parent.parent
LENGTH, RADIUS, K = 2.0, 0.008, 385.0
AREA, GIRTH = math.pi * RADIUS**2, 2 * math.pi * RADIUS


def solve(currents, ambient, film, ohm_per_m, hub_ohm, alpha):
    n = len(currents)

    def along(x, y):
        out = []
        for i in range(n):
            t, slope = y[2 * i], y[2 * i + 1]
            heat = currents[i] ** 2 * ohm_per_m[i] * (1 + alpha * (t - 20))
            out += [slope, (film[i] * GIRTH * (t - ambient[i]) - heat) / (K * AREA)]
        return numpy.vstack(out)

    def ends(a, b):
        mean = sum(i * i for i in currents) / n
        into = sum(-K * AREA * a[2 * i + 1] for i in range(n))
        out = [into - hub_ohm * mean * (1 + alpha * (a[0] - 20))]
        out += [a[2 * i] - a[0] for i in range(1, n)]
        out += [b[2 * i + 1] for i in range(n)]
        return numpy.array(out)

    # Closely at the hub, where it is steep.
    x = LENGTH * numpy.linspace(0, 1, 400) ** 2
    guess = numpy.zeros((2 * n, x.size))
    guess[0::2] = 60.0
    found = solve_bvp(along, ends, x, guess, tol=1e-9, max_nodes=200_000)
    assert found.status == 0, found.message
    return found.sol(0.0)[0], [float(found.sol(0.3)[2 * i]) for i in range(n)]


def main():
    stars = []
    for hub_ohm in [0.0, 30e-6, 90e-6]:
        for currents in [[320.0, 200.0, 120.0], [400.0, 400.0, 10.0]]:
            star = {
                "currents_a": currents,
                "ambient_degc": [30.0, 25.0, 40.0],
                "film_w_per_m2k": [12.0, 15.0, 9.0],
                "ohm_per_m": [90e-6, 130e-6, 100e-6],
                "hub_ohm": hub_ohm,
                "alpha_per_k": 0.00393,
            }
            hub, at = solve(currents, star["ambient_degc"], star["film_w_per_m2k"], star["ohm_per_m"], hub_ohm, 0.00393)
            stars.append({**star, "hub_degc": float(hub), "at_300_mm_degc": at})
    text = {"length_m": LENGTH, "radius_m": RADIUS, "conductivity_w_per_mk": K, "stars": stars}
    (HERE / "stars.json").write_text(json.dumps(text, indent=1) + "\n")


main()
