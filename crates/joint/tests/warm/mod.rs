//! Temperatures under load through the whole chain: job, rows, surroundings, ladder, ruling.
//!
//! The joint is the example `dock-straight-pressed`: 350 kcmil copper, two legs, still air and a duct bank, all invented.

mod by_hand;
mod cable_run;
mod run_refused;
mod surroundings;
mod unknown;
mod whence;

use crate::cases::{accepted, named, read};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::job::Order;
use jointwright_joint::judge::judge;
use jointwright_joint::plan::LimitOf;
use jointwright_joint::plan::{LegWarmDoc, Plan, WarmDoc};
use jointwright_joint::warm::{Warm, WarmJoint};
use jointwright_wording::{plan, rate};

pub const DOCK: &str = "dock-straight-pressed";
const CHECKS: [&str; 3] = [
    "joint_load_heat",
    "joint_emergency_heat",
    "service_temperature",
];

/// Passages and their replacements, everywhere; each passage must be there.
pub type Edits<'a> = &'a [(&'a str, &'a str)];

#[track_caller]
fn edited(text: &str, edits: Edits<'_>) -> String {
    edits.iter().fold(text.to_owned(), |text, (from, to)| {
        assert!(text.contains(from), "no passage {from}");
        text.replace(from, to)
    })
}

#[track_caller]
pub fn order(example: &str, of_job: Edits<'_>, of_rows: Edits<'_>) -> Order {
    let job = edited(named(example).job, of_job);
    let rows = edited(DEMONSTRATION_TEXT, of_rows);
    // A copy of the demonstration's file under its own name.
    let catalogues = [(DEMONSTRATION.to_owned(), rows)];
    accepted(read(&job, &catalogues), example)
}

#[track_caller]
pub fn planned(of_job: Edits<'_>, of_rows: Edits<'_>) -> Plan {
    plan(&accepted(judge(&order(DOCK, of_job, of_rows)), DOCK))
}

#[track_caller]
pub fn warm(plan: &Plan) -> &WarmDoc {
    plan.warm.as_ref().expect("it was asked for")
}

#[track_caller]
pub fn leg<'p>(plan: &'p Plan, name: &str) -> &'p LegWarmDoc {
    let legs = &warm(plan).legs;
    legs.iter().find(|leg| leg.leg == name).expect("the leg")
}

/// Solved model for a closure, which can ask it for more.
#[track_caller]
pub fn with_done<T>(order: &Order, ask: impl FnOnce(&WarmJoint) -> T) -> T {
    let judged = accepted(judge(order), "the joint");
    match judged.inputs.warm.as_ref() {
        Warm::Done(done) => ask(done),
        other => panic!("not solved: {other:?}"),
    }
}

/// Worst ruling of a check.
pub fn worst(plan: &Plan, check: &str) -> &'static str {
    let of_check = || plan.rulings.iter().filter(|r| r.check == check);
    let has = |word: &&str| of_check().any(|r| r.ruling.name() == *word);
    ["fail", "not-judged", "pass"]
        .into_iter()
        .find(|word| has(word))
        .unwrap_or("silent")
}

#[track_caller]
fn check(of_job: Edits<'_>, of_rows: Edits<'_>, slug: &str, expected: &str) {
    let plan = planned(of_job, of_rows);
    assert_eq!(
        worst(&plan, slug),
        expected,
        "{slug} {of_job:?} {of_rows:?}"
    );
}

