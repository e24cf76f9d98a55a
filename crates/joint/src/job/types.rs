//! Types: the whole job as a typed value, and its ends.

use super::as_built::{AsBuilt, LegAsBuilt};
use super::bridge::BridgeOff;
use super::bus::Blank;
use super::condition::{Moisture, Surface};
use super::count::Count;
use super::duty::Duty;
use super::leg::Leg;
use super::lot::Lot;
use super::owner_rows::{Closing, Confirmation, OwnerLimit, OwnerLink, OwnerWindow};
use super::people::Person;
use super::place::Place;
use super::reading::Reading;
use super::shield::{Contact, Continuity};
use super::surround::Surrounding;
use super::system::{System, Trial};
use super::trial_press::TrialPress;
use crate::cable::Words;
use crate::end::{ByEnd, EndId};
use crate::said::{JointKind, Language};
use jiff::civil::Date;
use std::ops::RangeInclusive;

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
    /// Facts as built of the one phase that is judged; `None` while all phases are planned.
    pub as_built: Option<AsBuilt>,
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

    /// Numbers of the phases that are judged: all of them, or the one that is judged as built.
    pub fn phase_numbers(&self) -> RangeInclusive<u8> {
        match &self.as_built {
            Some(built) => built.phase..=built.phase,
            None => 1..=self.phases,
        }
    }

    /// Every end that is judged, leg by leg.
    pub fn ends(&self) -> impl Iterator<Item = End<'_>> {
        let ends_of = |leg| self.phase_numbers().map(move |phase| End { leg, phase });
        self.legs.iter().flat_map(ends_of)
    }

    /// Facts as built of a leg, if it is judged as built.
    pub fn as_built_of(&self, leg: &Leg) -> Option<&LegAsBuilt> {
        self.as_built.as_ref()?.legs.get(&leg.id)
    }

    /// The job by the instructions alone: without the owner's windows and distances, and without the places that were read.
    #[must_use]
    pub fn by_instructions_alone(&self) -> Job {
        Job {
            owner_windows: Vec::new(),
            owner_links: Vec::new(),
            as_built: self.as_built.as_ref().map(AsBuilt::without_places),
            ..self.clone()
        }
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
