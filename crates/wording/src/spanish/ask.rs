//! Questions about missing facts.

use super::noun::the;
use crate::Tongue;
use jointwright_joint::end::EndId;
use jointwright_joint::said::{AskSaid, FactKey, Of, Who};

pub(super) fn say(tongue: Tongue, said: &AskSaid) -> String {
    match said {
        AskSaid::Question { fact, of } => question(*fact, &all(tongue, of)),
        AskSaid::Of(of) => self::of(tongue, of),
        AskSaid::Who(who) => self::who(*who).to_owned(),
        AskSaid::MakerOf(of) => {
            format!("el fabricante de {}, o su documento", self::of(tongue, of))
        }
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
            format!("{} sobre {}", end(of), the(tongue.layer(*over)))
        }
        Of::Plane { plane, of } => {
            format!("{} de {}", tongue.plane(*plane), self::of(tongue, of))
        }
        Of::Part { kind, leg } => match leg {
            Some(leg) => format!("{} del ramal {leg}", tongue.part(*kind)),
            None => format!("{} del empalme", tongue.part(*kind)),
        },
        Of::Lot { end: of, kind, row } => format!("{} {} {row}", end(of), tongue.part(*kind)),
        Of::Sleeve { row, conductor } => {
            format!("{row} sobre {}", tongue.conductor(*conductor))
        }
        Of::Check { check, of } => format!("`{check}`, {}", self::of(tongue, of)),
        Of::Bus => "la barra".to_owned(),
    }
}

fn who(who: Who) -> &'static str {
    match who {
        Who::Crew => "la cuadrilla",
        Who::Store => "el almacén",
        Who::Engineer => "el ingeniero del propietario",
        Who::CableMaker => "el fabricante del cable, o sus documentos",
        Who::PartMaker => "el fabricante de la pieza, o su documento",
    }
}

