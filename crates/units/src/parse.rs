//! Reading a length as crews write it.
//!
//! Why separate: text becomes a length only here, and here 7.16 in is kept apart from 7 1/16 in.
//!
//! ```text
//! length   = measure unit | whole feet [dash] measure inches
//! measure  = whole | whole (space | dash) fraction | fraction | decimal
//! fraction = digits "/" digits | ½ ¼ ¾ ⅛ ⅜ ⅝ ⅞          (of an inch only)
//! ```
//!
//! Invariants: a text is read exactly or refused, never rounded; every length has a written unit; no text causes a panic.
//! Not here: signs (a written length has none), and printing (`print`, `mark`).
//! Source: 1 in = 25.4 mm, NIST HB 44, from memory; exact by definition.

use crate::quote::quoted;
use crate::{Length, LengthError};

/// Longest length that is read: 10 km.
const NM_MAX: i128 = 10_000_000_000_000;
/// Most digits before the point: more than any length under 10 km has, in any unit.
const WHOLE_DIGITS_MAX: usize = 15;
/// Most decimals: more than any whole number of nanometres needs, in any unit.
const DECIMALS_MAX: usize = 18;

impl Length {
    /// Reads the length of a cut: inches in fractions, or a metric length, or mils.
    ///
    /// ```
    /// # use jointwright_units::Length;
    /// assert_eq!(Length::parse_cut("7-1/16\"")?, Length::INCH_64TH * (7 * 64 + 4));
    /// assert!(Length::parse_cut("7.16 in").is_err());
    /// # Ok::<(), jointwright_units::LengthError>(())
    /// ```
    ///
    /// # Errors
    /// Each error that [`LengthError`] names, including decimal inches and decimal feet.
    pub fn parse_cut(text: &str) -> Result<Length, LengthError> {
        read(text, Purpose::Cut)
    }

    /// Reads a diameter: as [`Length::parse_cut`], and also decimal inches and feet, because a calliper shows them.
    ///
    /// # Errors
    /// Each error that [`LengthError`] names.
    pub fn parse_diameter(text: &str) -> Result<Length, LengthError> {
        read(text, Purpose::Diameter)
    }
}

/// Object of the length, as far as it decides how the length may be written.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Purpose {
    Cut,
    Diameter,
}

/// A unit of length.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Unit {
    Inch,
    Foot,
    Millimetre,
    Centimetre,
    Metre,
    Mil,
}

impl Unit {
    fn named(word: &str) -> Option<Unit> {
        Some(match word.to_lowercase().as_str() {
            "in" | "inch" | "inches" | "\"" | "″" | "”" => Unit::Inch,
            "ft" | "'" | "′" | "’" => Unit::Foot,
            "mm" => Unit::Millimetre,
            "cm" => Unit::Centimetre,
            "m" => Unit::Metre,
            "mil" | "mils" => Unit::Mil,
            _ => return None,
        })
    }

    fn nm(self) -> i128 {
        match self {
            Unit::Inch => 25_400_000,
            Unit::Foot => 304_800_000,
            Unit::Millimetre => 1_000_000,
            Unit::Centimetre => 10_000_000,
            Unit::Metre => 1_000_000_000,
            Unit::Mil => 25_400,
        }
    }
}

/// A proper fraction of an inch that a tape shows.
#[derive(Clone, Copy)]
struct Fraction {
    numerator: u8,
    denominator: u8,
}

/// A number as written, without its unit.
struct Measure<'a> {
    text: &'a str,
    whole: &'a str,
    decimals: Option<&'a str>,
    fraction: Option<Fraction>,
}

fn read(text: &str, purpose: Purpose) -> Result<Length, LengthError> {
    let mut cursor = Cursor { rest: text.trim() };
    if cursor.rest.is_empty() {
        return Err(LengthError::Empty);
    }
    let first = cursor.measure()?;
    let (unit, unit_text) = cursor.unit(&first)?;
    let mut nm = first.nm(unit, unit_text, purpose)?;
    if unit == Unit::Foot && first.decimals.is_none() && cursor.goes_on_with_inches() {
        nm += inches_behind_feet(&mut cursor, purpose)?;
    }
    let trailing = cursor.rest.trim();
    if !trailing.is_empty() {
        return Err(LengthError::TrailingText {
            text: quoted(trailing),
        });
    }
    // The bound is far below the largest i64.
    match i64::try_from(nm) {
        Ok(whole_nm) if nm <= NM_MAX => Ok(Length::from_nm(whole_nm)),
        _ => Err(LengthError::TooLong {
            found: quoted(text),
        }),
    }
}

