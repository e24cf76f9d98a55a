//! The table of fields of a catalogue file.

use super::as_made::AS_MADE;
use super::connector::{
    BORE_FIELD, CONNECTOR_END, DIE, GAP, LINKS, Means, PRESSES, RESISTANCE_RATIO,
};
use super::consumable::WRAP;
use super::fits::FITS;
use super::handling::{GOES_ON_FIELD, MOVE, PASSES_FIELD};
use super::head::{INSTRUCTIONS, SHELF, STEP};
use super::inner::INNER;
use super::link::LINK;
use super::rubber::RUBBER;
use super::shield_part::{BRIDGE_OFF_FIELD, LAY_BACK};
use super::takes::{CONDUCTORS, METALS_FIELD, SIZES, STRANDINGS_FIELD};
use super::taper::TAPER;
use super::thermal::{AGEING, CAPACITY_FIELD, COVER, RESISTIVITY_FIELD};
use super::word::{
    BONDINGS, EARTHINGS, JACKET_SURFACES, KINDS, LAYER_NAMES, METALS, SHIELD_KINDS, SPANS,
};
use crate::form::Need::{Optional, Required};
use crate::form::{Field, Kind, Measure, Shape, field};

macro_rules! row_fields {
    ($($extra:expr),* $(,)?) => {
        &[
            field("id", Kind::Id, Required, "Short name by which jobs call the part."),
            field("name", Kind::Said, Required, "What it is, in words."),
            field("demonstration", Kind::Flag, Optional, "True for invented parts: everything made with them says so."),
            field("instructions", Kind::Table(&INSTRUCTIONS), Required, "The part's own paper."),
            field("checked_by", Kind::Text, Optional, "Second person, who held the row beside its paper; with `checked`."),
            field("checked", Kind::Date, Optional, "Day on which that was done."),
            field("note", Kind::Said, Optional, "Anything else."),
            field("step", Kind::Rows(&STEP), Optional, "Steps of its own instructions."),
            field("shelf", Kind::Table(&SHELF), Optional, "Shelf life."),
            $($extra),*
        ]
    };
}

const RUBBER_FIELD: Field = field(
    "rubber",
    Kind::Table(&RUBBER),
    Optional,
    "The part when nothing is in it, and its rubber.",
);

const FAULT_FIELD: Field = field(
    "fault",
    Kind::Above(&Kind::Quantity(Measure::Current)),
    Optional,
    "Short-circuit current that its paper gives it, rms; with `fault_time`.",
);

const MAY_LIE_ON_FIELD: Field = field(
    "may_lie_on",
    Kind::List(&Kind::Choice(LAYER_NAMES)),
    Optional,
    "Layers on which its paper lets it lie without giving a range there; left out, only those of `fits`.",
);

const FAULT_TIME_FIELD: Field = field(
    "fault_time",
    Kind::Above(&Kind::Quantity(Measure::Time)),
    Optional,
    "How long its paper lets that current flow.",
);

const INNER_FIELD: Field = field("inner", Kind::Table(&INNER), Optional, "What is inside.");

const SIDE: Shape = Shape {
    name: "side",
    about: "One side of a straight body whose two sides differ.",
    fields: &[
        field(
            "name",
            Kind::Id,
            Required,
            "Short name by which jobs call the side.",
        ),
        field(
            "fits",
            Kind::Rows(&FITS),
            Required,
            "Ranges over the cable at this side.",
        ),
        field(
            "link",
            Kind::Rows(&LINK),
            Required,
            "Distances that hold at this side, from the body-centre outward.",
        ),
        INNER_FIELD,
        RUBBER_FIELD,
    ],
};

