//! A ruling in figures: no figure makes anything look better than it is.

use jointwright_joint::cable::Words;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::{DatumDoc, RulingDoc, SaidDoc};
use jointwright_joint::said::Language;
use jointwright_wording::Tongue;

const US: Tongue = Tongue::english(Words::Us);
const IEC: Tongue = Tongue::english(Words::Iec);

fn ruling(value: DatumDoc, limit: DatumDoc, margin: f64, unit: &str) -> RulingDoc {
    RulingDoc {
        check: "insulation_in_body".to_owned(),
        question: String::new(),
        leg: None,
        end: None,
        ruling: Outcome::Pass,
        value: Some(value),
        limit: Some(limit),
        unit: Some(unit.to_owned()),
        margin: Some(margin),
        error: None,
        decides: None,
        source: None,
        why: None,
        hint: None,
        asks: Vec::new(),
        stops: false,
        closed_by: None,
        closed_until: None,
        computed: false,
        said: SaidDoc::default(),
    }
}

#[track_caller]
fn check(ruling: &RulingDoc, expected: &str) {
    assert_eq!(IEC.figures(ruling).as_deref(), Some(expected));
}

#[test]
fn a_value_is_never_said_to_be_nearer_to_the_middle_than_it_is() {
    let of = |value: f64, limit: f64, margin: f64| {
        ruling(
            DatumDoc::Number(value),
            DatumDoc::Number(limit),
            margin,
            "mm",
        )
    };
    check(
        &of(57.896_375, 60.0, 2.103_625),
        "found 57.9 mm, at most 60.0 mm; 2.1 mm left",
    );
    check(
        &of(57.896_375, 55.04, 2.856_375),
        "found 57.8 mm, at least 55.1 mm; 2.8 mm left",
    );
    // As many figures as it takes to see that it keeps to its limit.
    check(
        &of(57.896_375, 57.9, 0.003_625),
        "found 57.897 mm, at most 57.9 mm; 0.003 mm left",
    );
    check(
        &of(60.0, 60.0, 0.0),
        "found 60.0 mm, at most 60.0 mm; 0.0 mm left",
    );
}

#[test]
fn an_error_leaves_no_finer_figure_than_its_own_first() {
    let mut of = ruling(
        DatumDoc::Number(0.408_12),
        DatumDoc::Number(0.413_9),
        0.005_78,
        "kV/mm",
    );
    of.computed = true;
    of.error = Some(0.003_1);
    check(
        &of,
        "computed 0.408 ± 0.004 kV/mm, at most 0.414 kV/mm; 0.005 kV/mm left",
    );
    of.error = Some(0.04);
    of.decides = Some("it is one of those allowed".to_owned());
    check(
        &of,
        "computed 0.41 ± 0.04 kV/mm, at most 0.41 kV/mm; 0.0 kV/mm left: it is one of those allowed",
    );
}

#[test]
fn a_range_of_diameters_is_said_in_inches_rounded_inward() {
    let of = ruling(
        DatumDoc::Range {
            min: 22.0,
            max: 22.345,
        },
        DatumDoc::Range {
            min: 21.082,
            max: 30.988,
        },
        0.918,
        "mm",
    );
    assert_eq!(
        US.figures(&of).as_deref(),
        Some("found 22.0 to 22.4 mm, within 21.1 to 30.9 mm (0.830 to 1.220 in); 0.9 mm left")
    );
    check(
        &of,
        "found 22.0 to 22.4 mm, within 21.1 to 30.9 mm; 0.9 mm left",
    );
}

#[test]
fn one_outcome_has_one_word() {
    let words = [Outcome::Pass, Outcome::Fail, Outcome::NotJudged].map(|of| US.outcome(of));
    assert_eq!(words, ["in window", "out of window", "not judged"]);
}

#[test]
fn the_same_figures_stand_in_every_language() {
    let mut of = ruling(
        DatumDoc::Number(57.896_375),
        DatumDoc::Number(60.0),
        2.103_625,
        "mm",
    );
    let spanish = Tongue {
        language: Language::Spanish,
        words: Words::Iec,
    };
    assert_eq!(
        spanish.figures(&of).as_deref(),
        Some("encontrado 57.9 mm, como máximo 60.0 mm; quedan 2.1 mm")
    );
    of.margin = None;
    assert_eq!(spanish.figures(&of), None);
}
