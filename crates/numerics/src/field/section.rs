//! A section with its materials and potentials: the complete input of the equation.

use crate::outline::{Outline, Point};

/// Conductivity of a material, and its dependence on the field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Conductivity {
    /// Independent of the field, S/m; 0 for a perfect insulator.
    Constant(f64),
    /// σ(E) = σ₀ (1 + (E/E₁)²)^(p/2): constant at low fields, proportional to the power `p` of the field at high ones, smooth between.
    Rising {
        /// σ₀, conductivity at zero field, S/m.
        at_rest: f64,
        /// E₁, field at which the conductivity begins to rise, V/m; it is compared with the modulus of the complex field as given (for rms input, the rms value).
        knee: f64,
        /// p, exponent of the field far above the knee.
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

/// Currents that the equation keeps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Regime {
    /// Displacement current alone: ∇·(ε∇φ) = 0.
    Capacitive,
    /// Conduction current alone, at rest: ∇·(σ∇φ) = 0.
    Resistive,
    /// Both currents, as complex amplitudes at one frequency: ∇·((σ + jωε)∇φ) = 0.
    Complex {
        /// Frequency, Hz.
        frequency_hz: f64,
    },
}

/// An open disc that peaks leave out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Disc {
    /// Its centre, m.
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
    /// Potential of the curves with a tag, V; every other outer curve carries no flux.
    pub potentials: Vec<(String, f64)>,
    /// Tags that are each one floating conductor: unknown potential, zero charge.
    pub floating: Vec<String>,
    /// Currents that count.
    pub regime: Regime,
    /// Discs that peaks leave out, but values at points do not.
    pub leave_out: Vec<Disc>,
}
