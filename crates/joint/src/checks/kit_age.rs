//! Is every part on the truck within its date and its storage temperatures on the day of the work?
//!
//! The day on the label and the months in the instructions are fixed limits: past either, the check always fails.
//!
//! Source: the label, and the part's own instructions.

use super::{EndInputs, Inputs, LegInputs, slug};
use crate::catalogue::{Head, Shelf};
use crate::job::Lot;
use crate::limit::{Ask, Ruling, Word, fact_table as fact};
use crate::said::{AgeSaid, Begun, LotSaid, Of, PartKind, Said, StoreDegc, StoreSaid, StoreSide};
use jiff::civil::Date;

const CHECK: &str = slug(module_path!());

/// Parts that age on the shelf.
const RUBBER: &[&str] = &["body", "adapter", "seal"];

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let chosen = leg.chosen;
    let parts: [(&str, Option<&Head>); 5] = [
        ("body", chosen.body.map(|p| &p.head)),
        ("adapter", chosen.adapter.map(|p| &p.head)),
        ("connector", chosen.connector.map(|p| &p.head)),
        ("shield_part", chosen.shield_part.map(|p| &p.head)),
        ("seal", chosen.seal.map(|p| &p.head)),
    ];
    parts
        .into_iter()
        .filter_map(|(part, head)| head.map(|head| (part, head)))
        .flat_map(|(part, head)| on_part(inputs, leg, end, part, head))
        .collect()
}

fn on_part(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    end: &EndInputs,
    part: &str,
    head: &Head,
) -> Vec<Ruling> {
    let lots: Vec<&Lot> = inputs.order.job.lots_of(&end.id, part).collect();
    if lots.is_empty() {
        return match &head.shelf {
            Some(_) => {
                let id = head.id.clone();
                let why = AgeSaid::LotNotWritten { part: id };
                let ruling = Ruling::not_judged(CHECK, leg.subject_of(end), why);
                vec![ruling.asking(fact::LOT.of(lot_of(end, part, head)))]
            }
            // Rubber ages everywhere; metal does not count.
            None if RUBBER.contains(&part) => {
                let part = head.id.clone();
                let why = AgeSaid::NoAgeLimit { part };
                let ruling = Ruling::not_judged(CHECK, leg.subject_of(end), why);
                vec![ruling.asking(fact::SHELF.of(&head.id))]
            }
            None => Vec::new(),
        };
    }
    lots.into_iter()
        .flat_map(|lot| on_lot(inputs.order.job.date, leg, end, head, lot))
        .collect()
}

/// Message that names a lot of a part.
fn of_lot(head: &Head, lot: &Lot) -> LotSaid {
    LotSaid {
        part: head.id.clone(),
        lot: lot.lot.clone(),
    }
}

fn day(day: Date) -> AgeSaid {
    let day = day.to_string();
    AgeSaid::Day { day }
}

fn not_after_day(day: Date) -> AgeSaid {
    let day = day.to_string();
    AgeSaid::NotAfter { day }
}

/// Name of a part on the truck, for an ask.
fn lot_of(end: &EndInputs, part: &str, head: &Head) -> Of {
    let mut kinds = PartKind::ALL.into_iter();
    let kind = kinds.find(|kind| kind.file_name() == part);
    let end = end.id.clone();
    let row = head.id.clone();
    kind.map_or(Of::Name(row.clone()), |kind| Of::Lot { end, kind, row })
}

fn on_lot(
    today: Date,
    leg: &LegInputs<'_>,
    end: &EndInputs,
    head: &Head,
    lot: &Lot,
) -> Vec<Ruling> {
    let mut rulings = Vec::new();
    let until = |last: Date, source: Said| {
        let ruling = Ruling::on_words(
            CHECK,
            leg.subject_of(end),
            day(today),
            not_after_day(last),
            source,
        );
        if today <= last {
            return ruling;
        }
        let why = AgeSaid::LastDayWas {
            of: of_lot(head, lot),
            last: last.to_string(),
            today: today.to_string(),
        };
        ruling.failing(why, AgeSaid::DoNotUse)
    };
    if let Some(expires) = lot.expires {
        let label = AgeSaid::Label {
            lot: lot.lot.clone(),
        };
        rulings.push(until(expires, label.into()));
    }
    if lot.label_is_unread() {
        rulings.push(unread_label(leg, end, head, lot));
    }
    rulings.extend(not_after(today, leg, end, head, lot));
    let Some(shelf) = &head.shelf else {
        if RUBBER.contains(&lot.part.as_str()) {
            rulings.extend(without_shelf(leg, end, head, lot));
        }
        return rulings;
    };
    let source = Word::Instructions(head.source().into());
    let from = shelf.begun();
    // If the day is only a bound, a lot past it fails, and no lot passes by it.
    let is_bound = |last: &Date| lot.begun(shelf).is_some() || today > *last;
    match lot.last_by_row(shelf).filter(is_bound) {
        Some(last) => rulings.push(until(last, source.clone().into())),
        // The expiry on the label already includes the months.
        None if lot.expires.is_some() => {}
        None => {
            let why = AgeSaid::MonthsFromUnwritten {
                of: of_lot(head, lot),
                months: shelf.months,
                from,
            };
            let ruling = Ruling::not_judged(CHECK, leg.subject_of(end), why);
            rulings.push(ruling.asking(fact::LOT_DAY.of(lot_of(end, &lot.part, head))));
        }
    }
    rulings.push(storage(today, leg, end, head, lot, shelf, &source));
    rulings
}

