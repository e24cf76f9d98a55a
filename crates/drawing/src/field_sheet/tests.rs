//! Field sheets of a published section, solved here, with invented peaks and limits.

use super::*;
use crate::canvas::do_cross;
use jointwright_joint::cable::Words as Practice;
use jointwright_numerics::case::{self, Case};
use jointwright_numerics::field::{Options, Solved, Unwatched, Wanted, along, solve};

const UNDECIDED: &str = "Computed from the dimensions given; decides nothing.";
const CASE: &str = include_str!("../../../../tests/published/field-sections/A4-15.case.json");
const INVENTED: &str = "INVENTED DEMONSTRATION DATA - NOT FOR ANY CABLE";
const BOTH: [Format; 2] = [Format::SHEET, Format::STRIP];

fn solved() -> (Case, Solved) {
    let case = case::read(CASE).unwrap_or_else(|found| panic!("{found:?}"));
    let options = Options {
        tolerance: 1e-2,
        capacitance_tolerance: 1e-2,
        n_unknowns_most: 60_000,
        work_most: usize::MAX,
    };
    let wanted: Vec<Wanted> = case.wanted.iter().map(|one| one.wanted.clone()).collect();
    let solved = solve(&case.section, &wanted, &options, &mut Unwatched);
    let solved = solved.unwrap_or_else(|error| panic!("{error}"));
    (case, solved)
}

fn sheet<'a>(case: &'a Case, solved: &'a Solved) -> FieldSheet<'a> {
    let mut peaks = Vec::new();
    for (asked, answer) in case.wanted.iter().zip(&solved.answers) {
        if let Some(at) = answer.at {
            peaks.push(Peak {
                label: format!("{} of {}", asked.name, case.name),
                value_kv_per_mm: format!("{:.2}", answer.value / 1e6),
                at,
            });
        }
    }
    let at = |z: f64| Point::new(11.1e-3, z);
    let found = along(&case.section, solved, at(73.01e-3), at(135e-3), 400);
    let curve = |label: &str, by: f64, dashed: bool| Curve {
        label: label.to_owned(),
        points: found
            .iter()
            .map(|place| (place.at.z + 4e-3 * (by - 1.0), by * place.tangential))
            .collect(),
        dashed,
    };
    FieldSheet {
        tongue: Tongue::english(Practice::Us),
        outline: &case.section.outline,
        mesh: &solved.mesh,
        potential: &solved.potential,
        conductors: case.section.potentials.iter().map(|(tag, _)| tag.clone()).collect(),
        title: "Field of end A1, screen cut as measured".to_owned(),
        about: vec!["15 kV class half joint, 8.7 kV to ground, published section A4-15; peaks and limits on this page are invented.".to_owned()],
        peaks,
        curves: vec![
            curve("this end", 1.0, false),
            curve("worst the instructions allow", 1.3, true),
        ],
        regions: vec![
            ("insulation".to_owned(), Point::new(9e-3, 90e-3)),
            ("body".to_owned(), Point::new(26e-3, 60e-3)),
            ("electrode".to_owned(), Point::new(13e-3, 30e-3)),
        ],
        banner: Some(Banner(INVENTED.to_owned())),
        below: vec!["Estimated error of every number on this page: at most 1 % of it.".to_owned()],
    }
}

/// Numbers of an attribute in every element of a part, in order.
fn attribute(svg: &str, part: &str, name: &str) -> Vec<f64> {
    let (part, name) = (format!("data-part=\"{part}\""), format!(" {name}=\""));
    svg.lines()
        .filter(|line| line.contains(&part))
        .map(|line| {
            let value = line
                .split(&name)
                .nth(1)
                .and_then(|rest| rest.split('"').next());
            value
                .and_then(|value| value.parse().ok())
                .unwrap_or(f64::NAN)
        })
        .collect()
}

