//! Solve: takes a case and prints its answers; it also measures the time of each stage.
//!
//! Not here: numbers; page and picture take them from the document and the solution.

use crate::{answers, files};
use jointwright_drawing::{Caption, Mark, field_picture};
use jointwright_numerics::case::{
    AnswersDoc, Case, HeatCase, Question, Run, SecondsDoc, TubeCase, document, read_question,
};
use jointwright_numerics::field::{Options, Solved, Stage, Wanted, Watch, solve};
use jointwright_numerics::heat::{self, HeatOptions};
use jointwright_numerics::outline::Point;
use std::path::{Path, PathBuf};
use std::time::Instant;

/// Default tolerance for the estimated error of peaks and fields, as a share of the number.
const TOLERANCE: f64 = 1e-3;
/// Ratio of the tolerance of a field to that of a capacitance.
const CAPACITANCE_CLOSER: f64 = 50.0;
/// Temperature rise that the tolerance is a share of, K.
const HEAT_SPAN_K: f64 = 10.0;

/// Arguments of `solve`.
#[derive(clap::Args)]
pub struct Arguments {
    /// Case file.
    case: PathBuf,
    /// Print only the document, as JSON.
    #[arg(long)]
    pub json: bool,
    /// Relative error to refine to for peaks and fields, from 0.000001 to 0.2; a capacitance is asked fifty times closer [default: 0.001]
    #[arg(long, value_name = "X", value_parser = tolerance)]
    tolerance: Option<f64>,
    /// Write a picture of the field, as SVG.
    #[arg(long, value_name = "FILE")]
    svg: Option<PathBuf>,
}

fn tolerance(text: &str) -> Result<f64, String> {
    let number: f64 = text
        .parse()
        .map_err(|_| "expected a number such as 0.001".to_owned())?;
    if (1e-6..=0.2).contains(&number) {
        Ok(number)
    } else {
        Err("expected a number from 0.000001 to 0.2".to_owned())
    }
}

/// Results of a solve, for the terminal.
pub struct SolvePage {
    /// The answers.
    pub document: AnswersDoc,
    /// The page for the terminal.
    pub page: String,
}

/// Reads a case, solves it and writes the picture, if one is asked for.
///
/// # Errors
/// Lines for standard error: every complaint about the case, or the reason why it has no answers.
pub fn run(arguments: &Arguments) -> Result<SolvePage, Vec<String>> {
    let begun = Instant::now();
    match question(&arguments.case)? {
        Question::Section(case) => section(arguments, &case, begun),
        Question::Tube(case) => tube(arguments, &case, begun),
        Question::Heat(case) => heat(arguments, &case, begun),
    }
}

/// Answers a case of a rubber tube; it has no picture.
fn tube(arguments: &Arguments, case: &TubeCase, begun: Instant) -> Result<SolvePage, Vec<String>> {
    let shown = arguments.case.display();
    if arguments.svg.is_some() {
        let said = "a tube of rubber has no field; there is no picture of it. Leave --svg out";
        return Err(vec![format!("{shown}: {said}.")]);
    }
    let pressed = case
        .pressed()
        .map_err(|error| vec![format!("{shown}: {error}")])?;
    if !pressed.pressure_pa.is_finite() {
        return Err(vec![format!("{shown}: the pressure came out as no number")]);
    }
    let seconds = SecondsDoc {
        total: begun.elapsed().as_secs_f64(),
        ..SecondsDoc::default()
    };
    let document = case.document(&pressed, seconds);
    let page = answers::page(&document);
    Ok(SolvePage { document, page })
}

/// Answers a case of heat in a section; no picture of it is made yet.
fn heat(arguments: &Arguments, case: &HeatCase, begun: Instant) -> Result<SolvePage, Vec<String>> {
    let shown = arguments.case.display();
    if arguments.svg.is_some() {
        let said = "no picture of temperatures is made yet. Leave --svg out";
        return Err(vec![format!("{shown}: {said}.")]);
    }
    let tolerance = arguments.tolerance.unwrap_or(TOLERANCE);
    let options = HeatOptions {
        tolerance_k: tolerance * HEAT_SPAN_K,
        loss_tolerance_ratio: tolerance,
        ..HeatOptions::default()
    };
    let solved = heat::solve(&case.section, &case.asks, &options)
        .map_err(|error| vec![format!("{shown}: {}", chain(&error))])?;
    if !solved.answers.iter().all(|answer| answer.value.is_finite()) {
        return Err(vec![format!("{shown}: an answer came out as no number")]);
    }
    let seconds = SecondsDoc {
        total: begun.elapsed().as_secs_f64(),
        ..SecondsDoc::default()
    };
    let document = case.document(&solved, seconds);
    let page = answers::page(&document);
    Ok(SolvePage { document, page })
}

