/**
 * Which rows may rough the wall of another: those above it that stand at its start diameter or carry its feature's name. Told from
 * the cells as they stand, so that nothing has to be read; whether they do, the planner finds.
 */
import { LOOK_BACK } from "../../work/planner.ts";
import type { Model } from "../model/model.ts";
import type { Site } from "../sites.ts";

type WallCells = Record<"operation" | "start" | "finish" | "feature" | "radial", string>;

const KEYS = {
  operation: "operation",
  start: "startDiameter",
  finish: "finishDiameter",
  feature: "feature",
  radial: "radialDepth",
} as const;

/** Cells of a table that tell which row roughs which wall, each read once. */
function wallReader(model: Model, site: Site): (row: number) => WallCells {
  const cells = model.sheet(site.sheet)?.cells;
  const columns = Object.entries(KEYS).map(
    ([name, key]) => [name, site.matching.inputs.find((m) => m.column.key === key)?.at] as const,
  );
  const known = new Map<number, WallCells>();
  return (row) => {
    let found = known.get(row);
    if (found === undefined) {
      const line = cells?.get(row);
      const text = (at: number | undefined) =>
        String((at === undefined ? "" : line?.get(site.block.left + at)?.value) ?? "")
          .trim()
          .toLowerCase();
      found = Object.fromEntries(columns.map(([name, at]) => [name, text(at)])) as WallCells;
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

/** Rows below one whose wall it may rough. */
export const below = (site: Site, row: number): number[] =>
  Array.from({ length: Math.max(0, Math.min(site.end - row, LOOK_BACK)) }, (_, i) => row + 1 + i);
