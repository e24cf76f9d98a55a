//! Tests that one run finds all mistakes, each at its place.

use super::named::place;
use super::{JOBS, complaints, complaints_with, exchanged};
use jointwright_joint::catalogue::DEMONSTRATION_TEXT;

/// A passage to exchange, its replacement, the place of the complaint in the text, and its words.
type Mistake = (&'static str, &'static str, &'static str, &'static str);

const MISTAKES: &[Mistake] = &[
    (
        "highest = \"14.5 kV\"",
        "highest = \"12.5 kV\"",
        "\"12.5 kV\"",
        "below the nominal",
    ),
    (
        "clearing_time = \"0.5 s\"",
        "clearing_time = \"0.5\"",
        "\"0.5\"",
        "a quantity with its unit",
    ),
    (
        "date = 2026-03-09",
        "date = \"2026-03-09\"",
        "\"2026-03-09\"",
        "a date such as",
    ),
    (
        "ambient_least = \"5 degC\"",
        "ambient_least = \"35 degC\"",
        "\"35 degC\"",
        "above the highest",
    ),
    (
        "straight = \"28 in\"",
        "straight = 28",
        "28\npark_room",
        "a bare whole number",
    ),
    (
        "slack = \"30 in\"",
        "slack = \"30..5 in\"",
        "\"30..5 in\"",
        "30..5",
    ),
    (
        "goes_to = \"feeder 7,",
        "gose_to = \"feeder 7,",
        "gose_to",
        "Did you mean `goes_to`?",
    ),
    (
        "body = \"demo-leg-body-15\"",
        "body = \"demo-leg-body-51\"",
        "\"demo-leg-body-51\"",
        "No body in the job's catalogues",
    ),
    (
        "insulation = \"epr\"",
        "insulation = \"paper\"",
        "\"paper\"",
        "insulated with paper is not handled",
    ),
    (
        "thickness = \"25 mil\" }",
        "diameter = \"25 mil\" }",
        "\"25 mil\" }",
        "has no `diameter`",
    ),
    (
        "shield = { kind = \"concentric-wires\", metal = \"copper\", fault_greatest = \"200 degC\", count = 11, diameter = \"64.1 mil\" }",
        "shield = { kind = \"concentric-wires\", count = 11 }",
        "{ kind = \"concentric-wires\", count = 11 }",
        "has no `diameter`",
    ),
    (
        "level = 133\ninsulation = \"tr-xlpe\"",
        "insulation = \"tr-xlpe\"",
        "\"15 kV\"\ninsulation = \"tr-xlpe\"",
        "without an insulation level",
    ),
    (
        "size = \"350 kcmil\"\nmetal",
        "size = \"350\"\nmetal",
        "\"350\"",
        "a conductor size",
    ),
    (
        "values = [\"20.04 mm\"]",
        "values = []",
        "[] },\n  { leg = \"A\", phase = 1, over = \"insulation\",",
        "A reading has no values",
    ),
    (
        "values = [\"40.20 mm\"]",
        "values = [\"402.0 mm\"]",
        "[\"402.0 mm\"]",
        "a diameter on one core lies between",
    ),
    (
        "{ leg = \"B\", phase = 3, shield_elements = 11 }",
        "{ leg = \"D\", phase = 4, shield_elements = 11 }",
        "\"D\", phase = 4",
        "No leg is named `D`",
    ),
    (
        "part = \"adapter\", lot = \"INV-AD-4\"",
        "part = \"adaptor\", lot = \"INV-AD-4\"",
        "\"adaptor\"",
        "Did you mean \"adapter\"?",
    ),
    (
        "length_after = [\"62.2 mm\", \"62.6 mm\"]",
        "length_after = [\"52.2 mm\", \"62.6 mm\"]",
        "[\"52.2 mm\"",
        "does not grow shorter",
    ),
];

/// Rows put behind the job, each with its mistake.
const MORE: &str = r#"
[[leg]]
id = "C"
port = 2
bonding = "bonded"
cable = { size = "1/0 AWG", metal = "copper", stranding = "solid", insulation = "xlpe", shield = { kind = "tape" } }

[[owner_window]]
plane = "jacket-edge"
minus = "1/8 in"
plus = "1/8 in"
by = "Tomas Brandt"
date = 2026-03-09

[[owner_limit]]
check = "electrode_covers"
by = "Ines Calloway"
date = 2026-03-09

[[confirmation]]
key = "no-such-key"
edition = "1"
by = "Ines Calloway"
date = 2026-03-09
"#;

