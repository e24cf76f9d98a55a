//! Bus: the bus of a separable joint, and its ports without a leg.

use super::reader::JobReader;
use super::unknown_part::{names, unknown_part};
use crate::form::Record;

/// Port without a leg.
#[derive(Clone, Debug)]
pub struct Blank {
    /// Port.
    pub port: i64,
    /// Plug.
    pub plug: Option<String>,
}

pub(super) fn bus(reader: &mut JobReader<'_>, record: &Record) -> Option<String> {
    let bus = record.string("bus")?;
    if reader.catalogue.bus(&bus).is_none() {
        let known = names(reader.catalogue.buses.iter().map(|r| &r.head.id));
        unknown_part(reader, record.at("bus"), "bus", &bus, &known);
    }
    Some(bus)
}

pub(super) fn blank(reader: &mut JobReader<'_>, record: &Record) -> Option<Blank> {
    let plug = record.string("plug");
    if let Some(id) = &plug
        && reader.catalogue.plug(id).is_none()
    {
        let known = names(reader.catalogue.plugs.iter().map(|r| &r.head.id));
        unknown_part(reader, record.at("plug"), "plug", id, &known);
    }
    Some(Blank {
        port: record.integer("port")?,
        plug,
    })
}
