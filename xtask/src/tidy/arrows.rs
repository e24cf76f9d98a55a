//! Does each crate, and each room of joint, use only earlier ones?
//!
//! The table below lists the allowed arrows between crates.
//! Inside joint, a room uses earlier rooms of the map in ARCHITECTURE.md, never later ones; one check never uses another.
//! Code for tests only is not judged, because it does not ship.

use super::manifest::{self, Member};
use super::{Complaint, Report, map};
use crate::rust_text::{RustText, is_test_file, tokens};
use crate::tree::Tree;
use crate::uses::{Use, module_path, uses};

/// Our crates that each crate may use, by folder name.
const ARROWS: &[(&str, &[&str])] = &[
    ("units", &[]),
    ("numerics", &["units"]),
    ("joint", &["units", "numerics"]),
    ("wording", &["units", "joint"]),
    ("drawing", &["units", "numerics", "joint", "wording"]),
    ("paper", &["joint", "wording", "drawing"]),
    (
        "cli",
        &["units", "numerics", "joint", "wording", "drawing", "paper"],
    ),
    ("hatch", &["units", "numerics", "joint", "wording"]),
    ("xtask", &[]),
];
const JOINT: &str = "crates/joint/src/";
const CHECKS: &str = "checks";

/// Judges the arrows between crates, then those inside joint.
pub fn judge(tree: &Tree) -> Report {
    let mut complaints = between_crates(&manifest::members(tree));
    let order = map::joint_modules(tree);
    for (path, source) in tree.files(JOINT, ".rs") {
        if path != "crates/joint/src/lib.rs" && !is_test_file(path) {
            complaints.extend(inside_joint(tree, &order, path, source));
        }
    }
    complaints.into()
}

fn between_crates(members: &[Member]) -> Vec<Complaint> {
    let mut complaints = Vec::new();
    for member in members {
        let Some((_, allowed)) = ARROWS.iter().find(|(name, _)| *name == member.folder_name) else {
            let found = format!(
                "crate `{}` stands in no row of the table of arrows",
                member.folder_name
            );
            let cure = "add its row to ARROWS in xtask/src/tidy/arrows.rs, saying which of our crates it may use";
            complaints.push(Complaint::of(&member.path, found, cure));
            continue;
        };
        for dependency in &member.dependencies {
            let Some(used) = members
                .iter()
                .find(|other| other.package == dependency.name)
            else {
                continue;
            };
            if !allowed.contains(&used.folder_name.as_str()) {
                let may = if allowed.is_empty() {
                    "none".to_owned()
                } else {
                    allowed.join(", ")
                };
                let found = format!(
                    "`{}` uses `{}`; of our crates it may use: {may}",
                    member.folder_name, used.folder_name
                );
                let cure = "move what is needed into an allowed crate, or pass it as an argument";
                complaints.push(Complaint::at(&member.path, dependency.line, found, cure));
            }
        }
    }
    complaints
}

fn inside_joint(tree: &Tree, order: &[String], path: &str, source: &str) -> Vec<Complaint> {
    let own = module_path(&path[JOINT.len()..]);
    let code = RustText::split(source).code_without_tests();
    let mut complaints: Vec<Complaint> = Vec::new();
    for used in uses(&tokens(&code), &own) {
        let complaint = judge_use(tree, order, path, &own, &used);
        // One line often names a room twice; one complaint is enough.
        if complaint.as_ref().is_some_and(|c| {
            complaints
                .iter()
                .all(|o| o.line != c.line || o.found != c.found)
        }) {
            complaints.extend(complaint);
        }
    }
    complaints
}

fn judge_use(
    tree: &Tree,
    order: &[String],
    path: &str,
    own: &[String],
    used: &Use,
) -> Option<Complaint> {
    let target = used.parts.first()?;
    let own_room = own.first()?;
    if target == own_room {
        return judge_check(tree, path, own, used);
    }
    let place = |room: &str| order.iter().position(|name| name == room);
    let Some(target_place) = place(target) else {
        if tree.holds(&format!("{JOINT}{target}")) || tree.holds(&format!("{JOINT}{target}.rs")) {
            // The rule `map` asks for the missing line; without a place there is no order to hold.
            return None;
        }
        let found = format!("`crate::{target}` does not say which room it comes from");
        return Some(Complaint::at(
            path,
            used.line,
            found,
            "write the room: `crate::<room>::…`",
        ));
    };
    // A room without a line on the map has no order either.
    let own_place = place(own_room)?;
    if target_place < own_place {
        return None;
    }
    let found = format!(
        "`{own_room}` uses `{target}`, which stands after it on the map in ARCHITECTURE.md"
    );
    let cure =
        "move what is needed to the earlier room, or pass it as an argument from a later one";
    Some(Complaint::at(path, used.line, found, cure))
}

/// Complaint if one check uses another: deleting a check's file must remove it everywhere. A file whose name is one word is no check.
fn judge_check(tree: &Tree, path: &str, own: &[String], used: &Use) -> Option<Complaint> {
    let (own_check, other) = (own.get(1)?, used.parts.get(1)?);
    let stands = |name: &str| {
        tree.holds(&format!("{JOINT}{CHECKS}/{name}.rs"))
            || tree.holds(&format!("{JOINT}{CHECKS}/{name}/mod.rs"))
    };
    if own[0] != CHECKS || own_check == other || !other.contains('_') || !stands(other) {
        return None;
    }
    let found = format!("check `{own_check}` uses check `{other}`");
    let cure = "put what both need into a file of its own in checks, or into an earlier room";
    Some(Complaint::at(path, used.line, found, cure))
}

