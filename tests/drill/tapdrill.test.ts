import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DRILL_SETS, drillsOf } from "../../src/drill/sizes.ts";
import { holeOfPercent, nearestDrillInside, tapDrill, threadPercent } from "../../src/drill/tapdrill.ts";
import published from "../published/tap-drills.json";

const unified = (major: number, tpi: number) =>
  ({ standard: "unified", major: major * 25.4, pitch: 25.4 / tpi, profileAngle: 60 }) as const;
const metric = (major: number, pitch: number) => ({ standard: "metric", major, pitch, profileAngle: 60 }) as const;

describe("tap drills (published)", () => {
  for (const { source, rows } of [published.unified_small, published.unified_large]) {
    it(`Unified: ${source}`, () => {
      for (const r of rows)
        expect(`${r.thread} ${tapDrill(unified(r.major, r.tpi)).name}`).toBe(`${r.thread} ${r.drill}`);
    });
  }
  it(`metric: ${published.metric.source}`, () => {
    for (const r of published.metric.rows) {
      expect(`${r.major}×${r.pitch} ${tapDrill(metric(r.major, r.pitch)).diameter}`).toBe(
        `${r.major}×${r.pitch} ${r.drill}`,
      );
    }
  });
  it("metric: M4.5×0.75 3.7 by custom (ISO 2306, from memory)", () =>
    expect(tapDrill(metric(4.5, 0.75)).diameter).toBe(3.7));
  it(`metric where charts print a neighbour of the rule's size: ${published.metric_disagrees.source}`, () => {
    for (const r of published.metric_disagrees.rows) {
      expect(tapDrill(metric(r.major, r.pitch)).diameter).toBe(r.rule);
      expect(Math.abs(r.rule - r.printed)).toBeLessThan(0.1001);
    }
  });
  it(`G: ${published.pipe.source}`, () => {
    for (const r of published.pipe.rows) {
      const drill = tapDrill({ standard: "pipe", major: r.major, pitch: 25.4 / 11, profileAngle: 55 });
      expect(`${r.size} ${drill.diameter}`).toBe(`${r.size} ${r.drill}`);
    }
  });
  it("G beyond the chart goes by D − P: G 2-1/4 is 65.71 over 2.309 (ISO 228-1), so 63.5", () =>
    expect(tapDrill({ standard: "pipe", major: 65.71, pitch: 25.4 / 11, profileAngle: 55 }).name).toBe("63.5 mm"));
  it("lies outside the minor limits of 9/16-18 and 5/8-18 2B (0.502–0.515, 0.565–0.578; ASME B1.1)", () => {
    expect(tapDrill(unified(0.5625, 18)).diameter / 25.4).toBeGreaterThan(0.515);
    expect(tapDrill(unified(0.625, 18)).diameter / 25.4).toBeGreaterThan(0.578);
  });
});

describe("percent of thread (published)", () => {
  it(published.percent.source, () => {
    for (const [D, n, d, printed] of published.percent.rows) {
      expect(Math.abs(threadPercent(D! * 25.4, 25.4 / n!, d! * 25.4, 60) - printed!)).toBeLessThanOrEqual(1);
    }
  });
  it("is not the percent of (5/8)·H, which that table would miss by more than 8", () => {
    for (const [D, n, d, printed] of published.percent.rows) {
      const other = (100 * (D! - d!)) / (1.08253 / n!);
      expect(other - printed!).toBeGreaterThan(8);
    }
  });
});

describe("tap drills (identity)", () => {
  it("give 76.98 percent by D − P, and percent and hole are inverse", () => {
    expect(threadPercent(6, 1, 5, 60)).toBeCloseTo(100 / (0.75 * Math.sqrt(3)), 10);
    expect(holeOfPercent(10, 1.5, threadPercent(10, 1.5, 8.5, 60), 60)).toBeCloseTo(8.5, 12);
    expect(threadPercent(13.157, 1.337, 13.157, 55)).toBe(0);
  });
  it("follow the percent when it is given", () => {
    // M12 at 75 %: 12 − 0.75·1.299·1.75 = 10.295; the exception of the D − P rule does not apply.
    expect(tapDrill(metric(12, 1.75), 75).diameter).toBe(10.3);
    // 1/4-20 at 60 %: 0.25 − 0.6·1.299/20 = 0.2110; #3 is 0.2130, #4 0.2090.
    expect(["#3", "#4"]).toContain(tapDrill(unified(0.25, 20), 60).name);
  });
  it("choose from the sets asked for", () => {
    expect(tapDrill(unified(0.25, 20), undefined, ["metric"]).name).toBe("5.1 mm");
    expect(tapDrill(unified(0.25, 20), undefined, ["fraction"]).name).toBe("13/64");
    expect(tapDrill(metric(6, 1), undefined, ["number"]).name).toBe("#9");
    // 4.5 − 0.75 = 3.75 mm: #26 is 0.1470 in (3.734 mm), #25 0.1495 in (3.797 mm). Custom names a metric drill alone.
    expect(tapDrill(metric(4.5, 0.75), undefined, ["number"]).name).toBe("#26");
    expect(tapDrill(metric(4.5, 0.75), undefined, ["metric"]).name).toBe("3.7 mm");
    expect(tapDrill(metric(4.5, 0.75), undefined, ["metric", "number"]).name).toBe("#26");
  });
  it("refuse a percent over 100 and a hole over the major diameter", () => {
    expect(() => holeOfPercent(6, 1, 101, 60)).toThrow(/percent/);
    expect(() => threadPercent(6, 1, 6.01, 60)).toThrow(/holeDiameter/);
  });
});

describe("drill inside limits (independent)", () => {
  it("is the one a full search finds, or none", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        (low, width, oversize) => {
          const high = low + width;
          const fits = DRILL_SETS.flatMap((s) => [...drillsOf(s)]).filter(
            (d) => d.diameter + oversize >= low - 1e-9 * high && d.diameter + oversize <= high + 1e-9 * high,
          );
          const got = nearestDrillInside(low, high, oversize);
          if (fits.length === 0) expect(got).toBeNull();
          else {
            const least = Math.min(...fits.map((d) => Math.abs(d.diameter + oversize - (low + high) / 2)));
            expect(Math.abs(got!.diameter + oversize - (low + high) / 2)).toBeCloseTo(least, 9);
          }
        },
      ),
    );
  });
  it("counts the limits themselves as inside, and takes the larger of two that are equally far", () => {
    expect(nearestDrillInside(5.1, 5.1, 0, ["metric"])!.name).toBe("5.1 mm");
    expect(nearestDrillInside(5.15, 5.16, 0.05, ["metric"])!.name).toBe("5.1 mm");
    expect(nearestDrillInside(5.14, 5.15, 0.05, ["metric"])!.name).toBe("5.1 mm");
    expect(nearestDrillInside(5, 5.3, 0, ["metric"])!.name).toBe("5.2 mm");
    expect(nearestDrillInside(5.0999, 5.0998 + 0.0002, 0, ["letter"])).toBeNull();
    expect(() => nearestDrillInside(5.2, 5.1)).toThrow(/high/);
  });
  it("takes the target where one is given", () =>
    expect(nearestDrillInside(4.917, 5.153, 0, ["metric"], 5.15)!.name).toBe("5.1 mm"));
});
