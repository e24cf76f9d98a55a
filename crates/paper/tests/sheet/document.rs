//! The document: its bytes, its standard, what hostile texts do to it.

use super::{FAILING, THREE_WAY, planned};
use hayro_syntax::Pdf;
use jointwright_paper::make_up_sheet;

fn holds(bytes: &[u8], text: &str) -> bool {
    bytes
        .windows(text.len())
        .any(|window| window == text.as_bytes())
}

#[test]
fn the_same_plan_gives_the_same_bytes() {
    let plan = planned(THREE_WAY);
    let sheet = || make_up_sheet(&plan, &[]).expect("a sheet");
    assert_eq!(sheet(), sheet());
}

#[test]
fn another_date_or_number_gives_other_bytes() {
    let plan = planned(THREE_WAY);
    let first = make_up_sheet(&plan, &[]).expect("a sheet");
    let mut later = plan.clone();
    later.job.date = "2026-03-10".to_owned();
    assert_ne!(first, make_up_sheet(&later, &[]).expect("a sheet"));
    let mut moved = plan.clone();
    moved.legs[0].cuts[0].inch = Some("2 1/8".to_owned());
    assert_ne!(first, make_up_sheet(&moved, &[]).expect("a sheet"));
}

#[test]
fn it_says_that_it_is_an_archive_copy_and_tagged() {
    let bytes = make_up_sheet(&planned(THREE_WAY), &[]).expect("a sheet");
    assert!(bytes.starts_with(b"%PDF-1.7"));
    for said in [
        "<pdfaid:part>2</pdfaid:part>",
        "<pdfaid:conformance>A</pdfaid:conformance>",
        "2026-03-09",
    ] {
        assert!(holds(&bytes, said), "{said}");
    }
}

#[test]
fn a_date_that_is_none_is_refused_in_words() {
    let mut plan = planned(THREE_WAY);
    plan.job.date = "soon".to_owned();
    let error = make_up_sheet(&plan, &[]).expect_err("no date");
    assert!(
        error
            .to_string()
            .contains("`soon` is not a year, month and day")
    );
}

#[test]
fn hostile_texts_are_set_and_do_not_become_markup() {
    for text in [
        "#panic(\"x\") $ * _ ` @label <a> \\ / // /* [ ] { }",
        "\u{202e}abc\u{0}\u{7}\u{fffe}",
        "漢字 🦀 \u{301}\u{301}",
        &"word ".repeat(400),
        &"x".repeat(2000),
        "",
    ] {
        let mut plan = planned(THREE_WAY);
        plan.job.title = text.to_owned();
        plan.job.id = text.to_owned();
        plan.job.place = text.to_owned();
        plan.job.stop_and_call.name = text.to_owned();
        for leg in &mut plan.legs {
            leg.goes_to = Some(text.to_owned());
            leg.cable = text.to_owned();
            for cut in &mut leg.cuts {
                cut.window_of = vec![text.to_owned()];
                cut.by_name.window_of = vec![text.to_owned()];
                cut.why = Some(text.to_owned());
            }
            for part in &mut leg.parts {
                part.id = text.to_owned();
                part.instructions = text.to_owned();
            }
        }
        let bytes = make_up_sheet(&plan, &[]).unwrap_or_else(|error| panic!("{text:.20}: {error}"));
        let pdf = Pdf::new(bytes).expect("a PDF");
        let n_ends: usize = plan.legs.iter().map(|leg| leg.ends.len()).sum();
        assert!(pdf.pages().len() > n_ends);
    }
}

#[test]
fn a_failing_joint_has_fewer_pages_and_no_strip() {
    let failing = make_up_sheet(&planned(FAILING), &[]).expect("a sheet");
    let whole = make_up_sheet(&planned(THREE_WAY), &[]).expect("a sheet");
    let n_pages = |bytes: Vec<u8>| Pdf::new(bytes).expect("a PDF").pages().len();
    assert!(n_pages(failing) < n_pages(whole));
}
