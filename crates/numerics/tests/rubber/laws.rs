//! Laws that hold for every tube.

use jointwright_numerics::rubber::{Decay, Ends, Law, Ring, Stay, Tube};
use proptest::prelude::*;

fn law() -> impl Strategy<Value = Law> {
    let modulus = 0.05e6..3e6_f64;
    prop_oneof![
        modulus
            .clone()
            .prop_map(|modulus_pa| Law::NeoHookean { modulus_pa }),
        (0.02e6..1e6_f64, 0.0..4.0_f64).prop_map(|(c1_pa, ratio)| Law::MooneyRivlin {
            c1_pa,
            c2_pa: c1_pa * ratio,
        }),
        (modulus, 40.0..400.0_f64).prop_map(|(modulus_pa, limit)| Law::Gent { modulus_pa, limit }),
    ]
}

fn tube() -> impl Strategy<Value = Tube> {
    let rings = proptest::collection::vec((1.02..1.8_f64, law()), 1..4);
    (3e-3..25e-3_f64, rings).prop_map(|(bore_m, rings)| {
        let mut inside = bore_m;
        let ring = |(ratio, law): (f64, Law)| {
            inside *= ratio;
            Ring {
                outside_m: inside,
                law,
            }
        };
        Tube::new(bore_m, rings.into_iter().map(ring).collect()).expect("a tube")
    })
}

fn decay() -> impl Strategy<Value = Decay> {
    let constants = (
        0.0..1.0_f64,
        1e4..1e9_f64,
        0.1..1.0_f64,
        260.0..330.0_f64,
        0.0..120e3_f64,
    );
    constants.prop_map(
        |(greatest, time_s, power, reference_k, activation_j_per_mol)| Decay {
            greatest,
            time_s,
            power,
            reference_k,
            activation_j_per_mol,
        },
    )
}

fn stay() -> impl Strategy<Value = Stay> {
    (230.0..340.0_f64, 0.0..2e8_f64).prop_map(|(temperature_k, time_s)| Stay {
        temperature_k,
        time_s,
    })
}

fn least(tube: &Tube, radius_m: f64) -> f64 {
    tube.pressed_least(radius_m)
        .expect("a pressure")
        .pressure_pa
}

/// A rubber with a dominant second constant presses less, not more, once it is stretched far with free ends.
#[test]
fn a_rubber_that_may_fall_is_named() {
    let law = Law::MooneyRivlin {
        c1_pa: 0.0,
        c2_pa: 20e3,
    };
    let ring = Ring {
        outside_m: 3.06e-3,
        law,
    };
    let tube = Tube::new(3e-3, vec![ring]).expect("a tube");
    assert!(least(&tube, 7.5e-3) < 0.99 * least(&tube, 6.9e-3));
    assert!(law.may_fall());
}

