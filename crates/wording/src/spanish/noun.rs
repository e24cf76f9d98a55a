//! Nouns: names of layers, planes, parts and the like.

use jointwright_joint::cable::{Layer, Metal, ShieldKind, Stranding, Words};
use jointwright_joint::catalogue::{Means, PartKind};
use jointwright_joint::job::JointKind;
use jointwright_joint::limit::Subject;
use jointwright_joint::material::ItemKind;
use jointwright_joint::plan::StateDoc;
use jointwright_joint::plane::Plane;

/// Words of these nouns that take "la".
const FEMININE: &[&str] = &["boca", "cubierta", "pantalla", "marca", "pieza", "capa"];

fn is_feminine(noun: &str) -> bool {
    let first = noun.split(' ').next().unwrap_or_default();
    FEMININE.contains(&first)
}

/// A noun with its article: "la boca del conector".
pub(crate) fn the(noun: &str) -> String {
    let article = if is_feminine(noun) { "la" } else { "el" };
    format!("{article} {noun}")
}

/// A noun with "de" and its article: "del extremo del aislamiento".
pub(crate) fn of_the(noun: &str) -> String {
    let of = if is_feminine(noun) { "de la" } else { "del" };
    format!("{of} {noun}")
}

/// A noun with "a" and its article: "al borde de la cubierta".
pub(crate) fn to_the(noun: &str) -> String {
    let to = if is_feminine(noun) { "a la" } else { "al" };
    format!("{to} {noun}")
}

/// A noun with "un" or "una": "una pieza de pantalla".
pub(crate) fn one(noun: &str) -> String {
    let article = if is_feminine(noun) { "una" } else { "un" };
    format!("{article} {noun}")
}

/// A noun with "ningún" or "ninguna": "ninguna pieza de pantalla".
pub(crate) fn none(noun: &str) -> String {
    let no = if is_feminine(noun) {
        "ninguna"
    } else {
        "ningún"
    };
    format!("{no} {noun}")
}

/// Subject of a statement.
pub(crate) fn subject(subject: &Subject) -> String {
    match (&subject.leg, subject.phase) {
        (Some(leg), Some(phase)) => format!("ramal {leg}, fase {phase}"),
        (Some(leg), None) => format!("ramal {leg}"),
        _ => "empalme".to_owned(),
    }
}

pub(crate) fn layer(layer: Layer, words: Words) -> &'static str {
    match (layer, words) {
        (Layer::Conductor, _) => "conductor",
        (Layer::ConductorScreen, _) => "pantalla del conductor",
        (Layer::Insulation, _) => "aislamiento",
        (Layer::InsulationScreen, Words::Us) => "pantalla del aislamiento (semiconductor negro)",
        (Layer::InsulationScreen, Words::Iec) => "pantalla del aislamiento",
        (Layer::MetallicShield, _) => "pantalla metálica",
        (Layer::Jacket, Words::Us) => "cubierta",
        (Layer::Jacket, Words::Iec) => "cubierta exterior",
    }
}

pub(crate) fn plane(plane: Plane, words: Words) -> String {
    if let Some(through) = plane.layer() {
        let through = of_the(layer(through, words));
        return match plane {
            Plane::InsulationEnd => format!("extremo {through}"),
            _ => format!("borde {through}"),
        };
    }
    let name = match plane {
        Plane::ConductorEnd => "extremo del conductor",
        Plane::ConnectorCentre => "centro del conector",
        Plane::ConnectorSeat => "asiento del conector",
        Plane::ConnectorMouthBefore => "boca del conector antes de prensar",
        Plane::ConnectorMouth => "boca del conector",
        Plane::BodyCentre => "centro del cuerpo",
        Plane::BodySeat => "asiento del cuerpo",
        Plane::ElectrodeEnd => "extremo del electrodo",
        Plane::ControlNear => "extremo interior del control de campo",
        Plane::ControlFar => "extremo exterior del control de campo",
        Plane::BodyEnd => "extremo del cuerpo",
        Plane::ParkMark => "marca de estacionamiento",
        Plane::SealEnd => "extremo exterior del sello",
        Plane::InsulationEndShrunk => "extremo del aislamiento ya contraído",
        Plane::JacketEdgeShrunk => "borde de la cubierta ya contraída",
        Plane::AdapterNear => "extremo interior del adaptador",
        Plane::AdapterFar => "extremo exterior del adaptador",
        Plane::ContactNear => "extremo interior del contacto de pantalla",
        Plane::ContactFar => "extremo exterior del contacto de pantalla",
        Plane::SealStart => "extremo interior del sello",
        Plane::InsulationEnd | Plane::ScreenEdge | Plane::ShieldEdge | Plane::JacketEdge => {
            unreachable!("said of its layer")
        }
    };
    name.to_owned()
}

