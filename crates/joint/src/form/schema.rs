//! Schema: JSON Schema of a file, made from its table of fields.

use super::{Field, Kind, Need, Shape};
use serde_json::{Map, Value, json};

/// Returns the JSON Schema (draft 2020-12) of a file of this shape.
pub fn json_schema(shape: &Shape, title: &str) -> Value {
    let mut schema = table(shape);
    let head = json!({ "$schema": "https://json-schema.org/draft/2020-12/schema", "title": title });
    if let (Value::Object(head), Value::Object(body)) = (head, &mut schema) {
        let mut whole = head;
        whole.append(body);
        return Value::Object(whole);
    }
    schema
}

fn table(shape: &Shape) -> Value {
    let properties: Map<String, Value> = shape
        .fields
        .iter()
        .map(|f| (f.name.to_owned(), property(f)))
        .collect();
    let required: Vec<&str> = shape
        .fields
        .iter()
        .filter(|f| f.need == Need::Required)
        .map(|f| f.name)
        .collect();
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

fn kind(kind: &Kind) -> Value {
    match kind {
        Kind::Text | Kind::Said => json!({ "type": "string", "minLength": 1 }),
        Kind::Id => json!({ "type": "string", "pattern": "^[A-Za-z0-9][A-Za-z0-9-]*$" }),
        Kind::Cut => json!({ "type": "string", "examples": ["7 1/16 in", "179.4 mm"] }),
        Kind::Distance => {
            json!({ "type": "string", "examples": ["24 1/2 in", "24.5 in", "620 mm"] })
        }
        Kind::Diameter => {
            json!({ "type": "string", "examples": ["1.062 in", "27.0 mm", "220 mil"] })
        }
        Kind::Quantity(measure) => json!({ "type": "string", "examples": [measure.example()] }),
        Kind::Number { least, greatest } => {
            json!({ "type": "number", "minimum": least, "maximum": greatest })
        }
        Kind::Integer { least, greatest } => {
            json!({ "type": "integer", "minimum": least, "maximum": greatest })
        }
        Kind::Flag => json!({ "type": "boolean" }),
        Kind::Choice(words) => json!({ "enum": words }),
        Kind::Date => json!({ "type": "string", "format": "date" }),
        Kind::Table(shape) => table(shape),
        Kind::Rows(shape) => json!({ "type": "array", "items": table(shape) }),
        Kind::Above(Kind::Number { greatest, .. }) => {
            json!({ "type": "number", "exclusiveMinimum": 0, "maximum": greatest })
        }
        Kind::Above(of) | Kind::Sole(of) => self::kind(of),
        Kind::Several(of) => {
            let one = self::kind(of);
            let list = json!({ "type": "array", "items": one, "minItems": 1, "uniqueItems": true });
            json!({ "anyOf": [one, list] })
        }
        Kind::List(item) => json!({ "type": "array", "items": self::kind(item) }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_schema_names_every_field_and_what_is_required() {
        const SHAPE: Shape = Shape {
            name: "thing",
            about: "A thing.",
            fields: &[
                Field {
                    name: "id",
                    kind: Kind::Id,
                    need: Need::Required,
                    about: "Its name.",
                },
                Field {
                    name: "size",
                    kind: Kind::Diameter,
                    need: Need::Optional,
                    about: "Its size.",
                },
            ],
        };
        let schema = json_schema(&SHAPE, "things");
        assert_eq!(schema["required"], json!(["id"]));
        assert_eq!(
            schema["properties"]["size"]["description"],
            json!("Its size.")
        );
        assert_eq!(schema["additionalProperties"], json!(false));
    }
}
