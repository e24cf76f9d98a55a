//! Rating errors: the reasons why a rating has no value.

/// Reason why a rating has no value.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum RatingError {
    /// The proximity effect is outside the range of its formula.
    #[error("the proximity effect is known up to an argument of 2.8, and this is {argument:.3}")]
    BeyondProximity {
        /// xp.
        argument: f64,
    },
    /// A cable whose surface reaches the surface of the soil.
    #[error("an axis {} m deep leaves a cable of {} mm uncovered", depth_m, outside_m * 1e3)]
    NotBuried {
        /// Depth of the axis, m.
        depth_m: f64,
        /// Diameter over all, m.
        outside_m: f64,
    },
    /// The dielectric loss alone brings the conductor to its temperature, or the surroundings are hotter.
    #[error("without any current the conductor would already be at {conductor_degc:.1} °C")]
    NoRoom {
        /// Temperature of the conductor without a current, °C.
        conductor_degc: f64,
    },
    /// There is no thermal resistance, so no current would be too large.
    #[error("between conductor and surroundings nothing resists the heat")]
    NoResistance,
    /// The losses grow faster with the temperature than the cooling: thermal runaway.
    #[error("no steady temperature below {greatest_degc:.0} °C carries {current_a:.1} A")]
    Runaway {
        /// Current, A.
        current_a: f64,
        /// Highest temperature of the search, °C.
        greatest_degc: f64,
    },
    /// A short circuit without a rise of temperature or without duration.
    #[error(
        "from {from_degc:.1} to {to_degc:.1} °C in {time_s} s is no heating that a current can do"
    )]
    NoHeating {
        /// Temperature before, °C.
        from_degc: f64,
        /// Temperature after, °C.
        to_degc: f64,
        /// Time, s.
        time_s: f64,
    },
    /// An argument for which the exponential integral has no value.
    #[error("the exponential integral is asked for at {argument}, and has values above 0 only")]
    NoIntegral {
        /// x.
        argument: f64,
    },
    /// Two cells represent the cable only from some time on.
    #[error(
        "after {time_s:.0} s two cells do not yet stand for the cable; they do from {least_s:.0} s on"
    )]
    TooShort {
        /// Requested time, or time within which the temperature is reached, s.
        time_s: f64,
        /// Time from which two cells represent the cable, s.
        least_s: f64,
    },
    /// The temperature before is not below the permitted one.
    #[error("the conductor is at {before_degc:.1} °C before, and {to_degc:.1} °C are allowed")]
    AlreadyWarm {
        /// Temperature before, °C.
        before_degc: f64,
        /// Permitted temperature, °C.
        to_degc: f64,
    },
    /// An input or a result is not finite.
    #[error("a length, resistance or temperature of the circuit is no number above 0")]
    NoNumber,
}
