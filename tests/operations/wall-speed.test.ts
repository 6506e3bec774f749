/** Speed, feed and steps that a wall's row chooses: each by hand, with a neighbour that changes one thing. */
import { describe, expect, it } from "vitest";
import { about, type Case, planOf, type RowCells, STEEL } from "../findings/rule.ts";

type More = Omit<Case, "row">;
const at = (row: RowCells, more: More = {}) => planOf({ row: { ...STEEL, ...row }, ...more });
type Plan = ReturnType<typeof at>;
const facts = (plan: Plan, code: string) => plan.findings.find((f) => f.code === code)?.facts;
const step = (plan: Plan, key: string) => plan.steps.find((s) => s.key === key);
const engaged = (plan: Plan) => (step(plan, "speedRange")!.facts as { engaged: number }).engaged;

const LISTED = 0.03 + (0.04 * 4) / 6;
const slot = { Operation: "slot", Tool: "EM-10-4", Depth: 4, Length: 60, "Axial depth": 4 };
const side = { Operation: "side", Tool: "EM-10-4", Depth: 10, Length: 60, "Radial depth": 2 };

describe("speed by how far the cutter is engaged (Taylor: (D/2/ae)^n, from 0.84 to 1.35)", () => {
  it("with the material's exponent, else a quarter; an eighth of high-speed steel whatever the list says", () => {
    expect(engaged(at(slot))).toBeCloseTo(0.5 ** 0.25, 9);
    expect(engaged(at(slot, { material: { "Taylor n": 0.2 } }))).toBeCloseTo(0.5 ** 0.2, 9);
    expect(engaged(at(slot, { material: { "Taylor n": null } }))).toBeCloseTo(0.5 ** 0.25, 9);
    expect(engaged(at({ ...side, "Radial depth": 5 }))).toBeCloseTo(1, 9);
    expect(engaged(at(side))).toBeCloseTo(2.5 ** 0.25, 9);
    const steel = { ...slot, Tool: "EM-12-4H" };
    expect(engaged(at(steel))).toBeCloseTo(0.5 ** 0.125, 9);
    expect(engaged(at(steel, { material: { "Taylor n": 0.2 } }))).toBeCloseTo(0.5 ** 0.125, 9);
  });
  it("a ball that cuts in part is as wide as it is there", () => {
    // 1 mm deep a ball of 10 is 6 wide: the whole of it is a slot
    const ball = { Operation: "side", Tool: "BM-10-2", Depth: 1, Length: 60, "Radial depth": 7 };
    const plan = at(ball);
    expect(engaged(plan)).toBeCloseTo(0.5 ** 0.25, 9);
    expect(step(plan, "spindleSpeed")!.facts).toMatchObject({ diameter: about(6) });
    expect(step(plan, "chip")!.facts).toMatchObject({
      diameter: about(6),
      radialDepth: about(6),
      edgeAngle: about(36.8699, 4),
    });
  });
});

describe("a chosen feed is what the spindle drives (force goes with the chip to the power 1 − m)", () => {
  const load = (plan: Plan, key: string) => plan.limits.find((l) => l.key === key)!;
  it.each([
    ["power", "Power [kW]"],
    ["torque", "Torque [N·m]"],
  ] as const)("%s: lowered to a hair under the limit with the force's 15 %%, not below half", (key, heading) => {
    const free = load(at(slot), key).value;
    const held = (share: number, cells: RowCells = {}) =>
      at({ ...slot, ...cells }, { machine: { [heading]: share * free } });
    expect(facts(held(1.151), "feed-for-spindle")).toBeUndefined();
    const plan = held(1);
    expect(load(plan, key).band![1]).toBeCloseTo(0.995, 3);
    const share = (0.995 / 1.15) ** (1 / 0.86);
    expect(facts(plan, "feed-for-spindle")).toEqual({ value: about(share * LISTED), limit: about(LISTED) });
    expect(step(plan, "edgeFeed")!.facts).toMatchObject({ by: "spindle" });
    expect(plan.results.feedPerTooth).toBeCloseTo(share * LISTED, 9);
    expect(plan.results.chipThickness).toBeCloseTo(share * LISTED, 9);
    expect(facts(plan, `${key}-over`)).toBeUndefined();
    // half of the feed has 0.5^0.86 of the force
    const least = (1.15 * 0.5 ** 0.86) / 0.995;
    expect(facts(held(1.01 * least), "feed-for-spindle")).toBeDefined();
    const weak = held(0.99 * least);
    expect(facts(weak, "feed-for-spindle")).toBeUndefined();
    expect(weak.results.feedPerTooth).toBeCloseTo(LISTED, 9);
    // a typed feed is kept
    expect(facts(held(1, { "Feed per tooth": LISTED }), "feed-for-spindle")).toBeUndefined();
    expect(held(1, { "Feed per tooth": LISTED }).results.feedPerTooth).toBeCloseTo(LISTED, 9);
  });
  it("on an arc the centre is slowed as much", () => {
    const bore = {
      Operation: "bore",
      Tool: "EM-10-4",
      "Start diameter": 20,
      "Finish diameter": 30,
      Depth: 20,
      Passes: 1,
    };
    const free = at(bore);
    const { value } = load(free, "power");
    const held = at(bore, { machine: { "Power [kW]": value } });
    const share = (0.995 / 1.15) ** (1 / 0.86);
    expect(held.results.tableFeed! / free.results.tableFeed!).toBeCloseTo(share, 6);
    expect(held.results.feedPerTooth! / free.results.feedPerTooth!).toBeCloseTo(share, 6);
  });
});

