//! Fields through the whole chain: job, section, study, ruling.
//!
//! The body is the half joint of `tests/field/reference-body.toml`, with links that place its planes.

mod adapter;
mod chain;
mod finer;
mod gap;
mod grading;
mod plug;
mod random;
mod worst;

use crate::cases::{accepted, named, read};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::job::Order;
use jointwright_joint::judge::judge;
use jointwright_joint::plan::StateDoc;
use jointwright_joint::plan::{FieldDoc, Plan, RulingDoc};
use jointwright_wording::plan;

const BODY: &str = include_str!("../../../../tests/field/reference-body.toml");

/// Changes to the reference joint.
#[derive(Clone, Debug)]
pub struct Edit {
    /// Least distance of the screen edge from the body's centre, mm; the heel lies at 135 mm.
    pub edge_mm: f64,
    /// Length of the gap before the edge, mm.
    pub bridging_mm: f64,
    /// Filler of that gap, its permittivity, and whether it is permanent.
    pub filler: Option<(f64, bool)>,
    /// Highest voltage of the system, kV.
    pub highest_kv: f64,
    /// Earthing.
    pub earthing: &'static str,
    /// Diameter over the insulation, mm.
    pub diameter_mm: f64,
    /// Difference of the readings over the insulation from it, either way, mm.
    pub spread_mm: f64,
    /// Text put at the end of the job.
    pub more: String,
    /// Passages of the body's text and of its links that are replaced.
    pub shape: Vec<(&'static str, String)>,
}

impl Default for Edit {
    fn default() -> Edit {
        Edit {
            edge_mm: 140.0,
            bridging_mm: 0.0,
            filler: None,
            highest_kv: 15.0,
            earthing: "solid",
            diameter_mm: 22.2,
            spread_mm: 0.0,
            more: String::new(),
            shape: Vec::new(),
        }
    }
}

fn catalogue(edit: &Edit) -> String {
    let filler = edit.filler.map_or(String::new(), |(permittivity, permanent)| {
        format!(", filler = \"grease\", filler_permittivity = {permittivity}, filler_permanent = {permanent}")
    });
    let links = format!(
        "link = [\n  {{ from = \"connector-centre\", to = \"body-centre\", distance = \"0 mm\", minus = \"1 mm\", plus = \"1 mm\", place = \"x\" }},\n  {{ from = \"body-centre\", to = \"electrode-end\", distance = \"75 mm\", place = \"x\" }},\n  {{ from = \"body-centre\", to = \"stress-control-near\", distance = \"135.5 mm\", place = \"x\" }},\n  {{ from = \"body-centre\", to = \"stress-control-far\", distance = \"170 mm\", place = \"x\" }},\n  {{ from = \"body-centre\", to = \"body-end\", distance = \"200 mm\", place = \"x\" }},\n  {{ from = \"connector-mouth\", to = \"insulation-end\", distance = \"3 mm\", minus = \"0 mm\", plus = \"2 mm\", place = \"x\" }},\n  {{ from = \"conductor-end\", to = \"insulation-screen-edge\", distance = \"{edge:.3} mm\", minus = \"10 mm\", plus = \"10 mm\", place = \"x\" }},\n]\n",
        // Half the connector's stop nearer, and as much farther as the tolerances of bonding part and body.
        edge = edit.edge_mm + 2.175
    );
    let mut text = BODY
        .replace("BRIDGING\"", &format!("{} mm\"{filler}", edit.bridging_mm))
        .replace("[body.inner]", &format!("{links}\n[body.inner]"));
    for (passage, other) in &edit.shape {
        assert!(text.contains(passage), "no passage {passage}");
        text = text.replace(passage, other);
    }
    text
}

fn job(edit: &Edit) -> String {
    let text = named("dock-straight-pressed").job;
    let mut lines: Vec<String> = Vec::new();
    for line in text.lines() {
        let is_reading = |over: &str| line.contains(&format!("over = \"{over}\""));
        let values = |diameter: f64| {
            let at = line.find("values = ").unwrap_or(line.len());
            let value = |more: f64| format!("\"{:.3} mm\"", diameter + more);
            let (low, middle, high) = (value(-edit.spread_mm), value(0.0), value(edit.spread_mm));
            format!(
                "{}values = [{low}, {middle}, {high}, {middle}] }},",
                line[..at].replace("0.05 mm", "0.001 mm")
            )
        };
        if is_reading("insulation") {
            lines.push(values(edit.diameter_mm));
        } else if is_reading("insulation-screen") {
            lines.push(values(edit.diameter_mm + 2.0));
        } else {
            lines.push(line.to_owned());
        }
    }
    let text = lines.join("\n") + "\n" + &edit.more;
    let text = text.replace("nominal = \"13.2 kV\"", "nominal = \"2 kV\"");
    text.replace("[\"demonstration\"]", "[\"demonstration\", \"parts.toml\"]")
        .replace(
            "body = \"demo-straight-15\"",
            "body = \"reference-half-joint\"",
        )
        .replace(
            "connector = \"demo-sleeve-pressed-350\"\nshield",
            "connector = \"demo-sleeve-bolt\"\nshield",
        )
        .replace(
            "size = \"350 kcmil\"\nmetal = \"copper\"\nstranding = \"compact\"",
            "size = \"1/0 AWG\"\nmetal = \"copper\"\nstranding = \"compressed\"",
        )
        .replace(
            "highest = \"14.5 kV\"",
            &format!("highest = \"{} kV\"", edit.highest_kv),
        )
        .replace(
            "earthing = \"solid\"",
            &format!("earthing = \"{}\"", edit.earthing),
        )
}

/// The reference joint with an edit, as it is read.
#[track_caller]
pub fn order_of(edit: &Edit) -> Order {
    let catalogues = [
        (DEMONSTRATION.to_owned(), DEMONSTRATION_TEXT.to_owned()),
        ("parts.toml".to_owned(), catalogue(edit)),
    ];
    accepted(read(&job(edit), &catalogues), "the reference joint")
}

/// The plan of the reference joint with an edit.
#[track_caller]
pub fn planned(edit: &Edit) -> Plan {
    let order = order_of(edit);
    plan(&accepted(judge(&order), "the reference joint"))
}

/// The fields of leg A.
#[track_caller]
pub fn field(plan: &Plan) -> &FieldDoc {
    let field = plan.legs[0].field.as_ref().expect("leg A has a body");
    assert_eq!(field.state, StateDoc::Computed, "{:?}", field.why);
    field
}

/// One field of leg A by its words, kV/mm.
#[track_caller]
pub fn stress(plan: &Plan, words: &str) -> f64 {
    let stresses = &field(plan).stresses;
    let found = stresses.iter().find(|stress| stress.words == words);
    found.expect("it is judged").kv_per_mm
}

/// Rulings of a check on leg A.
pub fn rulings<'p>(plan: &'p Plan, check: &str) -> Vec<&'p RulingDoc> {
    let of = |r: &&RulingDoc| r.check == check && r.leg.as_deref() == Some("A");
    plan.rulings.iter().filter(of).collect()
}

/// Outcomes of a check on leg A.
pub fn outcomes(plan: &Plan, check: &str) -> Vec<String> {
    let rulings = rulings(plan, check);
    rulings
        .iter()
        .map(|ruling| ruling.ruling.name().to_owned())
        .collect()
}
