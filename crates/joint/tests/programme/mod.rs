//! The programme of a make-up: in every order that it allows, no precondition is broken.
//!
//! The preconditions below are written anew, step by step in a crew's words, and do not use the program's own rules.

mod adapter;
mod amount;
mod braid;
mod bridge;
mod caution;
mod coming;
mod edge;
mod joint;
mod ladder;
mod made;
mod refused;

use crate::cases::{everything, named};
use jointwright_joint::catalogue::InstructionStep;
use jointwright_joint::catalogue::PartKind;
use jointwright_joint::job::{JointKind, Order};
use jointwright_joint::judge::judge_unsolved as judge;
use jointwright_joint::plan::{Plan, StepDoc};
use jointwright_joint::stage::Stage;
use jointwright_wording::plan;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, RngSeed, TestRunner};
use std::collections::BTreeSet;

/// Steps done so far, by place in the list.
type StepsDone = BTreeSet<usize>;

/// Greatest number of reachable states; more would be a fault of the test's jobs, not of the programme.
const STATES_MOST: usize = 200_000;

fn order_of(case: &str) -> Order {
    named(case).order()
}

fn planned(order: &Order) -> Plan {
    plan(&judge(order).expect("the rows agree"))
}

/// Reason why a crew may not do one step of a joint before another; `None` if it may.
fn forbidden(kind: JointKind, later: &StepDoc, earlier: &StepDoc) -> Option<&'static str> {
    let shares = later.legs.is_empty()
        || earlier.legs.is_empty()
        || later.legs.iter().any(|leg| earlier.legs.contains(leg));
    let one_body = kind != JointKind::Separable;
    let (here, all) = (
        |stage: &str| earlier.stage.name() == stage && shares,
        |stage: &str| earlier.stage.name() == stage,
    );
    let rules: &[(bool, &'static str)] = &match later.stage.name() {
        "hand-over" => return None,
        "measure" => vec![],
        "square" | "mark-out" => vec![(here("measure"), "not measured")],
        "jacket" => vec![
            (all("measure"), "cut before every leg was measured"),
            (here("mark-out"), "cut before it was marked"),
        ],
        "slide-on" => vec![(here("square"), "slid over an end not cut square")],
        "phasing" => vec![(here("measure"), "not measured")],
        "bridge" => vec![(here("jacket"), "nothing to bridge yet")],
        "shield" => vec![(here("bridge"), "an open shield without its bridge")],
        "screen" => vec![(here("shield"), "screen under the shield")],
        "insulation" => vec![(here("shield"), "insulation under the shield")],
        "connect" => vec![
            (
                all("slide-on") && (one_body || shares),
                "connector made before all that must go over is on",
            ),
            (
                all("push-on") && (one_body || shares),
                "connector made before what it bars the way is pushed on",
            ),
            (
                all("phasing") && (one_body || shares),
                "conductors joined whose phases nobody has checked",
            ),
            (here("insulation"), "no bare conductor"),
            (here("mark-out"), "pressing moves the datum"),
        ],
        "clean" => vec![
            (here("screen"), "screen still on"),
            (here("slide-on"), "parts dragged over a clean surface"),
        ],
        "push-on" => vec![(here("clean"), "pushed on over a surface not cleaned")],
        "place" => vec![
            (here("connect"), "body closed over nothing"),
            (here("clean"), "body over a surface not cleaned"),
            (here("push-on"), "body closed over what is not on yet"),
        ],
        "mate" => vec![
            (here("place"), "plugged without its body"),
            (all("phasing"), "phases joined that nobody has checked"),
        ],
        "bond" => vec![
            (
                all("connect"),
                "bonded across before both sides are connected",
            ),
            (all("place"), "bonded across before the body is on"),
            (all("mate"), "bonded across before every leg is plugged"),
        ],
        "bond-check" => vec![
            (all("bond"), "measured across before both sides are bonded"),
            (
                all("connect"),
                "measured across before both sides are connected",
            ),
        ],
        "bridge-off" => vec![(all("bond"), "bridge off before the permanent bond is made")],
        "seal" => vec![
            (all("connect"), "sealed before both sides are connected"),
            (all("bond"), "sealed over an open shield"),
            (all("bond-check"), "sealed over a bond that nobody measured"),
            (all("bridge-off"), "sealed over the bridge"),
        ],
        "hand-back" => vec![(all("seal"), "handed back unsealed")],
        other => panic!("the test does not know the stage {other}"),
    };
    let first = [(all("hand-over"), "something came before the hand-over")];
    let mut rules = rules.iter().chain(&first);
    rules.find(|(is_broken, _)| *is_broken).map(|(_, why)| *why)
}

