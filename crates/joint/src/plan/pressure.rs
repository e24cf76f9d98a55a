//! Pressure: contact pressures of the parts of one end in the plan.

use super::state::StateDoc;
use super::words::all_said;
use crate::cable::Layer;
use crate::catalogue::PartKind;
use crate::checks::EndInputs;
use crate::limit::Word;
use crate::pressure::{Pressed, Sit, Warmth};
use crate::said::{
    CutSaid, On, PressureAtLeast, PressureDone, PressureLine, PressureSaid, PressureVerdict, Said,
    TakesToday, TooLittle, Wording,
};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Contact pressures of the parts of one end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PressureDoc {
    /// The whole in one line, with the source of the limit.
    pub line: String,
    /// Parts.
    pub parts: Vec<PartPressureDoc>,
}

/// Contact pressure of one part on one end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PartPressureDoc {
    /// Kind of part.
    pub kind: PartKind,
    /// Whether it was computed.
    pub state: StateDoc,
    /// Reason why it is not computed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// Questions to put to the maker, the store or the owner.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub questions: Vec<String>,
    /// Computed values.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub computed: Option<SitDoc>,
}

/// Computed values of one part on one end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct SitDoc {
    /// Name of the part.
    pub id: String,
    /// Surface that it sits on.
    pub on: String,
    /// Ratio of the least pressure to the worst that its instructions allow at the same place and temperature.
    pub ratio: f64,
    /// Error of that ratio.
    pub error_ratio: f64,
    /// Temperatures at which the ratio is least; left out if the temperatures of the joint are not known and the ratio holds as read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at: Option<String>,
    /// The same ratio over the places where the edge of the insulation screen may lie.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub edge_ratio: Option<f64>,
    /// Least pressure, kPa, if the law of the rubber is stated.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pressure_kpa: Option<f64>,
    /// Error of that pressure, kPa.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pressure_error_kpa: Option<f64>,
    /// Temperatures at which the pressure is least.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pressure_at: Option<String>,
    /// Condition of the ends that gives the lesser pressure there: "free" or "fixed length".
    pub ends: String,
    /// Condition of the ends where the ratio is least: "free" or "fixed length", the same for both sides of the ratio.
    pub ratio_ends: String,
    /// Ratio less the errors of readings and bore, as printed.
    pub least_ratio: f64,
    /// Greatest stretch of the bore over its relaxed diameter, and the greatest that its range allows.
    pub stretch_ratio: [f64; 2],
    /// Set: share of the stretch in store that has stayed in the bore, and the most that its instructions allow, percent; left out for a part that is not held open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub set_percent: Option<[f64; 2]>,
    /// Diameters that this kit can take today, mm; left out if they cannot be stated.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub today_mm: Option<[f64; 2]>,
    /// Source of the least of these diameters.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub today_of: Option<String>,
}

/// Returns the pressures of an end; `None` if nobody asked.
pub(super) fn pressure_doc(end: &EndInputs, wording: &dyn Wording) -> Option<PressureDoc> {
    let pressure = &end.pressure;
    let named = [
        (PartKind::Body, &pressure.body),
        (PartKind::Adapter, &pressure.adapter),
        (PartKind::Seal, &pressure.seal),
    ];
    let parts: Vec<PartPressureDoc> = named
        .iter()
        .filter_map(|(kind, pressed)| part_doc(*kind, pressed, wording))
        .collect();
    (!parts.is_empty()).then(|| PressureDoc {
        line: wording.say(&line(&named)),
        parts,
    })
}

fn part_doc(kind: PartKind, pressed: &Pressed, wording: &dyn Wording) -> Option<PartPressureDoc> {
    let mut doc = PartPressureDoc {
        kind,
        state: StateDoc::Computed,
        why: None,
        questions: Vec::new(),
        computed: None,
    };
    match pressed {
        Pressed::NotAsked => return None,
        Pressed::Past(why) => {
            doc.state = StateDoc::PastItsDate;
            doc.why = Some(wording.say(why));
        }
        Pressed::Loose(why) => {
            doc.state = StateDoc::Loose;
            doc.why = Some(wording.say(why));
        }
        Pressed::Unknown(unknown) => {
            doc.state = StateDoc::NotKnown;
            doc.why = Some(wording.say(&unknown.why));
            doc.questions = all_said(&unknown.questions, wording);
        }
        Pressed::Refused(why) => {
            doc.state = StateDoc::NotComputed;
            doc.why = Some(wording.say(why));
        }
        Pressed::Done(sit) => {
            if let Err(unknown) = &sit.heat {
                doc.questions = all_said(&unknown.questions, wording);
            }
            doc.computed = Some(sit_doc(sit, wording));
        }
    }
    Some(doc)
}

fn sit_doc(sit: &Sit, wording: &dyn Wording) -> SitDoc {
    let least = &sit.seat_least;
    let (stretch, stretch_allowed) = sit.stretch_ratios();
    let today = sit.today.as_ref().ok();
    let said = |warmth: Warmth| wording.say(&warmth.said().into());
    let ends = |is_free: bool| wording.say(&PressureSaid::Ends { is_free }.into());
    let today = today.filter(|today| today.least_m <= today.greatest_m);
    SitDoc {
        id: sit.id.clone(),
        on: wording.say(&Said::from(&sit.seat.on)),
        ratio: least.ratio,
        error_ratio: least.error_ratio,
        least_ratio: at_least(sit),
        at: least.warmth.map(said),
        edge_ratio: sit.edge.as_ref().ok().map(|edge| edge.ratio),
        pressure_kpa: least.pressure_pa.map(|pa| pa * 1e-3),
        pressure_error_kpa: least.pressure_pa.map(|_| least.pressure_error_pa * 1e-3),
        pressure_at: least.pressure_warmth.map(said),
        ends: ends(least.is_free),
        ratio_ends: ends(least.is_ratio_free),
        stretch_ratio: [stretch, stretch_allowed],
        set_percent: sit
            .kit
            .is_held
            .then(|| [sit.kit.today.set_ratio, sit.kit.oldest.set_ratio].map(|set| 100.0 * set)),
        today_mm: today.map(|today| [2e3 * today.least_m, 2e3 * today.greatest_m]),
        today_of: today.map(|today| wording.say(&Said::from(&today.word))),
    }
}

