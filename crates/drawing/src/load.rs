//! Load: temperature along the axis of a joint, and emergency load against time.
//!
//! Not here: any temperature; they come from the solved joint and from its rating.

use crate::line_chart::{Axis, Chart, ChartCurve, Rule, line_chart};
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::RateDoc;
use jointwright_joint::warm::{Along, Rating, Warm};

/// Text on each chart.
const UNDECIDED: &str =
    "Computed from what is stated; decides nothing. The parts' own instructions prevail.";
/// Length of cable drawn beyond the joint, m.
const BEYOND_M: f64 = 3.0;

fn linear(label: &str) -> Axis {
    Axis {
        label: label.to_owned(),
        is_logarithmic: false,
    }
}

fn title(document: &RateDoc, what: &str) -> String {
    format!("{}, {}: {what}", document.plan_mark.words(), document.job)
}

/// Issue of the plan, and its failures.
fn of_plan(document: &RateDoc) -> String {
    let stop = match document.outcome {
        Outcome::Fail => " THIS JOINT FAILS ITS PLAN.",
        _ => "",
    };
    format!("{}.{stop}", document.plan_mark.line())
}

/// Temperature along the axis of every leg at the job's load, as SVG; `None` if none is computed.
///
/// Two legs lie to the left and to the right of the joint's middle; of more than two, each goes to the right.
///
/// `rating` is the rating of the document.
pub fn along_axis(warm: &Warm, rating: Option<&Rating>, document: &RateDoc) -> Option<String> {
    let Warm::Done(done) = warm else {
        return None;
    };
    let legs = rating?.along.as_ref()?;
    let names: Vec<&str> = done.legs.iter().map(|leg| leg.leg.as_str()).collect();
    let is_pair = legs.len() == 2;
    let curves = if is_pair {
        pair(legs, &names)
    } else {
        let each = legs.iter().zip(&names);
        each.map(|(leg, name)| curve(format!("conductor, leg {name}"), &leg.core_degc, 1.0, leg))
            .collect()
    };
    let mut rules = body_ends(legs, &names, is_pair);
    if let Some(degc) = done
        .legs
        .iter()
        .filter_map(|leg| leg.limits_degc.0)
        .reduce(f64::min)
    {
        rules.push(Rule::Level(
            degc,
            format!("{degc} degC: conductor inside the body, by its paper"),
        ));
    }
    let loads: Vec<String> = names
        .iter()
        .zip(&done.model.loads_a)
        .map(|(name, load)| format!("leg {name} {load:.0} A"))
        .collect();
    let across = if is_pair {
        format!(
            "leg {} to the left, leg {} to the right of the joint's middle, m",
            names[0], names[1]
        )
    } else {
        "distance from where the legs meet, m".to_owned()
    };
    line_chart(&Chart {
        title: title(document, "temperature along the axis"),
        about: vec![
            of_plan(document),
            format!("All the time: {}.", loads.join(", ")),
        ],
        x: linear(&across),
        y: linear("degC"),
        curves,
        rules,
        banner: document.invented.clone(),
        below: vec![UNDECIDED.to_owned()],
    })
}

/// Ends of the bodies; legs whose bodies end at one place share a line.
fn body_ends(legs: &[Along], names: &[&str], is_pair: bool) -> Vec<Rule> {
    let mut ends: Vec<(f64, String)> = Vec::new();
    for (index, leg) in legs.iter().enumerate() {
        let sign = if is_pair && index == 0 { -1.0 } else { 1.0 };
        let at = sign * leg.ends_m.0;
        match ends.iter_mut().find(|(other, _)| *other == at) {
            Some((_, words)) => *words = format!("{words} {}", names[index]),
            None => ends.push((at, format!("body ends, {}", names[index]))),
        }
    }
    let upright = |(at, words)| Rule::Upright(at, words);
    ends.into_iter().map(upright).collect()
}

/// Two legs as one line.
fn pair(legs: &[Along], names: &[&str]) -> Vec<ChartCurve> {
    type Of = fn(&Along) -> &Vec<(f64, f64)>;
    let kinds: [(&str, Of); 3] = [
        ("conductor", |leg| &leg.core_degc),
        ("conductor of the cables without a joint", |leg| {
            &leg.alone_degc
        }),
        ("outside of joint and cable", |leg| &leg.outside_degc),
    ];
    let whole = |(what, of): (&str, Of)| {
        let mut left = curve(String::new(), of(&legs[0]), -1.0, &legs[0]);
        let right = curve(String::new(), of(&legs[1]), 1.0, &legs[1]);
        left.points.reverse();
        left.points.extend(right.points);
        left.label = format!("{what}, legs {} and {}", names[0], names[1]);
        left
    };
    kinds.into_iter().map(whole).collect()
}

fn curve(label: String, points: &[(f64, f64)], sign: f64, leg: &Along) -> ChartCurve {
    let end = leg.ends_m.1 + BEYOND_M;
    let drawn = points.iter().filter(|(z, _)| *z <= end);
    ChartCurve {
        label,
        points: drawn.map(|(z, degc)| (sign * z, *degc)).collect(),
    }
}

/// Greatest time of an emergency against its load, as SVG; `None` if the rating has no two such times.
pub fn emergency_against_time(document: &RateDoc) -> Option<String> {
    let rows = &document.emergency;
    let n_legs = rows.first()?.loads_a.len();
    let of_leg = |leg: usize| {
        let points = rows
            .iter()
            .filter_map(|row| Some((row.lasts_h?, row.loads_a[leg])));
        let name = document.warm.legs.get(leg).map_or("", |of| of.leg.as_str());
        ChartCurve {
            label: format!("leg {name}"),
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
            format!("{:.0} A: the job's emergency", at.load_a),
        )],
        _ => Vec::new(),
    };
    line_chart(&Chart {
        title: title(document, "emergency load against time"),
        about: vec![
            of_plan(document),
            "From the job's load at rest, until the conductor inside a body comes to the temperature that its paper gives for an emergency, or that of a cable to the highest in service by the job.".to_owned(),
        ],
        x: Axis {
            label: "hours".to_owned(),
            is_logarithmic: true,
        },
        y: linear("load, A"),
        curves,
        rules,
        banner: document.invented.clone(),
        below: vec![UNDECIDED.to_owned()],
    })
}
