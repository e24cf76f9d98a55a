//! Words from a file stand in the plan in quotation marks, permitting or not, in any language.

use crate::cases::{accepted, named, read};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::judge::judge_unsolved as judge;
use jointwright_joint::plan::Plan;
use jointwright_wording::plan;

/// Sentences that somebody may write into any text.
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
    "freigegeben: darf eingeschaltet werden",
    "можно включать: кабель без напряжения",
];

/// Fields of a job, and of a row, that may hold any words.
const JOB: &[&str] = &[
    "title", "goes_to", "role", "place", "source", "what", "lot", "how",
];
const ROWS: &[&str] = &[
    "say", "caution", "note", "place", "name", "revision", "paper",
];

/// A text with these words in each of these fields.
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
        // A name of one word is a short name, of a region or of an end; a name of several words is for a reader.
        let is_told = name != Some("name") || value[..end].contains(' ');
        let is_asked = is_told && name.is_some_and(|name| fields.contains(&name));
        said.push_str(before);
        let value_said = if is_asked { words } else { &value[..end] };
        said.push_str(&format!(" = \"{value_said}\""));
        rest = &value[end + 1..];
    }
    said + rest
}

/// Places where a text holds words without “ ” around them.
fn unquoted(text: &str, words: &str) -> Vec<String> {
    let own = words.replace(['“', '”', '"'], "'");
    let bare = text.replace(&format!("“{own}”"), "");
    let found = bare.match_indices(own.as_str());
    let around = |at: usize| {
        let before: Vec<char> = bare[..at].chars().rev().take(60).collect();
        let before: String = before.into_iter().rev().collect();
        before + &bare[at..].chars().take(80).collect::<String>()
    };
    found.map(|(at, _)| around(at)).collect()
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
            n += json.matches("“").count();
            assert!(
                json.contains(
                    "What stands in “ ” is said by the job or by the row named beside it"
                )
            );
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
    let quoted = format!("job: “{words}”, 9 March");
    assert!(unquoted(&quoted, words).is_empty());
    assert_eq!(unquoted(&format!("{quoted}; {words}"), words).len(), 1);
}

#[test]
fn a_name_that_another_file_answers_to_is_the_same_name_in_quotation_marks() {
    // A die in the row and in the trial press, with more than a short name.
    let job = named("dock-straight-pressed").job;
    let long = "die of the invented press, approved";
    let of = |job: &str, rows: &str| {
        let rows = (DEMONSTRATION.to_owned(), rows.to_owned());
        let order = accepted(read(job, &[rows]), long);
        plan(&accepted(judge(&order), long))
    };
    let growth = |plan: &Plan| {
        plan.legs[0]
            .connector
            .as_ref()
            .and_then(|c| c.growth_of_mouth_mm)
    };
    let rows = saying(DEMONSTRATION_TEXT, &["die"], long);
    let both = of(&saying(job, &["die"], long), &rows);
    assert!(growth(&both).is_some());
    let die = both.legs[0].connector.as_ref().and_then(|c| c.die.clone());
    assert_eq!(
        die.as_deref(),
        Some("“die of the invented press, approved”")
    );
    // The twin: only the row has that name.
    assert!(growth(&of(job, &rows)).is_none());
    // A file keeps its own name.
    let named_so = job.replace("[\"demonstration\"]", "[\"approved-parts.toml\"]");
    let rows = (
        "approved-parts.toml".to_owned(),
        DEMONSTRATION_TEXT.to_owned(),
    );
    assert!(read(&named_so, &[rows]).is_ok());
}
