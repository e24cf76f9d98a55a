//! Surroundings stated by their kind: soil, ducts, still air.

use super::unknown::complained;
use super::{DOCK, Edits, leg, order, planned, warm, with_done, worst};

const BANK: &str =
    "what = \"duct bank (invented)\", temperature = \"25 degC\", outside_k_m_per_w = 0.9";
const FILM: &str = "temperature = \"30 degC\", film_w_per_m2k = 8.0";
const SOIL: &str = "soil = { depth = \"1 m\", resistivity_k_m_per_w = 1.2, contents = \"cables\", dries = false, formation = \"trefoil\", circuits = 1 }";
const SPACED: &str = "soil = { depth = \"1 m\", resistivity_k_m_per_w = 1.2, contents = \"cables\", dries = false, formation = \"flat\", spacing = \"200 mm\", circuits = 2, circuits_apart = \"900 mm\" }";
const DUCT: &str = "duct = { inside = \"104 mm\", outside = \"110 mm\", wall_k_m_per_w = 6.0, holds = \"air-in-plastic\", cables = 1 }";
const FIRST: &str = "# How jackets were found, and what tests for moisture found.";

fn beyond(what: &str) -> String {
    format!("what = \"duct bank (invented)\", temperature = \"25 degC\", {what}")
}

/// Ducts as `SPACED` has cables.
fn ducted(duct: &str) -> String {
    format!("{}, {duct}", SPACED.replace("\"cables\"", "\"ducts\""))
}

fn confirmation(key: &str) -> String {
    format!(
        "confirmation = [\n  {{ key = \"{key}\", edition = \"invented\", by = \"Ines Calloway\", date = 2026-03-01 }},\n]\n\n{FIRST}"
    )
}

/// Sentence about the computed surroundings of leg B, and the first number in it.
#[track_caller]
fn computed(of_job: Edits<'_>) -> (String, f64) {
    let plan = planned(of_job, &[]);
    let mut said = warm(&plan).surroundings.iter();
    let line = said
        .rfind(|line| line.starts_with("leg B") && line.contains("computed"))
        .unwrap_or_else(|| panic!("{:?}", warm(&plan).surroundings));
    let number = line
        .split(' ')
        .find_map(|word| word.parse().ok())
        .expect("a number");
    (line.clone(), number)
}

/// Soil gives the same result as its resistance from the engineer, and every part is printed; no value is from memory.
#[test]
fn soil_is_the_resistance_that_is_printed() {
    for soil in [SOIL, SPACED] {
        let said = beyond(soil);
        let edit = [(BANK, said.as_str())];
        let (line, total) = computed(&edit);
        assert!(line.contains("iec_60287_2_1"), "{line}");
        let direct = beyond(&format!("outside_k_m_per_w = {total}"));
        let both = [&edit[..], &[(BANK, direct.as_str())]].map(|edit| planned(edit, &[]));
        let degc = both.each_ref().map(|plan| {
            let at = leg(plan, "B").at_load.as_ref().expect("a state");
            (at.cable_degc, at.joint_degc)
        });
        assert!((degc[0].0 - degc[1].0).abs() < 0.02, "{degc:?}");
        assert!((degc[0].1 - degc[1].1).abs() < 0.02, "{degc:?}");
        assert_eq!(worst(&both[0], "joint_load_heat"), "pass");
    }
}

/// Drying soil counts for a joint as completely dry: no ladder follows the dry zone beyond the joint.
#[test]
fn soil_that_dries_is_taken_as_dry_all_over() {
    let dries = SOIL.replace(
        "dries = false",
        "dries = true, dry_k_m_per_w = 2.5, dries_above_k = 30.0",
    );
    let (line, dried) = computed(&[(BANK, &beyond(&dries))]);
    assert!(line.contains("all of it dried out"), "{line}");
    let dry = SOIL.replace("resistivity_k_m_per_w = 1.2", "resistivity_k_m_per_w = 2.5");
    assert_eq!(computed(&[(BANK, &beyond(&dry))]).1, dried);
    assert!(dried > computed(&[(BANK, &beyond(SOIL))]).1 + 1.0);
}

#[test]
fn soil_that_half_says_how_it_dries_is_complained_of() {
    let with = |dries: &str| beyond(&SOIL.replace("dries = false", dries));
    for dries in [
        "dries = true",
        "dries = true, dry_k_m_per_w = 2.5",
        "dries = true, dries_above_k = 30.0",
        "dries = false, dry_k_m_per_w = 2.5",
        "dries = false, dries_above_k = 30.0",
    ] {
        complained(BANK, &with(dries), "Soil that dries gives");
    }
    let better = "dries = true, dry_k_m_per_w = 1.1, dries_above_k = 30.0";
    complained(BANK, &with(better), "conduct better when dry");
    let silent = beyond(&SOIL.replace("dries = false, ", ""));
    complained(BANK, &silent, "`dries`");
}

/// 350 kcmil under 34.9 mm, 1 m deep in 1.2 K m/W: 1.8/pi (ln(4/0.0349) - 0.630) = 2.3560, and 0.6 of the jacket once more.
#[test]
fn a_touching_trefoil_is_that_of_the_standard() {
    let said = beyond(SOIL);
    let (line, _) = computed(&[(BANK, said.as_str())]);
    assert!(
        line.contains("soil about a touching trefoil 2.356"),
        "{line}"
    );
}

