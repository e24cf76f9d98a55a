//! Sentences about the pressure of a part.

use super::noun::{of_the, the};
use super::{store, word};
use crate::{Tongue, shown};
use jointwright_joint::said::{
    HeatFact, Oldest, On, PlaceEnds, Pressing, PressureBench, PressureDone, PressureHeat,
    PressureHint, PressureLine, PressureRuled, PressureSaid, PressureSeat, PressureVerdict,
    RubberSaid, Sits, TakesToday, TooLittle, WarmthSaid, Wording,
};

pub(super) fn say(tongue: Tongue, said: &PressureSaid) -> String {
    match said {
        PressureSaid::What(of) => what(*of).to_owned(),
        PressureSaid::On(of) => on(tongue, of),
        PressureSaid::Warmth(of) => warmth(*of),
        PressureSaid::Oldest(of) => oldest(*of),
        PressureSaid::Hint(of) => hint(*of).to_owned(),
        PressureSaid::Line(said) => line(tongue, said),
        PressureSaid::Ends { is_free } => if *is_free { "libres" } else { "largo fijo" }.to_owned(),
        PressureSaid::Ruled(said) => ruled(tongue, said),
        PressureSaid::Seat(said) => seat(tongue, said),
        PressureSaid::Heat(said) => heat(said),
        PressureSaid::Bench(said) => bench(tongue, said),
        PressureSaid::Store(said) => store::say(said),
        PressureSaid::Rubber(said) => rubber(said),
        PressureSaid::AskedButNotSaid { what, kpa, word } => format!(
            "{}: se piden {kpa:.0} kPa ({}), y no se puede decir su presión en las temperaturas de este empalme",
            tongue.say(what),
            word::say(tongue, word)
        ),
        PressureSaid::LeastAskedButNotSaid { word } => format!(
            "se pide una presión mínima ({}), y no se puede decir la presión en las temperaturas de este empalme",
            word::say(tongue, word)
        ),
    }
}

fn what(what: Pressing) -> &'static str {
    match what {
        Pressing::Pressure => "presión",
        Pressing::Stretch => "estiramiento del interior",
        Pressing::Squeeze => "apriete",
        Pressing::AtScreenEdge => "presión en el borde de la pantalla",
        Pressing::RangeToday => "rango de hoy",
    }
}

pub(super) fn on(tongue: Tongue, on: &On) -> String {
    match on {
        On::Layer(layer) => tongue.layer(*layer).to_owned(),
        On::Adapter(part) => format!("adaptador {part}"),
    }
}

fn warmth(at: WarmthSaid) -> String {
    if at.body_degc == at.cable_degc {
        format!("todo a {:.0} degC", at.body_degc)
    } else {
        format!(
            "cable a {:.0} degC, goma a {:.0} degC",
            at.cable_degc, at.body_degc
        )
    }
}

fn oldest(oldest: Oldest) -> String {
    let Oldest { months, degc } = oldest;
    format!("después de {months} meses a {degc} degC en el almacén")
}

/// Words about the oldest kit, after a text; empty if there is no oldest kit.
fn with_oldest(before: &str, of: Option<Oldest>) -> String {
    of.map_or(String::new(), |of| format!("{before}{}", oldest(of)))
}

fn hint(hint: PressureHint) -> &'static str {
    match hint {
        PressureHint::UsedUp => "Pare. No la use en este ramal. Apártela, marcada, y tome otra.",
        PressureHint::NotThisLeg => {
            "Pare. No la use en este ramal. Mida otra vez; si se confirma, este ramal necesita otra pieza."
        }
        PressureHint::PartTooLarge => {
            "Pare: la pieza es demasiado grande para este ramal. No engrose el cable para que ajuste. Mida otra vez; si se confirma, este ramal necesita otra pieza."
        }
        PressureHint::PartTooSmall => {
            "Pare: la pieza es demasiado pequeña para este ramal. No la fuerce. Mida otra vez; si se confirma, este ramal necesita otra pieza."
        }
        PressureHint::SealTooLarge => {
            "Pare: el sello es demasiado grande para esta cubierta. Tome uno cuyo rango la incluya; no engrose la cubierta, salvo que las instrucciones del sello digan cómo."
        }
        PressureHint::EngineerDecides => {
            "Pare y llame: decide el ingeniero. No rellene ni vende el borde para que ajuste."
        }
        PressureHint::ReadFour => "Lea cuatro diámetros alrededor del cable, con un calibrador.",
    }
}

