//! A fact that is not stated is asked for, and nothing passes for want of it.

use super::{Edits, body, outcomes, part, planned, rulings};
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::StateDoc;

/// Checks that need the rubber of the body.
const OF_THE_BODY: &[&str] = &[
    "interface_pressure",
    "screen_edge_pressure",
    "rubber_stretch",
    "range_today",
];

const HOLD: &str = "hold_diameter = \"50 mm\"\n";
const SET: &str = "set = { greatest = 0.12, time_days = 400, power = 0.5, reference = \"23 degC\", activation_kj_per_mol = 60 }\n";
const RELAXATION: &str = "relaxation = { greatest = 0.20, time_days = 300, power = 0.5, reference = \"23 degC\", activation_kj_per_mol = 60 }";

#[test]
fn a_row_without_constants_is_not_judged_and_asked_about() {
    let whole = planned(&[], &[]);
    for check in OF_THE_BODY {
        let passes = outcomes(&whole, check, "A").iter().all(|r| r == "pass");
        assert!(passes, "{check} of the whole row");
    }
    // The demonstration's own row for branches states no rubber; here the table is taken away.
    let rubber = super::parts();
    let table = &rubber[rubber.find("[body.rubber]").expect("a table")..];
    let bare = planned(&[], &[(table, "")]);
    for check in OF_THE_BODY {
        let open: Vec<_> = rulings(&bare, check, "A")
            .into_iter()
            .filter(|ruling| !ruling.why.as_deref().unwrap_or("").contains("demo-seal"))
            .filter(|ruling| ruling.ruling != Outcome::Pass)
            .collect();
        assert!(!open.is_empty(), "{check}");
        for ruling in open {
            assert_eq!(ruling.ruling, Outcome::NotJudged, "{check}");
            let hint = ruling.hint.as_deref().unwrap_or("");
            assert!(hint.starts_with("Ask: "), "{check}: {hint}");
            assert!(hint.contains("even-body"), "{check}: {hint}");
        }
    }
    assert_eq!(part(&bare, "A", "body").state, StateDoc::NotKnown);
}

/// Edits of the job and of the row, and words of the question.
const MISSING: &[(Edits<'_>, Edits<'_>, &str)] = &[
    (&[], &[(SET, ""), (RELAXATION, "")], "stays in the bore"),
    (&[], &[(SET, "")], "stays in the bore"),
    (
        &[],
        &[(HOLD, ""), (SET, ""), (RELAXATION, "")],
        "held open in store",
    ),
    (
        &[],
        &[(
            ", store_least = \"-20 degC\", store_greatest = \"40 degC\"",
            "",
        )],
        "may even-body lie in store",
    ),
    (
        &[(", store_greatest = \"31 degC\"", "")],
        &[],
        "How warm did lot",
    ),
    (
        &[(
            "lot = \"INV-BD-1\", expanded = 2025-09-20",
            "lot = \"INV-BD-1\"",
        )],
        &[],
        "expanded?",
    ),
    (
        &[("conductor_greatest = \"130 degC\"\n", "")],
        &[],
        "highest temperature of the conductor",
    ),
    (
        &[("ambient_least = \"5 degC\"\n", "")],
        &[],
        "lowest temperature at the place",
    ),
    (
        &[(
            "expansion_per_k_least = 1.5e-4\nexpansion_per_k_greatest = 2.5e-4\n",
            "",
        )],
        &[],
        "insulation of leg A's cable expand",
    ),
    (
        &[],
        &[(
            "expansion_per_k_least = 2.3e-4\nexpansion_per_k_greatest = 2.8e-4\n",
            "",
        )],
        "rubber of even-body expand",
    ),
    (
        &[],
        &[(
            "modulus_per_k_least = -0.003\nmodulus_per_k_greatest = 0.003\n",
            "",
        )],
        "stiffness of the rubber of even-body",
    ),
    (
        &[],
        &[("relaxed_outside = \"60 mm\"\n", "")],
        "outside diameter",
    ),
];

#[test]
fn each_thing_that_is_missing_is_asked_for_by_name() {
    for (of_job, of_row, words) in MISSING {
        let plan = planned(of_job, of_row);
        let rulings = rulings(&plan, "interface_pressure", "A");
        let asked = rulings.iter().any(|ruling| {
            let hint = ruling.hint.as_deref().unwrap_or("");
            ruling.ruling == Outcome::NotJudged && hint.starts_with("Ask: ") && hint.contains(words)
        });
        assert!(asked, "{words}: {rulings:?}");
    }
}

