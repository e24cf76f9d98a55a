//! Quantity errors: the faults of a written quantity, and the next step for each.
//!
//! Why separate: as in `length_error`, the words change for other reasons than the grammar.
//! Invariants: one variant for each fault; quoted text is short and clean.

use crate::length_error::comma_hint;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::borrow::Cow;
use thiserror::Error;

/// Reason why a written quantity was refused.
#[derive(Clone, Debug, PartialEq, Eq, Error, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum QuantityError {
    /// The text is empty.
    #[error("the {quantity} is empty")]
    Empty {
        /// The expected quantity, such as `current`.
        quantity: Cow<'static, str>,
        /// The units in which it may be written.
        units: Cow<'static, str>,
    },
    /// The text does not start with a digit.
    #[error("expected a number at `{found}`")]
    NoNumber {
        /// Text from that place on.
        found: String,
        /// The units in which it may be written.
        units: Cow<'static, str>,
    },
    /// A run of digits and points that is not a number, such as `7.` or `1.2.3`.
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
        /// The expected quantity.
        quantity: Cow<'static, str>,
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
        /// The second number and the text that follows it.
        second: String,
    },
    /// No unit follows the number.
    #[error("`{number}` has no unit")]
    NoUnit {
        /// The number as written.
        number: String,
        /// The units in which it may be written.
        units: Cow<'static, str>,
    },
    /// The text after the number is not a unit of this quantity.
    #[error("`{unit}` is not a unit of {quantity} known here")]
    UnknownUnit {
        /// The unit as written.
        unit: String,
        /// The expected quantity.
        quantity: Cow<'static, str>,
        /// The units in which it may be written.
        units: Cow<'static, str>,
    },
    /// A time in cycles, which has no value until the frequency is known.
    #[error("`{found}` is a count of cycles, not a time")]
    Cycles {
        /// Number and unit as written.
        found: String,
    },
    /// The value is greater than the largest double.
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
