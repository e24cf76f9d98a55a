//! Finds numbers in a text of a row that contradict the row's own figures.
//!
//! Texts are name, note, steps with their cautions, and the places of links.
//! The class compares a length given in two units, a length in a step that cuts at a plane of the row, a length beside a link, a number of presses, and a voltage class in the name.
//! It judges nothing else in a text: months, torque, grit and temperatures are left alone.

use super::entry::{Entry, Kind};
use super::figure::{Figure, duals, figures};
use super::row_chain::{Solved, pairs, planes, ties};
use super::{Class, Defect, listed, shown};
use crate::catalogue::{Catalogue, LinkRow};
use crate::form::spoken::bare;
use crate::plane::{Holder, Plane};
use crate::said::Whose;
use jointwright_units::Length;

pub(super) const CLASS: Class = Class {
    slug: "text_against_number",
    question: "Does a number in a text of a row contradict the row's own figures?",
    find,
};

/// Words of a step that cuts.
const CUTS: &[&str] = &["cut", "cuts", "remove", "strip", "score", "trim", "mark"];
/// Words that show that a length is not the place of a cut.
const OF_OTHER_THINGS: &[&str] = &[
    "tape",
    "mastic",
    "braid",
    "binder",
    "tie",
    "ties",
    "cord",
    "deep",
    "deeper",
    "depth",
    "thick",
    "wide",
    "long",
    "chamfer",
    "bevel",
    "apart",
    "radius",
    "width",
    "thickness",
];
/// Words for a place, in a step that names no layer.
const PLACES: &[&str] = &[
    "end",
    "mouth",
    "centre",
    "center",
    "edge",
    "connector",
    "seat",
];
/// Numbers in words, from one.
const NUMBERS: &[&str] = &[
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
    "twelve",
];
/// Words that show that a number of presses covers both ends.
const OF_BOTH_ENDS: &[&str] = &["all", "total", "altogether", "both", "together"];

/// Half a millimetre: greatest difference of a row in whole millimetres from inches.
const HALF_MM: Length = Length::from_nm(500_000);

const HINT: &str = "Look up the number in the paper, and correct the text or the field.";

fn find(_: &Catalogue, entries: &[Entry<'_>]) -> Vec<Defect> {
    let mut defects = Vec::new();
    for entry in entries {
        for (what, text) in texts(entry) {
            defects.extend(said_twice(entry, &what, text));
        }
        for step in &entry.head.steps {
            defects.extend(cut_places(entry, bare(&step.say)));
        }
        defects.extend(entry.all_links().filter_map(|l| beside_link(entry, l)));
        defects.extend(presses(entry));
        defects.extend(class_in_name(entry));
    }
    defects
}

/// Texts of a row except the places of links, each with its name.
fn texts<'c>(entry: &Entry<'c>) -> Vec<(String, &'c str)> {
    let head = entry.head;
    let mut texts = vec![("name".to_owned(), bare(&head.name))];
    let note = head.note.as_deref();
    texts.extend(note.map(|note| ("note".to_owned(), bare(note))));
    for (index, step) in head.steps.iter().enumerate() {
        let id = step.id.clone();
        let which = id.unwrap_or_else(|| (index + 1).to_string());
        texts.push((format!("step {which}"), bare(&step.say)));
        let caution = step.caution.as_deref();
        texts.extend(caution.map(|c| (format!("caution of step {which}"), bare(c))));
    }
    texts
}

/// Whether the two sides of a figure given in two units agree to half a unit of the second's last digit.
fn agree(first: &Figure, second: &Figure) -> bool {
    (first.value - second.value).abs() <= second.half_unit
}

/// Whether a figure states a length of the row.
///
/// A fraction of an inch is set on a tape and is not rounded; the row may have it in whole millimetres.
fn is_said(figure: &Figure, length: Length) -> bool {
    let rounding = match figure.is_inch {
        true => figure.half_unit.min(HALF_MM),
        false => figure.half_unit,
    };
    (figure.value - length).abs() <= rounding
}

fn said_twice(entry: &Entry<'_>, what: &str, text: &str) -> Vec<Defect> {
    let figures = figures(text);
    duals(text, &figures)
        .into_iter()
        .filter(|(first, second)| !agree(first, second))
        .map(|(first, second)| two_units(entry, what, text, first, second))
        .collect()
}

fn two_units(entry: &Entry<'_>, what: &str, text: &str, first: &Figure, second: &Figure) -> Defect {
    let found = format!(
        "The {what} of `{}` says \"{}\" and \"{}\" of one length; the first is {}.",
        entry.head.id,
        &text[first.start..first.end],
        &text[second.start..second.end],
        shown_both(first.value)
    );
    Defect::of_row(
        CLASS.slug,
        entry,
        found,
        "Expected both sides to agree to half a unit of the last digit printed.",
        HINT,
    )
}

