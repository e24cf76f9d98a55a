//! Is the gap before the screen edge no nearer to a discharge than the worst that the instructions allow, and would neither it nor the film along a tapered plug discharge in service?
//!
//! The gap passes only if it passes empty, unless the row calls its filler permanent.
//! A gas breaks down at the crest of the voltage.
//! The voltage that rules is the highest continuous voltage to earth; without solid earthing, also the voltage between phases while an earth fault is cleared.
//! The computed inception assumes a uniform field along the shortest straight ways and a free starting electron; a filled gap counts as a thread of air across the filler.
//!
//! Source: `docs/theory/gap.md`.

use super::{Inputs, LegInputs, slug, solved};
use crate::ask::asking;
use crate::limit::{AmountQuestion, Outcome, Ruling, Word, word_on};
use crate::said::{GapLevel, GapSaid, Said};
use crate::study::{Across, PlugStudy, SolvedStudy, Worst, inception};
use jointwright_numerics::gas::Curve;
use jointwright_units::VoltageRms;

const CHECK: &str = slug(module_path!());

/// Ratio of extinction voltage to inception voltage: common practice, no source.
const EXTINCTION_RATIO: f64 = 0.75;

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let mut rulings = plug(inputs, leg);
    let done = match solved(CHECK, GapSaid::Edge, inputs, leg) {
        Ok(done) => done,
        Err(unsolved) => {
            rulings.extend(unsolved);
            return asking(rulings, || vec![word_on(CHECK, &leg.subject())]);
        }
    };
    let filler = &done.input.profile.step.filler;
    let permanent = filler.as_ref().is_some_and(|filler| filler.is_permanent);
    rulings.push(against_allowed(inputs, leg, done, permanent));
    if let Some(gap) = judged_gap(&done.here, permanent) {
        // Grease does not break down like air.
        let name = if permanent {
            GapSaid::EdgeFilled
        } else {
            GapSaid::Edge
        };
        for level in levels(inputs) {
            rulings.extend(against_gas(leg, &name, gap, level));
        }
    }
    rulings.extend(at_trial(inputs, leg, done, permanent));
    asking(rulings, || {
        let missing = leg.missing(inputs).field();
        if missing.is_empty() {
            vec![word_on(CHECK, &leg.subject())]
        } else {
            missing
        }
    })
}

/// Rulings on the film along the tapered plug: only the row's own film is known, so it may fail and never pass.
fn plug(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let PlugStudy::Done(worst) = leg.plug.as_ref() else {
        return Vec::new();
    };
    let gap = worst.judged_gap().unwrap_or_default();
    let name = if worst.is_permanent {
        GapSaid::FilmFilled
    } else {
        GapSaid::Film
    };
    levels(inputs)
        .into_iter()
        .filter_map(|level| against_gas(leg, &name, gap, level))
        .collect()
}

/// Ruling on a gap that would discharge during the trial: it decides nothing, but the reader of the trial must know it.
fn at_trial(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    done: &SolvedStudy,
    permanent: bool,
) -> Option<Ruling> {
    let trial = inputs.order.job.trial.as_ref()?;
    let worst = done.trial.as_ref().map_or(&done.here, |trial| &trial.here);
    let gap = judged_gap(worst, permanent)?;
    let level = trial.sine_of_same_crest();
    let multiple = inception(gap, Curve::LowerOfBoth)?.v() / level.v();
    (multiple < 1.0).then(|| {
        let at_trial = GapSaid::AtTrial {
            multiple,
            level_kv: trial.level_kv,
            is_rectangular: trial.is_rectangular,
            from: trial.from.clone(),
        };
        let why = Said::of(GapSaid::Edge, at_trial);
        Ruling::not_judged(CHECK, leg.subject(), why).with_hint(GapSaid::TellTrial)
    })
}

/// Gap to judge: empty, unless the row calls the filler permanent.
fn judged_gap(worst: &Worst, permanent: bool) -> Option<&[Across]> {
    let gap = if permanent {
        worst.gap_filled.as_ref()
    } else {
        worst.gap_empty.as_ref().or(worst.gap_filled.as_ref())
    };
    gap.map(|(gap, _)| gap.as_slice())
}

