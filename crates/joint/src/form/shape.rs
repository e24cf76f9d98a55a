//! Shape: the table of fields from which a file is read and its JSON Schema is made.

use crate::said::{AboutField, Expected, MeasureOf};

/// Fields of one kind of table in a file.
#[derive(Debug)]
pub struct Shape {
    /// Word for one such table in complaints ("leg", "body").
    pub name: &'static str,
    /// What it is for.
    pub about: &'static str,
    /// Its fields.
    pub fields: &'static [Field],
}

/// One field.
#[derive(Debug)]
pub struct Field {
    /// Key in the file.
    pub name: &'static str,
    /// What may stand there.
    pub kind: Kind,
    /// Whether it must stand there.
    pub need: Need,
    /// What it is, in one sentence.
    pub about: &'static str,
}

/// Whether a field must be given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Need {
    /// It must.
    Required,
    /// It may be left out.
    Optional,
}

/// What may stand in a field.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// Text that is not empty.
    Text,
    /// Words of somebody, as many as they like: they stand in quotation marks wherever they are printed.
    Said,
    /// A short name: letters, digits and hyphens.
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
    /// One of these words.
    Choice(&'static [&'static str]),
    /// Calendar date, `2026-03-09`.
    Date,
    /// Table.
    Table(&'static Shape),
    /// List of tables.
    Rows(&'static Shape),
    /// List of things of one kind.
    List(&'static Kind),
    /// One thing, or a list of such things: its row is one row for each of them.
    Several(&'static Kind),
    /// One thing of a row that says what was done once: a list is refused in words.
    Sole(&'static Kind),
    /// Length, quantity or number that is more than nothing: an error, a time, a thickness.
    Above(&'static Kind),
}

/// Quantity that a field may hold, with the unit in which its value is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// Voltage rms, kept in kV.
    Voltage,
    /// Current rms, kept in A.
    Current,
    /// Time, kept in s.
    Time,
    /// Temperature, kept in degrees Celsius.
    Temperature,
    /// Area, kept in mm².
    Area,
    /// Frequency, kept in Hz.
    Frequency,
    /// Resistance, kept in ohm.
    Resistance,
    /// Torque, kept in N·m.
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
    /// What was expected, for a complaint.
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
    /// The field as a hint names it.
    pub(super) fn of(&self, table: &str) -> AboutField {
        AboutField {
            heading: table.to_owned(),
            field: self.name.to_owned(),
            about: self.about.to_owned(),
        }
    }
}

impl Measure {
    /// The same for a complaint.
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
