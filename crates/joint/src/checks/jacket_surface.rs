//! Is the jacket where the seal will lie in a condition on which the seal may close?
//!
//! As somebody found it, against the conditions that the seal's paper names.
//!
//! Source: the seal's own instructions.

use super::{Check, EndInputs, Inputs, Judge, LegInputs, Listed};
use crate::limit::{Ruling, fact_table as fact};
use crate::said::Of;

pub(super) const CHECK: Check = Check {
    slug: "jacket_surface",
    judge: Judge::End(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let Some(seal) = leg.chosen.seal else {
        return Vec::new();
    };
    let subject = leg.subject_of(end);
    let found: Vec<&str> = inputs
        .order
        .job
        .surfaces
        .iter()
        .filter(|row| row.leg == leg.leg.id && row.phase == end.phase)
        .map(|row| row.jacket.as_str())
        .collect();
    if found.is_empty() {
        let why = "nobody has written down how the jacket is where the seal will lie";
        let ruling = Ruling::not_judged(CHECK.slug, subject, why);
        return vec![ruling.with_hint("Look at it all around before the jacket is cut: scored, wrinkled, embossed, cracked, or smooth.")
            .asking(fact::JACKET.of(Of::end(&leg.leg.id, end.phase)))];
    }
    if seal.jacket_surfaces.is_empty() {
        let why = format!(
            "{} names no condition of the jacket on which it may close",
            seal.head.id
        );
        let ruling = Ruling::not_judged(CHECK.slug, subject, why);
        return vec![
            ruling
                .with_hint(format!(
                    "Ask: On what condition of the jacket may {} close?",
                    seal.head.id
                ))
                .asking(fact::JACKETS.of(&seal.head.id)),
        ];
    }
    let rule = |found: &str| {
        Listed {
            check: CHECK.slug,
            subject: subject.clone(),
            part: &seal.head,
            what: "a jacket that is",
            found,
            permitted: &seal.jacket_surfaces,
            hint: "Stop. Dress the jacket only as the instructions of the seal say, or cut back to where it is as they ask; then look again.",
        }
        .rule()
    };
    found.into_iter().map(rule).collect()
}
