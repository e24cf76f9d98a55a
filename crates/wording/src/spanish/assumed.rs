//! Assumptions of what is computed, and limits of this version.

use jointwright_joint::said::{
    AssumedSaid, FieldAssumes, NotComputed, PressureAssumes, RunAssumes, WarmAssumes,
};

pub(super) fn say(said: AssumedSaid) -> &'static str {
    match said {
        AssumedSaid::Field(said) => field(said),
        AssumedSaid::Pressure(said) => pressure(said),
        AssumedSaid::Warm(said) => warm(said),
        AssumedSaid::Run(said) => run(said),
        AssumedSaid::NotComputed(said) => not_computed(said),
    }
}

fn field(said: FieldAssumes) -> &'static str {
    match said {
        FieldAssumes::Round => "redondo, concéntrico, a escuadra",
        FieldAssumes::OneDiameter => {
            "un solo diámetro en todo el extremo, con el espesor propio de este ramal"
        }
        FieldAssumes::RubberFollows => {
            "goma que sigue cada escalón salvo el vano que indica su ficha, estirada sin cambio de volumen ni de largo"
        }
        FieldAssumes::AwayFromJunction => {
            "ningún punto a menos de dos radios del cuerpo del eje de una unión"
        }
        FieldAssumes::InsideAsStated => {
            "el interior del cuerpo exactamente como lo indica su ficha; lo que la ficha dice que puede variar solo mueve la posición supuesta del talón"
        }
        FieldAssumes::ScreenAndAdapter => {
            "la pantalla con el espesor medio de sus lecturas, o si no de sus documentos; el exterior de un adaptador en línea recta entre los que indica su ficha"
        }
        FieldAssumes::NoNick => {
            "una muesca, un borde dentado, suciedad y humedad quedan fuera del cálculo"
        }
    }
}

fn pressure(said: PressureAssumes) -> &'static str {
    match said {
        PressureAssumes::RigidCable => {
            "un cable redondo de un solo diámetro, rígido y liso, y sin rozamiento"
        }
        PressureAssumes::LongTubes => {
            "cada rebanada de un cuerpo como un tubo largo de los mismos anillos; cerca de un escalón en su pared la presión es otra"
        }
        PressureAssumes::EndsFreeOrHeld => {
            "entre largo fijo y extremos libres, la menor presión, y la menor relación con los mismos extremos en ambos lados"
        }
        PressureAssumes::OneWarmth => {
            "goma toda a una temperatura, y el aislamiento del cable a otra; el aislamiento caliente que toma la forma de lo que lo aprieta queda fuera del cálculo"
        }
        PressureAssumes::AdapterOutside => {
            "el exterior de un adaptador en línea recta entre los que indica su ficha; no se cuenta lo que un cuerpo agrega a la presión bajo un adaptador"
        }
    }
}

fn warm(said: WarmAssumes) -> &'static str {
    match said {
        WarmAssumes::OnePhase => {
            "una fase, con sus capas cortadas en las posiciones previstas y corrientes equilibradas en tres cables unipolares que se tocan"
        }
        WarmAssumes::SurroundingsAsStated => {
            "películas y temperaturas de lo que lo rodea como se indican, con cualquier carga; sin ninguna otra fuente de calor"
        }
        WarmAssumes::ConnectorAtWorst => {
            "el conector como lo da su ficha en el peor caso, igual en todo su largo"
        }
        WarmAssumes::LegsMeet => {
            "ramales que se unen a una sola temperatura, sin más pérdida entre ellos que la de la barra; sin calor de la goma de un ramal a la de otro; sin metal ni pérdida en la pantalla sobre el empalme"
        }
        WarmAssumes::ShieldCurrentGrows => {
            "una corriente indicada de una pantalla que crece y baja con la carga de su ramal"
        }
        WarmAssumes::StillAir => {
            "aire quieto donde un cuerpo no puede cerrar sobre lo que cubre; sin pérdida dieléctrica"
        }
    }
}

fn run(said: RunAssumes) -> &'static str {
    match said {
        RunAssumes::ThreeCables => {
            "tres cables unipolares con corrientes iguales y equilibradas; cada tramo como si no tuviera fin, de modo que no va calor a lo largo del cable"
        }
        RunAssumes::PapersAtWorst => {
            "diámetros de los documentos, en los límites de sus márgenes que más calientan el conductor; la pantalla no conduce el calor mejor que la cubierta"
        }
        RunAssumes::SurroundingsAsStated => {
            "películas, resistencias y temperaturas de lo que lo rodea como se indican, con cualquier carga; sin ninguna otra fuente de calor; sin sol, sin viento"
        }
        RunAssumes::SteadyLoad => {
            "una carga que no cambia; sin pérdida dieléctrica; no se calculan emergencias de un cable sin empalme"
        }
    }
}

fn not_computed(said: NotComputed) -> &'static str {
    match said {
        NotComputed::RisingConductivity => {
            "el campo en capas cuya conductividad crece con el campo"
        }
        NotComputed::Imprint => "lo que el aislamiento caliente conserva de una huella",
        NotComputed::BusFaults => "cortocircuitos en la barra",
        NotComputed::WaterPastSeals => "agua que pasa los sellos",
    }
}
