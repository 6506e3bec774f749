/**
 * .xlsx files in and out. What a cell holds, its formula, number format and look, widths, heights, frozen panes,
 * merged cells, hidden rows, columns and sheets, lists of allowed words, conditional formats by formula and defined
 * names go both ways; whatever else a file has is named to the user, never dropped in silence.
 */
import type {
  IBorderStyleData,
  ICellData,
  IRange,
  IStyleData,
  IWorkbookData,
  IWorksheetData,
  Nullable,
} from "@univerjs/core";
import type ExcelJS from "exceljs";
import excel from "exceljs/dist/exceljs.bare.min.js";
import { HostError } from "../host/host.ts";
import { columnName, reference } from "../host/reference.ts";
import { textType } from "./book.ts";
import { type FileTable, fromFile, toFile, usesOurs, withoutTables } from "./formula-text.ts";
import type { Taken } from "./take.ts";

const ExcelFile = excel as typeof ExcelJS;
const [NUMBER, BOOLEAN, FORCED_TEXT] = [2, 3, 4];
const VALIDATION = "SHEET_DATA_VALIDATION_PLUGIN";
const CONDITIONAL = "SHEET_CONDITIONAL_FORMATTING_PLUGIN";
const NAMES = "SHEET_DEFINED_NAME_PLUGIN";
/** A sheet to be printed: as wide as the paper, as long as it is, its headings on every page. */
const PAGE = { fitToPage: true, fitToWidth: 1, fitToHeight: 0, printTitlesRow: "1:1" } as const;
const isPage = (setup: Partial<ExcelJS.PageSetup> | undefined): boolean =>
  setup?.fitToPage === true && setup.fitToWidth === 1 && setup.fitToHeight === 0 && !!setup.printTitlesRow;
/** The engine's mark for a name that holds in the whole workbook. */
const ALL_SHEETS = "AllDefaultWorkbook";
interface DefinedName {
  readonly id: string;
  readonly name: string;
  readonly formulaOrRefString: string;
  readonly localSheetId?: string;
}

/** How the note on such a block begins. */
const NOTE = "Values as saved.";
/** Ranges of live blocks whose values were saved as values, so that the desk finds them again. */
const BLOCK_NAME = "Tablefeed.Block";
const ERROR = /^#(?:DIV\/0!|N\/A|NAME\?|NULL!|NUM!|REF!|VALUE!)$/;
const POINT = 4 / 3;

const a1 = ({ startRow, startColumn, endRow, endColumn }: IRange): string => {
  const from = `${columnName(startColumn)}${startRow + 1}`;
  const to = `${columnName(endColumn)}${endRow + 1}`;
  return from === to ? from : `${from}:${to}`;
};

function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((n, ch) => n * 26 + ch.charCodeAt(0) - 64, 0) - 1;
}

function parseRange(text: string): IRange | undefined {
  const m = /^\$?([A-Z]{1,3})\$?(\d+)(?::\$?([A-Z]{1,3})\$?(\d+))?$/i.exec(text.trim());
  if (!m) return undefined;
  const startColumn = columnNumber(m[1]!);
  const startRow = Number(m[2]) - 1;
  return {
    startRow,
    startColumn,
    endRow: m[4] ? Number(m[4]) - 1 : startRow,
    endColumn: m[3] ? columnNumber(m[3]) : startColumn,
  };
}

// ---------------------------------------------------------------- colours and styles

/** The usual theme of office files (ECMA-376 leaves it to the file; these are the values most files carry; from memory). */
const THEME = ["FFFFFF", "000000", "E7E6E6", "44546A", "4472C4", "ED7D31", "A5A5A5", "FFC000", "5B9BD5", "70AD47"];

function rgb(color: (Partial<ExcelJS.Color> & { tint?: number }) | undefined): string | undefined {
  if (!color) return undefined;
  if (color.argb) return `#${color.argb.slice(-6).toLowerCase()}`;
  const base = color.theme === undefined ? undefined : THEME[color.theme];
  if (base === undefined) return undefined;
  const tint = color.tint ?? 0;
  const part = (at: number) => {
    const value = Number.parseInt(base.slice(at, at + 2), 16);
    const shaded = tint < 0 ? value * (1 + tint) : value + (255 - value) * tint;
    return Math.round(shaded).toString(16).padStart(2, "0");
  };
  return `#${part(0)}${part(2)}${part(4)}`;
}

