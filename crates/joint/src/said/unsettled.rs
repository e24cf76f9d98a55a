//! Points that a person must settle before work goes on.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{BridgeMoment, Exact, Read, Said, ShieldPiece};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Points that a person must settle before work goes on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum UnsettledSaid {
    WiresBesideTape {
        leg: String,
        piece: ShieldPiece,
        row: Option<String>,
    },
    KeptTooLong {
        leg: String,
        kept: Exact,
        piece: ShieldPiece,
        edge_mm: f64,
    },
    BridgeNobodySays,
    BridgeNotAllSame {
        words: Vec<(Said, BridgeMoment)>,
    },
    AskOfBridge {
        name: String,
        number: String,
        why: Said,
    },
    AloneAcross {
        row: String,
        leg: String,
    },
    NobodyParks,
    TooManyPark {
        n: usize,
    },
    OwnOrder {
        row: String,
        before: Said,
        after: Said,
    },
    SlidOnByPaper {
        row: String,
        leg: String,
        passes: Read,
        jacket: Read,
    },
    CannotPark {
        row: String,
        leg: String,
        passes: Read,
        jacket: Read,
    },
    HowItGoesOn {
        row: String,
    },
    NoConnector,
}
