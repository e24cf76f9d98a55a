//! A contradiction in a job, or a zero that cannot be zero, is refused at its line.

use crate::cases::{lines, named, read, texts};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_wording::ComplaintText;

const LARKSPUR: &str = "larkspur-three-way";

fn edited(text: &str, edits: &[(&str, &str)]) -> String {
    edits.iter().fold(text.to_owned(), |text, (from, to)| {
        assert!(text.contains(from), "nothing to edit: {from}");
        text.replacen(from, to, 1)
    })
}

fn refused(of_job: &[(&str, &str)], of_rows: &[(&str, &str)]) -> Vec<ComplaintText> {
    let job = edited(named(LARKSPUR).job, of_job);
    let rows = edited(DEMONSTRATION_TEXT, of_rows);
    match read(&job, &[(DEMONSTRATION.to_owned(), rows)]) {
        Ok(_) => Vec::new(),
        Err(complaints) => texts(&complaints),
    }
}

/// Checks for one complaint, on the line of the job that holds these words, that says so.
#[track_caller]
fn check(of_job: &[(&str, &str)], at: &str, says: &str) {
    let complaints = refused(of_job, &[]);
    let [complaint] = complaints.as_slice() else {
        panic!("{at}: {}", lines(&complaints));
    };
    assert!(complaint.message.contains(says), "{complaint}");
    let job = edited(named(LARKSPUR).job, of_job);
    let line = job.lines().nth(complaint.line - 1).unwrap_or_default();
    assert!(line.contains(at), "{complaint} stands on `{line}`");
}

#[test]
fn the_job_as_it_stands_is_read() {
    assert_eq!(refused(&[], &[]), []);
}

#[test]
fn an_emergency_below_the_load_is_refused() {
    let says = "is below the load all the time";
    check(
        &[("emergency = \"420 A\"", "emergency = \"300 A\"")],
        "emergency = \"300 A\"",
        says,
    );
    check(
        &[("emergency = \"260 A\"", "emergency = \"190 A\"")],
        "emergency = \"190 A\"",
        says,
    );
    check(
        &[(
            "load = \"200 A\"\nemergency = \"260 A\"\n",
            "load = \"430 A\"\n",
        )],
        "load = \"430 A\"",
        says,
    );
    assert_eq!(
        refused(&[("emergency = \"260 A\"", "emergency = \"200 A\"")], &[]),
        []
    );
}

#[test]
fn more_current_in_a_shield_than_in_the_conductor_is_refused() {
    let says = "is above that in the conductor";
    check(
        &[("shield_fault = \"2 kA\"", "shield_fault = \"10.1 kA\"")],
        "shield_fault = \"10.1 kA\"",
        says,
    );
    check(
        &[("id = \"B\"\n", "id = \"B\"\nshield_fault = \"11 kA\"\n")],
        "shield_fault = \"11 kA\"",
        says,
    );
    assert_eq!(
        refused(
            &[("shield_fault = \"2 kA\"", "shield_fault = \"10 kA\"")],
            &[]
        ),
        []
    );
}

#[test]
fn a_fault_to_earth_that_ends_before_it_is_cleared_is_refused() {
    let says = "for as long as 0.5 s by `clearing_time`";
    check(
        &[(
            "shield_fault_time = \"0.5 s\"",
            "shield_fault_time = \"0.4 s\"",
        )],
        "shield_fault_time",
        says,
    );
    let to_earth = ("fault_kind = \"three-phase\"", "fault_kind = \"to-earth\"");
    let short = ("\nfault_time = \"0.5 s\"", "\nfault_time = \"0.1 s\"");
    check(&[to_earth, short], "fault_time = \"0.1 s\"", says);
    // A fault between the phases is cleared by other relays.
    assert_eq!(refused(&[short], &[]), []);
    // One fault to earth of an isolated system carries little; the stated current belongs to two faults.
    let isolated = [
        ("earthing = \"solid\"", "earthing = \"isolated\""),
        ("clearing_time = \"0.5 s\"", "clearing_time = \"5 h\""),
    ];
    assert_eq!(refused(&isolated, &[]), []);
}

