//! Matter: materials, potentials, floating conductors, frequency and discs of a case.

use super::complaint::{Complaints, nearest, quoted};
use super::drawing::Drawing;
use super::si;
use super::tree::{Node, Segment};
use super::walk::{self, number_of};
use super::words::Kind;
use crate::field::{Conductivity, Disc, Material, Regime};
use crate::outline::Outline;
use std::collections::BTreeMap;

/// The tag of curves without a meaning of their own.
const NO_MEANING: &str = "interior";
/// Any number; the walk has checked its range.
const ANY: Kind = Kind::Number {
    least: f64::MIN,
    greatest: f64::MAX,
};
/// A number above zero; the walk has checked its range.
const ABOVE: Kind = Kind::Positive { greatest: f64::MAX };

/// A potential by its tag.
pub(super) struct Potential {
    pub(super) tag: String,
    pub(super) volts: f64,
}

/// Materials and boundary conditions of the outline, as far as they could be read.
pub(super) struct Matter {
    /// Material of each region.
    pub(super) of_region: Vec<Option<Material>>,
    pub(super) potentials: Vec<Potential>,
    pub(super) floating: Vec<String>,
    pub(super) regime: Regime,
    pub(super) leave_out: Vec<Disc>,
    /// Whether all conductors of the file were read.
    pub(super) has_all_conductors: bool,
}

impl Matter {
    /// Potential of a tag, V.
    pub(super) fn potential(&self, tag: &str) -> Option<f64> {
        let found = self.potentials.iter().find(|p| p.tag == tag);
        found.map(|p| p.volts)
    }

    /// Whether the curves of a tag are a conductor, fixed or floating.
    pub(super) fn is_conductor(&self, tag: &str) -> bool {
        self.potential(tag).is_some() || self.floating.iter().any(|f| f == tag)
    }

    /// The different potentials, V, in rising order.
    pub(super) fn levels(&self) -> Vec<f64> {
        let mut levels: Vec<f64> = self.potentials.iter().map(|p| p.volts).collect();
        levels.sort_by(f64::total_cmp);
        levels.dedup();
        levels
    }
}

/// Reads the materials and boundary conditions of the outline.
pub(super) fn matter(tree: &Node, drawing: &Drawing, complaints: &mut Complaints<'_>) -> Matter {
    let materials = materials(tree, complaints);
    let regime = match tree.number_at("frequency_hz") {
        None => Regime::Capacitive,
        Some(0.0) => Regime::Resistive,
        Some(frequency_hz) => Regime::Complex { frequency_hz },
    };
    let of_region = of_region(tree, &materials, regime, complaints);
    let n_before = complaints.len();
    let mut matter = Matter {
        of_region,
        potentials: potentials(tree, &drawing.outline, complaints),
        floating: floating(tree, &drawing.outline, complaints),
        regime,
        leave_out: leave_out(tree),
        has_all_conductors: true,
    };
    for (index, tag) in matter.floating.iter().enumerate() {
        if matter.potential(tag).is_some() {
            let steps = [Segment::Name("floating"), Segment::Index(index)];
            let message = format!("The tag {} both floats and has a potential.", quoted(tag));
            complaints.add(
                tree,
                &steps,
                message,
                "Leave it in one of `floating` and `potentials_kv`.",
            );
        }
    }
    let n_potentials = tree.entries_at("potentials_kv").len();
    matter.has_all_conductors =
        complaints.len() == n_before && matter.potentials.len() == n_potentials && n_potentials > 0;
    matter
}

fn materials<'n>(
    tree: &'n Node,
    complaints: &mut Complaints<'_>,
) -> BTreeMap<&'n str, Option<Material>> {
    let mut materials = BTreeMap::new();
    for (key, node) in tree.entries_at("materials") {
        if node.field("sigma_s_per_m").is_some() && node.field("sigma_rising").is_some() {
            let steps = [
                Segment::Name("materials"),
                Segment::Name(&key.name),
                Segment::Name("sigma_rising"),
            ];
            let message = format!("The material {} has two conductivities.", quoted(&key.name));
            let hint = "Leave one of `sigma_s_per_m` and `sigma_rising`.";
            complaints.add(tree, &steps, message, hint);
        }
        materials.insert(key.name.as_str(), material(node));
    }
    materials
}

fn material(node: &Node) -> Option<Material> {
    let conductivity = match (node.field("sigma_rising"), node.field("sigma_s_per_m")) {
        (Some(rising), _) => Conductivity::Rising {
            at_rest: number_of(rising.field("at_rest_s_per_m"), &ABOVE)?,
            knee: si::volts_per_metre(number_of(rising.field("knee_kv_per_mm"), &ABOVE)?),
            power: number_of(rising.field("power"), &ANY)?,
        },
        (None, Some(sigma)) => Conductivity::Constant(number_of(Some(sigma), &ANY)?),
        (None, None) => Conductivity::Constant(0.0),
    };
    Some(Material {
        relative_permittivity: number_of(node.field("eps_r"), &ANY)?,
        conductivity,
    })
}

