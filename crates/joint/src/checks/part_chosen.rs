//! Is every part of this leg named?
//!
//! A part left open is not guessed: the program proposes the parts that fit, and somebody chooses.
//!
//! Source: the job.

use super::{Inputs, LegInputs, slug};
use crate::catalogue::PartKind;
use crate::limit::Ruling;
use crate::said::ChoiceSaid;

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let chosen = leg.chosen;
    let parts = [
        (PartKind::Body, chosen.body.map(|p| &p.head.id)),
        (PartKind::Connector, chosen.connector.map(|p| &p.head.id)),
        (PartKind::ShieldPart, chosen.shield_part.map(|p| &p.head.id)),
        (PartKind::Seal, chosen.seal.map(|p| &p.head.id)),
    ];
    let rule = |(kind, id): (PartKind, Option<&String>)| match id {
        Some(id) => Ruling::on_words(
            CHECK,
            leg.subject(),
            id,
            ChoiceSaid::Named { part: kind },
            ChoiceSaid::TheJob,
        ),
        None => Ruling::not_judged(CHECK, leg.subject(), ChoiceSaid::NotNamed { part: kind })
            .with_hint(ChoiceSaid::ChooseAmong { part: kind })
            .asking(leg.missing(inputs).part(kind)),
    };
    parts.into_iter().map(rule).collect()
}
