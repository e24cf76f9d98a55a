//! Kit: what the store has done to a part, beside the most that its instructions allow.

use crate::catalogue::{DAY_S, Head, Rubber, Shelf, ZERO_DEGC_K};
use crate::job::Lot;
use crate::section::Unknown;
use jiff::ToSpan;
use jiff::civil::Date;
use jointwright_numerics::rubber::Stay;

use super::metres;

/// What a time in store has left of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aged {
    /// Radius of the bore when nothing is in it, m.
    pub bore_m: f64,
    /// Share of the stretch in store that has stayed, 0 to 1.
    pub set_ratio: f64,
    /// Share of its moduli that is left, 0 to 1.
    pub kept_ratio: f64,
}

/// The state of a part today and at its oldest.
#[derive(Clone, Debug, PartialEq)]
pub struct Kit {
    /// Today.
    pub today: Aged,
    /// As old and as warm as its instructions allow.
    pub oldest: Aged,
    /// Whether it was held open in store.
    pub is_held: bool,
    /// Whether its row says how much of its moduli is lost meanwhile.
    pub has_relaxation: bool,
    /// What the oldest is, in words; nothing for a part that is not held open.
    pub oldest_words: String,
}

/// Why a part is past its date, if it is.
pub(super) fn past(today: Date, head: &Head, lots: &[&Lot]) -> Option<String> {
    lots.iter().find_map(|lot| {
        let last = last_day(head, lot).into_iter().flatten().min()?;
        (today > last).then(|| {
            format!(
                "{}, lot {}: its last day was {last}; the work is on {today}",
                head.id, lot.lot
            )
        })
    })
}

/// Last days by the label and by the instructions.
fn last_day(head: &Head, lot: &Lot) -> [Option<Date>; 2] {
    let by_shelf = head.shelf.as_ref().and_then(|shelf| {
        shelf_begins(shelf, lot)?
            .checked_add(shelf.months.months())
            .ok()
    });
    [lot.expires, by_shelf]
}

/// The day from which the months of the instructions run, at the latest.
fn shelf_begins(shelf: &Shelf, lot: &Lot) -> Option<Date> {
    if shelf.from == "expanded" {
        lot.expanded
    } else {
        // Nothing is made after it was expanded.
        lot.made.or(lot.expanded)
    }
}

/// What is not known of the age of a part: rubber ages wherever it lies.
///
/// A day on the label is enough; without one the label prints none, and the months of the instructions run from a day that is written down.
fn age_unknown(today: Date, head: &Head, lots: &[&Lot]) -> Option<Unknown> {
    let id = &head.id;
    if lots.is_empty() {
        let when = head
            .shelf
            .as_ref()
            .map_or("made", |shelf| shelf.from.as_str());
        return Some(unknown(
            format!("{id}: its lot, and how old it is, are not written down"),
            format!("Which lot of {id} is on the truck, and when was it {when}?"),
        ));
    }
    lots.iter()
        .find_map(|lot| age_of_lot_unknown(today, head, lot))
}

fn age_of_lot_unknown(today: Date, head: &Head, lot: &Lot) -> Option<Unknown> {
    let (id, name) = (&head.id, &lot.lot);
    let begins = head.shelf.as_ref().map(|shelf| {
        let begins = shelf_begins(shelf, lot);
        (&shelf.from, begins)
    });
    if let Some((from, Some(begins))) = &begins
        && *begins > today
    {
        return Some(unknown(
            format!("{id}, lot {name}: {from} on {begins}, after the day of the work"),
            format!("When was lot {name} of {id} {from}?"),
        ));
    }
    if lot.expires.is_some() {
        return None;
    }
    if lot.label_is_unread() {
        return Some(unknown(
            format!(
                "{id}, lot {name}: whether its label prints an expiry date is not written down"
            ),
            format!("What expiry date does the label of lot {name} of {id} print, if any?"),
        ));
    }
    match begins {
        Some((_, Some(_))) => None,
        Some((from, None)) => Some(unknown(
            format!("{id}, lot {name}: the day it was {from} is not written down"),
            format!("When was lot {name} of {id} {from}?"),
        )),
        None => Some(unknown(
            format!("{id}: neither its row nor its label gives an age limit"),
            format!("For how many months, and from when, may {id} lie in store?"),
        )),
    }
}

