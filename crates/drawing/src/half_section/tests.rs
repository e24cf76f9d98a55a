//! Tests of the half section.

use super::dimension::{LETTERS, datum_name};
use super::sheet::{Role, Sheet, WIDTH};
use super::{Style, Theme, composed, fails, half_section};
use crate::canvas::{Bounds, Words};
use crate::label::wrapped;
use jointwright_joint::cable::Words as Practice;
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::Source;
use jointwright_joint::job::read_order;
use jointwright_joint::judge::judge_unsolved as judge;
use jointwright_joint::plan::{
    ByNameDoc, ConnectorDoc, CutDoc, CutKind, LegDoc, Plan, PrintedWindowDoc,
};
use jointwright_joint::plane::Plane;
use jointwright_wording::{Tongue, plan};
use proptest::prelude::*;

const US: Tongue = Tongue::english(Practice::Us);
const THEMES: [Theme; 3] = [Theme::Light, Theme::Dark, Theme::Print];
const PRINT: Style = Style {
    theme: Theme::Print,
};
const LARKSPUR: &str = include_str!("../../../../examples/larkspur-three-way/job.toml");
const UNPRESSED: &str = include_str!("../../../../examples/dock-straight-not-pressed/job.toml");
const EXAMPLES: [&str; 5] = [
    LARKSPUR,
    UNPRESSED,
    include_str!("../../../../examples/dock-straight-pressed/job.toml"),
    include_str!("../../../../examples/quarry-four-way/job.toml"),
    include_str!("../../../../examples/tannery-change/job.toml"),
];

#[track_caller]
fn plan_of(job: &str) -> Plan {
    let catalogue = Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned());
    let order = read_order(&Source::new("job.toml", job.to_owned()), &[catalogue]);
    let order = order.unwrap_or_else(|complaints| panic!("{complaints:?}"));
    plan(&judge(&order).unwrap_or_else(|complaints| panic!("{complaints:?}")))
}

/// Text of a row's number as a crew would see it.
fn number(cut: &CutDoc) -> Option<String> {
    let mm = cut.mark_mm.as_ref()?;
    Some(match &cut.inch {
        Some(inch) => format!("{inch} in\u{a0}\u{a0}{mm} mm"),
        None => format!("{mm} mm"),
    })
}

/// Kept length of a shield, in the lines of the column.
fn kept(cut: &CutDoc) -> Vec<String> {
    wrapped(cut.keeps.as_deref().unwrap_or_default(), LETTERS, 4)
}

fn has_unit(text: &str) -> bool {
    let words: Vec<&str> = text.split([' ', '\u{a0}', ',', ';']).collect();
    let is_number = |word: &str| word.starts_with(|letter: char| letter.is_ascii_digit());
    words
        .windows(2)
        .any(|pair| is_number(pair[0]) && matches!(pair[1], "mm" | "in" | "mil"))
}

/// Texts with a number and a unit that the plan's own cuts do not explain.
fn strangers(sheet: &Sheet, leg: &LegDoc) -> Vec<String> {
    let mut own: Vec<String> = leg.cuts.iter().filter_map(number).collect();
    let windows = leg
        .cuts
        .iter()
        .filter_map(|cut| cut.printed_window.as_ref());
    own.extend(windows.map(|window| US.window(window)));
    own.extend(leg.cuts.iter().flat_map(kept));
    let texts = sheet.texts.iter().map(|label| label.words.text.clone());
    texts
        .filter(|text| has_unit(text) && !own.contains(text))
        .collect()
}

