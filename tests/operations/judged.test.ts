/** Judgements that every row goes through, each by itself with numbers by hand. */
import { describe, expect, it } from "vitest";
import { type EdgeFeed, judgeRealChip, judgeThickChip, programFeed } from "../../src/operations/shared/feed.ts";
import type { Job } from "../../src/operations/shared/job.ts";
import { judgeChip, judgeFeed, judgePower, leastChipOf } from "../../src/operations/shared/limits.ts";
import { lightest } from "../../src/operations/shared/pass-search.ts";
import { once } from "../../src/operations/shared/remembered.ts";
import { judgeRunout } from "../../src/operations/shared/runout.ts";
import { Work, worstLoad } from "../../src/operations/shared/work.ts";
import { about } from "../findings/rule.ts";

function jobOf(more: object = {}) {
  const work = new Work("mm");
  return { work, job: { work, row: {}, ...more } as unknown as Job };
}
const said = (work: Work) => work.findings.map(({ code, severity, facts }) => ({ code, severity, ...facts }));

describe("runout (by hand: the tooth that stands out cuts q·sin(π/z) more)", () => {
  const judged = (more: Partial<Parameters<typeof judgeRunout>[1]>) => {
    const { work, job } = jobOf();
    judgeRunout(job, { chip: 0.05, listed: 0.05, runout: 0.01, teeth: 2, leastChip: 0, ...more });
    return { found: said(work), steps: work.steps };
  };
  it("is a word from 1.2 listed chips on, a check from one and a half, or what the tool bears", () => {
    expect(judged({ runout: 0.01 }).found).toEqual([]);
    expect(judged({ runout: 0.0101 }).found).toEqual([
      { code: "runout-thick", severity: "ok", value: about(0.0601), limit: about(0.06), even: 0.05, runout: 0.0101 },
    ]);
    expect(judged({ runout: 0.025 }).found[0]).toMatchObject({ severity: "ok" });
    expect(judged({ runout: 0.0251 }).found).toEqual([
      {
        code: "runout-thick",
        severity: "check",
        value: about(0.0751),
        limit: about(0.075),
        even: 0.05,
        runout: 0.0251,
      },
    ]);
    expect(judged({ runout: 0.0251, check: 2 }).found[0]).toMatchObject({ severity: "ok" });
    expect(judged({ runout: 0.01 }).steps).toEqual([
      { key: "mostChip", value: about(0.06), facts: { runout: 0.01, teeth: 2 } },
    ]);
  });
  it("goes by the larger of the even chip and the list's", () => {
    expect(judged({ chip: 0.02, runout: 0.04 }).found).toEqual([]);
    expect(judged({ chip: 0.1, runout: 0.0199 }).found).toEqual([]);
    expect(judged({ chip: 0.1, runout: 0.0201 }).found[0]).toMatchObject({ limit: about(0.12) });
  });
  it("leaves a tooth idle where its chip is under half of the least, and the even one is not", () => {
    const idle = (more: object) => judged({ runout: 0.03, listed: 1, ...more }).found;
    expect(idle({ leastChip: 0.04 })).toEqual([]);
    expect(idle({ leastChip: 0.042 })).toEqual([
      { code: "runout-idle", severity: "ok", value: about(0.02), limit: about(0.021), runout: 0.03 },
    ]);
    expect(idle({ leastChip: 0.1 })).toHaveLength(1);
    expect(idle({ leastChip: 0.11 })).toEqual([]);
    expect(idle({ leastChip: 0 })).toEqual([]);
  });
  it("is nothing of a true cutter, or of one with a single tooth", () => {
    for (const more of [{ runout: undefined }, { runout: 0 }, { teeth: 1, runout: 9 }]) {
      const { found, steps } = judged(more);
      expect([found, steps]).toEqual([[], []]);
    }
  });
});

