/** What a row says of chatter: its limits by the rule of mill/chatter-rule.ts, every number that goes in by hand. */
import { describe, expect, it } from "vitest";
import { forceSlope } from "../../src/mill/chatter-cut.ts";
import { type BandedCut, chatterDepth, threadParts, threadWidth } from "../../src/mill/chatter-rule.ts";
import { meanChip } from "../../src/mill/chip.ts";
import { readModes } from "../../src/operations/shared/chatter.ts";
import { type HeldTool, HOLDING, tipMode } from "../../src/tool/tip-mode.ts";
import { about, type Case, planOf, type RowCells, STEEL } from "../findings/rule.ts";

type More = Omit<Case, "row">;
const at = (row: RowCells, more: More = {}) => planOf({ row: { ...STEEL, ...row }, ...more });
type Plan = ReturnType<typeof at>;
const chatter = (plan: Plan) => plan.findings.find((f) => f.code === "chatter")?.facts;
const codes = (plan: Plan) => plan.findings.map((f) => f.code);

/** A full slot with EM-12-4 in C45: list 0.07 at 12 mm, 155 m/min, in a slot 0.5^0.25 of it. */
const slot = { Operation: "slot", Tool: "EM-12-4", Depth: 6, Length: 60, "Axial depth": 6 };
const CUT: BandedCut = {
  ...{ teeth: 4, radialDepth: 12, diameter: 12, radialRatio: 0.35, way: "climb", surfaceSpeed: 155 * 0.5 ** 0.25 },
  ...{ slope: forceSlope(2220, 0.14, meanChip(0.07, 12, 12, 90)), parts: undefined },
};
const part = (diameter: number, length: number) => ({ tipDiameter: diameter, holderDiameter: diameter, length });
const HELD: HeldTool = {
  ...{ segments: [part(9.6, 26), part(12, 14)], shankDiameter: 12, modulus: 600, poisson: 0.22, density: 14.5 },
  ...{ holderStiffness: 22, damping: 0.03 },
};
/** Least and likely limit of a cut [mm], and the depth from which the row speaks: a hundred times the likely one. */
function depths(cut: BandedCut, held: HeldTool, ratio = 100) {
  const allows = chatterDepth(cut, tipMode(held, HOLDING.firm), "firm");
  const nominal = chatterDepth(cut, tipMode(held, HOLDING.nominal), "nominal");
  return { allows: about(allows), nominal: about(nominal), limit: about(Math.max(allows, ratio * nominal)) };
}

