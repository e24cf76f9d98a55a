//! Mark: how the letters of a plan's mark are read aloud.

/// The letters of the spelling alphabet of aviation (from memory) that marks of plans use.
const SPELLED: [(char, &str); 13] = [
    ('C', "Charlie"),
    ('D', "Delta"),
    ('F', "Foxtrot"),
    ('H', "Hotel"),
    ('J', "Juliett"),
    ('K', "Kilo"),
    ('M', "Mike"),
    ('N', "November"),
    ('P', "Papa"),
    ('R', "Romeo"),
    ('T', "Tango"),
    ('W', "Whiskey"),
    ('X', "X-ray"),
];

/// A mark as it is read aloud, its groups apart; digits are words of the language.
pub(crate) fn spelled(mark: &str, digit: fn(char) -> Option<&'static str>) -> String {
    let word = |letter: char| {
        let known = SPELLED.iter().find(|(known, _)| *known == letter);
        let known = known.map(|(_, word)| *word).or_else(|| digit(letter));
        known.map_or_else(|| letter.to_string(), str::to_owned)
    };
    let groups = mark.split('-').map(|group| {
        let words: Vec<String> = group.chars().map(word).collect();
        words.join(" ")
    });
    groups.collect::<Vec<_>>().join(", ")
}
