//! Band: least, nominal and greatest value of a length, with its sources.
//!
//! Invariants: a band has the worst sureness of all rows that entered.

use super::Sure;
use jointwright_units::{Interval, Length};

/// Least, nominal and greatest value of a length, with its sources.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Band {
    /// Least.
    pub least: Length,
    /// Nominal.
    pub nominal: Length,
    /// Greatest.
    pub greatest: Length,
    /// Worst sureness of all rows that entered.
    pub sure: Sure,
    /// Source of all rows that entered, each once, from the inside out.
    pub sources: Vec<String>,
}

impl Band {
    /// Band that the papers state.
    pub(super) fn papers(least: Length, nominal: Length, greatest: Length) -> Band {
        Band {
            least,
            nominal,
            greatest,
            sure: Sure::Papers,
            sources: vec!["the cable's papers".to_owned()],
        }
    }

    /// Band of one row.
    pub(super) fn row(
        least: Length,
        nominal: Length,
        greatest: Length,
        sure: Sure,
        source: &str,
    ) -> Band {
        Band {
            least,
            nominal,
            greatest,
            sure,
            sources: vec![source.to_owned()],
        }
    }

    pub(super) fn stated(interval: Interval) -> Band {
        let (least, greatest) = (interval.least(), interval.greatest());
        let middle = Length::from_nm((least + greatest).nm().div_euclid(2));
        Band::papers(least, middle, greatest)
    }

    /// Least to greatest; of a band in the wrong order, the hull of its three values.
    pub fn interval(&self) -> Interval {
        Interval::hull([self.least, self.nominal, self.greatest]).expect("three values have a hull")
    }

    /// Diameter over a layer of `thickness` on this diameter.
    pub(super) fn under_layer(self, thickness: &Band) -> Band {
        let mut sources = self.sources;
        add_sources(&mut sources, &thickness.sources);
        Band {
            least: self.least + thickness.least * 2,
            nominal: self.nominal + thickness.nominal * 2,
            greatest: self.greatest + thickness.greatest * 2,
            sure: self.sure.worst(thickness.sure),
            sources,
        }
    }
}

/// Adds the sources that are not there yet.
pub(super) fn add_sources(sources: &mut Vec<String>, more: &[String]) {
    for source in more {
        if !sources.contains(source) {
            sources.push(source.clone());
        }
    }
}
