//! Sentences about the words of named engineers.

use crate::Tongue;
use jointwright_joint::said::ClosingSaid;

pub(super) fn say(tongue: Tongue, said: &ClosingSaid) -> String {
    match said {
        ClosingSaid::Word {
            by,
            why,
            date,
            until,
        } => {
            format!("{by}: {why} ({date}, until {until})")
        }
        ClosingSaid::ClosesNothing {
            by,
            date,
            check,
            subject,
        } => format!(
            "{by}, of {date}: this word on {} of {} closes nothing, the question is judged now.",
            check.replace('_', " "),
            tongue.subject(subject)
        ),
    }
}
