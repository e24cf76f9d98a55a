//! File words: the words by which files name the cases of a type.
//!
//! Invariants: one list makes the choice that a field offers, the word of a case and the case of a word; a case without a word does not compile.

/// Gives a type its words in files: `ALL`, `NAMES` (in the same order), `name` and `from_name`.
macro_rules! file_words {
    ($kind:ty { $($case:ident = $word:literal),* $(,)? }) => {
        impl $kind {
            /// All cases, in the order in which fields offer them.
            pub const ALL: &'static [$kind] = &[$(<$kind>::$case),*];

            /// Words of all cases in files, in the same order.
            pub const NAMES: &'static [&'static str] = &[$($word),*];

            /// Word in files.
            pub const fn name(self) -> &'static str {
                match self {
                    $(<$kind>::$case => $word,)*
                }
            }

            /// Case of a word in a file.
            pub fn from_name(name: &str) -> Option<$kind> {
                let mut all = <$kind>::ALL.iter().copied();
                all.find(|case| case.name() == name)
            }
        }
    };
}

pub(crate) use file_words;

#[cfg(test)]
mod tests {
    #[derive(Clone, Copy, Debug, PartialEq)]
    enum Way {
        Up,
        Down,
    }
    file_words!(Way { Up = "up", Down = "down" });

    #[test]
    fn a_word_and_its_case_lead_to_each_other() {
        assert_eq!(Way::NAMES, ["up", "down"]);
        for way in Way::ALL {
            assert_eq!(Way::from_name(way.name()), Some(*way));
        }
        assert_eq!(Way::from_name("left"), None);
    }
}
