//! The edge of the metallic shield: cut or laid back, the same word everywhere, and the kept length.

use super::{order_of, planned};
use crate::cases::everything;
use jointwright_joint::cable::{Shield, Words};
use jointwright_joint::catalogue::LayBack;
use jointwright_joint::job::Order;
use jointwright_joint::plan::CutKind;
use jointwright_joint::plan::{CutDoc, LegDoc, Plan};
use jointwright_joint::plane::Plane;
use jointwright_joint::stage::Stage;
use jointwright_units::Length;
use jointwright_wording::Tongue;
use jointwright_wording::label::CutLabel;

fn act_of(cut: &CutDoc) -> String {
    Tongue::english(Words::Us).label(&CutLabel::act(cut))
}

fn edge(leg: &LegDoc) -> &CutDoc {
    let mut cuts = leg.cuts.iter();
    cuts.find(|cut| cut.plane == Plane::ShieldEdge)
        .expect("an edge")
}

/// Steps of a leg about its shield: title, and whether a kept length is read.
fn said<'p>(plan: &'p Plan, leg: &str) -> (&'p str, bool) {
    let mut steps = plan.make_up.steps.iter();
    let step = steps
        .find(|s| s.stage == Stage::Shield && s.legs == [leg])
        .expect("a step");
    let is_kept = step
        .hold
        .iter()
        .any(|w| w.what.contains("kept beyond the edge"));
    (&step.title, is_kept)
}

/// A straight joint whose shields are concentric wires, with this row.
fn wires(lay_back: Option<LayBack>, cut_off: &[&str]) -> Order {
    let mut order = order_of("straight-wires-growth-measured");
    for part in &mut order.catalogue.shield_parts {
        part.lay_back.clone_from(&lay_back);
        part.cut_off = cut_off.iter().map(|s| (*s).to_owned()).collect();
    }
    order
}

fn laid(length: Option<Length>) -> Option<LayBack> {
    Some(LayBack {
        shields: vec!["concentric-wires".to_owned()],
        length,
    })
}

#[test]
fn wires_and_straps_are_laid_back_and_tapes_cut_in_one_word_everywhere() {
    let mut n = [0, 0];
    for case in everything() {
        let order = case.order();
        let plan = planned(&order);
        for leg in &plan.legs {
            let cut = edge(leg);
            let is_laid = leg.cable.contains("wires") || leg.cable.contains("straps");
            let (title, is_kept) = said(&plan, &leg.mark);
            assert_eq!(
                cut.kind,
                if is_laid {
                    CutKind::LayBack
                } else {
                    CutKind::Cut
                },
                "{}",
                case.slug
            );
            assert_eq!(act_of(cut), if is_laid { "LAY BACK" } else { "CUT" });
            assert_eq!(
                title.starts_with("Lay back"),
                is_laid,
                "{}: {title}",
                case.slug
            );
            assert_eq!(
                title.starts_with("Cut the"),
                !is_laid,
                "{}: {title}",
                case.slug
            );
            assert_eq!(
                (cut.keeps.is_some(), is_kept),
                (is_laid, is_laid),
                "{}",
                case.slug
            );
            n[usize::from(is_laid)] += 1;
        }
    }
    assert!(n.iter().all(|n| *n > 5), "{n:?}");
}

#[test]
fn the_rows_own_word_prevails_over_what_is_usual() {
    let plan = planned(&wires(None, &["concentric-wires"]));
    for leg in &plan.legs {
        assert_eq!(edge(leg).kind, CutKind::Cut);
        assert_eq!(edge(leg).keeps, None);
        assert!(said(&plan, &leg.mark).0.starts_with("Cut the"));
    }
}

/// The same joint with a tape beside its wires.
fn tape_with_wires(lay_back: Option<LayBack>, cut_off: &[&str]) -> Order {
    let word = "tape-with-wires";
    let lay_back = lay_back.map(|laid| LayBack {
        shields: vec![word.to_owned()],
        ..laid
    });
    let mut order = wires(lay_back, cut_off);
    for part in &mut order.catalogue.shield_parts {
        part.shields.push(word.to_owned());
    }
    for leg in &mut order.job.legs {
        leg.cable.shield = Shield::TapeWithWires {
            thickness: Length::MIL * 5,
            width: Some(Length::INCH_64TH * 96),
            overlap_percent: 25.0,
            count: 11,
            diameter: Length::MIL * 64,
        };
    }
    order
}

#[test]
fn of_a_tape_with_wires_the_row_settles_it_and_else_every_page_asks() {
    let seven = Length::INCH_64TH * (64 * 7);
    for (order, kind, act, says) in [
        (
            tape_with_wires(laid(Some(seven)), &[]),
            "lay-back",
            "LAY BACK",
            Some("keep 7 in"),
        ),
        (
            tape_with_wires(None, &["tape-with-wires"]),
            "cut",
            "CUT",
            None,
        ),
        (
            tape_with_wires(None, &[]),
            "ask",
            "ASK: CUT OR LAY BACK",
            Some("ask before one is cut"),
        ),
    ] {
        let plan = planned(&order);
        for leg in &plan.legs {
            let cut = edge(leg);
            assert_eq!((cut.kind.name(), act_of(cut).as_str()), (kind, act));
            let keeps = cut.keeps.as_deref();
            assert_eq!(keeps.is_some(), says.is_some(), "{keeps:?}");
            assert!(keeps.unwrap_or_default().contains(says.unwrap_or_default()));
            let (title, is_kept) = said(&plan, &leg.mark);
            assert!(title.to_uppercase().starts_with(act), "{title}");
            assert_eq!(is_kept, kind == "lay-back");
            if kind == "lay-back" {
                assert!(keeps.is_some_and(|k| k.contains("the tape is cut at this edge")));
            }
        }
        let n_asked = if kind == "ask" { plan.legs.len() } else { 0 };
        assert_eq!(plan.make_up.unsettled.len(), n_asked);
        let asks = |s: &String| s.contains("laid back or cut off");
        assert!(plan.make_up.unsettled.iter().all(asks));
    }
}

#[test]
fn what_is_kept_is_the_rows_length_else_it_is_asked() {
    let seven = Length::INCH_64TH * (64 * 7);
    for (length, says) in [
        (Some(seven), "keep 7 in"),
        (None, "ask before one is cut short"),
    ] {
        let plan = planned(&wires(laid(length), &[]));
        for leg in &plan.legs {
            let keeps = edge(leg).keeps.as_deref().unwrap_or_default();
            assert!(keeps.contains(says), "{keeps}");
            assert_eq!(edge(leg).keeps_mm, length.map(Length::mm));
        }
        assert_eq!(plan.make_up.unsettled, [""; 0]);
    }
}

#[test]
fn wires_kept_longer_than_the_cut_end_leaves_them_are_asked_of_before_the_cut() {
    let plan = planned(&wires(laid(Some(Length::INCH_64TH * (64 * 30))), &[]));
    assert_eq!(plan.make_up.unsettled.len(), plan.legs.len());
    assert!(
        plan.make_up.unsettled[0].contains("settle before that cut"),
        "{:?}",
        plan.make_up.unsettled
    );
}