fn section(arguments: &Arguments, case: &Case, begun: Instant) -> Result<SolvePage, Vec<String>> {
    let tolerance = arguments.tolerance.unwrap_or(TOLERANCE);
    let options = Options {
        tolerance,
        capacitance_tolerance: tolerance / CAPACITANCE_CLOSER,
        ..Options::default()
    };
    let wanted: Vec<Wanted> = case.wanted.iter().map(|a| a.wanted.clone()).collect();
    let mut clock = Clock::new(begun);
    let solved = solve(&case.section, &wanted, &options, &mut clock)
        .map_err(|error| vec![format!("{}: {}", arguments.case.display(), chain(&error))])?;
    let seconds = clock.stop();
    if let Some(at) = solved.answers.iter().position(|a| !a.value.is_finite()) {
        let name = case.wanted.get(at).map_or("", |asked| &asked.name);
        return Err(vec![format!(
            "{}: the answer to \"{name}\" came out as no number, so that none of the answers can be trusted",
            arguments.case.display()
        )]);
    }
    let run = Run {
        n_unknowns: solved.n_unknowns,
        seconds,
        residuals: solved.newton_residuals.clone(),
        cut_short: solved.cut_short,
    };
    let document = document(case, &solved.answers, run);
    let mut page = answers::page(&document);
    if let Some(path) = &arguments.svg {
        let svg = picture(case, &solved, &document);
        files::write_file(path, &svg).map_err(|error| vec![format!("jointwright: {error}")])?;
        page.push_str(&format!("\nWrote {}\n", path.display()));
    }
    Ok(SolvePage { document, page })
}

fn question(path: &Path) -> Result<Question, Vec<String>> {
    let shown = path.display();
    let text = files::read_text(path).map_err(|said| vec![said])?;
    read_question(&text).map_err(|complaints| {
        complaints
            .iter()
            .map(|complaint| format!("{shown}:{complaint}"))
            .collect()
    })
}

/// Text of an error with its causes.
fn chain(error: &dyn std::error::Error) -> String {
    let mut words = error.to_string();
    let mut cause = error.source();
    while let Some(next) = cause {
        words.push_str(&format!(": {next}"));
        cause = next.source();
    }
    words
}

fn picture(case: &Case, solved: &Solved, document: &AnswersDoc) -> String {
    let mut marks = Vec::new();
    for ((asked, answer), shown) in case
        .wanted
        .iter()
        .zip(&solved.answers)
        .zip(&document.answers)
    {
        let label = format!("{} {}", asked.name, answers::number(shown));
        if let Some(at) = place(&asked.wanted).or(answer.at) {
            marks.push(Mark { label, at });
        }
    }
    let section = &case.section;
    let fixed = section.potentials.iter().map(|(tag, _)| tag.clone());
    let caption = Caption {
        title: case.name.clone(),
        about: case.about.clone(),
        conductors: fixed.chain(section.floating.iter().cloned()).collect(),
        marks,
    };
    field_picture(&section.outline, &solved.mesh, &solved.potential, &caption)
}

/// Point at which a number is wanted; `None` if it is wanted of a region, a curve or the whole.
fn place(wanted: &Wanted) -> Option<Point> {
    match wanted {
        Wanted::PotentialAt { at } | Wanted::FieldAt { at, .. } | Wanted::AxialFieldAt { at } => {
            Some(*at)
        }
        Wanted::Capacitance
        | Wanted::PeakInRegion { .. }
        | Wanted::PeakOnCurve { .. }
        | Wanted::PeakTangentialOnLine { .. }
        | Wanted::BreakdownShare { .. } => None,
    }
}

/// Clock that adds up the time of each stage; no answer depends on it.
struct Clock {
    begun: Instant,
    stage: Option<Stage>,
    stage_begun: Instant,
    seconds: SecondsDoc,
}

impl Clock {
    fn new(begun: Instant) -> Self {
        Self {
            begun,
            stage: None,
            stage_begun: begun,
            seconds: SecondsDoc::default(),
        }
    }

    /// Adds the time since the stage began to that stage.
    fn book(&mut self, now: Instant) {
        let seconds = now.duration_since(self.stage_begun).as_secs_f64();
        match self.stage {
            Some(Stage::Mesh) => self.seconds.mesh += seconds,
            Some(Stage::Assemble) => self.seconds.assemble += seconds,
            Some(Stage::Solve) => self.seconds.solve += seconds,
            Some(Stage::Judge) | None => {}
        }
        self.stage_begun = now;
    }

    fn stop(mut self) -> SecondsDoc {
        let now = Instant::now();
        self.book(now);
        self.seconds.total = now.duration_since(self.begun).as_secs_f64();
        self.seconds
    }
}

impl Watch for Clock {
    fn stage(&mut self, stage: Stage) {
        let now = Instant::now();
        self.book(now);
        self.stage = Some(stage);
    }

    fn may_go_on(&mut self) -> bool {
        true
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::time::Duration;

    #[test]
    fn tolerances_outside_their_range_are_refused() {
        for text in ["0.001", "1e-6", "0.2"] {
            assert!(tolerance(text).is_ok(), "{text}");
        }
        for text in ["0", "-1", "0.21", "9e-7", "nan", "x", ""] {
            assert!(tolerance(text).is_err(), "{text}");
        }
    }

    #[test]
    fn the_clock_adds_up_each_stage_and_never_ends_a_solve() {
        let now = Instant::now();
        let ago = |seconds: u64| now.checked_sub(Duration::from_secs(seconds));
        // A computer that started less than 100 s ago has no such time.
        let Some(begun) = ago(100) else {
            return;
        };
        let mut clock = Clock::new(begun);
        clock.stage(Stage::Mesh);
        assert!(clock.may_go_on());
        let seconds = clock.stop();
        assert!(seconds.total >= 100.0 && seconds.mesh < 10.0);
    }
}
