//! Said: a ruling in the words and figures that a person reads.
//!
//! Why its own room: terminal, sheet and pictures say one outcome with one word, and print no figure that the number's own error makes idle.
//!
//! Invariants: a margin is rounded downward, and a value without an error of its own toward its limit, so that nothing looks better than it is; where an error is stated, no figure finer than its first is printed; plan.json stays unrounded.
//!
//! Not here: the ruling itself (`limit`).

use super::{DatumDoc, RulingDoc};
use crate::limit::{Outcome, check_row};
use jointwright_units::{Interval, Length, range_text};

/// Finest decimals that are ever printed: of a millimetre, the nanometre.
const FINEST: i32 = 6;
/// What a double may be off in the last figure that counts.
const IDLE: f64 = 1e-6;

/// The one word for an outcome, as a person reads it.
pub const fn outcome_words(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Pass => "in window",
        Outcome::Fail => "out of window",
        Outcome::NotJudged => "not judged",
    }
}

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

/// Value, limit and margin of a ruling, printed with the same decimals.
struct Figures {
    value: String,
    limit: String,
    margin: String,
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
    /// What decides it, in figures: value with its error, limit, what is left between them.
    ///
    /// None where it does not rest on numbers with a margin.
    pub fn figures(&self, has_inches: bool) -> Option<String> {
        let (value, limit) = (self.value.as_ref()?, self.limit.as_ref()?);
        let (margin, unit) = (self.margin?, self.unit.as_deref()?);
        let figures = self.settled(value, limit, margin)?;
        let found = if self.computed { "computed" } else { "found" };
        let error = self.error.filter(|error| *error > 0.0).map(|error| {
            let error_text = text(
                rounded(error, decimals_of(error), Round::Up),
                decimals_of(error),
            );
            format!(" ± {error_text}")
        });
        let inches = self.inches(limit).filter(|_| has_inches);
        let decides = self.decides.as_ref().map(|why| format!(": {why}"));
        let decides = decides.unwrap_or_default();
        Some(format!(
            "{found} {}{} {unit}, {} {unit}{}; {} {unit} left{decides}",
            figures.value,
            error.unwrap_or_default(),
            figures.limit,
            inches.unwrap_or_default(),
            figures.margin,
        ))
    }

    /// The limit in inches, for diameters: rounded inward.
    fn inches(&self, limit: &DatumDoc) -> Option<String> {
        let is_diameter = check_row(&self.check).is_some_and(|row| row.is_of_diameters);
        if !is_diameter || self.unit.as_deref() != Some("mm") {
            return None;
        }
        let DatumDoc::Range { min, max } = limit else {
            return None;
        };
        let nm = |mm: f64| Length::from_nm((mm * 1e6).round() as i64);
        let text = range_text(Interval::new(nm(*min), nm(*max))?).inch;
        (!text.0.is_empty()).then(|| format!(" ({} to {} in)", text.0, text.1))
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
    let (limit_text, side) = match limit {
        DatumDoc::Number(limit) => match side(value, *limit, margin) {
            Some(Side::AtMost) => (
                format!("at most {}", say(*limit, Round::Down)),
                Some(Side::AtMost),
            ),
            Some(Side::AtLeast) => (
                format!("at least {}", say(*limit, Round::Up)),
                Some(Side::AtLeast),
            ),
            None => (format!("to keep to {}", say(*limit, Round::Nearest)), None),
        },
        DatumDoc::Range { min, max } => (
            format!(
                "within {} to {}",
                say(*min, Round::Up),
                say(*max, Round::Down)
            ),
            None,
        ),
        DatumDoc::Text(_) => return None,
    };
    let value = match (value, side) {
        (DatumDoc::Number(number), Some(Side::AtMost)) => say(*number, Round::Up),
        (DatumDoc::Number(number), Some(Side::AtLeast)) => say(*number, Round::Down),
        (DatumDoc::Number(number), None) => say(*number, Round::Nearest),
        (DatumDoc::Range { min, max }, _) => {
            format!("{} to {}", say(*min, Round::Down), say(*max, Round::Up))
        }
        (DatumDoc::Text(_), _) => return None,
    };
    Some(Figures {
        value,
        limit: limit_text,
        margin: text(rounded(margin, decimals, Round::Down), decimals),
    })
}

#[cfg(test)]
mod tests {
    use super::super::SaidDoc;
    use super::*;

