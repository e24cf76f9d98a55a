//! Rubber: relaxed dimensions of a part, its rubber, and the effect of storage on it.

use super::fits::Fits;
use super::reader::RowReader;
use super::word::ORIGINS;
use crate::form::Need::{Optional, Required};
use crate::form::{Kind, Measure, Record, Shape, field};
use jiff::civil::Date;
use jointwright_numerics::rubber::{Decay, Law, LawKind};
use jointwright_units::Length;

/// Words for the laws of rubber.
pub const RUBBER_LAWS: &[&str] = &LawKind::NAMES;
/// Zero degrees Celsius, K.
pub(crate) const ZERO_DEGC_K: f64 = 273.15;
/// Least ratio of a bore to its uncertainty; below it the bore says nothing about pressure or stretch.
const UNCERTAIN_MOST: i64 = 10;
/// Seconds per day.
pub(crate) const DAY_S: f64 = 86_400.0;

const MODULUS: Kind = Kind::Number {
    least: 0.0,
    greatest: 100.0,
};
const PER_K: Kind = Kind::Number {
    least: -0.05,
    greatest: 0.05,
};

const DECAY: Shape = Shape {
    name: "decay",
    about: "What storage uses up: the share greatest · (1 − exp(−(t/time)^power)), t in days at the reference temperature, by Arrhenius.",
    fields: &[
        field(
            "greatest",
            Kind::Number {
                least: 0.0,
                greatest: 1.0,
            },
            Required,
            "Share after endless time, 0 to 1.",
        ),
        field(
            "time_days",
            Kind::Number {
                least: 1.0e-3,
                greatest: 1.0e9,
            },
            Required,
            "Time scale at the reference temperature, days.",
        ),
        field(
            "power",
            Kind::Number {
                least: 0.01,
                greatest: 1.0,
            },
            Required,
            "Power of the time.",
        ),
        field(
            "reference",
            Kind::Quantity(Measure::Temperature),
            Required,
            "Reference temperature.",
        ),
        field(
            "activation_kj_per_mol",
            Kind::Number {
                least: 0.0,
                greatest: 500.0,
            },
            Required,
            "Activation energy, kJ/mol.",
        ),
    ],
};

pub(super) const RUBBER: Shape = Shape {
    name: "rubber",
    about: "The part as it is when nothing is in it, and its rubber; without it nobody can say how hard it sits.",
    fields: &[
        field(
            "origin",
            Kind::Choice(ORIGINS),
            Required,
            "From the maker, or measured.",
        ),
        field("by", Kind::Text, Required, "Who stands for it."),
        field("date", Kind::Date, Required, "When."),
        field(
            "relaxed_bore",
            Kind::Above(&Kind::Diameter),
            Required,
            "Diameter of its bore when nothing is in it and nothing has set.",
        ),
        field(
            "relaxed_outside",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Its outside diameter then; for a body whose inside is stated that one counts.",
        ),
        field(
            "uncertainty",
            Kind::Above(&Kind::Diameter),
            Required,
            "How far off these diameters may be.",
        ),
        field(
            "at_temperature",
            Kind::Quantity(Measure::Temperature),
            Required,
            "Temperature at which they and the moduli hold.",
        ),
        field(
            "law",
            Kind::Choice(RUBBER_LAWS),
            Optional,
            "Law of the rubber; left out, pressures are compared as those of a neo-Hookean one and none is said in kPa.",
        ),
        field(
            "shear_modulus_mpa",
            MODULUS,
            Optional,
            "Shear modulus at rest, MPa, for `neo-hookean` and `gent`.",
        ),
        field("c1_mpa", MODULUS, Optional, "C1, MPa, for `mooney-rivlin`."),
        field("c2_mpa", MODULUS, Optional, "C2, MPa, for `mooney-rivlin`."),
        field(
            "stretch_limit",
            Kind::Number {
                least: 0.01,
                greatest: 1.0e4,
            },
            Optional,
            "The most that I1 − 3 comes near, for `gent`.",
        ),
        field(
            "modulus_per_k_least",
            PER_K,
            Optional,
            "Least relative change of the moduli per kelvin.",
        ),
        field(
            "modulus_per_k_greatest",
            PER_K,
            Optional,
            "Greatest relative change of the moduli per kelvin.",
        ),
        field(
            "expansion_per_k_least",
            PER_K,
            Optional,
            "Least relative change of its lengths per kelvin.",
        ),
        field(
            "expansion_per_k_greatest",
            PER_K,
            Optional,
            "Greatest relative change of its lengths per kelvin.",
        ),
        field(
            "hold_diameter",
            Kind::Above(&Kind::Diameter),
            Optional,
            "Diameter to which its bore is held open in store, for one that is expanded.",
        ),
        field(
            "set",
            Kind::Table(&DECAY),
            Optional,
            "Share of that stretch which stays in the bore for good.",
        ),
        field(
            "relaxation",
            Kind::Table(&DECAY),
            Optional,
            "Share of its moduli that is lost while it is held open.",
        ),
        field(
            "pressure_least_kpa",
            Kind::Number {
                least: 0.0,
                greatest: 1.0e4,
            },
            Optional,
            "Least pressure on the cable that its paper asks for, kPa.",
        ),
        field(
            "stretch_greatest",
            Kind::Number {
                least: 1.0,
                greatest: 20.0,
            },
            Optional,
            "Greatest diameter of the bore over its relaxed diameter that its paper allows.",
        ),
    ],
};

