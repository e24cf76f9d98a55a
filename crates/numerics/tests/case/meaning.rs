//! Meaning of a case: units, regimes, and the answers' document.

use super::{PUBLISHED, SLICE, case, exchanged};
use jointwright_numerics::case::{AnswersDoc, Run, SecondsDoc, answers_schema, document, schema};
use jointwright_numerics::field::{Answer, Conductivity, Regime, Wanted};
use jointwright_numerics::outline::{Point, Shape};

#[test]
fn every_published_case_is_read() {
    for (name, text) in PUBLISHED {
        let case = case(text);
        assert_eq!(case.name, *name);
        assert!(!case.about.is_empty() && !case.wanted.is_empty());
    }
}

#[test]
fn numbers_come_in_si_units() {
    let read = case(SLICE);
    let section = &read.section;
    assert_eq!(section.outline.points[4], Point::new(0.03, 0.02));
    assert_eq!(section.potentials[0], ("cond".to_owned(), 8700.0));
    assert_eq!(section.leave_out[0].radius, 0.0005);
    assert_eq!(
        section.materials[1].conductivity,
        Conductivity::Constant(1e-9)
    );
    assert_eq!(
        section.materials[0].conductivity,
        Conductivity::Constant(0.0)
    );
    assert_eq!(section.regime, Regime::Capacitive);
    let kinds: Vec<&str> = read.wanted.iter().map(|asked| asked.kind).collect();
    assert_eq!(
        kinds[3..],
        [
            "peak-tangential-on-line",
            "potential-at",
            "field-at",
            "axial-field-at"
        ]
    );
    assert_eq!(
        read.wanted[6].wanted,
        Wanted::AxialFieldAt {
            at: Point::new(0.012, 0.007)
        }
    );
}

#[test]
fn arcs_and_reversed_curves_come_as_written() {
    let (_, text) = PUBLISHED[1];
    let outline = case(text).section.outline;
    assert!(matches!(outline.curves[5].shape, Shape::Arc { .. }));
    let side = outline.regions[1].boundary[0];
    assert!(side.curve_index == 3 && side.is_reversed);
}

#[test]
fn the_frequency_says_which_currents_count() {
    let regime = |field: &str| {
        let text = exchanged(SLICE, "\"leave_out\"", &format!("{field} \"leave_out\""));
        let text = exchanged(
            &text,
            "{\"eps_r\": 2.3}",
            "{\"eps_r\": 2.3, \"sigma_s_per_m\": 1e-12}",
        );
        case(&text).section.regime
    };
    assert_eq!(regime(""), Regime::Capacitive);
    assert_eq!(regime("\"frequency_hz\": 0,"), Regime::Resistive);
    assert_eq!(
        regime("\"frequency_hz\": 0.1,"),
        Regime::Complex { frequency_hz: 0.1 }
    );
}

#[test]
fn a_conductivity_may_rise_with_the_field() {
    let rising =
        "\"sigma_rising\": {\"at_rest_s_per_m\": 1e-10, \"knee_kv_per_mm\": 0.5, \"power\": 3}";
    let text = exchanged(SLICE, "\"sigma_s_per_m\": 1e-9", rising);
    let expected = Conductivity::Rising {
        at_rest: 1e-10,
        knee: 5e5,
        power: 3.0,
    };
    assert_eq!(case(&text).section.materials[1].conductivity, expected);
}

#[test]
fn what_may_be_absent_may_be_absent() {
    let text = exchanged(
        SLICE,
        " \"units\": {\"length\": \"mm\", \"potential\": \"kV\"},\n",
        "",
    );
    let text = exchanged(&text, " \"about\": \"invented\",\n", "");
    let text = exchanged(
        &text,
        " \"leave_out\": [{\"at\": [6, 20], \"radius\": 0.5}],\n",
        "",
    );
    assert_eq!(case(&text).section.leave_out.len(), 0);
    assert_eq!(case(&format!("\u{feff}{text}")).about, "");
}

fn document_of(value: f64, phase: Option<f64>) -> AnswersDoc {
    let case = case(SLICE);
    let answer = Answer {
        value,
        phase,
        error_estimate: value * 1e-4,
        at: Some(Point::new(0.006, 0.02)),
        to: None,
        is_settled: phase.is_none(),
    };
    let run = Run {
        n_unknowns: 12,
        seconds: SecondsDoc {
            total: 1.5,
            ..SecondsDoc::default()
        },
        residuals: Vec::new(),
        cut_short: None,
    };
    document(&case, &vec![answer; case.wanted.len()], run)
}

#[test]
fn answers_come_in_the_units_of_files_with_every_field_of_the_format() {
    let document = document_of(2.0, None);
    let numbers: Vec<(f64, &str)> = document
        .answers
        .iter()
        .map(|a| (a.value, a.unit.as_str()))
        .collect();
    assert_eq!(numbers[0], (2e12, "pF"));
    assert_eq!(numbers[1], (2e-6, "kV/mm"));
    assert_eq!(numbers[4], (2e-3, "kV"));
    let json = serde_json::to_value(&document).expect("it is JSON");
    for field in ["case", "answers", "unknowns"] {
        assert!(!json[field].is_null(), "{field}");
    }
    for field in ["mesh", "assemble", "solve", "total"] {
        assert!(json["seconds"][field].is_number(), "{field}");
    }
    let answer = json["answers"][1].as_object().expect("a table");
    for field in ["name", "value", "unit", "error_estimate", "at", "settled"] {
        assert!(answer.contains_key(field), "{field}");
    }
    assert_eq!(json["answers"][1]["at"], serde_json::json!([6.0, 20.0]));
    assert!(!answer.contains_key("phase_deg"));
    let json = serde_json::to_value(document_of(2.0, Some(0.5))).expect("it is JSON");
    let degrees = json["answers"][0]["phase_deg"].as_f64().expect("a number");
    assert!((degrees - 28.647_889_756_541_16).abs() < 1e-12);
}

#[test]
fn schemas_name_the_fields_of_case_and_answers() {
    let schema = schema();
    let case = &schema["oneOf"][0];
    assert_eq!(case["additionalProperties"], false);
    assert_eq!(
        case["properties"]["wanted"]["items"]["oneOf"]
            .as_array()
            .map(Vec::len),
        Some(7)
    );
    let answers = answers_schema();
    let required = answers["required"].as_array().expect("a list");
    for field in ["case", "answers", "unknowns", "seconds"] {
        assert!(required.iter().any(|name| name == field), "{field}");
    }
}