describe("the real chip against the list's (by hand: 1.1 times it is thick, twice breaks edges, half is slow)", () => {
  const judged = (chip: number, more: object = {}, material?: object) => {
    const { work, job } = jobOf({ material });
    judgeRealChip(job, { chip, share: 1, listed: 0.1, would: 0.2, by: "row", ...more });
    return { found: said(work), limit: work.limits[0]! };
  };
  it("has its load", () =>
    expect(judged(0.055).limit).toMatchObject({ key: "chip", load: about(0.5), dimension: "length" }));
  it("too thick", () => {
    expect(judged(0.11).found).toEqual([]);
    expect(judged(0.111).found).toEqual([
      { code: "chip-too-thick", severity: "check", value: 0.111, limit: about(0.11), listed: 0.1, would: 0.2 },
    ]);
    expect(judged(0.2).found[0]).toMatchObject({ severity: "check" });
    expect(judged(0.201).found).toEqual([
      { code: "chip-too-thick", severity: "stop", value: 0.201, limit: about(0.2), listed: 0.1, would: 0.2 },
    ]);
    expect(judged(0.201, { share: 0.5 }).found).toEqual([]);
  });
  it("by the material's own columns; breaking is never under thick", () => {
    expect(judged(0.19, {}, { thickChip: 1.9 }).found).toEqual([]);
    expect(judged(0.191, {}, { thickChip: 1.9 }).found[0]).toMatchObject({ severity: "check" });
    expect(judged(0.151, {}, { breakingChip: 1.5 }).found[0]).toMatchObject({ severity: "stop", limit: about(0.15) });
    expect(judged(0.21, {}, { thickChip: 2.5 }).found).toEqual([]);
    expect(judged(0.251, {}, { thickChip: 2.5 }).found[0]).toMatchObject({ severity: "stop", limit: about(0.25) });
  });
  it("under half: what holds it there is named, the machine only where the feed alone would do", () => {
    expect(judged(0.05).found).toEqual([]);
    expect(judged(0.049).found).toEqual([
      { code: "chip-under-list", severity: "ok", value: 0.049, limit: about(0.05), by: "row" },
    ]);
    expect(judged(0.049, { by: "chip" }).found).toEqual([]);
    expect(judged(0.08, { share: 0.5, heldBy: "arc", by: "chip" }).found[0]).toMatchObject({
      value: about(0.04),
      by: "arc",
    });
    expect(judged(0.049, { share: 0.5, heldBy: "arc", by: "tooth" }).found[0]).toMatchObject({ by: "tooth" });
    expect(judged(0.05, { share: 0.5, heldBy: "feed", by: "tooth" }).found[0]).toMatchObject({ by: "feed" });
  });
  it("of a thread goes by the same rule", () => {
    const { work, job } = jobOf();
    judgeThickChip(job, 0.15, 0.1, 0.3);
    expect(said(work)).toEqual([
      { code: "chip-too-thick", severity: "check", value: 0.15, limit: about(0.11), listed: 0.1, would: 0.3 },
    ]);
  });
});

describe("the feed to program (by hand: 1000 rpm, four teeth, 0.1 at the edge)", () => {
  const FEED: EdgeFeed = {
    ...{ listed: 0.1, edgeFeed: 0.1, centreFeed: 0.1, radialDepth: 6, chip: 0.09, edgeAngle: 90, rpm: 1000, teeth: 4 },
    ...{ diameter: 10, by: "chip" },
  };
  const programmed = (more: Partial<EdgeFeed>, job: object = {}) => {
    const { work, job: made } = jobOf(job);
    const answer = programFeed(made, { ...FEED, ...more });
    return { ...answer, steps: Object.fromEntries(work.steps.map((s) => [s.key, s])), results: work.results };
  };
  it("straight, inside and outside", () => {
    expect(programmed({})).toMatchObject({ feed: about(400), share: 1, heldBy: undefined });
    const inside = programmed({ arc: { diameter: 40, side: "inside" } });
    expect(inside).toMatchObject({ feed: about(300), share: 1 });
    expect(inside.steps.edgeTable).toMatchObject({ value: about(400), facts: { rpm: 1000, teeth: 4, feed: 0.1 } });
    expect(inside.steps.tableFeed).toMatchObject({
      value: about(300),
      facts: { edge: about(400), finish: 40, diameter: 10, arc: "inside" },
    });
    expect(programmed({ arc: { diameter: 40, side: "outside" } }).feed).toBeCloseTo(500, 9);
    expect(programmed({}).steps.edgeTable).toBeUndefined();
  });
  it("held by the machine, by the arc, or by neither", () => {
    const cap = { machine: { maxFeed: 0.2 } };
    const held = programmed({}, cap);
    expect(held).toMatchObject({ feed: about(200), share: about(0.5), heldBy: "feed" });
    expect(held.steps.chip).toMatchObject({
      value: about(0.045),
      facts: { feed: about(0.05), radialDepth: 6, diameter: 10, edgeAngle: 90, held: true },
    });
    expect(held.results).toMatchObject({
      tableFeed: about(200),
      feedPerTooth: 0.1,
      radialDepth: 6,
      chipThickness: about(0.045),
    });
    expect(programmed({ arcLimit: 100 }, cap)).toMatchObject({ feed: 100, share: about(0.25), heldBy: "arc" });
    expect(programmed({ arcLimit: 300 }, cap)).toMatchObject({ feed: about(200), heldBy: "feed" });
    expect(programmed({ arcLimit: 500 })).toMatchObject({ feed: about(400), share: 1, heldBy: undefined });
    // a typed feed stays in the program, and is not reached
    const typed = programmed({ arcLimit: 100 }, { row: { feedPerTooth: 0.1 } });
    expect(typed).toMatchObject({ feed: about(400), share: about(0.25), heldBy: "arc" });
    expect(programmed({ arcLimit: 100 }, { row: { feedPerTooth: 0.1 }, ...cap })).toMatchObject({ share: about(0.25) });
  });
  it("of an edge that is engaged in part the depth is no more than that edge is wide", () => {
    expect(programmed({ engaged: 4 }).steps.chip!.facts).toMatchObject({ diameter: 4, radialDepth: 4 });
    expect(programmed({ engaged: 8 }).steps.chip!.facts).toMatchObject({ diameter: 8, radialDepth: 6 });
  });
});

