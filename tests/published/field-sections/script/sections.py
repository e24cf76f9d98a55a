"""Writes the invented sections S01 … as case files; running it twice writes the same bytes.

Usage: python sections.py [FOLDER]; without a folder it writes beside this folder.
Lengths in mm, potentials in kV rms to earth. No shape here is anybody's product.
Not here: bookkeeping (drawing.py), answers (the two solvers).
"""

import math
import sys
from pathlib import Path

sys.dont_write_bytecode = True  # no caches beside the sources
from drawing import Drawing  # noqa: E402

SCREEN_TAGS = ("gnd_screen", "screen_lip", "screen_face", "screen_toplip", "screen_top")
DEFLECTOR_TAGS = ("defl_profile", "defl_tip", "defl_top")


def arc_end(heel, radius, degrees, tip_radius):
    """End of a deflector's profile that starts along the axis, and the centre of its rounded tip."""
    angle = math.radians(degrees)
    toward = (math.cos(angle), math.sin(angle))
    end = (heel[0] + radius - radius * toward[0], heel[1] - radius * toward[1])
    return end, (end[0] + tip_radius * toward[0], end[1] + tip_radius * toward[1])


def deflector(drawing, heel, radius, degrees, tip_radius, far):
    """Curves of a deflector from its heel to the far end of the section, and where they end."""
    end, center = arc_end(heel, radius, degrees, tip_radius)
    lowest = (center[0], center[1] - tip_radius)
    outermost = (center[0] + tip_radius, center[1])
    top = (outermost[0], far)
    return [
        drawing.arc(heel, end, (heel[0] + radius, heel[1]), "defl_profile"),
        drawing.arc(end, lowest, center, "defl_tip"),
        drawing.arc(lowest, outermost, center, "defl_tip"),
        drawing.line(outermost, top, "defl_top"),
    ], top


def half_joint(name, about, screen_beyond_heel):
    """A 35 kV class half joint; the screen's edge lies hidden, or so far beyond the heel."""
    d = Drawing(name, about)
    r_c, r_i, r_o, far, volts = 8.4, 17.3, 45.0, 280.0, 20.2
    z_e, r_e, inner, heel_z, thick, lip = 105.0, 26.0, 3.0, 190.0, 1.2, 0.3
    lift = thick if screen_beyond_heel else 0.0
    edge = heel_z - screen_beyond_heel
    heel = (r_i + lift, heel_z)
    foot = (r_i, edge + lip) if lift else heel
    cusp = (r_i, z_e - inner)
    cond = d.line((r_c, 70), (r_c, far), "cond")
    end = d.line((r_c, far), (r_i, far), "interior")
    screen = d.line((r_i, far), foot, "gnd_screen")
    iface = d.line(foot, cusp, "iface")
    bore = d.lines([cusp, (r_i, 70), (r_c, 70)], "electrode_bore")
    outer = r_e - r_i - inner
    electrode = [
        d.line((r_e, 0), (r_e, z_e - outer), "electrode"),
        d.arc((r_e, z_e - outer), (r_e - outer, z_e), (r_e - outer, z_e - outer), "electrode_end"),
        d.arc((r_e - outer, z_e), cusp, (r_i + inner, z_e - inner), "electrode_end"),
    ]
    step = []
    if lift:
        a, b = (r_i + lip, edge), (r_i + thick - lip, edge)
        c = (r_i + thick, edge + lip)
        step = [
            d.arc(foot, a, (r_i + lip, edge + lip), "screen_lip"),
            d.line(a, b, "screen_face"),
            d.arc(b, c, (r_i + thick - lip, edge + lip), "screen_toplip"),
            d.line(c, heel, "screen_top"),
        ]
        d.hold(0.0, "screen_lip", "screen_face", "screen_toplip", "screen_top")
        d.leave_out(foot, 0.03)
    else:
        d.leave_out(heel, 2.5)
    d.leave_out(cusp, 0.3)
    profile, top = deflector(d, heel, 55.0, 33.0, 4.0, far)
    outside = [
        d.line(top, (r_o, far), "interior"),
        d.line((r_o, far), (r_o, 0), "gnd_outer"),
        d.line((r_o, 0), (r_e, 0), "interior"),
    ]
    d.region("ins", [cond, end, screen, iface, *bore], 2.4)
    d.region("body", [*electrode, iface, *step, *profile, *outside], 2.9)
    d.hold(volts, "cond", "electrode", "electrode_bore", "electrode_end")
    d.hold(0.0, "gnd_screen", "gnd_outer", *DEFLECTOR_TAGS)
    d.capacitance()
    d.peaks_in("ins", "body")
    d.peaks_on("electrode_end", "defl_tip", *(["screen_lip", "defl_profile"] if lift else []))
    d.tangential("Et_max", (r_i, z_e - inner + 0.01), (r_i, heel_z))
    for z in (115.0, 150.0, 180.0):
        d.axial(f"iface_z{z:g}", (r_i, z))
    for label, point in {
        "ins_mid": (12.5, 150.0),
        "ins_heel": (12.5, heel_z),
        "above_end": (29.0, 99.3),
        "body_mid": (30.0, 140.0),
        "near_iface": (18.5, 170.0),
    }.items():
        d.at(label, point)
    return d


def screened_step(d, r_c, r_i, r_o, down, up, thick, lip):
    """Shared part of the screen edges at z = 0: curves by name, for a rounded edge."""
    foot = (r_i, lip)
    return {
        "cond": d.line((r_c, -down), (r_c, up), "cond"),
        "end": d.line((r_c, up), (r_i, up), "interior"),
        "screen": d.line((r_i, up), foot, "gnd_screen"),
        "lip": d.arc(foot, (r_i + lip, 0), (r_i + lip, lip), "screen_lip"),
        "toplip": d.arc(
            (r_i + thick - lip, 0), (r_i + thick, lip), (r_i + thick - lip, lip), "screen_toplip"
        ),
        "top_end": d.line((r_i + thick, up), (r_o, up), "interior"),
        "outer": d.line((r_o, up), (r_o, -down), "gnd_outer"),
    }


