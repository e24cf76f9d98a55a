//! Transient: warming of a cable and the soil around it after a rise of the current.
//!
//! Two cells represent the cable: its thermal resistances and heat capacities, reduced so that the conductor's rise is a sum of two exponentials.
//! Alternatively many shells represent it, unreduced.
//! The soil follows [`super::step`]; its rise counts for the conductor in proportion to the cable's own warming.
//!
//! Source: iec_60853, recalled; `docs/theory/rating.md` compares it with a finely divided cable.

use std::f64::consts::PI;

use faer::{Mat, Side};

use super::error::RatingError;
use super::step::{Line, group_attainment_ratio};

/// Least time for two cells, as a share of the thermal time constant (resistance times heat capacity).
const LEAST_RATIO: f64 = 0.1;
/// Greatest number of shells in a wall; the cost of the modes is its third power.
const MOST_SHELLS: usize = 200;

/// A layer with thermal resistance and heat capacity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wall {
    /// Diameter inside, m.
    pub inside_m: f64,
    /// Diameter outside, m.
    pub outside_m: f64,
    /// Thermal resistance, K·m/W.
    pub resistance_k_m_per_w: f64,
    /// Volumetric heat capacity, J/(m³·K).
    pub heat_j_per_m3_k: f64,
}

impl Wall {
    /// Heat capacity of a metre, J/(m·K).
    fn heat_j_per_m_k(&self) -> f64 {
        let squares = self.outside_m * self.outside_m - self.inside_m * self.inside_m;
        PI / 4.0 * squares * self.heat_j_per_m3_k
    }

    fn is_wall(&self) -> bool {
        self.inside_m > 0.0
            && self.outside_m > self.inside_m
            && self.resistance_k_m_per_w > 0.0
            && self.heat_j_per_m3_k > 0.0
            && (self.outside_m + self.resistance_k_m_per_w + self.heat_j_per_m3_k).is_finite()
    }
}

/// p, share of a wall's heat capacity that counts at its inside, for times long against its time constant.
///
/// p = 1/(2 ln(D/d)) − 1/((D/d)² − 1).
///
/// # Source
/// iec_60853, memory: van Wormer's coefficient; our tests integrate the profile of steady temperature.
///
/// ```
/// use jointwright_numerics::rating::transient::long_share_ratio;
/// assert!((long_share_ratio(0.02, 0.04) - (0.5 / 2.0_f64.ln() - 1.0 / 3.0)).abs() < 1e-15);
/// ```
pub fn long_share_ratio(inside_m: f64, outside_m: f64) -> f64 {
    let ratio = outside_m / inside_m;
    0.5 / ratio.ln() - 1.0 / (ratio * ratio - 1.0)
}

/// p*, the same share for each half of a wall that is divided at √(d D), for short times.
///
/// p* = 1/ln(D/d) − 1/(D/d − 1); it is p for the ratio √(D/d).
///
/// # Source
/// iec_60853, memory.
///
/// ```
/// use jointwright_numerics::rating::transient::{long_share_ratio, short_share_ratio};
/// assert!((short_share_ratio(0.01, 0.04) - long_share_ratio(0.01, 0.02)).abs() < 1e-15);
/// ```
pub fn short_share_ratio(inside_m: f64, outside_m: f64) -> f64 {
    let ratio = outside_m / inside_m;
    1.0 / ratio.ln() - 1.0 / (ratio - 1.0)
}

/// A single cable, as thermal resistances and heat capacities.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    /// Qc, heat capacity of the conductor, J/(m·K).
    pub conductor_j_per_m_k: f64,
    /// All layers between conductor and shield; their resistance is T1.
    pub insulation: Wall,
    /// Qs, heat capacity of the shield, J/(m·K).
    pub shield_j_per_m_k: f64,
    /// All layers over the shield; their resistance is T3.
    pub jacket: Option<Wall>,
    /// qs = 1 + λ1, ratio of the losses of conductor and shield to the loss of the conductor.
    pub losses_ratio: f64,
    /// A thermal resistance outside the jacket without heat capacity, K·m/W: in air, T4 at the relevant heat; in soil, 0.
    pub outside_k_m_per_w: f64,
}

