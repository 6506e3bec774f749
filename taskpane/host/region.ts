/** Finding the planning table on a sheet: pure, the same for every host. */
import { isBlank as blank } from "../../src/table/blank.ts";
import type { Beside, Block, BookRead, CellValue, Host, Table, Wanted } from "./host.ts";
import { reference, spokenAddress, withRanges } from "./reference.ts";

export interface Selection {
  readonly row: number;
  readonly column: number;
}

/** Runs of headings in a row: neighbouring text cells; one cell without a heading is bridged when there is data below it. */
function runs(grid: readonly (readonly CellValue[])[], row: number): { left: number; right: number }[] {
  const line = grid[row]!;
  const found: { left: number; right: number }[] = [];
  let left = -1;
  for (let c = 0; c <= line.length; c++) {
    const isHeading = !blank(line[c]) && typeof line[c] !== "boolean";
    if (isHeading) {
      if (left < 0) left = c;
      continue;
    }
    const bridge = left >= 0 && !blank(line[c + 1]) && (!blank(grid[row + 1]?.[c]) || !blank(grid[row + 2]?.[c]));
    if (bridge) continue;
    if (left >= 0 && c - left >= 2) found.push({ left, right: c - 1 });
    left = -1;
  }
  return found;
}

/** True for a run whose cells are text more often than not: rows of numbers are not asked whether they are headings. */
function isMostlyText(cells: readonly CellValue[], left: number, right: number): boolean {
  let balance = 0;
  for (let c = left; c <= right; c++) {
    const cell = cells[c];
    if (typeof cell === "string") balance += cell === "" ? 0 : 1;
    else if (cell !== null && cell !== undefined) balance -= 1;
  }
  return balance >= 0;
}

type Score = (headings: readonly CellValue[]) => number;
type Line = readonly CellValue[];

/** A row of headings: where, how much it looks like one, and the last row below it. */
export interface Head {
  readonly row: number;
  readonly left: number;
  readonly right: number;
  readonly score: number;
  end: number;
}

interface Run {
  readonly left: number;
  readonly right: number;
  readonly score: number;
}
/** Runs of a row that score, as long as the two rows below it are the same, which say where a gap is bridged. */
interface Looked {
  readonly below: readonly [Line | undefined, Line | undefined];
  readonly runs: readonly Run[];
}
/** Rows that were looked at before. */
const scored = new WeakMap<Score, WeakMap<Line, Looked>>();
/** Heads of grids that were looked through before. */
const looked = new WeakMap<Score, WeakMap<readonly Line[], readonly Head[]>>();

function keptOf<K extends object, V>(map: WeakMap<K, V>, key: K, make: () => V): V {
  const known = map.get(key);
  if (known !== undefined) return known;
  const made = make();
  map.set(key, made);
  return made;
}

function runsThatScore(grid: readonly Line[], row: number, score: Score): readonly Run[] {
  const line = grid[row]!;
  if (!hasTwoTexts(line)) return [];
  return runs(grid, row).flatMap(({ left, right }) => {
    if (!isMostlyText(line, left, right)) return [];
    const points = score(line.slice(left, right + 1));
    return points > 0 ? [{ left, right, score: points }] : [];
  });
}

/** Every run of headings of a grid that scores, with the last row of the table below it. */
export function findHeads(grid: readonly Line[], score: Score): readonly Head[] {
  const known = keptOf(scored, score, () => new WeakMap());
  const heads: Head[] = [];
  for (let row = 0; row < grid.length; row++) {
    const line = grid[row]!;
    const below = [grid[row + 1], grid[row + 2]] as const;
    let found = known.get(line);
    if (found === undefined || found.below[0] !== below[0] || found.below[1] !== below[1]) {
      found = { below, runs: runsThatScore(grid, row, score) };
      known.set(line, found);
    }
    for (const run of found.runs) heads.push({ row, ...run, end: row });
  }
  for (const head of heads) {
    let gap = 0;
    for (let row = head.row + 1; row < grid.length && gap < 2; row++) {
      if (heads.some((other) => other.row === row && other.left <= head.right && other.right >= head.left)) break;
      if (isBlankBetween(grid[row]!, head.left, head.right)) gap++;
      else {
        gap = 0;
        head.end = row;
      }
    }
  }
  return heads;
}

function hasTwoTexts(line: Line): boolean {
  let texts = 0;
  for (const cell of line) if (typeof cell === "string" && cell.trim() !== "" && ++texts === 2) return true;
  return false;
}

function isBlankBetween(line: Line, left: number, right: number): boolean {
  for (let c = left; c <= right; c++) if (!blank(line[c])) return false;
  return true;
}

/**
 * The planning table of a sheet, or null. Headings are looked for in every row; a table runs down over single blank
 * rows until two blank rows in a row, the next headings, or the end.
 *
 * @param grid - the sheet's cells from A1, rows of equal length. Neither it nor a row of it changes afterwards: what was
 *   found in them is kept
 * @param score - how much cells look like headings of a planning table; 0 is not at all. The same cells score the same
 */
