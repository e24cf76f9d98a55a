//! Questions about missing facts.

use crate::Tongue;
use jointwright_joint::end::EndId;
use jointwright_joint::said::{AskSaid, FactKey, Of, Who};

pub(super) fn say(tongue: Tongue, said: &AskSaid) -> String {
    match said {
        AskSaid::Question { fact, of } => question(*fact, &all(tongue, of)),
        AskSaid::Of(of) => self::of(tongue, of),
        AskSaid::Who(who) => self::who(*who).to_owned(),
        AskSaid::MakerOf(of) => format!("the maker of {}, or its paper", self::of(tongue, of)),
    }
}

/// Things that facts are about, one beside another.
pub(super) fn all(tongue: Tongue, all: &[Of]) -> String {
    let all: Vec<String> = all.iter().map(|one| of(tongue, one)).collect();
    all.join(", ")
}

fn end(end: &EndId) -> String {
    format!("{}{}", end.leg, end.phase)
}

fn of(tongue: Tongue, of: &Of) -> String {
    match of {
        Of::Job => String::new(),
        Of::Name(name) => name.clone(),
        Of::Ends(ends) => ends.iter().map(end).collect::<Vec<_>>().join(", "),
        Of::Subject(subject) => tongue.subject(subject),
        Of::Diameter { end: of, over } => {
            format!("{} over the {}", end(of), tongue.layer(*over))
        }
        Of::Plane { plane, of } => {
            format!("{} of {}", tongue.plane(*plane), self::of(tongue, of))
        }
        Of::Part { kind, leg } => match leg {
            Some(leg) => format!("{} of leg {leg}", tongue.part(*kind)),
            None => format!("{} of the joint", tongue.part(*kind)),
        },
        Of::Lot { end: of, kind, row } => format!("{} {} {row}", end(of), tongue.part(*kind)),
        Of::Sleeve { row, conductor } => {
            format!("{row} on {}", tongue.conductor(*conductor))
        }
        Of::Check { check, of } => format!("{check}, {}", self::of(tongue, of)),
        Of::Bus => "the bus".to_owned(),
    }
}

fn who(who: Who) -> &'static str {
    match who {
        Who::Crew => "the crew",
        Who::Store => "the store",
        Who::Engineer => "the owner's engineer",
        Who::CableMaker => "the cable's maker, or its papers",
        Who::PartMaker => "the part's maker, or its paper",
    }
}