/// Relaxed dimensions of a part, and its rubber.
#[derive(Clone, Debug, PartialEq)]
pub struct Rubber {
    /// Whether a user measured it (otherwise the maker gave it).
    pub measured: bool,
    /// Person who answers for it.
    pub by: String,
    /// Date.
    pub date: Date,
    /// Relaxed diameter of the bore.
    pub relaxed_bore: Length,
    /// Relaxed outside diameter, if stated.
    pub relaxed_outside: Option<Length>,
    /// Uncertainty of these diameters.
    pub uncertainty: Length,
    /// Temperature of these diameters, degrees Celsius.
    pub at_degc: f64,
    /// Law with its moduli, if stated.
    pub law: Option<Law>,
    /// Relative change of the moduli per kelvin, least and greatest.
    pub modulus_per_k: Option<(f64, f64)>,
    /// Relative change of its lengths per kelvin, least and greatest.
    pub expansion_per_k: Option<(f64, f64)>,
    /// Diameter to which its bore is held open in store.
    pub hold_diameter: Option<Length>,
    /// Set: share of that stretch which stays for good.
    pub set: Option<Decay>,
    /// Relaxation: share of the moduli that is lost while it is held open.
    pub relaxation: Option<Decay>,
    /// Least pressure that its paper asks for, kPa.
    pub pressure_least_kpa: Option<f64>,
    /// Greatest stretch of the bore that its paper allows.
    pub stretch_greatest_ratio: Option<f64>,
}

/// Reads the table `rubber` of a row, if it has one.
///
/// `fits` are its ranges: a part held open must pass over the largest diameter that it takes.
pub(super) fn read_rubber(
    reader: &mut RowReader<'_>,
    record: &Record,
    fits: &[Fits],
) -> Option<Rubber> {
    let row = record.record("rubber")?;
    let law = read_law(reader, row);
    let modulus_per_k = read_slope(reader, row, "modulus_per_k_least", "modulus_per_k_greatest");
    let expansion_per_k = read_slope(
        reader,
        row,
        "expansion_per_k_least",
        "expansion_per_k_greatest",
    );
    let read = Rubber {
        measured: row.text("origin")? == "measured",
        by: row.string("by")?,
        date: row.date("date")?,
        relaxed_bore: row.length("relaxed_bore")?,
        relaxed_outside: row.length("relaxed_outside"),
        uncertainty: row.length("uncertainty")?,
        at_degc: row.number("at_temperature")?,
        law,
        modulus_per_k,
        expansion_per_k,
        hold_diameter: row.length("hold_diameter"),
        set: row.record("set").and_then(decay),
        relaxation: row.record("relaxation").and_then(decay),
        pressure_least_kpa: row.number("pressure_least_kpa"),
        stretch_greatest_ratio: row.number("stretch_greatest"),
    };
    complain_of_diameters(reader, row, &read);
    complain_of_hold(reader, row, &read);
    complain_of_range(reader, row, &read, fits);
    Some(read)
}

