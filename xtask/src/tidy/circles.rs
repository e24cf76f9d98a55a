//! Do the modules of one folder use each other in one direction?
//!
//! Two modules that use each other are one idea in two files, or hide a third: nobody can read, change or delete one of them alone.
//! A module is a file, or a folder with all that is in it.
//! It uses another by `use super::x`, `super::x::…` or `crate::room::x`, or by a name that the folder's own file takes from `x`.
//! Code for tests only is not judged, because it does not ship.
//!
//! `xtask/circles.txt` lists today's circles: `<folder> <module> <module> …`.

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use super::{Complaint, Report};
use crate::rust_text::{RustText, is_test_file, tokens};
use crate::tree::Tree;
use crate::uses::{module_path, taken_from_children, uses};

const LIST: &str = "xtask/circles.txt";
const CURE: &str = "move what both need into a file of its own, or beside the module that uses it";

/// Place of a use: file and line.
type Place = (String, usize);
/// Uses between the modules of one folder: for each module, the modules that it uses, each with the first place.
type Arrows = BTreeMap<String, BTreeMap<String, Place>>;

/// Finds the circles of every folder and compares them with the list.
pub fn judge(tree: &Tree) -> Report {
    let mut complaints = Vec::new();
    let listed = listed(tree.text(LIST).unwrap_or_default(), &mut complaints);
    let mut standing: BTreeSet<(String, Vec<String>)> = BTreeSet::new();
    for (folder, arrows) in arrows(tree) {
        for circle in circles(&arrows) {
            let known = listed
                .keys()
                .any(|(other, names)| *other == folder && circle.iter().all(|m| names.contains(m)));
            if !known {
                complaints.push(complaint(&folder, &arrows, &circle));
            }
            standing.insert((folder.clone(), circle));
        }
    }
    for (entry, line) in &listed {
        if standing.contains(entry) {
            continue;
        }
        let (folder, names) = entry;
        let left = standing
            .iter()
            .filter(|(other, circle)| other == folder && circle.iter().all(|m| names.contains(m)));
        let left: Vec<String> = left.map(|(_, circle)| circle.join(" ")).collect();
        let cure = if left.is_empty() {
            "remove the line".to_owned()
        } else {
            format!(
                "write what is left: {}; the list only shrinks",
                left.join("; ")
            )
        };
        let found = format!(
            "the circle `{folder} {}` does not stand any more",
            names.join(" ")
        );
        complaints.push(Complaint::at(LIST, *line, found, cure));
    }
    complaints.into()
}

/// Circles of the list, each with its line.
fn listed(text: &str, complaints: &mut Vec<Complaint>) -> BTreeMap<(String, Vec<String>), usize> {
    let mut listed = BTreeMap::new();
    for (index, line) in text.lines().enumerate() {
        if line.trim().is_empty() || line.starts_with('#') {
            continue;
        }
        let mut words = line.split_whitespace().map(str::to_owned);
        let folder = words.next().unwrap_or_default();
        let mut names: Vec<String> = words.collect();
        names.sort();
        if names.len() < 2 {
            let found = format!("`{line}` names fewer than two modules");
            let cure = "write `<folder> <module> <module> …`";
            complaints.push(Complaint::at(LIST, index + 1, found, cure));
            continue;
        }
        listed.insert((folder, names), index + 1);
    }
    listed
}

/// Complaint about one circle: the shortest way around from its first module, and all its modules where that way leaves some out.
fn complaint(folder: &str, arrows: &Arrows, circle: &[String]) -> Complaint {
    let way = way_around(arrows, &circle[0]);
    let (path, line) = &arrows[&way[0]][&way[1]];
    let mut found = format!(
        "modules of {folder} use each other in a circle: {}",
        way.join(" → ")
    );
    if circle.len() >= way.len() {
        found += &format!("; all of it: {}", circle.join(" "));
    }
    Complaint::at(path, *line, found, CURE)
}

/// Uses between modules, by folder.
fn arrows(tree: &Tree) -> BTreeMap<String, Arrows> {
    let mut found: BTreeMap<String, Arrows> = BTreeMap::new();
    for (path, source) in tree
        .files("", ".rs")
        .filter(|(path, _)| !is_test_file(path))
    {
        let Some((root, file)) = path.split_once("src/") else {
            continue;
        };
        let root = format!("{root}src");
        let own = own_path(file);
        let code = RustText::split(source).code_without_tests();
        for used in uses(&tokens(&code), &own) {
            let n_common = own
                .iter()
                .zip(&used.parts)
                .take_while(|(own, used)| own == used)
                .count();
            let Some(user) = own.get(n_common) else {
                continue;
            };
            let folder = folder_of(&root, &own[..n_common]);
            let Some(target) = used
                .parts
                .get(n_common)
                .and_then(|name| child(tree, &folder, &own[..n_common], name))
                .filter(|target| target != user)
            else {
                continue;
            };
            found
                .entry(folder)
                .or_default()
                .entry(user.clone())
                .or_default()
                .entry(target)
                .or_insert_with(|| (path.to_owned(), used.line));
        }
    }
    found
}

