//! One seal over the whole joint: one piece, slid on once, on the leg that parks.

use crate::cases::{accepted, named, read};
use jointwright_joint::catalogue::PartKind;
use jointwright_joint::judge::judge_unsolved;
use jointwright_joint::limit::Outcome;
use jointwright_joint::material::ItemKind;
use jointwright_joint::material::items;
use jointwright_wording::plan;

/// Results of the seal: ends onto which it is slid, pieces, the parking rulings of the two legs, other failures.
struct Came {
    onto: Vec<String>,
    pieces: Option<usize>,
    room_mm: Vec<f64>,
    fails: Vec<(&'static str, String)>,
}

#[track_caller]
fn came(fields: &str) -> Came {
    let case = named("dock-straight-pressed");
    let mut catalogues = case.catalogues();
    let plain = "parked_length = \"240 mm\"";
    assert!(catalogues[0].1.contains(plain));
    catalogues[0].1 = catalogues[0]
        .1
        .replacen(plain, &format!("{fields}{plain}"), 1);
    let order = accepted(read(case.job, &catalogues), "dock");
    let judged = accepted(judge_unsolved(&order), "dock");
    let seal = items(&judged.inputs)
        .into_iter()
        .find(|i| i.kind == ItemKind::Seal);
    let document = plan(&judged);
    let slides = document.make_up.steps.iter().flat_map(|step| &step.slides);
    let rooms = judged.rulings.iter().filter(|r| r.check == "park_room");
    let fails = judged.rulings.iter().filter(|r| r.outcome == Outcome::Fail);
    Came {
        onto: slides
            .filter(|s| s.part == PartKind::Seal)
            .map(|s| s.onto.clone())
            .collect(),
        pieces: seal.and_then(|s| s.pieces),
        room_mm: rooms.filter_map(|r| r.margin).collect(),
        fails: fails
            .map(|r| (r.check, crate::cases::english(&r.why)))
            .collect(),
    }
}

const ONE_PIECE: &str = "spans = \"joint\"\nlength = \"760 mm\"\n";

#[test]
fn one_piece_is_slid_on_once_and_a_seal_a_leg_on_both() {
    let (one, two) = (came(ONE_PIECE), came(""));
    assert!(one.fails.is_empty(), "{:?}", one.fails);
    assert!(two.fails.is_empty(), "{:?}", two.fails);
    assert_eq!((one.onto.len(), two.onto.len()), (1, 2));
    assert_eq!(two.pieces, one.pieces.map(|n| 2 * n));
}

#[test]
fn the_leg_that_does_not_park_needs_no_room_for_one_piece() {
    let (one, two) = (came(ONE_PIECE), came(""));
    let gained: Vec<f64> = one
        .room_mm
        .iter()
        .zip(&two.room_mm)
        .map(|(one, two)| one - two)
        .collect();
    // Leg A parks body and seal as before; on leg B the 240 mm of its own seal are not needed.
    assert_eq!(gained, [0.0, 240.0]);
}

#[test]
fn legs_that_do_not_both_name_the_one_piece_fail() {
    let case = named("dock-straight-pressed");
    let mut catalogues = case.catalogues();
    catalogues[0].1 += "\n[[seal]]\nid = \"span-seal\"\nname = \"Invented seal over a whole joint\"\ndemonstration = true\ninstructions = { paper = \"invented paper DW-99\", revision = \"1\" }\nspans = \"joint\"\nlength = \"900 mm\"\noverlap_least = \"75 mm\"\nparked_length = \"300 mm\"\nmay_lie_on = [\"insulation-screen\", \"metallic-shield\"]\nfits = [{ at = \"seal\", over = \"jacket\", least = \"24 mm\", greatest = \"46 mm\" }]\n";
    let seal = "seal = \"demo-seal-30\"";
    let mut parts = case.job.splitn(3, seal);
    let mut next = || parts.next().expect("two legs name a seal");
    let job = format!("{}{seal}{}seal = \"span-seal\"{}", next(), next(), next());
    let order = accepted(read(&job, &catalogues), "dock");
    let judged = accepted(judge_unsolved(&order), "dock");
    let of = |check: &str| -> Vec<Outcome> {
        let rulings = judged.rulings.iter().filter(|r| r.check == check);
        rulings.map(|r| r.outcome).collect()
    };
    assert!(of("common_parts").contains(&Outcome::Fail));
    assert_eq!(of("seal_span"), [Outcome::NotJudged]);
}