describe("limits of a full slot (by hand)", () => {
  it("of the tool as it is held in the machine", () => {
    const plan = at(slot);
    const wanted = depths(CUT, HELD);
    expect(chatter(plan)).toEqual({ value: 6, ...wanted, measured: false, profiles: undefined });
    expect(plan.limits.find((l) => l.key === "chatter")).toMatchObject({
      value: 6,
      limit: wanted.limit,
      dimension: "length",
    });
  });
  it("of another holder, of more damping, of another ratio", () => {
    const machine = (cells: RowCells) => chatter(at(slot, { machine: cells }));
    expect(machine({ "Holder stiffness [N/µm]": 20 })).toMatchObject(depths(CUT, { ...HELD, holderStiffness: 20 }));
    expect(machine({ "Holder stiffness [N/µm]": null })).toMatchObject(depths(CUT, HELD));
    expect(machine({ Damping: 0.025 })).toMatchObject(depths(CUT, { ...HELD, damping: 0.025 }));
    expect(machine({ Damping: null })).toMatchObject(depths(CUT, HELD));
    expect(machine({ "Chatter ratio": 60 })).toMatchObject(depths(CUT, HELD, 60));
    expect(machine({ "Chatter ratio": null })).toMatchObject(depths(CUT, HELD));
  });
  it("of a worn edge, against the feed, of another material", () => {
    const slope = (kc: number) => forceSlope(kc, 0.14, meanChip(0.07, 12, 12, 90));
    expect(chatter(at({ ...slot, "Wear factor": 1.3 }))).toMatchObject(
      depths({ ...CUT, slope: slope(1.3 * 2220) }, HELD),
    );
    expect(chatter(at({ ...slot, Way: "conventional" }))).toMatchObject(depths({ ...CUT, way: "conventional" }, HELD));
    expect(chatter(at(slot, { material: { "Radial ratio": 0.5 } }))).toMatchObject(
      depths({ ...CUT, radialRatio: 0.5 }, HELD),
    );
    expect(chatter(at(slot, { material: { "Radial ratio": null } }))).toMatchObject(depths(CUT, HELD));
    expect(chatter(at(slot, { material: { "kc1.1 [MPa]": null } }))).toBeUndefined();
  });
  it("of a tool of high-speed steel, or one that the list tells less of", () => {
    const steel = { ...HELD, modulus: 210, poisson: 0.29, density: 8 };
    const row = { ...slot, "Surface speed": 155 };
    const cut = { ...CUT, surfaceSpeed: 155 };
    expect(chatter(at(row, { tool: { Substrate: "HSS", "Modulus [GPa]": null } }))).toMatchObject(depths(cut, steel));
    expect(
      chatter(at(row, { tool: { Substrate: null, "Modulus [GPa]": null, "Shank diameter": null } })),
    ).toMatchObject(depths(cut, HELD));
    expect(chatter(at(row, { tool: { "Stick-out": null } }))).toBeUndefined();
  });
  it("of two machines one after the other, each by its own damping (what is remembered of a tool is of one machine)", () => {
    for (const damping of [0.03, 0.02, 0.03])
      expect(chatter(at(slot, { machine: { Damping: damping } }))).toMatchObject(depths(CUT, { ...HELD, damping }));
  });
  it("a face is not judged by it", () => {
    const face = { Operation: "face", Tool: "EM-12-4", Depth: 6, "Axial depth": 6, Length: 60, "Radial depth": 12 };
    expect(chatter(at(face))).toBeUndefined();
  });
});

describe("a slot that chooses its steps (independent: every number of steps typed)", () => {
  const row = { Operation: "slot", Tool: "EM-12-4", Length: 60 };
  it.each([8, 10, 12, 14])("%d mm deep: the fewest that are not likely to chatter", (depth) => {
    const chosen = at({ ...row, Depth: depth });
    const levels = chosen.results.passes!;
    const typed = (n: number) => codes(at({ ...row, Depth: depth, "Axial depth": depth / n })).includes("chatter");
    expect(typed(levels)).toBe(false);
    expect(codes(chosen)).not.toContain("chatter");
    // no fewer: half a cutter is the usual step
    const usual = Math.ceil(depth / 6);
    expect(levels).toBeGreaterThanOrEqual(usual);
    for (let n = usual; n < levels; n++) expect(typed(n), `${n} steps`).toBe(true);
    expect(chosen.path).toMatchObject({ wall: { levels, axial: about(depth / levels) } });
  });
  it("where none as deep as a quarter of the cutter is quiet the usual steps stay, and are said to be likely to chatter", () => {
    const soft = at({ ...row, Depth: 12, "Stick-out": 70 }, { machine: { "Chatter ratio": 8 } });
    expect(soft.results.passes).toBe(2);
    expect(codes(soft)).toContain("chatter");
  });
  it("typed passes of a narrower cutter, and a typed step, stay as they are", () => {
    expect(at({ ...row, Depth: 12, "Axial depth": 6 }).results.passes).toBe(2);
  });
});

describe("profiles of a thread mill (by hand)", () => {
  it("cut as wide as all of them together, each by what its edge engages", () => {
    const row = {
      Operation: "thread mill",
      Tool: "TM-M10x1.5-F",
      Thread: "M10",
      Depth: 16.5,
      Passes: 1,
      "Start diameter": 8.5,
    };
    const plan = at(row);
    const deep = (plan.results.depths as number[])[0]!;
    const found = chatter(plan) as { value: number; profiles: number };
    expect(found.profiles).toBe(11);
    expect(found.value).toBeCloseTo(11 * threadWidth(1.5, deep), 9);
    const centre = plan.results.tableFeed! / plan.results.spindleSpeed! / 4;
    const { diameter, teeth } = { diameter: plan.sketch!.cutterDiameter!, teeth: 4 };
    const ae = plan.results.radialDepth!;
    const parts = threadParts({
      ...{ holeDiameter: 8.5, side: "inside", cutterDiameter: diameter, pitch: 1.5, halfAngle: 30, startDepth: 0 },
      ...{ endDepth: deep, feedPerTooth: centre, kc11: 2220, exponent: 0.14 },
    });
    const cut: BandedCut = {
      ...{
        teeth,
        diameter,
        radialDepth: ae,
        radialRatio: 0.35,
        way: "climb",
        surfaceSpeed: plan.results.surfaceSpeed!,
      },
      ...{ slope: forceSlope(2220, 0.14, meanChip(centre, ae, diameter, 90)), parts },
    };
    const tool = plan.sketch!.tool!.map((p) => part(p.diameter, p.length));
    expect(found).toMatchObject(depths(cut, { ...HELD, segments: tool, shankDiameter: 8 }));
  });
});

