//! Table of fields of a leg's shield beyond the joint: formation of its three cables, length, next bond, readings along it.

use super::end_shape::{ONE_LEG, ONE_PHASE};
use crate::catalogue::METALS;
use crate::form::Need::{Optional, Required};
use crate::form::{Field, Kind, Measure, Shape, field};

/// Words for the formation of the three cables of a run.
pub const FORMATIONS: &[&str] = &["trefoil", "flat"];

pub(super) const LAY: Field = field(
    "lay",
    Kind::Above(&Kind::Distance),
    Optional,
    "Length along the cable in which a wire or strap goes round once; left out: taken as straight.",
);

pub(super) const FORMATION: Field = field(
    "formation",
    Kind::Choice(FORMATIONS),
    Optional,
    "How the three cables of this leg's run lie: in a triangle with equal sides, or in one plane with equal distances and not transposed.",
);

pub(super) const SPACING: Field = field(
    "spacing",
    Kind::Above(&Kind::Distance),
    Optional,
    "Distance between the axes of neighbouring cables of the run.",
);

pub(super) const RUN_LENGTH: Field = field(
    "run_length",
    Kind::Above(&Kind::Distance),
    Optional,
    "Length of cable from the joint to where this leg's shield is next bonded, or ends; up to 10 km, such as \"1350 ft\" or \"412 m\".",
);

pub(super) const ROUTE_LENGTH: Field = field(
    "route_length",
    Kind::Above(&Kind::Distance),
    Optional,
    "Of a run of cable without a joint: how long its route is, whatever surrounds it; up to 10 km. The `length` of all stretches of its surroundings add up to it.",
);

pub(super) const FAR_END_BONDED: Field = field(
    "far_end_bonded",
    Kind::Flag,
    Optional,
    "True when the shield is earthed at the far end of that run too, false when it is not; the joint's own end is `bonding`.",
);

/// Words for the path of a stated fault of the conductor.
pub const FAULT_KINDS: &[&str] = &["three-phase", "to-earth"];

pub(super) const FAULT_KIND: Field = field(
    "fault_kind",
    Kind::Choice(FAULT_KINDS),
    Optional,
    "Whether `fault` flows in three phases alike, or to earth; in the first case alone is the voltage along a shield computed.",
);

pub(super) const GREATEST_V: Field = field(
    "greatest_v",
    Kind::Number {
        least: 0.0,
        greatest: 1.0e4,
    },
    Optional,
    "Greatest voltage, V rms, along a shield that is open at one end, at `duty.load`, for `standing_voltage`.",
);

/// Words for the state of a shield's ends during a reading.
pub const SHIELD_ENDS: &[&str] = &["open", "bonded"];

pub(super) const CONTINUITY: Shape = Shape {
    name: "continuity",
    about: "Resistance read along the shield of one phase of a leg.",
    fields: &[
        ONE_LEG,
        ONE_PHASE,
        field(
            "resistance",
            Kind::Quantity(Measure::Resistance),
            Required,
            "What the instrument showed.",
        ),
        ERROR,
        field(
            "wires",
            Kind::Integer {
                least: 2,
                greatest: 4,
            },
            Required,
            "4 where current and voltage have clips of their own, else 2.",
        ),
        field(
            "leads",
            Kind::Quantity(Measure::Resistance),
            Optional,
            "Resistance of the test leads with their clips joined, for two wires.",
        ),
        field(
            "ends",
            Kind::Choice(SHIELD_ENDS),
            Required,
            "Whether the ends of the shield were open or bonded while it was read.",
        ),
        field(
            "length",
            Kind::Above(&Kind::Distance),
            Optional,
            "Length of shield between the clips.",
        ),
        field(
            "temperature",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Temperature of the shield.",
        ),
        BY,
        DATE,
    ],
};

const ERROR: Field = field(
    "error",
    Kind::Above(&Kind::Quantity(Measure::Resistance)),
    Required,
    "How far off the instrument may be, either way.",
);
const BY: Field = field("by", Kind::Text, Required, "Who read it.");
const DATE: Field = field("date", Kind::Date, Required, "When.");

pub(super) const GREATEST_OHM_PER_KM: Field = field(
    "greatest_ohm_per_km",
    Kind::Number {
        least: 0.0,
        greatest: 1.0e4,
    },
    Optional,
    "Greatest resistance along a shield, ohm/km at 20 degC, for `shield_continuity`.",
);

pub(super) const CONTACT: Shape = Shape {
    name: "contact",
    about: "Resistance read across one connection in the way of the shield's current.",
    fields: &[
        ONE_LEG,
        ONE_PHASE,
        field(
            "at",
            Kind::Text,
            Required,
            "Which connection: \"braid to shield\", \"spring\", \"lead to earth\".",
        ),
        field(
            "resistance",
            Kind::Quantity(Measure::Resistance),
            Required,
            "What the instrument showed, with four wires.",
        ),
        ERROR,
        BY,
        DATE,
    ],
};

pub(super) const BONDING_LEAD: Shape = Shape {
    name: "lead",
    about: "The lead that bonds the shield of a leg to earth.",
    fields: &[
        field(
            "area",
            Kind::Above(&Kind::Quantity(Measure::Area)),
            Required,
            "Its metal section.",
        ),
        field("metal", Kind::Choice(METALS), Required, "Its metal."),
        field(
            "fault_greatest",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Highest temperature it may reach in a short circuit, as its paper gives it.",
        ),
    ],
};
