/** The workbooks that the desk begins with: a planning table with its results, and the shop's lists. No DOM. */
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
import { reference, spokenAddress } from "../host/reference.ts";
import { planner } from "../work/planner.ts";
import { BASIS, CHANGED, changesFor, match, planningBlock } from "../work/planning.ts";
import { textFormat, textFormats } from "../work/starting.ts";
import type { Choices, Value } from "./model/types.ts";
import { type NewCell, type NewSheet, newPackage } from "./package/new.ts";

export type Rows = readonly (readonly CellValue[])[];
export interface Lists {
  readonly materials: Rows;
  readonly tools: Rows;
  readonly machines: Rows;
}

/** Lines of a list that the drop-downs of the plan look at, and rows of the plan that have drop-downs. */
const LIST_LINES = 500;
const CHOICE_ROWS = 5000;
/** Rows below a table that are formatted for what will be typed there. */
const FORMAT_ROWS = 200;
/** Numbered rows of a new table. */
const NEW_ROWS = 20;

const LISTED: Readonly<Record<string, string>> = { material: "Materials", machine: "Machines", tool: "Tools" };
/** Widths in letters where the words decide; other columns are as wide as their heading on two lines. */
const WIDTHS: Readonly<Record<string, number>> = {
  feature: 26,
  material: 24,
  machine: 14,
  tool: 24,
  operation: 13,
  thread: 15,
  reasons: 60,
  depths: 22,
  direction: 22,
  limit: 16,
  drill: 12,
};

const heading = (text: string): NewCell => ({ value: text, look: "heading" });
const narrow = (text: string): number =>
  Math.max(7, Math.ceil(text.length / 2) + 3, ...text.split(/\s+/).map((word) => word.length + 2));

function wordsOf(column: Column): Omit<Choices, "areas"> | undefined {
  const list = LISTED[column.key];
  if (list) return { source: reference(list, 1, 0, LIST_LINES, 1) };
  if (column.words) return { words: column.words };
  return column.kind === "flag" ? { words: ["yes", "no"] } : undefined;
}

/** Results under headings that no input has: a table's columns have names of their own. */
const taken = new Set(ROW_COLUMNS.map((column) => normalHeading(column.heading)));
const RESULTS = RESULT_COLUMNS.filter(({ key }) => key !== "row" && key !== "verdict").map((column) => ({
  column,
  heading: taken.has(normalHeading(column.heading)) ? `${column.heading} (planned)` : column.heading,
}));

function listSheet(name: string, columns: readonly Column[], rows: Rows): NewSheet {
  const [head = [], ...body] = rows;
  const own = new Map(columns.map((column) => [normalHeading(column.heading), column]));
  const width = (c: number) =>
    Math.min(46, Math.max(narrow(String(head[c] ?? "")), ...body.map((row) => String(row[c] ?? "").length + 1)));
  return {
    name,
    rows: [head.map((text) => heading(String(text))), ...body.map((row) => [...row])],
    tables: [{ name, area: { top: 0, left: 0, bottom: body.length, right: head.length - 1 } }],
    frozen: { rows: 1, columns: 1 },
    widths: new Map(head.map((_, c) => [c, width(c)])),
    formats: new Map(textFormats(head, columns).flatMap((format, c) => (format === undefined ? [] : [[c, format]]))),
    formatsTo: body.length + FORMAT_ROWS,
    choices: head.flatMap((text, c) => {
      const words = own.get(normalHeading(text))?.words;
      return words ? [{ areas: [{ top: 1, bottom: LIST_LINES, left: c, right: c }], words }] : [];
    }),
  };
}

/**
 * A workbook with the planning table, worked out, and the lists.
 *
 * @param plan - heading row and rows; input columns that are blank in every row are left out, unless there are no rows
 */
export function planBook(plan: Rows, lists: Lists): Uint8Array {
  const known = new Map(ROW_COLUMNS.map((column) => [normalHeading(column.heading), column]));
  const given = plan.slice(1);
  const all = plan[0]!.map((text, at) => ({ at, column: known.get(normalHeading(text))! }));
  const inputs = all.filter(({ at }) => given.length === 0 || given.some((row) => (row[at] ?? "") !== ""));
  const rows: CellValue[][] =
    given.length > 0
      ? given.map((row) => inputs.map(({ at }) => row[at] ?? null))
      : Array.from({ length: NEW_ROWS }, (_, i) =>
          inputs.map(({ column }) => (column.key === "row" ? (i + 1) * 10 : null)),
        );

  const headings = [
    "Verdict",
    ...inputs.map(({ column }) => column.heading),
    ...RESULTS.map((r) => r.heading),
    BASIS,
    CHANGED,
  ];
  const blank = headings.length - 1 - inputs.length;
  const body = rows.map((row) => [null, ...row, ...new Array<CellValue>(blank).fill(null)]);
  const table = {
    sheet: "Plan",
    top: 0,
    left: 0,
    headings,
    rows: body,
    reference: reference("Plan", 0, 0, body.length + 1, headings.length),
    address: spokenAddress("Plan", 0, 0, body.length + 1, headings.length),
  };
  const matching = match(headings);
  const block = (list: Rows) => list.map((row) => [...row]);
  const plans = planner({
    rows: planningBlock(table, matching, undefined),
    materials: block(lists.materials),
    tools: block(lists.tools),
    machines: block(lists.machines),
  });
  const cells: (Value | NewCell)[][] = body.map((row) => [...row]);
  for (const { row, column, value, format } of changesFor(table, matching, plans)) {
    const plain = typeof value === "object" && value !== null ? "" : value;
    cells[row]![column] = {
      value: plain,
      ...(typeof value === "object" && value !== null ? { formula: value.formula.replace(/^=/, "") } : {}),
      ...(format === undefined ? {} : { numberFormat: format }),
    };
  }

  const formats = new Map<number, string>();
  inputs.forEach(({ column }, c) => {
    // Threads and names such as "1/4-20" and "10-24" are text in any program.
    const format = textFormat(column);
    if (format !== undefined) formats.set(c + 1, format);
  });
  const below = (column: number) => [{ top: 1, bottom: CHOICE_ROWS, left: column, right: column }];
  return newPackage([
    {
      name: "Plan",
      rows: [headings.map(heading), ...cells],
      tables: [{ name: "Plan", area: { top: 0, left: 0, bottom: body.length, right: headings.length - 1 } }],
      frozen: { rows: 1, columns: 3 },
      widths: new Map([
        [0, 9],
        ...inputs.map(({ column }, c) => [c + 1, WIDTHS[column.key] ?? narrow(column.heading)] as const),
        ...RESULTS.map((r, c) => [c + 1 + inputs.length, WIDTHS[r.column.key] ?? narrow(r.heading)] as const),
        [headings.length - 2, 12],
        [headings.length - 1, 16],
      ]),
      formats,
      formatsTo: body.length + FORMAT_ROWS,
      choices: inputs.flatMap(({ column }, c) => {
        const words = wordsOf(column);
        return words ? [{ areas: below(c + 1), ...words }] : [];
      }),
      verdicts: { areas: below(0), column: 0 },
    },
    listSheet("Materials", MATERIAL_COLUMNS, lists.materials),
    listSheet("Tools", TOOL_COLUMNS, lists.tools),
    listSheet("Machines", MACHINE_COLUMNS, lists.machines),
  ]);
}

/** A planning table without rows, with every heading. */
export const blankPlan = (): Rows => [ROW_COLUMNS.map((column) => column.heading)];
