//! Promises that every complaint and every plan keeps, whatever was read.

use super::structure::differences;
use jointwright_joint::cable::Words;
use jointwright_joint::cutback::Cut;
use jointwright_joint::form::Complaint;
use jointwright_joint::judge::{Judged, worst};
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::{self, CutDoc, Plan};
use jointwright_joint::said::Language;
use jointwright_units::{Length, Station, Window};
use jointwright_wording::Tongue;
use serde_json::Value;
use std::sync::LazyLock;

static SCHEMA: LazyLock<Value> = LazyLock::new(plan::schema);

/// Words that the program never says.
const NEVER_SAID: &str = "safe to";

fn hold(is_kept: bool, broken: impl FnOnce() -> String) -> Result<(), String> {
    if is_kept { Ok(()) } else { Err(broken()) }
}

/// Checks complaints: at least one, each with a place inside its text and on one line.
pub(super) fn of_complaints(
    complaints: &[Complaint],
    texts: &[(&str, &[u8])],
) -> Result<(), String> {
    hold(!complaints.is_empty(), || {
        "refused without a complaint".to_owned()
    })?;
    let tongues = Language::ALL.map(|language| Tongue {
        language,
        words: Words::Us,
    });
    let each = complaints.iter();
    let each = each.flat_map(|complaint| tongues.map(|tongue| (tongue, complaint)));
    for (tongue, complaint) in each {
        let text = tongue.complaint(complaint);
        hold(!text.message.trim().is_empty(), || {
            format!("a complaint without words: {complaint:?}")
        })?;
        hold(!text.to_string().chars().any(char::is_control), || {
            format!("a complaint with control characters: {complaint:?}")
        })?;
        let Some((_, bytes)) = texts.iter().find(|(name, _)| *name == complaint.path) else {
            return Err(format!("a complaint about no file: {complaint:?}"));
        };
        let text = String::from_utf8_lossy(bytes);
        let line = text.split('\n').nth(complaint.line.wrapping_sub(1));
        let Some(line) = line else {
            return Err(format!("a complaint on no line: {complaint:?}"));
        };
        let inside = (1..=line.chars().count() + 1).contains(&complaint.column);
        hold(inside, || {
            format!("a complaint beyond its line `{line}`: {complaint:?}")
        })?;
    }
    Ok(())
}

/// Checks a plan: it fits its schema, marks lie inside their windows, and promised reasons and limits are there.
pub(super) fn of_plan(
    judged: &Judged<'_>,
    document: &Plan,
    texts: &[(&str, &[u8])],
) -> Result<(), String> {
    let text = serde_json::to_string(document).map_err(|e| format!("no JSON: {e}"))?;
    let value: Value = serde_json::from_str(&text).map_err(|e| format!("not JSON: {e}"))?;
    let differences = differences(&SCHEMA, &value);
    hold(differences.is_empty(), || {
        format!("not as its schema says: {}", differences.join("; "))
    })?;
    let back = Plan::read(&text).map_err(|e| format!("not read back: {e}"))?;
    hold(back == *document, || {
        "what is read back is another plan".to_owned()
    })?;
    let was_written = texts
        .iter()
        .any(|(_, bytes)| String::from_utf8_lossy(bytes).contains(NEVER_SAID));
    hold(was_written || !text.contains(NEVER_SAID), || {
        format!("the plan says \"{NEVER_SAID}\"")
    })?;
    for (leg, doc) in judged.inputs.legs.iter().zip(&document.legs) {
        for (cut, doc) in leg.cutback.cuts.iter().zip(&doc.cuts) {
            of_cut(cut, doc)
                .map_err(|e| format!("leg {}, {}: {e}", leg.leg.id, doc.plane.name()))?;
        }
    }
    of_rulings(judged, document)
}

fn of_cut(cut: &Cut, doc: &CutDoc) -> Result<(), String> {
    hold(cut.nominal.is_some() || cut.why.is_some(), || {
        "no nominal and no reason".to_owned()
    })?;
    if let (Some(nominal), Some(window)) = (cut.nominal, cut.window) {
        hold(window.contains(nominal), || {
            format!("planned at {nominal:?}, outside {window:?}")
        })?;
    }
    for text in doc.inch.iter() {
        inside(inches(text)?, cut.window)?;
    }
    for text in doc.mark_mm.iter() {
        inside(millimetres(text)?, cut.window)?;
    }
    if let Some(printed) = &doc.printed_window {
        let [least, greatest] = [millimetres(&printed.mm[0])?, millimetres(&printed.mm[1])?];
        inside(least, cut.window)?;
        inside(greatest, cut.window)?;
        hold(least <= greatest, || format!("upside down: {printed:?}"))?;
        for text in printed.inch.iter().flatten() {
            inside(inches(text)?, cut.window)?;
        }
    }
    for (rung, doc) in cut.ladder.iter().zip(&doc.growth_ladder) {
        for text in doc.inch.iter() {
            inside(inches(text)?, rung.window)?;
        }
        for text in doc.mark_mm.iter() {
            inside(millimetres(text)?, rung.window)?;
        }
    }
    Ok(())
}

