import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { anySpeedDepth, type ChatterMode, stableAtAnySpeed, type TipModes } from "../../src/mill/chatter.ts";
import { averagedCut, type ChatterCut, forceSlope } from "../../src/mill/chatter-cut.ts";
import { criticalDepth } from "../../src/mill/stability.ts";
import published from "../published/chatter.json" with { type: "json" };

const same = (mode: ChatterMode): TipModes => ({ x: [mode], y: [mode] });
const mode = { frequency: 1000, stiffness: 10, damping: 0.03 };
const slot: ChatterCut = {
  teeth: 4,
  radialDepth: 10,
  diameter: 10,
  slope: 800,
  radialRatio: 0.35,
  way: "climb",
  surfaceSpeed: 100,
  processDamping: 0,
};

describe("depth without chatter at any speed (published)", () => {
  const two = published.twoModes;
  const cut = {
    teeth: two.teeth,
    diameter: two.diameter,
    slope: two.Kt,
    radialRatio: two.Kr / two.Kt,
    surfaceSpeed: 100,
    processDamping: 0,
  };
  for (const [name, ae, way, wanted] of [
    ["half, climb", two.diameter / 2, "climb", two.critical.climbHalf],
    ["half, conventional", two.diameter / 2, "conventional", two.critical.conventionalHalf],
    ["slot", two.diameter, "climb", two.critical.slot],
  ] as const) {
    it(`two measured modes in each direction, ${name}: ${wanted} mm`, () =>
      expect(anySpeedDepth({ ...cut, radialDepth: ae, way }, { x: two.x, y: two.y })).toBeCloseTo(wanted, 3));
  }
  const steel = published.steelTool;
  it(`12 mm cutter in steel, modes fitted to cutting tests: ${steel.critical} mm`, () => {
    const depth = anySpeedDepth(
      {
        teeth: steel.teeth,
        radialDepth: steel.diameter / 2,
        diameter: steel.diameter,
        slope: steel.Kt,
        radialRatio: steel.Kr / steel.Kt,
        way: "climb",
        surfaceSpeed: 200,
        processDamping: 0,
      },
      { x: steel.modes, y: steel.modes },
    );
    expect(depth).toBeCloseTo(steel.critical, 2);
  });
  const bench = published.benchmark;
  for (const [share, rpm, limit] of bench.points as [number, number, number][]) {
    it(`is no more than 1.03 of the limit at one speed: ae/D ${share}, ${rpm}/min, ${limit} mm`, () => {
      const depth = anySpeedDepth(
        {
          teeth: bench.teeth,
          radialDepth: 10 * share,
          diameter: 10,
          slope: bench.Kt,
          radialRatio: bench.Kr / bench.Kt,
          way: "climb",
          surfaceSpeed: 300,
          processDamping: 0,
        },
        same(bench.mode),
      );
      expect(depth).toBeLessThanOrEqual(1.03 * limit);
    });
  }
});

