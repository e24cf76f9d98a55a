//! Is there no water in the strands of this end, and was none found under its shield?
//!
//! Only a moisture test can show this; neither blocked strands nor a dry far end can.
//!
//! Source: the test that the job names; that a wet end is not joined is common practice, no source.

use super::{EndInputs, Inputs, LegInputs, slug};
use crate::job::Moisture;
use crate::limit::{Ruling, Word, fact_table as fact};
use crate::said::{MoistureSaid, Of, TestedPlace};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let job = &inputs.order.job;
    let tests = job.moistures.of(&end.id);
    let subject = || leg.subject_of(end);
    let ask = || fact::MOISTURE.of(Of::at(&end.id));
    let mut rulings: Vec<Ruling> = Vec::new();
    for test in tests {
        let (how, source) = (test.how.clone(), test.source.clone());
        let place = place(test);
        if test.is_wet {
            let (wet, dry) = (MoistureSaid::Wet, MoistureSaid::Dry);
            let practice = Word::CommonPractice(MoistureSaid::WetIsNotJoined.into());
            let ruling = Ruling::on_words(CHECK, subject(), wet, dry, practice);
            let why = MoistureSaid::FoundWet { place, how, source };
            rulings.push(ruling.failing(why, MoistureSaid::StopAndCall));
        } else if test.date != job.date {
            let why = MoistureSaid::FoundDryBefore {
                place,
                tested: test.date.to_string(),
                work: job.date.to_string(),
            };
            let ruling = Ruling::not_judged(CHECK, subject(), why);
            rulings.push(ruling.with_hint(MoistureSaid::TestAgain).asking(ask()));
        } else {
            let word = Word::Job(MoistureSaid::Test { how, source }.into());
            let dry = || MoistureSaid::Dry;
            rulings.push(Ruling::on_words(CHECK, subject(), dry(), dry(), word));
        }
    }
    let is_tested = |place: &str| tests.iter().any(|test| test.place == place);
    if !is_tested("shield") && is_tested("conductor") {
        let why = MoistureSaid::ShieldNotTested;
        let ruling = Ruling::not_judged(CHECK, subject(), why).asking(ask());
        rulings.push(ruling.with_hint(MoistureSaid::TestUnderShield));
    }
    if is_tested("conductor") {
        return rulings;
    }
    let why = MoistureSaid::StrandsNotTested {
        blocked: leg.leg.blocked,
        far_end_in_water: leg.leg.far_end_in_water,
    };
    let ruling = Ruling::not_judged(CHECK, leg.subject_of(end), why).asking(ask());
    rulings.push(ruling.with_hint(MoistureSaid::TestStrands));
    rulings
}

/// Place of a test.
fn place(test: &Moisture) -> TestedPlace {
    if test.place == "conductor" {
        TestedPlace::Strands
    } else {
        TestedPlace::UnderShield
    }
}
