//! Sentences about parts on a leg.

use super::noun::the;
use crate::Tongue;
use jointwright_joint::said::{
    AdapterSaid, BodySaid, BusSaid, CleaningSaid, ConnectorAt, ConnectorSaid, EdgeAt,
    ElectrodeSaid, FitSaid, LayerSaid, LevelSaid, OrderSaid, PartKind, SharedSaid, Taken, Wording,
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
        AdapterSaid::NoneNamed => "ninguno".to_owned(),
        AdapterSaid::NotNamed { body, adapter } => {
            format!("las instrucciones de {body} no nombran el adaptador {adapter}")
        }
        AdapterSaid::UseNamed => {
            "Use un adaptador que las instrucciones del cuerpo nombren, o un cuerpo que sirva para el ramal."
                .to_owned()
        }
        AdapterSaid::NoBoreRange { row } => {
            format!("la ficha {row} no da ningún rango para su orificio")
        }
        AdapterSaid::OutsideIn { adapter, body } => format!("exterior de {adapter} en {body}"),
        AdapterSaid::UseAnother => "Use otro adaptador u otro cuerpo.".to_owned(),
        AdapterSaid::LeavesBare { adapter, most } => format!(
            "hasta {} de aislamiento descubierto entre {adapter} y el borde de la pantalla del aislamiento",
            tongue.read(*most)
        ),
        AdapterSaid::ReachesEdge => {
            "un adaptador que llegue al borde, o un documento que le permita terminar antes"
                .to_owned()
        }
        AdapterSaid::BoreByItsPaper => {
            "el orificio del cuerpo queda ahí sobre su rango solo según el documento del adaptador, que no lo dice"
                .to_owned()
        }
        AdapterSaid::UseOneThatReaches => {
            "Pare. Use un adaptador que llegue al borde, o llame.".to_owned()
        }
    }
}

/// A number of legs.
fn legs(n: i64) -> String {
    match n {
        1 => "1 ramal".to_owned(),
        n => format!("{n} ramales"),
    }
}

fn body(tongue: Tongue, said: &BodySaid) -> String {
    let count = |n: usize| legs(i64::try_from(n).unwrap_or(i64::MAX));
    match said {
        BodySaid::BendNotMeasured => {
            "nadie ha medido el radio de curvatura en su posición final".to_owned()
        }
        BodySaid::BendLeastNotSaid => {
            "el trabajo no dice qué radio de curvatura permite el fabricante del cable".to_owned()
        }
        BodySaid::BendingRadius { subject } => {
            format!("{}, radio de curvatura", tongue.subject(subject))
        }
        BodySaid::PapersOfCable => "los documentos del cable".to_owned(),
        BodySaid::EaseBend => "Haga más suave la curva antes de cortar nada, o llame.".to_owned(),
        BodySaid::UseRated => {
            "Pare. Use una pieza que sus instrucciones admitan para este sistema y este empalme."
                .to_owned()
        }
        BodySaid::LegsNotSaid { row } => format!("la ficha {row} no dice cuántos ramales recibe"),
        BodySaid::LegInEveryMouth { greatest } => {
            format!("{}, uno en cada boca", legs(*greatest))
        }
        BodySaid::Legs { n_legs } => count(*n_legs),
        BodySaid::TakesOtherLegs {
            body,
            greatest,
            n_legs,
        } => format!(
            "{body} recibe {}; este empalme tiene {n_legs}",
            legs(*greatest)
        ),
        BodySaid::UseWithMouths => {
            "Pare. Use un cuerpo con tantas bocas como ramales hay: ninguna puede quedar abierta."
                .to_owned()
        }
        BodySaid::UseForBonding => {
            "Pare. Use una pieza cuyas instrucciones nombren esta pantalla y esta conexión."
                .to_owned()
        }
        BodySaid::BondingsNotSaid { row } => {
            format!("la ficha {row} no dice qué formas de conectar la pantalla permite")
        }
        BodySaid::AskBondings { body } => {
            format!("¿Qué formas de conectar la pantalla a través de él permite {body}?")
        }
        BodySaid::NoConnectorRange { row } => {
            format!("la ficha {row} no da ningún rango para el diámetro exterior del conector")
        }
        BodySaid::ConnectorOutside {
            subject,
            connector,
            body,
        } => format!(
            "{}, exterior de {connector} en {body}",
            tongue.subject(subject)
        ),
        BodySaid::UseAdmittedConnector => {
            "Pare. Use un conector que las instrucciones del cuerpo admitan.".to_owned()
        }
    }
}

