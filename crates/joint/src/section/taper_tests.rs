//! Tests of the section of a tapered plug, against sections solved elsewhere and against hostile rows.

use super::*;
use crate::catalogue::{Body, Catalogue, FieldDuty, Region, Taper};
use crate::form::{Complaints, Source};
use crate::said::Said;
use crate::section::GAP_PRESSURE_PA;
use jointwright_numerics::field::{Options, Unwatched, Wanted, solve};
use jointwright_numerics::gas::breakdown_crest_v;
use jointwright_numerics::outline::Point;
use jointwright_units::Length;
use std::collections::BTreeMap;

const BODY: &str = include_str!("../../../../tests/field/reference-taper.toml");
const GREASE: &str =
    include_str!("../../../../tests/published/field-sections/S21-plug-grease-film.answers.json");
const AIR: &str =
    include_str!("../../../../tests/published/field-sections/S22-plug-air-film.answers.json");
/// Voltage to earth of the published answers, V.
const VOLTS: f64 = 20.2e3;
const WITH_GREASE: TaperState = TaperState {
    film_thickness_m: 0.15e-3,
    is_empty: false,
};
const WITHOUT_GREASE: TaperState = TaperState {
    film_thickness_m: 0.15e-3,
    is_empty: true,
};

fn read_body(text: &str) -> (Option<Body>, String) {
    let mut complaints = Complaints::default();
    let source = Source::new("reference-taper.toml", text.to_owned());
    let catalogue = Catalogue::read(&[source], true, &mut complaints);
    let said = format!("{:?}", complaints.into_sorted());
    (catalogue.body("reference-tapered-body").cloned(), said)
}

#[track_caller]
fn reference() -> Taper {
    let (body, said) = read_body(BODY);
    assert_eq!(said, "[]");
    body.and_then(|body| body.taper).expect("it has a taper")
}

/// Answers of a section at the published voltage.
struct Found {
    /// Greatest value of each quantity, kV/mm.
    fields: BTreeMap<Quantity, f64>,
    /// Greatest ratio of the voltage across the film to its thickness, kV/mm.
    across: f64,
    /// Largest field in the film, kV/mm.
    in_film: Option<f64>,
    /// Potentials at other requested places, kV.
    besides: Vec<f64>,
    /// Fields along the plug's side of the film and along the body's side, kV/mm.
    along: [f64; 2],
}

#[track_caller]
fn found(taper: &Taper, state: &TaperState, besides: &[Point]) -> Found {
    let drawn = draw_taper(taper, state).unwrap_or_else(|why| panic!("{why:?}"));
    let mut wanted = drawn.wanted.clone();
    let mut regions = drawn.section.outline.regions.iter();
    let film_index = regions.position(|region| region.name.contains("film"));
    let region_index = film_index.unwrap_or(0);
    wanted.push(Wanted::PeakInRegion { region_index });
    wanted.extend(besides.iter().map(|&at| Wanted::PotentialAt { at }));
    let options = Options {
        tolerance: 5e-3,
        n_unknowns_most: 120_000,
        ..Options::default()
    };
    let solved = solve(&drawn.section, &wanted, &options, &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error:?}"));
    let mut fields = BTreeMap::new();
    for (answer, quantity) in solved.answers.iter().zip(&drawn.quantities) {
        if let Some(quantity) = quantity {
            assert!(answer.is_settled, "{quantity:?} {answer:?}");
            let greatest = fields.entry(*quantity).or_insert(0.0_f64);
            *greatest = greatest.max(answer.value * VOLTS * 1e-6);
        }
    }
    let volts = |index: usize| solved.answers[index].value * VOLTS;
    let strengths = drawn.gap.iter().map(|place| {
        let answer = &solved.answers[place.wanted_index];
        let (at, to) = answer.at.zip(answer.to).expect("a way");
        let width = at.distance(to);
        let withstood = breakdown_crest_v(width, GAP_PRESSURE_PA, place.curve);
        answer.value * withstood * VOLTS / width * 1e-6
    });
    Found {
        fields,
        across: strengths.fold(0.0, f64::max),
        in_film: film_index.map(|_| volts(drawn.wanted.len()) * 1e-6),
        besides: (drawn.wanted.len() + 1..wanted.len())
            .map(|index| volts(index) * 1e-3)
            .collect(),
        along: [0, 1].map(|index| volts(index) * 1e-6),
    }
}

