//! Pressure: the interface pressure of each part's rubber on one end, and the worst that its instructions allow.
//!
//! Why its own room: a pressure needs constants of the row, the age and warmth of the store, and a root; checks compare and never solve.
//!
//! Invariants:
//! - Nothing about a part is guessed: a fact that its row does not state is asked for.
//! - The least reading gives the least pressure, the greatest reading the greatest stretch.
//! - A part past its date has no pressure and no diameter.
//! - Ends may be free or of fixed length: the lower pressure counts.
//!
//! Assumes: a round cable of one diameter, rigid and smooth; each slice of the body acts like a long tube of the same rings; the rubber has one temperature, the cable another.
//! The imprint of hot insulation is outside the model.
//!
//! Not here: limits of pressure (`checks`).
//!
//! Source: `docs/theory/pressure.md`.

mod comparison;
mod heat;
mod kit;
mod sit;
mod wall;

pub(crate) use comparison::Sitting;
pub use heat::{Heat, Warmth};
pub use kit::{Aged, Kit};
pub use sit::{Compared, Sit, Today};
pub use wall::{Slice, Wall};

use crate::cable::Layer;
use crate::catalogue::{Fits, Head, Rubber};
use crate::cutback::Cutback;
use crate::end::EndId;
use crate::fit::{Chosen, diameter_for};
use crate::job::{Job, Leg, Lot};
use crate::limit::Known;
use crate::said::{CutSaid, On, PlaceEnds, PressureHeat, PressureSeat, Read, Said};
use crate::section::Unknown;
use crate::survey::EndSurvey;
use crate::underlay::past_edge;
use jointwright_units::{Interval, Station, Toward};

/// One end and its parts.
#[derive(Clone, Copy, Debug)]
pub struct FittedEnd<'a> {
    /// Job.
    pub job: &'a Job,
    /// Leg.
    pub leg: &'a Leg,
    /// End.
    pub end: &'a EndId,
    /// Parts of the leg.
    pub chosen: &'a Chosen<'a>,
    /// Cutbacks of the leg.
    pub cutback: &'a Cutback,
    /// Readings of the end.
    pub survey: &'a EndSurvey,
}

/// Result for one part on one end.
#[derive(Clone, Debug, PartialEq)]
pub enum Pressed {
    /// Nobody asked, or there is no such part.
    NotAsked,
    /// The part is past its date.
    Past(Said),
    /// A fact is missing.
    Unknown(Unknown),
    /// The part does not touch its seat.
    Loose(Said),
    /// The known values cannot be computed.
    Refused(Said),
    /// Computed.
    Done(Box<Sit>),
}

/// Results for the parts of one end.
#[derive(Clone, Debug, PartialEq)]
pub struct EndPressure {
    /// Body, on the insulation or on the adapter.
    pub body: Pressed,
    /// Adapter, on the insulation.
    pub adapter: Pressed,
    /// Seal, on the jacket.
    pub seal: Pressed,
}

impl EndPressure {
    /// Results of an end that nobody asked about.
    pub const NOT_ASKED: EndPressure = EndPressure {
        body: Pressed::NotAsked,
        adapter: Pressed::NotAsked,
        seal: Pressed::NotAsked,
    };
}

/// Seat of a part: its radii here, and the radii that the instructions allow, m.
#[derive(Clone, Debug, PartialEq)]
pub struct Seat {
    /// Layer or part that is the seat.
    pub on: On,
    /// Least and greatest radius here, m.
    pub here_m: (f64, f64),
    /// Error of either radius here, m.
    pub error_m: f64,
    /// Least and greatest radius that the instructions allow, m.
    pub allowed_m: (f64, f64),
    /// Temperatures at which the radii here hold, degrees Celsius, if known.
    pub degc: Option<(f64, f64)>,
    /// Whether the readings show the thinnest place; a tape or too few diameters do not.
    pub is_read_around: bool,
}

/// Facts from which the pressures of one end are computed, or the answer if there is nothing to compute.
#[derive(Clone, Debug, PartialEq)]
pub struct Input {
    body: Result<Box<sit::Case>, Pressed>,
    adapter: Result<Box<sit::Case>, Pressed>,
    seal: Result<Box<sit::Case>, Pressed>,
}

/// Computes the pressures of one end.
pub fn press(input: &Input) -> EndPressure {
    let pressed = |part: &Result<Box<sit::Case>, Pressed>| match part {
        Err(answer) => answer.clone(),
        Ok(case) => match sit::sit(case) {
            Ok(sit) => Pressed::Done(Box::new(sit)),
            Err(why) => Pressed::Refused(Said::of(&case.head.id, why)),
        },
    };
    EndPressure {
        body: pressed(&input.body),
        adapter: pressed(&input.adapter),
        seal: pressed(&input.seal),
    }
}