/// Position of the insulation's heat capacity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// At conductor and shield; the standard uses it above a third of the time constant.
    Long,
    /// At conductor, middle and shield; the standard uses it below a third.
    Short,
}

/// Two cells: thermal resistances and heat capacities that represent a cable.
///
/// ```text
/// conductor ──┬── TA ──┬── TB ── surface
///             QA       QB
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cells {
    /// TA, K·m/W.
    pub inner_k_m_per_w: f64,
    /// QA, J/(m·K).
    pub inner_j_per_m_k: f64,
    /// TB, K·m/W, times qs.
    pub outer_k_m_per_w: f64,
    /// QB, J/(m·K), over qs.
    pub outer_j_per_m_k: f64,
}

impl Body {
    /// The two cells that represent the cable.
    ///
    /// Long form: TA = T1, QA = Qc + p Qi, TB = qs (T3 + T4), QB = (1 − p) Qi + (Qs + p' Qj)/qs + (T4/(T3 + T4))² (1 − p') Qj/qs.
    /// Short form, with the insulation divided at √(d D) into Qi1 and Qi2: TA = T1/2, QA = Qc + p* Qi1, TB = T1/2 + qs (T3 + T4), and QB the other heat capacities, each times the square of the share of TB outside it.
    ///
    /// # Errors
    /// [`RatingError::NoNumber`].
    ///
    /// # Source
    /// iec_60853, memory.
    ///
    /// ```
    /// use jointwright_numerics::rating::transient::{Body, Form, Wall};
    /// let body = Body {
    ///     conductor_j_per_m_k: 600.0,
    ///     insulation: Wall { inside_m: 0.02, outside_m: 0.04, resistance_k_m_per_w: 0.4, heat_j_per_m3_k: 2.4e6 },
    ///     shield_j_per_m_k: 100.0,
    ///     jacket: None,
    ///     losses_ratio: 1.0,
    ///     outside_k_m_per_w: 0.0,
    /// };
    /// let cells = body.cells(Form::Long)?;
    /// let insulation = 2.4e6 * std::f64::consts::PI * 3e-4;
    /// assert!((cells.inner_j_per_m_k + cells.outer_j_per_m_k - (700.0 + insulation)).abs() < 1e-9);
    /// # Ok::<(), jointwright_numerics::rating::RatingError>(())
    /// ```
    pub fn cells(&self, form: Form) -> Result<Cells, RatingError> {
        self.looked_over()?;
        let losses = self.losses_ratio;
        let outside = losses * self.outside_k_m_per_w;
        let (jacket, under, over) = self.jacket.map_or((0.0, 0.0, 0.0), |wall| {
            let share = long_share_ratio(wall.inside_m, wall.outside_m);
            let heat = wall.heat_j_per_m_k() / losses;
            let resistance = losses * wall.resistance_k_m_per_w;
            (resistance, share * heat, (1.0 - share) * heat)
        });
        let shield = self.shield_j_per_m_k / losses + under;
        let wall = self.insulation;
        let beyond = jacket + outside;
        Ok(match form {
            Form::Long => {
                let share = long_share_ratio(wall.inside_m, wall.outside_m);
                let heat = wall.heat_j_per_m_k();
                Cells {
                    inner_k_m_per_w: wall.resistance_k_m_per_w,
                    inner_j_per_m_k: self.conductor_j_per_m_k + share * heat,
                    outer_k_m_per_w: beyond,
                    outer_j_per_m_k: (1.0 - share) * heat
                        + shield
                        + squared_share(outside, beyond) * over,
                }
            }
            Form::Short => {
                let share = short_share_ratio(wall.inside_m, wall.outside_m);
                let middle_m = (wall.inside_m * wall.outside_m).sqrt();
                let half = |inside_m: f64, outside_m: f64| {
                    let wall = Wall {
                        inside_m,
                        outside_m,
                        ..wall
                    };
                    wall.heat_j_per_m_k()
                };
                let (first, second) = (
                    half(wall.inside_m, middle_m),
                    half(middle_m, wall.outside_m),
                );
                let outer = wall.resistance_k_m_per_w / 2.0 + beyond;
                Cells {
                    inner_k_m_per_w: wall.resistance_k_m_per_w / 2.0,
                    inner_j_per_m_k: self.conductor_j_per_m_k + share * first,
                    outer_k_m_per_w: outer,
                    outer_j_per_m_k: (1.0 - share) * first
                        + share * second
                        + squared_share(beyond, outer) * ((1.0 - share) * second + shield)
                        + squared_share(outside, outer) * over,
                }
            }
        })
    }

