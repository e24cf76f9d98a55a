//! Effect of the store: more of it never raises the pressure, and past the date there is no range.

use super::{INSULATION, PUSHED_ON, body, insulation, kpa, outcomes, part, planned};
use jointwright_joint::plan::Plan;
use jointwright_joint::plan::StateDoc;
use proptest::prelude::*;

/// Expanded on a day of 2025 and laid at these temperatures, one stay after the other; the last to the day of the work.
fn stored(expanded: &str, stays: &[(&str, f64)]) -> Plan {
    let rows: Vec<String> = stays
        .iter()
        .map(|(until, degc)| format!("{{ until = {until}, greatest = \"{degc} degC\" }}"))
        .collect();
    planned(
        &[(
            "lot = \"INV-BD-1\", expanded = 2025-09-20, store_least = \"5 degC\", store_greatest = \"31 degC\"",
            &format!(
                "lot = \"INV-BD-1\", expanded = {expanded}, stay = [{}]",
                rows.join(", ")
            ),
        )],
        &[],
    )
}

fn set_percent(plan: &Plan) -> f64 {
    body(plan).set_percent.expect("it is held open")[0]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn a_thinner_cable_is_never_pressed_more(mm in 21.5_f64..28.0, less in 0.01_f64..3.0) {
        let at = |mm: f64| planned(&[(INSULATION, &insulation([mm, mm, mm, mm]))], &[]);
        let (thick, thin) = (at(mm), at(mm - less));
        prop_assert!(kpa(&thin) < kpa(&thick));
        prop_assert!(body(&thin).ratio <= body(&thick).ratio);
    }

    #[test]
    fn a_longer_or_warmer_store_never_presses_more(
        degc in 0.0_f64..60.0, more in 0.0_f64..20.0, month in 1_u32..12, earlier in 0_u32..12,
    ) {
        let expanded = |month: u32| format!("2025-{month:02}-01");
        let at = |month: u32, degc: f64| stored(&expanded(month), &[("2026-03-11", degc)]);
        let first = at(month, degc);
        let other = at(month.saturating_sub(earlier).max(1), degc + more);
        prop_assert!(set_percent(&other) >= set_percent(&first));
        prop_assert!(kpa(&other) <= kpa(&first));
        prop_assert!(body(&other).ratio <= body(&first).ratio);
        if let (Some(other), Some(first)) = (body(&other).today_mm, body(&first).today_mm) {
            prop_assert!(other[0] >= first[0]);
        }
    }

    #[test]
    fn temperatures_of_equal_time_count_alike_in_any_order(a in -10.0_f64..60.0, b in -10.0_f64..60.0) {
        // 60 days before and 60 days after the change; the day of the work counts whole.
        let at = |first: f64, then: f64| stored("2025-11-11", &[("2026-01-10", first), ("2026-03-11", then)]);
        let (one, other) = (at(a, b), at(b, a));
        prop_assert!((kpa(&one) / kpa(&other) - 1.0).abs() < 1e-12);
        prop_assert!((set_percent(&one) / set_percent(&other) - 1.0).abs() < 1e-12);
    }
}

#[test]
fn the_set_is_the_law_of_the_row_by_hand() {
    // 171 days and the day of the work, 172 in all, at the reference temperature: 0.12 (1 - exp(-sqrt(172/400))).
    let by_hand = 12.0 * (1.0 - (-(172.0_f64 / 400.0).sqrt()).exp());
    let found = set_percent(&stored("2025-09-20", &[("2026-03-11", 23.0)]));
    assert!((found - by_hand).abs() < 1e-6, "{found} and {by_hand}");
    // At 40 degC by Arrhenius with 60 kJ/mol: the time counts exp(60000/8.314463 (1/296.15 - 1/313.15)) = 3.754 fold.
    let by_hand = 12.0 * (1.0 - (-(3.7540 * 172.0_f64 / 400.0).sqrt()).exp());
    let found = set_percent(&stored("2025-09-20", &[("2026-03-11", 40.0)]));
    assert!((found - by_hand).abs() < 1e-3, "{found} and {by_hand}");
}

