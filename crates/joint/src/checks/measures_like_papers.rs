//! Does the leg measure like its papers?
//!
//! It tells what the cable is made of; never which circuit it is or whether it is dead.
//! The cable table is partly from memory, so it rules nothing until the owner confirms it.
//! Work stops all the same if the readings do not match the papers, until a named person has said which cable it is.
//! If the job's statements about the cable contradict the observations, no table is needed: the check fails.
//!
//! Source: the cable's papers as the job gives them; `data/cable`.

use super::{EndInputs, Inputs, LegInputs, slug};
use crate::cable::Likeness;
use crate::job::End;
use crate::limit::{
    Datum, MemoryRow, Outcome, Reach, Ruling, Word, fact_table as fact, memory_row,
};
use crate::said::{Of, PapersSaid, Said};
use crate::survey::{denied, likeness};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let job = &inputs.order.job;
    let of = End {
        leg: leg.leg,
        phase: end.id.phase,
    };
    let denied = denied(of, &end.survey);
    if !denied.is_empty() {
        return vec![plainly_not(leg, end, denied)];
    }
    let likeness = likeness(of, &end.survey);
    let sentence = Said::from(PapersSaid::of(&likeness));
    let ruling = Ruling::not_judged(CHECK, leg.subject_of(end), sentence.clone());
    if matches!(likeness, Likeness::NotEnough(_)) {
        let missing = leg.missing(inputs);
        return vec![ruling.asking_all(missing.likeness(end.id.phase, &end.survey))];
    }
    let known = Ruling {
        value: Some(Datum::said(PapersSaid::in_short(&likeness))),
        limit: Some(Datum::said(PapersSaid::FitsItsPapers)),
        reach: Reach::Instructions,
        ..ruling
    };
    let is_like = matches!(
        likeness,
        Likeness::FitsPapersOnly | Likeness::FitsOthersAlso(_)
    );
    let row = memory_row(CHECK, None);
    let confirmed = row.and_then(|row| job.confirmations.iter().find(|c| c.key == row.key));
    let Some(confirmed) = confirmed else {
        return vec![unconfirmed(known, row, is_like, end)];
    };
    let source = PapersSaid::TableConfirmed {
        edition: confirmed.edition.clone(),
        source: confirmed.source.clone(),
    };
    let source = Some(source.into());
    if is_like {
        return vec![Ruling {
            source,
            outcome: Outcome::Pass,
            ..known
        }];
    }
    vec![Ruling { source, ..known }.failing(sentence, PapersSaid::NotThisCable)]
}

/// Failing ruling for a cable that was seen or read to differ from the job's statements about it.
fn plainly_not(leg: &LegInputs<'_>, end: &EndInputs, denied: Vec<Said>) -> Ruling {
    let subject = leg.subject_of(end);
    let why = Said::of(&subject, Said::all(denied));
    let ruling = Ruling::on_words(
        CHECK,
        subject,
        PapersSaid::NotAsPapersSay,
        PapersSaid::FitsItsPapers,
        Word::Job(PapersSaid::AsJobStates.into()),
    );
    ruling.failing(why, PapersSaid::NotThisCable)
}

/// Weakens a ruling on an unconfirmed table from memory: nothing is ruled, and work stops if the leg does not measure like its papers.
fn unconfirmed(known: Ruling, row: Option<&MemoryRow>, is_like: bool, end: &EndInputs) -> Ruling {
    let key = row.map_or("", |row| row.key.as_str());
    let source = row.map(|row| {
        let (key, source) = (row.key.clone(), row.source.clone());
        PapersSaid::TableFromMemory { key, source }.into()
    });
    let ruling = Ruling { source, ..known };
    let confirmation = fact::CONFIRMATION.of(key);
    let key = key.to_owned();
    if is_like {
        return ruling
            .with_hint(PapersSaid::ConfirmTable { key })
            .asking(confirmation);
    }
    let cable = fact::CABLE.of(Of::at(&end.id));
    let ruling = ruling.with_hint(PapersSaid::SayWhichAndConfirm { key });
    ruling.asking(cable).asking(confirmation).stopping()
}
