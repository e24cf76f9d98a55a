//! Sentences about the readings of a leg, beside ranges of parts and the cable's papers.

use super::noun;
use crate::Tongue;
use jointwright_joint::cable::Layer;
use jointwright_joint::said::{
    DiameterSaid, MeasuredSaid, NearestSaid, PapersSaid, RangeSaid, ReadingLayerSaid, SurfaceSaid,
    TableSaid, UnlikeSaid, Wording,
};

pub(super) fn say(tongue: Tongue, said: &MeasuredSaid) -> String {
    match said {
        MeasuredSaid::Range(said) => range(tongue, said),
        MeasuredSaid::Diameter(said) => diameter(tongue, said),
        MeasuredSaid::Reading(said) => reading(tongue, said),
        MeasuredSaid::Papers(said) => papers(tongue, said),
        MeasuredSaid::Unlike(said) => unlike(tongue, *said),
        MeasuredSaid::Surface(said) => surface(said),
        MeasuredSaid::Table(said) => table(tongue, said),
    }
}

/// A layer with its article.
fn the(tongue: Tongue, layer: Layer) -> String {
    noun::the(tongue.layer(layer))
}

fn range(tongue: Tongue, said: &RangeSaid) -> String {
    match said {
        RangeSaid::MeasureOverItself { layer } => format!(
            "Mida con un calibrador directamente sobre {}, cuatro diámetros a su alrededor.",
            the(tongue, *layer)
        ),
        RangeSaid::ThinnestNotRead => "una cinta, o menos de cuatro diámetros alrededor del cable, no dicen nada de su parte más delgada".to_owned(),
        RangeSaid::ReadFourOver { layer } => format!(
            "Lea con un calibrador cuatro diámetros alrededor del cable sobre {}.",
            the(tongue, *layer)
        ),
        RangeSaid::OverFor {
            subject,
            layer,
            at,
            part,
        } => format!(
            "{} sobre {}, para `{at}` de {part}",
            tongue.subject(subject),
            the(tongue, *layer)
        ),
        RangeSaid::TooLarge { part, by } => format!(
            "Pare: {part} es {} demasiado grande para este ramal. No lo haga entrar. Mida otra vez; si se mantiene, este ramal necesita otra pieza en cuyo rango esté.",
            tongue.read(*by)
        ),
        RangeSaid::TooSmall { part, by } => format!(
            "Pare: {part} es {} demasiado pequeño para este ramal. No lo haga entrar. Mida otra vez; si se mantiene, este ramal necesita otra pieza en cuyo rango esté.",
            tongue.read(*by)
        ),
        RangeSaid::SidesDiffer { body, leg } => format!(
            "los dos lados de {body} son distintos, y el trabajo no dice por cuál entra el ramal {leg}"
        ),
        RangeSaid::SaySide { sides } => {
            let sides: Vec<String> = sides.iter().map(|side| format!("`body_side = \"{side}\"`")).collect();
            format!("Dígalo en el ramal: {}.", tongue.or(&sides))
        }
        RangeSaid::NoBoreRange { row } => {
            format!("la ficha {row} no da ningún rango para su orificio")
        }
        RangeSaid::NoMouthRange { row } => {
            format!("la ficha {row} no da ningún rango para su boca")
        }
        RangeSaid::OvalityNotLimited => "ni las instrucciones ni el propietario limitan cuánto puede apartarse de la redondez".to_owned(),
        RangeSaid::OvalityNotRead => "se necesitan cuatro diámetros alrededor del cable; una cinta, o menos diámetros, no dicen nada de la redondez".to_owned(),
        RangeSaid::ReadFour => {
            "Lea con un calibrador cuatro diámetros alrededor del cable.".to_owned()
        }
        RangeSaid::Ovality { subject } => {
            format!("{}, ovalidad del aislamiento", tongue.subject(subject))
        }
        RangeSaid::OutOfRound => "Pare y llame: el cable no es redondo.".to_owned(),
    }
}

fn diameter(tongue: Tongue, said: &DiameterSaid) -> String {
    match said {
        DiameterSaid::NotMeasuredOver { layer } => {
            format!("nadie lo ha medido sobre {}", the(tongue, *layer))
        }
        DiameterSaid::MeasuredOverScreen { read, range } => format!(
            "se midió sobre {}, pero el rango es sobre {}: la pantalla hace mayor la lectura",
            the(tongue, *read),
            the(tongue, *range)
        ),
        DiameterSaid::ReadingHasNoTemperature { at_degc } => {
            format!("el rango se indica a {at_degc} degC, pero una lectura no tiene temperatura")
        }
        DiameterSaid::ExpansionNotKnown {
            at_degc,
            coldest_degc,
            warmest_degc,
        } => format!(
            "el rango se indica a {at_degc} degC y el cable se leyó a {coldest_degc} a {warmest_degc} degC; no se conoce la dilatación de esta capa"
        ),
        DiameterSaid::ExpansionNotStated {
            at_degc,
            coldest_degc,
            warmest_degc,
        } => format!(
            "el rango se indica a {at_degc} degC y el cable se leyó a {coldest_degc} a {warmest_degc} degC, pero nadie indica su dilatación"
        ),
        DiameterSaid::ExpansionTurnsItRound => "su dilatación invierte la lectura".to_owned(),
    }
}

