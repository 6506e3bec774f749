/** Roots, maxima, quadrature and interpolation for smooth one-dimensional functions. */
import { Cache } from "./cache.ts";
import { TradeError } from "./errors.ts";

/**
 * Root of `f` between `a` and `b` by Brent's method (bisection, secant, inverse quadratic).
 *
 * @throws TradeError "unsolvable" when f(a) and f(b) have the same sign
 * @source BRENT1973
 */
export function root(f: (x: number) => number, a: number, b: number, tolerance = 1e-13, parameter = "root"): number {
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) throw new TradeError("unsolvable", parameter, a, { is: "no-change-of-sign", upTo: b });
  let c = a;
  let fc = fa;
  let d = b - a;
  let e = d;
  for (let i = 0; i < 200; i++) {
    if (fb * fc > 0) {
      c = a;
      fc = fa;
      d = e = b - a;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const tol = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const m = (c - b) / 2;
    if (Math.abs(m) <= tol || fb === 0) return b;
    if (Math.abs(e) >= tol && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * m * s;
        q = 1 - s;
      } else {
        const r = fb / fc;
        const t = fa / fc;
        p = s * (2 * m * t * (t - r) - (b - a) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      if (2 * p < Math.min(3 * m * q - Math.abs(tol * q), Math.abs(e * q))) {
        e = d;
        d = p / q;
      } else {
        d = e = m;
      }
    } else {
      d = e = m;
    }
    a = b;
    fa = fb;
    b += Math.abs(d) > tol ? d : m > 0 ? tol : -tol;
    fb = f(b);
  }
  return b;
}

/**
 * Place of the largest value of a function with one maximum in [a, b], by golden sections.
 *
 * @source KIEFER1953
 */
export function maximum(
  f: (x: number) => number,
  a: number,
  b: number,
  tolerance = 1e-10,
): { x: number; value: number } {
  const g = (Math.sqrt(5) - 1) / 2;
  let x1 = b - g * (b - a);
  let x2 = a + g * (b - a);
  let f1 = f(x1);
  let f2 = f(x2);
  while (Math.abs(b - a) > tolerance * (Math.abs(x1) + Math.abs(x2)) + 1e-300) {
    if (f1 < f2) {
      a = x1;
      x1 = x2;
      f1 = f2;
      x2 = a + g * (b - a);
      if (x2 <= x1) break;
      f2 = f(x2);
    } else {
      b = x2;
      x2 = x1;
      f2 = f1;
      x1 = b - g * (b - a);
      if (x1 >= x2) break;
      f1 = f(x1);
    }
  }
  return f1 > f2 ? { x: x1, value: f1 } : { x: x2, value: f2 };
}

interface GaussRule {
  readonly x: Float64Array;
  readonly w: Float64Array;
}
const rules = new Cache<number, GaussRule>("Gauss points", 16);

/**
 * Nodes and weights of n-point Gauss–Legendre quadrature on [−1, 1], by Newton iteration on the Legendre recurrence.
 *
 * @source ABRAMOWITZ
 */
export function gaussLegendre(n: number): GaussRule {
  return rules.get(n, () => gaussRule(n));
}

function gaussRule(n: number): GaussRule {
  const x = new Float64Array(n);
  const w = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let z = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 0;
    for (let k = 0; k < 100; k++) {
      let p0 = 1;
      let p1 = 0;
      for (let j = 0; j < n; j++) {
        const p2 = p1;
        p1 = p0;
        p0 = ((2 * j + 1) * z * p1 - j * p2) / (j + 1);
      }
      slope = (n * (z * p0 - p1)) / (z * z - 1);
      const step = p0 / slope;
      z -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    x[i] = -z;
    w[i] = 2 / ((1 - z * z) * slope * slope);
  }
  return { x, w };
}

/** Parts of a doubling from node to node, and halvings that are tabled. */
const NODES = 64;
const HALVINGS = 31;
const tabled = new Cache<number, (x: number) => number>("powers", 32);

/**
 * x^p for many x between 0 and 1 and one p: a power of two times a tabled power times a binomial series of six terms. Within 1e-13 of
 * the power that it stands for, as a share of it, and several times quicker.
 *
 * @source ABRAMOWITZ
 */
export function powers(p: number): (x: number) => number {
  return tabled.get(p, () => tableOf(p));
}

function tableOf(p: number): (x: number) => number {
  const halved = Float64Array.from({ length: HALVINGS }, (_, j) => 2 ** (-j * p));
  const nodes = Float64Array.from({ length: 2 * NODES + 1 }, (_, i) => (i / (2 * NODES)) ** p);
  const c2 = (p * (p - 1)) / 2;
  const c3 = (c2 * (p - 2)) / 3;
  const c4 = (c3 * (p - 3)) / 4;
  const c5 = (c4 * (p - 4)) / 5;
  const c6 = (c5 * (p - 5)) / 6;
  const power = (x: number): number => {
    const turned = 1 / x;
    if (!(turned >= 1 && turned < 2 ** HALVINGS)) {
      // An edge that just enters comes here.
      if (x > 0 && x < 1) return halved[HALVINGS - 1]! * power(x * 2 ** (HALVINGS - 1));
      return x ** p;
    }
    // x = 2^−j·f, f in (1/2, 1], and f = node·(1 + d)
    const j = 31 - Math.clz32(turned);
    const f = x * (1 << j) * (2 * NODES);
    const i = (f + 0.5) | 0;
    const d = (f - i) / i;
    return halved[j]! * nodes[i]! * (1 + d * (p + d * (c2 + d * (c3 + d * (c4 + d * (c5 + d * c6))))));
  };
  return power;
}

/** Linear interpolation in a table with rising x; beyond the ends the end value holds. */
export function interpolate(table: readonly (readonly [number, number])[], x: number): number {
  const first = table[0]!;
  if (x <= first[0]) return first[1];
  for (let i = 1; i < table.length; i++) {
    const [x1, y1] = table[i]!;
    if (x <= x1) {
      const [x0, y0] = table[i - 1]!;
      return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
    }
  }
  return table[table.length - 1]![1];
}
