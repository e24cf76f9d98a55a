//! Length: a length to be read, with its rounding and its instrument.

use jointwright_units::{Gauge, Interval, Length, Station, Toward};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Length to be read with a rule or a calliper, rounded to a side.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Read {
    /// Length, nanometres.
    pub nm: i64,
    /// Side to which it may be rounded.
    pub rounded: Rounded,
    /// Instrument.
    pub with: With,
}

/// Side to which a length may be rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Rounded {
    /// Either side.
    Nearest,
    /// Toward the shorter side: never longer than it is.
    Shorter,
    /// Toward the longer side: never shorter than it is.
    Longer,
}

impl From<Toward> for Rounded {
    fn from(toward: Toward) -> Rounded {
        match toward {
            Toward::Nearest => Rounded::Nearest,
            Toward::Shorter => Rounded::Shorter,
            Toward::Longer => Rounded::Longer,
        }
    }
}

impl From<Rounded> for Toward {
    fn from(rounded: Rounded) -> Toward {
        match rounded {
            Rounded::Nearest => Toward::Nearest,
            Rounded::Shorter => Toward::Shorter,
            Rounded::Longer => Toward::Longer,
        }
    }
}

/// Instrument with which a length is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum With {
    /// A rule or a tape, along the cable.
    Rule,
    /// A calliper, for diameters.
    Calliper,
}

impl Read {
    /// Returns a length along the cable.
    pub fn along(length: Length, toward: Toward) -> Read {
        Read::new(length, toward, With::Rule)
    }

    /// Returns a diameter, or a difference of two diameters.
    pub fn diameter(length: Length, toward: Toward) -> Read {
        Read::new(length, toward, With::Calliper)
    }

    fn new(length: Length, toward: Toward, with: With) -> Read {
        Read {
            nm: length.nm(),
            rounded: toward.into(),
            with,
        }
    }

    /// Length.
    pub fn length(self) -> Length {
        Length::from_nm(self.nm)
    }

    /// Side to which it may be rounded.
    pub fn toward(self) -> Toward {
        self.rounded.into()
    }

    /// Gauge of its instrument.
    pub fn gauge(self) -> Gauge {
        match self.with {
            With::Rule => Gauge::Rule,
            With::Calliper => Gauge::Calliper,
        }
    }
}

/// Place along a leg, or a distance on it, as a crew lead reads it from a drawing: to a thirty-second of an inch or a tenth of a millimetre.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Spot {
    /// Distance from the conductor end, half nanometres.
    pub half_nm: i64,
    /// Side to which it may be rounded.
    pub rounded: Rounded,
}

impl Spot {
    /// Returns a place or a distance, rounded to a side.
    pub fn new(at: Station, toward: Toward) -> Spot {
        Spot {
            half_nm: at.half_nm(),
            rounded: toward.into(),
        }
    }

    /// Distance from the conductor end.
    pub fn station(self) -> Station {
        Station::from_half_nm(self.half_nm)
    }
}

/// Range of diameters to be read; printed rounded inward.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct ReadRange {
    /// Least, nanometres.
    pub least_nm: i64,
    /// Greatest, nanometres.
    pub greatest_nm: i64,
}

impl From<Interval> for ReadRange {
    fn from(range: Interval) -> ReadRange {
        ReadRange {
            least_nm: range.least().nm(),
            greatest_nm: range.greatest().nm(),
        }
    }
}

impl ReadRange {
    /// Range as an interval; `None` if a document gave its bounds in the wrong order.
    pub fn interval(self) -> Option<Interval> {
        Interval::new(
            Length::from_nm(self.least_nm),
            Length::from_nm(self.greatest_nm),
        )
    }
}

/// Length as its paper writes it: whole sixty-fourths of an inch or millimetres, without rounding.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Exact {
    /// Length, half nanometres.
    pub half_nm: i64,
}

impl From<Length> for Exact {
    fn from(length: Length) -> Exact {
        Exact {
            half_nm: 2 * length.nm(),
        }
    }
}

impl From<Station> for Exact {
    fn from(station: Station) -> Exact {
        Exact {
            half_nm: station.half_nm(),
        }
    }
}
