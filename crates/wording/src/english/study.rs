//! Sentences about the fields of a leg.

use crate::{Tongue, shown};
use jointwright_joint::said::{FieldWith, StudyAdapter, StudyCable, StudySaid, Wording};

pub(super) fn say(tongue: Tongue, said: &StudySaid) -> String {
    match said {
        StudySaid::Adapter(said) => adapter(tongue, said),
        StudySaid::Cable(said) => cable(tongue, said),
        StudySaid::BodyLeftOpen => "its body is left open".to_owned(),
        StudySaid::NothingSolved => "nothing was solved".to_owned(),
        StudySaid::AtTrial => "at the trial".to_owned(),
        StudySaid::NotSolved { why } => why.clone(),
        StudySaid::WithState {
            insulation_mm,
            edge_mm,
        } => format!(
            "with {insulation_mm:.2} mm over the insulation and the screen edge at {edge_mm:.1} mm from the body's datum"
        ),
        StudySaid::With(with) => self::with(*with),
        StudySaid::PermittivityNotStated => {
            "the permittivity of the cable's insulation is not stated".to_owned()
        }
        StudySaid::AskPermittivity { leg } => format!(
            "What is the relative permittivity of the insulation of leg {leg}'s cable? Ask its maker."
        ),
        StudySaid::StatedForOther {
            part,
            stated_mm,
            least_mm,
            greatest_mm,
        } => format!(
            "the inside of {part} is stated for {stated_mm:.1} mm over the insulation, here it is {least_mm:.1} to {greatest_mm:.1} mm: too far to conclude from one to the other"
        ),
        StudySaid::LayerRises { part } => format!(
            "the conductivity of a layer inside {part} rises with the field; the worst of its windows is not looked for"
        ),
        StudySaid::DatumNotPlaced { part } => format!("no row places the datum of {part}"),
        StudySaid::ElectrodeElsewhere {
            part,
            linked_mm,
            inside_mm,
        } => format!(
            "{part}: its links put the electrode's end at {linked_mm:.1} mm from its datum, its inside at {inside_mm:.1} mm; one of them is of another part"
        ),
        StudySaid::NoEdgeByInstructions => "the instructions alone place no screen edge".to_owned(),
        StudySaid::ByInstructionsAlone { said } => {
            format!("by the instructions alone {}", tongue.say(said))
        }
        StudySaid::NoPlaceForEdge { part } => {
            format!("the instructions of {part} leave no place for the screen edge")
        }
    }
}

fn cable(tongue: Tongue, said: &StudyCable) -> String {
    match said {
        StudyCable::NotMeasuredInPhase { layer, phase } => format!(
            "nobody has measured it over the {} in phase {phase}",
            tongue.layer(*layer)
        ),
        StudyCable::NotMeasured { layer } => {
            format!("nobody has measured it over the {}", tongue.layer(*layer))
        }
        StudyCable::ScreenNotThicker {
            insulation_mm,
            screen_mm,
        } => format!(
            "it was read {insulation_mm:.2} mm over the insulation and {screen_mm:.2} mm over its screen, which is not more"
        ),
        StudyCable::ScreenThicknessNotKnown => {
            "the thickness of the insulation screen is neither measured nor on the papers"
                .to_owned()
        }
        StudyCable::ConductorScreenNotKnown => {
            "the diameter over the conductor screen is not on the papers".to_owned()
        }
        StudyCable::NoWall {
            insulation_mm,
            screen_mm,
        } => format!(
            "the middle of the readings over the insulation is {insulation_mm:.2} mm, over the conductor screen its papers say {screen_mm:.2} mm"
        ),
    }
}

fn adapter(tongue: Tongue, said: &StudyAdapter) -> String {
    match said {
        StudyAdapter::UnderLayer { part } => format!(
            "an adapter under {part}, which has a layer of its own that spreads the field, is not drawn"
        ),
        StudyAdapter::StuffNotKnown { part } => format!("what {part} is made of is not known"),
        StudyAdapter::AskStuff { part } => format!(
            "What is the relative permittivity of {part}, and does it reach from under the electrode to beyond the screen edge?"
        ),
        StudyAdapter::BeginsAfter {
            part,
            begins_mm,
            electrode_mm,
        } => format!(
            "{part} can begin at {begins_mm:.1} mm from the body's datum, the electrode leaves the bore at {electrode_mm:.1} mm: what lies in the bore between them is not drawn"
        ),
        StudyAdapter::EndsBeforeDeflector {
            part,
            ends_mm,
            deflector_mm,
        } => format!(
            "{part} can end at {ends_mm:.1} mm from the body's datum, the deflector begins at {deflector_mm:.1} mm: what lies in the bore beyond it is not drawn"
        ),
        StudyAdapter::EndsBeforeEdge { part, by } => format!(
            "{part} can end {} before the edge of the insulation screen: what lies in the body's bore there is not drawn",
            tongue.read(*by)
        ),
        StudyAdapter::EndsTooNear { part, past, thick } => format!(
            "{part} can end {} past the edge of the insulation screen, less than the {} that it can be thick: what lies in the body's bore there is not drawn",
            tongue.read(*past),
            tongue.read(*thick)
        ),
    }
}

/// Dimensions that make a field the worst.
fn with(with: FieldWith) -> String {
    match with {
        FieldWith::NoField => {
            "no field: the deflector covers the edge wherever the windows let it lie".to_owned()
        }
        FieldWith::Edge {
            insulation_mm,
            edge_mm,
            rounded,
        } => {
            let rounded = rounded.map_or(String::new(), |edge| {
                format!(
                    ", its edge rounded with {} mm, the gap {}",
                    shown(edge.radius_mm),
                    filling(edge.is_empty)
                )
            });
            format!(
                "{} mm over the insulation, screen edge {} mm from the body's datum{rounded}",
                shown(insulation_mm),
                shown(edge_mm)
            )
        }
        FieldWith::Film {
            thickness_mm,
            is_empty,
        } => format!(
            "film {} mm thick, {}",
            shown(thickness_mm),
            filling(is_empty)
        ),
    }
}

fn filling(is_empty: bool) -> &'static str {
    if is_empty { "empty" } else { "filled" }
}
