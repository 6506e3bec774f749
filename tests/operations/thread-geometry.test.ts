/** Path and reach of thread mills inside and outside, and the hole before a thread: by hand. */
import { describe, expect, it } from "vitest";
import { plainPathRadius } from "../../src/thread/path.ts";
import { sweptPathRadius } from "../../src/thread/sweep.ts";
import { about, type Case, planOf, type RowCells, STEEL } from "../findings/rule.ts";

type More = Omit<Case, "row">;
const at = (row: RowCells, more: More = {}) => planOf({ row: { ...STEEL, ...row }, ...more });
type Plan = ReturnType<typeof at>;
const facts = (plan: Plan, code: string) => plan.findings.find((f) => f.code === code)?.facts;
const codes = (plan: Plan) => plan.findings.map((f) => f.code);
const step = (plan: Plan, key: string) => plan.steps.find((s) => s.key === key);
const known = (value: object = {}) => Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined));

describe("a stem of M20×1.5-6g on a blank of 19.9 (by hand; ISO 965-1: pitch diameter 18.854 to 18.994)", () => {
  const row = { Operation: "thread mill", Thread: "M20x1.5-6g", Tool: "TM-M16-S", "Start diameter": 19.9, Depth: 15 };
  const middle = (18.854 + 18.994) / 2;
  const cutter = { cutterDiameter: 11.6, tipFlat: 0.15, profileAngle: 60, lead: 1.5 };
  const path = sweptPathRadius(cutter, 1.5, middle, "external");
  const tip = 2 * path - 11.6;
  it("its path runs outside, its tip reaches the minor diameter", () => {
    const plan = at(row);
    expect(plan.results).toMatchObject({
      ...{
        pathRadius: about(path, 6),
        majorDiameter: null,
        startDiameter: 19.9,
        neckGap: about(path - 4.55 - 9.95, 6),
      },
      ...{ sizeMin: about(18.854, 3), sizeMax: about(18.994, 3) },
      direction: { path: "circle", axis: "down", turn: "clockwise" },
    });
    expect(step(plan, "minorDiameter")!.value).toBeCloseTo(tip, 6);
    expect(step(plan, "sweep")!.value).toBeCloseTo(
      2 * (plainPathRadius(middle, 1.5, 11.6, 0.15, 60, "external") - path),
      6,
    );
    expect(plan.steps.map((s) => s.key)).not.toContain("majorDiameter");
    expect(known(step(plan, "neckGap")!.facts)).toEqual({
      side: "outside",
      hole: 19.9,
      cutter: 11.6,
      neck: 9.1,
      flat: 0.15,
    });
    expect(plan.steps.map((s) => s.key)).not.toContain("minorMin");
    expect(plan.sketch).toMatchObject({ inside: false, holeDiameter: about(tip, 6), startDiameter: 19.9, pitch: 1.5 });
    expect(step(plan, "radialDepth")!.facts).toEqual({ side: "outside" });
    // the tip's diameter, where the centre runs on a circle as much larger
    expect(plan.results.tableFeed! / (step(plan, "edgeTable")!.value as number)).toBeCloseTo((2 * path) / tip, 6);
    const depths = at({ ...row, Passes: 1, "Spring passes": 0 }).results.depths as number[];
    expect(depths[0]).toBeCloseTo((19.9 - tip) / 2, 6);
  });
  it("of a blank that the row does not name: the largest", () => {
    expect(at({ ...row, "Start diameter": null }).results.startDiameter).toBeCloseTo(19.968, 3);
    expect(at({ ...row, "Start diameter": 0 }).results.startDiameter).toBeCloseTo(19.968, 3);
    expect(codes(at({ ...row, "Start diameter": null }))).not.toContain("blank-diameter");
  });
  it("a tip that is too wide leaves the root too shallow", () => {
    // P/4 is 0.375 at the basic pitch diameter
    const wide = at(row, { tool: { "Tip flat": 0.6 } });
    const found = facts(wide, "flat-too-wide") as { value: number; limit: number; inside: boolean };
    expect(found.inside).toBe(false);
    expect(found.value).toBeGreaterThan(found.limit);
    expect(known(step(wide, "pathRadius")!.facts)).toMatchObject({ pitchDiameter: about(middle, 3) });
    expect(known(step(at(row), "pathRadius")!.facts)).not.toHaveProperty("pitchDiameter");
    expect(facts(at(row), "flat-too-wide")).toBeUndefined();
  });
  it("a blank that the tip does not reach is no thread", () => {
    const thin = at({ ...row, "Start diameter": 17 });
    expect(facts(thin, "no-depth")).toEqual({ value: about(tip, 6), limit: 17 });
    expect(thin.results.tableFeed).toBeUndefined();
    // a cutter larger than the blank is none too large outside
    expect(codes(at(row, { tool: { Diameter: 30, "Neck diameter": 20 } }))).not.toContain("cutter-too-large");
  });
});

