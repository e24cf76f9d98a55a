//! Sentences about short circuits.

use crate::{Tongue, all_ends, shown};
use jointwright_joint::cable::Layer;
use jointwright_joint::said::{
    Carrier, ContactSaid, FaultHeatSaid, FaultSaid, HeatedMetal, ShieldFaultSaid, ShieldMeasure,
    Shots, Wording,
};

pub(super) fn say(tongue: Tongue, said: &FaultSaid) -> String {
    match said {
        FaultSaid::Is(of) => shots(*of),
        FaultSaid::OfWhat(of) => carrier(of),
        FaultSaid::ClearingTimeNotStated => "the job does not state system.clearing_time, the longest in which an earth fault is cleared: the shield may carry it that long".to_owned(),
        FaultSaid::ShorterThanClearing { longest_s } => format!(
            "duty.shield_fault_time is shorter than system.clearing_time, {} s, the longest in which an earth fault is cleared",
            shown(*longest_s)
        ),
        FaultSaid::NotStated { fields } => format!("the job does not state {}", fields.join(", ")),
        FaultSaid::OfNothing { field } => format!(
            "{field} or {field}_time is 0: a short circuit of nothing judges nothing"
        ),
        FaultSaid::StartNotStated => "the job does not state duty.conductor_greatest, the temperature at which a short circuit may begin".to_owned(),
        FaultSaid::StartColderThanPlace { start_degc, place_degc } => format!(
            "duty.conductor_greatest, {start_degc:.0} degC, is colder than the place becomes, {place_degc:.0} degC"
        ),
        FaultSaid::NoTape => "the shield has no tape".to_owned(),
        FaultSaid::TapeWidthNotStated => "the width of the lapped tape is not stated".to_owned(),
        FaultSaid::CannotBe { measure, mm, most_mm } => format!(
            "the shield's {}, {mm:.1} mm, cannot be: {most_mm:.1} mm at the most on this cable",
            shield_measure(*measure)
        ),
        FaultSaid::NothingCounted => "no wire or strap of the shield was counted".to_owned(),
        FaultSaid::LeadLimitNotStated => "how hot the lead may get is not stated".to_owned(),
        FaultSaid::BodyLeftOpen => "the body is left open".to_owned(),
        FaultSaid::RowSaysNoConductorHeat { row } => {
            format!("the row {row} does not say how hot the conductor in it may get")
        }
        FaultSaid::ShieldMetalOrLimitNotStated => {
            "its metal, or how hot it may get, is not stated".to_owned()
        }
        FaultSaid::NoHeating { from_degc, to_degc, time_s } => format!(
            "from {from_degc:.1} to {to_degc:.1} °C in {time_s} s is no heating that a current can do"
        ),
        FaultSaid::Heat(said) => heat(tongue, said),
        FaultSaid::OfShield(said) => shield(tongue, said),
        FaultSaid::OfContact(said) => contact(tongue, said),
    }
}

/// Sentences about the heating of metal, and about the short circuits that parts withstand.
fn heat(tongue: Tongue, said: &FaultHeatSaid) -> String {
    match said {
        FaultHeatSaid::Heats { subject, what, fault, from_degc } => format!(
            "{}, {} after {} from {from_degc:.0} degC",
            tongue.subject(subject),
            heated(tongue, *what),
            shots(*fault)
        ),
        FaultHeatSaid::HeatsUpTo { heats, hot_degc, it_melts } => format!(
            "{} (up to {hot_degc:.0} degC, if less of its metal carries{})",
            tongue.say(heats),
            melting(*it_melts)
        ),
        FaultHeatSaid::HeatsToMelting { heats } => format!("{}{}", tongue.say(heats), melting(true)),
        FaultHeatSaid::HeatsBetween { cool_degc, hot_degc, it_melts, greatest_degc } => format!(
            "{cool_degc:.0} to {hot_degc:.0} degC{}, by how much of its metal carries; {greatest_degc} degC are permitted",
            melting(*it_melts)
        ),
        FaultHeatSaid::AskWhatShieldCarries => "What short circuit does this shield carry, by the cable's papers or a test? Nobody knows how well its turns touch.".to_owned(),
        FaultHeatSaid::RowSaysNoFault { row } => {
            format!("the row {row} does not say what short circuit it carries")
        }
        FaultHeatSaid::AskWhatFlowsThrough { part } => format!(
            "What current may flow through {part} in a short circuit, and for how long?"
        ),
        FaultHeatSaid::CurrentThrough { subject, part } => format!(
            "{}, short-circuit current through {part}",
            tongue.subject(subject)
        ),
        FaultHeatSaid::SquareThrough { subject, part, fault } => format!(
            "{}, current squared times time through {part}: {}",
            tongue.subject(subject),
            shots(*fault)
        ),
    }
}

