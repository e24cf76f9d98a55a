//! Short circuits: the heating of metal and the capacity of parts, against the other standard's form; and inputs that are not stated.

mod weakest;

use crate::cases::{accepted, named, plan_of, read, texts};
use jointwright_joint::cable::Metal;
use jointwright_joint::fault::{Fault, melts_degc, shield_area_mm2};
use jointwright_joint::plan::Plan;
use jointwright_joint::survey::measured;
use jointwright_numerics::rating::short_circuit::SquareMetreForm;

const LARKSPUR: &str = "larkspur-three-way";
const QUARRY: &str = "quarry-four-way";

/// Short names of the four checks.
const CHECKS: [&str; 4] = [
    "conductor_fault_heat",
    "connector_fault",
    "shield_fault_heat",
    "shield_part_fault",
];

fn planned(example: &str, of_job: &[(&str, &str)], of_parts: &[(&str, &str)]) -> Plan {
    let case = named(example);
    let exchanged = |text: &str, pairs: &[(&str, &str)]| {
        pairs.iter().fold(text.to_owned(), |text, (from, to)| {
            assert!(text.contains(from), "{example} has no {from:?}");
            text.replace(from, to)
        })
    };
    let job = exchanged(case.job, of_job);
    let catalogues: Vec<(String, String)> = case
        .catalogues()
        .into_iter()
        .map(|(path, text)| (path, exchanged(&text, of_parts)))
        .collect();
    plan_of(&accepted(read(&job, &catalogues), example), example)
}

/// Outcomes, values and reasons of a check on a leg.
fn found(plan: &Plan, check: &str, leg: &str) -> Vec<(String, String)> {
    let is_it =
        |r: &&jointwright_joint::plan::RulingDoc| r.check == check && r.leg.as_deref() == Some(leg);
    let text = |r: &jointwright_joint::plan::RulingDoc| {
        let parts = [r.why.clone(), r.hint.clone()];
        parts.into_iter().flatten().collect::<Vec<_>>().join(" ")
    };
    let rulings = plan.rulings.iter().filter(is_it);
    rulings
        .map(|r| (r.ruling.name().to_owned(), text(r)))
        .collect()
}

fn fault(current_a: f64, time_s: f64) -> Fault {
    Fault {
        current_a,
        time_s,
        n_shots: 1,
    }
}

#[test]
fn the_other_standards_form_gives_nearly_the_same_temperature() {
    // IEC's form for a current gives back its temperatures here, within the difference of the two families of constants.
    let forms = [
        (Metal::Copper, SquareMetreForm::COPPER),
        (Metal::Aluminium, SquareMetreForm::ALUMINIUM),
    ];
    for (metal, form) in forms {
        for (area_mm2, time_s) in [(16.0, 0.2), (107.2, 0.5), (240.0, 1.0)] {
            let amperes = form
                .current_a(area_mm2 * 1e-6, 90.0, 250.0, time_s)
                .unwrap();
            let reached = fault(amperes, time_s).heated_degc(metal, area_mm2, 90.0);
            assert!(
                reached > 250.0 && reached < 250.0 + 0.05 * 160.0,
                "{metal:?} {reached}"
            );
            // A conductor with nine tenths of the area gets far hotter.
            let thinner = fault(amperes, time_s).heated_degc(metal, 0.9 * area_mm2, 90.0);
            assert!(thinner > 285.0, "{metal:?} {thinner}");
        }
    }
}

#[test]
fn more_current_time_or_heat_before_is_never_cooler() {
    for metal in [Metal::Copper, Metal::Aluminium] {
        let reached = |amperes, time, from| fault(amperes, time).heated_degc(metal, 95.0, from);
        let first = reached(9e3, 0.5, 90.0);
        assert!(reached(9.1e3, 0.5, 90.0) > first);
        assert!(reached(9e3, 0.51, 90.0) > first);
        assert!(reached(9e3, 0.5, 91.0) > first + 1.0);
        assert_eq!(reached(0.0, 0.5, 90.0), 90.0);
    }
}

