//! Tidy: the rules that a machine can hold, one file each.
//!
//! Why its own room: a rule that nobody checks is a wish, and a map that nobody compares with the land is soon wrong.
//!
//! Invariants: every rule judges one picture of the tree; every complaint names its cure; every rule has a test that passes and one that fails.
//!
//! Not here: rules that the compiler, clippy and rustfmt already hold.

use std::io::Write;

use crate::error::ChoreError;
use crate::tree::Tree;
use crate::wrap;

pub mod arrows;
pub mod circles;
pub mod dependencies;
pub mod doors;
pub mod manifest;
pub mod map;
pub mod markdown;
pub mod openings;
pub mod purity;
pub mod ratchet;
pub mod sources;
pub mod unit_suffix;
pub mod wordless;
pub mod words;

/// One rule.
#[derive(Debug)]
pub struct Rule {
    /// Its name, which is also the name of its file.
    pub name: &'static str,
    /// The rule in one line.
    pub holds: &'static str,
    /// Function that judges it.
    pub judge: fn(&Tree) -> Report,
}

/// Every rule, in the order in which they are judged.
pub const RULES: &[Rule] = &[
    Rule {
        name: "map",
        holds: "ARCHITECTURE.md and the tree name the same folders",
        judge: map::judge,
    },
    Rule {
        name: "arrows",
        holds: "a crate or room uses only what stands before it",
        judge: arrows::judge,
    },
    Rule {
        name: "circles",
        holds: "modules of one folder use each other in one direction",
        judge: circles::judge,
    },
    Rule {
        name: "dependencies",
        holds: "the core uses listed third-party crates only",
        judge: dependencies::judge,
    },
    Rule {
        name: "purity",
        holds: "embedded data, serde and clippy's lists stay in place",
        judge: purity::judge,
    },
    Rule {
        name: "doors",
        holds: "doors solve nothing and take no sentence apart",
        judge: doors::judge,
    },
    Rule {
        name: "wordless",
        holds: "papers and pictures have no text of their own, and write no tag by hand",
        judge: wordless::judge,
    },
    Rule {
        name: "ratchet",
        holds: "files and functions stay small",
        judge: ratchet::judge,
    },
    Rule {
        name: "words",
        holds: "no drawers, nothing unfinished, nothing ignored",
        judge: words::judge,
    },
    Rule {
        name: "openings",
        holds: "doc comments begin with a noun or a verb",
        judge: openings::judge,
    },
    Rule {
        name: "unit_suffix",
        holds: "a public number says its unit",
        judge: unit_suffix::judge,
    },
    Rule {
        name: "sources",
        holds: "every cited key stands in REFERENCES.bib",
        judge: sources::judge,
    },
    Rule {
        name: "markdown",
        holds: "one title a document, links that lead somewhere",
        judge: markdown::judge,
    },
];

/// Result of a rule.
#[derive(Debug, Default)]
pub struct Report {
    /// Breaches of the rule.
    pub complaints: Vec<Complaint>,
    /// Facts worth knowing besides, such as a count.
    pub notes: Vec<String>,
}

impl From<Vec<Complaint>> for Report {
    fn from(complaints: Vec<Complaint>) -> Report {
        Report {
            complaints,
            notes: Vec::new(),
        }
    }
}

/// One breach of a rule.
#[derive(Debug)]
pub struct Complaint {
    /// File or folder.
    pub path: String,
    /// Line, from 1, where there is one.
    pub line: Option<usize>,
    /// The finding and the expectation.
    pub found: String,
    /// The cure.
    pub cure: String,
}

impl Complaint {
    /// Complaint about a whole file or folder.
    pub fn of(path: &str, found: impl Into<String>, cure: impl Into<String>) -> Complaint {
        Complaint {
            path: path.to_owned(),
            line: None,
            found: found.into(),
            cure: cure.into(),
        }
    }

    /// Complaint about one line.
    pub fn at(
        path: &str,
        line: usize,
        found: impl Into<String>,
        cure: impl Into<String>,
    ) -> Complaint {
        Complaint {
            line: Some(line),
            ..Complaint::of(path, found, cure)
        }
    }
}

impl Complaint {
    /// Complaint as shown: the name of its rule first, at most 80 columns wide.
    pub fn shown(&self, rule_name: &str) -> String {
        let place = match self.line {
            Some(line) => format!("{}:{line}", self.path),
            None => self.path.clone(),
        };
        let lead = format!("[{rule_name}] ");
        let found = wrap::at_80(&lead, &format!("{place}: {}", self.found), "    ");
        format!("{found}\n{}", wrap::at_80("    cure: ", &self.cure, "    "))
    }
}

/// Judges every rule and prints the results; returns whether none was broken.
///
/// # Errors
/// If the terminal cannot be written to.
pub fn print(tree: &Tree, out: &mut impl Write) -> Result<bool, ChoreError> {
    let mut n_complaints = 0;
    for rule in RULES {
        let report = (rule.judge)(tree);
        for complaint in &report.complaints {
            writeln!(out, "{}", complaint.shown(rule.name))?;
        }
        for note in &report.notes {
            let lead = format!("[{}] note: ", rule.name);
            writeln!(out, "{}", wrap::at_80(&lead, note, "    "))?;
        }
        n_complaints += report.complaints.len();
    }
    writeln!(
        out,
        "tidy: {} rules judged, {n_complaints} complaints",
        RULES.len()
    )?;
    Ok(n_complaints == 0)
}

/// Judges a small tree and compares each complaint with the expected words, in order.
#[cfg(test)]
#[track_caller]
pub fn check(judge: fn(&Tree) -> Report, files: &[(&str, &str)], expected: &[&str]) {
    let report = judge(&Tree::of(files));
    let in_one_line = |c: &Complaint| {
        let shown = c.shown("rule");
        shown.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let said: Vec<String> = report.complaints.iter().map(in_one_line).collect();
    let all_said = said.len() == expected.len()
        && said
            .iter()
            .zip(expected)
            .all(|(said, words)| said.contains(words));
    assert!(all_said, "said {said:#?}, expected {expected:#?}");
    assert!(
        report.complaints.iter().all(|c| !c.cure.is_empty()),
        "a complaint has no cure"
    );
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_broken_tree_is_told_so_and_every_line_fits() {
        let tree = Tree::of(&[("crates/joint/src/util.rs", "fn get_x() {}")]);
        let mut page = Vec::new();
        let is_well = print(&tree, &mut page).expect("a page in memory can be written");
        let page = String::from_utf8(page).expect("the page is text");
        assert!(!is_well);
        assert!(page.contains("[words] crates/joint/src/util.rs"), "{page}");
        assert!(
            page.lines().all(|line| line.chars().count() <= 80),
            "{page}"
        );
    }

    #[test]
    fn every_rule_stands_in_a_file_of_its_name() {
        let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src/tidy");
        for rule in RULES {
            assert!(
                folder.join(format!("{}.rs", rule.name)).is_file(),
                "{}",
                rule.name
            );
        }
    }
}
