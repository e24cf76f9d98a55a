//! The job as typed values.

use super::bridge::BridgeOff;
use super::shield::{BondingLead, Contact, Continuity, ShieldRun};
use crate::cable::{Construction, Layer, Metal, ShieldKind, Size, Words};
use crate::catalogue::LinkRow;
use crate::end::{ByEnd, EndId};
use crate::form::Span;
use crate::limit::Subject;
use crate::plane::Plane;
use crate::said::{JointKind, Language};
use jiff::civil::Date;
use jointwright_numerics::heat::Stuff;
use jointwright_units::{Interval, Length, VoltageRms};

/// The network.
#[derive(Clone, Debug)]
pub struct System {
    /// Nominal voltage, kV phase to phase.
    pub nominal_kv: f64,
    /// Highest continuous voltage, kV phase to phase.
    pub highest_kv: f64,
    /// Frequency, Hz.
    pub frequency_hz: f64,
    /// Earthing.
    pub earthing: String,
    /// Longest clearing time, s.
    pub clearing_time_s: Option<f64>,
}

impl System {
    /// Highest continuous voltage between conductor and earth: Um over the square root of three.
    pub fn voltage(&self) -> VoltageRms {
        VoltageRms::from_kv(self.highest_kv / 3.0_f64.sqrt())
    }

    /// Voltage between conductor and earth while an earth fault is cleared, where earthing is not solid: Um.
    pub fn voltage_in_earth_fault(&self) -> Option<VoltageRms> {
        (self.earthing != "solid").then(|| VoltageRms::from_kv(self.highest_kv))
    }
}

/// What the joint must carry.
#[derive(Clone, Debug, Default)]
pub struct Duty {
    /// Continuous load, A.
    pub load_a: Option<f64>,
    /// Emergency load, A.
    pub emergency_a: Option<f64>,
    /// How long the emergency load may last, s.
    pub emergency_s: Option<f64>,
    /// Highest temperature of the conductor in service, degrees Celsius.
    pub conductor_greatest_degc: Option<f64>,
    /// Conductor fault, A.
    pub fault_a: Option<f64>,
    /// How long it flows, s.
    pub fault_s: Option<f64>,
    /// Whether the conductor fault flows in three phases alike, where stated.
    pub is_fault_balanced: Option<bool>,
    /// Shield fault, A.
    pub shield_fault_a: Option<f64>,
    /// How long it flows, s.
    pub shield_fault_s: Option<f64>,
    /// Reclosing shots.
    pub reclosing: Option<i64>,
    /// How the load goes through the day, of a run of cable without a joint.
    pub daily: Option<super::Daily>,
}

/// The trial on the cable.
#[derive(Clone, Debug, PartialEq)]
pub struct Trial {
    /// Voltage between conductor and earth, kV rms.
    pub level_kv: f64,
    /// Frequency, Hz.
    pub frequency_hz: f64,
    /// Whether its form is cosine-rectangular, with the crest of its rms; else a sine.
    pub is_rectangular: bool,
    /// Standard, edition and clause, or who sets it.
    pub from: String,
}

impl Trial {
    /// The sine with the same crest between conductor and earth, rms.
    pub fn sine_of_same_crest(&self) -> VoltageRms {
        let rms = VoltageRms::from_kv(self.level_kv);
        if self.is_rectangular {
            VoltageRms::from_kv(self.level_kv / std::f64::consts::SQRT_2)
        } else {
            rms
        }
    }
}

/// Where the joint will be.
#[derive(Clone, Debug)]
pub struct Place {
    /// Vault, duct or buried.
    pub kind: String,
    /// Name.
    pub name: String,
    /// Ambient temperature, degrees Celsius.
    pub ambient_degc: (Option<f64>, Option<f64>),
    /// Whether it is wet, where stated.
    pub wet: Option<bool>,
}

/// A person and what they decide.
#[derive(Clone, Debug)]
pub struct Person {
    /// Name.
    pub name: String,
    /// Role.
    pub role: String,
    /// What.
    pub decides: Vec<String>,
}

/// Port without a leg.
#[derive(Clone, Debug)]
pub struct Blank {
    /// Port.
    pub port: i64,
    /// Plug.
    pub plug: Option<String>,
}

