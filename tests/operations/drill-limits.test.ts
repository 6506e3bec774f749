/** What a drill is held to: torsion, buckling, its point on a bare face, how far the hole runs off; by hand. */
import { describe, expect, it } from "vitest";
import { holeDrift, walkRatio } from "../../src/drill/start.ts";
import { drillBreakingTorque, drillBucklingThrust, HELD_POINT } from "../../src/drill/strength.ts";
import { about, type Case, planOf, type RowCells, STEEL } from "../findings/rule.ts";

type More = Omit<Case, "row">;
const at = (row: RowCells, more: More = {}) => planOf({ row: { ...STEEL, ...row }, ...more });
type Plan = ReturnType<typeof at>;
const facts = (plan: Plan, code: string) => plan.findings.find((f) => f.code === code)?.facts;
const limit = (plan: Plan, key: string) => plan.limits.find((l) => l.key === key);

const row = { Operation: "drill", Tool: "D-6.8", "Finish diameter": 6.8, Depth: 20 };

describe("strength of a drill (by hand)", () => {
  it("two thirds of what twists it off, half of what bends it away, by what it is made of", () => {
    const plan = at(row);
    expect(limit(plan, "torsion")!.limit).toBeCloseTo(drillBreakingTorque(6.8, 3500, false) / 1.5, 9);
    expect(limit(plan, "buckling")!.limit).toBeCloseTo(drillBucklingThrust(6.8, 76, 210, HELD_POINT) / 2, 6);
    const carbide = at(row, { tool: { Substrate: "carbide", "Modulus [GPa]": null } });
    expect(limit(carbide, "torsion")!.limit).toBeCloseTo(drillBreakingTorque(6.8, 3500, true) / 1.5, 9);
    expect(limit(carbide, "buckling")!.limit).toBeCloseTo(drillBucklingThrust(6.8, 76, 600, HELD_POINT) / 2, 6);
    const blank = at(row, { tool: { Substrate: null, "Modulus [GPa]": null } });
    expect(limit(blank, "buckling")!.limit).toBeCloseTo(drillBucklingThrust(6.8, 76, 210, HELD_POINT) / 2, 6);
    const told = at(row, { tool: { "Modulus [GPa]": 230 } });
    expect(limit(told, "buckling")!.limit).toBeCloseTo(drillBucklingThrust(6.8, 76, 230, HELD_POINT) / 2, 6);
    const longer = at({ ...row, "Stick-out": 90 });
    expect(limit(longer, "buckling")!.limit).toBeCloseTo(drillBucklingThrust(6.8, 90, 210, HELD_POINT) / 2, 6);
  });
  it("what the list does not tell is not judged: no strength, no length", () => {
    const weak = at(row, { tool: { "Rupture strength [MPa]": null } });
    expect(facts(weak, "no-strength")).toEqual({ tool: "D-6.8" });
    expect(limit(weak, "torsion")).toBeUndefined();
    expect(limit(weak, "buckling")).toBeDefined();
    const free = at(row, { tool: { "Stick-out": null } });
    expect(limit(free, "buckling")).toBeUndefined();
    expect(limit(free, "torsion")).toBeDefined();
    for (const code of ["fault", "spot-first", "drill-buckles"]) expect(facts(free, code), code).toBeUndefined();
  });
  it("is a check where the force's 15 % reach it, a stop where the nominal is over what breaks it", () => {
    for (const [key, code] of [
      ["torsion", "drill-torsion"],
      ["buckling", "drill-buckles"],
    ] as const) {
      const strength = (share: number): More => {
        const { value } = limit(at(row), key)!;
        // a breaking value that is `share` of the load
        return key === "torsion"
          ? { tool: { "Rupture strength [MPa]": (3500 * share * value) / drillBreakingTorque(6.8, 3500, false) } }
          : { tool: { "Modulus [GPa]": (210 * share * value) / drillBucklingThrust(6.8, 76, 210, HELD_POINT) } };
      };
      const safety = key === "torsion" ? 1.5 : 2;
      const found = (share: number) => at(row, strength(share)).findings.find((f) => f.code === code);
      const { value } = limit(at(row), key)!;
      expect(found(1.151 * safety), key).toBeUndefined();
      const light = found(1.149 * safety)!;
      expect(light.severity).toBe("check");
      expect(light.facts).toEqual({
        ...{ value: about(1.15 * value, 6), nominal: about(value, 6) },
        limit: about(1.149 * value, 6),
      });
      expect(found(1.001)?.severity, key).toBe("check");
      expect(found(0.999)?.severity, key).toBe("stop");
    }
  });
});