fn sits(tongue: Tongue, sits: &Sits) -> String {
    format!(
        "{}, {} de {} sobre {}",
        tongue.subject(&sits.subject),
        what(sits.what),
        sits.part,
        the(&on(tongue, &sits.on))
    )
}

fn ruled(tongue: Tongue, said: &PressureRuled) -> String {
    match said {
        PressureRuled::AgainstWorst(of) => format!(
            "{}, frente a lo peor que permiten sus instrucciones",
            sits(tongue, of)
        ),
        PressureRuled::TimesWorst {
            sits: of,
            ratio,
            least_mm,
            oldest,
            warmth: at,
        } => format!(
            "{}: {ratio:.2} veces lo peor que permiten sus instrucciones, {least_mm:.1} mm{}{}",
            sits(tongue, of),
            with_oldest(", ", *oldest),
            at.map_or(String::new(), |at| format!("; {}", warmth(at)))
        ),
        PressureRuled::AtWarmth {
            sits: of,
            warmth: at,
        } => format!("{}, {}", sits(tongue, of), at.map_or(String::new(), warmth)),
        PressureRuled::OverRelaxed(of) => format!("{}, frente a su interior relajado", sits(tongue, of)),
        PressureRuled::SealWouldNotTouch { part, least } => format!(
            "según su propia ficha, {part} ni siquiera tocaría la cubierta más delgada que permite su documento, {}",
            tongue.read(*least)
        ),
        PressureRuled::LargerThanBore { subject, part } => format!(
            "{}, cubierta mayor que el interior de {part}",
            tongue.subject(subject)
        ),
        PressureRuled::RangeToday {
            subject,
            part,
            on: of,
        } => format!(
            "{}, {part} sobre {}, rango que este kit admite hoy",
            tongue.subject(subject),
            the(&on(tongue, of))
        ),
        PressureRuled::NothingIsLeft => "no queda nada".to_owned(),
        PressureRuled::NoRange => "sin rango".to_owned(),
        PressureRuled::PastItsDate => "pasada de fecha".to_owned(),
        PressureRuled::WithinItsDate => "dentro de su fecha".to_owned(),
        PressureRuled::ItsDate => "su fecha".to_owned(),
        PressureRuled::OverTemperatures(of) => {
            format!("{} en las temperaturas de este empalme", what(*of))
        }
        PressureRuled::NothingOfPast => {
            "no se calcula nada de una pieza que pasó su fecha".to_owned()
        }
        PressureRuled::NotReadAround => "una cinta, o menos de cuatro diámetros alrededor del cable, no dicen nada de su parte más delgada ni de la más gruesa".to_owned(),
        PressureRuled::DoesNotTouch => "no toca".to_owned(),
        PressureRuled::PressedOn => "apretada".to_owned(),
        PressureRuled::WhatDoesNotTouch => "lo que no toca no asienta".to_owned(),
    }
}

