//! Pressure through the whole chain: job, row, store, temperatures, ruling.
//!
//! The joint is the example `tannery-change`; its body is the demonstration row with an even wall and no inside, so no field is solved.

mod demonstration;
mod heat;
mod limits;
mod store;
mod unknown;

use crate::cases::{accepted, named, read};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::judge::judge;
use jointwright_joint::plan::{PartPressureDoc, Plan, RulingDoc, SitDoc};
use jointwright_wording::plan;

/// Passages and their replacements; each passage must be there.
pub type Edits<'a> = &'a [(&'a str, &'a str)];

#[track_caller]
pub fn edited(text: &str, edits: Edits<'_>) -> String {
    edits.iter().fold(text.to_owned(), |text, (from, to)| {
        assert!(text.contains(from), "no passage {from}");
        text.replace(from, to)
    })
}

/// Row of the body, even all along.
fn parts() -> String {
    let of = |from: &str, to: &str| -> String {
        let begin = DEMONSTRATION_TEXT.find(from).expect("a row");
        let rest = &DEMONSTRATION_TEXT[begin..];
        rest[..rest[1..].find(to).expect("its end") + 1].to_owned()
    };
    let head = of("[[body]]\nid = \"demo-straight-25\"", "[body.inner]");
    let rubber = of(
        "[body.rubber]\norigin = \"maker\"\nby = \"nobody: invented\"\ndate = 2025-04-02\nrelaxed_bore = \"15 mm\"",
        "[[body]]",
    );
    edited(
        &format!("about = \"invented, for this test\"\n\n{head}{rubber}"),
        &[
            ("demo-straight-25", "even-body"),
            (
                "relaxed_bore = \"15 mm\"",
                "relaxed_bore = \"15 mm\"\nrelaxed_outside = \"60 mm\"",
            ),
        ],
    )
}

/// The plan of the joint with edits of its job and of the row of its body.
#[track_caller]
pub fn planned(of_job: Edits<'_>, of_row: Edits<'_>) -> Plan {
    let example = named("tannery-change").job;
    let own: Edits<'_> = &[
        ("[\"demonstration\"]", "[\"demonstration\", \"parts.toml\"]"),
        ("\"demo-straight-25\"", "\"even-body\""),
    ];
    let job = edited(&edited(example, own), of_job);
    let catalogues = [
        (DEMONSTRATION.to_owned(), DEMONSTRATION_TEXT.to_owned()),
        ("parts.toml".to_owned(), edited(&parts(), of_row)),
    ];
    let order = accepted(read(&job, &catalogues), "the joint");
    plan(&accepted(judge(&order), "the joint"))
}

/// The plan's entry for a part of the first end of a leg.
#[track_caller]
pub fn part<'p>(plan: &'p Plan, leg: &str, kind: &str) -> &'p PartPressureDoc {
    let leg = plan.legs.iter().find(|l| l.mark == leg).expect("the leg");
    let pressure = leg.ends[0].pressure.as_ref().expect("it was asked for");
    let part = pressure.parts.iter().find(|part| part.kind.name() == kind);
    part.expect("the part")
}

/// Computed values of the body on leg A.
#[track_caller]
pub fn body(plan: &Plan) -> &SitDoc {
    let part = part(plan, "A", "body");
    part.computed.as_ref().unwrap_or_else(|| panic!("{part:?}"))
}

/// Least pressure of the body on leg A, kPa.
#[track_caller]
pub fn kpa(plan: &Plan) -> f64 {
    body(plan).pressure_kpa.expect("its law is stated")
}

/// Rulings of a check on a leg.
pub fn rulings<'p>(plan: &'p Plan, check: &str, leg: &str) -> Vec<&'p RulingDoc> {
    let of = |r: &&RulingDoc| r.check == check && r.leg.as_deref() == Some(leg);
    plan.rulings.iter().filter(of).collect()
}

/// Outcomes of a check on a leg.
pub fn outcomes(plan: &Plan, check: &str, leg: &str) -> Vec<String> {
    let rulings = rulings(plan, check, leg);
    rulings
        .iter()
        .map(|ruling| ruling.ruling.name().to_owned())
        .collect()
}

/// The insulation of leg A with these diameters, mm.
pub fn insulation(values: [f64; 4]) -> String {
    let values: Vec<String> = values.iter().map(|mm| format!("\"{mm:.3} mm\"")).collect();
    format!("values = [{}] }}", values.join(", "))
}

pub const INSULATION: &str = "values = [\"23.30 mm\", \"23.40 mm\", \"23.60 mm\", \"23.40 mm\"] }";

/// A part that is pushed on: nothing holds it open, and its age counts from the day it was made.
pub const PUSHED_ON: Edits<'_> = &[
    ("hold_diameter = \"50 mm\"\n", ""),
    (
        "set = { greatest = 0.12, time_days = 400, power = 0.5, reference = \"23 degC\", activation_kj_per_mol = 60 }\n",
        "",
    ),
    (
        "relaxation = { greatest = 0.20, time_days = 300, power = 0.5, reference = \"23 degC\", activation_kj_per_mol = 60 }",
        "",
    ),
    (
        "shelf = { months = 36, from = \"expanded\"",
        "shelf = { months = 36, from = \"made\"",
    ),
];
