//! No plan says that anything is safe, dead or may be kept; the words stand only in the sentences that deny them.

use crate::cases::everything;
use jointwright_joint::cutback::cutback;
use jointwright_joint::fit::Chosen;

/// Statement of every plan about itself.
const NEVER: &str = "This plan says nothing about which cable is dead or identified, and nothing in it says that anything may be cut, touched or energised, or that a joint may be built or kept. That is decided and recorded by the persons named for it. What stands in “ ” is said by the job or by the row named beside it, not by this plan. The parts' own instructions prevail.";

/// Sentences that contain the words in order to deny them.
const DENIALS: &[&str] = &[
    NEVER,
    "This says what the cable is made of, never which circuit it is or whether it is dead.",
    "The voltage that stands in a fault to earth is larger by far and is not computed. No voltage here is called harmless.",
    "and no voltage is called harmless",
];

/// Words that no plan may use otherwise; a word matches from its start, so that "energised" and "energized" match.
const NEVER_SAID: &[&str] = &[
    "safe",
    "dead",
    "de-energi",
    "deenergi",
    "energi",
    "harmless",
    "may be touched",
    "to touch",
    "isolated cable",
    "guarantee",
    "certif",
    "approved",
    "may be kept",
    "may be built",
    "may be cut",
    "good joint",
    "sound joint",
    "ready to",
];

fn found(text: &str) -> Vec<String> {
    let mut text = text.to_owned();
    for denial in DENIALS {
        text = text.replace(denial, "");
    }
    let text = text.to_lowercase();
    let at_start = |at: usize| !text[..at].ends_with(|c: char| c.is_alphanumeric());
    NEVER_SAID
        .iter()
        .flat_map(|word| text.match_indices(word).filter(|(at, _)| at_start(*at)))
        .map(|(at, word)| {
            let around: String = text[at..].chars().take(60).collect();
            format!("{word:?} in {around:?}")
        })
        .collect()
}

#[test]
fn no_plan_says_any_of_it() {
    for case in everything() {
        let json = serde_json::to_string(&case.plan()).expect("a document");
        assert_eq!(found(&json), [""; 0], "{}", case.slug);
    }
}

#[test]
fn no_reason_of_a_cut_says_any_of_it() {
    for case in everything() {
        let order = case.order();
        for leg in &order.job.legs {
            let chosen = Chosen::from_names(&order.catalogue, &leg.parts, leg.cable.conductor);
            let cuts = cutback(&order.job, leg, &chosen)
                .expect("the rows agree")
                .cuts;
            for cut in cuts {
                assert_eq!(
                    found(&crate::cases::english(&cut.why)),
                    [""; 0],
                    "{}",
                    case.slug
                );
            }
        }
    }
}

#[test]
fn every_plan_says_what_it_never_says() {
    for case in everything() {
        let plan = case.plan();
        assert_eq!(plan.never, NEVER);
        assert!(
            plan.legs
                .iter()
                .flat_map(|l| &l.ends)
                .all(|end| end.like_its_papers.ends_with(DENIALS[1]))
        );
    }
}

#[test]
fn the_scan_finds_the_words() {
    for text in [
        "It is safe to cut.",
        "The cable is DEAD.",
        "De-energised.",
        "This joint may be kept.",
        "not energized",
    ] {
        assert!(!found(text).is_empty(), "{text}");
    }
    assert!(found("A clearance unsafely near").is_empty() && found(NEVER).is_empty());
}
