//! Material: the load of the truck for one joint: parts, consumables with their amounts, tools.
//!
//! Why its own room: the tape of a joint is arithmetic on its own diameters, and a forgotten part is found too late at the vault's edge.
//!
//! Invariants: a part that legs share is counted once for each phase; an amount that nobody states and that cannot be computed is not guessed.
//!
//! Not here: whether a part fits (`checks`), in what order it comes on (`programme`).
//!
//! Source: `docs/theory/amount.md`.

use crate::cable::Layer;
use crate::catalogue::{Consumable, Head, Means, PartKind, Wrap};
use crate::checks::{EndInputs, Inputs, LegInputs};
use crate::cutback::Growth;
use crate::job::JointKind;
use crate::programme::practice;
use crate::said::{Paper, Said, TruckSaid};
use jointwright_units::Length;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Kind of an item on the truck.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ItemKind {
    /// Body.
    Body,
    /// Adapter.
    Adapter,
    /// Connector.
    Connector,
    /// Shield part.
    ShieldPart,
    /// Seal.
    Seal,
    /// Bus.
    Bus,
    /// Insulating plug of a port without a leg.
    Plug,
    /// Connector that a trial press uses up.
    Trial,
    /// Consumable, which is used up.
    Consumable,
}

impl ItemKind {
    /// Crew's name for it.
    pub const fn name(self) -> &'static str {
        match self {
            ItemKind::Body => PartKind::Body.name(),
            ItemKind::Adapter => PartKind::Adapter.name(),
            ItemKind::Connector => PartKind::Connector.name(),
            ItemKind::ShieldPart => PartKind::ShieldPart.name(),
            ItemKind::Seal => PartKind::Seal.name(),
            ItemKind::Bus => "bus",
            ItemKind::Plug => "plug",
            ItemKind::Trial => "connector for a trial",
            ItemKind::Consumable => "consumable",
        }
    }
}

impl From<PartKind> for ItemKind {
    fn from(kind: PartKind) -> ItemKind {
        match kind {
            PartKind::Body => ItemKind::Body,
            PartKind::Adapter => ItemKind::Adapter,
            PartKind::Connector => ItemKind::Connector,
            PartKind::ShieldPart => ItemKind::ShieldPart,
            PartKind::Seal => ItemKind::Seal,
        }
    }
}

/// A part or consumable of a joint.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// Kind.
    pub kind: ItemKind,
    /// Row of the item.
    pub id: String,
    /// Name of the item.
    pub name: String,
    /// Paper with its revision, and the doubts about its row.
    pub instructions: Paper,
    /// Ends that use it, as leg and phase; blank ports by number.
    pub used_for: Vec<Said>,
    /// Number of pieces, where the item is counted in pieces.
    pub pieces: Option<usize>,
    /// Total amount, where somebody states it or it can be computed.
    pub amount: Option<Said>,
    /// Reason why there is no amount.
    pub why: Option<Said>,
}

/// A tool, with its source.
#[derive(Clone, Debug, PartialEq)]
pub struct Tool {
    /// Name of the tool.
    pub what: TruckSaid,
    /// Source of the need.
    pub source: Said,
}

/// Length of tape for one stretch, m: for each pass the number of turns times the length of one turn of the helix, divided by the drawn length.
///
/// `L = Σ_k (ℓ/a + 1) · √((π·D_k)² + a²) / q`, with advance `a = w·(1 − λ)` and the helix of pass `k` at `D_k = d + (2k − 1)·t / (1 − λ)`.
///
/// `ℓ` stretch, `w` width, `t` thickness, `d` diameter under the first pass, all m; `λ` lap and `q` drawn length, ratios.
/// One turn more than `ℓ/a` closes each pass; waste is not included.
///
/// # Assumes
/// A drawn tape keeps its width and thickness: it then builds up thicker than in fact, so the length is on the long side.
///
/// # Source
/// Geometry of a helix, `docs/theory/amount.md`.
pub fn tape_length_m(wrap: &Wrap, tape: (Length, Length), diameter: Length) -> f64 {
    let metre = |length: Length| length.mm() / 1.0e3;
    let (width, thickness) = (metre(tape.0), metre(tape.1));
    let left = 1.0 - wrap.lap_ratio;
    let advance = width * left;
    let turns = metre(wrap.length) / advance + 1.0;
    let pass = |k: i64| {
        let helix = metre(diameter) + (2 * k - 1) as f64 * thickness / left;
        turns * (std::f64::consts::PI * helix).hypot(advance)
    };
    (1..=wrap.layers).map(pass).sum::<f64>() / wrap.drawn_ratio
}

