//! Section: one end of a joint cut along its axis, as an outline with named curves and materials.
//!
//! Why its own room: only this room knows both the trade's words and the words of the field's mathematics.
//!
//! ```text
//!   r
//!   |  outside, at earth
//!   |  ...........................................................
//!   |  electrode )            insulation of the body  ( deflector
//!   |  ==========)                                   (===========
//!   |  ~~~~~~~~~~~ interface ~~~~~~~~~~~~~~~~~~~~~~~~~~ screen ----
//!   |             insulation of the cable
//!   +--------------------------------------------------------- z, from the body's datum
//!      conductor
//! ```
//!
//! Invariants:
//! - Nothing inside a body is guessed.
//! - Conductors are holes; only regions that carry field are drawn.
//! - The step at the edge of the screen is always drawn where the field reaches it.
//! - Nothing nearer to the axis of a junction than two radii of the body is drawn.
//!
//! Assumes: round, concentric, square; the body's rubber follows every step except over the stated bridging; it stretches without changing its volume or its length.
//!
//! Not here: which dimensions are worst (`study`), limits of fields (`checks`).
//!
//! Source: `docs/theory/section.md`.

use crate::said::{Between, Said};
use jointwright_numerics::field::Conductivity;
use jointwright_units::VoltageRms;

mod cone;
mod draw;
mod path;
mod profile;
mod quantity;
mod socket;
mod taper;

pub use draw::{Drawn, EDGE_SHARE_GREATEST, GAP_PRESSURE_PA, draw};
pub use profile::Profile;
pub use quantity::{GapPlace, Quantity};
pub use taper::{FILM_LEAST_M, TaperState, draw_taper, taper_questions};

/// The cable of an end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CableShape {
    /// Radius over the conductor screen, m.
    pub conductor_radius_m: f64,
    /// Radius over the insulation, m.
    pub insulation_radius_m: f64,
    /// Thickness of the insulation screen, m.
    pub screen_thickness_m: f64,
    /// Relative permittivity of the insulation.
    pub relative_permittivity: f64,
}

/// A layer between cable and body: an adapter, or the body's own layer that spreads the field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sleeve {
    /// Kind of the layer.
    pub between: Between,
    /// Outside radius on the cable, m.
    pub outside_radius_m: f64,
    /// Relative permittivity.
    pub relative_permittivity: f64,
    /// Conductivity.
    pub conductivity: Conductivity,
}

impl Sleeve {
    /// Name of the layer's region.
    pub const fn name(&self) -> &'static str {
        match self.between {
            Between::Adapter => "adapter",
            Between::SpreadsTheField => "layer that spreads the field",
        }
    }
}

/// Drive of the conductor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drive {
    /// Voltage between conductor and earth, rms.
    pub voltage: VoltageRms,
    /// Frequency, where conduction counts as well as displacement.
    pub frequency_hz: Option<f64>,
}

/// Dimensions of one end that the windows leave open.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// Edge of the insulation screen from the body's datum, m.
    pub screen_edge_m: f64,
    /// End of the insulation from the body's datum, m.
    pub insulation_end_m: f64,
    /// Radius of the screen's edge, m.
    pub edge_radius_m: f64,
    /// Whether the gap before the edge has lost its filler.
    pub is_empty: bool,
}

/// One end to be drawn.
#[derive(Clone, Copy, Debug)]
pub struct End<'p> {
    /// Inside of the body.
    pub profile: &'p Profile,
    /// Cable.
    pub cable: CableShape,
    /// Layer between cable and body, if there is one.
    pub sleeve: Option<Sleeve>,
    /// Whether the body's datum is a junction of more than two arms.
    pub is_junction: bool,
    /// Drive of the conductor.
    pub drive: Drive,
    /// Dimensions that the windows leave open.
    pub state: State,
}

/// A missing fact, and the questions about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Unknown {
    /// Message that names the missing fact.
    pub why: Said,
    /// Questions to put to the maker, or to answer on a part cut open.
    pub questions: Vec<Said>,
}

impl Unknown {
    /// A missing fact with its questions.
    pub fn new(
        why: impl Into<Said>,
        questions: impl IntoIterator<Item = impl Into<Said>>,
    ) -> Unknown {
        Unknown {
            why: why.into(),
            questions: questions.into_iter().map(Into::into).collect(),
        }
    }

    /// A missing fact about which nobody needs to be asked.
    pub fn plain(why: impl Into<Said>) -> Unknown {
        Unknown {
            why: why.into(),
            questions: Vec::new(),
        }
    }

    /// The questions as one action; `None` if nobody needs to be asked.
    pub fn ask(&self) -> Option<Said> {
        (!self.questions.is_empty()).then(|| Said::Questions(self.questions.clone()))
    }
}

/// Reason why an end cannot be drawn.
#[derive(Clone, Debug, PartialEq)]
pub enum NotDrawn {
    /// A fact is missing.
    Unknown(Unknown),
    /// The known values make no section.
    Refused(Said),
}

#[cfg(test)]
mod gap_tests;
#[cfg(test)]
mod layer_tests;
#[cfg(test)]
mod taper_tests;
#[cfg(test)]
mod tests;
