//! Said: what is said to a person, before any language: a key with its arguments.
//!
//! Why its own room: a sentence is put into words last, so that one joint can be read in any language, and a door never takes a sentence apart.
//!
//! Invariants: no language in it; a text is a name from a file or somebody's own words.
//!
//! Not here: the sentences (crate `wording`).

mod ask;
mod assumed;
mod caution;
mod closing;
mod cut;
mod duty;
mod edge;
mod fault;
mod fit;
mod form;
mod heat;
mod hold;
mod job;
mod job_kind;
mod job_whole;
mod kind;
mod kit;
mod language;
mod length;
mod letter;
mod limit;
mod load;
mod measured;
mod plan;
mod pressure;
mod quantity;
mod rating;
mod rows;
mod seal;
mod section;
mod shield;
mod slack;
mod soil;
mod solver;
mod step;
mod stress;
mod study;
mod subject;
mod truck;
mod unsettled;
mod warming;
mod water;
mod word;

pub use ask::{AskSaid, FactKey, File, Of, Who};
pub use assumed::{
    AssumedSaid, FieldAssumes, NotComputed, PressureAssumes, RunAssumes, WarmAssumes,
};
pub use caution::CautionSaid;
pub use closing::ClosingSaid;
pub use cut::{CutSaid, GrowthSaid, Tried, Unnamed, Whose, WindowOf, WindowSaid};
pub use duty::{DutySaid, GapLevel, GapSaid, ShortCircuitSaid};
pub use edge::{ControlEnd, EdgeSaid};
pub use fault::{
    Carrier, ContactSaid, FaultHeatSaid, FaultSaid, HeatedMetal, ShieldFaultSaid, ShieldMeasure,
    Shots,
};
pub use fit::{
    AdapterSaid, BodySaid, BusSaid, CleaningSaid, ConnectorAt, ConnectorSaid, EdgeAt,
    ElectrodeSaid, FitSaid, LayerSaid, LevelSaid, OrderSaid, SharedSaid, Taken,
};
pub use form::{
    AboutField, CsvHint, CsvSaid, Expected, FieldSaid, FormHint, FormSaid, FormatOf, Holds,
    MeasureOf, TextSaid, ValueSaid,
};
pub use heat::{
    HeatAsk, HeatCannot, HeatLacks, HeatLayer, HeatPlace, HeatSaid, LoadCannot, Stated,
};
pub use hold::{ConnectorOf, HoldSaid};
pub use job::{JobSaid, NameHint, NameSaid, RowHint, RowSaid};
pub use job_kind::{
    CableHint, CableSaid, HeadHint, HeadSaid, JobKindSaid, RunHint, RunSaid, SizeUnit,
};
pub use job_whole::{
    AroundHint, AroundSaid, JobDutyHint, JobDutySaid, JobWholeSaid, OwnerHint, OwnerSaid,
};
pub use kind::{BridgeMoment, EdgeAct, FieldDuty, JointKind, PartKind, ShieldPiece};
pub use kit::{
    AgeSaid, Begun, ChoiceSaid, KitSaid, LotSaid, ParkSaid, Served, ServesFor, StoreDegc,
    StoreSaid, StoreSide,
};
pub use language::Language;
pub use length::{Exact, Read, ReadRange, Rounded, Spot, With};
pub use letter::{LetterSaid, SettledCheck};
pub use limit::LimitSaid;
pub use load::{LoadSaid, Share, ShareFrom};
pub use measured::{
    DiameterSaid, MeasuredSaid, NearSaid, NearestSaid, PapersSaid, RangeSaid, ReadingLayerSaid,
    SurfaceSaid, TableSaid, UnlikeSaid,
};
pub use plan::{
    Distance, MarkSaid, MayMoveSaid, MissingOf, MissingSaid, Mover, PlanSaid, WallSaid, WindowText,
};
pub use pressure::{
    HeatFact, HeldSaid, Oldest, On, PlaceEnds, Pressing, PressureAtLeast, PressureBench,
    PressureDone, PressureHeat, PressureHint, PressureLine, PressureRuled, PressureSaid,
    PressureSeat, PressureVerdict, RubberSaid, Sits, StoredSaid, TakesToday, TooLittle, WarmthSaid,
};
pub use quantity::Quantity;
pub use rating::{
    AgainstCable, AloneSaid, EmergencyEnd, EmergencyLimit, FedSaid, LegLoad, LegRating, RatingSaid,
    ToLimit, WorseContact, WorstConnector,
};
pub use rows::{RowsSaid, WayTo};
pub use seal::{LapSaid, SealSaid, SpanSaid};
pub use section::{Between, Contour, PlugShape, SectionAsk, SectionRow, SectionSaid, SectionShape};
pub use shield::{
    AlongSaid, BondingSaid, ReadingAsk, ReadingSaid, ShieldAsk, ShieldCurrent, ShieldLacks,
    ShieldLine, ShieldSaid, VoltageSaid,
};
pub use slack::SlackSaid;
pub use soil::{
    NoDay, SoilCannot, SoilPart, SoilSaid, SoilSource, SoilWhat, StatedDrying, StatedDuct,
    StatedFilm, StatedReach, StatedSoil,
};
pub use solver::SolverSaid;
pub use step::{SetOutFrom, StepSaid, Stop};
pub use stress::StressSaid;
pub use study::{EdgeRounded, FieldWith, StudyAdapter, StudyCable, StudySaid};
pub use subject::Subject;
pub use truck::TruckSaid;
pub use unsettled::UnsettledSaid;
pub use warming::{Hottest, WarmingSaid, When};
pub use water::{MoistureSaid, TestedPlace, WaterSaid, WickSaid};
pub use word::{Doubt, Paper, Word};

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What is said to a person, before any language.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Said {
    /// A name from a file, or a sentence that has no key yet.
    Text(String),
    /// One after another: rendered with a semicolon between them.
    All(Vec<Said>),
    /// Sentences, each whole: rendered with a space between them.
    Sentences(Vec<Said>),
    /// One beside another: rendered with a comma between them.
    Listed(Vec<Said>),
    /// What is said, and in brackets what stands beside it.
    Aside(Box<Said>, Box<Said>),
    /// First whom or what it is about, then what is said of it.
    Of(Box<Said>, Box<Said>),
    /// Questions to be put to somebody.
    Questions(Vec<Said>),
    /// Whom it concerns.
    Subject(Subject),
    /// Messages about what was read on a leg.
    Measured(Box<MeasuredSaid>),
    /// Messages about fields that a check compares.
    Stress(Box<StressSaid>),
    /// Messages about kits.
    Kit(Box<KitSaid>),
    /// Messages about a joint under load.
    Load(Box<LoadSaid>),
    /// Messages about a limit: how a value stands to it, and on whose word it stands.
    Limit(Box<LimitSaid>),
    /// The question of a check, by its name in documents.
    Check(String),
    /// A check in a few words, by its name in documents.
    CheckName(String),
    /// Questions.
    Ask(Box<AskSaid>),
    /// Messages about how a file is written.
    Form(Box<FormSaid>),
    /// Messages about what contradicts itself in a job.
    Job(Box<JobSaid>),
    /// Messages about the temperatures that the load brings.
    Heat(Box<HeatSaid>),
    /// Statements of a plan around its numbers.
    Plan(Box<PlanSaid>),
    /// Frame of a letter.
    Letter(Box<LetterSaid>),
    /// Temperatures that were solved.
    Rating(Box<RatingSaid>),
    /// Assumptions and limits.
    Assumed(Box<AssumedSaid>),
    /// Surroundings of a cable.
    Soil(Box<SoilSaid>),
    /// Why a solver has no number.
    Solver(Box<SolverSaid>),
    /// Messages about parts on a leg.
    Fit(Box<FitSaid>),
    /// Messages about a leg in service.
    Duty(Box<DutySaid>),
    /// Messages about cutbacks.
    Cut(Box<CutSaid>),
    /// Rows of a leg that contradict each other.
    Rows(Box<RowsSaid>),
    /// Who places a plane, or sets its window.
    Whose(Box<Whose>),
    /// Messages about sections of the field.
    Section(Box<SectionSaid>),
    /// Messages about what a study of the field is made from.
    Study(Box<StudySaid>),
    /// Messages about how hard a part sits.
    Pressure(Box<PressureSaid>),
    /// Messages about seals.
    Seal(Box<SealSaid>),
    /// Messages about the edge of the insulation screen under the body.
    Edge(Box<EdgeSaid>),
    /// Messages about the cable that is left.
    Slack(Box<SlackSaid>),
    /// Messages about water.
    Water(Box<WaterSaid>),
    /// Messages about the words of named engineers.
    Closing(Box<ClosingSaid>),
    /// Messages about short circuits.
    Fault(Box<FaultSaid>),
    /// Messages about shields along the cable.
    Shield(Box<ShieldSaid>),
    /// Messages about cable and joint under load.
    Warming(Box<WarmingSaid>),
    /// Dangers of a step.
    Caution(Box<CautionSaid>),
    /// What is read at a hold point.
    Hold(Box<HoldSaid>),
    /// What a step says.
    Step(Box<StepSaid>),
    /// Things on the truck.
    Truck(Box<TruckSaid>),
    /// Points that a person must settle.
    Unsettled(Box<UnsettledSaid>),
    /// On whose word something stands.
    Word(Box<Word>),
    /// What is doubtful of a row.
    Doubt(Doubt),
    /// A part's row and its paper.
    Paper(Box<Paper>),
}

