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

/// A part's own paper.
#[derive(Clone, Debug, PartialEq)]
pub struct Instructions {
    /// Number or title.
    pub paper: String,
    /// Revision.
    pub revision: String,
    /// Date.
    pub date: Option<Date>,
    /// Last day on which somebody saw that the paper is the one in force.
    pub seen_current: Option<Date>,
}

/// Fields that every row has.
#[derive(Clone, Debug)]
pub struct Head {
    /// Short name.
    pub id: String,
    /// Name of the part.
    pub name: String,
    /// Whether it is an invented part, or holds the data of one.
    pub demonstration: bool,
    /// Paper of the part.
    pub instructions: Instructions,
    /// Person who compared the row with its paper, and the day; `None` if no second person did.
    pub checked: Option<(String, Date)>,
    /// Day of the work, where the row is read for a job.
    pub today: Option<Date>,
    /// Remark.
    pub note: Option<String>,
    /// Shelf life.
    pub shelf: Option<Shelf>,
    /// Steps of its instructions.
    pub steps: Vec<Step>,
    /// Place in its file.
    pub place: Span,
}

impl Head {
    /// Row and paper for a ruling that rests on it, with the doubts about the row.
    pub fn source(&self) -> Paper {
        Paper {
            row: self.id.clone(),
            ..self.paper()
        }
    }

    /// Paper and revision, with the doubts about the row.
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

    /// Last day on which its paper was seen to be the one in force, if that is before the day of the work.
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
    /// Date from which the months run: "made" or "expanded".
    pub from: String,
    /// Storage temperatures in degrees Celsius, where stated.
    pub store_degc: (Option<f64>, Option<f64>),
}

/// A step of the part's instructions.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// Short name.
    pub id: Option<String>,
    /// Instruction.
    pub say: String,
    /// Names of the steps before it.
    pub after: Vec<String>,
    /// Danger of the step.
    pub caution: Option<String>,
    /// Whether work stops until it is measured.
    pub hold: bool,
    /// Moment of the make-up, where the row states it.
    pub stage: Option<Stage>,
    /// Conductor metals of the step; empty for all.
    pub metals: Vec<Metal>,
}

/// Winding of a tape at an end.
#[derive(Clone, Debug, PartialEq)]
pub struct Wrap {
    /// Layer under the tape.
    pub over: Layer,
    /// Stretch of cable that the tape covers.
    pub length: Length,
    /// Number of passes over the stretch.
    pub layers: i64,
    /// Share of the width by which a turn laps the turn before, 0 to 0.9.
    pub lap_ratio: f64,
    /// Ratio of the drawn length to the tape's own length, 1 if it is not drawn.
    pub drawn_ratio: f64,
}

/// Range over a layer.
#[derive(Clone, Debug, PartialEq)]
pub struct Fits {
    /// "bore", "mouth" or "seal".
    pub at: String,
    /// Layer over which the diameter is measured.
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
    /// Tolerance: how much shorter and how much longer is permitted, where stated.
    pub tolerance: Option<(Length, Length)>,
    /// Source.
    pub source: Whose,
    /// Place in its file.
    pub place: Span,
}

/// Complaint about a layer that would shrink toward the conductor end.
pub(crate) const SHRINKS_INWARD: &str = "A layer shrinks back from its cut, away from the conductor end; this link lets it come nearer.";
/// Advice on it.
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

    /// Whether it lets the outer end of a part reach its inner end, or come nearer: adapter, shield contact, seal.
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

    /// Link that points away from the conductor end: a row that measures toward the end has the same distance and tolerance from its other plane.
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

/// Time until which a part may be moved after it is placed.
#[derive(Clone, Debug, PartialEq)]
pub enum MayMove {
    /// Never.
    Never,
    /// Until the holdout is out.
    BeforeHoldoutIsOut,
    /// For this number of minutes.
    WithinMinutes(i64),
}

/// Inside of a body.
#[derive(Clone, Debug, PartialEq)]
pub struct Inner {
    /// Whether a user measured it on a part cut open (otherwise the maker gave it).
    pub measured: bool,
    /// Person who answers for it.
    pub by: String,
    /// Date.
    pub date: Date,
    /// Uncertainty of every place in it.
    pub uncertainty: Length,
    /// Diameter over insulation on which the diameters are stated.
    pub on_diameter: Option<Length>,
    /// Shape of the body over the edge of the insulation screen.
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
    /// Field at which the conductivity begins to rise, kV/mm rms, and the power of its rise, a ratio.
    pub rise_kv_per_mm: Option<(f64, f64)>,
}

