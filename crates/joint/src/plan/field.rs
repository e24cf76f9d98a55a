//! Field: fields of one leg in the plan.

use super::state::StateDoc;
use super::words::{all_said, assumed};
use crate::checks::{Inputs, LegInputs};
use crate::said::{EdgeRounded, FieldAssumes, FieldWith, Said, StressSaid, Wording};
use crate::section::{Quantity, TaperState};
use crate::study::{
    Across, PlugStudy, PlugWorst, Point, Seen, SolvedStudy, Study, Worst, inception,
};
use jointwright_numerics::gas::Curve;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Fields of one leg at the worst of its windows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct FieldDoc {
    /// Whether it was computed.
    pub state: StateDoc,
    /// Reason why it is not solved.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// Questions to put to the maker.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub questions: Vec<String>,
    /// Highest continuous voltage between conductor and earth, kV rms.
    pub voltage_kv: f64,
    /// Voltage between conductor and earth while an earth fault is cleared, kV rms; left out if earthing is solid.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub voltage_in_earth_fault_kv: Option<f64>,
    /// Judged fields in service.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stresses: Vec<StressDoc>,
    /// Judged fields at the trial, if some material conducts; only then do they differ from those in service.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stresses_at_trial: Vec<StressDoc>,
    /// Level of the trial, kV rms to earth, as the sine with the same crest; left out if no trial is named.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub trial_kv: Option<f64>,
    /// Gap before the edge of the insulation screen, filled and empty, if it lies in the field.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub gaps: Vec<GapDoc>,
    /// Tapered plug of a separable leg.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plug: Option<PlugDoc>,
    /// Number of solved sections.
    pub n_sections: usize,
    /// Assumptions.
    pub assumes: Vec<String>,
}

/// Fields of a tapered plug at the worst of its film.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PlugDoc {
    /// Whether it was computed.
    pub state: StateDoc,
    /// Reason why it is not solved.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// Questions to put to the maker.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub questions: Vec<String>,
    /// Fields; nobody sets a limit for them here.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stresses: Vec<StressDoc>,
    /// Film along the plug, filled and empty, if it is thick enough to be drawn.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub gaps: Vec<GapDoc>,
}

/// One judged field.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct StressDoc {
    /// Name of the field.
    pub words: String,
    /// Worst value over the windows, kV/mm rms.
    pub kv_per_mm: f64,
    /// Estimated error, kV/mm.
    pub error_kv_per_mm: f64,
    /// Place of the peak, mm along the axis from the body's datum.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_mm: Option<f64>,
    /// Worst value within the dimensions that the instructions allow, kV/mm rms.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub allowed_kv_per_mm: Option<f64>,
    /// Whether the computation reached the accuracy asked for; a number that did not is not judged.
    pub is_settled: bool,
    /// Dimensions at which the worst value occurs.
    pub with: String,
}

/// Contents of a gap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum GapState {
    /// Filler; the numbers are those of a thread of air across the filler, too thin to change its field.
    Filled,
    /// Air.
    Empty,
}

/// Gap before the edge of the insulation screen.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct GapDoc {
    /// Filled or empty.
    pub state: GapState,
    /// Inception voltage of discharge, between conductor and earth, kV rms: the least over the shortest straight paths across the gap, less its error.
    pub inception_kv: f64,
    /// Ratio of that voltage to the highest voltage in service.
    pub inception_ratio: f64,
    /// Voltage along that path at the highest voltage in service, kV rms.
    pub across_kv: f64,
    /// Dimensions at which the worst value occurs.
    pub with: String,
}

impl GapState {
    /// Word for it.
    pub const fn word(self) -> &'static str {
        match self {
            GapState::Filled => "filled",
            GapState::Empty => "empty",
        }
    }
}