/// Rectangle of the only element of a part.
fn rectangle(svg: &str, part: &str) -> Bounds {
    let of = |name| {
        let found = attribute(svg, part, name);
        assert_eq!(found.len(), 1, "{part} {name}");
        found[0]
    };
    Bounds::new([of("x"), of("y")], [of("width"), of("height")])
}

/// Places of each drawn curve.
fn drawn_curves(svg: &str) -> Vec<Vec<[f64; 2]>> {
    svg.lines()
        .filter(|line| line.contains("data-part=\"curve\""))
        .map(|line| {
            let d = line.split(" d=\"").nth(1).unwrap_or_default();
            let (mut at, mut places) = ([0.0; 2], Vec::new());
            let commands = d
                .trim_end_matches("\"/>")
                .replace('M', "\nM")
                .replace('l', "\nl");
            for command in commands.lines().filter(|command| !command.is_empty()) {
                let numbers: Vec<f64> = command[1..]
                    .split(' ')
                    .filter_map(|number| number.parse().ok())
                    .collect();
                let base = if command.starts_with('M') {
                    [0.0; 2]
                } else {
                    at
                };
                at = [base[0] + numbers[0], base[1] + numbers[1]];
                places.push(at);
            }
            places
        })
        .collect()
}

/// First two texts of the page that lie on each other.
fn overlap(canvas: &Canvas) -> Option<(String, String)> {
    let texts = &canvas.texts;
    for a in 0..texts.len() {
        for b in a + 1..texts.len() {
            if texts[a].bounds().meets(&texts[b].bounds()) {
                return Some((texts[a].text.clone(), texts[b].text.clone()));
            }
        }
    }
    None
}

#[track_caller]
fn check_texts(sheet: &FieldSheet) {
    for format in BOTH {
        let canvas = drawn(sheet, &format);
        assert_eq!(overlap(&canvas), None);
        let page = Bounds::new([0.0; 2], [format.width, canvas.y]);
        for words in &canvas.texts {
            assert!(words.bounds().is_in(&page), "{words:?} of {page:?}");
            assert!(
                !format.is_strip || words.size >= 7.0 * 25.4 / 72.0 * 4.0,
                "{words:?}"
            );
        }
    }
}

/// Many peaks, near each other and far apart.
fn crowd(sheet: &mut FieldSheet, n: usize) {
    let at = |k: usize| {
        let k = k as f64;
        Point::new(
            7e-3 + 22e-3 * (0.37 * k).sin().abs(),
            70e-3 + 60e-3 * (0.11 * k * k).sin().powi(3),
        )
    };
    sheet.peaks = (0..n)
        .map(|k| Peak {
            label: format!("rim of part number {k} beside the lip, where it is thinnest"),
            value_kv_per_mm: "1.234".to_owned(),
            at: at(k),
        })
        .collect();
}

#[test]
fn a_z_of_the_section_and_the_same_z_of_the_diagram_have_one_x() {
    let (case, solved) = solved();
    let mut sheet = sheet(&case, &solved);
    // A peak and a spike of the curve at one z.
    let z = 88.25e-3;
    sheet.peaks = vec![Peak {
        label: "here".to_owned(),
        value_kv_per_mm: "1".to_owned(),
        at: Point::new(12e-3, z),
    }];
    let spike = |z: f64| Curve {
        label: "spike".to_owned(),
        points: vec![(z - 1e-3, 1e5), (z, 9e5), (z + 1e-3, 1e5)],
        dashed: false,
    };
    for draw in [field_sheet, field_strip] {
        let mut top = |at: f64| {
            sheet.curves = vec![spike(at)];
            let svg = draw(&sheet);
            let highest = drawn_curves(&svg)[0]
                .iter()
                .fold(
                    [0.0, f64::INFINITY],
                    |a, b| if b[1] < a[1] { *b } else { a },
                );
            (highest[0], attribute(&svg, "peak", "cx")[0], svg)
        };
        let (x, mark, svg) = top(z);
        // Both are rounded to a tenth of a picture point.
        assert!((x - mark).abs() < 0.11, "{x} and {mark}");
        let (section, diagram) = (rectangle(&svg, "section"), rectangle(&svg, "diagram"));
        assert_eq!((section.left, section.right), (diagram.left, diagram.right));
        assert!(section.bottom < diagram.top);
        // The twin: half a millimetre farther gives another x.
        let (x, mark, _) = top(z + 0.5e-3);
        assert!((x - mark).abs() > 1.0, "{x} and {mark}");
    }
}

