//! The tapered plug of separable legs, from the catalogue to the ruling.

use crate::cases::{accepted, named, read};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::judge::judge;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::StateDoc;
use jointwright_joint::plan::{Plan, PlugDoc};
use jointwright_wording::plan;

/// The three-way example with passages of its job and of its parts replaced.
fn planned(job: &[(&str, &str)], parts: &[(&str, &str)]) -> Plan {
    let edited = |text: &str, edits: &[(&str, &str)]| {
        let mut text = text.to_owned();
        for (passage, other) in edits {
            assert!(text.contains(passage), "no passage {passage}");
            text = text.replace(passage, other);
        }
        text
    };
    let job = edited(named("larkspur-three-way").job, job);
    let catalogue = (DEMONSTRATION.to_owned(), edited(DEMONSTRATION_TEXT, parts));
    let order = accepted(read(&job, &[catalogue]), "the three-way example");
    plan(&accepted(judge(&order), "the three-way example"))
}

fn plug(plan: &Plan) -> &PlugDoc {
    let field = plan.legs[0].field.as_ref().expect("leg A has a body");
    field.plug.as_ref().expect("it is plugged")
}

fn inception_kv(plan: &Plan, state: &str) -> f64 {
    let gaps = &plug(plan).gaps;
    let gap = gaps.iter().find(|gap| gap.state.word() == state);
    gap.expect("the film is drawn").inception_kv
}

/// Reasons why the film fails on leg A.
fn fails(plan: &Plan) -> Vec<&str> {
    plan.rulings
        .iter()
        .filter(|r| r.check == "gap_discharge" && r.leg.as_deref() == Some("A"))
        .filter(|r| r.ruling == Outcome::Fail)
        .filter_map(|r| r.why.as_deref())
        .filter(|why| why.contains("film along the tapered plug"))
        .collect()
}

const NOT_PERMANENT: &str =
    "filler = \"invented grease\"\nfiller_permittivity = 3.0\nfiller_permanent = false";

#[test]
fn the_plug_of_the_example_is_solved_for_every_leg() {
    let plan = planned(&[], &[]);
    for leg in &plan.legs {
        let plug = leg.field.as_ref().and_then(|field| field.plug.as_ref());
        let plug = plug.expect("it is plugged");
        assert_eq!((plug.state.words(), plug.stresses.len()), ("computed", 4));
    }
    assert!(fails(&plan).is_empty());
    assert!(!plan.missing.iter().any(|what| what.contains("plug")));
}

#[test]
fn a_film_without_its_grease_discharges_before_one_with_it() {
    let plan = planned(&[], &[]);
    let (filled, empty) = (inception_kv(&plan, "filled"), inception_kv(&plan, "empty"));
    assert!(filled > 1.2 * empty, "{filled} {empty}");
    // A system whose voltage to earth lies between three quarters of the two: only a permanent filler keeps it from failing.
    let to_earth = 50.0 / 3.0_f64.sqrt();
    assert!(0.75 * empty < to_earth && to_earth < 0.75 * filled);
    let job = [("highest = \"14.5 kV\"", "highest = \"50 kV\"")];
    let rated = "system_greatest = \"15.5 kV\"";
    let parts = [(rated, "system_greatest = \"50 kV\"")];
    let passing = planned(&job, &parts);
    assert!(fails(&passing).iter().any(|why| why.contains("extinction")));
    let permanent = NOT_PERMANENT.replace("false", "true");
    let parts = [parts[0], (NOT_PERMANENT, permanent.as_str())];
    assert_eq!(fails(&planned(&job, &parts)), Vec::<&str>::new());
}

#[test]
fn a_plug_that_is_not_known_is_asked_for() {
    let at = DEMONSTRATION_TEXT
        .find("[body.taper]")
        .expect("it is there");
    let end = at
        + DEMONSTRATION_TEXT[at..]
            .find("[[body]]")
            .expect("another body");
    let plan = planned(&[], &[(&DEMONSTRATION_TEXT[at..end], "")]);
    assert_eq!(plug(&plan).state, StateDoc::NotKnown);
    assert!(!plug(&plan).questions.is_empty());
    let open: Vec<&str> = plan
        .rulings
        .iter()
        .filter(|r| r.check == "interface_stress" && r.ruling == Outcome::NotJudged)
        .filter_map(|r| r.why.as_deref())
        .collect();
    assert_eq!(open.len(), 3, "{open:?}");
    assert!(open.iter().all(|why| why.starts_with("tapered plug:")));
    assert!(
        plan.missing
            .iter()
            .any(|what| what.contains("tapered plug of A B C: "))
    );
}
