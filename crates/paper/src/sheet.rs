//! Sheet: all that the template places, as texts.
//!
//! Invariants: every number is a text that the plan prints; nothing here is computed but counts of pages and rows.

use crate::FieldPicture;
use crate::clip::{clipped, whole};
use crate::front::{Front, call, fronts};
use jointwright_drawing::{Style, Theme, half_section, strips as strips_of};
use jointwright_joint::cable::Words;
use jointwright_joint::catalogue::PartKind;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::{
    DatumDoc, GapDoc, LegDoc, LineDoc, MaterialDoc, Plan, RulingDoc, StepDoc, StressDoc, WantedDoc,
};
use jointwright_wording::Tongue;
use jointwright_wording::label::{FrontLabel, SheetLabel, SheetText};
use serde::Serialize;
use std::collections::BTreeMap;

/// Greatest height of a strip on a letter and on an A4 page, mm.
const STRIP_LETTER_MM: f64 = 238.0;
const STRIP_A4_MM: f64 = 255.0;

/// A picture that the template places.
#[derive(Clone, Debug, Serialize)]
pub(crate) struct Picture {
    /// Name of its file on the desk.
    pub file: String,
    /// Content, for those who cannot see it.
    alt: String,
    width_mm: f64,
    height_mm: f64,
    #[serde(skip)]
    pub svg: String,
}

/// Strips of one leg, on one page.
#[derive(Clone, Debug, Serialize)]
struct Strips {
    #[cfg(test)]
    #[serde(skip)]
    leg: String,
    head: String,
    foot: String,
    pictures: Vec<Picture>,
    left_out: Vec<String>,
}

/// Rulings of one check with one outcome.
#[derive(Clone, Debug, Serialize)]
struct RulingRow {
    is_pass: bool,
    /// The outcome as a person reads it.
    word: String,
    question: String,
    who: String,
    /// Value, limit and margin of the one with the least margin, or why.
    found: String,
    source: String,
}

/// A row of the material.
#[derive(Clone, Debug, Serialize)]
struct MaterialRow {
    kind: String,
    id: String,
    name: String,
    instructions: String,
    amount: String,
    used_for: String,
    /// Empty where none is stated.
    lots: String,
}

/// A step, in texts.
#[derive(Clone, Debug, Serialize)]
struct StepRow {
    #[cfg(test)]
    #[serde(skip)]
    of: StepDoc,
    title: String,
    /// Parts that are slid on, in order.
    slid: Vec<String>,
    lines: Vec<LineDoc>,
    cautions: Vec<LineDoc>,
    hold: Vec<WantedDoc>,
}

/// All that names a place to cut at: nothing of it is printed where work stops.
#[derive(Clone, Debug, Default, Serialize)]
struct ToCut {
    fronts: Vec<Front>,
    strips: Vec<Strips>,
    /// Pictures of the legs' fields.
    fields: Vec<Picture>,
    /// Judged fields of each leg: leg, field, here, allowed, with which dimensions.
    field_rows: Vec<[String; 5]>,
    steps: Vec<StepRow>,
    /// Rulings of what passes.
    passes: Vec<RulingRow>,
}

/// The sheet.
#[derive(Clone, Debug, Serialize)]
pub(crate) struct Sheet {
    pub program: String,
    /// Its language, by its code in ISO 639-1.
    lang: String,
    /// Texts that the template places, by their keys; a text that it asks for and that is not here stops it.
    texts: BTreeMap<&'static str, String>,
    /// Mark of this plan, large on every page.
    mark: String,
    /// Its issue, and when it was made.
    issue: String,
    made: String,
    paper: String,
    title: String,
    invented: Option<String>,
    never: String,
    job: Vec<[String; 2]>,
    id: String,
    date: [String; 3],
    call: String,
    is_failing: bool,
    /// Why nothing is printed to be cut to.
    stop_title: String,
    cut_nothing: String,
    foot_stop: String,
    foot_behind: String,
    n_phases: u8,
    fails: Vec<RulingRow>,
    not_judged: Vec<RulingRow>,
    #[serde(flatten)]
    to_cut: ToCut,
    figures: Vec<Picture>,
    figures_same: Vec<String>,
    /// Pressure of the parts of each end: end, in words.
    pressure_rows: Vec<[String; 2]>,
    pressure_assumes: String,
    material: Vec<MaterialRow>,
    tools: Vec<LineDoc>,
    unsettled: Vec<String>,
    not_computed: String,
    /// Results that are not computed because a fact is missing.
    missing: Vec<String>,
    people: Vec<[String; 3]>,
}

