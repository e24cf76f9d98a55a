//! Ties: does every part of the section lie between two potentials, and do conductors that touch agree?
//!
//! **Why separate.** A part that is connected to only one potential has no field, and a part that is connected to none has no potential:
//! both are solved without complaint, and almost always mean a forgotten curve.

use super::asked::Asked;
use super::complaint::{Complaints, quoted};
use super::matter::Matter;
use super::si;
use super::tree::{Node, Segment};
use crate::field::Wanted;
use crate::outline::{Outline, Point, place_mm};
use std::collections::{BTreeMap, BTreeSet};

/// Complains about parts without field, and about conductors that touch and differ.
pub(super) fn check(
    tree: &Node,
    outline: &Outline,
    matter: &Matter,
    wanted: &[Option<Asked>],
    complaints: &mut Complaints<'_>,
) {
    field_free(tree, outline, matter, complaints);
    touching(tree, outline, matter, wanted, complaints);
}

/// Connected regions, by the first region of each group.
struct Groups {
    first: Vec<usize>,
}

impl Groups {
    fn of(&self, mut region: usize) -> usize {
        while self.first[region] != region {
            region = self.first[region];
        }
        region
    }

    fn join(&mut self, one: usize, other: usize) {
        let (one, other) = (self.of(one), self.of(other));
        self.first[one.max(other)] = one.min(other);
    }
}

fn field_free(tree: &Node, outline: &Outline, matter: &Matter, complaints: &mut Complaints<'_>) {
    let n_regions = outline.regions.len();
    let mut groups = Groups {
        first: (0..n_regions).collect(),
    };
    // A region on the other side of a curve is connected, unless a fixed conductor lies between; a floating conductor connects all regions that touch it.
    let mut on_curve: BTreeMap<usize, usize> = BTreeMap::new();
    let mut on_floating: BTreeMap<&str, usize> = BTreeMap::new();
    for (region_index, region) in outline.regions.iter().enumerate() {
        for side in &region.boundary {
            let tag = outline.curves[side.curve_index].tag.as_str();
            if matter.potential(tag).is_none() {
                let other = *on_curve.entry(side.curve_index).or_insert(region_index);
                groups.join(other, region_index);
            }
            if matter.floating.iter().any(|floating| floating == tag) {
                let other = *on_floating.entry(tag).or_insert(region_index);
                groups.join(other, region_index);
            }
        }
    }
    let mut levels: BTreeMap<usize, Vec<f64>> = BTreeMap::new();
    for (region_index, region) in outline.regions.iter().enumerate() {
        let of_group = levels.entry(groups.of(region_index)).or_default();
        for side in &region.boundary {
            of_group.extend(matter.potential(&outline.curves[side.curve_index].tag));
        }
    }
    for (first, mut of_group) in levels {
        of_group.sort_by(f64::total_cmp);
        of_group.dedup();
        if of_group.len() >= 2 {
            continue;
        }
        let members: Vec<String> = (0..n_regions)
            .filter(|region| groups.of(*region) == first)
            .map(|region| quoted(&outline.regions[region].name))
            .collect();
        let (names, touches) = match members.len() {
            1 => (format!("The region {}", members[0]), "touches"),
            _ => (
                format!("The regions {}, together,", members.join(", ")),
                "touch",
            ),
        };
        let message = match of_group.first() {
            Some(volts) => format!(
                "{names} {touches} no other potential than {} kV, so that there is no field there at all.",
                si::kilovolts(*volts)
            ),
            None => format!(
                "{names} {touches} no potential, so that the potential there is undetermined."
            ),
        };
        let steps = [Segment::Name("regions"), Segment::Index(first)];
        let hint = "Regions hang together where they share a curve without a potential; look for a curve that two neighbours should share, or for a tag without a potential.";
        complaints.add(tree, &steps, message, hint);
    }
}

/// A conductor that ends at a point.
struct End<'o> {
    curve_index: usize,
    tag: &'o str,
    /// Potential, V; `None` if it floats.
    volts: Option<f64>,
}

/// Examines every point where conductors meet.
fn touching(
    tree: &Node,
    outline: &Outline,
    matter: &Matter,
    wanted: &[Option<Asked>],
    complaints: &mut Complaints<'_>,
) {
    let mut at_point: BTreeMap<usize, Vec<End<'_>>> = BTreeMap::new();
    for (curve_index, curve) in outline.curves.iter().enumerate() {
        if matter.is_conductor(&curve.tag) {
            for point in [curve.from, curve.to] {
                at_point.entry(point).or_default().push(End {
                    curve_index,
                    tag: &curve.tag,
                    volts: matter.potential(&curve.tag),
                });
            }
        }
    }
    for (point, ends) in at_point {
        let Some(first) = ends.first() else { continue };
        let Some(other) = ends.iter().find(|end| match (first.volts, end.volts) {
            (Some(one), Some(other)) => one != other,
            _ => first.tag != end.tag,
        }) else {
            continue;
        };
        let place = outline.points[point];
        let words = |end: &End<'_>| {
            let volts = end.volts.map_or("floating".to_owned(), |v| {
                format!("{} kV", si::kilovolts(v))
            });
            format!("curve {} ({}, {volts})", end.curve_index + 1, end.tag)
        };
        let meet = format!(
            "{} and {} meet at {}",
            words(first),
            words(other),
            place_mm(place)
        );
        if first.volts.is_none() || other.volts.is_none() {
            let steps = [Segment::Name("curves"), Segment::Index(other.curve_index)];
            let message = format!("Conductors touch: {meet}, and one of them floats.");
            complaints.add(
                tree,
                &steps,
                message,
                "Conductors that touch are one conductor: one tag, or one potential.",
            );
        } else {
            endless(
                tree,
                outline,
                matter,
                wanted,
                (place, point, &meet),
                complaints,
            );
        }
    }
}

/// Complains about wanted numbers at a point where two different potentials meet, because the field is singular there.
fn endless(
    tree: &Node,
    outline: &Outline,
    matter: &Matter,
    wanted: &[Option<Asked>],
    (place, point, meet): (Point, usize, &str),
    complaints: &mut Complaints<'_>,
) {
    let is_left_out = matter
        .leave_out
        .iter()
        .any(|disc| disc.at.distance(place) < disc.radius);
    let ending: BTreeSet<usize> = (0..outline.curves.len())
        .filter(|index| [outline.curves[*index].from, outline.curves[*index].to].contains(&point))
        .collect();
    for (index, asked) in wanted.iter().enumerate() {
        let Some(asked) = asked else { continue };
        let has_no_bound = match &asked.wanted {
            Wanted::Capacitance => true,
            Wanted::PeakInRegion { region_index } => {
                let boundary = &outline.regions[*region_index].boundary;
                !is_left_out
                    && boundary
                        .iter()
                        .any(|side| ending.contains(&side.curve_index))
            }
            Wanted::PeakOnCurve { tag } => {
                !is_left_out
                    && ending
                        .iter()
                        .any(|curve| outline.curves[*curve].tag == *tag)
            }
            _ => false,
        };
        if has_no_bound {
            let steps = [Segment::Name("wanted"), Segment::Index(index)];
            let message = format!("The number {} has no bound: {meet}.", quoted(&asked.name));
            let hint = "Leave a gap between the two, or leave the place out of the peak with a disc in `leave_out`.";
            complaints.add(tree, &steps, message, hint);
        }
    }
}
