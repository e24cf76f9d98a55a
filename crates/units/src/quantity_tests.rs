//! Quantities as they are written, and the words in which the others are refused.

use super::{
    Area, Current, Frequency, Resistance, ResistancePerLength, Seconds, Temperature, Torque,
    VoltagePeak, VoltageRms,
};
use crate::QuantityError;
use proptest::prelude::*;
use std::fmt::Display;

/// The read value equals the constructed value; doubles are compared exactly, because both take the same path.
#[track_caller]
fn check<Q: PartialEq + std::fmt::Debug>(read: Result<Q, QuantityError>, expected: Q) {
    assert_eq!(read, Ok(expected));
}

/// Message, then a part of the hint.
#[track_caller]
fn check_refused<Q: std::fmt::Debug>(read: Result<Q, QuantityError>, message: &str, hint: &str) {
    let error = read.expect_err("refused");
    assert_eq!(error.to_string(), message);
    assert!(error.hint().contains(hint), "hint: {}", error.hint());
}

#[test]
fn quantities_are_read_as_they_are_written() {
    check(VoltageRms::parse("13.2 kV"), VoltageRms::from_kv(13.2));
    check(
        VoltageRms::parse("13.2kV rms"),
        VoltageRms::from_v(13_200.0),
    );
    check(
        VoltagePeak::parse("95 kV  peak"),
        VoltagePeak::from_kv(95.0),
    );
    check(Current::parse("10 kA"), Current::from_a(10_000.0));
    check(Current::parse("600 A"), Current::from_a(600.0));
    check(Seconds::parse("0.5 s"), Seconds::from_s(0.5));
    check(Seconds::parse("500 ms"), Seconds::from_s(0.5));
    check(Seconds::parse("12 min"), Seconds::from_s(720.0));
    check(Seconds::parse("2 h"), Seconds::from_min(120.0));
    check(Frequency::parse("60 Hz"), Frequency::from_hz(60.0));
    check(Area::parse("500 kcmil"), Area::from_kcmil(500.0));
    check(Area::parse("240 mm2"), Area::from_mm2(240.0));
    check(Area::parse("240 mm²"), Area::from_mm2(240.0));
    check(Area::parse("66360 cmil"), Area::from_cmil(66_360.0));
    check(Resistance::parse("0.25 ohm"), Resistance::from_ohm(0.25));
    check(Resistance::parse("250 mΩ"), Resistance::from_ohm(0.25));
    check(Resistance::parse("85 uohm"), Resistance::from_mohm(0.085));
    check(
        ResistancePerLength::parse("0.0754 ohm/km"),
        ResistancePerLength::from_ohm_per_km(0.0754),
    );
    check(
        ResistancePerLength::parse("0.0216 Ω/kft"),
        ResistancePerLength::from_ohm_per_kft(0.0216),
    );
}

#[test]
fn temperatures_are_read_in_both_scales_and_below_nought() {
    check(Temperature::parse("20 degC"), Temperature::from_deg_c(20.0));
    check(Temperature::parse("20°C"), Temperature::from_deg_c(20.0));
    check(Temperature::parse("68 degF"), Temperature::from_deg_c(20.0));
    check(Temperature::parse("68 °F"), Temperature::from_deg_c(20.0));
    check(Temperature::parse("-40 °C"), Temperature::from_deg_f(-40.0));
    check(Temperature::parse("−40 °F"), Temperature::from_deg_c(-40.0));
}

#[test]
fn torques_are_read_in_newton_metres_and_pounds() {
    check(Torque::parse("55 N·m"), Torque::from_nm(55.0));
    check(Torque::parse("55 Nm"), Torque::from_nm(55.0));
    check(Torque::parse("40 ft·lbf"), Torque::from_ft_lbf(40.0));
    check(Torque::parse("480 in lbf"), Torque::from_in_lbf(480.0));
    // 40 · 0.3048 · 4.4482216152605 = 54.232717933256 N·m.
    assert!((Torque::from_ft_lbf(40.0).nm() - 54.232_717_933_256).abs() < 1.0e-9);
    assert!((Torque::from_in_lbf(480.0).ft_lbf() - 40.0).abs() < 1.0e-9);
    assert!(Torque::parse("55").is_err() && Torque::parse("55 N").is_err());
}

