//! The tables of fields inside a row: its paper, ranges, distances, steps, shelf life, inner geometry.

use super::thermal::{CAPACITY_FIELD, RESISTIVITY_FIELD};
use crate::form::Need::{Optional, Required};
use crate::form::{Field, Kind, Measure, Need, Shape};
use crate::plane::PLANE_NAMES;
use crate::stage::STAGE_NAMES;

pub(super) const fn field(
    name: &'static str,
    kind: Kind,
    need: Need,
    about: &'static str,
) -> Field {
    Field {
        name,
        kind,
        need,
        about,
    }
}

/// Words for the layers on which a part may sit.
pub const LAYER_NAMES: &[&str] = &[
    "conductor",
    "conductor-screen",
    "insulation",
    "insulation-screen",
    "metallic-shield",
    "jacket",
];
/// Words for the kinds of metallic shield.
pub const SHIELD_KINDS: &[&str] = &[
    "flat-straps",
    "concentric-wires",
    "lapped-tape",
    "corrugated-tape",
    "tape-with-wires",
];
/// Words for conductor metals.
pub const METALS: &[&str] = &["copper", "aluminium"];
/// Words for strandings.
pub const STRANDINGS: &[&str] = &["solid", "concentric", "compressed", "compact"];
/// Words for the kinds of joint.
pub const KINDS: &[&str] = &["straight", "branch", "separable"];
/// Words for the bondings of a leg's shield.
pub const BONDINGS: &[&str] = &["solid", "open", "linked"];
/// Words for the earthings of a system.
pub const EARTHINGS: &[&str] = &["solid", "impedance", "resonant", "isolated"];
/// Words for the places of a fit.
pub const WHERE_NAMES: &[&str] = &["bore", "mouth", "seal"];
/// Words for the time until which a made-up part may be moved.
pub const MOVES: &[&str] = &["never", "before-holdout-is-out", "within-minutes"];
/// Words for the surface of a jacket under a seal.
pub const JACKET_SURFACES: &[&str] = &["smooth", "scored", "wrinkled", "embossed", "cracked"];
/// Words for the span of a seal.
pub const SPANS: &[&str] = &["leg", "joint"];
/// Words for a connector's means of grip.
pub const MEANS: &[&str] = &["compression", "shear-bolt", "set-screw"];
/// Words for the origin of inner geometry.
pub const ORIGINS: &[&str] = &["maker", "measured"];
/// Words for the duty of a material in the field inside a body.
pub const FIELD_DUTIES: &[&str] = &["insulation", "electrode", "deflector"];
/// Words for the date from which the months of a shelf life run.
pub const FROM_DATES: &[&str] = &["made", "expanded"];

pub(super) const INSTRUCTIONS: Shape = Shape {
    name: "instructions",
    about: "The part's own paper: it prevails.",
    fields: &[
        field(
            "paper",
            Kind::Text,
            Required,
            "Number or title of the paper.",
        ),
        field("revision", Kind::Text, Required, "Its revision."),
        field("date", Kind::Date, Optional, "Its date."),
        field(
            "seen_current",
            Kind::Date,
            Optional,
            "Last day on which somebody saw that this revision is the one in force.",
        ),
    ],
};

pub(super) const FITS: Shape = Shape {
    name: "fits",
    about: "A range over a named layer of the cable.",
    fields: &[
        field(
            "at",
            Kind::Choice(WHERE_NAMES),
            Required,
            "Where on the part.",
        ),
        field(
            "over",
            Kind::Choice(LAYER_NAMES),
            Required,
            "Which layer the range is measured over.",
        ),
        field(
            "least",
            Kind::Above(&Kind::Diameter),
            Required,
            "Least permitted diameter.",
        ),
        field(
            "greatest",
            Kind::Above(&Kind::Diameter),
            Required,
            "Greatest permitted diameter.",
        ),
        field(
            "at_temperature",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Temperature for which the range is stated, if the paper states one.",
        ),
        field(
            "ovality",
            Kind::Diameter,
            Optional,
            "Greatest permitted difference between the diameters of one place.",
        ),
    ],
};