impl Said {
    /// A name from a file or somebody's own words, which stay as they are in every language; never a sentence of this program.
    pub fn name(name: impl Into<String>) -> Said {
        Said::Text(name.into())
    }

    /// What is said, after whom or what it is about.
    pub fn of(about: impl Into<Said>, said: impl Into<Said>) -> Said {
        Said::Of(Box::new(about.into()), Box::new(said.into()))
    }

    /// What is said, and in brackets what stands beside it.
    pub fn aside(said: impl Into<Said>, aside: impl Into<Said>) -> Said {
        Said::Aside(Box::new(said.into()), Box::new(aside.into()))
    }

    /// One beside another; one alone stays itself.
    pub fn listed(said: impl IntoIterator<Item = Said>) -> Said {
        let mut said: Vec<Said> = said.into_iter().collect();
        match said.len() {
            1 => said.remove(0),
            _ => Said::Listed(said),
        }
    }

    /// One question to be put to somebody.
    pub fn ask(question: impl Into<Said>) -> Said {
        Said::Questions(vec![question.into()])
    }

    /// One after another; one alone stays itself.
    pub fn all(said: impl IntoIterator<Item = Said>) -> Said {
        let mut said: Vec<Said> = said.into_iter().collect();
        match said.len() {
            1 => said.remove(0),
            _ => Said::All(said),
        }
    }
}

