//! Sentences about the temperatures that the load causes.

use super::ask::all;
use crate::{Tongue, quoted};
use jointwright_joint::said::{
    HeatAsk, HeatCannot, HeatLacks, HeatLayer, HeatPlace, HeatSaid, LoadCannot, Stated, Wording,
};

pub(super) fn say(tongue: Tongue, said: &HeatSaid) -> String {
    match said {
        HeatSaid::RestOnMemory { keys } => format!(
            "these temperatures rest on values from memory that the owner has not confirmed: `{}`",
            keys.join("`, `")
        ),
        HeatSaid::AskToConfirm { keys } => format!(
            "Ask: Does the owner's engineer confirm `{}` after reading the standard (`confirmation`: edition, by, date)?",
            keys.join("`, `")
        ),
        HeatSaid::PapersStandFor { unread } => format!(
            "the diameters of the papers stand for what nobody read: {}",
            all(tongue, unread)
        ),
        HeatSaid::PapersForUnread { unread } => format!(
            "the diameters of the papers for what nobody read, {}: nothing passes on these temperatures",
            all(tongue, unread)
        ),
        HeatSaid::AskToRead { unread } => format!("Ask: Read {}.", all(tongue, unread)),
        HeatSaid::NotKnown { why } => format!("not known: {}", tongue.say(why)),
        HeatSaid::Lacks(said) => lacks(tongue, said),
        HeatSaid::Ask(said) => ask(tongue, said),
        HeatSaid::Cannot(said) => cannot(tongue, said),
        HeatSaid::Bus {
            bus,
            micro_ohm,
            at_degc,
            cold_degc,
            percent_per_k,
        } => {
            let read = match at_degc {
                Some(degc) => format!(" at {degc} degC by its row"),
                None => format!(
                    "; its row does not say at which temperature, so it is taken as read at {cold_degc} degC, and more where it is warm"
                ),
            };
            format!(
                "bus {bus}: {micro_ohm:.1} microohm between two ports{read}; it grows by {percent_per_k:.2} % of that at 20 degC for each kelvin"
            )
        }
    }
}

fn layer(layer: HeatLayer) -> &'static str {
    match layer {
        HeatLayer::Insulation => "insulation",
        HeatLayer::Jacket => "jacket",
    }
}

fn place(place: HeatPlace) -> String {
    match place {
        HeatPlace::Plane(plane) => plane.name().replace('-', " "),
        HeatPlace::BodyDatum => "datum of the body".to_owned(),
        HeatPlace::ConnectorMiddle => "middle of the connector".to_owned(),
    }
}

fn of_end(end: Option<&str>) -> String {
    end.map_or(String::new(), |end| format!(", end {end}"))
}

fn lacks(tongue: Tongue, said: &HeatLacks) -> String {
    match said {
        HeatLacks::Places { leg, places } => {
            let places: Vec<String> = places.iter().map(|of| place(*of)).collect();
            format!("leg {leg}: no place is known for: {}", places.join(", "))
        }
        HeatLacks::LeftOpen { leg, part } => {
            format!("leg {leg}: the {} is left open", tongue.part(*part))
        }
        HeatLacks::CableStuff { leg, layer: of } => {
            format!("leg {leg}: how the {} conducts and stores heat", layer(*of))
        }
        HeatLacks::ShieldMetal { leg } => format!("leg {leg}: the metal of its shield"),
        HeatLacks::Inside { part } => format!("what is inside {part}"),
        HeatLacks::RegionStuff { part, regions } => format!(
            "how {} of {part} conduct and store heat",
            regions.join(", ")
        ),
        HeatLacks::Filling { part, along_mm } => format!(
            "what fills {part} from its bore to its outside {along_mm:.0} mm from its datum"
        ),
        HeatLacks::AdapterStuff { part } => format!("how {part} conducts and stores heat"),
        HeatLacks::Cover { part } => {
            format!("how thick {part} lies on the joint, and how it conducts and stores heat")
        }
        HeatLacks::WhichEnd { leg, part } => format!("leg {leg}: which end of {part} takes it"),
        HeatLacks::MetalOf { part } => format!("the metal of {part}"),
        HeatLacks::ResistanceOf { part, end } => {
            format!("the resistance of {part}{}", of_end(end.as_deref()))
        }
        HeatLacks::Bus => "the bus".to_owned(),
        HeatLacks::PlaceWarmest => "how warm the place becomes".to_owned(),
        HeatLacks::Surroundings { leg } => format!("what surrounds leg {leg}"),
        HeatLacks::RunStuff { cable, layer: of } => {
            format!("how the {} of cable {cable} conducts heat", layer(*of))
        }
        HeatLacks::RunSurroundings { cable } => format!("what surrounds the cable {cable}"),
        HeatLacks::NoRun => "no run of cable".to_owned(),
        HeatLacks::NoLoadForShield => {
            "a current of the shield is stated, and no load to go with it".to_owned()
        }
    }
}

