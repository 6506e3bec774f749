/** Depth without chatter against a plain solution: complex numbers, the textbook's quadratic formula, a very fine sweep. */
import { add, type Complex, complex, divide, multiply, sqrt, subtract } from "mathjs";
import { describe, expect, it } from "vitest";
import { anySpeedDepth, type ChatterMode, stableAtAnySpeed, type TipModes } from "../../src/mill/chatter.ts";
import { averagedCut, type ChatterCut } from "../../src/mill/chatter-cut.ts";

const cut: ChatterCut = {
  ...{ teeth: 4, radialDepth: 4, diameter: 10, slope: 900, radialRatio: 0.3, way: "climb", surfaceSpeed: 60 },
  processDamping: 0,
};
const mode = (frequency: number, stiffness: number, damping: number): ChatterMode => ({
  frequency,
  stiffness,
  damping,
});
/**
 * Round, unlike in the two directions, two modes of which the higher is the softer, near neighbours. Made anew for each test: what is
 * remembered of a tip would keep one from looking at it itself.
 */
const TIPS: Readonly<Record<string, () => TipModes>> = {
  unlike: () => ({ x: [mode(900, 12, 0.03)], y: [mode(1100, 8, 0.025)] }),
  "higher softer": () => ({
    x: [mode(600, 60, 0.04), mode(2400, 9, 0.02)],
    y: [mode(700, 50, 0.04), mode(2300, 10, 0.02)],
  }),
  neighbours: () => ({ x: [mode(1000, 15, 0.02), mode(1080, 18, 0.02)], y: [mode(1020, 14, 0.03)] }),
  sharp: () => ({ x: [mode(1000, 15, 0.006), mode(1130, 12, 0.006)], y: [mode(1060, 14, 0.006)] }),
  // the lowest point of its boundary lies in the dip that is seen third lowest by a coarse sweep
  "one sharp along": () => ({ x: [mode(586, 11.4, 0.004)], y: [mode(1018, 11.5, 0.033), mode(1631, 14.3, 0.026)] }),
  "one sharp across": () => ({
    x: [mode(1400, 20.8, 0.028)],
    y: [mode(2006, 18.9, 0.016), mode(1118, 16.5, 0.004)],
  }),
  "lower softer": () => ({
    x: [mode(500, 6, 0.03), mode(1800, 40, 0.02)],
    y: [mode(1500, 30, 0.03), mode(520, 7, 0.03)],
  }),
};

const C = (re: number, im = 0) => complex(re, im);
const times = (...all: Complex[]) => all.reduce((a, b) => multiply(a, b) as Complex);
const over = (a: Complex, b: Complex) => divide(a, b) as Complex;

/** 1/G of modes side by side [N/mm]. */
function stiffness(modes: readonly ChatterMode[], omega: number): Complex {
  let sum = C(0);
  for (const m of modes) {
    const r = omega / (2 * Math.PI * m.frequency);
    sum = add(sum, over(C(1), times(C(1000 * m.stiffness), C(1 - r * r, 2 * m.damping * r)))) as Complex;
  }
  return over(C(1), sum);
}

/** Both η = b·μ of det(B + η·A) = 0 at ω. */
function both(c: ChatterCut, tip: TipModes, omega: number, depth: number): Complex[] {
  const { A, P } = averagedCut(c);
  const flank = P.map((p) => C(0, omega * depth * p));
  const b11 = add(stiffness(tip.x, omega), flank[0]!) as Complex;
  const b22 = add(stiffness(tip.y, omega), flank[3]!) as Complex;
  const qa = C(A[0]! * A[3]! - A[1]! * A[2]!);
  const qb = subtract(
    add(times(b11, C(A[3]!)), times(b22, C(A[0]!))),
    add(times(flank[1]!, C(A[2]!)), times(flank[2]!, C(A[1]!))),
  ) as Complex;
  const qc = subtract(times(b11, b22), times(flank[1]!, flank[2]!)) as Complex;
  const root = sqrt(subtract(times(qb, qb), times(C(4), qa, qc)) as Complex) as Complex;
  const minus = times(C(-1), qb);
  return [add(minus, root), subtract(minus, root)].map((n) => over(n as Complex, times(C(2), qa)));
}

/** Every ω of a sweep far finer than any mode is wide. */
function sweep(tip: TipModes): number[] {
  const all = [...tip.x, ...tip.y].map((m) => 2 * Math.PI * m.frequency);
  const [low, high] = [0.6 * Math.min(...all), 4 * Math.max(...all)];
  // as many as the narrowest mode wants
  const n = Math.min(...[...tip.x, ...tip.y].map((m) => m.damping)) < 0.01 ? 20_000 : 6000;
  return Array.from({ length: n + 1 }, (_, i) => low * (high / low) ** (i / n));
}

describe("depth without chatter by a fine sweep (brute force)", () => {
  for (const [name, make] of Object.entries(TIPS))
    for (const way of ["climb", "conventional"] as const)
      it(`no damping of the flank, ${name}, ${way}: the least |η|²/(2·Re η)`, () => {
        const tip = make();
        let wanted = Number.POSITIVE_INFINITY;
        for (const omega of sweep(tip))
          for (const { re, im } of both({ ...cut, way }, tip, omega, 1))
            if (re > 0) wanted = Math.min(wanted, (re * re + im * im) / (2 * re));
        // the sweep's own error: its step is a fifteenth of a hundredth of ω, the narrowest mode 4 hundredths wide
        expect(Math.abs(anySpeedDepth({ ...cut, way }, tip) / wanted - 1)).toBeLessThan(1e-4);
      });
  for (const [name, make] of Object.entries(TIPS))
    for (const way of ["climb", "conventional"] as const)
      it(`with damping of the flank, ${name}, ${way}: a root comes to 1 from the centre just at the depth`, () => {
        const tip = make();
        const damped = { ...cut, way, processDamping: 3e4 };
        const depth = anySpeedDepth(damped, tip);
        const nearest = (b: number) =>
          Math.min(
            ...sweep(tip).flatMap((omega) =>
              both(damped, tip, omega, b).map(({ re, im }) => Math.hypot(1 - re / b, im / b)),
            ),
          );
        expect(nearest(0.9995 * depth)).toBeGreaterThan(1);
        expect(nearest(1.0005 * depth)).toBeLessThan(1);
        expect(stableAtAnySpeed(damped, tip, 0.9995 * depth)).toBe(true);
        expect(stableAtAnySpeed(damped, tip, 1.0005 * depth)).toBe(false);
      });
});