/// Walks every order that the programme allows; returns the first broken precondition, if there is one.
fn explore(steps: &[StepDoc], kind: JointKind) -> Result<usize, String> {
    let waits: Vec<Vec<usize>> = steps
        .iter()
        .map(|step| {
            let at = |id: &String| steps.iter().position(|s| s.id == *id);
            step.after
                .iter()
                .map(|id| at(id).unwrap_or_else(|| panic!("{id} is no step")))
                .collect()
        })
        .collect();
    // For each step the steps that a crew may not leave open before it, with the reason.
    let lacking: Vec<Vec<(usize, &str)>> = steps
        .iter()
        .map(|step| {
            let others = steps.iter().enumerate().filter(|(_, s)| s.id != step.id);
            others
                .filter_map(|(at, other)| Some((at, forbidden(kind, step, other)?)))
                .collect()
        })
        .collect();
    let mut seen: BTreeSet<StepsDone> = BTreeSet::new();
    let mut open: Vec<StepsDone> = vec![StepsDone::new()];
    while let Some(done) = open.pop() {
        let ready: Vec<usize> = (0..steps.len())
            .filter(|at| !done.contains(at) && waits[*at].iter().all(|w| done.contains(w)))
            .collect();
        if ready.is_empty() && done.len() < steps.len() {
            return Err("some steps wait for ever".to_owned());
        }
        for next in ready {
            if let Some((_, why)) = lacking[next].iter().find(|(at, _)| !done.contains(at)) {
                return Err(format!("{}: {why}", steps[next].id));
            }
            let mut more = done.clone();
            more.insert(next);
            if seen.insert(more.clone()) {
                open.push(more);
            }
        }
        assert!(seen.len() <= STATES_MOST, "too many orders to walk");
    }
    Ok(seen.len())
}

/// Whether a row asks for an order that joints forbid.
fn clashes(plan: &Plan) -> bool {
    let mut unsettled = plan.make_up.unsettled.iter();
    unsettled.any(|s| s.contains("against the order"))
}

/// Checks that the printed order keeps to `after`, and that each row's own steps keep their own order on each leg.
fn printed_order(plan: &Plan, order: &Order) {
    let steps = &plan.make_up.steps;
    for (at, step) in steps.iter().enumerate() {
        for before in &step.after {
            assert!(
                steps[..at].iter().any(|s| s.id == *before),
                "{} is printed before {before}",
                step.id
            );
        }
    }
    if clashes(plan) {
        return;
    }
    for leg in &order.job.legs {
        let said: Vec<&str> = steps
            .iter()
            .filter(|s| s.legs.is_empty() || s.legs.contains(&leg.id))
            .flat_map(|s| s.lines.iter().map(|line| line.say.as_str()))
            .collect();
        let place = |say: &str| said.iter().position(|s| *s == say);
        for body in &order.catalogue.bodies {
            if leg.parts.body.as_ref() != Some(&body.head.id) {
                continue;
            }
            for own in &body.head.steps {
                let earlier = |id: &String| {
                    let step = body.head.steps.iter().find(|s| s.id.as_ref() == Some(id));
                    step.and_then(|s| place(&s.say))
                };
                let here = place(&own.say).expect("every step of a row is printed");
                assert!(
                    own.after.iter().filter_map(earlier).all(|at| at < here),
                    "leg {}: {}",
                    leg.id,
                    own.say
                );
            }
        }
    }
}

/// Checks that each part that is slid on stands once, on one end of the joint, and that no body and no seal is forgotten.
fn slides(plan: &Plan, order: &Order) {
    let ends: Vec<String> = plan
        .legs
        .iter()
        .flat_map(|leg| {
            leg.ends
                .iter()
                .map(|end| format!("{}{}", leg.mark, end.phase))
        })
        .collect();
    let all: Vec<_> = plan.make_up.steps.iter().flat_map(|s| &s.slides).collect();
    let mut seen = BTreeSet::new();
    for slide in &all {
        assert!(ends.contains(&slide.onto), "{slide:?}");
        assert!(
            seen.insert((&slide.part, &slide.id, &slide.of)),
            "twice: {slide:?}"
        );
    }
    let n_parking = order.job.legs.iter().filter(|l| l.parks).count();
    let is_separable = order.job.kind == JointKind::Separable;
    for phase in 1..=order.job.phases {
        let bodies = all
            .iter()
            .filter(|s| s.part == PartKind::Body && s.onto.ends_with(&phase.to_string()))
            .count();
        let named = order.job.legs.iter().filter(|l| l.parts.body.is_some());
        let expected = if is_separable {
            named.count()
        } else {
            usize::from(n_parking == 1 && named.count() > 0)
        };
        assert_eq!(bodies, expected, "bodies of phase {phase}");
        for leg in &order.job.legs {
            let seals = all
                .iter()
                .filter(|s| s.part == PartKind::Seal && s.onto == format!("{}{phase}", leg.id))
                .count();
            assert_eq!(seals, usize::from(leg.parts.seal.is_some()));
        }
    }
    let mut unsettled = plan.make_up.unsettled.iter();
    assert_eq!(
        unsettled.any(|s| s.contains("to park the")),
        !is_separable && n_parking != 1,
        "{:?}",
        plan.make_up.unsettled
    );
}

