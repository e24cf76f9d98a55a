//! Lengths as crews write them: which are read, and in which words the others are refused.

use crate::{Length, LengthError};
use proptest::prelude::*;

/// A cut that is read, and the same as a diameter.
#[track_caller]
fn check(text: &str, nm: i64) {
    assert_eq!(
        Length::parse_cut(text),
        Ok(Length::from_nm(nm)),
        "cut `{text}`"
    );
    assert_eq!(
        Length::parse_diameter(text),
        Ok(Length::from_nm(nm)),
        "diameter `{text}`"
    );
}

/// A text that is refused, for cut and diameter alike: message, then hint.
#[track_caller]
fn check_refused(text: &str, message: &str, hint: &str) {
    let error = Length::parse_cut(text).expect_err(text);
    assert_eq!(error.to_string(), message, "cut `{text}`");
    assert!(
        error.hint().contains(hint),
        "hint for `{text}`: {}",
        error.hint()
    );
    assert_eq!(
        Length::parse_diameter(text),
        Err(error),
        "diameter `{text}`"
    );
}

/// A text that is refused for a cut and read for a diameter.
#[track_caller]
fn check_diameter_only(text: &str, message: &str, nm: i64) {
    let error = Length::parse_cut(text).expect_err(text);
    assert_eq!(error.to_string(), message, "cut `{text}`");
    assert_eq!(
        Length::parse_diameter(text),
        Ok(Length::from_nm(nm)),
        "diameter `{text}`"
    );
}

const SEVEN_AND_A_SIXTEENTH: i64 = 179_387_500;

#[test]
fn seven_and_a_sixteenth_is_read_however_it_is_written() {
    for text in [
        "7 1/16 in",
        "7-1/16\"",
        "7 1/16\"",
        "7-1/16 in",
        "7–1/16 in",
        "7‑1/16″",
        "7 1/16”",
        "  7  1/16  INCHES ",
        "7 1/16inch",
        "7 1⁄16 in",
        "7 2/32 in",
        "7 4/64 In",
        "7\u{a0}1/16\u{a0}in",
        "179.3875 mm",
    ] {
        check(text, SEVEN_AND_A_SIXTEENTH);
    }
}

#[test]
fn whole_inches_and_bare_fractions_are_read() {
    check("1/16 in", 1_587_500);
    check("1/64\"", 396_875);
    check("7\"", 177_800_000);
    check("7 in", 177_800_000);
    check("7in", 177_800_000);
    check("0 in", 0);
}

#[test]
fn feet_and_inches_are_read() {
    check("2 ft", 609_600_000);
    check("2'", 609_600_000);
    for text in [
        "2 ft 3 1/2 in",
        "2' 3-1/2\"",
        "2′ 3½″",
        "2'3 1/2\"",
        "2'-3 1/2\"",
        "2’ 3 ½”",
        "2FT3-½IN",
    ] {
        check(text, 698_500_000);
    }
    check("2' ½\"", 622_300_000);
}

#[test]
fn fractions_in_one_character_are_read() {
    for (text, eighths) in [
        ("⅛", 1),
        ("¼", 2),
        ("⅜", 3),
        ("½", 4),
        ("⅝", 5),
        ("¾", 6),
        ("⅞", 7),
    ] {
        check(&format!("{text} in"), 3_175_000 * eighths);
        check(&format!("7{text}\""), 177_800_000 + 3_175_000 * eighths);
        check(&format!("7-{text} in"), 177_800_000 + 3_175_000 * eighths);
    }
}

#[test]
fn metric_lengths_and_mils_are_read() {
    check("179.4 mm", 179_400_000);
    check("17.9 cm", 179_000_000);
    check("3.2 m", 3_200_000_000);
    check("3.2M", 3_200_000_000);
    check("220 mil", 5_588_000);
    check("220 Mils", 5_588_000);
    check("0.000001 mm", 1);
    check("0.0000010000000000000000000 mm", 1);
    check(".5 mm", 500_000);
    check("10000 m", 10_000_000_000_000);
}

