//! Every message in every language: made from the schema of messages, so that none is forgotten.

use jointwright_joint::cable::Words;
use jointwright_joint::checks::CHECKS;
use jointwright_joint::said::{Expected, FormHint, Language, MeasureOf, Said, ValueSaid, Wording};
use jointwright_units::{LengthError, QuantityError};
use jointwright_wording::Tongue;
use jointwright_wording::label::{
    AskPageLabel, CableRatePageLabel, ChartLabel, CutLabel, EndsLabel, FieldLabel, FieldLegend,
    FieldPageLabel, FrontLabel, HalfSectionLabel, JudgePageLabel, Label, MarkLabel, PageLabel,
    PartLabel, PlanLegLabel, PlanRulingLabel, RatePageLabel, RulingLabel, SheetLabel, SheetText,
    StripLabel,
};
use schemars::JsonSchema;
use schemars::generate::SchemaSettings;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value, json};
use std::collections::BTreeSet;

/// Makes samples of a schema; every text in them is a name of its own.
struct Samples {
    definitions: Map<String, Value>,
    n_names: usize,
    /// Types that are being sampled, the outermost first.
    open: Vec<String>,
}

impl Samples {
    fn name(&mut self) -> Value {
        self.n_names += 1;
        json!(format!("Ñame{}x", self.n_names))
    }

    /// One sample for each way in which a schema can be met; a message inside a message is a name.
    fn of(&mut self, schema: &Value) -> Vec<Value> {
        if let Some(reference) = schema.get("$ref").and_then(Value::as_str) {
            if reference == "#" {
                let text = self.name();
                return vec![json!({ "text": text })];
            }
            let name = reference.rsplit('/').next().expect("a name").to_owned();
            let definition = self.definitions[&name].clone();
            if self.open.contains(&name) {
                // Inside itself a type is met in a way that ends.
                let ways = definition["oneOf"].as_array().expect("ways");
                let ends = ways
                    .iter()
                    .filter(|way| !way.to_string().contains(reference));
                let ends: Vec<Value> = ends.flat_map(|way| self.of(way)).collect();
                return vec![named(ends)];
            }
            self.open.push(name);
            let samples = self.of(&definition);
            self.open.pop();
            return samples;
        }
        for list in ["oneOf", "anyOf"] {
            if let Some(ways) = schema.get(list).and_then(Value::as_array) {
                return ways.clone().iter().flat_map(|way| self.of(way)).collect();
            }
        }
        if let Some(fixed) = schema.get("const") {
            return vec![fixed.clone()];
        }
        if let Some(words) = schema.get("enum").and_then(Value::as_array) {
            return words.clone();
        }
        let kind = match schema.get("type") {
            Some(Value::Array(kinds)) => kinds.first().and_then(Value::as_str).map(str::to_owned),
            kind => kind.and_then(Value::as_str).map(str::to_owned),
        };
        match kind.as_deref() {
            Some("object") => self.object(schema),
            Some("array") => {
                if let Some(items) = schema.get("prefixItems").and_then(Value::as_array) {
                    let items = items.clone();
                    let each: Vec<Value> = items.iter().map(|item| self.first(item)).collect();
                    return vec![Value::Array(each)];
                }
                let item = schema["items"].clone();
                let two = [self.first(&item), self.first(&item)];
                vec![Value::Array(two.to_vec())]
            }
            Some("string") => vec![self.name()],
            Some("boolean") => vec![json!(true), json!(false)],
            Some("integer") => vec![json!(1), json!(3)],
            Some("number") => vec![json!(1.25)],
            Some("null") => vec![Value::Null],
            _ => panic!("no sample of {schema}"),
        }
    }

    fn first(&mut self, schema: &Value) -> Value {
        named(self.of(schema))
    }

    /// All ways of one property at a time, the others in their first way.
    fn object(&mut self, schema: &Value) -> Vec<Value> {
        let properties = schema["properties"]
            .as_object()
            .expect("properties")
            .clone();
        let ways: Vec<(&String, Vec<Value>)> = properties
            .iter()
            .map(|(key, property)| (key, self.of(property)))
            .collect();
        let sample = |varied: usize, way: usize| {
            let chosen = ways.iter().enumerate().map(|(index, (key, ways))| {
                let way = if index == varied { way } else { 0 };
                ((*key).clone(), ways[way].clone())
            });
            Value::Object(chosen.collect())
        };
        let mut samples = vec![sample(0, 0)];
        for (varied, (_, ways)) in ways.iter().enumerate() {
            samples.extend((1..ways.len()).map(|way| sample(varied, way)));
        }
        samples
    }
}

/// The first of these with a name in it, else the first.
fn named(mut samples: Vec<Value>) -> Value {
    let is_named = |sample: &Value| sample.to_string().contains("Ñame");
    let index = samples.iter().position(is_named).unwrap_or(0);
    samples.swap_remove(index)
}

/// One sample at least of every message.
fn samples() -> Vec<Value> {
    samples_of::<Said>()
}

