//! Ends as built: every check again, beside the plan and beside a fresh judgement; ways back, and whether they lead where they say.

use super::{HEAD, PLAN, readings};
use crate::cases::{EXAMPLES, accepted, lines, named, texts};
use crate::laws::tries;
use jointwright_joint::built::{
    Built, BuiltReading, Ends, FindingDoc, FindingKind, Findings, Found, entered, findings_of_ends,
};
use jointwright_joint::end::EndId;
use jointwright_joint::job::Order;
use jointwright_joint::judge::{Judged, judge_model};
use jointwright_joint::limit::{Datum, Outcome, Ruling};
use jointwright_joint::model::{Depth, Model};
use jointwright_joint::plane::Plane;
use jointwright_joint::slot::{Measured, Slot};
use jointwright_units::Station;
use jointwright_wording::Tongue;
use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use std::ops::ControlFlow;

const CASE: &str = "larkspur-three-way";

#[allow(
    clippy::disallowed_methods,
    reason = "tests are no part of the core; --long asks for more cases"
)]
fn n_ends() -> u32 {
    if std::env::var_os("JOINTWRIGHT_LONG").is_some() {
        1000
    } else {
        100
    }
}

fn solved(order: Order) -> Model {
    let mut model = accepted(Model::new(order), CASE);
    assert!(model.solve(Depth::Whole, &mut |_| ControlFlow::Continue(())));
    model
}

fn built_of(order: &Order, rows: &str) -> Built {
    readings(order, rows).unwrap_or_else(|why| panic!("{why}"))
}

/// A row of one place along leg and phase, in millimetres.
fn place(leg: &str, phase: u8, plane: Plane, mm: f64) -> String {
    format!(
        "{{ leg = \"{leg}\", phase = {phase}, of = \"{}\", with = \"rule\", at = [\"{mm:.3} mm\"] }},",
        plane.name()
    )
}

fn along(rows: &[String]) -> String {
    format!("along = [\n{}\n]\n", rows.join("\n"))
}

/// Findings of a model whose ends were read.
fn found(model: &Model, judged: &Judged<'_>, built: &Built) -> Findings {
    let tongue = Tongue::of(&model.order().job);
    accepted(findings_of_ends(model, judged, built, &tongue), CASE)
}

/// The finding of a slot.
fn of<'f>(found: &'f Findings, leg: &str, phase: u8, measured: &Measured) -> &'f FindingDoc {
    let slot = Slot::new(&EndId::new(leg, phase), measured.clone());
    let finding = found.findings.iter().find(|finding| finding.slot == slot);
    finding.expect("a finding")
}

#[test]
fn an_end_that_is_made_as_planned_is_never_worse_than_its_plan() {
    let mut n_rulings = 0;
    for case in EXAMPLES {
        let model = solved(case.order());
        let judged = accepted(judge_model(&model), case.slug);
        let rows: Vec<String> = (judged.inputs.legs.iter())
            .flat_map(|leg| {
                let cuts = leg.cutback.cuts.iter().filter(|cut| cut.window.is_some());
                cuts.filter_map(|cut| Some(place(&leg.leg.id, 1, cut.plane, cut.nominal?.mm())))
            })
            .collect();
        let built = built_of(&model.order().clone(), &along(&rows));
        let ends = accepted(Ends::new(&model, &judged.rulings, &built), case.slug);
        for of in ends.judged() {
            let changes = of.changes.iter();
            let worse: Vec<&str> = changes
                .filter(|change| change.kind > FindingKind::InWindow)
                .map(|change| change.is.check)
                .collect();
            assert!(worse.is_empty(), "{}: {worse:?}", case.slug);
            assert!(of.beside.is_empty(), "{}", case.slug);
            n_rulings += of.n_rulings;
        }
    }
    assert!(n_rulings > 500, "{n_rulings}");
}