export function findTable(
  sheet: string,
  grid: readonly Line[],
  selection: Selection | null,
  score: Score,
): Table | null {
  const heads = keptOf(
    keptOf(looked, score, () => new WeakMap()),
    grid,
    () => findHeads(grid, score),
  );
  const rank = (head: Head): number => {
    if (selection === null) return 0;
    const inRows = selection.row >= head.row && selection.row <= head.end + 1;
    const inColumns = selection.column >= head.left && selection.column <= head.right;
    return inRows && inColumns ? 2 : inRows ? 1 : 0;
  };
  const best = [...heads].sort((a, b) => rank(b) - rank(a) || b.score - a.score || a.row - b.row || a.left - b.left)[0];
  if (best === undefined) return null;
  const { row: top, left, right, end } = best;
  const columns = right - left + 1;
  const rows = grid
    .slice(top + 1, end + 1)
    .map((line) => (left === 0 && columns === line.length ? line : line.slice(left, right + 1)));
  const selected = selection === null ? -1 : selection.row - top - 1;
  return {
    sheet,
    top,
    left,
    headings: grid[top]!.slice(left, right + 1),
    rows,
    reference: reference(sheet, top, left, rows.length + 1, columns),
    address: spokenAddress(sheet, top, left, rows.length + 1, columns),
    selected: selected >= 0 && selected < rows.length ? selected : null,
  };
}

/** The first block with headings on a sheet, as lists are kept: one heading row, rows below. */
export function firstBlock(sheet: string, grid: readonly (readonly CellValue[])[]): Block | null {
  let seen = false;
  const found = findTable(sheet, grid, null, () => {
    const first = !seen;
    seen = true;
    return first ? 1 : 0;
  });
  if (found === null) return null;
  const { selected: _, ...block } = found;
  return block;
}

/** A formula beside the table that shows no headings, such as one without room. */
function besideFormula(sheet: string, { row, column }: Selection, formula: string): Beside {
  const place = [sheet, row, column, 1, 1] as const;
  const block = { sheet, top: row, left: column, headings: [null], rows: [] };
  return { ...block, reference: reference(...place), address: spokenAddress(...place), formula };
}

/** Reads what is wanted through a host that has the workbook at hand; `formulaAt` answers "=…" or "". */
export async function readAtHand(
  host: Pick<Host, "readTable" | "readList"> & {
    settings(): Readonly<Record<string, string>>;
    line(): readonly CellValue[];
  },
  wanted: Wanted,
  sheet: string,
  formulaAt: (sheet: string, row: number, column: number) => string,
): Promise<BookRead> {
  const table = wanted.table && (await host.readTable(wanted.table));
  const found = table && wanted.beside ? await host.readTable(wanted.beside) : null;
  const isBeside =
    found !== null &&
    found.sheet === table!.sheet &&
    found.top === table!.top &&
    found.left === table!.left + table!.headings.length + 1;
  const at = table && { row: table.top, column: table.left + table.headings.length + 1 };
  const formula = at ? formulaAt(table.sheet, at.row, at.column) : "";
  const lists = wanted.lists && (await Promise.all(wanted.lists.map((name) => host.readList(name))));
  return {
    ...(wanted.table && { sheet, table, whole: false }),
    ...(wanted.beside && {
      beside: isBeside ? { ...found, formula } : at && formula !== "" ? besideFormula(table.sheet, at, formula) : null,
    }),
    ...(lists && { lists }),
    ...(wanted.settings && { settings: host.settings() }),
    ...(wanted.line && { line: host.line() }),
  };
}

/** A formula in the heading row that has to reach further down, and the cells it will fill that it did not before. */
export interface Growth {
  readonly column: number;
  readonly formula: string;
  /** Rows and columns of the sheet that have to be free for it. */
  readonly from: number;
  readonly rows: number;
  readonly columns: number;
}

/**
 * Formulas that stand in the heading row of a table and run over its rows (a live block, and what repeats a column of
 * one), made long enough for rows that are added. The spare rows that they had below the table, they keep.
 *
 * @param head - the heading row of the sheet from column 0: formulas ("" for none) and values
 * @param oldEnd - last row of the table that holds something, from 0
 * @param newEnd - the same when the rows are there
 */
export function growths(
  head: readonly { readonly formula: string; readonly value: CellValue }[],
  block: Block,
  oldEnd: number,
  newEnd: number,
): Growth[] {
  const made: Growth[] = [];
  const areas = [{ left: block.left, right: block.left + block.headings.length - 1 }];
  const longer = (formula: string): { formula: string; from: number; to: number } => {
    let from = newEnd;
    let to = newEnd;
    const text = withRanges(formula, block.sheet, (range) => {
      if (range.top !== block.top || range.bottom <= range.top || range.bottom >= newEnd) return undefined;
      if (!areas.some((area) => range.left <= area.right && range.right >= area.left)) return undefined;
      from = Math.min(from, range.bottom + 1);
      // Spare rows that the formula had below the table, it keeps.
      const bottom = newEnd + Math.max(0, range.bottom - oldEnd);
      to = Math.max(to, bottom + 1);
      return { ...range, bottom };
    });
    return { formula: text, from, to };
  };
  for (let again = true; again; ) {
    again = false;
    head.forEach(({ formula }, column) => {
      // Where a host repeats a formula in the cells it fills, the first of them is the one.
      if (!formula.startsWith("=") || formula === head[column - 1]?.formula) return;
      if (column >= block.left && column < block.left + block.headings.length) return;
      if (made.some((one) => one.column === column)) return;
      const next = longer(formula);
      if (next.formula === formula) return;
      let end = column;
      while (!blank(head[end + 1]?.value)) end++;
      const columns = end - column + 1;
      made.push({ column, formula: next.formula, from: next.from, rows: next.to - next.from, columns });
      areas.push({ left: column, right: end });
      again = true;
    });
  }
  return made;
}
