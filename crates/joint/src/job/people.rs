//! People: the people under `authority`, and the matters that each decides.

use crate::form::Record;

/// A person, and the matters that they decide.
#[derive(Clone, Debug)]
pub struct Person {
    /// Name.
    pub name: String,
    /// Role.
    pub role: String,
    /// Matters that they decide.
    pub decides: Vec<String>,
}

/// People of a job.
#[derive(Clone, Debug)]
pub(super) struct People {
    /// People that could be read.
    pub(super) known: Vec<Person>,
    /// Whether every person could be read.
    pub(super) are_known: bool,
}

impl People {
    /// Reads the people of a job's `authority`.
    pub(super) fn read(record: &Record) -> People {
        let authority = record.record("authority");
        let rows = authority.into_iter().flat_map(|a| a.records("person"));
        let known: Vec<Person> = rows.filter_map(person).collect();
        let are_known = authority.is_some_and(|authority| {
            authority.records("person").count() == known.len()
                && (authority.item("person").is_some() || !authority.is_given("person"))
        });
        People { known, are_known }
    }
}

fn person(row: &Record) -> Option<Person> {
    Some(Person {
        name: row.string("name")?,
        role: row.string("role")?,
        decides: row.texts("decides"),
    })
}
