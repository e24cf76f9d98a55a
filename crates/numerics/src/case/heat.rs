//! Heat: a section that conducts heat as a case, and the document of its answers.

use super::complaint::{Complaints, nearest, quoted};
use super::document::{AnswerDoc, AnswersDoc, SecondsDoc};
use super::drawing::{self, Drawing};
use super::matter::is_known_tag;
use super::si;
use super::tree::{Node, Segment};
use super::walk::{self, walk};
use super::words::{HEAT, Kind};
use crate::heat::{Ask, Film, HeatSection, HeatSolved, Joule, Stuff, What, When};
use crate::outline::place_mm;
use std::collections::{BTreeMap, BTreeSet};

/// A heat case: the section, and the quantities wanted of it.
#[derive(Clone, Debug, PartialEq)]
pub struct HeatCase {
    /// Its name.
    pub name: String,
    /// One line about it; printed on everything that is made from it.
    pub about: String,
    /// Geometry, materials, currents and films, in SI units.
    pub section: HeatSection,
    /// Names and kinds of the wanted quantities, in the order of the file.
    pub names: Vec<(String, &'static str)>,
    /// The wanted quantities, in the same order.
    pub asks: Vec<Ask>,
}

impl HeatCase {
    /// The document of its answers.
    pub fn document(&self, solved: &HeatSolved, seconds: SecondsDoc) -> AnswersDoc {
        let answers = self.names.iter().zip(&self.asks).zip(&solved.answers);
        AnswersDoc {
            case: self.name.clone(),
            about: self.about.clone(),
            answers: answers
                .map(|(((name, kind), ask), answer)| AnswerDoc {
                    name: name.clone(),
                    kind: (*kind).to_owned(),
                    value: answer.value,
                    unit: match ask.what {
                        What::TemperatureAt(_) => "degC".to_owned(),
                        What::TotalLoss => "W".to_owned(),
                    },
                    error_estimate: Some(answer.error_estimate).filter(|e| e.is_finite()),
                    at: None,
                    phase_deg: None,
                    settled: answer.is_settled,
                })
                .collect(),
            refused: Vec::new(),
            cut_short: None,
            pressure_mpa: None,
            unknowns: solved.n_unknowns,
            seconds,
            residuals: Vec::new(),
        }
    }
}

/// The case of a tree, or `None` with complaints.
pub(super) fn heat(tree: &Node, complaints: &mut Complaints<'_>) -> Option<HeatCase> {
    let before = complaints.len();
    walk(tree, &Kind::Table(&HEAT), &mut Vec::new(), tree, complaints);
    let drawing = drawing::outline(tree, complaints);
    let when = when(tree);
    let mut reader = Reader {
        tree,
        drawing: &drawing,
        is_steady: when == When::Steady,
        complaints,
    };
    let stuffs = reader.stuffs();
    let joules = reader.joules();
    let films = reader.films();
    let (names, asks): (Vec<_>, Vec<_>) = reader.asks().into_iter().unzip();
    if complaints.len() > before {
        return None;
    }
    Some(HeatCase {
        name: tree.text_at("case")?.to_owned(),
        about: tree.text_at("about").unwrap_or_default().to_owned(),
        section: HeatSection {
            outline: drawing.outline,
            stuffs: stuffs?,
            joules,
            films,
            when,
        },
        names,
        asks,
    })
}

fn when(tree: &Node) -> When {
    let start = tree
        .field("transient")
        .and_then(|node| node.number_at("start_c"));
    match (tree.field("transient"), start) {
        (Some(_), start) => When::Since {
            start_degc: start.unwrap_or_default(),
        },
        (None, _) => When::Steady,
    }
}

struct Reader<'n, 'c, 't> {
    tree: &'n Node,
    drawing: &'n Drawing,
    is_steady: bool,
    complaints: &'c mut Complaints<'t>,
}

