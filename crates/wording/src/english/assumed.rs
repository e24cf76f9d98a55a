//! Assumptions of what is computed, and limits of this version.

use jointwright_joint::said::{
    AssumedSaid, FieldAssumes, NotComputed, PressureAssumes, RunAssumes, WarmAssumes,
};

pub(super) fn say(said: AssumedSaid) -> &'static str {
    match said {
        AssumedSaid::Field(said) => field(said),
        AssumedSaid::Pressure(said) => pressure(said),
        AssumedSaid::Warm(said) => warm(said),
        AssumedSaid::Run(said) => run(said),
        AssumedSaid::NotComputed(said) => not_computed(said),
    }
}

fn field(said: FieldAssumes) -> &'static str {
    match said {
        FieldAssumes::Round => "round, concentric, square",
        FieldAssumes::OneDiameter => "one diameter over the whole end, at this leg's own wall",
        FieldAssumes::RubberFollows => {
            "rubber that follows every step but for the bridging that its row states, stretched without change of volume or length"
        }
        FieldAssumes::AwayFromJunction => {
            "nothing nearer to the axis of a junction than two radii of the body"
        }
        FieldAssumes::InsideAsStated => {
            "the inside of the body exactly as its row states it; what its row says it may be off moves only where the heel is taken to lie"
        }
        FieldAssumes::ScreenAndAdapter => {
            "the screen as thick as the middle of its readings, else of its papers; an adapter's outside in a straight line between those that its row states"
        }
        FieldAssumes::NoNick => "a nick, a jagged edge, dirt and moisture are outside it",
    }
}

fn pressure(said: PressureAssumes) -> &'static str {
    match said {
        PressureAssumes::RigidCable => {
            "a round cable of one diameter, rigid and smooth, and no friction"
        }
        PressureAssumes::LongTubes => {
            "each slice of a body like a long tube of the same rings; near a step in its wall the pressure is another"
        }
        PressureAssumes::EndsFreeOrHeld => {
            "of fixed length and free ends the lesser pressure, and the lesser ratio with the same ends on both sides"
        }
        PressureAssumes::OneWarmth => {
            "rubber at one temperature throughout, the cable's insulation at another; hot insulation that takes the shape of what presses on it is outside it"
        }
        PressureAssumes::AdapterOutside => {
            "an adapter's outside in a straight line between those that its row states; what a body adds to the pressure under an adapter is left out"
        }
    }
}

fn warm(said: WarmAssumes) -> &'static str {
    match said {
        WarmAssumes::OnePhase => {
            "one phase, its layers cut at the planned places, balanced currents in three single-core cables that touch"
        }
        WarmAssumes::SurroundingsAsStated => {
            "films and temperatures of the surroundings as stated, whatever the load; nothing else that warms them"
        }
        WarmAssumes::ConnectorAtWorst => {
            "the connector as its row has it at the worst, the same along its whole length"
        }
        WarmAssumes::LegsMeet => {
            "legs that meet in one temperature, with no loss between them but that of the bus; no heat from the rubber of one leg to that of another; no metal and no loss in the shield over the joint"
        }
        WarmAssumes::ShieldCurrentGrows => {
            "a stated current of a shield that grows and falls with its leg's load"
        }
        WarmAssumes::StillAir => {
            "still air where a body cannot close on what it covers; no dielectric loss"
        }
    }
}

fn run(said: RunAssumes) -> &'static str {
    match said {
        RunAssumes::ThreeCables => {
            "three single-core cables with equal balanced currents; each stretch as if it were endless, so that no heat goes along the cable"
        }
        RunAssumes::PapersAtWorst => {
            "diameters from the papers, at those ends of their bands that make the conductor hottest; the shield conducts heat no better than the jacket"
        }
        RunAssumes::SurroundingsAsStated => {
            "films, resistances and temperatures of the surroundings as stated, whatever the load; nothing else that warms them; no sun, no wind"
        }
        RunAssumes::SteadyLoad => {
            "a load that does not change; no dielectric loss; emergencies of a cable without a joint are not computed"
        }
    }
}

fn not_computed(said: NotComputed) -> &'static str {
    match said {
        NotComputed::RisingConductivity => {
            "the field of layers whose conductivity rises with the field"
        }
        NotComputed::Imprint => "what hot insulation keeps of an imprint",
        NotComputed::BusFaults => "short circuits in the bus",
        NotComputed::WaterPastSeals => "water past the seals",
    }
}
