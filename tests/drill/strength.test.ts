import { describe, expect, it } from "vitest";
import {
  BENDING_MOMENT,
  drillBreakingTorque,
  drillBucklingThrust,
  drillShear,
  FREE_POINT,
  HELD_POINT,
  STRONG_MOMENT,
  TORSION_MODULUS,
  WEAK_MOMENT,
} from "../../src/drill/strength.ts";
import { standardChisel, wholeDrillThrust, wholeDrillTorque } from "../../src/drill/whole.ts";
import type { TradeError } from "../../src/errors.ts";
import { flutedSection, solidSection } from "./section.ts";

const share = (a: number, b: number) => Math.abs(a / b - 1);

describe("section of a twist drill (independent: a grid)", () => {
  it("finds the known figures of a round bar", () => {
    const s = solidSection(120);
    expect(share(s.area, Math.PI / 4)).toBeLessThan(0.01);
    expect(share(s.strong, Math.PI / 64)).toBeLessThan(0.02);
    expect(share(s.torsion, Math.PI / 32)).toBeLessThan(0.04);
    expect(share(s.torsionModulus, Math.PI / 16)).toBeLessThan(0.06);
  });
  it("finds the figures of the fluted part that the formulas use", () => {
    const point = flutedSection(240, 0.155, 0.59);
    expect(share(point.torsionModulus, TORSION_MODULUS)).toBeLessThan(0.08);
    const body = flutedSection(240, 0.18, 0.59);
    expect(share(body.weak, WEAK_MOMENT)).toBeLessThan(0.03);
    expect(share(body.strong, STRONG_MOMENT)).toBeLessThan(0.03);
    expect(body.area / (Math.PI / 4)).toBeGreaterThan(0.35);
    expect(body.area / (Math.PI / 4)).toBeLessThan(0.5);
  });
  it("bends, helix and all, like the harmonic mean of its two directions (independent: a turning section, summed)", () => {
    // Curvature in the plane of the load at the angle a of the section: cos²a/I₁ + sin²a/I₂, averaged over a turn.
    let mean = 0;
    const n = 1000;
    for (let k = 0; k < n; k++) {
      const a = (2 * Math.PI * (k + 0.5)) / n;
      mean += (Math.cos(a) ** 2 / WEAK_MOMENT + Math.sin(a) ** 2 / STRONG_MOMENT) / n;
    }
    expect(1 / mean).toBeCloseTo(BENDING_MOMENT, 9);
  });
});

describe("drill torsion and buckling (identity)", () => {
  it("grow with the cube of the diameter, and its fourth power over the square of the length", () => {
    expect(drillBreakingTorque(10, 3500, false) / drillBreakingTorque(5, 3500, false)).toBeCloseTo(8, 12);
    expect(drillBucklingThrust(10, 50, 210, 1) / drillBucklingThrust(5, 100, 210, 1)).toBeCloseTo(64, 9);
    expect(drillBucklingThrust(5, 50, 210, FREE_POINT) / drillBucklingThrust(5, 50, 210, HELD_POINT)).toBeCloseTo(
      0.1225,
      9,
    );
  });
  it("break at the stress they are given", () => {
    expect(drillShear(drillBreakingTorque(6, 3600, true), 6)).toBeCloseTo(3600, 9);
    expect(drillShear(drillBreakingTorque(6, 3600, false), 6)).toBeCloseTo(3600 / Math.sqrt(3), 9);
  });
  it("leave a common drill in steel at common feeds two to six times its torque, and far from buckling (common practice)", () => {
    for (const [D, f, L] of [
      [3, 0.05, 36],
      [5, 0.1, 52],
      [10.2, 0.18, 87],
      [14, 0.22, 108],
    ] as const) {
      const c = standardChisel(D);
      const spare = drillBreakingTorque(D, 3500, false) / wholeDrillTorque(D, f, 2220, 0.14, 118, c);
      expect(spare).toBeGreaterThan(2);
      expect(spare).toBeLessThan(6);
      expect(drillBucklingThrust(D, L, 210, HELD_POINT)).toBeGreaterThan(
        2 * wholeDrillThrust(D, f, 2220, 0.14, 118, c),
      );
    }
  });
  it("rejects what makes no sense, by name", () => {
    for (const [f, parameter] of [
      [() => drillShear(-1, 5), "torque"],
      [() => drillShear(1, 0), "diameter"],
      [() => drillBreakingTorque(5, 0, true), "ruptureStrength"],
      [() => drillBucklingThrust(5, 0, 210, 1), "length"],
      [() => drillBucklingThrust(5, 50, 0, 1), "modulus"],
      [() => drillBucklingThrust(5, 50, 210, 0.4), "endFactor"],
    ] as const) {
      try {
        f();
        expect.unreachable(`took a bad ${parameter}`);
      } catch (e) {
        expect((e as TradeError).parameter).toBe(parameter);
      }
    }
  });
});
