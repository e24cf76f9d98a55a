//! A fact that is not stated is asked for, and nothing passes on it; a contradiction is refused in words.

use super::{CHECKS, DOCK, Edits, edited, planned, warm, worst};
use crate::cases::{lines, named, read};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::plan::StateDoc;

#[track_caller]
fn asked(of_job: Edits<'_>, of_rows: Edits<'_>, question: &str) {
    let plan = planned(of_job, of_rows);
    let warm = warm(&plan);
    assert_eq!(warm.state, StateDoc::NotKnown, "{of_job:?} {of_rows:?}");
    assert!(
        warm.questions.iter().any(|q| q.contains(question)),
        "{question}: {:?}",
        warm.questions
    );
    for slug in CHECKS {
        assert_eq!(worst(&plan, slug), "not-judged", "{slug}");
    }
    assert!(
        plan.missing.iter().any(|s| s
            == &format!(
                "temperatures under load: {}",
                warm.why.as_deref().unwrap_or_default()
            )),
        "{:?}",
        plan.missing
    );
}

#[test]
fn what_is_missing_is_asked_for() {
    let both = |name: &str| format!("{name}_k_m_per_w = 3.5\n{name}_mj_per_m3k = 2.4\n");
    asked(
        &[(&both("insulation"), "")],
        &[],
        "the insulation of leg A's cable",
    );
    asked(&[(&both("jacket"), "")], &[], "the jacket of leg B's cable");
    asked(
        &[("load = \"320 A\"\n", "")],
        &[],
        "What load must each leg carry",
    );
    // Without the shield's own current it is computed from the formation of the cables.
    asked(
        &[("shield_load = \"12 A\"\n", "")],
        &[],
        "Do the three cables of leg A lie",
    );
    let rubber = "resistivity_k_m_per_w = 3.5\ncapacity_mj_per_m3k = 2.0\n";
    asked(&[], &[(rubber, "")], "rubber of demo-straight-15");
    asked(
        &[],
        &[("made_of = \"copper\"\n", "")],
        "What is demo-sleeve-pressed-350 made of?",
    );
    asked(
        &[],
        &[("resistance_ratio = 0.7\n", "")],
        "resistance of demo-sleeve-pressed-350",
    );
    asked(
        &[],
        &[("cover = {", "note = \"none\"\n# cover = {")],
        "How thick does demo-seal-30 lie",
    );
}

#[test]
fn without_surroundings_nothing_is_known() {
    let job = named(DOCK).job;
    let begin = job.find("surrounding = [").expect("surroundings");
    let end = begin + job[begin..].find("\n]\n").expect("their end") + 3;
    asked(&[(&job[begin..end], "")], &[], "What surrounds leg A");
}

#[test]
fn a_body_without_a_temperature_of_its_own_judges_nothing() {
    let plan = planned(
        &[],
        &[
            ("conductor_greatest = \"95 degC\"\n", ""),
            ("conductor_emergency_greatest = \"120 degC\"\n", ""),
        ],
    );
    assert_eq!(worst(&plan, "joint_load_heat"), "not-judged");
    assert_eq!(worst(&plan, "joint_emergency_heat"), "not-judged");
    // The temperatures are stated all the same.
    assert!(warm(&plan).legs[0].at_load.is_some());
    assert!(warm(&plan).legs[0].load_at_limit_a.is_none());
}

#[track_caller]
fn refused(of_job: Edits<'_>, why: &str) {
    let plan = planned(of_job, &[]);
    let warm = warm(&plan);
    assert_eq!(warm.state, StateDoc::NotComputed);
    assert!(
        warm.why.as_ref().is_some_and(|w| w.contains(why)),
        "{:?}",
        warm.why
    );
    assert_eq!(worst(&plan, "joint_load_heat"), "not-judged");
}

#[test]
fn what_cannot_be_is_refused() {
    let film = "temperature = \"30 degC\", film_w_per_m2k = 8.0";
    refused(
        &[(film, "temperature = \"20 degC\", film_w_per_m2k = 8.0")],
        "colder than the place becomes",
    );
    refused(
        &[(film, "temperature = \"30 degC\", outside_k_m_per_w = 0.9")],
        "says nothing of a joint",
    );
    refused(
        &[
            ("\nload = \"320 A\"", "\nload = \"0 A\""),
            ("shield_load = \"12 A\"", "shield_load = \"0 A\""),
        ],
        "the job's load is 0",
    );
}

#[test]
fn currents_that_cannot_meet_are_refused() {
    let shield = "shield_load = \"12 A\"";
    let both = format!("{shield}\nload = \"100 A\"");
    refused(&[(shield, &both)], "no leg carries duty.load");
    let more = format!("{shield}\nload = \"321 A\"");
    refused(&[(shield, &more)], "more than duty.load");
    let leg_a = "goes_to = \"feeder 7b, Larkspur Street (invented)\"\n";
    let less = format!("{leg_a}load = \"100 A\"\n");
    refused(&[(leg_a, &less)], "more than that of all others");
}

#[test]
fn a_body_that_is_not_filled_or_sits_too_far_off_is_not_computed() {
    let rubber = "along = [\"0 mm\", \"200 mm\", \"200 mm\", \"0 mm\"]\ndiameter = [\"25 mm\", \"25 mm\", \"58 mm\", \"58 mm\"]";
    let short = rubber.replace("200 mm", "100 mm");
    asked(
        &[],
        &[(rubber, &short)],
        "Which materials fill demo-straight-15",
    );
    asked(
        &[("ambient_greatest = \"30 degC\"\n", "")],
        &[],
        "warmest that the place becomes",
    );
}

#[track_caller]
pub fn complained(from: &str, to: &str, of: &str) {
    let job = edited(named(DOCK).job, &[(from, to)]);
    let catalogues = [(DEMONSTRATION.to_owned(), DEMONSTRATION_TEXT.to_owned())];
    let complaints = read(&job, &catalogues).expect_err(of);
    assert!(lines(&complaints).contains(of), "{}", lines(&complaints));
}

#[test]
fn surroundings_that_do_not_fit_together_are_complained_of() {
    let film = "film_w_per_m2k = 8.0";
    complained(
        film,
        "film_w_per_m2k = 8.0, outside_k_m_per_w = 1.0",
        "either `film_w_per_m2k` or `outside_k_m_per_w`",
    );
    complained(
        &format!("{film}, "),
        "",
        "either `film_w_per_m2k` or `outside_k_m_per_w`",
    );
    complained("until = \"2.5 m\", ", "", "end at the far end");
    complained(
        "what = \"duct bank (invented)\"",
        "what = \"duct bank (invented)\", until = \"9 m\"",
        "goes on to the far end",
    );
    complained(
        "insulation_mj_per_m3k = 2.4\n",
        "",
        "say something only together",
    );
}

#[test]
fn temperatures_of_a_row_that_fall_are_complained_of() {
    let rows = edited(
        DEMONSTRATION_TEXT,
        &[(
            "conductor_emergency_greatest = \"120 degC\"",
            "conductor_emergency_greatest = \"94 degC\"",
        )],
    );
    let catalogues = [(DEMONSTRATION.to_owned(), rows)];
    let complaints = read(named(DOCK).job, &catalogues).expect_err("94 is below 95");
    assert!(
        lines(&complaints).contains("`conductor_greatest` is 95 degC, above"),
        "{}",
        lines(&complaints)
    );
}
