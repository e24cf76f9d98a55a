//! Resistance along the cable, each kind of shield by hand.

use super::{LARKSPUR, QUARRY, TAPE_WITH_WIRES, leg, near, order};
use crate::cases::{sentence, sentences};
use jointwright_joint::job::Order;
use jointwright_joint::shielding::{along, along_by_papers, mean_m, measured_said};

/// Papers that fix the diameter over the screen of the one leg with this insulation.
fn papers(insulation: &str, least: &str, greatest: &str) -> (String, String) {
    let line = format!("insulation = \"{insulation}\"");
    let papers = format!(
        "{line}\npapers = [{{ over = \"insulation-screen\", least = \"{least}\", greatest = \"{greatest}\" }}]"
    );
    (line, papers)
}

#[test]
fn wires_and_straps_without_a_lay_are_taken_as_straight_and_it_is_said() {
    let order = order(LARKSPUR, &[]);
    // 1.7241e-8 over eleven wires of 64.1 mil, 22.902 mm2, and over seven straps of 175 by 25 mil, 19.758 mm2.
    for (id, ohm_per_m) in [("B", 7.528_290_9e-4), ("A", 8.726_074_6e-4)] {
        let found = along(&order.job, leg(&order, id)).unwrap();
        near(found.at_20_ohm_per_m.0, ohm_per_m, 1e-7);
        assert_eq!(found.at_20_ohm_per_m.0, found.at_20_ohm_per_m.1);
        let says = sentence(&found.says);
        assert!(says.contains("straight"), "{says}");
    }
}

#[test]
fn a_lay_makes_wires_longer_by_its_helix() {
    let (line, papers) = papers("tr-xlpe", "27.0 mm", "28.0 mm");
    let laid = (
        "diameter = \"64.1 mil\"",
        "diameter = \"64.1 mil\", lay = \"10 in\"",
    );
    let check = |order: &Order, ohm_per_m: [f64; 2], mean_mm: [f64; 2]| {
        let found = along(&order.job, leg(order, "B")).unwrap();
        near(found.at_20_ohm_per_m.0, ohm_per_m[0], 1e-7);
        near(found.at_20_ohm_per_m.1, ohm_per_m[1], 1e-7);
        let (least, greatest) = mean_m(&order.job, leg(order, "B")).unwrap();
        near(least, mean_mm[0] * 1e-3, 1e-9);
        near(greatest, mean_mm[1] * 1e-3, 1e-9);
    };
    // Read over the screen of all three phases: 27.45 to 27.85 mm, each give or take 0.05; wires of 1.62814 mm.
    let read = order(LARKSPUR, &[(&line, &papers), laid]);
    check(
        &read,
        [7.998_805_7e-4, 8.014_657_7e-4],
        [29.028_14, 29.528_14],
    );
    assert!(
        sentence(&measured_said(&read.job, leg(&read, "B"))).contains("27.40 to 27.90 mm as read")
    );
    // Without one phase: by the papers.
    let phase = "  { leg = \"B\", phase = 3, over = \"insulation-screen\", instrument = \"calliper\", error = \"0.05 mm\", temperature = \"12 degC\", values = [\"27.55 mm\", \"27.70 mm\", \"27.85 mm\", \"27.67 mm\"] },\n";
    let less = order(LARKSPUR, &[(&line, &papers), laid, (phase, "")]);
    check(
        &less,
        [7.986_296_9e-4, 8.017_856_7e-4],
        [28.628_14, 29.628_14],
    );
    assert!(sentence(&measured_said(&less.job, leg(&less, "B"))).contains("papers"));
}

#[test]
fn a_lapped_tape_lies_between_a_tube_and_its_helix() {
    let (line, papers) = papers("xlpe", "29.0 mm", "30.0 mm");
    let order = order(QUARRY, &[(&line, &papers)]);
    let found = along_by_papers(leg(&order, "C")).unwrap();
    // A tube of 0.127 mm on 30.127 mm, lapped by a quarter; the tape alone, 3.46 times as long as the cable.
    near(found.at_20_ohm_per_m.0, 1.075_757_13e-3, 1e-8);
    near(found.at_20_ohm_per_m.1, 12.328_086_8e-3, 1e-8);
    // Without the helix the tape alone would have 3.563e-3 ohm/m.
    assert!(found.at_20_ohm_per_m.1 > 3.4 * 3.563_147e-3);
    let says = sentence(&found.says);
    assert!(says.contains("3.46 times"), "{says}");
}

