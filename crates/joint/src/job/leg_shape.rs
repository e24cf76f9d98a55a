//! Table of fields of a leg in a job file.

use super::shield_shape::{
    BONDING_LEAD, FAR_END_BONDED, FORMATION, LAY, ROUTE_LENGTH, RUN_LENGTH, SPACING,
};
use super::surround_shape::{
    INSULATION_CAPACITY, INSULATION_RESISTIVITY, JACKET_CAPACITY, JACKET_RESISTIVITY,
};
use crate::catalogue::{BONDINGS, LAYER_NAMES, METALS, SHIELD_KINDS, STRANDINGS};
use crate::form::Need::{Optional, Required};
use crate::form::{Kind, Measure, Shape, field};

/// Other shields, which are refused by name and not as misspellings.
pub(super) const OTHER_SHIELDS: &[&str] = &["lead-sheath", "aluminium-sheath", "copper-sheath"];

/// Voltage classes of the cable table, North American practice.
const CLASSES: &[&str] = &["5 kV", "8 kV", "15 kV", "25 kV", "28 kV", "35 kV"];
/// Rated voltages U0/U of the cable table, IEC practice.
pub(super) const RATED: &[&str] = &["3.6/6 kV", "6/10 kV", "8.7/15 kV", "12/20 kV", "18/30 kV"];
/// Words for the shield of a cable: planned kinds, and kinds that are refused by name.
const CABLE_SHIELDS: &[&str] = &[
    SHIELD_KINDS[0],
    SHIELD_KINDS[1],
    SHIELD_KINDS[2],
    SHIELD_KINDS[3],
    SHIELD_KINDS[4],
    OTHER_SHIELDS[0],
    OTHER_SHIELDS[1],
    OTHER_SHIELDS[2],
];
const _: () = assert!(CABLE_SHIELDS.len() == SHIELD_KINDS.len() + OTHER_SHIELDS.len());

const SHIELD: Shape = Shape {
    name: "shield",
    about: "The metallic shield.",
    fields: &[
        field(
            "kind",
            Kind::Choice(CABLE_SHIELDS),
            Required,
            "Its kind; a sheath of lead or another metal is refused by name.",
        ),
        field(
            "metal",
            Kind::Choice(METALS),
            Optional,
            "Its metal; of a tape with wires, that of both.",
        ),
        field(
            "fault_greatest",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Highest temperature it may reach in a short circuit, as the cable's papers give it.",
        ),
        field(
            "count",
            Kind::Integer {
                least: 1,
                greatest: 200,
            },
            Optional,
            "Number of straps or wires; of a tape with wires, that of the wires.",
        ),
        field(
            "width",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Width of a strap or tape.",
        ),
        field(
            "thickness",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Thickness of a strap or tape.",
        ),
        field(
            "diameter",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Diameter of a wire.",
        ),
        field(
            "overlap_percent",
            Kind::Number {
                least: 0.0,
                greatest: 90.0,
            },
            Optional,
            "Lap of a helical tape in percent of its width.",
        ),
        field(
            "overlap",
            Kind::Diameter,
            Optional,
            "Lap of a longitudinally corrugated tape.",
        ),
        LAY,
    ],
};

const PAPERS: Shape = Shape {
    name: "papers",
    about: "A diameter that the cable's own papers give.",
    fields: &[
        field("over", Kind::Choice(LAYER_NAMES), Required, "Layer."),
        field(
            "least",
            Kind::Above(&Kind::Diameter),
            Required,
            "Least diameter.",
        ),
        field(
            "greatest",
            Kind::Above(&Kind::Diameter),
            Required,
            "Greatest diameter.",
        ),
    ],
};

const CABLE: Shape = Shape {
    name: "cable",
    about: "The cable by construction, as its papers say.",
    fields: &[
        field(
            "size",
            Kind::Text,
            Required,
            "Conductor size: \"4/0 AWG\", \"500 kcmil\" or \"240 mm2\".",
        ),
        field("metal", Kind::Choice(METALS), Required, "Conductor metal."),
        field(
            "stranding",
            Kind::Choice(STRANDINGS),
            Required,
            "Stranding and compaction.",
        ),
        field(
            "blocked",
            Kind::Flag,
            Optional,
            "True when the strands are blocked against water.",
        ),
        field(
            "class",
            Kind::Choice(CLASSES),
            Optional,
            "Voltage class; with `level`.",
        ),
        field(
            "level",
            Kind::Integer {
                least: 100,
                greatest: 173,
            },
            Optional,
            "Insulation level in percent: 100, 133 or 173.",
        ),
        field(
            "rated",
            Kind::Choice(RATED),
            Optional,
            "Rated voltage U0/U, IEC practice.",
        ),
        field(
            "wall",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Nominal insulation thickness, where neither class nor rated voltage is known.",
        ),
        field(
            "insulation",
            Kind::Text,
            Required,
            "\"xlpe\", \"tr-xlpe\" or \"epr\"; other insulation, such as paper, is refused by name.",
        ),
        field(
            "cores",
            Kind::Integer {
                least: 1,
                greatest: 5,
            },
            Optional,
            "Conductors under one jacket: 1; more are refused by name.",
        ),
        field(
            "belted",
            Kind::Flag,
            Optional,
            "True for cores under a common belt of insulation: refused by name.",
        ),
        field(
            "conductor_screen_least",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Least thickness of the conductor screen.",
        ),
        field(
            "conductor_screen_greatest",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Greatest thickness of the conductor screen.",
        ),
        field(
            "insulation_screen_least",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Least thickness of the insulation screen.",
        ),
        field(
            "insulation_screen_greatest",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Greatest thickness of the insulation screen.",
        ),
        field(
            "shield",
            Kind::Table(&SHIELD),
            Required,
            "The metallic shield.",
        ),
        field(
            "jacket_least",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Least thickness of the jacket.",
        ),
        field(
            "jacket_greatest",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Greatest thickness of the jacket.",
        ),
        field(
            "papers",
            Kind::Rows(&PAPERS),
            Optional,
            "Diameters that its papers give.",
        ),
        field(
            "bend_radius_least",
            Kind::Above(&Kind::Distance),
            Optional,
            "Least bending radius that its maker permits.",
        ),
        field(
            "expansion_per_k_least",
            Kind::Number {
                least: 0.0,
                greatest: 0.01,
            },
            Optional,
            "Least relative change of the insulation's diameter per kelvin.",
        ),
        field(
            "expansion_per_k_greatest",
            Kind::Number {
                least: 0.0,
                greatest: 0.01,
            },
            Optional,
            "Greatest relative change of the insulation's diameter per kelvin.",
        ),
        field(
            "permittivity",
            Kind::Number {
                least: 1.0,
                greatest: 20.0,
            },
            Optional,
            "Relative permittivity of the insulation, as its maker states it.",
        ),
        INSULATION_RESISTIVITY,
        INSULATION_CAPACITY,
        JACKET_RESISTIVITY,
        JACKET_CAPACITY,
    ],
};