fn seat(tongue: Tongue, said: &PressureSeat) -> String {
    match said {
        PressureSeat::Loose {
            bore_mm,
            on: of,
            seat_mm,
        } => format!(
            "no toca: su interior mide hoy {bore_mm:.1} mm, {} {seat_mm:.1} mm",
            the(&on(tongue, of))
        ),
        PressureSeat::RelaxedNotKnown { part } => {
            format!("no se sabe cómo es {part} sin nada dentro")
        }
        PressureSeat::AskRelaxed { part } => format!(
            "¿Qué diámetros interior y exterior tiene {part} sin nada dentro, y a qué temperatura? Pregunte a su fabricante, o mida una nueva de este lote que lleve un día fuera de su soporte."
        ),
        PressureSeat::AskLaw { part } => format!(
            "¿Qué ley y qué módulos describen la goma de {part}, y cómo cambian con la temperatura, ellos y sus longitudes?"
        ),
        PressureSeat::AskHold { part } => format!(
            "¿A qué diámetro se mantiene abierta {part} en el almacén, y qué parte de ese estiramiento queda, después de cuánto tiempo y a qué temperatura?"
        ),
        PressureSeat::OutsideNotKnown { part } => {
            format!("no se sabe el diámetro exterior de {part} sin nada dentro")
        }
        PressureSeat::AskOutside { part } => {
            format!("¿Cuál es el diámetro exterior de {part} sin nada dentro?")
        }
        PressureSeat::AdapterOutsideNotKnown { part } => format!(
            "el cable debajo de {part} puede estar fuera de su rango, y no se indican los diámetros de la pieza sin nada dentro: no se sabe qué grueso tiene allí"
        ),
        PressureSeat::EndsBefore { part, by } => format!(
            "{part} puede terminar {} antes del borde de la pantalla del aislamiento: no se calcula cómo asienta allí el interior del cuerpo",
            tongue.read(*by)
        ),
        PressureSeat::ReadingWithoutDegc { leg, layer } => format!(
            "una lectura del ramal {leg} sobre {} no tiene temperatura, y el rango no dice a qué temperatura vale",
            the(tongue.layer(*layer))
        ),
        PressureSeat::AskDegcOfReading { leg, layer } => format!(
            "¿A qué temperatura se leyó el ramal {leg} sobre {}?",
            the(tongue.layer(*layer))
        ),
        PressureSeat::ReadOutsidePlace {
            leg,
            layer,
            read_degc,
            least_degc,
            greatest_degc,
        } => format!(
            "el ramal {leg} se leyó sobre {} a {read_degc} degC, fuera de los {least_degc} a {greatest_degc} degC del lugar, y el rango no dice a qué temperatura vale",
            the(tongue.layer(*layer))
        ),
        PressureSeat::AskDegcOfRange { layer } => format!(
            "¿A qué temperatura vale el rango sobre {}? Si no se sabe, lea otra vez a la temperatura del lugar.",
            the(tongue.layer(*layer))
        ),
        PressureSeat::PlaceNotStated {
            leg,
            layer,
            read_degc,
            missing,
        } => not_stated(leg, &the(tongue.layer(*layer)), *read_degc, *missing),
        PressureSeat::AskPlace(missing) => match missing {
            PlaceEnds::Lowest => "¿Cuál es la temperatura más baja del lugar?".to_owned(),
            PlaceEnds::Highest => "¿Cuál es la temperatura más alta del lugar?".to_owned(),
            PlaceEnds::Both => {
                "¿Cuáles son las temperaturas más baja y más alta del lugar?".to_owned()
            }
        },
    }
}

fn not_stated(leg: &str, layer: &str, read_degc: f64, missing: PlaceEnds) -> String {
    let missing = match missing {
        PlaceEnds::Lowest => "no se dice la temperatura más baja del lugar",
        PlaceEnds::Highest => "no se dice la temperatura más alta del lugar",
        PlaceEnds::Both => "no se dicen las temperaturas más baja y más alta del lugar",
    };
    format!(
        "el ramal {leg} se leyó sobre {layer} a {read_degc} degC; {missing}, y el rango no dice a qué temperatura vale"
    )
}

