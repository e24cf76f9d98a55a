//! Ranges: comparison of an end's diameters with the ranges in a part's paper.

use super::{EndInputs, Inputs, LegInputs};
use crate::catalogue::{Fits, Head};
use crate::fit::diameter_for;
use crate::limit::{Bound, Limit, Question, Reach, Ruling, Word};
use crate::said::{RangeSaid, Read, Said};
use crate::survey::EndSurvey;
use jointwright_units::{Interval, Length, Toward};

/// Part with its ranges, for one check.
pub(super) struct RangedPart<'a> {
    pub check: &'static str,
    pub head: &'a Head,
    pub fits: &'a [Fits],
}

impl RangedPart<'_> {
    /// Rulings on the ranges of its bore.
    pub fn bore(&self, inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
        self.rule(true, inputs, leg, end)
    }

    /// Rulings on all its other ranges.
    pub fn mouths(&self, inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
        self.rule(false, inputs, leg, end)
    }

    fn rule(
        &self,
        is_bore: bool,
        inputs: &Inputs<'_>,
        leg: &LegInputs<'_>,
        end: &EndInputs,
    ) -> Vec<Ruling> {
        let id = &self.head.id;
        let rows = self.fits.iter().filter(|f| f.is_bore() == is_bore);
        rows.map(|fits| {
            let subject = leg.subject_of(end);
            let layer = fits.over;
            let place = || Said::aside(id, &fits.at);
            match diameter_for(leg.leg, &end.survey, fits) {
                Err(why) => Ruling::not_judged(self.check, subject, Said::of(place(), why))
                    .with_hint(RangeSaid::MeasureOverItself { layer })
                    .asking_all(
                        leg.missing(inputs)
                            .diameter(end.id.phase, &end.survey, fits),
                    ),
                Ok(value)
                    if is_bore
                        && is_not_read_around(&end.survey, fits)
                        && fits.range.covers(value.read) =>
                {
                    let why = Said::of(place(), RangeSaid::ThinnestNotRead);
                    Ruling::not_judged(self.check, subject, why)
                        .with_hint(RangeSaid::ReadFourOver { layer })
                        .asking(leg.missing(inputs).reading(end.id.phase, layer))
                }
                Ok(value) => Question {
                    check: self.check,
                    what: RangeSaid::OverFor {
                        subject: subject.clone(),
                        layer,
                        at: fits.at.clone(),
                        part: id.clone(),
                    }
                    .into(),
                    subject,
                    value,
                    limit: &Limit {
                        bound: Bound::Within(fits.range),
                        word: Word::Instructions(self.head.source().into()),
                    },
                    reach: Reach::Instructions,
                    hint: misfit(id, fits.range, value.read).into(),
                }
                .rule(),
            }
        })
        .collect()
    }
}

/// Whether the readings of the layer may have missed its thinnest place.
fn is_not_read_around(survey: &EndSurvey, fits: &Fits) -> bool {
    let diameter = survey.diameters.get(&fits.over);
    diameter.is_some_and(|d| !d.is_read_around)
}

/// Hint to the crew that a part is too large or too small for a leg.
fn misfit(id: &str, range: Interval, read: Interval) -> RangeSaid {
    let part = id.to_owned();
    let longer = |by: Length| Read::diameter(by, Toward::Longer);
    if read.least() < range.least() {
        let by = longer(range.least() - read.least());
        RangeSaid::TooLarge { part, by }
    } else {
        let by = longer(read.greatest() - range.greatest());
        RangeSaid::TooSmall { part, by }
    }
}