#[test]
fn curves_lie_in_the_diagram_and_are_as_high_as_their_strength() {
    let (case, solved) = solved();
    let sheet = sheet(&case, &solved);
    for draw in [field_sheet, field_strip] {
        let svg = draw(&sheet);
        let frame = rectangle(&svg, "diagram");
        let curves = drawn_curves(&svg);
        assert_eq!(curves.len(), 2);
        let height = |places: &Vec<[f64; 2]>| {
            assert!(places.len() > 50, "{}", places.len());
            assert!(places.iter().all(|place| frame.grown(0.06).holds(*place)));
            let least = places
                .iter()
                .map(|place| place[1])
                .fold(f64::INFINITY, f64::min);
            frame.bottom - least
        };
        let [full, dashed] = [height(&curves[0]), height(&curves[1])];
        assert!((dashed / full - 1.3).abs() < 0.01, "{dashed} {full}");
        let dashes = svg
            .lines()
            .filter(|line| line.contains("data-part=\"curve\""));
        let dashes: Vec<bool> = dashes.map(|line| line.contains("dasharray")).collect();
        assert_eq!(dashes, [false, true]);
    }
    // The peak of this end, 0.334 kV/mm, on a scale that ends at 0.5.
    let svg = field_sheet(&sheet);
    let frame = rectangle(&svg, "diagram");
    let places = &drawn_curves(&svg)[0];
    let least = places
        .iter()
        .map(|place| place[1])
        .fold(f64::INFINITY, f64::min);
    let strength = 0.5 * (frame.bottom - least) / (frame.bottom - frame.top);
    assert!(
        svg.contains(">0.5</text>") && (strength - 0.3345).abs() < 0.002,
        "{strength}"
    );
}

#[test]
fn where_nothing_is_known_a_curve_is_parted_and_outside_of_the_section_it_ends() {
    let (case, solved) = solved();
    let mut sheet = sheet(&case, &solved);
    let runs = |sheet: &FieldSheet| {
        let svg = field_sheet(sheet);
        let curve = svg
            .lines()
            .find(|line| line.contains("data-part=\"curve\""));
        curve.map_or(0, |line| line.matches('M').count())
    };
    sheet.curves.truncate(1);
    assert_eq!(runs(&sheet), 1);
    sheet.curves[0]
        .points
        .retain(|(z, _)| !(90e-3..95e-3).contains(z));
    assert_eq!(runs(&sheet), 2);
    sheet.curves[0].points.extend([
        (-50e-3, 1e5),
        (300e-3, 1e5),
        (f64::NAN, 1e5),
        (0.1, f64::NAN),
    ]);
    assert_eq!(runs(&sheet), 2);
    sheet.curves[0].points.clear();
    assert_eq!(runs(&sheet), 0);
    // A label without room at its line is written below.
    assert!(field_sheet(&sheet).contains("Full line: this end."));
}

#[test]
fn no_text_lies_on_another_and_none_on_a_strip_is_below_seven_points() {
    let (case, solved) = solved();
    let mut sheet = sheet(&case, &solved);
    check_texts(&sheet);
    for n in [0, 1, 12, 24, 60] {
        crowd(&mut sheet, n);
        check_texts(&sheet);
    }
    sheet.title = "long ".repeat(60);
    sheet.about = vec!["much ".repeat(90); 20];
    sheet.below = vec!["more ".repeat(90); 3];
    sheet.banner = Some(Banner("INVENTED ".repeat(30)));
    sheet.curves[0].label = "this end ".repeat(40);
    check_texts(&sheet);
    // The twin: a text written twice lies on itself.
    let mut canvas = drawn(&sheet, &Format::SHEET);
    let again = canvas.texts[3].clone();
    canvas.text(again);
    assert!(overlap(&canvas).is_some());
}

