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

#[test]
fn exit_codes_are_those_of_its_three_checks() {
    let vault = Vault::new();
    assert_eq!(rate(&vault, "dock-straight-pressed", &[]).code, Some(0));
    // Its sleeve grows by nobody knows how much.
    assert_eq!(rate(&vault, "dock-straight-not-pressed", &[]).code, Some(3));
    let job = std::fs::read_to_string(example("dock-straight-pressed")).expect("the job");
    let heavy = job.replace("\nload = \"320 A\"", "\nload = \"640 A\"");
    assert_ne!(job, heavy);
    vault.write("heavy.toml", heavy);
    let ran = vault.run(&["rate", "heavy.toml"]);
    assert_eq!(ran.code, Some(1));
    // A joint that is too hot at its load is told of no emergency beyond it.
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
