//! Does the core use only listed third-party crates, and does each member take them from the workspace?
//!
//! `xtask/pure-dependencies.txt` holds one line for each: `<crate> <dependency> — <reason>`.
//! Development dependencies are free, because they do not ship.

use super::{Complaint, Report, manifest};
use crate::tree::Tree;

const LIST: &str = "xtask/pure-dependencies.txt";
const PURE: &[&str] = &["units", "numerics", "joint", "wording", "drawing"];

struct Entry<'t> {
    member: &'t str,
    dependency: &'t str,
    reason: &'t str,
    line: usize,
}

/// Compares the manifests of the core with the list.
pub fn judge(tree: &Tree) -> Report {
    let entries = entries(tree.text(LIST).unwrap_or_default());
    let members = manifest::members(tree);
    let mut complaints = Vec::new();
    for member in &members {
        for used in &member.dependencies {
            if !used.is_from_workspace {
                let found = format!(
                    "`{}` is not taken from the workspace, so it could be built twice",
                    used.name
                );
                let cure = format!(
                    "give it one line in [workspace.dependencies] of the root Cargo.toml and write `{}.workspace = true` here",
                    used.name
                );
                complaints.push(Complaint::at(&member.path, used.line, found, cure));
            }
            let is_ours = members.iter().any(|other| other.package == used.name);
            let is_listed = entries
                .iter()
                .any(|e| e.member == member.folder_name && e.dependency == used.name);
            if PURE.contains(&member.folder_name.as_str()) && !is_ours && !is_listed {
                let found = format!(
                    "`{}` is pure and uses `{}`, which is not on the list",
                    member.folder_name, used.name
                );
                let cure = format!(
                    "do without it, or add `{} {} — <reason>` to {LIST}",
                    member.folder_name, used.name
                );
                complaints.push(Complaint::at(&member.path, used.line, found, cure));
            }
        }
    }
    for entry in &entries {
        if entry.reason.is_empty() {
            let found = format!("`{} {}` gives no reason", entry.member, entry.dependency);
            complaints.push(Complaint::at(
                LIST,
                entry.line,
                found,
                "write ` — ` and the reason after it",
            ));
        }
        let is_used = members.iter().any(|member| {
            member.folder_name == entry.member
                && member
                    .dependencies
                    .iter()
                    .any(|used| used.name == entry.dependency)
        });
        if !is_used {
            let found = format!(
                "`{} {}` is allowed and not used",
                entry.member, entry.dependency
            );
            complaints.push(Complaint::at(
                LIST,
                entry.line,
                found,
                "remove the line; the list holds what is needed today",
            ));
        }
    }
    complaints.into()
}

fn entries(text: &str) -> Vec<Entry<'_>> {
    text.lines()
        .enumerate()
        .filter(|(_, line)| !line.trim().is_empty() && !line.starts_with('#'))
        .map(|(index, line)| {
            let (names, reason) = line.split_once('—').unwrap_or((line, ""));
            let (member, dependency) = names.trim().split_once(' ').unwrap_or((names.trim(), ""));
            Entry {
                member,
                dependency: dependency.trim(),
                reason: reason.trim(),
                line: index + 1,
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::check;
    use super::*;

    const MANIFEST: (&str, &str) = (
        "crates/units/Cargo.toml",
        "[package]\nname = \"jointwright-units\"\n[dependencies]\nserde.workspace = true\n",
    );

    #[test]
    fn a_listed_dependency_with_its_reason_is_right() {
        check(
            judge,
            &[
                MANIFEST,
                (
                    LIST,
                    "# what may be used\nunits serde — lengths stand in documents\n",
                ),
            ],
            &[],
        );
    }

    #[test]
    fn an_unlisted_dependency_of_the_core_is_named() {
        check(
            judge,
            &[MANIFEST],
            &["crates/units/Cargo.toml:4: `units` is pure and uses `serde`"],
        );
    }

    #[test]
    fn a_door_may_use_what_it_likes() {
        let text = "[package]\nname = \"jointwright\"\n[dependencies]\nclap.workspace = true\n";
        check(judge, &[("crates/cli/Cargo.toml", text)], &[]);
    }

    #[test]
    fn a_line_without_reason_or_use_is_named() {
        let list = "units serde\nunits rand — chance\n";
        check(
            judge,
            &[MANIFEST, (LIST, list)],
            &[
                "`units serde` gives no reason",
                "`units rand` is allowed and not used",
            ],
        );
    }

    #[test]
    fn a_version_of_its_own_is_named() {
        let text = "[package]\nname = \"jointwright\"\n[dependencies]\nclap = \"4\"\n";
        check(
            judge,
            &[("crates/cli/Cargo.toml", text)],
            &["`clap` is not taken from the workspace"],
        );
    }
}
