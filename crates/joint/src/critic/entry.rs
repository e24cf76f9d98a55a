//! Entry: one row of any kind in the critic's form.

use crate::cable::{Layer, Words};
use crate::catalogue::{
    Adapter, Body, Bus, Catalogue, Connector, ConnectorEnd, Consumable, Fits, Head, LinkRow, Plug,
    Seal, ShieldPart,
};
use jointwright_units::Length;

/// Row by its kind.
#[derive(Clone, Copy)]
pub(super) enum Kind<'c> {
    /// Body.
    Body(&'c Body),
    /// Bus.
    Bus(&'c Bus),
    /// Plug.
    Plug(&'c Plug),
    /// Connector with one of its ends, or with both if they are alike.
    Connector(&'c Connector, &'c ConnectorEnd),
    /// Adapter.
    Adapter(&'c Adapter),
    /// Shield part.
    ShieldPart(&'c ShieldPart),
    /// Seal.
    Seal(&'c Seal),
    /// Consumable.
    Consumable(&'c Consumable),
}

/// One row, with the fields that several kinds share.
#[derive(Clone, Copy)]
pub(super) struct Entry<'c> {
    pub kind: Kind<'c>,
    pub head: &'c Head,
    pub fits: &'c [Fits],
    pub links: &'c [LinkRow],
}

/// A length of a row, with its name in messages.
pub(super) struct Measure {
    pub name: String,
    pub value: Length,
    pub grows: Grows,
}

/// Whether a length is expected to rise from row to row of a table.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Grows {
    /// It follows the cable's diameter.
    WithCable,
    /// It mostly follows it.
    Mostly,
    /// Nothing implies that it does.
    No,
}

/// Every row of the catalogue.
pub(super) fn entries(catalogue: &Catalogue) -> Vec<Entry<'_>> {
    let bare = |kind, head| Entry {
        kind,
        head,
        fits: &[],
        links: &[],
    };
    // Each side of a body with unlike sides is a row of its own here.
    let whole = catalogue.bodies.iter().filter(|row| row.sides.is_empty());
    let sides = catalogue.bodies.iter().flat_map(|row| &row.sides);
    let bodies = whole.chain(sides).map(|row| Entry {
        kind: Kind::Body(row),
        head: &row.head,
        fits: &row.fits,
        links: &row.links,
    });
    // Each end is a row of its own here, with the fields that hold at both ends.
    let connectors = catalogue.connectors.iter().flat_map(|row| {
        row.ends.iter().map(move |end| Entry {
            kind: Kind::Connector(row, end),
            head: &row.head,
            fits: &[],
            links: &row.links,
        })
    });
    let adapters = catalogue.adapters.iter().map(|row| Entry {
        kind: Kind::Adapter(row),
        head: &row.head,
        fits: &row.fits,
        links: &row.links,
    });
    let shield_parts = catalogue.shield_parts.iter().map(|row| Entry {
        kind: Kind::ShieldPart(row),
        head: &row.head,
        fits: &row.fits,
        links: &row.links,
    });
    let seals = catalogue.seals.iter().map(|row| Entry {
        kind: Kind::Seal(row),
        head: &row.head,
        fits: &row.fits,
        links: &row.links,
    });
    let buses = catalogue.buses.iter().map(|r| bare(Kind::Bus(r), &r.head));
    let plugs = catalogue.plugs.iter();
    let plugs = plugs.map(|r| bare(Kind::Plug(r), &r.head));
    let consumables = catalogue.consumables.iter();
    let consumables = consumables.map(|r| bare(Kind::Consumable(r), &r.head));
    bodies
        .chain(connectors)
        .chain(adapters)
        .chain(shield_parts)
        .chain(seals)
        .chain(buses)
        .chain(plugs)
        .chain(consumables)
        .collect()
}

impl<'c> Entry<'c> {
    /// Distances of the row, including those of its end.
    pub fn all_links(&self) -> impl Iterator<Item = &'c LinkRow> {
        let of_end: &[LinkRow] = match self.kind {
            Kind::Connector(_, end) => &end.links,
            _ => &[],
        };
        self.links.iter().chain(of_end)
    }

    /// Highest system voltage in kV, for rows that are rated.
    pub fn system_greatest_kv(&self) -> Option<f64> {
        match self.kind {
            Kind::Body(row) => Some(row.system_greatest_kv),
            Kind::Bus(row) => Some(row.system_greatest_kv),
            Kind::Plug(row) => Some(row.system_greatest_kv),
            Kind::Adapter(row) => Some(row.system_greatest_kv),
            _ => None,
        }
    }

    /// Every length of the row, links included, without tolerances.
    pub fn measures(&self) -> Vec<Measure> {
        use Grows::{Mostly, No, WithCable};
        let mut all = Vec::new();
        let mut add = |name: &str, value: Option<Length>, grows: Grows| {
            all.extend(value.map(|value| Measure {
                name: name.to_owned(),
                value,
                grows,
            }));
        };
        for fits in self.fits {
            let range = range_words(&fits.at, fits.over);
            let (least, greatest) = (fits.range.least(), fits.range.greatest());
            add(&format!("least of the {range}"), Some(least), WithCable);
            add(
                &format!("greatest of the {range}"),
                Some(greatest),
                WithCable,
            );
            add(&format!("ovality of the {range}"), fits.ovality, No);
        }
        match self.kind {
            Kind::Body(row) => {
                let diameter = row.connector_diameter;
                let (least, greatest) =
                    (diameter.map(|d| d.least()), diameter.map(|d| d.greatest()));
                add("connector_diameter_least", least, WithCable);
                add("connector_diameter_greatest", greatest, WithCable);
                let length = row.connector_length_greatest;
                add("connector_length_greatest", length, Mostly);
                add("length", Some(row.length), Mostly);
                add("parked_length", row.parked_length, Mostly);
                add("bend_keep_off", row.bend_keep_off, Mostly);
                add("electrode_overlap_least", row.electrode_overlap_least, No);
            }
            Kind::Connector(row, end) => {
                add("least of the bore", end.bore.map(|b| b.least()), WithCable);
                let greatest = end.bore.map(|b| b.greatest());
                add("greatest of the bore", greatest, WithCable);
                add("outside_diameter", Some(end.outside_diameter), WithCable);
                let (length, depth) = match row.has_unlike_ends() {
                    true => (end.reach.floor(), Some((end.reach - end.bottom).floor())),
                    false => (row.length, None),
                };
                add("length", Some(length), Mostly);
                add("depth", depth, No);
                add("stop", Some(row.stop), No);
                add("gap_greatest", end.gap_greatest, No);
                add("stands_proud", row.stands_proud, No);
            }
            Kind::Adapter(row) => {
                add("outside_least", Some(row.outside.least()), No);
                add("outside_greatest", Some(row.outside.greatest()), No);
            }
            Kind::Seal(row) => {
                add("overlap_least", row.overlap_least, Mostly);
                add("parked_length", row.parked_length, Mostly);
            }
            Kind::Consumable(row) => {
                add("width", row.tape.map(|t| t.0), No);
                add("thickness", row.tape.map(|t| t.1), No);
            }
            Kind::Bus(_) | Kind::Plug(_) | Kind::ShieldPart(_) => {}
        }
        for link in self.all_links() {
            let name = format!("distance from {} to {}", link.from.name(), link.to.name());
            add(&name, Some(link.distance), Mostly);
        }
        all
    }
}

/// A range in words, as `bore over the insulation`.
pub(super) fn range_words(at: &str, over: Layer) -> String {
    format!("{at} over the {}", over.name(Words::Iec))
}
