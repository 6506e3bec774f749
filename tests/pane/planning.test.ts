import { spawnSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import exceljs from "exceljs";
import { describe, expect, it } from "vitest";
import { RESULT_COLUMNS } from "../../src/table/columns.ts";
import type { Block, CellValue } from "../../taskpane/host/host.ts";
import {
  BASIS,
  basisOf,
  besideBlock,
  changedFormula,
  changesFor,
  isEmptyRow,
  liveFormats,
  liveFormula,
  match,
  planningBlock,
  planningScore,
  resultScore,
  unitsGiven,
  workedRows,
} from "../../taskpane/work/planning.ts";
import { DRILL_PLAN, THREAD_PLAN } from "./sample.ts";

const table = (headings: CellValue[], rows: CellValue[][] = []): Block => ({
  sheet: "Plan",
  top: 3,
  left: 1,
  headings,
  rows,
  reference: "Plan!$B$4:$E$9",
  address: "Plan B4:E9",
});
const keys = (matches: readonly { column: { key: string }; at: number }[]) =>
  Object.fromEntries(matches.map((m) => [m.column.key, m.at]));

describe("matching headings", () => {
  it("takes a heading as an input first, and a second one of the same name as a result", () => {
    const { inputs, outputs } = match(["Operation", "Passes", "Surface speed", "Passes2", "RPM", "Surface speed"]);
    expect(keys(inputs)).toEqual({ operation: 0, passes: 1, surfaceSpeed: 2 });
    expect(keys(outputs)).toEqual({ passes: 3, spindleSpeed: 4, surfaceSpeed: 5 });
  });

  it("never takes the row's name, or a column nobody knows, as a result", () => {
    const { outputs } = match(["Row", "Operation", "Row", "Inspector", "Colour"]);
    expect(outputs).toEqual([]);
  });

  it("lets a person say what a heading means, over what it looks like", () => {
    const { inputs, outputs } = match(["Operation", "How deep", "Depth", "Go"], {
      "how deep": "in:depth",
      go: "out:spindleSpeed",
    });
    expect(keys(inputs)).toEqual({ operation: 0, depth: 1 });
    expect(keys(outputs)).toEqual({ spindleSpeed: 3 });
  });

  it("takes headings that are named like what every object has for words that nobody said anything of", () => {
    const headings = ["Operation", "constructor", "toString", "Depth"];
    const { inputs } = match(headings, { depth: "" });
    expect(inputs.map((m) => m.at)).toEqual([0]);
    expect(planningScore(headings, { depth: "in:depth" })).toBeGreaterThan(0);
  });
  it("lets a person say that a column is not used", () => {
    expect(keys(match(["Operation", "RPM"], { rpm: "" }).outputs)).toEqual({});
  });

  it("tells planning tables from lists and from blocks of results", () => {
    expect(planningScore(["Op", "Operation", "Dia", "Depth"])).toBeGreaterThan(0);
    expect(planningScore(["Gewinde", "Tiefe", "Werkstoff"])).toBeGreaterThan(0);
    expect(planningScore(["Tool", "Kind", "Units", "Diameter", "Teeth", "Stick-out"])).toBe(0);
    expect(planningScore(["Machine", "Min rpm", "Max rpm", "Power [kW]"])).toBe(0);
    const results = RESULT_COLUMNS.map((c) => c.heading);
    expect(planningScore(results)).toBe(0);
    expect(resultScore(results)).toBeGreaterThan(0);
    expect(resultScore(["Op", "Operation", "Dia"])).toBe(0);
  });
});

describe("units", () => {
  it("come from a Units column, from headings that agree, or are asked for", () => {
    expect(unitsGiven(match(["Operation", "Units", "Depth"]))).toBe("given");
    expect(unitsGiven(match(["Operation", "Depth (mm)", "Dia"]))).toBe("mm");
    expect(unitsGiven(match(["Operation", "Depth (mm)", "Dia (in)"]))).toBeUndefined();
    expect(unitsGiven(match(["Operation", "Depth", "Dia"]))).toBeUndefined();
  });

  it("that were asked for go into a column of their own, for rows that hold something", () => {
    const t = table(
      ["Operation", "Inspector", "Depth"],
      [
        ["drill", "A", 5],
        [null, "B", null],
      ],
    );
    expect(planningBlock(t, match(t.headings), "in")).toEqual([
      ["Operation", "Depth", "Units"],
      ["drill", 5, "in"],
      [null, null, null],
    ]);
  });

  it("of a result follow its own heading before the row", () => {
    const t = table(["Operation", "Units", "Table feed (mm/min)"], [["drill", "in", null]]);
    const [change] = changesFor(t, match(t.headings), [DRILL_PLAN]);
    expect(change).toMatchObject({ row: 0, column: 2, format: "0" });
    expect(change!.value).toBeCloseTo(142.24, 9);
    const plain = table(["Operation", "Units", "Table feed"], [["drill", "in", null]]);
    // 142.24 mm/min is 5.6 in/min: 142.24/25.4.
    expect(changesFor(plain, match(plain.headings), [DRILL_PLAN])[0]!.value).toBeCloseTo(5.6, 9);
  });
});

describe("a fill", () => {
  const t = table(
    ["Op", "Operation", "Units", "Depth", "RPM", "Inspector", "Basis", "Changed"],
    [
      [10, "thread mill", "mm", 24, 900, "A. Hale", null, null],
      [30, null, null, null, 77, "A. Hale", null, null],
    ],
  );

  it("writes matched columns only, and leaves rows without inputs alone", () => {
    const changes = changesFor(t, match(t.headings), [THREAD_PLAN, undefined]);
    expect(changes.map((c) => [c.row, c.column])).toEqual([
      [0, 4],
      [0, 6],
      [0, 7],
    ]);
    expect(changes[0]).toMatchObject({ value: 2546.479, format: "0" });
  });

  it("clears a result that the operation has not", () => {
    const wide = table(["Operation", "Units", "Path radius"], [["drill", "mm", 3]]);
    expect(changesFor(wide, match(wide.headings), [DRILL_PLAN])[0]).toMatchObject({ column: 2, value: null });
  });

  it("beside a table has all results, a basis and a marker, and blank lines for blank rows", () => {
    const plain = table(
      ["Op", "Operation", "Units", "Depth"],
      [
        [10, "thread mill", "mm", 24],
        [30, null, null, null],
      ],
    );
    const { cells, formats } = besideBlock(plain, match(plain.headings), [THREAD_PLAN, undefined], 6);
    expect(cells.map((row) => row.length)).toEqual([35, 35, 35].map(() => RESULT_COLUMNS.length + 2));
    expect(formats).toHaveLength(RESULT_COLUMNS.length + 2);
    expect(cells[1]![RESULT_COLUMNS.findIndex((c) => c.key === "verdict")]).toBe("check");
    expect(cells[2]!.every((cell) => cell === null)).toBe(true);
  });

  it("knows an empty row by its inputs, not by its number", () => {
    const m = match(["Op", "Operation", "Note"]);
    expect(isEmptyRow([10, null, "x"], match(["Op", "Operation", "Inspector"]))).toBe(true);
    expect(isEmptyRow([10, "drill", null], m)).toBe(false);
  });
});

describe("the live block", () => {
  it("refers to table and lists, with room for lists to grow", () => {
    const list = { ...table(["Tool"]), reference: "Tools!$A$1:$V$20" };
    expect(liveFormula(table(["Op"]), [null, list, { ...list, reference: "Machines[#All]" }])).toBe(
      "=CUT.PLAN(Plan!$B$4:$E$9,,Tools!$A$1:$V$120,Machines[#All])",
    );
    expect(liveFormula(table(["Op"]), [null, null, null])).toBe("=CUT.PLAN(Plan!$B$4:$E$9)");
    const own = { ...table(["Op"]), reference: "Plan[#All]" };
    expect(liveFormula(own, [list, list, list])).toMatch(/^=CUT\.PLAN\(Plan\[#All\],Tools/);
  });

  it("has number formats for what it spills, in inches where a row is in inches", () => {
    const formats = (...units: CellValue[]) => {
      const t = table(
        ["Operation", "Units"],
        units.map((unit) => ["drill", unit]),
      );
      return liveFormats(t, match(t.headings));
    };
    const at = (key: string) => RESULT_COLUMNS.findIndex((c) => c.key === key);
    expect([formats("mm", null)[at("size")], formats("mm", "in")[at("size")], formats("Zoll")[at("size")]]).toEqual([
      "0.000",
      "0.00000",
      "0.00000",
    ]);
    expect(formats("mm")[at("spindleSpeed")]).toBe("0");
    expect(formats("mm")[at("reasons")]).toBeUndefined();
  });
});

describe("a row written out", () => {
  it("gives each step in the row's units, with its source and the single function beside it", () => {
    const rows = workedRows({ ...THREAD_PLAN, units: "in" });
    expect(rows[1]).toEqual([
      "Path radius",
      2.2934 / 25.4,
      "in",
      expect.any(String),
      expect.stringContaining("Machinery's Handbook"),
      { formula: '=CUT.THREADPATH("M12x1.75-6H",7.5,0.1,"mm")' },
    ]);
  });

  it("turns an answer of many cells sideways, where nothing is in its way", () => {
    expect(workedRows(THREAD_PLAN)[2]![5]).toEqual({
      formula: '=TRANSPOSE(CUT.THREADPASSES("M12x1.75-6H",10.25,0.1,3,"mm"))',
    });
  });
});

describe("the basis of a row", () => {
  const headings = ["Operation", "Units", "Thread", "Depth", "Dia", "Through", "Quantity"];
  const rows: CellValue[][] = [
    ["drill", "mm", null, 24, 6.8, true, 12],
    ["thread mill", "in", "1/2-13 UNC-2B", 0.750001, -0.5, null, 0],
    ["bore", "mm", '=odd, "text"|', 1e-6, 123456.789, false, 1e5],
  ];
  const t = table(headings, rows);
  const m = match(headings);

  it("differs between blank and zero, and holds no decimal sign", () => {
    const zero = basisOf(["drill", "mm", null, 0, 6.8, null, 1], m);
    const blank = basisOf(["drill", "mm", null, null, 6.8, null, 1], m);
    expect(zero).not.toBe(blank);
    expect(zero).not.toMatch(/[.,]/);
    expect(basisOf(["drill", "mm", null, -0, 6.8, null, 1], m)).toBe(zero);
  });

  // A spreadsheet that knows nothing of the add-in works the formulas out.
  const office = spawnSync("soffice", ["--version"]).status === 0;
  it.skipIf(!office)(
    "is confirmed by a plain formula, which marks each input that changes afterwards (independent)",
    async () => {
      const folder = path.resolve(import.meta.dirname, "../.out/basis");
      fs.rmSync(folder, { recursive: true, force: true });
      fs.mkdirSync(folder, { recursive: true });
      const book = new exceljs.Workbook();
      const sheet = book.addWorksheet("Plan");
      // Each row as it was, then once for each of its inputs with that input changed.
      const cases = rows.flatMap((row) => [
        row,
        ...row.map((_, c) => row.map((cell, i) => (i === c ? changed(cell) : cell))),
      ]);
      const block = { ...t, rows: cases };
      cases.forEach((row, r) => {
        const original = rows[Math.floor(r / (headings.length + 1))]!;
        row.forEach((cell, c) => {
          sheet.getCell(t.top + 2 + r, t.left + 1 + c).value = cell;
        });
        sheet.getCell(t.top + 2 + r, 20).value = basisOf(original, m);
        sheet.getCell(t.top + 2 + r, 21).value = {
          formula: changedFormula(block, r, m, { row: t.top + 1 + r, column: 19 }).slice(1),
        };
      });
      const file = path.join(folder, "basis.xlsx");
      await book.xlsx.writeFile(file);
      const profile = `-env:UserInstallation=file://${path.join(folder, "profile")}`;
      const run = spawnSync(
        "soffice",
        [profile, "--headless", "--convert-to", "csv:Text - txt - csv (StarCalc):9,34,76,1", "--outdir", folder, file],
        { timeout: 180_000 },
      );
      expect(run.status).toBe(0);
      const lines = fs.readFileSync(path.join(folder, "basis.csv"), "utf8").split("\n");
      const said = cases.map((_, r) => lines[t.top + 1 + r]!.split("\t")[20]!.replaceAll('"', ""));
      const wanted = cases.map((_, r) => (r % (headings.length + 1) === 0 ? "" : "inputs changed"));
      expect(said).toEqual(wanted);
    },
    90_000,
  );
});

/** Another content than this: a little more of a number, another case of a text, something for nothing. */
function changed(cell: CellValue): CellValue {
  if (cell === null) return 0;
  if (typeof cell === "number") return cell === 0 ? null : cell + 1e-5;
  if (typeof cell === "boolean") return !cell;
  return cell.toUpperCase() === cell ? `${cell} ` : cell.toUpperCase();
}

describe("headings of the block of numbers", () => {
  it("end with the basis and its marker", () => {
    const { cells } = besideBlock(table(["Operation"], []), match(["Operation"]), [], 0);
    expect(cells[0]!.slice(-2)).toEqual([BASIS, "Changed"]);
  });
});