/// A group of messages is a message.
macro_rules! groups {
    ($($variant:ident($messages:ident),)*) => {
        $(impl From<$messages> for Said {
            fn from(said: $messages) -> Said {
                Said::$variant(Box::new(said))
            }
        })*
    };
}

groups! {
    Ask(AskSaid),
    Closing(ClosingSaid),
    Edge(EdgeSaid),
    Duty(DutySaid),
    Fault(FaultSaid),
    Fit(FitSaid),
    Form(FormSaid),
    Job(JobSaid),
    Cut(CutSaid),
    Rows(RowsSaid),
    Heat(HeatSaid),
    Plan(PlanSaid),
    Letter(LetterSaid),
    Rating(RatingSaid),
    Assumed(AssumedSaid),
    Soil(SoilSaid),
    Solver(SolverSaid),
    Kit(KitSaid),
    Limit(LimitSaid),
    Load(LoadSaid),
    Measured(MeasuredSaid),
    Pressure(PressureSaid),
    Seal(SealSaid),
    Warming(WarmingSaid),
    Shield(ShieldSaid),
    Stress(StressSaid),
    Slack(SlackSaid),
    Water(WaterSaid),
    Caution(CautionSaid),
    Hold(HoldSaid),
    Step(StepSaid),
    Truck(TruckSaid),
    Unsettled(UnsettledSaid),
    Section(SectionSaid),
    Study(StudySaid),
    Word(Word),
}

impl From<Subject> for Said {
    fn from(subject: Subject) -> Said {
        Said::Subject(subject)
    }
}

impl From<&Subject> for Said {
    fn from(subject: &Subject) -> Said {
        Said::Subject(subject.clone())
    }
}

impl From<&Whose> for Said {
    fn from(whose: &Whose) -> Said {
        Said::Whose(Box::new(whose.clone()))
    }
}

impl From<Paper> for Said {
    fn from(paper: Paper) -> Said {
        Said::Paper(Box::new(paper))
    }
}

impl From<String> for Said {
    fn from(text: String) -> Said {
        Said::Text(text)
    }
}

impl From<&str> for Said {
    fn from(text: &str) -> Said {
        Said::Text(text.to_owned())
    }
}

impl From<&String> for Said {
    fn from(text: &String) -> Said {
        Said::Text(text.clone())
    }
}

impl From<&Paper> for Said {
    fn from(paper: &Paper) -> Said {
        Said::Paper(Box::new(paper.clone()))
    }
}

impl From<&Word> for Said {
    fn from(word: &Word) -> Said {
        Said::Word(Box::new(word.clone()))
    }
}

impl From<&Said> for Said {
    fn from(said: &Said) -> Said {
        said.clone()
    }
}

/// What puts a message into words: a language, the words of a practice and its units.
pub trait Wording {
    /// The sentence of a message.
    fn say(&self, said: &Said) -> String;
}