const ASK_MAKER: &str = "Ask its maker.";
const STUFF: &str = "What are the thermal resistivity and the heat capacity of";

fn ask(tongue: Tongue, said: &HeatAsk) -> String {
    match said {
        HeatAsk::CableStuff { leg, layer: of } => {
            format!(
                "{STUFF} the {} of leg {leg}'s cable? {ASK_MAKER}",
                layer(*of)
            )
        }
        HeatAsk::ShieldMetal { leg } => {
            format!("Of what metal is the shield of leg {leg}'s cable?")
        }
        HeatAsk::ShieldLoad { leg } => {
            format!("What load do conductor and shield of leg {leg} carry at the same time?")
        }
        HeatAsk::Inside { part } => format!(
            "Where along the axis and at what diameters lie the materials inside {part}, and on a cable of what diameter? {ASK_MAKER}"
        ),
        HeatAsk::RegionStuff { part, regions } => {
            format!("{STUFF} {} of {part}? {ASK_MAKER}", regions.join(", "))
        }
        HeatAsk::Filling { part, along_mm } => format!(
            "Which materials fill {part} between {along_mm:.0} mm and its end, and to which diameters? {ASK_MAKER}"
        ),
        HeatAsk::AdapterStuff { part } => format!("{STUFF} {part}? {ASK_MAKER}"),
        HeatAsk::Cover { part } => format!(
            "How thick does {part} lie on the joint, does it cover the body, and what are its thermal resistivity and heat capacity? {ASK_MAKER}"
        ),
        HeatAsk::WhichEnd { leg, part, ends } => {
            format!(
                "Which end of {part} takes leg {leg}, {}?",
                tongue.or(&quoted(ends))
            )
        }
        HeatAsk::MadeOf { part } => format!("What is {part} made of?"),
        HeatAsk::ConnectorResistance { part, end } => format!(
            "What is the greatest resistance of {part}{} as made, over that of the same length of conductor? {ASK_MAKER}",
            of_end(end.as_deref())
        ),
        HeatAsk::Bus => "On which bus do the legs sit?".to_owned(),
        HeatAsk::BusResistance { bus } => format!(
            "What is the greatest resistance between two ports of {bus}, the contacts of the bodies included? {ASK_MAKER}"
        ),
        HeatAsk::PlaceWarmest => {
            "What is the warmest that the place becomes (place.ambient_greatest)?".to_owned()
        }
        HeatAsk::Surroundings { leg } => format!(
            "What surrounds leg {leg} from the conductor end outward, how warm is it at the most, and what heat leaves a square metre of surface for each kelvin? Who says so, and from what source?"
        ),
        HeatAsk::LoadOfEachLeg => "What load must each leg carry all the time?".to_owned(),
        HeatAsk::RunStuff { cable, layer: of } => {
            format!("{STUFF} the {} of cable {cable}? {ASK_MAKER}", layer(*of))
        }
        HeatAsk::RunSurroundings { cable } => format!(
            "What surrounds the cable {cable}, stretch by stretch, and how warm is it at the most? Who says so, and from what source?"
        ),
        HeatAsk::RunLoad => "What load must the cable carry all the time?".to_owned(),
    }
}

