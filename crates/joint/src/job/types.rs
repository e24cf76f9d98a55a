//! Types: the job as typed values.

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

/// Network.
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

    /// Voltage between conductor and earth while an earth fault is cleared: Um; `None` if earthing is solid.
    pub fn voltage_in_earth_fault(&self) -> Option<VoltageRms> {
        (self.earthing != "solid").then(|| VoltageRms::from_kv(self.highest_kv))
    }
}

/// Currents and times that the joint must carry.
#[derive(Clone, Debug, Default)]
pub struct Duty {
    /// Continuous load, A.
    pub load_a: Option<f64>,
    /// Emergency load, A.
    pub emergency_a: Option<f64>,
    /// Greatest duration of the emergency load, s.
    pub emergency_s: Option<f64>,
    /// Highest temperature of the conductor in service, degrees Celsius.
    pub conductor_greatest_degc: Option<f64>,
    /// Conductor fault, A.
    pub fault_a: Option<f64>,
    /// Duration of the conductor fault, s.
    pub fault_s: Option<f64>,
    /// Whether the conductor fault flows in three phases alike, if stated.
    pub is_fault_balanced: Option<bool>,
    /// Shield fault, A.
    pub shield_fault_a: Option<f64>,
    /// Duration of the shield fault, s.
    pub shield_fault_s: Option<f64>,
    /// Reclosing shots.
    pub reclosing: Option<i64>,
    /// Daily course of the load, for a run of cable without a joint.
    pub daily: Option<super::Daily>,
}

/// Trial on the cable.
#[derive(Clone, Debug, PartialEq)]
pub struct Trial {
    /// Voltage between conductor and earth, kV rms.
    pub level_kv: f64,
    /// Frequency, Hz.
    pub frequency_hz: f64,
    /// Whether its waveform is cosine-rectangular, with a crest equal to its rms; else it is a sine.
    pub is_rectangular: bool,
    /// Standard, edition and clause, or the person who sets it.
    pub from: String,
}

impl Trial {
    /// Sine with the same crest, between conductor and earth, rms.
    pub fn sine_of_same_crest(&self) -> VoltageRms {
        let rms = VoltageRms::from_kv(self.level_kv);
        if self.is_rectangular {
            VoltageRms::from_kv(self.level_kv / std::f64::consts::SQRT_2)
        } else {
            rms
        }
    }
}

/// Place of the joint.
#[derive(Clone, Debug)]
pub struct Place {
    /// Kind: vault, duct or buried.
    pub kind: String,
    /// Name.
    pub name: String,
    /// Least and greatest ambient temperature, degrees Celsius.
    pub ambient_degc: (Option<f64>, Option<f64>),
    /// Whether the place is wet, if stated.
    pub wet: Option<bool>,
}

