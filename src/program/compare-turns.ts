/** Differences between turns that a program makes and the thread or wall that the plan wants. */
import type { Finding, Severity } from "./findings.ts";
import { bottomOf, type Cornered, isHelix, riseOf, type Turned } from "./made.ts";
import { contourOf, finalRadius } from "./match.ts";
import type { Round } from "./shapes.ts";
import type { ArcShape, RoundShape, RowFacts, ThreadShape, ToolZero } from "./types.ts";

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
  const ratio = edgeFeed === undefined ? 1 : edgeFeed / feed;
  if (edgeFeed !== undefined && near(found, edgeFeed))
    list.push({
      code: "edge-feed",
      what: contour ? "contour" : "edge",
      severity: contour || ratio < 1 ? "check" : "stop",
      line,
      found,
      wanted: feed,
      edge: edgeFeed,
    });
  else if (edgeFeed !== undefined && near(found, feed / ratio))
    list.push({
      code: "edge-feed",
      what: "twice",
      severity: ratio < 1 / FEED_STOP ? "stop" : "check",
      line,
      found,
      wanted: feed,
      edge: edgeFeed,
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

export interface SpeedAndFeed {
  readonly line: number;
  readonly rpm: number;
  readonly feed: number;
  readonly spindle: number;
}

/** Which way round the wall the cutter goes: climb has the wall on the right of the travel (spindle M3). */
export const climbs = (inside: boolean, turn: 1 | -1) => inside === (turn === 1);

/** Compensation as far as a program uses it. `contour`: the path is the finished contour and not the centre's. */
function compensation(
  row: RowFacts,
  shape: { inside: boolean; cutter: number; radii: readonly number[] },
  run: Round,
): { list: Difference[]; contour: boolean } {
  const { line } = run;
  const list: Difference[] = [];
  const centre = finalRadius(shape);
  const edge = contourOf(centre, shape);
  const nearEdge = Math.abs(run.radius - edge) < Math.abs(run.radius - centre);
  const on = run.compensation !== 0;
  if (on) {
    const wanted = climbs(shape.inside, run.turn) ? 41 : 42;
    if (run.compensation !== wanted)
      list.push({
        code: "compensation",
        what: "side",
        severity: "stop",
        line,
        found: run.compensation as 41 | 42,
        wanted,
      });
  } else if (nearEdge && Math.abs(run.radius - edge) < 0.1 * shape.cutter)
    list.push({ code: "compensation", what: "contour-off", severity: "stop", line, found: run.radius, wanted: centre });
  else if (row.wearValue !== undefined && row.wearValue !== 0)
    list.push({ code: "compensation", what: "wear-unused", severity: "check", line, wear: row.wearValue });
  if (run.switched) list.push({ code: "compensation", what: "switched", severity: "check", line });
  return { list, contour: on && nearEdge };
}

function radius(shape: ThreadShape | RoundShape | ArcShape, run: Round, contour: boolean): Difference[] {
  const centre = finalRadius(shape);
  const wanted = contour ? contourOf(centre, shape) : centre;
  const error = run.radius - wanted;
  if (Math.abs(error) <= SLACK.radius) return [];
  // the path without compensation at the contour is told as such
  if (!contour && run.compensation === 0 && Math.abs(run.radius - contourOf(centre, shape)) < 0.1 * shape.cutter) {
    if (Math.abs(run.radius - contourOf(centre, shape)) < Math.abs(error)) return [];
  }
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

function direction(shape: { climb: boolean; inside: boolean }, run: Round): Difference[] {
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
function passes(
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

export function compareThread(row: RowFacts, shape: ThreadShape, made: Turned, toolZero: ToolZero): Difference[] {
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

/** The run with the largest feed stands for all of them. */
const fastest = (runs: readonly Round[]) => runs.reduce((a, b) => (b.feed > a.feed ? b : a));

function levelCount(helices: readonly Round[], pitch: number): number {
  const lows: number[] = [];
  for (const run of helices) if (!lows.some((z) => Math.abs(z - bottomOf(run)) < pitch / 2)) lows.push(bottomOf(run));
  return Math.max(1, lows.length);
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
  if (Number.isNaN(low)) return [{ code: "depth", what: "unknown", severity: "check", line }];
  const wanted = Math.min(shape.startZ, shape.endZ);
  const error = low - wanted;
  const slack = SLACK.ends * shape.pitch;
  const otherZero = shape.tipToProfile > 0 && Math.abs(Math.abs(error) - shape.tipToProfile) < 0.02;
  const told = { line, found: low - lower, wanted: wanted - lower, otherZero };
  const list: Difference[] = [];
  const tip = low - shape.tipToProfile;
  if (
    error < -slack &&
    shape.inside &&
    !shape.through &&
    shape.holeDepth !== undefined &&
    tip < -shape.holeDepth - 1e-6
  )
    list.push({
      code: "depth",
      what: "bottom",
      severity: "stop",
      line,
      found: tip,
      wanted: -shape.holeDepth,
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
      otherZero: shape.tipToProfile > 0 && Math.abs(top - high - shape.tipToProfile) < 0.02,
    });
  return list;
}

export function compareRound(row: RowFacts, shape: RoundShape, made: Turned): Difference[] {
  const final = shape.inside ? made.most : made.least;
  const main = made.runs.find((run) => Math.abs(run.radius - final) < 0.02) ?? made.runs[0]!;
  const { list: sides, contour } = compensation(row, shape, main);
  const list: Difference[] = [...direction(shape, main), ...sides, ...radius(shape, main, contour)];
  const helices = made.runs.filter(isHelix);
  const falls = helices.map((run) => Math.abs(riseOf(run)));
  const fall = Math.max(0, ...falls);
  if (shape.fall > 0 && fall > shape.fall * (1 + SLACK.step[0]))
    list.push({
      code: "pitch",
      what: "fall",
      severity: "check",
      line: helices[falls.indexOf(fall)]!.line,
      found: fall,
      wanted: shape.fall,
    });
  // a helix and the level turn that ends it are one pass
  const deep = made.runs.filter((run) => bottomOf(run) - made.bottom < 0.05);
  const cuts = deep.filter(
    (run) =>
      isHelix(run) ||
      !helices.some((h) => Math.abs(h.radius - run.radius) < 0.02 && h.line < run.line && follows(h, run)),
  );
  list.push(
    ...passes(
      shape,
      cuts.map((run) => run.radius),
      cuts.length,
      contour,
      main.line,
    ).map((d) =>
      // a wall in fewer passes is heavier work, not a wrong one
      d.code === "passes" && d.severity === "stop" ? ({ ...d, severity: "check" } as Difference) : d,
    ),
    ...wallDepth(made.bottom, shape.depth, main.line),
    ...speedAndFeed(row, fastest(made.runs), contour),
  );
  return list;
}

/** A level run that goes on where a helix ended. */
const follows = (helix: Round, level: Round) => Math.abs(helix.z1 - level.z0) < 1e-6 && level.line - helix.line < 400;

export function compareArc(row: RowFacts, shape: ArcShape, made: Cornered): Difference[] {
  const main = made.runs.reduce((a, b) => (bottomOf(b) < bottomOf(a) ? b : a));
  const { list: sides, contour } = compensation(row, shape, main);
  return [
    ...direction(shape, main),
    ...sides,
    ...radius(shape, main, contour),
    ...wallDepth(made.bottom, shape.depth, main.line),
    ...speedAndFeed(row, fastest(made.runs), contour),
  ];
}

export function wallDepth(bottom: number, depth: number, line: number): Difference[] {
  if (Number.isNaN(bottom)) return [{ code: "depth", what: "unknown", severity: "check", line }];
  const error = bottom + depth;
  if (Math.abs(error) <= SLACK.depth) return [];
  const severity: Severity = Math.abs(error) > 0.5 ? "stop" : "check";
  return [{ code: "depth", what: error > 0 ? "shallow" : "deep", severity, line, found: bottom, wanted: -depth }];
}