#[test]
fn nothing_is_refused_where_nothing_cannot_be() {
    let is_nothing = "is nothing; the format expects";
    for (from, to) in [
        ("frequency = \"60 Hz\"", "frequency = \"0 Hz\""),
        ("clearing_time = \"0.5 s\"", "clearing_time = \"0 s\""),
        ("room_error = \"1/8 in\"", "room_error = \"0 in\""),
        ("\nfault = \"10 kA\"", "\nfault = \"0 A\""),
        ("emergency_time = \"4 h\"", "emergency_time = \"0 h\""),
        ("bend_radius = \"24 in\"", "bend_radius = \"0 in\""),
        ("spacing = \"8 in\"", "spacing = \"0 in\""),
        ("run_length = \"900 ft\"", "run_length = \"0 ft\""),
        ("area = \"35 mm2\"", "area = \"0 mm2\""),
        ("diameter = \"64.1 mil\"", "diameter = \"0 mil\""),
        (
            "conductor_screen_least = \"12 mil\"",
            "conductor_screen_least = \"0 mil\"",
        ),
        ("error = \"0.5 mohm\"", "error = \"0 mohm\""),
        ("error = \"0.1 mm\", by", "error = \"0 mm\", by"),
        ("length_before = \"60.0 mm\"", "length_before = \"0 mm\""),
    ] {
        check(&[(from, to)], to.trim_start(), is_nothing);
    }
    for (from, to) in [
        ("uncertainty = \"0.1 mm\"", "uncertainty = \"0 mm\""),
        (
            "system_greatest = \"15.5 kV\"",
            "system_greatest = \"0 kV\"",
        ),
        ("\nlength = \"210 mm\"", "\nlength = \"0 mm\""),
    ] {
        let complaints = refused(&[], &[(from, to)]);
        let is_said = complaints.iter().any(|c| c.message.contains(is_nothing));
        assert!(is_said, "{to}: {}", lines(&complaints));
    }
}

#[test]
fn a_label_cannot_print_a_date_and_none() {
    check(
        &[(
            "no_expiry = true }",
            "no_expiry = true, expires = 2027-01-01 }",
        )],
        "expires = 2027-01-01",
        "prints no expiry date, and it prints 2027-01-01",
    );
}

#[test]
fn other_cable_is_refused_by_its_name_and_nothing_is_missed_of_it() {
    let says = "engineer";
    let whole = "insulation = \"epr\"";
    for (to, message) in [
        (
            "insulation = \"epr\"\ncores = 3",
            "A cable with 3 cores is not handled",
        ),
        (
            "insulation = \"epr\"\nbelted = true",
            "A belted cable is not handled",
        ),
        (
            "insulation = \"paper\"",
            "A cable insulated with paper is not handled",
        ),
    ] {
        let complaints = refused(&[(whole, to)], &[]);
        let [complaint] = complaints.as_slice() else {
            panic!("{to}: {}", lines(&complaints));
        };
        assert!(complaint.message.contains(message), "{complaint}");
        assert!(complaint.hint.contains(says), "{complaint}");
    }
    let bare = [
        (whole, "insulation = \"paper\""),
        (
            "shield = { kind = \"flat-straps\", metal = \"copper\", fault_greatest = \"200 degC\", count = 7, width = \"175 mil\", thickness = \"25 mil\" }",
            "",
        ),
    ];
    assert_eq!(refused(&bare, &[]).len(), 1);
    assert_eq!(
        refused(
            &[(whole, "insulation = \"epr\"\ncores = 1\nbelted = false")],
            &[]
        ),
        []
    );
}

const STRAPS: &str = "shield = { kind = \"flat-straps\", metal = \"copper\", fault_greatest = \"200 degC\", count = 7, width = \"175 mil\", thickness = \"25 mil\" }";

#[test]
fn a_sheath_for_a_shield_is_refused_by_its_name_with_what_to_do() {
    for (to, metal, says) in [
        ("lead-sheath", "lead", "qualified for lead"),
        ("Lead sheath", "lead", "lead poisons"),
        ("aluminium-sheath", "aluminium", "cut, flared and bonded"),
        ("copper-sheath", "copper", "cut, flared and bonded"),
    ] {
        let shield = format!("shield = {{ kind = \"{to}\" }}");
        let complaints = refused(&[(STRAPS, &shield)], &[]);
        let [complaint] = complaints.as_slice() else {
            panic!("{to}: {}", lines(&complaints));
        };
        let message = format!("whose metallic shield is a sheath of {metal} is not handled");
        assert!(complaint.message.contains(&message), "{complaint}");
        for says in [says, "engineer"] {
            assert!(complaint.hint.contains(says), "{complaint}");
        }
    }
}

#[test]
fn a_tape_with_wires_says_both_and_nothing_of_another_shield() {
    let whole = "kind = \"tape-with-wires\", count = 11, diameter = \"64 mil\", thickness = \"5 mil\", overlap_percent = 25";
    let refusals = |text: &str| {
        let shield = format!("shield = {{ {text} }}");
        refused(&[(STRAPS, &shield)], &[])
    };
    assert_eq!(refusals(whole), []);
    assert_eq!(
        refusals(&format!("{whole}, width = \"1 1/2 in\", lay = \"10 in\"")),
        []
    );
    for field in [
        "count = 11, ",
        "diameter = \"64 mil\", ",
        "thickness = \"5 mil\", ",
    ] {
        let name = field.split(' ').next().unwrap_or_default();
        let complaints = refusals(&whole.replace(field, ""));
        assert_eq!(complaints.len(), 1, "{}", lines(&complaints));
        let message = format!("A shield of tape-with-wires has no `{name}`");
        assert!(complaints[0].message.contains(&message));
    }
    let foreign = refusals(&format!("{whole}, overlap = \"9 mm\""));
    assert_eq!(foreign.len(), 1, "{}", lines(&foreign));
}