/// State of a part that is not past its date.
pub(super) fn kit(
    today: Date,
    head: &Head,
    rubber: &Rubber,
    lots: &[&Lot],
) -> Result<Kit, Unknown> {
    if let Some(unknown) = age_unknown(today, head, lots) {
        return Err(unknown);
    }
    let id = &head.id;
    let fresh = Aged {
        bore_m: metres(rubber.relaxed_bore) / 2.0,
        set_ratio: 0.0,
        kept_ratio: 1.0,
    };
    let Some(hold) = rubber.hold_diameter else {
        return not_held(head, fresh, lots);
    };
    if rubber.set.is_none() {
        return Err(unknown(
            format!("how much of its stretch {id} keeps after a time in store is not known"),
            format!(
                "What share of its stretch in store stays in the bore of {id}, after how long and at what temperature?"
            ),
        ));
    }
    let hold_m = metres(hold) / 2.0;
    let aged = |stays: &[Stay]| {
        let set_ratio = rubber.set.map_or(0.0, |set| set.after(stays));
        let lost = rubber.relaxation.map_or(0.0, |decay| decay.after(stays));
        Aged {
            bore_m: fresh.bore_m + set_ratio * (hold_m - fresh.bore_m),
            set_ratio,
            kept_ratio: 1.0 - lost,
        }
    };
    let mut worst: Option<Aged> = None;
    for lot in lots {
        let here = aged(&stays(today, id, head, lot)?);
        worst = Some(worst.map_or(here, |other| Aged {
            bore_m: other.bore_m.max(here.bore_m),
            set_ratio: other.set_ratio.max(here.set_ratio),
            kept_ratio: other.kept_ratio.min(here.kept_ratio),
        }));
    }
    let Some(here) = worst else {
        return Err(unknown(
            format!("{id}: its lot, and where it lay, are not written down"),
            format!(
                "Which lot of {id} is on the truck, when was it expanded, and how warm did it lie?"
            ),
        ));
    };
    let (oldest, oldest_words) = oldest(today, head)?;
    Ok(Kit {
        today: here,
        oldest: aged(&oldest),
        is_held: true,
        has_relaxation: rubber.relaxation.is_some(),
        oldest_words,
    })
}

/// State of a part whose row names no holdout.
fn not_held(head: &Head, fresh: Aged, lots: &[&Lot]) -> Result<Kit, Unknown> {
    let id = &head.id;
    let is_expanded = head.shelf.as_ref().is_some_and(|s| s.from == "expanded");
    if is_expanded || lots.iter().any(|lot| lot.expanded.is_some()) {
        return Err(unknown(
            format!("{id} is expanded in store; to which diameter is not known"),
            format!("To what diameter is the bore of {id} held open in store?"),
        ));
    }
    Ok(Kit {
        today: fresh,
        oldest: fresh,
        is_held: false,
        has_relaxation: true,
        oldest_words: String::new(),
    })
}

/// Where a part lay from the day it was expanded to the end of the day of the work.
fn stays(today: Date, id: &str, head: &Head, lot: &Lot) -> Result<Vec<Stay>, Unknown> {
    let from_made = head.shelf.as_ref().is_some_and(|s| s.from == "made");
    let begun = lot.expanded.or(if from_made { lot.made } else { None });
    let Some(begun) = begun else {
        return Err(unknown(
            format!(
                "{id}, lot {}: the day it was expanded is not written down",
                lot.lot
            ),
            format!("When was lot {} of {id} expanded?", lot.lot),
        ));
    };
    if begun > today {
        return Err(unknown(
            format!(
                "{id}, lot {}: expanded on {begun}, after the day of the work",
                lot.lot
            ),
            format!("When was lot {} of {id} expanded?", lot.lot),
        ));
    }
    let mut stays = Vec::new();
    let mut at = begun;
    let mut add = |from: Date, to: Date, degc: f64| {
        let days = f64::from((to - from).get_days()).max(0.0);
        stays.push(Stay {
            temperature_k: degc + ZERO_DEGC_K,
            time_s: days * DAY_S,
        });
    };
    // The day of the work counts whole.
    let end = today.checked_add(1.day()).unwrap_or(today);
    for (until, degc) in &lot.stays_degc {
        let until = (*until).min(end);
        if until > at {
            add(at, until, *degc);
            at = until;
        }
    }
    if at < end {
        let Some(degc) = lot.store_degc.1 else {
            return Err(unknown(
                format!(
                    "{id}, lot {}: how warm it lay from {at} on is not written down",
                    lot.lot
                ),
                format!(
                    "How warm did lot {} of {id} lie in store and on the truck?",
                    lot.lot
                ),
            ));
        };
        add(at, end, degc);
    }
    Ok(stays)
}

/// The longest and warmest that the instructions allow.
fn oldest(today: Date, head: &Head) -> Result<(Vec<Stay>, String), Unknown> {
    let id = &head.id;
    let stated = head
        .shelf
        .as_ref()
        .and_then(|shelf| Some((shelf.months, shelf.store_degc.1?)));
    let Some((months, degc)) = stated else {
        return Err(unknown(
            format!("for how long and how warm {id} may lie in store its row does not say"),
            format!("For how long, and up to what temperature, may {id} lie in store?"),
        ));
    };
    let end = today.checked_add(months.months()).unwrap_or(today);
    let days = f64::from((end - today).get_days());
    let stay = Stay {
        temperature_k: degc + ZERO_DEGC_K,
        time_s: days * DAY_S,
    };
    Ok((
        vec![stay],
        format!("after {months} months at {degc} degC in store"),
    ))
}

fn unknown(why: String, question: String) -> Unknown {
    Unknown::new(why, [question])
}
