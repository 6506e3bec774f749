import { describe, expect, it } from "vitest";
import { drillFeed, holeDrift, walkRatio } from "../../src/drill/start.ts";
import { drillBucklingThrust } from "../../src/drill/strength.ts";
import { standardChisel, wholeDrillThrust } from "../../src/drill/whole.ts";
import type { TradeError } from "../../src/errors.ts";

describe("feed by diameter (published: Machinery's Handbook, feeds of twist drills, from memory)", () => {
  // Under 1/8 in 0.001 to 0.002 in per turn (0.0005 for the smallest); to 1/4 0.002 to 0.004; to 1/2 0.004 to 0.007; to 1 in 0.007 to 0.015.
  it.each([
    [1.6, 0.0125, 0.051],
    [4.8, 0.051, 0.102],
    [9.5, 0.102, 0.178],
    [19, 0.178, 0.381],
  ])("at %s mm lies within the handbook's range for steel", (D, low, high) => {
    expect(drillFeed(D, 0.16)).toBeGreaterThanOrEqual(low);
    expect(drillFeed(D, 0.16)).toBeLessThanOrEqual(high);
  });
  it("is the list's at 10 mm (identity)", () => expect(drillFeed(10, 0.2)).toBe(0.2));
});

describe("a point that walks", () => {
  const thrust = (D: number, f: number) => wholeDrillThrust(D, f, 2220, 0.14, 118, standardChisel(D));
  it("thin jobber drills walk on a bare face, stub drills and thick ones do not (common practice)", () => {
    expect(walkRatio(thrust(3.3, 0.065), 3.3, 42, 210)).toBeGreaterThan(1);
    expect(walkRatio(thrust(3.3, 0.065), 3.3, 28, 600)).toBeLessThan(1);
    expect(walkRatio(thrust(14, 0.2), 14, 118, 210)).toBeLessThan(1);
  });
  it("is the share of Euler's load of a free end (identity)", () =>
    expect(walkRatio(drillBucklingThrust(4, 40, 210, 2), 4, 40, 210)).toBeCloseTo(1, 12));
});

describe("drift and bad input", () => {
  it("grows with depth and is smaller when guided (identity)", () => {
    expect(holeDrift(50, true)).toBeLessThan(holeDrift(50, false));
    expect(holeDrift(100, false)).toBeCloseTo(2 * holeDrift(50, false), 12);
  });
  it("rejects what makes no sense, by name", () => {
    for (const [f, parameter] of [
      [() => drillFeed(0, 0.1), "diameter"],
      [() => drillFeed(1, 0), "feedAtTen"],
      [() => walkRatio(-1, 1, 1, 1), "thrust"],
      [() => holeDrift(-1, true), "depth"],
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
