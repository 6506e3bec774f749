import ExcelJS from "exceljs";
import { describe, expect, it } from "vitest";
import type { Edit } from "../../../taskpane/desk/model/types.ts";
import { openPackage } from "../../../taskpane/desk/package/open.ts";
import { savePackage } from "../../../taskpane/desk/package/save.ts";
import { handmade } from "./handmade.ts";
import { at, cellOf, file, officeRows, partText, pythonCells, unzipped } from "./packages.ts";

const cell = (sheet: string, address: string, value: string | number | null, formula?: string): Edit => ({
  kind: "cell",
  sheet,
  ...at(address),
  value,
  ...(formula === undefined ? {} : { formula }),
});

interface Case {
  readonly name: string;
  readonly bytes: () => Uint8Array;
  readonly sheet: string;
  /** One cell changed, and the parts that may change with it. */
  readonly change: Edit;
  readonly touched: readonly string[];
  /** A row inserted at this row, and the parts that may change with it. */
  readonly insert: number;
  readonly moved: readonly string[];
}

const CASES: readonly Case[] = [
  {
    name: "by openpyxl: table, charts, picture, notes, rules, links, print set-up, chart sheet, array formula",
    bytes: () => file("openpyxl.xlsx"),
    sheet: "Plan & shop",
    change: cell("Plan & shop", "C3", 7.25),
    // Its calculation set-up asks for a full calculation already.
    touched: ["xl/worksheets/sheet1.xml"],
    insert: 5,
    moved: [
      "xl/comments/comment1.xml",
      "xl/drawings/commentsDrawing1.vml",
      "xl/drawings/drawing1.xml",
      "xl/workbook.xml",
      "xl/worksheets/sheet1.xml",
    ],
  },
  {
    name: "by exceljs: table with totals, shared formulas, rich text, picture, note, rules, protection, 1904 dates",
    bytes: () => file("exceljs.xlsx"),
    sheet: "Jobs",
    change: cell("Jobs", "B3", 25),
    touched: ["xl/workbook.xml", "xl/worksheets/sheet1.xml"],
    insert: 3,
    moved: ["xl/drawings/drawing1.xml", "xl/tables/table1.xml", "xl/workbook.xml", "xl/worksheets/sheet1.xml"],
  },
  {
    name: "by LibreOffice: table, charts, picture, notes, rules, links, print set-up",
    bytes: () => file("libreoffice.xlsx"),
    sheet: "Plan & shop",
    change: cell("Plan & shop", "C3", 7.25),
    touched: ["xl/workbook.xml", "xl/worksheets/sheet1.xml"],
    insert: 5,
    moved: [
      "xl/comments1.xml",
      "xl/drawings/drawing1.xml",
      "xl/drawings/vmlDrawing1.vml",
      "xl/workbook.xml",
      "xl/worksheets/sheet1.xml",
    ],
  },
  {
    name: "by LibreOffice: pivot table, filter",
    bytes: () => file("pivot.xlsx"),
    sheet: "Cuts",
    change: cell("Cuts", "C3", 4.5),
    touched: ["xl/workbook.xml", "xl/worksheets/sheet1.xml"],
    insert: 2,
    moved: ["xl/pivotCache/pivotCacheDefinition1.xml", "xl/workbook.xml", "xl/worksheets/sheet1.xml"],
  },
  {
    name: "by hand: macros, comments with replies, links, control, growing formula, data of other programs",
    bytes: handmade,
    sheet: "Plan",
    change: cell("Plan", "B3", 7.25),
    touched: ["xl/workbook.xml", "xl/worksheets/sheet1.xml"],
    insert: 2,
    moved: [
      "[Content_Types].xml",
      "xl/_rels/workbook.xml.rels",
      "xl/calcChain.xml",
      "xl/comments1.xml",
      "xl/ctrlProps/ctrlProp1.xml",
      "xl/drawings/vmlDrawing1.vml",
      "xl/threadedComments/threadedComment1.xml",
      "xl/workbook.xml",
      "xl/worksheets/sheet1.xml",
      "xl/worksheets/sheet2.xml",
    ],
  },
];

async function load(bytes: Uint8Array): Promise<ExcelJS.Workbook | undefined> {
  const book = new ExcelJS.Workbook();
  try {
    await book.xlsx.load(bytes as unknown as ExcelJS.Buffer);
    return book;
  } catch {
    return undefined;
  }
}

/** Parts that are not the same bytes any more, by a general zip library. */
function changedParts(before: Uint8Array, after: Uint8Array): string[] {
  const [a, b] = [unzipped(before), unzipped(after)];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].filter((name) => a[name] !== b[name]).sort();
}

