/** The hole that a thread or a reamer goes into: is it drilled at that place, before, and deep enough? */
import type { Difference } from "./differences.ts";
import { bottomOf, type Turned } from "./made.ts";
import type { Groups, Match } from "./match.ts";
import type { Hole } from "./shapes.ts";
import type { HoleShape, ThreadShape, ToolZero } from "./types.ts";

/** Centres that lie this close are one place [mm]. */
const SAME_PLACE = 0.1;
/** A drill this near to the hole that the row starts from is its drill, as a share. */
const SAME_DRILL = 0.15;

/**
 * Only holes of the program whose drill row has the size of the row's start are looked at, and only where one such
 * row has one hole at a place: a listing that makes everything at X0 Y0 tells nothing.
 */
export function holesUnder(
  shape: ThreadShape | HoleShape,
  match: Match,
  all: readonly Match[],
  groups: Groups,
  toolZero: ToolZero,
): Difference[] {
  const start = startOf(shape);
  const drills = all.filter(
    ({ row: { shape: other } }) =>
      other?.kind === "hole" && other.what === "drill" && Math.abs(other.diameter / start - 1) <= SAME_DRILL,
  );
  if (drills.length === 0) return [];
  const holes = drills.flatMap(({ row, group }) =>
    group.made.map((made) => ({ hole: made as Hole, through: (row.shape as HoleShape).through })),
  );
  const every = groups.holes.flatMap((group) => group.made);
  const list: Difference[] = [];
  for (const made of match.group.made.slice(0, match.number) as (Turned | Hole)[]) {
    const { line } = made;
    const { x, y, offset } = made.kind === "hole" ? made : made.runs[0]!;
    const here = (hole: Hole) => hole.offset === offset && Math.hypot(hole.x - x, hole.y - y) <= SAME_PLACE;
    const [drilled, another] = holes.filter(({ hole }) => here(hole));
    if (another !== undefined || every.filter(here).length > 4) continue;
    if (drilled === undefined) {
      // a hole of any kind there may be its own, drilled by a row of another size
      if (!every.some((hole) => here(hole) && hole !== made))
        list.push({ code: "hole", what: "none", severity: "check", line, x, y });
      continue;
    }
    const { hole, through } = drilled;
    const tip = tipOf(made, shape, toolZero);
    if (hole.line > line) list.push({ code: "hole", what: "later", severity: "stop", line, drilled: hole.line });
    else if (!through && tip < hole.bottom + 1e-3)
      list.push({ code: "hole", what: "shallow", severity: "stop", line, bottom: hole.bottom, tip });
  }
  return list;
}

/** Diameter of the hole that a row starts from; 0, which no drill is near to, where it starts from none or does not say. */
function startOf(shape: ThreadShape | HoleShape): number {
  if (shape.kind === "thread") return shape.inside ? shape.start : 0;
  return shape.what === "ream" ? shape.diameter : 0;
}

/** Lowest place that the tool's tip reaches. */
function tipOf(made: Turned | Hole, shape: ThreadShape | HoleShape, toolZero: ToolZero): number {
  if (made.kind === "hole") return made.bottom;
  const low = Math.min(...made.runs.map(bottomOf));
  return shape.kind === "thread" && toolZero === "profile" ? low - shape.tipToProfile : low;
}
