//! Sentences about sections.

use super::noun;
use jointwright_joint::catalogue::FieldDuty;
use jointwright_joint::said::{
    Between, Contour, PlugShape, SectionAsk, SectionRow, SectionSaid, SectionShape,
};

pub(super) fn say(said: &SectionSaid) -> String {
    match said {
        SectionSaid::Shape(said) => shape(said),
        SectionSaid::Plug(said) => plug(said),
        SectionSaid::Row(said) => row(said),
        SectionSaid::Ask(said) => ask(said),
    }
}

fn duty(duty: FieldDuty) -> &'static str {
    match duty {
        FieldDuty::Insulation => "aislamiento",
        FieldDuty::Electrode => "electrodo",
        FieldDuty::Deflector => "deflector",
    }
}

fn contour(contour: Contour) -> &'static str {
    match contour {
        Contour::Electrode => "electrodo",
        Contour::Deflector => "deflector",
        Contour::Outside => "exterior",
    }
}

fn between(between: Between) -> &'static str {
    match between {
        Between::Adapter => "adaptador",
        Between::SpreadsTheField => "capa que reparte el campo",
    }
}

fn shape(said: &SectionShape) -> String {
    match said {
        SectionShape::CornerNotRounded {
            along_mm,
            diameter_mm,
            radius_mm,
            takes_mm,
            there_mm,
        } => format!(
            "la esquina a {along_mm:.2} mm de su origen, diámetro {diameter_mm:.2} mm, no se puede redondear con {radius_mm:.2} mm: eso toma {takes_mm:.2} mm de sus lados, y hay {there_mm:.2} mm"
        ),
        SectionShape::RoundedAtEnd { contour: of, at_mm } => format!(
            "el {} está redondeado a {at_mm:.2} mm, donde termina la sección",
            contour(*of)
        ),
        SectionShape::NotReachingEnd { contour: of, at_mm } => format!(
            "el {} no llega a {at_mm:.2} mm, donde termina la sección",
            contour(*of)
        ),
        SectionShape::ScreenNotInside {
            screen_mm,
            insulation_mm,
        } => format!(
            "el diámetro sobre la pantalla del conductor, {screen_mm:.2} mm, no es menor que el diámetro sobre el aislamiento, {insulation_mm:.2} mm"
        ),
        SectionShape::NoRoomOverScreen {
            between: of,
            outside_mm,
            screen_mm,
        } => format!(
            "el exterior {}, {outside_mm:.2} mm, no deja espacio sobre la pantalla, {screen_mm:.2} mm",
            noun::of_the(between(*of))
        ),
        SectionShape::NearJunction { electrode_mm } => format!(
            "el electrodo termina a {electrode_mm:.1} mm de la unión, a menos de dos radios del cuerpo de su eje, donde una sección alrededor de un eje no dice nada"
        ),
        SectionShape::InsulationShort {
            insulation_mm,
            electrode_mm,
        } => format!(
            "el aislamiento termina a {insulation_mm:.1} mm del origen del cuerpo, no bajo el electrodo, que lo deja a {electrode_mm:.1} mm"
        ),
        SectionShape::ScreenAtElectrode {
            first_mm,
            electrode_mm,
        } => format!(
            "la pantalla o el deflector empieza a {first_mm:.1} mm del origen del cuerpo, y el electrodo termina a {electrode_mm:.1} mm"
        ),
        SectionShape::BodyShort { end_mm } => format!(
            "el cuerpo termina a {end_mm:.1} mm de su origen, menos de una pared más allá del talón de su deflector o del borde de la pantalla"
        ),
        SectionShape::NoSection { flaw } => {
            format!("sus dimensiones no forman una sección: {flaw}")
        }
    }
}

fn plug(said: &PlugShape) -> String {
    match said {
        PlugShape::Length { length } => format!("el cono tiene {length} de largo"),
        PlugShape::NotTapered { small, large } => format!(
            "el extremo pequeño del cono, {small}, no es menor que su extremo grande, {large}"
        ),
        PlugShape::StudOutside { stud, small } => {
            format!("el espárrago, {stud}, no cabe dentro del extremo pequeño del cono, {small}")
        }
        PlugShape::FilmThickness { thickness_mm } => {
            format!("la película entre cono y cuerpo tiene {thickness_mm:.3} mm de espesor")
        }
        PlugShape::LiesShort {
            duty: of,
            over_mm,
            least_mm,
        } => format!(
            "el {} toca el interior en {over_mm:.2} mm; menos de {least_mm:.0} mm no forman una sección",
            duty(*of)
        ),
        PlugShape::LittleBetween {
            deflector_mm,
            electrode_mm,
            least_mm,
        } => format!(
            "el deflector deja el interior a {deflector_mm:.1} mm del extremo grande del cono y el electrodo a {electrode_mm:.1} mm; entre ellos hay menos de {least_mm:.0} mm"
        ),
        PlugShape::BodyShort {
            end_mm,
            wall_mm,
            electrode_mm,
        } => format!(
            "el cuerpo termina a {end_mm:.1} mm del extremo grande del cono, menos de su pared, {wall_mm:.1} mm, más allá del extremo redondeado del electrodo a {electrode_mm:.1} mm"
        ),
        PlugShape::NothingOnBore { duty: of } => format!(
            "el {} no toca el interior: su redondeo ocupa toda esa parte",
            duty(*of)
        ),
    }
}

