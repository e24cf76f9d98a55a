//! The table of facts that can be missing.

use super::ask::File::{Catalogue, Job};
use super::ask::Who::{CableMaker, Crew, Engineer, PartMaker, Store};
use super::ask::{Fact, File, Who};
use crate::said::FactKey;

const fn fact(
    id: FactKey,
    key: &'static str,
    who: Who,
    file: File,
    tables: &'static [&'static str],
    fields: &'static [&'static str],
) -> Fact {
    Fact {
        id,
        key,
        who,
        file,
        tables,
        fields,
    }
}

macro_rules! facts {
    ($($(#[doc = $doc:literal])* $name:ident: $id:ident, $key:literal, $who:ident, $file:ident, $tables:expr, $fields:expr;)*) => {
        $($(#[doc = $doc])* pub static $name: Fact = fact(FactKey::$id, $key, $who, $file, &$tables, &$fields);)*
        /// All facts.
        pub static FACTS: &[&Fact] = &[$(&$name),*];

        /// Row of a fact.
        pub const fn fact_row(fact: FactKey) -> &'static Fact {
            match fact {
                $(FactKey::$id => &$name,)*
            }
        }
    };
}

facts! {
    // Facts that the crew can read, count, test or look at.
    /// A diameter, read around the cable.
    READING: Reading, "reading", Crew, Job, ["reading"], ["leg", "phase", "over", "instrument", "error", "temperature", "values"];
    /// The temperature of a reading.
    READING_TEMPERATURE: ReadingTemperature, "reading-temperature", Crew, Job, ["reading"], ["temperature"];
    /// A reading at the temperature that a range is for.
    READING_WARMED: ReadingWarmed, "reading-warmed", Crew, Job, ["reading"], ["temperature", "values"];
    /// A reading with a smaller error.
    READING_CLOSER: ReadingCloser, "reading-closer", Crew, Job, ["reading"], ["instrument", "error", "values"];
    /// Error of lengths around a leg.
    ROOM_ERROR: RoomError, "room-error", Crew, Job, ["leg"], ["room_error"];
    /// Straight cable.
    STRAIGHT: Straight, "straight", Crew, Job, ["leg"], ["straight", "room_error"];
    /// Room to park.
    PARK_ROOM: ParkRoom, "park-room", Crew, Job, ["leg"], ["park_room", "room_error"];
    /// Bend as racked.
    BEND: Bend, "bend", Crew, Job, ["leg"], ["bend_radius", "room_error"];
    /// Slack.
    SLACK: Slack, "slack", Crew, Job, ["leg"], ["slack", "room_error"];
    /// Moisture.
    MOISTURE: Moisture, "moisture", Crew, Job, ["moisture"], ["leg", "phase", "in", "found", "how", "by", "date"];
    /// State of the jacket.
    JACKET: Jacket, "jacket", Crew, Job, ["surface"], ["leg", "phase", "jacket", "by"];
    /// Growth of a sleeve.
    TRIAL_PRESS: TrialPress, "trial-press", Crew, Job, ["trial_press"], ["connector", "end", "size", "metal", "tool", "die", "presses", "length_before", "length_after", "error", "by", "date"];
    /// Method of reading a shield.
    CONTINUITY: Continuity, "continuity", Crew, Job, ["continuity"], ["ends", "wires", "leads", "length", "temperature", "resistance", "error"];
    /// Resistance across a connection of a shield.
    CONTACT: Contact, "contact", Crew, Job, ["contact"], ["leg", "phase", "at", "resistance", "error", "by", "date"];
    /// Wires or straps of a shield.
    COUNT: Count, "count", Crew, Job, ["count"], ["leg", "phase", "shield_elements"];
    /// Cleaner of a conductor.
    BRUSH: Brush, "brush", Crew, Job, ["leg"], ["consumables"];


    // Facts that the store knows.
    /// Lot of a part.
    LOT: Lot, "lot", Store, Job, ["lot"], ["leg", "phase", "part", "lot", "made", "expanded", "expires", "store_least", "store_greatest"];
    /// Day from which a lot's months run.
    LOT_DAY: LotDay, "lot-day", Store, Job, ["lot"], ["made", "expanded"];
    /// Text of a label.
    LABEL_DATE: LabelDate, "label-date", Store, Job, ["lot"], ["expires", "no_expiry"];
    /// Temperature of a lot's store.
    LOT_STORE: LotStore, "lot-store", Store, Job, ["lot"], ["store_least", "store_greatest"];

    // Facts that the owner decides or knows.
    /// A value from memory.
    CONFIRMATION: Confirmation, "confirmation", Engineer, Job, ["confirmation"], ["key", "edition", "by", "date"];
    /// Construction of the cable.
    CABLE: Cable, "cable", Engineer, Job, ["leg.cable"], ["size", "metal", "stranding", "class", "level", "papers"];
    /// A window.
    WINDOW: Window, "window", Engineer, Job, ["owner_window"], ["plane", "leg", "minus", "plus", "by", "date"];
    /// Shrink-back of a jacket.
    JACKET_SHRINKS: JacketShrinks, "jacket-shrinks", Engineer, Job, ["owner_link"], ["leg", "from", "to", "distance", "minus", "plus", "by", "date"];
    /// A limit.
    LIMIT: Limit, "limit", Engineer, Job, ["owner_limit"], ["check", "by", "date"];
    /// An engineer's own word.
    WORD: Word, "word", Engineer, Job, ["closing"], ["check", "leg", "phase", "fact", "why", "by", "date", "until"];
    /// Hottest conductor.
    CONDUCTOR_GREATEST: ConductorGreatest, "conductor-greatest", Engineer, Job, ["duty"], ["conductor_greatest"];
    /// Load.
    LOAD: Load, "load", Engineer, Job, ["duty"], ["load"];
    /// Emergency.
    EMERGENCY: Emergency, "emergency", Engineer, Job, ["duty"], ["emergency", "emergency_time"];
    /// Short circuit of the conductor.
    FAULT: Fault, "fault", Engineer, Job, ["duty"], ["fault", "fault_time", "reclosing"];
    /// Short circuit of a shield.
    SHIELD_FAULT: ShieldFault, "shield-fault", Engineer, Job, ["duty"], ["shield_fault", "shield_fault_time", "reclosing"];
    /// Clearing time.
    CLEARING_TIME: ClearingTime, "clearing-time", Engineer, Job, ["system"], ["clearing_time"];
    /// Lowest temperature of the place.
    AMBIENT_LEAST: AmbientLeast, "ambient-least", Engineer, Job, ["place"], ["ambient_least"];
    /// Highest temperature of the place.
    AMBIENT_GREATEST: AmbientGreatest, "ambient-greatest", Engineer, Job, ["place"], ["ambient_greatest"];
    /// Surroundings.
    SURROUNDING: Surrounding, "surrounding", Engineer, Job, ["surrounding"], ["leg", "what", "until", "temperature", "film_w_per_m2k", "outside_k_m_per_w", "from", "by", "date"];
    /// Far end of a shield.
    FAR_END: FarEnd, "far-end", Engineer, Job, ["leg"], ["far_end_bonded", "bonding"];
    /// Formation of a run.
    RUN: Run, "run", Engineer, Job, ["leg"], ["formation", "spacing", "run_length"];
    /// Surroundings of a run of cable without a joint.
    RUN_SURROUNDING: RunSurrounding, "run-surrounding", Engineer, Job, ["surrounding"], ["what", "length", "temperature", "soil", "duct", "air", "film_w_per_m2k", "outside_k_m_per_w", "from", "by", "date"];
    /// Length of a run of cable.
    ROUTE: Route, "route", Engineer, Job, ["leg", "surrounding"], ["route_length", "length"];
    /// Spare cuts.
    SPARE_CUTS: SpareCuts, "spare-cuts", Engineer, Job, ["leg"], ["spare_cuts"];
    /// An open part.
    PART: Part, "part", Engineer, Job, ["leg"], ["body", "adapter", "connector", "shield_part", "seal", "consumables"];
    /// An adapter that reaches the edge of the screen.
    ADAPTER_REACH: AdapterReach, "adapter-reach", Engineer, Job, ["leg"], ["adapter"];
    /// Leg that parks.
    PARKS: Parks, "parks", Engineer, Job, ["leg"], ["parks"];
    /// The bus and its blank ports.
    BUS: Bus, "bus", Engineer, Job, ["file"], ["bus", "blank"];
    /// Lead.
    BONDING_LEAD: Lead, "lead", Engineer, Job, ["leg.lead"], ["metal", "area", "fault_greatest"];

    // Facts that the cable's maker states.
    /// Bend permitted.
    BEND_LEAST: BendLeast, "bend-least", CableMaker, Job, ["leg.cable"], ["bend_radius_least"];
    /// Expansion.
    EXPANSION: Expansion, "expansion", CableMaker, Job, ["leg.cable"], ["expansion_per_k_least", "expansion_per_k_greatest"];
    /// Permittivity.
    PERMITTIVITY: Permittivity, "permittivity", CableMaker, Job, ["leg.cable"], ["permittivity"];
    /// Shield's metal and limit.
    SHIELD_PAPERS: ShieldPapers, "shield-papers", CableMaker, Job, ["leg.cable.shield"], ["metal", "fault_greatest"];
    /// Shield's dimensions.
    SHIELD_MADE: ShieldMade, "shield-made", CableMaker, Job, ["leg.cable.shield"], ["count", "width", "thickness", "diameter", "overlap_percent", "overlap"];
    /// Diameters.
    CABLE_PAPERS: CablePapers, "cable-papers", CableMaker, Job, ["leg.cable"], ["papers"];
    /// Heat of the cable's layers.
    CABLE_HEAT: CableHeat, "cable-heat", CableMaker, Job, ["leg.cable"], ["insulation_k_m_per_w", "insulation_mj_per_m3k", "jacket_k_m_per_w", "jacket_mj_per_m3k"];

    // Facts that the part's maker states.
    /// Layer in a body's bore beyond an adapter.
    BARE_BORE: BareBore, "bare-bore", PartMaker, Catalogue, ["adapter"], ["leaves_bare"];
    /// Ways of bonding that a body allows.
    BONDINGS: Bondings, "bondings", PartMaker, Catalogue, ["body"], ["bondings"];
    /// Inside of a body.
    INSIDE: Inside, "inside", PartMaker, Catalogue, ["body.inner"], ["origin", "by", "date", "uncertainty", "on_diameter", "region", "screen_step"];
    /// Inside of a tapered plug.
    TAPER: Taper, "taper", PartMaker, Catalogue, ["body.taper"], ["region"];
    /// Permittivity of an adapter.
    ADAPTER_PERMITTIVITY: AdapterPermittivity, "adapter-permittivity", PartMaker, Catalogue, ["adapter"], ["relative_permittivity"];
    /// Rubber of a part.
    RUBBER: Rubber, "rubber", PartMaker, Catalogue, ["body.rubber", "adapter.rubber", "seal.rubber"], ["relaxed_bore", "relaxed_outside", "hold_diameter", "set", "at_temperature"];
    /// Rubber with temperature.
    RUBBER_HEAT: RubberHeat, "rubber-heat", PartMaker, Catalogue, ["body.rubber", "adapter.rubber", "seal.rubber"], ["expansion_per_k_least", "expansion_per_k_greatest", "modulus_per_k_least", "modulus_per_k_greatest"];
    /// Shelf life.
    SHELF: Shelf, "shelf", PartMaker, Catalogue, ["body.shelf", "adapter.shelf", "seal.shelf"], ["from", "months", "store_least", "store_greatest"];
    /// A range.
    RANGE: Range, "range", PartMaker, Catalogue, ["body.fits", "adapter.fits", "seal.fits", "shield_part.fits"], ["at", "over", "least", "greatest"];
    /// Place of a plane.
    LINK: Link, "link", PartMaker, Catalogue, ["body.link", "connector.link", "adapter.link", "shield_part.link", "seal.link"], ["from", "to", "distance", "minus", "plus"];
    /// Length while parked.
    PARKED_LENGTH: ParkedLength, "parked-length", PartMaker, Catalogue, ["body", "seal"], ["parked_length"];
    /// Straight cable beyond the body.
    BEND_KEEP_OFF: BendKeepOff, "bend-keep-off", PartMaker, Catalogue, ["body"], ["bend_keep_off"];
    /// Number of mouths.
    MOUTHS: Mouths, "mouths", PartMaker, Catalogue, ["body"], ["legs"];
    /// Longest connector.
    CONNECTOR_LENGTH: ConnectorLength, "connector-length", PartMaker, Catalogue, ["body"], ["connector_length_greatest", "electrode_overlap_least"];
    /// Connector's diameter.
    CONNECTOR_DIAMETER: ConnectorDiameter, "connector-diameter", PartMaker, Catalogue, ["body"], ["connector_diameter_least", "connector_diameter_greatest"];
    /// Short circuit of a part.
    WITHSTANDS: Withstands, "withstands", PartMaker, Catalogue, ["connector", "shield_part"], ["fault", "fault_time"];
    /// Conductor in a short circuit.
    FAULT_GREATEST: FaultGreatest, "fault-greatest", PartMaker, Catalogue, ["body"], ["conductor_fault_greatest"];
    /// Conductor in service and in an emergency.
    SERVICE_GREATEST: ServiceGreatest, "service-greatest", PartMaker, Catalogue, ["body"], ["conductor_greatest", "conductor_emergency_greatest"];
    /// Contact of a shield part.
    CONTACT_GREATEST: ContactGreatest, "contact-greatest", PartMaker, Catalogue, ["shield_part"], ["contact_greatest"];
    /// Shield part that passes a seal.
    PASSES_SEAL: PassesSeal, "passes-seal", PartMaker, Catalogue, ["shield_part"], ["passes_seal", "blocked"];
    /// Lead that a seal takes.
    TAKES_LEAD: TakesLead, "takes-lead", PartMaker, Catalogue, ["seal"], ["takes_lead"];
    /// Jackets of a seal.
    JACKETS: Jackets, "jackets", PartMaker, Catalogue, ["seal"], ["jacket_surfaces"];
    /// Overlap of a seal.
    OVERLAP: Overlap, "overlap", PartMaker, Catalogue, ["seal"], ["overlap_least"];
    /// Ends of an adapter.
    ADAPTER_ENDS: AdapterEnds, "adapter-ends", PartMaker, Catalogue, ["adapter.link"], ["from", "to", "distance", "minus", "plus"];
    /// Contact of a shield part on the shield.
    SHIELD_CONTACT: ShieldContact, "shield-contact", PartMaker, Catalogue, ["shield_part.link"], ["from", "to", "distance", "minus", "plus"];
    /// Start of a seal.
    SEAL_START: SealStart, "seal-start", PartMaker, Catalogue, ["seal.link"], ["from", "to", "distance", "minus", "plus"];
    /// Overlap of a seal over a body.
    BODY_OVERLAP: BodyOverlap, "body-overlap", PartMaker, Catalogue, ["seal"], ["body_overlap_least"];
    /// Length of a seal over the whole joint.
    SEAL_LENGTH: SealLength, "seal-length", PartMaker, Catalogue, ["seal"], ["length", "overlap_least"];
    /// Metals of a consumable.
    CONSUMABLE_METALS: ConsumableMetals, "consumable-metals", PartMaker, Catalogue, ["consumable"], ["metals"];
    /// Heat of a body.
    BODY_HEAT: BodyHeat, "body-heat", PartMaker, Catalogue, ["body.inner.region"], ["resistivity_k_m_per_w", "capacity_mj_per_m3k"];
    /// Heat of an adapter.
    ADAPTER_HEAT: AdapterHeat, "adapter-heat", PartMaker, Catalogue, ["adapter"], ["resistivity_k_m_per_w", "capacity_mj_per_m3k"];
    /// Heat of a seal.
    SEAL_HEAT: SealHeat, "seal-heat", PartMaker, Catalogue, ["seal"], ["cover"];
    /// Heat of a connector.
    CONNECTOR_HEAT: ConnectorHeat, "connector-heat", PartMaker, Catalogue, ["connector"], ["made_of", "resistance_ratio"];
    /// A row that only its writer has compared with its paper.
    ROW_CHECKED: RowChecked, "row-checked", Engineer, Catalogue, ["body", "connector", "adapter", "shield_part", "seal", "consumable", "bus", "plug"], ["checked_by", "checked"];
    /// A paper that may have been replaced.
    PAPER_CURRENT: PaperCurrent, "paper-current", Engineer, Catalogue, ["body.instructions", "connector.instructions", "adapter.instructions", "shield_part.instructions", "seal.instructions", "consumable.instructions", "bus.instructions", "plug.instructions"], ["seen_current"];
    /// Heat of a bus.
    BUS_HEAT: BusHeat, "bus-heat", PartMaker, Catalogue, ["bus"], ["resistance_microohm"];
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_fact_has_a_key_of_its_own_and_a_place_for_its_answer() {
        let keys: BTreeSet<&str> = FACTS.iter().map(|fact| fact.key).collect();
        assert_eq!(keys.len(), FACTS.len());
        for fact in FACTS {
            assert!(
                !fact.tables.is_empty() && !fact.fields.is_empty(),
                "{}",
                fact.key
            );
            let written = serde_json::to_value(fact.id).expect("a word");
            assert_eq!(written, fact.key, "{}", fact.key);
        }
    }

    #[test]
    fn only_what_a_part_is_asked_for_goes_into_a_catalogue() {
        // A row can be compared with its paper without its maker.
        let of_rows = [ROW_CHECKED.key, PAPER_CURRENT.key];
        for fact in FACTS.iter().filter(|fact| !of_rows.contains(&fact.key)) {
            assert_eq!(
                fact.file == Catalogue,
                fact.who == PartMaker,
                "{}",
                fact.key
            );
        }
    }
}
