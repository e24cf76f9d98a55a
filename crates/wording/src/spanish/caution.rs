//! Sentences about the dangers of a step.

use crate::Tongue;
use jointwright_joint::cable::Layer;
use jointwright_joint::said::CautionSaid;

pub(super) fn say(tongue: Tongue, said: &CautionSaid) -> String {
    match said {
        CautionSaid::VoltageAndGas => "Un cable puede tener tensión desde el extremo lejano o desde una segunda fuente, o carga que dejó un ensayo. Gas, agua y falta de aire en el pozo; otros circuitos en él pueden estar energizados.".to_owned(),
        CautionSaid::SharpTools => "Herramientas filosas y puntos de atrapamiento: corte alejándose de la mano.".to_owned(),
        CautionSaid::JacketKnife => "Cuchilla: corte alejándose de la mano, nunca hasta la pantalla metálica.".to_owned(),
        CautionSaid::OpenShield => "Una pantalla metálica abierta puede tener tensión, también en un cable desconectado: se puentea antes de cortarla y queda puenteada.".to_owned(),
        CautionSaid::ScreenKnife => format!(
            "Cuchilla: no más hondo que la profundidad de la primera página; donde no fija ninguna, no más hondo que un tope probado en un retazo de este cable; nunca en el aislamiento. Lo que quede de la {} sobre el aislamiento conduce corriente: no puede quedar nada.",
            tongue.layer(Layer::InsulationScreen)
        ),
        CautionSaid::InsulationKnife => "Cuchilla o pelacables: nunca en las hebras.".to_owned(),
        CautionSaid::Solvent => "Solvente: sin llama ni chispa, ventile, guantes; déjelo secar. Quite la tira de papel antes de la última pasada.".to_owned(),
        CautionSaid::NeverUnderVoltage => "Nunca separe ni enchufe un empalme separable con tensión o carga. Los puertos que quedan abiertos mientras tanto se cierran como dicen las instrucciones de la barra.".to_owned(),
        CautionSaid::BondEdges => "Filos y resortes. El puente queda puesto.".to_owned(),
        CautionSaid::BridgeOff => "Desde aquí solo la conexión permanente da continuidad a la pantalla metálica: si hay duda sobre algo de ella, el puente queda puesto. Una pantalla metálica abierta puede tener tensión.".to_owned(),
        CautionSaid::HighVoltage => "Alta tensión en los ensayos: cierre el área; lo que se ensayó lo descargan y lo ponen a tierra quienes hicieron el ensayo. Nadie debe estar en el pozo cuando la tensión entra por primera vez.".to_owned(),
        CautionSaid::StoredEnergy { parts } => {
            let parts: Vec<&str> = parts.iter().map(|part| tongue.part(*part)).collect();
            format!(
                "Pieza expandida ({}): guarda energía. No meta los dedos en el núcleo extraíble; gírelo únicamente como dicen sus instrucciones.",
                tongue.or(&parts)
            )
        }
        CautionSaid::BodyWalks => "Un cuerpo puede caminar a lo largo del cable mientras sale el núcleo extraíble y después: sosténgalo en su marca, y mida otra vez los dos extremos con sus marcas antes de que algo los cubra.".to_owned(),
        CautionSaid::Torch => "Soplete: gas comprobado, sin vapor de solvente, el calor lejos de lo que no debe calentar; nada que arda al alcance.".to_owned(),
        CautionSaid::CreepsBack => "La goma que se empujó puede retroceder: mida otra vez el cuerpo con sus marcas antes de que algo las cubra.".to_owned(),
        CautionSaid::TorchIfAsked => "Donde las instrucciones piden un soplete: gas comprobado, sin vapor de solvente, el calor lejos del cuerpo.".to_owned(),
        CautionSaid::Thrust { keep_off } => {
            let keep_off = keep_off.map_or("hasta donde dicen sus instrucciones".to_owned(), |length| {
                format!("{} o más, como dicen sus instrucciones", tongue.read(length))
            });
            format!(
                "Un cable que se calienta empuja, y uno que está doblado abre un cuerpo de un lado: ninguna curva al alcance de los cuerpos, {keep_off}; soportado de modo que ni empuje ni peso lleguen a ellos; sin moverlo antes de que todo se haya asentado."
            )
        }
        CautionSaid::Press => "Prensa: las manos lejos de las mordazas; el aceite hidráulico puede atravesar la piel.".to_owned(),
        CautionSaid::BoltHeads => "Las cabezas de los tornillos saltan: use protección ocular, y que nadie esté frente a los tornillos.".to_owned(),
        CautionSaid::SlippingKey => "Una llave que se resbala corta: sostenga el conector, no el cable.".to_owned(),
    }
}
