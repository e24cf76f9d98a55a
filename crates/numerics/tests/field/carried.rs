//! A section like the last one: the carried mesh gives the same result as a fresh mesh.

use super::{arc, insulator, is_near, line, region};
use jointwright_numerics::field::{
    Options, Regime, Reuse, Section, Unwatched, Wanted, prepare, solve,
};
use jointwright_numerics::outline::{Outline, Point};

/// Cable insulation whose screen ends in a rounded lip of 2 mm at a place along the axis, under a body.
fn section(edge: f64) -> Section {
    let places = [
        (6.65, 0.0),
        (6.65, 100.0),
        (11.1, 100.0),
        (11.1, 0.0),
        (30.0, 0.0),
        (30.0, 100.0),
        (13.1, 100.0),
        (13.1, edge + 2.0),
        (11.1, edge),
    ];
    let point = |(r, z): (f64, f64)| Point::new(r * 1e-3, z * 1e-3);
    // The lip is a quarter turn that meets the insulation at a right angle.
    let curves = vec![
        line(0, 1, "conductor"),
        line(1, 2, "plane"),
        line(2, 8, "screen"),
        line(8, 3, "interface"),
        line(3, 0, "plane"),
        line(3, 4, "plane"),
        line(4, 5, "outer"),
        line(5, 6, "plane"),
        line(6, 7, "screen"),
        arc(7, 8, point((11.1, edge + 2.0)), "screen"),
    ];
    Section {
        outline: Outline {
            points: places.map(point).to_vec(),
            curves,
            regions: vec![
                region("insulation", &[1, 2, 3, 4, 5]),
                region("body", &[-4, -10, -9, -8, -7, -6]),
            ],
        },
        materials: vec![insulator(2.3), insulator(2.8)],
        potentials: vec![
            ("conductor".to_owned(), 8.7e3),
            ("screen".to_owned(), 0.0),
            ("outer".to_owned(), 0.0),
        ],
        floating: Vec::new(),
        regime: Regime::Capacitive,
        leave_out: Vec::new(),
    }
}

fn wanted() -> Vec<Wanted> {
    vec![
        Wanted::Capacitance,
        Wanted::FieldAt {
            at: Point::new(11.6e-3, 40e-3),
            side: None,
        },
        Wanted::PotentialAt {
            at: Point::new(11.1e-3, 45e-3),
        },
    ]
}

const OPTIONS: Options = Options {
    tolerance: 1e-2,
    capacitance_tolerance: 2e-4,
    n_unknowns_most: 100_000,
    work_most: usize::MAX,
};

#[test]
fn a_moved_edge_is_carried_along_and_agrees_with_a_fresh_mesh() {
    let (mut prepared, first) = prepare(&section(50.0), &wanted(), &OPTIONS, &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error}"));
    for edge in [49.5, 50.5, 51.0, 48.5] {
        let (carried, reuse) = prepared
            .solve(&section(edge), &mut Unwatched)
            .unwrap_or_else(|error| panic!("{error}"));
        assert_eq!(reuse, Reuse::Carried, "{edge}");
        let fine = Options {
            tolerance: 1e-3,
            capacitance_tolerance: 1e-5,
            ..OPTIONS
        };
        let fresh = solve(&section(edge), &wanted(), &fine, &mut Unwatched)
            .unwrap_or_else(|error| panic!("{error}"));
        for ((carried, fresh), first) in carried
            .answers
            .iter()
            .zip(&fresh.answers)
            .zip(&first.answers)
        {
            let off = (carried.value - fresh.value).abs();
            assert!(
                off <= 3.0 * (carried.error_estimate + fresh.error_estimate),
                "{edge}: {carried:?} {fresh:?}"
            );
            // The edge did move: the first section has a different answer.
            assert!(
                !is_near(first.value, fresh.value, 2e-3),
                "{edge}: {first:?} {fresh:?}"
            );
        }
    }
}

/// Numbers near the lip, which depend on the finest triangles, and move with it.
fn near_the_lip(edge: f64) -> Vec<Wanted> {
    let point = |r: f64, z: f64| Point::new(r * 1e-3, z * 1e-3);
    vec![
        Wanted::PeakOnCurve {
            tag: "conductor".to_owned(),
        },
        Wanted::PeakTangentialOnLine {
            from: point(11.1, edge - 2.0),
            to: point(11.1, edge - 20.0),
        },
        Wanted::FieldAt {
            at: point(11.6, edge - 0.5),
            side: None,
        },
        Wanted::PotentialAt {
            at: point(11.1, edge - 5.0),
        },
    ]
}