#[test]
fn quantities_are_printed_with_their_unit() {
    let printed: [(&dyn Display, &str); 12] = [
        (&VoltageRms::from_kv(13.2), "13.2 kV"),
        (&VoltageRms::from_v(48.0), "48 V"),
        (&VoltagePeak::from_kv(95.0), "95 kV peak"),
        (&Current::from_a(600.0), "600 A"),
        (&Current::from_a(1200.0), "1200 A"),
        (&Current::from_ka(10.0), "10 kA"),
        (&Seconds::from_min(12.0), "720 s"),
        (&Temperature::from_deg_f(68.0), "20 °C"),
        (&Area::from_mm2(240.0), "240 mm²"),
        (&Frequency::from_hz(60.0), "60 Hz"),
        (
            &ResistancePerLength::from_ohm_per_km(0.0754),
            "0.0754 ohm/km",
        ),
        (&Seconds::from_s(0.0), "0 s"),
    ];
    for (quantity, expected) in printed {
        assert_eq!(quantity.to_string(), expected);
    }
    assert_eq!(format!("{:.1}", Area::from_kcmil(500.0)), "253.4 mm²");
}

#[test]
fn the_crest_of_a_sine_is_root_two_times_its_rms() {
    // 8 kV rms, the phase-to-ground voltage of a 13.8 kV system rounded, crests at 11.31 kV.
    let crest = VoltageRms::from_kv(8.0).crest();
    assert!(
        (crest.kv() - 11.313_708_498_984_76).abs() < 1.0e-12,
        "{crest}"
    );
}

#[test]
fn a_peak_is_not_read_as_rms_nor_rms_as_peak() {
    check_refused(
        VoltageRms::parse("95 kV peak"),
        "`kV peak` is not a unit of rms voltage known here",
        "Use one of V or kV",
    );
    check_refused(
        VoltagePeak::parse("15 kV rms"),
        "`kV rms` is not a unit of peak voltage known here",
        "Use one of V or kV",
    );
}

#[test]
fn cycles_are_no_time() {
    check_refused(
        Seconds::parse("30 cycles"),
        "`30 cycles` is a count of cycles, not a time",
        "0.5 s at 60 Hz",
    );
    check_refused(
        Current::parse("30 cycles"),
        "`cycles` is not a unit of current known here",
        "A or kA",
    );
}

#[test]
fn a_comma_is_refused_and_both_readings_are_named() {
    check_refused(
        VoltageRms::parse("13,2 kV"),
        "`13,2` holds a comma",
        "with a point: 13.2.",
    );
    check_refused(
        Current::parse("10,000 A"),
        "`10,000` holds a comma",
        "Write 10.000 if a decimal was meant, or 10000",
    );
    check_refused(Current::parse("10 , A"), "`10 , A` holds a comma", "point");
    check_refused(
        Temperature::parse("-4,5 °C"),
        "`4,5` holds a comma",
        "with a point: 4.5.",
    );
}

#[test]
fn what_is_no_number_with_a_unit_is_refused() {
    check_refused(Current::parse(" "), "the current is empty", "A or kA");
    check_refused(Current::parse("A"), "expected a number at `A`", "A or kA");
    check_refused(
        Current::parse("600"),
        "`600` has no unit",
        "Write the unit behind 600: A or kA.",
    );
    check_refused(
        Current::parse("600 amps"),
        "`amps` is not a unit of current known here",
        "A or kA",
    );
    check_refused(
        Current::parse("600 A each"),
        "`A each` is not a unit of current known here",
        "A or kA",
    );
    check_refused(
        Current::parse("1e3 A"),
        "`e3 A` is not a unit of current known here",
        "A or kA",
    );
    check_refused(
        Current::parse("6.0.0 A"),
        "`6.0.0` is not a number",
        "one decimal point",
    );
    check_refused(
        Current::parse("600. A"),
        "`600.` is not a number",
        "one decimal point",
    );
    check_refused(
        Current::parse("10 000 A"),
        "`10` and `000 A` are two numbers run together",
        "without any mark",
    );
    check_refused(
        Area::parse("500 MCM"),
        "`MCM` is not a unit of area known here",
        "kcmil",
    );
}

#[test]
fn signs_and_what_is_not_finite_are_refused() {
    check_refused(
        Current::parse("-600 A"),
        "`-600 A` is a negative current",
        "without a sign",
    );
    check_refused(
        Current::parse("+600 A"),
        "`+600 A` carries a plus sign",
        "without a plus",
    );
    check_refused(
        Current::parse("inf A"),
        "expected a number at `inf A`",
        "A or kA",
    );
    check_refused(
        Current::parse("NaN A"),
        "expected a number at `NaN A`",
        "A or kA",
    );
    let digits = "9".repeat(308);
    let found = format!("`{}…` is too large to compute with", "9".repeat(40));
    check_refused(
        Current::parse(&format!("{digits} kA")),
        &found,
        "Check the number",
    );
    assert!(Current::parse(&format!("{digits} A")).is_ok());
}

