//! Part names: the parts that a job names for a leg.

use super::part_ends::{end_named, side_named};
use super::reader::JobReader;
use super::unknown_part::{names, unknown_part};
use crate::form::Record;

/// Parts named for a leg; `None` if left open.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct PartNames {
    /// Body.
    pub body: Option<String>,
    /// Side of the body that takes this leg, where its two sides differ.
    pub body_side: Option<String>,
    /// Adapter.
    pub adapter: Option<String>,
    /// Connector.
    pub connector: Option<String>,
    /// End of the connector that takes this leg, where its two ends differ and the job says.
    pub connector_end: Option<String>,
    /// Shield part.
    pub shield_part: Option<String>,
    /// Seal.
    pub seal: Option<String>,
    /// Consumables.
    pub consumables: Vec<String>,
}

impl PartNames {
    /// Names of all catalogue rows that it uses.
    pub fn rows(&self) -> impl Iterator<Item = &String> {
        let PartNames {
            body,
            body_side: _,
            adapter,
            connector,
            connector_end: _,
            shield_part,
            seal,
            consumables,
        } = self;
        let one = [body, adapter, connector, shield_part, seal];
        one.into_iter().flatten().chain(consumables)
    }
}

pub(super) fn part_names(reader: &mut JobReader<'_>, record: &Record) -> PartNames {
    let c = reader.catalogue;
    let kinds: [(&str, Vec<&String>); 5] = [
        ("body", c.bodies.iter().map(|r| &r.head.id).collect()),
        ("adapter", c.adapters.iter().map(|r| &r.head.id).collect()),
        (
            "connector",
            c.connectors.iter().map(|r| &r.head.id).collect(),
        ),
        (
            "shield_part",
            c.shield_parts.iter().map(|r| &r.head.id).collect(),
        ),
        ("seal", c.seals.iter().map(|r| &r.head.id).collect()),
    ];
    for (kind, known) in kinds {
        if let Some(id) = record.text(kind)
            && !known.iter().any(|k| *k == id)
        {
            unknown_part(reader, record.at(kind), kind, id, &names(known.into_iter()));
        }
    }
    for id in record.texts("consumables") {
        if c.consumable(&id).is_none() {
            let known = names(c.consumables.iter().map(|r| &r.head.id));
            unknown_part(reader, record.at("consumables"), "consumable", &id, &known);
        }
    }
    end_named(reader, record, "connector_end");
    side_named(reader, record);
    PartNames {
        body: record.string("body"),
        body_side: record.string("body_side"),
        adapter: record.string("adapter"),
        connector: record.string("connector"),
        connector_end: record.string("connector_end"),
        shield_part: record.string("shield_part"),
        seal: record.string("seal"),
        consumables: record.texts("consumables"),
    }
}