fn question(fact: FactKey, of: &str) -> String {
    match fact {
        FactKey::Reading => format!("Mida el diámetro sobre la capa misma, cuatro veces alrededor del cable con un calibrador, y anote la temperatura del cable: {of}."),
        FactKey::ReadingTemperature => format!("¿A qué temperatura estaba el cable cuando se midió? {of}."),
        FactKey::ReadingWarmed => format!("Mida otra vez cuando el cable esté tan caliente como el lugar, o como lo pide el rango: {of}."),
        FactKey::ReadingCloser => format!("Mida otra vez con un instrumento de menor error: el margen es menor que el error. {of}."),
        FactKey::RoomError => format!("¿Qué error pueden tener las longitudes que se midieron alrededor del ramal {of}?"),
        FactKey::Straight => format!("¿Hasta qué distancia de el extremo de su conductor está recto el ramal {of}?"),
        FactKey::ParkRoom => format!("¿Cuánta longitud libre hay desde el borde de la cubierta para lo que se desliza antes del conector, en el ramal {of}?"),
        FactKey::Bend => format!("¿Con qué radio queda doblado el ramal {of} en su soporte?"),
        FactKey::Slack => format!("¿Cuánto cable del ramal {of} se puede cortar todavía?"),
        FactKey::Moisture => format!("Pruebe si hay humedad en las hebras y debajo de la pantalla metálica después del corte a escuadra, el día del trabajo, como dicen las reglas del propietario: {of}."),
        FactKey::Jacket => format!("¿Cómo está la cubierta en todo el contorno donde irá el sello, antes de cortarla: rayada, arrugada, con relieve, agrietada o lisa? {of}."),
        FactKey::TrialPress => format!("¿Cuánto se alarga el manguito? Prense uno de prueba, con la herramienta y el dado de esta cuadrilla, sobre un trozo del mismo conductor: {of}."),
        FactKey::Continuity => format!("Mida otra vez a lo largo de la pantalla metálica, con cuatro hilos, con sus extremos abiertos donde el trabajo lo permita, y anote la longitud y la temperatura: {of}."),
        FactKey::Contact => format!("Mida con cuatro hilos la resistencia de la conexión de la pantalla metálica, una vez hecha: {of}."),
        FactKey::Count => format!("¿Cuántos alambres o cintas tiene la pantalla metálica? {of}."),
        FactKey::Brush => format!("¿Con qué cepillo o abrasivo se limpia el conductor? Ramal {of}."),
        FactKey::Lot => format!("¿Qué lote está en el camión, cuándo se fabricó, se expandió o vence, y a qué temperaturas mínima y máxima estuvo guardado? {of}."),
        FactKey::LotDay => format!("¿Qué día se fabricó este lote, y qué día se expandió? {of}."),
        FactKey::LabelDate => format!("¿Qué fecha de vencimiento lleva la etiqueta, si lleva alguna? {of}."),
        FactKey::LotStore => format!("¿A qué temperaturas mínima y máxima estuvo este lote, en el almacén y en el camión? {of}."),
        FactKey::Confirmation => format!("Busque el valor en la edición vigente y confírmelo con su clave, o no lo confirme: `{of}`."),
        FactKey::Cable => format!("¿Qué cable es este? Lea la leyenda de su cubierta, y dé el cable como sus propios documentos, con los diámetros que ellos indican: {of}."),
        FactKey::Window => format!("¿Qué tolerancia tiene esto, si las instrucciones no dan ninguna? {of}."),
        FactKey::JacketShrinks => format!("¿Cuánto se contrae la cubierta después de cortada, como máximo? Es la distancia desde `jacket-edge` hasta `jacket-edge-shrunk-back`; el fabricante del cable puede saberlo: ramal {of}."),
        FactKey::Limit => format!("¿Qué límite fija el propietario para `{of}`, donde las instrucciones no fijan ninguno?"),
        FactKey::Word => format!("Este programa no puede juzgarlo. Si puede quedar así, y por qué, lo dice un ingeniero con su nombre: {of}."),
        FactKey::ConductorGreatest => "¿Cuál es la temperatura más alta del conductor en servicio, incluidas las emergencias?".to_owned(),
        FactKey::Load => "¿Qué carga continua debe llevar cada ramal?".to_owned(),
        FactKey::Emergency => "¿Qué carga de emergencia debe llevar el empalme, y por cuánto tiempo?".to_owned(),
        FactKey::Fault => "¿Qué cortocircuito puede pasar por el conductor, por cuánto tiempo, y cuántas reconexiones hay?".to_owned(),
        FactKey::ShieldFault => "¿Qué cortocircuito puede pasar por una pantalla metálica, por cuánto tiempo (no menos que lo que puede durar una falla a tierra), y cuántas reconexiones hay?".to_owned(),
        FactKey::ClearingTime => "¿Cuál es el tiempo más largo en que se despeja una falla a tierra?".to_owned(),
        FactKey::AmbientLeast => "¿Cuál es la temperatura más baja del lugar?".to_owned(),
        FactKey::AmbientGreatest => "¿Cuál es la temperatura más alta del lugar?".to_owned(),
        FactKey::Surrounding => format!("¿Qué rodea los ramales desde el extremo del conductor hacia afuera, a qué temperatura está como máximo, qué calor se lleva, y quién lo dice? {of}."),
        FactKey::FarEnd => format!("¿Está la pantalla metálica puesta a tierra también en el extremo lejano de su tramo, y cómo se conecta en el empalme? Ramal {of}."),
        FactKey::Run => format!("¿Cómo están tendidos los tres cables del tramo, a qué distancia uno de otro, y hasta dónde llega la pantalla metálica? Ramal {of}."),
        FactKey::RunSurrounding => format!("¿Qué rodea el cable a lo largo de su ruta, trecho por trecho: qué longitud tiene cada uno y a qué temperatura está como máximo, y qué es, o qué calor se lleva; quién lo dice, y de qué fuente? {of}."),
        FactKey::Route => format!("¿Qué longitud tiene la ruta del cable, y qué longitud tiene cada trecho de lo que lo rodea? Los trechos suman la ruta: {of}."),
        FactKey::SpareCuts => format!("¿Para cuántos cortes más debe tener holgura el ramal {of}?"),
        FactKey::Part => format!("¿Qué pieza se va a usar? {of}."),
        FactKey::AdapterReach => format!("¿Qué adaptador empieza debajo del electrodo y termina más allá del borde de la pantalla del aislamiento, en cualquier posición que permitan los rangos? Lo que hay en el interior del cuerpo antes de ese borde no se dibuja ni se calcula su presión sin uno: ramal {of}."),
        FactKey::Parks => "¿En qué ramal se estaciona el cuerpo?".to_owned(),
        FactKey::Bus => format!("¿En qué barra van los ramales, y qué tapón cierra cada puerto sin ramal? {of}."),
        FactKey::Lead => format!("¿De qué metal y de qué sección es el cable de conexión de la pantalla metálica, y hasta qué temperatura puede llegar? Ramal {of}."),
        FactKey::BendLeast => format!("¿Hasta qué radio se puede doblar el cable? Ramal {of}."),
        FactKey::Expansion => format!("¿Cuánto se dilata el aislamiento por kelvin, como mínimo y como máximo? Ramal {of}."),
        FactKey::Permittivity => format!("¿Cuál es la permitividad relativa del aislamiento? Ramal {of}."),
        FactKey::ShieldPapers => format!("¿De qué metal es la pantalla metálica, y hasta qué temperatura puede llegar en un cortocircuito? Ramal {of}."),
        FactKey::ShieldMade => format!("¿Cómo está hecha la pantalla metálica: número, ancho, espesor, traslape? Ramal {of}."),
        FactKey::CablePapers => format!("¿Entre qué diámetros sobre sus capas está el cable? La tabla no tiene una fila para él: ramal {of}."),
        FactKey::CableHeat => format!("¿Cuáles son la resistividad térmica y la capacidad calorífica del aislamiento y de la cubierta? Ramal {of}."),
        FactKey::BareBore => format!("¿Puede el interior del cuerpo quedar sobre aislamiento descubierto desde el extremo de {of} hasta el borde de la pantalla del aislamiento, o debe llegar a ese borde?"),
        FactKey::Bondings => format!("¿Qué formas de conectar la pantalla metálica de un lado a otro permite {of}?"),
        FactKey::Inside => format!("¿Qué hay dentro de {of}: dónde a lo largo de su eje y con qué diámetros están el electrodo, el deflector y el exterior, cómo están redondeadas sus esquinas, qué permitividad tiene el aislamiento, y cómo queda sobre el borde de la pantalla del aislamiento? O corte uno de este lote y mídalo."),
        FactKey::Taper => format!("¿Qué hay dentro del tapón cónico de {of}: cono, película, electrodo, deflector, exterior, y la permitividad de su aislamiento?"),
        FactKey::AdapterPermittivity => format!("¿Cuál es la permitividad relativa de {of}?"),
        FactKey::Rubber => format!("¿Qué diámetros interior y exterior tiene {of} cuando no hay nada dentro, qué ley y qué módulos describen su goma, a qué diámetro se guarda expandido, y qué parte de ese estiramiento queda? O mida uno nuevo de este lote."),
        FactKey::RubberHeat => format!("¿Cómo cambian por kelvin las longitudes y la rigidez de la goma de {of}, desde la temperatura más baja del lugar hasta la más alta del conductor?"),
        FactKey::Shelf => format!("¿Por cuánto tiempo, contado desde qué día, y entre qué temperaturas se puede guardar {of}? Una fecha en la etiqueta basta para su edad."),
        FactKey::Range => format!("¿Entre qué diámetros, sobre qué capa y a qué temperatura sirve {of}?"),
        FactKey::Link => format!("¿A qué distancia está esto del conector o de un corte? Ninguna ficha de las piezas elegidas lo dice: {of}."),
        FactKey::ParkedLength => format!("¿Qué longitud tiene {of} mientras está estacionado?"),
        FactKey::BendKeepOff => format!("¿Cuánto cable recto pide {of} más allá de su extremo?"),
        FactKey::Mouths => format!("¿Cuántos ramales recibe {of}?"),
        FactKey::ConnectorLength => format!("¿Qué longitud de conector admite {of}, y cuánto debe traslapar su electrodo sobre el aislamiento?"),
        FactKey::ConnectorDiameter => format!("¿Entre qué diámetros puede estar un conector dentro de {of}?"),
        FactKey::Withstands => format!("¿Qué corriente puede pasar por {of} en un cortocircuito, y por cuánto tiempo?"),
        FactKey::FaultGreatest => format!("¿Hasta qué temperatura puede llegar el conductor dentro de {of} en un cortocircuito?"),
        FactKey::ServiceGreatest => format!("¿Qué temperatura puede tener el conductor dentro de {of} de forma continua, y en una emergencia?"),
        FactKey::ContactGreatest => format!("¿Qué resistencia puede tener la conexión de {of}?"),
        FactKey::PassesSeal => format!("¿Sale algo de {of} por debajo del sello, y está ese trecho bloqueado contra el agua?"),
        FactKey::TakesLead => format!("¿Puede salir una trenza o un cable de conexión por debajo de {of}?"),
        FactKey::Jackets => format!("¿Sobre qué estado de la cubierta puede cerrar {of}?"),
        FactKey::Overlap => format!("¿Cuánto debe traslapar {of} sobre la cubierta?"),
        FactKey::AdapterEnds => format!("¿Desde qué borde se coloca {of}, a qué distancia de él, y qué longitud tiene sobre el cable?"),
        FactKey::ShieldContact => format!("¿A qué distancia del borde de la pantalla metálica empieza el contacto de {of}, y qué longitud tiene?"),
        FactKey::SealStart => format!("¿Qué longitud tiene {of} una vez cerrado, desde su extremo exterior hasta su extremo interior sobre el cuerpo?"),
        FactKey::BodyOverlap => format!("¿Cuánto debe traslapar {of} sobre el extremo del cuerpo?"),
        FactKey::SealLength => format!("¿Qué longitud tiene {of} como mínimo una vez cerrado sobre todo el empalme, y cuánto debe traslapar sobre cada cubierta?"),
        FactKey::ConsumableMetals => format!("¿Para qué metales es {of}?"),
        FactKey::BodyHeat => format!("¿Cuáles son la resistividad térmica y la capacidad calorífica de todo lo que hay dentro de {of}, y qué lo llena desde su interior hasta su exterior?"),
        FactKey::AdapterHeat => format!("¿Cuáles son la resistividad térmica y la capacidad calorífica de {of}?"),
        FactKey::SealHeat => format!("¿Con qué espesor queda {of} sobre el empalme, cubre el cuerpo, y cuáles son su resistividad térmica y su capacidad calorífica?"),
        FactKey::ConnectorHeat => format!("¿De qué metal es {of}, y cuál es su resistencia máxima una vez hecho, comparada con la de igual longitud de conductor?"),
        FactKey::RowChecked => format!("¿Quién, aparte de quien la escribió, comparó la ficha con su documento, y qué día? El ingeniero del propietario o el jefe de cuadrilla puede nombrar a alguien: {of}."),
        FactKey::PaperCurrent => format!("¿Sigue vigente el día del trabajo el documento del que viene la ficha, y quién lo vio? El ingeniero del propietario o el jefe de cuadrilla puede mirarlo: {of}."),
        FactKey::BusHeat => format!("¿Cuál es la resistencia máxima entre dos puertos de {of}, incluidos los contactos de los cuerpos?"),
    }
}
