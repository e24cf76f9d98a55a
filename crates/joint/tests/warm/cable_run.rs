//! A run of cable without a joint, through the door: its current, against printed currents and by hand; and that there is no joint to plan.

use crate::cases::{accepted, lines, read, sentence};
use jointwright_joint::job::Order;
use jointwright_joint::judge::judge;
use jointwright_joint::judge::judge_run;
use jointwright_joint::limit::{Outcome, Who};
use jointwright_joint::plan::{CableRateDoc, RunAtDoc, StateDoc};
use jointwright_wording::cable_rating;

#[path = "../../../numerics/tests/rating/ladder.rs"]
#[allow(dead_code, reason = "part of it is for the tests of the formulas")]
mod ladder;

const RUN: &str = include_str!("../../../../examples/millbrook-cable-run/job.toml");

/// A cable whose papers leave no tolerance.
const OF_CABLE: &str = r#"insulation = "tr-xlpe"
insulation_k_m_per_w = 3.5
insulation_mj_per_m3k = 2.4
jacket_k_m_per_w = 3.5
jacket_mj_per_m3k = 2.4
papers = [
  { over = "conductor", least = "13 mm", greatest = "13 mm" },
  { over = "insulation", least = "25 mm", greatest = "25 mm" },
  { over = "insulation-screen", least = "27 mm", greatest = "27 mm" },
  { over = "metallic-shield", least = "30 mm", greatest = "30 mm" },
  { over = "jacket", least = "34 mm", greatest = "34 mm" },
]
shield = { kind = "concentric-wires", metal = "copper", count = 11, diameter = "64.1 mil" }"#;

#[track_caller]
fn job(edits: &[(&str, &str)]) -> String {
    edits.iter().fold(RUN.to_owned(), |text, (from, to)| {
        assert!(text.contains(from), "no passage {from}");
        text.replace(from, to)
    })
}

#[track_caller]
fn order(edits: &[(&str, &str)]) -> Order {
    accepted(read(&job(edits), &[]), "the run of cable")
}

#[track_caller]
fn rated(edits: &[(&str, &str)]) -> (CableRateDoc, Outcome) {
    let order = order(edits);
    let judged = accepted(judge_run(&order), "the run of cable");
    let document = cable_rating(&judged);
    let outcome = document.outcome;
    (document, outcome)
}

/// Passage from a word to the end of a later one.
fn passage(from: &str, to: &str) -> String {
    let begin = RUN.find(from).expect("its beginning");
    let end = begin + RUN[begin..].find(to).expect("its end") + to.len();
    RUN[begin..end].to_owned()
}

/// The cable that the tests of printed currents take for 4/0 AWG aluminium of 15 kV, three in a row 7.5 in apart, 36 in deep in 0.9 K·m/W, shields earthed at one end: nec.bury1c, nec_311_60, 315 A at 90 °C and 340 A at 105 °C, both at 20 °C of soil; 6 % is allowed there.
fn printed(degc: &str, more: &[(&str, &str)]) -> f64 {
    let (surroundings, cable) = (
        passage("surrounding = [", "\n]\n"),
        passage("stranding = \"compressed\"", "64.1 mil\" }"),
    );
    let of_table = "surrounding = [\n  { what = \"soil\", length = \"220 m\", temperature = \"20 degC\", soil = { depth = \"36 in\", resistivity_k_m_per_w = 0.9, contents = \"cables\", dries = false, formation = \"flat\", circuits = 1, spacing = \"7 1/2 in\" }, from = \"the table\", by = \"Ines Calloway\", date = 2026-03-02 },\n]\n";
    let of_cable = r#"stranding = "concentric"
class = "15 kV"
level = 133
insulation = "epr"
insulation_k_m_per_w = 5.0
insulation_mj_per_m3k = 2.4
jacket_k_m_per_w = 5.0
jacket_mj_per_m3k = 2.4
papers = [
  { over = "conductor", least = "0.528 in", greatest = "0.528 in" },
  { over = "insulation", least = "0.998 in", greatest = "0.998 in" },
  { over = "insulation-screen", least = "1.058 in", greatest = "1.058 in" },
  { over = "metallic-shield", least = "1.078 in", greatest = "1.078 in" },
  { over = "jacket", least = "1.238 in", greatest = "1.238 in" },
]
shield = { kind = "lapped-tape", metal = "copper", thickness = "5 mil", width = "1 in", overlap_percent = 25.0 }"#;
    let limit = format!("conductor_greatest = \"{degc}\"");
    let mut edits = vec![
        (surroundings.as_str(), of_table),
        (cable.as_str(), of_cable),
        ("bonding = \"solid\"", "bonding = \"open\""),
        (
            "formation = \"trefoil\"\nspacing = \"35 mm\"",
            "formation = \"flat\"\nspacing = \"190.5 mm\"",
        ),
        ("conductor_greatest = \"90 degC\"", limit.as_str()),
    ];
    edits.extend(more);
    let (document, _) = rated(&edits);
    document.load_at_limit_a.expect("a load")
}

