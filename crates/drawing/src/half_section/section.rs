//! Section: layers, connector and body of a leg above its axis, with their names.

use super::scale::Scale;
use super::sheet::{LEFT, Role, SMALL, Sheet, fitted};
use crate::canvas::{Look, Trail, Words};
use crate::label::shortened;
use jointwright_joint::cable::Layer;
use jointwright_joint::plan::{CutDoc, LegDoc};
use jointwright_joint::plane::Plane;
use jointwright_wording::Tongue;
use jointwright_wording::label::HalfSectionLabel;

/// Layers from the inside out and the plane at which each begins.
const LAYERS: [(Layer, Option<Plane>); 6] = [
    (Layer::Conductor, None),
    (Layer::ConductorScreen, Some(Plane::InsulationEnd)),
    (Layer::Insulation, Some(Plane::InsulationEnd)),
    (Layer::InsulationScreen, Some(Plane::ScreenEdge)),
    (Layer::MetallicShield, Some(Plane::ShieldEdge)),
    (Layer::Jacket, Some(Plane::JacketEdge)),
];
/// Right edge of the section, mm.
pub(super) const END: f64 = 119.0;
/// Left edge of the column of names and numbers, mm.
pub(super) const COLUMN: f64 = 124.0;
/// Length of cable that is drawn beyond the last plane, mm on the page.
const TAIL: f64 = 6.0;
/// Least place that is drawn, mm: it cuts the far half of a sleeve off.
const LEAST_MM: f64 = -15.0;
/// Greatest radius on the page, mm.
const RADIUS: f64 = 13.0;
/// Height of the body's outline over the parts below it, mm on the page.
const BODY: f64 = 4.4;
/// Distance between two lines of names, mm.
const PITCH: f64 = 2.75;

/// A layer as drawn, mm on the cable.
struct Band {
    layer: Layer,
    words: String,
    inner_mm: f64,
    outer_mm: f64,
    from_mm: f64,
    is_unset: bool,
}

/// The connector, mm on the cable.
struct Barrel {
    from_mm: f64,
    mouth_mm: f64,
    radius_mm: f64,
    is_cut_off: bool,
}

/// Kind of a stretch of the body.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Of {
    Body,
    Electrode,
    Control,
}

impl Of {
    /// Name of its paint.
    const fn paint(self) -> &'static str {
        match self {
            Of::Body => "body",
            Of::Electrode => "electrode",
            Of::Control => "stress-control",
        }
    }
}

/// A leg ready to be drawn.
pub(super) struct Section {
    tongue: Tongue,
    bands: Vec<Band>,
    barrel: Option<Barrel>,
    /// Stretches of the body: kind, name, from and to, mm.
    stretches: Vec<(Of, String, [f64; 2])>,
    pub(super) scale: Scale,
    /// Words of the layers without a diameter.
    pub(super) missing: Vec<String>,
    /// Whether an edge without a set place is drawn.
    pub(super) has_unset_edge: bool,
}

/// Place of a cut, mm: the tick of the printed number, else the planned place.
pub(super) fn place_of(cut: &CutDoc) -> Option<f64> {
    cut.mark_at_mm.or(cut.nominal_mm).filter(|x| x.is_finite())
}

/// Place of a plane of the leg, mm, cut or not.
fn place(leg: &LegDoc, plane: Plane) -> Option<f64> {
    let cut = leg.cuts.iter().find(|cut| cut.plane == plane);
    let other = || leg.planes.iter().find(|other| other.plane == plane);
    cut.and_then(place_of)
        .or_else(|| other().map(|other| other.nominal_mm))
        .filter(|x| x.is_finite())
}

/// Mouth of the connector, mm.
fn mouth(leg: &LegDoc) -> Option<f64> {
    place(leg, Plane::ConnectorMouth).or_else(|| place(leg, Plane::ConnectorMouthBefore))
}