/// Checks that every hold point has a reading, and each reading a window or a reason why it has none.
fn holds(plan: &Plan) -> usize {
    let mut n_windows = 0;
    for step in &plan.make_up.steps {
        for wanted in &step.hold {
            assert!(!wanted.what.is_empty());
            assert!(
                !wanted.whose.is_empty(),
                "{}: {} says neither whose window nor why there is none",
                step.id,
                wanted.what
            );
            n_windows += usize::from(wanted.window.as_ref().is_some_and(|w| !w.is_empty()));
        }
    }
    for stage in [
        "hand-over",
        "measure",
        "square",
        "jacket",
        "shield",
        "screen",
        "insulation",
        "phasing",
        "connect",
        "clean",
        "place",
        "bond",
        "bond-check",
        "bridge-off",
        "seal",
    ] {
        let mut of_stage = plan
            .make_up
            .steps
            .iter()
            .filter(|s| s.stage.name() == stage);
        assert!(
            of_stage.all(|s| !s.hold.is_empty()),
            "{stage} is no hold point"
        );
    }
    n_windows
}

#[test]
fn no_order_of_any_case_or_example_breaks_a_precondition() {
    let mut n_states = 0;
    for case in everything() {
        let order = case.order();
        let plan = planned(&order);
        n_states += explore(&plan.make_up.steps, order.job.kind)
            .unwrap_or_else(|why| panic!("{}: {why}", case.slug));
        printed_order(&plan, &order);
        slides(&plan, &order);
        assert!(holds(&plan) > 5, "{}", case.slug);
    }
    assert!(n_states > 1000, "{n_states} states were walked");
}

/// Own steps of a body at random stages, each after some of those before it.
fn own_steps() -> impl Strategy<Value = Vec<InstructionStep>> {
    let stages: Vec<Option<Stage>> = Stage::ALL
        .iter()
        .copied()
        .filter(|s| !matches!(s, Stage::HandOver | Stage::HandBack))
        .map(Some)
        .chain([None])
        .collect();
    let step = (
        prop::sample::select(stages),
        any::<bool>(),
        prop::collection::vec(any::<prop::sample::Index>(), 0..3),
    );
    prop::collection::vec(step, 0..7).prop_map(|steps| {
        let id = |at: usize| format!("s{at}");
        steps
            .into_iter()
            .enumerate()
            .map(|(at, (stage, hold, after))| InstructionStep {
                id: Some(id(at)),
                say: format!("Own step {at}."),
                after: if at == 0 {
                    Vec::new()
                } else {
                    after.iter().map(|index| id(index.index(at))).collect()
                },
                caution: None,
                hold,
                stage,
                metals: Vec::new(),
            })
            .collect()
    })
}

#[test]
fn no_order_of_a_random_job_breaks_a_precondition() {
    let slugs: Vec<&str> = everything().map(|case| case.slug).collect();
    let input = (
        prop::sample::select(slugs),
        own_steps(),
        prop::collection::vec(any::<bool>(), 6),
        prop::collection::vec(any::<bool>(), 6),
    );
    let (mut n_settled, mut n_clashes) = (0, 0);
    let config = Config {
        cases: 200,
        rng_seed: RngSeed::Fixed(20_260_309),
        failure_persistence: None,
        ..Config::default()
    };
    let mut runner = TestRunner::new(config);
    let strategy = input;
    for _ in 0..200 {
        let (slug, steps, parks, sealed) = strategy.new_tree(&mut runner).expect("a job").current();
        let mut order = order_of(slug);
        for body in &mut order.catalogue.bodies {
            body.head.steps.clone_from(&steps);
        }
        let legs = order.job.legs.iter_mut();
        for (leg, (parks, sealed)) in legs.zip(parks.iter().zip(&sealed)) {
            leg.parks = *parks;
            if !sealed {
                leg.parts.seal = None;
            }
        }
        let Ok(judged) = judge(&order) else { continue };
        let plan = plan(&judged);
        explore(&plan.make_up.steps, order.job.kind).unwrap_or_else(|why| panic!("{slug}: {why}"));
        printed_order(&plan, &order);
        holds(&plan);
        if clashes(&plan) {
            n_clashes += 1;
        } else {
            slides(&plan, &order);
            n_settled += 1;
        }
    }
    assert!(
        n_settled > 50 && n_clashes > 10,
        "{n_settled} settled, {n_clashes} clashed"
    );
}