/// Gathers the facts of one end.
pub fn read(subject: &FittedEnd<'_>) -> Input {
    let chosen = subject.chosen;
    let body = chosen.body.map_or(Err(Pressed::NotAsked), |body| {
        let part = Part {
            kind: "body",
            head: &body.head,
            rubber: body.rubber.as_ref(),
        };
        part.on(subject, body_seat(subject), || wall::of_body(body))
    });
    let adapter = chosen.adapter.map_or(Err(Pressed::NotAsked), |adapter| {
        let part = Part {
            kind: "adapter",
            head: &adapter.head,
            rubber: adapter.rubber.as_ref(),
        };
        let seat = bore(&adapter.fits, &adapter.head.id).and_then(|fits| cable_seat(subject, fits));
        let wall = || wall::even(&adapter.head.id, adapter.rubber.as_ref());
        part.on(subject, seat, wall)
    });
    let seal = chosen.seal.map_or(Err(Pressed::NotAsked), |seal| {
        let part = Part {
            kind: "seal",
            head: &seal.head,
            rubber: seal.rubber.as_ref(),
        };
        let over = seal.fits.iter().find(|fits| fits.over == Layer::Jacket);
        let seat = over
            .ok_or_else(|| no_range(&seal.head.id, Layer::Jacket))
            .and_then(|fits| cable_seat(subject, fits));
        let wall = || wall::even(&seal.head.id, seal.rubber.as_ref());
        part.on(subject, seat, wall)
    });
    Input {
        body,
        adapter,
        seal,
    }
}

/// One part of rubber.
struct Part<'a> {
    kind: &'static str,
    head: &'a Head,
    rubber: Option<&'a Rubber>,
}

impl Part<'_> {
    fn on(
        &self,
        subject: &FittedEnd<'_>,
        seat: Result<Seat, Unknown>,
        wall: impl FnOnce() -> Result<Wall, Pressed>,
    ) -> Result<Box<sit::Case>, Pressed> {
        let lots: Vec<&Lot> = subject.job.lots_of(subject.end, self.kind).collect();
        // Nothing else is asked about a part past its date: no constant and no reading makes it younger.
        if let Some(why) = kit::past(subject.job.date, self.head, &lots) {
            return Err(Pressed::Past(why.into()));
        }
        let id = &self.head.id;
        let Some(rubber) = self.rubber else {
            return Err(Pressed::Unknown(relaxed_unknown(id)));
        };
        let (seat, wall) = match (seat, wall()) {
            (_, Err(none)) => return Err(none),
            (Err(unknown), _) => return Err(Pressed::Unknown(unknown)),
            (Ok(seat), Ok(wall)) => (seat, wall),
        };
        let kit = match kit::kit(subject.job.date, self.head, rubber, &lots) {
            Ok(kit) => kit,
            Err(unknown) => return Err(Pressed::Unknown(unknown)),
        };
        if let Some(why) = sit::loose(&seat, &kit, rubber) {
            return Err(Pressed::Loose(Said::of(id, why)));
        }
        if self.kind == "body"
            && let Some(unknown) = ends_early(subject)
        {
            return Err(Pressed::Unknown(unknown));
        }
        let heat = if self.kind == "seal" {
            Err(Unknown::plain(PressureHeat::JacketExpansionNotKnown))
        } else {
            heat::heat(subject.job, subject.leg, id, rubber, &seat)
        };
        let along = if self.kind == "body" {
            sit::SeatSpan::of_body(subject)
        } else {
            sit::SeatSpan::whole()
        };
        Ok(Box::new(sit::Case {
            head: self.head.clone(),
            rubber: rubber.clone(),
            seat,
            wall,
            kit,
            heat,
            along,
            limits: sit::Limits::of(subject.job, self.head, rubber, self.kind),
        }))
    }
}

/// Range of a part's bore over the insulation.
fn bore<'f>(fits: &'f [Fits], id: &str) -> Result<&'f Fits, Unknown> {
    Fits::bore_over(fits, Layer::Insulation).ok_or_else(|| no_range(id, Layer::Insulation))
}

/// Missing fact about a body's seat where its adapter ends, or may end, before the edge of the insulation screen.
fn ends_early(subject: &FittedEnd<'_>) -> Option<Unknown> {
    let id = &subject.chosen.adapter?.head.id;
    let part = id.clone();
    let why = match past_edge(subject.cutback) {
        Ok(past) if past >= Station::ZERO => return None,
        Ok(past) => PressureSeat::EndsBefore {
            part,
            by: Read::along((-past).ceil(), Toward::Longer),
        }
        .into(),
        Err(why) => Said::of(CutSaid::WhereLies { part }, why),
    };
    Some(Unknown::plain(why))
}