/// Parts and consumables of a joint, in their usual order.
pub fn items(inputs: &Inputs<'_>) -> Vec<Item> {
    let mut items: Vec<Item> = Vec::new();
    let kind = inputs.order.job.kind;
    let shared_body = kind != JointKind::Separable;
    for leg in &inputs.legs {
        let chosen = &leg.chosen;
        let sleeve = chosen.connector.is_some_and(|c| c.two_ended);
        let braid = chosen.shield_part.is_some_and(|p| p.across_legs);
        let parts: [(PartKind, Option<&Head>, bool); 5] = [
            (PartKind::Body, chosen.body.map(|p| &p.head), shared_body),
            (PartKind::Adapter, chosen.adapter.map(|p| &p.head), false),
            (
                PartKind::Connector,
                chosen.connector.map(|p| &p.head),
                sleeve,
            ),
            (
                PartKind::ShieldPart,
                chosen.shield_part.map(|p| &p.head),
                braid,
            ),
            (
                PartKind::Seal,
                chosen.seal.map(|p| &p.head),
                chosen.seal.is_some_and(|s| s.spans_joint),
            ),
        ];
        for (kind, head, is_shared) in parts {
            if let Some(head) = head {
                add(&mut items, kind.into(), head, ends(leg), is_shared);
            }
        }
    }
    trials(inputs, &mut items);
    common(inputs, &mut items);
    consumables(inputs, &mut items);
    items
}

/// Adds one of each connector whose growth is not measured, and a piece of its conductor: the trial press uses them up.
fn trials(inputs: &Inputs<'_>, items: &mut Vec<Item>) {
    for leg in &inputs.legs {
        let (Some(connector), Some(end)) = (leg.chosen.connector, leg.chosen.end) else {
            continue;
        };
        if !connector.grows() || !matches!(leg.cutback.growth, Growth::Unknown(_)) {
            continue;
        }
        let on = Said::from(TruckSaid::TrialOn {
            conductor: leg.leg.cable.conductor,
            end: end.name.clone(),
        });
        let mut trials = items.iter_mut().filter(|i| i.kind == ItemKind::Trial);
        match trials.find(|i| i.id == connector.head.id) {
            Some(item) if item.used_for.contains(&on) => {}
            Some(item) => {
                item.used_for.push(on);
                item.pieces = item.pieces.map(|n| n + 1);
            }
            None => items.push(Item {
                pieces: Some(1),
                ..item(ItemKind::Trial, &connector.head, vec![on])
            }),
        }
    }
}

fn ends(leg: &LegInputs<'_>) -> Vec<Said> {
    let name = |end: &EndInputs| Said::from(end.id.to_string());
    leg.ends.iter().map(name).collect()
}

/// Adds pieces of a part; a part that legs share is there already.
fn add(items: &mut Vec<Item>, kind: ItemKind, head: &Head, used_for: Vec<Said>, is_shared: bool) {
    let pieces = used_for.len();
    if let Some(item) = items.iter_mut().find(|i| i.kind == kind && i.id == head.id) {
        item.used_for.extend(used_for);
        if !is_shared {
            item.pieces = item.pieces.map(|n| n + pieces);
        }
        return;
    }
    items.push(Item {
        pieces: Some(pieces),
        ..item(kind, head, used_for)
    });
}

fn item(kind: ItemKind, head: &Head, used_for: Vec<Said>) -> Item {
    Item {
        kind,
        id: head.id.clone(),
        name: head.name.clone(),
        instructions: head.paper(),
        used_for,
        pieces: None,
        amount: None,
        why: None,
    }
}

/// Bus and insulating plugs, one a phase.
fn common(inputs: &Inputs<'_>, items: &mut Vec<Item>) {
    let (job, catalogue) = (&inputs.order.job, &inputs.order.catalogue);
    let phases = || (1..=job.phases).map(|phase| Said::from(TruckSaid::Phase { phase }));
    if let Some(bus) = job.bus.as_deref().and_then(|id| catalogue.bus(id)) {
        add(items, ItemKind::Bus, &bus.head, phases().collect(), false);
    }
    for blank in &job.blanks {
        let plug = blank.plug.as_deref().and_then(|id| catalogue.plug(id));
        if let Some(plug) = plug {
            let port = blank.port;
            let ports = (1..=job.phases).map(|phase| TruckSaid::Port { port, phase }.into());
            add(items, ItemKind::Plug, &plug.head, ports.collect(), false);
        }
    }
}

