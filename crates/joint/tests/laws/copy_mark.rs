//! The mark of invented data follows the data: a row copied under another name still marks the plan; a row with its own numbers does not.

#![allow(
    clippy::disallowed_methods,
    reason = "the environment says whether the run is a long one"
)]

use super::toml_text::{Order, each_length, row, rows, text, tree};
use crate::cases::{accepted, named, plan_of, read};
use jointwright_joint::catalogue::{Catalogue, DEMONSTRATION_TEXT};
use jointwright_joint::form::{Complaints, Source};
use jointwright_units::Length;
use toml::{Table, Value};

/// Banner across everything that is invented.
const INVENTED: &str = "INVENTED DEMONSTRATION DATA - NOT FOR ANY CABLE";

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

/// Renames all parts, in the catalogue and in the job alike; names of mating interfaces are data and stay.
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

/// Words across the face for the rows of the demonstration under other names, each changed by `change`, in a catalogue of nothing else, which the job uses.
#[track_caller]
fn face_of(change: impl Fn(&str, &mut Table)) -> Option<String> {
    let case = named("quarry-four-way");
    let job = case
        .job
        .replace("invented = true", "invented = false")
        .replace(
            "shield_part = \"demo-bond-tape\"\n",
            "shield_part = \"demo-bond-tape\"\nseal = \"demo-seal-30\"\n",
        );
    let mut all = catalogue(None);
    for (kind, _) in KINDS {
        for part in rows(&mut all, kind) {
            change(kind, part);
        }
    }
    let order = read(
        &renamed(&job),
        &[("real.toml".to_owned(), renamed(&text(&all, None)))],
    );
    let order = accepted(order, "the job");
    plan_of(&order, "the job").invented
}

/// A copied body among rows with their own numbers, which is then changed further.
#[track_caller]
fn face_of_body(change: impl Fn(&mut Table)) -> Option<String> {
    let copied = tree(DEMONSTRATION_TEXT);
    face_of(|kind, part| {
        let id = part["id"].as_str().unwrap_or_default().to_owned();
        if kind == "body" && id == "demo-leg-body-15" {
            let mut whole = copied.clone();
            let original = row(&mut whole, kind, &id);
            original.insert("demonstration".to_owned(), false.into());
            *part = original.clone();
            change(part);
        }
    })
}

#[test]
fn issue_16_a_copy_is_one_whatever_the_texts_beside_its_numbers() {
    let marked = |what: &str, change: &dyn Fn(&mut Table)| {
        assert_eq!(face_of_body(change).as_deref(), Some(INVENTED), "{what}");
    };
    marked("as it is", &|_| {});
    marked("words of its inside in capitals", &|part| {
        let regions = part["inner"]["region"].as_array_mut().expect("regions");
        for region in regions {
            let region = region.as_table_mut().expect("a region");
            for name in ["material", "name"] {
                let Some(word) = region.get(name).and_then(Value::as_str) else {
                    continue;
                };
                let word = word.to_uppercase();
                region.insert(name.to_owned(), word.into());
            }
        }
    });
    marked("no inside at all", &|part| {
        part.remove("inner").expect("it had one");
    });
    marked("every length longer by 0.09 mm", &|part| {
        let mut value = Value::Table(std::mem::take(part));
        each_length(&mut value, &mut |length| match length.nm() {
            0 => length,
            nm => Length::from_nm(nm + 90_000),
        });
        if let Value::Table(changed) = value {
            *part = changed;
        }
    });
}

#[test]
fn a_body_with_numbers_of_its_own_is_not_taken_for_a_copy() {
    // The twin: the changes of the law on texts do not mark anything by themselves.
    assert_eq!(face_of_body(own_numbers), None);
}

/// Buses of a catalogue with own numbers and one copied bus with another word, beside a copied body or not: whether each is marked.
fn bus_beside(neighbour: bool) -> Vec<(String, bool)> {
    let mut original = tree(DEMONSTRATION_TEXT);
    let mut all = catalogue(Some("demo-bus-4"));
    row(&mut all, "bus", "demo-bus-4").insert("interface".to_owned(), "taper-of-ours".into());
    if neighbour {
        let mut part = row(&mut original, "body", "demo-straight-25").clone();
        part.insert("demonstration".to_owned(), false.into());
        part.insert("id".to_owned(), "nobody-uses-it".into());
        let bodies = all["body"].as_array_mut().expect("bodies");
        bodies.push(part.into());
    }
    let source = Source::new("real.toml", renamed(&text(&all, None)));
    let read = Catalogue::read(&[source], true, &mut Complaints::default());
    let buses = read.buses.iter();
    buses
        .map(|bus| (bus.head.id.clone(), bus.head.demonstration))
        .collect()
}

