//! Promises of the document for every plan: a limit and its source, a reason, a nominal or the reason why there is none.

use crate::cases::{everything, named};
use jointwright_joint::cable::Words;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::{DatumDoc, DiameterOf, LegDoc, NotAPlan, PlacedDoc, Plan};
use jointwright_joint::said::{AskSaid, Said, Wording};
use jointwright_units::Length;
use jointwright_wording::Tongue;

const US: Tongue = Tongue::english(Words::Us);

fn is_said(text: &Option<String>) -> bool {
    text.as_ref().is_some_and(|t| !t.trim().is_empty())
}

/// Facts that a plan leaves unsaid.
fn unsaid(plan: &Plan) -> Vec<String> {
    let mut unsaid = Vec::new();
    for r in &plan.rulings {
        let whom = format!("{} of {:?} {:?}", r.check, r.leg, r.end);
        match r.ruling.name() {
            "pass" | "fail" => {
                if r.limit.is_none() || !is_said(&r.source) || r.value.is_none() {
                    unsaid.push(format!(
                        "{whom}: {} without value, limit or source",
                        r.ruling.name()
                    ));
                }
                if r.ruling == Outcome::Fail && !(is_said(&r.why) && is_said(&r.hint)) {
                    unsaid.push(format!("{whom}: a fail without why or hint"));
                }
            }
            "not-judged" if is_said(&r.why) => {}
            _ => unsaid.push(format!("{whom}: {} without why", r.ruling.name())),
        }
    }
    plan.legs
        .iter()
        .for_each(|leg| unsaid_of_leg(leg, &mut unsaid));
    unsaid
}

fn unsaid_of_leg(leg: &LegDoc, unsaid: &mut Vec<String>) {
    for cut in &leg.cuts {
        let whom = format!("{} of leg {}", cut.plane.name(), leg.mark);
        if cut.nominal_mm.is_none() && !is_said(&cut.why) {
            unsaid.push(format!("{whom}: neither a nominal nor why"));
        }
        if cut.min_mm.is_none() && !is_said(&cut.why) {
            unsaid.push(format!("{whom}: neither a window nor why"));
        }
        if cut.min_mm.is_some() && (cut.why.is_some() || cut.window_of.is_empty()) {
            unsaid.push(format!("{whom}: a window of nobody"));
        }
        let is_whole = |placed: &PlacedDoc| {
            let mut others = leg.cuts.iter().filter(|other| other.plane != cut.plane);
            !placed.by.is_empty()
                && (placed.from == "conductor end" || others.any(|o| o.words == placed.from))
        };
        if cut.nominal_mm.is_some() && !cut.placed.as_ref().is_some_and(is_whole) {
            unsaid.push(format!("{whom}: a place of nobody"));
        }
        if cut.nominal_mm.is_none() && (cut.inch.is_some() || cut.mark_mm.is_some()) {
            unsaid.push(format!("{whom}: a mark without a nominal"));
        }
        // A ladder is shown instead of a nominal, never beside it.
        if cut.nominal_mm.is_some() && !cut.growth_ladder.is_empty() {
            unsaid.push(format!("{whom}: a nominal and a ladder"));
        }
    }
}

#[test]
fn every_ruling_and_every_cut_says_what_it_owes() {
    for case in everything() {
        let plan = case.plan();
        assert!(plan.rulings.len() > 20, "{}", case.slug);
        assert_eq!(unsaid(&plan), [""; 0], "{}", case.slug);
    }
}

#[test]
fn issue_16_the_row_that_gives_a_place_is_named_apart_from_whose_window_it_is() {
    let plan = named("larkspur-three-way").plan();
    let leg = plan.legs.iter().find(|leg| leg.mark == "B").expect("leg B");
    let cut = |plane: &str| {
        leg.cuts
            .iter()
            .find(|c| c.plane.name() == plane)
            .expect("a cut")
    };
    let end = cut("insulation-end");
    let words = US.whose(end);
    let [place, window] = words.as_slice() else {
        panic!("{words:?}");
    };
    // The connector's own paper places it, and has no window there.
    assert!(
        place.starts_with("place by: ") && place.contains("demo-contact-pressed"),
        "{place}"
    );
    assert!(
        window.starts_with("window by: ") && !window.contains("demo-contact-pressed"),
        "{window}"
    );
    // The twin: one row gives both.
    let words = US.whose(cut("jacket-edge"));
    assert_eq!(words.len(), 1);
    assert!(
        words[0].starts_with("place and window by: demo-seal-30")
            && words[0].ends_with("from the metallic shield edge"),
        "{words:?}"
    );
}