fn published(text: &str, name: &str) -> f64 {
    let document: serde_json::Value = serde_json::from_str(text).expect("answers");
    let answers = document["answers"].as_array().expect("a list");
    let answer = answers.iter().find(|answer| answer["name"] == name);
    let value = answer.expect("it is there")["value"].as_f64();
    value.expect("a number")
}

#[track_caller]
fn close(name: &str, found: f64, expected: f64, ratio: f64) {
    assert!(
        (found / expected - 1.0).abs() < ratio,
        "{name}: {found}, expected {expected}"
    );
}

/// Places on the plug and in the middle of the film with a published potential: name and coordinates, mm.
const PLACES: [(&str, f64, f64); 4] = [
    ("phi_cone_z24", 21.3, 24.0),
    ("phi_film_z24", 21.375_473_117_109_67, 24.0),
    ("phi_film_z40", 19.575_473_117_109_67, 40.0),
    ("phi_cone_z48", 18.6, 48.0),
];

#[track_caller]
fn agrees(state: &TaperState, answers: &str) -> Found {
    let places = PLACES.map(|(_, r, z)| Point::new(r * 1e-3, z * 1e-3));
    let found = found(&reference(), state, &places);
    let along = ["Et_cone", "Et_film_out"].map(|name| published(answers, name));
    for (found, expected) in found.along.iter().zip(along) {
        close("along the film", *found, expected, 1e-2);
    }
    let expected = [
        (Quantity::Interface, along[0].max(along[1])),
        (
            Quantity::ElectrodeEnd,
            published(answers, "Emax_on_electrode_end"),
        ),
        (
            Quantity::DeflectorTip,
            published(answers, "Emax_on_defl_tip"),
        ),
        (
            Quantity::DeflectorHeel,
            published(answers, "Emax_on_defl_profile"),
        ),
    ];
    for (quantity, expected) in expected {
        close(
            &format!("{quantity:?}"),
            found.fields[&quantity],
            expected,
            1e-2,
        );
    }
    for ((name, ..), kilovolts) in PLACES.iter().zip(&found.besides) {
        close(name, *kilovolts, published(answers, name), 2e-3);
    }
    found
}

// Oracle: tests/published/field-sections, solved with NGSolve; the same shapes, drawn there by hand.
#[test]
fn a_plug_in_grease_agrees_with_its_published_section() {
    let greased = agrees(&WITH_GREASE, GREASE);
    let half = |film: &Found| film.besides[0] - film.besides[1];
    let expected = published(GREASE, "phi_cone_z24") - published(GREASE, "phi_film_z24");
    close("half the film", half(&greased), expected, 5e-2);
    // A twin: a film without its grease, and a stud thinner by a millimetre, give visible differences.
    let places = PLACES.map(|(_, r, z)| Point::new(r * 1e-3, z * 1e-3));
    let empty = found(&reference(), &WITHOUT_GREASE, &places);
    assert!(half(&empty) > 3.0 * half(&greased));
    let mut thinner = reference();
    thinner.stud_diameter = length(15.0);
    let heel = |found: &Found| found.fields[&Quantity::DeflectorHeel];
    let ratio = heel(&found(&thinner, &WITH_GREASE, &[])) / heel(&greased);
    assert!((ratio - 1.0).abs() > 1e-2, "{ratio}");
}

#[test]
fn a_plug_in_air_agrees_with_its_published_section() {
    let empty = agrees(&WITHOUT_GREASE, AIR);
    // The greatest field of the film is square to it, as in a gap between plates.
    close("across", empty.across, published(AIR, "Emax_film"), 1e-2);
    let greased = published(GREASE, "Emax_film");
    assert!(empty.across > 3.0 * greased, "{}", empty.across);
}

