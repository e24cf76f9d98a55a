//! Tests that each class is found once and alone, and disappears when the one value is repaired.

use super::{defects, text};
use jointwright_joint::catalogue::DEMONSTRATION_TEXT;
use jointwright_joint::critic::classes;

/// Checks a text with one defect, and its repair.
#[track_caller]
fn check(text: &str, class: &str, rows: &[&str], says: &[&str], repair: [&str; 2]) {
    let found = defects(text);
    let classes: Vec<&str> = found.iter().map(|d| d.class).collect();
    assert_eq!(classes, [class], "{found:#?}");
    let defect = &found[0];
    assert_eq!(defect.rows, rows);
    for words in says {
        let whole = format!("{} {} {}", defect.found, defect.expected, defect.hint);
        assert!(whole.contains(words), "`{words}` is not in {whole}");
    }
    let line = defect.place.line;
    let at: Vec<&str> = text.lines().skip(line - 1).take(1).collect();
    assert!(
        at[0].starts_with("[[") || at[0].contains("from ="),
        "{at:?}"
    );
    // The twin: with the one value repaired, nothing is found.
    let [from, to] = repair;
    assert!(text.contains(from), "the text has no `{from}`");
    let repaired = defects(&text.replacen(from, to, 1));
    assert!(repaired.is_empty(), "{repaired:#?}");
}

#[test]
fn every_class_has_a_question_and_a_slug_of_its_own() {
    let mut slugs: Vec<&str> = classes().map(|(slug, _)| slug).collect();
    assert_eq!(slugs.len(), 11);
    assert!(classes().all(|(_, question)| question.ends_with('?')));
    slugs.sort_unstable();
    slugs.dedup();
    assert_eq!(slugs.len(), 11);
}

#[test]
fn nothing_is_found_where_nothing_contradicts_itself() {
    for (name, text) in [
        ("clean", text!("clean")),
        ("clean-tables", text!("clean-tables")),
        ("clean-told-apart", text!("clean-told-apart")),
        ("clean-left-to-others", text!("clean-left-to-others")),
        ("clean-shield-alone", text!("clean-shield-alone")),
    ] {
        let found = defects(text);
        assert!(found.is_empty(), "{name}: {found:#?}");
    }
}

/// Two bodies of the demonstration admit longer connectors than their electrodes cover with the overlap they ask for; with these amended, nothing is found.
#[test]
fn nothing_is_found_in_the_demonstration_but_what_is_put_there() {
    let found = defects(DEMONSTRATION_TEXT);
    assert!(found.is_empty(), "{found:#?}");
    let longer = DEMONSTRATION_TEXT.replacen(
        "connector_length_greatest = \"65 mm\"",
        "connector_length_greatest = \"66 mm\"",
        1,
    );
    let found = defects(&longer);
    let said: Vec<(&str, &str)> = (found.iter())
        .map(|d| (d.class, d.rows[0].as_str()))
        .collect();
    assert_eq!(
        said,
        [("electrode_short", "demo-leg-body-15")],
        "{found:#?}"
    );
}

#[test]
fn issue_16_a_step_that_permits_is_found() {
    check(
        text!("permitting_text"),
        "permitting_text",
        &["m-1"],
        &[
            "step 1",
            "may then be energised",
            "named persons of the job",
        ],
        ["; the joint may then be energised.", "."],
    );
}