fn shown_both(length: Length) -> String {
    match length.exact_inch() {
        Some(inch) => format!("{inch} or {length}"),
        None => {
            let hundredths = (length.nm() * 100 + Length::INCH.nm() / 2) / Length::INCH.nm();
            format!(
                "{length}, about {}.{:02} in",
                hundredths / 100,
                hundredths % 100
            )
        }
    }
}

/// Parts of a text between full stops and semicolons, with the byte at which each begins.
fn clauses(text: &str) -> Vec<&str> {
    let mut clauses = Vec::new();
    let mut start = 0;
    for (at, c) in text.char_indices() {
        let after = &text[at + c.len_utf8()..];
        let ends = match c {
            ';' => true,
            // The stop of "in." ends a clause only before a capital.
            '.' if text[..at].ends_with(" in") => {
                let next = after.trim_start().chars().next();
                next.is_none_or(char::is_uppercase)
            }
            '.' => after.is_empty() || after.starts_with(char::is_whitespace),
            _ => false,
        };
        if ends {
            clauses.push(&text[start..at]);
            start = at + c.len_utf8();
        }
    }
    clauses.push(&text[start..]);
    clauses
}

fn words(text: &str) -> Vec<String> {
    text.split(|c: char| !c.is_alphanumeric())
        .filter(|w| !w.is_empty())
        .map(str::to_lowercase)
        .collect()
}

/// Cuts that a clause names.
fn cuts_named(clause: &str) -> Vec<Plane> {
    let lower = clause.to_lowercase();
    let has = |words: &[&str]| words.iter().any(|w| lower.contains(w));
    let screen = has(&["insulation shield", "insulation screen", "semicon"]);
    let bare = lower
        .replace("insulation shield", "")
        .replace("insulation screen", "");
    let mut cuts = Vec::new();
    cuts.extend(bare.contains("insulation").then_some(Plane::InsulationEnd));
    cuts.extend(screen.then_some(Plane::ScreenEdge));
    cuts.extend(
        has(&["metallic shield", "metallic screen", "neutral"]).then_some(Plane::ShieldEdge),
    );
    cuts.extend(has(&["jacket", "oversheath"]).then_some(Plane::JacketEdge));
    cuts
}

fn cut_places(entry: &Entry<'_>, say: &str) -> Vec<Defect> {
    let own = pairs(&ties(entry));
    if own.is_empty() {
        return Vec::new();
    }
    let mut known: Option<Vec<Length>> = None;
    let mut defects = Vec::new();
    for clause in clauses(say) {
        let words = words(clause);
        let has = |any: &[&str]| words.iter().any(|w| any.contains(&w.as_str()));
        let cuts = cuts_named(clause);
        let is_of_row = |cut: &Plane| own.iter().any(|(a, b)| a == cut || b == cut);
        let is_placed = match cuts.is_empty() {
            true => has(PLACES),
            false => cuts.iter().any(is_of_row),
        };
        if !has(CUTS) || has(OF_OTHER_THINGS) || !is_placed {
            continue;
        }
        let figures = figures(clause);
        let duals = duals(clause, &figures);
        let known = known.get_or_insert_with(|| lengths(entry));
        let is_known = |f: &Figure| known.iter().any(|k| is_said(f, *k));
        for figure in &figures {
            let dual = duals.iter().find(|(a, b)| *a == figure || *b == figure);
            let says_it = match dual {
                // Reported once for both sides; if they disagree, that is already reported.
                Some((a, b)) => *b == figure || !agree(a, b) || is_known(a) || is_known(b),
                None => is_known(figure),
            };
            if !says_it {
                defects.push(unknown_length(entry, clause, figure));
            }
        }
    }
    defects
}

fn unknown_length(entry: &Entry<'_>, clause: &str, figure: &Figure) -> Defect {
    let found = format!(
        "A step of `{}` says \"{}\", and {} is no distance, tolerance or field of the row.",
        entry.head.id,
        clause.trim(),
        &clause[figure.start..figure.end]
    );
    Defect::of_row(
        CLASS.slug,
        entry,
        found,
        "Expected a step that says where to cut to repeat a number of its own row.",
        HINT,
    )
}

