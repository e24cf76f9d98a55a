//! The moment at which each part comes over its end: a part that passes over the jacket is parked, another part is pushed on after the cleaning.

use super::joint::ancestors;
use super::{order_of, planned};
use crate::cases::everything;
use jointwright_joint::cable::Layer;
use jointwright_joint::catalogue::{Fits, MayMove};
use jointwright_joint::end::EndId;
use jointwright_joint::job::Order;
use jointwright_joint::plan::{Plan, StepDoc};
use jointwright_joint::stage::Stage;
use jointwright_units::Length;

/// Greatest reading over the jacket of a leg, with its error; `None` if an end was not read.
fn jacket(order: &Order, leg: &str) -> Option<Length> {
    let of_end = |phase: u8| {
        let read = order.job.readings.of(&EndId::new(leg, phase)).iter();
        let read = read.filter(|r| r.over == Layer::Jacket);
        read.flat_map(|r| r.values.iter().map(|v| *v + r.error))
            .max()
    };
    let ends: Option<Vec<Length>> = (1..=order.job.phases).map(of_end).collect();
    ends?.into_iter().max()
}

/// Whether a row says that its part stands expanded, and its narrowest range.
fn row<'o>(order: &'o Order, part: &str, id: &str) -> (bool, &'o [Fits]) {
    let c = &order.catalogue;
    let (head, may_move, fits) = match part {
        "body" => c.body(id).map(|p| (&p.head, &p.may_move, &p.fits)),
        "adapter" => c.adapter(id).map(|p| (&p.head, &p.may_move, &p.fits)),
        "seal" => c.seal(id).map(|p| (&p.head, &p.may_move, &p.fits)),
        other => panic!("{other} is no part that is slid on"),
    }
    .expect("a row");
    let is_expanded = *may_move == Some(MayMove::BeforeHoldoutIsOut)
        || head.shelf.as_ref().is_some_and(|s| s.from == "expanded");
    (is_expanded, fits)
}

/// Steps at which a part of a kind comes on, on any leg.
fn coming<'p>(plan: &'p Plan, part: &str) -> Vec<&'p StepDoc> {
    let steps = plan.make_up.steps.iter();
    steps
        .filter(|s| s.slides.iter().any(|slide| slide.part.name() == part))
        .collect()
}

#[test]
fn what_does_not_pass_the_jacket_comes_on_after_its_end_is_clean() {
    let mut n_late = 0;
    for case in everything() {
        let order = case.order();
        let steps = planned(&order).make_up.steps;
        let before = ancestors(&steps);
        for (at, step) in steps.iter().enumerate() {
            for slide in &step.slides {
                let leg = slide.onto.trim_end_matches(char::is_numeric);
                let is_clean = before[at].iter().any(|b| {
                    steps[*b].stage == Stage::Clean && steps[*b].legs.iter().any(|l| l == leg)
                });
                let (is_expanded, fits) = row(&order, slide.part.name(), &slide.id);
                let narrowest = fits.iter().map(|f| f.range.greatest()).min();
                let passes = is_expanded
                    || jacket(&order, leg)
                        .zip(narrowest)
                        .is_none_or(|(j, n)| j <= n);
                assert!(
                    passes || is_clean,
                    "{}: {slide:?} at {}",
                    case.slug,
                    step.id
                );
                n_late += usize::from(!passes);
            }
        }
    }
    assert!(n_late > 20, "{n_late} parts that do not pass");
}

#[test]
fn a_push_on_body_whose_mouth_is_narrower_than_the_jacket_is_not_slid_on_first() {
    let order = order_of("larkspur-three-way");
    let plan = planned(&order);
    let stages: Vec<&str> = coming(&plan, "body")
        .iter()
        .map(|s| s.stage.name())
        .collect();
    assert_eq!(stages, ["place"; 3]);
}

#[test]
fn one_that_passes_and_whose_paper_is_silent_may_park() {
    let mut order = order_of("larkspur-three-way");
    for body in &mut order.catalogue.bodies {
        body.passes = Some(Length::from_nm(60_000_000));
        body.head.steps.clear();
    }
    let stages: Vec<Stage> = coming(&planned(&order), "body")
        .iter()
        .map(|s| s.stage)
        .collect();
    assert_eq!(stages, [Stage::SlideOn; 3]);
}

#[test]
fn an_adapter_that_its_contact_bars_is_on_before_the_contact() {
    // Bore 27.5 mm at most, contact 30 mm.
    let order = order_of("larkspur-three-way");
    let plan = planned(&order);
    let adapter = coming(&plan, "adapter");
    assert_eq!(adapter.len(), 1);
    assert_eq!(
        (adapter[0].stage.name(), adapter[0].id.as_str()),
        ("push-on", "B push-on")
    );
    let steps = &plan.make_up.steps;
    let before = ancestors(steps);
    let connect = steps
        .iter()
        .position(|s| s.id == "B connect")
        .expect("a step");
    let push = steps
        .iter()
        .position(|s| s.id == "B push-on")
        .expect("a step");
    assert!(before[connect].contains(&push));
    let place = steps.iter().find(|s| s.id == "B place").expect("a step");
    assert!(
        place.lines.iter().any(|l| l.say.contains("wipe it again")),
        "{:?}",
        place.lines
    );
}

#[test]
fn one_over_which_the_adapter_passes_lets_it_wait() {
    let mut order = order_of("larkspur-three-way");
    for connector in &mut order.catalogue.connectors {
        connector.outside_diameter = Length::from_nm(20_000_000);
    }
    let plan = planned(&order);
    let adapter = coming(&plan, "adapter");
    assert_eq!(adapter[0].id, "B place");
    let parts: Vec<&str> = adapter[0].slides.iter().map(|s| s.part.name()).collect();
    let first_body = parts.iter().position(|p| *p == "body");
    let last_adapter = parts.iter().rposition(|p| *p == "adapter");
    assert!(last_adapter < first_body, "from the inside out: {parts:?}");
}

#[test]
fn a_row_that_has_it_slid_on_first_against_its_own_mouth_is_named() {
    let mut order = order_of("larkspur-three-way");
    for body in &mut order.catalogue.bodies {
        for step in &mut body.head.steps {
            step.stage = Some(jointwright_joint::stage::Stage::SlideOn);
            step.after.clear();
        }
    }
    let unsettled = planned(&order).make_up.unsettled;
    assert!(
        unsettled
            .iter()
            .any(|s| s
                .starts_with("demo-leg-body-15 is slid on before the connector by its own paper")),
        "{unsettled:?}"
    );
}

#[test]
fn a_row_that_does_not_say_how_it_goes_on_is_asked() {
    let mut order = order_of("larkspur-three-way");
    for body in &mut order.catalogue.bodies {
        body.goes_on = None;
        body.may_move = None;
        body.rubber = None;
        body.head.shelf = None;
        body.head.steps.clear();
    }
    let unsettled = planned(&order).make_up.unsettled;
    assert!(
        unsettled.iter().any(|s| s.contains("`goes_on`")),
        "{unsettled:?}"
    );
}
