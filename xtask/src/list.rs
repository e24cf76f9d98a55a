//! List: everything the repository has to offer a contributor, on one page.

use std::io::Write;

use crate::error::ChoreError;
use crate::tidy;
use crate::tree::Tree;

/// Chores and what each does, as shown.
const CHORES: &[(&str, &str)] = &[
    ("list", "this page"),
    ("tidy", "hold the tree to its own rules"),
    ("slugs", "slugs of all checks"),
    ("new-check <slug>", "make the file of a new check"),
    ("wasm", "build the core for browsers (wasm32)"),
];

/// Prints the page.
///
/// # Errors
/// If the terminal cannot be written to, or a slug stands twice.
pub fn print(tree: &Tree, out: &mut impl Write) -> Result<(), ChoreError> {
    writeln!(out, "chores (cargo xtask <chore>)")?;
    for (name, about) in CHORES {
        writeln!(out, "  {name:<20} {about}")?;
    }
    writeln!(out, "tidy rules")?;
    for rule in tidy::RULES {
        writeln!(
            out,
            "{}",
            crate::wrap::at_80("  ", &format!("{}: {}", rule.name, rule.holds), "    ")
        )?;
    }
    let crates = tree
        .names_in("crates")
        .into_iter()
        .map(str::to_owned)
        .collect();
    section(out, "crates", crates)?;
    section(out, "rooms of joint", rooms(tree))?;
    section(
        out,
        "checks",
        crate::slugs::all(tree)?.into_keys().collect(),
    )?;
    section(
        out,
        "example jobs",
        parents_of(tree, "examples/", "/job.toml"),
    )?;
    section(
        out,
        "golden cases",
        parents_of(tree, "tests/cases/", "/job.toml"),
    )?;
    section(
        out,
        "published checks",
        parents_of(tree, "tests/published/", "/SOURCE.md"),
    )?;
    section(out, "how-tos", pages(tree, "docs/howto/"))?;
    section(out, "decisions", pages(tree, "docs/decisions/"))?;
    section(out, "theory", pages(tree, "docs/theory/"))
}

/// Modules of joint in the order of the map.
fn rooms(tree: &Tree) -> Vec<String> {
    tidy::map::joint_modules(tree)
}

fn parents_of(tree: &Tree, prefix: &str, ending: &str) -> Vec<String> {
    tree.files(prefix, ending)
        .map(|(path, _)| path[prefix.len()..path.len() - ending.len()].to_owned())
        .collect()
}

fn pages(tree: &Tree, prefix: &str) -> Vec<String> {
    tree.files(prefix, ".md")
        .map(|(path, _)| path[prefix.len()..path.len() - ".md".len()].to_owned())
        .collect()
}

fn section(out: &mut impl Write, title: &str, names: Vec<String>) -> Result<(), ChoreError> {
    writeln!(out, "{title} ({})", names.len())?;
    if !names.is_empty() {
        writeln!(
            out,
            "{}",
            crate::wrap::at_80("  ", &names.join(" · "), "  ")
        )?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_page_names_what_stands_in_the_tree() {
        let tree = Tree::of(&[
            (
                crate::slugs::TABLE,
                "    park_room, Joint, Nothing, Nothing, Along;\n",
            ),
            ("examples/vault/job.toml", ""),
            ("docs/howto/add-a-check.md", "# Add a check"),
        ]);
        let mut page = Vec::new();
        print(&tree, &mut page).expect("a page in memory can be written");
        let page = String::from_utf8(page).expect("the page is text");
        for words in [
            "checks (1)\n  park_room",
            "example jobs (1)\n  vault",
            "how-tos (1)\n  add-a-check",
            "new-check",
        ] {
            assert!(page.contains(words), "{words} is missing from\n{page}");
        }
    }

    #[test]
    fn every_chore_of_the_command_line_is_on_the_page() {
        use clap::CommandFactory;
        let named: Vec<&str> = CHORES
            .iter()
            .filter_map(|(name, _)| name.split(' ').next())
            .collect();
        let command = crate::Door::command();
        let known: Vec<&str> = command
            .get_subcommands()
            .map(clap::Command::get_name)
            .collect();
        assert_eq!(named, known);
    }
}
