//! A sheet in Spanish, its text read back from the PDF: no English but names and words of files.

use hayro_syntax::Pdf;
use hayro_syntax::content::TypedIter;
use hayro_syntax::content::ops::TypedInstruction;
use hayro_syntax::object::{Array, Dict, Name, Object, Stream};
use hayro_syntax::page::Resources;
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::Source;
use jointwright_joint::plan::Plan;
use jointwright_joint::{job, judge};
use jointwright_paper::make_up_sheet;
use std::collections::{BTreeMap, BTreeSet};

/// Limits from memory: their sources are titles of papers.
const MEMORY: &str = include_str!("../../../data/limit/from_memory.toml");
const THREE_WAY: &str = include_str!("../../../examples/larkspur-three-way/job.toml");

/// English words that no Spanish text of a sheet has.
const ENGLISH: &[&str] = &[
    "the",
    "of",
    "is",
    "and",
    "its",
    "not",
    "with",
    "that",
    "this",
    "from",
    "at",
    "by",
    "for",
    "are",
    "on",
    "it",
    "leg",
    "phase",
    "cut",
    "mark",
    "window",
    "jacket",
    "shield",
    "insulation",
    "joint",
    "made",
    "page",
    "piece",
    "strip",
    "front",
    "stop",
    "call",
    "seal",
    "body",
    "step",
    "read",
    "word",
    "left",
    "most",
    "least",
    "found",
    "screen",
    "edge",
    "end",
    "lie",
    "may",
    "press",
    "presses",
    "growth",
    "paper",
    "row",
    "set",
    "place",
    "job",
    "issue",
];

/// Letters of one font by its codes, from what the PDF says for those who copy text.
fn letters(font: &Dict<'_>) -> BTreeMap<u16, String> {
    let mut letters = BTreeMap::new();
    let Some(stream) = font.get::<Stream<'_>>(b"ToUnicode".as_slice()) else {
        return letters;
    };
    let map = stream.decoded().expect("a map of letters");
    let map = String::from_utf8_lossy(&map).into_owned();
    let code = |text: &str| u16::from_str_radix(text, 16).expect("a code");
    let units = |text: &str| -> Vec<u16> {
        let digits: Vec<char> = text.chars().collect();
        let each = digits.chunks(4).map(|four| four.iter().collect::<String>());
        each.map(|four| code(&four)).collect()
    };
    let mut is_range = false;
    for line in map.lines() {
        match line.trim() {
            line if line.ends_with("beginbfrange") => is_range = true,
            line if line.ends_with("beginbfchar") => is_range = false,
            line if line.starts_with('<') => {
                let fields: Vec<&str> = line
                    .split(['<', '>', ' ', '[', ']'])
                    .filter(|field| !field.is_empty())
                    .collect();
                match fields.as_slice() {
                    [from, to] if !is_range => {
                        let text = String::from_utf16_lossy(&units(to));
                        letters.insert(code(from), text);
                    }
                    [from, last, to] if is_range => {
                        let mut next = units(to);
                        for at in code(from)..=code(last) {
                            letters.insert(at, String::from_utf16_lossy(&next));
                            if let Some(unit) = next.last_mut() {
                                *unit += 1;
                            }
                        }
                    }
                    _ => {}
                }
            }
            _ => {}
        }
    }
    letters
}

/// Text of a content stream and of the forms in it, a line a text object.
fn gather(mut content: TypedIter<'_>, resources: &Resources<'_>, text: &mut String) {
    let mut fonts: BTreeMap<Vec<u8>, BTreeMap<u16, String>> = BTreeMap::new();
    let mut font: Vec<u8> = Vec::new();
    while let Some(instruction) = content.next() {
        let mut shown = |bytes: &[u8], fonts: &BTreeMap<Vec<u8>, BTreeMap<u16, String>>| {
            for pair in bytes.chunks(2) {
                let code = pair
                    .iter()
                    .fold(0_u16, |code, byte| code << 8 | u16::from(*byte));
                let letter = fonts.get(&font).and_then(|letters| letters.get(&code));
                text.push_str(letter.map_or("?", String::as_str));
            }
        };
        match instruction {
            TypedInstruction::TextFont(set) => {
                let name: &Name<'_> = set.0;
                font = name.as_ref().to_vec();
                if let Some(dict) = resources.get_font(name) {
                    fonts.entry(font.clone()).or_insert_with(|| letters(&dict));
                }
            }
            TypedInstruction::ShowText(show) => shown(show.0.as_bytes(), &fonts),
            TypedInstruction::ShowTexts(show) => {
                let all: &Array<'_> = show.0;
                for object in all.iter::<Object<'_>>() {
                    if let Object::String(string) = object {
                        shown(string.as_bytes(), &fonts);
                    }
                }
            }
            TypedInstruction::EndText(_) => text.push('\n'),
            TypedInstruction::XObject(name) => {
                let Some(stream) = resources.get_x_object(name.0) else {
                    continue;
                };
                let inner = stream.dict().get(b"Resources".as_slice());
                let inner = Resources::from_parent(inner.unwrap_or_default(), resources.clone());
                let Ok(data) = stream.decoded() else { continue };
                gather(TypedIter::new(&data), &inner, text);
            }
            _ => {}
        }
    }
}

