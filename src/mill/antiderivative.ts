/**
 * Antiderivatives of a tooth's force over the angle of engagement, for chips that go with sin θ. They turn the sum over the
 * slices of a helical flute into a difference of two values.
 */
import { Cache } from "../cache.ts";
import { within } from "../check.ts";
import { powers } from "../numeric.ts";

/** Terms of the series; the last is below 1e-14 of the first at θ = π/2, the largest angle it is used for. */
const TERMS = 24;

/** cos θ = Σ COS[k]·θ^2k and sin θ = Σ SIN[k]·θ^(2k+1). */
const COS: number[] = [];
const SIN: number[] = [];
for (let k = 0, f = 1; k < TERMS; k++) {
  COS.push(f);
  f /= 2 * k + 1;
  SIN.push(f);
  f /= -(2 * k + 2);
}

/**
 * Q in ∫0^θ sin^p = sin^(p+1) θ·Q(θ²). Differentiated: (p + 1)·cos θ·Q + sin θ·dQ/dθ = 1, solved power by power.
 */
function series(p: number): Float64Array {
  const q = new Float64Array(TERMS);
  for (let n = 0; n < TERMS; n++) {
    let sum = n === 0 ? 1 : 0;
    for (let k = 1; k <= n; k++) sum -= (COS[k]! * (p + 1) + 2 * (n - k) * SIN[k]!) * q[n - k]!;
    q[n] = sum / (p + 1 + 2 * n);
  }
  return q;
}

/** Values at one angle: c of sin^(1−m)·cos, s of sin^(1−m)·sin, t of sin^(1−m). */
export interface Antiderivative {
  c: number;
  s: number;
  t: number;
  /** Sets c, s, t to the integrals from 0 to θ, 0 ≤ θ ≤ π. */
  at(theta: number): void;
}

/** From here to π/2 a table with cubic Hermite pieces takes over: same figures to 1e-10, and no power per call. */
const FROM = 0.2;
const PIECES = 256;
const STEP = (Math.PI / 2 - FROM) / PIECES;
/** Terms of the series that matter below FROM. */
const FEW = 8;

const known = new Cache<number, Antiderivative>("antiderivatives", 32);

/**
 * The three antiderivatives for one Kienzle exponent.
 *
 *   c = ∫ sin^(1−m) θ·cos θ dθ = sin^(2−m) θ/(2 − m),   s = ∫ sin^(2−m) θ dθ,   t = ∫ sin^(1−m) θ dθ,   from 0
 *
 * s and t are incomplete beta functions; beyond π/2 they follow by mirroring. The object is shared by all callers: read c, s, t
 * before the next call of at.
 *
 * @param exponent - m [-], scalar, 0 ≤ m < 1
 * @returns an object whose at(θ) sets c, s, t [rad]
 * @throws TradeError "range" when m is outside its limits
 * @source DLMF
 * @example
 * [antiderivative(0)].map((g) => { g.at(Math.PI); return [g.c, g.s, g.t]; })[0] //=> [0.0000, 1.5707963, 2.0000000]
 */
export function antiderivative(exponent: number): Antiderivative {
  const m = within("exponent", exponent, 0, 1, undefined, "high");
  return known.get(m, () => make(m));
}

function make(m: number): Antiderivative {
  const q1 = series(1 - m);
  const q2 = series(2 - m);
  const powerOf = powers(2 - m);
  /** [c, s, t] by the series. */
  const exact = (x: number, terms: number): [number, number, number] => {
    const sine = Math.sin(x);
    const power = sine ** (2 - m);
    const y = x * x;
    let a = 0;
    let b = 0;
    for (let n = terms - 1; n >= 0; n--) {
      a = a * y + q1[n]!;
      b = b * y + q2[n]!;
    }
    return [power / (2 - m), b * power * sine, a * power];
  };
  // values and slopes (times STEP) of c, s, t at each node
  const table = new Float64Array(6 * (PIECES + 1));
  for (let i = 0; i <= PIECES; i++) {
    const x = FROM + i * STEP;
    const f = Math.sin(x) ** (1 - m) * STEP;
    table.set([...exact(x, TERMS), f * Math.cos(x), f * Math.sin(x), f], 6 * i);
  }
  const [, halfS, halfT] = exact(Math.PI / 2, TERMS);
  return {
    c: 0,
    s: 0,
    t: 0,
    at(theta) {
      const near = theta <= Math.PI / 2;
      const x = near ? theta : Math.PI - theta;
      let c = 0;
      let s = 0;
      let t = 0;
      if (x >= FROM) {
        const place = (x - FROM) / STEP;
        const i = Math.min(PIECES - 1, Math.floor(place));
        const u = place - i;
        const k = 6 * i;
        const v = 1 - u;
        const h0 = v * v * (1 + 2 * u);
        const h1 = u * u * (1 + 2 * v);
        const g0 = u * v * v;
        const g1 = -u * u * v;
        c = h0 * table[k]! + h1 * table[k + 6]! + g0 * table[k + 3]! + g1 * table[k + 9]!;
        s = h0 * table[k + 1]! + h1 * table[k + 7]! + g0 * table[k + 4]! + g1 * table[k + 10]!;
        t = h0 * table[k + 2]! + h1 * table[k + 8]! + g0 * table[k + 5]! + g1 * table[k + 11]!;
      } else if (x > 0) {
        const sine = Math.sin(x);
        const power = powerOf(sine);
        const y = x * x;
        for (let n = FEW - 1; n >= 0; n--) {
          t = t * y + q1[n]!;
          s = s * y + q2[n]!;
        }
        c = power / (2 - m);
        s *= power * sine;
        t *= power;
      }
      this.c = c;
      this.s = near ? s : 2 * halfS - s;
      this.t = near ? t : 2 * halfT - t;
    },
  };
}
