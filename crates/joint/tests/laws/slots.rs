//! Slots: a reading has the same name in the survey, at a hold point, in an ask and among the job's own readings.

use crate::cases::{accepted, everything, named, plan_of, read, sentence};
use jointwright_joint::cable::Layer;
use jointwright_joint::end::EndId;
use jointwright_joint::plan::{AskDoc, Plan, StepDoc, WantedDoc};
use jointwright_joint::said::HoldSaid;
use jointwright_joint::slot::{Measured, Slot};
use jointwright_joint::stage::Stage;
use std::collections::BTreeSet;

const DOCK: &str = "dock-straight-pressed";

/// Whether a reading belongs to no end: the word of a person, a row's own text, or no reading that this program knows.
fn is_of_no_end(step: &StepDoc, wanted: &WantedDoc) -> bool {
    let is_word = matches!(step.stage, Stage::HandOver | Stage::BridgeOff);
    let is_of_row = step.lines.iter().any(|line| line.say == wanted.what);
    is_word || is_of_row || wanted.what == sentence(&HoldSaid::AsInstructionsAsk.into())
}

/// Blanks of a plan without a slot, and slots of no blank.
fn unnamed(plan: &Plan) -> Vec<String> {
    let mut unnamed = Vec::new();
    for step in &plan.make_up.steps {
        for wanted in &step.hold {
            let blank = format!("{}: {}", step.id, wanted.what);
            if is_of_no_end(step, wanted) {
                continue;
            }
            for phase in 1..=plan.job.phases {
                let of_phase = |slot: &&Slot| slot.end.phase == phase;
                if !wanted.slots.iter().any(|slot| of_phase(&slot)) {
                    unnamed.push(format!("{blank}: no slot for phase {phase}"));
                }
            }
            let is_here = |slot: &Slot| step.legs.is_empty() || step.legs.contains(&slot.end.leg);
            if !wanted.slots.iter().all(is_here) {
                unnamed.push(format!("{blank}: a slot of another leg"));
            }
            let distinct: BTreeSet<&Slot> = wanted.slots.iter().collect();
            if distinct.len() < wanted.slots.len() {
                unnamed.push(format!("{blank}: one slot twice"));
            }
        }
    }
    unnamed
}

#[test]
fn every_blank_of_a_hold_point_has_a_slot_in_every_phase() {
    for case in everything() {
        let unnamed = unnamed(&case.plan());
        assert!(unnamed.is_empty(), "{}: {unnamed:#?}", case.slug);
    }
}

#[test]
fn a_blank_without_a_slot_is_noticed() {
    let mut plan = named(DOCK).plan();
    let mut holds = plan
        .make_up
        .steps
        .iter_mut()
        .flat_map(|step| &mut step.hold);
    let first = holds.find(|wanted| !wanted.slots.is_empty());
    first.expect("some blank has a slot").slots.clear();
    assert_eq!(unnamed(&plan).len(), usize::from(plan.job.phases));
}

#[test]
fn a_diameter_has_one_name_in_survey_hold_point_and_job() {
    for case in everything() {
        let plan = case.plan();
        let steps = plan.make_up.steps.iter();
        let measure = steps.filter(|step| step.stage == Stage::Measure);
        let wanted: BTreeSet<Slot> = measure
            .flat_map(|step| &step.hold)
            .flat_map(|wanted| wanted.slots.clone())
            .collect();
        for leg in &plan.legs {
            for end in &leg.ends {
                let id = EndId::new(&leg.mark, end.phase);
                for reading in &end.readings {
                    let slot = Slot::diameter(&id, reading.over);
                    assert_eq!(reading.slot, slot, "{}", case.slug);
                    assert!(end.filled.contains(&slot), "{}: {slot:?}", case.slug);
                }
                // A diameter is wanted over every layer on which a part is ranged, and over no layer of another end.
                let insulation = Slot::diameter(&id, Layer::Insulation);
                let has_body = leg.parts.iter().any(|part| part.kind.name() == "body");
                assert_eq!(wanted.contains(&insulation), has_body, "{}", case.slug);
            }
        }
    }
}

/// The slots of the asks of a plan for one fact.
fn asked(plan: &Plan, fact: &str) -> Vec<Slot> {
    let of_fact = |ask: &&AskDoc| ask.key() == fact;
    let asks = plan.asks.iter().filter(of_fact);
    asks.flat_map(|ask| ask.slots.clone()).collect()
}

/// Whether a row of the job fills a slot.
fn is_filled(plan: &Plan, slot: &Slot) -> bool {
    let mut ends = plan.legs.iter().flat_map(|leg| &leg.ends);
    ends.any(|end| end.filled.contains(slot))
}

#[track_caller]
fn check(line: &str, fact: &str, measured: Measured) {
    let case = named(DOCK);
    let (whole, end) = (case.plan(), EndId::new("A", 1));
    assert!(case.job.contains(line), "{line} stands in the job");
    let job = case.job.replacen(line, "", 1);
    let without = plan_of(&accepted(read(&job, &case.catalogues()), DOCK), DOCK);
    let slot = Slot::new(&end, measured);
    assert!(is_filled(&whole, &slot) && !asked(&whole, fact).contains(&slot));
    assert!(!is_filled(&without, &slot) && asked(&without, fact).contains(&slot));
}

#[test]
fn the_slot_of_an_ask_is_the_one_that_its_answer_fills() {
    check(
        "  { leg = \"A\", phase = 1, over = \"insulation\", instrument = \"calliper\", error = \"0.05 mm\", temperature = \"12 degC\", values = [\"28.00 mm\", \"28.10 mm\", \"28.30 mm\", \"28.10 mm\"] },\n",
        "reading",
        Measured::Diameter {
            over: Layer::Insulation,
        },
    );
    check(
        "  { leg = \"A\", phase = 1, jacket = \"smooth\", by = \"Tomas Brandt\" },\n",
        "jacket",
        Measured::JacketSurface,
    );
    check(
        "  { leg = \"A\", phase = 1, in = \"shield\", found = \"dry\", how = \"invented test\", by = \"Tomas Brandt\", date = 2026-03-11 },\n",
        "moisture",
        Measured::ShieldMoisture,
    );
}

#[test]
fn one_sleeve_on_two_legs_is_one_blank_with_a_slot_on_each() {
    let plan = named(DOCK).plan();
    let holds = plan.make_up.steps.iter().flat_map(|step| &step.hold);
    let lengths = holds.filter(|wanted| {
        let is_length = |slot: &Slot| slot.measured == Measured::ConnectorLength;
        wanted.slots.iter().any(is_length)
    });
    let most = lengths.map(|wanted| wanted.slots.len()).max();
    assert_eq!(most, Some(2 * usize::from(plan.job.phases)));
}
