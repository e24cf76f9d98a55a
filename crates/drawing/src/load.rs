//! Load: temperature along the axis of a joint, and emergency load against time.
//!
//! Not here: any temperature; they come from the solved joint and from its rating.

use crate::line_chart::{Axis, Chart, ChartCurve, Rule, line_chart};
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::RateDoc;
use jointwright_joint::warm::{Rating, TemperatureProfile, Warm};
use jointwright_wording::Tongue;
use jointwright_wording::label::ChartLabel;

/// Length of cable drawn beyond the joint, m.
const BEYOND_M: f64 = 3.0;

fn linear(label: &str) -> Axis {
    Axis {
        label: label.to_owned(),
        is_logarithmic: false,
    }
}

/// Issue of the plan, and its failures.
fn of_plan(document: &RateDoc, tongue: Tongue) -> String {
    let issue = tongue.plan_issue(&document.plan_mark);
    tongue.label(&match document.outcome {
        Outcome::Fail => ChartLabel::OfPlanThatFails { issue },
        _ => ChartLabel::OfPlan { issue },
    })
}

/// Temperature along the axis of every leg at the job's load, as SVG; `None` if none is computed.
///
/// Two legs lie to the left and to the right of the joint's middle; of more than two, each goes to the right.
///
/// `rating` is the rating of the document.
pub fn along_axis(
    warm: &Warm,
    rating: Option<&Rating>,
    document: &RateDoc,
    tongue: Tongue,
) -> Option<String> {
    let of = |label: ChartLabel| tongue.label(&label);
    let Warm::Done(done) = warm else {
        return None;
    };
    let legs = rating?.along.as_ref()?;
    let names: Vec<&str> = done.legs.iter().map(|leg| leg.leg.as_str()).collect();
    let is_pair = legs.len() == 2;
    let curves = if is_pair {
        pair(legs, &names, tongue)
    } else {
        let each = legs.iter().zip(&names);
        each.map(|(along, name)| {
            let leg = (*name).to_owned();
            let label = of(ChartLabel::ConductorOfLeg { leg });
            curve(label, &along.core_degc, 1.0, along)
        })
        .collect()
    };
    let mut rules = body_ends(legs, &names, is_pair, tongue);
    if let Some(degc) = done
        .legs
        .iter()
        .filter_map(|leg| leg.limits_degc.0)
        .reduce(f64::min)
    {
        rules.push(Rule::Level(degc, of(ChartLabel::LimitInBody { degc })));
    }
    let loads: Vec<String> = names
        .iter()
        .zip(&done.model.loads_a)
        .map(|(name, load)| {
            of(ChartLabel::LoadOfLeg {
                leg: (*name).to_owned(),
                amperes: format!("{load:.0}"),
            })
        })
        .collect();
    let across = match names.as_slice() {
        [left, right] if is_pair => ChartLabel::Pair {
            left: (*left).to_owned(),
            right: (*right).to_owned(),
        },
        _ => ChartLabel::FromWhereLegsMeet,
    };
    line_chart(&Chart {
        title: of(ChartLabel::AxisTitle {
            mark: tongue.plan_mark(&document.plan_mark),
            job: document.job.clone(),
        }),
        about: vec![
            of_plan(document, tongue),
            of(ChartLabel::AllTheTime { loads }),
        ],
        x: linear(&of(across)),
        y: linear("degC"),
        curves,
        rules,
        banner: document.invented.clone(),
        below: vec![of(ChartLabel::Undecided)],
    })
}

/// Ends of the bodies; legs whose bodies end at one place share a line.
fn body_ends(
    legs: &[TemperatureProfile],
    names: &[&str],
    is_pair: bool,
    tongue: Tongue,
) -> Vec<Rule> {
    let mut ends: Vec<(f64, Vec<String>)> = Vec::new();
    for (index, leg) in legs.iter().enumerate() {
        let sign = if is_pair && index == 0 { -1.0 } else { 1.0 };
        let at = sign * leg.ends_m.0;
        match ends.iter_mut().find(|(other, _)| *other == at) {
            Some((_, legs)) => legs.push(names[index].to_owned()),
            None => ends.push((at, vec![names[index].to_owned()])),
        }
    }
    let upright = |(at, legs)| Rule::Upright(at, tongue.label(&ChartLabel::BodyEnds { legs }));
    ends.into_iter().map(upright).collect()
}

