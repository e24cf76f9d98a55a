//! Does the cable's insulation level suit the system's earthing and clearing time?
//!
//! The clearing times that go with the levels are here from memory: they rule nothing until the owner confirms them.
//!
//! Source: `data/limit/from_memory.toml`.

use super::{Check, Inputs, Judge, LegInputs};
use crate::cable::Wall;
use crate::limit::{Ask, Datum, Outcome, Ruling, fact_table as fact, memory_row, word_on};

pub(super) const CHECK: Check = Check {
    slug: "cable_level",
    question: "Does the cable's insulation level suit the system's earthing and clearing time?",
    judge: Judge::Leg(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let mut rulings = level(inputs, leg);
    rulings.extend(class(inputs, leg));
    rulings
}

/// A cable of a class below the system's nominal voltage; common practice, so it may fail and never pass.
fn class(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Option<Ruling> {
    let nominal_kv = inputs.order.job.system.nominal_kv;
    let class_kv = match leg.leg.cable.wall {
        Wall::Icea { class_kv, .. } => f64::from(class_kv),
        // An IEC cable is held to its Um, and no table of those was read here.
        Wall::Iec { .. } | Wall::Stated(_) => return None,
    };
    if nominal_kv <= class_kv {
        return None;
    }
    let source = "common practice, no source: a cable's class is not below the nominal voltage";
    let ruling = Ruling {
        value: Some(Datum::Number(nominal_kv)),
        limit: Some(Datum::Number(class_kv)),
        unit: Some("kV"),
        margin: Some(class_kv - nominal_kv),
        ..Ruling::on_words(CHECK.slug, leg.subject(), "", "", source.to_owned())
    };
    Some(ruling.failing(
        format!("the cable is of the {class_kv} kV class; the system's nominal voltage is {nominal_kv} kV"),
        "Stop and call: this cable is not for this system.",
    ))
}

fn level(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let job = &inputs.order.job;
    let not_judged =
        |why: &str, ask: Ask| vec![Ruling::not_judged(CHECK.slug, leg.subject(), why).asking(ask)];
    let word = || word_on(CHECK.slug, &leg.subject());
    let Wall::Icea { level_percent, .. } = leg.leg.cable.wall else {
        return not_judged(
            "the cable's papers give no insulation level in percent, and no other rule is read here",
            word(),
        );
    };
    let Some(row) = memory_row(CHECK.slug, Some(i64::from(level_percent))) else {
        let why = format!("no clearing time is known for the {level_percent} percent level");
        return not_judged(&why, word());
    };
    let Some((limit_s, time_s)) = row.clearing_time_greatest_s.zip(job.system.clearing_time_s)
    else {
        return not_judged("the job gives no clearing time", fact::CLEARING_TIME.of(""));
    };
    let known = Ruling {
        value: Some(Datum::Number(time_s)),
        limit: Some(Datum::Number(limit_s)),
        unit: Some("s"),
        margin: Some(limit_s - time_s),
        source: Some(format!("from memory: {}", row.source).into()),
        ..Ruling::not_judged(
            CHECK.slug,
            leg.subject(),
            format!(
                "key {} waits for the owner, with edition and date: \"{}\" is from memory",
                row.key, row.says
            ),
        )
    };
    let Some(confirmed) = job.confirmations.iter().find(|c| c.key == row.key) else {
        return vec![known.asking(fact::CONFIRMATION.of(&row.key))];
    };
    let (edition, by) = (&confirmed.edition, &confirmed.source);
    let source = format!("{}, edition {edition}, confirmed by {by}", row.source);
    let source = Some(source.into());
    let ruling = Ruling {
        source,
        why: None,
        outcome: Outcome::Pass,
        ..known
    };
    vec![if time_s <= limit_s {
        ruling
    } else {
        ruling.failing(
            format!("earth faults are cleared in {time_s} s; {}", row.says),
            "Stop and call: this cable's level is not for this system.",
        )
    }]
}
