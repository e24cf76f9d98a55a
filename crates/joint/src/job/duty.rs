//! Duty: currents and times that the joint must carry.

use super::daily::{Daily, daily};
use super::reader::JobReader;
use crate::form::Record;

/// Currents and times that the joint must carry.
#[derive(Clone, Debug, Default)]
pub struct Duty {
    /// Continuous load, A.
    pub load_a: Option<f64>,
    /// Emergency load, A.
    pub emergency_a: Option<f64>,
    /// Greatest duration of the emergency load, s.
    pub emergency_s: Option<f64>,
    /// Highest temperature of the conductor in service, degrees Celsius.
    pub conductor_greatest_degc: Option<f64>,
    /// Conductor fault, A.
    pub fault_a: Option<f64>,
    /// Duration of the conductor fault, s.
    pub fault_s: Option<f64>,
    /// Whether the conductor fault flows in three phases alike, if stated.
    pub is_fault_balanced: Option<bool>,
    /// Shield fault, A.
    pub shield_fault_a: Option<f64>,
    /// Duration of the shield fault, s.
    pub shield_fault_s: Option<f64>,
    /// Reclosing shots.
    pub reclosing: Option<i64>,
    /// Daily course of the load, for a run of cable without a joint.
    pub daily: Option<Daily>,
}

pub(super) fn duty(reader: &mut JobReader<'_>, row: &Record) -> Duty {
    Duty {
        load_a: row.number("load"),
        emergency_a: row.number("emergency"),
        emergency_s: row.number("emergency_time"),
        conductor_greatest_degc: row.number("conductor_greatest"),
        fault_a: row.number("fault"),
        fault_s: row.number("fault_time"),
        is_fault_balanced: row.text("fault_kind").map(|word| word == "three-phase"),
        shield_fault_a: row.number("shield_fault"),
        shield_fault_s: row.number("shield_fault_time"),
        reclosing: row.integer("reclosing"),
        daily: daily(reader, row),
    }
}
