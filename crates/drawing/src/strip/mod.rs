//! Strip: the cuts and marks of one end at full size, to be cut out and laid along the cable.
//!
//! ```text
//!    0      8   14    18                          48    54     62 mm
//!    |inches|win|lead |texts                      |bars |millim|
//!  0 ================ ZERO: square-cut conductor end ===========
//!    |      |   |     | A1, job, cautions         | |   |      |
//!    |      |   |     |                           | |   |      |
//!    ========///======+ CUT jacket edge           | |   ========   a mark
//! ```
//!
//! If a page is too short for the leg, further pieces continue where the one before ends:
//!
//! ```text
//!    piece 1 |        join a      join b   |        both lines stand on both pieces,
//!            |__________|___________|______|        1 in apart: piece 2 is laid with its
//!              |______|___________|________...      lines on those of piece 1, and taped
//!              piece 2
//! ```
//!
//! Invariants: every mark, tick and bar stands at its place in millimetres of the SVG; texts move, marks never do; texts do not lie on each other.
//!
//! Not here: the place of a cut (`joint::cutback`), and the sheet it is printed on (`paper`).

mod block;
mod layout;
mod paper;
mod piece;
#[cfg(test)]
mod tests;
mod text;

use block::{BETWEEN, Block, arranged};
use jointwright_joint::cable::Words as Practice;
use jointwright_joint::plan::{CutDoc, LegDoc, Plan};
use jointwright_wording::Tongue;
use jointwright_wording::label::{CutLabel, StripLabel};
use layout::{HEIGHT_LEAST, RIM, WIDTH};
use paper::draw;
use piece::{Piece, pieces};
use text::{blocks, floating, number};

/// A marking strip.
#[derive(Clone, Debug, PartialEq)]
pub struct Strip {
    /// Picture; one unit is one millimetre.
    pub svg: String,
    /// Width, mm.
    pub width_mm: f64,
    /// Height, mm.
    pub height_mm: f64,
    /// Marks that stand on none of its pieces, with the reason; a sentence each.
    pub left_out: Vec<String>,
    /// Number of this piece, from 1, and the number of pieces.
    pub piece: [usize; 2],
    /// Stretch of the cable that it covers, mm from the conductor end.
    pub covers_mm: [f64; 2],
}

/// Pieces of the marking strip of one end, each no longer than `length_most_mm`, to the farthest cut or mark; empty if work stops, or if nothing of the end can be marked in that length.
///
/// The zero edge is the square-cut conductor end; millimetres of the pictures are millimetres of the cable.
pub fn strips(leg: &LegDoc, phase: u8, plan: &Plan, length_most_mm: f64) -> Vec<Strip> {
    if plan.must_stop() {
        return Vec::new();
    }
    let most = length_most_mm - 2.0 * RIM;
    let placed = leg
        .cuts
        .iter()
        .filter_map(|cut| Some((cut.mark_at_mm?, cut)));
    let mut placed: Vec<(f64, &CutDoc)> = placed.filter(|(at, _)| *at >= 0.0).collect();
    placed.sort_by(|a, b| a.0.total_cmp(&b.0));
    let Some((last, _)) = placed.last().copied() else {
        return Vec::new();
    };
    let all = pieces(most, last, plan.job.words == Practice::Iec);
    let covered = all.last().map_or(0.0, |piece| piece.to);
    let left_out = left_out(leg, plan, covered);
    let drawn = all.iter().enumerate().map(|(index, piece)| {
        // Marks of the piece before are not repeated.
        let before = index.checked_sub(1).map(|index| all[index].to);
        let here = |at: f64| before.is_none_or(|to| at > to) && at <= piece.to;
        let marked: Vec<(f64, &CutDoc)> =
            placed.iter().copied().filter(|(at, _)| here(*at)).collect();
        strip(leg, phase, plan, piece, &marked, &left_out, most)
    });
    drawn.collect::<Option<Vec<Strip>>>().unwrap_or_default()
}

/// Marks that stand on no piece.
fn left_out(leg: &LegDoc, plan: &Plan, covered: f64) -> Vec<String> {
    let tongue = Tongue::of_plan(plan);
    let said = |cut: &CutDoc| {
        let at = tongue.label(&CutLabel::act_at(cut));
        let label = match cut.mark_at_mm {
            Some(at) if (0.0..=covered).contains(&at) => return None,
            Some(_) => StripLabel::BeyondStrips {
                at,
                number: number(cut, plan),
            },
            None if !cut.growth_ladder.is_empty() => StripLabel::WaitsForGrowth { at },
            None => StripLabel::NoPlace { at },
        };
        Some(tongue.label(&label))
    };
    leg.cuts.iter().filter_map(said).collect()
}

/// One piece; `None` if its texts do not fit.
fn strip(
    leg: &LegDoc,
    phase: u8,
    plan: &Plan,
    piece: &Piece,
    marked: &[(f64, &CutDoc)],
    left_out: &[String],
    most: f64,
) -> Option<Strip> {
    let said = if piece.number[0] == 1 { left_out } else { &[] };
    let mut blocks = blocks(leg, phase, plan, piece, marked);
    // Texts are arranged from the top of the piece down.
    for block in &mut blocks {
        block.top -= piece.from;
    }
    let mut blocks = arranged(blocks, floating(plan, said), most - BETWEEN)?;
    for block in &mut blocks {
        block.top += piece.from;
    }
    let last_text = blocks.iter().map(Block::bottom).fold(0.0, f64::max);
    let to = piece
        .to
        .max(last_text + BETWEEN)
        .max(piece.from + HEIGHT_LEAST);
    if to > piece.from + most + 1.0e-6 {
        return None;
    }
    let covers_mm = [piece.from, to];
    Some(Strip {
        svg: draw(plan, piece, marked, &blocks, covers_mm),
        width_mm: WIDTH + 2.0 * RIM,
        height_mm: to - piece.from + 2.0 * RIM,
        left_out: left_out.to_vec(),
        piece: piece.number,
        covers_mm,
    })
}
