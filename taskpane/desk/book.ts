/** The workbooks the desk starts with: the planning table with its live results, and the shop's lists. */
import type { ICellData, IRange, IStyleData, IWorkbookData, IWorksheetData } from "@univerjs/core";
import {
  type Column,
  MACHINE_COLUMNS,
  MATERIAL_COLUMNS,
  normalHeading,
  RESULT_COLUMNS,
  ROW_COLUMNS,
  TOOL_COLUMNS,
} from "../../src/table/columns.ts";
import type { CellValue } from "../host/host.ts";
import { columnName, reference } from "../host/reference.ts";

export type Rows = readonly (readonly CellValue[])[];
export interface Lists {
  readonly materials: Rows;
  readonly tools: Rows;
  readonly machines: Rows;
}

const [STRING, NUMBER, BOOLEAN, FORCED_TEXT] = [1, 2, 3, 4];
/** Rows of the planning table that the live block reads beyond those that are filled; it grows with the table (grow.ts). */
export const SPARE_ROWS = 40;
const LIST_ROWS = 150;
/** Column of the planning table: A shows the verdict, B is a gap. */
const LEFT = 2;

const BASE: IStyleData = { ff: "Arial", fs: 11, vt: 2 };
const HEADING: IStyleData = {
  bl: 1,
  cl: { rgb: "#1d2733" },
  bg: { rgb: "#e4e9ee" },
  vt: 2,
  tb: 3,
  bd: { b: { s: 1, cl: { rgb: "#8a96a3" } } },
};
const ANSWER_HEADING: IStyleData = { ...HEADING, bg: { rgb: "#dfeae4" } };

const LISTED: Readonly<Record<string, string>> = { material: "Materials", machine: "Machines", tool: "Tools" };

/** One format for metric and inch rows: the digits of a metric row, and more where there are more. */
export function numberFormat(column: Column): string | undefined {
  if (column.format === undefined) return undefined;
  const [mm, inch] = column.format;
  const decimals = (format: string) => (format.split(".")[1] ?? "").length;
  const more = decimals(inch) - decimals(mm);
  return more <= 0 ? mm : `${mm}${mm.includes(".") ? "" : "."}${"#".repeat(more)}`;
}

export function toCell(value: CellValue, style?: string): ICellData {
  const s = style === undefined ? {} : { s: style };
  if (value === null || value === "") return s;
  if (typeof value === "number") return { v: value, t: NUMBER, ...s };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: BOOLEAN, ...s };
  return { v: value, ...textType(value), ...s };
}

const MONTHS =
  /jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sep(?:t(?:ember)?)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?/gi;

/**
 * Text that could be taken for a number or a date ("10-24", "0012", "3 mar") is marked as text. Other text is left
 * without: the grid tries to read each marked cell as a number every time it draws it, which takes long.
 */
export function textType(value: string): { t?: number } {
  if (!/\d/.test(value) || /[a-z]/i.test(value.replace(MONTHS, "").replace(/(?<![a-z])(?:[ap]m?|e[-+]?\d+)/gi, "")))
    return {};
  return { t: value.trim() !== "" && Number.isFinite(Number(value)) ? FORCED_TEXT : STRING };
}

function width(heading: string, cells: readonly CellValue[], hasChoices = false): number {
  const longestWord = Math.max(...heading.split(/\s+/).map((w) => w.length));
  // Headings wrap: two lines are enough.
  const longest = Math.max(longestWord, Math.ceil(heading.length / 2) + 2, ...cells.map((c) => String(c ?? "").length));
  return Math.min(300, Math.max(56, Math.round(longest * 7.6) + (hasChoices ? 40 : 18)));
}

interface Choice {
  readonly type: string;
  readonly formula1: string;
  readonly ranges: IRange[];
}

function choices(words: readonly string[] | string, ranges: IRange[]): Choice {
  return { type: "list", formula1: typeof words === "string" ? `=${words}` : words.join(","), ranges };
}

function rule(choice: Choice, uid: string): object {
  return {
    uid,
    ...choice,
    allowBlank: true,
    renderMode: 1,
    errorStyle: 2,
    showErrorMessage: true,
    error: "This is not in the list; the results say what is allowed.",
  };
}

