//! Front: what stands on the one page of one end.
//!
//! Invariants: at most eight numbers; each is a text of the plan, with its datum in words and whose window it is; nothing else is a number to cut to.

use crate::clip::{clipped, whole};
use jointwright_joint::cable::Words;
use jointwright_joint::catalogue::{Means, PartKind};
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::StopDoc;
use jointwright_joint::plan::{
    ConnectorDoc, CutDoc, EndDoc, LegDoc, PartDoc, Plan, RulingDoc, RungDoc,
};
use jointwright_joint::plane::Plane;
use jointwright_joint::stage::Stage;
use jointwright_wording::Tongue;
use jointwright_wording::label::{CutLabel, FrontLabel, PartLabel, SheetLabel};
use serde::Serialize;

/// The front page of one end.
#[derive(Clone, Debug, Serialize)]
pub(crate) struct Front {
    /// Leg and phase, large.
    end: String,
    /// Its name at its foot.
    foot: String,
    title: String,
    goes_to: String,
    cable: String,
    parks: String,
    /// Reasons why work stops on this end.
    stops: Vec<String>,
    numbers: Vec<Number>,
    knife: Knife,
    connector: Vec<String>,
    /// One for each cut that waits for the growth.
    ladders: Vec<Ladder>,
    parts: Vec<String>,
    set_off: String,
    not_judged: String,
}

