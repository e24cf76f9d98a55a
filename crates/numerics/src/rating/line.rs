//! Line: impedances of three cables with concentric neutrals of wires, over earth, and the admittance of each.
//!
//! Every conductor and every neutral forms a loop with the earth.
//! The neutrals are earthed along their whole length, so they can be eliminated.
//!
//! Source: kersting_dsma, recalled; `docs/theory/rating.md`.

use std::f64::consts::PI;

use faer::c64;

use super::MU0_OVER_2PI_H_PER_M;
use super::error::RatingError;

/// Permeability of vacuum, H/m.
const MU0_H_PER_M: f64 = 4e-7 * PI;
/// Permittivity of vacuum, F/m.
const EPSILON_0_F_PER_M: f64 = 8.854_187_812_8e-12;
/// ½ − γ, with Euler's constant γ.
const HALF_LESS_EULER: f64 = 0.5 - 0.577_215_664_901_532_9;

/// A resistance and a reactance in series.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Impedance {
    /// Ω/m.
    pub resistance_ohm_per_m: f64,
    /// Ω/m; negative if capacitive.
    pub reactance_ohm_per_m: f64,
}

/// Earth, the return of every loop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Earth {
    /// ρ, Ω·m.
    pub resistivity_ohm_m: f64,
    /// f, Hz.
    pub frequency_hz: f64,
}

impl Earth {
    /// π² f · 10⁻⁷, resistance of the earth return, Ω/m.
    ///
    /// # Source
    /// kersting_dsma, memory: there 0.00158836 f Ω/mile; the first term of Carson's series.
    ///
    /// ```
    /// use jointwright_numerics::rating::line::Earth;
    /// let earth = Earth { resistivity_ohm_m: 100.0, frequency_hz: 60.0 };
    /// assert!((earth.resistance_ohm_per_m() * 1609.344 - 0.0953).abs() < 1e-5);
    /// ```
    pub fn resistance_ohm_per_m(&self) -> f64 {
        PI * PI * self.frequency_hz * 1e-7
    }

    /// De, equivalent depth of the earth return, m: De = 2 e^(½ − γ) √(ρ/ωμ0).
    ///
    /// # Source
    /// kersting_dsma, memory: there ln De in feet = 7.6786 + ½ ln(ρ/f); the first term of Carson's series.
    ///
    /// ```
    /// use jointwright_numerics::rating::line::Earth;
    /// let earth = Earth { resistivity_ohm_m: 100.0, frequency_hz: 60.0 };
    /// assert!(((earth.depth_m() / 0.3048).ln() - 7.93402).abs() < 1e-4);
    /// ```
    pub fn depth_m(&self) -> f64 {
        let squared = self.resistivity_ohm_m / (2.0 * PI * self.frequency_hz * MU0_H_PER_M);
        2.0 * HALF_LESS_EULER.exp() * squared.sqrt()
    }

    /// j ω · 2 · 10⁻⁷ · ln(De/D) + π² f · 10⁻⁷, the impedance between two loops at the distance D, or of one loop with D its geometric mean radius.
    fn loop_ohm_per_m(&self, distance_m: f64) -> c64 {
        let unit = 2.0 * PI * self.frequency_hz * MU0_OVER_2PI_H_PER_M;
        let reactance = unit * (self.depth_m() / distance_m).ln();
        c64::new(self.resistance_ohm_per_m(), reactance)
    }
}

/// A cable whose neutral consists of wires on a circle about the conductor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Concentric {
    /// Resistance of the conductor, Ω/m.
    pub conductor_ohm_per_m: f64,
    /// Geometric mean radius of the conductor, m.
    pub conductor_gmr_m: f64,
    /// k, number of wires.
    pub n_wires: usize,
    /// Resistance of one wire, Ω/m.
    pub wire_ohm_per_m: f64,
    /// Geometric mean radius of one wire, m.
    pub wire_gmr_m: f64,
    /// R, radius of the circle through the wires' axes, m.
    pub circle_m: f64,
}

impl Concentric {
    /// Geometric mean radius of the neutral, m: (GMR k R^(k − 1))^(1/k), with GMR the geometric mean radius of one wire.
    ///
    /// # Source
    /// kersting_dsma, memory; the geometric mean of the distances of k wires on a circle.
    ///
    /// ```
    /// use jointwright_numerics::rating::line::Concentric;
    /// let cable = Concentric {
    ///     conductor_ohm_per_m: 2.5e-4,
    ///     conductor_gmr_m: 5.2e-3,
    ///     n_wires: 1,
    ///     wire_ohm_per_m: 9e-3,
    ///     wire_gmr_m: 0.6e-3,
    ///     circle_m: 15e-3,
    /// };
    /// assert!((cable.neutral_gmr_m() - 0.6e-3).abs() < 1e-18);
    /// ```
    pub fn neutral_gmr_m(&self) -> f64 {
        let count = self.n_wires as f64;
        let logarithm = (self.wire_gmr_m * count).ln() + (count - 1.0) * self.circle_m.ln();
        (logarithm / count).exp()
    }

    /// Resistance of the neutral, Ω/m: the resistance of one wire divided by their number.
    ///
    /// # Source
    /// kersting_dsma, memory; the lay is left out.
    ///
    /// ```
    /// use jointwright_numerics::rating::line::Concentric;
    /// let cable = Concentric {
    ///     conductor_ohm_per_m: 2.5e-4,
    ///     conductor_gmr_m: 5.2e-3,
    ///     n_wires: 12,
    ///     wire_ohm_per_m: 9e-3,
    ///     wire_gmr_m: 0.6e-3,
    ///     circle_m: 15e-3,
    /// };
    /// assert!((cable.neutral_ohm_per_m() - 7.5e-4).abs() < 1e-15);
    /// ```
    pub fn neutral_ohm_per_m(&self) -> f64 {
        self.wire_ohm_per_m / self.n_wires as f64
    }

