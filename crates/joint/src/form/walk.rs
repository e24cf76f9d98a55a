//! Walk: reads a TOML tree with spans against a table of fields.

use super::spoken;
use super::{Complaints, Field, Item, Kind, Measure, Need, Record, Shape, Source, Value};
use crate::said::{Expected, FieldSaid, FormHint, Holds, Said, TextSaid, ValueSaid};
use jiff::civil::Date;
use jointwright_units::{
    Area, Current, Frequency, Length, LengthError, QuantityError, Resistance, Seconds, Temperature,
    Torque, VoltageRms,
};
use toml::Spanned;
use toml::de::{DeArray, DeTable, DeValue};

/// Hint with nothing to add.
pub(super) const NOTHING: &str = "";
/// Least similarity at which a hint offers a known word for a misspelt one.
const LIKENESS_LEAST_RATIO: f64 = 0.75;
/// Greatest length of a text that a complaint quotes whole.
const QUOTED_GREATEST: usize = 60;

/// Reads a file against its shape: adds everything wrong to the complaints, and returns everything well formed.
pub fn read(source: &Source, shape: &'static Shape, complaints: &mut Complaints) -> Record {
    let (tree, errors) = DeTable::parse_recoverable(source.text());
    let is_whole = errors.is_empty();
    for error in errors {
        let at = error.span().map_or(0, |span| span.start);
        complaints.add(source.complaint(
            at,
            TextSaid::NotToml {
                why: error.message().trim_end_matches('.').to_owned(),
            },
            TextSaid::LookAtTheLine,
        ));
    }
    let mut walk = Walk::new(source, complaints);
    walk.is_whole = is_whole;
    let mut record = walk.table(tree.get_ref(), 0, shape, shape.name);
    if !is_whole {
        record.note_broken();
    }
    record
}

pub(super) struct Walk<'a> {
    source: &'a Source,
    complaints: &'a mut Complaints,
    /// Whether the whole file is TOML: a field hidden by a broken line is not missing.
    is_whole: bool,
}

impl<'a> Walk<'a> {
    pub(super) fn new(source: &'a Source, complaints: &'a mut Complaints) -> Walk<'a> {
        Walk {
            source,
            complaints,
            is_whole: true,
        }
    }
}