#[test]
fn every_dimension_is_the_plans_own_text() {
    let (mut n_cuts, mut n_kept) = (0, 0);
    for job in EXAMPLES {
        let plan = plan_of(job);
        for leg in &plan.legs {
            let mut sheet = composed(leg, &plan, &PRINT);
            assert_eq!(strangers(&sheet, leg), Vec::<String>::new());
            for cut in leg.cuts.iter().filter(|_| !fails(&plan)) {
                n_cuts += 1;
                let wanted = [
                    number(cut),
                    cut.printed_window.as_ref().map(|window| US.window(window)),
                ];
                n_kept += usize::from(cut.keeps.is_some());
                for text in wanted.into_iter().flatten().chain(kept(cut)) {
                    assert!(
                        sheet.texts.iter().any(|label| label.words.text == text),
                        "{text}"
                    );
                }
            }
            // The twin: a number that was rounded on the way is not explained.
            sheet.text(Words::new([1.0; 2], 3.2, "2 1/16 in\u{a0}\u{a0}52.39 mm"));
            assert_eq!(strangers(&sheet, leg).len(), 1);
        }
    }
    assert!(n_cuts > 40 && n_kept > 3, "{n_cuts} {n_kept}");
}

#[test]
fn the_examples_are_in_order_and_drawn_large_enough_to_be_read() {
    for job in EXAMPLES {
        let plan = plan_of(job);
        for leg in &plan.legs {
            let sheet = composed(leg, &plan, &PRINT);
            assert_eq!(disorder(&sheet), Vec::<String>::new());
            // Two of them fit on a page, with the mark of the plan below each title.
            assert!(sheet.height <= 124.0, "{} mm", sheet.height);
            assert!(sheet.texts.iter().all(|label| label.words.size >= 2.3));
            let numbers = leg.cuts.iter().filter_map(number);
            for number in numbers.filter(|_| !fails(&plan)) {
                let mut texts = sheet.texts.iter().map(|label| &label.words);
                let words = texts.find(|words| words.text == number);
                assert!(
                    words.is_some_and(|x| x.size >= 3.2 && x.is_bold),
                    "{number}"
                );
            }
        }
    }
}

#[test]
fn a_plain_renderer_knows_everything_that_is_used() {
    let plan = plan_of(LARKSPUR);
    let svg = half_section(&plan.legs[0], &plan, &PRINT);
    for unknown in [
        "style=",
        "class=",
        "var(",
        "foreignObject",
        "href",
        "<script",
        "@import",
    ] {
        assert!(!svg.contains(unknown), "{unknown}");
    }
    for part in svg.split("url(#").skip(1) {
        let name = part.split(')').next().unwrap_or_default();
        assert!(svg.contains(&format!(" id=\"{name}\"")), "{name}");
    }
}

#[test]
fn what_is_invented_is_said_at_the_top_and_across_the_face_in_every_theme() {
    let mut plan = plan_of(LARKSPUR);
    let said = plan.invented.clone().expect("the example is invented");
    for theme in THEMES {
        let svg = half_section(&plan.legs[0], &plan, &Style { theme });
        assert_eq!(svg.matches(&said).count(), 1, "banner");
        let across = svg.split("<g transform=\"rotate(").nth(1).expect("across");
        let across = across.split("</g>").next().unwrap_or_default();
        assert!(across.contains("fill=\"none\""));
        let letters: String = across
            .split('>')
            .filter_map(|piece| piece.strip_suffix("</text"))
            .collect::<Vec<_>>()
            .join(" ");
        assert_eq!(letters, said);
    }
    plan.invented = None;
    let svg = half_section(&plan.legs[0], &plan, &PRINT);
    assert!(!svg.contains("rotate(") && !svg.contains(&said));
}

#[test]
fn a_plan_in_which_a_check_fails_has_no_dimension_and_no_scale() {
    let mut plan = plan_of(LARKSPUR);
    let n_numbers = |sheet: &Sheet| {
        sheet
            .texts
            .iter()
            .filter(|x| has_unit(&x.words.text))
            .count()
    };
    let is_dimension = |role: Role| !matches!(role, Role::Leader);
    let good = composed(&plan.legs[0], &plan, &PRINT);
    assert!(n_numbers(&good) >= 12 && good.svg().contains("scale 1 : "));
    assert!(good.strokes.iter().any(|stroke| is_dimension(stroke.role)));
    plan.outcome = jointwright_joint::limit::Outcome::Fail;
    let sheet = composed(&plan.legs[0], &plan, &PRINT);
    assert_eq!(n_numbers(&sheet), 0);
    assert!(!sheet.strokes.iter().any(|stroke| is_dimension(stroke.role)));
    let svg = sheet.svg();
    assert!(
        svg.contains("out of window: no number is printed")
            && !svg.contains("1 : ")
            && !svg.contains("url(#window")
    );
}

