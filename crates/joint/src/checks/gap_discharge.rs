//! Is the gap before the screen edge no nearer to a discharge than the worst that the instructions allow, and would neither it nor the film along a tapered plug discharge in service?
//!
//! Filled and empty: it passes only if it passes empty, unless the row calls the filler permanent there.
//! A gas breaks down at the crest; the voltage that rules is the highest continuous one to earth, and while an earth fault is cleared that between phases where earthing is not solid.
//! A computed inception is that of an even field along the shortest straight ways, with a starting electron at hand; filled it is that of a thread of air across the filler.
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

/// Extinction over inception: common practice, no source.
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
        // Grease itself does not break down as air does.
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

/// The film along the tapered plug: its row's own film is all that there is, so it can only fail; that it does not is no pass.
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

/// What is said where the gap would discharge during the trial: it decides nothing, but whoever reads the trial must know.
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

/// The gap as it is judged: empty, unless the row calls the filler permanent.
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

/// What the gap is held against: the level, its ratio to inception, the voltage.
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

/// Voltage over which the gap would discharge, as a multiple of the voltage that rules: at least one.
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
    // Common practice never passes: what does not fail is said by the ruling beside this one.
    (lower < 1.0).then(|| {
        let about = Said::listed([name.clone().into(), GapSaid::Level(level).into()]);
        let why = Said::of(about, GapSaid::ByCurves { read, lower });
        Ruling::not_judged(CHECK, leg.subject(), why)
    })
}

/// Voltage across the gap against the worst that the instructions allow, by the inception that each would have.
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
    // Share of the service voltage at which it would discharge: nought where there is no gap in the field.
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
        // Both hold their own error already, against the gap; that of the limit counts once more the other way.
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
