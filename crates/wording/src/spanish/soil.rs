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
                "{total_k_m_per_w:.3} K m/W fuera del cable, calculado: {}",
                parts.join(", ")
            )
        }
        SoilSaid::OfStretch { leg, what, outside } => {
            format!("ramal {leg}, {what}: {}", tongue.say(outside))
        }
        SoilSaid::AirFilm {
            leg,
            what,
            film_w_per_m2k,
            rise_k,
            diameter_mm,
        } => format!(
            "ramal {leg}, {what}: película {film_w_per_m2k:.2} W/(m2 K), calculada con la carga del trabajo para el menor aumento de temperatura a lo largo del tramo, {rise_k:.1} K, y su diámetro mayor, {diameter_mm:.1} mm ([iec_60287_2_1], de memoria)"
        ),
        SoilSaid::AirAlongRun => {
            "película de aire quieto, calculada para su propio aumento de temperatura ([iec_60287_2_1], de memoria)"
                .to_owned()
        }
        SoilSaid::DriesInTwoZones {
            outside,
            above_k,
            dry_k_m_per_w,
        } => format!(
            "{}; donde el suelo está más de {above_k} K más caliente que el suelo no afectado se seca, hasta {dry_k_m_per_w} K m/W (dos zonas, [iec_60287_1_1] cláusula 1.4.2, de memoria)",
            tongue.say(outside)
        ),
        SoilSaid::Cannot(said) => cannot(tongue, said),
        SoilSaid::NoDay(said) => no_day(tongue, said),
        SoilSaid::Stated(said) => stated(said),
    }
}

fn source(source: SoilSource) -> &'static str {
    match source {
        SoilSource::Images => "forma cerrada (imágenes) [iec_60287_2_1]",
        SoilSource::Trefoil => "[iec_60287_2_1], como lo tiene [cigre_tb880] caso 0-1",
        SoilSource::Memory => "[iec_60287_2_1], de memoria",
        SoilSource::ClosedForm => "forma cerrada",
    }
}

fn part(of: &SoilPart) -> String {
    let what = match of.what {
        SoilWhat::AboutTrefoil => "suelo alrededor de un trébol de cables que se tocan".to_owned(),
        SoilWhat::JacketOfTrefoil => {
            "cubierta de un trébol de cables que se tocan, además de la propia".to_owned()
        }
        SoilWhat::CircuitsBeside { n_circuits: 1 } => "1 circuito a su lado".to_owned(),
        SoilWhat::CircuitsBeside { n_circuits } => format!("{n_circuits} circuitos a su lado"),
        SoilWhat::AboutOne => "suelo".to_owned(),
        SoilWhat::AboutTouching { n_lines } => {
            format!("suelo, el peor ubicado de {n_lines} que se tocan, con pérdidas iguales")
        }
        SoilWhat::AboutApart { n_lines } => {
            format!("suelo, el peor ubicado de {n_lines} con pérdidas iguales")
        }
        SoilWhat::FillingOfDuct { at_degc } => format!(
            "relleno del ducto, tomado a {} degC, donde más resiste",
            shown(at_degc)
        ),
        SoilWhat::WallOfDuct => "pared del ducto".to_owned(),
        SoilWhat::BeyondBank => "suelo en lugar de concreto fuera del banco".to_owned(),
    };
    let concrete = if of.is_concrete {
        ", como si todo fuera concreto"
    } else {
        ""
    };
    let dry = if of.is_dry { ", todo ya seco" } else { "" };
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
            "{n_lines} de {outside_mm:.0} mm a {depth_mm:.0} mm de profundidad no pueden estar así: {}",
            tongue.say(why)
        ),
        SoilCannot::StickOut {
            n_lines,
            outside_mm,
        } => format!("uno de {n_lines} de {outside_mm:.0} mm sobresaldría del suelo"),
        SoilCannot::LieInOneAnother {
            n_lines,
            outside_mm,
        } => format!("{n_lines} de {outside_mm:.0} mm estarían uno dentro del otro"),
        SoilCannot::MoreThanFourInDuct => "no se calculan más de 4 cables en un ducto".to_owned(),
        SoilCannot::DuctTooNarrow {
            n_cables,
            cable_mm,
            duct_mm,
        } => {
            format!("{n_cables} cables de {cable_mm:.1} mm no caben en un ducto de {duct_mm:.1} mm")
        }
    }
}

fn no_day(tongue: Tongue, said: &NoDay) -> String {
    match said {
        NoDay::NotInSoil => "una carga diaria solo se calcula para cables en el suelo".to_owned(),
        NoDay::InDuct => "una carga diaria no se calcula en ductos".to_owned(),
        NoDay::InDryingSoil => "una carga diaria no se calcula en suelo que se seca".to_owned(),
        NoDay::NoDiffusivity => {
            "una carga diaria necesita `diffusivity_mm2_per_s` del suelo".to_owned()
        }
        NoDay::NotComputed { why } => format!("no se calcula: {}", tongue.say(why)),
    }
}

fn stated(said: &StatedSoil) -> String {
    let leg = match &said.leg {
        Some(leg) => format!("ramal {leg}"),
        None => "todos los ramales".to_owned(),
    };
    let reach = match &said.reach {
        StatedReach::FromConductorEnd { until } => {
            format!("hasta {until} desde el extremo del conductor")
        }
        StatedReach::Long { length_m } => format!("{length_m:.1} m de largo"),
        StatedReach::ToFarEnd => "hasta el extremo lejano".to_owned(),
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
        StatedFilm::Computed => "su película se calcula".to_owned(),
        StatedFilm::Soil {
            k_m_per_w,
            drying,
            depth_m,
            duct,
        } => {
            let dries = drying.map_or(String::new(), |drying| {
                format!(
                    ", que se seca hasta {} K m/W por encima de {} K",
                    drying.dry_k_m_per_w, drying.above_k
                )
            });
            let duct = duct.map_or(String::new(), |duct| {
                let cables = match duct.n_cables {
                    1 => "1 cable".to_owned(),
                    n => format!("{n} cables"),
                };
                format!(
                    ", ducto de {} y {} mm con {cables} adentro",
                    shown(duct.inside_mm),
                    shown(duct.outside_mm)
                )
            });
            format!(
                "suelo de {k_m_per_w} K m/W{dries}, a {} m de profundidad{duct}",
                shown(*depth_m)
            )
        }
    }
}