/// Millimetres in a text without inches before them.
fn bare_mm(text: &str) -> Vec<String> {
    let parts = text.match_indices(" mm");
    let bare = parts.filter(|(at, _)| {
        let before = text[..*at].rsplit([' ', '(']).next().unwrap_or_default();
        let opens = text[..at - before.len()].ends_with('(');
        // "21.1 to 30.9 mm" within one bracket.
        let range = text[..at - before.len()].ends_with(" to ");
        !opens && !range && before.parse::<f64>().is_ok()
    });
    bare.map(|(at, _)| text[at.saturating_sub(40)..at + 3].to_owned())
        .collect()
}

#[test]
fn issue_16_what_fails_of_a_length_is_said_in_the_units_of_the_page() {
    let mut n = 0;
    for case in everything() {
        let plan = case.plan();
        let fails = plan.rulings.iter().filter(|r| r.ruling == Outcome::Fail);
        for r in fails.filter(|r| r.unit.as_deref() == Some("mm")) {
            let said = [r.why.as_deref(), r.hint.as_deref()];
            for text in said.into_iter().flatten() {
                n += usize::from(text.contains(" mm"));
                if plan.job.words == Words::Us {
                    assert_eq!(bare_mm(text), [""; 0], "{}: {}", case.slug, r.check);
                } else {
                    assert!(!text.contains(" in ("), "{}: {text}", case.slug);
                }
            }
        }
    }
    assert!(n > 4, "{n} sentences");
}

#[test]
fn millimetres_without_inches_are_noticed() {
    assert_eq!(bare_mm("it is 0.3 mm too large").len(), 1);
    assert!(bare_mm("it is 0.012 in (0.3 mm) too large").is_empty());
}

#[test]
fn a_source_a_reason_or_a_nominal_taken_away_is_noticed() {
    let whole = named("straight-tape-growth-unknown").plan();
    let mut plan = whole.clone();
    let pass = plan.rulings.iter_mut().find(|r| r.ruling == Outcome::Pass);
    pass.expect("a pass").source = None;
    assert_eq!(unsaid(&plan).len(), 1);
    let mut plan = whole.clone();
    let open = plan
        .rulings
        .iter_mut()
        .find(|r| r.ruling == Outcome::NotJudged);
    open.expect("a not-judged").why = Some(" ".to_owned());
    assert_eq!(unsaid(&plan).len(), 1);
    let mut plan = whole;
    let cut = &mut plan.legs[0].cuts[0];
    assert!(cut.nominal_mm.is_none());
    cut.why = None;
    assert_eq!(unsaid(&plan).len(), 2);
}

#[test]
fn a_cut_that_waits_for_the_growth_is_null_in_the_document_and_says_why() {
    let plan = named("straight-tape-growth-unknown").plan();
    let json = serde_json::to_value(&plan).expect("a document");
    let cut = &json["legs"][0]["cuts"][0];
    assert_eq!(cut["plane"], "insulation-end");
    assert!(cut["nominal_mm"].is_null() && cut["min_mm"].is_null());
    assert!(cut["why"].as_str().is_some_and(|why| !why.is_empty()));
    assert_eq!(cut["growth_ladder"].as_array().map(Vec::len), Some(9));
}