pub(super) const LEG: Shape = Shape {
    name: "leg",
    about: "One cable that enters the joint.",
    fields: &[
        field("id", Kind::Id, Required, "Its letter or short name."),
        field(
            "port",
            Kind::Integer {
                least: 1,
                greatest: 6,
            },
            Optional,
            "Port of the bus, for separable joints.",
        ),
        field("goes_to", Kind::Said, Optional, "Where the cable goes."),
        field(
            "bonding",
            Kind::Choice(BONDINGS),
            Required,
            "How its shield is bonded at the joint.",
        ),
        field(
            "parks",
            Kind::Flag,
            Optional,
            "True when the body is parked on this leg.",
        ),
        field(
            "room_error",
            Kind::Above(&Kind::Distance),
            Optional,
            "How far off the lengths measured around this leg may be, either way.",
        ),
        field(
            "straight",
            Kind::Distance,
            Optional,
            "Straight cable from the conductor end.",
        ),
        field(
            "park_room",
            Kind::Distance,
            Optional,
            "Free length along the cable in which a body can be parked, from the jacket edge.",
        ),
        field(
            "bend_radius",
            Kind::Above(&Kind::Distance),
            Optional,
            "Bending radius of the cable as racked.",
        ),
        field(
            "slack",
            Kind::Distance,
            Optional,
            "Cable that can still be cut away and joined again.",
        ),
        field(
            "spare_cuts",
            Kind::Integer {
                least: 0,
                greatest: 5,
            },
            Optional,
            "How many times it must still be possible to cut back and start again.",
        ),
        field(
            "far_end_in_water",
            Kind::Flag,
            Optional,
            "True when the far end of the cable stands in water or may, false when somebody looked and it does not.",
        ),
        field(
            "load",
            Kind::Quantity(Measure::Current),
            Optional,
            "This leg's continuous load, where it is not the whole of `duty.load`.",
        ),
        field(
            "emergency",
            Kind::Quantity(Measure::Current),
            Optional,
            "This leg's emergency load, where it is not the whole of `duty.emergency`.",
        ),
        field(
            "shield_load",
            Kind::Quantity(Measure::Current),
            Optional,
            "Current that flows in this leg's metallic shield all the time at that load: round bonded ends, or as the neutral; left out, what flows round three balanced phases is computed.",
        ),
        field(
            "shield_fault",
            Kind::Above(&Kind::Quantity(Measure::Current)),
            Optional,
            "Short-circuit current in this leg's metallic shield, where it is not the whole of `duty.shield_fault`.",
        ),
        FORMATION,
        SPACING,
        RUN_LENGTH,
        ROUTE_LENGTH,
        FAR_END_BONDED,
        field(
            "lead",
            Kind::Table(&BONDING_LEAD),
            Optional,
            "The lead that bonds its shield to earth.",
        ),
        field("cable", Kind::Table(&CABLE), Required, "The cable."),
        field(
            "body",
            Kind::Id,
            Optional,
            "Body; left out: those that fit are proposed.",
        ),
        field(
            "body_side",
            Kind::Id,
            Optional,
            "Side of the body that this leg comes in by, where its two sides differ.",
        ),
        field(
            "adapter",
            Kind::Id,
            Optional,
            "Adapter, where the body needs one.",
        ),
        field("connector", Kind::Id, Optional, "Connector."),
        field(
            "connector_end",
            Kind::Id,
            Optional,
            "End of the connector that this leg goes into, where its two ends differ and both would take it.",
        ),
        field(
            "shield_part",
            Kind::Id,
            Optional,
            "Shield restoration or bonding part.",
        ),
        field("seal", Kind::Id, Optional, "Seal."),
        field(
            "consumables",
            Kind::List(&Kind::Id),
            Optional,
            "Consumables for this leg.",
        ),
    ],
};
