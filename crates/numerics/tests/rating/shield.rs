//! Losses, standing voltages and areas of shields.

use std::f64::consts::PI;

use jointwright_numerics::rating::Bond;
use jointwright_numerics::rating::shield::{
    Shield, corrugated_area_m2, flat_loss_ratios, flat_mutual_ohm_per_m, loss_ratio,
    reactance_ohm_per_m, standing_trefoil_v_per_a_m, standing_v_per_a_m, straps_area_m2, tape_area,
    transposed_ohm_per_m, wires_area_m2, wires_ohm_per_m,
};

use super::{CMIL_M2, MIL_M, apart, close};

// Oracle: sheath.emf.wa9_7, wadhwa_power example 9.7: inputs read, answer computed elsewhere.
#[test]
fn voltage_along_a_run_of_two_kilometres() {
    let frequency_hz = 314.0 / (2.0 * PI);
    let volts = |mean_m| 400.0 * 2000.0 * standing_trefoil_v_per_a_m(frequency_hz, 5.08e-2, mean_m);
    close(volts(2.28e-2 - 0.152e-2), 78.538_979_74, 1e-4);
    // Twin: the outer for the mean diameter.
    apart(volts(2.28e-2), 78.538_979_74, 1e-4);
}

// Oracle: sheath.loss.wa9_8, wadhwa_power example 9.8: inputs read, answer computed elsewhere.
#[test]
fn loss_of_a_bonded_sheath() {
    let found = |henry| loss_ratio(4.28, 0.325, 314.0 * henry);
    close(found(0.000_626_8), 0.027_788_989_14, 1e-4);
    // Twin: one in a hundred more inductance.
    apart(found(0.000_633_1), 0.027_788_989_14, 1e-4);
}

// Oracle: sheath.emf.trefoil, .flat.centre, .flat.outer: closed forms computed elsewhere; V/km at 100 A.
#[test]
fn standing_voltages() {
    let volts = |v_per_a_m: f64| 100.0 * 1e3 * v_per_a_m;
    let (s, d) = (75.5e-3, 67.7e-3);
    close(
        volts(standing_trefoil_v_per_a_m(50.0, s, d)),
        5.040_331_399,
        1e-8,
    );
    let height = s * 3.0_f64.sqrt() / 2.0;
    let trefoil = [[0.0, 0.0], [s, 0.0], [s / 2.0, height]];
    for each in standing_v_per_a_m(50.0, trefoil, d) {
        close(volts(each), 5.040_331_399, 1e-8);
    }
    let flat = [[0.0, 1.0], [0.2, 1.0], [0.4, 1.0]];
    let [first, middle, last] = standing_v_per_a_m(50.0, flat, d);
    close(volts(middle), 11.161_314_46, 1e-8);
    close(volts(first), 13.861_887_01, 1e-8);
    close(volts(last), 13.861_887_01, 1e-8);
    // Twins: the outer one taken for the middle one; 60 Hz.
    apart(volts(first), 11.161_314_46, 1e-8);
    apart(
        volts(standing_v_per_a_m(60.0, flat, d)[1]),
        11.161_314_46,
        1e-8,
    );
}

/// Ratio of the losses of three shields, bonded at both ends, to the loss of a conductor with one ampere, from the complex currents themselves.
///
/// (Rs + jX_kk) i_k + Σ jX_km i_m + jΣ X_km I_m is the same for all three, and the currents i sum to zero.
fn losses_by_currents(own_ohm: f64, conductor_ohm: f64, axes_m: [f64; 3], mean_m: f64) -> [f64; 3] {
    let unit = 2.0 * PI * 50.0 * 2e-7;
    let reactance = |of: usize, from: usize| {
        let distance = if of == from {
            mean_m / 2.0
        } else {
            (axes_m[of] - axes_m[from]).abs()
        };
        -unit * distance.ln()
    };
    let root = 3.0_f64.sqrt() / 2.0;
    // The middle one is the reference; the first lags it, the last leads it.
    let currents = [[-0.5, -root], [1.0, 0.0], [-0.5, root]];
    // Unknown: real and imaginary part of i1, i2, i3 and of the common voltage.
    let mut rows = [[0.0; 9]; 8];
    for of in 0..3 {
        for (from, current) in currents.iter().enumerate() {
            let x = reactance(of, from);
            rows[2 * of][2 * from + 1] -= x;
            rows[2 * of + 1][2 * from] += x;
            rows[2 * of][8] += x * current[1];
            rows[2 * of + 1][8] -= x * current[0];
        }
        for part in 0..2 {
            rows[2 * of + part][2 * of + part] += own_ohm;
            rows[2 * of + part][6 + part] = -1.0;
            rows[6 + part][2 * of + part] = own_ohm;
        }
    }
    let solved = eliminated(rows);
    std::array::from_fn(|of| {
        let squared = solved[2 * of].powi(2) + solved[2 * of + 1].powi(2);
        squared * own_ohm / conductor_ohm
    })
}

/// Solves eight equations by elimination with pivots.
fn eliminated(mut rows: [[f64; 9]; 8]) -> [f64; 8] {
    for column in 0..8 {
        let pivot = (column..8)
            .max_by(|a, b| rows[*a][column].abs().total_cmp(&rows[*b][column].abs()))
            .expect("a row");
        rows.swap(column, pivot);
        let head = rows[column];
        for (index, row) in rows.iter_mut().enumerate() {
            if index != column {
                let share = row[column] / head[column];
                for (cell, from) in row.iter_mut().zip(&head) {
                    *cell -= share * from;
                }
            }
        }
    }
    std::array::from_fn(|index| rows[index][8] / rows[index][index])
}