/// Shape of a body over the step at the edge of the insulation screen.
#[derive(Clone, Debug, PartialEq)]
pub struct ScreenStep {
    /// Radius of an edge cut by the instructions.
    pub edge_radius: Interval,
    /// Length of cable before the edge over which the body stands off the insulation.
    pub bridging: Length,
    /// Filler of the gap there.
    pub filler: Option<Filler>,
}

/// Filler of the gap before the edge of the insulation screen.
#[derive(Clone, Debug, PartialEq)]
pub struct Filler {
    /// Name.
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
    /// Radii of the same corners; empty if not stated.
    pub radii: Vec<Length>,
    /// Duty in the field, where stated.
    pub serves: Option<FieldDuty>,
    /// Relative permittivity, where known.
    pub relative_permittivity: Option<f64>,
    /// Whether it conducts.
    pub conductive: bool,
    /// Ratio of its shear modulus to that of the body's rubber, where stated.
    pub stiffness_ratio: Option<f64>,
    /// Thermal resistivity and heat capacity, where stated.
    pub stuff: Option<Stuff>,
}

/// Joint body.
#[derive(Clone, Debug)]
pub struct Body {
    /// Fields that every row has.
    pub head: Head,
    /// Side of a body with unlike sides; `None` for a whole body.
    pub side: Option<String>,
    /// The two sides of a body with unlike sides, each as the whole body seen by a leg from there; empty otherwise.
    pub sides: Vec<Body>,
    /// Kinds of joint.
    pub kinds: Vec<String>,
    /// Number of legs, for a branch body.
    pub legs: Option<i64>,
    /// Highest system voltage, kV.
    pub system_greatest_kv: f64,
    /// Earthings of its rating.
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
    /// Time until which it may be moved.
    pub may_move: Option<MayMove>,
    /// Way in which it comes onto the cable, as its row states it.
    pub goes_on: Option<GoesOn>,
    /// Greatest diameter that it passes over while it is slid on or parked, where stated.
    pub passes: Option<Length>,
    /// Abrasive and grit for the insulation, where its paper states them.
    pub abrasive: Option<String>,
    /// Inside of the body.
    pub inner: Option<Inner>,
    /// Tapered plug under the body, for separable joints.
    pub taper: Option<Taper>,
    /// Relaxed dimensions and rubber.
    pub rubber: Option<Rubber>,
    /// Highest temperature of the conductor in a short circuit, degrees Celsius.
    pub conductor_fault_greatest_degc: Option<f64>,
    /// Highest temperature of the conductor in service, degrees Celsius.
    pub conductor_greatest_degc: Option<f64>,
    /// Highest temperature of the conductor in an emergency, degrees Celsius.
    pub conductor_emergency_greatest_degc: Option<f64>,
    /// Ageing by warmth.
    pub ageing: Option<Ageing>,
    /// Straight cable beyond each end.
    pub bend_keep_off: Option<Length>,
}

impl Body {
    /// The body as a leg sees it: from the side that the job names, if its sides differ; without ranges and distances if the job names none.
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
    /// Fields that every row has.
    pub head: Head,
    /// Number of ports.
    pub ports: i64,
    /// Greatest resistance between two ports, Ω, where stated.
    pub resistance_ohm: Option<f64>,
    /// Temperature of that resistance, degrees Celsius, where stated.
    pub resistance_at_degc: Option<f64>,
    /// Mating interface.
    pub interface: String,
    /// Highest system voltage, kV.
    pub system_greatest_kv: f64,
}

/// Insulating plug.
#[derive(Clone, Debug)]
pub struct Plug {
    /// Fields that every row has.
    pub head: Head,
    /// Mating interface.
    pub interface: String,
    /// Highest system voltage, kV.
    pub system_greatest_kv: f64,
}

/// A short circuit that a part's paper allows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Withstand {
    /// Current, A rms.
    pub current_a: f64,
    /// Time for which it may flow, s.
    pub time_s: f64,
}