#[test]
fn a_film_too_thin_to_draw_is_none() {
    let of = |film_mm: f64| {
        let state = TaperState {
            film_thickness_m: film_mm * 1e-3,
            is_empty: true,
        };
        draw_taper(&reference(), &state).unwrap_or_else(|why| panic!("{why:?}"))
    };
    let (none, thin, drawn) = (of(0.0), of(0.009), of(0.011));
    assert_eq!(none.section, thin.section);
    let regions = |drawn: &Drawn| drawn.section.outline.regions.len();
    assert_eq!((regions(&none), regions(&drawn)), (2, 3));
    assert!(none.gap.is_empty() && !drawn.gap.is_empty());
}

// Grease has nearly the plug's own permittivity: without any film the body's conductors see the same field.
#[test]
fn without_a_film_the_conductors_have_nearly_the_field_that_grease_gives() {
    let seated = TaperState {
        film_thickness_m: 0.0,
        is_empty: false,
    };
    let drawn = draw_taper(&reference(), &seated).unwrap_or_else(|why| panic!("{why:?}"));
    let lines = drawn.quantities.iter();
    let n_lines = lines.filter(|quantity| **quantity == Some(Quantity::Interface));
    assert_eq!(n_lines.count(), 1);
    let seated = found(&reference(), &seated, &[]);
    let greased = found(&reference(), &WITH_GREASE, &[]);
    for (quantity, value) in &greased.fields {
        close(
            &format!("{quantity:?}"),
            seated.fields[quantity],
            *value,
            3e-2,
        );
    }
}

/// Complaints, questions or the reason for the reference row with one passage replaced, joined.
#[track_caller]
fn said(passage: &str, with: &str) -> String {
    assert!(BODY.contains(passage), "{passage}");
    let (body, complaints) = read_body(&BODY.replacen(passage, with, 1));
    let taper = body.and_then(|body| body.taper);
    let Some(taper) = taper.filter(|_| complaints == "[]") else {
        return complaints;
    };
    match draw_taper(&taper, &WITH_GREASE) {
        Err(NotDrawn::Unknown(unknown)) => format!("{:?}", unknown.questions),
        Err(NotDrawn::Refused(why)) => format!("{why:?}"),
        Ok(_) => String::new(),
    }
}

#[track_caller]
fn says(passage: &str, with: &str, words: &str) {
    let said = said(passage, with);
    assert!(said.contains(words), "{said}");
}

#[test]
fn what_is_not_stated_is_asked_for() {
    says("48 mm\"", "48 mm\"", "");
    assert_eq!(said("48 mm\"", "48 mm\""), "");
    for duty in [
        FieldDuty::Insulation,
        FieldDuty::Electrode,
        FieldDuty::Deflector,
    ] {
        let question = format!("PlugWhereLies {{ duty: {duty:?} }}");
        says(&format!("serves = \"{}\"\n", duty.name()), "", &question);
    }
    says("relative_permittivity = 2.8\n", "", "PlugPermittivity");
    says(
        "radius = [\"0 mm\", \"40 mm\", \"3 mm\", \"0 mm\"]\n",
        "",
        "PlugCornerRadius { region: \"deflector\", along_mm: 43.88",
    );
    // A corner beyond the section's end needs no radius: the electrode's corner at 110 mm has none.
    says("\"3.799136 mm\"", "\"0 mm\"", "along_mm: 58.9");
}

#[test]
fn a_body_with_an_interface_and_no_taper_leaves_questions() {
    let (body, _) = read_body(BODY);
    let mut body = body.expect("it reads");
    assert_eq!(taper_questions(&body), None);
    body.taper = None;
    let asked = taper_questions(&body).expect("it is open");
    assert_eq!(asked.questions.len(), 3);
    let is_named = |question: &Said| format!("{question:?}").contains("reference-tapered-body");
    assert!(asked.questions.iter().all(is_named), "{asked:?}");
    body.interface = None;
    assert_eq!(taper_questions(&body), None);
}

