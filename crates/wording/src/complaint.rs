//! Complaint: what is wrong in a file as a line that a person reads, with its place.
//!
//! Invariants: one complaint is one line, whatever the file holds; complaints of one place stand in the order of their texts.

use crate::{Language, Tongue};
use jointwright_joint::form::{Complaint, Source};
use jointwright_joint::job;
use jointwright_joint::said::Wording as _;
use std::fmt;

/// A complaint in words.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct ComplaintText {
    /// Name of the file.
    pub path: String,
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// Found and expected, in whole sentences.
    pub message: String,
    /// Next step, a whole sentence; empty where there is nothing to add.
    pub hint: String,
    /// Text before the hint.
    label: &'static str,
}

impl fmt::Display for ComplaintText {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let ComplaintText {
            path,
            line,
            column,
            message,
            hint,
            label,
        } = self;
        write!(f, "{path}:{line}:{column} {message}")?;
        if !hint.is_empty() {
            write!(f, " {label}: {hint}")?;
        }
        Ok(())
    }
}

/// Text without line breaks and other control characters, so that one complaint stays one line.
fn one_line(text: &str) -> String {
    let clean = |c: char| if c.is_control() { ' ' } else { c };
    text.chars().map(clean).collect()
}

impl Tongue {
    /// The one that a job asks for, read from its text; English where it cannot say.
    pub fn of_source(source: &Source) -> Tongue {
        let (language, words) = job::tongue(source);
        Tongue { language, words }
    }

    /// A complaint in words.
    pub fn complaint(self, complaint: &Complaint) -> ComplaintText {
        ComplaintText {
            path: complaint.path.clone(),
            line: complaint.line,
            column: complaint.column,
            message: one_line(&self.say(&complaint.message)),
            hint: one_line(&self.say(&complaint.hint)),
            label: match self.language {
                Language::English => "Hint",
                Language::Spanish => "Qué hacer",
            },
        }
    }

    /// Complaints in words, in the order of file, line, column and text, each once.
    pub fn complaints(self, complaints: &[Complaint]) -> Vec<ComplaintText> {
        let texts = complaints.iter().map(|complaint| self.complaint(complaint));
        let mut texts: Vec<ComplaintText> = texts.collect();
        texts.sort();
        texts.dedup();
        texts
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use jointwright_joint::cable::Words;

    #[test]
    fn a_complaint_stays_on_one_line() {
        let source = Source::new("f", "x".to_owned());
        let complaint = source.complaint(0, "a\nb", "c\rd");
        let tongue = Tongue::english(Words::Us);
        let shown = tongue.complaint(&complaint).to_string();
        assert_eq!(shown, "f:1:1 a b Hint: c d");
        let bare = source.complaint(0, "a", "");
        assert_eq!(tongue.complaint(&bare).to_string(), "f:1:1 a");
    }

    #[test]
    fn complaints_of_one_place_stand_in_the_order_of_their_texts_each_once() {
        let source = Source::new("f", "x\ny".to_owned());
        let complaints = [(2, "b"), (0, "z"), (2, "a"), (2, "b")];
        let complaints = complaints.map(|(at, text)| source.complaint(at, text, ""));
        let texts = Tongue::english(Words::Us).complaints(&complaints);
        let texts: Vec<String> = texts.iter().map(ToString::to_string).collect();
        assert_eq!(texts, ["f:1:1 z", "f:2:1 a", "f:2:1 b"]);
    }

    #[test]
    fn a_job_is_complained_of_in_the_language_that_it_names() {
        let of = |text: &str| Tongue::of_source(&Source::new("f", text.to_owned())).language;
        assert_eq!(of("[job]\nlanguage = \"es\"\n"), Language::Spanish);
        assert_eq!(
            of("[job]\nlanguage = \"es\"\nphases = \"x\"\n"),
            Language::Spanish
        );
        for english in [
            "[job]\nlanguage = \"en\"\n",
            "[job]\nlanguage = \"xx\"\n",
            "[job]\n",
            "]",
        ] {
            assert_eq!(of(english), Language::English, "{english}");
        }
    }
}
