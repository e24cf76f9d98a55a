//! Proposal: parts that would fit in the place of an open one, in `plan.json`.

use crate::catalogue::PartKind;
use crate::judge::Proposal;
use crate::said::Wording;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Parts that fit in the place of one open part of one leg, and the reasons why the others do not.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ProposalDoc {
    /// Leg.
    pub leg: String,
    /// Other legs that take the same single part and have it open too.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub shared_with: Vec<String>,
    /// Kind of part.
    pub part: PartKind,
    /// Parts for which no check fails.
    pub fits: Vec<FitDoc>,
    /// Parts for which a check fails, with the first reason.
    pub does_not_fit: Vec<MisfitDoc>,
}

/// A part that fits.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct FitDoc {
    /// Name in the catalogue.
    pub id: String,
    /// Number of its questions that stay unjudged.
    pub not_judged: usize,
}

/// A part that does not fit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct MisfitDoc {
    /// Name in the catalogue.
    pub id: String,
    /// First reason.
    pub why: String,
}

pub(super) fn proposal_doc(proposal: &Proposal, wording: &dyn Wording) -> ProposalDoc {
    ProposalDoc {
        leg: proposal.leg.clone(),
        shared_with: proposal.shared_with.clone(),
        part: proposal.part,
        fits: proposal
            .fits
            .iter()
            .map(|(id, not_judged)| FitDoc {
                id: id.clone(),
                not_judged: *not_judged,
            })
            .collect(),
        does_not_fit: proposal
            .does_not_fit
            .iter()
            .map(|(id, why)| MisfitDoc {
                id: id.clone(),
                why: wording.say(why),
            })
            .collect(),
    }
}
