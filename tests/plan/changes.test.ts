/** What is tried when a row wants changing: worked out here from the row and the lists. */
import { describe, expect, it } from "vitest";
import type { Lever } from "../../src/operations/operation.ts";
import {
  candidatesFor,
  feedOf,
  mayGoFaster,
  otherTools,
  type Situation,
  shorter,
  situationOf,
  speedRange,
  withChanges,
} from "../../src/plan/changes.ts";
import { planRow } from "../../src/plan/row.ts";
import { type Case, caseLists, caseRow, type RowCells, STEEL } from "../findings/rule.ts";

function situation(row: RowCells, more: Omit<Case, "row"> = {}): Situation {
  const one = { row: { ...STEEL, ...row }, ...more };
  const [read, lists] = [caseRow(one), caseLists(one)];
  return situationOf(read.row, planRow(read, lists), lists);
}
const LEVERS: readonly Lever[] = [
  ...([
    "passes",
    "springPasses",
    "feedPerTooth",
    "surfaceSpeed",
    "maxRpm",
    "stickOut",
    "tool",
    "startDiameter",
  ] as const),
  ...(["axialDepth", "radialDepth", "wearValue", "holeDepth", "machine"] as const),
];
const tried = (s: Situation, ...levers: readonly Lever[]) =>
  candidatesFor(s, new Set(levers)).map(({ change, size }) => ({ ...change, size }));

const side = { Operation: "side", Tool: "EM-10-4", Depth: 10, Length: 60, "Radial depth": 1, "Size tolerance": 0.05 };
const slot = { Operation: "slot", Tool: "EM-10-4", Depth: 8, Length: 60 };
const bore = { Operation: "bore", Tool: "EM-10-4", "Start diameter": 20, "Finish diameter": 22, Depth: 10 };
const drill = { Operation: "drill", Tool: "D-10.2", "Finish diameter": 10.2, Depth: 20 };
const thread = { Operation: "thread mill", Tool: "TM-M10-S", Thread: "M10", "Start diameter": 8.5, Depth: 12 };
const ROWS: readonly RowCells[] = [side, slot, bore, drill, thread, { ...side, "Feed per tooth": 0.05, Passes: 2 }];

