//! Messages about readings of a leg, beside ranges of parts and the cable's papers.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{Read, ReadRange, Said, Subject, WallSaid};
use crate::cable::{
    Conductor, Lacking, Layer, Likeness, Metal, Near, ShieldKind, Size, Stranding, Unknown, Unlike,
};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about readings of a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum MeasuredSaid {
    Range(RangeSaid),
    Diameter(DiameterSaid),
    Reading(ReadingLayerSaid),
    Papers(PapersSaid),
    Unlike(UnlikeSaid),
    Surface(SurfaceSaid),
    Table(TableSaid),
}

/// Messages about ranges of parts and the diameters compared with them.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RangeSaid {
    MeasureOverItself {
        layer: Layer,
    },
    ThinnestNotRead,
    ReadFourOver {
        layer: Layer,
    },
    /// A diameter for a range of a part, at a place on it.
    OverFor {
        subject: Subject,
        layer: Layer,
        at: String,
        part: String,
    },
    TooLarge {
        part: String,
        by: Read,
    },
    TooSmall {
        part: String,
        by: Read,
    },
    SidesDiffer {
        body: String,
        leg: String,
    },
    SaySide {
        sides: Vec<String>,
    },
    NoBoreRange {
        row: String,
    },
    NoMouthRange {
        row: String,
    },
    OvalityNotLimited,
    OvalityNotRead,
    ReadFour,
    Ovality {
        subject: Subject,
    },
    OutOfRound,
}

/// Messages about a diameter that a range needs.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum DiameterSaid {
    NotMeasuredOver {
        layer: Layer,
    },
    MeasuredOverScreen {
        read: Layer,
        range: Layer,
    },
    ReadingHasNoTemperature {
        at_degc: f64,
    },
    /// The range holds at another temperature than the readings, and the layer's expansion is not known.
    ExpansionNotKnown {
        at_degc: f64,
        coldest_degc: f64,
        warmest_degc: f64,
    },
    /// The same, if somebody may state the expansion.
    ExpansionNotStated {
        at_degc: f64,
        coldest_degc: f64,
        warmest_degc: f64,
    },
    ExpansionTurnsItRound,
}

/// Messages about the layer over which a reading was taken.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ReadingLayerSaid {
    DiameterOnPapers {
        layer: Layer,
    },
    LikeAnother {
        named: Layer,
        like: Layer,
    },
    RemoveNothing,
    LikeEither {
        named: Layer,
        like: Layer,
        error: Read,
    },
    ReadAgain {
        layer: Layer,
    },
}

/// A construction of the table, with its distance from the readings.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct NearSaid {
    /// Conductor.
    pub conductor: Conductor,
    /// Walls, as printed on a cable.
    pub walls: Vec<String>,
    /// Greatest ratio of a reading's distance to the reading's own error.
    pub off_ratio: f64,
}

/// Constructions of the table that are like a leg: their number, and the nearest of them.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct NearestSaid {
    /// Number of constructions.
    pub n_others: usize,
    /// Nearest constructions.
    pub nearest: Vec<NearSaid>,
}

/// Messages about a leg and its papers.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PapersSaid {
    LikePapersOnly,
    LikeOthersAlso {
        others: NearestSaid,
    },
    LikeOthersNotPapers {
        unlike: UnlikeSaid,
        others: NearestSaid,
    },
    LikeNone {
        unlike: UnlikeSaid,
    },
    LikenessOpen {
        why: Said,
    },
    NoDiameterRead,
    Fits,
    FitsOthersAlso,
    FitsOthersNotPapers,
    FitsNone,
    NotEnough,
    FitsItsPapers,
    NotAsPapersSay,
    AsJobStates,
    NotThisCable,
    TableConfirmed {
        edition: String,
        source: String,
    },
    TableFromMemory {
        key: String,
        source: String,
    },
    ConfirmTable {
        key: String,
    },
    SayWhichAndConfirm {
        key: String,
    },
}

/// One fact seen or read on a cable that differs from its papers.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum UnlikeSaid {
    Metal {
        seen: Metal,
        papers: Metal,
    },
    Stranding {
        seen: Stranding,
        papers: Stranding,
    },
    Strands {
        n_strands: u32,
        papers: Stranding,
    },
    Shield {
        seen: ShieldKind,
        papers: ShieldKind,
    },
    Elements {
        n_counted: u32,
        n_papers: u32,
    },
    ElementsOfTape {
        n_counted: u32,
        papers: ShieldKind,
    },
    Over {
        layer: Layer,
        read: ReadRange,
        papers: ReadRange,
    },
}

