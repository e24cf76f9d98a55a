//! The mesher meshes random sections, or names the curves at fault.
#![allow(
    clippy::disallowed_methods,
    reason = "how many sections are tried is said by the environment, as for hostile input"
)]

use super::counts::Kinds;
use super::judge;
use super::random::{self, Chance};
use jointwright_numerics::mesh::{MeshError, MeshOptions, build, refine};
use jointwright_numerics::outline::{Outline, check};

/// Number of sections in each of the four tests below.
const N_SECTIONS: u64 = 500;
const N_SECTIONS_LONG: u64 = 5000;
/// Greatest share of refused sections, and least share of sections with each counted feature.
const REFUSED_MOST: f64 = 0.02;
const KIND_LEAST: f64 = 0.1;
/// Greatest share of invalid drawings, such as two curves that happen to coincide: they are skipped.
const FLAWED_MOST: f64 = 0.005;
/// Quadratic shape functions leave the range of their nodes by up to an eighth, and no discrete maximum principle
/// holds for them: on a coarse mesh the potential may exceed the electrodes' range by this share of it.
const OVERSHOOT_MOST: f64 = 0.125;
/// Where thin films of another permittivity meet, it may exceed it by more, at most by this share, if finer triangles bring it back.
const OVERSHOOT_RARE: f64 = 0.25;
/// Greatest share of such sections.
const RARE_MOST: f64 = 0.001;
/// Least range of potentials, V, of a section with a field: one that meets a single electrode has the same potential everywhere.
const RANGE_LEAST: f64 = 1e-6;
/// Greatest share of sections without a field.
const FIELDLESS_MOST: f64 = 0.01;

fn n_sections() -> u64 {
    if std::env::var_os("JOINTWRIGHT_LONG").is_some() {
        N_SECTIONS_LONG
    } else {
        N_SECTIONS
    }
}

/// Content of a refusal: two curves of the outline and the place.
fn names_a_pair(outline: &Outline, error: &MeshError) -> bool {
    match error {
        MeshError::Crossing { curves, place } => {
            curves.iter().all(|&curve| curve < outline.curves.len())
                && place.r.is_finite()
                && place.z.is_finite()
        }
        _ => false,
    }
}

/// Greatest share of the electrodes' range by which a potential leaves it.
fn overshoot(solved: &judge::Solved) -> f64 {
    (-solved.least).max(solved.greatest - 1.0)
}

/// Meshes, refines and solves the sections of a range of seeds.
#[track_caller]
fn check_sections(quarter: u64) {
    let n = n_sections();
    let mut kinds = Kinds::default();
    let mut refused = Vec::new();
    let (mut n_flawed, mut n_rare, mut n_without) = (0, 0, 0);
    for seed in quarter * n..(quarter + 1) * n {
        let sample = random::sample(seed);
        let flaws = check(&sample.outline);
        if !flaws.is_empty() {
            n_flawed += 1;
            continue;
        }
        kinds.add(Kinds::of(&sample));
        let mut mesh = match build(&sample.outline, &MeshOptions::default()) {
            Ok(mesh) => mesh,
            Err(error) => {
                assert!(
                    names_a_pair(&sample.outline, &error),
                    "seed {seed}: {error}"
                );
                refused.push(seed);
                continue;
            }
        };
        let mut chance = Chance::new(seed + 77);
        // Every fourth section is refined as well: that takes most of the time.
        let n_levels = if seed % 4 == 0 { 2 } else { 0 };
        for level in 0..=n_levels {
            if let Some(fault) = judge::fault(&sample.outline, &mesh) {
                panic!("seed {seed}, level {level}: {fault}");
            }
            let solved = judge::solve(&sample, &mesh)
                .unwrap_or_else(|error| panic!("seed {seed}, level {level}: {error}"));
            let has_field = solved.greatest - solved.least > RANGE_LEAST;
            n_without += usize::from(level == 0 && !has_field);
            assert!(solved.energy > 0.0 || !has_field, "seed {seed}");
            let by = overshoot(&solved);
            if by >= OVERSHOOT_MOST {
                n_rare += usize::from(level == 0);
                let all = vec![true; mesh.triangles.len()];
                let finer = refine(&sample.outline, &mesh, &all);
                let finer = judge::solve(&sample, &finer)
                    .unwrap_or_else(|error| panic!("seed {seed}, level {level}: {error}"));
                let finer = overshoot(&finer);
                assert!(
                    by < OVERSHOOT_RARE && finer < 0.8 * by,
                    "seed {seed}, level {level}: {by}, finer {finer}"
                );
            }
            if level < n_levels {
                let marks: Vec<bool> = (0..mesh.triangles.len()).map(|_| chance.is(0.05)).collect();
                mesh = refine(&sample.outline, &mesh, &marks);
            }
        }
    }
    assert!(
        n_flawed as f64 <= FLAWED_MOST * n as f64,
        "{n_flawed} drawings are none"
    );
    assert!(n_rare as f64 <= RARE_MOST * n as f64, "{n_rare} overshoot");
    assert!(
        n_without as f64 <= FIELDLESS_MOST * n as f64,
        "{n_without} without a field"
    );
    assert!(
        refused.len() as f64 <= REFUSED_MOST * n as f64,
        "refused: {refused:?}"
    );
    for (name, count) in [
        ("cusps", kinds.cusps),
        ("films of at most 0.1 mm", kinds.films),
        ("touching planes", kinds.touching_planes),
        ("equal radii", kinds.equal_radii),
    ] {
        assert!(
            count as f64 >= KIND_LEAST * n as f64,
            "{name}: {count} of {n}"
        );
    }
}

#[test]
fn random_sections_of_the_first_quarter_are_meshed_soundly() {
    check_sections(0);
}

#[test]
fn random_sections_of_the_second_quarter_are_meshed_soundly() {
    check_sections(1);
}

#[test]
fn random_sections_of_the_third_quarter_are_meshed_soundly() {
    check_sections(2);
}

#[test]
fn random_sections_of_the_last_quarter_are_meshed_soundly() {
    check_sections(3);
}

/// The mesh checks detect a fault: one corner moved across its neighbours.
#[test]
fn a_corner_moved_across_its_neighbours_is_seen() {
    let sample = random::sample(1);
    let mut mesh =
        build(&sample.outline, &MeshOptions::default()).unwrap_or_else(|error| panic!("{error}"));
    assert_eq!(judge::fault(&sample.outline, &mesh), None);
    let [a, b, _] = [0, 1, 2].map(|k| mesh.triangles[0][k] as usize);
    mesh.nodes.swap(a, b);
    assert!(judge::fault(&sample.outline, &mesh).is_some());
}

/// Two curves that cross are refused by name, so the counted refusals do occur.
#[test]
fn an_outline_whose_curves_cross_is_refused_by_name() {
    use crate::field::{line, region};
    use jointwright_numerics::outline::Point;
    let outline = Outline {
        points: vec![
            Point::new(1.0, 0.0),
            Point::new(2.0, 0.0),
            Point::new(2.0, 1.0),
            Point::new(1.0, 1.0),
        ],
        // The second and the fourth curve cross in the middle.
        curves: vec![
            line(0, 1, "one"),
            line(1, 3, "two"),
            line(3, 2, "three"),
            line(2, 0, "four"),
        ],
        regions: vec![region("bow tie", &[1, 2, 3, 4])],
    };
    assert!(!check(&outline).is_empty());
    let error = build(&outline, &MeshOptions::default()).expect_err("they cross");
    assert!(names_a_pair(&outline, &error), "{error}");
}
