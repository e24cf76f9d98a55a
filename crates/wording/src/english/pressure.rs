//! Sentences about the pressure of a part.

use super::{store, word};
use crate::{Tongue, shown};
use jointwright_joint::said::{
    HeatFact, Oldest, On, PlaceEnds, Pressing, PressureBench, PressureDone, PressureHeat,
    PressureHint, PressureLine, PressureRuled, PressureSaid, PressureSeat, PressureVerdict,
    RubberSaid, Sits, TakesToday, TooLittle, WarmthSaid, Wording,
};

pub(super) fn say(tongue: Tongue, said: &PressureSaid) -> String {
    match said {
        PressureSaid::What(of) => what(*of).to_owned(),
        PressureSaid::On(of) => on(tongue, of),
        PressureSaid::Warmth(of) => warmth(*of),
        PressureSaid::Oldest(of) => oldest(*of),
        PressureSaid::Hint(of) => hint(*of).to_owned(),
        PressureSaid::Line(said) => line(tongue, said),
        PressureSaid::Ends { is_free } => if *is_free { "free" } else { "fixed length" }.to_owned(),
        PressureSaid::Ruled(said) => ruled(tongue, said),
        PressureSaid::Seat(said) => seat(tongue, said),
        PressureSaid::Heat(said) => heat(said),
        PressureSaid::Bench(said) => bench(tongue, said),
        PressureSaid::Store(said) => store::say(said),
        PressureSaid::Rubber(said) => rubber(said),
        PressureSaid::AskedButNotSaid { what, kpa, word } => format!(
            "{}: {kpa:.0} kPa are asked for ({}), and its pressure over the temperatures of this joint cannot be said",
            tongue.say(what),
            word::say(tongue, word)
        ),
        PressureSaid::LeastAskedButNotSaid { word } => format!(
            "a least pressure is asked for ({}), and the pressure over the temperatures of this joint cannot be said",
            word::say(tongue, word)
        ),
    }
}

fn what(what: Pressing) -> &'static str {
    match what {
        Pressing::Pressure => "pressure",
        Pressing::Stretch => "stretch of the bore",
        Pressing::Squeeze => "squeeze",
        Pressing::AtScreenEdge => "pressure at the screen edge",
        Pressing::RangeToday => "range today",
    }
}

pub(super) fn on(tongue: Tongue, on: &On) -> String {
    match on {
        On::Layer(layer) => tongue.layer(*layer).to_owned(),
        On::Adapter(part) => format!("adapter {part}"),
    }
}

fn warmth(at: WarmthSaid) -> String {
    if at.body_degc == at.cable_degc {
        format!("all at {:.0} degC", at.body_degc)
    } else {
        format!(
            "cable at {:.0} degC, rubber at {:.0} degC",
            at.cable_degc, at.body_degc
        )
    }
}

fn oldest(oldest: Oldest) -> String {
    let Oldest { months, degc } = oldest;
    format!("after {months} months at {degc} degC in store")
}

/// Words about the oldest kit, after a text; empty if there is no oldest kit.
fn with_oldest(before: &str, of: Option<Oldest>) -> String {
    of.map_or(String::new(), |of| format!("{before}{}", oldest(of)))
}

fn hint(hint: PressureHint) -> &'static str {
    match hint {
        PressureHint::UsedUp => {
            "Stop. Do not use it on this leg. Set it aside, marked, and take another."
        }
        PressureHint::NotThisLeg => {
            "Stop. Do not use it on this leg. Measure again; if it stands, this leg needs another part."
        }
        PressureHint::PartTooLarge => {
            "Stop: the part is too large for this leg. Do not build the cable up to make it fit. Measure again; if it stands, this leg needs another part."
        }
        PressureHint::PartTooSmall => {
            "Stop: the part is too small for this leg. Do not force it on. Measure again; if it stands, this leg needs another part."
        }
        PressureHint::SealTooLarge => {
            "Stop: the seal is too large for this jacket. Take one whose range holds it; do not build the jacket up unless the seal's instructions say how."
        }
        PressureHint::EngineerDecides => {
            "Stop and call: the engineer decides. Do not fill or bind the edge to make it fit."
        }
        PressureHint::ReadFour => "Read four diameters around the cable, with a calliper.",
    }
}

fn sits(tongue: Tongue, sits: &Sits) -> String {
    format!(
        "{}, {} of {} on the {}",
        tongue.subject(&sits.subject),
        what(sits.what),
        sits.part,
        on(tongue, &sits.on)
    )
}