/// Parts named for a leg; `None` where left open.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct PartNames {
    /// Body.
    pub body: Option<String>,
    /// Side of the body that takes this leg, where its two sides differ.
    pub body_side: Option<String>,
    /// Adapter.
    pub adapter: Option<String>,
    /// Connector.
    pub connector: Option<String>,
    /// End of the connector that takes this leg, where its two ends differ and the job says.
    pub connector_end: Option<String>,
    /// Shield part.
    pub shield_part: Option<String>,
    /// Seal.
    pub seal: Option<String>,
    /// Consumables.
    pub consumables: Vec<String>,
}

impl PartNames {
    /// Names of all rows of the catalogue that it uses.
    pub fn rows(&self) -> impl Iterator<Item = &String> {
        let PartNames {
            body,
            body_side: _,
            adapter,
            connector,
            connector_end: _,
            shield_part,
            seal,
            consumables,
        } = self;
        let one = [body, adapter, connector, shield_part, seal];
        one.into_iter().flatten().chain(consumables)
    }
}

/// Room around a leg; `None` where not measured.
#[derive(Clone, Debug, Default)]
pub struct Room {
    /// How far off any of these may be.
    pub error: Option<Length>,
    /// Straight cable from the conductor end.
    pub straight: Option<Length>,
    /// Free length for parking from the jacket edge.
    pub park_room: Option<Length>,
    /// Bending radius as racked.
    pub bend_radius: Option<Length>,
    /// Cable that can still be cut away.
    pub slack: Option<Length>,
    /// Spare cuts asked for.
    pub spare_cuts: Option<i64>,
}

/// One cable that enters the joint.
#[derive(Clone, Debug)]
pub struct Leg {
    /// Letter.
    pub id: String,
    /// Port.
    pub port: Option<i64>,
    /// Where it goes.
    pub goes_to: Option<String>,
    /// Bonding.
    pub bonding: String,
    /// Whether the body parks on it.
    pub parks: bool,
    /// Room.
    pub room: Room,
    /// Construction on its papers.
    pub cable: Construction,
    /// Whether the strands are blocked, where stated.
    pub blocked: Option<bool>,
    /// Whether the far end stands in water or may, where stated.
    pub far_end_in_water: Option<bool>,
    /// Least bending radius its maker permits.
    pub bend_radius_least: Option<Length>,
    /// Relative change of the insulation's diameter per kelvin, least and greatest.
    pub expansion_per_k: Option<(f64, f64)>,
    /// Relative permittivity of the insulation, where stated.
    pub relative_permittivity: Option<f64>,
    /// How the insulation and its screens conduct and store heat, where stated.
    pub insulation_stuff: Option<Stuff>,
    /// The same of the jacket.
    pub jacket_stuff: Option<Stuff>,
    /// Continuous load, A, where this leg has its own.
    pub load_a: Option<f64>,
    /// Emergency load, A, where this leg has its own.
    pub emergency_a: Option<f64>,
    /// Current in this leg's shield at its load, A, where stated.
    pub shield_load_a: Option<f64>,
    /// How long the route is, of a run of cable without a joint.
    pub route_length: Option<Length>,
    /// Metal of the shield, where stated.
    pub shield_metal: Option<Metal>,
    /// Highest temperature of the shield in a short circuit, degrees Celsius, where stated.
    pub shield_fault_greatest_degc: Option<f64>,
    /// Short-circuit current in this leg's shield, A, where it has its own.
    pub shield_fault_a: Option<f64>,
    /// Its shield beyond the joint.
    pub shield_run: ShieldRun,
    /// The lead that bonds its shield, where one is named.
    pub bonding_lead: Option<BondingLead>,
    /// Parts.
    pub parts: PartNames,
    /// Where it stands.
    pub place: Span,
}

/// What was measured on one end.
#[derive(Clone, Debug)]
pub struct Reading {
    /// Layer.
    pub over: Layer,
    /// Instrument.
    pub instrument: String,
    /// Error either way.
    pub error: Length,
    /// Values.
    pub values: Vec<Length>,
    /// Where along the cable.
    pub place_along: Option<String>,
    /// Temperature, degrees Celsius.
    pub degc: Option<f64>,
    /// Where it stands.
    pub place: Span,
}

