import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Segment } from "../../src/tool/beam.ts";
import {
  bendingStress,
  largestMisesStress,
  largestPrincipalStress,
  misesStress,
  principalStress,
} from "../../src/tool/stress.ts";
import { refusal } from "../refusal.ts";
import { anyTool, bar, beams, near, recorded } from "./bars.ts";

const plain = { torque: 0, notchFactor: 1, holderNotchFactor: 1 };

/** Stress of a section by its eigenvalues: largest principal, and von Mises from the two that are not zero. */
const byEigenvalues = (moment: number, torque: number, d: number): { principal: number; mises: number } => {
  const W = (Math.PI * d ** 3) / 32;
  const sigma = moment / W;
  const tau = torque / (2 * W);
  const centre = sigma / 2;
  const radius = Math.hypot(sigma / 2, tau);
  const [s1, s2] = [centre + radius, centre - radius];
  return { principal: s1, mises: Math.sqrt(s1 * s1 - s1 * s2 + s2 * s2) };
};

/** Largest stress by walking along the tool in small steps; on a cone in equal ratios of the diameter, so that its slim end has as many. */
const byWalking = (force: number, torque: number, tool: Segment[], kind: "principal" | "mises"): number => {
  let largest = 0;
  let s = 0;
  for (const { tipDiameter, holderDiameter, length } of tool) {
    const ratio = Math.log(holderDiameter / tipDiameter);
    for (let i = 0; i <= 2000; i++) {
      const d = tipDiameter * Math.exp((ratio * i) / 2000);
      const share = Math.abs(ratio) < 1e-6 ? i / 2000 : Math.expm1((ratio * i) / 2000) / Math.expm1(ratio);
      largest = Math.max(largest, byEigenvalues(force * (s + length * share), 1000 * torque, d)[kind]);
    }
    s += length;
  }
  return largest;
};

describe("tool stress by a textbook's formulas (independent)", () => {
  it("a round bar in bending and torsion: σ₁ and σv of Shigley's formulas (from memory)", () => {
    // σ₁ = 16/(π·d³)·(M + √(M² + T²)), σv = 16/(π·d³)·√(4·M² + 3·T²): by hand for M = 3, T = 4 N·m, d = 8 mm
    const factor = 16 / (Math.PI * 512);
    expect(near(principalStress(3000, 4000, 8), factor * 8000)).toBeLessThan(1e-14);
    expect(near(misesStress(3000, 4000, 8), factor * 1000 * Math.sqrt(84))).toBeLessThan(1e-14);
    expect(near(bendingStress(3000, 8), factor * 6000)).toBeLessThan(1e-14);
  });
});

describe(`tool stress (independent): ${beams.source}`, () => {
  for (const c of beams.cases) {
    it(`${c.name}: nominal peak in bending`, () => {
      const opts = { ...plain, loadDistance: c.loadDistance };
      expect(near(largestMisesStress(c.force, recorded(c.segments), opts).stress, c.stress)).toBeLessThan(1e-12);
      expect(near(largestPrincipalStress(c.force, recorded(c.segments), opts).stress, c.stress)).toBeLessThan(1e-12);
    });
  }
});

