//! Sentences about a job's duty, its owner's words, and what surrounds the legs.

use crate::Tongue;
use jointwright_joint::said::{
    AroundHint, AroundSaid, JobDutyHint, JobDutySaid, JobWholeSaid, OwnerHint, OwnerSaid, Subject,
};

pub(super) fn say(tongue: Tongue, said: &JobWholeSaid) -> String {
    match said {
        JobWholeSaid::Duty(said) => duty(said),
        JobWholeSaid::DutyHint(hint) => duty_hint(*hint).to_owned(),
        JobWholeSaid::Owner(said) => owner(tongue, said),
        JobWholeSaid::OwnerHint(hint) => owner_hint(tongue, hint),
        JobWholeSaid::Around(said) => around(said),
        JobWholeSaid::AroundHint(hint) => around_hint(*hint).to_owned(),
    }
}

fn duty(said: &JobDutySaid) -> String {
    match said {
        JobDutySaid::HotterThanKnown { degc, known_degc } => format!(
            "The conductor may come to {degc} degC in service; resistances are known up to {known_degc} degC."
        ),
        JobDutySaid::EmergencyBelowLoad {
            emergency_a,
            load_a,
        } => format!(
            "The emergency load, {emergency_a} A, is below the load all the time, {load_a} A."
        ),
        JobDutySaid::ShieldAboveConductor {
            shield_a,
            conductor_a,
        } => format!(
            "The short-circuit current in the shield, {shield_a} A, is above that in the conductor, {conductor_a} A."
        ),
        JobDutySaid::ShorterThanCleared {
            field,
            time_s,
            clearing_s,
        } => format!(
            "A fault to earth flows for {time_s} s by `{field}`, and for as long as {clearing_s} s by `clearing_time`."
        ),
        JobDutySaid::LoadsOrFactor => {
            "A day gives `loads` or its `loss_load_factor`, and one of the two only.".to_owned()
        }
        JobDutySaid::NotTwentyFourLoads => {
            "A day has 24 loads, each over the greatest, which is 1.".to_owned()
        }
    }
}

const fn duty_hint(hint: JobDutyHint) -> &'static str {
    match hint {
        JobDutyHint::HighestInService => {
            "Take it from the cable's papers: it is the highest in service, not that of a short circuit."
        }
        JobDutyHint::LookUpBothLoads => {
            "An emergency carries more than the load all the time: look both up again, or take the emergency out."
        }
        JobDutyHint::GreatestOfAllFaults => {
            "What comes back in a shield went out in a conductor: `fault` is the greatest of all kinds of fault."
        }
        JobDutyHint::LongestInBoth => {
            "It flows until it is cleared: give the longest time in both."
        }
        JobDutyHint::GiveTheLoads => {
            "Give the 24 loads where they are known: the factor alone stands for the worst day that has it."
        }
        JobDutyHint::DivideByTheGreatest => "Divide each by the greatest of them.",
    }
}

fn owner(tongue: Tongue, said: &OwnerSaid) -> String {
    match said {
        OwnerSaid::HasNoAuthority { by, what, who } => {
            let who = if who.is_empty() {
                "nobody".to_owned()
            } else {
                who.join(", ")
            };
            format!(
                "{by} is not named under `authority` as one who decides {what}; the job gives that to {who}."
            )
        }
        OwnerSaid::NotSetByTheCrew { plane } => format!(
            "The {} is not set by the crew; a window for it would have no effect.",
            plane.replace('-', " ")
        ),
        OwnerSaid::OnlyOneOfMinusAndPlus => {
            "A distance of the owner gives only one of `minus` and `plus`.".to_owned()
        }
        OwnerSaid::FromItselfToItself { plane } => {
            format!("A distance of the owner runs from {plane} to itself.")
        }
        OwnerSaid::ShrinksInward => "A layer shrinks back from its cut, away from the conductor end; this link lets it come nearer.".to_owned(),
        OwnerSaid::NoCheck { check } => format!("No check is named `{check}`."),
        OwnerSaid::TakesNoLimit { check } => {
            format!("The check `{check}` takes no limit of the owner; it would have no effect.")
        }
        OwnerSaid::NoBound { check } => {
            format!("A limit of the owner for the check `{check}` has no bound.")
        }
        OwnerSaid::NoSuchBound { field, check } => {
            format!("`{field}` is no bound for the check `{check}`; it would have no effect.")
        }
        OwnerSaid::PhaseWithoutLeg => "A closing names a phase and no leg.".to_owned(),
        OwnerSaid::NoFact { fact } => format!("No fact is named `{fact}`."),
        OwnerSaid::EndsBeforeMade { date, until } => {
            format!("A closing of {date} holds until {until}, before it was made.")
        }
        OwnerSaid::NoKey { key } => {
            format!("No value from memory has the key `{key}`; there is nothing to confirm.")
        }
        OwnerSaid::AsksNothingOf { check, subject } => format!(
            "The check `{check}` asks nothing of {}: this word closes nothing.",
            tongue.subject(subject)
        ),
        OwnerSaid::WaitsForAnother {
            check,
            subject,
            fact,
        } => format!(
            "`{check}` of {} does not wait for the fact `{fact}`: this word closes nothing.",
            tongue.subject(subject)
        ),
    }
}

fn subjects_of(tongue: Tongue, subjects: &[Subject]) -> String {
    let subjects: Vec<String> = subjects.iter().map(|of| tongue.subject(of)).collect();
    subjects.join("; ")
}

