//! A sleeve with unlike ends: each leg is compared with its own end, and its cuts follow from that end alone.
//!
//! The sleeve is invented: 1/0 AWG aluminium at one end, 4/0 AWG copper at the other.

use crate::cases::{accepted, lines, named, plan_of, read};
use jointwright_joint::form::Complaint;
use jointwright_joint::job::Order;
use jointwright_joint::plan::{CutDoc, Plan, RulingDoc};

const SLEEVE: &str = r#"
about = "an invented sleeve"

[[connector]]
id = "unlike"
name = "Invented reducing sleeve"
demonstration = true
instructions = { paper = "invented paper R-1", revision = "1" }
means = "compression"
ends = 2
made_of = "aluminium"
outside_diameter = "26 mm"
end = [
  { name = "small", conductors = [{ size = "1/0 AWG", metal = "aluminium" }], strandings = ["concentric", "compressed"], length = "2 in", depth = "1 15/16 in", die = "invented die 22", presses = 4 },
  { name = "large", conductors = [{ size = "4/0 AWG", metal = "copper" }], strandings = ["concentric", "compressed"], length = "2 1/2 in", depth = "2 7/16 in", die = "invented die 26", presses = 6, outside_diameter = "28 mm" },
]
"#;

/// The same two conductors as lists, which do not tell which metal goes with which size.
const LISTS: &str = r#"
about = "an invented sleeve"

[[connector]]
id = "unlike"
name = "Invented sleeve, 1/0 AWG aluminium to 4/0 AWG copper"
demonstration = true
instructions = { paper = "invented paper R-1", revision = "1" }
means = "compression"
ends = 2
made_of = "aluminium"
outside_diameter = "26 mm"
sizes = ["1/0 AWG", "4/0 AWG"]
metals = ["aluminium", "copper"]
strandings = ["concentric", "compressed"]
length = "4 1/2 in"
stop = "1/8 in"
die = "invented die 22"
presses = 4
"#;

const PRESS_OF_SMALL: &str = r#"{ connector = "unlike", end = "small", size = "1/0 AWG", metal = "aluminium", tool = "invented press P-3", die = "invented die 22", presses = 4, length_before = "4 1/2 in", length_after = ["4 5/8 in"], error = "0.2 mm", by = "Tomas Brandt", date = 2026-03-08 }"#;
const PRESS_OF_LARGE: &str = r#"{ connector = "unlike", end = "large", size = "4/0 AWG", metal = "copper", tool = "invented press P-3", die = "invented die 26", presses = 6, length_before = "4 1/2 in", length_after = ["4 3/4 in"], error = "0.2 mm", by = "Tomas Brandt", date = 2026-03-08 }"#;

/// The change of cables with the sleeve, leg B of this size and metal, and these lines for the legs.
struct Joint<'t> {
    parts: &'t str,
    presses: &'t [&'t str],
    of_b: (&'t str, &'t str),
    ends: [&'t str; 2],
}