pub(crate) fn part(part: PartKind) -> &'static str {
    match part {
        PartKind::Body => "cuerpo",
        PartKind::Adapter => "adaptador",
        PartKind::Connector => "conector",
        PartKind::ShieldPart => "pieza de pantalla",
        PartKind::Seal => "sello",
    }
}

pub(crate) fn item(item: ItemKind) -> &'static str {
    match item {
        ItemKind::Body => part(PartKind::Body),
        ItemKind::Adapter => part(PartKind::Adapter),
        ItemKind::Connector => part(PartKind::Connector),
        ItemKind::ShieldPart => part(PartKind::ShieldPart),
        ItemKind::Seal => part(PartKind::Seal),
        ItemKind::Bus => "barra",
        ItemKind::Plug => "tapón",
        ItemKind::Trial => "conector de prueba",
        ItemKind::Consumable => "consumible",
    }
}

pub(crate) fn metal(metal: Metal) -> &'static str {
    match metal {
        Metal::Copper => "cobre",
        Metal::Aluminium => "aluminio",
    }
}

pub(crate) fn stranding(stranding: Stranding) -> &'static str {
    match stranding {
        Stranding::Solid => "sólido",
        Stranding::Concentric => "concéntrico",
        Stranding::Compressed => "comprimido",
        Stranding::Compact => "compacto",
    }
}

pub(crate) fn joint_kind(kind: JointKind) -> &'static str {
    match kind {
        JointKind::Straight => "recto",
        JointKind::Branch => "de derivación",
        JointKind::Separable => "separable",
        JointKind::Cable => "de cable",
    }
}

/// Grip of a connector, after "conector".
pub(crate) fn means(means: Means) -> &'static str {
    match means {
        Means::Compression => "de compresión",
        Means::ShearBolt => "de tornillos de cabeza rompible",
        Means::SetScrew => "de tornillos de apriete",
    }
}

/// A die by its name, which may say already that it is one.
pub(crate) fn die(die: &str) -> String {
    let words = die.split(|c: char| !c.is_alphanumeric());
    let is_said = |word: &str| ["dado", "die"].iter().any(|d| word.eq_ignore_ascii_case(d));
    if words.into_iter().any(is_said) {
        die.to_owned()
    } else {
        format!("dado {die}")
    }
}

/// Whether something was computed.
pub(crate) fn state(state: StateDoc) -> &'static str {
    match state {
        StateDoc::Computed => "calculado",
        StateDoc::NotKnown => "no se sabe",
        StateDoc::NotComputed => "no calculado",
        StateDoc::PastItsDate => "vencido",
        StateDoc::Loose => "suelto",
    }
}

/// So many presses.
pub(crate) fn presses(n: i64) -> String {
    if n == 1 {
        "1 prensada".to_owned()
    } else {
        format!("{n} prensadas")
    }
}

/// Form of a shield.
pub(crate) fn shield(kind: ShieldKind) -> &'static str {
    match kind {
        ShieldKind::FlatStraps => "cintas planas",
        ShieldKind::ConcentricWires => "alambres concéntricos",
        ShieldKind::LappedTape => "cinta traslapada",
        ShieldKind::CorrugatedTape => "cinta corrugada longitudinal",
        ShieldKind::TapeWithWires => "cinta con alambres",
    }
}