/// Every length of the row, and every distance to a cut that follows from its links.
fn lengths(entry: &Entry<'_>) -> Vec<Length> {
    let mut known: Vec<Length> = entry.measures().into_iter().map(|m| m.value).collect();
    for link in entry.all_links() {
        if let Some((minus, plus)) = link.tolerance {
            let bounds = [link.distance - minus, link.distance + plus];
            known.extend([minus, plus, minus + plus]);
            known.extend(bounds);
        }
    }
    let ties = ties(entry);
    for from in planes(&ties) {
        if let Some(solved) = Solved::from(from, &ties) {
            // Only a crew's cuts and marks count: the distance between two planes of one part is nobody's cut.
            let is_set = |to: &&Plane| [from, **to].map(Plane::holder).contains(&Holder::Crew);
            let apart = solved.planes().iter().filter(is_set).filter_map(|to| {
                let apart = solved.nominal(from, *to)?;
                Some(apart.floor().abs())
            });
            known.extend(apart.collect::<Vec<_>>());
        }
    }
    known
}

/// A length in the words for the place of a link that differs from the link's length.
fn beside_link(entry: &Entry<'_>, link: &LinkRow) -> Option<Defect> {
    let Whose::Row {
        place: Some(place), ..
    } = &link.source
    else {
        return None;
    };
    let figures = figures(place);
    let duals = duals(place, &figures);
    if let Some((first, second)) = duals.iter().find(|(a, b)| !agree(a, b)) {
        let what = "place of a link";
        return Some(two_units(entry, what, place, first, second).at(&link.place));
    }
    let mut own = vec![link.distance];
    if let Some((minus, plus)) = link.tolerance {
        own.extend([minus, plus, link.distance - minus, link.distance + plus]);
    }
    let is_own = |f: &Figure| own.iter().any(|k| is_said(f, *k));
    let is_other = |f: &&Figure| {
        let dual = duals.iter().find(|(a, b)| *a == *f || *b == *f);
        !dual.map_or(is_own(f), |(a, b)| is_own(a) || is_own(b))
    };
    let figure = figures.iter().find(is_other)?;
    let found = format!(
        "The link of `{}` from {} to {} states {}, and its `place` says \"{}\".",
        entry.head.id,
        link.from.name(),
        link.to.name(),
        shown(link.distance),
        &place[figure.start..figure.end]
    );
    let expected = "Expected a length beside a link to be the link's own.";
    Some(Defect::of_row(CLASS.slug, entry, found, expected, HINT).at(&link.place))
}

fn presses(entry: &Entry<'_>) -> Option<Defect> {
    let Kind::Connector(row, end) = entry.kind else {
        return None;
    };
    // A text of the row may mean either end, or both together.
    let stated: Vec<i64> = row.ends.iter().filter_map(|end| end.presses).collect();
    end.presses?;
    let of_whole: i64 = match stated.as_slice() {
        [one] if row.two_ended => 2 * one,
        all => all.iter().sum(),
    };
    for (what, text) in texts(entry) {
        for clause in clauses(text) {
            let words = words(clause);
            let of_both = words.iter().any(|w| OF_BOTH_ENDS.contains(&w.as_str()));
            for pair in words.windows(2) {
                let said = match pair[1].as_str() {
                    "presses" => count(&pair[0]),
                    "press" => count(&pair[0]).filter(|n| *n == 1),
                    _ => None,
                };
                let is_stated = |n: &i64| stated.contains(n) || (of_both && *n == of_whole);
                let Some(said) = said.filter(|n| !is_stated(n)) else {
                    continue;
                };
                let found = format!(
                    "The {what} of `{}` says {said} presses, and its `presses` is {}.",
                    row.head.id,
                    listed(&stated.iter().map(i64::to_string).collect::<Vec<_>>())
                );
                let expected = "Expected one number of presses for an end.";
                return Some(Defect::of_row(CLASS.slug, entry, found, expected, HINT));
            }
        }
    }
    None
}

fn count(word: &str) -> Option<i64> {
    let named = NUMBERS.iter().position(|n| *n == word);
    match named {
        Some(index) => i64::try_from(index + 1).ok(),
        None => word.parse().ok().filter(|n| (1..=99).contains(n)),
    }
}

fn class_in_name(entry: &Entry<'_>) -> Option<Defect> {
    let system_kv = entry.system_greatest_kv()?;
    let name = &entry.head.name;
    let class_kv = name.match_indices("kV").find_map(|(at, unit)| {
        let after = name[at + unit.len()..].trim_start_matches([' ', '-']);
        let before = name[..at].trim_end_matches([' ', '-', '\u{a0}']);
        let start = before
            .char_indices()
            .rev()
            .take_while(|(_, c)| c.is_ascii_digit() || *c == '.')
            .last()?
            .0;
        let kv: f64 = before[start..].parse().ok()?;
        (after.to_lowercase().starts_with("class") && kv > system_kv).then_some(kv)
    })?;
    let found = format!(
        "The name of `{}` says {class_kv} kV class, and its `system_greatest` is {system_kv} kV.",
        entry.head.id
    );
    let expected = "Expected a class not above the highest system voltage.";
    Some(Defect::of_row(CLASS.slug, entry, found, expected, HINT))
}