impl Walk<'_> {
    pub(super) fn complain(&mut self, at: usize, message: impl Into<Said>, hint: impl Into<Said>) {
        self.complaints
            .add(self.source.complaint(at, message, hint));
    }

    fn table(
        &mut self,
        table: &DeTable<'_>,
        at: usize,
        shape: &'static Shape,
        path: &str,
    ) -> Record {
        let mut record = Record::new(at);
        for (key, value) in table {
            let name: &str = key.get_ref();
            match shape.fields.iter().find(|f| f.name == name) {
                Some(field) => self.field(field, value, path, &mut record),
                None => self.unknown_key(name, key.span().start, shape, path),
            }
        }
        for field in shape.fields {
            if self.is_whole
                && field.need == Need::Required
                && !table.keys().any(|k| k.get_ref() == field.name)
            {
                self.complain(
                    at,
                    FieldSaid::Missing {
                        path: path.to_owned(),
                        field: field.name.to_owned(),
                        expected: field.kind.expected(),
                    },
                    FieldSaid::Add(field.of(shape.name)),
                );
            }
        }
        record
    }

    pub(super) fn unknown_key(&mut self, name: &str, at: usize, shape: &Shape, path: &str) {
        let names = || shape.fields.iter().map(|f| f.name);
        let meant = meant(name, &names().collect::<Vec<_>>());
        let hint = match meant.or_else(|| alike(name, names())) {
            Some(near) => FieldSaid::DidYouMean {
                field: near.to_owned(),
            },
            None => FieldSaid::Known {
                fields: names().map(str::to_owned).collect(),
            },
        };
        let unknown = FieldSaid::Unknown {
            name: quoted(name),
            path: path.to_owned(),
        };
        self.complain(at, unknown, hint);
    }

    fn field(
        &mut self,
        field: &'static Field,
        value: &Spanned<DeValue<'_>>,
        path: &str,
        record: &mut Record,
    ) {
        let path = format!("{path}.{}", field.name);
        if let Some(value) = self.value(&field.kind, value, &path) {
            record.put(field.name, value);
        } else {
            record.note_wrong(field.name);
        }
    }

    fn value(
        &mut self,
        kind: &'static Kind,
        value: &Spanned<DeValue<'_>>,
        path: &str,
    ) -> Option<Item> {
        let at = value.span().start;
        let item = |value| Some(Item { at, value });
        match (kind, value.get_ref()) {
            (Kind::Above(of), _) => self.above_nothing(kind, of, value, path),
            (Kind::Several(of), DeValue::Array(values)) => self.several(of, at, values, path),
            (Kind::Sole(of), DeValue::Array(_)) => self.not_several(of, at, path),
            (Kind::Several(of) | Kind::Sole(of), _) => self.value(of, value, path),
            (Kind::Table(shape), DeValue::Table(table)) => {
                item(Value::Record(self.table(table, at, shape, path)))
            }
            (Kind::Rows(shape), DeValue::Array(rows)) => {
                let mut records = Vec::new();
                for (index, row) in rows.iter().enumerate() {
                    let row_path = format!("{path} {}", row_name(row.get_ref(), index));
                    let at = row.span().start;
                    match row.get_ref() {
                        DeValue::Table(table) => {
                            let record = self.table(table, at, shape, &row_path);
                            let each = rows_of(record, shape).into_iter().map(Value::Record);
                            records.extend(each.map(|value| Item { at, value }));
                        }
                        other => self.wrong_type(at, other, &row_path, kind.expected()),
                    }
                }
                item(Value::List(records))
            }
            (Kind::List(inner), DeValue::Array(values)) => {
                let each = |(index, each): (usize, &Spanned<DeValue<'_>>)| {
                    self.value(inner, each, &format!("{path} {}", index + 1))
                };
                let items: Vec<Option<Item>> = values.iter().enumerate().map(each).collect();
                // A list with one bad item must not become a shorter list.
                let items: Option<Vec<Item>> = items.into_iter().collect();
                item(Value::List(items?))
            }
            (Kind::Flag, DeValue::Boolean(flag)) => item(Value::Flag(*flag)),
            (Kind::Integer { least, greatest }, DeValue::Integer(_)) => {
                let found = integer(value.get_ref());
                match found.filter(|i| (*least..=*greatest).contains(i)) {
                    Some(integer) => item(Value::Integer(integer)),
                    None => self.out_of_bounds(at, value.get_ref(), path, kind),
                }
            }
            (Kind::Number { least, greatest }, DeValue::Integer(_) | DeValue::Float(_)) => {
                match number(value.get_ref()).filter(|x| (*least..=*greatest).contains(x)) {
                    Some(number) => item(Value::Number(number)),
                    None => self.out_of_bounds(at, value.get_ref(), path, kind),
                }
            }
            (Kind::Date, DeValue::Datetime(date)) => match date.to_string().parse::<Date>() {
                Ok(day) if day.year() >= 1900 && date.time.is_none() => item(Value::Date(day)),
                _ => self.out_of_bounds(at, value.get_ref(), path, kind),
            },
            (_, DeValue::String(text)) => {
                let value = self.read_text(kind, text, at, path)?;
                item(value)
            }
            (kind, other) => {
                self.wrong_type(at, other, path, kind.expected());
                None
            }
        }
    }

    /// List that stands for as many rows; complains if it is empty, has a bad item or names a thing twice.
    fn several(
        &mut self,
        of: &'static Kind,
        at: usize,
        values: &DeArray<'_>,
        path: &str,
    ) -> Option<Item> {
        if values.is_empty() {
            self.complain(
                at,
                ValueSaid::IsEmptyList {
                    path: path.to_owned(),
                    expected: of.expected(),
                },
                FormHint::NameOne,
            );
            return None;
        }
        let read: Vec<Option<Item>> = values
            .iter()
            .map(|value| self.value(of, value, path))
            .collect();
        let items: Vec<Item> = read.into_iter().collect::<Option<_>>()?;
        let is_again = |n: usize| items[..n].iter().any(|item| item.value == items[n].value);
        for n in (1..items.len()).filter(|n| is_again(*n)) {
            self.complain(
                items[n].at,
                ValueSaid::NamesTheSameTwice {
                    path: path.to_owned(),
                },
                FormHint::CountsOnceForEach,
            );
        }
        Some(Item {
            at,
            value: Value::List(items),
        })
    }

    /// Complains about a list in a row about a single act.
    fn not_several(&mut self, of: &Kind, at: usize, path: &str) -> Option<Item> {
        self.complain(
            at,
            ValueSaid::HoldsAList {
                path: path.to_owned(),
                expected: of.expected(),
            },
            FormHint::OneEndAlone,
        );
        None
    }

    /// Value above zero; complains if it is not.
    fn above_nothing(
        &mut self,
        kind: &Kind,
        of: &'static Kind,
        value: &Spanned<DeValue<'_>>,
        path: &str,
    ) -> Option<Item> {
        let item = self.value(of, value, path)?;
        self.not_nothing(kind, item, path)
    }

    /// Passes on a value above zero; complains about any other.
    pub(super) fn not_nothing(&mut self, kind: &Kind, item: Item, path: &str) -> Option<Item> {
        let is_nothing = match &item.value {
            Value::Length(length) => *length <= Length::ZERO,
            Value::Number(number) => *number <= 0.0,
            _ => false,
        };
        if !is_nothing {
            return Some(item);
        }
        self.complain(
            item.at,
            ValueSaid::IsNothing {
                path: path.to_owned(),
                expected: kind.expected(),
            },
            FormHint::WriteWhatItIs,
        );
        None
    }

    fn wrong_type(&mut self, at: usize, found: &DeValue<'_>, path: &str, expected: Expected) {
        let hint: Said = match found {
            DeValue::Integer(_) | DeValue::Float(_) => FormHint::PutQuotes.into(),
            DeValue::Array(_) => FormHint::TakeBracketsAway.into(),
            _ => NOTHING.into(),
        };
        let said = ValueSaid::Holds {
            path: path.to_owned(),
            what: holds(found),
            expected,
        };
        self.complain(at, said, hint);
    }

    fn out_of_bounds(
        &mut self,
        at: usize,
        found: &DeValue<'_>,
        path: &str,
        kind: &Kind,
    ) -> Option<Item> {
        let said = ValueSaid::Is {
            path: path.to_owned(),
            found: shown(found),
            expected: kind.expected(),
        };
        self.complain(at, said, NOTHING);
        None
    }

    /// Reads a value written as text between quotes.
    pub(super) fn read_text(
        &mut self,
        kind: &Kind,
        text: &str,
        at: usize,
        path: &str,
    ) -> Option<Value> {
        match read_value(kind, text, path) {
            Ok(value) => Some(value),
            Err((message, hint)) => {
                self.complain(at, message, hint);
                None
            }
        }
    }
}

