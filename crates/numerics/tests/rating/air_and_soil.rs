//! Resistances of soil, ducts and air, against images, another correlation and printed currents.

use std::f64::consts::PI;

use jointwright_numerics::rating::thermal::{
    Filling, Hanging, buried_k_m_per_w, flat_middle_k_m_per_w, group_diameter_m, layer_k_m_per_w,
    touching_trefoil_k_m_per_w,
};
use jointwright_numerics::rating::{
    Circuit, Conductor, Metal, Neighbours, Outside, Proximity, RatingError,
};

use super::{CMIL_M2, MIL_M, apart, close};

/// Rise at a point for one watt and metre of a line at `depth` and its image, K·m/W, in soil of 1 K·m/W.
fn of_line(across_m: f64, down_m: f64, depth_m: f64) -> f64 {
    let image = across_m.hypot(down_m + depth_m);
    let own = across_m.hypot(down_m - depth_m);
    (image / own).ln() / (2.0 * PI)
}

// Oracle: a line at depth √(L² − De²/4) and its image make the cable's circle a line of one temperature, walked here.
#[test]
fn soil_about_one_cable_is_that_of_a_line_and_its_image() {
    for (depth, outside) in [(1.0, 0.0755), (0.3, 0.2), (0.06, 0.1)] {
        let found = buried_k_m_per_w(1.0, depth, outside).expect("covered");
        let line = (depth * depth - outside * outside / 4.0_f64).sqrt();
        for step in 0..16 {
            let angle = PI / 8.0 * f64::from(step);
            let (across, down) = (
                outside / 2.0 * angle.sin(),
                depth + outside / 2.0 * angle.cos(),
            );
            close(of_line(across, down, line), found, 1e-12);
        }
        // Twin: the rounded ln 2u, which is right for thin cables only.
        apart((4.0 * depth / outside).ln() / (2.0 * PI), found, 1e-5);
    }
    close(
        buried_k_m_per_w(0.9, 1.0, 0.05).expect("covered"),
        0.9 * buried_k_m_per_w(1.0, 1.0, 0.05).expect("covered"),
        1e-14,
    );
}

// Oracle: the lines of the two others and their images.
#[test]
fn soil_about_the_middle_of_three() {
    let found = |spacing| flat_middle_k_m_per_w(1.0, 0.9, 0.04, spacing).expect("covered");
    let alone = buried_k_m_per_w(1.0, 0.9, 0.04).expect("covered");
    for spacing in [0.1, 0.19, 0.4] {
        let expected = alone + 2.0 * of_line(spacing, 0.9, 0.9);
        close(found(spacing), expected, 1e-12);
        // Twin: one neighbour only.
        apart(found(spacing), alone + of_line(spacing, 0.9, 0.9), 1e-2);
    }
}

// Oracle: three lines that touch and their images; metal around each evens the circle out, by less than a tenth.
#[test]
fn soil_about_a_touching_trefoil_is_a_little_less_than_that_of_three_lines() {
    for ratio in [10.0, 26.5, 60.0] {
        let outside = 2.0 / ratio;
        let found = touching_trefoil_k_m_per_w(1.0, 1.0, outside).expect("covered");
        let lines = ((2.0 * ratio).ln() + 2.0 * ratio.ln()) / (2.0 * PI);
        assert!(
            (0.9..1.0).contains(&(found / lines)),
            "{ratio}: {found} of {lines}"
        );
    }
}

#[test]
fn a_cable_that_is_not_covered_is_refused() {
    for (depth, outside) in [
        (0.04, 0.1),
        (0.05, 0.1),
        (-1.0, 0.1),
        (1.0, 0.0),
        (f64::NAN, 0.1),
    ] {
        for refused in [
            buried_k_m_per_w(1.0, depth, outside),
            touching_trefoil_k_m_per_w(1.0, depth, outside),
            flat_middle_k_m_per_w(1.0, depth, outside, 0.2),
        ] {
            assert!(
                matches!(refused, Err(RatingError::NotBuried { .. })),
                "{depth} {outside}"
            );
        }
    }
}