#[test]
fn rows_that_take_one_cable_are_found() {
    check(
        text!("rows_overlap"),
        "rows_overlap",
        &["t-2", "t-3"],
        &["bore over the insulation", "26.5 mm", "26 mm", "T-1"],
        ["greatest = \"26.5 mm\"", "greatest = \"26.0 mm\""],
    );
    check(
        text!("rows_overlap-connector"),
        "rows_overlap",
        &["k-1", "k-2"],
        &["2/0 AWG copper compact"],
        ["\"1/0 AWG\", \"2/0 AWG\"", "\"1/0 AWG\""],
    );
    check(
        text!("rows_overlap-bore"),
        "rows_overlap",
        &["k-1", "k-2"],
        &["from 8 mm to 10.5 mm", "from 10 mm to 13 mm"],
        ["greatest = \"10.5 mm\"", "greatest = \"10 mm\""],
    );
    check(
        text!("rows_overlap-three"),
        "rows_overlap",
        &["s-1", "s-2", "s-3"],
        &["24 mm to 52 mm"],
        ["greatest = \"52 mm\"", "greatest = \"32 mm\""],
    );
}

#[test]
fn a_cable_that_falls_between_rows_is_found() {
    check(
        text!("rows_gap"),
        "rows_gap",
        &["t-2", "t-3"],
        &["ends at 26 mm", "begins at 26.8 mm"],
        ["least = \"26.8 mm\"", "least = \"26.0 mm\""],
    );
    check(
        text!("rows_gap-adapter"),
        "rows_gap",
        &["a-1", "a-2"],
        &["ends at 21 mm", "begins at 21.5 mm"],
        ["least = \"21.5 mm\"", "least = \"21 mm\""],
    );
}

#[test]
fn two_ways_to_one_plane_are_found_once() {
    check(
        text!("links_contradict"),
        "links_contradict",
        &["t-1"],
        &["155 mm", "158 mm", "stress-control-far"],
        ["distance = \"38 mm\"", "distance = \"35 mm\""],
    );
    check(
        text!("links_contradict-two-loops"),
        "links_contradict",
        &["t-1"],
        &[
            "165 mm",
            "155 mm",
            "the distance from body-centre to stress-control-far: without it",
        ],
        ["distance = \"165 mm\"", "distance = \"155 mm\""],
    );
    check(
        text!("links_contradict-body-length"),
        "links_contradict",
        &["t-1"],
        &["460 mm", "250 mm", "500 mm"],
        ["distance = \"250 mm\"", "distance = \"230 mm\""],
    );
    check(
        text!("links_contradict-connector-length"),
        "links_contradict",
        &["k-1"],
        &["50 mm", "55 mm", "connector-mouth"],
        ["distance = \"55 mm\"", "distance = \"50 mm\""],
    );
}

#[test]
fn planes_that_stand_the_wrong_way_round_are_found() {
    check(
        text!("links_contradict-order"),
        "links_contradict",
        &["t-1"],
        &["stress-control-far 55 mm nearer", "stress-control-near"],
        ["distance = \"210 mm\"", "distance = \"120 mm\""],
    );
    check(
        text!("links_contradict-direction"),
        "links_contradict",
        &["m-1"],
        &["jacket-edge 50 mm nearer", "`toward_end = true`"],
        ["plus = \"5 mm\" }", "plus = \"5 mm\", toward_end = true }"],
    );
    check(
        text!("links_contradict-in-a-table"),
        "links_contradict",
        &["t-3"],
        &["406 mm"],
        ["length = \"406 mm\"", "length = \"460 mm\""],
    );
}

#[test]
fn a_plane_that_nothing_ties_is_found() {
    check(
        text!("plane_loose"),
        "plane_loose",
        &["t-1"],
        &["`body-centre`", "`electrode-end`", "`park-mark`"],
        [
            "from = \"body-centre\", to = \"park-mark\"",
            "from = \"connector-centre\", to = \"body-centre\"",
        ],
    );
    let cut = "{ from = \"connector-mouth\", to = \"insulation-end\",";
    let screen =
        "{ from = \"conductor-end\", to = \"insulation-screen-edge\", distance = \"136 mm\" },";
    check(
        text!("plane_loose-never-placed"),
        "plane_loose",
        &["t-1"],
        &["insulation-screen-edge is cut"],
        [cut, &format!("{screen}\n  {cut}")],
    );
    let near = "{ from = \"body-centre\", to = \"stress-control-near\",";
    let far = "{ from = \"body-centre\", to = \"stress-control-far\", distance = \"155 mm\" },";
    check(
        text!("plane_loose-half-control"),
        "plane_loose",
        &["t-1"],
        &["`stress-control-near`", "`stress-control-far`"],
        [near, &format!("{far}\n  {near}")],
    );
    check(
        text!("plane_loose-seal"),
        "plane_loose",
        &["s-1"],
        &["`jacket-edge` and `seal-end`"],
        [
            "from = \"jacket-edge\", to",
            "from = \"metallic-shield-edge\", to",
        ],
    );
}

