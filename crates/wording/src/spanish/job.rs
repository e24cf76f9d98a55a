//! Sentences about the rows and names of a job.

use super::{job_kind, job_whole};
use crate::Tongue;
use jointwright_joint::said::{JobSaid, NameHint, NameSaid, RowHint, RowSaid};

pub(super) fn say(tongue: Tongue, said: &JobSaid) -> String {
    match said {
        JobSaid::Row(said) => row(said),
        JobSaid::RowHint(hint) => row_hint(hint),
        JobSaid::Name(said) => name(said),
        JobSaid::NameHint(hint) => name_hint(hint),
        JobSaid::Kind(said) => job_kind::say(tongue, said),
        JobSaid::Whole(said) => job_whole::say(tongue, said),
    }
}

fn row(said: &RowSaid) -> String {
    match said {
        RowSaid::PhaseBeyond { phase, phases } => {
            format!("Se nombra la fase {phase}, pero el trabajo tiene {phases}.")
        }
        RowSaid::NoValues => "Una lectura no tiene valores.".to_owned(),
        RowSaid::NoDiameter {
            value,
            least,
            greatest,
        } => format!(
            "Una lectura es {value}; un diámetro en un solo conductor está entre {least} y {greatest}."
        ),
        RowSaid::ErrorIsNothing => {
            "El error del instrumento es cero; todo instrumento puede errar.".to_owned()
        }
        RowSaid::CountSaysNothing => {
            "Un conteo no dice nada de lo que se contó o se vio.".to_owned()
        }
        RowSaid::StayNotAfter { until, last } => format!(
            "Una estancia en almacén termina el {until}, no después de la anterior, {last}."
        ),
        RowSaid::ColdestAboveWarmest {
            coldest_degc,
            warmest_degc,
        } => format!(
            "Estuvo a {coldest_degc} degC en lo más frío, y a {warmest_degc} degC en lo más caliente."
        ),
        RowSaid::LabelPrintsBoth { expires } => {
            format!("La etiqueta no imprime fecha de vencimiento, y también imprime {expires}.")
        }
        RowSaid::NoLengthAfter => {
            "Una prensada de prueba no tiene la longitud después de prensar.".to_owned()
        }
        RowSaid::SleeveShorter { before, after } => format!(
            "El manguito midió {before} antes y {after} después; un manguito prensado no se acorta."
        ),
        RowSaid::SleeveUnlikePaper {
            before,
            connector,
            listed,
        } => format!(
            "El manguito midió {before} antes de prensar; `{connector}` mide {listed} en su documento."
        ),
        RowSaid::DatedAfterWork { date, work } => {
            format!("Esto tiene fecha {date}, posterior al día del trabajo, {work}.")
        }
        RowSaid::ThreeWires => {
            "La resistencia a lo largo de una pantalla metálica está leída con 3 hilos.".to_owned()
        }
        RowSaid::LeadHasNoMetal => "El cable de conexión no tiene metal.".to_owned(),
    }
}

/// Names of fields.
fn fields_of(fields: &[String]) -> String {
    let fields: Vec<String> = fields.iter().map(|field| format!("`{field}`")).collect();
    fields.join(", ")
}

fn row_hint(hint: &RowHint) -> String {
    let fixed = match hint {
        RowHint::ChangePhase => "Cambie la fase aquí o `phases` en el trabajo.",
        RowHint::WriteWhatItShowed => "Escriba lo que mostró el instrumento, o quite la lectura.",
        RowHint::LookAtUnit => "Mire la unidad y el punto decimal.",
        RowHint::WriteItsCertificate => {
            "Escriba lo que dice su certificado o su división más fina."
        }
        RowHint::ItTakes { fields } => return format!("Admite: {}.", fields_of(fields)),
        RowHint::StaysInOrder => {
            "Escriba las estancias en orden desde el día en que se expandió la pieza."
        }
        RowHint::ExchangeOrLookUp => "Intercámbielos, o búsquelos otra vez.",
        RowHint::LookAtLabel => "Mire otra vez la etiqueta, y quite uno de los dos.",
        RowHint::GiveLengthAfter => "Dé `length_after`, una por cada prueba.",
        RowHint::MeasureBothAgain => "Mida otra vez las dos.",
        RowHint::PressTheNamed => "Prense el manguito que nombra el trabajo.",
        RowHint::LookAtBothDates => "Mire otra vez las dos fechas.",
        RowHint::FourOrTwoWires => {
            "Escriba 4 si corriente y tensión tienen pinzas propias; si no, 2."
        }
        RowHint::WriteItsSection => {
            "Escriba su sección de metal, como \"35 mm2\" o \"66360 cmil\"."
        }
    };
    fixed.to_owned()
}

