import { describe, expect, it } from "vitest";
import { MEANINGS } from "../../src/table/spellings/meanings.ts";
import { match } from "../../taskpane/work/planning.ts";
import { LANGUAGES, score } from "./shop-lists.ts";

describe("a second list of headings and words (independent: written from memory before the words were looked at)", () => {
  it.each(LANGUAGES)(
    "understands nineteen of twenty headings in %s, and takes none for another or for what it may not be",
    (language) => {
      const { of, missed, wrong } = score(language).headings;
      expect(wrong).toEqual([]);
      expect(of).toBeGreaterThanOrEqual(290);
      expect(missed.length / of, missed.join(" ; ")).toBeLessThanOrEqual(0.05);
    },
  );
  it.each(LANGUAGES)("understands nineteen of twenty words of cells in %s", (language) => {
    const { of, missed, wrong } = score(language).cells;
    expect(of).toBeGreaterThanOrEqual(40);
    expect(missed.length / of, missed.join(" ; ")).toBeLessThanOrEqual(0.05);
    // What the list calls nobody's and a cell is taken for all the same: each with what speaks for it.
    const taken = [
      // Nothing else in that column begins so.
      "str. = nobody's, not straight",
      // Both are blown with air.
      "mist = nobody's, not air",
      "MQL = nobody's, not air",
      "GF = nobody's, not thread mill",
      // Boring is said so; reaming is said with the reamer's name.
      "Alésage = nobody's, not bore",
      "Chanfreinage = nobody's, not countersink",
      // The brackets tell what the first word leaves open.
      "ねじ切り（フライス） = nobody's, not thread mill",
    ];
    expect(wrong.filter((line) => !taken.includes(line))).toEqual([]);
  });
});

describe("headings taken apart (independent: what the trade calls them)", () => {
  const key = (...headings: string[]) => {
    const { inputs, outputs } = match(headings);
    const last = headings.length - 1;
    return inputs.find((m) => m.at === last)?.column.key ?? outputs.find((m) => m.at === last)?.column.key;
  };
  it("reads compounds, other orders and cut words that no list names", () => {
    expect(key("Gesamttiefe der Bohrung")).toBe("holeDepth");
    expect(key("Vorbohrdurchm.")).toBe("startDiameter");
    expect(key("hole, depth of")).toBe("holeDepth");
    expect(key("Prof. du trou borg.")).toBe("holeDepth");
    expect(key("下穴の直径")).toBe("startDiameter");
  });
  it("reads the plural of a word", () => {
    for (const [heading, wanted] of [
      ["Materials", "material"],
      ["Machines", "machine"],
      ["Tools", "tool"],
      ["Hole depths", "holeDepth"],
      ["Threads", "thread"],
      ["Outils", "tool"],
      ["Profondeurs", "depth"],
      ["Materiales", "material"],
      ["Máquinas", "machine"],
      ["Herramientas", "tool"],
      ["Materiali", "material"],
      ["Macchine", "machine"],
      ["Utensili", "tool"],
    ] as const)
      expect(key(heading), heading).toBe(wanted);
  });
  it("mends no slip of the finger", () => {
    for (const slip of ["Tife", "Deptth", "Materail", "Profondeure", "Matiérre", "Profundiad", "Matriale", "深ざ"])
      expect(key(slip), slip).toBeUndefined();
  });
  it("lets brackets with words make another thing of a heading, and brackets with a unit not", () => {
    expect(key("Ø")).toBe("finishDiameter");
    expect(key("Ø (mm)")).toBe("finishDiameter");
    expect(key("Ø (tool)")).toBeUndefined();
    expect(key("Durchmesser [Werkzeug]")).toBeUndefined();
    // Words that nobody knows say nothing.
    expect(key("Ø (xyz)")).toBe("finishDiameter");
  });
  it("takes a number of something for no row", () => {
    expect(key("Op", "N. fori")).toBe("quantity");
    expect(key("N [giri/min]")).toBe("spindleSpeed");
    expect(key("N")).toBe("spindleSpeed");
  });
});

