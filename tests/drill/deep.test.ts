import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { depthFactors, PECKING, peckDepths } from "../../src/drill/deep.ts";
import type { TradeError } from "../../src/errors.ts";

describe("speed and feed with depth (published: Metal Cutting Tool Handbook, from memory; the same table stands in drilling guides)", () => {
  it.each([
    [3, 0.9, 0.9],
    [4, 0.8, 0.9],
    [5, 0.7, 0.8],
    [6, 0.65, 0.8],
    [8, 0.6, 0.8],
    [30, 0.6, 0.8],
    [1, 1, 1],
    [2, 1, 1],
  ])("at %s diameters", (ratio, speed, feed) => {
    expect(depthFactors(ratio * 7, 7)).toEqual({ speed, feed });
  });
  it("never rises with depth (identity)", () => {
    for (let r = 0; r < 12; r += 0.1) {
      expect(depthFactors(r + 0.1, 1).speed).toBeLessThanOrEqual(depthFactors(r, 1).speed);
      expect(depthFactors(r + 0.1, 1).feed).toBeLessThanOrEqual(depthFactors(r, 1).feed);
    }
  });
});

describe("pecks (identity)", () => {
  it("end at the bottom, never grow, never leave a sliver, and are no more than needed", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 40, noNaN: true }),
        fc.double({ min: 0.5, max: 25, noNaN: true }),
        (ratio, D) => {
          const travel = ratio * D;
          const depths = peckDepths(travel, D);
          expect(depths.at(-1)).toBe(travel);
          const pecks = depths.map((d, i) => d - (depths[i - 1] ?? 0));
          for (let i = 1; i < pecks.length; i++) expect(pecks[i]).toBeLessThanOrEqual(pecks[i - 1]! * (1 + 1e-9));
          expect(pecks[0]).toBeLessThanOrEqual(PECKING.first * D * (1 + 1e-9));
          // More than one peck: the last is at least 0.3 D, and one fewer of full length would not have reached.
          if (pecks.length > 1) {
            expect(pecks.at(-1)).toBeGreaterThan(0.3 * D);
            let reach = 0;
            for (let i = 0; i < pecks.length - 1; i++)
              reach += D * Math.max(PECKING.least, PECKING.first * PECKING.shrink ** i);
            expect(reach).toBeLessThan(travel);
          }
        },
      ),
    );
  });
  it("are one to three diameters in one go, two from there, many when deep (common practice)", () => {
    expect(peckDepths(30, 10)).toHaveLength(1);
    expect(peckDepths(30.1, 10)).toHaveLength(2);
    expect(peckDepths(80, 10).length).toBeGreaterThanOrEqual(4);
    expect(peckDepths(300, 10).length).toBeGreaterThan(30);
    expect(peckDepths(50.02, 10).every((d, i, all) => d - (all[i - 1] ?? 0) > 3)).toBe(true);
  });
  it("rejects what makes no sense, by name", () => {
    for (const [f, parameter] of [
      [() => peckDepths(0, 10), "travel"],
      [() => peckDepths(10, 0), "diameter"],
      [() => peckDepths(10, 1, 0), "first"],
      [() => peckDepths(10, 1, 3, 1.1), "shrink"],
      [() => peckDepths(10, 1, 3, 0.5, 4), "least"],
      [() => depthFactors(-1, 1), "depth"],
      [() => depthFactors(1, 0), "diameter"],
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
