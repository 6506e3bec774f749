/** Packages for the tests: made by hand, taken apart by a general zip library. */
import { spawnSync } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { strToU8, unzipSync, zipSync } from "fflate";
import type { Book, Cell, Sheet } from "../../../taskpane/desk/model/types.ts";

export const FILES = path.join(import.meta.dirname, "files");
export const file = (name: string): Uint8Array => new Uint8Array(fs.readFileSync(path.join(FILES, name)));

export type PartsText = Record<string, string | Uint8Array>;
export const zipped = (parts: PartsText): Uint8Array =>
  zipSync(
    Object.fromEntries(
      Object.entries(parts).map(([name, part]) => [name, typeof part === "string" ? strToU8(part) : part]),
    ),
    { mtime: new Date(2026, 0, 2) },
  );
export const unzipped = (bytes: Uint8Array): Record<string, string> =>
  Object.fromEntries(
    Object.entries(unzipSync(bytes)).map(([name, part]) => [name, new TextDecoder("latin1").decode(part)]),
  );
/** A part's text as UTF-8. */
export const partText = (bytes: Uint8Array, name: string): string => new TextDecoder().decode(unzipSync(bytes)[name]!);

export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const REL = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PKG = "http://schemas.openxmlformats.org/package/2006";
const TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml";

export const relationships = (
  list: readonly (readonly [id: string, type: string, target: string, external?: true])[],
): string =>
  `<Relationships xmlns="${PKG}/relationships">${list
    .map(
      ([id, type, target, external]) =>
        `<Relationship Id="${id}" Type="${type.includes(":") ? type : `${REL}/${type}`}" Target="${target}"${external ? ' TargetMode="External"' : ""}/>`,
    )
    .join("")}</Relationships>`;

export const types = (overrides: Record<string, string>, main = `${TYPE}.sheet.main+xml`): string =>
  `<Types xmlns="${PKG}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Default Extension="bin" ContentType="application/octet-stream"/><Default Extension="vml" ContentType="application/vnd.openxmlformats-officedocument.vmlDrawing"/><Override PartName="/xl/workbook.xml" ContentType="${main}"/>${Object.entries(
    overrides,
  )
    .map(
      ([part, type]) =>
        `<Override PartName="/${part}" ContentType="${type.includes("/") ? type : `${TYPE}.${type}+xml`}"/>`,
    )
    .join("")}</Types>`;

export interface Least {
  /** Content of `<sheetData>`. */
  readonly data?: string;
  /** Sections after it. */
  readonly after?: string;
  /** Sections before it. */
  readonly before?: string;
  readonly workbook?: string;
  readonly strings?: string;
  readonly styles?: string;
  readonly sheetXml?: string;
}

