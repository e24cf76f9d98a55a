//! Front: what stands on the one page of one end.
//!
//! Invariants: at most eight numbers; each is a text of the plan, with its datum in words and whose window it is; nothing else is a number to cut to.

use crate::clip::{clipped, whole};
use jointwright_joint::cable::Words;
use jointwright_joint::catalogue::{Means, PartKind, die_words};
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::StopDoc;
use jointwright_joint::plan::{
    ConnectorDoc, CutDoc, EndDoc, LegDoc, PartDoc, Plan, RulingDoc, RungDoc,
};
use jointwright_joint::plane::Plane;
use jointwright_joint::stage::Stage;
use jointwright_wording::Tongue;
use jointwright_wording::label::CutLabel;
use serde::Serialize;

/// The front page of one end.
#[derive(Clone, Debug, Serialize)]
pub(crate) struct Front {
    /// Leg and phase, large.
    end: String,
    leg: String,
    phase: u8,
    kind: String,
    goes_to: String,
    cable: String,
    parks: String,
    /// What stops work on this end.
    stops: Vec<String>,
    numbers: Vec<Number>,
    knife: Knife,
    connector: Vec<String>,
    /// One for each cut that waits for the growth.
    ladders: Vec<Ladder>,
    parts: Vec<String>,
    not_judged: String,
}

/// One number to cut or mark at.
#[derive(Clone, Debug, Serialize)]
struct Number {
    /// "CUT", "LAY BACK" or "MARK".
    act: String,
    /// Whether nothing is cut there.
    is_mark: bool,
    what: String,
    datum: String,
    /// Large: inches, or millimetres where the page has no inches.
    large: String,
    large_unit: String,
    /// Below: millimetres.
    small: String,
    window: Vec<String>,
    /// On whose word the place and the window are.
    whose: Vec<String>,
    /// What narrowed the window, where its paper prints a wider one.
    narrowed: String,
    /// What bites at this cut.
    caution: String,
    /// What is said of a mark at the end of its window.
    edge: String,
    /// How much of a shield that is laid back is kept.
    keeps: String,
}

#[derive(Clone, Debug, Serialize)]
struct Knife {
    words: String,
    most: String,
    /// The same in millimetres, where it is not in them already.
    small: String,
    whose: String,
}

/// Where a cut goes for each growth of the sleeve.
#[derive(Clone, Debug, Serialize)]
struct Ladder {
    what: String,
    /// Whose growth it is of.
    of: String,
    rungs: Vec<Rung>,
}

#[derive(Clone, Debug, Serialize)]
struct Rung {
    grew: String,
    large: String,
    small: String,
    window: String,
}

#[cfg(test)]
impl Front {
    /// Cuts for which it shows a growth ladder.
    pub(crate) fn ladders(&self) -> Vec<&str> {
        self.ladders.iter().map(|l| l.what.as_str()).collect()
    }
}

/// Front pages of all ends, leg by leg.
pub(crate) fn fronts(plan: &Plan) -> Vec<Front> {
    plan.legs
        .iter()
        .flat_map(|leg| leg.ends.iter().map(move |end| front(plan, leg, end)))
        .collect()
}

fn front(plan: &Plan, leg: &LegDoc, end: &EndDoc) -> Front {
    let tongue = Tongue::of_plan(plan);
    let is_metric = plan.job.words == Words::Iec;
    // The outermost first, as they are come to with the knife; marks after cuts.
    let outward = leg.cuts.iter().rev();
    let (cuts, marks): (Vec<&CutDoc>, Vec<&CutDoc>) = outward.partition(|c| !c.is_mark());
    let places = cuts.into_iter().chain(marks);
    let port = leg
        .port
        .map(|port| format!(", bus port {port}"))
        .unwrap_or_default();
    Front {
        end: format!("{}{}", clipped(&leg.mark, 8), end.phase),
        leg: clipped(&leg.mark, 8),
        phase: end.phase,
        kind: format!("{} joint{port}", plan.job.kind.name()),
        goes_to: clipped(leg.goes_to.as_deref().unwrap_or("not said"), 60),
        cable: clipped(&leg.cable, 90),
        parks: parks(plan, leg, end),
        stops: stops(plan, leg, end),
        numbers: places.map(|cut| number(cut, leg, tongue)).collect(),
        knife: knife(leg),
        connector: connector(leg),
        ladders: ladders(leg, is_metric),
        parts: leg.parts.iter().map(part).collect(),
        not_judged: not_judged(plan, leg, end),
    }
}

fn knife(leg: &LegDoc) -> Knife {
    let screen = leg.cuts.iter().find(|cut| cut.plane == Plane::ScreenEdge);
    if screen.is_none_or(|cut| cut.mark_mm.is_none()) {
        return Knife {
            words: leg.knife.words.clone(),
            most: "not set".to_owned(),
            small: String::new(),
            whose: "the cut itself is not set".to_owned(),
        };
    }
    let mut most = leg.knife.most.iter().cloned();
    Knife {
        words: leg.knife.words.clone(),
        most: most.next().unwrap_or("not set".to_owned()),
        small: most.next().unwrap_or_default(),
        whose: leg.knife.whose.clone(),
    }
}