fn ruled(tongue: Tongue, said: &PressureRuled) -> String {
    match said {
        PressureRuled::AgainstWorst(of) => format!(
            "{}, against the worst that its instructions allow",
            sits(tongue, of)
        ),
        PressureRuled::TimesWorst {
            sits: of,
            ratio,
            least_mm,
            oldest,
            warmth: at,
        } => format!(
            "{}: {ratio:.2} times the worst that its instructions allow, {least_mm:.1} mm{}{}",
            sits(tongue, of),
            with_oldest(", ", *oldest),
            at.map_or(String::new(), |at| format!("; {}", warmth(at)))
        ),
        PressureRuled::AtWarmth {
            sits: of,
            warmth: at,
        } => format!("{}, {}", sits(tongue, of), at.map_or(String::new(), warmth)),
        PressureRuled::OverRelaxed(of) => format!("{} over its relaxed bore", sits(tongue, of)),
        PressureRuled::SealWouldNotTouch { part, least } => format!(
            "by its own row {part} would not even touch the thinnest jacket that its paper allows, {}",
            tongue.read(*least)
        ),
        PressureRuled::LargerThanBore { subject, part } => format!(
            "{}, jacket larger than the bore of {part}",
            tongue.subject(subject)
        ),
        PressureRuled::RangeToday {
            subject,
            part,
            on: of,
        } => format!(
            "{}, {part} on the {}, range that this kit can take today",
            tongue.subject(subject),
            on(tongue, of)
        ),
        PressureRuled::NothingIsLeft => "nothing is left of it".to_owned(),
        PressureRuled::NoRange => "no range".to_owned(),
        PressureRuled::PastItsDate => "past its date".to_owned(),
        PressureRuled::WithinItsDate => "within its date".to_owned(),
        PressureRuled::ItsDate => "its date".to_owned(),
        PressureRuled::OverTemperatures(of) => {
            format!("{} over the temperatures of this joint", what(*of))
        }
        PressureRuled::NothingOfPast => {
            "nothing is computed of a part that is past its date".to_owned()
        }
        PressureRuled::NotReadAround => "a tape, or fewer than four diameters around the cable, say nothing of its thinnest and thickest place".to_owned(),
        PressureRuled::DoesNotTouch => "does not touch".to_owned(),
        PressureRuled::PressedOn => "pressed on".to_owned(),
        PressureRuled::WhatDoesNotTouch => "what does not touch does not sit".to_owned(),
    }
}

fn seat(tongue: Tongue, said: &PressureSeat) -> String {
    match said {
        PressureSeat::Loose {
            bore_mm,
            on: of,
            seat_mm,
        } => format!(
            "it does not touch: its bore is {bore_mm:.1} mm today, the {} {seat_mm:.1} mm",
            on(tongue, of)
        ),
        PressureSeat::RelaxedNotKnown { part } => {
            format!("how {part} is when nothing is in it is not known")
        }
        PressureSeat::AskRelaxed { part } => format!(
            "What are the bore and the outside diameter of {part} when nothing is in it, and at what temperature? Ask its maker, or measure a new one of this lot that has been out of its holdout for a day."
        ),
        PressureSeat::AskLaw { part } => format!(
            "Which law and moduli describe the rubber of {part}, and how do they and its lengths change with temperature?"
        ),
        PressureSeat::AskHold { part } => format!(
            "To what diameter is {part} held open in store, and what share of that stretch stays after how long at what temperature?"
        ),
        PressureSeat::OutsideNotKnown { part } => {
            format!("the outside diameter of {part} when nothing is in it is not known")
        }
        PressureSeat::AskOutside { part } => {
            format!("What is the outside diameter of {part} when nothing is in it?")
        }
        PressureSeat::AdapterOutsideNotKnown { part } => format!(
            "the cable under {part} may lie outside its range, and its diameters with nothing in it are not stated: how thick it gets there is not known"
        ),
        PressureSeat::EndsBefore { part, by } => format!(
            "{part} can end {} before the edge of the insulation screen: how the body's bore lies there is not computed",
            tongue.read(*by)
        ),
        PressureSeat::ReadingWithoutDegc { leg, layer } => format!(
            "a reading of leg {leg} over the {} has no temperature, and the range does not say at which temperature it holds",
            tongue.layer(*layer)
        ),
        PressureSeat::AskDegcOfReading { leg, layer } => format!(
            "At what temperature was leg {leg} read over the {}?",
            tongue.layer(*layer)
        ),
        PressureSeat::ReadOutsidePlace {
            leg,
            layer,
            read_degc,
            least_degc,
            greatest_degc,
        } => format!(
            "leg {leg} was read over the {} at {read_degc} degC, outside the {least_degc} to {greatest_degc} degC of the place, and the range does not say at which temperature it holds",
            tongue.layer(*layer)
        ),
        PressureSeat::AskDegcOfRange { layer } => format!(
            "At what temperature does the range over the {} hold? Else read again at the temperature of the place.",
            tongue.layer(*layer)
        ),
        PressureSeat::PlaceNotStated {
            leg,
            layer,
            read_degc,
            missing,
        } => not_stated(leg, tongue.layer(*layer), *read_degc, *missing),
        PressureSeat::AskPlace(missing) => match missing {
            PlaceEnds::Lowest => "What is the lowest temperature at the place?".to_owned(),
            PlaceEnds::Highest => "What is the highest temperature at the place?".to_owned(),
            PlaceEnds::Both => {
                "What are the lowest and the highest temperatures at the place?".to_owned()
            }
        },
    }
}