describe.each(CASES)("a workbook $name", ({ bytes: make, sheet, change, touched, insert, moved }) => {
  const bytes = make();
  it("comes back untouched when nothing was edited (identity)", () => {
    expect(savePackage(openPackage(bytes).kept, [])).toEqual(bytes);
  });

  it("keeps every part byte for byte but those that hold the changed cell (identity)", () => {
    const { kept } = openPackage(bytes);
    const saved = savePackage(kept, [change]);
    expect(changedParts(bytes, saved)).toEqual(touched);
    const again = openPackage(saved);
    // Parts that stay are copied in their packed form.
    for (const entry of kept.entries) {
      if (touched.includes(entry.name)) continue;
      const now = again.kept.entries.find((e) => e.name === entry.name)!;
      const packed = (b: Uint8Array, e: typeof entry) =>
        Buffer.from(b.subarray(e.data, e.data + e.packed)).toString("base64");
      expect([entry.name, packed(saved, now)]).toEqual([entry.name, packed(bytes, entry)]);
    }
    // In the sheet, one span of text.
    const [a, b] = ["xl/worksheets/sheet1.xml"].flatMap((name) => [partText(bytes, name), partText(saved, name)]) as [
      string,
      string,
    ];
    let head = 0;
    while (a[head] === b[head]) head++;
    let tail = 0;
    while (a[a.length - 1 - tail] === b[b.length - 1 - tail]) tail++;
    expect(a.length - head - tail).toBeLessThan(60);
  });

  it("follows an inserted row in the parts that hang on it and in no other (identity)", () => {
    const saved = savePackage(openPackage(bytes).kept, [{ kind: "insert-rows", sheet, row: insert, count: 1 }]);
    expect(changedParts(bytes, saved)).toEqual(moved);
  });

  it("is read alike by two other programs after a change and a new row (independent)", async () => {
    const edits: Edit[] = [
      change,
      { kind: "insert-rows", sheet, row: insert, count: 1 },
      { kind: "cell", sheet, row: insert, column: 0, value: 'new <row> & "quotes"' },
    ];
    const saved = savePackage(openPackage(bytes).kept, edits);
    const { row, column, value } = change as Extract<Edit, { kind: "cell" }>;
    const changedRow = row >= insert ? row + 1 : row;
    const python = pythonCells(saved);
    const before = pythonCells(bytes);
    if (python && before) {
      const shift = (address: string) =>
        address.replace(/\d+$/, (n) => String(Number(n) > insert ? Number(n) + 1 : Number(n)));
      const changedAt = `${String.fromCharCode(65 + column)}${changedRow + 1}`;
      const skip = (text: unknown) => String(text).startsWith("=");
      const expected: Record<string, unknown> = {
        [`A${insert + 1}`]: 'new <row> & "quotes"',
        [changedAt]: String(value),
      };
      for (const [address, was] of Object.entries(before[sheet]!)) {
        if (!skip(was)) expected[shift(address)] ??= was;
      }
      const found = Object.fromEntries(Object.entries(python[sheet]!).filter(([, was]) => !skip(was)));
      expect(found).toEqual(expected);
      for (const [other, cells] of Object.entries(before)) {
        if (other !== sheet) expect(Object.keys(python[other]!)).toEqual(Object.keys(cells));
      }
    }
    const readable = await load(bytes);
    // exceljs 4.4 cannot read every file of the other writers; what it reads it must still read.
    if (!readable) return;
    const read = (await load(saved))!.getWorksheet(sheet)!;
    expect(read.getCell(changedRow + 1, column + 1).value).toBe(value);
    expect(read.getCell(insert + 1, 1).value).toBe('new <row> & "quotes"');
  });

  it("opens in LibreOffice with the same values (independent)", () => {
    const saved = savePackage(openPackage(bytes).kept, [change]);
    const both = officeRows([bytes, saved]);
    if (!both) return;
    const [was, now] = both as [string[][], string[][]];
    const { row, column, value } = change as Extract<Edit, { kind: "cell" }>;
    expect(now.length).toBe(was.length);
    expect(Number.parseFloat(now[row]![column]!)).toBe(value);
    // Everything stands where it stood; numbers, in results of formulas as well, may follow from the changed one.
    const texts = (rows: string[][]) => rows.map((line) => line.map((field) => field.replace(/-?\d[\d.,]*/g, "n")));
    expect(texts(now)).toEqual(texts(was));
    expect(cellOf(openPackage(saved).book, sheet, `${String.fromCharCode(65 + column)}${row + 1}`)?.value).toBe(value);
  });
});
