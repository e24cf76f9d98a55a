//! A small reader of JSON Schema: types, required and additional members, items, choices and references.
//!
//! It knows the words that the schemas of this project use and refuses a schema with an unknown word, so nothing goes unchecked.

use serde_json::Value;

/// Words of a schema that do not concern structure.
const SILENT: &[&str] = &[
    "$schema",
    "$defs",
    "title",
    "description",
    "examples",
    "format",
    "pattern",
    "minLength",
    "default",
];

/// All differences of a document from a schema, each with its place.
pub fn differences(schema: &Value, document: &Value) -> Vec<String> {
    let mut found = Vec::new();
    compare(schema, schema, document, "$", &mut found);
    found
}

fn compare(root: &Value, schema: &Value, value: &Value, place: &str, found: &mut Vec<String>) {
    let words = match schema {
        Value::Bool(true) => return,
        Value::Object(words) => words,
        other => return found.push(format!("{place}: {other} is no schema")),
    };
    for (word, said) in words {
        match word.as_str() {
            "type" if !is_of_type(said, value) => {
                found.push(format!("{place}: {value} is not of type {said}"));
            }
            "enum" if !said.as_array().is_some_and(|c| c.contains(value)) => {
                found.push(format!("{place}: {value} is none of {said}"));
            }
            "const" if said != value => found.push(format!("{place}: {value} is not {said}")),
            "minimum" | "exclusiveMinimum" | "maximum" | "minItems" | "maxItems" => {
                bounds(word, said, value, place, found);
            }
            "uniqueItems" => unique(said, value, place, found),
            "$ref" => match said
                .as_str()
                .and_then(|r| root.pointer(r.strip_prefix('#')?))
            {
                Some(named) => compare(root, named, value, place, found),
                None => found.push(format!("{place}: {said} leads nowhere")),
            },
            "anyOf" | "oneOf" => any_of(root, said, value, place, found),
            "required" => required(said, value, place, found),
            "items" => {
                for (index, item) in value.as_array().into_iter().flatten().enumerate() {
                    compare(root, said, item, &format!("{place}[{index}]"), found);
                }
            }
            "prefixItems" => {
                let schemas = said.as_array().into_iter().flatten();
                let items = value.as_array().into_iter().flatten();
                for (index, (schema, item)) in schemas.zip(items).enumerate() {
                    compare(root, schema, item, &format!("{place}[{index}]"), found);
                }
            }
            "properties" => members(root, words, said, value, place, found),
            "type" | "enum" | "const" | "additionalProperties" => {}
            silent if SILENT.contains(&silent) => {}
            unknown => found.push(format!(
                "{place}: the schema's `{unknown}` is not known here"
            )),
        }
    }
}

fn any_of(root: &Value, said: &Value, value: &Value, place: &str, found: &mut Vec<String>) {
    let fits = |schema: &Value| {
        let mut differences = Vec::new();
        compare(root, schema, value, place, &mut differences);
        differences.is_empty()
    };
    if !said.as_array().is_some_and(|s| s.iter().any(fits)) {
        found.push(format!("{place}: {value} fits none of the alternatives"));
    }
}

fn required(said: &Value, value: &Value, place: &str, found: &mut Vec<String>) {
    let Some(object) = value.as_object() else {
        return;
    };
    for name in said.as_array().into_iter().flatten() {
        if !name.as_str().is_some_and(|n| object.contains_key(n)) {
            found.push(format!("{place}: {name} is missing"));
        }
    }
}

fn members(
    root: &Value,
    words: &serde_json::Map<String, Value>,
    said: &Value,
    value: &Value,
    place: &str,
    found: &mut Vec<String>,
) {
    for (name, member) in value.as_object().into_iter().flatten() {
        match (said.get(name), words.get("additionalProperties")) {
            (Some(schema), _) | (None, Some(schema @ Value::Object(_))) => {
                compare(root, schema, member, &format!("{place}.{name}"), found);
            }
            // A member that the schema does not name is a defect of the schema, whether stated or not.
            (None, _) => found.push(format!("{place}: `{name}` is not in the schema")),
        }
    }
}

