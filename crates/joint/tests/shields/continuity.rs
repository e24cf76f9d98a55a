//! Resistances read along a shield: the conclusion from each, and readings that allow none.

use super::{QUARRY, order};
use crate::cases::plan_of;

/// An old tape of leg C on 29.0 to 30.0 mm: 1.0758 to 12.328 ohm/km at 20 degC, so 107.6 to 1232.8 mohm over 100 m.
const PAPERS: (&str, &str) = (
    "insulation = \"xlpe\"",
    "insulation = \"xlpe\"\npapers = [{ over = \"insulation-screen\", least = \"29.0 mm\", greatest = \"30.0 mm\" }]",
);
/// Four wires, ends open, 100 m at 20 degC.
const WELL: &str = "wires = 4, ends = \"open\", length = \"100 m\", temperature = \"20 degC\"";

/// Outcomes and reasons of one row, with an owner's greatest resistance if one is given.
#[track_caller]
fn found(resistance: &str, how: &str, greatest: Option<&str>) -> Vec<(String, String)> {
    let owner = greatest.map_or(String::new(), |greatest| {
        format!("owner_limit = [{{ check = \"shield_continuity\", greatest_ohm_per_km = {greatest}, by = \"Ines Calloway\", date = 2026-03-02 }}]\n")
    });
    let row = format!(
        "{owner}continuity = [{{ leg = \"C\", phase = 1, resistance = \"{resistance}\", error = \"10 mohm\", {how}, by = \"Tomas Brandt\", date = 2026-03-02 }}]\nbus = "
    );
    let order = order(QUARRY, &[PAPERS, ("bus = ", &row)]);
    let plan = plan_of(&order, QUARRY);
    let rulings = plan.rulings.into_iter();
    let rulings = rulings.filter(|r| r.check == "shield_continuity");
    let said = rulings.map(|r| {
        let text = [r.why, r.hint].into_iter().flatten().collect::<Vec<_>>();
        (r.ruling.name().to_owned(), text.join(" "))
    });
    said.collect()
}

#[track_caller]
fn check(resistance: &str, how: &str, says: &str) {
    let rulings = found(resistance, how, None);
    assert_eq!(rulings.len(), 1, "{rulings:?}");
    assert_eq!(rulings[0].0, "not-judged", "{rulings:?}");
    assert!(rulings[0].1.contains(says), "{rulings:?}");
}

#[test]
fn a_reading_outside_of_what_papers_expect_is_a_question_and_no_fail() {
    check("500 mohm", WELL, "as expected");
    check(
        "1.26 ohm",
        WELL,
        "Do the turns of an old tape no longer touch?",
    );
    check("90 mohm", WELL, "Is there another path");
    // A difference smaller than the instrument's error cannot be seen.
    check("1.24 ohm", WELL, "as expected");
    check("98 mohm", WELL, "as expected");
}

#[test]
fn a_warm_shield_is_expected_to_have_more() {
    check("1.4 ohm", WELL, "above");
    // 1232.8 mohm times 1 + 0.00393 · 55 are 1499.
    let warm = WELL.replace("20 degC", "75 degC");
    check("1.4 ohm", &warm, "as expected");
    check("1.52 ohm", &warm, "above");
}

#[test]
fn what_says_nothing_of_the_shield_alone_is_said_to_say_nothing() {
    check("500 mohm", &WELL.replace("open", "bonded"), "says nothing");
    check(
        "500 mohm",
        &WELL.replace("wires = 4", "wires = 2"),
        "test leads",
    );
    check(
        "500 mohm",
        &WELL.replace("temperature = \"20 degC\"", "leads = \"1 mohm\""),
        "temperature",
    );
    check(
        "500 mohm",
        &WELL.replace("length = \"100 m\", ", ""),
        "How long",
    );
    check(
        "500 mohm",
        &WELL.replace("wires = 4", "wires = 2, leads = \"500 mohm\""),
        "four wires",
    );
    // A stated resistance of the leads is taken off: 1.36 less 0.1 ohm is above, less 0.11 is not, with two errors of 10 mohm.
    check(
        "1.36 ohm",
        &WELL.replace("wires = 4", "wires = 2, leads = \"100 mohm\""),
        "above",
    );
    check(
        "1.36 ohm",
        &WELL.replace("wires = 4", "wires = 2, leads = \"110 mohm\""),
        "as expected",
    );
}

#[test]
fn only_the_owners_greatest_passes_or_fails() {
    // 500 mohm over 100 m are 5 ohm/km, good to 0.1.
    let outcomes = |resistance: &str, how: &str, greatest: &str| -> Vec<String> {
        // The check asks for the readings of the other legs.
        let rulings = found(resistance, how, Some(greatest)).into_iter();
        let read = rulings.filter(|(_, why)| !why.contains("nobody has read it"));
        read.map(|(outcome, _)| outcome).collect()
    };
    assert_eq!(outcomes("500 mohm", WELL, "5.2"), ["pass"]);
    assert_eq!(outcomes("500 mohm", WELL, "5.05"), ["not-judged"]);
    assert_eq!(outcomes("500 mohm", WELL, "4.8"), ["fail"]);
    // The same reading at 75 degC is 4.11 ohm/km at 20 degC.
    let warm = WELL.replace("20 degC", "75 degC");
    assert_eq!(outcomes("500 mohm", &warm, "4.2"), ["pass"]);
    // A resistance above the papers' range stays a question, whatever the owner allows.
    assert_eq!(outcomes("1.26 ohm", WELL, "20"), ["pass", "not-judged"]);
    assert_eq!(
        outcomes("500 mohm", &WELL.replace("open", "bonded"), "20"),
        ["not-judged"]
    );
}

#[test]
fn three_wires_and_an_instrument_without_error_are_complaints() {
    let case = crate::cases::named(QUARRY);
    for (how, error, says) in [
        ("wires = 3, ends = \"open\"", "1 mohm", "3 wires"),
        ("wires = 4, ends = \"open\"", "0 mohm", "is nothing"),
        ("wires = 4, ends = \"open\"", "1 m", "resistance"),
    ] {
        let row = format!(
            "continuity = [{{ leg = \"C\", phase = 1, resistance = \"5 mohm\", error = \"{error}\", {how}, by = \"Tomas Brandt\", date = 2026-03-02 }}]\nbus = "
        );
        let job = case.job.replacen("bus = ", &row, 1);
        let complaints = crate::cases::read(&job, &case.catalogues())
            .err()
            .unwrap_or_default();
        let said = crate::cases::lines(&complaints);
        assert!(said.contains(says), "{said}");
    }
}