def square_edge():
    d = Drawing("S03", "screen edge cut square with sharp corners; only what lies away from them has a value")
    cond = d.line((6.65, -90), (6.65, 50), "cond")
    end = d.line((6.65, 50), (11.1, 50), "interior")
    screen = d.line((11.1, 50), (11.1, 0), "gnd_screen")
    iface = d.line((11.1, 0), (11.1, -90), "iface")
    low = d.line((11.1, -90), (6.65, -90), "interior")
    face = d.line((11.1, 0), (12.0, 0), "screen_face")
    top = d.line((12.0, 0), (12.0, 50), "screen_top")
    rest = d.lines([(12.0, 50), (30, 50)], "interior") + d.lines([(30, 50), (30, -90)], "gnd_outer")
    rest += d.lines([(30, -90), (11.1, -90)], "interior")
    d.region("ins", [cond, end, screen, iface, low], 2.3)
    d.region("body", [iface, face, top, *rest], 2.8)
    d.hold(8.7, "cond")
    d.hold(0.0, "gnd_screen", "screen_face", "screen_top", "gnd_outer")
    d.leave_out((11.1, 0), 0.5)
    d.leave_out((12.0, 0), 0.5)
    d.capacitance()
    d.peaks_in("ins", "body")
    d.peaks_on("screen_top")
    d.tangential("Et_beyond_disc", (11.1, -80), (11.1, 0))
    for z in (-0.5, -1.0, -2.0, -5.0, -15.0):
        d.axial(f"iface_z{z:g}", (11.1, z))
        d.want(f"phi_iface_z{z:g}", "potential-at", at=[11.1, z])
    d.at("beside", (12.6, -0.4))
    d.at("under", (10.1, 0.0))
    d.at("body_mid", (20.0, -10.0))
    return d


def air_film():
    d = Drawing("S04", "air film 0.1 mm thick and 300 mm long between bodies ten and twenty mm thick, at a rounded edge")
    # The film's outer face meets the lip where (0.15, 0.2, 0.25) is a right triangle.
    meets = (20.1, 0.05)
    cond = d.line((10, -300), (10, 60), "cond")
    end = d.line((10, 60), (20, 60), "interior")
    screen = d.line((20, 60), (20, 0.25), "gnd_screen")
    lip_low = d.arc((20, 0.25), meets, (20.25, 0.25), "screen_lip")
    lip_high = d.arc(meets, (20.25, 0), (20.25, 0.25), "screen_lip")
    face = d.line((20.25, 0), (20.75, 0), "screen_face")
    toplip = d.arc((20.75, 0), (21, 0.25), (20.75, 0.25), "screen_toplip")
    top = d.line((21, 0.25), (21, 60), "screen_top")
    iface = d.line((20, 0.25), (20, -300), "iface")
    outer_face = d.line(meets, (20.1, -300), "film_out")
    ends = d.lines([(10, -300), (20, -300), (20.1, -300), (40.1, -300)], "interior")
    rest = d.lines([(21, 60), (40.1, 60)], "interior") + d.lines([(40.1, 60), (40.1, -300)], "gnd_outer")
    d.region("ins", [cond, end, screen, iface, ends[0]], 2.3)
    d.region("film", [iface, ends[1], outer_face, lip_low], 1.0)
    d.region("body", [outer_face, lip_high, face, toplip, top, *rest, ends[2]], 2.8)
    d.hold(12.0, "cond")
    d.hold(0.0, *SCREEN_TAGS, "gnd_outer")
    d.leave_out((20, 0.25), 0.025)
    d.leave_out(meets, 0.02)
    d.capacitance()
    d.peaks_in("ins", "film", "body")
    d.peaks_on("screen_lip", "screen_toplip")
    d.tangential("Et_max", (20, -290), (20, 0.2))
    for z in (-0.1, -1.0, -10.0, -150.0, -290.0):
        d.at(f"film_z{z:g}", (20.05, z))
    for z in (-1.0, -10.0):
        d.axial(f"iface_z{z:g}", (20, z))
        d.field(f"film_out_z{z:g}_film", (20.1, z), "film")
        d.field(f"film_out_z{z:g}_body", (20.1, z), "body")
    return d


def air_wedge():
    d = Drawing("S05", "triangle of air 3 mm long at the foot of the screen step")
    foot, knee, tip = (11.1, 0), (11.85, 0), (11.1, -3)
    cond = d.line((6.65, -80), (6.65, 40), "cond")
    end = d.line((6.65, 40), (11.1, 40), "interior")
    screen = d.line((11.1, 40), foot, "gnd_screen")
    air_iface = d.line(foot, tip, "iface_air")
    iface = d.line(tip, (11.1, -80), "iface")
    low = d.line((11.1, -80), (6.65, -80), "interior")
    face = d.line(foot, knee, "screen_face")
    slope = d.line(knee, tip, "wedge_slope")
    toplip = d.arc(knee, (12.1, 0.25), (11.85, 0.25), "screen_toplip")
    top = d.line((12.1, 0.25), (12.1, 40), "screen_top")
    rest = d.lines([(12.1, 40), (30, 40)], "interior") + d.lines([(30, 40), (30, -80)], "gnd_outer")
    rest += d.lines([(30, -80), (11.1, -80)], "interior")
    d.region("ins", [cond, end, screen, air_iface, iface, low], 2.3)
    d.region("wedge", [air_iface, slope, face], 1.0)
    d.region("body", [iface, slope, toplip, top, *rest], 2.8)
    d.hold(8.7, "cond")
    d.hold(0.0, "gnd_screen", "screen_face", "screen_toplip", "screen_top", "gnd_outer")
    d.leave_out(foot, 0.1)
    d.leave_out(knee, 0.05)
    d.leave_out(tip, 0.2)
    d.capacitance()
    d.peaks_in("ins", "wedge", "body")
    d.peaks_on("wedge_slope", "screen_toplip", "screen_face")
    d.tangential("Et_max", (11.1, -70), (11.1, 0))
    d.tangential("Et_slope", knee, tip)
    for z in (-0.5, -1.5, -2.5):
        d.axial(f"iface_z{z:g}", (11.1, z))
    middle = (11.475, -1.5)
    d.field("slope_mid_wedge", middle, "wedge")
    d.field("slope_mid_body", middle, "body")
    d.at("wedge_mid", (11.3, -1.0))
    d.at("body_mid", (18.0, -8.0))
    return d


