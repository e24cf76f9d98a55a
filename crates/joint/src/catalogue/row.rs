//! Rows: the parts, as read from catalogue files.

use super::connector::Connector;
use super::handling::{BridgeMoment, GoesOn, LayBack};
use super::rubber::Rubber;
use super::taper::Taper;
use super::thermal::{Ageing, Cover};
use super::walk_row::RowReader;
use crate::cable::{Layer, Metal};
use crate::form::Record;
use crate::form::Span;
use crate::plane::Plane;
use crate::said::{Doubt, FieldDuty, Paper, Whose};
use crate::stage::Stage;
use jiff::civil::Date;
use jointwright_numerics::heat::Stuff;
use jointwright_units::{Interval, Length};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The part's own paper.
#[derive(Clone, Debug, PartialEq)]
pub struct Instructions {
    /// Number or title.
    pub paper: String,
    /// Revision.
    pub revision: String,
    /// Date.
    pub date: Option<Date>,
    /// Last day on which somebody saw that it is the one in force.
    pub seen_current: Option<Date>,
}

/// What every row has.
#[derive(Clone, Debug)]
pub struct Head {
    /// Short name.
    pub id: String,
    /// What it is.
    pub name: String,
    /// Whether it is an invented part, or holds the data of one.
    pub demonstration: bool,
    /// Its paper.
    pub instructions: Instructions,
    /// Who held the row beside its paper, and when; nothing where no second person did.
    pub checked: Option<(String, Date)>,
    /// Day of the work, where the row is read for a job.
    pub today: Option<Date>,
    /// Remark.
    pub note: Option<String>,
    /// Shelf life.
    pub shelf: Option<Shelf>,
    /// Steps of its instructions.
    pub steps: Vec<Step>,
    /// Where it stands.
    pub place: Span,
}

impl Head {
    /// The row and its paper, that a ruling resting on it names, with what is doubtful of the row.
    pub fn source(&self) -> Paper {
        Paper {
            row: self.id.clone(),
            ..self.paper()
        }
    }

    /// Its paper and revision, with what is doubtful of the row.
    pub fn paper(&self) -> Paper {
        let unchecked = self.checked.is_none().then_some(Doubt::NotChecked);
        let seen = self.current_only_until();
        let seen = seen.map(|day| Doubt::CurrentOnlyUntil(day.to_string()));
        Paper {
            row: String::new(),
            paper: self.instructions.paper.clone(),
            revision: self.instructions.revision.clone(),
            doubts: unchecked.into_iter().chain(seen).collect(),
        }
    }

    /// Last day on which its paper was seen to be the one in force, where that is before the day of the work.
    pub(crate) fn current_only_until(&self) -> Option<Date> {
        let seen = self.instructions.seen_current?;
        self.today.is_some_and(|today| seen < today).then_some(seen)
    }
}

/// Shelf life.
#[derive(Clone, Debug, PartialEq)]
pub struct Shelf {
    /// Months.
    pub months: i64,
    /// Date that the months run from: "made" or "expanded".
    pub from: String,
    /// Storage temperatures in degrees Celsius, where stated.
    pub store_degc: (Option<f64>, Option<f64>),
}

/// Step of the part's instructions.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// Short name.
    pub id: Option<String>,
    /// What to do.
    pub say: String,
    /// Steps before it.
    pub after: Vec<String>,
    /// What can hurt.
    pub caution: Option<String>,
    /// Whether work stops until it is measured.
    pub hold: bool,
    /// Moment of the make-up at which it stands, where the row says so.
    pub stage: Option<Stage>,
    /// Conductor metals for which it is; empty for all.
    pub metals: Vec<Metal>,
}

/// How a tape is wound at an end.
#[derive(Clone, Debug, PartialEq)]
pub struct Wrap {
    /// Layer it is wound over.
    pub over: Layer,
    /// Stretch of cable that it covers.
    pub length: Length,
    /// Passes over the stretch.
    pub layers: i64,
    /// Share of the width by which a turn laps the turn before, 0 to 0.9.
    pub lap_ratio: f64,
    /// How many times its own length it is drawn to, 1 where it is not.
    pub drawn_ratio: f64,
}

