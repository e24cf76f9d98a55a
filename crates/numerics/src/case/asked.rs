//! Asked: the wanted numbers of a case, and whether they can be computed.

use super::complaint::{Complaints, nearest, quoted};
use super::drawing::Drawing;
use super::matter::{Matter, is_known_tag};
use super::si;
use super::tree::{Node, Segment};
use super::walk;
use super::words::WANTED;
use crate::field::Wanted;
use crate::outline::{CurveAt, Outline, Point, place_mm};
use std::collections::BTreeMap;

/// Greatest gain of r along the tangent of a curve that still runs along the axis.
const PARALLEL: f64 = 1e-6;

/// Places of a curve or a line that are tested against discs, in sixty-fourths of its length.
const SAMPLES: std::ops::RangeInclusive<i32> = 0..=64;

/// One wanted number by its name.
#[derive(Clone, Debug, PartialEq)]
pub struct Asked {
    /// Its name in the file.
    pub name: String,
    /// Its kind, in the word of the format.
    pub kind: &'static str,
    /// The wanted number, in SI units.
    pub wanted: Wanted,
}

/// Place of a wanted number in its file.
struct Ask<'n, 'c, 't> {
    tree: &'n Node,
    node: &'n Node,
    index: usize,
    drawing: &'n Drawing,
    matter: &'n Matter,
    complaints: &'c mut Complaints<'t>,
}

/// Reads the wanted numbers; `None` stands for one that cannot be computed, and a complaint says why.
pub(super) fn asked(
    tree: &Node,
    drawing: &Drawing,
    matter: &Matter,
    complaints: &mut Complaints<'_>,
) -> Vec<Option<Asked>> {
    let mut found = Vec::new();
    let mut names: BTreeMap<&str, usize> = BTreeMap::new();
    for (index, node) in tree.items_at("wanted").iter().enumerate() {
        if let Some(name) = node.text_at("name") {
            let first = *names.entry(name).or_insert(index);
            if first != index {
                let steps = [
                    Segment::Name("wanted"),
                    Segment::Index(index),
                    Segment::Name("name"),
                ];
                let message = format!(
                    "The name {} stands twice, first at wanted[{first}].",
                    quoted(name)
                );
                complaints.add(
                    tree,
                    &steps,
                    message,
                    "Give each wanted number a name of its own.",
                );
            }
        }
        let mut ask = Ask {
            tree,
            node,
            index,
            drawing,
            matter,
            complaints,
        };
        found.push(ask.asked());
    }
    found
}