/// One sample at least of every way in which something can be said.
fn samples_of<T: JsonSchema>() -> Vec<Value> {
    let settings = SchemaSettings::draft2020_12();
    let schema = settings.into_generator().into_root_schema_for::<T>();
    let schema = schema.to_value();
    let definitions = schema["$defs"].as_object().cloned().unwrap_or_default();
    let mut samples = Samples {
        definitions,
        n_names: 0,
        open: Vec::new(),
    };
    samples.of(&schema)
}

fn tongues() -> Vec<Tongue> {
    let of = |language| [Words::Us, Words::Iec].map(|words| Tongue { language, words });
    Language::ALL.into_iter().flat_map(of).collect()
}

/// Names in a sample.
fn names(sample: &Value, into: &mut BTreeSet<String>) {
    match sample {
        Value::String(text) if text.starts_with("Ñame") => {
            into.insert(text.clone());
        }
        Value::Array(all) => all.iter().for_each(|one| names(one, into)),
        Value::Object(all) => all.values().for_each(|one| names(one, into)),
        _ => {}
    }
}

/// Facts of the job as a whole: their questions name nothing else.
const OF_THE_JOB: &[&str] = &[
    "conductor-greatest",
    "load",
    "emergency",
    "fault",
    "shield-fault",
    "clearing-time",
    "ambient-least",
    "ambient-greatest",
    "parks",
];

fn is_of_the_job(sample: &Value) -> bool {
    let fact = sample["ask"]["question"]["fact"].as_str();
    fact.is_some_and(|fact| OF_THE_JOB.contains(&fact))
}

/// A mark is read aloud letter by letter (`tests/mark.rs`).
fn is_spelled(sample: &Value) -> bool {
    !sample["plan"]["mark"]["aloud"].is_null()
}

/// Arguments of what is wrong in a file that its hint says, or that one language takes from its own table.
const OF_HINTS: &[&str] = &["heading", "about", "may_mean", "quantity", "units"];

fn without_what_a_hint_says(sample: &Value) -> Value {
    match sample {
        Value::Object(all) => {
            let said = all
                .iter()
                .filter(|(key, _)| !OF_HINTS.contains(&key.as_str()));
            let said = said.map(|(key, value)| (key.clone(), without_what_a_hint_says(value)));
            Value::Object(said.collect())
        }
        Value::Array(all) => Value::Array(all.iter().map(without_what_a_hint_says).collect()),
        other => other.clone(),
    }
}

/// Whether message and hint together lose no argument.
fn check_refusals<E: JsonSchema + DeserializeOwned + Clone>(
    loses: &[&str],
    said: fn(E) -> [Said; 2],
) {
    let samples = samples_of::<E>();
    assert!(samples.len() > 10, "{}", samples.len());
    for sample in samples {
        let error: E = serde_json::from_value(sample.clone())
            .unwrap_or_else(|error| panic!("{error}: {sample}"));
        let mut expected = BTreeSet::new();
        names(&sample, &mut expected);
        for tongue in tongues() {
            let both = said(error.clone()).map(|said| tongue.say(&said)).join(" ");
            for name in &expected {
                let is_own = loses
                    .iter()
                    .any(|key| names_under(&sample, key).contains(name));
                assert!(both.contains(name) || is_own, "{name} of {sample}: {both}");
            }
        }
        let both = said(error).map(|said| SPANISH.say(&said)).join(" ");
        assert!(english_words(&both).is_empty(), "{both}");
    }
}

fn names_under(sample: &Value, key: &str) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    for ways in sample.as_object().into_iter().flat_map(Map::values) {
        names(&ways[key], &mut found);
    }
    found
}

#[test]
fn what_is_wrong_with_a_length_or_a_quantity_is_said_with_all_its_arguments() {
    check_refusals(&[], |error: LengthError| {
        let said = ValueSaid::IsNoLength {
            path: "p".to_owned(),
            text: "t".to_owned(),
            error: error.clone(),
            expected: Expected::CutLength,
        };
        [said.into(), FormHint::Length(error).into()]
    });
    // What it is and its units are Spanish's own.
    check_refusals(&["quantity", "units"], |error: QuantityError| {
        let measure = MeasureOf::Current;
        let said = ValueSaid::IsNoQuantity {
            path: "p".to_owned(),
            text: "t".to_owned(),
            measure,
            error: error.clone(),
            expected: Expected::Date,
        };
        [said.into(), FormHint::Quantity { measure, error }.into()]
    });
}

/// The sentence without what stands in backquotes: words of files.
fn without_file_words(text: &str) -> String {
    text.split('`').step_by(2).collect()
}

