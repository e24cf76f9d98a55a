//! Rulings: those that fail, those not judged, parts left open and the smallest margins, on the page of a plan.

use crate::lines::Lines;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::{Plan, ProposalDoc, RulingDoc};
use jointwright_wording::label::PlanRulingLabel;

/// Adds the questions about the steps that a person must settle.
pub(super) fn unsettled(plan: &Plan, lines: &mut Lines) {
    if plan.make_up.unsettled.is_empty() {
        return;
    }
    lines.heading(&PlanRulingLabel::ToSettle);
    for said in &plan.make_up.unsettled {
        lines.wrap("  ", said);
    }
}

pub(super) fn fails(plan: &Plan, lines: &mut Lines) {
    let mut groups: Vec<(&RulingDoc, Vec<String>)> = Vec::new();
    for ruling in plan.rulings.iter().filter(|r| r.ruling == Outcome::Fail) {
        let who = lines.tongue.whom(ruling);
        match groups
            .iter_mut()
            .find(|(r, _)| r.check == ruling.check && r.why == ruling.why)
        {
            Some((_, ends)) => ends.push(who),
            None => groups.push((ruling, vec![who])),
        }
    }
    if groups.is_empty() {
        return;
    }
    lines.heading(&PlanRulingLabel::OutOfWindow);
    for (ruling, ends) in groups {
        let why = ruling.why.as_deref().unwrap_or_default();
        let why = why.trim_end_matches('.');
        let check = lines.tongue.check(&ruling.check);
        lines.wrap("  ", &format!("{}, {check}: {why}.", ends.join(" ")));
        if let Some(hint) = &ruling.hint {
            lines.wrap("      ", hint);
        }
        if let Some(source) = ruling.source.clone() {
            lines.label("      ", &PlanRulingLabel::WordOf { source });
        }
    }
}

/// Ruling, and the checks that rest on the same reason, each with the ends it concerns.
type Alike<'p> = (&'p RulingDoc, Vec<(&'p str, Vec<String>)>);

/// Adds the rulings that are not judged: each reason once and in full, with the checks that rest on it.
pub(super) fn not_judged(plan: &Plan, lines: &mut Lines) {
    let mut groups: Vec<Alike<'_>> = Vec::new();
    let open = |r: &&RulingDoc| r.ruling == Outcome::NotJudged && r.closed_by.is_none();
    for ruling in plan.rulings.iter().filter(open) {
        let who = lines.tongue.whom(ruling);
        let same = |(first, _): &&mut (&RulingDoc, _)| first.why == ruling.why;
        match groups.iter_mut().find(same) {
            Some((_, checks)) => {
                match checks.iter_mut().find(|(check, _)| *check == ruling.check) {
                    Some((_, ends)) => ends.push(who),
                    None => checks.push((&ruling.check, vec![who])),
                }
            }
            None => groups.push((ruling, vec![(&ruling.check, vec![who])])),
        }
    }
    lines.heading(&PlanRulingLabel::NotJudged);
    for (ruling, checks) in groups {
        let named = checks.into_iter().map(|(check, mut ends)| {
            ends.dedup();
            format!("{} ({})", lines.tongue.check(check), ends.join(" "))
        });
        let named: Vec<String> = named.collect();
        let why = ruling.why.as_deref().unwrap_or_default();
        lines.wrap("  ", &format!("{}: {why}", named.join(", ")));
        if let (None, Some(hint)) = (ruling.asks.first(), &ruling.hint) {
            lines.wrap("      ", hint);
        }
    }
    for missing in &plan.missing {
        let what = missing.clone();
        lines.label("  ", &PlanRulingLabel::SomethingMissing { what });
    }
    let what = plan.not_computed.clone();
    lines.label("  ", &PlanRulingLabel::NotComputed { what });
}

/// Adds the questions that a named engineer has closed with their own word.
pub(super) fn closed(plan: &Plan, lines: &mut Lines) {
    let closed: Vec<&RulingDoc> = plan
        .rulings
        .iter()
        .filter(|r| r.closed_by.is_some() || r.closed_until.is_some())
        .collect();
    for idle in &plan.idle_closings {
        lines.wrap("  ", idle);
    }
    if closed.is_empty() {
        return;
    }
    lines.heading(&PlanRulingLabel::Closed);
    for ruling in closed {
        let word = match (&ruling.closed_by, &ruling.closed_until) {
            (Some(word), _) => word.clone(),
            (None, Some(word)) => lines.say(&PlanRulingLabel::RanOut { word: word.clone() }),
            (None, None) => continue,
        };
        let (who, check) = (lines.tongue.whom(ruling), lines.tongue.check(&ruling.check));
        lines.wrap("  ", &format!("{who}, {check}: {word}"));
    }
}

pub(super) fn proposals(proposals: &[ProposalDoc], lines: &mut Lines) {
    if proposals.is_empty() {
        return;
    }
    lines.heading(&PlanRulingLabel::LeftOpen);
    for proposal in proposals {
        let fits: Vec<String> = proposal.fits.iter().map(|fit| fit.id.clone()).collect();
        let found = if fits.is_empty() {
            PlanRulingLabel::NoRowFits
        } else {
            PlanRulingLabel::NothingOutWith { fits }
        };
        // The leg itself, and all legs that share the part.
        let legs = std::iter::once(&proposal.leg).chain(&proposal.shared_with);
        let label = PlanRulingLabel::Proposal {
            legs: legs.cloned().collect(),
            part: proposal.part,
            found: lines.say(&found),
        };
        lines.label("  ", &label);
        for misfit in &proposal.does_not_fit {
            let (id, why) = (misfit.id.clone(), misfit.why.clone());
            lines.label("      ", &PlanRulingLabel::Misfit { id, why });
        }
    }
}

/// Adds the rulings nearest to their limits: one for lengths, one for computed quantities.
pub(super) fn governs(plan: &Plan, lines: &mut Lines) {
    let nearest = |ruling: &Option<RulingDoc>| {
        let ruling = ruling.as_ref()?;
        let check = lines.tongue.check(&ruling.check);
        Some((
            check,
            lines.tongue.whom(ruling),
            lines.tongue.figures(ruling)?,
        ))
    };
    let length =
        nearest(&plan.governs).map(|(check, whom, figures)| PlanRulingLabel::NearestLength {
            check,
            whom,
            figures,
        });
    let computed = nearest(&plan.governs_computed).map(|(check, whom, figures)| {
        PlanRulingLabel::NearestComputed {
            check,
            whom,
            figures,
        }
    });
    let said: Vec<PlanRulingLabel> = length.into_iter().chain(computed).collect();
    if said.is_empty() {
        return;
    }
    lines.heading(&PlanRulingLabel::LeastRoom);
    for label in said {
        lines.label("  ", &label);
    }
}
