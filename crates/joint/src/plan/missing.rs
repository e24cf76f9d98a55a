//! Missing: quantities that are not computed because a fact is missing, with that fact.
//!
//! Quantities that this version cannot compute at all are listed apart.

use crate::checks::LegInputs;
use crate::judge::Judged;
use crate::pressure::Pressed;
use crate::said::{CutSaid, MissingOf, MissingSaid, RatingSaid, Said};
use crate::study::{PlugStudy, Study};
use crate::warm::Warm;

/// Quantities of a joint that are not computed because a fact is not known, each with its legs or ends and the reason.
pub(super) fn missing(judged: &Judged<'_>) -> Vec<Said> {
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
    let mut said = of_each(MissingOf::Field, fields);
    said.extend(of_each(MissingOf::FieldOfPlug, plugs));
    said.extend(of_each(MissingOf::Pressure, pressures));
    let why = match judged.inputs.warm.as_ref() {
        Warm::Done(_) => None,
        Warm::NotAsked | Warm::BodyOpen => Some(RatingSaid::BodyLeftOpen.into()),
        Warm::Unknown(unknown) => Some(unknown.why.clone()),
        Warm::Refused(why) => Some(why.clone()),
    };
    said.extend(why.map(|why| MissingSaid::Temperatures { why }));
    if judged.inputs.order.job.contacts.is_empty() {
        said.push(MissingSaid::Contacts);
    }
    said.into_iter().map(Said::from).collect()
}

fn field(leg: &LegInputs<'_>) -> Option<Said> {
    match leg.study.as_ref() {
        Study::Done(_) => None,
        Study::NotAsked => Some(CutSaid::BodyLeftOpen.into()),
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
        Pressed::NotAsked if leg.chosen.body.is_none() => Some(CutSaid::BodyLeftOpen.into()),
        Pressed::NotAsked => Some(MissingSaid::NobodyAsked.into()),
        Pressed::Unknown(unknown) => Some(unknown.why.clone()),
        Pressed::Past(why) | Pressed::Loose(why) | Pressed::Refused(why) => Some(why.clone()),
    }
}

/// Reasons in the order of their first occurrence, each with everybody for whom it holds.
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

fn of_each(what: MissingOf, groups: Vec<(Said, Vec<String>)>) -> Vec<MissingSaid> {
    let missing = |(why, of): (Said, Vec<String>)| MissingSaid::Of { what, of, why };
    groups.into_iter().map(missing).collect()
}
