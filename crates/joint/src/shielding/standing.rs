//! Standing: the voltage that balanced currents drive along a shield that is open at one end.

use super::along::mean_m;
use super::loss::placed;
use super::unknown;
use crate::job::{Formation, Job, Leg};
use crate::said::{BondingSaid, Said};
use crate::section::Unknown;
use jointwright_numerics::rating::shield::{standing_trefoil_v_per_a_m, standing_v_per_a_m};

/// Standing voltage of a leg's shield.
#[derive(Clone, Debug, PartialEq)]
pub enum Stands {
    /// A voltage between its open end and earth.
    Open(Standing),
    /// No standing voltage, because both ends are bonded.
    Bonded(Said),
}

/// Voltage along a shield that is open at one end of its run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Standing {
    /// Greatest of the three shields, V for one ampere and metre.
    pub v_per_a_m: f64,
    /// Length of the run, m.
    pub length_m: f64,
}

impl Standing {
    /// Standing voltage of three shields with a mean diameter.
    ///
    /// # Assumes
    /// Balanced currents, no other conductor near.
    ///
    /// # Source
    /// ieee_575, memory.
    pub fn of(
        formation: Formation,
        frequency_hz: f64,
        spacing_m: f64,
        mean_m: f64,
        length_m: f64,
    ) -> Standing {
        let v_per_a_m = match formation {
            Formation::Trefoil => standing_trefoil_v_per_a_m(frequency_hz, spacing_m, mean_m),
            Formation::Flat => {
                let axes_m = [[-spacing_m, 0.0], [0.0, 0.0], [spacing_m, 0.0]];
                let three = standing_v_per_a_m(frequency_hz, axes_m, mean_m);
                three.into_iter().fold(0.0, f64::max)
            }
        };
        Standing {
            v_per_a_m,
            length_m,
        }
    }

    /// Voltage at the open end, V rms, for a current in the conductors.
    pub fn voltage_v(&self, current_a: f64) -> f64 {
        self.v_per_a_m * current_a * self.length_m
    }
}

/// Standing voltage of a leg's shield, with the least mean diameter, which gives the greatest voltage.
///
/// # Errors
/// A fact that nobody states, with its questions.
pub fn standing(job: &Job, leg: &Leg) -> Result<Stands, Unknown> {
    let id = || leg.id.clone();
    let far = leg.shield_run.is_far_end_bonded;
    match (leg.bonding.as_str(), far) {
        ("solid", Some(true)) => {
            return Ok(Stands::Bonded(
                BondingSaid::BondedAtBothEnds { leg: id() }.into(),
            ));
        }
        ("open", Some(false)) => {
            return Err(unknown(
                BondingSaid::BondedAtNeitherEnd { leg: id() },
                BondingSaid::AskWhereEarthed { leg: id() },
            ));
        }
        (_, None) => {
            return Err(unknown(
                BondingSaid::FarEndNotStated { leg: id() },
                BondingSaid::AskFarEnd { leg: id() },
            ));
        }
        ("solid", Some(false)) | ("open", Some(true)) => {}
        (_, Some(_)) => {
            return Err(unknown(
                BondingSaid::LinkNotStated { leg: id() },
                BondingSaid::AskLink { leg: id() },
            ));
        }
    }
    let (formation, spacing_m) = placed(leg)?;
    let Some(length) = leg.shield_run.length else {
        return Err(unknown(
            BondingSaid::RunLengthNotStated { leg: id() },
            BondingSaid::AskRunLength { leg: id() },
        ));
    };
    Ok(Stands::Open(Standing::of(
        formation,
        job.system.frequency_hz,
        spacing_m,
        mean_m(job, leg)?.0,
        length.m(),
    )))
}
