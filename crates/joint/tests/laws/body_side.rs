//! A body with unlike sides: each leg is compared with its own side, once the job states the side by which it comes in.
//!
//! The body is invented: the straight body for 15 kV, once for a thin cable and once for a thick one.

use crate::cases::{accepted, lines, named, plan_of, read};
use jointwright_joint::catalogue::DEMONSTRATION_TEXT;
use jointwright_joint::catalogue::PartKind;
use jointwright_joint::form::Complaint;
use jointwright_joint::job::Order;
use jointwright_joint::plan::Plan;

const SIDES: &str = r#"
about = "an invented body"

[[body]]
id = "reducing"
name = "Invented reducing body"
demonstration = true
instructions = { paper = "invented paper RB-1", revision = "1" }
kinds = ["straight"]
system_greatest = "28 kV"
earthings = ["solid", "impedance"]
length = "460 mm"
connector_length_greatest = "130 mm"
connector_diameter_least = "12 mm"
connector_diameter_greatest = "45 mm"
bondings = ["solid", "open"]
link = [
  { from = "connector-centre", to = "body-centre", distance = "0 mm", minus = "3 mm", plus = "3 mm" },
  { from = "connector-mouth", to = "insulation-end", distance = "1/8 in", minus = "0 in", plus = "1/8 in" },
]
side = [
  { name = "thick", fits = [
    { at = "bore", over = "insulation", least = "21 mm", greatest = "34 mm" },
    { at = "mouth", over = "insulation-screen", least = "22 mm", greatest = "39 mm" },
  ], link = [
    { from = "body-centre", to = "body-end", distance = "240 mm" },
    { from = "conductor-end", to = "insulation-screen-edge", distance = "6 in", minus = "1/8 in", plus = "1/8 in" },
  ] },
  { name = "thin", fits = [
    { at = "bore", over = "insulation", least = "17.5 mm", greatest = "23 mm" },
    { at = "mouth", over = "insulation-screen", least = "18 mm", greatest = "26 mm" },
  ], link = [
    { from = "body-centre", to = "body-end", distance = "220 mm" },
    { from = "conductor-end", to = "insulation-screen-edge", distance = "5 in", minus = "1/8 in", plus = "1/8 in" },
  ] },
]
"#;

fn read_with(parts: &str, sides: [&str; 2]) -> Result<Order, Vec<Complaint>> {
    let case = named("tannery-change");
    let job = case.job.replace(
        "catalogues = [\"demonstration\"]",
        "catalogues = [\"demonstration\", \"parts.toml\"]",
    );
    let mut job = job.replace("body = \"demo-straight-25\"", "body = \"reducing\"#");
    for side in sides {
        let line = match side {
            "" => "body = \"reducing\"".to_owned(),
            side => format!("body = \"reducing\"\nbody_side = \"{side}\""),
        };
        job = job.replacen("body = \"reducing\"#", &line, 1);
    }
    let catalogues = [
        ("demonstration".to_owned(), DEMONSTRATION_TEXT.to_owned()),
        ("parts.toml".to_owned(), parts.to_owned()),
    ];
    read(&job, &catalogues)
}

#[track_caller]
fn planned(sides: [&str; 2]) -> Plan {
    plan_of(&accepted(read_with(SIDES, sides), "the joint"), "the joint")
}

fn worst(plan: &Plan, check: &str, leg: Option<&str>) -> &'static str {
    let of: Vec<&str> = plan
        .rulings
        .iter()
        .filter(|r| r.check == check && (leg.is_none() || r.leg.as_deref() == leg))
        .map(|r| r.ruling.name())
        .collect();
    ["fail", "not-judged", "pass"]
        .into_iter()
        .find(|word| of.contains(word))
        .unwrap_or("nothing said")
}

fn place(plan: &Plan, leg: &str, plane: &str) -> Option<f64> {
    let leg = plan.legs.iter().find(|l| l.mark == leg)?;
    leg.cuts
        .iter()
        .find(|c| c.plane.name() == plane)?
        .nominal_mm
}

#[test]
fn each_leg_is_held_against_its_own_side() {
    // Leg A measures 23.3 to 23.6 mm over the insulation, leg B 18.8 to 19.1 mm.
    let plan = planned(["thick", "thin"]);
    for leg in ["A", "B"] {
        assert_eq!(worst(&plan, "insulation_in_body", Some(leg)), "pass");
        assert_eq!(worst(&plan, "mouth_fit", Some(leg)), "pass");
    }
    let apart = |plane| place(&plan, "A", plane).zip(place(&plan, "B", plane));
    let (a, b) = apart("insulation-screen-edge").expect("both edges");
    assert!((a - b - 25.4).abs() < 1e-9);
    let (a, b) = apart("body-end").expect("both ends");
    assert!((a - b - 20.0).abs() < 1e-9);
    let sides: Vec<Option<&str>> = (plan.legs.iter())
        .filter_map(|leg| leg.parts.iter().find(|part| part.kind == PartKind::Body))
        .map(|part| part.side.as_deref())
        .collect();
    assert_eq!(sides, [Some("thick"), Some("thin")]);
    // The twin: the other way round neither fits.
    let plan = planned(["thin", "thick"]);
    for leg in ["A", "B"] {
        assert_eq!(worst(&plan, "insulation_in_body", Some(leg)), "fail");
    }
}

#[test]
fn a_leg_whose_side_is_not_said_is_not_judged_and_not_cut() {
    let plan = planned(["", "thin"]);
    assert_eq!(worst(&plan, "insulation_in_body", Some("A")), "not-judged");
    assert_eq!(place(&plan, "A", "insulation-screen-edge"), None);
    let hints = plan.rulings.iter().filter_map(|r| r.hint.as_deref());
    assert!(hints.into_iter().any(|hint| hint.contains("body_side")));
}

#[test]
fn two_legs_do_not_come_in_by_one_side() {
    assert_eq!(
        worst(&planned(["thick", "thin"]), "common_parts", None),
        "pass"
    );
    assert_eq!(
        worst(&planned(["thin", "thin"]), "common_parts", None),
        "fail"
    );
}

#[test]
fn what_a_body_with_sides_cannot_be_is_complained_of() {
    let check = |from: &str, to: &str, words: &str| {
        assert!(SIDES.contains(from), "{from}");
        let parts = SIDES.replacen(from, to, 1);
        let said = lines(&read_with(&parts, ["thick", "thin"]).expect_err("it is refused"));
        assert!(said.contains(words), "{said}");
    };
    check(
        "name = \"thin\"",
        "name = \"thick\"",
        "Both sides of `reducing` have one name",
    );
    check(
        "kinds = [\"straight\"]",
        "kinds = [\"branch\"]",
        "sides are for a straight body",
    );
    check(
        "name = \"thin\"",
        "name = \"slim\"",
        "`reducing` does not have it",
    );
    let said = lines(&read_with(SIDES, ["middle", ""]).expect_err("it is refused"));
    assert!(
        said.contains("Its sides are \"thick\" or \"thin\""),
        "{said}"
    );
    let without = DEMONSTRATION_TEXT.replacen("\nfits = [", "\nnotfits = [", 1);
    assert_ne!(without, DEMONSTRATION_TEXT);
}
