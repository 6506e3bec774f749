/**
 * The largest real chip of a milling pass, by brute force: every tooth on its own trochoid, against the wall that the teeth
 * before it left and the stock that was there. No formula of engagement or of chip thickness. Shares no code with src.
 */
export type Vec = readonly [number, number];

export interface Pass {
  /** Centre of the cutter after the way u along its path [mm]. */
  readonly centre: (u: number) => Vec;
  /** Whether a place held material before this pass. */
  readonly stock: (q: Vec) => boolean;
  readonly diameter: number;
  readonly teeth: number;
  /** Feed per tooth of the centre [mm]. */
  readonly feed: number;
  /** Part of the path that is looked at [mm]. */
  readonly from: number;
  readonly to: number;
}

/** Spindle as seen from the machine: clockwise, so that a wall on the right of the travel is cut climbing. */
export function largestChipByPath(pass: Pass, { steps = 4000, earlier = 3 } = {}): number {
  const R = pass.diameter / 2;
  const turnPerWay = (2 * Math.PI) / (pass.teeth * pass.feed);
  const pitch = (2 * Math.PI) / pass.teeth;
  /** Whether one of the teeth before has been beyond a place, seen along the ray at the angle alpha from u. */
  const removed = (q: Vec, u: number, alpha: number): boolean => {
    for (let k = 1; k <= earlier; k++) {
      // When tooth k before this one pointed at q: about k feeds ago.
      let w = u - k * pass.feed;
      for (let i = 0; i < 4; i++) {
        const c = pass.centre(w);
        const to = Math.atan2(q[1] - c[1], q[0] - c[0]);
        // that tooth stood at alpha + turnPerWay·(u − w) − k·pitch
        let off = to - (alpha + turnPerWay * (u - w) - k * pitch);
        off -= 2 * Math.PI * Math.round(off / (2 * Math.PI));
        w -= off / turnPerWay;
      }
      const c = pass.centre(w);
      if (Math.hypot(q[0] - c[0], q[1] - c[1]) < R) return true;
    }
    return false;
  };
  let largest = 0;
  const places = Math.max(1, Math.round((pass.to - pass.from) / pass.feed));
  for (let place = 0; place < places; place++) {
    for (let i = 0; i < steps; i++) {
      // one tooth per feed, all around
      const alpha = -2 * Math.PI * (i / steps);
      const u = pass.from + place * pass.feed + (i / steps) * pass.feed * pass.teeth;
      const c = pass.centre(u);
      const d: Vec = [Math.cos(alpha), Math.sin(alpha)];
      const at = (s: number): Vec => [c[0] + s * d[0], c[1] + s * d[1]];
      const solid = (s: number) => pass.stock(at(s)) && !removed(at(s), u, alpha);
      // the point just inside the tip must lie in material
      if (!solid(R * (1 - 1e-9))) continue;
      let [low, high] = [0, 3 * pass.feed];
      if (solid(R - high)) continue; // the first teeth of all, before the path has a past
      for (let n = 0; n < 24; n++) {
        const middle = (low + high) / 2;
        if (solid(R - middle)) low = middle;
        else high = middle;
      }
      largest = Math.max(largest, low);
    }
  }
  return largest;
}

/** A straight wall along y = −D/2 with so much stock on it, travel along +x. */
export function straightPass(radialDepth: number, diameter: number, teeth: number, feed: number): Pass {
  return {
    centre: (u) => [u, 0],
    stock: ([, y]) => y < radialDepth - diameter / 2,
    diameter,
    teeth,
    feed,
    from: 20 * feed,
    to: 21 * feed,
  };
}

/** A wall around a bore (travel counter-clockwise) or a boss (clockwise), the wall on the right. */
export function arcPass(
  start: number,
  finish: number,
  diameter: number,
  side: "inside" | "outside",
  teeth: number,
  feed: number,
): Pass {
  const r = (side === "inside" ? finish - diameter : finish + diameter) / 2;
  const sense = side === "inside" ? 1 : -1;
  // A cutter in a small bore has swept the middle of it in the turn before.
  const swept = side === "inside" ? Math.max(start, Math.abs(2 * diameter - finish)) : start;
  return {
    centre: (u) => [r * Math.cos((sense * u) / r), r * Math.sin((sense * u) / r)],
    stock: (q) => (side === "inside" ? Math.hypot(...q) > swept / 2 : Math.hypot(...q) < swept / 2),
    diameter,
    teeth,
    feed,
    from: 20 * feed,
    to: 21 * feed,
  };
}

/** A square (or other) inside corner between two straight walls, as the head of src/mill/corner.ts describes it in words. */
export function cornerPass(
  radialDepth: number,
  cornerRadius: number,
  stockRadius: number,
  turn: number,
  diameter: number,
  teeth: number,
  feed: number,
): Pass {
  const r = cornerRadius - diameter / 2;
  const beta = (turn * Math.PI) / 180;
  const arc = r * beta;
  const before = diameter;
  const depth = (q: Vec) => [-q[1], q[0] * Math.sin(beta) - q[1] * Math.cos(beta)] as const; // towards each wall
  const offset = cornerRadius - radialDepth;
  return {
    centre: (u) => {
      const s = u - before;
      if (s <= 0) return [s, -r];
      if (s <= arc) return [r * Math.sin(s / r), -r * Math.cos(s / r)];
      const rest = s - arc;
      return [r * Math.sin(beta) + rest * Math.cos(beta), -r * Math.cos(beta) + rest * Math.sin(beta)];
    },
    stock: (q) => {
      const [a, b] = depth(q);
      if (a > offset || b > offset) return true;
      // both walls near: rounded by the stock's radius. The centre of that lies so far from both faces.
      const k = (offset - stockRadius) / Math.cos(beta / 2);
      const c: Vec = [k * Math.sin(beta / 2), -k * Math.cos(beta / 2)];
      const v: Vec = [q[0] - c[0], q[1] - c[1]];
      const past1 = v[0]; // beyond the end of the first face
      const past2 = -(v[0] * Math.cos(beta) + v[1] * Math.sin(beta)); // before the start of the second
      return past1 > 0 && past2 > 0 && Math.hypot(...v) > stockRadius;
    },
    diameter,
    teeth,
    feed,
    from: before - radialDepth,
    to: before + arc + radialDepth,
  };
}