    /// ΣT · ΣQ, thermal time constant of the cable: total resistance times total heat capacity, s.
    ///
    /// # Source
    /// iec_60853, memory: a third of it separates short from long times.
    ///
    /// ```
    /// use jointwright_numerics::rating::transient::{Body, Wall};
    /// let wall = Wall { inside_m: 0.02, outside_m: 0.04, resistance_k_m_per_w: 0.4, heat_j_per_m3_k: 2.4e6 };
    /// let body = Body {
    ///     conductor_j_per_m_k: 600.0,
    ///     insulation: wall,
    ///     shield_j_per_m_k: 100.0,
    ///     jacket: None,
    ///     losses_ratio: 1.0,
    ///     outside_k_m_per_w: 0.1,
    /// };
    /// let heat = 700.0 + 2.4e6 * std::f64::consts::PI * 3e-4;
    /// assert!((body.span_s() - 0.5 * heat).abs() < 1e-9);
    /// ```
    pub fn span_s(&self) -> f64 {
        let jacket = self.jacket.map_or((0.0, 0.0), |wall| {
            (wall.resistance_k_m_per_w, wall.heat_j_per_m_k())
        });
        let resistance = self.insulation.resistance_k_m_per_w
            + self.losses_ratio * (jacket.0 + self.outside_k_m_per_w);
        let outer = (self.shield_j_per_m_k + jacket.1) / self.losses_ratio;
        resistance * (self.conductor_j_per_m_k + self.insulation.heat_j_per_m_k() + outer)
    }

    fn looked_over(&self) -> Result<(), RatingError> {
        let are_heats = self.conductor_j_per_m_k > 0.0 && self.shield_j_per_m_k >= 0.0;
        let is_outside = self.outside_k_m_per_w >= 0.0 && self.losses_ratio >= 1.0;
        let sum = self.conductor_j_per_m_k
            + self.shield_j_per_m_k
            + self.outside_k_m_per_w
            + self.losses_ratio;
        let are_walls = self.insulation.is_wall() && self.jacket.is_none_or(|wall| wall.is_wall());
        if are_heats && is_outside && are_walls && sum.is_finite() {
            Ok(())
        } else {
            Err(RatingError::NoNumber)
        }
    }
}

/// Many cells: heat capacities at circles from the conductor outward, and the thermal resistance from each to the next.
struct Chain {
    heats_j_per_m_k: Vec<f64>,
    links_k_m_per_w: Vec<f64>,
}

impl Chain {
    /// Adds a wall as shells of equal resistance; each has its heat capacity at its two circles, by the share for long times.
    fn add(&mut self, wall: &Wall, n_shells: usize) {
        let ratio = (wall.outside_m / wall.inside_m).powf(1.0 / n_shells as f64);
        for index in 0..n_shells {
            let inside_m = wall.inside_m * ratio.powf(index as f64);
            let shell = Wall {
                inside_m,
                outside_m: inside_m * ratio,
                ..*wall
            };
            let share = long_share_ratio(1.0, ratio);
            let heat = shell.heat_j_per_m_k();
            if let Some(last) = self.heats_j_per_m_k.last_mut() {
                *last += share * heat;
            }
            self.heats_j_per_m_k.push((1.0 - share) * heat);
            self.links_k_m_per_w
                .push(wall.resistance_k_m_per_w / n_shells as f64);
        }
    }
}

