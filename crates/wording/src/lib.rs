//! Wording: the sentence of every message, in each language, in the words and units of a practice.
//!
//! Why its own crate: the core states facts as messages, and only this crate turns them into English or Spanish; a message without a sentence in every language does not compile.
//!
//! Invariants: a number has the same digits in every language, so that people can compare it over the telephone; names from files and somebody's own words stay as they are.
//!
//! Not here: the messages themselves (`joint::said`), and their place on a page (the doors).

mod complaint;
mod english;
pub mod label;
mod mark;
mod noun;
mod spanish;

pub use complaint::ComplaintText;

use crate::label::Label;
use jointwright_joint::built::{self, Built, Findings};
use jointwright_joint::cable::Words;
use jointwright_joint::end::EndId;
use jointwright_joint::form::Complaint;
use jointwright_joint::job::Job;
use jointwright_joint::judge::{Judged, JudgedRun};
use jointwright_joint::limit::Subject;
use jointwright_joint::model::Model;
use jointwright_joint::plan::{self, CableRateDoc, Letter, Plan, RateDoc};
use jointwright_joint::said::{Amount, Exact, Language, Read, ReadRange, Said, Spot, Wording};
use jointwright_joint::warm::Rating;

use jointwright_units::{Length, Station, Tick, bound_mm_text, bound_text, mark, range_text};

/// Foot-pounds in a newton metre: 1 ft = 0.3048 m, 1 lbf = 4.4482216152605 N, both exact.
const FT_LBF_PER_NM: f64 = 1.0 / (0.3048 * 4.448_221_615_260_5);

/// A language, and the practice whose words and units it uses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tongue {
    /// Language.
    pub language: Language,
    /// Practice.
    pub words: Words,
}

impl Tongue {
    /// English, in the words and units of a practice.
    pub const fn english(words: Words) -> Tongue {
        Tongue {
            language: Language::English,
            words,
        }
    }

    /// Tongue that a job asks for.
    pub const fn of(job: &Job) -> Tongue {
        Tongue {
            language: job.language,
            words: job.words,
        }
    }

    /// Tongue of a plan.
    pub const fn of_plan(plan: &Plan) -> Tongue {
        Tongue {
            language: plan.job.language,
            words: plan.job.words,
        }
    }

    /// The one in which a rating is written.
    pub const fn of_rate(rating: &RateDoc) -> Tongue {
        Tongue {
            language: rating.language,
            words: rating.words,
        }
    }

    /// The one in which the rating of a run of cable is written.
    pub const fn of_cable_rate(rating: &CableRateDoc) -> Tongue {
        Tongue {
            language: rating.language,
            words: rating.words,
        }
    }

    /// Text that a door prints and that is no message of the core.
    pub fn label(self, label: &impl Label) -> String {
        label.text(self)
    }

    /// A length as a crew reads it: inches first with millimetres beside, or millimetres alone.
    fn read(self, read: Read) -> String {
        match self.words {
            Words::Us => bound_text(read.length(), read.toward(), read.gauge()),
            Words::Iec => bound_mm_text(read.length(), read.toward()),
        }
    }

    /// A place or a distance as a crew lead reads it: in thirty-seconds of an inch, or in tenths of a millimetre.
    fn spot(self, spot: Spot) -> String {
        let at = spot.station();
        let inch = mark(at, None, Tick::THIRTY_SECOND, spot.rounded.into()).and_then(|m| m.inch);
        match inch.filter(|_| self.words == Words::Us) {
            Some(inch) => format!("{inch} in"),
            None => format!("{:.1} mm", at.mm()),
        }
    }

    /// A range of diameters, rounded inward.
    fn range(self, range: ReadRange) -> String {
        let Some(interval) = range.interval() else {
            return "?".to_owned();
        };
        let to = match self.language {
            Language::English => "to",
            Language::Spanish => "a",
        };
        let text = range_text(interval);
        let mm = format!("{} {to} {} mm", text.mm.0, text.mm.1);
        match self.words {
            Words::Us if !text.inch.0.is_empty() => {
                format!("{} {to} {} in ({mm})", text.inch.0, text.inch.1)
            }
            _ => mm,
        }
    }

