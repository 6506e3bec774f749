/** Which tool and which drill a row of a hole is given, worked out here from the list alone. */
import { describe, expect, it } from "vitest";
import { TOOLS } from "../../src/lists/tools.ts";
import { planOf, type RowCells, STEEL } from "../findings/rule.ts";

const at = (row: RowCells, tools?: readonly RowCells[]) => planOf({ row: { ...STEEL, ...row }, tools });
const tool = (row: RowCells, tools?: readonly RowCells[]) => at(row, tools).results.tool;
const codes = (row: RowCells, tools?: readonly RowCells[]) => at(row, tools).findings.map((f) => f.code);

const sink = { Operation: "countersink", "Start diameter": 6, "Finish diameter": 10 } as const;
const SINK = { Kind: "countersink", Units: "mm", Teeth: 3, "Stick-out": 40, "Cutting length": 20, Substrate: "HSS" };
const sinks = (...list: readonly (readonly [string, number, number | null])[]) =>
  list.map(([Tool, Diameter, angle]) => ({ ...SINK, Tool, Diameter, "Shank diameter": 8, "Point angle": angle }));

describe("countersink of a row (independent)", () => {
  const list = sinks(
    ["sixty", 12, 60],
    ["wide", 25, 90],
    ["right", 10, 90],
    ["small", 9.9, 90],
    ["eighty two", 16, 82],
  );
  it("is the smallest that covers the diameter", () => {
    const same = sinks(["wide", 25, 90], ["middle", 12, 90], ["right", 10, 90], ["small", 9.9, 90]);
    expect(tool(sink, same)).toBe("right");
    expect(tool({ ...sink, "Finish diameter": 10.1 }, same)).toBe("middle");
    expect(tool({ ...sink, "Finish diameter": 12.1 }, same)).toBe("wide");
    expect(tool({ ...sink, "Finish diameter": 25.1 }, same) ?? null).toBeNull();
  });
  it("has the angle that start, finish and depth describe: 2 mm deep for 2 mm of radius is 90°", () => {
    expect(tool({ ...sink, "Finish diameter": 10.1, Depth: 2.05 }, list)).toBe("wide");
    // tan 30° and tan 41° of the depth
    expect(tool({ ...sink, Depth: 2 / Math.tan(Math.PI / 6) }, list)).toBe("sixty");
    expect(tool({ ...sink, Depth: 2 / Math.tan((41 * Math.PI) / 180) }, list)).toBe("eighty two");
  });
  it("is the same cone within two degrees, another beyond", () => {
    const depth = (angle: number) => 2 / Math.tan((angle * Math.PI) / 360);
    expect(tool({ ...sink, Depth: depth(91.9) }, list)).toBe("right");
    expect(tool({ ...sink, Depth: depth(92.1) }, list) ?? null).toBeNull();
    expect(codes({ ...sink, Tool: "right", Depth: depth(91.9) }, list)).not.toContain("cone-angle");
    expect(codes({ ...sink, Tool: "right", Depth: depth(92.1) }, list)).toContain("cone-angle");
    expect(codes({ ...sink, Tool: "right", Depth: depth(87.9) }, list)).toContain("cone-angle");
  });
  it("is taken for 90° where the list is silent", () => {
    const silent = sinks(["silent", 12, null]);
    expect(tool({ ...sink, Depth: 2 }, silent)).toBe("silent");
    expect(tool({ ...sink, Depth: 2 / Math.tan(Math.PI / 6) }, silent) ?? null).toBeNull();
  });
});

const ream = { Operation: "ream", "Finish diameter": 10, Depth: 20, Through: "yes" } as const;
const DRILL = { Kind: "drill", Units: "mm", Teeth: 2, "Point angle": 118, Substrate: "HSS", "Cutting length": 90 };
const drills = (...sizes: readonly number[]) =>
  sizes.map((d) => ({ ...DRILL, Tool: `D ${d}`, Diameter: d, "Stick-out": 100, "Shank diameter": d }));

describe("drill before a reamer (independent)", () => {
  // Machinery's Handbook (from memory): a drill of about 9.7 cuts 0.115 over. Stock 0.1 to 0.3 on 10: the hole is best at 9.8.
  const start = (list: readonly RowCells[]) => at(ream, list).results.startDiameter;
  it("is the listed one whose hole is nearest to the middle of the stock", () => {
    expect(start(drills(9.72, 9.7, 9.76))).toBe(9.7);
    expect(start(drills(9.76, 9.72))).toBe(9.72);
    expect(start(drills(9.72, 9.75))).toBe(9.72);
    expect(start(drills(9.75, 9.72))).toBe(9.72);
  });
  it("leaves stock by its size and by its hole: 9.69 is more than 0.3 under, 9.79 makes a hole of 9.905", () => {
    expect(start([...drills(9.69), ...drills(9.78)])).toBe(9.78);
    expect(start([...drills(9.79), ...drills(9.78)])).toBe(9.78);
    // none listed fits: the standard drill 9.7
    expect(start(drills(9.69, 9.79, 5))).toBeCloseTo(9.7, 9);
  });
  it("is no reamer or end mill of that size", () => {
    const other = { ...drills(9.72)[0]!, Kind: "end mill" };
    expect(start([other])).toBeCloseTo(9.7, 9);
  });
  it("follows the row's own oversize", () => {
    const row = { ...ream, "Drilling oversize": 0.03 };
    // 9.77 then makes 9.80, and 9.7 makes 9.73
    expect(at(row, drills(9.7, 9.77)).results.startDiameter).toBe(9.77);
  });
  it("is an inch drill for an inch row, of the number, letter and fraction sizes", () => {
    const row = { ...ream, Units: "in", "Finish diameter": 0.5, Depth: 0.8 };
    // stock 0.15 to 0.4 mm, oversize 0.127 mm: 31/64 is 0.397 mm under and leaves 0.270, next to the middle 0.275
    expect(at(row, drills(5)).results.startDiameter! / 25.4).toBeCloseTo(31 / 64, 9);
  });
});

