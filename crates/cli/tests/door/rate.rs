//! `rate`: pages, exit codes, pictures, and its document against its schema.

use super::{EXAMPLES, Vault, example};
use crate::structure::differences;
use serde_json::Value;

fn rate(vault: &Vault, slug: &str, more: &[&str]) -> super::Ran {
    let job = example(slug);
    let mut arguments = vec!["rate", job.to_str().expect("a name")];
    arguments.extend(more);
    vault.run(&arguments)
}

#[test]
fn a_rating_of_every_example_is_80_columns_wide_and_says_that_it_is_invented() {
    for slug in EXAMPLES {
        let ran = rate(&Vault::new(), slug, &[]);
        let wide = ran.out.lines().find(|line| line.chars().count() > 80);
        assert_eq!(wide, None, "{slug}");
        assert_eq!(ran.out.matches("INVENTED").count(), 2, "{slug}");
        assert!(ran.out.contains("decides nothing"), "{slug}");
    }
}

/// Words of a page without its line breaks.
fn flat(page: &str) -> String {
    page.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The straight joint at twice its load, and an emergency above that.
fn heavy(job: &str) -> String {
    let mut heavy = job.to_owned();
    for (current, twice) in [
        ("\nload = \"320 A\"", "\nload = \"640 A\""),
        ("\nemergency = \"420 A\"", "\nemergency = \"840 A\""),
    ] {
        assert!(heavy.contains(current), "{current}");
        heavy = heavy.replace(current, twice);
    }
    heavy
}

#[test]
fn issue_16_a_joint_has_one_verdict_at_every_door() {
    let vault = Vault::new();
    let dock = std::fs::read_to_string(example("dock-straight-pressed")).expect("the job");
    let heavy = heavy(&dock);
    vault.write("heavy.toml", heavy);
    let jobs = EXAMPLES.iter().map(|slug| example(slug));
    let jobs = jobs.chain([vault.path("heavy.toml")]);
    let mut n_fails = 0;
    for job in jobs {
        let job = job.to_str().expect("a name");
        let ran = |door: &str| vault.run(&[door, job]);
        let plan = vault.run(&["plan", job, "--json"]);
        let document: Value = serde_json::from_str(&plan.out).expect("a document");
        let mark = format!(
            "PLAN {}",
            document["plan_mark"]["short"].as_str().expect("a mark")
        );
        for (door, ran) in [("rate", ran("rate")), ("field", ran("field"))] {
            assert_eq!(ran.code, plan.code, "{door} {job}");
            let head = flat(ran.out.split("LEG ").next().expect("a head"));
            assert!(head.contains(&mark), "{door} {job}: {head}");
            let is_failing = document["outcome"] == "fail";
            assert_eq!(
                head.contains("THIS JOINT FAILS ITS PLAN"),
                is_failing,
                "{door} {job}"
            );
            let fails = document["rulings"].as_array().expect("rulings").iter();
            for ruling in fails.filter(|ruling| ruling["ruling"] == "fail") {
                n_fails += 1;
                let why = flat(ruling["why"].as_str().expect("a reason"));
                assert!(
                    head.contains(why.trim_end_matches('.')),
                    "{door} {job}: {why}"
                );
            }
        }
    }
    assert!(n_fails >= 4, "{n_fails}");
}

#[test]
fn issue_16_a_limit_that_the_surroundings_pass_comes_first() {
    let vault = Vault::new();
    let job = std::fs::read_to_string(example("dock-straight-pressed")).expect("the job");
    let hot = job.replace(
        "temperature = \"25 degC\", outside_k",
        "temperature = \"140 degC\", outside_k",
    );
    assert_ne!(hot, job);
    vault.write("hot.toml", hot);
    let ran = vault.run(&["rate", "hot.toml"]);
    let out = flat(&ran.out);
    let limits = out.split("WHICH LIMIT COMES FIRST").nth(1).expect("limits");
    let first = limits.find("passed without any load").expect("a limit");
    assert!(
        limits
            .find("times the job's load")
            .is_none_or(|at| first < at),
        "{limits}"
    );
}

#[test]
fn a_joint_that_is_too_hot_at_its_load_is_told_of_no_emergency_beyond_it() {
    let vault = Vault::new();
    let job = std::fs::read_to_string(example("dock-straight-pressed")).expect("the job");
    vault.write("heavy.toml", heavy(&job));
    let ran = vault.run(&["rate", "heavy.toml"]);
    assert_eq!(ran.code, Some(1));
    assert!(!ran.out.contains("EMERGENCIES"));
}

#[test]
fn pictures_are_written_where_there_is_something_to_draw() {
    let vault = Vault::new();
    rate(&vault, "larkspur-three-way", &["--pictures", "drawn"]);
    for name in ["temperature-along-axis.svg", "emergency-against-time.svg"] {
        let svg = vault.read(&format!("drawn/{name}"));
        assert!(
            svg.starts_with("<svg") && svg.contains("INVENTED"),
            "{name}"
        );
        assert!(
            svg.contains(">PLAN ") && svg.contains("issue 2, replaces 1"),
            "{name}"
        );
        // One line for each leg.
        assert_eq!(svg.matches("data-part=\"curve\"").count(), 2 * 3, "{name}");
    }
    let ran = rate(&vault, "dock-straight-not-pressed", &["--pictures", "none"]);
    assert!(ran.out.contains("No picture"));
    assert!(!vault.path("none").exists());
}

#[test]
fn the_document_is_as_its_schema_says() {
    let vault = Vault::new();
    let schema = vault.run(&["schema", "rating"]);
    let schema: Value = serde_json::from_str(&schema.out).expect("a schema");
    for slug in EXAMPLES {
        let ran = rate(&vault, slug, &["--json"]);
        let document: Value = serde_json::from_str(&ran.out).expect("a document");
        assert_eq!(
            differences(&schema, &document),
            Vec::<String>::new(),
            "{slug}"
        );
    }
}

#[test]
fn a_run_of_cable_is_rated_and_not_planned() {
    let vault = Vault::new();
    let slug = "millbrook-cable-run";
    let ran = rate(&vault, slug, &[]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let wide = ran.out.lines().find(|line| line.chars().count() > 80);
    assert_eq!(wide, None);
    assert_eq!(ran.out.matches("INVENTED").count(), 2);
    for words in [
        "decides nothing",
        "STRETCH: “soil of Millbrook Lane",
        "216.0 m long",
        "all the time: conductor",
    ] {
        assert!(flat(&ran.out).contains(words), "{words}: {}", ran.out);
    }
    let document: Value = serde_json::from_str(&rate(&vault, slug, &["--json"]).out).expect("JSON");
    let schema = vault.run(&["schema", "cable-rating"]).out;
    let schema: Value = serde_json::from_str(&schema).expect("a schema");
    assert_eq!(differences(&schema, &document), Vec::<String>::new());
    // The other commands send the user to `rate`.
    let job = example(slug);
    let job = job.to_str().expect("a name");
    for door in [&["plan"][..], &["plan", "--ask"], &["field"]] {
        let ran = vault.run(&[&door[..1], &[job], &door[1..]].concat());
        assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{door:?}");
        for words in [
            "`jointwright rate`",
            "letters (`plan --ask`) are written for joints only",
        ] {
            assert!(flat(&ran.err).contains(words), "{door:?}: {}", ran.err);
        }
    }
    // The missing fact is named, with who can answer it and where the answer goes.
    let text = std::fs::read_to_string(job).expect("the example");
    vault.write("job.toml", text.replace("route_length = \"220 m\"\n", ""));
    let ran = vault.run(&["rate", "job.toml"]);
    assert_eq!(ran.code, Some(3), "{}", ran.err);
    for words in [
        "ask the owner's engineer: How long is the route of the cable",
        "goes into the job, under leg or surrounding: route_length, length",
    ] {
        assert!(flat(&ran.out).contains(words), "{words}: {}", ran.out);
    }
}
