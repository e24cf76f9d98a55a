//! Edge: whether a metallic shield is cut or laid back at its edge, and how much of it is kept.
//!
//! Why its own file: front page, strip, picture and steps say one word.
//!
//! Invariants: the shield part's own row prevails over what its kind of shield is usually done; a length is kept only as a row states it, else it is asked for.
//!
//! Source: wires and flat straps are laid back, tapes are cut: common practice, no source.

use super::COMMON_PRACTICE;
use super::line::length_text;
use crate::cable::{ShieldKind, Words};
use crate::catalogue::shield_word;
use crate::checks::LegInputs;
use crate::plane::Plane;
use jointwright_units::{Length, Station};

/// What becomes of a metallic shield at its edge.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShieldEdge {
    /// Laid back, as against cut.
    pub is_laid_back: bool,
    /// How much of each wire or strap is kept beyond the edge, where a row states it.
    pub kept: Option<Length>,
    /// What a wire or strap of it is called.
    pub piece: &'static str,
    /// Whose word it is.
    pub source: String,
}

impl ShieldEdge {
    /// What a crew does, in one word or two.
    pub const fn act(&self) -> &'static str {
        if self.is_laid_back { "lay back" } else { "cut" }
    }

    /// What is kept of a shield that is laid back, for a crew.
    pub fn keeps(&self, words: Words) -> Option<String> {
        let piece = self.piece;
        self.is_laid_back.then(|| match self.kept {
            Some(length) => format!(
                "keep {} of every {piece} beyond this edge",
                length_text(length, words)
            ),
            None => format!(
                "how much of every {piece} is kept is not stated: ask before one is cut short"
            ),
        })
    }
}

/// What becomes of the metallic shield of a leg.
pub fn shield_edge(leg: &LegInputs<'_>) -> ShieldEdge {
    let kind = leg.leg.cable.shield.kind();
    let word = shield_word(kind);
    let piece = match kind {
        ShieldKind::FlatStraps => "strap",
        ShieldKind::ConcentricWires => "wire",
        ShieldKind::LappedTape | ShieldKind::CorrugatedTape => "turn",
    };
    let part = leg.chosen.shield_part;
    let laid = part.and_then(|p| p.lay_back.as_ref());
    let laid = laid.filter(|l| l.shields.iter().any(|s| s == word));
    let is_cut = part.is_some_and(|p| p.cut_off.iter().any(|s| s == word));
    let usually = matches!(kind, ShieldKind::FlatStraps | ShieldKind::ConcentricWires);
    ShieldEdge {
        is_laid_back: laid.is_some() || (!is_cut && usually),
        kept: laid.and_then(|l| l.length),
        piece,
        source: match part {
            Some(part) if laid.is_some() || is_cut => part.head.source(),
            _ => COMMON_PRACTICE.to_owned(),
        },
    }
}

/// What about a shield that is laid back a person must settle: wires that are cut off with the conductor cannot be kept longer than they then are.
pub(super) fn unsettled(leg: &LegInputs<'_>, words: Words) -> Option<String> {
    let edge = shield_edge(leg);
    let kept = edge.kept.filter(|_| edge.is_laid_back)?;
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