fn electrode(tongue: Tongue, said: &ElectrodeSaid) -> String {
    match said {
        ElectrodeSaid::CoversConnector => "el electrodo cubre todo el conector".to_owned(),
        ElectrodeSaid::EndsOnInsulation => "el electrodo termina sobre el aislamiento".to_owned(),
        ElectrodeSaid::PastMouth => "electrodo más allá de la boca del conector".to_owned(),
        ElectrodeSaid::OntoInsulation => "electrodo sobre el aislamiento".to_owned(),
        ElectrodeSaid::Reach { subject, what } => format!(
            "{}, {}, en el peor caso de los rangos permitidos, con las medidas propias del cuerpo tal como están impresas",
            tongue.subject(subject),
            tongue.say(what)
        ),
        ElectrodeSaid::ConnectorLengthNotSaid { row } => {
            format!("la ficha {row} no dice qué largo de conector admite")
        }
        ElectrodeSaid::LengthAsMade { subject, connector } => {
            format!("{}, largo de {connector} ya hecho", tongue.subject(subject))
        }
        ElectrodeSaid::UseShorterConnector => {
            "Pare. Use un conector más corto u otro cuerpo; no recorte ninguno de los dos."
                .to_owned()
        }
        ElectrodeSaid::EndNotKnown => {
            "no se sabe qué extremo del conector recibe este ramal".to_owned()
        }
        ElectrodeSaid::OtherEndOpen { connector } => format!(
            "no se sabe qué ramal entra en el otro extremo de {connector}, así que no se conoce su alargamiento"
        ),
        ElectrodeSaid::NeitherOverlapNorLongest { body } => {
            format!("{body} no indica ni un traslape ni el conector más largo que admite")
        }
        ElectrodeSaid::LongestCannotBePlanned => {
            "no se puede planificar el conector más largo que el cuerpo admite".to_owned()
        }
    }
}

fn bus(said: &BusSaid) -> String {
    let or_none = |interface: &Option<String>| interface.clone().unwrap_or("ninguna".to_owned());
    match said {
        BusSaid::NotNamed => {
            "no se nombra ninguna barra, así que no se pueden contar sus puertos".to_owned()
        }
        BusSaid::Port { port } => format!("puerto {port}"),
        BusSaid::Ports { n_ports } => format!("puertos 1 a {n_ports}"),
        BusSaid::PortBeyond { port, bus, n_ports } => format!(
            "el trabajo nombra el puerto {port}, pero la cantidad de puertos de {bus} es {n_ports}"
        ),
        BusSaid::UseWithPorts => "Use una barra con suficientes puertos.".to_owned(),
        BusSaid::PortWants { port, interface } => {
            format!("puerto {port}: un ramal o un tapón aislante, interfaz {interface}")
        }
        BusSaid::BodyOpen { port, leg } => {
            format!("puerto {port}: no se nombra ningún cuerpo para el ramal {leg}")
        }
        BusSaid::LegWith { leg, body } => format!("ramal {leg} con {body}"),
        BusSaid::WithInterface { body, interface } => {
            format!("{body} con interfaz {}", or_none(interface))
        }
        BusSaid::MatesWithOther {
            port,
            body,
            interface,
            of_bus,
        } => format!(
            "puerto {port}: la interfaz de {body} es {}, la de la barra es {of_bus}",
            or_none(interface)
        ),
        BusSaid::BlankWith { plug } => format!("puerto sin ramal con {plug}"),
        BusSaid::PlugDoesNotServe {
            port,
            plug,
            interface,
            greatest_kv,
        } => format!(
            "puerto {port}: {plug} (interfaz {interface}, {greatest_kv} kV) no sirve en esta barra y este sistema"
        ),
        BusSaid::BlankWithoutPlug => "puerto sin ramal y sin tapón".to_owned(),
        BusSaid::PlugMissing { port } => {
            format!("el puerto {port} no lleva ramal y no tiene tapón aislante")
        }
        BusSaid::Nothing => "nada".to_owned(),
        BusSaid::PortEmpty { port } => {
            format!("el puerto {port} no tiene ni ramal ni tapón aislante")
        }
        BusSaid::OrderWhatMates => {
            "Pare. Un puerto no debe quedar abierto: pida la pieza que acopla antes de cortar nada."
                .to_owned()
        }
    }
}

