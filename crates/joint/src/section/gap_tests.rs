//! The gap before the screen edge and the film of a plug: against gaps solved elsewhere, and against brute force over our own field.
#![allow(
    clippy::disallowed_methods,
    reason = "the environment says whether the run is a long one"
)]

use super::*;
use crate::catalogue::{Body, Catalogue, Filler};
use crate::form::{Complaints, Source};
use jointwright_numerics::field::{Answer, Options, Solved, Unwatched, along, solve};
use jointwright_numerics::gas::{Curve, breakdown_crest_v};
use jointwright_numerics::outline::Point;

const BODY: &str = include_str!("../../../../tests/field/reference-body.toml");
const TAPER: &str = include_str!("../../../../tests/field/reference-taper.toml");
const GAPS: &str = include_str!("../../../../tests/published/gap/gaps.json");
const VOLTS: f64 = 8700.0;
/// Random gaps in the short run and in the long run.
const N_SHORT: u64 = 3;
const N_LONG: u64 = 60;

/// A gap before a screen edge, mm, and the permittivity of its filler.
#[derive(Clone, Copy, Debug)]
struct Gap {
    edge: f64,
    radius: f64,
    bridging: f64,
    filler: Option<f64>,
}

fn body(text: &str, id: &str) -> Body {
    let mut complaints = Complaints::default();
    let source = Source::new("reference.toml", text.to_owned());
    let catalogue = Catalogue::read(&[source], true, &mut complaints);
    let found = catalogue.body(id).cloned();
    found.unwrap_or_else(|| panic!("{:?}", complaints.into_sorted()))
}

#[track_caller]
fn drawn(gap: &Gap) -> Drawn {
    let text = BODY.replace("BRIDGING", &format!("{:.4} mm", gap.bridging));
    let mut profile = Profile::read(&body(&text, "reference-half-joint")).expect("it is known");
    profile.step.filler = gap.filler.map(|relative_permittivity| Filler {
        name: "grease".to_owned(),
        relative_permittivity,
        is_permanent: false,
    });
    let end = End {
        profile: &profile,
        cable: CableShape {
            conductor_radius_m: 6.65e-3,
            insulation_radius_m: 11.1e-3,
            screen_thickness_m: 1e-3,
            relative_permittivity: 2.3,
        },
        sleeve: None,
        is_junction: false,
        drive: Drive {
            voltage: VoltageRms::from_kv(VOLTS * 1e-3),
            frequency_hz: None,
        },
        state: State {
            screen_edge_m: gap.edge * 1e-3,
            insulation_end_m: 50e-3,
            edge_radius_m: gap.radius * 1e-3,
            is_empty: gap.filler.is_none(),
        },
    };
    draw(&end).unwrap_or_else(|why| panic!("{gap:?}: {why:?}"))
}

#[track_caller]
fn film(is_empty: bool) -> Drawn {
    let body = body(TAPER, "reference-tapered-body");
    let state = TaperState {
        film_thickness_m: 0.15e-3,
        is_empty,
    };
    draw_taper(&body.taper.expect("it has one"), &state).unwrap_or_else(|why| panic!("{why:?}"))
}

/// The field as a leg's study solves it.
#[track_caller]
fn solved(drawn: &Drawn) -> Solved {
    let options = Options {
        tolerance: 1e-2,
        n_unknowns_most: 60_000,
        ..Options::default()
    };
    solve(&drawn.section, &drawn.wanted, &options, &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error}"))
}

fn answer(drawn: &Drawn, solved: &Solved, curve: Curve) -> Answer {
    let place = drawn.gap.iter().find(|place| place.curve == curve);
    solved.answers[place.expect("both curves are asked for").wanted_index]
}

/// Inception and its error, kV rms between conductor and earth.
fn inception(drawn: &Drawn, curve: Curve, volts: f64) -> (f64, f64) {
    let solved = solved(drawn);
    let answer = answer(drawn, &solved, curve);
    assert!(answer.is_settled, "{answer:?}");
    let kilovolts = volts * 1e-3 / (std::f64::consts::SQRT_2 * answer.value);
    (kilovolts, kilovolts * answer.error_estimate / answer.value)
}