/// Means of grip of a connector.
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
    /// Fields that every row has.
    pub head: Head,
    /// Ranges.
    pub fits: Vec<Fits>,
    /// Whether the body's bore may stand over bare insulation beyond it, where its paper states it.
    pub leaves_bare: Option<bool>,
    /// Layers without a range on which its paper lets it lie.
    pub may_lie_on: Vec<Layer>,
    /// Outside diameter on the cable.
    pub outside: Interval,
    /// Highest system voltage, kV.
    pub system_greatest_kv: f64,
    /// Distances.
    pub links: Vec<LinkRow>,
    /// Time until which it may be moved.
    pub may_move: Option<MayMove>,
    /// Way in which it comes onto the cable, as its row states it.
    pub goes_on: Option<GoesOn>,
    /// Greatest diameter that it passes over while it is slid on or parked, where stated.
    pub passes: Option<Length>,
    /// Relative permittivity, where stated.
    pub relative_permittivity: Option<f64>,
    /// Relaxed dimensions and rubber.
    pub rubber: Option<Rubber>,
    /// Thermal resistivity and heat capacity, where stated.
    pub stuff: Option<Stuff>,
}

/// Shield restoration or bonding part.
#[derive(Clone, Debug)]
pub struct ShieldPart {
    /// Fields that every row has.
    pub head: Head,
    /// Kinds of metallic shield.
    pub shields: Vec<String>,
    /// Bondings.
    pub bondings: Vec<String>,
    /// Metal section, mm².
    pub area_mm2: Option<f64>,
    /// Short circuit that its paper allows.
    pub withstands: Option<Withstand>,
    /// Greatest resistance of its connection, ohm, where its paper states one.
    pub contact_greatest_ohm: Option<f64>,
    /// Ranges.
    pub fits: Vec<Fits>,
    /// Layers without a range on which its paper lets it lie.
    pub may_lie_on: Vec<Layer>,
    /// Whether a stretch of it is blocked against water, where its paper states it.
    pub blocked: Option<bool>,
    /// Whether any piece of it passes out under the seal, where its paper states it.
    pub passes_seal: Option<bool>,
    /// Shields that it lays back, where its paper states them.
    pub lay_back: Option<LayBack>,
    /// Kinds of shield that it cuts off, where its paper states them.
    pub cut_off: Vec<String>,
    /// Moment at which its paper lets the bridge come off.
    pub bridge_off: Option<BridgeMoment>,
    /// Whether one piece of it goes across the joint from leg to leg.
    pub across_legs: bool,
    /// Distances.
    pub links: Vec<LinkRow>,
}

/// Seal.
#[derive(Clone, Debug)]
pub struct Seal {
    /// Fields that every row has.
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
    /// Whether a lead may come out under it, where its paper states it.
    pub takes_lead: Option<bool>,
    /// Conditions of the jacket on which it may close; empty where its paper is silent.
    pub jacket_surfaces: Vec<String>,
    /// Relaxed dimensions and rubber.
    pub rubber: Option<Rubber>,
    /// Wall of the seal that the heat must pass, where stated.
    pub cover: Option<Cover>,
    /// Distances.
    pub links: Vec<LinkRow>,
    /// Time until which it may be moved.
    pub may_move: Option<MayMove>,
    /// Way in which it closes, as its row states it.
    pub goes_on: Option<GoesOn>,
    /// Greatest diameter that it passes over while it is slid on or parked, where stated.
    pub passes: Option<Length>,
}

/// Consumable.
#[derive(Clone, Debug)]
pub struct Consumable {
    /// Fields that every row has.
    pub head: Head,
    /// Metals it serves; empty where the row names none.
    pub metals: Vec<Metal>,
    /// Whether it is used on bare conductors, where the row says so.
    pub touches_conductor: Option<bool>,
    /// Substance.
    pub contains: Option<String>,
    /// Width and thickness of a tape.
    pub tape: Option<(Length, Length)>,
    /// Amount for each end.
    pub amount: Option<String>,
    /// Windings at an end.
    pub wraps: Vec<Wrap>,
}

/// A kind of row, with its reader; `None` if a field that it needs is missing (a complaint stands).
pub(super) trait Row: Sized {
    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Self>;
    fn head(&self) -> &Head;
    fn head_mut(&mut self) -> &mut Head;

    /// Marks the row as invented if it holds the data of an invented part.
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