/// Ruling on a label that nobody read: its day may be past.
fn unread_label(leg: &LegInputs<'_>, end: &EndInputs, head: &Head, lot: &Lot) -> Ruling {
    let of = of_lot(head, lot);
    let why = AgeSaid::ExpiryNotWritten { of: of.clone() };
    let ask = Said::ask(AgeSaid::AskExpiry { of });
    let ruling = Ruling::not_judged(CHECK, leg.subject_of(end), why).with_hint(ask);
    ruling.asking(fact::LABEL_DATE.of(lot_of(end, &lot.part, head)))
}

/// Rulings on rubber whose row states no storage limits.
fn without_shelf(leg: &LegInputs<'_>, end: &EndInputs, head: &Head, lot: &Lot) -> Vec<Ruling> {
    let part = || head.id.clone();
    let mut open = vec![Said::from(StoreSaid::StoreNotSaid { part: part() })];
    if lot.expires.is_none() {
        open.push(AgeSaid::NoAgeLimit { part: part() }.into());
    }
    let rule = |why: Said| {
        let ask = Said::ask(StoreSaid::AskShelf { part: part() });
        let ruling = Ruling::not_judged(CHECK, leg.subject_of(end), why).with_hint(ask);
        ruling.asking(fact::SHELF.of(&head.id))
    };
    open.into_iter().map(rule).collect()
}

/// Rulings on days after the day of the work: a part cannot be made or expanded later.
fn not_after(
    today: Date,
    leg: &LegInputs<'_>,
    end: &EndInputs,
    head: &Head,
    lot: &Lot,
) -> Vec<Ruling> {
    let mut rulings = Vec::new();
    for (begun, on) in [(Begun::Made, lot.made), (Begun::Expanded, lot.expanded)] {
        let Some(on) = on.filter(|on| *on > today) else {
            continue;
        };
        let ruling = Ruling::on_words(
            CHECK,
            leg.subject_of(end),
            day(on),
            not_after_day(today),
            Word::Job(AgeSaid::DayOfWork.into()),
        );
        let why = AgeSaid::BegunAfterWork {
            of: of_lot(head, lot),
            begun,
            day: on.to_string(),
            today: today.to_string(),
        };
        rulings.push(ruling.failing(why, AgeSaid::ReadLabelAgain));
    }
    rulings
}

/// Compares the storage temperatures with those of the instructions.
fn storage(
    today: Date,
    leg: &LegInputs<'_>,
    end: &EndInputs,
    head: &Head,
    lot: &Lot,
    shelf: &Shelf,
    source: &Word,
) -> Ruling {
    let (least, greatest) = shelf.store_degc;
    let subject = leg.subject_of(end);
    let (coldest, warmest) = (lot.store_degc.0, lot.warmest_degc());
    let may_degc = StoreDegc {
        least_degc: least,
        greatest_degc: greatest,
    };
    let lay_degc = StoreDegc {
        least_degc: coldest,
        greatest_degc: warmest,
    };
    let too_cold = least.zip(coldest).is_some_and(|(limit, t)| t < limit);
    let too_warm = greatest.zip(warmest).is_some_and(|(limit, t)| t > limit);
    let ruling = Ruling::on_words(
        CHECK,
        subject,
        StoreSaid::Lay { at_degc: lay_degc },
        StoreSaid::MayLie { at_degc: may_degc },
        source.to_owned(),
    );
    if too_cold || too_warm {
        let why = StoreSaid::LayOutside {
            of: of_lot(head, lot),
            lay_degc,
            may_degc,
        };
        return ruling.failing(why, AgeSaid::DoNotUse);
    }
    let open = |why: StoreSaid, ask: StoreSaid, fact: Ask| {
        let ruling = Ruling::not_judged(CHECK, leg.subject_of(end), why);
        ruling.with_hint(Said::ask(ask)).asking(fact)
    };
    let unsaid = match (least, greatest) {
        (Some(_), Some(_)) => None,
        (None, Some(_)) => Some(StoreSide::Cold),
        (Some(_), None) => Some(StoreSide::Warm),
        (None, None) => Some(StoreSide::ColdAndWarm),
    };
    if let Some(side) = unsaid {
        let part = head.id.clone();
        let why = StoreSaid::StoreSideNotSaid {
            part: part.clone(),
            side,
        };
        let ask = StoreSaid::AskStoreSide { part, side };
        return open(why, ask, fact::SHELF.of(&head.id));
    }
    // Outside the recorded stays, the temperature of the lot is not known.
    let is_warm_unknown = lot.store_degc.1.is_none() && !lot.stays_reach(today);
    if coldest.is_none() || is_warm_unknown {
        let of = of_lot(head, lot);
        let why = StoreSaid::LayNotWritten { of: of.clone() };
        let ask = StoreSaid::AskHowLay { of };
        let fact = fact::LOT_STORE.of(lot_of(end, &lot.part, head));
        return open(why, ask, fact);
    }
    ruling
}
