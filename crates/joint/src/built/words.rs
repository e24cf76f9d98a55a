//! Words: the words by which a file of readings names what was read, and what was seen.
//!
//! Invariants: the blank form is written from this table, and a filled row of it is read back into the slot that it was written for; the choices of the fields (`shape`) and the way back from a word (`reading`) list the same words.

use crate::catalogue::{JACKET_SURFACES, METALS, SHIELD_KINDS};
use crate::slot::Measured;

/// Table of the file in which a reading of a quantity stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Table {
    /// Lengths along the cable.
    Along,
    /// Diameters, and sizes of the connector.
    Across,
    /// Resistances.
    Resistance,
    /// Torques.
    Torque,
    /// Counts.
    Count,
    /// Things seen, felt, tested or found.
    Seen,
}

impl Table {
    /// All tables, in the order in which a form lists them.
    pub const ALL: [Table; 6] = [
        Table::Along,
        Table::Across,
        Table::Resistance,
        Table::Torque,
        Table::Count,
        Table::Seen,
    ];

    /// Name in the file.
    pub const fn name(self) -> &'static str {
        match self {
            Table::Along => "along",
            Table::Across => "across",
            Table::Resistance => "resistance",
            Table::Torque => "torque",
            Table::Count => "count",
            Table::Seen => "seen",
        }
    }

    /// Field that holds the value of a reading.
    pub const fn value(self) -> &'static str {
        match self {
            Table::Along => "at",
            Table::Across | Table::Torque => "values",
            Table::Resistance => "ohm",
            Table::Count => "n",
            Table::Seen => "found",
        }
    }

    /// Field of an instrument that holds its error for such readings; `None` if they have none.
    pub const fn error(self) -> Option<&'static str> {
        match self {
            Table::Along | Table::Across => Some("error"),
            Table::Resistance => Some("error_ohm"),
            Table::Torque => Some("error_torque"),
            Table::Count | Table::Seen => None,
        }
    }
}

/// Table in which a quantity stands, and its word there.
pub fn table_of(measured: &Measured) -> (Table, &'static str) {
    match measured {
        Measured::Place { plane } => (Table::Along, plane.name()),
        Measured::Distance { to, .. } => (Table::Along, to.name()),
        Measured::AdapterEnds => (Table::Along, "adapter-ends"),
        Measured::ShieldKept => (Table::Along, "shield-kept"),
        Measured::SealOverlap => (Table::Along, "seal-overlap"),
        Measured::Diameter { .. } => (Table::Across, "diameter"),
        Measured::ConnectorLength => (Table::Across, "connector-length"),
        Measured::ConnectorDiameter => (Table::Across, "connector-diameter"),
        Measured::AcrossFlats => (Table::Across, "across-flats"),
        Measured::ConnectorGap => (Table::Across, "connector-gap"),
        Measured::BoltProud => (Table::Across, "bolt-proud"),
        Measured::ContactResistance => (Table::Resistance, "contact"),
        Measured::BondResistance { .. } => (Table::Resistance, "bond"),
        Measured::ShieldResistance => (Table::Resistance, "shield"),
        Measured::BoltTorque => (Table::Torque, "bolts"),
        Measured::ShieldElements => (Table::Count, "shield-elements"),
        Measured::Strands => (Table::Count, "strands"),
        Measured::Presses => (Table::Count, "presses"),
        Measured::Bolts => (Table::Count, "bolts"),
        Measured::ConductorMetal => (Table::Seen, "conductor-metal"),
        Measured::ShieldForm => (Table::Seen, "shield-form"),
        Measured::StrandMoisture => (Table::Seen, "strand-moisture"),
        Measured::ShieldMoisture => (Table::Seen, "shield-moisture"),
        Measured::JacketSurface => (Table::Seen, "jacket-surface"),
        Measured::Surface { .. } => (Table::Seen, "surface"),
        Measured::Bridge => (Table::Seen, "bridge"),
        Measured::WiresBesideTape => (Table::Seen, "wires-beside-tape"),
        Measured::Phase => (Table::Seen, "phase"),
        Measured::Die => (Table::Seen, "die"),
        Measured::ShieldOpen => (Table::Seen, "shield-open"),
    }
}

/// Word of a sound finding, whoever asks for it; `None` if what is sound depends on the joint.
pub const fn sound_word(measured: &Measured) -> Option<&'static str> {
    match measured {
        Measured::StrandMoisture | Measured::ShieldMoisture => Some("dry"),
        Measured::Surface { .. } => Some("nothing"),
        Measured::Bridge => Some("on-and-tight"),
        Measured::Phase => Some("same"),
        _ => None,
    }
}

/// Words that may be found for what is seen; empty if the file takes any name.
pub const fn words_of(measured: &Measured) -> &'static [&'static str] {
    match measured {
        Measured::StrandMoisture | Measured::ShieldMoisture => &["dry", "wet"],
        Measured::Surface { .. } => &[
            "nothing",
            "nick",
            "ring-cut",
            "scored",
            "jagged-edge",
            "speck",
            "dirt",
            "void",
            "off-axis",
        ],
        Measured::Bridge => &["on-and-tight", "loose", "off"],
        Measured::WiresBesideTape => &["none", "laid-back", "cut-off"],
        Measured::Phase => &["same", "unlike", "in-doubt"],
        Measured::ShieldOpen => &["open", "joined"],
        Measured::ConductorMetal => METALS,
        Measured::ShieldForm => SHIELD_KINDS,
        Measured::JacketSurface => JACKET_SURFACES,
        _ => &[],
    }
}