/// Marks printed outside their window.
fn outside(plan: &Plan) -> Vec<String> {
    let mut outside = Vec::new();
    let mut see = |what: String,
                   min: Option<f64>,
                   max: Option<f64>,
                   inch: &Option<String>,
                   mm: &Option<String>| {
        let (Some(min), Some(max)) = (min, max) else {
            return;
        };
        let inch = inch.as_ref().map(|text| {
            Length::parse_cut(&format!("{text} in"))
                .expect("an inch mark")
                .mm()
        });
        let mm = mm
            .as_ref()
            .map(|text| text.parse::<f64>().expect("millimetres"));
        assert!(mm.is_some(), "{what} has a window and a mark");
        for (found, unit) in [(inch, "in"), (mm, "mm")] {
            // Doubles stand for exact half-nanometres; a picometre is no distance.
            if found.is_some_and(|x| x < min - 1e-9 || x > max + 1e-9) {
                outside.push(format!(
                    "{what}: {found:?} mm as printed in {unit}, window {min} to {max}"
                ));
            }
        }
    };
    for leg in &plan.legs {
        for cut in &leg.cuts {
            let what = format!("{} of leg {}", cut.plane.name(), leg.mark);
            see(
                what.clone(),
                cut.min_mm,
                cut.max_mm,
                &cut.inch,
                &cut.mark_mm,
            );
            if let Some(printed) = &cut.printed_window {
                for side in 0..2 {
                    let inch = printed.inch.as_ref().map(|inch| inch[side].clone());
                    see(
                        format!("{what}, window"),
                        cut.min_mm,
                        cut.max_mm,
                        &inch,
                        &Some(printed.mm[side].clone()),
                    );
                }
            }
            for rung in &cut.growth_ladder {
                see(
                    format!("{what}, grew {}", rung.grew_inch),
                    rung.min_mm,
                    rung.max_mm,
                    &rung.inch,
                    &rung.mark_mm,
                );
            }
        }
    }
    outside
}

#[test]
fn every_printed_mark_lies_in_its_window() {
    for case in everything() {
        assert_eq!(outside(&case.plan()), [""; 0], "{}", case.slug);
    }
}

#[test]
fn a_window_moved_by_its_own_width_leaves_the_mark_outside() {
    let mut plan = named("straight-wires-growth-measured").plan();
    let cut = &mut plan.legs[0].cuts[1];
    let width = cut.max_mm.zip(cut.min_mm).map(|(max, min)| max - min);
    cut.min_mm = cut.max_mm;
    cut.max_mm = cut.max_mm.zip(width).map(|(max, width)| max + width);
    assert!(!outside(&plan).is_empty());
}

/// Exact places that differ from their printed text, or that are missing beside a printed text.
fn not_as_printed(plan: &Plan) -> Vec<String> {
    let mut found = Vec::new();
    for leg in &plan.legs {
        let cuts = leg.cuts.iter().map(|cut| {
            let place = (&cut.inch, &cut.mark_mm, cut.mark_at_mm);
            (
                cut.plane.name().to_owned(),
                place,
                cut.printed_window.as_ref(),
            )
        });
        let rungs = leg.cuts.iter().flat_map(|cut| {
            cut.growth_ladder.iter().map(|rung| {
                let place = (&rung.inch, &rung.mark_mm, rung.mark_at_mm);
                let what = format!("{}, grew {} mm", cut.plane.name(), rung.grew_mm);
                (what, place, rung.printed_window.as_ref())
            })
        });
        for (what, (inch, mm, at_mm), window) in cuts.chain(rungs) {
            if !is_at(inch.as_ref(), mm.as_ref(), at_mm) {
                found.push(format!("{what} of leg {}: mark at {at_mm:?}", leg.mark));
            }
            for side in window.iter().flat_map(|_| 0..2) {
                let inch = window.and_then(|w| Some(&w.inch.as_ref()?[side]));
                let at_mm = window.and_then(|w| Some(w.at_mm?[side]));
                if !is_at(inch, window.map(|w| &w.mm[side]), at_mm) {
                    found.push(format!("{what} of leg {}: window at {at_mm:?}", leg.mark));
                }
            }
        }
    }
    found
}

/// Whether a place is the printed tick or, without one, the printed millimetres to their last digit.
fn is_at(inch: Option<&String>, mm: Option<&String>, at_mm: Option<f64>) -> bool {
    match (inch, mm, at_mm) {
        (None, None, None) => true,
        (Some(inch), _, Some(at_mm)) => {
            let tick = Length::parse_cut(&format!("{inch} in"));
            tick.is_ok_and(|tick| tick.mm() == at_mm)
        }
        (None, Some(mm), Some(at_mm)) => mm.parse() == Ok(at_mm),
        _ => false,
    }
}

#[test]
fn every_exact_place_is_what_is_printed_beside_it() {
    for case in everything() {
        assert_eq!(not_as_printed(&case.plan()), [""; 0], "{}", case.slug);
    }
}