#[test]
fn what_a_row_says_against_itself_is_complained_of() {
    says("filler_permittivity = 4.5\n", "", "only together");
    says(
        "filler = \"grease\"\nfiller_permittivity = 4.5\n",
        "",
        "stands without a `filler`",
    );
    says(
        "small_diameter = \"30 mm\"",
        "small_diameter = \"50 mm\"",
        "a plug narrows",
    );
    says(
        "stud_diameter = \"16 mm\"",
        "stud_diameter = \"31 mm\"",
        "lies inside the plug",
    );
    says(
        "film_thickness_least = \"0 mm\"",
        "film_thickness_least = \"0.2 mm\"",
        "the least cannot be above",
    );
    says(
        "plug_permittivity = 4.0",
        "plug_permittivity = 40.0",
        "plug_permittivity",
    );
}

#[test]
fn a_corner_is_on_the_bore_within_what_the_row_is_unsure_of() {
    // A corner a tenth of a millimetre off the cone counts as on it only if the row's uncertainty is that large.
    let (corner, off) = ("\"42.944204 mm\"", "\"43.144204 mm\"");
    says(
        corner,
        off,
        "CornersOnCone { region: \"deflector\", n_corners: 1, within_mm: 0.05",
    );
    let unsure = BODY.replacen("uncertainty = \"0.001 mm\"", "uncertainty = \"0.1 mm\"", 1);
    let (body, _) = read_body(&unsure.replacen(corner, off, 1));
    let unsure = body.and_then(|body| body.taper).expect("it reads");
    let (snapped, exact) = (
        draw_taper(&unsure, &WITH_GREASE).expect("it is drawn"),
        draw_taper(&reference(), &WITH_GREASE).expect("it is drawn"),
    );
    assert_eq!(snapped.section, exact.section);
}

/// Change to a sound row.
type Change = fn(&mut Taper);

#[test]
fn what_makes_no_section_is_refused_with_its_reason() {
    says(
        "[\"80 mm\", \"58.946726 mm\"",
        "[\"70 mm\", \"58.946726 mm\"",
        "n_corners: 1",
    );
    says("\"3.799136 mm\"", "\"9 mm\"", "CornerNotRounded");
    let cut = said(
        "\"110 mm\", \"110 mm\", \"0 mm\"]",
        "\"82 mm\", \"82 mm\", \"0 mm\"]",
    );
    assert_eq!(cut, "");
    says(
        "\"110 mm\", \"110 mm\", \"0 mm\"]",
        "\"76 mm\", \"76 mm\", \"0 mm\"]",
        "NotReaching { end_mm: 80",
    );
    says(
        "\"30 mm\", \"80 mm\", \"80 mm\"]",
        "\"30 mm\", \"160 mm\", \"160 mm\"]",
        "BodyShort { end_mm: 110",
    );
    says(
        "\"40 mm\", \"3 mm\"",
        "\"80 mm\", \"3 mm\"",
        "CornerNotRounded",
    );
    let refused = |change: Change, film_mm: f64| {
        let mut taper = reference();
        change(&mut taper);
        let state = TaperState {
            film_thickness_m: film_mm * 1e-3,
            is_empty: false,
        };
        match draw_taper(&taper, &state) {
            Err(NotDrawn::Refused(why)) => format!("{why:?}"),
            other => panic!("{other:?}"),
        }
    };
    let expected: [(Change, f64, &str); 6] = [
        (
            |taper| taper.small_diameter = length(48.0),
            0.15,
            "NotTapered",
        ),
        (
            |taper| taper.stud_diameter = length(30.0),
            0.15,
            "StudOutside",
        ),
        (
            |taper| taper.length = Length::ZERO,
            0.15,
            "Length { length: \"0 mm\"",
        ),
        (|_| (), -0.1, "FilmThickness { thickness_mm: -0.1"),
        (|_| (), f64::NAN, "FilmThickness"),
        (|_| (), 30.0, "NoSection"),
    ];
    for (change, film_mm, words) in expected {
        let why = refused(change, film_mm);
        assert!(why.contains(words), "{why}");
    }
}

