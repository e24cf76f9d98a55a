//! Can water creep along a wire, strap, braid or lead under the seal?
//!
//! A wire, strap, braid or lead that passes out under the seal must have a blocked stretch, and the seal must be made for it.
//!
//! Source: the instructions of the shield part and of the seal.

use super::{Inputs, LegInputs, slug};
use crate::catalogue::Head;
use crate::limit::{Ask, Fact, Ruling, Word, fact_table as fact};
use crate::said::{Said, WickSaid};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let (Some(seal), Some(part)) = (leg.chosen.seal, leg.chosen.shield_part) else {
        return Vec::new();
    };
    let (id, seal_id) = (&part.head.id, &seal.head.id);
    let part_id = || id.clone();
    let says = Says { leg };
    match part.passes_seal {
        None => vec![says.ask(
            WickSaid::PassesNotSaid { part: part_id() },
            WickSaid::AskPasses { part: part_id() },
            fact::PASSES_SEAL.of(id),
        )],
        Some(false) if leg.leg.bonding == "linked" => vec![says.ask(
            WickSaid::NothingByItsRow { part: part_id() },
            WickSaid::AskWhereLeadComesOut { part: part_id() },
            fact::PASSES_SEAL.of(id),
        )],
        Some(false) => vec![says.rule(
            WickSaid::NothingPasses,
            WickSaid::BlockedWhereSomethingDoes,
            &part.head,
        )],
        Some(true) => vec![
            says.whether(
                part.blocked,
                [WickSaid::Blocked, WickSaid::NotBlocked],
                (&part.head, &fact::PASSES_SEAL),
                WickSaid::BlockedNotSaid { part: part_id() },
                WickSaid::AskBlocked { part: part_id() },
                WickSaid::PassesUnblocked { part: part_id() },
            ),
            says.whether(
                seal.takes_bonding_lead,
                [WickSaid::TakesLead, WickSaid::TakesNoLead],
                (&seal.head, &fact::TAKES_LEAD),
                WickSaid::TakesLeadNotSaid {
                    seal: seal_id.clone(),
                },
                WickSaid::AskTakesLead {
                    seal: seal_id.clone(),
                },
                WickSaid::LetsNothingOut {
                    part: part_id(),
                    seal: seal_id.clone(),
                },
            ),
        ],
    }
}

struct Says<'a> {
    leg: &'a LegInputs<'a>,
}

impl Says<'_> {
    fn ask(&self, why: WickSaid, question: WickSaid, fact: Ask) -> Ruling {
        let ruling = Ruling::not_judged(CHECK, self.leg.subject(), why);
        ruling
            .with_hint(Said::Questions(vec![question.into()]))
            .asking(fact)
    }

    fn rule(&self, found: WickSaid, permitted: WickSaid, head: &Head) -> Ruling {
        let source = Word::Instructions(head.source().into());
        Ruling::on_words(CHECK, self.leg.subject(), found, permitted, source)
    }

    /// Rules on a yes or no of a row, with words for both, and with messages for an open answer and for no.
    fn whether(
        &self,
        said: Option<bool>,
        [yes, no]: [WickSaid; 2],
        (head, fact): (&Head, &'static Fact),
        open: WickSaid,
        question: WickSaid,
        fails: WickSaid,
    ) -> Ruling {
        match said {
            None => self.ask(open, question, fact.of(&head.id)),
            Some(true) => self.rule(yes.clone(), yes, head),
            Some(false) => self
                .rule(no, yes, head)
                .failing(fails, WickSaid::UseBlocked),
        }
    }
}
