//! Edge: whether a metallic shield is cut or laid back at its edge, and how much of it is kept.
//!
//! Why its own file: front page, strip, picture and steps say one word.
//!
//! Invariants: the shield part's own row prevails over what its kind of shield is usually done; where neither says it, it is asked for, and nothing is cut or laid back before; a length is kept only as a row states it, else it is asked for.
//!
//! Source: wires and flat straps are laid back, tapes are cut: common practice, no source; of the wires beside a tape practice says nothing in common.

use super::COMMON_PRACTICE;
use super::line::length_text;
use crate::cable::{Layer, ShieldKind, Words};
use crate::catalogue::shield_word;
use crate::checks::LegInputs;
use crate::plane::Plane;
use jointwright_units::{Length, Station};

/// What becomes of a metallic shield at its edge.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShieldEdge {
    /// What is done with it.
    pub act: EdgeAct,
    /// How much of each wire or strap is kept beyond the edge, where a row states it.
    pub kept: Option<Length>,
    /// What a wire or strap of it is called.
    pub piece: &'static str,
    /// Whether a tape lies beside its wires.
    pub has_tape: bool,
    /// Whose word it is.
    pub source: String,
}

/// What is done with a metallic shield at its edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EdgeAct {
    /// Cut.
    Cut,
    /// Laid back: wires and straps are kept, a tape beside them is cut.
    LayBack,
    /// Neither a row nor practice says which.
    Ask,
}

impl ShieldEdge {
    /// What a crew does, in one word or two.
    pub const fn act(&self) -> &'static str {
        match self.act {
            EdgeAct::Cut => "cut",
            EdgeAct::LayBack => "lay back",
            EdgeAct::Ask => "ask: cut or lay back",
        }
    }

    /// Whether it is laid back.
    pub fn is_laid_back(&self) -> bool {
        self.act == EdgeAct::LayBack
    }

    /// What is kept of a shield that is laid back, or what is asked, for a crew.
    pub fn keeps(&self, words: Words) -> Option<String> {
        let piece = self.piece;
        let tape = if self.has_tape {
            "; the tape is cut at this edge"
        } else {
            ""
        };
        match (self.act, self.kept) {
            (EdgeAct::Cut, _) => None,
            (EdgeAct::Ask, _) => Some(format!(
                "no row says whether every {piece} is laid back or cut off with the tape: ask before one is cut"
            )),
            (EdgeAct::LayBack, Some(length)) => Some(format!(
                "keep {} of every {piece} beyond this edge{tape}",
                length_text(length, words)
            )),
            (EdgeAct::LayBack, None) => Some(format!(
                "how much of every {piece} is kept is not stated: ask before one is cut short{tape}"
            )),
        }
    }
}

/// What becomes of the metallic shield of a leg.
pub fn shield_edge(leg: &LegInputs<'_>) -> ShieldEdge {
    let kind = leg.leg.cable.shield.kind();
    let word = shield_word(kind);
    let piece = match kind {
        ShieldKind::FlatStraps => "strap",
        ShieldKind::ConcentricWires | ShieldKind::TapeWithWires => "wire",
        ShieldKind::LappedTape | ShieldKind::CorrugatedTape => "turn",
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
            Some(part) if laid.is_some() || is_cut => part.head.source_text(),
            _ if act == EdgeAct::Ask => "nobody says".to_owned(),
            _ => COMMON_PRACTICE.to_owned(),
        },
    }
}

/// What about the edge of a shield a person must settle: whether it is cut or laid back where nobody says it; and wires that are cut off with the conductor cannot be kept longer than they then are.
pub(super) fn unsettled(leg: &LegInputs<'_>, words: Words) -> Option<String> {
    let edge = shield_edge(leg);
    if edge.act == EdgeAct::Ask {
        return Some(format!(
            "Leg {}: are the {}s of the {} laid back or cut off with the tape, and how much of each is kept? {}; settle it before the square cut.",
            leg.leg.id,
            edge.piece,
            Layer::MetallicShield.name(words),
            match leg.chosen.shield_part {
                Some(part) => format!(
                    "The row {} does not say (`lay_back`, `cut_off`)",
                    part.head.id
                ),
                None => "The shield part is left open".to_owned(),
            }
        ));
    }
    let kept = edge.kept.filter(|_| edge.is_laid_back())?;
    let at = leg.cutback.nominal(Plane::ShieldEdge)?;
    (Station::from(kept) > at).then(|| {
        format!(
            "Leg {}: {} of every {} are to be kept beyond the edge, and the edge lies {:.1} mm from the square cut; settle before that cut how they stay long enough.",
            leg.leg.id,
            length_text(kept, words),
            edge.piece,
            at.mm()
        )
    })
}