pub(super) const LINK: Shape = Shape {
    name: "link",
    about: "A distance between two planes, from whatever datum the instructions use.",
    fields: &[
        field(
            "from",
            Kind::Choice(PLANE_NAMES),
            Required,
            "Plane that is measured from.",
        ),
        field(
            "to",
            Kind::Choice(PLANE_NAMES),
            Required,
            "Plane that is measured to, farther along the cable.",
        ),
        field("distance", Kind::Cut, Required, "Distance as printed."),
        field(
            "minus",
            Kind::Cut,
            Optional,
            "How much shorter is permitted; with `plus`, or neither.",
        ),
        field(
            "plus",
            Kind::Cut,
            Optional,
            "How much longer is permitted; with `minus`, or neither.",
        ),
        field(
            "toward_end",
            Kind::Flag,
            Optional,
            "True when `to` lies nearer the conductor end than `from`.",
        ),
        field(
            "place",
            Kind::Text,
            Optional,
            "Where in the paper this number stands.",
        ),
    ],
};

pub(super) const STEP: Shape = Shape {
    name: "step",
    about: "A step of the part's own instructions.",
    fields: &[
        field(
            "say",
            Kind::Said,
            Required,
            "The step, in the instructions' sense and our words.",
        ),
        field(
            "after",
            Kind::List(&Kind::Id),
            Optional,
            "Short names of steps that come before it.",
        ),
        field("id", Kind::Id, Optional, "Short name of this step."),
        field("caution", Kind::Said, Optional, "What can hurt here."),
        field(
            "hold",
            Kind::Flag,
            Optional,
            "True where work stops until it is measured.",
        ),
        field(
            "stage",
            Kind::Choice(STAGE_NAMES),
            Optional,
            "Moment of the make-up at which it stands; left out, the one at which the part itself comes on.",
        ),
        field(
            "metals",
            Kind::List(&Kind::Choice(METALS)),
            Optional,
            "Conductor metals for which the step is; left out, for all.",
        ),
    ],
};

pub(super) const WRAP: Shape = Shape {
    name: "wrap",
    about: "How a tape is wound, so that its length can be computed.",
    fields: &[
        field(
            "over",
            Kind::Choice(LAYER_NAMES),
            Required,
            "Layer it is wound over.",
        ),
        field(
            "length",
            Kind::Above(&Kind::Cut),
            Required,
            "Stretch of cable that it covers.",
        ),
        field(
            "layers",
            Kind::Integer {
                least: 1,
                greatest: 40,
            },
            Required,
            "Passes from one end of the stretch to the other.",
        ),
        field(
            "lap",
            Kind::Number {
                least: 0.0,
                greatest: 0.9,
            },
            Required,
            "Share of the width by which a turn laps the turn before: 0.5 for half-lapped.",
        ),
        field(
            "drawn",
            Kind::Number {
                least: 1.0,
                greatest: 4.0,
            },
            Optional,
            "How many times its own length it is drawn to as it goes on; left out, it is not drawn.",
        ),
    ],
};

pub(super) const SHELF: Shape = Shape {
    name: "shelf",
    about: "How long the part may lie in store, as the label or paper says.",
    fields: &[
        field(
            "months",
            Kind::Integer {
                least: 1,
                greatest: 600,
            },
            Required,
            "Months from the date named by `from`.",
        ),
        field(
            "from",
            Kind::Choice(FROM_DATES),
            Required,
            "Date that the months run from.",
        ),
        field(
            "store_least",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Lowest storage temperature.",
        ),
        field(
            "store_greatest",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Highest storage temperature.",
        ),
    ],
};

pub(super) const MOVE: Shape = Shape {
    name: "may_move",
    about: "When the part may still be moved after it is placed.",
    fields: &[
        field("when", Kind::Choice(MOVES), Required, "The rule."),
        field(
            "minutes",
            Kind::Integer {
                least: 1,
                greatest: 600,
            },
            Optional,
            "Minutes, for `within-minutes`.",
        ),
    ],
};

pub(super) const REGION: Shape = Shape {
    name: "region",
    about: "One material inside the part, as a closed outline.",
    fields: &[
        field("name", Kind::Id, Required, "Name of the region."),
        field("material", Kind::Text, Required, "Its material."),
        field(
            "along",
            Kind::List(&Kind::Cut),
            Required,
            "Positions of the outline's corners along the axis from the part's datum.",
        ),
        field(
            "diameter",
            Kind::List(&Kind::Diameter),
            Required,
            "Diameters at the same corners.",
        ),
        field(
            "relative_permittivity",
            Kind::Number {
                least: 1.0,
                greatest: 1.0e4,
            },
            Optional,
            "Relative permittivity.",
        ),
        field(
            "conductive",
            Kind::Flag,
            Optional,
            "True for electrodes and screens.",
        ),
        field(
            "stiffness",
            Kind::Number {
                least: 1.0e-3,
                greatest: 1.0e3,
            },
            Optional,
            "Shear modulus over that of the body's rubber; left out, the same.",
        ),
        field(
            "radius",
            Kind::List(&Kind::Diameter),
            Optional,
            "Radii with which the same corners are rounded.",
        ),
        field(
            "serves",
            Kind::Choice(FIELD_DUTIES),
            Optional,
            "What it does for the field: the insulation, the electrode over the connector, or the deflector over the screen edge.",
        ),
        RESISTIVITY_FIELD,
        CAPACITY_FIELD,
    ],
};

