//! Fingerprint: what tells two plans of one job apart.
//!
//! Why its own room: a crew with two papers in hand compares eight letters over the telephone; an engineer compares the whole number.
//!
//! Invariants: one byte more or less in any piece, also in a comment or a space, gives another number.
//! Pieces cannot run into each other.
//! The same pieces give the same number on every machine.
//! The letters of the short form cannot be confused on paper, and each has a word for the telephone.
//! They contain no vowel, so they spell no word of the trade.
//!
//! Not here: what goes in (`job`, `plan`), and the time at which a plan is made, which is printed and never compared.

use sha2::{Digest, Sha256};

/// Letters of the short form; the word by which each is read aloud stands in `wording`.
///
/// No vowel, and none of I 1 L O 0 Q B 8 S 5 Z 2 G 6 U V: each of them is taken for another in handwriting or on a wet copy.
const LETTERS: [char; 16] = [
    'C', 'D', 'F', 'H', 'J', 'K', 'M', 'N', 'P', 'R', 'T', 'W', 'X', '3', '4', '7',
];
/// Letters of the short form in front of its hyphen, and as many behind it.
const GROUP: usize = 4;

/// One number of everything that went in: SHA-256.
///
/// ```
/// use jointwright_joint::fingerprint::Fingerprint;
/// let of = |load: &str| Fingerprint::of([("job", load)]);
/// assert_ne!(of("load = \"320 A\"").short(), of("load = \"321 A\"").short());
/// assert_eq!(of("").whole().len(), 64);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Fingerprint([u8; 32]);

impl Fingerprint {
    /// The fingerprint of pieces, each with its name, in this order.
    pub fn of<'t>(pieces: impl IntoIterator<Item = (&'t str, &'t str)>) -> Fingerprint {
        let mut hasher = Sha256::new();
        for (name, text) in pieces {
            // Lengths first, so that no end of a piece can pass for the beginning of the next.
            for part in [name, text] {
                hasher.update((part.len() as u64).to_le_bytes());
                hasher.update(part.as_bytes());
            }
        }
        Fingerprint(hasher.finalize().into())
    }

    /// All of it, as 64 hexadecimal digits.
    pub fn whole(&self) -> String {
        self.0.iter().map(|byte| format!("{byte:02x}")).collect()
    }

    /// Its first 32 bits as eight letters: "KTRM-47WX".
    pub fn short(&self) -> String {
        let nibbles = self.0.iter().flat_map(|byte| [byte >> 4, byte & 15]);
        let letters: Vec<char> = nibbles
            .take(2 * GROUP)
            .map(|nibble| LETTERS[usize::from(nibble)])
            .collect();
        let (first, last) = letters.split_at(GROUP);
        format!(
            "{}-{}",
            first.iter().collect::<String>(),
            last.iter().collect::<String>()
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_number_is_that_of_the_published_hash() {
        // The digest of "abc" by FIPS 180, from memory; here the piece is laid out by hand.
        let hasher = Sha256::new().chain_update(b"abc");
        let digest: [u8; 32] = hasher.finalize().into();
        assert_eq!(
            Fingerprint(digest).whole(),
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
        );
        let laid_out = Sha256::new()
            .chain_update(1u64.to_le_bytes())
            .chain_update(b"a")
            .chain_update(2u64.to_le_bytes())
            .chain_update(b"bc");
        let digest: [u8; 32] = laid_out.finalize().into();
        assert_eq!(Fingerprint::of([("a", "bc")]), Fingerprint(digest));
    }

    #[test]
    fn no_piece_runs_into_the_next() {
        let of = |pieces: &[(&str, &str)]| Fingerprint::of(pieces.iter().copied());
        let whole = of(&[("a", "bc"), ("d", "e")]);
        for other in [
            of(&[("a", "b"), ("cd", "e")]),
            of(&[("ab", "c"), ("d", "e")]),
            of(&[("d", "e"), ("a", "bc")]),
            of(&[("a", "bc"), ("d", "e"), ("", "")]),
            of(&[("a", "bcde")]),
        ] {
            assert_ne!(other, whole);
        }
        assert_eq!(whole, of(&[("a", "bc"), ("d", "e")]));
    }

    #[test]
    fn the_short_form_has_no_letter_that_is_taken_for_another_and_makes_no_word() {
        for letter in LETTERS {
            assert!(!"AEIOUY1LO0QB8S5Z2G6V".contains(letter), "{letter}");
            let same = LETTERS.iter().filter(|other| **other == letter);
            assert_eq!(same.count(), 1, "{letter}");
        }
    }

    #[test]
    fn the_short_form_is_the_beginning_of_the_whole_number() {
        let mut bytes = [0u8; 32];
        bytes[..4].copy_from_slice(&[0x5a, 0x96, 0xef, 0xbc]);
        let print = Fingerprint(bytes);
        assert_eq!(print.short(), "KTRM-47WX");
        assert!(print.whole().starts_with("5a96efbc00"));
    }
}