#[test]
fn an_electrode_too_short_for_the_longest_connector_is_found() {
    check(
        text!("electrode_short"),
        "electrode_short",
        &["t-1"],
        // 80 - 3 - (140/2 + 3 + 3) = 1 mm.
        &[
            "140 mm",
            "reaches 1 mm past the insulation-end",
            "Expected 10 mm",
        ],
        [
            "connector_length_greatest = \"140 mm\"",
            "connector_length_greatest = \"122 mm\"",
        ],
    );
    check(
        text!("electrode_short-one-ended"),
        "electrode_short",
        &["t-1"],
        // 95 - 2 - (80 + 3 + 2) = 8 mm.
        &[
            "80 mm",
            "reaches 8 mm past the insulation-end",
            "Expected 10 mm",
        ],
        [
            "connector_length_greatest = \"80 mm\"",
            "connector_length_greatest = \"78 mm\"",
        ],
    );
}

#[test]
fn an_electrode_one_hundredth_of_a_millimetre_short_is_found() {
    let text = text!("electrode_short").replace("\"140 mm\"", "\"122.02 mm\"");
    let found = defects(&text);
    assert_eq!(found.len(), 1, "{found:#?}");
    assert!(
        found[0].found.contains("9.99 mm past"),
        "{}",
        found[0].found
    );
}

#[test]
fn a_range_that_no_cable_reaches_is_found() {
    check(
        text!("range_unreached"),
        "range_unreached",
        &["t-1"],
        &["71 mm to 79 mm", "the 25 kV class or U = 20 kV"],
        [
            "least = \"71 mm\", greatest = \"79 mm\"",
            "least = \"21 mm\", greatest = \"29 mm\"",
        ],
    );
    check(
        text!("range_unreached-connector"),
        "range_unreached",
        &["k-1"],
        &["18 mm to 20 mm"],
        [
            "least = \"18 mm\", greatest = \"20 mm\"",
            "least = \"8 mm\", greatest = \"10 mm\"",
        ],
    );
}

#[test]
fn a_row_out_of_order_is_found_once() {
    check(
        text!("column_not_monotone"),
        "column_not_monotone",
        &["t-3"],
        &[
            "greatest of the mouth",
            "29.5 mm in `t-3`",
            "30 mm in its neighbour `t-2`",
        ],
        ["greatest = \"29.5 mm\"", "greatest = \"35.0 mm\""],
    );
    check(
        text!("column_not_monotone-cut"),
        "column_not_monotone",
        &["t-3"],
        &[
            "insulation-screen-edge",
            "127 mm in `t-3`",
            "132 mm in its neighbour `t-2`",
        ],
        ["distance = \"127 mm\"", "distance = \"136 mm\""],
    );
    check(
        text!("column_not_monotone-one-row"),
        "column_not_monotone",
        &["t-3"],
        &["least of the mouth", "connector_diameter_greatest"],
        [
            "connector_diameter_least = \"13 mm\"\nconnector_diameter_greatest = \"23 mm\"\nelectrode_overlap_least = \"10 mm\"\nfits = [\n  { at = \"bore\", over = \"insulation\", least = \"26.0 mm\", greatest = \"31.0 mm\" },\n  { at = \"mouth\", over = \"insulation-screen\", least = \"22.0 mm\", greatest = \"29.5 mm\" }",
            "connector_diameter_least = \"18 mm\"\nconnector_diameter_greatest = \"30 mm\"\nelectrode_overlap_least = \"10 mm\"\nfits = [\n  { at = \"bore\", over = \"insulation\", least = \"26.0 mm\", greatest = \"31.0 mm\" },\n  { at = \"mouth\", over = \"insulation-screen\", least = \"27.0 mm\", greatest = \"35.0 mm\" }",
        ],
    );
    check(
        text!("column_not_monotone-connector"),
        "column_not_monotone",
        &["k-2"],
        &["outside_diameter is 19 mm in `k-2` and 20 mm in its neighbour `k-1`"],
        [
            "outside_diameter = \"19 mm\"",
            "outside_diameter = \"22 mm\"",
        ],
    );
}

