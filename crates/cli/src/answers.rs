//! Answers: the page of a solved case, 80 columns.
//!
//! Not here: numbers; all of them come from the document of the answers.

use crate::lines::Lines;
use jointwright_numerics::case::{AnswerDoc, AnswersDoc};

/// Sentence that stands on every page.
const UNJUDGED: &str = "Computed from the drawing given; nobody has judged it.";
const TUBE_UNJUDGED: &str = "Computed from the tube given; nobody has judged it.";
/// Width of the column of names, characters.
const NAME_WIDTH: usize = 22;

/// Returns the page of the answers.
pub fn page(document: &AnswersDoc) -> String {
    let mut lines = Lines::default();
    lines.wrap("", &format!("{}: {}", document.case, document.about));
    let is_tube = document.pressure_mpa.is_some();
    lines.wrap("  ", if is_tube { TUBE_UNJUDGED } else { UNJUDGED });
    lines.blank();
    let place = if is_tube { "" } else { "at r, z, mm" };
    lines.add(&row("name", "value", "unit", "est. error", place));
    for answer in &document.answers {
        let (value, error) = figures(answer);
        let remark = remark(answer);
        if answer.name.chars().count() <= NAME_WIDTH {
            lines.add(&row(&answer.name, &value, &answer.unit, &error, &remark));
        } else {
            lines.wrap("", &answer.name);
            lines.add(&row("", &value, &answer.unit, &error, &remark));
        }
        if !answer.settled {
            lines.add(&row("", "", "", "", "NOT SETTLED"));
        }
    }
    for refused in &document.refused {
        lines.wrap(
            "",
            &format!("{}: not computed. {}", refused.name, refused.why),
        );
    }
    lines.blank();
    if let Some(why) = &document.cut_short {
        lines.wrap("", why);
    }
    let n_unsettled = document.answers.iter().filter(|a| !a.settled).count();
    if n_unsettled > 0 {
        lines.wrap("", &format!("{n_unsettled} of {} did not settle: their estimated errors are larger than the tolerance, and are no more than estimates.", document.answers.len()));
    }
    let seconds = &document.seconds;
    if !is_tube {
        lines.wrap(
            "",
            &format!(
                "{} unknowns; {:.2} s: mesh {:.2}, assemble {:.2}, solve {:.2}.",
                document.unknowns, seconds.total, seconds.mesh, seconds.assemble, seconds.solve
            ),
        );
    }
    lines.text
}

fn row(name: &str, value: &str, unit: &str, error: &str, remark: &str) -> String {
    format!("{name:<NAME_WIDTH$} {value:>13} {unit:<6} {error:>10}  {remark}")
}

/// Place of a peak, or phase of an answer.
fn remark(answer: &AnswerDoc) -> String {
    let mut parts = Vec::new();
    if let Some([r, z]) = answer.at {
        parts.push(format!("{r:.3}, {z:.3}"));
    }
    if let Some(degrees) = answer.phase_deg {
        parts.push(format!("phase {degrees:.2} deg"));
    }
    parts.join("; ")
}

/// Returns a number and its unit.
pub fn number(answer: &AnswerDoc) -> String {
    let (value, _) = figures(answer);
    format!("{value} {}", answer.unit)
}

/// Value and estimated error, with as many digits as the error leaves meaningful.
fn figures(answer: &AnswerDoc) -> (String, String) {
    let value = answer.value;
    let Some(error) = answer.error_estimate.filter(|e| *e > 0.0) else {
        let error = if answer.error_estimate.is_some() {
            "0"
        } else {
            "unknown"
        };
        return (exponent(value, 6), error.to_owned());
    };
    // Two digits of the error, and the value to the same decimal place, but no more than 9 places.
    let last = error.log10().floor() - 1.0;
    let n_places = (-last).clamp(0.0, 9.0) as usize;
    let is_plain = value == 0.0 || (1e-5..1e9).contains(&value.abs());
    if !is_plain {
        let n_figures = (value.abs().log10().floor() - last).clamp(1.0, 8.0) as usize;
        return (exponent(value, n_figures), exponent(error, 1));
    }
    let shown = format!("{error:.n_places$}");
    let is_nothing = shown.chars().all(|c| matches!(c, '0' | '.'));
    let shown = if is_nothing || shown.len() > 10 {
        exponent(error, 1)
    } else {
        shown
    };
    (format!("{value:.n_places$}"), shown)
}

fn exponent(number: f64, n_places: usize) -> String {
    if number == 0.0 {
        return "0".to_owned();
    }
    format!("{number:.n_places$e}")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn answer(value: f64, error_estimate: Option<f64>) -> AnswerDoc {
        AnswerDoc {
            name: "E".to_owned(),
            kind: "field-at".to_owned(),
            value,
            unit: "kV/mm".to_owned(),
            error_estimate,
            at: Some([11.1, 76.31613333]),
            phase_deg: None,
            settled: true,
        }
    }

    #[track_caller]
    fn check(value: f64, error: Option<f64>, expected: (&str, &str)) {
        let (value, error) = figures(&answer(value, error));
        assert_eq!((value.as_str(), error.as_str()), expected);
    }

    #[test]
    fn a_value_is_printed_to_the_figures_that_its_error_leaves() {
        check(46.464_026_7, Some(0.000_32), ("46.46403", "0.00032"));
        check(-2.553_574, Some(0.0021), ("-2.5536", "0.0021"));
        check(2.5, Some(1e-15), ("2.500000000", "1.0e-15"));
        check(2.5, None, ("2.500000e0", "unknown"));
        check(0.0, Some(0.0), ("0", "0"));
        check(1.25e-9, Some(3e-12), ("1.2500e-9", "3.0e-12"));
        check(1.25, Some(30.0), ("1", "30"));
    }

    #[test]
    fn every_line_keeps_to_80_columns() {
        let long = AnswerDoc {
            name: "n".repeat(300),
            settled: false,
            ..answer(-123_456.789, Some(1e-9))
        };
        let phase = AnswerDoc {
            phase_deg: Some(-179.999),
            at: None,
            ..answer(1e-30, Some(1e-40))
        };
        let document = AnswersDoc {
            case: "c".repeat(200),
            about: "word ".repeat(60),
            answers: vec![long, phase, answer(2.5, None)],
            refused: Vec::new(),
            cut_short: None,
            pressure_mpa: None,
            unknowns: 1_234_567,
            seconds: Default::default(),
            residuals: Vec::new(),
        };
        let page = page(&document);
        for line in page.lines() {
            assert!(line.chars().count() <= 80, "{line}");
        }
        assert!(page.contains("NOT SETTLED") && page.contains("1 of 3 did not settle"));
        assert!(page.contains("11.100, 76.316") && page.contains("phase -180.00 deg"));
        assert!(page.contains(UNJUDGED));
    }
}