impl Sheet {
    /// All pictures.
    pub fn pictures(&self) -> impl Iterator<Item = &Picture> {
        let strips = self.to_cut.strips.iter().flat_map(|s| &s.pictures);
        let fields = self.to_cut.fields.iter();
        self.figures.iter().chain(fields).chain(strips)
    }
}

/// The sheet of a plan.
pub(crate) fn sheet(plan: &Plan, fields: &[FieldPicture]) -> Sheet {
    let job = &plan.job;
    let tongue = Tongue::of_plan(plan);
    let of = |label: SheetLabel| tongue.label(&label);
    let is_failing = plan.must_stop();
    let is_metric = job.words == Words::Iec;
    let (figures, figures_same) = figures(plan);
    let texts = SheetText::ALL.iter();
    Sheet {
        program: plan.program.clone(),
        lang: job.language.code().to_owned(),
        texts: texts.map(|text| (text.key(), tongue.label(text))).collect(),
        mark: tongue.plan_mark(&plan.plan_mark),
        issue: plan.plan_mark.issue_words.clone(),
        made: of(SheetLabel::Made {
            when: clipped(&plan.plan_mark.made, 40),
        }),
        paper: if is_metric { "a4" } else { "us-letter" }.to_owned(),
        title: clipped(
            &of(SheetLabel::Title {
                job: job.id.clone(),
                title: job.title.clone(),
            }),
            140,
        ),
        invented: plan.invented.clone(),
        never: plan.never.clone(),
        job: job_rows(plan),
        id: clipped(&job.id, 40),
        date: job.date_parts(),
        call: call(plan),
        is_failing,
        n_phases: job.phases,
        stop_title: stop_title(plan),
        cut_nothing: of(SheetLabel::CutNothing { call: call(plan) }),
        foot_stop: of(SheetLabel::FootStop),
        foot_behind: of(SheetLabel::FootBehind),
        fails: [rows(plan, Outcome::Fail), stop_rows(plan)].concat(),
        figures,
        figures_same,
        pressure_rows: pressure_rows(plan),
        pressure_assumes: plan.pressure_assumes.join("; "),
        material: plan
            .make_up
            .material
            .iter()
            .map(|of| material(of, tongue))
            .collect(),
        tools: plan.make_up.tools.clone(),
        unsettled: unsettled(plan),
        not_computed: plan.not_computed.join(", "),
        missing: plan.missing.clone(),
        people: people(plan),
        to_cut: if is_failing {
            ToCut::default()
        } else {
            to_cut(plan, fields)
        },
        not_judged: rows(plan, Outcome::NotJudged),
    }
}

/// All that names a place to cut at.
fn to_cut(plan: &Plan, fields: &[FieldPicture]) -> ToCut {
    let tongue = Tongue::of_plan(plan);
    let steps = plan.make_up.steps.iter();
    ToCut {
        fronts: fronts(plan),
        strips: strips(plan),
        fields: field_pictures(fields, tongue),
        field_rows: field_rows(plan),
        steps: steps.map(|of| step(of, tongue)).collect(),
        passes: rows(plan, Outcome::Pass),
    }
}

/// Job, title, kind, place and the like: which job and which plan of it.
fn job_rows(plan: &Plan) -> Vec<[String; 2]> {
    let job = &plan.job;
    let tongue = Tongue::of_plan(plan);
    let kind = FrontLabel::Joint {
        kind: job.kind,
        port: None,
    };
    let mark = &plan.plan_mark;
    let rows = [
        (SheetLabel::RowJob, clipped(&job.id, 60)),
        (SheetLabel::RowTitle, clipped(&job.title, 120)),
        (SheetLabel::RowKind, tongue.label(&kind)),
        (SheetLabel::RowPlace, clipped(&job.place, 120)),
        (SheetLabel::RowDay, job.date.clone()),
        (
            SheetLabel::RowPlan,
            format!("{}: {}", tongue.plan_mark(mark), mark.aloud),
        ),
        (SheetLabel::RowIssue, tongue.plan_issue(mark)),
        (SheetLabel::RowFingerprint, mark.whole.clone()),
    ];
    rows.map(|(head, text)| [tongue.label(&head), text]).into()
}

