//! Shape: the table of fields by which a file is read and from which its JSON Schema is made.

use crate::said::{AboutField, Expected, MeasureOf};

/// Fields of one kind of table in a file.
#[derive(Debug)]
pub struct Shape {
    /// Word for one such table in complaints ("leg", "body").
    pub name: &'static str,
    /// Purpose.
    pub about: &'static str,
    /// Fields.
    pub fields: &'static [Field],
}

/// One field.
#[derive(Debug)]
pub struct Field {
    /// Key in the file.
    pub name: &'static str,
    /// Kind of value that it takes.
    pub kind: Kind,
    /// Whether the field must be given.
    pub need: Need,
    /// Description in one sentence.
    pub about: &'static str,
}

/// Returns a field of a table.
pub const fn field(name: &'static str, kind: Kind, need: Need, about: &'static str) -> Field {
    Field {
        name,
        kind,
        need,
        about,
    }
}

/// Whether a field must be given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Need {
    /// The field must be given.
    Required,
    /// The field may be left out.
    Optional,
}

/// Kind of value of a field.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// Text that is not empty.
    Text,
    /// Somebody's words, of any length; they are printed in quotation marks everywhere.
    Said,
    /// Short name: letters, digits and hyphens.
    Id,
    /// Length that is marked or measured along the cable; decimal inches are refused.
    Cut,
    /// Length that nobody cuts or marks; decimal inches are accepted.
    Distance,
    /// Diameter or thickness; decimal inches are accepted.
    Diameter,
    /// Quantity written with its unit.
    Quantity(Measure),
    /// Number without unit, between bounds.
    Number {
        /// Lower bound.
        least: f64,
        /// Upper bound.
        greatest: f64,
    },
    /// Whole number between bounds.
    Integer {
        /// Lower bound.
        least: i64,
        /// Upper bound.
        greatest: i64,
    },
    /// `true` or `false`.
    Flag,
    /// One word of a list.
    Choice(&'static [&'static str]),
    /// Calendar date, `2026-03-09`.
    Date,
    /// Table.
    Table(&'static Shape),
    /// List of tables.
    Rows(&'static Shape),
    /// List of things of one kind.
    List(&'static Kind),
    /// One thing, or a list of such things: its row counts as one row for each of them.
    Several(&'static Kind),
    /// One thing, in a row about a single act; a list is refused with a reason.
    Sole(&'static Kind),
    /// Length, quantity or number above zero: an error, a time, a thickness.
    Above(&'static Kind),
}

/// Quantity of a field, with the unit of the stored value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// Voltage rms, stored in kV.
    Voltage,
    /// Current rms, stored in A.
    Current,
    /// Time, stored in s.
    Time,
    /// Temperature, stored in degrees Celsius.
    Temperature,
    /// Area, stored in mm².
    Area,
    /// Frequency, stored in Hz.
    Frequency,
    /// Resistance, stored in ohm.
    Resistance,
    /// Torque, stored in N·m.
    Torque,
}

impl Measure {
    /// Example to show in complaints and in the schema.
    pub const fn example(self) -> &'static str {
        match self {
            Measure::Voltage => "13.2 kV",
            Measure::Current => "400 A",
            Measure::Time => "0.5 s",
            Measure::Temperature => "20 degC",
            Measure::Area => "240 mm2",
            Measure::Frequency => "60 Hz",
            Measure::Resistance => "2.5 mohm",
            Measure::Torque => "55 N·m",
        }
    }
}

impl Kind {
    /// Expected value, for a complaint.
    pub fn expected(&self) -> Expected {
        match self {
            Kind::Text | Kind::Said => Expected::Text,
            Kind::Id => Expected::ShortName,
            Kind::Cut => Expected::CutLength,
            Kind::Distance => Expected::Distance,
            Kind::Diameter => Expected::Diameter,
            Kind::Quantity(measure) => Expected::Quantity {
                example: measure.example().to_owned(),
            },
            Kind::Number { least, greatest } => Expected::Number {
                least: *least,
                greatest: *greatest,
            },
            Kind::Integer { least, greatest } => Expected::WholeNumber {
                least: *least,
                greatest: *greatest,
            },
            Kind::Flag => Expected::Flag,
            Kind::Choice(words) => Expected::OneOf {
                words: words.iter().map(|word| (*word).to_owned()).collect(),
            },
            Kind::Date => Expected::Date,
            Kind::Table(shape) => Expected::Table {
                table: shape.name.to_owned(),
            },
            Kind::Rows(shape) => Expected::Tables {
                table: shape.name.to_owned(),
            },
            Kind::List(kind) => Expected::List(Box::new(kind.expected())),
            Kind::Several(kind) => Expected::OneOrSeveral(Box::new(kind.expected())),
            Kind::Sole(kind) => kind.expected(),
            Kind::Above(kind) => Expected::MoreThanNothing(Box::new(kind.expected())),
        }
    }
}

impl Field {
    /// Field as a hint names it.
    pub(super) fn of(&self, table: &str) -> AboutField {
        AboutField {
            heading: table.to_owned(),
            field: self.name.to_owned(),
            about: self.about.to_owned(),
        }
    }
}

impl Measure {
    /// Measure as a complaint names it.
    pub(super) const fn said(self) -> MeasureOf {
        match self {
            Measure::Voltage => MeasureOf::Voltage,
            Measure::Current => MeasureOf::Current,
            Measure::Time => MeasureOf::Time,
            Measure::Temperature => MeasureOf::Temperature,
            Measure::Area => MeasureOf::Area,
            Measure::Frequency => MeasureOf::Frequency,
            Measure::Resistance => MeasureOf::Resistance,
            Measure::Torque => MeasureOf::Torque,
        }
    }
}