#[test]
fn nothing_passes_for_want_of_anything() {
    let passes = |plan: &jointwright_joint::plan::Plan, check: &str| {
        let outcomes = outcomes(plan, check, "A");
        (
            outcomes.iter().filter(|r| *r == "pass").count(),
            outcomes.iter().any(|r| r != "pass"),
        )
    };
    let whole = planned(&[], &[]);
    for (of_job, of_row, words) in MISSING {
        let plan = planned(of_job, of_row);
        let mut is_open = false;
        for check in OF_THE_BODY {
            let (now, has_other) = passes(&plan, check);
            assert!(now <= passes(&whole, check).0, "{check} without: {words}");
            is_open |= has_other;
        }
        assert!(is_open, "all passes without: {words}");
    }
}

#[test]
fn without_a_law_pressures_are_compared_and_none_is_said() {
    let plan = planned(
        &[],
        &[("law = \"neo-hookean\"\nshear_modulus_mpa = 0.4\n", "")],
    );
    let computed = body(&plan);
    assert!(computed.ratio > 1.0, "{computed:?}");
    assert_eq!(computed.pressure_kpa, None);
    assert_eq!(outcomes(&plan, "interface_pressure", "A"), ["pass"]);
    let line = &plan.legs[0].ends[0].pressure.as_ref().expect("asked").line;
    assert!(!line.contains("kPa"), "{line}");
    // A pressure that is asked for is then not judged.
    let asked = planned(
        &[],
        &[(
            "law = \"neo-hookean\"\nshear_modulus_mpa = 0.4\n",
            "pressure_least_kpa = 1.0\n",
        )],
    );
    assert_eq!(
        outcomes(&asked, "interface_pressure", "A"),
        ["pass", "not-judged"]
    );
}

#[test]
fn a_tape_does_not_show_the_thinnest_place() {
    let tape = planned(
        &[(
            "over = \"insulation\", instrument = \"calliper\", error = \"0.05 mm\", temperature = \"12 degC\", values = [\"23.30 mm\", \"23.40 mm\", \"23.60 mm\", \"23.40 mm\"]",
            "over = \"insulation\", instrument = \"diameter-tape\", error = \"0.05 mm\", temperature = \"12 degC\", values = [\"23.40 mm\"]",
        )],
        &[],
    );
    for check in ["interface_pressure", "rubber_stretch", "range_today"] {
        let found = outcomes(&tape, check, "A");
        assert_eq!(found[0], "not-judged", "{check}");
    }
}

#[test]
fn constants_that_do_not_reach_over_the_temperatures_are_asked_for() {
    // 1 - 0.01 per kelvin leaves nothing at 123 degC; the conductor reaches 130.
    let soft: Edits<'_> = &[(
        "modulus_per_k_least = -0.003",
        "modulus_per_k_least = -0.01",
    )];
    let plan = planned(&[], soft);
    let rulings = rulings(&plan, "interface_pressure", "A");
    let last = rulings.last().expect("a ruling");
    assert_eq!(last.ruling, Outcome::NotJudged);
    let why = last.why.as_deref().unwrap_or("");
    assert!(why.contains("no stiffness left at"), "{why}");
    let cooler = planned(
        &[(
            "conductor_greatest = \"130 degC\"",
            "conductor_greatest = \"120 degC\"",
        )],
        soft,
    );
    assert_eq!(outcomes(&cooler, "interface_pressure", "A"), ["pass"]);
}

#[test]
fn a_holdout_that_would_not_go_over_the_range_is_refused() {
    let refused = |hold: &str| {
        let row = super::edited(
            &super::parts(),
            &[(HOLD, &format!("hold_diameter = \"{hold}\"\n"))],
        );
        let catalogues = [("parts.toml".to_owned(), row)];
        let job = crate::cases::named("tannery-change").job;
        let job = super::edited(job, &[("[\"demonstration\"]", "[\"parts.toml\"]")]);
        let said = crate::cases::read(&job, &catalogues).expect_err("parts are missing, too");
        crate::cases::lines(&said).contains("it would not go over that")
    };
    // The screen may have 34 mm.
    assert!(refused("34 mm"));
    assert!(!refused("34.1 mm"));
}