pub(super) fn field_doc(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    wording: &dyn Wording,
) -> Option<FieldDoc> {
    let mut doc = FieldDoc {
        state: StateDoc::Computed,
        why: None,
        questions: Vec::new(),
        voltage_kv: inputs.order.job.system.voltage().kv(),
        voltage_in_earth_fault_kv: inputs
            .order
            .job
            .system
            .voltage_in_earth_fault()
            .map(|volts| volts.kv()),
        stresses: Vec::new(),
        stresses_at_trial: Vec::new(),
        trial_kv: inputs
            .order
            .job
            .trial
            .as_ref()
            .map(|trial| trial.sine_of_same_crest().kv()),
        gaps: Vec::new(),
        plug: plug_doc(inputs, leg, wording),
        n_sections: 0,
        assumes: assumed(FieldAssumes::ALL, wording),
    };
    match leg.study.as_ref() {
        Study::NotAsked => return None,
        Study::Unknown(unknown) => {
            doc.state = StateDoc::NotKnown;
            doc.why = Some(wording.say(&unknown.why));
            doc.questions = all_said(&unknown.questions, wording);
        }
        Study::Refused(why) => {
            doc.state = StateDoc::NotComputed;
            doc.why = Some(wording.say(why));
        }
        Study::Done(done) => fill(&mut doc, done, wording),
    }
    Some(doc)
}

fn fill(doc: &mut FieldDoc, done: &SolvedStudy, wording: &dyn Wording) {
    let stresses = |here: &Worst, allowed: &Result<Worst, Said>, voltage_kv: f64| {
        stresses(here, allowed.as_ref().ok(), voltage_kv, wording)
    };
    doc.stresses = stresses(&done.here, &done.allowed, doc.voltage_kv);
    doc.gaps = gaps(&done.here, doc.voltage_kv, wording);
    let n_solved = |here: &Worst, allowed: &Result<Worst, Said>| {
        here.n_solved + allowed.as_ref().map_or(0, |worst| worst.n_solved)
    };
    doc.n_sections = n_solved(&done.here, &done.allowed);
    if let Some(trial) = &done.trial {
        let voltage_kv = trial.drive.voltage.kv();
        doc.stresses_at_trial = stresses(&trial.here, &trial.allowed, voltage_kv);
        doc.n_sections += n_solved(&trial.here, &trial.allowed);
    }
}

fn stresses(
    here: &Worst,
    allowed: Option<&Worst>,
    voltage_kv: f64,
    wording: &dyn Wording,
) -> Vec<StressDoc> {
    let scale = voltage_kv * 1e-3;
    let edge = here.seen.get(&Quantity::ScreenEdge);
    let is_edge_in_field = edge.is_some_and(|seen| seen.value.per_volt_per_m > 0.0);
    let stress = |quantity: Quantity| -> Option<StressDoc> {
        let Seen { value, point } = here.seen.get(&quantity)?;
        let most = allowed.and_then(|worst| worst.seen.get(&quantity));
        let is_in_field = value.per_volt_per_m > 0.0;
        Some(StressDoc {
            words: name_of(quantity, wording),
            kv_per_mm: value.per_volt_per_m * scale,
            error_kv_per_mm: value.error_per_m * scale,
            at_mm: value.at_m.map(|(_, z)| z * 1e3),
            is_settled: value.is_settled,
            allowed_kv_per_mm: most.map(|seen| seen.value.per_volt_per_m * scale),
            with: wording.say(&with(point, is_in_field, is_edge_in_field, quantity).into()),
        })
    };
    Quantity::ALL.into_iter().filter_map(stress).collect()
}

fn name_of(quantity: Quantity, wording: &dyn Wording) -> String {
    wording.say(&StressSaid::Quantity { quantity }.into())
}

