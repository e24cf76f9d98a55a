//! The critic: each class of defect is found once and alone, and a correct table has no defects.
//!
//! Data: `tests/critic/` at the root, one file for each class and variant; `clean` files have no defects.

mod found;
mod hostile;
mod misprint;
mod order;

use jointwright_joint::catalogue::Catalogue;
use jointwright_joint::critic::{Defect, criticise};
use jointwright_joint::form::{Complaints, Source};

/// Text of a file of the tests.
macro_rules! text {
    ($slug:literal) => {
        include_str!(concat!("../../../../tests/critic/", $slug, ".toml"))
    };
}
pub(crate) use text;

/// Catalogue of a text that must be read without complaint.
#[track_caller]
fn read(text: &str) -> Catalogue {
    let source = Source::new("catalogue.toml", text.to_owned());
    let mut complaints = Complaints::default();
    let catalogue = Catalogue::read(&[source], true, &mut complaints);
    let complaints = complaints.into_sorted();
    assert!(complaints.is_empty(), "{complaints:?}");
    catalogue
}

/// Defects of a text that must be read without complaint.
#[track_caller]
fn defects(text: &str) -> Vec<Defect> {
    criticise(&read(text))
}
