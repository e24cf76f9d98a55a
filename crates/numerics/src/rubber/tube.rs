//! Tube: rings of rubber, bonded to each other as they were made, stretched over a rigid cylinder without friction.

use super::integral::integral;
use super::{Law, RubberError};

/// Tolerance of the axial stretch of free ends.
const CLOSE: f64 = 1e-13;
/// Error of a pressure from a free length known to [`CLOSE`] and from logarithms that differ in the last bit.
const ROUNDING_RATIO: f64 = 1e-13;
/// Greatest change of a free tube's length before the search is given up.
const AXIAL_FARTHEST: f64 = 1e3;
/// Greatest number of steps of a root search.
const STEPS_MOST: usize = 200;
/// Largest cylinder tried for a pressure, as a multiple of the bore.
const RADIUS_FARTHEST: f64 = 1e3;

/// One ring of a tube.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ring {
    /// Its outer radius, relaxed, m.
    pub outside_m: f64,
    /// Its rubber.
    pub law: Law,
}

/// A tube as it was made, without stress.
#[derive(Clone, Debug, PartialEq)]
pub struct Tube {
    bore_m: f64,
    rings: Vec<Ring>,
}

/// Condition at the ends of a tube.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    /// The tube keeps its length.
    FixedLength,
    /// The ends are free: the axial force is zero.
    Free,
}

/// A tube on a cylinder.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pressed {
    /// Pressure between tube and cylinder, Pa; 0 if they do not touch.
    pub pressure_pa: f64,
    /// Length of the tube over its relaxed length.
    pub axial_stretch: f64,
    /// Estimated error of the pressure, Pa.
    pub error_pa: f64,
}

impl Tube {
    /// A tube with this bore radius, m, and these rings from the inside out.
    ///
    /// # Errors
    /// [`RubberError::NoTube`], [`RubberError::NoStiffness`].
    ///
    /// ```
    /// use jointwright_numerics::rubber::{Ends, Law, Ring, Tube};
    /// let law = Law::NeoHookean { modulus_pa: 0.5e6 };
    /// let tube = Tube::new(10e-3, vec![Ring { outside_m: 20e-3, law }]).expect("a tube");
    /// let pressed = tube.pressed(15e-3, Ends::FixedLength).expect("a pressure");
    /// assert!((pressed.pressure_pa - 214_114.2).abs() < 0.1);
    /// ```
    pub fn new(bore_m: f64, rings: Vec<Ring>) -> Result<Tube, RubberError> {
        let mut inside = bore_m;
        let is_bore = bore_m.is_finite() && bore_m > 0.0;
        for ring in &rings {
            if !is_bore || !ring.outside_m.is_finite() || ring.outside_m <= inside {
                return Err(RubberError::NoTube { bore_m });
            }
            inside = ring.outside_m;
        }
        if rings.is_empty() {
            return Err(RubberError::NoTube { bore_m });
        }
        if !rings.iter().all(|ring| ring.law.is_stiff()) {
            return Err(RubberError::NoStiffness);
        }
        Ok(Tube { bore_m, rings })
    }

    /// Relaxed radius of the bore, m.
    pub fn bore_m(&self) -> f64 {
        self.bore_m
    }

    /// Relaxed outer radius, m.
    pub fn outside_m(&self) -> f64 {
        self.rings.last().map_or(self.bore_m, |ring| ring.outside_m)
    }

    /// The tube at rest with another bore radius, m: same volume and length, no stress.
    ///
    /// It describes a tube whose bore has set.
    /// The bore must be positive.
    pub fn set_to(&self, bore_m: f64) -> Tube {
        let more = (bore_m - self.bore_m) * (bore_m + self.bore_m);
        let grown = |ring: &Ring| Ring {
            outside_m: (ring.outside_m * ring.outside_m + more).max(0.0).sqrt(),
            ..*ring
        };
        Tube {
            bore_m,
            rings: self.rings.iter().map(grown).collect(),
        }
    }

