//! The sweeps: every line of cases, examples and the starter, of their rows, and of examples made worse.
//!
//! A slow sweep takes only every n-th line, another line for each example, and every line with `JOINTWRIGHT_LONG=1`.

#![allow(
    clippy::disallowed_methods,
    reason = "the environment says whether the run is a long one"
)]

use super::bench::{Help, Line};
use super::exempt::is_exempt;
use super::runs::runs;
use super::worse::worse;
use super::{Bench, Depth};
use crate::cases::{CASES, Case, EXAMPLES, named};

const STARTER: Case = Case {
    slug: "starter",
    job: include_str!("../../../../../data/starter.toml"),
    parts: None,
};

fn is_long() -> bool {
    std::env::var_os("JOINTWRIGHT_LONG").is_some()
}

/// One line in `every`, beginning with another line for each example.
fn picked(lines: Vec<Vec<Line>>, every: usize, first: usize) -> Vec<Vec<Line>> {
    let every = if is_long() { 1 } else { every };
    lines
        .into_iter()
        .skip(first % every)
        .step_by(every)
        .collect()
}

/// Rulings that the deletion of these lines helps.
fn sweep(bench: &Bench, depth: Depth, out: &[Vec<Line>]) -> Vec<Help> {
    let before = bench
        .rulings(depth)
        .unwrap_or_else(|| panic!("{} is refused", bench.name));
    let helps = out
        .iter()
        .flat_map(|lines| bench.helped_by(lines, &before, depth));
    helps.filter(|help| !is_exempt(bench, help)).collect()
}

fn each_line(bench: &Bench) -> Vec<Vec<Line>> {
    let lines = bench.job_lines().into_iter().chain(bench.row_lines());
    lines.map(|line| vec![line]).collect()
}

/// Every reading.
fn each_reading(bench: &Bench) -> Vec<Vec<Line>> {
    let is_reading = |line: &Line| line.keys() == "reading" && line.path.len() == 2;
    let lines = bench.job_lines().into_iter().filter(is_reading);
    lines.map(|line| vec![line]).collect()
}

/// Every pair of lines that stand next to each other or a little apart: lines forgotten together are written together.
fn each_pair(bench: &Bench) -> Vec<Vec<Line>> {
    let lines: Vec<Line> = bench
        .job_lines()
        .into_iter()
        .chain(bench.row_lines())
        .collect();
    let of = |apart: usize| {
        let pairs = lines.iter().zip(lines.iter().skip(apart));
        pairs
            .filter(|(a, b)| !b.path.starts_with(&a.path))
            .map(|(a, b)| vec![a.clone(), b.clone()])
            .collect::<Vec<_>>()
    };
    [1, 2, 3, 7, 31].into_iter().flat_map(of).collect()
}

fn said(bench: &Bench, help: &Help) -> String {
    let lines: Vec<String> = help.lines.iter().map(Line::words).collect();
    format!(
        "{} without {}: {} of {}: {}",
        bench.name,
        lines.join(" and "),
        help.check,
        help.subject.words(),
        help.what
    )
}

/// Extent of a sweep over its examples.
struct Sweep {
    depth: Depth,
    out: fn(&Bench) -> Vec<Vec<Line>>,
    every: usize,
    n_lines_least: usize,
}

#[track_caller]
fn check(benches: impl Iterator<Item = Bench>, how: &Sweep) {
    let mut all = Vec::new();
    let mut n_lines = 0;
    for (first, bench) in benches.enumerate() {
        let out = picked((how.out)(&bench), how.every, first);
        n_lines += out.len();
        let helps = sweep(&bench, how.depth, &out);
        all.extend(helps.iter().map(|help| said(&bench, help)));
    }
    assert!(
        all.is_empty(),
        "{} of {n_lines}:\n{}",
        all.len(),
        all.join("\n")
    );
    assert!(n_lines >= how.n_lines_least, "{n_lines} lines taken out");
}

const UNSOLVED: Sweep = Sweep {
    depth: Depth::Unsolved,
    out: each_line,
    every: 1,
    n_lines_least: 1000,
};