#[cfg(test)]
mod tests {
    use super::super::check;
    use super::*;

    const MAP: (&str, &str) = (
        "ARCHITECTURE.md",
        "```map\ncrates/joint/src/form — a\ncrates/joint/src/cable — b\ncrates/joint/src/fit — c\ncrates/joint/src/checks — d\n```",
    );

    #[track_caller]
    fn check_code(path: &str, code: &str, expected: &[&str]) {
        let path = format!("{JOINT}{path}");
        let others = [
            ("crates/joint/src/form/walk.rs", ""),
            ("crates/joint/src/cable/mod.rs", ""),
            ("crates/joint/src/checks/park_room.rs", ""),
            ("crates/joint/src/checks/seal_overlap.rs", ""),
            ("crates/joint/src/checks/ranges.rs", ""),
        ];
        let mut files = vec![MAP, (path.as_str(), code)];
        files.extend(others.into_iter().filter(|(other, _)| *other != path));
        check(judge, &files, expected);
    }

    #[test]
    fn a_room_may_use_earlier_rooms_and_itself() {
        check_code(
            "fit/bore.rs",
            "use crate::{form::{walk, Item}, cable::Layer};\nuse super::Fit;\nuse crate::fit::X;",
            &[],
        );
        check_code("fit/mod.rs", "mod tests { use super::Fit; }", &[]);
        check_code(
            "fit/mod.rs",
            "// use crate::checks::X;\nconst A: &str = \"crate::checks\";",
            &[],
        );
    }

    #[test]
    fn a_room_may_not_use_later_rooms() {
        check_code(
            "form/walk.rs",
            "use crate::cable::Layer;",
            &["walk.rs:1: `form` uses `cable`, which stands after"],
        );
        check_code(
            "form/walk.rs",
            "use crate::{form::Item, cable::{self, Layer}};",
            &["`form` uses `cable`"],
        );
        check_code(
            "form/walk.rs",
            "fn f() { super::super::fit::g() }",
            &["`form` uses `fit`"],
        );
        check_code(
            "form/mod.rs",
            "\nuse super::fit::g;",
            &["mod.rs:2: `form` uses `fit`"],
        );
        check_code(
            "form/mod.rs",
            "mod inner { fn f() { super::super::fit::g() } }",
            &["`form` uses `fit`"],
        );
    }

    #[test]
    fn code_for_tests_only_may_look_ahead() {
        check_code(
            "form/mod.rs",
            "#[cfg(test)]\nmod tests { use crate::fit::Fit; }",
            &[],
        );
    }

    #[test]
    fn a_name_from_the_root_must_say_its_room() {
        check_code(
            "fit/mod.rs",
            "use crate::Layer;",
            &["`crate::Layer` does not say which room"],
        );
        check_code(
            "fit/mod.rs",
            "use super::*;",
            &["`crate::*` does not say which room"],
        );
    }

    #[test]
    fn one_check_may_not_use_another() {
        check_code(
            "checks/park_room.rs",
            "use super::seal_overlap::judge;",
            &["check `park_room` uses check `seal_overlap`"],
        );
        check_code(
            "checks/park_room.rs",
            "use crate::checks::{seal_overlap, Check};",
            &["uses check `seal_overlap`"],
        );
        check_code(
            "checks/park_room.rs",
            "use super::{Check, Ruling};\nuse super::ranges::Ranges;\nuse crate::fit::Fit;",
            &[],
        );
        check_code(
            "checks/mod.rs",
            "mod park_room;\nuse self::park_room::judge;\nuse crate::checks::seal_overlap;",
            &[],
        );
    }

    #[track_caller]
    fn check_crate(folder: &str, dependency: &str, expected: &[&str]) {
        let path = format!("crates/{folder}/Cargo.toml");
        let text = format!(
            "[package]\nname = \"jointwright-{folder}\"\n[dependencies]\n{dependency}.workspace = true\n"
        );
        let mut files = vec![(path.as_str(), text.as_str())];
        for (other, manifest) in [
            (
                "crates/units/Cargo.toml",
                "[package]\nname = \"jointwright-units\"\n",
            ),
            (
                "crates/numerics/Cargo.toml",
                "[package]\nname = \"jointwright-numerics\"\n",
            ),
            (
                "crates/joint/Cargo.toml",
                "[package]\nname = \"jointwright-joint\"\n",
            ),
        ] {
            if other != path {
                files.push((other, manifest));
            }
        }
        check(judge, &files, expected);
    }

    #[test]
    fn crates_use_only_what_the_table_allows() {
        check_crate("joint", "jointwright-numerics", &[]);
        check_crate("joint", "serde", &[]);
        check_crate("cli", "jointwright-numerics", &[]);
        check_crate("drawing", "jointwright-numerics", &[]);
        check_crate(
            "numerics",
            "jointwright-joint",
            &[
                "crates/numerics/Cargo.toml:4: `numerics` uses `joint`; of our crates it may use: units",
            ],
        );
        check_crate("units", "jointwright-numerics", &["may use: none"]);
        check_crate("attic", "serde", &["crate `attic` stands in no row"]);
    }
}