#[test]
fn a_buried_run_carries_what_the_printed_table_has() {
    for (degc, printed_a) in [("90 degC", 315.0), ("105 degC", 340.0)] {
        let ours = printed(degc, &[]);
        assert!((ours / printed_a - 1.0).abs() < 0.06, "{degc}: {ours} A");
    }
    // The twin: soil with half as much resistivity again does not carry it.
    let dry = printed(
        "90 degC",
        &[(
            "resistivity_k_m_per_w = 0.9",
            "resistivity_k_m_per_w = 1.35",
        )],
    );
    assert!((dry / 315.0 - 1.0).abs() > 0.06, "{dry} A");
}

/// One stretch with a film, no loss of the shield: 1/(π De h), layers and resistance by hand, at the ends of the bands.
#[test]
fn a_film_is_added_to_the_layers_by_hand() {
    let surroundings = passage("surrounding = [", "\n]\n");
    let film = "surrounding = [\n  { what = \"water\", length = \"220 m\", temperature = \"20 degC\", outside_k_m_per_w = 0.7, from = \"test\", by = \"Ines Calloway\", date = 2026-03-02 },\n]\n";
    let cable = passage("insulation = \"tr-xlpe\"", "64.1 mil\" }");
    let (document, _) = rated(&[
        (&surroundings, film),
        (&cable, OF_CABLE),
        ("bonding = \"solid\"", "bonding = \"open\""),
    ]);
    let at = document.stretches[0].at_limit.as_ref().expect("a load");
    let layers = 3.5 / std::f64::consts::TAU * (34.0_f64 / 13.0).ln();
    let heat = 70.0 / (layers + 0.7);
    assert!((at.conductor_w_per_m / heat - 1.0).abs() < 1e-9, "{at:?}");
    assert!((at.surface_degc - 20.0 - 0.7 * heat).abs() < 1e-9);
    assert!((at.conductor_degc - 90.0).abs() < 1e-9 && at.shield_w_per_m == 0.0);
    // I² R, R of 4/0 aluminium at 90 °C between 0.3443 and 0.3515 mΩ/m (mass rule, with a little skin and proximity effect).
    let ohm_per_m = at.conductor_w_per_m / at.load_a.powi(2);
    assert!((0.335e-3..0.355e-3).contains(&ohm_per_m), "{ohm_per_m}");
}

/// v q T4 - (v - 1) dx above the critical rise, q T4 below it, from the printed heat.
#[test]
fn soil_about_a_run_dries_in_two_zones() {
    let of = |dries: &str| {
        let (document, _) = rated(&[("dries = false", dries)]);
        document.stretches[1].at_load.clone().expect("a state")
    };
    let moist = of("dries = false");
    let dries = of("dries = true, dry_k_m_per_w = 2.5, dries_above_k = 30.0");
    let heat = |at: &RunAtDoc| at.conductor_w_per_m + at.shield_w_per_m;
    // v T4 of a touching trefoil, all of it dry: the thinnest cable of the papers' bands is the hottest in both.
    let always = of("dries = true, dry_k_m_per_w = 2.5, dries_above_k = 0.0");
    let ratio = 2.5 / 1.2;
    let t4 = (always.surface_degc - 20.0) / heat(&always) / ratio;
    let expected = ratio * heat(&dries) * t4 - (ratio - 1.0) * 30.0;
    assert!(
        ((dries.surface_degc - 20.0) / expected - 1.0).abs() < 1e-9,
        "{dries:?}"
    );
    assert!(dries.conductor_degc > moist.conductor_degc + 5.0);
    // With a limit above any rise it stays moist; with a limit of zero all of it is dry.
    let never = of("dries = true, dry_k_m_per_w = 2.5, dries_above_k = 99.0");
    assert!((never.conductor_degc - moist.conductor_degc).abs() < 1e-9);
    let (document, _) = rated(&[("resistivity_k_m_per_w = 1.2", "resistivity_k_m_per_w = 2.5")]);
    let dry = document.stretches[1].at_load.as_ref().expect("a state");
    assert!((always.conductor_degc - dry.conductor_degc).abs() < 1e-6);
}

