//! Figure: the lengths in running text, each with the precision of its printing.
//!
//! Invariants: a number counts only with its unit behind it; one end of a range, a torque, an area and the word "in" between other words are no lengths; no text makes it panic.

use jointwright_units::Length;

/// A length in a text.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Figure {
    /// Byte range in the text.
    pub start: usize,
    pub end: usize,
    pub value: Length,
    /// Half a unit of the last printed digit, or half the fraction.
    pub half_unit: Length,
    pub is_inch: bool,
}

/// Greatest number of decimals that is read; a length has whole nanometres.
const DECIMALS_MAX: usize = 6;
/// Words behind "in" that show that it is the unit.
const AFTER_INCH: &[&str] = &[
    "from", "back", "of", "long", "wide", "beyond", "past", "plus", "minus", "or", "and", "deep",
    "short", "at", "on", "to", "toward", "towards", "before", "behind", "off", "with", "inside",
    "outside", "over",
];

/// Lengths in a text, from its beginning.
pub(super) fn figures(text: &str) -> Vec<Figure> {
    let mut found: Vec<Figure> = Vec::new();
    let mut at = 0;
    while at < text.len() {
        let Some(first) = text[at..].chars().next() else {
            break;
        };
        let begins =
            (first.is_ascii_digit() || sixteenths(first).is_some()) && may_begin(&text[..at]);
        if begins && let Some(figure) = figure(text, at) {
            at = figure.end;
            found.push(figure);
        } else if first.is_ascii_digit() {
            // The rest of a number is not a number of its own.
            at += text[at..].bytes().take_while(u8::is_ascii_digit).count();
        } else {
            at += first.len_utf8();
        }
    }
    found
}

/// Whether a number can begin behind this text; none begins within a word, a number or a range.
fn may_begin(before: &str) -> bool {
    let mut back = before.chars().rev();
    match back.next() {
        None => true,
        Some('-' | '–' | '−' | '+' | '±') => !back.next().is_some_and(char::is_alphanumeric),
        Some(c) => !(c.is_alphanumeric() || matches!(c, '.' | ',' | '/' | '_')),
    }
}

fn figure(text: &str, start: usize) -> Option<Figure> {
    let (end, grain) = number(text, start)?;
    let number = &text[start..end];
    let rest = &text[end..];
    let skipped = rest.len() - rest.trim_start_matches([' ', '\u{a0}']).len();
    let skipped = if skipped == 0 && rest.starts_with('-') {
        1
    } else {
        skipped
    };
    let unit_at = end + skipped;
    let (unit_end, unit) = unit(text, unit_at)?;
    let is_inch = unit == "in";
    let is_fraction = matches!(grain, Grain::Fraction(_));
    if is_inch
        && !is_fraction
        && &text[unit_at..unit_end] == "in"
        && !is_inch_unit(&text[unit_end..])
    {
        return None;
    }
    let value = Length::parse_diameter(&format!("{number} {unit}")).ok()?;
    let whole = match unit {
        "mm" => Length::MM,
        "cm" => Length::MM * 10,
        "mil" => Length::MIL,
        _ => Length::INCH,
    };
    let half_unit = match grain {
        Grain::Decimals(decimals) => {
            let scale = 10_i64.checked_pow(u32::try_from(decimals).ok()?)?;
            Length::from_nm(whole.nm() / scale / 2)
        }
        Grain::Fraction(denominator) => Length::from_nm(whole.nm() / denominator / 2),
    };
    Some(Figure {
        start,
        end: unit_end,
        value,
        half_unit,
        is_inch,
    })
}

/// Precision of a printed number.
enum Grain {
    Decimals(usize),
    Fraction(i64),
}

/// End of the number that begins here, and its grain.
fn number(text: &str, start: usize) -> Option<(usize, Grain)> {
    let digits = |at: usize| {
        let rest = text.get(at..)?;
        let n = rest.bytes().take_while(u8::is_ascii_digit).count();
        (n > 0).then_some(at + n)
    };
    let single = |at: usize| {
        let c = text.get(at..)?.chars().next()?;
        Some((at + c.len_utf8(), Grain::Fraction(sixteenths(c)?)))
    };
    let fraction = |at: usize| {
        let slash = digits(at)?;
        if !text[slash..].starts_with('/') {
            return None;
        }
        let end = digits(slash + 1)?;
        let denominator: i64 = text[slash + 1..end].parse().ok()?;
        (1..=1024)
            .contains(&denominator)
            .then_some((end, Grain::Fraction(denominator)))
    };
    if let Some(found) = single(start).or_else(|| fraction(start)) {
        return Some(found);
    }
    let whole = digits(start)?;
    if text[whole..].starts_with('.')
        && let Some(end) = digits(whole + 1)
    {
        let decimals = end - whole - 1;
        return (decimals <= DECIMALS_MAX).then_some((end, Grain::Decimals(decimals)));
    }
    if let Some(found) = single(whole) {
        return Some(found);
    }
    if text[whole..].starts_with([' ', '-'])
        && let Some(found) = single(whole + 1).or_else(|| fraction(whole + 1))
    {
        return Some(found);
    }
    Some((whole, Grain::Decimals(0)))
}

