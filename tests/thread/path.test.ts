import { describe, expect, it } from "vitest";
import { crestRise, flankTangent, minorFall, plainPathRadius, tipDiameter, tipRadius } from "../../src/thread/path.ts";
import { basicMinorDiameter, basicPitchDiameter } from "../../src/thread/profile.ts";
import { refusal } from "../refusal.ts";

describe("basic sizes (published)", () => {
  // ISO 724:1993, as printed to three places (from memory, the same in every metric table).
  const iso: [number, number, number, number][] = [
    [3, 0.5, 2.675, 2.459],
    [6, 1, 5.35, 4.917],
    [8, 1.25, 7.188, 6.647],
    [10, 1.5, 9.026, 8.376],
    [12, 1.75, 10.863, 10.106],
    [30, 3.5, 27.727, 26.211],
  ];
  for (const [D, P, D2, D1] of iso) {
    it(`M${D}×${P} has D2 ${D2} and D1 ${D1}`, () => {
      expect(Math.abs(basicPitchDiameter(D, P, 60) - D2)).toBeLessThanOrEqual(0.0005);
      expect(Math.abs(basicMinorDiameter(D, P, 60) - D1)).toBeLessThanOrEqual(0.0005);
    });
  }
  // ISO 228-1 Table 1 (from memory): pitch and minor diameter of G1/4 and G1.
  for (const [D, n, D2, D1] of [
    [13.157, 19, 12.301, 11.445],
    [33.249, 11, 31.77, 30.291],
  ] as const) {
    it(`G with major ${D} has D2 ${D2} and D1 ${D1}`, () => {
      expect(Math.abs(basicPitchDiameter(D, 25.4 / n, 55) - D2)).toBeLessThanOrEqual(0.0005);
      expect(Math.abs(basicMinorDiameter(D, 25.4 / n, 55) - D1)).toBeLessThanOrEqual(0.001);
    });
  }
});

describe("tip radius (identity)", () => {
  it("reaches the basic major diameter with the basic root flat P/8", () => {
    for (const [D, P] of [
      [6, 1],
      [8, 1.25],
      [20, 2.5],
    ] as const) {
      expect(tipRadius(basicPitchDiameter(D, P, 60), P, P / 8, 60, "internal")).toBeCloseTo(D / 2, 12);
    }
  });
  it("reaches the basic minor diameter outside with the flat P/4", () =>
    expect(tipRadius(basicPitchDiameter(30, 3.5, 60), 3.5, 3.5 / 4, 60, "external")).toBeCloseTo(
      basicMinorDiameter(30, 3.5, 60) / 2,
      12,
    ));
  it("makes the groove half a pitch wide at the pitch line, whatever flat and angle", () => {
    for (const angle of [60, 55]) {
      for (const f of [0, 0.1, 0.3]) {
        const rt = tipRadius(10, 1.2, f, angle, "internal");
        expect(f + 2 * (rt - 5) * flankTangent(angle)).toBeCloseTo(0.6, 12);
      }
    }
  });
  it("puts the tip of the path back where it came from", () => {
    for (const kind of ["internal", "external"] as const) {
      const e = plainPathRadius(10, 1.5, 6, 0.15, 60, kind);
      expect(tipDiameter(e, 6, kind)).toBeCloseTo(2 * tipRadius(10, 1.5, 0.15, 60, kind), 12);
    }
  });
});

describe("profile (independent)", () => {
  it("has the heights of its triangle", () => {
    const H = 1 / (2 * Math.tan(Math.PI / 6));
    expect(crestRise(1, 60)).toBeCloseTo((3 / 4) * H, 12);
    expect(minorFall(1, 60)).toBeCloseTo(H / 2, 12);
    const Hw = 1 / (2 * Math.tan((27.5 * Math.PI) / 180));
    expect(crestRise(1, 55)).toBeCloseTo((2 / 3) * Hw, 6);
  });
  it("knows 60° and 55° only", () => expect(refusal(() => crestRise(1, 29))).toMatch(/profileAngle is 29/));
});

describe("flat at the cutter's tip (identity: half a pitch leaves no flank)", () => {
  it("is less than half a pitch, and not less than nothing", () => {
    for (const kind of ["internal", "external"] as const) {
      expect(refusal(() => tipRadius(7.19, 1.25, 0.625, 60, kind))).toMatch(/tipFlat is 0.625/);
      expect(refusal(() => tipRadius(7.19, 1.25, -0.001, 60, kind))).toMatch(/tipFlat is -0.001/);
      expect(tipRadius(7.19, 1.25, 0, 60, kind)).toBeGreaterThan(0);
      // nearly half a pitch wide it reaches nearly the pitch cylinder
      expect(tipRadius(7.19, 1.25, 0.6249999, 60, kind)).toBeCloseTo(7.19 / 2, 6);
      expect(refusal(() => plainPathRadius(7.19, 1.25, 6, 0.7, 60, kind))).toMatch(/tipFlat is 0.7/);
    }
  });
});
