//! Sentences about parts on a leg.

use crate::Tongue;
use jointwright_joint::said::{
    AdapterSaid, BodySaid, BusSaid, CleaningSaid, ConnectorAt, ConnectorSaid, EdgeAt,
    ElectrodeSaid, FitSaid, LayerSaid, LevelSaid, OrderSaid, SharedSaid, Taken, Wording,
};

pub(super) fn say(tongue: Tongue, said: &FitSaid) -> String {
    match said {
        FitSaid::Adapter(said) => adapter(tongue, said),
        FitSaid::Body(said) => body(tongue, said),
        FitSaid::Electrode(said) => electrode(tongue, said),
        FitSaid::Bus(said) => bus(said),
        FitSaid::Level(said) => level(tongue, said),
        FitSaid::Connector(said) => connector(tongue, said),
        FitSaid::Shared(said) => shared(tongue, said),
        FitSaid::Cleaning(said) => cleaning(tongue, said),
        FitSaid::Order(said) => order(tongue, said),
        FitSaid::Layer(said) => layer(tongue, said),
    }
}

fn adapter(tongue: Tongue, said: &AdapterSaid) -> String {
    match said {
        AdapterSaid::NoneNamed => "none".to_owned(),
        AdapterSaid::NotNamed { body, adapter } => {
            format!("the instructions of {body} do not name the adapter {adapter}")
        }
        AdapterSaid::UseNamed => {
            "Use an adapter that the body's instructions name, or a body that fits the leg."
                .to_owned()
        }
        AdapterSaid::NoBoreRange { row } => format!("the row {row} gives no range for its bore"),
        AdapterSaid::OutsideIn { adapter, body } => format!("outside of {adapter} in {body}"),
        AdapterSaid::UseAnother => "Use another adapter or another body.".to_owned(),
        AdapterSaid::LeavesBare { adapter, most } => format!(
            "up to {} of bare insulation between {adapter} and the edge of the insulation screen",
            tongue.read(*most)
        ),
        AdapterSaid::ReachesEdge => {
            "an adapter that reaches the edge, or a paper that lets it end before".to_owned()
        }
        AdapterSaid::BoreByItsPaper => {
            "the body's bore is over its range there only by the adapter's paper, which does not say"
                .to_owned()
        }
        AdapterSaid::UseOneThatReaches => {
            "Stop. Use an adapter that reaches the edge, or call.".to_owned()
        }
    }
}

fn body(tongue: Tongue, said: &BodySaid) -> String {
    match said {
        BodySaid::BendNotMeasured => "nobody has measured the bending radius as racked".to_owned(),
        BodySaid::BendLeastNotSaid => {
            "the job does not say what bending radius the cable's maker permits".to_owned()
        }
        BodySaid::BendingRadius { subject } => {
            format!("{}, bending radius", tongue.subject(subject))
        }
        BodySaid::PapersOfCable => "the cable's papers".to_owned(),
        BodySaid::EaseBend => "Ease the bend before anything is cut, or call.".to_owned(),
        BodySaid::UseRated => {
            "Stop. Use a part that its instructions rate for this system and this joint.".to_owned()
        }
        BodySaid::LegsNotSaid { row } => {
            format!("the row {row} does not say how many legs it takes")
        }
        BodySaid::LegInEveryMouth { greatest } => format!("{greatest} legs, one in every mouth"),
        BodySaid::Legs { n_legs } => format!("{n_legs} legs"),
        BodySaid::TakesOtherLegs {
            body,
            greatest,
            n_legs,
        } => format!("{body} takes {greatest} legs; this joint has {n_legs}"),
        BodySaid::UseWithMouths => {
            "Stop. Use a body with as many mouths as there are legs: none may stay open.".to_owned()
        }
        BodySaid::UseForBonding => {
            "Stop. Use a part whose instructions name this shield and this bonding.".to_owned()
        }
        BodySaid::BondingsNotSaid { row } => {
            format!("the row {row} does not say which ways of bonding the shield it allows")
        }
        BodySaid::AskBondings { body } => {
            format!("Which ways of bonding the shield across it does {body} allow?")
        }
        BodySaid::NoConnectorRange { row } => {
            format!("the row {row} gives no range for the connector's outside diameter")
        }
        BodySaid::ConnectorOutside {
            subject,
            connector,
            body,
        } => format!(
            "{}, outside of {connector} in {body}",
            tongue.subject(subject)
        ),
        BodySaid::UseAdmittedConnector => {
            "Stop. Use a connector that the body's instructions admit.".to_owned()
        }
    }
}