def plane_gap(name, about, arcs_of, at):
    """A plane gap of 10 mm with a void on the axis, whose outline runs from its top to its bottom."""
    d = Drawing(name, about)
    top, bottom, arcs = arcs_of(d)
    seam = d.line((0, 5), top, "axis")
    inner = d.line(bottom, top, "axis")
    below = d.line(bottom, (0, -5), "axis")
    rest = [
        d.line((0, -5), (25, -5), "lower"),
        d.line((25, -5), (25, 5), "side"),
        d.line((25, 5), (0, 5), "upper"),
    ]
    d.region("solid", [seam, *arcs, below, *rest], 2.8)
    d.region("void", [inner, *arcs], 1.0)
    d.hold(10.0, "upper")
    d.hold(0.0, "lower")
    d.capacitance()
    d.peaks_in("solid", "void")
    d.peaks_on("void_rim", "upper")
    d.tangential("Et_axis", (0, -5), (0, 5))
    for label, point in at.items():
        d.at(label, point)
        d.axial(label, point)
    return d


def sphere_void():
    def arcs_of(d):
        top, side, bottom = (0, 0.5), (0.5, 0), (0, -0.5)
        return top, bottom, [d.arc(top, side, (0, 0), "void_rim"), d.arc(side, bottom, (0, 0), "void_rim")]

    at = {"center": (0, 0), "in_void": (0.2, 0.3), "above": (0, 1.0), "away": (3.0, 2.0)}
    return plane_gap("S06", "spherical void of radius 0.5 mm on the axis of a plane gap", arcs_of, at)


def oblate_void():
    def arcs_of(d):
        half_width, half_height, rim, z = 1.0, 0.15, 0.08, 2.0
        reach = half_width - rim
        broad = (reach**2 + half_height**2 - rim**2) / (2 * (half_height - rim))
        arcs = []
        top, bottom = (0, z + half_height), (0, z - half_height)
        # Where the broad arc passes into the rim: on the line through both centres.
        rise = broad - half_height
        share = rim / (broad - rim)
        meet = (reach * (1 + share), rise * share)
        upper, side, lower = (meet[0], z + meet[1]), (half_width, z), (meet[0], z - meet[1])
        arcs.append(d.arc(top, upper, (0, z - rise), "void_face"))
        arcs.append(d.arc(upper, side, (reach, z), "void_rim"))
        arcs.append(d.arc(side, lower, (reach, z), "void_rim"))
        arcs.append(d.arc(lower, bottom, (0, z + rise), "void_face"))
        return top, bottom, arcs

    at = {"center": (0, 2.0), "in_void": (0.6, 2.0), "above": (0, 3.0), "beside": (1.3, 2.0)}
    return plane_gap("S07", "flat void 2 mm by 0.3 mm with rounded rim on the axis of a plane gap", arcs_of, at)


def lens_void():
    d = Drawing("S08", "lens-shaped ring void between two layers, off the axis; its tips are sharp")
    half, bulge = 1.0, 0.15
    radius = (half**2 + bulge**2) / (2 * bulge)
    upper, lower = (11.1, half), (11.1, -half)
    mid_in, mid_out = (11.1 - bulge, 0), (11.1 + bulge, 0)
    center_in, center_out = (11.1 - bulge + radius, 0), (11.1 + bulge - radius, 0)
    inner = [d.arc(upper, mid_in, center_in, "void_in"), d.arc(mid_in, lower, center_in, "void_in")]
    outer = [d.arc(upper, mid_out, center_out, "void_out"), d.arc(mid_out, lower, center_out, "void_out")]
    high = d.line((11.1, 20), upper, "iface")
    low = d.line(lower, (11.1, -20), "iface")
    cond = d.line((6.65, -20), (6.65, 20), "cond")
    ends = [d.line((6.65, 20), (11.1, 20), "interior"), d.line((11.1, -20), (6.65, -20), "interior")]
    rest = [
        d.line((11.1, -20), (30, -20), "interior"),
        d.line((30, -20), (30, 20), "gnd_outer"),
        d.line((30, 20), (11.1, 20), "interior"),
    ]
    d.region("ins", [cond, ends[0], high, *inner, low, ends[1]], 2.3)
    d.region("void", [*inner, outer[1], outer[0]], 1.0)
    d.region("body", [high, *outer, low, *rest], 2.8)
    d.hold(8.7, "cond")
    d.hold(0.0, "gnd_outer")
    d.leave_out(upper, 0.1)
    d.leave_out(lower, 0.1)
    d.capacitance()
    d.peaks_in("ins", "void", "body")
    d.peaks_on("void_in", "void_out")
    d.tangential("Et_iface", (11.1, -15), (11.1, 15))
    d.at("void_mid", (11.1, 0))
    d.at("void_high", (11.1, 0.7))
    d.axial("void_high", (11.1, 0.7))
    d.field("inner_face_void", mid_in, "void")
    d.field("inner_face_ins", mid_in, "ins")
    d.field("outer_face_void", mid_out, "void")
    d.field("outer_face_body", mid_out, "body")
    d.at("beside", (11.2, 1.5))
    d.at("ins_mid", (9.0, 0))
    return d