describe("depth without chatter at any speed (identity)", () => {
  it("without process damping is the critical depth of the solution for one round mode, within 1 %", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 8 }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ min: 0.01, max: 0.9, noNaN: true }),
        fc.double({ min: 0.01, max: 0.2, noNaN: true }),
        fc.constantFrom("climb" as const, "conventional" as const),
        (teeth, share, radialRatio, damping, way) => {
          const cut = { ...slot, teeth, radialDepth: 10 * share, radialRatio, way };
          const wanted = criticalDepth({ ...cut, kc: cut.slope, ...mode, damping });
          const found = anySpeedDepth(cut, same({ ...mode, damping }));
          // beyond four times the mode's frequency nothing is looked for: cuts of hardly any engagement may have it there
          if (found < 1e3) expect(Math.abs(found / wanted - 1)).toBeLessThan(0.01);
        },
      ),
    );
  });
  it("is that depth of a round mode to seven figures where it is not searched for by trial", () =>
    expect(anySpeedDepth(slot, same(mode)) / criticalDepth({ ...slot, kc: slot.slope, ...mode })).toBeCloseTo(1, 7));
  it("is in proportion to stiffness, inverse to the slope, and knows no frequency of its own", () => {
    const b = anySpeedDepth(slot, same(mode));
    expect(anySpeedDepth(slot, same({ ...mode, stiffness: 20 })) / b).toBeCloseTo(2, 6);
    expect(anySpeedDepth({ ...slot, slope: 1600 }, same(mode)) * 2).toBeCloseTo(b, 6);
    expect(anySpeedDepth(slot, same({ ...mode, frequency: 3000 }))).toBeCloseTo(b, 6);
  });
  it("two equal halves of a mode are one mode half as stiff", () => {
    const half = { ...mode, stiffness: 20 };
    expect(anySpeedDepth(slot, { x: [half, half], y: [half, half] })).toBeCloseTo(anySpeedDepth(slot, same(mode)), 8);
  });
  it("turning the part over (climb to conventional) changes nothing for a round mode", () => {
    const cut = { ...slot, radialDepth: 3, processDamping: 2e5 };
    expect(anySpeedDepth({ ...cut, way: "conventional" }, same(mode)) / anySpeedDepth(cut, same(mode))).toBeCloseTo(
      1,
      5,
    );
  });
  it("grows with process damping, and more so at low speed", () => {
    const b = [0, 1e4, 5e4, 1e5].map((processDamping) => anySpeedDepth({ ...slot, processDamping }, same(mode)));
    for (let i = 1; i < b.length; i++) expect(b[i]!).toBeGreaterThan(b[i - 1]!);
    const slow = anySpeedDepth({ ...slot, processDamping: 1e4, surfaceSpeed: 20 }, same(mode));
    expect(slow).toBeCloseTo(b[2]!, 4); // C/v is what counts
  });
  it("is where the answer of stableAtAnySpeed turns", () => {
    for (const processDamping of [0, 1e5]) {
      for (const radialDepth of [10, 4, 0.5]) {
        const cut = { ...slot, radialDepth, processDamping };
        const b = anySpeedDepth(cut, same(mode));
        expect(stableAtAnySpeed(cut, same(mode), 0.995 * b)).toBe(true);
        expect(stableAtAnySpeed(cut, same(mode), 1.005 * b)).toBe(false);
      }
    }
  });
  it("the averages of a thin cut keep their figures: ss is z/2π·φ³/3·(1 − φ²/5) but for φ⁴", () => {
    const cut = { ...slot, processDamping: 1e6, surfaceSpeed: 60 };
    for (const phi of [1e-4, 1e-3]) {
      const { P } = averagedCut({ ...cut, radialDepth: 10 * Math.sin(phi / 2) ** 2 });
      expect(P[0]! / ((4 / (2 * Math.PI)) * (phi ** 3 / 3) * (1 - phi ** 2 / 5))).toBeCloseTo(1, 11);
    }
  });
  it("the averages of a full turn: half of z/2π·π in ss and cc, nothing in sc", () => {
    const { A, P } = averagedCut({ ...slot, processDamping: 1e6, surfaceSpeed: 60 });
    for (const [i, wanted] of [1, 0, 0, 1].entries()) expect(P[i]).toBeCloseTo(wanted, 12);
    expect(A[0]).toBeCloseTo(800 * 0.35, 9);
    expect(A[1]).toBeCloseTo(800, 9);
  });
});

/** Averages by summation over the angle, tooth by tooth. */
function summed(cut: ChatterCut) {
  const phi = Math.acos(1 - (2 * cut.radialDepth) / cut.diameter);
  const [from, to] = cut.way === "climb" ? [Math.PI - phi, Math.PI] : [0, phi];
  const n = 20_000;
  const A = [0, 0, 0, 0];
  const P = [0, 0, 0, 0];
  const share = (cut.teeth * (to - from)) / n / (2 * Math.PI);
  for (let i = 0; i < n; i++) {
    const t = from + ((i + 0.5) / n) * (to - from);
    const [s, c] = [Math.sin(t), Math.cos(t)];
    // a chip s·x + c·y; the tangential force against the turn, the radial one towards the axis
    const fx = cut.slope * (c + cut.radialRatio * s);
    const fy = -cut.slope * (s - cut.radialRatio * c);
    const d = (cut.processDamping / (cut.surfaceSpeed / 60)) * 1e-6;
    for (const [k, v] of [fx * s, fx * c, fy * s, fy * c].entries()) A[k]! += share * v;
    for (const [k, v] of [s * s, s * c, s * c, c * c].entries()) P[k]! += share * d * v;
  }
  return { A, P };
}

/**
 * Roots of the characteristic equation of the averaged cut with positive real part at one speed, by the principle of the argument:
 * the whole delay equation at a tooth period T, no quadratic in μ.
 */