#[test]
fn the_job_s_load_is_held_against_the_job_s_own_limit() {
    let (document, outcome) = rated(&[]);
    assert_eq!((outcome, document.outcome), (Outcome::Pass, Outcome::Pass));
    let most = document.load_at_limit_a.expect("a load");
    let least = document
        .stretches
        .iter()
        .map(|of| of.at_limit.as_ref().expect("a load").load_a);
    assert_eq!(least.fold(f64::INFINITY, f64::min), most);
    let with = |load_a: f64| {
        let load = format!("load = \"{load_a:.1} A\"");
        rated(&[("load = \"240 A\"", &load)]).1
    };
    assert_eq!(with(0.97 * most), Outcome::Pass);
    assert_eq!(with(most), Outcome::NotJudged);
    assert_eq!(with(1.03 * most), Outcome::Fail);
    assert_eq!(with(20.0 * most), Outcome::Fail);
}

/// Checks that this one fact is asked of its addressee, with its place.
#[track_caller]
fn asks_for(document: &CableRateDoc, fact: &str, who: Who, place: &str) {
    let asks = &document.asks;
    assert_eq!(asks.len(), 1, "{asks:#?}");
    assert_eq!((asks[0].key(), asks[0].who), (fact, who));
    let found = sentence(&asks[0].place());
    assert!(found.starts_with(place), "{found}");
    assert_eq!(asks[0].settles, ["service_temperature A"]);
}

/// A missing fact is asked for, and passes nothing.
#[test]
fn a_run_of_which_something_is_not_stated_is_not_judged() {
    let surroundings = passage("surrounding = [", "\n]\n");
    for (out, fact, who, place) in [
        (
            surroundings.as_str(),
            "run-surrounding",
            Who::Engineer,
            "job, under surrounding: what, length",
        ),
        (
            "insulation_k_m_per_w = 3.5\ninsulation_mj_per_m3k = 2.4\n",
            "cable-heat",
            Who::CableMaker,
            "job, under leg.cable: insulation_k_m_per_w",
        ),
        (
            "jacket_k_m_per_w = 3.5\njacket_mj_per_m3k = 2.4\n",
            "cable-heat",
            Who::CableMaker,
            "job, under leg.cable",
        ),
        (
            "far_end_bonded = true\n",
            "far-end",
            Who::Engineer,
            "job, under leg: far_end_bonded",
        ),
        (
            "spacing = \"35 mm\"\n",
            "run",
            Who::Engineer,
            "job, under leg: formation",
        ),
        (
            "metal = \"copper\", ",
            "shield-papers",
            Who::CableMaker,
            "job, under leg.cable.shield",
        ),
    ] {
        let (document, outcome) = rated(&[(out, "")]);
        assert_eq!(
            (outcome, document.state),
            (Outcome::NotJudged, StateDoc::NotKnown),
            "{out}"
        );
        asks_for(&document, fact, who, place);
        assert!(document.stretches.is_empty() && document.load_at_limit_a.is_none());
    }
    for (out, fact, place) in [
        ("load = \"240 A\"\n", "load", "job, under duty: load"),
        (
            "conductor_greatest = \"90 degC\"\n",
            "conductor-greatest",
            "job, under duty: conductor_greatest",
        ),
    ] {
        let (document, outcome) = rated(&[(out, "")]);
        assert_eq!(outcome, Outcome::NotJudged, "{out}");
        asks_for(&document, fact, Who::Engineer, place);
    }
    // A given fact is not asked for.
    assert_eq!(rated(&[]).0.asks, []);
    for (out, asks) in [
        ("route_length = \"220 m\"\n", "route_length"),
        ("length = \"4 m\", ", "has no length"),
        ("length = \"216 m\", ", "has no length"),
    ] {
        let (document, outcome) = rated(&[(out, "")]);
        assert_eq!(outcome, Outcome::NotJudged, "{out}");
        assert!(document.not_judged[0].contains(asks), "{document:#?}");
        let place = "job, under leg or surrounding: route_length, length";
        asks_for(&document, "route", Who::Engineer, place);
    }
    let film = "film_w_per_m2k = 8.0";
    let (document, outcome) = rated(&[(film, "air = \"trefoil\"")]);
    assert_eq!(outcome, Outcome::NotJudged);
    assert!(
        document.not_judged[0].contains("free-air-film"),
        "{document:#?}"
    );
    let place = "job, under confirmation: key";
    asks_for(&document, "confirmation", Who::Engineer, place);
}