impl<'n> Reader<'n, '_, '_> {
    fn complain(&mut self, steps: &[Segment<'_>], message: String, hint: impl Into<String>) {
        self.complaints.add(self.tree, steps, message, hint);
    }

    /// Matter of each region, or `None` if a region has none.
    fn stuffs(&mut self) -> Option<Vec<Stuff>> {
        let materials: BTreeMap<&str, &Node> = self
            .tree
            .entries_at("materials")
            .iter()
            .map(|(key, node)| (key.name.as_str(), node))
            .collect();
        let regions = self.tree.items_at("regions");
        let mut found = Vec::new();
        for (index, region) in regions.iter().enumerate() {
            let steps = [
                Segment::Name("regions"),
                Segment::Index(index),
                Segment::Name("material"),
            ];
            let Some(name) = region.text_at("material") else {
                continue;
            };
            let Some(material) = materials.get(name) else {
                let message = format!("No material has the name {}.", quoted(name));
                self.complain(&steps, message, nearest(name, materials.keys().copied()));
                continue;
            };
            let capacity = material.number_at("rho_c_j_per_m3k");
            if capacity.is_none() && !self.is_steady && material.field("rho_c_j_per_m3k").is_none()
            {
                let message = format!(
                    "The material {} has no `rho_c_j_per_m3k`, and what is wanted is not steady.",
                    quoted(name)
                );
                self.complain(&steps, message, "Say how much heat a volume of it stores.");
            }
            if let Some(conductivity_w_per_mk) = material.number_at("k_w_per_mk") {
                found.push(Stuff {
                    conductivity_w_per_mk,
                    // In the steady state no heat is stored, so any number serves.
                    capacity_j_per_m3k: capacity.unwrap_or(1.0),
                });
            }
        }
        (found.len() == regions.len()).then_some(found)
    }

    fn joules(&mut self) -> Vec<Joule> {
        let outline = &self.drawing.outline;
        let mut found = Vec::new();
        for (index, node) in self.tree.items_at("joule").iter().enumerate() {
            let mut regions = Vec::new();
            for (place, item) in node.items_at("regions").iter().enumerate() {
                let Some(name) = item.text() else { continue };
                let region = outline
                    .regions
                    .iter()
                    .position(|region| region.name == name);
                if region.is_none() {
                    let steps = [
                        Segment::Name("joule"),
                        Segment::Index(index),
                        Segment::Name("regions"),
                        Segment::Index(place),
                    ];
                    let names = outline.regions.iter().map(|region| region.name.as_str());
                    let hint = nearest(name, names);
                    self.complain(
                        &steps,
                        format!("No region has the name {}.", quoted(name)),
                        hint,
                    );
                }
                regions.extend(region);
            }
            let number = |name: &str| node.number_at(name).unwrap_or_default();
            found.push(Joule {
                regions,
                current_a: number("amperes"),
                resistance20_ohm_per_m: number("r20_ohm_per_m"),
                alpha_per_k: number("alpha_per_k"),
            });
        }
        found
    }

    fn films(&mut self) -> Vec<Film> {
        let outline = &self.drawing.outline;
        let mut found = Vec::new();
        for (key, node) in self.tree.entries_at("convection") {
            let steps = [Segment::Name("convection"), Segment::Name(&key.name)];
            if !is_known_tag(self.tree, outline, &steps, &key.name, self.complaints) {
                continue;
            }
            if self.drawing.is_sound && self.is_between_regions(&key.name) {
                let message = format!(
                    "A curve of the tag {} lies between two regions; a film is on the outside.",
                    quoted(&key.name)
                );
                self.complain(
                    &steps,
                    message,
                    "Give that curve another tag, such as \"interior\".",
                );
            }
            let number = |name: &str| node.number_at(name).unwrap_or_default();
            found.push(Film {
                tag: key.name.clone(),
                coefficient_w_per_m2k: number("h_w_per_m2k"),
                ambient_degc: number("ambient_c"),
            });
        }
        found
    }

    /// Whether a curve of the tag bounds two regions.
    fn is_between_regions(&self, tag: &str) -> bool {
        let outline = &self.drawing.outline;
        let mut met = BTreeSet::new();
        let sides = outline.regions.iter().flat_map(|region| &region.boundary);
        sides
            .filter(|side| outline.curves[side.curve_index].tag == tag)
            .any(|side| !met.insert(side.curve_index))
    }

    fn asks(&mut self) -> Vec<((String, &'static str), Ask)> {
        let mut found = Vec::new();
        let mut names: BTreeMap<&'n str, usize> = BTreeMap::new();
        for (index, node) in self.tree.items_at("wanted").iter().enumerate() {
            let at = |field| {
                [
                    Segment::Name("wanted"),
                    Segment::Index(index),
                    Segment::Name(field),
                ]
            };
            let Some(name) = node.text_at("name") else {
                continue;
            };
            let first = *names.entry(name).or_insert(index);
            if first != index {
                let message = format!(
                    "The name {} stands twice, first at wanted[{first}].",
                    quoted(name)
                );
                self.complain(
                    &at("name"),
                    message,
                    "Give each wanted number a name of its own.",
                );
            }
            let hour = node.number_at("hour");
            if self.is_steady && node.field("hour").is_some() {
                let message = "A steady answer has no `hour`.".to_owned();
                self.complain(&at("hour"), message, "Take it away, or give `transient`.");
            }
            if !self.is_steady && node.field("hour").is_none() {
                let message = "`hour` is missing, and what is wanted is not steady.".to_owned();
                self.complain(&at("name"), message, "Say at which hour since the start.");
            }
            let (kind, what) = match node.text_at("kind") {
                Some("temperature-at") => match self.place(node, index) {
                    Some(what) => ("temperature-at", what),
                    None => continue,
                },
                Some("total-loss") => ("total-loss", What::TotalLoss),
                _ => continue,
            };
            let time_s = hour.unwrap_or_default() * 3600.0;
            found.push(((name.to_owned(), kind), Ask { what, time_s }));
        }
        found
    }

    fn place(&mut self, node: &Node, index: usize) -> Option<What> {
        let at = walk::place(node.field("at")?).map(si::place)?;
        if self.drawing.is_sound && self.drawing.outline.regions_at(at).is_empty() {
            let steps = [
                Segment::Name("wanted"),
                Segment::Index(index),
                Segment::Name("at"),
            ];
            let message = format!("The place {} lies in no region.", place_mm(at));
            self.complain(&steps, message, "A place on a boundary counts as inside.");
            return None;
        }
        Some(What::TemperatureAt(at))
    }
}