proptest! {
    #[test]
    fn a_thinner_cylinder_is_never_pressed_harder(tube in tube(), thin in 0.8..2.4_f64, more in 1.0..1.5_f64) {
        let radius = tube.bore_m() * thin;
        let (thinner, thicker) = (least(&tube, radius), least(&tube, radius * more));
        prop_assert!(thinner <= thicker * (1.0 + 1e-9) + 1e-6, "{thinner} Pa, then {thicker} Pa");
    }

    #[test]
    fn a_bore_that_has_set_more_never_presses_harder(
        tube in tube(), stretch in 1.05..2.4_f64, set in 0.0..0.5_f64, more in 0.0..0.5_f64,
    ) {
        let radius = tube.bore_m() * stretch;
        let set_by = |share: f64| tube.set_to(tube.bore_m() + share * (radius - tube.bore_m()));
        let (less, more) = (least(&set_by(set), radius), least(&set_by(set + more), radius));
        prop_assert!(more <= less * (1.0 + 1e-9) + 1e-6, "{less} Pa, then {more} Pa");
        prop_assert!(less <= least(&tube, radius) * (1.0 + 1e-9) + 1e-6);
    }

    #[test]
    fn without_time_nothing_is_used_up(decay in decay(), temperature_k in 230.0..340.0_f64) {
        let never = Stay { temperature_k, time_s: 0.0 };
        prop_assert_eq!(decay.after(&[never, never]), 0.0);
        prop_assert_eq!(decay.after(&[]), 0.0);
        // Twin: a day has an effect, unless the rubber keeps all of the property.
        let day = Stay { temperature_k, time_s: 86_400.0 };
        prop_assert!(decay.greatest == 0.0 || decay.after(&[day]) > 0.0);
    }

    #[test]
    fn the_order_of_stays_does_not_matter(decay in decay(), stays in proptest::collection::vec(stay(), 1..8), turn in 0..8_usize) {
        let mut turned = stays.clone();
        let turn = turn % stays.len();
        turned.rotate_left(turn);
        turned.reverse();
        prop_assert_eq!(decay.after(&stays), decay.after(&turned));
    }

    #[test]
    fn longer_and_warmer_use_up_more(decay in decay(), stay in stay(), longer in 1.0..3.0_f64, warmer in 0.0..40.0_f64) {
        let used = decay.after(&[stay]);
        let long = Stay { time_s: stay.time_s * longer, ..stay };
        let warm = Stay { temperature_k: stay.temperature_k + warmer, ..stay };
        prop_assert!(decay.after(&[long]) >= used);
        prop_assert!(decay.after(&[warm]) >= used);
        prop_assert!((0.0..=decay.greatest).contains(&used));
    }

    #[test]
    fn tube_and_cylinder_that_grow_alike_press_alike(tube in tube(), stretch in 1.01..2.4_f64, grown in 0.9..1.1_f64) {
        let radius = tube.bore_m() * stretch;
        let before = least(&tube, radius);
        let after = least(&tube.grown(grown, 1.0), radius * grown);
        prop_assert!((after - before).abs() <= 1e-8 * before.max(1.0), "{before} Pa, then {after} Pa");
        // Twin: a changed modulus is detected.
        let stiffer = least(&tube.grown(grown, 1.1), radius * grown);
        prop_assert!((stiffer / before - 1.1).abs() < 1e-7);
    }

    #[test]
    fn the_radius_for_a_pressure_is_pressed_with_it(tube in tube(), stretch in 1.02..1.9_f64) {
        let radius = tube.bore_m() * stretch;
        let pressure = least(&tube, radius);
        let found = tube.radius_for(pressure).expect("a radius");
        prop_assert!((least(&tube, found) / pressure - 1.0).abs() < 1e-8, "{found} m for {radius} m");
    }

    // The force is derived again from the energy: dW/dλz at constant bore radius is the force on the ends.
    #[test]
    fn free_ends_are_where_the_energy_is_least(stretch in 1.05..2.2_f64, ratio in 1.2..3.0_f64) {
        let law = Law::MooneyRivlin { c1_pa: 0.2e6, c2_pa: 0.05e6 };
        let bore = 10e-3;
        let tube = Tube::new(bore, vec![Ring { outside_m: bore * ratio, law }]).expect("a tube");
        let found = tube.pressed(bore * stretch, Ends::Free).expect("a pressure");
        let energy = |axial: f64| {
            let n = 4000;
            let (from, to) = (bore * bore, bore * bore * ratio * ratio);
            let step = (to - from) / f64::from(n);
            (0..n).map(|index| {
                let relaxed_2 = from + (f64::from(index) + 0.5) * step;
                let radius_2 = (bore * stretch).powi(2) + (relaxed_2 - from) / axial;
                let hoop_2 = radius_2 / relaxed_2;
                let (radial_2, axial_2) = (1.0 / (hoop_2 * axial * axial), axial * axial);
                let i1 = hoop_2 + radial_2 + axial_2;
                let i2 = 1.0 / hoop_2 + 1.0 / radial_2 + 1.0 / axial_2;
                (0.2e6 * (i1 - 3.0) + 0.05e6 * (i2 - 3.0)) * step / 2.0
            }).sum::<f64>()
        };
        let here = energy(found.axial_stretch);
        prop_assert!(energy(found.axial_stretch * 1.003) > here);
        prop_assert!(energy(found.axial_stretch / 1.003) > here);
        prop_assert_ne!(found.axial_stretch, 1.0);
        prop_assert!(tube.pressed_least(bore * stretch).expect("a pressure").pressure_pa <= found.pressure_pa);
    }
}