#[expect(
    clippy::disallowed_methods,
    reason = "`./test --long` tells the tests by it to try many"
)]
fn is_long() -> bool {
    std::env::var_os("JOINTWRIGHT_LONG").is_some()
}

#[test]
fn a_similar_section_is_meshed_as_finely_at_once_and_its_errors_are_stated() {
    let base = 50.0;
    let (prepared, first) = prepare(
        &section(base),
        &near_the_lip(base),
        &OPTIONS,
        &mut Unwatched,
    )
    .unwrap_or_else(|error| panic!("{error}"));
    let fine = Options {
        tolerance: 1e-3,
        ..OPTIONS
    };
    let step = if is_long() { 1 } else { 10 };
    let (mut n, mut n_outside, mut n_open) = (0, 0, 0);
    for edge in (30..=75).step_by(step).map(f64::from) {
        let (_, like) = prepared
            .prepare_like(&section(edge), &near_the_lip(edge), &mut Unwatched)
            .unwrap_or_else(|error| panic!("{error}"));
        let fresh = solve(&section(edge), &near_the_lip(edge), &fine, &mut Unwatched)
            .unwrap_or_else(|error| panic!("{error}"));
        assert!(
            5 * like.n_unknowns <= 6 * first.n_unknowns,
            "{edge}: {} unknowns",
            like.n_unknowns
        );
        for (like, fresh) in like.answers.iter().zip(&fresh.answers) {
            let off = (like.value - fresh.value).abs();
            // A point in a triangle that is too large for it does not settle.
            n_open += usize::from(!like.is_settled);
            // The true error stays within three estimates, and one is enough for 95 of 100.
            assert!(
                off <= 3.0 * like.error_estimate + fresh.error_estimate,
                "{edge}: {like:?} {fresh:?}"
            );
            n += 1;
            n_outside += usize::from(off > like.error_estimate + fresh.error_estimate);
        }
    }
    assert!(20 * n_outside <= n, "{n_outside} of {n}");
    assert!(20 * n_open <= n, "{n_open} of {n}");
}

#[test]
fn a_carried_mesh_gives_none_for_other_kinds_of_numbers() {
    let (mut prepared, _) = prepare(&section(50.0), &wanted(), &OPTIONS, &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error}"));
    let other = prepared.solve_carried_for(&section(50.0), &near_the_lip(50.0), &mut Unwatched);
    assert!(other.unwrap_or_else(|error| panic!("{error}")).is_none());
    let same = prepared.solve_carried_for(&section(50.0), &wanted(), &mut Unwatched);
    assert!(same.unwrap_or_else(|error| panic!("{error}")).is_some());
}

#[test]
fn a_number_that_did_not_settle_settles_on_no_derived_mesh() {
    // One mesh only: its estimates are within so wide a tolerance, but nobody saw them fall.
    let options = Options {
        tolerance: 0.2,
        capacitance_tolerance: 0.2,
        n_unknowns_most: 1,
        ..OPTIONS
    };
    let near = near_the_lip(50.0);
    let (mut prepared, first) = prepare(&section(50.0), &near, &options, &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error}"));
    assert!(first.answers.iter().all(|answer| !answer.is_settled));
    let (_, like) = prepared
        .prepare_like(&section(50.5), &near_the_lip(50.5), &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error}"));
    assert!(like.answers.iter().all(|answer| !answer.is_settled));
    let carried = prepared.solve_carried_for(&section(50.0), &near, &mut Unwatched);
    assert!(carried.unwrap_or_else(|error| panic!("{error}")).is_none());
}

#[test]
fn a_section_of_other_topology_is_meshed_again() {
    let (mut prepared, _) = prepare(&section(50.0), &wanted(), &OPTIONS, &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error}"));
    let mut other = section(50.0);
    other.outline.curves[2].tag = "lip".to_owned();
    other.potentials.push(("lip".to_owned(), 0.0));
    let (_, reuse) = prepared
        .solve(&other, &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error}"));
    assert_eq!(reuse, Reuse::OtherTopology);
}

#[test]
fn an_edge_moved_too_far_is_meshed_again() {
    let (mut prepared, _) = prepare(&section(50.0), &wanted(), &OPTIONS, &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error}"));
    let (solved, reuse) = prepared
        .solve(&section(90.0), &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error}"));
    assert_ne!(reuse, Reuse::Carried);
    assert!(solved.answers.iter().all(|answer| answer.is_settled));
}
