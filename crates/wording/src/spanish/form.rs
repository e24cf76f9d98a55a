//! Sentences about how a file is written.

use super::field::about;
use super::length::{comma_hint, length_error, length_hint};
use jointwright_joint::said::{
    AboutField, CsvHint, CsvSaid, Expected, FieldSaid, FormHint, FormSaid, FormatOf, Holds,
    MeasureOf, TextSaid, ValueSaid,
};
use jointwright_units::QuantityError;

pub(super) fn say(said: &FormSaid) -> String {
    match said {
        FormSaid::Text(said) => text(said),
        FormSaid::Field(said) => field(said),
        FormSaid::Value(said) => value(said),
        FormSaid::Hint(hint) => self::hint(hint),
        FormSaid::Csv(said) => csv(said),
        FormSaid::CsvHint(hint) => csv_hint(hint),
    }
}

fn text(said: &TextSaid) -> String {
    match said {
        TextSaid::TooLarge {
            n_bytes,
            greatest,
            of,
        } => {
            let what = match of {
                FormatOf::Toml => "un trabajo o un catálogo",
                FormatOf::Csv => "una lista de filas",
            };
            format!("El archivo tiene {n_bytes} bytes; {what} tiene como máximo {greatest}.")
        }
        TextSaid::HardlyMeant { of: FormatOf::Toml } => {
            "Este no parece ser el archivo que se quería; un catálogo grande se puede dividir."
                .to_owned()
        }
        TextSaid::HardlyMeant { of: FormatOf::Csv } => {
            "Este no parece ser el archivo que se quería.".to_owned()
        }
        TextSaid::NotUtf8 { byte, of } => {
            let name = match of {
                FormatOf::Toml => "TOML",
                FormatOf::Csv => "CSV",
            };
            format!(
                "El byte 0x{byte} de aquí no es texto UTF-8; este archivo debe ser {name} simple en UTF-8."
            )
        }
        TextSaid::SaveAsUtf8 { of: FormatOf::Toml } => "Guarde otra vez el archivo como UTF-8 desde un editor de texto; un archivo de hoja de cálculo o de procesador de texto no se puede leer.".to_owned(),
        TextSaid::SaveAsUtf8 { of: FormatOf::Csv } => {
            "Guarde la hoja como CSV en UTF-8.".to_owned()
        }
        TextSaid::Empty { of: FormatOf::Toml } => {
            "El archivo está vacío; se esperaba un documento TOML.".to_owned()
        }
        TextSaid::Empty { of: FormatOf::Csv } => {
            "El archivo está vacío; se esperaba una línea con los nombres de los campos.".to_owned()
        }
        TextSaid::WhatToWrite { of: FormatOf::Toml } => {
            "`jointwright new` escribe un trabajo con comentarios para empezar.".to_owned()
        }
        TextSaid::WhatToWrite { of: FormatOf::Csv } => "Escriba los nombres de los campos en la primera línea y una fila en cada línea de abajo, o quite del trabajo el nombre del archivo.".to_owned(),
        TextSaid::NotToml { why } => format!("Esto no es TOML; el lector dice: `{why}`."),
        TextSaid::LookAtTheLine => {
            "Revise comillas, corchetes y signos de igual en esta línea.".to_owned()
        }
    }
}

fn field(said: &FieldSaid) -> String {
    match said {
        FieldSaid::Missing {
            path,
            field,
            expected: of,
        } => format!(
            "`{path}` no tiene `{field}`; el formato espera {}.",
            expected(of)
        ),
        FieldSaid::Unknown { name, path } => {
            format!("`{name}` no es un campo de `{path}`; el formato no lo conoce.")
        }
        FieldSaid::DidYouMean { field } => format!("¿Quiso decir `{field}`?"),
        FieldSaid::Known { fields } => {
            let fields: Vec<String> = fields.iter().map(|field| format!("`{field}`")).collect();
            format!("Los campos de aquí son: {}.", fields.join(", "))
        }
        FieldSaid::Add(of) => format!("Agregue `{}`{}", of.field, what_it_is(of)),
        FieldSaid::FillIn(of) => format!("Complete `{}`{}", of.field, what_it_is(of)),
        FieldSaid::AddColumn(of) => {
            format!("Agregue la columna `{}`{}", of.field, what_it_is(of))
        }
    }
}

/// Explanation of a field; the format itself has it in English only.
fn what_it_is(of: &AboutField) -> String {
    match about(&of.heading, &of.field) {
        Some(about) => format!(": {about}."),
        None => ".".to_owned(),
    }
}

