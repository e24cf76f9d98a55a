//! Walk: compares a tree with the table of words and complains of every difference.

use super::complaint::{Complaints, nearest, quoted};
use super::tree::{Node, Segment, Value};
use super::words::{Field, Kind, PLACE_MM_MOST, POSITIVE_LEAST, Shape};

/// Greatest index or curve number that is read; some readers cannot represent larger whole numbers exactly.
const WHOLE_MOST: f64 = 9e15;

/// Complains about every value that is not of its kind.
pub(super) fn walk<'n>(
    node: &'n Node,
    kind: &Kind,
    steps: &mut Vec<Segment<'n>>,
    tree: &Node,
    complaints: &mut Complaints<'_>,
) {
    match (kind, &node.value) {
        (Kind::Table(shape), Value::Table(_)) => table(node, shape, None, steps, tree, complaints),
        (Kind::Names(of), Value::Table(entries)) => {
            for (key, value) in entries {
                steps.push(Segment::Name(&key.name));
                walk(value, of, steps, tree, complaints);
                steps.pop();
            }
        }
        (Kind::Kinds(kinds), Value::Table(_)) => by_kind(node, kinds, steps, tree, complaints),
        (
            Kind::List {
                of,
                most,
                may_be_empty,
            },
            Value::List(items),
        ) => {
            if items.len() > *most {
                let message = format!(
                    "The list has {} entries; at most {most} are read.",
                    items.len()
                );
                complaints.add(tree, steps, message, "");
            }
            if items.is_empty() && !may_be_empty {
                complaints.add(
                    tree,
                    steps,
                    "The list is empty; at least one entry was expected.",
                    "",
                );
            }
            for (index, item) in items.iter().enumerate() {
                steps.push(Segment::Index(index));
                walk(item, of, steps, tree, complaints);
                steps.pop();
            }
        }
        (kind, value) => {
            if let Some(expected) = difference(kind, value) {
                let found = shown(value);
                let hint = if matches!(value, Value::Null) {
                    "A field that is not needed is left out."
                } else {
                    ""
                };
                complaints.add(
                    tree,
                    steps,
                    format!("Found {found}; expected {expected}."),
                    hint,
                );
            }
        }
    }
}

fn table<'n>(
    node: &'n Node,
    shape: &Shape,
    also: Option<&str>,
    steps: &mut Vec<Segment<'n>>,
    tree: &Node,
    complaints: &mut Complaints<'_>,
) {
    let known = |name: &str| shape.fields.iter().find(|field| field.name == name);
    for (key, value) in node.entries() {
        steps.push(Segment::Name(&key.name));
        match known(&key.name) {
            Some(Field { kind, .. }) => walk(value, kind, steps, tree, complaints),
            None if also == Some(key.name.as_str()) => {}
            None => {
                let words = shape.fields.iter().map(|field| field.name).chain(also);
                let hint = nearest(&key.name, words);
                let message = format!("The word {} is not known here.", quoted(&key.name));
                complaints.add(tree, steps, message, hint);
            }
        }
        steps.pop();
    }
    for field in shape.fields {
        if field.is_needed && node.field(field.name).is_none() {
            let message = format!("The field `{}` is missing.", field.name);
            complaints.add(tree, steps, message, format!("It says: {}", field.about));
        }
    }
}

fn by_kind<'n>(
    node: &'n Node,
    kinds: &[(&str, &Shape)],
    steps: &mut Vec<Segment<'n>>,
    tree: &Node,
    complaints: &mut Complaints<'_>,
) {
    let words = || kinds.iter().map(|(word, _)| *word);
    let Some(kind) = node.text_at("kind") else {
        let list: Vec<&str> = words().collect();
        let message = "The field `kind` is missing, or no text.";
        complaints.add(
            tree,
            steps,
            message,
            format!("Known are {}.", list.join(", ")),
        );
        return;
    };
    match kinds.iter().find(|(word, _)| *word == kind) {
        Some((_, shape)) => table(node, shape, Some("kind"), steps, tree, complaints),
        None => {
            steps.push(Segment::Name("kind"));
            let message = format!("Nothing of the kind {} can be wanted.", quoted(kind));
            complaints.add(tree, steps, message, nearest(kind, words()));
            steps.pop();
        }
    }
}

