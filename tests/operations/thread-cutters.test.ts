/** Which thread mills can make a thread, and what is said of those that cannot. */
import { describe, expect, it } from "vitest";
import type { FactsOf } from "../../src/findings.ts";
import { planOf, type RowCells, STEEL } from "../findings/rule.ts";

/** M10: pitch 1.5, hole 8.5; the thread is 0.81 deep from it, and ISO 68-1 leaves a flat of 0.1875 at the root. */
const row = { ...STEEL, Operation: "thread mill", Thread: "M10", "Start diameter": 8.5, Depth: 15, Through: "yes" };
const SINGLE = {
  ...{ Kind: "thread mill single", Units: "mm", Teeth: 4, Substrate: "carbide", "Profile angle": 60, Diameter: 7 },
  ...{ "Tip flat": 0.1, "Neck diameter": 5, "Neck length": 18, "Shank diameter": 8, "Stick-out": 25 },
};
const FULL = {
  ...{ Kind: "thread mill full", Units: "mm", Teeth: 4, Substrate: "carbide", "Profile angle": 60, Diameter: 7 },
  ...{ "Tip flat": 0.1, Pitch: 1.5, "Cutting length": 18, "Shank diameter": 8, "Stick-out": 25 },
};
const named = (tools: Readonly<Record<string, RowCells>>): RowCells[] =>
  Object.entries(tools).map(([Tool, cells]) => ({ Tool, ...cells }));
const plan = (tools: Readonly<Record<string, RowCells>>, cells: RowCells = {}) =>
  planOf({ row: { ...row, ...cells }, tools: named(tools) });
/** Why the only tool of the list is none; undefined when it is taken. */
const why = (tool: RowCells, cells: RowCells = {}) => {
  const { results, findings } = plan({ only: tool }, cells);
  if (results.tool === "only") return undefined;
  const { facts } = findings.find((f) => f.code === "no-tool-fits")! as { facts: FactsOf<"no-tool-fits"> };
  return facts.misses!.map(([miss]) => miss).join();
};

describe("what keeps a listed cutter from making a thread (a machinist's rules; each with a neighbour that can)", () => {
  it("takes a single-profile and a full-profile cutter", () => {
    expect(why(SINGLE)).toBeUndefined();
    expect(why(FULL)).toBeUndefined();
  });
  it("the angle of its profile", () => {
    expect(why({ ...SINGLE, "Profile angle": 55 })).toBe("profile angle");
    expect(why({ ...SINGLE, "Profile angle": null })).toBeUndefined();
  });
  it("the pitch of a full profile, which a single one does not have", () => {
    expect(why({ ...FULL, Pitch: 1.25 })).toBe("pitch");
    expect(why({ ...FULL, Pitch: null })).toBe("pitch");
    expect(why({ ...SINGLE, Pitch: 1.25 })).toBeUndefined();
  });
  it("a diameter that does not go into the hole", () => {
    expect(why({ ...SINGLE, Diameter: 8.5, "Neck diameter": 6.5 })).toBe("too large");
    expect(why({ ...FULL, Diameter: 8.5 })).toBe("too large");
    // the same cutter outside: M10 on a blank
    const outside = { Thread: "M10-6g", "Start diameter": 9.95 };
    expect(why({ ...SINGLE, Diameter: 12, "Neck diameter": 9 }, outside)).toBeUndefined();
  });
  it("a neck that is shorter than the thread is deep, its tip counted", () => {
    expect(why({ ...SINGLE, "Neck length": 14.9 })).toBe("neck short");
    expect(why({ ...SINGLE, "Neck length": 15 })).toBeUndefined();
    expect(why({ ...SINGLE, "Neck length": 15.4, "Tip to profile": 0.5 })).toBe("neck short");
    expect(why({ ...SINGLE, "Neck length": 15.5, "Tip to profile": 0.5 })).toBeUndefined();
    // without a neck the edge must reach
    expect(why({ ...SINGLE, "Neck diameter": null, "Neck length": null, "Cutting length": 14.9 })).toBe("neck short");
    expect(why({ ...SINGLE, "Neck diameter": null, "Neck length": null, "Cutting length": 15 })).toBeUndefined();
  });
  it("a tip that is wider than the root of the thread", () => {
    expect(why({ ...SINGLE, "Tip flat": 0.25 })).toBe("tip flat");
    expect(why({ ...SINGLE, "Tip flat": 0.15 })).toBeUndefined();
    // wider than the pitch: there is no path at all
    expect(why({ ...SINGLE, "Tip flat": 4 })).toBe("does not fit");
  });
  it("a profile that is less high than the thread is deep", () => {
    expect(why({ ...SINGLE, "Neck diameter": 5.6 })).toBe("profile height");
    expect(why({ ...SINGLE, "Neck diameter": 5.2 })).toBeUndefined();
  });
  it("is counted, the commonest first", () => {
    const { findings } = plan({
      ...{ a: { ...FULL, Pitch: 1.25 }, b: { ...SINGLE, "Profile angle": 55 } },
      ...{ c: { ...FULL, Pitch: 1 }, d: { ...SINGLE, Diameter: 9, "Neck diameter": 7 } },
    });
    const { facts } = findings.find((f) => f.code === "no-tool-fits")! as { facts: FactsOf<"no-tool-fits"> };
    const { misses, thread } = facts;
    expect(thread).toMatch(/^M10/);
    expect(misses![0]).toEqual(["pitch", 2]);
    expect(Object.fromEntries(misses!)).toEqual({ pitch: 2, "profile angle": 1, "too large": 1 });
  });
  it("other kinds and cutters without a diameter or a tip are not looked at", () => {
    for (const cells of [{ Kind: "end mill" }, { Diameter: null }, { "Tip flat": null }])
      expect(why({ ...SINGLE, ...cells }), JSON.stringify(cells)).toBe("");
  });
});

