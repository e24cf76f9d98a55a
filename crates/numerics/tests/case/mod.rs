//! Section cases: the published ones are read, and every fault is reported with its place.

mod complaints;
mod heats;
mod hostile;
mod meaning;
mod sense;
mod tubes;

use jointwright_numerics::case::{Case, Complaint, read, read_question};

/// Text of a published case.
macro_rules! published {
    ($name:literal) => {
        (
            $name,
            include_str!(concat!(
                "../../../../tests/published/field-sections/",
                $name,
                ".case.json"
            )),
        )
    };
}

/// The published electric cases, by name.
pub(crate) const PUBLISHED: &[(&str, &str)] = &[
    published!("A1a"),
    published!("A2-R0.25"),
    published!("A2-air0.3"),
    published!("A2-grease0.3"),
    published!("A3-arc40"),
    published!("A4-15"),
    published!("A5-15-long5"),
    published!("A5-15-shift+10"),
    published!("A6-linear-1e-06"),
    published!("A6-tube-air"),
];

/// A coaxial slice of two layers, invented.
///
/// ```text
///   1 o--2--o 2--5--o 4
///     | in  |  out  |       potentials on curves 1 and 6, material changes at curve 3
///     1     3       6
///   0 o--4--o 3--7--o 5
/// ```
pub(crate) const SLICE: &str = r#"{
 "case": "slice",
 "about": "invented",
 "units": {"length": "mm", "potential": "kV"},
 "points": [[6, 0], [6, 20], [12, 20], [12, 0], [30, 20], [30, 0]],
 "curves": [
  {"from": 0, "to": 1, "tag": "cond"},
  {"from": 1, "to": 2, "tag": "interior"},
  {"from": 2, "to": 3, "tag": "iface"},
  {"from": 3, "to": 0, "tag": "interior"},
  {"from": 2, "to": 4, "tag": "interior"},
  {"from": 4, "to": 5, "tag": "outer"},
  {"from": 5, "to": 3, "tag": "lower"}
 ],
 "regions": [
  {"name": "in", "material": "pe", "boundary": [1, 2, 3, 4]},
  {"name": "out", "material": "rubber", "boundary": [-3, 5, 6, 7]}
 ],
 "materials": {"pe": {"eps_r": 2.3}, "rubber": {"eps_r": 2.8, "sigma_s_per_m": 1e-9}},
 "potentials_kv": {"cond": 8.7, "outer": 0},
 "leave_out": [{"at": [6, 20], "radius": 0.5}],
 "wanted": [
  {"name": "C", "kind": "capacitance"},
  {"name": "peak", "kind": "peak-in-region", "region": "in"},
  {"name": "rim", "kind": "peak-on-curve", "tag": "cond"},
  {"name": "along", "kind": "peak-tangential-on-line", "from": [12, 1], "to": [12, 19]},
  {"name": "phi", "kind": "potential-at", "at": [12, 10]},
  {"name": "E", "kind": "field-at", "at": [9, 7]},
  {"name": "Ez", "kind": "axial-field-at", "at": [12, 7]}
 ]
}"#;

/// Text with one passage replaced; the passage must occur in it.
#[track_caller]
pub(crate) fn exchanged(text: &str, from: &str, to: &str) -> String {
    assert!(text.contains(from), "the text has no `{from}`");
    text.replacen(from, to, 1)
}

#[track_caller]
pub(crate) fn case(text: &str) -> Case {
    match read(text) {
        Ok(case) => case,
        Err(complaints) => panic!("{complaints:#?}"),
    }
}

/// Compares the complaints about a text with `path: words` expected of each, in order.
#[track_caller]
pub(crate) fn check_says(text: &str, expected: &[(&str, &str)]) -> Vec<Complaint> {
    let complaints = read_question(text).expect_err("something is wrong");
    let agree = complaints.len() == expected.len()
        && complaints
            .iter()
            .zip(expected)
            .all(|(said, (path, words))| said.path == *path && said.to_string().contains(words));
    assert!(agree, "said {complaints:#?}, expected {expected:#?}");
    complaints
}

/// The slice with one passage replaced.
#[track_caller]
pub(crate) fn check_slice(from: &str, to: &str, expected: &[(&str, &str)]) -> Vec<Complaint> {
    check_says(&exchanged(SLICE, from, to), expected)
}
