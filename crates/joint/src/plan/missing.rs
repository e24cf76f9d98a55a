//! Missing: what is not computed for want of a datum, and which; apart from what this version cannot compute at all.

use crate::checks::LegInputs;
use crate::judge::Judged;
use crate::pressure::Pressed;
use crate::said::{Said, Wording};
use crate::study::{PlugStudy, Study};
use crate::warm::Warm;

/// What this version does not compute, whatever is stated.
pub const NOT_COMPUTED: &[&str] = &[
    "the field of layers whose conductivity rises with the field",
    "what hot insulation keeps of an imprint",
    "short circuits in the bus",
    "water past the seals",
];

/// What is not computed of a joint because something is not known, one sentence fragment each: what, of which legs or ends, and why.
pub(super) fn missing(judged: &Judged<'_>, wording: &dyn Wording) -> Vec<String> {
    let legs = &judged.inputs.legs;
    let fields = gathered(
        legs.iter()
            .filter_map(|leg| Some((leg.leg.id.clone(), field(leg)?))),
    );
    let plugs = gathered(
        legs.iter()
            .filter_map(|leg| Some((leg.leg.id.clone(), plug(leg)?))),
    );
    let ends = legs.iter().flat_map(|leg| {
        leg.ends.iter().filter_map(|end| {
            let why = pressure(leg, &end.pressure.body)?;
            Some((end.id.to_string(), why))
        })
    });
    let pressures = gathered(ends);
    let mut said = sentences("electric field", fields, wording);
    said.extend(sentences(
        "electric field of the tapered plug",
        plugs,
        wording,
    ));
    said.extend(sentences("interface pressure", pressures, wording));
    said.extend(match judged.inputs.warm.as_ref() {
        Warm::Done(_) => None,
        Warm::NotAsked => Some("temperatures under load: a body is left open".to_owned()),
        Warm::Unknown(unknown) => Some(format!(
            "temperatures under load: {}",
            wording.say(&unknown.why)
        )),
        Warm::Refused(why) => Some(format!("temperatures under load: {why}")),
    });
    if judged.inputs.order.job.contacts.is_empty() {
        said.push("short circuits in contacts of shields: nobody read a resistance across one (`contact` in the job)".to_owned());
    }
    said
}

fn field(leg: &LegInputs<'_>) -> Option<Said> {
    match leg.study.as_ref() {
        Study::Done(_) => None,
        Study::NotAsked => Some("the body is left open".into()),
        Study::Unknown(unknown) => Some(unknown.why.clone()),
        Study::Refused(why) => Some(why.clone()),
    }
}

fn plug(leg: &LegInputs<'_>) -> Option<Said> {
    match leg.plug.as_ref() {
        PlugStudy::None | PlugStudy::Done(_) => None,
        PlugStudy::Unknown(unknown) => Some(unknown.why.clone()),
        PlugStudy::Refused(why) => Some(why.clone()),
    }
}

fn pressure(leg: &LegInputs<'_>, pressed: &Pressed) -> Option<Said> {
    match pressed {
        Pressed::Done(_) => None,
        Pressed::NotAsked if leg.chosen.body.is_none() => Some("the body is left open".into()),
        Pressed::NotAsked => Some("nobody asked for it".into()),
        Pressed::Unknown(unknown) => Some(unknown.why.clone()),
        Pressed::Past(why) | Pressed::Loose(why) | Pressed::Refused(why) => Some(why.clone()),
    }
}

/// Reasons, each with all of whom it is true, in the order of the first.
fn gathered(each: impl Iterator<Item = (String, Said)>) -> Vec<(Said, Vec<String>)> {
    let mut groups: Vec<(Said, Vec<String>)> = Vec::new();
    for (who, why) in each {
        match groups.iter_mut().find(|(known, _)| *known == why) {
            Some((_, all)) => all.push(who),
            None => groups.push((why, vec![who])),
        }
    }
    groups
}

fn sentences(what: &str, groups: Vec<(Said, Vec<String>)>, wording: &dyn Wording) -> Vec<String> {
    let sentence = |(why, who): (Said, Vec<String>)| {
        let why = wording.say(&why);
        format!("{what} of {}: {}", who.join(" "), why.trim_end_matches('.'))
    };
    groups.into_iter().map(sentence).collect()
}