/// Sentences about the demand on a leg's shield.
fn shield(tongue: Tongue, said: &ShieldFaultSaid) -> String {
    match said {
        ShieldFaultSaid::ShieldDoesNotCarry => "Stop and call: this shield does not carry the stated short circuit. The engineer decides on fault level, clearing time, or how the current returns.".to_owned(),
        ShieldFaultSaid::ShieldPartDoesNotCarry => "Stop and call: the paper of this part does not give it this short circuit. Use one whose paper does, or the engineer decides on fault level, clearing time and how the current returns.".to_owned(),
        ShieldFaultSaid::PapersNotStated { fields } => {
            format!("the job does not state the cable's {}", fields.join(", "))
        }
        ShieldFaultSaid::AskMetalAndLimit => "Of what metal is this cable's shield, and to what temperature may it rise in a short circuit, by the cable's papers?".to_owned(),
        ShieldFaultSaid::JobStatesPapers => "the cable's papers, as the job states them".to_owned(),
        ShieldFaultSaid::TapeNotReadUnder => format!(
            "the tape has as much metal as the cable is thick under it, and not every phase was read over the {}",
            tongue.layer(Layer::InsulationScreen)
        ),
        ShieldFaultSaid::NotCounted { ends, of_papers } => format!(
            "nobody has counted the wires or straps of the shield on {}; its papers say {of_papers}",
            all_ends(ends)
        ),
        ShieldFaultSaid::AskCount { ends } => {
            format!("How many wires or straps are there on {}?", all_ends(ends))
        }
    }
}

/// Sentences about the connections of a shield.
fn contact(tongue: Tongue, said: &ContactSaid) -> String {
    match said {
        ContactSaid::NotRead { part, greatest_ohm } => format!(
            "nobody has read the resistance across the connection of {part}; its paper allows {} mohm",
            shown(1e3 * greatest_ohm)
        ),
        ContactSaid::AskRead { part, subject } => format!(
            "What resistance is read with four wires across the connection of {part} on {}?",
            tongue.subject(subject)
        ),
        ContactSaid::Read { subject, at, ohm } => format!(
            "{}, {at}, {} mohm",
            tongue.subject(subject),
            shown(1e3 * ohm)
        ),
        ContactSaid::Makes { fault, heat_kj } => {
            format!("{} make {} kJ in it", shots(*fault), shown(*heat_kj))
        }
        ContactSaid::HeatNotKnown => {
            "what heat a short circuit makes in it is not known".to_owned()
        }
        ContactSaid::NoPart => {
            "no shield part is named whose paper would say how much it may have".to_owned()
        }
        ContactSaid::RowSaysNoGreatest { row } => {
            format!("the row {row} does not say how much it may have")
        }
        ContactSaid::AskGreatest { part } => {
            format!("What resistance may the connection of {part} have?")
        }
        ContactSaid::MakesTooMuch => "Stop and call: a short circuit would make more heat in this connection than its paper allows for. Make it again by its paper, and read it again.".to_owned(),
    }
}

/// Current, time and number of shots.
pub(super) fn shots(of: Shots) -> String {
    let how_often = match of.n_shots {
        1 => String::new(),
        n => format!("{n} times, without cooling between them, "),
    };
    format!(
        "{how_often}{} kA for {} s",
        shown(1e-3 * of.current_a),
        shown(of.each_s)
    )
}

/// Name of the part that carries the current.
pub(super) fn carrier(of: &Carrier) -> String {
    match of {
        Carrier::Conductor => "conductor".to_owned(),
        Carrier::MetallicShield => "metallic shield".to_owned(),
        Carrier::Connector(id) => format!("connector {id}"),
        Carrier::ShieldPart(id) => format!("shield part {id}"),
        Carrier::BondingLead => "bonding lead".to_owned(),
    }
}

fn heated(tongue: Tongue, what: HeatedMetal) -> &'static str {
    match what {
        HeatedMetal::Conductor => "conductor",
        HeatedMetal::MetallicShield => tongue.layer(Layer::MetallicShield),
        HeatedMetal::BondingLead => "bonding lead",
    }
}

fn melting(it_melts: bool) -> &'static str {
    if it_melts { ", where it melts" } else { "" }
}

fn shield_measure(measure: ShieldMeasure) -> &'static str {
    match measure {
        ShieldMeasure::Overlap => "overlap",
        ShieldMeasure::Thickness => "thickness",
        ShieldMeasure::WidthLessLap => "width less its lap",
        ShieldMeasure::SideBySide => "wires or straps side by side",
    }
}
