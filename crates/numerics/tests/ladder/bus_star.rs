//! Arms that meet in a hub with its own loss, compared with fins solved as a boundary value problem.

use jointwright_numerics::heat::Stuff;
use jointwright_numerics::ladder::{Arm, Hub, Ladder, Loss, Ring, Slice, Star};
use serde_json::Value;

const STARS: &str = include_str!("../../../../tests/published/bus_star/stars.json");
/// Tolerance as a share of the rise: the fins have one temperature across and no end effects, and the cells are finite.
const CLOSE_RATIO: f64 = 2e-3;

fn numbers(value: &Value) -> Vec<f64> {
    let list = value.as_array().expect("a list").iter();
    list.map(|number| number.as_f64().expect("a number"))
        .collect()
}

/// Temperatures of the hub and of each arm 300 mm from it; the loss of the hub times a factor.
fn solved(file: &Value, star: &Value, hub_times: f64) -> Vec<f64> {
    let one = |value: &Value| value.as_f64().expect("a number");
    let alpha_per_k = one(&star["alpha_per_k"]);
    let (films, ambients) = (
        numbers(&star["film_w_per_m2k"]),
        numbers(&star["ambient_degc"]),
    );
    let arms = numbers(&star["ohm_per_m"]).into_iter().enumerate();
    let arm = |(index, at20_ohm_per_m): (usize, f64)| {
        let core = Ring {
            outside_m: one(&file["radius_m"]),
            stuff: Stuff {
                conductivity_w_per_mk: one(&file["conductivity_w_per_mk"]),
                capacity_j_per_m3k: 3.45e6,
            },
            loss: Some(Loss {
                at20_ohm_per_m,
                alpha_per_k,
                constant_w_per_m: 0.0,
            }),
            is_watched: false,
        };
        let slice = |length_m: f64| Slice {
            length_m,
            rings: vec![core],
            film_w_per_m2k: films[index],
            ambient_degc: ambients[index],
        };
        let long = one(&file["length_m"]);
        Arm {
            slices: vec![slice(0.3), slice(long - 0.3)],
        }
    };
    let hub = Hub {
        at20_ohm: hub_times * one(&star["hub_ohm"]),
        alpha_per_k,
        ..Hub::default()
    };
    let star_of = Star {
        arms: arms.map(arm).collect(),
        hub,
    };
    let mut ladder = Ladder::finer(star_of, 4).expect("a ladder");
    let found = ladder
        .steady(&numbers(&star["currents_a"]))
        .expect("a state");
    let mut degc = vec![ladder.middle_degc(&found)];
    degc.extend((0..3).map(|arm| {
        let along = ladder.along_core(&found, arm);
        let after = along.iter().position(|(z, _)| *z > 0.3).expect("a place");
        let ((z0, t0), (z1, t1)) = (along[after - 1], along[after]);
        t0 + (t1 - t0) * (0.3 - z0) / (z1 - z0)
    }));
    degc
}

#[test]
fn a_bus_warms_its_arms_as_fins_with_the_same_heat() {
    let file: Value = serde_json::from_str(STARS).expect("stars");
    for star in file["stars"].as_array().expect("stars") {
        let mut expected = vec![star["hub_degc"].as_f64().expect("a number")];
        expected.extend(numbers(&star["at_300_mm_degc"]));
        let coldest = numbers(&star["ambient_degc"])
            .into_iter()
            .fold(f64::INFINITY, f64::min);
        let off = |found: &[f64]| {
            let each = found.iter().zip(&expected);
            each.map(|(found, expected)| (found - expected).abs() / (expected - coldest))
                .fold(0.0, f64::max)
        };
        let found = solved(&file, star, 1.0);
        assert!(off(&found) < CLOSE_RATIO, "{star}: {found:?} {expected:?}");
        // The twin: a hub loss larger by a tenth is detected.
        if star["hub_ohm"].as_f64() > Some(0.0) {
            assert!(off(&solved(&file, star, 1.1)) > CLOSE_RATIO, "{star}");
        }
    }
}
