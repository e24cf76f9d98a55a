//! Ask: the one fact that would settle a ruling that is not judged, who can answer it, and where the answer goes.
//!
//! Invariant: equal facts are equal asks, so each is put once, however many rulings wait for it.

use crate::end::EndId;
use crate::said::{AskSaid, FactKey, Of};
pub use crate::said::{File, Who};
use crate::slot::{Measured, Slot};

impl Who {
    /// All of them, in the order in which they can be reached.
    pub const ALL: [Who; 5] = [
        Who::Crew,
        Who::Store,
        Who::Engineer,
        Who::CableMaker,
        Who::PartMaker,
    ];

    /// Word in plan.json and in names of files.
    pub const fn name(self) -> &'static str {
        match self {
            Who::Crew => "crew",
            Who::Store => "store",
            Who::Engineer => "engineer",
            Who::CableMaker => "cable-maker",
            Who::PartMaker => "part-maker",
        }
    }

    /// Whether crew, store or owner can answer it themselves; makers may not publish theirs.
    pub const fn is_near(self) -> bool {
        matches!(self, Who::Crew | Who::Store | Who::Engineer)
    }
}

impl File {
    /// Word for the file.
    pub const fn name(self) -> &'static str {
        match self {
            File::Job => "job",
            File::Catalogue => "catalogue",
        }
    }
}

/// Kind of a fact that can be missing.
#[derive(Debug, PartialEq, Eq)]
pub struct Fact {
    /// Key of the fact.
    pub id: FactKey,
    /// Permanent name in documents.
    pub key: &'static str,
    /// Person who can answer.
    pub who: Who,
    /// File that takes the answer.
    pub file: File,
    /// Tables of that file that take the answer, one of them by the kind of part; `body.rubber` is a table in a row.
    pub tables: &'static [&'static str],
    /// Fields of the answer.
    pub fields: &'static [&'static str],
}

/// One fact that is missing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ask {
    /// Kind of the fact.
    pub fact: &'static Fact,
    /// Thing that the fact is about.
    pub of: Of,
}

impl Ask {
    /// Slots of the readings at ends that would answer it; empty if it is no reading, or belongs to no single end.
    pub fn slots(&self) -> Vec<Slot> {
        let ends: Vec<EndId> = match &self.of {
            Of::Diameter { end, over } => return vec![Slot::diameter(end, *over)],
            Of::Ends(ends) => ends.clone(),
            Of::Subject(subject) => subject.end_id().into_iter().collect(),
            _ => Vec::new(),
        };
        let measured: &[Measured] = match self.fact.id {
            FactKey::Moisture => &[Measured::StrandMoisture, Measured::ShieldMoisture],
            FactKey::Jacket => &[Measured::JacketSurface],
            FactKey::Contact => &[Measured::ContactResistance],
            FactKey::Continuity => &[Measured::ShieldResistance],
            FactKey::Count => &[Measured::ShieldElements],
            _ => &[],
        };
        let at = |end: &EndId| {
            measured
                .iter()
                .map(|what| Slot::new(end, what.clone()))
                .collect()
        };
        ends.iter()
            .flat_map(|end| -> Vec<Slot> { at(end) })
            .collect()
    }

    /// Question for this fact.
    pub fn question(&self) -> AskSaid {
        self.fact.question(std::slice::from_ref(&self.of))
    }
}

impl Fact {
    /// Whether it can be found only while the joint is made, on a cable that is cut.
    pub fn is_found_during_the_work(&self) -> bool {
        matches!(self.key, "moisture" | "contact" | "continuity" | "count")
    }

    /// Ask for it.
    pub fn of(&'static self, of: impl Into<Of>) -> Ask {
        Ask {
            fact: self,
            of: of.into(),
        }
    }

    /// Question for several things at once.
    pub fn question(&self, of: &[Of]) -> AskSaid {
        AskSaid::Question {
            fact: self.id,
            of: of.to_vec(),
        }
    }
}