/** The least that a workbook is made of: one sheet "S". */
export function leastParts({
  data = "",
  after = "",
  before = "",
  workbook,
  strings,
  styles,
  sheetXml,
}: Least = {}): PartsText {
  const overrides: Record<string, string> = { "xl/worksheets/sheet1.xml": "worksheet" };
  const list: [string, string, string][] = [["rId1", "worksheet", "worksheets/sheet1.xml"]];
  const parts: PartsText = {};
  if (strings !== undefined) {
    overrides["xl/sharedStrings.xml"] = "sharedStrings";
    list.push(["rId2", "sharedStrings", "sharedStrings.xml"]);
    parts["xl/sharedStrings.xml"] = strings;
  }
  if (styles !== undefined) {
    overrides["xl/styles.xml"] = "styles";
    list.push(["rId3", "styles", "styles.xml"]);
    parts["xl/styles.xml"] = styles;
  }
  return {
    "[Content_Types].xml": types(overrides),
    "_rels/.rels": relationships([["rId1", "officeDocument", "xl/workbook.xml"]]),
    "xl/workbook.xml":
      workbook ??
      `<workbook xmlns="${MAIN}" xmlns:r="${REL}"><sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": relationships(list),
    "xl/worksheets/sheet1.xml":
      sheetXml ??
      `<worksheet xmlns="${MAIN}" xmlns:r="${REL}">${before}<sheetData>${data}</sheetData>${after}</worksheet>`,
    ...parts,
  };
}
export const least = (what?: Least): Uint8Array => zipped(leastParts(what));

export const sheetOf = (book: Book, name: string): Sheet => book.sheets.find((sheet) => sheet.name === name)!;
export const cellOf = (book: Book, sheet: string, address: string): Cell | undefined => {
  const m = /^([A-Z]+)(\d+)$/.exec(address)!;
  const column = [...m[1]!].reduce((n, ch) => n * 26 + ch.charCodeAt(0) - 64, 0) - 1;
  return sheetOf(book, sheet)
    .cells.get(Number(m[2]) - 1)
    ?.get(column);
};
export const at = (address: string): { row: number; column: number } => {
  const m = /^([A-Z]+)(\d+)$/.exec(address)!;
  return { row: Number(m[2]) - 1, column: [...m[1]!].reduce((n, ch) => n * 26 + ch.charCodeAt(0) - 64, 0) - 1 };
};

/** The first sheets of files as LibreOffice shows them, rows of cells; `undefined` where LibreOffice is not installed. */
export function officeRows(all: readonly Uint8Array[]): string[][][] | undefined {
  if (spawnSync("soffice", ["--version"]).status !== 0) return undefined;
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "package-"));
  try {
    const names = all.map((bytes, i) => {
      fs.writeFileSync(path.join(folder, `book${i}.xlsx`), bytes);
      return path.join(folder, `book${i}.xlsx`);
    });
    // Comma, every field in quotes, UTF-8, from the first line, values as stored.
    const filter = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,true,false";
    const profile = `-env:UserInstallation=file://${folder}/profile`;
    spawnSync("soffice", ["--headless", profile, "--convert-to", filter, "--outdir", folder, ...names]);
    return all.map((_, i) => csvRows(fs.readFileSync(path.join(folder, `book${i}.csv`), "utf8")));
  } finally {
    fs.rmSync(folder, { recursive: true, force: true });
  }
}

/** A workbook opened and saved again by LibreOffice; `undefined` where it is not installed. */
export function officeRoundTrip(bytes: Uint8Array): Uint8Array | undefined {
  if (spawnSync("soffice", ["--version"]).status !== 0) return undefined;
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "package-"));
  try {
    const name = path.join(folder, "book.xlsx");
    fs.writeFileSync(name, bytes);
    const profile = `-env:UserInstallation=file://${folder}/profile`;
    const out = path.join(folder, "out");
    spawnSync("soffice", ["--headless", profile, "--convert-to", "xlsx", "--outdir", out, name]);
    return new Uint8Array(fs.readFileSync(path.join(out, "book.xlsx")));
  } finally {
    fs.rmSync(folder, { recursive: true, force: true });
  }
}

/** Rows of a CSV text (RFC 4180), written for the tests. */
export function csvRows(text: string): string[][] {
  const rows: string[][] = [[]];
  const field = /("(?:[^"]|"")*"|[^,\r\n]*)(,|\r?\n|$)/y;
  while (field.lastIndex < text.length) {
    const [, raw, end] = field.exec(text)!;
    rows.at(-1)!.push(raw!.startsWith('"') ? raw!.slice(1, -1).replaceAll('""', '"') : raw!);
    if (end !== "," && field.lastIndex < text.length) rows.push([]);
  }
  return rows;
}

/** Values and formulas of a workbook as openpyxl reads them; `undefined` where it is not installed. */
export function pythonCells(bytes: Uint8Array): Record<string, Record<string, unknown>> | undefined {
  const python = ["/usr/bin/python3", "python3"].find((p) => spawnSync(p, ["-c", "import openpyxl"]).status === 0);
  if (!python) return undefined;
  const script = [
    "import sys, io, json, openpyxl",
    "b = openpyxl.load_workbook(io.BytesIO(sys.stdin.buffer.read()))",
    "print(json.dumps({s.title: {c.coordinate: str(c.value) for r in s.iter_rows() for c in r if c.value is not None} for s in b.worksheets}))",
  ].join("\n");
  const done = spawnSync(python, ["-W", "ignore", "-c", script], { input: Buffer.from(bytes), maxBuffer: 1e9 });
  if (done.status !== 0) throw new Error(String(done.stderr));
  return JSON.parse(String(done.stdout));
}
