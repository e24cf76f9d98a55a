//! Sentences about kits: their age and store, where they park, and whether they are chosen and rated.

use crate::Tongue;
use jointwright_joint::said::{
    AgeSaid, Begun, ChoiceSaid, KitSaid, ParkSaid, Served, ServesFor, StoreDegc, StoreSaid,
    StoreSide,
};

pub(super) fn say(tongue: Tongue, said: &KitSaid) -> String {
    match said {
        KitSaid::Age(said) => age(said),
        KitSaid::Store(said) => store(said),
        KitSaid::Park(said) => park(tongue, said),
        KitSaid::Choice(said) => choice(tongue, said),
    }
}

fn age(said: &AgeSaid) -> String {
    match said {
        AgeSaid::LotNotWritten { part } => {
            format!("{part}: its lot and date are not written down")
        }
        AgeSaid::NoAgeLimit { part } => {
            format!("{part}: neither its row nor a label gives an age limit")
        }
        AgeSaid::Day { day } => day.clone(),
        AgeSaid::NotAfter { day } => format!("not after {day}"),
        AgeSaid::LastDayWas { of, last, today } => format!(
            "{}, lot {}: its last day was {last}; the work is on {today}",
            of.part, of.lot
        ),
        AgeSaid::DoNotUse => "Do not use it. Set it aside, marked, and take another.".to_owned(),
        AgeSaid::Label { lot } => format!("label of lot {lot}"),
        AgeSaid::MonthsFromUnwritten { of, months, from } => format!(
            "{}, lot {}: {months} months run from the day it was {}, which is not written down",
            of.part,
            of.lot,
            begun(*from)
        ),
        AgeSaid::ExpiryNotWritten { of } => format!(
            "{}, lot {}: whether its label prints an expiry date is not written down",
            of.part, of.lot
        ),
        AgeSaid::AskExpiry { of } => format!(
            "What expiry date does the label of lot {} of {} print, if any?",
            of.lot, of.part
        ),
        AgeSaid::DayOfWork => "the day of the work".to_owned(),
        AgeSaid::BegunAfterWork {
            of,
            begun: what,
            day,
            today,
        } => format!(
            "{}, lot {}: {} on {day}, after the day of the work, {today}",
            of.part,
            of.lot,
            begun(*what)
        ),
        AgeSaid::ReadLabelAgain => "Read the label and the day of the job again.".to_owned(),
    }
}

fn store(said: &StoreSaid) -> String {
    match said {
        StoreSaid::StoreNotSaid { part } => {
            format!("{part}: at what temperatures it may lie in store its row does not say")
        }
        StoreSaid::AskShelf { part } => {
            format!("For how long, and at what temperatures, may {part} lie in store?")
        }
        StoreSaid::MayLie { at_degc } => between(*at_degc, "any"),
        StoreSaid::Lay { at_degc } => between(*at_degc, "?"),
        StoreSaid::LayOutside {
            of,
            lay_degc,
            may_degc,
        } => format!(
            "{}, lot {}: it lay at {}; {} is permitted",
            of.part,
            of.lot,
            between(*lay_degc, "?"),
            between(*may_degc, "any")
        ),
        StoreSaid::StoreSideNotSaid { part, side: of } => format!(
            "{part}: how {} it may lie in store its row does not say",
            side(*of)
        ),
        StoreSaid::AskStoreSide { part, side: of } => {
            format!("How {} may {part} lie in store?", side(*of))
        }
        StoreSaid::LayNotWritten { of } => format!(
            "{}, lot {}: how cold and how warm it lay is not written down",
            of.part, of.lot
        ),
        StoreSaid::AskHowLay { of } => format!(
            "How cold and how warm did lot {} of {} lie in store and on the truck?",
            of.lot, of.part
        ),
    }
}

fn begun(begun: Begun) -> &'static str {
    match begun {
        Begun::Made => "made",
        Begun::Expanded => "expanded",
    }
}

fn side(side: StoreSide) -> &'static str {
    match side {
        StoreSide::Cold => "cold",
        StoreSide::Warm => "warm",
        StoreSide::ColdAndWarm => "cold and how warm",
    }
}

