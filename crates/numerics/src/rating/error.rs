//! Why a rating cannot be said.

/// Why a rating cannot be said.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum RatingError {
    /// The formula of the proximity effect ends here.
    #[error("the proximity effect is known up to an argument of 2.8, and this is {argument:.3}")]
    BeyondProximity {
        /// xp.
        argument: f64,
    },
    /// A cable whose outside reaches the surface of the soil.
    #[error("an axis {} m deep leaves a cable of {} mm uncovered", depth_m, outside_m * 1e3)]
    NotBuried {
        /// Depth of the axis, m.
        depth_m: f64,
        /// Diameter over all, m.
        outside_m: f64,
    },
    /// The dielectric loss alone takes the conductor to its temperature, or the surroundings are hotter.
    #[error("without any current the conductor would already be at {conductor_degc:.1} °C")]
    NoRoom {
        /// What it would be, °C.
        conductor_degc: f64,
    },
    /// The heat meets no resistance, so no current would be too large.
    #[error("between conductor and surroundings nothing resists the heat")]
    NoResistance,
    /// The losses grow faster with the temperature than the heat that leaves.
    #[error("no steady temperature below {greatest_degc:.0} °C carries {current_a:.1} A")]
    Runaway {
        /// Current, A.
        current_a: f64,
        /// Highest temperature that was tried, °C.
        greatest_degc: f64,
    },
    /// A short circuit that heats nothing or takes no time.
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
    /// An argument at which the exponential integral has no value.
    #[error("the exponential integral is asked for at {argument}, and has values above 0 only")]
    NoIntegral {
        /// x.
        argument: f64,
    },
    /// Two cells stand for the cable only after some time.
    #[error(
        "after {time_s:.0} s two cells do not yet stand for the cable; they do from {least_s:.0} s on"
    )]
    TooShort {
        /// Time asked for, or within which the temperature is reached, s.
        time_s: f64,
        /// From when on, s.
        least_s: f64,
    },
    /// Nothing is left between the temperature before and the one allowed.
    #[error("the conductor is at {before_degc:.1} °C before, and {to_degc:.1} °C are allowed")]
    AlreadyWarm {
        /// Temperature before, °C.
        before_degc: f64,
        /// Temperature allowed, °C.
        to_degc: f64,
    },
    /// Something that is no number came in or went out.
    #[error("a length, resistance or temperature of the circuit is no number above 0")]
    NoNumber,
}