/// Range over a layer.
#[derive(Clone, Debug, PartialEq)]
pub struct Fits {
    /// "bore", "mouth" or "seal".
    pub at: String,
    /// Layer measured over.
    pub over: Layer,
    /// Permitted diameters.
    pub range: Interval,
    /// Temperature for which the range is stated, degrees Celsius.
    pub at_degc: Option<f64>,
    /// Greatest permitted ovality.
    pub ovality: Option<Length>,
}

/// Distance between two planes as a row gives it.
#[derive(Clone, Debug, PartialEq)]
pub struct LinkRow {
    /// Plane nearer the conductor end.
    pub from: Plane,
    /// Plane farther from it.
    pub to: Plane,
    /// Distance from one to the other.
    pub distance: Length,
    /// How much shorter and how much longer is permitted, where stated.
    pub tolerance: Option<(Length, Length)>,
    /// On whose word.
    pub source: Whose,
    /// Where it stands.
    pub place: Span,
}

/// What is wrong with a layer that would shrink toward the conductor end.
pub(crate) const SHRINKS_INWARD: &str = "A layer shrinks back from its cut, away from the conductor end; this link lets it come nearer.";
/// What to do about it.
pub(crate) const SHRINKS_HINT: &str = "Write it from the cut to the same edge shrunk back, with a `minus` no larger than the distance.";

impl LinkRow {
    /// Whether it lets a layer shrink the wrong way: a cut that shrinks back moves away from the conductor end.
    pub(crate) fn shrinks_inward(&self) -> bool {
        let pairs = [
            (Plane::JacketEdge, Plane::JacketEdgeShrunk),
            (Plane::InsulationEnd, Plane::InsulationEndShrunk),
        ];
        let minus = self.tolerance.map_or(Length::ZERO, |(minus, _)| minus);
        pairs.iter().any(|(cut, shrunk)| {
            (self.from, self.to) == (*shrunk, *cut)
                || (self.from, self.to) == (*cut, *shrunk) && self.distance < minus
        })
    }

    /// Whether it lets the outer end of a part come to its inner end, or nearer: adapter, shield contact, seal.
    pub(crate) fn leaves_no_length(&self) -> bool {
        let pairs = [
            (Plane::AdapterNear, Plane::AdapterFar),
            (Plane::ContactNear, Plane::ContactFar),
            (Plane::SealStart, Plane::SealEnd),
        ];
        let minus = self.tolerance.map_or(Length::ZERO, |(minus, _)| minus);
        pairs.iter().any(|(near, far)| {
            (self.from, self.to) == (*far, *near)
                || (self.from, self.to) == (*near, *far) && self.distance <= minus
        })
    }

    /// The link as it points away from the conductor end: a row that measures toward the end is the same distance, with the same tolerance, from its other plane.
    pub(crate) fn pointing_outward(self, toward_end: bool) -> LinkRow {
        if !toward_end {
            return self;
        }
        LinkRow {
            from: self.to,
            to: self.from,
            ..self
        }
    }
}

/// When a part may still be moved after it is placed.
#[derive(Clone, Debug, PartialEq)]
pub enum MayMove {
    /// Never.
    Never,
    /// Until the holdout is out.
    BeforeHoldoutIsOut,
    /// For so many minutes.
    WithinMinutes(i64),
}

/// What is inside a body.
#[derive(Clone, Debug, PartialEq)]
pub struct Inner {
    /// Whether a user measured it on a part cut open (else the maker gave it).
    pub measured: bool,
    /// Who stands for it.
    pub by: String,
    /// When.
    pub date: Date,
    /// How far off any of it may be.
    pub uncertainty: Length,
    /// Diameter over insulation on which the diameters are stated.
    pub on_diameter: Option<Length>,
    /// How the body lies over the edge of the insulation screen.
    pub screen_step: Option<ScreenStep>,
    /// Layer that spreads the field.
    pub grading: Option<Grading>,
    /// Materials.
    pub regions: Vec<Region>,
}

