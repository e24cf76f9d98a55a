//! Tube: a tube of rubber on a rigid cylinder as a case, and the document of its answer.

use super::complaint::Complaints;
use super::document::{AnswerDoc, AnswersDoc, SecondsDoc};
use super::si;
use super::tree::{Node, Segment};
use super::walk::walk;
use super::words::{Kind, TUBE};
use crate::rubber::{Ends, Law, LawKind, Pressed, Ring, RubberError, Tube};

/// A tube case: the tube and the cylinder that it presses on, in SI units.
#[derive(Clone, Debug, PartialEq)]
pub struct TubeCase {
    /// Its name.
    pub name: String,
    /// One line about it; printed on everything that is made from it.
    pub about: String,
    /// The tube as it was made.
    pub tube: Tube,
    /// Radius of the cylinder, m.
    pub radius_m: f64,
    /// Condition of its length.
    pub held: Held,
}

/// Condition of the length of a tube.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Held {
    /// The ends are free.
    Free,
    /// The tube has this multiple of its own length.
    Stretched(f64),
}

impl TubeCase {
    /// The tube on its cylinder.
    ///
    /// # Errors
    /// The same errors as [`Tube::pressed()`].
    pub fn pressed(&self) -> Result<Pressed, RubberError> {
        match self.held {
            Held::Free => self.tube.pressed(self.radius_m, Ends::Free),
            Held::Stretched(1.0) => self.tube.pressed(self.radius_m, Ends::FixedLength),
            Held::Stretched(axial) => self.tube.pressed_at(self.radius_m, axial),
        }
    }

    /// The document of its answer.
    pub fn document(&self, pressed: &Pressed, seconds: SecondsDoc) -> AnswersDoc {
        let answer = |name: &str, value: f64, unit: &str, error: f64| AnswerDoc {
            name: name.to_owned(),
            kind: name.to_owned(),
            value,
            unit: unit.to_owned(),
            error_estimate: Some(error).filter(|error| error.is_finite()),
            at: None,
            phase_deg: None,
            settled: true,
        };
        let pressure_mpa = si::megapascals(pressed.pressure_pa);
        let error_mpa = si::megapascals(pressed.error_pa);
        // Free ends are computed to this tolerance; a given length is exact.
        let axial_error = match self.held {
            Held::Free => AXIAL_CLOSE,
            Held::Stretched(_) => 0.0,
        };
        AnswersDoc {
            case: self.name.clone(),
            about: self.about.clone(),
            answers: vec![
                answer("pressure_mpa", pressure_mpa, "MPa", error_mpa),
                answer("axial_stretch", pressed.axial_stretch, "1", axial_error),
            ],
            refused: Vec::new(),
            cut_short: None,
            pressure_mpa: Some(pressure_mpa),
            unknowns: 0,
            seconds,
            residuals: Vec::new(),
        }
    }
}

/// Tolerance of the length of free ends.
const AXIAL_CLOSE: f64 = 1e-12;

/// The case of a tree, or `None` with complaints.
pub(super) fn tube(tree: &Node, complaints: &mut Complaints<'_>) -> Option<TubeCase> {
    let before = complaints.len();
    walk(tree, &Kind::Table(&TUBE), &mut Vec::new(), tree, complaints);
    let rings = rings(tree, complaints);
    let is_free = tree.text_at("ends") == Some("free");
    if is_free && tree.field("axial_stretch").is_some() {
        complaints.add(
            tree,
            &[Segment::Name("axial_stretch")],
            "Free ends find their own length; `axial_stretch` says how long a tube is held.",
            "Take it away, or hold the length with \"ends\": \"fixed-length\".",
        );
    }
    if complaints.len() > before {
        return None;
    }
    let bore_m = si::metres(tree.number_at("bore_mm")?);
    let tube = match Tube::new(bore_m, rings?) {
        Ok(tube) => tube,
        Err(error) => {
            let hint = "Radii are those of the tube when nothing is in it, from the inside out.";
            complaints.add(tree, &[], format!("No tube comes of it: {error}."), hint);
            return None;
        }
    };
    let stretch = tree.number_at("stretch")?;
    Some(TubeCase {
        name: tree.text_at("case")?.to_owned(),
        about: tree.text_at("about").unwrap_or_default().to_owned(),
        tube,
        radius_m: bore_m * stretch,
        held: if is_free {
            Held::Free
        } else {
            Held::Stretched(tree.number_at("axial_stretch").unwrap_or(1.0))
        },
    })
}

/// The rings: a single one of `outer_mm` and `law`, or those of `rings`.
fn rings(tree: &Node, complaints: &mut Complaints<'_>) -> Option<Vec<Ring>> {
    let single = ["outer_mm", "law"];
    if tree.field("rings").is_some() {
        for name in single {
            if tree.field(name).is_some() {
                let message = format!("`{name}` and `rings` say the same thing twice.");
                complaints.add(tree, &[Segment::Name(name)], message, "Give one of them.");
            }
        }
        return tree.items_at("rings").iter().map(ring).collect();
    }
    for name in single {
        if tree.field(name).is_none() {
            let message = format!("The field `{name}` is missing.");
            let hint = "A tube has `outer_mm` and `law`, or several `rings` with both.";
            complaints.add(tree, &[], message, hint);
        }
    }
    Some(vec![ring(tree)?])
}

fn ring(node: &Node) -> Option<Ring> {
    let law = node.field("law")?;
    let pa = |name: &str| law.number_at(name).map(si::pascals);
    let law = match LawKind::from_name(law.text_at("kind")?)? {
        LawKind::NeoHookean => Law::NeoHookean {
            modulus_pa: pa("mu_mpa")?,
        },
        LawKind::MooneyRivlin => Law::MooneyRivlin {
            c1_pa: pa("c1_mpa")?,
            c2_pa: pa("c2_mpa")?,
        },
        LawKind::Gent => Law::Gent {
            modulus_pa: pa("mu_mpa")?,
            limit: law.number_at("limit")?,
        },
    };
    let outside_m = si::metres(node.number_at("outer_mm")?);
    Some(Ring { outside_m, law })
}