/// One number to cut or mark at.
#[derive(Clone, Debug, Serialize)]
struct Number {
    /// Action and place.
    act: String,
    /// Whether nothing is cut there.
    is_mark: bool,
    datum: String,
    /// Large: inches, or millimetres where the page has no inches.
    large: String,
    large_unit: String,
    /// Below: millimetres.
    small: String,
    window: Vec<String>,
    /// On whose word the place and the window are.
    whose: Vec<String>,
    /// Cause of a narrower window, where its paper prints a wider one.
    narrowed: String,
    /// Danger at this cut.
    caution: String,
    /// Remark on a mark at the end of its window.
    edge: String,
    /// Length that is kept of a shield that is laid back.
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
    #[cfg(test)]
    #[serde(skip)]
    what: String,
    title: String,
    /// Whose growth it is of, and how it is used.
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

/// An end as pages name it.
fn name(leg: &LegDoc, end: &EndDoc) -> String {
    format!("{}{}", leg.mark, end.phase)
}

fn front(plan: &Plan, leg: &LegDoc, end: &EndDoc) -> Front {
    let tongue = Tongue::of_plan(plan);
    let of = |label: FrontLabel| tongue.label(&label);
    // The outermost first, as they are come to with the knife; marks after cuts.
    let outward = leg.cuts.iter().rev();
    let (cuts, marks): (Vec<&CutDoc>, Vec<&CutDoc>) = outward.partition(|c| !c.is_mark());
    let places = cuts.into_iter().chain(marks);
    let joint = of(FrontLabel::Joint {
        kind: plan.job.kind,
        port: leg.port,
    });
    let mark = clipped(&leg.mark, 8);
    let goes_to = leg.goes_to.clone();
    let goes_to = goes_to.unwrap_or_else(|| of(FrontLabel::NotSaid));
    let end_name = format!("{mark}{}", end.phase);
    Front {
        foot: tongue.label(&SheetLabel::FootFront {
            end: end_name.clone(),
        }),
        end: end_name,
        title: of(FrontLabel::LegPhase {
            leg: mark,
            phase: end.phase,
            joint,
        }),
        goes_to: of(FrontLabel::GoesTo {
            place: clipped(&goes_to, 60),
        }),
        cable: of(FrontLabel::Cable {
            cable: clipped(&leg.cable, 90),
        }),
        parks: parks(plan, leg, end),
        stops: stops(plan, leg, end),
        numbers: places.map(|cut| number(cut, tongue)).collect(),
        knife: knife(leg, tongue),
        connector: connector(leg, tongue),
        ladders: ladders(leg, tongue),
        parts: leg.parts.iter().map(|of| part(of, tongue)).collect(),
        set_off: of(FrontLabel::SetOff { call: call(plan) }),
        not_judged: of(FrontLabel::NotJudged {
            what: not_judged(plan, leg, end),
        }),
    }
}

/// Whom to call; the number is what must not be lost.
pub(crate) fn call(plan: &Plan) -> String {
    let call = &plan.job.stop_and_call;
    format!("{}, {}", clipped(&call.name, 40), clipped(&call.number, 40))
}

fn knife(leg: &LegDoc, tongue: Tongue) -> Knife {
    let screen = leg.cuts.iter().find(|cut| cut.plane == Plane::ScreenEdge);
    let not_set = || tongue.label(&CutLabel::NotSet);
    if screen.is_none_or(|cut| cut.mark_mm.is_none()) {
        return Knife {
            words: leg.knife.words.clone(),
            most: not_set(),
            small: String::new(),
            whose: tongue.label(&FrontLabel::CutNotSet),
        };
    }
    let mut most = leg.knife.most.iter().cloned();
    Knife {
        words: leg.knife.words.clone(),
        most: most.next().unwrap_or_else(not_set),
        small: most.next().unwrap_or_default(),
        whose: leg.knife.whose.clone(),
    }
}

/// Parts that come onto this end, moment by moment, each in its order.
fn parks(plan: &Plan, leg: &LegDoc, end: &EndDoc) -> String {
    let tongue = Tongue::of_plan(plan);
    let name = name(leg, end);
    let parts_at = |stage: Stage| -> Vec<String> {
        let steps = plan.make_up.steps.iter().filter(|s| s.stage == stage);
        let slides = steps.flat_map(|step| &step.slides);
        slides
            .filter(|slide| slide.onto == name)
            .map(|slide| {
                tongue.label(&FrontLabel::Part {
                    kind: slide.part,
                    id: clipped(&slide.id, 24),
                })
            })
            .collect()
    };
    type LabelOf = fn(Vec<String>) -> FrontLabel;
    let moments: [(Stage, LabelOf); 3] = [
        (Stage::SlideOn, |parts| FrontLabel::SlideOn { parts }),
        (Stage::PushOn, |parts| FrontLabel::PushOn { parts }),
        (Stage::Place, |parts| FrontLabel::PushOver { parts }),
    ];
    let said: Vec<String> = moments
        .into_iter()
        .map(|(stage, label)| (parts_at(stage), label))
        .filter(|(parts, _)| !parts.is_empty())
        .map(|(parts, label)| tongue.label(&label(parts)))
        .collect();
    let is_open = |kind: &PartKind| leg.parts.iter().all(|part| part.kind != *kind);
    let kinds = [PartKind::Seal, PartKind::Body].into_iter();
    let parts: Vec<PartKind> = kinds.filter(is_open).collect();
    let settled = if said.is_empty() {
        tongue.label(&FrontLabel::NothingComesOn)
    } else {
        said.join("; ")
    };
    if parts.is_empty() {
        return settled;
    }
    tongue.label(&FrontLabel::LeftOpen { settled, parts })
}

fn stops(plan: &Plan, leg: &LegDoc, end: &EndDoc) -> Vec<String> {
    let tongue = Tongue::of_plan(plan);
    let concerns = |stop: &&StopDoc| stop.concerns(&leg.mark, Some(end.phase));
    let ours = plan.stops.iter().filter(concerns);
    let ours = ours.map(|stop| match &stop.lifted_by {
        Some(word) => FrontLabel::GoesOnByWord {
            word: whole(word),
            about: whole(&stop.say),
        },
        None => FrontLabel::StopAtEnd {
            end: name(leg, end),
            why: whole(&stop.say),
        },
    });
    let unplaced = leg.cuts.iter().filter(|cut| cut.nominal_mm.is_none());
    let places: Vec<String> = unplaced.map(|cut| cut.words.clone()).collect();
    let unplaced = (!places.is_empty()).then_some(FrontLabel::NotComplete { places });
    let unsettled = plan.make_up.unsettled.iter();
    let unsettled = unsettled.map(|said| FrontLabel::Stop { why: whole(said) });
    let labels = unplaced.into_iter().chain(ours).chain(unsettled);
    labels.map(|label| tongue.label(&label)).collect()
}

fn number(cut: &CutDoc, tongue: Tongue) -> Number {
    let of = |label: CutLabel| tongue.label(&label);
    let is_metric = tongue.words == Words::Iec;
    let (large, unit, small) = match (&cut.inch, &cut.mark_mm) {
        (Some(inch), Some(mm)) if !is_metric => (inch.clone(), "in", format!("{mm} mm")),
        (_, Some(mm)) => (mm.clone(), "mm", String::new()),
        _ if !cut.growth_ladder.is_empty() => (
            tongue.label(&FrontLabel::NotYet),
            "",
            tongue.label(&FrontLabel::LadderBelow),
        ),
        _ => (of(CutLabel::NotSet), "", String::new()),
    };
    let window = match &cut.printed_window {
        Some(window) => tongue.window_lines(window),
        None => {
            let why = cut.why.clone();
            vec![whole(&why.unwrap_or_else(|| of(CutLabel::NoWindow)))]
        }
    };
    let narrowed = cut.by_name.narrowed.as_deref();
    let narrowed = narrowed.map(|text| CutLabel::Narrowed { text: whole(text) });
    let whose = CutLabel::whose_by_name(cut).into_iter();
    Number {
        act: of(CutLabel::act_at(cut)),
        is_mark: cut.is_mark(),
        datum: of(CutLabel::FromDatum {
            datum: cut.from.clone(),
        }),
        large,
        large_unit: unit.to_owned(),
        small,
        window,
        whose: whose.map(|label| whole(&of(label))).collect(),
        narrowed: narrowed.map(of).unwrap_or_default(),
        caution: CutLabel::caution(cut).map(of).unwrap_or_default(),
        edge: CutLabel::at_edge(cut).map(of).unwrap_or_default(),
        keeps: cut.keeps.clone().unwrap_or_default(),
    }
}

fn connector(leg: &LegDoc, tongue: Tongue) -> Vec<String> {
    let part = leg.parts.iter().find(|p| p.kind == PartKind::Connector);
    let labels = match (&leg.connector, part) {
        (Some(doc), Some(part)) => connector_labels(doc, part),
        _ => vec![PartLabel::NoConnector],
    };
    labels.iter().map(|label| tongue.label(label)).collect()
}

fn connector_labels(doc: &ConnectorDoc, part: &PartDoc) -> Vec<PartLabel> {
    let mut said = vec![PartLabel::Connector {
        id: clipped(&part.id, 40),
        means: doc.means,
    }];
    let end = doc.end.clone();
    said.extend(end.map(|end| PartLabel::IntoEnd { end }));
    let why = doc.end_open.clone();
    said.extend(why.map(|why| PartLabel::Stop { why }));
    if doc.means == Means::Compression {
        said.push(PartLabel::DieAndPresses {
            die: doc.die.as_deref().map(|die| clipped(die, 40)),
            presses: doc.presses,
            is_of_one_end: doc.end.is_some(),
        });
    }
    said.push(PartLabel::OrderOf {
        means: doc.means,
        paper: clipped(&part.instructions, 50),
    });
    said.extend(doc.growth_source.as_deref().map(|source| {
        let source = whole(source);
        PartLabel::GrowthMeasured { source }
    }));
    said
}

fn ladders(leg: &LegDoc, tongue: Tongue) -> Vec<Ladder> {
    let waiting = leg.cuts.iter().filter(|c| !c.growth_ladder.is_empty());
    let ladder = |cut: &CutDoc| {
        let rungs = cut.growth_ladder.iter().map(|rung| {
            let mut printed = self::rung(rung, tongue);
            if let Some(finer) = finest_mm(rung, &cut.growth_ladder)
                && !printed.small.is_empty()
            {
                printed.small = format!("{finer} mm");
            }
            printed
        });
        let end = leg.connector.as_ref().and_then(|c| c.end.as_ref());
        let of = end.map_or(FrontLabel::LadderOfSleeve, |end| FrontLabel::LadderOfEnd {
            end: clipped(end, 40),
        });
        Ladder {
            #[cfg(test)]
            what: cut.words.clone(),
            title: tongue.label(&FrontLabel::LadderTitle {
                place: cut.words.to_uppercase(),
            }),
            of: tongue.label(&of),
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

fn rung(rung: &RungDoc, tongue: Tongue) -> Rung {
    let is_metric = tongue.words == Words::Iec;
    let (large, small) = match (&rung.inch, &rung.mark_mm) {
        (Some(inch), Some(mm)) if !is_metric => (format!("{inch} in"), format!("{mm} mm")),
        (_, Some(mm)) => (format!("{mm} mm"), String::new()),
        _ => (tongue.label(&FrontLabel::NoPlace), String::new()),
    };
    let length = if rung.grew_inch.is_empty() {
        format!("{} mm", rung.grew_mm)
    } else {
        rung.grew_inch.clone()
    };
    let window = rung.printed_window.as_ref();
    let window = window.map(|window| CutLabel::MayLieIn {
        window: tongue.window(window),
    });
    Rung {
        grew: tongue.label(&FrontLabel::Grew { length }),
        large,
        small,
        window: window.map_or(String::new(), |label| tongue.label(&label)),
    }
}

fn part(part: &PartDoc, tongue: Tongue) -> String {
    tongue.label(&PartLabel::Part {
        kind: part.kind,
        id: clipped(&part.id, 32),
        side: part.side.clone(),
        paper: clipped(&part.instructions, 48),
        doubts: part.doubts.clone(),
    })
}

/// Open questions of this end, in one line.
fn not_judged(plan: &Plan, leg: &LegDoc, end: &EndDoc) -> String {
    let tongue = Tongue::of_plan(plan);
    let name = name(leg, end);
    let concerns = |ruling: &&RulingDoc| {
        ruling.ruling == Outcome::NotJudged
            && ruling.end.as_ref().is_none_or(|e| *e == name)
            && ruling.leg.as_ref().is_none_or(|l| *l == leg.mark)
    };
    let rulings = plan.rulings.iter().filter(concerns);
    let mut checks: Vec<String> = rulings.map(|r| tongue.check(&r.check)).collect();
    checks.dedup();
    checks.extend(plan.not_computed.iter().cloned());
    whole(&checks.join(", "))
}