/// The form of drying soil is from memory: it neither passes nor fails until the owner confirms its key, for a cable as for ducts.
#[test]
fn soil_that_dries_rules_nothing_until_the_owner_confirms_it() {
    const KEY: &str = "soil-that-dries";
    let soil = (
        "dries = false",
        "dries = true, dry_k_m_per_w = 1.25, dries_above_k = 30.0",
    );
    let confirmed = (
        "[job]\n",
        "[[confirmation]]\nkey = \"soil-that-dries\"\nedition = \"invented\"\nby = \"Ines Calloway\"\ndate = 2026-03-01\n\n[job]\n",
    );
    for (load, outcome) in [("240 A", Outcome::Pass), ("800 A", Outcome::Fail)] {
        let load = format!("load = \"{load}\"");
        let load = ("load = \"240 A\"", load.as_str());
        let (document, open) = rated(&[soil, load]);
        assert_eq!(open, Outcome::NotJudged, "{document:#?}");
        assert!(document.not_judged[0].contains(KEY), "{document:#?}");
        assert_eq!(rated(&[soil, load, confirmed]).1, outcome, "{load:?}");
    }
    let ducted = |dries: &'static str| {
        let duct = r#", formation = "flat", circuits = 1, spacing = "200 mm" }, duct = { inside = "104 mm", outside = "110 mm", wall_k_m_per_w = 6.0, holds = "water", cables = 1 }"#;
        let (document, _) = rated(&[
            ("dries = false", dries),
            (", formation = \"trefoil\", circuits = 1 }", duct),
            ("contents = \"cables\"", "contents = \"ducts\""),
            (
                "formation = \"trefoil\"\nspacing = \"35 mm\"",
                "formation = \"flat\"\nspacing = \"200 mm\"",
            ),
        ]);
        document.not_judged[0].contains(KEY)
    };
    assert!(ducted(soil.1) && !ducted(soil.0));
}

/// A stretch that is left out may be the worst: nothing passes while the stretches are shorter than the route; a stretch that fails still fails.
#[test]
fn a_run_whose_stretches_are_not_the_route_passes_nothing() {
    let foot = passage("  { what = \"riser\u{27}s foot", "},\n");
    for edit in [
        (foot.as_str(), ""),
        ("length = \"216 m\"", "length = \"150 m\""),
        ("length = \"216 m\"", "length = \"216.001 m\""),
        ("route_length = \"220 m\"", "route_length = \"300 m\""),
    ] {
        let (document, outcome) = rated(&[edit]);
        assert_eq!(outcome, Outcome::NotJudged, "{edit:?}");
        let why = &document.not_judged[0];
        assert!(why.contains("said twice or not at all"), "{why}");
        let hot = rated(&[edit, ("load = \"240 A\"", "load = \"900 A\"")]);
        assert_eq!(hot.1, Outcome::Fail, "{edit:?}");
    }
    // The twin: the same length in millimetres.
    let split = ("route_length = \"220 m\"", "route_length = \"220000 mm\"");
    assert_eq!(rated(&[split]).1, Outcome::Pass);
}

#[test]
fn a_run_of_cable_has_no_joint_to_plan_and_is_sent_to_rate() {
    let order = order(&[]);
    let complaints = judge(&order).expect_err("there is no joint");
    let said = lines(&complaints);
    assert!(
        said.contains("no joint that could be planned") && said.contains("`jointwright rate`"),
        "{said}"
    );
}

#[test]
fn a_run_of_cable_with_a_joint_s_parts_or_two_legs_is_complained_of() {
    let second = passage("[[leg]]", "64.1 mil\" }").replace("id = \"A\"", "id = \"B\"");
    let two = format!("{RUN}\n{second}\n");
    for (text, words) in [
        (two, "has one leg, the run of cable; this one has 2"),
        (
            job(&[(
                "bonding = \"solid\"",
                "bonding = \"solid\"\nconsumables = []",
            )]),
            "the job names `consumables`",
        ),
        (
            job(&[(
                "spacing = \"35 mm\"",
                "spacing = \"35 mm\"\nload = \"100 A\"",
            )]),
            "has one load, and its leg names `load`",
        ),
        (
            job(&[("length = \"4 m\"", "until = \"4 m\"")]),
            "no joint from which `until` would count",
        ),
        (
            job(&[("[job]", "blank = []\n\n[job]")]),
            "the job names `blank`",
        ),
    ] {
        let complaints = read(&text, &[]).expect_err("it is complained of");
        let said = lines(&complaints);
        assert!(said.contains(words), "{said}");
    }
}

