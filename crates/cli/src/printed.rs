//! Printed: the page or document of a joint or a run of cable, with the outcome that decides the exit code.

use jointwright_joint::limit::Outcome;

/// Text that a command prints, and the outcome of its joint.
pub struct Printed {
    /// Page or document.
    pub shown: String,
    /// Worst of all rulings on the joint: one joint has one verdict, at every door.
    pub outcome: Outcome,
}
