/** Headings taken apart and told apart: units, brackets, equal headings, the language of a table (independent: plain reading). */
import { describe, expect, it } from "vitest";
import { matchHeadings, ROW_COLUMNS, readHeadings, TOOL_COLUMNS } from "../../src/table/columns.ts";
import { headingText, normalHeading } from "../../src/table/headings.ts";

const row = (...headings: unknown[]) =>
  matchHeadings(headings, ROW_COLUMNS).map((m) => [m.at, m.column.key, ...(m.units ? [m.units] : [])]);
const tool = (...headings: unknown[]) => matchHeadings(headings, TOOL_COLUMNS).map((m) => m.column.key);

describe("a heading as it is kept", () => {
  it.each([
    ["  Hole   Depth ", "hole depth"],
    ["Hole_depth", "hole depth"],
    ["No.", "no"],
    ["a:b;c,d/e\\f-g–h—i#j", "a b c d e f g h i j"],
    ["Depth [mm]", "depth"],
    ["Rate [per hour]", "rate"],
    ["D(1)x", "d x"],
    [12, "12"],
    [null, ""],
    [undefined, ""],
  ])("%j is %j", (heading, wanted) => expect(normalHeading(heading)).toBe(wanted));
});

describe("the unit of a heading", () => {
  const unit = (heading: string) => headingText(heading).unit?.measure;
  it.each([
    ["Depth (mm", "length"],
    ["Depth (xyz) [mm]", "length"],
    ["Depth in.", "length"],
    ['Depth "', "length"],
    ["Helix °", "angle"],
    ["Depth - mm", "length"],
    ["Torque ft lb", "torque"],
    ["Depth / mm", "length"],
    ["Speed surface feet per minute", "surface speed"],
    ["Price EUR", "money"],
    ["Price (€)", "money"],
    ["Time (s)", "time"],
    ["Time (min)", "time"],
  ])("%s is one of %s", (heading, measure) => expect(unit(heading)).toBe(measure));
  // A single letter may be anything, "min" the least of something, "HT" the number of a heat.
  it.each(["Side h", "Depth s", "Depth min", "Prix HT", "Depth/s", "Depth/min", "Depth", "mm/", "Side/A"])(
    "%s names none without brackets",
    (heading) => expect(unit(heading)).toBeUndefined(),
  );
  it("is taken off with what joins it: in and en, a comma, a slash", () => {
    for (const heading of ["Tiefe in mm", "Tiefe en mm", "Tiefe, mm", "Tiefe/mm", "Tiefe mm"])
      expect(headingText(heading).keys.at(-1), heading).toBe("tiefe");
    expect(headingText("Tiefe am mm").keys.at(-1)).toBe("tiefeam");
    expect(headingText("Tiefe der Bohrung in mm").keys.at(-1)).toBe("tiefederbohrung");
  });
  it("is no words in brackets, and words in brackets are", () => {
    expect(headingText("Depth (mm)").told).toBe(false);
    expect(headingText("Depth (hole)").told).toBe(true);
    expect(headingText("Depth (hole) (mm)").told).toBe(false);
    expect(headingText("Feed (mm/tooth)").told).toBe(false);
    expect(headingText("Depth (hole)").texts).toEqual(["depth   hole", "depth"]);
  });
});