/// Body end of leg A at 190 ± 0.5 mm instead of 196 to 200: the electrode, which moves with it, laps 6.5 mm less than the 18.0 mm that are least by the plan.
#[test]
fn a_body_off_its_mark_moves_its_electrode() {
    let model = solved(named(CASE).order());
    let judged = accepted(judge_model(&model), CASE);
    let cover = |rulings: &[Ruling]| {
        let mut rulings = rulings.iter();
        let ruling = rulings.find(|r| {
            r.check == "electrode_cover"
                && r.subject.leg.as_deref() == Some("A")
                && matches!(r.value, Some(Datum::Range { .. }))
        });
        match ruling.map(|r| (&r.value, r.outcome)) {
            Some((Some(Datum::Range { min, .. }), outcome)) => (*min, outcome),
            other => panic!("{other:?}"),
        }
    };
    let (planned, passes) = cover(&judged.rulings);
    assert_eq!(passes, Outcome::Pass);
    let rows = along(&[place("A", 1, Plane::BodyEnd, 190.0)]);
    let built = built_of(model.order(), &rows);
    let ends = accepted(Ends::new(&model, &judged.rulings, &built), CASE);
    let changes = &ends.judged()[0].changes;
    let is: Vec<Ruling> = changes.iter().map(|change| change.is.clone()).collect();
    let (moved, fails) = cover(&is);
    assert!((planned - moved - 6.5).abs() < 1e-6, "{planned} {moved}");
    assert_eq!(fails, Outcome::Fail);
    assert_eq!(changes[0].kind, FindingKind::StopAndAsk);
    // Its twin one millimetre inside its window.
    let rows = along(&[place("A", 1, Plane::BodyEnd, 197.0)]);
    let built = built_of(model.order(), &rows);
    let ends = accepted(Ends::new(&model, &judged.rulings, &built), CASE);
    let kinds = ends.judged()[0]
        .changes
        .iter()
        .map(|change| change.kind)
        .max();
    assert!(kinds.is_none_or(|kind| kind == FindingKind::InWindow));
}

/// Rows of one end as built: places of its cuts, each off its planned place, and one diameter.
fn random_rows(judged: &Judged<'_>, offs: &[(u8, f64)], over_mm: f64, growth_mm: f64) -> String {
    let leg = &judged.inputs.legs[usize::from(offs[0].0) % judged.inputs.legs.len()];
    let id = &leg.leg.id;
    let mut rows = Vec::new();
    for (cut, (pick, off)) in leg.cutback.cuts.iter().zip(offs.iter().cycle()) {
        if let Some(nominal) = cut.nominal.filter(|_| pick % 3 > 0) {
            rows.push(place(id, 1, cut.plane, nominal.mm() + off));
        }
    }
    let mut text = along(&rows);
    text.push_str(&format!(
        "across = [\n{{ leg = \"{id}\", phase = 1, of = \"diameter\", over = \"insulation\", with = \"calliper\", values = [\"{over_mm:.3} mm\", \"{:.3} mm\"], temperature = \"21 degC\" }},\n{{ leg = \"{id}\", phase = 1, of = \"connector-length\", with = \"calliper\", values = [\"{growth_mm:.3} mm\"] }},\n]\n",
        over_mm + 0.05
    ));
    text
}

/// A model that keeps parts of its plan gives the rulings that a fresh joint with the same readings has, bit for bit.
#[test]
fn an_end_as_built_is_judged_as_a_fresh_joint_is() {
    let case = "dock-straight-pressed";
    let model = solved(named(case).order());
    let judged = accepted(judge_model(&model), case);
    let random = (
        prop::collection::vec((any::<u8>(), -6.0_f64..6.0), 4..9),
        22.0_f64..32.0,
        100.0_f64..170.0,
    );
    let ran = TestRunner::new(tries(n_ends())).run(&random, |(offs, over, length)| {
        let rows = random_rows(&judged, &offs, over, length);
        let built = built_of(model.order(), &rows);
        let order = entered(model.order(), &built, 1, |_| true);
        let Ok(mut again) = model.again(order.clone()) else {
            // Rows that contradict each other once the connector has that length do so in a fresh joint too.
            prop_assert!(Model::new(order).is_err());
            return Ok(());
        };
        again.solve(Depth::Whole, &mut |_| ControlFlow::Continue(()));
        let fresh = solved(order);
        let rulings = |model: &Model| {
            let inputs = model.inputs();
            let checks = jointwright_joint::checks::CHECKS.iter();
            checks
                .flat_map(|check| inputs.ask(check))
                .collect::<Vec<Ruling>>()
        };
        prop_assert_eq!(rulings(&again), rulings(&fresh));
        Ok(())
    });
    if let Err(broken) = ran {
        panic!("{broken}");
    }
}