impl Ask<'_, '_, '_> {
    fn asked(&mut self) -> Option<Asked> {
        let kind = self.node.text_at("kind")?;
        let (kind, _) = WANTED.iter().find(|(word, _)| *word == kind)?;
        let wanted = match *kind {
            "capacitance" => self.capacitance(),
            "peak-in-region" => {
                let region_index = self.region("region")?;
                Some(Wanted::PeakInRegion { region_index })
            }
            "peak-on-curve" => self.peak_on_curve(),
            "peak-tangential-on-line" => self.peak_on_line(),
            "potential-at" => {
                let at = self.place("at")?;
                self.regions_at(at)?;
                Some(Wanted::PotentialAt { at })
            }
            "field-at" => self.field_at(),
            _ => self.axial_field_at(),
        }?;
        Some(Asked {
            name: self.node.text_at("name")?.to_owned(),
            kind,
            wanted,
        })
    }

    fn complain(&mut self, field: &str, message: String, hint: impl Into<String>) {
        let steps = [
            Segment::Name("wanted"),
            Segment::Index(self.index),
            Segment::Name(field),
        ];
        self.complaints.add(self.tree, &steps, message, hint);
    }

    fn outline(&self) -> &Outline {
        &self.drawing.outline
    }

    fn place(&self, field: &str) -> Option<Point> {
        walk::place(self.node.field(field)?).map(si::place)
    }

    fn region(&mut self, field: &str) -> Option<usize> {
        let name = self.node.text_at(field)?;
        let regions = &self.outline().regions;
        let found = regions.iter().position(|region| region.name == name);
        if found.is_none() {
            let hint = nearest(name, regions.iter().map(|region| region.name.as_str()));
            self.complain(
                field,
                format!("No region has the name {}.", quoted(name)),
                hint,
            );
        }
        found
    }

    /// The regions at a place of a sound drawing; `None`, and a complaint, if there are none.
    fn regions_at(&mut self, at: Point) -> Option<Vec<usize>> {
        if !self.drawing.is_sound {
            return None;
        }
        let regions = self.outline().regions_at(at);
        if regions.is_empty() {
            let message = format!(
                "The place {} lies in no region, so there is no field.",
                place_mm(at)
            );
            self.complain(
                "at",
                message,
                "Conductors are holes in the section; a place on a boundary counts as inside.",
            );
            return None;
        }
        Some(regions)
    }

    fn capacitance(&mut self) -> Option<Wanted> {
        let levels = self.matter.levels();
        if levels.len() == 2 {
            return Some(Wanted::Capacitance);
        }
        let shown: Vec<String> = levels
            .iter()
            .map(|volts| format!("{} kV", si::kilovolts(*volts)))
            .collect();
        let list = if shown.is_empty() {
            "none".to_owned()
        } else {
            shown.join(", ")
        };
        let message = format!(
            "A capacitance is between two different potentials; the case has {}: {list}.",
            levels.len()
        );
        self.complain(
            "kind",
            message,
            "Tags of the same potential are one side of it.",
        );
        None
    }

    fn peak_on_curve(&mut self) -> Option<Wanted> {
        let tag = self.node.text_at("tag")?;
        let steps = [
            Segment::Name("wanted"),
            Segment::Index(self.index),
            Segment::Name("tag"),
        ];
        let outline = &self.drawing.outline;
        let is_known = is_known_tag(self.tree, outline, &steps, tag, self.complaints);
        if !is_known {
            return None;
        }
        let tag = tag.to_owned();
        let places = (0..outline.curves.len())
            .filter(|&index| self.drawing.is_sound && outline.curves[index].tag == tag)
            .flat_map(|index| SAMPLES.map(move |n| outline.place(index, f64::from(n) / 64.0)));
        let places: Vec<Point> = places.collect();
        if !places.is_empty() && places.iter().all(|at| self.is_left_out(*at)) {
            self.complain_of_nothing_left("tag");
            return None;
        }
        Some(Wanted::PeakOnCurve { tag })
    }

    fn peak_on_line(&mut self) -> Option<Wanted> {
        let (from, to) = (self.place("from")?, self.place("to")?);
        if from.distance(to) <= 1e-9 {
            let message = format!(
                "The line has no length: it begins and ends at {}.",
                place_mm(from)
            );
            self.complain("to", message, "");
            return None;
        }
        if self.drawing.is_sound && !self.outline().holds_part_of(from, to) {
            let message = format!(
                "The line from {} to {} runs through no region, so there is no field on it.",
                place_mm(from),
                place_mm(to)
            );
            self.complain("from", message, "");
            return None;
        }
        if self.drawing.is_sound
            && let Some(at) = self.outline().leaves_at(from, to)
        {
            let message = format!(
                "The line from {} to {} leaves the section at {}: beyond lies a conductor or the outside, where there is no field.",
                place_mm(from),
                place_mm(to),
                place_mm(at)
            );
            let hint = "End the line there, or ask for the stretches on both sides by themselves.";
            self.complain("to", message, hint);
            return None;
        }
        let is_left_out = |share: f64| self.is_left_out(from.towards(to, share));
        if SAMPLES
            .into_iter()
            .all(|n| is_left_out(f64::from(n) / 64.0))
        {
            self.complain_of_nothing_left("to");
            return None;
        }
        Some(Wanted::PeakTangentialOnLine { from, to })
    }

    fn is_left_out(&self, at: Point) -> bool {
        let discs = self.matter.leave_out.iter();
        discs.clone().any(|disc| disc.at.distance(at) < disc.radius)
    }

    fn complain_of_nothing_left(&mut self, field: &str) {
        let name = quoted(self.node.text_at("name").unwrap_or_default());
        let message = format!(
            "The discs in `leave_out` cover every place at which the peak {name} could lie."
        );
        let hint = "Make them smaller, or leave the number out.";
        self.complain(field, message, hint);
    }

    /// The curves at a place, or `None` if the field is the same on their two sides.
    fn interface(&self, at: Point, regions: &[usize]) -> Option<Vec<CurveAt>> {
        let curves = self.outline().curves_at(at);
        let first = self.matter.of_region.get(*regions.first()?)?;
        let differ = regions
            .iter()
            .any(|region| self.matter.of_region.get(*region) != Some(first));
        let is_conductor = curves.iter().any(|curve| {
            let tag = &self.outline().curves[curve.curve_index].tag;
            self.matter.is_conductor(tag)
        });
        (regions.len() > 1 && (differ || is_conductor)).then_some(curves)
    }

    fn names(&self, regions: &[usize]) -> String {
        let outline = self.outline();
        let names: Vec<String> = regions
            .iter()
            .map(|region| quoted(&outline.regions[*region].name))
            .collect();
        names.join(" or ")
    }

    fn curve_words(&self, curves: &[CurveAt]) -> String {
        let words: Vec<String> = curves
            .iter()
            .map(|curve| {
                let tag = &self.outline().curves[curve.curve_index].tag;
                format!("curve {} ({tag})", curve.curve_index + 1)
            })
            .collect();
        words.join(" and ")
    }

    fn field_at(&mut self) -> Option<Wanted> {
        let at = self.place("at");
        let side = match self.node.field("side") {
            Some(_) => Some(self.region("side")?),
            None => None,
        };
        let at = at?;
        let regions = self.regions_at(at)?;
        match side {
            Some(side) if !regions.contains(&side) => {
                let message = format!(
                    "The place {} does not lie in the region {} or on its boundary.",
                    place_mm(at),
                    self.names(&[side])
                );
                let hint = format!("Regions there: {}.", self.names(&regions));
                self.complain("side", message, hint);
                None
            }
            None if let Some(curves) = self.interface(at, &regions) => {
                let message = format!(
                    "The place {} lies on {}, where the field differs between the two sides; `side` is missing.",
                    place_mm(at),
                    self.curve_words(&curves)
                );
                let hint = format!("Give `side`: {}.", self.names(&regions));
                self.complain("at", message, hint);
                None
            }
            _ => Some(Wanted::FieldAt { at, side }),
        }
    }

    fn axial_field_at(&mut self) -> Option<Wanted> {
        let at = self.place("at")?;
        let regions = self.regions_at(at)?;
        let curves = self.interface(at, &regions).unwrap_or_default();
        // The field along the curve is the same on both sides; therefore E_z is too if the curve runs along the axis.
        if curves.iter().any(|curve| curve.tangent[0].abs() > PARALLEL) {
            let message = format!(
                "The place {} lies on {}, which does not run along the axis there: E_z differs between the two sides, and an axial field has no `side`.",
                place_mm(at),
                self.curve_words(&curves)
            );
            let hint = "Move the place off the curve, into the region that is meant.";
            self.complain("at", message, hint);
            return None;
        }
        Some(Wanted::AxialFieldAt { at })
    }
}
