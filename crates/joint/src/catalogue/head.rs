//! Head of a row: name, paper, second person, shelf life and steps, which every part has.
//!
//! Invariants: every step that another waits for stands in the same row; no step waits for itself.

use super::reader::RowReader;
use super::word::{FROM_DATES, METALS, metal};
use crate::cable::Metal;
use crate::form::Need::{Optional, Required};
use crate::form::{Kind, Measure, Record, Shape, Span, Value, field};
use crate::said::{Begun, Doubt, Paper};
use crate::stage::{STAGE_NAMES, Stage};
use jiff::civil::Date;

/// A part's own paper.
#[derive(Clone, Debug, PartialEq)]
pub struct Instructions {
    /// Number or title.
    pub paper: String,
    /// Revision.
    pub revision: String,
    /// Date.
    pub date: Option<Date>,
    /// Last day on which somebody saw that the paper is the one in force.
    pub seen_current: Option<Date>,
}

/// Fields that every row has.
#[derive(Clone, Debug, PartialEq)]
pub struct Head {
    /// Short name.
    pub id: String,
    /// Name of the part.
    pub name: String,
    /// Whether it is an invented part, or holds the data of one.
    pub demonstration: bool,
    /// Paper of the part.
    pub instructions: Instructions,
    /// Person who compared the row with its paper, and the day; `None` if no second person did.
    pub checked: Option<(String, Date)>,
    /// Day of the work, where the row is read for a job.
    pub today: Option<Date>,
    /// Remark.
    pub note: Option<String>,
    /// Shelf life.
    pub shelf: Option<Shelf>,
    /// Steps of its instructions.
    pub steps: Vec<InstructionStep>,
    /// Place in its file.
    pub place: Span,
}

impl Head {
    /// Row and paper for a ruling that rests on it, with the doubts about the row.
    pub fn source(&self) -> Paper {
        Paper {
            row: self.id.clone(),
            ..self.paper()
        }
    }

    /// Paper and revision, with the doubts about the row.
    pub fn paper(&self) -> Paper {
        let unchecked = self.checked.is_none().then_some(Doubt::NotChecked);
        let seen = self.current_only_until();
        let seen = seen.map(|day| Doubt::CurrentOnlyUntil(day.to_string()));
        Paper {
            row: String::new(),
            paper: self.instructions.paper.clone(),
            revision: self.instructions.revision.clone(),
            doubts: unchecked.into_iter().chain(seen).collect(),
        }
    }

    /// Last day on which its paper was seen to be the one in force, if that is before the day of the work.
    pub(crate) fn current_only_until(&self) -> Option<Date> {
        let seen = self.instructions.seen_current?;
        self.today.is_some_and(|today| seen < today).then_some(seen)
    }
}

/// Shelf life.
#[derive(Clone, Debug, PartialEq)]
pub struct Shelf {
    /// Months.
    pub months: i64,
    /// Date from which the months run: "made" or "expanded".
    pub from: String,
    /// Storage temperatures in degrees Celsius, if stated.
    pub store_degc: (Option<f64>, Option<f64>),
}

impl Shelf {
    /// Event from which the age of a part is counted.
    pub fn begun(&self) -> Begun {
        if self.from == "expanded" {
            Begun::Expanded
        } else {
            Begun::Made
        }
    }
}

/// A step of the part's instructions.
#[derive(Clone, Debug, PartialEq)]
pub struct InstructionStep {
    /// Short name.
    pub id: Option<String>,
    /// Instruction.
    pub say: String,
    /// Names of the steps before it.
    pub after: Vec<String>,
    /// Danger of the step.
    pub caution: Option<String>,
    /// Whether work stops until it is measured.
    pub hold: bool,
    /// Moment of the make-up, if the row states it.
    pub stage: Option<Stage>,
    /// Conductor metals of the step; empty for all.
    pub metals: Vec<Metal>,
}

/// A kind of row, with its reader; `None` if a field that it needs is missing (a complaint stands).
pub(super) trait Row: Sized {
    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Self>;
    fn head(&self) -> &Head;
    fn head_mut(&mut self) -> &mut Head;

    /// Marks the row as invented if it holds the data of an invented part.
    fn mark_as_copy(&mut self, is_copy: bool) {
        self.head_mut().demonstration |= is_copy;
    }
}

/// The two functions of [`Row`] that are alike for every row with a field `head`.
macro_rules! row_heads {
    () => {
        fn head(&self) -> &Head {
            &self.head
        }
        fn head_mut(&mut self) -> &mut Head {
            &mut self.head
        }
    };
}
pub(super) use row_heads;

pub(super) const INSTRUCTIONS: Shape = Shape {
    name: "instructions",
    about: "The part's own paper: it prevails.",
    fields: &[
        field(
            "paper",
            Kind::Text,
            Required,
            "Number or title of the paper.",
        ),
        field("revision", Kind::Text, Required, "Its revision."),
        field("date", Kind::Date, Optional, "Its date."),
        field(
            "seen_current",
            Kind::Date,
            Optional,
            "Last day on which somebody saw that this revision is the one in force.",
        ),
    ],
};

