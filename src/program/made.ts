/** What a program makes at one place with one tool, and how many of the same it makes. */
import type { Hole, Round, Shapes, Straight } from "./shapes.ts";

/** Turns about one centre that end at one depth: the passes of a thread, a bore, a boss. */
export interface Turned {
  readonly kind: "turned";
  readonly runs: readonly Round[];
  readonly least: number;
  readonly most: number;
  readonly bottom: number;
  /** Rise per turn of the longest helix; 0 where all is level [mm]. */
  readonly rise: number;
  readonly line: number;
}

/** Arcs of one radius, and straight cuts of one length, that one tool makes. */
export interface Cornered {
  readonly kind: "cornered";
  readonly runs: readonly Round[];
  readonly radius: number;
  readonly bottom: number;
  readonly line: number;
}

export interface Cuts {
  readonly kind: "cuts";
  readonly runs: readonly Straight[];
  readonly length: number;
  readonly bottom: number;
  readonly line: number;
}

export type Made = Turned | Cornered | Cuts | Hole;

/** Things that are alike. */
export interface Group<M extends Made = Made> {
  readonly made: M[];
  left: number;
}

/** Sizes that differ by less are made alike [mm]. */
const ALIKE = 0.02;
/** Bottoms within this are one depth, centres within this one place [mm]. */
const ONE_DEPTH = 0.05;
const ONE_PLACE = 0.2;
/** Rise per turn from which turns are a helix [mm]. */
const HELIX_FROM = 0.03;

export const riseOf = (run: Round) => ((run.z1 - run.z0) * 360) / run.degrees;
export const bottomOf = (run: Round) => Math.min(run.z0, run.z1);
export const isHelix = (run: Round) => Math.abs(riseOf(run)) > HELIX_FROM;

/** Groups of everything a program makes. */
export function groupsOf(shapes: Shapes): {
  turned: Group<Turned>[];
  holes: Group<Hole>[];
  cornered: Group<Cornered>[];
  cuts: Group<Cuts>[];
} {
  return {
    turned: alike(turnedOf(shapes.rounds), (t) => [
      t.runs[0]!.segment,
      t.runs.length,
      ...[t.least, t.most, t.bottom, t.rise].map(grid),
      ...[t.runs[0]!.rpm, t.runs[0]!.feed, t.runs[0]!.compensation, t.runs[0]!.turn],
    ]),
    holes: alike(shapes.holes, (h) => [h.segment, grid(h.bottom), h.rpm, h.feed, h.cycle, h.strokes]),
    cornered: alike(corneredOf([...shapes.arcs, ...shapes.rounds]), (c) => [c.line]),
    cuts: alike(cutsOf(shapes.lines), (c) => [c.line]),
  };
}

const grid = (value: number) => Math.round(value / ALIKE);

function alike<M extends Made>(made: readonly M[], signature: (m: M) => unknown[]): Group<M>[] {
  const groups = new Map<string, Group<M>>();
  for (const m of made) {
    const key = signature(m).join(" ");
    const group = groups.get(key);
    if (group) {
      group.made.push(m);
      group.left++;
    } else groups.set(key, { made: [m], left: 1 });
  }
  return [...groups.values()];
}

/** Runs about the same centre with the same tool, parted by depth: a counterbore and the bore below it are two things. */
function turnedOf(rounds: readonly Round[]): Turned[] {
  const places = new Map<string, Round[][]>();
  const all: Round[][] = [];
  for (const run of rounds) {
    const [cx, cy] = [Math.floor(run.x / ONE_PLACE), Math.floor(run.y / ONE_PLACE)];
    let here: Round[] | undefined;
    for (let dx = -1; dx <= 1 && !here; dx++) {
      for (let dy = -1; dy <= 1 && !here; dy++) {
        here = places
          .get(`${run.segment} ${run.offset} ${cx + dx} ${cy + dy}`)
          ?.find(([r]) => Math.hypot(r!.x - run.x, r!.y - run.y) < ONE_PLACE / 2);
      }
    }
    if (here) here.push(run);
    else {
      const fresh = [run];
      all.push(fresh);
      const key = `${run.segment} ${run.offset} ${cx} ${cy}`;
      const list = places.get(key);
      if (list) list.push(fresh);
      else places.set(key, [fresh]);
    }
  }
  return all.flatMap(byDepth);
}

function byDepth(runs: readonly Round[]): Turned[] {
  // the depth of a radius is the deepest turn of it
  const depths = new Map<number, number>();
  for (const run of runs) {
    const r = grid(run.radius);
    const near = [r, r - 1, r + 1].find((k) => depths.has(k)) ?? r;
    depths.set(near, Math.min(depths.get(near) ?? Number.POSITIVE_INFINITY, bottomOf(run)));
  }
  const depthOf = (run: Round) => {
    const r = grid(run.radius);
    return depths.get([r, r - 1, r + 1].find((k) => depths.has(k))!)!;
  };
  const parts: { depth: number; runs: Round[] }[] = [];
  for (const run of runs) {
    const depth = depthOf(run);
    const part = parts.find(
      (p) => Math.abs(p.depth - depth) <= ONE_DEPTH || (Number.isNaN(p.depth) && Number.isNaN(depth)),
    );
    if (part) part.runs.push(run);
    else parts.push({ depth, runs: [run] });
  }
  return parts.map(({ depth, runs: own }) => {
    const helices = own.filter(isHelix);
    const longest = helices.reduce<Round | undefined>((a, b) => (a && a.degrees >= b.degrees ? a : b), undefined);
    return {
      kind: "turned",
      runs: own,
      least: Math.min(...own.map((r) => r.radius)),
      most: Math.max(...own.map((r) => r.radius)),
      bottom: depth,
      rise: longest ? riseOf(longest) : 0,
      line: own[0]!.line,
    };
  });
}

function corneredOf(arcs: readonly Round[]): Cornered[] {
  const parts = new Map<string, Round[]>();
  for (const run of arcs) {
    const key = `${run.segment} ${grid(run.radius)} ${run.turn}`;
    const known = parts.get(key);
    if (known) known.push(run);
    else parts.set(key, [run]);
  }
  return [...parts.values()].map((runs) => ({
    kind: "cornered",
    runs,
    radius: runs[0]!.radius,
    bottom: runs.reduce((low, r) => Math.min(low, bottomOf(r)), Number.POSITIVE_INFINITY),
    line: runs[0]!.line,
  }));
}

function cutsOf(lines: readonly Straight[]): Cuts[] {
  const parts = new Map<string, Straight[]>();
  for (const cut of lines) {
    const key = `${cut.segment} ${Math.round(Math.hypot(cut.x1 - cut.x0, cut.y1 - cut.y0) / 0.1)}`;
    const known = parts.get(key);
    if (known) known.push(cut);
    else parts.set(key, [cut]);
  }
  return [...parts.values()].map((runs) => ({
    kind: "cuts",
    runs,
    length: Math.hypot(runs[0]!.x1 - runs[0]!.x0, runs[0]!.y1 - runs[0]!.y0),
    bottom: runs.reduce((low, r) => Math.min(low, r.z), Number.POSITIVE_INFINITY),
    line: runs[0]!.line,
  }));
}
