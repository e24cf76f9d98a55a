//! Sentences about a length that cannot be read as it is written.

use jointwright_units::LengthError;

pub(super) fn length_error(error: &LengthError) -> String {
    match error {
        LengthError::Empty => "falta la longitud".to_owned(),
        LengthError::NoNumber { found } => format!("se esperaba un número en `{found}`"),
        LengthError::MalformedNumber { found } => format!("`{found}` no es un número"),
        LengthError::Negative { found } => format!("`{found}` es negativo"),
        LengthError::PlusSign { found } => format!("`{found}` lleva un signo más"),
        LengthError::DecimalComma { found } => format!("`{found}` contiene una coma"),
        LengthError::NoUnit { number } => format!("`{number}` no tiene unidad"),
        LengthError::UnknownUnit { unit } => {
            format!("`{unit}` no es una unidad de longitud conocida aquí")
        }
        LengthError::DecimalInch { found } => {
            format!("`{found}` es un decimal de pulgada, y un corte se lee en fracciones")
        }
        LengthError::DecimalFoot { found } => format!(
            "`{found}` es un decimal de pie, y un corte se lee en pies, pulgadas y fracciones"
        ),
        LengthError::Denominator {
            numerator,
            denominator,
        } => {
            format!("`{numerator}/{denominator}` no es una fracción que muestre una cinta métrica")
        }
        LengthError::ZeroNumerator { denominator } => {
            format!("`0/{denominator}` es cero")
        }
        LengthError::ImproperFraction {
            numerator,
            denominator,
            ..
        } => format!("`{numerator}/{denominator}` no es menor que uno"),
        LengthError::FractionOfUnit { number, unit } => {
            format!("`{number} {unit}` es una fracción de una unidad que no se lee en fracciones")
        }
        LengthError::TwoNumbers { first, second } => {
            format!("`{first}` y `{second}` son dos números juntos")
        }
        LengthError::LooseDash { found } => {
            format!("el guion en `{found}` no une un número entero con su fracción")
        }
        LengthError::InchesPastFoot { inches } => {
            format!("`{inches}` pulgadas detrás de los pies son un pie o más")
        }
        LengthError::TrailingText { text } => {
            format!("`{text}` sigue a una longitud que ya está completa")
        }
        LengthError::TooFine { found } => format!("`{found}` es más fino que un nanómetro"),
        LengthError::TooLong { found } => format!("`{found}` es más de 10 km"),
    }
}

pub(super) fn length_hint(error: &LengthError) -> String {
    let fixed = match error {
        LengthError::Empty => "Escriba un número y su unidad, como 7 1/16 in o 179.4 mm.",
        LengthError::NoNumber { .. } => "Empiece con un número, como 7 1/16 in o 179.4 mm.",
        LengthError::MalformedNumber { .. } => {
            "Escriba las pulgadas como número entero, espacio y fracción, como 7 1/16 in, y los milímetros con un solo punto decimal, como 179.4 mm."
        }
        LengthError::Negative { .. } => {
            "Escriba la longitud sin signo; un guion solo puede unir las pulgadas enteras con su fracción, como en 7-1/16 in."
        }
        LengthError::PlusSign { .. } => {
            "Escriba la longitud sin signo; si se quiere una suma, escriba su resultado."
        }
        LengthError::DecimalComma { found } => return comma_hint(found),
        LengthError::NoUnit { number } => {
            return format!("Escriba la unidad detrás de {number}: in, ft, mm, cm, m o mil.");
        }
        LengthError::UnknownUnit { .. } => {
            "Use in, ft, mm, cm, m o mil, o las marcas \" para pulgadas y ' para pies."
        }
        LengthError::DecimalInch { .. } => {
            "Escriba la fracción como la muestra la cinta métrica, por ejemplo 7 1/16 in, o dé la longitud en milímetros."
        }
        LengthError::DecimalFoot { .. } => {
            "Escriba pies y pulgadas, como 2 ft 3 1/2 in, o dé la longitud en milímetros."
        }
        LengthError::Denominator { .. } => {
            "Use medios, cuartos, octavos, dieciseisavos, treintaidosavos o sesentaicuatroavos de pulgada."
        }
        LengthError::ZeroNumerator { .. } => {
            "Lea otra vez la cinta métrica; si no hay fracción, escriba solo las pulgadas enteras, como 7 in."
        }
        LengthError::ImproperFraction { may_mean, .. } if !may_mean.is_empty() => {
            return format!(
                "Escriba {} si eso es lo que se quería: entre las pulgadas enteras y la fracción va un espacio o un guion.",
                choices(may_mean)
            );
        }
        LengthError::ImproperFraction { .. } => {
            "Escriba las pulgadas enteras y una fracción menor que uno, como 7 1/16 in."
        }
        LengthError::FractionOfUnit { .. } => {
            "Escriba el número con punto decimal, como 179.4 mm, o pies con pulgadas, como 2 ft 3 1/2 in; solo las pulgadas tienen fracciones."
        }
        LengthError::TwoNumbers { .. } => {
            "Escriba una sola longitud; si el segundo número es parte de una fracción, escríbala con su barra, como en 7 1/16 in."
        }
        LengthError::LooseDash { .. } => {
            "Escriba las pulgadas enteras y la fracción con un espacio o un guion entre ellas, como en 7 1/16 in o 7-1/16 in."
        }
        LengthError::InchesPastFoot { .. } => {
            "Escriba menos de 12 pulgadas detrás de los pies, o escriba toda la longitud en pulgadas."
        }
        LengthError::TrailingText { .. } => {
            "Termine el texto después de la unidad, y ponga las notas en otro lugar."
        }
        LengthError::TooFine { .. } => {
            "Escriba menos decimales; ningún instrumento de obra lee un nanómetro."
        }
        LengthError::TooLong { .. } => {
            "Revise el número y su unidad; ninguna longitud de un empalme se acerca a 10 km."
        }
    };
    fixed.to_owned()
}

/// Items joined by commas and a last "o".
fn choices(items: &[String]) -> String {
    match items {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} o {last}", first.join(", ")),
    }
}

/// A comma is a decimal sign to some and a thousands mark to others; with three digits behind it, either may be meant.
pub(super) fn comma_hint(found: &str) -> String {
    let (before, after) = found.split_once(',').unwrap_or((found, ""));
    if before.is_empty() || after.is_empty() || after.contains(',') {
        return "Escriba el decimal con punto, como 179.4, y los millares sin ninguna marca."
            .to_owned();
    }
    if after.len() == 3 {
        return format!(
            "Escriba {before}.{after} si se quería un decimal, o {before}{after} si se querían millares."
        );
    }
    format!("Escriba el decimal con punto: {before}.{after}.")
}
