//! Sentences about the fields that checks compare.

use crate::Tongue;
use jointwright_joint::said::StressSaid;
use jointwright_joint::section::Quantity;

pub(super) fn say(tongue: Tongue, said: &StressSaid) -> String {
    match said {
        StressSaid::Quantity { quantity: of } => quantity(*of).to_owned(),
        StressSaid::AtWorst {
            subject,
            quantity: of,
            voltage_kv,
            trial_hz,
        } => format!(
            "{}, {} con {voltage_kv:.2} kV eficaces a tierra{}, en el peor caso de los rangos permitidos",
            tongue.subject(subject),
            quantity(*of),
            trial_hz.map_or(String::new(), |hz| format!(", con los {hz} Hz del ensayo"))
        ),
        StressSaid::NoSuchPart => "el cuerpo no tiene esa parte".to_owned(),
        StressSaid::NotSettled => "el cálculo no llegó a la exactitud pedida".to_owned(),
        StressSaid::AllowedNotSettled => "el cálculo de lo peor que permiten las instrucciones no llegó a la exactitud pedida".to_owned(),
        StressSaid::ImpulseThroughConducting => "impulso: una capa del cuerpo conduce, y solo se pudo calcular el campo de su permitividad sola, un límite para tiempos muy cortos".to_owned(),
        StressSaid::AtOwnWall => "con el propio espesor de aislamiento de este ramal".to_owned(),
        StressSaid::IsOneOfThose => "aquí todas las dimensiones están dentro de lo que permiten las instrucciones, así que este es uno de los campos que ellas permiten".to_owned(),
        StressSaid::EngineerDecides => "Pare y llame: el ingeniero decide. No recorte, engrase ni apriete nada para que entre.".to_owned(),
        StressSaid::TaperedPlug => "tapón cónico".to_owned(),
    }
}

/// Name of a field.
pub(super) fn quantity(quantity: Quantity) -> &'static str {
    match quantity {
        Quantity::Interface => "campo a lo largo de las superficies",
        Quantity::ElectrodeEnd => "campo en el extremo del electrodo",
        Quantity::DeflectorTip => "campo en la punta del deflector",
        Quantity::DeflectorHeel => "campo en el talón del deflector",
        Quantity::ScreenEdge => "campo a lo largo del cable antes del borde de la pantalla",
    }
}