fn level(tongue: Tongue, said: &LevelSaid) -> String {
    match said {
        LevelSaid::ClassNotBelowNominal => {
            "la clase de un cable no es menor que la tensión nominal".to_owned()
        }
        LevelSaid::ClassBelow {
            class_kv,
            nominal_kv,
        } => format!(
            "el cable es de la clase de {class_kv} kV; la tensión nominal del sistema es {nominal_kv} kV"
        ),
        LevelSaid::ClassNotForSystem => {
            "Pare y llame: este cable no es para este sistema.".to_owned()
        }
        LevelSaid::NoLevel => {
            "los documentos del cable no dan un nivel de aislamiento en por ciento, y aquí no se lee otra regla"
                .to_owned()
        }
        LevelSaid::NoTimeForLevel { level_percent } => format!(
            "no se conoce un tiempo de despeje para el nivel de {level_percent} por ciento"
        ),
        LevelSaid::NoClearingTime => "el trabajo no da un tiempo de despeje".to_owned(),
        LevelSaid::FromMemory { source } => format!("de memoria: {}", tongue.say(source)),
        LevelSaid::KeyWaits { key, says } => format!(
            "la clave `{key}` espera al propietario, con edición y fecha: «{}» es de memoria",
            tongue.say(says)
        ),
        LevelSaid::ConfirmedBy {
            source,
            edition,
            by,
        } => format!(
            "{}, edición {edition}, confirmado por {by}",
            tongue.say(source)
        ),
        LevelSaid::ClearedIn { time_s, says } => format!(
            "las fallas a tierra se despejan en {time_s} s; {}",
            tongue.say(says)
        ),
        LevelSaid::LevelNotForSystem => {
            "Pare y llame: el nivel de este cable no es para este sistema.".to_owned()
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
        "{} de {} {}",
        tongue.or(&sizes),
        tongue.or(&metals),
        tongue.or(&strandings)
    )
}

/// A connector, with the name of its end if it has one.
fn connector_at(at: &ConnectorAt) -> String {
    match &at.end {
        Some(end) => format!("{}, extremo {end}", at.connector),
        None => at.connector.clone(),
    }
}

fn ends(is_sleeve: bool) -> &'static str {
    if is_sleeve {
        "un manguito con dos extremos"
    } else {
        "un contacto con un extremo"
    }
}

fn connector(tongue: Tongue, said: &ConnectorSaid) -> String {
    use ConnectorSaid as S;
    let conductor = |of| tongue.conductor(of);
    let taken = |of| taken(tongue, of);
    match said {
        S::UseForConductor => {
            "Pare. Use un conector cuyas instrucciones nombren este conductor.".to_owned()
        }
        S::BothEndsTake { connector, conductor: of } => format!(
            "ambos extremos de {connector} reciben {}, y el trabajo no dice en qué extremo entra este ramal",
            conductor(*of)
        ),
        S::NeitherEndTakes { connector, conductor: of } => {
            format!("ningún extremo de {connector} recibe {}", conductor(*of))
        }
        S::SayWhichEnd { leg, ends } => {
            let ends: Vec<String> = ends.iter().map(|end| format!("`connector_end = \"{end}\"`")).collect();
            let ends = tongue.or(&ends);
            format!("Diga qué extremo recibe el ramal {leg}: {ends}.")
        }
        S::Conductor { conductor: of } => conductor(*of),
        S::Takes { takes } => taken(takes),
        S::EndsTake { one, other } => {
            format!("{} en un extremo, {} en el otro", taken(one), taken(other))
        }
        S::End { end } => format!("extremo {end}"),
        S::EndOfItsOwn => "un extremo que no recibe ningún otro ramal".to_owned(),
        S::LegAtEachEnd => "un manguito recibe un ramal en cada extremo".to_owned(),
        S::BothIntoEnd { leg, other, at } => {
            let end = at.end.as_deref().unwrap_or_default();
            format!("los ramales {leg} y {other} entran ambos en el extremo {end} de {}", at.connector)
        }
        S::UseSleeveWithEnds => {
            "Pare. Use un manguito que tenga un extremo para cada uno de los dos conductores."
                .to_owned()
        }
        S::IsForOthers { at, takes, conductor: of } => {
            let (at, takes, of) = (connector_at(at), taken(takes), conductor(*of));
            format!("{at} es para conductores de {takes}; aquí es {of}")
        }
        S::ListsApart { at, conductor: of } => format!(
            "la ficha {} lista calibres y metales por separado, así que no dice que reciba {}",
            connector_at(at),
            conductor(*of)
        ),
        S::WriteOneByOne => {
            "Escriba uno por uno los conductores de su documento, calibre con metal: `conductors`, o un `end` para cada extremo donde los dos difieren."
                .to_owned()
        }
        S::Ends { is_sleeve } => ends(*is_sleeve).to_owned(),
        S::Joint { kind } => format!("un empalme {}", tongue.joint_kind(*kind)),
        S::NeedsOtherEnds { connector, kind, is_sleeve } => {
            let (found, needed) = (ends(*is_sleeve), ends(!*is_sleeve));
            let kind = tongue.joint_kind(*kind);
            format!("{connector} es {found}; un empalme {kind} necesita {needed}")
        }
        S::ConductorNotMeasured { at } => format!(
            "el orificio de {} tiene un límite, pero nadie ha medido el conductor",
            connector_at(at)
        ),
        S::ConductorInBore { subject, at } => {
            let (subject, at) = (tongue.subject(subject), connector_at(at));
            format!("{subject}, conductor en el orificio de {at}")
        }
    }
}