#[test]
fn each_peak_has_its_number_its_mark_and_its_line_of_the_list_or_says_that_it_has_none() {
    let (case, solved) = solved();
    let mut sheet = sheet(&case, &solved);
    crowd(&mut sheet, 20);
    sheet.peaks[3].at = Point::new(f64::NAN, 0.1);
    sheet.peaks[4].at = Point::new(0.5, 0.1);
    for draw in [field_sheet, field_strip] {
        let svg = draw(&sheet);
        let [x, y] = ["cx", "cy"].map(|name| attribute(&svg, "number", name));
        let [to_x, to_y] = ["cx", "cy"].map(|name| attribute(&svg, "peak", name));
        assert_eq!((x.len(), to_x.len()), (18, 18));
        let leader = |k: usize| [[x[k], y[k]], [to_x[k], to_y[k]]];
        let frame = rectangle(&svg, "section");
        let size = attribute(&svg, "number", "r")[0];
        for a in 0..18 {
            assert!(frame.grown(0.6).holds(leader(a)[1]));
            assert!(y[a] + size < frame.top);
            for b in a + 1..18 {
                assert!((x[a] - x[b]).hypot(y[a] - y[b]) > 2.0 * size, "{a} {b}");
                assert!(!do_cross(leader(a), leader(b)), "{a} {b}");
            }
        }
        let text = svg.split("Greatest fields").nth(1).unwrap_or_default();
        assert_eq!(text.matches("marked)").count(), 2);
        assert_eq!(text.matches(">1.234<").count(), 20);
    }
    crowd(&mut sheet, 30);
    let svg = field_sheet(&sheet);
    assert!(svg.contains("and 6 more") && svg.matches("data-part=\"number\"").count() == 24);
}

#[test]
fn a_sheet_says_what_it_is_and_what_its_scale_is() {
    let (case, solved) = solved();
    let mut sheet = sheet(&case, &solved);
    for draw in [field_sheet, field_strip] {
        let svg = draw(&sheet);
        for words in [
            UNDECIDED,
            "this end",
            "worst the instructions allow",
            "Greatest fields, kV/mm",
            "Tangential field along the interface, kV/mm",
        ] {
            assert!(svg.contains(&format!(">{words}</text>")), "{words}");
        }
        let lower = svg.to_lowercase();
        for word in ["safe", "pass", "fail", "ok<", "good"] {
            assert!(!lower.contains(word), "{word}");
        }
        assert_eq!(svg, draw(&sheet));
        assert!(svg.len() < 60_000, "{}", svg.len());
    }
    let svg = field_sheet(&sheet);
    assert!(svg.contains("r and z are drawn to the same scale."));
    assert!(svg.contains("from 0 % at 0 kV to 100 % at 8.70 kV") && svg.contains(">50 %<"));
    // A section five times as long is drawn with r stretched, and says so.
    let mut outline = case.section.outline.clone();
    for point in &mut outline.points {
        point.z *= 5.0;
    }
    sheet.outline = &outline;
    let svg = field_sheet(&sheet);
    assert!(svg.contains("r is drawn 5 times as large as z; angles are not true."));
    assert!(field_strip(&sheet).contains("r drawn 4 times z."));
}