/// Invented: a day of works, as in the tests of the formula.
const DAY: [f64; 24] = [
    0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.5, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 0.5, 0.3,
    0.3, 0.3, 0.3, 0.3, 0.3,
];

/// Passage with the day of the example, and the same passage with another day.
fn day(loads: &[f64]) -> (String, String) {
    let from = passage("daily = {", "]");
    let to = format!("daily = {{ loads = {loads:?}");
    (from, to)
}

/// Ratio M of the peak to the steady load, for a finely divided cable in soil that is stepped through three days; the ladder of the formula's own tests.
fn by_ladder() -> f64 {
    let mm2_of_4_0 = 107.2;
    let body = jointwright_numerics::rating::transient::Body {
        conductor_j_per_m_k: mm2_of_4_0 * 1e-6 * 2.5e6,
        shield_j_per_m_k: 0.0,
        ..ladder::cable(0.013, 0.027, 0.034, 1.0)
    };
    let soil = jointwright_numerics::rating::transient::Wall {
        heat_j_per_m3_k: 1.0 / 5e-7,
        ..ladder::wall(0.034, 4.0, 1.0)
    };
    let ladder = ladder::Ladder::of(&body, Some((soil, 100)));
    let mean = DAY.iter().map(|load| load * load).sum::<f64>() / 24.0;
    let mut rises = ladder.steady(mean);
    let mut warmest = 0.0_f64;
    for hour in 0..72 {
        let loss = DAY[hour % 24] * DAY[hour % 24];
        for _ in 0..60 {
            ladder.step(&mut rises, loss, 60.0);
            if hour >= 48 {
                warmest = warmest.max(rises[0]);
            }
        }
    }
    (ladder.steady(1.0)[0] / warmest).sqrt()
}

/// One cable alone, 1 m deep in 1 K m/W, no loss of the shield, with a day of loads: against a finely divided cable.
#[test]
fn a_day_of_loads_is_that_of_a_finely_divided_cable() {
    let surroundings = passage("surrounding = [", "\n]\n");
    let soil = "surrounding = [\n  { what = \"soil\", length = \"220 m\", temperature = \"20 degC\", soil = { depth = \"1 m\", resistivity_k_m_per_w = 1.0, contents = \"cables\", dries = false, diffusivity_mm2_per_s = 0.5, formation = \"alone\", circuits = 1 }, from = \"test\", by = \"Ines Calloway\", date = 2026-03-02 },\n]\n";
    let cable = passage("insulation = \"tr-xlpe\"", "64.1 mil\" }");
    let of = |loads: &[f64]| {
        let (from, to) = day(loads);
        let (document, _) = rated(&[
            (&surroundings, soil),
            (&cable, OF_CABLE),
            (&from, &to),
            ("bonding = \"solid\"", "bonding = \"open\""),
            ("formation = \"trefoil\"\nspacing = \"35 mm\"\n", ""),
            ("phases = 3", "phases = 1"),
        ]);
        let stretch = &document.stretches[0];
        let at = stretch.at_limit.clone().expect("a load");
        (stretch.cyclic.clone().expect("a peak"), at.load_a)
    };
    let (found, steady_a) = of(&DAY);
    let exact = by_ladder();
    let ratio = found.factor_ratio / exact;
    assert!((0.98..1.002).contains(&ratio), "{found:?} {exact}");
    assert!((found.peak_a / steady_a / found.factor_ratio - 1.0).abs() < 1e-12);
    let mean = DAY.iter().map(|load| load * load).sum::<f64>() / 24.0;
    assert!((found.loss_load_ratio - mean).abs() < 1e-12);
    // The twins: a flat day gains nothing; and the day's own gain differs from the gain of its mean loss.
    let (flat, steady_a) = of(&[1.0; 24]);
    assert!((flat.peak_a - steady_a).abs() < 1e-9 * steady_a, "{flat:?}");
    assert!(exact > 1.05 && found.factor_ratio < 0.95 / mean.sqrt());
}