impl Body {
    /// The conductor's response with each wall divided into many shells.
    ///
    /// The shield's loss enters at the shield; the chain is not reduced.
    /// The heat capacities C and links G give C du/dt + G u = w, whose modes are the parts.
    ///
    /// # Accuracy
    /// 20 shells agree within 1 % with a cable of three times as many, from a hundredth of [`Body::span_s()`] on.
    ///
    /// # Errors
    /// [`RatingError::NoNumber`], also for zero shells or more than 200.
    ///
    /// # Source
    /// closed form: the modes of a chain.
    ///
    /// ```
    /// use jointwright_numerics::rating::transient::{Body, Wall};
    /// let body = Body {
    ///     conductor_j_per_m_k: 600.0,
    ///     insulation: Wall { inside_m: 0.02, outside_m: 0.04, resistance_k_m_per_w: 0.4, heat_j_per_m3_k: 2.4e6 },
    ///     shield_j_per_m_k: 100.0,
    ///     jacket: None,
    ///     losses_ratio: 1.2,
    ///     outside_k_m_per_w: 0.5,
    /// };
    /// let response = body.divided_response(20)?;
    /// assert!((response.rise_k_m_per_w(1e7) - (0.4 + 1.2 * 0.5)).abs() < 1e-9);
    /// # Ok::<(), jointwright_numerics::rating::RatingError>(())
    /// ```
    pub fn divided_response(&self, n_shells: usize) -> Result<Response, RatingError> {
        self.looked_over()?;
        if !(1..=MOST_SHELLS).contains(&n_shells) {
            return Err(RatingError::NoNumber);
        }
        let mut chain = Chain {
            heats_j_per_m_k: vec![self.conductor_j_per_m_k],
            links_k_m_per_w: vec![],
        };
        chain.add(&self.insulation, n_shells);
        if let Some(last) = chain.heats_j_per_m_k.last_mut() {
            *last += self.shield_j_per_m_k;
        }
        if let Some(jacket) = &self.jacket {
            chain.add(jacket, n_shells);
        }
        if self.outside_k_m_per_w > 0.0 {
            chain.links_k_m_per_w.push(self.outside_k_m_per_w);
        } else {
            // The temperature of the surface is fixed, so heat there does not count.
            chain.heats_j_per_m_k.pop();
        }
        chain.response(n_shells, self.losses_ratio - 1.0)
    }
}

impl Chain {
    /// Modes of the chain, as the conductor's response to one watt there and a loss at the shield.
    fn response(&self, shield_index: usize, shield_w: f64) -> Result<Response, RatingError> {
        let heats = &self.heats_j_per_m_k;
        let n = heats.len();
        let conducts: Vec<f64> = self
            .links_k_m_per_w
            .iter()
            .map(|link| link.recip())
            .collect();
        let scaled = Mat::<f64>::from_fn(n, n, |row, column| {
            let inward = row.checked_sub(1).map_or(0.0, |at| conducts[at]);
            let entry = match row.abs_diff(column) {
                0 => inward + conducts[row],
                1 => -conducts[row.min(column)],
                _ => 0.0,
            };
            entry / (heats[row] * heats[column]).sqrt()
        });
        let modes = scaled
            .self_adjoint_eigen(Side::Lower)
            .map_err(|_| RatingError::NoNumber)?;
        let (shapes, rates) = (modes.U(), modes.S().column_vector());
        let mut response = Response {
            parts_k_m_per_w: Vec::with_capacity(n),
            rates_per_s: Vec::with_capacity(n),
        };
        for mode in 0..n {
            let mut driven = shapes[(0, mode)] / heats[0].sqrt();
            if shield_index < n {
                driven += shield_w * shapes[(shield_index, mode)] / heats[shield_index].sqrt();
            }
            let rate = rates[mode];
            response
                .parts_k_m_per_w
                .push(shapes[(0, mode)] / heats[0].sqrt() * driven / rate);
            response.rates_per_s.push(rate);
        }
        Ok(response)
    }
}

/// (part/whole)², or 0 if the whole is 0.
fn squared_share(part: f64, whole: f64) -> f64 {
    if whole > 0.0 {
        (part / whole).powi(2)
    } else {
        0.0
    }
}

/// Rise of the conductor over the cable's surface after the start of its loss: Σ T (1 − e^(−at)).
#[derive(Clone, Debug, PartialEq)]
pub struct Response {
    /// T of each part, K·m/W; Ta and Tb for two cells.
    pub parts_k_m_per_w: Vec<f64>,
    /// a of each part, 1/s.
    pub rates_per_s: Vec<f64>,
}