describe("a thread of M6 inside (by hand)", () => {
  const row = { Operation: "thread mill", Thread: "M6", Tool: "TM-M6-S", "Start diameter": 5, Depth: 9 };
  const FULL = { ...row, Tool: "TM-M6x1-F" };
  it("which way the path runs: climb is counter-clockwise inside, up for a right hand", () => {
    const way = (cells: RowCells) => at({ ...row, ...cells }).results.direction;
    expect(way({})).toEqual({ path: "circle", axis: "up", turn: "counter-clockwise" });
    expect(way({ Way: "climb", Hand: "right" })).toEqual({ path: "circle", axis: "up", turn: "counter-clockwise" });
    expect(way({ Way: "conventional" })).toEqual({ path: "circle", axis: "down", turn: "clockwise" });
    expect(way({ Hand: "left" })).toEqual({ path: "circle", axis: "down", turn: "counter-clockwise" });
    expect(way({ Hand: "left", Way: "conventional" })).toEqual({ path: "circle", axis: "up", turn: "clockwise" });
    expect(way({ Thread: "M6-LH" })).toEqual({ path: "circle", axis: "down", turn: "counter-clockwise" });
    expect(way({ Thread: "M6-LH", Hand: "right" })).toMatchObject({ axis: "up" });
  });
  it("a full profile: its own pitch, one turn, no neck to rub", () => {
    const plan = at(FULL);
    expect(step(plan, "turns")).toMatchObject({ value: 1, facts: { full: true } });
    expect(facts(at(FULL, { tool: { Pitch: null } }), "pitch-differs")).toBeUndefined();
    expect(facts(at(FULL, { tool: { Pitch: 1.25 } }), "pitch-differs")).toEqual({ value: 1.25, limit: 1 });
    expect(at(FULL, { tool: { Pitch: 1.25 } }).results.pathRadius).toBeUndefined();
    expect(facts(at(row, { tool: { Pitch: 1.25 } }), "pitch-differs")).toBeUndefined();
    const thick = { tool: { "Neck diameter": 4.2, "Neck length": 20 } };
    for (const code of ["neck-rubs", "neck-tight", "profile-shallow"]) {
      expect(facts(at(FULL, thick), code), code).toBeUndefined();
      if (code !== "neck-tight") expect(facts(at(row, thick), code), code).toBeDefined();
    }
    // each level as deep as its edge
    const levels = at(FULL, { tool: { "Cutting length": 5 } });
    expect(levels.time!.cutting / at({ ...FULL, Passes: levels.results.passes! }).time!.cutting).toBeGreaterThan(1);
  });
  it("a neck that the list does not tell is not judged", () => {
    const plan = at(row, { tool: { "Neck diameter": null, "Cutting length": 12 } });
    expect(plan.results.neckGap).toBeUndefined();
    expect(plan.steps.map((s) => s.key)).not.toContain("neckGap");
    for (const code of ["neck-rubs", "neck-tight", "profile-shallow", "neck-short"])
      expect(facts(plan, code)).toBeUndefined();
    // then the edge must be as long as the thread is deep and its tip
    const short = at(row, { tool: { "Neck length": null, "Cutting length": 9.4 } });
    expect(facts(short, "neck-short")).toEqual({ value: 9.4, limit: 9.5 });
    expect(facts(at(row, { tool: { "Neck length": null, "Cutting length": 9.5 } }), "neck-short")).toBeUndefined();
    expect(facts(at(row, { tool: { "Neck length": null, "Cutting length": null } }), "neck-short")).toBeUndefined();
    expect(facts(at(row, { tool: { "Neck length": 9, "Tip to profile": null } }), "neck-short")).toBeUndefined();
    expect(at(row, { tool: { "Tip to profile": null } }).steps.map((s) => s.key)).not.toContain("tipZ");
  });
  it("a hole as deep as thread and tip; through the work it may be as deep as it likes", () => {
    expect(facts(at({ ...row, "Hole depth": 9.4 }), "hole-too-shallow")).toEqual({ value: 9.4, limit: 9.5 });
    expect(facts(at({ ...row, "Hole depth": 9.4, Through: "no" }), "hole-too-shallow")).toBeDefined();
    expect(facts(at({ ...row, "Hole depth": 9.4, Through: "yes" }), "hole-too-shallow")).toBeUndefined();
  });
  it("the profile's angle is the thread's where the list does not tell it", () => {
    expect(codes(at(row, { tool: { "Profile angle": null } }))).toEqual(codes(at(row)));
    expect(at(row, { tool: { "Profile angle": 55 } }).results.pathRadius).toBeUndefined();
  });
  it("a cutter as large as the hole does not go in: its path is shown, no feed", () => {
    const large = at(row, { tool: { Diameter: 5 } });
    expect(facts(large, "cutter-too-large")).toEqual({ value: 5, limit: 5, into: "hole" });
    expect(large.results.pathRadius).toBeGreaterThan(0);
    expect(large.results.tableFeed).toBeUndefined();
    expect(known(step(large, "neckGap")!.facts)).toMatchObject({ thread: "M6×1-6H" });
    expect(known(step(at(row, { tool: { Diameter: 5.1 } }), "neckGap")!.facts)).not.toHaveProperty("thread");
  });
  it("its holder stays out of the hole by the room that the path leaves", () => {
    const nose = (diameter: number) => ({ tool: { "Holder diameter": diameter, "Holder length": 20 } });
    const held = { ...row, "Stick-out": 9 };
    const room = 5 - 2 * (at(row).results.pathRadius as number);
    expect(facts(at(held, nose(room - 1e-3)), "holder-hits")).toBeUndefined();
    // 9 and half a millimetre of tip, a millimetre of room
    expect(facts(at(held, nose(room + 1e-3)), "holder-hits")).toEqual({ value: 9, limit: about(10.5) });
  });
  it("lists without a speed for thread mills: three quarters of the end mill's, said where the row has none of its own", () => {
    const blank = { material: { "Speed thread mill low [m/min]": null } };
    const plan = at(row, blank);
    expect(step(plan, "speedRange")!.value).toEqual([about(90), about(142.5)]);
    expect(facts(plan, "list-thread-speed-blank")).toEqual({ material: STEEL.Material, factor: 0.75 });
    expect(facts(at(row, { ...blank, tool: { Substrate: "HSS" } }), "list-thread-speed-blank")).toBeUndefined();
    // the wear of its edge is that of the end mill at the speed that this is a share of: 117.5·190/145
    expect((step(at(row), "life")!.facts as { speed: number }).speed).toBeCloseTo(
      (at(row).results.surfaceSpeed! * 190) / 145,
      6,
    );
  });
});

