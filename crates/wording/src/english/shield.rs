//! Sentences about shields along the cable.

use super::fault::carrier;
use crate::{Tongue, shown};
use jointwright_joint::said::{
    AlongSaid, BondingSaid, Carrier, ReadingAsk, ReadingSaid, ShieldAsk, ShieldCurrent,
    ShieldLacks, ShieldLine, ShieldSaid, VoltageSaid, Wording,
};

pub(super) fn say(tongue: Tongue, said: &ShieldSaid) -> String {
    match said {
        ShieldSaid::Line(said) => line(tongue, said),
        ShieldSaid::Lacks(said) => lacks(*said).to_owned(),
        ShieldSaid::Ask(said) => ask(*said).to_owned(),
        ShieldSaid::Along(said) => along(said),
        ShieldSaid::Bonding(said) => bonding(said),
        ShieldSaid::Reading(said) => reading(tongue, said),
        ShieldSaid::Voltage(said) => voltage(tongue, said),
    }
}

fn along(said: &AlongSaid) -> String {
    match said {
        AlongSaid::ShieldOf { leg } => format!("shield of leg {leg}"),
        AlongSaid::UnderAsRead { least_mm, greatest_mm } => {
            format!("under it {least_mm:.2} to {greatest_mm:.2} mm as read, errors included")
        }
        AlongSaid::UnderByPapers => {
            "under it the diameters of the papers, because not every phase was read there".to_owned()
        }
        AlongSaid::DiameterOf { leg } => format!("the diameter of the shield of leg {leg}"),
        AlongSaid::AskDiameters { leg } => format!(
            "Between what diameters over the insulation screen does the cable of leg {leg} lie, by its papers?"
        ),
        AlongSaid::MetalNotStated { leg } => {
            format!("the metal of the shield of leg {leg} is not stated")
        }
        AlongSaid::AskMetal { leg } => {
            format!("Of what metal is the shield of leg {leg}, by the cable's papers?")
        }
        AlongSaid::ResistanceOf { leg } => format!("the resistance of the shield of leg {leg}"),
        AlongSaid::AskHowMade { leg } => format!(
            "How is the shield of leg {leg} made: count, width, thickness, lap, by the cable's papers?"
        ),
        AlongSaid::StraightWires => "wires or straps taken as straight, because no lay is stated; a lay makes it more".to_owned(),
        AlongSaid::WiresWithLay { lay_mm } => {
            format!("wires or straps with a lay of {lay_mm:.0} mm")
        }
        AlongSaid::WiresBesideTape { lay_mm, turned_ratio } => {
            let wires = lay_mm.map_or_else(
                || "straight wires, because no lay is stated".to_owned(),
                |lay_mm| format!("wires with a lay of {lay_mm:.0} mm"),
            );
            format!(
                "{wires}, beside a tape: from a tube whose turns all touch to the tape alone, whose current goes {} times as far as the cable; both in parallel",
                shown(*turned_ratio)
            )
        }
        AlongSaid::CorrugatedTape => "from its effective area with the seam to a smooth tape without it; the way along its corrugation is longer, by what nobody states".to_owned(),
        AlongSaid::LappedTape { turned_ratio } => format!(
            "from a tube whose turns all touch to the tape alone, whose current goes {} times as far as the cable; nobody knows how well old turns touch",
            shown(*turned_ratio)
        ),
        AlongSaid::TapeWidthNotStated { leg } => {
            format!("the width of the lapped tape of leg {leg} is not stated")
        }
        AlongSaid::AskTapeWidth { leg } => format!("How wide is the tape of leg {leg}?"),
    }
}

fn bonding(said: &BondingSaid) -> String {
    match said {
        BondingSaid::OpenAtJoint { leg } => {
            format!("the shield of leg {leg} is open at the joint: no current flows round it")
        }
        BondingSaid::OpenAtFarEnd { leg } => format!(
            "the shield of leg {leg} is open at the far end of its run: no current flows round it"
        ),
        BondingSaid::FarEndNotStated { leg } => {
            format!("whether the shield of leg {leg} is earthed at its far end is not stated")
        }
        BondingSaid::AskFarEnd { leg } => {
            format!("Is the shield of leg {leg} earthed at the far end of its run too?")
        }
        BondingSaid::LinkNotStated { leg } => {
            format!("whether the link of leg {leg} is closed is not stated")
        }
        BondingSaid::AskLink { leg } => {
            format!("Is the link of leg {leg} at the joint closed in service?")
        }
        BondingSaid::LinkAndFarEndNotStated { leg } => format!(
            "whether the link of leg {leg} is closed, and its shield earthed at the far end, is not stated"
        ),
        BondingSaid::BondedAtBothEnds { leg } => format!(
            "the shield of leg {leg} is bonded at both ends: a current flows round it, and what stands between them is not computed"
        ),
        BondingSaid::BondedAtNeitherEnd { leg } => format!(
            "the shield of leg {leg} is bonded at neither end of its run: it takes up voltage from its conductor, which is not computed"
        ),
        BondingSaid::AskWhereEarthed { leg } => {
            format!("Where is the shield of leg {leg} earthed?")
        }
        BondingSaid::RunLengthNotStated { leg } => {
            format!("leg {leg} does not state its run_length")
        }
        BondingSaid::AskRunLength { leg } => format!(
            "How far is it from the joint to where the shield of leg {leg} is next bonded, or ends?"
        ),
        BondingSaid::PlaceNotStated { leg, fields } => {
            format!("leg {leg} does not state its {}", fields.join(" and "))
        }
        BondingSaid::AskFormation { leg } => {
            format!("Do the three cables of leg {leg} lie in trefoil or flat?")
        }
        BondingSaid::AskSpacing { leg } => {
            format!("How far apart are the axes of neighbouring cables of leg {leg}?")
        }
        BondingSaid::AxesTooNear {
            leg,
            spacing_mm,
            shield_mm,
        } => format!(
            "the axes of leg {leg} cannot be {spacing_mm:.1} mm apart: its shield alone is {shield_mm:.1} mm across"
        ),
    }
}

