//! Complaints that a crew meets when it types readings are said in the language of its job, at its line and column.

use jointwright_joint::built::READINGS;
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::{Need, Shape, Source};
use jointwright_joint::job::{JOB, read_order};
use jointwright_joint::said::{AboutField, FieldSaid, Language, Wording};
use jointwright_wording::Tongue;

const LARKSPUR: &str = include_str!("../../../examples/larkspur-three-way/job.toml");

/// Complaints about the example with one passage exchanged, as a crew reads them.
fn told(language: &str, from: &str, to: &str) -> Vec<String> {
    assert!(LARKSPUR.contains(from), "the job has no `{from}`");
    let job = LARKSPUR.replacen(from, to, 1);
    let job = job.replacen(
        "words = \"us\"\n",
        &format!("words = \"us\"\nlanguage = \"{language}\"\n"),
        1,
    );
    let job = Source::new("job.toml", job);
    let catalogue = Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned());
    let complaints = read_order(&job, &[catalogue]).expect_err("the job is wrong");
    let texts = Tongue::of_source(&job).complaints(&complaints);
    texts.iter().map(ToString::to_string).collect()
}

/// A passage of the example, what is written instead, and what is said of it in English and in Spanish.
const WRONG: &[(&str, &str, &str, &str)] = &[
    (
        "values = [\"20.04 mm\"]",
        "values = [\"20,04 mm\"]",
        "job.toml:10:131 `file.reading 1.values 1` is \"20,04 mm\": `20,04` holds a comma; the format expects a diameter or thickness with its unit, such as \"1.062 in\", \"220 mil\" or \"27.0 mm\". Hint: Write the decimal with a point: 20.04.",
        "job.toml:10:131 `file.reading 1.values 1` es \"20,04 mm\": `20,04` contiene una coma; el formato espera un diámetro o espesor con su unidad, como \"1.062 in\", \"220 mil\" o \"27.0 mm\". Qué hacer: Escriba el decimal con punto: 20.04.",
    ),
    (
        "{ leg = \"A\", phase = 1, over = \"conductor\"",
        "{ leg = \"Z\", phase = 1, over = \"conductor\"",
        "job.toml:10:11 No leg is named `Z`. Hint: The job has: A, B, C.",
        "job.toml:10:11 Ningún ramal se llama `Z`. Qué hacer: El trabajo tiene: A, B, C.",
    ),
    (
        "over = \"conductor\", instrument = \"diameter-tape\", error = \"0.05 mm\"",
        "over = \"conductor\", instrument = \"diameter-tape\", error = \"0.05 A\"",
        "`file.reading 1.error` is \"0.05 A\": `A` is not a unit of length known here",
        "`file.reading 1.error` es \"0.05 A\": `A` no es una unidad de longitud conocida aquí",
    ),
    (
        "over = \"conductor\", instrument = \"diameter-tape\", ",
        "over = \"conductor\", ",
        "`file.reading 1` has no `instrument`; the format expects one of \"calliper\"",
        "`file.reading 1` no tiene `instrument`; el formato espera una de estas palabras: `calliper`",
    ),
    (
        "values = [\"20.04 mm\"]",
        "values = [\"20.04 m\"]",
        "a diameter on one core lies between",
        "un diámetro en un solo conductor está entre",
    ),
    (
        "over = \"conductor\"",
        "over = \"condutor\"",
        "Did you mean \"conductor\"?",
        "¿Quiso decir `conductor`?",
    ),
];

#[test]
fn a_wrong_reading_is_complained_of_in_the_language_of_the_job() {
    for (from, to, english, spanish) in WRONG {
        for (language, expected) in [("en", english), ("es", spanish)] {
            let said = told(language, from, to);
            assert!(
                said.iter().all(|line| line.starts_with("job.toml:10:")),
                "{said:?}"
            );
            assert!(
                said.iter().any(|line| line.contains(expected)),
                "{expected}: {said:#?}"
            );
        }
    }
}

fn required(shape: &'static Shape, found: &mut Vec<AboutField>) {
    use jointwright_joint::form::Kind;
    for field in shape.fields {
        if field.need == Need::Required {
            found.push(AboutField {
                heading: shape.name.to_owned(),
                field: field.name.to_owned(),
                about: field.about.to_owned(),
            });
        }
        if let Kind::Table(inner) | Kind::Rows(inner) = field.kind {
            required(inner, found);
        }
    }
}

#[test]
fn every_field_that_a_job_or_its_readings_must_have_is_explained_in_spanish() {
    let mut fields = Vec::new();
    required(&JOB, &mut fields);
    required(&READINGS, &mut fields);
    assert!(fields.len() > 120, "{}", fields.len());
    let tongue = Tongue {
        language: Language::Spanish,
        words: jointwright_joint::cable::Words::Us,
    };
    for of in fields {
        let said = tongue.say(&FieldSaid::Add(of.clone()).into());
        assert!(said.contains(": "), "{}.{}: {said}", of.heading, of.field);
        assert!(!said.contains(&of.about), "{said}");
    }
}
