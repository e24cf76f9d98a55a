//! The mark of invented data follows the data: a row copied under another name still marks the plan; a row with its own numbers does not.

use super::toml_text::{each_length, row, rows, text, tree};
use crate::cases::{accepted, named, plan_of, read};
use jointwright_joint::catalogue::DEMONSTRATION_TEXT;
use jointwright_joint::plan::INVENTED;
use jointwright_units::Length;
use toml::{Table, Value};

const KINDS: &[(&str, &str)] = &[
    ("adapter", "demo-adapter-24"),
    ("body", "demo-leg-body-15"),
    ("bus", "demo-bus-4"),
    ("connector", "demo-contact-pressed"),
    ("consumable", "demo-mastic-tape"),
    ("plug", "demo-blank-plug"),
    ("seal", "demo-seal-30"),
    ("shield_part", "demo-bond-wires"),
];

/// Rows of the demonstration under other names and without their mark, every number changed except in `copied`.
fn catalogue(copied: Option<&str>) -> Table {
    let mut catalogue = tree(DEMONSTRATION_TEXT);
    for (kind, _) in KINDS {
        for part in rows(&mut catalogue, kind) {
            part.insert("demonstration".to_owned(), false.into());
            part.insert("name".to_owned(), "A part with a name of its own".into());
            let id = part["id"].as_str().unwrap_or_default().to_owned();
            part.insert(
                "instructions".to_owned(),
                tree("paper = \"ZZ\"\nrevision = \"9\"").into(),
            );
            if copied != Some(id.as_str()) {
                own_numbers(part);
            }
        }
    }
    catalogue
}

/// Every length a part in 50 longer, every voltage higher by 1 kV, every area and count changed.
fn own_numbers(part: &mut Table) {
    let mut value = Value::Table(std::mem::take(part));
    each_length(&mut value, &mut |length| {
        length + Length::from_nm(length.nm() / 50 + 7_000)
    });
    if let Value::Table(changed) = value {
        *part = changed;
    }
    for (name, own) in [("system_greatest", "17.5 kV"), ("area", "35 mm2")] {
        if part.contains_key(name) {
            part.insert(name.to_owned(), own.into());
        }
    }
}

/// Other names for all parts, in the catalogue and in the job alike; what mates with what is data and keeps its word.
fn renamed(text: &str) -> String {
    text.replace("demo-", "real-")
        .replace("real-taper", "demo-taper")
}

fn face(copied: Option<&str>) -> Option<String> {
    let case = named("quarry-four-way");
    // The seal that the example leaves open is named, so that nothing is proposed.
    let job = case
        .job
        .replace("invented = true", "invented = false")
        .replace(
            "shield_part = \"demo-bond-tape\"\n",
            "shield_part = \"demo-bond-tape\"\nseal = \"demo-seal-30\"\n",
        );
    assert_ne!(job, case.job);
    let catalogue = renamed(&text(&catalogue(copied), None));
    let order = read(&renamed(&job), &[("real.toml".to_owned(), catalogue)]);
    let order = accepted(order, copied.unwrap_or("own numbers"));
    plan_of(&order, "the job").invented
}

#[test]
fn a_joint_of_parts_with_their_own_numbers_is_not_marked() {
    assert_eq!(face(None), None);
}

#[test]
fn one_copied_row_of_any_kind_marks_the_whole_plan() {
    for (kind, id) in KINDS {
        assert_eq!(face(Some(id)).as_deref(), Some(INVENTED), "{kind} {id}");
    }
}

#[test]
fn a_copy_with_a_single_number_changed_is_still_a_copy() {
    let case = named("quarry-four-way");
    let mut copy = catalogue(Some("demo-leg-body-15"));
    row(&mut copy, "body", "demo-leg-body-15").insert("parked_length".to_owned(), "261 mm".into());
    let job = renamed(&case.job.replace("invented = true", "invented = false"));
    let order = accepted(
        read(
            &job,
            &[("real.toml".to_owned(), renamed(&text(&copy, None)))],
        ),
        "copy",
    );
    assert_eq!(plan_of(&order, "copy").invented.as_deref(), Some(INVENTED));
}

#[test]
fn an_invented_job_is_marked_whatever_its_parts_are() {
    let case = named("quarry-four-way");
    let catalogue = renamed(&text(&catalogue(None), None));
    let order = accepted(
        read(&renamed(case.job), &[("real.toml".to_owned(), catalogue)]),
        "job",
    );
    assert_eq!(plan_of(&order, "job").invented.as_deref(), Some(INVENTED));
}
