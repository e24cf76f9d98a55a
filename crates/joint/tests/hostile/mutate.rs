//! Ways to break a file: as bytes, as lines and as values.

use proptest::prelude::*;

/// One change to a text. Numbers choose a place; they are taken modulo the number of places.
#[derive(Clone, Debug)]
pub(crate) enum Break {
    /// Another byte at a place.
    Byte(usize, u8),
    /// Hostile bytes put in at a place.
    Insert(usize, usize),
    /// Bytes taken out from a place on.
    Delete(usize, usize),
    /// Everything from a place on taken out.
    Truncate(usize),
    /// A line taken out.
    DropLine(usize),
    /// A line written twice.
    RepeatLine(usize),
    /// Two lines exchanged.
    SwapLines(usize, usize),
    /// A table, up to the next heading, written twice.
    RepeatTable(usize),
    /// A value exchanged for a hostile one.
    Value(usize, usize),
    /// Two values exchanged.
    SwapValues(usize, usize),
    /// A length exchanged for another that is well formed.
    Length(usize, Measured),
    /// A letter of a key changed.
    Key(usize, char),
    /// Lines ended as on some other system.
    Crlf,
    /// A byte order mark in front.
    Bom,
    /// A value wrapped in this many brackets.
    Nest(usize, usize),
    /// A value extended to this many thousand characters.
    Giant(usize, usize),
}