fn bounds(word: &str, said: &Value, value: &Value, place: &str, found: &mut Vec<String>) {
    let Some(bound) = said.as_f64() else {
        return found.push(format!("{place}: {word} {said} is no number"));
    };
    let size = match word {
        "minimum" | "exclusiveMinimum" | "maximum" => value.as_f64(),
        _ => value.as_array().map(|a| a.len() as f64),
    };
    let is_beyond = |size: f64| match word {
        "exclusiveMinimum" => size <= bound,
        "minimum" | "minItems" => size < bound,
        _ => size > bound,
    };
    if size.is_some_and(is_beyond) {
        found.push(format!("{place}: {value} is beyond the {word} of {bound}"));
    }
}

fn unique(said: &Value, value: &Value, place: &str, found: &mut Vec<String>) {
    let items = value.as_array().map(Vec::as_slice).unwrap_or_default();
    let is_again = |n: usize| items[..n].contains(&items[n]);
    if said == true && (0..items.len()).any(is_again) {
        found.push(format!("{place}: {value} holds the same twice"));
    }
}

fn is_of_type(said: &Value, value: &Value) -> bool {
    let is = |name: &Value| match (name.as_str(), value) {
        (Some("object"), Value::Object(_))
        | (Some("array"), Value::Array(_))
        | (Some("string"), Value::String(_))
        | (Some("boolean"), Value::Bool(_))
        | (Some("null"), Value::Null)
        | (Some("number"), Value::Number(_)) => true,
        (Some("integer"), Value::Number(n)) => n.is_i64() || n.is_u64(),
        _ => false,
    };
    match said {
        Value::Array(names) => names.iter().any(is),
        name => is(name),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[track_caller]
    fn check(schema: Value, document: Value, n_expected: usize) {
        let found = differences(&schema, &document);
        assert_eq!(found.len(), n_expected, "{found:?}");
    }

    #[test]
    fn each_word_finds_what_differs_and_passes_what_does_not() {
        check(json!({"type": "number"}), json!(null), 1);
        check(json!({"type": ["number", "null"]}), json!(null), 0);
        check(json!({"enum": ["a"]}), json!("b"), 1);
        check(json!({"required": ["a"]}), json!({"b": 1}), 1);
        check(
            json!({"properties": {"a": true}}),
            json!({"a": 1, "b": 1}),
            1,
        );
        check(
            json!({"properties": {}, "additionalProperties": {"type": "number"}}),
            json!({"a": 1, "b": "x"}),
            1,
        );
        check(json!({"items": {"type": "string"}}), json!(["a", 1]), 1);
        let pair = json!({"prefixItems": [{"type": "string"}, {"type": "number"}]});
        check(pair.clone(), json!(["a", 1]), 0);
        check(pair, json!([1, "a"]), 2);
        check(json!({"minItems": 2, "maxItems": 2}), json!([1]), 1);
        check(json!({"uniqueItems": true}), json!([1, 2, 1]), 1);
        check(json!({"uniqueItems": true}), json!([1, 2]), 0);
        check(json!({"minimum": 1}), json!(0), 1);
        check(json!({"exclusiveMinimum": 0}), json!(0), 1);
        check(json!({"exclusiveMinimum": 0}), json!(0.5), 0);
        check(
            json!({"anyOf": [{"type": "string"}, {"type": "null"}]}),
            json!(1),
            1,
        );
        let named = json!({"$defs": {"n": {"type": "number"}}, "$ref": "#/$defs/n"});
        check(named.clone(), json!(1), 0);
        check(named, json!("x"), 1);
    }

    #[test]
    fn a_word_that_is_not_known_is_a_difference() {
        check(json!({"not": {}}), json!(1), 1);
    }
}
