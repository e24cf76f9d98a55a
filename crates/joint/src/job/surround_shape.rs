//! Table of fields of the surroundings of a leg, and of the thermal properties of its cable.

use super::end_shape::LEGS_OR_ALL;
use crate::catalogue::{CAPACITY, RESISTIVITY};
use crate::form::Need::{Optional, Required};
use crate::form::{Field, Kind, Measure, Shape, field};

pub(super) const SURROUNDING: Shape = Shape {
    name: "surrounding",
    about: "What surrounds a leg over a stretch of its axis; each begins where the one before it ends, the first at the joint.",
    fields: &[
        LEGS_OR_ALL,
        field(
            "what",
            Kind::Said,
            Required,
            "What it is: \"still air of the vault\", \"duct bank\", \"water\".",
        ),
        field(
            "until",
            Kind::Above(&Kind::Distance),
            Optional,
            "How far from the conductor end it reaches; left out in the last row, which goes on to the far end.",
        ),
        field(
            "length",
            Kind::Above(&Kind::Distance),
            Optional,
            "Of a run of cable without a joint, in place of `until`: how long this stretch of the route is; the stretches add up to the leg's `route_length`.",
        ),
        field(
            "temperature",
            Kind::Quantity(Measure::Temperature),
            Required,
            "Its highest temperature, with everything else in it under load.",
        ),
        field(
            "film_w_per_m2k",
            Kind::Number {
                least: 0.1,
                greatest: 1.0e4,
            },
            Optional,
            "Least heat that leaves a square metre of surface for each kelvin above that temperature, W/(m²·K).",
        ),
        field(
            "outside_k_m_per_w",
            Kind::Number {
                least: 0.01,
                greatest: 50.0,
            },
            Optional,
            "In place of the film, beyond the joint: greatest thermal resistance from the cable's surface to that temperature, K·m/W.",
        ),
        field(
            "soil",
            Kind::Table(&SOIL),
            Optional,
            "In place of the film, beyond the joint: the soil in which the cables or their ducts lie; the thermal resistance outside the cable is computed from it.",
        ),
        field(
            "duct",
            Kind::Table(&DUCT),
            Optional,
            "With `soil`: the duct in which the cables lie.",
        ),
        field(
            "air",
            Kind::Choice(AIR_FORMS),
            Optional,
            "In place of the film: how the cables hang in still air, out of the sun; the film is computed for it.",
        ),
        field(
            "from",
            Kind::Said,
            Required,
            "Where the film, the resistance or the soil's resistivity is from: a measurement, a standard with its clause, a handbook table. No standard of cable ratings knows a vault or a riser.",
        ),
        field("by", Kind::Text, Required, "Who stands for it."),
        field("date", Kind::Date, Required, "When."),
    ],
};

/// Words for the arrangement of cables in still air.
pub const AIR_FORMS: &[&str] = &["alone", "trefoil", "flat-touching"];

/// Words for the formation in soil of the cables or ducts of one circuit.
pub const SOIL_FORMATIONS: &[&str] = &["alone", "trefoil", "flat", "flat-touching"];

/// Words for the things that lie in soil.
pub const SOIL_CONTENTS: &[&str] = &["cables", "ducts", "ducts-in-concrete"];

/// Words for a duct's filling beside cables, and for the material of its wall.
pub const FILLINGS: &[&str] = &[
    "air-in-plastic",
    "air-in-metal",
    "air-in-fibre-in-concrete",
    "air-in-earthenware",
    "water",
];

