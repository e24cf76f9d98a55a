//! Stated: what surrounds a cable, in the words in which a job says it.

use crate::job::Surrounding;
use crate::limit::shown;

/// A stretch of surroundings as it is stated, with its source.
pub(super) fn stated_words(row: &Surrounding) -> String {
    let leg = row
        .leg
        .as_ref()
        .map_or("all legs".to_owned(), |leg| format!("leg {leg}"));
    let reach = match (row.until, row.length) {
        (Some(until), _) => format!("to {until} from the conductor end"),
        (None, Some(length)) => format!("{:.1} m long", length.mm() * 1e-3),
        (None, None) => "to the far end".to_owned(),
    };
    let film = match (row.film_w_per_m2k, row.outside_k_m_per_w) {
        (Some(film), _) => format!("{film} W/(m2 K)"),
        (None, Some(outside)) => format!("{outside} K m/W"),
        (None, None) => stated(row),
    };
    format!(
        "{leg}, {reach}: {}, {} degC, {film} ({})",
        row.what, row.degc, row.source
    )
}

/// What a surrounding is said to be, from which its film or resistance is computed.
fn stated(row: &Surrounding) -> String {
    let Some(soil) = &row.soil else {
        return "its film computed".to_owned();
    };
    let duct = row.duct.map_or(String::new(), |duct| {
        format!(
            ", duct of {} and {} mm with {} in it",
            shown(duct.inside_m * 1e3),
            shown(duct.outside_m * 1e3),
            if duct.n_cables == 1 {
                "1 cable".to_owned()
            } else {
                format!("{} cables", duct.n_cables)
            }
        )
    });
    let dries = soil.drying.map_or(String::new(), |drying| {
        format!(
            ", drying to {} K m/W above {} K",
            drying.dry_k_m_per_w, drying.above_k
        )
    });
    format!(
        "soil of {} K m/W{dries}, {} m deep{duct}",
        soil.resistivity_k_m_per_w,
        shown(soil.depth_m)
    )
}
