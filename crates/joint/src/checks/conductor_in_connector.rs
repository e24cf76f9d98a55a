//! Is the connector made for this conductor: its size, metal, stranding, and the diameter that its bore takes?
//!
//! Where the ends of a sleeve differ, each leg is held against its own end alone; one that both ends would take waits until the job says which.
//!
//! Source: the connector's own instructions.

use super::{Check, EndInputs, Inputs, Judge, LegInputs, Listed};
use crate::cable::Layer;
use crate::catalogue::{Connector, ConnectorEnd, Means};
use crate::job::JointKind;
use crate::limit::{Bound, Limit, Outcome, Question, Reach, Ruling, Word};
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
    // A branch joint may gather its legs in contacts or in sleeves; its instructions say which.
    let count = (inputs.kind() != JointKind::Branch).then(|| ends(inputs, leg, connector));
    let Some(end) = leg.chosen.end else {
        return no_end(inputs, leg, connector)
            .into_iter()
            .chain(count)
            .collect();
    };
    let mut rulings = named(inputs, leg, connector, end);
    rulings.extend(count);
    rulings.extend(own_end(inputs, leg, connector, end));
    if let Some(range) = end.bore {
        let of_end = |each| bore(inputs, leg, each, connector, end, range);
        rulings.extend(leg.ends.iter().map(of_end));
    }
    rulings
}

/// The ruling where no end is known to take this leg: both would, or neither does.
fn no_end(inputs: &Inputs<'_>, leg: &LegInputs<'_>, connector: &Connector) -> Option<Ruling> {
    let words = inputs.order.job.words;
    let why = leg.chosen.why_no_end(leg.leg, words)?;
    let conductor = leg.leg.cable.conductor;
    if connector.ends.iter().any(|end| end.takes(conductor)) {
        let hint = format!(
            "Say which end takes leg {}: connector_end = {}.",
            leg.leg.id,
            connector.end_names()
        );
        return Some(Ruling::not_judged(CHECK.slug, leg.subject(), why).with_hint(hint));
    }
    let of_each = connector.ends.iter().map(|end| end.conductors(words));
    let ruling = Ruling::on_words(
        CHECK.slug,
        leg.subject(),
        conductor.phrase(words),
        of_each.collect::<Vec<_>>().join(" at one end, ") + " at the other",
        Word::Instructions(connector.head.source().into()),
    );
    Some(ruling.failing(why, HINT))
}

/// Two legs of a straight joint do not go into one end of their sleeve.
fn own_end(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    connector: &Connector,
    end: &ConnectorEnd,
) -> Option<Ruling> {
    let name = end.name.as_deref()?;
    if inputs.kind() != JointKind::Straight {
        return None;
    }
    let taken = inputs.legs.iter().find(|other| {
        let same = |(part, its): (&Connector, &ConnectorEnd)| {
            part.head.id == connector.head.id && its.name == end.name
        };
        other.leg.id != leg.leg.id && other.chosen.grip().is_some_and(same)
    });
    let ruling = Ruling::on_words(
        CHECK.slug,
        leg.subject(),
        format!("end {name}"),
        "an end that takes no other leg",
        "job: a sleeve takes one leg at each end".to_owned(),
    );
    Some(match taken {
        None => ruling,
        Some(other) => ruling.failing(
            format!(
                "legs {} and {} both go into the end {name} of {}",
                leg.leg.id, other.leg.id, connector.head.id
            ),
            "Stop. Use a sleeve that has an end for each of the two conductors.",
        ),
    })
}

/// Size, metal and stranding against those that the instructions name for this end.
fn named(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    connector: &Connector,
    end: &ConnectorEnd,
) -> Vec<Ruling> {
    let words = inputs.order.job.words;
    let conductor = leg.leg.cable.conductor;
    if !end.named.is_empty() {
        let ruling = Ruling::on_words(
            CHECK.slug,
            leg.subject(),
            conductor.phrase(words),
            end.conductors(words),
            Word::Instructions(format!("{}{}", connector.head.source_text(), end.of_end()).into()),
        );
        let why = format!(
            "{}{} is for conductors of {}; here it is {}",
            connector.head.id,
            end.of_end(),
            end.conductors(words),
            conductor.phrase(words)
        );
        return vec![if end.takes(conductor) {
            ruling
        } else {
            ruling.failing(why, HINT)
        }];
    }
    let sizes: Vec<String> = end.sizes.iter().map(ToString::to_string).collect();
    let metals: Vec<String> = end
        .metals
        .iter()
        .map(|m| m.name(words).to_owned())
        .collect();
    let strandings: Vec<String> = end.strandings.iter().map(|s| s.name().to_owned()).collect();
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
    let mut rulings: Vec<Ruling> = asked.into_iter().map(rule).collect();
    if connector.means == Means::Compression
        && end.is_mixed()
        && rulings.iter().all(|r| r.outcome == Outcome::Pass)
    {
        rulings = vec![not_bound(leg, connector, end, conductor.phrase(words))];
    }
    rulings
}

/// A pressed sleeve is made for one size of each metal: lists of several of both do not say that this size of this metal is among them.
fn not_bound(
    leg: &LegInputs<'_>,
    connector: &Connector,
    end: &ConnectorEnd,
    conductor: String,
) -> Ruling {
    let why = format!(
        "the row {}{} lists sizes and metals apart, so it does not say that it takes {conductor}",
        connector.head.id,
        end.of_end()
    );
    Ruling::not_judged(CHECK.slug, leg.subject(), why).with_hint(
        "Write the conductors of its paper one by one, size with metal: `conductors`, or an `end` for each end where the two differ.",
    )
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
    read: &EndInputs,
    connector: &Connector,
    end: &ConnectorEnd,
    range: Interval,
) -> Ruling {
    let subject = leg.subject_of(read);
    let id = format!("{}{}", connector.head.id, end.of_end());
    let Some(diameter) = read.survey.diameters.get(&Layer::Conductor) else {
        let why = format!("the bore of {id} is limited, but nobody has measured the conductor");
        let ask = leg.missing(inputs).reading(read.phase, Layer::Conductor);
        return Ruling::not_judged(CHECK.slug, subject, why).asking(ask);
    };
    Question {
        check: CHECK.slug,
        what: format!("{}, conductor in the bore of {id}", subject.words()).into(),
        subject,
        value: diameter.known,
        limit: &Limit {
            bound: Bound::Within(range),
            word: Word::Instructions(connector.head.source().into()),
        },
        reach: Reach::Instructions,
        hint: HINT.into(),
    }
    .rule()
}
