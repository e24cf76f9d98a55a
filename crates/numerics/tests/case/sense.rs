//! Readable but meaningless numbers, and wanted numbers whose field is singular.

use super::{SLICE, case, check_says, check_slice, exchanged};
use jointwright_numerics::case::{Run, document};
use jointwright_numerics::field::{Cut, Options, Unwatched, Wanted, Watch, corners, solve};

/// A step of a conductor inside a shell: its corner at (2, 5) mm is seen through three quarters of a turn.
const STEP: &str = r#"{"case": "step", "about": "invented",
 "points": [[1, 0], [1, 5], [2, 5], [2, 9], [4, 9], [4, 0]],
 "curves": [{"from": 0, "to": 1, "tag": "inner"}, {"from": 1, "to": 2, "tag": "inner"}, {"from": 2, "to": 3, "tag": "inner"},
  {"from": 3, "to": 4, "tag": "interior"}, {"from": 4, "to": 5, "tag": "outer"}, {"from": 5, "to": 0, "tag": "interior"}],
 "regions": [{"name": "wall", "material": "pe", "boundary": [1, 2, 3, 4, 5, 6]}],
 "materials": {"pe": {"eps_r": 2.3}}, "potentials_kv": {"inner": 10, "outer": 0},
 "leave_out": [],
 "wanted": [{"name": "C", "kind": "capacitance"}, {"name": "E", "kind": "peak-in-region", "region": "wall"},
  {"name": "on inner", "kind": "peak-on-curve", "tag": "inner"}, {"name": "on outer", "kind": "peak-on-curve", "tag": "outer"},
  {"name": "along", "kind": "peak-tangential-on-line", "from": [2, 5], "to": [4, 5]},
  {"name": "phi", "kind": "potential-at", "at": [2.5, 5]}, {"name": "near", "kind": "field-at", "at": [2.5, 5]}]
}"#;

/// A square void in a slab, without conductors at its corners.
const VOID: &str = r#"{"case": "void", "about": "invented",
 "points": [[5, 0], [9, 0], [9, 6], [5, 6], [6, 2], [7, 2], [7, 3], [6, 3], [5, 2.5], [6, 2.5], [7, 2.5], [9, 2.5]],
 "curves": [{"from": 0, "to": 1, "tag": "low"}, {"from": 1, "to": 11, "tag": "interior"}, {"from": 11, "to": 2, "tag": "interior"},
  {"from": 2, "to": 3, "tag": "high"}, {"from": 3, "to": 8, "tag": "interior"}, {"from": 8, "to": 0, "tag": "interior"},
  {"from": 4, "to": 5, "tag": "rim"}, {"from": 5, "to": 10, "tag": "rim"}, {"from": 10, "to": 6, "tag": "rim"},
  {"from": 6, "to": 7, "tag": "rim"}, {"from": 7, "to": 9, "tag": "rim"}, {"from": 9, "to": 4, "tag": "rim"},
  {"from": 8, "to": 9, "tag": "cut"}, {"from": 10, "to": 11, "tag": "cut"}],
 "regions": [{"name": "void", "material": "air", "boundary": [7, 8, 9, 10, 11, 12]},
  {"name": "below", "material": "pe", "boundary": [1, 2, -14, -8, -7, -12, -13, 6]},
  {"name": "above", "material": "pe", "boundary": [3, 4, 5, 13, -11, -10, -9, 14]}],
 "materials": {"pe": {"eps_r": 2.3}, "air": {"eps_r": 1}}, "potentials_kv": {"low": 0, "high": 10},
 "wanted": [{"name": "in void", "kind": "peak-in-region", "region": "void"}, {"name": "C", "kind": "capacitance"}]
}"#;

fn refused(text: &str) -> Vec<String> {
    case(text).refused.into_iter().map(|one| one.name).collect()
}

#[test]
fn a_peak_at_a_sharp_corner_of_a_conductor_is_refused_by_name_and_place() {
    let read = case(STEP);
    assert_eq!(refused(STEP), ["E", "on inner", "along"]);
    for one in &read.refused {
        assert!(
            one.why.contains("(2, 5) mm") && one.why.contains("power -0.33"),
            "{}",
            one.why
        );
    }
    // A finite number is answered.
    let wanted: Vec<Wanted> = read
        .wanted
        .iter()
        .map(|asked| asked.wanted.clone())
        .collect();
    let solved = solve(&read.section, &wanted, &Options::default(), &mut Unwatched).unwrap();
    let answers = document(&read, &solved.answers, Run::default());
    let names: Vec<&str> = answers.answers.iter().map(|a| a.name.as_str()).collect();
    assert_eq!(names, ["C", "on outer", "phi", "near"]);
    assert!(answers.answers.iter().all(|a| a.settled && a.value > 0.0));
    assert_eq!(answers.refused.len(), 3);
    // The twin: with the corner left out, the peak lies on the disc's rim.
    let disc = exchanged(
        STEP,
        "\"leave_out\": []",
        "\"leave_out\": [{\"at\": [2, 5], \"radius\": 0.1}]",
    );
    assert_eq!(refused(&disc), Vec::<String>::new());
}

#[test]
fn a_corner_between_two_materials_has_no_bound_and_one_material_has_no_corner() {
    assert_eq!(refused(VOID), ["in void"]);
    let found = corners(&case(VOID).section);
    // All four corners have the same exponent, by symmetry of the wedges.
    assert_eq!(found.len(), 4);
    assert!(
        found
            .iter()
            .all(|c| (c.power - found[0].power).abs() < 1e-3 && c.power < 0.95)
    );
    let one = exchanged(VOID, "\"eps_r\": 1}", "\"eps_r\": 2.3}");
    assert_eq!(refused(&one), Vec::<String>::new());
}