/// Layers that can be drawn, and the words of layers that cannot.
fn bands(leg: &LegDoc, tongue: Tongue) -> (Vec<Band>, Vec<String>) {
    let (mut bands, mut missing) = (Vec::<Band>::new(), Vec::new());
    for (layer, edge) in LAYERS {
        let inner_mm = bands.last().map_or(0.0, |band| band.outer_mm);
        let doc = leg.layers.iter().find(|doc| doc.layer == layer);
        let unmeasured = || tongue.label(&HalfSectionLabel::Unmeasured { layer });
        let words = doc.map_or_else(unmeasured, |doc| doc.words.clone());
        let radius = doc.map(|doc| 0.5 * doc.diameter_mm);
        let Some(outer_mm) = radius.filter(|r| r.is_finite() && *r > inner_mm) else {
            missing.push(words);
            continue;
        };
        let set = edge.map_or(Some(0.0), |edge| place(leg, edge));
        bands.push(Band {
            layer,
            words,
            inner_mm,
            outer_mm,
            from_mm: set.unwrap_or(0.0),
            is_unset: set.is_none(),
        });
    }
    for n in 0..bands.len() {
        if bands[n].is_unset {
            bands[n].from_mm = anywhere(&bands, n, mouth(leg).unwrap_or(0.0));
        }
    }
    (bands, missing)
}

/// Place for an edge that is not set, mm: apart from every set edge, so that it is not mistaken for one.
fn anywhere(bands: &[Band], n: usize, mouth_mm: f64) -> f64 {
    let inner = bands[..n].iter().filter(|band| !band.is_unset);
    let least = inner.map(|band| band.from_mm).fold(mouth_mm, f64::max);
    let outer = bands[n..].iter().filter(|band| !band.is_unset);
    let most = outer.map(|band| band.from_mm).fold(f64::INFINITY, f64::min);
    if most.is_finite() && most > least {
        0.5 * (least + most)
    } else {
        least + 15.0
    }
}

/// Connector; `None` if it cannot be drawn.
fn barrel(leg: &LegDoc) -> Option<Barrel> {
    let connector = leg.connector.as_ref()?;
    let half = 0.5 * connector.length_mm;
    let mouth_mm = mouth(leg).unwrap_or(half);
    let from = if connector.two_ended {
        let centre = place(leg, Plane::ConnectorCentre).unwrap_or(0.0);
        let across = connector.other_end_mm;
        across.map_or(2.0 * centre - mouth_mm, |across| centre - across)
    } else {
        place(leg, Plane::ConnectorSeat).unwrap_or(mouth_mm - connector.length_mm)
    };
    let radius_mm = 0.5 * connector.outside_diameter_mm;
    let is_known =
        mouth_mm > from && mouth_mm.is_finite() && radius_mm.is_finite() && radius_mm > 0.0;
    is_known.then(|| Barrel {
        from_mm: from.max(LEAST_MM),
        mouth_mm,
        radius_mm,
        is_cut_off: from < LEAST_MM,
    })
}

/// Body, electrode and stress control, as far as their planes are known.
fn stretches(leg: &LegDoc, tongue: Tongue) -> Vec<(Of, String, [f64; 2])> {
    let seat = place(leg, Plane::BodySeat);
    // A body over both cables continues beyond its centre.
    let start = seat.or_else(|| place(leg, Plane::BodyCentre).map(|_| LEAST_MM));
    let start = start.map(|x| x.max(LEAST_MM));
    let mut found = Vec::new();
    let mut add = |what, name: HalfSectionLabel, from: Option<f64>, to: Option<f64>| {
        if let (Some(from), Some(to)) = (from, to)
            && to > from
        {
            found.push((what, tongue.label(&name), [from, to]));
        }
    };
    let end = place(leg, Plane::BodyEnd);
    add(Of::Body, HalfSectionLabel::BodyOutline, start, end);
    add(
        Of::Electrode,
        HalfSectionLabel::Electrode,
        start,
        place(leg, Plane::ElectrodeEnd),
    );
    let [near, far] = [Plane::ControlNear, Plane::ControlFar].map(|name| place(leg, name));
    add(Of::Control, HalfSectionLabel::StressControl, near, far);
    found
}

