//! Sentences about the readings of a leg, beside ranges of parts and the cable's papers.

use crate::Tongue;
use jointwright_joint::cable::{Layer, Words};
use jointwright_joint::said::{
    DiameterSaid, MeasuredSaid, NearestSaid, PapersSaid, RangeSaid, ReadingLayerSaid, SurfaceSaid,
    TableSaid, UnlikeSaid, Wording,
};

pub(super) fn say(tongue: Tongue, said: &MeasuredSaid) -> String {
    match said {
        MeasuredSaid::Range(said) => range(tongue, said),
        MeasuredSaid::Diameter(said) => diameter(tongue, said),
        MeasuredSaid::Reading(said) => reading(tongue, said),
        MeasuredSaid::Papers(said) => papers(tongue, said),
        MeasuredSaid::Unlike(said) => unlike(tongue, *said),
        MeasuredSaid::Surface(said) => surface(said),
        MeasuredSaid::Table(said) => table(tongue, said),
    }
}

fn range(tongue: Tongue, said: &RangeSaid) -> String {
    match said {
        RangeSaid::MeasureOverItself { layer } => format!(
            "Measure over the {} itself, four diameters around it, with a calliper.",
            tongue.layer(*layer)
        ),
        RangeSaid::ThinnestNotRead => {
            "a tape, or fewer than four diameters around the cable, say nothing of its thinnest"
                .to_owned()
        }
        RangeSaid::ReadFourOver { layer } => format!(
            "Read four diameters around the cable over the {}, with a calliper.",
            tongue.layer(*layer)
        ),
        RangeSaid::OverFor {
            subject,
            layer,
            at,
            part,
        } => format!(
            "{} over the {}, for the {at} of {part}",
            tongue.subject(subject),
            tongue.layer(*layer)
        ),
        RangeSaid::TooLarge { part, by } => format!(
            "Stop: {part} is {} too large for this leg. Do not make it fit. Measure again; if it stands, this leg needs another part whose range holds it.",
            tongue.read(*by)
        ),
        RangeSaid::TooSmall { part, by } => format!(
            "Stop: {part} is {} too small for this leg. Do not make it fit. Measure again; if it stands, this leg needs another part whose range holds it.",
            tongue.read(*by)
        ),
        RangeSaid::SidesDiffer { body, leg } => format!(
            "the two sides of {body} differ, and the job does not say by which leg {leg} comes in"
        ),
        RangeSaid::SaySide { sides } => {
            let sides: Vec<String> = sides.iter().map(|side| format!("\"{side}\"")).collect();
            format!("Say it on the leg: body_side = {}.", tongue.or(&sides))
        }
        RangeSaid::NoBoreRange { row } => format!("the row {row} gives no range for its bore"),
        RangeSaid::NoMouthRange { row } => format!("the row {row} gives no range for its mouth"),
        RangeSaid::OvalityNotLimited => {
            "neither the instructions nor the owner limit how far out of round it may be".to_owned()
        }
        RangeSaid::OvalityNotRead => {
            "four diameters around the cable are needed; a tape or fewer say nothing of roundness"
                .to_owned()
        }
        RangeSaid::ReadFour => "Read four diameters around the cable with a calliper.".to_owned(),
        RangeSaid::Ovality { subject } => {
            format!("{}, ovality of the insulation", tongue.subject(subject))
        }
        RangeSaid::OutOfRound => "Stop and call: the cable is out of round.".to_owned(),
    }
}

fn diameter(tongue: Tongue, said: &DiameterSaid) -> String {
    match said {
        DiameterSaid::NotMeasuredOver { layer } => {
            format!("nobody has measured it over the {}", tongue.layer(*layer))
        }
        DiameterSaid::MeasuredOverScreen { read, range } => format!(
            "it was measured over the {}, but the range is over the {}: the screen makes the reading larger",
            tongue.layer(*read),
            tongue.layer(*range)
        ),
        DiameterSaid::ReadingHasNoTemperature { at_degc } => {
            format!("the range is stated at {at_degc} degC, but a reading has no temperature")
        }
        DiameterSaid::ExpansionNotKnown {
            at_degc,
            coldest_degc,
            warmest_degc,
        } => format!(
            "the range is stated at {at_degc} degC and the cable was read at {coldest_degc} to {warmest_degc} degC; the expansion of this layer is not known"
        ),
        DiameterSaid::ExpansionNotStated {
            at_degc,
            coldest_degc,
            warmest_degc,
        } => format!(
            "the range is stated at {at_degc} degC and the cable was read at {coldest_degc} to {warmest_degc} degC, but nobody states its expansion"
        ),
        DiameterSaid::ExpansionTurnsItRound => "its expansion turns the reading round".to_owned(),
    }
}

