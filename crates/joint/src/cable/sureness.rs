//! Sureness of a value, from the cable's own papers down to memory.
//!
//! Invariant: the order is from surest to least sure, so the worst of several is their maximum.

use serde::Deserialize;

/// Sureness of a value; `a < b` means that `a` is surer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
pub enum Sure {
    /// Stated on the papers of this very cable.
    Papers,
    /// Read in a public text and reproduced by calculation (VR).
    #[serde(rename = "VR")]
    Reproduced,
    /// Read in a public text (V).
    #[serde(rename = "V")]
    Verified,
    /// A closed form, computed (CF).
    #[serde(rename = "CF")]
    ClosedForm,
    /// Inputs and method read, the answer computed (VI).
    #[serde(rename = "VI")]
    InputsRead,
    /// Derived from values that were read (D).
    #[serde(rename = "D")]
    Derived,
    /// From memory, and reproduced by calculation (MR).
    #[serde(rename = "MR")]
    MemoryRecomputed,
    /// From memory only (M).
    #[serde(rename = "M")]
    Memory,
}

impl Sure {
    /// The less sure of the two: a sum is no surer than its worst part.
    pub fn worst(self, other: Sure) -> Sure {
        self.max(other)
    }

    /// Whether nobody read the value in its source, so that it rules nothing until the owner confirms it.
    pub fn is_memory(self) -> bool {
        matches!(self, Sure::MemoryRecomputed | Sure::Memory)
    }

    /// Phrase on a page.
    pub fn phrase(self) -> &'static str {
        match self {
            Sure::Papers => "stated on the cable's papers",
            Sure::Reproduced => "read in a public text and recomputed",
            Sure::Verified => "read in a public text",
            Sure::ClosedForm => "closed form",
            Sure::InputsRead => "inputs read, answer computed",
            Sure::Derived => "derived from values read",
            Sure::MemoryRecomputed => "from memory, recomputed",
            Sure::Memory => "from memory",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(a: Sure, b: Sure, worst: Sure) {
        assert_eq!(a.worst(b), worst);
        assert_eq!(b.worst(a), worst);
    }

    #[test]
    fn the_worst_of_two_is_the_one_nobody_read() {
        check(Sure::Verified, Sure::Memory, Sure::Memory);
        check(Sure::Papers, Sure::Verified, Sure::Verified);
        check(
            Sure::Derived,
            Sure::MemoryRecomputed,
            Sure::MemoryRecomputed,
        );
    }

    #[test]
    fn only_what_was_recalled_counts_as_memory() {
        assert!(Sure::Memory.is_memory() && Sure::MemoryRecomputed.is_memory());
        for sure in [
            Sure::Papers,
            Sure::Reproduced,
            Sure::Verified,
            Sure::ClosedForm,
            Sure::InputsRead,
            Sure::Derived,
        ] {
            assert!(!sure.is_memory(), "{}", sure.phrase());
        }
    }
}