#[test]
fn a_store_hotter_than_allowed_cuts_the_range_down() {
    // A year at 70 degC uses up more than 36 months at 40 degC.
    let hot = |mm: f64| {
        planned(
            &[
                (
                    "lot = \"INV-BD-1\", expanded = 2025-09-20, store_least = \"5 degC\", store_greatest = \"31 degC\"",
                    "lot = \"INV-BD-1\", expanded = 2025-03-10, store_least = \"5 degC\", store_greatest = \"70 degC\"",
                ),
                (INSULATION, &insulation([mm, mm, mm, mm])),
            ],
            &[],
        )
    };
    let plan = hot(25.0);
    let [least, greatest] = body(&plan).today_mm.expect("a range");
    assert!(least > 21.1 && least < 24.0, "{least}");
    assert!((greatest - 29.0).abs() < 1e-9, "{greatest}");
    // Between the paper's least and today's least: it fits by the paper and not by today's range.
    let between = hot(0.5 * (21.1 + least));
    assert_eq!(outcomes(&between, "insulation_in_body", "A"), ["pass"]);
    assert_eq!(outcomes(&between, "range_today", "A")[0], "fail");
    assert_eq!(outcomes(&between, "interface_pressure", "A"), ["fail"]);
    // A store within the allowed one leaves the paper's range as it is.
    let mild = planned(&[], &[]);
    let [least, _] = body(&mild).today_mm.expect("a range");
    assert!((least - 21.1).abs() < 1e-9, "{least}");
}

/// Edits of the job that make the body older than its 36 months, or older than its label.
const TOO_OLD: &[(&str, &str)] = &[
    (
        "lot = \"INV-BD-1\", expanded = 2025-09-20",
        "lot = \"INV-BD-1\", expanded = 2023-03-09",
    ),
    (
        "lot = \"INV-BD-1\", expanded = 2025-09-20, store_least = \"5 degC\", store_greatest = \"31 degC\", no_expiry = true",
        "lot = \"INV-BD-1\", expanded = 2025-09-20, expires = 2026-03-09, store_least = \"5 degC\", store_greatest = \"31 degC\"",
    ),
    // A label that allows more time than the instructions makes it no younger.
    (
        "lot = \"INV-BD-1\", expanded = 2025-09-20, store_least = \"5 degC\", store_greatest = \"31 degC\", no_expiry = true",
        "lot = \"INV-BD-1\", expanded = 2023-03-09, expires = 2030-01-01, store_least = \"5 degC\", store_greatest = \"31 degC\"",
    ),
];

#[test]
fn past_its_date_it_fails_and_no_diameter_is_printed() {
    let rubber = super::parts();
    let table = &rubber[rubber.find("[body.rubber]").expect("a table")..];
    let thick = insulation([26.0; 4]);
    for old in TOO_OLD {
        // No other fact, known or not, makes it younger.
        let others: &[(super::Edits<'_>, super::Edits<'_>)] = &[
            (&[], &[]),
            (&[(INSULATION, &thick)], &[]),
            (&[], &[(table, "")]),
            (&[("conductor_greatest = \"130 degC\"\n", "")], &[]),
            (&[], &[("greatest = 0.12", "greatest = 0.0")]),
        ];
        for (of_job, of_row) in others {
            let of_job: Vec<(&str, &str)> = std::iter::once(*old)
                .chain(of_job.iter().copied())
                .collect();
            let plan = planned(&of_job, of_row);
            assert_eq!(outcomes(&plan, "range_today", "A")[0], "fail", "{old:?}");
            let part = part(&plan, "A", "body");
            assert_eq!(part.state, StateDoc::PastItsDate);
            assert!(part.computed.is_none());
            let end = plan.legs[0].ends[0].pressure.as_ref().expect("asked");
            assert!(!end.line.contains(" mm"), "{}", end.line);
        }
    }
}

#[test]
fn on_its_last_day_it_is_not_past_its_date() {
    let last = planned(
        &[(
            "lot = \"INV-BD-1\", expanded = 2025-09-20, store_least = \"5 degC\", store_greatest = \"31 degC\", no_expiry = true",
            "lot = \"INV-BD-1\", expanded = 2023-03-10, expires = 2026-03-10, store_least = \"5 degC\", store_greatest = \"31 degC\"",
        )],
        &[],
    );
    assert_eq!(part(&last, "A", "body").state, StateDoc::Computed);
}

