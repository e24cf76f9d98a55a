//! Table of fields of a job file.

use super::bridge::BRIDGE_OFF;
use super::daily::DAILY;
use super::end_shape::{
    COUNTS_CSV, LEGS, LEGS_OR_ALL, LOTS_CSV, ONE_LEG, ONE_PHASE, PHASES, READINGS_CSV,
};
use super::head_shape::JOB_HEAD;
use super::leg_shape::LEG;
use super::owner_shape::{CLOSING, CONFIRMATION, OWNER_WINDOW};
use super::shield_shape::{CONTACT, CONTINUITY, FAULT_KIND, GREATEST_OHM_PER_KM, GREATEST_V};
use super::surround_shape::SURROUNDING;
use crate::catalogue::{EARTHINGS, JACKET_SURFACES, LAYER_NAMES, METALS, SHIELD_KINDS};
use crate::form::Need::{Optional, Required};
use crate::form::{Kind, Measure, Shape, field};
use crate::plane::Plane;

/// Matters that a person may decide.
pub const DECIDES: &[&str] = &["windows", "limits", "confirmations", "bridge", "closings"];
/// Instruments.
pub const INSTRUMENTS: &[&str] = &["calliper", "diameter-tape", "micrometer", "ring-gauge"];
const PLACES: &[&str] = &["vault", "duct", "buried"];
const PARTS: &[&str] = &[
    "body",
    "adapter",
    "connector",
    "shield_part",
    "seal",
    "bus",
    "plug",
];

const SYSTEM: Shape = Shape {
    name: "system",
    about: "The network.",
    fields: &[
        field(
            "nominal",
            Kind::Quantity(Measure::Voltage),
            Required,
            "Nominal voltage, phase to phase.",
        ),
        field(
            "highest",
            Kind::Quantity(Measure::Voltage),
            Required,
            "Highest continuous voltage, phase to phase.",
        ),
        field(
            "frequency",
            Kind::Above(&Kind::Quantity(Measure::Frequency)),
            Required,
            "Frequency.",
        ),
        field(
            "earthing",
            Kind::Choice(EARTHINGS),
            Required,
            "How the neutral is earthed.",
        ),
        field(
            "clearing_time",
            Kind::Above(&Kind::Quantity(Measure::Time)),
            Optional,
            "Longest time in which an earth fault is cleared.",
        ),
    ],
};

/// Words for the waveforms of a trial.
pub const WAVEFORMS: &[&str] = &["sine", "cosine-rectangular"];

const TRIAL: Shape = Shape {
    name: "trial",
    about: "The trial on the cable for which the joint is made.",
    fields: &[
        field(
            "level",
            Kind::Above(&Kind::Quantity(Measure::Voltage)),
            Required,
            "Voltage between conductor and earth, rms.",
        ),
        field(
            "frequency",
            Kind::Above(&Kind::Quantity(Measure::Frequency)),
            Required,
            "Frequency.",
        ),
        field(
            "waveform",
            Kind::Choice(WAVEFORMS),
            Required,
            "Its form: the crest of a sine is its rms times the square root of two, that of a cosine-rectangular voltage its rms.",
        ),
        field(
            "from",
            Kind::Said,
            Required,
            "Standard, edition and clause, or who sets it.",
        ),
    ],
};

const DUTY: Shape = Shape {
    name: "duty",
    about: "What the joint must carry.",
    fields: &[
        field(
            "load",
            Kind::Quantity(Measure::Current),
            Optional,
            "Greatest continuous load.",
        ),
        field(
            "emergency",
            Kind::Above(&Kind::Quantity(Measure::Current)),
            Optional,
            "Emergency load.",
        ),
        field(
            "emergency_time",
            Kind::Above(&Kind::Quantity(Measure::Time)),
            Optional,
            "How long the emergency load may last.",
        ),
        field(
            "conductor_greatest",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Highest temperature of the conductor in service, emergencies included.",
        ),
        field(
            "fault",
            Kind::Above(&Kind::Quantity(Measure::Current)),
            Optional,
            "Fault current in the conductor, rms.",
        ),
        field(
            "fault_time",
            Kind::Above(&Kind::Quantity(Measure::Time)),
            Optional,
            "How long it flows, each time.",
        ),
        DAILY,
        FAULT_KIND,
        field(
            "shield_fault",
            Kind::Above(&Kind::Quantity(Measure::Current)),
            Optional,
            "Fault current in one leg's metallic shield.",
        ),
        field(
            "shield_fault_time",
            Kind::Above(&Kind::Quantity(Measure::Time)),
            Optional,
            "How long it flows, each time.",
        ),
        field(
            "reclosing",
            Kind::Integer {
                least: 0,
                greatest: 10,
            },
            Optional,
            "Number of reclosing shots.",
        ),
    ],
};