fn complain_of_diameters(reader: &mut RowReader<'_>, row: &Record, rubber: &Rubber) {
    let bore = rubber.relaxed_bore;
    if bore < rubber.uncertainty * UNCERTAIN_MOST {
        reader.complain(
            row.at("relaxed_bore"),
            format!(
                "`relaxed_bore` is {bore} and may be off by {}; nothing is known of it.",
                rubber.uncertainty
            ),
            "Look both up again.",
        );
    }
    for (name, other) in [
        ("relaxed_outside", rubber.relaxed_outside),
        ("hold_diameter", rubber.hold_diameter),
    ] {
        if let Some(other) = other.filter(|other| *other <= bore) {
            reader.complain(
                row.at(name),
                format!(
                    "`{name}` is {other} and `relaxed_bore` {bore}; it is larger than the bore."
                ),
                "Look both up again.",
            );
        }
    }
}

fn complain_of_hold(reader: &mut RowReader<'_>, row: &Record, rubber: &Rubber) {
    if rubber.hold_diameter.is_some() || row.is_given("hold_diameter") {
        return;
    }
    for name in ["set", "relaxation"] {
        if row.is_given(name) {
            reader.complain(
                row.at(name),
                format!("`{name}` stands without `hold_diameter`; it would have no effect."),
                "Say to which diameter the part is held open in store, or take it away.",
            );
        }
    }
}

fn complain_of_range(reader: &mut RowReader<'_>, row: &Record, rubber: &Rubber, fits: &[Fits]) {
    let Some(hold) = rubber.hold_diameter else {
        return;
    };
    let widest = fits.iter().map(|fits| fits.range.greatest()).max();
    if let Some(widest) = widest.filter(|widest| hold <= *widest) {
        reader.complain(
            row.at("hold_diameter"),
            format!(
                "`hold_diameter` is {hold}, and a range of the part goes to {widest}; held so it would not go over that."
            ),
            "Look both up again: the holdout's outside is meant.",
        );
    }
}

fn read_law(reader: &mut RowReader<'_>, row: &Record) -> Option<Law> {
    let kind = row.text("law").and_then(LawKind::from_name);
    let needed: &[&str] = match kind {
        Some(LawKind::NeoHookean) => &["shear_modulus_mpa"],
        Some(LawKind::MooneyRivlin) => &["c1_mpa", "c2_mpa"],
        Some(LawKind::Gent) => &["shear_modulus_mpa", "stretch_limit"],
        None => &[],
    };
    for name in ["shear_modulus_mpa", "c1_mpa", "c2_mpa", "stretch_limit"] {
        if row.is_given(name) != needed.contains(&name) {
            let word = kind.map_or("no `law`".to_owned(), |kind| {
                format!("the law `{}`", kind.name())
            });
            let message = if row.is_given(name) {
                format!("`{name}` says nothing with {word}.")
            } else {
                format!("{word} has no `{name}`.", word = capital(&word))
            };
            reader.complain(
                row.at,
                message,
                "Look up which law the constants belong to.",
            );
            return None;
        }
    }
    let pa = |name: &str| row.number(name).map(|mpa| mpa * 1e6);
    let law = match kind? {
        LawKind::MooneyRivlin => Law::MooneyRivlin {
            c1_pa: pa("c1_mpa")?,
            c2_pa: pa("c2_mpa")?,
        },
        LawKind::Gent => Law::Gent {
            modulus_pa: pa("shear_modulus_mpa")?,
            limit: row.number("stretch_limit")?,
        },
        LawKind::NeoHookean => Law::NeoHookean {
            modulus_pa: pa("shear_modulus_mpa")?,
        },
    };
    if law.modulus_pa() <= 0.0 {
        reader.complain(
            row.at("law"),
            "The constants of the rubber give it no stiffness.".to_owned(),
            "Look them up again, or leave the law out.",
        );
        return None;
    }
    Some(law)
}

fn read_slope(
    reader: &mut RowReader<'_>,
    row: &Record,
    least: &str,
    greatest: &str,
) -> Option<(f64, f64)> {
    match (row.number(least), row.number(greatest)) {
        (Some(low), Some(high)) if low <= high => Some((low, high)),
        (None, None) => None,
        _ => {
            reader.complain(
                row.at,
                format!("`{least}` and `{greatest}` say something only together, the least not above the greatest."),
                "Give both from a stated source, or neither.",
            );
            None
        }
    }
}

fn decay(row: &Record) -> Option<Decay> {
    Some(Decay {
        greatest: row.number("greatest")?,
        time_s: row.number("time_days")? * DAY_S,
        power: row.number("power")?,
        reference_k: row.number("reference")? + ZERO_DEGC_K,
        activation_j_per_mol: row.number("activation_kj_per_mol")? * 1e3,
    })
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|first| first.to_uppercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}
