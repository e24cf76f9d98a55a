//! The questions of the checks, and what each is called in a few words.

/// Question of a check by its name in documents; `None` if no check has that name.
pub(crate) fn question(slug: &str) -> Option<&'static str> {
    Some(match slug {
        "adapter_in_body" => "¿Corresponde el adaptador de este ramal a su cuerpo?",
        "adapter_layer" => {
            "¿Queda el adaptador solo sobre capas para las que su documento le da un rango?"
        }
        "bend_radius" => "¿Está el ramal doblado no más de lo que permite su fabricante?",
        "body_class" => "¿Son las piezas para este sistema y para esta clase de empalme?",
        "body_layer" => {
            "¿Queda el cuerpo solo sobre capas para las que su documento le da un rango?"
        }
        "bonding_part_fit" => {
            "¿Sirve la pieza de pantalla para la pantalla metálica de este ramal, y hace la conexión que pide el trabajo?"
        }
        "bus_ports" => "¿Tiene cada puerto de la barra un ramal, o una tapa con su tapón aislante?",
        "cable_level" => {
            "¿Conviene el nivel de aislamiento del cable a la puesta a tierra del sistema y a su tiempo de despeje?"
        }
        "common_parts" => "¿Nombran la misma pieza los ramales que la comparten?",
        "conductor_fault_heat" => {
            "¿Queda el conductor, calentado por el cortocircuito indicado, por debajo de la temperatura para la que el documento del cuerpo da el empalme?"
        }
        "conductor_in_connector" => "¿Sirve el conector para este conductor?",
        "connector_fault" => {
            "¿Soporta el conector el cortocircuito que el trabajo indica para el conductor?"
        }
        "connector_in_electrode" => {
            "¿Cabe el conector, una vez hecho, debajo del electrodo del cuerpo?"
        }
        "consumable_metal" => "¿Sirve cada consumible de este ramal para el metal de su conductor?",
        "contact_heat" => {
            "¿Tiene cada conexión de la pantalla metálica no más resistencia que la que permite el documento de su pieza, en la que un cortocircuito hace calor?"
        }
        "contact_layer" => {
            "¿Toca la pieza de pantalla la pantalla metálica descubierta en todo su contacto?"
        }
        "cut_order" => "¿Están los cortes de este ramal en el orden de las capas?",
        "cut_window" => "¿Tiene cada corte y cada marca de este ramal un lugar y una ventana?",
        "deflector_stress" => {
            "¿Es el campo en la punta y en el talón del deflector no mayor que el peor que permiten las instrucciones?"
        }
        "electrode_cover" => {
            "¿Cubre el electrodo del cuerpo todo el conector y traslapa sobre el aislamiento?"
        }
        "electrode_end_stress" => {
            "¿Es el campo en el extremo del electrodo no mayor que el peor que permiten las instrucciones?"
        }
        "electrode_layer" => {
            "¿Termina el electrodo del cuerpo antes del borde de la pantalla del aislamiento?"
        }
        "gap_discharge" => {
            "¿Está el hueco antes del borde de la pantalla no más cerca de una descarga que el peor que permiten las instrucciones?"
        }
        "insulation_in_body" => {
            "¿Está el aislamiento de este ramal en el rango del cuerpo o del adaptador que lleva?"
        }
        "insulation_ovality" => "¿Es el aislamiento bastante redondo para la pieza que lleva?",
        "interface_pressure" => {
            "¿Aprieta cada pieza el cable al menos tanto como el peor caso que permiten sus instrucciones?"
        }
        "interface_stress" => {
            "¿Es el campo a lo largo de las superficies entre cable, adaptador y cuerpo no mayor que el peor que permiten las instrucciones?"
        }
        "jacket_surface" => {
            "¿Está la cubierta donde irá el sello en un estado sobre el que el sello puede cerrar?"
        }
        "joint_emergency_heat" => {
            "¿Queda el conductor dentro del cuerpo, al final de la emergencia del trabajo, por debajo de la temperatura para la que el documento del cuerpo da el empalme en una emergencia?"
        }
        "joint_load_heat" => {
            "¿Queda el conductor dentro del cuerpo, con la carga del trabajo todo el tiempo, por debajo de la temperatura para la que el documento del cuerpo da el empalme?"
        }
        "kit_age" => "¿Está cada pieza del camión dentro de su fecha el día del trabajo?",
        "lead_fault_heat" => {
            "¿Queda el cable de conexión, calentado por el cortocircuito indicado para la pantalla metálica, por debajo de lo que permite su documento?"
        }
        "measures_like_papers" => "¿Mide el ramal como dicen sus documentos?",
        "mouth_fit" => {
            "¿Cierran las bocas del cuerpo y del adaptador sobre las capas en que se asientan?"
        }
        "park_room" => {
            "¿Hay lugar para estacionar el cuerpo, y los sellos detrás de él, en el ramal que lo estaciona?"
        }
        "part_chosen" => "¿Está nombrada cada pieza de este ramal?",
        "range_today" => "¿Está este ramal en el rango que este mismo juego puede recibir hoy?",
        "reading_layer" => "¿Se midió el diámetro sobre la capa que la lectura nombra?",
        "rubber_stretch" => {
            "¿Está cada pieza estirada no más de lo que permiten sus instrucciones?"
        }
        "screen_edge_in_control" => {
            "¿Está el borde de la pantalla del aislamiento donde el cuerpo controla el campo?"
        }
        "screen_edge_pressure" => {
            "¿Aprieta el cuerpo el cable en el borde de la pantalla del aislamiento al menos tanto como el peor caso que permiten sus instrucciones?"
        }
        "screen_edge_stress" => {
            "¿Es el campo antes del borde de la pantalla del aislamiento no mayor que el peor que permiten las instrucciones?"
        }
        "seal_body_overlap" => "¿Cierra el sello sobre el extremo del cuerpo?",
        "seal_fit" => "¿Cierra el sello sobre este ramal?",
        "seal_layer" => {
            "¿Queda el sello, más allá del cuerpo, solo sobre capas para las que su documento le da un rango?"
        }
        "seal_overlap" => "¿Traslapa el sello lo bastante sobre la cubierta?",
        "seal_span" => {
            "¿Es un solo sello sobre todo el empalme bastante largo para los dos ramales?"
        }
        "seal_squeeze" => {
            "¿Aprieta el sello la cubierta al menos tanto como en el peor caso que permiten sus instrucciones?"
        }
        "service_temperature" => {
            "¿Mantienen la carga y la emergencia el empalme y el cable por debajo de la temperatura más alta que el trabajo indica para el conductor?"
        }
        "shield_continuity" => {
            "¿Concuerda la resistencia medida a lo largo de una pantalla metálica con lo que sus documentos hacen esperar, y con el máximo del propietario?"
        }
        "shield_fault_heat" => {
            "¿Queda la pantalla metálica del cable, calentada por el cortocircuito indicado, por debajo de lo que permiten los documentos del cable?"
        }
        "shield_part_fault" => {
            "¿Soporta lo que lleva o conecta la pantalla metálica el cortocircuito que el trabajo indica para ella?"
        }
        "shield_part_range" => {
            "¿Están las capas en que se asienta la pieza de pantalla en los rangos que da su documento?"
        }
        "slack_for_recut" => "¿Queda cable para tantos comienzos nuevos como pide el trabajo?",
        "standing_voltage" => {
            "¿Queda la tensión a lo largo de una pantalla metálica abierta en un extremo por debajo de lo que permite el propietario, con la carga indicada?"
        }
        "straight_length" => "¿Está el ramal recto hasta donde llegan el cuerpo y su sello?",
        "strand_water" => {
            "¿Están sin agua las hebras de este extremo, y no se encontró agua debajo de su pantalla metálica?"
        }
        "wick_path" => {
            "¿Está bloqueado contra el agua cada alambre, cinta, trenza o conductor que pasa debajo del sello?"
        }
        _ => return None,
    })
}