describe("steps of a slot (common practice)", () => {
  // on a machine that is not held to chatter
  const levels = (cells: RowCells, more: More = {}) =>
    at({ ...slot, "Axial depth": null, ...cells }, { machine: { "Chatter ratio": 1000 }, ...more }).results.passes;
  it("half a cutter each; less where the chips would not get out", () => {
    expect(levels({ Depth: 5 })).toBe(1);
    expect(levels({ Depth: 5.01 })).toBe(2);
    // dry: half of the diameter that coolant clears in steel; 0.3 of it by the list
    expect(levels({ Depth: 5, Coolant: "dry" })).toBe(1);
    expect(levels({ Depth: 4 }, { material: { "Slot step [of diameter]": 0.3 } })).toBe(2);
    expect(levels({ Depth: 4 }, { material: { "Slot step [of diameter]": 0.3, Group: null } })).toBe(1);
  });
  it("a narrower radial depth is no full slot: nothing is said of chips", () => {
    const plan = at({ ...slot, "Radial depth": 4 });
    expect(plan.limits.map((l) => l.key)).not.toContain("slotStep");
    expect(at(slot).limits.find((l) => l.key === "slotStep")).toMatchObject({
      value: 4,
      limit: 10,
      dimension: "length",
    });
    expect(plan.results.direction).toEqual({ path: "wall", wall: "right" });
    const unknown = at(slot, { material: { Group: null } });
    expect(unknown.limits.map((l) => l.key)).not.toContain("slotStep");
    expect(unknown.findings.map((f) => f.code)).not.toContain("fault");
  });
  it("walls are judged where the row has a tolerance, and no passes beside the middle", () => {
    const keys = (cells: RowCells) => at({ ...slot, "Radial depth": 4, ...cells }).limits.map((l) => l.key);
    expect(keys({ "Size tolerance": 0.1 })).toContain("scatter");
    expect(keys({})).not.toContain("scatter");
    expect(keys({ "Size tolerance": 0.1, "Total width": 12 })).not.toContain("scatter");
  });
  it("a cutter that is wider than the slot is said to be, one as wide is not", () => {
    expect(facts(at({ ...slot, "Total width": 9.998 }), "cutter-too-large")).toEqual({
      value: 10,
      limit: 9.998,
      into: "slot",
    });
    expect(facts(at({ ...slot, "Total width": 9.9995 }), "cutter-too-large")).toBeUndefined();
    expect(facts(at({ ...slot, "Total width": 10.0005 }), "slot-widened")).toBeUndefined();
    expect(facts(at({ ...slot, "Total width": 10.002 }), "slot-widened")).toMatchObject({ passes: 2 });
    expect(facts(at({ ...slot, "Total width": 40, "Radial depth": 25 }), "slot-widened")).toMatchObject({
      passes: 4,
      step: about(7.5),
    });
  });
});

