//! Reading: a resistance read along a shield, and the resistance expected from its papers at that temperature.

use super::along::along_by_papers;
use super::unknown;
use crate::job::{Continuity, Leg};
use crate::said::{ReadingAsk, ReadingSaid, Said};
use crate::section::Unknown;

/// Comparison of a reading with the expected range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Agreement {
    /// Below the range by more than the instrument's error.
    Below,
    /// Within the range, as far as the instrument can tell.
    Within,
    /// Above the range by more than the instrument's error.
    Above,
}

/// A reading of the shield alone.
#[derive(Clone, Debug, PartialEq)]
pub struct Agreed {
    /// Resistance as read, without the test leads, ohm.
    pub read_ohm: f64,
    /// Least and greatest expected resistance at the reading's temperature, ohm.
    pub expected_ohm: (f64, f64),
    /// Reading per length and at 20 °C, ohm/km.
    pub at_20_ohm_per_km: f64,
    /// Error of that value, ohm/km.
    pub error_ohm_per_km: f64,
    /// Length of shield, m.
    pub length_m: f64,
    /// Temperature of the reading, °C.
    pub degc: f64,
    /// Bounds of the expected resistance, in words.
    pub of: Said,
    /// Result of the comparison.
    pub stands: Agreement,
}

/// Compares a reading with the resistance expected from the papers of its leg.
///
/// # Errors
/// A reading that does not measure the shield alone, or an expected resistance that is not known; with the questions.
pub fn agreement(leg: &Leg, row: &Continuity) -> Result<Agreed, Unknown> {
    if row.is_bonded {
        return Err(unknown(ReadingSaid::EndsWereBonded, ReadingAsk::EndsOpen));
    }
    let test_leads_ohm = match (row.n_wires, row.test_leads_ohm) {
        (2, None) => {
            return Err(unknown(ReadingSaid::TwoWires, ReadingAsk::Leads));
        }
        (2, Some(test_leads_ohm)) => test_leads_ohm,
        _ => 0.0,
    };
    let (Some(degc), Some(length)) = (row.degc, row.length) else {
        return Err(unknown(
            ReadingSaid::TemperatureOrLengthNotStated,
            ReadingAsk::TemperatureAndLength,
        ));
    };
    let read_ohm = row.ohm - test_leads_ohm;
    let length_m = length.m();
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
    // Temperature factor of the resistance, relative to 20 °C.
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
