//! Can water creep along a wire, strap, braid or lead under the seal?
//!
//! What passes out under the seal must carry a blocked stretch, and the seal must take it.
//!
//! Source: the instructions of the shield part and of the seal.

use super::{Check, Inputs, Judge, LegInputs};
use crate::catalogue::Head;
use crate::limit::{Ask, Fact, Ruling, Word, fact_table as fact};

pub(super) const CHECK: Check = Check {
    slug: "wick_path",
    question: "Is every wire, strap, braid or lead that passes under the seal blocked against water?",
    judge: Judge::Leg(judge),
};

const HINT: &str = "Stop: water creeps along it into the joint. Use a part with a blocked stretch, and a seal that takes it.";

fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let (Some(seal), Some(part)) = (leg.chosen.seal, leg.chosen.shield_part) else {
        return Vec::new();
    };
    let (id, seal_id) = (&part.head.id, &seal.head.id);
    let says = Says { leg };
    match part.passes_seal {
        None => vec![says.ask(
            format!("whether anything of {id} passes out under the seal its row does not say"),
            format!(
                "Does a wire, strap, braid or lead of {id} pass out under the seal, and is that stretch blocked against water?"
            ),
            fact::PASSES_SEAL.of(id),
        )],
        Some(false) if leg.leg.bonding == "linked" => vec![says.ask(
            format!(
                "the shield is bonded over a link, and by its row nothing of {id} passes out under the seal"
            ),
            format!(
                "Where does the bonding lead of {id} come out, and is it blocked against water there?"
            ),
            fact::PASSES_SEAL.of(id),
        )],
        Some(false) => vec![says.rule(
            "nothing passes out under the seal",
            "blocked, where something does",
            &part.head,
        )],
        Some(true) => vec![
            says.whether(
                part.blocked,
                ["blocked", "not blocked"],
                (&part.head, &fact::PASSES_SEAL),
                format!("whether the stretch of {id} under the seal is blocked against water its row does not say"),
                format!("Is the stretch of {id} that lies under the seal blocked against water?"),
                format!("{id} passes out under the seal and carries no stretch blocked against water"),
            ),
            says.whether(
                seal.takes_lead,
                ["takes a lead", "takes no lead"],
                (&seal.head, &fact::TAKES_LEAD),
                format!("whether {seal_id} takes a braid or lead under it its row does not say"),
                format!("May a braid or lead come out under {seal_id}?"),
                format!("{id} passes out under {seal_id}, whose paper lets nothing out under it"),
            ),
        ],
    }
}

struct Says<'a> {
    leg: &'a LegInputs<'a>,
}

impl Says<'_> {
    fn ask(&self, why: String, question: String, fact: Ask) -> Ruling {
        let ruling = Ruling::not_judged(CHECK.slug, self.leg.subject(), why);
        ruling.with_hint(format!("Ask: {question}")).asking(fact)
    }

    fn rule(&self, found: &str, permitted: &str, head: &Head) -> Ruling {
        let source = Word::Instructions(head.source().into());
        Ruling::on_words(CHECK.slug, self.leg.subject(), found, permitted, source)
    }

    /// A yes or no of a row: words for both, and what to say where it is open or no.
    fn whether(
        &self,
        said: Option<bool>,
        [yes, no]: [&str; 2],
        (head, fact): (&Head, &'static Fact),
        open: String,
        question: String,
        fails: String,
    ) -> Ruling {
        match said {
            None => self.ask(open, question, fact.of(&head.id)),
            Some(true) => self.rule(yes, yes, head),
            Some(false) => self.rule(no, yes, head).failing(fails, HINT),
        }
    }
}
