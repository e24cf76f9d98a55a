//! Sense: numbers that are readable but meaningless, and wanted numbers whose field is singular.
//!
//! **Why separate.** A mesh would answer all of them, and the answers would depend on the mesh.

use super::asked::Asked;
use super::complaint::{Complaints, quoted};
use super::matter::Matter;
use super::si;
use super::tree::{Node, Segment};
use crate::field::{Corner, Section, Wanted, corners};
use crate::outline::{Outline, Point, place_mm};

/// Least distance from the axis, as a share of the largest radius, of a place that does not lie on it.
const AXIS_SHARE: f64 = 1e-5;
/// Distance below which a place lies on the axis, m.
const ON_AXIS: f64 = 1e-15;
/// Difference below which potentials count as equal, V, or as a share of the greatest.
const VOLTS_LEAST: f64 = 1e-6;
const VOLTS_SHARE: f64 = 1e-9;
/// Least positive conductivity, S/m, and least positive frequency, Hz.
const SIGMA_LEAST: f64 = 1e-25;
const FREQUENCY_LEAST: f64 = 1e-9;
/// Distance within which a place is at a corner, m.
const AT_CORNER: f64 = 1e-9;

/// A wanted number that is not computed.
#[derive(Clone, Debug, PartialEq)]
pub struct Refused {
    /// Its name in the file.
    pub name: String,
    /// Its kind, in the word of the format.
    pub kind: &'static str,
    /// The reason and the next step, in whole sentences.
    pub why: String,
}

/// Complains about meaningless numbers.
pub(super) fn check(
    tree: &Node,
    outline: &Outline,
    matter: &Matter,
    complaints: &mut Complaints<'_>,
) {
    beside_axis(tree, outline, complaints);
    on_axis(tree, outline, matter, complaints);
    potentials(tree, matter, complaints);
    for (key, node) in tree.entries_at("materials") {
        let Some(sigma) = node.number_at("sigma_s_per_m") else {
            continue;
        };
        if sigma > 0.0 && sigma < SIGMA_LEAST {
            let steps = [
                Segment::Name("materials"),
                Segment::Name(&key.name),
                Segment::Name("sigma_s_per_m"),
            ];
            let message = format!(
                "The conductivity {sigma:e} S/m is that of nothing: no material is known below {SIGMA_LEAST:e} S/m."
            );
            complaints.add(tree, &steps, message, "A perfect insulator has 0.");
        }
    }
    if let Some(hertz) = tree.number_at("frequency_hz")
        && hertz > 0.0
        && hertz < FREQUENCY_LEAST
    {
        let message =
            format!("At {hertz:e} Hz one turn takes longer than thirty years; nothing swings so.");
        let hint = "At rest the frequency is 0.";
        complaints.add(tree, &[Segment::Name("frequency_hz")], message, hint);
    }
}

fn beside_axis(tree: &Node, outline: &Outline, complaints: &mut Complaints<'_>) {
    let used = |index: usize| {
        let curves = outline.curves.iter();
        curves
            .clone()
            .any(|curve| [curve.from, curve.to].contains(&index))
    };
    let largest = outline.points.iter().map(|at| at.r).fold(0.0, f64::max);
    for (index, at) in outline.points.iter().enumerate() {
        if at.r > ON_AXIS && at.r < AXIS_SHARE * largest && used(index) {
            let message = format!(
                "The point {index} lies {:e} mm from the axis, less than {AXIS_SHARE:e} of the section's largest radius, {} mm: the estimates of errors do not hold there.",
                at.r * 1e3,
                largest * 1e3
            );
            let hint = "Put it on the axis, or as far from it as the real part is.";
            let steps = [Segment::Name("points"), Segment::Index(index)];
            complaints.add(tree, &steps, message, hint);
        }
    }
}

