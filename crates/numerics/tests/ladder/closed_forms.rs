//! The ladder compared with closed forms and a published section, and its laws.

use super::joints::{joint, star};
use jointwright_numerics::heat::{HeatError, Stuff};
use jointwright_numerics::ladder::{Arm, Hub, Ladder, LadderError, Loss, Ring, Slice, Star};
use jointwright_numerics::rating::{fin, thermal};

const COPPER: Stuff = Stuff {
    conductivity_w_per_mk: 385.0,
    capacity_j_per_m3k: 3.45e6,
};

fn plastic(conductivity_w_per_mk: f64, capacity_j_per_m3k: f64) -> Stuff {
    Stuff {
        conductivity_w_per_mk,
        capacity_j_per_m3k,
    }
}

fn ring(outside_m: f64, stuff: Stuff, at20_ohm_per_m: f64, alpha_per_k: f64) -> Ring {
    Ring {
        outside_m,
        stuff,
        loss: (at20_ohm_per_m > 0.0).then_some(Loss {
            at20_ohm_per_m,
            alpha_per_k,
            constant_w_per_m: 0.0,
        }),
        is_watched: false,
    }
}

fn slice(length_m: f64, rings: Vec<Ring>) -> Slice {
    Slice {
        length_m,
        rings,
        film_w_per_m2k: 8.0,
        ambient_degc: 40.0,
    }
}

fn alone(slices: Vec<Slice>) -> Star {
    Star {
        arms: vec![Arm { slices }],
        hub: Hub::default(),
    }
}

/// The section of `tests/published/heat-sections`, as slices.
fn published() -> Vec<Slice> {
    let (xlpe, body) = (plastic(0.286, 2.16e6), plastic(0.27, 1.9e6));
    let jacket = plastic(0.2857, 2.4e6);
    let ohm = 1.7241e-4;
    let alpha = 0.00393;
    let over = |mut rings: Vec<Ring>| {
        rings.push(ring(0.030, body, 0.0, 0.0));
        rings.push(ring(0.033, jacket, 0.0, 0.0));
        rings
    };
    let conductor = ring(0.00565, COPPER, ohm, alpha);
    let insulation = ring(0.0111, xlpe, 0.0, 0.0);
    let over_jacket = ring(0.0151, jacket, 0.0, 0.0);
    vec![
        slice(0.05, over(vec![ring(0.010, COPPER, 1.5 * ohm, alpha)])),
        slice(0.10, over(vec![conductor, insulation])),
        slice(0.05, over(vec![conductor, insulation, over_jacket])),
        slice(2.80, vec![conductor, insulation, over_jacket]),
    ]
}

fn core_at(ladder: &Ladder, found: &jointwright_numerics::ladder::Temperatures, z: f64) -> f64 {
    let along = ladder.along_core(found, 0);
    let after = along.iter().position(|(place, _)| *place >= z).unwrap();
    if after == 0 {
        return along[0].1;
    }
    let ((z0, t0), (z1, t1)) = (along[after - 1], along[after]);
    t0 + (t1 - t0) * (z - z0) / (z1 - z0)
}

#[test]
fn the_published_section_at_rest() {
    // tests/published/heat-sections/B-steady-250: connector, conductor at 300 and 2500 mm, cable far away.
    let mut ladder = Ladder::new(alone(published())).unwrap();
    let found = ladder.steady(&[250.0]).unwrap();
    let text = include_str!("../../../../tests/published/heat-sections/B-steady-250.answers.json");
    let answers: serde_json::Value = serde_json::from_str(text).unwrap();
    let wanted = |name: &str| -> f64 {
        let list = answers["answers"].as_array().unwrap();
        let answer = list.iter().find(|answer| answer["name"] == name).unwrap();
        answer["value"].as_f64().unwrap()
    };
    let middle = ladder.middle_degc(&found);
    let apart = |found: f64, name: &str| (found - wanted(name)).abs();
    // Of a rise of 22 K.
    assert!(apart(middle, "T_connector_center") < 0.1, "{middle}");
    assert!(apart(core_at(&ladder, &found, 0.3), "T_conductor_z300") < 0.1);
    assert!(apart(core_at(&ladder, &found, 2.5), "T_conductor_z2500") < 0.01);
    let outside = ladder.along_outside(&found, 0);
    assert!(apart(outside[0].1, "T_joint_surface_z0") < 0.1);
    assert!(apart(outside.last().unwrap().1, "T_cable_surface_far") < 0.01);
    let loss = ladder.loss_w(&found, &[250.0]);
    assert!((loss / wanted("loss_total_W") - 1.0).abs() < 1e-4, "{loss}");
    // A connector with the same loss as its conductor is a different joint.
    let mut other = published();
    other[0].rings[0].loss = other[1].rings[0].loss;
    let mut ladder = Ladder::new(alone(other)).unwrap();
    let found = ladder.steady(&[250.0]).unwrap();
    assert!(apart(ladder.middle_degc(&found), "T_connector_center") > 0.3);
}

