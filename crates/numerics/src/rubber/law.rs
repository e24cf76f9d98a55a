//! Law: strain energy of rubber as a function of the invariants of the deformation.

use super::RubberError;

/// Strain energy W of incompressible rubber; I1 and I2 are the sums of the squared stretches and of their inverses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Law {
    /// W = μ/2 (I1 − 3).
    NeoHookean {
        /// Shear modulus μ, Pa.
        modulus_pa: f64,
    },
    /// W = C1 (I1 − 3) + C2 (I2 − 3).
    MooneyRivlin {
        /// C1, Pa.
        c1_pa: f64,
        /// C2, Pa.
        c2_pa: f64,
    },
    /// W = −μ J/2 ln(1 − (I1 − 3)/J): the rubber stiffens as I1 − 3 approaches J, which it never reaches.
    Gent {
        /// Shear modulus μ at rest, Pa.
        modulus_pa: f64,
        /// J, the upper limit of I1 − 3.
        limit: f64,
    },
}

/// Kind of a law, without its moduli; files name a law by it.
///
/// ```
/// use jointwright_numerics::rubber::LawKind;
/// assert_eq!(LawKind::NAMES, ["neo-hookean", "mooney-rivlin", "gent"]);
/// assert_eq!(LawKind::from_name("gent"), Some(LawKind::Gent));
/// assert_eq!(LawKind::from_name("ogden"), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LawKind {
    /// [`Law::NeoHookean`].
    NeoHookean,
    /// [`Law::MooneyRivlin`].
    MooneyRivlin,
    /// [`Law::Gent`].
    Gent,
}

impl LawKind {
    /// All kinds.
    pub const ALL: [LawKind; 3] = [LawKind::NeoHookean, LawKind::MooneyRivlin, LawKind::Gent];

    /// Their words in files, in the same order.
    pub const NAMES: [&'static str; LawKind::ALL.len()] = {
        let mut names = [""; LawKind::ALL.len()];
        let mut at = 0;
        while at < names.len() {
            names[at] = LawKind::ALL[at].name();
            at += 1;
        }
        names
    };

    /// Word in files.
    pub const fn name(self) -> &'static str {
        match self {
            LawKind::NeoHookean => "neo-hookean",
            LawKind::MooneyRivlin => "mooney-rivlin",
            LawKind::Gent => "gent",
        }
    }

    /// Kind of a word in a file.
    pub fn from_name(name: &str) -> Option<LawKind> {
        LawKind::ALL.into_iter().find(|kind| kind.name() == name)
    }
}

impl Law {
    /// Kind of the law.
    pub const fn kind(&self) -> LawKind {
        match self {
            Law::NeoHookean { .. } => LawKind::NeoHookean,
            Law::MooneyRivlin { .. } => LawKind::MooneyRivlin,
            Law::Gent { .. } => LawKind::Gent,
        }
    }

    /// Shear modulus at rest, Pa.
    pub fn modulus_pa(&self) -> f64 {
        match *self {
            Law::NeoHookean { modulus_pa } | Law::Gent { modulus_pa, .. } => modulus_pa,
            Law::MooneyRivlin { c1_pa, c2_pa } => 2.0 * (c1_pa + c2_pa),
        }
    }

    /// The same law with every modulus multiplied by a factor.
    pub fn times(&self, ratio: f64) -> Law {
        match *self {
            Law::NeoHookean { modulus_pa } => Law::NeoHookean {
                modulus_pa: modulus_pa * ratio,
            },
            Law::MooneyRivlin { c1_pa, c2_pa } => Law::MooneyRivlin {
                c1_pa: c1_pa * ratio,
                c2_pa: c2_pa * ratio,
            },
            Law::Gent { modulus_pa, limit } => Law::Gent {
                modulus_pa: modulus_pa * ratio,
                limit,
            },
        }
    }

    /// Whether a tube of it with free ends may press less when stretched wider, and more after it has set.
    ///
    /// A thin tube of stretch λ presses in proportion to (λ^½ − λ^−5/2)(C1 + C2/λ), which falls somewhere if C1 < 0.209 C2.
    ///
    /// ```
    /// use jointwright_numerics::rubber::Law;
    /// assert!(Law::MooneyRivlin { c1_pa: 0.1e6, c2_pa: 1e6 }.may_fall());
    /// assert!(!Law::MooneyRivlin { c1_pa: 0.3e6, c2_pa: 1e6 }.may_fall());
    /// ```
    pub fn may_fall(&self) -> bool {
        /// Above the 0.209 of a thin tube, with a margin.
        const LEAST_RATIO: f64 = 0.25;
        match *self {
            Law::MooneyRivlin { c1_pa, c2_pa } => c1_pa < LEAST_RATIO * c2_pa,
            Law::NeoHookean { .. } | Law::Gent { .. } => false,
        }
    }

    /// Whether its stiffness is positive at every stretch.
    pub(super) fn is_stiff(&self) -> bool {
        match *self {
            Law::NeoHookean { modulus_pa } => modulus_pa.is_finite() && modulus_pa > 0.0,
            Law::MooneyRivlin { c1_pa, c2_pa } => {
                let are_numbers = c1_pa.is_finite() && c2_pa.is_finite();
                are_numbers && c1_pa >= 0.0 && c2_pa >= 0.0 && c1_pa + c2_pa > 0.0
            }
            Law::Gent { modulus_pa, limit } => {
                modulus_pa.is_finite() && modulus_pa > 0.0 && limit.is_finite() && limit > 0.0
            }
        }
    }

    /// ∂W/∂I1 and ∂W/∂I2 at a state, Pa.
    ///
    /// # Errors
    /// [`RubberError::BeyondLimit`].
    pub(super) fn slopes(&self, i1: f64) -> Result<(f64, f64), RubberError> {
        match *self {
            Law::NeoHookean { modulus_pa } => Ok((modulus_pa / 2.0, 0.0)),
            Law::MooneyRivlin { c1_pa, c2_pa } => Ok((c1_pa, c2_pa)),
            Law::Gent { modulus_pa, limit } => {
                let excess = i1 - 3.0;
                if excess < limit {
                    Ok((modulus_pa / 2.0 * limit / (limit - excess), 0.0))
                } else {
                    Err(RubberError::BeyondLimit {
                        excess,
                        most: limit,
                    })
                }
            }
        }
    }
}