    fn ruling(value: DatumDoc, limit: DatumDoc, margin: f64, unit: &str) -> RulingDoc {
        RulingDoc {
            check: "insulation_in_body".to_owned(),
            question: String::new(),
            leg: None,
            end: None,
            ruling: Outcome::Pass,
            value: Some(value),
            limit: Some(limit),
            unit: Some(unit.to_owned()),
            margin: Some(margin),
            error: None,
            decides: None,
            source: None,
            why: None,
            hint: None,
            asks: Vec::new(),
            stops: false,
            closed_by: None,
            closed_until: None,
            computed: false,
            said: SaidDoc::default(),
        }
    }

    #[track_caller]
    fn check(ruling: &RulingDoc, expected: &str) {
        assert_eq!(ruling.figures(false).as_deref(), Some(expected));
    }

    #[test]
    fn a_value_is_never_said_to_be_nearer_to_the_middle_than_it_is() {
        let of = |value: f64, limit: f64, margin: f64| {
            ruling(
                DatumDoc::Number(value),
                DatumDoc::Number(limit),
                margin,
                "mm",
            )
        };
        check(
            &of(57.896_375, 60.0, 2.103_625),
            "found 57.9 mm, at most 60.0 mm; 2.1 mm left",
        );
        check(
            &of(57.896_375, 55.04, 2.856_375),
            "found 57.8 mm, at least 55.1 mm; 2.8 mm left",
        );
        // As many figures as it takes to see that it keeps to its limit.
        check(
            &of(57.896_375, 57.9, 0.003_625),
            "found 57.897 mm, at most 57.9 mm; 0.003 mm left",
        );
        check(
            &of(60.0, 60.0, 0.0),
            "found 60.0 mm, at most 60.0 mm; 0.0 mm left",
        );
    }

    #[test]
    fn an_error_leaves_no_finer_figure_than_its_own_first() {
        let mut of = ruling(
            DatumDoc::Number(0.408_12),
            DatumDoc::Number(0.413_9),
            0.005_78,
            "kV/mm",
        );
        of.computed = true;
        of.error = Some(0.003_1);
        check(
            &of,
            "computed 0.408 ± 0.004 kV/mm, at most 0.414 kV/mm; 0.005 kV/mm left",
        );
        of.error = Some(0.04);
        of.decides = Some("it is one of those allowed".to_owned());
        check(
            &of,
            "computed 0.41 ± 0.04 kV/mm, at most 0.41 kV/mm; 0.0 kV/mm left: it is one of those allowed",
        );
    }

    #[test]
    fn a_range_of_diameters_is_said_in_inches_rounded_inward() {
        let of = ruling(
            DatumDoc::Range {
                min: 22.0,
                max: 22.345,
            },
            DatumDoc::Range {
                min: 21.082,
                max: 30.988,
            },
            0.918,
            "mm",
        );
        assert_eq!(
            of.figures(true).as_deref(),
            Some("found 22.0 to 22.4 mm, within 21.1 to 30.9 mm (0.830 to 1.220 in); 0.9 mm left")
        );
        check(
            &of,
            "found 22.0 to 22.4 mm, within 21.1 to 30.9 mm; 0.9 mm left",
        );
    }

    #[test]
    fn one_outcome_has_one_word() {
        let words = [Outcome::Pass, Outcome::Fail, Outcome::NotJudged].map(outcome_words);
        assert_eq!(words, ["in window", "out of window", "not judged"]);
    }
}
