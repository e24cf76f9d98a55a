//! The table of facts that can be missing.

use super::ask::File::{Catalogue, Job};
use super::ask::Who::{CableMaker, Crew, Engineer, PartMaker, Store};
use super::ask::{Fact, File, Who};

const fn fact(
    key: &'static str,
    who: Who,
    find: &'static str,
    file: File,
    tables: &'static [&'static str],
    fields: &'static [&'static str],
) -> Fact {
    Fact {
        key,
        who,
        find,
        file,
        tables,
        fields,
    }
}

macro_rules! facts {
    ($($(#[doc = $doc:literal])* $name:ident: $key:literal, $who:ident, $find:literal, $file:ident, $tables:expr, $fields:expr;)*) => {
        $($(#[doc = $doc])* pub static $name: Fact = fact($key, $who, $find, $file, &$tables, &$fields);)*
        /// All of them.
        pub static FACTS: &[&Fact] = &[$(&$name),*];
    };
}

facts! {
    // What the crew can read, count, test or look at.
    /// A diameter, read around the cable.
    READING: "reading", Crew, "Read the diameter over the layer itself, four times around the cable with a calliper, and write down the temperature of the cable: {of}.", Job, ["reading"], ["leg", "phase", "over", "instrument", "error", "temperature", "values"];
    /// The temperature of a reading.
    READING_TEMPERATURE: "reading-temperature", Crew, "At what temperature was the cable when it was read? {of}.", Job, ["reading"], ["temperature"];
    /// A reading at the temperature that a range is for.
    READING_WARMED: "reading-warmed", Crew, "Read again when the cable is as warm as the place, or as the range asks: {of}.", Job, ["reading"], ["temperature", "values"];
    /// A reading that is off by less.
    READING_CLOSER: "reading-closer", Crew, "Read it again with an instrument that is off by less: the margin is smaller than the error. {of}.", Job, ["reading"], ["instrument", "error", "values"];
    /// How far off lengths around a leg may be.
    ROOM_ERROR: "room-error", Crew, "How far off may the lengths be that were measured around leg {of}?", Job, ["leg"], ["room_error"];
    /// Straight cable.
    STRAIGHT: "straight", Crew, "How far from its conductor end is leg {of} straight?", Job, ["leg"], ["straight", "room_error"];
    /// Room to park.
    PARK_ROOM: "park-room", Crew, "How much free length is there from the jacket edge for what is slid on before the connector, on leg {of}?", Job, ["leg"], ["park_room", "room_error"];
    /// Bend as racked.
    BEND: "bend", Crew, "To what radius is leg {of} bent as it is racked?", Job, ["leg"], ["bend_radius", "room_error"];
    /// Slack.
    SLACK: "slack", Crew, "How much cable of leg {of} can still be cut away?", Job, ["leg"], ["slack", "room_error"];
    /// Moisture.
    MOISTURE: "moisture", Crew, "Test the strands and under the shield for moisture after the square cut, on the day of the work, as the owner's rules say: {of}.", Job, ["moisture"], ["leg", "phase", "in", "found", "how", "by", "date"];
    /// How the jacket is.
    JACKET: "jacket", Crew, "How is the jacket all around where the seal will lie, before it is cut: scored, wrinkled, embossed, cracked, or smooth? {of}.", Job, ["surface"], ["leg", "phase", "jacket", "by"];
    /// Growth of a sleeve.
    TRIAL_PRESS: "trial-press", Crew, "By how much does the sleeve grow? Press one as a trial, with this crew's tool and die, on a piece of the same conductor: {of}.", Job, ["trial_press"], ["connector", "end", "size", "metal", "tool", "die", "presses", "length_before", "length_after", "error", "by", "date"];
    /// How a shield was read.
    CONTINUITY: "continuity", Crew, "Read along the shield again, with four wires, its ends open where the work allows that, and write down length and temperature: {of}.", Job, ["continuity"], ["ends", "wires", "leads", "length", "temperature", "resistance", "error"];
    /// Resistance across a connection of a shield.
    CONTACT: "contact", Crew, "Read the resistance across the connection of the shield with four wires, once it is made: {of}.", Job, ["contact"], ["leg", "phase", "at", "resistance", "error", "by", "date"];
    /// Wires or straps of a shield.
    COUNT: "count", Crew, "How many wires or straps are there in the metallic shield? {of}.", Job, ["count"], ["leg", "phase", "shield_elements"];
    /// What cleans a conductor.
    BRUSH: "brush", Crew, "With what brush or abrasive is the conductor cleaned? Leg {of}.", Job, ["leg"], ["consumables"];


    // What the store knows.
    /// Lot of a part.
    LOT: "lot", Store, "Which lot is on the truck, when was it made, expanded or due, and how cold and how warm did it lie? {of}.", Job, ["lot"], ["leg", "phase", "part", "lot", "made", "expanded", "expires", "store_least", "store_greatest"];
    /// From when a lot's months run.
    LOT_DAY: "lot-day", Store, "On what day was this lot made, and on what day expanded? {of}.", Job, ["lot"], ["made", "expanded"];
    /// What a label prints.
    LABEL_DATE: "label-date", Store, "What expiry date does the label print, if any? {of}.", Job, ["lot"], ["expires", "no_expiry"];
    /// How warm a lot lay.
    LOT_STORE: "lot-store", Store, "How cold and how warm did this lot lie, in store and on the truck? {of}.", Job, ["lot"], ["store_least", "store_greatest"];

    // What the owner decides or knows.
    /// A value from memory.
    CONFIRMATION: "confirmation", Engineer, "Look the value up in the edition in force, and confirm it by its key, or do not: {of}.", Job, ["confirmation"], ["key", "edition", "by", "date"];
    /// Which cable it is.
    CABLE: "cable", Engineer, "Which cable is this? Read the print on its jacket, and give the cable as its own papers do, with the diameters that they state: {of}.", Job, ["leg.cable"], ["size", "metal", "stranding", "class", "level", "papers"];
    /// A window.
    WINDOW: "window", Engineer, "How far off may this be, where the instructions print no tolerance? {of}.", Job, ["owner_window"], ["plane", "leg", "minus", "plus", "by", "date"];
    /// How far a jacket shrinks back.
    JACKET_SHRINKS: "jacket-shrinks", Engineer, "How far does the jacket shrink back after it is cut, at the most? It is the distance from jacket-edge to jacket-edge-shrunk-back; the cable's maker may know it: leg {of}.", Job, ["owner_link"], ["leg", "from", "to", "distance", "minus", "plus", "by", "date"];
    /// A limit.
    LIMIT: "limit", Engineer, "What limit does the owner set for the check {of}, where the instructions set none?", Job, ["owner_limit"], ["check", "by", "date"];
    /// A word of one's own.
    WORD: "word", Engineer, "This program cannot judge it. Whether it may stay so, and why, is for a named engineer to say: {of}.", Job, ["closing"], ["check", "leg", "phase", "fact", "why", "by", "date", "until"];
    /// Hottest conductor.
    CONDUCTOR_GREATEST: "conductor-greatest", Engineer, "What is the highest temperature of the conductor in service, emergencies included?", Job, ["duty"], ["conductor_greatest"];
    /// Load.
    LOAD: "load", Engineer, "What load must each leg carry all the time?", Job, ["duty"], ["load"];
    /// Emergency.
    EMERGENCY: "emergency", Engineer, "What emergency load must the joint carry, and for how long?", Job, ["duty"], ["emergency", "emergency_time"];
    /// Short circuit of the conductor.
    FAULT: "fault", Engineer, "What short circuit may flow in the conductor, for how long, and how often is it switched on again?", Job, ["duty"], ["fault", "fault_time", "reclosing"];
    /// Short circuit of a shield.
    SHIELD_FAULT: "shield-fault", Engineer, "What short circuit may flow in a shield, for how long (no shorter than an earth fault may last), and how often is it switched on again?", Job, ["duty"], ["shield_fault", "shield_fault_time", "reclosing"];
    /// Clearing time.
    CLEARING_TIME: "clearing-time", Engineer, "What is the longest time in which an earth fault is cleared?", Job, ["system"], ["clearing_time"];
    /// Coldest of the place.
    AMBIENT_LEAST: "ambient-least", Engineer, "What is the coldest that the place becomes?", Job, ["place"], ["ambient_least"];
    /// Warmest of the place.
    AMBIENT_GREATEST: "ambient-greatest", Engineer, "What is the warmest that the place becomes?", Job, ["place"], ["ambient_greatest"];
    /// Surroundings.
    SURROUNDING: "surrounding", Engineer, "What surrounds the legs from the conductor end outward, how warm is it at the most, what heat does it take away, and who says so? {of}.", Job, ["surrounding"], ["leg", "what", "until", "temperature", "film_w_per_m2k", "outside_k_m_per_w", "from", "by", "date"];
    /// Far end of a shield.
    FAR_END: "far-end", Engineer, "Is the shield earthed at the far end of its run too, and how is it bonded at the joint? Leg {of}.", Job, ["leg"], ["far_end_bonded", "bonding"];
    /// How a run lies.
    RUN: "run", Engineer, "How do the three cables of the run lie, how far apart, and how far does the shield run? Leg {of}.", Job, ["leg"], ["formation", "spacing", "run_length"];
    /// What surrounds a run of cable without a joint.
    RUN_SURROUNDING: "run-surrounding", Engineer, "What surrounds the cable all along its route, stretch by stretch: how long is each and how warm at the most, and what is it, or what heat does it take away; who says so, and from what source? {of}.", Job, ["surrounding"], ["what", "length", "temperature", "soil", "duct", "air", "film_w_per_m2k", "outside_k_m_per_w", "from", "by", "date"];
    /// How long a run of cable is.
    ROUTE: "route", Engineer, "How long is the route of the cable, and how long is each stretch of what surrounds it? The stretches add up to the route: {of}.", Job, ["leg", "surrounding"], ["route_length", "length"];
    /// Spare cuts.
    SPARE_CUTS: "spare-cuts", Engineer, "How many more cuts must leg {of} have slack for?", Job, ["leg"], ["spare_cuts"];
    /// An open part.
    PART: "part", Engineer, "Which part is it to be? {of}.", Job, ["leg"], ["body", "adapter", "connector", "shield_part", "seal", "consumables"];
    /// An adapter that reaches the edge of the screen.
    ADAPTER_REACH: "adapter-reach", Engineer, "Which adapter begins under the electrode and ends beyond the edge of the insulation screen, wherever the windows let it lie? What lies in the body's bore before that edge is neither drawn nor pressed without one: leg {of}.", Job, ["leg"], ["adapter"];
    /// Who parks.
    PARKS: "parks", Engineer, "On which leg is the body parked?", Job, ["leg"], ["parks"];
    /// The bus and its blank ports.
    BUS: "bus", Engineer, "On which bus do the legs sit, and which plug closes each port without a leg? {of}.", Job, ["file"], ["bus", "blank"];
    /// Lead.
    LEAD: "lead", Engineer, "Of what metal and area is the lead that bonds the shield, and how hot may it become? Leg {of}.", Job, ["leg.lead"], ["metal", "area", "fault_greatest"];

    // What the cable's maker states.
    /// Bend permitted.
    BEND_LEAST: "bend-least", CableMaker, "To what radius may the cable be bent? Leg {of}.", Job, ["leg.cable"], ["bend_radius_least"];
    /// Expansion.
    EXPANSION: "expansion", CableMaker, "By how much does the insulation expand per kelvin, at the least and at the most? Leg {of}.", Job, ["leg.cable"], ["expansion_per_k_least", "expansion_per_k_greatest"];
    /// Permittivity.
    PERMITTIVITY: "permittivity", CableMaker, "What is the relative permittivity of the insulation? Leg {of}.", Job, ["leg.cable"], ["permittivity"];
    /// Shield's metal and limit.
    SHIELD_PAPERS: "shield-papers", CableMaker, "Of what metal is the shield, and how hot may it become in a short circuit? Leg {of}.", Job, ["leg.cable.shield"], ["metal", "fault_greatest"];
    /// Shield's dimensions.
    SHIELD_MADE: "shield-made", CableMaker, "How is the shield made: count, width, thickness, lap? Leg {of}.", Job, ["leg.cable.shield"], ["count", "width", "thickness", "diameter", "overlap_percent", "overlap"];
    /// Diameters.
    CABLE_PAPERS: "cable-papers", CableMaker, "Between what diameters over its layers does the cable lie? The table has no row for it: leg {of}.", Job, ["leg.cable"], ["papers"];
    /// Heat of the cable's layers.
    CABLE_HEAT: "cable-heat", CableMaker, "What are the thermal resistivity and the heat capacity of insulation and jacket? Leg {of}.", Job, ["leg.cable"], ["insulation_k_m_per_w", "insulation_mj_per_m3k", "jacket_k_m_per_w", "jacket_mj_per_m3k"];

    // What the part's maker states.
    /// What lies in a body's bore beyond an adapter.
    BARE_BORE: "bare-bore", PartMaker, "May the body's bore stand over bare insulation from the end of {of} to the edge of the insulation screen, or must it reach that edge?", Catalogue, ["adapter"], ["leaves_bare"];
    /// Ways of bonding that a body allows.
    BONDINGS: "bondings", PartMaker, "Which ways of bonding the shield across it does {of} allow?", Catalogue, ["body"], ["bondings"];
    /// Inside of a body.
    INSIDE: "inside", PartMaker, "What is inside {of}: where along its axis and at what diameters do electrode, deflector and outside lie, how are their corners rounded, of what permittivity is the insulation, and how does it lie over the screen edge? Or cut one of this lot open and measure.", Catalogue, ["body.inner"], ["origin", "by", "date", "uncertainty", "on_diameter", "region", "screen_step"];
    /// Inside of a tapered plug.
    TAPER: "taper", PartMaker, "What is inside the tapered plug of {of}: cone, film, electrode, deflector, outside, and the permittivity of its insulation?", Catalogue, ["body.taper"], ["region"];
    /// Permittivity of an adapter.
    ADAPTER_PERMITTIVITY: "adapter-permittivity", PartMaker, "What is the relative permittivity of {of}?", Catalogue, ["adapter"], ["relative_permittivity"];
    /// Rubber of a part.
    RUBBER: "rubber", PartMaker, "What are the bore and the outside of {of} when nothing is in it, which law and moduli describe its rubber, to what diameter is it held open in store, and what share of that stretch stays? Or measure a new one of this lot.", Catalogue, ["body.rubber", "adapter.rubber", "seal.rubber"], ["relaxed_bore", "relaxed_outside", "hold_diameter", "set", "at_temperature"];
    /// Rubber with temperature.
    RUBBER_HEAT: "rubber-heat", PartMaker, "How do lengths and stiffness of the rubber of {of} change per kelvin, from the coldest place to the hottest conductor?", Catalogue, ["body.rubber", "adapter.rubber", "seal.rubber"], ["expansion_per_k_least", "expansion_per_k_greatest", "modulus_per_k_least", "modulus_per_k_greatest"];
    /// Shelf life.
    SHELF: "shelf", PartMaker, "For how long, counted from which day, and between what temperatures may {of} lie in store? A date on the label does for its age.", Catalogue, ["body.shelf", "adapter.shelf", "seal.shelf"], ["from", "months", "store_least", "store_greatest"];
    /// A range.
    RANGE: "range", PartMaker, "Between what diameters, over which layer and at what temperature does {of} fit?", Catalogue, ["body.fits", "adapter.fits", "seal.fits", "shield_part.fits"], ["at", "over", "least", "greatest"];
    /// Place of a plane.
    LINK: "link", PartMaker, "How far is it from the connector or from a cut to this? No row of the chosen parts says: {of}.", Catalogue, ["body.link", "connector.link", "adapter.link", "shield_part.link", "seal.link"], ["from", "to", "distance", "minus", "plus"];
    /// Length while parked.
    PARKED_LENGTH: "parked-length", PartMaker, "How long is {of} while it is parked?", Catalogue, ["body", "seal"], ["parked_length"];
    /// Straight cable beyond the body.
    BEND_KEEP_OFF: "bend-keep-off", PartMaker, "How much straight cable does {of} want beyond its end?", Catalogue, ["body"], ["bend_keep_off"];
    /// Number of mouths.
    MOUTHS: "mouths", PartMaker, "How many legs does {of} take?", Catalogue, ["body"], ["legs"];
    /// Longest connector.
    CONNECTOR_LENGTH: "connector-length", PartMaker, "How long a connector does {of} admit, and how far must its electrode lap onto the insulation?", Catalogue, ["body"], ["connector_length_greatest", "electrode_overlap_least"];
    /// Connector's diameter.
    CONNECTOR_DIAMETER: "connector-diameter", PartMaker, "Between what diameters may a connector inside {of} be?", Catalogue, ["body"], ["connector_diameter_least", "connector_diameter_greatest"];
    /// Short circuit of a part.
    WITHSTANDS: "withstands", PartMaker, "What current may flow through {of} in a short circuit, and for how long?", Catalogue, ["connector", "shield_part"], ["fault", "fault_time"];
    /// Conductor in a short circuit.
    FAULT_GREATEST: "fault-greatest", PartMaker, "To what temperature may the conductor inside {of} rise in a short circuit?", Catalogue, ["body"], ["conductor_fault_greatest"];
    /// Conductor all the time and in an emergency.
    SERVICE_GREATEST: "service-greatest", PartMaker, "How hot may the conductor inside {of} be all the time, and in an emergency?", Catalogue, ["body"], ["conductor_greatest", "conductor_emergency_greatest"];
    /// Contact of a shield part.
    CONTACT_GREATEST: "contact-greatest", PartMaker, "What resistance may the connection of {of} have?", Catalogue, ["shield_part"], ["contact_greatest"];
    /// What passes a seal.
    PASSES_SEAL: "passes-seal", PartMaker, "Does anything of {of} pass out under the seal, and is that stretch blocked against water?", Catalogue, ["shield_part"], ["passes_seal", "blocked"];
    /// What a seal takes.
    TAKES_LEAD: "takes-lead", PartMaker, "May a braid or lead come out under {of}?", Catalogue, ["seal"], ["takes_lead"];
    /// Jackets of a seal.
    JACKETS: "jackets", PartMaker, "On what condition of the jacket may {of} close?", Catalogue, ["seal"], ["jacket_surfaces"];
    /// Overlap of a seal.
    OVERLAP: "overlap", PartMaker, "How far must {of} lap onto the jacket?", Catalogue, ["seal"], ["overlap_least"];
    /// Ends of an adapter.
    ADAPTER_ENDS: "adapter-ends", PartMaker, "From which edge is {of} set off, how far from it, and how long is it on the cable?", Catalogue, ["adapter.link"], ["from", "to", "distance", "minus", "plus"];
    /// Contact of a shield part on the shield.
    SHIELD_CONTACT: "shield-contact", PartMaker, "How far from the edge of the metallic shield does the contact of {of} begin, and how long is it?", Catalogue, ["shield_part.link"], ["from", "to", "distance", "minus", "plus"];
    /// Where a seal begins.
    SEAL_START: "seal-start", PartMaker, "How long is {of} once it has closed, from its outer end to its inner end over the body?", Catalogue, ["seal.link"], ["from", "to", "distance", "minus", "plus"];
    /// Overlap of a seal over a body.
    BODY_OVERLAP: "body-overlap", PartMaker, "How far must {of} lap over the end of the body?", Catalogue, ["seal"], ["body_overlap_least"];
    /// Length of a seal over the whole joint.
    SEAL_LENGTH: "seal-length", PartMaker, "How long is {of} at the least once it has closed over the whole joint, and how far must it lap onto each jacket?", Catalogue, ["seal"], ["length", "overlap_least"];
    /// Metals of a consumable.
    CONSUMABLE_METALS: "consumable-metals", PartMaker, "For which metals is {of}?", Catalogue, ["consumable"], ["metals"];
    /// Heat of a body.
    BODY_HEAT: "body-heat", PartMaker, "What are the thermal resistivity and the heat capacity of everything inside {of}, and what fills it from its bore to its outside?", Catalogue, ["body.inner.region"], ["resistivity_k_m_per_w", "capacity_mj_per_m3k"];
    /// Heat of an adapter.
    ADAPTER_HEAT: "adapter-heat", PartMaker, "What are the thermal resistivity and the heat capacity of {of}?", Catalogue, ["adapter"], ["resistivity_k_m_per_w", "capacity_mj_per_m3k"];
    /// Heat of a seal.
    SEAL_HEAT: "seal-heat", PartMaker, "How thick does {of} lie on the joint, does it cover the body, and what are its thermal resistivity and heat capacity?", Catalogue, ["seal"], ["cover"];
    /// Heat of a connector.
    CONNECTOR_HEAT: "connector-heat", PartMaker, "Of what metal is {of}, and what is its greatest resistance as made, over that of the same length of conductor?", Catalogue, ["connector"], ["made_of", "resistance_ratio"];
    /// A row that only its writer has held beside its paper.
    ROW_CHECKED: "row-checked", Engineer, "Who, other than its writer, has held the row beside its paper, and on what day? The owner's engineer or the crew lead may name somebody: {of}.", Catalogue, ["body", "connector", "adapter", "shield_part", "seal", "consumable", "bus", "plug"], ["checked_by", "checked"];
    /// A paper that may have been replaced.
    PAPER_CURRENT: "paper-current", Engineer, "Is the paper that the row is from still the one in force on the day of the work, and who saw that? The owner's engineer or the crew lead may look: {of}.", Catalogue, ["body.instructions", "connector.instructions", "adapter.instructions", "shield_part.instructions", "seal.instructions", "consumable.instructions", "bus.instructions", "plug.instructions"], ["seen_current"];
    /// Heat of a bus.
    BUS_HEAT: "bus-heat", PartMaker, "What is the greatest resistance between two ports of {of}, the contacts of the bodies included?", Catalogue, ["bus"], ["resistance_microohm"];
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
            let is_sentence = fact.find.ends_with(['.', '?']);
            assert!(is_sentence, "{}", fact.key);
        }
    }

    #[test]
    fn only_what_a_part_is_asked_for_goes_into_a_catalogue() {
        // Whoever holds a row beside its paper needs no maker for that.
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
