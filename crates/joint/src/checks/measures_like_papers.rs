//! Does the leg measure like its papers?
//!
//! Says what the cable is made of; never which circuit it is or whether it is dead.
//! The cable table is partly from memory, so nothing rules by it until the owner confirms it; work stops all the same where the readings are not those of the papers, until a named person has said which cable it is.
//! What the job itself states of the cable, and what was seen, contradict each other without any table: that fails.
//!
//! Source: the cable's papers as the job gives them; `data/cable`.

use super::{Check, EndInputs, Inputs, Judge, LegInputs};
use crate::cable::Likeness;
use crate::job::End;
use crate::limit::{Datum, MemoryRow, Outcome, Reach, Ruling, fact_table as fact, memory_row};
use crate::said::Of;
use crate::survey::{denied, likeness, likeness_words};

pub(super) const CHECK: Check = Check {
    slug: "measures_like_papers",
    judge: Judge::End(judge),
};

const HINT: &str = "Stop and call: this is not the cable on the papers.";
/// What a named person does about a cable that is not like its papers.
const WHICH: &str = "Stop and call. A named person says which cable it is: read the print on its jacket, and give the job that cable with the diameters of its own papers.";

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let job = &inputs.order.job;
    let of = End {
        leg: leg.leg,
        phase: end.phase,
    };
    let denied = denied(of, &end.survey, job.words);
    if !denied.is_empty() {
        return vec![plainly_not(leg, end, &denied)];
    }
    let likeness = likeness(of, &end.survey);
    let sentence = likeness.sentence(job.words);
    let ruling = Ruling::not_judged(CHECK.slug, leg.subject_of(end), sentence.clone());
    if matches!(likeness, Likeness::NotEnough(_)) {
        let missing = leg.missing(inputs);
        return vec![ruling.asking_all(missing.likeness(end.phase, &end.survey))];
    }
    let known = Ruling {
        value: Some(Datum::said(likeness_words(&likeness))),
        limit: Some(Datum::said("fits its papers")),
        reach: Reach::Instructions,
        ..ruling
    };
    let is_like = matches!(
        likeness,
        Likeness::FitsPapersOnly | Likeness::FitsOthersAlso(_)
    );
    let row = memory_row(CHECK.slug, None);
    let confirmed = row.and_then(|row| job.confirmations.iter().find(|c| c.key == row.key));
    let Some(confirmed) = confirmed else {
        return vec![unconfirmed(known, row, is_like, leg, end)];
    };
    let source = format!(
        "cable table, edition {}, confirmed by {}",
        confirmed.edition, confirmed.source
    );
    let source = Some(source.into());
    if is_like {
        return vec![Ruling {
            source,
            outcome: Outcome::Pass,
            ..known
        }];
    }
    vec![Ruling { source, ..known }.failing(sentence, HINT)]
}

/// What was seen, or read, against what the job itself says of the cable.
fn plainly_not(leg: &LegInputs<'_>, end: &EndInputs, denied: &[String]) -> Ruling {
    let subject = leg.subject_of(end);
    let why = format!("{}: {}", subject.words(), denied.join("; "));
    let source = "job: the cable's papers, as the job states them".to_owned();
    let ruling = Ruling::on_words(
        CHECK.slug,
        subject,
        "not as its papers say",
        "fits its papers",
        source,
    );
    ruling.failing(why, HINT)
}

/// The table is from memory: nothing rules, and where the leg is not like its papers work stops.
fn unconfirmed(
    known: Ruling,
    row: Option<&MemoryRow>,
    is_like: bool,
    leg: &LegInputs<'_>,
    end: &EndInputs,
) -> Ruling {
    let key = row.map_or("", |row| row.key.as_str());
    let source = row.map(|row| format!("partly from memory (key {key}): {}", row.source).into());
    let confirm = format!(
        "The owner confirms the cable table with a row `[[confirmation]]`, key = \"{key}\": docs/howto/answer-what-is-asked.md."
    );
    let ruling = Ruling { source, ..known };
    let confirmation = fact::CONFIRMATION.of(key);
    if is_like {
        return ruling.with_hint(confirm).asking(confirmation);
    }
    let cable = fact::CABLE.of(Of::end(&leg.leg.id, end.phase));
    let ruling = ruling.with_hint(format!("{WHICH} {confirm}"));
    ruling.asking(cable).asking(confirmation).stopping()
}
