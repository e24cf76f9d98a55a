//! Table of fields of a file of readings as built.

use crate::catalogue::LAYER_NAMES;
use crate::form::Need::{Optional, Required};
use crate::form::{Field, Kind, Measure, Shape, field};
use crate::job::{ONE_LEG, ONE_PHASE};
use crate::plane::Plane;

/// Kinds of instruments.
const INSTRUMENT_KINDS: &[&str] = &[
    "steel-rule",
    "tape-measure",
    "calliper",
    "diameter-tape",
    "micrometer",
    "feeler-gauge",
    "micro-ohmmeter",
    "torque-wrench",
];
const PARTS_ALONG: &[&str] = &["adapter-ends", "shield-kept", "seal-overlap"];
const PLANES_AND_PARTS: &[&str] = &concat();
const SIZES: &[&str] = &[
    "diameter",
    "connector-length",
    "connector-diameter",
    "across-flats",
    "connector-gap",
    "bolt-proud",
];
const RESISTANCES: &[&str] = &["contact", "bond", "shield"];
const COUNTS: &[&str] = &["shield-elements", "strands", "presses", "bolts"];
const SIGHTS: &[&str] = &[
    "conductor-metal",
    "shield-form",
    "strand-moisture",
    "shield-moisture",
    "jacket-surface",
    "surface",
    "bridge",
    "wires-beside-tape",
    "phase",
    "die",
    "shield-open",
];

/// Names of planes, then of lengths of parts along the cable.
const fn concat() -> [&'static str; Plane::NAMES.len() + PARTS_ALONG.len()] {
    let mut all = [""; Plane::NAMES.len() + PARTS_ALONG.len()];
    let mut k = 0;
    while k < all.len() {
        all[k] = if k < Plane::NAMES.len() {
            Plane::NAMES[k]
        } else {
            PARTS_ALONG[k - Plane::NAMES.len()]
        };
        k += 1;
    }
    all
}

const WITH: Field = field(
    "with",
    Kind::Id,
    Optional,
    "Name of the instrument; needed once the row holds a reading.",
);
const BY: Field = field(
    "by",
    Kind::Text,
    Optional,
    "Person who read it; left out: the person at the head of the file.",
);
const DATE: Field = field(
    "date",
    Kind::Date,
    Optional,
    "Day of the reading; left out: the day at the head of the file.",
);
const TIME: Field = field("time", Kind::Text, Optional, "Time of day, as \"14:20\".");
const DECISION: Field = field(
    "decision",
    Kind::Id,
    Optional,
    "Name of the decision about it, if a named person made one.",
);
const NOTE: Field = field(
    "note",
    Kind::Said,
    Optional,
    "What the crew adds, in its own words.",
);

const INSTRUMENT: Shape = Shape {
    name: "instrument",
    about: "One instrument, by the name that the readings use.",
    fields: &[
        field("id", Kind::Id, Required, "Name in this file."),
        field(
            "kind",
            Kind::Choice(INSTRUMENT_KINDS),
            Required,
            "Kind of instrument.",
        ),
        field(
            "error",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Error of a length either way, from its certificate or from trials.",
        ),
        field(
            "error_ohm",
            Kind::Above(&Kind::Quantity(Measure::Resistance)),
            Optional,
            "Error of a resistance either way.",
        ),
        field(
            "error_torque",
            Kind::Above(&Kind::Quantity(Measure::Torque)),
            Optional,
            "Error of a torque either way.",
        ),
        field("serial", Kind::Text, Optional, "Number of the instrument."),
    ],
};

const DECISIONS: Shape = Shape {
    name: "decision",
    about: "One decision of a named person, by the name that the readings use.",
    fields: &[
        field("id", Kind::Id, Required, "Name in this file."),
        field("by", Kind::Text, Required, "Person who decided."),
        field("role", Kind::Text, Required, "Role of that person."),
        field(
            "authority",
            Kind::Text,
            Required,
            "On whose authority: the owner's rule, the contract, the person's own office.",
        ),
        field(
            "reached",
            Kind::Text,
            Required,
            "How the person was reached, and who wrote it down.",
        ),
        field("date", Kind::Date, Required, "Day."),
        field("time", Kind::Text, Required, "Time of day, as \"14:20\"."),
        field(
            "what",
            Kind::Said,
            Required,
            "What was decided, in that person's words.",
        ),
    ],
};

const ALONG: Shape = Shape {
    name: "along",
    about: "One length along the cable of one end: the place of a cut or a mark from the square-cut conductor end, or a length on a part.",
    fields: &[
        ONE_LEG,
        ONE_PHASE,
        field(
            "of",
            Kind::Choice(PLANES_AND_PARTS),
            Required,
            "Plane, or length on a part.",
        ),
        field(
            "from",
            Kind::Choice(Plane::NAMES),
            Optional,
            "Plane from which a distance is read; left out: the square-cut conductor end.",
        ),
        field(
            "at",
            Kind::List(&Kind::Cut),
            Optional,
            "Values, one for each clock point at which it was read; empty: not read yet.",
        ),
        WITH,
        BY,
        DATE,
        TIME,
        DECISION,
        NOTE,
    ],
};

