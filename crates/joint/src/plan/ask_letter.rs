//! Ask letter: the questions of a plan as letters, one for each addressee, with blanks to fill in.

use super::asks::{AskDoc, of_words};
use super::document::Plan;
use crate::limit::Who;
use crate::said::{AskSaid, LetterSaid, Of, Said, Wording};
use std::collections::BTreeMap;

/// A letter to one addressee.
#[derive(Clone, Debug, PartialEq)]
pub struct Letter {
    /// Name of its file, without an ending.
    pub name: String,
    /// Text.
    pub text: String,
}

/// An ask, and the things about which one addressee is asked.
type Asked = (AskDoc, Vec<Of>);

impl Plan {
    /// Returns the questions as letters, one for each addressee, with blanks to fill in.
    pub fn letters(&self, wording: &dyn Wording) -> Vec<Letter> {
        let mut by_addressee: BTreeMap<(String, String), Vec<Asked>> = BTreeMap::new();
        // While work stops, nobody is asked for facts that only a cut could show.
        let must_stop = self.must_stop();
        for ask in self
            .asks
            .iter()
            .filter(|ask| !(must_stop && ask.during_work))
        {
            if ask.who != Who::PartMaker {
                let key = (ask.who.name().to_owned(), ask.who_words.clone());
                let entry = by_addressee.entry(key).or_default();
                entry.push((ask.clone(), ask.about.clone()));
                continue;
            }
            // Each part has a maker of its own.
            for of in &ask.about {
                let key = (
                    format!("maker-of-{}", file_name(&of_words(of, wording))),
                    wording.say(&AskSaid::MakerOf(of.clone()).into()),
                );
                let entry = by_addressee.entry(key).or_default();
                entry.push((ask.of_one(of), vec![of.clone()]));
            }
        }
        by_addressee
            .into_iter()
            .map(|((name, to), asks)| Letter {
                text: self.letter(&to.into(), &asks, wording),
                name: format!("ask-{name}"),
            })
            .collect()
    }

    fn letter(&self, to: &Said, asks: &[Asked], wording: &dyn Wording) -> String {
        let mut page = LetterPage {
            text: String::new(),
            wording,
        };
        if let Some(invented) = &self.invented {
            page.line(&format!("*** {invented} ***"));
            page.line("");
        }
        self.letter_head(to, &mut page);
        let mut is_during = false;
        for (n, (ask, of)) in (1..).zip(asks) {
            page.line("");
            if ask.during_work && !is_during {
                is_during = true;
                page.say(LetterSaid::FoundDuringWork);
                page.line("");
            }
            page.line(&format!("{n}. {}", question_of(ask, of, wording)));
            page.blanks(ask, of);
        }
        page.line("");
        let call = &self.job.stop_and_call;
        page.say(LetterSaid::Questions {
            name: call.name.clone(),
            number: call.number.clone(),
        });
        page.line(&self.never);
        if let Some(invented) = &self.invented {
            page.line(&format!("*** {invented} ***"));
        }
        page.text
    }

    /// Writes the addressee of a letter, its joint, and how to answer it.
    fn letter_head(&self, to: &Said, page: &mut LetterPage<'_>) {
        let job = &self.job;
        page.say(LetterSaid::To { to: to.clone() });
        page.say(LetterSaid::Job {
            job: job.id.clone(),
            title: job.title.clone(),
        });
        page.say(LetterSaid::Place {
            place: job.place.clone(),
            date: job.date.clone(),
        });
        let mark = &self.plan_mark;
        page.say(LetterSaid::Plan {
            short: mark.short.clone(),
            issue: mark.issue,
            made: mark.made.clone(),
        });
        page.line("");
        if self.must_stop() {
            page.say(LetterSaid::CutNothing);
            page.line("");
        }
        page.say(LetterSaid::FactsAreMissing);
        page.say(LetterSaid::WithWhereItStands);
        page.say(LetterSaid::LeaveBlank);
    }
}

/// Letter while it is written.
struct LetterPage<'a> {
    text: String,
    wording: &'a dyn Wording,
}

impl LetterPage<'_> {
    fn line(&mut self, text: &str) {
        self.text.push_str(text);
        self.text.push('\n');
    }

    fn say(&mut self, said: LetterSaid) {
        let text = self.wording.say(&said.into());
        self.line(&text);
    }

    fn text_of(&self, said: LetterSaid) -> String {
        self.wording.say(&said.into())
    }

    /// Writes a line under a question.
    fn under(&mut self, said: LetterSaid) {
        let text = self.text_of(said);
        self.line(&format!("   {text}"));
    }

    /// Writes the blanks under a question, the place for the answer, and the checks that it settles.
    fn blanks(&mut self, ask: &AskDoc, of: &[Of]) {
        for each in of {
            let each = of_words(each, self.wording);
            let each = if each.is_empty() {
                self.text_of(LetterSaid::Answer)
            } else {
                each
            };
            self.line(&format!("   {each}: ________________________________"));
        }
        let stands = self.text_of(LetterSaid::WhereItStands);
        let name = self.text_of(LetterSaid::NameAndDate);
        self.line(&format!(
            "   {stands}: ____________________  {name}: ______________"
        ));
        self.under(LetterSaid::GoesInto { place: ask.place() });
        self.under(LetterSaid::Settles {
            settles: ask.settled(),
        });
        self.under(LetterSaid::Fact {
            key: ask.key().to_owned(),
        });
    }
}

/// Question of an ask, for some of the things that it is about.
fn question_of(ask: &AskDoc, of: &[Of], wording: &dyn Wording) -> String {
    let (fact, of) = (ask.fact, of.to_vec());
    wording.say(&AskSaid::Question { fact, of }.into())
}

/// Name for a file: letters and digits stay, everything else becomes a hyphen.
fn file_name(of: &str) -> String {
    let plain = |c: char| if c.is_ascii_alphanumeric() { c } else { '-' };
    of.chars().map(plain).collect()
}
