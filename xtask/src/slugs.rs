//! Slugs: the names of the checks, which never change.
//!
//! Invariant: a slug is a file stem in `crates/joint/src/checks/` and occurs once.

use std::collections::BTreeMap;

use crate::error::ChoreError;
use crate::tree::Tree;

/// Folder of the checks.
pub const FOLDER: &str = "crates/joint/src/checks";

/// Every slug with the path of its file.
///
/// # Errors
/// If a slug occurs twice (letters compared without regard to case) or is not of the agreed form.
pub fn all(tree: &Tree) -> Result<BTreeMap<String, String>, ChoreError> {
    let mut slugs: BTreeMap<String, String> = BTreeMap::new();
    let mut stems = Vec::new();
    for name in tree.names_in(FOLDER) {
        let stem = name.strip_suffix(".rs").unwrap_or(name);
        let is_check = name.ends_with(".rs") || tree.holds(&format!("{FOLDER}/{name}/mod.rs"));
        if !is_check || stem == "mod" || crate::rust_text::is_test_file(name) {
            continue;
        }
        let slug = stem.to_lowercase();
        let path = format!("{FOLDER}/{name}");
        if let Some(first) = slugs.get(&slug) {
            return Err(ChoreError::SlugTwice {
                slug,
                first: first.clone(),
                second: path,
            });
        }
        slugs.insert(slug, path);
        stems.push(stem);
    }
    stems.into_iter().try_for_each(require_form)?;
    Ok(slugs)
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

    #[track_caller]
    fn check(names: &[&str], expected: Result<&[&str], &str>) {
        let files: Vec<(String, &str)> = names
            .iter()
            .map(|name| (format!("{FOLDER}/{name}"), ""))
            .collect();
        let files: Vec<(&str, &str)> = files
            .iter()
            .map(|(path, text)| (path.as_str(), *text))
            .collect();
        match (all(&Tree::of(&files)), expected) {
            (Ok(found), Ok(slugs)) => assert_eq!(found.keys().collect::<Vec<_>>(), slugs),
            (Err(error), Err(words)) => assert!(error.to_string().contains(words), "{error}"),
            (found, expected) => panic!("found {found:?}, expected {expected:?}"),
        }
    }

    #[test]
    fn slugs_are_the_file_stems_in_order() {
        check(
            &[
                "mod.rs",
                "park_room.rs",
                "bore_range.rs",
                "seal_overlap/mod.rs",
            ],
            Ok(&["bore_range", "park_room", "seal_overlap"]),
        );
    }

    #[test]
    fn one_slug_in_two_files_is_refused() {
        check(&["park_room.rs", "park_room/mod.rs"], Err("two files"));
        check(&["park_room.rs", "Park_Room.rs"], Err("two files"));
    }

    #[test]
    fn a_slug_needs_a_place_and_a_quantity() {
        check(&["range.rs"], Err("<where>_<quantity>"));
        check(&["Bore_range.rs"], Err("<where>_<quantity>"));
        check(&["bore__range.rs"], Err("<where>_<quantity>"));
    }
}
