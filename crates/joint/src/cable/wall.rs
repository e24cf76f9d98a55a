//! Wall: the insulation wall of a cable, by class or as stated.

use jointwright_units::Length;

/// Insulation wall by class or as stated.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Wall {
    /// North American voltage class and insulation level.
    Icea {
        /// Class, kV between phases.
        class_kv: u16,
        /// Insulation level, %: 100, 133 or 173.
        level_percent: u16,
    },
    /// IEC rated voltages U0/U.
    Iec {
        /// U0, tenths of a kV: 36, 60, 87, 120, 180.
        u0_kv_tenths: u32,
        /// U, kV: 6, 10, 15, 20, 30.
        u_kv: u32,
    },
    /// Nominal wall as stated on the papers.
    Stated(Length),
}

impl Wall {
    /// One phrase for a page, as `15 kV 133 %` or `12/20 kV`.
    pub fn phrase(self) -> String {
        match self {
            Wall::Icea {
                class_kv,
                level_percent,
            } => format!("{class_kv} kV {level_percent} %"),
            Wall::Iec { u0_kv_tenths, u_kv } if u0_kv_tenths % 10 == 0 => {
                format!("{}/{u_kv} kV", u0_kv_tenths / 10)
            }
            Wall::Iec { u0_kv_tenths, u_kv } => {
                format!("{}.{}/{u_kv} kV", u0_kv_tenths / 10, u0_kv_tenths % 10)
            }
            Wall::Stated(wall) => format!("wall {} mm as stated", wall.mm()),
        }
    }
}