const PLACE: Shape = Shape {
    name: "place",
    about: "Where the joint will be.",
    fields: &[
        field(
            "kind",
            Kind::Choice(PLACES),
            Required,
            "Vault, duct or buried.",
        ),
        field("name", Kind::Said, Required, "Its name or number."),
        field(
            "ambient_least",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Lowest temperature there.",
        ),
        field(
            "ambient_greatest",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Highest temperature there.",
        ),
        field(
            "wet",
            Kind::Flag,
            Optional,
            "True when water stands or runs in.",
        ),
    ],
};

const PERSON: Shape = Shape {
    name: "person",
    about: "A person whose word counts.",
    fields: &[
        field("name", Kind::Text, Required, "Name."),
        field("role", Kind::Text, Required, "Role."),
        field(
            "decides",
            Kind::List(&Kind::Choice(DECIDES)),
            Required,
            "What this person may decide.",
        ),
    ],
};

const CALL: Shape = Shape {
    name: "stop_and_call",
    about: "Whom the crew calls when a measurement is out of its window or anything differs from the instructions.",
    fields: &[
        field("name", Kind::Text, Required, "Name."),
        field("number", Kind::Text, Required, "Telephone number."),
    ],
};

const AUTHORITY: Shape = Shape {
    name: "authority",
    about: "Whose word counts.",
    fields: &[
        field(
            "stop_and_call",
            Kind::Table(&CALL),
            Required,
            "Whom to call.",
        ),
        field(
            "person",
            Kind::Rows(&PERSON),
            Optional,
            "People and what they may decide.",
        ),
        field(
            "bridge_off",
            Kind::Table(&BRIDGE_OFF),
            Optional,
            "When the bridge of the metallic shield comes off; left out, the sheet asks.",
        ),
    ],
};

const BLANK: Shape = Shape {
    name: "blank",
    about: "A port of the bus that has no leg.",
    fields: &[
        field(
            "port",
            Kind::Integer {
                least: 1,
                greatest: 6,
            },
            Required,
            "Number of the port.",
        ),
        field("plug", Kind::Id, Optional, "Insulating plug in it."),
    ],
};

pub(super) const READING: Shape = Shape {
    name: "reading",
    about: "What was measured on one end.",
    fields: &[
        ONE_LEG,
        ONE_PHASE,
        field(
            "over",
            Kind::Choice(LAYER_NAMES),
            Required,
            "Layer that the instrument lay on.",
        ),
        field(
            "instrument",
            Kind::Choice(INSTRUMENTS),
            Required,
            "Instrument.",
        ),
        field(
            "error",
            Kind::Diameter,
            Required,
            "How far off the instrument may read, either way.",
        ),
        field(
            "values",
            Kind::List(&Kind::Diameter),
            Required,
            "Diameters read: four around the cable where ovality matters, one for a tape.",
        ),
        field("place", Kind::Said, Optional, "Where along the cable."),
        field(
            "temperature",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Temperature of the cable.",
        ),
        field("by", Kind::Text, Optional, "Who read it."),
    ],
};

pub(super) const COUNT: Shape = Shape {
    name: "count",
    about: "What was counted and seen on one end; at least one of its fields.",
    fields: &[
        ONE_LEG,
        ONE_PHASE,
        field(
            "shield_elements",
            Kind::Integer {
                least: 0,
                greatest: 200,
            },
            Optional,
            "Straps or wires counted in the metallic shield.",
        ),
        field(
            "strands",
            Kind::Integer {
                least: 1,
                greatest: 400,
            },
            Optional,
            "Strands of the conductor, counted on its square cut; 1 for a solid one.",
        ),
        field(
            "metal",
            Kind::Choice(METALS),
            Optional,
            "Metal of the conductor, as it looks where it is scraped.",
        ),
        field(
            "shield_kind",
            Kind::Choice(SHIELD_KINDS),
            Optional,
            "Form of the metallic shield, as it looks.",
        ),
    ],
};

