//! Sentences about a job's duty, its owner's words, and what surrounds the legs.

use crate::Tongue;
use jointwright_joint::said::{
    AroundHint, AroundSaid, JobDutyHint, JobDutySaid, JobWholeSaid, OwnerHint, OwnerSaid, Subject,
};

pub(super) fn say(tongue: Tongue, said: &JobWholeSaid) -> String {
    match said {
        JobWholeSaid::Duty(said) => duty(said),
        JobWholeSaid::DutyHint(hint) => duty_hint(*hint).to_owned(),
        JobWholeSaid::Owner(said) => owner(tongue, said),
        JobWholeSaid::OwnerHint(hint) => owner_hint(tongue, hint),
        JobWholeSaid::Around(said) => around(said),
        JobWholeSaid::AroundHint(hint) => around_hint(*hint).to_owned(),
    }
}

fn duty(said: &JobDutySaid) -> String {
    match said {
        JobDutySaid::HotterThanKnown { degc, known_degc } => format!(
            "El conductor puede llegar a {degc} degC en servicio; las resistencias se conocen hasta {known_degc} degC."
        ),
        JobDutySaid::EmergencyBelowLoad {
            emergency_a,
            load_a,
        } => format!(
            "La carga de emergencia, {emergency_a} A, está por debajo de la carga continua, {load_a} A."
        ),
        JobDutySaid::ShieldAboveConductor {
            shield_a,
            conductor_a,
        } => format!(
            "La corriente de cortocircuito en la pantalla metálica, {shield_a} A, está por encima de la del conductor, {conductor_a} A."
        ),
        JobDutySaid::ShorterThanCleared {
            field,
            time_s,
            clearing_s,
        } => format!(
            "Una falla a tierra dura {time_s} s según `{field}`, y hasta {clearing_s} s según `clearing_time`."
        ),
        JobDutySaid::LoadsOrFactor => {
            "Un día da `loads` o su `loss_load_factor`, y solo uno de los dos.".to_owned()
        }
        JobDutySaid::NotTwentyFourLoads => {
            "Un día tiene 24 cargas, cada una dividida por la mayor, que es 1.".to_owned()
        }
    }
}

const fn duty_hint(hint: JobDutyHint) -> &'static str {
    match hint {
        JobDutyHint::HighestInService => {
            "Tómelo de los documentos del cable: es la más alta en servicio, no la de un cortocircuito."
        }
        JobDutyHint::LookUpBothLoads => {
            "Una emergencia lleva más que la carga continua: busque las dos otra vez, o quite la emergencia."
        }
        JobDutyHint::GreatestOfAllFaults => {
            "Lo que vuelve por una pantalla metálica salió por un conductor: `fault` es la mayor de todas las fallas."
        }
        JobDutyHint::LongestInBoth => {
            "Dura hasta que se despeja: dé en los dos el tiempo más largo."
        }
        JobDutyHint::GiveTheLoads => {
            "Dé las 24 cargas si se conocen: el factor solo vale por el peor día que lo tiene."
        }
        JobDutyHint::DivideByTheGreatest => "Divida cada una por la mayor de ellas.",
    }
}