#[test]
fn water_under_the_shield_is_not_passed_over() {
    const DRY: &str = "{ leg = \"A\", phase = 1, in = \"conductor\", found = \"dry\", how = \"invented test\", by = \"Tomas Brandt\", date = 2026-03-10 },";
    let with = |rows: &[(&str, &str)]| {
        let rows: Vec<String> = rows
            .iter()
            .map(|(place, found)| {
                DRY.replace("\"conductor\"", &format!("\"{place}\""))
                    .replace("\"dry\"", &format!("\"{found}\""))
            })
            .collect();
        let under = DRY.replace("\"conductor\"", "\"shield\"");
        let rows = rows.join("\n");
        // The row under the shield is replaced first: its replacement may look like it.
        let edits = [(under.as_str(), ""), (DRY, rows.as_str())];
        outcomes(&planned(&edits, &[]), "strand_water", "A")
    };
    // A dry test of the strands does not show what lies under the shield.
    assert_eq!(with(&[("conductor", "dry")]), ["pass", "not-judged"]);
    assert_eq!(with(&[("conductor", "wet")]), ["fail", "not-judged"]);
    assert_eq!(
        with(&[("conductor", "dry"), ("shield", "dry")]),
        ["pass", "pass"]
    );
    assert_eq!(
        with(&[("conductor", "dry"), ("shield", "wet")]),
        ["pass", "fail"]
    );
    // A test under the shield does not show the state of the strands.
    assert_eq!(with(&[("shield", "dry")]), ["pass", "not-judged"]);
    assert_eq!(with(&[("shield", "wet")]), ["fail", "not-judged"]);
    assert_eq!(with(&[]), ["not-judged"]);
}

#[test]
fn a_dry_test_of_another_day_is_no_test() {
    let dated = |day: &str| {
        let date = format!("by = \"Tomas Brandt\", date = {day} }},");
        let plan = planned(
            &[("by = \"Tomas Brandt\", date = 2026-03-10 },", &date)],
            &[],
        );
        outcomes(&plan, "strand_water", "A")
    };
    assert_eq!(dated("2026-03-10"), ["pass", "pass"]);
    assert_eq!(dated("2026-03-09"), ["not-judged", "not-judged"]);
}

#[test]
fn a_hot_reading_against_a_range_of_no_temperature_is_not_judged() {
    let read_at = |degc: i32| {
        let at = format!("temperature = \"{degc} degC\"");
        planned(&[("temperature = \"12 degC\"", &at)], &[])
    };
    assert_eq!(outcomes(&read_at(30), "range_today", "A")[0], "pass");
    let hot = read_at(31);
    assert_eq!(outcomes(&hot, "range_today", "A")[0], "not-judged");
    let part = part(&hot, "A", "body");
    assert!(part.questions[0].contains("At what temperature does the range"));
}

#[test]
fn a_jacket_that_shrinks_toward_the_joint_is_refused() {
    const LINK: &str = "{ from = \"jacket-edge\", to = \"jacket-edge-shrunk-back\", distance = \"3 mm\", minus = \"3 mm\", plus = \"3 mm\"";
    for link in [
        LINK.replace("minus = \"3 mm\"", "minus = \"4 mm\""),
        LINK.replace(
            "from = \"jacket-edge\", to = \"jacket-edge-shrunk-back\"",
            "from = \"jacket-edge-shrunk-back\", to = \"jacket-edge\"",
        ),
    ] {
        let case = crate::cases::named("tannery-change");
        let job = super::edited(case.job, &[(LINK, &link)]);
        let said = crate::cases::read(&job, &case.catalogues()).expect_err("it is refused");
        let said = crate::cases::lines(&said);
        assert!(said.contains("away from the conductor end"), "{said}");
    }
}

#[test]
fn a_wall_with_a_hole_on_the_cable_is_not_judged() {
    // The inside of the demonstration begins at the middle; here it ends before the screen's edge.
    let case = crate::cases::named("tannery-change");
    let short = |along: &str| {
        let catalogue = jointwright_joint::catalogue::DEMONSTRATION_TEXT;
        let row = catalogue
            .find("id = \"demo-straight-25\"")
            .expect("the row");
        let (before, after) = catalogue.split_at(row);
        let text = format!("{before}{}", after.replacen("230 mm\", \"230 mm", along, 1));
        let catalogues = [("demonstration".to_owned(), text)];
        let order = crate::cases::accepted(crate::cases::read(case.job, &catalogues), "short");
        let judged = jointwright_joint::judge::judge(&order);
        let plan = jointwright_wording::plan(&crate::cases::accepted(judged, "short"));
        part(&plan, "A", "body").clone()
    };
    assert_eq!(short("230 mm\", \"230 mm").state, StateDoc::Computed);
    let cut = short("100 mm\", \"100 mm");
    assert_eq!(cut.state, StateDoc::NotComputed);
    assert!(
        cut.why
            .as_deref()
            .unwrap_or("")
            .contains("no rubber of it lies on the cable"),
        "{cut:?}"
    );
}
