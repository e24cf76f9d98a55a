//! A job that asks for Spanish: the doors add no English to its pages, and complaints about it are Spanish.

use super::{MADE, Vault, example};
use serde_json::Value;

/// English words that no Spanish page may have, except in texts of the plan.
const ENGLISH: &[&str] = &[
    "the", "of", "is", "and", "its", "not", "with", "that", "this", "from", "at", "by", "for",
    "are", "on", "it", "to", "leg", "legs", "joint", "cut", "mark", "window", "stop", "call",
    "ask", "load", "loads", "judged", "settles", "limit", "wrote", "made", "assumes", "phases",
];

/// English that other rooms put on Spanish pages: the spoken name of the plan's mark, and names of files.
const EXEMPT: &[&str] = &["make-up-sheet.pdf", "leg-A.svg", "leg-B.svg", "leg-C.svg"];

fn spanish(slug: &str) -> String {
    let job = std::fs::read_to_string(example(slug)).expect("it is there");
    let words = "words = \"us\"\n";
    assert!(job.contains(words));
    job.replacen(words, &format!("{words}language = \"es\"\n"), 1)
}

/// Every text of a document, the longest first.
fn texts(of: &Value, into: &mut Vec<String>) {
    match of {
        Value::String(text) if text.chars().count() > 3 => {
            into.push(text.clone());
            into.push(text.trim_end_matches('.').to_owned());
        }
        Value::Array(all) => all.iter().for_each(|one| texts(one, into)),
        Value::Object(all) => all.values().for_each(|one| texts(one, into)),
        _ => {}
    }
}

/// English words of a page that stand in no text of these documents.
fn own_english(page: &str, documents: &[Value]) -> Vec<String> {
    let mut known = Vec::new();
    documents.iter().for_each(|of| texts(of, &mut known));
    known.extend(EXEMPT.iter().map(|name| (*name).to_owned()));
    known.sort_by_key(|text| std::cmp::Reverse(text.len()));
    known.dedup();
    let mut page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    for text in known {
        page = page.replace(&text, "·");
    }
    // Words of files and commands stand in backquotes.
    let page: String = page.split('`').step_by(2).collect();
    let words = page.split(|c: char| !c.is_alphanumeric());
    let english = words.filter(|word| ENGLISH.contains(&word.to_lowercase().as_str()));
    english.map(str::to_owned).collect()
}

#[test]
fn the_pages_of_a_spanish_job_say_nothing_of_their_own_in_english() {
    let vault = Vault::new();
    vault.write("job.toml", spanish("larkspur-three-way"));
    let run = |command: &str, more: &[&str]| {
        let mut arguments = vec![command, "job.toml", "--made", MADE];
        arguments.extend(more);
        vault.run(&arguments).out
    };
    let json = |command: &str| -> Value {
        serde_json::from_str(&run(command, &["--json"])).expect("a document")
    };
    let plan = json("plan");
    assert_eq!(plan["job"]["language"], "es");
    let rating = json("rate");
    assert_eq!(
        (&rating["language"], &rating["words"]),
        (&"es".into(), &"us".into())
    );
    let pages = [
        ("plan", run("plan", &["--out", "out"]), vec![plan.clone()]),
        ("rate", run("rate", &[]), vec![rating]),
        ("field", run("field", &[]), vec![plan, json("field")]),
    ];
    for (name, page, documents) in pages {
        assert!(page.contains("RAMAL A"), "{page}");
        assert!(
            page.lines().all(|line| line.chars().count() <= 80),
            "{page}"
        );
        let english = own_english(&page, &documents);
        assert!(english.is_empty(), "{name}: {english:?}\n{page}");
    }
}

#[test]
fn the_pages_of_an_english_job_are_found_to_be_english() {
    let vault = Vault::new();
    let job = example("larkspur-three-way");
    let job = job.to_str().expect("the path is UTF-8");
    let page = vault.run(&["field", job, "--made", MADE]).out;
    let document = vault.run(&["field", job, "--made", MADE, "--json"]).out;
    let document: Value = serde_json::from_str(&document).expect("a document");
    assert!(own_english(&page, &[document]).len() > 20, "{page}");
}

#[test]
fn a_wrong_reading_of_a_spanish_job_is_complained_of_in_spanish_at_its_place() {
    let vault = Vault::new();
    let job = spanish("larkspur-three-way").replacen("\"20.04 mm\"", "\"20,04 mm\"", 1);
    vault.write("job.toml", job);
    for command in ["plan", "rate", "field"] {
        let ran = vault.run(&[command, "job.toml"]);
        assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""));
        assert!(
            ran.err
                .starts_with("job.toml:10:131 `file.reading 1.values 1` es "),
            "{ran:?}"
        );
        assert!(
            ran.err
                .contains("Qué hacer: Escriba el decimal con punto: 20.04."),
            "{ran:?}"
        );
        assert_eq!(ran.err.lines().count(), 1);
    }
}
