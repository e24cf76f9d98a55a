//! Readings as built: the blank form, each kind of defect beside its twin just inside, and what more deviation may do.

mod decided;
mod ends;

use crate::cases::{EXAMPLES, accepted, everything, lines, named, texts};
use jointwright_joint::built::{Built, FindingDoc, FindingKind, Findings, blank, read_built};
use jointwright_joint::cable::Words;
use jointwright_joint::form::Source;
use jointwright_joint::job::Order;
use jointwright_joint::judge::{Judged, judge_unsolved};
use jointwright_joint::plan::{mark_of, program};
use jointwright_wording::{Tongue, findings};
use std::collections::BTreeSet;

const PLAN: &str = "KTRM-47WX";
const HEAD: &str = r#"
by = "Tomas Brandt"
date = 2026-03-09
instrument = [
  { id = "rule", kind = "steel-rule", error = "0.5 mm", serial = "R-1" },
  { id = "calliper", kind = "calliper", error = "0.05 mm" },
  { id = "ohms", kind = "micro-ohmmeter", error_ohm = "0.05 mohm" },
  { id = "wrench", kind = "torque-wrench", error_torque = "1 N·m" },
]
"#;

fn judged(order: &Order) -> Judged<'_> {
    accepted(judge_unsolved(order), &order.job.id)
}

/// Readings of a joint, their rows written into its file.
fn readings(order: &Order, rows: &str) -> Result<Built, String> {
    let text = format!(
        "job = \"{}\"\nplan = \"{PLAN}\"\n{HEAD}{rows}",
        order.job.id
    );
    let source = Source::new("readings.toml", text);
    read_built(&source, &order.job, PLAN).map_err(|found| lines(&texts(&found)))
}

#[track_caller]
fn found(order: &Order, rows: &str) -> Findings {
    let built = readings(order, rows).unwrap_or_else(|why| panic!("{why}"));
    findings(&judged(order), &built)
}

/// Findings of all slots that have a reading.
#[track_caller]
fn read(order: &Order, rows: &str) -> Vec<FindingDoc> {
    let found = found(order, rows).findings.into_iter();
    found.filter(|finding| finding.read.is_some()).collect()
}

#[test]
fn the_blank_of_every_joint_has_every_slot_and_holds_no_reading() {
    let mut n_slots = 0;
    for case in everything() {
        let order = case.order();
        let judged = judged(&order);
        let text = blank(&judged, PLAN, "one\ntwo");
        let source = Source::new("blank.toml", text.clone());
        let built = read_built(&source, &order.job, PLAN);
        let built =
            built.unwrap_or_else(|found| panic!("{}: {}", case.slug, lines(&texts(&found))));
        assert!(built.readings.is_empty(), "{}", case.slug);
        let empty = findings(&judged, &built);
        let missing = empty.findings.len();
        let are_missing = |kind| kind == FindingKind::Missing;
        assert!(
            empty
                .findings
                .iter()
                .all(|finding| are_missing(finding.kind)),
            "{}",
            case.slug
        );
        // A row for each slot: those that are missing, and those that the job fills.
        let rows = text.lines().filter(|line| line.starts_with("  { leg"));
        assert_eq!(rows.count(), missing + empty.n_in_job, "{}", case.slug);
        n_slots += missing;
    }
    assert!(n_slots > 500, "{n_slots}");
}