/// What was counted and seen on one end.
#[derive(Clone, Debug)]
pub struct Count {
    /// Straps or wires of the metallic shield.
    pub shield_elements: Option<u32>,
    /// Strands of the conductor.
    pub strands: Option<u32>,
    /// Metal of the conductor, as it looks.
    pub metal: Option<Metal>,
    /// Form of the metallic shield, as it looks.
    pub shield_kind: Option<ShieldKind>,
}

/// What surrounds a leg over a stretch of its axis.
#[derive(Clone, Debug)]
pub struct Surrounding {
    /// Leg, or all.
    pub leg: Option<String>,
    /// What it is.
    pub what: String,
    /// How far from the conductor end it reaches; the last goes on.
    pub until: Option<Length>,
    /// How long it is, of a run of cable without a joint.
    pub length: Option<Length>,
    /// Its highest temperature, degrees Celsius.
    pub degc: f64,
    /// Film, W/(m² K).
    pub film_w_per_m2k: Option<f64>,
    /// Thermal resistance from the cable's surface, K·m/W, in place of the film.
    pub outside_k_m_per_w: Option<f64>,
    /// Soil, or a duct in it, in place of either.
    pub soil: Option<Soil>,
    /// Duct in that soil.
    pub duct: Option<Duct>,
    /// How the leg hangs in still air, in place of all of these.
    pub air: Option<AirForm>,
    /// Where either is from, who stands for it, when.
    pub source: String,
    /// Where it stands.
    pub place: Span,
}

/// Cables or ducts in soil.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Soil {
    /// From the surface to the axis of the cable, the middle of the trefoil or the duct, m.
    pub depth_m: f64,
    /// Thermal resistivity, K·m/W; where it dries, that of what stays moist.
    pub resistivity_k_m_per_w: f64,
    /// How fast heat spreads in it, m²/s, where stated.
    pub diffusivity_m2_per_s: Option<f64>,
    /// How it dries about what is warm; nothing where it does not.
    pub drying: Option<Drying>,
    /// How the cables or ducts of one circuit lie; nothing where it is one cable or duct.
    pub formation: Option<super::Formation>,
    /// Between the axes of neighbours, m; nothing where they touch.
    pub spacing_m: Option<f64>,
    /// Circuits that are alike and lose alike, side by side.
    pub n_circuits: usize,
    /// Between the middles of circuits, m.
    pub circuits_apart_m: Option<f64>,
}

/// Soil that dries about what is warm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drying {
    /// Thermal resistivity of what has dried, K·m/W.
    pub dry_k_m_per_w: f64,
    /// It dries where it is warmer than its surroundings by more than this, K.
    pub above_k: f64,
}

/// A duct.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Duct {
    /// Diameters inside and outside, m.
    pub inside_m: f64,
    /// The same outside.
    pub outside_m: f64,
    /// Thermal resistivity of its wall, K·m/W.
    pub wall_k_m_per_w: f64,
    /// What it holds beside cables, and what it is of: one of the words of the table of fields.
    pub holds: DuctFilling,
    /// Cables in it that lose alike.
    pub n_cables: usize,
    /// The bank of another material in which the ducts lie.
    pub bank: Option<Bank>,
}

/// What fills a duct, and what its wall is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DuctFilling {
    /// Air, plastic.
    AirInPlastic,
    /// Air, metal.
    AirInMetal,
    /// Air, fibre within concrete.
    AirInFibreInConcrete,
    /// Air, earthenware.
    AirInEarthenware,
    /// Water.
    Water,
}

/// A bank of concrete about ducts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bank {
    /// Width and height, m.
    pub sides_m: (f64, f64),
    /// Thermal resistivity, K·m/W.
    pub resistivity_k_m_per_w: f64,
}

/// How a cable hangs in still air.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AirForm {
    /// One cable, away from all others.
    Alone,
    /// Three in touching trefoil.
    Trefoil,
    /// Three side by side that touch.
    FlatTouching,
}

/// A part on the truck.
#[derive(Clone, Debug)]
pub struct Lot {
    /// Which part.
    pub part: String,
    /// Lot.
    pub lot: String,
    /// Day made.
    pub made: Option<Date>,
    /// Day expanded.
    pub expanded: Option<Date>,
    /// Day on the label.
    pub expires: Option<Date>,
    /// Whether somebody looked, and the label prints none.
    pub has_no_expiry: bool,
    /// Temperatures it lay at, degrees Celsius.
    pub store_degc: (Option<f64>, Option<f64>),
    /// Where it lay, in order: last day, and highest temperature in degrees Celsius.
    pub stays_degc: Vec<(Date, f64)>,
}

