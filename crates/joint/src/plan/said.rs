//! Said: a ruling in the figures that a person reads.
//!
//! Why its own room: terminal, sheet and pictures print the same figures, and no figure that the number's own error makes idle.
//!
//! Invariants: a margin is rounded downward, and a value without an error of its own toward its limit, so that nothing looks better than it is; where an error is stated, no figure finer than its first is printed; plan.json stays unrounded.
//!
//! Not here: the ruling itself (`limit`).

use super::{DatumDoc, RulingDoc};
use crate::limit::{Lengths, check_row};
use jointwright_units::{Interval, Length, range_text};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Finest decimals that are ever printed: of a millimetre, the nanometre.
const FINEST: i32 = 6;
/// What a double may be off in the last figure that counts.
const IDLE: f64 = 1e-6;

/// Rounding of a number to a place.
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
    // No minus before a nought.
    whole / scale + 0.0
}

/// Text with so many decimals, without idle noughts behind the first.
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

/// The decimals that an error leaves: down to its own first figure.
fn decimals_of(error: f64) -> i32 {
    let places = -error.log10().floor();
    (places.clamp(0.0, f64::from(FINEST))) as i32
}

/// A number as it is printed, or a range.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Figure {
    /// Number.
    One(String),
    /// Least and greatest.
    Range(String, String),
}

/// A limit as it is printed, and how it binds.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Bound {
    /// Greatest that is permitted.
    AtMost(String),
    /// Least that is permitted.
    AtLeast(String),
    /// A number that is neither.
    KeepTo(String),
    /// Least and greatest that are permitted.
    Within(String, String),
}

/// Value, limit and margin of a ruling, printed with the same decimals.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Figures {
    /// What was found or computed.
    pub value: Figure,
    /// Its error, where one is stated.
    pub error: Option<String>,
    /// What it must keep to.
    pub limit: Bound,
    /// The limit of a diameter in inches, rounded inward.
    pub inches: Option<[String; 2]>,
    /// What is left between them.
    pub margin: String,
}

/// How a limit binds.
#[derive(Clone, Copy, PartialEq)]
enum Side {
    AtMost,
    AtLeast,
}

/// Worst end of a value for a limit of one side.
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
    /// What decides it, in figures: value with its error, limit, what is left between them; with the limit of a diameter in inches where the page has them.
    ///
    /// None where it does not rest on numbers with a margin.
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

    /// The limit in inches, for diameters: rounded inward.
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
        // Without an error: the fewest figures in which the value still stands to its limit as it does.
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

/// Whether the printed value keeps to the printed limit wherever the value keeps to the limit.
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
            // A margin that is there is seen.
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