/// 95 degC by the body's paper: leg B, its shield still with 12 A, reaches it with 588 A; a hundredth of the rise, 0.65 K or 2.4 A, is the ladder's own error.
#[test]
fn the_load_all_the_time_is_held_against_the_body_s_own_limit() {
    let load = |load: &str, expected: &str| {
        let load = format!("\nload = \"{load}\"");
        check(
            &[
                ("\nload = \"320 A\"", &load),
                ("\nemergency = \"420 A\"", "\nemergency = \"800 A\""),
            ],
            &[],
            "joint_load_heat",
            expected,
        );
    };
    load("584 A", "pass");
    load("587 A", "not-judged");
    load("592 A", "fail");
    // The same load with another limit; a cable that permits more changes nothing.
    let limit = |degc: &str| {
        let limit = format!("conductor_greatest = \"{degc} degC\"\nconductor_emergency");
        planned(
            &[(
                "conductor_greatest = \"130 degC\"",
                "conductor_greatest = \"250 degC\"",
            )],
            &[(
                "conductor_greatest = \"95 degC\"\nconductor_emergency",
                &limit,
            )],
        )
    };
    assert_eq!(worst(&limit("48"), "joint_load_heat"), "pass");
    assert_eq!(worst(&limit("46"), "joint_load_heat"), "fail");
}

#[test]
fn an_emergency_is_held_against_the_body_s_own_limit_at_its_end() {
    let emergency = |load: &str, time: &str| {
        let emergency = format!("\nemergency = \"{load}\"\nemergency_time = \"{time}\"");
        let plan = planned(
            &[(
                "\nemergency = \"420 A\"\nemergency_time = \"4 h\"",
                &emergency,
            )],
            &[],
        );
        worst(&plan, "joint_emergency_heat")
    };
    assert_eq!(emergency("700 A", "1 h"), "pass");
    assert_eq!(emergency("700 A", "4 h"), "fail");
    assert_eq!(emergency("900 A", "20 min"), "pass");
    assert_eq!(emergency("900 A", "1 h"), "fail");
    check(
        &[("\nemergency_time = \"4 h\"", "")],
        &[],
        "joint_emergency_heat",
        "not-judged",
    );
}

#[test]
fn a_joint_that_warms_without_end_fails() {
    let more = [
        ("\nload = \"320 A\"", "\nload = \"5 kA\""),
        ("\nemergency = \"420 A\"", "\nemergency = \"6 kA\""),
    ];
    let plan = planned(&more, &[]);
    for slug in CHECKS {
        assert_eq!(worst(&plan, slug), "fail", "{slug}");
    }
    assert!(leg(&plan, "A").at_load.is_none());
    assert!(leg(&plan, "A").lines[0].contains("without end"));
}

/// The cable of leg B reaches about 67.0 degC at the end of the emergency; two hundredths of the rise are 0.75 K.
#[test]
fn what_pressures_and_short_circuits_assume_is_held_against_the_load() {
    let service = |degc: &str, expected: &str| {
        let service = format!("conductor_greatest = \"{degc} degC\"");
        check(
            &[("conductor_greatest = \"130 degC\"", &service)],
            &[],
            "service_temperature",
            expected,
        );
    };
    service("68.2", "pass");
    service("67.0", "not-judged");
    service("65.9", "fail");
}

#[test]
fn the_load_that_is_said_to_reach_the_limit_reaches_it() {
    with_done(&order(DOCK, &[], &[]), |done| {
        for (index, of) in done.legs.iter().enumerate() {
            let ratio = of.load_to_limit_ratio.expect("a load");
            let legs = done.model.at_rest(ratio).unwrap().expect("a state");
            assert!((legs[index].joint_degc - 95.0).abs() < 0.02, "{legs:?}");
        }
    });
}

#[test]
fn an_emergency_of_the_length_that_is_said_ends_at_the_limit() {
    let ask = |time: &str| {
        let edit = format!("\nemergency = \"700 A\"\nemergency_time = \"{time}\"");
        planned(
            &[("\nemergency = \"420 A\"\nemergency_time = \"4 h\"", &edit)],
            &[],
        )
    };
    let hours = leg(&ask("4 h"), "B").emergency_lasts_h.expect("an end");
    let then = ask(&format!("{:.0} s", hours * 3600.0));
    let at = leg(&then, "B").at_emergency.as_ref().expect("a state");
    assert!((at.joint_degc - 120.0).abs() < 0.1, "{hours} h: {at:?}");
}