fn name(said: &NameSaid) -> String {
    match said {
        NameSaid::NoLeg { leg } => format!("Ningún ramal se llama `{leg}`."),
        NameSaid::TwoLegs { leg, place } => {
            format!("Dos ramales se llaman `{leg}`; el primero está en {place}.")
        }
        NameSaid::NoRow { kind, id } => {
            format!("Ninguna ficha `{kind}` en los catálogos del trabajo se llama `{id}`.")
        }
        NameSaid::EndOfNoConnector { field, end } => format!(
            "`{field}` nombra el extremo `{end}` de un conector, y no se nombra ningún `connector`."
        ),
        NameSaid::EndsAreAlike {
            field,
            end,
            connector,
        } => format!(
            "`{field}` nombra el extremo `{end}`, y los extremos de `{connector}` son iguales."
        ),
        NameSaid::NoSuchEnd {
            field,
            end,
            connector,
        } => format!("`{field}` nombra el extremo `{end}`, que `{connector}` no tiene."),
        NameSaid::SideOfNoBody { side } => {
            format!("`body_side` nombra el lado `{side}`, y no se nombra ningún `body`.")
        }
        NameSaid::SidesAreAlike { side, body } => {
            format!("`body_side` nombra el lado `{side}`, y los lados de `{body}` son iguales.")
        }
        NameSaid::NoSuchSide { side, body } => {
            format!("`body_side` nombra el lado `{side}`, que `{body}` no tiene.")
        }
        NameSaid::TrialIsNotPressed { connector } => {
            format!("Una prensada de prueba nombra `{connector}`, que no se prensa.")
        }
        NameSaid::TrialNamesNoEnd { connector } => format!(
            "Los extremos de `{connector}` son distintos, y la prensada de prueba no dice cuál se prensó."
        ),
    }
}

/// Names in backquotes.
fn or(names: &[String]) -> String {
    let names: Vec<String> = names.iter().map(|name| format!("`{name}`")).collect();
    names.join(" o ")
}

fn name_hint(hint: &NameHint) -> String {
    let fixed = match hint {
        NameHint::LegsAre { legs } => return format!("El trabajo tiene: {}.", legs.join(", ")),
        NameHint::OwnLetter => "Dé a cada ramal una letra propia.",
        NameHint::CatalogueIsWrong => {
            "Algo está mal en un catálogo; corríjalo primero, la ficha puede estar allí."
        }
        NameHint::AddTheRow => "Los catálogos no tienen ninguna; agregue la ficha.",
        NameHint::RowsAre { rows } => return format!("Tienen: {rows}."),
        NameHint::NameConnector => "Nombre el conector, o quite la línea.",
        NameHint::NameBody => "Nombre el cuerpo, o quite la línea.",
        NameHint::TakeLineOut => "Quite la línea.",
        NameHint::EndsAre { ends } => return format!("Sus extremos son {}.", or(ends)),
        NameHint::SidesAre { sides } => return format!("Sus lados son {}.", or(sides)),
        NameHint::TakeTrialOut => {
            "Quite la prensada de prueba, o nombre el manguito que se prensó."
        }
        NameHint::AddEnd { ends } => return format!("Agregue `end`: {}.", or(ends)),
        NameHint::LookBothUp => {
            "Una de las fichas se copió mal, o los dos documentos son de piezas distintas: busque las dos otra vez."
        }
    };
    fixed.to_owned()
}
