//! Daily: a load that repeats every day.

use super::shape::field;
use super::walk_job::JobReader;
use crate::form::Need::Required;
use crate::form::{Field, Kind, Record, Shape, Value};

/// Hours of a day.
const N_HOURS: usize = 24;

/// A load that repeats every day.
#[derive(Clone, Debug, PartialEq)]
pub struct Daily {
    /// Load of each hour over the greatest, 0 to 1.
    pub loads_ratio: [f64; N_HOURS],
    /// Where they are from, who stands for them, when.
    pub source: String,
}

pub(super) const DAILY: Field = field(
    "daily",
    Kind::Table(&SHAPE),
    crate::form::Need::Optional,
    "Of a run of cable without a joint: how its load goes through the day.",
);

const SHAPE: Shape = Shape {
    name: "daily",
    about: "How a load goes through the day, every day alike.",
    fields: &[
        field(
            "loads",
            Kind::List(&Kind::Number {
                least: 0.0,
                greatest: 1.0,
            }),
            Required,
            "24 numbers, the load of each hour over that of the hour that has most, which is 1.",
        ),
        field(
            "from",
            Kind::Said,
            Required,
            "Where they are from: a recording of the feeder, a forecast.",
        ),
        field("by", Kind::Text, Required, "Who stands for it."),
        field("date", Kind::Date, Required, "When."),
    ],
};

impl JobReader<'_> {
    /// The day of a duty.
    pub(super) fn daily(&mut self, duty: &Record) -> Option<Daily> {
        let row = duty.record("daily")?;
        let numbers = row.list("loads").filter_map(|item| match item.value {
            Value::Number(number) => Some(number),
            _ => None,
        });
        let loads: Vec<f64> = numbers.collect();
        let greatest = loads.iter().copied().fold(0.0, f64::max);
        let loads: Option<[f64; N_HOURS]> = loads.try_into().ok();
        let Some(loads_ratio) = loads.filter(|_| greatest == 1.0) else {
            self.complain(
                row.at("loads"),
                "A day has 24 loads, each over the greatest, which is 1.".to_owned(),
                "Divide each by the greatest of them.",
            );
            return None;
        };
        Some(Daily {
            loads_ratio,
            source: format!(
                "{}; {}, {}",
                row.string("from")?,
                row.string("by")?,
                row.date("date")?
            ),
        })
    }
}
