//! Messages about kits: age and store, parking, choice and rating.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{JointKind, PartKind, Said, Subject};
use crate::cable::{Metal, Size, Stranding};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Day from which the months of a shelf life run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Begun {
    /// Day on which it was made.
    Made,
    /// Day on which it was expanded.
    Expanded,
}

/// A lot of a part.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct LotSaid {
    /// The part's short name.
    pub part: String,
    /// The lot's name.
    pub lot: String,
}

/// Temperatures of a store, degrees Celsius; `None` if not known or not limited.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct StoreDegc {
    /// Lowest.
    pub least_degc: Option<f64>,
    /// Highest.
    pub greatest_degc: Option<f64>,
}

/// Bound of a store's temperature.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StoreSide {
    /// Lowest temperature.
    Cold,
    /// Highest temperature.
    Warm,
    /// Both temperatures.
    ColdAndWarm,
}

/// Condition to which a part is limited.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ServesFor {
    /// Systems with an earthing.
    Earthing,
    /// Kinds of joints.
    Kind,
    /// Ways of bonding.
    Bonding,
    /// Forms of shields.
    Shield,
    /// Conductors of a size or a metal.
    Conductor,
    /// Strandings.
    Stranding,
    /// State of a jacket.
    Jacket,
}

/// Permitted or found value of such a condition.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Served {
    /// A word of the files.
    Word(String),
    /// A conductor's size.
    Size(Size),
    /// A conductor's metal.
    Metal(Metal),
    /// A conductor's stranding.
    Stranding(Stranding),
}

impl Served {
    /// Returns words of the files as such values.
    pub fn words(words: &[String]) -> Vec<Served> {
        words.iter().cloned().map(Served::Word).collect()
    }
}

/// Messages about kits.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum KitSaid {
    Age(AgeSaid),
    Store(StoreSaid),
    Park(ParkSaid),
    Choice(ChoiceSaid),
}

/// Messages about the age of a part and the days of its lot.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum AgeSaid {
    LotNotWritten {
        part: String,
    },
    NoAgeLimit {
        part: String,
    },
    Day {
        day: String,
    },
    NotAfter {
        day: String,
    },
    LastDayWas {
        of: LotSaid,
        last: String,
        today: String,
    },
    DoNotUse,
    Label {
        lot: String,
    },
    MonthsFromUnwritten {
        of: LotSaid,
        months: i64,
        from: Begun,
    },
    ExpiryNotWritten {
        of: LotSaid,
    },
    AskExpiry {
        of: LotSaid,
    },
    DayOfWork,
    BegunAfterWork {
        of: LotSaid,
        begun: Begun,
        day: String,
        today: String,
    },
    ReadLabelAgain,
}

/// Messages about permitted and actual temperatures of a part in store.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StoreSaid {
    StoreNotSaid {
        part: String,
    },
    AskShelf {
        part: String,
    },
    MayLie {
        at_degc: StoreDegc,
    },
    Lay {
        at_degc: StoreDegc,
    },
    LayOutside {
        of: LotSaid,
        lay_degc: StoreDegc,
        may_degc: StoreDegc,
    },
    StoreSideNotSaid {
        part: String,
        side: StoreSide,
    },
    AskStoreSide {
        part: String,
        side: StoreSide,
    },
    LayNotWritten {
        of: LotSaid,
    },
    AskHowLay {
        of: LotSaid,
    },
}

/// Messages about room for parts that are slid on first.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ParkSaid {
    NoLegParks,
    HasOneBody {
        kind: JointKind,
    },
    /// Number of legs on which a body is to park.
    Legs {
        n_legs: usize,
    },
    LegsParkOneBody {
        n_legs: usize,
    },
    NameLeg,
    RoomForSealOnly,
    LengthNotSaid {
        row: String,
    },
    NothingSlidOn,
    RoomForWhatIs,
    NotMeasured,
    Room {
        subject: Subject,
    },
    ParkElsewhere,
    ErrorNotWritten,
}

/// Messages about named parts and the conditions to which they are limited.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ChoiceSaid {
    TheJob,
    Named {
        part: PartKind,
    },
    NotNamed {
        part: PartKind,
    },
    ChooseAmong {
        part: PartKind,
    },
    Is {
        found: Served,
    },
    OneOf {
        permitted: Vec<Served>,
    },
    ServesOthers {
        part: String,
        what: ServesFor,
        permitted: Vec<Served>,
        found: Served,
    },
    RatedBelow {
        part: String,
        rated_kv: f64,
        highest_kv: f64,
    },
    UseRated,
}

/// Each group of messages is a message.
macro_rules! messages {
    ($($variant:ident($said:ident)),* $(,)?) => {
        $(impl From<$said> for Said {
            fn from(said: $said) -> Said {
                KitSaid::$variant(said).into()
            }
        })*
    };
}

messages! {
    Age(AgeSaid),
    Store(StoreSaid),
    Park(ParkSaid),
    Choice(ChoiceSaid),
}
