/** A size between two ends against its limits: what is said, worked by hand on a diameter of 10 ± 0.1. */
import { describe, expect, it } from "vitest";
import type { Job } from "../../src/operations/shared/job.ts";
import { judgeSize, type SizeBand } from "../../src/operations/shared/size.ts";
import { Work } from "../../src/operations/shared/work.ts";
import { about } from "../findings/rule.ts";

/** A machine and a tool that add nothing of their own; bending may use half of the tolerance, 15 % of it scatters. */
const TRUE = { seatRepeats: 0, warmer: 0 };
const INSIDE: SizeBand = {
  ...{ low: 9.9, high: 10.1, of: "finished diameter", inside: true, walls: 2, programmed: 10 },
  ends: [10, 10],
  start: () => -0.01,
};
function judged(band: Partial<SizeBand>, job: Partial<Record<"row" | "machine" | "tool" | "material", object>> = {}) {
  const work = new Work("mm");
  const { row = {}, ...more } = job;
  judgeSize({ work, row, machine: TRUE, ...more } as unknown as Job, { ...INSIDE, ...band });
  const found = Object.fromEntries(work.findings.map(({ code, severity, facts }) => [code, { severity, ...facts }]));
  return { found, results: work.results, limits: work.limits, steps: work.steps };
}
const keys = (band: Partial<SizeBand>, job = {}) => Object.keys(judged(band, job).found);
const limit = (of: ReturnType<typeof judged>, key: string) => of.limits.find((l) => l.key === key);

describe("a predicted size (by hand)", () => {
  it("is the middle of its ends; its load is the middle's error, its band the ends'", () => {
    const plan = judged({ ends: [9.98, 9.96] });
    expect(plan.results).toMatchObject({ sizeMin: 9.9, sizeMax: 10.1, size: about(9.97) });
    expect(limit(plan, "deflection")).toMatchObject({
      value: about(0.03),
      limit: about(0.1),
      load: about(0.3),
      dimension: "length",
    });
    expect(limit(plan, "deflection")!.band).toEqual([about(0.2), about(0.4)]);
    expect(plan.steps.find((s) => s.key === "size")).toMatchObject({
      value: about(9.97),
      facts: { of: "finished diameter", programmed: 10, least: 9.96, most: 9.98 },
    });
    // the middle wanted lies between the ends: the good end is no error at all
    expect(limit(judged({ ends: [10.01, 9.96] }), "deflection")!.band).toEqual([0, about(0.4)]);
    expect(limit(judged({ ends: [10, 9.96] }), "deflection")!.band).toEqual([0, about(0.4)]);
    expect(limit(judged({ ends: [10.04, 10] }), "deflection")!.band).toEqual([0, about(0.4)]);
    expect(limit(judged({ ends: [10.01, 10.04] }), "deflection")!.band).toEqual([about(0.1), about(0.4)]);
  });
  it("says nothing while error and scatter together use no more than half of the tolerance", () => {
    // 0.05 / 1.15 of error, 15 % more of scatter
    const edge = 0.05 / 1.15;
    expect(keys({ ends: [10, 10 - edge] })).toEqual([]);
    expect(keys({ ends: [10, 10 - 1.001 * edge] })).toEqual(["gauge-first"]);
    expect(judged({ ends: [10, 10 - edge] }).results.startWearValue).toBeUndefined();
    // a typed wear value is shown what it should be
    const typed = judged({ ends: [10, 10 - edge] }, { row: { wearValue: 0 } });
    expect(typed.results.startWearValue).toBe(-0.01);
    expect(typed.found).toEqual({});
    expect(keys({ ends: [10, 9.97] }, { machine: { ...TRUE, bendingShare: 30 } })).toEqual(["gauge-first"]);
  });
  it("within its limits wants gauging, with the wear value to start with", () => {
    const plan = judged({ ends: [9.97, 9.93] });
    expect(plan.found).toEqual({
      "gauge-first": {
        ...{
          severity: "ok",
          value: about(0.07),
          limit: about(0.1),
          of: "finished diameter",
          start: -0.01,
          typed: false,
        },
      },
    });
    expect(plan.results.startWearValue).toBe(-0.01);
    expect(plan.steps.find((s) => s.key === "startWear")?.value).toBe(-0.01);
    expect(judged({ ends: [9.97, 9.93] }, { row: { wearValue: 0.01 } }).found["gauge-first"]).toMatchObject({
      typed: true,
    });
    const none = judged({ ends: [9.97, 9.93], start: () => null });
    expect(none.found["gauge-first"]).toMatchObject({ start: null });
    expect(none.results.startWearValue).toBeUndefined();
    // just at the limit is within it
    expect(keys({ ends: [9.97, 9.9] })).toEqual(["gauge-first"]);
  });
  it("outside them is a matter of the wear value, or of nothing", () => {
    const may = judged({ ends: [9.95, 9.85] });
    expect(may.found["size-may-be-out"]).toEqual({
      ...{ severity: "check", value: 9.85, limit: 9.9, of: "finished diameter", least: 9.85, most: 9.95 },
      ...{ low: 9.9, high: 10.1, start: -0.01, typed: false },
    });
    const out = judged({ ends: [9.95, 9.85], start: () => null });
    expect(out.found["size-out"]).toMatchObject({
      severity: "stop",
      value: 9.85,
      limit: 9.9,
      scrap: false,
      start: null,
    });
    const large = judged({ ends: [10.05, 10.2] });
    expect(large.found["size-may-be-out"]).toMatchObject({ value: 10.2, limit: 10.1 });
    // as far off on both sides: the larger end
    expect(judged({ ends: [9.8, 10.2] }).found["size-may-be-out"]).toMatchObject({ value: 10.2, limit: 10.1 });
    expect(judged({ ends: [9.7, 10.2] }).found["size-may-be-out"]).toMatchObject({ value: 9.7, limit: 9.9 });
  });
  it("is scrap where both ends are past the limit on the side where the metal is gone: large inside, small outside", () => {
    expect(judged({ ends: [10.11, 10.3] }).found["size-out"]).toMatchObject({ scrap: true, start: -0.01 });
    expect(keys({ ends: [10.1, 10.3] })).toContain("size-may-be-out");
    expect(keys({ ends: [9.7, 9.85] })).toContain("size-may-be-out");
    const outside = { inside: false };
    expect(judged({ ...outside, ends: [9.7, 9.89] }).found["size-out"]).toMatchObject({ scrap: true });
    expect(keys({ ...outside, ends: [9.7, 9.9] })).toContain("size-may-be-out");
    expect(keys({ ...outside, ends: [10.11, 10.3] })).toContain("size-may-be-out");
  });
});

