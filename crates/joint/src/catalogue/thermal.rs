//! Thermal: resistivity and heat capacity of a part, its greatest temperatures and its ageing, as its paper states them.

use super::reader::RowReader;
use crate::form::Need::{Optional, Required};
use crate::form::{Field, Kind, Measure, Record, Shape, field};
use jointwright_numerics::heat::Stuff;
use jointwright_units::Length;

/// Joules per megajoule.
const MEGA: f64 = 1e6;

/// Bounds of a thermal resistivity, K·m/W.
pub(crate) const RESISTIVITY: Kind = Kind::Number {
    least: 0.1,
    greatest: 50.0,
};
/// Bounds of a heat capacity, MJ/(m³ K).
pub(crate) const CAPACITY: Kind = Kind::Number {
    least: 0.1,
    greatest: 10.0,
};

pub(super) const RESISTIVITY_FIELD: Field = field(
    "resistivity_k_m_per_w",
    RESISTIVITY,
    Optional,
    "Thermal resistivity of its material, K·m/W; with `capacity_mj_per_m3k`.",
);

pub(super) const CAPACITY_FIELD: Field = field(
    "capacity_mj_per_m3k",
    CAPACITY,
    Optional,
    "Heat that a cubic metre of it stores per kelvin, MJ/(m³·K).",
);

pub(super) const COVER: Shape = Shape {
    name: "cover",
    about: "What of a seal the heat must pass, once it has closed.",
    fields: &[
        field(
            "wall",
            Kind::Above(&Kind::Diameter),
            Required,
            "Greatest thickness of its wall on the joint.",
        ),
        field(
            "covers_body",
            Kind::Flag,
            Required,
            "True when it covers the body, false when it lies beyond the body's end only.",
        ),
        field(
            "resistivity_k_m_per_w",
            RESISTIVITY,
            Required,
            "Thermal resistivity of its material, K·m/W.",
        ),
        field(
            "capacity_mj_per_m3k",
            CAPACITY,
            Required,
            "Heat that a cubic metre of it stores per kelvin, MJ/(m³·K).",
        ),
    ],
};

pub(super) const AGEING: Shape = Shape {
    name: "ageing",
    about: "How fast warmth uses the part up, by Arrhenius: exp(E/R (1/T0 − 1/T)) times as fast as at T0.",
    fields: &[
        field(
            "reference",
            Kind::Quantity(Measure::Temperature),
            Required,
            "Reference temperature T0.",
        ),
        field(
            "activation_kj_per_mol",
            Kind::Number {
                least: 1.0,
                greatest: 500.0,
            },
            Required,
            "Activation energy E, kJ/mol.",
        ),
        field(
            "from",
            Kind::Said,
            Required,
            "Where both are from: a paper, a test.",
        ),
    ],
};

/// Wall of a seal that the heat must pass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cover {
    /// Thickness of its wall on the joint.
    pub wall: Length,
    /// Whether it covers the body.
    pub covers_body: bool,
    /// Its material.
    pub stuff: Stuff,
}

/// Ageing of a part by warmth.
#[derive(Clone, Debug, PartialEq)]
pub struct Ageing {
    /// Reference temperature, °C.
    pub reference_degc: f64,
    /// Activation energy, kJ/mol.
    pub activation_kj_per_mol: f64,
    /// Source of both.
    pub from: String,
}

/// Material of a resistivity, K·m/W, and a capacity, MJ/(m³ K).
pub(crate) fn stuff(resistivity_k_m_per_w: f64, capacity_mj_per_m3k: f64) -> Stuff {
    Stuff {
        conductivity_w_per_mk: 1.0 / resistivity_k_m_per_w,
        capacity_j_per_m3k: capacity_mj_per_m3k * MEGA,
    }
}

/// Reads the two numbers of a material, which are useful only together.
pub(super) fn read_stuff(reader: &mut RowReader<'_>, row: &Record) -> Option<Stuff> {
    let (resistivity, capacity) = (
        row.number("resistivity_k_m_per_w"),
        row.number("capacity_mj_per_m3k"),
    );
    if row.is_given("resistivity_k_m_per_w") != row.is_given("capacity_mj_per_m3k") {
        reader.complain(
            row.at,
            "`resistivity_k_m_per_w` and `capacity_mj_per_m3k` say something only together."
                .to_owned(),
            "Give both, or neither.",
        );
    }
    Some(stuff(resistivity?, capacity?))
}

/// Complains of greatest conductor temperatures that fall from service to emergency to short circuit.
pub(super) fn complain_of_temperatures(reader: &mut RowReader<'_>, row: &Record) {
    let names = [
        "conductor_greatest",
        "conductor_emergency_greatest",
        "conductor_fault_greatest",
    ];
    let given = names
        .iter()
        .filter_map(|name| Some((*name, row.number(name)?)));
    let given: Vec<(&str, f64)> = given.collect();
    for pair in given.windows(2) {
        let [(lower, least), (upper, most)] = [pair[0], pair[1]];
        if least > most {
            reader.complain(
                row.at(lower),
                format!("`{lower}` is {least} degC, above `{upper}`, {most} degC."),
                "Exchange them, or look them up again.",
            );
        }
    }
}

pub(super) fn cover(row: &Record) -> Option<Cover> {
    Some(Cover {
        wall: row.length("wall")?,
        covers_body: row.flag("covers_body")?,
        stuff: stuff(
            row.number("resistivity_k_m_per_w")?,
            row.number("capacity_mj_per_m3k")?,
        ),
    })
}

pub(super) fn ageing(row: &Record) -> Option<Ageing> {
    Some(Ageing {
        reference_degc: row.number("reference")?,
        activation_kj_per_mol: row.number("activation_kj_per_mol")?,
        from: row.string("from")?,
    })
}
