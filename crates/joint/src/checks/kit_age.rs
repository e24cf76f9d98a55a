//! Is every part on the truck within its date and its storage temperatures on the day of the work?
//!
//! The day on the label and the months in the instructions are hard; past either it stays a fail.
//!
//! Source: the label, and the part's own instructions.

use super::{Check, EndInputs, Inputs, Judge, LegInputs};
use crate::catalogue::{Head, Shelf};
use crate::job::Lot;
use crate::limit::{Ask, Ruling, Word, fact_table as fact};
use crate::said::Said;
use crate::said::{EndOf, Of, PartKind};
use jiff::ToSpan;
use jiff::civil::Date;

pub(super) const CHECK: Check = Check {
    slug: "kit_age",
    judge: Judge::End(judge),
};

/// Parts that age on the shelf.
const RUBBER: &[&str] = &["body", "adapter", "seal"];
const HINT: &str = "Do not use it. Set it aside, marked, and take another.";

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
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
    let lots: Vec<&Lot> = inputs.lots(&leg.leg.id, end.phase, part).collect();
    if lots.is_empty() {
        return match &head.shelf {
            Some(_) => {
                let why = format!("{}: its lot and date are not written down", head.id);
                let ruling = Ruling::not_judged(CHECK.slug, leg.subject_of(end), why);
                vec![ruling.asking(fact::LOT.of(lot_of(leg, end, part, head)))]
            }
            // Rubber ages wherever it lies; metal is not asked for.
            None if RUBBER.contains(&part) => vec![
                Ruling::not_judged(
                    CHECK.slug,
                    leg.subject_of(end),
                    format!(
                        "{}: neither its row nor a label gives an age limit",
                        head.id
                    ),
                )
                .asking(fact::SHELF.of(&head.id)),
            ],
            None => Vec::new(),
        };
    }
    lots.into_iter()
        .flat_map(|lot| on_lot(inputs.order.job.date, leg, end, head, lot))
        .collect()
}

/// A part on the truck, as an ask names it.
fn lot_of(leg: &LegInputs<'_>, end: &EndInputs, part: &str, head: &Head) -> Of {
    let mut kinds = PartKind::ALL.into_iter();
    let kind = kinds.find(|kind| kind.file_name() == part);
    let end = EndOf::new(&leg.leg.id, end.phase);
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
            CHECK.slug,
            leg.subject_of(end),
            today.to_string(),
            format!("not after {last}"),
            source,
        );
        if today <= last {
            ruling
        } else {
            ruling.failing(
                format!(
                    "{}, lot {}: its last day was {last}; the work is on {today}",
                    head.id, lot.lot
                ),
                HINT,
            )
        }
    };
    if let Some(expires) = lot.expires {
        rulings.push(until(expires, format!("label of lot {}", lot.lot).into()));
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
    let from = if shelf.from == "expanded" {
        lot.expanded
    } else {
        lot.made
    };
    match from.and_then(|from| from.checked_add(shelf.months.months()).ok()) {
        Some(last) => rulings.push(until(last, source.clone().into())),
        // The maker counted the months when the label was printed.
        None if lot.expires.is_some() => {}
        None => rulings.push(
            Ruling::not_judged(
                CHECK.slug,
                leg.subject_of(end),
                format!(
                    "{}, lot {}: {} months run from the day it was {}, which is not written down",
                    head.id, lot.lot, shelf.months, shelf.from
                ),
            )
            .asking(fact::LOT_DAY.of(lot_of(leg, end, &lot.part, head))),
        ),
    }
    rulings.push(storage(today, leg, end, head, lot, shelf, &source));
    rulings
}

/// A label may print a day that is past.
fn unread_label(leg: &LegInputs<'_>, end: &EndInputs, head: &Head, lot: &Lot) -> Ruling {
    let (id, name) = (&head.id, &lot.lot);
    let why =
        format!("{id}, lot {name}: whether its label prints an expiry date is not written down");
    let ask = format!("Ask: What expiry date does the label of lot {name} of {id} print, if any?");
    let ruling = Ruling::not_judged(CHECK.slug, leg.subject_of(end), why).with_hint(ask);
    ruling.asking(fact::LABEL_DATE.of(lot_of(leg, end, &lot.part, head)))
}

