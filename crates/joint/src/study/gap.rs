//! Gap: the voltage across the gap before the screen edge, place by place, and where it would first discharge.
//!
//! Source: `docs/theory/gap.md`.

use crate::section::GapPlace;
use jointwright_numerics::field::Answer;
use jointwright_numerics::gas::{Curve, breakdown_crest_v};
use jointwright_units::{VoltagePeak, VoltageRms};

/// Pressure of the gas in a gap, Pa: one standard atmosphere, in a gap that nothing presses.
pub const PRESSURE_PA: f64 = 101_325.0;

/// What stands across a gap at one place, per volt between conductor and earth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Across {
    /// Width of the gap, m.
    pub width_m: f64,
    /// Share of the voltage that stands across it.
    pub share_ratio: f64,
    /// Estimated error of the share.
    pub error_ratio: f64,
}

impl Across {
    pub(super) fn of(place: &GapPlace, answers: &[Answer], volts: f64) -> Across {
        let of = |index: usize| {
            answers.get(index).map_or(([0.0; 2], 0.0), |answer| {
                let (sine, cosine) = answer.phase.unwrap_or(0.0).sin_cos();
                let parts = [answer.value * cosine, answer.value * sine];
                (parts, answer.error_estimate)
            })
        };
        let (low, low_error) = of(place.low_index);
        let (high, high_error) = place.high_index.map_or(([0.0; 2], 0.0), of);
        Across {
            width_m: place.width_m,
            share_ratio: (low[0] - high[0]).hypot(low[1] - high[1]) / volts,
            error_ratio: (low_error + high_error) / volts,
        }
    }

    /// Voltage between conductor and earth at which the gap would begin to discharge here, rms; the error taken against it.
    ///
    /// A gas breaks down at the crest: U_inception · √2 · share = U_breakdown(width).
    pub fn inception(&self, curve: Curve) -> VoltageRms {
        let withstood = VoltagePeak::from_v(breakdown_crest_v(self.width_m, PRESSURE_PA, curve));
        let at_one_volt = VoltageRms::from_v(self.share_ratio + self.error_ratio).crest();
        VoltageRms::from_v(withstood.v() / at_one_volt.v().max(1e-9))
    }
}

/// The least inception voltage over all places of a gap, rms between conductor and earth; none where there is no gap in the field.
pub fn inception(gap: &[Across], curve: Curve) -> Option<VoltageRms> {
    gap.iter()
        .map(|across| across.inception(curve))
        .min_by(|a, b| a.v().total_cmp(&b.v()))
}
