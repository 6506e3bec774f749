import { Decimal } from "decimal.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { criticalDepth, type StabilityCut, stabilityPockets, stableDepth } from "../../src/mill/stability.ts";

const slot: StabilityCut = {
  teeth: 4,
  radialDepth: 10,
  diameter: 10,
  kc: 800,
  radialRatio: 0.35,
  stiffness: 10,
  frequency: 1000,
  damping: 0.03,
};

/**
 * Growth of a small disturbance per 100 tooth periods, by integrating the cut in time: every tooth, its own direction, the chip
 * from the vibration now and one tooth ago. Two equal modes, Runge–Kutta, straight flutes, no loss of contact.
 */
function growth(cut: StabilityCut, depth: number, rpm: number, climb: boolean): number {
  const w = 2 * Math.PI * cut.frequency;
  const k = cut.stiffness * 1e6; // N/m
  const mass = k / w ** 2;
  const T = 60 / (rpm * cut.teeth);
  const n = Math.max(60, Math.ceil((w * T) / 0.08));
  const dt = T / n;
  const phiE = Math.acos(1 - (2 * cut.radialDepth) / cut.diameter);
  const [start, exit] = climb ? [Math.PI - phiE, Math.PI] : [0, phiE];
  const stiffness = cut.kc * 1e6 * (depth / 1000); // N per m of chip
  const p = (2 * Math.PI) / cut.teeth;
  // 2×2 matrix of the force per displacement, at each half step of a tooth period (the same in each period)
  const A = Array.from({ length: 2 * n + 1 }, (_, i) => {
    const m = [0, 0, 0, 0];
    for (let j = 0; j < cut.teeth; j++) {
      const phi = ((i / (2 * n) + j) * p) % (2 * Math.PI);
      if (phi < start || phi >= exit) continue;
      const [s, c] = [Math.sin(phi), Math.cos(phi)];
      const fx = -c - cut.radialRatio * s;
      const fy = s - cut.radialRatio * c;
      m[0]! += fx * s;
      m[1]! += fx * c;
      m[2]! += fy * s;
      m[3]! += fy * c;
    }
    return m.map((v) => v * stiffness);
  });
  let q = [1e-6, 0.5e-6, 0, 0];
  let past: number[][] = Array.from({ length: n + 1 }, () => [0, 0]);
  const rate = (s: number[], i: number, x: number, y: number): number[] => {
    const [dx, dy] = [s[0]! - x, s[1]! - y];
    const m = A[i]!;
    return [
      s[2]!,
      s[3]!,
      (m[0]! * dx + m[1]! * dy) / mass - 2 * cut.damping * w * s[2]! - w * w * s[0]!,
      (m[2]! * dx + m[3]! * dy) / mass - 2 * cut.damping * w * s[3]! - w * w * s[1]!,
    ];
  };
  const step = (s: number[], d: number[], h: number) => s.map((v, i) => v + h * d[i]!);
  const largest: number[] = [];
  for (let period = 0; period < 300; period++) {
    const now: number[][] = [[q[0]!, q[1]!]];
    let top = 0;
    for (let i = 0; i < n; i++) {
      const [a, b] = [past[i]!, past[i + 1]!];
      // cubic in the middle of the step where there are neighbours
      const [z, e] = [past[Math.max(0, i - 1)]!, past[Math.min(n, i + 2)]!];
      const mid = [0, 1].map((c) => (9 * (a[c]! + b[c]!) - z[c]! - e[c]!) / 16);
      const d1 = rate(q, 2 * i, a[0]!, a[1]!);
      const d2 = rate(step(q, d1, dt / 2), 2 * i + 1, mid[0]!, mid[1]!);
      const d3 = rate(step(q, d2, dt / 2), 2 * i + 1, mid[0]!, mid[1]!);
      const d4 = rate(step(q, d3, dt), 2 * i + 2, b[0]!, b[1]!);
      q = q.map((v, c) => v + (dt / 6) * (d1[c]! + 2 * d2[c]! + 2 * d3[c]! + d4[c]!));
      now.push([q[0]!, q[1]!]);
      top = Math.max(top, Math.hypot(q[0]!, q[1]!));
    }
    past = now;
    largest.push(top);
  }
  return Math.max(...largest.slice(280, 300)) / Math.max(...largest.slice(180, 200));
}