impl Section {
    /// Prepares a leg; windows do not count if a check fails.
    pub(super) fn new(leg: &LegDoc, fails: bool, tongue: Tongue) -> Self {
        let (bands, missing) = bands(leg, tongue);
        let (barrel, stretches) = (barrel(leg), stretches(leg, tongue));
        let mut planes = vec![0.0];
        planes.extend(
            barrel
                .iter()
                .flat_map(|barrel| [barrel.from_mm, barrel.mouth_mm]),
        );
        planes.extend(stretches.iter().flat_map(|(_, _, ends)| *ends));
        planes.extend(bands.iter().map(|band| band.from_mm));
        planes.extend(
            leg.planes
                .iter()
                .map(|plane| plane.nominal_mm.max(LEAST_MM)),
        );
        planes.extend(leg.cuts.iter().filter_map(place_of));
        if !fails {
            let windows = leg
                .cuts
                .iter()
                .filter_map(|cut| cut.printed_window.as_ref());
            planes.extend(windows.filter_map(|window| window.at_mm).flatten());
        }
        let radius = bands.iter().map(|band| band.outer_mm);
        let radius = radius.chain(barrel.iter().map(|barrel| barrel.radius_mm));
        let least = radius.fold(0.0, f64::max) / RADIUS;
        Self {
            tongue,
            scale: Scale::new(
                &planes,
                barrel.as_ref().map_or(0.0, |barrel| barrel.mouth_mm),
                [LEFT + 2.0, END - TAIL],
                least,
            ),
            has_unset_edge: bands.iter().any(|band| band.is_unset),
            bands,
            barrel,
            stretches,
            missing,
        }
    }

    /// Millimetres on the cable per millimetre on the page.
    pub(super) fn ratio(&self) -> f64 {
        self.scale.ratio
    }

    /// Radius of the leg's surface at a place, mm on the page.
    pub(super) fn surface(&self, mm: f64) -> f64 {
        let here = self.bands.iter().filter(|band| band.from_mm <= mm + 1e-6);
        here.map(|band| band.outer_mm).fold(0.0, f64::max) / self.ratio()
    }

    /// Radius of the parts below the body, mm on the page.
    fn covered(&self) -> f64 {
        let is_within = |band: &&Band| !matches!(band.layer, Layer::MetallicShield | Layer::Jacket);
        let layers = self
            .bands
            .iter()
            .filter(is_within)
            .map(|band| band.outer_mm);
        let barrel = self.barrel.iter().map(|barrel| barrel.radius_mm);
        layers.chain(barrel).fold(0.0, f64::max) / self.ratio()
    }

    /// Draws everything above the axis, below `y`; returns the axis.
    pub(super) fn draw(&self, sheet: &mut Sheet, y: f64) -> f64 {
        let names = self.names();
        let top = y + PITCH * names.len() as f64 + 1.0;
        let high = self.high() + 3.0;
        let body = self.covered() + BODY + 0.5;
        let names_of_layers = PITCH * self.bands.len() as f64 - self.legend_below();
        let axis = top + high.max(body).max(names_of_layers);
        self.layers(sheet, axis);
        self.connector(sheet, axis);
        self.body(sheet, axis);
        self.breaks(sheet, axis);
        for (n, (at, radius, name)) in names.iter().enumerate() {
            let base = y + PITCH * (n as f64 + 1.0);
            sheet.text(Words::new([at + 0.8, base], SMALL, name));
            sheet.stroke([*at, base - 1.6], [*at, axis - radius], 0.12, Role::Leader);
        }
        self.legend(sheet, axis);
        axis
    }

    /// Greatest radius of the leg, mm on the page.
    fn high(&self) -> f64 {
        self.bands.last().map_or(0.0, |band| band.outer_mm) / self.ratio()
    }

