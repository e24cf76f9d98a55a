//! The undersized leg of the example, and the same body on its proper cable.

use super::{Edits, edited, outcomes};
use crate::cases::{accepted, named, read};
use crate::warm::order;
use jointwright_joint::catalogue::PartKind;
use jointwright_joint::judge::{judge, judge_without_fields};
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::Plan;
use jointwright_wording::plan;

/// Checks of whether the body sits on its leg.
const SITS: &[&str] = &[
    "insulation_in_body",
    "interface_pressure",
    "screen_edge_pressure",
    "range_today",
];

fn tannery(edits: super::Edits<'_>) -> Plan {
    let case = named("tannery-change");
    let job = edited(case.job, edits);
    let order = accepted(read(&job, &case.catalogues()), "tannery");
    plan(&accepted(judge(&order), "tannery"))
}

#[test]
fn the_undersized_leg_fails_fit_and_pressure_and_its_proper_cable_passes() {
    let as_it_is = tannery(&[]);
    for check in SITS {
        assert!(
            outcomes(&as_it_is, check, "B").contains(&"fail".to_owned()),
            "{check} on the thin leg"
        );
        let proper = outcomes(&as_it_is, check, "A");
        assert!(
            !proper.is_empty() && proper.iter().all(|ruling| ruling == "pass"),
            "{check} on the proper leg: {proper:?}"
        );
    }
    // The other leg's cable in its place: the diameters that pass.
    let exchanged = tannery(&[(
        "values = [\"18.80 mm\", \"18.90 mm\", \"19.10 mm\", \"18.90 mm\"]",
        "values = [\"23.30 mm\", \"23.40 mm\", \"23.60 mm\", \"23.40 mm\"]",
    )]);
    for check in ["insulation_in_body", "interface_pressure", "range_today"] {
        let now = outcomes(&exchanged, check, "B");
        assert!(
            !now.is_empty() && now.iter().all(|ruling| ruling == "pass"),
            "{check} on the cable it is made for: {now:?}"
        );
    }
}

#[test]
fn the_line_of_the_thin_leg_says_it_and_whose_limit_it_is() {
    let plan = tannery(&[]);
    let line = |leg: usize| {
        let pressure = plan.legs[leg].ends[0].pressure.as_ref();
        pressure.expect("it was asked for").line.clone()
    };
    let thin = line(1);
    assert!(thin.starts_with("TOO LITTLE"), "{thin}");
    assert!(thin.contains("invented paper DS-25"), "{thin}");
    assert!(!line(0).contains("TOO LITTLE"), "{}", line(0));
}

/// The adapter of larkspur's leg B, recomputed independently: 1.446 of its paper's least with free ends, 1.379 with its length held; the worst of both counts.
#[test]
fn the_ratio_is_the_worst_over_what_holds_the_ends() {
    let case = named("larkspur-three-way");
    let order = accepted(read(case.job, &case.catalogues()), case.slug);
    let plan = plan(&accepted(judge(&order), case.slug));
    let leg = plan.legs.iter().find(|leg| leg.mark == "B").expect("leg B");
    let pressure = leg.ends[0].pressure.as_ref().expect("it was asked for");
    let adapter = pressure
        .parts
        .iter()
        .find(|part| part.kind == PartKind::Adapter);
    let adapter = adapter
        .and_then(|part| part.computed.as_ref())
        .expect("computed");
    assert!((adapter.ratio - 1.379).abs() < 2e-3, "{adapter:?}");
    assert_eq!(adapter.ratio_ends, "fixed length");
    // The printed ratio is the ratio less its error, with both beside it.
    let least = adapter.ratio - adapter.error_ratio;
    let body = &pressure.line;
    assert!(
        body.contains("give or take") && body.contains("worst with"),
        "{body}"
    );
    assert!(adapter.error_ratio >= 0.0 && least <= adapter.ratio);
}

/// A row states the outside of an adapter for cables in its range; for a thinner cable only its relaxed diameters tell it.
#[test]
fn a_body_over_an_adapter_out_of_its_range_is_not_judged_without_the_relaxed_diameters() {
    let thin: Edits<'_> = &[(
        r#"["25.51 mm", "25.75 mm", "25.54 mm", "25.45 mm"]"#,
        r#"["22.51 mm", "22.75 mm", "22.54 mm", "22.45 mm"]"#,
    )];
    let said = |rows: Edits<'_>| {
        let order = order("larkspur-three-way", thin, rows);
        let judged = accepted(judge_without_fields(&order), "thin");
        let rulings = judged.rulings.iter();
        let of_body = rulings.filter(|r| {
            let why = crate::cases::english(&r.why);
            let on_end = r.subject.leg.as_deref() == Some("B") && r.subject.phase == Some(1);
            r.check == "interface_pressure" && on_end && !why.is_empty()
        });
        let said = of_body.map(|r| (r.outcome, crate::cases::english(&r.why)));
        said.collect::<Vec<_>>()
    };
    let with = said(&[]);
    let lost = "may lie outside its range";
    assert!(with.iter().all(|(_, why)| !why.contains(lost)), "{with:?}");
    let without = said(&[("relaxed_outside = \"26 mm\"\n", "")]);
    let of_body = without.iter().find(|(_, why)| why.contains(lost));
    let (outcome, _) = of_body.unwrap_or_else(|| panic!("{without:?}"));
    assert_eq!(*outcome, Outcome::NotJudged);
    let passes = |(outcome, _): &(Outcome, String)| *outcome == Outcome::Pass;
    assert!(!without.iter().any(passes), "{without:?}");
}
