//! Golden cases: whole jobs under `tests/cases/`, each with its expected plan.
//!
//! Four kinds of joint by four metallic shields; the name of each case tells its special feature.
//! The laws next door run over the same cases and over the examples.

mod by_hand;
mod facts;
mod golden;
mod worked;

use jointwright_joint::cable::Words;
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::{Complaint, Source};
use jointwright_joint::job::{Order, read_order};
use jointwright_joint::judge::judge_unsolved as judge;
use jointwright_joint::limit::Ask;
use jointwright_joint::plan::Plan;
use jointwright_joint::said::{AskSaid, Said, Wording};
use jointwright_wording::plan;
use jointwright_wording::{ComplaintText, Tongue};

/// A job, with the catalogue file beside it if it has one.
#[derive(Clone, Copy)]
pub struct Case {
    pub slug: &'static str,
    pub job: &'static str,
    pub parts: Option<&'static str>,
}

macro_rules! case {
    ($slug:literal) => {
        Case {
            slug: $slug,
            job: include_str!(concat!("../../../../tests/cases/", $slug, "/job.toml")),
            parts: None,
        }
    };
    ($slug:literal, parts) => {
        Case {
            parts: Some(include_str!(concat!(
                "../../../../tests/cases/",
                $slug,
                "/parts.toml"
            ))),
            ..case!($slug)
        }
    };
}

macro_rules! example {
    ($slug:literal) => {
        Case {
            slug: $slug,
            job: include_str!(concat!("../../../../examples/", $slug, "/job.toml")),
            parts: None,
        }
    };
}

pub const CASES: &[Case] = &[
    case!("branch-corrugated-park-room-short"),
    case!("branch-straps-screen-read-as-insulation"),
    case!("branch-tape-slack-short"),
    case!("branch-wires-kit-past-its-date"),
    case!("four-way-corrugated-range-at-another-temperature", parts),
    case!("four-way-straps-blank-without-plug"),
    case!("four-way-tape-confirmed-by-the-owner"),
    case!("four-way-wires-parts-left-open"),
    case!("straight-corrugated-isolated-earthing"),
    case!("straight-straps-owner-tightens-the-screen-window"),
    case!("straight-tape-growth-unknown"),
    case!("straight-wires-growth-measured"),
    case!("three-way-corrugated-iec-words", parts),
    case!("three-way-straps-brush-of-the-other-metal"),
    case!("three-way-tape-read-with-a-tape-only"),
    case!("three-way-wires-adapter-on-two-legs"),
];

pub const EXAMPLES: &[Case] = &[
    example!("dock-straight-not-pressed"),
    example!("dock-straight-pressed"),
    example!("larkspur-three-way"),
    example!("quarry-four-way"),
    example!("tannery-change"),
];

/// Joints that are wrong on purpose: each must fail at the place that its name says.
pub const WRONG: &[Case] = &[
    case!("body-over-the-jacket", parts),
    case!("body-past-its-own-seal", parts),
    case!("window-without-width", parts),
];

/// All cases and all examples.
pub fn everything() -> impl Iterator<Item = Case> {
    CASES.iter().chain(EXAMPLES).copied()
}

/// Case or example with a name.
#[track_caller]
pub fn named(slug: &str) -> Case {
    everything()
        .chain(WRONG.iter().copied())
        .find(|case| case.slug == slug)
        .unwrap_or_else(|| panic!("no case {slug}"))
}

impl Case {
    /// Catalogue files as the command line would read them.
    pub fn catalogues(self) -> Vec<(String, String)> {
        let own = self.parts.map(|parts| ("parts.toml", parts));
        [(DEMONSTRATION, DEMONSTRATION_TEXT)]
            .into_iter()
            .chain(own)
            .map(|(name, text)| (name.to_owned(), text.to_owned()))
            .collect()
    }

    #[track_caller]
    pub fn order(self) -> Order {
        accepted(read(self.job, &self.catalogues()), self.slug)
    }

    #[track_caller]
    pub fn plan(self) -> Plan {
        plan_of(&self.order(), self.slug)
    }
}

/// Reads a job with these catalogue files.
pub fn read(job: &str, catalogues: &[(String, String)]) -> Result<Order, Vec<Complaint>> {
    let catalogues: Vec<Source> = catalogues
        .iter()
        .map(|(name, text)| Source::new(name, text.clone()))
        .collect();
    read_order(&Source::new("job.toml", job.to_owned()), &catalogues)
}

/// The result of reading, or a panic that prints every complaint.
#[track_caller]
pub fn accepted<T>(read: Result<T, Vec<Complaint>>, what: &str) -> T {
    read.unwrap_or_else(|complaints| panic!("{what} is refused:\n{}", lines(&complaints)))
}

/// Plan of an order whose rows agree.
#[track_caller]
pub fn plan_of(order: &Order, what: &str) -> Plan {
    plan(&accepted(judge(order), what))
}

/// A complaint as a line in English.
pub trait Line {
    fn line(&self) -> String;
}

impl Line for Complaint {
    fn line(&self) -> String {
        Tongue::english(Words::Us).complaint(self).to_string()
    }
}

impl Line for ComplaintText {
    fn line(&self) -> String {
        self.to_string()
    }
}

/// Complaints, one per line.
pub fn lines<L: Line>(complaints: &[L]) -> String {
    let lines: Vec<String> = complaints.iter().map(Line::line).collect();
    lines.join("\n")
}

/// Complaints in English, in the order in which a crew reads them.
pub fn texts(complaints: &[Complaint]) -> Vec<ComplaintText> {
    Tongue::english(Words::Us).complaints(complaints)
}

/// Message in English; empty if there is none.
pub fn english(said: &Option<Said>) -> String {
    said.as_ref().map_or(String::new(), sentence)
}

/// A message in English, in the words of the US practice.
pub fn sentence(said: &Said) -> String {
    Tongue::english(Words::Us).say(said)
}

/// Messages in English, one after another.
pub fn sentences(said: &[Said]) -> String {
    let said: Vec<String> = said.iter().map(sentence).collect();
    said.join(" ")
}

/// Things that an ask is about, in English.
pub fn of_words(ask: &Ask) -> String {
    Tongue::english(Words::Us).say(&AskSaid::Of(ask.of.clone()).into())
}