/// Questions that a person must settle before work.
fn unsettled(plan: &Plan) -> Vec<String> {
    let tongue = Tongue::of_plan(plan);
    let stop = |why: &String| tongue.label(&FrontLabel::Stop { why: why.clone() });
    plan.make_up.unsettled.iter().map(stop).collect()
}

fn material(of: &MaterialDoc, tongue: Tongue) -> MaterialRow {
    let amount = match (of.pieces, &of.amount) {
        (Some(pieces), _) => pieces.to_string(),
        (None, Some(amount)) => amount.clone(),
        (None, None) => tongue.label(&SheetLabel::NotComputedFor {
            why: of.why.clone().unwrap_or_default(),
        }),
    };
    let lots = (!of.lots.is_empty()).then(|| SheetLabel::Lots {
        lots: of.lots.clone(),
    });
    MaterialRow {
        kind: tongue.label(&SheetLabel::Material { kind: of.kind }),
        id: of.id.clone(),
        name: of.name.clone(),
        instructions: of.instructions.clone(),
        amount,
        used_for: of.used_for.join(" "),
        lots: lots.map_or(String::new(), |label| tongue.label(&label)),
    }
}

fn step(of: &StepDoc, tongue: Tongue) -> StepRow {
    // A part that comes onto several ends stands once, with all of them.
    let mut slid: Vec<(PartKind, String, Vec<String>)> = Vec::new();
    for slide in &of.slides {
        let same = |(kind, id, _): &&mut (PartKind, String, Vec<String>)| {
            *kind == slide.part && *id == slide.id
        };
        match slid.iter_mut().find(same) {
            Some((_, _, ends)) => ends.push(slide.onto.clone()),
            None => slid.push((slide.part, slide.id.clone(), vec![slide.onto.clone()])),
        }
    }
    let slid = slid
        .into_iter()
        .map(|(kind, id, ends)| tongue.label(&SheetLabel::Onto { kind, id, ends }));
    StepRow {
        #[cfg(test)]
        of: of.clone(),
        title: if of.legs.is_empty() {
            of.title.clone()
        } else {
            tongue.label(&SheetLabel::StepOfLegs {
                legs: of.legs.clone(),
                title: of.title.clone(),
            })
        },
        slid: slid.collect(),
        lines: of.lines.clone(),
        cautions: of.cautions.clone(),
        hold: of.hold.clone(),
    }
}

/// Why no number to cut to is printed.
fn stop_title(plan: &Plan) -> String {
    let label = if plan.outcome == Outcome::Fail {
        SheetLabel::StopOutOfWindow
    } else {
        SheetLabel::StopUntilSomebodySays
    };
    Tongue::of_plan(plan).label(&label)
}

/// Stops though nothing fails.
fn stop_rows(plan: &Plan) -> Vec<RulingRow> {
    let tongue = Tongue::of_plan(plan);
    let open = plan.stops.iter().filter(|stop| stop.lifted_by.is_none());
    let row = |stop: &jointwright_joint::plan::StopDoc| {
        let ruling = plan.rulings.iter().find(|r| r.check == stop.check);
        RulingRow {
            is_pass: false,
            word: tongue.label(&SheetLabel::StopWord),
            question: ruling.map(|r| r.question.clone()).unwrap_or_default(),
            who: stop.whom.clone(),
            found: whole(&stop.say),
            source: tongue.label(&SheetLabel::NobodySaid),
        }
    };
    open.map(row).collect()
}

fn people(plan: &Plan) -> Vec<[String; 3]> {
    let people = plan.make_up.people.iter();
    people
        .map(|p| {
            [
                clipped(&p.name, 60),
                clipped(&p.role, 60),
                p.decides.join(", "),
            ]
        })
        .collect()
}