/// Denominator of a fraction that is one character.
fn sixteenths(c: char) -> Option<i64> {
    Some(match c {
        '½' => 2,
        '¼' | '¾' => 4,
        '⅛' | '⅜' | '⅝' | '⅞' => 8,
        _ => return None,
    })
}

/// End of the unit that begins here, and its short name.
fn unit(text: &str, at: usize) -> Option<(usize, &'static str)> {
    let rest = text.get(at..)?;
    if let Some(mark) = rest.chars().next().filter(|c| matches!(c, '"' | '″' | '”')) {
        return Some((at + mark.len_utf8(), "in"));
    }
    let n = rest.bytes().take_while(u8::is_ascii_alphabetic).count();
    let name = match rest[..n].to_ascii_lowercase().as_str() {
        "mm" => "mm",
        "cm" => "cm",
        "in" | "inch" | "inches" => "in",
        "mil" | "mils" => "mil",
        _ => return None,
    };
    let after = &rest[n..];
    let is_part_of_more = after
        .chars()
        .next()
        .is_some_and(|c| c.is_alphanumeric() || matches!(c, '²' | '³' | '·' | '/' | '_' | '*'));
    // Torque is written in-lb, in·lb or inch pounds.
    let word = after.trim_start_matches([' ', '-']).to_ascii_lowercase();
    let is_torque = word.starts_with("lb") || word.starts_with("pound");
    (!is_part_of_more && !is_torque).then_some((at + n, name))
}

/// Whether "in", followed by this text, is the unit and not the word.
fn is_inch_unit(after: &str) -> bool {
    let next = after.trim_start();
    if !next.starts_with(char::is_alphanumeric) {
        return true;
    }
    let word: String = next.chars().take_while(|c| c.is_alphabetic()).collect();
    AFTER_INCH.contains(&word.to_lowercase().as_str())
}

/// Pairs of figures of which the second repeats the first in the other units: `4 7/8 in (124 mm)`.
pub(super) fn duals<'f>(text: &str, figures: &'f [Figure]) -> Vec<(&'f Figure, &'f Figure)> {
    figures
        .windows(2)
        .filter_map(|pair| {
            let [first, second] = pair else {
                return None;
            };
            let between = text[first.end..second.start].trim();
            let after = text[second.end..].trim_start();
            let says_again = match between {
                "(" | ".(" => after.starts_with(')') || after.starts_with(".)"),
                "[" => after.starts_with(']'),
                "/" | "=" => true,
                _ => false,
            };
            (says_again && first.is_inch != second.is_inch).then_some((first, second))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, expected: &[&str]) {
        let found: Vec<&str> = figures(text)
            .iter()
            .map(|f| &text[f.start..f.end])
            .collect();
        assert_eq!(found, expected);
    }

    #[test]
    fn lengths_are_found_with_their_units() {
        check(
            "Cut 4 7/8 in (124 mm), then 7-1/16\" and 0.5 mm, ½ in, 3⅛ inches.",
            &[
                "4 7/8 in",
                "124 mm",
                "7-1/16\"",
                "0.5 mm",
                "½ in",
                "3⅛ inches",
            ],
        );
    }

    #[test]
    fn other_numbers_are_no_lengths() {
        check(
            "Step 4 in the list, 36 months, 35 in-lb, 20 in lb, 25 mm2, 30 mm², grit 240, 40 degC, DL-15 mm",
            &[],
        );
    }

    #[test]
    fn one_end_of_a_range_is_no_length_of_its_own() {
        check("20-25 mm and 20–25 mm", &[]);
    }

    #[test]
    fn the_word_in_is_no_unit_before_an_article() {
        check("4 in from the end; see 4 in all cases", &["4 in"]);
    }

    #[test]
    fn half_a_unit_follows_the_last_digit() {
        let half = |text: &str| figures(text)[0].half_unit;
        assert_eq!(half("124 mm"), Length::from_nm(500_000));
        assert_eq!(half("124.0 mm"), Length::from_nm(50_000));
        assert_eq!(half("4 7/8 in"), Length::INCH_64TH * 4);
    }

    #[test]
    fn a_pair_in_two_units_is_one_length_said_twice() {
        let text = "4 7/8 in (124 mm) and 3 mm (4 mm), 1/2 in [13 mm]";
        assert_eq!(duals(text, &figures(text)).len(), 2);
    }
}