/// Readings on the way out of a window: neither the reading's own finding nor the checks together get better again.
#[test]
fn more_deviation_never_improves_an_end() {
    let model = solved(named(CASE).order());
    let judged = accepted(judge_model(&model), CASE);
    for (leg, plane) in [
        ("A", Plane::BodyEnd),
        ("B", Plane::ScreenEdge),
        ("C", Plane::InsulationEnd),
        ("C", Plane::SealEnd),
    ] {
        let at = judged.inputs.legs.iter().find(|of| of.leg.id == leg);
        let nominal = at.and_then(|of| of.cutback.nominal(plane)).map(Station::mm);
        let nominal = nominal.expect("a place");
        for side in [-1.0, 1.0] {
            let mut before = FindingKind::InWindow;
            for step in 0..14 {
                let mm = nominal + side * 2.0 * f64::from(step);
                let built = built_of(model.order(), &along(&[place(leg, 1, plane, mm)]));
                let found = found(&model, &judged, &built);
                let own = of(&found, leg, 1, &Measured::Place { plane }).kind;
                let phases = found.phases.iter().flatten();
                let checks = phases.flat_map(|of| &of.changes).map(|change| change.kind);
                let now = checks.chain([own]).max().expect("a kind");
                // Ways back depend on the side, not on the distance.
                let now = now.min(FindingKind::StopAndAsk);
                assert!(now >= before, "{leg} {plane:?} {mm}: {before:?} {now:?}");
                before = now;
            }
            assert_eq!(before, FindingKind::StopAndAsk, "{leg} {plane:?} {side}");
        }
    }
}

/// Readings after a way back, by its kind: what the crew would read if it did what the way says.
fn carried_out(model: &Model, built: &Built, finding: &FindingDoc, way: &str) -> Built {
    let mut readings = built.readings.clone();
    if way.starts_with("cut back") {
        readings.retain(|reading| reading.slot.end != finding.slot.end);
        return Built { readings };
    }
    let inputs = model.inputs();
    let leg = inputs
        .legs
        .iter()
        .find(|leg| leg.leg.id == finding.slot.end.leg);
    let leg = leg.expect("a leg");
    let put = |reading: &mut BuiltReading| match (&reading.slot.measured, &mut reading.found) {
        (Measured::Place { plane }, Found::Lengths(values, _)) => {
            let to = leg.cutback.nominal(*plane).expect("a place");
            *values = vec![to.floor()];
        }
        (Measured::Presses | Measured::Bolts, Found::Count(n)) => *n = 2,
        other => panic!("{other:?}"),
    };
    let of_slot = readings
        .iter_mut()
        .filter(|reading| reading.slot == finding.slot);
    of_slot.for_each(put);
    Built { readings }
}

/// Findings out of window at an end, and checks that are out on its leg.
fn n_out(found: &Findings, end: &EndId) -> usize {
    let is_out = |kind: FindingKind| kind >= FindingKind::StopAndAsk;
    let slots: std::collections::BTreeSet<&Slot> = (found.findings.iter())
        .filter(|finding| finding.slot.end == *end && is_out(finding.kind))
        .map(|finding| &finding.slot)
        .collect();
    let changes = found.phases.iter().flatten().flat_map(|of| &of.changes);
    let changes = changes.filter(|change| {
        let leg = change.is.leg.as_ref();
        is_out(change.kind) && leg.is_none_or(|leg| *leg == end.leg)
    });
    slots.len() + changes.count()
}

/// Ends with something out of window at several stages.
fn ends_out() -> Vec<String> {
    let body_off = [
        place("A", 1, Plane::BodyEnd, 190.0),
        place("A", 1, Plane::ScreenEdge, 118.0),
    ];
    let seal_off = [
        place("C", 2, Plane::SealEnd, 340.0),
        place("C", 2, Plane::JacketEdge, 255.0),
    ];
    let bolts = "count = [{ leg = \"C\", phase = 1, of = \"bolts\", n = 1 }]\n";
    let nick = "seen = [{ leg = \"B\", phase = 3, of = \"surface\", on = \"insulation\", found = \"nick\" }]\n";
    vec![
        along(&[place("B", 1, Plane::ScreenEdge, 118.0)]),
        along(&[place("B", 1, Plane::ScreenEdge, 131.0)]),
        along(&[place("A", 3, Plane::InsulationEnd, 49.0)]),
        along(&[place("A", 3, Plane::ShieldEdge, 215.0)]),
        along(&[place("A", 3, Plane::JacketEdge, 260.0)]),
        along(&body_off),
        along(&seal_off),
        bolts.to_owned(),
        nick.to_owned(),
    ]
}

