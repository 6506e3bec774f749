/** What a programmer makes of a plan's numbers, in mm, and how it is written as a program. */
import { type Place, Post, type Style } from "./post.ts";

interface Common {
  tool: number;
  rpm: number;
  feed: number;
  spindle: 3 | 4 | 0;
}
export interface ThreadCut extends Common {
  op: "thread";
  places: Place[];
  /** Path radii of the passes; contour radius when the style programs the contour. */
  radii: number[];
  cutter: number;
  inside: boolean;
  counter: boolean;
  up: boolean;
  pitch: number;
  /** Z of the tip at the lowest end of the helix, for each level. */
  lows: number[];
  turns: number;
  climb: boolean;
  /** Clear of a boss [mm from its axis]. */
  clear: number;
  compensation?: 0 | 41 | 42;
  /** Extra rise that one turn in the middle gets: a slip. */
  slip?: number;
  contour?: boolean;
  off?: boolean;
}
export interface RoundCut extends Common {
  op: "round";
  places: Place[];
  radii: number[];
  cutter: number;
  inside: boolean;
  counter: boolean;
  climb: boolean;
  levels: number[];
  /** Fall per turn of a first pass from solid. */
  fall: number;
  clear: number;
  compensation?: 0 | 41 | 42;
  contour?: boolean;
}
export interface HoleCut extends Common {
  op: "hole";
  places: Place[];
  bottom: number;
  kind: "drill" | "tap" | "ream" | "countersink";
  pecks: number[];
  left?: boolean;
  cycle?: number;
}
export interface LineCut extends Common {
  op: "line";
  x0: number;
  x1: number;
  y: number;
  levels: number[];
  compensation: 0 | 41 | 42;
}
export interface ArcCut extends Common {
  op: "arc";
  radius: number;
  sweep: number;
  counter: boolean;
  inside: boolean;
  levels: number[];
  climb: boolean;
}
export type Cut = ThreadCut | RoundCut | HoleCut | LineCut | ArcCut;

const SAFE = 5;

/** Writes cuts in order; a tool is called where it changes. */
export function writeProgram(cuts: readonly Cut[], style: Style): string {
  const post = new Post(style);
  let last: Cut | undefined;
  for (const cut of cuts) {
    if (
      last === undefined ||
      last.tool !== cut.tool ||
      last.rpm !== cut.rpm ||
      last.spindle !== cut.spindle ||
      style.incremental
    )
      begin(post, cut);
    if (cut.op === "thread") thread(post, cut, style);
    else if (cut.op === "round") round(post, cut, style);
    else if (cut.op === "hole") hole(post, cut, style);
    else if (cut.op === "line") line(post, cut);
    else arc(post, cut, style);
    last = cut;
  }
  post.end();
  return post.text;
}

function begin(post: Post, cut: Cut): void {
  post.tool(cut.tool, cut.rpm, cut.spindle);
  const [x, y] = "places" in cut ? cut.places[0]! : [-50, -50];
  post.start(x, y, 25);
}

function sideWord(cut: { climb: boolean; compensation?: 0 | 41 | 42; contour?: boolean }, style: Style): 0 | 41 | 42 {
  if (cut.compensation !== undefined) return cut.compensation;
  if (style.compensation === undefined || style.compensation === "none") return cut.contour ? 41 : 0;
  return cut.climb ? 41 : 42;
}

/** One pass around a centre: lead in, `body`, lead out. */
function pass(
  post: Post,
  style: Style,
  cut: ThreadCut | RoundCut,
  [x, y]: Place,
  radius: number,
  z: number,
  quarter: number,
  body: () => void,
): void {
  const side = sideWord(cut, style);
  const lead = style.lead ?? "half";
  const rise = lead === "half rising" ? quarter : 0;
  const off = cut.inside ? 0 : Math.max(cut.clear, radius + 5);
  post.move(0, { x: x + off, y });
  post.move(0, { z: SAFE });
  post.move(0, { z: z + 1 - rise });
  post.move(1, { z: z - rise }, cut.feed);
  if (lead === "straight") {
    if (side) post.compensate(side, { x: x + radius }, cut.feed / 2);
    else post.move(1, { x: x + radius }, cut.feed / 2);
    body();
    if (side) post.compensate(40, { x: x + off, y }, cut.feed);
    else post.move(1, { x: x + off, y }, cut.feed);
  } else {
    // a short straight move for compensation, then half a circle whose other end stands there
    const from = cut.inside ? radius * 0.1 : off + 0.5;
    if (side) post.compensate(side, { x: x + from }, cut.feed);
    else post.move(1, { x: x + from }, cut.feed);
    const middle = (from + radius) / 2;
    post.arc(x + middle, y, cut.inside ? cut.counter : !cut.counter, 180, rise, cut.feed / 2);
    body();
    const [ax, ay] = post.at;
    const [ux, uy] = [(ax - x) / radius, (ay - y) / radius];
    post.arc(x + ux * middle, y + uy * middle, cut.inside ? cut.counter : !cut.counter, 180, rise, cut.feed);
    if (side) post.compensate(40, { x: x + off, y }, cut.feed);
    else post.move(1, { x: x + off, y }, cut.feed);
  }
  post.move(0, { z: SAFE });
}