describe("doubtful headings", () => {
  const doubts = (...headings: string[]) => match(headings).doubts.map(({ at, options }) => [headings[at], options]);
  it("are neither read nor written, and say what they may mean", () => {
    for (const heading of ["Feed", "Vorschub", "Avance", "Avanzamento", "送り"]) {
      const { inputs, outputs } = match(["Operation", heading]);
      expect(
        [...inputs, ...outputs].map((m) => m.at),
        heading,
      ).toEqual([0]);
      expect(doubts("Operation", heading)).toEqual([[heading, ["in:feedPerTooth", "out:tableFeed"]]]);
    }
    expect(doubts("Speed")).toEqual([["Speed", ["in:surfaceSpeed", "out:spindleSpeed"]]]);
    expect(doubts("Zustellung")).toEqual([["Zustellung", ["in:radialDepth", "in:axialDepth"]]]);
  });
  it("are none once the other meaning has a heading of its own, or the unit tells", () => {
    expect(doubts("fz", "Feed")).toEqual([]);
    expect(match(["fz", "Feed"]).outputs.map((m) => m.column.key)).toEqual(["tableFeed"]);
    expect(doubts("Feed (mm/tooth)")).toEqual([]);
    expect(doubts("Feed (mm/min)")).toEqual([]);
    expect(match(["ae", "Zustellung"]).inputs.map((m) => m.column.key)).toEqual(["radialDepth", "axialDepth"]);
  });
  it("are none once a person has said it", () => {
    expect(match(["Feed"], { feed: "in:feedPerTooth" }).doubts).toEqual([]);
    expect(match(["Feed"], { feed: "in:feedPerTooth" }).inputs.map((m) => m.column.key)).toEqual(["feedPerTooth"]);
    expect(match(["Feed"], { feed: "" }).doubts).toEqual([]);
    // What another heading was said to be is no choice any more.
    expect(match(["Speed", "How fast"], { "how fast": "in:surfaceSpeed" }).doubts).toEqual([
      { at: 0, options: ["out:spindleSpeed"] },
    ]);
  });
  it("are never a heading of our own", () => {
    expect(match(["Operation", "Direction", "Size"]).doubts).toEqual([]);
    expect(match(["Operation", "Direction", "Size"]).outputs.map((m) => m.column.key)).toEqual(["direction", "size"]);
  });
});

