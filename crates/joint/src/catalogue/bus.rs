//! Bus and plug: the common piece of a separable joint, and what closes a port of it.

use super::head::{Head, Row, read_head, row_heads};
use super::reader::RowReader;
use crate::form::Record;

/// Common piece of a separable joint.
#[derive(Clone, Debug)]
pub struct Bus {
    /// Fields that every row has.
    pub head: Head,
    /// Number of ports.
    pub ports: i64,
    /// Greatest resistance between two ports, Ω, if stated.
    pub resistance_ohm: Option<f64>,
    /// Temperature of that resistance, degrees Celsius, if stated.
    pub resistance_at_degc: Option<f64>,
    /// Mating interface.
    pub interface: String,
    /// Highest system voltage, kV.
    pub system_greatest_kv: f64,
}

/// Insulating plug.
#[derive(Clone, Debug)]
pub struct Plug {
    /// Fields that every row has.
    pub head: Head,
    /// Mating interface.
    pub interface: String,
    /// Highest system voltage, kV.
    pub system_greatest_kv: f64,
}

impl Row for Bus {
    row_heads!();
    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Bus> {
        Some(Bus {
            head: read_head(reader, record)?,
            ports: record.integer("ports")?,
            resistance_ohm: record
                .number("resistance_microohm")
                .map(|micro| micro * 1e-6),
            resistance_at_degc: record.number("resistance_at"),
            interface: record.string("interface")?,
            system_greatest_kv: record.number("system_greatest")?,
        })
    }
}

impl Row for Plug {
    row_heads!();
    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Plug> {
        Some(Plug {
            head: read_head(reader, record)?,
            interface: record.string("interface")?,
            system_greatest_kv: record.number("system_greatest")?,
        })
    }
}