/// A length that is well formed: size and unit.
#[derive(Clone, Debug)]
pub(crate) struct Measured(u64, &'static str);

/// Passages that are put in anywhere.
const PASSAGES: &[&[u8]] = &[
    b"\0",
    b"\r",
    b"\n",
    b"\"",
    b"\"\"\"",
    b"'''",
    b"[",
    b"]",
    b"{",
    b"}",
    b"[[",
    b"]]",
    b"=",
    b",",
    b".",
    b"#",
    b"\\",
    b"\\u0000",
    b"\\u001b[31m",
    b"\xff",
    b"\xc3",
    b"\xed\xa0\x80",
    b"\xef\xbb\xbf",
    "\u{202e}".as_bytes(),
    "\u{0663}".as_bytes(),
    "\u{bd}".as_bytes(),
    "\u{1f600}".as_bytes(),
    b"[[leg]]\n",
    b"[job]\n",
    b"leg = 1\n",
    b"id = \"A\"\n",
];

/// Values that are written in place of others.
const VALUES: &[&str] = &[
    "0",
    "-1",
    "1.5",
    "9223372036854775807",
    "-9223372036854775808",
    "9223372036854775808",
    "0xFFFFFFFFFFFFFFFF",
    "1e308",
    "1e999",
    "-0.0",
    "nan",
    "inf",
    "-inf",
    "true",
    "[]",
    "{}",
    "[[]]",
    "[[[[1]]]]",
    "[{}]",
    "{ a = 1 }",
    "\"\"",
    "\" \"",
    "\"\\u0000\"",
    "\"a\\nb\\u001b[31m\"",
    "\"\u{0661}\u{0662} mm\"",
    "\"0 mm\"",
    "\"-1 mm\"",
    "\"1 nm\"",
    "\"0.000001 mm\"",
    "\"0.0000001 mm\"",
    "\"9223372036 m\"",
    "\"9223372036854775807 mm\"",
    "\"10000 m\"",
    "\"10000.000001 m\"",
    "\"7.16 in\"",
    "\"1/0 in\"",
    "\"7 1/3 in\"",
    "\"1e3 mm\"",
    "\"99999999999999999999999999 mm\"",
    "\"1e308 degC\"",
    "\"-1e308 degC\"",
    "\"-273.15 degC\"",
    "\"1e300 kV\"",
    "\"52 kV\"",
    "\"1e-300 s\"",
    "\"1e308 s\"",
    "\"NaN A\"",
    "\"inf kA\"",
    "\"0/0 AWG\"",
    "\"99999999999 kcmil\"",
    "\"1e9 mm2\"",
    "\"0 mm2\"",
    "1900-01-01",
    "9999-12-31",
    "0001-01-01",
    "2026-02-30",
    "2026-03-09T25:00:00",
    "07:32:00",
    "\"A\"",
    "\"B\"",
    "\"straight\"",
    "\"branch\"",
    "\"separable\"",
    "\"paper-lead\"",
    "\"insulation\"",
    "\"conductor-end\"",
    "\"insulation-end\"",
    "\"seal-end\"",
    "\"expanded\"",
    "\"compression\"",
    "\"demo-seal-30\"",
    "\"demo-adapter-24\"",
];

fn measured() -> impl Strategy<Value = Measured> {
    let size = prop_oneof![
        0_u64..=3,
        0_u64..=200,
        0_u64..=100_000,
        Just(9_999),
        Just(10_000),
        Just(9_999_999),
    ];
    let unit = prop::sample::select(vec!["mm", "in", "mil", "ft", "m", "cm"]);
    (size, unit).prop_map(|(size, unit)| Measured(size, unit))
}

/// Any way to break a file; ways that keep it readable are more frequent.
pub(crate) fn any_break() -> impl Strategy<Value = Break> {
    let n = any::<usize>;
    prop_oneof![
        2 => (n(), any::<u8>()).prop_map(|(a, b)| Break::Byte(a, b)),
        2 => (n(), n()).prop_map(|(a, b)| Break::Insert(a, b)),
        1 => (n(), 1_usize..40).prop_map(|(a, b)| Break::Delete(a, b)),
        1 => n().prop_map(Break::Truncate),
        3 => n().prop_map(Break::DropLine),
        2 => n().prop_map(Break::RepeatLine),
        2 => (n(), n()).prop_map(|(a, b)| Break::SwapLines(a, b)),
        1 => n().prop_map(Break::RepeatTable),
        6 => (n(), n()).prop_map(|(a, b)| Break::Value(a, b)),
        3 => (n(), n()).prop_map(|(a, b)| Break::SwapValues(a, b)),
        12 => (n(), measured()).prop_map(|(a, b)| Break::Length(a, b)),
        1 => (n(), any::<char>()).prop_map(|(a, b)| Break::Key(a, b)),
        1 => Just(Break::Crlf),
        1 => Just(Break::Bom),
        1 => (n(), 1_usize..300).prop_map(|(a, b)| Break::Nest(a, b)),
        1 => (n(), 1_usize..20).prop_map(|(a, b)| Break::Giant(a, b)),
    ]
}

/// Only ways that leave the file TOML of the format and change its values.
pub(crate) fn any_measure() -> impl Strategy<Value = Break> {
    (any::<usize>(), measured()).prop_map(|(a, b)| Break::Length(a, b))
}

/// The text after all changes, in order.
pub(crate) fn broken(text: &str, breaks: &[Break]) -> Vec<u8> {
    let mut bytes = text.as_bytes().to_vec();
    for each in breaks {
        bytes = apply(bytes, each);
    }
    bytes
}

fn apply(mut bytes: Vec<u8>, each: &Break) -> Vec<u8> {
    let n = bytes.len();
    match *each {
        Break::Byte(at, byte) if n > 0 => bytes[at % n] = byte,
        Break::Insert(at, which) => {
            let passage = PASSAGES[which % PASSAGES.len()];
            let at = at % (n + 1);
            bytes.splice(at..at, passage.iter().copied());
        }
        Break::Delete(at, length) if n > 0 => {
            let at = at % n;
            bytes.drain(at..(at + length).min(n));
        }
        Break::Truncate(at) => bytes.truncate(at % (n + 1)),
        Break::Bom => {
            bytes.splice(0..0, *b"\xef\xbb\xbf");
        }
        Break::Byte(..) | Break::Delete(..) => {}
        // The other ways work on text; bytes that are no longer text stay as they are.
        _ => {
            if let Ok(text) = std::str::from_utf8(&bytes) {
                return apply_to_text(text, each).into_bytes();
            }
        }
    }
    bytes
}

fn apply_to_text(text: &str, each: &Break) -> String {
    match each {
        Break::Crlf => text.replace('\n', "\r\n"),
        Break::DropLine(_) | Break::RepeatLine(_) | Break::SwapLines(..) => lines(text, each),
        Break::RepeatTable(at) => repeat_table(text, *at),
        _ => values(text, each),
    }
}

fn lines(text: &str, each: &Break) -> String {
    let mut lines: Vec<&str> = text.split_inclusive('\n').collect();
    if lines.is_empty() {
        return text.to_owned();
    }
    let n = lines.len();
    match *each {
        Break::DropLine(at) => {
            lines.remove(at % n);
        }
        Break::RepeatLine(at) => lines.insert(at % n, lines[at % n]),
        Break::SwapLines(a, b) => lines.swap(a % n, b % n),
        _ => {}
    }
    lines.concat()
}

fn repeat_table(text: &str, at: usize) -> String {
    let heads: Vec<usize> = text.match_indices("\n[").map(|(i, _)| i + 1).collect();
    if heads.is_empty() {
        return text.to_owned();
    }
    let which = at % heads.len();
    let end = heads.get(which + 1).copied().unwrap_or(text.len());
    let table = &text[heads[which]..end];
    format!("{}{table}{}", &text[..end], &text[end..])
}

fn values(text: &str, each: &Break) -> String {
    let spans = spans(text);
    if spans.is_empty() {
        return text.to_owned();
    }
    let span = |at: usize| spans[at % spans.len()];
    let put = |(start, end): (usize, usize), new: &str| {
        format!("{}{new}{}", &text[..start], &text[end..])
    };
    match each {
        Break::Value(at, which) => put(span(*at), VALUES[which % VALUES.len()]),
        Break::SwapValues(a, b) => {
            let (a, b) = (span(*a).min(span(*b)), span(*a).max(span(*b)));
            if b.0 < a.1 {
                return text.to_owned();
            }
            let exchanged = put(b, &text[a.0..a.1]);
            format!(
                "{}{}{}",
                &exchanged[..a.0],
                &text[b.0..b.1],
                &exchanged[a.1..]
            )
        }
        Break::Length(at, Measured(size, unit)) => {
            let lengths: Vec<_> = spans
                .iter()
                .filter(|(start, end)| is_length(&text[*start..*end]))
                .collect();
            match lengths.is_empty() {
                true => text.to_owned(),
                false => put(*lengths[at % lengths.len()], &format!("\"{size} {unit}\"")),
            }
        }
        Break::Key(at, letter) => {
            // The last letter of the key in front of the value.
            let (start, _) = span(*at);
            match text[..start].rfind(|c: char| c.is_ascii_lowercase()) {
                Some(at) => format!("{}{letter}{}", &text[..at], &text[at + 1..]),
                None => text.to_owned(),
            }
        }
        Break::Nest(at, depth) => {
            let (start, end) = span(*at);
            let value = &text[start..end];
            put(
                (start, end),
                &format!("{}{value}{}", "[".repeat(*depth), "]".repeat(*depth)),
            )
        }
        Break::Giant(at, thousands) => put(
            span(*at),
            &format!("\"{}\"", "9x\u{bd}".repeat(thousands * 333)),
        ),
        _ => text.to_owned(),
    }
}

fn is_length(value: &str) -> bool {
    ["mm\"", "in\"", "mil\"", " m\"", " ft\""]
        .iter()
        .any(|unit| value.ends_with(unit))
        && value.starts_with('"')
}

/// Places of values: behind each equals sign, and each text between quotes.
fn spans(text: &str) -> Vec<(usize, usize)> {
    let mut spans = Vec::new();
    let bytes = text.as_bytes();
    let mut at = 0;
    while at < bytes.len() {
        match bytes[at] {
            b'#' => at += length_to(&bytes[at..], b"\n"),
            b'"' => {
                let end = (at + 1 + length_to(&bytes[at + 1..], b"\"\n") + 1).min(bytes.len());
                if text.is_char_boundary(end) {
                    spans.push((at, end));
                }
                at = end;
            }
            b'=' => {
                let start = at + 1 + bytes[at + 1..].iter().take_while(|b| **b == b' ').count();
                let length = length_to(&bytes[start..], b",\n}]#");
                let bare = bytes.get(start).is_some_and(|b| !b"\"[{".contains(b));
                if bare && length > 0 {
                    spans.push((start, start + length));
                }
                at += 1;
            }
            _ => at += 1,
        }
    }
    spans
}

fn length_to(bytes: &[u8], any_of: &[u8]) -> usize {
    bytes.iter().take_while(|b| !any_of.contains(b)).count()
}

#[test]
fn values_are_found_where_they_stand() {
    let text = "# x = 1\na = 12\nb = [\"c\", \"d # e\"]\nf = { g = true }\n";
    let found: Vec<&str> = spans(text).iter().map(|(a, b)| &text[*a..*b]).collect();
    assert_eq!(found, ["12", "\"c\"", "\"d # e\"", "true "]);
}
