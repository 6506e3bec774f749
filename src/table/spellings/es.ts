/** Spellings of the columns and the words of cells in Spanish. */
import type { Spellings } from "./index.ts";

export const es: Spellings = {
  row: {
    row: "nº|n.º|núm|número|fila|línea|ítem|nº op|orden|posición|nº operación|fase",
    feature: "descripción|característica|elemento|denominación|geometría|observaciones|nota|detalle|forma",
    operation: "operación|op|mecanizado|tipo de operación|proceso|trabajo|tipo de mecanizado|maquinado",
    units: "unidad|unidades|uds|uds mm/in|sistema de unidades|unidad de medida|mm/pulg",
    quantity:
      "cantidad|cant|nº de agujeros|piezas|ctd|número de agujeros|nº agujeros|agujeros|cantidad por pieza|barrenos|pzas",
    material: "mat|material de la pieza|material de pieza|material pieza|material a mecanizar|material de trabajo",
    machine: "máquina|maq|centro de mecanizado|máquina-herramienta|centro de maquinado|nombre de máquina",
    tool: "herramienta|herr|fresa|htta|hta|nombre de herramienta|nombre herramienta|cortador",
    thread: "rosca|roscado|tipo de rosca|designación de rosca|designación de la rosca|medida de rosca|métrica",
    startDiameter:
      "ø previo|diámetro previo|pretaladro|diámetro inicial|ø pretaladro|ø inicial|agujero previo|diámetro de pretaladro|ø agujero previo|diámetro de partida|diámetro agujero previo|diámetro de broca|taladro previo|ø de partida|ø taladro previo",
    finishDiameter:
      "ø final|diámetro final|diámetro|diám|dia|ø|diámetro acabado|ø acabado|ø agujero|diámetro del agujero|diámetro agujero|diámetro nominal|ø nominal|ø taladro|diámetro terminado|ø terminado|medida final",
    depth:
      "profundidad|prof|prof roscada|profundidad roscada|altura|profundidad de rosca|profundidad útil|longitud roscada|altura de pared|profundidad de ranura",
    through: "pasante|agujero pasante|pasante s/n|taladro pasante|pasante sí/no|pasante/ciego|barreno pasante",
    hand: "mano|sentido de rosca|sentido de la rosca|derecha/izquierda|d/i|rosca derecha/izquierda|sentido",
    way: "concordancia/oposición|sentido de fresado|tipo de fresado|modo de fresado|oposición/concordancia|concordancia o oposición|dirección de fresado",
    length:
      "longitud|long|longitud de corte|largo|recorrido|longitud mecanizada|longitud de fresado|longitud de mecanizado|longitud de ranura",
    side: "lado|interior/exterior|int/ext|tipo de pared|pared|exterior/interior",
    radialDepth:
      "ae|profundidad radial|ancho de corte|pasada lateral|ancho de pasada|prof radial|profundidad de corte radial|pasada radial|profundidad de pasada radial|paso lateral|inmersión radial|ancho de fresado",
    axialDepth:
      "ap|profundidad axial|profundidad de corte|prof de pasada|profundidad de pasada|prof axial|pasada axial|profundidad de corte axial|prof de corte|paso vertical|profundidad por pasada|inmersión axial",
    passes: "pasadas|nº de pasadas|número de pasadas|nº pasadas|n.º pasadas|cortes|cantidad de pasadas",
    springPasses:
      "pasadas en vacío|pasadas de repaso|pasadas en blanco|pasada en vacío|pasadas sin avance|repasos|pasadas vacías",
    stickOut:
      "voladizo|saliente|longitud en voladizo|vuelo|voladizo de herramienta|longitud saliente|voladizo herramienta|saliente de herramienta|longitud fuera del portaherramientas",
    surfaceSpeed: "vc|velocidad de corte|vel de corte|vel corte|velocidad corte|velocidad de corte vc",
    feedPerTooth:
      "fz|avance por diente|avance/diente|avance mm/diente|av por diente|avance diente|avance fz|avance por diente fz|avance por filo|avance mm/z",
    maxRpm:
      "rpm máx|rpm máximas|velocidad máx husillo|revoluciones máximas|n máx|vueltas máximas|rpm máximo|velocidad máxima|velocidad máxima del husillo|límite rpm|límite de rpm|máx rpm|velocidad máx",
    holeDepth:
      "profundidad del agujero|prof agujero|profundidad de taladro|profundidad de taladrado|profundidad agujero|prof taladro|profundidad total|fondo del agujero|profundidad del taladro|profundidad de barreno",
    batch: "lote|tamaño de lote|serie|tamaño del lote|cantidad del lote|piezas por lote|tamaño de serie",
    drillOversize: "sobremedida del taladro|sobremedida",
    spacing: "separación|distancia entre agujeros|distancia entre centros|espaciado|paso entre agujeros|entreejes",
    wearFactor: "factor de desgaste|coeficiente de desgaste",
    measured: "medido|medida real|valor medido|cota medida|diámetro medido|ø medido|medida|cota real|medición",
    wearValue:
      "desgaste|corrector de desgaste|corrección de desgaste|corrector|valor de desgaste|compensación de desgaste",
    sizeTolerance: "tolerancia|tol|tolerancia dimensional|tolerancia +/-|tol +/-",
    roughness: "rz|rugosidad|rugosidad rz|acabado rz|acabado superficial rz|rugosidad superficial",
    coolant: "refrigeración|refrigerante|taladrina|lubricación|tipo de refrigeración|fluido de corte|soluble",
    totalWidth: "ancho de ranura|ancho ranura|ancho total|ancho de la cara|ancho a planear",
    insideCorner: "radio interior|esquina interior|radio de esquina interior|radio de cajera|ángulo interior",
    sizeClass: "ajuste|clase de tolerancia|tolerancia iso|calidad|clase de ajuste",
  },
  result: {
    verdict: "veredicto|resultado|estado|dictamen",
    reasons: "motivos|razones|motivo",
    limit: "límite",
    load: "carga",
    spindleSpeed:
      "rpm|velocidad de giro|n|revoluciones|velocidad del husillo|s|velocidad de husillo|vueltas|giro|r.p.m.|revoluciones por minuto|velocidad de rotación|velocidad husillo",
    surfaceSpeed: "velocidad de corte|vc",
    feedPerTooth: "avance por diente|fz|avance/diente|avance mm/diente",
    tableFeed:
      "vf|velocidad de avance|avance de mesa|avance|avance vf|avance de la mesa|velocidad de avance vf|avance lineal|avance mm/min|avance programado",
    chipThickness: "espesor de viruta",
    passes: "pasadas|nº de pasadas",
    direction: "dirección",
    force: "fuerza de corte|fuerza|esfuerzo de corte|fuerza tangencial",
    power: "potencia|potencia de corte|potencia consumida|potencia necesaria",
    deflection: "flexión|deflexión|flecha|desviación",
    stress: "tensión",
    drill: "broca|ø broca",
    size: "medida",
    sizeMin: "medida mínima|cota mínima",
    sizeMax: "medida máxima|cota máxima",
    timeEach: "tiempo unitario|tiempo por agujero",
    time: "tiempo|tiempo de mecanizado|tiempo de ciclo|tiempo ciclo|duración|tiempo de corte|tiempo por pieza",
    cost: "coste|costo|coste por pieza|costo por pieza",
  },
  material: {
    material: "calidad|nombre|nombre del material|designación|denominación",
    group: "grupo iso|grupo de material|grupo|clase iso|familia",
    hardness: "dureza|dureza hb|dureza hrc|resistencia",
    kc11: "kc1.1|fuerza específica de corte|fuerza de corte específica|kc|presión específica de corte",
    exponent: "mc|exponente|exponente mc",
    source: "fuente",
  },
  tool: {
    tool: "herramienta|nº herramienta|nombre herramienta|código|nº de herramienta|número de herramienta|referencia|nombre|código de herramienta|denominación",
    kind: "tipo|tipo de herramienta|clase|familia",
    units: "unidad|unidades",
    diameter:
      "diámetro|ø herramienta|d|diámetro de corte|ø fresa|diámetro de herramienta|diámetro de fresa|diámetro de la herramienta|ø|diám|dc|ø broca",
    teeth:
      "z|nº de dientes|dientes|número de dientes|labios|filos|nº filos|número de filos|nº dientes|nº de filos|gavilanes|nº de labios",
    cuttingLength: "longitud de corte|long de corte|longitud útil|largo de corte|longitud de filo|longitud cortante",
    neckDiameter: "ø cuello|diámetro de cuello|diámetro del cuello|ø de cuello|diámetro rebajado",
    neckLength: "longitud de cuello|longitud del cuello|alcance|longitud rebajada|largo de cuello",
    shankDiameter: "ø mango|diámetro de mango|mango|diámetro del mango|ø de mango|zanco|diámetro de zanco",
    stickOut: "voladizo|saliente|longitud en voladizo|vuelo",
    cornerRadius: "radio de punta|radio de esquina|radio|r|radio de nariz|radio punta",
    tipFlat: "plano de punta",
    profileAngle: "ángulo de perfil|ángulo de rosca",
    helix: "ángulo de hélice|hélice",
    pointAngle: "ángulo de punta|ángulo de la punta|ángulo punta",
    edgeRadius: "radio de filo|radio del filo",
    edgeAngle: "ángulo de posición|ángulo de ataque",
    modulus: "módulo de elasticidad|módulo de young",
    runout: "salto radial|excentricidad|descentramiento|salto|desviación radial",
    substrate:
      "material herramienta|sustrato|metal duro/hss|material de herramienta|material de corte|material de la herramienta",
    pitch: "paso|paso de rosca",
    chamfer: "entrada",
    maxRpm: "rpm máx|velocidad máx|rpm máximas|velocidad máxima",
    price: "precio|coste herramienta|coste|costo|precio unitario|costo herramienta|precio de herramienta",
    edges: "filos de corte|nº de filos de corte|aristas|número de aristas|filos por plaquita|nº de aristas",
    coolantThrough: "refrigeración interna|refrigeración interior",
    sizeClass: "ajuste|clase de tolerancia|tolerancia",
  },
  machine: {
    machine: "máquina|nombre de máquina|nombre|centro de mecanizado|nombre de la máquina|máquina-herramienta",
    minRpm: "rpm mín|rpm mínimas|velocidad mín|velocidad mínima",
    maxRpm:
      "rpm máx|velocidad máx|rpm máximas|velocidad máxima|velocidad máxima husillo|rpm|máx rpm|velocidad máx husillo",
    power: "potencia|potencia del husillo|potencia de husillo|potencia husillo|potencia motor",
    torque: "par|par del husillo|par motor|torque|par máximo|par de husillo|par husillo",
    maxFeed: "avance máx|avance máximo|avance máximo de trabajo|velocidad de avance máx",
    rapid: "avance rápido|rápido|rápidos|desplazamiento rápido|marcha rápida",
    acceleration: "aceleración",
    toolChange:
      "cambio de herramienta|tiempo de cambio de herramienta|cambio herramienta|viruta a viruta|tiempo viruta a viruta",
    damping: "amortiguamiento",
    rate: "tarifa horaria|coste hora|precio hora|coste horario|costo hora|tarifa|coste por hora|costo por hora|costo horario",
    setup: "preparación|tiempo de preparación|puesta a punto|ajuste|tiempo de puesta a punto",
  },
  words: {
    operation: {
      drill: "taladrar|taladrado|taladro|barrenar|barrenado|perforar|agujero|taladrado profundo",
      "thread mill":
        "fresado de rosca|fresar rosca|roscado con fresa|fresado de roscas|roscar con fresa|roscado por fresado|roscado por interpolación|fresar roscas|roscar|roscado|rosca",
      bore: "mandrinar|mandrinado|cajera circular|interpolación circular|cajeado circular|interpolación helicoidal|mandrinado con fresa|fresado circular|cajera redonda|alesar|alesado",
      boss: "saliente circular|tetón|moyú|isla circular|saliente|espiga|pivote",
      slot: "ranurar|ranura|ranurado|fresado de ranura|chavetero|fresado de ranuras",
      side: "contorno|contorneado|contornear|fresado lateral|perfilado|fresado periférico|pared|perfil|perfilar|escuadrar|fresado de contorno",
      face: "planear|planeado|careado|carear|fresado frontal|planeado de cara|refrentado|refrentar|cara",
      tap: "roscar con macho|roscado con macho|machuelear|machuelado|roscado rígido|macho|roscar|roscado|rosca",
      ream: "escariar|escariado|rimado|rimar",
      countersink: "avellanar|avellanado|chaflán|chaflanar|biselar|achaflanar",
      counterbore:
        "abocardar|cajear tornillo|abocardado|refrentado de agujero|contrataladro|caja de tornillo|caja cilíndrica",
    },
    flag: { yes: "sí|s|verdadero|x|cierto", no: "no|n|falso" },
    through: { yes: "pasante", no: "ciego" },
    hand: {
      right: "derecha|d|a derechas|derecho|rosca derecha|der",
      left: "izquierda|i|a izquierdas|izquierdo|rosca izquierda|izq",
    },
    way: {
      climb: "concordancia|en concordancia|a favor|concordante",
      conventional: "oposición|en oposición|contraposición|convencional|en contra|discordante",
    },
    side: {
      inside: "interior|int|cóncavo|interno|dentro",
      outside: "exterior|ext|convexo|externo|fuera",
      straight: "recto|recta|plano|plana",
    },
    units: { mm: "milímetros|milímetro|métrico", in: "pulgada|pulgadas|pulg|imperial" },
    coolant: {
      flood: "taladrina|inundación|emulsión|externa|exterior|soluble|refrigeración externa|chorro",
      through:
        "interior|refrigeración interna|por el centro|interna|por el husillo|refrigeración interior|a través del husillo|por dentro",
      air: "aire|soplado|aire comprimido|soplo de aire",
      dry: "en seco|seco|sin|ninguno|sin refrigerante|ninguna",
    },
    kind: {
      drill: "broca|broca de metal duro|brocas|broca helicoidal|broca hss",
      "end mill":
        "fresa|fresa cilíndrica|fresa plana|cortador|fresa de metal duro|fresa tórica|fresa de mango|cortador vertical",
      "ball end mill": "fresa esférica|fresa de bola|fresa de punta esférica|cortador de bola",
      "face mill": "fresa de planear|plato de planear|plato de cuchillas|fresa de plaquitas|careador",
      "thread mill full": "fresa de roscar|fresa de roscar perfil completo|fresa de roscar multidiente",
      "thread mill single":
        "fresa de roscar de un diente|fresa de roscar monodiente|fresa de roscar perfil único|fresa de roscar de un perfil",
      tap: "macho|macho de roscar|machuelo|macho de máquina",
      reamer: "escariador|rima|escariador de máquina",
      countersink: "avellanador|fresa de avellanar|fresa de chaflanar|fresa de achaflanar",
    },
    substrate: {
      carbide: "metal duro|carburo|md|metal duro integral|carburo sólido|carburo de tungsteno",
      hss: "acero rápido|hss-co|acero rápido cobalto",
    },
    group: {
      p: "acero|aceros|acero al carbono",
      m: "inoxidable|inox|acero inoxidable",
      k: "fundición|hierro fundido|fundición gris",
      n: "aluminio|no férreos|no ferrosos|latón|cobre|plástico",
      s: "titanio|superaleación|superaleaciones|refractario|aleación termorresistente",
      h: "templado|acero templado|endurecido|acero endurecido",
    },
  },
};
