/**
 * The edges of an end mill that are in the cut at one rotation, summed: what every force of it is made from.
 *
 * A tooth stands at the angle θ from the wall that is being made; it cuts for 0 < θ < φe with the chip fz·sin θ. A flute of helix β
 * trails by ψ = 2·ap·tan β/D over the depth and so covers an interval of θ: its sum is the difference of an antiderivative at the
 * two ends, no slices needed. Full engagement is one wall of a slot; flutes may wrap around the tool.
 */
import { count, positive, within } from "../check.ts";
import { powers } from "../numeric.ts";
import { antiderivative } from "./antiderivative.ts";
import { MOST_TEETH } from "./turn.ts";

/** Below this trail of the flute [rad] the edge counts as straight. */
const STRAIGHT = 1e-7;

export interface FluteSums {
  /** φe, angle of engagement, and ψ, trail of the flute over the depth; 0 where the edge counts as straight [rad]. */
  phi: number;
  psi: number;
  /** ap [mm] */
  depth: number;
  /** Whether the sums of the edge are wanted too. */
  edged: boolean;
  /** Over the length of edge in the cut, along the axis: of sin^(1−m) θ·cos θ, sin^(1−m) θ·sin θ, sin^(1−m) θ [mm]. */
  c: number;
  s: number;
  t: number;
  /** And of cos θ, sin θ, 1. */
  ec: number;
  es: number;
  et: number;
  /** The same from 0 to φe [rad]. */
  readonly whole: { c: number; s: number; t: number; ec: number; es: number; et: number };
  /** Sets the cut: radial depth above 0 and at most the diameter, axial depth above 0 [mm]. */
  engage(radialDepth: number, axialDepth: number): void;
  /** Sets the sums at a rotation: the leading end of a tooth stands at 0 < τ < 2π/z [rad]. */
  at(tau: number): void;
}

/**
 * Sums over the edges of one cutter, for any depths and rotation.
 *
 *   Σ over flutes ∫ f(θ) dz = (ap/ψ)·Σ (F(min(φe, τ + i·p)) − F(max(0, τ + i·p − ψ)))
 *
 * @param cutter - cutter.exponent m [-], cutter.diameter D [mm], cutter.teeth z [-], cutter.helixAngle β [deg] (0 to below 90)
 * @returns an object whose engage(radialDepth, axialDepth) and at(τ) set its sums [mm]
 * @throws TradeError "range" when a value is outside its limits
 * @source KIENZLE1952 KLINE1982 DERIVED
 * @example
 * [fluteSums({ exponent: 0, diameter: 10, teeth: 4, helixAngle: 0 })].map((f) => { f.engage(5, 2); f.at(Math.PI / 6); return [f.phi, f.t]; })[0] //=> [1.5707963, 1.000]
 */
export function fluteSums(cutter: {
  readonly exponent: number;
  readonly diameter: number;
  readonly teeth: number;
  readonly helixAngle: number;
}): FluteSums {
  const m = within("exponent", cutter.exponent, 0, 1, undefined, "high");
  const D = positive("diameter", cutter.diameter);
  const p = (2 * Math.PI) / count("teeth", cutter.teeth, 1, MOST_TEETH);
  const slope = Math.tan((within("helixAngle", cutter.helixAngle, 0, 90, undefined, "high") * Math.PI) / 180);
  const power = powers(1 - m);
  const G = antiderivative(m);
  const whole = { c: 0, s: 0, t: 0, ec: 0, es: 0, et: 0 };
  return {
    phi: 0,
    psi: 0,
    depth: 0,
    edged: true,
    c: 0,
    s: 0,
    t: 0,
    ec: 0,
    es: 0,
    et: 0,
    whole,
    engage(ae, ap) {
      const phi = ae / D > 1 - 1e-15 ? Math.PI : 2 * Math.asin(Math.sqrt(ae / D));
      const trail = (2 * ap * slope) / D;
      this.phi = phi;
      this.psi = trail < STRAIGHT ? 0 : trail;
      this.depth = ap;
      G.at(phi);
      whole.c = G.c;
      whole.s = G.s;
      whole.t = G.t;
      whole.ec = Math.sin(phi);
      whole.es = 1 - Math.cos(phi);
      whole.et = phi;
    },
    at(tau) {
      const { phi, psi, depth, edged } = this;
      let c = 0;
      let s = 0;
      let t = 0;
      let ec = 0;
      let es = 0;
      let et = 0;
      let scale = depth;
      if (psi === 0) {
        for (let x = tau; x < phi; x += p) {
          const sine = Math.sin(x);
          const cosine = Math.cos(x);
          const f = power(sine);
          c += f * cosine;
          s += f * sine;
          t += f;
          ec += cosine;
          es += sine;
          et += 1;
        }
      } else {
        scale /= psi; // length of edge per angle, along the axis
        let inside = 0; // leading ends in the cut
        for (let x = tau; x < phi; x += p) {
          G.at(x);
          c += G.c;
          s += G.s;
          t += G.t;
          if (edged) {
            ec += Math.sin(x);
            es += 1 - Math.cos(x);
            et += x;
          }
          inside++;
        }
        const passed = Math.max(0, Math.ceil((psi - tau) / p)); // flutes whose trailing end has not come to the wall
        let past = passed - inside; // flutes with the leading end out of the cut and the trailing end not
        for (let y = tau + passed * p - psi; y < phi; y += p) {
          G.at(y);
          c -= G.c;
          s -= G.s;
          t -= G.t;
          if (edged) {
            ec -= Math.sin(y);
            es -= 1 - Math.cos(y);
            et -= y;
          }
          past++;
        }
        c += past * whole.c;
        s += past * whole.s;
        t += past * whole.t;
        ec += past * whole.ec;
        es += past * whole.es;
        et += past * whole.et;
      }
      this.c = scale * c;
      this.s = scale * s;
      this.t = scale * t;
      this.ec = scale * ec;
      this.es = scale * es;
      this.et = scale * et;
    },
  };
}
