//! Tests that the worked catalogue of the how-to is read, has no defects, and is planned to the last cut.

use super::{accepted, plan_of, read};
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::Plan;
use toml::{Table, Value};

const PAGE: &str = include_str!("../../../../docs/howto/write-a-catalogue.md");
const STARTER: &str = include_str!("../../../../data/starter.toml");

/// Blocks of TOML under the heading of the worked catalogue: the catalogue, then the lines of the job.
fn blocks() -> Vec<&'static str> {
    let start = PAGE
        .find("## One short catalogue, worked through")
        .expect("the heading");
    let blocks = PAGE[start..].split("```toml\n").skip(1);
    blocks
        .map(|block| block.split("```").next().expect("its end"))
        .take(2)
        .collect()
}

/// The starter job with the parts that the page names.
fn planned(catalogue: &str) -> Plan {
    let named: Table = blocks()[1].parse().expect("TOML");
    let mut job: Table = STARTER.parse().expect("TOML");
    job.insert("catalogues".to_owned(), named["catalogues"].clone());
    job.remove("trial_press");
    let legs = job["leg"].as_array_mut().expect("legs");
    for leg in legs.iter_mut().filter_map(Value::as_table_mut) {
        leg.remove("consumables");
        for part in ["body", "connector", "shield_part", "seal"] {
            leg.insert(part.to_owned(), named[part].clone());
        }
    }
    let job = crate::laws::toml_text::text(&job, None);
    let files = [("my-parts.toml".to_owned(), catalogue.to_owned())];
    let order = accepted(read(&job, &files), "the worked catalogue");
    plan_of(&order, "the worked catalogue")
}

fn cut(plan: &Plan, plane: &str) -> Option<f64> {
    let cut = plan.legs[0]
        .cuts
        .iter()
        .find(|cut| cut.plane.name() == plane);
    cut.and_then(|cut| cut.nominal_mm)
}

#[test]
fn the_worked_catalogue_plans_every_cut_where_its_numbers_say() {
    let plan = planned(blocks()[0]);
    let edge = 25.4 * (5.0 + 1.0 / 16.0);
    let shield = edge + 25.4 * 4.25;
    let expected = [
        ("insulation-screen-edge", edge),
        ("metallic-shield-edge", shield),
        ("jacket-edge", shield + 25.4 * 2.0),
    ];
    for (plane, mm) in expected {
        let found = cut(&plan, plane).expect("a place");
        assert!((found - mm).abs() < 1e-6, "{plane}: {found}, expected {mm}");
    }
    let end = cut(&plan, "insulation-end").expect("a place");
    assert!((end - 57.175).abs() < 1.0, "{end}");
    for cut in &plan.legs[0].cuts {
        assert!(
            cut.min_mm.is_some() && cut.max_mm.is_some(),
            "{}: no window",
            cut.plane.name()
        );
    }
    let fails: Vec<_> = plan
        .rulings
        .iter()
        .filter(|r| r.ruling == Outcome::Fail)
        .collect();
    assert!(fails.is_empty(), "{fails:#?}");
}

#[test]
fn without_one_of_its_links_a_cut_has_no_place() {
    let line = "{ from = \"metallic-shield-edge\", to = \"jacket-edge\"";
    let catalogue = blocks()[0];
    let start = catalogue.find(line).expect("the link");
    let end = start + catalogue[start..].find('\n').expect("its end");
    let without = format!("{}{}", &catalogue[..start], &catalogue[end..]);
    let plan = planned(&without);
    assert_eq!(cut(&plan, "jacket-edge"), None);
    let ask = plan
        .asks
        .iter()
        .find(|ask| ask.key() == "link")
        .expect("asked for");
    assert!(ask.question.contains("jacket edge"), "{}", ask.question);
}

#[test]
fn the_page_names_every_plane_once_in_its_table() {
    for plane in jointwright_joint::plane::Plane::ALL.iter().copied() {
        let row = format!("| `{}` |", plane.name());
        assert_eq!(PAGE.matches(&row).count(), 1, "{row}");
    }
}
