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
    let _ = writeln!(
        text,
        "# by = \"\"\n# date = {}\n\ninstrument = [\n  # {{ id = \"rule\", kind = \"steel-rule\", error = \"\" }},\n]",
        job.date
    );
    let slots = slots(judged);
    for table in Table::ALL {
        let rows: Vec<&Slot> = slots
            .iter()
            .filter(|slot| table_of(&slot.measured).0 == table)
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

/// Slots that the hold points fill, end by end, each once, in the order of the make-up.
pub(super) fn slots(judged: &Judged<'_>) -> Vec<Slot> {
    let mut slots: Vec<Slot> = Vec::new();
    let steps = programme(&judged.inputs).steps.into_iter();
    let readings = steps.filter_map(|step| step.hold);
    let readings = readings.flat_map(|hold| hold.readings);
    for slot in readings.flat_map(|wanted| wanted.slots) {
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
        Table::Along | Table::Across | Table::Torque => format!(", {} = []", table.value()),
        Table::Resistance | Table::Count | Table::Seen => String::new(),
    };
    let words = match (table, words_of(&slot.measured)) {
        (Table::Seen, []) => format!(" # {} = name", table.value()),
        (Table::Seen, words) => format!(" # {} = {}", table.value(), words.join(" | ")),
        (Table::Resistance, _) => format!(" # {} = \"0.4 mohm\", with = …", table.value()),
        (Table::Count, _) => format!(" # {} = number", table.value()),
        _ => String::new(),
    };
    format!(
        "{{ leg = \"{}\", phase = {}, of = \"{of}\"{beside}{value} }},{words}",
        slot.end.leg, slot.end.phase
    )
}