#[test]
fn every_way_back_leads_where_it_says() {
    let model = solved(named(CASE).order());
    let judged = accepted(judge_model(&model), CASE);
    let mut ways_seen = std::collections::BTreeSet::new();
    for rows in ends_out() {
        let built = built_of(model.order(), &rows);
        let before = found(&model, &judged, &built);
        for finding in &before.findings {
            let Some(ways) = &finding.ways else { continue };
            assert!(finding.kind >= FindingKind::StopAndAsk);
            for way in &ways.offered {
                let after = carried_out(&model, &built, finding, &way.way);
                let after = found(&model, &judged, &after);
                assert_eq!(
                    way.n_left,
                    n_out(&after, &finding.slot.end),
                    "{rows}: {}",
                    way.way
                );
                ways_seen.insert(way.way.split(' ').next().expect("a word").to_owned());
            }
            assert!(ways.offered.is_sorted_by_key(|way| way.n_left));
        }
    }
    let ways_seen: Vec<String> = ways_seen.into_iter().collect();
    assert_eq!(ways_seen, ["cut", "finish", "move", "take"]);
}

/// Ways that an end has, and the reasons for those that it has not.
fn ways_of(order: Order, rows: &str) -> (FindingKind, Vec<String>, Vec<String>) {
    let model = solved(order);
    let judged = accepted(judge_model(&model), CASE);
    let built = built_of(model.order(), rows);
    let found = found(&model, &judged, &built);
    let mut findings = found.findings.iter();
    let finding = findings.find(|finding| finding.ways.is_some());
    let finding = finding.expect("one is out");
    let ways = finding.ways.clone().expect("they were sought");
    let offered = ways.offered.into_iter().map(|way| way.way);
    (finding.kind, offered.collect(), ways.not_offered)
}

#[test]
fn no_way_is_offered_that_a_stage_a_row_or_the_slack_forbids() {
    let order = || named(CASE).order();
    let short = along(&[place("A", 1, Plane::ScreenEdge, 118.0)]);
    let (kind, offered, not) = ways_of(order(), &short);
    assert_eq!(kind, FindingKind::StopAndAsk);
    assert!(offered[0].starts_with("take more off"), "{offered:?}");
    assert!(
        not.iter().any(|why| why.contains("no step for it")),
        "{not:?}"
    );
    // Too much is off: nothing more can be taken off.
    let long = along(&[place("A", 1, Plane::ScreenEdge, 131.0)]);
    let (_, offered, not) = ways_of(order(), &long);
    assert!(
        offered.iter().all(|way| way.starts_with("cut back")),
        "{offered:?}"
    );
    assert!(
        not.iter().any(|why| why.contains("too much is off")),
        "{not:?}"
    );
    // The body is on.
    let covered = along(&[
        place("A", 1, Plane::ScreenEdge, 118.0),
        place("A", 1, Plane::BodyEnd, 198.0),
    ]);
    let (_, offered, not) = ways_of(order(), &covered);
    assert!(
        offered.iter().all(|way| way.starts_with("cut back")),
        "{offered:?}"
    );
    assert!(
        not.iter().any(|why| why.contains("covered by now")),
        "{not:?}"
    );
    // The slack is too short, or nobody measured it: no way back is left.
    for (slack, said) in [(Some(200), "of slack"), (None, "does not state the slack")] {
        let mut order = order();
        for leg in &mut order.job.legs {
            // With cuts to spare asked for, the plan itself would fail.
            leg.room.spare_cuts = None;
            leg.room.slack = slack.map(|mm| jointwright_units::Length::MM * mm);
        }
        let (kind, offered, not) = ways_of(order, &long);
        assert_eq!(kind, FindingKind::NoWayBack);
        assert!(offered.is_empty(), "{offered:?}");
        assert!(not.iter().any(|why| why.contains(said)), "{not:?}");
    }
    // A row that says nothing of moving, and one that forbids it.
    let off = along(&[place("A", 1, Plane::BodyEnd, 190.0)]);
    let (_, offered, _) = ways_of(order(), &off);
    assert!(
        offered.iter().any(|way| way.starts_with("move the body")),
        "{offered:?}"
    );
    for (may_move, said) in [
        (None, "does not say whether it may be moved"),
        (
            Some(jointwright_joint::catalogue::MayMove::Never),
            "may not be moved",
        ),
    ] {
        let mut order = order();
        for body in &mut order.catalogue.bodies {
            body.may_move = may_move.clone();
        }
        let (_, offered, not) = ways_of(order, &off);
        assert!(
            offered.iter().all(|way| !way.starts_with("move")),
            "{offered:?}"
        );
        assert!(not.iter().any(|why| why.contains(said)), "{not:?}");
    }
    // A phase that is another cannot be put right here.
    let phase = "seen = [{ leg = \"A\", phase = 1, of = \"phase\", found = \"unlike\" }]\n";
    let (kind, offered, _) = ways_of(order(), phase);
    assert_eq!((kind, offered.len()), (FindingKind::NoWayBack, 0));
}

