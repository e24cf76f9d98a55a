//! Blank: the form for readings as built of one joint, with every slot of its hold points and no value.
//!
//! Invariants: read back, the form holds no reading and no complaint; nothing in it is filled in beforehand but names.

use super::words::{Table, table_of, words_of};
use crate::judge::Judged;
use crate::programme::programme;
use crate::slot::{Measured, Slot};
use std::fmt::Write;

/// Text of the form, against the plan with a short mark; `opening` is said at its top, as comments.
pub fn blank(judged: &Judged<'_>, plan: &str, opening: &str) -> String {
    let job = &judged.inputs.order.job;
    let mut text = String::new();
    for line in opening.lines() {
        let _ = writeln!(text, "# {line}");
    }
    let _ = writeln!(text, "\njob = \"{}\"\nplan = \"{plan}\"\n", job.id);
    let _ = writeln!(text, "# by = \"\"\n# date = {}\n\n{INSTRUMENTS}", job.date);
    let (slots, held) = (slots(judged), held(judged));
    for table in Table::ALL {
        // What is looked at twice has a row for each look.
        let n_rows = |slot: &Slot| match table {
            Table::Seen => held.iter().filter(|of| *of == slot).count(),
            _ => 1,
        };
        let rows: Vec<&Slot> = slots
            .iter()
            .filter(|slot| table_of(&slot.measured).0 == table)
            .flat_map(|slot| std::iter::repeat_n(slot, n_rows(slot)))
            .collect();
        if rows.is_empty() {
            continue;
        }
        let _ = writeln!(text, "\n{} = [", table.name());
        let mut before = None;
        for slot in rows {
            if before.as_ref().is_some_and(|end| *end != slot.end) {
                text.push('\n');
            }
            before = Some(slot.end.clone());
            let _ = writeln!(text, "  {}", row(table, slot));
        }
        text.push_str("]\n");
    }
    text
}

/// Instruments and decisions of the form, each to be uncommented.
const INSTRUMENTS: &str = r#"instrument = [
  # { id = "rule", kind = "steel-rule", error = "" },
  # { id = "calliper", kind = "calliper", error = "" },
  # { id = "ohms", kind = "micro-ohmmeter", error_ohm = "" },
  # { id = "wrench", kind = "torque-wrench", error_torque = "" },
]
decision = [
  # { id = "d1", by = "", role = "", authority = "", reached = "", date = , time = "", what = "" },
]"#;

/// Slots of all readings of the hold points, in the order of the make-up; a slot that is read at two hold points comes twice.
fn held(judged: &Judged<'_>) -> Vec<Slot> {
    let steps = programme(&judged.inputs).steps.into_iter();
    let readings = steps.filter_map(|step| step.hold);
    let readings = readings.flat_map(|hold| hold.readings);
    readings.flat_map(|wanted| wanted.slots).collect()
}

/// Slots that the hold points fill, end by end, each once, in the order of the make-up.
pub(super) fn slots(judged: &Judged<'_>) -> Vec<Slot> {
    let mut slots: Vec<Slot> = Vec::new();
    for slot in held(judged) {
        if !slots.contains(&slot) {
            slots.push(slot);
        }
    }
    slots.sort_by(|a, b| a.end.cmp(&b.end));
    slots
}

/// Row of a slot without its value.
fn row(table: Table, slot: &Slot) -> String {
    let (_, of) = table_of(&slot.measured);
    let beside = match &slot.measured {
        Measured::Distance { from, .. } => format!(", from = \"{}\"", from.name()),
        Measured::Diameter { over } => format!(", over = \"{}\"", over.file_name()),
        Measured::BondResistance { to } => format!(", to = \"{to}\""),
        Measured::Surface { on } => format!(", on = \"{}\"", on.file_name()),
        _ => String::new(),
    };
    let value = match table {
        Table::Along => ", with = \"rule\", at = []".to_owned(),
        Table::Across => ", with = \"calliper\", values = []".to_owned(),
        Table::Torque => ", with = \"wrench\", values = []".to_owned(),
        Table::Resistance => ", with = \"ohms\"".to_owned(),
        Table::Count | Table::Seen => String::new(),
    };
    let words = match (table, words_of(&slot.measured)) {
        (Table::Across, _) if matches!(slot.measured, Measured::Diameter { .. }) => {
            " # temperature = \"… degC\"".to_owned()
        }
        (Table::Seen, words) if matches!(of, "strand-moisture" | "shield-moisture") => {
            format!(" # found = \"{}\", how = \"…\"", words.join("\" | \""))
        }
        (Table::Seen, []) => " # found = \"…\", the name on it".to_owned(),
        (Table::Seen, words) => format!(" # found = \"{}\"", words.join("\" | \"")),
        (Table::Resistance, _) => " # ohm = \"… mohm\"".to_owned(),
        (Table::Count, _) => format!(" # {} = number", table.value()),
        _ => String::new(),
    };
    format!(
        "{{ leg = \"{}\", phase = {}, of = \"{of}\"{beside}{value} }},{words}",
        slot.end.leg, slot.end.phase
    )
}
