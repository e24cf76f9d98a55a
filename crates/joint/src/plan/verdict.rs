//! Verdict: what fails on a joint, short, for every door that prints numbers of it.

use super::{JobDoc, RulingDoc};
use crate::limit::{Outcome, Ruling};
use crate::said::Wording;

/// The check whose numbers are the marks themselves.
const CUT_WINDOW: &str = "cut_window";

impl RulingDoc {
    /// Whether it is about the places and windows of cuts, which front pages print as marks.
    pub fn is_of_cuts(&self) -> bool {
        self.check == CUT_WINDOW
    }
}

impl JobDoc {
    /// Year, month and day of the work, as they are written.
    pub fn date_parts(&self) -> [String; 3] {
        let mut parts = self.date.splitn(3, '-').map(str::to_owned);
        [(); 3].map(|()| parts.next().unwrap_or_default())
    }
}

/// What fails, one sentence a check and reason, with all whom it concerns.
pub fn fails(rulings: &[Ruling], wording: &dyn Wording) -> Vec<String> {
    let mut groups: Vec<(&Ruling, Vec<String>)> = Vec::new();
    for ruling in rulings.iter().filter(|r| r.outcome == Outcome::Fail) {
        let who = who(ruling);
        match groups
            .iter_mut()
            .find(|(first, _)| first.check == ruling.check && first.why == ruling.why)
        {
            Some((_, all)) => all.push(who),
            None => groups.push((ruling, vec![who])),
        }
    }
    let sentence = |(ruling, who): (&Ruling, Vec<String>)| {
        let why = ruling.why.as_ref().map(|why| wording.say(why));
        let why = why.unwrap_or("no reason is stated".to_owned());
        let why = why.trim_end_matches('.');
        format!(
            "{}, {}: {why}.",
            who.join(" "),
            ruling.check.replace('_', " ")
        )
    };
    groups.into_iter().map(sentence).collect()
}

fn who(ruling: &Ruling) -> String {
    match (&ruling.subject.leg, ruling.subject.phase) {
        (Some(leg), Some(phase)) => format!("{leg}{phase}"),
        (Some(leg), None) => leg.clone(),
        _ => "joint".to_owned(),
    }
}