function argb(color: Nullable<string>): string | undefined {
  const hex = /^#?([0-9a-f]{6})$/i.exec(color ?? "")?.[1];
  if (hex) return `FF${hex.toUpperCase()}`;
  const parts = /^rgba?\((\d+),\s*(\d+),\s*(\d+)/.exec(color ?? "");
  return parts
    ? `FF${parts
        .slice(1, 4)
        .map((p) => Number(p).toString(16).padStart(2, "0"))
        .join("")
        .toUpperCase()}`
    : undefined;
}

const BORDERS = [
  "",
  "thin",
  "hair",
  "dotted",
  "dashed",
  "dashDot",
  "dashDotDot",
  "double",
  "medium",
  "mediumDashed",
  "mediumDashDot",
  "mediumDashDotDot",
  "slantDashDot",
  "thick",
] as const;
const ACROSS: readonly ("" | "left" | "center" | "right" | "justify")[] = ["", "left", "center", "right", "justify"];
const DOWN = ["", "top", "middle", "bottom"] as const;

function styleToFile(style: IStyleData): Partial<ExcelJS.Style> {
  const out: Partial<ExcelJS.Style> = {};
  const font: Partial<ExcelJS.Font> = {};
  if (style.ff) font.name = style.ff;
  if (style.fs) font.size = style.fs;
  if (style.bl) font.bold = true;
  if (style.it) font.italic = true;
  if (style.ul?.s) font.underline = true;
  if (style.st?.s) font.strike = true;
  const ink = argb(style.cl?.rgb);
  if (ink) font.color = { argb: ink };
  if (Object.keys(font).length > 0) out.font = font;
  const paper = argb(style.bg?.rgb);
  if (paper) out.fill = { type: "pattern", pattern: "solid", fgColor: { argb: paper } };
  const alignment: Partial<ExcelJS.Alignment> = {};
  const across = ACROSS[style.ht ?? 0];
  if (across) alignment.horizontal = across;
  const down = DOWN[style.vt ?? 0];
  if (down) alignment.vertical = down;
  if (style.tb === 3) alignment.wrapText = true;
  if (style.tr?.a) alignment.textRotation = -style.tr.a;
  if (Object.keys(alignment).length > 0) out.alignment = alignment;
  if (style.bd) {
    const side = (b: Nullable<IBorderStyleData>) =>
      b?.s ? { style: BORDERS[b.s] as ExcelJS.BorderStyle, color: { argb: argb(b.cl?.rgb) ?? "FF000000" } } : undefined;
    const border = { top: side(style.bd.t), bottom: side(style.bd.b), left: side(style.bd.l), right: side(style.bd.r) };
    if (Object.values(border).some(Boolean)) out.border = JSON.parse(JSON.stringify(border));
  }
  if (style.n?.pattern) out.numFmt = style.n.pattern;
  return out;
}

function styleFromFile(style: Partial<ExcelJS.Style>): IStyleData | undefined {
  const out: IStyleData = {};
  const { font, fill, alignment, border, numFmt } = style;
  if (font?.name && font.name !== "Calibri") out.ff = font.name;
  if (font?.size && font.size !== 11) out.fs = font.size;
  if (font?.bold) out.bl = 1;
  if (font?.italic) out.it = 1;
  if (font?.underline && font.underline !== "none") out.ul = { s: 1 };
  if (font?.strike) out.st = { s: 1 };
  const ink = rgb(font?.color);
  if (ink && ink !== "#000000") out.cl = { rgb: ink };
  if (fill?.type === "pattern" && fill.pattern === "solid") {
    const paper = rgb(fill.fgColor);
    if (paper) out.bg = { rgb: paper };
  }
  const across = ACROSS.indexOf(alignment?.horizontal as never);
  if (across > 0) out.ht = across;
  const down = DOWN.indexOf(alignment?.vertical as never);
  if (down > 0) out.vt = down;
  if (alignment?.wrapText) out.tb = 3;
  if (typeof alignment?.textRotation === "number" && alignment.textRotation !== 0)
    out.tr = { a: -alignment.textRotation };
  if (border) {
    const side = (b: Partial<ExcelJS.Border> | undefined) =>
      b?.style
        ? { s: Math.max(1, BORDERS.indexOf(b.style as never)), cl: { rgb: rgb(b.color) ?? "#000000" } }
        : undefined;
    const bd = { t: side(border.top), b: side(border.bottom), l: side(border.left), r: side(border.right) };
    if (Object.values(bd).some(Boolean)) out.bd = JSON.parse(JSON.stringify(bd));
  }
  if (numFmt && numFmt !== "General") out.n = { pattern: numFmt };
  return Object.keys(out).length > 0 ? out : undefined;
}

// ---------------------------------------------------------------- rules that hang on ranges

interface Validation {
  readonly uid: string;
  readonly type: string;
  readonly operator?: string;
  readonly formula1?: string;
  readonly formula2?: string;
  readonly ranges: IRange[];
  readonly allowBlank?: boolean;
  readonly errorStyle?: number;
  readonly showErrorMessage?: boolean;
  readonly error?: string;
  readonly errorTitle?: string;
  readonly showInputMessage?: boolean;
  readonly prompt?: string;
  readonly promptTitle?: string;
}
interface Conditional {
  readonly cfId: string;
  readonly ranges: IRange[];
  readonly stopIfTrue?: boolean;
  readonly rule: { type: string; subType?: string; value?: unknown; operator?: string; style?: IStyleData };
}

const ERROR_STYLES = ["information", "stop", "warning"] as const;
type FileValidations = {
  model: Record<string, ExcelJS.DataValidation | undefined>;
  add(range: string, rule: unknown): void;
};

function validationToFile(rule: Validation): ExcelJS.DataValidation | undefined {
  if (!["list", "whole", "decimal", "date", "textLength", "custom"].includes(rule.type)) return undefined;
  const strip = (formula: string) => formula.replace(/^=/, "");
  const first = rule.formula1 ?? "";
  const formulae: string[] =
    rule.type === "list" && !first.startsWith("=") ? [`"${first.replaceAll('"', '""')}"`] : [strip(first)];
  if (rule.formula2) formulae.push(strip(rule.formula2));
  return {
    type: rule.type as "list",
    ...(rule.operator && rule.type !== "list" && rule.type !== "custom"
      ? { operator: rule.operator as "between" }
      : {}),
    formulae,
    allowBlank: rule.allowBlank ?? true,
    errorStyle: ERROR_STYLES[rule.errorStyle ?? 1] ?? "stop",
    showErrorMessage: rule.showErrorMessage ?? true,
    ...(rule.error ? { error: rule.error } : {}),
    ...(rule.errorTitle ? { errorTitle: rule.errorTitle } : {}),
    ...(rule.prompt ? { showInputMessage: true, prompt: rule.prompt } : {}),
    ...(rule.promptTitle ? { promptTitle: rule.promptTitle } : {}),
  };
}

/** Cells with the same rule become ranges again: down each column, then columns that match. */
function joinCells(cells: { row: number; column: number }[]): IRange[] {
  const columns = new Map<number, number[]>();
  for (const { row, column } of cells) columns.set(column, [...(columns.get(column) ?? []), row]);
  const ranges: IRange[] = [];
  for (const [column, rows] of [...columns].sort((a, b) => a[0] - b[0])) {
    rows.sort((a, b) => a - b);
    let start = rows[0]!;
    rows.forEach((row, i) => {
      if (rows[i + 1] === row + 1) return;
      const left = ranges.find((r) => r.endColumn === column - 1 && r.startRow === start && r.endRow === row);
      if (left) left.endColumn = column;
      else ranges.push({ startRow: start, endRow: row, startColumn: column, endColumn: column });
      start = rows[i + 1] ?? start;
    });
  }
  return ranges;
}

function validationsFromFile(sheet: ExcelJS.Worksheet): Validation[] {
  const model = (sheet as unknown as { dataValidations: FileValidations }).dataValidations.model;
  const groups = new Map<
    string,
    { rule: ExcelJS.DataValidation; cells: { row: number; column: number }[]; ranges: IRange[] }
  >();
  for (const [where, rule] of Object.entries(model)) {
    if (!rule) continue;
    const key = JSON.stringify(rule);
    const group = groups.get(key) ?? { rule, cells: [], ranges: [] };
    groups.set(key, group);
    for (const part of where.replace(/^range:/, "").split(/\s+/)) {
      const range = parseRange(part);
      if (!range) continue;
      if (range.startRow === range.endRow && range.startColumn === range.endColumn)
        group.cells.push({ row: range.startRow, column: range.startColumn });
      else group.ranges.push(range);
    }
  }
  return [...groups.values()].flatMap(({ rule, cells, ranges }, i): Validation[] => {
    const formulae = (rule as { formulae?: unknown[] }).formulae ?? [];
    const text = (formula: unknown): string | undefined => {
      if (formula === undefined || formula === null) return undefined;
      const words = /^"((?:[^"]|"")*)"$/.exec(String(formula));
      if (rule.type === "list" && words) return words[1]!.replaceAll('""', '"');
      return rule.type === "list" || rule.type === "custom" ? `=${String(formula)}` : String(formula);
    };
    return [
      {
        uid: `rule-${sheet.id}-${i}`,
        type: rule.type,
        ...(rule.operator ? { operator: rule.operator } : {}),
        formula1: text(formulae[0]),
        formula2: text(formulae[1]),
        ranges: [...ranges, ...joinCells(cells)],
        allowBlank: rule.allowBlank ?? false,
        errorStyle: Math.max(0, ERROR_STYLES.indexOf((rule.errorStyle ?? "stop") as "stop")),
        showErrorMessage: rule.showErrorMessage ?? false,
        ...(rule.error ? { error: rule.error } : {}),
        ...(rule.errorTitle ? { errorTitle: rule.errorTitle } : {}),
        ...(rule.prompt ? { showInputMessage: true, prompt: rule.prompt } : {}),
        ...(rule.promptTitle ? { promptTitle: rule.promptTitle } : {}),
      },
    ];
  });
}

