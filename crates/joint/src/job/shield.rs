//! The shield of a leg beyond the joint, as typed values.

use crate::form::Record;
use jointwright_units::Length;

/// How the three cables of a run lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Formation {
    /// A triangle with equal sides.
    Trefoil,
    /// One plane, equal distances, not transposed.
    Flat,
}

/// What the job says of a leg's shield beyond the joint; `None` where it does not.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct ShieldRun {
    /// Lay of its wires or straps.
    pub lay: Option<Length>,
    /// How the three cables lie.
    pub formation: Option<Formation>,
    /// Between the axes of neighbours.
    pub spacing: Option<Length>,
    /// From the joint to where the shield is next bonded, or ends.
    pub length: Option<Length>,
    /// Whether it is earthed there.
    pub is_far_end_bonded: Option<bool>,
}

/// The shield of a leg beyond the joint, from the leg's record.
pub(super) fn shield_run(leg: &Record) -> ShieldRun {
    let shield = leg.record("cable").and_then(|cable| cable.record("shield"));
    ShieldRun {
        lay: shield.and_then(|row| row.length("lay")),
        formation: leg.text("formation").map(|word| match word {
            "flat" => Formation::Flat,
            _ => Formation::Trefoil,
        }),
        spacing: leg.length("spacing"),
        length: leg.length("run_length"),
        is_far_end_bonded: leg.flag("far_end_bonded"),
    }
}
