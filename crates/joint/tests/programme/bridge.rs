//! The bridge of the metallic shield: on before the shield is cut, off by somebody's word, never under a seal.

use super::joint::ancestors;
use super::{order_of, planned};
use crate::cases::everything;
use jointwright_joint::catalogue::BridgeMoment;
use jointwright_joint::job::{BridgeOff, Order};
use jointwright_joint::plan::StepDoc;
use jointwright_joint::stage::Stage;

const AFTER: BridgeMoment = BridgeMoment::AfterBondIsMeasured;
const BEFORE: BridgeMoment = BridgeMoment::BeforeBondIsMeasured;

/// A joint with a statement of the owner and of the rows of its shield parts only.
fn asked(owner: Option<BridgeMoment>, row: Option<BridgeMoment>) -> Order {
    let mut order = order_of("larkspur-three-way");
    order.job.bridge_off = owner.map(|when| BridgeOff {
        when,
        source: "Ines Calloway, 2026-03-02".to_owned(),
    });
    for part in &mut order.catalogue.shield_parts {
        part.bridge_off = row;
    }
    order
}

/// Whether `later` waits for `earlier` in every order.
fn waits(steps: &[StepDoc], later: &str, earlier: &str) -> bool {
    let place = |stage: &str| {
        steps
            .iter()
            .position(|s| s.stage.name() == stage)
            .expect(stage)
    };
    ancestors(steps)[place(later)].contains(&place(earlier))
}

#[test]
fn the_bridge_comes_off_when_the_owner_or_the_paper_says() {
    for (owner, row) in [
        (Some(AFTER), None),
        (None, Some(AFTER)),
        (Some(AFTER), Some(AFTER)),
    ] {
        let make_up = planned(&asked(owner, row)).make_up;
        assert!(waits(&make_up.steps, "bridge-off", "bond-check"));
        assert_eq!(make_up.unsettled, [""; 0]);
    }
    let make_up = planned(&asked(Some(BEFORE), None)).make_up;
    assert!(waits(&make_up.steps, "bond-check", "bridge-off"));
    assert_eq!(make_up.unsettled, [""; 0]);
}

#[test]
fn without_a_word_or_with_two_the_step_asks_whom_to_call_and_the_bridge_stays_on() {
    for (owner, row) in [(None, None), (Some(BEFORE), Some(AFTER))] {
        let plan = planned(&asked(owner, row));
        let step = plan
            .make_up
            .steps
            .iter()
            .find(|s| s.stage == Stage::BridgeOff);
        let step = step.expect("a step");
        let call = &plan.job.stop_and_call;
        let asks = |say: &str| say.contains(&call.name) && say.contains(&call.number);
        assert!(
            step.lines.iter().any(|l| l.say.starts_with("ASK")
                && asks(&l.say)
                && l.say.contains("It stays on until")),
            "{:?}",
            step.lines
        );
        assert_eq!(plan.make_up.unsettled.len(), 1);
        assert!(
            asks(&plan.make_up.unsettled[0]),
            "{:?}",
            plan.make_up.unsettled
        );
        // No seal closes over it, however.
        assert!(waits(&plan.make_up.steps, "seal", "bridge-off"));
    }
}

#[test]
fn whose_word_it_is_stands_beside_the_step_and_is_written_down_on_the_spot() {
    for case in everything() {
        let order = case.order();
        let steps = planned(&order).make_up.steps;
        let step = steps
            .iter()
            .find(|s| s.stage == Stage::BridgeOff)
            .expect("a step");
        if let Some(word) = &order.job.bridge_off {
            assert!(
                step.lines.iter().any(|l| l.source.contains(&word.source)),
                "{}: {:?}",
                case.slug,
                step.lines
            );
        }
        assert!(step.hold.iter().any(|w| w.what.starts_with("who said")));
        let mut cautions = step.cautions.iter();
        assert!(cautions.any(|c| {
            c.say
                .contains("in doubt about any of it the bridge stays on")
        }));
    }
}

#[test]
fn issue_16_a_bond_is_not_read_across_the_bridge_without_a_word() {
    // The bridge beside an open bond makes the reading look good.
    let warns = |owner: Option<BridgeMoment>| {
        let make_up = planned(&asked(owner, None)).make_up;
        let check = make_up.steps.iter().find(|s| s.stage == Stage::BondCheck);
        let lines = &check.expect("the bond is measured").lines;
        lines.iter().any(|l| l.say.contains("beside the bond"))
    };
    assert!(warns(Some(AFTER)) && warns(None));
    assert!(!warns(Some(BEFORE)));
}

#[test]
fn issue_16_the_square_cut_is_held_for_bridge_and_moisture_and_the_tags_stay() {
    let make_up = planned(&asked(Some(AFTER), None)).make_up;
    for step in make_up.steps.iter().filter(|s| s.stage == Stage::Square) {
        let held = |what: &str| step.hold.iter().any(|h| h.what.contains(what));
        assert!(held("bridge of the") && held("strands of leg"), "{step:?}");
        let before = step.lines.iter().position(|l| l.say.contains("that stays"));
        let after = step
            .lines
            .iter()
            .position(|l| l.say.starts_with("After the cut"));
        assert!(before.expect("tags") < after.expect("tests"), "{step:?}");
    }
}

#[test]
fn issue_16_a_hold_of_a_paper_stands_beside_those_of_its_step() {
    let make_up = planned(&asked(Some(AFTER), None)).make_up;
    let own = "Check the dimensions before the bolts are sheared.";
    let mut n = 0;
    for step in make_up.steps.iter().filter(|s| s.stage == Stage::Connect) {
        if step.lines.iter().any(|l| l.say.contains(own)) {
            assert!(step.hold.iter().any(|h| h.what.contains(own)), "{step:?}");
            n += 1;
        }
    }
    assert!(n >= 2, "{n} steps");
}

#[test]
fn issue_16_a_paper_s_own_words_stand_in_quotation_marks() {
    let make_up = planned(&asked(Some(AFTER), None)).make_up;
    let lines = make_up.steps.iter().flat_map(|s| &s.lines);
    let pushes: Vec<_> = lines.filter(|l| l.say.contains("turning motion")).collect();
    assert!(!pushes.is_empty());
    for line in pushes {
        assert!(
            line.say.starts_with('“') && line.say.ends_with('”'),
            "{line:?}"
        );
    }
}
