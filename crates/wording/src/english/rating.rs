//! Messages about temperatures that were solved.

use super::load::shares;
use crate::{Tongue, shown};
use jointwright_joint::said::{
    AgainstCable, AloneSaid, EmergencyEnd, EmergencyLimit, FedSaid, LegLoad, LegRating, RatingSaid,
    ToLimit, Wording, WorseContact,
};

pub(super) fn say(tongue: Tongue, said: &RatingSaid) -> String {
    match said {
        RatingSaid::Leg(said) => leg(tongue, said),
        RatingSaid::RunsAway { past_degc } => {
            format!("warms without end, or past {past_degc} degC")
        }
        RatingSaid::LimitOfBody { body, limit_degc } => {
            format!("conductor inside {body}: {limit_degc} degC by its paper")
        }
        RatingSaid::LimitOfCable { limit_degc } => format!(
            "its cable without a joint: {limit_degc} degC, the highest in service by the job, emergencies included"
        ),
        RatingSaid::BodyLeftOpen => "a body is left open".to_owned(),
        RatingSaid::FromMemory { key } => format!(
            "`{key}` from memory, not confirmed by the owner: nothing is ruled on these temperatures"
        ),
        RatingSaid::ShieldOfRun { said } => format!("shield: {}", tongue.say(said)),
        RatingSaid::WorstOfDays { source } => format!(
            "the worst of all days with this loss-load factor, as their 24 loads are not stated; {source}"
        ),
        RatingSaid::NotJudgedAndClosed { why, word } => format!(
            "{}. Closed, and no pass, by the word of {}",
            tongue.say(why),
            tongue.say(word)
        ),
    }
}

fn leg(tongue: Tongue, said: &LegRating) -> String {
    match said {
        LegRating::RunsAwayAt { load_a, past_degc } => format!(
            "at {} A all the time it warms without end, or past {past_degc} degC",
            shown(*load_a)
        ),
        LegRating::AgainstCable(said) => against_cable(said),
        LegRating::WorseContact(said) => worse_contact(said),
        LegRating::ToLimit(said) => to_limit(said),
        LegRating::ByItself {
            limit_degc,
            alone: by_itself,
            fed: by,
        } => format!(
            "{limit_degc} degC, this leg by itself: {}{}",
            alone(by_itself),
            by.as_ref().map_or(String::new(), fed)
        ),
        LegRating::Emergency {
            load_a,
            from_a,
            time_h,
            end,
            limit,
        } => format!(
            "emergency of {} A from {} A at rest: {}{}",
            shown(*load_a),
            shown(*from_a),
            emergency_end(*end, *time_h),
            limit.map_or(String::new(), emergency_limit)
        ),
        LegRating::EmergencyNotComputed { why } => {
            format!("emergency: not computed: {}", tongue.say(why))
        }
        LegRating::Ageing {
            ratio,
            reference_degc,
            emergency_h,
            activation_kj_per_mol,
            from,
        } => {
            let spent = emergency_h.map_or(String::new(), |hours| {
                format!(
                    "; one such emergency, without the cooling after it, uses up {} h at it",
                    shown(hours)
                )
            });
            format!(
                "ageing of the rubber at the load: {} times as fast as at {reference_degc} degC{spent} (Arrhenius, {activation_kj_per_mol} kJ/mol, {from})",
                shown(*ratio)
            )
        }
    }
}

fn against_cable(said: &AgainstCable) -> String {
    let how = if said.by_k > 0.0 { "hotter" } else { "cooler" };
    format!(
        "at {} A all the time: conductor in the joint {:.1} degC ({:.0} mm from its middle), {:.1} K {how} than its cable would be going through there without a joint{}; rubber {:.1} degC; the cable beyond the body {:.1} degC at its hottest",
        shown(said.load_a),
        said.joint_degc,
        said.joint_at_mm,
        said.by_k.abs(),
        shares(&said.shares),
        said.rubber_degc,
        said.cable_degc
    )
}

