//! Ratio of the voltage across a gap of air to its breakdown voltage, compared with layers round an axis whose potentials are known.

use jointwright_numerics::case;
use jointwright_numerics::field::{Answer, Options, Unwatched, VACUUM_PERMITTIVITY, Wanted, solve};
use jointwright_numerics::gas::{Curve, breakdown_crest_v};

/// Conductor to 1 mm, a solid to 2 mm, air to 2.1 mm, a shell at earth: 10 kV across both.
const LAYERS: &str = r#"{"case": "layers", "about": "invented",
 "points": [[1, 0], [2, 0], [2.1, 0], [2.1, 3], [2, 3], [1, 3]],
 "curves": [{"from": 0, "to": 1, "tag": "interior"}, {"from": 1, "to": 2, "tag": "interior"}, {"from": 2, "to": 3, "tag": "shell"},
  {"from": 3, "to": 4, "tag": "interior"}, {"from": 4, "to": 5, "tag": "interior"}, {"from": 5, "to": 0, "tag": "core"}, {"from": 1, "to": 4, "tag": "rim"}],
 "regions": [{"name": "solid", "material": "pe", "boundary": [1, 7, 5, 6]}, {"name": "gap", "material": "air", "boundary": [2, 3, 4, -7]}],
 "materials": {"pe": {"eps_r": 2.3}, "air": {"eps_r": 1}}, "potentials_kv": {"core": 10, "shell": 0},
 "wanted": [{"name": "C", "kind": "capacitance"}]}"#;
const PRESSURE: f64 = 101_325.0;

#[track_caller]
fn share(text: &str, ways: &[[&str; 2]], curve: Curve) -> Answer {
    let section = case::read(text).expect("a case").section;
    let tags = |tag: &str| vec![tag.to_owned()];
    let wanted = [Wanted::BreakdownShare {
        region_index: 1,
        ways: ways
            .iter()
            .map(|[from, to]| [tags(from), tags(to)])
            .collect(),
        curve,
        pressure_pa: PRESSURE,
    }];
    let options = Options {
        tolerance: 2e-3,
        ..Options::default()
    };
    let solved = solve(&section, &wanted, &options, &mut Unwatched).expect("it is solved");
    assert!(solved.answers[0].is_settled, "{:?}", solved.answers);
    solved.answers[0]
}

#[track_caller]
fn check(answer: &Answer, expected: f64) {
    assert!(
        (answer.value - expected).abs() <= answer.error_estimate,
        "{answer:?}, expected {expected}"
    );
    assert!(answer.error_estimate < 3e-3 * expected, "{answer:?}");
}

// Oracle: two layers in series, closed form.
#[test]
fn a_gap_round_an_axis_carries_its_share_of_the_voltage() {
    let (solid, air) = (2.0_f64.ln() / 2.3, (2.1_f64 / 2.0).ln());
    let volts = 10e3 * air / (solid + air);
    for curve in [Curve::Townsend, Curve::LowerOfBoth] {
        let expected = volts / breakdown_crest_v(0.1e-3, PRESSURE, curve);
        for ways in [[["rim", "shell"]], [["shell", "rim"]]] {
            let answer = share(LAYERS, &ways, curve);
            check(&answer, expected);
            let (at, to) = answer.at.zip(answer.to).expect("a way");
            assert!((at.distance(to) - 0.1e-3).abs() < 1e-9);
        }
    }
    // The twin: a gap a twentieth wider.
    let wider = LAYERS.replace("2.1", "2.105");
    let answer = share(&wider, &[["rim", "shell"]], Curve::Townsend);
    let expected = volts / breakdown_crest_v(0.1e-3, PRESSURE, Curve::Townsend);
    assert!((answer.value - expected).abs() > answer.error_estimate);
}

// Oracle: the same layers with admittances σ + jωε.
#[test]
fn a_gap_beside_a_layer_that_conducts_carries_the_modulus() {
    let sigma = 5e-9;
    let text = LAYERS
        .replace(
            "{\"eps_r\": 2.3}",
            &format!("{{\"eps_r\": 2.3, \"sigma_s_per_m\": {sigma:e}}}"),
        )
        .replace("\"about\"", "\"frequency_hz\": 50, \"about\"");
    let loss = sigma / (std::f64::consts::TAU * 50.0 * VACUUM_PERMITTIVITY);
    // The solid's impedance is ln 2 / (2.3 − j loss), the air's is ln 1.05.
    let (size, air) = (2.3_f64.powi(2) + loss * loss, (2.1_f64 / 2.0).ln());
    let solid = [2.0_f64.ln() * 2.3 / size, 2.0_f64.ln() * loss / size];
    let volts = 10e3 * air / (solid[0] + air).hypot(solid[1]);
    let expected = volts / breakdown_crest_v(0.1e-3, PRESSURE, Curve::Townsend);
    check(
        &share(&text, &[["rim", "shell"]], Curve::Townsend),
        expected,
    );
}

#[test]
fn a_gap_between_conductors_at_one_potential_is_not_near_at_all() {
    let text = LAYERS
        .replace("\"tag\": \"rim\"", "\"tag\": \"held\"")
        .replace("\"shell\": 0", "\"shell\": 0, \"held\": 0");
    // The reader complains about a gap without a field, so the case is made after reading.
    assert!(case::read(&text).is_err());
    let mut section = case::read(LAYERS).expect("a case").section;
    section.outline.curves[6].tag = "held".to_owned();
    section.potentials.push(("held".to_owned(), 0.0));
    let wanted = [Wanted::BreakdownShare {
        region_index: 1,
        ways: vec![[vec!["held".to_owned()], vec!["shell".to_owned()]]],
        curve: Curve::Townsend,
        pressure_pa: PRESSURE,
    }];
    let solved = solve(&section, &wanted, &Options::default(), &mut Unwatched).unwrap();
    let answer = solved.answers[0];
    assert!(answer.is_settled && answer.value == 0.0 && answer.at.is_none());
}