/// Complaint about a value, and the hint.
type Refused = (Said, Said);

/// Reads a value written as text between quotes.
fn read_value(kind: &Kind, text: &str, path: &str) -> Result<Value, Refused> {
    let is_text = |hint: Said| {
        let said = ValueSaid::IsText {
            path: path.to_owned(),
            text: quoted(text),
            expected: kind.expected(),
        };
        (said.into(), hint)
    };
    match kind {
        Kind::Text => words(kind, text, path, spoken::name).map(Value::Text),
        Kind::Said => words(kind, text, path, spoken::said).map(Value::Text),
        Kind::Id if is_id(text) => Ok(Value::Text(text.to_owned())),
        Kind::Id => Err(is_text(FormHint::LettersAndDigits.into())),
        Kind::Cut => Length::parse_cut(text)
            .map(Value::Length)
            .map_err(|error| no_length(kind, text, path, error)),
        Kind::Diameter | Kind::Distance => {
            Length::parse_diameter(text)
                .map(Value::Length)
                .map_err(|error| {
                    let (message, hint) = no_length(kind, text, path, error);
                    (message, gauge(text).map_or(hint, Said::from))
                })
        }
        Kind::Quantity(measure) => match quantity(*measure, text) {
            Ok(value) if *measure != Measure::Temperature && value < 0.0 => {
                Err(is_text(FormHint::CannotBeNegative.into()))
            }
            Ok(value) => Ok(Value::Number(value)),
            Err(error) => Err(no_quantity(kind, *measure, text, path, error)),
        },
        Kind::Choice(words) => match meant(text, words) {
            Some(word) => Ok(Value::Text(word.to_owned())),
            None => Err(is_text(nearest_words(text, words))),
        },
        Kind::Date => {
            let said = ValueSaid::IsTheText {
                path: path.to_owned(),
                text: quoted(text),
                expected: kind.expected(),
            };
            Err((said.into(), FormHint::DateWithoutQuotes.into()))
        }
        other => {
            let hint = match other {
                Kind::Flag | Kind::Integer { .. } | Kind::Number { .. } => {
                    FormHint::TakeQuotesAway.into()
                }
                _ => NOTHING.into(),
            };
            let said = ValueSaid::Holds {
                path: path.to_owned(),
                what: Holds::Text,
                expected: other.expected(),
            };
            Err((said.into(), hint))
        }
    }
}