fn length(mm: f64) -> Length {
    Length::from_nm((mm * 1e6).round() as i64)
}

/// Numbers between zero and one, the same in every run.
struct Dice(u64);

impl Dice {
    fn share(&mut self) -> f64 {
        // Source: the multiplier and increment of Knuth's 64-bit generator (memory); only the upper bits are used.
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005);
        self.0 = self.0.wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn between(&mut self, least: f64, greatest: f64) -> f64 {
        least + (greatest - least) * self.share()
    }
}

/// A region with its corners, mm, and their radii.
fn region(serves: FieldDuty, corners: &[[f64; 3]]) -> Region {
    Region {
        name: serves.name().to_owned(),
        material: "invented".to_owned(),
        corners: corners
            .iter()
            .map(|[z, r, _]| (length(*z), length(2.0 * r)))
            .collect(),
        radii: corners.iter().map(|[.., radius]| length(*radius)).collect(),
        serves: Some(serves),
        relative_permittivity: Some(2.8),
        conductive: serves != FieldDuty::Insulation,
        stiffness_ratio: None,
        stuff: None,
    }
}

/// A plug and a body that somebody might make; the error of the bore is within the stated uncertainty.
fn plausible(dice: &mut Dice) -> Taper {
    let stud = dice.between(5.0, 12.0);
    let small = stud + dice.between(4.0, 10.0);
    let (slope, long) = (dice.between(0.04, 0.16), dice.between(60.0, 140.0));
    let uncertainty = dice.between(0.0, 0.3);
    let cone = |z: f64| small + slope * (long - z);
    // A corner on the bore, with the greatest error that the row allows.
    let off = |dice: &mut Dice| dice.between(-0.8, 0.8) * uncertainty;
    let bottom = if dice.share() < 0.3 { -20.0 } else { 0.0 };
    let top = long + dice.between(25.0, 60.0);

    // The deflector: its line leaves the bore at an angle to the axis, and its rounded tip closes it.
    let (leaves, angle) = (dice.between(0.15, 0.3) * long, dice.between(0.35, 0.8_f64));
    let lift = dice.between(4.0, 0.25 * long * angle.tan());
    let (tip_z, tip_r) = (leaves + lift / angle.tan(), cone(leaves) + lift);
    let side = lift / angle.sin();
    let tip_reach = side * dice.between(0.2, 0.5);
    let heel_reach = (side - tip_reach).min(0.9 * leaves) * dice.between(0.4, 0.95);
    let heel_radius = heel_reach / ((angle + slope.atan()) / 2.0).tan();
    let tip_radius = tip_reach * (angle / 2.0).tan();
    let mut deflector = vec![
        [0.0, cone(0.0) + off(dice), 0.0],
        [leaves, cone(leaves) + off(dice), heel_radius],
        [tip_z, tip_r, tip_radius],
        [bottom, tip_r, 0.0],
    ];
    if bottom < 0.0 {
        deflector.push([bottom, cone(0.0), 0.0]);
    }

    let over = dice.between(0.7, 0.85) * long;
    let end_r = cone(over) + dice.between(4.0, 9.0);
    let reach = (end_r - cone(over)) * dice.between(0.2, 0.5);
    let electrode = [
        [long, small + off(dice), 0.0],
        [over, cone(over) + off(dice), 0.8 * reach],
        [over, end_r, 0.9 * reach],
        [top, end_r, 0.0],
        [top, small, 0.0],
    ];
    let outside = tip_r.max(end_r) + dice.between(8.0, 18.0);
    let insulation = [
        [0.0, cone(0.0), 0.0],
        [long, small, 0.0],
        [top, small, 0.0],
        [top, outside, 0.0],
        [bottom, outside, 0.0],
        [bottom, cone(0.0), 0.0],
    ];
    let insulation = if bottom < 0.0 {
        &insulation[..]
    } else {
        &insulation[..5]
    };
    Taper {
        uncertainty: length(uncertainty),
        stud_diameter: length(2.0 * stud),
        relative_permittivity: dice.between(2.5, 6.0),
        large_diameter: length(2.0 * cone(0.0)),
        small_diameter: length(2.0 * small),
        length: length(long),
        regions: vec![
            region(FieldDuty::Insulation, insulation),
            region(FieldDuty::Deflector, &deflector),
            region(FieldDuty::Electrode, &electrode),
        ],
        ..reference()
    }
}

