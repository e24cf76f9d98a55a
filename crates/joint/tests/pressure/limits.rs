//! Absolute limits, stretch, seals: each on either side of its limit.

use super::{INSULATION, body, insulation, kpa, outcomes, planned};
use crate::cases::{accepted, named, read};
use jointwright_joint::judge::judge;
use jointwright_wording::plan;

fn owner(check: &str, bound: &str) -> String {
    format!(
        "[[owner_limit]]\ncheck = \"{check}\"\n{bound}\nby = \"Ines Calloway\"\ndate = 2026-03-02\n\n[[leg]]\nid = \"A\"\n"
    )
}

const FIRST_LEG: &str = "[[leg]]\nid = \"A\"\n";
const BORE: &str = "relaxed_bore = \"15 mm\"\n";

#[test]
fn a_least_pressure_of_the_row_and_of_the_owner_is_held() {
    let free = planned(&[], &[]);
    let (pressure, error) = (
        kpa(&free),
        body(&free).pressure_error_kpa.expect("its law is stated"),
    );
    assert!(error > 0.0 && error < 0.2 * pressure, "{pressure} {error}");
    for (asked, expected) in [
        (pressure - 1.01 * error, "pass"),
        (pressure - 0.5 * error, "not-judged"),
        (pressure + 0.5 * error, "not-judged"),
        (pressure + 1.01 * error, "fail"),
    ] {
        let row = format!("{BORE}pressure_least_kpa = {asked}\n");
        let by_row = planned(&[], &[(BORE, &row)]);
        assert_eq!(
            outcomes(&by_row, "interface_pressure", "A"),
            ["pass", expected],
            "row asks for {asked} of {pressure}"
        );
        for check in ["interface_pressure", "screen_edge_pressure"] {
            let limit = owner(check, &format!("least_kpa = {asked}"));
            let by_owner = planned(&[(FIRST_LEG, &limit)], &[]);
            assert_eq!(
                outcomes(&by_owner, check, "A"),
                ["pass", expected],
                "{check}: the owner asks for {asked} of {pressure}"
            );
        }
    }
}

#[test]
fn a_least_pressure_cuts_the_range_down_to_where_it_is_reached() {
    let asked = 1.15 * kpa(&planned(&[], &[]));
    let row = format!("{BORE}pressure_least_kpa = {asked}\n");
    let cut = planned(&[], &[(BORE, &row)]);
    let [least, _] = body(&cut).today_mm.expect("a range");
    assert!(least > 23.3, "{least}");
    assert_eq!(outcomes(&cut, "range_today", "A")[0], "fail");
    // On a cable of that diameter the pressure equals the pressure asked for.
    let on = planned(&[(INSULATION, &insulation([least; 4]))], &[]);
    assert!(
        (kpa(&on) / asked - 1.0).abs() < 1e-3,
        "{} {asked}",
        kpa(&on)
    );
}

#[test]
fn the_stretch_of_the_bore_is_held_on_either_side() {
    // 23.6 mm at the thickest over a relaxed bore of 15 mm: 1.5733; the error is 0.0033 from the calliper and 0.0105 from the bore.
    for (most, expected) in [(1.588, "pass"), (1.575, "not-judged"), (1.559, "fail")] {
        let limit = owner("rubber_stretch", &format!("greatest_stretch = {most}"));
        let by_owner = planned(&[(FIRST_LEG, &limit)], &[]);
        assert_eq!(
            outcomes(&by_owner, "rubber_stretch", "A"),
            ["pass", expected],
            "{most}"
        );
        let row = format!("{BORE}stretch_greatest = {most}\n");
        let by_row = planned(&[], &[(BORE, &row)]);
        assert_eq!(
            outcomes(&by_row, "rubber_stretch", "A"),
            ["pass", expected],
            "{most}"
        );
    }
    // Its paper allows at most 29 mm.
    let too_thick = planned(&[(INSULATION, &insulation([29.1; 4]))], &[]);
    assert_eq!(outcomes(&too_thick, "rubber_stretch", "A"), ["fail"]);
    let thick = planned(&[(INSULATION, &insulation([28.9; 4]))], &[]);
    assert_eq!(outcomes(&thick, "rubber_stretch", "A"), ["pass"]);
}

#[test]
fn a_seal_on_too_thin_a_jacket_is_squeezed_too_little() {
    let jacket = |mm: &str| {
        planned(
            &[(
                "values = [\"33.00 mm\"]",
                &format!("values = [\"{mm} mm\"]"),
            )],
            &[],
        )
    };
    // The seal takes 24 mm and more; the oldest that is allowed is used up more than this one.
    assert_eq!(outcomes(&jacket("24.1"), "seal_squeeze", "A"), ["pass"]);
    assert_eq!(outcomes(&jacket("20.0"), "seal_squeeze", "A"), ["fail"]);
}

