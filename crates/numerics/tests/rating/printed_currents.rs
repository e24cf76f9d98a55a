//! Printed currents of cables of 2001 to 35000 V, 90 and 105 °C, 60 Hz: nec.*, nec_311_60, read in a public copy.
//!
//! The tables do not state their cables. These are invented, the same for all rows, and were fixed before any row was computed:
//! strands of the concentric diameters, 15 mil of screen over them; walls of 133 %: 115 mil for 5 kV without a shield, 220 mil for 15 kV and 420 mil for 35 kV
//! with 30 mil of screen, a lapped copper tape of 5 mil (a quarter overlaps, 10 mil over it) and 80 mil of jacket.
//! The depth of 36 in, 7.5 in between axes, ducts of 5 in of fibre with their axis 36 in deep, and conduits filled to 40 % at most are from memory.
//! Fixed after rows had been seen: 5 K·m/W of all layers, see below; shields grounded at one point in soil, which the tables' own note says, from memory.

use jointwright_numerics::rating::shield::{Shield, reactance_ohm_per_m, tape_area};
use jointwright_numerics::rating::thermal::{
    Filling, Hanging, StillAir, buried_k_m_per_w, flat_middle_k_m_per_w, group_diameter_m,
    layer_k_m_per_w,
};
use jointwright_numerics::rating::{
    Bond, Circuit, Conductor, Metal, Neighbours, Outside, Proximity,
};

use super::{CMIL_M2, MIL_M};

const CU: Metal = Metal::COPPER;
const AL: Metal = Metal::ALUMINIUM;

/// Properties that the rows do not state.
#[derive(Clone, Copy)]
struct Taken {
    /// Thermal resistivity of insulation, screens and jacket, K·m/W.
    /// 5: the value for rubber when such tables were made (neher_mcgrath, memory).
    /// 3.5: the value of iec_60287_2_1 for cross-linked polyethylene.
    layers_k_m_per_w: f64,
    /// Shields bonded at both ends in ducts and conduits; also in soil and air for a mistake.
    is_bonded: bool,
    soil_k_m_per_w: f64,
    film: StillAir,
    /// Cables that warm one duct or conduit.
    n_cables: usize,
}

const TAKEN: Taken = Taken {
    layers_k_m_per_w: 5.0,
    is_bonded: false,
    soil_k_m_per_w: 0.9,
    film: StillAir::Coefficient(Hanging::ALONE),
    n_cables: 3,
};

#[derive(Clone, Copy, Debug, PartialEq)]
enum Place {
    Soil,
    Duct,
    Conduit,
    Air,
}

/// Conduits of rigid steel, inside and outside, in; from memory.
const CONDUITS: [[f64; 2]; 8] = [
    [1.624, 1.900],
    [2.083, 2.375],
    [2.489, 2.875],
    [3.090, 3.500],
    [3.570, 4.000],
    [4.050, 4.500],
    [5.073, 5.563],
    [6.093, 6.625],
];

