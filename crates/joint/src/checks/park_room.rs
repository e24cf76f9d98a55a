//! Is there room to park the body, and the seals behind it, on the leg that parks?
//!
//! Source: the parked lengths in the instructions of the body and the seal.

use super::{Inputs, LegInputs, slug};
use crate::catalogue::{GoesOn, Head, Seal};
use crate::job::JointKind;
use crate::limit::{
    Ask, Bound, Known, Limit, Outcome, Question, Reach, Ruling, Subject, Word, fact_table as fact,
};
use crate::said::{ChoiceSaid, ParkSaid, PartKind, Said};
use jointwright_units::{Interval, Length};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>) -> Vec<Ruling> {
    let is_separable = inputs.kind() == JointKind::Separable;
    let is_named = inputs.legs.iter().any(|leg| leg.leg.parks);
    let mut rulings: Vec<Ruling> = inputs
        .legs
        .iter()
        .map(|leg| {
            if is_separable || is_named {
                on_leg(inputs, leg, leg.leg.parks || is_separable)
            } else {
                on_any_leg(inputs, leg)
            }
        })
        .collect();
    // In a straight joint or a branch joint, one body goes over everything, so one leg must hold it first.
    if !is_separable && !is_named {
        let ruling = Ruling::not_judged(CHECK, Subject::joint(), ParkSaid::NoLegParks);
        rulings.push(ruling.asking(fact::PARKS.of("")));
    }
    let n_parking = inputs.legs.iter().filter(|l| l.leg.parks).count();
    if !is_separable && n_parking > 1 {
        let kind = inputs.kind();
        let source = Word::Job(ParkSaid::HasOneBody { kind }.into());
        let found = ParkSaid::Legs { n_legs: n_parking };
        let permitted = ParkSaid::Legs { n_legs: 1 };
        let ruling = Ruling::on_words(CHECK, Subject::joint(), found, permitted, source);
        let why = ParkSaid::LegsParkOneBody { n_legs: n_parking };
        rulings.push(ruling.failing(why, ParkSaid::NameLeg));
    }
    rulings
}

/// Rules on the room of a leg if nobody names the leg on which the body parks: it passes only if the body would have room here, too.
fn on_any_leg(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Ruling {
    let own = on_leg(inputs, leg, false);
    let with_body = on_leg(inputs, leg, true);
    if own.outcome != Outcome::Pass || with_body.outcome == Outcome::Pass {
        return if own.outcome == Outcome::Pass {
            with_body
        } else {
            own
        };
    }
    Ruling::not_judged(CHECK, leg.subject(), ParkSaid::RoomForSealOnly).asking(fact::PARKS.of(""))
}

/// Rules on the room of one leg for its own seal, and for the body if it is slid onto this leg.
fn on_leg(inputs: &Inputs<'_>, leg: &LegInputs<'_>, takes_body: bool) -> Ruling {
    let subject = leg.subject();
    let needed = match needed(leg, takes_body) {
        Ok(needed) => needed,
        Err(why) => {
            let asks = unknown_lengths(inputs, leg, takes_body);
            return Ruling::not_judged(CHECK, subject, why).asking_all(asks);
        }
    };
    let Some(room) = leg.leg.room.park_room else {
        if needed.0 == Length::ZERO {
            let (found, permitted) = (ParkSaid::NothingSlidOn, ParkSaid::RoomForWhatIs);
            let source = Word::Instructions(needed.1);
            return Ruling::on_words(CHECK, subject, found, permitted, source);
        }
        let why = ParkSaid::NotMeasured;
        let ask = fact::PARK_ROOM.of(&leg.leg.id);
        return Ruling::not_judged(CHECK, subject, why).asking(ask);
    };
    leg.on_room(Question {
        check: CHECK,
        what: ParkSaid::Room {
            subject: subject.clone(),
        }
        .into(),
        subject,
        value: Known::exact(Interval::point(room)),
        limit: &Limit {
            bound: Bound::AtLeast(needed.0),
            word: Word::Instructions(needed.1),
        },
        reach: Reach::Instructions,
        hint: ParkSaid::ParkElsewhere.into(),
    })
}

/// Asks for the missing facts about the lengths of the parked parts.
fn unknown_lengths(inputs: &Inputs<'_>, leg: &LegInputs<'_>, takes_body: bool) -> Vec<Ask> {
    let is_parked = leg.chosen.seal.is_none_or(|s| seal_parks(s, takes_body));
    let seal = leg.chosen.seal.map(|s| (&s.head, s.parked_length));
    let body = leg.chosen.body.map(|b| (&b.head, b.parked_length));
    let parked = [
        (PartKind::Seal, is_parked, seal),
        (PartKind::Body, takes_body, body),
    ];
    let parked = parked.into_iter().filter(|(_, is_asked, _)| *is_asked);
    let unknown = parked.filter_map(|(what, _, part)| match part {
        None => Some(leg.missing(inputs).part(what)),
        Some((head, None)) => Some(fact::PARKED_LENGTH.of(&head.id)),
        Some(_) => None,
    });
    unknown.collect()
}

/// Whether a seal is slid onto this leg: a seal over the whole joint goes with the body, and a wrapped seal is never slid on.
fn seal_parks(seal: &Seal, takes_body: bool) -> bool {
    seal.comes_by() != Some(GoesOn::Wrapped) && (takes_body || !seal.spans_joint)
}

/// Length of the parked parts, and its source.
fn needed(leg: &LegInputs<'_>, takes_body: bool) -> Result<(Length, Said), Said> {
    let parked = |part: PartKind, row: Option<(&Head, Option<Length>)>| {
        let (head, length) = row.ok_or(ChoiceSaid::NotNamed { part })?;
        let row = head.id.clone();
        let length = length.ok_or(ParkSaid::LengthNotSaid { row })?;
        Ok::<_, Said>((length, Said::from(head.source())))
    };
    let seal = leg.chosen.seal;
    let (mut length, mut source) = match seal {
        Some(seal) if !seal_parks(seal, takes_body) => (Length::ZERO, seal.head.source().into()),
        _ => parked(PartKind::Seal, seal.map(|s| (&s.head, s.parked_length)))?,
    };
    if takes_body {
        let body = leg.chosen.body.map(|b| (&b.head, b.parked_length));
        let (of_body, word) = parked(PartKind::Body, body)?;
        length += of_body;
        source = Said::all([word, source]);
    }
    Ok((length, source))
}