function unstableRoots({ A, P }: ReturnType<typeof summed>, m: ChatterMode, depth: number, T: number): number {
  const w0 = 2 * Math.PI * m.frequency;
  const k = 1000 * m.stiffness;
  let turned = 0;
  let last = 0;
  const steps = 40_000;
  for (let i = 0; i <= steps; i++) {
    const w = 1e-3 * w0 + (i / steps) ** 1.5 * 60 * w0;
    const r = w / w0;
    const [er, ei] = [1 - Math.cos(w * T), Math.sin(w * T)];
    const at = (j: number, diagonal: boolean): [number, number] => [
      (diagonal ? k * (1 - r * r) : 0) + depth * A[j]! * er,
      (diagonal ? k * 2 * m.damping * r : 0) + depth * A[j]! * ei + w * depth * P[j]!,
    ];
    const [a, b, c, d] = [at(0, true), at(1, false), at(2, false), at(3, true)];
    const re = a[0] * d[0] - a[1] * d[1] - b[0] * c[0] + b[1] * c[1];
    const im = a[0] * d[1] + a[1] * d[0] - b[0] * c[1] - b[1] * c[0];
    const angle = Math.atan2(im, re);
    if (i > 0) {
      let step = angle - last;
      if (step > Math.PI) step -= 2 * Math.PI;
      if (step < -Math.PI) step += 2 * Math.PI;
      turned += step;
    }
    last = angle;
  }
  // a quasi-polynomial of degree 4 turns by 2π from 0 to ∞, less π for each root on the right
  return Math.round(2 - turned / Math.PI);
}

describe("depth without chatter at any speed (independent)", () => {
  it("the averaged matrices are the sums over the turn", () => {
    for (const way of ["climb", "conventional"] as const) {
      for (const radialDepth of [0.02, 1, 4, 8, 10]) {
        const cut = { ...slot, radialDepth, way, processDamping: 2e5 };
        const [closed, sum] = [averagedCut(cut), summed(cut)];
        for (let i = 0; i < 4; i++) {
          expect(closed.A[i]).toBeCloseTo(sum.A[i]!, 5);
          expect(closed.P[i]).toBeCloseTo(sum.P[i]!, 8);
        }
      }
    }
  });
  for (const [radialDepth, processDamping] of [
    [10, 0],
    [4, 0],
    [10, 4e4],
    [3, 4e4],
  ] as const) {
    it(`no speed of many is unstable 2 % below it, one is 3 % above it: ae ${radialDepth}, C ${processDamping}`, () => {
      const cut = { ...slot, radialDepth, processDamping };
      const b = anySpeedDepth(cut, same(mode));
      const periods = Array.from({ length: 40 }, (_, i) => 1.2e-3 * 1.04 ** i);
      const sums = summed(cut);
      for (const T of periods) expect(unstableRoots(sums, mode, 0.98 * b, T)).toBe(0);
      expect(Math.max(...periods.map((T) => unstableRoots(sums, mode, 1.03 * b, T)))).toBeGreaterThan(0);
    });
  }
  it("the slope is the derivative of Kienzle's force per width", () => {
    const force = (h: number) => 2220 * h ** (1 - 0.14);
    expect(forceSlope(2220, 0.14, 0.04)).toBeCloseTo((force(0.04 + 1e-6) - force(0.04 - 1e-6)) / 2e-6, 3);
  });
});

describe("depth without chatter at any speed: bad input", () => {
  it("rejects what is outside its limits, by name", () => {
    for (const [parameter, value] of [
      ["teeth", 0],
      ["radialDepth", 11],
      ["slope", 0],
      ["radialRatio", -1],
      ["surfaceSpeed", 0],
      ["processDamping", -1],
    ] as const) {
      try {
        anySpeedDepth({ ...slot, [parameter]: value }, same(mode));
        expect.unreachable(`took ${parameter} ${value}`);
      } catch (e) {
        expect((e as TradeError).parameter).toBe(parameter);
      }
    }
    expect(() => anySpeedDepth(slot, { x: [mode], y: [] })).toThrow(/modes/);
    expect(() => anySpeedDepth(slot, same({ ...mode, damping: 1 }))).toThrow(/damping/);
    expect(() => stableAtAnySpeed(slot, same(mode), 0)).toThrow(TradeError);
  });
});