describe("stability against a simulation in time (independent)", () => {
  // Four straight teeth in a slot: two always cut and their directions add up to a constant, so averaging loses nothing.
  for (const rpm of [2100, 3350, 5200, 7500, 9000, 15000, 21000, 60000]) {
    it(`dies out 2 % below the limit and grows 2 % above it, slot, ${rpm}/min`, () => {
      const b = stableDepth(slot, rpm);
      expect(growth(slot, 0.98 * b, rpm, true)).toBeLessThan(1);
      expect(growth(slot, 1.02 * b, rpm, true)).toBeGreaterThan(1);
    });
  }
  // Half the cutter with twelve teeth: three cut; what averaging leaves out is small.
  for (const [rpm, climb] of [
    [1100, true],
    [2500, false],
    [4900, true],
    [7000, false],
  ] as const) {
    it(`agrees within 4 % for half the cutter, ${climb ? "climb" : "conventional"}, ${rpm}/min`, () => {
      const cut = { ...slot, teeth: 12, radialDepth: 5, radialRatio: 0.6, damping: 0.05 };
      const b = stableDepth(cut, rpm);
      expect(growth(cut, 0.96 * b, rpm, climb)).toBeLessThan(1);
      expect(growth(cut, 1.04 * b, rpm, climb)).toBeGreaterThan(1);
    });
  }
});

describe("stability by the matrix of directional coefficients (independent)", () => {
  // Altintas & Budak 1995, eqs. for αxx … αyy and Λ (from memory): the whole boundary swept in frequency, lobe by lobe
  it("agrees with a sweep of the chatter frequency", () => {
    for (const [ae, climb] of [
      [2, true],
      [2, false],
      [5, true],
      [10, true],
    ] as const) {
      const cut = { ...slot, radialDepth: ae };
      const Kr = cut.radialRatio;
      const phi = Math.acos(1 - (2 * ae) / 10);
      const [st, ex] = climb ? [Math.PI - phi, Math.PI] : [0, phi];
      const part = (f: (x: number) => number) => (f(ex) - f(st)) / 2;
      const xx = part((x) => Math.cos(2 * x) - 2 * Kr * x + Kr * Math.sin(2 * x));
      const xy = part((x) => -Math.sin(2 * x) - 2 * x + Kr * Math.cos(2 * x));
      const yx = part((x) => -Math.sin(2 * x) + 2 * x + Kr * Math.cos(2 * x));
      const yy = part((x) => -Math.cos(2 * x) - 2 * Kr * x - Kr * Math.sin(2 * x));
      const [trace, det] = [xx + yy, xx * yy - xy * yx];
      let critical = Number.POSITIVE_INFINITY;
      for (let r = 0.2; r < 4; r += 1e-5) {
        // G = 1/k/(1 − r² + 2iζr): Λ = μ·k·(1 − r² + 2iζr) with det·μ² + trace·μ + 1 = 0
        const disc = trace * trace - 4 * det;
        for (const sign of [1, -1]) {
          const re = (-trace + (disc >= 0 ? sign * Math.sqrt(disc) : 0)) / (2 * det);
          const im = disc >= 0 ? 0 : (sign * Math.sqrt(-disc)) / (2 * det);
          const [gr, gi] = [1 - r * r, 2 * cut.damping * r];
          const [LR, LI] = [re * gr - im * gi, re * gi + im * gr];
          const b = ((-2 * Math.PI * LR * 10_000) / (4 * 800)) * (1 + (LI / LR) ** 2);
          if (b > 0) critical = Math.min(critical, b);
        }
      }
      expect(criticalDepth(cut) / critical).toBeCloseTo(1, 6);
    }
  });
});