impl Joint<'_> {
    fn job(&self) -> String {
        let case = named("tannery-change");
        let before = "trial_press = [";
        let start = case.job.find(before).expect("the trial presses") + before.len();
        let end = start + case.job[start..].find("\n]").expect("their end");
        let mut job = format!(
            "{}\n  {}{}",
            &case.job[..start],
            self.presses.join(",\n  "),
            &case.job[end..]
        );
        job = job.replace(
            "catalogues = [\"demonstration\"]",
            "catalogues = [\"demonstration\", \"parts.toml\"]",
        );
        job = job.replace(
            "connector = \"demo-sleeve-pressed-1-0\"",
            "connector = \"unlike\"",
        );
        let at_b = job.find("id = \"B\"").expect("leg B");
        let (first, second) = job.split_at(at_b);
        let (size, metal) = self.of_b;
        let second = second
            .replacen("size = \"1/0 AWG\"", &format!("size = \"{size}\""), 1)
            .replacen("metal = \"aluminium\"", &format!("metal = \"{metal}\""), 1);
        let with_end = |leg: &str, line: &str| {
            let sleeve = "connector = \"unlike\"\n";
            leg.replacen(
                sleeve,
                &format!("{sleeve}{line}\n"),
                usize::from(!line.is_empty()),
            )
        };
        let at_a = first.find("id = \"A\"").expect("leg A");
        let (head, a) = first.split_at(at_a);
        format!(
            "{head}{}{}",
            with_end(a, self.ends[0]),
            with_end(&second, self.ends[1])
        )
    }

    fn read(&self) -> Result<Order, Vec<Complaint>> {
        let mut catalogues = named("tannery-change").catalogues();
        catalogues.push(("parts.toml".to_owned(), self.parts.to_owned()));
        read(&self.job(), &catalogues)
    }

    #[track_caller]
    fn plan(&self) -> Plan {
        plan_of(&accepted(self.read(), "the joint"), "the joint")
    }

    #[track_caller]
    fn complaints(&self) -> String {
        lines(&self.read().expect_err("the joint is refused"))
    }
}

const FITTING: Joint<'static> = Joint {
    parts: SLEEVE,
    presses: &[PRESS_OF_SMALL, PRESS_OF_LARGE],
    of_b: ("4/0 AWG", "copper"),
    ends: ["", ""],
};

fn of<'p>(plan: &'p Plan, check: &str, leg: &str) -> Vec<&'p RulingDoc> {
    let of = |r: &&RulingDoc| r.check == check && r.leg.as_deref() == Some(leg);
    plan.rulings.iter().filter(of).collect()
}

#[track_caller]
fn worst(plan: &Plan, check: &str, leg: &str) -> &'static str {
    let rulings = of(plan, check, leg);
    assert!(!rulings.is_empty(), "{check} says nothing of leg {leg}");
    ["fail", "not-judged", "pass"]
        .into_iter()
        .find(|word| rulings.iter().any(|r| r.ruling.name() == *word))
        .expect("a ruling")
}

#[track_caller]
fn cut<'p>(plan: &'p Plan, leg: &str, plane: &str) -> &'p CutDoc {
    let leg = plan.legs.iter().find(|l| l.mark == leg).expect("a leg");
    leg.cuts
        .iter()
        .find(|c| c.plane.name() == plane)
        .expect("a cut")
}

#[test]
fn a_size_of_one_end_in_the_metal_of_the_other_fails() {
    let plan = Joint {
        of_b: ("4/0 AWG", "aluminium"),
        ..FITTING
    }
    .plan();
    assert_eq!(worst(&plan, "conductor_in_connector", "A"), "pass");
    assert_eq!(worst(&plan, "conductor_in_connector", "B"), "fail");
    let said = &of(&plan, "conductor_in_connector", "B")[0];
    let why = said.why.as_deref().unwrap_or_default();
    assert!(why.contains("4/0 AWG aluminum"), "{why}");
    // No cut is planned for an unknown end.
    let cut = cut(&plan, "B", "insulation-end");
    assert_eq!(cut.nominal_mm, None);
    assert!(cut.growth_ladder.is_empty());
    // The twin: the copper conductor goes in.
    assert_eq!(
        worst(&FITTING.plan(), "conductor_in_connector", "B"),
        "pass"
    );
}

#[test]
fn a_pressed_sleeve_whose_sizes_and_metals_stand_in_lists_apart_is_never_passed() {
    let lists = |metal: &'static str| Joint {
        parts: LISTS,
        presses: &[],
        of_b: ("4/0 AWG", metal),
        ends: ["", ""],
    };
    for metal in ["aluminium", "copper"] {
        let plan = lists(metal).plan();
        assert_eq!(worst(&plan, "conductor_in_connector", "B"), "not-judged");
    }
    // A size in no list fails, bound or not.
    let other = Joint {
        of_b: ("250 kcmil", "copper"),
        ..lists("copper")
    };
    assert_eq!(worst(&other.plan(), "conductor_in_connector", "B"), "fail");
    // One metal alone binds no wrong pair.
    let one = LISTS.replace("[\"aluminium\", \"copper\"]", "[\"copper\"]");
    let one = Joint {
        parts: &one,
        ..lists("copper")
    };
    assert_eq!(worst(&one.plan(), "conductor_in_connector", "B"), "pass");
}