fn reading(tongue: Tongue, said: &ReadingSaid) -> String {
    let whole = match said {
        ReadingSaid::Ask(said) => return reading_ask(tongue, said),
        ReadingSaid::EndsWereBonded => {
            "the ends were bonded: what was read is of other shields and the earth too, and says nothing of this one"
        }
        ReadingSaid::TwoWires => {
            "it was read with two wires, and the resistance of the test leads is not stated: they may have more than the shield"
        }
        ReadingSaid::TemperatureOrLengthNotStated => {
            "the temperature of the shield, or the length that was read, is not stated"
        }
        ReadingSaid::LeadsHaveAsMuch => {
            "the test leads have as much resistance as was read with them, or the length is nothing"
        }
        ReadingSaid::OwnerLimitsUnread => {
            "the owner limits the resistance along this shield, and nobody has read it"
        }
        ReadingSaid::Above => "above",
        ReadingSaid::Below => "below",
        ReadingSaid::AsExpected => "as expected, but nobody with the authority sets a limit",
        ReadingSaid::TooMuch => {
            "Stop and call: this shield has more resistance than the owner allows. Read it again, then look for what interrupts it."
        }
        ReadingSaid::ResistanceAt20 { subject } => {
            return format!(
                "{}, resistance along the shield at 20 degC",
                tongue.subject(subject)
            );
        }
        ReadingSaid::Read {
            read_ohm,
            by,
            date,
            least_ohm,
            greatest_ohm,
            length_m,
            degc,
            of,
        } => {
            return format!(
                "{} mohm read by {by} on {date}; {} to {} mohm are expected over {} m at {} degC ({})",
                shown(1e3 * read_ohm),
                shown(1e3 * least_ohm),
                shown(1e3 * greatest_ohm),
                shown(*length_m),
                shown(*degc),
                tongue.say(of)
            );
        }
    };
    whole.to_owned()
}

fn reading_ask(tongue: Tongue, said: &ReadingAsk) -> String {
    let whole = match said {
        ReadingAsk::EndsOpen => "What does it read with its ends open, where the work allows that?",
        ReadingAsk::Leads => "What do the test leads read when their clips are joined?",
        ReadingAsk::TemperatureAndLength => {
            "How long is the shield between the clips, and at what temperature was it read?"
        }
        ReadingAsk::FourWires => "What does the shield read with four wires?",
        ReadingAsk::WhyAbove => {
            "Are wires broken or corroded? Do the turns of an old tape no longer touch? Do the clips bite on bare metal? Is the length right, and that of every joint between?"
        }
        ReadingAsk::WhyBelow => {
            "Is there another path beside this shield, an end that is bonded, a shorter length, or more metal than the papers state?"
        }
        ReadingAsk::Greatest => {
            "What is the greatest resistance along this shield that the owner takes?"
        }
        ReadingAsk::Reading { subject } => {
            return format!(
                "What resistance is read along the shield of {}?",
                tongue.subject(subject)
            );
        }
    };
    whole.to_owned()
}

fn voltage(tongue: Tongue, said: &VoltageSaid) -> String {
    match said {
        VoltageSaid::NobodyLimits { volts, length_m, load_a } => format!(
            "{} V along {} m of shield at {} A; nobody with the authority sets a limit, and no voltage is called harmless",
            shown(*volts),
            shown(*length_m),
            shown(*load_a)
        ),
        VoltageSaid::AskWhatMayStand => "What voltage may stand at the open end of this shield, and who may come near it?".to_owned(),
        VoltageSaid::AtOpenEnd { subject, length_m, load_a } => format!(
            "{}, voltage at the open end of {} m of shield at {} A",
            tongue.subject(subject),
            shown(*length_m),
            shown(*load_a)
        ),
        VoltageSaid::TooMuch => "Stop and call: the open end of this shield stands at more than the owner allows. The engineer decides on bonding, length of the run, or how the cables lie.".to_owned(),
    }
}