// Oracle: natural convection of a horizontal cylinder (Churchill and Chu) and radiation with 0.9, from memory; two correlations agree within 15 %. Seen: 10 %.
#[test]
fn the_air_takes_what_convection_and_radiation_take() {
    for outside in [0.02, 0.04, 0.07] {
        for rise in [15.0, 30.0, 50.0] {
            let (air, film) = (313.15, 313.15 + rise / 2.0);
            let viscosity = 1.716e-5 * (film / 273.15_f64).powf(0.7) / (353.0 / film);
            let diffusivity = viscosity / 0.71;
            let rayleigh =
                9.81 / film * rise * outside * outside * outside / (viscosity * diffusivity);
            let nusselt = (0.60
                + 0.387 * rayleigh.powf(1.0 / 6.0)
                    / (1.0 + (0.559_f64 / 0.71).powf(9.0 / 16.0)).powf(8.0 / 27.0))
            .powi(2);
            let conductivity = 0.0241 * (film / 273.15).powf(0.85);
            let radiated = 0.9 * 5.67e-8 * ((air + rise).powi(4) - f64::powi(air, 4)) / rise;
            let expected = nusselt * conductivity / outside + radiated;
            let heat = PI * outside * expected * rise;
            close(Hanging::ALONE.rise_k(heat, outside), rise, 0.15);
            // Twins: without radiation; a film twice as good.
            apart(
                Hanging::ALONE.rise_k(heat - PI * outside * radiated * rise, outside),
                rise,
                0.15,
            );
            apart(Hanging::ALONE.rise_k(heat / 2.0, outside), rise, 0.15);
        }
    }
}

// Law: cables in trefoil or side by side hinder each other.
#[test]
fn cables_that_touch_are_warmer() {
    for outside in [0.02, 0.04, 0.07] {
        let alone = Hanging::ALONE.rise_k(30.0, outside);
        let flat = Hanging::FLAT_TOUCHING.rise_k(30.0, outside);
        let trefoil = Hanging::TREFOIL.rise_k(30.0, outside);
        assert!(
            alone < flat && flat < trefoil,
            "{outside}: {alone} {flat} {trefoil}"
        );
    }
}

// Law: water carries better than air, a warm filling better than a cold one; a wide group better than one cable.
#[test]
fn fillings_of_ducts() {
    for air in [
        Filling::AIR_IN_PLASTIC,
        Filling::AIR_IN_METAL,
        Filling::AIR_IN_FIBRE_IN_CONCRETE,
        Filling::AIR_IN_EARTHENWARE,
    ] {
        let resistance = air.resistance_k_m_per_w(0.08, 50.0);
        assert!((0.2..0.6).contains(&resistance), "{air:?}: {resistance}");
        assert!(Filling::WATER.resistance_k_m_per_w(0.08, 50.0) < resistance / 4.0);
        assert!(air.resistance_k_m_per_w(0.08, 70.0) < resistance);
        assert!(air.resistance_k_m_per_w(0.04, 50.0) > resistance);
    }
    let ratios: Vec<Option<f64>> = (0..6).map(|n| group_diameter_m(n, 1.0)).collect();
    assert_eq!(
        ratios,
        [None, Some(1.0), Some(1.65), Some(2.15), Some(2.5), None]
    );
}

/// An invented cable of 5 kV without a shield: 115 mil of insulation, 80 mil of jacket.
struct Plain {
    inner_k_m_per_w: f64,
    outer_k_m_per_w: f64,
    conductor_m: f64,
    outside_m: f64,
}

fn plain(conductor_in: f64) -> Plain {
    let conductor_m = conductor_in * 25.4e-3;
    let insulated_m = conductor_m + 2.0 * (15.0 + 115.0) * MIL_M;
    let outside_m = insulated_m + 2.0 * 80.0 * MIL_M;
    Plain {
        inner_k_m_per_w: layer_k_m_per_w(3.5, conductor_m, insulated_m),
        outer_k_m_per_w: layer_k_m_per_w(3.5, insulated_m, outside_m),
        conductor_m,
        outside_m,
    }
}

fn circuit(
    metal: Metal,
    kcmil: f64,
    cable: &Plain,
    spacing_m: f64,
    outside: Outside,
    ambient_degc: f64,
) -> Circuit {
    Circuit {
        frequency_hz: 60.0,
        conductor: Conductor {
            resistance_20_ohm_per_m: metal.resistance_ohm_per_m(kcmil * 1e3 * CMIL_M2, 1.02, 20.0),
            coefficient_20_per_k: metal.coefficient_20_per_k,
            skin_ratio: 1.0,
            proximity: Some(Proximity {
                strand_ratio: 1.0,
                diameter_m: cable.conductor_m,
                spacing_m,
                neighbours: Neighbours::Two,
            }),
        },
        shield: None,
        dielectric_w_per_m: 0.0,
        inner_k_m_per_w: vec![cable.inner_k_m_per_w],
        outer_k_m_per_w: vec![cable.outer_k_m_per_w],
        outside,
        ambient_degc,
    }
}

const CU: Metal = Metal::COPPER;
const AL: Metal = Metal::ALUMINIUM;

