//! A job and its rows as trees, and every line that may be deleted from them.

use super::helped;
use crate::cases::{Case, read};
use crate::laws::toml_text::{text, tree};
use jointwright_joint::catalogue::CATALOGUE;
use jointwright_joint::form::{Kind, Need, Shape};
use jointwright_joint::job::{JOB, JointKind};
use jointwright_joint::judge::judge_run;
use jointwright_joint::judge::{judge, judge_unsolved, judge_without_fields};
use jointwright_joint::limit::{Ruling, Subject};
use std::collections::BTreeSet;
use toml::{Table, Value};

/// Extent of the computation before the checks run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Depth {
    Unsolved,
    WithoutFields,
    Whole,
}

/// A step into a tree.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Segment {
    Key(String),
    Row(usize),
}

/// A line of the job (no file) or of a catalogue, by the number of the file.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Line {
    pub file: Option<usize>,
    pub path: Vec<Segment>,
}

impl Line {
    /// The line in words, rows by their names: `leg B.cable.class`.
    pub fn words(&self) -> String {
        let mut words = String::new();
        for step in &self.path {
            match step {
                Segment::Key(key) if words.is_empty() => words.push_str(key),
                Segment::Key(key) => words.push_str(&format!(".{key}")),
                Segment::Row(index) => words.push_str(&format!(" {}", index + 1)),
            }
        }
        match self.file {
            None => words,
            Some(_) => format!("row {words}"),
        }
    }

    /// Keys on the way, without rows: `leg.cable.class`.
    pub fn keys(&self) -> String {
        let keys = self.path.iter().filter_map(|step| match step {
            Segment::Key(key) => Some(key.as_str()),
            Segment::Row(_) => None,
        });
        keys.collect::<Vec<&str>>().join(".")
    }
}

/// Ruling that the deletion of a line has helped.
#[derive(Clone, Debug)]
pub struct Help {
    pub lines: Vec<Line>,
    pub check: &'static str,
    pub subject: Subject,
    pub what: String,
}

/// A job and its catalogues.
#[derive(Clone, Debug)]
pub struct Bench {
    pub name: String,
    pub job: Table,
    pub catalogues: Vec<(String, Table)>,
}

impl Bench {
    /// Bench of a case, with only the rows that it names.
    pub fn of(case: Case) -> Bench {
        let job = tree(case.job);
        let mut named = BTreeSet::new();
        texts(&Value::Table(job.clone()), &mut named);
        let catalogues = case.catalogues().into_iter().map(|(name, text)| {
            let mut rows = tree(&text);
            for (_, kind) in rows.iter_mut() {
                if let Value::Array(rows) = kind {
                    rows.retain(|row| {
                        let id = row.get("id").and_then(Value::as_str);
                        id.is_none_or(|id| named.contains(id))
                    });
                }
            }
            (name, rows)
        });
        Bench {
            name: case.slug.to_owned(),
            catalogues: catalogues.collect(),
            job,
        }
    }

    /// The same with one phase, so that each end is examined once.
    pub fn in_one_phase(mut self) -> Bench {
        for (key, value) in self.job.iter_mut() {
            match value {
                Value::Array(rows) => rows.retain_mut(|row| {
                    let phase = row.as_table_mut().and_then(|row| row.get_mut("phase"));
                    let Some(phase) = phase else { return true };
                    if let Value::Array(several) = phase
                        && several.contains(&Value::Integer(1))
                    {
                        *phase = Value::Integer(1);
                    }
                    *phase == Value::Integer(1)
                }),
                Value::Table(head) if key == "job" => {
                    head.insert("phases".to_owned(), Value::Integer(1));
                }
                _ => {}
            }
        }
        self
    }

    /// Rulings of the bench; `None` if it is refused.
    pub fn rulings(&self, depth: Depth) -> Option<Vec<Ruling>> {
        let catalogues: Vec<(String, String)> = self
            .catalogues
            .iter()
            .map(|(name, rows)| (name.clone(), text(rows, None)))
            .collect();
        let order = read(&text(&self.job, None), &catalogues).ok()?;
        if order.job.kind == JointKind::Cable {
            return judge_run(&order).ok().map(|judged| judged.rulings);
        }
        let judged = match depth {
            Depth::Unsolved => judge_unsolved(&order),
            Depth::WithoutFields => judge_without_fields(&order),
            Depth::Whole => judge(&order),
        };
        judged.ok().map(|judged| judged.rulings)
    }