fn reading(tongue: Tongue, said: &ReadingLayerSaid) -> String {
    match said {
        ReadingLayerSaid::DiameterOnPapers { layer } => format!(
            "diameter over the {} of the cable on its papers",
            tongue.layer(*layer)
        ),
        ReadingLayerSaid::LikeAnother { named, like } => format!(
            "the reading over the {0} is like the {1} of this cable, not like its {0}",
            tongue.layer(*named),
            tongue.layer(*like)
        ),
        ReadingLayerSaid::RemoveNothing => "Remove nothing on this word. It was read over another layer, or the papers name another cable or level, or two legs are exchanged: look which layer the instrument lay on, read the print on the jacket, measure again; if it stands, call.".to_owned(),
        ReadingLayerSaid::LikeEither { named, like, error } => format!(
            "the reading over the {0} is not like the {0} of this cable; {2} off, as far as the instrument may be, it is like its {0} and like its {1}",
            tongue.layer(*named),
            tongue.layer(*like),
            error.length()
        ),
        ReadingLayerSaid::ReadAgain { layer } => format!(
            "Read again over the {} with an instrument that is less far off, and look which layer it lies on.",
            tongue.layer(*layer)
        ),
    }
}

/// Last words of every sentence on likeness.
const NEVER: &str =
    "This says what the cable is made of, never which circuit it is or whether it is dead.";

fn papers(tongue: Tongue, said: &PapersSaid) -> String {
    match said {
        PapersSaid::LikePapersOnly => format!(
            "The leg measures like its papers, and like no other construction of the table. {NEVER}"
        ),
        PapersSaid::LikeOthersAlso { others } => format!(
            "The leg measures like its papers, but also like {}. {NEVER}",
            nearest(tongue, others)
        ),
        PapersSaid::LikeOthersNotPapers { unlike: of, others } => format!(
            "The leg does not measure like its papers: {}. It measures like {}. {NEVER}",
            unlike(tongue, *of),
            nearest(tongue, others)
        ),
        PapersSaid::LikeNone { unlike: of } => format!(
            "The leg measures neither like its papers nor like any other construction of the table. Of its papers: {}. Measure again, and see that each reading is over the layer it says ({}, {}). {NEVER}",
            unlike(tongue, *of),
            tongue.layer(Layer::Insulation),
            tongue.layer(Layer::InsulationScreen)
        ),
        PapersSaid::LikenessOpen { why } => format!(
            "The readings do not say whether the leg measures like its papers: {}. {NEVER}",
            tongue.say(why)
        ),
        PapersSaid::NoDiameterRead => {
            "no diameter under the metallic layer was measured".to_owned()
        }
        PapersSaid::Fits => "fits".to_owned(),
        PapersSaid::FitsOthersAlso => "fits others also".to_owned(),
        PapersSaid::FitsOthersNotPapers => "fits others, not its papers".to_owned(),
        PapersSaid::FitsNone => "fits none of the table".to_owned(),
        PapersSaid::NotEnough => "not enough readings".to_owned(),
        PapersSaid::FitsItsPapers => "fits its papers".to_owned(),
        PapersSaid::NotAsPapersSay => "not as its papers say".to_owned(),
        PapersSaid::AsJobStates => "the cable's papers, as the job states them".to_owned(),
        PapersSaid::NotThisCable => {
            "Stop and call: this is not the cable on the papers.".to_owned()
        }
        PapersSaid::TableConfirmed { edition, source } => {
            format!("cable table, edition {edition}, confirmed by {source}")
        }
        PapersSaid::TableFromMemory { key, source } => {
            format!("partly from memory (key {key}): {source}")
        }
        PapersSaid::ConfirmTable { key } => confirm(key),
        PapersSaid::SayWhichAndConfirm { key } => format!(
            "Stop and call. A named person says which cable it is: read the print on its jacket, and give the job that cable with the diameters of its own papers. {}",
            confirm(key)
        ),
    }
}

