/** The page that the tests of the grid open: a planning table with its lists, nothing of the desk around it. */

import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { RESULT_COLUMNS, ROW_COLUMNS } from "../../src/table/columns.ts";
import { mountGrid } from "../../taskpane/desk/grid/grid.ts";
import type { GridHandle } from "../../taskpane/desk/grid/options.ts";
import { createModel, type Model } from "../../taskpane/desk/model/model.ts";
import type { Book, Cell, Choices, Sheet, Style } from "../../taskpane/desk/model/types.ts";

const parameters = new URLSearchParams(location.search);
const ROWS = Number(parameters.get("rows") ?? 73);
const blank = parameters.get("blank") === "yes";

type Cells = Map<number, Map<number, Cell>>;
const styles: Style[] = [
  { numberFormat: "General" },
  { numberFormat: "General", bold: true, wrap: true, fill: "#e4e9ee" },
];

function cellsOf(rows: readonly (readonly (string | number | boolean | null)[])[]): Cells {
  const cells: Cells = new Map();
  rows.forEach((row, r) => {
    const line = new Map<number, Cell>();
    row.forEach((value, c) => {
      if (value !== null && value !== "") line.set(c, { value, ...(r === 0 ? { style: 1 } : {}) });
    });
    if (line.size > 0) cells.set(r, line);
  });
  return cells;
}

function sheetOf(name: string, cells: Cells, more: Partial<Sheet> = {}): Sheet {
  return {
    name,
    state: "visible",
    cells,
    widths: new Map(),
    hiddenColumns: new Set(),
    hiddenRows: new Set(),
    frozen: { rows: 1, columns: 1 },
    merges: [],
    choices: [],
    tables: [],
    protected: false,
    kept: [],
    ...more,
  };
}

export const INPUTS = ROW_COLUMNS.length;
function book(): Book {
  const headings = ["Verdict", ...ROW_COLUMNS.map((c) => c.heading), ...RESULT_COLUMNS.slice(2).map((c) => c.heading)];
  const example: Record<string, string | number> = {
    feature: "clearance hole in the flange, from the second clamping",
    operation: "drill",
    units: "mm",
    quantity: 4,
    material: String(MATERIALS[3]?.[0]),
    finishDiameter: 8.5,
    depth: 20,
  };
  const rows = Array.from({ length: ROWS }, (_, r) => [
    ["ok", "check", "stop"][r % 3]!,
    ...ROW_COLUMNS.map((c) => (blank && r > 0 ? null : c.key === "row" ? (r + 1) * 10 : (example[c.key] ?? null))),
    ...RESULT_COLUMNS.slice(2).map((_c, i) =>
      blank && r > 0 ? null : i === 0 ? "A sentence that is longer than its column" : i * 1.25,
    ),
  ]);
  const at = (key: string) => ROW_COLUMNS.findIndex((c) => c.key === key) + 1;
  const below = (column: number) => [{ top: 1, bottom: 1_048_575, left: column, right: column }];
  const choices: Choices[] = [
    ...ROW_COLUMNS.flatMap((c, i) => (c.words ? [{ areas: below(i + 1), words: c.words }] : [])),
    { areas: below(at("material")), source: "Materials!$A$2:$A$400" },
    { areas: below(at("tool")), source: "Tools!$A$2:$A$400" },
  ];
  const widths = new Map(headings.map((heading, c) => [c, Math.max(7, Math.ceil(heading.length / 2) + 4)]));
  widths.set(at("feature"), 24);
  widths.set(at("material"), 20);
  return {
    sheets: [
      sheetOf("Plan", cellsOf([headings, ...rows]), {
        choices,
        widths,
        frozen: { rows: 1, columns: 2 },
        tables: [
          {
            name: "Plan",
            area: { top: 0, left: 0, bottom: ROWS, right: headings.length - 1 },
            columns: headings,
            totals: false,
          },
        ],
      }),
      sheetOf("Materials", cellsOf(MATERIALS), { widths: new Map([[0, 34]]) }),
      sheetOf("Tools", cellsOf(TOOLS), { widths: new Map([[0, 34]]) }),
    ],
    active: 0,
    styles,
    names: [],
    date1904: false,
    kept: [],
  };
}

const words = new Set(["ok", "check", "stop"]);
const start = performance.now();
const model: Model = createModel(book(), { locale: parameters.get("locale") ?? "en-US" });
const made = performance.now();
const left: string[] = [];
const grid: GridHandle = mountGrid(document.getElementById("grid")!, {
  model,
  onLeave: (direction) => {
    left.push(direction);
    document.getElementById(direction === "next" ? "after" : "before")!.focus();
  },
  classOf: (sheet, row, column) => {
    const value = sheet === "Plan" && column === 0 && row > 0 ? model.cell(sheet, row, column)?.value : undefined;
    return typeof value === "string" && words.has(value) ? value : undefined;
  },
  isUsed: (sheet, row, column) => sheet !== "Plan" || row === 0 || !(column > 22 && column < 26),
  hiddenColumns: (sheet) =>
    new Set(sheet === "Plan" && parameters.get("hide") === "yes" ? [14, 15, 16, 17, 18, 19, 20] : []),
});
const mounted = performance.now();
// Stands for the planner: each edit of a row gives it another verdict, in the same step of undo.
if (parameters.get("verdicts") !== "no") {
  let busy = false;
  model.onChange((change) => {
    if (busy || change.by === "undo" || change.by === "redo") return;
    busy = true;
    const rows = new Set(change.cells.filter((c) => c.sheet === "Plan" && c.column > 0 && c.row > 0).map((c) => c.row));
    const edits = [...rows].map((row) => {
      const before = model.cell("Plan", row, 0)?.value;
      const value = before === "ok" ? "check" : before === "check" ? "stop" : "ok";
      return { kind: "cell" as const, sheet: "Plan", row, column: 0, value };
    });
    model.apply(edits, { by: "planner", joins: true });
    busy = false;
  });
}

// A grid as one should not be: the input is there a moment after the cell. Shows that the typing test finds it out.
if (parameters.get("late") === "yes") {
  model.onSelect(() => {
    (document.activeElement as HTMLElement | null)?.blur();
    setTimeout(() => grid.focus(), 30);
  });
}

const desk = {
  valueAt: (place: { sheet: string; row: number; column: number }) => {
    const value = model.cell(place.sheet, place.row, place.column)?.value ?? null;
    return typeof value === "object" && value ? value.error : value;
  },
  formulaAt: (row: number, column: number) => model.typed(model.active(), row, column)?.formula,
  select: (place: { sheet: string; row: number; column: number }) => grid.select(place, { focus: true }),
  unsaved: () => model.unsaved(),
  model,
  grid,
  left,
  inputs: INPUTS,
  times: { model: made - start, mount: mounted - made },
};
Object.assign(globalThis, { tablefeedDesk: desk });