/// Complains about a conductor on a stretch of the axis: a wire without thickness, on which no field can hold a potential.
fn on_axis(tree: &Node, outline: &Outline, matter: &Matter, complaints: &mut Complaints<'_>) {
    for (index, curve) in outline.curves.iter().enumerate() {
        let ends = [curve.from, curve.to].map(|point| outline.points[point].r.abs());
        if ends.iter().all(|r| *r <= ON_AXIS) && matter.is_conductor(&curve.tag) {
            let message = format!(
                "The curve {} ({}) is a conductor and lies on the axis: it is a wire without thickness, beside which a field has no bound and on which no potential can be held.",
                index + 1,
                curve.tag
            );
            let hint = "Give the conductor its radius, or the curve a tag without a potential.";
            complaints.add(
                tree,
                &[Segment::Name("curves"), Segment::Index(index)],
                message,
                hint,
            );
        }
    }
}

fn potentials(tree: &Node, matter: &Matter, complaints: &mut Complaints<'_>) {
    let levels = matter.levels();
    let greatest = levels.iter().map(|volts| volts.abs()).fold(0.0, f64::max);
    for pair in levels.windows(2) {
        let apart = pair[1] - pair[0];
        if apart >= VOLTS_LEAST.max(VOLTS_SHARE * greatest) {
            continue;
        }
        let message = format!(
            "The potentials {:e} kV and {:e} kV are {:e} kV apart, which is nothing beside rounding.",
            si::kilovolts(pair[0]),
            si::kilovolts(pair[1]),
            si::kilovolts(apart)
        );
        let hint = "Conductors at one potential have one number; a field may be solved at any voltage and scaled.";
        complaints.add(tree, &[Segment::Name("potentials_kv")], message, hint);
    }
}

/// Divides the wanted numbers into those with a finite field and those whose field is singular.
pub(super) fn bounded(section: &Section, wanted: Vec<Asked>) -> (Vec<Asked>, Vec<Refused>) {
    let open: Vec<Corner> = corners(section)
        .into_iter()
        .filter(|corner| {
            let discs = section.leave_out.iter();
            discs
                .clone()
                .all(|disc| disc.at.distance(corner.at) >= disc.radius)
        })
        .collect();
    let mut kept = Vec::new();
    let mut refused = Vec::new();
    for asked in wanted {
        match open
            .iter()
            .find(|corner| is_reached(section, &asked.wanted, corner))
        {
            None => kept.push(asked),
            Some(corner) => refused.push(Refused {
                why: without_bound(section, corner),
                name: asked.name,
                kind: asked.kind,
            }),
        }
    }
    (kept, refused)
}

/// Whether a wanted number includes the place of a corner.
fn is_reached(section: &Section, wanted: &Wanted, corner: &Corner) -> bool {
    let is_there = |at: Point| at.distance(corner.at) <= AT_CORNER;
    match wanted {
        Wanted::PeakInRegion { region_index } => corner.region_indices.contains(region_index),
        Wanted::PeakOnCurve { tag } => {
            let mut curves = corner.curve_indices.iter();
            curves.any(|curve| section.outline.curves[*curve].tag == *tag)
        }
        Wanted::PeakTangentialOnLine { from, to } => {
            let length = from.distance(*to);
            let along = [(to.r - from.r) / length, (to.z - from.z) / length];
            let way = [corner.at.r - from.r, corner.at.z - from.z];
            let share = (way[0] * along[0] + way[1] * along[1]).clamp(0.0, length);
            is_there(from.towards(*to, share / length))
        }
        Wanted::FieldAt { at, side } => {
            is_there(*at) && side.is_none_or(|side| corner.region_indices.contains(&side))
        }
        Wanted::AxialFieldAt { at } => is_there(*at),
        Wanted::Capacitance | Wanted::PotentialAt { .. } | Wanted::BreakdownShare { .. } => false,
    }
}

fn without_bound(section: &Section, corner: &Corner) -> String {
    let outline = &section.outline;
    let curves: Vec<String> = corner
        .curve_indices
        .iter()
        .map(|curve| format!("{} ({})", curve + 1, outline.curves[*curve].tag))
        .collect();
    let regions: Vec<String> = corner
        .region_indices
        .iter()
        .map(|region| quoted(&outline.regions[*region].name))
        .collect();
    format!(
        "It has no bound: at {}, where the curves {} meet, the field in {} grows without end as the distance to the power {:.2}. Round the corner with its real radius, or leave it out with a disc in `leave_out`.",
        place_mm(corner.at),
        curves.join(" and "),
        regions.join(" and "),
        corner.power - 1.0
    )
}
