//! Readings as built: the blank form, and each reading beside its window.

use super::{EXAMPLES, Vault, example};

fn blank(vault: &Vault, slug: &str) -> String {
    let job = example(slug);
    let ran = vault.run(&["plan", &job.display().to_string(), "--blank", "r.toml"]);
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""), "{slug}");
    vault.read("r.toml")
}

#[test]
fn a_blank_is_invented_like_its_job_and_is_never_written_over() {
    for slug in EXAMPLES {
        let vault = Vault::new();
        let text = blank(&vault, slug);
        assert!(text.starts_with("# INVENTED"), "{slug}: {text}");
        let job = example(slug).display().to_string();
        let again = vault.run(&["plan", &job, "--blank", "r.toml"]);
        assert_eq!(again.code, Some(2));
        assert_eq!(vault.read("r.toml"), text);
        let ran = vault.run(&["judge", &job, "r.toml"]);
        assert_eq!((ran.code, ran.err.as_str()), (Some(3), ""), "{slug}");
        assert!(ran.out.contains("INVENTED"), "{slug}");
        assert!(ran.out.lines().all(|line| line.chars().count() <= 80));
    }
}

#[test]
fn a_reading_out_of_its_window_stops_and_says_whom_to_call() {
    let vault = Vault::new();
    let slug = "larkspur-three-way";
    let job = example(slug).display().to_string();
    let text = blank(&vault, slug);
    let text = text.replace(
        "instrument = [\n",
        "by = \"Tomas Brandt\"\ndate = 2026-03-09\ninstrument = [\n  { id = \"rule\", kind = \"steel-rule\", error = \"1/64 in\" },\n",
    );
    let edge = "phase = 1, of = \"insulation-screen-edge\", with = \"rule\", at = [";
    let row = format!("leg = \"B\", {edge}");
    assert!(text.contains(&row));
    let text = text.replace(&row, &format!("{row}\"5 1/16 in\""));
    let text = text.replace("5 1/16 in\"] }", "5 1/16 in\"], note = \"jagged\" }");
    vault.write("r.toml", &text);
    let ran = vault.run(&["judge", &job, "r.toml"]);
    assert_eq!((ran.code, ran.err.as_str()), (Some(1), ""));
    let page = ran.out.split_whitespace().collect::<Vec<_>>().join(" ");
    for said in [
        "1 out of window: stop and ask",
        "A1: nothing read yet (",
        "Stop this end, and call Ines Calloway (invented), 555-0142.",
        "B1 insulation shield (black semicon) edge on leg B: 1/16 in (1.59 mm) over",
        "read: 5 1/16 in (128.59 mm); error 1/64 in (0.4 mm) either way",
        "window: 4 3/4 to 5 in, 120.7 to 127.0 mm (demo-leg-body-15",
        "with steel-rule, by Tomas Brandt, 2026-03-09",
        "noted: “jagged”",
        "decided by a named person, and recorded",
    ] {
        assert!(page.contains(said), "{said}:\n{}", ran.out);
    }
    let json = vault.run(&["judge", &job, "r.toml", "--json"]);
    assert_eq!(json.code, Some(1));
    let found: serde_json::Value = serde_json::from_str(&json.out).expect("it is JSON");
    assert_eq!(found["worst"], "stop-and-ask");
}

/// A joint that fails has no number to cut to, on this page as on every other.
#[test]
fn a_joint_that_fails_shows_no_window() {
    let vault = Vault::new();
    let slug = "tannery-change";
    let job = example(slug).display().to_string();
    let text = blank(&vault, slug);
    let text = text.replace(
        "instrument = [\n",
        "by = \"x\"\ndate = 2026-03-09\ninstrument = [\n  { id = \"rule\", kind = \"steel-rule\", error = \"0.5 mm\" },\n",
    );
    let text = text.replace(
        "of = \"insulation-screen-edge\", with = \"rule\", at = [] }",
        "of = \"insulation-screen-edge\", with = \"rule\", at = [\"20 mm\"] }",
    );
    vault.write("r.toml", &text);
    let plan = vault.run(&["plan", &job, "--json"]);
    assert_eq!(plan.code, Some(1));
    let ran = vault.run(&["judge", &job, "r.toml"]);
    assert_eq!(ran.code, Some(1));
    assert!(ran.out.contains("Windows are withheld"), "{}", ran.out);
    assert!(!ran.out.contains("      window: "), "{}", ran.out);
    assert!(!ran.out.contains(" under\n"), "{}", ran.out);
}

#[test]
fn wrong_readings_are_complained_of_in_the_language_of_the_job() {
    let vault = Vault::new();
    let job = std::fs::read_to_string(example("larkspur-three-way")).expect("the example");
    let job = job.replacen("words = \"us\"\n", "words = \"us\"\nlanguage = \"es\"\n", 1);
    vault.write("job.toml", job);
    vault.write("r.toml", "job = \"otro\"\nplan = \"CCCC-DDDD\"\n");
    let ran = vault.run(&["judge", "job.toml", "r.toml"]);
    assert_eq!(ran.code, Some(2));
    assert!(
        ran.err.contains("Estas lecturas son del trabajo `otro`"),
        "{}",
        ran.err
    );
    let none = vault.run(&["judge", "job.toml", "none.toml"]);
    assert_eq!(none.code, Some(2));
    assert!(none.err.contains("none.toml"), "{}", none.err);
    vault.run(&["plan", "job.toml", "--blank", "b.toml"]);
    let ran = vault.run(&["judge", "job.toml", "b.toml"]);
    assert_eq!(ran.code, Some(3));
    assert!(
        ran.out.contains("SIN LEER: no se supone nada"),
        "{}",
        ran.out
    );
}