fn row(said: &SectionRow) -> String {
    match said {
        SectionRow::InsideNotKnown { part } => format!("no se sabe qué hay dentro de {part}"),
        SectionRow::InsideNotWhole { part } => {
            format!("no se sabe del todo qué hay dentro de {part}")
        }
        SectionRow::SharpInside { part } => format!("una esquina dentro de {part} no tiene radio"),
        SectionRow::CornersOnBore {
            part,
            region,
            n_corners,
            diameter,
        } => format!(
            "{part}: la región {region} tiene {n_corners} esquinas en el diámetro interior {diameter}; necesita dos, una tras otra"
        ),
        SectionRow::ServesOtherwise {
            part,
            region,
            serves_as_conductor,
            conducts,
        } => format!(
            "{part}: la región {region} {}, y su ficha dice que {}",
            if *serves_as_conductor {
                "sirve de conductor"
            } else {
                "aísla"
            },
            if *conducts { "conduce" } else { "no conduce" }
        ),
        SectionRow::PlugNotKnown { part } => {
            format!("no se conoce el cono en que asienta {part}")
        }
        SectionRow::SharpAroundPlug => "una esquina alrededor del cono no tiene radio".to_owned(),
        SectionRow::AroundPlugNotWhole => {
            "no se sabe del todo qué hay alrededor del cono".to_owned()
        }
        SectionRow::CornersOnCone {
            region,
            n_corners,
            within_mm,
        } => format!(
            "la región {region} tiene {n_corners} esquinas a menos de {within_mm:.2} mm del cono; necesita dos, una tras otra: una en un extremo del cono, otra donde la región deja el interior"
        ),
        SectionRow::Region { region } => format!("la región {region}"),
        SectionRow::BeginsOnBore { found_mm, end_mm } => format!(
            "en el interior empieza a {found_mm:.2} mm del extremo grande del cono; se espera que cubra el extremo del cono a {end_mm:.2} mm"
        ),
        SectionRow::NotReaching { end_mm } => {
            format!("no llega a {end_mm:.1} mm, donde termina la sección")
        }
        SectionRow::OutsideNotReaching { begin_mm } => {
            format!("su exterior no llega a {begin_mm:.1} mm, donde empieza la sección")
        }
    }
}

fn ask(said: &SectionAsk) -> String {
    match said {
        SectionAsk::CornerRadius {
            region,
            along_mm,
            diameter_mm,
        } => format!(
            "¿Con qué radio está redondeada la esquina de {region} a {along_mm:.1} mm de su origen, diámetro {diameter_mm:.1} mm?"
        ),
        SectionAsk::OnWhatDiameter { part } => format!(
            "¿Para qué diámetro sobre el aislamiento se declaran los diámetros interiores de {part}?"
        ),
        SectionAsk::OverEdge { part } => format!(
            "¿Cómo asienta {part} sobre el borde de la pantalla del aislamiento: entre qué radios se corta un borde como pide su documento, en qué longitud antes de él se separa el cuerpo, y qué llena ese hueco durante la vida del empalme?"
        ),
        SectionAsk::WhereLies { part, duty: of } => format!(
            "¿Dónde empieza y termina el {} de {part}, con qué diámetros, y con qué radios están redondeadas sus esquinas?",
            duty(*of)
        ),
        SectionAsk::Permittivity { part } => {
            format!("¿Cuál es la permitividad relativa del aislamiento de {part}?")
        }
        SectionAsk::Inside { part } => format!(
            "¿Sobre un cable de qué diámetro, dónde a lo largo de su eje y con qué diámetros están el electrodo, el deflector y el exterior de {part}, y con qué radios están redondeadas las esquinas de sus partes conductoras? Pregunte a su fabricante, o corte un cuerpo de este lote a lo largo de su eje, ponga una regla al lado y mida cada esquina dos veces."
        ),
        SectionAsk::EdgeRadii { part } => format!(
            "¿Entre qué radios se corta un borde de pantalla como pide el documento de {part}, en qué longitud antes de él se separa el cuerpo del aislamiento, y qué llena ese hueco durante la vida del empalme?"
        ),
        SectionAsk::PlugCornerRadius {
            region,
            along_mm,
            diameter_mm,
        } => format!(
            "¿Con qué radio está redondeada la esquina de la región {region} a {along_mm:.1} mm del extremo grande del cono, diámetro {diameter_mm:.1} mm?"
        ),
        SectionAsk::PlugWhereLies { duty: of } => format!(
            "¿Dónde empieza y termina el {} alrededor del cono, desde el extremo grande del cono, con qué diámetros, y con qué radios están redondeadas sus esquinas? {ASK_MAKER}",
            duty(*of)
        ),
        SectionAsk::PlugPermittivity => {
            "¿Cuál es la permitividad relativa del aislamiento alrededor del cono?".to_owned()
        }
        SectionAsk::PlugSizes { part } => format!(
            "¿Cuáles son los diámetros de los dos extremos del cono en que asienta {part}, su longitud, el diámetro del espárrago que lleva dentro y la permitividad relativa del cono?"
        ),
        SectionAsk::PlugFilm { part } => format!(
            "¿Entre qué espesores está la película que el ajuste deja entre el cono y {part}, y qué la llena durante la vida del empalme?"
        ),
        SectionAsk::PlugInside { part } => format!(
            "¿A qué distancia del extremo grande del cono, y con qué diámetros, están el electrodo, el deflector y el exterior de {part} alrededor del cono, y con qué radios están redondeadas las esquinas de sus partes conductoras? {ASK_MAKER}"
        ),
    }
}

const ASK_MAKER: &str = "Pregunte a su fabricante, o corte un cuerpo de este lote a lo largo del eje del cono, ponga una regla al lado y mida cada esquina dos veces.";