fn reading(tongue: Tongue, said: &ReadingLayerSaid) -> String {
    match said {
        ReadingLayerSaid::DiameterOnPapers { layer } => format!(
            "diámetro sobre {} del cable en sus documentos",
            the(tongue, *layer)
        ),
        ReadingLayerSaid::LikeAnother { named, like } => format!(
            "la lectura sobre {0} es como {1} de este cable, no como su {2}",
            the(tongue, *named),
            the(tongue, *like),
            tongue.layer(*named)
        ),
        ReadingLayerSaid::RemoveNothing => "No quite nada solo por este aviso. Se leyó sobre otra capa, o los documentos nombran otro cable u otro nivel, o dos ramales están cambiados: mire sobre qué capa estuvo el instrumento, lea lo impreso en la cubierta, mida otra vez; si se mantiene, llame.".to_owned(),
        ReadingLayerSaid::LikeEither { named, like, error } => format!(
            "la lectura sobre {0} no es como {0} de este cable; con un error de {3}, que puede tener el instrumento, es como su {1} y como su {2}",
            the(tongue, *named),
            tongue.layer(*named),
            tongue.layer(*like),
            error.length()
        ),
        ReadingLayerSaid::ReadAgain { layer } => format!(
            "Lea otra vez sobre {} con un instrumento de menor error, y mire sobre qué capa está.",
            the(tongue, *layer)
        ),
    }
}

/// Last words of every sentence on likeness.
const NEVER: &str =
    "Esto dice de qué está hecho el cable, nunca qué circuito es ni si está sin tensión.";

fn papers(tongue: Tongue, said: &PapersSaid) -> String {
    match said {
        PapersSaid::LikePapersOnly => format!(
            "Las medidas del ramal coinciden con sus documentos, y con ninguna otra construcción de la tabla. {NEVER}"
        ),
        PapersSaid::LikeOthersAlso { others } => format!(
            "Las medidas del ramal coinciden con sus documentos, pero también con {}. {NEVER}",
            nearest(tongue, others)
        ),
        PapersSaid::LikeOthersNotPapers { unlike: of, others } => format!(
            "Las medidas del ramal no coinciden con sus documentos: {}. Coinciden con {}. {NEVER}",
            unlike(tongue, *of),
            nearest(tongue, others)
        ),
        PapersSaid::LikeNone { unlike: of } => format!(
            "Las medidas del ramal no coinciden con sus documentos ni con ninguna otra construcción de la tabla. De sus documentos: {}. Mida otra vez, y vea que cada lectura esté sobre la capa que dice ({}, {}). {NEVER}",
            unlike(tongue, *of),
            tongue.layer(Layer::Insulation),
            tongue.layer(Layer::InsulationScreen)
        ),
        PapersSaid::LikenessOpen { why } => format!(
            "Las lecturas no dicen si el ramal mide como sus documentos: {}. {NEVER}",
            tongue.say(why)
        ),
        PapersSaid::NoDiameterRead => {
            "no se midió ningún diámetro debajo de la capa metálica".to_owned()
        }
        PapersSaid::Fits => "coincide".to_owned(),
        PapersSaid::FitsOthersAlso => "coincide también con otros".to_owned(),
        PapersSaid::FitsOthersNotPapers => "coincide con otros, no con sus documentos".to_owned(),
        PapersSaid::FitsNone => "no coincide con ninguno de la tabla".to_owned(),
        PapersSaid::NotEnough => "lecturas insuficientes".to_owned(),
        PapersSaid::FitsItsPapers => "coincide con sus documentos".to_owned(),
        PapersSaid::NotAsPapersSay => "no es como dicen sus documentos".to_owned(),
        PapersSaid::AsJobStates => {
            "los documentos del cable, como los indica el trabajo".to_owned()
        }
        PapersSaid::NotThisCable => {
            "Pare y llame: este no es el cable de los documentos.".to_owned()
        }
        PapersSaid::TableConfirmed { edition, source } => {
            format!("tabla de cables, edición {edition}, confirmada por {source}")
        }
        PapersSaid::TableFromMemory { key, source } => {
            format!("en parte de memoria (clave `{key}`): {source}")
        }
        PapersSaid::ConfirmTable { key } => confirm(key),
        PapersSaid::SayWhichAndConfirm { key } => format!(
            "Pare y llame. Una persona nombrada dice qué cable es: lea lo impreso en su cubierta, y dé al trabajo ese cable con los diámetros de sus propios documentos. {}",
            confirm(key)
        ),
    }
}

