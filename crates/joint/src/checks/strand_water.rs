//! Is there no water in the strands of this end?
//!
//! Only a test for moisture says so: neither blocked strands nor a dry far end do.
//!
//! Source: the test that the job names; that wet strands are not joined is common practice, no source.

use super::{Check, EndInputs, Inputs, Judge, LegInputs};
use crate::limit::{Ruling, Word};

pub(super) const CHECK: Check = Check {
    slug: "strand_water",
    question: "Is there no water in the strands of this end?",
    judge: Judge::End(judge),
};

const HINT: &str = "Stop and call: whoever decides says whether it is cut back, dried or left; test again after it.";

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let job = &inputs.order.job;
    let tests = job
        .moistures
        .iter()
        .filter(|row| row.leg == leg.leg.id && row.phase == end.phase && row.place == "conductor");
    let rulings: Vec<Ruling> = tests
        .map(|test| {
            let found = if test.is_wet { "wet" } else { "dry" };
            let word = if test.is_wet {
                Word::CommonPractice("strands that hold water are not joined".to_owned())
            } else {
                Word::Job(format!("test for moisture ({}), {}", test.how, test.source))
            };
            let subject = leg.subject_of(end);
            let ruling = Ruling::on_words(CHECK.slug, subject, found, "dry", word.source());
            if test.is_wet {
                let why = format!("the strands were found wet ({}, {})", test.how, test.source);
                ruling.failing(why, HINT)
            } else {
                ruling
            }
        })
        .collect();
    if !rulings.is_empty() {
        return rulings;
    }
    let strands = match leg.leg.blocked {
        Some(true) => "its papers say that the strands are blocked, which is no test",
        Some(false) => "the strands are not blocked",
        None => "whether the strands are blocked is not stated",
    };
    let far_end = match leg.leg.far_end_in_water {
        Some(true) => "the far end stands in water or may",
        Some(false) => "somebody looked at the far end and it does not stand in water",
        None => "nobody has said whether the far end stands in water",
    };
    let why = format!("nobody has tested this end for moisture; {strands}; {far_end}");
    let ruling = Ruling::not_judged(CHECK.slug, leg.subject_of(end), why);
    vec![ruling.with_hint("Test the strands and under the shield for moisture after the square cut, as the owner's rules say, and write down who found what.")]
}