#[test]
fn shots_add_up() {
    let twice = planned(LARKSPUR, &[("reclosing = 0", "reclosing = 1")], &[]);
    let longer = planned(
        LARKSPUR,
        &[
            ("\nfault_time = \"0.5 s\"", "\nfault_time = \"1 s\""),
            (
                "shield_fault_time = \"0.5 s\"",
                "shield_fault_time = \"1 s\"",
            ),
        ],
        &[],
    );
    for check in CHECKS {
        let values = |plan: &Plan| -> Vec<String> {
            let of_check = plan.rulings.iter().filter(|r| r.check == check);
            of_check.map(|r| format!("{:?}", r.value)).collect()
        };
        assert_eq!(values(&twice), values(&longer), "{check}");
        let once = planned(LARKSPUR, &[], &[]);
        assert_ne!(values(&twice), values(&once), "{check}");
    }
}

#[test]
fn the_tape_of_one_leg_is_judged_between_a_helix_and_a_tube() {
    // A tape of 5 mil by 1 1/2 in alone melts under 2 kA; with all turns in contact it keeps to 200 degC.
    let open = found(&planned(QUARRY, &[], &[]), "shield_fault_heat", "C");
    assert_eq!(open[0].0, "not-judged");
    assert!(
        open[0].1.contains("where it melts") && open[0].1.contains("Ask: "),
        "{open:?}"
    );
    let whole = [("shield_fault = \"2 kA\"", "shield_fault = \"5 kA\"")];
    let burnt = found(&planned(QUARRY, &whole, &[]), "shield_fault_heat", "C");
    assert_eq!(burnt[0].0, "fail");
    let own = [("id = \"C\"\n", "id = \"C\"\nshield_fault = \"0.4 kA\"\n")];
    let less = planned(QUARRY, &own, &[]);
    assert_eq!(found(&less, "shield_fault_heat", "C")[0].0, "pass");
    // A share that one leg states is its own.
    let before = found(&planned(QUARRY, &[], &[]), "shield_part_fault", "A");
    assert_eq!(found(&less, "shield_part_fault", "A"), before);
    let narrow = [("width = \"1 1/2 in\", ", "")];
    let unknown = found(&planned(QUARRY, &narrow, &[]), "shield_fault_heat", "C");
    assert_eq!(unknown[0].0, "not-judged");
    assert!(unknown[0].1.contains("width"), "{unknown:?}");
}

#[test]
fn what_is_not_stated_is_asked_for_and_nothing_passes_for_want_of_it() {
    let of_job = [
        ("\nfault = \"10 kA\"", "duty.fault", &CHECKS[..2]),
        ("\nfault_time = \"0.5 s\"", "duty.fault_time", &CHECKS[..2]),
        ("reclosing = 0\n", "duty.reclosing", &CHECKS[..]),
        (
            "clearing_time = \"0.5 s\"\n",
            "system.clearing_time",
            &CHECKS[2..],
        ),
        (
            "\nshield_fault = \"2 kA\"",
            "duty.shield_fault",
            &CHECKS[2..],
        ),
        (
            "shield_fault_time = \"0.5 s\"\n",
            "duty.shield_fault_time",
            &CHECKS[2..],
        ),
        (
            "conductor_greatest = \"130 degC\"\n",
            "duty.conductor_greatest",
            &["conductor_fault_heat", "shield_fault_heat"][..],
        ),
        (
            " metal = \"copper\", fault_greatest",
            "shield.metal",
            &["shield_fault_heat"][..],
        ),
        (
            " fault_greatest = \"200 degC\",",
            "shield.fault_greatest",
            &["shield_fault_heat"][..],
        ),
    ];
    for (line, name, checks) in of_job {
        let instead = if line.ends_with("fault_greatest") {
            " fault_greatest"
        } else {
            ""
        };
        let plan = planned(LARKSPUR, &[(line, instead)], &[]);
        for check in checks {
            let rulings = found(&plan, check, "A");
            assert!(!rulings.is_empty(), "{check} without {name}");
            for (outcome, why) in rulings {
                assert_eq!(outcome, "not-judged", "{check} without {name}");
                assert!(why.contains(name), "{check}: {why}");
            }
        }
    }
    let of_parts = [
        (
            "conductor_fault_greatest = \"250 degC\"\n",
            "conductor_fault_heat",
        ),
        (
            "fault = \"25 kA\"\nfault_time = \"0.5 s\"\n",
            "connector_fault",
        ),
        (
            "fault = \"4 kA\"\nfault_time = \"0.5 s\"\n",
            "shield_part_fault",
        ),
    ];
    for (lines, check) in of_parts {
        let plan = planned(LARKSPUR, &[], &[(lines, "")]);
        let rulings = found(&plan, check, "A");
        assert_eq!(rulings.len(), 1, "{check}");
        assert_eq!(rulings[0].0, "not-judged", "{check}");
        assert!(rulings[0].1.contains("Ask: "), "{check}: {rulings:?}");
    }
}

