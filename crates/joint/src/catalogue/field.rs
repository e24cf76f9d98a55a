//! A field of a row: its name, its kind, whether it is required, and its description.

use crate::form::{Field, Kind, Need};

pub(super) const fn field(
    name: &'static str,
    kind: Kind,
    need: Need,
    about: &'static str,
) -> Field {
    Field {
        name,
        kind,
        need,
        about,
    }
}
