//! Sentences about a job's kind of joint, its ports and legs, its network and place, and its cables.

use crate::Tongue;
use jointwright_joint::said::{
    CableHint, CableSaid, HeadHint, HeadSaid, JobKindSaid, RunHint, RunSaid, SizeUnit,
};

pub(super) fn say(tongue: Tongue, said: &JobKindSaid) -> String {
    match said {
        JobKindSaid::Head(said) => head(tongue, said),
        JobKindSaid::HeadHint(hint) => head_hint(hint).to_owned(),
        JobKindSaid::Run(said) => run(said),
        JobKindSaid::RunHint(hint) => run_hint(hint).to_owned(),
        JobKindSaid::Cable(said) => cable(tongue, said),
        JobKindSaid::CableHint(hint) => cable_hint(hint).to_owned(),
    }
}

/// Holder of a port: a leg by its name, or a blank.
fn holder(leg: Option<&String>) -> String {
    leg.map_or("a blank".to_owned(), |leg| format!("leg `{leg}`"))
}

fn head(tongue: Tongue, said: &HeadSaid) -> String {
    match said {
        HeadSaid::KindIsNotHandled { kind } => format!(
            "A joint of kind \"{kind}\" is not handled: this program plans straight, branch and separable joints of single-core cable with extruded insulation and a metallic shield."
        ),
        HeadSaid::KindIsUnknown { kind } => format!(
            "The kind of joint is \"{kind}\"; the format expects \"straight\", \"branch\" or \"separable\", or \"cable\" for one run of cable without a joint."
        ),
        HeadSaid::HighestBelowNominal {
            highest_kv,
            nominal_kv,
        } => format!(
            "The highest voltage, {highest_kv} kV, is below the nominal voltage, {nominal_kv} kV."
        ),
        HeadSaid::NoMediumVoltage { field, kv } => format!(
            "The {field} voltage is {kv} kV; this program plans medium-voltage joints, 1 to 52 kV phase to phase."
        ),
        HeadSaid::AmbientReversed {
            least_degc,
            greatest_degc,
        } => format!(
            "The lowest ambient temperature, {least_degc} degC, is above the highest, {greatest_degc} degC."
        ),
        HeadSaid::LegsNotTwoToSix { n } => format!("The job has {n} legs; a joint has 2 to 6."),
        HeadSaid::WantsTwoLegs { kind, n } => format!(
            "A {} joint has 2 legs; this one has {n}.",
            tongue.joint_kind(*kind)
        ),
        HeadSaid::WantsThreeLegs { kind, n } => format!(
            "A {} joint has 3 legs or more; this one has {n}.",
            tongue.joint_kind(*kind)
        ),
        HeadSaid::NoBusButOneNamed { kind } => format!(
            "A {} joint has no bus, but the job names a bus.",
            tongue.joint_kind(*kind)
        ),
        HeadSaid::NoBusButBlanks { kind } => format!(
            "A {} joint has no bus, but the job names blank ports.",
            tongue.joint_kind(*kind)
        ),
        HeadSaid::LegHasNoPort { leg } => {
            format!("In a separable joint leg `{leg}` has no `port`.")
        }
        HeadSaid::PortTakenTwice { port, one, other } => format!(
            "Port {port} is taken by {} and by {}; a port holds one leg or one plug.",
            holder(one.as_ref()),
            holder(other.as_ref())
        ),
    }
}

const fn head_hint(hint: &HeadHint) -> &'static str {
    match hint {
        HeadHint::QualifiedPeople => {
            "Work that this program does not know follows its own instructions, by people qualified for it."
        }
        HeadHint::PhaseToPhase => "Give both phase to phase; the highest is the Um of the system.",
        HeadHint::LookAtVoltage => "Look at the unit: \"13.2 kV\" is 13 200 V.",
        HeadHint::Exchange => "Exchange them.",
        HeadHint::AddOrTakeLegs => "Add or take out legs.",
        HeadHint::ChangeKindOrLegs => "Change the kind of joint or the legs.",
        HeadHint::TakeOutOrSeparable => "Take it out, or make the joint \"separable\".",
        HeadHint::SayItsPort => "Say on which port of the bus it sits.",
        HeadHint::AnotherPort => "Give one of them another port.",
    }
}

fn run(said: &RunSaid) -> String {
    match said {
        RunSaid::NotOneLeg { n } => {
            format!("A job of kind \"cable\" has one leg, the run of cable; this one has {n}.")
        }
        RunSaid::NamesAPart { field } => {
            format!("A run of cable has no joint, and the job names `{field}`.")
        }
        RunSaid::NothingReads { field } => {
            format!("A run of cable has no joint, and nothing here reads the job's `{field}`.")
        }
        RunSaid::NotComputedOfARun { field } => format!(
            "Of a run of cable no emergency and no short circuit is computed, and the job states `{field}`."
        ),
        RunSaid::OneLoad { field } => {
            format!("A run of cable has one load, and its leg names `{field}`.")
        }
        RunSaid::NothingToCountFrom => {
            "A run of cable has no joint from which `until` would count.".to_owned()
        }
        RunSaid::OnlyOfARun { field } => {
            format!("`{field}` is for a run of cable without a joint.")
        }
        RunSaid::HasNoJoint => {
            "This job is a run of cable: it has no joint that could be planned or drawn.".to_owned()
        }
    }
}