/// Strips that lie beside each other on one page.
const STRIPS_A_PAGE: usize = 3;

/// Pages of strips, leg by leg: the same piece of all phases together, then the next.
fn strips(plan: &Plan) -> Vec<Strips> {
    let most = if plan.job.words == Words::Iec {
        STRIP_A4_MM
    } else {
        STRIP_LETTER_MM
    };
    let tongue = Tongue::of_plan(plan);
    let of_leg = |(at, leg): (usize, &LegDoc)| -> Vec<Strips> {
        let mut left_out = Vec::new();
        let mut pictures: Vec<([usize; 2], Picture)> = Vec::new();
        for end in &leg.ends {
            for strip in strips_of(leg, end.phase, plan, most) {
                let [piece, n] = strip.piece;
                left_out = strip.left_out;
                let picture = Picture {
                    file: format!("strip-{at}-{}-{piece}.svg", end.phase),
                    alt: tongue.label(&SheetLabel::StripShows {
                        end: format!("{}{}", leg.mark, end.phase),
                        piece,
                        n,
                    }),
                    width_mm: strip.width_mm,
                    height_mm: strip.height_mm,
                    svg: strip.svg,
                };
                pictures.push(([piece, usize::from(end.phase)], picture));
            }
        }
        pictures.sort_by_key(|(place, _)| *place);
        let mark = clipped(&leg.mark, 8);
        let label = |of: fn(String) -> SheetLabel| tongue.label(&of(mark.clone()));
        let pages = pictures.chunks(STRIPS_A_PAGE).map(|page| Strips {
            #[cfg(test)]
            leg: mark.clone(),
            head: label(|leg| SheetLabel::StripsHead { leg }),
            foot: label(|leg| SheetLabel::FootStrips { leg }),
            pictures: page.iter().map(|(_, picture)| picture.clone()).collect(),
            left_out: left_out.clone(),
        });
        pages.collect()
    };
    plan.legs.iter().enumerate().flat_map(of_leg).collect()
}

fn field_pictures(fields: &[FieldPicture], tongue: Tongue) -> Vec<Picture> {
    let picture = |(at, field): (usize, &FieldPicture)| Picture {
        file: format!("field-{at}.svg"),
        alt: tongue.label(&SheetLabel::FieldShows {
            leg: field.leg.clone(),
        }),
        width_mm: 170.0,
        height_mm: 0.0,
        svg: field.svg.clone(),
    };
    fields.iter().enumerate().map(picture).collect()
}

/// The judged fields of every leg, with the dimensions that make them so.
fn field_rows(plan: &Plan) -> Vec<[String; 5]> {
    let tongue = Tongue::of_plan(plan);
    let not_known = || tongue.label(&SheetLabel::NotKnown);
    let of_leg = |leg: &LegDoc| -> Vec<[String; 5]> {
        let Some(field) = &leg.field else {
            return Vec::new();
        };
        let stress = |stress: &StressDoc| {
            [
                clipped(&leg.mark, 8),
                stress.words.clone(),
                format!("{:.2} kV/mm", stress.kv_per_mm),
                stress
                    .allowed_kv_per_mm
                    .map_or_else(not_known, |most| format!("{most:.2} kV/mm")),
                stress.with.clone(),
            ]
        };
        let gap = |gap: &GapDoc| {
            [
                clipped(&leg.mark, 8),
                tongue.label(&SheetLabel::GapMayDischarge { state: gap.state }),
                format!("{:.1} kV rms", gap.inception_kv),
                tongue.label(&SheetLabel::InService {
                    kv: format!("{:.2}", field.voltage_kv),
                }),
                gap.with.clone(),
            ]
        };
        let stresses = field.stresses.iter().map(stress);
        stresses.chain(field.gaps.iter().map(gap)).collect()
    };
    plan.legs.iter().flat_map(of_leg).collect()
}

/// One line an end on how hard its parts sit.
fn pressure_rows(plan: &Plan) -> Vec<[String; 2]> {
    let ends = plan
        .legs
        .iter()
        .flat_map(|leg| leg.ends.iter().map(move |end| (leg, end)));
    ends.filter_map(|(leg, end)| {
        let pressure = end.pressure.as_ref()?;
        let name = clipped(&format!("{}{}", leg.mark, end.phase), 10);
        Some([name, whole(&pressure.line)])
    })
    .collect()
}

