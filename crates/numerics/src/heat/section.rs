//! Section: what conducts, heats and cools, what is asked, and why there may be no answer.

use crate::fem::dofs::DofError;
use crate::fem::sparse::SparseError;
use crate::mesh::MeshError;
use crate::outline::{Outline, Point};

/// How a region conducts and stores heat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stuff {
    /// k, W/(m K), above 0.
    pub conductivity_w_per_mk: f64,
    /// ρc, J/(m³ K), above 0; only its product with time counts.
    pub capacity_j_per_m3k: f64,
}

/// A current along the axis through regions: each loses I² R(T) on its length, spread over its own cross-section.
#[derive(Clone, Debug, PartialEq)]
pub struct Joule {
    /// Indices of the regions.
    pub regions: Vec<usize>,
    /// I, A.
    pub current_a: f64,
    /// Resistance at 20 °C, Ω/m.
    pub resistance20_ohm_per_m: f64,
    /// α: R = R20 (1 + α (T − 20 °C)), 1/K.
    pub alpha_per_k: f64,
}

/// What cools the curves of a tag.
#[derive(Clone, Debug, PartialEq)]
pub struct Film {
    /// Tag of outer curves.
    pub tag: String,
    /// h, W/(m² K).
    pub coefficient_w_per_m2k: f64,
    /// Temperature beyond it, °C.
    pub ambient_degc: f64,
}

/// Steady, or after the currents were switched on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum When {
    /// For ever.
    Steady,
    /// Since everything had this temperature, °C.
    Since {
        /// Temperature at the start, °C.
        start_degc: f64,
    },
}

/// A section that conducts heat.
#[derive(Clone, Debug, PartialEq)]
pub struct HeatSection {
    /// Geometry.
    pub outline: Outline,
    /// Of each region.
    pub stuffs: Vec<Stuff>,
    /// Currents.
    pub joules: Vec<Joule>,
    /// Films.
    pub films: Vec<Film>,
    /// When.
    pub when: When,
}

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum What {
    /// Temperature at a place, °C.
    TemperatureAt(Point),
    /// All that the currents lose in the section as drawn, over the whole turn, W.
    TotalLoss,
}

/// What is asked, and when.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ask {
    /// What.
    pub what: What,
    /// Time since the start, s; not read where it is steady.
    pub time_s: f64,
}

/// A number and its estimated error, in its own unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatAnswer {
    /// The number, °C or W.
    pub value: f64,
    /// Estimated error, no bound.
    pub error_estimate: f64,
    /// Whether it came down to what was asked.
    pub is_settled: bool,
}

/// Why there is no answer.
#[derive(Debug, thiserror::Error)]
pub enum HeatError {
    /// No mesh.
    #[error("the section cannot be meshed")]
    Mesh(#[source] MeshError),
    /// No unknowns.
    #[error("the temperatures cannot be numbered")]
    Unknowns(#[source] DofError),
    /// No equations.
    #[error("the equations cannot be set up")]
    Sparse(#[source] SparseError),
    /// Nothing cools the section.
    #[error("nothing cools the section, so that it has no steady temperature")]
    NoCooling,
    /// Losses grow faster with the temperature than what carries them away.
    #[error(
        "no steady temperature: the losses grow faster with the temperature than what carries them away"
    )]
    Runaway,
    /// A place outside.
    #[error("no region holds the place {at:?}")]
    Nowhere {
        /// The place, m.
        at: Point,
    },
}
