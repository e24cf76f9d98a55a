//! Stage: the moments of a make-up that instructions and crews name.
//!
//! Why its own room: a part's own step and the programme of the joint must name the same moment by the same word.
//!
//! Invariants: every stage has one name in files; the order here is the usual order of a crew, and rules nothing.
//!
//! Not here: which step must come before which (`programme`).
//!
//! Source: common practice, no source.

use crate::file_words::file_words;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A moment of the make-up of one leg, or of the whole joint.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Stage {
    /// The place and the cable are handed over by those who answer for it.
    HandOver,
    /// Cable measured and compared.
    Measure,
    /// Conductor end cut square.
    Square,
    /// Every mark set off.
    MarkOut,
    /// Jacket cut.
    Jacket,
    /// Metallic shield bridged.
    Bridge,
    /// Metallic shield cut or laid back.
    Shield,
    /// Insulation screen cut.
    Screen,
    /// Insulation cut.
    Insulation,
    /// Each phase compared with the far end.
    Phasing,
    /// Parts that must go over the cable slid on and parked.
    SlideOn,
    /// Connector made.
    Connect,
    /// Insulation smoothed and cleaned.
    Clean,
    /// Parts that cannot be parked over the jacket pushed onto the cleaned end, before the connector bars their way.
    PushOn,
    /// Body brought to its place.
    Place,
    /// Leg plugged to the bus.
    Mate,
    /// Metallic shield restored and bonded.
    Bond,
    /// Permanent bond measured across the joint.
    BondCheck,
    /// Bridge of the metallic shield taken off.
    BridgeOff,
    /// Jacket restored and sealed.
    Seal,
    /// Joint supported; the persons named for it decide trials and hand-back.
    HandBack,
}

file_words!(Stage {
    HandOver = "hand-over",
    Measure = "measure",
    Square = "square",
    MarkOut = "mark-out",
    Jacket = "jacket",
    Bridge = "bridge",
    Shield = "shield",
    Screen = "screen",
    Insulation = "insulation",
    Phasing = "phasing",
    SlideOn = "slide-on",
    Connect = "connect",
    Clean = "clean",
    PushOn = "push-on",
    Place = "place",
    Mate = "mate",
    Bond = "bond",
    BondCheck = "bond-check",
    BridgeOff = "bridge-off",
    Seal = "seal",
    HandBack = "hand-back",
});

/// Stages at which a part's own steps may stand, for the table of fields.
pub const STAGE_NAMES: &[&str] = &[
    "measure",
    "square",
    "mark-out",
    "jacket",
    "bridge",
    "shield",
    "screen",
    "insulation",
    "phasing",
    "slide-on",
    "connect",
    "clean",
    "push-on",
    "place",
    "mate",
    "bond",
    "bond-check",
    "bridge-off",
    "seal",
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_part_names_every_stage_but_those_of_handing_over() {
        let own: Vec<&str> = Stage::ALL
            .iter()
            .copied()
            .filter(|s| !matches!(s, Stage::HandOver | Stage::HandBack))
            .map(Stage::name)
            .collect();
        assert_eq!(own, STAGE_NAMES);
    }
}