fn owner_hint(tongue: Tongue, hint: &OwnerHint) -> String {
    let fixed = match hint {
        OwnerHint::LetSomebodyDecide => {
            "Have somebody with that authority decide it, or add the person to `authority`."
        }
        OwnerHint::WindowForACut => "Set a window for a cut, a mark or the body.",
        OwnerHint::NameTwoPlanes => "Name two planes.",
        OwnerHint::FromTheCut => {
            "Write it from the cut to the same edge shrunk back, with a `minus` no larger than the distance."
        }
        OwnerHint::ChecksAre { checks } => return format!("Checks are: {}.", checks.join(", ")),
        OwnerHint::LimitedChecksAre { checks } => {
            return format!("Checks that take one are: {}.", checks.join(", "));
        }
        OwnerHint::BoundsAre { bounds } => return format!("Bounds are: {}.", bounds.join(", ")),
        OwnerHint::ItTakes { bounds } => {
            let bounds: Vec<String> = bounds.iter().map(|bound| format!("`{bound}`")).collect();
            return format!("It takes {}.", bounds.join(" and "));
        }
        OwnerHint::NameTheLeg => "Name the leg, or take the phase out.",
        OwnerHint::FactsAre { facts } => {
            return format!(
                "The plan names the fact that it asks for; they are: {}.",
                facts.join(", ")
            );
        }
        OwnerHint::KeysAre { keys } => return format!("Keys are: {}.", keys.join(", ")),
        OwnerHint::NameAnOpenCheck => {
            "Take the row out, or name the check that the plan leaves not judged."
        }
        OwnerHint::AsksOf { subjects } => {
            return format!(
                "It asks of: {}. Name one of them.",
                subjects_of(tongue, subjects)
            );
        }
        OwnerHint::WaitsFor { facts } => {
            return format!(
                "It waits for: {}. Name one of them; where the fact has been answered, take the row out.",
                facts.join(", ")
            );
        }
    };
    fixed.to_owned()
}

fn around(said: &AroundSaid) -> String {
    match said {
        AroundSaid::AloneWithPhases { phases } => format!(
            "The soil holds one cable alone, and the job has {phases} phases, a cable each."
        ),
        AroundSaid::LieOtherwise { soil, leg, leg_way } => {
            format!("The soil holds cables that lie {soil}; those of leg {leg} lie {leg_way}.")
        }
        AroundSaid::ApartOtherwise {
            soil,
            leg,
            leg_apart,
        } => format!(
            "In the soil the cables lie {soil} apart; those of leg {leg} lie {leg_apart} apart."
        ),
        AroundSaid::NotOneOfFour => "A surrounding gives either `film_w_per_m2k` or `outside_k_m_per_w`, or in their place `soil` or `air`.".to_owned(),
        AroundSaid::DuctWithoutSoil => {
            "A duct lies in soil, and no `soil` is given.".to_owned()
        }
        AroundSaid::FlatNeedsSpacing => "`flat` needs `spacing`.".to_owned(),
        AroundSaid::TouchingWithSpacing => {
            "Cables or ducts that touch have no `spacing`.".to_owned()
        }
        AroundSaid::CircuitsApart => {
            "`circuits` above 1 and `circuits_apart` say something only together.".to_owned()
        }
        AroundSaid::HoldsOtherwise { said, given } => format!(
            "The soil holds {said}, and what is given beside it is that of {given}."
        ),
        AroundSaid::DryingNotWhole => "Soil that dries gives `dry_k_m_per_w` and `dries_above_k`, and soil that does not gives neither.".to_owned(),
        AroundSaid::DryConductsBetter { dry, moist } => format!(
            "The soil would conduct better when dry, {dry} K·m/W, than moist, {moist} K·m/W."
        ),
        AroundSaid::DuctNotLarger => "The duct is no larger outside than inside.".to_owned(),
        AroundSaid::SameEnd { leg, until } => match until {
            None => format!("Two stretches of what surrounds leg `{leg}` end at the far end."),
            Some(until) => format!(
                "Two stretches of what surrounds leg `{leg}` end {until} from the conductor end."
            ),
        },
        AroundSaid::NoneToTheEnd { leg } => {
            format!("No stretch of what surrounds leg `{leg}` goes on to the far end.")
        }
    }
}

const fn around_hint(hint: AroundHint) -> &'static str {
    match hint {
        AroundHint::SayHowTheyLie => {
            "Say how the cables of a circuit lie: `trefoil`, `flat` or `flat-touching`."
        }
        AroundHint::OneWay => "The same cables lie in one way: look both up again.",
        AroundHint::OneDistance => {
            "The same cables lie at one distance, from axis to axis: look both up again."
        }
        AroundHint::GiveOneOfThem => {
            "Give one of them: the film for a joint or a cable in air or water, the resistance for a cable in a duct or in soil, or what it is, and it is computed."
        }
        AroundHint::GiveSoil => "Give `soil`, or the film or resistance by its source.",
        AroundHint::GiveSpacing => {
            "Give the distance between the axes of neighbours, or say `flat-touching`."
        }
        AroundHint::LeaveSpacingOut => "Leave it out, or say `flat`.",
        AroundHint::BothOrNeither => "Give both, or neither.",
        AroundHint::WhatGoesTogether => {
            "`ducts` go with `duct`, `ducts-in-concrete` with `duct` and its `bank`, `cables` with neither."
        }
        AroundHint::SayWhetherItDries => {
            "Say `dries = true` with both, or `dries = false` with none."
        }
        AroundHint::Exchange => "Exchange them.",
        AroundHint::BothDiameters => "Give both diameters.",
        AroundHint::OwnEnd => "Give each its own end; the last of a leg has no `until`.",
        AroundHint::LeaveUntilOut => "Leave `until` out of the last one.",
    }
}
