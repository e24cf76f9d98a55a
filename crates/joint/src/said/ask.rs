//! Asks while a question is not judged: the missing fact, its subject, and the person who can answer.

use super::{PartKind, Subject};
use crate::cable::{Conductor, Layer};
use crate::plane::Plane;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::end::EndId;

/// Addressee who can answer.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Who {
    /// The crew at the joint, with instruments or by looking.
    Crew,
    /// Keeper of the store and the truck.
    Store,
    /// The owner's engineer, or the planner of the job for the owner.
    Engineer,
    /// The maker of the cable, or its papers.
    CableMaker,
    /// The maker of a part, or its paper.
    PartMaker,
}

/// Thing that an ask is about.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Of {
    /// The job as a whole.
    Job,
    /// A leg's letter, a row, a key or a check: a name from a file.
    Name(String),
    /// Ends, by leg and phase.
    Ends(Vec<EndId>),
    /// A leg, one of its ends, or the whole joint.
    Subject(Subject),
    /// The diameter over a layer of an end.
    Diameter {
        /// End.
        end: EndId,
        /// Layer.
        over: Layer,
    },
    /// A plane of a leg, or of a row.
    Plane {
        /// Plane.
        plane: Plane,
        /// Leg, one of its ends, or the whole joint.
        of: Box<Of>,
    },
    /// A part that is left open, of a leg or of the joint.
    Part {
        /// Kind.
        kind: PartKind,
        /// Leg; `None` for the joint.
        leg: Option<String>,
    },
    /// A part on the truck, for one end.
    Lot {
        /// End.
        end: EndId,
        /// Kind of part.
        kind: PartKind,
        /// Row.
        row: String,
    },
    /// A sleeve on a conductor.
    Sleeve {
        /// Row of the connector; empty if none is named.
        row: String,
        /// Its conductor.
        conductor: Conductor,
    },
    /// A question of a check.
    Check {
        /// Check.
        check: String,
        /// Leg, one of its ends, or the whole joint.
        of: Box<Of>,
    },
    /// The bus on which the legs sit.
    Bus,
}

impl Of {
    /// One end.
    pub fn end(leg: &str, phase: u8) -> Of {
        Of::Ends(vec![EndId::new(leg, phase)])
    }

    /// One end by its identifier.
    pub fn at(end: &EndId) -> Of {
        Of::Ends(vec![end.clone()])
    }

    /// A plane of a leg, of one of its ends, or of a row.
    pub fn plane(plane: Plane, of: impl Into<Of>) -> Of {
        let of = Box::new(of.into());
        Of::Plane { plane, of }
    }

    /// A leg, in words.
    pub fn leg(leg: &str) -> Of {
        Of::Subject(Subject::leg(leg))
    }
}

impl From<Subject> for Of {
    fn from(subject: Subject) -> Of {
        Of::Subject(subject)
    }
}

impl From<&str> for Of {
    fn from(name: &str) -> Of {
        if name.is_empty() {
            Of::Job
        } else {
            Of::Name(name.to_owned())
        }
    }
}

impl From<String> for Of {
    fn from(name: String) -> Of {
        Of::from(name.as_str())
    }
}

impl From<&String> for Of {
    fn from(name: &String) -> Of {
        Of::from(name.as_str())
    }
}

/// Ask: the missing fact, its subject, and the person who can answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum AskSaid {
    /// Question for a fact about all of these things.
    Question {
        /// Fact.
        fact: FactKey,
        /// Things that it is about.
        of: Vec<Of>,
    },
    /// Thing that a fact is about.
    Of(Of),
    /// Addressee who can answer.
    Who(Who),
    /// The maker of one part, or its paper.
    MakerOf(Of),
}

