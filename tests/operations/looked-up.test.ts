/** What a row's cells and names come to before anything is worked out: classes of sizes, lists, blanks; by hand. */
import { describe, expect, it } from "vitest";
import { about, type Case, planOf, type RowCells, STEEL } from "../findings/rule.ts";

type More = Omit<Case, "row">;
const at = (row: RowCells, more: More = {}) => planOf({ row: { ...STEEL, ...row }, ...more });
type Plan = ReturnType<typeof at>;
const codes = (plan: Plan) => plan.findings.map((f) => f.code);
const step = (plan: Plan, key: string) => plan.steps.find((s) => s.key === key);

describe("a tolerance class on the finish diameter (published, ISO 286-2)", () => {
  const bore = { Operation: "bore", Tool: "EM-10-4", "Start diameter": 28, "Finish diameter": 30, Depth: 10 };
  it("of a bore or a counterbore: made to the middle of its limits; H7 at 30 is 0 to 0.021", () => {
    for (const operation of ["bore", "counterbore"]) {
      const plan = at({ ...bore, Operation: operation, "Size class": "H7" });
      expect([plan.results.sizeMin, plan.results.sizeMax]).toEqual([about(30), about(30.021)]);
      expect(plan.results.pathRadius).toBeCloseTo((30.0105 - 10) / 2, 9);
      expect(step(plan, "size")!.facts).toMatchObject({ programmed: about(30.0105) });
    }
  });
  it("of a boss: a shaft's class; g6 at 30 is −0.007 to −0.020", () => {
    const boss = { ...bore, Operation: "boss", "Start diameter": 32 };
    const plan = at({ ...boss, "Size class": "g6" });
    expect([plan.results.sizeMin, plan.results.sizeMax]).toEqual([about(29.98), about(29.993)]);
    expect(plan.results.pathRadius).toBeCloseTo((29.9865 + 10) / 2, 9);
    const wrong = at({ ...boss, "Size class": "H7" });
    expect(codes(wrong)).toContain("unknown-class");
    expect(wrong.results.pathRadius).toBe(20);
    expect(codes(at({ ...bore, "Size class": "g6" }))).toContain("unknown-class");
  });
  it("a typed tolerance beats it; without a diameter, or on a wall that has none, it says nothing", () => {
    const both = at({ ...bore, "Size class": "H7", "Size tolerance": 0.05 });
    expect([both.results.sizeMin, both.results.sizeMax]).toEqual([about(29.95), about(30.05)]);
    expect(both.results.pathRadius).toBe(10);
    const slot = at({
      Operation: "slot",
      Tool: "EM-10-4",
      Depth: 4,
      Length: 60,
      "Finish diameter": 10,
      "Size class": "nonsense",
    });
    expect(codes(slot)).not.toContain("unknown-class");
    expect(codes(at({ ...bore, "Finish diameter": null, "Size class": "nonsense" }))).not.toContain("unknown-class");
  });
  it("of a reamed hole: its own limits; of a drilled one too, and the tool keeps its size", () => {
    const ream = at({
      Operation: "ream",
      Tool: "R-10",
      "Finish diameter": 10,
      "Start diameter": 9.8,
      Depth: 9,
      "Size class": "H8",
    });
    expect([ream.results.sizeMin, ream.results.sizeMax]).toEqual([about(10), about(10.022)]);
    expect(ream.results.size).toBeCloseTo(10.0075, 9);
    expect(codes(ream)).not.toContain("reamed-size");
  });
});

