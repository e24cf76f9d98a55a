//! Verdict: failures of a joint in short, for every door that prints its numbers.

use super::{JobDoc, RulingDoc};
use crate::limit::{Outcome, Ruling};
use crate::said::{PlanSaid, Subject, Wording};

/// Check whose numbers are the marks themselves.
const CUT_WINDOW: &str = "cut_window";

impl RulingDoc {
    /// Whether the ruling is about the places and windows of cuts, which front pages print as marks.
    pub fn is_of_cuts(&self) -> bool {
        self.check == CUT_WINDOW
    }
}

impl JobDoc {
    /// Year, month and day of the work, as written.
    pub fn date_parts(&self) -> [String; 3] {
        let mut parts = self.date.splitn(3, '-').map(str::to_owned);
        [(); 3].map(|()| parts.next().unwrap_or_default())
    }
}

/// Failures: one sentence for each check and reason, with all its subjects.
pub fn fails(rulings: &[Ruling], wording: &dyn Wording) -> Vec<String> {
    let mut groups: Vec<(&Ruling, Vec<Subject>)> = Vec::new();
    for ruling in rulings.iter().filter(|r| r.outcome == Outcome::Fail) {
        let who = ruling.subject.clone();
        match groups
            .iter_mut()
            .find(|(first, _)| first.check == ruling.check && first.why == ruling.why)
        {
            Some((_, all)) => all.push(who),
            None => groups.push((ruling, vec![who])),
        }
    }
    let said = |(ruling, who): (&Ruling, Vec<Subject>)| PlanSaid::Fails {
        who,
        check: ruling.check.to_owned(),
        why: ruling.why.clone().unwrap_or(PlanSaid::NoReason.into()),
    };
    let said = groups.into_iter().map(said);
    said.map(|said| wording.say(&said.into())).collect()
}