/// A person, and the matters that they decide.
#[derive(Clone, Debug)]
pub struct Person {
    /// Name.
    pub name: String,
    /// Role.
    pub role: String,
    /// Matters that they decide.
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

/// Parts named for a leg; `None` if left open.
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
    /// Names of all catalogue rows that it uses.
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

/// Room around a leg; `None` if not measured.
#[derive(Clone, Debug, Default)]
pub struct Room {
    /// Error of each of these lengths.
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
    /// Destination of the cable.
    pub goes_to: Option<String>,
    /// Bonding.
    pub bonding: String,
    /// Whether the body parks on it.
    pub parks: bool,
    /// Room.
    pub room: Room,
    /// Construction by its papers.
    pub cable: Construction,
    /// Whether the strands are blocked, if stated.
    pub blocked: Option<bool>,
    /// Whether the far end stands or may stand in water, if stated.
    pub far_end_in_water: Option<bool>,
    /// Least bending radius that its maker permits.
    pub bend_radius_least: Option<Length>,
    /// Relative change of the insulation's diameter per kelvin, least and greatest.
    pub expansion_per_k: Option<(f64, f64)>,
    /// Relative permittivity of the insulation, if stated.
    pub relative_permittivity: Option<f64>,
    /// Thermal resistivity and heat capacity of the insulation with its screens, if stated.
    pub insulation_stuff: Option<Stuff>,
    /// Thermal resistivity and heat capacity of the jacket, if stated.
    pub jacket_stuff: Option<Stuff>,
    /// Continuous load, A, if this leg has its own.
    pub load_a: Option<f64>,
    /// Emergency load, A, if this leg has its own.
    pub emergency_a: Option<f64>,
    /// Current in this leg's shield at its load, A, if stated.
    pub shield_load_a: Option<f64>,
    /// Length of the route, for a run of cable without a joint.
    pub route_length: Option<Length>,
    /// Metal of the shield, if stated.
    pub shield_metal: Option<Metal>,
    /// Highest temperature of the shield in a short circuit, degrees Celsius, if stated.
    pub shield_fault_greatest_degc: Option<f64>,
    /// Short-circuit current in this leg's shield, A, if it has its own.
    pub shield_fault_a: Option<f64>,
    /// Its shield beyond the joint.
    pub shield_run: ShieldRun,
    /// Lead that bonds its shield; `None` if none is named.
    pub bonding_lead: Option<BondingLead>,
    /// Parts.
    pub parts: PartNames,
    /// Place in the job's file.
    pub place: Span,
}

/// Reading at one end.
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
    /// Place along the cable.
    pub place_along: Option<String>,
    /// Temperature, degrees Celsius.
    pub degc: Option<f64>,
    /// Place in the file.
    pub place: Span,
}

/// Counts and looks at one end.
#[derive(Clone, Debug)]
pub struct Count {
    /// Straps or wires of the metallic shield.
    pub shield_elements: Option<u32>,
    /// Strands of the conductor.
    pub strands: Option<u32>,
    /// Metal of the conductor, as seen.
    pub metal: Option<Metal>,
    /// Form of the metallic shield, as seen.
    pub shield_kind: Option<ShieldKind>,
}

/// Surroundings of a leg over a stretch of its axis.
#[derive(Clone, Debug)]
pub struct Surrounding {
    /// Leg; `None` for all legs.
    pub leg: Option<String>,
    /// Name of the surroundings.
    pub what: String,
    /// Distance from the conductor end to the far end of the stretch; `None` for the last one, which goes on.
    pub until: Option<Length>,
    /// Length of the stretch, for a run of cable without a joint.
    pub length: Option<Length>,
    /// Highest temperature of the surroundings, degrees Celsius.
    pub degc: f64,
    /// Film coefficient, W/(m² K).
    pub film_w_per_m2k: Option<f64>,
    /// Thermal resistance from the cable's surface outward, K·m/W, in place of the film.
    pub outside_k_m_per_w: Option<f64>,
    /// Soil, or a duct in soil, in place of either.
    pub soil: Option<Soil>,
    /// Duct in that soil.
    pub duct: Option<Duct>,
    /// Arrangement of the leg in still air, in place of all of these.
    pub air: Option<AirForm>,
    /// Origin of the stated values, with person and date.
    pub source: String,
    /// Place in the file.
    pub place: Span,
}

/// Cables or ducts in soil.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Soil {
    /// Depth from the surface to the axis of the cable or duct, or to the middle of a trefoil, m.
    pub depth_m: f64,
    /// Thermal resistivity, K·m/W; for soil that dries, the resistivity of its moist part.
    pub resistivity_k_m_per_w: f64,
    /// Thermal diffusivity, m²/s, if stated.
    pub diffusivity_m2_per_s: Option<f64>,
    /// Drying near warm cables; `None` if the soil does not dry.
    pub drying: Option<Drying>,
    /// Formation of the cables or ducts of one circuit; `None` for one cable or duct alone.
    pub formation: Option<super::Formation>,
    /// Distance between the axes of neighbours, m; `None` if they touch.
    pub spacing_m: Option<f64>,
    /// Number of equal circuits with equal losses, side by side.
    pub n_circuits: usize,
    /// Distance between the middles of circuits, m.
    pub circuits_apart_m: Option<f64>,
}

/// Drying of soil near warm cables.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drying {
    /// Thermal resistivity of the dried part, K·m/W.
    pub dry_k_m_per_w: f64,
    /// Critical temperature rise: soil dries where it is warmer than its surroundings by more than this, K.
    pub above_k: f64,
}