/// The expectation, if a value is not of its kind; otherwise `None`.
fn difference(kind: &Kind, value: &Value) -> Option<String> {
    let is_right = match (kind, value) {
        (Kind::Text, Value::Text(text)) => !text.trim().is_empty(),
        (Kind::Remark, Value::Text(_)) => true,
        (Kind::Word(words), Value::Text(text)) => words.contains(&text.as_str()),
        (Kind::Number { least, greatest }, Value::Number(number)) => {
            least <= number && number <= greatest
        }
        (Kind::Positive { greatest }, Value::Number(number)) => {
            *number >= POSITIVE_LEAST && number <= greatest
        }
        (Kind::Index, Value::Number(number)) => {
            (0.0..=WHOLE_MOST).contains(number) && number.fract() == 0.0
        }
        (Kind::CurveNumber, Value::Number(number)) => {
            (1.0..=WHOLE_MOST).contains(&number.abs()) && number.fract() == 0.0
        }
        (Kind::Place, Value::List(items)) => place_of(items).is_some(),
        _ => false,
    };
    if is_right { None } else { Some(expected(kind)) }
}

fn place_of(items: &[Node]) -> Option<[f64; 2]> {
    let [r, z] = items else {
        return None;
    };
    let place = [r.number()?, z.number()?];
    let is_near = place.iter().all(|x| x.abs() <= PLACE_MM_MOST);
    is_near.then_some(place)
}

/// The two lengths of a place, mm, or `None` if the node is not a place.
pub(super) fn place(node: &Node) -> Option<[f64; 2]> {
    place_of(node.items())
}

/// The whole number of a node, or `None` if it is not of the kind.
pub(super) fn whole(node: &Node, kind: &Kind) -> Option<i64> {
    if difference(kind, &node.value).is_some() {
        return None;
    }
    // In range, because the difference above found none.
    node.number().map(|number| number as i64)
}

/// The number of a node, or `None` if it is not of the kind.
pub(super) fn number_of(node: Option<&Node>, kind: &Kind) -> Option<f64> {
    let node = node?;
    match difference(kind, &node.value) {
        Some(_) => None,
        None => node.number(),
    }
}

fn expected(kind: &Kind) -> String {
    match kind {
        Kind::Text => "a text with something in it".to_owned(),
        Kind::Remark => "a text".to_owned(),
        Kind::Word(words) => {
            let words: Vec<String> = words.iter().map(|word| format!("\"{word}\"")).collect();
            words.join(" or ")
        }
        Kind::Number { least, greatest } => {
            format!("a number from {} to {}", plain(*least), plain(*greatest))
        }
        Kind::Positive { greatest } => {
            format!("a number greater than 0, at most {}", plain(*greatest))
        }
        Kind::Index => "a whole number from 0, the number of a point".to_owned(),
        Kind::CurveNumber => {
            "a whole number from 1, the number of a curve, negative where it is run backwards"
                .to_owned()
        }
        Kind::Place => format!(
            "two numbers [r, z] in mm, none farther from 0 than {}",
            plain(PLACE_MM_MOST)
        ),
        Kind::List { .. } => "a list".to_owned(),
        Kind::Table(shape) => format!("a table of fields: {}", lower(shape.about)),
        Kind::Names(_) => "a table whose keys are names".to_owned(),
        Kind::Kinds(_) => "a table with `name` and `kind`".to_owned(),
    }
}

fn lower(about: &str) -> String {
    let mut letters = about.trim_end_matches('.').chars();
    match letters.next() {
        Some(first) => first.to_lowercase().chain(letters).collect(),
        None => String::new(),
    }
}

fn plain(number: f64) -> String {
    if number != 0.0 && number.abs() >= 1e7 {
        format!("{number:e}")
    } else {
        format!("{number}")
    }
}

fn shown(value: &Value) -> String {
    match value {
        Value::Number(number) => plain(*number),
        Value::Text(text) => quoted(text),
        Value::List(items) => format!("a list of {}", items.len()),
        other => other.word().to_owned(),
    }
}