fn confirm(key: &str) -> String {
    format!(
        "The owner confirms the cable table with a row `[[confirmation]]`, key = \"{key}\": docs/howto/answer-what-is-asked.md."
    )
}

fn nearest(tongue: Tongue, of: &NearestSaid) -> String {
    let each = of.nearest.iter().map(|near| {
        format!(
            "{}, {} ({:.1} times the readings' error off)",
            tongue.conductor(near.conductor),
            tongue.or(&near.walls),
            near.off_ratio
        )
    });
    let named = each.collect::<Vec<_>>().join("; ");
    if of.n_others <= of.nearest.len() {
        return named;
    }
    let n = of.n_others;
    format!("{n} others that what was seen does not rule out, the nearest: {named}")
}

fn unlike(tongue: Tongue, said: UnlikeSaid) -> String {
    match said {
        UnlikeSaid::Metal { seen, papers } => format!(
            "its conductor is {}, by its papers {}",
            tongue.metal(seen),
            tongue.metal(papers)
        ),
        UnlikeSaid::Stranding { seen, papers } => format!(
            "its conductor is {}, by its papers {}",
            tongue.stranding(seen),
            tongue.stranding(papers)
        ),
        UnlikeSaid::Strands { n_strands, papers } => format!(
            "{n_strands} strands were counted, by its papers the conductor is {}",
            tongue.stranding(papers)
        ),
        UnlikeSaid::Shield { seen, papers } => format!(
            "its shield is of {}, by its papers of {}",
            seen.name(),
            papers.name()
        ),
        UnlikeSaid::Elements {
            n_counted,
            n_papers,
        } => format!(
            "{n_counted} wires or straps of its shield were counted, by its papers there are {n_papers}"
        ),
        UnlikeSaid::ElementsOfTape { n_counted, papers } => format!(
            "{n_counted} wires or straps of its shield were counted, by its papers it is of {}",
            papers.name()
        ),
        UnlikeSaid::Over {
            layer,
            read,
            papers,
        } => format!(
            "over the {} {} was read, errors included, by its papers it is {}",
            tongue.layer(layer),
            tongue.range(read),
            tongue.range(papers)
        ),
    }
}

fn surface(said: &SurfaceSaid) -> String {
    match said {
        SurfaceSaid::NotWritten => "nobody has written down how the jacket is where the seal will lie".to_owned(),
        SurfaceSaid::LookAllAround => "Look at it all around before the jacket is cut: scored, wrinkled, embossed, cracked, or smooth.".to_owned(),
        SurfaceSaid::NoneNamed { seal } => {
            format!("{seal} names no condition of the jacket on which it may close")
        }
        SurfaceSaid::AskOnWhich { seal } => {
            format!("On what condition of the jacket may {seal} close?")
        }
        SurfaceSaid::DressOrCutBack => "Stop. Dress the jacket only as the instructions of the seal say, or cut back to where it is as they ask; then look again.".to_owned(),
    }
}

fn table(tongue: Tongue, said: &TableSaid) -> String {
    match said {
        TableSaid::NoDiameterRow { size, stranding } => {
            format!("no row for {} {}", size, tongue.stranding(*stranding))
        }
        TableSaid::NoWallRow { wall } => format!("no wall row for {}", super::plan::wall(*wall)),
        TableSaid::NoResistanceRow { conductor } => {
            format!("no DC resistance row for {}", conductor.phrase(Words::Iec))
        }
        TableSaid::TapeOverlap { overlap_percent } => {
            format!(
                "overlap of the tape is {overlap_percent} %, from 0 to less than 95 % is expected"
            )
        }
    }
}