/// A row of the blank with a value fills the slot that the blank wrote it for.
#[test]
fn a_filled_row_of_a_blank_fills_its_own_slot() {
    let mut words = BTreeSet::new();
    for case in EXAMPLES {
        let order = case.order();
        let judged = judged(&order);
        let form = blank(&judged, PLAN, "");
        for line in form.lines().filter(|l| l.starts_with("  { leg")) {
            let table = table_of(line);
            let of = line.split("of = \"").nth(1).expect("a word");
            words.insert((table, of.split('"').next().expect("a word").to_owned()));
            let row = line.split(" },").next().expect("a row");
            let row = match table {
                "along" => row.replace("at = []", "at = [\"100 mm\"]"),
                "across" => row.replace("values = []", "values = [\"20 mm\"]"),
                "torque" => row.replace("values = []", "values = [\"20 N·m\"]"),
                "resistance" => format!("{row}, ohm = \"0.4 mohm\""),
                "count" => format!("{row}, n = 3"),
                _ => {
                    let word = line.split("found = ").nth(1).expect("words");
                    let word = word.split('"').nth(1).expect("a word");
                    format!("{row}, found = \"{word}\"")
                }
            };
            let built = readings(&order, &format!("{table} = [\n{row} }},\n]\n"));
            let built = built.unwrap_or_else(|why| panic!("{}: {row}: {why}", case.slug));
            assert_eq!(built.readings.len(), 1, "{row}");
            let found = findings(&judged, &built);
            let missing = |finding: &&FindingDoc| finding.kind == FindingKind::Missing;
            let slot = &built.readings[0].slot;
            // What is looked at at two hold points stays open until both looks are written.
            let still = found.findings.iter().filter(missing);
            let n_still = still.filter(|finding| finding.slot == *slot).count();
            let n_rows = form.lines().filter(|other| *other == line).count();
            assert_eq!(n_still, n_rows - 1, "{row}");
            let asked = found.findings.iter().find(|finding| finding.slot == *slot);
            assert!(asked.expect("a finding").read.is_some(), "{row}");
        }
    }
    assert!(words.len() > 24, "{words:?}");
}

/// Table in which a row of a blank stands, by the field or the note that it ends with.
fn table_of(line: &str) -> &'static str {
    if line.contains(", at = []") {
        "along"
    } else if line.contains("with = \"wrench\"") {
        "torque"
    } else if line.contains(", values = []") {
        "across"
    } else if line.contains("# ohm = ") {
        "resistance"
    } else if line.contains("# n = ") {
        "count"
    } else {
        "seen"
    }
}

/// A defect as built, the same just inside, and its kind.
struct Defect {
    table: &'static str,
    /// Row up to its value.
    row: &'static str,
    out: &'static str,
    inside: &'static str,
}

const fn defect(
    table: &'static str,
    row: &'static str,
    out: &'static str,
    inside: &'static str,
) -> Defect {
    Defect {
        table,
        row,
        out,
        inside,
    }
}