fn electrode(tongue: Tongue, said: &ElectrodeSaid) -> String {
    match said {
        ElectrodeSaid::CoversConnector => "the electrode covers the whole connector".to_owned(),
        ElectrodeSaid::EndsOnInsulation => "the electrode ends on the insulation".to_owned(),
        ElectrodeSaid::PastMouth => "electrode past the connector's mouth".to_owned(),
        ElectrodeSaid::OntoInsulation => "electrode onto the insulation".to_owned(),
        ElectrodeSaid::Reach { subject, what } => format!(
            "{}, {}, at the worst of the windows, the body's own dimensions as printed",
            tongue.subject(subject),
            tongue.say(what)
        ),
        ElectrodeSaid::ConnectorLengthNotSaid { row } => {
            format!("the row {row} does not say how long a connector it admits")
        }
        ElectrodeSaid::LengthAsMade { subject, connector } => {
            format!("{}, length of {connector} as made", tongue.subject(subject))
        }
        ElectrodeSaid::UseShorterConnector => {
            "Stop. Use a shorter connector or another body; do not trim either.".to_owned()
        }
        ElectrodeSaid::EndNotKnown => {
            "no end of the connector is known to take this leg".to_owned()
        }
        ElectrodeSaid::OtherEndOpen { connector } => format!(
            "no leg is known to go into the other end of {connector}, so its growth is not known"
        ),
        ElectrodeSaid::NeitherOverlapNorLongest { body } => {
            format!("{body} states neither an overlap nor the longest connector it admits")
        }
        ElectrodeSaid::LongestCannotBePlanned => {
            "the longest connector that the body admits cannot be planned".to_owned()
        }
    }
}

fn bus(said: &BusSaid) -> String {
    let or_none = |interface: &Option<String>| interface.clone().unwrap_or("none".to_owned());
    match said {
        BusSaid::NotNamed => "no bus is named, so its ports cannot be counted".to_owned(),
        BusSaid::Port { port } => format!("port {port}"),
        BusSaid::Ports { n_ports } => format!("ports 1 to {n_ports}"),
        BusSaid::PortBeyond { port, bus, n_ports } => {
            format!("the job names port {port}, but {bus} has {n_ports} ports")
        }
        BusSaid::UseWithPorts => "Use a bus with enough ports.".to_owned(),
        BusSaid::PortWants { port, interface } => {
            format!("port {port}: a leg or an insulating plug, interface {interface}")
        }
        BusSaid::BodyOpen { port, leg } => format!("port {port}: no body is named for leg {leg}"),
        BusSaid::LegWith { leg, body } => format!("leg {leg} with {body}"),
        BusSaid::WithInterface { body, interface } => {
            format!("{body} with interface {}", or_none(interface))
        }
        BusSaid::MatesWithOther {
            port,
            body,
            interface,
            of_bus,
        } => format!(
            "port {port}: {body} mates with {}, the bus with {of_bus}",
            or_none(interface)
        ),
        BusSaid::BlankWith { plug } => format!("blank with {plug}"),
        BusSaid::PlugDoesNotServe {
            port,
            plug,
            interface,
            greatest_kv,
        } => format!(
            "port {port}: {plug} (interface {interface}, {greatest_kv} kV) does not serve on this bus and system"
        ),
        BusSaid::BlankWithoutPlug => "blank without a plug".to_owned(),
        BusSaid::PlugMissing { port } => {
            format!("port {port} is blank and has no insulating plug")
        }
        BusSaid::Nothing => "nothing".to_owned(),
        BusSaid::PortEmpty { port } => {
            format!("port {port} has neither a leg nor a blank with its insulating plug")
        }
        BusSaid::OrderWhatMates => {
            "Stop. An open port must not be left: order the part that mates before anything is cut."
                .to_owned()
        }
    }
}