#[test]
fn an_exact_place_moved_by_a_sixty_fourth_is_noticed() {
    let mut plan = named("straight-wires-growth-measured").plan();
    let cut = &mut plan.legs[0].cuts[1];
    cut.mark_at_mm = cut.mark_at_mm.map(|at_mm| at_mm + 0.396_875);
    let window = cut.printed_window.as_mut().expect("a window");
    window.at_mm = window.at_mm.map(|[least, _]| [least, least]);
    assert_eq!(not_as_printed(&plan).len(), 2);
}

#[test]
fn layers_grow_outward_and_say_whether_they_were_read() {
    let plan = named("straight-wires-growth-measured").plan();
    for leg in &plan.legs {
        assert!(
            leg.layers
                .is_sorted_by(|a, b| a.diameter_mm < b.diameter_mm)
        );
        for layer in &leg.layers {
            let ends = leg.ends.iter().flat_map(|end| &end.readings);
            let is_read = ends.into_iter().any(|read| read.over == layer.layer);
            let expected = if is_read {
                DiameterOf::Readings
            } else {
                DiameterOf::Papers
            };
            assert_eq!(layer.of, expected, "{}", layer.words);
        }
        assert!(
            leg.layers
                .iter()
                .any(|layer| layer.of == DiameterOf::Readings)
        );
    }
}

#[test]
fn planes_and_cuts_are_not_the_same_and_none_of_them_waits_for_growth() {
    let plan = named("straight-tape-growth-unknown").plan();
    for leg in &plan.legs {
        let cuts: Vec<&str> = leg.cuts.iter().map(|cut| cut.plane.name()).collect();
        let planes: Vec<&str> = leg.planes.iter().map(|p| p.plane.name()).collect();
        assert!(planes.iter().all(|plane| !cuts.contains(plane)));
        assert!(planes.contains(&"electrode-end"), "{planes:?}");
        assert!(!planes.contains(&"connector-mouth"), "{planes:?}");
    }
}

#[test]
fn the_body_of_the_tannery_is_exactly_two_point_three_millimetres_too_large_for_leg_b() {
    let plan = named("tannery-change").plan();
    let fails: Vec<_> = plan
        .rulings
        .iter()
        .filter(|r| r.ruling == Outcome::Fail)
        .collect();
    let fail = fails
        .iter()
        .find(|r| r.check == "insulation_in_body")
        .expect("it fails");
    assert_eq!(fail.end.as_deref(), Some("B1"));
    let Some(DatumDoc::Range { min, max }) = fail.value else {
        panic!("{:?}", fail.value)
    };
    assert_eq!((min, max), (18.8, 19.1));
    let Some(DatumDoc::Range { min, max }) = fail.limit else {
        panic!("{:?}", fail.limit)
    };
    assert_eq!((min, max), (21.1, 29.0));
    assert_eq!(
        (fail.margin, fail.unit.as_deref()),
        (Some(-2.3), Some("mm"))
    );
    assert!(
        fail.hint
            .as_ref()
            .is_some_and(|h| h.contains("0.091 in (2.3 mm) too large"))
    );
    let others = plan
        .rulings
        .iter()
        .filter(|r| r.check == "insulation_in_body" && r.end.as_deref() == Some("A1"));
    assert!(others.into_iter().all(|r| r.ruling == Outcome::Pass));
}

#[test]
fn issue_16_no_mark_stands_on_a_printed_bound_that_finer_ticks_would_move() {
    for case in everything() {
        let plan = case.plan();
        let cuts = plan.legs.iter().flat_map(|leg| &leg.cuts);
        for cut in cuts {
            let inch = cut.printed_window.as_ref().and_then(|w| w.inch.as_ref());
            let (Some(at), Some(bounds)) = (&cut.inch, inch) else {
                continue;
            };
            let is_fine = bounds.iter().any(|b| b.ends_with("/64"));
            assert!(!bounds.contains(at) || is_fine, "{}: {cut:?}", case.slug);
        }
    }
}

/// Parts of a plan that are lost or changed when it is written and read back.
fn lost_by_reading_back(plan: &Plan) -> Option<String> {
    let text = serde_json::to_string_pretty(plan).expect("it can be written");
    match Plan::read(&text) {
        Err(why) => Some(why.to_string()),
        Ok(back) if back == *plan => None,
        Ok(back) => {
            let again = serde_json::to_string_pretty(&back).expect("it can be written");
            let differs = text.lines().zip(again.lines()).find(|(a, b)| a != b);
            Some(format!("{differs:?}"))
        }
    }
}

