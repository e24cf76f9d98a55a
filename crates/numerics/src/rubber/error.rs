//! Rubber errors: the reasons why the pressure of a tube has no value.

/// Reason why the pressure of a tube has no value.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum RubberError {
    /// Radii that do not grow from the bore outward, or are not finite.
    #[error("the radii of the tube do not grow from {} mm outward", bore_m * 1e3)]
    NoTube {
        /// Radius of the bore, m.
        bore_m: f64,
    },
    /// A rubber law whose constants give no stiffness.
    #[error("the constants of the rubber give it no stiffness")]
    NoStiffness,
    /// A cylinder without a radius.
    #[error("the cylinder has no radius")]
    NoCylinder,
    /// The stretch of the rubber exceeds the limit of its law.
    #[error(
        "the rubber is stretched beyond the limit of its law: its first invariant exceeds 3 by {excess:.3}, the most is {most:.3}"
    )]
    BeyondLimit {
        /// I1 − 3.
        excess: f64,
        /// Greatest value that the law allows.
        most: f64,
    },
    /// No axial stretch makes the axial force vanish.
    #[error("no axial stretch makes the axial force of the tube vanish")]
    NoBalance,
    /// A pressure that no cylinder causes.
    #[error("no cylinder up to {} mm is pressed so hard", greatest_m * 1e3)]
    NoRadius {
        /// Largest radius that was tried, m.
        greatest_m: f64,
    },
}