pub(super) const LOT: Shape = Shape {
    name: "lot",
    about: "The part that is really on the truck, for one end.",
    fields: &[
        LEGS,
        PHASES,
        field("part", Kind::Choice(PARTS), Required, "Which part."),
        field("lot", Kind::Text, Required, "Lot."),
        field("made", Kind::Date, Optional, "Day it was made."),
        field(
            "expanded",
            Kind::Date,
            Optional,
            "Day it was expanded onto its holdout.",
        ),
        field("expires", Kind::Date, Optional, "Expiry date on the label."),
        field(
            "no_expiry",
            Kind::Flag,
            Optional,
            "True when somebody looked, and the label prints no expiry date.",
        ),
        field(
            "store_least",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Lowest temperature it lay at.",
        ),
        field(
            "store_greatest",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Highest temperature it lay at.",
        ),
        field(
            "stay",
            Kind::Rows(&STAY),
            Optional,
            "Where it lay, in order from the day it was expanded; `store_greatest` holds for what they leave open.",
        ),
    ],
};

const STAY: Shape = Shape {
    name: "stay",
    about: "A time in store at no more than one temperature.",
    fields: &[
        field("until", Kind::Date, Required, "Last day of it."),
        field(
            "greatest",
            Kind::Quantity(Measure::Temperature),
            Required,
            "Highest temperature during it.",
        ),
    ],
};

/// Places in which water may run along a cable.
pub const MOISTURE_IN: &[&str] = &["conductor", "shield"];
/// Results of a test for moisture.
pub const MOISTURE_FOUND: &[&str] = &["dry", "wet"];

const MOISTURE: Shape = Shape {
    name: "moisture",
    about: "A test of one end for moisture.",
    fields: &[
        ONE_LEG,
        ONE_PHASE,
        field(
            "in",
            Kind::Choice(MOISTURE_IN),
            Required,
            "What was tested.",
        ),
        field(
            "found",
            Kind::Choice(MOISTURE_FOUND),
            Required,
            "What came out.",
        ),
        field("how", Kind::Said, Required, "How it was tested."),
        field("by", Kind::Text, Required, "Who tested it."),
        field("date", Kind::Date, Required, "When."),
    ],
};

const SURFACE: Shape = Shape {
    name: "surface",
    about: "The jacket of one end as it was found where the seal will lie.",
    fields: &[
        LEGS,
        PHASES,
        field(
            "jacket",
            Kind::Choice(JACKET_SURFACES),
            Required,
            "How its surface is, the worst of what was found.",
        ),
        field("by", Kind::Text, Required, "Who looked at it."),
    ],
};

const TRIAL_PRESS: Shape = Shape {
    name: "trial_press",
    about: "Growth of a sleeve, measured on a trial press with this crew's tool and die.",
    fields: &[
        field("connector", Kind::Id, Required, "Connector pressed."),
        field(
            "end",
            Kind::Id,
            Optional,
            "End pressed, for a connector whose ends differ; only this end is pressed between the two lengths.",
        ),
        field(
            "size",
            Kind::Text,
            Required,
            "Conductor size it was pressed on.",
        ),
        field(
            "metal",
            Kind::Choice(METALS),
            Required,
            "Conductor metal it was pressed on.",
        ),
        field("tool", Kind::Text, Required, "Tool."),
        field("die", Kind::Text, Required, "Die."),
        field(
            "presses",
            Kind::Integer {
                least: 1,
                greatest: 40,
            },
            Required,
            "Presses an end.",
        ),
        field(
            "length_before",
            Kind::Above(&Kind::Distance),
            Required,
            "Length of the sleeve before.",
        ),
        field(
            "length_after",
            Kind::List(&Kind::Above(&Kind::Distance)),
            Required,
            "Length of the sleeve after; one for each trial.",
        ),
        field(
            "error",
            Kind::Above(&Kind::Diameter),
            Required,
            "How far off each of these lengths may be read, either way.",
        ),
        field("by", Kind::Text, Required, "Who pressed it."),
        field("date", Kind::Date, Required, "When."),
    ],
};

const OWNER_LINK: Shape = Shape {
    name: "owner_link",
    about: "A distance set by the owner's engineer where the instructions give none.",
    fields: &[
        LEGS_OR_ALL,
        field(
            "from",
            Kind::Choice(Plane::NAMES),
            Required,
            "Plane that is measured from.",
        ),
        field(
            "to",
            Kind::Choice(Plane::NAMES),
            Required,
            "Plane that is measured to.",
        ),
        field("distance", Kind::Cut, Required, "Distance."),
        field(
            "minus",
            Kind::Cut,
            Optional,
            "How much shorter; with `plus`, or neither.",
        ),
        field(
            "plus",
            Kind::Cut,
            Optional,
            "How much longer; with `minus`, or neither.",
        ),
        field(
            "toward_end",
            Kind::Flag,
            Optional,
            "True when `to` lies nearer the conductor end than `from`.",
        ),
        field("by", Kind::Text, Required, "Who set it."),
        field("date", Kind::Date, Required, "When."),
    ],
};