#[test]
fn a_plan_is_read_back_equal() {
    for case in everything() {
        assert_eq!(lost_by_reading_back(&case.plan()), None, "{}", case.slug);
        let order = case.order();
        let judged = jointwright_joint::judge::judge_without_fields(&order);
        let plan = jointwright_wording::plan(&judged.expect("its rows agree"));
        assert_eq!(lost_by_reading_back(&plan), None, "{}", case.slug);
    }
}

#[test]
fn a_plan_with_a_number_that_json_cannot_hold_is_noticed() {
    let mut plan = named("straight-tape-growth-unknown").plan();
    plan.legs[0].planes[0].nominal_mm = f64::NAN;
    assert!(lost_by_reading_back(&plan).is_some());
}

#[test]
fn a_plan_of_another_version_is_refused_by_its_version() {
    let mut plan = named("straight-tape-growth-unknown").plan();
    plan.format = "jointwright-plan-1".to_owned();
    let text = serde_json::to_string(&plan).expect("it can be written");
    let found = "jointwright-plan-1".to_owned();
    assert_eq!(Plan::read(&text), Err(NotAPlan::Format { found }));
    let cut_short = &text[..text.len() / 2];
    assert!(matches!(Plan::read(cut_short), Err(NotAPlan::Shape { .. })));
    assert!(matches!(Plan::read("{}"), Err(NotAPlan::Shape { .. })));
}

/// Texts of a plan that do not follow from the keys and arguments beside them, in the words that its job asks for.
fn not_rebuilt(plan: &Plan) -> Vec<String> {
    let tongue = Tongue::english(plan.job.words);
    let mut wrong = Vec::new();
    let mut compare = |what: String, text: Option<&str>, said: Option<&Said>| {
        let rebuilt = said.map(|said| tongue.say(said));
        if rebuilt.as_deref() != text {
            wrong.push(format!("{what}: {text:?} is not {rebuilt:?}"));
        }
    };
    let words = |datum: &Option<DatumDoc>| match datum {
        Some(DatumDoc::Text(text)) => Some(text.clone()),
        _ => None,
    };
    for ruling in &plan.rulings {
        let said = &ruling.said;
        let of = |name: &str| format!("{name} of {} {:?}", ruling.check, ruling.end);
        let (value, limit) = (words(&ruling.value), words(&ruling.limit));
        compare(of("value"), value.as_deref(), said.value.as_ref());
        compare(of("limit"), limit.as_deref(), said.limit.as_ref());
        let texts = [
            ("decides", &ruling.decides, &said.decides),
            ("source", &ruling.source, &said.source),
            ("why", &ruling.why, &said.why),
            ("hint", &ruling.hint, &said.hint),
            ("closed_by", &ruling.closed_by, &said.closed_by),
            ("closed_until", &ruling.closed_until, &said.closed_until),
        ];
        for (name, text, said) in texts {
            compare(of(name), text.as_deref(), said.as_ref());
        }
    }
    for ask in &plan.asks {
        let (fact, of) = (ask.fact, ask.about.clone());
        let question = Said::from(AskSaid::Question { fact, of });
        compare(ask.key().to_owned(), Some(&ask.question), Some(&question));
        for (text, of) in ask.of.iter().zip(&ask.about) {
            let of = Said::from(AskSaid::Of(of.clone()));
            compare(ask.key().to_owned(), Some(text), Some(&of));
        }
    }
    wrong
}

#[test]
fn keys_and_arguments_alone_rebuild_the_texts_of_rulings_and_asks() {
    for case in everything() {
        let text = serde_json::to_string(&case.plan()).expect("it can be written");
        let plan = Plan::read(&text).expect("it is a plan");
        assert_eq!(not_rebuilt(&plan), Vec::<String>::new(), "{}", case.slug);
    }
}

#[test]
fn a_text_that_is_not_what_its_key_says_is_noticed() {
    let mut plan = named("straight-tape-growth-unknown").plan();
    let ruling = plan.rulings.iter_mut().find(|r| r.why.is_some());
    ruling.expect("one says why").why = Some("another text".to_owned());
    assert_eq!(not_rebuilt(&plan).len(), 1);
}
