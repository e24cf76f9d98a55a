//! Plane: the places along a leg that instructions name and crews mark.
//!
//! Why its own room: catalogue rows, owners' windows and cutbacks must name the same place by the same word.
//!
//! Invariants: every plane belongs to the crew, who cuts or marks it on the cable, or to a part; each has one name in files.
//!
//! Not here: the station of a plane (`cutback`).

use crate::cable::{Layer, Words};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A plane square to the axis of a leg.
///
/// ```text
///   connector-centre / -seat
///   |  connector-mouth
///   |  |  insulation-end      insulation-screen-edge
///   |  |  |                   |        metallic-shield-edge   jacket-edge
///   0==|--#####################=========~~~~~~~~~~~~~~~~~~~~~~MMMMMMMMMMM   cable
///   conductor-end              stations grow this way ->
/// ```
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Plane {
    /// Square-cut end of the conductor: the datum of every cut.
    ConductorEnd,
    /// Middle of a two-ended connector.
    ConnectorCentre,
    /// Contact plane of a one-ended connector.
    ConnectorSeat,
    /// Mouth of the connector's barrel before it is pressed.
    #[serde(rename = "connector-mouth-before-pressing")]
    ConnectorMouthBefore,
    /// Mouth of the connector's barrel as made.
    ConnectorMouth,
    /// End of the insulation.
    InsulationEnd,
    /// Edge of the insulation screen.
    #[serde(rename = "insulation-screen-edge")]
    ScreenEdge,
    /// Edge of the metallic shield.
    #[serde(rename = "metallic-shield-edge")]
    ShieldEdge,
    /// Edge of the jacket.
    JacketEdge,
    /// Middle of a two-ended body.
    BodyCentre,
    /// Contact plane of a one-ended body.
    BodySeat,
    /// End of the body's inner electrode.
    ElectrodeEnd,
    /// Inner end of the stretch in which the screen edge may lie.
    #[serde(rename = "stress-control-near")]
    ControlNear,
    /// Outer end of the stretch in which the screen edge may lie.
    #[serde(rename = "stress-control-far")]
    ControlFar,
    /// Outer end of the body.
    BodyEnd,
    /// Resting place of the body's near end while it is parked.
    ParkMark,
    /// Outer end of the seal.
    SealEnd,
    /// End of the insulation after it has shrunk back.
    #[serde(rename = "insulation-end-shrunk-back")]
    InsulationEndShrunk,
    /// Edge of the jacket after it has shrunk back.
    #[serde(rename = "jacket-edge-shrunk-back")]
    JacketEdgeShrunk,
    /// Inner end of the adapter.
    AdapterNear,
    /// Outer end of the adapter.
    AdapterFar,
    /// Inner end of the stretch on which the shield part touches the metallic shield.
    #[serde(rename = "shield-contact-near")]
    ContactNear,
    /// Outer end of that stretch.
    #[serde(rename = "shield-contact-far")]
    ContactFar,
    /// Inner end of the seal, over the body.
    SealStart,
}

/// Every plane with its name in files.
const NAMES: &[(Plane, &str)] = &[
    (Plane::ConductorEnd, "conductor-end"),
    (Plane::ConnectorCentre, "connector-centre"),
    (Plane::ConnectorSeat, "connector-seat"),
    (
        Plane::ConnectorMouthBefore,
        "connector-mouth-before-pressing",
    ),
    (Plane::ConnectorMouth, "connector-mouth"),
    (Plane::InsulationEnd, "insulation-end"),
    (Plane::ScreenEdge, "insulation-screen-edge"),
    (Plane::ShieldEdge, "metallic-shield-edge"),
    (Plane::JacketEdge, "jacket-edge"),
    (Plane::BodyCentre, "body-centre"),
    (Plane::BodySeat, "body-seat"),
    (Plane::ElectrodeEnd, "electrode-end"),
    (Plane::ControlNear, "stress-control-near"),
    (Plane::ControlFar, "stress-control-far"),
    (Plane::BodyEnd, "body-end"),
    (Plane::ParkMark, "park-mark"),
    (Plane::SealEnd, "seal-end"),
    (Plane::InsulationEndShrunk, "insulation-end-shrunk-back"),
    (Plane::JacketEdgeShrunk, "jacket-edge-shrunk-back"),
    (Plane::AdapterNear, "adapter-near"),
    (Plane::AdapterFar, "adapter-far"),
    (Plane::ContactNear, "shield-contact-near"),
    (Plane::ContactFar, "shield-contact-far"),
    (Plane::SealStart, "seal-start"),
];

/// Names of all planes, for the table of fields.
pub const PLANE_NAMES: &[&str] = &[
    "conductor-end",
    "connector-centre",
    "connector-seat",
    "connector-mouth-before-pressing",
    "connector-mouth",
    "insulation-end",
    "insulation-screen-edge",
    "metallic-shield-edge",
    "jacket-edge",
    "body-centre",
    "body-seat",
    "electrode-end",
    "stress-control-near",
    "stress-control-far",
    "body-end",
    "park-mark",
    "seal-end",
    "insulation-end-shrunk-back",
    "jacket-edge-shrunk-back",
    "adapter-near",
    "adapter-far",
    "shield-contact-near",
    "shield-contact-far",
    "seal-start",
];

