//! Kind: kinds of joints, and kinds of parts of which a leg takes one.

use crate::file_words::file_words;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Kind of part of which a leg takes one.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum PartKind {
    /// Body.
    Body,
    /// Adapter.
    Adapter,
    /// Connector.
    Connector,
    /// Shield part.
    ShieldPart,
    /// Seal.
    Seal,
}

impl PartKind {
    /// All kinds, in the order in which they are asked for.
    pub const ALL: [PartKind; 5] = [
        PartKind::Body,
        PartKind::Adapter,
        PartKind::Connector,
        PartKind::ShieldPart,
        PartKind::Seal,
    ];

    /// Word in files.
    pub const fn file_name(self) -> &'static str {
        match self {
            PartKind::Body => "body",
            PartKind::Adapter => "adapter",
            PartKind::Connector => "connector",
            PartKind::ShieldPart => "shield_part",
            PartKind::Seal => "seal",
        }
    }

    /// A crew's name for it.
    pub const fn name(self) -> &'static str {
        match self {
            PartKind::Body => "body",
            PartKind::Adapter => "adapter",
            PartKind::Connector => "connector",
            PartKind::ShieldPart => "shield part",
            PartKind::Seal => "seal",
        }
    }
}

/// Kind of joint.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum JointKind {
    /// Two legs, one body.
    Straight,
    /// Three legs or more, one body.
    Branch,
    /// Legs on the ports of a bus.
    Separable,
    /// No joint: one run of cable, to be rated.
    Cable,
}

impl JointKind {
    /// Word in files.
    pub const fn name(self) -> &'static str {
        match self {
            JointKind::Straight => "straight",
            JointKind::Branch => "branch",
            JointKind::Separable => "separable",
            JointKind::Cable => "cable",
        }
    }
}

/// Work on a metallic shield at its edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum EdgeAct {
    /// Cut.
    Cut,
    /// Laid back: wires and straps are kept, a tape beside them is cut.
    LayBack,
    /// Question: neither a row nor practice says which.
    Ask,
}

/// One piece of a metallic shield.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ShieldPiece {
    /// Flat strap.
    Strap,
    /// Round wire.
    Wire,
    /// Turn of a tape.
    Turn,
}

/// Time at which the bridge of a metallic shield comes off.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum BridgeMoment {
    /// After the permanent bond has been measured.
    AfterBondIsMeasured,
    /// Before it is measured.
    BeforeBondIsMeasured,
}

file_words!(BridgeMoment {
    AfterBondIsMeasured = "after-bond-is-measured",
    BeforeBondIsMeasured = "before-bond-is-measured",
});

/// Duty of a material inside a body for the field.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum FieldDuty {
    /// Insulates.
    Insulation,
    /// Screens the connector, at its potential.
    Electrode,
    /// Spreads the field at the edge of the insulation screen, at the screen's potential.
    Deflector,
}

file_words!(FieldDuty {
    Insulation = "insulation",
    Electrode = "electrode",
    Deflector = "deflector",
});
