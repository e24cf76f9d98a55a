//! Plan: the program's output document, `plan.json`.
//!
//! Why its own room: other programs read the plan, so its words are few, documented and versioned.
//!
//! Invariants: the plan rounds nothing.
//! A cut without a place has no nominal, and a reason.
//! Every pass and fail has a limit and a source; every not-judged has a reason.
//! Invented data are marked across its face.
//!
//! Not here: pages and the terminal (the doors print them from this document).

mod ask_letter;
mod asks;
mod by_name;
mod cable_run;
mod cut;
mod cut_of_leg;
mod document;
mod field;
mod leg;
mod make_up;
mod missing;
mod narrowed;
mod outside;
mod pressure;
mod printed;
mod proposal;
mod read_back;
mod ruling;
mod said;
mod shield;
mod state;
mod stated;
mod told_apart;
mod verdict;
mod warm;
mod words;

#[cfg(test)]
mod names_tests;

pub use ask_letter::Letter;
pub use asks::{AskDoc, PlaceDoc, StopDoc};
pub use cable_run::{
    CableRateDoc, CyclicDoc, RunAtDoc, StretchDoc, cable_rate_schema, cable_rating,
};
pub use cut::{
    AtEdge, ByNameDoc, CutDoc, CutKind, NarrowedDoc, PlacedDoc, PrintedWindowDoc, RungDoc,
};
pub use document::{BlankDoc, CallDoc, JobDoc, Plan};
pub use field::{FieldDoc, GapDoc, GapState, PlugDoc, StressDoc};
pub use leg::{ConnectorDoc, EndDoc, LegDoc, PartDoc, PlaneDoc, ReadingDoc, ShareDoc, StackDoc};
pub use make_up::{
    KnifeDoc, LineDoc, MakeUpDoc, MaterialDoc, PersonDoc, SlideDoc, StepDoc, WantedDoc,
};
pub use outside::{DiameterOf, LayerDoc};
pub use pressure::{PartPressureDoc, PressureDoc, SitDoc};
pub use proposal::{FitDoc, MisfitDoc, ProposalDoc};
pub use read_back::NotAPlan;
pub use ruling::{DatumDoc, RulingDoc, SaidDoc};
pub use said::{Bound, Figure, Figures};
pub use shield::{CarriesDoc, ShieldDoc};
pub use state::StateDoc;
pub use told_apart::{MarkDoc, mark_of};
pub use verdict::fails;
pub use warm::{
    AtDoc, FedDoc, GovernDoc, HeatShareDoc, LastsDoc, LegWarmDoc, LimitOf, LoadDoc, PassedDoc,
    RateDoc, WarmDoc,
};

use crate::checks::LegInputs;
use crate::job::Order;
use crate::judge::{Judged, Proposal, governing, governing_computed, proposals, worst};
use crate::limit::{Ruling, Subject};
use crate::programme::Wanted;
use crate::said::{NotComputed, PlanSaid, PressureAssumes, Wording};
use crate::warm::Rating;
use cut_of_leg::cut_doc;
use leg::leg_doc;
use proposal::proposal_doc;
pub(crate) use ruling::ruling_doc;
use std::collections::BTreeSet;
use words::{all_said, assumed};

/// Version of the document's shape.
pub const FORMAT: &str = "jointwright-plan-2";
/// Name and version of the program.
pub fn program() -> String {
    format!("jointwright {}", env!("CARGO_PKG_VERSION"))
}

/// JSON Schema of the plan.
pub fn schema() -> serde_json::Value {
    // The schema describes written documents: a field that is skipped when empty is not required.
    schemars::generate::SchemaSettings::draft2020_12()
        .for_serialize()
        .into_generator()
        .into_root_schema_for::<Plan>()
        .to_value()
}

/// JSON Schema of a rating.
pub fn rate_schema() -> serde_json::Value {
    schemars::generate::SchemaSettings::draft2020_12()
        .for_serialize()
        .into_generator()
        .into_root_schema_for::<RateDoc>()
        .to_value()
}

