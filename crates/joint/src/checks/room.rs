//! Room: rulings on lengths that were measured around a leg.

use super::LegInputs;
use crate::limit::{Question, Ruling, fact_table as fact};
use crate::said::ParkSaid;
use jointwright_units::Length;

impl LegInputs<'_> {
    /// Rules on a length measured around the leg.
    ///
    /// A length outside its limit fails; a length inside it is judged only if its error is written down.
    pub(super) fn on_room(&self, question: Question<'_>) -> Ruling {
        let mut question = question;
        let Some(error) = self.leg.room.error else {
            let breaks = question.limit.bound.margin(question.value.read) < Length::ZERO;
            let (check, subject) = (question.check, question.subject.clone());
            return if breaks {
                question.rule()
            } else {
                let why = ParkSaid::ErrorNotWritten;
                let ask = fact::ROOM_ERROR.of(&self.leg.id);
                Ruling::not_judged(check, subject, why).asking(ask)
            };
        };
        question.value.error = error;
        let mut ruling = question.rule();
        if !ruling.asks.is_empty() {
            ruling.asks = vec![fact::ROOM_ERROR.of(&self.leg.id)];
        }
        ruling
    }
}
