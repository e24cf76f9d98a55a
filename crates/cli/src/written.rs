//! Written: the lines about the files that a command wrote.

use crate::lines::Lines;
use jointwright_wording::Tongue;
use jointwright_wording::label::PageLabel;

/// Returns the names of the files that were written, and their folder.
pub fn written(tongue: Tongue, folder: &str, names: &[&str]) -> String {
    let mut lines = Lines::new(tongue);
    lines.blank();
    // A path is one word, so its line is never broken.
    let folder = folder.to_owned();
    lines.add(&lines.say(&PageLabel::WroteInto { folder }));
    lines.wrap("  ", &names.join(", "));
    lines.text
}