/// Holder of a plane: crew or part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Holder {
    /// The crew cuts or marks it on the cable.
    Crew,
    /// It is part of the connector, seated on the conductor.
    Connector,
    /// It is part of the body, placed by the crew as one piece.
    Body,
}

impl Plane {
    /// All planes, from the datum outward.
    pub fn all() -> impl Iterator<Item = Plane> {
        NAMES.iter().map(|(plane, _)| *plane)
    }

    /// Plane of a name in a file.
    pub fn from_name(name: &str) -> Option<Plane> {
        NAMES
            .iter()
            .find(|(_, n)| *n == name)
            .map(|(plane, _)| *plane)
    }

    /// Name in files.
    pub fn name(self) -> &'static str {
        NAMES[self as usize].1
    }

    /// Position in the list of planes.
    pub const fn index(self) -> usize {
        self as usize
    }

    /// Holder of the plane.
    pub const fn holder(self) -> Holder {
        match self {
            Plane::ConductorEnd
            | Plane::ConnectorCentre
            | Plane::ConnectorSeat
            | Plane::ConnectorMouthBefore
            | Plane::ConnectorMouth => Holder::Connector,
            Plane::BodyCentre
            | Plane::BodySeat
            | Plane::ElectrodeEnd
            | Plane::ControlNear
            | Plane::ControlFar
            | Plane::BodyEnd => Holder::Body,
            Plane::InsulationEnd
            | Plane::ScreenEdge
            | Plane::ShieldEdge
            | Plane::JacketEdge
            | Plane::ParkMark
            | Plane::SealEnd
            | Plane::InsulationEndShrunk
            | Plane::JacketEdgeShrunk
            | Plane::AdapterNear
            | Plane::AdapterFar
            | Plane::ContactNear
            | Plane::ContactFar
            | Plane::SealStart => Holder::Crew,
        }
    }

    /// Whether two planes move as one piece except for its own play: planes of one part, or a cut and the same edge shrunk back.
    pub fn is_of_one_piece_with(self, other: Plane) -> bool {
        let cut = |plane| match plane {
            Plane::InsulationEndShrunk => Plane::InsulationEnd,
            Plane::JacketEdgeShrunk => Plane::JacketEdge,
            Plane::AdapterFar => Plane::AdapterNear,
            Plane::ContactFar => Plane::ContactNear,
            Plane::SealStart => Plane::SealEnd,
            plane => plane,
        };
        match (self.holder(), other.holder()) {
            (Holder::Crew, Holder::Crew) => cut(self) == cut(other),
            (one, another) => one == another,
        }
    }

    /// Whether the crew sets the plane off from an edge in front of it and not from the conductor end: the ends of an adapter and of a shield contact.
    ///
    /// The plane hangs on that edge as a shrunk-back edge hangs on its cut; the tolerance of its row is its play.
    pub fn is_set_off_from(self, edge: Plane) -> bool {
        match self {
            Plane::AdapterNear | Plane::AdapterFar => {
                matches!(edge, Plane::InsulationEnd | Plane::ScreenEdge)
            }
            Plane::ContactNear | Plane::ContactFar => {
                matches!(edge, Plane::ShieldEdge | Plane::JacketEdge)
            }
            _ => false,
        }
    }

    /// Whether the plane is a cut, not a mark.
    pub const fn is_cut(self) -> bool {
        matches!(
            self,
            Plane::InsulationEnd | Plane::ScreenEdge | Plane::ShieldEdge | Plane::JacketEdge
        )
    }

    /// Layer that the cut goes through.
    pub const fn layer(self) -> Option<Layer> {
        match self {
            Plane::InsulationEnd => Some(Layer::Insulation),
            Plane::ScreenEdge => Some(Layer::InsulationScreen),
            Plane::ShieldEdge => Some(Layer::MetallicShield),
            Plane::JacketEdge => Some(Layer::Jacket),
            _ => None,
        }
    }

    /// Words for a crew.
    pub fn words(self, words: Words) -> String {
        match (self.layer(), self) {
            (_, Plane::AdapterNear) => "inner end of the adapter".to_owned(),
            (_, Plane::AdapterFar) => "outer end of the adapter".to_owned(),
            (_, Plane::ContactNear) => "inner end of the shield contact".to_owned(),
            (_, Plane::ContactFar) => "outer end of the shield contact".to_owned(),
            (_, Plane::SealStart) => "inner end of the seal".to_owned(),
            (Some(layer), Plane::InsulationEnd) => format!("{} end", layer.name(words)),
            (Some(layer), _) => format!("{} edge", layer.name(words)),
            (None, plane) => plane.name().replace('-', " "),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_index_and_list_agree() {
        for (index, (plane, name)) in NAMES.iter().enumerate() {
            assert_eq!(plane.index(), index);
            assert_eq!(PLANE_NAMES[index], *name);
            assert_eq!(Plane::from_name(name), Some(*plane));
            assert_eq!(plane.name(), *name);
        }
        assert_eq!(NAMES.len(), PLANE_NAMES.len());
    }
}
