/** What stands behind the numbers of a face: every step of a row with what it was made from, by hand. */
import { describe, expect, it } from "vitest";
import { millForces } from "../../src/mill/force.ts";
import { floorRoughness } from "../../src/mill/roughness.ts";
import { about } from "../findings/rule.ts";
import { at, facts, value } from "./worked-out.ts";

const rpmOf = (speed: number, diameter: number) => (1000 * speed) / (Math.PI * diameter);
/** Force of a climbing cut in steel C45. */
const CUT = { exponent: 0.14, radialRatio: 0.35, axialRatio: 0.2, way: "climb" } as const;

describe("steps of a face (by hand)", () => {
  const row = { Operation: "face", Tool: "FM-40-4", Depth: 2, Length: 60, "Total width": 100 };
  // four strips of 25, none wider than 0.7 of 40; inserts run from 150 to 240 m/min, at 0.14 mm
  const engaged = (20 / 25) ** 0.25;
  const rpm = rpmOf(((150 + 240) / 2) * engaged, 40);
  it("strips, speed and feed of inserts, roughness of the floor", () => {
    const plan = at(row);
    expect(plan.results).toMatchObject({
      ...{
        passes: 4,
        depths: [25, 50, 75, 100],
        radialDepth: 25,
        feedPerTooth: about(0.14),
        direction: { path: "wall", wall: "right" },
      },
      ...{ tableFeed: about(4 * rpm * 0.14, 6), spindleSpeed: about(rpm, 6) },
    });
    expect(facts(plan, "roughness")).toEqual({ of: "floor" });
    // the corner of 0.8 mm; along the axis an insert runs out by three tenths of 0.03 mm
    expect(value(plan, "roughness")).toBeCloseTo(1000 * floorRoughness(0.14, 4, 0.8, 0.009), 9);
    expect(plan.sketch).toMatchObject({ kind: "face", inside: false, depth: 2, cutterDiameter: 40, depths: [25] });
    expect(at(row, { tool: { "Corner radius": null } }).steps.map((s) => s.key)).not.toContain("roughness");
    expect(at({ ...row, Through: "yes" }).sketch?.through).toBeUndefined();
  });
  it("is not judged by its size, by chatter, or by how deep it lies", () => {
    const plan = at({ ...row, Depth: 30 });
    const codes = plan.findings.map((f) => f.code);
    for (const code of ["cutter-short", "no-size-tolerance", "chatter"]) expect(codes).not.toContain(code);
    expect(plan.results.size).toBeUndefined();
    // in levels of a tenth of the cutter, 4 mm
    expect(plan.results.passes).toBe(4 * 8);
  });
  it("a width of its own: seven tenths of the cutter, or the strip that the row names; 4 mm a level", () => {
    expect(at({ ...row, "Total width": null }).results.radialDepth).toBeCloseTo(28, 9);
    expect(at({ ...row, "Total width": null, "Radial depth": 33 }).results.radialDepth).toBe(33);
    expect(value(at({ ...row, Depth: 9 }), "axialDepth")).toBe(3);
    expect(value(at({ ...row, Depth: null, "Axial depth": 3 }), "axialDepth")).toBe(3);
    expect(value(at({ ...row, Depth: 9, "Axial depth": 5 }), "axialDepth")).toBe(4.5);
  });
  it("for a cutter of 45° the chip is thinner than the feed, and the feed goes up for it", () => {
    const plan = at({ ...row, Tool: "FM-50-5", "Total width": 35 });
    expect(facts(plan, "chip")).toMatchObject({ edgeAngle: 45 });
    expect(value(plan, "chip")).toBeCloseTo(0.14, 9);
    expect(plan.results.feedPerTooth).toBeCloseTo(0.14 * Math.SQRT2, 6);
    // the same sum with kc11·sin^−m κ, a chip as thick as the list's
    const f = millForces({
      ...{ ...CUT, kc11: 2220 * Math.SQRT1_2 ** -0.14, diameter: 50, teeth: 5, helixAngle: 0 },
      ...{ feedPerTooth: 0.14 * Math.SQRT2, radialDepth: 35, axialDepth: 2 },
    });
    expect(plan.results.force).toBeCloseTo(f.peakTangential, 4);
  });
});