    /// Depth of the layers' names below the axis, mm: small, because the rows begin there.
    fn legend_below(&self) -> f64 {
        (0.5 * PITCH * self.bands.len() as f64 - 0.5 * self.high()).min(2.0)
    }

    fn layers(&self, sheet: &mut Sheet, axis: f64) {
        let ratio = self.ratio();
        for band in &self.bands {
            let [x, top, bottom] = [
                self.scale.at(band.from_mm),
                axis - band.outer_mm / ratio,
                axis - band.inner_mm / ratio,
            ];
            let fill = sheet.paint.fill(band.layer.file_name());
            sheet.trail(Trail::around([x, top], [END, bottom]), &Look::filled(fill));
            let line = Look::line(sheet.paint.ink, 0.2);
            sheet.trail(Trail::from([x, top]).level_to(END), &line);
            if band.is_unset {
                self.torn(sheet, x, [top + 1.0, bottom - 1.0], -1.0);
            } else {
                sheet.trail(Trail::from([x, bottom]).upright_to(top), &line);
            }
        }
        let line = Look::line(sheet.paint.ink, 0.15).dashed("5 0.8 0.8 0.8");
        sheet.trail(Trail::from([LEFT, axis]).level_to(END + 2.0), &line);
        let top = axis - self.high();
        self.torn(sheet, END, [top, axis], 1.0);
    }

    /// Draws a break line across the section, where the part to its right (1) or left (-1) is taken away.
    fn torn(&self, sheet: &mut Sheet, x: f64, [top, bottom]: [f64; 2], side: f64) {
        let mut edge = Trail::from([x, top - 1.0]);
        let teeth = ((bottom - top + 2.0) / 0.8).round().clamp(2.0, 6.0);
        let step = (bottom - top + 2.0) / teeth;
        for n in 1..=teeth as usize {
            let out = match n {
                n if n as f64 >= teeth => 0.0,
                n => [0.7, -0.7][n % 2],
            };
            edge = edge.to([x + out, top - 1.0 + step * n as f64]);
        }
        let (paper, ink) = (sheet.paint.paper, sheet.paint.ink);
        let away = edge
            .clone()
            .level_to(x + 1.2 * side)
            .upright_to(top - 1.0)
            .close();
        sheet.trail(away, &Look::filled(paper));
        sheet.trail(edge, &Look::line(ink, 0.25));
    }

    fn connector(&self, sheet: &mut Sheet, axis: f64) {
        let Some(barrel) = &self.barrel else { return };
        let ratio = self.ratio();
        let [from, datum, mouth] = [barrel.from_mm, 0.0, barrel.mouth_mm].map(|x| self.scale.at(x));
        let top = axis - barrel.radius_mm / ratio;
        let inner = self
            .bands
            .iter()
            .find(|band| band.layer == Layer::Conductor);
        let inner = axis - inner.map_or(0.0, |band| band.outer_mm.min(barrel.radius_mm)) / ratio;
        let fill = sheet.paint.fill("connector");
        let look = Look::filled(fill).edged(sheet.paint.ink, 0.25);
        let outline = Trail::from([from, axis]).upright_to(top).level_to(mouth);
        let outline = outline
            .upright_to(inner)
            .level_to(datum)
            .upright_to(axis)
            .close();
        sheet.trail(outline, &look);
        if barrel.is_cut_off {
            self.torn(sheet, from, [top, axis], -1.0);
        }
    }

    fn body(&self, sheet: &mut Sheet, axis: f64) {
        let low = axis - self.covered() - 0.5;
        for (what, _, ends) in &self.stretches {
            let [from, to] = ends.map(|x| self.scale.at(x));
            if *what == Of::Body {
                let top = low - BODY;
                let look = Look::line(sheet.paint.ink, 0.3).dashed("2 0.8");
                // A body over both cables continues to the left.
                let start = if ends[0] <= LEAST_MM {
                    Trail::from([from, top])
                } else {
                    Trail::from([from, axis]).upright_to(top)
                };
                sheet.trail(start.level_to(to).upright_to(low), &look);
            } else {
                let fill = sheet.paint.fill(what.paint());
                sheet.rectangle([from, low - 2.2, to, low - 0.4], &fill, 0.2);
            }
        }
    }