fn not_stated(leg: &str, layer: &str, read_degc: f64, missing: PlaceEnds) -> String {
    let missing = match missing {
        PlaceEnds::Lowest => "the lowest temperature of the place is not stated",
        PlaceEnds::Highest => "the highest temperature of the place is not stated",
        PlaceEnds::Both => "the lowest and the highest temperatures of the place are not stated",
    };
    format!(
        "leg {leg} was read over the {layer} at {read_degc} degC; {missing}, and the range does not say at which temperature it holds"
    )
}

fn heat(said: &PressureHeat) -> String {
    match said {
        PressureHeat::NotKnown { missing } => {
            let missing: Vec<&str> = missing.iter().map(|of| heat_fact(*of)).collect();
            format!("not known: {}", missing.join(", "))
        }
        PressureHeat::AskLowestAtPlace => "What is the lowest temperature at the place?".to_owned(),
        PressureHeat::AskHighestOfConductor => {
            "What is the highest temperature of the conductor in service, emergencies included?"
                .to_owned()
        }
        PressureHeat::AskDegcOfLeg { leg } => format!("At what temperature was leg {leg} read?"),
        PressureHeat::AskCableExpansion { leg } => format!(
            "By how much does the insulation of leg {leg}'s cable expand per kelvin? Ask its maker."
        ),
        PressureHeat::AskRubberExpansion { part } => {
            format!("By how much does the rubber of {part} expand per kelvin? Ask its maker.")
        }
        PressureHeat::AskRubberStiffness { part } => {
            format!(
                "How does the stiffness of the rubber of {part} change per kelvin? Ask its maker."
            )
        }
        PressureHeat::JacketExpansionNotKnown => {
            "the expansion of the jacket is not known".to_owned()
        }
        PressureHeat::LowestAboveHighest {
            lowest_degc,
            highest_degc,
        } => format!(
            "the lowest temperature at the place, {lowest_degc} degC, is above the highest of the conductor, {highest_degc} degC"
        ),
        PressureHeat::SoftAt { part, degc } => {
            format!("by its row {part} would have no stiffness left at {degc:.0} degC")
        }
        PressureHeat::AskStiffness {
            part,
            from_degc,
            to_degc,
        } => format!("How stiff is the rubber of {part} from {from_degc} to {to_degc} degC?"),
    }
}

fn heat_fact(fact: HeatFact) -> &'static str {
    match fact {
        HeatFact::LowestAtPlace => "the lowest temperature at the place",
        HeatFact::HighestOfConductor => "the highest temperature of the conductor",
        HeatFact::OfReadings => "the temperature of the readings",
        HeatFact::CableExpansion => "the expansion of the cable's insulation",
        HeatFact::RubberExpansion => "the expansion of the rubber",
        HeatFact::RubberStiffness => "how the rubber's stiffness changes with temperature",
    }
}

fn bench(tongue: Tongue, said: &PressureBench) -> String {
    match said {
        PressureBench::NoScreenUnderIt => {
            "no edge of the insulation screen lies under it".to_owned()
        }
        PressureBench::MayFall => "with C1 below a quarter of C2 it may press less the wider it is stretched, and nothing is concluded from such constants".to_owned(),
        PressureBench::HeldOpen { diameter } => format!("held open to {diameter}"),
        PressureBench::OnDiameter { diameter_mm, why } => {
            format!("on a diameter of {diameter_mm:.1} mm {}", rubber(why))
        }
        PressureBench::NoRubberFrom { from_mm, to_mm } => {
            format!("no rubber of it lies on the cable from {from_mm:.1} to {to_mm:.1} mm along")
        }
        PressureBench::NoSliceThere => "no slice of it lies there".to_owned(),
        PressureBench::NoStiffnessLeft { oldest } => format!(
            "by its own row it has no stiffness left {}",
            with_oldest("", *oldest)
        ),
        PressureBench::WouldNotTouch {
            on: of,
            least_mm,
            oldest,
        } => format!(
            "by its own row it would not even touch the thinnest {} that its paper allows, {least_mm:.1} mm{}",
            on(tongue, of),
            with_oldest(", ", *oldest)
        ),
        PressureBench::WallIsNoTube { part } => {
            format!("the wall of {part} is not that of a tube")
        }
        PressureBench::NothingOnCable { part } => {
            format!("no part of the inside of {part} lies on the cable")
        }
        PressureBench::ReachesInside {
            reaches_mm,
            stated_mm,
        } => format!(
            "it reaches to a diameter of {reaches_mm:.1} mm, inside the {stated_mm:.1} mm on which it is stated"
        ),
        PressureBench::NothingBetween {
            from_mm,
            to_mm,
            along_mm,
        } => format!(
            "nothing lies between diameters {from_mm:.1} and {to_mm:.1} mm at {along_mm:.1} mm along"
        ),
    }
}