    fn is_cable(&self) -> bool {
        let lengths = [self.conductor_gmr_m, self.wire_gmr_m, self.circle_m];
        let resistances = [self.conductor_ohm_per_m, self.wire_ohm_per_m];
        let are_numbers = lengths
            .iter()
            .chain(&resistances)
            .all(|each| *each > 0.0 && each.is_finite());
        are_numbers && self.n_wires > 0
    }
}

/// Impedances of three equal cables, self and mutual, with their neutrals earthed along their whole length.
///
/// For conductors i and neutrals n: Z = Zij − Zin Znn⁻¹ Znj.
/// A loop with earth has r + π² f · 10⁻⁷ + j ω · 2 · 10⁻⁷ · ln(De/D).
/// D is the geometric mean radius for a loop's own impedance, R between a conductor and its neutral, and the distance of axes between two cables.
///
/// `axes_m`: across and down, m.
///
/// # Assumes
/// The distance of the cables is large against the circle of their wires; the depth of burial does not matter.
///
/// # Errors
/// [`RatingError::NoNumber`].
///
/// # Source
/// kersting_dsma, memory: simplified equations of Carson, and the elimination of Kron.
///
/// ```
/// use jointwright_numerics::rating::line::{Concentric, Earth, impedances};
/// let cable = Concentric {
///     conductor_ohm_per_m: 2.5e-4,
///     conductor_gmr_m: 5.2e-3,
///     n_wires: 13,
///     wire_ohm_per_m: 9e-3,
///     wire_gmr_m: 0.6e-3,
///     circle_m: 15e-3,
/// };
/// let earth = Earth { resistivity_ohm_m: 100.0, frequency_hz: 60.0 };
/// let axes_m = [[0.0, 1.0], [0.15, 1.0], [0.3, 1.0]];
/// let matrix = impedances(&cable, axes_m, &earth)?;
/// assert!((matrix[0][1].reactance_ohm_per_m - matrix[1][0].reactance_ohm_per_m).abs() < 1e-15);
/// # Ok::<(), jointwright_numerics::rating::RatingError>(())
/// ```
pub fn impedances(
    cable: &Concentric,
    axes_m: [[f64; 2]; 3],
    earth: &Earth,
) -> Result<[[Impedance; 3]; 3], RatingError> {
    let is_earth = earth.resistivity_ohm_m > 0.0 && earth.frequency_hz > 0.0;
    if !(cable.is_cable() && is_earth) {
        return Err(RatingError::NoNumber);
    }
    let mut loops = [[c64::new(0.0, 0.0); 6]; 6];
    for (row, entries) in loops.iter_mut().enumerate() {
        for (column, entry) in entries.iter_mut().enumerate() {
            let (here, there) = (axes_m[row % 3], axes_m[column % 3]);
            let (resistance, distance) = if row % 3 != column % 3 {
                (0.0, (here[0] - there[0]).hypot(here[1] - there[1]))
            } else if row != column {
                (0.0, cable.circle_m)
            } else if row < 3 {
                (cable.conductor_ohm_per_m, cable.conductor_gmr_m)
            } else {
                (cable.neutral_ohm_per_m(), cable.neutral_gmr_m())
            };
            *entry = c64::new(resistance, 0.0) + earth.loop_ohm_per_m(distance);
        }
    }
    let reduced = without_last(loops);
    let finite = reduced.as_flattened().iter().all(|each| each.is_finite());
    if !finite {
        return Err(RatingError::NoNumber);
    }
    Ok(reduced.map(|row| {
        row.map(|each| Impedance {
            resistance_ohm_per_m: each.re,
            reactance_ohm_per_m: each.im,
        })
    }))
}

/// Eliminates loops 3 to 5, which have no voltage, one after the other, the last first.
fn without_last(mut loops: [[c64; 6]; 6]) -> [[c64; 3]; 3] {
    for last in (3..6).rev() {
        let across = loops[last];
        for row in loops.iter_mut().take(last) {
            let share = row[last] / across[last];
            for (entry, other) in row.iter_mut().zip(across).take(last) {
                *entry -= share * other;
            }
        }
    }
    std::array::from_fn(|row| std::array::from_fn(|column| loops[row][column]))
}

/// Capacitance between a conductor and a neutral of wires, F/m: C = 2π ε0 εr/(ln(R/rc) − ln(k rs/R)/k).
///
/// R, `circle_m`: radius of the circle through the wires' axes, m · rc, `conductor_m`, and rs, `wire_m`: radii of the conductor and of a wire, m · k, `n_wires`.
///
/// # Assumes
/// There is no screen under the wires; with one, use [`super::conductor::coaxial_capacitance_f_per_m()`].
///
/// # Source
/// kersting_dsma, memory: there 77.3619 µS/mile at 60 Hz for εr = 2.3, with a rounded ε0 that is 0.35 % less.
///
/// ```
/// use jointwright_numerics::rating::line::wires_capacitance_f_per_m;
/// let farad_per_m = wires_capacitance_f_per_m(2.3, 7.2e-3, 0.814e-3, 15.575e-3, 13);
/// assert!((farad_per_m - 1.598e-10).abs() < 2e-13);
/// ```
pub fn wires_capacitance_f_per_m(
    relative_permittivity: f64,
    conductor_m: f64,
    wire_m: f64,
    circle_m: f64,
    n_wires: usize,
) -> f64 {
    let count = n_wires as f64;
    let between = (circle_m / conductor_m).ln() - (count * wire_m / circle_m).ln() / count;
    2.0 * PI * EPSILON_0_F_PER_M * relative_permittivity / between
}