fn no_length(kind: &Kind, text: &str, path: &str, error: LengthError) -> Refused {
    let hint = FormHint::Length(error.clone());
    let said = ValueSaid::IsNoLength {
        path: path.to_owned(),
        text: quoted(text),
        error,
        expected: kind.expected(),
    };
    (said.into(), hint.into())
}

fn no_quantity(
    kind: &Kind,
    measure: Measure,
    text: &str,
    path: &str,
    error: QuantityError,
) -> Refused {
    let measure = measure.said();
    let hint = FormHint::Quantity {
        measure,
        error: error.clone(),
    };
    let said = ValueSaid::IsNoQuantity {
        path: path.to_owned(),
        text: quoted(text),
        measure,
        error,
        expected: kind.expected(),
    };
    (said.into(), hint.into())
}

/// Rows that one row of a file stands for.
fn rows_of(record: Record, shape: &'static Shape) -> Vec<Record> {
    let is_several = |field: &&Field| matches!(field.kind, Kind::Several(_));
    let several = shape.fields.iter().filter(is_several);
    several.fold(vec![record], |rows, field| {
        let each = rows.iter().map(|row| row.each(field.name));
        each.flatten().collect()
    })
}

fn quantity(measure: Measure, text: &str) -> Result<f64, QuantityError> {
    match measure {
        Measure::Voltage => VoltageRms::parse(text).map(|v| v.kv()),
        Measure::Current => Current::parse(text).map(|v| v.a()),
        Measure::Time => Seconds::parse(text).map(|v| v.s()),
        Measure::Temperature => Temperature::parse(text).map(|v| v.deg_c()),
        Measure::Area => Area::parse(text).map(|v| v.mm2()),
        Measure::Frequency => Frequency::parse(text).map(|v| v.hz()),
        Measure::Resistance => Resistance::parse(text).map(|v| v.ohm()),
        Measure::Torque => Torque::parse(text).map(|v| v.nm()),
    }
}

/// Free text; somebody's words get quotation marks.
fn words(
    kind: &Kind,
    text: &str,
    path: &str,
    printed: fn(&str) -> String,
) -> Result<String, Refused> {
    let (field, expected) = (path.to_owned(), kind.expected());
    if text.trim().is_empty() {
        let said = ValueSaid::IsEmptyText {
            path: field,
            expected,
        };
        return Err((said.into(), FormHint::FillItIn.into()));
    }
    if text.chars().any(breaks_a_line) {
        let said = ValueSaid::BreaksALine {
            path: field,
            expected,
        };
        return Err((said.into(), FormHint::OnOneLine.into()));
    }
    // The name of a file to open stays as it is.
    if path.starts_with("file.catalogues") || path.ends_with("_csv") {
        return Ok(text.to_owned());
    }
    Ok(printed(text))
}