fn inches_behind_feet(cursor: &mut Cursor<'_>, purpose: Purpose) -> Result<i128, LengthError> {
    if let Some(rest) = cursor.rest.strip_prefix(is_joining_dash) {
        cursor.rest = rest;
    }
    let from = cursor.rest.trim_start();
    let inches = cursor.measure()?;
    let (unit, unit_text) = cursor.unit(&inches)?;
    if unit != Unit::Inch {
        return Err(LengthError::TrailingText { text: quoted(from) });
    }
    let nm = inches.nm(unit, unit_text, purpose)?;
    if nm >= Unit::Foot.nm() {
        return Err(LengthError::InchesPastFoot {
            inches: quoted(inches.text),
        });
    }
    Ok(nm)
}

/// The text that remains to be read.
struct Cursor<'a> {
    rest: &'a str,
}

impl<'a> Cursor<'a> {
    /// Takes the longest run of characters for which `belongs` is true.
    fn run(&mut self, belongs: impl Fn(char) -> bool) -> &'a str {
        let end = self.rest.find(|c| !belongs(c)).unwrap_or(self.rest.len());
        let (run, rest) = self.rest.split_at(end);
        self.rest = rest;
        run
    }

    /// Takes one number: whole, mixed, fraction or decimal.
    fn measure(&mut self) -> Result<Measure<'a>, LengthError> {
        self.rest = self.rest.trim_start();
        let start = self.rest;
        self.refuse_sign()?;
        if let Some(fraction) = self.fraction()? {
            return Ok(Measure {
                text: upto(start, self.rest),
                whole: "",
                decimals: None,
                fraction: Some(fraction),
            });
        }
        let digits = self.run(is_number_char);
        if self.rest.starts_with(',') {
            return Err(comma(start));
        }
        if digits.is_empty() {
            return Err(LengthError::NoNumber {
                found: quoted(start),
            });
        }
        let (whole, decimals) = split_decimal(digits)?;
        let fraction = self.joined_fraction(digits, decimals.is_some())?;
        Ok(Measure {
            text: upto(start, self.rest).trim_end(),
            whole,
            decimals,
            fraction,
        })
    }

    fn refuse_sign(&self) -> Result<(), LengthError> {
        match self.rest.chars().next() {
            Some('+') => Err(LengthError::PlusSign {
                found: quoted(self.rest),
            }),
            Some('-' | '−' | '–' | '—' | '‐' | '‑') => Err(LengthError::Negative {
                found: quoted(self.rest),
            }),
            _ => Ok(()),
        }
    }

    /// Takes the fraction that belongs to the whole number `before`, and refuses any other text that continues the number.
    fn joined_fraction(
        &mut self,
        before: &str,
        is_decimal: bool,
    ) -> Result<Option<Fraction>, LengthError> {
        let mark = self.rest;
        if let Some(rest) = mark.strip_prefix(is_joining_dash) {
            if !rest.starts_with(starts_number) {
                return Err(LengthError::LooseDash {
                    found: quoted(mark),
                });
            }
            self.rest = rest;
        } else {
            self.rest = mark.trim_start();
            if self.rest.starts_with(is_joining_dash) {
                return Err(LengthError::LooseDash {
                    found: quoted(self.rest),
                });
            }
            if self.rest.starts_with('+') {
                return Err(LengthError::PlusSign {
                    found: quoted(self.rest),
                });
            }
        }
        if !self.rest.starts_with(starts_number) {
            return Ok(None);
        }
        let start = self.rest;
        let fraction = self.fraction()?;
        if fraction.is_none() || is_decimal {
            let mut second = Cursor { rest: start };
            second.run(|c| is_number_char(c) || is_stroke(c) || vulgar(c).is_some());
            let second = upto(start, second.rest);
            return Err(LengthError::TwoNumbers {
                first: quoted(before),
                second: quoted(second),
            });
        }
        Ok(fraction)
    }

    /// Takes a fraction if one stands here, otherwise nothing.
    fn fraction(&mut self) -> Result<Option<Fraction>, LengthError> {
        let start = self.rest;
        if let Some((numerator, denominator)) = start.chars().next().and_then(vulgar) {
            self.rest = start.strip_prefix(|_| true).unwrap_or_default();
            return fraction_of(numerator, denominator).map(Some);
        }
        let numerator = self.run(is_number_char);
        if numerator.is_empty() || !self.rest.starts_with(is_stroke) {
            self.rest = start;
            return Ok(None);
        }
        self.run(is_stroke);
        let denominator = self.run(is_number_char);
        let written = upto(start, self.rest);
        let strokes = written.chars().filter(|&c| is_stroke(c)).count();
        if strokes != 1
            || denominator.is_empty()
            || written.contains('.')
            || self.rest.starts_with(is_stroke)
        {
            return Err(LengthError::MalformedNumber {
                found: quoted(written),
            });
        }
        fraction_of(numerator, denominator).map(Some)
    }

    /// Takes the unit of `number`.
    fn unit(&mut self, number: &Measure<'a>) -> Result<(Unit, &'a str), LengthError> {
        self.rest = self.rest.trim_start();
        let start = self.rest;
        if start.is_empty() {
            return Err(LengthError::NoUnit {
                number: quoted(number.text),
            });
        }
        if start.starts_with(starts_number) {
            self.run(|c| !c.is_whitespace());
            let second = quoted(upto(start, self.rest));
            return Err(LengthError::TwoNumbers {
                first: quoted(number.text),
                second,
            });
        }
        if start.starts_with(',') {
            return Err(LengthError::DecimalComma {
                found: quoted(start),
            });
        }
        let mut word = self.run(is_quote_mark);
        if word.is_empty() {
            word = self.run(char::is_alphabetic);
        }
        if word.is_empty() {
            word = self.run(|c| !c.is_whitespace());
        }
        match Unit::named(word) {
            Some(unit) => Ok((unit, word)),
            None => Err(LengthError::UnknownUnit { unit: quoted(word) }),
        }
    }

    /// Whether a number follows whole feet; a dash without a space before it may join them, as in 2'-3".
    fn goes_on_with_inches(&self) -> bool {
        let behind = self
            .rest
            .strip_prefix(is_joining_dash)
            .unwrap_or_else(|| self.rest.trim_start());
        behind.starts_with(starts_number)
    }
}