const BODY: Shape = Shape {
    name: "body",
    about: "A joint body, or the body of one leg of a separable joint.",
    fields: row_fields![
        field(
            "kinds",
            Kind::List(&Kind::Choice(KINDS)),
            Required,
            "Kinds of joint it is for."
        ),
        field(
            "legs",
            Kind::Integer {
                least: 2,
                greatest: 6,
            },
            Optional,
            "Number of legs it takes, one in every mouth, for a branch body.",
        ),
        field(
            "system_greatest",
            Kind::Above(&Kind::Quantity(Measure::Voltage)),
            Required,
            "Highest system voltage (phase to phase) it is rated for."
        ),
        field(
            "earthings",
            Kind::List(&Kind::Choice(EARTHINGS)),
            Required,
            "Earthings of the system it is rated for."
        ),
        field(
            "fits",
            Kind::Rows(&FITS),
            Optional,
            "Ranges over the cable; needed where there is no `side`."
        ),
        field(
            "side",
            Kind::Rows(&SIDE),
            Optional,
            "The two sides of a reducing body, where they differ; what stands beside them holds at both."
        ),
        field(
            "parts",
            Kind::List(&Kind::Id),
            Optional,
            "Adapters that belong to it."
        ),
        field(
            "fits_adapter",
            Kind::Flag,
            Optional,
            "True when its bore range may be met by an adapter's outside."
        ),
        field(
            "length",
            Kind::Above(&Kind::Cut),
            Required,
            "Length of the body as placed."
        ),
        field(
            "parked_length",
            Kind::Above(&Kind::Distance),
            Optional,
            "Length it takes up while parked."
        ),
        field(
            "connector_length_greatest",
            Kind::Above(&Kind::Distance),
            Optional,
            "Longest connector, as made, that it admits."
        ),
        field(
            "connector_diameter_least",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Least outside diameter of the connector under its electrode."
        ),
        field(
            "connector_diameter_greatest",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Greatest outside diameter of the connector under its electrode."
        ),
        field(
            "electrode_overlap_least",
            Kind::Cut,
            Optional,
            "How far the electrode must lap onto the insulation beyond the insulation end."
        ),
        field(
            "bondings",
            Kind::List(&Kind::Choice(BONDINGS)),
            Optional,
            "Ways of bonding the shield across it that it allows."
        ),
        field(
            "interface",
            Kind::Id,
            Optional,
            "Name of the mating interface, for separable joints."
        ),
        MAY_LIE_ON_FIELD,
        field(
            "link",
            Kind::Rows(&LINK),
            Optional,
            "Distances its instructions give; needed where there is no `side`."
        ),
        field(
            "may_move",
            Kind::Table(&MOVE),
            Optional,
            "When it may still be moved."
        ),
        GOES_ON_FIELD,
        PASSES_FIELD,
        field(
            "abrasive",
            Kind::Said,
            Optional,
            "Abrasive and grit with which its paper has the insulation smoothed."
        ),
        INNER_FIELD,
        field(
            "taper",
            Kind::Table(&TAPER),
            Optional,
            "The tapered plug it sits on, for separable joints."
        ),
        RUBBER_FIELD,
        field(
            "conductor_fault_greatest",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Highest temperature of the conductor in a short circuit for which its paper gives the joint."
        ),
        field(
            "conductor_greatest",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Highest temperature of the conductor inside it for which its paper gives the joint, all the time."
        ),
        field(
            "conductor_emergency_greatest",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "The same for an emergency."
        ),
        field(
            "ageing",
            Kind::Table(&AGEING),
            Optional,
            "How fast warmth uses it up."
        ),
        field(
            "bend_keep_off",
            Kind::Distance,
            Optional,
            "Straight cable that must be left beyond each body end."
        ),
    ],
};

const BUS: Shape = Shape {
    name: "bus",
    about: "The common piece of a separable joint.",
    fields: row_fields![
        field(
            "ports",
            Kind::Integer {
                least: 2,
                greatest: 6
            },
            Required,
            "Number of ports."
        ),
        field(
            "resistance_microohm",
            Kind::Above(&Kind::Number {
                least: 0.0,
                greatest: 1.0e4
            }),
            Optional,
            "Greatest resistance between two of its ports, the contacts of the bodies included, µΩ."
        ),
        field(
            "resistance_at",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Temperature at which it has that resistance; left out: taken as read at 0 degC, which makes it the greatest where it is warm."
        ),
        field(
            "interface",
            Kind::Id,
            Required,
            "Name of the mating interface."
        ),
        field(
            "system_greatest",
            Kind::Above(&Kind::Quantity(Measure::Voltage)),
            Required,
            "Highest system voltage (phase to phase) it is rated for."
        ),
    ],
};

const PLUG: Shape = Shape {
    name: "plug",
    about: "Insulating plug for a port that has no leg.",
    fields: row_fields![
        field(
            "interface",
            Kind::Id,
            Required,
            "Name of the mating interface."
        ),
        field(
            "system_greatest",
            Kind::Above(&Kind::Quantity(Measure::Voltage)),
            Required,
            "Highest system voltage (phase to phase) it is rated for."
        ),
    ],
};