describe("the drill before a thread (by hand; ISO 965-1: minor diameter of M6-6H 4.917 to 5.153)", () => {
  const tap = { Operation: "tap", Thread: "M6", Depth: 10, "Hole depth": 20 };
  const DRILL = { Kind: "drill", Units: "mm", Substrate: "HSS" };
  const start = (cells: RowCells, tools: readonly RowCells[] = []) =>
    planOf({
      row: { ...STEEL, ...tap, ...cells },
      tools: [{ Tool: "none", Kind: "end mill", Units: "mm", Diameter: 3 }, ...tools],
    }).results.startDiameter!;
  const drill = (diameter: number, more: RowCells = {}) => ({
    ...DRILL,
    Tool: `D${diameter}${more.Units ?? ""}`,
    Diameter: diameter,
    ...more,
  });
  it("one of the shop's own of the thread's system, then a standard one, then the shop's others", () => {
    expect(start({}, [drill(4.95)])).toBe(4.95);
    // without any: of the standard drills, a tenth apart, the one whose hole is inside: 4.9 is under the minor diameter
    expect(start({})).toBeCloseTo(5, 9);
    // an inch drill of 4.98 mm, nearer to the middle, is not asked before the metric standard
    expect(start({}, [drill(4.98 / 25.4, { Units: "in" })])).toBeCloseTo(5, 9);
    // 0.2 over leaves room from 4.917 to 4.953, where no standard drill is: the shop's inch drill of 4.95
    expect(start({ "Drilling oversize": 0.2 }, [drill(4.95 / 25.4, { Units: "in" })])).toBeCloseTo(4.95, 9);
    // and without it the one nearest to the middle less what it cuts over, 4.835
    expect(start({ "Drilling oversize": 0.2 })).toBeCloseTo(4.8, 9);
    // more over than the limits are apart
    expect(start({ "Drilling oversize": 0.3 })).toBeCloseTo(4.7, 9);
  });
  it("neither under the minor diameter by its size nor over it by its hole", () => {
    expect(start({ "Drilling oversize": 0.05 }, [drill(4.91), drill(5.11)])).toBeCloseTo(5, 1);
    expect([4.91, 5.11]).not.toContain(start({ "Drilling oversize": 0.05 }, [drill(4.91), drill(5.11)]));
  });
});