#[test]
fn each_leg_has_the_die_the_presses_and_the_cut_of_its_own_end() {
    let plan = FITTING.plan();
    let made: Vec<_> = plan
        .legs
        .iter()
        .map(|leg| {
            let connector = leg.connector.as_ref().expect("a connector");
            (
                connector.end.as_deref(),
                connector.die.as_deref(),
                connector.presses,
                connector.outside_diameter_mm,
            )
        })
        .collect();
    assert_eq!(
        made,
        [
            (Some("small"), Some("invented die 22"), Some(4), 26.0),
            (Some("large"), Some("invented die 26"), Some(6), 28.0),
        ]
    );
    // The barrel is 1 15/16 in deep, its mouth moves by 1/8 in, and the body needs a gap of at least 3/16 in to the middle of its window; at the other end 2 7/16 in and 1/4 in.
    let [a, b] = ["A", "B"].map(|leg| cut(&plan, leg, "insulation-end").nominal_mm);
    let [a, b] = [a, b].map(|mm| mm.expect("a place"));
    // Both links are alike except for the barrel's depth and the growth: 1/2 in and 1/8 in.
    assert!((b - a - 25.4 * 0.625).abs() < 1e-6, "{a} {b}");
}

#[test]
fn the_growth_of_one_end_says_nothing_of_the_other() {
    let plan = Joint {
        presses: &[PRESS_OF_SMALL],
        ..FITTING
    }
    .plan();
    assert!(cut(&plan, "A", "insulation-end").nominal_mm.is_some());
    let waits = cut(&plan, "B", "insulation-end");
    assert_eq!(waits.nominal_mm, None);
    let why = waits.why.as_deref().unwrap_or_default();
    assert!(why.contains("end large"), "{why}");
    // The whole growth moves the one mouth that was pressed.
    let rungs = &waits.growth_ladder;
    let step = rungs[1].nominal_mm - rungs[0].nominal_mm;
    assert!((step - rungs[1].grew_mm).abs() < 1e-9, "{step}");
    // The whole sleeve grows at both ends, so its length also waits.
    assert_eq!(worst(&plan, "electrode_cover", "A"), "not-judged");
}

#[test]
fn the_electrode_lies_over_the_whole_sleeve() {
    let plan = FITTING.plan();
    for leg in ["A", "B"] {
        let of_leg = of(&plan, "electrode_cover", leg);
        let length = of_leg.iter().find(|r| r.value.is_some()).expect("a length");
        let value = serde_json::to_value(&length.value).expect("a value");
        // 4 1/2 in, and 1/8 in and 1/4 in of growth, each to 0.4 mm.
        let (least, most) = (value["min"].as_f64(), value["max"].as_f64());
        let as_made = 25.4 * (4.5 + 0.375);
        assert!((least.expect("a least") - (as_made - 0.8)).abs() < 1e-6);
        assert!((most.expect("a greatest") - (as_made + 0.8)).abs() < 1e-6);
    }
}

#[test]
fn two_legs_do_not_go_into_one_end() {
    let plan = Joint {
        of_b: ("1/0 AWG", "aluminium"),
        ..FITTING
    }
    .plan();
    for leg in ["A", "B"] {
        assert_eq!(worst(&plan, "conductor_in_connector", leg), "fail");
    }
    let all = of(&plan, "conductor_in_connector", "A");
    let said: Vec<&str> = all.iter().filter_map(|r| r.why.as_deref()).collect();
    assert!(
        said.iter().any(|why| why.contains("legs A and B both")),
        "{said:?}"
    );
}