#[test]
fn a_cut_without_a_place_says_so_and_has_no_arrow() {
    let mut plan = plan_of(UNPRESSED);
    let sheet = composed(&plan.legs[0], &plan, &PRINT);
    let has = |sheet: &Sheet, text: &str| sheet.texts.iter().any(|label| label.words.text == text);
    let n_arrows = |sheet: &Sheet| {
        let is_arrow = |role| matches!(role, Role::Extension(_));
        sheet.strokes.iter().filter(|x| is_arrow(x.role)).count()
    };
    assert!(
        has(&sheet, "see the growth ladder")
            && has(&sheet, &datum_name(&plan.legs[0], Tongue::of_plan(&plan)))
    );
    assert_eq!(n_arrows(&sheet), plan.legs[0].cuts.len() - 1);
    plan.legs[0].cuts[0].growth_ladder.clear();
    let sheet = composed(&plan.legs[0], &plan, &PRINT);
    assert!(has(&sheet, "not set") && !has(&sheet, "see the growth ladder"));
}

#[test]
fn the_same_leg_gives_the_same_bytes() {
    let plan = plan_of(LARKSPUR);
    for theme in THEMES {
        let draw = || half_section(&plan.legs[1], &plan, &Style { theme });
        assert_eq!(draw(), draw());
    }
    let [one, other] = [0, 1].map(|leg| half_section(&plan.legs[leg], &plan, &PRINT));
    assert_ne!(one, other);
}

#[test]
fn print_has_no_colour_but_black_and_white() {
    let plan = plan_of(LARKSPUR);
    let colours = |theme| -> Vec<String> {
        let svg = half_section(&plan.legs[0], &plan, &Style { theme });
        let hex = svg.split("\"#").skip(1).map(|rest| rest[..6].to_owned());
        hex.filter(|hex| hex != "000000" && hex != "ffffff")
            .collect()
    };
    assert_eq!(colours(Theme::Print), Vec::<String>::new());
    assert!(!colours(Theme::Light).is_empty());
}

#[test]
fn no_text_of_a_plan_breaks_out_of_its_place() {
    let hostile = "</text><script>alert(1)</script>\u{0}\u{202e}&";
    let mut plan = plan_of(LARKSPUR);
    plan.invented = Some(hostile.to_owned());
    plan.program = hostile.to_owned();
    plan.job.id = hostile.to_owned();
    plan.job.date = hostile.to_owned();
    let leg = &mut plan.legs[0];
    leg.mark = hostile.to_owned();
    leg.cable = hostile.to_owned();
    leg.layers[2].words = hostile.to_owned();
    leg.layers[3].words = hostile.to_owned();
    leg.layers[3].diameter_mm = f64::NAN;
    for cut in &mut leg.cuts {
        cut.words = hostile.to_owned();
        cut.mark_mm = Some("<1>".to_owned());
        cut.why = Some(hostile.to_owned());
    }
    let svg = half_section(&plan.legs[0], &plan, &PRINT);
    assert!(!svg.contains("<script") && !svg.contains("<1>"));
    assert!(!svg.contains(['\u{0}', '\u{202e}']) && !svg.contains("NaN"));
    assert_eq!(svg.matches("<text").count(), svg.matches("</text>").count());
    assert!(svg.contains("&lt;/text&gt;"));
}

#[test]
fn a_layer_without_a_diameter_is_left_out_and_said() {
    let mut plan = plan_of(LARKSPUR);
    let of = |plan: &Plan| composed(&plan.legs[0], plan, &PRINT);
    let says = |sheet: &Sheet| {
        sheet
            .texts
            .iter()
            .any(|x| x.words.text.starts_with("Left out"))
    };
    assert!(!says(&of(&plan)));
    plan.legs[0].layers.remove(5);
    assert!(says(&of(&plan)));
}

