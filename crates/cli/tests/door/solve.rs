//! `solve`: answers of section cases, and refusals of cases that cannot be used.

use super::{Vault, tree};
use crate::structure::differences;
use serde_json::Value;

/// Text of the coaxial slice among the published sections.
fn slice() -> String {
    let path = tree().join("tests/published/field-sections/A1a.case.json");
    std::fs::read_to_string(path).expect("the case is there")
}

fn json(text: &str) -> Value {
    serde_json::from_str(text).expect("it is JSON")
}

fn schema(of: &str) -> Value {
    let ran = Vault::new().run(&["schema", of]);
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
    json(&ran.out)
}

#[test]
fn json_prints_one_document_as_the_schema_of_answers_says() {
    let vault = Vault::new();
    vault.write("a.case.json", slice());
    let ran = vault.run(&["solve", "a.case.json", "--json"]);
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""), "{ran:?}");
    let mut document = json(&ran.out);
    let schema = schema("answers");
    assert_eq!(differences(&schema, &document), Vec::<String>::new());
    assert_eq!(
        (&document["case"], &document["answers"][0]["unit"]),
        (&"A1a".into(), &"pF".into())
    );
    // The closed form: 2π ε0 L / (ln(11.1/6.65)/2.3 + ln(30/11.1)/2.8), 1.92553 pF.
    let found = document["answers"][0]["value"].as_f64().expect("a number");
    assert!((found - 1.925_528).abs() < 1e-4, "{found}");
    assert!(document["answers"].as_array().is_some_and(|a| a.len() == 5));
    assert!(
        document["seconds"]["total"]
            .as_f64()
            .is_some_and(|s| s > 0.0)
    );
    document["answers"][0]["value"] = Value::Null;
    assert_eq!(differences(&schema, &document).len(), 1);
}

#[test]
fn the_page_keeps_to_80_columns_and_says_what_it_is() {
    let vault = Vault::new();
    vault.write("a.case.json", slice());
    let ran = vault.run(&["solve", "a.case.json", "--svg", "a.svg"]);
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""), "{ran:?}");
    assert!(ran.out.lines().all(|line| line.chars().count() <= 80));
    for words in [
        "A1a: coaxial two-layer slice L=20",
        "Computed from the drawing given; nobody has judged it.",
        "1.9255",
        "unknowns;",
        "Wrote a.svg",
    ] {
        assert!(ran.out.contains(words), "`{words}` is not in {}", ran.out);
    }
    let svg = vault.read("a.svg");
    assert!(svg.starts_with("<svg ") && svg.contains("coaxial two-layer slice L=20"));
    assert!(svg.contains("nobody has judged it") && !svg.contains("NaN"));
}

#[test]
fn a_closer_tolerance_gives_closer_answers() {
    let vault = Vault::new();
    vault.write("a.case.json", slice());
    let off = |tolerance: &str| {
        let ran = vault.run(&["solve", "a.case.json", "--json", "--tolerance", tolerance]);
        assert_eq!(ran.code, Some(0), "{ran:?}");
        let document = json(&ran.out);
        let peak = &document["answers"][1];
        let error = peak["error_estimate"].as_f64().expect("an estimate");
        let value = peak["value"].as_f64().expect("a number");
        assert!(
            peak["settled"] == true && error <= tolerance.parse::<f64>().expect("a number") * value
        );
        // U / (r Σ …) at the conductor, 0.984 376 kV/mm by the closed form.
        (value - 0.984_376).abs()
    };
    let (coarse, fine) = (off("0.1"), off("1e-5"));
    assert!(fine < 1e-5 && coarse < 0.1, "{coarse}, {fine}");
}