def floating_ring():
    d = Drawing("S09", "floating ring of round section in the body beside a stress cone")
    far, down, z_r, radius = 60.0, 100.0, -34.0, 1.25
    ring = (15.5, z_r)
    east, north = (ring[0] + radius, z_r), (ring[0], z_r + radius)
    west, south = (ring[0] - radius, z_r), (ring[0], z_r - radius)
    heel = (11.1, 0)
    cond = d.line((6.65, -down), (6.65, far), "cond")
    end = d.line((6.65, far), (11.1, far), "interior")
    screen = d.line((11.1, far), heel, "gnd_screen")
    upper_iface = d.line(heel, (11.1, z_r), "iface")
    lower_iface = d.line((11.1, z_r), (11.1, -down), "iface")
    low = d.line((11.1, -down), (6.65, -down), "interior")
    profile, top = deflector(d, heel, 40.0, 35.0, 3.0, far)
    arcs = [d.arc(a, b, ring, "ring") for a, b in ((west, north), (north, east), (east, south), (south, west))]
    seams = [d.line((11.1, z_r), west, "seam"), d.line(east, (30, z_r), "seam")]
    rest = [
        d.line(top, (30, far), "interior"),
        d.line((30, far), (30, z_r), "gnd_outer"),
        d.line((30, z_r), (30, -down), "gnd_outer"),
        d.line((30, -down), (11.1, -down), "interior"),
    ]
    d.region("ins", [cond, end, screen, upper_iface, lower_iface, low], 2.3)
    d.region(
        "body_high", [upper_iface, seams[0], arcs[0], arcs[1], seams[1], rest[1], rest[0], *profile[::-1]], 2.8, material="body"
    )
    d.region("body_low", [lower_iface, seams[0], arcs[3], arcs[2], seams[1], rest[2], rest[3]], 2.8, material="body")
    d.hold(8.7, "cond")
    d.hold(0.0, "gnd_screen", "gnd_outer", *DEFLECTOR_TAGS)
    d.float("ring")
    d.leave_out(heel, 2.0)
    d.capacitance()
    d.peaks_in("ins", "body_high", "body_low")
    d.peaks_on("ring", "defl_tip")
    d.tangential("Et_max", (11.1, -90), (11.1, 5))
    d.want("phi_ring", "potential-at", at=list(west))
    for z in (-10.0, -30.0, -38.0):
        d.axial(f"iface_z{z:g}", (11.1, z))
    d.at("between", (13.0, -34.0), "body_high")
    d.at("outside", (22.0, -34.0), "body_low")
    d.at("near_tip", (20.0, -29.0))
    return d


def crescent():
    d = Drawing("S10", "coating that begins with no thickness: an arc inside a larger arc, both tangent to the interface")
    far, down, heel, cut = 60.0, 100.0, (11.1, 0), -20.0
    under = (51.1 - math.sqrt(40.0**2 - cut**2), cut)
    over = (71.1 - math.sqrt(60.0**2 - cut**2), cut)
    end, center = arc_end(heel, 40.0, 35.0, 3.0)
    lowest, outermost = (center[0], center[1] - 3.0), (center[0] + 3.0, center[1])
    cond = d.line((6.65, -down), (6.65, far), "cond")
    ins_end = d.line((6.65, far), (11.1, far), "interior")
    screen = d.line((11.1, far), heel, "gnd_screen")
    iface = d.line(heel, (11.1, -down), "iface")
    low = d.line((11.1, -down), (6.65, -down), "interior")
    coated = d.arc(heel, under, (51.1, 0), "defl_profile")
    bare = d.arc(under, end, (51.1, 0), "defl_bare")
    coat_face = d.arc(heel, over, (71.1, 0), "coat_face")
    coat_end = d.line(over, under, "coat_end")
    tip = [d.arc(end, lowest, center, "defl_tip"), d.arc(lowest, outermost, center, "defl_tip")]
    top = d.line(outermost, (outermost[0], far), "defl_top")
    rest = [
        d.line((outermost[0], far), (30, far), "interior"),
        d.line((30, far), (30, -down), "gnd_outer"),
        d.line((30, -down), (11.1, -down), "interior"),
    ]
    d.region("ins", [cond, ins_end, screen, iface, low], 2.3)
    d.region("coat", [coated, coat_end, coat_face], 8.0)
    d.region("body", [coat_face, coat_end, bare, *tip, top, *rest, iface], 2.8)
    d.hold(8.7, "cond")
    d.hold(0.0, "gnd_screen", "gnd_outer", "defl_bare", *DEFLECTOR_TAGS)
    d.leave_out(heel, 3.0)
    d.leave_out(over, 0.3)
    d.leave_out(under, 0.3)
    d.capacitance()
    d.peaks_in("ins", "coat", "body")
    d.peaks_on("coat_face", "defl_profile", "defl_tip")
    d.tangential("Et_max", (11.1, -90), (11.1, 5))
    for z in (-5.0, -12.0, -20.0, -30.0):
        d.axial(f"iface_z{z:g}", (11.1, z))
        d.want(f"phi_iface_z{z:g}", "potential-at", at=[11.1, z])
    on_face = (71.1 - math.sqrt(60.0**2 - 15.0**2), -15.0)
    d.field("face_coat", on_face, "coat")
    d.field("face_body", on_face, "body")
    d.at("in_coat", (14.5, -18.0))
    d.at("body_mid", (16.0, -40.0))
    return d