describe("a heading as a column", () => {
  it("may be as long as 200 characters, and no longer", () => {
    expect(row(`Depth${" ".repeat(195)}`)).toEqual([[0, "depth"]]);
    expect(row(`Depth${" ".repeat(196)}`)).toEqual([]);
  });
  it("is text: nothing, numbers and yes or no are none", () => {
    expect(row(null, undefined, "", " ", 5, true, "Depth")).toEqual([[6, "depth"]]);
  });
  it("counts once: the first of two equal ones, our own before any other, in the order of the table", () => {
    expect(row("Depth", "Depth")).toEqual([[0, "depth"]]);
    expect(row("Tiefe", "Prof.")).toEqual([[0, "depth"]]);
    expect(row("Material", "Tiefe", "Depth")).toEqual([
      [0, "material"],
      [2, "depth"],
    ]);
    // "Op" is told by its language, after all the others; it stands where it stands.
    expect(row("Op", "Matière", "Outil", "Profondeur").map(([at]) => at)).toEqual([0, 1, 2, 3]);
  });
  it("of words may name a length, a weight or a roughness beside them, and nothing else", () => {
    expect(row("Thread (mm)")).toEqual([[0, "thread"]]);
    expect(row("Material (kg)")).toEqual([[0, "material"]]);
    expect(row("Thread (kW)")).toEqual([]);
    expect(row("Material (s)")).toEqual([]);
    // A number of something has none.
    expect(row("Quantity (mm)")).toEqual([]);
    expect(row("Quantity (kg)")).toEqual([]);
  });
  it("of a length stays doubtful where its unit says no more than that it is one", () => {
    expect(row("Feed (mm)")).toEqual([]);
    expect(readHeadings(["Feed (mm)"], ROW_COLUMNS).doubts.map(({ columns }) => columns.map((c) => c.key))).toEqual([
      ["feedPerTooth"],
    ]);
    expect(row("Feed (mm/tooth)")).toEqual([[0, "feedPerTooth", "mm"]]);
  });
  it("that is our own word for a result is no input of a row, whatever its brackets hold; a tool may have it", () => {
    expect(row("Depths")).toEqual([]);
    expect(row("Depths (hole)")).toEqual([]);
    expect(row("Hole depths")).toEqual([[0, "holeDepth"]]);
    expect(tool("Cost")).toEqual(["price"]);
  });
  it("loses its unit behind brackets that say nothing", () => {
    expect(row("Depth mm (xyz)")).toEqual([[0, "depth", "mm"]]);
    expect(row("Depth in mm (xyz)")).toEqual([[0, "depth", "mm"]]);
  });
  it("of two meanings is told by one other heading in a language that has but one of them", () => {
    // "Op" is the operation in French, and that or the row in English.
    expect(row("Op", "Matière").map(([, key]) => key)).toEqual(["operation", "material"]);
    expect(row("Op", "Material").map(([, key]) => key)).toEqual(["material"]);
  });
  it("keeps the words of brackets within brackets", () => {
    expect(row("Ø (tool (mm))")).toEqual([]);
    expect(row("Depth)")).toEqual([[0, "depth"]]);
  });
  it("takes a single letter for a word between others, and for a name at the end", () => {
    expect(row("Depth of a hole")).toEqual([[0, "holeDepth"]]);
    expect(row("Profundidad a mecanizar")).toEqual([[0, "depth"]]);
    expect(row("Depth a")).toEqual([]);
    expect(row("Profondità e")).toEqual([]);
  });
  it("reads the short form of a number wherever it stands", () => {
    for (const heading of ["N. fori", "Fori n.", "N° fori", "Fori n°", "#holes"])
      expect(row("Operation", heading), heading).toEqual([
        [0, "operation"],
        [1, "quantity"],
      ]);
  });
  it("reads plus and minus however they are written", () => {
    expect(row("±")).toHaveLength(1);
    for (const heading of ["+/-", "+ /-", "+/ -", "+ / -"]) expect(row(heading), heading).toEqual(row("±"));
  });
  it("reads a price in money of any kind", () => {
    for (const heading of ["Price", "Price (€)", "Price EUR", "Price USD"])
      expect(tool(heading), heading).toEqual(["price"]);
  });
});

describe("a word of a language that the table does not speak", () => {
  // "Fase" is a chamfer in German and a step of the work in Italian.
  const german = ["Bearbeitung", "Tiefe", "Gewinde"];
  const fase = (...beside: string[]) => row(...beside, "Fase").find(([at]) => at === beside.length)?.[1];
  it("is taken until the table says two headings more in another", () => {
    expect(fase("Operation")).toBe("row");
    expect(fase(...german.slice(0, 2))).toBe("row");
    expect(fase(...german)).toBeUndefined();
    expect(fase(...german, "Utensile")).toBe("row");
    expect(fase("Operation", "Qty", "Matl", "Hole dia", "Callout")).toBe("row");
  });
  it("is asked about then, and English is spoken everywhere", () => {
    expect(readHeadings([...german, "Fase"], ROW_COLUMNS).doubts.map(({ heading }) => heading)).toEqual(["Fase"]);
    expect(row(...german, "Callout").at(-1)).toEqual([3, "feature"]);
    // A pass in English, and what goes through in Italian, which this table does not speak.
    expect(row("Operation", "Tiefe", "Gewinde", "Werkstoff", "Pass").at(-1)).toEqual([4, "passes"]);
  });
});