#[test]
fn decimal_inches_are_for_diameters_only() {
    let inch = |n| format!("`{n}` is a decimal of an inch, and a cut is read in fractions");
    check_diameter_only("7.16 in", &inch("7.16"), 181_864_000);
    check_diameter_only("7.0 in", &inch("7.0"), 177_800_000);
    check_diameter_only(".895\"", &inch(".895"), 22_733_000);
    check_diameter_only("2 ft 3.5 in", &inch("3.5"), 698_500_000);
    let foot = "`2.5` is a decimal of a foot, and a cut is read in feet, inches and fractions";
    check_diameter_only("2.5 ft", foot, 762_000_000);
}

#[test]
fn nothing_written_is_refused() {
    check_refused("", "the length is empty", "7 1/16 in");
    check_refused(" \t", "the length is empty", "7 1/16 in");
}

#[test]
fn a_missing_number_is_refused() {
    check_refused("in", "expected a number at `in`", "Start with a number");
    check_refused(
        "/16 in",
        "expected a number at `/16 in`",
        "Start with a number",
    );
    check_refused("٣ mm", "expected a number at `٣ mm`", "Start with a number");
}

#[test]
fn a_malformed_number_is_refused() {
    for (text, found) in [
        ("7. mm", "7."),
        ("7.1.6 mm", "7.1.6"),
        (". mm", "."),
        ("7.1/16 in", "7.1/16"),
        ("1//16 in", "1//16"),
        ("1/ in", "1/"),
        ("7 1/16/2 in", "1/16"),
    ] {
        check_refused(
            text,
            &format!("`{found}` is not a number"),
            "a space and a fraction",
        );
    }
}

#[test]
fn signs_are_refused() {
    check_refused("-7 in", "`-7 in` is negative", "without a sign");
    check_refused("−7 mm", "`−7 mm` is negative", "without a sign");
    check_refused("+7 in", "`+7 in` carries a plus sign", "without a sign");
    check_refused(
        "7+1/16 in",
        "`+1/16 in` carries a plus sign",
        "write the sum",
    );
}

#[test]
fn a_comma_is_refused_and_both_readings_are_named() {
    check_refused("179,4 mm", "`179,4` holds a comma", "with a point: 179.4.");
    check_refused(
        "1,234 mm",
        "`1,234` holds a comma",
        "Write 1.234 if a decimal was meant, or 1234",
    );
    check_refused(",5 mm", "`,5` holds a comma", "with a point");
    check_refused("7 1/16, in", "`, in` holds a comma", "with a point");
}

#[test]
fn a_unit_is_required_and_known() {
    check_refused(
        "7 1/16",
        "`7 1/16` has no unit",
        "Write the unit behind 7 1/16",
    );
    check_refused("2 ft 3", "`3` has no unit", "Write the unit behind 3");
    check_refused(
        "7 yd",
        "`yd` is not a unit of length known here",
        "Use in, ft, mm",
    );
    check_refused(
        "7''",
        "`''` is not a unit of length known here",
        "Use in, ft, mm",
    );
    check_refused(
        "1e3 mm",
        "`e` is not a unit of length known here",
        "Use in, ft, mm",
    );
    check_refused(
        "7 l/16 in",
        "`l` is not a unit of length known here",
        "Use in, ft, mm",
    );
}

#[test]
fn fractions_that_no_tape_shows_are_refused() {
    check_refused(
        "7 1/10 in",
        "`1/10` is not a fraction that a tape shows",
        "sixteenths",
    );
    check_refused(
        "7 1/0 in",
        "`1/0` is not a fraction that a tape shows",
        "sixteenths",
    );
    check_refused(
        "7 ⅓ in",
        "`1/3` is not a fraction that a tape shows",
        "sixteenths",
    );
    check_refused(
        "0/16 in",
        "`0/16` is a fraction of nothing",
        "Read the tape again",
    );
    check_refused(
        "7 0/16 in",
        "`0/16` is a fraction of nothing",
        "Read the tape again",
    );
}

