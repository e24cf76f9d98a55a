//! Intended use: comparison of the uses in a part's paper with the use in the job.

use crate::catalogue::Head;
use crate::limit::{Datum, Ruling, Subject, Word};
use crate::said::{ChoiceSaid, Said, Served, ServesFor};

/// Choice of the job, and the choices that a part's instructions name.
pub(super) struct Listed<'a> {
    pub check: &'static str,
    pub subject: Subject,
    pub part: &'a Head,
    pub what: ServesFor,
    pub found: Served,
    pub permitted: Vec<Served>,
    pub hint: Said,
}

impl Listed<'_> {
    /// Rules on the choice.
    pub fn rule(self) -> Ruling {
        let source = Word::Instructions(self.part.source().into());
        let (found, permitted) = (self.found, self.permitted);
        let is_named = permitted.contains(&found);
        let why = ChoiceSaid::ServesOthers {
            part: self.part.id.clone(),
            what: self.what,
            permitted: permitted.clone(),
            found: found.clone(),
        };
        let (found, permitted) = (ChoiceSaid::Is { found }, ChoiceSaid::OneOf { permitted });
        let ruling = Ruling::on_words(self.check, self.subject, found, permitted, source);
        if is_named {
            ruling
        } else {
            ruling.failing(why, self.hint)
        }
    }
}

/// Highest voltage of the system, and the rating of a part.
pub(super) struct Rated<'a> {
    pub check: &'static str,
    pub subject: Subject,
    pub part: &'a Head,
    pub rated_kv: f64,
    pub highest_kv: f64,
}

impl Rated<'_> {
    /// Rules on the voltage.
    pub fn rule(self) -> Ruling {
        let (highest_kv, rated_kv) = (self.highest_kv, self.rated_kv);
        let source = Word::Instructions(self.part.source().into());
        let ruling = Ruling {
            value: Some(Datum::Number(highest_kv)),
            limit: Some(Datum::Number(rated_kv)),
            unit: Some("kV"),
            margin: Some(rated_kv - highest_kv),
            ..Ruling::on_words(self.check, self.subject, "", "", source)
        };
        if highest_kv <= rated_kv {
            return ruling;
        }
        let why = ChoiceSaid::RatedBelow {
            part: self.part.id.clone(),
            rated_kv,
            highest_kv,
        };
        ruling.failing(why, ChoiceSaid::UseRated)
    }
}
