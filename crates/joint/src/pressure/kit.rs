//! Kit: the effect of storage on a part, and that of the worst storage that its instructions allow.

use crate::catalogue::{DAY_S, Head, Rubber, Shelf, ZERO_DEGC_K};
use crate::job::Lot;
use crate::said::{Begun, HeldSaid, Oldest, Said, StoredSaid};
use crate::section::Unknown;
use jiff::ToSpan;
use jiff::civil::Date;
use jointwright_numerics::rubber::Stay;

/// State of a part after a time in store.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aged {
    /// Radius of the relaxed bore, m.
    pub bore_m: f64,
    /// Set: share of the stretch in store that stays, 0 to 1.
    pub set_ratio: f64,
    /// Share of the moduli that is left, 0 to 1.
    pub kept_ratio: f64,
}

/// State of a part today and at its oldest.
#[derive(Clone, Debug, PartialEq)]
pub struct Kit {
    /// State today.
    pub today: Aged,
    /// State of a part as old and as warm as the instructions allow.
    pub oldest: Aged,
    /// Whether the part was held open in store.
    pub is_held: bool,
    /// Whether the row states the loss of moduli in store.
    pub has_relaxation: bool,
    /// Description of the oldest state; `None` for a part that is not held open.
    pub oldest_of: Option<Oldest>,
}

/// Reason why a part is past its date; `None` if it is not.
pub(super) fn past(today: Date, head: &Head, lots: &[&Lot]) -> Option<StoredSaid> {
    lots.iter().find_map(|lot| {
        let last = lot.last_day(head.shelf.as_ref())?;
        (today > last).then(|| StoredSaid::PastDate {
            part: head.id.clone(),
            lot: lot.lot.clone(),
            last: last.to_string(),
            work: today.to_string(),
        })
    })
}

/// Missing fact about the age of a part; rubber ages wherever it lies.
///
/// A day on the label is enough.
/// Where the label prints no day, the months of the instructions run from a day that is written down.
fn age_unknown(today: Date, head: &Head, lots: &[&Lot]) -> Option<Unknown> {
    if lots.is_empty() {
        let part = head.id.clone();
        let begun = head.shelf.as_ref().map_or(Begun::Made, Shelf::begun);
        return Some(unknown(
            StoredSaid::LotNotWritten { part: part.clone() },
            StoredSaid::AskLot { part, begun },
        ));
    }
    lots.iter()
        .find_map(|lot| age_of_lot_unknown(today, head, lot))
}

fn age_of_lot_unknown(today: Date, head: &Head, lot: &Lot) -> Option<Unknown> {
    let begins = head
        .shelf
        .as_ref()
        .map(|shelf| (shelf.begun(), lot.begun_at_latest(shelf)));
    if let Some((begun, Some(begins))) = begins
        && begins > today
    {
        return Some(begun_later(head, lot, begun, begins));
    }
    if lot.expires.is_some() {
        return None;
    }
    let part = head.id.clone();
    if lot.label_is_unread() {
        let lot = lot.lot.clone();
        return Some(unknown(
            StoredSaid::LabelNotWritten {
                part: part.clone(),
                lot: lot.clone(),
            },
            StoredSaid::AskLabel { part, lot },
        ));
    }
    match begins {
        Some((_, Some(_))) => None,
        Some((begun, None)) => Some(begun_not_written(head, lot, begun)),
        None => Some(unknown(
            StoredSaid::NoAgeLimit { part: part.clone() },
            StoredSaid::AskAgeLimit { part },
        )),
    }
}

fn begun_later(head: &Head, lot: &Lot, begun: Begun, day: Date) -> Unknown {
    let (part, lot) = (head.id.clone(), lot.lot.clone());
    unknown(
        StoredSaid::BegunAfterWork {
            part: part.clone(),
            lot: lot.clone(),
            begun,
            day: day.to_string(),
        },
        StoredSaid::AskBegun { part, lot, begun },
    )
}

