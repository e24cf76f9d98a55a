//! Text: what stands on a piece: its head, its marks, its joins, and what belongs to no mark.

use super::block::{Block, LETTER, Line, unbroken};
use super::layout::{JOIN, TEXT};
use super::piece::Piece;
use crate::label::shortened;
use jointwright_joint::cable::Words as Practice;
use jointwright_joint::plan::{CutDoc, LegDoc, Plan};
use jointwright_wording::Tongue;
use jointwright_wording::label::{CutLabel, SheetLabel, StripLabel};

/// Number of a cut in the plan's own texts.
pub(super) fn number(cut: &CutDoc, plan: &Plan) -> String {
    let inch = cut
        .inch
        .as_ref()
        .filter(|_| plan.job.words != Practice::Iec);
    match (inch, &cut.mark_mm) {
        (Some(inch), Some(mm)) => format!("{inch} in ({mm} mm)"),
        (None, Some(mm)) => format!("{mm} mm"),
        _ => Tongue::of_plan(plan).label(&CutLabel::NotSet),
    }
}

pub(super) fn blocks(
    leg: &LegDoc,
    phase: u8,
    plan: &Plan,
    piece: &Piece,
    marked: &[(f64, &CutDoc)],
) -> Vec<Block> {
    let tongue = Tongue::of_plan(plan);
    let mut blocks = joins(piece, tongue);
    for (at, cut) in marked {
        let mut lines = Line::wrapped(2.7, true, &tongue.label(&CutLabel::act_at(cut)));
        let inch = cut
            .inch
            .as_ref()
            .filter(|_| plan.job.words != Practice::Iec);
        match (inch, &cut.mark_mm) {
            (Some(inch), Some(mm)) => {
                lines.push(Line::bold(4.4, &format!("{inch} in")));
                lines.push(Line::bold(3.2, &format!("{mm} mm")));
            }
            (_, Some(mm)) => lines.push(Line::bold(4.4, &format!("{mm} mm"))),
            _ => {}
        }
        match &cut.printed_window {
            Some(window) => {
                let mut window = tongue.window_lines(window);
                if let Some(first) = window.first_mut() {
                    let window = first.clone();
                    *first = tongue.label(&CutLabel::MayLieIn { window });
                }
                for line in window {
                    lines.extend(Line::wrapped(2.5, false, &unbroken(&line)));
                }
            }
            None => lines.extend(Line::wrapped(
                2.5,
                false,
                &tongue.label(&CutLabel::NoWindow),
            )),
        }
        if let Some(keeps) = &cut.keeps {
            lines.extend(Line::wrapped(2.3, true, &unbroken(keeps)));
        }
        blocks.push(Block {
            mark: Some(*at),
            lines,
            top: at - 3.2,
        });
    }
    blocks.sort_by(|a, b| a.top.total_cmp(&b.top));
    blocks.insert(0, head(leg, phase, plan, piece));
    blocks
}

/// Texts at the lines of a join.
fn joins(piece: &Piece, tongue: Tongue) -> Vec<Block> {
    let [number, n] = piece.number;
    let names = [
        (piece.joins[0], number.wrapping_sub(1)),
        (piece.joins[1], number),
    ];
    let mut blocks = Vec::new();
    for (at, first) in names {
        let Some(at) = at else { continue };
        let other = if first == number { first + 1 } else { first };
        let join = first;
        let a = tongue.label(&StripLabel::JoinA { join, other, n });
        let b = tongue.label(&StripLabel::JoinB { join });
        for (at, text) in [(at, a), (at + JOIN, b)] {
            blocks.push(Block {
                mark: Some(at),
                lines: Line::wrapped(2.2, true, &unbroken(&text)),
                top: at - 1.6,
            });
        }
    }
    blocks
}

/// Texts that belong to no mark and may stand wherever there is room.
pub(super) fn floating(plan: &Plan, left_out: &[String]) -> Vec<Block> {
    let tongue = Tongue::of_plan(plan);
    let where_to = tongue.label(&StripLabel::OnlyOnOuterLayers);
    let block = |lines| Block {
        mark: None,
        lines,
        top: 0.0,
    };
    let mut blocks = vec![block(Line::wrapped(2.3, true, &where_to))];
    if !left_out.is_empty() {
        let mut lines = Line::wrapped(2.4, true, &tongue.label(&StripLabel::NotOnThisStrip));
        for said in left_out {
            lines.extend(Line::wrapped(2.3, false, &unbroken(said)));
        }
        blocks.push(block(lines));
    }
    blocks
}

fn head(leg: &LegDoc, phase: u8, plan: &Plan, piece: &Piece) -> Block {
    let [number, n] = piece.number;
    let tongue = Tongue::of_plan(plan);
    let of = |label: StripLabel| tongue.label(&label);
    let first = leg.cuts.first();
    let begins = match number {
        1 => StripLabel::Zero {
            datum: first.map_or_else(|| of(StripLabel::SquareCutEnd), |cut| cut.from.clone()),
        },
        piece => StripLabel::EdgeIsNotZero {
            piece,
            n,
            before: piece - 1,
        },
    };
    let begins = of(begins);
    let mut lines = Line::wrapped(2.5, true, &begins);
    if number == 1 && n > 1 {
        lines.extend(Line::wrapped(2.5, true, &of(StripLabel::FirstPiece { n })));
    }
    let name = format!("{}{phase}", leg.mark);
    let n_letters = name.chars().count().max(1) as f64;
    let size = (0.9 * (TEXT[1] - TEXT[0]) / (LETTER[0] * n_letters)).min(10.0);
    lines.push(Line::bold(size, &name));
    lines.push(Line::bold(3.3, &tongue.plan_mark(&plan.plan_mark)));
    let issue = shortened(&plan.plan_mark.issue_words, 60);
    lines.extend(Line::wrapped(2.4, true, &issue));
    let made = shortened(&plan.plan_mark.made, 48);
    let made = tongue.label(&SheetLabel::Made { when: made });
    lines.extend(Line::wrapped(2.2, false, &made));
    let job = format!("{}, {}, {}", plan.job.id, plan.job.date, plan.program);
    lines.extend(Line::wrapped(2.2, false, &shortened(&job, 90)));
    // This line is the place of the bar across.
    lines.push(Line::bold(3.4, ""));
    let bars = of(StripLabel::MeasureBars);
    lines.extend(Line::wrapped(2.2, true, &unbroken(&bars)));
    Block {
        mark: None,
        lines,
        top: piece.from + 1.2,
    }
}
