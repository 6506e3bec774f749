import ExcelJS from "exceljs";
import { describe, expect, it } from "vitest";
import { tableCsv } from "../../../taskpane/desk/package/csv.ts";
import { newPackage } from "../../../taskpane/desk/package/new.ts";
import { openPackage } from "../../../taskpane/desk/package/open.ts";
import { savePackage } from "../../../taskpane/desk/package/save.ts";
import { cellOf, csvRows, officeRows, partText, pythonCells, unzipped } from "./packages.ts";

const plan = () =>
  newPackage(
    [
      {
        name: "Plan",
        rows: [
          ["Op", "Dia", "Verdict", "Thread"],
          ["slot", 10, "ok", "1/4-20"],
          ["drill", 6.8, "stop", null],
          [
            null,
            { value: 16.8, formula: "SUM(Plan[Dia])", numberFormat: "0.00" },
            null,
            { value: 3819.7, formula: 'CUT.RPM(120,10,"mm")' },
          ],
        ],
        tables: [{ name: "Plan", area: { top: 0, left: 0, bottom: 2, right: 3 } }],
        frozen: { rows: 1, columns: 2 },
        widths: new Map([[0, 20]]),
        formats: new Map([
          [1, "0.000"],
          [3, "@"],
        ]),
        formatsTo: 9,
        choices: [
          { areas: [{ top: 1, left: 0, bottom: 99, right: 0 }], words: ["slot", "drill"] },
          { areas: [{ top: 1, left: 3, bottom: 99, right: 3 }], source: "Threads!$A$1:$A$2" },
        ],
        verdicts: { areas: [{ top: 1, left: 2, bottom: 99, right: 2 }], column: 2 },
        page: { headings: 1 },
      },
      {
        name: "Threads",
        rows: [
          ["M8"],
          ["1/4-20"],
          [
            {
              value: 1,
              formula: "SORT(A1:A2)",
              array: { area: { top: 2, left: 0, bottom: 3, right: 0 }, dynamic: true },
            },
          ],
          [2],
        ],
      },
    ],
    { names: [{ name: "dias", formula: "Plan!$B$2:$B$3" }] },
  );

