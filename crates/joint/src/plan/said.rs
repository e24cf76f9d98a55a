//! Said: a ruling in figures for a person to read.
//!
//! Why its own room: terminal, sheet and pictures print the same figures.
//! They print no figure that the number's own error makes meaningless.
//!
//! Invariants: a margin is rounded downward.
//! A value without an error of its own is rounded toward its limit, so that nothing looks better than it is.
//! If an error is stated, no figure finer than its first figure is printed.
//! `plan.json` stays unrounded.
//!
//! Not here: the ruling itself (`limit`).

use super::ruling::{DatumDoc, RulingDoc};
use crate::limit::{Lengths, check_row};
use jointwright_units::{Interval, Length, range_text};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Greatest number of decimals that is ever printed: in millimetres, down to a nanometre.
const FINEST: i32 = 6;
/// Allowance for the rounding error of a double in the last printed figure.
const IDLE: f64 = 1e-6;

/// Direction of rounding.
#[derive(Clone, Copy)]
enum Round {
    Down,
    Up,
    Nearest,
}

fn rounded(number: f64, decimals: i32, round: Round) -> f64 {
    let scale = 10_f64.powi(decimals);
    let scaled = number * scale;
    let whole = match round {
        Round::Down => (scaled + IDLE).floor(),
        Round::Up => (scaled - IDLE).ceil(),
        Round::Nearest => scaled.round(),
    };
    // Adding zero turns -0.0 into 0.0.
    whole / scale + 0.0
}

/// Text with this many decimals, without trailing zeros after the first decimal.
fn text(number: f64, decimals: i32) -> String {
    let places = usize::try_from(decimals).unwrap_or(0);
    let text = format!("{number:.places$}");
    match text.split_once('.') {
        Some((_, part)) if part.len() > 1 => {
            let cut = text.trim_end_matches('0');
            if cut.ends_with('.') {
                format!("{cut}0")
            } else {
                cut.to_owned()
            }
        }
        _ => text,
    }
}

/// Number of decimals down to the first figure of the error.
fn decimals_of(error: f64) -> i32 {
    let places = -error.log10().floor();
    (places.clamp(0.0, f64::from(FINEST))) as i32
}

/// Printed number or range.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Figure {
    /// Number.
    One(String),
    /// Least and greatest.
    Range(String, String),
}

/// Printed limit, and the side on which it binds.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Bound {
    /// Greatest that is permitted.
    AtMost(String),
    /// Least that is permitted.
    AtLeast(String),
    /// Number that is neither.
    KeepTo(String),
    /// Least and greatest that are permitted.
    Within(String, String),
}

/// Value, limit and margin of a ruling, printed with the same decimals.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Figures {
    /// Value found or computed.
    pub value: Figure,
    /// Error of the value, if one is stated.
    pub error: Option<String>,
    /// Limit.
    pub limit: Bound,
    /// The limit of a diameter in inches, rounded inward.
    pub inches: Option<[String; 2]>,
    /// Margin between value and limit.
    pub margin: String,
}

/// Side on which a limit binds.
#[derive(Clone, Copy, PartialEq)]
enum Side {
    AtMost,
    AtLeast,
}

/// Worst end of a value, for a limit on one side.
fn worst_end(value: &DatumDoc, side: Side) -> Option<f64> {
    match (value, side) {
        (DatumDoc::Number(number), _) => Some(*number),
        (DatumDoc::Range { max, .. }, Side::AtMost) => Some(*max),
        (DatumDoc::Range { min, .. }, Side::AtLeast) => Some(*min),
        (DatumDoc::Text(_), _) => None,
    }
}

fn side(value: &DatumDoc, limit: f64, margin: f64) -> Option<Side> {
    let near = |a: f64| (a - margin).abs() <= 1e-9 * (1.0 + margin.abs().max(limit.abs()));
    let most = worst_end(value, Side::AtMost)?;
    let least = worst_end(value, Side::AtLeast)?;
    if near(limit - most) {
        Some(Side::AtMost)
    } else if near(least - limit) {
        Some(Side::AtLeast)
    } else {
        None
    }
}

impl RulingDoc {
    /// Returns the deciding figures: value with its error, limit and margin, and the limit of a diameter in inches if the page has inches.
    ///
    /// `None` if the ruling does not rest on numbers with a margin.
    pub fn figures(&self, has_inches: bool) -> Option<Figures> {
        let (value, limit) = (self.value.as_ref()?, self.limit.as_ref()?);
        let figures = self.settled(value, limit, self.margin?)?;
        let error = self.error.filter(|error| *error > 0.0).map(|error| {
            let decimals = decimals_of(error);
            text(rounded(error, decimals, Round::Up), decimals)
        });
        Some(Figures {
            error,
            inches: self.inches(limit).filter(|_| has_inches),
            ..figures
        })
    }