describe("names and cells (rule)", () => {
  const slot = { Operation: "slot", Tool: "EM-10-4", Depth: 4, Length: 60 };
  it("what is written wrongly is not blank as well", () => {
    for (const [heading, blank] of [
      ["Units", "units-blank"],
      ["Operation", "operation-blank"],
    ] as const) {
      const wrong = at({ ...slot, [heading]: "furlong" });
      expect(codes(wrong)).toContain("bad-cell");
      expect(codes(wrong)).not.toContain(blank);
      const none = at({ ...slot, [heading]: null });
      expect(codes(none)).toContain(blank);
      expect(none.results.tableFeed).toBeUndefined();
    }
    expect(codes(at(slot)).filter((code) => /blank|bad-cell/.test(code))).toEqual([]);
  });
  it("every wrong cell is said, of the row and of the lists", () => {
    const plan = at({ ...slot, Depth: -1, Length: -1 });
    expect(plan.findings.filter((f) => f.code === "bad-cell").map((f) => (f.facts as { about: string }).about)).toEqual(
      ["depth", "length"],
    );
    const list = at(slot, { tool: { Helix: -1, Teeth: 2.5 } });
    expect(
      list.findings
        .filter((f) => f.code === "list-tool")
        .map((f) => (f.facts as { about: string }).about)
        .sort(),
    ).toEqual(["helix", "teeth"]);
    // and of an entry that another row names, nothing
    expect(
      codes(
        at(
          { ...slot, Tool: "EM-12-4" },
          {
            tools: [
              { Tool: "EM-12-4", Units: "mm" },
              { Tool: "EM-10-4", Teeth: 2.5 },
            ],
          },
        ),
      ),
    ).not.toContain("list-tool");
  });
  it("an inch row is told in inches", () => {
    expect(at({ ...slot, Units: "in", Tool: "EM-3/8-4", Depth: 0.1, Length: 2 }).units).toBe("in");
    expect(at(slot).units).toBe("mm");
    expect(at({ ...slot, Units: null }).units).toBe("mm");
  });
});

describe("the spindle's step (by hand)", () => {
  const row = { Operation: "slot", Tool: "EM-10-4", Depth: 4, Length: 60, "Surface speed": 100 };
  const facts = (cells: RowCells, more: More = {}) =>
    Object.fromEntries(
      Object.entries(step(at({ ...row, ...cells }, more), "spindleSpeed")!.facts as object).filter(
        ([, v]) => v !== undefined,
      ),
    );
  const rpm = 100_000 / (10 * Math.PI);
  it("what is wanted, the lowest cap, who caps it where it does, and whether the machine runs no slower", () => {
    expect(facts({})).toEqual({ wanted: 100, diameter: 10, cap: 8000, slow: false });
    expect(facts({ "Max rpm": 3000 })).toEqual({ wanted: 100, diameter: 10, cap: 3000, by: "row", slow: false });
    const free = { machine: { "Max rpm": null }, tool: { "Max rpm": null } };
    expect(facts({}, free)).toEqual({ wanted: 100, diameter: 10, cap: null, slow: false });
    expect(at(row, free).limits.map((l) => l.key)).not.toContain("spindleSpeed");
    expect(facts({}, { machine: { "Min rpm": 4000 } })).toMatchObject({ slow: true });
    expect(facts({}, { machine: { "Min rpm": null } })).toMatchObject({ slow: false });
    expect(facts({ "Max rpm": 4000 }, { machine: { "Min rpm": 4000 } })).toMatchObject({ wanted: 100 });
    expect(at(row).results.spindleSpeed).toBeCloseTo(rpm, 9);
  });
  it("a speed over the range of the list is said; without a range there is none to be over", () => {
    const over = (speed: number, more: More = {}) =>
      codes(at({ ...row, "Surface speed": speed }, more)).includes("speed-over-material");
    expect(over(190 * 0.5 ** 0.25)).toBe(false);
    expect(over(190 * 0.5 ** 0.25 + 0.1)).toBe(true);
    const none = { material: { "Speed carbide high [m/min]": null } };
    expect(over(300, none)).toBe(false);
    expect(at({ ...row, "Surface speed": 300 }, none).steps.map((s) => s.key)).not.toContain("speedRange");
  });
  it("an edge wears by the speed that the list means: engaged as much, and of the solid cutter", () => {
    const speed = (cells: RowCells) => (step(at(cells), "life")!.facts as { speed: number }).speed;
    expect(speed({ ...row, "Surface speed": null })).toBeCloseTo(155, 9);
    expect(speed(row)).toBeCloseTo(100 / 0.5 ** 0.25, 9);
    // inserts: 240 at the top where the solid cutter has 190, half of the cutter engaged
    expect(
      speed({ Operation: "face", Tool: "FM-40-4", Depth: 2, Length: 60, "Radial depth": 20, "Surface speed": 200 }),
    ).toBeCloseTo((200 * 190) / 240, 9);
  });
});
