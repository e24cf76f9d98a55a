//! Is the connector made for this conductor: its size, metal, stranding, and the diameter that its bore takes?
//!
//! Source: the connector's own instructions.

use super::{Check, EndInputs, Inputs, Judge, LegInputs, Listed};
use crate::cable::Layer;
use crate::catalogue::Connector;
use crate::job::JointKind;
use crate::limit::{Bound, Limit, Question, Reach, Ruling, Word};
use jointwright_units::Interval;

pub(super) const CHECK: Check = Check {
    slug: "conductor_in_connector",
    question: "Is the connector made for this conductor?",
    judge: Judge::Leg(judge),
};

const HINT: &str = "Stop. Use a connector whose instructions name this conductor.";

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(connector) = leg.chosen.connector else {
        return Vec::new();
    };
    let mut rulings = named(inputs, leg, connector);
    // A branch joint may gather its legs in contacts or in sleeves; its instructions say which.
    if inputs.kind() != JointKind::Branch {
        rulings.push(ends(inputs, leg, connector));
    }
    if let Some(range) = connector.bore {
        let of_end = |end| bore(inputs, leg, end, connector, range);
        rulings.extend(leg.ends.iter().map(of_end));
    }
    rulings
}

/// Size, metal and stranding against those that the instructions name.
fn named(inputs: &Inputs<'_>, leg: &LegInputs<'_>, connector: &Connector) -> Vec<Ruling> {
    let words = inputs.order.job.words;
    let conductor = leg.leg.cable.conductor;
    let sizes: Vec<String> = connector.sizes.iter().map(ToString::to_string).collect();
    let metals: Vec<String> = connector
        .metals
        .iter()
        .map(|m| m.name(words).to_owned())
        .collect();
    let strandings: Vec<String> = connector
        .strandings
        .iter()
        .map(|s| s.name().to_owned())
        .collect();
    let asked = [
        (conductor.size.to_string(), sizes, "conductors of"),
        (
            conductor.metal.name(words).to_owned(),
            metals,
            "conductors of",
        ),
        (
            conductor.stranding.name().to_owned(),
            strandings,
            "stranding",
        ),
    ];
    let rule = |(found, permitted, what): (String, Vec<String>, &str)| {
        Listed {
            check: CHECK.slug,
            subject: leg.subject(),
            part: &connector.head,
            what,
            found: &found,
            permitted: &permitted,
            hint: HINT,
        }
        .rule()
    };
    asked.into_iter().map(rule).collect()
}

/// Two ends for a straight joint, one for a separable joint.
fn ends(inputs: &Inputs<'_>, leg: &LegInputs<'_>, connector: &Connector) -> Ruling {
    let words = |two: bool| {
        if two {
            "a sleeve with two ends"
        } else {
            "a contact with one end"
        }
    };
    let wants_two = inputs.kind() == JointKind::Straight;
    let (found, permitted) = (words(connector.two_ended), words(wants_two));
    let kind = inputs.kind().name();
    let source = format!("job: a {kind} joint");
    let ruling = Ruling::on_words(CHECK.slug, leg.subject(), found, permitted, source);
    if connector.two_ended == wants_two {
        return ruling;
    }
    let why = format!(
        "{} is {found}; a {kind} joint needs {permitted}",
        connector.head.id
    );
    ruling.failing(why, HINT)
}

/// Conductor as read against the diameters that the bore takes.
fn bore(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    end: &EndInputs,
    connector: &Connector,
    range: Interval,
) -> Ruling {
    let subject = leg.subject_of(end);
    let id = &connector.head.id;
    let Some(diameter) = end.survey.diameters.get(&Layer::Conductor) else {
        let why = format!("the bore of {id} is limited, but nobody has measured the conductor");
        let ask = leg.missing(inputs).reading(end.phase, Layer::Conductor);
        return Ruling::not_judged(CHECK.slug, subject, why).asking(ask);
    };
    Question {
        check: CHECK.slug,
        what: format!("{}, conductor in the bore of {id}", subject.words()),
        subject,
        value: diameter.known,
        limit: &Limit {
            bound: Bound::Within(range),
            word: Word::Instructions(connector.head.source()),
        },
        reach: Reach::Instructions,
        hint: HINT,
    }
    .rule()
}
