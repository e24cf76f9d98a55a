//! Unlike: one thing that was seen or read of a cable and is not as its papers have it, with what was found and what was expected.
//!
//! Why its own file: the stop, the fail and the line of the page say it in one sentence.

use super::{Layer, Metal, Shield, ShieldKind, Stranding, Words};
use jointwright_units::Interval;

/// What was found, and then what the papers say.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unlike {
    /// Metal of the conductor.
    Metal(Metal, Metal),
    /// How the strands lie.
    Stranding(Stranding, Stranding),
    /// Strands counted, where the papers have one and several were, or the other way round.
    Strands(u32, Stranding),
    /// Form of the metallic shield.
    ShieldKind(ShieldKind, ShieldKind),
    /// Straps or wires counted.
    ShieldElements(u32, Shield),
    /// A diameter.
    Over {
        /// Over which layer.
        layer: Layer,
        /// What was read, errors included.
        read: Interval,
        /// What it can be by the papers, on the layers inside as they were read.
        papers: Interval,
    },
}

impl Unlike {
    /// A fragment of a sentence: what was found, and what the papers say.
    pub fn sentence(self, words: Words) -> String {
        match self {
            Unlike::Metal(seen, papers) => format!(
                "its conductor is {}, by its papers {}",
                seen.name(words),
                papers.name(words)
            ),
            Unlike::Stranding(seen, papers) => format!(
                "its conductor is {}, by its papers {}",
                seen.name(),
                papers.name()
            ),
            Unlike::Strands(n, papers) => format!(
                "{n} strands were counted, by its papers the conductor is {}",
                papers.name()
            ),
            Unlike::ShieldKind(seen, papers) => format!(
                "its shield is of {}, by its papers of {}",
                seen.name(),
                papers.name()
            ),
            Unlike::ShieldElements(n, papers) => {
                let papers = match papers.elements() {
                    Some(n) => format!("there are {n}"),
                    None => format!("it is of {}", papers.kind().name()),
                };
                format!("{n} wires or straps of its shield were counted, by its papers {papers}")
            }
            Unlike::Over {
                layer,
                read,
                papers,
            } => format!(
                "over the {} {} was read, errors included, by its papers it is {}",
                layer.name(words),
                words.diameters(read),
                words.diameters(papers)
            ),
        }
    }
}