fn level(tongue: Tongue, said: &LevelSaid) -> String {
    match said {
        LevelSaid::ClassNotBelowNominal => {
            "a cable's class is not below the nominal voltage".to_owned()
        }
        LevelSaid::ClassBelow {
            class_kv,
            nominal_kv,
        } => format!(
            "the cable is of the {class_kv} kV class; the system's nominal voltage is {nominal_kv} kV"
        ),
        LevelSaid::ClassNotForSystem => {
            "Stop and call: this cable is not for this system.".to_owned()
        }
        LevelSaid::NoLevel => {
            "the cable's papers give no insulation level in percent, and no other rule is read here"
                .to_owned()
        }
        LevelSaid::NoTimeForLevel { level_percent } => {
            format!("no clearing time is known for the {level_percent} percent level")
        }
        LevelSaid::NoClearingTime => "the job gives no clearing time".to_owned(),
        LevelSaid::FromMemory { source } => format!("from memory: {}", tongue.say(source)),
        LevelSaid::KeyWaits { key, says } => format!(
            "key {key} waits for the owner, with edition and date: \"{}\" is from memory",
            tongue.say(says)
        ),
        LevelSaid::ConfirmedBy {
            source,
            edition,
            by,
        } => format!(
            "{}, edition {edition}, confirmed by {by}",
            tongue.say(source)
        ),
        LevelSaid::ClearedIn { time_s, says } => {
            format!(
                "earth faults are cleared in {time_s} s; {}",
                tongue.say(says)
            )
        }
        LevelSaid::LevelNotForSystem => {
            "Stop and call: this cable's level is not for this system.".to_owned()
        }
    }
}

/// Conductors that an end takes.
fn taken(tongue: Tongue, taken: &Taken) -> String {
    if !taken.named.is_empty() {
        let named: Vec<String> = taken.named.iter().map(|c| tongue.conductor(*c)).collect();
        return named.join(", ");
    }
    let sizes: Vec<String> = taken.sizes.iter().map(ToString::to_string).collect();
    let metals: Vec<&str> = taken.metals.iter().map(|m| tongue.metal(*m)).collect();
    let strandings: Vec<&str> = taken
        .strandings
        .iter()
        .map(|s| tongue.stranding(*s))
        .collect();
    format!(
        "{} {} {}",
        tongue.or(&sizes),
        tongue.or(&metals),
        tongue.or(&strandings)
    )
}

/// A connector, with the name of its end if it has one.
fn connector_at(at: &ConnectorAt) -> String {
    match &at.end {
        Some(end) => format!("{}, end {end}", at.connector),
        None => at.connector.clone(),
    }
}

fn ends(is_sleeve: bool) -> &'static str {
    if is_sleeve {
        "a sleeve with two ends"
    } else {
        "a contact with one end"
    }
}

fn connector(tongue: Tongue, said: &ConnectorSaid) -> String {
    use ConnectorSaid as S;
    let conductor = |of| tongue.conductor(of);
    let taken = |of| taken(tongue, of);
    match said {
        S::UseForConductor => {
            "Stop. Use a connector whose instructions name this conductor.".to_owned()
        }
        S::BothEndsTake { connector, conductor: of } => format!(
            "both ends of {connector} take {}, and the job does not say which end this leg goes into",
            conductor(*of)
        ),
        S::NeitherEndTakes { connector, conductor: of } => {
            format!("neither end of {connector} takes {}", conductor(*of))
        }
        S::SayWhichEnd { leg, ends } => {
            let ends: Vec<String> = ends.iter().map(|end| format!("\"{end}\"")).collect();
            let ends = tongue.or(&ends);
            format!("Say which end takes leg {leg}: connector_end = {ends}.")
        }
        S::Conductor { conductor: of } => conductor(*of),
        S::Takes { takes } => taken(takes),
        S::EndsTake { one, other } => {
            format!("{} at one end, {} at the other", taken(one), taken(other))
        }
        S::End { end } => format!("end {end}"),
        S::EndOfItsOwn => "an end that takes no other leg".to_owned(),
        S::LegAtEachEnd => "a sleeve takes one leg at each end".to_owned(),
        S::BothIntoEnd { leg, other, at } => {
            let end = at.end.as_deref().unwrap_or_default();
            format!("legs {leg} and {other} both go into the end {end} of {}", at.connector)
        }
        S::UseSleeveWithEnds => {
            "Stop. Use a sleeve that has an end for each of the two conductors.".to_owned()
        }
        S::IsForOthers { at, takes, conductor: of } => {
            let (at, takes, of) = (connector_at(at), taken(takes), conductor(*of));
            format!("{at} is for conductors of {takes}; here it is {of}")
        }
        S::ListsApart { at, conductor: of } => format!(
            "the row {} lists sizes and metals apart, so it does not say that it takes {}",
            connector_at(at),
            conductor(*of)
        ),
        S::WriteOneByOne => {
            "Write the conductors of its paper one by one, size with metal: `conductors`, or an `end` for each end where the two differ."
                .to_owned()
        }
        S::Ends { is_sleeve } => ends(*is_sleeve).to_owned(),
        S::Joint { kind } => format!("a {} joint", tongue.joint_kind(*kind)),
        S::NeedsOtherEnds { connector, kind, is_sleeve } => {
            let (found, needed) = (ends(*is_sleeve), ends(!*is_sleeve));
            let kind = tongue.joint_kind(*kind);
            format!("{connector} is {found}; a {kind} joint needs {needed}")
        }
        S::ConductorNotMeasured { at } => format!(
            "the bore of {} is limited, but nobody has measured the conductor",
            connector_at(at)
        ),
        S::ConductorInBore { subject, at } => {
            let (subject, at) = (tongue.subject(subject), connector_at(at));
            format!("{subject}, conductor in the bore of {at}")
        }
    }
}