    /// Limit of a diameter in inches, rounded inward; `None` for any other limit.
    fn inches(&self, limit: &DatumDoc) -> Option<[String; 2]> {
        let is_diameter = check_row(&self.check).is_some_and(|row| row.lengths == Lengths::Across);
        if !is_diameter || self.unit.as_deref() != Some("mm") {
            return None;
        }
        let DatumDoc::Range { min, max } = limit else {
            return None;
        };
        let nm = |mm: f64| Length::from_nm((mm * 1e6).round() as i64);
        let text = range_text(Interval::new(nm(*min), nm(*max))?).inch;
        (!text.0.is_empty()).then_some([text.0, text.1])
    }

    fn settled(&self, value: &DatumDoc, limit: &DatumDoc, margin: f64) -> Option<Figures> {
        if let Some(error) = self.error.filter(|error| *error > 0.0) {
            return figures_at(value, limit, margin, decimals_of(error), true);
        }
        // Without an error, takes the fewest decimals that still show the value on the right side of its limit.
        let fewest = if self.unit.as_deref() == Some("mm") {
            1
        } else {
            2
        };
        let shows = |decimals: &i32| holds(value, limit, margin, *decimals);
        let decimals = (fewest..=FINEST).find(shows).unwrap_or(FINEST);
        figures_at(value, limit, margin, decimals, false)
    }
}

/// Whether the printed value keeps to the printed limit whenever the value itself does.
fn holds(value: &DatumDoc, limit: &DatumDoc, margin: f64, decimals: i32) -> bool {
    let least = 0.5 * 10_f64.powi(-decimals);
    match limit {
        DatumDoc::Number(limit) => {
            let Some(side) = side(value, *limit, margin) else {
                return true;
            };
            let Some(worst) = worst_end(value, side) else {
                return true;
            };
            let (worst, limit) = match side {
                Side::AtMost => (
                    rounded(worst, decimals, Round::Up),
                    rounded(*limit, decimals, Round::Down),
                ),
                Side::AtLeast => (
                    -rounded(worst, decimals, Round::Down),
                    -rounded(*limit, decimals, Round::Up),
                ),
            };
            // A margin above zero must stay visible.
            margin < IDLE || limit - worst > least
        }
        DatumDoc::Range { .. } => margin < IDLE || rounded(margin, decimals, Round::Down) > 0.0,
        DatumDoc::Text(_) => true,
    }
}

fn figures_at(
    value: &DatumDoc,
    limit: &DatumDoc,
    margin: f64,
    decimals: i32,
    nearest: bool,
) -> Option<Figures> {
    let say = |number: f64, round: Round| {
        let round = if nearest { Round::Nearest } else { round };
        text(rounded(number, decimals, round), decimals)
    };
    let (bound, side) = match limit {
        DatumDoc::Number(limit) => match side(value, *limit, margin) {
            Some(Side::AtMost) => (Bound::AtMost(say(*limit, Round::Down)), Some(Side::AtMost)),
            Some(Side::AtLeast) => (Bound::AtLeast(say(*limit, Round::Up)), Some(Side::AtLeast)),
            None => (Bound::KeepTo(say(*limit, Round::Nearest)), None),
        },
        DatumDoc::Range { min, max } => (
            Bound::Within(say(*min, Round::Up), say(*max, Round::Down)),
            None,
        ),
        DatumDoc::Text(_) => return None,
    };
    let value = match (value, side) {
        (DatumDoc::Number(number), Some(Side::AtMost)) => Figure::One(say(*number, Round::Up)),
        (DatumDoc::Number(number), Some(Side::AtLeast)) => Figure::One(say(*number, Round::Down)),
        (DatumDoc::Number(number), None) => Figure::One(say(*number, Round::Nearest)),
        (DatumDoc::Range { min, max }, _) => {
            Figure::Range(say(*min, Round::Down), say(*max, Round::Up))
        }
        (DatumDoc::Text(_), _) => return None,
    };
    Some(Figures {
        value,
        error: None,
        limit: bound,
        inches: None,
        margin: text(rounded(margin, decimals, Round::Down), decimals),
    })
}
