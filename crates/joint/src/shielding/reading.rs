//! Reading: a resistance read along a shield, beside what its papers let expect at that temperature.

use super::along::{along_by_papers, metres};
use super::unknown;
use crate::job::{Continuity, Leg};
use crate::said::{ReadingAsk, ReadingSaid, Said};
use crate::section::Unknown;

/// How a reading stands to what is expected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Agreement {
    /// Below it by more than the instrument's error.
    Below,
    /// Within it, as far as the instrument can tell.
    Within,
    /// Above it by more than the instrument's error.
    Above,
}

/// A reading of the shield alone.
#[derive(Clone, Debug, PartialEq)]
pub struct Agreed {
    /// What was read, without the test leads, ohm.
    pub read_ohm: f64,
    /// Least and greatest expected at the reading's temperature, ohm.
    pub expected_ohm: (f64, f64),
    /// What was read, by length and at 20 °C, ohm/km.
    pub at_20_ohm_per_km: f64,
    /// How far off that may be, ohm/km.
    pub error_ohm_per_km: f64,
    /// Length of shield, m.
    pub length_m: f64,
    /// Temperature of the reading, °C.
    pub degc: f64,
    /// Between what the expected lies.
    pub of: Said,
    /// How it stands.
    pub stands: Agreement,
}

/// A reading beside what the papers of its leg let expect.
///
/// # Errors
/// Where it says nothing of the shield alone, or what is expected is not known; with the questions to put.
pub fn agreement(leg: &Leg, row: &Continuity) -> Result<Agreed, Unknown> {
    if row.is_bonded {
        return Err(unknown(ReadingSaid::EndsWereBonded, ReadingAsk::EndsOpen));
    }
    let leads_ohm = match (row.n_wires, row.leads_ohm) {
        (2, None) => {
            return Err(unknown(ReadingSaid::TwoWires, ReadingAsk::Leads));
        }
        (2, Some(leads_ohm)) => leads_ohm,
        _ => 0.0,
    };
    let (Some(degc), Some(length)) = (row.degc, row.length) else {
        return Err(unknown(
            ReadingSaid::TemperatureOrLengthNotStated,
            ReadingAsk::TemperatureAndLength,
        ));
    };
    let read_ohm = row.ohm - leads_ohm;
    let length_m = metres(length);
    if read_ohm <= 0.0 || length_m <= 0.0 {
        return Err(unknown(ReadingSaid::LeadsHaveAsMuch, ReadingAsk::FourWires));
    }
    let along = along_by_papers(leg)?;
    let (least, greatest) = along.at_ohm_per_m(degc);
    let expected_ohm = (least * length_m, greatest * length_m);
    // Two readings are subtracted, so their errors add up.
    let error_ohm = if row.n_wires == 2 {
        2.0 * row.error_ohm
    } else {
        row.error_ohm
    };
    let stands = if read_ohm - error_ohm > expected_ohm.1 {
        Agreement::Above
    } else if read_ohm + error_ohm < expected_ohm.0 {
        Agreement::Below
    } else {
        Agreement::Within
    };
    // What a resistance of one at 20 °C has at that temperature.
    let warm = least / along.at_20_ohm_per_m.0;
    let per_km = 1e3 / (length_m * warm);
    Ok(Agreed {
        read_ohm,
        expected_ohm,
        at_20_ohm_per_km: read_ohm * per_km,
        error_ohm_per_km: error_ohm * per_km,
        length_m,
        degc,
        of: along.says,
        stands,
    })
}
