//! Drawing: the outline of a case, and its flaws as complaints.

use super::complaint::Complaints;
use super::si;
use super::tree::{Node, Segment};
use super::walk;
use super::words::Kind;
use crate::outline::{Curve, Entity, Flaw, Outline, Point, Region, Shape, Side, check};
use std::collections::BTreeSet;

/// The outline of a case, as far as it could be read.
pub(super) struct Drawing {
    pub(super) outline: Outline,
    /// Whether all of it could be read and it has no flaw, so that places can be located in it.
    pub(super) is_sound: bool,
}

/// Parts that could not be read; complaints about them already exist.
#[derive(Default)]
struct Unread {
    points: BTreeSet<usize>,
    curves: BTreeSet<usize>,
    regions: BTreeSet<usize>,
}

/// Reads the outline and complains of its flaws.
pub(super) fn outline(tree: &Node, complaints: &mut Complaints<'_>) -> Drawing {
    let mut unread = Unread::default();
    let outline = Outline {
        points: points(tree, &mut unread),
        curves: curves(tree, &mut unread),
        regions: regions(tree, &mut unread),
    };
    let is_whole =
        unread.points.is_empty() && unread.curves.is_empty() && unread.regions.is_empty();
    let n_before = complaints.len();
    if !outline.points.is_empty() && !outline.curves.is_empty() && !outline.regions.is_empty() {
        for flaw in check(&outline) {
            if !is_said(&flaw, &unread, &outline) {
                complain(tree, &flaw, complaints);
            }
        }
    }
    Drawing {
        is_sound: is_whole && complaints.len() == n_before && !outline.regions.is_empty(),
        outline,
    }
}

fn points(tree: &Node, unread: &mut Unread) -> Vec<Point> {
    let mut points = Vec::new();
    for (index, node) in tree.items_at("points").iter().enumerate() {
        points.push(match walk::place(node) {
            Some(place) => si::place(place),
            None => {
                unread.points.insert(index);
                Point::new(f64::NAN, f64::NAN)
            }
        });
    }
    points
}

/// An index outside every list, for a part that could not be read.
const NOWHERE: usize = usize::MAX;

fn curves(tree: &Node, unread: &mut Unread) -> Vec<Curve> {
    let mut curves = Vec::new();
    for (index, node) in tree.items_at("curves").iter().enumerate() {
        let curve = curve(node);
        if curve.is_none() {
            unread.curves.insert(index);
        }
        curves.push(curve.unwrap_or_else(|| Curve {
            from: NOWHERE,
            to: NOWHERE,
            shape: Shape::Line,
            // Its tag counts as known, so that a potential on it causes no complaint.
            tag: node.text_at("tag").unwrap_or_default().to_owned(),
        }));
    }
    curves
}

fn curve(node: &Node) -> Option<Curve> {
    let point = |name: &str| {
        let whole = walk::whole(node.field(name)?, &Kind::Index)?;
        usize::try_from(whole).ok()
    };
    let shape = match node.field("arc_center") {
        None => Shape::Line,
        Some(center) => Shape::Arc {
            center: si::place(walk::place(center)?),
        },
    };
    Some(Curve {
        from: point("from")?,
        to: point("to")?,
        shape,
        tag: node.text_at("tag")?.to_owned(),
    })
}

fn regions(tree: &Node, unread: &mut Unread) -> Vec<Region> {
    let mut regions = Vec::new();
    for (index, node) in tree.items_at("regions").iter().enumerate() {
        let boundary = boundary(node);
        if boundary.is_none() || node.text_at("name").is_none() {
            unread.regions.insert(index);
        }
        regions.push(Region {
            // A name that nobody writes, so that two regions without a name do not share one.
            name: node
                .text_at("name")
                .map_or_else(|| format!("\0{index}"), str::to_owned),
            boundary: boundary.unwrap_or_default(),
        });
    }
    regions
}

fn boundary(node: &Node) -> Option<Vec<Side>> {
    let items = node.items_at("boundary");
    if items.is_empty() {
        return None;
    }
    items
        .iter()
        .map(|item| {
            let number = walk::whole(item, &Kind::CurveNumber)?;
            Some(Side {
                curve_index: usize::try_from(number.unsigned_abs())
                    .ok()?
                    .checked_sub(1)?,
                is_reversed: number < 0,
            })
        })
        .collect()
}

/// Whether a flaw only repeats that a part could not be read.
fn is_said(flaw: &Flaw, unread: &Unread, outline: &Outline) -> bool {
    // A region that could not be read may be the one that uses the curve.
    if matches!(flaw, Flaw::Stray { .. }) && !unread.regions.is_empty() {
        return true;
    }
    match flaw.entity() {
        Entity::Point(index) => unread.points.contains(&index),
        Entity::Curve(index) => {
            let is_point_unread = outline.curves.get(index).is_some_and(|curve| {
                [curve.from, curve.to]
                    .iter()
                    .any(|p| unread.points.contains(p))
            });
            unread.curves.contains(&index) || is_point_unread
        }
        Entity::Region(index) => {
            let is_nameless = matches!(flaw, Flaw::SameName { .. });
            unread.regions.contains(&index) && !is_nameless
        }
    }
}

fn complain(tree: &Node, flaw: &Flaw, complaints: &mut Complaints<'_>) {
    let item = |list, index| vec![Segment::Name(list), Segment::Index(index)];
    let mut steps = match flaw.entity() {
        Entity::Point(index) => item("points", index),
        Entity::Curve(index) => item("curves", index),
        Entity::Region(index) => item("regions", index),
    };
    match flaw {
        Flaw::SameName { .. } => steps.push(Segment::Name("name")),
        Flaw::OffCircle { .. } | Flaw::HalfTurn { .. } | Flaw::NoCircle { .. } => {
            steps.push(Segment::Name("arc_center"));
        }
        Flaw::NoSuchPoint { curve, point, .. } => {
            let is_from = from_of(tree, curve.index) == Some(*point);
            steps.push(Segment::Name(if is_from { "from" } else { "to" }));
        }
        _ if matches!(flaw.entity(), Entity::Region(_)) => steps.push(Segment::Name("boundary")),
        _ => {}
    }
    complaints.add(tree, &steps, sentence(&flaw.to_string()), "");
}

fn from_of(tree: &Node, curve_index: usize) -> Option<usize> {
    let node = tree.items_at("curves").get(curve_index)?;
    let from = walk::whole(node.field("from")?, &Kind::Index)?;
    usize::try_from(from).ok()
}

/// A fragment as a sentence.
fn sentence(fragment: &str) -> String {
    let mut letters = fragment.chars();
    let first = letters.next().into_iter().flat_map(char::to_uppercase);
    first.chain(letters).chain(['.']).collect()
}
