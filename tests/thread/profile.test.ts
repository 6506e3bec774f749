import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { parseThread } from "../../src/thread/designation.ts";
import { threadSize } from "../../src/thread/limits.ts";
import {
  basicMinorDiameter,
  basicPitchDiameter,
  leadAngle,
  profileDepth,
  triangleHeight,
} from "../../src/thread/profile.ts";

describe("basic profile (published)", () => {
  it("has the sizes of ISO 724 (from memory): M12×1.5 11.026 and 10.376, M64×6 60.103 and 57.505", () => {
    expect(basicPitchDiameter(12, 1.5)).toBeCloseTo(11.026, 3);
    expect(basicMinorDiameter(12, 1.5)).toBeCloseTo(10.376, 3);
    expect(basicPitchDiameter(64, 6)).toBeCloseTo(60.103, 3);
    expect(basicMinorDiameter(64, 6)).toBeCloseTo(57.505, 3);
  });

  it("has the Whitworth constants of ISO 228-1: H = 0.960491·P, h = 0.640327·P", () => {
    expect(triangleHeight(1, 55)).toBeCloseTo(0.960491, 6);
    expect(profileDepth(1, 55)).toBeCloseTo(0.640327, 6);
  });

  it("has the constants of ISO 68-1: H = 0.866025404·P, 5/8·H = 0.541265877·P", () => {
    expect(triangleHeight(1)).toBeCloseTo(0.866025404, 9);
    expect(profileDepth(1)).toBeCloseTo(0.541265877, 9);
  });
});

describe("basic profile (independent)", () => {
  it("agrees with the table of ISO 228-1 within half a micrometre of rounding in each column", () => {
    for (const name of ["1/16", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8", "1", "1-1/2", "2", "3", "4", "6"]) {
      const t = parseThread(`G${name}`);
      expect(Math.abs(basicPitchDiameter(t.major, t.pitch, 55) - threadSize(t, "pitch", "basic"))).toBeLessThan(0.0011);
      expect(Math.abs(basicMinorDiameter(t.major, t.pitch, 55) - threadSize(t, "minor", "basic"))).toBeLessThan(0.0011);
    }
  });

  it("has the lead angle of a right triangle rolled out on the pitch cylinder", () => {
    expect(Math.tan((leadAngle(2, 10) * Math.PI) / 180) * Math.PI * 10).toBeCloseTo(2, 12);
  });
});

describe("basic profile, bad input", () => {
  it("rejects a pitch that leaves no core", () => {
    expect(() => basicMinorDiameter(1, 1)).toThrow(TradeError);
    expect(() => basicPitchDiameter(1, 0)).toThrow(TradeError);
    expect(() => triangleHeight(-1)).toThrow(TradeError);
    expect(() => leadAngle(0, 1)).toThrow(TradeError);
    expect(() => profileDepth(Number.NaN)).toThrow(TradeError);
  });
});
