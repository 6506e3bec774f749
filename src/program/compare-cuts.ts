/** Differences between holes and straight cuts that a program makes and those that the plan wants. */
import { wallDepth } from "./compare-wall.ts";
import { type Difference, speedAndFeed } from "./differences.ts";
import type { Cuts } from "./made.ts";
import type { Hole } from "./shapes.ts";
import type { HoleShape, LineShape, RowFacts } from "./types.ts";

/** Depth of holes: length of the point is often rounded [mm, share of the diameter]. */
const HOLE_SLACK = [0.05, 0.02] as const;
/** Way out of a through hole beyond the plan's that nobody minds [mm, share of the diameter]. */
const OUT_SLACK = [3, 0.5] as const;

export function compareHole(row: RowFacts, shape: HoleShape, made: Hole): Difference[] {
  const { line } = made;
  const tapping = shape.what === "tap";
  const list: Difference[] = [...holeDepth(shape, made)];
  if (tapping) list.push(...tap(row, shape, made));
  const speeds = speedAndFeed(row, { ...made, spindle: tapping && made.spindle !== 0 ? 1 : made.spindle });
  // a tap's feed is its pitch, which is told as such
  const pitched = list.some((d) => d.code === "pitch");
  list.push(...speeds.filter((d) => !(pitched && d.code === "feed")));
  const pecks = shape.bottoms.length;
  if (shape.what === "drill" && pecks > 1 && made.strokes < 2)
    list.push({ code: "passes", what: "pecks", severity: "check", line, found: made.strokes, wanted: pecks });
  return list;
}

function tap(row: RowFacts, shape: HoleShape, made: Hole): Difference[] {
  const { line } = made;
  const list: Difference[] = [];
  const hand = made.cycle === 74 || (made.cycle === 0 && made.spindle === -1) ? "left" : "right";
  if (hand !== shape.hand) list.push({ code: "hand", severity: "stop", line, found: hand, wanted: shape.hand });
  if (!(made.feed > 0 && made.rpm > 0)) return list;
  // not known, and so nothing to differ from, where the row lacks one of them
  const wanted = (row.feed ?? Number.NaN) / (row.rpm ?? Number.NaN);
  const found = made.feed / made.rpm;
  // feeds are written with few figures: half a percent
  if (Math.abs(found / wanted - 1) > 0.006)
    list.push({ code: "pitch", what: "tap", severity: "stop", line, found, wanted });
  return list;
}

function holeDepth(shape: HoleShape, made: Hole): Difference[] {
  const { line, bottom } = made;
  if (Number.isNaN(bottom)) return [{ code: "depth", what: "unknown", severity: "check", line }];
  const wanted = shape.bottoms[shape.bottoms.length - 1]!;
  const slack = HOLE_SLACK[0] + HOLE_SLACK[1] * shape.diameter;
  const error = bottom - wanted;
  if (shape.through) {
    const out = -(shape.depth + shape.point);
    if (bottom > out + slack)
      return [{ code: "depth", what: "not-through", severity: "stop", line, found: bottom, wanted: out }];
    if (-error > Math.max(OUT_SLACK[0], OUT_SLACK[1] * shape.diameter))
      return [{ code: "depth", what: "deep", severity: "check", line, found: bottom, wanted }];
    return [];
  }
  if (Math.abs(error) <= slack) return [];
  if (shape.point > 2 * slack && Math.abs(bottom + shape.depth) <= slack)
    return [{ code: "depth", what: "no-point", severity: "check", line, found: bottom, wanted }];
  const severity = Math.abs(error) > 0.5 + 0.25 * shape.diameter ? "stop" : "check";
  return [{ code: "depth", what: error > 0 ? "shallow" : "deep", severity, line, found: bottom, wanted }];
}

export function compareLine(row: RowFacts, shape: LineShape, made: Cuts): Difference[] {
  const deepest = made.runs.reduce((a, b) => (b.z < a.z ? b : a));
  const fastest = made.runs.reduce((a, b) => (b.feed > a.feed ? b : a));
  const { line } = deepest;
  const list: Difference[] = [...wallDepth(made.bottom, shape.depth, line), ...speedAndFeed(row, fastest)];
  if (shape.what === "side" && deepest.compensation !== 0) {
    const wanted = shape.climb ? 41 : 42;
    if (deepest.compensation !== wanted)
      list.push({
        code: "compensation",
        what: "side",
        severity: "stop",
        line,
        found: deepest.compensation,
        wanted,
      });
  }
  const wanted = shape.offsets.length * shape.levels;
  const cuts = wanted - shape.springs * shape.levels;
  const found = made.runs.length;
  if (found < cuts) list.push({ code: "passes", what: "cuts", severity: "stop", line, found, wanted: cuts });
  else if (found < wanted)
    list.push({ code: "passes", what: "springs", severity: "check", line, found: found - cuts, wanted: wanted - cuts });
  return list;
}
