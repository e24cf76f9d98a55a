//! Steps and front page agree: a step refers to the growth ladder only if the front page of that leg shows one.

use super::{order_of, planned};
use crate::cases::everything;
use jointwright_joint::cable::Words;
use jointwright_joint::catalogue::LinkRow;
use jointwright_joint::job::Order;
use jointwright_joint::judge::judge_unsolved as judge;
use jointwright_joint::plan::Plan;
use jointwright_joint::plane::Plane;
use jointwright_wording::{Tongue, plan};
use proptest::prelude::*;

const US: Tongue = Tongue::english(Words::Us);

/// Number of legs that show a ladder, if no step contradicts its front page.
#[track_caller]
fn agree(plan: &Plan, what: &str) -> usize {
    let mut n = 0;
    for leg in &plan.legs {
        let shows: Vec<&str> = leg
            .cuts
            .iter()
            .filter(|cut| !cut.growth_ladder.is_empty())
            .map(|cut| cut.words.as_str())
            .collect();
        let steps = plan
            .make_up
            .steps
            .iter()
            .filter(|s| s.legs.contains(&leg.mark));
        let said: Vec<&str> = steps
            .flat_map(|s| &s.lines)
            .map(|l| l.say.as_str())
            .filter(|say| say.contains("ladder") && say.contains(&format!("Leg {}:", leg.mark)))
            .collect();
        assert_eq!(
            said.is_empty(),
            shows.is_empty(),
            "{what}, leg {}: {said:?}",
            leg.mark
        );
        assert!(
            shows
                .iter()
                .all(|words| said.iter().any(|s| s.contains(words))),
            "{said:?}"
        );
        for cut in &leg.cuts {
            // A number or a ladder, never both.
            assert!(
                cut.growth_ladder.is_empty() || cut.mark_mm.is_none(),
                "{what}: {}",
                cut.plane.name()
            );
            for step in plan
                .make_up
                .steps
                .iter()
                .filter(|s| s.legs == [leg.mark.as_str()])
            {
                let name = format!("{} on leg {}", cut.words, leg.mark);
                for wanted in step.hold.iter().filter(|w| w.what == name) {
                    let window = cut.printed_window.as_ref().map(|w| US.window(w));
                    let to_ladder = wanted.window.as_ref().is_some_and(|w| w.contains("ladder"));
                    assert_eq!(to_ladder, !cut.growth_ladder.is_empty(), "{what}: {name}");
                    assert!(
                        to_ladder || wanted.window == window,
                        "{what}: {name}: {wanted:?}"
                    );
                }
            }
        }
        n += usize::from(!shows.is_empty());
    }
    n
}

/// The insulation end measured from the conductor end, so that no growth moves it.
fn from_conductor_end(order: &mut Order) {
    for body in &mut order.catalogue.bodies {
        for link in &mut body.links {
            if (link.from, link.to) == (Plane::ConnectorMouth, Plane::InsulationEnd) {
                link.from = Plane::ConductorEnd;
            }
        }
    }
}

#[test]
fn a_leg_with_a_number_is_not_sent_to_a_ladder_though_its_growth_is_not_measured() {
    let mut order = order_of("straight-tape-growth-unknown");
    assert_eq!(agree(&planned(&order), "as it is"), 2);
    from_conductor_end(&mut order);
    let plan = planned(&order);
    assert_eq!(agree(&plan, "from the conductor end"), 0);
    for leg in &plan.legs {
        let cut = leg
            .cuts
            .iter()
            .find(|c| c.plane == Plane::InsulationEnd)
            .expect("a cut");
        assert!(cut.mark_mm.is_some() && cut.growth_ladder.is_empty());
    }
}

#[test]
fn a_ladder_is_named_only_where_the_front_page_shows_one_in_every_case() {
    let n: usize = everything()
        .map(|case| agree(&case.plan(), case.slug))
        .sum();
    assert!(n >= 2, "{n} legs with a ladder");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, ..ProptestConfig::default() })]

    #[test]
    fn a_ladder_is_named_only_where_the_front_page_shows_one_in_random_jobs(
        case in prop::sample::select(everything().map(|c| c.slug).collect::<Vec<_>>()),
        is_pressed in any::<bool>(),
        is_loose in any::<bool>(),
        drop in prop::collection::vec(any::<bool>(), 40),
    ) {
        let mut order = order_of(case);
        if !is_pressed {
            order.job.trial_presses.clear();
        }
        if is_loose {
            from_conductor_end(&mut order);
        }
        // Some links left out: some places are then not known.
        let mut at = 0;
        let mut keep = |_: &LinkRow| {
            at += 1;
            !drop[at % drop.len()]
        };
        for body in &mut order.catalogue.bodies {
            body.links.retain(&mut keep);
        }
        for seal in &mut order.catalogue.seals {
            seal.links.retain(&mut keep);
        }
        if let Ok(judged) = judge(&order) {
            agree(&plan(&judged), case);
        }
    }
}
