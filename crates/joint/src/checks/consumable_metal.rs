//! Is every consumable of this leg made for its conductor's metal?
//!
//! A brush serves one metal; inhibitor and abrasive may too.
//! A consumable that is not named, or whose row does not state its metal, is asked for.
//!
//! Source: the consumable's own row. That a brush serves one metal is common practice, no source.

use super::{Inputs, LegInputs, Listed, slug};
use crate::catalogue::Consumable;
use crate::limit::{Ruling, fact_table as fact};
use crate::said::{CleaningSaid, Said, Served, ServesFor};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let names = &leg.leg.parts.consumables;
    let used: Vec<&Consumable> = names
        .iter()
        .filter_map(|id| inputs.order.catalogue.consumable(id))
        .collect();
    let rule = |part: &Consumable| {
        if part.metals.is_empty() {
            return metal_unsaid(leg, part);
        }
        Listed {
            check: CHECK,
            subject: leg.subject(),
            part: &part.head,
            what: ServesFor::Conductor,
            found: Served::Metal(leg.leg.cable.conductor.metal),
            permitted: part.metals.iter().copied().map(Served::Metal).collect(),
            hint: CleaningSaid::UseUntouched.into(),
        }
        .rule()
    };
    let touches =
        |part: &Consumable| !part.metals.is_empty() || part.touches_conductor != Some(false);
    let mut rulings: Vec<Ruling> = used
        .iter()
        .filter(|part| touches(part))
        .map(|part| rule(part))
        .collect();
    if !used.iter().any(|part| !part.metals.is_empty()) {
        let (id, metal) = (&leg.leg.id, leg.leg.cable.conductor.metal);
        let why = CleaningSaid::NothingNamed {
            leg: id.clone(),
            metal,
        };
        let ask = CleaningSaid::AskWithWhat {
            leg: id.clone(),
            metal,
        };
        let ruling = Ruling::not_judged(CHECK, leg.subject(), why)
            .with_hint(Said::Questions(vec![ask.into()]));
        rulings.push(ruling.asking(fact::BRUSH.of(&leg.leg.id)));
    }
    rulings
}

/// Ruling on a row that neither names metals nor says that the consumable touches none.
fn metal_unsaid(leg: &LegInputs<'_>, part: &Consumable) -> Ruling {
    let id = &part.head.id;
    let why = CleaningSaid::MetalsNotSaid { row: id.clone() };
    let ask = CleaningSaid::AskMetals { part: id.clone() };
    let ruling =
        Ruling::not_judged(CHECK, leg.subject(), why).with_hint(Said::Questions(vec![ask.into()]));
    ruling.asking(fact::CONSUMABLE_METALS.of(id))
}