pub(super) const STEP: Shape = Shape {
    name: "step",
    about: "A step of the part's own instructions.",
    fields: &[
        field(
            "say",
            Kind::Said,
            Required,
            "The step, in the instructions' sense and our words.",
        ),
        field(
            "after",
            Kind::List(&Kind::Id),
            Optional,
            "Short names of steps that come before it.",
        ),
        field("id", Kind::Id, Optional, "Short name of this step."),
        field("caution", Kind::Said, Optional, "What can hurt here."),
        field(
            "hold",
            Kind::Flag,
            Optional,
            "True where work stops until it is measured.",
        ),
        field(
            "stage",
            Kind::Choice(STAGE_NAMES),
            Optional,
            "Moment of the make-up at which it stands; left out, the one at which the part itself comes on.",
        ),
        field(
            "metals",
            Kind::List(&Kind::Choice(METALS)),
            Optional,
            "Conductor metals for which the step is; left out, for all.",
        ),
    ],
};

pub(super) const SHELF: Shape = Shape {
    name: "shelf",
    about: "How long the part may lie in store, as the label or paper says.",
    fields: &[
        field(
            "months",
            Kind::Integer {
                least: 1,
                greatest: 600,
            },
            Required,
            "Months from the date named by `from`.",
        ),
        field(
            "from",
            Kind::Choice(FROM_DATES),
            Required,
            "Date that the months run from.",
        ),
        field(
            "store_least",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Lowest storage temperature.",
        ),
        field(
            "store_greatest",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Highest storage temperature.",
        ),
    ],
};

pub(super) fn read_head(reader: &mut RowReader<'_>, record: &Record) -> Option<Head> {
    let steps: Vec<InstructionStep> = record.records("step").filter_map(read_step).collect();
    complain_of_order(reader, record, &steps);
    let checked = read_checked(reader, record);
    let paper = record.record("instructions")?;
    Some(Head {
        id: record.string("id")?,
        name: record.string("name")?,
        demonstration: record.flag("demonstration").unwrap_or(false),
        instructions: Instructions {
            paper: paper.string("paper")?,
            revision: paper.string("revision")?,
            date: paper.date("date"),
            seen_current: paper.date("seen_current"),
        },
        checked,
        today: reader.today,
        note: record.string("note"),
        shelf: record
            .record("shelf")
            .and_then(|shelf| read_shelf(reader, shelf)),
        steps,
        place: reader.place(record.at),
    })
}

/// Person who compared a row with its paper, and the day: both, or neither.
fn read_checked(reader: &mut RowReader<'_>, record: &Record) -> Option<(String, Date)> {
    for (given, other) in [("checked_by", "checked"), ("checked", "checked_by")] {
        if record.is_given(given) && !record.is_given(other) {
            reader.complain(
                record.at(given),
                format!("`{given}` is given without `{other}`."),
                "Say who held the row beside its paper, and on which day; or take both out.",
            );
        }
    }
    record.string("checked_by").zip(record.date("checked"))
}

fn read_shelf(reader: &mut RowReader<'_>, record: &Record) -> Option<Shelf> {
    let store_degc = (
        record.number("store_least"),
        record.number("store_greatest"),
    );
    if let (Some(least), Some(greatest)) = store_degc
        && least > greatest
    {
        reader.complain(
            record.at("store_least"),
            format!("The lowest storage temperature, {least} degC, is above the highest, {greatest} degC."),
            "Exchange them.",
        );
    }
    Some(Shelf {
        months: record.integer("months")?,
        from: record.string("from")?,
        store_degc,
    })
}

fn read_step(record: &Record) -> Option<InstructionStep> {
    Some(InstructionStep {
        id: record.string("id"),
        say: record.string("say")?,
        after: record.texts("after"),
        caution: record.string("caution"),
        hold: record.flag("hold").unwrap_or(false),
        stage: record.text("stage").and_then(Stage::from_name),
        metals: record
            .texts("metals")
            .iter()
            .filter_map(|m| metal(m))
            .collect(),
    })
}

/// Complains of steps that name a step the row does not have, share a name, or wait for each other.
fn complain_of_order(reader: &mut RowReader<'_>, record: &Record, steps: &[InstructionStep]) {
    let rows: Vec<&Record> = record.records("step").collect();
    for row in &rows {
        let id = row.text("id");
        if id.is_some() && rows.iter().filter(|r| r.text("id") == id).count() > 1 {
            reader.complain(
                row.at("id"),
                format!(
                    "Two steps of this row are called `{}`; every step has a name of its own.",
                    id.unwrap_or_default()
                ),
                "Rename one of them.",
            );
        }
        for item in row.list("after") {
            let Value::Text(before) = &item.value else {
                continue;
            };
            if !rows.iter().any(|r| r.text("id") == Some(before)) {
                reader.complain(
                    item.at,
                    format!("`after` names the step `{before}`, which this row does not have."),
                    "Name a step of the same row by its `id`.",
                );
            }
        }
    }
    if let Some(step) = step_in_a_ring(steps)
        && let Some(row) = rows.iter().find(|r| r.text("id") == Some(step))
    {
        reader.complain(
            row.at,
            format!("The step `{step}` waits for itself through `after`; no order of the steps keeps to that."),
            "Look up in the paper which of them comes first.",
        );
    }
}

/// Name of a step that waits for itself, if one does.
fn step_in_a_ring(steps: &[InstructionStep]) -> Option<&str> {
    let before = |id: &str| {
        steps
            .iter()
            .filter(move |s| s.id.as_deref() == Some(id))
            .flat_map(|s| s.after.iter().map(String::as_str))
            .collect::<Vec<&str>>()
    };
    steps.iter().filter_map(|s| s.id.as_deref()).find(|id| {
        let mut seen: Vec<&str> = Vec::new();
        let mut open = before(id);
        while let Some(next) = open.pop() {
            if next == *id {
                return true;
            }
            if !seen.contains(&next) {
                seen.push(next);
                open.extend(before(next));
            }
        }
        false
    })
}