describe("changes of a row (identity)", () => {
  it.each(ROWS.map((row) => [`${row.Operation} ${row.Passes ?? ""}`, row] as const))(
    "of a %s: the smallest first, none twice, none that changes nothing",
    (_, row) => {
      const all = tried(situation(row), ...LEVERS);
      expect(all.length).toBeGreaterThan(10);
      for (const [i, c] of all.entries()) {
        if (i > 0) expect(c.size).toBeGreaterThanOrEqual(all[i - 1]!.size);
        expect(c.to, c.key).not.toBe(c.from);
        expect(c.size).toBeGreaterThan(0);
      }
      expect(new Set(all.map((c) => `${c.key} ${c.to}`)).size).toBe(all.length);
    },
  );
  it("a number is as large a change as the logarithm of its ratio: half as much is as far as double", () => {
    for (const row of ROWS)
      for (const c of tried(situation(row), "feedPerTooth", "maxRpm", "axialDepth", "radialDepth", "stickOut"))
        if (typeof c.to === "number" && typeof c.from === "number")
          expect(c.size, `${row.Operation} ${c.key} ${c.from} ${c.to}`).toBeCloseTo(
            Math.abs(Math.log(c.to / c.from)),
            9,
          );
  });
  it("passes count with the spring passes that go with them", () => {
    const s = situation({ ...side, Passes: 2, "Spring passes": 1 });
    const passes = tried(s, "passes").filter((c) => c.to !== null);
    expect(passes.map((c) => c.to)).not.toContain(2);
    for (const c of passes) expect(c.size).toBeCloseTo(Math.abs(Math.log(((c.to as number) + 1) / 3)), 9);
    const springs = tried(s, "springPasses").filter((c) => c.to !== null);
    expect(springs.map((c) => c.to)).not.toContain(1);
    for (const c of springs) expect(c.size).toBeCloseTo(Math.abs(Math.log((2 + (c.to as number)) / 3)), 9);
  });
  it("a row that does not come as far as its passes has none to change (a drill in a thread mill's row)", () => {
    const stopped = situation({ ...thread, Tool: "D-8.5" });
    expect(stopped.base.verdict).toBe("stop");
    expect(tried(stopped, "passes", "springPasses")).toEqual([]);
  });
  it("a typed cell is cleared before it is changed, unless the operation cannot do without it", () => {
    const typed = situation({ ...side, "Feed per tooth": 0.05, Passes: 2 });
    expect(tried(typed, "feedPerTooth").some((c) => c.to === null)).toBe(true);
    expect(tried(situation({ ...bore, Passes: 2 }), "passes").some((c) => c.to === null)).toBe(true);
    const blank = situation(side);
    expect(tried(blank, "feedPerTooth").some((c) => c.to === null)).toBe(false);
    // a straight side is nothing without its radial depth
    expect(
      tried(blank, "radialDepth")
        .map((c) => c.to)
        .includes(null),
    ).toBe(false);
    expect(tried(situation(bore), "machine").every((c) => c.to !== null)).toBe(true);
  });
  it("a slot's typed cells are cleared like any other, but not the cutter that gives it its width", () => {
    const cleared = (row: RowCells, key: Lever) => tried(situation(row), key).some((c) => c.to === null);
    expect(cleared({ ...slot, "Feed per tooth": 0.03 }, "feedPerTooth")).toBe(true);
    expect(cleared(slot, "tool")).toBe(false);
    expect(cleared({ ...slot, "Finish diameter": 12 }, "tool")).toBe(true);
    expect(cleared(side, "tool")).toBe(true);
  });
  it("a feed is tried lower and higher, a speed of the spindle lower only (it stands for a cap)", () => {
    for (const row of [side, bore, thread]) {
      const s = situation(row);
      const shares = (key: Lever) => tried(s, key).map((c) => (c.to as number) / (c.from as number));
      expect(Math.min(...shares("feedPerTooth"))).toBeLessThan(0.5);
      expect(Math.max(...shares("feedPerTooth"))).toBeGreaterThan(2);
      expect(shares("maxRpm").length).toBeGreaterThan(2);
      expect(Math.max(...shares("maxRpm"))).toBeLessThan(1);
    }
  });
  it("a blank feed is the list's at the cutter's size, of a thread mill a share of its diameter", () => {
    // listed at 6 and 12 mm: a line between them; 1.5 % of the thread mill's own diameter
    const lists = {
      "Feed 6 mm [mm per tooth]": 0.03,
      "Feed 12 mm [mm per tooth]": 0.06,
      "Thread feed [% of diameter]": 1.5,
    };
    const of = (row: RowCells) => {
      const s = situation(row, { material: lists });
      return { feed: feedOf(s)!, diameter: s.tool!.diameter! };
    };
    expect(of(side).feed).toBeCloseTo(0.05, 12);
    expect(of(thread).feed).toBeCloseTo(0.015 * of(thread).diameter, 12);
    expect(of({ ...side, "Feed per tooth": 0.021 }).feed).toBeCloseTo(0.021, 12);
  });
  it("a side wall's thinner passes are whole shares of it, with as many more of them (3 mm twice is 6 mm in all)", () => {
    const s = situation({ ...side, "Radial depth": 3, Passes: 2 });
    const thinner = candidatesFor(s, new Set<Lever>(["radialDepth"])).filter(({ change }) => change.to !== null);
    expect(thinner.length).toBeGreaterThan(1);
    for (const { change, along } of thinner) {
      expect(along).toMatchObject({ key: "passes", from: 2 });
      expect(change.to as number).toBeLessThan(3);
      expect((change.to as number) * (along!.to as number)).toBeCloseTo(6, 9);
    }
    // once as thick is one pass more than none is said of
    const once = candidatesFor(situation({ ...side, "Radial depth": 3 }), new Set<Lever>(["radialDepth"]));
    for (const { change, along } of once) expect((change.to as number) * (along!.to as number)).toBeCloseTo(3, 9);
  });
  it("a face's pass that is changed leaves the whole face as deep and as wide as it was", () => {
    const face = { Operation: "face", Tool: "FM-40-4", Length: 120, "Radial depth": 25, "Axial depth": 2 };
    const along = (row: RowCells, lever: Lever) =>
      candidatesFor(situation(row), new Set<Lever>([lever]))
        .filter(({ change }) => change.to !== null)
        .map((c) => c.along && `${c.along.key} ${c.along.to}`);
    const all = (list: readonly unknown[]) => [...new Set(list)];
    // what only the pass says is said of the whole as well
    expect(all(along(face, "axialDepth"))).toEqual(["depth 2"]);
    expect(all(along(face, "radialDepth"))).toEqual(["totalWidth 25"]);
    // what the row says of the whole already stays
    expect(all(along({ ...face, Depth: 4 }, "axialDepth"))).toEqual([undefined]);
    expect(all(along({ ...face, "Total width": 70 }, "radialDepth"))).toEqual([undefined]);
    expect(all(along({ ...face, Depth: 4 }, "feedPerTooth"))).toEqual([undefined]);
    expect(all(along(slot, "axialDepth"))).toEqual([undefined]);
  });
  it("a wall's levels are more of them, each as deep as the next: 12 mm in two becomes three and more", () => {
    const s = situation({ ...slot, Depth: 12, "Axial depth": 6 });
    const counts = tried(s, "axialDepth")
      .filter((c) => c.to !== null)
      .map((c) => 12 / (c.to as number));
    expect(counts.length).toBeGreaterThan(2);
    for (const [i, n] of counts.entries()) {
      expect(n).toBeCloseTo(Math.round(n), 9);
      expect(n).toBeGreaterThan(i === 0 ? 2 : counts[i - 1]!);
    }
    expect(counts[0]).toBeCloseTo(3, 9);
  });
  it("only cells that were asked for and that the operation has", () => {
    expect(tried(situation(side), "passes").every((c) => c.key === "passes")).toBe(true);
    expect(tried(situation(drill), "passes", "radialDepth", "axialDepth", "springPasses")).toEqual([]);
    expect(tried(situation(slot), "maxRpm", "machine").map((c) => c.key)).toContain("maxRpm");
  });
  it("the stick-out comes down to what the tool and the depth need, and no further", () => {
    // flutes of 22 mm stick out 34
    expect(shorter(situation(side))).toBe(22);
    expect(shorter(situation({ ...side, Depth: 25 }))).toBe(25);
    const long = situation({ ...side, Tool: "EM-10-4L" });
    expect(shorter(long)).toBe(60);
    const all = tried(situation(side), "stickOut").map((c) => c.to as number);
    expect(Math.min(...all)).toBeCloseTo(22, 9);
    expect(Math.max(...all)).toBeLessThan(34);
    expect(tried(situation({ ...side, "Stick-out": 22 }), "stickOut").filter((c) => c.to !== null)).toEqual([]);
  });
  it("a speed lies in the material's range for the tool, and is another than it is", () => {
    // C45: carbide and high-speed steel have ranges of their own
    const [carbide, hss] = [situation(side), situation({ ...side, Tool: "EM-12-4H" })];
    for (const s of [carbide, hss]) {
      const { speedCarbideLow, speedCarbideHigh, speedHssLow, speedHssHigh } = s.material!;
      const [low, high] = s === carbide ? [speedCarbideLow!, speedCarbideHigh!] : [speedHssLow!, speedHssHigh!];
      expect(speedRange(s)).toEqual([low, high]);
      const speeds = tried(s, "surfaceSpeed").map((c) => c.to as number);
      expect(Math.min(...speeds)).toBeGreaterThanOrEqual(low);
      expect(Math.max(...speeds)).toBeLessThanOrEqual(high);
      for (const v of speeds) expect(Math.abs(v / s.base.results.surfaceSpeed! - 1)).toBeGreaterThan(0.02);
    }
  });
  it("a hole tool has the range of a drill, from 0.8 to 1.25 of the listed speed; a tap runs at 0.4 of it (common practice)", () => {
    const speeds = { "Drill speed HSS [m/min]": 30, "Drill speed carbide [m/min]": 80 };
    const range = (row: RowCells) => {
      const s = situation(row, { material: speeds });
      return speedRange(s)!.map((v) => Math.round(v * 1e6) / 1e6);
    };
    expect(range(drill)).toEqual([24, 37.5]);
    expect(range({ ...drill, Tool: "D-10.2C" })).toEqual([64, 100]);
    expect(range({ Operation: "tap", Thread: "M8", Depth: 10, Tool: "T-M8" })).toEqual([9.6, 15]);
    // where no tool is listed, one of high-speed steel is taken
    expect(range({ ...drill, Tool: null, "Finish diameter": 10.37 })).toEqual([24, 37.5]);
  });
  it("half a range of the list is none", () => {
    for (const heading of ["Speed carbide low [m/min]", "Speed carbide high [m/min]"]) {
      const s = situation({ ...side, "Surface speed": 150 }, { material: { [heading]: null } });
      expect(speedRange(s), heading).toBeUndefined();
      expect(tried(s, "surfaceSpeed").filter((c) => c.to !== null)).toEqual([]);
    }
  });
  it("a wear value is tried where the plan of a thread proposes one, first of all", () => {
    const six = { Tool: "TM-M6-S", Thread: "M6", "Start diameter": 5, "Spring passes": 0, Passes: 1 };
    const s = situation({ ...thread, ...six });
    const start = s.base.results.startWearValue;
    expect(typeof start).toBe("number");
    expect(tried(s, ...LEVERS)[0]).toMatchObject({ key: "wearValue", to: start });
    expect(tried(situation(drill), "wearValue")).toEqual([]);
  });
  it("a hole that is too shallow is tried as deep as was missed", () => {
    const shallow = situation({ ...thread, "Hole depth": 11 });
    const { tipToProfile = 0 } = shallow.tool!;
    expect(tried(shallow, "holeDepth").map((c) => c.to)).toContainEqual(expect.closeTo(12 + tipToProfile, 9));
    expect(tried(situation(drill), "holeDepth")).toEqual([]);
  });
  it("is put into the row: a cleared cell is blank, the others stay", () => {
    const { row } = situation(bore);
    const key = (name: Lever, to: number | null) => ({ key: name, heading: name, from: undefined, to });
    const changed = withChanges(row, [key("startDiameter", null), key("passes", 3)]);
    expect(changed).toEqual({ ...row, startDiameter: undefined, passes: 3 });
  });
});