/// Windows of leg B of the three-way example: jacket edge 273 to 279.4 mm, shield 222.25 to 228.6 mm, screen 120.65 to 127 mm, insulation 53.9 to 55 mm, body 196 to 200 mm, seal 371.4 to 384.1 mm; insulation under the adapter 23.5 to 27.5 mm, mouth 26 to 38 mm, jacket 24 to 46 mm.
const DEFECTS: &[Defect] = &[
    defect(
        "along",
        "of = \"jacket-edge\", with = \"rule\", at = ",
        "[\"272 mm\"]",
        "[\"274 mm\"]",
    ),
    defect(
        "along",
        "of = \"jacket-edge\", with = \"rule\", at = ",
        "[\"280.5 mm\"]",
        "[\"278.5 mm\"]",
    ),
    defect(
        "along",
        "of = \"metallic-shield-edge\", with = \"rule\", at = ",
        "[\"221 mm\"]",
        "[\"223 mm\"]",
    ),
    defect(
        "along",
        "of = \"metallic-shield-edge\", with = \"rule\", at = ",
        "[\"9 1/16 in\"]",
        "[\"8 15/16 in\"]",
    ),
    defect(
        "along",
        "of = \"shield-kept\", with = \"rule\", at = ",
        "[\"177 mm\"]",
        "[\"178.5 mm\"]",
    ),
    defect(
        "along",
        "of = \"insulation-screen-edge\", with = \"rule\", at = ",
        "[\"124 mm\", \"124 mm\", \"120 mm\", \"124 mm\"]",
        "[\"124 mm\", \"124 mm\", \"121.5 mm\", \"124 mm\"]",
    ),
    defect(
        "along",
        "of = \"insulation-screen-edge\", with = \"rule\", at = ",
        "[\"124 mm\", \"128 mm\", \"124 mm\", \"124 mm\"]",
        "[\"124 mm\", \"126 mm\", \"124 mm\", \"124 mm\"]",
    ),
    defect(
        "along",
        "of = \"body-end\", with = \"rule\", at = ",
        "[\"195 mm\"]",
        "[\"197 mm\"]",
    ),
    defect(
        "along",
        "of = \"body-end\", with = \"rule\", at = ",
        "[\"201 mm\"]",
        "[\"199 mm\"]",
    ),
    defect(
        "along",
        "of = \"adapter-near\", from = \"insulation-end\", with = \"rule\", at = ",
        "[\"1 mm\"]",
        "[\"3 mm\"]",
    ),
    defect(
        "along",
        "of = \"adapter-near\", from = \"insulation-end\", with = \"rule\", at = ",
        "[\"7 mm\"]",
        "[\"5 mm\"]",
    ),
    defect(
        "along",
        "of = \"seal-end\", with = \"rule\", at = ",
        "[\"385 mm\"]",
        "[\"383 mm\"]",
    ),
    defect(
        "along",
        "of = \"seal-overlap\", with = \"rule\", at = ",
        "[\"74 mm\"]",
        "[\"76 mm\"]",
    ),
    defect(
        "across",
        "of = \"diameter\", over = \"insulation\", with = \"calliper\", values = ",
        "[\"23.4 mm\"]",
        "[\"23.6 mm\"]",
    ),
    defect(
        "across",
        "of = \"diameter\", over = \"insulation\", with = \"calliper\", values = ",
        "[\"27.6 mm\"]",
        "[\"27.4 mm\"]",
    ),
    defect(
        "across",
        "of = \"diameter\", over = \"jacket\", with = \"calliper\", values = ",
        "[\"46.1 mm\"]",
        "[\"45.9 mm\"]",
    ),
    defect(
        "across",
        "of = \"connector-diameter\", with = \"calliper\", values = ",
        "[\"40.1 mm\"]",
        "[\"39.9 mm\"]",
    ),
    defect(
        "resistance",
        "of = \"contact\", with = \"ohms\", ohm = ",
        "\"1.1 mohm\"",
        "\"0.9 mohm\"",
    ),
    defect("count", "of = \"presses\", n = ", "3", "4"),
    defect(
        "seen",
        "of = \"die\", found = ",
        "\"invented die 28\"",
        "\"Invented die 30\"",
    ),
    // What no model sees: a nick, a jagged edge, dirt, a bridge that came loose.
    defect(
        "seen",
        "of = \"surface\", on = \"insulation\", found = ",
        "\"nick\"",
        "\"nothing\"",
    ),
    defect(
        "seen",
        "of = \"surface\", on = \"insulation\", found = ",
        "\"jagged-edge\"",
        "\"nothing\"",
    ),
    defect(
        "seen",
        "of = \"surface\", on = \"conductor\", found = ",
        "\"scored\"",
        "\"nothing\"",
    ),
    defect(
        "seen",
        "of = \"bridge\", found = ",
        "\"loose\"",
        "\"on-and-tight\"",
    ),
    defect(
        "seen",
        "of = \"shield-moisture\", found = ",
        "\"wet\"",
        "\"dry\"",
    ),
    defect(
        "seen",
        "of = \"phase\", found = ",
        "\"in-doubt\"",
        "\"same\"",
    ),
];