fn question(fact: FactKey, of: &str) -> String {
    match fact {
        FactKey::Reading => format!("Read the diameter over the layer itself, four times around the cable with a calliper, and write down the temperature of the cable: {of}."),
        FactKey::ReadingTemperature => format!("At what temperature was the cable when it was read? {of}."),
        FactKey::ReadingWarmed => format!("Read again when the cable is as warm as the place, or as the range asks: {of}."),
        FactKey::ReadingCloser => format!("Read it again with an instrument that is off by less: the margin is smaller than the error. {of}."),
        FactKey::RoomError => format!("How far off may the lengths be that were measured around leg {of}?"),
        FactKey::Straight => format!("How far from its conductor end is leg {of} straight?"),
        FactKey::ParkRoom => format!("How much free length is there from the jacket edge for what is slid on before the connector, on leg {of}?"),
        FactKey::Bend => format!("To what radius is leg {of} bent as it is racked?"),
        FactKey::Slack => format!("How much cable of leg {of} can still be cut away?"),
        FactKey::Moisture => format!("Test the strands and under the shield for moisture after the square cut, on the day of the work, as the owner's rules say: {of}."),
        FactKey::Jacket => format!("How is the jacket all around where the seal will lie, before it is cut: scored, wrinkled, embossed, cracked, or smooth? {of}."),
        FactKey::TrialPress => format!("By how much does the sleeve grow? Press one as a trial, with this crew's tool and die, on a piece of the same conductor: {of}."),
        FactKey::Continuity => format!("Read along the shield again, with four wires, its ends open where the work allows that, and write down length and temperature: {of}."),
        FactKey::Contact => format!("Read the resistance across the connection of the shield with four wires, once it is made: {of}."),
        FactKey::Count => format!("How many wires or straps are there in the metallic shield? {of}."),
        FactKey::Brush => format!("With what brush or abrasive is the conductor cleaned? Leg {of}."),
        FactKey::Lot => format!("Which lot is on the truck, when was it made, expanded or due, and how cold and how warm did it lie? {of}."),
        FactKey::LotDay => format!("On what day was this lot made, and on what day expanded? {of}."),
        FactKey::LabelDate => format!("What expiry date does the label print, if any? {of}."),
        FactKey::LotStore => format!("How cold and how warm did this lot lie, in store and on the truck? {of}."),
        FactKey::Confirmation => format!("Look the value up in the edition in force, and confirm it by its key, or do not: {of}."),
        FactKey::Cable => format!("Which cable is this? Read the print on its jacket, and give the cable as its own papers do, with the diameters that they state: {of}."),
        FactKey::Window => format!("How far off may this be, where the instructions print no tolerance? {of}."),
        FactKey::JacketShrinks => format!("How far does the jacket shrink back after it is cut, at the most? It is the distance from jacket-edge to jacket-edge-shrunk-back; the cable's maker may know it: leg {of}."),
        FactKey::Limit => format!("What limit does the owner set for the check {of}, where the instructions set none?"),
        FactKey::Word => format!("This program cannot judge it. Whether it may stay so, and why, is for a named engineer to say: {of}."),
        FactKey::ConductorGreatest => "What is the highest temperature of the conductor in service, emergencies included?".to_owned(),
        FactKey::Load => "What load must each leg carry all the time?".to_owned(),
        FactKey::Emergency => "What emergency load must the joint carry, and for how long?".to_owned(),
        FactKey::Fault => "What short circuit may flow in the conductor, for how long, and how often is it switched on again?".to_owned(),
        FactKey::ShieldFault => "What short circuit may flow in a shield, for how long (no shorter than an earth fault may last), and how often is it switched on again?".to_owned(),
        FactKey::ClearingTime => "What is the longest time in which an earth fault is cleared?".to_owned(),
        FactKey::AmbientLeast => "What is the coldest that the place becomes?".to_owned(),
        FactKey::AmbientGreatest => "What is the warmest that the place becomes?".to_owned(),
        FactKey::Surrounding => format!("What surrounds the legs from the conductor end outward, how warm is it at the most, what heat does it take away, and who says so? {of}."),
        FactKey::FarEnd => format!("Is the shield earthed at the far end of its run too, and how is it bonded at the joint? Leg {of}."),
        FactKey::Run => format!("How do the three cables of the run lie, how far apart, and how far does the shield run? Leg {of}."),
        FactKey::RunSurrounding => format!("What surrounds the cable all along its route, stretch by stretch: how long is each and how warm at the most, and what is it, or what heat does it take away; who says so, and from what source? {of}."),
        FactKey::Route => format!("How long is the route of the cable, and how long is each stretch of what surrounds it? The stretches add up to the route: {of}."),
        FactKey::SpareCuts => format!("How many more cuts must leg {of} have slack for?"),
        FactKey::Part => format!("Which part is it to be? {of}."),
        FactKey::AdapterReach => format!("Which adapter begins under the electrode and ends beyond the edge of the insulation screen, wherever the windows let it lie? What lies in the body's bore before that edge is neither drawn nor pressed without one: leg {of}."),
        FactKey::Parks => "On which leg is the body parked?".to_owned(),
        FactKey::Bus => format!("On which bus do the legs sit, and which plug closes each port without a leg? {of}."),
        FactKey::Lead => format!("Of what metal and area is the lead that bonds the shield, and how hot may it become? Leg {of}."),
        FactKey::BendLeast => format!("To what radius may the cable be bent? Leg {of}."),
        FactKey::Expansion => format!("By how much does the insulation expand per kelvin, at the least and at the most? Leg {of}."),
        FactKey::Permittivity => format!("What is the relative permittivity of the insulation? Leg {of}."),
        FactKey::ShieldPapers => format!("Of what metal is the shield, and how hot may it become in a short circuit? Leg {of}."),
        FactKey::ShieldMade => format!("How is the shield made: count, width, thickness, lap? Leg {of}."),
        FactKey::CablePapers => format!("Between what diameters over its layers does the cable lie? The table has no row for it: leg {of}."),
        FactKey::CableHeat => format!("What are the thermal resistivity and the heat capacity of insulation and jacket? Leg {of}."),
        FactKey::BareBore => format!("May the body's bore stand over bare insulation from the end of {of} to the edge of the insulation screen, or must it reach that edge?"),
        FactKey::Bondings => format!("Which ways of bonding the shield across it does {of} allow?"),
        FactKey::Inside => format!("What is inside {of}: where along its axis and at what diameters do electrode, deflector and outside lie, how are their corners rounded, of what permittivity is the insulation, and how does it lie over the screen edge? Or cut one of this lot open and measure."),
        FactKey::Taper => format!("What is inside the tapered plug of {of}: cone, film, electrode, deflector, outside, and the permittivity of its insulation?"),
        FactKey::AdapterPermittivity => format!("What is the relative permittivity of {of}?"),
        FactKey::Rubber => format!("What are the bore and the outside of {of} when nothing is in it, which law and moduli describe its rubber, to what diameter is it held open in store, and what share of that stretch stays? Or measure a new one of this lot."),
        FactKey::RubberHeat => format!("How do lengths and stiffness of the rubber of {of} change per kelvin, from the coldest place to the hottest conductor?"),
        FactKey::Shelf => format!("For how long, counted from which day, and between what temperatures may {of} lie in store? A date on the label does for its age."),
        FactKey::Range => format!("Between what diameters, over which layer and at what temperature does {of} fit?"),
        FactKey::Link => format!("How far is it from the connector or from a cut to this? No row of the chosen parts says: {of}."),
        FactKey::ParkedLength => format!("How long is {of} while it is parked?"),
        FactKey::BendKeepOff => format!("How much straight cable does {of} want beyond its end?"),
        FactKey::Mouths => format!("How many legs does {of} take?"),
        FactKey::ConnectorLength => format!("How long a connector does {of} admit, and how far must its electrode lap onto the insulation?"),
        FactKey::ConnectorDiameter => format!("Between what diameters may a connector inside {of} be?"),
        FactKey::Withstands => format!("What current may flow through {of} in a short circuit, and for how long?"),
        FactKey::FaultGreatest => format!("To what temperature may the conductor inside {of} rise in a short circuit?"),
        FactKey::ServiceGreatest => format!("How hot may the conductor inside {of} be all the time, and in an emergency?"),
        FactKey::ContactGreatest => format!("What resistance may the connection of {of} have?"),
        FactKey::PassesSeal => format!("Does anything of {of} pass out under the seal, and is that stretch blocked against water?"),
        FactKey::TakesLead => format!("May a braid or lead come out under {of}?"),
        FactKey::Jackets => format!("On what condition of the jacket may {of} close?"),
        FactKey::Overlap => format!("How far must {of} lap onto the jacket?"),
        FactKey::AdapterEnds => format!("From which edge is {of} set off, how far from it, and how long is it on the cable?"),
        FactKey::ShieldContact => format!("How far from the edge of the metallic shield does the contact of {of} begin, and how long is it?"),
        FactKey::SealStart => format!("How long is {of} once it has closed, from its outer end to its inner end over the body?"),
        FactKey::BodyOverlap => format!("How far must {of} lap over the end of the body?"),
        FactKey::SealLength => format!("How long is {of} at the least once it has closed over the whole joint, and how far must it lap onto each jacket?"),
        FactKey::ConsumableMetals => format!("For which metals is {of}?"),
        FactKey::BodyHeat => format!("What are the thermal resistivity and the heat capacity of everything inside {of}, and what fills it from its bore to its outside?"),
        FactKey::AdapterHeat => format!("What are the thermal resistivity and the heat capacity of {of}?"),
        FactKey::SealHeat => format!("How thick does {of} lie on the joint, does it cover the body, and what are its thermal resistivity and heat capacity?"),
        FactKey::ConnectorHeat => format!("Of what metal is {of}, and what is its greatest resistance as made, over that of the same length of conductor?"),
        FactKey::RowChecked => format!("Who, other than its writer, has held the row beside its paper, and on what day? The owner's engineer or the crew lead may name somebody: {of}."),
        FactKey::PaperCurrent => format!("Is the paper that the row is from still the one in force on the day of the work, and who saw that? The owner's engineer or the crew lead may look: {of}."),
        FactKey::BusHeat => format!("What is the greatest resistance between two ports of {of}, the contacts of the bodies included?"),
    }
}
