//! Frame of a letter around its questions, and the place of an answer.

use crate::Tongue;
use jointwright_joint::limit::File;
use jointwright_joint::said::{LetterSaid, SettledCheck, Wording};

pub(super) fn say(tongue: Tongue, said: &LetterSaid) -> String {
    match said {
        LetterSaid::To { to } => format!("To: {}", tongue.say(to)),
        LetterSaid::Job { job, title } => format!("Job: {job}: {title}"),
        LetterSaid::Place { place, date } => {
            format!("Place: {place}. Day of the work: {date}.")
        }
        LetterSaid::Plan { short, issue, made } => {
            format!("PLAN {short}, {}; made {made}", super::plan::issue(*issue))
        }
        LetterSaid::CutNothing => "CUT NOTHING: the plan of this joint says stop. These questions are answered without any cut.".to_owned(),
        LetterSaid::FactsAreMissing => {
            "These facts are missing for the joint named above.".to_owned()
        }
        LetterSaid::WithWhereItStands => "Write each answer with where it stands (paper, revision, page) or how it was found.".to_owned(),
        LetterSaid::LeaveBlank => {
            "Leave blank what you do not know: a guess is worse than a blank.".to_owned()
        }
        LetterSaid::FoundDuringWork => {
            "FOUND DURING THE WORK, at its own step: cut nothing for what follows.".to_owned()
        }
        LetterSaid::Answer => "answer".to_owned(),
        LetterSaid::WhereItStands => "from (paper, page, or how)".to_owned(),
        LetterSaid::NameAndDate => "name, date".to_owned(),
        LetterSaid::GoesInto { place } => format!("Goes into the {}", tongue.say(place)),
        LetterSaid::Settles { settles } => format!("Settles: {}.", tongue.say(settles)),
        LetterSaid::Fact { key } => format!("(fact: {key})"),
        LetterSaid::Questions { name, number } => format!("Questions: {name}, {number}"),
        LetterSaid::AnswerPlace {
            file: of,
            tables,
            fields,
        } => format!(
            "{}, under {}: {}",
            file(*of),
            tables.join(" or "),
            fields.join(", ")
        ),
        LetterSaid::SettledBy { alone, with_others } => settled(tongue, alone, with_others),
    }
}

fn file(file: File) -> &'static str {
    match file {
        File::Job => "job",
        File::Catalogue => "catalogue",
    }
}

fn settled(tongue: Tongue, alone: &[SettledCheck], with_others: &[SettledCheck]) -> String {
    match (checks(tongue, alone), checks(tongue, with_others)) {
        (None, None) => "no question; until then what rests on it says so".to_owned(),
        (Some(alone), None) => alone,
        (Some(alone), Some(with)) => format!("{alone}; with other answers also {with}"),
        (None, Some(with)) => format!("with other answers {with}"),
    }
}

/// Checks, each with its legs and ends; nothing where there is none.
fn checks(tongue: Tongue, all: &[SettledCheck]) -> Option<String> {
    let each = all
        .iter()
        .map(|SettledCheck { check, of }| format!("{} ({})", tongue.check(check), of.join(" ")));
    (!all.is_empty()).then(|| each.collect::<Vec<_>>().join(", "))
}