#[test]
fn every_defect_as_built_stops_and_its_twin_just_inside_does_not() {
    let order = named("larkspur-three-way").order();
    for Defect {
        table,
        row,
        out,
        inside,
    } in DEFECTS
    {
        let kinds = |value: &str| -> BTreeSet<FindingKind> {
            let rows = format!("{table} = [{{ leg = \"B\", phase = 1, {row}{value} }}]\n");
            let found = read(&order, &rows);
            assert!(!found.is_empty(), "{row}{value}");
            for finding in &found {
                let out = finding.kind == FindingKind::StopAndAsk;
                let is_clear = finding.kind == FindingKind::InWindow;
                assert_eq!(finding.why.is_none(), is_clear, "{finding:?}");
                assert!(out || finding.kind != FindingKind::NoWindow);
                assert!(finding.window.is_some(), "{finding:?}");
                assert!(!finding.whose.is_empty(), "{finding:?}");
            }
            found.iter().map(|finding| finding.kind).collect()
        };
        assert!(kinds(out).contains(&FindingKind::StopAndAsk), "{row}{out}");
        // A diameter that the job has too is doubted for that alone.
        let wanted = if row.contains("diameter\", over") {
            FindingKind::CannotTell
        } else {
            FindingKind::InWindow
        };
        assert_eq!(kinds(inside), BTreeSet::from([wanted]), "{row}{inside}");
    }
}

#[test]
fn an_error_that_reaches_over_the_edge_asks_for_a_better_instrument() {
    let order = named("larkspur-three-way").order();
    let row = |value: &str| {
        format!(
            "along = [{{ leg = \"B\", phase = 1, of = \"insulation-screen-edge\", with = \"rule\", at = [\"{value}\"] }}]\n"
        )
    };
    for (value, why) in [
        ("126.7 mm", "below 0.3 mm"),
        ("127.2 mm", "below 0.2 mm"),
        ("5 in", "on the edge of the window"),
    ] {
        let found = read(&order, &row(value));
        assert_eq!(found[0].kind, FindingKind::CannotTell, "{value}");
        let said = found[0].why.clone().unwrap_or_default();
        assert!(said.contains(why), "{value}: {said}");
    }
}

/// A number without a tolerance is a window for nobody: off it work stops, on it nobody has said that it may go on.
#[test]
fn a_reading_without_a_window_is_never_in_a_window() {
    for case in everything() {
        let order = case.order();
        let judged = judged(&order);
        let cuts = judged.inputs.legs.iter().flat_map(|leg| {
            let cuts = leg.cutback.cuts.iter().map(|cut| (leg.leg.id.clone(), cut));
            cuts.filter(|(_, cut)| cut.window.is_none() && cut.plane.is_cut())
        });
        for (leg, cut) in cuts {
            let mm = cut.nominal.map_or(100.0, |nominal| nominal.mm());
            for (off, wanted) in [(0.0, FindingKind::NoWindow), (2.0, FindingKind::StopAndAsk)] {
                let rows = format!(
                    "along = [{{ leg = \"{leg}\", phase = 1, of = \"{}\", with = \"rule\", at = [\"{:.2} mm\"] }}]\n",
                    cut.plane.name(),
                    mm + off
                );
                let wanted = if cut.nominal.is_some() {
                    wanted
                } else {
                    FindingKind::NoWindow
                };
                for finding in read(&order, &rows) {
                    assert_eq!(finding.kind, wanted, "{}: {rows}", case.slug);
                }
            }
        }
    }
}

