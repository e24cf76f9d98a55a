//! Reasons why a solver of temperatures has no number.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::Said;
use jointwright_numerics::heat::HeatError;
use jointwright_numerics::ladder::LadderError;
use jointwright_numerics::rating::RatingError;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Reason why there is no temperature, or no load.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SolverSaid {
    // A joint cut into slices.
    Slice {
        index: u32,
        /// A fault of the program's own drawing, in the solver's words.
        flaw: String,
    },
    Currents {
        n_currents: u32,
        n_arms: u32,
    },
    NoMesh,
    NotNumbered,
    NoEquations,
    NoCooling,
    LossesOutgrow,
    NoRegion {
        r_mm: f64,
        z_mm: f64,
    },
    // A cable in its surroundings.
    BeyondProximity {
        argument_ratio: f64,
    },
    NotBuried {
        depth_m: f64,
        outside_mm: f64,
    },
    NoRoom {
        conductor_degc: f64,
    },
    NoResistance,
    NoSteady {
        current_a: f64,
        greatest_degc: f64,
    },
    NoHeating {
        from_degc: f64,
        to_degc: f64,
        time_s: f64,
    },
    NoIntegral {
        argument_ratio: f64,
    },
    TooShort {
        time_s: f64,
        least_s: f64,
    },
    AlreadyWarm {
        before_degc: f64,
        to_degc: f64,
    },
    NoNumber,
}

impl From<&RatingError> for Said {
    fn from(why: &RatingError) -> Said {
        match *why {
            RatingError::BeyondProximity { argument } => SolverSaid::BeyondProximity {
                argument_ratio: argument,
            },
            RatingError::NotBuried { depth_m, outside_m } => SolverSaid::NotBuried {
                depth_m,
                outside_mm: outside_m * 1e3,
            },
            RatingError::NoRoom { conductor_degc } => SolverSaid::NoRoom { conductor_degc },
            RatingError::NoResistance => SolverSaid::NoResistance,
            RatingError::Runaway {
                current_a,
                greatest_degc,
            } => SolverSaid::NoSteady {
                current_a,
                greatest_degc,
            },
            RatingError::NoHeating {
                from_degc,
                to_degc,
                time_s,
            } => SolverSaid::NoHeating {
                from_degc,
                to_degc,
                time_s,
            },
            RatingError::NoIntegral { argument } => SolverSaid::NoIntegral {
                argument_ratio: argument,
            },
            RatingError::TooShort { time_s, least_s } => SolverSaid::TooShort { time_s, least_s },
            RatingError::AlreadyWarm {
                before_degc,
                to_degc,
            } => SolverSaid::AlreadyWarm {
                before_degc,
                to_degc,
            },
            RatingError::NoNumber => SolverSaid::NoNumber,
        }
        .into()
    }
}

impl From<&LadderError> for Said {
    fn from(why: &LadderError) -> Said {
        let number = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
        match why {
            LadderError::Shape { index, what } => SolverSaid::Slice {
                index: number(*index),
                flaw: (*what).to_owned(),
            },
            LadderError::Currents { n_currents, n_arms } => SolverSaid::Currents {
                n_currents: number(*n_currents),
                n_arms: number(*n_arms),
            },
            LadderError::Heat(HeatError::Mesh(_)) => SolverSaid::NoMesh,
            LadderError::Heat(HeatError::Unknowns(_)) => SolverSaid::NotNumbered,
            LadderError::Heat(HeatError::Sparse(_)) | LadderError::Sparse(_) => {
                SolverSaid::NoEquations
            }
            LadderError::Heat(HeatError::NoCooling) => SolverSaid::NoCooling,
            LadderError::Heat(HeatError::Runaway) => SolverSaid::LossesOutgrow,
            LadderError::Heat(HeatError::Nowhere { at }) => SolverSaid::NoRegion {
                r_mm: at.r * 1e3,
                z_mm: at.z * 1e3,
            },
        }
        .into()
    }
}
