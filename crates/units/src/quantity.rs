//! Quantities with units: voltage, current, time, temperature, area, frequency, resistance, resistance per length, torque.
//!
//! Why separate types: rms read for peak is a factor of 1.41, and ohm per thousand feet read for ohm per kilometre a factor of 3.28; a bare number shows neither.
//!
//! Invariants: every value is finite; only `crest` turns rms into peak; every name and every text has a unit.
//! Values are doubles in the SI unit that each type names; conversion and printing round as doubles do.
//!
//! Not here: lengths, which are exact (`parse`).
//! Source: 1 in = 25.4 mm and 1 ft = 0.3048 m, exact; 1 cmil is the area of a circle of 1 mil across; NIST SP 811, from memory.

use crate::QuantityError;
use crate::quote::quoted;
use std::f64::consts::{FRAC_PI_4, SQRT_2};
use std::fmt;

/// Kilometres in a thousand feet, exact.
const KM_PER_KFT: f64 = 0.3048;
/// Square millimetres in a thousand circular mils: π/4 · 25.4² / 1000.
const MM2_PER_KCMIL: f64 = FRAC_PI_4 * (25.4 * 25.4) / 1.0e3;

/// Newton metres in a foot-pound: 1 ft = 0.3048 m, 1 lbf = 4.4482216152605 N, both exact.
const NM_PER_FT_LBF: f64 = 0.3048 * 4.448_221_615_260_5;

/// Rules for reading one quantity.
struct Kind {
    quantity: &'static str,
    units: &'static str,
    /// Least possible value, in the unit of the type.
    least: f64,
}

/// One quantity: its type; then for each unit its constructor, its accessor, its written forms, and the conversion in and out.
macro_rules! quantity {
    (
        $(#[$doc:meta])*
        $name:ident, $quantity:literal, units $units:literal, least $least:expr, print $print:expr;
        $($from:ident, $to:ident, $unit:literal, $texts:expr, |$x:ident| $in:expr, |$y:ident| $out:expr;)+
    ) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            const KIND: Kind = Kind { quantity: $quantity, units: $units, least: $least };

            $(
                #[doc = concat!("The ", $quantity, " of so many ", $unit, ".")]
                ///
                /// # Panics
                /// If the value is not finite.
                pub const fn $from($x: f64) -> $name {
                    let value = $in;
                    assert!(value.is_finite(), "a quantity is finite");
                    $name(value)
                }

                #[doc = concat!("Value in ", $unit, ".")]
                pub const fn $to(self) -> f64 {
                    let $y = self.0;
                    $out
                }
            )+

            #[doc = concat!("Reads a number and its unit: ", $units, ".")]
            ///
            /// # Errors
            /// Each error that [`QuantityError`] names.
            pub fn parse(text: &str) -> Result<$name, QuantityError> {
                let written = Written::read(text, &Self::KIND)?;
                $(
                    if $texts.contains(&written.unit.as_str()) {
                        let $x = written.number;
                        return written.checked($in, &Self::KIND).map($name);
                    }
                )+
                Err(written.unit_error(&Self::KIND))
            }
        }

        /// Number and unit; a precision, as in `{:.1}`, rounds the number.
        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                let print: fn(f64) -> (f64, &'static str) = $print;
                let (number, unit) = print(self.0);
                fmt::Display::fmt(&number, f)?;
                write!(f, " {unit}")
            }
        }
    };
}

quantity! {
    /// A root-mean-square voltage, in volts; the name that holds it says whether it is to ground or between phases.
    VoltageRms, "rms voltage", units "V or kV", least 0.0,
    print |v| if v.abs() < 1.0e3 { (v, "V") } else { (v / 1.0e3, "kV") };
    from_v, v, "volts", ["V", "V rms"], |v| v, |v| v;
    from_kv, kv, "kilovolts", ["kV", "KV", "kv", "kV rms"], |kv| kv * 1.0e3, |v| v / 1.0e3;
}

quantity! {
    /// A peak voltage, in volts.
    VoltagePeak, "peak voltage", units "V or kV, with or without the word peak", least 0.0,
    print |v| if v.abs() < 1.0e3 { (v, "V peak") } else { (v / 1.0e3, "kV peak") };
    from_v, v, "volts", ["V", "V peak"], |v| v, |v| v;
    from_kv, kv, "kilovolts", ["kV", "KV", "kv", "kV peak"], |kv| kv * 1.0e3, |v| v / 1.0e3;
}

quantity! {
    /// A current, rms unless its name says otherwise, in amperes.
    Current, "current", units "A or kA", least 0.0,
    print |a| if a.abs() < 1.0e4 { (a, "A") } else { (a / 1.0e3, "kA") };
    from_a, a, "amperes", ["A"], |a| a, |a| a;
    from_ka, ka, "kiloamperes", ["kA", "KA", "ka"], |ka| ka * 1.0e3, |a| a / 1.0e3;
}

