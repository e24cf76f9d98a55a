//! Is the field along the interfaces between cable, adapter and body no stronger than the worst that the instructions allow?
//!
//! The tangential field, up to half a millimetre before the edge of the screen.
//!
//! Source: `docs/theory/worst.md`.

use super::{Check, Inputs, Judge, LegInputs, Stress};
use crate::ask::asking;
use crate::limit::{Ruling, word_on};
use crate::said::{Said, StressSaid};
use crate::section::Quantity;
use crate::study::PlugStudy;

pub(super) const CHECK: Check = Check {
    slug: "interface_stress",
    judge: Judge::Leg(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let rule = |quantity: Quantity| {
        Stress {
            check: CHECK.slug,
            quantity,
        }
        .rule(inputs, leg)
    };
    let mut rulings: Vec<Ruling> = [Quantity::Interface].into_iter().flat_map(rule).collect();
    rulings.extend(asking(plug(leg).into_iter().collect(), || {
        if matches!(*leg.plug, PlugStudy::Unknown(_)) {
            leg.missing(inputs).taper()
        } else {
            vec![word_on(CHECK.slug, &leg.subject())]
        }
    }));
    rulings
}

/// What is not known, or did not come close, of the tapered plug; its own fields have no limit but the gap's.
fn plug(leg: &LegInputs<'_>) -> Option<Ruling> {
    let not_judged = |why: &Said| {
        let why = Said::of(StressSaid::TaperedPlug, why);
        Ruling::not_judged(CHECK.slug, leg.subject(), why)
    };
    match leg.plug.as_ref() {
        PlugStudy::None => None,
        PlugStudy::Unknown(unknown) => {
            let ruling = not_judged(&unknown.why);
            Some(match unknown.ask() {
                None => ruling,
                Some(ask) => ruling.with_hint(ask),
            })
        }
        PlugStudy::Refused(why) => Some(not_judged(why)),
        PlugStudy::Done(worst) => {
            let unsettled = worst.seen.values().any(|(value, _)| !value.is_settled);
            unsettled.then(|| not_judged(&StressSaid::NotSettled.into()))
        }
    }
}
