//! Length errors: the faults of a written length, and the next step for each.
//!
//! Why separate: crews read the words, and they change for other reasons than the grammar in `parse`.
//! Invariants: one variant for each fault; text quoted from the reader's own line is shortened and holds no control characters.
//! Not here: the place of the text in a file.

use crate::quote::list_of_choices;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// Reason why a written length was refused.
#[derive(Clone, Debug, PartialEq, Eq, Error, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LengthError {
    /// The text is empty.
    #[error("the length is empty")]
    Empty,
    /// The text starts with neither a digit nor a fraction.
    #[error("expected a number at `{found}`")]
    NoNumber {
        /// Text from that place on.
        found: String,
    },
    /// A run of digits and points that is not a number, such as `7.` or `7.1/16`.
    #[error("`{found}` is not a number")]
    MalformedNumber {
        /// The run as written.
        found: String,
    },
    /// The number carries a minus sign.
    #[error("`{found}` is negative")]
    Negative {
        /// Text from the sign on.
        found: String,
    },
    /// The number carries a plus sign.
    #[error("`{found}` carries a plus sign")]
    PlusSign {
        /// Text from the sign on.
        found: String,
    },
    /// A comma stands where a decimal point or nothing is expected.
    #[error("`{found}` holds a comma")]
    DecimalComma {
        /// Number, comma and the digits behind it.
        found: String,
    },
    /// No unit follows the number.
    #[error("`{number}` has no unit")]
    NoUnit {
        /// The number as written.
        number: String,
    },
    /// The text after the number is not a known unit of length.
    #[error("`{unit}` is not a unit of length known here")]
    UnknownUnit {
        /// The unit as written.
        unit: String,
    },
    /// Decimal inches where a cut is meant.
    #[error("`{found}` is a decimal of an inch, and a cut is read in fractions")]
    DecimalInch {
        /// The number as written, without unit.
        found: String,
    },
    /// Decimal feet where a cut is meant.
    #[error("`{found}` is a decimal of a foot, and a cut is read in feet, inches and fractions")]
    DecimalFoot {
        /// The number as written, without unit.
        found: String,
    },
    /// The denominator is not one that a tape shows.
    #[error("`{numerator}/{denominator}` is not a fraction that a tape shows")]
    Denominator {
        /// Digits above the stroke.
        numerator: String,
        /// Digits below the stroke.
        denominator: String,
    },
    /// The numerator is zero.
    #[error("`0/{denominator}` is a fraction of nothing")]
    ZeroNumerator {
        /// Number below the stroke.
        denominator: u8,
    },
    /// The fraction is one or more.
    #[error("`{numerator}/{denominator}` is not less than one")]
    ImproperFraction {
        /// Digits above the stroke.
        numerator: String,
        /// Number below the stroke.
        denominator: u8,
        /// Mixed numbers that may have been meant, such as `7 1/16`.
        may_mean: Vec<String>,
    },
    /// A fraction of a unit that is not divided into such fractions.
    #[error("`{number} {unit}` is a fraction of a unit that is not read in fractions")]
    FractionOfUnit {
        /// The number as written.
        number: String,
        /// The unit as written.
        unit: String,
    },
    /// Two numbers with no unit between them.
    #[error("`{first}` and `{second}` are two numbers run together")]
    TwoNumbers {
        /// The first number.
        first: String,
        /// The second number.
        second: String,
    },
    /// A dash that joins nothing, or stands alone, so that it may be a minus sign.
    #[error("the dash at `{found}` does not join a whole number to its fraction")]
    LooseDash {
        /// Text from the dash on.
        found: String,
    },
    /// Twelve inches or more behind feet.
    #[error("`{inches}` inches behind feet is a foot or more")]
    InchesPastFoot {
        /// The number of inches as written.
        inches: String,
    },
    /// More text follows a complete length.
    #[error("`{text}` follows a length that is complete")]
    TrailingText {
        /// The text that follows.
        text: String,
    },
    /// The value is not a whole number of nanometres.
    #[error("`{found}` is finer than one nanometre")]
    TooFine {
        /// Number and unit as written.
        found: String,
    },
    /// The value is more than 10 km.
    #[error("`{found}` is more than 10 km")]
    TooLong {
        /// Number and unit as written.
        found: String,
    },
}