#[test]
fn a_leg_that_both_ends_take_waits_until_the_job_says_which() {
    let both = SLEEVE.replace(
        "conductors = [{ size = \"4/0 AWG\", metal = \"copper\" }]",
        "conductors = [{ size = \"4/0 AWG\", metal = \"copper\" }, { size = \"1/0 AWG\", metal = \"aluminium\" }]",
    );
    let joint = |ends| Joint {
        parts: &both,
        ends,
        ..FITTING
    };
    let plan = joint(["", ""]).plan();
    assert_eq!(worst(&plan, "conductor_in_connector", "A"), "not-judged");
    assert_eq!(worst(&plan, "conductor_in_connector", "B"), "pass");
    let hint = of(&plan, "conductor_in_connector", "A")[0].hint.clone();
    assert!(hint.unwrap_or_default().contains("connector_end"));
    assert_eq!(cut(&plan, "A", "insulation-end").nominal_mm, None);
    let plan = joint(["connector_end = \"small\"", ""]).plan();
    assert_eq!(worst(&plan, "conductor_in_connector", "A"), "pass");
    assert!(cut(&plan, "A", "insulation-end").nominal_mm.is_some());
    // If both legs name it, two legs have one end.
    let plan = joint(["connector_end = \"large\"", "connector_end = \"large\""]).plan();
    assert_eq!(worst(&plan, "conductor_in_connector", "A"), "fail");
    // An end named for a leg whose conductor it does not take fails there.
    let plan = joint(["", "connector_end = \"small\""]).plan();
    assert_eq!(worst(&plan, "conductor_in_connector", "B"), "fail");
}

#[test]
fn an_end_that_is_not_there_or_not_said_is_complained_of() {
    let check = |joint: Joint<'_>, words: &str| {
        let said = joint.complaints();
        assert!(said.contains(words), "{said}");
    };
    check(
        Joint {
            ends: ["connector_end = \"middle\"", ""],
            ..FITTING
        },
        "the end `middle`, which `unlike` does not have",
    );
    let unsaid = PRESS_OF_SMALL.replace("end = \"small\", ", "");
    check(
        Joint {
            presses: &[&unsaid],
            ..FITTING
        },
        "does not say which was pressed",
    );
    check(
        Joint {
            parts: &LISTS.replace("\"4 1/2 in\"", "\"4 in\""),
            presses: &[],
            ends: ["connector_end = \"small\"", ""],
            ..FITTING
        },
        "do not differ",
    );
    for (from, to, words) in [
        (
            "depth = \"2 7/16 in\"",
            "depth = \"2 3/4 in\"",
            "run into one another",
        ),
        ("name = \"large\"", "name = \"small\"", "one name"),
        (
            "outside_diameter = \"26 mm\"",
            "outside_diameter = \"26 mm\"\nlength = \"4 in\"",
            "`length` beside them",
        ),
        ("ends = 2", "ends = 1", "`ends = 1`"),
        (
            ", strandings = [\"concentric\", \"compressed\"], length = \"2 in\"",
            ", length = \"2 in\"",
            "no `strandings`",
        ),
        (
            "conductors = [{ size = \"1/0 AWG\"",
            "sizes = [\"1/0 AWG\"], conductors = [{ size = \"1/0 AWG\"",
            "both `conductors` and `sizes`",
        ),
        ("size = \"4/0 AWG\"", "size = \"4/0\"", "no unit"),
    ] {
        assert!(SLEEVE.contains(from), "{from}");
        let parts = SLEEVE.replacen(from, to, 1);
        check(
            Joint {
                parts: &parts,
                ..FITTING
            },
            words,
        );
    }
    for field in ["sizes", "metals", "strandings", "length", "stop"] {
        let without: Vec<&str> = LISTS
            .lines()
            .filter(|line| !line.starts_with(field))
            .collect();
        check(
            Joint {
                parts: &without.join("\n"),
                presses: &[],
                ..FITTING
            },
            &format!("has no `{field}`"),
        );
    }
}
