/**
 * Which rows may rough the wall of another: those above it that stand at its start diameter or carry its feature's name. Told from
 * the cells as they stand, so that nothing has to be read; whether they do, the planner finds.
 */
import { LOOK_BACK } from "../../work/planner.ts";
import type { Model } from "../model/model.ts";
import type { Site } from "../sites.ts";

type WallCells = Record<"operation" | "start" | "finish" | "feature", string>;

function wallCells(model: Model, site: Site, row: number): WallCells {
  const cells = model.sheet(site.sheet)?.cells.get(row);
  const text = (key: string) => {
    const at = site.matching.inputs.find((m) => m.column.key === key)?.at;
    return String((at === undefined ? "" : cells?.get(site.block.left + at)?.value) ?? "")
      .trim()
      .toLowerCase();
  };
  return {
    operation: text("operation"),
    start: text("startDiameter"),
    finish: text("finishDiameter"),
    feature: text("feature"),
  };
}

/** Rows above one that may rough its wall, and those that may rough theirs, from the top down. */
export function roughers(model: Model, site: Site, row: number): number[] {
  const found = new Set<number>();
  const look = (from: number) => {
    const own = wallCells(model, site, from);
    if (own.operation === "" || (own.start === "" && own.feature === "")) return;
    for (let at = from - 1; at > site.block.top && at >= from - LOOK_BACK; at--) {
      if (found.has(at)) continue;
      const { operation, finish, feature } = wallCells(model, site, at);
      if (operation !== own.operation) continue;
      if ((own.start === "" || own.start !== finish) && (own.feature === "" || own.feature !== feature)) continue;
      found.add(at);
      look(at);
    }
  };
  look(row);
  return [...found].sort((a, b) => a - b);
}

/** Rows below one whose wall it may rough. */
export const below = (site: Site, row: number): number[] =>
  Array.from({ length: Math.max(0, Math.min(site.end - row, LOOK_BACK)) }, (_, i) => row + 1 + i);