#[test]
fn every_message_has_a_sentence_in_every_language_and_loses_no_argument() {
    let samples = samples();
    assert!(samples.len() > 20, "{}", samples.len());
    for sample in &samples {
        let said: Said = serde_json::from_value(sample.clone())
            .unwrap_or_else(|error| panic!("{error}: {sample}"));
        let mut expected = BTreeSet::new();
        if !is_of_the_job(sample) && !is_spelled(sample) && sample["form"]["hint"].is_null() {
            let said = match sample["form"].is_null() {
                true => sample.clone(),
                false => without_what_a_hint_says(sample),
            };
            names(&said, &mut expected);
        }
        // What is asked of the job as a whole is of nothing else.
        if *sample == json!({ "ask": { "of": "job" } }) {
            continue;
        }
        for tongue in tongues() {
            let text = tongue.say(&said);
            assert!(
                !text.trim().is_empty(),
                "{sample} says nothing in {tongue:?}"
            );
            for name in &expected {
                assert!(
                    text.contains(name),
                    "{tongue:?} loses {name} of {sample}: {text}"
                );
            }
            assert!(!text.contains("  "), "{text}");
        }
    }
}

/// English words that no Spanish sentence has.
const ENGLISH: &[&str] = &[
    "the", "of", "is", "and", "its", "not", "with", "that", "this", "from", "at", "by", "for",
    "are", "on", "it",
];

const SPANISH: Tongue = Tongue {
    language: Language::Spanish,
    words: Words::Iec,
};

fn english_words(text: &str) -> Vec<String> {
    let text = without_file_words(text).to_lowercase();
    let words = text.split(|c: char| !c.is_alphanumeric());
    let english = words.filter(|word| ENGLISH.contains(word));
    english.map(str::to_owned).collect()
}

#[test]
fn no_english_is_left_in_a_spanish_sentence() {
    for sample in samples() {
        let said: Said = serde_json::from_value(sample.clone()).expect("a message");
        let text = SPANISH.say(&said);
        let english = english_words(&text);
        assert!(english.is_empty(), "{english:?} in: {text}");
    }
}

/// Whether each label of a page has a text in every language, loses no argument, and leaves no English in Spanish.
fn check_labels<L: Label + JsonSchema + DeserializeOwned>() {
    let samples = samples_of::<L>();
    assert!(samples.len() > 1, "{}", samples.len());
    for sample in &samples {
        let label: L = serde_json::from_value(sample.clone())
            .unwrap_or_else(|error| panic!("{error}: {sample}"));
        let mut expected = BTreeSet::new();
        names(sample, &mut expected);
        for tongue in tongues() {
            let text = tongue.label(&label);
            assert!(!text.trim().is_empty(), "{sample} is empty in {tongue:?}");
            for name in &expected {
                assert!(
                    text.contains(name),
                    "{tongue:?} loses {name} of {sample}: {text}"
                );
            }
        }
        let text = SPANISH.label(&label);
        let english = english_words(&text);
        assert!(english.is_empty(), "{english:?} in: {text}");
    }
}

#[test]
fn every_label_has_a_text_in_every_language_and_loses_no_argument() {
    check_labels::<SheetLabel>();
    check_labels::<CutLabel>();
    check_labels::<RulingLabel>();
    check_labels::<MarkLabel>();
    check_labels::<StripLabel>();
    check_labels::<HalfSectionLabel>();
    check_labels::<JudgePageLabel>();
    check_labels::<EndsLabel>();
    check_labels::<FieldLabel>();
    check_labels::<FieldLegend>();
    check_labels::<ChartLabel>();
    check_labels::<FrontLabel>();
    check_labels::<PartLabel>();
    check_labels::<SheetText>();
    check_labels::<PageLabel>();
    check_labels::<PlanLegLabel>();
    check_labels::<PlanRulingLabel>();
    check_labels::<AskPageLabel>();
    check_labels::<RatePageLabel>();
    check_labels::<CableRatePageLabel>();
    check_labels::<FieldPageLabel>();
}

#[test]
fn a_text_of_a_template_has_the_same_holes_in_every_language() {
    let holes = |text: &str| -> BTreeSet<String> {
        let pieces = text.split('{').skip(1);
        let holes = pieces.filter_map(|piece| piece.split('}').next());
        holes.map(str::to_owned).collect()
    };
    let mut n_holes = 0;
    for text in SheetText::ALL {
        let english = holes(&tongues()[0].label(text));
        n_holes += english.len();
        for tongue in tongues() {
            assert_eq!(holes(&tongue.label(text)), english, "{}", text.key());
        }
    }
    assert!(n_holes > 8, "{n_holes}");
}

#[test]
fn every_check_has_a_question_and_a_name_in_every_language() {
    for check in CHECKS {
        for tongue in tongues() {
            let question = tongue.say(&Said::Check(check.slug.to_owned()));
            assert!(question.ends_with('?'), "{}: {question}", check.slug);
            let name = tongue.say(&Said::CheckName(check.slug.to_owned()));
            assert_ne!(name, check.slug);
        }
        let name = SPANISH.check(check.slug);
        assert!(
            !name.is_empty() && name != check.slug.replace('_', " "),
            "{name}"
        );
    }
}
