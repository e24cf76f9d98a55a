//! New check: the file of a check in the agreed form, its row in the table of checks, its `mod` line, and what else it needs.
//!
//! Invariant: an existing file is never overwritten, and a slug that is taken is refused.

use std::io::Write;
use std::path::Path;

use crate::error::ChoreError;
use crate::slugs;
use crate::tree::Tree;
use crate::wrap;

/// First content of the file.
const TEMPLATE: &str = include_str!("new_check_template.txt");

/// Work that remains to be done by hand.
const STEPS: &[&str] = &[
    "correct its row in crates/joint/src/limit/check_table.rs: how often it is asked, what it rests on, what an owner may limit of it, how its lengths lie",
    "write its question in crates/wording/src/english/check.rs and spanish/check.rs",
    "write the question, formula, symbols, assumptions and source at the top of the file",
    "add the source to REFERENCES.bib; a limit from memory also gets its row in data/limit/",
    "write the tests: passes, fails, exactly at the limit, each missing input, monotone in the driving quantity",
    "add one oracle outside us under tests/published/ or one closed form, with the twin that must fail",
    "add one golden case that only this check decides",
    "add new words to GLOSSARY.md and a line to CHANGELOG.md",
    "read docs/howto/add-a-check.md before you ask for review",
];

/// Row of a new check.
const ROW: &str = "            {slug}, End, Nothing, Nothing, Along;";

/// File with the `mod` lines of the checks.
const MODULES: &str = "crates/joint/src/checks/mod.rs";

/// Makes `crates/joint/src/checks/<slug>.rs` below `root`, adds its row and its `mod` line, and prints the work that remains.
///
/// # Errors
/// If the slug is not of the agreed form or taken, or a file cannot be written.
pub fn make(root: &Path, tree: &Tree, slug: &str, out: &mut impl Write) -> Result<(), ChoreError> {
    slugs::require_form(slug)?;
    if let Some(path) = slugs::all(tree)?.get(slug) {
        return Err(ChoreError::SlugTaken {
            slug: slug.to_owned(),
            path: path.clone(),
        });
    }
    let path = format!("{}/{slug}.rs", slugs::FOLDER);
    let file = root.join(&path);
    let unwritable = |source| ChoreError::Write {
        path: file.clone(),
        source,
    };
    if let Some(folder) = file.parent() {
        std::fs::create_dir_all(folder).map_err(unwritable)?;
    }
    std::fs::write(&file, TEMPLATE).map_err(unwritable)?;
    writeln!(out, "wrote {path}")?;
    let row = ROW.replace("{slug}", slug);
    add_line(root, tree, slugs::TABLE, &row, slugs::slug_of_row)?;
    add_line(root, tree, MODULES, &format!("mod {slug};"), slug_of_module)?;
    writeln!(out, "added its row to {}", slugs::TABLE)?;
    writeln!(out, "added its line to {MODULES}")?;
    writeln!(out, "next:")?;
    for (index, step) in STEPS.iter().enumerate() {
        let lead = format!("  {}. ", index + 1);
        writeln!(
            out,
            "{}",
            wrap::at_80(&lead, &step.replace("{slug}", slug), "     ")
        )?;
    }
    Ok(())
}

/// Adds a line to a file before the first line of a slug that comes after it, else after the last one.
fn add_line(
    root: &Path,
    tree: &Tree,
    path: &str,
    line: &str,
    slug_of: fn(&str) -> Option<&str>,
) -> Result<(), ChoreError> {
    let mut lines: Vec<&str> = tree.text(path).unwrap_or_default().lines().collect();
    let comes_after = |other: &&str| slug_of(other) > slug_of(line);
    let last = lines.iter().rposition(|other| slug_of(other).is_some());
    let place = lines.iter().position(comes_after);
    let place = place.or(last.map(|index| index + 1)).unwrap_or(lines.len());
    lines.insert(place, line);
    let file = root.join(path);
    let unwritable = |source| ChoreError::Write {
        path: file.clone(),
        source,
    };
    if let Some(folder) = file.parent() {
        std::fs::create_dir_all(folder).map_err(unwritable)?;
    }
    std::fs::write(&file, lines.join("\n") + "\n").map_err(unwritable)
}

/// The slug of a `mod` line; a file whose name is one word is no check.
fn slug_of_module(line: &str) -> Option<&str> {
    let name = line.strip_prefix("mod ")?.strip_suffix(';')?;
    name.contains('_').then_some(name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_file_is_made_once_and_never_overwritten() {
        let root = crate::scratch::folder("new-check");
        let mut page = Vec::new();
        let stands = Tree::of(&[
            (
                MODULES,
                "mod list;\n\nmod bend_radius;\nmod park_room;\n\nuse list::X;\n",
            ),
            (
                slugs::TABLE,
                "{\n    bend_radius, Leg, Nothing, Nothing, Along;\n}\n",
            ),
        ]);
        make(&root, &stands, "bore_range", &mut page).expect("a free slug is made");
        let made = std::fs::read_to_string(root.join("crates/joint/src/checks/bore_range.rs"))
            .expect("it stands");
        assert!(made.contains("slug(module_path!())"), "{made}");
        let page = String::from_utf8(page).expect("the page is text");
        assert!(
            page.contains("added its row") && page.lines().all(|line| line.chars().count() <= 80),
            "{page}"
        );
        let text = |path| std::fs::read_to_string(root.join(path)).expect("it stands");
        assert!(text(MODULES).contains("mod bend_radius;\nmod bore_range;\nmod park_room;\n"));
        let rows = "Along;\n            bore_range, End, Nothing, Nothing, Along;\n}\n";
        assert!(text(slugs::TABLE).ends_with(rows), "{}", text(slugs::TABLE));
        let tree = Tree::read(&root).expect("the scratch tree can be read");
        let again = make(&root, &tree, "bore_range", &mut Vec::new());
        assert!(
            matches!(again, Err(ChoreError::SlugTaken { .. })),
            "{again:?}"
        );
        let odd = make(&root, &tree, "Bore Range", &mut Vec::new());
        assert!(matches!(odd, Err(ChoreError::SlugForm { .. })), "{odd:?}");
        std::fs::remove_dir_all(root).expect("scratch folder can go");
    }

    #[test]
    fn the_template_keeps_the_rules_of_the_house() {
        let path = "crates/joint/src/checks/bore_range.rs";
        crate::tidy::check(crate::tidy::words::judge, &[(path, TEMPLATE)], &[]);
    }
}