/// What comes onto this end, moment by moment, each in its order.
fn parks(plan: &Plan, leg: &LegDoc, end: &EndDoc) -> String {
    let name = format!("{}{}", leg.mark, end.phase);
    let moments = [
        (
            Stage::SlideOn,
            "slide on before the connector, in this order",
        ),
        (
            Stage::PushOn,
            "push on once it is clean, before the connector, in this order",
        ),
        (
            Stage::Place,
            "push on once it is clean, over the connector, in this order",
        ),
    ];
    let said = moments.iter().filter_map(|(stage, when)| {
        let steps = plan.make_up.steps.iter().filter(|s| s.stage == *stage);
        let here: Vec<String> = steps
            .flat_map(|step| &step.slides)
            .filter(|slide| slide.onto == name)
            .map(|slide| format!("{} {}", slide.part.name(), clipped(&slide.id, 24)))
            .collect();
        (!here.is_empty()).then(|| format!("{when}: {}", here.join(", then ")))
    });
    let said: Vec<String> = said.collect();
    let is_open = |kind: &PartKind| leg.parts.iter().all(|part| part.kind != *kind);
    let open: Vec<&str> = [PartKind::Seal, PartKind::Body]
        .into_iter()
        .filter(is_open)
        .map(PartKind::name)
        .collect();
    let settled = if said.is_empty() {
        "nothing named comes onto this end".to_owned()
    } else {
        said.join("; ")
    };
    if open.is_empty() {
        return settled;
    }
    format!(
        "{settled}; {} left open: settle it before any connector is made",
        open.join(" and ")
    )
}

fn stops(plan: &Plan, leg: &LegDoc, end: &EndDoc) -> Vec<String> {
    let name = format!("{}{}", leg.mark, end.phase);
    let concerns = |stop: &&StopDoc| stop.concerns(&leg.mark, Some(end.phase));
    let ours = plan.stops.iter().filter(concerns);
    let mut stops: Vec<String> = ours
        .map(|stop| match &stop.lifted_by {
            Some(word) => format!(
                "NOT JUDGED, and work goes on by the word of {}. What it is about: {}",
                whole(word),
                whole(&stop.say)
            ),
            None => format!("STOP AND CALL: {name}: {}", whole(&stop.say)),
        })
        .collect();
    let unplaced: Vec<&str> = leg
        .cuts
        .iter()
        .filter(|cut| cut.nominal_mm.is_none())
        .map(|cut| cut.words.as_str())
        .collect();
    if !unplaced.is_empty() {
        stops.insert(
            0,
            format!(
                "NOT COMPLETE: no place yet for {}. Do not start on this end: what is missing stands beside it; with it the job is planned again.",
                unplaced.join(", ")
            ),
        );
    }
    stops.extend(
        plan.make_up
            .unsettled
            .iter()
            .map(|said| format!("STOP AND CALL: {}", whole(said))),
    );
    stops
}

fn number(cut: &CutDoc, leg: &LegDoc, tongue: Tongue) -> Number {
    let is_metric = tongue.words == Words::Iec;
    let (large, unit, small) = match (&cut.inch, &cut.mark_mm) {
        (Some(inch), Some(mm)) if !is_metric => (inch.clone(), "in", format!("{mm} mm")),
        (_, Some(mm)) => (mm.clone(), "mm", String::new()),
        _ if !cut.growth_ladder.is_empty() => {
            ("NOT YET".to_owned(), "", "growth ladder below".to_owned())
        }
        _ => ("not set".to_owned(), "", String::new()),
    };
    let window = match &cut.printed_window {
        Some(window) => window.lines(),
        None => vec![whole(cut.why.as_deref().unwrap_or("no window is set"))],
    };
    Number {
        act: cut.act().to_owned(),
        is_mark: cut.is_mark(),
        what: cut.words.clone(),
        datum: format!("from the {}", cut.from),
        large,
        large_unit: unit.to_owned(),
        small,
        window,
        whose: cut
            .whose_words()
            .iter()
            .map(|word| short(word, leg))
            .collect(),
        narrowed: cut.narrowed.as_ref().map_or(String::new(), |n| {
            short(&format!("narrowed: {}", n.text), leg)
        }),
        caution: CutLabel::caution(cut).map_or(String::new(), |label| tongue.label(&label)),
        edge: cut.at_edge().unwrap_or_default().to_owned(),
        keeps: cut.keeps.clone().unwrap_or_default(),
    }
}

/// Words on the page with the parts by their names alone: their papers, and what is doubtful of their rows, stand once below.
fn short(words: &str, leg: &LegDoc) -> String {
    let named = leg.parts.iter().fold(words.to_owned(), |words, part| {
        let doubts = part.doubts.iter().map(|doubt| format!(", {doubt}"));
        let paper = format!("{}{}", part.instructions, doubts.collect::<String>());
        words.replace(&format!("{}, {paper}", part.id), &part.id)
    });
    whole(&named)
}

