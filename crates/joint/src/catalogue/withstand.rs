//! Withstand: the short circuit that the paper of a part allows.

use super::reader::RowReader;
use crate::form::Record;

/// A short circuit that a part's paper allows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Withstand {
    /// Current, A rms.
    pub current_a: f64,
    /// Time for which it may flow, s.
    pub time_s: f64,
}

/// Short circuit that a part's paper allows: current and time, or neither.
pub(super) fn read_withstand(reader: &mut RowReader<'_>, record: &Record) -> Option<Withstand> {
    let (current, time) = (record.number("fault"), record.number("fault_time"));
    let (Some(current_a), Some(time_s)) = (current, time) else {
        for (given, name, other) in [
            (current, "fault", "fault_time"),
            (time, "fault_time", "fault"),
        ] {
            if given.is_some() && record.is_given(name) && !record.is_given(other) {
                reader.complain(
                    record.at(name),
                    format!("`{name}` is given without `{other}`."),
                    "A short-circuit current means nothing without its time: write both, or neither.",
                );
            }
        }
        return None;
    };
    if current_a > 0.0 && time_s > 0.0 {
        return Some(Withstand { current_a, time_s });
    }
    reader.complain(
        record.at("fault"),
        "`fault` and `fault_time` are above 0.".to_owned(),
        "Look them up again, or take both out.",
    );
    None
}