    /// Every optional line of the job.
    pub fn job_lines(&self) -> Vec<Line> {
        lines(&self.job, &JOB, None)
    }

    /// Every optional line of the rows that it names.
    pub fn row_lines(&self) -> Vec<Line> {
        let files = self.catalogues.iter().enumerate();
        let of_file = files.flat_map(|(file, (_, rows))| lines(rows, &CATALOGUE, Some(file)));
        // A row that the job names cannot be deleted; its lines can.
        of_file.filter(|line| line.path.len() > 2).collect()
    }

    /// The bench without these lines.
    pub fn without(&self, lines: &[Line]) -> Bench {
        let mut bench = self.clone();
        let mut lines: Vec<&Line> = lines.iter().collect();
        lines.sort();
        // From the last to the first, so that the row numbers of the whole file stay valid.
        for line in lines.into_iter().rev() {
            let table = match line.file {
                None => &mut bench.job,
                Some(file) => &mut bench.catalogues[file].1,
            };
            take_out(table, &line.path);
        }
        bench
    }

    /// Rulings that the deletion of these lines helps.
    pub fn helped_by(&self, lines: &[Line], before: &[Ruling], depth: Depth) -> Vec<Help> {
        let Some(after) = self.without(lines).rulings(depth) else {
            return Vec::new();
        };
        let helped = helped(before, &after).into_iter();
        let help = helped.map(|(check, subject, what)| Help {
            lines: lines.to_vec(),
            check,
            subject,
            what,
        });
        help.collect()
    }
}

fn texts(value: &Value, found: &mut BTreeSet<String>) {
    match value {
        Value::String(text) => {
            found.insert(text.clone());
        }
        Value::Array(items) => items.iter().for_each(|item| texts(item, found)),
        Value::Table(table) => table.iter().for_each(|(_, item)| texts(item, found)),
        _ => {}
    }
}

fn lines(table: &Table, shape: &Shape, file: Option<usize>) -> Vec<Line> {
    let mut paths = Vec::new();
    optional(table, shape, &[], &mut paths);
    paths.into_iter().map(|path| Line { file, path }).collect()
}

/// Every optional item: fields, and rows and words of optional lists.
fn optional(table: &Table, shape: &Shape, path: &[Segment], found: &mut Vec<Vec<Segment>>) {
    let under = |step: Segment, path: &[Segment]| -> Vec<Segment> {
        path.iter().cloned().chain([step]).collect()
    };
    for field in shape.fields {
        let Some(value) = table.get(field.name) else {
            continue;
        };
        let here = under(Segment::Key(field.name.to_owned()), path);
        let is_optional = matches!(field.need, Need::Optional);
        if is_optional {
            found.push(here.clone());
        }
        match (&field.kind, value) {
            (Kind::Table(inner), Value::Table(table)) => optional(table, inner, &here, found),
            (Kind::Rows(inner), Value::Array(rows)) => {
                for (index, row) in rows.iter().enumerate() {
                    let here = under(Segment::Row(index), &here);
                    if is_optional || rows.len() > 1 {
                        found.push(here.clone());
                    }
                    if let Value::Table(table) = row {
                        optional(table, inner, &here, found);
                    }
                }
            }
            (Kind::List(_) | Kind::Several(_), Value::Array(items)) if items.len() > 1 => {
                found.extend((0..items.len()).map(|index| under(Segment::Row(index), &here)));
            }
            _ => {}
        }
    }
}

fn take_out(table: &mut Table, path: &[Segment]) {
    let Some((Segment::Key(first), rest)) = path.split_first() else {
        return;
    };
    let Some(value) = table.get_mut(first) else {
        return;
    };
    match (rest, value) {
        ([], _) => {
            table.remove(first);
        }
        ([Segment::Row(index)], Value::Array(rows)) if *index < rows.len() => {
            rows.remove(*index);
        }
        ([Segment::Row(index), rest @ ..], Value::Array(rows)) => {
            if let Some(Value::Table(row)) = rows.get_mut(*index) {
                take_out(row, rest);
            }
        }
        (rest, Value::Table(inner)) => take_out(inner, rest),
        _ => {}
    }
}