impl Measure<'_> {
    /// Exact value in nanometres.
    fn nm(&self, unit: Unit, unit_text: &str, purpose: Purpose) -> Result<i128, LengthError> {
        if self.fraction.is_some() && unit != Unit::Inch {
            return Err(LengthError::FractionOfUnit {
                number: quoted(self.text),
                unit: quoted(unit_text),
            });
        }
        if self.decimals.is_some() && purpose == Purpose::Cut {
            match unit {
                Unit::Inch => {
                    return Err(LengthError::DecimalInch {
                        found: quoted(self.text),
                    });
                }
                Unit::Foot => {
                    return Err(LengthError::DecimalFoot {
                        found: quoted(self.text),
                    });
                }
                _ => {}
            }
        }
        let found = || quoted(&format!("{} {unit_text}", self.text));
        let whole = self.whole.trim_start_matches('0');
        if whole.len() > WHOLE_DIGITS_MAX {
            return Err(LengthError::TooLong { found: found() });
        }
        let mut nm = digits_value(whole) * unit.nm();
        if let Some(fraction) = self.fraction {
            // 25 400 000 nm is a whole number of sixty-fourths.
            nm += unit.nm() / i128::from(fraction.denominator) * i128::from(fraction.numerator);
        }
        let decimals = self.decimals.unwrap_or("").trim_end_matches('0');
        if decimals.len() > DECIMALS_MAX {
            return Err(LengthError::TooFine { found: found() });
        }
        let parts = digits_value(decimals) * unit.nm();
        let scale = decimals.chars().fold(1_i128, |scale, _| scale * 10);
        if parts % scale != 0 {
            return Err(LengthError::TooFine { found: found() });
        }
        Ok(nm + parts / scale)
    }
}