/// Two temperatures, with a word for a missing one.
fn between(degc: StoreDegc, none: &str) -> String {
    let shown = |degc: Option<f64>| degc.map_or(none.to_owned(), |degc| degc.to_string());
    format!(
        "{} to {} degC",
        shown(degc.least_degc),
        shown(degc.greatest_degc)
    )
}

fn park(tongue: Tongue, said: &ParkSaid) -> String {
    match said {
        ParkSaid::NoLegParks => "no leg is named as the one that parks the body: settle it before any connector is made".to_owned(),
        ParkSaid::HasOneBody { kind } => {
            format!("a {} joint has one body", tongue.joint_kind(*kind))
        }
        ParkSaid::Legs { n_legs: 1 } => "one leg".to_owned(),
        ParkSaid::Legs { n_legs } => format!("{n_legs} legs"),
        ParkSaid::LegsParkOneBody { n_legs } => {
            format!("{n_legs} legs are named to park the one body")
        }
        ParkSaid::NameLeg => "Name the leg that the body is slid onto.".to_owned(),
        ParkSaid::RoomForSealOnly => "there is room for its own seal, not for the body, and nobody says on which leg the body parks".to_owned(),
        ParkSaid::LengthNotSaid { row } => {
            format!("the row {row} does not say how long it is while parked")
        }
        ParkSaid::NothingSlidOn => "nothing is slid on first here".to_owned(),
        ParkSaid::RoomForWhatIs => "room for what is".to_owned(),
        ParkSaid::NotMeasured => {
            "nobody has measured the room for what is slid on before the connector".to_owned()
        }
        ParkSaid::Room { subject } => {
            format!("{}, room for what is slid on first", tongue.subject(subject))
        }
        ParkSaid::ParkElsewhere => {
            "Park on another leg, or call before anything is cut.".to_owned()
        }
        ParkSaid::ErrorNotWritten => {
            "how far off the lengths around this leg may be is not written down".to_owned()
        }
    }
}

fn choice(tongue: Tongue, said: &ChoiceSaid) -> String {
    match said {
        ChoiceSaid::TheJob => "job".to_owned(),
        ChoiceSaid::Named { part } => format!("a {} is named", tongue.part(*part)),
        ChoiceSaid::NotNamed { part } => format!("no {} is named", tongue.part(*part)),
        ChoiceSaid::ChooseAmong { part } => {
            format!("Choose among the proposals for the {}.", tongue.part(*part))
        }
        ChoiceSaid::Is { found } => served(tongue, found),
        ChoiceSaid::OneOf { permitted } => served_all(tongue, permitted),
        ChoiceSaid::ServesOthers {
            part,
            what,
            permitted,
            found,
        } => format!(
            "{part} is for {} {}; here it is {}",
            serves(*what),
            served_all(tongue, permitted),
            served(tongue, found)
        ),
        ChoiceSaid::RatedBelow {
            part,
            rated_kv,
            highest_kv,
        } => format!(
            "{part} is rated to {rated_kv} kV; the system's highest voltage is {highest_kv} kV"
        ),
        ChoiceSaid::UseRated => {
            "Stop. Use a part that its instructions rate for this system.".to_owned()
        }
    }
}

fn serves(what: ServesFor) -> &'static str {
    match what {
        ServesFor::Earthing => "systems with earthing",
        ServesFor::Kind => "joints of kind",
        ServesFor::Bonding => "bonding",
        ServesFor::Shield => "a shield of",
        ServesFor::Conductor => "conductors of",
        ServesFor::Stranding => "stranding",
        ServesFor::Jacket => "a jacket that is",
    }
}

fn served(tongue: Tongue, of: &Served) -> String {
    match of {
        Served::Word(word) => word.clone(),
        Served::Size(size) => size.to_string(),
        Served::Metal(metal) => tongue.metal(*metal).to_owned(),
        Served::Stranding(stranding) => tongue.stranding(*stranding).to_owned(),
    }
}

fn served_all(tongue: Tongue, all: &[Served]) -> String {
    let all: Vec<String> = all.iter().map(|of| served(tongue, of)).collect();
    all.join(", ")
}
