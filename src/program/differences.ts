/** What is looked at in turns of any kind: speed, feed, way round, compensation, radius, passes. */
import type { Finding } from "./findings.ts";
import { contourOf, finalRadius } from "./match.ts";
import type { Round } from "./shapes.ts";
import type { ArcShape, RoundShape, RowFacts, ThreadShape } from "./types.ts";

type Bare<F> = F extends unknown ? Omit<F, "row" | "count"> : never;
export type Difference = Bare<Finding>;

/** What is not looked at: rounding of a program's numbers, habits that do no harm. Judgement. */
export const SLACK = {
  /** Path radius: three increments of a metric, one and a half of an inch program [mm]. */
  radius: 0.004,
  /** Pitch, as a share; and how uneven a turn may be, as a share and in mm. */
  pitch: 0.004,
  uneven: [0.05, 0.03],
  /** Ends of a thread, in pitches: half circles in and out may rise more or less. */
  ends: 0.3,
  /** Depth of walls and straight cuts [mm]. */
  depth: 0.03,
  /** Speed and feed, as a share. */
  speed: 0.03,
  feed: 0.05,
  /** Feed that is the edge's and not the centre's is told apart by this share. */
  edge: 0.03,
  /** A step between passes over the plan's largest, as a share and in mm. */
  step: [0.25, 0.02],
} as const;
/** Feed over the plan's by this factor breaks tools rather than wears them (judgement). */
const FEED_STOP = 1.5;

/** Speed, feed and the sense of the spindle of any cut. */
export function speedAndFeed(row: RowFacts, cut: Round | SpeedAndFeed, contour = false): Difference[] {
  const { rpm, feed, edgeFeed, mostRpm } = row;
  const { line } = cut;
  const list: Difference[] = [];
  if (rpm !== undefined) {
    if (cut.spindle === 0) list.push({ code: "speed", what: "stopped", severity: "stop", line, wanted: rpm });
    else if (mostRpm !== undefined && cut.rpm > mostRpm.value * 1.0005 + 0.5)
      list.push({
        code: "speed",
        what: "over",
        severity: "stop",
        line,
        found: cut.rpm,
        wanted: rpm,
        most: mostRpm.value,
        of: mostRpm.of,
      });
    else if (Math.abs(cut.rpm - rpm) > Math.max(SLACK.speed * rpm, 1))
      list.push({ code: "speed", what: "value", severity: "check", line, found: cut.rpm, wanted: rpm });
  }
  if (cut.spindle === -1) list.push({ code: "direction", what: "spindle", severity: "stop", line });
  if (feed === undefined) return list;
  if (Number.isNaN(cut.feed)) {
    list.push({ code: "feed", what: "none", severity: "check", line, wanted: feed });
    return list;
  }
  const near = (a: number, b: number) => Math.abs(a / b - 1) <= SLACK.edge;
  const found = cut.feed;
  if (Math.abs(found / feed - 1) <= SLACK.feed) return list;
  // nothing is near to the feed of an edge that has none of its own
  const edge = edgeFeed ?? Number.NaN;
  const ratio = edge / feed;
  if (near(found, edge))
    list.push({
      code: "edge-feed",
      what: contour ? "contour" : "edge",
      severity: contour || ratio < 1 ? "check" : "stop",
      line,
      found,
      wanted: feed,
      edge,
    });
  else if (near(found, feed / ratio))
    list.push({
      code: "edge-feed",
      what: "twice",
      severity: ratio < 1 / FEED_STOP ? "stop" : "check",
      line,
      found,
      wanted: feed,
      edge,
    });
  else
    list.push({
      code: "feed",
      what: "value",
      severity: found > FEED_STOP * feed ? "stop" : "check",
      line,
      found,
      wanted: feed,
    });
  return list;
}

interface SpeedAndFeed {
  readonly line: number;
  readonly rpm: number;
  readonly feed: number;
  readonly spindle: number;
}

/** Which way round the wall the cutter goes: climb has the wall on the right of the travel (spindle M3). */
const climbs = (inside: boolean, turn: 1 | -1) => inside === (turn === 1);

