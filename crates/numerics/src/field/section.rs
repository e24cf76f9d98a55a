//! A section with its materials and potentials: all that the equation needs.

use crate::outline::{Outline, Point};

/// Conductivity of a material, and how it rises with the field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Conductivity {
    /// The same at every field, S/m; 0 for a perfect insulator.
    Constant(f64),
    /// σ(E) = σ₀ (1 + (E/E₁)²)^(p/2): constant at low fields, the power `p` of the field at high ones, smooth between.
    Rising {
        /// σ₀, conductivity at no field, S/m.
        at_rest: f64,
        /// E₁, field at which it begins to rise, V/m; the amplitude it is compared with is the modulus of the complex field as given (rms in, rms compared).
        knee: f64,
        /// p, power of the field far above the knee.
        power: f64,
    },
}

/// A material.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Material {
    /// Relative permittivity.
    pub relative_permittivity: f64,
    /// Conductivity, S/m.
    pub conductivity: Conductivity,
}

/// Which of the two currents the equation keeps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Regime {
    /// Displacement alone: ∇·(ε∇φ) = 0.
    Capacitive,
    /// Conduction alone, at rest: ∇·(σ∇φ) = 0.
    Resistive,
    /// Both, as complex amplitudes at one frequency: ∇·((σ + jωε)∇φ) = 0.
    Complex {
        /// Frequency, Hz.
        frequency_hz: f64,
    },
}

/// An open disc left out of peaks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Disc {
    /// Its middle, m.
    pub at: Point,
    /// Its radius, m.
    pub radius: f64,
}

/// A section ready to be solved.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// Points, curves and regions.
    pub outline: Outline,
    /// Material of each region, in the order of `outline.regions`.
    pub materials: Vec<Material>,
    /// Potential of the curves of a tag, V; every other outer curve carries no flux.
    pub potentials: Vec<(String, f64)>,
    /// Tags that are each one conductor of unknown potential and no charge.
    pub floating: Vec<String>,
    /// Which currents count.
    pub regime: Regime,
    /// Discs left out of peaks, never of values at points.
    pub leave_out: Vec<Disc>,
}