fn shared(tongue: Tongue, said: &SharedSaid) -> String {
    let of = |part| tongue.part(part);
    match said {
        SharedSaid::LegsNameNone { n_legs, part } => {
            format!("{n_legs} of the legs name no {}", of(*part))
        }
        SharedSaid::OneForAllLegs { part } => format!("one {} for all legs", of(*part)),
        SharedSaid::JointHasOne { kind, part } => {
            format!("a {} joint has one {}", tongue.joint_kind(*kind), of(*part))
        }
        SharedSaid::Different { n_parts, part } => format!(
            "the legs name {n_parts} different parts as their one {}",
            of(*part)
        ),
        SharedSaid::NameTheSame => "Name the same part on every leg.".to_owned(),
        SharedSaid::Sides { one, other } => format!("side {one} and side {other}"),
        SharedSaid::SideForEachLeg => "a side of the body for each leg".to_owned(),
        SharedSaid::LegAtEachSide => "a body takes one leg at each side".to_owned(),
        SharedSaid::BothByOneSide { side } => {
            format!("both legs come in by the side {side} of their body")
        }
        SharedSaid::UseBodyWithSides => {
            "Stop. Use a body that has a side for each of the two cables.".to_owned()
        }
    }
}

fn cleaning(tongue: Tongue, said: &CleaningSaid) -> String {
    match said {
        CleaningSaid::UseUntouched => "Use one that has never touched another metal.".to_owned(),
        CleaningSaid::NothingNamed { leg, metal } => format!(
            "nothing is named that cleans the conductor of leg {leg}, which is {}",
            tongue.metal(*metal)
        ),
        CleaningSaid::AskWithWhat { leg, metal } => format!(
            "With what brush or abrasive is the {} conductor of leg {leg} cleaned?",
            tongue.metal(*metal)
        ),
        CleaningSaid::MetalsNotSaid { row } => {
            format!("the row {row} does not say which conductor metals it serves")
        }
        CleaningSaid::AskMetals { part } => {
            format!("Is {part} used on bare conductors, and if it is, of which metals?")
        }
    }
}

fn order(tongue: Tongue, said: &OrderSaid) -> String {
    match said {
        OrderSaid::LayersEndInOrder => "layers end one after the other".to_owned(),
        OrderSaid::FromTo { subject, from, to } => format!(
            "{}, from the {} to the {}",
            tongue.subject(subject),
            tongue.plane(*from),
            tongue.plane(*to)
        ),
        OrderSaid::FromConductorEnd { subject, to } => format!(
            "{}, {} from the conductor end",
            tongue.subject(subject),
            tongue.plane(*to)
        ),
        OrderSaid::CopiedWrongly => {
            "Stop. A row or a distance was copied wrongly: look it up in the part's own paper."
                .to_owned()
        }
    }
}

fn layer(tongue: Tongue, said: &LayerSaid) -> String {
    let at = |edge: &EdgeAt| match edge.at {
        Some(at) => tongue.spot(at),
        None => "an unknown place".to_owned(),
    };
    let place = |edge: &EdgeAt| format!("{} at {}", tongue.plane(edge.plane), at(edge));
    match said {
        LayerSaid::EveryLayerAllowed => "every layer is allowed".to_owned(),
        LayerSaid::LayersOfItsRow => "the layers that its row names".to_owned(),
        LayerSaid::LiesOver {
            end,
            by,
            is_planned,
            layer,
            row,
            edges,
        } => {
            let by = tongue.spot(*by);
            let lies = if *is_planned {
                format!("lies {by} over")
            } else {
                format!("can come to lie {by}, at the worst of the windows, over")
            };
            let edges: Vec<String> = edges.iter().map(place).collect();
            format!(
                "{} {lies} the {}; the row {row} gives it no range there ({})",
                place(end),
                tongue.layer(*layer),
                edges.join(", ")
            )
        }
    }
}