impl Cells {
    /// The conductor's response to one watt and metre.
    ///
    /// M = ½ (QA (TA + TB) + QB TB), N = QA TA QB TB, a and b = (M ± √(M² − N))/N,
    /// Ta = (1/QA − b (TA + TB))/(a − b), Tb = TA + TB − Ta.
    ///
    /// # Source
    /// iec_60853, memory; the closed form of two cells.
    ///
    /// ```
    /// use jointwright_numerics::rating::transient::Cells;
    /// let response = Cells {
    ///     inner_k_m_per_w: 0.4,
    ///     inner_j_per_m_k: 1000.0,
    ///     outer_k_m_per_w: 0.1,
    ///     outer_j_per_m_k: 500.0,
    /// }
    /// .response();
    /// assert!((response.rise_k_m_per_w(1e6) - 0.5).abs() < 1e-12);
    /// ```
    pub fn response(&self) -> Response {
        let (inner, outer) = (self.inner_k_m_per_w, self.outer_k_m_per_w);
        let (first, second) = (self.inner_j_per_m_k, self.outer_j_per_m_k);
        let product = first * inner * second * outer;
        if product <= 0.0 {
            // Without a jacket the shield is the surface, and one cell remains.
            let rate = 1.0 / (first * (inner + outer));
            return Response {
                parts_k_m_per_w: vec![inner + outer],
                rates_per_s: vec![rate],
            };
        }
        let mean = 0.5 * (first * (inner + outer) + second * outer);
        let root = (mean * mean - product).sqrt();
        let fast = (mean + root) / product;
        // Equals (M − √(M² − N))/N, without the loss of digits.
        let slow = 1.0 / (mean + root);
        let part = (1.0 / first - slow * (inner + outer)) / (fast - slow);
        Response {
            parts_k_m_per_w: vec![part, inner + outer - part],
            rates_per_s: vec![fast, slow],
        }
    }
}

impl Response {
    /// Rise over the surface at a time, K·m/W.
    ///
    /// See [`Cells::response()`] for an example.
    pub fn rise_k_m_per_w(&self, time_s: f64) -> f64 {
        let parts = self.parts_k_m_per_w.iter().zip(&self.rates_per_s);
        parts
            .map(|(part, rate)| -part * (-rate * time_s).exp_m1())
            .sum()
    }

    /// Steady rise, K·m/W.
    fn steady_k_m_per_w(&self) -> f64 {
        self.parts_k_m_per_w.iter().sum()
    }
}

/// The soil around a cable.
#[derive(Clone, Debug, PartialEq)]
pub struct Ground {
    /// T4, steady thermal resistance for the heat of each cable, including the others' share, K·m/W.
    pub resistance_k_m_per_w: f64,
    /// δ, diffusivity, m²/s.
    pub diffusivity_m2_per_s: f64,
    /// De, diameter over all, m.
    pub outside_m: f64,
    /// L, depth of the axis, m.
    pub depth_m: f64,
    /// Other cables with equal losses.
    pub others: Vec<Line>,
}

/// A cable and its surroundings during warming.
#[derive(Clone, Debug, PartialEq)]
pub struct Transient {
    responses: Vec<Response>,
    least_s: f64,
    losses_ratio: f64,
    ground: Option<Ground>,
}