pub(super) fn expected(of: &Expected) -> String {
    match of {
        Expected::Text => "texto entre comillas".to_owned(),
        Expected::ShortName => "un nombre corto con letras, cifras y guiones".to_owned(),
        Expected::CutLength => {
            "una longitud con su unidad, como \"7 1/16 in\" o \"179.4 mm\"".to_owned()
        }
        Expected::Distance => {
            "una longitud con su unidad, como \"24 1/2 in\", \"24.5 in\" o \"620 mm\"".to_owned()
        }
        Expected::Diameter => {
            "un diámetro o espesor con su unidad, como \"1.062 in\", \"220 mil\" o \"27.0 mm\""
                .to_owned()
        }
        Expected::Quantity { example } => {
            format!("una cantidad con su unidad, como \"{example}\"")
        }
        Expected::Number { least, greatest } => format!("un número de {least} a {greatest}"),
        Expected::WholeNumber { least, greatest } => {
            format!("un número entero de {least} a {greatest}")
        }
        Expected::Flag => "`true` (sí) o `false` (no)".to_owned(),
        Expected::OneOf { words } => format!("una de estas palabras: {}", words_of(words)),
        Expected::Date => "una fecha como 2026-03-09".to_owned(),
        Expected::Table { table } => format!("una tabla `{table}`"),
        Expected::Tables { table } => {
            format!("una lista de tablas `{table}`, cada una con su título entre corchetes dobles")
        }
        Expected::List(of) => format!("una lista; en cada lugar, {}", expected(of)),
        Expected::OneOrSeveral(of) => format!("{}, o una lista de lo mismo", expected(of)),
        Expected::MoreThanNothing(of) => format!("{}, mayor que 0", expected(of)),
    }
}

/// Words of files, which stay as they are.
fn words_of(words: &[String]) -> String {
    let words: Vec<String> = words.iter().map(|word| format!("`{word}`")).collect();
    words.join(", ")
}

const fn holds(what: Holds) -> &'static str {
    match what {
        Holds::Text => "texto",
        Holds::BareWholeNumber => "un número entero sin comillas ni unidad",
        Holds::BareNumber => "un número sin comillas ni unidad",
        Holds::Flag => "`true` o `false`",
        Holds::DateOrTime => "una fecha o una hora",
        Holds::List => "una lista",
        Holds::Table => "una tabla",
    }
}

fn value(said: &ValueSaid) -> String {
    let (path, found, of) = match said {
        ValueSaid::NamesTheSameTwice { path } => {
            return format!("`{path}` nombra dos veces lo mismo en una lista.");
        }
        ValueSaid::IsEmptyList { path, expected } => {
            (path, "es una lista vacía".to_owned(), expected)
        }
        ValueSaid::HoldsAList { path, expected } => {
            (path, "contiene una lista".to_owned(), expected)
        }
        ValueSaid::IsNothing { path, expected } => (path, "es cero".to_owned(), expected),
        ValueSaid::Holds {
            path,
            what,
            expected,
        } => (path, format!("contiene {}", holds(*what)), expected),
        ValueSaid::Is {
            path,
            found,
            expected,
        } => (path, format!("es {found}"), expected),
        ValueSaid::IsText {
            path,
            text,
            expected,
        } => (path, format!("es \"{text}\""), expected),
        ValueSaid::IsTheText {
            path,
            text,
            expected,
        } => (path, format!("es el texto \"{text}\""), expected),
        ValueSaid::IsEmptyText { path, expected } => {
            (path, "es un texto vacío".to_owned(), expected)
        }
        ValueSaid::BreaksALine { path, expected } => (
            path,
            "es un texto con un salto de línea u otro carácter de control".to_owned(),
            expected,
        ),
        ValueSaid::IsNoLength {
            path,
            text,
            error,
            expected,
        } => (
            path,
            format!("es \"{text}\": {}", length_error(error)),
            expected,
        ),
        ValueSaid::IsNoQuantity {
            path,
            text,
            measure,
            error,
            expected,
        } => (
            path,
            format!("es \"{text}\": {}", quantity_error(*measure, error)),
            expected,
        ),
    };
    format!("`{path}` {found}; el formato espera {}.", expected(of))
}