describe("what changes from part to part (by hand)", () => {
  it("15 % of the larger bending: a check over half of half the tolerance, a stop over all of it", () => {
    const scatter = (bent: number) => judged({ ends: [10, 10 - bent], programmed: 10 });
    const of = { of: "finished diameter" };
    expect(scatter(0.05 / 0.15).found["size-scatter"]).toBeUndefined();
    expect(scatter(0.051 / 0.15).found["size-scatter"]).toEqual({
      severity: "check",
      value: about(0.051),
      limit: about(0.05),
      ...of,
    });
    expect(scatter(0.1 / 0.15).found["size-scatter"]).toMatchObject({ severity: "check" });
    expect(scatter(0.101 / 0.15).found["size-scatter"]).toEqual({
      severity: "stop",
      value: about(0.101),
      limit: about(0.1),
      ...of,
    });
    expect(limit(scatter(0.1), "scatter")).toMatchObject({
      value: about(0.015),
      limit: about(0.05),
      dimension: "length",
    });
    // of the path that is programmed, not of the size that is wanted
    expect(limit(judged({ ends: [10, 9.9], programmed: 9.9 }), "scatter")!.value).toBeCloseTo(0.015, 9);
    expect(limit(judged({ ends: [9.95, 9.9], programmed: 9.9 }), "scatter")!.value).toBeCloseTo(0.0075, 9);
    const share = judged({ ends: [10, 9.9] }, { machine: { ...TRUE, sizeScatter: 40 } });
    expect(limit(share, "scatter")!.value).toBeCloseTo(0.04, 9);
    expect(share.steps.find((s) => s.key === "scatter")?.facts).toEqual({ share: 0.4, other: 0 });
  });
  it("runout, seat and warmth beside it, as the root of their squares", () => {
    const other = (job: object, band: Partial<SizeBand> = {}) =>
      judged({ ends: [10, 10], ...band }, job).limits[0]!.value;
    // a quarter of the runout on both walls
    expect(other({ tool: { runout: 0.04 } })).toBeCloseTo(0.02, 12);
    expect(other({ tool: { runout: 0.04 } }, { walls: 1 })).toBeCloseTo(0.01, 12);
    expect(other({ machine: { seatRepeats: 0.003, warmer: 0 } })).toBeCloseTo(0.006, 12);
    expect(other({ tool: { runout: 0.016 }, machine: { seatRepeats: 0.003, warmer: 0 } })).toBeCloseTo(0.01, 12);
    // 3 K and 1.5 µm where the machine does not say
    expect(other({ machine: { seatRepeats: 0 } })).toBeCloseTo(11.5e-6 * 3 * 10, 15);
    expect(other({ machine: { warmer: 0 } })).toBeCloseTo(0.003, 12);
    expect(other({ machine: undefined })).toBeCloseTo(Math.hypot(0.003, 11.5e-6 * 30), 12);
    const warm = (group: string | undefined, band: Partial<SizeBand> = {}) =>
      other({ machine: { seatRepeats: 0, warmer: 10 }, material: { group } }, band) / 100;
    // handbook values: steel 11.5, austenitic 16, grey iron 10.5, aluminium 23, titanium to nickel 11
    for (const [group, alpha] of [
      ["p", 11.5],
      ["m", 16],
      ["k", 10.5],
      ["n", 23],
      ["s", 11],
      ["h", 11.5],
      [undefined, 11.5],
    ] as const)
      expect(warm(group) * 1e6, String(group)).toBeCloseTo(alpha, 9);
    // a wall has no size that warms
    expect(warm("n", { of: "wall error", low: -0.1, high: 0.1, walls: 1 })).toBe(0);
  });
});

