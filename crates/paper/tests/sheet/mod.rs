//! The make-up sheet as a PDF, read back by a library that did not write it.

mod document;
mod strip;

use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::Source;
use jointwright_joint::plan::Plan;
use jointwright_joint::{job, judge};

pub(super) const THREE_WAY: &str = include_str!("../../../../examples/larkspur-three-way/job.toml");
pub(super) const FAILING: &str = include_str!("../../../../examples/tannery-change/job.toml");

pub(super) fn planned(text: &str) -> Plan {
    let catalogue = Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned());
    let source = Source::new("job.toml", text.to_owned());
    let order = job::read_order(&source, &[catalogue]).expect("the job is read");
    jointwright_wording::plan(&judge::judge(&order).expect("the rows agree"))
}
