"""The second witness: pressure and axial force of a uniform tube by quadrature, with mpmath at 30 digits.

Why its own room: it shares nothing with the finite elements but the laws' constants.
Invariants: lengths in mm, moduli and pressures in MPa; the tube is incompressible and stays a circular tube, its axial stretch l the same everywhere.
Not here: anything that varies along the axis.
Source: equilibrium of a thick tube, textbook.

    r^2 = a^2 + (R^2 - A^2)/l           A bore at rest, a = stretch·A, l axial stretch
    P   = int_a^b (s_t - s_r)/r dr      contact pressure; s_r = 0 at r = b, s_r = -P at r = a
    N   = 2 pi int_a^b s_z r dr         axial force on the tube: nothing closes its ends
    s_i - s_j = x_i W_i - x_j W_j       differences of principal stresses; x principal stretches, W_i = dW/dx_i
"""

from mpmath import findroot, mp, mpf, pi, quad, sqrt

mp.dps = 30


def slopes(law, stretches):
    """x·dW/dx for the three principal stretches; W = c1(I1-3) + c2(I2-3), mu/2(I1-3), or -(mu·limit/2)·ln(1 - (I1-3)/limit)."""
    squares = [x * x for x in stretches]
    first = sum(squares)
    if law["kind"] == "mooney-rivlin":
        by_first, by_second = mpf(law["c1_mpa"]), mpf(law["c2_mpa"])
    elif law["kind"] == "neo-hookean":
        by_first, by_second = mpf(law["mu_mpa"]) / 2, mpf(0)
    else:
        by_first, by_second = mpf(law["mu_mpa"]) / 2 / (1 - (first - 3) / mpf(law["limit"])), mpf(0)
    return [2 * s * (by_first + by_second * (first - s)) for s in squares]


def at_axial_stretch(case, axial):
    """Contact pressure, MPa, and axial force over pi, N."""
    bore = mpf(case["bore_mm"])
    contact = mpf(case["stretch"]) * bore
    pressure, moment = mpf(0), mpf(0)
    inner = bore

    def radius(rest):
        return sqrt(contact**2 + (rest**2 - bore**2) / axial)

    for ring in case["rings"]:
        outer = mpf(ring["outer_mm"])

        def parts(rest):
            r = radius(rest)
            radial, hoop, along = slopes(ring["law"], [rest / (r * axial), r / rest, axial])
            # dr = R/(l·r) dR
            return radial, hoop, along, r, rest / (axial * r)

        def hoop_part(rest):
            radial, hoop, _, r, by_rest = parts(rest)
            return (hoop - radial) / r * by_rest

        # 2·int s_z r dr = int (2 s_z - s_r - s_t) r dr + [r^2 s_r], and the bracket is a^2 P.
        def axial_part(rest):
            radial, hoop, along, r, by_rest = parts(rest)
            return (2 * along - radial - hoop) * r * by_rest

        pressure += quad(hoop_part, [inner, outer])
        moment += quad(axial_part, [inner, outer])
        inner = outer
    return pressure, moment + contact**2 * pressure


def tube(case):
    """Contact pressure, MPa, and axial stretch of one case."""
    if case["ends"] == "fixed-length":
        return at_axial_stretch(case, mpf(1))[0], mpf(1)
    axial = findroot(lambda l: at_axial_stretch(case, l)[1], (mpf("0.9"), mpf("1.0")), solver="anderson", tol=1e-22)
    return at_axial_stretch(case, axial)[0], axial