describe("new workbooks", () => {
  const bytes = plan();

  it("keep nothing unseen: their verdicts are coloured by the desk as by the file; other rules are named", () => {
    const { book, kept } = openPackage(bytes);
    expect(book.sheets.map((sheet) => sheet.kept)).toEqual([[], []]);
    const part = partText(kept.bytes, "xl/worksheets/sheet1.xml");
    expect(part).toContain('<cfRule type="expression"');
  });
  it("are read by two other programs with what was put in (independent)", async () => {
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(bytes as unknown as ExcelJS.Buffer);
    const sheet = book.getWorksheet("Plan")!;
    expect(sheet.getCell("B2").value).toBe(10);
    expect(sheet.getCell("B2").numFmt).toBe("0.000");
    expect(sheet.getCell("B4").formula).toBe("SUM(Plan[Dia])");
    expect(sheet.getCell("D2").value).toBe("1/4-20");
    expect(sheet.getCell("D9").numFmt).toBe("@");
    expect(sheet.getColumn(1).width).toBe(20);
    expect(sheet.views[0]).toMatchObject({ state: "frozen", xSplit: 2, ySplit: 1 });
    expect(sheet.pageSetup).toMatchObject({
      orientation: "landscape",
      fitToPage: true,
      fitToHeight: 0,
      printTitlesRow: "1:1",
    });
    expect(sheet.getTable("Plan")).toBeDefined();
    expect(
      (sheet as any).dataValidations.model.A2 ?? Object.values((sheet as any).dataValidations.model)[0],
    ).toMatchObject({ type: "list", formulae: ['"slot,drill"'] });
    expect(book.definedNames.getRanges("dias").ranges).toEqual(["Plan!$B$2:$B$3"]);
    const python = pythonCells(bytes);
    if (python) expect(python.Plan).toMatchObject({ A2: "slot", B3: "6.8", D4: '=_xldudf_CUT_RPM(120,10,"mm")' });
    const office = officeRows([bytes]);
    if (office)
      expect(office[0]!.slice(0, 3)).toEqual([
        ["Op", "Dia", "Verdict", "Thread"],
        ["slot", "10.000", "ok", "1/4-20"],
        ["drill", "6.800", "stop", ""],
      ]);
  });

  it("write growing formulas with all their parts, and open and save again (identity)", () => {
    const parts = unzipped(bytes);
    expect(parts["xl/worksheets/sheet2.xml"]).toContain(
      '<c r="A3" cm="1"><f t="array" ref="A3:A4">_xlfn._xlws.SORT(A1:A2)</f>',
    );
    expect(parts["xl/metadata.xml"]).toContain('fDynamic="1"');
    const { book, kept } = openPackage(bytes);
    expect(cellOf(book, "Threads", "A3")?.array?.dynamic).toBe(true);
    const saved = savePackage(kept, [{ kind: "insert-rows", sheet: "Plan", row: 2, count: 1 }]);
    expect(openPackage(saved).book.sheets[0]!.tables[0]!.area.bottom).toBe(3);
    expect(partText(saved, "xl/worksheets/sheet1.xml")).toContain('sqref="C2:C101"');
  });

  it("hold nothing of the person, the machine or the hour: the same twice", () => {
    expect(plan()).toEqual(bytes);
    expect(Object.keys(unzipped(bytes)).some((name) => name.startsWith("docProps"))).toBe(false);
  });

  it("put a number format in where styles had none, before the fonts (regression)", () => {
    const text = partText(bytes, "xl/styles.xml");
    expect(text).toMatch(
      /<styleSheet[^>]*><numFmts count="1"><numFmt numFmtId="164" formatCode="0.000"\/><\/numFmts><fonts/,
    );
  });

  it("refuse names and headings that other programs would call damage", () => {
    const sheet = (name: string, heading: string) => () =>
      newPackage([
        { name: "S", rows: [["a", heading]], tables: [{ name, area: { top: 0, left: 0, bottom: 1, right: 1 } }] },
      ]);
    expect(sheet("A1", "b")).toThrow("looks like a cell");
    expect(sheet("a b", "b")).toThrow("cannot be the name");
    expect(sheet("T", "A")).toThrow("must differ");
    expect(sheet("T", "")).toThrow("no heading");
    expect(sheet("T", "b")).not.toThrow();
  });
});

describe("a table as CSV (published, RFC 4180)", () => {
  const text = (bytes: Uint8Array) => new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);
  it("quotes commas, quotes and line breaks, ends lines with CR LF, starts with a byte order mark", () => {
    const { bytes, guarded } = tableCsv([
      ["Op", 'say "so"', "a,b"],
      [1.5, null, "two\nlines"],
      [true, { error: "#N/A" }, "\u00e9"],
    ]);
    expect(text(bytes)).toBe('\ufeffOp,"say ""so""","a,b"\r\n1.5,,"two\nlines"\r\nTRUE,#N/A,\u00e9\r\n');
    expect(guarded).toBe(0);
    expect(csvRows(text(bytes).slice(1))[1]).toEqual(["1.5", "", "two\nlines"]);
  });

  it("guards texts that a spreadsheet program would run, and says how many; numbers are left alone", () => {
    const { bytes, guarded } = tableCsv([["=1+1", "@SUM(A1)", "+49 30", "-x", " =2", "-1.5", "+3", "-", -2]]);
    expect(text(bytes)).toBe("\ufeff'=1+1,'@SUM(A1),'+49 30,'-x,\"' =2\",-1.5,+3,'-,-2\r\n".replace('"\' =2"', "' =2"));
    expect(guarded).toBe(6);
  });

  it("can part fields with a semicolon", () => {
    expect(text(tableCsv([["a;b", "c,d"]], ";").bytes)).toBe('\ufeff"a;b";c,d\r\n');
  });
});
