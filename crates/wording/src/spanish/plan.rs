//! Statements of a plan around its numbers.

use super::noun;
use crate::Tongue;
use crate::mark::spelled;
use jointwright_joint::cable::{Conductor, ShieldKind};
use jointwright_joint::plane::Plane;
use jointwright_joint::said::{
    Distance, Exact, MarkSaid, MayMoveSaid, MissingOf, MissingSaid, Mover, PlanSaid, Said, Subject,
    WallSaid, WindowText, Wording,
};

pub(super) fn say(tongue: Tongue, said: &PlanSaid) -> String {
    match said {
        PlanSaid::Invented => "DATOS DE DEMOSTRACIÓN INVENTADOS - NO SON PARA NINGÚN CABLE".to_owned(),
        PlanSaid::Never => "Este plan no dice nada sobre cuál cable está sin tensión o identificado, y nada en él dice que algo se pueda cortar, tocar o energizar, ni que un empalme se pueda hacer o conservar. Eso lo deciden y lo anotan las personas nombradas para ello. Lo que está entre “ ” lo dice el trabajo o la ficha nombrada a su lado, no este plan. Las instrucciones propias de las piezas prevalecen.".to_owned(),
        PlanSaid::Mark(said) => mark(said),
        PlanSaid::Mils { mils } => format!("{}.{:03} in", mils / 1000, mils % 1000),
        PlanSaid::Cable {
            conductor,
            wall,
            shield,
        } => cable(tongue, *conductor, *wall, *shield),
        PlanSaid::Conductor { conductor } => tongue.conductor(*conductor),
        PlanSaid::Layer { layer } => tongue.layer(*layer).to_owned(),
        PlanSaid::Whom(subject) => whom(subject),
        PlanSaid::SquareCutEnd { before_pressing } => if *before_pressing {
            "extremo del conductor cortado a escuadra, antes de prensar"
        } else {
            "extremo del conductor cortado a escuadra"
        }
        .to_owned(),
        PlanSaid::MayMove(said) => may_move(*said),
        PlanSaid::Distance(of) => distance(*of).to_owned(),
        PlanSaid::Mover(of) => mover(tongue, *of),
        PlanSaid::Window(of) => window(tongue, *of),
        PlanSaid::Narrowed {
            left,
            printed,
            paper,
            shared_with,
            by,
        } => narrowed(tongue, (*left, *printed), paper.as_ref(), shared_with, by.as_ref()),
        PlanSaid::Fails { who, check, why } => {
            let who: Vec<String> = who.iter().map(whom).collect();
            format!(
                "{}, {}: {}.",
                who.join(" "),
                tongue.check(check),
                tongue.say(why).trim_end_matches('.')
            )
        }
        PlanSaid::NoReason => "no se indica ninguna razón".to_owned(),
        PlanSaid::Missing(said) => missing(tongue, said),
    }
}

fn mark(said: &MarkSaid) -> String {
    match said {
        MarkSaid::Aloud { short } => spelled(short, digit),
        MarkSaid::NotNumbered => issue(None),
        MarkSaid::Issue { issue: number } => issue(Some(*number)),
        MarkSaid::NoTime => "hora no indicada".to_owned(),
    }
}

/// Issue of a plan, and the issue that it replaces.
pub(super) fn issue(issue: Option<i64>) -> String {
    match issue {
        None => "edición sin número".to_owned(),
        Some(issue) if issue > 1 => {
            format!("edición {issue}, reemplaza a la {}, destrúyala", issue - 1)
        }
        Some(issue) => format!("edición {issue}"),
    }
}

fn digit(digit: char) -> Option<&'static str> {
    match digit {
        '3' => Some("tres"),
        '4' => Some("cuatro"),
        '7' => Some("siete"),
        _ => None,
    }
}

fn cable(tongue: Tongue, conductor: Conductor, of: WallSaid, shield: ShieldKind) -> String {
    format!(
        "{}, {}, pantalla de {}",
        tongue.conductor(conductor),
        wall(of),
        noun::shield(shield)
    )
}