#[test]
fn a_rod_with_a_source_in_its_middle_is_a_fin() {
    // 10 W between two long rods: each gets half; rise and decay by the closed form.
    let film = 12.0;
    let radius = 0.008;
    let source = 1e-3;
    let mut first = slice(source, vec![ring(radius, COPPER, 5.0 / source, 0.0)]);
    let mut rest = slice(4.0, vec![ring(radius, COPPER, 0.0, 0.0)]);
    first.film_w_per_m2k = film;
    rest.film_w_per_m2k = film;
    let mut ladder = Ladder::finer(alone(vec![first, rest]), 2).unwrap();
    let found = ladder.steady(&[1.0]).unwrap();
    let resistance = 1.0 / (std::f64::consts::TAU * radius * film);
    let area = std::f64::consts::PI * radius * radius;
    let decay = fin::decay_per_m(resistance, 385.0, area);
    for place in [0.1, 0.4, 0.9] {
        let rise = core_at(&ladder, &found, place) - 40.0;
        let wanted = fin::rise_k(10.0, place, resistance, 385.0, area);
        // The film's face differs from the middle of the copper by a thousandth of a kelvin.
        assert!(
            (rise / wanted - 1.0).abs() < 4e-3,
            "{place}: {rise} {wanted}"
        );
        assert!(
            (wanted - 10.0 / (2.0 * 385.0 * area * decay) * (-decay * place).exp()).abs() < 1e-9
        );
    }
}

#[test]
fn layers_without_an_end_are_their_closed_form() {
    let rings = vec![
        ring(0.006, COPPER, 2e-4, 0.0),
        ring(0.012, plastic(0.28, 2e6), 0.0, 0.0),
        ring(0.015, plastic(0.20, 2e6), 0.0, 0.0),
    ];
    let mut ladder = Ladder::new(alone(vec![slice(0.7, rings)])).unwrap();
    let found = ladder.steady(&[300.0]).unwrap();
    let loss = 300.0 * 300.0 * 2e-4;
    let wanted = 40.0
        + loss
            * (thermal::layer_k_m_per_w(1.0 / 0.28, 0.012, 0.024)
                + thermal::layer_k_m_per_w(1.0 / 0.20, 0.024, 0.030)
                + 1.0 / (std::f64::consts::TAU * 0.015 * 8.0));
    // From the middle of the core on, which is warmer than its outside by half of loss/2πk.
    let inside = loss * 0.5 / (std::f64::consts::TAU * 385.0);
    assert!((ladder.middle_degc(&found) - wanted - inside).abs() < 1e-9);
}

#[test]
fn a_lump_cools_with_its_time_constant() {
    // 20 mm of copper in a film: one temperature, to a hundredth.
    let lump = slice(0.02, vec![ring(0.01, COPPER, 0.0, 0.0)]);
    let mut ladder = Ladder::new(alone(vec![lump])).unwrap();
    let start = ladder.even(90.0);
    let constant = 3.45e6 * 0.01 / (2.0 * 8.0);
    let times = [0.1 * constant, constant, 3.0 * constant];
    let found = ladder.after(&start, &[0.0], &times).unwrap();
    for (found, time) in found.iter().zip(times) {
        let wanted = 40.0 + 50.0 * (-time / constant).exp();
        assert!((ladder.middle_degc(found) - wanted).abs() < 0.03, "{time}");
    }
}

#[test]
fn what_is_lost_leaves_through_the_films() {
    let mut n_warming = 0;
    for seed in 0..20 {
        let joint = joint(seed);
        let mut ladder = Ladder::new(star(&joint)).unwrap();
        let found = ladder.steady(&[joint.current_a]).unwrap();
        let loss = ladder.loss_w(&found, &[joint.current_a]);
        let out = ladder.given_off_w(&found);
        assert!((out / loss - 1.0).abs() < 1e-9, "{seed}: {out} of {loss}");
        // While a joint still warms up from the surrounding temperature, part of the loss stays inside.
        let around = joint.arm.slices.iter().map(|slice| slice.ambient_degc);
        let mut around = around;
        if around.any(|degc| degc != joint.ambient_degc) {
            continue;
        }
        n_warming += 1;
        let start = ladder.even(joint.ambient_degc);
        let warming = ladder
            .after(&start, &[joint.current_a], &[1800.0])
            .unwrap()
            .remove(0);
        let still = ladder.loss_w(&warming, &[joint.current_a]);
        assert!(ladder.given_off_w(&warming) < 0.95 * still, "{seed}");
    }
    assert!(n_warming > 3, "{n_warming}");
}

