//! The exact printers: they do not round, so a printed length can be read back.
//!
//! Why separate: a record keeps lengths, a crew reads marks (`mark`), and the two must stay apart.
//! Invariants: a printed length reads back to the same nanometre, for every length from zero to 10 km.
//! Not here: rounding to a tick, and windows.

use crate::Length;
use std::fmt;

impl Length {
    /// Millimetres, exact, with as many decimals as necessary: `179.3875 mm`.
    pub fn exact_mm(self) -> String {
        format!("{} mm", decimal(i128::from(self.nm()), 6))
    }

    /// Inches and a reduced fraction, `7 1/16 in`, or `None` unless the length is a whole number of sixty-fourths.
    pub fn exact_inch(self) -> Option<String> {
        inch_fraction(self).map(|inch| format!("{inch} in"))
    }

    /// Decimal inches for a diameter, `0.895 in`, or `None` unless the length is a whole number of hundred-thousandths of an inch (254 nm).
    pub fn exact_decimal_inch(self) -> Option<String> {
        let parts = i128::from(self.nm());
        (parts % 254 == 0).then(|| format!("{} in", decimal(parts / 254, 5)))
    }
}

/// Formats as [`Length::exact_mm`].
impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // A precision would cut a padded string short, and 179 mm cut to 17 is a wrong length.
        match f.precision() {
            Some(_) => f.write_str(&self.exact_mm()),
            None => f.pad(&self.exact_mm()),
        }
    }
}

/// Inches and a reduced fraction without unit, or `None` unless `length` is a whole number of sixty-fourths.
pub(crate) fn inch_fraction(length: Length) -> Option<String> {
    let per_inch = Length::INCH.nm().unsigned_abs();
    let per_64th = Length::INCH_64TH.nm().unsigned_abs();
    let nm = length.nm().unsigned_abs();
    if !nm.is_multiple_of(per_64th) {
        return None;
    }
    let sign = if length < Length::ZERO { "-" } else { "" };
    let whole = nm / per_inch;
    let (mut numerator, mut denominator) = (nm % per_inch / per_64th, 64);
    if numerator == 0 {
        return Some(format!("{sign}{whole}"));
    }
    while numerator % 2 == 0 {
        numerator /= 2;
        denominator /= 2;
    }
    Some(match whole {
        0 => format!("{sign}{numerator}/{denominator}"),
        _ => format!("{sign}{whole} {numerator}/{denominator}"),
    })
}

/// `value` · 10^-`places` without trailing zeros.
pub(crate) fn decimal(value: i128, places: usize) -> String {
    let text = decimal_fixed(value, places);
    match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
        false => text,
    }
}

/// `value` · 10^-`places` with all decimals printed.
pub(crate) fn decimal_fixed(value: i128, places: usize) -> String {
    let sign = if value < 0 { "-" } else { "" };
    let digits = format!("{:0>width$}", value.unsigned_abs(), width = places + 1);
    let (whole, decimals) = digits.split_at(digits.len() - places);
    let point = if places == 0 { "" } else { "." };
    format!("{sign}{whole}{point}{decimals}")
}

#[cfg(test)]
mod tests {
    use crate::Length;
    use proptest::prelude::*;

    #[track_caller]
    fn check(nm: i64, mm: &str, inch: Option<&str>, decimal_inch: Option<&str>) {
        let length = Length::from_nm(nm);
        assert_eq!(length.exact_mm(), mm);
        assert_eq!(length.to_string(), mm);
        assert_eq!(length.exact_inch().as_deref(), inch);
        assert_eq!(length.exact_decimal_inch().as_deref(), decimal_inch);
    }

    #[test]
    fn nought_is_printed_without_a_sign() {
        check(0, "0 mm", Some("0 in"), Some("0 in"));
    }

    #[test]
    fn fractions_are_reduced() {
        check(
            179_387_500,
            "179.3875 mm",
            Some("7 1/16 in"),
            Some("7.0625 in"),
        );
        check(12_700_000, "12.7 mm", Some("1/2 in"), Some("0.5 in"));
        check(396_875, "0.396875 mm", Some("1/64 in"), None);
    }

    #[test]
    fn sixty_four_sixty_fourths_carry_into_the_whole() {
        check(63 * 396_875, "25.003125 mm", Some("63/64 in"), None);
        check(64 * 396_875, "25.4 mm", Some("1 in"), Some("1 in"));
    }

    #[test]
    fn what_is_no_sixty_fourth_has_no_inch() {
        check(179_400_000, "179.4 mm", None, None);
        check(100_000_000, "100 mm", None, None);
        check(22_733_000, "22.733 mm", None, Some("0.895 in"));
        check(1, "0.000001 mm", None, None);
    }

    #[test]
    fn negatives_carry_their_sign() {
        check(
            -179_387_500,
            "-179.3875 mm",
            Some("-7 1/16 in"),
            Some("-7.0625 in"),
        );
        check(
            -1_587_500,
            "-1.5875 mm",
            Some("-1/16 in"),
            Some("-0.0625 in"),
        );
    }

    #[test]
    fn the_extreme_lengths_are_printed() {
        check(i64::MIN, "-9223372036854.775808 mm", None, None);
        check(i64::MAX, "9223372036854.775807 mm", None, None);
    }

    #[test]
    fn a_width_is_kept_and_a_precision_cuts_nothing() {
        assert_eq!(format!("{:>10}", Length::MM), "      1 mm");
        assert_eq!(format!("{:.1}", Length::MM * 179), "179 mm");
    }

    proptest! {
        #[test]
        fn millimetres_round_trip(nm in 0_i64..=10_000_000_000_000) {
            let length = Length::from_nm(nm);
            prop_assert_eq!(Length::parse_cut(&length.exact_mm()), Ok(length));
            prop_assert_eq!(Length::parse_diameter(&length.to_string()), Ok(length));
        }

        #[test]
        fn inches_round_trip(n_64ths in 0_i64..=25_196_850) {
            let length = Length::INCH_64TH * n_64ths;
            let inch = length.exact_inch().expect("a whole number of sixty-fourths");
            prop_assert_eq!(Length::parse_cut(&inch), Ok(length));
            prop_assert_eq!(Length::parse_diameter(&inch), Ok(length));
        }

        #[test]
        fn decimal_inches_round_trip(parts in 0_i64..=39_370_078_740) {
            let length = Length::from_nm(254 * parts);
            let inch = length.exact_decimal_inch().expect("a whole number of 1e-5 in");
            prop_assert_eq!(Length::parse_diameter(&inch), Ok(length));
        }

        #[test]
        fn an_inch_is_printed_only_when_it_is_exact(nm in any::<i64>()) {
            prop_assert_eq!(Length::from_nm(nm).exact_inch().is_some(), nm % 396_875 == 0);
            prop_assert_eq!(Length::from_nm(nm).exact_decimal_inch().is_some(), nm % 254 == 0);
        }
    }
}
