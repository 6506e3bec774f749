import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import {
  CHAMFER,
  chamferThreads,
  handbookTapTorque,
  tapBreakingTorque,
  tappedHoleDepth,
  tappedSection,
  tapTorque,
} from "../../src/thread/tapping.ts";

const COARSE: readonly [number, number, number][] = [
  [3, 0.5, 2.5],
  [4, 0.7, 3.3],
  [5, 0.8, 4.2],
  [6, 1, 5],
  [8, 1.25, 6.8],
  [10, 1.5, 8.5],
  [12, 1.75, 10.2],
  [16, 2, 14],
  [20, 2.5, 17.5],
  [24, 3, 21],
];
const C45 = { kc11: 2220, exponent: 0.14 };
const tap = (major: number, pitch: number, holeDiameter: number, more = {}) =>
  tapTorque({ major, pitch, holeDiameter, profileAngle: 60, flutes: 3, chamferThreads: 4, ...C45, ...more });

describe("tapping torque (published: Kosilova and Meshcheryakov 1985, constants from memory)", () => {
  it.each(COARSE)("M%s×%s in steel lies within a third of the handbook's", (D, P, d) => {
    const ratio = tap(D, P, d) / handbookTapTorque(D, P, 0.027, 1);
    expect(ratio).toBeGreaterThan(0.67);
    expect(ratio).toBeLessThan(1.5);
  });
  it.each(COARSE)(
    "M%s×%s lies between one and 2.2 times the trade's P²·D·kc/8 with kc 2500 (from memory)",
    (D, P, d) => {
      const ratio = tap(D, P, d) / ((P * P * D * 2500) / 8000);
      expect(ratio).toBeGreaterThan(1);
      expect(ratio).toBeLessThan(2.2);
    },
  );
  it("M24 in steel takes about 100 N·m: more than a small mill's 40", () => {
    expect(tap(24, 3, 21)).toBeGreaterThan(80);
    expect(tap(24, 3, 21)).toBeLessThan(140);
  });
});

describe("tapping torque (independent: the groove cut up into rings)", () => {
  it("sums specific force times radius over the section", () => {
    const [D, P, d, flutes, C] = [10, 1.5, 8.5, 3, 4];
    const t = (D - d) / 2;
    const kc = C45.kc11 * Math.max(t / (flutes * C), 0.05) ** -C45.exponent;
    const n = 20000;
    let [moment, area] = [0, 0];
    for (let i = 0; i < n; i++) {
      const above = ((i + 0.5) / n) * t; // from the hole towards the major diameter
      const width = P / 8 + 2 * (t - above) * Math.tan(Math.PI / 6);
      area += (width * t) / n;
      moment += ((width * t) / n) * (d / 2 + above);
    }
    expect(tappedSection(D, P, d, 60)).toBeCloseTo(area, 6);
    expect(tap(D, P, d)).toBeCloseTo((1.5 * kc * moment) / 1000, 5);
  });
});

describe("tapping (identity)", () => {
  it("takes more torque in a smaller hole and less in a larger one", () => {
    expect(tap(10, 1.5, 8.4)).toBeGreaterThan(tap(10, 1.5, 8.5));
    expect(tap(10, 1.5, 8.7)).toBeLessThan(tap(10, 1.5, 8.5));
  });
  it("takes more torque with a long chamfer until the chip is as thin as measurements go", () => {
    expect(tap(24, 3, 21, { chamferThreads: 8 })).toBeGreaterThan(tap(24, 3, 21, { chamferThreads: 2 }));
    expect(tap(3, 0.5, 2.5, { chamferThreads: 8 })).toBe(tap(3, 0.5, 2.5, { chamferThreads: 4 }));
  });
  it("leaves common taps of high-speed steel a margin in steel (common practice)", () => {
    for (const [D, P, d] of COARSE) {
      const margin = tapBreakingTorque(D, 3500, false) / tap(D, P, d);
      expect(margin).toBeGreaterThan(1.5);
      expect(margin).toBeLessThan(8);
    }
  });
  it("breaks above the torque that tap chucks slip at (common practice, from memory)", () => {
    for (const [D, slip] of [
      [3, 0.5],
      [4, 1.2],
      [5, 2],
      [6, 4],
      [8, 8],
      [10, 16],
      [12, 22],
      [16, 40],
    ] as const) {
      const ratio = tapBreakingTorque(D, 3500, false) / slip;
      expect(ratio).toBeGreaterThan(1.5);
      expect(ratio).toBeLessThan(6);
    }
  });
});

describe("lead of a tap (published: ASME B94.9, from memory)", () => {
  it("is 1 to 2, 3 to 5 and 7 to 10 pitches", () => {
    for (const c of Object.values(CHAMFER)) {
      expect(c.threads).toBeGreaterThanOrEqual(c.least);
      expect(c.threads).toBeLessThanOrEqual(c.most);
    }
    expect([CHAMFER.plug.least, CHAMFER.plug.most, CHAMFER.taper.least, CHAMFER.taper.most]).toEqual([3, 5, 7, 10]);
  });
  it("adds to the depth of the hole", () => {
    expect(tappedHoleDepth(10, 1, chamferThreads("bottoming"), 0)).toBe(12);
    expect(tappedHoleDepth(10, 1, chamferThreads(" Taper "), 0.5)).toBe(18.5);
    expect(chamferThreads("3.5")).toBe(3.5);
    expect(chamferThreads(2)).toBe(2);
  });
  it("rejects what makes no sense, by name", () => {
    for (const [f, parameter] of [
      [() => tappedSection(10, 1.5, 10, 60), "holeDiameter"],
      [() => tappedSection(0, 1.5, 1, 60), "major"],
      [() => tap(10, 1.5, 8.5, { flutes: 0 }), "flutes"],
      [() => tap(10, 1.5, 8.5, { chamferThreads: 0 }), "chamferThreads"],
      [() => tap(10, 1.5, 8.5, { exponent: 1 }), "exponent"],
      [() => handbookTapTorque(10, 1.5, 0, 1), "factor"],
      [() => tapBreakingTorque(10, 0, false), "ruptureStrength"],
      [() => tappedHoleDepth(0, 1, 1, 0), "threadDepth"],
      [() => tappedHoleDepth(1, 1, 1, -1), "room"],
      [() => chamferThreads("sharp"), "chamfer"],
      [() => chamferThreads(0), "chamfer"],
      [() => chamferThreads(""), "chamfer"],
    ] as const) {
      try {
        f();
        expect.unreachable(`took a bad ${parameter}`);
      } catch (e) {
        expect(e).toBeInstanceOf(TradeError);
        expect((e as TradeError).parameter).toBe(parameter);
      }
    }
  });
});