describe("reamer of a row (independent)", () => {
  const REAMER = { ...DRILL, Kind: "reamer", Teeth: 6, "Shank diameter": 10, "Stick-out": 90 };
  const reamers = (...sizes: readonly number[]) => sizes.map((d) => ({ ...REAMER, Tool: `R ${d}`, Diameter: d }));
  it("has the size, or the nominal size of limits whose middle the row names", () => {
    expect(tool(ream, reamers(9.98, 10.01, 12))).toBe("R 10.01");
    expect(tool(ream, reamers(9.98, 10.02)) ?? null).toBeNull();
    expect(tool({ ...ream, "Finish diameter": 40 }, reamers(40.039, 39.9))).toBe("R 40.039");
    expect(codes({ ...ream, Tool: "R 10.02" }, reamers(10.02))).toContain("reamer-differs");
    expect(codes({ ...ream, Tool: "R 10.01" }, reamers(10.01))).not.toContain("reamer-differs");
  });
  it("makes H7: 10.000 to 10.015 and 30.000 to 30.021 (published, ISO 286-2)", () => {
    for (const [d, high] of [
      [10, 10.015],
      [30, 30.021],
    ] as const) {
      const { results } = at({ ...ream, "Finish diameter": d });
      expect(results.sizeMin).toBeCloseTo(d, 9);
      expect(results.sizeMax).toBeCloseTo(high, 9);
      expect(results.size).toBeCloseTo((d + high) / 2, 9);
    }
  });
  it("is held to the row's limits: what it makes must lie within them", () => {
    const size = (tolerance: number, middle = 10) =>
      at({ ...ream, "Finish diameter": middle, "Size tolerance": tolerance, Tool: "R-10" });
    const found = (tolerance: number, middle?: number) => {
      const { findings } = size(tolerance, middle);
      return findings.find((f) => f.code === "reamed-size");
    };
    expect(size(0.02).results.sizeMax).toBeCloseTo(10.02, 9);
    expect(size(0.02).results.sizeMin).toBeCloseTo(9.98, 9);
    expect(found(0.0151)).toBeUndefined();
    // 10.015 is over 10.014, its middle 10.0075 is not
    expect(found(0.014)).toMatchObject({
      severity: "check",
      facts: { value: expect.closeTo(10.015, 9), limit: expect.closeTo(10.014, 9) },
    });
    expect(found(0.0074)).toMatchObject({ severity: "stop" });
    expect(found(0.0076)).toMatchObject({ severity: "check" });
    // limits 10.001 to 10.017: the least that it makes is under
    expect(found(0.008, 10.009)).toMatchObject({
      severity: "check",
      facts: { value: expect.closeTo(10, 9), limit: expect.closeTo(10.001, 9) },
    });
  });
});

describe("tap of a row (independent)", () => {
  const tap = { Operation: "tap", Depth: 10, "Hole depth": 20 } as const;
  it("has the thread's size and pitch, for each tap of the shop's list", () => {
    const [heads, ...entries] = TOOLS;
    const cell = (entry: readonly unknown[], heading: string) => entry[heads!.indexOf(heading)];
    const metric = entries.filter((e) => cell(e, "Kind") === "tap" && cell(e, "Units") === "mm");
    expect(metric.length).toBeGreaterThan(5);
    for (const entry of metric) {
      const [d, p] = [cell(entry, "Diameter") as number, cell(entry, "Pitch") as number];
      const given = tool({ ...tap, Thread: `M${d}x${p}` }) as string;
      const chosen = metric.find((e) => e[0] === given)!;
      expect([cell(chosen, "Diameter"), cell(chosen, "Pitch")]).toEqual([d, p]);
    }
    // no tap of that pitch
    expect(tool({ ...tap, Thread: "M8x1" }) ?? null).toBeNull();
    expect(codes({ ...tap, Thread: "M8x1" })).toContain("tool-assumed");
  });
  it("is an inch tap by its four digits: 0.19 and 0.0313 for #10-32", () => {
    const T = { Kind: "tap", Units: "in", Teeth: 3, "Cutting length": 0.5, "Stick-out": 1.6, "Shank diameter": 0.194 };
    const list = [
      { ...T, Tool: "coarse", Diameter: 0.19, Pitch: 0.0417 },
      { ...T, Tool: "fine", Diameter: 0.19, Pitch: 0.0313 },
      { ...T, Tool: "other", Diameter: 0.2, Pitch: 0.0313 },
    ];
    const row = { ...tap, Units: "in", Depth: 0.4, "Hole depth": 0.8 };
    expect(tool({ ...row, Thread: "#10-32 UNF-2B" }, list)).toBe("fine");
    expect(tool({ ...row, Thread: "#10-24 UNC-2B" }, list)).toBe("coarse");
    expect(codes({ ...row, Thread: "#10-32 UNF-2B", Tool: "coarse" }, list)).toContain("pitch-differs");
    expect(codes({ ...row, Thread: "#10-32 UNF-2B", Tool: "other" }, list)).toContain("tap-differs");
  });
});
