/** Each formula of the corpus as LibreOffice works it out and as the desk does. */
import { execFileSync, spawnSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import ExcelJS from "exceljs";
import { describe, expect, it } from "vitest";
import { isError } from "../../../taskpane/desk/calc/values.ts";
import type { Value } from "../../../taskpane/desk/model/types.ts";
import { DATA, FORMULAS, NAMES } from "./corpus.ts";
import { small } from "./sheets.ts";

const out = path.resolve(import.meta.dirname, "../../.out/calc");
const OTHER = [
  [3, 4],
  [5, "x"],
];
/** Formulas stand in column J from row 20 on, below and beside what they look at. */
const [FIRST, COLUMN] = [20, "J"];

/** Newer functions carry a prefix in files. */
const PREFIXED =
  /\b(IFS|SWITCH|XOR|MAXIFS|MINIFS|CONCAT|TEXTJOIN|UNICHAR|UNICODE|ISOWEEKNUM|DAYS|IFNA|BITAND|ARABIC)\(/g;

async function workbook(): Promise<string> {
  const book = new ExcelJS.Workbook();
  const data = book.addWorksheet("Data");
  const other = book.addWorksheet("Other sheet");
  for (const row of OTHER) other.addRow(row);
  DATA.forEach((row, r) => {
    row.forEach((value, c) => {
      if (value !== null) data.getCell(r + 1, c + 1).value = value;
    });
  });
  data.addTable({
    name: "Jobs",
    ref: "A1",
    headerRow: true,
    columns: (DATA[0] as string[]).map((name) => ({ name })),
    rows: DATA.slice(1) as unknown[][],
  });
  FORMULAS.forEach((formula, i) => {
    data.getCell(`${COLUMN}${FIRST + i}`).value = {
      formula: formula.replace(PREFIXED, "_xlfn.$1("),
    } as ExcelJS.CellFormulaValue;
    // Answers that would be shown as a day or a share are wanted as the numbers they are.
    if (/^(?:DATE|TIME|EFFECT)\(/.test(formula)) data.getCell(`${COLUMN}${FIRST + i}`).numFmt = "0";
  });
  for (const { name, formula } of NAMES) if (formula.includes("!")) book.definedNames.add(formula, name);
  fs.mkdirSync(out, { recursive: true });
  const file = path.join(out, "corpus.xlsx");
  await book.xlsx.writeFile(file);
  return file;
}

/** Cells of a file's first sheet as LibreOffice works them out, with all their digits. */
function byLibreOffice(file: string): string[][] {
  const csv = file.replace(/\.xlsx$/, ".csv");
  fs.rmSync(csv, { force: true });
  execFileSync(
    "soffice",
    [
      `-env:UserInstallation=file://${path.join(out, "profile")}`,
      "--headless",
      "--convert-to",
      "csv:Text - txt - csv (StarCalc):9,34,76,1,,0,true,false,false",
      "--outdir",
      out,
      file,
    ],
    { stdio: "ignore" },
  );
  return fs
    .readFileSync(csv, "utf8")
    .split("\n")
    .map((line) =>
      line.split("\t").map((cell) => (/^"[\s\S]*"$/.test(cell) ? cell.slice(1, -1).replaceAll('""', '"') : cell)),
    );
}

const asText = (value: Value): string =>
  isError(value)
    ? value.error
    : value === null
      ? ""
      : typeof value === "boolean"
        ? String(value).toUpperCase()
        : String(value);

/** What LibreOffice 7.4 says otherwise, and why the desk keeps to what Excel documents. */
const OTHERWISE: Readonly<Record<string, string>> = {
  // Yes and no are numbers there; Microsoft's pages on & and COUNT have them as values of their own.
  '"a"&1.5&TRUE': "a1.5TRUE",
  "COUNT(A1:H9)": "47",
  // "Text representations of numbers that you type directly into the list of arguments are counted" (SUM).
  'SUM(C2:C9,10,"5",TRUE)': "82.6",
  // It writes three figures of an exponent.
  '1E+20&""': "1E+20",
  // A table's name alone is its data, without headings (ECMA-376, structured references); its [#All] is not read there.
  "ROWS(Jobs)": "8",
  "COUNTA(Jobs[#All])": "71",
};
/** Its one code for an argument that is not allowed, which Excel tells apart. */
const NOT_ALLOWED = "Err:502";

describe("formulas (independent: LibreOffice works out the same file)", () => {
  const there = !spawnSync("soffice", ["--version"]).error;
  it.skipIf(!there)("gives the same answer for every formula of the corpus", async () => {
    const rows = byLibreOffice(await workbook());
    const sheet: (string | number | boolean | null)[][] = DATA.map((row) => [...row]);
    FORMULAS.forEach((formula, i) => {
      sheet[FIRST - 1 + i] = [...Array<null>(9).fill(null), `=${formula}`];
    });
    for (let r = 0; r < sheet.length; r++) sheet[r] ??= [];
    const book = small(
      {
        Data: {
          rows: sheet,
          tables: [
            {
              name: "Jobs",
              area: { top: 0, left: 0, bottom: 8, right: 7 },
              columns: DATA[0] as string[],
              totals: false,
            },
          ],
        },
        "Other sheet": OTHER,
      },
      { typed: false },
    );
    book.names.push(...NAMES.map((name) => ({ ...name })));
    book.rebuild();
    const different: string[] = [];
    FORMULAS.forEach((formula, i) => {
      const theirs = rows[FIRST - 1 + i]?.[9] ?? "";
      const mine = book.at(`${COLUMN}${FIRST + i}`);
      const same =
        typeof mine === "number"
          ? theirs.trim() !== "" && Math.abs(mine - Number(theirs)) <= 1e-9 * Math.max(1, Math.abs(mine))
          : asText(mine) === theirs || (isError(mine) && theirs === NOT_ALLOWED);
      if (!same && OTHERWISE[formula] !== asText(mine))
        different.push(`${formula}: ${asText(mine)}, LibreOffice ${theirs}`);
    });
    expect(different).toEqual([]);
  });
});
