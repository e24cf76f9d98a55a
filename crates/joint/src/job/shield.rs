//! Shield of a leg beyond the joint, as typed values.

use super::reader::JobReader;
use crate::cable::Metal;
use crate::catalogue::metal;
use crate::end::EndId;
use crate::form::Record;
use crate::said::{RowHint, RowSaid};
use jiff::civil::Date;
use jointwright_units::Length;

/// Formation of the three cables of a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Formation {
    /// Triangle with equal sides.
    Trefoil,
    /// One plane, equal distances, not transposed.
    Flat,
}

/// Facts of a leg's shield beyond the joint; `None` if the job does not state them.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct ShieldRun {
    /// Length of lay of its wires or straps.
    pub lay: Option<Length>,
    /// Formation of the three cables.
    pub formation: Option<Formation>,
    /// Distance between the axes of neighbours.
    pub spacing: Option<Length>,
    /// Length from the joint to the place where the shield is next bonded, or ends.
    pub length: Option<Length>,
    /// Whether the shield is earthed at that place.
    pub is_far_end_bonded: Option<bool>,
}

/// Returns the shield of a leg beyond the joint, from the leg's record.
pub(super) fn shield_run(leg: &Record) -> ShieldRun {
    let shield = leg.record("cable").and_then(|cable| cable.record("shield"));
    ShieldRun {
        lay: shield.and_then(|row| row.length("lay")),
        formation: leg.text("formation").map(|word| match word {
            "flat" => Formation::Flat,
            _ => Formation::Trefoil,
        }),
        spacing: leg.length("spacing"),
        length: leg.length("run_length"),
        is_far_end_bonded: leg.flag("far_end_bonded"),
    }
}

/// Resistance read along the shield of one end's leg.
#[derive(Clone, Debug)]
pub struct Continuity {
    /// Reading of the instrument, ohm.
    pub ohm: f64,
    /// Error of the instrument, ohm.
    pub error_ohm: f64,
    /// Number of wires: 2 or 4.
    pub n_wires: i64,
    /// Resistance of the test leads, ohm, if stated.
    pub test_leads_ohm: Option<f64>,
    /// Whether the ends of the shield were bonded during the reading.
    pub is_bonded: bool,
    /// Length of shield between the clips, if stated.
    pub length: Option<Length>,
    /// Temperature, degrees Celsius, if stated.
    pub degc: Option<f64>,
    /// Person who read it.
    pub by: String,
    /// Day of the reading.
    pub date: Date,
}

/// Resistance read across one connection in the path of a shield's current.
#[derive(Clone, Debug)]
pub struct Contact {
    /// Connection.
    pub at: String,
    /// Reading of the instrument, ohm.
    pub ohm: f64,
    /// Error of the instrument, ohm.
    pub error_ohm: f64,
    /// Person who read it.
    pub by: String,
    /// Day of the reading.
    pub date: Date,
}

/// Lead that bonds a leg's shield to earth.
#[derive(Clone, Debug)]
pub struct BondingLead {
    /// Metal section, mm².
    pub area_mm2: f64,
    /// Metal.
    pub metal: Metal,
    /// Highest temperature in a short circuit, degrees Celsius, if stated.
    pub fault_greatest_degc: Option<f64>,
}

/// Bonding lead of a leg; `None` if it names none.
pub(super) fn bonding_lead(reader: &mut JobReader<'_>, leg: &Record) -> Option<BondingLead> {
    let row = leg.record("lead")?;
    let area_mm2 = row.number("area")?;
    if area_mm2 <= 0.0 {
        reader.complain(
            row.at("area"),
            RowSaid::LeadHasNoMetal,
            RowHint::WriteItsSection,
        );
        return None;
    }
    Some(BondingLead {
        area_mm2,
        metal: metal(row.text("metal")?)?,
        fault_greatest_degc: row.number("fault_greatest"),
    })
}

pub(super) fn contact(reader: &mut JobReader<'_>, row: &Record) -> Option<(EndId, Contact)> {
    let end = reader.end(row);
    reader.not_after_the_work(row);
    let error_ohm = instrument_error(reader, row);
    let row = Contact {
        at: row.string("at")?,
        ohm: row.number("resistance")?,
        error_ohm: error_ohm?,
        by: row.string("by")?,
        date: row.date("date")?,
    };
    Some((end?, row))
}

pub(super) fn continuity(reader: &mut JobReader<'_>, row: &Record) -> Option<(EndId, Continuity)> {
    let end = reader.end(row);
    reader.not_after_the_work(row);
    let error_ohm = instrument_error(reader, row);
    let n_wires = row.integer("wires")?;
    if n_wires == 3 {
        reader.complain(
            row.at("wires"),
            RowSaid::ThreeWires,
            RowHint::FourOrTwoWires,
        );
    }
    let row = Continuity {
        ohm: row.number("resistance")?,
        error_ohm: error_ohm?,
        n_wires,
        test_leads_ohm: row.number("leads"),
        is_bonded: row.text("ends")? == "bonded",
        length: row.length("length"),
        degc: row.number("temperature"),
        by: row.string("by")?,
        date: row.date("date")?,
    };
    Some((end?, row))
}

/// Error of an instrument, ohm; complains if it is zero.
fn instrument_error(reader: &mut JobReader<'_>, row: &Record) -> Option<f64> {
    let error_ohm = row.number("error")?;
    if error_ohm == 0.0 {
        reader.complain(
            row.at("error"),
            RowSaid::ErrorIsNothing,
            RowHint::WriteItsCertificate,
        );
    }
    Some(error_ohm)
}
