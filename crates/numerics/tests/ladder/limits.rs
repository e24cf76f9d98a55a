//! Loads and times to a temperature, each checked by the temperature that it causes.

use super::joints::{joint, star};
use jointwright_numerics::ladder::{Ladder, Spot};

#[test]
fn the_load_to_a_temperature_brings_that_temperature() {
    for seed in 0..12 {
        let joint = joint(seed);
        let mut ladder = Ladder::new(star(&joint)).unwrap();
        for spot in [Spot::Middle, Spot::Watched] {
            let limit = joint.ambient_degc + 70.0;
            let currents = [joint.current_a];
            let load = ladder
                .load_to_degc(&currents, spot, limit)
                .unwrap()
                .unwrap();
            let found = ladder.steady(&[load * joint.current_a]).unwrap();
            let reached = ladder.at_spot_degc(&found, spot);
            assert!(
                reached <= limit && reached > limit - 0.01,
                "{seed}: {reached} of {limit}"
            );
        }
        // If it is warmer without any load, no load gives that temperature.
        let still = ladder.steady(&[0.0]).unwrap();
        let cold = ladder.middle_degc(&still) - 1.0;
        let none = ladder.load_to_degc(&[joint.current_a], Spot::Middle, cold);
        assert_eq!(none.unwrap(), None);
    }
}

#[test]
fn an_emergency_lasts_until_the_limit_and_never_if_it_stays_below() {
    for seed in 0..5 {
        let joint = joint(seed);
        let mut ladder = Ladder::new(star(&joint)).unwrap();
        let start = ladder.steady(&[0.7 * joint.current_a]).unwrap();
        let at_rest = ladder.steady(&[1.2 * joint.current_a]).unwrap();
        let (from, to) = (ladder.middle_degc(&start), ladder.middle_degc(&at_rest));
        let limit = from + 0.6 * (to - from);
        let currents = [1.2 * joint.current_a];
        let lasts = |ladder: &mut Ladder, limit: f64, currents: &[f64]| {
            let longest = 1000.0 * 3600.0;
            ladder
                .lasts_s(&start, currents, Spot::Middle, limit, longest)
                .unwrap()
        };
        let time = lasts(&mut ladder, limit, &currents).unwrap();
        let found = ladder.after(&start, &currents, &[time]).unwrap().remove(0);
        assert!((ladder.middle_degc(&found) - limit).abs() < 0.01, "{seed}");
        // A slightly lower current lasts longer, a lower limit is reached sooner.
        // A start above the limit gives 0, and a limit that is not reached gives `None`.
        let less = [1.15 * joint.current_a];
        assert!(
            lasts(&mut ladder, limit, &less).unwrap() > 1.05 * time,
            "{seed}"
        );
        let lower = from + 0.5 * (to - from);
        assert!(
            lasts(&mut ladder, lower, &currents).unwrap() < 0.95 * time,
            "{seed}"
        );
        assert_eq!(lasts(&mut ladder, from - 1.0, &currents), Some(0.0));
        assert_eq!(lasts(&mut ladder, to + 1.0, &currents), None);
    }
}

/// Another film or another loss keeps the cells; another joint does not, and the ladder is then as good as new.
#[test]
fn a_ladder_with_an_exchanged_star_is_a_new_one() {
    let mut ladder = Ladder::new(star(&joint(0))).unwrap();
    let mut other = joint(0);
    for slice in &mut other.arm.slices {
        slice.film_w_per_m2k *= 1.3;
    }
    let before = ladder.steady(&[other.current_a]).unwrap();
    for next in [other, joint(1), joint(0)] {
        ladder.exchange(star(&next)).unwrap();
        let found = ladder.steady(&[next.current_a]).unwrap();
        let mut new = Ladder::new(star(&next)).unwrap();
        assert_eq!(found, new.steady(&[next.current_a]).unwrap());
        assert_eq!(ladder.hottest_watched(&found), new.hottest_watched(&found));
        assert_eq!(found == before, next.arm == joint(0).arm);
    }
}