/// Module path of a file; empty for the root of a crate.
fn own_path(file: &str) -> Vec<String> {
    if matches!(file, "lib.rs" | "main.rs") {
        return Vec::new();
    }
    module_path(file)
}

fn folder_of(root: &str, module: &[String]) -> String {
    let names = std::iter::once(root).chain(module.iter().map(String::as_str));
    names.collect::<Vec<_>>().join("/")
}

/// Child module of a folder behind a name: the child itself, or the child from which the folder's own file takes the name.
fn child(tree: &Tree, folder: &str, module: &[String], name: &str) -> Option<String> {
    let is_child = |name: &str| {
        tree.text(&format!("{folder}/{name}.rs")).is_some()
            || tree.text(&format!("{folder}/{name}/mod.rs")).is_some()
    };
    if is_child(name) {
        return Some(name.to_owned());
    }
    let own_files = [
        format!("{folder}/mod.rs"),
        format!("{folder}.rs"),
        format!("{folder}/lib.rs"),
        format!("{folder}/main.rs"),
    ];
    let source = own_files.iter().find_map(|path| tree.text(path))?;
    let code = RustText::split(source).code_without_tests();
    taken_from_children(&tokens(&code), module, &is_child)
        .into_iter()
        .find(|used| {
            used.parts.len() > module.len() + 1 && used.parts.last().is_some_and(|n| n == name)
        })
        .map(|used| used.parts[module.len()].clone())
}

/// Sets of modules of which each reaches every other, in order.
fn circles(arrows: &Arrows) -> Vec<Vec<String>> {
    let reached: BTreeMap<&String, BTreeSet<&String>> = arrows
        .keys()
        .map(|from| (from, reached(arrows, from)))
        .collect();
    let mut found: Vec<Vec<String>> = Vec::new();
    for (from, targets) in &reached {
        if !targets.contains(from) || found.iter().any(|circle| circle.contains(from)) {
            continue;
        }
        let back = |to: &&&String| reached.get(*to).is_some_and(|far| far.contains(from));
        found.push(
            targets
                .iter()
                .filter(back)
                .map(|to| (*to).clone())
                .collect(),
        );
    }
    found
}

/// Modules that a module uses, directly or through others.
fn reached<'a>(arrows: &'a Arrows, from: &String) -> BTreeSet<&'a String> {
    let mut seen: BTreeSet<&String> = BTreeSet::new();
    let mut open: Vec<&String> = arrows
        .get(from)
        .into_iter()
        .flat_map(BTreeMap::keys)
        .collect();
    while let Some(next) = open.pop() {
        if seen.insert(next) {
            open.extend(arrows.get(next).into_iter().flat_map(BTreeMap::keys));
        }
    }
    seen
}

/// Shortest way from a module back to itself; the module stands at both ends.
fn way_around(arrows: &Arrows, from: &String) -> Vec<String> {
    let mut open: VecDeque<Vec<String>> = VecDeque::from([vec![from.clone()]]);
    let mut seen: BTreeSet<String> = BTreeSet::new();
    while let Some(way) = open.pop_front() {
        for next in way
            .last()
            .and_then(|last| arrows.get(last))
            .into_iter()
            .flat_map(BTreeMap::keys)
        {
            let mut longer = way.clone();
            longer.push(next.clone());
            if next == from {
                return longer;
            }
            if seen.insert(next.clone()) {
                open.push_back(longer);
            }
        }
    }
    vec![from.clone(), from.clone()]
}

#[cfg(test)]
mod tests {
    use super::super::check;
    use super::*;

    #[track_caller]
    fn check_room(files: &[(&str, &str)], list: &str, expected: &[&str]) {
        let paths: Vec<String> = files
            .iter()
            .map(|(name, _)| format!("crates/a/src/room/{name}"))
            .collect();
        let texts = files.iter().map(|(_, text)| *text);
        let mut tree: Vec<(&str, &str)> = paths.iter().map(String::as_str).zip(texts).collect();
        tree.push((LIST, list));
        check(judge, &tree, expected);
    }

    const TWO: &str = "crates/a/src/room use each other in a circle: one → two → one";

