/** Which listed tools an operation offers for a row without one, and in which order: worked out here from the list. */
import { describe, expect, it } from "vitest";
import { OPERATIONS } from "../../src/operations/index.ts";
import { startJob } from "../../src/operations/shared/job.ts";
import type { OperationName } from "../../src/table/rows.ts";
import { caseLists, caseRow, type RowCells, STEEL } from "../findings/rule.ts";

function offered(operation: OperationName, cells: RowCells, tools: readonly RowCells[]) {
  const row = { ...STEEL, Operation: operation, ...cells };
  return OPERATIONS[operation].candidates!(startJob(caseRow({ row }), caseLists({ row, tools })));
}
const names = (operation: OperationName, cells: RowCells, tools: readonly RowCells[]) =>
  offered(operation, cells, tools).tools.map((t) => t.tool);
const list = (base: RowCells, tools: Readonly<Record<string, RowCells>>): RowCells[] =>
  Object.entries(tools).map(([Tool, cells]) => ({ Units: "mm", ...base, Tool, ...cells }));

describe("thread mills (common practice: stiffness of the neck, d⁴/l³)", () => {
  const row = { Thread: "M10", "Start diameter": 8.5, Depth: 12, Through: "yes" };
  const SINGLE = {
    ...{
      Kind: "thread mill single",
      Teeth: 4,
      Substrate: "carbide",
      "Profile angle": 60,
      Diameter: 7,
      "Tip flat": 0.1,
    },
    ...{ "Neck diameter": 5, "Neck length": 18, "Shank diameter": 8, "Stick-out": 25 },
  };
  it("thicker and shorter necks first", () => {
    // 5⁴/18³ = 0.107, 4.8⁴/16³ = 0.130, 4⁴/18³ = 0.044
    const tools = list(SINGLE, {
      plain: {},
      short: { "Neck diameter": 4.8, "Neck length": 16 },
      thin: { "Neck diameter": 4 },
    });
    expect(names("thread mill", row, tools)).toEqual(["short", "plain", "thin"]);
    expect(names("thread mill", row, [...tools].reverse())).toEqual(["short", "plain", "thin"]);
  });
  it("one of high-speed steel is worth 0.35 of it", () => {
    // 5⁴·0.35 = 218.75: between 3.84⁴ = 217.4 and 3.85⁴ = 219.7
    const hss = { Substrate: "HSS" };
    const order = (neck: number) =>
      names("thread mill", row, list(SINGLE, { hss, carbide: { "Neck diameter": neck } }));
    expect(order(3.84)).toEqual(["hss", "carbide"]);
    expect(order(3.85)).toEqual(["carbide", "hss"]);
    expect(
      names("thread mill", row, list(SINGLE, { blank: { Substrate: null }, thin: { "Neck diameter": 4.9 } })),
    ).toEqual(["blank", "thin"]);
  });
  it("a full profile saves turns: half as much again; without a neck its edge is its neck, as thick as the cutter", () => {
    const FULL = {
      Kind: "thread mill full",
      Pitch: 1.5,
      "Neck diameter": null,
      "Neck length": null,
      "Cutting length": 18,
    };
    // 5⁴·1.5 = 937.5: between 5.53⁴ = 935.2 and 5.54⁴ = 942.0, in a root of 7 mm; a larger one is taken for height
    const order = (neck: number) =>
      names("thread mill", { ...row, "Start diameter": 8.6 }, [
        ...list({ ...SINGLE, ...FULL, "Neck diameter": 5, "Neck length": 18 }, { full: {} }),
        ...list({ ...SINGLE, Diameter: 7.6 }, { single: { "Neck diameter": neck } }),
      ]);
    expect(order(5.53)).toEqual(["full", "single"]);
    expect(order(5.54)).toEqual(["single", "full"]);
    // 7⁴/18³·1.5 against 7⁴/15³·1.5: the shorter edge
    const edges = list({ ...SINGLE, ...FULL }, { long: {}, short: { "Cutting length": 15 } });
    expect(names("thread mill", row, edges)).toEqual(["short", "long"]);
  });
  it("with the thread that they are for, and none where it cannot be read", () => {
    expect(offered("thread mill", row, list(SINGLE, { a: {} }))).toMatchObject({ for: "thread", thread: "M10×1.5-6H" });
    expect(offered("thread mill", { ...row, Thread: "M10.5" }, list(SINGLE, { a: {} }))).toEqual({
      tools: [],
      for: "thread",
    });
    expect(offered("thread mill", { ...row, Thread: null }, list(SINGLE, { a: {} }))).toEqual({
      tools: [],
      for: "thread",
    });
    // without a depth any neck of a pitch will do
    expect(names("thread mill", { ...row, Depth: null }, list(SINGLE, { a: { "Neck length": 2 } }))).toEqual(["a"]);
    expect(names("thread mill", { ...row, Depth: null }, list(SINGLE, { a: { "Neck length": 1.4 } }))).toEqual([]);
  });
});

