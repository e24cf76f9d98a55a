//! Edge: whether a metallic shield is cut or laid back at its edge, and the length that is kept.
//!
//! Why its own file: front page, strip, picture and steps say the same.
//!
//! Invariants:
//! - The shield part's own row prevails over the usual practice for its kind of shield.
//! - Where neither states it, the question is asked, and nothing is cut or laid back before the answer.
//! - A kept length comes from a row, or is asked for.
//!
//! Source: wires and flat straps are laid back, tapes are cut: common practice, no source; practice has no common rule for wires beside a tape.

use super::practice;
use crate::cable::ShieldKind;
use crate::catalogue::shield_word;
use crate::checks::LegInputs;
use crate::plane::Plane;
use crate::said::{EdgeAct, Said, ShieldPiece, StepSaid, UnsettledSaid};
use jointwright_units::{Length, Station};

/// Treatment of a metallic shield at its edge.
#[derive(Clone, Debug, PartialEq)]
pub struct ShieldEdge {
    /// Act at the edge.
    pub act: EdgeAct,
    /// Kept length of each wire or strap beyond the edge, if a row states it.
    pub kept: Option<Length>,
    /// Name of a wire or strap.
    pub piece: ShieldPiece,
    /// Whether a tape lies beside its wires.
    pub has_tape: bool,
    /// Source of the act.
    pub source: Said,
}

impl ShieldEdge {
    /// Whether the shield is laid back.
    pub fn is_laid_back(&self) -> bool {
        self.act == EdgeAct::LayBack
    }

    /// Sentence for a crew about the kept length of a shield that is laid back, or the question about it.
    pub fn keeps(&self) -> Option<StepSaid> {
        let (piece, has_tape) = (self.piece, self.has_tape);
        Some(match (self.act, self.kept) {
            (EdgeAct::Cut, _) => return None,
            (EdgeAct::Ask, _) => StepSaid::KeepAsked { piece },
            (EdgeAct::LayBack, Some(length)) => StepSaid::Keep {
                length: length.into(),
                piece,
                has_tape,
            },
            (EdgeAct::LayBack, None) => StepSaid::KeepUnstated { piece, has_tape },
        })
    }
}

/// Treatment of a leg's metallic shield at its edge.
pub fn shield_edge(leg: &LegInputs<'_>) -> ShieldEdge {
    let kind = leg.leg.cable.shield.kind();
    let word = shield_word(kind);
    let piece = match kind {
        ShieldKind::FlatStraps => ShieldPiece::Strap,
        ShieldKind::ConcentricWires | ShieldKind::TapeWithWires => ShieldPiece::Wire,
        ShieldKind::LappedTape | ShieldKind::CorrugatedTape => ShieldPiece::Turn,
    };
    let part = leg.chosen.shield_part;
    let laid = part.and_then(|p| p.lay_back.as_ref());
    let laid = laid.filter(|l| l.shields.iter().any(|s| s == word));
    let is_cut = part.is_some_and(|p| p.cut_off.iter().any(|s| s == word));
    let usual = match kind {
        ShieldKind::FlatStraps | ShieldKind::ConcentricWires => EdgeAct::LayBack,
        ShieldKind::LappedTape | ShieldKind::CorrugatedTape => EdgeAct::Cut,
        ShieldKind::TapeWithWires => EdgeAct::Ask,
    };
    let act = match (&laid, is_cut) {
        (Some(_), _) => EdgeAct::LayBack,
        (None, true) => EdgeAct::Cut,
        (None, false) => usual,
    };
    ShieldEdge {
        act,
        kept: laid.and_then(|l| l.length),
        piece,
        has_tape: kind == ShieldKind::TapeWithWires,
        source: match part {
            Some(part) if laid.is_some() || is_cut => part.head.source().into(),
            _ if act == EdgeAct::Ask => StepSaid::Nobody.into(),
            _ => practice(),
        },
    }
}

/// Question about the edge of a shield that a person must settle: whether it is cut or laid back, if nobody states it; or a kept length that exceeds wires cut off with the conductor.
pub(super) fn unsettled(leg: &LegInputs<'_>) -> Option<UnsettledSaid> {
    let edge = shield_edge(leg);
    let (id, piece) = (leg.leg.id.clone(), edge.piece);
    if edge.act == EdgeAct::Ask {
        let row = leg.chosen.shield_part.map(|part| part.head.id.clone());
        return Some(UnsettledSaid::WiresBesideTape {
            leg: id,
            piece,
            row,
        });
    }
    let kept = edge.kept.filter(|_| edge.is_laid_back())?;
    let at = leg.cutback.nominal(Plane::ShieldEdge)?;
    (Station::from(kept) > at).then(|| UnsettledSaid::KeptTooLong {
        leg: id,
        kept: kept.into(),
        piece,
        edge_mm: at.mm(),
    })
}
