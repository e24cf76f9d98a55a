//! List: all checks, each with the function that answers it.
//!
//! Why its own file: the list is made from the one table of checks (`limit::check_list`); nothing is listed twice.
//!
//! Invariants: a check with its own file is the `judge` of that file; checks that differ in constants only are rows of one family.
//!
//! Not here: the facts on which a check rests, and the limits that an owner may set for it (`limit`).

use super::{EndInputs, Inputs, LegInputs, layer, stress, withstand};
use crate::limit::{Ruling, check_list};

/// One question about a joint.
#[derive(Clone, Copy)]
pub struct Check {
    /// Permanent name.
    pub slug: &'static str,
    /// Function that answers it.
    pub judge: Judge,
}

/// Scope of a check: it is asked once for each.
#[derive(Clone, Copy)]
pub enum Judge {
    /// The whole joint.
    Joint(fn(&Inputs<'_>) -> Vec<Ruling>),
    /// Each leg.
    Leg(fn(&Inputs<'_>, &LegInputs<'_>) -> Vec<Ruling>),
    /// Each end.
    End(fn(&Inputs<'_>, &LegInputs<'_>, &EndInputs) -> Vec<Ruling>),
}

/// Function that answers a row of the table.
macro_rules! judge {
    ($slug:ident, $asked:ident) => {
        Judge::$asked(super::$slug::judge)
    };
    ($slug:ident, Leg, $family:ident($($row:ident),+)) => {
        Judge::Leg(|inputs, leg| {
            let rows = [$($family::Row::$row),+];
            let rule = |row| $family::rule(stringify!($slug), row, inputs, leg);
            rows.into_iter().flat_map(rule).collect()
        })
    };
}

/// List made from the rows of the table.
macro_rules! list {
    ($($slug:ident, $asked:ident, $rests:ident, $owner:ident, $lengths:ident
        $(, $family:ident($($row:ident),+))?;)*) => {
        /// All checks, in the order of their names.
        pub const CHECKS: &[Check] = &[$(Check {
            slug: stringify!($slug),
            judge: judge!($slug, $asked $(, $family($($row),+))?),
        }),*];
    };
}

check_list!(list);

impl Inputs<'_> {
    /// All rulings of a check.
    pub fn ask(&self, check: &Check) -> Vec<Ruling> {
        let legs = self.legs.iter();
        match check.judge {
            Judge::Joint(judge) => judge(self),
            Judge::Leg(judge) => legs.flat_map(|leg| judge(self, leg)).collect(),
            Judge::End(judge) => legs
                .flat_map(|leg| leg.ends.iter().flat_map(move |end| judge(self, leg, end)))
                .collect(),
        }
    }
}
