//! Conductor diameters: the data against the printed rows, and both against geometry.

use super::{Row, conductor, inches, near, rows};
use jointwright_joint::cable::{Metal, Size, Stranding, awg_wire_diameter};

const CSV: &str = include_str!("../../../../tests/published/conductor_diameter/values.csv");

fn nominal_in(size: Size, stranding: Stranding) -> f64 {
    let band = conductor(size, Metal::Copper, stranding).diameter();
    inches(band.unwrap_or_else(|unknown| panic!("{unknown}")).nominal)
}

fn holds(row: &Row, computed_in: f64) -> bool {
    near(
        computed_in,
        row.number("expected_in"),
        row.number("rel_tol"),
    )
}

#[track_caller]
fn check_stranding(check: &str, stranding: Stranding, twin: Stranding) {
    for row in rows(CSV, check) {
        assert!(
            holds(&row, nominal_in(row.size(), stranding)),
            "{}",
            row.id()
        );
        assert!(!holds(&row, nominal_in(row.size(), twin)), "{}", row.id());
    }
}

#[test]
fn the_data_carry_the_printed_diameters() {
    // Both sides were typed from the same list, so this test only compares the data with it; geometry is below.
    check_stranding("compressed", Stranding::Compressed, Stranding::Concentric);
    check_stranding("compact", Stranding::Compact, Stranding::Compressed);
    for row in rows(CSV, "concentric") {
        assert!(
            holds(&row, nominal_in(row.size(), Stranding::Concentric)),
            "{}",
            row.id()
        );
        assert!(
            !holds(&row, 0.97 * nominal_in(row.size(), Stranding::Concentric)),
            "{}",
            row.id()
        );
    }
}

/// Diameter of `n` equal round strands in full layers: (2·layers + 1)·√(A/n).
fn of_strands_in(size: Size, n: f64) -> f64 {
    // 7, 19, 37, 61: n = 1 + 3·k·(k + 1).
    let layers = (((n - 1.0) / 3.0 + 0.25).sqrt() - 0.5).round();
    (2.0 * layers + 1.0) * (size.kcmil() * 1000.0 / n).sqrt() / 1000.0
}

#[test]
fn concentric_diameters_are_those_of_round_strands_in_layers() {
    for row in rows(CSV, "concentric") {
        let computed = of_strands_in(row.size(), row.number("strands"));
        assert!(holds(&row, computed), "{}: {computed}", row.id());
        // The twin: a tenth more metal, which is less than the next size.
        assert!(!holds(&row, computed * 1.1f64.sqrt()), "{}", row.id());
    }
}

#[test]
fn compressed_is_three_parts_in_a_hundred_under_concentric() {
    for row in rows(CSV, "compressed") {
        let concentric = nominal_in(row.size(), Stranding::Concentric);
        assert!(holds(&row, 0.97 * concentric), "{}", row.id());
        assert!(
            !holds(&row, 0.96 * concentric) && !holds(&row, 0.98 * concentric),
            "{}",
            row.id()
        );
    }
}

#[test]
fn compact_is_between_88_and_92_parts_in_a_hundred_of_concentric() {
    // No rule: only a typing error in a row would show.
    let share =
        |row: &Row| row.number("expected_in") / nominal_in(row.size(), Stranding::Concentric);
    for row in rows(CSV, "compact") {
        assert!(
            (0.895..=0.925).contains(&share(&row)),
            "{}: {}",
            row.id(),
            share(&row)
        );
    }
    for row in rows(CSV, "compressed") {
        assert!(!(0.895..=0.925).contains(&share(&row)), "{}", row.id());
    }
}

#[test]
fn a_gauge_number_is_the_diameter_of_its_wire() {
    for row in rows(CSV, "wire") {
        let Size::Awg(n) = row.size() else {
            panic!("{}", row.id())
        };
        assert!(holds(&row, inches(awg_wire_diameter(n))), "{}", row.id());
        assert!(
            !holds(&row, inches(awg_wire_diameter(n + 1))),
            "{}",
            row.id()
        );
    }
}