fn state(dice: &mut Dice) -> TaperState {
    let is_seated = dice.share() < 0.2;
    TaperState {
        film_thickness_m: if is_seated {
            0.0
        } else {
            dice.between(0.03e-3, 0.4e-3)
        },
        is_empty: dice.share() < 0.5,
    }
}

#[test]
fn plausible_plugs_are_drawn_and_some_are_solved() {
    let mut dice = Dice(21);
    let mut refused = Vec::new();
    for number in 0..300 {
        let (taper, state) = (plausible(&mut dice), state(&mut dice));
        match draw_taper(&taper, &state) {
            Ok(_) if number % 15 == 0 => {
                let found = found(&taper, &state, &[]);
                assert!(found.fields.len() == 4, "{:?}", found.fields);
                // The places across the film do not miss its greatest field; the field along the film is judged separately.
                let along = found.along[0].max(found.along[1]);
                let in_film = found.in_film.unwrap_or(0.0);
                let seen = found.across.hypot(along);
                assert!(seen > 0.97 * in_film, "{seen} of {in_film}");
                let is_sane = |value: &f64| *value > 0.05 && *value < 40.0;
                assert!(found.fields.values().all(is_sane), "{:?}", found.fields);
            }
            Ok(_) => (),
            Err(why) => refused.push(why),
        }
    }
    assert!(refused.len() <= 6, "{} {refused:?}", refused.len());
}

/// A taper of arbitrary numbers.
fn hostile(dice: &mut Dice) -> Taper {
    let mut taper = plausible(dice);
    let n_changes = 1 + (dice.share() * 4.0) as usize;
    for _ in 0..n_changes {
        let odd = [-1.0, 0.0, 1e-6, 1.0, 15.0, 80.0, 1e3, 1e6];
        let mm = length(odd[(dice.share() * 8.0) as usize % 8]);
        let region = &mut taper.regions[(dice.share() * 3.0) as usize % 3];
        let corner = (dice.share() * region.corners.len() as f64) as usize;
        match (dice.share() * 9.0) as usize {
            0 => taper.large_diameter = mm,
            1 => taper.length = mm,
            2 => taper.uncertainty = mm,
            3 => taper.stud_diameter = mm,
            4 => region.corners[corner].0 = mm,
            5 => region.corners[corner].1 = mm,
            6 => region.radii[corner] = mm,
            7 => region.corners[corner] = region.corners[0],
            _ => {
                region.corners.remove(corner);
            }
        }
    }
    taper
}

#[test]
fn hostile_tapers_are_drawn_or_refused_in_words() {
    let mut dice = Dice(7);
    let mut n_drawn = 0;
    for _ in 0..3000 {
        let taper = hostile(&mut dice);
        let why = match draw_taper(&taper, &state(&mut dice)) {
            Ok(drawn) => {
                let points = &drawn.section.outline.points;
                assert!(points.iter().all(|at| at.r.is_finite() && at.z.is_finite()));
                n_drawn += 1;
                continue;
            }
            Err(NotDrawn::Refused(why)) => format!("{why:?}"),
            Err(NotDrawn::Unknown(unknown)) => format!("{:?}", unknown.questions),
        };
        assert!(why.len() > 20 && !why.contains("NaN"), "{why}");
    }
    assert!(n_drawn > 150 && n_drawn < 2850, "{n_drawn}");
}
