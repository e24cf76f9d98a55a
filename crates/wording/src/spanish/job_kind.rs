//! Sentences about a job's kind of joint, its ports and legs, its network and place, and its cables.

use super::noun;
use crate::Tongue;
use jointwright_joint::said::{
    CableHint, CableSaid, HeadHint, HeadSaid, JobKindSaid, RunHint, RunSaid, SizeUnit,
};

pub(super) fn say(tongue: Tongue, said: &JobKindSaid) -> String {
    match said {
        JobKindSaid::Head(said) => head(tongue, said),
        JobKindSaid::HeadHint(hint) => head_hint(hint).to_owned(),
        JobKindSaid::Run(said) => run(said),
        JobKindSaid::RunHint(hint) => run_hint(hint).to_owned(),
        JobKindSaid::Cable(said) => cable(tongue, said),
        JobKindSaid::CableHint(hint) => cable_hint(hint).to_owned(),
    }
}

/// Holder of a port: a leg by its name, or a blank.
fn holder(leg: Option<&String>) -> String {
    leg.map_or("un puerto sin ramal".to_owned(), |leg| {
        format!("el ramal `{leg}`")
    })
}

fn head(tongue: Tongue, said: &HeadSaid) -> String {
    match said {
        HeadSaid::KindIsNotHandled { kind } => format!(
            "No se trata un empalme de tipo `{kind}`: este programa planifica empalmes rectos, de derivación y separables de cable de un solo conductor con aislamiento extruido y pantalla metálica."
        ),
        HeadSaid::KindIsUnknown { kind } => format!(
            "El tipo de empalme es `{kind}`; el formato espera `straight` (recto), `branch` (de derivación) o `separable`, o `cable` para un recorrido de cable sin empalme."
        ),
        HeadSaid::HighestBelowNominal {
            highest_kv,
            nominal_kv,
        } => format!(
            "La tensión más alta, {highest_kv} kV, está por debajo de la tensión nominal, {nominal_kv} kV."
        ),
        HeadSaid::NoMediumVoltage { field, kv } => format!(
            "La tensión `{field}` es {kv} kV; este programa planifica empalmes de media tensión, de 1 a 52 kV entre fases."
        ),
        HeadSaid::AmbientReversed {
            least_degc,
            greatest_degc,
        } => format!(
            "La temperatura ambiente más baja, {least_degc} degC, está por encima de la más alta, {greatest_degc} degC."
        ),
        HeadSaid::LegsNotTwoToSix { n } => {
            format!("El trabajo tiene {n} ramales; un empalme tiene de 2 a 6.")
        }
        HeadSaid::WantsTwoLegs { kind, n } => format!(
            "Un empalme {} tiene 2 ramales; este tiene {n}.",
            tongue.joint_kind(*kind)
        ),
        HeadSaid::WantsThreeLegs { kind, n } => format!(
            "Un empalme {} tiene 3 ramales o más; este tiene {n}.",
            tongue.joint_kind(*kind)
        ),
        HeadSaid::NoBusButOneNamed { kind } => format!(
            "Un empalme {} no tiene barra, pero el trabajo nombra una.",
            tongue.joint_kind(*kind)
        ),
        HeadSaid::NoBusButBlanks { kind } => format!(
            "Un empalme {} no tiene barra, pero el trabajo nombra puertos sin ramal.",
            tongue.joint_kind(*kind)
        ),
        HeadSaid::LegHasNoPort { leg } => {
            format!("En un empalme separable, el ramal `{leg}` no tiene `port`.")
        }
        HeadSaid::PortTakenTwice { port, one, other } => format!(
            "El puerto {port} lo ocupan {} y {}; un puerto lleva un solo ramal o un solo tapón.",
            holder(one.as_ref()),
            holder(other.as_ref())
        ),
    }
}

const fn head_hint(hint: &HeadHint) -> &'static str {
    match hint {
        HeadHint::QualifiedPeople => {
            "El trabajo que este programa no conoce sigue sus propias instrucciones, hecho por personas calificadas para él."
        }
        HeadHint::PhaseToPhase => "Dé las dos entre fases; la más alta es la Um del sistema.",
        HeadHint::LookAtVoltage => "Mire la unidad: \"13.2 kV\" son 13 200 V.",
        HeadHint::Exchange => "Intercámbielas.",
        HeadHint::AddOrTakeLegs => "Agregue o quite ramales.",
        HeadHint::ChangeKindOrLegs => "Cambie el tipo de empalme o los ramales.",
        HeadHint::TakeOutOrSeparable => "Quítelo, o haga el empalme `separable`.",
        HeadHint::SayItsPort => "Diga en qué puerto de la barra está.",
        HeadHint::AnotherPort => "Dé otro puerto a uno de ellos.",
    }
}

