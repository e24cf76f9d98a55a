//! Is the connector made for this conductor: its size, metal, stranding, and the diameter that its bore takes?
//!
//! If the ends of a sleeve differ, each leg is compared with its own end only; a leg that fits both ends waits until the job names one.
//!
//! Source: the connector's own instructions.

use super::{EndInputs, Inputs, LegInputs, Listed, slug};
use crate::cable::{Conductor, Layer};
use crate::catalogue::{Connector, ConnectorEnd, Means};
use crate::job::JointKind;
use crate::limit::{Bound, Limit, Outcome, Question, Reach, Ruling, Word};
use crate::said::{ConnectorAt, ConnectorSaid, Said, Served, ServesFor};
use jointwright_units::Interval;

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(connector) = leg.chosen.connector else {
        return Vec::new();
    };
    // A branch joint may connect its legs with contacts or with sleeves; its instructions say which.
    let count = (inputs.kind() != JointKind::Branch).then(|| ends(inputs, leg, connector));
    let Some(end) = leg.chosen.end else {
        return no_end(leg, connector).into_iter().chain(count).collect();
    };
    let mut rulings = named(leg, connector, end);
    rulings.extend(count);
    rulings.extend(own_end(inputs, leg, connector, end));
    if let Some(range) = end.bore {
        let of_end = |each| bore(inputs, leg, each, connector, end, range);
        rulings.extend(leg.ends.iter().map(of_end));
    }
    rulings
}

/// Ruling on a leg without a known end of the connector: both ends take it, or neither does.
fn no_end(leg: &LegInputs<'_>, connector: &Connector) -> Option<Ruling> {
    let why = leg.chosen.no_end(leg.leg)?;
    let conductor = leg.leg.cable.conductor;
    if connector.ends.iter().any(|end| end.takes(conductor)) {
        let ends = connector.ends.iter();
        let hint = ConnectorSaid::SayWhichEnd {
            leg: leg.leg.id.clone(),
            ends: ends.filter_map(|end| end.name.clone()).collect(),
        };
        return Some(Ruling::not_judged(CHECK, leg.subject(), why).with_hint(hint));
    }
    let [one, other] = connector.ends.as_slice() else {
        return None;
    };
    let ruling = Ruling::on_words(
        CHECK,
        leg.subject(),
        ConnectorSaid::Conductor { conductor },
        ConnectorSaid::EndsTake {
            one: one.taken(),
            other: other.taken(),
        },
        Word::Instructions(connector.head.source().into()),
    );
    Some(ruling.failing(why, ConnectorSaid::UseForConductor))
}

/// Rules that two legs of a straight joint do not enter the same end of their sleeve.
fn own_end(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    connector: &Connector,
    end: &ConnectorEnd,
) -> Option<Ruling> {
    let name = end.name.clone()?;
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
        CHECK,
        leg.subject(),
        ConnectorSaid::End { end: name },
        ConnectorSaid::EndOfItsOwn,
        Word::Job(ConnectorSaid::LegAtEachEnd.into()),
    );
    Some(match taken {
        None => ruling,
        Some(other) => ruling.failing(
            ConnectorSaid::BothIntoEnd {
                leg: leg.leg.id.clone(),
                other: other.leg.id.clone(),
                at: at(connector, end),
            },
            ConnectorSaid::UseSleeveWithEnds,
        ),
    })
}

/// Compares size, metal and stranding with those that the instructions name for this end.
fn named(leg: &LegInputs<'_>, connector: &Connector, end: &ConnectorEnd) -> Vec<Ruling> {
    let conductor = leg.leg.cable.conductor;
    if !end.named.is_empty() {
        return vec![one_by_one(leg, connector, end)];
    }
    let rule = |(found, permitted, what): (Served, Vec<Served>, ServesFor)| {
        Listed {
            check: CHECK,
            subject: leg.subject(),
            part: &connector.head,
            what,
            found,
            permitted,
            hint: ConnectorSaid::UseForConductor.into(),
        }
        .rule()
    };
    let mut rulings: Vec<Ruling> = asked(conductor, end).into_iter().map(rule).collect();
    if connector.means == Means::Compression
        && end.is_mixed()
        && rulings.iter().all(|r| r.outcome == Outcome::Pass)
    {
        rulings = vec![not_bound(leg, connector, end)];
    }
    rulings
}

