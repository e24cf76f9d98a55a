//! Messages about contact pressures of parts.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{Begun, PartKind, Read, Said, Subject, Word};
use crate::cable::Layer;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about contact pressures of parts.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PressureSaid {
    /// Judged quantity.
    What(Pressing),
    /// Surface that a part sits on.
    On(On),
    Warmth(WarmthSaid),
    Oldest(Oldest),
    Hint(PressureHint),
    Ruled(PressureRuled),
    Seat(PressureSeat),
    Heat(PressureHeat),
    Bench(PressureBench),
    Store(StoredSaid),
    Rubber(RubberSaid),
    AskedButNotSaid {
        what: Said,
        kpa: f64,
        word: Word,
    },
    LeastAskedButNotSaid {
        word: Word,
    },
    Line(PressureLine),
    Ends {
        is_free: bool,
    },
}

/// Fit of the parts of an end, in one line.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PressureLine {
    NoRange { why: Said },
    Loose { why: Said },
    NotJudged { why: Said },
    Done(Box<PressureDone>),
}

/// Fit of one part, with the source of its limit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PressureDone {
    pub verdict: Option<PressureVerdict>,
    pub kind: PartKind,
    pub part: String,
    pub on: On,
    /// Ratio less its errors.
    pub least_ratio: f64,
    pub allowed_mm: f64,
    pub oldest: Option<Oldest>,
    pub read_ratio: f64,
    /// Error of the read ratio; `None` if the part may not touch within the bore's uncertainty.
    pub read_error_ratio: Option<f64>,
    /// Temperatures at which the ratio is least; `None` if the temperatures of the joint are not known.
    pub warmth: Option<WarmthSaid>,
    pub is_ratio_free: bool,
    pub pressure: Option<PressureAtLeast>,
    pub today: Option<TakesToday>,
    pub word: Word,
}

/// Least pressure, kPa.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PressureAtLeast {
    pub kpa: f64,
    pub error_kpa: f64,
    pub warmth: Option<WarmthSaid>,
}

/// Diameters that a part takes today, mm.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum TakesToday {
    Diameters { least_mm: f64, greatest_mm: f64 },
    None,
}

/// Verdict before the line: the failure, or the reason why nothing is concluded.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PressureVerdict {
    TooLittle(Vec<TooLittle>),
    OutOfRange,
    TemperaturesNotKnown,
    ThinnestNotRead,
    WithinError,
}

/// Demand that the pressure of a part does not meet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum TooLittle {
    Paper,
    Asked { kpa: f64, word: Word },
}

/// Rulings, and reasons for none.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PressureRuled {
    AgainstWorst(Sits),
    TimesWorst {
        sits: Sits,
        ratio: f64,
        least_mm: f64,
        oldest: Option<Oldest>,
        warmth: Option<WarmthSaid>,
    },
    AtWarmth {
        sits: Sits,
        warmth: Option<WarmthSaid>,
    },
    OverRelaxed(Sits),
    SealWouldNotTouch {
        part: String,
        least: Read,
    },
    LargerThanBore {
        subject: Subject,
        part: String,
    },
    RangeToday {
        subject: Subject,
        part: String,
        on: On,
    },
    NothingIsLeft,
    NoRange,
    PastItsDate,
    WithinItsDate,
    ItsDate,
    OverTemperatures(Pressing),
    NothingOfPast,
    NotReadAround,
    DoesNotTouch,
    PressedOn,
    WhatDoesNotTouch,
}

/// Facts that are not known about a part and the surface that it sits on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PressureSeat {
    Loose {
        bore_mm: f64,
        on: On,
        seat_mm: f64,
    },
    RelaxedNotKnown {
        part: String,
    },
    AskRelaxed {
        part: String,
    },
    AskLaw {
        part: String,
    },
    AskHold {
        part: String,
    },
    OutsideNotKnown {
        part: String,
    },
    AskOutside {
        part: String,
    },
    EndsBefore {
        part: String,
        by: Read,
    },
    AdapterOutsideNotKnown {
        part: String,
    },
    ReadingWithoutDegc {
        leg: String,
        layer: Layer,
    },
    AskDegcOfReading {
        leg: String,
        layer: Layer,
    },
    ReadOutsidePlace {
        leg: String,
        layer: Layer,
        read_degc: f64,
        least_degc: f64,
        greatest_degc: f64,
    },
    AskDegcOfRange {
        layer: Layer,
    },
    PlaceNotStated {
        leg: String,
        layer: Layer,
        read_degc: f64,
        missing: PlaceEnds,
    },
    AskPlace(PlaceEnds),
}

/// Facts that are not known about the temperatures of a joint.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PressureHeat {
    NotKnown {
        missing: Vec<HeatFact>,
    },
    AskLowestAtPlace,
    AskHighestOfConductor,
    AskDegcOfLeg {
        leg: String,
    },
    AskCableExpansion {
        leg: String,
    },
    AskRubberExpansion {
        part: String,
    },
    AskRubberStiffness {
        part: String,
    },
    JacketExpansionNotKnown,
    LowestAboveHighest {
        lowest_degc: f64,
        highest_degc: f64,
    },
    SoftAt {
        part: String,
        degc: f64,
    },
    AskStiffness {
        part: String,
        from_degc: f64,
        to_degc: f64,
    },
}

