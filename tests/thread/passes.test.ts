import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutArea, depthOfArea, fullDepth, passDepths, passesForFirstDepth } from "../../src/thread/passes.ts";
import { refusal } from "../refusal.ts";

/** Computed with another program in closed form, areas checked there by a strip sum [mm, mm²]. */
const TABLE = [
  { P: 1, f: 0.125, T: 0.541266, area: 0.23680391332336048, depths: [0.541266] },
  { P: 1.5, f: 0.1875, T: 0.811899, area: 0.5328088049775611, depths: [0.5360421350514879, 0.811899] },
  { P: 0.5, f: 0.0625, T: 0.270633, area: 0.05920097833084012, depths: [0.270633] },
  {
    P: 1.75,
    f: 0.21875,
    T: 0.947215,
    area: 0.7252113283028119,
    depths: [0.4847895641219848, 0.7450571211484556, 0.947215],
  },
];

describe("pass schedule against another program (independent)", () => {
  for (const { P, f, T, area, depths } of TABLE) {
    it(`P ${P} in ${depths.length} passes`, () => {
      expect(cutArea(T, f, 60)).toBeCloseTo(area, 13);
      const got = passDepths(T, f, 60, depths.length);
      expect(got).toHaveLength(depths.length);
      got.forEach((t, i) => {
        expect(t).toBeCloseTo(depths[i]!, 12);
      });
    });
  }
});

describe("cut area (independent)", () => {
  it("is the sum of strips of the V", () => {
    for (const [t, f, angle] of [
      [0.6, 0.1, 60],
      [0.8, 0, 55],
    ] as const) {
      let sum = 0;
      const n = 2000;
      for (let i = 0; i < n; i++) {
        const z = ((i + 0.5) / n) * t;
        sum += ((f + 2 * z * Math.tan((angle * Math.PI) / 360)) * t) / n;
      }
      expect(cutArea(t, f, angle)).toBeCloseTo(sum, 9);
    }
  });
});

describe("pass schedule (identity)", () => {
  const any = fc.record({
    T: fc.double({ min: 0.05, max: 4, noNaN: true }),
    f: fc.double({ min: 0, max: 1, noNaN: true }),
    n: fc.integer({ min: 1, max: 40 }),
    angle: fc.constantFrom(60, 55),
  });
  it("removes the same area in every pass and ends at full depth", () => {
    fc.assert(
      fc.property(any, ({ T, f, n, angle }) => {
        const depths = passDepths(T, f, angle, n);
        expect(depths[n - 1]).toBe(T);
        let last = 0;
        for (const t of depths) {
          const area = cutArea(t, f, angle);
          expect(area - last).toBeCloseTo(cutArea(T, f, angle) / n, 10);
          last = area;
        }
      }),
    );
  });
  it("repeats full depth for spring passes", () =>
    expect(passDepths(0.5, 0.1, 60, 2, 3).slice(1)).toEqual([0.5, 0.5, 0.5, 0.5]));
  it("finds the depth of an area again", () => {
    fc.assert(
      fc.property(any, ({ T, f, angle }) => {
        expect(depthOfArea(cutArea(T, f, angle), f, angle)).toBeCloseTo(T, 10);
      }),
    );
    expect(depthOfArea(0, 0, 60)).toBe(0);
  });
  it("takes just enough passes for the first depth", () => {
    fc.assert(
      fc.property(any, ({ T, f, n, angle }) => {
        const first = passDepths(T, f, angle, n)[0]!;
        expect(passesForFirstDepth(T, f, angle, first)).toBe(n);
        if (n > 1) expect(passesForFirstDepth(T, f, angle, first * 0.999)).toBe(n + 1);
      }),
    );
    expect(passesForFirstDepth(0.5, 0.1, 60, 2)).toBe(1);
  });
  it("measures full depth from the hole outwards and from the blank inwards", () => {
    expect(fullDepth(3, 5, "internal")).toBeCloseTo(0.5, 14);
    expect(fullDepth(13, 30, "external")).toBeCloseTo(2, 14);
    expect(refusal(() => fullDepth(3, 6, "internal"))).toMatch(/holeDiameter is 6; more than 0 and less than 6/);
    expect(refusal(() => fullDepth(15, 30, "external"))).toMatch(/holeDiameter/);
  });
  it("refuses half a pass, no pass and no depth", () => {
    expect(refusal(() => passDepths(0.5, 0.1, 60, 1.5))).toMatch(/passes/);
    expect(refusal(() => passDepths(0.5, 0.1, 60, 0))).toMatch(/passes/);
    expect(refusal(() => passDepths(0, 0.1, 60, 1))).toMatch(/total/);
  });
});