const SOIL: Shape = Shape {
    name: "soil",
    about: "Soil about cables or ducts.",
    fields: &[
        field(
            "depth",
            Kind::Cut,
            Required,
            "From the surface to the axis of the cable or duct, to the middle of a trefoil, or of a bank.",
        ),
        field(
            "resistivity_k_m_per_w",
            Kind::Number {
                least: 0.1,
                greatest: 10.0,
            },
            Required,
            "Its greatest thermal resistivity, K·m/W, dry seasons included, and where it dries about warm cables that of what stays moist; `from` says who found it.",
        ),
        field(
            "contents",
            Kind::Choice(SOIL_CONTENTS),
            Required,
            "What lies in it: the cables themselves, ducts with cables in them (`duct`), or such ducts in a bank of concrete (`bank` of the duct).",
        ),
        field(
            "dries",
            Kind::Flag,
            Required,
            "Whether it dries out about cables or ducts that stay warm, as `from` says.",
        ),
        field(
            "dry_k_m_per_w",
            Kind::Number {
                least: 0.1,
                greatest: 10.0,
            },
            Optional,
            "With `dries`: greatest thermal resistivity of what has dried out, K·m/W.",
        ),
        field(
            "dries_above_k",
            Kind::Number {
                least: 0.0,
                greatest: 100.0,
            },
            Optional,
            "With `dries`: it dries where it is warmer than the undisturbed soil by more than this, K.",
        ),
        field(
            "diffusivity_mm2_per_s",
            Kind::Number {
                least: 0.01,
                greatest: 10.0,
            },
            Optional,
            "How fast heat spreads in it: its conductivity over its heat capacity, mm²/s; for a daily load.",
        ),
        field(
            "formation",
            Kind::Choice(SOIL_FORMATIONS),
            Required,
            "How the cables of one circuit lie, or its ducts where each holds one cable: one alone, three in trefoil, three in one plane apart, three in one plane that touch.",
        ),
        field(
            "spacing",
            Kind::Cut,
            Optional,
            "Between the axes of neighbours; left out of a trefoil: they touch.",
        ),
        field(
            "circuits",
            Kind::Integer {
                least: 1,
                greatest: 12,
            },
            Required,
            "Circuits side by side that are alike and carry the same, this one counted: 1 where it is alone.",
        ),
        field(
            "circuits_apart",
            Kind::Cut,
            Optional,
            "Between the middles of neighbouring circuits; with `circuits` above 1.",
        ),
    ],
};

const DUCT: Shape = Shape {
    name: "duct",
    about: "A duct in soil.",
    fields: &[
        field("inside", Kind::Diameter, Required, "Inside diameter."),
        field("outside", Kind::Diameter, Required, "Outside diameter."),
        field(
            "wall_k_m_per_w",
            RESISTIVITY,
            Required,
            "Thermal resistivity of its wall, K·m/W.",
        ),
        field(
            "holds",
            Kind::Choice(FILLINGS),
            Required,
            "What it holds beside cables, and what it is of.",
        ),
        field(
            "cables",
            Kind::Integer {
                least: 1,
                greatest: 4,
            },
            Required,
            "Cables in it that carry the same.",
        ),
        field(
            "bank",
            Kind::Table(&BANK),
            Optional,
            "The bank of concrete in which all ducts lie.",
        ),
    ],
};

const BANK: Shape = Shape {
    name: "bank",
    about: "A bank of concrete about ducts.",
    fields: &[
        field("width", Kind::Cut, Required, "Width."),
        field("height", Kind::Cut, Required, "Height."),
        field(
            "resistivity_k_m_per_w",
            Kind::Number {
                least: 0.1,
                greatest: 10.0,
            },
            Required,
            "Thermal resistivity of the concrete, K·m/W.",
        ),
    ],
};

pub(super) const INSULATION_RESISTIVITY: Field = field(
    "insulation_k_m_per_w",
    RESISTIVITY,
    Optional,
    "Thermal resistivity of the insulation and its screens, K·m/W; with `insulation_mj_per_m3k`.",
);

pub(super) const INSULATION_CAPACITY: Field = field(
    "insulation_mj_per_m3k",
    CAPACITY,
    Optional,
    "Heat that a cubic metre of them stores per kelvin, MJ/(m³·K).",
);

pub(super) const JACKET_RESISTIVITY: Field = field(
    "jacket_k_m_per_w",
    RESISTIVITY,
    Optional,
    "Thermal resistivity of the jacket, K·m/W; with `jacket_mj_per_m3k`.",
);

pub(super) const JACKET_CAPACITY: Field = field(
    "jacket_mj_per_m3k",
    CAPACITY,
    Optional,
    "Heat that a cubic metre of it stores per kelvin, MJ/(m³·K).",
);
