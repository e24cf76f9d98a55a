//! Document: the answers to a case, in the units of files.

use super::{Case, si};
use crate::field::{Answer, Cut, Wanted};
use schemars::JsonSchema;
use serde::Serialize;

/// The answers to a case.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct AnswersDoc {
    /// Name of the case.
    pub case: String,
    /// Description that the case gives of itself.
    pub about: String,
    /// The answers, in the order in which they were wanted.
    pub answers: Vec<AnswerDoc>,
    /// Wanted numbers that are not computed, with the reason.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub refused: Vec<RefusedDoc>,
    /// Reason why the refinement ended before every number met its tolerance.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cut_short: Option<String>,
    /// Pressure of a tube of rubber on its cylinder, MPa.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pressure_mpa: Option<f64>,
    /// Number of unknowns of the last potential.
    pub unknowns: usize,
    /// Duration of the stages.
    pub seconds: SecondsDoc,
    /// Relative residuals of Newton's method on the last mesh; empty if the equation is linear.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub residuals: Vec<f64>,
}

/// One answer.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct AnswerDoc {
    /// Name, as in the case.
    pub name: String,
    /// Kind, as in the case.
    pub kind: String,
    /// The number; the modulus if amplitudes are complex.
    pub value: f64,
    /// Its unit.
    pub unit: String,
    /// Estimated absolute error, in the same unit; null if there is no estimate.
    pub error_estimate: Option<f64>,
    /// Place of a peak, [r, z] in mm.
    pub at: Option<[f64; 2]>,
    /// Phase in degrees, if amplitudes are complex.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub phase_deg: Option<f64>,
    /// Whether the estimate came down to the tolerance.
    pub settled: bool,
}

/// A wanted number that is not computed.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct RefusedDoc {
    /// Name, as in the case.
    pub name: String,
    /// Kind, as in the case.
    pub kind: String,
    /// The reason, and the next step.
    pub why: String,
}

/// Duration of the stages, in seconds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct SecondsDoc {
    /// Meshing and refining.
    pub mesh: f64,
    /// Assembling.
    pub assemble: f64,
    /// Solving.
    pub solve: f64,
    /// Total, with judging and reading included.
    pub total: f64,
}

/// Results of a run besides the answers.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Run {
    /// Number of unknowns of the last potential.
    pub n_unknowns: usize,
    /// Duration of the stages.
    pub seconds: SecondsDoc,
    /// Relative residuals of Newton's method on the last mesh.
    pub residuals: Vec<f64>,
    /// Reason why the refinement ended before every number met its tolerance.
    pub cut_short: Option<Cut>,
}

/// The document of the answers to a case.
/// It leaves out answers without a question, and questions without an answer.
///
/// ```
/// use jointwright_numerics::case::{Run, document, read};
/// use jointwright_numerics::field::Answer;
/// # let text = r#"{"case": "coaxial", "points": [[1, 0], [2, 0], [2, 5], [1, 5]],
/// #   "curves": [{"from": 0, "to": 1, "tag": "interior"}, {"from": 1, "to": 2, "tag": "outer"},
/// #              {"from": 2, "to": 3, "tag": "interior"}, {"from": 3, "to": 0, "tag": "inner"}],
/// #   "regions": [{"name": "wall", "material": "pe", "boundary": [1, 2, 3, 4]}],
/// #   "materials": {"pe": {"eps_r": 2.3}}, "potentials_kv": {"inner": 10, "outer": 0},
/// #   "wanted": [{"name": "C", "kind": "capacitance"}]}"#;
/// let case = read(text).expect("a case");
/// let answer = Answer { value: 9.2e-13, phase: None, error_estimate: 1e-17, at: None, to: None, is_settled: true };
/// let document = document(&case, &[answer], Run::default());
/// assert!((document.answers[0].value - 0.92).abs() < 1e-12);
/// assert_eq!(document.answers[0].unit, "pF");
/// ```
pub fn document(case: &Case, answers: &[Answer], run: Run) -> AnswersDoc {
    // A peak without a place: there was no place to search.
    let (answers, nowhere): (Vec<_>, Vec<_>) = case
        .wanted
        .iter()
        .zip(answers)
        .partition(|(asked, answer)| !is_peak(&asked.wanted) || answer.at.is_some());
    let refused = case.refused.iter().map(|refused| RefusedDoc {
        name: refused.name.clone(),
        kind: refused.kind.to_owned(),
        why: refused.why.clone(),
    });
    let nowhere = nowhere.into_iter().map(|(asked, _)| RefusedDoc {
        name: asked.name.clone(),
        kind: asked.kind.to_owned(),
        why: "The discs in `leave_out` cover every place at which it could lie: make them smaller, or leave the number out.".to_owned(),
    });
    AnswersDoc {
        refused: refused.chain(nowhere).collect(),
        cut_short: run.cut_short.map(cut_words),
        case: case.name.clone(),
        about: case.about.clone(),
        answers: answers
            .into_iter()
            .map(|(asked, answer)| {
                let (unit, of_si) = unit(&asked.wanted);
                AnswerDoc {
                    name: asked.name.clone(),
                    kind: asked.kind.to_owned(),
                    value: of_si(answer.value),
                    unit: unit.to_owned(),
                    error_estimate: Some(of_si(answer.error_estimate)).filter(|e| e.is_finite()),
                    at: answer.at.map(si::place_mm),
                    phase_deg: answer.phase.map(f64::to_degrees),
                    settled: answer.is_settled,
                }
            })
            .collect(),
        pressure_mpa: None,
        unknowns: run.n_unknowns,
        seconds: run.seconds,
        residuals: run.residuals,
    }
}

fn is_peak(wanted: &Wanted) -> bool {
    matches!(
        wanted,
        Wanted::PeakInRegion { .. }
            | Wanted::PeakOnCurve { .. }
            | Wanted::PeakTangentialOnLine { .. }
    )
}

fn cut_words(cut: Cut) -> String {
    match cut {
        Cut::Unknowns => "Cut short: the mesh had as many unknowns as are allowed.",
        Cut::Refinements => "Cut short: the mesh was refined as often as is allowed.",
        Cut::Work => "Cut short: the work that a solve may take was used up.",
        Cut::Watch => "Cut short: the solve was stopped.",
    }
    .to_owned()
}

/// Unit of a wanted number in files, and the conversion from SI.
fn unit(wanted: &Wanted) -> (&'static str, fn(f64) -> f64) {
    match wanted {
        Wanted::Capacitance => ("pF", si::picofarads),
        Wanted::PotentialAt { .. } => ("kV", si::kilovolts),
        Wanted::BreakdownShare { .. } => ("1", |ratio| ratio),
        Wanted::PeakInRegion { .. }
        | Wanted::PeakOnCurve { .. }
        | Wanted::PeakTangentialOnLine { .. }
        | Wanted::FieldAt { .. }
        | Wanted::AxialFieldAt { .. } => ("kV/mm", si::kilovolts_per_mm),
    }
}

/// JSON Schema (draft 2020-12) of the answers' document.
///
/// ```
/// let schema = jointwright_numerics::case::answers_schema();
/// assert!(schema["properties"]["answers"].is_object());
/// ```
pub fn answers_schema() -> serde_json::Value {
    // For the written form: a field that is skipped when empty is not required.
    schemars::generate::SchemaSettings::draft2020_12()
        .for_serialize()
        .into_generator()
        .into_root_schema_for::<AnswersDoc>()
        .to_value()
}
