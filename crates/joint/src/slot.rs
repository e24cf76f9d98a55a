//! Slot: one reading that can be taken, by its end and its quantity.
//!
//! Why its own room: a reading has one name in the survey, at a hold point, in an ask and on its blank; no text is searched to find it.
//!
//! Invariants: two readings of one thing at one end have one slot, whoever asks for them; a slot says nothing of instrument, value or window.
//!
//! Not here: the readings themselves (`job`), their evaluation (`survey`), their moment (`programme`); the growth of a sleeve, which is read in a trial press and belongs to no end.

use crate::cable::Layer;
use crate::end::EndId;
use crate::plane::Plane;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Quantity that is measured, counted, tested or looked at on an end.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Measured {
    /// Diameter over a layer.
    Diameter {
        /// Layer.
        over: Layer,
    },
    /// Wires or straps of the shield, counted.
    ShieldElements,
    /// Strands of the conductor, counted.
    Strands,
    /// Metal of the conductor, as it looks.
    ConductorMetal,
    /// Form of the shield, as it looks.
    ShieldForm,
    /// Place of a plane, from the datum of its leg.
    Place {
        /// Plane.
        plane: Plane,
    },
    /// Distance between two planes, of which one is an end of the adapter.
    Distance {
        /// Plane nearer the conductor end.
        from: Plane,
        /// Plane farther from it.
        to: Plane,
    },
    /// Place of both ends of an adapter that no row places.
    AdapterEnds,
    /// Moisture in the strands of the conductor.
    StrandMoisture,
    /// Moisture under the shield.
    ShieldMoisture,
    /// Condition of the jacket at the place of the seal.
    JacketSurface,
    /// Nicks, ring cuts and specks on a layer before anything covers it.
    Surface {
        /// Layer.
        on: Layer,
    },
    /// Whether the bridge across the shields is on and tight.
    Bridge,
    /// Whether wires lie beside the tape of the shield.
    WiresBesideTape,
    /// Length that is kept of a shield that is laid back.
    ShieldKept,
    /// Phase at the far end.
    Phase,
    /// Gap at the stop of the connector.
    ConnectorGap,
    /// By how much a bolt of the connector stands proud.
    BoltProud,
    /// Length of the connector as made.
    ConnectorLength,
    /// Outside diameter of the connector as made.
    ConnectorDiameter,
    /// Across the flats of the connector as pressed.
    AcrossFlats,
    /// Die with which the connector was pressed.
    Die,
    /// Number of presses.
    Presses,
    /// Bolts of the connector that were sheared or tightened, counted.
    Bolts,
    /// Torque of the bolts of the connector.
    BoltTorque,
    /// Resistance across the connection of the shield.
    ContactResistance,
    /// Resistance across the joint to another leg.
    BondResistance {
        /// Leg to which the shield is bonded.
        to: String,
    },
    /// Whether the shield is open here.
    ShieldOpen,
    /// Resistance along the shield of the cable.
    ShieldResistance,
    /// Overlap of the seal on the jacket.
    SealOverlap,
}

/// One reading that can be taken: an end and a quantity.
///
/// ```
/// use jointwright_joint::cable::Layer;
/// use jointwright_joint::end::EndId;
/// use jointwright_joint::slot::{Measured, Slot};
/// let over = Layer::Jacket;
/// let slot = Slot::new(&EndId::new("A", 1), Measured::Diameter { over });
/// assert_eq!(slot.end, EndId::new("A", 1));
/// assert_ne!(slot, Slot::new(&slot.end, Measured::SealOverlap));
/// ```
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
pub struct Slot {
    /// End.
    pub end: EndId,
    /// Quantity that is measured there.
    pub measured: Measured,
}

impl Slot {
    /// Slot of a quantity at an end.
    pub fn new(end: &EndId, measured: Measured) -> Slot {
        let end = end.clone();
        Slot { end, measured }
    }

    /// The diameter over a layer of an end.
    pub fn diameter(end: &EndId, over: Layer) -> Slot {
        Slot::new(end, Measured::Diameter { over })
    }
}