fn owner(tongue: Tongue, said: &OwnerSaid) -> String {
    match said {
        OwnerSaid::HasNoAuthority { by, what, who } => {
            let who = if who.is_empty() {
                "nadie".to_owned()
            } else {
                who.join(", ")
            };
            format!(
                "{by} no está en `authority` como quien decide `{what}`; el trabajo lo da a {who}."
            )
        }
        OwnerSaid::NotSetByTheCrew { plane } => format!(
            "La cuadrilla no fija `{plane}`; un rango permitido para eso no tendría efecto."
        ),
        OwnerSaid::OnlyOneOfMinusAndPlus => {
            "Una distancia del propietario da solo uno de `minus` y `plus`.".to_owned()
        }
        OwnerSaid::FromItselfToItself { plane } => {
            format!("Una distancia del propietario va de `{plane}` a sí mismo.")
        }
        OwnerSaid::ShrinksInward => "Una capa se contrae desde su corte, alejándose del extremo del conductor; esta distancia deja que se acerque.".to_owned(),
        OwnerSaid::NoCheck { check } => format!("Ninguna comprobación se llama `{check}`."),
        OwnerSaid::TakesNoLimit { check } => format!(
            "La comprobación `{check}` no admite un límite del propietario; no tendría efecto."
        ),
        OwnerSaid::NoBound { check } => format!(
            "Un límite del propietario para la comprobación `{check}` no tiene ningún valor."
        ),
        OwnerSaid::NoSuchBound { field, check } => format!(
            "`{field}` no es un límite para la comprobación `{check}`; no tendría efecto."
        ),
        OwnerSaid::PhaseWithoutLeg => "Un cierre nombra una fase y ningún ramal.".to_owned(),
        OwnerSaid::NoFact { fact } => format!("Ningún dato se llama `{fact}`."),
        OwnerSaid::EndsBeforeMade { date, until } => {
            format!("Un cierre del {date} vale hasta el {until}, antes de haberse hecho.")
        }
        OwnerSaid::NoKey { key } => format!(
            "Ningún valor citado de memoria tiene la clave `{key}`; no hay nada que confirmar."
        ),
        OwnerSaid::AsksNothingOf { check, subject } => format!(
            "La comprobación `{check}` no pregunta nada de {}: esta palabra no cierra nada.",
            tongue.subject(subject)
        ),
        OwnerSaid::WaitsForAnother {
            check,
            subject,
            fact,
        } => format!(
            "`{check}` de {} no espera el dato `{fact}`: esta palabra no cierra nada.",
            tongue.subject(subject)
        ),
    }
}

/// Words of files, which stay as they are.
fn words_of(words: &[String]) -> String {
    let words: Vec<String> = words.iter().map(|word| format!("`{word}`")).collect();
    words.join(", ")
}

fn subjects_of(tongue: Tongue, subjects: &[Subject]) -> String {
    let subjects: Vec<String> = subjects.iter().map(|of| tongue.subject(of)).collect();
    subjects.join("; ")
}

fn owner_hint(tongue: Tongue, hint: &OwnerHint) -> String {
    let fixed = match hint {
        OwnerHint::LetSomebodyDecide => {
            "Haga que lo decida alguien con esa autoridad, o agregue la persona a `authority`."
        }
        OwnerHint::WindowForACut => "Fije un rango permitido para un corte, una marca o el cuerpo.",
        OwnerHint::NameTwoPlanes => "Nombre dos planos.",
        OwnerHint::FromTheCut => {
            "Escríbala desde el corte hasta el mismo borde ya contraído, con un `minus` no mayor que la distancia."
        }
        OwnerHint::ChecksAre { checks } => {
            return format!("Las comprobaciones son: {}.", words_of(checks));
        }
        OwnerHint::LimitedChecksAre { checks } => {
            return format!(
                "Las comprobaciones que admiten uno son: {}.",
                words_of(checks)
            );
        }
        OwnerHint::BoundsAre { bounds } => {
            return format!("Los límites son: {}.", words_of(bounds));
        }
        OwnerHint::ItTakes { bounds } => return format!("Admite {}.", words_of(bounds)),
        OwnerHint::NameTheLeg => "Nombre el ramal, o quite la fase.",
        OwnerHint::FactsAre { facts } => {
            return format!("El plan nombra el dato que pide; son: {}.", words_of(facts));
        }
        OwnerHint::KeysAre { keys } => return format!("Las claves son: {}.", words_of(keys)),
        OwnerHint::NameAnOpenCheck => {
            "Quite la fila, o nombre la comprobación que el plan deja sin juzgar."
        }
        OwnerHint::AsksOf { subjects } => {
            return format!(
                "Pregunta de: {}. Nombre uno de ellos.",
                subjects_of(tongue, subjects)
            );
        }
        OwnerHint::WaitsFor { facts } => {
            return format!(
                "Espera: {}. Nombre uno de ellos; si el dato ya se respondió, quite la fila.",
                words_of(facts)
            );
        }
    };
    fixed.to_owned()
}

