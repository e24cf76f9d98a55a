//! Readings of a hold point, and the windows of these readings.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{Exact, Paper, Read, Said, ShieldPiece};
use crate::cable::Layer;
use crate::plane::Plane;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Readings of a hold point, and the windows of these readings.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HoldSaid {
    PlaneOn {
        plane: Plane,
        leg: String,
    },
    NobodySetsWindow,
    WhoHandedOver,
    NamedPersonDecides,
    WhoTookBridgeOff,
    NamedPersonOnTheSpot,
    AsInstructionsAsk,
    NoWindowHere,
    SetsNoneHere {
        source: Said,
    },
    BridgeBeforeThisCut {
        leg: String,
    },
    OnAndTight,
    StrandsDry {
        leg: String,
    },
    UnderShieldDry {
        leg: String,
    },
    Dry,
    WetStops,
    BridgeBeforeFirstCut {
        leg: String,
    },
    SeenOnAndTight,
    WiresBesideTape {
        leg: String,
    },
    AskBeforeOneIsCut,
    LengthKept {
        piece: ShieldPiece,
        leg: String,
    },
    AtLeast {
        length: Exact,
    },
    AskBeforeOneIsCutShort,
    Looks {
        on: Layer,
        leg: String,
    },
    NoneSeenOrFelt,
    OneFoundStops {
        row: Option<String>,
    },
    PhaseAtFarEnd {
        leg: String,
        goes_to: Option<String>,
    },
    SameAsHere,
    UnlikeStops,
    ContactOf {
        leg: String,
    },
    AtMostOhm {
        ohm: f64,
    },
    SetsNone {
        paper: Paper,
    },
    NoShieldPart,
    AcrossJoint {
        from: String,
        to: String,
    },
    CompareThePhases,
    OpenHere {
        leg: String,
    },
    BondedOpen,
    DiameterFor {
        leg: String,
        over: Layer,
        at: String,
        row: String,
    },
    GapAtStop {
        row: String,
        leg: String,
    },
    BoltStandsProud {
        row: String,
    },
    LengthAsMade {
        row: String,
    },
    DiameterAsMade {
        row: String,
    },
    LapOntoJacket {
        row: String,
        leg: String,
    },
    ConductorEnd {
        leg: String,
    },
    Between {
        least: Exact,
        greatest: Exact,
    },
    AskBeforeThisCut {
        why: Said,
    },
    StatesNoGap {
        paper: Paper,
        stands: Exact,
    },
    Die {
        of: ConnectorOf,
    },
    Presses {
        of: ConnectorOf,
    },
    AcrossFlats {
        of: ConnectorOf,
    },
    LengthByPaper {
        of: ConnectorOf,
    },
    StatesNone {
        paper: Paper,
    },
    HeadsSheared {
        of: ConnectorOf,
    },
    All {
        n: i64,
    },
    Exactly {
        n: i64,
    },
    EveryHead,
    HeadTorque {
        of: ConnectorOf,
    },
    ScrewsTightened {
        of: ConnectorOf,
    },
    ScrewTorque {
        of: ConnectorOf,
    },
    Torque {
        least_nm: f64,
        greatest_nm: f64,
    },
    FromTo {
        from: Plane,
        to: Plane,
        leg: String,
    },
    GivesNoRange {
        source: Said,
    },
    GivesNoWindow {
        source: Said,
        distance: Read,
    },
    WhereEnds {
        row: String,
        leg: String,
    },
    NoRowSaysWhere,
    NotPlacedYet,
    OnLadder,
}

/// A connector, or one of its ends, on a leg.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct ConnectorOf {
    /// Row.
    pub row: String,
    /// End, where its two ends differ.
    pub end: Option<String>,
    /// Leg.
    pub leg: String,
}
