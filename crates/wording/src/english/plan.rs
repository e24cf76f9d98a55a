//! Statements of a plan around its numbers.

use crate::Tongue;
use crate::mark::spelled;
use jointwright_joint::cable::{Conductor, ShieldKind, Words};
use jointwright_joint::plane::Plane;
use jointwright_joint::said::{
    Distance, Exact, MarkSaid, MayMoveSaid, MissingOf, MissingSaid, Mover, PlanSaid, Said, Subject,
    WallSaid, WindowText, Wording,
};

pub(super) fn say(tongue: Tongue, said: &PlanSaid) -> String {
    match said {
        PlanSaid::Invented => "INVENTED DEMONSTRATION DATA - NOT FOR ANY CABLE".to_owned(),
        PlanSaid::Never => "This plan says nothing about which cable is dead or identified, and nothing in it says that anything may be cut, touched or energised, or that a joint may be built or kept. That is decided and recorded by the persons named for it. What stands in “ ” is said by the job or by the row named beside it, not by this plan. The parts' own instructions prevail.".to_owned(),
        PlanSaid::Mark(said) => mark(said),
        PlanSaid::Mils { mils } => format!("{mils} mil"),
        PlanSaid::Cable {
            conductor,
            wall,
            shield,
        } => cable(tongue, *conductor, *wall, *shield),
        PlanSaid::Conductor { conductor } => tongue.conductor(*conductor),
        PlanSaid::Layer { layer } => tongue.layer(*layer).to_owned(),
        PlanSaid::Whom(subject) => whom(subject),
        PlanSaid::SquareCutEnd { before_pressing } => if *before_pressing {
            "square-cut conductor end, before pressing"
        } else {
            "square-cut conductor end"
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
        PlanSaid::NoReason => "no reason is stated".to_owned(),
        PlanSaid::Missing(said) => missing(tongue, said),
    }
}

fn mark(said: &MarkSaid) -> String {
    match said {
        MarkSaid::Aloud { short } => spelled(short, digit),
        MarkSaid::NotNumbered => issue(None),
        MarkSaid::Issue { issue: number } => issue(Some(*number)),
        MarkSaid::NoTime => "time not given".to_owned(),
    }
}

/// Issue of a plan, and the issue that it replaces.
pub(super) fn issue(issue: Option<i64>) -> String {
    match issue {
        None => "issue not numbered".to_owned(),
        Some(issue) if issue > 1 => {
            format!("issue {issue}, replaces {}, destroy it", issue - 1)
        }
        Some(issue) => format!("issue {issue}"),
    }
}

fn digit(digit: char) -> Option<&'static str> {
    match digit {
        '3' => Some("three"),
        '4' => Some("four"),
        '7' => Some("seven"),
        _ => None,
    }
}

fn cable(tongue: Tongue, conductor: Conductor, of: WallSaid, shield: ShieldKind) -> String {
    format!(
        "{}, {}, {} shield",
        tongue.conductor(conductor),
        wall(of),
        shield.name().replace('-', " ")
    )
}

pub(super) fn wall(wall: WallSaid) -> String {
    match wall {
        WallSaid::Stated { wall_mm } => format!("wall {wall_mm} mm as stated"),
        WallSaid::Icea {
            class_kv,
            level_percent,
        } => format!("{class_kv} kV {level_percent} %"),
        WallSaid::Iec { u0_kv_tenths, u_kv } => crate::rated_kv(u0_kv_tenths, u_kv),
    }
}

fn whom(subject: &Subject) -> String {
    crate::whom(subject).unwrap_or_else(|| "joint".to_owned())
}

fn may_move(said: MayMoveSaid) -> String {
    match said {
        MayMoveSaid::Never => "never".to_owned(),
        MayMoveSaid::UntilHoldoutIsOut => "until the holdout is out".to_owned(),
        MayMoveSaid::WithinMinutes { minutes } => format!("within {minutes} minutes of placing"),
    }
}

fn distance(of: Distance) -> &'static str {
    match of {
        Distance::ElectrodePastMouth => "electrode past connector mouth",
        Distance::ElectrodeOntoInsulation => "electrode onto insulation",
        Distance::InnerEndOfControl => "inner end of stress control",
        Distance::OuterEndOfControl => "outer end of stress control",
        Distance::SealOntoJacket => "seal onto jacket",
    }
}

/// Mover of a plane, as a crew calls it.
fn mover(tongue: Tongue, of: Mover) -> String {
    match (of, tongue.words) {
        (Mover::Body, _) => "body position".to_owned(),
        (Mover::Connector, _) => "connector growth and seat".to_owned(),
        (Mover::ScreenCut, Words::Us) => "insulation shield cut".to_owned(),
        (Mover::ScreenCut, Words::Iec) => "insulation screen cut".to_owned(),
        (Mover::Plane(plane), _) => tongue.plane(plane),
    }
}

fn window(tongue: Tongue, of: WindowText) -> String {
    match of {
        WindowText::Diameters(range) => tongue.range(range),
        WindowText::Along { least, greatest } => {
            format!("{} to {}", tongue.read(least), tongue.read(greatest))
        }
        WindowText::AtMost(most) => format!("at most {}", tongue.read(most)),
        WindowText::AtLeast(least) => format!("at least {}", tongue.read(least)),
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
        let planes: Vec<String> = shared_with.iter().map(|of| tongue.plane(*of)).collect();
        reasons.push(format!("shared with the {}", planes.join(" and the ")));
    }
    reasons.extend(by.map(|by| tongue.say(by)));
    let paper = paper.map_or("it".to_owned(), |paper| tongue.say(paper));
    format!(
        "{} is left of the {} that {paper} gives: {}",
        tongue.width(left),
        tongue.width(printed),
        reasons.join("; ")
    )
}

fn missing(tongue: Tongue, said: &MissingSaid) -> String {
    match said {
        MissingSaid::Of { what, of, why } => {
            let what = match what {
                MissingOf::Field => "electric field",
                MissingOf::FieldOfPlug => "electric field of the tapered plug",
                MissingOf::Pressure => "interface pressure",
            };
            format!(
                "{what} of {}: {}",
                of.join(" "),
                tongue.say(why).trim_end_matches('.')
            )
        }
        MissingSaid::Temperatures { why } => {
            format!("temperatures under load: {}", tongue.say(why))
        }
        MissingSaid::Contacts => "short circuits in contacts of shields: nobody read a resistance across one (`contact` in the job)".to_owned(),
        MissingSaid::NobodyAsked => "nobody asked for it".to_owned(),
    }
}