    /// A length as its paper writes it: with inches if it is a whole number of sixty-fourths and the page has inches, and with millimetres.
    fn exact(self, exact: Exact) -> String {
        let station = Station::from_half_nm(exact.half_nm);
        if exact.half_nm % 2 != 0 {
            return format!("{} mm", station.mm());
        }
        let length = Length::from_nm(exact.half_nm / 2);
        let mm = format!("{:.2}", length.mm());
        let mm = format!("{} mm", mm.trim_end_matches('0').trim_end_matches('.'));
        match length.exact_inch().filter(|_| self.words == Words::Us) {
            Some(inch) if length > Length::ZERO => format!("{inch} ({mm})"),
            _ => mm,
        }
    }

    /// A value with its unit.
    fn amount(self, amount: &Amount) -> String {
        let mohm = match self.language {
            Language::English => "mohm",
            Language::Spanish => "miliohm",
        };
        match amount {
            Amount::Length(length) => self.exact(*length),
            Amount::Ohm(ohm) if ohm.abs() < 1.0 => format!("{} {mohm}", thousandths(ohm * 1e3)),
            Amount::Ohm(ohm) => format!("{} ohm", thousandths(*ohm)),
            Amount::Nm(nm) => format!("{} N·m", thousandths(*nm)),
            Amount::Count(n) => n.to_string(),
        }
    }

    /// A width rounded down, so that no more room is said than there is.
    fn width(self, width: Exact) -> String {
        let whole = Station::from_half_nm(width.half_nm).floor();
        match whole.exact_inch().filter(|_| self.words == Words::Us) {
            Some(inch) => inch,
            None => format!("{:.2} mm", (whole.mm() * 100.0).floor() / 100.0),
        }
    }

    /// A window of torque, rounded inward to tenths.
    fn torque(self, (least, greatest): (f64, f64), to: &str) -> String {
        let inward = |unit: f64| {
            // Doubles may be off by a thousandth of a tenth, and no more.
            let (low, high) = (least * unit * 10.0, greatest * unit * 10.0);
            ((low - 1e-3).ceil() / 10.0, (high + 1e-3).floor() / 10.0)
        };
        let (low, high) = inward(1.0);
        let nm = format!("{low} {to} {high} N·m");
        match self.words {
            Words::Us => {
                let (low, high) = inward(FT_LBF_PER_NM);
                format!("{low} {to} {high} ft·lbf ({nm})")
            }
            Words::Iec => nm,
        }
    }
}

impl Wording for Tongue {
    fn say(&self, said: &Said) -> String {
        match self.language {
            Language::English => english::say(*self, said),
            Language::Spanish => spanish::say(*self, said),
        }
    }
}

/// A computed number as it stands in a sentence: three figures, and at most two decimal places.
fn shown(value: f64) -> String {
    let size = value.abs();
    if size >= 99.95 {
        format!("{value:.0}")
    } else if size >= 9.995 {
        format!("{value:.1}")
    } else if size >= 0.0995 || size == 0.0 {
        format!("{value:.2}")
    } else {
        format!("{value:.4}")
    }
}

/// Ends, one beside another: "A1, A2".
fn all_ends(ends: &[EndId]) -> String {
    let each = ends.iter().map(|end| format!("{}{}", end.leg, end.phase));
    each.collect::<Vec<_>>().join(", ")
}

/// Rated voltages as a cable bears them: `12/20 kV`, `8.7/15 kV`.
fn rated_kv(u0_kv_tenths: u32, u_kv: u32) -> String {
    let (whole, tenths) = (u0_kv_tenths / 10, u0_kv_tenths % 10);
    if tenths == 0 {
        format!("{whole}/{u_kv} kV")
    } else {
        format!("{whole}.{tenths}/{u_kv} kV")
    }
}

