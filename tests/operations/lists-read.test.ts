/** What speed and feed the lists give for a tool, and what stands in for a blank of theirs: by hand. */
import { describe, expect, it } from "vitest";
import { drillOversize } from "../../src/operations/shared/choices.ts";
import { holeRange, inDepth, SHARE_OF_DRILL, shareOf } from "../../src/operations/shared/hole-tool.ts";
import { feedOf, listedFeed, ownSpeedOf, speedRange, threadSpeedAssumed } from "../../src/operations/shared/speed.ts";
import type { Material } from "../../src/table/lists.ts";
import { about } from "../findings/rule.ts";

const material = (cells: Partial<Material>): Material => ({ material: "any", ...cells }) as Material;
const CARBIDE = { speedCarbideLow: 100, speedCarbideHigh: 200 };
const HSS = { speedHssLow: 20, speedHssHigh: 30 };

describe("range of speeds (the list's own columns, and what stands in for blank ones)", () => {
  it("of a solid cutter: by what it is made of; none where one end is blank", () => {
    const both = material({ ...CARBIDE, ...HSS });
    expect(speedRange(both, false)).toEqual([100, 200]);
    expect(speedRange(both, true)).toEqual([20, 30]);
    for (const blank of [{ speedCarbideLow: 100 }, { speedCarbideHigh: 200 }, HSS])
      expect(speedRange(material(blank), false)).toBeUndefined();
    expect(speedRange(material(CARBIDE), true)).toBeUndefined();
    expect(speedRange(undefined, false)).toBeUndefined();
    expect(speedRange(undefined, true, "inserts")).toBeUndefined();
  });
  it("of inserts and thread mills: their own, else the solid cutter's, three quarters of it for threads", () => {
    const own = material({
      ...{ ...CARBIDE, ...HSS, speedInsertLow: 130, speedInsertHigh: 240, speedThreadLow: 80, speedThreadHigh: 140 },
    });
    expect(speedRange(own, false, "inserts")).toEqual([130, 240]);
    expect(speedRange(own, false, "thread mill")).toEqual([80, 140]);
    // of high-speed steel there is one range
    expect(speedRange(own, true, "inserts")).toEqual([20, 30]);
    expect(speedRange(own, true, "thread mill")).toEqual([20, 30]);
    const none = material({ ...CARBIDE, ...HSS });
    expect(speedRange(none, false, "inserts")).toEqual([100, 200]);
    expect(speedRange(none, false, "thread mill")).toEqual([75, 150]);
    expect(speedRange(none, true, "thread mill")).toEqual([20, 30]);
    for (const half of [{ speedThreadLow: 80 }, { speedThreadHigh: 140 }]) {
      expect(speedRange(material({ ...CARBIDE, ...half }), false, "thread mill")).toEqual([75, 150]);
      expect(threadSpeedAssumed(material(half), {})).toBe(true);
    }
    expect(threadSpeedAssumed(own, {})).toBe(false);
    expect(threadSpeedAssumed(own, { substrate: "carbide" })).toBe(false);
    expect(threadSpeedAssumed(none, { substrate: "carbide" })).toBe(true);
    expect(threadSpeedAssumed(none, { substrate: "hss" })).toBe(false);
  });
  it("is the inserts' for a face mill, the thread mills' for both kinds of them, else the solid cutter's", () => {
    expect(ownSpeedOf("face mill")).toBe("inserts");
    expect(ownSpeedOf("thread mill full")).toBe("thread mill");
    expect(ownSpeedOf("thread mill single")).toBe("thread mill");
    for (const kind of ["end mill", "ball end mill", undefined] as const) expect(ownSpeedOf(kind)).toBeUndefined();
  });
});