fn consumables(inputs: &Inputs<'_>, items: &mut Vec<Item>) {
    let catalogue = &inputs.order.catalogue;
    let mut ids: Vec<&String> = Vec::new();
    for leg in &inputs.legs {
        for id in &leg.leg.parts.consumables {
            if !ids.contains(&id) {
                ids.push(id);
            }
        }
    }
    for id in ids {
        let Some(row) = catalogue.consumable(id) else {
            continue;
        };
        let legs: Vec<&LegInputs<'_>> = inputs
            .legs
            .iter()
            .filter(|leg| leg.leg.parts.consumables.contains(id))
            .collect();
        let used_for: Vec<Said> = legs.iter().flat_map(|leg| ends(leg)).collect();
        let mut item = item(ItemKind::Consumable, &row.head, used_for);
        match amount(row, &legs, item.used_for.len()) {
            Ok(amount) => item.amount = Some(amount),
            Err(why) => item.why = Some(why),
        }
        items.push(item);
    }
}

/// Amount of a consumable for all ends: computed from its wraps, else as its row says.
fn amount(row: &Consumable, legs: &[&LegInputs<'_>], n_ends: usize) -> Result<Said, Said> {
    let stated = row.amount.clone();
    let (Some(tape), false) = (row.tape, row.wraps.is_empty()) else {
        return match stated {
            Some(amount) => Ok(TruckSaid::Stated { amount, n_ends }.into()),
            None => Err(TruckSaid::NoAmount.into()),
        };
    };
    let mut sum_m = 0.0;
    for leg in legs {
        for end in &leg.ends {
            for wrap in &row.wraps {
                let (over, phase) = (wrap.over, end.id.phase);
                let diameter = thickest(leg, end.survey.diameters.get(&over), over);
                let diameter = diameter.ok_or_else(|| TruckSaid::NotMeasured {
                    leg: leg.leg.id.clone(),
                    phase,
                    over,
                })?;
                sum_m += tape_length_m(wrap, tape, diameter);
            }
        }
    }
    // Rounds up to a tenth, so that the roll is never too short.
    let metres = (sum_m * 10.0).ceil() / 10.0;
    let row_says = stated;
    Ok(TruckSaid::Tape {
        metres,
        n_ends,
        row_says,
    }
    .into())
}

/// Greatest diameter over a layer: as read with its error, else the greatest that its papers allow.
fn thickest(
    leg: &LegInputs<'_>,
    read: Option<&crate::survey::Diameter>,
    over: Layer,
) -> Option<Length> {
    match read {
        Some(diameter) => Some(diameter.known.read.greatest() + diameter.known.error),
        None => leg
            .leg
            .cable
            .diameter_over(over)
            .ok()
            .map(|band| band.greatest),
    }
}

/// Tools of a joint: those that its parts' rows name, and those that every make-up needs.
pub fn tools(inputs: &Inputs<'_>) -> Vec<Tool> {
    let mut tools: Vec<Tool> = Vec::new();
    let mut add = |what: TruckSaid, source: Said| {
        let tool = Tool { what, source };
        if !tools.contains(&tool) {
            tools.push(tool);
        }
    };
    for leg in &inputs.legs {
        let Some(connector) = leg.chosen.connector else {
            continue;
        };
        let source = connector.head.source().into();
        match connector.means {
            Means::Compression => {
                let die = leg.chosen.end.and_then(|end| end.die.clone());
                add(TruckSaid::Press { die }, source);
            }
            Means::ShearBolt => add(TruckSaid::BoltDriver, source),
            Means::SetScrew => add(TruckSaid::ScrewDriver, source),
        }
    }
    for what in [
        TruckSaid::Rule,
        TruckSaid::Calliper,
        TruckSaid::SawGuide,
        TruckSaid::KnifeStop,
        TruckSaid::Bridge,
        TruckSaid::Ohmmeter,
        TruckSaid::Wipes,
    ] {
        add(what, practice());
    }
    tools
}