/// A leg or an end, as pages name it; nothing for the whole joint.
fn whom(subject: &Subject) -> Option<String> {
    let leg = subject.leg.as_ref()?;
    Some(match subject.phase {
        Some(phase) => format!("{leg}{phase}"),
        None => leg.clone(),
    })
}

/// A computed length with its unit: three figures.
pub fn length_text(length_m: f64) -> String {
    format!("{} mm", shown(1e3 * length_m))
}

/// Names as their files have them, each in quotes.
fn quoted(names: &[String]) -> Vec<String> {
    names.iter().map(|name| format!("\"{name}\"")).collect()
}

/// Messages one after another.
fn joined(tongue: Tongue, said: &[Said], between: &str) -> String {
    let said: Vec<String> = said.iter().map(|said| tongue.say(said)).collect();
    said.join(between)
}

/// The plan of a judged joint, in the tongue that its job asks for.
pub fn plan(judged: &Judged<'_>) -> Plan {
    plan::plan(judged, &Tongue::of(&judged.inputs.order.job))
}

/// The rating of a judged joint, in the tongue that its job asks for; see [`plan::rate`].
pub fn rate(judged: &Judged<'_>, rating: Option<&Rating>) -> RateDoc {
    plan::rate(judged, rating, &Tongue::of(&judged.inputs.order.job))
}

/// The findings of readings as built, in the tongue that their job asks for; see [`built::findings`].
pub fn findings(judged: &Judged<'_>, of: &Built) -> Findings {
    built::findings(judged, of, &Tongue::of(&judged.inputs.order.job))
}

/// The findings of ends as built, in the tongue that their job asks for; see [`built::findings_of_ends`].
///
/// # Errors
/// As for [`built::findings_of_ends`].
pub fn findings_of_ends(
    model: &Model,
    judged: &Judged<'_>,
    of: &Built,
) -> Result<Findings, Vec<Complaint>> {
    let tongue = Tongue::of(&judged.inputs.order.job);
    built::findings_of_ends(model, judged, of, &tongue)
}

/// The rating of a judged run of cable, in the tongue that its job asks for.
pub fn cable_rating(judged: &JudgedRun<'_>) -> CableRateDoc {
    plan::cable_rating(judged, &Tongue::of(&judged.order.job))
}

/// The questions of a plan as letters, in the tongue that its job asks for.
pub fn letters(plan: &Plan) -> Vec<Letter> {
    plan.letters(&Tongue::of_plan(plan))
}

/// Failures, in the tongue that its job asks for; see [`plan::fails`].
pub fn fails(judged: &Judged<'_>) -> Vec<String> {
    let tongue = Tongue::of(&judged.inputs.order.job);
    plan::fails(&judged.rulings, &tongue)
}

/// A number to three decimals at most.
fn thousandths(number: f64) -> String {
    let text = format!("{number:.3}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_said_with_three_figures() {
        assert_eq!(shown(0.33447), "0.33");
        assert_eq!(shown(12.345), "12.3");
        assert_eq!(shown(1234.5), "1234");
        assert_eq!(shown(0.0123), "0.0123");
        assert_eq!(shown(0.0), "0.00");
    }

    #[test]
    fn a_window_of_torque_is_rounded_inward() {
        // 40 ft·lbf are 54.2327 N·m, 45 are 61.0118.
        let nm = |ft_lbf: f64| ft_lbf * 0.3048 * 4.448_221_615_260_5;
        let window = (nm(40.0), nm(45.0));
        let (us, iec) = (Tongue::english(Words::Us), Tongue::english(Words::Iec));
        assert_eq!(iec.torque(window, "to"), "54.3 to 61 N·m");
        assert_eq!(us.torque(window, "to"), "40 to 45 ft·lbf (54.3 to 61 N·m)");
        assert_eq!(iec.torque((50.0, 60.0), "to"), "50 to 60 N·m");
    }
}
