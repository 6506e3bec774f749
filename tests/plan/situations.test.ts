/** What is known of a row when changes are sought, and what goes along with a change: worked by hand from plans that are made up. */
import { describe, expect, it } from "vitest";
import type { Lever } from "../../src/operations/operation.ts";
import {
  candidatesFor,
  changeOf,
  feedOf,
  mayGoFaster,
  otherTools,
  planned,
  shorter,
  speedRange,
} from "../../src/plan/changes.ts";
import type { RowCells } from "../findings/rule.ts";
import { E12, type Outcome, SIDE, situation } from "./made-up.ts";

describe("cells that go along (by hand)", () => {
  const along = (key: Lever, row: RowCells) =>
    candidatesFor(situation(row, { radialDepth: 3, spindleSpeed: 1000 }), new Set([key])).map(
      (c) => c.along && `${c.along.key} ${c.along.to}`,
    );
  it("as many more passes of a side wall as each is thinner; none where the cell is cleared", () => {
    expect(along("radialDepth", SIDE)).toEqual(["passes 2", "passes 3", "passes 4"]);
    expect(along("radialDepth", { ...SIDE, Passes: 2 })).toEqual(["passes 4", "passes 6", "passes 8"]);
    expect(along("maxRpm", SIDE)).toEqual([undefined, undefined, undefined, undefined]);
    expect(along("radialDepth", { ...SIDE, Operation: "bore" }).filter(Boolean)).toEqual([]);
  });
  it("the width of a face whose only one is that of a pass", () => {
    const face = { Operation: "face", Tool: "E12", Depth: 1, Length: 60, "Radial depth": 8 };
    expect(new Set(along("radialDepth", face))).toEqual(new Set(["totalWidth 8"]));
    expect(along("radialDepth", face)).toHaveLength(5);
    expect(along("radialDepth", { ...face, "Total width": 30 }).filter(Boolean)).toEqual([]);
    expect(along("radialDepth", { ...face, "Radial depth": null }).filter(Boolean)).toEqual([]);
  });
});

describe("what the plan took for a blank cell (by hand)", () => {
  const s = situation(SIDE, { spindleSpeed: 1000, passes: 3, radialDepth: null, surfaceSpeed: 120 });
  it("its results by the name of the cell, a cap of the spindle by what it turned", () => {
    expect(planned(s, "maxRpm")).toBe(1000);
    expect(planned(s, "passes")).toBe(3);
    expect(planned(s, "surfaceSpeed")).toBe(120);
    expect(planned(s, "tool")).toBe("E12");
    expect(planned(s, "stickOut")).toBe(40);
    expect(planned(s, "radialDepth")).toBeUndefined();
    expect(planned(s, "machine")).toBeUndefined();
    expect(planned(situation({ ...SIDE, Tool: "E99" }), "stickOut")).toBeUndefined();
  });
  it("is where a change starts, unless something is typed", () => {
    expect(changeOf(s, "passes", 4)).toEqual({ key: "passes", heading: "Passes", from: 3, to: 4 });
    expect(changeOf(s, "radialDepth", null)).toEqual({
      key: "radialDepth",
      heading: "Radial depth",
      from: 3,
      to: null,
    });
    expect(changeOf(s, "machine", "Centre V4").from).toBe("Centre V3");
  });
});

