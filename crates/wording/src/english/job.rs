//! Sentences about the rows and names of a job.

use super::{job_kind, job_whole};
use crate::Tongue;
use jointwright_joint::said::{JobSaid, NameHint, NameSaid, RowHint, RowSaid};

pub(super) fn say(tongue: Tongue, said: &JobSaid) -> String {
    match said {
        JobSaid::Row(said) => row(said),
        JobSaid::RowHint(hint) => row_hint(hint),
        JobSaid::Name(said) => name(said),
        JobSaid::NameHint(hint) => name_hint(hint),
        JobSaid::Kind(said) => job_kind::say(tongue, said),
        JobSaid::Whole(said) => job_whole::say(tongue, said),
    }
}

fn row(said: &RowSaid) -> String {
    match said {
        RowSaid::PhaseBeyond { phase, phases } => {
            format!("Phase {phase} is named, but the job has {phases}.")
        }
        RowSaid::NoValues => "A reading has no values.".to_owned(),
        RowSaid::NoDiameter {
            value,
            least,
            greatest,
        } => format!(
            "A reading is {value}; a diameter on one core lies between {least} and {greatest}."
        ),
        RowSaid::ErrorIsNothing => {
            "The instrument's error is nothing; every instrument may be off.".to_owned()
        }
        RowSaid::CountSaysNothing => "A count says nothing of what was counted or seen.".to_owned(),
        RowSaid::StayNotAfter { until, last } => {
            format!("A stay ends on {until}, not after the one before it, {last}.")
        }
        RowSaid::ColdestAboveWarmest {
            coldest_degc,
            warmest_degc,
        } => format!(
            "It lay at {coldest_degc} degC at the coldest, and at {warmest_degc} degC at the warmest."
        ),
        RowSaid::LabelPrintsBoth { expires } => {
            format!("The label prints no expiry date, and it prints {expires}.")
        }
        RowSaid::NoLengthAfter => "A trial press has no length after pressing.".to_owned(),
        RowSaid::SleeveShorter { before, after } => format!(
            "The sleeve measured {before} before and {after} after; a pressed sleeve does not grow shorter."
        ),
        RowSaid::SleeveUnlikePaper {
            before,
            connector,
            listed,
        } => format!(
            "The sleeve measured {before} before pressing; `{connector}` is {listed} long in its paper."
        ),
        RowSaid::DatedAfterWork { date, work } => {
            format!("This is dated {date}, after the day of the work, {work}.")
        }
        RowSaid::ThreeWires => "A resistance along a shield is read with 3 wires.".to_owned(),
        RowSaid::LeadHasNoMetal => "The bonding lead has no metal.".to_owned(),
    }
}

fn row_hint(hint: &RowHint) -> String {
    let fixed = match hint {
        RowHint::ChangePhase => "Change the phase here or `phases` in the job.",
        RowHint::WriteWhatItShowed => "Write what the instrument showed, or take the reading out.",
        RowHint::LookAtUnit => "Look at the unit and the decimal point.",
        RowHint::WriteItsCertificate => "Write what its certificate or its finest division says.",
        RowHint::ItTakes { fields } => return format!("It takes: {}.", fields.join(", ")),
        RowHint::StaysInOrder => "Write the stays in order from the day the part was expanded.",
        RowHint::ExchangeOrLookUp => "Exchange them, or look them up again.",
        RowHint::LookAtLabel => "Look at the label again, and take one of the two out.",
        RowHint::GiveLengthAfter => "Give `length_after`, one for each trial.",
        RowHint::MeasureBothAgain => "Measure both again.",
        RowHint::PressTheNamed => "Press the sleeve that the job names.",
        RowHint::LookAtBothDates => "Look at both dates again.",
        RowHint::FourOrTwoWires => {
            "Write 4 where current and voltage have clips of their own, else 2."
        }
        RowHint::WriteItsSection => {
            "Write its metal section, such as \"35 mm2\" or \"66360 cmil\"."
        }
    };
    fixed.to_owned()
}

fn name(said: &NameSaid) -> String {
    match said {
        NameSaid::NoLeg { leg } => format!("No leg is named `{leg}`."),
        NameSaid::TwoLegs { leg, place } => {
            format!("Two legs are named `{leg}`; the first stands at {place}.")
        }
        NameSaid::NoRow { kind, id } => {
            let kind = kind.replace('_', " ");
            format!("No {kind} in the job's catalogues is named `{id}`.")
        }
        NameSaid::EndOfNoConnector { field, end } => {
            format!("`{field}` names the end `{end}` of a connector, and no `connector` is named.")
        }
        NameSaid::EndsAreAlike {
            field,
            end,
            connector,
        } => {
            format!("`{field}` names the end `{end}`, and the ends of `{connector}` do not differ.")
        }
        NameSaid::NoSuchEnd {
            field,
            end,
            connector,
        } => format!("`{field}` names the end `{end}`, which `{connector}` does not have."),
        NameSaid::SideOfNoBody { side } => {
            format!("`body_side` names the side `{side}`, and no `body` is named.")
        }
        NameSaid::SidesAreAlike { side, body } => {
            format!("`body_side` names the side `{side}`, and the sides of `{body}` do not differ.")
        }
        NameSaid::NoSuchSide { side, body } => {
            format!("`body_side` names the side `{side}`, and `{body}` does not have it.")
        }
        NameSaid::TrialIsNotPressed { connector } => {
            format!("A trial press names `{connector}`, which is not pressed.")
        }
        NameSaid::TrialNamesNoEnd { connector } => format!(
            "The ends of `{connector}` differ, and the trial press does not say which was pressed."
        ),
    }
}

/// Names between quotes.
fn or(names: &[String]) -> String {
    let names: Vec<String> = names.iter().map(|name| format!("\"{name}\"")).collect();
    names.join(" or ")
}

fn name_hint(hint: &NameHint) -> String {
    let fixed = match hint {
        NameHint::LegsAre { legs } => return format!("The job has: {}.", legs.join(", ")),
        NameHint::OwnLetter => "Give every leg a letter of its own.",
        NameHint::CatalogueIsWrong => {
            "Something is wrong in a catalogue; put that right first, the row may stand there."
        }
        NameHint::AddTheRow => "The catalogues have none; add the row.",
        NameHint::RowsAre { rows } => return format!("They have: {rows}."),
        NameHint::NameConnector => "Name the connector, or take the line out.",
        NameHint::NameBody => "Name the body, or take the line out.",
        NameHint::TakeLineOut => "Take the line out.",
        NameHint::EndsAre { ends } => return format!("Its ends are {}.", or(ends)),
        NameHint::SidesAre { sides } => return format!("Its sides are {}.", or(sides)),
        NameHint::TakeTrialOut => "Take the trial press out, or name the sleeve that was pressed.",
        NameHint::AddEnd { ends } => return format!("Add `end`: {}.", or(ends)),
        NameHint::LookBothUp => {
            "One of the rows was copied wrongly, or two papers are for different parts: look both up again."
        }
    };
    fixed.to_owned()
}
