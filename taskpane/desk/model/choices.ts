/** Words that a cell may hold, from the list or range that its file names. */
import { parseA1Ref, parseStructRef } from "@borgar/fx";
import { inArea } from "./address.ts";
import type { Model } from "./model.ts";
import { firstRow } from "./tables.ts";
import type { Area, Choices } from "./types.ts";

/** Longer lists are cut off: nobody reads them, and a source may be a whole column. */
const MOST_WORDS = 5000;

export function choicesOf(model: Model, sheet: string, row: number, column: number): readonly string[] | undefined {
  const state = model.sheet(sheet);
  if (!state) return undefined;
  const at = (r: number) => state.choices.find((one) => one.areas.some((area) => inArea(area, r, column)));
  // A row that a table grew by has the choices of the rows above it.
  const table = state.tableAt(row, column);
  const choices = at(row) ?? (table && row >= firstRow(table) ? at(firstRow(table)) : undefined);
  if (!choices) return undefined;
  return choices.words ?? wordsOf(model, state.name, choices, row, column);
}

function wordsOf(model: Model, sheet: string, choices: Choices, row: number, column: number): string[] | undefined {
  const first = choices.areas[0]!;
  const found = resolve(model, sheet, choices.source ?? "", { row: row - first.top, column: column - first.left });
  if (!found) return undefined;
  const state = model.sheet(found.sheet);
  if (!state) return undefined;
  const { rows, columns } = state.used();
  const words = new Set<string>();
  for (let r = found.area.top; r <= Math.min(found.area.bottom, rows - 1); r++) {
    for (let c = found.area.left; c <= Math.min(found.area.right, columns - 1); c++) {
      const text = model.shown(state.name, r, c);
      if (text !== "") words.add(text);
      if (words.size >= MOST_WORDS) return [...words];
    }
  }
  return [...words];
}

/** Area that a source means: a range, a name for one, a column of a table. */
function resolve(
  model: Model,
  sheet: string,
  source: string,
  offset: { row: number; column: number },
  depth = 0,
): { sheet: string; area: Area } | undefined {
  const text = source
    .trim()
    .replace(/^=/, "")
    .replace(/^INDIRECT\(\s*"([^"]+)"\s*\)$/i, "$1");
  if (depth > 8 || text === "") return undefined;
  const ref = parseA1Ref(text);
  if (ref && "range" in ref) {
    const { top, left, bottom, right, $top, $left, $bottom, $right } = ref.range;
    const [down, along] = [offset.row, offset.column];
    return {
      sheet: ref.context?.[0] ?? sheet,
      area: {
        top: (top ?? 0) + (top === null || $top ? 0 : down),
        bottom: (bottom ?? (top === null ? 1_048_575 : top)) + (bottom === null || ($bottom ?? $top) ? 0 : down),
        left: (left ?? 0) + (left === null || $left ? 0 : along),
        right: (right ?? (left === null ? 16_383 : left)) + (right === null || ($right ?? $left) ? 0 : along),
      },
    };
  }
  if (ref && "name" in ref) {
    const wanted = ref.name.toLowerCase();
    const named = model
      .names()
      .filter((one) => one.name.toLowerCase() === wanted)
      .sort((a, b) => Number(b.sheet !== undefined) - Number(a.sheet !== undefined))
      .find((one) => one.sheet === undefined || one.sheet.toLowerCase() === sheet.toLowerCase());
    if (named) return resolve(model, named.sheet ?? sheet, named.formula, { row: 0, column: 0 }, depth + 1);
    return tableArea(model, ref.name, undefined);
  }
  const inTable = parseStructRef(text);
  if (inTable && "table" in inTable && inTable.table) return tableArea(model, inTable.table, inTable.columns?.[0]);
  return undefined;
}

/** The data of a table, or of one of its columns. */
function tableArea(model: Model, name: string, heading: string | undefined): { sheet: string; area: Area } | undefined {
  for (const state of model.sheets()) {
    const table = state.tables.find((one) => one.name.toLowerCase() === name.toLowerCase());
    if (!table) continue;
    const { bottom, left, right } = table.area;
    const at = heading === undefined ? -1 : table.columns.findIndex((c) => c.toLowerCase() === heading.toLowerCase());
    if (heading !== undefined && at < 0) return undefined;
    return {
      sheet: state.name,
      area: {
        top: firstRow(table),
        bottom: bottom - (table.totals ? 1 : 0),
        left: at < 0 ? left : left + at,
        right: at < 0 ? right : left + at,
      },
    };
  }
  return undefined;
}