impl Transient {
    /// A cable in soil, or in air if there is no ground.
    ///
    /// # Errors
    /// [`RatingError::NoNumber`], [`RatingError::NotBuried`].
    ///
    /// # Source
    /// iec_60853, memory.
    ///
    /// ```
    /// use jointwright_numerics::rating::transient::{Body, Ground, Transient, Wall};
    /// let wall = |inside_m: f64, outside_m: f64| Wall {
    ///     inside_m,
    ///     outside_m,
    ///     resistance_k_m_per_w: 3.5 / std::f64::consts::TAU * (outside_m / inside_m).ln(),
    ///     heat_j_per_m3_k: 2.4e6,
    /// };
    /// let body = Body {
    ///     conductor_j_per_m_k: 640.0,
    ///     insulation: wall(0.0207, 0.0335),
    ///     shield_j_per_m_k: 100.0,
    ///     jacket: Some(wall(0.0353, 0.0395)),
    ///     losses_ratio: 1.1,
    ///     outside_k_m_per_w: 0.0,
    /// };
    /// let ground = Ground {
    ///     resistance_k_m_per_w: 1.5,
    ///     diffusivity_m2_per_s: 5e-7,
    ///     outside_m: 0.0395,
    ///     depth_m: 0.9,
    ///     others: vec![],
    /// };
    /// let transient = Transient::of(&body, Some(ground))?;
    /// let steady = transient.steady_k_m_per_w();
    /// assert!((transient.rise_k_m_per_w(1e13)? - steady).abs() < 1e-6 * steady);
    /// assert!(transient.rise_k_m_per_w(3600.0)? < 0.6 * steady);
    /// # Ok::<(), jointwright_numerics::rating::RatingError>(())
    /// ```
    pub fn of(body: &Body, ground: Option<Ground>) -> Result<Transient, RatingError> {
        let responses = vec![
            body.cells(Form::Long)?.response(),
            body.cells(Form::Short)?.response(),
        ];
        Transient::looked_over(responses, LEAST_RATIO * body.span_s(), body, ground)
    }

    /// A cable in soil or air, divided into many shells: for air and for short times, in which two cells are cooler than the cable.
    ///
    /// # Errors
    /// [`RatingError::NoNumber`], [`RatingError::NotBuried`].
    ///
    /// # Source
    /// [`Body::divided_response()`]; the soil as iec_60853 has it.
    ///
    /// ```
    /// use jointwright_numerics::rating::transient::{Body, Transient, Wall};
    /// let body = Body {
    ///     conductor_j_per_m_k: 600.0,
    ///     insulation: Wall { inside_m: 0.02, outside_m: 0.04, resistance_k_m_per_w: 0.4, heat_j_per_m3_k: 2.4e6 },
    ///     shield_j_per_m_k: 100.0,
    ///     jacket: None,
    ///     losses_ratio: 1.0,
    ///     outside_k_m_per_w: 0.5,
    /// };
    /// let two = Transient::of(&body, None)?;
    /// let many = Transient::divided(&body, None, 20)?;
    /// assert!(many.rise_k_m_per_w(600.0)? > two.rise_k_m_per_w(600.0)?);
    /// # Ok::<(), jointwright_numerics::rating::RatingError>(())
    /// ```
    pub fn divided(
        body: &Body,
        ground: Option<Ground>,
        n_shells: usize,
    ) -> Result<Transient, RatingError> {
        let responses = vec![body.divided_response(n_shells)?];
        Transient::looked_over(responses, 0.0, body, ground)
    }

    fn looked_over(
        responses: Vec<Response>,
        least_s: f64,
        body: &Body,
        ground: Option<Ground>,
    ) -> Result<Transient, RatingError> {
        let transient = Transient {
            responses,
            least_s,
            losses_ratio: body.losses_ratio,
            ground,
        };
        if let Some(ground) = &transient.ground {
            transient.soil_ratio(1.0)?;
            let (soil, spread) = (ground.resistance_k_m_per_w, ground.diffusivity_m2_per_s);
            if !(soil > 0.0 && spread > 0.0 && (soil + spread).is_finite()) {
                return Err(RatingError::NoNumber);
            }
        }
        let are_modes = transient.responses.iter().all(|response| {
            let parts = response.parts_k_m_per_w.iter();
            let mut rates = response.rates_per_s.iter();
            parts.copied().all(f64::is_finite) && rates.all(|rate| *rate > 0.0 && rate.is_finite())
        });
        let steady = transient.steady_k_m_per_w();
        if are_modes && steady > 0.0 && steady.is_finite() && transient.least_s.is_finite() {
            Ok(transient)
        } else {
            Err(RatingError::NoNumber)
        }
    }

    /// Time from which two cells represent the cable, s: a tenth of [`Body::span_s()`]; 0 for many shells.
    ///
    /// See [`Transient::rise_k_m_per_w()`].
    pub fn least_s(&self) -> f64 {
        self.least_s
    }

