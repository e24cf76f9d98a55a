//! Are the parts rated for this system: its highest voltage, its earthing, and this kind of joint?
//!
//! Source: the parts' own instructions.

use super::{Inputs, LegInputs, Listed, Rated, slug};
use crate::catalogue::{Body, Head};
use crate::job::JointKind;
use crate::limit::{Ruling, Word, fact_table as fact};
use crate::said::{BodySaid, Served, ServesFor};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let highest_kv = inputs.order.job.system.highest_kv;
    let mut rulings = Vec::new();
    if let Some(adapter) = leg.chosen.adapter {
        rulings.push(rated(
            leg,
            &adapter.head,
            adapter.system_greatest_kv,
            highest_kv,
        ));
    }
    let Some(body) = leg.chosen.body else {
        return rulings;
    };
    rulings.push(rated(leg, &body.head, body.system_greatest_kv, highest_kv));
    let earthing = inputs.order.job.system.earthing.as_str();
    let asked = [
        (earthing, &body.earthings, ServesFor::Earthing),
        (inputs.kind().name(), &body.kinds, ServesFor::Kind),
    ];
    rulings.extend(asked.into_iter().map(|(found, permitted, what)| {
        Listed {
            check: CHECK,
            subject: leg.subject(),
            part: &body.head,
            what,
            found: Served::Word(found.to_owned()),
            permitted: Served::words(permitted),
            hint: BodySaid::UseRated.into(),
        }
        .rule()
    }));
    if inputs.kind() == JointKind::Branch {
        rulings.push(mouths(leg, body, inputs.legs.len()));
    }
    rulings
}

/// Compares the number of legs with the mouths of a branch body.
fn mouths(leg: &LegInputs<'_>, body: &Body, n_legs: usize) -> Ruling {
    let id = &body.head.id;
    let Some(greatest) = body.legs else {
        let why = BodySaid::LegsNotSaid { row: id.clone() };
        let ruling = Ruling::not_judged(CHECK, leg.subject(), why);
        return ruling.asking(fact::MOUTHS.of(id));
    };
    let source = Word::Instructions(body.head.source().into());
    let ruling = Ruling::on_words(
        CHECK,
        leg.subject(),
        BodySaid::Legs { n_legs },
        BodySaid::LegInEveryMouth { greatest },
        source,
    );
    if i64::try_from(n_legs).is_ok_and(|n| n == greatest) {
        return ruling;
    }
    let why = BodySaid::TakesOtherLegs {
        body: id.clone(),
        greatest,
        n_legs,
    };
    ruling.failing(why, BodySaid::UseWithMouths)
}

fn rated(leg: &LegInputs<'_>, part: &Head, rated_kv: f64, highest_kv: f64) -> Ruling {
    Rated {
        check: CHECK,
        subject: leg.subject(),
        part,
        rated_kv,
        highest_kv,
    }
    .rule()
}