#[test]
fn two_equal_arms_are_one_with_a_mirror() {
    for seed in 0..10 {
        let joint = joint(seed);
        let mut one = Ladder::new(star(&joint)).unwrap();
        let arms = vec![joint.arm.clone(), joint.arm.clone()];
        let mut two = Ladder::new(Star {
            arms,
            hub: Hub::default(),
        })
        .unwrap();
        let current = joint.current_a;
        let (alone, pair) = (
            one.steady(&[current]).unwrap(),
            two.steady(&[current, current]).unwrap(),
        );
        let (a, b) = (one.along_core(&alone, 0), two.along_core(&pair, 1));
        for (a, b) in a.iter().zip(&b) {
            // A hub has one temperature across; a core has nearly one.
            assert!((a.1 - b.1).abs() < 0.02, "{seed}: {a:?} {b:?}");
        }
    }
}

#[test]
fn arms_with_different_loads_are_one_cable_with_different_losses() {
    // The arms laid end to end: halving the current of an arm equals a quarter of its resistance.
    let (near, far) = (published(), published());
    let mut two = Ladder::new(Star {
        arms: vec![
            Arm {
                slices: near.clone(),
            },
            Arm {
                slices: far.clone(),
            },
        ],
        hub: Hub::default(),
    })
    .unwrap();
    let pair = two.steady(&[250.0, 125.0]).unwrap();
    let quartered = far.iter().rev().map(|slice| {
        let mut slice = slice.clone();
        for loss in slice.rings.iter_mut().filter_map(|ring| ring.loss.as_mut()) {
            loss.at20_ohm_per_m /= 4.0;
        }
        slice
    });
    let line: Vec<Slice> = quartered.chain(near).collect();
    let mut line = Ladder::new(alone(line)).unwrap();
    let found = line.steady(&[250.0]).unwrap();
    // The line's middle is 3 m from its beginning; a hub lies between the cores alone.
    let apart = |z: f64| core_at(&line, &found, 3.0 + z) - core_at(&two, &pair, z);
    assert!(apart(0.1).abs() < 0.1, "{}", apart(0.1));
    assert!(apart(1.0).abs() < 0.05);
    let idle = core_at(&line, &found, 2.9) - {
        let along = two.along_core(&pair, 1);
        along.iter().find(|(z, _)| *z > 0.1).unwrap().1
    };
    assert!(idle.abs() < 0.15, "{idle}");
    // The arm with the smaller load is cooler, and its end at the hub is its warmest place.
    let cool = two.along_core(&pair, 1);
    assert!(cool[0].1 > cool.last().unwrap().1 + 3.0);
}

#[test]
fn more_current_is_never_cooler_and_too_much_is_an_error() {
    let joint = joint(3);
    let mut ladder = Ladder::new(star(&joint)).unwrap();
    let mut last = f64::NEG_INFINITY;
    for share in [0.0, 0.3, 0.6, 1.0, 1.4] {
        let found = ladder.steady(&[share * joint.current_a]).unwrap();
        let here = ladder.middle_degc(&found);
        assert!(here > last);
        last = here;
    }
    let far = ladder.steady(&[100.0 * joint.current_a]);
    assert!(matches!(far, Err(LadderError::Heat(HeatError::Runaway))));
}

#[test]
fn what_is_no_ladder_is_said() {
    let rings = vec![ring(0.01, COPPER, 1e-4, 0.0)];
    let mut ladder = Ladder::new(alone(vec![slice(1.0, rings.clone())])).unwrap();
    let wrong = ladder.steady(&[1.0, 2.0]);
    assert!(matches!(
        wrong,
        Err(LadderError::Currents {
            n_currents: 2,
            n_arms: 1
        })
    ));
    let mut adiabatic = slice(1.0, rings.clone());
    adiabatic.film_w_per_m2k = 0.0;
    let mut ladder = Ladder::new(alone(vec![adiabatic])).unwrap();
    let hot = ladder.steady(&[1.0]);
    assert!(matches!(hot, Err(LadderError::Heat(HeatError::NoCooling))));
    let spoilt: [fn(&mut Slice); 5] = [
        |slice| slice.length_m = 0.0,
        |slice| slice.rings.clear(),
        |slice| slice.rings[0].outside_m = f64::NAN,
        |slice| slice.rings[0].stuff.capacity_j_per_m3k = 0.0,
        |slice| slice.film_w_per_m2k = -1.0,
    ];
    for spoil in spoilt {
        let mut wrong = slice(1.0, rings.clone());
        spoil(&mut wrong);
        let slices = vec![slice(1.0, rings.clone()), wrong];
        let refused = Ladder::new(alone(slices));
        assert!(matches!(refused, Err(LadderError::Shape { index: 1, .. })));
    }
    assert!(Ladder::new(alone(Vec::new())).is_err());
}
