//! Inside of a body: its materials, the layer that spreads the field, and the shape over the edge of the insulation screen.
//!
//! Invariants: every region has three corners or more, each with a position and a diameter; nothing that the row does not state is assumed.
//!
//! Not here: the plug under a separable body (`taper`), the outline on which the field is solved (`section`).

use super::reader::RowReader;
use super::thermal::{CAPACITY_FIELD, RESISTIVITY_FIELD, read_stuff};
use super::word::ORIGINS;
use crate::form::Need::{Optional, Required};
use crate::form::{Kind, Record, Shape, field};
use crate::said::FieldDuty;
use jiff::civil::Date;
use jointwright_numerics::heat::Stuff;
use jointwright_units::{Interval, Length};

/// Inside of a body.
#[derive(Clone, Debug, PartialEq)]
pub struct Inner {
    /// Whether a user measured it on a part cut open (otherwise the maker gave it).
    pub measured: bool,
    /// Person who answers for it.
    pub by: String,
    /// Date.
    pub date: Date,
    /// Uncertainty of every place in it.
    pub uncertainty: Length,
    /// Diameter over insulation on which the diameters are stated.
    pub on_diameter: Option<Length>,
    /// Shape of the body over the edge of the insulation screen.
    pub screen_step: Option<ScreenStep>,
    /// Layer that spreads the field.
    pub grading: Option<Grading>,
    /// Materials.
    pub regions: Vec<Region>,
}

/// A layer of a body that spreads the field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grading {
    /// Thickness on the diameter for which the inside is stated.
    pub thickness: Length,
    /// Relative permittivity.
    pub relative_permittivity: f64,
    /// Conductivity at low fields, S/m.
    pub conductivity_s_per_m: f64,
    /// Field at which the conductivity begins to rise, kV/mm rms, and the power of its rise, a ratio.
    pub rise_kv_per_mm: Option<(f64, f64)>,
}

/// Shape of a body over the step at the edge of the insulation screen.
#[derive(Clone, Debug, PartialEq)]
pub struct ScreenStep {
    /// Radius of an edge cut by the instructions.
    pub edge_radius: Interval,
    /// Length of cable before the edge over which the body stands off the insulation.
    pub bridging: Length,
    /// Filler of the gap there.
    pub filler: Option<Filler>,
}

/// Filler of the gap before the edge of the insulation screen.
#[derive(Clone, Debug, PartialEq)]
pub struct Filler {
    /// Name.
    pub name: String,
    /// Relative permittivity.
    pub relative_permittivity: f64,
    /// Whether the paper calls it permanent there.
    pub is_permanent: bool,
}

/// One material inside a body.
#[derive(Clone, Debug, PartialEq)]
pub struct Region {
    /// Name.
    pub name: String,
    /// Material.
    pub material: String,
    /// Corners: position along the axis from the part's datum, diameter.
    pub corners: Vec<(Length, Length)>,
    /// Radii of the same corners; empty if not stated.
    pub radii: Vec<Length>,
    /// Duty in the field, if stated.
    pub serves: Option<FieldDuty>,
    /// Relative permittivity, if known.
    pub relative_permittivity: Option<f64>,
    /// Whether it conducts.
    pub conductive: bool,
    /// Ratio of its shear modulus to that of the body's rubber, if stated.
    pub stiffness_ratio: Option<f64>,
    /// Thermal resistivity and heat capacity, if stated.
    pub stuff: Option<Stuff>,
}

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
            Kind::Choice(FieldDuty::NAMES),
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

pub(super) fn read_inner(reader: &mut RowReader<'_>, record: &Record) -> Option<Inner> {
    let inner = record.record("inner")?;
    let regions = inner
        .records("region")
        .filter_map(|row| read_region(reader, row))
        .collect();
    Some(Inner {
        measured: inner.text("origin")? == "measured",
        by: inner.string("by")?,
        date: inner.date("date")?,
        uncertainty: inner.length("uncertainty")?,
        on_diameter: inner.length("on_diameter"),
        screen_step: read_screen_step(reader, inner),
        grading: read_grading(reader, inner),
        regions,
    })
}

fn read_grading(reader: &mut RowReader<'_>, inner: &Record) -> Option<Grading> {
    let row = inner.record("grading")?;
    let rise = (row.number("knee_kv_per_mm"), row.number("power"));
    let rise_kv_per_mm = match rise {
        (Some(knee), Some(power)) => Some((knee, power)),
        (None, None) => None,
        _ => {
            reader.complain(
                row.at,
                "`knee_kv_per_mm` and `power` say something only together.".to_owned(),
                "Give both, or neither where the conductivity does not rise.",
            );
            None
        }
    };
    let conductivity_s_per_m = row.number("conductivity_s_per_m").unwrap_or(0.0);
    if rise_kv_per_mm.is_some() && conductivity_s_per_m == 0.0 {
        reader.complain(
            row.at,
            "A conductivity that rises has no value at low fields.".to_owned(),
            "Give `conductivity_s_per_m`.",
        );
    }
    Some(Grading {
        thickness: row.length("thickness")?,
        relative_permittivity: row.number("relative_permittivity")?,
        conductivity_s_per_m,
        rise_kv_per_mm,
    })
}

fn read_screen_step(reader: &mut RowReader<'_>, inner: &Record) -> Option<ScreenStep> {
    let step = inner.record("screen_step")?;
    let edge_radius = reader.interval(step, "edge_radius_least", "edge_radius_greatest")?;
    let filler = match (step.string("filler"), step.number("filler_permittivity")) {
        (Some(name), Some(relative_permittivity)) => Some(Filler {
            name,
            relative_permittivity,
            is_permanent: step.flag("filler_permanent").unwrap_or(false),
        }),
        (None, None) => None,
        _ => {
            reader.complain(
                step.at,
                "`filler` and `filler_permittivity` say something only together.".to_owned(),
                "Give both, or neither where the gap is left empty.",
            );
            None
        }
    };
    Some(ScreenStep {
        edge_radius,
        bridging: step.length("bridging")?,
        filler,
    })
}

pub(super) fn read_region(reader: &mut RowReader<'_>, row: &Record) -> Option<Region> {
    let (along, diameter) = (row.lengths("along"), row.lengths("diameter"));
    let name = row.string("name")?;
    if along.len() != diameter.len() || along.len() < 3 {
        reader.complain(
            row.at,
            format!("Region `{name}` has {} positions and {} diameters; an outline has three corners or more, each with both.", along.len(), diameter.len()),
            "Give one diameter for each position.",
        );
        return None;
    }
    let radii = row.lengths("radius");
    if !radii.is_empty() && radii.len() != along.len() {
        reader.complain(
            row.at,
            format!(
                "Region `{name}` has {} corners and {} radii; each corner has one.",
                along.len(),
                radii.len()
            ),
            "Give one radius for each corner, \"0 mm\" for one that is sharp or does not matter.",
        );
        return None;
    }
    Some(Region {
        radii,
        serves: row.text("serves").and_then(FieldDuty::from_name),
        name,
        material: row.string("material")?,
        corners: along.into_iter().zip(diameter).collect(),
        relative_permittivity: row.number("relative_permittivity"),
        conductive: row.flag("conductive").unwrap_or(false),
        stiffness_ratio: row.number("stiffness"),
        stuff: read_stuff(reader, row),
    })
}
