/** Differences between the circles and arcs that a program makes and the wall that the plan wants. */
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
import type { Severity } from "./findings.ts";
import { bottomOf, type Cornered, isHelix, riseOf, type Turned } from "./made.ts";
import type { Round } from "./shapes.ts";
import type { ArcShape, RoundShape, RowFacts } from "./types.ts";

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
      d.severity === "stop" ? ({ ...d, severity: "check" } as Difference) : d,
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
