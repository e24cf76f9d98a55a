//! Messages about a file that cannot be read as written: its text, its fields, their values.
//!
//! Why its own room: a crew meets these messages while it types readings, so they come in the language of the job.
#![expect(missing_docs, reason = "the name of a message says what is said")]

use super::Said;
use jointwright_units::{LengthError, QuantityError};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Error in the writing of a file.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FormSaid {
    Text(TextSaid),
    Field(FieldSaid),
    Value(ValueSaid),
    Hint(FormHint),
    Csv(CsvSaid),
    CsvHint(CsvHint),
}

/// Format of a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FormatOf {
    /// A job or a catalogue.
    Toml,
    /// A list of rows.
    Csv,
}

/// Messages about the text of a file, before its fields are read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum TextSaid {
    TooLarge {
        n_bytes: usize,
        greatest: usize,
        of: FormatOf,
    },
    HardlyMeant {
        of: FormatOf,
    },
    NotUtf8 {
        byte: String,
        of: FormatOf,
    },
    SaveAsUtf8 {
        of: FormatOf,
    },
    Empty {
        of: FormatOf,
    },
    WhatToWrite {
        of: FormatOf,
    },
    /// The TOML reader gives its reason in English.
    NotToml {
        why: String,
    },
    LookAtTheLine,
}

/// Messages about fields that are missing or unknown.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FieldSaid {
    Missing {
        path: String,
        field: String,
        expected: Expected,
    },
    Unknown {
        name: String,
        path: String,
    },
    DidYouMean {
        field: String,
    },
    Known {
        fields: Vec<String>,
    },
    Add(AboutField),
    FillIn(AboutField),
    AddColumn(AboutField),
}

/// A field, with its English description from the format.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct AboutField {
    /// Table that it belongs to.
    pub heading: String,
    /// Key.
    pub field: String,
    /// Description, as in the schema.
    pub about: String,
}

/// Expected value of a field.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Expected {
    Text,
    ShortName,
    CutLength,
    Distance,
    Diameter,
    Quantity { example: String },
    Number { least: f64, greatest: f64 },
    WholeNumber { least: i64, greatest: i64 },
    Flag,
    OneOf { words: Vec<String> },
    Date,
    Table { table: String },
    Tables { table: String },
    List(Box<Expected>),
    OneOrSeveral(Box<Expected>),
    MoreThanNothing(Box<Expected>),
}

/// Kind of value that a file holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Holds {
    Text,
    BareWholeNumber,
    BareNumber,
    Flag,
    DateOrTime,
    List,
    Table,
}

/// Quantity that a field takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum MeasureOf {
    Voltage,
    Current,
    Time,
    Temperature,
    Area,
    Frequency,
    Resistance,
    Torque,
}

/// Messages about a value that its field does not accept.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ValueSaid {
    IsEmptyList {
        path: String,
        expected: Expected,
    },
    NamesTheSameTwice {
        path: String,
    },
    HoldsAList {
        path: String,
        expected: Expected,
    },
    IsNothing {
        path: String,
        expected: Expected,
    },
    Holds {
        path: String,
        what: Holds,
        expected: Expected,
    },
    /// A number or a date without quotes.
    Is {
        path: String,
        found: String,
        expected: Expected,
    },
    IsText {
        path: String,
        text: String,
        expected: Expected,
    },
    IsTheText {
        path: String,
        text: String,
        expected: Expected,
    },
    IsEmptyText {
        path: String,
        expected: Expected,
    },
    BreaksALine {
        path: String,
        expected: Expected,
    },
    IsNoLength {
        path: String,
        text: String,
        error: LengthError,
        expected: Expected,
    },
    IsNoQuantity {
        path: String,
        text: String,
        measure: MeasureOf,
        error: QuantityError,
        expected: Expected,
    },
}

/// Advice on a value.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FormHint {
    NameOne,
    CountsOnceForEach,
    OneEndAlone,
    WriteWhatItIs,
    PutQuotes,
    TakeBracketsAway,
    TakeQuotesAway,
    LettersAndDigits,
    DateWithoutQuotes,
    CannotBeNegative,
    FillItIn,
    OnOneLine,
    WireGauge {
        gauge: i32,
        mil: String,
    },
    DidYouMean {
        words: Vec<String>,
    },
    Length(LengthError),
    Quantity {
        measure: MeasureOf,
        error: QuantityError,
    },
}

/// Messages about a file of rows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CsvSaid {
    TooManyRows {
        most: usize,
    },
    SemicolonsBetween,
    TabsBetween,
    TooManyColumns {
        n: usize,
        most: usize,
    },
    NoColumn {
        field: String,
        row: String,
    },
    CannotHold {
        field: String,
        expected: Expected,
    },
    TwoColumns {
        field: String,
    },
    CellBreaksALine,
    NoColumnName {
        text: String,
    },
    RowHasNo {
        row: String,
        field: String,
        expected: Expected,
    },
    NotAtHand {
        file: String,
        field: String,
    },
    StandsInJob {
        row: String,
        place: String,
    },
}

/// Advice on a file of rows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CsvHint {
    HardlyMeant,
    SaveWithCommas,
    WriteInJob { row: String },
    TakeOneColumnOut,
    CloseTheQuote,
    CommaEndsCell,
    WriteRowsInJob,
    TakeOneRowOut,
}

/// Each group of messages about files is a message.
macro_rules! of_form {
    ($($variant:ident($messages:ident),)*) => {
        $(impl From<$messages> for Said {
            fn from(said: $messages) -> Said {
                FormSaid::$variant(said).into()
            }
        })*
    };
}

of_form! {
    Text(TextSaid),
    Field(FieldSaid),
    Value(ValueSaid),
    Hint(FormHint),
    Csv(CsvSaid),
    CsvHint(CsvHint),
}