/// Places and words of the complaints about those rows.
const OF_MORE: &[(&str, &str)] = &[
    ("\"C\"\nport = 2\nbonding", "Two legs are named `C`"),
    ("2\nbonding = \"bonded\"", "Port 2 is taken"),
    ("\"bonded\"", "one of \"solid\", \"open\", \"linked\""),
    ("{ size = \"1/0 AWG\"", "neither `class` with `level`"),
    ("\"tape\" }", "one of \"flat-straps\""),
    (
        "\"Tomas Brandt\"\ndate = 2026-03-09\n\n[[owner_limit",
        "who decides windows",
    ),
    ("\"electrode_covers\"", "No check is named"),
    ("[[owner_limit]]", "has no bound"),
    ("\"no-such-key\"", "No value from memory has the key"),
];

#[test]
fn every_mistake_of_a_job_is_found_in_one_run_where_it_stands() {
    let mut text = JOBS[0].to_owned();
    for (from, to, ..) in MISTAKES {
        text = exchanged(&text, from, to);
    }
    text.push_str(MORE);
    let found = complaints(&text);
    let expected = MISTAKES
        .iter()
        .map(|(.., at, says)| (*at, *says))
        .chain(OF_MORE.iter().copied());
    for (at, says) in expected {
        let place = format!("job.toml:{} ", place(&text, at));
        assert!(
            found
                .iter()
                .any(|c| c.starts_with(&place) && c.contains(says)),
            "expected \"{says}\" at {place}; found {found:#?}"
        );
    }
    // Two more: the phase beside the unknown leg, and the thickness that the straps lost.
    assert_eq!(
        found.len(),
        MISTAKES.len() + OF_MORE.len() + 2,
        "{found:#?}"
    );
}

#[track_caller]
fn check(from: &str, to: &str, at: &str, says: &str) {
    let text = exchanged(JOBS[2], from, to);
    let found = complaints(&text);
    let place = format!("job.toml:{} ", place(&text, at));
    assert_eq!(found.len(), 1, "{found:#?}");
    assert!(
        found[0].starts_with(&place) && found[0].contains(says),
        "expected \"{says}\" at {place}; found {found:#?}"
    );
}

#[test]
fn work_that_is_not_handled_is_refused_in_words() {
    for kind in ["paper-lead", "three-core", "transition"] {
        check(
            "kind = \"straight\"",
            &format!("kind = \"{kind}\""),
            &format!("\"{kind}\""),
            "is not handled",
        );
    }
}

#[test]
fn a_joint_of_a_kind_that_no_one_knows_is_told_the_three() {
    check(
        "kind = \"straight\"",
        "kind = \"strait\"",
        "\"strait\"",
        "\"straight\", \"branch\" or \"separable\"",
    );
}

#[test]
fn mistakes_of_job_and_catalogue_are_found_together() {
    let job = exchanged(JOBS[2], "slack = \"30 in\"", "slack = 30");
    let catalogue = exchanged(
        DEMONSTRATION_TEXT,
        "length = \"210 mm\"",
        "length = \"210\"",
    );
    let catalogue = exchanged(
        &catalogue,
        "distance = \"3 mm\", minus = \"0 mm\", plus = \"2 mm\", place = \"step 4\"",
        "distance = \"3 mm\", minus = \"0 mm\", place = \"step 4\"",
    );
    let found = complaints_with(&job, &catalogue);
    let expected = [
        format!("demonstration:{} ", place(&catalogue, "\"210\"")),
        format!(
            "demonstration:{} ",
            place(
                &catalogue,
                "{ from = \"connector-mouth\", to = \"insulation-end\", distance = \"3 mm\""
            )
        ),
        format!("job.toml:{} ", place(&job, "30\nspare_cuts")),
    ];
    assert_eq!(found.len(), expected.len(), "{found:#?}");
    for (found, expected) in found.iter().zip(&expected) {
        assert!(found.starts_with(expected), "{found}, not at {expected}");
    }
}

#[test]
fn a_value_that_cannot_be_read_is_not_also_said_to_be_missing() {
    let cases = [
        ("level = 133", "level = 90", "90\ninsulation", "100 to 173"),
        (
            "jacket_least = \"70 mil\"",
            "jacket_least = \"70\"",
            "\"70\"",
            "no unit",
        ),
        (
            "class = \"15 kV\"",
            "class = \"16 kV\"",
            "\"16 kV\"",
            "one of",
        ),
        (
            "thickness = \"8 mil\"",
            "thickness = 8",
            "8, overlap",
            "bare whole number",
        ),
        ("id = \"A\"", "id = \"A 1\"", "\"A 1\"", "short name"),
    ];
    for (from, to, at, says) in cases {
        check(from, to, at, says);
    }
}