// Oracle: the three complex currents, solved here from the inductances of round shells.
#[test]
fn losses_in_flat_formation_are_those_of_the_currents() {
    for (own, spacing, mean) in [
        (2e-4, 0.2, 0.0677),
        (5e-5, 0.07, 0.06),
        (1e-3, 0.4, 0.03),
        (3e-5, 0.19, 0.03),
    ] {
        let exact = losses_by_currents(own, 4e-5, [0.0, spacing, 2.0 * spacing], mean);
        let x = reactance_ohm_per_m(50.0, spacing, mean);
        let mutual = flat_mutual_ohm_per_m(50.0);
        let found = flat_loss_ratios(own, 4e-5, x, mutual);
        for (found, exact) in found.iter().zip(exact) {
            close(*found, exact, 1e-9);
        }
        // Twin: all three treated as equal, as in trefoil.
        apart(loss_ratio(own, 4e-5, x), exact[0], 1e-9);
        // A circuit uses the greatest of the three.
        let shield = Shield {
            resistance_20_ohm_per_m: own,
            coefficient_20_per_k: 0.0,
            bond: Bond::BothEndsFlat {
                reactance_ohm_per_m: x,
                mutual_ohm_per_m: mutual,
            },
        };
        let greatest = exact.into_iter().fold(0.0, f64::max);
        close(shield.loss_ratio(4e-5, 70.0), greatest, 1e-9);
    }
}

// Oracle: transposed over a whole turn, each shield meets the mean of the three reactances.
#[test]
fn a_transposed_shield_meets_the_mean() {
    let (s, d): (f64, f64) = (0.2, 0.0677);
    let mean_spacing = (s * s * 2.0 * s).cbrt();
    close(
        transposed_ohm_per_m(50.0, s, d),
        reactance_ohm_per_m(50.0, mean_spacing, d),
        1e-12,
    );
    apart(
        reactance_ohm_per_m(50.0, s, d),
        reactance_ohm_per_m(50.0, mean_spacing, d),
        1e-3,
    );
}

// Oracle: sc.shield.tape.area, .strap.area, .lc.area: icea_p45482, recalled and recomputed elsewhere; cond.awg.14, whose 4107 cmil are printed.
#[test]
fn areas() {
    let cmil = |area_m2: f64| area_m2 / CMIL_M2;
    let tape = |overlap| tape_area(5.0 * MIL_M, 1000.0 * MIL_M, 950.0 * MIL_M, overlap);
    close(cmil(tape(0.25).taken_m2), 15_513.435_04, 1e-6);
    apart(cmil(tape(0.15).taken_m2), 15_513.435_04, 1e-6);
    let straps = |n| cmil(straps_area_m2(n, 175.0 * MIL_M, 25.0 * MIL_M));
    close(straps(7), 38_992.961_06, 3e-3);
    apart(straps(6), 38_992.961_06, 3e-3);
    let corrugated = |overlap| {
        cmil(corrugated_area_m2(
            950.0 * MIL_M,
            overlap * MIL_M,
            8.0 * MIL_M,
        ))
    };
    close(corrugated(375.0), 35_728.581_36, 3e-3);
    // Twin: without the overlap.
    apart(corrugated(0.0), 35_728.581_36, 3e-3);
    close(cmil(wires_area_m2(1, 0.064_08 * 25.4e-3)), 4107.0, 5e-4);
    apart(cmil(wires_area_m2(1, 0.064_15 * 25.4e-3)), 4107.0, 5e-4);
}

// Oracle: the ends of the interval are geometry: a tape unrolled, and a tube of the tape's mean thickness.
#[test]
fn a_tape_lies_between_its_helix_and_its_tube() {
    for overlap in [0.1, 0.25, 0.4] {
        let (thickness, width, mean) = (0.127e-3, 38e-3, 25e-3);
        let area = tape_area(thickness, width, mean, overlap);
        assert!(area.no_contact_m2 < area.taken_m2 && area.taken_m2 < area.full_contact_m2);
        // A volume of metal on one metre: the tube's is its area; the helix has as much, over a longer way.
        let pitch = width * (1.0 - overlap);
        let longer = 1.0_f64.hypot(PI * mean / pitch);
        close(
            area.no_contact_m2 * longer * longer,
            thickness * width * longer,
            1e-12,
        );
        let narrow = tape_area(thickness, width / 10.0, mean, overlap);
        // A narrow tape's metal on one metre approaches that of the tube.
        let turns = (PI * mean / (0.1 * pitch)).powi(2) + 1.0;
        close(narrow.no_contact_m2 * turns, narrow.full_contact_m2, 2e-2);
    }
}

// Oracle: kersting.r_cn: thirteen strands of 14.8722 Ω/mile side by side; the lay is a helix unrolled.
#[test]
fn resistance_of_a_neutral_of_wires() {
    const MILE_M: f64 = 1609.344;
    let strand_m = 0.0641 * 25.4e-3;
    // Resistivity that gives the strand's own figure.
    let resistivity = 14.8722 / MILE_M * wires_area_m2(1, strand_m);
    let found = |n, pitch_m| MILE_M * wires_ohm_per_m(resistivity, n, strand_m, 0.031, pitch_m);
    close(found(13, 1e9), 1.144_015, 1e-4);
    apart(found(12, 1e9), 1.144_015, 1e-4);
    // A lay of ten diameters makes the wires √(1 + (π/10)²) as long.
    close(
        found(13, 0.31) / found(13, 1e9),
        1.0_f64.hypot(PI / 10.0),
        1e-9,
    );
}
