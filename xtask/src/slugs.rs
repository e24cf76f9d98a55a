//! Slugs: the names of the checks, which never change.
//!
//! Invariant: a slug is a row of the table of checks and stands once; a check that is no row of a family has a file of its name.

use std::collections::BTreeMap;

use crate::error::ChoreError;
use crate::tree::Tree;

/// Folder of the checks.
pub const FOLDER: &str = "crates/joint/src/checks";

/// The table of checks.
pub const TABLE: &str = "crates/joint/src/limit/check_table.rs";

/// Every slug with the path of its file: its own, or the table's where it is a row of a family.
///
/// # Errors
/// If a slug occurs twice or is not of the agreed form.
pub fn all(tree: &Tree) -> Result<BTreeMap<String, String>, ChoreError> {
    let mut slugs: BTreeMap<String, String> = BTreeMap::new();
    let text = tree.text(TABLE).unwrap_or_default();
    for slug in text.lines().filter_map(slug_of_row) {
        require_form(slug)?;
        let own = format!("{FOLDER}/{slug}.rs");
        let path = if tree.holds(&own) { &own } else { TABLE };
        if let Some(first) = slugs.insert(slug.to_owned(), path.to_owned()) {
            return Err(ChoreError::SlugTwice {
                slug: slug.to_owned(),
                first,
                second: path.to_owned(),
            });
        }
    }
    Ok(slugs)
}

/// The slug of a row of the table; `None` if the line is no row: `<slug>, Joint | Leg | End, …;`.
pub fn slug_of_row(line: &str) -> Option<&str> {
    let (slug, rest) = line.trim().split_once(", ")?;
    let (asked, _) = rest.split_once(", ")?;
    let is_row = ["Joint", "Leg", "End"].contains(&asked) && line.ends_with(';');
    is_row.then_some(slug)
}

/// Refuses a slug that is not `<where>_<quantity>`.
///
/// # Errors
/// If it is not.
pub fn require_form(slug: &str) -> Result<(), ChoreError> {
    let words: Vec<&str> = slug.split('_').collect();
    let is_word = |word: &&str| {
        !word.is_empty()
            && word
                .bytes()
                .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit())
    };
    let begins_with_letter = slug.starts_with(|letter: char| letter.is_ascii_lowercase());
    if words.len() >= 2 && begins_with_letter && words.iter().all(is_word) {
        Ok(())
    } else {
        Err(ChoreError::SlugForm {
            slug: slug.to_owned(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ROWS: &str = "macro_rules! check_list {\n    park_room, Joint, Nothing, Nothing, Along;\n    bore_range, End, Field, Nothing, Across, ranges(Bore);\n}\n";

    #[track_caller]
    fn check(rows: &str, expected: Result<&[(&str, &str)], &str>) {
        let tree = Tree::of(&[(TABLE, rows), ("crates/joint/src/checks/park_room.rs", "")]);
        match (all(&tree), expected) {
            (Ok(found), Ok(slugs)) => {
                let found: Vec<(&str, &str)> = found
                    .iter()
                    .map(|(slug, path)| (slug.as_str(), path.as_str()))
                    .collect();
                assert_eq!(found, slugs);
            }
            (Err(error), Err(words)) => assert!(error.to_string().contains(words), "{error}"),
            (found, expected) => panic!("found {found:?}, expected {expected:?}"),
        }
    }

    #[test]
    fn slugs_are_the_rows_of_the_table_in_order_of_name() {
        let own = "crates/joint/src/checks/park_room.rs";
        check(ROWS, Ok(&[("bore_range", TABLE), ("park_room", own)]));
    }

    #[test]
    fn one_slug_in_two_rows_is_refused() {
        let twice = format!("{ROWS}{ROWS}");
        check(&twice, Err("two rows"));
    }

    #[test]
    fn a_slug_needs_a_place_and_a_quantity() {
        for slug in ["range", "Bore_range", "bore__range"] {
            let row = format!("    {slug}, Leg, Nothing, Nothing, Along;\n");
            check(&row, Err("<where>_<quantity>"));
        }
    }
}