#[test]
fn a_corrugated_tape_lies_between_its_effective_area_and_a_smooth_one() {
    let (line, papers) = papers("xlpe", "29.0 mm", "30.0 mm");
    let order = order(LARKSPUR, &[(&line, &papers)]);
    let found = along_by_papers(leg(&order, "C")).unwrap();
    near(found.at_20_ohm_per_m.0, 7.873_551_6e-4, 1e-7);
    near(found.at_20_ohm_per_m.1, 9.313_027_3e-4, 1e-7);
}

#[test]
fn a_warm_shield_has_more_and_aluminium_has_its_own_numbers() {
    let copper = order(LARKSPUR, &[]);
    let found = along(&copper.job, leg(&copper, "B")).unwrap();
    // 1 + 0.00393 · 55.
    near(
        found.at_ohm_per_m(75.0).0 / found.at_20_ohm_per_m.0,
        1.216_15,
        1e-9,
    );
    let other = order(
        LARKSPUR,
        &[(
            "metal = \"copper\", fault_greatest",
            "metal = \"aluminium\", fault_greatest",
        )],
    );
    let aluminium = along(&other.job, leg(&other, "B")).unwrap();
    near(
        aluminium.at_20_ohm_per_m.0 / found.at_20_ohm_per_m.0,
        2.8264 / 1.7241,
        1e-9,
    );
    near(
        aluminium.at_ohm_per_m(75.0).0 / aluminium.at_20_ohm_per_m.0,
        1.221_65,
        1e-9,
    );
}

#[test]
fn what_is_not_stated_is_asked_for() {
    for (example, line, id, word) in [
        (
            LARKSPUR,
            " metal = \"copper\", fault_greatest",
            "B",
            "metal",
        ),
        (QUARRY, "width = \"1 1/2 in\", ", "C", "wide"),
    ] {
        let instead = if line.ends_with("greatest") {
            " fault_greatest"
        } else {
            ""
        };
        let order = order(example, &[(line, instead)]);
        let open = along(&order.job, leg(&order, id)).unwrap_err();
        assert!(!open.questions.is_empty(), "{open:?}");
        let said = format!("{} {}", sentence(&open.why), sentences(&open.questions));
        assert!(said.contains(word), "{said}");
    }
}

/// Eleven wires of 64.1 mil, 22.9018 mm2, and a tape of 0.127 by 38.1 mm, 4.8387 mm2, lapped by a quarter, at 27.90 + 0.127 + 2 · 1.62814 mm: the tape is 3.5818 times as long as the cable, and as a tube it has 16.6420 mm2.
#[test]
fn a_tape_with_wires_carries_in_parallel_from_a_tube_to_the_tape_alone() {
    let order = order(LARKSPUR, &TAPE_WITH_WIRES);
    let found = along(&order.job, leg(&order, "B")).unwrap();
    near(found.at_20_ohm_per_m.0, 4.360_000_0e-4, 1e-6);
    near(found.at_20_ohm_per_m.1, 7.108_947_5e-4, 1e-6);
    let says = sentence(&found.says);
    assert!(says.contains("both in parallel"), "{says}");
    let says = sentence(&found.says);
    assert!(says.contains("3.58 times"), "{says}");
    // Less than the wires alone, and than the tape alone.
    assert!(found.at_20_ohm_per_m.1 < 7.528_290_9e-4);
}

#[test]
fn a_lay_makes_the_wires_beside_a_tape_longer() {
    let [kind, part] = TAPE_WITH_WIRES;
    let laid = kind.1.replace("count = 11", "count = 11, lay = \"10 in\"");
    let order = order(LARKSPUR, &[(kind.0, &laid), part]);
    let found = along(&order.job, leg(&order, "B")).unwrap();
    near(found.at_20_ohm_per_m.0, 4.515_046_9e-4, 1e-6);
    near(found.at_20_ohm_per_m.1, 7.548_294_5e-4, 1e-6);
}

#[test]
fn a_tape_with_wires_whose_tape_has_no_width_is_asked_about() {
    let [kind, part] = TAPE_WITH_WIRES;
    let bare = kind.1.replace("width = \"1 1/2 in\", ", "");
    let order = order(LARKSPUR, &[(kind.0, &bare), part]);
    let unknown = along(&order.job, leg(&order, "B")).unwrap_err();
    let why = sentence(&unknown.why);
    assert!(why.contains("width"), "{why}");
}
