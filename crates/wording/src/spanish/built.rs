//! Sentences about readings as built.

use super::noun::the;
use crate::Tongue;
use jointwright_joint::cable::Layer;
use jointwright_joint::said::{Amount, BuiltHint, BuiltSaid};
use jointwright_joint::slot::Measured;

pub(super) fn say(tongue: Tongue, said: &BuiltSaid) -> String {
    let amount = |amount: &Amount| tongue.amount(amount);
    match said {
        BuiltSaid::OtherJob { read, job } => {
            format!("Estas lecturas son del trabajo `{read}`, y el trabajo dado es `{job}`.")
        }
        BuiltSaid::OtherPlan { read, plan } => format!(
            "Estas lecturas se tomaron con el plan {read} en la mano, y este trabajo da el plan {plan}."
        ),
        BuiltSaid::NoInstrument { named } => format!("Ningún instrumento se llama `{named}`."),
        BuiltSaid::HasNoError { instrument, field } => {
            format!("El instrumento `{instrument}` no tiene `{field}`.")
        }
        BuiltSaid::NamedTwice { named } => format!("`{named}` está nombrado dos veces."),
        BuiltSaid::Needs { of, field } => format!("Una lectura de `{of}` necesita `{field}`."),
        BuiltSaid::NotWith { of, field } => format!("Una lectura de `{of}` no lleva `{field}`."),
        BuiltSaid::NoWordFor { found, of } => {
            format!("`{found}` no es una palabra para `{of}`.")
        }
        BuiltSaid::NoTime { read } => format!("`{read}` no es una hora del día."),
        BuiltSaid::NoDecision { named } => format!("Ninguna decisión se llama `{named}`."),
        BuiltSaid::IdleDecision { named } => format!(
            "Ninguna lectura nombra la decisión `{named}`, y nadie sabe sobre qué es."
        ),
        BuiltSaid::Decided {
            what,
            by,
            role,
            authority,
            reached,
            at,
        } => format!(
            "{what}; lo decidió {by}, {role}, con la autoridad de {authority}; {at}; {reached}"
        ),
        BuiltSaid::NotAmongThePeople { by } => {
            format!("el trabajo no nombra a {by} entre quienes deciden sobre rangos permitidos")
        }
        BuiltSaid::NoteWithoutValue => "Esta fila tiene una nota o una decisión y ningún valor.".to_owned(),
        BuiltSaid::Disagree => "otra lectura de lo mismo dice otra cosa: mida otra vez".to_owned(),
        BuiltSaid::UnlikeTheJob => "el trabajo, y con él el plan, tiene otra lectura de lo mismo: pregunte cuál vale".to_owned(),
        BuiltSaid::Fewer { read, wanted } => {
            format!("leídos: {read} de {wanted}, y el rango permitido es para cada uno: lea los otros")
        }
        BuiltSaid::NobodyRead => "Esta lectura no dice quién la tomó.".to_owned(),
        BuiltSaid::NoDay => "Esta lectura no tiene fecha.".to_owned(),
        BuiltSaid::Read { values, error } => {
            let values: Vec<String> = values.iter().map(amount).collect();
            let values = values.join(", ");
            match error {
                Some(error) => format!("{values}; error {} en más o en menos", amount(error)),
                None => values,
            }
        }
        BuiltSaid::Found { found } => format!("`{found}`"),
        BuiltSaid::Slot { measured } => slot(tongue, measured),
        BuiltSaid::Under { by } => format!("{} por debajo", amount(by)),
        BuiltSaid::Over { by } => format!("{} por encima", amount(by)),
        BuiltSaid::UnderAndOver { under, over } => {
            format!("{} por debajo, y {} por encima", amount(under), amount(over))
        }
        BuiltSaid::Unlike { wanted } => format!("debe ser: `{wanted}`"),
        BuiltSaid::OnTheEdge => {
            "está justo en el límite del rango permitido, así que cualquier error del instrumento deja una duda: mida otra vez".to_owned()
        }
        BuiltSaid::ErrorReachesOver { below } => format!(
            "el error del instrumento pasa del límite del rango permitido: mida otra vez con uno cuyo error sea menor que {}",
            amount(below)
        ),
        BuiltSaid::NotFromPlan { planned } => format!(
            "no es {}, lo que da el plan, y nadie dice cuánto puede apartarse",
            tongue.exact(*planned)
        ),
        BuiltSaid::NobodyAsks => "ningún punto de espera del plan la pide".to_owned(),
        BuiltSaid::NotRead => "sin leer".to_owned(),
    }
}

