//! The undersized leg of the example, and the same body on its proper cable.

use super::{edited, outcomes};
use crate::cases::{accepted, named, read};
use jointwright_joint::catalogue::PartKind;
use jointwright_joint::judge::judge;
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
