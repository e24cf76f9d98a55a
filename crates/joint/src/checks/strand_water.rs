//! Is there no water in the strands of this end, nor found under its shield?
//!
//! Only a test for moisture says so: neither blocked strands nor a dry far end do.
//!
//! Source: the test that the job names; that a wet end is not joined is common practice, no source.

use super::{Check, EndInputs, Inputs, Judge, LegInputs};
use crate::job::Moisture;
use crate::limit::{Ruling, Word, fact_table as fact};
use crate::said::Of;

pub(super) const CHECK: Check = Check {
    slug: "strand_water",
    question: "Is there no water in the strands of this end, nor found under its shield?",
    judge: Judge::End(judge),
};

const HINT: &str = "Stop and call: whoever decides says whether it is cut back, dried or left; test again after it.";

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let job = &inputs.order.job;
    let is_here = |row: &&Moisture| row.leg == leg.leg.id && row.phase == end.phase;
    let tests: Vec<&Moisture> = job.moistures.iter().filter(is_here).collect();
    let subject = || leg.subject_of(end);
    let ask = || fact::MOISTURE.of(Of::end(&leg.leg.id, end.phase));
    let mut rulings: Vec<Ruling> = Vec::new();
    for test in &tests {
        let (place, how) = (place(test), format!("{}, {}", test.how, test.source));
        if test.is_wet {
            let practice = "an end that holds water is not joined".to_owned();
            let source = Word::CommonPractice(practice.into());
            let ruling = Ruling::on_words(CHECK.slug, subject(), "wet", "dry", source);
            rulings.push(ruling.failing(format!("{place} found wet ({how})"), HINT));
        } else if test.date != job.date {
            let why = format!(
                "{place} found dry on {}; the work is on {}, and an open end takes water",
                test.date, job.date
            );
            let ruling = Ruling::not_judged(CHECK.slug, subject(), why);
            rulings.push(
                ruling
                    .with_hint("Test again after the square cut, and write down who found what.")
                    .asking(ask()),
            );
        } else {
            let source =
                Word::Job(format!("test for moisture ({}), {}", test.how, test.source).into());
            rulings.push(Ruling::on_words(
                CHECK.slug,
                subject(),
                "dry",
                "dry",
                source,
            ));
        }
    }
    let is_tested = |place: &str| tests.iter().any(|test| test.place == place);
    if !is_tested("shield") && is_tested("conductor") {
        let why = "nobody has tested under the shield of this end for moisture";
        let ruling = Ruling::not_judged(CHECK.slug, subject(), why).asking(ask());
        rulings.push(ruling.with_hint("Test under the shield once it is bare, as the owner's rules say, and write down who found what."));
    }
    if is_tested("conductor") {
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
    let why =
        format!("nobody has tested the strands of this end for moisture; {strands}; {far_end}");
    let ruling = Ruling::not_judged(CHECK.slug, leg.subject_of(end), why).asking(ask());
    rulings.push(ruling.with_hint("Test the strands and under the shield for moisture after the square cut, as the owner's rules say, and write down who found what."));
    rulings
}

/// Where a test was made, as the beginning of a sentence.
fn place(test: &Moisture) -> &'static str {
    if test.place == "conductor" {
        "the strands were"
    } else {
        "under the shield it was"
    }
}
