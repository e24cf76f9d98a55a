//! As made: marks of tool, die, torque or shear bolt on a connector, as its paper states them.
//!
//! Why its own file: these are readings of a hold point; no fit and no cut rests on them.
//!
//! Invariants: a window has two sides; a quantity that the paper does not state has no window.

use super::reader::RowReader;
use crate::form::Need::Optional;
use crate::form::{Field, Kind, Measure, Record, Shape, field};
use jointwright_units::Interval;

/// Windows of a connector as made; `None` where its paper states none.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AsMade {
    /// Dimension across the flats of each press.
    pub across: Option<Interval>,
    /// Length of the whole connector.
    pub length: Option<Interval>,
    /// Number of bolts or screws.
    pub bolts: Option<i64>,
    /// Least and greatest torque of each screw, or torque at which a head shears, N·m.
    pub torque_nm: Option<(f64, f64)>,
}

const fn optional(name: &'static str, kind: Kind, about: &'static str) -> Field {
    field(name, kind, Optional, about)
}

pub(super) const AS_MADE: Shape = Shape {
    name: "as_made",
    about: "What the tool, die, torque or shear bolt leaves behind; each window with both its sides.",
    fields: &[
        optional(
            "across_least",
            Kind::Diameter,
            "Least across the flats of a press.",
        ),
        optional(
            "across_greatest",
            Kind::Diameter,
            "Greatest across the flats of a press.",
        ),
        optional(
            "length_least",
            Kind::Cut,
            "Least length of the whole connector as made.",
        ),
        optional(
            "length_greatest",
            Kind::Cut,
            "Greatest length of the whole connector as made.",
        ),
        optional(
            "bolts",
            Kind::Integer {
                least: 1,
                greatest: 40,
            },
            "Number of its bolts or screws.",
        ),
        optional(
            "torque_least",
            Kind::Quantity(Measure::Torque),
            "Least torque of a screw, or at which a head shears.",
        ),
        optional(
            "torque_greatest",
            Kind::Quantity(Measure::Torque),
            "Greatest torque of a screw, or at which a head shears.",
        ),
    ],
};

pub(super) fn read_as_made(reader: &mut RowReader<'_>, record: &Record) -> AsMade {
    let Some(row) = record.record("as_made") else {
        return AsMade::default();
    };
    for (least, greatest) in [
        ("across_least", "across_greatest"),
        ("length_least", "length_greatest"),
        ("torque_least", "torque_greatest"),
    ] {
        if row.is_given(least) != row.is_given(greatest) {
            reader.complain(
                row.at,
                format!("Only one of `{least}` and `{greatest}` is given; a window has two sides."),
                "Give both, or neither where the paper gives none.",
            );
        }
    }
    let torque_nm = row
        .number("torque_least")
        .zip(row.number("torque_greatest"));
    if let Some((least, greatest)) = torque_nm.filter(|(least, greatest)| least > greatest) {
        reader.complain(
            row.at("torque_least"),
            format!("`torque_least` is {least} N·m and `torque_greatest` {greatest} N·m; the least cannot be above the greatest."),
            "Exchange them, or look them up again.",
        );
    }
    AsMade {
        across: reader.interval(row, "across_least", "across_greatest"),
        length: reader.interval(row, "length_least", "length_greatest"),
        bolts: row.integer("bolts"),
        torque_nm,
    }
}