/// Half-sections of legs that do not look the same, and which legs look like which.
fn figures(plan: &Plan) -> (Vec<Picture>, Vec<String>) {
    let style = Style {
        theme: Theme::Print,
    };
    let tongue = Tongue::of_plan(plan);
    let (mut figures, mut same) = (Vec::new(), Vec::new());
    let mut drawn: Vec<(String, &str)> = Vec::new();
    for (at, leg) in plan.legs.iter().enumerate() {
        // Two legs look the same if their pictures differ by their names alone.
        let mut nameless = leg.clone();
        nameless.mark = String::new();
        let picture = half_section(&nameless, plan, &style);
        if let Some((_, first)) = drawn.iter().find(|(other, _)| *other == picture) {
            same.push(tongue.label(&SheetLabel::LooksAs {
                leg: clipped(&leg.mark, 8),
                other: clipped(first, 8),
            }));
            continue;
        }
        drawn.push((picture, &leg.mark));
        figures.push(Picture {
            file: format!("figure-{at}.svg"),
            alt: tongue.label(&SheetLabel::FigureShows {
                leg: leg.mark.clone(),
            }),
            width_mm: 190.0,
            height_mm: 0.0,
            svg: half_section(leg, plan, &style),
        });
    }
    (figures, same)
}

/// Rulings of one outcome, those that say the same gathered; of those that pass, the one with the least margin a check.
fn rows(plan: &Plan, outcome: Outcome) -> Vec<RulingRow> {
    let mut groups: Vec<Vec<&RulingDoc>> = Vec::new();
    for ruling in plan.rulings.iter().filter(|r| r.ruling == outcome) {
        let same = |group: &&mut Vec<&RulingDoc>| {
            group.first().is_some_and(|first| {
                first.check == ruling.check
                    && match outcome {
                        // The front pages name whose word each is.
                        Outcome::Pass => ruling.is_of_cuts() || first.source == ruling.source,
                        _ => first.why == ruling.why,
                    }
            })
        };
        match groups.iter_mut().find(same) {
            Some(group) => group.push(ruling),
            None => groups.push(vec![ruling]),
        }
    }
    let rows = groups.iter();
    rows.filter_map(|group| row(plan, outcome, group)).collect()
}

fn row(plan: &Plan, outcome: Outcome, group: &[&RulingDoc]) -> Option<RulingRow> {
    let margin = |r: &&&RulingDoc| r.margin.unwrap_or(f64::INFINITY);
    let least = group
        .iter()
        .min_by(|a, b| margin(a).total_cmp(&margin(b)))?;
    let tongue = Tongue::of_plan(plan);
    let mut who: Vec<String> = group.iter().map(|r| tongue.whom(r)).collect();
    who.dedup();
    let found = match (&least.why, least.margin, &least.unit) {
        // Its numbers stand on the front pages as marks; unrounded they would stand here a second way.
        (None, _, _) if least.is_of_cuts() => {
            let is_open = |r: &RulingDoc| r.is_of_cuts() && r.ruling != Outcome::Pass;
            let are_others = plan.rulings.iter().any(is_open);
            tongue.label(&SheetLabel::AsOnFront { are_others })
        }
        (Some(why), _, _) => {
            let hint = least.hint.as_deref().map(|h| format!(" {h}"));
            format!("{}.{}", why.trim_end_matches('.'), hint.unwrap_or_default())
        }
        (None, Some(_), Some(_)) => {
            let figures = tongue.figures(least);
            format!("{}: {}", tongue.whom(least), figures.unwrap_or_default())
        }
        _ => tongue.label(&SheetLabel::KeepTo {
            found: datum(least.value.as_ref(), tongue),
            limit: datum(least.limit.as_ref(), tongue),
        }),
    };
    Some(RulingRow {
        is_pass: outcome == Outcome::Pass,
        word: tongue.outcome(outcome),
        question: least.question.clone(),
        who: whole(&who.join(" ")),
        found: whole(&found),
        source: match least.source.as_deref() {
            Some(_) if outcome == Outcome::Pass && least.is_of_cuts() => String::new(),
            source => whole(source.unwrap_or_default()),
        },
    })
}