    /// qs = 1 + λ1, as given for the cable.
    ///
    /// See [`Transient::of()`] for an example.
    pub fn losses_ratio(&self) -> f64 {
        self.losses_ratio
    }

    /// Steady rise of the conductor for one watt and metre of its own loss, K·m/W: T1 + qs (T3 + T4).
    ///
    /// See [`Transient::of()`] for an example.
    pub fn steady_k_m_per_w(&self) -> f64 {
        self.responses[0].steady_k_m_per_w() + self.soil_steady_k_m_per_w()
    }

    /// qs T4, or 0 without ground.
    fn soil_steady_k_m_per_w(&self) -> f64 {
        self.ground.as_ref().map_or(0.0, |ground| {
            self.losses_ratio * ground.resistance_k_m_per_w
        })
    }

    /// β of the soil, with all cables.
    fn soil_ratio(&self, time_s: f64) -> Result<f64, RatingError> {
        self.ground.as_ref().map_or(Ok(0.0), |ground| {
            group_attainment_ratio(
                ground.outside_m,
                ground.depth_m,
                ground.diffusivity_m2_per_s,
                &ground.others,
                time_s,
            )
        })
    }

    /// Rise of the conductor at a time after the start of its loss, K·m/W: θc + α θe, α = θc/θc(∞), θe = qs T4 β.
    ///
    /// For two cells, θc is the warmer of the long and the short form.
    /// This departs from the source, which changes form at a third of the time constant; it is continuous where the source jumps.
    ///
    /// # Accuracy
    /// Compared with three finely divided cables, θc is up to 9 % low at a tenth of the time constant (resistance times heat capacity), 6 % at a third, 2 % at the whole.
    /// With soil, the total is 2 % low to 14 % high in the first hour, up to 11 % high after it, 3 % after six.
    /// In air, represented by one resistance, it is up to 14 % low at a tenth of the time constant, 12 % at a third, 7 % at the whole: cooler than the cable.
    ///
    /// # Errors
    /// [`RatingError::TooShort`] before [`Transient::least_s()`].
    ///
    /// # Source
    /// iec_60853, memory.
    ///
    /// See [`Transient::of()`] for an example.
    pub fn rise_k_m_per_w(&self, time_s: f64) -> Result<f64, RatingError> {
        if time_s.is_nan() || time_s < self.least_s || time_s <= 0.0 {
            return Err(RatingError::TooShort {
                time_s,
                least_s: self.least_s,
            });
        }
        let rises = self
            .responses
            .iter()
            .map(|each| each.rise_k_m_per_w(time_s));
        let own = rises.fold(0.0, f64::max);
        let reached = own / self.responses[0].steady_k_m_per_w();
        Ok(own + reached * self.soil_steady_k_m_per_w() * self.soil_ratio(time_s)?)
    }

    /// Share of the steady rise that is reached, with the cable's own heat capacity.
    ///
    /// # Errors
    /// [`RatingError::TooShort`].
    ///
    /// # Source
    /// iec_60853, memory: its part 2.
    ///
    /// See [`Cycle::factor_ratio()`](crate::rating::cyclic::Cycle::factor_ratio) for an example.
    pub fn reached_ratio(&self, time_s: f64) -> Result<f64, RatingError> {
        Ok(self.rise_k_m_per_w(time_s)? / self.steady_k_m_per_w())
    }

    /// Share of the steady rise that is reached, for a cable without heat capacity: 1 − k + k β, with k the soil's share of the steady rise.
    ///
    /// # Errors
    /// [`RatingError::NoIntegral`] for a negative time.
    ///
    /// # Source
    /// iec_60853, memory: its part 1.
    ///
    /// See [`Cycle::factor_ratio()`](crate::rating::cyclic::Cycle::factor_ratio) for an example.
    pub fn soil_reached_ratio(&self, time_s: f64) -> Result<f64, RatingError> {
        let share = self.soil_steady_k_m_per_w() / self.steady_k_m_per_w();
        Ok(1.0 - share + share * self.soil_ratio(time_s)?)
    }
}
