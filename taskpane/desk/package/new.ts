/** New workbooks, made from a template of ours: sheets, tables, number formats, choices, growing formulas, print set-up. */

import { addressOf, areasText } from "../model/address.ts";
import { type Area, type Choices, type Edit, FileError, type Value } from "../model/types.ts";
import { toFile } from "./function-names.ts";
import { LIMITS } from "./limits.ts";
import { MAIN } from "./namespaces.ts";
import { sheetPrefix } from "./references.ts";
import type { Look } from "./replay.ts";
import { savePackage } from "./save.ts";
import { sheetNameFault } from "./sheet-names.ts";
import { NEW_STYLES, newSheetText, type SheetSkeleton, VERDICTS, XML_HEAD } from "./skeleton.ts";
import { newTable, tableNameFault } from "./table-write.ts";
import { escapeAttribute, escapeText } from "./text.ts";
import { type Item, readZip, writeZip } from "./zip.ts";

export interface NewCell {
  readonly value: Value;
  readonly formula?: string;
  readonly array?: { readonly area: Area; readonly dynamic: boolean };
  readonly numberFormat?: string;
  readonly look?: Look;
}

export interface NewSheet {
  readonly name: string;
  /** Rows from A1; a plain value or a cell. */
  readonly rows: readonly (readonly (Value | NewCell)[])[];
  readonly tables?: readonly { readonly name: string; readonly area: Area; readonly totals?: boolean }[];
  readonly frozen?: { readonly rows: number; readonly columns: number };
  /** Widths in characters by column. */
  readonly widths?: ReadonlyMap<number, number>;
  readonly hiddenColumns?: readonly number[];
  /** Number formats of columns, for rows from `formatsFrom` (1 unless given) to the last row given or `formatsTo`. */
  readonly formats?: ReadonlyMap<number, string>;
  readonly formatsFrom?: number;
  readonly formatsTo?: number;
  readonly choices?: readonly Choices[];
  /** Areas in which ok, check and stop are coloured by the word in one column (from 0). */
  readonly verdicts?: { readonly areas: readonly Area[]; readonly column: number };
  /** Printed landscape, as wide as the paper, with this many heading rows on each page. */
  readonly page?: { readonly headings: number };
  readonly hidden?: boolean;
}

export interface NewBookOptions {
  readonly names?: readonly { readonly name: string; readonly formula: string }[];
  readonly active?: number;
}

const MAIN_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.";
const R = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const P = "http://schemas.openxmlformats.org/package/2006";

const isCell = (cell: Value | NewCell): cell is NewCell => cell !== null && typeof cell === "object" && "value" in cell;