fn run(said: &RunSaid) -> String {
    match said {
        RunSaid::NotOneLeg { n } => format!(
            "Un trabajo de tipo `cable` tiene un solo ramal, el recorrido de cable; este tiene {n}."
        ),
        RunSaid::NamesAPart { field } => format!(
            "Un recorrido de cable no tiene empalme, y el trabajo nombra `{field}`."
        ),
        RunSaid::NothingReads { field } => format!(
            "Un recorrido de cable no tiene empalme, y aquí nada lee `{field}` del trabajo."
        ),
        RunSaid::NotComputedOfARun { field } => format!(
            "De un recorrido de cable no se calcula ninguna emergencia ni ningún cortocircuito, y el trabajo indica `{field}`."
        ),
        RunSaid::OneLoad { field } => {
            format!("Un recorrido de cable tiene una sola carga, y su ramal nombra `{field}`.")
        }
        RunSaid::NothingToCountFrom => {
            "Un recorrido de cable no tiene empalme desde el que contar `until`.".to_owned()
        }
        RunSaid::OnlyOfARun { field } => {
            format!("`{field}` es para un recorrido de cable sin empalme.")
        }
        RunSaid::HasNoJoint => "Este trabajo es un recorrido de cable: no tiene empalme que se pueda planificar o dibujar.".to_owned(),
    }
}

const fn run_hint(hint: &RunHint) -> &'static str {
    match hint {
        RunHint::EachRunItsJob => {
            "Evalúe cada recorrido en un trabajo propio, o cambie el tipo de trabajo."
        }
        RunHint::TakeOutOrChangeKind => "Quítelo, o cambie el tipo de trabajo.",
        RunHint::OtherMeans => {
            "Quítelo, y haga que se juzgue por otros medios; la evaluación no dice nada de eso."
        }
        RunHint::SayUnderDuty => "Dígalo en `duty`: `load`.",
        RunHint::NoEmergencyOfARun => "Quítelo: de un recorrido no se calcula ninguna emergencia.",
        RunHint::SayItsLength => "Diga qué longitud tiene el tramo: `length`.",
        RunHint::RateSaysIt => {
            "`jointwright rate` dice lo que lleva el cable en lo que lo rodea, qué falta para saberlo, quién puede responderlo y dónde se escribe; las cartas (`plan --ask`) se escriben solo para empalmes. Para un empalme, cambie el tipo de trabajo."
        }
    }
}

/// Names of fields.
fn fields_of(fields: &[String], between: &str) -> String {
    let fields: Vec<String> = fields.iter().map(|field| format!("`{field}`")).collect();
    fields.join(between)
}

