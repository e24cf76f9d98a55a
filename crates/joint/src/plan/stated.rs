//! Stated: surroundings of a cable in the job's words.

use crate::job::Surrounding;
use crate::said::{Said, SoilSaid, StatedDrying, StatedDuct, StatedFilm, StatedReach, StatedSoil};

/// Stretch of surroundings as stated, with its source.
pub(super) fn stated(row: &Surrounding) -> Said {
    let film = match (row.film_w_per_m2k, row.outside_k_m_per_w) {
        (Some(w_per_m2k), _) => StatedFilm::Film { w_per_m2k },
        (None, Some(k_m_per_w)) => StatedFilm::Outside { k_m_per_w },
        (None, None) => of_soil(row),
    };
    let reach = match (row.until, row.length) {
        (Some(until), _) => StatedReach::FromConductorEnd {
            until: until.to_string(),
        },
        (None, Some(length)) => StatedReach::Long {
            length_m: length.m(),
        },
        (None, None) => StatedReach::ToFarEnd,
    };
    SoilSaid::Stated(StatedSoil {
        leg: row.leg.clone(),
        reach,
        what: row.what.clone(),
        degc: row.degc,
        film,
        source: row.source.clone(),
    })
    .into()
}

/// Stated soil, depth and duct, from which the film or the resistance is computed.
fn of_soil(row: &Surrounding) -> StatedFilm {
    let Some(soil) = &row.soil else {
        return StatedFilm::Computed;
    };
    StatedFilm::Soil {
        k_m_per_w: soil.resistivity_k_m_per_w,
        drying: soil.drying.map(|drying| StatedDrying {
            dry_k_m_per_w: drying.dry_k_m_per_w,
            above_k: drying.above_k,
        }),
        depth_m: soil.depth_m,
        duct: row.duct.map(|duct| StatedDuct {
            inside_mm: duct.inside_m * 1e3,
            outside_mm: duct.outside_m * 1e3,
            n_cables: u32::try_from(duct.n_cables).unwrap_or(u32::MAX),
        }),
    }
}