/// From memory: a load between the steady load and the peak of the day still fails.
#[test]
fn a_day_of_loads_rules_nothing() {
    let (document, _) = rated(&[]);
    let soil = &document.stretches[1];
    let steady_a = soil.at_limit.as_ref().expect("a load").load_a;
    let peak_a = soil.cyclic.as_ref().expect("a peak").peak_a;
    assert!(peak_a > 1.05 * steady_a, "{peak_a} {steady_a}");
    let load = format!("load = \"{:.0} A\"", 0.5 * (peak_a + steady_a));
    assert_eq!(rated(&[("load = \"240 A\"", &load)]).1, Outcome::Fail);
    let left_out = |edits: &[(&str, &str)], at: usize| {
        let stretch = rated(edits).0.stretches[at].clone();
        assert_eq!(stretch.cyclic, None);
        stretch.cyclic_left_out.expect("why")
    };
    assert!(left_out(&[], 0).contains("in soil only"));
    let silent = ("diffusivity_mm2_per_s = 0.5, ", "");
    assert!(left_out(&[silent], 1).contains("diffusivity_mm2_per_s"));
    for loads in [&[0.5; 24][..], &[1.0; 23]] {
        let (from, to) = day(loads);
        let complaints = read(&job(&[(&from, &to)]), &[]).expect_err("no day");
        assert!(lines(&complaints).contains("A day has 24 loads"));
    }
}

/// If only the day's mean loss is known, its worst day takes its place: nine hours at the peak have the mean loss of the example's factor, and gain as little.
#[test]
fn a_loss_load_factor_alone_is_the_worst_day_that_has_it() {
    let peak = |to: &str| {
        let from = passage("daily = {", "]");
        let (document, _) = rated(&[(&from, to)]);
        document.stretches[1].cyclic.clone().expect("a peak")
    };
    let block: [f64; 24] = std::array::from_fn(|hour| f64::from(u8::from(hour < 9)));
    let loads = peak(&day(&block).1);
    let alone = peak("daily = { loss_load_factor = 0.375");
    assert!((alone.peak_a / loads.peak_a - 1.0).abs() < 1e-12);
    assert!(alone.source.contains("the worst of all days"), "{alone:?}");
    assert!(!loads.source.contains("worst"), "{loads:?}");
    // The twin: a spread day with the same mean gains more.
    let spread = [0.375_f64.sqrt(); 23];
    let spread: Vec<f64> = spread.into_iter().chain([1.0]).collect();
    assert!(peak(&day(&spread).1).peak_a > 1.01 * alone.peak_a);
    for (to, says) in [
        ("daily = { loss_load_factor = 0.02", "loss_load_factor"),
        ("daily = { loss_load_factor = 1.2", "loss_load_factor"),
    ] {
        let from = passage("daily = {", "]");
        let complaints = read(&job(&[(&from, to)]), &[]).expect_err("no day");
        assert!(lines(&complaints).contains(says));
    }
    let both = format!("{}, loss_load_factor = 0.375", day(&block).1);
    let neither = "daily = { ";
    for to in [both.as_str(), neither] {
        let (from, to) = (passage("daily = {", "]"), to.to_owned());
        let (from, to) = if to == neither {
            (format!("{from}, "), to)
        } else {
            (from, to)
        };
        let complaints = read(&job(&[(&from, &to)]), &[]).expect_err("no day");
        assert!(lines(&complaints).contains("one of the two only"));
    }
}

/// An engineer's word on the route of the run, after its job.
fn closing(fact: &str, why: &str) -> String {
    format!(
        "\n[[closing]]\ncheck = \"service_temperature\"\nleg = \"A\"\nfact = \"{fact}\"\nwhy = \"{why}\"\nby = \"Ines Calloway\"\ndate = 2026-03-02\nuntil = 2026-12-31\n"
    )
}

#[test]
fn a_word_on_a_run_is_printed_and_no_pass_and_one_on_no_question_is_refused() {
    let deciding = job(&[
        ("route_length = \"220 m\"\n", ""),
        ("\"confirmations\"]", "\"confirmations\", \"closings\"]"),
    ]);
    let closed = format!(
        "{deciding}{}{}",
        closing("route", "walked it"),
        closing("route", "drawn")
    );
    let order = accepted(read(&closed, &[]), "the run of cable");
    let rating = cable_rating(&accepted(judge_run(&order), "the run of cable"));
    assert_eq!(rating.outcome, Outcome::NotJudged);
    let said = rating.not_judged.join(" ");
    assert!(
        said.contains("walked it") && said.contains("drawn"),
        "{said}"
    );
    let idle = format!("{deciding}{}", closing("load", "no such question"));
    let order = accepted(read(&idle, &[]), "the run of cable");
    assert!(judge_run(&order).is_err());
}
