/** Where a sheet's rows stand after rows came and went. Pure. */
import { type Area, LAST_ROW } from "../model/types.ts";
import { movedSpan, type RowMove } from "./references.ts";

/** Rows next to each other that came from next to each other, or that are new. */
export interface Run {
  /** First row as it is now. */
  readonly row: number;
  readonly count: number;
  /** First row in the file; absent for new rows. */
  readonly from?: number;
  /** For new rows: the file's row whose look they take. */
  readonly look?: number;
}

/** A sheet's rows as they are now, in order. */
export class Rows {
  #runs: Run[] = [{ row: 0, count: LAST_ROW + 1, from: 0 }];

  get runs(): readonly Run[] {
    return this.#runs;
  }

  /** The file's row whose look a row has now. */
  lookAt(row: number): number | undefined {
    const run = this.#runs.find((r) => row >= r.row && row < r.row + r.count);
    if (!run) return undefined;
    return run.from === undefined ? run.look : run.from + row - run.row;
  }

  /** @param lookRow - row, before the insertion, whose look new rows take */
  insert(row: number, count: number, lookRow: number): void {
    const look = lookRow < 0 ? undefined : this.lookAt(lookRow);
    this.#place(row, 0, [{ row: 0, count, ...(look === undefined ? {} : { look }) }]);
  }

  delete(row: number, count: number): void {
    this.#place(row, count, []);
  }

  #place(row: number, drop: number, put: readonly Run[]): void {
    const before: Run[] = [];
    const after: Run[] = [];
    for (const run of this.#runs) {
      const head = Math.min(run.count, Math.max(0, row - run.row));
      const skip = Math.min(run.count, Math.max(0, row + drop - run.row));
      const cut = (at: number, count: number): Run => ({
        ...run,
        count,
        ...(run.from === undefined ? {} : { from: run.from + at }),
      });
      if (head > 0) before.push(cut(0, head));
      if (run.count - skip > 0) after.push(cut(skip, run.count - skip));
    }
    let at = 0;
    this.#runs = [...before, ...put, ...after].flatMap((run) => {
      const here = { ...run, row: at, count: Math.min(run.count, LAST_ROW + 1 - at) };
      at += here.count;
      return here.count > 0 ? [here] : [];
    });
  }
}

/** An area after moves of its sheet; `undefined` when nothing of it is left. */
export function movedArea(area: Area, moves: readonly RowMove[]): Area | undefined {
  let now: Area | undefined = area;
  for (const move of moves) {
    const span: readonly [number, number] | undefined = now && movedSpan(now.top, now.bottom, move);
    now = now && span ? { ...now, top: span[0], bottom: span[1] } : undefined;
  }
  return now;
}

/** A row after moves of its sheet; `undefined` when it went. */
export function movedRow(row: number, moves: readonly RowMove[]): number | undefined {
  let now = row;
  for (const { kind, row: at, count } of moves) {
    if (kind === "insert") {
      if (now >= at) now += count;
    } else if (now >= at + count) now -= count;
    else if (now >= at) return undefined;
  }
  return now > LAST_ROW ? undefined : now;
}
