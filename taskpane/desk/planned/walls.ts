/**
 * Which rows may rough the wall of another: those above it that stand at its start diameter or carry its feature's name. Told from
 * the cells as they stand, so that nothing has to be read; whether they do, the planner finds.
 */
import { LOOK_BACK } from "../../work/planner.ts";
import type { Model } from "../model/model.ts";
import type { Site } from "../sites.ts";

interface WallCells {
  readonly operation: string;
  readonly start: string;
  readonly finish: string;
  readonly feature: string;
  readonly radial: string;
}

/** Cells of a table that tell which row roughs which wall, each read once. */
function wallReader(model: Model, site: Site): (row: number) => WallCells {
  const cells = model.sheet(site.sheet)?.cells;
  const columnOf = (key: string) => {
    const at = site.matching.inputs.find((m) => m.column.key === key)?.at;
    return at === undefined ? -1 : site.block.left + at;
  };
  const [operation, start, finish] = ["operation", "startDiameter", "finishDiameter"].map(columnOf);
  const [feature, radial] = ["feature", "radialDepth"].map(columnOf);
  const known = new Map<number, WallCells>();
  return (row) => {
    let found = known.get(row);
    if (found === undefined) {
      const line = cells?.get(row);
      const text = (column: number | undefined) => {
        const value = line?.get(column!)?.value ?? "";
        return value === "" ? "" : String(value).trim().toLowerCase();
      };
      found = {
        operation: text(operation),
        start: text(start),
        finish: text(finish),
        feature: text(feature),
        radial: text(radial),
      };
      known.set(row, found);
    }
    return found;
  };
}

/** For the rows of a table: those above one that may rough its wall, and those that may rough theirs, from the top down. */
export function roughersIn(model: Model, site: Site): (row: number) => number[] {
  const read = wallReader(model, site);
  return (row) => {
    const found = new Set<number>();
    const look = (from: number) => {
      const own = read(from);
      if (own.operation === "" || (own.start === "" && own.feature === "")) return;
      for (let at = from - 1; at > site.block.top && at >= from - LOOK_BACK; at--) {
        if (found.has(at)) continue;
        const { operation, finish, feature, radial } = read(at);
        if (operation !== own.operation) continue;
        // A row that roughs a side wall says how thick a cut it takes.
        const roughsSide = own.feature !== "" && own.feature === feature && radial !== "";
        if ((own.start === "" || own.start !== finish) && !roughsSide) continue;
        found.add(at);
        look(at);
      }
    };
    look(row);
    return [...found].sort((a, b) => a - b);
  };
}

/** Rows below some whose wall they may rough. */
export function below(site: Site, rows: Iterable<number>): Set<number> {
  const found = new Set<number>();
  for (const row of rows) for (let at = row + 1; at <= Math.min(site.end, row + LOOK_BACK); at++) found.add(at);
  return found;
}