fn plug_doc(inputs: &Inputs<'_>, leg: &LegInputs<'_>, wording: &dyn Wording) -> Option<PlugDoc> {
    let mut doc = PlugDoc {
        state: StateDoc::Computed,
        why: None,
        questions: Vec::new(),
        stresses: Vec::new(),
        gaps: Vec::new(),
    };
    match leg.plug.as_ref() {
        PlugStudy::None => return None,
        PlugStudy::Unknown(unknown) => {
            doc.state = StateDoc::NotKnown;
            doc.why = Some(wording.say(&unknown.why));
            doc.questions = all_said(&unknown.questions, wording);
        }
        PlugStudy::Refused(why) => {
            doc.state = StateDoc::NotComputed;
            doc.why = Some(wording.say(why));
        }
        PlugStudy::Done(worst) => fill_plug(
            &mut doc,
            worst,
            inputs.order.job.system.voltage().kv(),
            wording,
        ),
    }
    Some(doc)
}

fn fill_plug(doc: &mut PlugDoc, worst: &PlugWorst, voltage_kv: f64, wording: &dyn Wording) {
    let scale = voltage_kv * 1e-3;
    let film = |state: &TaperState| {
        let with = FieldWith::Film {
            thickness_mm: 1e3 * state.film_thickness_m,
            is_empty: state.is_empty,
        };
        wording.say(&with.into())
    };
    doc.stresses = worst
        .seen
        .iter()
        .map(|(quantity, (value, state))| StressDoc {
            words: name_of(*quantity, wording),
            kv_per_mm: value.per_volt_per_m * scale,
            error_kv_per_mm: value.error_per_m * scale,
            at_mm: value.at_m.map(|(_, z)| z * 1e3),
            allowed_kv_per_mm: None,
            is_settled: value.is_settled,
            with: film(state),
        })
        .collect();
    let gap = |name: GapState, gap: &Option<(Vec<Across>, TaperState)>| -> Option<GapDoc> {
        let (across, state) = gap.as_ref()?;
        let inception_kv = inception(across, Curve::LowerOfBoth)?.kv();
        let shares = across.iter().map(|place| place.share_ratio);
        Some(GapDoc {
            state: name,
            inception_kv,
            inception_ratio: inception_kv / voltage_kv,
            across_kv: shares.fold(0.0, f64::max) * voltage_kv,
            with: film(state),
        })
    };
    doc.gaps = [
        (GapState::Filled, &worst.gap_filled),
        (GapState::Empty, &worst.gap_empty),
    ]
    .into_iter()
    .filter_map(|(name, worst)| gap(name, worst))
    .collect();
}

fn gaps(worst: &Worst, voltage_kv: f64, wording: &dyn Wording) -> Vec<GapDoc> {
    let gap = |state: GapState, gap: &Option<(Vec<Across>, Point)>| -> Option<GapDoc> {
        let (across, point) = gap.as_ref()?;
        let inception_kv = inception(across, Curve::LowerOfBoth)?.kv();
        let share = across
            .iter()
            .map(|place| place.share_ratio)
            .fold(0.0, f64::max);
        Some(GapDoc {
            state,
            inception_kv,
            inception_ratio: inception_kv / voltage_kv,
            across_kv: share * voltage_kv,
            with: wording.say(&with(point, true, true, Quantity::ScreenEdge).into()),
        })
    };
    [
        (GapState::Filled, &worst.gap_filled),
        (GapState::Empty, &worst.gap_empty),
    ]
    .into_iter()
    .filter_map(|(state, worst)| gap(state, worst))
    .collect()
}

/// Dimensions of the worst state.
fn with(point: &Point, is_in_field: bool, is_edge_in_field: bool, quantity: Quantity) -> FieldWith {
    if !is_in_field {
        return FieldWith::NoField;
    }
    let is_of_edge = matches!(quantity, Quantity::ScreenEdge | Quantity::Interface);
    FieldWith::Edge {
        insulation_mm: 2e3 * point.radius_m,
        edge_mm: 1e3 * point.screen_edge_m,
        rounded: (is_edge_in_field && is_of_edge).then_some(EdgeRounded {
            radius_mm: 1e3 * point.edge_radius_m,
            is_empty: point.is_empty,
        }),
    }
}