fn begun_not_written(head: &Head, lot: &Lot, begun: Begun) -> Unknown {
    let (part, lot) = (head.id.clone(), lot.lot.clone());
    unknown(
        StoredSaid::BegunNotWritten {
            part: part.clone(),
            lot: lot.clone(),
            begun,
        },
        StoredSaid::AskBegun { part, lot, begun },
    )
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
        bore_m: rubber.relaxed_bore.m() / 2.0,
        set_ratio: 0.0,
        kept_ratio: 1.0,
    };
    let Some(hold) = rubber.hold_diameter else {
        return not_held(head, fresh, lots);
    };
    if rubber.set.is_none() {
        return Err(unknown(
            HeldSaid::SetNotKnown { part: id.clone() },
            HeldSaid::AskSet { part: id.clone() },
        ));
    }
    let hold_m = hold.m() / 2.0;
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
        let here = aged(&stays(today, head, lot)?);
        worst = Some(worst.map_or(here, |other| Aged {
            bore_m: other.bore_m.max(here.bore_m),
            set_ratio: other.set_ratio.max(here.set_ratio),
            kept_ratio: other.kept_ratio.min(here.kept_ratio),
        }));
    }
    let Some(here) = worst else {
        return Err(unknown(
            HeldSaid::LotPlaceNotWritten { part: id.clone() },
            HeldSaid::AskLotPlace { part: id.clone() },
        ));
    };
    let (oldest, oldest_of) = oldest(today, head)?;
    Ok(Kit {
        today: here,
        oldest: aged(&oldest),
        is_held: true,
        has_relaxation: rubber.relaxation.is_some(),
        oldest_of: Some(oldest_of),
    })
}

/// State of a part whose row names no holdout.
fn not_held(head: &Head, fresh: Aged, lots: &[&Lot]) -> Result<Kit, Unknown> {
    let id = &head.id;
    let is_expanded = head
        .shelf
        .as_ref()
        .is_some_and(|s| s.begun() == Begun::Expanded);
    if is_expanded || lots.iter().any(|lot| lot.expanded.is_some()) {
        return Err(unknown(
            HeldSaid::HoldNotKnown { part: id.clone() },
            HeldSaid::AskHold { part: id.clone() },
        ));
    }
    Ok(Kit {
        today: fresh,
        oldest: fresh,
        is_held: false,
        has_relaxation: true,
        oldest_of: None,
    })
}

/// Stays of a part from the day of its expansion to the end of the day of the work.
fn stays(today: Date, head: &Head, lot: &Lot) -> Result<Vec<Stay>, Unknown> {
    let from_made = head
        .shelf
        .as_ref()
        .is_some_and(|s| s.begun() == Begun::Made);
    let begun = lot.expanded.or(if from_made { lot.made } else { None });
    let Some(begun) = begun else {
        return Err(begun_not_written(head, lot, Begun::Expanded));
    };
    if begun > today {
        return Err(begun_later(head, lot, Begun::Expanded, begun));
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
    // The day of the work counts in full.
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
            let (part, lot) = (head.id.clone(), lot.lot.clone());
            return Err(unknown(
                StoredSaid::WarmthNotWritten {
                    part: part.clone(),
                    lot: lot.clone(),
                    from: at.to_string(),
                },
                StoredSaid::AskWarmth { part, lot },
            ));
        };
        add(at, end, degc);
    }
    Ok(stays)
}

/// Longest and warmest storage that the instructions allow.
fn oldest(today: Date, head: &Head) -> Result<(Vec<Stay>, Oldest), Unknown> {
    let id = &head.id;
    let stated = head
        .shelf
        .as_ref()
        .and_then(|shelf| Some((shelf.months, shelf.store_degc.1?)));
    let Some((months, degc)) = stated else {
        return Err(unknown(
            HeldSaid::ShelfNotSaid { part: id.clone() },
            HeldSaid::AskShelf { part: id.clone() },
        ));
    };
    let end = today.checked_add(months.months()).unwrap_or(today);
    let days = f64::from((end - today).get_days());
    let stay = Stay {
        temperature_k: degc + ZERO_DEGC_K,
        time_s: days * DAY_S,
    };
    let oldest = Oldest { months, degc };
    Ok((vec![stay], oldest))
}

fn unknown(why: impl Into<Said>, question: impl Into<Said>) -> Unknown {
    Unknown::new(why, [question])
}
