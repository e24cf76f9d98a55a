//! Conductors that a connector, or one end of it, takes: size, metal and stranding.
//!
//! Invariants: size and metal of a conductor belong together wherever the row says so.

use super::reader::RowReader;
use super::word::{METALS, STRANDINGS, metal, stranding};
use crate::cable::{Conductor, Metal, Size, Stranding};
use crate::form::Need::{Optional, Required};
use crate::form::{Field, Kind, Record, Shape, field};

/// Conductors one by one, so that a size cannot be read with the metal of another.
pub(super) const CONDUCTOR: Shape = Shape {
    name: "conductors",
    about: "A conductor that it takes: size and metal belong together.",
    fields: &[
        field(
            "size",
            Kind::Text,
            Required,
            "Its size, such as \"4/0 AWG\".",
        ),
        field("metal", Kind::Choice(METALS), Required, "Its metal."),
        field(
            "strandings",
            Kind::List(&Kind::Choice(STRANDINGS)),
            Optional,
            "Its strandings; left out: those beside `conductors`.",
        ),
    ],
};

/// Fields that a whole connector and one end of it have in common.
pub(super) const SIZES: Field = field(
    "sizes",
    Kind::List(&Kind::Text),
    Optional,
    "Conductor sizes, such as \"500 kcmil\", where every one of them may be of every one of `metals`; else `conductors`.",
);

pub(super) const METALS_FIELD: Field = field(
    "metals",
    Kind::List(&Kind::Choice(METALS)),
    Optional,
    "Conductor metals, beside `sizes`.",
);

pub(super) const STRANDINGS_FIELD: Field = field(
    "strandings",
    Kind::List(&Kind::Choice(STRANDINGS)),
    Optional,
    "Conductor strandings.",
);

pub(super) const CONDUCTORS: Field = field(
    "conductors",
    Kind::Rows(&CONDUCTOR),
    Optional,
    "Conductors one by one, size with metal, instead of `sizes` and `metals`.",
);

/// Conductors that one end takes, or both.
pub(super) struct Takes {
    pub sizes: Vec<Size>,
    pub metals: Vec<Metal>,
    pub strandings: Vec<Stranding>,
    pub named: Vec<Conductor>,
}

/// Reads the conductors of a record, which a message calls `what`.
pub(super) fn read_takes(reader: &mut RowReader<'_>, record: &Record, what: &str) -> Takes {
    let list = |name: &str| record.texts(name);
    let strandings: Vec<Stranding> = list("strandings")
        .iter()
        .filter_map(|s| stranding(s))
        .collect();
    if !record.is_given("conductors") {
        for (name, hint) in [
            (
                "sizes",
                "Add `sizes` and `metals`, or `conductors` where only some sizes go with some metals.",
            ),
            (
                "metals",
                "Add `sizes` and `metals`, or `conductors` where only some sizes go with some metals.",
            ),
            ("strandings", "Add the strandings that its paper names."),
        ] {
            reader.complain_of_missing(record, what, name, hint);
        }
        return Takes {
            sizes: reader.sizes(record),
            metals: list("metals").iter().filter_map(|m| metal(m)).collect(),
            strandings,
            named: Vec::new(),
        };
    }
    for name in ["sizes", "metals"] {
        if record.is_given(name) {
            reader.complain(
                record.at(name),
                format!("{what} has both `conductors` and `{name}`."),
                "Keep `conductors`, which says what belongs together.",
            );
        }
    }
    let mut named = Vec::new();
    for row in record.records("conductors") {
        named.extend(read_conductor(reader, row, &strandings, what));
    }
    let mut takes = Takes {
        sizes: named.iter().map(|c| c.size).collect(),
        metals: named.iter().map(|c| c.metal).collect(),
        strandings: named.iter().map(|c| c.stranding).collect(),
        named,
    };
    takes.sizes.sort();
    takes.sizes.dedup();
    takes.metals.sort();
    takes.metals.dedup();
    takes.strandings.sort();
    takes.strandings.dedup();
    takes
}

/// Reads one entry of `conductors`: a conductor for each of its strandings.
fn read_conductor(
    reader: &mut RowReader<'_>,
    row: &Record,
    common: &[Stranding],
    what: &str,
) -> Vec<Conductor> {
    let own = row.texts("strandings");
    let own: Vec<Stranding> = own.iter().filter_map(|s| stranding(s)).collect();
    if own.is_empty() && common.is_empty() && row.is_whole() && !row.is_given("strandings") {
        reader.complain(
            row.at,
            format!("A conductor of {what} has no `strandings`, neither of its own nor beside `conductors`."),
            "Add the strandings that its paper names.",
        );
    }
    let strandings = if own.is_empty() { common } else { &own };
    let size = reader.size_in(row, "size");
    let (Some(size), Some(metal)) = (size, row.text("metal").and_then(metal)) else {
        return Vec::new();
    };
    let of = |stranding: &Stranding| Conductor {
        size,
        metal,
        stranding: *stranding,
    };
    strandings.iter().map(of).collect()
}