fn published(gap: &str, curve: Curve) -> (f64, f64) {
    let document: serde_json::Value = serde_json::from_str(GAPS).expect("gaps");
    let name = match curve {
        Curve::Townsend => "shortest.townsend",
        Curve::LowerOfBoth => "shortest.lower_of_both",
    };
    let row = &document["gaps"][gap][name];
    let number = |key: &str| {
        row[key]
            .as_f64()
            .unwrap_or_else(|| panic!("{gap} {name} {key}"))
    };
    (number("inception_kv"), number("error_estimate"))
}

/// Checks that both agree within the error that each states.
#[track_caller]
fn agrees(name: &str, drawn: &Drawn, volts: f64) {
    for curve in [Curve::Townsend, Curve::LowerOfBoth] {
        let (ours, our_error) = inception(drawn, curve, volts);
        let (theirs, their_error) = published(name, curve);
        assert!(
            (ours - theirs).abs() <= our_error + their_error,
            "{name} {curve:?}: {ours} ± {our_error} kV, published {theirs} ± {their_error} kV"
        );
    }
}

const ROUNDED: Gap = Gap {
    edge: 130.0,
    radius: 0.25,
    bridging: 2.0,
    filler: None,
};

// Oracle: tests/published/gap, solved with NGSolve from plain dimensions, ways by brute force.
#[test]
fn gaps_before_a_screen_edge_begin_to_discharge_where_published_ones_do() {
    let sharp = Gap {
        radius: 0.0,
        ..ROUNDED
    };
    let wedge = Gap {
        radius: 0.1,
        bridging: 6.0,
        filler: Some(3.0),
        ..ROUNDED
    };
    agrees("sharp-edge", &drawn(&sharp), VOLTS);
    agrees("rounded-edge", &drawn(&ROUNDED), VOLTS);
    agrees("wedge-filled", &drawn(&wedge), VOLTS);
    // A twin: a tenth of a millimetre of the radius is more than both errors.
    let other = Gap {
        radius: 0.15,
        ..ROUNDED
    };
    let (ours, our_error) = inception(&drawn(&other), Curve::Townsend, VOLTS);
    let (theirs, their_error) = published("rounded-edge", Curve::Townsend);
    assert!(
        (ours - theirs).abs() > our_error + their_error,
        "{ours} {theirs}"
    );
}

#[test]
fn films_of_a_plug_begin_to_discharge_where_published_ones_do() {
    agrees("thin-film", &film(true), 1.0);
    agrees("thin-film-filled", &film(false), 1.0);
}