function wordsOf(column: Column): readonly string[] | string | undefined {
  const list = LISTED[column.key];
  if (list) return reference(list, 1, 0, LIST_ROWS, 1);
  if (column.words) return column.words;
  return column.kind === "flag" ? ["yes", "no"] : undefined;
}

function listSheet(id: string, name: string, columns: readonly Column[], rows: Rows): Partial<IWorksheetData> {
  const headings = rows[0] ?? columns.map((c) => c.heading);
  const body = rows.slice(1);
  const cellData: Record<number, Record<number, ICellData>> = {
    0: Object.fromEntries(headings.map((h, c) => [c, toCell(h, "heading")])),
  };
  body.forEach((row, r) => {
    cellData[r + 1] = Object.fromEntries(row.map((cell, c) => [c, toCell(cell)]));
  });
  return {
    id,
    name,
    rowCount: Math.max(LIST_ROWS + 1, body.length + 50),
    columnCount: headings.length + 4,
    cellData,
    rowData: { 0: { h: 42 } },
    columnData: Object.fromEntries(
      headings.map((h, c) => [
        c,
        {
          w: width(
            String(h ?? ""),
            body.slice(0, 60).map((row) => row[c] ?? null),
          ),
        },
      ]),
    ),
    freeze: { xSplit: 1, ySplit: 1, startRow: 1, startColumn: 1 },
    defaultStyle: BASE,
  };
}

/** Columns of the plan by heading; a heading of our own spelling or none at all is left as it is. */
function planColumns(headings: readonly CellValue[]): (Column | undefined)[] {
  const known = new Map(ROW_COLUMNS.map((column) => [normalHeading(column.heading), column]));
  return headings.map((heading) => known.get(normalHeading(heading)));
}

/**
 * A workbook with the planning table, its live results, and the lists.
 *
 * @param plan - heading row and rows; columns that are blank in every row are left out unless it has no rows
 */