/// A value or limit, not rounded.
fn datum(datum: Option<&DatumDoc>, tongue: Tongue) -> String {
    match datum {
        Some(DatumDoc::Number(number)) => exact(*number),
        Some(DatumDoc::Range { min, max }) => tongue.label(&SheetLabel::Between {
            least: exact(*min),
            greatest: exact(*max),
        }),
        Some(DatumDoc::Text(text)) => whole(text),
        None => tongue.label(&SheetLabel::Nothing),
    }
}

/// A number with as many decimals as it has, to the nanometre where it is in millimetres.
fn exact(number: f64) -> String {
    let text = format!("{number:.6}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
    use jointwright_joint::form::Source;
    use jointwright_joint::job::read_order;
    use jointwright_joint::judge::judge_unsolved as judge;
    use jointwright_joint::plan::CutKind;
    use jointwright_joint::plane::Plane;
    use jointwright_joint::stage::Stage;
    use jointwright_wording::label::CutLabel;
    use jointwright_wording::plan;

    const EXAMPLES: [&str; 5] = [
        include_str!("../../../examples/larkspur-three-way/job.toml"),
        include_str!("../../../examples/dock-straight-not-pressed/job.toml"),
        include_str!("../../../examples/dock-straight-pressed/job.toml"),
        include_str!("../../../examples/quarry-four-way/job.toml"),
        include_str!("../../../examples/tannery-change/job.toml"),
    ];

    /// Plan of a job whose insulation end, if so asked, is measured from the conductor end, so that no growth moves it.
    fn planned(job: &str, is_loose: bool) -> Plan {
        let mut parts = DEMONSTRATION_TEXT.to_owned();
        if is_loose {
            parts = parts.replace(
                "from = \"connector-mouth\", to = \"insulation-end\"",
                "from = \"conductor-end\", to = \"insulation-end\"",
            );
        }
        let catalogue = Source::new(DEMONSTRATION, parts);
        let order = read_order(&Source::new("job.toml", job.to_owned()), &[catalogue]);
        let order = order.unwrap_or_else(|complaints| panic!("{complaints:?}"));
        plan(&judge(&order).unwrap_or_else(|complaints| panic!("{complaints:?}")))
    }

    /// The jobs of the examples, each as it is and without its trial presses, with places that wait for the growth and without.
    fn sheets() -> impl Iterator<Item = (Plan, Sheet)> {
        let without = |job: &str| -> String {
            let lines = job.lines().filter(|line| !line.contains("length_before"));
            lines.map(|line| format!("{line}\n")).collect()
        };
        let jobs = EXAMPLES.into_iter();
        let jobs = jobs.flat_map(move |job| [job.to_owned(), without(job)]);
        let plans = jobs.flat_map(|job| [planned(&job, false), planned(&job, true)]);
        plans.map(|plan| {
            let sheet = sheet(&plan, &[]);
            (plan, sheet)
        })
    }

    /// Legs of a plan, each with the front page of one of its ends and the steps of that leg alone.
    fn pages<'s>(
        plan: &'s Plan,
        sheet: &'s Sheet,
    ) -> Vec<(&'s LegDoc, &'s Front, Vec<&'s StepDoc>)> {
        let legs = plan
            .legs
            .iter()
            .flat_map(|leg| leg.ends.iter().map(move |_| leg));
        let steps_of = |leg: &LegDoc| {
            let steps = sheet.to_cut.steps.iter().map(|row| &row.of);
            steps.filter(|s| s.legs == [leg.mark.as_str()]).collect()
        };
        legs.zip(&sheet.to_cut.fronts)
            .map(|(leg, front)| (leg, front, steps_of(leg)))
            .collect()
    }

    fn sends_to_ladder(text: &str) -> bool {
        text.contains("growth ladder")
    }

    #[test]
    fn a_step_sends_to_a_ladder_only_where_its_front_page_shows_one() {
        let mut n = 0;
        for (plan, sheet) in sheets() {
            for (_, front, steps) in pages(&plan, &sheet) {
                let ladders = front.ladders();
                let lines: Vec<&str> = steps
                    .iter()
                    .flat_map(|s| s.lines.iter().map(|l| l.say.as_str()))
                    .filter(|say| sends_to_ladder(say))
                    .collect();
                assert_eq!(
                    lines.is_empty(),
                    ladders.is_empty(),
                    "{}: {lines:?}",
                    plan.job.id
                );
                for what in ladders {
                    assert!(
                        lines.iter().any(|say| say.contains(what)),
                        "{}: {what}",
                        plan.job.id
                    );
                    n += 1;
                }
            }
        }
        assert!(n > 3, "{n} ladders");
    }

    #[test]
    fn no_step_names_a_window_that_its_front_page_withholds() {
        let mut n = 0;
        for (plan, sheet) in sheets() {
            if sheet.is_failing {
                assert!(
                    sheet.to_cut.steps.is_empty()
                        && sheet.to_cut.fronts.is_empty()
                        && sheet.to_cut.strips.is_empty()
                );
            }
            for (leg, front, steps) in pages(&plan, &sheet) {
                let page = serde_json::to_value(front).expect("a page").to_string();
                let ends = leg
                    .cuts
                    .iter()
                    .map(|c| format!("{} on leg {}", c.words, leg.mark));
                let ends: Vec<String> = ends.collect();
                let holds = steps.iter().flat_map(|s| &s.hold);
                for wanted in holds.filter(|w| ends.contains(&w.what)) {
                    let Some(window) = wanted.window.as_deref().filter(|w| !sends_to_ladder(w))
                    else {
                        continue;
                    };
                    for part in window.split(", ").flat_map(|part| part.split(" in,")) {
                        assert!(
                            page.contains(part),
                            "{}: {}: {part}",
                            plan.job.id,
                            wanted.what
                        );
                    }
                    n += 1;
                }
            }
        }
        assert!(n > 50, "{n} windows");
    }

    #[test]
    fn front_page_strip_and_steps_say_one_word_for_the_edge_of_a_shield() {
        let mut n = 0;
        for job in EXAMPLES {
            let plan = planned(job, false);
            let sheet = sheet(&plan, &[]);
            if sheet.is_failing {
                continue;
            }
            for (leg, front) in plan
                .legs
                .iter()
                .flat_map(|leg| leg.ends.iter().map(move |_| leg))
                .zip(&sheet.to_cut.fronts)
            {
                let cut = leg
                    .cuts
                    .iter()
                    .find(|c| c.plane == Plane::ShieldEdge)
                    .expect("an edge");
                let page = serde_json::to_value(front).expect("a page").to_string();
                let tongue = Tongue::of_plan(&plan);
                let act = tongue.label(&CutLabel::act(cut));
                assert!(page.contains(&format!("\"act\":\"{act} {}\"", cut.words)));
                let mut steps = sheet
                    .to_cut
                    .steps
                    .iter()
                    .map(|row| &row.of)
                    .filter(|s| s.stage == Stage::Shield && s.legs == [leg.mark.as_str()]);
                let title = &steps.next().expect("a step").title;
                assert!(title.to_uppercase().starts_with(&act), "{title}");
                let strips = sheet.to_cut.strips.iter().filter(|s| s.leg == leg.mark);
                let pictures: Vec<&Picture> = strips.flat_map(|s| &s.pictures).collect();
                // A strip goes on in pieces, and the edge stands on one of them.
                for phase in leg.ends.iter().map(|end| end.phase) {
                    let of_end = format!("Marking strip of {}{phase} ", leg.mark);
                    let mut own = pictures.iter().filter(|p| p.alt.starts_with(&of_end));
                    let says = |p: &&&Picture| p.svg.contains("LAY BACK") || p.svg.contains(">LAY");
                    assert_eq!(
                        own.any(|p| says(&p)),
                        cut.kind == CutKind::LayBack,
                        "{of_end}"
                    );
                    n += 1;
                }
            }
        }
        assert!(n > 5, "{n} strips");
    }

    #[test]
    fn numbers_keep_every_digit_they_have() {
        assert_eq!(exact(27.0), "27");
        assert_eq!(exact(0.396_875), "0.396875");
    }
}