const COMPARE: Readonly<Record<string, string>> = {
  equal: "=",
  notEqual: "<>",
  greaterThan: ">",
  lessThan: "<",
  greaterThanOrEqual: ">=",
  lessThanOrEqual: "<=",
};

interface FileRule {
  readonly type?: string;
  readonly operator?: string;
  readonly text?: string;
  readonly formulae?: unknown[];
  readonly style?: Partial<ExcelJS.Style>;
  readonly priority?: number;
  readonly stopIfTrue?: boolean;
}

/** The formula that says the same as a rule of a file; undefined when none does. */
function conditionOf(rule: FileRule, cell: string): string | undefined {
  const [first, second] = (rule.formulae ?? []).map(String);
  if (rule.type === "expression" && first) return `=${first}`;
  if (rule.type === "cellIs" && first) {
    if (rule.operator === "between" && second) return `=AND(${cell}>=${first},${cell}<=${second})`;
    if (rule.operator === "notBetween" && second) return `=OR(${cell}<${first},${cell}>${second})`;
    const sign = COMPARE[rule.operator ?? ""];
    return sign ? `=${cell}${sign}${first}` : undefined;
  }
  if (rule.type === "containsText") {
    if (first) return `=${first}`;
    if (rule.text) return `=NOT(ISERROR(SEARCH("${rule.text.replaceAll('"', '""')}",${cell})))`;
  }
  return undefined;
}