/// Kind of fact that can be missing; its key in documents is its name and never changes.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum FactKey {
    /// A diameter, read around the cable.
    Reading,
    /// The temperature of a reading.
    ReadingTemperature,
    /// A reading at the temperature that a range is for.
    ReadingWarmed,
    /// A reading with a smaller error.
    ReadingCloser,
    /// Error of the lengths around a leg.
    RoomError,
    /// Straight cable.
    Straight,
    /// Room to park.
    ParkRoom,
    /// Bend as racked.
    Bend,
    /// Slack.
    Slack,
    /// Moisture.
    Moisture,
    /// State of the jacket.
    Jacket,
    /// Growth of a sleeve.
    TrialPress,
    /// Method of reading a shield.
    Continuity,
    /// Resistance across a connection of a shield.
    Contact,
    /// Wires or straps of a shield.
    Count,
    /// Cleaner of a conductor.
    Brush,
    /// Lot of a part.
    Lot,
    /// Day from which a lot's months run.
    LotDay,
    /// Text of a label.
    LabelDate,
    /// Temperature of a lot's store.
    LotStore,
    /// A value from memory.
    Confirmation,
    /// Construction of the cable.
    Cable,
    /// A window.
    Window,
    /// Shrink-back of a jacket.
    JacketShrinks,
    /// A limit.
    Limit,
    /// An engineer's own word.
    Word,
    /// Hottest conductor.
    ConductorGreatest,
    /// Load.
    Load,
    /// Emergency.
    Emergency,
    /// Short circuit of the conductor.
    Fault,
    /// Short circuit of a shield.
    ShieldFault,
    /// Clearing time.
    ClearingTime,
    /// Lowest temperature of the place.
    AmbientLeast,
    /// Highest temperature of the place.
    AmbientGreatest,
    /// Surroundings.
    Surrounding,
    /// Far end of a shield.
    FarEnd,
    /// Formation of a run.
    Run,
    /// Surroundings of a run of cable without a joint.
    RunSurrounding,
    /// Length of a run of cable.
    Route,
    /// Spare cuts.
    SpareCuts,
    /// An open part.
    Part,
    /// An adapter that reaches the edge of the screen.
    AdapterReach,
    /// Leg that parks.
    Parks,
    /// The bus and its blank ports.
    Bus,
    /// Lead.
    Lead,
    /// Bend permitted.
    BendLeast,
    /// Expansion.
    Expansion,
    /// Permittivity.
    Permittivity,
    /// Shield's metal and limit.
    ShieldPapers,
    /// Shield's dimensions.
    ShieldMade,
    /// Diameters.
    CablePapers,
    /// Heat of the cable's layers.
    CableHeat,
    /// Layer in a body's bore beyond an adapter.
    BareBore,
    /// Ways of bonding that a body allows.
    Bondings,
    /// Inside of a body.
    Inside,
    /// Inside of a tapered plug.
    Taper,
    /// Permittivity of an adapter.
    AdapterPermittivity,
    /// Rubber of a part.
    Rubber,
    /// Rubber with temperature.
    RubberHeat,
    /// Shelf life.
    Shelf,
    /// A range.
    Range,
    /// Place of a plane.
    Link,
    /// Length while parked.
    ParkedLength,
    /// Straight cable beyond the body.
    BendKeepOff,
    /// Number of mouths.
    Mouths,
    /// Longest connector.
    ConnectorLength,
    /// Connector's diameter.
    ConnectorDiameter,
    /// Short circuit of a part.
    Withstands,
    /// Conductor in a short circuit.
    FaultGreatest,
    /// Conductor in service and in an emergency.
    ServiceGreatest,
    /// Contact of a shield part.
    ContactGreatest,
    /// Shield part that passes a seal.
    PassesSeal,
    /// Lead that a seal takes.
    TakesLead,
    /// Jackets of a seal.
    Jackets,
    /// Overlap of a seal.
    Overlap,
    /// Ends of an adapter.
    AdapterEnds,
    /// Contact of a shield part on the shield.
    ShieldContact,
    /// Start of a seal.
    SealStart,
    /// Overlap of a seal over a body.
    BodyOverlap,
    /// Length of a seal over the whole joint.
    SealLength,
    /// Metals of a consumable.
    ConsumableMetals,
    /// Heat of a body.
    BodyHeat,
    /// Heat of an adapter.
    AdapterHeat,
    /// Heat of a seal.
    SealHeat,
    /// Heat of a connector.
    ConnectorHeat,
    /// A row that only its writer has compared with its paper.
    RowChecked,
    /// A paper that may have been replaced.
    PaperCurrent,
    /// Heat of a bus.
    BusHeat,
}

/// File for an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum File {
    /// The job.
    Job,
    /// The catalogue with the part's row.
    Catalogue,
}