fn of_region(
    tree: &Node,
    materials: &BTreeMap<&str, Option<Material>>,
    regime: Regime,
    complaints: &mut Complaints<'_>,
) -> Vec<Option<Material>> {
    let mut of_region = Vec::new();
    for (index, node) in tree.items_at("regions").iter().enumerate() {
        let mut found = None;
        if let Some(name) = node.text_at("material") {
            let steps = [
                Segment::Name("regions"),
                Segment::Index(index),
                Segment::Name("material"),
            ];
            let region = quoted(node.text_at("name").unwrap_or_default());
            match materials.get(name) {
                None => {
                    let message = format!(
                        "The region {region} is of {}, which is no material.",
                        quoted(name)
                    );
                    let hint = nearest(name, materials.keys().copied());
                    complaints.add(tree, &steps, message, hint);
                }
                Some(material) => found = *material,
            }
            let is_insulator = found.is_some_and(|material| {
                matches!(material.conductivity, Conductivity::Constant(sigma) if sigma <= 0.0)
            });
            if regime == Regime::Resistive && is_insulator {
                let message = format!(
                    "The region {region} does not conduct: at a frequency of 0 only conduction counts, and {} has no conductivity.",
                    quoted(name)
                );
                let hint =
                    "Give the material `sigma_s_per_m` above 0, or leave `frequency_hz` out.";
                complaints.add(tree, &steps, message, hint);
            }
        }
        of_region.push(found);
    }
    of_region
}

/// Whether a tag can be a conductor; complains otherwise.
fn is_tag(
    tree: &Node,
    outline: &Outline,
    steps: &[Segment<'_>],
    tag: &str,
    complaints: &mut Complaints<'_>,
) -> bool {
    if tag == NO_MEANING {
        let message = format!(
            "The tag \"{NO_MEANING}\" marks curves without meaning; it cannot be a conductor."
        );
        complaints.add(
            tree,
            steps,
            message,
            "Give the curves of the conductor a tag of their own.",
        );
        return false;
    }
    is_known_tag(tree, outline, steps, tag, complaints)
}

/// Whether any curve has a tag; complains otherwise.
pub(super) fn is_known_tag(
    tree: &Node,
    outline: &Outline,
    steps: &[Segment<'_>],
    tag: &str,
    complaints: &mut Complaints<'_>,
) -> bool {
    if outline.curves.iter().any(|curve| curve.tag == tag) {
        return true;
    }
    let mut tags: Vec<&str> = outline.curves.iter().map(|c| c.tag.as_str()).collect();
    tags.sort_unstable();
    tags.dedup();
    let message = format!("No curve has the tag {}.", quoted(tag));
    complaints.add(tree, steps, message, nearest(tag, tags.into_iter()));
    false
}

fn potentials(tree: &Node, outline: &Outline, complaints: &mut Complaints<'_>) -> Vec<Potential> {
    let mut potentials = Vec::new();
    for (key, node) in tree.entries_at("potentials_kv") {
        let steps = [Segment::Name("potentials_kv"), Segment::Name(&key.name)];
        let is_tag = is_tag(tree, outline, &steps, &key.name, complaints);
        if let (true, Some(kilovolts)) = (is_tag, node.number()) {
            potentials.push(Potential {
                tag: key.name.clone(),
                volts: si::volts(kilovolts),
            });
        }
    }
    potentials
}

fn floating(tree: &Node, outline: &Outline, complaints: &mut Complaints<'_>) -> Vec<String> {
    let mut floating: Vec<String> = Vec::new();
    for (index, node) in tree.items_at("floating").iter().enumerate() {
        let Some(tag) = node.text() else {
            continue;
        };
        let steps = [Segment::Name("floating"), Segment::Index(index)];
        if floating.iter().any(|other| other == tag) {
            let message = format!("The tag {} stands twice.", quoted(tag));
            complaints.add(tree, &steps, message, "Leave one.");
        }
        is_tag(tree, outline, &steps, tag, complaints);
        floating.push(tag.to_owned());
    }
    floating
}

fn leave_out(tree: &Node) -> Vec<Disc> {
    let disc = |node: &Node| {
        Some(Disc {
            at: si::place(walk::place(node.field("at")?)?),
            radius: si::metres(number_of(node.field("radius"), &ABOVE)?),
        })
    };
    tree.items_at("leave_out").iter().filter_map(disc).collect()
}