/// Greatest relative error of the voltages across a gap.
fn gap_error(worst: &Worst, permanent: bool) -> f64 {
    let gap = judged_gap(worst, permanent).unwrap_or_default();
    let errors = gap
        .iter()
        .filter(|place| place.share_ratio > 0.0)
        .map(|place| place.error_ratio / place.share_ratio);
    errors.fold(0.0, f64::max)
}

/// Levels for the gap: the name, its ratio to inception, and the voltage.
fn levels(inputs: &Inputs<'_>) -> Vec<(GapLevel, f64, VoltageRms)> {
    let service = inputs.order.job.system.voltage();
    let mut levels = vec![
        (GapLevel::InceptionInService, 1.0, service),
        (GapLevel::ExtinctionInService, EXTINCTION_RATIO, service),
    ];
    if let Some(fault) = inputs.order.job.system.voltage_in_earth_fault() {
        levels.push((GapLevel::InceptionInFault, 1.0, fault));
        levels.push((GapLevel::ExtinctionInFault, EXTINCTION_RATIO, fault));
    }
    levels
}

/// Rules on the discharge voltage of the gap, as a multiple of the voltage that rules: it must be at least one.
fn against_gas(
    leg: &LegInputs<'_>,
    name: &GapSaid,
    gap: &[Across],
    (level, ratio, voltage): (GapLevel, f64, VoltageRms),
) -> Option<Ruling> {
    let multiple =
        |curve: Curve| inception(gap, curve).map(|volts| ratio * volts.v() / voltage.v());
    let (read, lower) = (multiple(Curve::Townsend)?, multiple(Curve::LowerOfBoth)?);
    let practice = GapSaid::NoneDischarges {
        extinction_ratio: EXTINCTION_RATIO,
    };
    let word = Word::CommonPractice(practice.into());
    let ruling = AmountQuestion {
        check: CHECK,
        subject: leg.subject(),
        what: GapSaid::Against {
            subject: leg.subject(),
            gap: name.clone().into(),
            level,
            kv: voltage.kv(),
        }
        .into(),
        value: read,
        error: 0.0,
        least: Some(1.0),
        greatest: None,
        unit: "times",
        word: &word,
        hint: GapSaid::EngineerDecides.into(),
    }
    .rule();
    if ruling.outcome == Outcome::Fail {
        return Some(ruling);
    }
    // Common practice never passes; a gap that does not fail here has the ruling of `against_allowed`.
    (lower < 1.0).then(|| {
        let about = Said::listed([name.clone().into(), GapSaid::Level(level).into()]);
        let why = Said::of(about, GapSaid::ByCurves { read, lower });
        Ruling::not_judged(CHECK, leg.subject(), why)
    })
}

/// Compares the voltage across the gap with the worst that the instructions allow, each as a ratio to its own inception.
fn against_allowed(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    done: &SolvedStudy,
    permanent: bool,
) -> Ruling {
    let subject = leg.subject();
    let allowed = match &done.allowed {
        Ok(allowed) => allowed,
        Err(why) => {
            let why = Said::of(GapSaid::Edge, why);
            return Ruling::not_judged(CHECK, subject, why);
        }
    };
    let Some(body) = leg.chosen.body else {
        return Ruling::not_judged(CHECK, subject, GapSaid::BodyOpen);
    };
    // Ratio of the service voltage to the discharge voltage; 0 if no gap lies in the field.
    let loading = |worst: &Worst| {
        judged_gap(worst, permanent)
            .and_then(|gap| inception(gap, Curve::Townsend))
            .map_or(0.0, |volts| {
                inputs.order.job.system.voltage().v() / volts.v()
            })
    };
    let (here, most) = (loading(&done.here), loading(allowed));
    let word = Word::WorstAllowed(Said::listed([
        body.head.source().into(),
        GapSaid::AtOwnWall.into(),
    ]));
    AmountQuestion {
        check: CHECK,
        subject,
        what: GapSaid::ServiceOverDischarge {
            subject: leg.subject(),
            is_filled: permanent,
        }
        .into(),
        value: here,
        // Both values already include their own error, on the unfavourable side; the limit's error counts again in the other direction.
        error: if done.is_within() {
            0.0
        } else {
            2.0 * most * gap_error(allowed, permanent)
        },
        least: None,
        greatest: Some(most),
        unit: "times",
        word: &word,
        hint: GapSaid::EngineerDecides.into(),
    }
    .rule()
}