const fn run_hint(hint: &RunHint) -> &'static str {
    match hint {
        RunHint::EachRunItsJob => "Rate each run in a job of its own, or change the kind of job.",
        RunHint::TakeOutOrChangeKind => "Take it out, or change the kind of job.",
        RunHint::OtherMeans => {
            "Take it out, and have it judged by other means; the rating says nothing of it."
        }
        RunHint::SayUnderDuty => "Say it under `duty`: `load`.",
        RunHint::NoEmergencyOfARun => "Take it out: of a run no emergency is computed.",
        RunHint::SayItsLength => "Say how long the stretch is: `length`.",
        RunHint::RateSaysIt => {
            "`jointwright rate` says what the cable carries in its surroundings, what is missing for it, who can answer that and where it goes; letters (`plan --ask`) are written for joints only. For a joint change the kind of job."
        }
    }
}

fn cable(tongue: Tongue, said: &CableSaid) -> String {
    match said {
        CableSaid::GivenTwice { layer } => format!(
            "The papers' diameter over the {} is given twice.",
            tongue.layer(*layer)
        ),
        CableSaid::LeastAboveGreatest {
            least,
            low,
            greatest,
            high,
        } => format!(
            "`{least}` is {low} and `{greatest}` is {high}; the least cannot be above the greatest."
        ),
        CableSaid::OnlyOneGiven { one, other } => {
            format!("Only one of `{one}` and `{other}` is given.")
        }
        CableSaid::NoSuchLevel { level } => format!(
            "The insulation level is {level} percent; levels are 100, 133 and 173 percent."
        ),
        CableSaid::ClassWithoutLevel => "The class is given without an insulation level; the same class has three wall thicknesses.".to_owned(),
        CableSaid::NoWall => "The cable has neither `class` with `level`, nor `rated`, nor `wall`; one of them must say how thick its insulation is.".to_owned(),
        CableSaid::WallTwice { fields } => {
            format!("The insulation is described by {} at once.", fields.join(" and "))
        }
        CableSaid::SeveralCores { cores } => {
            format!("A cable with {cores} cores is not handled.")
        }
        CableSaid::Belted => "A belted cable is not handled: its cores lie under one belt of insulation and have no shield of their own.".to_owned(),
        CableSaid::InsulatedWith { what } => {
            format!("A cable insulated with {what} is not handled.")
        }
        CableSaid::SheathOf { metal } => format!(
            "A cable whose metallic shield is a sheath of {metal} is not handled."
        ),
        CableSaid::InsulationIs { what } => format!(
            "The insulation is \"{what}\"; the format expects \"xlpe\", \"tr-xlpe\" or \"epr\"."
        ),
        CableSaid::ShieldHasNo { kind, field, needs } => {
            format!("A shield of {kind} has no `{field}`; it needs {}.", needs.join(", "))
        }
        CableSaid::ShieldTakesNo { kind, field, takes } => format!(
            "A shield of {kind} has no `{field}`; it is described by {}.",
            takes.join(", ")
        ),
        CableSaid::ExpansionNotAPair => "The expansion of the insulation needs a least and a greatest value, the least not above the greatest.".to_owned(),
        CableSaid::OnlyTogether { one, other } => {
            format!("`{one}` and `{other}` say something only together.")
        }
        CableSaid::SizeHasNoUnit { field, text } => format!(
            "`{field}` is \"{text}\": conductor size {:?} has no unit: AWG, kcmil or mm² is expected; the format expects a conductor size.",
            text.trim()
        ),
        CableSaid::IsNoSize {
            field,
            text,
            number,
            unit,
        } => format!(
            "`{field}` is \"{text}\": {number:?} is not a size in {}; the format expects a conductor size.",
            match unit {
                SizeUnit::Awg => "AWG: 1/0 to 4/0 or a whole number from 1 to 40 is expected",
                SizeUnit::Kcmil => "kcmil: a whole number from 1 to 5000 is expected",
                SizeUnit::Mm2 => "mm²: a whole number from 1 to 5000 is expected",
            }
        ),
    }
}

const fn cable_hint(hint: &CableHint) -> &'static str {
    match hint {
        CableHint::KeepOne => "Keep one of them.",
        CableHint::ExchangeOrLookUp => "Exchange them, or look them up again.",
        CableHint::BothOrNeither => "Give both, or neither.",
        CableHint::ReadTheLegend => "Read it on the print legend or in the cable's papers.",
        CableHint::AddLevel => {
            "Add `level = 100`, `133` or `173` from the print legend or the papers."
        }
        CableHint::TakeFromLegend => "Take it from the print legend or the cable's papers.",
        CableHint::OtherCable => {
            "Have the joint between such a cable and others planned by its own instructions and the owner's engineer, and made by a splicer qualified for it. This program plans the joints of single-core cable with extruded insulation and a shield of its own."
        }
        CableHint::LeadSheath => {
            "Have the joint of such a cable planned by its own instructions and the owner's engineer, and made by a splicer qualified for lead: a lead sheath is wiped or clamped by parts of its own, paper may lie under it, and lead poisons who heats or scrapes it. This program plans the joints of cable whose shield is of straps, wires, tape, or tape with wires. Where wires or a tape under the lead carry the current, the engineer says whether they are the shield."
        }
        CableHint::MetalSheath => {
            "Have the joint of such a cable planned by its own instructions and the owner's engineer, and made by a splicer qualified for it: such a sheath is cut, flared and bonded by parts of its own. This program plans the joints of cable whose shield is of straps, wires, tape, or tape with wires."
        }
        CableHint::OwnInstructions => {
            "Other cable needs its own instructions and a splicer qualified for it."
        }
        CableHint::MeasureOrCount => "Measure or count it, or take it from the cable's papers.",
        CableHint::LookAtTheKind => "Take the line out, or look at the kind of shield again.",
        CableHint::BothFromASource => "Give both from a stated source, or neither.",
        CableHint::WriteASize => "Write \"4/0 AWG\", \"500 kcmil\" or \"240 mm2\".",
    }
}
