//! Messages about a job's duty, its owner's decisions, and the surroundings of its legs.
#![expect(missing_docs, reason = "the name of a message says what is said")]

use super::{Said, Subject};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about a job beyond its rows, names and kind.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum JobWholeSaid {
    Duty(JobDutySaid),
    DutyHint(JobDutyHint),
    Owner(OwnerSaid),
    OwnerHint(OwnerHint),
    Around(AroundSaid),
    AroundHint(AroundHint),
}

/// Messages about loads and short circuits.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum JobDutySaid {
    HotterThanKnown {
        degc: f64,
        known_degc: f64,
    },
    EmergencyBelowLoad {
        emergency_a: f64,
        load_a: f64,
    },
    ShieldAboveConductor {
        shield_a: f64,
        conductor_a: f64,
    },
    ShorterThanCleared {
        field: String,
        time_s: f64,
        clearing_s: f64,
    },
    LoadsOrFactor,
    NotTwentyFourLoads,
}

/// Advice on loads and short circuits.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum JobDutyHint {
    HighestInService,
    LookUpBothLoads,
    GreatestOfAllFaults,
    LongestInBoth,
    GiveTheLoads,
    DivideByTheGreatest,
}

/// Messages about the owner's decisions.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum OwnerSaid {
    HasNoAuthority {
        by: String,
        what: String,
        who: Vec<String>,
    },
    NotSetByTheCrew {
        plane: String,
    },
    OnlyOneOfMinusAndPlus,
    FromItselfToItself {
        plane: String,
    },
    ShrinksInward,
    NoCheck {
        check: String,
    },
    TakesNoLimit {
        check: String,
    },
    NoBound {
        check: String,
    },
    NoSuchBound {
        field: String,
        check: String,
    },
    PhaseWithoutLeg,
    NoFact {
        fact: String,
    },
    EndsBeforeMade {
        date: String,
        until: String,
    },
    NoKey {
        key: String,
    },
    AsksNothingOf {
        check: String,
        subject: Subject,
    },
    WaitsForAnother {
        check: String,
        subject: Subject,
        fact: String,
    },
}

/// Advice on the owner's decisions.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum OwnerHint {
    LetSomebodyDecide,
    WindowForACut,
    NameTwoPlanes,
    FromTheCut,
    ChecksAre { checks: Vec<String> },
    LimitedChecksAre { checks: Vec<String> },
    BoundsAre { bounds: Vec<String> },
    ItTakes { bounds: Vec<String> },
    NameTheLeg,
    FactsAre { facts: Vec<String> },
    KeysAre { keys: Vec<String> },
    NameAnOpenCheck,
    AsksOf { subjects: Vec<Subject> },
    WaitsFor { facts: Vec<String> },
}

/// Messages about soil, ducts, air and water around the legs.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum AroundSaid {
    AloneWithPhases {
        phases: i64,
    },
    LieOtherwise {
        soil: String,
        leg: String,
        leg_way: String,
    },
    ApartOtherwise {
        soil: String,
        leg: String,
        leg_apart: String,
    },
    NotOneOfFour,
    DuctWithoutSoil,
    FlatNeedsSpacing,
    TouchingWithSpacing,
    CircuitsApart,
    HoldsOtherwise {
        said: String,
        given: String,
    },
    DryingNotWhole,
    DryConductsBetter {
        dry: f64,
        moist: f64,
    },
    DuctNotLarger,
    SameEnd {
        leg: String,
        until: Option<String>,
    },
    NoneToTheEnd {
        leg: String,
    },
}

/// Advice on surroundings.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum AroundHint {
    SayHowTheyLie,
    OneWay,
    OneDistance,
    GiveOneOfThem,
    GiveSoil,
    GiveSpacing,
    LeaveSpacingOut,
    BothOrNeither,
    WhatGoesTogether,
    SayWhetherItDries,
    Exchange,
    BothDiameters,
    OwnEnd,
    LeaveUntilOut,
}

/// Each group of messages about the whole job is a message.
macro_rules! of_whole {
    ($($variant:ident($messages:ident),)*) => {
        $(impl From<$messages> for Said {
            fn from(said: $messages) -> Said {
                JobWholeSaid::$variant(said).into()
            }
        })*
    };
}

of_whole! {
    Duty(JobDutySaid),
    DutyHint(JobDutyHint),
    Owner(OwnerSaid),
    OwnerHint(OwnerHint),
    Around(AroundSaid),
    AroundHint(AroundHint),
}
