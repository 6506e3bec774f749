/** Differences between the helices that a program makes and the thread that the plan wants. */
import {
  compensation,
  type Difference,
  direction,
  fastest,
  passes,
  radius,
  SLACK,
  speedAndFeed,
} from "./differences.ts";
import { bottomOf, isHelix, riseOf, type Turned } from "./made.ts";
import type { Round } from "./shapes.ts";
import type { RowFacts, ThreadShape, ToolZero } from "./types.ts";

export function compareThread(row: RowFacts, shape: ThreadShape, made: Turned, toolZero: ToolZero): Difference[] {
  // runs whose Z is not known are none
  const helices = made.runs.filter(isHelix);
  const final = shape.inside ? made.most : made.least;
  const main = helices.find((run) => Math.abs(run.radius - final) < 0.02) ?? helices[0]!;
  const { line } = main;
  const list: Difference[] = [];
  const up = main.z1 > main.z0;
  const hand = up === (main.turn === 1) ? "right" : "left";
  if (hand !== shape.hand) list.push({ code: "hand", severity: "stop", line, found: hand, wanted: shape.hand });
  else list.push(...direction(shape, main));
  list.push(...pitch(shape, helices));
  const { list: sides, contour } = compensation(row, shape, main);
  list.push(...sides, ...radius(shape, main, contour));
  const levels = levelCount(helices, shape.pitch);
  const radii = shape.full ? distinct(helices) : helices.map((run) => run.radius);
  list.push(...passes(shape, radii, Math.ceil(helices.length / levels), contour, line));
  list.push(...threadDepth(shape, helices, levels, toolZero));
  list.push(...speedAndFeed(row, fastest(helices), contour));
  return list;
}

const distinct = (runs: readonly Round[]) =>
  runs.map((run) => run.radius).filter((r, n, all) => all.findIndex((o) => Math.abs(o - r) < 0.002) === n);

function levelCount(helices: readonly Round[], pitch: number): number {
  const lows: number[] = [];
  for (const run of helices) if (!lows.some((z) => Math.abs(z - bottomOf(run)) < pitch / 2)) lows.push(bottomOf(run));
  return lows.length;
}

function pitch(shape: ThreadShape, helices: readonly Round[]): Difference[] {
  for (const run of helices) {
    const found = Math.abs(riseOf(run));
    const turns = run.degrees / 360;
    if (Math.abs(found - shape.pitch) > SLACK.pitch * shape.pitch + 0.006 / turns)
      return [{ code: "pitch", what: "turn", severity: "stop", line: run.line, found, wanted: shape.pitch }];
    if (run.uneven > Math.max(SLACK.uneven[0] * shape.pitch, SLACK.uneven[1]))
      return [
        { code: "pitch", what: "uneven", severity: "stop", line: run.unevenLine, off: run.uneven, wanted: shape.pitch },
      ];
  }
  return [];
}

function threadDepth(shape: ThreadShape, helices: readonly Round[], levels: number, toolZero: ToolZero): Difference[] {
  const lower = toolZero === "tip" ? shape.tipToProfile : 0;
  const run = helices.reduce((a, b) => (bottomOf(b) < bottomOf(a) ? b : a));
  const { line } = run;
  const low = bottomOf(run) + lower;
  const wanted = Math.min(shape.startZ, shape.endZ);
  const error = low - wanted;
  const slack = SLACK.ends * shape.pitch;
  const fromTip = (distance: number) => Math.abs(distance - shape.tipToProfile) < 0.02;
  const otherZero = fromTip(Math.abs(error));
  const told = { line, found: low - lower, wanted: wanted - lower, otherZero };
  const list: Difference[] = [];
  const tip = low - shape.tipToProfile;
  const floor =
    shape.inside && !shape.through ? -(shape.holeDepth ?? Number.POSITIVE_INFINITY) : Number.NEGATIVE_INFINITY;
  if (error < -slack && tip < floor - 1e-6)
    list.push({
      code: "depth",
      what: "bottom",
      severity: "stop",
      line,
      found: tip,
      wanted: floor,
      otherZero,
    });
  else if (error < -slack) list.push({ code: "depth", what: "deep", severity: "check", ...told });
  else if (error > slack)
    list.push({ code: "depth", what: "shallow", severity: error >= shape.pitch ? "stop" : "check", ...told });
  const least = Math.min(...helices.map((r) => r.degrees));
  if (least < 355) list.push({ code: "depth", what: "turn", severity: "stop", line, found: least, wanted: 360 });
  if (shape.full) {
    if (levels < shape.levels.length)
      list.push({ code: "depth", what: "levels", severity: "stop", line, found: levels, wanted: shape.levels.length });
    return list;
  }
  // the profile must come out at the face, or the first turns are missing
  const high = Math.min(...helices.map((r) => Math.max(r.z0, r.z1))) + lower;
  const top = Math.max(shape.startZ, shape.endZ);
  if (high < -0.1 * shape.pitch && error <= slack)
    list.push({
      code: "depth",
      what: "top",
      severity: -high > shape.pitch ? "stop" : "check",
      line,
      found: high - lower,
      wanted: top - lower,
      otherZero: fromTip(top - high),
    });
  return list;
}
