/**
 * A cutter that runs along a straight wall into an inside corner: how far it is engaged while it turns.
 *
 * The stock stands off both walls by the same depth and has a radius of its own in the corner, that of the cutter which roughed
 * it. At each place of the centre's path the tooth at the angle θ from the wall cuts while its point lies in the stock; the largest
 * θ over the path is the engagement of the corner.
 */
import { notNegative, positive, within } from "../check.ts";
import { maximum } from "../numeric.ts";
import { engagedDepth } from "./engagement.ts";

export interface Corner {
  /** Stock on the straight walls [mm] */
  readonly radialDepth: number;
  /** Radius of the finished corner [mm], at least half the cutter. */
  readonly cornerRadius: number;
  /** Radius that the stock has in the corner [mm]: half the cutter that roughed it; 0 is sharp. */
  readonly stockRadius: number;
  /** How far the path turns [deg]; 90 is a square corner. */
  readonly turn: number;
  /** D [mm] */
  readonly diameter: number;
}

/** Places tried on the way in and around the corner, before the best is refined. */
const PLACES = 48;

/**
 * Radial depth of the straight cut that has the engagement of an inside corner at its largest.
 *
 *   ae = D·sin²(φ/2),   φ = largest angle from the wall at which the cutter's edge lies in the stock, over its path
 *
 * On a straight wall an edge at φ stands D/2·(1 − cos φ) = D·sin²(φ/2) off the wall: that is the cut which ends at φ.
 *
 * @param corner - corner.radialDepth on the walls [mm], corner.cornerRadius [mm] at least D/2, corner.stockRadius [mm], corner.turn [deg] above 0 and below 180, corner.diameter D [mm]
 * @returns ae [mm]
 * @throws TradeError "range" when a value is outside its limits
 * @source DERIVED
 * @example
 * cornerDepth({ radialDepth: 0.5, cornerRadius: 8, stockRadius: 8, turn: 90, diameter: 10 }) //=> 1.80228
 */
export function cornerDepth(corner: Corner): number {
  const D = positive("diameter", corner.diameter);
  const R = D / 2;
  const ae = within("radialDepth", positive("radialDepth", corner.radialDepth), 0, D, "length", "low");
  const Rc = within("cornerRadius", corner.cornerRadius, R, Number.POSITIVE_INFINITY, "length");
  const Rs = notNegative("stockRadius", corner.stockRadius);
  const beta = (within("turn", corner.turn, 0, 180, undefined, "both") * Math.PI) / 180;

  // The first wall lies along y = −Rc, travel is towards +x with the wall on the right; the corner's centre is the origin.
  const n1: Point = [0, -1];
  const n2: Point = [Math.sin(beta), -Math.cos(beta)];
  const offset = Rc - ae; // of the stock's straight faces from the corner's centre
  const along = (offset - Rs) / Math.cos(beta / 2);
  const centre: Point = [along * Math.sin(beta / 2), -along * Math.cos(beta / 2)];
  const r = Rc - R;

  /** Angle of engagement with the cutter's centre at C, travelling at the angle psi. */
  const engaged = (C: Point, psi: number): number => {
    const t: Point = [Math.cos(psi), Math.sin(psi)];
    const n: Point = [Math.sin(psi), -Math.cos(psi)];
    let largest = 0;
    const meet = (normal: number, tangent: number, c: number, valid: (q: Point) => boolean) => {
      const size = Math.hypot(normal, tangent);
      const middle = Math.atan2(tangent, normal);
      const half = Math.acos(c / size); // no number where they do not meet: then no place is valid
      for (const raw of [middle - half, middle + half]) {
        const theta = raw < -Math.PI ? raw + 2 * Math.PI : raw > Math.PI ? raw - 2 * Math.PI : raw;
        if (theta <= largest || theta > Math.PI) continue;
        const [a, b] = [R * Math.cos(theta), R * Math.sin(theta)];
        const q: Point = [C[0] + a * n[0] + b * t[0] - centre[0], C[1] + a * n[1] + b * t[1] - centre[1]];
        if (valid(q)) largest = theta;
      }
    };
    // The faces end where the radius begins.
    meet(R * dot(n1, n), R * dot(n1, t), offset - dot(n1, C), (q) => cross(n1, q) <= 0);
    meet(R * dot(n2, n), R * dot(n2, t), offset - dot(n2, C), (q) => cross(q, n2) <= 0);
    const v: Point = [C[0] - centre[0], C[1] - centre[1]];
    const rest = (Rs * Rs - R * R - dot(v, v)) / 2;
    meet(R * dot(v, n), R * dot(v, t), rest, (q) => cross(n1, q) >= 0 && cross(q, n2) >= 0);
    return largest;
  };
  /** Along the path: 0 to 1 towards the corner, 1 to 2 around it. */
  const reach = 2 * D;
  const at = (u: number) => {
    const psi = Math.max(0, u - 1) * beta;
    return engaged([r * Math.sin(psi) - reach * Math.max(0, 1 - u), -r * Math.cos(psi)], psi);
  };
  let best = 0;
  let place = 0;
  for (let i = 0; i <= 2 * PLACES; i++) {
    const phi = at(i / PLACES);
    if (phi > best) {
      best = phi;
      place = i;
    }
  }
  const near = (i: number) => Math.min(2, Math.max(0, i / PLACES));
  best = Math.max(best, maximum(at, near(place - 1), near(place + 1), 1e-7).value);
  // The straight wall counts too: a corner that asks for less does not make the row's largest chip.
  const straight = 2 * Math.asin(Math.sqrt(ae / D));
  return engagedDepth((Math.max(best, straight) * 180) / Math.PI, D);
}

type Point = readonly [number, number];
const dot = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1];
const cross = (a: Point, b: Point) => a[0] * b[1] - a[1] * b[0];