describe("how a drill starts and where it ends (by hand)", () => {
  it("its point walks where the thrust is over what it bears; any start hole holds it", () => {
    const plan = at(row);
    const { value: thrust } = limit(plan, "buckling")!;
    const ratio = walkRatio(thrust, 6.8, 76, 210);
    expect(ratio).toBeGreaterThan(1);
    expect(facts(plan, "spot-first")).toEqual({ value: about(thrust, 6), limit: about(thrust / ratio, 6) });
    expect(facts(at({ ...row, "Start diameter": 0 }), "spot-first")).toBeDefined();
    expect(facts(at({ ...row, "Start diameter": 0.5 }), "spot-first")).toBeUndefined();
    expect(facts(at({ ...row, "Stick-out": 40 }), "spot-first")).toBeUndefined();
    expect(facts(at({ ...row, Tool: "no such" }), "spot-first")).toBeUndefined();
  });
  it("a deep hole runs off, less behind a pilot or with a carbide drill", () => {
    const deep = { ...row, Depth: 60 };
    const drift = (cells: RowCells, more: More = {}) => facts(at({ ...deep, ...cells }, more), "hole-runs-off");
    expect(drift({})).toEqual({ drift: about(holeDrift(60, false)) });
    expect(drift({ "Start diameter": 0 })).toEqual({ drift: about(holeDrift(60, false)) });
    expect(drift({ "Start diameter": 3 })).toEqual({ drift: about(holeDrift(60, true)) });
    expect(drift({}, { tool: { Substrate: "carbide" } })).toEqual({ drift: about(holeDrift(60, true)) });
    expect(holeDrift(60, true)).toBeLessThan(holeDrift(60, false));
    expect(drift({ Depth: 54.4 })).toBeUndefined();
    expect(drift({ Depth: 54.5 })).toBeDefined();
  });
  it("beyond fifty diameters nothing more is planned", () => {
    const far = at({ ...row, Depth: 400 });
    expect(facts(far, "too-deep")).toBeDefined();
    expect(far.time).toBeUndefined();
    expect(far.path).toBeUndefined();
    for (const code of ["pilot-wanted", "hole-runs-off", "drill-too-short"]) expect(facts(far, code)).toBeUndefined();
  });
  it("coolant is wanted of a drill that is not listed too, from fifteen diameters on", () => {
    const bare = { ...row, Tool: "no such" };
    expect(facts(at({ ...bare, Depth: 102 }), "coolant-wanted")).toBeUndefined();
    expect(facts(at({ ...bare, Depth: 102.1 }), "coolant-wanted")).toEqual({ value: about(102.1), limit: about(102) });
    expect(facts(at({ ...row, Depth: 102.1 }, { tool: { Substrate: null } }), "coolant-wanted")).toBeDefined();
  });
  it("flutes that the list does not tell are not judged, nor is their reach where there is no drill", () => {
    const blank = at({ ...row, Depth: 80 }, { tool: { "Cutting length": null, "Shank diameter": 6.8 } });
    for (const code of ["flutes-full", "drill-too-short", "fault"]) expect(facts(blank, code)).toBeUndefined();
    const bare = at({ ...row, Tool: "no such", Depth: 80 });
    for (const code of ["flutes-full", "drill-too-short", "holder-hits", "fault"])
      expect(facts(bare, code)).toBeUndefined();
    // too short for the face is said alone
    const short = at({ ...row, Depth: 68 });
    expect(facts(short, "drill-too-short")).toBeDefined();
    expect(facts(short, "flutes-full")).toBeUndefined();
  });
});