/// A lap that contradicts the two places that bound it is doubted, and the worse of both is what the checks see.
#[test]
fn a_lap_unlike_its_places_is_doubted_and_helps_no_check() {
    let model = solved(named(CASE).order());
    let judged = accepted(judge_model(&model), CASE);
    let rows = [
        place("C", 1, Plane::JacketEdge, 263.5),
        place("C", 1, Plane::SealEnd, 335.0),
        "{ leg = \"C\", phase = 1, of = \"seal-overlap\", with = \"rule\", at = [\"100 mm\"] },"
            .to_owned(),
    ];
    let built = built_of(model.order(), &along(&rows));
    let found = found(&model, &judged, &built);
    let lap = of(&found, "C", 1, &Measured::SealOverlap);
    assert_eq!(lap.kind, FindingKind::CannotTell);
    let mut changes = found.phases.iter().flatten().flat_map(|of| &of.changes);
    let overlap = changes.find(|change| change.is.check == "seal_overlap");
    assert_eq!(overlap.expect("it is worse").kind, FindingKind::StopAndAsk);
}

/// A plan that fails is not judged as built.
#[test]
fn nothing_is_asked_again_of_a_plan_that_fails() {
    let model = solved(named("tannery-change").order());
    let judged = accepted(judge_model(&model), "tannery-change");
    let leg = &judged.inputs.legs[0].leg.id;
    let built = built_of(
        model.order(),
        &along(&[place(leg, 1, Plane::ScreenEdge, 20.0)]),
    );
    let found = found(&model, &judged, &built);
    assert!(found.is_withheld && found.phases.is_none());
    assert!(found.findings.iter().all(|finding| finding.ways.is_none()));
}

#[test]
fn the_file_takes_a_temperature_and_a_way_of_testing() {
    let order = named(CASE).order();
    let text = format!(
        "job = \"{}\"\nplan = \"{PLAN}\"\n{HEAD}seen = [{{ leg = \"A\", phase = 1, of = \"strand-moisture\", found = \"wet\", how = \"hot-plate\" }}]\nacross = [{{ leg = \"A\", phase = 1, of = \"diameter\", over = \"jacket\", with = \"calliper\", values = [\"30 mm\"], temperature = \"12 degC\" }}]\n",
        order.job.id
    );
    let source = jointwright_joint::form::Source::new("r", text);
    let built = jointwright_joint::built::read_built(&source, &order.job, PLAN);
    let built = built.unwrap_or_else(|found| panic!("{}", lines(&texts(&found))));
    let entered = entered(&order, &built, 1, |_| true);
    let end = EndId::new("A", 1);
    let wet = entered.job.moistures.of(&end).iter().find(|row| row.is_wet);
    assert_eq!(wet.expect("it is entered").how, "hot-plate");
    let jackets = entered.job.readings.of(&end).iter();
    let jackets: Vec<Option<f64>> = jackets
        .filter(|row| row.over == jointwright_joint::cable::Layer::Jacket)
        .map(|row| row.degc)
        .collect();
    // It takes the place of the job's own reading of the same.
    assert_eq!(jackets, [Some(12.0)]);
}