describe("tool stress (independent): eigenvalues of the stress, walked along the tool", () => {
  it("finds the same peak in any tool, at either measure", () => {
    fc.assert(
      fc.property(
        anyTool,
        fc.double({ min: 0.1, max: 500, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (tool, force, torque) => {
          for (const [kind, formula] of [
            ["mises", largestMisesStress],
            ["principal", largestPrincipalStress],
          ] as const) {
            const peak = formula(force, tool, { ...plain, torque }).stress;
            const walked = byWalking(force, torque, tool, kind);
            expect(peak).toBeGreaterThanOrEqual(walked * (1 - 1e-9));
            expect(near(peak, walked)).toBeLessThan(1e-3); // steps of the walk, on cones
          }
        },
      ),
      { numRuns: 60 },
    );
  });
  it("finds the weakest section inside a slim cone: d = 3·s·(slope of the cone)", () => {
    // d = 1 + 0.2·s: 32·F·s/(π·d³) is largest at s = 1/(2·0.2) = 2.5
    const peak = largestPrincipalStress(10, bar([1, 9, 40]), plain);
    expect(peak.position).toBeCloseTo(2.5, 12);
    expect(peak.place).toBe("along a part");
    expect(peak.stress).toBeCloseTo((320 * 2.5) / (Math.PI * 1.5 ** 3), 10);
  });
});

describe("tool stress (identity)", () => {
  it("von Mises is never below the largest principal stress, and the same without torque", () => {
    fc.assert(
      fc.property(anyTool, fc.double({ min: 0, max: 30, noNaN: true }), (tool, torque) => {
        const v = largestMisesStress(25, tool, { ...plain, torque }).stress;
        const p = largestPrincipalStress(25, tool, { ...plain, torque }).stress;
        expect(v).toBeGreaterThanOrEqual(p * (1 - 1e-12));
        if (torque === 0) expect(near(v, p)).toBeLessThan(1e-12);
      }),
    );
  });
  it("multiplies the thin side of a shoulder by the notch factor, wherever the shoulder looks", () => {
    const tool = bar([6, 5], [3, 20], [8, 20]);
    const peak = largestPrincipalStress(20, tool, { ...plain, notchFactor: 1.5 });
    expect(peak.place).toBe("shoulder");
    expect(peak.position).toBe(25);
    expect(peak.stress).toBeCloseTo((1.5 * 32 * 20 * 25) / (Math.PI * 27), 10);
    expect(peak.nominal).toBeCloseTo((32 * 20 * 25) / (Math.PI * 27), 10);
    // the shoulder behind a head: thin side at the neck's tip end
    const head = largestPrincipalStress(1e-6, tool, { ...plain, torque: 2, notchFactor: 1.5 });
    expect(head.stress).toBeCloseTo((1.5 * 16 * 2000) / (Math.PI * 27), 2);
  });
  it("sees a shoulder at the very next part, first or last (identity)", () => {
    for (const tool of [bar([3, 20], [8, 20]), bar([3, 8], [3, 12], [8, 20])]) {
      const peak = largestPrincipalStress(20, tool, { ...plain, notchFactor: 1.5 });
      expect(peak).toMatchObject({ place: "shoulder", position: 20 });
      expect(peak.stress).toBeCloseTo((1.5 * 32 * 20 * 20) / (Math.PI * 27), 10);
    }
    // torque alone: the neck's tip end is the thin side of the shoulder behind the head
    const behind = largestPrincipalStress(0, bar([8, 5], [3, 20]), { ...plain, torque: 2, notchFactor: 1.5 });
    expect(behind).toMatchObject({ place: "shoulder", position: 5 });
  });
  it("counts the face of the holder by its own factor, and no notch along a smooth bar", () => {
    const bare = largestMisesStress(20, bar([6, 30]), { ...plain, notchFactor: 2 }).stress;
    expect(bare).toBeCloseTo((32 * 600) / (Math.PI * 216), 10);
    expect(largestMisesStress(20, bar([6, 30]), { ...plain, holderNotchFactor: 2 }).stress).toBeCloseTo(2 * bare, 10);
    expect(largestMisesStress(20, bar([6, 10], [6, 20]), { ...plain, notchFactor: 2 }).stress).toBeCloseTo(bare, 10);
  });
  it("rejects a notch factor under 1 and a torque under 0", () => {
    expect(refusal(() => largestMisesStress(20, bar([6, 30]), { ...plain, notchFactor: 0.9 }))).toMatch(
      /notchFactor is 0.9/,
    );
    expect(refusal(() => largestMisesStress(20, bar([6, 30]), { ...plain, torque: -1 }))).toMatch(/torque is -1/);
  });
});