/// Reason why a pressure cannot be computed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PressureBench {
    NoScreenUnderIt,
    MayFall,
    HeldOpen {
        diameter: String,
    },
    OnDiameter {
        diameter_mm: f64,
        why: RubberSaid,
    },
    NoRubberFrom {
        from_mm: f64,
        to_mm: f64,
    },
    NoSliceThere,
    NoStiffnessLeft {
        oldest: Option<Oldest>,
    },
    WouldNotTouch {
        on: On,
        least_mm: f64,
        oldest: Option<Oldest>,
    },
    WallIsNoTube {
        part: String,
    },
    NothingOnCable {
        part: String,
    },
    ReachesInside {
        reaches_mm: f64,
        stated_mm: f64,
    },
    NothingBetween {
        from_mm: f64,
        to_mm: f64,
        along_mm: f64,
    },
}

/// Judged quantity of a part of rubber.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Pressing {
    Pressure,
    Stretch,
    Squeeze,
    AtScreenEdge,
    RangeToday,
}

/// Advice to a crew.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PressureHint {
    UsedUp,
    NotThisLeg,
    PartTooLarge,
    PartTooSmall,
    SealTooLarge,
    EngineerDecides,
    ReadFour,
}

/// Surface that a part sits on.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum On {
    Layer(Layer),
    Adapter(String),
}

/// A part on its surface, with the judged quantity.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Sits {
    pub subject: Subject,
    pub what: Pressing,
    pub part: String,
    pub on: On,
}

/// Temperatures of rubber and cable, degrees Celsius.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct WarmthSaid {
    pub body_degc: f64,
    pub cable_degc: f64,
}

/// Longest and warmest time in store that the instructions allow.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Oldest {
    pub months: i64,
    pub degc: f64,
}

/// Temperatures of a place that are not stated.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PlaceEnds {
    Lowest,
    Highest,
    Both,
}

/// Facts that the temperatures of a joint need.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HeatFact {
    LowestAtPlace,
    HighestOfConductor,
    OfReadings,
    CableExpansion,
    RubberExpansion,
    RubberStiffness,
}

/// Messages about a part in store.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StoredSaid {
    Held(HeldSaid),
    PastDate {
        part: String,
        lot: String,
        last: String,
        work: String,
    },
    LotNotWritten {
        part: String,
    },
    AskLot {
        part: String,
        begun: Begun,
    },
    BegunAfterWork {
        part: String,
        lot: String,
        begun: Begun,
        day: String,
    },
    AskBegun {
        part: String,
        lot: String,
        begun: Begun,
    },
    LabelNotWritten {
        part: String,
        lot: String,
    },
    AskLabel {
        part: String,
        lot: String,
    },
    BegunNotWritten {
        part: String,
        lot: String,
        begun: Begun,
    },
    NoAgeLimit {
        part: String,
    },
    AskAgeLimit {
        part: String,
    },
    WarmthNotWritten {
        part: String,
        lot: String,
        from: String,
    },
    AskWarmth {
        part: String,
        lot: String,
    },
}

/// Messages about a part held open in store.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HeldSaid {
    SetNotKnown { part: String },
    AskSet { part: String },
    LotPlaceNotWritten { part: String },
    AskLotPlace { part: String },
    HoldNotKnown { part: String },
    AskHold { part: String },
    ShelfNotSaid { part: String },
    AskShelf { part: String },
}

/// Reason why a law of rubber or a tube cannot be computed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RubberSaid {
    NoTube { bore_mm: f64 },
    NoStiffness,
    NoCylinder,
    BeyondLimit { excess: f64, most: f64 },
    NoBalance,
    NoRadius { greatest_mm: f64 },
}

impl From<PressureRuled> for Said {
    fn from(said: PressureRuled) -> Said {
        PressureSaid::Ruled(said).into()
    }
}

impl From<PressureLine> for Said {
    fn from(said: PressureLine) -> Said {
        PressureSaid::Line(said).into()
    }
}

impl From<PressureSeat> for Said {
    fn from(said: PressureSeat) -> Said {
        PressureSaid::Seat(said).into()
    }
}

impl From<PressureHeat> for Said {
    fn from(said: PressureHeat) -> Said {
        PressureSaid::Heat(said).into()
    }
}

impl From<PressureBench> for Said {
    fn from(said: PressureBench) -> Said {
        PressureSaid::Bench(said).into()
    }
}

impl From<StoredSaid> for Said {
    fn from(said: StoredSaid) -> Said {
        PressureSaid::Store(said).into()
    }
}

impl From<HeldSaid> for Said {
    fn from(said: HeldSaid) -> Said {
        StoredSaid::Held(said).into()
    }
}

impl From<RubberSaid> for Said {
    fn from(said: RubberSaid) -> Said {
        PressureSaid::Rubber(said).into()
    }
}

impl From<Pressing> for Said {
    fn from(what: Pressing) -> Said {
        PressureSaid::What(what).into()
    }
}

impl From<PressureHint> for Said {
    fn from(hint: PressureHint) -> Said {
        PressureSaid::Hint(hint).into()
    }
}

impl From<WarmthSaid> for Said {
    fn from(warmth: WarmthSaid) -> Said {
        PressureSaid::Warmth(warmth).into()
    }
}

impl From<Oldest> for Said {
    fn from(oldest: Oldest) -> Said {
        PressureSaid::Oldest(oldest).into()
    }
}

impl From<&On> for Said {
    fn from(on: &On) -> Said {
        PressureSaid::On(on.clone()).into()
    }
}