/// Value of at most eighteen ASCII digits; zero if there are none.
fn digits_value(digits: &str) -> i128 {
    digits
        .bytes()
        .fold(0, |value, digit| value * 10 + i128::from(digit - b'0'))
}

/// Splits digits and points into the whole part and the decimals.
fn split_decimal(digits: &str) -> Result<(&str, Option<&str>), LengthError> {
    match digits.split_once('.') {
        None => Ok((digits, None)),
        Some((_, decimals)) if decimals.is_empty() || decimals.contains('.') => {
            Err(LengthError::MalformedNumber {
                found: quoted(digits),
            })
        }
        Some((whole, decimals)) => Ok((whole, Some(decimals))),
    }
}

fn fraction_of(numerator: &str, denominator: &str) -> Result<Fraction, LengthError> {
    let parts: u8 = match denominator {
        "2" => 2,
        "4" => 4,
        "8" => 8,
        "16" => 16,
        "32" => 32,
        "64" => 64,
        _ => {
            return Err(LengthError::Denominator {
                numerator: quoted(numerator),
                denominator: quoted(denominator),
            });
        }
    };
    match numerator.trim_start_matches('0') {
        "" => Err(LengthError::ZeroNumerator { denominator: parts }),
        digits => match digits.parse::<u8>() {
            Ok(value) if value < parts => Ok(Fraction {
                numerator: value,
                denominator: parts,
            }),
            _ => Err(LengthError::ImproperFraction {
                numerator: quoted(digits),
                denominator: parts,
                may_mean: mixed_numbers(digits, parts),
            }),
        },
    }
}

/// Every way to split `digits` into whole inches and an odd numerator: `71/16` may be a `7 1/16` that lost its space.
fn mixed_numbers(digits: &str, denominator: u8) -> Vec<String> {
    (digits.len().saturating_sub(2)..digits.len())
        .rev()
        .filter(|&at| at > 0 && at <= 3)
        .filter_map(|at| {
            let (whole, numerator) = digits.split_at(at);
            let value: u8 = numerator.parse().ok()?;
            let is_written_so =
                !numerator.starts_with('0') && value < denominator && value % 2 == 1;
            is_written_so.then(|| format!("{whole} {numerator}/{denominator}"))
        })
        .collect()
}

/// The comma error for the number that `start` begins with.
fn comma(start: &str) -> LengthError {
    let mut number = Cursor { rest: start };
    number.run(|c| is_number_char(c) || c == ',');
    LengthError::DecimalComma {
        found: quoted(upto(start, number.rest)),
    }
}

/// The part of `start` before `rest`, which is its tail.
fn upto<'a>(start: &'a str, rest: &str) -> &'a str {
    &start[..start.len() - rest.len()]
}

fn is_number_char(c: char) -> bool {
    c.is_ascii_digit() || c == '.'
}

fn starts_number(c: char) -> bool {
    is_number_char(c) || vulgar(c).is_some()
}

/// Solidus, and the two characters that word processors put in its place.
fn is_stroke(c: char) -> bool {
    matches!(c, '/' | '⁄' | '∕')
}

/// Hyphens and en dash; the minus sign and the em dash join nothing.
fn is_joining_dash(c: char) -> bool {
    matches!(c, '-' | '–' | '‐' | '‑')
}

fn is_quote_mark(c: char) -> bool {
    matches!(c, '"' | '″' | '”' | '\'' | '′' | '’')
}

/// Numerator and denominator of a fraction in one character; thirds and fifths are known so that they are refused in the right words.
fn vulgar(c: char) -> Option<(&'static str, &'static str)> {
    Some(match c {
        '½' => ("1", "2"),
        '¼' => ("1", "4"),
        '¾' => ("3", "4"),
        '⅛' => ("1", "8"),
        '⅜' => ("3", "8"),
        '⅝' => ("5", "8"),
        '⅞' => ("7", "8"),
        '⅓' => ("1", "3"),
        '⅔' => ("2", "3"),
        '⅕' => ("1", "5"),
        '⅖' => ("2", "5"),
        '⅗' => ("3", "5"),
        '⅘' => ("4", "5"),
        '⅙' => ("1", "6"),
        '⅚' => ("5", "6"),
        _ => return None,
    })
}

#[cfg(test)]
#[path = "parse_tests.rs"]
mod tests;
