//! Does every cut and mark of this leg have a place and a window?
//!
//! A number printed without a tolerance gives a place and no window.
//!
//! Source: the rows that give the links, and the owner's windows.

use super::{Check, Inputs, Judge, LegInputs};
use crate::limit::{Datum, Reach, Ruling};

pub(super) const CHECK: Check = Check {
    slug: "cut_window",
    question: "Does every cut and mark of this leg have a place and a window?",
    judge: Judge::Leg(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let rule = |cut: &crate::cutback::Cut| {
        let plane = cut.plane.words(inputs.order.job.words);
        if !cut.conflict.is_empty() {
            let source = cut.conflict.join("; ");
            let ruling = Ruling::on_words(
                CHECK.slug,
                leg.subject(),
                "no place left",
                "a place inside every window",
                source,
            );
            let why = format!("{plane}: {}", cut.why.clone().unwrap_or_default());
            let hint = "Stop and call: the windows contradict each other, or growth and play are too large for them.";
            return Ruling {
                reach: Reach::Computed,
                ..ruling.failing(why, hint)
            };
        }
        let (Some(nominal), Some(window)) = (cut.nominal, cut.window) else {
            let why = cut
                .why
                .clone()
                .unwrap_or_else(|| "it has no place".to_owned());
            return Ruling::not_judged(CHECK.slug, leg.subject(), format!("{plane}: {why}"));
        };
        let (least, greatest) = (window.least(), window.greatest());
        Ruling {
            value: Some(Datum::Number(nominal.mm())),
            limit: Some(Datum::Range {
                min: least.mm(),
                max: greatest.mm(),
            }),
            unit: Some("mm"),
            source: Some(format!("window of: {}", cut.whose.join("; "))),
            why: None,
            outcome: crate::limit::Outcome::Pass,
            reach: Reach::Instructions,
            ..Ruling::not_judged(CHECK.slug, leg.subject(), "")
        }
    };
    leg.cutback.cuts.iter().map(rule).collect()
}