#[test]
fn metal_that_would_be_hotter_than_molten_is_said_to_melt() {
    let many = [("\nfault = \"10 kA\"", "\nfault = \"400 kA\"")];
    let (outcome, why) =
        found(&planned(LARKSPUR, &many, &[]), "conductor_fault_heat", "B").remove(0);
    assert_eq!(outcome, "fail");
    assert!(why.contains("where it melts"), "{why}");
    // A row that permits a higher temperature still does not permit melting.
    let row = [(
        "conductor_fault_greatest = \"250 degC\"",
        "conductor_fault_greatest = \"900 degC\"",
    )];
    let molten = found(&planned(LARKSPUR, &many, &row), "conductor_fault_heat", "B").remove(0);
    assert_eq!(molten.0, "fail");
    assert!(
        why.contains(&format!("{:.0}", melts_degc(Metal::Aluminium))),
        "{why}"
    );
}

#[test]
fn a_current_without_its_time_is_a_complaint() {
    let case = named(LARKSPUR);
    for (from, to, says) in [
        (
            "fault = \"4 kA\"\nfault_time = \"0.5 s\"\n",
            "fault = \"4 kA\"\n",
            "given without `fault_time`",
        ),
        (
            "fault = \"4 kA\"\nfault_time = \"0.5 s\"\n",
            "fault_time = \"0.5 s\"\n",
            "given without `fault`",
        ),
        ("fault = \"4 kA\"\n", "fault = \"0 kA\"\n", "more than 0"),
    ] {
        let catalogues: Vec<(String, String)> = case
            .catalogues()
            .into_iter()
            .map(|(path, text)| (path, text.replacen(from, to, 1)))
            .collect();
        let complaints = texts(&read(case.job, &catalogues).err().unwrap_or_default());
        assert!(
            complaints.iter().any(|c| c.message.contains(says)),
            "{says}: {complaints:?}"
        );
    }
}

#[test]
fn what_cannot_be_is_not_judged() {
    // Example, edits, check, words of the ruling.
    type Impossible = (
        &'static str,
        &'static [(&'static str, &'static str)],
        &'static str,
        &'static str,
    );
    let jobs: [Impossible; 5] = [
        (
            LARKSPUR,
            &[(
                "conductor_greatest = \"130 degC\"",
                "conductor_greatest = \"-250 degC\"",
            )],
            "conductor_fault_heat",
            "colder than the place",
        ),
        (
            LARKSPUR,
            &[(
                "conductor_greatest = \"130 degC\"",
                "conductor_greatest = \"5 degC\"",
            )],
            "shield_fault_heat",
            "colder than the place",
        ),
        (
            LARKSPUR,
            // A contradiction on an earthed system is refused.
            &[
                ("earthing = \"solid\"", "earthing = \"isolated\""),
                ("clearing_time = \"0.5 s\"", "clearing_time = \"3 s\""),
            ],
            "shield_fault_heat",
            "system.clearing_time",
        ),
        (
            LARKSPUR,
            &[("overlap = \"375 mil\"", "overlap = \"3750 mil\"")],
            "shield_fault_heat",
            "cannot be",
        ),
        (
            QUARRY,
            &[("width = \"1 1/2 in\"", "width = \"15 in\"")],
            "shield_fault_heat",
            "cannot be",
        ),
    ];
    for (example, edits, check, says) in jobs {
        let rulings = found(&planned(example, edits, &[]), check, "C");
        assert!(!rulings.is_empty(), "{check}: {says}");
        for (outcome, why) in rulings {
            assert_eq!(outcome, "not-judged", "{check}: {why}");
            assert!(why.contains(says), "{check}: {why}");
        }
    }
}

#[test]
fn wires_that_were_not_counted_carry_nothing() {
    let current = ("shield_fault = \"2 kA\"", "shield_fault = \"2.2 kA\"");
    let all = planned(LARKSPUR, &[current], &[]);
    assert_eq!(found(&all, "shield_fault_heat", "B")[0].0, "pass");
    // Six of eleven: 24 653 cmil from 130 degC by 2.2 kA in 0.5 s, 262 degC.
    let six = planned(
        LARKSPUR,
        &[current, ("shield_elements = 11", "shield_elements = 6")],
        &[],
    );
    let rulings = found(&six, "shield_fault_heat", "B");
    assert_eq!(rulings[0].0, "fail");
    assert!(rulings[0].1.contains("262 degC"), "{rulings:?}");
}