fn stated(of: Stated) -> &'static str {
    match of {
        Stated::Load => "load",
        Stated::Emergency => "emergency",
    }
}

fn cannot(tongue: Tongue, said: &HeatCannot) -> String {
    match said {
        HeatCannot::NotComputed { why } => {
            format!("its temperatures cannot be computed: {}", tongue.say(why))
        }
        HeatCannot::SitsTooFar {
            part,
            stated_mm,
            leg,
            over_mm,
        } => format!(
            "the inside of {part} is stated for {stated_mm:.1} mm over the insulation, on leg {leg} it sits on {over_mm:.1} mm: too far to conclude from one to the other"
        ),
        HeatCannot::ConnectorInConductor {
            leg,
            connector_mm,
            conductor_mm,
        } => format!(
            "the connector of leg {leg} is {connector_mm:.1} mm outside, its conductor {conductor_mm:.1} mm"
        ),
        HeatCannot::ShieldCarriesMore {
            leg,
            shield_a,
            load_a,
        } => format!(
            "leg {leg}: its shield would carry {shield_a} A beside {load_a} A in its conductor"
        ),
        HeatCannot::LayersNotOutward => {
            "the diameters over its layers do not grow outward".to_owned()
        }
        HeatCannot::RunNotOutward => {
            "the diameters over the cable's layers do not grow outward".to_owned()
        }
        HeatCannot::ColderThanPlace {
            what,
            degc,
            place_degc,
        } => format!(
            "{what} at the joint is {degc} degC, colder than the place becomes, {place_degc} degC"
        ),
        HeatCannot::ResistanceAtJoint { what, joint_end_mm } => format!(
            "{what} reaches the joint, which ends {joint_end_mm:.0} mm from its middle; a thermal resistance from the cable's surface says nothing of a joint, a film does: have the engineer give `film_w_per_m2k` for the joint as it is buried, its body's greatest diameter included"
        ),
        HeatCannot::NeitherFilmNorResistance => "neither a film nor a resistance".to_owned(),
        HeatCannot::Cable { cable, why } => format!("cable {cable}: {}", tongue.say(why)),
        HeatCannot::Load(said) => load(said),
    }
}

/// Currents that cannot be.
fn load(said: &LoadCannot) -> String {
    match said {
        LoadCannot::LoadIsNought => "the job's load is 0: it warms nothing".to_owned(),
        LoadCannot::EmergencyNotStated => {
            "the job does not state duty.emergency and duty.emergency_time".to_owned()
        }
        LoadCannot::EmergencyTakesNoTime => "duty.emergency_time is 0".to_owned(),
        LoadCannot::EmergencyBelowLoad {
            leg,
            emergency_a,
            load_a,
        } => {
            format!("leg {leg}: its emergency load, {emergency_a} A, is below its load, {load_a} A")
        }
        LoadCannot::LegCarriesMore {
            of,
            largest_a,
            whole_a,
        } => format!(
            "a leg carries {largest_a} A, more than duty.{}, {whole_a} A",
            stated(*of)
        ),
        LoadCannot::NoLegCarriesWhole {
            of,
            largest_a,
            whole_a,
        } => format!(
            "no leg carries duty.{}, {whole_a} A: the most is {largest_a} A",
            stated(*of)
        ),
        LoadCannot::OneAgainstAll {
            of,
            n_legs,
            largest_a,
            others_a,
        } => format!(
            "the {} of one of {n_legs} legs, {largest_a} A, is more than that of all others, {others_a} A: state what each leg carries",
            stated(*of)
        ),
    }
}