/// Messages about the jacket under a seal.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SurfaceSaid {
    NotWritten,
    LookAllAround,
    NoneNamed { seal: String },
    AskOnWhich { seal: String },
    DressOrCutBack,
}

/// Messages about the table of cables.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum TableSaid {
    NoDiameterRow { size: Size, stranding: Stranding },
    NoWallRow { wall: WallSaid },
    NoResistanceRow { conductor: Conductor },
    TapeOverlap { overlap_percent: f64 },
}

impl From<&Unknown> for Said {
    fn from(why: &Unknown) -> Said {
        match *why {
            Unknown::ConductorDiameter { conductor } => TableSaid::NoDiameterRow {
                size: conductor.size,
                stranding: conductor.stranding,
            },
            Unknown::WallRow { wall } => TableSaid::NoWallRow { wall: wall.into() },
            Unknown::Resistance { conductor } => TableSaid::NoResistanceRow { conductor },
            Unknown::Overlap { overlap_percent } => TableSaid::TapeOverlap { overlap_percent },
        }
        .into()
    }
}

impl From<Unlike> for UnlikeSaid {
    fn from(unlike: Unlike) -> UnlikeSaid {
        match unlike {
            Unlike::Metal(seen, papers) => UnlikeSaid::Metal { seen, papers },
            Unlike::Stranding(seen, papers) => UnlikeSaid::Stranding { seen, papers },
            Unlike::Strands(n_strands, papers) => UnlikeSaid::Strands { n_strands, papers },
            Unlike::ShieldKind(seen, papers) => UnlikeSaid::Shield { seen, papers },
            Unlike::ShieldElements(n_counted, papers) => match papers.elements() {
                Some(n_papers) => UnlikeSaid::Elements {
                    n_counted,
                    n_papers,
                },
                None => UnlikeSaid::ElementsOfTape {
                    n_counted,
                    papers: papers.kind(),
                },
            },
            Unlike::Over {
                layer,
                read,
                papers,
            } => UnlikeSaid::Over {
                layer,
                read: read.into(),
                papers: papers.into(),
            },
        }
    }
}

/// Greatest number of constructions that a sentence names; it counts the others.
const NAMED_MAX: usize = 3;

impl PapersSaid {
    /// Returns the result of a comparison as a whole sentence, which also says what the result does not mean.
    pub fn of(likeness: &Likeness) -> PapersSaid {
        match likeness {
            Likeness::FitsPapersOnly => PapersSaid::LikePapersOnly,
            Likeness::FitsOthersAlso(others) => PapersSaid::LikeOthersAlso {
                others: nearest(others),
            },
            Likeness::FitsOthersNotPapers(unlike, others) => PapersSaid::LikeOthersNotPapers {
                unlike: (*unlike).into(),
                others: nearest(others),
            },
            Likeness::FitsNone(unlike) => PapersSaid::LikeNone {
                unlike: (*unlike).into(),
            },
            Likeness::NotEnough(why) => PapersSaid::LikenessOpen {
                why: match why {
                    Lacking::Diameter => PapersSaid::NoDiameterRead.into(),
                    Lacking::Row(unknown) => unknown.into(),
                },
            },
        }
    }

    /// Returns the same result in a few words.
    pub fn in_short(likeness: &Likeness) -> PapersSaid {
        match likeness {
            Likeness::FitsPapersOnly => PapersSaid::Fits,
            Likeness::FitsOthersAlso(_) => PapersSaid::FitsOthersAlso,
            Likeness::FitsOthersNotPapers(..) => PapersSaid::FitsOthersNotPapers,
            Likeness::FitsNone(_) => PapersSaid::FitsNone,
            Likeness::NotEnough(_) => PapersSaid::NotEnough,
        }
    }
}

fn nearest(others: &[Near]) -> NearestSaid {
    let named = others.iter().take(NAMED_MAX).map(|near| NearSaid {
        conductor: near.candidate.conductor,
        walls: near.candidate.walls.iter().map(|w| w.phrase()).collect(),
        off_ratio: near.off_ratio,
    });
    NearestSaid {
        n_others: others.len(),
        nearest: named.collect(),
    }
}

/// Each group of messages is a message.
macro_rules! messages {
    ($($variant:ident($said:ident)),* $(,)?) => {
        $(impl From<$said> for Said {
            fn from(said: $said) -> Said {
                MeasuredSaid::$variant(said).into()
            }
        })*
    };
}

messages! {
    Range(RangeSaid),
    Diameter(DiameterSaid),
    Reading(ReadingLayerSaid),
    Papers(PapersSaid),
    Unlike(UnlikeSaid),
    Surface(SurfaceSaid),
    Table(TableSaid),
}
