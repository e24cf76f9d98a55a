//! Does the cable's insulation level suit the system's earthing and clearing time?
//!
//! The clearing times of the levels are from memory: they rule nothing until the owner confirms them.
//!
//! Source: `data/limit/from_memory.toml`.

use super::{Inputs, LegInputs, slug};
use crate::cable::Wall;
use crate::limit::{Ask, Datum, Outcome, Ruling, Word, fact_table as fact, memory_row, word_on};
use crate::said::LevelSaid;

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let mut rulings = level(inputs, leg);
    rulings.extend(class(inputs, leg));
    rulings
}

/// Ruling on a cable of a class below the system's nominal voltage; common practice, so it may fail and never pass.
fn class(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Option<Ruling> {
    let nominal_kv = inputs.order.job.system.nominal_kv;
    let class_kv = match leg.leg.cable.wall {
        Wall::Icea { class_kv, .. } => f64::from(class_kv),
        // An IEC cable is judged by its Um, and nobody has read a table of those for this program.
        Wall::Iec { .. } | Wall::Stated(_) => return None,
    };
    if nominal_kv <= class_kv {
        return None;
    }
    let word = Word::CommonPractice(LevelSaid::ClassNotBelowNominal.into());
    let ruling = Ruling {
        value: Some(Datum::Number(nominal_kv)),
        limit: Some(Datum::Number(class_kv)),
        unit: Some("kV"),
        margin: Some(class_kv - nominal_kv),
        source: Some(word.into()),
        ..Ruling::passing(CHECK, leg.subject())
    };
    let why = LevelSaid::ClassBelow {
        class_kv,
        nominal_kv,
    };
    Some(ruling.failing(why, LevelSaid::ClassNotForSystem))
}

fn level(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let job = &inputs.order.job;
    let not_judged =
        |why: LevelSaid, ask: Ask| vec![Ruling::not_judged(CHECK, leg.subject(), why).asking(ask)];
    let word = || word_on(CHECK, &leg.subject());
    let Wall::Icea { level_percent, .. } = leg.leg.cable.wall else {
        return not_judged(LevelSaid::NoLevel, word());
    };
    let Some(row) = memory_row(CHECK, Some(i64::from(level_percent))) else {
        return not_judged(LevelSaid::NoTimeForLevel { level_percent }, word());
    };
    let Some((limit_s, time_s)) = row.clearing_time_greatest_s.zip(job.system.clearing_time_s)
    else {
        let ask = fact::CLEARING_TIME.of("");
        return not_judged(LevelSaid::NoClearingTime, ask);
    };
    let known = Ruling {
        value: Some(Datum::Number(time_s)),
        limit: Some(Datum::Number(limit_s)),
        unit: Some("s"),
        margin: Some(limit_s - time_s),
        source: Some(
            LevelSaid::FromMemory {
                source: (&row.source).into(),
            }
            .into(),
        ),
        ..Ruling::not_judged(
            CHECK,
            leg.subject(),
            LevelSaid::KeyWaits {
                key: row.key.clone(),
                says: (&row.says).into(),
            },
        )
    };
    let Some(confirmed) = job.confirmations.iter().find(|c| c.key == row.key) else {
        return vec![known.asking(fact::CONFIRMATION.of(&row.key))];
    };
    let source = LevelSaid::ConfirmedBy {
        source: (&row.source).into(),
        edition: confirmed.edition.clone(),
        by: confirmed.source.clone(),
    };
    let ruling = Ruling {
        source: Some(source.into()),
        why: None,
        outcome: Outcome::Pass,
        ..known
    };
    vec![if time_s <= limit_s {
        ruling
    } else {
        ruling.failing(
            LevelSaid::ClearedIn {
                time_s,
                says: (&row.says).into(),
            },
            LevelSaid::LevelNotForSystem,
        )
    }]
}
