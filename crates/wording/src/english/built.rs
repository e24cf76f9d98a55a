//! Sentences about readings as built.

use crate::Tongue;
use jointwright_joint::cable::Layer;
use jointwright_joint::said::{Amount, BuiltHint, BuiltSaid};
use jointwright_joint::slot::Measured;

pub(super) fn say(tongue: Tongue, said: &BuiltSaid) -> String {
    let amount = |amount: &Amount| tongue.amount(amount);
    match said {
        BuiltSaid::OtherJob { read, job } => {
            format!("These readings are of job `{read}`, and the job given is `{job}`.")
        }
        BuiltSaid::OtherPlan { read, plan } => format!(
            "These readings were taken with plan {read} in hand, and this job makes plan {plan}."
        ),
        BuiltSaid::NoInstrument { named } => format!("No instrument is named `{named}`."),
        BuiltSaid::HasNoError { instrument, field } => {
            format!("Instrument `{instrument}` has no `{field}`.")
        }
        BuiltSaid::NamedTwice { named } => format!("`{named}` is named twice."),
        BuiltSaid::Needs { of, field } => format!("A reading of `{of}` needs `{field}`."),
        BuiltSaid::NotWith { of, field } => format!("A reading of `{of}` takes no `{field}`."),
        BuiltSaid::NoWordFor { found, of } => format!("`{found}` is no word for `{of}`."),
        BuiltSaid::NoTime { read } => format!("`{read}` is no time of day."),
        BuiltSaid::NoDecision { named } => format!("No decision is named `{named}`."),
        BuiltSaid::IdleDecision { named } => {
            format!("No reading names the decision `{named}`, so nobody can tell what it is about.")
        }
        BuiltSaid::Decided {
            what,
            by,
            role,
            authority,
            reached,
            at,
        } => format!(
            "{what}; decided by {by}, {role}, on the authority of {authority}; {at}; {reached}"
        ),
        BuiltSaid::NotAmongThePeople { by } => {
            format!("the job does not name {by} among those who decide on windows")
        }
        BuiltSaid::NoteWithoutValue => "This row has a note or a decision and no value.".to_owned(),
        BuiltSaid::Disagree => "another reading of the same says something else: measure again".to_owned(),
        BuiltSaid::UnlikeTheJob => "the job, and with it the plan, has another reading of the same: ask which counts".to_owned(),
        BuiltSaid::Fewer { read, wanted } => {
            format!("{read} of {wanted} read, and the window is for every one: read the others")
        }
        BuiltSaid::NobodyRead => "This reading does not say who read it.".to_owned(),
        BuiltSaid::NoDay => "This reading has no day.".to_owned(),
        BuiltSaid::Read { values, error } => {
            let values: Vec<String> = values.iter().map(amount).collect();
            let values = values.join(", ");
            match error {
                Some(error) => format!("{values}; error {} either way", amount(error)),
                None => values,
            }
        }
        BuiltSaid::Found { found } => found.clone(),
        BuiltSaid::Slot { measured } => slot(tongue, measured),
        BuiltSaid::Under { by } => format!("{} under", amount(by)),
        BuiltSaid::Over { by } => format!("{} over", amount(by)),
        BuiltSaid::UnderAndOver { under, over } => {
            format!("{} under, and {} over", amount(under), amount(over))
        }
        BuiltSaid::Unlike { wanted } => format!("wanted: {wanted}"),
        BuiltSaid::OnTheEdge => {
            "it stands on the edge of the window, so that any error of the instrument leaves a doubt: measure again".to_owned()
        }
        BuiltSaid::ErrorReachesOver { below } => format!(
            "the error of the instrument reaches over the edge of the window: measure again with one whose error is below {}",
            amount(below)
        ),
        BuiltSaid::NotFromPlan { planned } => format!(
            "it is not the {} of the plan, and nobody says how far off it may be",
            tongue.exact(*planned)
        ),
        BuiltSaid::NobodyAsks => "no hold point of the plan asks for it".to_owned(),
        BuiltSaid::NotRead => "not read".to_owned(),
    }
}

