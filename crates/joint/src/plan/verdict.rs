//! Verdict: failures of a joint in short, for every door that prints its numbers.

use crate::limit::{Outcome, Ruling};
use crate::said::{PlanSaid, Subject, Wording};

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
