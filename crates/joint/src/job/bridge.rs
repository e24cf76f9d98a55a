//! Bridge: time at which the bridge of the metallic shield comes off, by the owner's word.
//!
//! Why its own file: only the order of two steps depends on it.

use super::walk_job::JobReader;
use crate::catalogue::BridgeMoment;
use crate::form::Need::Required;
use crate::form::{Field, Kind, Record, Shape};

/// Owner's decision about the bridge.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BridgeOff {
    /// Time at which it comes off.
    pub when: BridgeMoment,
    /// Person and date.
    pub source: String,
}

const fn required(name: &'static str, kind: Kind, about: &'static str) -> Field {
    Field {
        name,
        kind,
        need: Required,
        about,
    }
}

pub(super) const BRIDGE_OFF: Shape = Shape {
    name: "bridge_off",
    about: "When the bridge of the metallic shield comes off.",
    fields: &[
        required(
            "when",
            Kind::Choice(BridgeMoment::NAMES),
            "After or before the permanent bond is measured.",
        ),
        required("by", Kind::Text, "Who says so."),
        required("date", Kind::Date, "When they said it."),
    ],
};

impl JobReader<'_> {
    pub(super) fn bridge_off(&mut self, row: &Record) -> Option<BridgeOff> {
        let source = self.decided(row, "bridge");
        Some(BridgeOff {
            when: BridgeMoment::from_name(row.text("when")?)?,
            source: source?,
        })
    }
}
