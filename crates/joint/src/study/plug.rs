//! Plug: the fields of the tapered plug that carries a separable leg's body, over the film that its fit leaves.
//!
//! Nothing of the plug is cut on site: the row states the film's thickness, and no other limit applies to it.

use super::gap::{Across, inception};
use super::solver::{Value, carried, meshed, outcome};
use crate::catalogue::{Body, Taper};
use crate::said::Said;
use crate::section::{
    Drawn, FILM_LEAST_M, NotDrawn, Quantity, TaperState, Unknown, draw_taper, taper_questions,
};
use jointwright_numerics::field::{Prepared, Solved};
use jointwright_numerics::gas::Curve;
use std::collections::BTreeMap;

/// Result of the study of a plug.
#[derive(Clone, Debug, Default)]
pub enum PlugStudy {
    /// There is no plug, or nobody asked.
    #[default]
    None,
    /// A fact is missing.
    Unknown(Unknown),
    /// The known values make no section, or the section could not be solved.
    Refused(Said),
    /// Solved.
    Done(Box<PlugWorst>),
}

/// Worst values over the film.
#[derive(Clone, Debug)]
pub struct PlugWorst {
    /// Fields, each with the film at its worst value.
    pub seen: BTreeMap<Quantity, (Value, TaperState)>,
    /// Film with its filler, in the state with the least inception voltage; `None` if no film is thick enough to be drawn.
    pub gap_filled: Option<(Vec<Across>, TaperState)>,
    /// The same film without filler.
    pub gap_empty: Option<(Vec<Across>, TaperState)>,
    /// Whether the row calls the filler permanent.
    pub is_permanent: bool,
    /// Number of states that were solved.
    pub n_solved: usize,
}

/// Computes the study of a body's plug.
pub fn study_plug(body: &Body) -> PlugStudy {
    let Some(taper) = &body.taper else {
        return taper_questions(body).map_or(PlugStudy::None, PlugStudy::Unknown);
    };
    match worst(taper) {
        Ok(worst) => PlugStudy::Done(Box::new(worst)),
        Err(NotDrawn::Unknown(unknown)) => PlugStudy::Unknown(unknown),
        Err(NotDrawn::Refused(why)) => PlugStudy::Refused(why),
    }
}

fn worst(taper: &Taper) -> Result<PlugWorst, NotDrawn> {
    let mut worst = PlugWorst {
        seen: BTreeMap::new(),
        gap_filled: None,
        gap_empty: None,
        is_permanent: taper
            .filler
            .as_ref()
            .is_some_and(|filler| filler.is_permanent),
        n_solved: 0,
    };
    let film = taper.film_thickness;
    let (least, greatest) = (film.least().m(), film.greatest().m());
    // Neither the voltage across a film nor its breakdown field shows alone which thickness is worst.
    let mut states: Vec<(f64, bool)> = vec![(greatest, true)];
    if taper.filler.is_some() {
        states.push((greatest, false));
    }
    states.push(((least + greatest) / 2.0, true));
    if least < FILM_LEAST_M {
        // Without a film the conductors see the plug itself.
        states.push((0.0, true));
    } else {
        states.push((least, true));
    }
    let mut known = None;
    for (index, &(film_thickness_m, is_empty)) in states.iter().enumerate() {
        if states[..index].contains(&(film_thickness_m, is_empty)) {
            continue;
        }
        let state = TaperState {
            film_thickness_m,
            is_empty,
        };
        worst.add(taper, state, &mut known)?;
    }
    Ok(worst)
}

/// Solution on the mesh of the state before, or on a new mesh that is kept.
fn solved(known: &mut Option<Prepared>, drawn: &Drawn) -> Result<Solved, Said> {
    if let Some(prepared) = known
        && let Some(solved) = carried(prepared, drawn)?
    {
        return Ok(solved);
    }
    let (prepared, solved) = meshed(known.as_ref(), drawn)?;
    *known = Some(prepared);
    Ok(solved)
}

impl PlugWorst {
    fn add(
        &mut self,
        taper: &Taper,
        state: TaperState,
        known: &mut Option<Prepared>,
    ) -> Result<(), NotDrawn> {
        let drawn = draw_taper(taper, &state)?;
        let solved = solved(known, &drawn).map_err(NotDrawn::Refused)?;
        self.n_solved += 1;
        let mut outcome = outcome(&drawn, &solved.answers, 1.0);
        // A plug has no edge of a screen.
        outcome.values.remove(&Quantity::ScreenEdge);
        for (quantity, value) in outcome.values {
            let greatest = self.seen.entry(quantity).or_insert((value, state));
            if value.per_volt_per_m > greatest.0.per_volt_per_m {
                *greatest = (value, state);
            }
        }
        if outcome.gap.is_empty() {
            return Ok(());
        }
        let slot = if state.is_empty {
            &mut self.gap_empty
        } else {
            &mut self.gap_filled
        };
        let onset = |gap: &[Across]| {
            inception(gap, Curve::LowerOfBoth).map_or(f64::INFINITY, |volts| volts.v())
        };
        if slot
            .as_ref()
            .is_none_or(|(gap, _)| onset(&outcome.gap) < onset(gap))
        {
            *slot = Some((outcome.gap, state));
        }
        Ok(())
    }

    /// Film as the check judges it: empty, unless the row calls the filler permanent.
    pub fn judged_gap(&self) -> Option<&[Across]> {
        let gap = if self.is_permanent {
            self.gap_filled.as_ref()
        } else {
            self.gap_empty.as_ref().or(self.gap_filled.as_ref())
        };
        gap.map(|(gap, _)| gap.as_slice())
    }
}