quantity! {
    /// A length of time, in seconds.
    Seconds, "time", units "s, ms, min or h", least 0.0,
    print |s| (s, "s");
    from_s, s, "seconds", ["s"], |s| s, |s| s;
    from_ms, ms, "milliseconds", ["ms"], |ms| ms / 1.0e3, |s| s * 1.0e3;
    from_min, min, "minutes", ["min"], |min| min * 60.0, |s| s / 60.0;
    from_h, h, "hours", ["h"], |h| h * 3600.0, |s| s / 3600.0;
}

quantity! {
    /// A temperature, in degrees Celsius; it is not a difference of temperatures.
    Temperature, "temperature", units "degC, °C, degF or °F", least -273.15,
    print |deg_c| (deg_c, "°C");
    from_deg_c, deg_c, "degrees Celsius", ["°C", "degC", "℃"], |deg_c| deg_c, |deg_c| deg_c;
    from_deg_f, deg_f, "degrees Fahrenheit", ["°F", "degF", "℉"],
        |deg_f| (deg_f - 32.0) * 5.0 / 9.0, |deg_c| deg_c * 9.0 / 5.0 + 32.0;
}

quantity! {
    /// An area of cross-section, in square millimetres; for a conductor the area of its metal.
    ///
    /// A circular mil is the area of a circle one mil across, so that 1 kcmil = π/4 · 25.4² / 1000 mm² = 0.5067075 mm².
    Area, "area", units "mm2, mm², kcmil or cmil", least 0.0,
    print |mm2| (mm2, "mm²");
    from_mm2, mm2, "square millimetres", ["mm²", "mm2"], |mm2| mm2, |mm2| mm2;
    from_kcmil, kcmil, "thousand circular mils", ["kcmil"], |kcmil| kcmil * MM2_PER_KCMIL, |mm2| mm2 / MM2_PER_KCMIL;
    from_cmil, cmil, "circular mils", ["cmil"],
        |cmil| cmil / 1.0e3 * MM2_PER_KCMIL, |mm2| mm2 / MM2_PER_KCMIL * 1.0e3;
}

quantity! {
    /// A frequency, in hertz.
    Frequency, "frequency", units "Hz", least 0.0,
    print |hz| (hz, "Hz");
    from_hz, hz, "hertz", ["Hz", "hz", "HZ"], |hz| hz, |hz| hz;
}

quantity! {
    /// A resistance, in ohms.
    Resistance, "resistance", units "ohm, mohm or uohm", least 0.0,
    print |ohm| if ohm.abs() < 1.0 { (ohm * 1.0e3, "mohm") } else { (ohm, "ohm") };
    from_ohm, ohm, "ohms", ["ohm", "Ω", "Ω"], |ohm| ohm, |ohm| ohm;
    from_mohm, mohm, "milliohms", ["mohm", "mΩ", "mΩ"], |mohm| mohm / 1.0e3, |ohm| ohm * 1.0e3;
    from_uohm, uohm, "microohms", ["uohm", "uΩ", "µΩ", "μΩ", "µΩ"],
        |uohm| uohm / 1.0e6, |ohm| ohm * 1.0e6;
}

quantity! {
    /// A resistance per length, in ohms per kilometre.
    ///
    /// A thousand feet are 0.3048 km, so that 1 ohm/kft = 3.280839895 ohm/km.
    ResistancePerLength, "resistance per length", units "ohm/km or ohm/kft", least 0.0,
    print |ohm_per_km| (ohm_per_km, "ohm/km");
    from_ohm_per_km, ohm_per_km, "ohms per kilometre", ["ohm/km", "Ω/km", "Ω/km"],
        |ohm_per_km| ohm_per_km, |ohm_per_km| ohm_per_km;
    from_ohm_per_kft, ohm_per_kft, "ohms per thousand feet", ["ohm/kft", "Ω/kft", "Ω/kft"],
        |ohm_per_kft| ohm_per_kft / KM_PER_KFT, |ohm_per_km| ohm_per_km * KM_PER_KFT;
}

quantity! {
    /// A torque, in newton metres.
    ///
    /// A foot is 0.3048 m and a pound-force 4.4482216152605 N, both exact, so that 1 ft·lbf = 1.355817948 N·m.
    Torque, "torque", units "N·m, ft·lbf or in·lbf", least 0.0,
    print |nm| (nm, "N·m");
    from_nm, nm, "newton metres", ["N·m", "N m", "Nm", "N.m"], |nm| nm, |nm| nm;
    from_ft_lbf, ft_lbf, "foot-pounds", ["ft·lbf", "ft lbf", "lbf·ft", "lbf ft", "ft-lb", "ft-lbf"],
        |ft_lbf| ft_lbf * NM_PER_FT_LBF, |nm| nm / NM_PER_FT_LBF;
    from_in_lbf, in_lbf, "inch-pounds", ["in·lbf", "in lbf", "lbf·in", "lbf in", "in-lb", "in-lbf"],
        |in_lbf| in_lbf * NM_PER_FT_LBF / 12.0, |nm| nm * 12.0 / NM_PER_FT_LBF;
}