#[test]
fn the_very_short_circuit_that_a_paper_gives_is_no_excess() {
    // 25 kA three times for 0.1 s, and 25 kA for 0.3 s.
    let job = [
        ("\nfault = \"10 kA\"", "\nfault = \"25 kA\""),
        ("\nfault_time = \"0.5 s\"", "\nfault_time = \"0.1 s\""),
        ("reclosing = 0", "reclosing = 2"),
    ];
    let row = [(
        "fault = \"25 kA\"\nfault_time = \"0.5 s\"",
        "fault = \"25 kA\"\nfault_time = \"0.3 s\"",
    )];
    let rulings = found(&planned(LARKSPUR, &job, &row), "connector_fault", "A");
    assert!(
        rulings.iter().all(|(outcome, _)| outcome == "pass"),
        "{rulings:?}"
    );
    // A limit between the computed 211.76 and the printed 211.8 degC is kept.
    let limit = [(
        "conductor_fault_greatest = \"250 degC\"",
        "conductor_fault_greatest = \"211.77 degC\"",
    )];
    let rulings = found(&planned(LARKSPUR, &[], &limit), "conductor_fault_heat", "B");
    assert_eq!(rulings[0].0, "pass", "{rulings:?}");
}

/// Leg B of larkspur with a tape beside its wires.
const TAPE_WITH_WIRES: [(&str, &str); 2] = [
    (
        "shield = { kind = \"concentric-wires\", metal = \"copper\", fault_greatest = \"200 degC\", count = 11, diameter = \"64.1 mil\" }",
        "shield = { kind = \"tape-with-wires\", metal = \"copper\", fault_greatest = \"200 degC\", count = 11, diameter = \"64.1 mil\", width = \"1 1/2 in\", thickness = \"5 mil\", overlap_percent = 25 }",
    ),
    ("demo-bond-wires", "demo-bond-tape-wires"),
];

/// Wires of 22.9016 mm2, a tape of 4.8387 mm2 that goes 3.58177 times as far, a tube of 16.6420 mm2.
#[test]
fn a_tape_with_wires_bears_between_its_helix_and_its_tube_with_the_wires_counted() {
    let case = named(LARKSPUR);
    let job = TAPE_WITH_WIRES
        .iter()
        .fold(case.job.to_owned(), |text, (from, to)| {
            text.replace(from, to)
        });
    let order = accepted(read(&job, &case.catalogues()), LARKSPUR);
    let leg = &order.job.legs[1];
    let cable = measured(&order.job, leg).0;
    let check = |n: Option<u32>, expected: (f64, f64)| {
        let (least, greatest) = shield_area_mm2(&cable, n).unwrap();
        assert!((least - expected.0).abs() < 1e-4, "{least}");
        assert!((greatest - expected.1).abs() < 1e-4, "{greatest}");
    };
    check(None, (24.252_54, 39.543_58));
    check(Some(11), (24.252_54, 39.543_58));
    check(Some(7), (15.924_68, 31.215_72));
}

#[test]
fn a_short_circuit_that_a_tape_helps_to_bear_is_not_judged_on_the_tape() {
    // Wires alone, 22.90 mm2, and with tape, 24.25 to 39.54 mm2.
    let outcome = |kilo_amperes: &str| {
        let current = format!("\nshield_fault = \"{kilo_amperes} kA\"");
        let mut edits = TAPE_WITH_WIRES.to_vec();
        edits.push(("\nshield_fault = \"2 kA\"", &current));
        let plan = planned(LARKSPUR, &edits, &[]);
        let all = found(&plan, "shield_fault_heat", "B");
        assert_eq!(all.len(), 1, "{all:?}");
        all[0].0.clone()
    };
    assert_eq!(outcome("2"), "pass");
    assert_eq!(outcome("3.4"), "not-judged");
    assert_eq!(outcome("7"), "fail");
}

#[test]
fn wires_beside_a_tape_that_nobody_has_counted_are_asked_for() {
    let mut edits = TAPE_WITH_WIRES.to_vec();
    edits.push(("  { leg = \"B\", phase = 2, shield_elements = 11 },\n", ""));
    let plan = planned(LARKSPUR, &edits, &[]);
    let all = found(&plan, "shield_fault_heat", "B");
    assert_eq!(all[0].0, "not-judged");
    assert!(all[0].1.contains("B2"), "{all:?}");
}
