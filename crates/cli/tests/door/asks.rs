//! Asks, at the top of the page and as letters; stops, at every door.

use super::{EXAMPLES, Vault, example};

/// A page without its line breaks.
fn whole(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn document(vault: &Vault, slug: &str) -> serde_json::Value {
    let text = vault.read(&format!("out/{slug}/plan.json"));
    serde_json::from_str(&text).expect("it is JSON")
}

fn texts(list: &serde_json::Value) -> Vec<&str> {
    let list = list.as_array().expect("a list");
    list.iter().filter_map(serde_json::Value::as_str).collect()
}

#[test]
fn no_reason_is_cut_off_on_the_page() {
    let mut n = 0;
    for slug in EXAMPLES {
        let vault = Vault::new();
        let page = whole(&vault.plan(slug, &[]).out);
        let document = document(&vault, slug);
        for ruling in document["rulings"].as_array().expect("rulings") {
            if ruling["ruling"] == "pass" {
                continue;
            }
            let why = whole(ruling["why"].as_str().expect("a reason"));
            n += 1;
            assert!(page.contains(why.trim_end_matches('.')), "{slug}: {why}");
        }
        assert!(!page.contains("..."), "{slug}");
    }
    assert!(n > 30, "{n} reasons");
}

#[test]
fn the_page_asks_first_and_says_who_can_answer() {
    for slug in EXAMPLES {
        let vault = Vault::new();
        let page = whole(&vault.plan(slug, &[]).out);
        let document = document(&vault, slug);
        let asks = document["asks"].as_array().expect("asks");
        assert!(!asks.is_empty(), "{slug}");
        let numbers = page
            .find("LEG A, ")
            .or_else(|| page.find("LEGS A "))
            .expect("numbers");
        let mut last = 0;
        for ask in asks {
            let question = whole(ask["question"].as_str().expect("a question"));
            let said = format!("{}: {question}", ask["who_words"].as_str().expect("who"));
            let at = page.find(&said).unwrap_or_else(|| panic!("{slug}: {said}"));
            assert!(last < at && at < numbers, "{slug}: {said}");
            last = at;
        }
    }
}

#[test]
fn letters_go_to_one_addressee_each_with_blanks_and_the_mark() {
    let vault = Vault::new();
    assert_eq!(vault.run(&["new", "job.toml"]).code, Some(0));
    // A part with a question for its maker.
    let text = vault.read("job.toml");
    let connector = "\nconnector = \"demo-sleeve-pressed-350\"";
    assert_eq!(text.matches(connector).count(), 2);
    vault.write(
        "job.toml",
        text.replace(connector, "\nconnector = \"demo-sleeve-screw\""),
    );
    let ran = vault.run(&["plan", "job.toml", "--ask", "letters"]);
    assert_ne!(ran.code, Some(2), "{ran:?}");
    assert!(!vault.path("out").exists(), "nothing else is written");
    let names = std::fs::read_dir(vault.path("letters")).expect("a folder");
    let mut names: Vec<String> = names
        .map(|entry| {
            entry
                .expect("a file")
                .file_name()
                .into_string()
                .expect("UTF-8")
        })
        .collect();
    names.sort();
    assert!(names.len() > 2, "{names:?}");
    vault.run(&["plan", "job.toml"]);
    let document = document(&vault, "starter");
    let mut letters = String::new();
    for name in &names {
        let letter = vault.read(&format!("letters/{name}"));
        for part in [
            "INVENTED DEMONSTRATION DATA",
            "Job: starter",
            "To: ",
            "____",
            "Goes into the ",
            "Settles: ",
            "555-0100",
        ] {
            assert!(letter.contains(part), "{name}: {part}");
        }
        assert_eq!(letter.matches("To: ").count(), 1, "{name}");
        letters.push_str(&letter);
    }
    let letters = whole(&letters);
    // Every fact stands in a letter, with all that it concerns.
    for ask in document["asks"].as_array().expect("asks") {
        // While work stops, no letter asks for a fact that only a cut could show.
        if document["outcome"] == "fail" && ask["during_work"] == true {
            continue;
        }
        for of in texts(&ask["of"]) {
            assert!(letters.contains(of), "{of}");
        }
    }
}

#[test]
fn letters_without_a_folder_go_below_the_plans() {
    let vault = Vault::new();
    let ran = vault.plan("dock-straight-pressed", &["--ask"]);
    assert!(
        vault.path("out/dock-straight-pressed/ask").is_dir(),
        "{ran:?}"
    );
    let ran = vault.plan("dock-straight-pressed", &["--ask", "--json"]);
    assert_eq!(
        ran.code,
        Some(2),
        "two answers at once are refused: {ran:?}"
    );
}

/// An example whose measured cables differ from their papers.
fn with_other_papers(vault: &Vault) {
    let text = std::fs::read_to_string(example("dock-straight-pressed")).expect("it is there");
    let start = text.find("[leg.cable]").expect("a cable");
    let (head, cables) = text.split_at(start);
    let sizes = ["1/0 AWG", "4/0 AWG", "350 kcmil", "500 kcmil"];
    let size = sizes
        .iter()
        .find(|size| cables.contains(&format!("size = \"{size}\"")));
    let size = size.expect("a size that the table has");
    let other = if *size == "500 kcmil" {
        "1/0 AWG"
    } else {
        "750 kcmil"
    };
    let cables = cables.replace(
        &format!("size = \"{size}\""),
        &format!("size = \"{other}\""),
    );
    vault.write("job.toml", format!("{head}{cables}"));
}

#[test]
fn issue_16_no_door_prints_a_number_to_cut_to_where_work_stops() {
    let vault = Vault::new();
    with_other_papers(&vault);
    let ran = vault.run(&["plan", "job.toml"]);
    let page = whole(&ran.out);
    assert!(page.contains("STOP"), "{page}");
    assert!(!page.contains("Nothing fails"), "{page}");
    assert!(page.contains("withheld"), "{page}");
    assert!(!page.contains("may lie"), "{page}");
    assert!(page.contains("key = \"cable-table\""), "{page}");
    // The twin: with the right papers the numbers are printed.
    let page = whole(&Vault::new().plan("dock-straight-pressed", &[]).out);
    assert!(
        page.contains("may lie") && !page.contains("withheld"),
        "{page}"
    );
}
