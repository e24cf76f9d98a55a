//! Stage: the moments of a make-up that instructions and crews name.
//!
//! Why its own room: a part's own step and the programme of the joint must name the same moment by the same word.
//!
//! Invariants: every stage has one name in files; the order here is the usual order of a crew, and rules nothing.
//!
//! Not here: which step must come before which (`programme`).
//!
//! Source: common practice, no source.

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

/// Every stage with its name in files.
const NAMES: &[(Stage, &str)] = &[
    (Stage::HandOver, "hand-over"),
    (Stage::Measure, "measure"),
    (Stage::Square, "square"),
    (Stage::MarkOut, "mark-out"),
    (Stage::Jacket, "jacket"),
    (Stage::Bridge, "bridge"),
    (Stage::Shield, "shield"),
    (Stage::Screen, "screen"),
    (Stage::Insulation, "insulation"),
    (Stage::Phasing, "phasing"),
    (Stage::SlideOn, "slide-on"),
    (Stage::Connect, "connect"),
    (Stage::Clean, "clean"),
    (Stage::PushOn, "push-on"),
    (Stage::Place, "place"),
    (Stage::Mate, "mate"),
    (Stage::Bond, "bond"),
    (Stage::BondCheck, "bond-check"),
    (Stage::BridgeOff, "bridge-off"),
    (Stage::Seal, "seal"),
    (Stage::HandBack, "hand-back"),
];

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

impl Stage {
    /// All stages, in the usual order.
    pub fn all() -> impl Iterator<Item = Stage> {
        NAMES.iter().map(|(stage, _)| *stage)
    }

    /// Stage of a name in a file.
    pub fn from_name(name: &str) -> Option<Stage> {
        NAMES.iter().find(|(_, n)| *n == name).map(|(s, _)| *s)
    }

    /// Name in files.
    pub fn name(self) -> &'static str {
        NAMES[self as usize].1
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_and_stages_agree() {
        for (index, (stage, name)) in NAMES.iter().enumerate() {
            assert_eq!(*stage as usize, index);
            assert_eq!(stage.name(), *name);
            assert_eq!(Stage::from_name(name), Some(*stage));
        }
        let own: Vec<&str> = Stage::all()
            .filter(|s| !matches!(s, Stage::HandOver | Stage::HandBack))
            .map(Stage::name)
            .collect();
        assert_eq!(own, STAGE_NAMES);
    }
}
