//! Shown: the content of a picture of a leg's field.
//!
//! Why its own file: a picture needs a solution that no check needs; it is solved here when somebody asks for it, not in the drawing.
//!
//! Not here: the drawing itself (`drawing`).

use super::{Point, SolvedStudy, Study};
use crate::said::{Said, StudySaid};
use crate::section::{Drawn, Quantity};
use jointwright_numerics::field::{Solved, along};

/// Number of places along the interface at which its field is given.
const N_ALONG: usize = 400;

/// One leg at the state with the strongest field along its interface.
#[derive(Clone, Debug)]
pub struct Shown {
    /// State that is shown.
    pub state: Point,
    /// Highest continuous voltage between conductor and earth, V.
    pub voltage_v: f64,
    /// Section.
    pub drawn: Drawn,
    /// Solution.
    pub solved: Solved,
    /// Tangential field along the interface: place along the axis, m, and modulus of the field, V/m.
    pub along_v_per_m: Vec<(f64, f64)>,
    /// The same at the worst state that the instructions allow, if it is known.
    pub allowed_v_per_m: Option<Vec<(f64, f64)>>,
}

impl Study {
    /// Solves a leg once more for its picture.
    ///
    /// # Errors
    /// The reason why there is no picture.
    pub fn shown(&self) -> Result<Shown, Said> {
        match self {
            Study::Done(done) => done.shown(),
            Study::Unknown(unknown) => Err(unknown.why.clone()),
            Study::Refused(why) => Err(why.clone()),
            Study::NotAsked => Err(StudySaid::BodyLeftOpen.into()),
        }
    }
}

impl SolvedStudy {
    fn shown(&self) -> Result<Shown, Said> {
        let seen = self.here.seen.get(&Quantity::Interface);
        let state = seen.ok_or(StudySaid::NothingSolved)?.point;
        let (drawn, solved) = self.solved(&state)?;
        let allowed = self.allowed.as_ref().ok();
        let allowed = allowed.and_then(|worst| worst.seen.get(&Quantity::Interface));
        let allowed_v_per_m = match allowed {
            None => None,
            Some(seen) => {
                let (drawn, solved) = self.solved(&seen.point)?;
                Some(strength(&drawn, &solved))
            }
        };
        Ok(Shown {
            state,
            voltage_v: self.input.service.voltage.v(),
            along_v_per_m: strength(&drawn, &solved),
            drawn,
            solved,
            allowed_v_per_m,
        })
    }
}

fn strength(drawn: &Drawn, solved: &Solved) -> Vec<(f64, f64)> {
    let [from, to] = drawn.interface;
    along(&drawn.section, solved, from, to, N_ALONG)
        .into_iter()
        .map(|place| (place.at.z, place.tangential.abs()))
        .collect()
}