/// "Un cuerpo", "una pieza de pantalla": its article, its name, and "solo" or "sola".
fn one(tongue: Tongue, part: PartKind) -> String {
    let name = tongue.part(part);
    let is_feminine = the(name).starts_with("la ");
    let article = if is_feminine { "una sola" } else { "un solo" };
    format!("{article} {name}")
}

fn shared(tongue: Tongue, said: &SharedSaid) -> String {
    let of = |part| tongue.part(part);
    match said {
        SharedSaid::LegsNameNone { n_legs, part } => {
            format!("ramales que no nombran {}: {n_legs}", of(*part))
        }
        SharedSaid::OneForAllLegs { part } => {
            format!("{} para todos los ramales", one(tongue, *part))
        }
        SharedSaid::JointHasOne { kind, part } => format!(
            "un empalme {} tiene {}",
            tongue.joint_kind(*kind),
            one(tongue, *part)
        ),
        SharedSaid::Different { n_parts, part } => format!(
            "los ramales nombran {n_parts} piezas distintas donde debe haber {}",
            one(tongue, *part)
        ),
        SharedSaid::NameTheSame => "Nombre la misma pieza en todos los ramales.".to_owned(),
        SharedSaid::Sides { one, other } => format!("lado {one} y lado {other}"),
        SharedSaid::SideForEachLeg => "un lado del cuerpo para cada ramal".to_owned(),
        SharedSaid::LegAtEachSide => "un cuerpo recibe un ramal en cada lado".to_owned(),
        SharedSaid::BothByOneSide { side } => {
            format!("ambos ramales entran por el lado {side} de su cuerpo")
        }
        SharedSaid::UseBodyWithSides => {
            "Pare. Use un cuerpo que tenga un lado para cada uno de los dos cables.".to_owned()
        }
    }
}

fn cleaning(tongue: Tongue, said: &CleaningSaid) -> String {
    match said {
        CleaningSaid::UseUntouched => "Use uno que nunca haya tocado otro metal.".to_owned(),
        CleaningSaid::NothingNamed { leg, metal } => format!(
            "no se nombra nada que limpie el conductor del ramal {leg}, que es de {}",
            tongue.metal(*metal)
        ),
        CleaningSaid::AskWithWhat { leg, metal } => format!(
            "¿Con qué cepillo o abrasivo se limpia el conductor de {} del ramal {leg}?",
            tongue.metal(*metal)
        ),
        CleaningSaid::MetalsNotSaid { row } => {
            format!("la ficha {row} no dice para qué metales de conductor sirve")
        }
        CleaningSaid::AskMetals { part } => {
            format!("¿Se usa {part} en conductores desnudos, y si es así, de qué metales?")
        }
    }
}

fn order(tongue: Tongue, said: &OrderSaid) -> String {
    match said {
        OrderSaid::LayersEndInOrder => "las capas terminan una tras otra".to_owned(),
        OrderSaid::FromTo { subject, from, to } => format!(
            "{}, desde {} hasta {}",
            tongue.subject(subject),
            the(&tongue.plane(*from)),
            the(&tongue.plane(*to))
        ),
        OrderSaid::FromConductorEnd { subject, to } => format!(
            "{}, {} desde el extremo del conductor",
            tongue.subject(subject),
            tongue.plane(*to)
        ),
        OrderSaid::CopiedWrongly => {
            "Pare. Se copió mal una ficha o una distancia: búsquela en el documento propio de la pieza."
                .to_owned()
        }
    }
}

fn layer(tongue: Tongue, said: &LayerSaid) -> String {
    let at = |edge: &EdgeAt| match edge.at {
        Some(at) => tongue.spot(at),
        None => "una posición desconocida".to_owned(),
    };
    let place = |edge: &EdgeAt| format!("{} en {}", tongue.plane(edge.plane), at(edge));
    match said {
        LayerSaid::EveryLayerAllowed => "se permiten todas las capas".to_owned(),
        LayerSaid::LayersOfItsRow => "las capas que su ficha nombra".to_owned(),
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
                format!("queda {by} sobre")
            } else {
                format!("puede quedar {by}, en el peor caso de los rangos permitidos, sobre")
            };
            let edges: Vec<String> = edges.iter().map(place).collect();
            format!(
                "{} {lies} {}; la ficha {row} no le da ningún rango ahí ({})",
                place(end),
                the(tongue.layer(*layer)),
                edges.join(", ")
            )
        }
    }
}