const CONNECTOR: Shape = Shape {
    name: "connector",
    about: "What joins the conductor.",
    fields: row_fields![
        field(
            "means",
            Kind::Choice(Means::NAMES),
            Required,
            "How it grips."
        ),
        field(
            "ends",
            Kind::Integer {
                least: 1,
                greatest: 2
            },
            Required,
            "2 for a sleeve between two conductors, 1 for a contact on one."
        ),
        field(
            "made_of",
            Kind::Choice(METALS),
            Optional,
            "What it is made of."
        ),
        RESISTANCE_RATIO,
        SIZES,
        METALS_FIELD,
        STRANDINGS_FIELD,
        CONDUCTORS,
        BORE_FIELD,
        field(
            "length",
            Kind::Above(&Kind::Cut),
            Optional,
            "Length before it is made: of the sleeve, or from contact plane to mouth; needed where there is no `end`."
        ),
        field(
            "stop",
            Kind::Cut,
            Optional,
            "Thickness between conductor ends, or from contact plane to the bottom of the barrel; needed where there is no `end`."
        ),
        GAP,
        field(
            "outside_diameter",
            Kind::Above(&Kind::Diameter),
            Required,
            "Outside diameter as made, the greatest."
        ),
        DIE,
        PRESSES,
        field(
            "stands_proud",
            Kind::Diameter,
            Optional,
            "How far a sheared bolt may stand proud before it is dressed flush."
        ),
        field(
            "as_made",
            Kind::Table(&AS_MADE),
            Optional,
            "What the tool, die, torque or shear bolt leaves behind."
        ),
        FAULT_FIELD,
        FAULT_TIME_FIELD,
        field(
            "end",
            Kind::Rows(&CONNECTOR_END),
            Optional,
            "The two ends of a sleeve, where they differ; where they are alike the fields beside are of both."
        ),
        LINKS,
    ],
};

const ADAPTER: Shape = Shape {
    name: "adapter",
    about: "Sleeve that brings a small leg up to the body's range.",
    fields: row_fields![
        field(
            "fits",
            Kind::Rows(&FITS),
            Required,
            "Ranges over the cable."
        ),
        field(
            "outside_least",
            Kind::Above(&Kind::Diameter),
            Required,
            "Least outside diameter once on the cable."
        ),
        field(
            "outside_greatest",
            Kind::Above(&Kind::Diameter),
            Required,
            "Greatest outside diameter once on the cable."
        ),
        field(
            "system_greatest",
            Kind::Above(&Kind::Quantity(Measure::Voltage)),
            Required,
            "Highest system voltage (phase to phase) it is rated for."
        ),
        field(
            "leaves_bare",
            Kind::Flag,
            Optional,
            "True when its paper lets the body's bore stand over bare insulation from its end to the edge of the insulation screen, false when it must reach that edge."
        ),
        MAY_LIE_ON_FIELD,
        field(
            "link",
            Kind::Rows(&LINK),
            Optional,
            "Distances its instructions give."
        ),
        field(
            "may_move",
            Kind::Table(&MOVE),
            Optional,
            "When it may still be moved."
        ),
        GOES_ON_FIELD,
        PASSES_FIELD,
        field(
            "relative_permittivity",
            Kind::Number {
                least: 1.0,
                greatest: 1.0e3
            },
            Optional,
            "Relative permittivity of what it is made of."
        ),
        RUBBER_FIELD,
        RESISTIVITY_FIELD,
        CAPACITY_FIELD,
    ],
};

const SHIELD_PART: Shape = Shape {
    name: "shield_part",
    about: "What carries the metallic shield across the joint, or bonds it.",
    fields: row_fields![
        field(
            "shields",
            Kind::List(&Kind::Choice(SHIELD_KINDS)),
            Required,
            "Kinds of metallic shield it takes."
        ),
        field(
            "bondings",
            Kind::List(&Kind::Choice(BONDINGS)),
            Required,
            "Ways of bonding it makes."
        ),
        field(
            "area",
            Kind::Above(&Kind::Quantity(Measure::Area)),
            Optional,
            "Its metal section."
        ),
        FAULT_FIELD,
        FAULT_TIME_FIELD,
        field(
            "contact_greatest",
            Kind::Above(&Kind::Quantity(Measure::Resistance)),
            Optional,
            "Greatest resistance across its connection to the shield, as its paper states it."
        ),
        field(
            "fits",
            Kind::Rows(&FITS),
            Optional,
            "Ranges over the cable."
        ),
        field(
            "blocked",
            Kind::Flag,
            Optional,
            "True when it carries a stretch blocked against water, false when its paper says that it carries none."
        ),
        field(
            "passes_seal",
            Kind::Flag,
            Optional,
            "True when wires, straps, a braid or a lead of it pass out under the seal; false when nothing does."
        ),
        MAY_LIE_ON_FIELD,
        field(
            "lay_back",
            Kind::Table(&LAY_BACK),
            Optional,
            "Shields whose wires or straps are laid back at their edge."
        ),
        field(
            "cut_off",
            Kind::List(&Kind::Choice(SHIELD_KINDS)),
            Optional,
            "Kinds of metallic shield that are cut off at their edge."
        ),
        BRIDGE_OFF_FIELD,
        field(
            "across_legs",
            Kind::Flag,
            Optional,
            "True when one piece of it goes across the joint from leg to leg, such as a braid."
        ),
        field(
            "link",
            Kind::Rows(&LINK),
            Optional,
            "Distances its instructions give."
        ),
    ],
};

