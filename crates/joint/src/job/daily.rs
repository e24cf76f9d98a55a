//! Daily: a load that repeats every day.

use super::reader::JobReader;
use crate::form::Need::{Optional, Required};
use crate::form::{Field, Kind, Record, Shape, Value, field};
use crate::said::{JobDutyHint, JobDutySaid};

/// Hours of a day.
const N_HOURS: usize = 24;

/// Known facts of a day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Day {
    /// Ratio of each hour's load to the greatest, 0 to 1.
    Loads([f64; N_HOURS]),
    /// Loss-load factor alone, 1/24 to 1.
    LossLoad(f64),
}

/// Load that repeats every day.
#[derive(Clone, Debug, PartialEq)]
pub struct Daily {
    /// Known facts of the day.
    pub day: Day,
    /// Origin of these facts, with person and date.
    pub source: String,
}

pub(super) const DAILY: Field = field(
    "daily",
    Kind::Table(&SHAPE),
    Optional,
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
            Optional,
            "24 numbers, the load of each hour over that of the hour that has most, which is 1; or `loss_load_factor` in their place.",
        ),
        field(
            "loss_load_factor",
            Kind::Number {
                least: 1.0 / 24.0,
                greatest: 1.0,
            },
            Optional,
            "Mean of the squares of the loads over that of the greatest, where the loads of the hours are not known: the worst of all days that have it is taken.",
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

/// Reads the day of a duty.
pub(super) fn daily(reader: &mut JobReader<'_>, duty: &Record) -> Option<Daily> {
    let row = duty.record("daily")?;
    let day = match (row.is_given("loads"), row.is_given("loss_load_factor")) {
        (true, false) => loads(reader, row)?,
        (false, true) => Day::LossLoad(row.number("loss_load_factor")?),
        _ => {
            reader.complain(
                row.at,
                JobDutySaid::LoadsOrFactor,
                JobDutyHint::GiveTheLoads,
            );
            return None;
        }
    };
    Some(Daily {
        day,
        source: format!(
            "{}; {}, {}",
            row.string("from")?,
            row.string("by")?,
            row.date("date")?
        ),
    })
}

fn loads(reader: &mut JobReader<'_>, row: &Record) -> Option<Day> {
    let numbers = row.list("loads").filter_map(|item| match item.value {
        Value::Number(number) => Some(number),
        _ => None,
    });
    let loads: Vec<f64> = numbers.collect();
    let greatest = loads.iter().copied().fold(0.0, f64::max);
    let loads: Option<[f64; N_HOURS]> = loads.try_into().ok();
    let day = loads.filter(|_| greatest == 1.0).map(Day::Loads);
    if day.is_none() {
        reader.complain(
            row.at("loads"),
            JobDutySaid::NotTwentyFourLoads,
            JobDutyHint::DivideByTheGreatest,
        );
    }
    day
}
