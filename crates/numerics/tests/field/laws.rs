//! Laws that every field obeys: energy and charge, reciprocity, the maximum principle, scaling.

use super::{answers, coaxial, insulator, is_near, line, region};
use jointwright_numerics::fem::{assembly, triangle};
use jointwright_numerics::field::{
    Options, Regime, Section, Solved, Stage, Unwatched, VACUUM_PERMITTIVITY, Wanted, Watch, solve,
};
use jointwright_numerics::outline::{Outline, Point};

/// Charge on the curves of a tag, C: the flux into the section at their nodes.
fn charge(section: &Section, solved: &Solved, tag: &str) -> f64 {
    let mesh = &solved.mesh;
    let matrices: Vec<[f64; 21]> = mesh
        .triangles
        .iter()
        .map(|numbers| triangle::stiffness(&numbers.map(|node| mesh.nodes[node as usize])))
        .collect();
    let permittivities: Vec<f64> = mesh
        .region
        .iter()
        .map(|&region| {
            VACUUM_PERMITTIVITY * section.materials[region as usize].relative_permittivity
        })
        .collect();
    let values: Vec<f64> = solved.potential.iter().map(|value| value[0]).collect();
    let flows = assembly::fluxes(&mesh.triangles, &matrices, &permittivities, &values);
    let mut nodes: Vec<u32> = mesh
        .rims
        .iter()
        .filter(|rim| section.outline.curves[rim.curve_index as usize].tag == tag)
        .flat_map(|rim| rim.nodes)
        .collect();
    nodes.sort_unstable();
    nodes.dedup();
    nodes.iter().map(|&node| flows[node as usize]).sum()
}

fn solved(section: &Section) -> Solved {
    let options = Options {
        tolerance: 1e-3,
        capacitance_tolerance: 1e-5,
        n_unknowns_most: 40_000,
        work_most: usize::MAX,
    };
    solve(section, &[Wanted::Capacitance], &options, &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error}"))
}

/// A conductor, a screen over half of the insulation, and an electrode beyond a gap: a section without symmetry.
fn three_electrodes(volts: [f64; 3]) -> Section {
    let places = [
        (6.65, 0.0),
        (6.65, 60.0),
        (11.1, 60.0),
        (11.1, 25.0),
        (11.1, 0.0),
        (25.0, 0.0),
        (25.0, 20.0),
        (25.0, 60.0),
    ];
    let curves = vec![
        line(0, 1, "conductor"),
        line(1, 2, "plane"),
        line(2, 3, "interface"),
        line(3, 4, "screen"),
        line(4, 0, "plane"),
        line(2, 7, "plane"),
        line(7, 6, "body"),
        line(6, 5, "open"),
        line(5, 4, "plane"),
    ];
    let regions = vec![
        region("insulation", &[1, 2, 3, 4, 5]),
        region("body", &[-3, 6, 7, 8, 9, -4]),
    ];
    Section {
        outline: Outline {
            points: places
                .iter()
                .map(|&(r, z)| Point::new(r * 1e-3, z * 1e-3))
                .collect(),
            curves,
            regions,
        },
        materials: vec![insulator(2.3), insulator(2.8)],
        potentials: ["conductor", "screen", "body"]
            .iter()
            .zip(volts)
            .map(|(tag, volts)| ((*tag).to_owned(), volts))
            .collect(),
        floating: Vec::new(),
        regime: Regime::Capacitive,
        leave_out: Vec::new(),
    }
}

#[test]
fn energy_is_half_c_v_squared_with_c_from_the_charge() {
    let section = coaxial(&[6.65e-3, 11.1e-3], 20e-3, &[insulator(2.3)], 8.7e3);
    let solved = solved(&section);
    // Both numbers come from one potential, so they agree to rounding, whatever the mesh.
    let from_charge = charge(&section, &solved, "inner") / 8.7e3;
    assert!(is_near(solved.answers[0].value, from_charge, 1e-10));
    let twin = charge(&section, &solved, "inner") / 8.7001e3;
    assert!(!is_near(solved.answers[0].value, twin, 1e-10));
}