/// A layer of a body that spreads the field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grading {
    /// Thickness on the diameter for which the inside is stated.
    pub thickness: Length,
    /// Relative permittivity.
    pub relative_permittivity: f64,
    /// Conductivity at low fields, S/m.
    pub conductivity_s_per_m: f64,
    /// Field at which it begins to rise, kV/mm rms, and the power with which it does, a ratio.
    pub rise_kv_per_mm: Option<(f64, f64)>,
}

/// How a body lies over the step at the edge of the insulation screen.
#[derive(Clone, Debug, PartialEq)]
pub struct ScreenStep {
    /// Radius of an edge cut as the instructions ask.
    pub edge_radius: Interval,
    /// Length of cable before the edge over which the body stands off the insulation.
    pub bridging: Length,
    /// What fills the gap there.
    pub filler: Option<Filler>,
}

/// What fills the gap before the edge of the insulation screen.
#[derive(Clone, Debug, PartialEq)]
pub struct Filler {
    /// Its name.
    pub name: String,
    /// Relative permittivity.
    pub relative_permittivity: f64,
    /// Whether the paper calls it permanent there.
    pub is_permanent: bool,
}

/// One material inside a body.
#[derive(Clone, Debug, PartialEq)]
pub struct Region {
    /// Name.
    pub name: String,
    /// Material.
    pub material: String,
    /// Corners: position along the axis from the part's datum, diameter.
    pub corners: Vec<(Length, Length)>,
    /// Radii with which the same corners are rounded; empty where not stated.
    pub radii: Vec<Length>,
    /// What it does for the field, where stated.
    pub serves: Option<FieldDuty>,
    /// Relative permittivity, where known.
    pub relative_permittivity: Option<f64>,
    /// Whether it conducts.
    pub conductive: bool,
    /// Shear modulus over that of the body's rubber, where stated.
    pub stiffness_ratio: Option<f64>,
    /// How it conducts and stores heat, where stated.
    pub stuff: Option<Stuff>,
}

/// Joint body.
#[derive(Clone, Debug)]
pub struct Body {
    /// What every row has.
    pub head: Head,
    /// Which side of a body whose two sides differ this is; none for a whole body.
    pub side: Option<String>,
    /// The two sides, each the whole body as a leg sees it from there, where they differ; else none.
    pub sides: Vec<Body>,
    /// Kinds of joint.
    pub kinds: Vec<String>,
    /// Number of legs it takes, for a branch body.
    pub legs: Option<i64>,
    /// Highest system voltage, kV.
    pub system_greatest_kv: f64,
    /// Earthings it is rated for.
    pub earthings: Vec<String>,
    /// Ranges.
    pub fits: Vec<Fits>,
    /// Layers without a range on which its paper lets it lie.
    pub may_lie_on: Vec<Layer>,
    /// Adapters that belong to it.
    pub adapters: Vec<String>,
    /// Whether an adapter's outside may meet its bore range.
    pub fits_adapter: bool,
    /// Length as placed.
    pub length: Length,
    /// Length while parked.
    pub parked_length: Option<Length>,
    /// Longest connector as made.
    pub connector_length_greatest: Option<Length>,
    /// Outside diameter of the connector under the electrode.
    pub connector_diameter: Option<Interval>,
    /// Overlap of the electrode on the insulation.
    pub electrode_overlap_least: Option<Length>,
    /// Bondings it allows; empty where its paper is silent.
    pub bondings: Vec<String>,
    /// Mating interface.
    pub interface: Option<String>,
    /// Distances.
    pub links: Vec<LinkRow>,
    /// When it may be moved.
    pub may_move: Option<MayMove>,
    /// How its row says that it comes onto the cable.
    pub goes_on: Option<GoesOn>,
    /// Greatest diameter that it passes over while it is slid on or parked, where stated.
    pub passes: Option<Length>,
    /// Abrasive and grit for the insulation, where its paper says.
    pub abrasive: Option<String>,
    /// What is inside.
    pub inner: Option<Inner>,
    /// The tapered plug it sits on, for separable joints.
    pub taper: Option<Taper>,
    /// It when nothing is in it, and its rubber.
    pub rubber: Option<Rubber>,
    /// Highest temperature of the conductor in a short circuit, degrees Celsius.
    pub conductor_fault_greatest_degc: Option<f64>,
    /// The same all the time.
    pub conductor_greatest_degc: Option<f64>,
    /// The same in an emergency.
    pub conductor_emergency_greatest_degc: Option<f64>,
    /// How fast warmth uses it up.
    pub ageing: Option<Ageing>,
    /// Straight cable beyond each end.
    pub bend_keep_off: Option<Length>,
}