    /// The tube grown by `length_ratio` in every direction, with every modulus multiplied by `modulus_ratio`.
    pub fn grown(&self, length_ratio: f64, modulus_ratio: f64) -> Tube {
        let grown = |ring: &Ring| Ring {
            outside_m: ring.outside_m * length_ratio,
            law: ring.law.times(modulus_ratio),
        };
        Tube {
            bore_m: self.bore_m * length_ratio,
            rings: self.rings.iter().map(grown).collect(),
        }
    }

    /// The tube on a cylinder of this radius, m.
    ///
    /// With free ends, the axial stretch is the one at which the axial force vanishes.
    ///
    /// # Errors
    /// [`RubberError::NoCylinder`], [`RubberError::BeyondLimit`], [`RubberError::NoBalance`].
    pub fn pressed(&self, radius_m: f64, ends: Ends) -> Result<Pressed, RubberError> {
        if !(radius_m.is_finite() && radius_m > 0.0) {
            return Err(RubberError::NoCylinder);
        }
        if radius_m <= self.bore_m {
            return Ok(Pressed {
                pressure_pa: 0.0,
                axial_stretch: 1.0,
                error_pa: 0.0,
            });
        }
        let axial = match ends {
            Ends::FixedLength => 1.0,
            Ends::Free => self.free_stretch(radius_m)?,
        };
        self.pressed_at(radius_m, axial)
    }

    /// The lower pressure of fixed length and free ends on a cylinder of this radius, m.
    ///
    /// # Errors
    /// The same errors as [`Tube::pressed()`].
    pub fn pressed_least(&self, radius_m: f64) -> Result<Pressed, RubberError> {
        let fixed = self.pressed(radius_m, Ends::FixedLength)?;
        let free = self.pressed(radius_m, Ends::Free)?;
        Ok(if free.pressure_pa < fixed.pressure_pa {
            free
        } else {
            fixed
        })
    }

    /// The tube on a cylinder of this radius, m, at `axial_stretch` times its own length.
    ///
    /// p = Σ ∫ (tθ − tr) dr/r over the rings, tθ − tr = 2 (λθ² − λr²)(W1 + λz² W2); never negative.
    ///
    /// # Errors
    /// [`RubberError::NoCylinder`], [`RubberError::BeyondLimit`].
    ///
    /// Source: Rivlin (1949), Philosophical Transactions A 242; `docs/theory/rubber.md`.
    pub fn pressed_at(&self, radius_m: f64, axial_stretch: f64) -> Result<Pressed, RubberError> {
        let is_some = |length: f64| length.is_finite() && length > 0.0;
        if !is_some(radius_m) || !is_some(axial_stretch) {
            return Err(RubberError::NoCylinder);
        }
        let (mut pressure, mut error) = (0.0, 0.0);
        let mut inside = self.bore_m;
        for ring in &self.rings {
            let (value, off) = self.of_ring(inside, ring, radius_m, axial_stretch)?;
            pressure += value;
            error += off;
            inside = ring.outside_m;
        }
        Ok(Pressed {
            pressure_pa: pressure.max(0.0),
            axial_stretch,
            error_pa: error + ROUNDING_RATIO * pressure.abs(),
        })
    }

    fn of_ring(
        &self,
        inside: f64,
        ring: &Ring,
        radius: f64,
        axial: f64,
    ) -> Result<(f64, f64), RubberError> {
        if let Some(factor) = closed_factor(&ring.law, axial) {
            let pressure = factor * self.closed_form(inside, ring.outside_m, radius, axial);
            // The differences of logarithms lose digits if the ring is hardly stretched.
            return Ok((pressure, 4.0 * f64::EPSILON * factor));
        }
        let f = |log: f64| -> Result<f64, RubberError> {
            let at = self.at(log, radius, axial);
            Ok(at.hoop_less_radial(&ring.law)? * at.relaxed_2 / (2.0 * axial * at.radius_2))
        };
        // As a function of ln R² the integrand is smooth for every wall thickness.
        integral(&f, 2.0 * inside.ln(), 2.0 * ring.outside_m.ln())
    }

