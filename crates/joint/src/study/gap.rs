//! Gap: the straight ways across the gap before the screen edge on which it would discharge first, one for each breakdown curve.
//!
//! Source: `docs/theory/gap.md`.

use crate::section::{GAP_PRESSURE_PA, GapPlace};
use jointwright_numerics::field::Answer;
use jointwright_numerics::gas::{Curve, breakdown_crest_v};
use jointwright_units::{VoltagePeak, VoltageRms};

/// Voltage across a gap along one straight way, per volt between conductor and earth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Across {
    /// Length of the way, m.
    pub width_m: f64,
    /// Share of the voltage across it.
    pub share_ratio: f64,
    /// Estimated error of the share.
    pub error_ratio: f64,
}

impl Across {
    pub(super) fn of(place: &GapPlace, answers: &[Answer], volts: f64) -> Option<Across> {
        let answer = answers.get(place.wanted_index)?;
        let width_m = answer.at?.distance(answer.to?);
        // The answer is a share of what this width withstands.
        let withstood = breakdown_crest_v(width_m, GAP_PRESSURE_PA, place.curve);
        Some(Across {
            width_m,
            share_ratio: answer.value * withstood / volts,
            error_ratio: answer.error_estimate * withstood / volts,
        })
    }

    /// Voltage between conductor and earth at which the gap would begin to discharge along the way, rms; the error is added to the share.
    ///
    /// A gas breaks down at the crest: U_inception · √2 · share = U_breakdown(width).
    pub fn inception(&self, curve: Curve) -> VoltageRms {
        let withstood =
            VoltagePeak::from_v(breakdown_crest_v(self.width_m, GAP_PRESSURE_PA, curve));
        let at_one_volt = VoltageRms::from_v(self.share_ratio + self.error_ratio).crest();
        VoltageRms::from_v(withstood.v() / at_one_volt.v().max(1e-9))
    }
}

/// Least inception voltage over the ways found in a gap, rms between conductor and earth; `None` if no gap lies in the field.
pub fn inception(gap: &[Across], curve: Curve) -> Option<VoltageRms> {
    gap.iter()
        .map(|across| across.inception(curve))
        .min_by(|a, b| a.v().total_cmp(&b.v()))
}
