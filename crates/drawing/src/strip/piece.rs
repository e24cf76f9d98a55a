//! Piece: stretches of a leg, each on one paper, that overlap at their joins.

use super::layout::JOIN;

/// Room between the last mark and the end of the strip, mm.
const TAIL: f64 = 6.0;
/// Paper beyond the lines of a join, mm.
const JOIN_EDGE: f64 = 5.0;
/// Greatest number of pieces of one strip: a mark farther off is set with a tape.
const PIECES_MOST: usize = 12;

/// A stretch of a leg on one paper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Piece {
    /// Number, from 1, and the number of pieces.
    pub(super) number: [usize; 2],
    /// Beginning, mm from the conductor end.
    pub(super) from: f64,
    pub(super) to: f64,
    /// First of the two lines at the join with the piece before, and with the next.
    pub(super) joins: [Option<f64>; 2],
}

/// Stretches of at most `most` mm that overlap at their joins and reach to `last`.
pub(super) fn pieces(most: f64, last: f64, is_metric: bool) -> Vec<Piece> {
    // The lines of a join lie on numbered lines of the scale in use.
    let step = if is_metric { 10.0 } else { 25.4 };
    let mut pieces: Vec<Piece> = Vec::new();
    let (mut from, mut before) = (0.0, None);
    loop {
        let reaches = from + most >= last + TAIL;
        let next = (from + most - JOIN - JOIN_EDGE) / step;
        let next = (next + 1.0e-9).floor() * step;
        let is_last = reaches || next <= before.unwrap_or(from) || pieces.len() + 1 == PIECES_MOST;
        pieces.push(Piece {
            number: [pieces.len() + 1, 0],
            from,
            to: if is_last {
                last.min(from + most - TAIL) + TAIL
            } else {
                next + JOIN + JOIN_EDGE
            },
            joins: [before, (!is_last).then_some(next)],
        });
        if is_last {
            break;
        }
        before = Some(next);
        from = next - JOIN_EDGE;
    }
    let n = pieces.len();
    for piece in &mut pieces {
        piece.number[1] = n;
    }
    pieces
}
