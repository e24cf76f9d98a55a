//! Decay: the share of a property that heat and time have used up.

/// Molar gas constant, J/(mol K), exact.
const GAS_CONSTANT: f64 = 8.314_462_618_153_24;

/// A time at one temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stay {
    /// Temperature, K.
    pub temperature_k: f64,
    /// Duration, s.
    pub time_s: f64,
}

/// A share that grows with time at temperature: f (1 − exp(−(ξ/τ)^n)), ξ = Σ Δt exp(−E/R (1/T − 1/T0)).
///
/// Source: `docs/theory/rubber.md`; the form is Kohlrausch's, the reduced time Arrhenius's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Decay {
    /// f, the share after infinite time, 0 to 1.
    pub greatest: f64,
    /// τ, the time scale at the reference temperature, s.
    pub time_s: f64,
    /// n, above 0 and at most 1.
    pub power: f64,
    /// T0, K.
    pub reference_k: f64,
    /// E, J/mol, not below 0.
    pub activation_j_per_mol: f64,
}

impl Decay {
    /// Equivalent time of all stays at the reference temperature, s.
    ///
    /// ```
    /// use jointwright_numerics::rubber::{Decay, Stay};
    /// let decay = Decay { greatest: 0.3, time_s: 1e7, power: 0.5, reference_k: 296.15, activation_j_per_mol: 80e3 };
    /// let warm = Stay { temperature_k: 313.15, time_s: 1e6 };
    /// let ratio = decay.reduced_time_s(&[warm]) / 1e6;
    /// // exp(80 000 / 8.314 462 6 · (1/296.15 − 1/313.15)) = 5.834
    /// assert!((ratio - 5.834).abs() < 1e-3, "{ratio}");
    /// ```
    pub fn reduced_time_s(&self, stays: &[Stay]) -> f64 {
        let mut times: Vec<f64> = stays.iter().map(|stay| self.reduced(stay)).collect();
        // Summed in a fixed order, so the sum does not depend on the order of the stays.
        times.sort_by(f64::total_cmp);
        times.iter().sum()
    }

    fn reduced(&self, stay: &Stay) -> f64 {
        let inverse = 1.0 / stay.temperature_k - 1.0 / self.reference_k;
        stay.time_s.max(0.0) * (-self.activation_j_per_mol / GAS_CONSTANT * inverse).exp()
    }

    /// Share that the stays have used up, 0 to `greatest`.
    pub fn after(&self, stays: &[Stay]) -> f64 {
        let time = self.reduced_time_s(stays) / self.time_s;
        -self.greatest * (-time.powf(self.power)).exp_m1()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const DECAY: Decay = Decay {
        greatest: 0.4,
        time_s: 2e7,
        power: 0.6,
        reference_k: 296.15,
        activation_j_per_mol: 70e3,
    };

    #[test]
    fn one_time_scale_at_the_reference_uses_up_a_known_share() {
        let stay = Stay {
            temperature_k: 296.15,
            time_s: 2e7,
        };
        let expected = 0.4 * (1.0 - (-1.0_f64).exp());
        assert!((DECAY.after(&[stay]) - expected).abs() < 1e-15);
        assert!(DECAY.after(&[]).abs() < 1e-300);
    }
}
