/** Spellings of the columns and the words of cells in Italian. */
import type { Spellings } from "./index.ts";

export const it: Spellings = {
  row: {
    row: "nr|n°|num|numero|riga|pos|posizione|voce|n° op|fase|sequenza",
    feature: "descrizione|elemento|denominazione|caratteristica|geometria|nota|note|particolare|forma",
    operation:
      "operazione|op|lavorazione|tipo di lavorazione|tipo operazione|tipo di operazione|processo|tipo lavorazione",
    units: "unità|unità di misura|u.m.|um|sistema di unità|mm/poll",
    quantity: "quantità|q.tà|qtà|numero fori|pz|n fori|pezzi|numero di fori|n° fori|quantità per pezzo|fori",
    material: "materiale|mat|materiale pezzo|materiale del pezzo|materiale da lavorare",
    machine: "macchina|macch|centro di lavoro|macchina utensile|nome macchina",
    tool: "utensile|ut|fresa|nome utensile|utens|denominazione utensile",
    thread:
      "filetto|filettatura|designazione filetto|tipo di filettatura|tipo filetto|designazione filettatura|misura filetto",
    startDiameter:
      "ø preforo|diametro preforo|preforo|diametro iniziale|ø iniziale|diametro di partenza|ø di partenza|foro esistente|diametro foro preesistente|diametro del preforo|ø partenza|prefori|ø grezzo",
    finishDiameter:
      "ø finito|diametro finito|diametro|diam|dia|ø|diametro finale|ø finale|ø foro|diametro foro|diametro del foro|diametro nominale|ø nominale|ø alesaggio",
    depth:
      "profondità|prof|profondità filetto|altezza|profondità utile|profondità filettatura|lunghezza filetto|altezza parete|profondità cava|prof filetto",
    through: "passante|foro passante|passante s/n|passante sì/no|passante/cieco",
    hand: "senso|senso filetto|destro/sinistro|dx/sx|mano|senso del filetto|destra/sinistra|d/s|senso filettatura",
    way: "concorde/discorde|concordanza/discordanza|senso di fresatura|tipo di fresatura|modo di fresatura|discorde/concorde|senso fresatura|direzione di fresatura",
    length:
      "lunghezza|lungh|lunghezza di lavorazione|lunghezza taglio|lung|lunghezza di taglio|lunghezza lavorata|lunghezza passata|lunghezza cava",
    side: "lato|interno/esterno|int/est|tipo di parete|parete|esterno/interno",
    radialDepth:
      "ae|profondità radiale|larghezza di taglio|passata radiale|impegno radiale|incremento laterale|larghezza di passata|profondità di taglio radiale|profondità di passata radiale|passo laterale|prof radiale|incremento radiale",
    axialDepth:
      "ap|profondità assiale|profondità di passata|prof di taglio|profondità di taglio|passata assiale|impegno assiale|profondità di taglio assiale|incremento assiale|prof di passata|profondità passata|prof assiale|incremento in z",
    passes: "passate|n passate|numero di passate|nr passate|numero passate|n° passate|n° di passate",
    springPasses:
      "passate a vuoto|passate di spoglia|passate a vuoto finali|passata a vuoto|passate in bianco|passate senza incremento",
    stickOut:
      "sporgenza|sporgenza utensile|sbalzo|sporg|lunghezza sporgenza|lunghezza fuori mandrino|sbalzo utensile|lunghezza di sporgenza|fuoriuscita",
    surfaceSpeed:
      "vt|vc|velocità di taglio|vel di taglio|vel taglio|velocità taglio|velocità di taglio vc|velocità di taglio vt",
    feedPerTooth:
      "fz|avanzamento al dente|avanzamento per dente|avanz/dente|az|avanzamento mm/dente|avanzamento/dente|avanzamento fz|avanzamento al dente fz|avanz al dente|avanzamento dente|avanzamento mm/z",
    maxRpm:
      "giri max|giri massimi|n max|rpm max|velocità max mandrino|numero di giri max|numero giri max|velocità massima mandrino|limite giri|max giri|giri massimo|velocità max|numero massimo di giri",
    holeDepth:
      "profondità foro|prof foro|profondità di foratura|profondità del foro|profondità preforo|profondità foratura|profondità totale|fondo foro",
    batch: "lotto|dimensione lotto|serie|dimensione del lotto|quantità lotto|pezzi per lotto|pezzi lotto",
    drillOversize: "maggiorazione foro|maggiorazione",
    spacing: "interasse|distanza fori|passo fori|distanza tra i fori|distanza tra fori|passo tra fori|interassi",
    wearFactor: "fattore di usura|fattore usura|coefficiente di usura",
    measured:
      "misurato|misura reale|valore misurato|quota misurata|misura rilevata|diametro misurato|misura|quota rilevata|ø misurato|misura effettiva",
    wearValue:
      "usura|correttore usura|correzione usura|correttore|correttore di usura|valore usura|correzione di usura|compensazione usura",
    sizeTolerance: "tolleranza|toll|tol|tolleranza dimensionale|tolleranza +/-|toll +/-",
    roughness: "rz|rugosità|rugosità rz|finitura rz|rugosità superficiale|finitura superficiale rz",
    coolant:
      "refrigerante|refrigerazione|lubrorefrigerante|lubrificazione|tipo refrigerante|refrigerazione tipo|tipo di refrigerazione|emulsione",
    totalWidth: "larghezza cava|larghezza della cava|larghezza totale|larghezza da spianare|larghezza faccia",
    insideCorner:
      "raggio interno|angolo interno|raggio spigolo interno|raggio angolo interno|spigolo interno|raggio tasca",
    sizeClass: "accoppiamento|classe di tolleranza|tolleranza iso|grado di tolleranza|classe tolleranza",
  },
  result: {
    verdict: "esito|giudizio|risultato|stato|verdetto",
    reasons: "motivi|ragioni|motivo",
    limit: "limite",
    load: "carico",
    spindleSpeed:
      "giri|giri/min|n|numero di giri|velocità mandrino|s|numero giri|velocità di rotazione|giri mandrino|rpm|giri al minuto|velocità del mandrino|n giri",
    surfaceSpeed: "velocità di taglio|vc|vt",
    feedPerTooth: "avanzamento al dente|fz|avanzamento per dente|avanzamento mm/dente|az",
    tableFeed:
      "vf|velocità di avanzamento|avanzamento tavola|avanzamento|avanzamento vf|avanz|avanzamento della tavola|va|avanzamento mm/min|avanzamento di lavoro",
    chipThickness: "spessore truciolo|spessore del truciolo",
    passes: "passate|numero di passate",
    direction: "direzione",
    force: "forza di taglio|forza|sforzo di taglio|forza tangenziale",
    power: "potenza|potenza di taglio|potenza assorbita|potenza richiesta",
    deflection: "flessione|inflessione|deflessione|freccia",
    stress: "tensione|sollecitazione",
    drill: "punta|ø punta",
    size: "misura",
    sizeMin: "misura minima|quota minima",
    sizeMax: "misura massima|quota massima",
    timeEach: "tempo unitario|tempo per foro",
    time: "tempo|tempo di lavorazione|tempo ciclo|durata|tempo di ciclo|tempo di taglio|tempo macchina|tempo per pezzo",
    cost: "costo|costo pezzo|costo per pezzo",
  },
  material: {
    material: "materiale|nome materiale|nome|designazione|denominazione|sigla",
    group: "gruppo iso|gruppo materiale|gruppo|classe iso|famiglia|gruppo di materiale",
    hardness: "durezza|durezza hb|durezza hrc|resistenza",
    kc11: "kc1.1|pressione specifica di taglio|forza specifica di taglio|pressione specifica|kc|forza di taglio specifica",
    exponent: "mc|esponente|esponente mc",
    source: "fonte",
  },
  tool: {
    tool: "utensile|n utensile|codice utensile|codice|nome utensile|n° utensile|numero utensile|nome|denominazione|sigla",
    kind: "tipo|tipo utensile|genere|tipo di utensile|famiglia",
    units: "unità|unità di misura|um",
    diameter:
      "diametro|ø utensile|d|diametro di taglio|ø fresa|diametro utensile|diametro fresa|ø|diam|dc|ø punta|diametro dell'utensile",
    teeth:
      "z|n denti|denti|numero denti|numero di denti|taglienti|n taglienti|n° denti|numero taglienti|n° taglienti|numero di taglienti|eliche|nr denti",
    cuttingLength:
      "lunghezza di taglio|lunghezza tagliente|lungh taglio|lunghezza utile|lunghezza taglio|lunghezza del tagliente|lunghezza elica",
    neckDiameter: "ø collo|diametro collo|diametro scarico|ø scarico|diametro del collo",
    neckLength: "lunghezza collo|lunghezza scarico|lunghezza del collo|lunghezza scaricata",
    shankDiameter:
      "ø gambo|diametro gambo|gambo|ø codolo|codolo|diametro del gambo|diametro codolo|ø attacco|diametro attacco",
    stickOut: "sporgenza|sbalzo|sporgenza utensile|sporg",
    cornerRadius: "raggio di punta|raggio spigolo|raggio|r|raggio torico|raggio punta|raggio angolo|raggio di spigolo",
    tipFlat: "piano in punta",
    profileAngle: "angolo di profilo|angolo filetto",
    helix: "angolo d'elica|elica|angolo elica",
    pointAngle: "angolo di punta|angolo punta|angolo al vertice",
    edgeRadius: "raggio tagliente|raggio del tagliente|raggio del filo",
    edgeAngle: "angolo di registrazione|angolo di attacco",
    modulus: "modulo elastico|modulo di elasticità|modulo di young",
    runout: "eccentricità|errore di concentricità|oscillazione|run-out|concentricità",
    substrate: "materiale utensile|substrato|md/hss|materiale tagliente|materiale dell'utensile|hm/hss",
    pitch: "passo|passo filetto",
    chamfer: "imbocco",
    maxRpm: "giri max|n max|giri massimi|velocità max|numero giri max",
    price: "prezzo|costo utensile|costo|prezzo unitario|prezzo utensile",
    edges: "spigoli|n spigoli|taglienti inserto|numero spigoli|spigoli inserto|n° spigoli",
    coolantThrough: "refrigerazione interna|fori di refrigerazione|passaggio refrigerante",
    sizeClass: "accoppiamento|classe di tolleranza|tolleranza",
  },
  machine: {
    machine: "macchina|nome macchina|nome|centro di lavoro|macchina utensile",
    minRpm: "giri min|giri minimi|velocità min|n min",
    maxRpm:
      "giri max|velocità max|giri massimi|n max|velocità max mandrino|velocità massima|numero giri max|giri mandrino max|giri",
    power: "potenza|potenza mandrino|potenza del mandrino|potenza motore",
    torque: "coppia|coppia mandrino|coppia max|coppia del mandrino|coppia massima",
    maxFeed: "avanzamento max|avanzamento massimo|avanzamento di lavoro max|velocità di avanzamento max",
    rapid: "rapido|avanzamento rapido|rapidi|velocità rapido|velocità rapida|movimento rapido",
    acceleration: "accelerazione",
    toolChange:
      "cambio utensile|tempo cambio utensile|truciolo-truciolo|tempo di cambio utensile|tempo truciolo-truciolo",
    damping: "smorzamento",
    rate: "costo orario|tariffa oraria|costo ora|costo macchina|tariffa",
    setup: "attrezzaggio|tempo di attrezzaggio|tempo attrezzaggio|piazzamento|preparazione|set-up",
  },
  words: {
    operation: {
      drill: "forare|foratura|foro|forature|foratura profonda|trapanare|foratura dal pieno",
      "thread mill":
        "fresare filetto|fresatura filetto|filettatura a fresa|fresatura di filetti|filettare a fresa|fresatura filetti|fresare filetti|filettatura con fresa|filettatura per interpolazione|filettare|filettatura|filetto",
      bore: "barenatura|tasca circolare|interpolazione circolare|barenare|interpolazione elicoidale|fresatura circolare|alesatura per interpolazione|foro fresato|alesatura a fresa|alesare|alesatura",
      boss: "perno|borchia|isola circolare|codolo|isola|perno circolare|risalto circolare",
      slot: "cava|scanalatura|scanalare|fresatura di cave|fresatura cava|cave|sede chiavetta|fresatura cave",
      side: "contornatura|contorno|fresatura laterale|contornare|profilo|fresatura periferica|profilatura|parete|fresatura di spallamento|spallamento",
      face: "spianare|spianatura|fresatura frontale|spianata|sfacciatura|sfacciare",
      tap: "maschiare|maschiatura|maschiatura rigida|filettare con maschio|maschio|filettare|filettatura|filetto",
      ream: "alesatore|alesatura con alesatore|passata alesatore|alesare con alesatore|alesatura",
      countersink: "svasare|svasatura|smusso|smussare|smussatura",
      counterbore: "lamare|lamatura|allargatura|sede vite|lamature",
    },
    flag: { yes: "sì|s|vero|x", no: "no|n|falso" },
    through: { yes: "passante|pass", no: "cieco" },
    hand: {
      right: "destra|dx|destro|d|filetto destro|destrorso",
      left: "sinistra|sx|sinistro|s|filetto sinistro|sinistrorso",
    },
    way: {
      climb: "concorde|concordanza|in concordanza",
      conventional: "discorde|discordanza|in discordanza|convenzionale|opposizione",
    },
    side: {
      inside: "interno|int|concavo|interna|dentro",
      outside: "esterno|est|convesso|esterna|fuori",
      straight: "diritto|dritto|rettilineo|piano|dritta|diritta",
    },
    units: { mm: "millimetri|millimetro|metrico", in: "pollice|pollici|poll|imperiale" },
    coolant: {
      flood: "emulsione|esterno|refrigerante esterno|esterna|emulsione esterna|refrigerazione esterna",
      through:
        "interno|passaggio interno|attraverso il mandrino|interna|refrigerazione interna|dal mandrino|refrigerante interno|emulsione interna",
      air: "aria|aria compressa|soffio d'aria|soffio",
      dry: "a secco|secco|senza|nessuno|nessuna",
    },
    kind: {
      drill: "punta|punta elicoidale|punta in metallo duro|punte|punta md",
      "end mill":
        "fresa|fresa cilindrica|fresa a candela|fresa integrale|fresa torica|fresa in metallo duro|fresa a codolo",
      "ball end mill": "fresa sferica|fresa a sfera|fresa a testa sferica",
      "face mill":
        "fresa a spianare|fresa per spianatura|fresa a inserti|fresa a disco per spianare|testa a spianare|fresa da spianatura",
      "thread mill full":
        "fresa a filettare|fresa per filettare|fresa a filettare profilo pieno|fresa per filetti|fresa a filettare a pettine",
      "thread mill single":
        "fresa a filettare monodente|fresa a filettare a un dente|fresa a filettare profilo singolo|fresa a filettare a profilo singolo",
      tap: "maschio|maschio a macchina|maschi",
      reamer: "alesatore|alesatore a macchina",
      countersink: "svasatore|fresa per smussi|fresa a smussare",
    },
    substrate: {
      carbide: "metallo duro|md|carburo|metallo duro integrale|widia|hm",
      hss: "acciaio rapido|hss-co|acciaio superrapido|acciaio super rapido",
    },
    group: {
      p: "acciaio|acciai|acciaio al carbonio",
      m: "inox|inossidabile|acciaio inossidabile|acciaio inox",
      k: "ghisa|ghise",
      n: "alluminio|non ferrosi|non ferroso|ottone|rame|plastica",
      s: "titanio|superlega|superleghe|resistente al calore",
      h: "temprato|acciaio temprato",
    },
  },
};
