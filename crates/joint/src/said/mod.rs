//! Said: messages to a person before any language, each a key with its arguments.
//!
//! Why its own room: a sentence is put into words last, so one joint can be read in any language, and no door takes a sentence apart.
//!
//! Invariants: no message holds words of a language; a text is a name from a file or somebody's own words.
//!
//! Not here: the sentences (crate `wording`).

mod ask;
mod assumed;
mod built;
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
mod way;
mod word;

pub use ask::{AskSaid, FactKey, File, Of, Who};
pub use assumed::{
    AssumedSaid, FieldAssumes, NotComputed, PressureAssumes, RunAssumes, WarmAssumes,
};
pub use built::{Amount, BuiltHint, BuiltSaid};
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
pub use way::WaySaid;
pub use word::{Doubt, Paper, Word};

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Message to a person, before any language.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Said {
    /// A name from a file, or a sentence that has no key yet.
    Text(String),
    /// Messages one after another, with a semicolon between them.
    All(Vec<Said>),
    /// Whole sentences, with a space between them.
    Sentences(Vec<Said>),
    /// Messages in a list, with a comma between them.
    Listed(Vec<Said>),
    /// A message, and an aside in brackets.
    Aside(Box<Said>, Box<Said>),
    /// A subject, then the message about it.
    Of(Box<Said>, Box<Said>),
    /// Questions to put to somebody.
    Questions(Vec<Said>),
    /// Subject of a message.
    Subject(Subject),
    /// Messages about readings of a leg.
    Measured(Box<MeasuredSaid>),
    /// Messages about fields that a check compares.
    Stress(Box<StressSaid>),
    /// Messages about kits.
    Kit(Box<KitSaid>),
    /// Messages about a joint under load.
    Load(Box<LoadSaid>),
    /// Messages about a value beside its limit, and about the source of the limit.
    Limit(Box<LimitSaid>),
    /// Question of a check, by its name in documents.
    Check(String),
    /// Short name of a check, by its name in documents.
    CheckName(String),
    /// Questions.
    Ask(Box<AskSaid>),
    /// Messages about the writing of a file.
    Form(Box<FormSaid>),
    /// Messages about contradictions in a job.
    Job(Box<JobSaid>),
    /// Messages about temperatures under load.
    Heat(Box<HeatSaid>),
    /// Statements of a plan around its numbers.
    Plan(Box<PlanSaid>),
    /// Frame of a letter.
    Letter(Box<LetterSaid>),
    /// Messages about solved temperatures.
    Rating(Box<RatingSaid>),
    /// Assumptions and limits.
    Assumed(Box<AssumedSaid>),
    /// Surroundings of a cable.
    Soil(Box<SoilSaid>),
    /// Reason why a solver has no number.
    Solver(Box<SolverSaid>),
    /// Messages about parts on a leg.
    Fit(Box<FitSaid>),
    /// Messages about a leg in service.
    Duty(Box<DutySaid>),
    /// Messages about cutbacks.
    Cut(Box<CutSaid>),
    /// Rows of a leg that contradict each other.
    Rows(Box<RowsSaid>),
    /// Source of a plane's place or window.
    Whose(Box<Whose>),
    /// Messages about sections of the field.
    Section(Box<SectionSaid>),
    /// Messages about the data of a field study.
    Study(Box<StudySaid>),
    /// Messages about contact pressures of parts.
    Pressure(Box<PressureSaid>),
    /// Messages about readings as built.
    Built(Box<BuiltSaid>),
    /// Messages about ways back.
    Way(Box<WaySaid>),
    /// Hints about a file of readings as built.
    BuiltHint(Box<BuiltHint>),
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
    /// Readings of a hold point.
    Hold(Box<HoldSaid>),
    /// Instructions of a step.
    Step(Box<StepSaid>),
    /// Things on the truck.
    Truck(Box<TruckSaid>),
    /// Points that a person must settle.
    Unsettled(Box<UnsettledSaid>),
    /// Source of a limit.
    Word(Box<Word>),
    /// Doubt about a row.
    Doubt(Doubt),
    /// Row of a part, with its paper.
    Paper(Box<Paper>),
}

impl Said {
    /// Returns a name from a file or somebody's own words, which stay the same in every language; never a sentence of this program.
    pub fn name(name: impl Into<String>) -> Said {
        Said::Text(name.into())
    }

    /// Returns a message after its subject.
    pub fn of(about: impl Into<Said>, said: impl Into<Said>) -> Said {
        Said::Of(Box::new(about.into()), Box::new(said.into()))
    }

    /// Returns a message with an aside in brackets.
    pub fn aside(said: impl Into<Said>, aside: impl Into<Said>) -> Said {
        Said::Aside(Box::new(said.into()), Box::new(aside.into()))
    }

    /// Returns messages as a list; a single message stays itself.
    pub fn listed(said: impl IntoIterator<Item = Said>) -> Said {
        let mut said: Vec<Said> = said.into_iter().collect();
        match said.len() {
            1 => said.remove(0),
            _ => Said::Listed(said),
        }
    }

    /// Returns one question to put to somebody.
    pub fn ask(question: impl Into<Said>) -> Said {
        Said::Questions(vec![question.into()])
    }

    /// Returns messages one after another; a single message stays itself.
    pub fn all(said: impl IntoIterator<Item = Said>) -> Said {
        let mut said: Vec<Said> = said.into_iter().collect();
        match said.len() {
            1 => said.remove(0),
            _ => Said::All(said),
        }
    }
}

/// Each group of messages is a message.
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
    Built(BuiltSaid),
    Way(WaySaid),
    BuiltHint(BuiltHint),
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

/// Translator of messages into words: a language, the words of a practice and its units.
pub trait Wording {
    /// Returns the sentence of a message.
    fn say(&self, said: &Said) -> String;
}