/// Size, metal and stranding of a conductor, each with those that an end takes.
fn asked(conductor: Conductor, end: &ConnectorEnd) -> [(Served, Vec<Served>, ServesFor); 3] {
    [
        (
            Served::Size(conductor.size),
            end.sizes.iter().copied().map(Served::Size).collect(),
            ServesFor::Conductor,
        ),
        (
            Served::Metal(conductor.metal),
            end.metals.iter().copied().map(Served::Metal).collect(),
            ServesFor::Conductor,
        ),
        (
            Served::Stranding(conductor.stranding),
            end.strandings
                .iter()
                .copied()
                .map(Served::Stranding)
                .collect(),
            ServesFor::Stranding,
        ),
    ]
}

/// Compares the conductor with those that the row names one by one, size with metal.
fn one_by_one(leg: &LegInputs<'_>, connector: &Connector, end: &ConnectorEnd) -> Ruling {
    let conductor = leg.leg.cable.conductor;
    let of_end = end
        .name
        .clone()
        .map(|end| ConnectorSaid::End { end }.into());
    let row = Said::from(connector.head.source());
    let takes = end.taken();
    let ruling = Ruling::on_words(
        CHECK,
        leg.subject(),
        ConnectorSaid::Conductor { conductor },
        ConnectorSaid::Takes {
            takes: takes.clone(),
        },
        Word::Instructions(Said::listed(std::iter::once(row).chain(of_end))),
    );
    let why = ConnectorSaid::IsForOthers {
        at: at(connector, end),
        takes,
        conductor,
    };
    if end.takes(conductor) {
        ruling
    } else {
        ruling.failing(why, ConnectorSaid::UseForConductor)
    }
}

/// Ruling on a pressed sleeve with separate lists of sizes and metals: it is made for one size of each metal, and the lists do not say that this size goes with this metal.
fn not_bound(leg: &LegInputs<'_>, connector: &Connector, end: &ConnectorEnd) -> Ruling {
    let why = ConnectorSaid::ListsApart {
        at: at(connector, end),
        conductor: leg.leg.cable.conductor,
    };
    Ruling::not_judged(CHECK, leg.subject(), why).with_hint(ConnectorSaid::WriteOneByOne)
}

/// Name of the connector, and of its end if it has one.
fn at(connector: &Connector, end: &ConnectorEnd) -> ConnectorAt {
    ConnectorAt {
        connector: connector.head.id.clone(),
        end: end.name.clone(),
    }
}

/// Rules on the number of ends: two for a straight joint, one for a separable joint.
fn ends(inputs: &Inputs<'_>, leg: &LegInputs<'_>, connector: &Connector) -> Ruling {
    let kind = inputs.kind();
    let wants_two = kind == JointKind::Straight;
    let is_sleeve = connector.two_ended;
    let ruling = Ruling::on_words(
        CHECK,
        leg.subject(),
        ConnectorSaid::Ends { is_sleeve },
        ConnectorSaid::Ends {
            is_sleeve: wants_two,
        },
        Word::Job(ConnectorSaid::Joint { kind }.into()),
    );
    if is_sleeve == wants_two {
        return ruling;
    }
    let why = ConnectorSaid::NeedsOtherEnds {
        connector: connector.head.id.clone(),
        kind,
        is_sleeve,
    };
    ruling.failing(why, ConnectorSaid::UseForConductor)
}

/// Compares the conductor's diameter as read with the diameters that the bore takes.
fn bore(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    read: &EndInputs,
    connector: &Connector,
    end: &ConnectorEnd,
    range: Interval,
) -> Ruling {
    let subject = leg.subject_of(read);
    let at = at(connector, end);
    let Some(diameter) = read.survey.diameters.get(&Layer::Conductor) else {
        let why = ConnectorSaid::ConductorNotMeasured { at };
        let ask = leg.missing(inputs).reading(read.id.phase, Layer::Conductor);
        return Ruling::not_judged(CHECK, subject, why).asking(ask);
    };
    Question {
        check: CHECK,
        what: ConnectorSaid::ConductorInBore {
            subject: subject.clone(),
            at,
        }
        .into(),
        subject,
        value: diameter.known,
        limit: &Limit {
            bound: Bound::Within(range),
            word: Word::Instructions(connector.head.source().into()),
        },
        reach: Reach::Instructions,
        hint: ConnectorSaid::UseForConductor.into(),
    }
    .rule()
}