/// Two legs as one line.
fn pair(legs: &[TemperatureProfile], names: &[&str], tongue: Tongue) -> Vec<ChartCurve> {
    type Of = fn(&TemperatureProfile) -> &Vec<(f64, f64)>;
    type Label = fn(String, String) -> ChartLabel;
    let kinds: [(Label, Of); 3] = [
        (
            |first, second| ChartLabel::ConductorOfLegs { first, second },
            |leg| &leg.core_degc,
        ),
        (
            |first, second| ChartLabel::CablesAlone { first, second },
            |leg| &leg.alone_degc,
        ),
        (
            |first, second| ChartLabel::Outside { first, second },
            |leg| &leg.outside_degc,
        ),
    ];
    let whole = |(label, of): (Label, Of)| {
        let mut left = curve(String::new(), of(&legs[0]), -1.0, &legs[0]);
        let right = curve(String::new(), of(&legs[1]), 1.0, &legs[1]);
        left.points.reverse();
        left.points.extend(right.points);
        left.label = tongue.label(&label(names[0].to_owned(), names[1].to_owned()));
        left
    };
    kinds.into_iter().map(whole).collect()
}

fn curve(label: String, points: &[(f64, f64)], sign: f64, leg: &TemperatureProfile) -> ChartCurve {
    let end = leg.ends_m.1 + BEYOND_M;
    let drawn = points.iter().filter(|(z, _)| *z <= end);
    ChartCurve {
        label,
        points: drawn.map(|(z, degc)| (sign * z, *degc)).collect(),
    }
}

/// Greatest time of an emergency against its load, as SVG; `None` if the rating has no two such times.
pub fn emergency_against_time(document: &RateDoc, tongue: Tongue) -> Option<String> {
    let of = |label: ChartLabel| tongue.label(&label);
    let rows = &document.emergency;
    let n_legs = rows.first()?.loads_a.len();
    let of_leg = |leg: usize| {
        let points = rows
            .iter()
            .filter_map(|row| Some((row.lasts_h?, row.loads_a[leg])));
        let leg = document.warm.legs.get(leg);
        let leg = leg.map_or(String::new(), |of| of.leg.clone());
        ChartCurve {
            label: of(ChartLabel::Leg { leg }),
            points: points.collect(),
        }
    };
    let mut curves: Vec<ChartCurve> = Vec::new();
    for leg in 0..n_legs {
        let next = of_leg(leg);
        // Legs with the same load share a line.
        match curves.iter_mut().find(|curve| curve.points == next.points) {
            Some(same) => same.label = format!("{}; {}", same.label, next.label),
            None => curves.push(next),
        }
    }
    // The job's own emergency, if one line stands for all legs.
    let asked = document
        .warm
        .legs
        .first()
        .and_then(|leg| leg.at_emergency.as_ref());
    let rules = match (curves.len(), asked) {
        (1, Some(at)) => vec![Rule::Level(
            at.load_a,
            of(ChartLabel::JobsEmergency {
                amperes: format!("{:.0}", at.load_a),
            }),
        )],
        _ => Vec::new(),
    };
    line_chart(&Chart {
        title: of(ChartLabel::EmergencyTitle {
            mark: tongue.plan_mark(&document.plan_mark),
            job: document.job.clone(),
        }),
        about: vec![of_plan(document, tongue), of(ChartLabel::FromRest)],
        x: Axis {
            label: of(ChartLabel::Hours),
            is_logarithmic: true,
        },
        y: linear(&of(ChartLabel::LoadAmperes)),
        curves,
        rules,
        banner: document.invented.clone(),
        below: vec![of(ChartLabel::Undecided)],
    })
}
