//! Texts of the make-up sheet that its template places; what the template puts into one stands in it in braces.

use super::fixed::fixed;

fixed! {
    /// A text of the make-up sheet's template.
    SheetText {
        PageOf => "page {page} of {pages}", "página {page} de {pages}";
        JobAndDay => "job {job}", "trabajo {job}";
        DayOfWork => "day of the work {day}", "día del trabajo {day}";
        Place => "place", "posición";
        FromEnd => "from the end", "desde el extremo";
        MayLieWhose => "may lie; whose word", "rango permitido; según quién";
        Measured => "measured", "medido";
        Initials => "initials", "iniciales";
        KnifeDepth => "KNIFE DEPTH", "PROFUNDIDAD DE CUCHILLA";
        StayUnder => "stay under", "menos de";
        Connector => "Connector", "Conector";
        InstructionsPrevail => "The instructions named here prevail", "Prevalecen las instrucciones nombradas aquí";
        SaysNothing => "This page says nothing about which cable is dead or identified, and not that anything may be cut or touched.",
            "Esta página no dice nada sobre cuál cable está sin tensión o identificado, y tampoco dice que algo se pueda cortar o tocar.";
        StopBelow => "The numbers stay in plan.json for the engineer. Who decides what happens to this joint is named in the job; this page decides nothing.",
            "Los números quedan en plan.json para el ingeniero. Quién decide qué pasa con este empalme está nombrado en el trabajo; esta página no decide nada.";
        WordOf => "word of: {source}", "según: {source}";
        StopAndCall => "stop and call", "pare y llame";
        Legs => "Legs", "Ramales";
        PartsAndConsumables => "Parts and consumables", "Piezas y consumibles";
        Kind => "kind", "tipo";
        PartAndInstructions => "part and instructions", "pieza e instrucciones";
        HowMany => "how many or how much", "cuántos o cuánto";
        UsedFor => "for", "para";
        Tools => "Tools", "Herramientas";
        Tool => "tool", "herramienta";
        OnWhoseWord => "on whose word", "según quién";
        Steps => "Steps", "Pasos";
        StepsInOrder => "In this order: what comes before a step is done before it. The parts’ own instructions prevail. One box, and at a hold point one reading, for each phase.",
            "En este orden: lo que está antes de un paso se hace antes. Prevalecen las instrucciones de las piezas. Una casilla, y en un punto de espera una lectura, para cada fase.";
        PhaseOf => "phase {phase}", "fase {phase}";
        Number => "no.", "n.º";
        Step => "step", "paso";
        Done => "done", "hecho";
        Caution => "CAUTION", "CUIDADO";
        Hold => "HOLD", "PUNTO DE ESPERA";
        NoWindowWhose => "no window is set ({whose})", "nadie fija un rango permitido ({whose})";
        ElectricField => "Electric field", "Campo eléctrico";
        FieldAbout => "At the highest voltage in service, at the worst of what windows and readings leave open. Computed from the dimensions given; decides nothing.",
            "A la tensión de servicio más alta, en el peor caso que dejan abierto los rangos permitidos y las lecturas. Calculado con las dimensiones dadas; no decide nada.";
        Leg => "leg", "ramal";
        What => "what", "qué";
        Here => "here", "aquí";
        WorstAllowed => "worst the instructions allow", "el peor que permiten las instrucciones";
        With => "with", "con";
        InterfacePressure => "Interface pressure", "Presión en las superficies";
        PressureAbout => "At the least diameter read, over the temperatures of the joint. Computed from the rows given; decides nothing.",
            "Con el menor diámetro leído, en las temperaturas del empalme. Calculado con las fichas dadas; no decide nada.";
        End => "end", "extremo";
        HowHardItSits => "how hard its parts sit; on whose word", "cuánto aprietan sus piezas; según quién";
        Assumes => "Assumes: {assumes}.", "Supone: {assumes}.";
        Rulings => "Rulings", "Resultados";
        Ruling => "ruling", "resultado";
        QuestionWhich => "question; which", "pregunta; cuáles";
        FoundWhose => "what was found; on whose word", "qué se encontró; según quién";
        SomethingMissing => "Not computed, something is missing: {what}.", "No calculado, falta algo: {what}.";
        NotComputed => "Not computed by this version, whatever is stated: {what}.",
            "Esta versión no calcula, indique lo que indique el trabajo: {what}.";
        Names => "Names", "Nombres";
        NamesAbout => "Each name is written by the person; nothing is filled in beforehand. A signature says who did or decided it, and nothing else.",
            "Cada persona escribe su nombre; nada se llena de antemano. Una firma dice quién lo hizo o lo decidió, y nada más.";
        NamedInJob => "named in the job", "nombre en el trabajo";
        Role => "role", "función";
        Decides => "decides", "decide";
        SignatureDayTime => "signature, day, time", "firma, día, hora";
        MadeUpBy => "made up by", "hizo el empalme";
        SecondPerson => "second person", "segunda persona";
        MeasuredAtHoldPoints => "measured at hold points by", "midió en los puntos de espera";
        HandedOverBy => "handed over by", "entregó";
        HandedBackTo => "handed back to", "recibió de vuelta";
    }
}
