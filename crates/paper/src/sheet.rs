//! Sheet: all that the template places, as texts.
//!
//! Invariants: every number is a text that the plan prints; nothing here is computed but counts of pages and rows.

use crate::FieldPicture;
use crate::clip::{clipped, whole};
use crate::front::{Front, fronts};
use jointwright_drawing::{Style, Theme, half_section, strips as strips_of};
use jointwright_joint::cable::Words;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::{
    DatumDoc, GapDoc, LegDoc, LineDoc, MaterialDoc, Plan, RulingDoc, StepDoc, StressDoc,
    outcome_words,
};
use jointwright_wording::Tongue;
use jointwright_wording::label::SheetLabel;
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
    /// What it shows, for those who cannot see it.
    alt: String,
    width_mm: f64,
    height_mm: f64,
    #[serde(skip)]
    pub svg: String,
}

/// Strips of one leg, on one page.
#[derive(Clone, Debug, Serialize)]
struct Strips {
    leg: String,
    pictures: Vec<Picture>,
    left_out: Vec<String>,
}

/// Rulings of one check with one outcome.
#[derive(Clone, Debug, Serialize)]
struct RulingRow {
    outcome: &'static str,
    /// The outcome as a person reads it.
    word: String,
    question: String,
    who: String,
    /// Value, limit and margin of the one with the least margin, or why.
    found: String,
    source: String,
}

/// The sheet.
#[derive(Clone, Debug, Serialize)]
pub(crate) struct Sheet {
    pub program: String,
    /// What tells this plan from every other, large on every page.
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
    n_phases: u8,
    fails: Vec<RulingRow>,
    fronts: Vec<Front>,
    strips: Vec<Strips>,
    figures: Vec<Picture>,
    figures_same: Vec<String>,
    /// Pictures of the legs' fields.
    fields: Vec<Picture>,
    /// What is said of each leg's field: leg, what, here, allowed, with which dimensions.
    field_rows: Vec<[String; 5]>,
    /// How hard the parts of each end sit: end, in words.
    pressure_rows: Vec<[String; 2]>,
    pressure_assumes: String,
    material: Vec<MaterialDoc>,
    tools: Vec<LineDoc>,
    steps: Vec<StepDoc>,
    unsettled: Vec<String>,
    rulings: Vec<RulingRow>,
    not_computed: String,
    /// What is not computed for want of something.
    missing: Vec<String>,
    people: Vec<[String; 3]>,
}

impl Sheet {
    /// All pictures.
    pub fn pictures(&self) -> impl Iterator<Item = &Picture> {
        let strips = self.strips.iter().flat_map(|s| &s.pictures);
        self.figures.iter().chain(&self.fields).chain(strips)
    }
}

/// The sheet of a plan.
pub(crate) fn sheet(plan: &Plan, fields: &[FieldPicture]) -> Sheet {
    let job = &plan.job;
    let is_failing = plan.must_stop();
    let is_metric = job.words == Words::Iec;
    let (figures, figures_same) = figures(plan);
    Sheet {
        program: plan.program.clone(),
        mark: plan.plan_mark.words(),
        issue: plan.plan_mark.issue_words.clone(),
        made: format!("made {}", clipped(&plan.plan_mark.made, 40)),
        paper: if is_metric { "a4" } else { "us-letter" }.to_owned(),
        title: clipped(&format!("Make-up sheet {}: {}", job.id, job.title), 140),
        invented: plan.invented.clone(),
        never: plan.never.clone(),
        job: job_rows(plan),
        id: clipped(&job.id, 40),
        date: job.date_parts(),
        // The number is what must not be lost.
        call: format!(
            "{}, {}",
            clipped(&job.stop_and_call.name, 40),
            clipped(&job.stop_and_call.number, 40)
        ),
        is_failing,
        n_phases: job.phases,
        stop_title: stop_title(plan),
        fails: [rows(plan, Outcome::Fail), stop_rows(plan)].concat(),
        fronts: if is_failing { Vec::new() } else { fronts(plan) },
        strips: if is_failing { Vec::new() } else { strips(plan) },
        figures,
        figures_same,
        // They name places of cuts; where a check fails none is printed.
        fields: if is_failing {
            Vec::new()
        } else {
            field_pictures(fields)
        },
        field_rows: if is_failing {
            Vec::new()
        } else {
            field_rows(plan)
        },
        pressure_rows: pressure_rows(plan),
        pressure_assumes: plan.pressure_assumes.join("; "),
        material: plan.make_up.material.clone(),
        tools: plan.make_up.tools.clone(),
        // Their windows are numbers to cut to.
        steps: if is_failing {
            Vec::new()
        } else {
            plan.make_up.steps.clone()
        },
        unsettled: plan.make_up.unsettled.clone(),
        // What passes names places of cuts; where a check fails none is printed.
        rulings: if is_failing {
            rows(plan, Outcome::NotJudged)
        } else {
            [rows(plan, Outcome::NotJudged), rows(plan, Outcome::Pass)].concat()
        },
        not_computed: plan.not_computed.join(", "),
        missing: plan.missing.clone(),
        people: people(plan),
    }
}