#[test]
fn a_case_that_cannot_be_used_ends_with_2_and_every_complaint() {
    let vault = Vault::new();
    let text = slice()
        .replace("\"mm\"", "\"in\"")
        .replace("\"gnd_outer\": 0.0", "\"gnd_oter\": 0.0");
    vault.write("a.case.json", text);
    let ran = vault.run(&["solve", "a.case.json", "--svg", "a.svg", "--json"]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{ran:?}");
    let lines: Vec<&str> = ran.err.lines().collect();
    assert_eq!(lines.len(), 3, "{ran:?}");
    assert!(
        lines[0].starts_with("a.case.json:5:13 units.length: Found \"in\""),
        "{}",
        lines[0]
    );
    assert!(lines[1].contains("potentials_kv.gnd_oter: No curve has the tag \"gnd_oter\""));
    assert!(lines[2].contains("wanted[0].kind: A capacitance is between two different potentials"));
    assert!(!vault.path("a.svg").exists());
}

#[test]
fn files_that_are_none_end_with_2() {
    let vault = Vault::new();
    for (name, bytes) in [
        ("empty.json", &b""[..]),
        ("binary.json", b"{\n\xff\xfe"),
        ("job.toml", b"id = 1"),
    ] {
        vault.write(name, bytes);
        let ran = vault.run(&["solve", name]);
        assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{ran:?}");
        assert!(ran.err.starts_with(&format!("{name}:")), "{}", ran.err);
    }
    let ran = vault.run(&["solve", "binary.json"]);
    assert!(
        ran.err
            .contains("binary.json:2:1 The byte here is not UTF-8"),
        "{}",
        ran.err
    );
    let ran = vault.run(&["solve", "none.json"]);
    assert!(
        ran.code == Some(2)
            && ran
                .err
                .contains("none.json:1:1 The case file cannot be read")
    );
    vault.write("a.case.json", slice());
    let ran = vault.run(&["solve", "a.case.json", "--svg", "none/a.svg"]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""));
    assert!(ran.err.contains("cannot write none/a.svg"), "{}", ran.err);
}

#[test]
fn a_tolerance_outside_its_range_is_refused() {
    let vault = Vault::new();
    vault.write("a.case.json", slice());
    for tolerance in ["0", "-0.1", "0.3", "1e-7", "nan", "close"] {
        let argument = format!("--tolerance={tolerance}");
        let ran = vault.run(&["solve", "a.case.json", &argument]);
        assert_eq!(
            (ran.code, ran.out.as_str()),
            (Some(2), ""),
            "{tolerance}: {ran:?}"
        );
        assert!(ran.err.contains("expected a number"), "{}", ran.err);
    }
}

#[test]
fn physics_that_is_not_known_is_said_so() {
    let vault = Vault::new();
    vault.write("cold.json", r#"{"case": "cold", "physics": "frost"}"#);
    let ran = vault.run(&["solve", "cold.json"]);
    assert_eq!(ran.code, Some(2));
    assert!(
        ran.err
            .contains("cold.json:1:29 physics: Found \"frost\"; expected \"electric\" or \"heat\""),
        "{}",
        ran.err
    );
}

#[test]
fn heat_has_the_temperatures_of_the_reference() {
    let schema = schema("answers");
    for name in ["B-steady-250", "B-step-250"] {
        let path = |kind: &str| {
            let name = format!("tests/published/heat-sections/{name}.{kind}.json");
            tree().join(name).to_string_lossy().into_owned()
        };
        let vault = Vault::new();
        let ran = vault.run(&["solve", &path("case"), "--json"]);
        assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""), "{ran:?}");
        let document = json(&ran.out);
        assert_eq!(differences(&schema, &document), Vec::<String>::new());
        let text = std::fs::read_to_string(path("answers")).expect("the answers are there");
        let reference = json(&text);
        let (found, expected) = (&document["answers"], &reference["answers"]);
        let expected = expected.as_array().expect("a list");
        assert!(expected.len() > 10);
        for (index, expected) in expected.iter().enumerate() {
            let found = &found[index];
            assert_eq!(found["name"], expected["name"]);
            let number = |of: &Value| of["value"].as_f64().expect("a number");
            // Tolerances asked for: 0.1 K steady, 0.3 K after a step.
            assert!(
                (number(found) - number(expected)).abs() < 0.01,
                "{found} {expected}"
            );
        }
        let page = vault.run(&["solve", &path("case")]).out;
        assert!(page.contains("degC") && page.contains("nobody has judged it"));
        assert!(
            page.lines().all(|line| line.chars().count() <= 80),
            "{page}"
        );
    }
}