impl LengthError {
    /// The next step, as one or two whole sentences.
    pub fn hint(&self) -> String {
        match self {
            LengthError::Empty => "Write a number and its unit, such as 7 1/16 in or 179.4 mm.".into(),
            LengthError::NoNumber { .. } => "Start with a number, such as 7 1/16 in or 179.4 mm.".into(),
            LengthError::MalformedNumber { .. } => {
                "Write inches as a whole number, a space and a fraction, such as 7 1/16 in, and millimetres with one decimal point, such as 179.4 mm.".into()
            }
            LengthError::Negative { .. } => {
                "Write a length without a sign; a dash may only join whole inches to their fraction, as in 7-1/16 in.".into()
            }
            LengthError::PlusSign { .. } => {
                "Write the length without a sign; if a sum is meant, write the sum.".into()
            }
            LengthError::DecimalComma { found } => comma_hint(found),
            LengthError::NoUnit { number } => {
                format!("Write the unit behind {number}: in, ft, mm, cm, m or mil.")
            }
            LengthError::UnknownUnit { .. } => {
                "Use in, ft, mm, cm, m or mil, or the marks \" for inches and ' for feet.".into()
            }
            LengthError::DecimalInch { .. } => {
                "Write the fraction as the tape shows it, such as 7 1/16 in, or give the length in millimetres.".into()
            }
            LengthError::DecimalFoot { .. } => {
                "Write feet and inches, such as 2 ft 3 1/2 in, or give the length in millimetres.".into()
            }
            LengthError::Denominator { .. } => {
                "Use halves, quarters, eighths, sixteenths, thirty-seconds or sixty-fourths of an inch.".into()
            }
            LengthError::ZeroNumerator { .. } => {
                "Read the tape again; if there is no fraction, write the whole inches alone, such as 7 in.".into()
            }
            LengthError::ImproperFraction { may_mean, .. } if !may_mean.is_empty() => format!(
                "Write {} if that is what was meant: a space or a dash stands between the whole inches and the fraction.",
                list_of_choices(may_mean)
            ),
            LengthError::ImproperFraction { .. } => {
                "Write whole inches and a fraction less than one, such as 7 1/16 in.".into()
            }
            LengthError::FractionOfUnit { .. } => {
                "Write the number with a decimal point, such as 179.4 mm, or feet with inches, such as 2 ft 3 1/2 in; only inches have fractions.".into()
            }
            LengthError::TwoNumbers { .. } => {
                "Write one length; if the second number is part of a fraction, write it with its stroke, as in 7 1/16 in.".into()
            }
            LengthError::LooseDash { .. } => {
                "Write whole inches and fraction with a space or one dash between them, as in 7 1/16 in or 7-1/16 in.".into()
            }
            LengthError::InchesPastFoot { .. } => {
                "Write fewer than 12 inches behind feet, or write the whole length in inches.".into()
            }
            LengthError::TrailingText { .. } => {
                "End the text after the unit, and put remarks elsewhere.".into()
            }
            LengthError::TooFine { .. } => {
                "Write fewer decimals; no instrument on site reads a nanometre.".into()
            }
            LengthError::TooLong { .. } => {
                "Check the number and its unit; no length in a joint comes near 10 km.".into()
            }
        }
    }
}

/// Hint for a comma, which is a decimal sign to some and a thousands mark to others; with three digits behind it, either may be meant.
pub(crate) fn comma_hint(found: &str) -> String {
    let (before, after) = found.split_once(',').unwrap_or((found, ""));
    if before.is_empty() || after.is_empty() || after.contains(',') {
        return "Write the decimal with a point, such as 179.4, and thousands without any mark."
            .into();
    }
    if after.len() == 3 {
        return format!(
            "Write {before}.{after} if a decimal was meant, or {before}{after} if thousands were."
        );
    }
    format!("Write the decimal with a point: {before}.{after}.")
}
