//! New check: the file of a check in the agreed form, and the work that remains.
//!
//! Invariant: an existing file is never overwritten, and a slug that is taken is refused.

use std::io::Write;
use std::path::Path;

use crate::error::ChoreError;
use crate::slugs;
use crate::tree::Tree;
use crate::wrap;

/// First content of the file; `{slug}` is replaced.
const TEMPLATE: &str = include_str!("new_check_template.txt");

/// Work that remains to be done by hand.
const STEPS: &[&str] = &[
    "add `mod {slug};` and `{slug}::CHECK` to the lists in crates/joint/src/checks/mod.rs, in order of name",
    "add its line to TABLE in crates/joint/src/limit/check_table.rs: what it rests on, and what an owner may limit of it",
    "write the question, formula, symbols, assumptions and source at the top of the file",
    "add the source to REFERENCES.bib; a limit from memory also gets its row in data/limit/",
    "write the tests: passes, fails, exactly at the limit, each missing input, monotone in the driving quantity",
    "add one oracle outside us under tests/published/ or one closed form, with the twin that must fail",
    "add one golden case that only this check decides",
    "add new words to GLOSSARY.md and a line to CHANGELOG.md",
    "read docs/howto/add-a-check.md before you ask for review",
];

/// Makes `crates/joint/src/checks/<slug>.rs` below `root` and prints what to add.
///
/// # Errors
/// If the slug is not of the agreed form or taken, or the file cannot be written.
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
    std::fs::write(&file, TEMPLATE.replace("{slug}", slug)).map_err(unwritable)?;
    writeln!(out, "wrote {path}")?;
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_file_is_made_once_and_never_overwritten() {
        let root = crate::scratch::folder("new-check");
        let mut page = Vec::new();
        make(&root, &Tree::of(&[]), "bore_range", &mut page).expect("a free slug is made");
        let made = std::fs::read_to_string(root.join("crates/joint/src/checks/bore_range.rs"))
            .expect("it stands");
        assert!(
            made.contains("bore_range") && !made.contains("{slug}"),
            "{made}"
        );
        let page = String::from_utf8(page).expect("the page is text");
        assert!(
            page.contains("`mod bore_range;`")
                && page.lines().all(|line| line.chars().count() <= 80),
            "{page}"
        );
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
        let text = TEMPLATE.replace("{slug}", "bore_range");
        crate::tidy::check(crate::tidy::words::judge, &[(path, &text)], &[]);
    }
}