fn connector(leg: &LegDoc) -> Vec<String> {
    let part = leg.parts.iter().find(|p| p.kind == PartKind::Connector);
    let (Some(doc), Some(part)) = (&leg.connector, part) else {
        return vec!["no connector is named: stop and call".to_owned()];
    };
    let mut said = vec![format!("{}, {}", clipped(&part.id, 40), doc.means.name())];
    said.extend(
        doc.end
            .as_ref()
            .map(|end| format!("this leg goes into its end {end}")),
    );
    said.extend(
        doc.end_open
            .as_ref()
            .map(|why| format!("stop and call: {why}")),
    );
    if doc.means == Means::Compression {
        said.push(format!(
            "{}; {}",
            doc.die
                .as_deref()
                .map_or("die not named: see its instructions".to_owned(), |die| {
                    die_words(&clipped(die, 40))
                }),
            doc.presses.map_or(
                "presses not named: see its instructions".to_owned(),
                |n| match doc.end {
                    Some(_) => format!("{n} presses at this end"),
                    None => format!("{n} presses an end"),
                }
            )
        ));
    }
    said.push(order(doc, part));
    if let Some(source) = &doc.growth_source {
        said.push(format!(
            "growth measured ({}): the insulation cut holds it already",
            whole(source)
        ));
    }
    said
}

fn order(doc: &ConnectorDoc, part: &PartDoc) -> String {
    let what = match doc.means {
        Means::Compression => "order of presses",
        Means::ShearBolt => "order of bolts",
        Means::SetScrew => "order and torque of screws",
    };
    format!("{what}: {}", clipped(&part.instructions, 50))
}

fn ladders(leg: &LegDoc, is_metric: bool) -> Vec<Ladder> {
    let waiting = leg.cuts.iter().filter(|c| !c.growth_ladder.is_empty());
    let ladder = |cut: &CutDoc| {
        let rungs = cut.growth_ladder.iter().map(|rung| {
            let mut printed = self::rung(rung, is_metric);
            if let Some(finer) = finest_mm(rung, &cut.growth_ladder)
                && !printed.small.is_empty()
            {
                printed.small = format!("{finer} mm");
            }
            printed
        });
        let end = leg.connector.as_ref().and_then(|c| c.end.as_ref());
        Ladder {
            what: cut.words.clone(),
            of: end.map_or("The whole sleeve".to_owned(), |end| {
                format!("The end {}, pressed alone,", clipped(end, 40))
            }),
            rungs: rungs.collect(),
        }
    };
    waiting.map(ladder).collect()
}

/// One tick in one text: of all rungs at the tick of this one, the millimetres with the most decimals, where they lie in its window.
fn finest_mm<'r>(rung: &RungDoc, ladder: &'r [RungDoc]) -> Option<&'r String> {
    let same = ladder.iter().filter(|other| other.inch == rung.inch);
    let finest = same
        .filter_map(|other| other.mark_mm.as_ref())
        .max_by_key(|mm| mm.len())?;
    let at: f64 = finest.parse().ok()?;
    let lies = rung.min_mm.is_none_or(|least| at >= least)
        && rung.max_mm.is_none_or(|greatest| at <= greatest);
    lies.then_some(finest)
}

fn rung(rung: &RungDoc, is_metric: bool) -> Rung {
    let (large, small) = match (&rung.inch, &rung.mark_mm) {
        (Some(inch), Some(mm)) if !is_metric => (format!("{inch} in"), format!("{mm} mm")),
        (_, Some(mm)) => (format!("{mm} mm"), String::new()),
        _ => ("no place".to_owned(), String::new()),
    };
    Rung {
        grew: if rung.grew_inch.is_empty() {
            format!("{} mm", rung.grew_mm)
        } else {
            rung.grew_inch.clone()
        },
        large,
        small,
        window: rung
            .printed_window
            .as_ref()
            .map(|window| window.text())
            .unwrap_or_default(),
    }
}

fn part(part: &PartDoc) -> String {
    let side = part.side.as_ref();
    let side = side
        .map(|side| format!(", side {side}"))
        .unwrap_or_default();
    let doubts = part.doubts.iter().map(|doubt| format!("; {doubt}"));
    format!(
        "{}: {}{side} ({}{})",
        part.kind.name(),
        clipped(&part.id, 32),
        clipped(&part.instructions, 48),
        doubts.collect::<String>()
    )
}

/// What is not judged of this end, in one line.
fn not_judged(plan: &Plan, leg: &LegDoc, end: &EndDoc) -> String {
    let name = format!("{}{}", leg.mark, end.phase);
    let concerns = |ruling: &&RulingDoc| {
        ruling.ruling == Outcome::NotJudged
            && ruling.end.as_ref().is_none_or(|e| *e == name)
            && ruling.leg.as_ref().is_none_or(|l| *l == leg.mark)
    };
    let mut checks: Vec<String> = plan
        .rulings
        .iter()
        .filter(concerns)
        .map(|r| r.check.replace('_', " "))
        .collect();
    checks.dedup();
    checks.extend(plan.not_computed.iter().cloned());
    whole(&checks.join(", "))
}