#[test]
fn numbers_that_are_none_leave_things_out_and_nothing_else() {
    for none in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1.0] {
        let mut plan = plan_of(LARKSPUR);
        let leg = &mut plan.legs[0];
        for layer in &mut leg.layers {
            layer.diameter_mm = none;
        }
        for plane in &mut leg.planes {
            plane.nominal_mm = none;
        }
        if let Some(connector) = &mut leg.connector {
            (connector.length_mm, connector.outside_diameter_mm) = (none, none);
        }
        for cut in leg.cuts.iter_mut().skip(3) {
            (cut.nominal_mm, cut.mark_at_mm) = (Some(none), Some(none));
            if let Some(window) = &mut cut.printed_window {
                window.at_mm = Some([none, none]);
            }
        }
        let sheet = composed(&plan.legs[0], &plan, &PRINT);
        let svg = sheet.svg().replace("invented", "").replace("infinity", "");
        assert!(!svg.contains("NaN") && !svg.contains("inf"), "{none}");
        assert_eq!(disorder(&sheet), Vec::<String>::new());
    }
}

#[test]
fn an_edge_that_is_not_set_stands_apart_from_every_row_and_says_so() {
    // Its seal is left open, so nobody knows where the jacket ends.
    let plan = plan_of(EXAMPLES[3]);
    let leg = plan.legs.iter().find(|leg| leg.mark == "C");
    let leg = leg.expect("a leg");
    let sheet = composed(leg, &plan, &PRINT);
    let tag = |words: &&Words| words.text == "edge of jacket: not set";
    let mut texts = sheet.texts.iter().map(|label| &label.words);
    let tag = texts.find(tag).expect("a tag");
    let rows = sheet.strokes.iter().filter_map(|stroke| match stroke.role {
        Role::Extension(_) => Some(stroke.from_mm[0]),
        _ => None,
    });
    let nearest = rows
        .map(|x| (x - tag.at[0]).abs())
        .fold(f64::INFINITY, f64::min);
    assert!(nearest > 3.0 && nearest.is_finite(), "{nearest} mm");
    assert!(
        !composed(&plan.legs[0], &plan, &PRINT)
            .svg()
            .contains("edge of")
    );
}

/// Faults in the arrangement of a page.
fn disorder(sheet: &Sheet) -> Vec<String> {
    let mut found = Vec::new();
    let texts = &sheet.texts;
    for (n, one) in texts.iter().enumerate() {
        let (bounds, text) = (one.bounds(), &one.words.text);
        if !bounds.is_in(&Bounds::new([0.0; 2], [WIDTH, sheet.height])) {
            found.push(format!("{text:?} leaves the page"));
        }
        for other in &texts[n + 1..] {
            if bounds.meets(&other.bounds()) {
                found.push(format!("{text:?} stands on {:?}", other.words.text));
            }
        }
        for stroke in &sheet.strokes {
            let row = match stroke.role {
                Role::Dimension(row) | Role::Extension(row) => Some(row),
                Role::Datum | Role::Rule => None,
                Role::Leader => continue,
            };
            let ([x1, y1], [x2, y2]) = (stroke.from_mm, stroke.to_mm);
            // All of them are horizontal or vertical.
            let meets = x1.min(x2) < bounds.right
                && x1.max(x2) > bounds.left
                && y1.min(y2) < bounds.bottom
                && y1.max(y2) > bounds.top;
            if meets && (row.is_none() || row != one.row) {
                found.push(format!("a line of {row:?} goes through {text:?}"));
            }
        }
    }
    found
}

