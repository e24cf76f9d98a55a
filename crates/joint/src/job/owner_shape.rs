//! Table of fields of the owner's decisions: windows, confirmations, closings.

use super::end_shape::{CLOSED_LEGS, CLOSED_PHASES, LEGS_OR_ALL};
use crate::form::Need::Required;
use crate::form::{Kind, Shape, field};
use crate::plane::Plane;

pub(super) const OWNER_WINDOW: Shape = Shape {
    name: "owner_window",
    about: "A window set by the owner's engineer, about the planned place of a cut.",
    fields: &[
        field("plane", Kind::Choice(Plane::NAMES), Required, "Plane."),
        LEGS_OR_ALL,
        field("minus", Kind::Cut, Required, "How much shorter."),
        field("plus", Kind::Cut, Required, "How much longer."),
        field("by", Kind::Text, Required, "Who set it."),
        field("date", Kind::Date, Required, "When."),
    ],
};

pub(super) const CONFIRMATION: Shape = Shape {
    name: "confirmation",
    about: "The owner's word that a value here from memory stands in the edition in force.",
    fields: &[
        field(
            "key",
            Kind::Id,
            Required,
            "Key of the value's source, as the ruling names it.",
        ),
        field("edition", Kind::Text, Required, "Edition that was read."),
        field("by", Kind::Text, Required, "Who read it."),
        field("date", Kind::Date, Required, "When."),
    ],
};

pub(super) const CLOSING: Shape = Shape {
    name: "closing",
    about: "A named engineer's reasoned word on one question that stays not judged; it is printed as that and is never a pass.",
    fields: &[
        field("check", Kind::Text, Required, "Name of the check."),
        CLOSED_LEGS,
        CLOSED_PHASES,
        field(
            "fact",
            Kind::Text,
            Required,
            "Fact that is asked for, as the plan names it, and stays unanswered.",
        ),
        field("why", Kind::Said, Required, "Why it may stay so."),
        field("by", Kind::Text, Required, "Who says so."),
        field("date", Kind::Date, Required, "When."),
        field("until", Kind::Date, Required, "Last day on which it holds."),
    ],
};