describe("table feed against the machine (by hand)", () => {
  const judged = (feed: number, arc: number | undefined, typed: boolean, maxFeed?: number) => {
    const { work, job } = jobOf({ machine: { maxFeed } });
    return {
      answer: judgeFeed(job, feed, arc, typed),
      found: said(work),
      limits: work.limits.map((l) => [l.key, l.value, l.limit]),
    };
  };
  it("typed: no more than the machine has, said; what the arc does not reach is said and stays", () => {
    expect(judged(500, undefined, true)).toEqual({ answer: 500, found: [], limits: [] });
    expect(judged(500, undefined, true, 0.5)).toEqual({ answer: 500, found: [], limits: [["feed", 500, 500]] });
    expect(judged(600, undefined, true, 0.5)).toMatchObject({
      ...{ answer: 500, found: [{ code: "feed-capped", severity: "check", value: 600, limit: 500 }] },
    });
    expect(judged(600, 400, true, 0.5)).toMatchObject({
      ...{
        answer: 500,
        limits: [
          ["feed", 500, 500],
          ["arcFeed", 500, 400],
        ],
      },
      found: [{ code: "feed-capped" }, { code: "feed-not-reached", value: 500, limit: 400 }],
    });
    expect(judged(400, 400, true).found).toEqual([]);
  });
  it("chosen: what the machine reaches, and by what it is held", () => {
    expect(judged(500, undefined, false)).toEqual({ answer: 500, found: [], limits: [] });
    expect(judged(600, undefined, false, 0.5)).toEqual({
      ...{ answer: 500, limits: [["feed", 500, 500]] },
      found: [{ code: "feed-held", severity: "ok", value: 600, limit: 500, by: "machine" }],
    });
    expect(judged(600, 400, false, 0.5)).toEqual({
      ...{
        answer: 400,
        limits: [
          ["feed", 400, 500],
          ["arcFeed", 400, 400],
        ],
      },
      found: [{ code: "feed-held", severity: "ok", value: 600, limit: 400, by: "arc" }],
    });
    expect(judged(600, 550, false, 0.5).found).toMatchObject([{ limit: 500, by: "machine" }]);
    expect(judged(500, 500, false).found).toEqual([]);
    expect(judged(500, 500, false).limits).toEqual([["arcFeed", 500, 500]]);
  });
});

describe("chip against the edge, and the spindle (by hand)", () => {
  it("the least chip is a share of the edge's radius; half of it rubs", () => {
    const judged = (chip: number, flank?: boolean) => {
      const { work, job } = jobOf({ material: { leastChip: 0.25 } });
      judgeChip(job, chip, { edgeRadius: 0.02 }, flank);
      return { found: said(work), steps: work.steps, limit: work.limits[0] };
    };
    expect(judged(0.005).found).toEqual([]);
    expect(judged(0.01).limit).toMatchObject({
      key: "leastChip",
      value: 0.005,
      limit: 0.01,
      load: 0.5,
      dimension: "length",
    });
    expect(judged(0.01).steps).toEqual([{ key: "leastChip", value: 0.005, facts: { fraction: 0.25 } }]);
    expect(judged(0.004).found).toEqual([
      { code: "chip-too-thin", severity: "ok", value: 0.004, limit: 0.005, flank: false },
    ]);
    expect(judged(0.0025, true).found).toMatchObject([{ severity: "ok", flank: true }]);
    expect(judged(0.0024, true).found).toEqual([
      { code: "chip-too-thin", severity: "check", value: 0.0024, limit: 0.0025, flank: true },
    ]);
    expect(leastChipOf({ material: undefined }, { edgeRadius: 0.02 })).toBe(0);
    expect(leastChipOf(jobOf({ material: { leastChip: 0.25 } }).job, undefined)).toBe(0);
  });
  it("power is torque times speed over the efficiency of 0.85", () => {
    const { work, job } = jobOf({ machine: { power: 2, torque: 20 } });
    judgePower(job, 8.5, 1000);
    expect(work.results.power).toBeCloseTo((2 * Math.PI * 1000 * 10) / 60_000, 12);
    expect(work.steps).toEqual([{ key: "power", value: about(1.0471975512), facts: { efficiency: 0.85 } }]);
    expect(work.limits).toMatchObject([
      { key: "power", limit: 2, dimension: "power" },
      { key: "torque", value: about(10), limit: 20, dimension: "torque", band: [about(0.425), about(0.575)] },
    ]);
    expect(said(work)).toEqual([]);
  });
});

