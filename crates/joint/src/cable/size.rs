//! Size: conductor sizes as they are printed on a cable, and the conductor itself.
//!
//! Invariants: the text of `Display` parses back to the same size; AWG, kcmil and mm² sizes are never converted into one another.
//!
//! Source: definition of the American wire gauge, d = 0.005 in · 92^((36 − n)/39); 1 kcmil = 1000 circular mils.

use super::Words;
use jointwright_units::Length;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::f64::consts::FRAC_PI_4;
use std::fmt;

/// Conductor metal.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "lowercase")]
pub enum Metal {
    /// Annealed copper.
    Copper,
    /// Aluminium 1350.
    Aluminium,
}

impl Metal {
    /// Name in the words of a page.
    pub fn name(self, words: Words) -> &'static str {
        match (self, words) {
            (Metal::Copper, _) => "copper",
            (Metal::Aluminium, Words::Us) => "aluminum",
            (Metal::Aluminium, Words::Iec) => "aluminium",
        }
    }
}

/// Arrangement of the strands.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "lowercase")]
pub enum Stranding {
    /// One wire.
    Solid,
    /// Round strands in layers, untouched.
    Concentric,
    /// Concentric, drawn down by about three percent.
    Compressed,
    /// Pressed until the strands fill the circle.
    Compact,
}

impl Stranding {
    /// Every stranding.
    pub const ALL: [Stranding; 4] = [
        Stranding::Solid,
        Stranding::Concentric,
        Stranding::Compressed,
        Stranding::Compact,
    ];

    /// Name on a page.
    pub fn name(self) -> &'static str {
        match self {
            Stranding::Solid => "solid",
            Stranding::Concentric => "concentric",
            Stranding::Compressed => "compressed",
            Stranding::Compact => "compact",
        }
    }
}

/// Conductor size as printed.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Size {
    /// American wire gauge: 4/0 is -3, 1/0 is 0, 2 AWG is 2.
    Awg(i8),
    /// Thousands of circular mils.
    Kcmil(u32),
    /// Nominal square millimetres.
    Mm2(u32),
}

/// Reason why a text is not a conductor size.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SizeError {
    /// No unit follows the number.
    #[error("conductor size {text:?} has no unit: AWG, kcmil or mm² is expected")]
    NoUnit {
        /// Text that was found.
        text: String,
    },
    /// The text before the unit is not a number of that unit.
    #[error("{number:?} is not a size in {unit}: {expected} is expected")]
    Number {
        /// Text before the unit.
        number: String,
        /// Unit.
        unit: &'static str,
        /// Form of such a number.
        expected: &'static str,
    },
}

impl Size {
    /// Reads a size as printed on a cable: `4/0 AWG`, `2 AWG`, `500 kcmil`, `240 mm2`, `240 mm²`.
    ///
    /// # Errors
    /// The unit is missing, or the number is not one of its sizes.
    pub fn parse(text: &str) -> Result<Size, SizeError> {
        let text = text.trim();
        let split = text.find(|c: char| c.is_alphabetic()).unwrap_or(text.len());
        let (number, unit) = (text[..split].trim(), text[split..].trim().to_lowercase());
        match unit.as_str() {
            "awg" => awg(number),
            "kcmil" | "mcm" => {
                whole(number, "kcmil", "a whole number from 1 to 5000").map(Size::Kcmil)
            }
            "mm2" | "mm²" => whole(number, "mm²", "a whole number from 1 to 5000").map(Size::Mm2),
            _ => Err(SizeError::NoUnit {
                text: text.to_owned(),
            }),
        }
    }

    /// Nominal area of metal, mm².
    ///
    /// `A = π/4 · d²` of the solid wire of that gauge, or of the circular mils; for mm² sizes the nominal number, which the standard replaces by a resistance.
    pub fn area_mm2(self) -> f64 {
        match self {
            Size::Awg(n) => {
                let d_mm = awg_diameter_mm(n);
                FRAC_PI_4 * d_mm * d_mm
            }
            Size::Kcmil(kcmil) => f64::from(kcmil) * 1000.0 * CIRCULAR_MIL_MM2,
            Size::Mm2(area) => f64::from(area),
        }
    }

    /// Nominal area of metal, thousands of circular mils.
    pub fn kcmil(self) -> f64 {
        match self {
            Size::Kcmil(kcmil) => f64::from(kcmil),
            other => other.area_mm2() / (1000.0 * CIRCULAR_MIL_MM2),
        }
    }

    /// Whether the size is a metric one.
    pub fn is_metric(self) -> bool {
        matches!(self, Size::Mm2(_))
    }
}

/// Area of one circular mil, mm²: π/4 · (0.0254 mm)².
const CIRCULAR_MIL_MM2: f64 = FRAC_PI_4 * 0.0254 * 0.0254;

fn awg_diameter_mm(n: i8) -> f64 {
    0.127 * 92f64.powf((36.0 - f64::from(n)) / 39.0)
}