describe("cutter of a thread row (independent)", () => {
  it("of nine that can, the one that costs least is among those worked out: the stiff necks", () => {
    // eight slender necks stand before the stiff one, which alone holds the thread
    const slender = Object.fromEntries(
      Array.from({ length: 8 }, (_, i) => [
        `slender ${i}`,
        { ...SINGLE, Diameter: 4.5, "Neck diameter": 2.6, "Neck length": 18 },
      ]),
    );
    expect(plan({ ...slender, stiff: SINGLE }).results.tool).toBe("stiff");
    // an equal neck of high-speed steel bends about three times as much
    const hss = Object.fromEntries(Array.from({ length: 8 }, (_, i) => [`hss ${i}`, { ...SINGLE, Substrate: "HSS" }]));
    expect(plan({ ...hss, carbide: SINGLE }).results.tool).toBe("carbide");
  });
});

describe("hole of a thread row (published, ISO 965-1: minor diameter of M10-6H is 8.376 to 8.676)", () => {
  const codes = (start: number) => plan({ only: SINGLE }, { "Start diameter": start }).findings.map((f) => f.code);
  it("is said to be under or over the minor limits, and not just inside them", () => {
    expect(codes(8.375)).toContain("hole-under-minor");
    expect(codes(8.377)).not.toContain("hole-under-minor");
    expect(codes(8.675)).not.toContain("hole-over-minor");
    expect(codes(8.677)).toContain("hole-over-minor");
  });
  it("a typed depth is missing: the thread is worked out all the same", () => {
    const { results, findings } = plan({ only: SINGLE }, { Depth: null, Tool: "only" });
    expect(results.pathRadius).toBeGreaterThan(1);
    expect(results.startZ ?? null).toBeNull();
    expect(findings.some((f) => f.severity === "stop")).toBe(true);
  });
  it("no thread: nothing is worked out, and no cutter is missed", () => {
    const { results, findings } = plan({ only: SINGLE }, { Thread: null });
    expect(results.tool ?? null).toBeNull();
    expect(findings.map((f) => f.code)).not.toContain("no-tool-fits");
  });
});

describe("ends of the helix (a machinist's rule: a single profile cuts from a pitch above to the depth)", () => {
  it("a single profile climbs a turn for each pitch and one more; a full one takes one turn", () => {
    const { results } = plan({ only: SINGLE });
    expect(results.startZ).toBeCloseTo(-15, 9);
    expect(results.endZ).toBeCloseTo(1.5, 9);
    const full = plan({ only: FULL }).results;
    expect(full.startZ).toBeCloseTo(-15, 9);
    expect(full.endZ).toBeCloseTo(-13.5, 9);
  });
  it("runs down where a right-hand thread is cut conventionally, or a left-hand one climbing", () => {
    for (const cells of [{ Way: "conventional" }, { Hand: "left" }] as RowCells[]) {
      const { startZ, endZ } = plan({ only: SINGLE }, cells).results;
      expect(startZ).toBeCloseTo(1.5, 9);
      expect(endZ).toBeCloseTo(-15, 9);
    }
    expect(plan({ only: SINGLE }, { Way: "conventional", Hand: "left" }).results.startZ).toBeCloseTo(-15, 9);
  });
});