impl Body {
    /// The body as a leg sees it: from the side that the job names where its sides differ, without ranges and distances where it names none.
    pub fn seen_from(&self, side: Option<&str>) -> &Body {
        let named = |body: &&Body| side.is_some() && body.side.as_deref() == side;
        self.sides.iter().find(named).unwrap_or(self)
    }

    /// Names of its sides, for a message.
    pub fn side_names(&self) -> String {
        let names = self.sides.iter().filter_map(|body| body.side.as_deref());
        names
            .map(|name| format!("\"{name}\""))
            .collect::<Vec<_>>()
            .join(" or ")
    }
}

/// Common piece of a separable joint.
#[derive(Clone, Debug)]
pub struct Bus {
    /// What every row has.
    pub head: Head,
    /// Number of ports.
    pub ports: i64,
    /// Greatest resistance between two ports, Ω, where stated.
    pub resistance_ohm: Option<f64>,
    /// Temperature at which it has that, degrees Celsius, where stated.
    pub resistance_at_degc: Option<f64>,
    /// Mating interface.
    pub interface: String,
    /// Highest system voltage, kV.
    pub system_greatest_kv: f64,
}

/// Insulating plug.
#[derive(Clone, Debug)]
pub struct Plug {
    /// What every row has.
    pub head: Head,
    /// Mating interface.
    pub interface: String,
    /// Highest system voltage, kV.
    pub system_greatest_kv: f64,
}

/// A short circuit that a part's paper gives it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Withstand {
    /// Current, A rms.
    pub current_a: f64,
    /// How long it may flow, s.
    pub time_s: f64,
}

/// How a connector grips.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Means {
    /// Pressed sleeve.
    Compression,
    /// Bolts whose heads shear.
    ShearBolt,
    /// Screws.
    SetScrew,
}

impl Means {
    /// Word in files.
    pub const fn name(self) -> &'static str {
        match self {
            Means::Compression => "compression",
            Means::ShearBolt => "shear-bolt",
            Means::SetScrew => "set-screw",
        }
    }
}

/// Adapter.
#[derive(Clone, Debug)]
pub struct Adapter {
    /// What every row has.
    pub head: Head,
    /// Ranges.
    pub fits: Vec<Fits>,
    /// Whether the body's bore may stand over bare insulation beyond it, where its paper says.
    pub leaves_bare: Option<bool>,
    /// Layers without a range on which its paper lets it lie.
    pub may_lie_on: Vec<Layer>,
    /// Outside once on the cable.
    pub outside: Interval,
    /// Highest system voltage, kV.
    pub system_greatest_kv: f64,
    /// Distances.
    pub links: Vec<LinkRow>,
    /// When it may be moved.
    pub may_move: Option<MayMove>,
    /// How its row says that it comes onto the cable.
    pub goes_on: Option<GoesOn>,
    /// Greatest diameter that it passes over while it is slid on or parked, where stated.
    pub passes: Option<Length>,
    /// Relative permittivity, where stated.
    pub relative_permittivity: Option<f64>,
    /// It when nothing is in it, and its rubber.
    pub rubber: Option<Rubber>,
    /// How it conducts and stores heat, where stated.
    pub stuff: Option<Stuff>,
}