fn worse_contact(said: &WorseContact) -> String {
    let own = match said.own_k {
        None => "the joint would warm without end".to_owned(),
        Some(k) => format!(
            "the conductor in this leg's joint would be {k:.1} K hotter at {} A",
            shown(said.load_a)
        ),
    };
    let worst = said.worst.as_ref().map_or(String::new(), |worst| {
        format!(
            "; of all connectors of this joint, one at a time, that of leg {} would make it hottest, by {:.1} K",
            worst.leg, worst.k
        )
    });
    format!(
        "connector: {} microohm at the most by its row at 20 degC, the same length of conductor {}; with twice that resistance in this one connector, all others as they are, {own}{worst}",
        shown(said.connector_uohm),
        shown(said.equal_uohm)
    )
}

fn to_limit(said: &ToLimit) -> String {
    match said {
        ToLimit::NotStated { body } => {
            format!("{body} states no temperature for its conductor all the time")
        }
        ToLimit::NotFound {
            body,
            limit_degc,
            most_a,
        } => format!(
            "no load up to {} A is found that brings the conductor in {body} to {limit_degc} degC",
            shown(*most_a)
        ),
        ToLimit::At {
            body,
            limit_degc,
            load_a,
            others,
            sooner,
        } => {
            let sooner = sooner.as_ref().map_or(String::new(), |first| {
                format!(
                    "; leg {} comes to its own sooner, when this leg carries {} A",
                    first.leg,
                    shown(first.load_a)
                )
            });
            format!(
                "the conductor in {body} comes to {limit_degc} degC, the most by its paper, at {} A all the time if all legs rise in proportion ({}){sooner}",
                shown(*load_a),
                legs_at(others)
            )
        }
    }
}

fn legs_at(legs: &[LegLoad]) -> String {
    let each = legs
        .iter()
        .map(|of| format!("leg {} at {} A", of.leg, shown(of.load_a)));
    each.collect::<Vec<_>>().join(", ")
}

/// Legs that are then above their own limits.
fn passed(legs: &[String]) -> String {
    if legs.is_empty() {
        return String::new();
    }
    format!(
        ", with which leg {} is above the limit of its own body",
        legs.join(" and leg ")
    )
}

fn alone(said: &AloneSaid) -> String {
    match said {
        AloneSaid::At {
            load_a,
            passed: legs,
        } => format!(
            "with all other legs at the job's load it comes there at {} A of its own{}",
            shown(*load_a),
            passed(legs)
        ),
        AloneSaid::CannotCarryMore { most_a } => format!(
            "it cannot carry more with all other legs at the job's load: they meet {} A at the most",
            shown(*most_a)
        ),
        AloneSaid::NeverThere { most_a } => format!(
            "with all other legs at the job's load it does not come there: they meet {} A at the most",
            shown(*most_a)
        ),
    }
}

fn fed(said: &FedSaid) -> String {
    format!(
        "; with leg {} alone bringing or taking what it has more, it comes there at {} A, that leg then at {} A{}",
        said.by,
        shown(said.load_a),
        shown(said.its_load_a),
        passed(&said.passed)
    )
}

fn emergency_end(end: EmergencyEnd, time_h: f64) -> String {
    let hours = shown(time_h);
    match end {
        EmergencyEnd::At { joint_degc } => {
            format!("after {hours} h the conductor in the joint has {joint_degc:.1} degC")
        }
        EmergencyEnd::Past { past_degc } => {
            format!("within {hours} h it is past {past_degc} degC")
        }
    }
}

fn emergency_limit(limit: EmergencyLimit) -> String {
    let paper = |degc: f64| format!("; the {degc} degC that its paper gives for an emergency are");
    match limit {
        EmergencyLimit::PassedBefore { limit_degc } => {
            format!("{} passed by the load before it already", paper(limit_degc))
        }
        EmergencyLimit::After { limit_degc, time_s } => {
            format!("{} reached after {}", paper(limit_degc), time(time_s))
        }
        EmergencyLimit::NotWithin { limit_degc, time_h } => format!(
            "{} not reached within {time_h} h, if what surrounds it stays as stated",
            paper(limit_degc)
        ),
    }
}

/// A time as people say it.
fn time(s: f64) -> String {
    if s < 3600.0 {
        format!("{} min", shown(s / 60.0))
    } else {
        format!("{} h", shown(s / 3600.0))
    }
}