describe("a measured size (by hand)", () => {
  it("beats the prediction: what to add to the wear value, half of the error of a diameter, all of one wall's", () => {
    const plan = judged({ ends: [9, 9] }, { row: { measured: 10.04, wearValue: 0.1 } });
    expect(plan.results).toMatchObject({ size: 10.04, sizeMin: 9.9, sizeMax: 10.1 });
    expect(plan.found["wear-change"]).toEqual({
      ...{ severity: "ok", measured: 10.04, wanted: 10, change: about(0.02), becomes: about(0.12) },
    });
    expect(Object.keys(plan.found)).not.toContain("size-out");
    expect(plan.steps.find((s) => s.key === "wearChange")).toMatchObject({
      value: about(0.02),
      facts: { measured: 10.04, wanted: 10, inside: true },
    });
    expect(limit(plan, "deflection")).toMatchObject({ value: about(0.04), limit: about(0.1), dimension: "length" });
    const small = judged({ inside: false }, { row: { measured: 9.96 } });
    expect(small.found["wear-change"]).toMatchObject({ change: about(0.02) });
    expect((small.found["wear-change"] as { becomes?: number }).becomes).toBeUndefined();
    expect(judged({ walls: 1 }, { row: { measured: 10.04 } }).found["wear-change"]).toMatchObject({
      change: about(0.04),
    });
  });
  it("at its limits is within them; beyond, on the side where the metal is gone, it is scrap", () => {
    const out = (measured: number, inside = true) => judged({ inside }, { row: { measured } }).found["measured-out"];
    for (const measured of [9.9, 10.1, 10]) expect(out(measured)).toBeUndefined();
    expect(out(10.101)).toEqual({
      severity: "stop",
      value: 10.101,
      limit: 10.1,
      of: "finished diameter",
      scrap: true,
      change: about(0.0505),
    });
    expect(out(9.899)).toMatchObject({ severity: "check", limit: 9.9, scrap: false });
    expect(out(10.101, false)).toMatchObject({ severity: "check", limit: 10.1, scrap: false });
    expect(out(9.899, false)).toMatchObject({ severity: "stop", limit: 9.9, scrap: true });
  });
  it("is none of a single wall, which has no nominal size", () => {
    const wall = judged(
      { of: "wall error", low: -0.1, high: 0.1, walls: 1, programmed: 0, ends: [0, 0.01] },
      { row: { measured: 10 } },
    );
    expect(wall.results.size).toBeCloseTo(0.005, 12);
    expect(Object.keys(wall.found)).toEqual([]);
  });
});