/// Duct.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Duct {
    /// Inside diameter, m.
    pub inside_m: f64,
    /// Outside diameter, m.
    pub outside_m: f64,
    /// Thermal resistivity of its wall, K·m/W.
    pub wall_k_m_per_w: f64,
    /// Filling beside the cables, and material of the wall: one of the words of the table of fields.
    pub holds: DuctFilling,
    /// Number of cables in it, with equal losses.
    pub n_cables: usize,
    /// Bank of another material in which the ducts lie.
    pub bank: Option<Bank>,
}

/// Filling of a duct, and material of its wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DuctFilling {
    /// Air in plastic.
    AirInPlastic,
    /// Air in metal.
    AirInMetal,
    /// Air in fibre within concrete.
    AirInFibreInConcrete,
    /// Air in earthenware.
    AirInEarthenware,
    /// Water.
    Water,
}

/// Bank of concrete around ducts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bank {
    /// Width and height, m.
    pub sides_m: (f64, f64),
    /// Thermal resistivity, K·m/W.
    pub resistivity_k_m_per_w: f64,
}

/// Arrangement of a cable in still air.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AirForm {
    /// One cable, away from all others.
    Alone,
    /// Three cables in touching trefoil.
    Trefoil,
    /// Three cables side by side that touch.
    FlatTouching,
}

/// Part on the truck.
#[derive(Clone, Debug)]
pub struct Lot {
    /// Kind of part.
    pub part: String,
    /// Lot.
    pub lot: String,
    /// Day made.
    pub made: Option<Date>,
    /// Day expanded.
    pub expanded: Option<Date>,
    /// Day on the label.
    pub expires: Option<Date>,
    /// Whether somebody looked at the label and found no day on it.
    pub has_no_expiry: bool,
    /// Least and greatest temperature in store, degrees Celsius.
    pub store_degc: (Option<f64>, Option<f64>),
    /// Stays in order: last day, and highest temperature in degrees Celsius.
    pub stays_degc: Vec<(Date, f64)>,
}

impl Lot {
    /// Whether its label may print a day that nobody has written down.
    pub fn label_is_unread(&self) -> bool {
        self.expires.is_none() && !self.has_no_expiry
    }

    /// Whether its stays are known up to a day.
    pub fn stays_reach(&self, day: Date) -> bool {
        self.stays_degc
            .last()
            .is_some_and(|(until, _)| *until >= day)
    }

    /// Greatest known temperature of its store and its stays, degrees Celsius.
    pub fn warmest_degc(&self) -> Option<f64> {
        let stays = self.stays_degc.iter().map(|(_, degc)| *degc);
        stays.chain(self.store_degc.1).reduce(f64::max)
    }
}

/// Test of one end for moisture.
#[derive(Clone, Debug)]
pub struct Moisture {
    /// Tested place: "conductor" or "shield".
    pub place: String,
    /// Whether it was wet.
    pub is_wet: bool,
    /// Method.
    pub how: String,
    /// Day of the test.
    pub date: Date,
    /// Person and day.
    pub source: String,
}

/// Jacket of one end at the place of the seal.
#[derive(Clone, Debug)]
pub struct Surface {
    /// Condition of the jacket.
    pub jacket: String,
    /// Person who looked.
    pub by: String,
}

/// Trial presses of a connector.
#[derive(Clone, Debug)]
pub struct TrialPress {
    /// Connector.
    pub connector: String,
    /// Pressed end, for a sleeve whose ends differ.
    pub end: Option<String>,
    /// Conductor size.
    pub size: Size,
    /// Conductor metal.
    pub metal: Metal,
    /// Tool.
    pub tool: String,
    /// Die.
    pub die: String,
    /// Number of presses for each end.
    pub presses: i64,
    /// Growth over the trials: of the whole sleeve, or of the pressed end.
    pub growth: Interval,
    /// Person who pressed it.
    pub by: String,
    /// Day of the trial.
    pub date: Date,
}

