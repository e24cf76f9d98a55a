//! Fit: the parts chosen for a leg, and the leg's diameters in the form that a part's range needs.
//!
//! Why its own room: a range is over a named layer and sometimes for a named temperature; a reading over another layer answers nothing.
//!
//! Invariants: no diameter is guessed; a temperature is corrected only with an expansion that somebody states.
//!
//! Not here: whether it fits (`checks`).

use crate::cable::{Conductor, Layer};
use crate::catalogue::{
    Adapter, Body, Catalogue, Connector, ConnectorEnd, Fits, Head, Seal, ShieldPart,
};
use crate::job::{Leg, PartNames};
use crate::limit::Known;
use crate::said::{ConnectorSaid, DiameterSaid};
use crate::survey::{Diameter, EndSurvey};
use jointwright_units::{Interval, Length};

/// Parts of a leg; `None` where left open.
#[derive(Clone, Copy, Debug, Default)]
pub struct Chosen<'c> {
    /// Body.
    pub body: Option<&'c Body>,
    /// Adapter.
    pub adapter: Option<&'c Adapter>,
    /// Connector.
    pub connector: Option<&'c Connector>,
    /// End of the connector that takes this leg; `None` if it is open, or nobody states which one.
    pub end: Option<&'c ConnectorEnd>,
    /// Shield part.
    pub shield_part: Option<&'c ShieldPart>,
    /// Seal.
    pub seal: Option<&'c Seal>,
}

impl<'c> Chosen<'c> {
    /// Chooses the parts with these names, for a leg with this conductor.
    pub fn from_names(
        catalogue: &'c Catalogue,
        names: &PartNames,
        conductor: Conductor,
    ) -> Chosen<'c> {
        let connector = names.connector.as_deref();
        let connector = connector.and_then(|id| catalogue.connector(id));
        let said = names.connector_end.as_deref();
        Chosen {
            body: names
                .body
                .as_deref()
                .and_then(|id| catalogue.body(id))
                .map(|body| body.seen_from(names.body_side.as_deref())),
            adapter: names
                .adapter
                .as_deref()
                .and_then(|id| catalogue.adapter(id)),
            connector,
            end: connector.and_then(|part| part.end_for(conductor, said).ok()),
            shield_part: names
                .shield_part
                .as_deref()
                .and_then(|id| catalogue.shield_part(id)),
            seal: names.seal.as_deref().and_then(|id| catalogue.seal(id)),
        }
    }

    /// Part whose bore sits on the insulation, with its ranges: the adapter if there is one, else the body.
    pub fn on_insulation(&self) -> Option<(&'c Head, &'c [Fits])> {
        let adapter = self.adapter.map(|a| (&a.head, a.fits.as_slice()));
        adapter.or_else(|| self.body.map(|b| (&b.head, b.fits.as_slice())))
    }

    /// Connector with the end that takes this leg, if both are known.
    pub fn grip(&self) -> Option<(&'c Connector, &'c ConnectorEnd)> {
        self.connector.zip(self.end)
    }

    /// Reason why no end of the connector is known to take a leg; `None` if one is, or the connector is open.
    pub fn no_end(&self, leg: &Leg) -> Option<ConnectorSaid> {
        let connector = self.connector.filter(|_| self.end.is_none())?;
        let conductor = leg.cable.conductor;
        let said = leg.parts.connector_end.as_deref();
        let why = connector.end_for(conductor, said).err()?;
        Some(connector.no_end(&why, conductor))
    }
}

/// Diameter of an end for a range.
///
/// # Errors
/// The missing fact.
pub fn diameter_for(leg: &Leg, survey: &EndSurvey, fits: &Fits) -> Result<Known, DiameterSaid> {
    let Some(diameter) = survey.diameters.get(&fits.over) else {
        return Err(missing_reading(fits.over, survey));
    };
    match fits.at_degc {
        None => Ok(diameter.known),
        Some(at_degc) => at_temperature(leg, fits.over, diameter, at_degc),
    }
}

fn missing_reading(over: Layer, survey: &EndSurvey) -> DiameterSaid {
    let mut read = survey.diameters.keys();
    match read.find(|layer| Some(**layer) == over.outer()) {
        Some(other) => DiameterSaid::MeasuredOverScreen {
            read: *other,
            range: over,
        },
        None => DiameterSaid::NotMeasuredOver { layer: over },
    }
}

/// Diameter at the temperature for which a range is stated.
///
/// d(T) = d · (1 + α · (T − T_read)), with α between its stated bounds and T_read between the temperatures of the readings.
fn at_temperature(
    leg: &Leg,
    over: Layer,
    diameter: &Diameter,
    at_degc: f64,
) -> Result<Known, DiameterSaid> {
    let Some((coldest, warmest)) = diameter.degc else {
        return Err(DiameterSaid::ReadingHasNoTemperature { at_degc });
    };
    if coldest == at_degc && warmest == at_degc {
        return Ok(diameter.known);
    }
    if over != Layer::Insulation {
        return Err(DiameterSaid::ExpansionNotKnown {
            at_degc,
            coldest_degc: coldest,
            warmest_degc: warmest,
        });
    }
    let Some((alpha_least, alpha_greatest)) = leg.expansion_per_k else {
        return Err(DiameterSaid::ExpansionNotStated {
            at_degc,
            coldest_degc: coldest,
            warmest_degc: warmest,
        });
    };
    let shift = |t: f64, alpha: f64| alpha * (at_degc - t);
    let corners = [
        shift(coldest, alpha_least),
        shift(coldest, alpha_greatest),
        shift(warmest, alpha_least),
        shift(warmest, alpha_greatest),
    ];
    let least_ratio = corners.iter().copied().fold(f64::INFINITY, f64::min);
    let greatest_ratio = corners.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let scaled = |length: Length, ratio: f64, round: fn(f64) -> f64| {
        let change = length.nm() as f64 * ratio;
        length + Length::from_nm(round(change) as i64)
    };
    let read = diameter.known.read;
    let least = scaled(read.least(), least_ratio, f64::floor);
    let greatest = scaled(read.greatest(), greatest_ratio, f64::ceil);
    match Interval::new(least, greatest) {
        Some(read) => Ok(Known {
            read,
            error: diameter.known.error,
        }),
        None => Err(DiameterSaid::ExpansionTurnsItRound),
    }
}
