//! A row that measures toward the conductor end is the same row from its other plane: same distance, same shorter, same longer.

use crate::cases::{accepted, named, plan_of, read};
use jointwright_joint::plan::CutDoc;

const CASE: &str = "dock-straight-pressed";
const ROW: &str = "{ from = \"metallic-shield-edge\", to = \"jacket-edge\", distance = \"2 in\", minus = \"1/4 in\", plus = \"1/4 in\", place = \"step 1\" }";

fn cuts(row: &str) -> Vec<CutDoc> {
    let case = named(CASE);
    let mut parts = case.catalogues();
    assert!(parts[0].1.contains(ROW), "the row stands in the catalogue");
    parts[0].1 = parts[0].1.replacen(ROW, row, 1);
    let plan = plan_of(&accepted(read(case.job, &parts), row), row);
    plan.legs.into_iter().flat_map(|leg| leg.cuts).collect()
}

fn row(from: &str, to: &str, minus: &str, plus: &str, toward_end: bool) -> String {
    format!(
        "{{ from = \"{from}\", to = \"{to}\", distance = \"2 in\", minus = \"{minus}\", plus = \"{plus}\", toward_end = {toward_end}, place = \"step 1\" }}"
    )
}

#[test]
fn shorter_and_longer_do_not_change_places_with_the_planes() {
    let (shield, jacket) = ("metallic-shield-edge", "jacket-edge");
    let outward = cuts(&row(shield, jacket, "0 in", "1 in", false));
    assert_eq!(outward, cuts(&row(jacket, shield, "0 in", "1 in", true)));
    // The twin: with the two exchanged it is another row.
    assert_ne!(outward, cuts(&row(jacket, shield, "1 in", "0 in", true)));
}

#[test]
fn any_two_cuts_inside_their_windows_keep_the_row() {
    let cuts = cuts(&row(
        "jacket-edge",
        "metallic-shield-edge",
        "0 in",
        "1 in",
        true,
    ));
    let at = |plane: &str| {
        let cut = cuts
            .iter()
            .find(|c| c.plane.name() == plane)
            .expect("a cut");
        (cut.min_mm.expect("a window"), cut.max_mm.expect("a window"))
    };
    let (shield, jacket) = (at("metallic-shield-edge"), at("jacket-edge"));
    assert!(jacket.0 - shield.1 >= 50.8 - 1e-9, "{shield:?} {jacket:?}");
    assert!(jacket.1 - shield.0 <= 76.2 + 1e-9, "{shield:?} {jacket:?}");
}