    /// Closed form over a ring for a law with constant derivatives, per μ:
    /// ½ [ln(R²/r²)/λz − K/(λz² r²)] from its inside to its outside, K = A² − λz a².
    fn closed_form(&self, inside: f64, outside: f64, radius: f64, axial: f64) -> f64 {
        let bore_2 = self.bore_m * self.bore_m;
        let k = bore_2 - axial * radius * radius;
        let deformed = |relaxed: f64| radius * radius + (relaxed * relaxed - bore_2) / axial;
        let (in_2, out_2) = (deformed(inside), deformed(outside));
        let logs = 2.0 * (outside / inside).ln() - (out_2 / in_2).ln();
        (logs / axial + k / (axial * axial) * (1.0 / out_2 - 1.0 / in_2)) / 2.0
    }

    fn at(&self, log: f64, radius: f64, axial: f64) -> State {
        let relaxed_2 = log.exp();
        let radius_2 = radius * radius + (relaxed_2 - self.bore_m * self.bore_m) / axial;
        let hoop_2 = radius_2 / relaxed_2;
        let axial_2 = axial * axial;
        State {
            relaxed_2,
            radius_2,
            hoop_2,
            radial_2: 1.0 / (hoop_2 * axial_2),
            axial_2,
        }
    }

    /// Axial force over 2π at this length, N: ∫ [(tz − tr) − (tθ − tr)(1 − a²/r²)/2] r dr.
    fn axial_force(&self, radius: f64, axial: f64) -> Result<f64, RubberError> {
        let mut force = 0.0;
        let mut inside = self.bore_m;
        for ring in &self.rings {
            let f = |log: f64| -> Result<f64, RubberError> {
                let at = self.at(log, radius, axial);
                let share = (1.0 - radius * radius / at.radius_2) / 2.0;
                let stress =
                    at.axial_less_radial(&ring.law)? - at.hoop_less_radial(&ring.law)? * share;
                Ok(stress * at.relaxed_2 / (2.0 * axial))
            };
            force += integral(&f, 2.0 * inside.ln(), 2.0 * ring.outside_m.ln())?.0;
            inside = ring.outside_m;
        }
        Ok(force)
    }

    /// Axial stretch at which the axial force vanishes.
    fn free_stretch(&self, radius: f64) -> Result<f64, RubberError> {
        let force = |axial: f64| self.axial_force(radius, axial);
        let bracket = bracket(&force)?;
        root(&force, bracket)
    }

    /// Radius of the cylinder with this pressure, m, for the lower pressure of fixed length and free ends.
    ///
    /// A pressure of 0 or less gives the bore itself.
    ///
    /// # Errors
    /// [`RubberError::NoRadius`] if no cylinder has such a pressure; otherwise the same errors as [`Tube::pressed()`].
    pub fn radius_for(&self, pressure_pa: f64) -> Result<f64, RubberError> {
        self.radius_where(pressure_pa, |radius| self.pressed_least(radius))
    }

    /// Radius of the cylinder with this pressure, m, for the given ends.
    ///
    /// # Errors
    /// The same errors as [`Tube::radius_for()`].
    pub fn radius_for_ends(&self, pressure_pa: f64, ends: Ends) -> Result<f64, RubberError> {
        self.radius_where(pressure_pa, |radius| self.pressed(radius, ends))
    }

