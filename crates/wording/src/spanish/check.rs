//! The questions of the checks, and what each is called in a few words.

/// Question of a check by its name in documents; `None` if no check has that name.
pub(crate) fn question(slug: &str) -> Option<&'static str> {
    Some(match slug {
        "adapter_in_body" => "¿Es el adaptador de este ramal uno de los que admite su cuerpo?",
        "adapter_layer" => {
            "¿Se apoya el adaptador solo en capas para las que su documento da un rango?"
        }
        "bend_radius" => "¿Tiene el ramal un radio de curvatura que su fabricante permite?",
        "body_class" => "¿Son las piezas para este sistema y para este tipo de empalme?",
        "body_layer" => "¿Se apoya el cuerpo solo en capas para las que su documento da un rango?",
        "bonding_part_fit" => {
            "¿Sirve la pieza de pantalla para la pantalla metálica de este ramal y para la conexión que pide el trabajo?"
        }
        "bus_ports" => {
            "¿Tiene cada puerto de la barra un ramal, o un tapón aislante que lo cierra?"
        }
        "cable_level" => {
            "¿Es el nivel de aislamiento del cable adecuado para la puesta a tierra del sistema y su tiempo de despeje?"
        }
        "common_parts" => "¿Nombran la misma pieza los ramales que la comparten?",
        "conductor_fault_heat" => {
            "¿Se mantiene el conductor, en el cortocircuito indicado, por debajo de la temperatura que el documento del cuerpo da para el empalme?"
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
            "¿Tiene cada conexión de la pantalla metálica, que se calienta en un cortocircuito, la resistencia que permite el documento de su pieza, o menos?"
        }
        "contact_layer" => {
            "¿Se apoya todo el contacto de la pieza de pantalla en pantalla metálica descubierta?"
        }
        "cut_order" => "¿Están los cortes de este ramal en el orden de las capas?",
        "cut_window" => {
            "¿Tiene cada corte y cada marca de este ramal una posición y un rango permitido?"
        }
        "deflector_stress" => {
            "¿Es el campo en la punta y en el talón del deflector igual o menor que el peor que permiten las instrucciones?"
        }
        "electrode_cover" => {
            "¿Cubre el electrodo del cuerpo todo el conector y traslapa sobre el aislamiento?"
        }
        "electrode_end_stress" => {
            "¿Es el campo en el extremo del electrodo igual o menor que el peor que permiten las instrucciones?"
        }
        "electrode_layer" => {
            "¿Termina el electrodo del cuerpo antes del borde de la pantalla del aislamiento?"
        }
        "gap_discharge" => {
            "¿Está el hueco antes del borde de la pantalla igual de lejos de una descarga que en el peor caso que permiten las instrucciones, o más lejos?"
        }
        "insulation_in_body" => {
            "¿Está el aislamiento de este ramal dentro del rango del cuerpo, o del adaptador que lleva?"
        }
        "insulation_ovality" => {
            "¿Es el aislamiento lo bastante redondo para la pieza que lleva encima?"
        }
        "interface_pressure" => {
            "¿Aprieta cada pieza el cable igual que en el peor caso que permiten sus instrucciones, o más?"
        }
        "interface_stress" => {
            "¿Es el campo a lo largo de las superficies entre cable, adaptador y cuerpo igual o menor que el peor que permiten las instrucciones?"
        }
        "jacket_surface" => {
            "¿Está la cubierta, donde irá el sello, en un estado que el sello admite?"
        }
        "joint_emergency_heat" => {
            "¿Se mantiene el conductor dentro del cuerpo, al final de la emergencia del trabajo, por debajo de la temperatura que el documento del cuerpo da para una emergencia?"
        }
        "joint_load_heat" => {
            "¿Se mantiene el conductor dentro del cuerpo, con la carga continua del trabajo, por debajo de la temperatura que da el documento del cuerpo?"
        }
        "kit_age" => "¿Está cada pieza del camión dentro de su fecha el día del trabajo?",
        "lead_fault_heat" => {
            "¿Se mantiene el cable de conexión, en el cortocircuito indicado para la pantalla metálica, por debajo de la temperatura que permite su documento?"
        }
        "measures_like_papers" => "¿Coinciden las medidas del ramal con sus documentos?",
        "mouth_fit" => {
            "¿Cierran las bocas del cuerpo y del adaptador sobre las capas en que se apoyan?"
        }
        "park_room" => {
            "¿Hay espacio para estacionar el cuerpo, y los sellos detrás de él, en el ramal donde se estacionan?"
        }
        "part_chosen" => "¿Está nombrada cada pieza de este ramal?",
        "range_today" => "¿Está este ramal dentro del rango que este mismo kit admite hoy?",
        "reading_layer" => "¿Se midió el diámetro sobre la capa que la lectura nombra?",
        "rubber_stretch" => "¿Se estira cada pieza solo hasta donde permiten sus instrucciones?",
        "screen_edge_in_control" => {
            "¿Está el borde de la pantalla del aislamiento donde el cuerpo controla el campo?"
        }
        "screen_edge_pressure" => {
            "¿Aprieta el cuerpo el cable, en el borde de la pantalla del aislamiento, igual que en el peor caso que permiten sus instrucciones, o más?"
        }
        "screen_edge_stress" => {
            "¿Es el campo antes del borde de la pantalla del aislamiento igual o menor que el peor que permiten las instrucciones?"
        }
        "seal_body_overlap" => "¿Cierra el sello sobre el extremo del cuerpo?",
        "seal_fit" => "¿Cierra el sello sobre este ramal?",
        "seal_layer" => {
            "¿Se apoya el sello, más allá del cuerpo, solo en capas para las que su documento da un rango?"
        }
        "seal_overlap" => "¿Traslapa el sello lo suficiente sobre la cubierta?",
        "seal_span" => {
            "¿Es lo bastante largo, para los dos ramales, el sello único que cubre todo el empalme?"
        }
        "seal_squeeze" => {
            "¿Aprieta el sello la cubierta igual que en el peor caso que permiten sus instrucciones, o más?"
        }
        "service_temperature" => {
            "¿Quedan el empalme y el cable, con la carga y en la emergencia, por debajo de la temperatura más alta que el trabajo indica para el conductor?"
        }
        "shield_continuity" => {
            "¿Coincide la resistencia medida a lo largo de una pantalla metálica con la que se espera según sus documentos, y con el máximo del propietario?"
        }
        "shield_fault_heat" => {
            "¿Se mantiene la pantalla metálica del cable, en el cortocircuito indicado, por debajo de la temperatura que permiten los documentos del cable?"
        }
        "shield_part_fault" => {
            "¿Soporta la pieza que lleva o conecta la pantalla metálica el cortocircuito que el trabajo indica para ella?"
        }
        "shield_part_range" => {
            "¿Están las capas en que se apoya la pieza de pantalla dentro de los rangos de su documento?"
        }
        "slack_for_recut" => {
            "¿Queda cable para empezar de nuevo tantas veces como pide el trabajo?"
        }
        "standing_voltage" => {
            "¿Se mantiene la tensión de una pantalla metálica abierta en un extremo, con la carga indicada, por debajo de lo que permite el propietario?"
        }
        "straight_length" => "¿Está recto el ramal hasta donde llegan el cuerpo y su sello?",
        "strand_water" => {
            "¿Están secas las hebras de este extremo, y no se encontró agua debajo de su pantalla metálica?"
        }
        "wick_path" => {
            "¿Está bloqueado contra el agua cada alambre, cinta, trenza o cable de conexión que pasa debajo del sello?"
        }
        _ => return None,
    })
}

/// Short name of a check by its name in documents; `None` of a name that is no check's.
pub(crate) fn name(slug: &str) -> Option<&'static str> {
    Some(match slug {
        "adapter_in_body" => "adaptador en el cuerpo",
        "adapter_layer" => "capa bajo el adaptador",
        "bend_radius" => "radio de curvatura",
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
        "cut_window" => "rango de los cortes",
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
        "kit_age" => "fecha del kit",
        "lead_fault_heat" => "calor del cortocircuito en el cable de conexión",
        "measures_like_papers" => "medidas según los documentos",
        "mouth_fit" => "cierre de las bocas",
        "park_room" => "espacio para estacionar",
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
        "straight_length" => "parte recta",
        "strand_water" => "agua en las hebras",
        "wick_path" => "paso del agua bajo el sello",
        _ => return None,
    })
}
