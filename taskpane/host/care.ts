/** What a write must see before it is carried out: the same rows as were planned, and nothing of the user's lost. */
import { Asking, type Block, type Care, type CellValue, type Change, HostError, type Loss } from "./host.ts";
import { spokenAddress } from "./reference.ts";

/** Nothing at all: spaces that somebody typed are the user's, and are not written over. */
const nothing = (value: CellValue | undefined) => value === undefined || value === null || value === "";

/** Columns next to each other, gathered. */
export function spans(columns: readonly number[]): { from: number; count: number }[] {
  const made: { from: number; count: number }[] = [];
  for (const column of [...new Set(columns)].sort((a, b) => a - b)) {
    const last = made.at(-1);
    if (last && last.from + last.count === column) last.count++;
    else made.push({ from: column, count: 1 });
  }
  return made;
}

/**
 * Stops when a cell that was planned from holds something else now. `now` counts like the block, and so does `written`:
 * what the write itself has put there is no difference.
 */
export function checkSame(
  { block, columns, rows }: NonNullable<Care["same"]>,
  now: (row: number, column: number) => CellValue,
  written: (row: number, column: number) => boolean = () => false,
): void {
  for (const row of rows ?? block.rows.keys()) {
    for (const column of columns) {
      if (written(row, column)) continue;
      const was = block.rows[row]?.[column] ?? null;
      const is = now(row, column);
      if (nothing(was) ? nothing(is) : was === is) continue;
      const cell = spokenAddress(block.sheet, block.top + 1 + row, block.left + column, 1, 1).split(":")[0];
      throw new HostError("changed", `Cell ${cell} has changed since the table was read; nothing was written.`);
    }
  }
}

/** What stands in a cell that is to be written. */
export interface Standing {
  /** "=…" or "". */
  readonly formula: string;
  readonly value: CellValue;
}

/** True for a cell with nothing in it; a formula that shows nothing is something. */
export const isFree = ({ formula, value }: Standing): boolean => formula === "" && nothing(value);

const keyOf = ({ what, column, heading }: Pick<Loss, "what" | "column" | "heading">) => `${what} ${column} ${heading}`;

/** True for a place of an earlier fill that may be written over; `row` and `column` count like the block. */
export function isOver(block: Block, care: Care, row: number, column: number): boolean {
  const { over } = care;
  if (over === undefined || over.sheet !== block.sheet) return false;
  const r = block.top + 1 + row - over.top;
  const c = block.left + column - over.left;
  return r >= 0 && r <= over.rows.length && c >= 0 && c < over.headings.length;
}

/**
 * The changes that may be carried out. Throws `Asking` when one of them would replace a formula or blank a value and
 * the person has not said yes or no for its column.
 */
export function allowed(
  block: Block,
  changes: readonly Change[],
  care: Care,
  standing: (change: Change) => Standing,
): Change[] {
  const agreed = new Set((care.agreed ?? []).map(keyOf));
  const kept = new Set((care.kept ?? []).map(keyOf));
  const open = new Map<string, Loss>();
  const carried: Change[] = [];
  for (const change of changes) {
    const { column, row } = change;
    const { formula, value: there } = standing(change);
    const what = lossOf(change, formula, there, care, isOver(block, care, row, column));
    if (what === undefined) {
      carried.push(change);
      continue;
    }
    const heading = headingAt(block, care, column);
    const key = keyOf({ what, column, heading });
    if (agreed.has(key)) carried.push(change);
    else if (!kept.has(key)) open.set(key, { what, column, heading, cells: (open.get(key)?.cells ?? 0) + 1 });
  }
  if (open.size > 0) throw new Asking([...open.values()]);
  return carried;
}

function lossOf(
  { row, value }: Change,
  formula: string,
  there: CellValue,
  care: Care,
  over: boolean,
): Loss["what"] | undefined {
  if (formula !== "") {
    const same = typeof value === "object" && value !== null && value.formula === formula;
    return same || care.ours?.(formula) ? undefined : "formula";
  }
  const blanks = value === null || value === "";
  return blanks && !nothing(there) && !over && !care.filled?.has(row) ? "value" : undefined;
}

function headingAt(block: Block, { over }: Care, column: number): string {
  const own = block.headings[column];
  const beside = over && over.sheet === block.sheet ? over.headings[block.left + column - over.left] : undefined;
  return String((column < block.headings.length ? own : beside) ?? "");
}