def lens_gap():
    d = Drawing("S11", "lens-shaped air gap on the axis between two electrodes with ball ends, held in solid")
    high, low = (0, 9.0), (0, -13.0)
    top_at = (4.0, 9.0 - math.sqrt(48.0))
    low_at = (4.0, -13.0 + math.sqrt(128.0))
    axis = d.line((0, -1), (0, 1), "axis")
    upper = [d.arc((0, 1), top_at, high, "ball_high"), d.arc(top_at, (8, 9), high, "ball_high")]
    lower = [d.arc((0, -1), low_at, low, "ball_low"), d.arc(low_at, (12, -13), low, "ball_low")]
    wall = d.line(low_at, top_at, "wall")
    stems = [d.line((8, 9), (8, 30), "stem_high"), d.line((12, -13), (12, -35), "stem_low")]
    rest = d.lines([(8, 30), (40, 30), (40, -35), (12, -35)], "outside")
    d.region("air", [axis, upper[0], wall, lower[0]], 1.0)
    d.region("solid", [wall, upper[1], stems[0], *rest, stems[1], lower[1]], 3.5)
    d.hold(15.0, "ball_high", "stem_high")
    d.hold(0.0, "ball_low", "stem_low")
    d.leave_out(top_at, 0.2)
    d.leave_out(low_at, 0.2)
    d.capacitance()
    d.peaks_in("air", "solid")
    d.peaks_on("ball_high", "ball_low", "wall")
    d.tangential("Et_wall", low_at, top_at)
    d.tangential("Et_axis", (0, -1), (0, 1))
    for label, point in {"mid": (0, 0), "low": (0, -0.8), "half": (2.0, 0.1)}.items():
        d.at(label, point)
        d.axial(label, point)
    on_wall = (4.0, 0.2)
    d.field("wall_air", on_wall, "air")
    d.field("wall_solid", on_wall, "solid")
    d.axial("wall", on_wall)
    d.at("solid_mid", (12.0, -2.0))
    return d


def control_tube(name, about, tube, hertz=None, thick=2.0, down_to=-60.0, disc=0.5):
    """A tube over a rounded screen edge: its material (eps_r, sigma), laid over the screen too where it is thick."""
    d = Drawing(name, about)
    r_i, far, down, screen, lip = 11.1, 60.0, 140.0, 1.0, 0.25
    out, over = r_i + thick, thick > screen
    c = screened_step(d, 6.65, r_i, 40.0, down, far, screen, lip)
    foot, end_in, end_out = (r_i, lip), (r_i, down_to), (out, down_to)
    iface = [d.line(foot, end_in, "iface"), d.line(end_in, (r_i, -down), "iface_bare")]
    low = [d.line((r_i, -down), (6.65, -down), "interior"), d.line((40, -down), (r_i, -down), "interior")]
    tube_low = d.line(end_in, end_out, "tube_end")
    knee = (r_i + screen, 20.0) if over else (out, 0.0)
    tube_out = d.lines([end_out, (out, 20.0)], "tube_out") if over else d.lines([end_out, knee], "tube_out")
    faces = [(r_i + lip, 0), (r_i + screen - lip, 0)]
    if over:
        face = [d.line(*faces, "screen_face")]
        top = d.lines([(r_i + screen, lip), knee, (r_i + screen, far)], "screen_top")
        cap = [d.line((out, 20.0), knee, "tube_end")]
        edge_in, edge_out = [*face, c["toplip"], top[0]], [top[1]]
    else:
        face = d.lines([faces[0], knee, faces[1]], "screen_face")
        top = d.lines([(r_i + screen, lip), (r_i + screen, far)], "screen_top")
        cap = []
        edge_in, edge_out = [face[0]], [face[1], c["toplip"], *top]
    d.region("ins", [c["cond"], c["end"], c["screen"], *iface, low[0]], 2.3)
    d.region("tube", [iface[0], tube_low, *tube_out, *cap, *edge_in[::-1], c["lip"]], *tube)
    d.region("body", [iface[1], tube_low, *tube_out, *cap, *edge_out, c["top_end"], c["outer"], low[1]], 2.8)
    d.hold(8.7, "cond")
    d.hold(0.0, *SCREEN_TAGS, "gnd_outer")
    d.leave_out(foot, 0.025)
    for corner in [end_in, end_out] + ([(out, 20.0)] if over else []):
        d.leave_out(corner, disc)
    if hertz:
        d.frequency(hertz)
    else:
        # Of a lossy section the format does not say which part of 2W/V² is meant.
        d.capacitance()
    d.peaks_in("ins", "tube", "body")
    d.peaks_on("screen_lip", "tube_out", "iface")
    d.tangential("Et_max", (r_i, -120), (r_i, 0.2))
    d.tangential("Et_outer", (out, down_to + 0.1), (out, -0.1))
    for z in (-1.0, -5.0, -20.0, down_to + 2, down_to - 2):
        d.axial(f"iface_z{z:g}", (r_i, z))
        d.want(f"phi_iface_z{z:g}", "potential-at", at=[r_i, z])
    d.field("out_tube", (out, -5.0), "tube")
    d.field("out_body", (out, -5.0), "body")
    d.at("in_tube", (r_i + thick / 2, -2.0))
    d.at("body_mid", (20.0, -30.0))
    return d