/// Short name of a check by its name in documents; `None` of a name that is no check's.
pub(crate) fn name(slug: &str) -> Option<&'static str> {
    Some(match slug {
        "adapter_in_body" => "adaptador en el cuerpo",
        "adapter_layer" => "capa bajo el adaptador",
        "bend_radius" => "radio de doblado",
        "body_class" => "clase del cuerpo",
        "body_layer" => "capa bajo el cuerpo",
        "bonding_part_fit" => "pieza de conexión",
        "bus_ports" => "puertos de la barra",
        "cable_level" => "nivel de aislamiento del cable",
        "common_parts" => "piezas comunes",
        "conductor_fault_heat" => "calor del cortocircuito en el conductor",
        "conductor_in_connector" => "conductor en el conector",
        "connector_fault" => "cortocircuito en el conector",
        "connector_in_electrode" => "conector en el electrodo",
        "consumable_metal" => "metal de los consumibles",
        "contact_heat" => "calor de la conexión",
        "contact_layer" => "capa bajo el contacto",
        "cut_order" => "orden de los cortes",
        "cut_window" => "ventana de los cortes",
        "deflector_stress" => "campo en el deflector",
        "electrode_cover" => "alcance del electrodo",
        "electrode_end_stress" => "campo en el extremo del electrodo",
        "electrode_layer" => "capa bajo el electrodo",
        "gap_discharge" => "descarga en el hueco",
        "insulation_in_body" => "aislamiento en el cuerpo",
        "insulation_ovality" => "ovalidad del aislamiento",
        "interface_pressure" => "presión en las superficies",
        "interface_stress" => "campo en las superficies",
        "jacket_surface" => "superficie de la cubierta",
        "joint_emergency_heat" => "calor en la emergencia",
        "joint_load_heat" => "calor con la carga",
        "kit_age" => "fecha del juego",
        "lead_fault_heat" => "calor del cortocircuito en el cable de conexión",
        "measures_like_papers" => "medidas según los documentos",
        "mouth_fit" => "cierre de las bocas",
        "park_room" => "lugar para estacionar",
        "part_chosen" => "piezas nombradas",
        "range_today" => "rango de hoy",
        "reading_layer" => "capa de la lectura",
        "rubber_stretch" => "estirado de las piezas",
        "screen_edge_in_control" => "borde de la pantalla en el control de campo",
        "screen_edge_pressure" => "presión en el borde de la pantalla",
        "screen_edge_stress" => "campo en el borde de la pantalla",
        "seal_body_overlap" => "traslape del sello sobre el cuerpo",
        "seal_fit" => "cierre del sello",
        "seal_layer" => "capa bajo el sello",
        "seal_overlap" => "traslape del sello",
        "seal_span" => "largo del sello",
        "seal_squeeze" => "apriete del sello",
        "service_temperature" => "temperatura de servicio",
        "shield_continuity" => "continuidad de la pantalla metálica",
        "shield_fault_heat" => "calor del cortocircuito en la pantalla metálica",
        "shield_part_fault" => "cortocircuito en la pieza de pantalla",
        "shield_part_range" => "rango de la pieza de pantalla",
        "slack_for_recut" => "cable para empezar de nuevo",
        "standing_voltage" => "tensión en la pantalla metálica",
        "straight_length" => "tramo recto",
        "strand_water" => "agua en las hebras",
        "wick_path" => "paso del agua bajo el sello",
        _ => return None,
    })
}
