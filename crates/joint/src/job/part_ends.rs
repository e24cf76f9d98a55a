//! Part ends: the end of a sleeve or the side of a body that a job names.

use super::reader::JobReader;
use super::unknown_part::{names, unknown_part};
use crate::form::Record;
use crate::said::{NameHint, NameSaid};

/// Complains about an end that the connector named beside it does not have.
pub(super) fn end_named(reader: &mut JobReader<'_>, record: &Record, field: &str) {
    let Some(name) = record.text(field) else {
        return;
    };
    let connector = record.text("connector");
    let part = connector.and_then(|id| reader.catalogue.connector(id));
    let (field_name, end) = (field.to_owned(), name.to_owned());
    let (message, hint) = match (connector, part) {
        (None, _) => (
            NameSaid::EndOfNoConnector {
                field: field_name,
                end,
            },
            NameHint::NameConnector,
        ),
        (_, Some(part)) if !part.has_unlike_ends() => (
            NameSaid::EndsAreAlike {
                field: field_name,
                end,
                connector: part.head.id.clone(),
            },
            NameHint::TakeLineOut,
        ),
        (_, Some(part)) if part.end(name).is_none() => (
            NameSaid::NoSuchEnd {
                field: field_name,
                end,
                connector: part.head.id.clone(),
            },
            NameHint::EndsAre {
                ends: part.end_names(),
            },
        ),
        _ => return,
    };
    reader.complain(record.at(field), message, hint);
}

/// Complains about a side that the body named beside it does not have.
pub(super) fn side_named(reader: &mut JobReader<'_>, record: &Record) {
    let Some(name) = record.text("body_side") else {
        return;
    };
    let body = record.text("body").and_then(|id| reader.catalogue.body(id));
    let has =
        |name: &str| body.is_some_and(|b| b.sides.iter().any(|s| s.side.as_deref() == Some(name)));
    if has(name) || (body.is_none() && record.is_given("body")) {
        return;
    }
    let side = name.to_owned();
    let (message, hint) = match body {
        None => (NameSaid::SideOfNoBody { side }, NameHint::NameBody),
        Some(body) if body.sides.is_empty() => (
            NameSaid::SidesAreAlike {
                side,
                body: body.head.id.clone(),
            },
            NameHint::TakeLineOut,
        ),
        Some(body) => (
            NameSaid::NoSuchSide {
                side,
                body: body.head.id.clone(),
            },
            NameHint::SidesAre {
                sides: body.side_names(),
            },
        ),
    };
    reader.complain(record.at("body_side"), message, hint);
}

/// Complains about a trial press if its connector is not in the catalogue or is not pressed, or if the pressed end is not stated.
pub(super) fn pressed(reader: &mut JobReader<'_>, row: &Record, connector: &str) {
    match reader.catalogue.connector(connector) {
        None => {
            let known = names(reader.catalogue.connectors.iter().map(|r| &r.head.id));
            unknown_part(reader, row.at("connector"), "connector", connector, &known);
        }
        Some(part) if !part.grows() => reader.complain(
            row.at("connector"),
            NameSaid::TrialIsNotPressed {
                connector: connector.to_owned(),
            },
            NameHint::TakeTrialOut,
        ),
        Some(part) if part.has_unlike_ends() && !row.is_given("end") => {
            let hint = NameHint::AddEnd {
                ends: part.end_names(),
            };
            let connector = connector.to_owned();
            reader.complain(row.at, NameSaid::TrialNamesNoEnd { connector }, hint);
        }
        Some(_) => {}
    }
    end_named(reader, row, "end");
}