/// Which job and which plan of it.
fn job_rows(plan: &Plan) -> Vec<[String; 2]> {
    let job = &plan.job;
    vec![
        ["job".to_owned(), clipped(&job.id, 60)],
        ["title".to_owned(), clipped(&job.title, 120)],
        ["kind".to_owned(), format!("{} joint", job.kind.name())],
        ["place".to_owned(), clipped(&job.place, 120)],
        ["day of the work".to_owned(), job.date.clone()],
        [
            "this plan".to_owned(),
            format!("{}: {}", plan.plan_mark.words(), plan.plan_mark.aloud),
        ],
        ["issue".to_owned(), plan.plan_mark.line()],
        ["fingerprint".to_owned(), plan.plan_mark.whole.clone()],
    ]
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

/// What stops work though nothing fails.
fn stop_rows(plan: &Plan) -> Vec<RulingRow> {
    let open = plan.stops.iter().filter(|stop| stop.lifted_by.is_none());
    let row = |stop: &jointwright_joint::plan::StopDoc| {
        let ruling = plan.rulings.iter().find(|r| r.check == stop.check);
        RulingRow {
            outcome: "STOP",
            word: "stop".to_owned(),
            question: ruling.map(|r| r.question.clone()).unwrap_or_default(),
            who: stop.whom.clone(),
            found: whole(&stop.say),
            source: "nobody has said which it is".to_owned(),
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
    let of_leg = |(at, leg): (usize, &LegDoc)| -> Vec<Strips> {
        let mut left_out = Vec::new();
        let mut pictures: Vec<([usize; 2], Picture)> = Vec::new();
        for end in &leg.ends {
            for strip in strips_of(leg, end.phase, plan, most) {
                let [piece, n] = strip.piece;
                left_out = strip.left_out;
                let picture = Picture {
                    file: format!("strip-{at}-{}-{piece}.svg", end.phase),
                    alt: format!(
                        "Marking strip of {}{} at full size, piece {piece} of {n}; its numbers stand on the front page.",
                        leg.mark, end.phase
                    ),
                    width_mm: strip.width_mm,
                    height_mm: strip.height_mm,
                    svg: strip.svg,
                };
                pictures.push(([piece, usize::from(end.phase)], picture));
            }
        }
        pictures.sort_by_key(|(place, _)| *place);
        let pages = pictures.chunks(STRIPS_A_PAGE).map(|page| Strips {
            leg: clipped(&leg.mark, 8),
            pictures: page.iter().map(|(_, picture)| picture.clone()).collect(),
            left_out: left_out.clone(),
        });
        pages.collect()
    };
    plan.legs.iter().enumerate().flat_map(of_leg).collect()
}

fn field_pictures(fields: &[FieldPicture]) -> Vec<Picture> {
    let picture = |(at, field): (usize, &FieldPicture)| Picture {
        file: format!("field-{at}.svg"),
        alt: format!(
            "Electric field of leg {} at the worst of its windows; its numbers stand in the table above.",
            field.leg
        ),
        width_mm: 170.0,
        height_mm: 0.0,
        svg: field.svg.clone(),
    };
    fields.iter().enumerate().map(picture).collect()
}

/// The judged fields of every leg, with the dimensions that make them so.
fn field_rows(plan: &Plan) -> Vec<[String; 5]> {
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
                    .map_or("not known".to_owned(), |most| format!("{most:.2} kV/mm")),
                stress.with.clone(),
            ]
        };
        let gap = |gap: &GapDoc| {
            [
                clipped(&leg.mark, 8),
                format!(
                    "gap before the screen edge, {}: discharge may begin at, as computed",
                    gap.words()
                ),
                format!("{:.1} kV rms", gap.inception_kv),
                format!("in service {:.2} kV rms", field.voltage_kv),
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
    let (mut figures, mut same) = (Vec::new(), Vec::new());
    let mut drawn: Vec<(String, &str)> = Vec::new();
    for (at, leg) in plan.legs.iter().enumerate() {
        // Two legs look the same if their pictures differ by their names alone.
        let mut nameless = leg.clone();
        nameless.mark = String::new();
        let picture = half_section(&nameless, plan, &style);
        if let Some((_, first)) = drawn.iter().find(|(other, _)| *other == picture) {
            same.push(format!(
                "Leg {} looks as leg {} does.",
                clipped(&leg.mark, 8),
                clipped(first, 8)
            ));
            continue;
        }
        drawn.push((picture, &leg.mark));
        figures.push(Picture {
            file: format!("figure-{at}.svg"),
            alt: format!(
                "Half-section of leg {} as made up; its numbers stand on the front page.",
                leg.mark
            ),
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
    let printed = printed(plan);
    groups
        .iter()
        .filter_map(|group| row(plan, outcome, group))
        .map(|row| RulingRow {
            found: as_printed(&row.found, &printed),
            source: as_printed(&row.source, &printed),
            ..row
        })
        .collect()
}

/// Places and bounds of cuts, unrounded, with the text in which each stands on the front pages.
fn printed(plan: &Plan) -> BTreeMap<String, String> {
    let mut printed = BTreeMap::new();
    for cut in plan.legs.iter().flat_map(|leg| &leg.cuts) {
        let window = cut.printed_window.as_ref();
        let bounds = [
            (cut.nominal_mm, cut.mark_mm.as_ref()),
            (cut.mark_at_mm, cut.mark_mm.as_ref()),
            (cut.min_mm, window.map(|w| &w.mm[0])),
            (cut.max_mm, window.map(|w| &w.mm[1])),
        ];
        for (length, text) in bounds {
            if let (Some(length), Some(text)) = (length, text)
                && text.parse::<f64>().is_ok_and(|t| (t - length).abs() < 0.1)
            {
                printed.entry(exact(length)).or_insert_with(|| text.clone());
            }
        }
    }
    printed
}

/// Text in which no number stands unrounded that the front pages round: one length, one text.
fn as_printed(text: &str, printed: &BTreeMap<String, String>) -> String {
    let mut out = String::new();
    let mut number = String::new();
    let settle = |number: &mut String, out: &mut String| {
        let point = if number.ends_with('.') { "." } else { "" };
        let bare = number.trim_end_matches('.');
        out.push_str(printed.get(bare).map_or(bare, String::as_str));
        out.push_str(point);
        number.clear();
    };
    for letter in text.chars() {
        if letter.is_ascii_digit() || (letter == '.' && !number.is_empty()) {
            number.push(letter);
        } else {
            settle(&mut number, &mut out);
            out.push(letter);
        }
    }
    settle(&mut number, &mut out);
    out
}

fn row(plan: &Plan, outcome: Outcome, group: &[&RulingDoc]) -> Option<RulingRow> {
    let margin = |r: &&&RulingDoc| r.margin.unwrap_or(f64::INFINITY);
    let least = group
        .iter()
        .min_by(|a, b| margin(a).total_cmp(&margin(b)))?;
    let mut who: Vec<String> = group.iter().map(|r| subject(r)).collect();
    who.dedup();
    let found = match (&least.why, least.margin, &least.unit) {
        // Its numbers stand on the front pages as marks; unrounded they would stand here a second way.
        (None, _, _) if least.is_of_cuts() => {
            let is_open = |r: &RulingDoc| r.is_of_cuts() && r.ruling != Outcome::Pass;
            let others = if plan.rulings.iter().any(is_open) {
                "other "
            } else {
                ""
            };
            format!("every {others}place and window as on the front pages")
        }
        (Some(why), _, _) => {
            let hint = least.hint.as_deref().map(|h| format!(" {h}"));
            format!("{}.{}", why.trim_end_matches('.'), hint.unwrap_or_default())
        }
        (None, Some(_), Some(_)) => {
            let figures = Tongue::of_plan(plan).figures(least);
            format!("{}: {}", subject(least), figures.unwrap_or_default())
        }
        _ => format!(
            "{}; to keep to {}",
            datum(least.value.as_ref()),
            datum(least.limit.as_ref())
        ),
    };
    Some(RulingRow {
        outcome: outcome.name(),
        word: outcome_words(outcome).to_owned(),
        question: least.question.clone(),
        who: whole(&who.join(" ")),
        found: whole(&found),
        source: match least.source.as_deref() {
            Some(_) if outcome == Outcome::Pass && least.is_of_cuts() => String::new(),
            source => whole(source.unwrap_or_default()),
        },
    })
}

fn subject(ruling: &RulingDoc) -> String {
    match (&ruling.end, &ruling.leg) {
        (Some(end), _) => end.clone(),
        (None, Some(leg)) => leg.clone(),
        (None, None) => "joint".to_owned(),
    }
}

/// A value or limit, not rounded.
fn datum(datum: Option<&DatumDoc>) -> String {
    match datum {
        Some(DatumDoc::Number(number)) => exact(*number),
        Some(DatumDoc::Range { min, max }) => format!("{} to {}", exact(*min), exact(*max)),
        Some(DatumDoc::Text(text)) => whole(text),
        None => "nothing".to_owned(),
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
            let steps = sheet.steps.iter();
            steps.filter(|s| s.legs == [leg.mark.as_str()]).collect()
        };
        legs.zip(&sheet.fronts)
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
                    sheet.steps.is_empty() && sheet.fronts.is_empty() && sheet.strips.is_empty()
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
                .zip(&sheet.fronts)
            {
                let cut = leg
                    .cuts
                    .iter()
                    .find(|c| c.plane == Plane::ShieldEdge)
                    .expect("an edge");
                let page = serde_json::to_value(front).expect("a page").to_string();
                assert!(page.contains(&format!("\"act\":\"{}\"", cut.act())));
                let mut steps = sheet
                    .steps
                    .iter()
                    .filter(|s| s.stage == Stage::Shield && s.legs == [leg.mark.as_str()]);
                let title = &steps.next().expect("a step").title;
                assert!(title.to_uppercase().starts_with(cut.act()), "{title}");
                let strips = sheet.strips.iter().filter(|s| s.leg == leg.mark);
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
    fn a_length_of_the_front_page_is_not_printed_a_second_way() {
        let printed = BTreeMap::from([("265.1125".to_owned(), "265.1".to_owned())]);
        let said = |text: &str| as_printed(text, &printed);
        assert_eq!(said("1 cut of 265.1125 mm."), "1 cut of 265.1 mm.");
        assert_eq!(said("of 265.1125."), "of 265.1.");
        assert_eq!(said("1265.1125 and 265.11250"), "1265.1125 and 265.11250");
        assert_eq!(said("paper v2..3"), "paper v2..3");
    }

    #[test]
    fn numbers_keep_every_digit_they_have() {
        assert_eq!(exact(27.0), "27");
        assert_eq!(exact(0.396_875), "0.396875");
    }
}