export function planBook(title: string, plan: Rows, lists: Lists): IWorkbookData {
  const all = plan[0] ?? ROW_COLUMNS.map((column) => column.heading);
  const kept = all.map((_, c) => c).filter((c) => plan.length <= 1 || plan.slice(1).some((r) => (r[c] ?? "") !== ""));
  const headings = kept.map((c) => all[c] ?? null);
  const rows = plan.slice(1).map((row) => kept.map((c) => row[c] ?? null));
  const columns = planColumns(headings);
  const planRows = Math.max(100, rows.length + SPARE_ROWS);
  const answers = LEFT + headings.length + 1;

  const cellData: Record<number, Record<number, ICellData>> = { 0: {} };
  headings.forEach((heading, c) => {
    cellData[0]![LEFT + c] = toCell(heading, "heading");
  });
  rows.forEach((row, r) => {
    cellData[r + 1] = Object.fromEntries(row.map((cell, c) => [LEFT + c, toCell(cell)]));
  });
  // Threads and callouts like "1/2" must not turn into dates; row numbers stand at the left, beside their text.
  const looks: Readonly<Record<string, string>> = { thread: "text", feature: "text", row: "name" };
  columns.forEach((column, c) => {
    const s = column && looks[column.key];
    if (!s) return;
    for (let r = 1; r <= planRows; r++) {
      const cell = cellData[r]?.[LEFT + c];
      cellData[r] ??= {};
      cellData[r]![LEFT + c] = { ...cell, s };
    }
  });

  const planRange = reference("Plan", 0, LEFT, planRows + 1, headings.length);
  const listRange = (name: string, columnCount: number) => reference(name, 0, 0, LIST_ROWS + 1, columnCount);
  cellData[0]![answers] = {
    s: "answer",
    f: `=CUT.PLAN(${[
      planRange,
      listRange("Materials", (lists.materials[0] ?? MATERIAL_COLUMNS).length),
      listRange("Tools", (lists.tools[0] ?? TOOL_COLUMNS).length),
      listRange("Machines", (lists.machines[0] ?? MACHINE_COLUMNS).length),
    ].join(",")})`,
  };
  cellData[0]![0] = {
    s: "answer",
    f: `=${reference("Plan", 0, answers + 1, planRows + 1, 1).replace("Plan!", "")}&""`,
  };
  const styles: Record<string, IStyleData> = {
    heading: HEADING,
    answer: ANSWER_HEADING,
    text: { n: { pattern: "@" } },
    name: { ht: 1 },
    verdict: { bl: 1 },
  };
  RESULT_COLUMNS.forEach((column, c) => {
    cellData[0]![answers + c] = { ...cellData[0]![answers + c], s: "answer" };
    const pattern = numberFormat(column);
    const style = column.key === "verdict" ? "verdict" : pattern ? `format ${pattern}` : undefined;
    if (style === undefined) return;
    if (pattern) styles[style] = { n: { pattern } };
    for (let r = 1; r <= planRows; r++) {
      cellData[r] ??= {};
      cellData[r]![answers + c] = { s: style };
      if (column.key === "verdict") cellData[r]![0] = { s: style };
    }
  });

  const answerWidth: Readonly<Record<string, number>> = {
    reasons: 420,
    tool: 170,
    depths: 190,
    direction: 200,
    limit: 120,
  };
  const columnData: Record<number, { w: number }> = { 0: { w: 70 }, 1: { w: 12 }, [answers - 1]: { w: 12 } };
  headings.forEach((heading, c) => {
    columnData[LEFT + c] = {
      w: width(
        String(heading ?? ""),
        rows.map((row) => row[c] ?? null),
        columns[c] !== undefined && wordsOf(columns[c]) !== undefined,
      ),
    };
  });
  RESULT_COLUMNS.forEach((column, c) => {
    columnData[answers + c] = { w: answerWidth[column.key] ?? width(column.heading, []) };
  });

  const cells = (column: number): IRange[] => [
    { startRow: 1, endRow: planRows, startColumn: column, endColumn: column },
  ];
  const validation = columns.flatMap((column, c) => {
    const words = column && wordsOf(column);
    return column && words ? [rule(choices(words, cells(LEFT + c)), `choice ${column.key}`)] : [];
  });
  const toolChoices = TOOL_COLUMNS.flatMap((column, c) =>
    column.words
      ? [
          rule(
            choices(column.words, [{ startRow: 1, endRow: LIST_ROWS, startColumn: c, endColumn: c }]),
            `choice tools ${column.key}`,
          ),
        ]
      : [],
  );
  const verdictRule = (word: string, background: string, text: string) => ({
    cfId: `verdict ${word}`,
    stopIfTrue: false,
    ranges: [...cells(0), ...cells(answers + 1)],
    rule: {
      type: "highlightCell",
      subType: "formula",
      // Both look at the block itself: a rule on cells that repeat it would lag behind.
      value: `=$${columnName(answers + 1)}2="${word}"`,
      style: { bg: { rgb: background }, cl: { rgb: text } },
    },
  });

  return {
    id: `book-${title}`,
    name: title,
    appVersion: "0.25.1",
    locale: "enUS" as IWorkbookData["locale"],
    styles,
    defaultStyle: BASE,
    sheetOrder: ["plan", "materials", "tools", "machines"],
    sheets: {
      plan: {
        id: "plan",
        name: "Plan",
        rowCount: planRows + 60,
        columnCount: answers + RESULT_COLUMNS.length + 6,
        cellData,
        rowData: { 0: { h: 42 } },
        columnData,
        defaultStyle: BASE,
        freeze: { xSplit: LEFT + 2, ySplit: 1, startRow: 1, startColumn: LEFT + 2 },
      },
      materials: listSheet("materials", "Materials", MATERIAL_COLUMNS, lists.materials),
      tools: listSheet("tools", "Tools", TOOL_COLUMNS, lists.tools),
      machines: listSheet("machines", "Machines", MACHINE_COLUMNS, lists.machines),
    },
    resources: [
      { name: "SHEET_DATA_VALIDATION_PLUGIN", data: JSON.stringify({ plan: validation, tools: toolChoices }) },
      {
        name: "SHEET_CONDITIONAL_FORMATTING_PLUGIN",
        data: JSON.stringify({
          plan: [
            verdictRule("stop", "#f8d7d4", "#8a1410"),
            verdictRule("check", "#fbeac2", "#6a4a00"),
            verdictRule("ok", "#dcefe0", "#14532a"),
          ],
        }),
      },
    ],
  };
}

/** A planning table without rows, with every heading. */
export function blankPlan(): Rows {
  return [ROW_COLUMNS.map((column) => column.heading)];
}
