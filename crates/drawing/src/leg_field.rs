//! Leg field: the field of one leg at the worst of its windows, as the page that `field_sheet` draws.
//!
//! Why its own room: the results of a study and the content of a page are put together once, for the terminal and for paper.
//!
//! Invariants: the state shown is a state that the study reports; every printed number comes from its answers; an invented joint says so across its face.
//!
//! Not here: the look of a page (`field_sheet`), limits of fields (`checks` of the core).

use crate::field_sheet::{Banner, Curve, FieldSheet, Peak, field_sheet, field_strip};
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::Plan;
use jointwright_joint::section::{Drawn, Quantity};
use jointwright_joint::study::{Point as State, Shown};
use jointwright_numerics::field::Solved;
use jointwright_wording::length_text;

/// The field of one leg, ready for its pictures.
pub struct LegField {
    title: String,
    about: Vec<String>,
    banner: Option<String>,
    drawn: Drawn,
    solved: Solved,
    curves: Vec<Curve>,
}

/// The field of one leg as a picture, from the study's `shown` and the leg's letter `leg`.
///
/// `plan` gives the mark below the title and the text across the face.
pub fn leg_field(leg: &str, shown: Shown, plan: &Plan) -> LegField {
    let mut curves = vec![Curve {
        label: "this leg".to_owned(),
        points: shown.along_v_per_m,
        dashed: false,
    }];
    curves.extend(shown.allowed_v_per_m.map(|points| Curve {
        label: "worst the instructions allow".to_owned(),
        points,
        dashed: true,
    }));
    LegField {
        title: format!(
            "{}, leg {leg}: field at {:.2} kV rms between conductor and earth",
            plan.plan_mark.words(),
            shown.voltage_v / 1e3
        ),
        // A strip has room for the first line only.
        about: vec![
            about(&shown.state, shown.drawn.is_edge_in_field),
            of_plan(plan),
        ],
        banner: plan.invented.clone(),
        drawn: shown.drawn,
        solved: shown.solved,
        curves,
    }
}

/// Plan of the picture, and its failures.
fn of_plan(plan: &Plan) -> String {
    let stop = match plan.outcome {
        Outcome::Fail => " THIS JOINT FAILS ITS PLAN.",
        _ => "",
    };
    format!("job {}, {}.{stop}", plan.job.id, plan.plan_mark.line())
}

fn about(state: &State, is_edge_in_field: bool) -> String {
    let edge = if is_edge_in_field {
        format!(
            "screen edge at z = {}, the diagram ends half a millimetre before it",
            length_text(state.screen_edge_m)
        )
    } else {
        "the deflector covers the screen edge".to_owned()
    };
    format!(
        "The state with the strongest field along the interface; other fields may be worst in another. {} over the insulation; {edge}; z from the body's datum",
        length_text(2.0 * state.radius_m)
    )
}

impl LegField {
    /// Page of its own, as SVG.
    pub fn sheet(&self) -> String {
        field_sheet(&self.page())
    }

    /// Small picture for the back of the make-up sheet, as SVG.
    pub fn strip(&self) -> String {
        field_strip(&self.page())
    }

    fn page(&self) -> FieldSheet<'_> {
        let fixed = self.drawn.section.potentials.iter();
        FieldSheet {
            outline: &self.drawn.section.outline,
            mesh: &self.solved.mesh,
            potential: &self.solved.potential,
            conductors: fixed.map(|(tag, _)| tag.clone()).collect(),
            title: self.title.clone(),
            about: self.about.clone(),
            peaks: self.peaks(),
            curves: self.curves.clone(),
            regions: self.drawn.labels.clone(),
            banner: self.banner.clone().map(Banner),
            below: Vec::new(),
        }
    }

    fn peaks(&self) -> Vec<Peak> {
        let answers = self.solved.answers.iter().zip(&self.drawn.quantities);
        let mut n_interfaces = 0;
        answers
            .filter_map(|(answer, quantity)| {
                let quantity = (*quantity)?;
                n_interfaces += usize::from(quantity == Quantity::Interface);
                let label = if n_interfaces > 1 && quantity == Quantity::Interface {
                    "along the layer"
                } else {
                    short(quantity)
                };
                Some(Peak {
                    label: label.to_owned(),
                    value_kv_per_mm: format!("{:.2}", answer.value.abs() * 1e-6),
                    at: answer.at?,
                })
            })
            .collect()
    }
}

/// Names short enough for the list beside a picture.
const fn short(quantity: Quantity) -> &'static str {
    match quantity {
        Quantity::Interface => "along the cable",
        Quantity::ElectrodeEnd => "electrode end",
        Quantity::DeflectorTip => "deflector tip",
        Quantity::DeflectorHeel => "deflector heel",
        Quantity::ScreenEdge => "before the edge",
    }
}