fn cases(kind: &'static str) -> impl Iterator<Item = Bench> {
    CASES
        .iter()
        .filter(move |case| case.slug.starts_with(kind))
        .map(|case| Bench::of(*case))
}

#[test]
fn each_line_of_straight_joints() {
    check(cases("straight"), &UNSOLVED);
}

#[test]
fn each_line_of_branch_joints() {
    check(cases("branch"), &UNSOLVED);
}

#[test]
fn each_line_of_three_way_joints() {
    check(cases("three-way"), &UNSOLVED);
}

#[test]
fn each_line_of_four_way_joints() {
    check(cases("four-way"), &UNSOLVED);
}

#[test]
fn each_line_of_examples_and_of_the_starter() {
    let all = EXAMPLES.iter().copied().chain([STARTER]);
    check(all.map(|case| Bench::of(case).in_one_phase()), &UNSOLVED);
}

#[test]
fn lines_of_examples_made_worse() {
    let how = Sweep {
        every: 6,
        ..UNSOLVED
    };
    check(worse(), &how);
}

#[test]
fn lines_with_pressures_and_temperatures() {
    let how = Sweep {
        depth: Depth::WithoutFields,
        every: 12,
        n_lines_least: 20,
        ..UNSOLVED
    };
    check(
        [Bench::of(named("dock-straight-pressed"))].into_iter(),
        &how,
    );
}

#[test]
fn lines_of_examples_made_worse_with_pressures_and_temperatures() {
    let how = Sweep {
        depth: Depth::WithoutFields,
        every: 150,
        n_lines_least: 60,
        ..UNSOLVED
    };
    check(worse(), &how);
}

/// Leaving out a reading that is worse than the papers does not help: no check falls back to the papers and passes.
#[test]
fn readings_with_pressures_and_temperatures() {
    let how = Sweep {
        depth: Depth::WithoutFields,
        out: each_reading,
        every: 7,
        n_lines_least: 40,
    };
    check(worse(), &how);
    let every_one = Sweep {
        every: 1,
        n_lines_least: 8,
        ..how
    };
    check(
        worse().filter(|bench| bench.name == "an insulation that cannot be"),
        &every_one,
    );
}

#[test]
fn lines_with_fields() {
    let how = Sweep {
        depth: Depth::Whole,
        every: 150,
        n_lines_least: 2,
        ..UNSOLVED
    };
    check(
        [Bench::of(named("dock-straight-pressed"))].into_iter(),
        &how,
    );
}

#[test]
fn lines_and_pairs_of_runs_of_cable() {
    check(
        runs(),
        &Sweep {
            n_lines_least: 300,
            ..UNSOLVED
        },
    );
    let pairs = Sweep {
        out: each_pair,
        n_lines_least: 1000,
        ..UNSOLVED
    };
    check(runs(), &pairs);
}

#[test]
fn pairs_of_lines_of_examples_made_worse() {
    let how = Sweep {
        out: each_pair,
        every: 120,
        n_lines_least: 100,
        ..UNSOLVED
    };
    check(worse(), &how);
}

/// The same joint with one helping line is detected.
#[test]
fn a_line_that_helps_is_noticed() {
    let bench = Bench::of(named("three-way-straps-brush-of-the-other-metal"));
    let whole = bench.rulings(Depth::Unsolved).expect("it is read");
    // Without the check's rulings it looks as if the deletion had helped.
    let silenced: Vec<_> = whole
        .iter()
        .filter(|r| r.check != "consumable_metal")
        .cloned()
        .collect();
    let helped = super::helped(&whole, &silenced);
    assert!(
        helped
            .iter()
            .any(|(check, ..)| *check == "consumable_metal"),
        "{helped:?}"
    );
    assert_eq!(super::helped(&silenced, &silenced), []);
    // A new pass is a help too.
    let passing: Vec<_> = whole
        .iter()
        .cloned()
        .map(|mut r| {
            if r.check == "consumable_metal" {
                r.outcome = jointwright_joint::limit::Outcome::Pass;
            }
            r
        })
        .collect();
    let helped = super::helped(&whole, &passing);
    assert!(
        helped
            .iter()
            .any(|(check, ..)| *check == "consumable_metal"),
        "{helped:?}"
    );
}