/// Seat of the body: the insulation, or the adapter if there is one.
fn body_seat(subject: &FittedEnd<'_>) -> Result<Seat, Unknown> {
    let Some(body) = subject.chosen.body else {
        return Err(Unknown::plain(CutSaid::BodyLeftOpen));
    };
    let fits = bore(&body.fits, &body.head.id)?;
    let Some(adapter) = subject.chosen.adapter else {
        return cable_seat(subject, fits);
    };
    let below = cable_seat(subject, bore(&adapter.fits, &adapter.head.id)?)?;
    let (outside, span) = (half(adapter.outside), below.allowed_m.1 - below.allowed_m.0);
    // Linear between the stated radii, never outside them. If the range has no width, both radii are possible.
    let share = |radius: f64, otherwise: f64| {
        let share = if span > 0.0 {
            (radius - below.allowed_m.0) / span
        } else {
            otherwise
        };
        outside.0 + share.clamp(0.0, 1.0) * (outside.1 - outside.0)
    };
    // Outside radius of an adapter that keeps its volume on that cable; `None` if its relaxed diameters are not known.
    let stretched = |radius: f64| {
        let rubber = adapter.rubber.as_ref()?;
        let (bore, outside) = (
            rubber.relaxed_bore.m() / 2.0,
            rubber.relaxed_outside?.m() / 2.0,
        );
        Some((radius * radius + outside * outside - bore * bore).sqrt())
    };
    // The row states the outside for cables in its range; for another only the kept volume tells it.
    let least_m = below.here_m.0 - below.error_m;
    let greatest_m = below.here_m.1 + below.error_m;
    let is_in_range = least_m >= below.allowed_m.0 && greatest_m <= below.allowed_m.1;
    if !is_in_range && stretched(below.here_m.0).is_none() {
        let part = adapter.head.id.clone();
        return Err(Unknown::plain(PressureSeat::AdapterOutsideNotKnown {
            part,
        }));
    }
    let least = |radius: f64| {
        let by_row = share(radius, 0.0);
        stretched(radius).map_or(by_row, |other| by_row.min(other))
    };
    let greatest = |radius: f64| {
        let by_row = share(radius, 1.0);
        stretched(radius).map_or(by_row, |other| by_row.max(other))
    };
    let slope = if span > 0.0 {
        (outside.1 - outside.0) / span
    } else {
        0.0
    };
    Ok(Seat {
        on: On::Adapter(adapter.head.id.clone()),
        here_m: (least(below.here_m.0), greatest(below.here_m.1)),
        error_m: below.error_m * slope,
        allowed_m: half(fits.range),
        degc: below.degc,
        is_read_around: below.is_read_around,
    })
}

/// Seat on the cable layer that a range is over.
fn cable_seat(subject: &FittedEnd<'_>, fits: &Fits) -> Result<Seat, Unknown> {
    let known: Known = diameter_for(subject.leg, subject.survey, fits).map_err(Unknown::plain)?;
    let read = subject.survey.diameters.get(&fits.over);
    if fits.at_degc.is_none() {
        read_at_the_place(subject, fits, read.and_then(|diameter| diameter.degc))?;
    }
    Ok(Seat {
        on: On::Layer(fits.over),
        here_m: half(known.read),
        error_m: known.error.m() / 2.0,
        allowed_m: half(fits.range),
        degc: fits
            .at_degc
            .map(|degc| (degc, degc))
            .or(read.and_then(|diameter| diameter.degc)),
        // A tape is enough for any range but a bore's.
        is_read_around: !fits.is_bore() || read.is_some_and(|diameter| diameter.is_read_around),
    })
}

/// A range that states no temperature holds at the temperatures of the place; a cable that was read colder or warmer may have another size there.
fn read_at_the_place(
    subject: &FittedEnd<'_>,
    fits: &Fits,
    read_degc: Option<(f64, f64)>,
) -> Result<(), Unknown> {
    let (leg, layer) = (subject.leg.id.clone(), fits.over);
    let Some(read) = read_degc else {
        return Err(Unknown::new(
            PressureSeat::ReadingWithoutDegc {
                leg: leg.clone(),
                layer,
            },
            [PressureSeat::AskDegcOfReading { leg, layer }],
        ));
    };
    let missing = match subject.job.place.ambient_degc {
        (Some(least), Some(greatest)) if read.0 < least || read.1 > greatest => {
            return Err(Unknown::new(
                PressureSeat::ReadOutsidePlace {
                    leg,
                    layer,
                    read_degc: if read.0 < least { read.0 } else { read.1 },
                    least_degc: least,
                    greatest_degc: greatest,
                },
                [PressureSeat::AskDegcOfRange { layer }],
            ));
        }
        (Some(_), Some(_)) => return Ok(()),
        (None, Some(_)) => PlaceEnds::Lowest,
        (Some(_), None) => PlaceEnds::Highest,
        (None, None) => PlaceEnds::Both,
    };
    Err(Unknown::new(
        PressureSeat::PlaceNotStated {
            leg,
            layer,
            read_degc: read.0,
            missing,
        },
        [PressureSeat::AskPlace(missing)],
    ))
}

/// Missing fact: the relaxed dimensions of a part.
fn relaxed_unknown(id: &str) -> Unknown {
    let part = || id.to_owned();
    Unknown::new(
        PressureSeat::RelaxedNotKnown { part: part() },
        [
            PressureSeat::AskRelaxed { part: part() },
            PressureSeat::AskLaw { part: part() },
            PressureSeat::AskHold { part: part() },
        ],
    )
}

fn no_range(id: &str, layer: Layer) -> Unknown {
    let part = id.to_owned();
    Unknown::plain(CutSaid::NoRangeOver { part, layer })
}

fn half(diameter: Interval) -> (f64, f64) {
    (diameter.least().m() / 2.0, diameter.greatest().m() / 2.0)
}