/** Compensation as far as a program uses it. `contour`: the path is the finished contour and not the centre's. */
export function compensation(
  row: RowFacts,
  shape: { inside: boolean; cutter: number; radii: readonly number[] },
  run: Round,
): { list: Difference[]; contour: boolean } {
  const { line } = run;
  const list: Difference[] = [];
  const centre = finalRadius(shape);
  const nearEdge = Math.abs(run.radius - contourOf(centre, shape)) < Math.abs(run.radius - centre);
  const on = run.compensation !== 0;
  if (on) {
    const wanted = climbs(shape.inside, run.turn) ? 41 : 42;
    if (run.compensation !== wanted)
      list.push({
        code: "compensation",
        what: "side",
        severity: "stop",
        line,
        found: run.compensation,
        wanted,
      });
  } else if (atContour(shape, run))
    list.push({ code: "compensation", what: "contour-off", severity: "stop", line, found: run.radius, wanted: centre });
  else if (row.wearValue !== undefined && row.wearValue !== 0)
    list.push({ code: "compensation", what: "wear-unused", severity: "check", line, wear: row.wearValue });
  if (run.switched) list.push({ code: "compensation", what: "switched", severity: "check", line });
  return { list, contour: on && nearEdge };
}

/** Without compensation, and within a tenth of the cutter at the finished contour. */
const atContour = (shape: { inside: boolean; cutter: number; radii: readonly number[] }, run: Round) =>
  run.compensation === 0 && Math.abs(run.radius - contourOf(finalRadius(shape), shape)) < 0.1 * shape.cutter;

export function radius(shape: ThreadShape | RoundShape | ArcShape, run: Round, contour: boolean): Difference[] {
  const centre = finalRadius(shape);
  const wanted = contour ? contourOf(centre, shape) : centre;
  const error = run.radius - wanted;
  if (Math.abs(error) <= SLACK.radius) return [];
  // the path without compensation at the contour is told as such
  if (atContour(shape, run)) return [];
  const change = 2 * error;
  const half = shape.kind === "thread" ? shape.limits && (shape.limits[1] - shape.limits[0]) / 2 : shape.tolerance;
  const within = half === undefined ? undefined : Math.abs(change) <= half;
  return [
    {
      code: "radius",
      severity: within === false || (within === undefined && Math.abs(change) > 0.2) ? "stop" : "check",
      line: run.line,
      found: run.radius,
      wanted,
      change,
      thread: shape.kind === "thread",
      contour,
      within,
    },
  ];
}

export function direction(shape: { climb: boolean; inside: boolean }, run: Round): Difference[] {
  const found = climbs(shape.inside, run.turn);
  if (found === shape.climb) return [];
  return [
    {
      code: "direction",
      what: "way",
      severity: "check",
      line: run.line,
      found: found ? "climb" : "conventional",
      clockwise: run.turn === -1,
    },
  ];
}

/** Passes that are missing or too many, and steps that are too large. `start`: path radius at which nothing is cut. */
export function passes(
  shape: ThreadShape | RoundShape,
  radii: readonly number[],
  found: number,
  contour: boolean,
  line: number,
): Difference[] {
  const wanted = shape.radii.length;
  const list: Difference[] = [];
  if (found < wanted - shape.springs)
    list.push({ code: "passes", what: "missing", severity: "stop", line, found, wanted: wanted - shape.springs });
  else if (found < wanted)
    list.push({
      code: "passes",
      what: "springs",
      severity: "check",
      line,
      found: found - (wanted - shape.springs),
      wanted: shape.springs,
    });
  else if (found > wanted) list.push({ code: "passes", what: "more", severity: "ok", line, found, wanted });
  const start = shape.inside ? (shape.start - shape.cutter) / 2 : (shape.start + shape.cutter) / 2;
  // with the cutter's whole radius in the control, or one radius for all passes, the steps are not in the program
  const told = !contour && new Set(radii.map((r) => Math.round(r * 1000))).size > 1;
  const solid = shape.kind === "round" && shape.fall > 0;
  if (told && !solid) {
    const largest = Math.max(...steps(start, shape.radii));
    const made = Math.max(...steps(start, radii));
    if (made > largest * (1 + SLACK.step[0]) + SLACK.step[1])
      list.push({ code: "passes", what: "step", severity: "check", line, found: made, wanted: largest });
  }
  return list;
}

const steps = (start: number, radii: readonly number[]) =>
  radii.map((r, n) => Math.abs(r - (n === 0 ? start : radii[n - 1]!)));

/** The run with the largest feed stands for all of them. */
export const fastest = (runs: readonly Round[]) => runs.reduce((a, b) => (b.feed > a.feed ? b : a));