/// One row: kcmil, diameter of the conductor in inches, printed currents of the columns.
type Row = (Metal, f64, f64, &'static [f64]);

fn outside(place: Place, outside_m: f64, taken: Taken) -> Outside {
    let (filling, group_m) = (
        Filling::AIR_IN_METAL,
        group_diameter_m(taken.n_cables, outside_m).expect("few cables"),
    );
    match place {
        Place::Soil => Outside::Soil {
            resistance_k_m_per_w: flat_middle_k_m_per_w(
                taken.soil_k_m_per_w,
                0.9144,
                outside_m,
                0.1905,
            )
            .expect("covered"),
        },
        Place::Duct => Outside::Duct {
            filling: Filling::AIR_IN_FIBRE_IN_CONCRETE,
            n_cables: taken.n_cables,
            group_m,
            beyond_k_m_per_w: layer_k_m_per_w(4.8, 0.127, 0.1397)
                + buried_k_m_per_w(taken.soil_k_m_per_w, 0.9144, 0.1397).expect("covered"),
        },
        Place::Conduit => {
            let filled = 3.0 * outside_m * outside_m / 0.4;
            let [_, over] = CONDUITS
                .into_iter()
                .find(|[within, _]| (within * 25.4e-3).powi(2) >= filled)
                .expect("a conduit");
            Outside::Conduit {
                filling,
                n_cables: taken.n_cables,
                group_m,
                film: taken.film,
                outside_m: over * 25.4e-3,
            }
        }
        Place::Air => Outside::Air {
            film: taken.film,
            outside_m,
        },
    }
}

fn current_a(row: &Row, wall_mil: f64, place: Place, degc: f64, taken: Taken) -> f64 {
    let &(metal, kcmil, conductor_in, _) = row;
    let conductor_m = conductor_in * 25.4e-3;
    let is_shielded = wall_mil > 115.0;
    let insulated_m = conductor_m + 2.0 * (15.0 + wall_mil) * MIL_M;
    let (screened_m, under_jacket_m) = if is_shielded {
        (insulated_m + 60.0 * MIL_M, insulated_m + 80.0 * MIL_M)
    } else {
        (insulated_m, insulated_m)
    };
    let outside_m = under_jacket_m + 160.0 * MIL_M;
    let spacing_m = match place {
        Place::Soil => 0.1905,
        _ => outside_m,
    };
    let mean_m = screened_m + 5.0 * MIL_M;
    let area = tape_area(5.0 * MIL_M, 25.4e-3, mean_m, 0.25).taken_m2;
    let bond = if taken.is_bonded || matches!(place, Place::Duct | Place::Conduit) {
        Bond::BothEnds {
            reactance_ohm_per_m: reactance_ohm_per_m(60.0, spacing_m, mean_m),
        }
    } else {
        Bond::OneEnd
    };
    let layer = |inside_m, outside_m| layer_k_m_per_w(taken.layers_k_m_per_w, inside_m, outside_m);
    let circuit = Circuit {
        frequency_hz: 60.0,
        conductor: Conductor {
            resistance_20_ohm_per_m: metal.resistance_ohm_per_m(kcmil * 1e3 * CMIL_M2, 1.02, 20.0),
            coefficient_20_per_k: metal.coefficient_20_per_k,
            skin_ratio: 1.0,
            proximity: (!matches!(place, Place::Air)).then_some(Proximity {
                strand_ratio: 1.0,
                diameter_m: conductor_m,
                spacing_m,
                neighbours: Neighbours::Two,
            }),
        },
        shield: is_shielded.then_some(Shield {
            resistance_20_ohm_per_m: CU.resistivity_20_ohm_m / area,
            coefficient_20_per_k: CU.coefficient_20_per_k,
            bond,
        }),
        dielectric_w_per_m: 0.0,
        inner_k_m_per_w: vec![layer(conductor_m, screened_m)],
        outer_k_m_per_w: vec![layer(under_jacket_m, outside_m)],
        outside: outside(place, outside_m, taken),
        ambient_degc: match place {
            Place::Soil | Place::Duct => 20.0,
            Place::Conduit | Place::Air => 40.0,
        },
    };
    circuit.at_temperature(degc).expect("a rating").current_a
}

// nec.bury1c.*: 2001 to 5000 V at 90 and 105 °C, 5001 to 35000 V at 90 and 105 °C; 20 °C, 0.9 K·m/W.
const SOIL: [Row; 7] = [
    (CU, 211.6, 0.528, &[435.0, 465.0, 405.0, 435.0]),
    (CU, 500.0, 0.813, &[690.0, 745.0, 650.0, 700.0]),
    (CU, 1000.0, 1.152, &[980.0, 1055.0, 930.0, 1005.0]),
    (AL, 105.6, 0.372, &[230.0, 250.0, 215.0, 230.0]),
    (AL, 211.6, 0.528, &[340.0, 365.0, 315.0, 340.0]),
    (AL, 500.0, 0.813, &[540.0, 580.0, 510.0, 545.0]),
    (AL, 1000.0, 1.152, &[780.0, 840.0, 740.0, 795.0]),
];
// nec.duct3x1.*: the same columns.
const DUCT: [Row; 11] = [
    (CU, 105.6, 0.372, &[195.0, 210.0, 200.0, 215.0]),
    (CU, 133.1, 0.418, &[220.0, 235.0, 230.0, 245.0]),
    (CU, 250.0, 0.575, &[320.0, 345.0, 325.0, 345.0]),
    (CU, 350.0, 0.681, &[385.0, 415.0, 390.0, 415.0]),
    (CU, 750.0, 0.998, &[585.0, 630.0, 565.0, 610.0]),
    (CU, 1000.0, 1.152, &[670.0, 720.0, 640.0, 690.0]),
    (AL, 66.36, 0.292, &[115.0, 125.0, 120.0, 130.0]),
    (AL, 211.6, 0.528, &[225.0, 245.0, 230.0, 245.0]),
    (AL, 350.0, 0.681, &[305.0, 325.0, 305.0, 330.0]),
    (AL, 500.0, 0.813, &[370.0, 400.0, 370.0, 400.0]),
    (AL, 1000.0, 1.152, &[545.0, 590.0, 525.0, 565.0]),
];
// nec.conduit3x1.*: the same columns; 40 °C.
const CONDUIT: [Row; 3] = [
    (CU, 105.6, 0.372, &[180.0, 200.0, 195.0, 215.0]),
    (CU, 211.6, 0.528, &[280.0, 305.0, 295.0, 330.0]),
    (CU, 500.0, 0.813, &[475.0, 530.0, 480.0, 535.0]),
];
// nec.air1c.*: 2 to 5, 5 to 15, 15 to 35 kV, each at 90 and 105 °C; 40 °C.
const AIR: [Row; 7] = [
    (
        CU,
        211.6,
        0.528,
        &[400.0, 445.0, 400.0, 445.0, 395.0, 445.0],
    ),
    (
        CU,
        500.0,
        0.813,
        &[695.0, 775.0, 685.0, 765.0, 680.0, 755.0],
    ),
    (
        CU,
        1000.0,
        1.152,
        &[1075.0, 1200.0, 1060.0, 1185.0, 1040.0, 1160.0],
    ),
    (
        AL,
        105.6,
        0.372,
        &[200.0, 225.0, 200.0, 225.0, 200.0, 225.0],
    ),
    (
        AL,
        211.6,
        0.528,
        &[310.0, 350.0, 310.0, 350.0, 310.0, 345.0],
    ),
    (
        AL,
        500.0,
        0.813,
        &[545.0, 605.0, 535.0, 600.0, 530.0, 590.0],
    ),
    (
        AL,
        1000.0,
        1.152,
        &[855.0, 950.0, 840.0, 940.0, 825.0, 920.0],
    ),
];

/// Ratio of computed to printed current, for each column.
fn ratios(row: &Row, place: Place, taken: Taken) -> Vec<f64> {
    let walls = [115.0, 220.0, 420.0];
    let columns = walls
        .iter()
        .flat_map(|wall| [(*wall, 90.0), (*wall, 105.0)]);
    let printed = columns.zip(row.3);
    printed
        .map(|((wall, degc), printed)| current_a(row, wall, place, degc, taken) / printed)
        .collect()
}

const ALL: [(Place, &[Row]); 4] = [
    (Place::Soil, &SOIL),
    (Place::Duct, &DUCT),
    (Place::Conduit, &CONDUIT),
    (Place::Air, &AIR),
];

/// Columns that lie outside of 6 %: place, metal, kcmil, column, found over printed. All are high, at the largest cables or at 105 °C.
/// Effects that are left out would lower them: the loss in a steel conduit and its effect on skin and proximity effect; a shield with more metal than the tape taken here, in ducts; a shield over 115 mil, in air.
const OUTSIDE: [(Place, Metal, f64, usize, f64); 10] = [
    (Place::Duct, CU, 750.0, 3, 1.065),
    (Place::Duct, CU, 1000.0, 2, 1.061),
    (Place::Duct, CU, 1000.0, 3, 1.077),
    (Place::Duct, AL, 1000.0, 3, 1.068),
    (Place::Conduit, CU, 105.6, 1, 1.069),
    (Place::Conduit, CU, 211.6, 1, 1.086),
    (Place::Conduit, CU, 500.0, 2, 1.072),
    (Place::Conduit, CU, 500.0, 3, 1.094),
    (Place::Air, CU, 1000.0, 1, 1.064),
    (Place::Air, AL, 1000.0, 1, 1.063),
];

// Oracle: 126 printed currents, allowed 6 %. Seen: soil 3.0 % low to 2.3 % high; air 1.7 % low to 6.4 % high; ducts 0.9 to 7.7 % high; conduits 1.1 to 9.4 % high. 116 are within.
#[test]
fn printed_currents_are_met_within_six_percent_or_the_disagreement_is_known() {
    let (mut n_within, mut n_outside) = (0, 0);
    for (place, rows) in ALL {
        for row in rows {
            for (column, ratio) in ratios(row, place, TAKEN).into_iter().enumerate() {
                let known = OUTSIDE.iter().find(|known| {
                    known.0 == place && known.1 == row.0 && known.2 == row.1 && known.3 == column
                });
                if let Some((.., expected)) = known {
                    assert!(
                        (ratio - expected).abs() < 1e-3,
                        "{place:?} {} {column}: {ratio}",
                        row.1
                    );
                    n_outside += 1;
                } else {
                    assert!(
                        (ratio - 1.0).abs() <= 0.06,
                        "{place:?} {} {column}: {ratio}",
                        row.1
                    );
                    n_within += 1;
                }
            }
        }
    }
    assert_eq!((n_within, n_outside), (116, 10));
}

// Oracle: the printed ratio of 105 to 90 °C, in which the cable and its place nearly cancel; allowed 3 %. One pair is not within: 4/0 in conduit rises by 8.9 % in print, by 13.6 % here, and by 11 % in its neighbours.
// nec.ratio105_90.air: 1.1147 for air.
#[test]
fn from_90_to_105_degrees() {
    for (place, rows) in ALL {
        for row in rows {
            let found = ratios(row, place, TAKEN);
            for (column, pair) in found.chunks(2).enumerate() {
                let off = pair[1] / pair[0] - 1.0;
                if place == Place::Conduit && row.1 == 211.6 && column == 0 {
                    assert!((off - 0.044).abs() < 1e-3, "{off}");
                } else {
                    assert!(off.abs() <= 0.03, "{place:?} {} {column}: {off}", row.1);
                }
            }
            if place == Place::Air {
                let at = |degc| current_a(row, 115.0, place, degc, TAKEN);
                assert!((at(105.0) / at(90.0) / 1.114_702_916 - 1.0).abs() <= 0.03);
                // Twin: ten degrees more.
                assert!((at(115.0) / at(90.0) / 1.114_702_916 - 1.0).abs() > 0.03);
            }
        }
    }
}

/// Number of columns within 6 %.
fn n_within(place: Place, rows: &[Row], taken: Taken) -> usize {
    let all = rows.iter().flat_map(|row| ratios(row, place, taken));
    all.filter(|ratio| (ratio - 1.0).abs() <= 0.06).count()
}

// Each of these is a mistake, or a cable other than that of the tables' makers, and the rows reject it.
#[test]
fn mistakes_do_not_pass_for_the_rows() {
    let wet = Taken {
        soil_k_m_per_w: 1.2,
        ..TAKEN
    };
    let bonded = Taken {
        is_bonded: true,
        ..TAKEN
    };
    let one = Taken {
        n_cables: 1,
        ..TAKEN
    };
    let thin = Taken {
        layers_k_m_per_w: 3.5,
        ..TAKEN
    };
    let found = [
        n_within(Place::Soil, &SOIL, TAKEN),
        n_within(Place::Soil, &SOIL, wet),
        n_within(Place::Soil, &SOIL, bonded),
        n_within(Place::Duct, &DUCT, TAKEN),
        n_within(Place::Duct, &DUCT, wet),
        n_within(Place::Duct, &DUCT, one),
        n_within(Place::Conduit, &CONDUIT, TAKEN),
        n_within(Place::Conduit, &CONDUIT, one),
        n_within(Place::Air, &AIR, TAKEN),
        n_within(Place::Air, &AIR, thin),
    ];
    // Only the largest cables show that shields in soil are open; ducts do not distinguish 1.2 from 0.9 K·m/W of soil, and fit 1.2 slightly better.
    assert_eq!(found, [28, 0, 25, 40, 44, 0, 8, 0, 40, 0]);
}

// The rows in air were 9 to 13 % below the result with 3.5 K·m/W of layers: neither of two films explains the difference, but the resistivity of the layers does.
#[test]
fn in_air_the_layers_matter_and_the_film_does_not() {
    let thin = Taken {
        layers_k_m_per_w: 3.5,
        ..TAKEN
    };
    let apart = StillAir::NeherMcGrath {
        emissivity_ratio: 0.95,
    };
    for row in &AIR {
        let both = [
            thin,
            Taken {
                film: apart,
                ..thin
            },
        ];
        for ratio in both.map(|taken| ratios(row, Place::Air, taken)).concat() {
            assert!((1.08..1.14).contains(&ratio), "{}: {ratio}", row.1);
        }
        let one = ratios(row, Place::Air, TAKEN);
        let other = ratios(
            row,
            Place::Air,
            Taken {
                film: apart,
                ..TAKEN
            },
        );
        for (one, other) in one.iter().zip(&other) {
            let off = other / one - 1.0;
            assert!((-0.01..0.02).contains(&off), "{}: {off}", row.1);
        }
    }
}