/// What is open of rubber whose row says nothing of its store.
fn without_shelf(leg: &LegInputs<'_>, end: &EndInputs, head: &Head, lot: &Lot) -> Vec<Ruling> {
    let id = &head.id;
    let mut open = vec![format!(
        "{id}: at what temperatures it may lie in store its row does not say"
    )];
    if lot.expires.is_none() {
        open.push(format!(
            "{id}: neither its row nor a label gives an age limit"
        ));
    }
    let ask = format!("Ask: For how long, and at what temperatures, may {id} lie in store?");
    let rule = |why: String| {
        let ruling = Ruling::not_judged(CHECK.slug, leg.subject_of(end), why).with_hint(&*ask);
        ruling.asking(fact::SHELF.of(id))
    };
    open.into_iter().map(rule).collect()
}

/// A part cannot be made or expanded after the day of the work.
fn not_after(
    today: Date,
    leg: &LegInputs<'_>,
    end: &EndInputs,
    head: &Head,
    lot: &Lot,
) -> Vec<Ruling> {
    let mut rulings = Vec::new();
    for (what, day) in [("made", lot.made), ("expanded", lot.expanded)] {
        if let Some(day) = day.filter(|day| *day > today) {
            let source = "job: the day of the work".to_owned();
            let ruling = Ruling::on_words(
                CHECK.slug,
                leg.subject_of(end),
                day.to_string(),
                format!("not after {today}"),
                source,
            );
            rulings.push(ruling.failing(
                format!(
                    "{}, lot {}: {what} on {day}, after the day of the work, {today}",
                    head.id, lot.lot
                ),
                "Read the label and the day of the job again.",
            ));
        }
    }
    rulings
}

/// Storage temperatures against those of the instructions.
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
    let permitted = format!(
        "{} to {} degC",
        least.map_or("any".to_owned(), |t| t.to_string()),
        greatest.map_or("any".to_owned(), |t| t.to_string())
    );
    let lay = format!(
        "{} to {} degC",
        coldest.map_or("?".to_owned(), |t| t.to_string()),
        warmest.map_or("?".to_owned(), |t| t.to_string())
    );
    let too_cold = least.zip(coldest).is_some_and(|(limit, t)| t < limit);
    let too_warm = greatest.zip(warmest).is_some_and(|(limit, t)| t > limit);
    let (id, name) = (&head.id, &lot.lot);
    let ruling = Ruling::on_words(CHECK.slug, subject, &lay, &permitted, source.to_owned());
    if too_cold || too_warm {
        let why = format!("{id}, lot {name}: it lay at {lay}; {permitted} is permitted");
        return ruling.failing(why, HINT);
    }
    let open = |why: String, ask: String, fact: Ask| {
        let ruling = Ruling::not_judged(CHECK.slug, leg.subject_of(end), why);
        ruling.with_hint(format!("Ask: {ask}")).asking(fact)
    };
    let unsaid = match (least, greatest) {
        (Some(_), Some(_)) => None,
        (None, Some(_)) => Some("cold"),
        (Some(_), None) => Some("warm"),
        (None, None) => Some("cold and how warm"),
    };
    if let Some(unsaid) = unsaid {
        return open(
            format!("{id}: how {unsaid} it may lie in store its row does not say"),
            format!("How {unsaid} may {id} lie in store?"),
            fact::SHELF.of(id),
        );
    }
    // What its stays leave open lay at no known temperature.
    let is_warm_unknown = lot.store_degc.1.is_none() && !lot.stays_reach(today);
    if coldest.is_none() || is_warm_unknown {
        return open(
            format!("{id}, lot {name}: how cold and how warm it lay is not written down"),
            format!("How cold and how warm did lot {name} of {id} lie in store and on the truck?"),
            fact::LOT_STORE.of(lot_of(leg, end, &lot.part, head)),
        );
    }
    ruling
}