#[test]
fn a_step_that_waits_for_nothing_is_found_out() {
    let order = order_of("straight-wires-growth-measured");
    let steps = planned(&order).make_up.steps;
    for stage in [
        "jacket",
        "shield",
        "screen",
        "connect",
        "place",
        "bond",
        "seal",
        "hand-back",
    ] {
        let mut loose = steps.clone();
        for step in loose.iter_mut().filter(|s| s.stage.name() == stage) {
            step.after.clear();
        }
        assert!(explore(&loose, order.job.kind).is_err(), "{stage}");
    }
    assert!(explore(&steps, order.job.kind).is_ok());
}

#[test]
fn a_row_whose_steps_stand_against_the_preconditions_is_named_and_settled_by_a_person() {
    let mut order = order_of("straight-wires-growth-measured");
    let own = |id: &str, stage: Stage, after: &[&str]| InstructionStep {
        id: Some(id.to_owned()),
        say: format!("Own {id}."),
        after: after.iter().map(|s| (*s).to_owned()).collect(),
        caution: None,
        hold: false,
        stage: Some(stage),
        metals: Vec::new(),
    };
    for body in &mut order.catalogue.bodies {
        body.head.steps = vec![
            own("press", Stage::Connect, &[]),
            own("park", Stage::SlideOn, &["press"]),
        ];
    }
    let plan = planned(&order);
    assert_eq!(
        plan.make_up.unsettled.len(),
        1,
        "{:?}",
        plan.make_up.unsettled
    );
    assert!(plan.make_up.unsettled[0].contains("wants `Make the connector` before"));
    assert!(explore(&plan.make_up.steps, order.job.kind).is_ok());
}

#[test]
fn instructions_that_clean_before_the_connector_are_followed() {
    let mut order = order_of("straight-wires-growth-measured");
    for body in &mut order.catalogue.bodies {
        body.head.steps = vec![
            InstructionStep {
                id: Some("wipe".to_owned()),
                say: "Own wipe.".to_owned(),
                after: Vec::new(),
                caution: None,
                hold: false,
                stage: Some(Stage::Clean),
                metals: Vec::new(),
            },
            InstructionStep {
                id: Some("press".to_owned()),
                say: "Own press.".to_owned(),
                after: vec!["wipe".to_owned()],
                caution: None,
                hold: true,
                stage: Some(Stage::Connect),
                metals: Vec::new(),
            },
        ];
    }
    let steps = planned(&order).make_up.steps;
    let place = |stage: &str| steps.iter().rposition(|s| s.stage.name() == stage);
    assert!(place("clean") < place("connect"));
    assert!(explore(&steps, order.job.kind).is_ok());
}

#[test]
fn where_a_row_has_no_step_the_crew_is_sent_to_its_paper() {
    let plan = named("straight-wires-growth-measured").plan();
    let connect = plan
        .make_up
        .steps
        .iter()
        .find(|s| s.stage == Stage::Bond)
        .expect("a step");
    assert!(
        connect
            .lines
            .iter()
            .any(|l| l.say.ends_with("see the instructions.") && l.source.contains("revision")),
        "{:?}",
        connect.lines
    );
}

#[test]
fn no_case_or_example_with_an_owners_word_leaves_its_steps_unsettled() {
    for case in everything() {
        let order = case.order();
        let unsettled = planned(&order).make_up.unsettled;
        let asks_of_bridge = unsettled.iter().any(|s| s.contains("the bridge comes off"));
        assert_eq!(
            asks_of_bridge,
            order.job.bridge_off.is_none(),
            "{}: {unsettled:?}",
            case.slug
        );
        assert!(unsettled.len() <= 1, "{}: {unsettled:?}", case.slug);
    }
}