describe("what speeds and feeds are for (by hand)", () => {
  const material = {
    ...{ "Speed carbide low [m/min]": 100, "Speed carbide high [m/min]": 200, "Speed HSS low [m/min]": 20 },
    ...{ "Speed HSS high [m/min]": 30, "Drill speed HSS [m/min]": 25, "Drill speed carbide [m/min]": 75 },
    ...{ "Feed 6 mm [mm per tooth]": 0.03, "Feed 12 mm [mm per tooth]": 0.06, "Thread feed [% of diameter]": 1.5 },
  };
  const drill = { Operation: "drill", "Finish diameter": 10, Depth: 20 };
  const drillOf = (more: RowCells) => ({
    Tool: "D10",
    Kind: "drill",
    Units: "mm",
    Diameter: 10,
    "Cutting length": 90,
    ...more,
  });
  it("a tool's own material; a cutter that is not listed counts as carbide, a drill as high-speed steel", () => {
    expect(speedRange(situation(SIDE, {}, { material }))).toEqual([100, 200]);
    expect(speedRange(situation(SIDE, {}, { material, tools: [{ ...E12, Substrate: "hss" }] }))).toEqual([20, 30]);
    expect(speedRange(situation({ ...SIDE, Tool: "E99" }, {}, { material }))).toEqual([100, 200]);
    const range = (tools: RowCells[], row: RowCells = {}) =>
      speedRange(situation({ ...drill, Tool: "D10", ...row }, {}, { material, tools }))!.map(
        (v) => Math.round(v * 1e9) / 1e9,
      );
    // from 0.8 to 1.25 of what the list says of drilling
    expect(range([drillOf({ Substrate: "carbide" })])).toEqual([60, 93.75]);
    expect(range([drillOf({ Substrate: "hss" })])).toEqual([20, 31.25]);
    expect(range([drillOf({ Substrate: null })])).toEqual([20, 31.25]);
    expect(range([E12])).toEqual([20, 31.25]);
  });
  it("a feed: the row's own, of hole tools what was planned, of cutters the list's", () => {
    expect(feedOf(situation({ ...SIDE, "Feed per tooth": 0.02 }, {}, { material }))).toBe(0.02);
    expect(feedOf(situation(SIDE, {}, { material }))).toBeCloseTo(0.06, 12);
    expect(feedOf(situation({ ...drill, Tool: "D10" }, { feedPerTooth: 0.11 }, { tools: [drillOf({})] }))).toBe(0.11);
    expect(
      feedOf(situation({ ...drill, Tool: "D10" }, { feedPerTooth: null }, { tools: [drillOf({})] })),
    ).toBeUndefined();
    expect(feedOf(situation({ ...SIDE, Tool: "E99" }, {}, { material }))).toBeUndefined();
    expect(feedOf(situation({ ...SIDE, Material: "unheard of" }))).toBeUndefined();
    expect(feedOf(situation(SIDE, {}, { material, tools: [{ ...E12, Diameter: null }] }))).toBeUndefined();
    const thread = { Operation: "thread mill", Tool: "T8", Thread: "M10", Depth: 10 };
    const tools = [{ ...E12, Tool: "T8", Kind: "thread mill single", Diameter: 8 }];
    expect(feedOf(situation(thread, {}, { material, tools }))).toBeCloseTo(0.12, 12);
    // without a column of its own one per cent (common practice)
    const usual = feedOf(situation(thread, {}, { material: { "Thread feed [% of diameter]": null }, tools }))!;
    expect(usual / 8).toBeGreaterThan(0.005);
    expect(usual / 8).toBeLessThan(0.015);
    expect(feedOf(situation({ ...thread, Material: "unheard of" }, {}, { tools }))).toBeUndefined();
  });
  it("faster: not in holes over three diameters, by the drill or by the hole", () => {
    const may = (row: RowCells) => mayGoFaster(situation({ ...drill, ...row }, {}, { tools: [drillOf({})] }));
    expect(may({ Tool: "D10", Depth: 30 })).toBe(true);
    expect(may({ Tool: "D10", Depth: 30.1 })).toBe(false);
    expect(may({ Tool: "D10", Depth: null })).toBe(true);
    expect(may({ Depth: 30 })).toBe(true);
    expect(may({ Depth: 30.1 })).toBe(false);
    expect(may({ Depth: 90, "Finish diameter": null })).toBe(true);
    expect(may({ Operation: "ream", Depth: 90 })).toBe(true);
    expect(mayGoFaster(situation({ ...SIDE, Material: "unheard of" }))).toBe(true);
  });
  it("a shorter stick-out: flutes, neck and depth still reach", () => {
    const least = (row: RowCells, tool: RowCells = {}) =>
      shorter(situation({ ...SIDE, ...row }, {}, { tools: [{ ...E12, ...tool }] }));
    expect(least({})).toBe(26);
    expect(least({}, { "Neck length": 32, "Neck diameter": 11 })).toBe(32);
    expect(least({ Depth: 39 })).toBe(39);
    expect(least({ Depth: 40 })).toBeUndefined();
    expect(least({}, { "Cutting length": null })).toBe(10);
    expect(least({ Depth: null }, { "Cutting length": null })).toBeUndefined();
    expect(least({}, { "Stick-out": null })).toBeUndefined();
    expect(least({ "Stick-out": 50 }, { "Stick-out": null })).toBe(26);
    expect(least({ "Stick-out": 26 })).toBeUndefined();
    expect(least({ Tool: "E99", "Stick-out": 50 })).toBeUndefined();
  });
});