describe("mills for a wall (common practice: the thickest for their reach)", () => {
  const MILL = { Kind: "end mill", Teeth: 4, Substrate: "carbide", "Cutting length": 40 };
  const side = { Depth: 20, Length: 60, "Radial depth": 1 };
  it("by diameter over the square of stick-out over diameter, no more than the diameter", () => {
    const tools = list(MILL, {
      // 10/3² = 1.11, 8/2² = 2, 12/4² = 0.75, 6/1 = 6 (as short as it is thick), 5/0.5 → 5
      ...{ ten: { Diameter: 10, "Stick-out": 30 }, eight: { Diameter: 8, "Stick-out": 16 } },
      ...{ twelve: { Diameter: 12, "Stick-out": 48 }, six: { Diameter: 6, "Stick-out": 6 } },
      ...{ five: { Diameter: 5, "Stick-out": 2.5 } },
      // four diameters where the list does not say: 16/16 = 1
      sixteen: { Diameter: 16, "Stick-out": null },
    });
    expect(names("side", side, tools)).toEqual(["six", "five", "eight", "ten", "sixteen", "twelve"]);
    expect(offered("side", side, tools).for).toBe("wall");
  });
  it("end mills alone, as long as the wall is high, with a diameter", () => {
    const tools = list(MILL, {
      ...{ good: { Diameter: 10 }, ball: { Diameter: 10, Kind: "ball end mill" }, none: { Diameter: null } },
      ...{
        short: { Diameter: 10, "Cutting length": 19 },
        neck: { Diameter: 9, "Cutting length": 19, "Neck length": 20 },
      },
      silent: { Diameter: 10, "Cutting length": null },
    });
    expect(names("side", side, tools)).toEqual(["good", "neck"]);
    expect(names("side", { ...side, Depth: null }, tools)).toEqual(["good", "short", "silent", "neck"]);
  });
  it("into an arc as into a bore, eight tenths of it; round one as along a wall", () => {
    const tools = list(MILL, { ten: { Diameter: 10 }, eleven: { Diameter: 11 } });
    const arc = { ...side, "Finish diameter": 13 };
    expect(names("side", { ...arc, Side: "inside" }, tools)).toEqual(["ten"]);
    expect(names("side", { ...arc, Side: "outside" }, tools)).toEqual(["eleven", "ten"]);
    expect(names("bore", { "Finish diameter": 13, Depth: 5 }, tools)).toEqual(["ten"]);
    expect(names("bore", { Depth: 5 }, tools)).toEqual([]);
    expect(names("boss", { "Finish diameter": 13, "Start diameter": 15, Depth: 5 }, tools)).toEqual(["eleven", "ten"]);
    expect(names("boss", { "Finish diameter": 13, "Start diameter": 15, Depth: 2.5 }, tools)).toEqual(["ten"]);
    expect(names("counterbore", { "Finish diameter": 13, Depth: 5 }, tools)).toEqual(["ten"]);
  });
  it("into a slot no wider than it; by its radial depth where it has no width; else as along a wall", () => {
    const tools = list(MILL, { ten: { Diameter: 10 }, eleven: { Diameter: 11 } });
    const slot = { Depth: 5, Length: 60 };
    expect(names("slot", { ...slot, "Total width": 10 }, tools)).toEqual(["ten"]);
    expect(names("slot", { ...slot, "Finish diameter": 10 }, tools)).toEqual(["ten"]);
    expect(names("slot", { ...slot, "Radial depth": 10 }, tools)).toEqual(["ten"]);
    expect(names("slot", { ...slot, "Total width": 11, "Radial depth": 5 }, tools)).toEqual(["eleven", "ten"]);
    expect(names("slot", { ...slot, "Total width": 9.9995 }, tools)).toEqual(["ten"]);
    expect(names("slot", slot, tools)).toEqual(["eleven", "ten"]);
    expect(names("slot", { ...slot, Depth: 2.6 }, tools)).toEqual(["ten"]);
  });
});

describe("tools of holes (rule: of the kind and the size)", () => {
  const tools = list(
    { "Stick-out": 60, "Cutting length": 30 },
    {
      ...{
        drill: { Kind: "drill", Diameter: 10 },
        reamer: { Kind: "reamer", Diameter: 10 },
        tap: { Kind: "tap", Diameter: 10, Pitch: 1.5 },
      },
      ...{ sink: { Kind: "countersink", Diameter: 10 }, blank: { Kind: "drill" }, "blank tap": { Kind: "tap" } },
      ...{
        "blank reamer": { Kind: "reamer" },
        "blank sink": { Kind: "countersink" },
        "any pitch": { Kind: "tap", Diameter: 10 },
      },
      ...{ near: { Kind: "drill", Diameter: 10.011 }, off: { Kind: "drill", Diameter: 10.012 } },
    },
  );
  it("each its own", () => {
    expect(offered("drill", { "Finish diameter": 10, Depth: 9 }, tools)).toMatchObject({ for: "drill" });
    expect(names("drill", { "Finish diameter": 10, Depth: 9 }, tools)).toEqual(["drill", "near"]);
    expect(offered("ream", { "Finish diameter": 10, Depth: 9 }, tools).for).toBe("reamer");
    expect(names("ream", { "Finish diameter": 10, Depth: 9 }, tools)).toEqual(["reamer"]);
    expect(names("ream", { Depth: 9 }, tools)).toEqual([]);
    expect(offered("tap", { Thread: "M10", Depth: 9 }, tools).for).toBe("tap");
    expect(names("tap", { Thread: "M10", Depth: 9 }, tools)).toEqual(["tap", "any pitch"]);
    expect(names("tap", { Thread: "M10x1", Depth: 9 }, tools)).toEqual(["any pitch"]);
    for (const none of ["M10.5", "M10-6g", null])
      expect(names("tap", { Thread: none, Depth: 9 }, tools), `${none}`).toEqual([]);
    expect(offered("countersink", { "Finish diameter": 10 }, tools).for).toBe("countersink");
    expect(names("countersink", { "Finish diameter": 10 }, tools)).toEqual(["sink"]);
    expect(names("countersink", { "Finish diameter": 10.1 }, tools)).toEqual([]);
    expect(names("countersink", {}, tools)).toEqual([]);
    expect(names("drill", { Depth: 9 }, tools)).toEqual([]);
    for (const none of ["M10.5", "M12-6g"]) expect(names("drill", { Thread: none, Depth: 9 }, tools)).toEqual([]);
  });
});