    #[test]
    fn one_direction_is_right() {
        let files = [
            (
                "mod.rs",
                "mod one;\nmod two;\npub use one::{One, f};\npub use two::Two;",
            ),
            (
                "one.rs",
                "use super::two::Two;\nuse super::Own;\nuse crate::other::X;",
            ),
            (
                "two.rs",
                "use super::room_word;\n// super::one::f\nconst A: &str = \"super::one\";",
            ),
        ];
        check_room(&files, "", &[]);
    }

    #[test]
    fn a_circle_is_named_however_its_uses_are_written() {
        for back in [
            "use super::one::One;",
            "use super::{Own, one::{self, One}};",
            "fn f() { super::one::g() }",
            "fn f() { crate::room::one::g() }",
            "use super::One;",
            "mod inner { use super::super::one::One; }",
        ] {
            let files = [
                ("mod.rs", "mod one;\nmod two;\npub use one::{One, f};"),
                ("one.rs", "\nuse super::two::Two;"),
                ("two.rs", back),
            ];
            check_room(&files, "", &[&format!("one.rs:2: modules of {TWO}")]);
        }
    }

    #[test]
    fn a_folder_is_one_module_with_all_that_is_in_it() {
        let files = [
            ("mod.rs", "mod one;\nmod two;"),
            ("one.rs", "use super::two::deep::X;"),
            ("two/mod.rs", "mod deep;"),
            ("two/deep.rs", "use super::super::one::One;"),
        ];
        check_room(&files, "", &[TWO]);
        let inside = [
            ("mod.rs", "mod two;"),
            ("two/mod.rs", "mod deep;\nmod high;"),
            ("two/deep.rs", "use super::high::X;"),
            ("two/high.rs", "use crate::room::two::deep::Y;"),
        ];
        check_room(
            &inside,
            "",
            &["room/two use each other in a circle: deep → high → deep"],
        );
    }

    #[test]
    fn the_root_of_a_crate_is_a_folder_too() {
        let root = |first: &str| {
            let files = [
                (
                    "crates/a/src/lib.rs",
                    "mod one;\nmod two;\npub use self::one::One;",
                ),
                ("crates/a/src/one.rs", first),
                ("crates/a/src/two.rs", "use crate::One;"),
            ];
            files.map(|(path, text)| (path.to_owned(), text.to_owned()))
        };
        let check_root = |first: &str, expected: &[&str]| {
            let files = root(first);
            let files: Vec<(&str, &str)> = files
                .iter()
                .map(|(p, t)| (p.as_str(), t.as_str()))
                .collect();
            check(judge, &files, expected);
        };
        check_root("use crate::three::X;", &[]);
        check_root(
            "use crate::two::Two;",
            &["crates/a/src use each other in a circle: one → two → one"],
        );
    }

    #[test]
    fn circles_that_share_a_module_are_one_and_named_whole() {
        let files = [
            ("one.rs", "use super::two::Two;"),
            ("two.rs", "use super::{one::One, three::Three};"),
            ("three.rs", "use super::two::Two;"),
            ("four.rs", "use super::one::One;"),
        ];
        let whole = "one → two → one; all of it: one three two";
        check_room(&files, "", &[whole]);
        check_room(
            &files,
            "crates/a/src/room one two\n",
            &[whole, "does not stand"],
        );
        check_room(&files, "crates/a/src/room one three two\n", &[]);
    }

    #[test]
    fn code_for_tests_only_may_look_back() {
        let files = [
            ("one.rs", "use super::two::Two;"),
            (
                "two.rs",
                "#[cfg(test)]\nmod tests { use super::super::one::One; }",
            ),
            ("two_tests.rs", "use super::one::One;"),
        ];
        check_room(&files, "", &[]);
    }

    #[test]
    fn the_list_allows_what_stands_and_only_shrinks() {
        let two = [
            ("one.rs", "use super::two::Two;"),
            ("two.rs", "use super::one::One;"),
            ("three.rs", "use super::one::One;"),
        ];
        check_room(&two, "# today\ncrates/a/src/room two one\n", &[]);
        check_room(
            &two,
            "crates/a/src/room one two three\n",
            &[
                "circles.txt:1: the circle `crates/a/src/room one three two` does not stand any more cure: write what is left: one two",
            ],
        );
        check_room(
            &two[2..],
            "crates/a/src/room one two\n",
            &["does not stand any more cure: remove the line"],
        );
        check_room(
            &two[2..],
            "crates/a/src/room one\n",
            &["names fewer than two modules"],
        );
        let three = [
            ("one.rs", "use super::two::Two;"),
            ("two.rs", "use super::three::Three;"),
            ("three.rs", "use super::one::One;"),
        ];
        check_room(
            &three,
            "crates/a/src/room one two\n",
            &["one → two → three → one", "does not stand any more"],
        );
    }
}