#[test]
fn a_text_that_contradicts_its_row_is_found_once() {
    let class = "text_against_number";
    check(
        text!("text_against_number"),
        class,
        &["t-1"],
        &["\"4 7/8 in\" and \"126 mm\"", "123.825 mm"],
        ["(126 mm)", "(124 mm)"],
    );
    check(
        text!("text_against_number-cut"),
        class,
        &["t-1"],
        &["5 7/8 in is no distance"],
        ["back 5 7/8 in", "back 4 7/8 in"],
    );
    check(
        text!("text_against_number-presses"),
        class,
        &["k-1"],
        &["5 presses", "`presses` is 4"],
        ["Make five presses", "Make four presses"],
    );
    check(
        text!("text_against_number-class"),
        class,
        &["t-1"],
        &["35 kV class", "27 kV"],
        ["body, 35 kV class", "body, 25 kV class"],
    );
    check(
        text!("text_against_number-link"),
        class,
        &["t-1"],
        &["states 3 mm", "says \"13 mm\""],
        ["step 5, 13 mm", "step 5, 3 mm"],
    );
    check(
        text!("text_against_number-note"),
        class,
        &["t-1"],
        &["The note", "480 mm"],
        ["(480 mm)", "(460 mm)"],
    );
}

#[test]
fn texts_about_other_things_are_left_alone() {
    let text = text!("text_against_number-cut");
    for say in [
        "Cut the insulation shield square, no deeper than 0.5 mm.",
        "Cut the tape 300 mm long; wrap it over the insulation shield.",
        "Remove the holdout by 3 to 5 turns; wait 10 minutes at 20 degC.",
        "Tighten to 35 in-lb, then mark 4 in the list beside the connector.",
        "Remove the jacket 300 mm from the conductor end.",
        "Cut the insulation shield 4 3/4 in to 5 in from the conductor end.",
        "Cut the insulation shield 123.8 mm from the conductor end.",
    ] {
        let from = "Cut the insulation shield back 5 7/8 in from the conductor end, square.";
        assert!(text.contains(from));
        let found = defects(&text.replacen(from, say, 1));
        assert!(found.is_empty(), "{say}: {found:#?}");
    }
}

#[test]
fn a_window_that_holds_no_mark_is_found() {
    check(
        text!("window_rounds_to_nothing"),
        "window_rounds_to_nothing",
        &["t-1"],
        &["136.02 mm to 136.08 mm"],
        ["\"136.05 mm\"", "\"136.1 mm\""],
    );
    check(
        text!("window_rounds_to_nothing-no-width"),
        "window_rounds_to_nothing",
        &["t-1"],
        &["3.14 mm to 3.14 mm"],
        ["\"3.14 mm\"", "\"3.175 mm\""],
    );
}