/// A reading further from the middle of its window is never found better, and a larger error never brings one into the window.
#[test]
fn more_deviation_and_a_larger_error_never_improve_a_finding() {
    let order = named("larkspur-three-way").order();
    let judged = judged(&order);
    let kind = |at: f64, error: f64| {
        let text = format!(
            "job = \"{}\"\nplan = \"{PLAN}\"\nby = \"x\"\ndate = 2026-03-09\ninstrument = [{{ id = \"r\", kind = \"steel-rule\", error = \"{error:.2} mm\" }}]\nalong = [{{ leg = \"B\", phase = 2, of = \"insulation-screen-edge\", with = \"r\", at = [\"{at:.2} mm\"] }}]\n",
            order.job.id
        );
        let built = read_built(&Source::new("r", text), &order.job, PLAN);
        let built = built.unwrap_or_else(|found| panic!("{}", lines(&texts(&found))));
        let found = findings(&judged, &built);
        let found = found.findings.into_iter().find(|f| f.read.is_some());
        found.expect("a finding").kind
    };
    let middle = 0.5 * (120.65 + 127.0);
    let errors = [0.05, 0.3, 0.8, 2.0, 4.0];
    let mut seen = BTreeSet::new();
    for side in [-1.0, 1.0] {
        let mut before = [FindingKind::InWindow; 5];
        for step in 0..60 {
            let at = middle + side * 0.1 * f64::from(step);
            let kinds = errors.map(|error| kind(at, error));
            seen.extend(kinds);
            for (k, (now, before)) in kinds.iter().zip(before).enumerate() {
                assert!(*now >= before, "{at} {}: {before:?} {now:?}", errors[k]);
            }
            for pair in kinds.windows(2) {
                let gets_in = pair[1] == FindingKind::InWindow && pair[0] != FindingKind::InWindow;
                let gets_out =
                    pair[0] == FindingKind::InWindow && pair[1] == FindingKind::StopAndAsk;
                assert!(!gets_in && !gets_out, "{at}: {kinds:?}");
            }
            before = kinds;
        }
    }
    assert_eq!(seen.len(), 3, "{seen:?}");
}

#[test]
fn readings_of_another_job_another_plan_or_an_unknown_thing_are_refused_all_at_once() {
    let order = named("larkspur-three-way").order();
    let text = r#"job = "dock"
plan = "CCCC-DDDD"
instrument = [{ id = "rule", kind = "steel-rule" }, { id = "rule", kind = "calliper", error = "0.1 mm" }]
along = [
  { leg = "Z", phase = 1, of = "jacket-edge", at = ["7.16 in"], with = "tape" },
  { leg = "A", phase = 4, of = "jacket-edge", at = ["7 1/16 in"] },
]
across = [{ leg = "A", phase = 1, of = "diameter", values = ["20 mm"], with = "rule" }]
resistance = [{ leg = "A", phase = 1, of = "contact", to = "B", ohm = "1 mohm", with = "rule" }]
seen = [{ leg = "A", phase = 1, of = "bridge", found = "ok" }]
"#;
    let source = Source::new("readings.toml", text.to_owned());
    let found = read_built(&source, &order.job, PLAN).expect_err("it is wrong");
    let said = lines(&texts(&found));
    for expected in [
        "readings.toml:1:7 These readings are of job `dock`, and the job given is `larkspur-three-way`.",
        "readings.toml:2:8 These readings were taken with plan CCCC-DDDD in hand, and this job makes plan KTRM-47WX.",
        "`rule` is named twice.",
        "No leg is named `Z`.",
        "7.16",
        "A reading of `jacket-edge` needs `with`.",
        "A reading of `diameter` needs `over`.",
        "A reading of `contact` takes no `to`.",
        "Instrument `rule` has no `error_ohm`.",
        "`ok` is no word for `bridge`. Hint: The words are: on-and-tight, loose, off.",
        "This reading does not say who read it.",
        "This reading has no day.",
    ] {
        assert!(said.contains(expected), "{expected}:\n{said}");
    }
}

#[test]
fn the_mark_of_the_plan_is_asked_for_and_findings_read_back() {
    let order = named("larkspur-three-way").order();
    let judged = judged(&order);
    let tongue = Tongue::english(Words::Us);
    let plan = mark_of(&judged, &program(), &tongue).short;
    let text = blank(&judged, &plan, "");
    let built = read_built(&Source::new("b", text), &order.job, &plan).expect("a form");
    let document = findings(&judged, &built);
    assert_eq!(document.plan_mark.short, plan);
    let text = serde_json::to_string(&document).expect("it is JSON");
    let back: Findings = serde_json::from_str(&text).expect("it reads back");
    assert_eq!(back, document);
}

