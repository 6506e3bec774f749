import { describe, expect, it } from "vitest";
import {
  coarsestPitch,
  type FitCase,
  finestPitch,
  fitChecks,
  neckClearance,
  neckClearanceAlong,
} from "../../src/thread/fit.ts";
import { tipRadius } from "../../src/thread/path.ts";
import { basicMinorDiameter, basicPitchDiameter } from "../../src/thread/profile.ts";

describe("neck (independent)", () => {
  it("leaves the distance between two circles that a drawing shows", () => {
    // Neck circle of Ø3 with its centre 0.7 off the axis of a Ø5 hole, measured point by point.
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < 3600; i++) {
      const a = (i * Math.PI) / 1800;
      least = Math.min(least, 2.5 - Math.hypot(0.7 + 1.5 * Math.cos(a), 1.5 * Math.sin(a)));
    }
    expect(neckClearance(5, 0.7, 3, "internal")).toBeCloseTo(least, 12);
  });
  it("keeps clear of a boss outside", () => expect(neckClearance(30, 23, 14, "external")).toBeCloseTo(1, 12));
  it("finds the tightest place of a stepped and tapered neck inside the depth", () => {
    const parts = [
      { length: 4, diameter: 3 },
      { length: 8, diameter: 3, endDiameter: 5 },
    ];
    expect(neckClearanceAlong(5, 0.5, parts, 3, "internal")).toEqual({ gap: 0.5, at: 0 });
    const deep = neckClearanceAlong(5, 0.5, parts, 8, "internal");
    expect(deep.at).toBeCloseTo(8, 12);
    expect(deep.gap).toBeCloseTo(0, 12);
    expect(neckClearanceAlong(5, 0.5, parts, 20, "internal").gap).toBeCloseTo(-0.5, 12);
  });
});

describe("pitch range (identity)", () => {
  it("ends at eight flats below", () => expect(finestPitch(0.125, 60)).toBeCloseTo(1, 12));
  it("ends where the V reaches from tip to wall above", () => {
    for (const angle of [60, 55] as const) {
      const P = coarsestPitch(4.8, 3.4, 0.08, angle, "internal");
      const D = 12;
      const tip = tipRadius(basicPitchDiameter(D, P, angle), P, 0.08, angle, "internal");
      expect(tip - basicMinorDiameter(D, P, angle) / 2).toBeCloseTo(0.7, 12);
    }
  });
});

describe("fit of a cutter (identity)", () => {
  const good: FitCase = {
    kind: "internal",
    pitch: 1,
    lead: 1,
    profileAngle: 60,
    pitchDiameter: 5.425,
    rootDiameter: 6,
    wallDiameter: 5,
    depth: 10,
    cutterDiameter: 4.6,
    tipFlat: 0.08,
    neckDiameter: 3,
    neckLength: 12,
  };
  const failing = (change: Partial<FitCase>) =>
    fitChecks({ ...good, ...change })
      .checks.filter((c) => !c.passes)
      .map((c) => c.key);
  it("finds nothing wrong with a cutter that suits", () => expect(failing({})).toEqual([]));
  it("says that the cutter does not enter", () => expect(failing({ wallDiameter: 4.6 })).toContain("entry"));
  it("says that the flat is too wide exactly when the tip misses the major diameter", () => {
    const limit = fitChecks(good).checks.find((c) => c.key === "tip flat")!.limit;
    expect(failing({ tipFlat: limit * 0.9999 })).toEqual([]);
    expect(failing({ tipFlat: limit * 1.0001 })).toEqual(["tip flat", "root diameter"]);
  });
  it("says that the neck rubs, is short, and that the V is low", () => {
    expect(failing({ neckDiameter: 3.7 })).toEqual(["profile height", "neck clearance"]);
    expect(failing({ neckLength: 9 })).toEqual(["neck length"]);
  });
  it("judges an external thread from the blank", () => {
    const outside = fitChecks({
      kind: "external",
      pitch: 3.5,
      lead: 3.5,
      profileAngle: 60,
      pitchDiameter: 27.5,
      rootDiameter: 26.211,
      wallDiameter: 29.9,
      depth: 20,
      cutterDiameter: 20,
      tipFlat: 0.8,
      neckDiameter: 14,
      neckLength: 25,
    });
    expect(outside.checks.map((c) => c.key)).not.toContain("entry");
    expect(outside.checks.every((c) => c.passes)).toBe(true);
  });
});
