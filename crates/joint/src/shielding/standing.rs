//! Standing: the voltage that balanced currents drive along a shield which is open at one end.

use super::along::{mean_m, metres};
use super::loss::placed;
use super::unknown;
use crate::job::{Formation, Job, Leg};
use crate::section::Unknown;
use jointwright_numerics::rating::shield::{standing_trefoil_v_per_a_m, standing_v_per_a_m};

/// What stands along a leg's shield.
#[derive(Clone, Debug, PartialEq)]
pub enum Stands {
    /// A voltage between its open end and earth.
    Open(Standing),
    /// None of this kind, because both ends are bonded; in words.
    Bonded(String),
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
    /// Of three shields with a mean diameter.
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

/// What stands along the shield of a leg: the least mean diameter, which gives the greatest voltage.
///
/// # Errors
/// What nobody states, with the questions to put.
pub fn standing(job: &Job, leg: &Leg) -> Result<Stands, Unknown> {
    let id = &leg.id;
    let far = leg.shield_run.is_far_end_bonded;
    match (leg.bonding.as_str(), far) {
        ("solid", Some(true)) => {
            return Ok(Stands::Bonded(format!(
                "the shield of leg {id} is bonded at both ends: a current flows round it, and what stands between them is not computed"
            )));
        }
        ("open", Some(false)) => {
            return Err(unknown(
                format!(
                    "the shield of leg {id} is bonded at neither end of its run: it takes up voltage from its conductor, which is not computed"
                ),
                format!("Where is the shield of leg {id} earthed?"),
            ));
        }
        (_, None) => {
            return Err(unknown(
                format!("whether the shield of leg {id} is earthed at its far end is not stated"),
                format!("Is the shield of leg {id} earthed at the far end of its run too?"),
            ));
        }
        ("solid", Some(false)) | ("open", Some(true)) => {}
        (_, Some(_)) => {
            return Err(unknown(
                format!("whether the link of leg {id} is closed is not stated"),
                format!("Is the link of leg {id} at the joint closed in service?"),
            ));
        }
    }
    let (formation, spacing_m) = placed(leg)?;
    let Some(length) = leg.shield_run.length else {
        return Err(unknown(
            format!("leg {id} does not state its run_length"),
            format!(
                "How far is it from the joint to where the shield of leg {id} is next bonded, or ends?"
            ),
        ));
    };
    Ok(Stands::Open(Standing::of(
        formation,
        job.system.frequency_hz,
        spacing_m,
        mean_m(job, leg)?.0,
        metres(length),
    )))
}