/// A reading that is in its window by itself is doubted where another of the same, or the job's own, says something else, and where one value stands for several.
#[test]
fn readings_that_disagree_are_not_in_a_window() {
    let order = named("larkspur-three-way").order();
    let doubtful = |rows: &str, why: &str| {
        let found = read(&order, rows);
        let kinds: Vec<FindingKind> = found.iter().map(|finding| finding.kind).collect();
        assert!(!kinds.contains(&FindingKind::InWindow), "{rows}: {kinds:?}");
        let said = found.iter().filter_map(|finding| finding.why.as_deref());
        assert!(
            said.clone().any(|said| said.contains(why)),
            "{rows}: {found:?}"
        );
    };
    doubtful(
        r#"along = [
  { leg = "B", phase = 1, of = "jacket-edge", with = "rule", at = ["274 mm"] },
  { leg = "B", phase = 1, of = "jacket-edge", with = "rule", at = ["278 mm"] },
]"#,
        "another reading of the same",
    );
    doubtful(
        r#"across = [{ leg = "B", phase = 1, of = "diameter", over = "insulation", with = "calliper", values = ["24.0 mm"] }]"#,
        "the job, and with it the plan, has another reading",
    );
}

/// Each look has its own hold point: one does not stand for the other.
#[test]
fn a_surface_that_is_looked_at_twice_needs_two_looks() {
    let order = named("larkspur-three-way").order();
    let row = |found: &str| {
        format!(
            r#"  {{ leg = "B", phase = 1, of = "surface", on = "insulation", found = "{found}" }},"#
        )
    };
    let kinds = |rows: &[&str]| -> Vec<FindingKind> {
        let rows: Vec<String> = rows.iter().map(|found| row(found)).collect();
        let all = found(&order, &format!("seen = [\n{}\n]", rows.join("\n"))).findings;
        let of = |finding: &&FindingDoc| {
            let slot = serde_json::to_value(&finding.slot).expect("a slot");
            slot["end"]["leg"] == "B"
                && slot["end"]["phase"] == 1
                && slot["measured"]["surface"]["on"] == "insulation"
        };
        all.iter().filter(of).map(|finding| finding.kind).collect()
    };
    use FindingKind::{InWindow, Missing, StopAndAsk};
    assert_eq!(kinds(&["nothing"]), [InWindow, Missing]);
    assert_eq!(kinds(&["nothing", "nick"]), [InWindow, StopAndAsk]);
    assert_eq!(kinds(&["nothing", "nothing"]), [InWindow, InWindow]);
    let third = kinds(&["nothing", "nothing", "nick"]);
    assert_eq!(third, [InWindow, FindingKind::CannotTell, StopAndAsk]);
}

/// A defect that nobody asks about is still one; the conductor end off its stated place is one.
#[test]
fn a_defect_that_nobody_asks_about_stops_and_so_does_a_place_off_its_number() {
    let order = named("larkspur-three-way").order();
    for (rows, kind) in [
        (
            r#"seen = [{ leg = "A", phase = 1, of = "surface", on = "insulation-screen", found = "nick" }]"#,
            FindingKind::StopAndAsk,
        ),
        (
            r#"seen = [{ leg = "A", phase = 1, of = "surface", on = "insulation-screen", found = "nothing" }]"#,
            FindingKind::NoWindow,
        ),
        (
            r#"along = [{ leg = "B", phase = 1, of = "conductor-end", with = "rule", at = ["300 mm"] }]"#,
            FindingKind::StopAndAsk,
        ),
        (
            r#"along = [{ leg = "B", phase = 1, of = "conductor-end", with = "rule", at = ["12 mm"] }]"#,
            FindingKind::NoWindow,
        ),
    ] {
        let found = read(&order, rows);
        assert_eq!(found.len(), 1, "{rows}");
        assert_eq!(found[0].kind, kind, "{rows}");
    }
    let note = r#"seen = [{ leg = "A", phase = 1, of = "bridge", note = "came loose" }]"#;
    let said = readings(&order, note).expect_err("a note alone");
    assert!(said.contains("a note or a decision and no value"), "{said}");
}