impl VoltageRms {
    /// The crest of a sine wave with this rms value: √2 times the value.
    ///
    /// # Assumes
    /// A sine wave; switching and lightning voltages have no such ratio.
    ///
    /// # Panics
    /// If the crest is greater than the largest double.
    pub const fn crest(self) -> VoltagePeak {
        VoltagePeak::from_v(self.0 * SQRT_2)
    }
}

/// A number and a unit as written.
struct Written<'a> {
    text: &'a str,
    number: f64,
    /// Unit with single spaces, so that `kV  peak` is read.
    unit: String,
}

impl<'a> Written<'a> {
    fn read(text: &'a str, kind: &Kind) -> Result<Written<'a>, QuantityError> {
        let text = text.trim();
        if text.is_empty() {
            return Err(QuantityError::Empty {
                quantity: kind.quantity.into(),
                units: kind.units.into(),
            });
        }
        if text.starts_with('+') {
            return Err(QuantityError::PlusSign {
                found: quoted(text),
            });
        }
        let unsigned = text.strip_prefix(['-', '−']);
        if unsigned.is_some() && kind.least >= 0.0 {
            return Err(QuantityError::Negative {
                found: quoted(text),
                quantity: kind.quantity.into(),
            });
        }
        let sign = if unsigned.is_some() { -1.0 } else { 1.0 };
        let unsigned = unsigned.unwrap_or(text).trim_start();
        let (digits, after) = split_number(unsigned, kind)?;
        let number = match digits.parse::<f64>() {
            Ok(number) if !digits.ends_with('.') => number,
            _ => {
                return Err(QuantityError::MalformedNumber {
                    found: quoted(digits),
                });
            }
        };
        if after.is_empty() {
            return Err(QuantityError::NoUnit {
                number: quoted(digits),
                units: kind.units.into(),
            });
        }
        let unit = after.split_whitespace().collect::<Vec<_>>().join(" ");
        // Adding zero turns -0 into 0.
        Ok(Written {
            text,
            number: sign * number + 0.0,
            unit,
        })
    }

    /// The converted value, if the quantity can have it.
    fn checked(&self, value: f64, kind: &Kind) -> Result<f64, QuantityError> {
        if !value.is_finite() {
            return Err(QuantityError::TooLarge {
                found: quoted(self.text),
            });
        }
        // Only temperatures have a sign, so only they can lie below their least value here.
        if value < kind.least {
            return Err(QuantityError::BelowAbsoluteZero {
                found: quoted(self.text),
            });
        }
        Ok(value)
    }

    fn unit_error(&self, kind: &Kind) -> QuantityError {
        let is_cycles = matches!(
            self.unit.to_lowercase().as_str(),
            "cycle" | "cycles" | "cyc" | "cy"
        );
        if is_cycles && kind.quantity == Seconds::KIND.quantity {
            return QuantityError::Cycles {
                found: quoted(self.text),
            };
        }
        QuantityError::UnknownUnit {
            unit: quoted(&self.unit),
            quantity: kind.quantity.into(),
            units: kind.units.into(),
        }
    }
}

/// Splits off the digits and refuses text that may not follow them; the second part is the remaining text without leading spaces.
fn split_number<'a>(unsigned: &'a str, kind: &Kind) -> Result<(&'a str, &'a str), QuantityError> {
    let end = unsigned
        .find(|c: char| !is_number_char(c))
        .unwrap_or(unsigned.len());
    let (digits, rest) = unsigned.split_at(end);
    let after = rest.trim_start();
    if after.starts_with(',') {
        let is_part = |c: char| is_number_char(c) || c == ',';
        let end = unsigned.find(|c| !is_part(c)).unwrap_or(unsigned.len());
        // A comma after a space is quoted with the text before it.
        let found = if rest.starts_with(',') {
            &unsigned[..end]
        } else {
            unsigned
        };
        return Err(QuantityError::DecimalComma {
            found: quoted(found),
        });
    }
    if digits.is_empty() {
        return Err(QuantityError::NoNumber {
            found: quoted(unsigned),
            units: kind.units.into(),
        });
    }
    if after.starts_with(is_number_char) {
        return Err(QuantityError::TwoNumbers {
            first: quoted(digits),
            second: quoted(after),
        });
    }
    Ok((digits, after))
}

fn is_number_char(c: char) -> bool {
    c.is_ascii_digit() || c == '.'
}

#[cfg(test)]
#[path = "quantity_tests.rs"]
mod tests;