describe("what the lists lack (rule)", () => {
  const NONE = Object.fromEntries([3, 6, 12, 20].map((d) => [`Feed ${d} mm [mm per tooth]`, null]));
  it("a typed feed stands for the list's, and then no chip is held against it", () => {
    const typed = at({ ...slot, "Feed per tooth": 0.2 }, { material: NONE });
    expect(typed.limits.map((l) => l.key)).not.toContain("chip");
    expect(typed.steps.map((s) => s.key)).not.toContain("mostChip");
    expect(step(typed, "edgeFeed")!.facts).toEqual({ listed: 0.2, by: "row" });
    expect(facts(at(slot, { material: NONE }), "no-feed")).toEqual({ material: STEEL.Material });
    expect(at(slot, { material: NONE }).results.tableFeed).toBeUndefined();
    expect(at(slot, { material: NONE }).results.direction).toBeDefined();
  });
  it("an insert's feed is missed of face mills alone", () => {
    const blank = { material: { "Feed insert [mm per tooth]": null } };
    const face = { Operation: "face", Depth: 1, Length: 60 };
    expect(facts(at({ ...face, Tool: "FM-40-4" }, blank), "list-insert-blank")).toEqual({
      material: STEEL.Material,
      factor: 2,
    });
    expect(facts(at({ ...face, Tool: "EM-10-4" }, blank), "list-insert-blank")).toBeUndefined();
    expect(facts(at({ ...face, Tool: "FM-40-4" }), "list-insert-blank")).toBeUndefined();
  });
  it("a mill without a diameter or without teeth is not planned", () => {
    const missing = (cells: RowCells) => facts(at(side, { tool: cells }), "tool-incomplete");
    expect(missing({ Diameter: null })).toEqual({ tool: "EM-10-4", missing: "diameter" });
    expect(missing({ Teeth: null })).toEqual({ tool: "EM-10-4", missing: "teeth" });
    expect(missing({ Diameter: null, Teeth: null })).toEqual({ tool: "EM-10-4", missing: "diameter" });
    expect(missing({})).toBeUndefined();
  });
  it("a mill of another kind says which are wanted, one of no kind is taken", () => {
    expect(facts(at({ ...side, Tool: "D-5.0" }), "tool-kind")).toEqual({
      tool: "D-5.0",
      kind: "drill",
      wanted: "end mill",
    });
    expect(facts(at({ Operation: "face", Tool: "D-5.0", Depth: 1, Length: 9 }), "tool-kind")).toMatchObject({
      wanted: "face mill",
    });
    for (const [row, wanted] of [
      [{ Operation: "ream", "Finish diameter": 10, Depth: 15 }, "reamer"],
      [{ Operation: "tap", Thread: "M6", Depth: 9 }, "tap"],
      [{ Operation: "countersink", "Finish diameter": 10 }, "countersink"],
      [{ Operation: "thread mill", Thread: "M10", Depth: 12 }, "thread mill"],
    ] as const)
      expect(facts(at({ ...row, Tool: "D-5.0" }), "tool-kind")).toEqual({ tool: "D-5.0", kind: "drill", wanted });
    expect(facts(at({ Operation: "drill", Tool: "R-10", "Finish diameter": 10, Depth: 9 }), "tool-kind")).toEqual({
      ...{ tool: "R-10", kind: "reamer", wanted: "drill" },
    });
    const plain = at(side, { tool: { Kind: null } });
    expect(facts(plain, "tool-kind")).toBeUndefined();
    expect(plain.results.tableFeed).toBeGreaterThan(0);
  });
  it("no cutter at all is told with the kind that is wanted", () => {
    const none = planOf({
      row: { ...STEEL, ...side, Tool: null },
      tools: [{ Tool: "D", Kind: "drill", Diameter: 5, Units: "mm" }],
    });
    expect(facts(none, "no-tool-fits")).toEqual({ operation: "side", kind: "end mill" });
    expect(facts(at({ ...side, Tool: null, Operation: "face", "Axial depth": 1 }), "no-tool-fits")).toEqual({
      ...{ operation: "face", kind: "face mill" },
    });
  });
});

describe("what the row before leaves (by hand)", () => {
  const roughing = {
    ...STEEL,
    Row: 7,
    Operation: "bore",
    Tool: "EM-10-4",
    "Start diameter": 24,
    "Finish diameter": 29,
    Depth: 10,
  };
  const finishing = {
    Operation: "bore",
    Tool: "EM-10-4",
    "Start diameter": 29,
    "Finish diameter": 30,
    Depth: 10,
    Passes: 1,
  };
  const following = (measured: number, cells: RowCells = {}) =>
    at({ ...finishing, ...cells }, { above: { ...roughing, Measured: measured } });
  /** Effective depth of a pass to 30 mm, by the law of cosines. */
  const ae = (from: number) => 5 * (1 - ((from / 2) ** 2 - 125) / 100);
  it("is cut as well: the pass starts from the wall that stands", () => {
    const plan = following(28.9);
    expect(step(plan, "handed")).toMatchObject({ value: about(0.05), facts: { row: 7 } });
    expect(plan.results.radialDepth).toBeCloseTo(ae(28.9), 9);
    expect(step(plan, "radialDepth")!.facts).toMatchObject({ from: about(28.9), to: 30 });
    const none = following(29);
    expect(none.steps.map((s) => s.key)).not.toContain("handed");
    expect(none.results.radialDepth).toBeCloseTo(ae(29), 9);
  });
  it("or was taken already, but for a hundredth of the pass", () => {
    expect(following(29.1).results.radialDepth).toBeCloseTo(ae(29.1), 9);
    expect(following(30.4).results.radialDepth).toBeCloseTo(ae(29.99), 9);
  });
});