#[test]
fn an_improper_fraction_is_refused_and_says_what_may_be_meant() {
    check_refused(
        "71/16 in",
        "`71/16` is not less than one",
        "Write 7 1/16 if",
    );
    check_refused(
        "115/16 in",
        "`115/16` is not less than one",
        "Write 11 5/16 or 1 15/16 if",
    );
    check_refused(
        "16/16 in",
        "`16/16` is not less than one",
        "a fraction less than one",
    );
    check_refused("7 17/16 in", "`17/16` is not less than one", "");
    check_refused(
        "99999999999999999999/16 in",
        "`99999999999999999999/16` is not less than one",
        "less than one",
    );
}

#[test]
fn only_inches_have_fractions() {
    let message = |n, u| format!("`{n} {u}` is a fraction of a unit that is not read in fractions");
    check_refused("7 1/16 mm", &message("7 1/16", "mm"), "decimal point");
    check_refused("2½ ft", &message("2½", "ft"), "feet with inches");
    check_refused("1/2 mil", &message("1/2", "mil"), "decimal point");
}

#[test]
fn two_numbers_run_together_are_refused() {
    for (text, first, second) in [
        ("7 8 in", "7", "8"),
        ("7-8 in", "7", "8"),
        ("1 234 mm", "1", "234"),
        ("7 1 16 in", "7", "1"),
        ("7 1 1/16 in", "7", "1"),
        ("7.5 1/16 in", "7.5", "1/16"),
        ("1/16 1/8 in", "1/16", "1/8"),
        ("7½½ in", "7½", "½"),
    ] {
        check_refused(
            text,
            &format!("`{first}` and `{second}` are two numbers run together"),
            "with its stroke",
        );
    }
}

#[test]
fn a_dash_that_may_be_a_minus_is_refused() {
    let message = |at| format!("the dash at `{at}` does not join a whole number to its fraction");
    check_refused("7 -1/16 in", &message("-1/16 in"), "one dash");
    check_refused("7 - 1/16 in", &message("- 1/16 in"), "one dash");
    check_refused("7--1/16 in", &message("--1/16 in"), "one dash");
    check_refused("7-in", &message("-in"), "one dash");
}

#[test]
fn what_follows_a_complete_length_is_refused() {
    for (text, trailing) in [
        ("7 1/16 in from the edge", "from the edge"),
        ("7\" 1/16", "1/16"),
        ("7 in.", "."),
        ("3 m 20 cm", "20 cm"),
        ("2 ft 30 mm", "30 mm"),
        ("2' -3\"", "-3\""),
    ] {
        check_refused(
            text,
            &format!("`{trailing}` follows a length that is complete"),
            "after the unit",
        );
    }
}

#[test]
fn a_foot_of_inches_behind_feet_is_refused() {
    check_refused(
        "2 ft 12 in",
        "`12` inches behind feet is a foot or more",
        "fewer than 12",
    );
    check("2 ft 11 63/64 in", 609_600_000 + 304_800_000 - 396_875);
}

#[test]
fn a_value_finer_than_a_nanometre_is_refused() {
    check_refused(
        "0.0000001 mm",
        "`0.0000001 mm` is finer than one nanometre",
        "fewer decimals",
    );
    check_refused(
        "0.00001 mil",
        "`0.00001 mil` is finer than one nanometre",
        "fewer decimals",
    );
    check_refused(
        "0.0000000000000000000000001 m",
        "`0.0000000000000000000000001 m` is finer than one nanometre",
        "",
    );
    assert!(matches!(
        Length::parse_diameter("0.000001 in"),
        Err(LengthError::TooFine { .. })
    ));
}