#[test]
fn a_part_that_lies_on_a_layer_without_a_range_is_found() {
    check(
        text!("part_over_layer"),
        "part_over_layer",
        &["t-1", "m-1"],
        &[
            "body-end of `t-1`",
            "metallic-shield-edge",
            "`m-1`",
            "1 mm or more",
        ],
        [
            "to = \"metallic-shield-edge\", distance = \"92 mm\"",
            "to = \"metallic-shield-edge\", distance = \"93 mm\"",
        ],
    );
    check(
        text!("part_over_layer-allowed"),
        "part_over_layer",
        &["t-1", "m-1"],
        &["over the metallic screen"],
        [
            "may_lie_on = [\"jacket\"]",
            "may_lie_on = [\"metallic-shield\"]",
        ],
    );
    check(
        text!("part_over_layer-adapter"),
        "part_over_layer",
        &["a-1", "t-1"],
        &["adapter-far of `a-1`", "insulation-screen-edge"],
        ["distance = \"81 mm\"", "distance = \"80 mm\""],
    );
    check(
        text!("part_over_layer-contact"),
        "part_over_layer",
        &["m-1", "s-1"],
        &[
            "shield-contact-far of `m-1`",
            "jacket-edge",
            "over the oversheath",
        ],
        ["distance = \"45 mm\"", "distance = \"44 mm\""],
    );
}

/// A sleeve with unlike ends, each end with texts and numbers of its own.
const UNLIKE: &str = r#"about = "invented"

[[connector]]
id = "unlike"
name = "Invented reducing sleeve"
demonstration = true
instructions = { paper = "invented paper R-1", revision = "1" }
means = "compression"
ends = 2
outside_diameter = "26 mm"
step = [ { say = "Press the small end with 4 presses and the large end with 6 presses, 10 presses in all." } ]
end = [
  { name = "small", conductors = [{ size = "1/0 AWG", metal = "aluminium" }], strandings = ["compressed"], length = "2 in", depth = "1 15/16 in", die = "d", presses = 4, bore = { least = "9.0 mm", greatest = "9.6 mm" } },
  { name = "large", conductors = [{ size = "4/0 AWG", metal = "copper" }], strandings = ["compressed"], length = "2 1/2 in", depth = "2 7/16 in", die = "e", presses = 6, bore = { least = "12.5 mm", greatest = "13.5 mm" } },
]
"#;

#[test]
fn each_end_of_a_sleeve_is_held_against_its_own_numbers() {
    let found = defects(UNLIKE);
    assert!(found.is_empty(), "{found:#?}");
    // The bore of one end on the other's conductor.
    let bores = UNLIKE.replacen(
        "least = \"12.5 mm\", greatest = \"13.5 mm\"",
        "least = \"9.0 mm\", greatest = \"9.6 mm\"",
        1,
    );
    let found = defects(&bores);
    let said: Vec<(&str, bool)> = (found.iter())
        .map(|d| (d.class, d.found.contains("end large")))
        .collect();
    assert_eq!(said, [("range_unreached", true)], "{found:#?}");
    // A number of presses that neither end has.
    let presses = UNLIKE.replacen("with 6 presses,", "with 5 presses,", 1);
    let said: Vec<&str> = defects(&presses).iter().map(|d| d.class).collect();
    assert_eq!(said, ["text_against_number"]);
    // Another row of the paper that takes the same conductor at one end only is another row.
    let (_, row) = UNLIKE.split_once("\n\n").expect("a row");
    let other = row.replacen("id = \"unlike\"", "id = \"other\"", 1);
    let both = |row: &str| format!("{UNLIKE}\n{row}");
    let of_one_end = other
        .replacen(
            "4/0 AWG\", metal = \"copper\"",
            "2/0 AWG\", metal = \"copper\"",
            1,
        )
        .replacen(
            "least = \"12.5 mm\", greatest = \"13.5 mm\"",
            "least = \"10.0 mm\", greatest = \"11.0 mm\"",
            1,
        );
    let found = defects(&both(&of_one_end));
    assert!(found.is_empty(), "{found:#?}");
    let said: Vec<&str> = defects(&both(&other)).iter().map(|d| d.class).collect();
    assert_eq!(said, ["rows_overlap"]);
}
