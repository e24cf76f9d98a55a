//! Time made: the day and time at which a plan is made, from the computer's clock or from the command line.
//!
//! Why its own room: this is the only place where a plan reads a clock.
//! The core takes a text and prints it; it compares it with nothing.

use jiff::{ZonedDateTime, fmt::strtime};

/// Format of a day and time: the local time and its offset from UTC.
const FORM: &str = "%Y-%m-%d %H:%M UTC%:z";

/// Argument for the day and time.
#[derive(clap::Args)]
pub struct Arguments {
    /// Day and time that the papers bear in place of this computer's, as "2026-03-09 14:05 UTC+01:00".
    #[arg(long, value_name = "TIME", value_parser = given)]
    made: Option<String>,
}

impl Arguments {
    /// Day and time to print.
    pub fn made(&self) -> String {
        self.made.clone().unwrap_or_else(now)
    }
}

/// Time of the local clock, with its offset from UTC.
fn now() -> String {
    ZonedDateTime::now().strftime(FORM).to_string()
}

/// Accepts a day and time in this format, and nothing else: no other words reach a paper through this argument.
fn given(text: &str) -> Result<String, String> {
    let said =
        "expected a day, a time and its distance from UTC, as \"2026-03-09 14:05 UTC+01:00\"";
    let parsed = strtime::parse(FORM, text).and_then(|broken| broken.to_timestamp());
    match parsed {
        Ok(_) => Ok(text.to_owned()),
        Err(_) => Err(said.to_owned()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_and_time_is_taken_and_other_words_are_not() {
        for text in ["2026-03-09 14:05 UTC+01:00", "2026-12-31 00:00 UTC-05:00"] {
            assert_eq!(given(text).as_deref(), Ok(text));
        }
        for text in [
            "",
            "now",
            "2026-03-09",
            "2026-02-30 14:05 UTC+01:00",
            "2026-03-09 14:05 UTC+01:00 approved",
            "2026-03-09 24:05 UTC+01:00",
        ] {
            assert!(given(text).is_err(), "{text}");
        }
    }

    #[test]
    fn what_the_clock_gives_can_be_given() {
        let now = now();
        assert_eq!(given(&now).as_deref(), Ok(now.as_str()));
    }
}