describe("size of a drilled hole (by hand)", () => {
  const hole = (cells: RowCells, more: More = {}) => at({ ...row, ...cells }, more);
  it("against its class, or its tolerance to both sides; the drill of the row with what it cuts over", () => {
    // ISO 286: H12 at 6.8 is 0.150, H11 0.090
    const classed = hole({ "Size class": "H12" });
    expect([classed.results.sizeMin, classed.results.sizeMax]).toEqual([about(6.8), about(6.95)]);
    expect(classed.findings.map((f) => f.code)).not.toContain("drilled-size-out");
    // 0.1016 and 0.45/6.35 of 0.0254 over
    const size = 6.8 + 0.1016 + (0.0254 * 0.45) / 6.35;
    expect(classed.results.size).toBeCloseTo(size, 9);
    expect(facts(hole({ "Size class": "H11" }), "drilled-size-out")).toEqual({
      ...{ value: about(size), limit: about(6.89), low: about(6.8), high: about(6.89) },
    });
    const under = hole({ "Size class": "H12", Tool: "D-6.6" });
    expect(facts(under, "drilled-size-out")).toMatchObject({
      value: about(6.6 + 0.1016 + (0.0254 * 0.25) / 6.35),
      limit: about(6.8),
    });
    const both = hole({ "Size tolerance": 0.2 });
    expect([both.results.sizeMin, both.results.sizeMax]).toEqual([about(6.6), about(7)]);
    expect(hole({}).results.sizeMin).toBeUndefined();
    expect(hole({ "Drilling oversize": 0.02 }).results.size).toBeCloseTo(6.82, 12);
    expect(hole({ Tool: "no such" }).results.size).toBeCloseTo(size, 9);
  });
  it("no less than the grade that drills hold: IT11 of a jobber, IT10 of carbide; beyond 500 mm no grade", () => {
    // ISO 286 at 6.8: IT11 0.090, IT10 0.058
    const holds = (tolerance: number, substrate: string | null) =>
      facts(
        hole({ "Size tolerance": tolerance, "Drilling oversize": 0 }, { tool: { Substrate: substrate } }),
        "drill-tolerance",
      );
    expect(holds(0.0449, "HSS")).toEqual({ value: about(0.0898), limit: about(0.09), grade: 11 });
    expect(holds(0.045, "HSS")).toBeUndefined();
    expect(holds(0.0449, null)).toMatchObject({ grade: 11 });
    expect(holds(0.0289, "carbide")).toEqual({ value: about(0.0578), limit: about(0.058), grade: 10 });
    expect(holds(0.029, "carbide")).toBeUndefined();
    const huge = at({
      Operation: "drill",
      "Finish diameter": 501,
      Depth: 10,
      "Size tolerance": 0.01,
      "Drilling oversize": 0,
    });
    expect(facts(huge, "drill-tolerance")).toBeUndefined();
    expect(facts(huge, "cannot-be-computed")).toBeUndefined();
  });
  it("of a thread: any drill whose hole is within the minor limits will do; a named size is a named size", () => {
    // ISO 965-1: M6-6H 4.917 to 5.153
    const threaded = { Operation: "drill", Thread: "M6", Depth: 12 };
    const codes = (cells: RowCells) => at({ ...threaded, ...cells }).findings.map((f) => f.code);
    expect(codes({ Tool: "D-5.0" })).not.toContain("wrong-drill");
    expect(codes({ Tool: "D-5.5" })).not.toContain("wrong-drill");
    expect(codes({ Tool: "D-5.0", "Finish diameter": 5.1 })).toContain("wrong-drill");
    expect(facts(at({ ...threaded, Tool: "D-5.5", "Finish diameter": 5 }), "wrong-drill")).toEqual({
      ...{ value: 5.5, limit: 5, tool: "D-5.5", drill: "5 mm" },
    });
    const plan = at({ ...threaded, Tool: "D-5.0" });
    expect([plan.results.sizeMin, plan.results.sizeMax]).toEqual([about(4.917, 3), about(5.153, 3)]);
    // the drill that is looked for, and what it cuts over
    expect(plan.steps.find((s) => s.key === "startDiameter")?.value).toBe(5);
    expect(at({ ...threaded, "Finish diameter": 5 }).steps.map((s) => s.key)).not.toContain("startDiameter");
  });
  it("a drill's own size where the row names neither diameter nor thread", () => {
    const own = at({ ...row, "Finish diameter": null });
    expect(own.results.size).toBeCloseTo(6.8 + 0.1016 + (0.0254 * 0.45) / 6.35, 9);
    expect(own.findings.map((f) => f.code)).not.toContain("row-incomplete");
    const nothing = at({ ...row, "Finish diameter": null, Tool: null, Depth: null });
    expect(facts(nothing, "row-incomplete")).toEqual({ missing: ["finishDiameter", "depth"] });
    const sizeless = at({ ...row, "Finish diameter": null }, { tool: { Diameter: null } });
    expect(facts(sizeless, "row-incomplete")).toEqual({ missing: ["finishDiameter"] });
  });
  it("an external thread has no hole, a thread that nobody knows none either", () => {
    const external = at({ Operation: "drill", Thread: "M6-6g", Depth: 12 });
    expect(external.verdict).toBe("stop");
    expect(external.findings.map((f) => f.code)).toEqual(["not-internal"]);
    const unknown = at({ Operation: "drill", Thread: "M6.5", Depth: 12 });
    expect(unknown.findings.map((f) => f.code)).toEqual(["unknown-thread"]);
    // with a diameter beside it that is drilled, and the thread is said to be wrong
    const both = at({ ...row, Thread: "M8-6g" });
    expect(both.findings.map((f) => f.code)).toContain("not-internal");
    expect(both.results.tableFeed).toBeGreaterThan(0);
  });
  it("a hole before it that is as large leaves nothing to cut, one that is a hair smaller does", () => {
    const start = (d: number) => facts(hole({ "Start diameter": d }), "no-stock");
    expect(start(6.81)).toBeUndefined();
    expect(start(6.812)).toEqual({ value: 6.812, limit: 6.8 });
    expect(hole({ "Start diameter": 6.812 }).results.tableFeed).toBeUndefined();
  });
  it("hardened steel is said to be hard to drill, by its group alone", () => {
    const hard = at({ ...row, Tool: "D-6.8C", Material: "Hardened steel 50 HRC", Machine: "Centre V4" });
    expect(facts(hard, "hard-to-drill")).toEqual({ material: "Hardened steel 50 HRC" });
    expect(facts(hole({}), "hard-to-drill")).toBeUndefined();
    expect(hole({ Material: null }).findings.map((f) => f.code)).not.toContain("fault");
  });
});