def cones():
    d = Drawing("S16", "insulation cut to a cone, filler, and a body with a slightly conical bore")
    apex, shoulder = (6.65, -18.0), (11.1, 0.0)
    cond = d.lines([(6.65, 60), apex, (6.65, -70)], "cond")
    end = d.line((11.1, 60), (6.65, 60), "interior")
    screen = d.line((11.1, 60), (11.1, 22), "gnd_screen")
    iface = d.line((11.1, 22), shoulder, "iface")
    cone = d.line(shoulder, apex, "cone")
    bore = d.line(shoulder, (13.5, -70), "bore")
    low = d.lines([(6.65, -70), (13.5, -70), (30, -70)], "interior")
    profile, top = deflector(d, (11.1, 22), 30.0, 40.0, 3.0, 60.0)
    rest = [d.line(top, (30, 60), "interior"), d.line((30, 60), (30, -70), "gnd_outer")]
    d.region("ins", [cond[0], cone, iface, screen, end], 2.3)
    d.region("filler", [cone, cond[1], low[0], bore], 4.5)
    d.region("body", [bore, low[1], rest[1], rest[0], *profile[::-1], iface], 2.8)
    d.hold(8.7, "cond")
    d.hold(0.0, "gnd_screen", "gnd_outer", *DEFLECTOR_TAGS)
    d.leave_out(apex, 0.3)
    d.leave_out(shoulder, 0.3)
    d.leave_out((11.1, 22), 1.5)
    d.leave_out((13.5, -70), 0.3)
    d.capacitance()
    d.peaks_in("ins", "filler", "body")
    d.peaks_on("cone", "bore", "defl_tip", "cond")
    d.tangential("Et_cone", apex, shoulder)
    d.tangential("Et_bore", shoulder, (13.5, -70))
    d.tangential("Et_iface", shoulder, (11.1, 22))
    on_cone = (8.875, -9.0)
    on_bore = (12.3, -35.0)
    d.want("phi_cone", "potential-at", at=list(on_cone))
    d.field("cone_ins", on_cone, "ins")
    d.field("cone_filler", on_cone, "filler")
    d.want("phi_bore", "potential-at", at=list(on_bore))
    d.field("bore_filler", on_bore, "filler")
    d.field("bore_body", on_bore, "body")
    d.axial("iface_z10", (11.1, 10.0))
    d.axial("in_ins", (9.5, 5.0))
    d.at("filler_mid", (9.0, -30.0))
    d.at("body_mid", (20.0, -5.0))
    return d


def rod_plane():
    d = Drawing("S17", "rod with hemispherical end of radius 2 mm on the axis above a plane, in air")
    axis = d.line((0, -20), (0, 0), "axis")
    tip = d.arc((0, 0), (2, 2), (0, 2), "tip")
    rod = d.line((2, 2), (2, 60), "rod")
    rest = d.lines([(2, 60), (80, 60), (80, -20)], "outside")
    plane = d.line((80, -20), (0, -20), "plane")
    d.region("air", [axis, tip, rod, *rest, plane], 1.0)
    d.hold(15.0, "tip", "rod")
    d.hold(0.0, "plane")
    d.capacitance()
    d.peaks_in("air")
    d.peaks_on("tip", "rod", "plane")
    d.tangential("Et_axis", (0, -20), (0, 0))
    d.tangential("Et_radial", (2.5, -1), (20, -1))
    for label, point in {
        "at_tip": (0, 0),
        "axis_1": (0, -1.0),
        "axis_10": (0, -10.0),
        "on_plane": (0, -20.0),
        "beside": (4.0, 1.0),
        "away": (30.0, 0.0),
    }.items():
        d.axial(label, point)
        # On the electrodes the potential is given.
        if label not in ("at_tip", "on_plane"):
            d.at(label, point)
    d.field("tip", (0, 0), "air")
    return d


def floating_foils(name, about, hertz=None):
    """Two floating foils with rounded ends; the section is the upper half of a symmetric one."""
    d = Drawing(name, about)
    foils = [("foil_in", 13.0, 24.0), ("foil_out", 19.0, 14.0)]
    thick, far = 0.5, 50.0
    starts, outlines, floor = [8.0], [], []
    for tag, r, height in foils:
        half = thick / 2
        a, b = (r, height - half), (r + thick, height - half)
        middle, top = (r + half, height - half), (r + half, height)
        outlines += [
            d.line((r, 0), a, tag),
            d.arc(a, top, middle, tag),
            d.arc(top, b, middle, tag),
            d.line(b, (r + thick, 0), tag),
        ]
        floor.append(d.line((starts[-1], 0), (r, 0), "floor"))
        starts.append(r + thick)
    floor.append(d.line((starts[-1], 0), (26, 0), "floor"))
    wall = [d.line((26, 0), (26, 20), "gnd_flange"), d.line((26, 20), (26, far), "iface")]
    cond = d.line((8, far), (8, 0), "cond")
    top = d.line((26, far), (8, far), "interior")
    out = [
        d.line((26, 20), (60, 20), "gnd_plate"),
        d.line((60, 20), (60, far), "outside"),
        d.line((60, far), (26, far), "outside"),
    ]
    inner = [floor[0], *outlines[:4], floor[1], *outlines[4:], floor[2]]
    d.region("paper", [*inner, *wall, top, cond], 3.8, 2e-10 if hertz else None)
    d.region("oil", [wall[1], *out], 2.2, 1e-11 if hertz else None)
    d.hold(20.2, "cond")
    d.hold(0.0, "gnd_flange", "gnd_plate")
    d.float("foil_in", "foil_out")
    if hertz:
        d.frequency(hertz)
    else:
        d.capacitance()
    d.leave_out((26, 20), 0.3)
    d.peaks_in("paper", "oil")
    d.peaks_on("foil_in", "foil_out", "iface")
    d.tangential("Et_iface", (26, 20), (26, 49))
    d.want("phi_foil_in", "potential-at", at=[13.25, 24.0])
    d.want("phi_foil_out", "potential-at", at=[19.25, 14.0])
    for z in (21.0, 25.0, 40.0):
        d.axial(f"iface_z{z:g}", (26, z))
        d.want(f"phi_iface_z{z:g}", "potential-at", at=[26, z])
    d.at("between", (16.0, 5.0))
    d.at("above", (13.25, 27.0))
    d.at("oil_mid", (35.0, 30.0))
    d.field("iface_paper", (26, 25.0), "paper")
    d.field("iface_oil", (26, 25.0), "oil")
    return d