/// Shield restoration or bonding part.
#[derive(Clone, Debug)]
pub struct ShieldPart {
    /// What every row has.
    pub head: Head,
    /// Kinds of metallic shield.
    pub shields: Vec<String>,
    /// Bondings.
    pub bondings: Vec<String>,
    /// Metal section, mm².
    pub area_mm2: Option<f64>,
    /// Short circuit that its paper gives it.
    pub withstands: Option<Withstand>,
    /// Greatest resistance of its connection, ohm, where its paper states one.
    pub contact_greatest_ohm: Option<f64>,
    /// Ranges.
    pub fits: Vec<Fits>,
    /// Layers without a range on which its paper lets it lie.
    pub may_lie_on: Vec<Layer>,
    /// Whether a stretch is blocked against water, where its paper says.
    pub blocked: Option<bool>,
    /// Whether anything of it passes out under the seal, where its paper says.
    pub passes_seal: Option<bool>,
    /// Shields that it has laid back, where its paper says.
    pub lay_back: Option<LayBack>,
    /// Kinds of shield that it has cut off, where its paper says.
    pub cut_off: Vec<String>,
    /// When its paper lets the bridge come off.
    pub bridge_off: Option<BridgeMoment>,
    /// Whether one piece of it goes across the joint from leg to leg.
    pub across_legs: bool,
    /// Distances.
    pub links: Vec<LinkRow>,
}

/// Seal.
#[derive(Clone, Debug)]
pub struct Seal {
    /// What every row has.
    pub head: Head,
    /// Ranges.
    pub fits: Vec<Fits>,
    /// Layers without a range on which its paper lets it lie.
    pub may_lie_on: Vec<Layer>,
    /// Whether one piece goes over the whole joint, from one jacket to the other.
    pub spans_joint: bool,
    /// Least length once it has closed.
    pub length: Option<Length>,
    /// Overlap onto the jacket.
    pub overlap_least: Option<Length>,
    /// Overlap over the end of the body.
    pub body_overlap_least: Option<Length>,
    /// Length while parked.
    pub parked_length: Option<Length>,
    /// Whether a lead may come out under it, where its paper says.
    pub takes_lead: Option<bool>,
    /// Conditions of the jacket on which it may close; empty where its paper is silent.
    pub jacket_surfaces: Vec<String>,
    /// It when nothing is in it, and its rubber.
    pub rubber: Option<Rubber>,
    /// What of it the heat must pass, where stated.
    pub cover: Option<Cover>,
    /// Distances.
    pub links: Vec<LinkRow>,
    /// When it may be moved.
    pub may_move: Option<MayMove>,
    /// How its row says that it comes onto the cable.
    pub goes_on: Option<GoesOn>,
    /// Greatest diameter that it passes over while it is slid on or parked, where stated.
    pub passes: Option<Length>,
}

/// Consumable.
#[derive(Clone, Debug)]
pub struct Consumable {
    /// What every row has.
    pub head: Head,
    /// Metals it serves; empty where the row names none.
    pub metals: Vec<Metal>,
    /// Whether it is used on bare conductors, where the row says so.
    pub touches_conductor: Option<bool>,
    /// What it is made of.
    pub contains: Option<String>,
    /// Width and thickness of a tape.
    pub tape: Option<(Length, Length)>,
    /// Amount an end.
    pub amount: Option<String>,
    /// How it is wound at an end.
    pub wraps: Vec<Wrap>,
}

/// A kind of row, and how it is read; `None` where something it needs is missing (a complaint stands).
pub(super) trait Row: Sized {
    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Self>;
    fn head(&self) -> &Head;
    fn head_mut(&mut self) -> &mut Head;

    /// Marks the row as invented where it holds the data of an invented part.
    fn mark_as_copy(&mut self, is_copy: bool) {
        self.head_mut().demonstration |= is_copy;
    }
}

macro_rules! heads {
    ($($row:ty),*) => { $(
        impl $row {
            /// Whether the part is invented.
            pub fn demonstration(&self) -> bool { self.head.demonstration }
        }
    )* };
}
heads!(
    Body, Bus, Plug, Connector, Adapter, ShieldPart, Seal, Consumable
);