fn rubber(said: &RubberSaid) -> String {
    match said {
        RubberSaid::NoTube { bore_mm } => {
            format!("the radii of the tube do not grow from {bore_mm} mm outward")
        }
        RubberSaid::NoStiffness => "the constants of the rubber give it no stiffness".to_owned(),
        RubberSaid::NoCylinder => "the cylinder has no radius".to_owned(),
        RubberSaid::BeyondLimit { excess, most } => format!(
            "the rubber is stretched beyond the limit of its law: its first invariant exceeds 3 by {excess:.3}, the most is {most:.3}"
        ),
        RubberSaid::NoBalance => {
            "no axial stretch makes the axial force of the tube vanish".to_owned()
        }
        RubberSaid::NoRadius { greatest_mm } => {
            format!("no cylinder up to {greatest_mm} mm is pressed so hard")
        }
    }
}

/// Fit of the parts of an end, in one line.
fn line(tongue: Tongue, said: &PressureLine) -> String {
    match said {
        PressureLine::NoRange { why } => format!("no range: {}", tongue.say(why)),
        PressureLine::Loose { why } => format!("LOOSE: {}", tongue.say(why)),
        PressureLine::NotJudged { why } => format!("not judged: {}", tongue.say(why)),
        PressureLine::Done(said) => done(tongue, said),
    }
}

fn done(tongue: Tongue, said: &PressureDone) -> String {
    let read = |at: Option<WarmthSaid>| {
        at.map_or(
            "as read, without the temperatures of the joint".to_owned(),
            warmth,
        )
    };
    let error = match said.read_error_ratio {
        Some(error) => format!("give or take {}", shown(error)),
        None => "and with its bore's uncertainty it may not touch".to_owned(),
    };
    let pressure = said.pressure.map_or(String::new(), |least| {
        format!(
            " {} kPa at the least, give or take {}, {}.",
            shown(least.kpa),
            shown(least.error_kpa),
            read(least.warmth)
        )
    });
    format!(
        "{}{} {} on the {}: {} times the least pressure that its paper allows (on {:.1} mm{}), {} by the readings, {error}, worst with {}, {}.{pressure}{} Limit: {}",
        said.verdict
            .as_ref()
            .map_or(String::new(), |said| verdict(tongue, said)),
        tongue.part(said.kind),
        said.part,
        on(tongue, &said.on),
        shown(said.least_ratio),
        said.allowed_mm,
        with_oldest(", by a kit ", said.oldest),
        shown(said.read_ratio),
        read(said.warmth),
        if said.is_ratio_free {
            "ends free"
        } else {
            "length held"
        },
        said.today.map_or(String::new(), today),
        word::say(tongue, &said.word)
    )
}

fn today(takes: TakesToday) -> String {
    match takes {
        TakesToday::Diameters {
            least_mm,
            greatest_mm,
        } => format!(" Takes {least_mm:.1} to {greatest_mm:.1} mm today."),
        TakesToday::None => " Takes no diameter today.".to_owned(),
    }
}

/// Verdict before the line.
fn verdict(tongue: Tongue, said: &PressureVerdict) -> String {
    match said {
        PressureVerdict::TooLittle(all) => {
            let all: Vec<String> = all.iter().map(|one| too_little(tongue, one)).collect();
            format!("TOO LITTLE ({}): ", all.join("; "))
        }
        PressureVerdict::OutOfRange => "OUT OF ITS RANGE: ".to_owned(),
        PressureVerdict::TemperaturesNotKnown => "NOT JUDGED (temperatures not known): ".to_owned(),
        PressureVerdict::ThinnestNotRead => "NOT JUDGED (thinnest place not read): ".to_owned(),
        PressureVerdict::WithinError => "NOT JUDGED (within its error): ".to_owned(),
    }
}

fn too_little(tongue: Tongue, said: &TooLittle) -> String {
    match said {
        TooLittle::Paper => "against its paper".to_owned(),
        TooLittle::Asked { kpa, word } => format!(
            "{} kPa are asked for by {}",
            shown(*kpa),
            word::say(tongue, word)
        ),
    }
}