    fn breaks(&self, sheet: &mut Sheet, axis: f64) {
        let gaps = self.scale.breaks();
        let high = self.high();
        let (paper, ink) = (sheet.paint.paper, sheet.paint.ink);
        for x in gaps {
            let (top, bottom) = (axis - high - 1.0, axis + 1.0);
            let wave = |x: f64| {
                let third = (bottom - top) / 3.0;
                let guides = [[x - 0.8, top + third], [x + 0.8, top + 2.0 * third]];
                Trail::from([x, top]).bend(guides[0], guides[1], [x, bottom])
            };
            sheet.trail(wave(x), &Look::line(paper, 1.0));
            let line = Look::line(ink, 0.25);
            sheet.trail(wave(x - 0.5), &line);
            sheet.trail(wave(x + 0.5), &line);
        }
    }

    /// Names above the section from left to right: place and radius on the page, words.
    fn names(&self) -> Vec<(f64, f64, String)> {
        let mut names = Vec::new();
        if let Some(barrel) = &self.barrel {
            let x = self
                .scale
                .at(0.5 * (barrel.mouth_mm + barrel.from_mm.max(0.0)));
            names.push((
                x,
                0.9 * barrel.radius_mm / self.ratio(),
                self.tongue.label(&HalfSectionLabel::Connector),
            ));
        }
        let unset = self.bands.iter().filter(|band| band.is_unset);
        for band in unset.filter(|band| band.layer != Layer::ConductorScreen) {
            let name = self.tongue.label(&HalfSectionLabel::EdgeNotSet {
                layer: shortened(&band.words, 24),
            });
            names.push((
                self.scale.at(band.from_mm),
                band.outer_mm / self.ratio(),
                name,
            ));
        }
        let low = self.covered() + 0.5;
        for (what, name, [from, to]) in &self.stretches {
            let (share, radius) = match *what {
                Of::Body => (0.68, low + BODY),
                Of::Electrode => (0.85, low + 1.2),
                Of::Control => (0.5, low + 1.2),
            };
            let [from, to] = [self.scale.at(*from), self.scale.at(*to)];
            names.push((from + share * (to - from), radius, name.clone()));
        }
        let high = self.high();
        let gaps = self.scale.breaks();
        let n_most = if gaps.len() > 2 { 1 } else { 2 };
        let words = match gaps.len() {
            0..=2 => HalfSectionLabel::Broken,
            _ => HalfSectionLabel::BrokenAtEach,
        };
        let words = self.tongue.label(&words);
        names.extend(
            gaps.iter()
                .take(n_most)
                .map(|x| (*x, high + 1.0, words.clone())),
        );
        names.sort_by(|a, b| a.0.total_cmp(&b.0));
        names
    }

    /// Writes the names of the layers right of the section, the outermost at the top.
    fn legend(&self, sheet: &mut Sheet, axis: f64) {
        let ratio = self.ratio();
        let lowest = axis + self.legend_below();
        for (n, band) in self.bands.iter().enumerate() {
            let base = lowest - PITCH * n as f64;
            let middle = base - 0.8;
            let at = axis - 0.5 * (band.inner_mm + band.outer_mm) / ratio;
            sheet.stroke([END - 1.5, at], [COLUMN - 1.0, middle], 0.12, Role::Leader);
            let fill = sheet.paint.fill(band.layer.file_name());
            sheet.rectangle(
                [COLUMN - 1.0, middle - 1.1, COLUMN + 3.0, middle + 1.1],
                &fill,
                0.15,
            );
            let name = Words::new([COLUMN + 4.0, base], SMALL, &band.words);
            sheet.text(fitted(name, 39));
        }
    }
}
