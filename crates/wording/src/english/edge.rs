//! Sentences about the edge of the insulation screen under the body.

use crate::Tongue;
use jointwright_joint::said::{ControlEnd, EdgeSaid};

pub(super) fn say(tongue: Tongue, said: &EdgeSaid) -> String {
    match said {
        EdgeSaid::InControl { end } => in_control(*end).to_owned(),
        EdgeSaid::InControlAtWorst { subject, end } => format!(
            "{}, {}, at the worst of the windows",
            tongue.subject(subject),
            in_control(*end)
        ),
        EdgeSaid::MayLieOutsideControl => {
            "Stop and call: with these windows the edge can lie outside the stress control."
                .to_owned()
        }
    }
}

fn in_control(end: ControlEnd) -> &'static str {
    match end {
        ControlEnd::Inner => "screen edge past the inner end of the stress control",
        ControlEnd::Outer => "screen edge short of the outer end of the stress control",
    }
}
