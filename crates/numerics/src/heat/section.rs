//! Section: its materials, currents and films, the questions, and the reasons for no answer.

use crate::fem::dofs::DofError;
use crate::fem::sparse::SparseError;
use crate::mesh::MeshError;
use crate::outline::{Outline, Point};

/// Thermal conductivity and heat capacity of a region.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stuff {
    /// k, W/(m K), above 0.
    pub conductivity_w_per_mk: f64,
    /// ρc, J/(m³ K), above 0; only its product with time counts.
    pub capacity_j_per_m3k: f64,
}

/// A current along the axis through regions: each region loses I² R(T) per length, spread over its own cross-section.
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

/// Film on the curves of a tag, which cools them.
#[derive(Clone, Debug, PartialEq)]
pub struct Film {
    /// Tag of outer curves.
    pub tag: String,
    /// h, W/(m² K).
    pub coefficient_w_per_m2k: f64,
    /// Temperature beyond the film, °C.
    pub ambient_degc: f64,
}

/// Steady state, or a time after the currents were switched on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum When {
    /// Steady state.
    Steady,
    /// Transient from this uniform temperature, °C.
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
    /// Matter of each region.
    pub stuffs: Vec<Stuff>,
    /// Currents.
    pub joules: Vec<Joule>,
    /// Films.
    pub films: Vec<Film>,
    /// Steady state or transient.
    pub when: When,
}

/// Quantity that is wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum What {
    /// Temperature at a place, °C.
    TemperatureAt(Point),
    /// Loss of all currents in the section as drawn, over the whole turn, W.
    TotalLoss,
}

/// Wanted quantity and its time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ask {
    /// Quantity.
    pub what: What,
    /// Time since the start, s; ignored in the steady state.
    pub time_s: f64,
}

/// A number and its estimated error, in its own unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatAnswer {
    /// The number, °C or W.
    pub value: f64,
    /// Estimated error; it is not a bound.
    pub error_estimate: f64,
    /// Whether the estimate came down to the tolerance.
    pub is_settled: bool,
}

/// Reason for no answer.
#[derive(Debug, thiserror::Error)]
pub enum HeatError {
    /// There is no mesh.
    #[error("the section cannot be meshed")]
    Mesh(#[source] MeshError),
    /// The unknowns cannot be numbered.
    #[error("the temperatures cannot be numbered")]
    Unknowns(#[source] DofError),
    /// The equations cannot be solved.
    #[error("the equations cannot be set up")]
    Sparse(#[source] SparseError),
    /// Nothing cools the section.
    #[error("nothing cools the section, so that it has no steady temperature")]
    NoCooling,
    /// Losses grow faster with the temperature than the cooling: thermal runaway.
    #[error(
        "no steady temperature: the losses grow faster with the temperature than what carries them away"
    )]
    Runaway,
    /// A place outside the section.
    #[error("no region holds the place {at:?}")]
    Nowhere {
        /// The place, m.
        at: Point,
    },
}