pub(super) fn hint(said: &BuiltHint) -> String {
    match said {
        BuiltHint::JudgeWithItsJob => "Dé el trabajo del que son estas lecturas.".to_owned(),
        BuiltHint::NameItsPlan => "Dé el trabajo tal como era cuando se hizo ese plan. Si las lecturas valen para otro plan lo dice una persona nombrada, que escribe aquí la marca de ese otro.".to_owned(),
        BuiltHint::InstrumentsAre { names } if names.is_empty() => {
            "Póngalo en `instrument`, con su error.".to_owned()
        }
        BuiltHint::InstrumentsAre { names } => {
            format!("El archivo tiene: {}.", names.join(", "))
        }
        BuiltHint::DecisionsAre { names } if names.is_empty() => {
            "Póngala bajo `decision`, con quién decidió, con qué autoridad y cuándo.".to_owned()
        }
        BuiltHint::DecisionsAre { names } => format!("El archivo tiene: {}.", names.join(", ")),
        BuiltHint::NameItInItsRow => {
            "Escriba su nombre como `decision` en la fila de la lectura de la que trata.".to_owned()
        }
        BuiltHint::WriteTime => "Escríbala en 24 horas, como \"14:20\".".to_owned(),
        BuiltHint::WriteItsError { field } => {
            format!("Escriba `{field}` en el instrumento, según su certificado o según ensayos.")
        }
        BuiltHint::WordsAre { words } => format!("Las palabras son: {}.", words.join(", ")),
        BuiltHint::WriteField { field } => format!("Escriba `{field}` en esta fila."),
        BuiltHint::LeaveOut { field } => format!("Quite `{field}`."),
        BuiltHint::WriteItsValue => "Escriba lo que se leyó o se encontró; una nota sola se perdería.".to_owned(),
        BuiltHint::WriteWho => {
            "Escriba `by` en la fila, o al comienzo del archivo.".to_owned()
        }
        BuiltHint::WriteDay => {
            "Escriba `date` en la fila, o al comienzo del archivo.".to_owned()
        }
        BuiltHint::OneRowEach => "Dé a cada uno su propio nombre.".to_owned(),
    }
}

fn slot(tongue: Tongue, measured: &Measured) -> String {
    let layer = |layer: Layer| the(tongue.layer(layer));
    match measured {
        Measured::Diameter { over } => format!("diámetro sobre {}", layer(*over)),
        Measured::ShieldElements => {
            "alambres o flejes de la pantalla metálica, contados".to_owned()
        }
        Measured::Strands => "hebras del conductor, contadas".to_owned(),
        Measured::ConductorMetal => "metal del conductor".to_owned(),
        Measured::ShieldForm => "forma de la pantalla metálica".to_owned(),
        Measured::Place { plane } => tongue.plane(*plane).to_owned(),
        Measured::Distance { from, to } => {
            format!(
                "desde {} hasta {}",
                the(&tongue.plane(*from)),
                the(&tongue.plane(*to))
            )
        }
        Measured::AdapterEnds => "extremos del adaptador".to_owned(),
        Measured::StrandMoisture => "humedad en las hebras".to_owned(),
        Measured::ShieldMoisture => "humedad debajo de la pantalla metálica".to_owned(),
        Measured::JacketSurface => {
            format!("superficie de {} debajo del sello", layer(Layer::Jacket))
        }
        Measured::Surface { on } => format!("superficie de {}", layer(*on)),
        Measured::Bridge => "puente de la pantalla metálica".to_owned(),
        Measured::WiresBesideTape => "alambres al lado de la cinta".to_owned(),
        Measured::ShieldKept => "longitud que se conserva de la pantalla metálica".to_owned(),
        Measured::Phase => "fase en el extremo lejano".to_owned(),
        Measured::ConnectorGap => "separación en el tope del conector".to_owned(),
        Measured::BoltProud => "cuánto sobresale un tornillo".to_owned(),
        Measured::ConnectorLength => "longitud del conector hecho".to_owned(),
        Measured::ConnectorDiameter => "diámetro exterior del conector hecho".to_owned(),
        Measured::AcrossFlats => "entre caras del conector".to_owned(),
        Measured::Die => "dado en la prensa".to_owned(),
        Measured::Presses => "prensadas hechas".to_owned(),
        Measured::Bolts => "tornillos, contados".to_owned(),
        Measured::BoltTorque => "par de los tornillos".to_owned(),
        Measured::ContactResistance => {
            "resistencia de la conexión de la pantalla metálica".to_owned()
        }
        Measured::BondResistance { to } => {
            format!("resistencia de la pantalla metálica a través del empalme hasta el ramal {to}")
        }
        Measured::ShieldOpen => "pantalla metálica: abierta o unida".to_owned(),
        Measured::ShieldResistance => "resistencia a lo largo de la pantalla metálica".to_owned(),
        Measured::SealOverlap => format!("traslape del sello sobre {}", layer(Layer::Jacket)),
    }
}