#[test]
fn the_check_of_the_page_sees_disorder() {
    let plan = plan_of(LARKSPUR);
    let fresh = || composed(&plan.legs[0], &plan, &PRINT);
    assert_eq!(disorder(&fresh()), Vec::<String>::new());
    let mut sheet = fresh();
    let last = sheet.texts.len() - 1;
    let [x, y] = sheet.texts[3].words.at;
    sheet.texts[last].words.at = [x + 60.0, y];
    assert!(!disorder(&sheet).is_empty(), "one text on another");
    let mut sheet = fresh();
    sheet.texts[1].words.at[0] = 120.0;
    assert!(
        disorder(&sheet)
            .iter()
            .any(|x| x.contains("leaves the page"))
    );
    let mut sheet = fresh();
    let row_1 = sheet.texts.iter_mut().find(|x| x.row == Some(1));
    row_1.expect("a row").words.at[0] = 60.0;
    assert!(disorder(&sheet).iter().any(|x| x.contains("goes through")));
}

/// A cut at a place, with texts as long as the plan's or longer.
fn cut(n: usize, at: f64, words: &str, is_set: bool) -> CutDoc {
    let planes = [
        Plane::InsulationEnd,
        Plane::ScreenEdge,
        Plane::BodyEnd,
        Plane::ShieldEdge,
        Plane::JacketEdge,
        Plane::SealEnd,
    ];
    let mm = format!("{at:.1}");
    CutDoc {
        plane: planes.get(n).copied().unwrap_or(Plane::ParkMark),
        words: words.to_owned(),
        kind: if n % 3 == 2 {
            CutKind::Mark
        } else {
            CutKind::Cut
        },
        keeps: None,
        keeps_mm: None,
        from: "conductor-end".to_owned(),
        nominal_mm: is_set.then_some(at),
        min_mm: None,
        max_mm: None,
        inch: n.is_multiple_of(2).then(|| "114 13/64".to_owned()),
        mark_mm: is_set.then(|| mm.clone()),
        mark_at_mm: is_set.then_some(at),
        printed_window: (is_set && n != 3).then(|| PrintedWindowDoc {
            inch: Some(["114 11/64".to_owned(), "114 17/64".to_owned()]),
            mm: [mm.clone(), mm],
            at_mm: Some([at - 3.2, at + 3.2]),
        }),
        window_of: Vec::new(),
        placed: None,
        by_name: ByNameDoc::default(),
        narrowed: None,
        why: Some(words.to_owned()),
        growth_ladder: Vec::new(),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_texts_meet_on_any_leg(
        steps in prop::collection::vec((5.0..900.0f64, "[a-zA-Z ()]{0,80}", 0..6u8), 0..8),
        diameters in prop::collection::vec(1.0..120.0f64, 6),
        words in "[a-z ]{0,200}",
        connector in (any::<bool>(), 20.0..200.0f64, 10.0..90.0f64),
        fails in any::<bool>(),
    ) {
        let mut plan = plan_of(LARKSPUR);
        plan.legs.truncate(1);
        if fails && steps.len() > 4 {
            plan.outcome = jointwright_joint::limit::Outcome::Fail;
        }
        plan.program = words.clone();
        plan.job.id = words.clone();
        let leg = &mut plan.legs[0];
        leg.cable = words.clone();
        let mut at = 0.0;
        leg.cuts.clear();
        for (n, (step, words, kind)) in steps.iter().enumerate() {
            at += step;
            leg.cuts.push(cut(n, at, words, *kind > 0));
        }
        for (layer, diameter) in leg.layers.iter_mut().zip(&diameters) {
            layer.diameter_mm = *diameter;
            layer.words = words.clone();
        }
        let (two_ended, length_mm, outside_diameter_mm) = connector;
        leg.connector = leg.connector.take().map(|connector| ConnectorDoc {
            two_ended,
            length_mm,
            outside_diameter_mm,
            ..connector
        });
        let sheet = composed(&plan.legs[0], &plan, &PRINT);
        prop_assert_eq!(disorder(&sheet), Vec::<String>::new());
        prop_assert!(sheet.strokes.iter().all(|x| x.to_mm[0].is_finite() && x.to_mm[1].is_finite()));
    }
}