function conditionsFromFile(sheet: ExcelJS.Worksheet, left: Set<string>): Conditional[] {
  const all =
    (
      sheet as unknown as {
        conditionalFormattings?: {
          ref: string;
          rules: FileRule[];
        }[];
      }
    ).conditionalFormattings ?? [];
  const found: (Conditional & { priority: number })[] = [];
  all.forEach(({ ref, rules }, i) => {
    const ranges = ref
      .split(/\s+/)
      .map(parseRange)
      .filter((r): r is IRange => r !== undefined);
    if (ranges.length === 0) return;
    rules.forEach((rule, k) => {
      const value = conditionOf(
        rule,
        a1({ ...ranges[0]!, endRow: ranges[0]!.startRow, endColumn: ranges[0]!.startColumn }),
      );
      if (value === undefined) {
        left.add("some conditional formats");
        return;
      }
      const style = styleFromFile({ ...rule.style, fill: undefined }) ?? {};
      const fill = rule.style?.fill as ExcelJS.FillPattern | undefined;
      const paper = rgb(fill?.bgColor) ?? rgb(fill?.fgColor);
      if (paper) style.bg = { rgb: paper };
      found.push({
        cfId: `condition-${sheet.id}-${i}-${k}`,
        ranges,
        stopIfTrue: Boolean(rule.stopIfTrue),
        rule: { type: "highlightCell", subType: "formula", value, style },
        priority: rule.priority ?? 0,
      });
    });
  });
  return found.sort((a, b) => a.priority - b.priority).map(({ priority: _, ...rest }) => rest);
}

// ---------------------------------------------------------------- writing

function resourceOf<T>(data: IWorkbookData, name: string): Record<string, T[]> {
  const text = data.resources?.find((r) => r.name === name)?.data;
  if (!text) return {};
  try {
    return JSON.parse(text) as Record<string, T[]>;
  } catch {
    return {};
  }
}

