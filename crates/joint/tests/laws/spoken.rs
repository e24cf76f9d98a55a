//! Whatever a file says that permits stands in the plan as that file's words, in quotation marks.

use crate::cases::{accepted, named, read};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::judge::judge_unsolved as judge;
use jointwright_joint::plan::plan;

/// What somebody may write into any text.
const PERMITTING: &[&str] = &[
    "approved: may be energised",
    "This cable is dead",
    "safe to cut and to touch",
    "ok",
    "cleared, released, go ahead",
    "the joint may be kept",
    "ready to switch in",
    "no voltage: proved dead by us",
    "approved” This plan says: safe to cut “",
];

/// Fields of a job, and of a row, that hold any words.
const JOB: &[&str] = &[
    "title", "goes_to", "role", "place", "source", "what", "lot", "how",
];
const ROWS: &[&str] = &[
    "say", "caution", "note", "place", "name", "revision", "paper",
];

/// A text in which each of these fields says something else.
fn saying(text: &str, fields: &[&str], words: &str) -> String {
    let mut said = String::new();
    let mut rest = text;
    // Every ` field = "…"`, whatever stands around it.
    while let Some(at) = rest.find(" = \"") {
        let before = &rest[..at];
        let name = before
            .rsplit(|c: char| !c.is_alphanumeric() && c != '_')
            .next();
        let value = &rest[at + 4..];
        let end = value.find('"').expect("the text is closed");
        // What is called by one word is a short name, of a region or of an end; what has several is told to a reader.
        let is_told = name != Some("name") || value[..end].contains(' ');
        let is_asked = is_told && name.is_some_and(|name| fields.contains(&name));
        said.push_str(before);
        let value_said = if is_asked { words } else { &value[..end] };
        said.push_str(&format!(" = \"{value_said}\""));
        rest = &value[end + 1..];
    }
    said + rest
}

/// Where a text holds words without “ ” around them and without whose they are.
fn unquoted(text: &str, words: &str) -> Vec<String> {
    let own = words.replace(['“', '”', '"'], "'");
    let mut bare = text.to_owned();
    for file in ["job.toml", "demonstration"] {
        bare = bare.replace(&format!("{file} says “{own}”"), "");
    }
    let found = bare.match_indices(own.as_str());
    found
        .map(|(at, _)| bare[at.saturating_sub(60)..].chars().take(140).collect())
        .collect()
}

#[test]
fn issue_16_texts_that_permit_are_quoted_with_whose_they_are_wherever_they_stand() {
    let job = named("larkspur-three-way").job;
    let mut n = 0;
    for words in PERMITTING {
        let texts = [
            (saying(job, JOB, words), DEMONSTRATION_TEXT.to_owned()),
            (job.to_owned(), saying(DEMONSTRATION_TEXT, ROWS, words)),
        ];
        for (job, rows) in texts {
            let order = accepted(read(&job, &[(DEMONSTRATION.to_owned(), rows)]), words);
            let plan = plan(&accepted(judge(&order), words));
            let json = serde_json::to_string(&plan).expect("a document");
            n += json.matches(" says “").count();
            if *words != "ok" {
                assert_eq!(unquoted(&json, words), Vec::<String>::new(), "{words}");
            }
        }
    }
    assert!(n > 100, "{n} times quoted");
}

#[test]
fn what_stands_unquoted_is_found() {
    let words = PERMITTING[0];
    let quoted = format!("job.toml says “{words}”, 9 March");
    assert!(unquoted(&quoted, words).is_empty());
    assert_eq!(unquoted(&format!("{quoted}; {words}"), words).len(), 1);
    assert_eq!(unquoted(&format!("“{words}”"), words).len(), 1);
}

#[test]
fn a_name_that_another_file_answers_to_may_not_permit() {
    let job = named("dock-straight-pressed").job;
    let rows = saying(DEMONSTRATION_TEXT, &["die"], "approved die");
    let complaints = read(job, &[(DEMONSTRATION.to_owned(), rows)]).expect_err("a name");
    assert!(
        complaints
            .iter()
            .all(|c| c.message.contains("words of permission"))
    );
    // A file may be called what it is called.
    let named_so = job.replace("[\"demonstration\"]", "[\"approved-parts.toml\"]");
    let rows = (
        "approved-parts.toml".to_owned(),
        DEMONSTRATION_TEXT.to_owned(),
    );
    assert!(read(&named_so, &[rows]).is_ok());
}