impl Lot {
    /// Whether its label may print a day that nobody wrote down.
    pub fn label_is_unread(&self) -> bool {
        self.expires.is_none() && !self.has_no_expiry
    }

    /// Whether its stays leave nothing open up to a day.
    pub fn stays_reach(&self, day: Date) -> bool {
        self.stays_degc
            .last()
            .is_some_and(|(until, _)| *until >= day)
    }

    /// The warmest it is known to have lain, degrees Celsius, by its store and its stays.
    pub fn warmest_degc(&self) -> Option<f64> {
        let stays = self.stays_degc.iter().map(|(_, degc)| *degc);
        stays.chain(self.store_degc.1).reduce(f64::max)
    }
}

/// A test of one end for moisture.
#[derive(Clone, Debug)]
pub struct Moisture {
    /// What was tested: "conductor" or "shield".
    pub place: String,
    /// Whether it was wet.
    pub is_wet: bool,
    /// How.
    pub how: String,
    /// When.
    pub date: Date,
    /// Who and when.
    pub source: String,
}

/// The jacket of one end where the seal will lie.
#[derive(Clone, Debug)]
pub struct Surface {
    /// How it was found.
    pub jacket: String,
    /// Who looked.
    pub by: String,
}

/// Trial press.
#[derive(Clone, Debug)]
pub struct TrialPress {
    /// Connector.
    pub connector: String,
    /// End that was pressed, for a sleeve whose ends differ.
    pub end: Option<String>,
    /// Conductor size.
    pub size: Size,
    /// Conductor metal.
    pub metal: Metal,
    /// Tool.
    pub tool: String,
    /// Die.
    pub die: String,
    /// Presses an end.
    pub presses: i64,
    /// Growth over the trials: of the whole sleeve, or of the end that was pressed.
    pub growth: Interval,
    /// Who.
    pub by: String,
    /// When.
    pub date: Date,
}

/// Window set by the owner.
#[derive(Clone, Debug)]
pub struct OwnerWindow {
    /// Plane.
    pub plane: Plane,
    /// Leg, or all.
    pub leg: Option<String>,
    /// Shorter.
    pub minus: Length,
    /// Longer.
    pub plus: Length,
    /// Whose word.
    pub source: String,
}

/// Distance set by the owner.
#[derive(Clone, Debug)]
pub struct OwnerLink {
    /// Leg, or all.
    pub leg: Option<String>,
    /// The link.
    pub link: LinkRow,
}

/// Limit set by the owner.
#[derive(Clone, Debug)]
pub struct OwnerLimit {
    /// Check.
    pub check: String,
    /// Least.
    pub least: Option<Length>,
    /// Greatest.
    pub greatest: Option<Length>,
    /// Greatest field, kV/mm rms at the highest continuous voltage to earth.
    pub greatest_kv_per_mm: Option<f64>,
    /// Least pressure, kPa.
    pub least_kpa: Option<f64>,
    /// Greatest stretch of a bore.
    pub greatest_stretch_ratio: Option<f64>,
    /// Greatest voltage along a shield, V rms at the load.
    pub greatest_v: Option<f64>,
    /// Greatest resistance along a shield at 20 °C, ohm/km.
    pub greatest_ohm_per_km: Option<f64>,
    /// Whose word.
    pub source: String,
}

/// Value from memory that the owner confirmed.
#[derive(Clone, Debug)]
pub struct Confirmation {
    /// Key.
    pub key: String,
    /// Edition.
    pub edition: String,
    /// Whose word.
    pub source: String,
}

/// A named engineer's reasoned word on a question that stays not judged.
#[derive(Clone, Debug)]
pub struct Closing {
    /// Check.
    pub check: String,
    /// The joint, a leg or an end.
    pub whom: Subject,
    /// Key of the fact that is asked for, and stays unanswered.
    pub fact: String,
    /// Why it may stay so, in their own words.
    pub why: String,
    /// Who, and their role.
    pub by: String,
    /// When.
    pub date: Date,
    /// Last day on which it holds.
    pub until: Date,
    /// Where it stands.
    pub place: Span,
}