def tapered_plug(name, about, film_eps, film=0.15):
    """An insulating plug on a stud, its taper from z = 0 to 80 in a film and a rubber body with electrode and deflector."""
    d = Drawing(name, about)
    r_c, r_o, far, down, volts = 8.0, 40.0, 110.0, -40.0, 20.2
    large, small, r_e, end, tip = (24.0, 0.0), (15.0, 80.0), 24.0, 3.0, 3.0
    slant = math.dist(large, small)
    along = tuple((b - a) / slant for a, b in zip(large, small))
    out = (along[1], -along[0])
    # The film's outer face, cut where the taper's ends are.
    wide = film / out[0]
    foot, front = (large[0] + wide, large[1]), (small[0] + wide, small[1])

    def off(start, up, outward):
        return tuple(p + up * a + outward * n for p, a, n in zip(start, along, out))

    # The deflector's profile leaves the film's face tangentially; so does the rounded end of the electrode.
    heel, cusp = off(foot, 10.0, 0.0), off(foot, 62.0, 0.0)
    radius, angle = 40.0, math.radians(35.0)
    edge = off(heel, radius * math.sin(angle), radius - radius * math.cos(angle))
    center = off(edge, -tip * math.sin(angle), tip * math.cos(angle))
    highest, outermost = (center[0], center[1] + tip), (center[0] + tip, center[1])
    middle = off(cusp, 0.0, end)
    lowest = (middle[0], middle[1] - end)
    round_out = r_e - lowest[0]
    shoulder = (r_e, lowest[1] + round_out)
    cond = d.line((r_c, down), (r_c, small[1]), "cond")
    faces = [d.line((r_c, small[1]), small, "front"), d.line(small, front, "front")]
    cone = d.line(small, large, "cone")
    collar = d.line(large, (large[0], down), "collar")
    low = d.line((large[0], down), (r_c, down), "interior")
    film_end = d.line(large, foot, "collar")
    bore = [d.line(foot, heel, "defl_bore"), d.line(heel, cusp, "film_out"), d.line(cusp, front, "electrode_bore")]
    profile = [
        d.arc(heel, edge, off(heel, 0.0, radius), "defl_profile"),
        d.arc(edge, highest, center, "defl_tip"),
        d.arc(highest, outermost, center, "defl_tip"),
        d.line(outermost, (outermost[0], 0.0), "defl_top"),
    ]
    electrode = [
        d.arc(cusp, lowest, middle, "electrode_end"),
        d.arc(lowest, shoulder, (lowest[0], lowest[1] + round_out), "electrode_end"),
        d.line(shoulder, (r_e, far), "electrode"),
    ]
    rest = [d.line((outermost[0], 0.0), (r_o, 0.0), "interior"), d.line((r_o, 0.0), (r_o, far), "gnd_outer")]
    rest.append(d.line((r_o, far), (r_e, far), "interior"))
    d.region("plug", [cond, faces[0], cone, collar, low], 4.0)
    d.region("film", [film_end, *bore, faces[1], cone], film_eps)
    d.region("rubber", [bore[1], *electrode, *rest[::-1], *profile[::-1]], 2.8)
    d.hold(volts, "cond", "front", "electrode", "electrode_bore", "electrode_end")
    d.hold(0.0, "collar", "gnd_outer", "defl_bore", *DEFLECTOR_TAGS)
    d.leave_out(large, 0.5)
    d.leave_out(heel, 2.0)
    d.leave_out(cusp, 0.3)
    d.leave_out(small, 0.05)
    plug_wanted(d, lambda z, share: (large[0] + (z - large[1]) * along[0] / along[1] + share * wide, z))
    d.tangential("Et_cone", large, small)
    d.tangential("Et_film_out", heel, cusp)
    return d


def plug_wanted(d, in_film):
    """Wanted numbers of a tapered plug; `in_film(z, share)` is a place in its film, from the cone outward."""
    d.capacitance()
    d.peaks_in("plug", "film", "rubber")
    d.peaks_on("electrode_end", "defl_tip", "defl_profile", "cone")
    for z in (5.0, 24.0, 40.0, 56.0, 70.0):
        d.at(f"film_z{z:g}", in_film(z, 0.5))
    for z in (24.0, 48.0):
        d.want(f"phi_cone_z{z:g}", "potential-at", at=list(in_film(z, 0.0)))
        d.field(f"cone_z{z:g}_plug", in_film(z, 0.0), "plug")
        d.field(f"cone_z{z:g}_film", in_film(z, 0.0), "film")
    for label, point in {
        "plug_low": (16.0, -10.0),
        "plug_mid": (14.0, 36.0),
        "near_tip": (29.0, 40.5),
        "between": (24.0, 46.0),
        "near_end": (21.0, 53.5),
        "rubber_high": (31.0, 75.0),
    }.items():
        d.at(label, point)
    d.axial("between", (24.0, 46.0))