/// Text of a sheet, page after page, with one space wherever there is room.
fn text_of(bytes: Vec<u8>) -> String {
    let pdf = Pdf::new(bytes).expect("a PDF");
    let mut text = String::new();
    for page in pdf.pages().iter() {
        gather(page.typed_operations(), page.resources(), &mut text);
    }
    spaced(&text)
}

/// Text with one space wherever there is room, and none after a hyphen: a line may end there.
fn spaced(text: &str) -> String {
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    text.replace("- ", "-")
}

/// English words of a text.
fn english(text: &str) -> BTreeSet<String> {
    let lower = text.to_lowercase();
    let words = lower.split(|c: char| !c.is_alphanumeric());
    let english = words.filter(|word| ENGLISH.contains(word));
    english.map(str::to_owned).collect()
}

/// Texts of job and catalogue: names, which stay as they are.
fn names() -> Vec<String> {
    let quoted = |text: &str| -> Vec<String> {
        let pieces = text
            .lines()
            .filter(|line| !line.trim_start().starts_with('#'));
        let pieces = pieces.flat_map(|line| line.split('"').skip(1).step_by(2));
        pieces.map(spaced).collect()
    };
    let texts = [THREE_WAY, DEMONSTRATION_TEXT, MEMORY];
    let mut names: Vec<String> = texts.into_iter().flat_map(quoted).collect();
    // A word alone is a word of files, and may be one of a sentence.
    let is_name = |name: &String| {
        let begins = |letter: char| letter.is_alphabetic() || letter == '[';
        name.starts_with(begins) && name.contains([' ', '-']) && name.len() > 5
    };
    names.retain(is_name);
    // The longest first, so that no name is cut into by a shorter one.
    names.sort_by_key(|name| std::cmp::Reverse(name.len()));
    names
}

/// Text without somebody's own words, and without words of files.
fn unquoted(text: &str) -> String {
    let pieces = text.split('“').enumerate();
    let kept = pieces.map(|(at, piece)| match piece.split_once('”') {
        Some((_, after)) if at > 0 => after,
        _ => piece,
    });
    let kept: String = kept.collect();
    kept.split('`').step_by(2).collect()
}

fn without(text: &str, names: &[String]) -> String {
    names
        .iter()
        .fold(text.to_owned(), |text, name| text.replace(name, " "))
}

fn planned(text: &str) -> Plan {
    let catalogue = Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned());
    let source = Source::new("job.toml", text.to_owned());
    let order = job::read_order(&source, &[catalogue]).expect("the job is read");
    jointwright_wording::plan(&judge::judge(&order).expect("the rows agree"))
}

fn spanish() -> Plan {
    planned(&THREE_WAY.replacen("[job]", "[job]\nlanguage = \"es\"", 1))
}

#[test]
fn a_sheet_in_spanish_has_no_english_but_names() {
    let plan = spanish();
    let names = names();
    let text = text_of(make_up_sheet(&plan, &[]).expect("a sheet"));
    assert!(
        text.contains("Prevalecen las instrucciones nombradas aquí"),
        "{text}"
    );
    // The colon is no part of the name, or the space after it is lost; this reader sets a space between a name and what follows.
    assert!(text.contains("demo-contact-bolt : como máximo"), "{text}");
    // Spanish would write the hyphen of a name twice where a line ends in it.
    assert!(!text.contains("--"), "{text}");
    assert!(
        text.contains("Hoja de empalme larkspur-three-way : “"),
        "{text}"
    );
    let text = without(&unquoted(&text), &names);
    let found = english(&text);
    let around: Vec<&str> = found
        .iter()
        .filter_map(|word| {
            let at = text.to_lowercase().find(&format!(" {word} "))?;
            text.get(at.saturating_sub(60)..(at + 60).min(text.len()))
        })
        .collect();
    assert!(found.is_empty(), "{found:?}: {around:#?}");
}

#[test]
fn a_sheet_in_english_is_found_to_be_english() {
    let text = text_of(make_up_sheet(&planned(THREE_WAY), &[]).expect("a sheet"));
    assert!(
        text.contains("The instructions named here prevail"),
        "{text}"
    );
    assert!(english(&without(&text, &names())).len() > 30);
}

#[test]
fn a_sheet_in_spanish_has_the_pages_and_the_strips_of_the_english_one() {
    let n_pages = |plan: &Plan| {
        let pdf = Pdf::new(make_up_sheet(plan, &[]).expect("a sheet")).expect("a PDF");
        pdf.pages().len()
    };
    let (english, spanish) = (n_pages(&planned(THREE_WAY)), n_pages(&spanish()));
    // Front pages and strips are as many; what stands behind them may be a little longer or shorter.
    assert!(english.abs_diff(spanish) <= 3, "{english} {spanish}");
}