function thread(post: Post, cut: ThreadCut, style: Style): void {
  const { pitch, turns, up, counter } = cut;
  const contour = style.compensation === "contour" || cut.contour === true;
  for (const place of cut.places) {
    for (const centre of cut.radii) {
      for (const low of cut.lows) {
        const radius = contour ? (cut.inside ? centre + cut.cutter / 2 : centre - cut.cutter / 2) : centre;
        const start = up ? low : low + turns * pitch;
        const way = up ? 1 : -1;
        pass(post, style, cut, place, radius, start, (way * pitch) / 4, () => {
          if (cut.slip) {
            const half = Math.floor(turns / 2);
            post.arc(place[0], place[1], counter, half * 360, way * pitch * half, cut.feed);
            post.arc(place[0], place[1], counter, 360, way * (pitch + cut.slip), cut.feed);
            const rest = turns - half - 1;
            post.arc(place[0], place[1], counter, rest * 360, way * (pitch * rest - cut.slip), cut.feed);
          } else if (cut.off) {
            post.arc(place[0], place[1], counter, 360, way * pitch, cut.feed);
            post.put("G40");
            post.arc(place[0], place[1], counter, (turns - 1) * 360, way * pitch * (turns - 1), cut.feed);
          } else post.arc(place[0], place[1], counter, turns * 360, way * pitch * turns, cut.feed);
        });
      }
    }
  }
}

function round(post: Post, cut: RoundCut, style: Style): void {
  const contour = style.compensation === "contour" || cut.contour === true;
  const bottom = cut.levels[cut.levels.length - 1]!;
  for (const place of cut.places) {
    cut.radii.forEach((centre, n) => {
      const radius = contour ? (cut.inside ? centre + cut.cutter / 2 : centre - cut.cutter / 2) : centre;
      if (n === 0 && cut.fall > 0) {
        pass(post, style, cut, place, radius, 0, 0, () => {
          post.arc(place[0], place[1], cut.counter, (360 * -bottom) / cut.fall, bottom, cut.feed);
          post.arc(place[0], place[1], cut.counter, 360, 0, cut.feed);
        });
        return;
      }
      for (const z of cut.levels)
        pass(post, style, cut, place, radius, z, 0, () => post.arc(place[0], place[1], cut.counter, 360, 0, cut.feed));
    });
  }
}

function hole(post: Post, cut: HoleCut, style: Style): void {
  const { places, bottom, feed, pecks } = cut;
  post.move(0, { z: SAFE });
  const first = pecks.length > 1 ? -pecks[0]! : -bottom;
  if (style.cycles || cut.cycle !== undefined) {
    const code =
      cut.cycle ??
      (cut.kind === "tap"
        ? cut.left
          ? 74
          : 84
        : cut.kind === "ream"
          ? 85
          : pecks.length > 1
            ? 83
            : cut.kind === "drill"
              ? 81
              : 82);
    const more = code === 83 || code === 73 ? `Q${post.length(first)}` : code === 82 ? "P200" : "";
    post.cycle(code, places, bottom, 2, feed, more);
    return;
  }
  for (const [x, y] of places) {
    post.move(0, { x, y });
    post.move(0, { z: 2 });
    pecks.forEach((peck, n) => {
      if (n > 0) post.move(0, { z: pecks[n - 1]! + 0.5 });
      post.move(1, { z: peck }, feed);
      if (n < pecks.length - 1) post.move(0, { z: 2 });
    });
    if (cut.kind === "tap") {
      post.put("M5");
      post.put(cut.left ? "M3" : "M4");
      post.move(1, { z: 2 }, feed);
      post.put("M5");
      post.put(cut.left ? "M4" : "M3");
    } else if (cut.kind === "ream") post.move(1, { z: 2 }, feed);
    else post.move(0, { z: 2 });
  }
  post.move(0, { z: SAFE });
}

function line(post: Post, cut: LineCut): void {
  for (const z of cut.levels) {
    post.move(0, { x: cut.x0 - 5, y: cut.y });
    post.move(0, { z: SAFE });
    post.move(0, { z });
    if (cut.compensation) post.compensate(cut.compensation, { x: cut.x0 }, cut.feed);
    else post.move(0, { x: cut.x0 });
    post.move(1, { x: cut.x1 }, cut.feed);
    if (cut.compensation) post.put("G40");
    post.move(0, { z: SAFE });
  }
}

function arc(post: Post, cut: ArcCut, style: Style): void {
  const { radius, counter } = cut;
  const lead = cut.inside ? radius * 0.4 : 6;
  const middle = cut.inside ? radius - lead : radius + lead;
  const way = counter ? 1 : -1;
  for (const z of cut.levels) {
    post.move(0, { x: middle, y: -way * lead });
    post.move(0, { z: SAFE });
    post.move(0, { z });
    const side = sideWord(cut, style);
    if (side) post.put(`G${side} D1`);
    post.arc(middle, 0, cut.inside ? counter : !counter, 90, 0, cut.feed);
    post.arc(0, 0, counter, cut.sweep, 0, cut.feed);
    const [x, y] = post.at;
    post.arc((x / radius) * middle, (y / radius) * middle, cut.inside ? counter : !counter, 90, 0, cut.feed);
    if (side) post.put("G40");
    post.move(0, { z: SAFE });
  }
}
