/** Spellings of the columns and the words of cells in German. */
import type { Spellings } from "./index.ts";

export const de: Spellings = {
  row: {
    row: "nr|nummer|pos|position|lfd nr|laufende nummer|ag|ag nr|zeile|arbeitsgang nr|arbeitsgangnummer|schritt|folge",
    feature: "merkmal|beschreibung|bezeichnung|geometrie|element|formelement|geometrieelement|benennung",
    operation:
      "bearbeitung|arbeitsgang|vorgang|bearbeitungsart|prozess|verfahren|arbeitsschritt|arbeitsvorgang|art der bearbeitung",
    units: "einheit|einheiten|maßeinheit|maßsystem|einheitensystem|mm/zoll",
    quantity:
      "menge|anzahl|anz|stk|stück|anzahl bohrungen|anzahl löcher|bohrungen|anzahl merkmale|anzahl je teil|anzahl pro teil",
    material: "werkstoff|werkst|werkstückstoff|werkstückwerkstoff|werkstoffbezeichnung|rohmaterial",
    machine: "maschine|masch|bearbeitungszentrum|baz|anlage|maschinenname",
    tool: "werkzeug|wkz|fräser|werkzeugname|werkzeugbezeichnung|wz|werkzeugnummer",
    thread: "gewinde|gewindegröße|gewindebezeichnung|gewindeart|gewindemaß|gewindetyp",
    startDiameter:
      "kernloch|vorbohrung|vorbohr-ø|vorbohrdurchmesser|kernloch-ø|kernlochdurchmesser|startdurchmesser|vorbohrung ø|ø vorbohrung|ø kernloch|anfangsdurchmesser|ausgangsdurchmesser|start-ø|rohdurchmesser|vorbearbeiteter ø|vorhandene bohrung|vorbohrmaß|vorbearbeitung ø",
    finishDiameter:
      "durchmesser|fertigdurchmesser|fertig-ø|ø fertig|durchm|dm|dmr|solldurchmesser|soll-ø|bohrungs-ø|bohrungsdurchmesser|enddurchmesser|end-ø|nenndurchmesser|nenn-ø|fertigmaß|loch-ø|lochdurchmesser|zapfendurchmesser|ø bohrung",
    depth: "tiefe|gewindetiefe|nutztiefe|höhe|wandhöhe|gewindelänge|nutzbare tiefe|nuttiefe|taschentiefe",
    through:
      "durchgang|durchgangsbohrung|durchgehend|durchgangsloch|dl|durchgangsbohrung j/n|durchgang j/n|durchgehend j/n|durchgangsloch j/n|durchgangsgewinde",
    hand: "gewinderichtung|drehsinn|rechts/links|links/rechts|r/l|steigungsrichtung|rechts oder links|rh/lh|gangrichtung",
    way: "gleichlauf/gegenlauf|fräsrichtung|fräsart|gl/ggl|gegenlauf/gleichlauf|gleich-/gegenlauf|gleichlauf oder gegenlauf|fräsverfahren|laufrichtung",
    length: "länge|fräslänge|schnittweg|bearbeitungslänge|schnittlänge|fräsweg|konturlänge|nutlänge",
    side: "seite|wandform|innen/außen|außen/innen|wand|wandart|lage",
    radialDepth:
      "schnittbreite|eingriffsbreite|radiale zustellung|seitliche zustellung|zustellung ae|arbeitseingriff ae|arbeitseingriff|radiale schnitttiefe|radialzustellung|zustellung radial|schnittbreite ae|eingriffsbreite ae|radialer eingriff|seitenzustellung|ae",
    axialDepth:
      "schnitttiefe|axiale zustellung|zustellung ap|schnitttiefe ap|tiefenzustellung|axiale schnitttiefe|axialzustellung|zustellung axial|schnittiefe|zustelltiefe|axialer eingriff|z-zustellung|ap",
    passes:
      "schnitte|anzahl schnitte|durchgänge|umläufe|anz zustellungen|anzahl zustellungen|anzahl durchgänge|anzahl umläufe|schnittzahl|schnittanzahl|anz schnitte|zustellungen",
    springPasses:
      "leerschnitte|leerdurchgänge|leerumläufe|schlichtumläufe ohne zustellung|leerschnitt|ausfeuern|schnitte ohne zustellung|nullschnitte|durchgänge ohne zustellung",
    stickOut:
      "auskraglänge|ausspannlänge|auskragung|ausspannung|auskragung werkzeug|überhang|werkzeugauskragung|kraglänge|einspannüberstand|werkzeugüberhang|überstand",
    surfaceSpeed:
      "schnittgeschwindigkeit|schnittgeschw|vc|schnittgeschwindigkeit vc|vc schnittgeschwindigkeit|umfangsgeschwindigkeit",
    feedPerTooth:
      "zahnvorschub|vorschub pro zahn|vorschub/zahn|vorschub je zahn|vorschub fz|zahnvorschub fz|vorschub je zahn fz|vorschub pro zahn fz|vorschub per zahn|fz|vorschub mm/zahn|vorschub mm/z",
    maxRpm:
      "max drehzahl|drehzahlgrenze|maximaldrehzahl|n max|höchstdrehzahl|drehzahl max|maximale drehzahl|grenzdrehzahl|drehzahlbegrenzung|drehzahllimit",
    holeDepth:
      "bohrtiefe|bohrungstiefe|lochtiefe|kernlochtiefe|grundlochtiefe|tiefe kernloch|vorbohrtiefe|tiefe der bohrung|gesamttiefe",
    batch: "losgröße|los|stückzahl|serie|auftragsmenge|losmenge|seriengröße|loszahl",
    drillOversize: "bohrungsübermaß|bohrübermaß|übermaß bohrer",
    spacing: "abstand|lochabstand|teilung|bohrungsabstand|achsabstand|lochteilung|abstand der bohrungen|mittenabstand",
    wearFactor: "verschleißfaktor|faktor verschleiß",
    measured:
      "istmaß|gemessen|ist|messwert|gemessenes maß|ist-maß|ist-durchmesser|messmaß|gemessener durchmesser|istwert",
    wearValue:
      "verschleißwert|verschleißkorrektur|verschleiß|korrekturwert|werkzeugkorrektur|wkz-korrektur|verschleiß in der steuerung",
    sizeTolerance: "toleranz|tol|maßtoleranz|tol +/-|toleranz +/-|abmaß|zulässige abweichung",
    remark: "bemerkung|bemerkungen|anmerkung|annahmen",
    roughness:
      "rauheit|rautiefe|rautiefe rz|oberfläche rz|rauheit rz|rz|oberflächenrauheit rz|gemittelte rautiefe|oberflächengüte rz",
    coolant: "kühlung|kss|kühlschmierstoff|kühlmittel|kühlart|kühlschmierung|kühlmittelzufuhr",
    totalWidth: "nutbreite|nutenbreite|planbreite|breite der nut|gesamtbreite|flächenbreite",
    insideCorner:
      "innenecke|innenradius|eckenradius innen|innenecke radius|innenecken-radius|kleinster innenradius|taschenradius|eckradius innen",
    sizeClass: "passung|toleranzklasse|toleranzfeld|iso-passung|passungsklasse|iso-toleranz|toleranzgrad",
  },
  result: {
    verdict: "urteil|bewertung|ergebnis|status|beurteilung",
    reasons: "gründe|begründung|grund",
    limit: "grenze",
    load: "auslastung",
    spindleSpeed: "drehzahl|spindeldrehzahl|drehzahl n|n|s|u/min|n drehzahl|drehzahl s",
    surfaceSpeed: "schnittgeschwindigkeit|vc",
    feedPerTooth: "zahnvorschub|fz|vorschub pro zahn",
    tableFeed:
      "vorschub|vorschubgeschwindigkeit|tischvorschub|vf|vorschub vf|vorschubgeschwindigkeit vf|vorschub f|bahnvorschub|fräservorschub",
    chipThickness: "spandicke|spanungsdicke|hmax",
    passes: "schnitte|anzahl schnitte",
    direction: "richtung",
    force: "schnittkraft|kraft|zerspankraft|tangentialkraft",
    power: "leistung|spindelleistung|schnittleistung|antriebsleistung|leistungsbedarf",
    deflection: "abdrängung|durchbiegung|auslenkung|verbiegung",
    stress: "spannung",
    drill: "bohrer|bohrergröße",
    size: "maß",
    sizeMin: "mindestmaß|kleinstmaß",
    sizeMax: "höchstmaß|größtmaß",
    timeEach: "stückzeit|zeit je merkmal|zeit je bohrung",
    time: "zeit|bearbeitungszeit|hauptzeit|fertigungszeit|laufzeit|zykluszeit|taktzeit|zeit je teil",
    cost: "kosten|stückkosten|kosten je teil|kosten pro teil",
  },
  material: {
    material: "werkstoff|werkstoffbezeichnung|werkstoffname|bezeichnung|name|werkstoffnummer",
    group: "iso-gruppe|werkstoffgruppe|gruppe|iso|zerspanungsgruppe|materialgruppe",
    hardness: "härte|festigkeit|härte hb|härte hrc|zugfestigkeit",
    kc11: "kc1.1|spez schnittkraft|spezifische schnittkraft|schnittkraft kc1.1|hauptwert der spezifischen schnittkraft|hauptwert",
    exponent: "exponent mc|mc|anstiegswert|anstieg|steigungsexponent",
    referenceLife: "standzeit|bezugsstandzeit",
    source: "quelle",
  },
  tool: {
    tool: "werkzeug|werkzeug-nr|werkzeugnummer|werkzeugname|t-nr|bezeichnung|wkz|wkz-nr|name",
    kind: "art|typ|werkzeugart|werkzeugtyp|bauart",
    units: "einheit|einheiten",
    diameter:
      "durchmesser|werkzeugdurchmesser|werkzeug-ø|fräser-ø|d|d1|dc|fräserdurchmesser|bohrer-ø|schneiden-ø|schneidendurchmesser|nenn-ø|ø werkzeug|nenndurchmesser",
    teeth: "zähne|zähnezahl|anzahl zähne|schneidenzahl|anz schneiden|anzahl schneiden|z|anz zähne|zahnzahl|schneiden",
    cuttingLength: "schneidenlänge|schneidlänge|l2 schneidenlänge|schneidenlänge l2|schnittlänge|spannutlänge",
    neckDiameter: "hals-ø|halsdurchmesser|freischliff-ø|freistellung ø|freischliffdurchmesser|ø hals|ø freischliff",
    neckLength: "halslänge|freischlifflänge|nutzlänge|länge freischliff|freistellungslänge|reichweite",
    shankDiameter: "schaft-ø|schaftdurchmesser|schaft|ø schaft|d2 schaft",
    stickOut: "auskraglänge|ausspannlänge|auskragung|ausspannung|überhang",
    cornerRadius: "eckenradius|eckradius|r|radius|schneidenradius|kantenradius ecke",
    tipFlat: "spitzenabflachung|abflachung",
    profileAngle: "flankenwinkel|profilwinkel",
    helix: "drallwinkel|drall|spiralwinkel|helixwinkel",
    pointAngle: "spitzenwinkel|bohrerspitzenwinkel",
    edgeRadius: "schneidkantenradius|kantenverrundung|schneidkantenverrundung|kantenradius",
    edgeAngle: "einstellwinkel",
    ruptureStrength: "biegebruchfestigkeit",
    modulus: "e-modul|elastizitätsmodul",
    notchFactor: "kerbfaktor|kerbwirkungszahl",
    runout: "rundlauf|rundlauffehler|rundlaufabweichung",
    substrate: "schneidstoff|vhm/hss|substrat|werkzeugwerkstoff|hm/hss",
    pitch: "steigung|steigung p|gewindesteigung",
    chamfer: "anschnitt",
    maxRpm: "max drehzahl|höchstdrehzahl|maximale drehzahl|drehzahl max|n max",
    price: "preis|kosten|werkzeugpreis|werkzeugkosten|einkaufspreis|preis €",
    edges: "schneidkanten|anzahl schneidkanten|schneidecken",
    coolantThrough: "innenkühlung|ikz|innere kühlmittelzufuhr|ik",
    holderDiameter: "halterdurchmesser|aufnahme-ø",
    holderLength: "halterlänge",
    sizeClass: "passung|toleranzklasse|toleranzfeld",
  },
  machine: {
    machine: "maschine|maschinenname|name|bezeichnung|masch|bearbeitungszentrum",
    minRpm: "min drehzahl|mindestdrehzahl|drehzahl min|n min",
    maxRpm:
      "max drehzahl|drehzahl max|maximaldrehzahl|höchstdrehzahl|n max|maximale drehzahl|drehzahl|spindeldrehzahl max",
    power: "leistung|spindelleistung|antriebsleistung|nennleistung|motorleistung",
    power30: "leistung 30 min",
    torque: "drehmoment|spindeldrehmoment|max drehmoment|moment|nennmoment",
    maxFeed: "max vorschub|vorschub max|maximaler vorschub|höchstvorschub|max arbeitsvorschub",
    rapid: "eilgang|eilganggeschwindigkeit|eilvorschub",
    acceleration: "beschleunigung|achsbeschleunigung",
    toolChange:
      "werkzeugwechsel|wkz-wechselzeit|span-zu-span-zeit|werkzeugwechselzeit|span-zu-span|wkz-wechsel|wechselzeit",
    holderStiffness: "steifigkeit aufnahme|aufnahmesteifigkeit",
    damping: "dämpfung",
    rate: "stundensatz|maschinenstundensatz|kosten pro stunde|kosten je stunde|maschinenkosten",
    setup: "rüstzeit|rüsten|einrichtezeit|einrichten",
  },
  words: {
    operation: {
      drill: "bohren|bohrung|vollbohren|tiefbohren|vorbohren|tieflochbohren|kernlochbohren",
      "thread mill": "gewindefräsen|gewinde fräsen|gf|innengewindefräsen|gewindezirkularfräsen|gewinde",
      bore: "kreistasche|ausspindeln|zirkularfräsen|bohrung fräsen|bohrzirkularfräsen|kreistasche fräsen|helixfräsen|bohrfräsen|zirkulartasche|bohrungsfräsen|zirkular fräsen|ausdrehen|bohrung ausfräsen",
      boss: "zapfen|zapfen fräsen|kreiszapfen|rundzapfen|zapfenfräsen|außenzirkularfräsen|kreiszapfen fräsen",
      slot: "nut|nuten|nutfräsen|nut fräsen|nutenfräsen|vollnut|vollnutfräsen|passfedernut|schlitz",
      side: "umfangsfräsen|kontur|kontur fräsen|konturfräsen|seitenfräsen|eckfräsen|besäumen|seite|umriss|wand|wand fräsen|schulterfräsen",
      face: "planfräsen|plan|planen|stirnfräsen|planfläche|fläche|plan überfräsen",
      tap: "gewindebohren|gb|gewinde bohren|gewindeschneiden|gewinde schneiden|innengewinde bohren|gewinde",
      ream: "reiben|aufreiben",
      countersink: "kegelsenken|senken|ansenken|anfasen|kegelsenkung|fase|fasen|entgraten senken|senkung",
      counterbore: "flachsenken|zylindersenkung|plansenken|zylindersenken|flachsenkung|stirnsenken|plansenkung",
    },
    flag: { yes: "ja|j|wahr|x|richtig", no: "nein|n|falsch" },
    through: { yes: "durchgang|durchgehend|durchgangsbohrung|dl", no: "grundloch|sackloch|sacklochbohrung|gl" },
    hand: { right: "rechts|r|rechtsgewinde|rechtsgängig|rechte", left: "links|l|linksgewinde|linksgängig|linke" },
    way: {
      climb: "gleichlauf|gl|gleichlauffräsen|im gleichlauf",
      conventional: "gegenlauf|ggl|gegenlauffräsen|im gegenlauf",
    },
    side: { inside: "innen|konkav|innenseite", outside: "außen|konvex|außenseite", straight: "gerade|eben|geradlinig" },
    units: { mm: "millimeter|metrisch", in: "zoll|zöllig|inch" },
    coolant: {
      flood: "emulsion|überflutung|außen|nass|außenkühlung|äußere|kss|überflutet|extern",
      through: "ikz|innen|innenkühlung|ik|innere kühlmittelzufuhr|durch die spindel|intern|kühlung innen",
      air: "luft|druckluft|blasluft|luftblasen",
      dry: "trocken|ohne|keine|aus|trockenbearbeitung",
    },
    kind: {
      drill: "bohrer|spiralbohrer|vhm-bohrer|hss-bohrer|vollhartmetallbohrer|hartmetallbohrer",
      "end mill":
        "schaftfräser|vhm-fräser|schruppfräser|schlichtfräser|vhm-schaftfräser|torusfräser|langlochfräser|bohrnutenfräser|eckfräser|fingerfräser",
      "ball end mill": "kugelfräser|radiusfräser|vollradiusfräser|kugelkopffräser",
      "face mill": "planfräser|messerkopf|planmesserkopf|walzenstirnfräser|messerkopffräser",
      "thread mill full":
        "vollprofil-gewindefräser|gewindefräser|gewindefräser vollprofil|vollprofilgewindefräser|mehrzahn-gewindefräser",
      "thread mill single":
        "gewindewirbler|einzahn-gewindefräser|einprofil-gewindefräser|gewindefräser einzahn|gewindewirbelfräser|teilprofil-gewindefräser",
      tap: "gewindebohrer|maschinengewindebohrer",
      reamer: "reibahle|maschinenreibahle",
      countersink: "kegelsenker|senker|fasenfräser|entgratsenker|fasfräser",
    },
    substrate: {
      carbide: "vhm|hartmetall|hm|vollhartmetall",
      hss: "hss-e|schnellarbeitsstahl|hss-co|hsse|hss-pm|hochleistungsschnellstahl|schnellstahl",
    },
    group: {
      p: "stahl|stähle|baustahl",
      m: "rostfrei|edelstahl|rostfreier stahl|nichtrostend|va|inox",
      k: "guss|gusseisen|grauguss",
      n: "alu|aluminium|ne-metalle|nichteisen|ne|messing|kupfer|kunststoff",
      s: "titan|superlegierung|warmfest|superlegierungen|hitzebeständig|nickelbasis",
      h: "gehärtet|gehärteter stahl|hart|stahl gehärtet",
    },
  },
};