#[test]
fn a_day_of_expansion_that_is_yet_to_come_is_no_fresh_kit() {
    let plan = planned(
        &[(
            "lot = \"INV-BD-1\", expanded = 2025-09-20",
            "lot = \"INV-BD-1\", expanded = 2026-03-11",
        )],
        &[],
    );
    assert_eq!(part(&plan, "A", "body").state, StateDoc::NotKnown);
    assert_eq!(outcomes(&plan, "interface_pressure", "A"), ["not-judged"]);
    assert!(outcomes(&plan, "kit_age", "A").contains(&"fail".to_owned()));
}

#[test]
fn a_stay_that_was_too_warm_is_held_against_the_kit() {
    // 40 degC is allowed; the last stay counts whatever the greatest store temperature states.
    for (stays, expected) in [
        (
            "stay = [{ until = 2026-03-11, greatest = \"39 degC\" }]",
            "pass",
        ),
        (
            "stay = [{ until = 2026-03-11, greatest = \"41 degC\" }]",
            "fail",
        ),
        (
            "store_greatest = \"20 degC\", stay = [{ until = 2026-03-11, greatest = \"41 degC\" }]",
            "fail",
        ),
    ] {
        let plan = planned(
            &[(
                "lot = \"INV-BD-1\", expanded = 2025-09-20, store_least = \"5 degC\", store_greatest = \"31 degC\"",
                &format!(
                    "lot = \"INV-BD-1\", expanded = 2025-09-20, store_least = \"5 degC\", {stays}"
                ),
            )],
            &[],
        );
        // For the body: its months, then its store.
        let found = super::rulings(&plan, "kit_age", "A");
        let of_body = found
            .iter()
            .filter(|ruling| ruling.source.as_deref().unwrap_or("").contains("DS-25"));
        let found: Vec<_> = of_body.map(|ruling| ruling.ruling.name()).collect();
        assert_eq!(found, ["pass", expected], "{stays}");
    }
}

#[test]
fn a_part_of_unknown_age_has_no_range() {
    let state = |lot: &str| {
        let plan = planned(
            &[("lot = \"INV-BD-1\", expanded = 2025-09-20", lot)],
            PUSHED_ON,
        );
        (
            part(&plan, "A", "body").state.words().to_owned(),
            outcomes(&plan, "range_today", "A")[0].clone(),
        )
    };
    let is = |state: &str, ruling: &str| (state.to_owned(), ruling.to_owned());
    assert_eq!(
        state("lot = \"X\", made = 2025-09-20"),
        is("computed", "pass")
    );
    assert_eq!(state("lot = \"X\""), is("not known", "not-judged"));
    assert_eq!(
        state("lot = \"X\", made = 2026-03-11"),
        is("not known", "not-judged")
    );
    // It was made before it was expanded, on whatever day.
    assert_eq!(
        state("lot = \"X\", expanded = 2005-09-20"),
        is("past its date", "fail")
    );
    // No lot at all.
    let job = crate::cases::named("tannery-change").job;
    let rows: Vec<&str> = job
        .lines()
        .filter(|line| line.contains("INV-BD-1"))
        .collect();
    let gone: Vec<(&str, &str)> = rows.iter().map(|row| (*row, "")).collect();
    let plan = planned(&gone, PUSHED_ON);
    assert_eq!(part(&plan, "A", "body").state, StateDoc::NotKnown);
}

#[test]
fn temperatures_of_a_store_the_wrong_way_round_are_refused() {
    for lot in [
        "store_least = \"31 degC\", store_greatest = \"5 degC\"",
        "store_least = \"5 degC\", stay = [{ until = 2026-03-11, greatest = \"-100 degC\" }]",
    ] {
        let job = super::edited(
            crate::cases::named("tannery-change").job,
            &[(
                "store_least = \"5 degC\", store_greatest = \"31 degC\"",
                lot,
            )],
        );
        let said = crate::cases::read(&job, &crate::cases::named("tannery-change").catalogues());
        let said = crate::cases::lines(&said.expect_err("it is refused"));
        assert!(said.contains("at the coldest, and at"), "{said}");
    }
}