/// Diameter of a solid wire of American wire gauge `n`, rounded to the micrometre.
///
/// d = 0.127 mm · 92^((36 − n)/39) · `n`, gauge number, 4/0 is -3.
///
/// # Accuracy
/// Half a micrometre: the rounding keeps the same bits on every machine.
pub fn awg_wire_diameter(n: i8) -> Length {
    Length::from_nm((awg_diameter_mm(n) * 1000.0).round() as i64 * 1000)
}

fn awg(number: &str) -> Result<Size, SizeError> {
    let wrong = || SizeError::Number {
        number: number.to_owned(),
        unit: "AWG",
        expected: "1/0 to 4/0 or a whole number from 1 to 40",
    };
    let plain = number.strip_prefix('#').unwrap_or(number);
    let gauge = match plain.split_once('/') {
        Some((aughts, "0")) => match aughts.parse::<i8>() {
            Ok(n @ 1..=4) => 1 - n,
            _ => return Err(wrong()),
        },
        Some(_) => return Err(wrong()),
        None => match digits(plain).and_then(|n| i8::try_from(n).ok()) {
            Some(n @ 1..=40) => n,
            _ => return Err(wrong()),
        },
    };
    Ok(Size::Awg(gauge))
}

fn whole(number: &str, unit: &'static str, expected: &'static str) -> Result<u32, SizeError> {
    match digits(number) {
        Some(n @ 1..=5000) => Ok(n),
        _ => Err(SizeError::Number {
            number: number.to_owned(),
            unit,
            expected,
        }),
    }
}

fn digits(text: &str) -> Option<u32> {
    // A sign or a decimal point is a misprint here, and `parse` alone would take "+4".
    text.bytes()
        .all(|b| b.is_ascii_digit())
        .then(|| text.parse().ok())
        .flatten()
}

impl fmt::Display for Size {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Size::Awg(n) if n <= 0 => write!(f, "{}/0 AWG", 1 - i16::from(n)),
            Size::Awg(n) => write!(f, "{n} AWG"),
            Size::Kcmil(kcmil) => write!(f, "{kcmil} kcmil"),
            Size::Mm2(area) => write!(f, "{area} mm²"),
        }
    }
}

/// A conductor: size, metal and stranding.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
pub struct Conductor {
    /// Size as printed.
    pub size: Size,
    /// Metal.
    pub metal: Metal,
    /// Arrangement of the strands.
    pub stranding: Stranding,
}

impl Conductor {
    /// One phrase for a page, as `4/0 AWG aluminum compressed`.
    pub fn phrase(self, words: Words) -> String {
        format!(
            "{} {} {}",
            self.size,
            self.metal.name(words),
            self.stranding.name()
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[track_caller]
    fn check(text: &str, expected: Option<Size>) {
        assert_eq!(Size::parse(text).ok(), expected, "{text}");
    }

    #[test]
    fn sizes_are_read_as_printed() {
        check("4/0 AWG", Some(Size::Awg(-3)));
        check("1/0 awg", Some(Size::Awg(0)));
        check("#2 AWG", Some(Size::Awg(2)));
        check("500 kcmil", Some(Size::Kcmil(500)));
        check("750 MCM", Some(Size::Kcmil(750)));
        check("240 mm2", Some(Size::Mm2(240)));
        check(" 240 mm² ", Some(Size::Mm2(240)));
    }

    #[test]
    fn what_is_no_size_is_refused() {
        for text in [
            "",
            "4/0",
            "240",
            "5/0 AWG",
            "0 AWG",
            "4/1 AWG",
            "-3 AWG",
            "+4 AWG",
            "2.5 mm2",
            "240 mm",
            "kcmil",
            "99999999999 kcmil",
        ] {
            check(text, None);
        }
    }

    #[test]
    fn a_refusal_says_what_was_found_and_expected() {
        let said = Size::parse("5/0 AWG").map_err(|e| e.to_string());
        assert_eq!(said, Err("\"5/0\" is not a size in AWG: 1/0 to 4/0 or a whole number from 1 to 40 is expected".to_owned()));
    }

    #[test]
    fn four_aught_is_211_6_kcmil() {
        assert!((Size::Awg(-3).kcmil() - 211.6).abs() < 1e-9);
        assert!((Size::Kcmil(1).area_mm2() - 0.506_707_5).abs() < 1e-7);
    }

    proptest! {
        #[test]
        fn what_is_printed_reads_back(kind in 0..3u8, awg in -3i8..=40, n in 1u32..=5000) {
            let size = match kind { 0 => Size::Awg(awg), 1 => Size::Kcmil(n), _ => Size::Mm2(n) };
            prop_assert_eq!(Size::parse(&size.to_string()), Ok(size));
        }

        #[test]
        fn no_text_makes_the_reader_panic(text in ".{0,24}") {
            let _ = Size::parse(&text);
        }
    }
}