pub(super) fn hint(said: &BuiltHint) -> String {
    match said {
        BuiltHint::JudgeWithItsJob => "Give the job that these readings are of.".to_owned(),
        BuiltHint::NameItsPlan => "Give the job as it was when that plan was made. Whether readings count for another plan is for a named person to say, who then writes its mark here.".to_owned(),
        BuiltHint::InstrumentsAre { names } if names.is_empty() => {
            "List it under `instrument`, with its error.".to_owned()
        }
        BuiltHint::InstrumentsAre { names } => {
            format!("The file has: {}.", names.join(", "))
        }
        BuiltHint::DecisionsAre { names } if names.is_empty() => {
            "List it under `decision`, with who decided, on whose authority and when.".to_owned()
        }
        BuiltHint::DecisionsAre { names } => format!("The file has: {}.", names.join(", ")),
        BuiltHint::NameItInItsRow => {
            "Write its name as `decision` in the row of the reading that it is about.".to_owned()
        }
        BuiltHint::WriteTime => "Write it in 24 hours, as \"14:20\".".to_owned(),
        BuiltHint::WriteItsError { field } => {
            format!("Write `{field}` at the instrument, from its certificate or from trials.")
        }
        BuiltHint::WordsAre { words } => format!("The words are: {}.", words.join(", ")),
        BuiltHint::WriteField { field } => format!("Write `{field}` in this row."),
        BuiltHint::LeaveOut { field } => format!("Leave `{field}` out."),
        BuiltHint::WriteItsValue => "Write what was read or found; a note alone would be lost.".to_owned(),
        BuiltHint::WriteWho => "Write `by` in the row, or at the head of the file.".to_owned(),
        BuiltHint::WriteDay => "Write `date` in the row, or at the head of the file.".to_owned(),
        BuiltHint::OneRowEach => "Give each its own name.".to_owned(),
    }
}

fn slot(tongue: Tongue, measured: &Measured) -> String {
    let shield = tongue.layer(Layer::MetallicShield);
    match measured {
        Measured::Diameter { over } => format!("diameter over the {}", tongue.layer(*over)),
        Measured::ShieldElements => format!("wires or straps of the {shield}, counted"),
        Measured::Strands => "strands of the conductor, counted".to_owned(),
        Measured::ConductorMetal => "metal of the conductor".to_owned(),
        Measured::ShieldForm => format!("form of the {shield}"),
        Measured::Place { plane } => tongue.plane(*plane).to_owned(),
        Measured::Distance { from, to } => {
            format!(
                "from the {} to the {}",
                tongue.plane(*from),
                tongue.plane(*to)
            )
        }
        Measured::AdapterEnds => "ends of the adapter".to_owned(),
        Measured::StrandMoisture => "moisture in the strands".to_owned(),
        Measured::ShieldMoisture => format!("moisture under the {shield}"),
        Measured::JacketSurface => {
            format!(
                "surface of the {} under the seal",
                tongue.layer(Layer::Jacket)
            )
        }
        Measured::Surface { on } => format!("surface of the {}", tongue.layer(*on)),
        Measured::Bridge => format!("bridge of the {shield}"),
        Measured::WiresBesideTape => "wires beside the tape".to_owned(),
        Measured::ShieldKept => format!("length kept of the {shield}"),
        Measured::Phase => "phase at the far end".to_owned(),
        Measured::ConnectorGap => "gap at the stop of the connector".to_owned(),
        Measured::BoltProud => "how far a bolt stands proud".to_owned(),
        Measured::ConnectorLength => "length of the connector as made".to_owned(),
        Measured::ConnectorDiameter => "outside diameter of the connector as made".to_owned(),
        Measured::AcrossFlats => "across the flats of the connector".to_owned(),
        Measured::Die => "die in the press".to_owned(),
        Measured::Presses => "presses made".to_owned(),
        Measured::Bolts => "bolts, counted".to_owned(),
        Measured::BoltTorque => "torque of the bolts".to_owned(),
        Measured::ContactResistance => {
            format!("resistance across the connection of the {shield}")
        }
        Measured::BondResistance { to } => {
            format!("resistance of the {shield} across the joint to leg {to}")
        }
        Measured::ShieldOpen => format!("{shield}: open or joined"),
        Measured::ShieldResistance => format!("resistance along the {shield}"),
        Measured::SealOverlap => {
            format!("lap of the seal onto the {}", tongue.layer(Layer::Jacket))
        }
    }
}