/// Statements of a plan about a shield beyond the joint.
fn line(tongue: Tongue, said: &ShieldLine) -> String {
    let say = |said| tongue.say(said);
    match said {
        ShieldLine::Resistance {
            least_ohm_per_km,
            greatest_ohm_per_km,
            between,
            on,
        } => {
            let (least, greatest) = (*least_ohm_per_km, *greatest_ohm_per_km);
            let ohm = if least == greatest {
                shown(least)
            } else {
                format!("{} to {}", shown(least), shown(greatest))
            };
            format!("{ohm} ohm/km at 20 degC: {}; {}.", say(between), say(on))
        }
        ShieldLine::TapeArea {
            has_wires,
            standard_mm2,
            computed_mm2,
        } => format!(
            "Effective area of {} by the standard's form for a new cable: {} to {} mm2 ([icea_p45482], from memory: it rules nothing); computed with is {} to {} mm2.",
            if *has_wires {
                "tape and wires together, the tape"
            } else {
                "the tape"
            },
            shown(standard_mm2.0),
            shown(standard_mm2.1),
            shown(computed_mm2.0),
            shown(computed_mm2.1)
        ),
        ShieldLine::InSteadyLoad { why } => format!("In steady load {}.", say(why)),
        ShieldLine::NoVoltage { why } => format!("Voltage: {}.", say(why)),
        ShieldLine::Contact {
            end,
            at,
            milli_ohm,
            shots,
            heat_kj,
        } => format!(
            "{end}, {at}: {} mohm, in which {} make {} kJ.",
            shown(*milli_ohm),
            say(shots),
            shown(*heat_kj)
        ),
        ShieldLine::Weakest {
            what,
            times_ratio,
            not_known,
        } => {
            let known = if not_known.is_empty() {
                String::new()
            } else {
                format!(
                    " of those that are known; not known: {}",
                    carriers(not_known)
                )
            };
            format!(
                "Weakest in a short circuit: {}, {} times what is asked of it{known}.",
                carrier(what),
                shown(*times_ratio)
            )
        }
        ShieldLine::WeakestNotKnown { not_known } => format!(
            "Weakest in a short circuit: not known of {}.",
            carriers(not_known)
        ),
        ShieldLine::Current(said) => current(said),
    }
}

fn carriers(all: &[Carrier]) -> String {
    all.iter().map(carrier).collect::<Vec<_>>().join(", ")
}

/// Currents and voltages along a shield.
fn current(said: &ShieldCurrent) -> String {
    match said {
        ShieldCurrent::Stated {
            shield_a,
            loss_w_per_m,
            shield_degc,
        } => format!(
            "The job states {} A in it all the time; they make up to {} W/m, shield at {} degC.",
            shown(*shield_a),
            shown(*loss_w_per_m),
            shown(*shield_degc)
        ),
        ShieldCurrent::FlowsRound {
            load_a,
            round_a,
            loss_w_per_m,
            shield_degc,
        } => format!(
            "At {} A {} to {} A flow round it and make up to {} W/m, shield at {} to {} degC.",
            shown(*load_a),
            shown(round_a.0),
            shown(round_a.1),
            shown(*loss_w_per_m),
            shown(shield_degc.0),
            shown(shield_degc.1)
        ),
        ShieldCurrent::StandsOpen {
            load_a,
            volts_v,
            length_m,
        } => format!(
            "At {} A {} V stand at its open end, along {} m.",
            shown(*load_a),
            shown(*volts_v),
            shown(*length_m)
        ),
        ShieldCurrent::StandsInFault { fault_ka, volts_v } => format!(
            "While {} kA flow in three phases alike {} V stand there.",
            shown(*fault_ka),
            shown(*volts_v)
        ),
        ShieldCurrent::FaultToEarth => {
            "The stated fault flows to earth: what stands at the open end then is not computed."
                .to_owned()
        }
        ShieldCurrent::Never => "Balanced currents in three cables alone; currents of a neutral, and eddy currents within a shield, are left out. The voltage that stands in a fault to earth is larger by far and is not computed. No voltage here is called harmless.".to_owned(),
    }
}

fn lacks(said: ShieldLacks) -> &'static str {
    match said {
        ShieldLacks::Load => "the job does not state duty.load",
        ShieldLacks::Hottest => {
            "the job does not state duty.conductor_greatest, which no shield exceeds in service"
        }
        ShieldLacks::Fault => "the job does not state duty.fault",
        ShieldLacks::FaultKind => "the job does not state duty.fault_kind",
    }
}

fn ask(said: ShieldAsk) -> &'static str {
    match said {
        ShieldAsk::Load => "What load do these cables carry?",
        ShieldAsk::Hottest => "What is the highest temperature of the conductor in service?",
        ShieldAsk::Fault => "What fault current can flow in the conductor?",
        ShieldAsk::FaultKind => "Does the stated fault flow in three phases alike, or to earth?",
    }
}