fn heat(said: &PressureHeat) -> String {
    match said {
        PressureHeat::NotKnown { missing } => {
            let missing: Vec<&str> = missing.iter().map(|of| heat_fact(*of)).collect();
            format!("no se sabe: {}", missing.join(", "))
        }
        PressureHeat::AskLowestAtPlace => "¿Cuál es la temperatura más baja del lugar?".to_owned(),
        PressureHeat::AskHighestOfConductor => {
            "¿Cuál es la temperatura más alta del conductor en servicio, emergencias incluidas?"
                .to_owned()
        }
        PressureHeat::AskDegcOfLeg { leg } => format!("¿A qué temperatura se leyó el ramal {leg}?"),
        PressureHeat::AskCableExpansion { leg } => format!(
            "¿Cuánto se dilata por kelvin el aislamiento del cable del ramal {leg}? Pregunte a su fabricante."
        ),
        PressureHeat::AskRubberExpansion { part } => {
            format!("¿Cuánto se dilata por kelvin la goma de {part}? Pregunte a su fabricante.")
        }
        PressureHeat::AskRubberStiffness { part } => format!(
            "¿Cómo cambia por kelvin la rigidez de la goma de {part}? Pregunte a su fabricante."
        ),
        PressureHeat::JacketExpansionNotKnown => {
            "no se sabe cuánto se dilata la cubierta".to_owned()
        }
        PressureHeat::LowestAboveHighest {
            lowest_degc,
            highest_degc,
        } => format!(
            "la temperatura más baja del lugar, {lowest_degc} degC, está por encima de la más alta del conductor, {highest_degc} degC"
        ),
        PressureHeat::SoftAt { part, degc } => {
            format!("según su ficha, {part} no tendría ninguna rigidez a {degc:.0} degC")
        }
        PressureHeat::AskStiffness {
            part,
            from_degc,
            to_degc,
        } => format!("¿Qué rigidez tiene la goma de {part} entre {from_degc} y {to_degc} degC?"),
    }
}

fn heat_fact(fact: HeatFact) -> &'static str {
    match fact {
        HeatFact::LowestAtPlace => "la temperatura más baja del lugar",
        HeatFact::HighestOfConductor => "la temperatura más alta del conductor",
        HeatFact::OfReadings => "la temperatura de las lecturas",
        HeatFact::CableExpansion => "la dilatación del aislamiento del cable",
        HeatFact::RubberExpansion => "la dilatación de la goma",
        HeatFact::RubberStiffness => "cómo cambia la rigidez de la goma con la temperatura",
    }
}

fn bench(tongue: Tongue, said: &PressureBench) -> String {
    match said {
        PressureBench::NoScreenUnderIt => {
            "debajo no hay ningún borde de la pantalla del aislamiento".to_owned()
        }
        PressureBench::MayFall => "con C1 menor que un cuarto de C2 puede apretar menos cuanto más se estira, y de tales constantes no se concluye nada".to_owned(),
        PressureBench::HeldOpen { diameter } => format!("abierta a {diameter}"),
        PressureBench::OnDiameter { diameter_mm, why } => {
            format!("sobre un diámetro de {diameter_mm:.1} mm, {}", rubber(why))
        }
        PressureBench::NoRubberFrom { from_mm, to_mm } => format!(
            "ninguna goma suya toca el cable entre {from_mm:.1} y {to_mm:.1} mm de su origen"
        ),
        PressureBench::NoSliceThere => "ningún tramo suyo está allí".to_owned(),
        PressureBench::NoStiffnessLeft { oldest } => format!(
            "según su propia ficha no le queda ninguna rigidez {}",
            with_oldest("", *oldest)
        ),
        PressureBench::WouldNotTouch {
            on: of,
            least_mm,
            oldest,
        } => format!(
            "según su propia ficha ni siquiera tocaría lo más delgado {} que permite su documento, {least_mm:.1} mm{}",
            of_the(&on(tongue, of)),
            with_oldest(", ", *oldest)
        ),
        PressureBench::WallIsNoTube { part } => {
            format!("la pared de {part} no es la de un tubo")
        }
        PressureBench::NothingOnCable { part } => {
            format!("ninguna parte del interior de {part} toca el cable")
        }
        PressureBench::ReachesInside {
            reaches_mm,
            stated_mm,
        } => format!(
            "llega a un diámetro de {reaches_mm:.1} mm, menor que los {stated_mm:.1} mm para los que se declara"
        ),
        PressureBench::NothingBetween {
            from_mm,
            to_mm,
            along_mm,
        } => format!(
            "no hay nada entre los diámetros {from_mm:.1} y {to_mm:.1} mm, a {along_mm:.1} mm de su origen"
        ),
    }
}

