//! What can be wrong with a quantity as written, and what to do about it.
//!
//! Why separate: as `length_error`, the words change for other reasons than the grammar.
//! Invariants: one variant for each thing that can go wrong; quoted text is short and clean.

use crate::length_error::comma_hint;
use thiserror::Error;

/// Why a written quantity was refused.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum QuantityError {
    /// Nothing was written.
    #[error("the {quantity} is empty")]
    Empty {
        /// What was expected, such as `current`.
        quantity: &'static str,
        /// The units it may be written in.
        units: &'static str,
    },
    /// The text does not start with a digit.
    #[error("expected a number at `{found}`")]
    NoNumber {
        /// Text from that place on.
        found: String,
        /// The units it may be written in.
        units: &'static str,
    },
    /// A run of digits and points that is no number, such as `7.` or `1.2.3`.
    #[error("`{found}` is not a number")]
    MalformedNumber {
        /// The run as written.
        found: String,
    },
    /// A minus sign where the quantity has none.
    #[error("`{found}` is a negative {quantity}")]
    Negative {
        /// Text from the sign on.
        found: String,
        /// What was expected.
        quantity: &'static str,
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
    /// Two numbers with no unit between them.
    #[error("`{first}` and `{second}` are two numbers run together")]
    TwoNumbers {
        /// The first number.
        first: String,
        /// The second number and what follows it.
        second: String,
    },
    /// No unit follows the number.
    #[error("`{number}` has no unit")]
    NoUnit {
        /// The number as written.
        number: String,
        /// The units it may be written in.
        units: &'static str,
    },
    /// What follows the number is no unit of this quantity.
    #[error("`{unit}` is not a unit of {quantity} known here")]
    UnknownUnit {
        /// The unit as written.
        unit: String,
        /// What was expected.
        quantity: &'static str,
        /// The units it may be written in.
        units: &'static str,
    },
    /// A time in cycles, which is none until the frequency is known.
    #[error("`{found}` is a count of cycles, not a time")]
    Cycles {
        /// Number and unit as written.
        found: String,
    },
    /// The value is more than a double holds.
    #[error("`{found}` is too large to compute with")]
    TooLarge {
        /// Number and unit as written.
        found: String,
    },
    /// A temperature below absolute zero.
    #[error("`{found}` is below absolute zero, -273.15 °C")]
    BelowAbsoluteZero {
        /// Number and unit as written.
        found: String,
    },
}

impl QuantityError {
    /// The next step, as one or two whole sentences.
    pub fn hint(&self) -> String {
        match self {
            QuantityError::Empty { quantity, units } => {
                format!("Write the {quantity} as a number and its unit: {units}.")
            }
            QuantityError::NoNumber { units, .. } => {
                format!("Start with a number and put its unit behind it: {units}.")
            }
            QuantityError::MalformedNumber { .. } => "Write the number with one decimal point and a digit behind it, such as 13.2.".into(),
            QuantityError::Negative { .. } => "Write the size without a sign.".into(),
            QuantityError::PlusSign { .. } => "Write the number without a plus sign.".into(),
            QuantityError::DecimalComma { found } => comma_hint(found),
            QuantityError::TwoNumbers { .. } => "Write one number and its unit, and thousands without any mark.".into(),
            QuantityError::NoUnit { number, units } => {
                format!("Write the unit behind {number}: {units}.")
            }
            QuantityError::UnknownUnit { units, .. } => {
                format!("Use one of {units}, and put remarks elsewhere.")
            }
            QuantityError::Cycles { .. } => {
                "Write the time in seconds: cycles divided by the frequency, so that 30 cycles are 0.5 s at 60 Hz.".into()
            }
            QuantityError::TooLarge { .. } => "Check the number and its unit.".into(),
            QuantityError::BelowAbsoluteZero { .. } => "Check the sign, and whether the figure is in degC or degF.".into(),
        }
    }
}
