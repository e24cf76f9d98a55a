//! Sections solved elsewhere: `tests/published/field-sections/`; its SOURCE.md states the method and the accuracy.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "sections and answers are read from files"
)]

use jointwright_numerics::case::{self, Case, document};
use jointwright_numerics::field::{Options, Unwatched, Wanted, solve};
use std::path::{Path, PathBuf};

/// Tolerances of the main job for peaks and fields, and for a capacitance.
const FIELD_CLOSE: f64 = 5e-3;
const CAPACITANCE_CLOSE: f64 = 1e-4;
/// Least share of the answers whose true error is within three estimates.
const HOLDING_LEAST: f64 = 0.95;

/// Peaks at the rim of a disc about a singular place that miss their tolerance without saying so: known, not cured.
///
/// They lie between two arcs that part slowly, and beside the end of a conducting foil; both are off by less than 1 %.
const KNOWN_FAR: [&str; 5] = [
    "S10-crescent/Emax_body",
    "S10-crescent/Emax_coat",
    "S10-crescent/Emax_on_coat_face",
    "S10-crescent/Emax_on_defl_profile",
    "S19-floating-foils-0.1hz/Et_iface",
];

/// Options of the program, with a bound on size in place of one on time.
const OPTIONS: Options = Options {
    tolerance: 1e-3,
    capacitance_tolerance: 2e-5,
    n_unknowns_most: 60_000,
    work_most: usize::MAX,
};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/published/field-sections")
}

fn read(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// Name, value, and error of the value.
type Stored = (String, f64, f64);

/// Every electric section with its answers: name, case, list of (name, value, error of the value).
fn sections() -> Vec<(String, Case, Vec<Stored>)> {
    let mut paths: Vec<PathBuf> = std::fs::read_dir(folder())
        .unwrap_or_else(|error| panic!("{error}"))
        .map(|entry| entry.unwrap_or_else(|error| panic!("{error}")).path())
        .filter(|path| path.to_string_lossy().ends_with(".case.json"))
        .collect();
    paths.sort();
    paths
        .iter()
        .map(|path| {
            let text = read(path);
            let case = case::read(&text).unwrap_or_else(|complaints| {
                panic!("{}: {:?}", path.display(), complaints);
            });
            let beside = path
                .to_string_lossy()
                .replace(".case.json", ".answers.json");
            let answers: serde_json::Value = serde_json::from_str(&read(Path::new(&beside)))
                .unwrap_or_else(|error| panic!("{beside}: {error}"));
            let number = |value: &serde_json::Value| value.as_f64().unwrap_or(f64::NAN);
            let answers = answers["answers"]
                .as_array()
                .unwrap_or_else(|| panic!("{beside}: no answers"))
                .iter()
                .map(|answer| {
                    let name = answer["name"].as_str().unwrap_or_default().to_owned();
                    let error = answer["error_estimate"].as_f64().unwrap_or(0.0);
                    (name, number(&answer["value"]), error)
                })
                .collect();
            (case.name.clone(), case, answers)
        })
        .collect()
}

/// Result of a comparison.
struct Compared {
    /// Answers that miss their tolerance.
    far: Vec<String>,
    /// Answers that report that they did not settle.
    unsettled: Vec<String>,
    n: usize,
    n_holding: usize,
}

/// Compares all answers with the stored ones times a scale.
fn compare(scale: f64) -> Compared {
    let (mut far, mut unsettled, mut n, mut n_holding) = (Vec::new(), Vec::new(), 0, 0);
    for (name, case, expected) in sections() {
        let wanted: Vec<Wanted> = case
            .wanted
            .iter()
            .map(|asked| asked.wanted.clone())
            .collect();
        let solved = solve(&case.section, &wanted, &OPTIONS, &mut Unwatched)
            .unwrap_or_else(|error| panic!("{name}: {error}"));
        let run = case::Run {
            n_unknowns: solved.n_unknowns,
            seconds: case::SecondsDoc::default(),
            residuals: Vec::new(),
            cut_short: None,
        };
        let document = document(&case, &solved.answers, run);
        for answer in &document.answers {
            let Some((_, value, error)) = expected.iter().find(|(name, ..)| *name == answer.name)
            else {
                continue;
            };
            let value = scale * value;
            let off = (answer.value - value).abs();
            let close = if answer.kind == "capacitance" {
                CAPACITANCE_CLOSE
            } else {
                FIELD_CLOSE
            };
            n += 1;
            let estimate = answer.error_estimate.unwrap_or(0.0);
            n_holding += usize::from(off <= 3.0 * estimate + error);
            if !answer.settled {
                unsettled.push(format!("{name}/{}", answer.name));
            } else if off > close * value.abs() + error
                && !(scale == 1.0
                    && KNOWN_FAR.contains(&format!("{name}/{}", answer.name).as_str()))
            {
                far.push(format!(
                    "{name}/{}: {} for {value}",
                    answer.name, answer.value
                ));
            }
        }
    }
    Compared {
        far,
        unsettled,
        n,
        n_holding,
    }
}

#[test]
fn answers_agree_with_sections_solved_elsewhere_and_estimates_hold() {
    let Compared {
        far,
        unsettled,
        n,
        n_holding,
    } = compare(1.0);
    assert!(n > 190, "{n}");
    assert!(far.is_empty(), "{far:#?}");
    // Known and not cured: in a crescent of vanishing thickness, the greatest field at the rim of its disc does not settle.
    assert!(
        unsettled.iter().all(|name| name.starts_with("S10-")),
        "{unsettled:?}"
    );
    assert!(
        n_holding as f64 >= HOLDING_LEAST * n as f64,
        "{n_holding} of {n}"
    );
}

#[test]
fn answers_are_told_from_ones_a_hundredth_higher() {
    let Compared {
        far, n, n_holding, ..
    } = compare(1.01);
    assert!(far.len() > n - n / 20, "{} of {n}", far.len());
    assert!(n_holding < n / 2);
}
