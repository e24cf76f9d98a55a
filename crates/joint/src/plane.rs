//! Plane: the places along a leg that instructions name and crews mark.
//!
//! Why its own room: catalogue rows, owners' windows and cutbacks must name the same place by the same word.
//!
//! Invariants: every plane belongs to the crew, who cuts or marks it on the cable, or to a part; each has one name in files.
//!
//! Not here: the station of a plane (`cutback`).

use crate::cable::Layer;
use crate::file_words::file_words;
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

file_words!(Plane {
    ConductorEnd = "conductor-end",
    ConnectorCentre = "connector-centre",
    ConnectorSeat = "connector-seat",
    ConnectorMouthBefore = "connector-mouth-before-pressing",
    ConnectorMouth = "connector-mouth",
    InsulationEnd = "insulation-end",
    ScreenEdge = "insulation-screen-edge",
    ShieldEdge = "metallic-shield-edge",
    JacketEdge = "jacket-edge",
    BodyCentre = "body-centre",
    BodySeat = "body-seat",
    ElectrodeEnd = "electrode-end",
    ControlNear = "stress-control-near",
    ControlFar = "stress-control-far",
    BodyEnd = "body-end",
    ParkMark = "park-mark",
    SealEnd = "seal-end",
    InsulationEndShrunk = "insulation-end-shrunk-back",
    JacketEdgeShrunk = "jacket-edge-shrunk-back",
    AdapterNear = "adapter-near",
    AdapterFar = "adapter-far",
    ContactNear = "shield-contact-near",
    ContactFar = "shield-contact-far",
    SealStart = "seal-start",
});

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
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn planes_stand_in_the_order_of_their_index() {
        for (index, plane) in Plane::ALL.iter().enumerate() {
            assert_eq!(plane.index(), index);
        }
    }
}