/// A leg with its own load carries that load, and no other.
#[test]
fn legs_carry_their_own_loads_and_the_bus_its_contacts() {
    let joined = |of_job: Edits<'_>, of_rows: Edits<'_>| {
        with_done(&order("larkspur-three-way", of_job, of_rows), |done| {
            (
                done.model.loads_a.clone(),
                done.at_load.clone().expect("a state"),
            )
        })
    };
    let (loads, before) = joined(&[], &[]);
    assert_eq!(loads, [320.0, 200.0, 120.0]);
    let (_, bus) = joined(
        &[],
        &[("resistance_microohm = 40", "resistance_microohm = 400")],
    );
    // Arms meet in one temperature, so a worse bus warms them all.
    for (before, bus) in before.iter().zip(&bus) {
        assert!(
            bus.joint_degc > before.joint_degc + 1.0,
            "{before:?} {bus:?}"
        );
    }
    // More load on one leg warms the joints of the others, but less than its own.
    let more = [
        ("\nload = \"120 A\"", "\nload = \"240 A\""),
        ("\nemergency = \"160 A\"", "\nemergency = \"280 A\""),
    ];
    let (_, more) = joined(&more, &[]);
    let by = |leg: usize| more[leg].joint_degc - before[leg].joint_degc;
    assert!(
        by(2) > by(0) && by(0) > 0.0,
        "{} {} {}",
        by(0),
        by(1),
        by(2)
    );
}

/// The emergencies of a rating end at the first limit, including the limit of the cables: the rating's times hold when the job asks for them.
#[test]
fn emergencies_of_a_rating_end_at_the_first_limit() {
    let order = order(DOCK, &[], &[]);
    let judged = accepted(judge(&order), DOCK);
    let rating = judged.inputs.warm.rating().unwrap();
    let document = rate(&judged, rating.as_ref());
    let row = &document.emergency[4];
    assert_eq!(
        (row.of, row.leg.as_deref()),
        (Some(LimitOf::Cable), Some("B"))
    );
    let (load, time) = (row.loads_a[0], 3600.0 * row.lasts_h.expect("an end"));
    let edit = format!("\nemergency = \"{load:.3} A\"\nemergency_time = \"{time:.0} s\"");
    let plan = planned(
        &[("\nemergency = \"420 A\"\nemergency_time = \"4 h\"", &edit)],
        &[],
    );
    let at = leg(&plan, "B").at_emergency.as_ref().expect("a state");
    assert!((at.cable_degc - 130.0).abs() < 0.5, "{load} {time}: {at:?}");
    assert!(at.joint_degc < 120.0);
}

/// However large an emergency is, it fails, and the load is judged by itself.
#[test]
fn an_emergency_beyond_all_numbers_fails() {
    for emergency in ["2 kA", "10 kA", "40 kA"] {
        let edit = format!("\nemergency = \"{emergency}\"");
        let plan = planned(&[("\nemergency = \"420 A\"", &edit)], &[]);
        assert_eq!(worst(&plan, "joint_emergency_heat"), "fail", "{emergency}");
        assert_eq!(worst(&plan, "joint_load_heat"), "pass", "{emergency}");
        assert!(leg(&plan, "A").emergency_ageing_h.is_none());
    }
}

/// A far stretch is shortened, and changes nothing.
#[test]
fn a_long_stretch_is_like_a_longer_one() {
    let at = |until: &str| {
        let until = format!("until = \"{until}\"");
        let plan = planned(&[("until = \"2.5 m\"", &until)], &[]);
        leg(&plan, "B").at_load.clone().expect("a state")
    };
    let (far, farther) = (at("60 m"), at("9000 m"));
    assert!((far.joint_degc - farther.joint_degc).abs() < 1e-6);
    assert!((far.cable_degc - farther.cable_degc).abs() < 1e-6);
    // An end at 2.5 m gives nearly the same result; an end at 0.6 m does not.
    assert!((at("2.5 m").joint_degc - far.joint_degc).abs() < 0.1);
    assert!((at("0.6 m").joint_degc - far.joint_degc).abs() > 0.5);
}
