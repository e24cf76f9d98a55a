//! Link: the distance between two planes, as a row gives it.
//!
//! Invariants: a link points away from the conductor end; it lets no layer shrink toward that end, and leaves every part some length.

use super::head::Head;
use super::reader::RowReader;
use crate::form::Need::{Optional, Required};
use crate::form::{Kind, Record, Shape, Span, field};
use crate::plane::Plane;
use crate::said::{OwnerHint, OwnerSaid, Whose};
use jointwright_units::Length;

/// Distance between two planes as a row gives it.
#[derive(Clone, Debug, PartialEq)]
pub struct LinkRow {
    /// Plane nearer the conductor end.
    pub from: Plane,
    /// Plane farther from it.
    pub to: Plane,
    /// Distance from one to the other.
    pub distance: Length,
    /// Tolerance: how much shorter and how much longer is permitted, if stated.
    pub tolerance: Option<(Length, Length)>,
    /// Source.
    pub source: Whose,
    /// Place in its file.
    pub place: Span,
}

impl LinkRow {
    /// Whether it lets a layer shrink the wrong way: a cut that shrinks back moves away from the conductor end.
    pub(crate) fn shrinks_inward(&self) -> bool {
        let pairs = [
            (Plane::JacketEdge, Plane::JacketEdgeShrunk),
            (Plane::InsulationEnd, Plane::InsulationEndShrunk),
        ];
        let minus = self.tolerance.map_or(Length::ZERO, |(minus, _)| minus);
        pairs.iter().any(|(cut, shrunk)| {
            (self.from, self.to) == (*shrunk, *cut)
                || (self.from, self.to) == (*cut, *shrunk) && self.distance < minus
        })
    }

    /// Whether it lets the outer end of a part reach its inner end, or come nearer: adapter, shield contact, seal.
    pub(crate) fn leaves_no_length(&self) -> bool {
        let pairs = [
            (Plane::AdapterNear, Plane::AdapterFar),
            (Plane::ContactNear, Plane::ContactFar),
            (Plane::SealStart, Plane::SealEnd),
        ];
        let minus = self.tolerance.map_or(Length::ZERO, |(minus, _)| minus);
        pairs.iter().any(|(near, far)| {
            (self.from, self.to) == (*far, *near)
                || (self.from, self.to) == (*near, *far) && self.distance <= minus
        })
    }

    /// Link that points away from the conductor end: a row that measures toward the end has the same distance and tolerance from its other plane.
    pub(crate) fn pointing_outward(self, toward_end: bool) -> LinkRow {
        if !toward_end {
            return self;
        }
        LinkRow {
            from: self.to,
            to: self.from,
            ..self
        }
    }
}

pub(super) const LINK: Shape = Shape {
    name: "link",
    about: "A distance between two planes, from whatever datum the instructions use.",
    fields: &[
        field(
            "from",
            Kind::Choice(Plane::NAMES),
            Required,
            "Plane that is measured from.",
        ),
        field(
            "to",
            Kind::Choice(Plane::NAMES),
            Required,
            "Plane that is measured to, farther along the cable.",
        ),
        field("distance", Kind::Cut, Required, "Distance as printed."),
        field(
            "minus",
            Kind::Cut,
            Optional,
            "How much shorter is permitted; with `plus`, or neither.",
        ),
        field(
            "plus",
            Kind::Cut,
            Optional,
            "How much longer is permitted; with `minus`, or neither.",
        ),
        field(
            "toward_end",
            Kind::Flag,
            Optional,
            "True when `to` lies nearer the conductor end than `from`.",
        ),
        field(
            "place",
            Kind::Text,
            Optional,
            "Where in the paper this number stands.",
        ),
    ],
};

pub(super) fn read_links(
    reader: &mut RowReader<'_>,
    record: &Record,
    head: Option<&Head>,
) -> Vec<LinkRow> {
    record
        .records("link")
        .filter_map(|row| read_link(reader, row, head))
        .collect()
}

fn read_link(reader: &mut RowReader<'_>, row: &Record, head: Option<&Head>) -> Option<LinkRow> {
    let id = head.map_or("?", |head| head.id.as_str());
    let tolerance = match (row.length("minus"), row.length("plus")) {
        (Some(minus), Some(plus)) => Some((minus, plus)),
        (None, None) => None,
        _ if row.is_given("minus") != row.is_given("plus") => {
            reader.complain(
                row.at,
                format!("A link of `{}` gives only one of `minus` and `plus`; a window has two sides.", id),
                "Give both (\"0 mm\" where nothing is permitted), or neither where the paper gives none.",
            );
            return None;
        }
        _ => return None,
    };
    let (from, to) = (
        Plane::from_name(row.text("from")?)?,
        Plane::from_name(row.text("to")?)?,
    );
    if from == to {
        reader.complain(
            row.at,
            format!("A link of `{}` runs from {} to itself.", id, from.name()),
            "Name two planes.",
        );
        return None;
    }
    let distance = row.length("distance")?;
    let place = row.text("place").map(str::to_owned);
    let link = LinkRow {
        from,
        to,
        distance,
        tolerance,
        source: Whose::Row {
            paper: head?.source(),
            place,
        },
        place: reader.place(row.at),
    };
    let link = link.pointing_outward(row.flag("toward_end").unwrap_or(false));
    if link.shrinks_inward() {
        reader.complain(row.at, OwnerSaid::ShrinksInward, OwnerHint::FromTheCut);
        return None;
    }
    if link.leaves_no_length() {
        reader.complain(
            row.at,
            format!(
                "This link leaves nothing between {} and {}.",
                link.from.name(),
                link.to.name()
            ),
            "Write the length that the part's paper gives, from its inner to its outer end, more than its `minus`.",
        );
        return None;
    }
    Some(link)
}
