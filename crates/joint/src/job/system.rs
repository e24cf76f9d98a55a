//! System: the network, and the trial for which the joint is made.

use super::reader::JobReader;
use crate::form::Record;
use crate::said::{HeadHint, HeadSaid};
use jointwright_units::VoltageRms;

/// Network.
#[derive(Clone, Debug)]
pub struct System {
    /// Nominal voltage, kV phase to phase.
    pub nominal_kv: f64,
    /// Highest continuous voltage, kV phase to phase.
    pub highest_kv: f64,
    /// Frequency, Hz.
    pub frequency_hz: f64,
    /// Earthing.
    pub earthing: String,
    /// Longest clearing time, s.
    pub clearing_time_s: Option<f64>,
}

impl System {
    /// Highest continuous voltage between conductor and earth: Um over the square root of three.
    pub fn voltage(&self) -> VoltageRms {
        VoltageRms::from_kv(self.highest_kv / 3.0_f64.sqrt())
    }

    /// Voltage between conductor and earth while an earth fault is cleared: Um; `None` if earthing is solid.
    pub fn voltage_in_earth_fault(&self) -> Option<VoltageRms> {
        (self.earthing != "solid").then(|| VoltageRms::from_kv(self.highest_kv))
    }
}

/// Trial on the cable.
#[derive(Clone, Debug, PartialEq)]
pub struct Trial {
    /// Voltage between conductor and earth, kV rms.
    pub level_kv: f64,
    /// Frequency, Hz.
    pub frequency_hz: f64,
    /// Whether its waveform is cosine-rectangular, with a crest equal to its rms; else it is a sine.
    pub is_rectangular: bool,
    /// Standard, edition and clause, or the person who sets it.
    pub from: String,
}

impl Trial {
    /// Sine with the same crest, between conductor and earth, rms.
    pub fn sine_of_same_crest(&self) -> VoltageRms {
        let rms = VoltageRms::from_kv(self.level_kv);
        if self.is_rectangular {
            VoltageRms::from_kv(self.level_kv / std::f64::consts::SQRT_2)
        } else {
            rms
        }
    }
}

pub(super) fn trial(row: &Record) -> Option<Trial> {
    Some(Trial {
        level_kv: row.number("level")?,
        frequency_hz: row.number("frequency")?,
        is_rectangular: row.text("waveform")? == "cosine-rectangular",
        from: row.string("from")?,
    })
}

pub(super) fn system(reader: &mut JobReader<'_>, record: &Record) -> Option<System> {
    let (nominal, highest) = (record.number("nominal"), record.number("highest"));
    if let (Some(nominal), Some(highest)) = (nominal, highest)
        && highest < nominal
    {
        reader.complain(
            record.at("highest"),
            HeadSaid::HighestBelowNominal {
                highest_kv: highest,
                nominal_kv: nominal,
            },
            HeadHint::PhaseToPhase,
        );
    }
    for (name, value) in [("nominal", nominal), ("highest", highest)] {
        if let Some(value) = value
            && !(1.0..=52.0).contains(&value)
        {
            reader.complain(
                record.at(name),
                HeadSaid::NoMediumVoltage {
                    field: name.to_owned(),
                    kv: value,
                },
                HeadHint::LookAtVoltage,
            );
        }
    }
    Some(System {
        nominal_kv: nominal?,
        highest_kv: highest?,
        frequency_hz: record.number("frequency")?,
        earthing: record.string("earthing")?,
        clearing_time_s: record.number("clearing_time"),
    })
}