/** A workbook's bytes. Nothing of the person or the machine is in it. */
export function newPackage(sheets: readonly NewSheet[], { names = [], active = 0 }: NewBookOptions = {}): Uint8Array {
  if (sheets.length === 0) throw new FileError("unsupported", "A workbook needs a sheet.");
  const parts = new Map<string, string>();
  const types: [string, string][] = [
    ["xl/workbook.xml", `${MAIN_TYPE}sheet.main+xml`],
    ["xl/styles.xml", `${MAIN_TYPE}styles+xml`],
  ];
  const taken: string[] = [];
  const edits: Edit[] = [];
  let tableId = 0;
  sheets.forEach((sheet, i) => {
    const fault = sheetNameFault(sheet.name, taken);
    if (fault) throw new FileError("unsupported", fault);
    taken.push(sheet.name);
    const part = `xl/worksheets/sheet${i + 1}.xml`;
    types.push([part, `${MAIN_TYPE}worksheet+xml`]);
    const tableIds: string[] = [];
    let relationships = "";
    for (const { name, area, totals } of sheet.tables ?? []) {
      const wrong = tableNameFault(name);
      if (wrong) throw new FileError("unsupported", wrong);
      const headings: string[] = [];
      for (let column = area.left; column <= area.right; column++) {
        const cell = sheet.rows[area.top]?.[column] ?? null;
        const value = isCell(cell) ? cell.value : cell;
        headings.push(value === null || typeof value === "object" ? "" : String(value));
      }
      const id = `rId${tableIds.length + 1}`;
      tableIds.push(id);
      const file = `xl/tables/table${++tableId}.xml`;
      parts.set(file, newTable(tableId, name, area, headings, totals));
      types.push([file, `${MAIN_TYPE}table+xml`]);
      relationships += `<Relationship Id="${id}" Type="${R}/table" Target="../tables/table${tableId}.xml"/>`;
    }
    const skeleton: SheetSkeleton = {
      tableIds,
      selected: i === active,
      rules: verdictRules(sheet),
      page: sheet.page !== undefined,
      ...(sheet.frozen ? { frozen: sheet.frozen } : {}),
    };
    parts.set(part, newSheetText(skeleton));
    if (relationships !== "") parts.set(`xl/worksheets/_rels/sheet${i + 1}.xml.rels`, relationshipsText(relationships));
    for (const edit of editsOf(sheet)) edits.push(edit);
  });
  parts.set("xl/styles.xml", NEW_STYLES);
  parts.set("xl/workbook.xml", workbookText(sheets, names, active));
  const sheetRelationships = sheets.map(
    (_, i) => `<Relationship Id="rId${i + 1}" Type="${R}/worksheet" Target="worksheets/sheet${i + 1}.xml"/>`,
  );
  parts.set(
    "xl/_rels/workbook.xml.rels",
    relationshipsText(
      `${sheetRelationships.join("")}<Relationship Id="rIdStyles" Type="${R}/styles" Target="styles.xml"/>`,
    ),
  );
  parts.set(
    "_rels/.rels",
    relationshipsText(`<Relationship Id="rId1" Type="${R}/officeDocument" Target="xl/workbook.xml"/>`),
  );
  const overrides = types.map(([part, type]) => `<Override PartName="/${part}" ContentType="${type}"/>`).join("");
  const contentTypes =
    `${XML_HEAD}<Types xmlns="${P}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
    `<Default Extension="xml" ContentType="application/xml"/>${overrides}</Types>`;
  const encoder = new TextEncoder();
  const items: Item[] = [["[Content_Types].xml", contentTypes] as const, ...parts].map(([name, text]) => ({
    name,
    content: encoder.encode(text),
  }));
  const bytes = writeZip(new Uint8Array(0), items);
  return savePackage({ bytes, entries: readZip(bytes, LIMITS) }, edits);
}

const relationshipsText = (inner: string): string =>
  `${XML_HEAD}<Relationships xmlns="${P}/relationships">${inner}</Relationships>`;

function workbookText(sheets: readonly NewSheet[], names: NewBookOptions["names"], active: number): string {
  const list = sheets
    .map(
      ({ name, hidden }, i) =>
        `<sheet name="${escapeAttribute(name)}" sheetId="${i + 1}"${hidden ? ' state="hidden"' : ""} r:id="rId${i + 1}"/>`,
    )
    .join("");
  const titles = sheets.flatMap(({ name, page }, i) =>
    page && page.headings > 0
      ? [
          `<definedName name="_xlnm.Print_Titles" localSheetId="${i}">${escapeText(`${sheetPrefix(name)}$1:$${page.headings}`)}</definedName>`,
        ]
      : [],
  );
  const defined = (names ?? []).map(
    ({ name, formula }) => `<definedName name="${escapeAttribute(name)}">${escapeText(toFile(formula))}</definedName>`,
  );
  const all = [...titles, ...defined].join("");
  return (
    `${XML_HEAD}<workbook xmlns="${MAIN}" xmlns:r="${R}"><workbookPr/><bookViews><workbookView activeTab="${active}"/></bookViews>` +
    `<sheets>${list}</sheets>${all === "" ? "" : `<definedNames>${all}</definedNames>`}</workbook>`
  );
}

function verdictRules({ verdicts }: NewSheet): string {
  if (!verdicts) return "";
  const first = verdicts.areas[0]!;
  const cell = `$${addressOf(first.top, verdicts.column)}`;
  const rules = VERDICTS.map(
    (word, i) =>
      `<cfRule type="expression" dxfId="${i}" priority="${i + 1}"><formula>${cell}="${word}"</formula></cfRule>`,
  );
  return `<conditionalFormatting sqref="${areasText(verdicts.areas)}">${rules.join("")}</conditionalFormatting>`;
}

function editsOf(sheet: NewSheet): Edit[] {
  const edits: Edit[] = [];
  const { name, formats = new Map<number, string>() } = sheet;
  const from = sheet.formatsFrom ?? 1;
  const to = sheet.formatsTo ?? sheet.rows.length - 1;
  sheet.rows.forEach((line, row) => {
    line.forEach((given, column) => {
      const cell: NewCell = isCell(given) ? given : { value: given };
      const format = cell.numberFormat ?? (row >= from && row <= to ? formats.get(column) : undefined);
      if (cell.value === null && cell.formula === undefined && cell.look === undefined && format === undefined) return;
      edits.push({
        kind: "cell",
        sheet: name,
        row,
        column,
        ...cell,
        ...(format === undefined ? {} : { numberFormat: format }),
      });
    });
  });
  for (const [column, numberFormat] of formats)
    for (let row = from; row <= to; row++)
      if (column >= (sheet.rows[row]?.length ?? 0))
        edits.push({ kind: "cell", sheet: name, row, column, value: null, numberFormat });
  for (const [column, width] of sheet.widths ?? []) edits.push({ kind: "width", sheet: name, column, width });
  if (sheet.hiddenColumns?.length)
    edits.push({ kind: "hide-columns", sheet: name, columns: sheet.hiddenColumns, hidden: true });
  for (const choices of sheet.choices ?? []) edits.push({ kind: "choices", sheet: name, choices });
  return edits;
}
