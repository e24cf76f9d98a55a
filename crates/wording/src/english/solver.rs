//! Why there is no temperature, or no load.

use jointwright_joint::said::SolverSaid;

pub(super) fn say(said: &SolverSaid) -> String {
    match said {
        SolverSaid::Slice { index, flaw } => format!("slice {index}: {flaw}"),
        SolverSaid::Currents { n_currents, n_arms } => {
            format!("{n_currents} currents for {n_arms} arms")
        }
        SolverSaid::NoMesh => "the section cannot be meshed".to_owned(),
        SolverSaid::NotNumbered => "the temperatures cannot be numbered".to_owned(),
        SolverSaid::NoEquations => "the equations cannot be set up".to_owned(),
        SolverSaid::NoCooling => {
            "nothing cools the section, so that it has no steady temperature".to_owned()
        }
        SolverSaid::LossesOutgrow => "no steady temperature: the losses grow faster with the temperature than what carries them away".to_owned(),
        SolverSaid::NoRegion { r_mm, z_mm } => {
            format!("no region holds the place {r_mm} mm from the axis, {z_mm} mm along it")
        }
        SolverSaid::BeyondProximity { argument_ratio } => format!(
            "the proximity effect is known up to an argument of 2.8, and this is {argument_ratio:.3}"
        ),
        SolverSaid::NotBuried {
            depth_m,
            outside_mm,
        } => format!("an axis {depth_m} m deep leaves a cable of {outside_mm} mm uncovered"),
        SolverSaid::NoRoom { conductor_degc } => format!(
            "without any current the conductor would already be at {conductor_degc:.1} °C"
        ),
        SolverSaid::NoResistance => {
            "between conductor and surroundings nothing resists the heat".to_owned()
        }
        SolverSaid::NoSteady {
            current_a,
            greatest_degc,
        } => format!("no steady temperature below {greatest_degc:.0} °C carries {current_a:.1} A"),
        SolverSaid::NoHeating {
            from_degc,
            to_degc,
            time_s,
        } => format!(
            "from {from_degc:.1} to {to_degc:.1} °C in {time_s} s is no heating that a current can do"
        ),
        SolverSaid::NoIntegral { argument_ratio } => format!(
            "the exponential integral is asked for at {argument_ratio}, and has values above 0 only"
        ),
        SolverSaid::TooShort { time_s, least_s } => format!(
            "after {time_s:.0} s two cells do not yet stand for the cable; they do from {least_s:.0} s on"
        ),
        SolverSaid::AlreadyWarm {
            before_degc,
            to_degc,
        } => format!(
            "the conductor is at {before_degc:.1} °C before, and {to_degc:.1} °C are allowed"
        ),
        SolverSaid::NoNumber => {
            "a length, resistance or temperature of the circuit is no number above 0".to_owned()
        }
    }
}