describe("headings of a shop that are no cells of a plan (independent: what stands in such tables, from memory)", () => {
  const NEUTRAL: Readonly<Record<string, readonly [beside: readonly string[], others: string]>> = {
    en: [
      ["Operation", "Material"],
      "Article|Customer|Due date|Drawing|Rev|Checked by|Shift|Program no.|Fixture|Clamp|H offset|D-no.|Order|Delivery|Location|Inspector|Gauge|Pallet|Weight|Colour|Length overall|Wall thickness|Angle|Taper|Flatness|Coating|Supplier|Price|Total|Sum|Average|Position X|X|Y|Z|A|B|Start|End|Finish|Rough|Side A|Bottom|Top|TPI|Lead|Tool diameter|Tool length|Holder|Collet|Helix",
    ],
    de: [
      ["Bearbeitung", "Werkstoff", "Tiefe", "Gewinde"],
      "Artikel|Kunde|Termin|Zeichnung|Index|Prüfer|Schicht|Programm|Vorrichtung|Spannmittel|Auftrag|Lieferung|Lagerort|Prüfmittel|Gewicht|Farbe|Wandstärke|Winkel|Kegel|Fase|Ebenheit|Beschichtung|Lieferant|Preis|Summe|X|Y|Start|Ende|Schlichten|Schruppen|Oben|Unten|Umdrehungen|Werkzeugdurchmesser|Werkzeuglänge|Halter|Aufmaß|Restmaterial|Datum|Abteilung|Freigabe|Kommission",
    ],
    fr: [
      ["Usinage", "Matière", "Profondeur", "Filetage"],
      "Article|Client|Délai|Plan|Indice|Contrôleur|Équipe|Programme|Montage|Bridage|Commande|Livraison|Poids|Couleur|Épaisseur|Angle|Cône|Chanfrein|Planéité|Revêtement|Fournisseur|Prix|Somme|Début|Fin|Finition|Ébauche|Face|Fond|Pas|Tours|Diamètre outil|Longueur outil|Porte-outil|Surépaisseur|Date|Heure",
    ],
    es: [
      ["Operación", "Material", "Profundidad", "Rosca"],
      "Artículo|Cliente|Plazo|Plano|Revisión|Inspector|Turno|Programa|Utillaje|Pedido|Entrega|Peso|Color|Espesor|Ángulo|Cono|Chaflán|Planitud|Recubrimiento|Proveedor|Precio|Suma|Inicio|Fin|Acabado|Desbaste|Lado A|Cara|Fondo|Paso|Vueltas|Diámetro herramienta|Longitud herramienta|Pinza|Fecha|Hora",
    ],
    it: [
      ["Lavorazione", "Materiale", "Profondità", "Filettatura"],
      "Articolo|Cliente|Scadenza|Disegno|Revisione|Collaudatore|Turno|Programma|Attrezzatura|Ordine|Consegna|Peso|Colore|Spessore|Angolo|Cono|Smusso|Planarità|Rivestimento|Fornitore|Prezzo|Somma|Inizio|Fine|Finitura|Sgrossatura|Lato A|Faccia|Fondo|Passo|Diametro utensile|Lunghezza utensile|Pinza|Data|Ora",
    ],
    ja: [
      ["加工", "材質", "深さ"],
      "品番|客先|納期|図面|改訂|検査者|班|プログラム|治具|注文|納入|重量|色|板厚|角度|テーパ|平面度|コーティング|仕入先|価格|合計|目標|終了|荒|面A|底|ピッチ|刃数|工具径|工具長|ホルダ|コレット|日付|時刻|部署|担当",
    ],
  };
  it.each(Object.entries(NEUTRAL))("are taken for nothing in %s", (_, [beside, others]) => {
    const taken = others.split("|").filter((heading) => {
      const { inputs, outputs } = match([...beside, heading]);
      return [...inputs, ...outputs].some((m) => m.at === beside.length);
    });
    expect(taken).toEqual([]);
  });
  it("are asked about where one of them may be meant: a width of the cut or of the slot, a corner of the part or the tool", () => {
    const doubt = (heading: string) => match(["Operation", heading]).doubts[0]?.options;
    for (const width of ["Width", "Breite", "Largeur", "Ancho", "Larghezza", "幅"])
      expect(doubt(width), width).toEqual(["in:radialDepth", "in:totalWidth"]);
    expect(doubt("Corner radius")).toEqual(["in:insideCorner"]);
    expect(match(["Operation", "Slot width", "ae"]).inputs.map((m) => m.column.key)).toEqual([
      "operation",
      "totalWidth",
      "radialDepth",
    ]);
  });
});

describe("ways to say a column (identity)", () => {
  it("are each made of notions that some language has a word for", async () => {
    const { LANGUAGES: all } = await import("../../src/table/spellings/index.ts");
    const { common } = await import("../../src/table/spellings/common.ts");
    const known = new Set(
      [common, ...all.map((language) => language.notions)].flatMap((words) =>
        Object.keys(words).flatMap((names) => names.split(" ")),
      ),
    );
    // "N" beside another word becomes a number of something.
    const used = new Set(
      Object.values(MEANINGS).flatMap((table) =>
        Object.values(table).flatMap((ways: string) => ways.split(/[| /]/).map((word) => word.replace(/\?/g, ""))),
      ),
    );
    expect([...used].filter((notion) => !known.has(notion))).toEqual([]);
    expect([...known].filter((notion) => !used.has(notion) && notion !== "stop" && notion !== "nr")).toEqual([]);
  });
});
