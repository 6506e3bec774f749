/** Arcs from what their block says: centre by I J (from the start, or its own position), or radius by R. */

interface ArcWords {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  /** NaN where the word is missing. */
  readonly i: number;
  readonly j: number;
  readonly r: number;
  /** 1 counter-clockwise (G3), -1 clockwise (G2). */
  readonly turn: 1 | -1;
  /** I and J are the centre's own position. */
  readonly absolute: boolean;
}

export interface Arc {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly degrees: number;
  /** I and J were taken as the centre's own position because they fit only so. */
  readonly absolute: boolean;
}

export type ArcTrouble =
  | { readonly what: "arc"; readonly startRadius: number; readonly endRadius: number }
  | { readonly what: "arc-radius"; readonly radius: number; readonly chord: number }
  | { readonly what: "arc-centre" };

/** An arc whose ends lie on circles that differ by more than this is refused by controls as well [mm]. */
const ARC_SLACK = 0.02;
/** Half circles given by R: a chord this much under the diameter still means the half circle [mm]. */
const HALF_SLACK = 0.006;
/** Ends that coincide are a full circle [mm]. */
const SAME_POINT = 1e-7;

const has = (value: number) => !Number.isNaN(value);

export function arcOf(words: ArcWords): Arc | ArcTrouble {
  const { x0, y0, x1, y1, i, j, r } = words;
  if (has(i) || has(j)) return byCentre(words);
  if (has(r) && r !== 0 && (x0 !== x1 || y0 !== y1)) return byRadius(words);
  return { what: "arc-centre" };
}

function byCentre({ x0, y0, x1, y1, i, j, turn, absolute }: ArcWords): Arc | ArcTrouble {
  let x = absolute ? (has(i) ? i : x0) : x0 + (has(i) ? i : 0);
  let y = absolute ? (has(j) ? j : y0) : y0 + (has(j) ? j : 0);
  let start = distance(x0 - x, y0 - y);
  let end = distance(x1 - x, y1 - y);
  let taken = false;
  if (!fits(start, end)) {
    // some controls write the centre itself: taken when it fits and the other does not
    const [ox, oy] = [has(i) ? i : x0, has(j) ? j : y0];
    const [ostart, oend] = [distance(x0 - ox, y0 - oy), distance(x1 - ox, y1 - oy)];
    if (absolute || !fits(ostart, oend)) return { what: "arc", startRadius: start, endRadius: end };
    [x, y, start, end, taken] = [ox, oy, ostart, oend, true];
  }
  const full = Math.abs(x1 - x0) < SAME_POINT && Math.abs(y1 - y0) < SAME_POINT;
  const degrees = full ? 360 : turned(x, y, x0, y0, x1, y1, turn);
  return { x, y, radius: (start + end) / 2, degrees, absolute: taken };
}

const distance = (dx: number, dy: number) => Math.sqrt(dx * dx + dy * dy);
const fits = (start: number, end: number) => start > ARC_SLACK / 2 && Math.abs(start - end) <= ARC_SLACK + 1e-4 * start;

function byRadius({ x0, y0, x1, y1, r, turn }: ArcWords): Arc | ArcTrouble {
  const chord = Math.hypot(x1 - x0, y1 - y0);
  const radius = Math.abs(r);
  const short = radius * 2 - chord;
  if (short < -ARC_SLACK) return { what: "arc-radius", radius, chord };
  const height = short < HALF_SLACK ? 0 : Math.sqrt(radius * radius - (chord * chord) / 4);
  // the centre lies left of the chord for a short counter-clockwise arc and for a long clockwise one
  const side = (turn === 1) === r > 0 ? 1 : -1;
  const x = (x0 + x1) / 2 - (side * height * (y1 - y0)) / chord;
  const y = (y0 + y1) / 2 + (side * height * (x1 - x0)) / chord;
  return { x, y, radius, degrees: turned(x, y, x0, y0, x1, y1, turn), absolute: false };
}

/** Degrees from start to end in the sense of the turn, from 0 up to 360. */
function turned(cx: number, cy: number, x0: number, y0: number, x1: number, y1: number, turn: number): number {
  const angle = turn * (Math.atan2(y1 - cy, x1 - cx) - Math.atan2(y0 - cy, x0 - cx));
  const degrees = (angle * 180) / Math.PI;
  return degrees < 0 ? degrees + 360 : degrees >= 360 ? degrees - 360 : degrees;
}
