/**
 * Which formulas hang on a cell. Formulas that say the same relative to their own cells are one group, and what a group
 * reads is kept once, as distances: from a changed cell it is worked out backwards which cells of the group read it.
 */
import { type Area, LAST_COLUMN, LAST_ROW } from "../model/types.ts";
import type { Compiled } from "./compile.ts";
import { type Edge, edgeAt, type Reads } from "./reads.ts";

/** Formulas of one key on one sheet. */
export interface Group {
  readonly sheet: number;
  readonly compiled: Compiled | undefined;
  /** A formula of the old kind: of a range it takes the cell in its own line. */
  readonly single: boolean;
  /** column → rows. */
  readonly cells: Map<number, Set<number>>;
}

/** Columns that are kept one by one; what is wider is asked for every cell. */
const NARROW = 64;

interface Entry {
  readonly group: Group;
  readonly reads: Reads;
  /** All that the group's cells can read by this reference. */
  bounds: Area;
}

export class Dependents {
  /** sheet → column → references that can reach it. */
  private readonly columns = new Map<number, Map<number, Entry[]>>();
  private readonly wide = new Map<number, Entry[]>();

  constructor(groups: Iterable<Group>) {
    for (const group of groups) this.add(group);
  }

  private add(group: Group): void {
    if (group.compiled === undefined || group.cells.size === 0) return;
    const rows = [...group.cells.values()];
    let [top, bottom] = [LAST_ROW, 0];
    for (const set of rows)
      for (const row of set) {
        if (row < top) top = row;
        if (row > bottom) bottom = row;
      }
    const own = [...group.cells.keys()];
    const left = Math.min(...own);
    const right = Math.max(...own);
    for (const reads of group.compiled.reads) {
      const bounds = {
        top: Math.min(edgeAt(reads.top, top), edgeAt(reads.bottom, top)),
        bottom: Math.max(edgeAt(reads.bottom, bottom), edgeAt(reads.top, bottom)),
        left: Math.min(edgeAt(reads.left, left), edgeAt(reads.right, left)),
        right: Math.max(edgeAt(reads.right, right), edgeAt(reads.left, right)),
      };
      const entry = { group, reads, bounds };
      if (bounds.right - bounds.left >= NARROW) this.push(this.wide, reads.sheet, entry);
      else {
        const byColumn = this.columns.get(reads.sheet) ?? new Map<number, Entry[]>();
        this.columns.set(reads.sheet, byColumn);
        for (let c = Math.max(0, bounds.left); c <= Math.min(LAST_COLUMN, bounds.right); c++)
          this.push(byColumn, c, entry);
      }
    }
  }

  private push(map: Map<number, Entry[]>, key: number, entry: Entry): void {
    const list = map.get(key);
    if (list) list.push(entry);
    else map.set(key, [entry]);
  }

  /** Calls back for each formula cell that reads the cell. */
  of(sheet: number, row: number, column: number, seen: (group: Group, row: number, column: number) => void): void {
    this.among(this.columns.get(sheet)?.get(column), row, column, seen);
    this.among(this.wide.get(sheet), row, column, seen);
  }

  private among(
    entries: readonly Entry[] | undefined,
    row: number,
    column: number,
    seen: (group: Group, row: number, column: number) => void,
  ): void {
    if (entries === undefined) return;
    for (const { group, reads, bounds } of entries) {
      if (row < bounds.top || row > bounds.bottom || column < bounds.left || column > bounds.right) continue;
      const [fromRow, toRow] = within(reads.top, reads.bottom, row, LAST_ROW);
      const [fromColumn, toColumn] = within(reads.left, reads.right, column, LAST_COLUMN);
      if (fromRow > toRow || fromColumn > toColumn) continue;
      for (const [c, rows] of group.cells) {
        if (c < fromColumn || c > toColumn) continue;
        if (toRow - fromRow < rows.size) {
          for (let r = fromRow; r <= toRow; r++) if (rows.has(r)) seen(group, r, c);
        } else for (const r of rows) if (r >= fromRow && r <= toRow) seen(group, r, c);
      }
    }
  }
}

/** Lines from which a reference from `low` to `high` covers line `at`. */
function within(low: Edge, high: Edge, at: number, last: number): [number, number] {
  // An end that moves and one that does not may change places: then every line is asked.
  if (low.fixed !== high.fixed) {
    const [fixed, moving] = low.fixed ? [low.at, high.at] : [high.at, low.at];
    return at >= fixed ? [Math.max(0, at - moving), last] : [0, Math.min(last, at - moving)];
  }
  if (low.fixed) return at >= Math.min(low.at, high.at) && at <= Math.max(low.at, high.at) ? [0, last] : [1, 0];
  const [a, b] = low.at <= high.at ? [low.at, high.at] : [high.at, low.at];
  return [Math.max(0, at - b), Math.min(last, at - a)];
}