fn rubber(said: &RubberSaid) -> String {
    match said {
        RubberSaid::NoTube { bore_mm } => {
            format!("los radios del tubo no crecen desde {bore_mm} mm hacia afuera")
        }
        RubberSaid::NoStiffness => "las constantes de la goma no le dan rigidez".to_owned(),
        RubberSaid::NoCylinder => "el cilindro no tiene radio".to_owned(),
        RubberSaid::BeyondLimit { excess, most } => format!(
            "la goma se estira más allá del límite de su ley: su primer invariante pasa de 3 en {excess:.3}, lo más es {most:.3}"
        ),
        RubberSaid::NoBalance => {
            "ningún estiramiento axial anula la fuerza axial del tubo".to_owned()
        }
        RubberSaid::NoRadius { greatest_mm } => {
            format!("ningún cilindro de hasta {greatest_mm} mm aprieta tanto")
        }
    }
}

/// Fit of the parts of an end, in one line.
fn line(tongue: Tongue, said: &PressureLine) -> String {
    match said {
        PressureLine::NoRange { why } => format!("sin rango: {}", tongue.say(why)),
        PressureLine::Loose { why } => format!("SUELTO: {}", tongue.say(why)),
        PressureLine::NotJudged { why } => format!("sin juzgar: {}", tongue.say(why)),
        PressureLine::Done(said) => done(tongue, said),
    }
}

fn done(tongue: Tongue, said: &PressureDone) -> String {
    let read = |at: Option<WarmthSaid>| {
        at.map_or(
            "según las lecturas, sin las temperaturas del empalme".to_owned(),
            warmth,
        )
    };
    let error = match said.read_error_ratio {
        Some(error) => format!("más o menos {}", shown(error)),
        None => "y con la incertidumbre de su interior puede que no toque".to_owned(),
    };
    let pressure = said.pressure.map_or(String::new(), |least| {
        format!(
            " {} kPa como mínimo, más o menos {}, {}.",
            shown(least.kpa),
            shown(least.error_kpa),
            read(least.warmth)
        )
    });
    format!(
        "{}{} {} sobre {}: {} veces la menor presión que permite su documento (sobre {:.1} mm{}), {} según las lecturas, {error}, lo peor con {}, {}.{pressure}{} Límite: {}",
        said.verdict
            .as_ref()
            .map_or(String::new(), |said| verdict(tongue, said)),
        tongue.part(said.kind),
        said.part,
        the(&on(tongue, &said.on)),
        shown(said.least_ratio),
        said.allowed_mm,
        with_oldest(", con un kit ", said.oldest),
        shown(said.read_ratio),
        read(said.warmth),
        if said.is_ratio_free {
            "extremos libres"
        } else {
            "largo sujeto"
        },
        said.today.map_or(String::new(), today),
        word::say(tongue, &said.word)
    )
}

fn today(takes: TakesToday) -> String {
    match takes {
        TakesToday::Diameters {
            least_mm,
            greatest_mm,
        } => format!(" Hoy recibe de {least_mm:.1} a {greatest_mm:.1} mm."),
        TakesToday::None => " Hoy no recibe ningún diámetro.".to_owned(),
    }
}

/// Verdict before the line.
fn verdict(tongue: Tongue, said: &PressureVerdict) -> String {
    match said {
        PressureVerdict::TooLittle(all) => {
            let all: Vec<String> = all.iter().map(|one| too_little(tongue, one)).collect();
            format!("MUY POCA ({}): ", all.join("; "))
        }
        PressureVerdict::OutOfRange => "FUERA DE SU RANGO: ".to_owned(),
        PressureVerdict::TemperaturesNotKnown => {
            "SIN JUZGAR (no se conocen las temperaturas): ".to_owned()
        }
        PressureVerdict::ThinnestNotRead => {
            "SIN JUZGAR (no se midió la parte más delgada): ".to_owned()
        }
        PressureVerdict::WithinError => "SIN JUZGAR (dentro de su error): ".to_owned(),
    }
}

fn too_little(tongue: Tongue, said: &TooLittle) -> String {
    match said {
        TooLittle::Paper => "comparada con su documento".to_owned(),
        TooLittle::Asked { kpa, word } => format!(
            "{} kPa se piden según {}",
            shown(*kpa),
            word::say(tongue, word)
        ),
    }
}