fn confirm(key: &str) -> String {
    format!(
        "El propietario confirma la tabla de cables con una fila `[[confirmation]]` que tenga `key = \"{key}\"`: vea `docs/howto/answer-what-is-asked.md`."
    )
}

fn nearest(tongue: Tongue, of: &NearestSaid) -> String {
    let each = of.nearest.iter().map(|near| {
        format!(
            "{}, {} (a {:.1} veces el error de las lecturas)",
            tongue.conductor(near.conductor),
            tongue.or(&near.walls),
            near.off_ratio
        )
    });
    let named = each.collect::<Vec<_>>().join("; ");
    if of.n_others <= of.nearest.len() {
        return named;
    }
    let n = of.n_others;
    format!("otras {n} construcciones que las lecturas no descartan, las más cercanas: {named}")
}

fn unlike(tongue: Tongue, said: UnlikeSaid) -> String {
    match said {
        UnlikeSaid::Metal { seen, papers } => format!(
            "su conductor es de {}, según sus documentos de {}",
            tongue.metal(seen),
            tongue.metal(papers)
        ),
        UnlikeSaid::Stranding { seen, papers } => format!(
            "su conductor es {}, según sus documentos {}",
            tongue.stranding(seen),
            tongue.stranding(papers)
        ),
        UnlikeSaid::Strands { n_strands, papers } => format!(
            "se contaron {n_strands} hebras, según sus documentos el conductor es {}",
            tongue.stranding(papers)
        ),
        UnlikeSaid::Shield { seen, papers } => format!(
            "su pantalla es de {}, según sus documentos de {}",
            noun::shield(seen),
            noun::shield(papers)
        ),
        UnlikeSaid::Elements {
            n_counted,
            n_papers,
        } => format!(
            "se contaron {n_counted} alambres o cintas planas de su pantalla, según sus documentos son {n_papers}"
        ),
        UnlikeSaid::ElementsOfTape { n_counted, papers } => format!(
            "se contaron {n_counted} alambres o cintas planas de su pantalla, según sus documentos es de {}",
            noun::shield(papers)
        ),
        UnlikeSaid::Over {
            layer,
            read,
            papers,
        } => format!(
            "sobre {} se leyó {}, con los errores incluidos, según sus documentos es {}",
            the(tongue, layer),
            tongue.range(read),
            tongue.range(papers)
        ),
    }
}

fn surface(said: &SurfaceSaid) -> String {
    match said {
        SurfaceSaid::NotWritten => "nadie ha anotado cómo está la cubierta donde irá el sello".to_owned(),
        SurfaceSaid::LookAllAround => "Mírela en todo el contorno antes de cortar la cubierta: rayada (`scored`), arrugada (`wrinkled`), con relieve (`embossed`), agrietada (`cracked`), o lisa (`smooth`).".to_owned(),
        SurfaceSaid::NoneNamed { seal } => {
            format!("{seal} no nombra ningún estado de la cubierta sobre el que pueda cerrar")
        }
        SurfaceSaid::AskOnWhich { seal } => {
            format!("¿Sobre qué estado de la cubierta puede cerrar {seal}?")
        }
        SurfaceSaid::DressOrCutBack => "Pare. Arregle la cubierta solo como dicen las instrucciones del sello, o corte hasta donde esté como ellas piden; luego mire otra vez.".to_owned(),
    }
}

fn table(tongue: Tongue, said: &TableSaid) -> String {
    match said {
        TableSaid::NoDiameterRow { size, stranding } => {
            format!("no hay fila para {} {}", size, tongue.stranding(*stranding))
        }
        TableSaid::NoWallRow { wall } => {
            format!("no hay fila de espesor para {}", super::plan::wall(*wall))
        }
        TableSaid::NoResistanceRow { conductor } => {
            format!(
                "no hay fila de resistencia de corriente continua para {}",
                tongue.conductor(*conductor)
            )
        }
        TableSaid::TapeOverlap { overlap_percent } => {
            format!(
                "el traslape de la cinta es {overlap_percent} %, se espera de 0 a menos de 95 %"
            )
        }
    }
}