pub(super) const SCREEN_STEP: Shape = Shape {
    name: "screen_step",
    about: "How the body lies over the step at the edge of the insulation screen.",
    fields: &[
        field(
            "edge_radius_least",
            Kind::Diameter,
            Required,
            "Least radius of an edge cut as the instructions ask.",
        ),
        field(
            "edge_radius_greatest",
            Kind::Diameter,
            Required,
            "Greatest radius of such an edge.",
        ),
        field(
            "bridging",
            Kind::Diameter,
            Required,
            "Length of cable before the edge over which the body stands off the insulation.",
        ),
        field(
            "filler",
            Kind::Text,
            Optional,
            "What fills the gap before the edge.",
        ),
        field(
            "filler_permittivity",
            Kind::Number {
                least: 1.0,
                greatest: 1.0e3,
            },
            Optional,
            "Relative permittivity of the filler.",
        ),
        field(
            "filler_permanent",
            Kind::Flag,
            Optional,
            "True where the paper calls the filler permanent there.",
        ),
        field(
            "place",
            Kind::Text,
            Optional,
            "Where in the paper these stand.",
        ),
    ],
};

pub(super) const GRADING: Shape = Shape {
    name: "grading",
    about: "A layer of the body that spreads the field, on the insulation from under the electrode to beyond the screen edge.",
    fields: &[
        field(
            "thickness",
            Kind::Above(&Kind::Diameter),
            Required,
            "Its thickness on the diameter for which the inside is stated.",
        ),
        field(
            "relative_permittivity",
            Kind::Number {
                least: 1.0,
                greatest: 1.0e4,
            },
            Required,
            "Relative permittivity.",
        ),
        field(
            "conductivity_s_per_m",
            Kind::Number {
                least: 0.0,
                greatest: 1.0,
            },
            Optional,
            "Conductivity at low fields, S/m; none where it does not conduct.",
        ),
        field(
            "knee_kv_per_mm",
            Kind::Number {
                least: 1.0e-3,
                greatest: 100.0,
            },
            Optional,
            "Field at which the conductivity begins to rise, kV/mm rms.",
        ),
        field(
            "power",
            Kind::Number {
                least: 0.0,
                greatest: 20.0,
            },
            Optional,
            "Power of the field with which it rises far above the knee.",
        ),
    ],
};

pub(super) const INNER: Shape = Shape {
    name: "inner",
    about: "What is inside the part; where it is not known the field cannot be judged.",
    fields: &[
        field(
            "origin",
            Kind::Choice(ORIGINS),
            Required,
            "From the maker, or measured on a part cut open.",
        ),
        field("by", Kind::Text, Required, "Who stands for it."),
        field("date", Kind::Date, Required, "When."),
        field(
            "uncertainty",
            Kind::Above(&Kind::Diameter),
            Required,
            "How far off any of it may be.",
        ),
        field(
            "on_diameter",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Diameter over insulation on which the diameters below are stated.",
        ),
        field(
            "screen_step",
            Kind::Table(&SCREEN_STEP),
            Optional,
            "How the body lies over the edge of the insulation screen.",
        ),
        field(
            "grading",
            Kind::Table(&GRADING),
            Optional,
            "A layer that spreads the field.",
        ),
        field("region", Kind::Rows(&REGION), Required, "The materials."),
    ],
};

pub(super) const BORE: Shape = Shape {
    name: "bore",
    about: "Conductor diameters that a bore takes.",
    fields: &[
        field(
            "least",
            Kind::Above(&Kind::Diameter),
            Required,
            "Least conductor diameter.",
        ),
        field(
            "greatest",
            Kind::Above(&Kind::Diameter),
            Required,
            "Greatest conductor diameter.",
        ),
    ],
};