/// Ratio less its reading error.
///
/// It is at least 1 if cable and kit lie wholly inside the range of the instructions, because they then allow it.
fn at_least(sit: &Sit) -> f64 {
    let least = &sit.seat_least;
    let floor = if sit.is_within() { 1.0 } else { 0.0 };
    (least.ratio - least.read_error_ratio).max(floor)
}

/// Line about the part with most to report.
fn line(parts: &[(PartKind, &Pressed)]) -> Said {
    let rank = |kind: PartKind, pressed: &Pressed| match pressed {
        Pressed::NotAsked => 6,
        Pressed::Past(_) => 0,
        Pressed::Loose(_) => 1,
        Pressed::Done(sit) if !too_little(sit).is_empty() => 2,
        Pressed::Unknown(_) | Pressed::Refused(_) => 3,
        // A seal has no temperature here, so a body comes first.
        Pressed::Done(_) => 4 + u8::from(kind == PartKind::Seal),
    };
    let ratio = |pressed: &Pressed| match pressed {
        Pressed::Done(sit) => sit.seat_least.ratio,
        _ => 0.0,
    };
    let worst = parts.iter().min_by(|(one, a), (other, b)| {
        let by_rank = rank(*one, a).cmp(&rank(*other, b));
        by_rank.then(ratio(a).total_cmp(&ratio(b)))
    });
    match worst {
        None | Some((_, Pressed::NotAsked)) => return CutSaid::BodyLeftOpen.into(),
        Some((_, Pressed::Past(why))) => PressureLine::NoRange { why: why.clone() },
        Some((_, Pressed::Loose(why))) => PressureLine::Loose { why: why.clone() },
        Some((_, Pressed::Unknown(unknown))) => PressureLine::NotJudged {
            why: unknown.why.clone(),
        },
        Some((_, Pressed::Refused(why))) => PressureLine::NotJudged { why: why.clone() },
        Some((kind, Pressed::Done(sit))) => PressureLine::Done(Box::new(done(*kind, sit))),
    }
    .into()
}

/// Demands that the part's pressure does not meet; empty if it meets all of them.
fn too_little(sit: &Sit) -> Vec<TooLittle> {
    let least = &sit.seat_least;
    let against_paper = least.ratio + least.error_ratio < 1.0;
    let paper = against_paper.then_some(TooLittle::Paper);
    let asked = sit.asked_pa.iter().filter(|(asked, _)| {
        let is_less = least
            .pressure_pa
            .is_some_and(|pa| pa + least.pressure_error_pa < *asked);
        is_less && sit.heat.is_ok()
    });
    let asked = asked.map(|(asked, word)| TooLittle::Asked {
        kpa: asked * 1e-3,
        word: word.clone(),
    });
    paper.into_iter().chain(asked).collect()
}

/// Verdict before the line: the failure, else the reason why nothing is concluded; `None` if neither applies.
fn verdict(sit: &Sit) -> Option<PressureVerdict> {
    let (seat, least) = (&sit.seat, &sit.seat_least);
    let little = too_little(sit);
    if !little.is_empty() {
        Some(PressureVerdict::TooLittle(little))
    } else if seat.here_m.0 < seat.allowed_m.0 || seat.here_m.1 > seat.allowed_m.1 {
        Some(PressureVerdict::OutOfRange)
    } else if sit.heat.is_err() && sit.seat.on != On::Layer(Layer::Jacket) {
        Some(PressureVerdict::TemperaturesNotKnown)
    } else if !seat.is_read_around {
        Some(PressureVerdict::ThinnestNotRead)
    } else if least.ratio - least.error_ratio < 1.0 {
        Some(PressureVerdict::WithinError)
    } else {
        None
    }
}

fn done(kind: PartKind, sit: &Sit) -> PressureDone {
    let least = &sit.seat_least;
    let today = sit.today.as_ref().map(|today| {
        // Both are rounded inward to a tenth of a millimetre, which an instrument can read.
        let (low, high) = (2e4 * today.least_m - 1e-6, 2e4 * today.greatest_m + 1e-6);
        if low.is_finite() && low <= high {
            TakesToday::Diameters {
                least_mm: low.ceil() / 10.0,
                greatest_mm: high.floor() / 10.0,
            }
        } else {
            TakesToday::None
        }
    });
    PressureDone {
        verdict: verdict(sit),
        kind,
        part: sit.id.clone(),
        on: sit.seat.on.clone(),
        least_ratio: at_least(sit),
        allowed_mm: 2e3 * sit.seat.allowed_m.0,
        oldest: sit.kit.oldest_of,
        read_ratio: least.ratio,
        read_error_ratio: Some(least.read_error_ratio).filter(|error| error.is_finite()),
        warmth: least.warmth.map(Warmth::said),
        is_ratio_free: least.is_ratio_free,
        pressure: least.pressure_pa.map(|pa| PressureAtLeast {
            kpa: pa * 1e-3,
            error_kpa: least.pressure_error_pa * 1e-3,
            warmth: least.pressure_warmth.map(Warmth::said),
        }),
        today: today.ok(),
        word: Word::WorstAllowed(Said::from(&sit.source)),
    }
}