describe("stability (identity)", () => {
  it("is never below the critical depth, and touches it", () => {
    const b = criticalDepth(slot);
    let least = Number.POSITIVE_INFINITY;
    for (let rpm = 2000; rpm < 30000; rpm += 7) least = Math.min(least, stableDepth(slot, rpm) / b);
    expect(least).toBeGreaterThanOrEqual(1 - 1e-9);
    expect(least).toBeLessThan(1.001);
  });
  it("is never below it for any cut at any speed", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.002, max: 0.3, noNaN: true }),
        fc.double({ min: 1, max: 5.5, noNaN: true }),
        (teeth, share, radialRatio, damping, speed) => {
          const cut = { ...slot, teeth, radialDepth: 10 * share, radialRatio, damping };
          expect(stableDepth(cut, 10 ** speed) / criticalDepth(cut)).toBeGreaterThan(1 - 1e-9);
        },
      ),
      { numRuns: 1000, seed: 4 },
    );
  });
  it("is in proportion to stiffness and inverse to kc", () => {
    const b = stableDepth(slot, 9000);
    expect(stableDepth({ ...slot, stiffness: 20 }, 9000)).toBeCloseTo(2 * b, 10);
    expect(stableDepth({ ...slot, kc: 1600 }, 9000)).toBeCloseTo(b / 2, 10);
  });
  it("depends on speed and frequency through their ratio", () =>
    expect(stableDepth({ ...slot, frequency: 2000 }, 18000)).toBeCloseTo(stableDepth(slot, 9000), 9));
  it("grows with damping and as the radial depth falls", () => {
    expect(criticalDepth({ ...slot, damping: 0.06 })).toBeGreaterThan(criticalDepth(slot));
    let last = 0;
    for (const ae of [10, 7, 4, 2, 1, 0.3, 0.01, 1e-6]) {
      const b = criticalDepth({ ...slot, radialDepth: ae });
      expect(b).toBeGreaterThan(last);
      last = b;
    }
  });
  it("goes on without a step where thin cuts are summed as a series: at 0.3 rad of engagement", () => {
    // by a cubic through four neighbours above it, where φ² − sin²φ is taken as it stands
    const at = (phi: number) => Math.log(criticalDepth({ ...slot, radialDepth: 10 * Math.sin(phi / 2) ** 2 }));
    const h = 1e-4;
    const [a, b, c, d] = [1, 2, 3, 4].map((n) => at(0.3 + n * h));
    expect(Math.abs(at(0.3) - (4 * a! - 6 * b! + 4 * c! - d!))).toBeLessThan(1e-11);
  });
  it("keeps its figures at a cut of hardly any engagement: a purely tangential force goes as 1/φ²", () => {
    // Kr = 0: μ = ±i/√(φ² − sin²φ), and φ² − sin²φ is φ⁴/3 but for a share of 2φ²/15; as a difference it would have 4 figures left
    const at = (phi: number) => criticalDepth({ ...slot, radialRatio: 0, radialDepth: 10 * Math.sin(phi / 2) ** 2 });
    expect(at(1e-6) / at(3e-6)).toBeCloseTo(9, 9);
  });
  it("has φ² − sin²φ right to 13 figures at thin cuts (decimal.js, 40 figures)", () => {
    // Kr = 0: the depth goes as 1/√(φ² − sin²φ)
    const at = (phi: number) => criticalDepth({ ...slot, radialRatio: 0, radialDepth: 10 * Math.sin(phi / 2) ** 2 });
    const Exact = Decimal.clone({ precision: 40 });
    const gap = (phi: number) => {
      // the engagement that the radial depth stands for, in 40 figures too
      const half = Exact.asin(new Exact(10 * Math.sin(phi / 2) ** 2).div(10).sqrt());
      return half
        .times(2)
        .pow(2)
        .minus(Exact.sin(half.times(2)).pow(2));
    };
    for (const phi of [0.299999, 0.25, 0.1, 0.01])
      expect(Math.abs((at(phi) / at(1)) * gap(phi).div(gap(1)).sqrt().toNumber() - 1)).toBeLessThan(3e-13);
  });
  it("settles at the critical depth at very low speed", () =>
    expect(stableDepth(slot, 20) / criticalDepth(slot)).toBeCloseTo(1, 3));
  it("has pockets at the speeds whose tooth frequency divides the natural frequency", () => {
    const pockets = stabilityPockets(slot, 4);
    pockets.forEach((pocket, i) => {
      expect(pocket.rpm / (15000 / (i + 1))).toBeCloseTo(1, 2);
      for (const d of [0.97, 1.03]) expect(stableDepth(slot, pocket.rpm * d)).toBeLessThan(pocket.depth);
    });
    expect(pockets[0]!.depth).toBeGreaterThan(pockets[1]!.depth);
  });
  it("takes a purely tangential force", () =>
    expect(Number.isFinite(stableDepth({ ...slot, radialRatio: 0 }, 9000))).toBe(true));
  it("rejects what is outside its limits, by name", () => {
    for (const [parameter, value] of [
      ["damping", 0],
      ["damping", 1],
      ["radialDepth", 11],
      ["teeth", 1.5],
      ["stiffness", 0],
      ["frequency", Number.NaN],
    ] as const) {
      try {
        stableDepth({ ...slot, [parameter]: value }, 9000);
        expect.unreachable(`took ${parameter} ${value}`);
      } catch (e) {
        expect((e as TradeError).parameter).toBe(parameter);
      }
    }
    expect(() => stableDepth(slot, 0)).toThrow(TradeError);
  });
});