#[test]
fn a_disc_over_everything_leaves_no_peak() {
    let disc = "\"leave_out\": [{\"at\": [6, 20], \"radius\": 0.5}]";
    let all = "\"leave_out\": [{\"at\": [12, 10], \"radius\": 90}]";
    let text = exchanged(SLICE, disc, all);
    let left = "cover every place at which the peak";
    check_says(&text, &[("wanted[2].tag", left), ("wanted[3].to", left)]);
    // Only the solve shows what remains of a region: the answer says that nothing does.
    let only = exchanged(
        &text,
        "  {\"name\": \"rim\", \"kind\": \"peak-on-curve\", \"tag\": \"cond\"},\n",
        "",
    );
    let line = "  {\"name\": \"along\", \"kind\": \"peak-tangential-on-line\", \"from\": [12, 1], \"to\": [12, 19]},\n";
    let mut read = case(&exchanged(&only, line, ""));
    // Without the axial field, which is zero here and never reaches a relative tolerance.
    read.wanted.truncate(4);
    let wanted: Vec<Wanted> = read
        .wanted
        .iter()
        .map(|asked| asked.wanted.clone())
        .collect();
    let solved = solve(&read.section, &wanted, &Options::default(), &mut Unwatched).unwrap();
    let answers = document(&read, &solved.answers, Run::default());
    assert_eq!(answers.refused[0].name, "peak");
    assert!(answers.answers.iter().all(|answer| answer.name != "peak"));
}

#[test]
fn a_permittivity_below_that_of_nothing_is_refused() {
    check_slice(
        "\"eps_r\": 2.3",
        "\"eps_r\": 0.5",
        &[("materials.pe.eps_r", "Found 0.5; expected a number from 1")],
    );
}

#[test]
fn a_line_out_of_the_section_is_refused_where_it_leaves() {
    check_slice(
        "\"to\": [12, 19]",
        "\"to\": [12, 25]",
        &[("wanted[3].to", "leaves the section at (12, 20")],
    );
}

#[test]
fn what_lies_a_hair_beside_the_axis_is_refused() {
    let inner = "\"points\": [[6, 0], [6, 20],";
    let hair = "\"points\": [[1e-9, 0], [1e-9, 20],";
    let text = exchanged(SLICE, inner, hair);
    let text = exchanged(&text, "\"at\": [6, 20]", "\"at\": [0, 20]");
    let words = "from the axis, less than";
    check_says(&text, &[("points[0]", words), ("points[1]", words)]);
}

#[test]
fn a_conductor_on_the_axis_is_refused() {
    let inner = "\"points\": [[6, 0], [6, 20],";
    let text = exchanged(SLICE, inner, "\"points\": [[0, 0], [0, 20],");
    check_says(&text, &[("curves[0]", "a wire without thickness")]);
}

#[test]
fn potentials_that_rounding_cannot_tell_apart_are_refused() {
    let words = "nothing beside rounding";
    for outer in ["8.700000000000001", "8.7000000001"] {
        let other = format!("\"outer\": {outer}");
        check_slice("\"outer\": 0", &other, &[("potentials_kv", words)]);
    }
    check_slice(
        "\"cond\": 8.7",
        "\"cond\": 1e-300",
        &[("potentials_kv", words)],
    );
}

#[test]
fn conductivities_and_frequencies_of_nothing_are_refused() {
    check_slice(
        "\"sigma_s_per_m\": 1e-9",
        "\"sigma_s_per_m\": 1e-300",
        &[(
            "materials.rubber.sigma_s_per_m",
            "no material is known below",
        )],
    );
    check_slice(
        "\"about\": \"invented\"",
        "\"about\": \"invented\", \"frequency_hz\": 1e-300",
        &[("frequency_hz", "thirty years")],
    );
}

/// Ends a solve after its first mesh.
struct Hurry;

impl Watch for Hurry {
    fn stage(&mut self, _: jointwright_numerics::field::Stage) {}
    fn may_go_on(&mut self) -> bool {
        false
    }
}

#[test]
fn what_was_cut_short_says_so_and_why() {
    let read = case(SLICE);
    // The potential and the field at places; no number that is zero.
    let wanted: Vec<Wanted> = read.wanted[4..6]
        .iter()
        .map(|asked| asked.wanted.clone())
        .collect();
    let cut = |options: &Options, watch: &mut dyn Watch| {
        let solved = solve(&read.section, &wanted, options, watch).unwrap();
        solved.cut_short
    };
    let few = Options {
        n_unknowns_most: 1,
        ..Options::default()
    };
    assert_eq!(cut(&Options::default(), &mut Hurry), Some(Cut::Watch));
    assert_eq!(cut(&few, &mut Unwatched), Some(Cut::Unknowns));
    let brief = Options {
        work_most: 1,
        ..Options::default()
    };
    assert_eq!(cut(&brief, &mut Unwatched), Some(Cut::Work));
    assert_eq!(cut(&Options::default(), &mut Unwatched), None);
    let run = Run {
        cut_short: Some(Cut::Work),
        ..Run::default()
    };
    let solved = solve(&read.section, &wanted, &few, &mut Unwatched).unwrap();
    let answers = document(&read, &solved.answers, run);
    assert!(answers.cut_short.is_some_and(|why| why.contains("work")));
}
