//! Adapter: its end is measured when it comes on, before the body covers it.

use crate::cases::named;
use jointwright_joint::judge::judge_unsolved;
use jointwright_joint::plan::StepDoc;
use jointwright_joint::plane::Plane;
use jointwright_joint::stage::Stage;
use jointwright_wording::plan;

/// Steps of the three-way joint, with the adapter's placing window left out or not.
fn steps(has_window: bool) -> Vec<StepDoc> {
    let mut order = named("larkspur-three-way").order();
    for adapter in &mut order.catalogue.adapters {
        for link in adapter
            .links
            .iter_mut()
            .filter(|l| l.to == Plane::AdapterNear)
        {
            link.tolerance = link.tolerance.filter(|_| has_window);
        }
    }
    let judged = judge_unsolved(&order).expect("the rows agree");
    plan(&judged).make_up.steps
}

/// Window of the adapter's reading, with its source or the reason why there is none.
fn reading(steps: &[StepDoc]) -> (Option<String>, String) {
    let mut of_leg = steps
        .iter()
        .filter(|step| step.stage == Stage::PushOn && step.legs == ["B"]);
    let step = of_leg.next().expect("the adapter is pushed on");
    let mut wanted = step.hold.iter().filter(|w| w.what.contains("adapter"));
    let wanted = wanted.next().expect("its end is read");
    (wanted.window.clone(), wanted.whose.clone())
}

#[test]
fn the_end_of_an_adapter_is_read_against_its_own_row_when_it_comes_on() {
    let (window, whose) = reading(&steps(true));
    // 4 mm, 2 mm either way, in sixty-fourths inward: 5.04 and 15.1.
    assert_eq!(
        window.as_deref(),
        Some("3/32 in (2.0 mm) to 15/64 in (6.0 mm)")
    );
    assert!(whose.contains("DA-24"), "{whose}");
    let (window, why) = reading(&steps(false));
    assert_eq!(window, None);
    assert!(why.contains("(4.0 mm) and no window"), "{why}");
}

#[test]
fn its_minutes_are_counted_from_the_step_in_which_it_is_placed() {
    let steps = steps(true);
    let timed: Vec<Stage> = steps
        .iter()
        .filter(|step| {
            let mut said = step.lines.iter();
            said.any(|line| {
                line.say
                    .contains("demo-adapter-24 may be moved for 10 minutes")
            })
        })
        .map(|step| step.stage)
        .collect();
    assert_eq!(timed, [Stage::PushOn]);
}
