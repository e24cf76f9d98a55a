//! Tests of the five answers, of the sentence, and of a reading over the wrong layer.

use super::super::candidate::plain;
use super::super::{Conductor, Size, Wall, candidates};
use super::*;
use jointwright_units::Length;
use proptest::prelude::*;

fn utility() -> Construction {
    let conductor = Conductor {
        size: Size::Awg(-3),
        metal: Metal::Aluminium,
        stranding: Stranding::Compressed,
    };
    plain(
        conductor,
        Wall::Icea {
            class_kv: 15,
            level_percent: 133,
        },
    )
}

/// A reading in tenths of a millimetre, plus and minus one tenth.
fn reading(tenths_mm: i64) -> Interval {
    Interval::around(
        Length::from_nm(tenths_mm * 100_000),
        Length::from_nm(100_000),
    )
}

fn seen(diameters: &[(Layer, i64)]) -> Evidence {
    Evidence {
        diameters: diameters
            .iter()
            .map(|(layer, tenths)| (*layer, reading(*tenths)))
            .collect(),
        metal: Some(Metal::Aluminium),
        stranding: Some(Stranding::Compressed),
        ..Evidence::default()
    }
}

fn outcome(likeness: &Likeness) -> &'static str {
    match likeness {
        Likeness::FitsPapersOnly => "papers only",
        Likeness::FitsOthersAlso(_) => "others also",
        Likeness::FitsOthersNotPapers(..) => "others not papers",
        Likeness::FitsNone(_) => "none",
        Likeness::NotEnough(_) => "not enough",
    }
}

#[track_caller]
fn check(evidence: &Evidence, expected: &str) {
    assert_eq!(
        outcome(&compare(&utility(), evidence, candidates())),
        expected
    );
}

// 4/0 compressed, 220 mil: conductor 12.74–13.13 mm, insulation 24.02–27.36 mm, insulation screen 25.24–31.17 mm.
const TRUE_TO_PAPERS: [(Layer, i64); 3] = [
    (Layer::Conductor, 130),
    (Layer::ConductorScreen, 137),
    (Layer::Insulation, 252),
];

#[test]
fn readings_that_leave_one_construction_fit_the_papers_only() {
    check(&seen(&TRUE_TO_PAPERS), "papers only");
}

#[test]
fn the_metal_that_nobody_looked_at_leaves_the_other_metal() {
    let evidence = Evidence {
        metal: None,
        ..seen(&TRUE_TO_PAPERS)
    };
    check(&evidence, "others also");
}

#[test]
fn a_diameter_alone_leaves_others() {
    check(&seen(&[(Layer::Insulation, 252)]), "others also");
}

#[test]
fn the_next_level_down_is_found_under_papers_that_say_133() {
    // 175 mil wall: 13.0 + 2·0.45 + 2·4.6 mm.
    let evidence = seen(&[(Layer::Conductor, 130), (Layer::Insulation, 231)]);
    check(&evidence, "others not papers");
    let Likeness::FitsOthersNotPapers(_, others) = compare(&utility(), &evidence, candidates())
    else {
        panic!("checked above")
    };
    assert!(
        others
            .iter()
            .all(|c| c.candidate.wall_nominal < Length::MIL * 220)
    );
}

#[test]
fn another_metal_than_the_papers_say_is_not_the_papers() {
    let evidence = Evidence {
        metal: Some(Metal::Copper),
        ..seen(&TRUE_TO_PAPERS)
    };
    check(&evidence, "others not papers");
}

#[test]
fn a_wire_count_other_than_the_papers_say_is_not_the_papers() {
    let evidence = Evidence {
        shield_elements: Some(11),
        ..seen(&TRUE_TO_PAPERS)
    };
    check(&evidence, "none");
    check(
        &Evidence {
            shield_elements: Some(16),
            ..seen(&TRUE_TO_PAPERS)
        },
        "papers only",
    );
    check(
        &Evidence {
            shield_kind: Some(ShieldKind::FlatStraps),
            ..seen(&TRUE_TO_PAPERS)
        },
        "none",
    );
}

#[test]
fn a_jacket_that_cannot_be_is_not_the_papers() {
    let mut evidence = seen(&TRUE_TO_PAPERS);
    evidence.diameters.push((Layer::Jacket, reading(330)));
    check(&evidence, "papers only");
    evidence.diameters.push((Layer::Jacket, reading(460)));
    check(&evidence, "papers only");
    evidence
        .diameters
        .retain(|(layer, _)| *layer != Layer::Jacket);
    evidence.diameters.push((Layer::Jacket, reading(460)));
    check(&evidence, "none");
    // The twin: with an unknown metal, the same construction in copper is another construction.
    evidence.metal = None;
    check(&evidence, "others not papers");
}

/// First difference of a leg from its papers, and whether its papers' own row is named among the others.
fn unlike_and_own(evidence: &Evidence) -> (Option<Unlike>, bool) {
    match compare(&utility(), evidence, candidates()) {
        Likeness::FitsOthersNotPapers(unlike, others) => {
            let own = |near: &Near| {
                near.candidate.conductor == utility().conductor
                    && near.candidate.wall_nominal == Length::MIL * 220
            };
            (Some(unlike), others.iter().any(own))
        }
        Likeness::FitsNone(unlike) => (Some(unlike), false),
        _ => (None, false),
    }
}