/// 350 kcmil under 34.9 mm, 1 m deep in 1.2 K m/W: u = 57.3, 1.2/2pi (acosh u + ln(1 + u²)) = 2.452.
#[test]
fn three_cables_that_touch_in_one_plane_are_judged_by_their_images() {
    let touching = SOIL.replace("\"trefoil\"", "\"flat-touching\"");
    let said = beyond(&touching);
    let edit = [(BANK, said.as_str())];
    let (line, _) = computed(&edit);
    assert!(
        line.contains("soil, the worst placed of 3 that touch and lose alike 2.45"),
        "{line}"
    );
    let plan = planned(&edit, &[]);
    assert_eq!(worst(&plan, "joint_load_heat"), "pass");
}

/// A value from memory rules nothing, pass or fail, until the owner confirms it.
#[test]
fn a_duct_soil_that_dries_and_still_air_rule_nothing_until_the_owner_confirms_them() {
    let duct = beyond(&ducted(DUCT));
    let dries = beyond(&SOIL.replace(
        "dries = false",
        "dries = true, dry_k_m_per_w = 1.25, dries_above_k = 30.0",
    ));
    let air = "temperature = \"30 degC\", air = \"trefoil\"";
    for (edit, key) in [
        ((BANK, duct.as_str()), "duct-filling"),
        ((BANK, dries.as_str()), "soil-that-dries"),
        ((FILM, air), "free-air-film"),
    ] {
        let confirmed = confirmation(key);
        for slug in [
            "joint_load_heat",
            "joint_emergency_heat",
            "service_temperature",
        ] {
            assert_eq!(
                worst(&planned(&[edit], &[]), slug),
                "not-judged",
                "{key} {slug}"
            );
            let plan = planned(&[edit, (FIRST, &confirmed)], &[]);
            assert_eq!(worst(&plan, slug), "pass", "{key} {slug}");
        }
        let open = planned(&[edit], &[]);
        let ruling = open.rulings.iter().find(|r| r.check == "joint_load_heat");
        let ruling = ruling.expect("a ruling");
        assert!(
            ruling.why.as_deref().is_some_and(|why| why.contains(key)),
            "{ruling:?}"
        );
        // It does not fail either.
        let hot = (
            "conductor_greatest = \"95 degC\"\nconductor_emergency",
            "conductor_greatest = \"40 degC\"\nconductor_emergency",
        );
        assert_eq!(
            worst(&planned(&[edit], &[hot]), "joint_load_heat"),
            "not-judged"
        );
        let plan = planned(&[edit, (FIRST, &confirmed)], &[hot]);
        assert_eq!(worst(&plan, "joint_load_heat"), "fail");
    }
}

/// The film of still air is h times the fourth root of the rise that is printed with it, and not smaller along the stretch.
#[test]
fn still_air_is_the_film_of_its_own_rise() {
    let air = "temperature = \"30 degC\", air = \"alone\"";
    let (line, film) = computed(&[(FILM, air)]);
    let numbers: Vec<f64> = line
        .split([' ', ','])
        .filter_map(|word| word.parse().ok())
        .collect();
    let [_, rise, diameter] = numbers[..3] else {
        panic!("{line}")
    };
    let h = 0.21 / (diameter * 1e-3_f64).powf(0.6) + 3.94;
    assert!((h * rise.powf(0.25) / film - 1.0).abs() < 0.01, "{line}");
    with_done(&order(DOCK, &[(FILM, air)], &[]), |done| {
        let along = done.model.along(1.0).unwrap().expect("a state");
        let least = along[1].outside_degc.iter().filter(|(z, _)| *z < 2.3);
        let least = least.fold(f64::INFINITY, |least, (_, degc)| least.min(degc - 30.0));
        assert!((least - rise).abs() < 0.1, "{least} {line}");
    });
}

#[test]
fn surroundings_that_say_two_things_or_half_of_one_are_complained_of() {
    let complaints = [
        (
            format!("{SOIL}, outside_k_m_per_w = 0.9"),
            "or in their place `soil` or `air`",
        ),
        (
            format!("outside_k_m_per_w = 0.9, {DUCT}"),
            "A duct lies in soil",
        ),
        (format!("{SPACED}, {DUCT}"), "The soil holds cables"),
        (
            SPACED.replace("\"cables\"", "\"ducts\""),
            "The soil holds ducts",
        ),
        (
            ducted(DUCT).replace("\"ducts\"", "\"ducts-in-concrete\""),
            "The soil holds ducts-in-concrete",
        ),
        (
            SPACED.replace(", spacing = \"200 mm\"", ""),
            "`flat` needs `spacing`",
        ),
        (
            SPACED.replace("\"flat\"", "\"flat-touching\""),
            "touch have no `spacing`",
        ),
        (
            SPACED.replace(", circuits_apart = \"900 mm\"", ""),
            "say something only together",
        ),
        (ducted(&DUCT.replace("104", "114")), "no larger outside"),
    ];
    for (said, of) in complaints {
        complained(BANK, &beyond(&said), of);
    }
}

#[test]
fn soil_at_the_joint_is_refused() {
    let said = format!("temperature = \"30 degC\", {SOIL}");
    let plan = planned(&[(FILM, said.as_str())], &[]);
    let why = warm(&plan).why.clone().expect("why");
    assert!(why.contains("says nothing of a joint"), "{why}");
    assert!(
        why.contains("have the engineer give `film_w_per_m2k`"),
        "{why}"
    );
    // So is a duct that is too small for its cable.
    let small = beyond(&ducted(&DUCT.replace("104", "30")));
    let plan = planned(&[(BANK, small.as_str())], &[]);
    let why = warm(&plan).why.clone().expect("why");
    assert!(why.contains("do not lie in a duct"), "{why}");
}
