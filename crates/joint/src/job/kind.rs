//! Kind of a joint; kinds that the program does not plan are refused by name.

use super::reader::JobReader;
use crate::form::Record;
use crate::said::{HeadHint, HeadSaid, JointKind};

/// Other kinds of joint, which are refused by name and not as misspellings.
const OTHER_KINDS: &[&str] = &[
    "transition",
    "termination",
    "paper-lead",
    "three-core",
    "stop",
    "trifurcating",
    "submarine",
    "repair",
];

pub(super) fn kind(reader: &mut JobReader<'_>, head: &Record) -> Option<JointKind> {
    let text = head.text("kind")?;
    let message = match text {
        "straight" => return Some(JointKind::Straight),
        "branch" => return Some(JointKind::Branch),
        "separable" => return Some(JointKind::Separable),
        "cable" => return Some(JointKind::Cable),
        other if OTHER_KINDS.contains(&other) => HeadSaid::KindIsNotHandled {
            kind: other.to_owned(),
        },
        other => HeadSaid::KindIsUnknown {
            kind: other.to_owned(),
        },
    };
    reader.complain(head.at("kind"), message, HeadHint::QualifiedPeople);
    None
}