#[test]
fn more_than_ten_kilometres_is_refused() {
    check_refused(
        "10000.000000001 m",
        "`10000.000000001 m` is more than 10 km",
        "Check the number",
    );
    check_refused(
        "99999999999999999999999 m",
        "`99999999999999999999999 m` is more than 10 km",
        "",
    );
    check_refused(
        "32809 ft",
        "`32809 ft` is more than 10 km",
        "Check the number",
    );
}

#[test]
fn a_hostile_text_is_quoted_short_and_clean() {
    let error = Length::parse_cut(&format!("7 in \u{1b}[2J{}", "x".repeat(500)))
        .expect_err("trailing text");
    assert!(error.to_string().chars().count() < 100, "{error}");
    assert!(!error.to_string().contains('\u{1b}'), "{error}");
}

/// Text as crews write it, right and wrong.
const WRITTEN: [&str; 12] = [
    "7 1/16 in",
    "7-1/16\"",
    "2 ft 3 1/2 in",
    "2' 3-1/2\"",
    "7½″",
    "7–1/16”",
    "179.4 mm",
    "17.9 cm",
    "3.2 m",
    "220 mil",
    "0.895 in",
    "71/16 in",
];

proptest! {
    #[test]
    fn no_text_makes_the_parsers_panic(text in ".*") {
        let _ = Length::parse_cut(&text).map_err(|e| (e.to_string(), e.hint()));
        let _ = Length::parse_diameter(&text).map_err(|e| (e.to_string(), e.hint()));
    }

    #[test]
    fn no_text_of_lengthlike_characters_makes_the_parsers_panic(text in "[0-9./ ,+–\\-½⅛⅓'\"″′infmcl⁄]{0,24}") {
        let cut = Length::parse_cut(&text).map_err(|e| (e.to_string(), e.hint()));
        // Every text that is read as a cut is read as the same diameter.
        if let Ok(length) = cut {
            prop_assert_eq!(Length::parse_diameter(&text), Ok(length));
            prop_assert!(length >= Length::ZERO);
        }
    }

    #[test]
    fn no_mutation_of_a_written_length_makes_the_parsers_panic(
        which in 0..WRITTEN.len(), at in 0_usize..16, put in any::<char>(), drop in 0_usize..3,
    ) {
        let mut chars: Vec<char> = WRITTEN[which].chars().collect();
        let at = at.min(chars.len());
        chars.splice(at..(at + drop).min(chars.len()), [put]);
        let text: String = chars.into_iter().collect();
        let _ = Length::parse_cut(&text).map_err(|e| (e.to_string(), e.hint()));
        let _ = Length::parse_diameter(&text).map_err(|e| (e.to_string(), e.hint()));
    }

    #[test]
    fn a_decimal_of_an_inch_is_never_a_cut(whole in 0_u32..400, decimals in "[0-9]{1,8}", unit in "(in|IN|inch|inches|\"|″|”| in| \")") {
        let text = format!("{whole}.{decimals}{unit}");
        let is_decimal_inch = matches!(Length::parse_cut(&text), Err(LengthError::DecimalInch { .. }));
        prop_assert!(is_decimal_inch, "{}", text);
    }

    #[test]
    fn a_fraction_misread_as_a_decimal_is_another_length(whole in 0_i64..400, sixteenths in 1_i64..16) {
        let cut = Length::parse_cut(&format!("{whole} {sixteenths}/16 in"));
        prop_assert_eq!(&cut, &Ok(Length::INCH * whole + Length::INCH_64TH * (4 * sixteenths)));
        let misread = Length::parse_diameter(&format!("{whole}.{sixteenths}16 in"));
        prop_assert!(misread.is_ok());
        prop_assert_ne!(cut, misread);
    }
}

#[test]
fn seven_and_a_sixteenth_is_not_7_16() {
    assert!(Length::parse_cut("7.16 in").is_err());
    assert_ne!(
        Length::parse_cut("7 1/16 in"),
        Length::parse_diameter("7.16 in")
    );
}
