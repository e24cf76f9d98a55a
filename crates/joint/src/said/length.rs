//! Length: a length as it is read aloud, to which side it may be rounded, and with what it is read.

use jointwright_units::{Gauge, Interval, Length, Station, Toward};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A length to be read: with a rule or a calliper, rounded to a side.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Read {
    /// Length, nanometres.
    pub nm: i64,
    /// Side to which it may be rounded.
    pub rounded: Rounded,
    /// What it is read with.
    pub with: With,
}

/// To which side a length may be rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Rounded {
    /// Either side.
    Nearest,
    /// Never longer than it is.
    Shorter,
    /// Never shorter than it is.
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

/// What a length is read with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum With {
    /// A rule or a tape, along the cable.
    Rule,
    /// A calliper, for diameters.
    Calliper,
}

impl Read {
    /// A length along the cable.
    pub fn along(length: Length, toward: Toward) -> Read {
        Read::new(length, toward, With::Rule)
    }

    /// A diameter, or a difference of two.
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

    /// The length.
    pub fn length(self) -> Length {
        Length::from_nm(self.nm)
    }

    /// Side to which it may be rounded.
    pub fn toward(self) -> Toward {
        self.rounded.into()
    }

    /// What it is read with.
    pub fn gauge(self) -> Gauge {
        match self.with {
            With::Rule => Gauge::Rule,
            With::Calliper => Gauge::Calliper,
        }
    }
}

/// A place along a leg, or a distance on it, as a crew lead reads it off a drawing: to a thirty-second of an inch or a tenth of a millimetre.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Spot {
    /// From the conductor end, half nanometres.
    pub half_nm: i64,
    /// Side to which it may be rounded.
    pub rounded: Rounded,
}

impl Spot {
    /// A place or a distance, rounded to a side.
    pub fn new(at: Station, toward: Toward) -> Spot {
        Spot {
            half_nm: at.half_nm(),
            rounded: toward.into(),
        }
    }

    /// From the conductor end.
    pub fn station(self) -> Station {
        Station::from_half_nm(self.half_nm)
    }
}

/// A range of diameters to be read; printed rounded inward.
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
    /// The range; `None` where it was read from a document that has its bounds the wrong way round.
    pub fn interval(self) -> Option<Interval> {
        Interval::new(
            Length::from_nm(self.least_nm),
            Length::from_nm(self.greatest_nm),
        )
    }
}

/// A length that is read as its paper writes it: whole sixty-fourths of an inch or millimetres, nothing rounded away.
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