    fn radius_where(
        &self,
        pressure_pa: f64,
        pressed: impl Fn(f64) -> Result<Pressed, RubberError>,
    ) -> Result<f64, RubberError> {
        if pressure_pa <= 0.0 {
            return Ok(self.bore_m);
        }
        let more = |radius: f64| Ok(pressed(radius)?.pressure_pa - pressure_pa);
        let mut high = self.bore_m * 1.05;
        let mut low = (self.bore_m, -pressure_pa);
        loop {
            let found = match more(high) {
                Err(RubberError::BeyondLimit { .. }) => f64::INFINITY,
                other => other?,
            };
            if found == f64::INFINITY {
                // The law's limit lies below this radius: return towards the last possible one.
                high = 0.5 * (low.0 + high);
                if high - low.0 <= CLOSE * high {
                    return Err(RubberError::NoRadius { greatest_m: high });
                }
            } else if found >= 0.0 {
                return root(&more, [low, (high, found)]);
            } else if high > RADIUS_FARTHEST * self.bore_m {
                return Err(RubberError::NoRadius { greatest_m: high });
            } else {
                low = (high, found);
                high *= 1.2;
            }
        }
    }
}

/// μ of the closed form if the law's derivatives are independent of the stretch: 2 (C1 + λz² C2).
fn closed_factor(law: &Law, axial: f64) -> Option<f64> {
    match *law {
        Law::NeoHookean { modulus_pa } => Some(modulus_pa),
        Law::MooneyRivlin { c1_pa, c2_pa } => Some(2.0 * (c1_pa + axial * axial * c2_pa)),
        Law::Gent { .. } => None,
    }
}

/// Squares of radii and stretches at one place of the wall.
struct State {
    relaxed_2: f64,
    radius_2: f64,
    hoop_2: f64,
    radial_2: f64,
    axial_2: f64,
}

impl State {
    fn slopes(&self, law: &Law) -> Result<(f64, f64), RubberError> {
        law.slopes(self.hoop_2 + self.radial_2 + self.axial_2)
    }

    fn hoop_less_radial(&self, law: &Law) -> Result<f64, RubberError> {
        let (w1, w2) = self.slopes(law)?;
        Ok(2.0 * (self.hoop_2 - self.radial_2) * (w1 + self.axial_2 * w2))
    }

    fn axial_less_radial(&self, law: &Law) -> Result<f64, RubberError> {
        let (w1, w2) = self.slopes(law)?;
        Ok(2.0 * (self.axial_2 - self.radial_2) * (w1 + self.hoop_2 * w2))
    }
}

type Bracket = [(f64, f64); 2];

/// A bracket of axial stretches in which a rising force changes its sign.
fn bracket(force: &impl Fn(f64) -> Result<f64, RubberError>) -> Result<Bracket, RubberError> {
    let mut here = (1.0, force(1.0)?);
    let mut step = 1.05;
    while step < AXIAL_FARTHEST {
        let axial = if here.1 > 0.0 {
            here.0 / step
        } else {
            here.0 * step
        };
        let there = (axial, force(axial)?);
        if (there.1 > 0.0) != (here.1 > 0.0) {
            return Ok([here, there]);
        }
        here = there;
        step *= step;
    }
    Err(RubberError::NoBalance)
}

/// Root of a function in a bracket by the secant method; it halves the weight of an end that does not move.
fn root(
    f: &impl Fn(f64) -> Result<f64, RubberError>,
    bracket: Bracket,
) -> Result<f64, RubberError> {
    let [(mut x0, mut y0), (mut x1, mut y1)] = bracket;
    for _ in 0..STEPS_MOST {
        if y1 == 0.0 || (x1 - x0).abs() <= CLOSE * x1.abs() {
            return Ok(x1);
        }
        let mut x = x1 - y1 * (x1 - x0) / (y1 - y0);
        let (low, high) = (x0.min(x1), x0.max(x1));
        if !(x > low && x < high) {
            x = 0.5 * (x0 + x1);
        }
        let y = f(x)?;
        if (y > 0.0) == (y1 > 0.0) {
            // The other end stays: halve its weight, so that the next secant comes from its side.
            let less = 1.0 - y / y1;
            y0 *= if less > 0.0 { less } else { 0.5 };
        } else {
            (x0, y0) = (x1, y1);
        }
        let step = (x - x1).abs();
        (x1, y1) = (x, y);
        if step <= CLOSE * x.abs() {
            return Ok(x);
        }
    }
    Ok(x1)
}
