//! Narrowed: a window narrower than its paper prints, with the difference and its causes.

use super::cut::NarrowedDoc;
use crate::cutback::{Cut, Narrowed};
use crate::said::{PlanSaid, Said, Whose, Wording};

/// Causes that narrowed the window of a cut; `None` if it is as wide as its row prints.
pub(super) fn narrowed_doc(cut: &Cut, wording: &dyn Wording) -> Option<NarrowedDoc> {
    let narrowed = cut.narrowed.as_ref()?;
    Some(NarrowedDoc {
        paper: wording.say(&Said::from(&narrowed.paper)),
        printed_mm: narrowed.printed.mm(),
        left_mm: narrowed.left.mm(),
        shared_with: narrowed.shared_with.clone(),
        by: narrowed
            .by
            .iter()
            .map(|of| wording.say(&of.into()))
            .collect(),
        text: wording.say(&said(cut, narrowed).into()),
    })
}

fn said(cut: &Cut, narrowed: &Narrowed) -> PlanSaid {
    // The line above already names the cut's own paper if that is the only owner.
    let is_named = matches!(cut.whose.as_slice(), [only] if *only == narrowed.paper);
    PlanSaid::Narrowed {
        left: narrowed.left.into(),
        printed: narrowed.printed.into(),
        paper: (!is_named).then(|| Said::from(&narrowed.paper)),
        shared_with: narrowed.shared_with.clone(),
        by: (!narrowed.by.is_empty()).then(|| Whose::all(&narrowed.by)),
    }
}