/// Greatest share of the voltage that air withstands along shortest ways, from `n` places of each side, computed from the dimensions alone.
fn by_brute_force(gap: &Gap, drawn: &Drawn, solved: &Solved, curve: Curve, n: usize) -> f64 {
    let (on, top) = (11.1e-3, 12.1e-3);
    let outline = &drawn.section.outline;
    let side = |tag: &str| {
        let curve = outline.curves.iter().find(|curve| curve.tag == tag);
        let curve = curve.expect("it has both sides");
        [curve.from, curve.to].map(|index| outline.points[index])
    };
    let [cable, rubber] = ["gap_on_cable", "gap_on_rubber"].map(side);
    // The drawn edge may lie a little before the requested place.
    let face = cable
        .iter()
        .map(|at| at.z)
        .fold(f64::NEG_INFINITY, f64::max)
        - gap.radius * 1e-3;
    let rho = gap.radius * 1e-3;
    let to_screen = |at: Point| {
        let r = at.r.clamp(on + rho, top - rho);
        let mut least = at.distance(Point::new(r, face));
        for (center, sign) in [(on + rho, 1.0), (top - rho, -1.0)] {
            let center = Point::new(center, face + rho);
            if sign * (at.r - center.r) <= 0.0 && at.z <= center.z {
                least = least.min((at.distance(center) - rho).abs());
            }
        }
        least
    };
    let sample = |line: [Point; 2]| along(&drawn.section, solved, line[0], line[1], n);
    let samples = [sample(cable), sample(rubber)];
    let (mut most, mut n_ways) = (0.0_f64, 0);
    let mut look = |volts: f64, width: f64| {
        n_ways += 1;
        most = most.max(volts.abs() / breakdown_crest_v(width, 101_325.0, curve));
    };
    for (side, line) in [(0, rubber), (1, cable)] {
        let length = line[0].distance(line[1]);
        let others = &samples[1 - side];
        for here in &samples[side] {
            look(here.potential[0], to_screen(here.at));
            let along = [line[1].r - line[0].r, line[1].z - line[0].z];
            let share = ((here.at.r - line[0].r) * along[0] + (here.at.z - line[0].z) * along[1])
                / (length * length);
            let share = share.clamp(0.0, 1.0);
            let width = here.at.distance(line[0].towards(line[1], share));
            // The potential of the other side is taken as linear between its two neighbours.
            let after = others
                .partition_point(|other| other.share < share)
                .min(others.len() - 1);
            let before = after.saturating_sub(1);
            let [a, b] = [&others[before], &others[after]];
            let part = if after == before {
                0.0
            } else {
                (share - a.share) / (b.share - a.share)
            };
            let there = a.potential[0] + part * (b.potential[0] - a.potential[0]);
            look(here.potential[0] - there, width);
        }
    }
    assert!(n_ways > 3 * n, "{n_ways} ways of {n} places");
    most
}

/// SplitMix64 as shares between 0 and 1.
fn shares(seed: u64) -> impl Iterator<Item = f64> {
    let mut state = seed;
    std::iter::repeat_with(move || {
        state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = state;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) >> 11) as f64 / (1u64 << 53) as f64
    })
}

// A dense grid over the same field finds a way as near to breakdown as the reported way: not nearer by more than the
// error of that way, and not much farther.
#[test]
fn no_way_between_the_samples_is_nearer_to_breakdown_than_the_one_reported() {
    let is_long = std::env::var("JOINTWRIGHT_LONG").is_ok_and(|value| value == "1");
    let n = if is_long { N_LONG } else { N_SHORT };
    for seed in 0..n {
        let shares: Vec<f64> = shares(seed).take(5).collect();
        let between = |low: f64, high: f64, share: f64| low + share * (high - low);
        let gap = Gap {
            edge: between(126.0, 134.0, shares[0]),
            radius: between(0.02, 0.44, shares[1]),
            bridging: between(0.5, 6.0, shares[2]),
            filler: (shares[3] > 0.5).then_some(between(2.0, 5.0, shares[4])),
        };
        let drawn = drawn(&gap);
        let solved = solved(&drawn);
        for curve in [Curve::Townsend, Curve::LowerOfBoth] {
            let answer = answer(&drawn, &solved, curve);
            let found = by_brute_force(&gap, &drawn, &solved, curve, 6000);
            assert!(
                found <= answer.value + answer.error_estimate && found >= 0.98 * answer.value,
                "{gap:?} {curve:?}: {answer:?}, by brute force {found}"
            );
        }
    }
}

// A sharp edge has no arcs and is drawn without them. A rounder edge has the weaker field and the wider gap under it:
// the radius nearest to breakdown, about 0.05 mm, lies inside the range.
#[test]
fn a_sharp_edge_is_drawn_and_the_worst_radius_lies_inside() {
    let of = |radius: f64| {
        let gap = Gap { radius, ..ROUNDED };
        inception(&drawn(&gap), Curve::Townsend, VOLTS).0
    };
    let (sharp, nearly, inside, round) = (of(0.0), of(0.002), of(0.05), of(0.25));
    assert!((nearly / sharp - 1.0).abs() < 0.02, "{nearly} {sharp}");
    assert!(
        inside < 0.98 * sharp && inside < 0.98 * round,
        "{sharp} {inside} {round}"
    );
}
