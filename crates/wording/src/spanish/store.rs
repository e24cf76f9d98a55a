//! Sentences about a part in store.

use jointwright_joint::said::{Begun, HeldSaid, StoredSaid};

fn begun(begun: Begun) -> &'static str {
    match begun {
        Begun::Made => "se fabricó",
        Begun::Expanded => "se expandió",
    }
}

pub(super) fn say(said: &StoredSaid) -> String {
    match said {
        StoredSaid::PastDate {
            part,
            lot,
            last,
            work,
        } => format!("{part}, lote {lot}: su último día fue {last}; el trabajo es el {work}"),
        StoredSaid::LotNotWritten { part } => {
            format!("{part}: no están anotados su lote ni su edad")
        }
        StoredSaid::AskLot { part, begun: how } => format!(
            "¿Qué lote de {part} está en el camión, y cuándo {}?",
            begun(*how)
        ),
        StoredSaid::BegunAfterWork {
            part,
            lot,
            begun: how,
            day,
        } => format!(
            "{part}, lote {lot}: {} el {day}, después del día del trabajo",
            begun(*how)
        ),
        StoredSaid::AskBegun {
            part,
            lot,
            begun: how,
        } => format!("¿Cuándo {} el lote {lot} de {part}?", begun(*how)),
        StoredSaid::LabelNotWritten { part, lot } => format!(
            "{part}, lote {lot}: no está anotado si su etiqueta imprime una fecha de vencimiento"
        ),
        StoredSaid::AskLabel { part, lot } => format!(
            "¿Qué fecha de vencimiento imprime la etiqueta del lote {lot} de {part}, si imprime alguna?"
        ),
        StoredSaid::BegunNotWritten {
            part,
            lot,
            begun: how,
        } => format!(
            "{part}, lote {lot}: no está anotado el día en que {}",
            begun(*how)
        ),
        StoredSaid::NoAgeLimit { part } => {
            format!("{part}: ni su ficha ni su etiqueta dan un límite de edad")
        }
        StoredSaid::AskAgeLimit { part } => {
            format!("¿Cuántos meses, y desde cuándo, puede estar {part} en el almacén?")
        }
        StoredSaid::WarmthNotWritten { part, lot, from } => {
            format!("{part}, lote {lot}: no está anotado a qué temperatura estuvo desde el {from}")
        }
        StoredSaid::AskWarmth { part, lot } => format!(
            "¿A qué temperatura estuvo el lote {lot} de {part} en el almacén y en el camión?"
        ),
        StoredSaid::Held(said) => held(said),
    }
}

fn held(said: &HeldSaid) -> String {
    match said {
        HeldSaid::SetNotKnown { part } => format!(
            "no se sabe cuánto de su estiramiento conserva {part} después de un tiempo en el almacén"
        ),
        HeldSaid::AskSet { part } => format!(
            "¿Qué parte de su estiramiento en el almacén queda en el interior de {part}, después de cuánto tiempo y a qué temperatura?"
        ),
        HeldSaid::LotPlaceNotWritten { part } => {
            format!("{part}: no están anotados su lote ni dónde estuvo")
        }
        HeldSaid::AskLotPlace { part } => format!(
            "¿Qué lote de {part} está en el camión, cuándo se expandió y a qué temperatura estuvo?"
        ),
        HeldSaid::HoldNotKnown { part } => {
            format!("{part} se guarda expandida; no se sabe a qué diámetro")
        }
        HeldSaid::AskHold { part } => {
            format!("¿A qué diámetro se mantiene abierto el interior de {part} en el almacén?")
        }
        HeldSaid::ShelfNotSaid { part } => format!(
            "su ficha no dice cuánto tiempo ni a qué temperatura puede estar {part} en el almacén"
        ),
        HeldSaid::AskShelf { part } => {
            format!("¿Cuánto tiempo, y hasta qué temperatura, puede estar {part} en el almacén?")
        }
    }
}