describe("other tools (by hand)", () => {
  const names = (row: RowCells, tools: readonly RowCells[], outcome: Outcome = {}) =>
    otherTools(situation(row, outcome, { tools })).map((t) => t.tool);
  it("are of the kind that the operation proposes first, with a diameter, and reach", () => {
    const tools = [
      E12,
      { ...E12, Tool: "just", "Cutting length": 10 },
      { ...E12, Tool: "short", "Cutting length": 9.9 },
      { ...E12, Tool: "necked", "Cutting length": 5, "Neck length": 12, "Neck diameter": 11 },
      { ...E12, Tool: "unknown reach", "Cutting length": null },
      { ...E12, Tool: "no size", Diameter: null },
      { ...E12, Tool: "no kind", Kind: null },
      { ...E12, Tool: "ball", Kind: "ball end mill" },
      { ...E12, Tool: "drill", Kind: "drill" },
    ];
    expect(new Set(names(SIDE, tools))).toEqual(new Set(["just", "necked"]));
    // without a depth all reach; a face is cut by the end of its cutter
    const all = new Set(["just", "short", "necked", "unknown reach"]);
    expect(new Set(names({ ...SIDE, Depth: null }, tools))).toEqual(all);
    const heads = tools.map((t) => ({ ...t, Kind: t.Kind === "end mill" ? "face mill" : t.Kind }));
    expect(new Set(names({ Operation: "face", Tool: "E12", Depth: 30, Length: 60 }, heads))).toEqual(all);
  });
  it("of a thread mill both kinds", () => {
    const thread = { Operation: "thread mill", Tool: "single", Thread: "M20", Depth: 10 };
    const tools = ["single", "full"].map((kind) => ({ ...E12, Tool: kind, Kind: `thread mill ${kind}` }));
    expect(names(thread, tools)).toEqual(["full"]);
    expect(names({ ...thread, Tool: "full" }, tools)).toEqual(["single"]);
  });
  it("are not the row's own, however it is written, proposed or incomplete", () => {
    const tools = [E12, { ...E12, Tool: "E14", Diameter: 14 }];
    expect(names(SIDE, tools)).toEqual(["E14"]);
    expect(names({ ...SIDE, Tool: "e12" }, tools)).toEqual(["E14"]);
    expect(names({ ...SIDE, Tool: null }, tools, { tool: "E14" })).toEqual(["E12"]);
    expect(names(SIDE, tools, { tool: null })).toEqual(["E14"]);
    expect(names({ ...SIDE, Tool: null }, tools)).toEqual(["E14", "E12"]);
  });
  it("come by d⁴/l³ of neck or cutter, those of an unknown length last", () => {
    const tools = [
      E12,
      { ...E12, Tool: "unknown", Diameter: 20, "Stick-out": null },
      { ...E12, Tool: "a", Diameter: 10, "Stick-out": 20 }, // 1.25
      { ...E12, Tool: "b", Diameter: 20, "Stick-out": 80 }, // 0.31
      { ...E12, Tool: "c", Diameter: 20, "Neck diameter": 10, "Neck length": 40, "Stick-out": 80 }, // 0.16
      { ...E12, Tool: "d", Diameter: 12, "Neck diameter": 11, "Neck length": 20, "Stick-out": 99 }, // 1.83
    ];
    expect(names(SIDE, tools)).toEqual(["d", "a", "b", "c", "unknown"]);
  });
  it("of a slot fit into its width, or make the same", () => {
    const tools = [E12, ...[8, 12, 12.001, 12.1, 14].map((d) => ({ ...E12, Tool: `S${d}`, Diameter: d }))];
    const slot = { Operation: "slot", Tool: "E12", Depth: 10, Length: 60 };
    expect(names(slot, tools)).toEqual(["S12"]);
    expect(new Set(names({ ...slot, "Total width": 12 }, tools))).toEqual(new Set(["S8", "S12", "S12.001"]));
    expect(names({ ...slot, "Finish diameter": 8 }, tools)).toEqual(["S8"]);
    expect(names({ ...slot, Tool: "E99" }, tools)).toEqual([]);
    expect(names({ ...slot, Tool: "E99", "Total width": 8 }, tools)).toEqual(["S8"]);
  });
});
