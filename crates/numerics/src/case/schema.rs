//! JSON Schema of a case, made from its tables of words.

use super::words::{CASE, Field, HEAT, Kind, PLACE_MM_MOST, POSITIVE_LEAST, Shape, TUBE};
use serde_json::{Map, Value, json};

/// JSON Schema (draft 2020-12) of a case: a section, a tube of rubber, or a section that conducts heat.
///
/// ```
/// let schema = jointwright_numerics::case::schema();
/// assert_eq!(schema["oneOf"][0]["properties"]["points"]["items"]["minItems"], 2);
/// assert_eq!(schema["oneOf"][1]["properties"]["stretch"]["minimum"], 1.0);
/// ```
pub fn schema() -> Value {
    json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "jointwright case",
        "oneOf": [table(&CASE, None), table(&TUBE, None), table(&HEAT, None)],
    })
}

/// A table; with the word of its kind if it is one of several.
fn table(shape: &Shape, kind_word: Option<&str>) -> Value {
    let mut properties: Map<String, Value> = shape
        .fields
        .iter()
        .map(|field| (field.name.to_owned(), property(field)))
        .collect();
    let needed = shape.fields.iter().filter(|field| field.is_needed);
    let mut required: Vec<&str> = needed.map(|field| field.name).collect();
    if let Some(word) = kind_word {
        properties.insert("kind".to_owned(), json!({ "const": word }));
        required.push("kind");
    }
    json!({
        "type": "object",
        "description": shape.about,
        "properties": properties,
        "required": required,
        "additionalProperties": false,
    })
}

fn property(field: &Field) -> Value {
    let mut schema = kind(&field.kind);
    if let Value::Object(map) = &mut schema {
        map.insert("description".to_owned(), json!(field.about));
    }
    schema
}

fn kind(of: &Kind) -> Value {
    match of {
        Kind::Text => json!({ "type": "string", "minLength": 1 }),
        Kind::Remark => json!({ "type": "string" }),
        Kind::Word(words) => json!({ "enum": words }),
        Kind::Number { least, greatest } => {
            json!({ "type": "number", "minimum": least, "maximum": greatest })
        }
        Kind::Positive { greatest } => {
            json!({ "type": "number", "minimum": POSITIVE_LEAST, "maximum": greatest })
        }
        Kind::Index => json!({ "type": "integer", "minimum": 0 }),
        Kind::CurveNumber => {
            json!({ "type": "integer", "anyOf": [{ "minimum": 1 }, { "maximum": -1 }] })
        }
        Kind::Place => {
            let length =
                json!({ "type": "number", "minimum": -PLACE_MM_MOST, "maximum": PLACE_MM_MOST });
            json!({ "type": "array", "items": length, "minItems": 2, "maxItems": 2 })
        }
        Kind::List {
            of,
            most,
            may_be_empty,
        } => {
            let least = usize::from(!may_be_empty);
            json!({ "type": "array", "items": kind(of), "minItems": least, "maxItems": most })
        }
        Kind::Table(shape) => table(shape, None),
        Kind::Names(of) => {
            json!({ "type": "object", "properties": {}, "additionalProperties": kind(of) })
        }
        Kind::Kinds(kinds) => {
            let each = kinds.iter().map(|(word, shape)| table(shape, Some(word)));
            json!({ "oneOf": each.collect::<Vec<Value>>() })
        }
    }
}