const SEAL: Shape = Shape {
    name: "seal",
    about: "What restores the jacket and keeps water out.",
    fields: row_fields![
        field(
            "fits",
            Kind::Rows(&FITS),
            Required,
            "Ranges over the cable."
        ),
        field(
            "overlap_least",
            Kind::Cut,
            Optional,
            "How far it must lap onto the jacket."
        ),
        field(
            "body_overlap_least",
            Kind::Cut,
            Optional,
            "How far it must lap over the end of the body."
        ),
        field(
            "spans",
            Kind::Choice(SPANS),
            Optional,
            "Whether it closes on one leg, or is one piece over the whole joint from jacket to jacket; left out, one leg."
        ),
        field(
            "length",
            Kind::Cut,
            Optional,
            "Least length once it has closed, for one that goes over the whole joint."
        ),
        field(
            "parked_length",
            Kind::Above(&Kind::Distance),
            Optional,
            "Length it takes up while parked."
        ),
        field(
            "takes_lead",
            Kind::Flag,
            Optional,
            "True when a braid or bonding lead may come out under it, false when its paper forbids it."
        ),
        field(
            "jacket_surfaces",
            Kind::List(&Kind::Choice(JACKET_SURFACES)),
            Optional,
            "Conditions of the jacket on which its paper lets it close."
        ),
        RUBBER_FIELD,
        field(
            "cover",
            Kind::Table(&COVER),
            Optional,
            "What of it the heat must pass, once it has closed."
        ),
        MAY_LIE_ON_FIELD,
        field(
            "link",
            Kind::Rows(&LINK),
            Optional,
            "Distances its instructions give."
        ),
        field(
            "may_move",
            Kind::Table(&MOVE),
            Optional,
            "When it may still be moved."
        ),
        GOES_ON_FIELD,
        PASSES_FIELD,
    ],
};

const CONSUMABLE: Shape = Shape {
    name: "consumable",
    about: "Grease, mastic, cloth, brush, tape.",
    fields: row_fields![
        field(
            "metals",
            Kind::List(&Kind::Choice(METALS)),
            Optional,
            "Conductor metals it serves, for what touches bare conductors: a brush, an abrasive, an inhibitor."
        ),
        field(
            "touches_conductor",
            Kind::Flag,
            Optional,
            "False when it is never used on a bare conductor or in a connector; then it serves every metal."
        ),
        field(
            "contains",
            Kind::Said,
            Optional,
            "What it is made of, where that matters."
        ),
        field(
            "width",
            Kind::Above(&Kind::Distance),
            Optional,
            "Width of a tape."
        ),
        field(
            "thickness",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Thickness of a tape."
        ),
        field(
            "amount",
            Kind::Said,
            Optional,
            "Amount an end, as the instructions say."
        ),
        field(
            "wrap",
            Kind::Rows(&WRAP),
            Optional,
            "How it is wound at an end, for a tape."
        ),
    ],
};

/// Shape of a catalogue file.
pub const CATALOGUE: Shape = Shape {
    name: "catalogue",
    about: "Parts as their own papers describe them.",
    fields: &[
        field(
            "about",
            Kind::Said,
            Required,
            "Whose catalogue this is, and where its numbers come from.",
        ),
        field("body", Kind::Rows(&BODY), Optional, "Joint bodies."),
        field(
            "bus",
            Kind::Rows(&BUS),
            Optional,
            "Common pieces of separable joints.",
        ),
        field("plug", Kind::Rows(&PLUG), Optional, "Insulating plugs."),
        field("connector", Kind::Rows(&CONNECTOR), Optional, "Connectors."),
        field("adapter", Kind::Rows(&ADAPTER), Optional, "Adapters."),
        field(
            "shield_part",
            Kind::Rows(&SHIELD_PART),
            Optional,
            "Shield restoration and bonding.",
        ),
        field("seal", Kind::Rows(&SEAL), Optional, "Seals."),
        field(
            "consumable",
            Kind::Rows(&CONSUMABLE),
            Optional,
            "Consumables.",
        ),
    ],
};
