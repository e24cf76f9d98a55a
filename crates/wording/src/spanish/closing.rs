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
            format!("{by}: {why} ({date}, hasta {until})")
        }
        ClosingSaid::ClosesNothing {
            by,
            date,
            check,
            subject,
        } => format!(
            "{by}, con fecha {date}: esta palabra sobre `{check}` ({}) no cierra nada, la pregunta se juzga ahora.",
            tongue.subject(subject)
        ),
    }
}