function namesOf(data: IWorkbookData): DefinedName[] {
  const text = data.resources?.find((r) => r.name === NAMES)?.data;
  return text ? Object.values(JSON.parse(text) as Record<string, DefinedName>) : [];
}

function cellValue(cell: ICellData): ExcelJS.CellValue {
  const { v } = cell;
  if (v === null || v === undefined || v === "") {
    const text = cell.p?.body?.dataStream?.replace(/\r\n$/, "").replaceAll("\r", "\n");
    return text ? text : null;
  }
  if (cell.t === BOOLEAN) return v === 1 || v === true || v === "1" || v === "TRUE";
  if (cell.t === NUMBER && Number.isFinite(Number(v))) return Number(v);
  if (typeof v === "string" && ERROR.test(v) && cell.t !== FORCED_TEXT) return { error: v } as ExcelJS.CellErrorValue;
  return v;
}

export interface WriteOptions {
  /**
   * Live blocks as array formulas, which spreadsheet programs with the add-in calculate. Without it the block is
   * written as the values it shows with the formula in its first cell: readable everywhere.
   */
  readonly forExcel?: boolean;
}

export interface Written {
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** What the file does not hold, in words. */
  readonly left: string[];
}

export async function writeXlsx({ data, spills }: Taken, { forExcel = false }: WriteOptions = {}): Promise<Written> {
  const left = new Set<string>();
  const book = new ExcelFile.Workbook();
  book.creator = "Tablefeed";
  const validations = resourceOf<Validation>(data, VALIDATION);
  const conditions = resourceOf<Conditional>(data, CONDITIONAL);
  const base: IStyleData = typeof data.defaultStyle === "object" && data.defaultStyle ? data.defaultStyle : {};
  const styles = new Map<unknown, Partial<ExcelJS.Style>>();
  const styleOf = (s: ICellData["s"]): Partial<ExcelJS.Style> | undefined => {
    if (s === null || s === undefined) return undefined;
    const known = styles.get(s);
    if (known) return known;
    const found = typeof s === "string" ? data.styles[s] : s;
    if (!found) return undefined;
    const made = styleToFile({ ...base, ...found });
    styles.set(s, made);
    return made;
  };
  const plain = styleToFile(base);
  let blocks = 0;

  for (const id of data.sheetOrder) {
    const from = data.sheets[id];
    if (!from) continue;
    const sheet = book.addWorksheet(from.name ?? id, {
      state: from.hidden ? "hidden" : "visible",
      properties: from.tabColor ? { tabColor: { argb: argb(from.tabColor) ?? "FF808080" } } : {},
    });
    if (from.custom?.page) Object.assign(sheet.pageSetup, PAGE);
    const freeze = from.freeze;
    if (freeze && (freeze.xSplit > 0 || freeze.ySplit > 0))
      sheet.views = [
        { state: "frozen", xSplit: freeze.xSplit, ySplit: freeze.ySplit, showGridLines: from.showGridlines !== 0 },
      ];
    else if (from.showGridlines === 0) sheet.views = [{ state: "normal", showGridLines: false }];

    const arrays = new Map<string, IRange>();
    for (const range of spills[id] ?? []) arrays.set(`${range.startRow} ${range.startColumn}`, range);

    for (const [r, line] of Object.entries((from.cellData ?? {}) as Record<string, Record<string, ICellData | null>>)) {
      for (const [c, cell] of Object.entries(line)) {
        if (!cell) continue;
        const value = cellValue(cell);
        const style = styleOf(cell.s);
        if (value === null && !cell.f && !style) continue;
        const target = sheet.getCell(Number(r) + 1, Number(c) + 1);
        target.style = style ?? plain;
        if (!cell.f) {
          target.value = value;
          continue;
        }
        const formula = toFile(cell.f);
        const range = arrays.get(`${r} ${c}`);
        const result = value === null ? undefined : (value as ExcelJS.CellFormulaValue["result"]);
        if (range && (forExcel || !usesOurs(cell.f))) {
          target.value = { shareType: "array", ref: a1(range), formula, result } as unknown as ExcelJS.CellFormulaValue;
        } else {
          target.value = { formula, result };
          if (range) {
            blocks++;
            const sheetOf = reference(
              sheet.name,
              range.startRow,
              range.startColumn,
              range.endRow - range.startRow + 1,
              range.endColumn - range.startColumn + 1,
            );
            book.definedNames.add(sheetOf, `${BLOCK_NAME}${blocks}`);
            target.note = `${NOTE} The desk calculates this block again when it opens the file. In Excel with the add-in: save it from the desk with “Save for Excel”, or clear ${a1(range)} and enter ${cell.f}`;
          }
        }
      }
    }
    const columns = (from.columnData ?? {}) as Record<string, { w?: number; hd?: number } | undefined>;
    for (const [c, column] of Object.entries(columns)) {
      if (column?.w) sheet.getColumn(Number(c) + 1).width = Math.max(1, (column.w - 5) / 7);
      if (column?.hd) sheet.getColumn(Number(c) + 1).hidden = true;
    }
    const rows = (from.rowData ?? {}) as Record<string, { h?: number; ia?: number; hd?: number } | undefined>;
    for (const [r, row] of Object.entries(rows)) {
      if (row?.h && row.ia !== 1) sheet.getRow(Number(r) + 1).height = row.h / POINT;
      if (row?.hd) sheet.getRow(Number(r) + 1).hidden = true;
    }
    for (const range of from.mergeData ?? []) sheet.mergeCells(a1(range));

    const target = (sheet as unknown as { dataValidations: FileValidations }).dataValidations;
    for (const rule of validations[id] ?? []) {
      const made = validationToFile(rule);
      if (!made) {
        left.add("some rules for allowed entries");
        continue;
      }
      for (const range of rule.ranges) target.add(a1(range), made);
    }
    let priority = 1;
    for (const { ranges, rule, stopIfTrue } of conditions[id] ?? []) {
      if (rule.type !== "highlightCell" || rule.subType !== "formula" || typeof rule.value !== "string") {
        left.add("some conditional formats");
        continue;
      }
      const style: Partial<ExcelJS.Style> = styleToFile(rule.style ?? {});
      const paper = argb(rule.style?.bg?.rgb);
      if (paper) style.fill = { type: "pattern", pattern: "solid", bgColor: { argb: paper } };
      const formulae = [toFile(rule.value)];
      sheet.addConditionalFormatting({
        ref: ranges.map(a1).join(" "),
        rules: [
          {
            type: "expression",
            formulae,
            style,
            priority: priority++,
            ...(stopIfTrue ? { stopIfTrue } : {}),
          } as ExcelJS.ConditionalFormattingRule,
        ],
      });
    }
  }
  for (const { name, formulaOrRefString } of namesOf(data)) {
    const ranges = formulaOrRefString.replace(/^=/, "").split(/,(?=(?:[^']*'[^']*')*[^']*$)/);
    const areRanges = ranges.every(
      (range) => parseRange(range.slice(range.lastIndexOf("!") + 1)) && range.includes("!"),
    );
    if (areRanges) for (const range of ranges) book.definedNames.add(range, name);
    else left.add("names of formulas");
  }
  const buffer = await book.xlsx.writeBuffer();
  return { bytes: new Uint8Array(buffer as ArrayBuffer), left: [...left] };
}

// ---------------------------------------------------------------- reading

/** Parts of a file the desk cannot show, by the name of the part inside the file. */
const PARTS: readonly (readonly [string, string])[] = [
  ["xl/charts/", "charts"],
  ["xl/media/", "pictures"],
  ["xl/pivotTables/", "pivot tables"],
  ["xl/vbaProject", "macros"],
  ["xl/externalLinks/", "links to other files"],
];

function unreadable(name: string, why: string): HostError {
  return new HostError("unreadable", `${name} cannot be read: ${why}. Nothing was changed.`);
}

function kindOf(bytes: Uint8Array): "zip" | "old" | "other" {
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return "zip";
  return bytes[0] === 0xd0 && bytes[1] === 0xcf && bytes[2] === 0x11 && bytes[3] === 0xe0 ? "old" : "other";
}

function noteText(note: string | ExcelJS.Comment): string {
  return typeof note === "string" ? note : (note.texts ?? []).map((part) => part.text).join("");
}

/** Days since the end of 1899, as cells count dates. */
const serial = (date: Date): number => (date.getTime() - Date.UTC(1899, 11, 30)) / 86_400_000;

function scalar(value: unknown): { v: string | number; t?: number } | undefined {
  if (value === null || value === undefined || value === "") return undefined;
  if (typeof value === "number") return { v: value, t: NUMBER };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: BOOLEAN };
  if (value instanceof Date) return { v: serial(value), t: NUMBER };
  if (typeof value === "string") return { v: value, ...textType(value) };
  const object = value as { richText?: { text: string }[]; text?: unknown; error?: string };
  if (object.error) return { v: object.error };
  if (object.richText) return scalar(object.richText.map((part) => part.text).join(""));
  if ("text" in object) return scalar(object.text);
  return undefined;
}

function forget(cell: ICellData): void {
  cell.v = undefined;
  cell.t = undefined;
}

function tablesOf(book: ExcelJS.Workbook): FileTable[] {
  return book.worksheets.flatMap((sheet) => {
    const tables = (sheet as unknown as { tables?: Record<string, { table?: FileTableModel; model?: FileTableModel }> })
      .tables;
    return Object.values(tables ?? {}).flatMap((entry): FileTable[] => {
      const model = entry.table ?? entry.model;
      const range = parseRange(model?.tableRef ?? model?.ref ?? "");
      if (!model || !range) return [];
      return [
        {
          name: model.displayName ?? model.name,
          sheet: sheet.name,
          top: range.startRow,
          left: range.startColumn,
          rows: range.endRow - range.startRow + 1,
          // Files leave the mark out when there are headings, so the cells have to tell.
          hasHeadings: model.columns.every(
            (column, c) => sheet.getCell(range.startRow + 1, range.startColumn + c + 1).text === column.name,
          ),
          hasTotals: model.totalsRow === true,
          columns: model.columns.map((column) => column.name),
        },
      ];
    });
  });
}

interface FileTableModel {
  readonly name: string;
  readonly displayName?: string;
  readonly tableRef?: string;
  readonly ref?: string;
  readonly totalsRow?: boolean;
  readonly columns: readonly { readonly name: string }[];
}

export interface Read {
  readonly data: IWorkbookData;
  /** What the desk does not show or keep, in words. */
  readonly left: string[];
}

export async function readXlsx(bytes: Uint8Array, fileName: string): Promise<Read> {
  const kind = kindOf(bytes);
  if (bytes.length === 0) throw unreadable(fileName, "it is empty");
  if (kind === "old")
    throw unreadable(fileName, "it is an .xls file or it has a password; save it as .xlsx without a password first");
  if (kind === "other") throw unreadable(fileName, "it is not an .xlsx file");
  const book = new ExcelFile.Workbook();
  try {
    await book.xlsx.load(bytes as unknown as ExcelJS.Buffer);
  } catch (problem) {
    throw unreadable(
      fileName,
      `it is damaged or not a workbook (${problem instanceof Error ? problem.message : String(problem)})`,
    );
  }
  if (book.worksheets.length === 0) throw unreadable(fileName, "there is no sheet in it");

  const left = new Set<string>();
  const names = new TextDecoder("latin1").decode(bytes);
  for (const [part, words] of PARTS) if (names.includes(part)) left.add(words);

  const styles: Record<string, IStyleData> = {};
  const styleIds = new Map<string, string>();
  const styleId = (style: Partial<ExcelJS.Style>): string | undefined => {
    const made = styleFromFile(style);
    if (!made) return undefined;
    const key = JSON.stringify(made);
    let id = styleIds.get(key);
    if (id === undefined) {
      id = `s${styleIds.size}`;
      styleIds.set(key, id);
      styles[id] = made;
    }
    return id;
  };

  // Blocks saved as values: the formula in the first cell spills over them again.
  const saved = new Map<string, IRange[]>();
  const definedNames: Record<string, DefinedName> = {};
  for (const { name, ranges } of (book.definedNames.model ?? []) as { name: string; ranges: string[] }[]) {
    if (!name.toLowerCase().startsWith(BLOCK_NAME.toLowerCase())) {
      const id = `name${Object.keys(definedNames).length}`;
      definedNames[id] = { id, name, formulaOrRefString: ranges.join(","), localSheetId: ALL_SHEETS };
      continue;
    }
    for (const full of ranges) {
      const at = full.lastIndexOf("!");
      const range = parseRange(full.slice(at + 1));
      const sheet = full.slice(0, at).replace(/^'|'$/g, "").replaceAll("''", "'");
      if (range) saved.set(sheet, [...(saved.get(sheet) ?? []), range]);
    }
  }

  const tables = tablesOf(book);
  const sheets: IWorkbookData["sheets"] = {};
  const order: string[] = [];
  const validations: Record<string, Validation[]> = {};
  const conditions: Record<string, Conditional[]> = {};
  for (const sheet of book.worksheets) {
    const id = `sheet${sheet.id}`;
    order.push(id);
    const cellData: Record<number, Record<number, ICellData>> = {};
    const rowData: NonNullable<IWorksheetData["rowData"]> = {};
    const columnData: NonNullable<IWorksheetData["columnData"]> = {};
    const under: IRange[] = [...(saved.get(sheet.name) ?? [])];
    let lastRow = 0;
    let lastColumn = 0;
    sheet.eachRow({ includeEmpty: true }, (row, number) => {
      if (row.height) rowData[number - 1] = { h: Math.round(row.height * POINT), ia: 0 };
      if (row.hidden) rowData[number - 1] = { ...rowData[number - 1], hd: 1 };
      row.eachCell({ includeEmpty: true }, (cell, column) => {
        const r = number - 1;
        const c = column - 1;
        if (cell.note && !noteText(cell.note).startsWith(NOTE)) left.add("notes");
        const merged = cell.isMerged && cell.master.address !== cell.address;
        const s = styleId(cell.style);
        const made: ICellData = s === undefined ? {} : { s };
        const formula = cell.formula;
        if (!merged) {
          const content = scalar(formula ? cell.result : cell.value);
          if (content) Object.assign(made, content);
          if (formula) {
            made.f = withoutTables(fromFile(formula), tables, sheet.name, r);
            // Calculated on opening: ours, so that blocks spill and reasons are there.
            if (usesOurs(made.f)) forget(made);
            const array = cell.value as { shareType?: string; ref?: string };
            const range = array.shareType === "array" && array.ref ? parseRange(array.ref) : undefined;
            if (range) {
              under.push(range);
              forget(made);
            }
          }
        }
        if (Object.keys(made).length === 0) return;
        cellData[r] ??= {};
        cellData[r]![c] = made;
        lastRow = Math.max(lastRow, r);
        lastColumn = Math.max(lastColumn, c);
      });
    });
    for (const range of under) {
      lastRow = Math.max(lastRow, range.endRow);
      lastColumn = Math.max(lastColumn, range.endColumn);
      if (!cellData[range.startRow]?.[range.startColumn]?.f) continue;
      for (let r = range.startRow; r <= range.endRow; r++) {
        for (let c = range.startColumn; c <= range.endColumn; c++) {
          const cell = cellData[r]?.[c];
          if (!cell || (r === range.startRow && c === range.startColumn)) continue;
          cellData[r]![c] = cell.s ? { s: cell.s } : {};
        }
      }
    }
    (sheet.columns ?? []).forEach((column, c) => {
      if (column.width) columnData[c] = { w: Math.round(column.width * 7 + 5) };
      if (column.hidden) columnData[c] = { ...columnData[c], hd: 1 };
    });
    const view = sheet.views?.[0];
    const frozen = view?.state === "frozen" ? view : undefined;
    const [x, y] = [frozen?.xSplit ?? 0, frozen?.ySplit ?? 0];
    const merges = ((sheet.model as { merges?: string[] }).merges ?? [])
      .map(parseRange)
      .filter((r): r is IRange => r !== undefined);
    sheets[id] = {
      id,
      name: sheet.name,
      hidden: sheet.state === "visible" ? 0 : 1,
      rowCount: Math.max(100, lastRow + 51),
      columnCount: Math.max(26, lastColumn + 11),
      cellData,
      rowData,
      columnData,
      mergeData: merges,
      showGridlines: view?.showGridLines === false ? 0 : 1,
      ...(isPage(sheet.pageSetup) ? { custom: { page: true } } : {}),
      ...(x > 0 || y > 0
        ? { freeze: { xSplit: x, ySplit: y, startRow: y > 0 ? y : -1, startColumn: x > 0 ? x : -1 } }
        : {}),
    };
    const rules = validationsFromFile(sheet);
    if (rules.length > 0) validations[id] = rules;
    const rulesOfLook = conditionsFromFile(sheet, left);
    if (rulesOfLook.length > 0) conditions[id] = rulesOfLook;
    if (Object.keys((sheet as unknown as { tables?: object }).tables ?? {}).length > 0)
      left.add("table borders and filters");
    if ((sheet as unknown as { sheetProtection?: unknown }).sheetProtection) left.add("sheet protection");
  }

  return {
    data: {
      id: "opened",
      name: fileName,
      appVersion: "0.25.1",
      locale: "enUS" as IWorkbookData["locale"],
      styles,
      defaultStyle: { ff: "Arial", fs: 10, vt: 2 },
      sheetOrder: order,
      sheets,
      resources: [
        { name: VALIDATION, data: JSON.stringify(validations) },
        { name: CONDITIONAL, data: JSON.stringify(conditions) },
        { name: NAMES, data: JSON.stringify(definedNames) },
      ],
    },
    left: [...left],
  };
}
