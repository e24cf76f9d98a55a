//! Is the jacket where the seal will lie in a condition on which the seal may close?
//!
//! It compares the condition that somebody found with the conditions that the seal's paper names.
//!
//! Source: the seal's own instructions.

use super::{EndInputs, Inputs, LegInputs, Listed, slug};
use crate::limit::{Ruling, fact_table as fact};
use crate::said::{Of, Said, Served, ServesFor, SurfaceSaid};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let Some(seal) = leg.chosen.seal else {
        return Vec::new();
    };
    let subject = leg.subject_of(end);
    let found: Vec<&str> = inputs
        .order
        .job
        .surfaces
        .of(&end.id)
        .iter()
        .map(|row| row.jacket.as_str())
        .collect();
    if found.is_empty() {
        let ruling = Ruling::not_judged(CHECK, subject, SurfaceSaid::NotWritten);
        let ruling = ruling.with_hint(SurfaceSaid::LookAllAround);
        return vec![ruling.asking(fact::JACKET.of(Of::at(&end.id)))];
    }
    if seal.jacket_surfaces.is_empty() {
        let id = seal.head.id.clone();
        let why = SurfaceSaid::NoneNamed { seal: id.clone() };
        let ask = Said::ask(SurfaceSaid::AskOnWhich { seal: id.clone() });
        let ruling = Ruling::not_judged(CHECK, subject, why).with_hint(ask);
        return vec![ruling.asking(fact::JACKETS.of(id))];
    }
    let rule = |found: &str| {
        Listed {
            check: CHECK,
            subject: subject.clone(),
            part: &seal.head,
            what: ServesFor::Jacket,
            found: Served::Word(found.to_owned()),
            permitted: Served::words(&seal.jacket_surfaces),
            hint: SurfaceSaid::DressOrCutBack.into(),
        }
        .rule()
    };
    found.into_iter().map(rule).collect()
}