/// Whether a character could forge a line or disturb a terminal: control characters, line separators, changes of direction.
fn breaks_a_line(c: char) -> bool {
    c.is_control() || matches!(c, '\u{2028}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

fn is_id(text: &str) -> bool {
    !text.is_empty()
        && text.len() <= 64
        && !text.starts_with('-')
        && text.chars().all(|c| c.is_ascii_alphanumeric() || c == '-')
}

fn integer(value: &DeValue<'_>) -> Option<i64> {
    let DeValue::Integer(integer) = value else {
        return None;
    };
    i64::from_str_radix(integer.as_str(), integer.radix()).ok()
}

fn number(value: &DeValue<'_>) -> Option<f64> {
    let number = match value {
        DeValue::Float(float) => float.as_str().parse().ok()?,
        other => integer(other)? as f64,
    };
    Some(number).filter(|n: &f64| n.is_finite())
}

fn holds(value: &DeValue<'_>) -> Holds {
    match value {
        DeValue::String(_) => Holds::Text,
        DeValue::Integer(_) => Holds::BareWholeNumber,
        DeValue::Float(_) => Holds::BareNumber,
        DeValue::Boolean(_) => Holds::Flag,
        DeValue::Datetime(_) => Holds::DateOrTime,
        DeValue::Array(_) => Holds::List,
        DeValue::Table(_) => Holds::Table,
    }
}

/// A number or a date as written.
fn shown(value: &DeValue<'_>) -> String {
    match value {
        DeValue::Integer(i) => i.to_string(),
        DeValue::Float(f) => f.to_string(),
        DeValue::Datetime(d) => d.to_string(),
        _ => String::new(),
    }
}

/// Quotation of a text in a complaint: a long text is cut after its beginning.
pub(super) fn quoted(text: &str) -> String {
    match text.char_indices().nth(QUOTED_GREATEST) {
        Some((end, _)) => format!("{}...", &text[..end]),
        None => text.to_owned(),
    }
}

/// Name of a row in a complaint: its own short name, else its number.
fn row_name(row: &DeValue<'_>, index: usize) -> String {
    let DeValue::Table(table) = row else {
        return (index + 1).to_string();
    };
    let id = table.iter().find(|(key, _)| key.get_ref() == "id");
    match id.map(|(_, value)| value.get_ref()) {
        Some(DeValue::String(id)) if is_id(id) => id.to_string(),
        _ => (index + 1).to_string(),
    }
}

/// Common spellings, each with the word of these files that it stands for.
const SYNONYMS: &[(&str, &str)] = &[
    ("aluminum", "aluminium"),
    ("manhole", "vault"),
    ("caliper", "calliper"),
    ("shearbolt", "shear-bolt"),
    ("setscrew", "set-screw"),
    ("grounding", "earthing"),
];

/// Known word that a text stands for: the word itself, the word in other letter case or separators, or a synonym.
fn meant<'w>(found: &str, words: &[&'w str]) -> Option<&'w str> {
    if let Some(word) = words.iter().find(|word| **word == found) {
        return Some(word);
    }
    if found.len() > QUOTED_GREATEST {
        return None;
    }
    let plain = found.trim().to_lowercase().replace([' ', '_'], "-");
    let of = |wanted: &str| {
        let is_wanted = |word: &&&'w str| word.to_lowercase().replace([' ', '_'], "-") == wanted;
        words.iter().find(is_wanted).copied()
    };
    of(&plain).or_else(|| {
        let synonym = SYNONYMS.iter().find(|(written, _)| *written == plain);
        of(synonym?.1)
    })
}

/// Hint for an unknown word: the words that contain it, else the nearest word.
fn nearest_words(found: &str, words: &[&str]) -> Said {
    let plain = found.trim().to_lowercase();
    let holding = words
        .iter()
        .filter(|word| plain.len() > 2 && word.split('-').any(|part| part == plain));
    let mut near: Vec<String> = holding.map(|word| (*word).to_owned()).collect();
    if near.is_empty() {
        near.extend(alike(&plain, words.iter().copied()).map(str::to_owned));
    }
    if near.is_empty() {
        return NOTHING.into();
    }
    FormHint::DidYouMean { words: near }.into()
}

/// Diameter of a wire gauge, as a hint: the name of a wire is no length, and the wire may be stranded.
///
/// d = 5 mil · 92^((36 − n)/39), by the definition of the gauge.
fn gauge(text: &str) -> Option<FormHint> {
    let number = text.trim().to_lowercase();
    let number = number.strip_suffix("awg")?.trim().trim_start_matches('#');
    let gauge: i32 = number.parse().ok().filter(|n| (0..=40).contains(n))?;
    let mil = 5.0 * 92_f64.powf(f64::from(36 - gauge) / 39.0);
    Some(FormHint::WireGauge {
        gauge,
        mil: format!("{mil:.1}"),
    })
}

/// Word of `words` most like `found`; `None` if no word is alike enough.
fn alike<'w>(found: &str, words: impl Iterator<Item = &'w str>) -> Option<&'w str> {
    if found.len() > QUOTED_GREATEST {
        return None;
    }
    words
        .map(|word| (strsim::normalized_damerau_levenshtein(found, word), word))
        .filter(|(likeness, _)| *likeness >= LIKENESS_LEAST_RATIO)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, word)| word)
}