#[test]
fn nothing_is_colder_than_absolute_zero() {
    check(
        Temperature::parse("-273.15 degC"),
        Temperature::from_deg_c(-273.15),
    );
    let message = "`-300 °C` is below absolute zero, -273.15 °C";
    check_refused(Temperature::parse("-300 °C"), message, "degC or degF");
    assert!(Temperature::parse("-300 °F").is_ok());
}

/// Doubles converted out and back by one factor agree within two units in the last place.
fn is_same(a: f64, b: f64) -> bool {
    (a - b).abs() <= 2.0 * f64::EPSILON * a.abs()
}

proptest! {
    #[test]
    fn no_text_makes_the_parsers_panic(text in prop_oneof![".*", "[-+−]?[0-9.,]{0,6} ?(kV|A|s|°F|mm²|Ω/km|.*)"]) {
        let _ = VoltageRms::parse(&text).map_err(|e| (e.to_string(), e.hint()));
        let _ = VoltagePeak::parse(&text).map_err(|e| (e.to_string(), e.hint()));
        let _ = Current::parse(&text).map_err(|e| (e.to_string(), e.hint()));
        let _ = Seconds::parse(&text).map_err(|e| (e.to_string(), e.hint()));
        let _ = Temperature::parse(&text).map_err(|e| (e.to_string(), e.hint()));
        let _ = Area::parse(&text).map_err(|e| (e.to_string(), e.hint()));
        let _ = Frequency::parse(&text).map_err(|e| (e.to_string(), e.hint()));
        let _ = Resistance::parse(&text).map_err(|e| (e.to_string(), e.hint()));
        let _ = ResistancePerLength::parse(&text).map_err(|e| (e.to_string(), e.hint()));
    }

    #[test]
    fn what_is_printed_in_its_own_unit_reads_back_to_the_bit(x in 0.0_f64..1.0e9) {
        prop_assert_eq!(Seconds::parse(&Seconds::from_s(x).to_string()), Ok(Seconds::from_s(x)));
        prop_assert_eq!(Area::parse(&Area::from_mm2(x).to_string()), Ok(Area::from_mm2(x)));
        prop_assert_eq!(Frequency::parse(&Frequency::from_hz(x).to_string()), Ok(Frequency::from_hz(x)));
        let ohm = ResistancePerLength::from_ohm_per_km(x);
        prop_assert_eq!(ResistancePerLength::parse(&ohm.to_string()), Ok(ohm));
        let deg_c = Temperature::from_deg_c(x - 273.15);
        prop_assert_eq!(Temperature::parse(&deg_c.to_string()), Ok(deg_c));
    }

    #[test]
    fn what_is_printed_in_thousands_reads_back(x in 0.0_f64..1.0e9) {
        let rms = VoltageRms::parse(&VoltageRms::from_v(x).to_string()).map(VoltageRms::v);
        prop_assert!(rms.is_ok_and(|v| is_same(v, x)));
        let peak = VoltagePeak::parse(&VoltagePeak::from_v(x).to_string()).map(VoltagePeak::v);
        prop_assert!(peak.is_ok_and(|v| is_same(v, x)));
        let current = Current::parse(&Current::from_a(x).to_string()).map(Current::a);
        prop_assert!(current.is_ok_and(|a| is_same(a, x)));
        let ohm = Resistance::parse(&Resistance::from_ohm(1.0e-3 * x).to_string()).map(Resistance::ohm);
        prop_assert!(ohm.is_ok_and(|ohm| is_same(ohm, 1.0e-3 * x)));
    }

    #[test]
    fn a_unit_in_is_the_unit_out(x in 1.0e-6_f64..1.0e9) {
        prop_assert!(is_same(Area::from_kcmil(x).kcmil(), x));
        prop_assert!(is_same(Area::from_cmil(x).cmil(), x));
        prop_assert!(is_same(Area::from_cmil(x).kcmil() * 1.0e3, x));
        prop_assert!(is_same(ResistancePerLength::from_ohm_per_kft(x).ohm_per_kft(), x));
        prop_assert!(is_same(Resistance::from_uohm(x).uohm(), x));
        prop_assert!(is_same(VoltageRms::from_kv(x).kv(), x));
        prop_assert!(is_same(Current::from_ka(x).ka(), x));
        prop_assert!(is_same(Seconds::from_ms(x).ms(), x));
        prop_assert!(is_same(Seconds::from_h(x).h(), x));
        prop_assert!((Temperature::from_deg_f(x).deg_f() - x).abs() <= 1.0e-12 * (x + 100.0));
    }
}