describe("what a row comes to (by hand)", () => {
  it("the worst limit binds, at the bad end of its band", () => {
    const work = new Work("mm");
    expect(work.limit("power", 3, 4)).toBe(0.75);
    expect(work.limit("stress", 1, 2, "stress", [0.4, 0.9])).toBe(0.9);
    expect(work.limit("feed", 1, 0)).toBe(0);
    const plan = work.finish(1, "slot");
    expect(plan.limits.map((l) => l.key)).toEqual(["stress", "power"]);
    expect(plan.binding?.key).toBe("stress");
    expect(plan.results.load).toBe(0.9);
    expect(worstLoad({ load: 0.5, band: [0.1, 0.7] })).toBe(0.7);
    expect(worstLoad({ load: 0.5 })).toBe(0.5);
    expect(new Work("mm").finish(null, "")).toMatchObject({
      verdict: "ok",
      results: { load: null },
      binding: undefined,
    });
  });
  it("the weightiest finding first, of equal weight the one that is farthest from its limit", () => {
    const work = new Work("in");
    work.find("gauge-first", { value: 1, limit: 9, of: "wall error", start: null, typed: false });
    work.find("feed-capped", { value: 3, limit: 2 });
    work.find("speed-over-material", { value: 1, limit: 4 });
    work.find("machine-blank", {});
    const near = { value: 11, limit: 10 };
    work.find("neck-rubs", near);
    const plan = work.finish("a", "side");
    expect(plan.findings.map((f) => f.code)).toEqual([
      ...["neck-rubs", "speed-over-material", "feed-capped", "machine-blank", "gauge-first"],
    ]);
    expect(plan).toMatchObject({ row: "a", operation: "side", units: "in", verdict: "stop" });
  });
  it("each is said once, but for cells and list entries of other names", () => {
    const work = new Work("mm");
    work.find("no-kc", { bending: true });
    work.find("no-kc", { bending: false });
    const error = new Error("x") as never;
    for (const about of ["depth", "length", "depth"] as const) work.find("bad-cell", { about, error });
    expect(work.findings.map((f) => f.code)).toEqual(["no-kc", "bad-cell", "bad-cell"]);
    expect(work.findings[0]!.facts).toEqual({ bending: true });
  });
  it("without detail there are no steps", () => {
    const plain = new Work("mm", false);
    plain.step("power", 1, { efficiency: 0.85 });
    expect(plain.steps).toEqual([]);
  });
});

describe("searches (by hand)", () => {
  it("the fewest passes that hold, else the lightest; one more must be worth it", () => {
    const loads = (list: readonly number[], worth?: number) =>
      lightest(
        list.map((_, i) => i),
        (i) => ({ i, load: list[i]! }),
        worth,
      )?.i;
    expect(loads([3, 2, 1, 0.5])).toBe(2);
    expect(loads([3, 2, 2.5])).toBe(1);
    expect(loads([3, 2.95, 2.8], 0.98)).toBe(2);
    expect(loads([3, 2.95], 0.98)).toBe(0);
    expect(loads([2, 2])).toBe(0);
    expect(loads([])).toBeUndefined();
    let asked = 0;
    lightest([1, 2, 3], () => ({ load: ++asked === 1 ? 1 : 0 }));
    expect(asked).toBe(1);
  });
  it("what is asked for twice is worked out once, whatever it is", () => {
    let made = 0;
    const answer = once(() => (made++ === 0 ? null : 5));
    expect([answer(), answer()]).toEqual([null, null]);
    expect(made).toBe(1);
  });
});