pub(super) fn wall(wall: WallSaid) -> String {
    match wall {
        WallSaid::Stated { wall_mm } => format!("espesor {wall_mm} mm como se indica"),
        WallSaid::Icea {
            class_kv,
            level_percent,
        } => format!("{class_kv} kV {level_percent} %"),
        WallSaid::Iec { u0_kv_tenths, u_kv } => crate::rated_kv(u0_kv_tenths, u_kv),
    }
}

fn whom(subject: &Subject) -> String {
    crate::whom(subject).unwrap_or_else(|| "empalme".to_owned())
}

fn may_move(said: MayMoveSaid) -> String {
    match said {
        MayMoveSaid::Never => "nunca".to_owned(),
        MayMoveSaid::UntilHoldoutIsOut => "hasta que se retire el núcleo extraíble".to_owned(),
        MayMoveSaid::WithinMinutes { minutes } => {
            format!("hasta {minutes} minutos después de colocarlo")
        }
    }
}

fn distance(of: Distance) -> &'static str {
    match of {
        Distance::ElectrodePastMouth => "electrodo más allá de la boca del conector",
        Distance::ElectrodeOntoInsulation => "electrodo sobre el aislamiento",
        Distance::InnerEndOfControl => "extremo interior del control de campo",
        Distance::OuterEndOfControl => "extremo exterior del control de campo",
        Distance::SealOntoJacket => "sello sobre la cubierta",
    }
}

/// Mover of a plane, as a crew calls it.
fn mover(tongue: Tongue, of: Mover) -> String {
    match of {
        Mover::Body => "posición del cuerpo".to_owned(),
        Mover::Connector => "alargamiento y asiento del conector".to_owned(),
        Mover::ScreenCut => "corte de la pantalla del aislamiento".to_owned(),
        Mover::Plane(plane) => tongue.plane(plane),
    }
}

fn window(tongue: Tongue, of: WindowText) -> String {
    match of {
        WindowText::Diameters(range) => tongue.range(range),
        WindowText::Along { least, greatest } => {
            format!("{} a {}", tongue.read(least), tongue.read(greatest))
        }
        WindowText::AtMost(most) => format!("como máximo {}", tongue.read(most)),
        WindowText::AtLeast(least) => format!("como mínimo {}", tongue.read(least)),
    }
}

fn narrowed(
    tongue: Tongue,
    (left, printed): (Exact, Exact),
    paper: Option<&Said>,
    shared_with: &[Plane],
    by: Option<&Said>,
) -> String {
    let mut reasons: Vec<String> = Vec::new();
    if !shared_with.is_empty() {
        let planes: Vec<String> = shared_with
            .iter()
            .map(|of| noun::the(&tongue.plane(*of)))
            .collect();
        reasons.push(format!("compartido con {}", planes.join(" y ")));
    }
    reasons.extend(by.map(|by| tongue.say(by)));
    let whole = tongue.width(printed);
    let given = paper.map_or(format!("los {whole} que da"), |paper| {
        format!("los {whole} que da {}", tongue.say(paper))
    });
    format!(
        "quedan {} de {given}: {}",
        tongue.width(left),
        reasons.join("; ")
    )
}

fn missing(tongue: Tongue, said: &MissingSaid) -> String {
    match said {
        MissingSaid::Of { what, of, why } => {
            let what = match what {
                MissingOf::Field => "campo eléctrico",
                MissingOf::FieldOfPlug => "campo eléctrico del tapón cónico",
                MissingOf::Pressure => "presión en las superficies",
            };
            format!(
                "{what} de {}: {}",
                of.join(" "),
                tongue.say(why).trim_end_matches('.')
            )
        }
        MissingSaid::Temperatures { why } => {
            format!("temperaturas con carga: {}", tongue.say(why))
        }
        MissingSaid::Contacts => "cortocircuitos en conexiones de pantallas: nadie midió la resistencia de una (`contact` en el trabajo)".to_owned(),
        MissingSaid::NobodyAsked => "nadie lo pidió".to_owned(),
    }
}