#[test]
fn what_is_invented_says_so_in_the_bar_and_across_the_face_and_what_is_not_does_not() {
    let (case, solved) = solved();
    let mut sheet = sheet(&case, &solved);
    for draw in [field_sheet, field_strip] {
        sheet.banner = Some(Banner(INVENTED.to_owned()));
        let svg = draw(&sheet);
        assert!(svg.contains(&format!(">{INVENTED}</text>")));
        let across: Vec<&str> = svg.split("<g transform=\"rotate(").skip(1).collect();
        assert_eq!(across.len(), 2);
        for words in ["INVENTED DEMONSTRATION DATA -", "NOT FOR ANY CABLE"] {
            assert!(across.iter().all(|group| group.contains(words)));
        }
        sheet.banner = None;
        let svg = draw(&sheet);
        assert!(!svg.contains("INVENTED") && !svg.contains("rotate("));
    }
}

#[test]
fn whatever_is_given_comes_out_as_svg() {
    let (case, solved) = solved();
    let mut sheet = sheet(&case, &solved);
    let hostile = "</text><script>alert(\"1\")&\u{0}\u{202e}'";
    sheet.title = hostile.to_owned();
    sheet.about = vec![hostile.to_owned()];
    sheet.below = vec![hostile.to_owned()];
    sheet.banner = Some(Banner(hostile.to_owned()));
    sheet.regions = vec![(hostile.to_owned(), Point::new(26e-3, 60e-3))];
    for peak in &mut sheet.peaks {
        peak.label = hostile.to_owned();
        peak.value_kv_per_mm = hostile.to_owned();
    }
    for curve in &mut sheet.curves {
        curve.label = hostile.to_owned();
    }
    let mut outline = case.section.outline.clone();
    let mut mesh = solved.mesh.clone();
    let mut potential = solved.potential.clone();
    for round in 0..3 {
        for draw in [field_sheet, field_strip] {
            let svg = draw(&FieldSheet {
                tongue: Tongue::english(Practice::Us),
                outline: &outline,
                mesh: &mesh,
                potential: &potential,
                ..sheet.clone()
            });
            assert!(svg.starts_with("<svg ") && svg.ends_with("</svg>\n"));
            assert!(
                !svg.contains("<script") && !svg.contains('\u{0}') && !svg.contains('\u{202e}')
            );
            assert!(!svg.contains("NaN") && !svg.contains("inf\""), "{round}");
            assert_eq!(
                svg.matches("<text ").count(),
                svg.matches("</text>").count()
            );
            assert!(svg.contains(UNDECIDED));
        }
        match round {
            0 => {
                outline.curves[0].to = 99;
                outline.points[1] = Point::new(f64::INFINITY, 0.0);
                mesh.triangles[0][2] = u32::MAX;
                mesh.nodes[5] = Point::new(f64::NAN, 1e300);
                potential[0] = [f64::NAN, f64::INFINITY];
                potential.truncate(10);
            }
            _ => outline = Outline::default(),
        }
    }
}

#[test]
fn a_name_stays_in_its_part_and_one_without_room_is_left_out() {
    let (case, solved) = solved();
    let mut sheet = sheet(&case, &solved);
    let place = |sheet: &FieldSheet, name: &str| {
        let canvas = drawn(sheet, &Format::SHEET);
        let words = canvas.texts.into_iter().find(|words| words.text == name);
        words.map(|words| words.at)
    };
    assert!(place(&sheet, "insulation").is_some());
    // Twelve names want one place: some move aside within the part, from 6.65 to 11.1 mm.
    let name = |n: u32| format!("part {n}");
    let names = (0..12).map(|n| (name(n), Point::new(9e-3, 90e-3)));
    sheet.regions = names.collect();
    let frame = rectangle(&field_sheet(&sheet), "section");
    let found: Vec<[f64; 2]> = (0..12).filter_map(|n| place(&sheet, &name(n))).collect();
    assert!(found.len() > 1 && found.len() < 12, "{found:?}");
    for [_, y] in found {
        // Upward from the axis, of 30 mm; a base line is a third of a letter lower, 0.8 mm.
        let r = 30.0 * (frame.bottom - y) / (frame.bottom - frame.top);
        assert!(r > 6.65 - 1.0 && r < 11.1, "{r}");
    }
}