const OWNER_LIMIT: Shape = Shape {
    name: "owner_limit",
    about: "A limit set by the owner's engineer where the instructions give none.",
    fields: &[
        field("check", Kind::Text, Required, "Name of the check."),
        field("least", Kind::Diameter, Optional, "Least value."),
        field("greatest", Kind::Diameter, Optional, "Greatest value."),
        field(
            "greatest_kv_per_mm",
            Kind::Number {
                least: 0.0,
                greatest: 100.0,
            },
            Optional,
            "Greatest field, kV/mm rms at the highest continuous voltage to earth, for a check of a field.",
        ),
        field(
            "least_kpa",
            Kind::Number {
                least: 0.0,
                greatest: 1.0e4,
            },
            Optional,
            "Least pressure, kPa, for a check of a pressure.",
        ),
        field(
            "greatest_stretch",
            Kind::Number {
                least: 1.0,
                greatest: 20.0,
            },
            Optional,
            "Greatest diameter of a bore over its relaxed diameter, for `rubber_stretch`.",
        ),
        GREATEST_V,
        GREATEST_OHM_PER_KM,
        field("by", Kind::Text, Required, "Who set it."),
        field("date", Kind::Date, Required, "When."),
    ],
};

/// Shape of a job file.
pub const JOB: Shape = Shape {
    name: "file",
    about: "One joint to be planned.",
    fields: &[
        field(
            "catalogues",
            Kind::List(&Kind::Text),
            Required,
            "Catalogue files beside the job, or \"demonstration\" for the invented parts that come with the program.",
        ),
        field(
            "job",
            Kind::Table(&JOB_HEAD),
            Required,
            "What is to be joined.",
        ),
        field("system", Kind::Table(&SYSTEM), Required, "The network."),
        field(
            "duty",
            Kind::Table(&DUTY),
            Required,
            "What the joint must carry.",
        ),
        field(
            "trial",
            Kind::Table(&TRIAL),
            Optional,
            "The trial on the cable.",
        ),
        field("place", Kind::Table(&PLACE), Required, "Where it will be."),
        field(
            "authority",
            Kind::Table(&AUTHORITY),
            Required,
            "Whose word counts.",
        ),
        field("bus", Kind::Id, Optional, "Bus, for separable joints."),
        field(
            "blank",
            Kind::Rows(&BLANK),
            Optional,
            "Ports without a leg.",
        ),
        field("leg", Kind::Rows(&LEG), Required, "The cables."),
        field(
            "reading",
            Kind::Rows(&READING),
            Optional,
            "What was measured.",
        ),
        field("count", Kind::Rows(&COUNT), Optional, "What was counted."),
        READINGS_CSV,
        COUNTS_CSV,
        LOTS_CSV,
        field(
            "moisture",
            Kind::Rows(&MOISTURE),
            Optional,
            "What tests for moisture found.",
        ),
        field(
            "surface",
            Kind::Rows(&SURFACE),
            Optional,
            "How jackets were found.",
        ),
        field(
            "surrounding",
            Kind::Rows(&SURROUNDING),
            Optional,
            "What surrounds the legs.",
        ),
        field(
            "continuity",
            Kind::Rows(&CONTINUITY),
            Optional,
            "What was read along shields.",
        ),
        field(
            "contact",
            Kind::Rows(&CONTACT),
            Optional,
            "What was read across connections of shields.",
        ),
        field("lot", Kind::Rows(&LOT), Optional, "What is on the truck."),
        field(
            "trial_press",
            Kind::Rows(&TRIAL_PRESS),
            Optional,
            "Growth measured on trial presses.",
        ),
        field(
            "owner_window",
            Kind::Rows(&OWNER_WINDOW),
            Optional,
            "Windows set by the owner.",
        ),
        field(
            "owner_link",
            Kind::Rows(&OWNER_LINK),
            Optional,
            "Distances set by the owner.",
        ),
        field(
            "owner_limit",
            Kind::Rows(&OWNER_LIMIT),
            Optional,
            "Limits set by the owner.",
        ),
        field(
            "confirmation",
            Kind::Rows(&CONFIRMATION),
            Optional,
            "Values from memory that the owner has confirmed.",
        ),
        field(
            "closing",
            Kind::Rows(&CLOSING),
            Optional,
            "Questions that a named engineer has closed with a word of their own.",
        ),
    ],
};
