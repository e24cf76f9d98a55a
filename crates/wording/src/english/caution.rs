//! Sentences about the dangers of a step.

use crate::Tongue;
use jointwright_joint::cable::Layer;
use jointwright_joint::said::CautionSaid;

pub(super) fn say(tongue: Tongue, said: &CautionSaid) -> String {
    let shield = tongue.layer(Layer::MetallicShield);
    match said {
        CautionSaid::VoltageAndGas => "A cable can carry voltage from the far end, from a second source, or charge left by a trial. Gas, water and lack of air in the hole; other circuits in it may be alive.".to_owned(),
        CautionSaid::SharpTools => "Sharp tools and pinch points: cut away from the hand.".to_owned(),
        CautionSaid::JacketKnife => format!("Knife: cut away from the hand, never through to the {shield}."),
        CautionSaid::OpenShield => format!("An open {shield} can carry voltage, also on a cable that is isolated: it is bridged before it is cut and stays bridged."),
        CautionSaid::ScreenKnife => format!(
            "Knife: no deeper than the depth on the front page, where it sets none no deeper than a stop tried on a scrap of this cable; never into the insulation. {} left on the insulation carries current: none may stay.",
            capital(tongue.layer(Layer::InsulationScreen))
        ),
        CautionSaid::InsulationKnife => "Knife or stripper: never into the strands.".to_owned(),
        CautionSaid::Solvent => "Solvent: no flame or spark, ventilate, gloves; let it dry. The paper strip is off before the last wipe.".to_owned(),
        CautionSaid::NeverUnderVoltage => "Never part or mate a separable joint under voltage or load. Ports that stay open meanwhile are closed as the instructions of the bus say.".to_owned(),
        CautionSaid::BondEdges => "Sharp edges and springs. The bridge stays on.".to_owned(),
        CautionSaid::BridgeOff => format!("From here the permanent bond alone holds the {shield}: in doubt about any of it the bridge stays on. An open {shield} can carry voltage."),
        CautionSaid::HighVoltage => "High voltage at trials: the area is closed off, and what was tried is discharged and grounded or earthed by those who made the trial. Nobody is in the hole when voltage first comes on.".to_owned(),
        CautionSaid::StoredEnergy { parts } => {
            let parts: Vec<&str> = parts.iter().map(|part| tongue.part(*part)).collect();
            format!(
                "An expanded {} holds stored energy: keep fingers out of the holdout; turns only as its instructions say.",
                tongue.or(&parts)
            )
        }
        CautionSaid::BodyWalks => "A body can walk along the cable while the holdout comes out and after: hold it to its mark, and measure both ends to their marks again before anything covers them.".to_owned(),
        CautionSaid::Torch => "Torch: gas tested, no solvent vapour, heat kept off what it is not meant for; nothing of the kind left within its reach that burns.".to_owned(),
        CautionSaid::CreepsBack => "Rubber that was pushed on can creep back: measure the body to its marks again before anything covers them.".to_owned(),
        CautionSaid::TorchIfAsked => "Where the instructions ask for a torch: gas tested, no solvent vapour, heat kept off the body.".to_owned(),
        CautionSaid::Thrust { keep_off } => {
            let keep_off = keep_off.map_or("as far as their instructions say".to_owned(), |length| {
                format!("{} or more, as their instructions say", tongue.read(length))
            });
            format!(
                "A cable that grows warm pushes, and one that is bent pulls a body open on one side: no bend within reach of the bodies, {keep_off}; supported so that neither thrust nor weight comes on them; not moved before everything has settled."
            )
        }
        CautionSaid::Press => "Press: hands clear of the jaws; hydraulic oil can pierce the skin.".to_owned(),
        CautionSaid::BoltHeads => "Bolt heads fly: eyes protected, nobody in line.".to_owned(),
        CautionSaid::SlippingKey => "A slipping key cuts: hold the connector, not the cable.".to_owned(),
    }
}

/// Text with a capital first letter.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().chain(letters).collect())
        .unwrap_or_default()
}
