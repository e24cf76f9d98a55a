//! The schemas, against every file that the project has.

use super::{EXAMPLES, Vault, example, tree};
use crate::structure::differences;
use serde_json::Value;

fn schema(of: &str) -> Value {
    let ran = Vault::new().run(&["schema", of]);
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
    serde_json::from_str(&ran.out).expect("the schema is JSON")
}

/// A TOML file as JSON; dates become text.
fn json(text: &str) -> Value {
    fn value(found: toml::Value) -> Value {
        match found {
            toml::Value::String(text) => text.into(),
            toml::Value::Integer(number) => number.into(),
            toml::Value::Float(number) => number.into(),
            toml::Value::Boolean(flag) => flag.into(),
            toml::Value::Datetime(date) => date.to_string().into(),
            toml::Value::Array(items) => items.into_iter().map(value).collect(),
            toml::Value::Table(table) => {
                Value::Object(table.into_iter().map(|(k, v)| (k, value(v))).collect())
            }
        }
    }
    value(toml::Value::Table(text.parse().expect("it is TOML")))
}

#[track_caller]
fn check(schema: &Value, document: &Value, what: &str) {
    let found = differences(schema, document);
    assert!(found.is_empty(), "{what}: {found:#?}");
}

#[test]
fn every_job_of_the_project_is_as_the_schema_of_jobs_says() {
    let schema = schema("job");
    for slug in EXAMPLES {
        let text = std::fs::read_to_string(example(slug)).expect("the example is there");
        check(&schema, &json(&text), slug);
    }
    let vault = Vault::new();
    vault.run(&["new", "job.toml"]);
    let starter = vault.read("job.toml");
    check(&schema, &json(&starter), "starter");
    let wrong = json(&starter.replace("kind = \"vault\"", "kin = \"vault\""));
    assert_eq!(differences(&schema, &wrong).len(), 2);
}

#[test]
fn blanks_and_findings_are_as_their_schemas_say() {
    let (readings, findings) = (schema("readings"), schema("findings"));
    for slug in EXAMPLES {
        let vault = Vault::new();
        let job = example(slug).display().to_string();
        vault.run(&["plan", &job, "--blank", "r.toml"]);
        check(&readings, &json(&vault.read("r.toml")), slug);
        let ran = vault.run(&["judge", &job, "r.toml", "--json"]);
        let document: Value = serde_json::from_str(&ran.out).expect("it is JSON");
        check(&findings, &document, slug);
        let wrong = json(&vault.read("r.toml").replacen("of = ", "off = ", 1));
        assert_eq!(differences(&readings, &wrong).len(), 2, "{slug}");
    }
}

#[test]
fn the_catalogue_of_the_demonstration_is_as_the_schema_of_catalogues_says() {
    let schema = schema("catalogue");
    let path = tree().join("data/catalogue/demonstration.toml");
    let text = std::fs::read_to_string(path).expect("the catalogue is there");
    check(&schema, &json(&text), "demonstration");
    let wrong = json(&text.replacen("ports = 3", "ports = \"3\"", 1));
    assert_eq!(differences(&schema, &wrong).len(), 1);
}

#[test]
fn every_plan_of_the_examples_is_as_the_schema_of_plans_says() {
    let schema = schema("plan");
    for slug in EXAMPLES {
        let ran = Vault::new().plan(slug, &["--json"]);
        let mut plan: Value = serde_json::from_str(&ran.out).expect("the plan is JSON");
        check(&schema, &plan, slug);
        plan["legs"][0]["cuts"][0]["plane"] = Value::Null;
        assert_eq!(differences(&schema, &plan).len(), 1);
    }
}

#[test]
fn a_plan_has_the_fields_that_other_programs_rely_on() {
    let ran = Vault::new().plan("larkspur-three-way", &["--json"]);
    let plan: Value = serde_json::from_str(&ran.out).expect("the plan is JSON");
    for leg in plan["legs"].as_array().expect("legs are a list") {
        assert!(leg["mark"].is_string() && leg["ends"].is_array());
        for cut in leg["cuts"].as_array().expect("cuts are a list") {
            for name in ["plane", "nominal_mm", "min_mm", "max_mm", "inch"] {
                assert!(cut.get(name).is_some(), "a cut has no {name}");
            }
            assert!(!cut["nominal_mm"].is_null() || cut["why"].is_string());
        }
    }
    for ruling in plan["rulings"].as_array().expect("rulings are a list") {
        for name in [
            "check", "leg", "ruling", "value", "limit", "unit", "margin", "source",
        ] {
            assert!(ruling.get(name).is_some(), "a ruling has no {name}");
        }
        match ruling["ruling"].as_str() {
            Some("pass" | "fail") => {
                assert!(!ruling["limit"].is_null() && ruling["source"].is_string());
            }
            Some("not-judged") => assert!(ruling["why"].is_string()),
            other => panic!("a ruling is {other:?}"),
        }
    }
}