#[test]
fn every_published_case_and_the_example_are_as_the_schema_of_cases_says() {
    let schema = schema("case");
    let mut paths = vec![tree().join("examples/screen-edge.case.json")];
    for folder in ["field-sections", "heat-sections"] {
        let folder = tree().join("tests/published").join(folder);
        for entry in std::fs::read_dir(folder).expect("the folder is there") {
            let path = entry.expect("an entry").path();
            if path.to_string_lossy().ends_with(".case.json") {
                paths.push(path);
            }
        }
    }
    assert!(paths.len() > 10);
    for path in paths {
        let text = std::fs::read_to_string(&path).expect("the case is there");
        let mut case = json(&text);
        let found = differences(&schema, &case);
        assert!(found.is_empty(), "{}: {found:#?}", path.display());
        case["curves"][0]["tag"] = Value::from(1);
        assert_eq!(differences(&schema, &case).len(), 1);
    }
}

#[test]
fn the_help_of_solve_says_what_each_exit_code_means() {
    let ran = Vault::new().run(&["solve", "--help"]);
    assert_eq!(ran.code, Some(0));
    assert!(ran.out.lines().all(|line| line.chars().count() <= 80));
    let whole: Vec<&str> = ran.out.split_whitespace().collect();
    let whole = whole.join(" ");
    for words in [
        "0 it has answers",
        "2 the case cannot be used",
        "it judges nothing",
    ] {
        assert!(whole.contains(words), "`{words}` is not in {whole}");
    }
}

#[test]
fn tubes_of_rubber_have_the_pressure_of_the_reference() {
    let path = tree().join("tests/published/rubber-tube/reference.json");
    let cases = json(&std::fs::read_to_string(path).expect("they are there"));
    let schema = schema("answers");
    for case in cases.as_array().expect("a list") {
        let vault = Vault::new();
        vault.write("tube.case.json", case.to_string());
        let ran = vault.run(&["solve", "tube.case.json", "--json"]);
        assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""), "{ran:?}");
        let document = json(&ran.out);
        assert_eq!(differences(&schema, &document), Vec::<String>::new());
        let number = |value: &Value| value.as_f64().expect("a number");
        let (found, expected) = (
            number(&document["pressure_mpa"]),
            number(&case["pressure_mpa"]),
        );
        assert!((found / expected - 1.0).abs() < 1e-8, "{case}: {found}");
        // The page for people, too.
        let page = vault.run(&["solve", "tube.case.json"]).out;
        assert!(page.contains(&format!("{expected:.9}")), "{page}");
        assert!(page.contains("nobody has judged it"), "{page}");
        assert!(page.lines().all(|line| line.chars().count() <= 80));
        // It has no picture, and no file is left behind.
        let ran = vault.run(&["solve", "tube.case.json", "--svg", "a.svg"]);
        assert_eq!(ran.code, Some(2));
        assert!(ran.err.contains("Leave --svg out"), "{}", ran.err);
    }
}

#[test]
fn the_example_of_a_tube_is_as_the_schema_says_and_has_an_answer() {
    let path = tree().join("examples/tube.case.json");
    let text = std::fs::read_to_string(&path).expect("the example is there");
    let (schema, mut case) = (schema("case"), json(&text));
    assert_eq!(differences(&schema, &case), Vec::<String>::new());
    let vault = Vault::new();
    vault.write("tube.case.json", &text);
    let ran = vault.run(&["solve", "tube.case.json"]);
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""), "{ran:?}");
    assert!(ran.out.contains("INVENTED"), "{}", ran.out);
    case["stretch"] = Value::from(0.5);
    assert!(!differences(&schema, &case).is_empty());
    vault.write("tube.case.json", case.to_string());
    let ran = vault.run(&["solve", "tube.case.json"]);
    assert_eq!(ran.code, Some(2));
    assert!(
        ran.err
            .contains("stretch: Found 0.5; expected a number from 1"),
        "{}",
        ran.err
    );
}