fn hint(hint: &FormHint) -> String {
    let fixed = match hint {
        FormHint::NameOne => "Nombre al menos uno, o quite la fila.",
        FormHint::CountsOnceForEach => {
            "La fila cuenta una vez para cada uno: nómbrelos una sola vez."
        }
        FormHint::OneEndAlone => {
            "Esta fila dice lo que se leyó, contó o ensayó una vez, en un extremo: lo que muestra un extremo no dice nada de otro. Dé a cada extremo su propia fila."
        }
        FormHint::WriteWhatItIs => {
            "Todo instrumento puede errar, y todo lo que existe tiene tamaño: escriba el valor, o quite la línea."
        }
        FormHint::PutQuotes => "Escriba el valor entre comillas y con su unidad, si la tiene.",
        FormHint::TakeBracketsAway => {
            "Quite los corchetes, o el segundo par de ellos en un título."
        }
        FormHint::TakeQuotesAway => "Quite las comillas.",
        FormHint::LettersAndDigits => "Use solo letras, cifras y guiones.",
        FormHint::DateWithoutQuotes => "Escriba la fecha como año-mes-día y sin comillas.",
        FormHint::CannotBeNegative => "No puede ser negativo.",
        FormHint::FillItIn => "Complételo, o quite la línea.",
        FormHint::OnOneLine => "Escríbalo en una sola línea, sin caracteres de control.",
        FormHint::WireGauge { gauge, mil } => {
            return format!(
                "Un alambre sólido de {gauge} AWG tiene {mil} mil de espesor: escriba \"{mil} mil\", o lo que indican los documentos."
            );
        }
        FormHint::DidYouMean { words } => {
            let words: Vec<String> = words.iter().map(|word| format!("`{word}`")).collect();
            return format!("¿Quiso decir {}?", words.join(" o "));
        }
        FormHint::Length(error) => return length_hint(error),
        FormHint::Quantity { measure, error } => return quantity_hint(*measure, error),
    };
    fixed.to_owned()
}

/// A quantity, with its article.
const fn the_measure(measure: MeasureOf) -> &'static str {
    match measure {
        MeasureOf::Voltage => "la tensión eficaz",
        MeasureOf::Current => "la corriente",
        MeasureOf::Time => "el tiempo",
        MeasureOf::Temperature => "la temperatura",
        MeasureOf::Area => "el área",
        MeasureOf::Frequency => "la frecuencia",
        MeasureOf::Resistance => "la resistencia",
        MeasureOf::Torque => "el par",
    }
}

/// Units in which a quantity may be written.
const fn units(measure: MeasureOf) -> &'static str {
    match measure {
        MeasureOf::Voltage => "V o kV",
        MeasureOf::Current => "A o kA",
        MeasureOf::Time => "s, ms, min o h",
        MeasureOf::Temperature => "degC, °C, degF o °F",
        MeasureOf::Area => "mm2, mm², kcmil o cmil",
        MeasureOf::Frequency => "Hz",
        MeasureOf::Resistance => "ohm, mohm o uohm",
        MeasureOf::Torque => "N·m, ft·lbf o in·lbf",
    }
}

fn quantity_error(measure: MeasureOf, error: &QuantityError) -> String {
    let of = the_measure(measure);
    match error {
        QuantityError::Empty { .. } => format!("falta {of}"),
        QuantityError::NoNumber { found, .. } => format!("se esperaba un número en `{found}`"),
        QuantityError::MalformedNumber { found } => format!("`{found}` no es un número"),
        QuantityError::Negative { found, .. } => format!("`{found}` es negativo, y {of} no lo es"),
        QuantityError::PlusSign { found } => format!("`{found}` lleva un signo más"),
        QuantityError::DecimalComma { found } => format!("`{found}` contiene una coma"),
        QuantityError::TwoNumbers { first, second } => {
            format!("`{first}` y `{second}` son dos números juntos")
        }
        QuantityError::NoUnit { number, .. } => format!("`{number}` no tiene unidad"),
        QuantityError::UnknownUnit { unit, .. } => {
            format!("`{unit}` no es una unidad conocida aquí para {of}")
        }
        QuantityError::Cycles { found } => {
            format!("`{found}` es un número de ciclos, no un tiempo")
        }
        QuantityError::TooLarge { found } => {
            format!("`{found}` es demasiado grande para calcular con él")
        }
        QuantityError::BelowAbsoluteZero { found } => {
            format!("`{found}` está por debajo del cero absoluto, -273.15 °C")
        }
    }
}

