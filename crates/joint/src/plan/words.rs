//! Words: sentences that several documents say alike.

use crate::cable::Layer;
use crate::plane::Plane;
use crate::said::{CutSaid, PlanSaid, Said, Wording};

/// A crew's name for a layer.
pub(super) fn layer_words(layer: Layer, wording: &dyn Wording) -> String {
    wording.say(&PlanSaid::Layer { layer }.into())
}

/// A crew's name for a plane.
pub(super) fn plane_words(plane: Plane, wording: &dyn Wording) -> String {
    wording.say(&CutSaid::Plane { plane }.into())
}

/// Assumptions, each as a sentence.
pub(super) fn assumed<T: Copy + Into<Said>>(all: &[T], wording: &dyn Wording) -> Vec<String> {
    all.iter().map(|one| wording.say(&(*one).into())).collect()
}

/// Messages, each as its sentence.
pub(super) fn all_said(all: &[Said], wording: &dyn Wording) -> Vec<String> {
    all.iter().map(|said| wording.say(said)).collect()
}
