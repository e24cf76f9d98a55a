//! Is the body pressed on the cable at the edge of the insulation screen at least as hard as the worst that its instructions allow?
//!
//! It takes every place that the windows allow for the edge; a gap opens there first.
//!
//! Source: `docs/theory/pressure.md`.

use super::{EndInputs, Inputs, LegInputs, asking_of_rubber, slug};
use crate::ask::asking;
use crate::limit::{Ruling, Word};
use crate::plane::Plane;
use crate::pressure::{Pressed, Sitting};
use crate::said::{PartKind, Pressing, PressureHint, Said};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let rulings = at_edge(inputs, leg, end);
    let is_unplaced = matches!(&end.pressure.body, Pressed::Done(sit) if sit.edge.is_err());
    if is_unplaced {
        return asking(rulings, || leg.missing(inputs).places(&[Plane::ScreenEdge]));
    }
    asking_of_rubber(inputs, leg, end, (PartKind::Body, true), rulings)
}

fn at_edge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let sitting = Sitting {
        check: CHECK,
        what: Pressing::AtScreenEdge,
        subject: leg.subject_of(end),
        pressed: &end.pressure.body,
        hint: PressureHint::EngineerDecides,
    };
    let sit = match sitting.sit() {
        Ok(sit) => sit,
        Err(rulings) => return rulings,
    };
    let owners = inputs.order.job.limits_of(CHECK);
    let asked: Vec<(f64, Word)> = owners
        .filter_map(|row| Some((row.least_kpa? * 1e3, Word::Owner(row.source.clone().into()))))
        .collect();
    match &sit.edge {
        Ok(edge) => sitting.rule(sit, edge, &asked),
        Err(why) => vec![sitting.not_judged(Said::of(sitting.what, why))],
    }
}
