/** Edits that the desk's host makes: cells, rows that are added, new sheets. Nothing is written here. */
import type { Model } from "../desk/model/model.ts";
import type { SheetState } from "../desk/model/state.ts";
import type { CellEdit } from "../desk/model/tables.ts";
import type { Choices, Edit } from "../desk/model/types.ts";
import { formatAt, type NewSheet, type Written } from "./host.ts";

/** Letters that a column of a new sheet is wide, at the least and at the most. */
const [NARROWEST, WIDEST] = [8, 55];
/** Lines of a list that its drop-downs reach beyond what is filled, and rows that a column's choices are given for. */
const CHOICE_ROWS = 1000;

/** A cell as an edit; text stays text, whatever it looks like. */
export const cellEdit = (
  sheet: string,
  row: number,
  column: number,
  value: Written,
  numberFormat?: string,
): CellEdit => ({
  kind: "cell",
  sheet,
  row,
  column,
  ...(typeof value === "object" && value !== null
    ? { value: null, formula: value.formula.replace(/^=/, "") }
    : { value: value === "" ? null : value }),
  ...(numberFormat === undefined ? {} : { numberFormat }),
});

/** Choices that the last row of a block has, given to the rows below it as well. */
export function longerChoices(sheet: SheetState, row: number, end: number): Edit[] {
  return sheet.choices.flatMap((choices): Edit[] => {
    const reaches = (area: Choices["areas"][number]) => row >= area.top && row <= area.bottom && area.bottom < end;
    if (!choices.areas.some(reaches)) return [];
    const left = Math.min(...choices.areas.map((area) => area.left));
    const right = Math.max(...choices.areas.map((area) => area.right));
    const areas = [{ top: row + 1, bottom: end, left, right }];
    // A source counted from the cell itself would mean other cells further down.
    if (choices.source !== undefined && /(?<![$A-Z])[A-Z]{1,3}\d|\$[A-Z]{1,3}\d/.test(choices.source)) return [];
    return [{ kind: "choices", sheet: sheet.name, choices: { ...choices, areas } }];
  });
}

/** A name for a sheet's table: letters, digits and _ only, unlike a cell's address, and free. */
function tableName(model: Model, name: string): string {
  const taken = new Set(model.sheets().flatMap((sheet) => sheet.tables.map((table) => table.name.toLowerCase())));
  const plainName = name.replace(/[^\p{L}\p{N}_]/gu, "_");
  const base =
    /^(?:\p{L}|_)/u.test(plainName) && !/^(?:[A-Za-z]{1,3}\d+|[rRcC]\d*)$/.test(plainName)
      ? plainName
      : `T_${plainName}`;
  for (let n = 1; ; n++) {
    const called = n === 1 ? base : `${base}_${n}`;
    if (!taken.has(called.toLowerCase())) return called;
  }
}

/** A new sheet: headings and rows as a table where they can be one, widths, choices. */
export function newSheet(model: Model, added: NewSheet): Edit[] {
  const { name, headings, rows, choices, page } = added;
  const area = { top: 0, left: 0, bottom: rows.length, right: headings.length - 1 };
  const unique = new Set(headings.map((heading) => heading.toLowerCase())).size === headings.length;
  const formulas = rows.some((row) => row.some((cell) => typeof cell === "object" && cell !== null));
  // What can be sorted is a table; a page, and formulas that fill several cells, are not.
  const isTable = !page && !formulas && rows.length > 0 && unique && headings.every((heading) => heading !== "");
  const letters = (cell: unknown) => (typeof cell === "number" ? 9 : String(cell ?? "").length + 2);
  return [
    {
      kind: "add-sheet",
      sheet: name,
      frozen: { rows: 1, columns: 0 },
      ...(isTable ? { table: { name: tableName(model, name), area } } : {}),
      ...(page ? { page: { headings: 1 } } : {}),
    },
    ...headings.map((heading, c): Edit => ({ ...cellEdit(name, 0, c, heading), look: "heading" })),
    ...rows.flatMap((row, r) =>
      row.flatMap((cell, c): Edit[] => {
        const format = formatAt(added, r, c, cell);
        return cell === null && format === undefined ? [] : [cellEdit(name, r + 1, c, cell, format)];
      }),
    ),
    ...headings.map((heading, c): Edit => {
      const longest = Math.max(heading.length + 2, ...rows.slice(0, 60).map((row) => letters(row[c])));
      return { kind: "width", sheet: name, column: c, width: Math.min(WIDEST, Math.max(NARROWEST, longest)) };
    }),
    ...(choices ?? []).flatMap((allowed, c): Edit[] =>
      allowed === undefined
        ? []
        : [
            {
              kind: "choices",
              sheet: name,
              choices: {
                areas: [{ top: 1, bottom: Math.max(rows.length, CHOICE_ROWS), left: c, right: c }],
                ...(typeof allowed === "string" ? { source: allowed } : { words: allowed }),
              },
            },
          ],
    ),
  ];
}
