/** What a quote adds up to. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { QUOTE } from "../../functions/quote.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { planRows } from "../../src/plan/table.ts";
import { quote, quoteTable } from "../../src/quote/quote.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import { all, consistent, demo, FIVE, fiveRows, LISTS, lists, made, named, SHOP, sum } from "./five.ts";

describe("a quote of five rows (independent)", () => {
  const q = quote(FIVE, fiveRows(), SHOP);
  it("adds up the seconds as pencil and paper do", () => {
    expect(q.time).toEqual({ cutting: 290, moving: 51, waiting: 10, change: 32, setup: 150 });
    expect(q.seconds).toBe(533);
    expect([q.changes, q.changesSaved]).toEqual([4, 1]);
  });
  it("adds up the money: 317 s at 60 and 216 s at 90 an hour, and 4.50 of tools", () => {
    expect(q.money).toBeCloseTo(317 / 60 + 5.4 + 4.5, 10);
    expect(q.paid!.tool).toBeCloseTo(4.5, 12);
    expect(q.paid!.setup).toBeCloseTo(90 / 60 + 1.5, 12);
    expect(named(q.machines, "A").money).toBeCloseTo(317 / 60 + 4, 10);
    expect(named(q.machines, "B").money).toBeCloseTo(5.9, 10);
    expect(named(q.operations, "drill")).toMatchObject({ rows: 2, features: 15 });
    expect(named(q.operations, "drill").money).toBeCloseTo((46 + 25 + 60) / 60, 10);
  });
  it("names the dearest rows in their order, and what acceleration costs", () => {
    expect(q.dearest.map((r) => r.name)).toEqual(["3", "4", "5", "1", "2"]);
    expect(q.dearest[0]!.money).toBeCloseTo(7.1, 10);
    expect(q.acceleration.seconds).toBe(32);
    expect(q.acceleration.share).toBeCloseTo(32 / 383, 12);
  });
  it("counts edges and tools for the batch, rounded up", () => {
    expect(named(q.tools, "T1")).toMatchObject({ edgesForBatch: 1, toolsForBatch: 1, bought: 80 });
    expect(named(q.tools, "T1").partsPerEdge).toBeCloseTo(20, 10);
    const hundred = quote(FIVE, fiveRows(), SHOP, { batch: 100 });
    expect(named(hundred.tools, "T1")).toMatchObject({ edgesForBatch: 5, toolsForBatch: 5, bought: 400 });
    expect(named(hundred.tools, "F1")).toMatchObject({ edgesForBatch: 4, toolsForBatch: 1, bought: 60 });
    expect(named(hundred.tools, "E1").toolsForBatch).toBeUndefined();
    expect(hundred.time.setup).toBe(30);
  });
  it("of a drilled row agrees with the hole worked out by hand, through the worksheet function", () => {
    // 31.4159 m/min on 10 mm: 1000/min, 2 lips × 0.1: 200 mm/min. Travel 20 + point (10/2)/tan 59° + 2 of clearance.
    const travel = 20 + 5 / Math.tan((59 * Math.PI) / 180) + 2;
    const [v, a, fast] = [200 / 60, 2000, 200];
    const cutting = travel / v + v / a;
    const moving = (25 + 20 + travel) / fast + (3 * fast) / a;
    const each = cutting + moving;
    const block = QUOTE(
      [
        [
          "Row",
          "Operation",
          "Units",
          "Quantity",
          "Material",
          "Machine",
          "Finish diameter",
          "Depth",
          "Surface speed",
          "Feed per tooth",
        ],
        [1, "drill", "mm", 4, "Steel", "Mill", 10, 20, 10 * Math.PI, 0.1],
      ],
      [["Material"], ["Steel"]],
      [["Tool"], ["none"]],
      [
        ["Machine", "Rapid [m/min]", "Acceleration [m/s²]", "Tool change [s]", "Rate [per hour]", "Setup [min]"],
        ["Mill", 12, 2, 6, 72, 20],
      ],
      [[60]],
    );
    expect(block[0]).toEqual(["Section", "Item", "Count", "Minutes", "Money", "Share"]);
    const [, , , minutes, money] = block[1]!;
    expect(minutes).toBeCloseTo((4 * each + 6 + 20) / 60, 9);
    expect(money).toBeCloseTo(((4 * each + 6) * 72) / 3600 + 0.4, 9);
  });
});

describe("economics of one operation (published)", () => {
  // M. P. Groover, Fundamentals of Modern Manufacturing, 4th edition 2010, example on machining economics (from memory):
  // n = 0.125, C = 70 m/min, bar 100 mm × 500 mm, feed 0.25 mm/rev, handling 5 min, tool change 2 min, 30 per hour,
  // 3.00 per edge. Least cost: 42 m/min, 3 parts per edge, 20.63 min and 11.32 a part. Quickest: 50 m/min, 1 part per
  // edge, 19.57 min and 12.79 a part.
  for (const [speed, parts, minutes, cost] of [
    [42, 3, 20.63, 11.32],
    [50, 1, 19.57, 12.79],
  ] as const) {
    it(`at ${speed} m/min gives ${parts} parts per edge, ${minutes} min and ${cost} a part`, () => {
      const shop = readLists(
        [["Material"]],
        [
          ["Tool", "Price", "Edges"],
          ["insert", 3, 1],
        ],
        [
          ["Machine", "Rate [per hour]"],
          ["lathe", 30],
        ],
      );
      const rows = readRows([
        ["Operation", "Units", "Machine"],
        ["side", "mm", "lathe"],
      ]);
      const cutting = (60 * Math.PI * 100 * 500) / (0.25 * speed * 1000);
      const life = (70 / speed) ** 8;
      // The tool is changed once in so many whole parts.
      const line = made(
        "side",
        "insert",
        { cutting, moving: 300, waiting: 0, ideal: cutting, change: 120 / parts },
        { life },
      );
      const q = quote([line], rows, shop, { batch: parts });
      const tool = q.tools[0]!;
      expect(Math.floor(tool.partsPerEdge!)).toBe(parts);
      expect(tool.toolsForBatch).toBe(1);
      // Half the last digit printed; the money was printed from the rounded minutes, half of 0.005 min more.
      expect(Math.abs(q.seconds / 60 - minutes)).toBeLessThanOrEqual(0.005);
      expect(Math.abs(q.money! + tool.bought! / parts - cost)).toBeLessThanOrEqual(0.0075);
    });
  }
});

describe("a quote (identity)", () => {
  it("has parts that add up to the total, whatever rows it holds", () => {
    fc.assert(
      fc.property(fc.subarray(all, { minLength: 1 }), fc.option(fc.integer({ min: 1, max: 500 })), (rows, batch) => {
        const q = quoteTable({ rows: demo(rows), ...LISTS }, { batch: batch ?? undefined });
        consistent(q);
        expect(q.rows.length + q.leftOut.length).toBe(rows.length);
      }),
      { numRuns: 25 },
    );
  });
  it("of one row is the row's own time with its setup, and its own cost", () => {
    for (const at of all) {
      const rows = readRows(demo([at]));
      const [line] = planRows(rows, lists, false);
      const q = quote([line], rows, lists);
      if (q.rows.length === 0) continue;
      expect(q.seconds - q.time.setup).toBeCloseTo(line!.results.time as number, 9);
      expect(q.money).toBeCloseTo(line!.results.cost as number, 9);
    }
  });
  it("does not depend on the order of the rows but for the tool changes", () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(all, { minLength: all.length, maxLength: all.length }), (order) => {
        const [a, b] = [all, order].map((rows) => quoteTable({ rows: demo(rows), ...LISTS }, { batch: 10 }));
        for (const key of ["cutting", "moving", "waiting", "setup"] as const)
          expect(b!.time[key]).toBeCloseTo(a!.time[key], 6);
        expect(b!.paid!.tool).toBeCloseTo(a!.paid!.tool, 8);
        expect(b!.money! - b!.paid!.change).toBeCloseTo(a!.money! - a!.paid!.change, 6);
      }),
      { numRuns: 10 },
    );
  });
  it("loses its setup and nothing else as the batch grows", () => {
    const at = (batch: number) => quoteTable({ rows: demo(all), ...LISTS }, { batch });
    const [one, two, huge] = [at(1), at(2), at(1e9)];
    expect(two.time.setup).toBeCloseTo(one.time.setup / 2, 9);
    expect(two.paid!.setup).toBeCloseTo(one.paid!.setup / 2, 9);
    expect(huge.money).toBeCloseTo(one.money! - one.paid!.setup, 4);
    expect(huge.seconds).toBeCloseTo(one.seconds - one.time.setup, 4);
  });
  it("charges a machine's whole setup, though some of its rows have no time", () => {
    const rows = demo(all);
    const q = quoteTable({ rows, ...LISTS }, { batch: 1 });
    const setups = q.machines.map((g) => MACHINES.find((m) => m[0] === g.name)![12] as number);
    expect(q.leftOut.length).toBeGreaterThan(0);
    expect(q.time.setup / 60).toBeCloseTo(sum(setups), 9);
  });
  it("changes a tool only when the spindle holds another one", () => {
    const rows = [1, 1, 1, 2, 1].map((r) => FIVE[r === 1 ? 0 : 2]!);
    const q = quote(rows, fiveRows(20, ["A", "A", "B", "A", "A"]), SHOP);
    // first on A, held, first on B, other on A, back on A
    expect(q.rows.map((r) => r.time.change > 0)).toEqual([true, false, true, true, true]);
  });
  it("adds one and the same material over inch and metric rows", () => {
    const base = ["Row", "Operation", "Units", "Material", "Machine", "Finish diameter", "Depth"];
    const material = MATERIALS[1]![0]!;
    const mm = quoteTable({ rows: [base, [1, "drill", "mm", material, "Centre V3", 12.7, 25.4]], ...LISTS });
    const inch = quoteTable({ rows: [base, [1, "drill", "in", material, "Centre V3", 0.5, 1]], ...LISTS });
    expect(inch.seconds).toBeCloseTo(mm.seconds, 9);
    expect(inch.money).toBeCloseTo(mm.money!, 9);
  });
});