// Oracle: nec.bury1c.*, 2001–5000 V, 90 and 105 °C, read in a public copy; 20 °C, 0.9 K·m/W.
// Depth 36 in and 7.5 in between axes are from memory; the cable is invented, and the rows are allowed 6 %. Seen: 2 to 3 %, all high.
#[test]
fn printed_currents_of_three_cables_in_soil() {
    let rows = [
        (CU, 211.6, 0.528, [435.0, 465.0]),
        (CU, 500.0, 0.813, [690.0, 745.0]),
        (CU, 1000.0, 1.152, [980.0, 1055.0]),
        (AL, 105.6, 0.372, [230.0, 250.0]),
        (AL, 211.6, 0.528, [340.0, 365.0]),
        (AL, 500.0, 0.813, [540.0, 580.0]),
        (AL, 1000.0, 1.152, [780.0, 840.0]),
    ];
    for (metal, kcmil, conductor_in, printed) in rows {
        let cable = plain(conductor_in);
        let found = |resistivity: f64, degc: f64| {
            let soil = flat_middle_k_m_per_w(resistivity, 0.9144, cable.outside_m, 0.1905);
            let outside = Outside::Soil {
                resistance_k_m_per_w: soil.expect("covered"),
            };
            let circuit = circuit(metal, kcmil, &cable, 0.1905, outside, 20.0);
            circuit.at_temperature(degc).expect("a rating").current_a
        };
        for (degc, expected) in [90.0, 105.0].into_iter().zip(printed) {
            close(found(0.9, degc), expected, 0.06);
            // Twin: soil of 1.2 K·m/W.
            apart(found(1.2, degc), expected, 0.06);
        }
    }
}

// Oracle: nec.duct3x1.*, 2001–5000 V, 90 °C, read in a public copy; 20 °C, 0.9 K·m/W.
// The duct is invented: 5 in of fibre, its axis 36 in deep in 0.9 K·m/W all over. The rows are allowed 6 %. Seen: 3 to 5.4 %, all high.
#[test]
fn printed_currents_of_three_cables_in_one_duct() {
    let rows = [
        (CU, 105.6, 0.372, 195.0),
        (CU, 250.0, 0.575, 320.0),
        (CU, 350.0, 0.681, 385.0),
        (CU, 750.0, 0.998, 585.0),
        (CU, 1000.0, 1.152, 670.0),
        (AL, 66.36, 0.292, 115.0),
        (AL, 211.6, 0.528, 225.0),
        (AL, 350.0, 0.681, 305.0),
        (AL, 500.0, 0.813, 370.0),
        (AL, 1000.0, 1.152, 545.0),
    ];
    for (metal, kcmil, conductor_in, printed) in rows {
        let cable = plain(conductor_in);
        let found = |n_cables| {
            let (inside_m, outer_m) = (0.127, 0.1397);
            let wall = layer_k_m_per_w(4.8, inside_m, outer_m);
            let outside = Outside::Duct {
                filling: Filling::AIR_IN_FIBRE_IN_CONCRETE,
                n_cables,
                group_m: group_diameter_m(n_cables, cable.outside_m).expect("few cables"),
                beyond_k_m_per_w: wall + buried_k_m_per_w(0.9, 0.9144, outer_m).expect("covered"),
            };
            let circuit = circuit(metal, kcmil, &cable, cable.outside_m, outside, 20.0);
            circuit.at_temperature(90.0).expect("a rating").current_a
        };
        close(found(3), printed, 0.06);
        // Twin: the duct warmed by one of its three cables only.
        apart(found(1), printed, 0.06);
    }
}

// Oracle: nec.air1c.*, 2–5 kV, 90 °C at 40 °C, read in a public copy.
// A known disagreement: the film from memory, though it agrees with convection and radiation above, gives 9 to 11 % more than these rows, whose basis is not stated.
#[test]
fn printed_currents_in_air_lie_below_what_the_film_allows() {
    let rows = [
        (CU, 211.6, 0.528, 400.0),
        (CU, 500.0, 0.813, 695.0),
        (CU, 1000.0, 1.152, 1075.0),
        (AL, 105.6, 0.372, 200.0),
        (AL, 211.6, 0.528, 310.0),
        (AL, 500.0, 0.813, 545.0),
        (AL, 1000.0, 1.152, 855.0),
    ];
    for (metal, kcmil, conductor_in, printed) in rows {
        let cable = plain(conductor_in);
        let outside = Outside::Air {
            hanging: Hanging::ALONE,
            outside_m: cable.outside_m,
        };
        let mut circuit = circuit(metal, kcmil, &cable, 1.0, outside, 40.0);
        circuit.conductor.proximity = None;
        let at = |degc| circuit.at_temperature(degc).expect("a rating").current_a;
        let ratio = at(90.0) / printed;
        assert!((1.08..1.12).contains(&ratio), "{kcmil} kcmil: {ratio}");
        // nec.ratio105_90.air: what two temperatures make of it does not depend on the film's size.
        close(at(105.0) / at(90.0), 1.114_702_916, 0.03);
        apart(at(115.0) / at(90.0), 1.114_702_916, 0.03);
    }
}