#[test]
fn issue_16_the_first_layer_that_is_not_like_the_papers_is_named_and_their_own_row_never_is() {
    let mut evidence = seen(&TRUE_TO_PAPERS);
    evidence.metal = None;
    assert_eq!(unlike_and_own(&evidence), (None, false));
    evidence.diameters.push((Layer::Jacket, reading(460)));
    let (
        Some(Unlike::Over {
            layer,
            read,
            papers,
        }),
        false,
    ) = unlike_and_own(&evidence)
    else {
        panic!("{:?}", unlike_and_own(&evidence));
    };
    assert_eq!((layer, read), (Layer::Jacket, reading(460)));
    assert!(papers.greatest() < read.least());
    // Of several differences, the innermost; observations come before readings.
    evidence
        .diameters
        .push((Layer::InsulationScreen, reading(400)));
    let innermost = unlike_and_own(&evidence).0;
    assert!(
        matches!(
            innermost,
            Some(Unlike::Over {
                layer: Layer::InsulationScreen,
                ..
            })
        ),
        "{innermost:?}"
    );
    evidence.shield_elements = Some(11);
    let seen_first = unlike_and_own(&evidence).0;
    assert_eq!(
        seen_first,
        Some(Unlike::ShieldElements(11, utility().shield))
    );
}

#[test]
fn a_count_that_the_papers_deny_does_not_make_their_own_row_another_construction() {
    let evidence = Evidence {
        shield_elements: Some(11),
        metal: None,
        ..seen(&TRUE_TO_PAPERS)
    };
    let counted = Unlike::ShieldElements(11, utility().shield);
    assert_eq!(unlike_and_own(&evidence), (Some(counted), false));
}

#[test]
fn a_cable_like_nothing_in_the_table_is_none() {
    check(
        &seen(&[
            (Layer::Conductor, 131),
            (Layer::ConductorScreen, 133),
            (Layer::Insulation, 170),
        ]),
        "none",
    );
}

#[test]
fn nothing_measured_under_the_metallic_shield_is_not_enough() {
    check(&seen(&[]), "not enough");
    check(&seen(&[(Layer::Jacket, 330)]), "not enough");
}

#[test]
fn papers_without_a_row_are_not_enough_and_say_which() {
    let conductor = Conductor {
        size: Size::Kcmil(700),
        stranding: Stranding::Compact,
        metal: Metal::Aluminium,
    };
    let stated = Construction {
        conductor,
        ..utility()
    };
    let said = compare(&stated, &seen(&TRUE_TO_PAPERS), candidates());
    assert_eq!(
        said,
        Likeness::NotEnough(Lacking::Row(Unknown::ConductorDiameter { conductor }))
    );
}

#[test]
fn readings_at_two_stations_are_taken_together() {
    let mut oval = seen(&[
        (Layer::Conductor, 128),
        (Layer::Conductor, 133),
        (Layer::ConductorScreen, 137),
        (Layer::Insulation, 252),
    ]);
    check(&oval, "papers only");
    // Either reading alone at the far side would not be enough.
    oval.diameters
        .retain(|(layer, _)| *layer != Layer::Conductor);
    oval.diameters.push((Layer::Conductor, reading(137)));
    assert_ne!(
        outcome(&compare(&utility(), &oval, candidates())),
        "papers only"
    );
}

#[track_caller]
fn check_layer(said: Layer, tenths_mm: i64, expected: Option<Layer>) {
    assert_eq!(wrong_layer(&utility(), said, reading(tenths_mm)), expected);
}

#[test]
fn a_reading_over_the_black_semicon_called_insulation_is_caught() {
    check_layer(Layer::Insulation, 290, Some(Layer::InsulationScreen));
    // The twin: a reading that the insulation can have is not doubted.
    check_layer(Layer::Insulation, 262, None);
}

#[test]
fn a_reading_over_the_insulation_called_screen_is_caught() {
    check_layer(Layer::InsulationScreen, 245, Some(Layer::Insulation));
    check_layer(Layer::InsulationScreen, 270, None);
}

#[test]
fn a_reading_over_the_conductor_screen_called_conductor_is_caught() {
    check_layer(Layer::Conductor, 142, Some(Layer::ConductorScreen));
    check_layer(Layer::Conductor, 130, None);
}

#[test]
fn a_reading_that_fits_no_layer_accuses_none() {
    check_layer(Layer::Insulation, 900, None);
    check_layer(Layer::Jacket, 100, None);
}

proptest! {
    #[test]
    fn a_reading_more_never_adds_a_construction(index in 0..4usize, tenths in 100i64..400) {
        let few = seen(&TRUE_TO_PAPERS[..2]);
        let mut more = few.clone();
        more.diameters.push((INNER[index], reading(tenths)));
        // A second reading over a layer widens the hull, so only new layers narrow it.
        prop_assume!(index >= 2);
        let n = |e: &Evidence| candidates().iter().filter(|c| steps_fit(&c.steps, &hulls(e))).count();
        prop_assert!(n(&more) <= n(&few));
    }

    #[test]
    fn no_reading_makes_the_comparison_panic(readings in prop::collection::vec((0..6usize, -10_000i64..100_000, 0i64..5_000), 0..8)) {
        let diameters = readings.into_iter().map(|(l, at, error)| {
            (Layer::ALL[l], Interval::around(Length::from_nm(at * 1000), Length::from_nm(error * 1000)))
        });
        let evidence = Evidence { diameters: diameters.collect(), ..Evidence::default() };
        let _ = compare(&utility(), &evidence, candidates());
    }
}