fn quantity_hint(measure: MeasureOf, error: &QuantityError) -> String {
    let (of, units) = (the_measure(measure), units(measure));
    match error {
        QuantityError::Empty { .. } => {
            format!("Escriba {of} como un número y su unidad: {units}.")
        }
        QuantityError::NoNumber { .. } => {
            format!("Empiece con un número y ponga detrás su unidad: {units}.")
        }
        QuantityError::MalformedNumber { .. } => {
            "Escriba el número con un solo punto decimal y una cifra detrás, como 13.2.".to_owned()
        }
        QuantityError::Negative { .. } => "Escriba el tamaño sin signo.".to_owned(),
        QuantityError::PlusSign { .. } => "Escriba el número sin signo más.".to_owned(),
        QuantityError::DecimalComma { found } => comma_hint(found),
        QuantityError::TwoNumbers { .. } => {
            "Escriba un solo número y su unidad, y los millares sin ninguna marca.".to_owned()
        }
        QuantityError::NoUnit { number, .. } => {
            format!("Escriba la unidad detrás de {number}: {units}.")
        }
        QuantityError::UnknownUnit { .. } => {
            format!("Use una de estas: {units}; ponga las notas en otro lugar.")
        }
        QuantityError::Cycles { .. } => "Escriba el tiempo en segundos: los ciclos divididos por la frecuencia, de modo que 30 ciclos son 0.5 s a 60 Hz.".to_owned(),
        QuantityError::TooLarge { .. } => "Revise el número y su unidad.".to_owned(),
        QuantityError::BelowAbsoluteZero { .. } => {
            "Revise el signo, y si el valor está en degC o en degF.".to_owned()
        }
    }
}

fn csv(said: &CsvSaid) -> String {
    match said {
        CsvSaid::TooManyRows { most } => {
            format!("El archivo tiene más de {most} filas; no se lee nada de lo que sigue.")
        }
        CsvSaid::SemicolonsBetween => {
            "Las columnas están separadas por `;`; el formato espera comas.".to_owned()
        }
        CsvSaid::TabsBetween => {
            "Las columnas están separadas por tabuladores; el formato espera comas.".to_owned()
        }
        CsvSaid::TooManyColumns { n, most } => {
            format!("La primera línea nombra {n} columnas; se leen como máximo {most}.")
        }
        CsvSaid::NoColumn { field, row } => {
            format!("Ninguna columna se titula `{field}`; cada fila `{row}` tiene una.")
        }
        CsvSaid::CannotHold {
            field,
            expected: of,
        } => format!("`{field}` es {}; no cabe en una celda.", expected(of)),
        CsvSaid::TwoColumns { field } => format!("Dos columnas se titulan `{field}`."),
        CsvSaid::CellBreaksALine => "Una celda contiene un salto de línea.".to_owned(),
        CsvSaid::NoColumnName { text } => {
            format!("\"{text}\" está en una columna sin nombre.")
        }
        CsvSaid::RowHasNo {
            row,
            field,
            expected: of,
        } => format!(
            "Esta fila `{row}` no tiene `{field}`; el formato espera {}.",
            expected(of)
        ),
        CsvSaid::NotAtHand { file, field } => {
            format!("El archivo \"{file}\" de `{field}` no está disponible.")
        }
        CsvSaid::StandsInJob { row, place } => {
            format!("Esta fila `{row}` está también en el trabajo, en {place}.")
        }
    }
}

fn csv_hint(hint: &CsvHint) -> String {
    let fixed = match hint {
        CsvHint::HardlyMeant => "Este no parece ser el archivo que se quería.",
        CsvHint::SaveWithCommas => {
            "Guarde la hoja como CSV con comas entre columnas y puntos en los números."
        }
        CsvHint::WriteInJob { row } => {
            return format!("Escriba esa fila `{row}` en el archivo del trabajo.");
        }
        CsvHint::TakeOneColumnOut => "Quite una de ellas.",
        CsvHint::CloseTheQuote => {
            "Escríbalo en una sola línea; si ya lo está, unas comillas que se abren aquí no se cierran."
        }
        CsvHint::CommaEndsCell => {
            "Una coma dentro de un valor termina su celda: escriba los números con punto, y ponga entre comillas un texto con coma."
        }
        CsvHint::WriteRowsInJob => {
            "Escriba sus filas en el trabajo, o lea el trabajo donde está el archivo."
        }
        CsvHint::TakeOneRowOut => "Quite una de las dos.",
    };
    fixed.to_owned()
}