def layer_joint(name, about, sigma, hertz):
    """Half a joint without a deflector: a layer 3 mm thick that conducts lies on the cable and over the edge of its screen."""
    d = Drawing(name, about)
    on, top, out, inner, outer = 11.1, 12.1, 14.1, 6.65, 30.0
    low, high, z, rho = 55.0, 153.6, 140.0, 0.25
    foot, over, start = (on, z + rho), (top, z + rho), (on, 73.0)
    edge = [
        d.arc(foot, (on + rho, z), (on + rho, z + rho), "gnd_edge"),
        d.line((on + rho, z), (top - rho, z), "gnd_edge"),
        d.arc((top - rho, z), over, (top - rho, z + rho), "gnd_edge"),
    ]
    iface = d.lines([foot, start, (on, low)], "iface")
    bore = d.line((on, low), (inner, low), "electrode_bore")
    cond = d.line((inner, low), (inner, high), "cond")
    end = d.line((inner, high), (on, high), "interior")
    screen = d.line((on, high), foot, "gnd_screen")
    d.region("ins", [*iface, bore, cond, end, screen], 2.3)
    covered = d.line(over, (top, high), "gnd_screen")
    layer_end = d.line((top, high), (out, high), "interior")
    layer_out = d.line((out, high), (out, 73.0), "layer_out")
    under = d.lines([(out, 73.0), (out, low), (on, low)], "electrode_bore")
    d.region("layer", [*edge, covered, layer_end, layer_out, *under, *iface[::-1]], 10.0, sigma)
    rest = d.lines([(out, high), (outer, high)], "interior")
    rest += d.lines([(outer, high), (outer, low)], "gnd_outer")
    rest += d.lines([(outer, low), (21.1, low)], "interior")
    electrode = [
        d.line((21.1, low), (21.1, 71.0), "electrode"),
        d.arc((21.1, 71.0), (17.1, 75.0), (17.1, 71.0), "electrode_end"),
        d.line((17.1, 75.0), (16.1, 75.0), "electrode"),
        d.arc((16.1, 75.0), (out, 73.0), (16.1, 73.0), "electrode_end"),
    ]
    d.region("body", [layer_out, *rest, *electrode], 2.8)
    d.hold(8.7, "cond", "electrode_bore", "electrode", "electrode_end")
    d.hold(0.0, "gnd_edge", "gnd_screen", "gnd_outer")
    d.frequency(hertz)
    d.leave_out(foot, 0.1 * rho)
    d.leave_out((out, 73.0), 0.2)
    d.peaks_on("electrode_end")
    d.tangential("Et_iface", (on, 73.01), (on, z - 0.5))
    d.tangential("Et_layer_out", (out, 73.01), (out, z - 0.5))
    for at in (80.0, 100.0, 120.0, 135.0):
        d.want(f"phi_iface_z{at:g}", "potential-at", at=[on, at])
    d.axial("before_edge", (on, z - 0.5))
    return d


def sections():
    """All sections by the slug of their file."""
    tube = "resistive tube over a rounded screen edge"
    plug = "tapered plug in a rubber body, between them a film 0.15 mm thick"
    layer = "half joint with a layer over the screen edge,"
    return {
        "S01-half-joint-35": half_joint("S01", "35 kV class half joint, screen edge hidden under the deflector", 0.0),
        "S02-half-joint-35-long5": half_joint("S02", "35 kV class half joint, screen edge 5 mm beyond the heel", 5.0),
        "S03-square-edge": square_edge(),
        "S04-air-film": air_film(),
        "S05-air-wedge": air_wedge(),
        "S06-sphere-void": sphere_void(),
        "S07-flat-void": oblate_void(),
        "S08-lens-void": lens_void(),
        "S09-floating-ring": floating_ring(),
        "S10-crescent": crescent(),
        "S11-lens-gap": lens_gap(),
        "S12-tube-60hz": control_tube("S12", f"{tube}, 1e-7 S/m at 60 Hz", (5.0, 1e-7), 60.0),
        "S13-tube-0.1hz": control_tube("S13", f"{tube}, 1e-8 S/m at 0.1 Hz", (5.0, 1e-8), 0.1),
        "S14-tube-60hz-weak": control_tube("S14", f"{tube}, 1e-8 S/m at 60 Hz", (5.0, 1e-8), 60.0),
        "S15-thin-layer": control_tube("S15", "layer 0.5 mm thick of permittivity 30 at a rounded screen edge", (30.0,), None, 0.5, -50.0, 0.3),
        "S16-cones": cones(),
        "S17-rod-plane": rod_plane(),
        "S18-floating-foils": floating_foils("S18", "two floating foils about a conductor, upper half"),
        "S19-floating-foils-0.1hz": floating_foils("S19", "two floating foils about a conductor at 0.1 Hz in lossy paper", 0.1),
        "S20-tube-60hz-strong": control_tube("S20", f"{tube}, 1e-6 S/m at 60 Hz", (5.0, 1e-6), 60.0),
        "S21-plug-grease-film": tapered_plug("S21", f"{plug} filled with grease", 4.5),
        "S22-plug-air-film": tapered_plug("S22", f"{plug} filled with air", 1.0),
        "S23-layer-50hz": layer_joint("S23", f"{layer} of 1e-9 S/m at 50 Hz", 1e-9, 50.0),
        "S24-layer-60hz-strong": layer_joint("S24", f"{layer} of 1e-7 S/m at 60 Hz", 1e-7, 60.0),
        "S25-layer-0.1hz": layer_joint("S25", f"{layer} of 1e-9 S/m at 0.1 Hz", 1e-9, 0.1),
    }


def main():
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).resolve().parent.parent
    for slug, drawing in sections().items():
        drawing.case["case"] = slug
        (folder / f"{slug}.case.json").write_text(drawing.text(), encoding="utf-8")


if __name__ == "__main__":
    main()