/// A joint to be planned.
#[derive(Clone, Debug)]
pub struct Job {
    /// Short name.
    pub id: String,
    /// Title.
    pub title: String,
    /// Day of the work.
    pub date: Date,
    /// Which issue of the plan this is, where the job counts them.
    pub issue: Option<i64>,
    /// Kind.
    pub kind: JointKind,
    /// Number of phases.
    pub phases: u8,
    /// Words.
    pub words: Words,
    /// Language of its pages and papers.
    pub language: Language,
    /// Whether it is made up.
    pub invented: bool,
    /// Network.
    pub system: System,
    /// Duty.
    pub duty: Duty,
    /// Trial, where one is named.
    pub trial: Option<Trial>,
    /// Place.
    pub place: Place,
    /// Whom to call: name and number.
    pub stop_and_call: (String, String),
    /// People.
    pub people: Vec<Person>,
    /// When the bridge of the metallic shield comes off, where the owner says.
    pub bridge_off: Option<BridgeOff>,
    /// Bus.
    pub bus: Option<String>,
    /// Blank ports.
    pub blanks: Vec<Blank>,
    /// Legs, in the order of their names.
    pub legs: Vec<Leg>,
    /// Readings.
    pub readings: ByEnd<Reading>,
    /// Counts.
    pub counts: ByEnd<Count>,
    /// Tests for moisture.
    pub moistures: ByEnd<Moisture>,
    /// Jackets as found.
    pub surfaces: ByEnd<Surface>,
    /// What surrounds the legs, leg by leg from the joint outward; rows for all legs first.
    pub surroundings: Vec<Surrounding>,
    /// What was read along shields.
    pub continuities: ByEnd<Continuity>,
    /// What was read across connections of shields.
    pub contacts: ByEnd<Contact>,
    /// Lots.
    pub lots: ByEnd<Lot>,
    /// Trial presses.
    pub trial_presses: Vec<TrialPress>,
    /// Owner's windows.
    pub owner_windows: Vec<OwnerWindow>,
    /// Owner's distances.
    pub owner_links: Vec<OwnerLink>,
    /// Owner's limits.
    pub owner_limits: Vec<OwnerLimit>,
    /// Confirmations.
    pub confirmations: Vec<Confirmation>,
    /// Closings.
    pub closings: Vec<Closing>,
}

/// One cable end: a leg in one phase.
#[derive(Clone, Copy, Debug)]
pub struct End<'j> {
    /// Leg.
    pub leg: &'j Leg,
    /// Phase.
    pub phase: u8,
}

impl Job {
    /// Names of all rows of the catalogue that it uses.
    pub fn rows(&self) -> impl Iterator<Item = &String> {
        let plugs = self.blanks.iter().filter_map(|blank| blank.plug.as_ref());
        let parts = self.legs.iter().flat_map(|leg| leg.parts.rows());
        parts.chain(&self.bus).chain(plugs)
    }

    /// Every end, leg by leg.
    pub fn ends(&self) -> impl Iterator<Item = End<'_>> {
        self.legs
            .iter()
            .flat_map(|leg| (1..=self.phases).map(move |phase| End { leg, phase }))
    }

    /// Load of a leg all the time, A: its own, else the whole.
    pub fn load_of_a(&self, leg: &Leg) -> Option<f64> {
        leg.load_a.or(self.duty.load_a)
    }

    /// Emergency load of a leg, A: its own, else the whole.
    pub fn emergency_of_a(&self, leg: &Leg) -> Option<f64> {
        leg.emergency_a.or(self.duty.emergency_a)
    }

    /// The owner's limits of a check.
    pub fn limits_of<'j>(&'j self, check: &'j str) -> impl Iterator<Item = &'j OwnerLimit> {
        let limits = self.owner_limits.iter();
        limits.filter(move |limit| limit.check == check)
    }

    /// Lots of a part on the truck for an end.
    pub fn lots_of<'j>(&'j self, end: &EndId, part: &'j str) -> impl Iterator<Item = &'j Lot> {
        let lots = self.lots.of(end).iter();
        lots.filter(move |lot| lot.part == part)
    }
}

impl End<'_> {
    /// Its leg and phase.
    pub fn id(&self) -> EndId {
        EndId::new(&self.leg.id, self.phase)
    }
}