describe("range of speeds of a hole tool", () => {
  it("a listed drilling speed is a starting value: from four fifths to five quarters of it nobody argues", () => {
    const { range, place } = holeRange(material({ drillSpeedHss: 25, drillSpeedCarbide: 80 }), true, 0.4);
    expect(range).toEqual([about(8), about(12.5)]);
    // the place of the listed value itself
    expect(range![0] + place * (range![1] - range![0])).toBeCloseTo(10, 12);
    expect(holeRange(material({ drillSpeedHss: 25, drillSpeedCarbide: 80 }), false, 1).range).toEqual([64, 100]);
  });
  it("without one: the milling range, six tenths of it for carbide, a quarter up", () => {
    const both = material({ ...CARBIDE, ...HSS });
    expect(holeRange(both, true, 0.5)).toEqual({ range: [10, 15], place: 0.25 });
    expect(holeRange(both, false, 1)).toEqual({ range: [60, 120], place: 0.25 });
    for (const blank of [{ speedHssLow: 20 }, { speedHssHigh: 30 }, CARBIDE])
      expect(holeRange(material(blank), true, 1).range).toBeUndefined();
    expect(holeRange(undefined, false, 1).range).toBeUndefined();
    expect(holeRange(undefined, true, 1).range).toBeUndefined();
  });
  it("each operation's share of it (common practice: two fifths)", () => {
    expect(SHARE_OF_DRILL).toEqual({ tap: 0.4, reamer: 0.4, countersink: 0.4 });
    for (const operation of ["tap", "ream", "countersink"] as const) expect(shareOf({ operation }, {})).toBe(0.4);
    for (const operation of ["side", "bore", "thread mill"] as const)
      expect(shareOf({ operation }, {}), operation).toBeUndefined();
    expect(shareOf({ operation: "drill" }, {})).toBe(1);
    // five diameters: 0.7 of the speed (MCTI's table)
    expect(shareOf({ operation: "drill", depth: 50 }, { diameter: 10 })).toBeCloseTo(0.7, 12);
    expect(shareOf({ operation: "drill", depth: 50, finishDiameter: 10 }, {})).toBeCloseTo(0.7, 12);
    expect(shareOf({ operation: "drill", depth: 50, finishDiameter: 99 }, { diameter: 10 })).toBeCloseTo(0.7, 12);
    expect(shareOf({ operation: "drill", depth: 5 }, {})).toBeCloseTo(0.7, 12);
    expect(inDepth({ coolantThrough: true }, 500, 10)).toEqual({ speed: 1, feed: 1 });
    expect(inDepth({ coolantThrough: false }, 50, 10)).toEqual({ speed: about(0.7), feed: about(0.8) });
  });
});

describe("feed per tooth of the list", () => {
  const all = material({ feed3: 0.01, feed6: 0.03, feed12: 0.07, feed20: 0.09 });
  it("joins its sizes by lines, in proportion below, with the root of the diameter above", () => {
    for (const [d, f] of [
      [1.5, 0.005],
      [3, 0.01],
      [4.5, 0.02],
      [6, 0.03],
      [9, 0.05],
      [12, 0.07],
      [16, 0.08],
      [20, 0.09],
      [80, 0.18],
    ] as const)
      expect(listedFeed(all, d), `${d}`).toBeCloseTo(f, 12);
  });
  it("with the sizes that it has", () => {
    expect(listedFeed(material({ feed6: 0.03, feed20: 0.1 }), 13)).toBeCloseTo(0.065, 12);
    expect(listedFeed(material({ feed12: 0.06 }), 6)).toBeCloseTo(0.03, 12);
    expect(listedFeed(material({ feed12: 0.06 }), 48)).toBeCloseTo(0.12, 12);
    expect(listedFeed(material({ feed3: 0.01 }), 12)).toBeCloseTo(0.02, 12);
    expect(listedFeed(material({}), 12)).toBeUndefined();
  });
  it("of inserts is their own, else twice that of a solid cutter of 12 mm, whatever the cutter's size", () => {
    expect(feedOf(material({ ...all, feedInsert: 0.2 }), "face mill", 50)).toBe(0.2);
    expect(feedOf(all, "face mill", 50)).toBeCloseTo(0.14, 12);
    expect(feedOf(material({}), "face mill", 50)).toBeUndefined();
    expect(feedOf(material({ ...all, feedInsert: 0.2 }), "end mill", 12)).toBeCloseTo(0.07, 12);
  });
});

describe("what a drill cuts over its size (Machinery's Handbook, from memory: mean oversize)", () => {
  it("by its diameter in inches: 1/16, 1/8, 1/4, 1/2, 1 in cut 1.5, 3, 4, 5, 7 thousandths over", () => {
    for (const [d, over] of [
      [1 / 16, 0.0015],
      [1 / 8, 0.003],
      [1 / 4, 0.004],
      [1 / 2, 0.005],
      [1, 0.007],
    ] as const) {
      expect(drillOversize(25.4 * d, "hss")).toBeCloseTo(25.4 * over, 9);
      expect(drillOversize(25.4 * d, undefined)).toBeCloseTo(25.4 * over, 9);
      expect(drillOversize(25.4 * d, "carbide")).toBeCloseTo((25.4 * over) / 3, 9);
    }
    expect(drillOversize(25.4 * 0.375, "hss")).toBeCloseTo(25.4 * 0.0045, 9);
    expect(drillOversize(25.4 / 32, "hss")).toBeCloseTo(25.4 * 0.00075, 9);
  });
});