#[test]
fn issue_16_a_row_with_few_numbers_is_known_by_its_neighbours() {
    let marked = |neighbour| {
        let buses = bus_beside(neighbour);
        buses.into_iter().find(|(id, _)| id == "real-bus-4")
    };
    assert_eq!(marked(true), Some(("real-bus-4".to_owned(), true)));
    // The twin: alone, three numbers that any bus could have are not enough.
    assert_eq!(marked(false), Some(("real-bus-4".to_owned(), false)));
}

/// A plausible number in place of another: a length on the same rule, and every second other number unchanged, because many are common to all.
fn plausible(value: &mut Value, dice: &mut Order) {
    match value {
        Value::Array(items) => items.iter_mut().for_each(|item| plausible(item, dice)),
        Value::Table(table) => {
            let own = ["instructions", "step", "shelf", "id", "name"];
            for (name, item) in table.iter_mut() {
                if !own.contains(&name.as_str()) {
                    plausible(item, dice);
                }
            }
        }
        Value::String(text) => {
            let Ok(length) = Length::parse_diameter(text) else {
                return;
            };
            let share = 60 + dice.below(81) as i64;
            let nm = length.nm() / 100 * share;
            // Whole millimetres above 10 mm, half ones below; eighths of an inch where it was in inches.
            let step = match text.ends_with("in") {
                true if nm >= 10_000_000 => 3_175_000,
                true => 1_587_500,
                false if nm >= 10_000_000 => 1_000_000,
                false => 500_000,
            };
            let steps = (nm + step / 2) / step;
            if steps > 0 {
                *text = Length::from_nm(steps * step).exact_mm();
            }
        }
        Value::Float(number) if dice.below(2) == 0 => {
            *number *= 0.6 + 0.01 * dice.below(81) as f64;
        }
        Value::Integer(number) if dice.below(2) == 0 => *number += dice.below(3) as i64 - 1,
        _ => {}
    }
}

/// Number of rows read, and the rows that are taken for copies, in catalogues with the shape of the demonstration and plausible numbers.
fn taken_by_chance(n_catalogues: u64) -> (usize, Vec<String>) {
    let (mut n_rows, mut taken) = (0, Vec::new());
    for seed in 0..n_catalogues {
        let mut dice = Order(seed);
        let mut all = tree(DEMONSTRATION_TEXT);
        for (kind, _) in KINDS {
            for part in rows(&mut all, kind) {
                part.insert("demonstration".to_owned(), false.into());
                part.remove("interface");
                let mut value = Value::Table(std::mem::take(part));
                plausible(&mut value, &mut dice);
                if let Value::Table(changed) = value {
                    *part = changed;
                }
                // Words of its own, as in another maker's row.
                if part.contains_key("system_greatest") {
                    let classes = ["8.7 kV", "15.5 kV", "17.5 kV", "25.8 kV"];
                    let class = classes[dice.below(classes.len())];
                    part.insert("system_greatest".to_owned(), class.into());
                }
            }
        }
        let source = Source::new("real.toml", renamed(&text(&all, None)));
        let read = Catalogue::read(&[source], true, &mut Complaints::default());
        macro_rules! count {
            ($($rows:ident)*) => {$(
                n_rows += read.$rows.len();
                let marked = read.$rows.iter().filter(|row| row.head.demonstration);
                taken.extend(marked.map(|row| format!("{seed}: {}", row.head.id)));
            )*};
        }
        count!(bodies connectors adapters seals shield_parts);
    }
    (n_rows, taken)
}

#[test]
fn a_plausible_row_is_not_taken_for_a_copy_by_chance() {
    let n = if std::env::var_os("JOINTWRIGHT_LONG").is_some() {
        20_000
    } else {
        200
    };
    let (n_rows, taken) = taken_by_chance(n);
    // Rows that cannot be read are left out; enough rows can be read.
    assert!(n_rows as u64 > 4 * n, "{n_rows} rows");
    // Now and then a small row with the words of an invented one has the same numbers; nothing distinguishes it.
    let is_small = |row: &&String| {
        let small = ["real-bond-", "real-sleeve-", "real-contact-"];
        small.iter().any(|name| row.contains(name))
    };
    let (small, large): (Vec<&String>, Vec<&String>) = taken.iter().partition(is_small);
    assert_eq!(large, Vec::<&String>::new(), "of {n_rows} rows");
    // Seen: 3 of 2933.
    assert!(200 * small.len() < n_rows, "{small:?} of {n_rows} rows");
}