/// Window set by the owner.
#[derive(Clone, Debug)]
pub struct OwnerWindow {
    /// Plane.
    pub plane: Plane,
    /// Leg; `None` for all legs.
    pub leg: Option<String>,
    /// Permitted deviation to the shorter side.
    pub minus: Length,
    /// Permitted deviation to the longer side.
    pub plus: Length,
    /// Person and date.
    pub source: String,
}

/// Distance set by the owner.
#[derive(Clone, Debug)]
pub struct OwnerLink {
    /// Leg; `None` for all legs.
    pub leg: Option<String>,
    /// Link.
    pub link: LinkRow,
}

/// Limit set by the owner.
#[derive(Clone, Debug)]
pub struct OwnerLimit {
    /// Check.
    pub check: String,
    /// Least length.
    pub least: Option<Length>,
    /// Greatest length.
    pub greatest: Option<Length>,
    /// Greatest field, kV/mm rms at the highest continuous voltage to earth.
    pub greatest_kv_per_mm: Option<f64>,
    /// Least pressure, kPa.
    pub least_kpa: Option<f64>,
    /// Greatest stretch of a bore, over its relaxed diameter.
    pub greatest_stretch_ratio: Option<f64>,
    /// Greatest voltage along a shield, V rms at the load.
    pub greatest_v: Option<f64>,
    /// Greatest resistance along a shield at 20 °C, ohm/km.
    pub greatest_ohm_per_km: Option<f64>,
    /// Person and date.
    pub source: String,
}

/// Value from memory that the owner confirmed.
#[derive(Clone, Debug)]
pub struct Confirmation {
    /// Key.
    pub key: String,
    /// Edition.
    pub edition: String,
    /// Person and date.
    pub source: String,
}

/// A named engineer's reasoned word on a question that stays not judged.
#[derive(Clone, Debug)]
pub struct Closing {
    /// Check.
    pub check: String,
    /// Subject: the joint, a leg or an end.
    pub whom: Subject,
    /// Key of the missing fact, which stays unanswered.
    pub fact: String,
    /// Reason why it may stay unanswered, in the engineer's own words.
    pub why: String,
    /// Engineer, with the role.
    pub by: String,
    /// Day of the word.
    pub date: Date,
    /// Last day on which it holds.
    pub until: Date,
    /// Place in the job's file.
    pub place: Span,
}

/// Joint to be planned.
#[derive(Clone, Debug)]
pub struct Job {
    /// Short name.
    pub id: String,
    /// Title.
    pub title: String,
    /// Day of the work.
    pub date: Date,
    /// Number of the issue of the plan, if the job counts issues.
    pub issue: Option<i64>,
    /// Kind.
    pub kind: JointKind,
    /// Number of phases.
    pub phases: u8,
    /// Words.
    pub words: Words,
    /// Language of its pages and papers.
    pub language: Language,
    /// Whether the job is invented.
    pub invented: bool,
    /// Network.
    pub system: System,
    /// Duty.
    pub duty: Duty,
    /// Trial, if one is named.
    pub trial: Option<Trial>,
    /// Place.
    pub place: Place,
    /// Person to call: name and number.
    pub stop_and_call: (String, String),
    /// People.
    pub people: Vec<Person>,
    /// Time at which the bridge of the metallic shield comes off, if the owner states it.
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
    /// Surroundings of the legs, leg by leg from the joint outward; rows for all legs come first.
    pub surroundings: Vec<Surrounding>,
    /// Resistance readings along shields.
    pub continuities: ByEnd<Continuity>,
    /// Resistance readings across connections of shields.
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
    /// Names of all catalogue rows that it uses.
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

    /// Continuous load of a leg, A: its own, else the job's.
    pub fn load_of_a(&self, leg: &Leg) -> Option<f64> {
        leg.load_a.or(self.duty.load_a)
    }

    /// Emergency load of a leg, A: its own, else the job's.
    pub fn emergency_of_a(&self, leg: &Leg) -> Option<f64> {
        leg.emergency_a.or(self.duty.emergency_a)
    }

    /// Owner's limits of a check.
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
    /// Leg and phase.
    pub fn id(&self) -> EndId {
        EndId::new(&self.leg.id, self.phase)
    }
}