#[test]
fn a_range_that_its_own_row_would_not_touch_is_no_measure() {
    // Held to 50 mm and set by all of it: the bore would be wider than the thinnest cable it allows.
    let loose = planned(&[], &[("greatest = 0.12", "greatest = 0.9")]);
    let outcome = outcomes(&loose, "interface_pressure", "A");
    assert!(
        !outcome.contains(&"pass".to_owned()),
        "{outcome:?} of a part that touches nothing"
    );
}

#[test]
fn the_wall_of_a_body_is_that_of_its_inside() {
    // The example's inside: 25 to 64 mm on a cable of 25 mm everywhere, so relaxed sqrt(64^2 - 25^2 + 15^2) = 60.795 mm.
    let case = named("tannery-change");
    let order = accepted(read(case.job, &case.catalogues()), case.slug);
    let whole = plan(&accepted(judge(&order), case.slug));
    let even = planned(
        &[],
        &[(
            "relaxed_outside = \"60 mm\"",
            "relaxed_outside = \"60.7947 mm\"",
        )],
    );
    let ratio = kpa(&whole) / kpa(&even);
    assert!((ratio - 1.0).abs() < 1e-6, "{ratio}");
    // Another outside gives another pressure.
    let other = kpa(&whole) / kpa(&planned(&[], &[]));
    assert!((other - 1.0).abs() > 1e-4, "{other}");
}

#[test]
fn a_part_that_does_not_touch_fails() {
    let bore = |mm: &str| {
        let row = format!("relaxed_bore = \"{mm} mm\"\n");
        let plan = planned(&[], &[(BORE, &row)]);
        let line = plan.legs[0].ends[0]
            .pressure
            .as_ref()
            .expect("asked")
            .line
            .clone();
        (outcomes(&plan, "interface_pressure", "A"), line)
    };
    // The cable has 23.3 mm, and the store leaves something of the stretch to 50 mm in the bore.
    let (found, line) = bore("24");
    assert_eq!(found, ["fail"]);
    assert!(line.starts_with("LOOSE"), "{line}");
    // A bore that touches this cable but not the thinnest allowed cable measures nothing.
    let (found, _) = bore("20.5");
    assert_eq!(found, ["not-judged"]);
}

#[test]
fn a_law_that_cannot_follow_the_thickest_is_not_judged() {
    let law = |limit: f64| {
        let law = format!("law = \"gent\"\nstretch_limit = {limit}\nshear_modulus_mpa = 0.4\n");
        let edits: super::Edits<'_> = &[("law = \"neo-hookean\"\nshear_modulus_mpa = 0.4\n", &law)];
        outcomes(&planned(&[], edits), "interface_pressure", "A")
    };
    // Held open to 50 mm the bore is stretched 3.33 times: I1 - 3 is 11.1 - 1.9 = 8.2 at fixed length.
    assert_eq!(law(30.0), ["pass"]);
    assert_eq!(law(7.0), ["not-judged"]);
}

#[test]
fn a_line_says_what_its_rulings_say() {
    let line = |of_job: super::Edits<'_>, of_row: super::Edits<'_>| {
        let plan = planned(of_job, of_row);
        let pressure = plan.legs[0].ends[0].pressure.as_ref();
        pressure.expect("it was asked for").line.clone()
    };
    assert!(
        line(&[], &[]).starts_with("body even-body"),
        "{}",
        line(&[], &[])
    );
    let limit = owner("interface_pressure", "least_kpa = 10000");
    let asked = line(&[(FIRST_LEG, &limit)], &[]);
    assert!(
        asked.starts_with("TOO LITTLE (10000 kPa are asked for by"),
        "{asked}"
    );
    assert!(asked.contains("Ines Calloway"), "{asked}");
    let row = format!("{BORE}pressure_least_kpa = 10000\n");
    let asked = line(&[], &[(BORE, &row)]);
    assert!(
        asked.starts_with("TOO LITTLE") && asked.contains("DS-25"),
        "{asked}"
    );
    let thick = insulation([29.5; 4]);
    let out = line(&[(INSULATION, &thick)], &[]);
    assert!(out.starts_with("OUT OF ITS RANGE"), "{out}");
    let open = line(&[("conductor_greatest = \"130 degC\"\n", "")], &[]);
    assert!(
        open.starts_with("NOT JUDGED (temperatures not known)"),
        "{open}"
    );
}

#[test]
fn constants_by_which_a_wider_cable_is_pressed_less_are_not_judged() {
    let law = |c1: f64| {
        let law = format!("law = \"mooney-rivlin\"\nc1_mpa = {c1}\nc2_mpa = 0.2\n");
        let edits: super::Edits<'_> = &[("law = \"neo-hookean\"\nshear_modulus_mpa = 0.4\n", &law)];
        outcomes(&planned(&[], edits), "interface_pressure", "A")
    };
    assert_eq!(law(0.051), ["pass"]);
    assert_eq!(law(0.049), ["not-judged"]);
}