#[test]
fn charges_of_all_electrodes_add_up_to_nothing() {
    let section = three_electrodes([5e3, 0.0, -1e3]);
    let solved = solved(&section);
    let charges = ["conductor", "screen", "body"].map(|tag| charge(&section, &solved, tag));
    let size: f64 = charges.iter().map(|charge| charge.abs()).sum();
    assert!(charges.iter().sum::<f64>().abs() < 1e-10 * size);
    assert!((charges[0] + charges[1]).abs() > 1e-3 * size);
}

/// The charge on one electrode for a volt on another stays the same when both change places.
#[test]
fn reciprocity_holds_between_any_two_electrodes() {
    let tags = ["conductor", "screen", "body"];
    let section_with = |raised: usize| {
        let mut volts = [0.0; 3];
        volts[raised] = 1e3;
        three_electrodes(volts)
    };
    let matrix = [0, 1, 2].map(|raised| {
        let section = section_with(raised);
        // One mesh for all three: a capacitance drives its refinement, so a wide tolerance keeps the first two levels alike.
        let options = Options {
            n_unknowns_most: 1,
            ..Options::default()
        };
        let solved = solve(&section, &[], &options, &mut Unwatched)
            .unwrap_or_else(|error| panic!("{error}"));
        tags.map(|tag| charge(&section, &solved, tag))
    });
    for (one, two) in [(0, 1), (0, 2), (1, 2)] {
        assert!(is_near(matrix[one][two], matrix[two][one], 1e-9));
    }
    // The oracle can fail: the electrodes differ, so unlike pairs have unlike charges.
    assert!(!is_near(matrix[0][1], matrix[0][2], 1e-3));
}

#[test]
fn twice_the_voltage_is_twice_the_field_and_the_same_capacitance() {
    let wanted = [
        Wanted::Capacitance,
        Wanted::FieldAt {
            at: Point::new(12e-3, 30e-3),
            side: None,
        },
    ];
    let one = answers(&three_electrodes([1e3, 0.0, 0.0]), &wanted, 1e-3);
    let two = answers(&three_electrodes([2e3, 0.0, 0.0]), &wanted, 1e-3);
    assert!(is_near(two[0].value, one[0].value, 1e-12));
    assert!(is_near(two[1].value, 2.0 * one[1].value, 1e-12));
}

#[test]
fn a_floating_conductor_takes_no_charge() {
    let mut section = three_electrodes([5e3, 0.0, 0.0]);
    section.potentials.pop();
    section.floating.push("body".to_owned());
    let solved = solved(&section);
    let whole = charge(&section, &solved, "conductor").abs();
    assert!(charge(&section, &solved, "body").abs() < 1e-10 * whole);
    assert!(charge(&section, &solved, "screen").abs() > 0.5 * whole);
}

#[test]
fn a_sharp_edge_says_that_its_peak_did_not_settle() {
    let section = three_electrodes([5e3, 0.0, 0.0]);
    let wanted = [Wanted::PeakInRegion { region_index: 1 }];
    let options = Options {
        n_unknowns_most: 20_000,
        ..Options::default()
    };
    let solved = solve(&section, &wanted, &options, &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error}"));
    assert!(!solved.answers[0].is_settled);
    assert!(solved.answers[0].error_estimate > 1e-2 * solved.answers[0].value);
}

/// Counts the solutions of a solve, and stops it after some.
struct Counted {
    n_solved: u32,
    n_most: u32,
}

impl Watch for Counted {
    fn stage(&mut self, stage: Stage) {
        self.n_solved += u32::from(stage == Stage::Solve);
    }
    fn may_go_on(&mut self) -> bool {
        self.n_solved < self.n_most
    }
}

/// However low the accuracy: one step cannot tell a number that has converged from one that still moves.
#[test]
fn a_field_settles_on_its_third_solution_and_no_sooner() {
    let at = Point::new(12e-3, 30e-3);
    let wanted = [Wanted::FieldAt { at, side: None }];
    let options = Options {
        tolerance: 0.2,
        ..Options::default()
    };
    let section = three_electrodes([1e3, 0.0, 0.0]);
    let counted = |n_most: u32| {
        let mut watch = Counted {
            n_solved: 0,
            n_most,
        };
        let solved = solve(&section, &wanted, &options, &mut watch)
            .unwrap_or_else(|error| panic!("{error}"));
        (watch.n_solved, solved.answers[0].is_settled)
    };
    assert_eq!(counted(9), (3, true));
    assert_eq!(counted(2), (2, false));
}