/// Returns the plan of a judged joint.
pub fn plan(judged: &Judged<'_>, wording: &dyn Wording) -> Plan {
    let job = &judged.inputs.order.job;
    let legs: Vec<LegDoc> = judged
        .inputs
        .legs
        .iter()
        .map(|leg| leg_doc(judged, leg, wording))
        .collect();
    let ruled = |ruling: &Ruling| ruling_doc(ruling, wording);
    let proposals = proposals(judged);
    let cuts: Vec<(String, Vec<CutDoc>)> = legs
        .iter()
        .map(|leg| (leg.mark.clone(), leg.cuts.clone()))
        .collect();
    Plan {
        format: FORMAT.to_owned(),
        program: program(),
        plan_mark: mark_of(judged, &program(), wording),
        invented: invented(judged.inputs.order, &proposals, wording),
        never: wording.say(&PlanSaid::Never.into()),
        job: JobDoc {
            id: job.id.clone(),
            title: job.title.clone(),
            date: job.date.to_string(),
            kind: job.kind,
            phases: job.phases,
            words: job.words,
            language: job.language,
            place: job.place.name.clone(),
            stop_and_call: CallDoc {
                name: job.stop_and_call.0.clone(),
                number: job.stop_and_call.1.clone(),
            },
        },
        outcome: worst(&judged.rulings),
        stops: asks::stop_docs(judged, wording),
        asks: asks::ask_docs(judged, wording),
        idle_closings: all_said(&judged.idle_closings, wording),
        not_computed: assumed(NotComputed::ALL, wording),
        missing: all_said(&missing::missing(judged), wording),
        governs: governing(&judged.rulings).map(&ruled),
        governs_computed: governing_computed(&judged.rulings).map(&ruled),
        alike: alike(judged, &legs),
        make_up: make_up::make_up(&judged.inputs, &cuts, wording),
        pressure_assumes: pressure_assumes(&legs, wording),
        warm: warm::warm_doc(&judged.inputs, wording),
        legs,
        blanks: job
            .blanks
            .iter()
            .map(|b| BlankDoc {
                port: b.port,
                plug: b.plug.clone(),
            })
            .collect(),
        rulings: judged.rulings.iter().map(ruled).collect(),
        proposals: proposals
            .iter()
            .map(|of| proposal_doc(of, wording))
            .collect(),
    }
}

/// Returns the readings of all hold points of a joint, in the order of the make-up, each with its window as a crew reads it.
pub(crate) fn holds(judged: &Judged<'_>, wording: &dyn Wording) -> Vec<(Wanted, WantedDoc)> {
    let words = judged.inputs.order.job.words;
    let cuts = |leg: &LegInputs<'_>| {
        let cuts = leg.cutback.cuts.iter();
        let cuts = cuts.map(|cut| cut_doc(cut, leg, words, wording));
        (leg.leg.id.clone(), cuts.collect())
    };
    let cuts: Vec<(String, Vec<CutDoc>)> = judged.inputs.legs.iter().map(cuts).collect();
    make_up::holds(&judged.inputs, &cuts, wording)
}

/// Returns the rating of a joint: loads and temperatures, governing limits, times for which more load may flow.
///
/// `rating` is the solved rating of its temperatures.
pub fn rate(judged: &Judged<'_>, rating: Option<&Rating>, wording: &dyn Wording) -> RateDoc {
    let invented = invented(judged.inputs.order, &proposals(judged), wording);
    warm::rate_doc(judged, rating, invented, wording)
}

/// Assumptions of the pressures of all ends; empty if no pressure was asked for.
fn pressure_assumes(legs: &[LegDoc], wording: &dyn Wording) -> Vec<String> {
    let mut ends = legs.iter().flat_map(|leg| &leg.ends);
    if ends.any(|end| end.pressure.is_some()) {
        assumed(PressureAssumes::ALL, wording)
    } else {
        Vec::new()
    }
}

/// Groups of ends with the same results, ordered by the first end of each group.
fn alike(judged: &Judged<'_>, legs: &[LegDoc]) -> Vec<Vec<String>> {
    let mut groups: Vec<(String, Vec<String>)> = Vec::new();
    for (leg, doc) in judged.inputs.legs.iter().zip(legs) {
        for end in &leg.ends {
            let whom = Subject::end(&end.id);
            let rulings = judged.rulings.iter();
            let of_end = rulings.filter(|r| r.subject.covers(&whom));
            let outcomes: Vec<(&str, &str)> = of_end.map(|r| (r.check, r.outcome.name())).collect();
            let parts: Vec<&str> = doc.parts.iter().map(|p| p.id.as_str()).collect();
            let cuts: Vec<_> = doc
                .cuts
                .iter()
                .map(|c| (&c.plane, c.nominal_mm, c.min_mm, c.max_mm, &c.why))
                .collect();
            let key = format!(
                "{:?} {:?} {:?} {:?} {}",
                doc.cable, parts, cuts, outcomes, doc.parks
            );
            let name = end.id.to_string();
            match groups.iter_mut().find(|(k, _)| *k == key) {
                Some((_, names)) => names.push(name),
                None => groups.push((key, vec![name])),
            }
        }
    }
    groups.into_iter().map(|(_, names)| names).collect()
}

/// Banner across every document with invented parts or for an invented job.
pub fn invented(order: &Order, proposals: &[Proposal], wording: &dyn Wording) -> Option<String> {
    is_invented(order, proposals).then(|| wording.say(&PlanSaid::Invented.into()))
}

/// Whether the job, a part that it uses or a part that is offered for it is invented.
fn is_invented(order: &Order, proposals: &[Proposal]) -> bool {
    let tried = proposals.iter().flat_map(|of| {
        let fits = of.fits.iter().map(|(id, _)| id);
        fits.chain(of.does_not_fit.iter().map(|(id, _)| id))
    });
    let used: BTreeSet<&String> = order.job.rows().chain(tried).collect();
    let mut invented = order.catalogue.heads().filter(|head| head.demonstration);
    order.job.invented || invented.any(|head| used.contains(&head.id))
}
