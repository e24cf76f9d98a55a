//! Why there is no temperature, or no load.

use jointwright_joint::said::SolverSaid;

pub(super) fn say(said: &SolverSaid) -> String {
    match said {
        SolverSaid::Slice { index, flaw } => format!("rebanada {index}: {flaw}"),
        SolverSaid::Currents { n_currents, n_arms } => {
            format!("{n_currents} corrientes para {n_arms} brazos")
        }
        SolverSaid::NoMesh => "la sección no se puede dividir en una malla".to_owned(),
        SolverSaid::NotNumbered => "las temperaturas no se pueden numerar".to_owned(),
        SolverSaid::NoEquations => "las ecuaciones no se pueden plantear".to_owned(),
        SolverSaid::NoCooling => {
            "nada enfría la sección, así que no tiene temperatura estable".to_owned()
        }
        SolverSaid::LossesOutgrow => "no hay temperatura estable: las pérdidas crecen con la temperatura más rápido que lo que las evacua".to_owned(),
        SolverSaid::NoRegion { r_mm, z_mm } => format!(
            "ninguna región contiene el punto a {r_mm} mm del eje y {z_mm} mm a lo largo de él"
        ),
        SolverSaid::BeyondProximity { argument_ratio } => format!(
            "el efecto de proximidad se conoce hasta un argumento de 2.8, y este es {argument_ratio:.3}"
        ),
        SolverSaid::NotBuried {
            depth_m,
            outside_mm,
        } => format!(
            "un eje a {depth_m} m de profundidad deja descubierto un cable de {outside_mm} mm"
        ),
        SolverSaid::NoRoom { conductor_degc } => format!(
            "sin ninguna corriente el conductor ya estaría a {conductor_degc:.1} °C"
        ),
        SolverSaid::NoResistance => {
            "entre el conductor y lo que lo rodea nada resiste el calor".to_owned()
        }
        SolverSaid::NoSteady {
            current_a,
            greatest_degc,
        } => format!(
            "ninguna temperatura estable por debajo de {greatest_degc:.0} °C lleva {current_a:.1} A"
        ),
        SolverSaid::NoHeating {
            from_degc,
            to_degc,
            time_s,
        } => format!(
            "de {from_degc:.1} a {to_degc:.1} °C en {time_s} s no es un calentamiento que una corriente pueda hacer"
        ),
        SolverSaid::NoIntegral { argument_ratio } => format!(
            "la integral exponencial se pide en {argument_ratio}, y solo tiene valores por encima de 0"
        ),
        SolverSaid::TooShort { time_s, least_s } => format!(
            "después de {time_s:.0} s dos celdas todavía no representan el cable; lo hacen desde {least_s:.0} s"
        ),
        SolverSaid::AlreadyWarm {
            before_degc,
            to_degc,
        } => format!(
            "el conductor está antes a {before_degc:.1} °C, y se permiten {to_degc:.1} °C"
        ),
        SolverSaid::NoNumber => {
            "un largo, una resistencia o una temperatura del circuito no es un número mayor que 0"
                .to_owned()
        }
    }
}
