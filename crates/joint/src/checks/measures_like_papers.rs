//! Does the leg measure like its papers?
//!
//! Says what the cable is made of; never which circuit it is or whether it is dead.
//! The cable table is partly from memory, so nothing rules here until the owner confirms it.
//!
//! Source: `data/cable`.

use super::{Check, EndInputs, Inputs, Judge, LegInputs};
use crate::cable::Likeness;
use crate::limit::{Datum, Outcome, Reach, Ruling, memory_row};
use crate::survey::{likeness, likeness_words};

pub(super) const CHECK: Check = Check {
    slug: "measures_like_papers",
    question: "Does the leg measure like its papers?",
    judge: Judge::End(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let job = &inputs.order.job;
    let likeness = likeness(
        crate::job::End {
            leg: leg.leg,
            phase: end.phase,
        },
        &end.survey,
    );
    let sentence = likeness.sentence(job.words);
    if matches!(likeness, Likeness::NotEnough(_)) {
        return vec![Ruling::not_judged(
            CHECK.slug,
            leg.subject_of(end),
            sentence,
        )];
    }
    let found = likeness_words(&likeness);
    let source = memory_row(CHECK.slug, None);
    let known = Ruling {
        value: Some(Datum::text(found)),
        limit: Some(Datum::text("fits its papers")),
        reach: Reach::Instructions,
        ..Ruling::not_judged(CHECK.slug, leg.subject_of(end), sentence.clone())
    };
    let confirmed = source.and_then(|row| job.confirmations.iter().find(|c| c.key == row.key));
    let ruling = match confirmed {
        None => Ruling {
            source: source
                .map(|row| format!("partly from memory (key {}): {}", row.key, row.source)),
            ..known
        },
        Some(confirmed) => {
            let source = Some(format!(
                "cable table, edition {}, confirmed by {}",
                confirmed.edition, confirmed.source
            ));
            match likeness {
                Likeness::FitsPapersOnly | Likeness::FitsOthersAlso(_) => Ruling {
                    source,
                    outcome: Outcome::Pass,
                    ..known
                },
                _ => Ruling { source, ..known }.failing(
                    sentence,
                    "Stop and call: this is not the cable on the papers.",
                ),
            }
        }
    };
    vec![ruling]
}