fn around(said: &AroundSaid) -> String {
    match said {
        AroundSaid::AloneWithPhases { phases } => format!(
            "El suelo contiene un solo cable, y el trabajo tiene {phases} fases, con un cable cada una."
        ),
        AroundSaid::LieOtherwise { soil, leg, leg_way } => format!(
            "El suelo contiene cables en disposición `{soil}`; los del ramal {leg} están en `{leg_way}`."
        ),
        AroundSaid::ApartOtherwise {
            soil,
            leg,
            leg_apart,
        } => format!(
            "En el suelo los cables están separados {soil}; los del ramal {leg}, {leg_apart}."
        ),
        AroundSaid::NotOneOfFour => "Lo que rodea un ramal da `film_w_per_m2k` o `outside_k_m_per_w`, o en su lugar `soil` o `air`.".to_owned(),
        AroundSaid::DuctWithoutSoil => {
            "Un ducto está en el suelo, y no se da ningún `soil`.".to_owned()
        }
        AroundSaid::FlatNeedsSpacing => "`flat` necesita `spacing`.".to_owned(),
        AroundSaid::TouchingWithSpacing => {
            "Cables o ductos que se tocan no tienen `spacing`.".to_owned()
        }
        AroundSaid::CircuitsApart => {
            "`circuits` mayor que 1 y `circuits_apart` solo dicen algo juntos.".to_owned()
        }
        AroundSaid::HoldsOtherwise { said, given } => format!(
            "El suelo contiene `{said}`, y lo que se da a su lado corresponde a `{given}`."
        ),
        AroundSaid::DryingNotWhole => "Un suelo que se seca da `dry_k_m_per_w` y `dries_above_k`, y uno que no se seca no da ninguno.".to_owned(),
        AroundSaid::DryConductsBetter { dry, moist } => format!(
            "El suelo conduciría mejor seco, {dry} K·m/W, que húmedo, {moist} K·m/W."
        ),
        AroundSaid::DuctNotLarger => {
            "El ducto no es mayor por fuera que por dentro.".to_owned()
        }
        AroundSaid::SameEnd { leg, until } => match until {
            None => format!(
                "Dos tramos de lo que rodea el ramal `{leg}` terminan en el extremo lejano."
            ),
            Some(until) => format!(
                "Dos tramos de lo que rodea el ramal `{leg}` terminan a {until} del extremo del conductor."
            ),
        },
        AroundSaid::NoneToTheEnd { leg } => format!(
            "Ningún tramo de lo que rodea el ramal `{leg}` sigue hasta el extremo lejano."
        ),
    }
}

const fn around_hint(hint: AroundHint) -> &'static str {
    match hint {
        AroundHint::SayHowTheyLie => {
            "Diga cómo están los cables de un circuito: `trefoil`, `flat` o `flat-touching`."
        }
        AroundHint::OneWay => {
            "Los mismos cables están de una sola manera: busque los dos datos otra vez."
        }
        AroundHint::OneDistance => {
            "Los mismos cables están a una sola distancia, de eje a eje: busque los dos datos otra vez."
        }
        AroundHint::GiveOneOfThem => {
            "Dé uno de ellos: la película para un empalme o un cable en aire o agua, la resistencia para un cable en un ducto o en el suelo, o lo que es, y se calcula."
        }
        AroundHint::GiveSoil => "Dé `soil`, o la película o la resistencia según su fuente.",
        AroundHint::GiveSpacing => {
            "Dé la distancia entre los ejes de vecinos, o diga `flat-touching`."
        }
        AroundHint::LeaveSpacingOut => "Quítelo, o diga `flat`.",
        AroundHint::BothOrNeither => "Dé los dos, o ninguno.",
        AroundHint::WhatGoesTogether => {
            "`ducts` va con `duct`, `ducts-in-concrete` con `duct` y su `bank`, `cables` con ninguno."
        }
        AroundHint::SayWhetherItDries => {
            "Diga `dries = true` con los dos, o `dries = false` sin ninguno."
        }
        AroundHint::Exchange => "Intercámbielos.",
        AroundHint::BothDiameters => "Dé los dos diámetros.",
        AroundHint::OwnEnd => {
            "Dé a cada uno su propio final; el último de un ramal no tiene `until`."
        }
        AroundHint::LeaveUntilOut => "Quite `until` del último.",
    }
}