const ACROSS: Shape = Shape {
    name: "across",
    about: "One diameter of one end, or one size of its connector.",
    fields: &[
        ONE_LEG,
        ONE_PHASE,
        field("of", Kind::Choice(SIZES), Required, "Quantity."),
        field(
            "over",
            Kind::Choice(LAYER_NAMES),
            Optional,
            "Layer, for a diameter of the cable.",
        ),
        field(
            "values",
            Kind::List(&Kind::Diameter),
            Optional,
            "Values; empty: not read yet.",
        ),
        field(
            "temperature",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Temperature of the cable, for a diameter; without it no pressure is computed from the reading.",
        ),
        WITH,
        BY,
        DATE,
        TIME,
        DECISION,
        NOTE,
    ],
};

const RESISTANCE: Shape = Shape {
    name: "resistance",
    about: "One resistance of one end.",
    fields: &[
        ONE_LEG,
        ONE_PHASE,
        field("of", Kind::Choice(RESISTANCES), Required, "Quantity."),
        field(
            "to",
            Kind::Id,
            Optional,
            "Leg to which the shield is bonded, for a bond.",
        ),
        field(
            "ohm",
            Kind::Quantity(Measure::Resistance),
            Optional,
            "Value with its unit; left out: not read yet.",
        ),
        WITH,
        BY,
        DATE,
        TIME,
        DECISION,
        NOTE,
    ],
};

const TORQUE: Shape = Shape {
    name: "torque",
    about: "Torques of the bolts at one end.",
    fields: &[
        ONE_LEG,
        ONE_PHASE,
        field("of", Kind::Choice(&["bolts"]), Required, "Quantity."),
        field(
            "values",
            Kind::List(&Kind::Quantity(Measure::Torque)),
            Optional,
            "Values; empty: not read yet.",
        ),
        WITH,
        BY,
        DATE,
        TIME,
        DECISION,
        NOTE,
    ],
};

const COUNT: Shape = Shape {
    name: "count",
    about: "One count at one end.",
    fields: &[
        ONE_LEG,
        ONE_PHASE,
        field("of", Kind::Choice(COUNTS), Required, "What was counted."),
        field(
            "n",
            Kind::Integer {
                least: 0,
                greatest: 10_000,
            },
            Optional,
            "Number; left out: not counted yet.",
        ),
        BY,
        DATE,
        TIME,
        DECISION,
        NOTE,
    ],
};

const SEEN: Shape = Shape {
    name: "seen",
    about: "What was seen, felt, tested or found at one end.",
    fields: &[
        ONE_LEG,
        ONE_PHASE,
        field("of", Kind::Choice(SIGHTS), Required, "What was looked at."),
        field(
            "on",
            Kind::Choice(LAYER_NAMES),
            Optional,
            "Layer, for a surface.",
        ),
        field(
            "found",
            Kind::Text,
            Optional,
            "What was found, by its word; left out: not looked at yet.",
        ),
        field(
            "how",
            Kind::Text,
            Optional,
            "How it was tested, for moisture.",
        ),
        BY,
        DATE,
        TIME,
        DECISION,
        NOTE,
    ],
};

/// Fields of a file of readings as built.
pub const READINGS: Shape = Shape {
    name: "readings",
    about: "Readings as built of one joint, against one plan of it.",
    fields: &[
        field("job", Kind::Id, Required, "Job."),
        field(
            "plan",
            Kind::Text,
            Required,
            "Short mark of the plan that the crew had in hand.",
        ),
        field(
            "by",
            Kind::Text,
            Optional,
            "Person who read, for every row that names no other.",
        ),
        field(
            "date",
            Kind::Date,
            Optional,
            "Day of the readings, for every row that names no other.",
        ),
        field(
            "instrument",
            Kind::Rows(&INSTRUMENT),
            Optional,
            "Instruments.",
        ),
        field(
            "decision",
            Kind::Rows(&DECISIONS),
            Optional,
            "Decisions of named persons; nothing in them is filled in beforehand.",
        ),
        field(
            "along",
            Kind::Rows(&ALONG),
            Optional,
            "Lengths along the cable.",
        ),
        field(
            "across",
            Kind::Rows(&ACROSS),
            Optional,
            "Diameters and sizes.",
        ),
        field(
            "resistance",
            Kind::Rows(&RESISTANCE),
            Optional,
            "Resistances.",
        ),
        field("torque", Kind::Rows(&TORQUE), Optional, "Torques."),
        field("count", Kind::Rows(&COUNT), Optional, "Counts."),
        field(
            "seen",
            Kind::Rows(&SEEN),
            Optional,
            "What was seen, felt, tested or found.",
        ),
    ],
};
