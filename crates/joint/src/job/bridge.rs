//! Bridge: time at which the bridge of the metallic shield comes off, by the owner's word.
//!
//! Why its own file: only the order of two steps depends on it.

use super::authority::decided;
use super::reader::JobReader;
use crate::catalogue::BridgeMoment;
use crate::form::Need::Required;
use crate::form::{Kind, Record, Shape, field};

/// Owner's decision about the bridge.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BridgeOff {
    /// Time at which it comes off.
    pub when: BridgeMoment,
    /// Person and date.
    pub source: String,
}

pub(super) const BRIDGE_OFF: Shape = Shape {
    name: "bridge_off",
    about: "When the bridge of the metallic shield comes off.",
    fields: &[
        field(
            "when",
            Kind::Choice(BridgeMoment::NAMES),
            Required,
            "After or before the permanent bond is measured.",
        ),
        field("by", Kind::Text, Required, "Who says so."),
        field("date", Kind::Date, Required, "When they said it."),
    ],
};

pub(super) fn bridge_off(reader: &mut JobReader<'_>, row: &Record) -> Option<BridgeOff> {
    let source = decided(reader, row, "bridge");
    Some(BridgeOff {
        when: BridgeMoment::from_name(row.text("when")?)?,
        source: source?,
    })
}