describe("other tools for a row (independent: the list looked through)", () => {
  it.each([
    ["side", side, "end mill"],
    ["bore", { ...bore, Depth: 22.5 }, "end mill"],
    ["drill", drill, "drill"],
    ["thread mill", thread, "thread mill"],
  ] as const)("of a %s: of its kind, long enough, the stiffest first", (_, row, kind) => {
    const s = situation(row);
    const reach = (t: (typeof s.lists.tools.items)[number]) => Math.max(t.neckLength ?? 0, t.cuttingLength ?? 0);
    const wanted = s.lists.tools.items.filter(
      (t) =>
        t.kind?.startsWith(kind) &&
        t.diameter !== undefined &&
        t.tool !== row.Tool &&
        reach(t) >= (row.Depth as number),
    );
    const others = otherTools(s);
    expect(new Set(others.map((t) => t.tool))).toEqual(new Set(wanted.map((t) => t.tool)));
    const stiff = others.map((t) => (t.neckDiameter ?? t.diameter!) ** 4 / (t.neckLength ?? t.stickOut!) ** 3);
    for (let i = 1; i < stiff.length; i++) expect(stiff[i]!).toBeLessThanOrEqual(stiff[i - 1]! * (1 + 1e-12));
  });
  it("a slot keeps its width: only cutters of its diameter", () => {
    const others = otherTools(situation(slot));
    expect(others.map((t) => t.diameter)).toEqual(others.map(() => 10));
    expect(others.map((t) => t.tool)).toContain("EM-10-4L");
  });
});

describe("a row that is better left at its speed (common practice)", () => {
  const material = (name: string) => situation({ ...side, Material: name });
  it("in heat-resistant alloys and hardened steel no faster, in plain steel yes", () => {
    expect(mayGoFaster(material("Titanium Ti-6Al-4V (UNS R56400)"))).toBe(false);
    expect(mayGoFaster(material("Steel C45 (AISI 1045)"))).toBe(true);
    const titanium = material("Titanium Ti-6Al-4V (UNS R56400)");
    for (const c of tried(titanium, "surfaceSpeed"))
      expect(c.to as number).toBeLessThan(titanium.base.results.surfaceSpeed!);
  });
  it("in holes deeper than three diameters no faster: 30.6 mm for a drill of 10.2", () => {
    expect(mayGoFaster(situation({ ...drill, Depth: 30.5 }))).toBe(true);
    expect(mayGoFaster(situation({ ...drill, Depth: 30.7 }))).toBe(false);
    expect(mayGoFaster(situation({ ...bore, Depth: 22 }))).toBe(true);
    // a drill that is not listed goes by the hole
    expect(mayGoFaster(situation({ ...drill, Tool: null, "Finish diameter": 10.3, Depth: 31 }))).toBe(false);
  });
});