fn inside(mark: Station, window: Option<Window>) -> Result<(), String> {
    hold(window.is_none_or(|w| w.contains(mark)), || {
        format!("a mark at {mark:?}, outside {window:?}")
    })
}

/// Station of a printed figure in inches, `7 1/16`, `7` or `1/16`.
fn inches(text: &str) -> Result<Station, String> {
    let broken = || format!("\"{text} in\" is not read back");
    let (sign, digits) = match text.strip_prefix('-') {
        Some(digits) => (-1, digits),
        None => (1, text),
    };
    let (whole, fraction) = match digits.split_once(' ') {
        Some(parts) => parts,
        None if digits.contains('/') => ("0", digits),
        None => (digits, "0/1"),
    };
    let (numerator, denominator) = fraction.split_once('/').ok_or_else(broken)?;
    let number = |text: &str| text.parse::<i64>().map_err(|_| broken());
    let (whole, numerator, denominator) =
        (number(whole)?, number(numerator)?, number(denominator)?);
    hold(matches!(denominator, 1 | 2 | 4 | 8 | 16 | 32 | 64), broken)?;
    let sixty_fourths = whole * 64 + numerator * (64 / denominator);
    Ok(Station::from(Length::INCH_64TH * (sign * sixty_fourths)))
}

/// Station of a printed figure in millimetres, seven decimals at most.
fn millimetres(text: &str) -> Result<Station, String> {
    let broken = || format!("\"{text} mm\" is not read back");
    let (sign, digits) = match text.strip_prefix('-') {
        Some(digits) => (-1, digits),
        None => (1, text),
    };
    let (whole, decimals) = digits.split_once('.').unwrap_or((digits, ""));
    let padded = format!("{whole}{decimals:0<7}");
    let tenths_of_nm: i64 = padded.parse().map_err(|_| broken())?;
    hold(tenths_of_nm % 5 == 0, broken)?;
    Ok(Station::from_half_nm(sign * tenths_of_nm / 5))
}

fn of_rulings(judged: &Judged<'_>, document: &Plan) -> Result<(), String> {
    hold(document.outcome == worst(&judged.rulings), || {
        format!("the outcome is said to be {}", document.outcome.name())
    })?;
    for ruling in &document.rulings {
        let is_whole = match ruling.ruling.name() {
            "pass" => ruling.limit.is_some() && ruling.source.is_some(),
            "fail" => ruling.limit.is_some() && ruling.source.is_some() && ruling.why.is_some(),
            "not-judged" => ruling.why.is_some(),
            _ => false,
        };
        hold(is_whole, || format!("a ruling by halves: {ruling:?}"))?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::hostile::JOBS;
    use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
    use jointwright_joint::form::Source;
    use jointwright_joint::{job, judge};

    #[track_caller]
    fn check_complaint(change: fn(&mut Complaint), is_kept: bool) {
        let texts: [(&str, &[u8]); 1] = [("f", b"ab\ncd")];
        let mut complaint = Source::new("f", "ab\ncd".to_owned()).complaint(3, "x", "");
        change(&mut complaint);
        assert_eq!(of_complaints(&[complaint], &texts).is_ok(), is_kept);
    }

    #[test]
    fn a_complaint_that_breaks_a_promise_is_found() {
        check_complaint(|_| (), true);
        check_complaint(|c| c.line = 0, false);
        check_complaint(|c| c.line = 3, false);
        check_complaint(|c| c.column = 0, false);
        check_complaint(|c| c.column = 4, false);
        check_complaint(|c| c.message = " ".into(), false);
        check_complaint(|c| c.path = "g".to_owned(), false);
        assert!(of_complaints(&[], &[]).is_err());
    }

    #[track_caller]
    fn check_plan(change: fn(&mut Plan), is_kept: bool) {
        let catalogue = Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned());
        let source = Source::new("job.toml", JOBS[2].to_owned());
        let order = job::read_order(&source, &[catalogue]).expect("the example is well formed");
        let judged = judge::judge(&order).expect("the example does not contradict itself");
        let mut document = jointwright_wording::plan(&judged);
        change(&mut document);
        assert_eq!(of_plan(&judged, &document, &[]).is_ok(), is_kept);
    }

    #[test]
    fn a_plan_that_breaks_a_promise_is_found() {
        fn windowed(plan: &mut Plan) -> &mut CutDoc {
            let mut cuts = plan.legs[0].cuts.iter_mut();
            cuts.find(|c| c.max_mm.is_some_and(|max| c.min_mm < Some(max)))
                .expect("a cut has a window")
        }
        check_plan(|_| (), true);
        check_plan(|p| p.job.title = "safe to cut".to_owned(), false);
        check_plan(|p| p.outcome = Outcome::Pass, false);
        check_plan(|p| p.rulings[0].source = None, false);
        check_plan(|p| windowed(p).inch = Some("1/64".to_owned()), false);
        check_plan(|p| windowed(p).inch = Some("7 1/3".to_owned()), false);
        check_plan(|p| windowed(p).mark_mm = Some("0.1".to_owned()), false);
        check_plan(|p| windowed(p).mark_mm = Some("-".to_owned()), false);
        // JSON has no word for a value that is not a number; it becomes null.
        check_plan(|p| p.legs[0].stacks[0].nominal_mm = f64::NAN, false);
    }
}
