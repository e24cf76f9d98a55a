//! Messages about soil, ducts and air around a cable.

use crate::{Tongue, shown};
use jointwright_joint::said::{
    NoDay, SoilCannot, SoilPart, SoilSaid, SoilSource, SoilWhat, StatedFilm, StatedReach,
    StatedSoil, Wording,
};

pub(super) fn say(tongue: Tongue, said: &SoilSaid) -> String {
    match said {
        SoilSaid::Outside {
            total_k_m_per_w,
            parts,
        } => {
            let parts: Vec<String> = parts.iter().map(part).collect();
            format!(
                "{total_k_m_per_w:.3} K m/W outside the cable, computed: {}",
                parts.join(", ")
            )
        }
        SoilSaid::OfStretch { leg, what, outside } => {
            format!("leg {leg}, {what}: {}", tongue.say(outside))
        }
        SoilSaid::AirFilm {
            leg,
            what,
            film_w_per_m2k,
            rise_k,
            diameter_mm,
        } => format!(
            "leg {leg}, {what}: film {film_w_per_m2k:.2} W/(m2 K), computed at the job's load for the least rise along it, {rise_k:.1} K, and its greatest diameter, {diameter_mm:.1} mm ([iec_60287_2_1], from memory)"
        ),
        SoilSaid::AirAlongRun => {
            "film of still air, computed for its own rise ([iec_60287_2_1], from memory)".to_owned()
        }
        SoilSaid::DriesInTwoZones {
            outside,
            above_k,
            dry_k_m_per_w,
        } => format!(
            "{}; where the soil is warmer than the undisturbed soil by more than {above_k} K it dries, to {dry_k_m_per_w} K m/W (two zones, [iec_60287_1_1] clause 1.4.2, from memory)",
            tongue.say(outside)
        ),
        SoilSaid::Cannot(said) => cannot(tongue, said),
        SoilSaid::NoDay(said) => no_day(tongue, said),
        SoilSaid::Stated(said) => stated(said),
    }
}

fn source(source: SoilSource) -> &'static str {
    match source {
        SoilSource::Images => "closed form (images) [iec_60287_2_1]",
        SoilSource::Trefoil => "[iec_60287_2_1], as [cigre_tb880] case 0-1 has it",
        SoilSource::Memory => "[iec_60287_2_1], from memory",
        SoilSource::ClosedForm => "closed form",
    }
}

fn part(of: &SoilPart) -> String {
    let what = match of.what {
        SoilWhat::AboutTrefoil => "soil about a touching trefoil".to_owned(),
        SoilWhat::JacketOfTrefoil => "jacket of a touching trefoil, more than its own".to_owned(),
        SoilWhat::CircuitsBeside { n_circuits } => format!("{n_circuits} circuits beside it"),
        SoilWhat::AboutOne => "soil".to_owned(),
        SoilWhat::AboutTouching { n_lines } => {
            format!("soil, the worst placed of {n_lines} that touch and lose alike")
        }
        SoilWhat::AboutApart { n_lines } => {
            format!("soil, the worst placed of {n_lines} that lose alike")
        }
        SoilWhat::FillingOfDuct { at_degc } => format!(
            "filling of the duct, taken at {} degC, where it resists most",
            shown(at_degc)
        ),
        SoilWhat::WallOfDuct => "wall of the duct".to_owned(),
        SoilWhat::BeyondBank => "soil in place of concrete beyond the bank".to_owned(),
    };
    let concrete = if of.is_concrete {
        ", as if all were concrete"
    } else {
        ""
    };
    let dry = if of.is_dry {
        ", all of it dried out"
    } else {
        ""
    };
    format!(
        "{what}{concrete}{dry} {:.3} ({})",
        of.k_m_per_w,
        source(of.source)
    )
}

fn cannot(tongue: Tongue, said: &SoilCannot) -> String {
    match said {
        SoilCannot::LieSo {
            n_lines,
            outside_mm,
            depth_mm,
            why,
        } => format!(
            "{n_lines} of {outside_mm:.0} mm at {depth_mm:.0} mm depth cannot lie so: {}",
            tongue.say(why)
        ),
        SoilCannot::StickOut {
            n_lines,
            outside_mm,
        } => format!("one of {n_lines} of {outside_mm:.0} mm would stick out of the ground"),
        SoilCannot::LieInOneAnother {
            n_lines,
            outside_mm,
        } => format!("{n_lines} of {outside_mm:.0} mm would lie in one another"),
        SoilCannot::MoreThanFourInDuct => {
            "more than 4 cables in one duct are not computed".to_owned()
        }
        SoilCannot::DuctTooNarrow {
            n_cables,
            cable_mm,
            duct_mm,
        } => {
            format!("{n_cables} cables of {cable_mm:.1} mm do not lie in a duct of {duct_mm:.1} mm")
        }
    }
}

fn no_day(tongue: Tongue, said: &NoDay) -> String {
    match said {
        NoDay::NotInSoil => "a daily load is computed for cables in soil only".to_owned(),
        NoDay::InDuct => "a daily load is not computed in ducts".to_owned(),
        NoDay::InDryingSoil => "a daily load is not computed in soil that dries".to_owned(),
        NoDay::NoDiffusivity => "a daily load needs the soil's diffusivity_mm2_per_s".to_owned(),
        NoDay::NotComputed { why } => format!("it is not computed: {}", tongue.say(why)),
    }
}

fn stated(said: &StatedSoil) -> String {
    let leg = match &said.leg {
        Some(leg) => format!("leg {leg}"),
        None => "all legs".to_owned(),
    };
    let reach = match &said.reach {
        StatedReach::FromConductorEnd { until } => format!("to {until} from the conductor end"),
        StatedReach::Long { length_m } => format!("{length_m:.1} m long"),
        StatedReach::ToFarEnd => "to the far end".to_owned(),
    };
    format!(
        "{leg}, {reach}: {}, {} degC, {} ({})",
        said.what,
        said.degc,
        film(&said.film),
        said.source
    )
}

fn film(of: &StatedFilm) -> String {
    match of {
        StatedFilm::Film { w_per_m2k } => format!("{w_per_m2k} W/(m2 K)"),
        StatedFilm::Outside { k_m_per_w } => format!("{k_m_per_w} K m/W"),
        StatedFilm::Computed => "its film computed".to_owned(),
        StatedFilm::Soil {
            k_m_per_w,
            drying,
            depth_m,
            duct,
        } => {
            let dries = drying.map_or(String::new(), |drying| {
                format!(
                    ", drying to {} K m/W above {} K",
                    drying.dry_k_m_per_w, drying.above_k
                )
            });
            let duct = duct.map_or(String::new(), |duct| {
                let cables = match duct.n_cables {
                    1 => "1 cable".to_owned(),
                    n => format!("{n} cables"),
                };
                format!(
                    ", duct of {} and {} mm with {cables} in it",
                    shown(duct.inside_mm),
                    shown(duct.outside_mm)
                )
            });
            format!(
                "soil of {k_m_per_w} K m/W{dries}, {} m deep{duct}",
                shown(*depth_m)
            )
        }
    }
}
