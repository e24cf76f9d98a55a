//! Ends of parts: which end of a sleeve, and which side of a body, a job names.

use super::walk_job::{JobReader, names};
use crate::form::Record;

impl JobReader<'_> {
    /// Complains of an end that the connector named beside it does not have.
    pub(super) fn end_named(&mut self, record: &Record, field: &str) {
        let Some(name) = record.text(field) else {
            return;
        };
        let connector = record.text("connector");
        let part = connector.and_then(|id| self.catalogue.connector(id));
        let (message, hint) = match (connector, part) {
            (None, _) => (
                format!(
                    "`{field}` names the end `{name}` of a connector, and no `connector` is named."
                ),
                "Name the connector, or take the line out.".to_owned(),
            ),
            (_, Some(part)) if !part.has_unlike_ends() => (
                format!(
                    "`{field}` names the end `{name}`, and the ends of `{}` do not differ.",
                    part.head.id
                ),
                "Take the line out.".to_owned(),
            ),
            (_, Some(part)) if part.end(name).is_none() => (
                format!(
                    "`{field}` names the end `{name}`, which `{}` does not have.",
                    part.head.id
                ),
                format!("Its ends are {}.", part.end_names()),
            ),
            _ => return,
        };
        self.complain(record.at(field), message, hint);
    }

    /// Complains of a side that the body named beside it does not have.
    pub(super) fn side_named(&mut self, record: &Record) {
        let Some(name) = record.text("body_side") else {
            return;
        };
        let body = record.text("body").and_then(|id| self.catalogue.body(id));
        let has = |name: &str| {
            body.is_some_and(|b| b.sides.iter().any(|s| s.side.as_deref() == Some(name)))
        };
        if has(name) || (body.is_none() && record.is_given("body")) {
            return;
        }
        let (of, hint) = match body {
            None => (
                "no `body` is named".to_owned(),
                "Name the body, or take the line out.".to_owned(),
            ),
            Some(body) if body.sides.is_empty() => (
                format!("the sides of `{}` do not differ", body.head.id),
                "Take the line out.".to_owned(),
            ),
            Some(body) => (
                format!("`{}` does not have it", body.head.id),
                format!("Its sides are {}.", body.side_names()),
            ),
        };
        self.complain(
            record.at("body_side"),
            format!("`body_side` names the side `{name}`, and {of}."),
            hint,
        );
    }

    /// Complains of a trial press of what is not in the catalogue, is not pressed, or does not say which end was pressed.
    pub(super) fn pressed(&mut self, row: &Record, connector: &str) {
        match self.catalogue.connector(connector) {
            None => {
                let known = names(self.catalogue.connectors.iter().map(|r| &r.head.id));
                self.unknown_part(row.at("connector"), "connector", connector, &known);
            }
            Some(part) if !part.grows() => self.complain(
                row.at("connector"),
                format!("A trial press names `{connector}`, which is not pressed."),
                "Take the trial press out, or name the sleeve that was pressed.",
            ),
            Some(part) if part.has_unlike_ends() && !row.is_given("end") => {
                let hint = format!("Add `end`: {}.", part.end_names());
                self.complain(
                    row.at,
                    format!("The ends of `{connector}` differ, and the trial press does not say which was pressed."),
                    hint,
                );
            }
            Some(_) => {}
        }
        self.end_named(row, "end");
    }
}
