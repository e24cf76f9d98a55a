//! Does the map in ARCHITECTURE.md agree with this tree?
//!
//! The map is a fenced block that opens with three backticks and `map`; each of its lines reads `path — what it holds`.
//! The rule holds both ways: each path of the map stands in the tree, and each folder that a newcomer meets stands on the map.
//! The lines `crates/joint/src/<module>` also give the working order that the rule `arrows` holds.

use std::collections::BTreeSet;

use super::{Complaint, Report};
use crate::tree::Tree;

/// The document that holds the map.
pub const DOCUMENT: &str = "ARCHITECTURE.md";
const JOINT: &str = "crates/joint/src/";

/// One line of the map.
#[derive(Debug)]
pub struct MapLine {
    /// Path from the root, without a slash at its end.
    pub path: String,
    /// Line of the document.
    pub line: usize,
    /// Text after the dash.
    pub about: String,
}

/// Lines of the map; empty if there is none.
pub fn lines(tree: &Tree) -> Vec<MapLine> {
    let text = tree.text(DOCUMENT).unwrap_or_default();
    let mut is_inside = false;
    let mut found = Vec::new();
    for (index, line) in text.lines().enumerate() {
        let line = line.trim();
        if let Some(fence) = line.strip_prefix("```") {
            is_inside = !is_inside && fence.trim() == "map";
        } else if is_inside && !line.is_empty() {
            let (path, about) = line.split_once('—').unwrap_or((line, ""));
            let path = path.trim().trim_end_matches('/').to_owned();
            found.push(MapLine {
                path,
                line: index + 1,
                about: about.trim().to_owned(),
            });
        }
    }
    found
}

/// Modules of joint in the order of the map.
pub fn joint_modules(tree: &Tree) -> Vec<String> {
    lines(tree)
        .into_iter()
        .filter_map(|line| {
            line.path
                .strip_prefix(JOINT)
                .map(|name| name.trim_end_matches(".rs").to_owned())
        })
        .filter(|name| !name.contains('/'))
        .collect()
}

/// Compares map and tree.
pub fn judge(tree: &Tree) -> Report {
    let map = lines(tree);
    if map.is_empty() {
        let cure = "write a block that opens with three backticks and the word map, one line `path — what it holds` for each folder";
        return vec![Complaint::of(DOCUMENT, "it holds no map of the tree", cure)].into();
    }
    let mut complaints = Vec::new();
    let mut seen = BTreeSet::new();
    for entry in &map {
        if !tree.holds(&entry.path) {
            let found = format!("`{}` is on the map and not in the tree", entry.path);
            complaints.push(Complaint::at(
                DOCUMENT,
                entry.line,
                found,
                "remove the line or correct its path",
            ));
        }
        if entry.about.is_empty() {
            let found = format!("`{}` does not say what it holds", entry.path);
            complaints.push(Complaint::at(
                DOCUMENT,
                entry.line,
                found,
                "write ` — ` and what it holds after the path",
            ));
        }
        if !seen.insert(entry.path.as_str()) {
            let found = format!("`{}` is on the map twice", entry.path);
            complaints.push(Complaint::at(
                DOCUMENT,
                entry.line,
                found,
                "keep one of the two lines",
            ));
        }
    }
    for path in places(tree) {
        if !seen.contains(path.as_str()) {
            let cure = format!(
                "add the line `{path} — what it holds` to the map in {DOCUMENT}, in working order"
            );
            complaints.push(Complaint::of(
                &path,
                "it is in the tree and not on the map",
                cure,
            ));
        }
    }
    complaints.into()
}

/// Every path that the map must show: top folders, crates, their rooms, and the rooms of joint that are one file.
fn places(tree: &Tree) -> BTreeSet<String> {
    let is_shown = |path: &&str| {
        let parts: Vec<&str> = path.split('/').collect();
        match parts.as_slice() {
            [top] => !top.starts_with('.'),
            ["crates", _] => true,
            ["crates", _, "src", _] => true,
            _ => false,
        }
    };
    let folders = tree.folders().filter(is_shown).map(str::to_owned);
    let rooms = tree
        .files(JOINT, ".rs")
        .filter(|(path, _)| {
            let name = &path[JOINT.len()..];
            !name.contains('/') && name != "lib.rs" && !crate::rust_text::is_test_file(path)
        })
        .map(|(path, _)| path.to_owned());
    folders.chain(rooms).collect()
}

#[cfg(test)]
mod tests {
    use super::super::check;
    use super::*;

    const MAP: &str = "# House\n\n```map\ncrates — rooms\ncrates/joint/ — the trade\ncrates/joint/src/plane.rs — places\ncrates/joint/src/fit — does it go\n```\n";
    const PLANE: (&str, &str) = ("crates/joint/src/plane.rs", "");
    const FIT: (&str, &str) = ("crates/joint/src/fit/mod.rs", "");

    #[test]
    fn a_map_that_shows_the_tree_is_right() {
        check(
            judge,
            &[(DOCUMENT, MAP), PLANE, FIT, ("crates/joint/src/lib.rs", "")],
            &[],
        );
    }

    #[test]
    fn a_place_that_is_gone_is_named() {
        check(
            judge,
            &[(DOCUMENT, MAP), FIT],
            &["ARCHITECTURE.md:6: `crates/joint/src/plane.rs` is on the map and not"],
        );
    }

    #[test]
    fn a_place_that_is_new_is_named() {
        let files = [
            (DOCUMENT, MAP),
            PLANE,
            FIT,
            ("crates/joint/src/judge/mod.rs", ""),
            ("benches/a.rs", ""),
        ];
        check(
            judge,
            &files,
            &[
                "benches: it is in the tree",
                "crates/joint/src/judge: it is in the tree",
            ],
        );
    }

    #[test]
    fn a_line_without_its_sentence_or_given_twice_is_named() {
        let map = MAP.replace("fit — does it go", "fit\ncrates/joint/src/fit — again");
        check(
            judge,
            &[(DOCUMENT, &map), PLANE, FIT],
            &["does not say what it holds", "is on the map twice"],
        );
    }

    #[test]
    fn a_document_without_a_map_is_named() {
        check(judge, &[(DOCUMENT, "# House\n")], &["holds no map"]);
    }

    #[test]
    fn the_order_of_the_rooms_is_that_of_the_lines() {
        assert_eq!(
            joint_modules(&Tree::of(&[(DOCUMENT, MAP)])),
            ["plane", "fit"]
        );
    }
}
