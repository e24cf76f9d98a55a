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
use jointwright_numerics::outline::Point;
use jointwright_wording::Tongue;
use jointwright_wording::label::FieldLabel;
use jointwright_wording::length_text;

/// The field of one leg, ready for its pictures.
pub struct LegField {
    tongue: Tongue,
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
    let tongue = Tongue::of_plan(plan);
    let mut curves = vec![Curve {
        label: tongue.label(&FieldLabel::ThisLeg),
        points: shown.along_v_per_m,
        dashed: false,
    }];
    curves.extend(shown.allowed_v_per_m.map(|points| Curve {
        label: tongue.label(&FieldLabel::WorstAllowed),
        points,
        dashed: true,
    }));
    LegField {
        tongue,
        title: tongue.label(&FieldLabel::Title {
            mark: tongue.plan_mark(&plan.plan_mark),
            leg: leg.to_owned(),
            kv: format!("{:.2}", shown.voltage_v / 1e3),
        }),
        // A strip has room for the first line only.
        about: vec![
            about(&shown.state, shown.drawn.is_edge_in_field, tongue),
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
    let tongue = Tongue::of_plan(plan);
    let job = plan.job.id.clone();
    let issue = tongue.plan_issue(&plan.plan_mark);
    tongue.label(&match plan.outcome {
        Outcome::Fail => FieldLabel::OfPlanThatFails { job, issue },
        _ => FieldLabel::OfPlan { job, issue },
    })
}

fn about(state: &State, is_edge_in_field: bool, tongue: Tongue) -> String {
    let diameter = length_text(2.0 * state.radius_m);
    let edge = length_text(state.screen_edge_m);
    tongue.label(&if is_edge_in_field {
        FieldLabel::EdgeInField { diameter, edge }
    } else {
        FieldLabel::EdgeCovered { diameter }
    })
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
            tongue: self.tongue,
            outline: &self.drawn.section.outline,
            mesh: &self.solved.mesh,
            potential: &self.solved.potential,
            conductors: fixed.map(|(tag, _)| tag.clone()).collect(),
            title: self.title.clone(),
            about: self.about.clone(),
            peaks: self.peaks(),
            curves: self.curves.clone(),
            regions: self.regions(),
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
                    FieldLabel::AlongLayer
                } else {
                    FieldLabel::Peak { quantity }
                };
                Some(Peak {
                    label: self.tongue.label(&label),
                    value_kv_per_mm: format!("{:.2}", answer.value.abs() * 1e-6),
                    at: answer.at?,
                })
            })
            .collect()
    }

    /// Names of the section's regions, and where they stand.
    fn regions(&self) -> Vec<(String, Point)> {
        let named = self.drawn.labels.iter();
        let named = named.map(|(name, at)| {
            let name = name.clone();
            (self.tongue.label(&FieldLabel::Region { name }), *at)
        });
        named.collect()
    }
}