describe("measured modes (rule)", () => {
  const MODES = "1243/2.92/0.0619; 1747/12/0.0288";
  it("are a frequency, a stiffness and a damping below 1, all above 0", () => {
    expect(readModes(MODES)).toEqual([
      { frequency: 1243, stiffness: 2.92, damping: 0.0619 },
      { frequency: 1747, stiffness: 12, damping: 0.0288 },
    ]);
    expect(readModes(" 1243 / 2.92 / 0.0619 ")).toHaveLength(1);
    for (const wrong of [
      ...["1243/2.92", "1243/2.92/0.06/1", "0/2.92/0.06", "1243/0/0.06", "1243/2.92/0", "1243/2.92/1", "1243//0.06"],
      ...["-1/2.92/0.06", "1243/-2/0.06", "1243/2.92/-0.06", "a/b/c", "", `${MODES};`, "1243/2.92/0.06/"],
    ])
      expect(readModes(wrong), wrong).toBeUndefined();
  });
  const slotAt = (cells: RowCells) => at({ ...slot, Depth: 0.1, "Axial depth": 0.1 }, { tool: cells });
  it("are those of both directions where one stands alone; the other is looked for where it stands", () => {
    const one = chatter(slotAt({ "Tip modes x": MODES }));
    expect(one).toMatchObject({ measured: true, value: 0.1 });
    expect(chatter(slotAt({ "Tip modes x": MODES, "Tip modes y": MODES }))).toEqual(one);
    expect(chatter(slotAt({ "Tip modes x": MODES, "Tip modes y": "4000/90/0.2" }))).toBeUndefined();
    const modes = { x: readModes(MODES)!, y: readModes(MODES)! };
    const allows = chatterDepth(CUT, modes, "firm");
    expect(one).toEqual({
      ...{ value: 0.1, measured: true, profiles: undefined },
      allows: about(allows),
      nominal: about(allows),
      limit: about(allows),
    });
  });
  it("that cannot be read are said with their text: of x, else of y", () => {
    const text = (cells: RowCells) => slotAt(cells).findings.find((f) => f.code === "tip-modes-unreadable")?.facts;
    expect(text({ "Tip modes x": "so" })).toEqual({ tool: "EM-12-4", text: "so" });
    expect(text({ "Tip modes x": MODES, "Tip modes y": "so" })).toEqual({ tool: "EM-12-4", text: "so" });
    expect(text({ "Tip modes x": "no", "Tip modes y": "so" })).toEqual({ tool: "EM-12-4", text: "no" });
    expect(text({ "Tip modes x": MODES })).toBeUndefined();
    // then the tool is judged as one that was not measured
    expect(chatter(at(slot, { tool: { "Tip modes x": "so" } }))).toMatchObject({ measured: false });
  });
  it("count on the machine that they were measured on, whatever its capitals", () => {
    const on = (machine: string | null) => chatter(slotAt({ "Tip modes x": MODES, "Tip modes on": machine }));
    expect(on("centre v3")).toBeDefined();
    expect(on(null)).toBeDefined();
    expect(on("Centre V4")).toBeUndefined();
    const nowhere = at(
      { ...slot, "Axial depth": 0.1, Machine: null },
      { tool: { "Tip modes x": MODES, "Tip modes on": "Centre V3" } },
    );
    expect(codes(nowhere)).not.toContain("fault");
    expect(chatter(nowhere)).toBeUndefined();
  });
});
