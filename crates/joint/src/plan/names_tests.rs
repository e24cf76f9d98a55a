//! The words of plan.json are the words of the files.

use crate::cable::Layer;
use crate::job::JointKind;
use crate::limit::{Outcome, Who};
use crate::plane::Plane;
use crate::stage::Stage;
use serde::Serialize;

#[track_caller]
fn check<T: Serialize>(values: impl IntoIterator<Item = T>, name: impl Fn(&T) -> String) {
    let mut n = 0;
    for value in values {
        let written = serde_json::to_value(&value).expect("a word");
        assert_eq!(written, serde_json::Value::String(name(&value)));
        n += 1;
    }
    assert!(n > 1);
}

#[test]
fn every_plane_is_written_by_its_name() {
    check(Plane::ALL.iter().copied(), |plane| plane.name().to_owned());
}

#[test]
fn every_layer_is_written_by_its_name() {
    check(Layer::ALL, |layer| layer.file_name().to_owned());
}

#[test]
fn every_stage_is_written_by_its_name() {
    check(Stage::ALL.iter().copied(), |stage| stage.name().to_owned());
}

#[test]
fn every_outcome_addressee_and_kind_is_written_by_its_name() {
    let outcomes = [Outcome::Pass, Outcome::NotJudged, Outcome::Fail];
    check(outcomes, |outcome| outcome.name().to_owned());
    check(Who::ALL, |who| who.name().to_owned());
    let kinds = [JointKind::Straight, JointKind::Branch, JointKind::Separable];
    check(kinds, |kind| kind.name().to_owned());
}