fn cable(tongue: Tongue, said: &CableSaid) -> String {
    match said {
        CableSaid::GivenTwice { layer } => format!(
            "El diámetro sobre {} según los documentos está dado dos veces.",
            noun::the(tongue.layer(*layer))
        ),
        CableSaid::LeastAboveGreatest {
            least,
            low,
            greatest,
            high,
        } => format!(
            "`{least}` es {low} y `{greatest}` es {high}; el menor no puede estar por encima del mayor."
        ),
        CableSaid::OnlyOneGiven { one, other } => {
            format!("Solo se da uno de `{one}` y `{other}`.")
        }
        CableSaid::NoSuchLevel { level } => format!(
            "El nivel de aislamiento es {level} por ciento; los niveles son 100, 133 y 173 por ciento."
        ),
        CableSaid::ClassWithoutLevel => "Se da la clase sin nivel de aislamiento; la misma clase tiene tres espesores.".to_owned(),
        CableSaid::NoWall => "El cable no tiene ni `class` con `level`, ni `rated`, ni `wall`; uno de ellos debe decir qué espesor tiene su aislamiento.".to_owned(),
        CableSaid::WallTwice { fields } => format!(
            "El aislamiento se describe a la vez con {}.",
            fields_of(fields, " y ")
        ),
        CableSaid::SeveralCores { cores } => {
            format!("No se trata un cable con {cores} conductores.")
        }
        CableSaid::Belted => "No se trata un cable con faja: sus conductores están bajo una sola faja de aislamiento y no tienen pantalla propia.".to_owned(),
        CableSaid::InsulatedWith { what } => {
            format!("No se trata un cable con aislamiento `{what}`.")
        }
        CableSaid::SheathOf { metal } => format!(
            "No se trata un cable cuya pantalla metálica es una funda de metal `{metal}`."
        ),
        CableSaid::InsulationIs { what } => format!(
            "El aislamiento es `{what}`; el formato espera `xlpe`, `tr-xlpe` o `epr`."
        ),
        CableSaid::ShieldHasNo { kind, field, needs } => format!(
            "Una pantalla metálica `{kind}` no tiene `{field}`; necesita {}.",
            fields_of(needs, ", ")
        ),
        CableSaid::ShieldTakesNo { kind, field, takes } => format!(
            "Una pantalla metálica `{kind}` no lleva `{field}`; se describe con {}.",
            fields_of(takes, ", ")
        ),
        CableSaid::ExpansionNotAPair => "La dilatación del aislamiento necesita un valor menor y uno mayor, y el menor no por encima del mayor.".to_owned(),
        CableSaid::OnlyTogether { one, other } => {
            format!("`{one}` y `{other}` solo dicen algo juntos.")
        }
        CableSaid::SizeHasNoUnit { field, text } => format!(
            "`{field}` es \"{text}\": el calibre no tiene unidad, se espera AWG, kcmil o mm²; el formato espera un calibre de conductor."
        ),
        CableSaid::IsNoSize {
            field,
            text,
            number,
            unit,
        } => format!(
            "`{field}` es \"{text}\": \"{number}\" no es un calibre en {}; el formato espera un calibre de conductor.",
            match unit {
                SizeUnit::Awg => "AWG, se espera de 1/0 a 4/0 o un número entero de 1 a 40",
                SizeUnit::Kcmil => "kcmil, se espera un número entero de 1 a 5000",
                SizeUnit::Mm2 => "mm², se espera un número entero de 1 a 5000",
            }
        ),
    }
}

const fn cable_hint(hint: &CableHint) -> &'static str {
    match hint {
        CableHint::KeepOne => "Deje uno de ellos.",
        CableHint::ExchangeOrLookUp => "Intercámbielos, o búsquelos otra vez.",
        CableHint::BothOrNeither => "Dé los dos, o ninguno.",
        CableHint::ReadTheLegend => {
            "Léalo en lo impreso en la cubierta o en los documentos del cable."
        }
        CableHint::AddLevel => {
            "Agregue `level = 100`, `133` o `173` según lo impreso en la cubierta o los documentos."
        }
        CableHint::TakeFromLegend => {
            "Tómelo de lo impreso en la cubierta o de los documentos del cable."
        }
        CableHint::OtherCable => {
            "Haga planificar el empalme entre un cable así y otros con sus propias instrucciones y por el ingeniero del propietario, y que lo haga un empalmador calificado para él. Este programa planifica los empalmes de cable de un solo conductor con aislamiento extruido y pantalla propia."
        }
        CableHint::LeadSheath => {
            "Haga planificar el empalme de un cable así con sus propias instrucciones y por el ingeniero del propietario, y que lo haga un empalmador calificado para plomo: una funda de plomo se suelda o se sujeta con piezas propias, puede haber papel debajo, y el plomo envenena a quien lo calienta o lo raspa. Este programa planifica los empalmes de cable cuya pantalla metálica es de cintas planas, alambres, cinta, o cinta con alambres. Si bajo el plomo llevan la corriente alambres o una cinta, el ingeniero dice si son la pantalla metálica."
        }
        CableHint::MetalSheath => {
            "Haga planificar el empalme de un cable así con sus propias instrucciones y por el ingeniero del propietario, y que lo haga un empalmador calificado para él: una funda así se corta, se abocina y se conecta con piezas propias. Este programa planifica los empalmes de cable cuya pantalla metálica es de cintas planas, alambres, cinta, o cinta con alambres."
        }
        CableHint::OwnInstructions => {
            "Otro cable necesita sus propias instrucciones y un empalmador calificado para él."
        }
        CableHint::MeasureOrCount => "Mídalo o cuéntelo, o tómelo de los documentos del cable.",
        CableHint::LookAtTheKind => "Quite la línea, o mire otra vez el tipo de pantalla metálica.",
        CableHint::BothFromASource => "Dé los dos de una fuente indicada, o ninguno.",
        CableHint::WriteASize => "Escriba \"4/0 AWG\", \"500 kcmil\" o \"240 mm2\".",
    }
}
