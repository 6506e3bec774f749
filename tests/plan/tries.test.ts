/** Which values are tried in a cell, and how much of a change each is: worked by hand from plans that are made up. */
import { describe, expect, it } from "vitest";
import { OPERATIONS } from "../../src/operations/index.ts";
import { COMMON_LEVERS, type Lever } from "../../src/operations/operation.ts";
import type { Plan } from "../../src/operations/shared/types.ts";
import { candidatesFor } from "../../src/plan/changes.ts";
import { OPERATION_NAMES } from "../../src/table/rows.ts";
import { E12, SIDE, situation } from "./made-up.ts";

const BORE = { Operation: "bore", "Start diameter": 30, "Finish diameter": 40, Depth: 20 };

/** Values tried for a cell and their sizes, to nine places. */
function tried(key: Lever, ...asked: Parameters<typeof situation>) {
  const all = candidatesFor(situation(...asked), new Set([key]));
  for (const { change } of all) expect(change.key).toBe(key);
  const nine = (x: unknown) => (typeof x === "number" ? Math.round(x * 1e9) / 1e9 : x);
  return all.map(({ change, size }) => [nine(change.to), nine(size)]);
}
const ln = (ratio: number) => Math.round(Math.abs(Math.log(ratio)) * 1e9) / 1e9;
const values = (...asked: Parameters<typeof tried>) => tried(...asked).map(([to]) => to);

describe("values that are tried (by hand)", () => {
  it("passes: 1 to 6 and 8 but what is, by how many cuts there are with the spring passes", () => {
    expect(tried("passes", BORE, { passes: 2, springPasses: 1 })).toEqual([
      ...[
        [3, ln(4 / 3)],
        [1, ln(2 / 3)],
        [4, ln(5 / 3)],
        [5, ln(6 / 3)],
        [6, ln(7 / 3)],
        [8, ln(9 / 3)],
      ],
    ]);
    expect(tried("passes", BORE, { passes: 1 })[0]).toEqual([2, ln(2)]);
    expect(tried("passes", BORE, {})).toEqual([]);
  });
  it("spring passes: none to four but what are, by how many cuts there are", () => {
    expect(tried("springPasses", BORE, { passes: 2, springPasses: 1 })).toEqual([
      ...[
        [2, ln(4 / 3)],
        [0, ln(2 / 3)],
        [3, ln(5 / 3)],
        [4, ln(6 / 3)],
      ],
    ]);
    expect(values("springPasses", BORE, { passes: 2 })).toEqual([1, 2, 3, 4]);
    expect(tried("springPasses", BORE, { springPasses: 1 })).toEqual([]);
  });
  it("feed: lower down to a fifth, higher up to three times", () => {
    const feeds = tried("feedPerTooth", { ...SIDE, "Feed per tooth": 0.1 }).filter(([to]) => to !== null) as number[][];
    const shares = feeds.map(([to]) => to! / 0.1);
    expect([Math.min(...shares), Math.max(...shares)]).toEqual([expect.closeTo(0.2, 9), expect.closeTo(3, 9)]);
    for (const [to, size] of feeds) expect(size).toBeCloseTo(Math.abs(Math.log(to! / 0.1)), 8);
    // no step of those down is further than a third from the last
    const down = [1, ...shares.filter((s) => s < 1).sort((a, b) => b - a)];
    for (let i = 1; i < down.length; i++) expect(down[i]! / down[i - 1]!).toBeGreaterThan(0.66);
    const none = Object.fromEntries([3, 6, 12, 20].map((d) => [`Feed ${d} mm [mm per tooth]`, null]));
    expect(values("feedPerTooth", SIDE, {}, { material: none })).toEqual([]);
  });
  it("speed: both ends of the range, its middle and quarters, but what is as good as the same", () => {
    const material = { "Speed carbide low [m/min]": 100, "Speed carbide high [m/min]": 200 };
    expect(tried("surfaceSpeed", SIDE, { surfaceSpeed: 160 }, { material })).toEqual([
      ...[
        [150, ln(150 / 160)],
        [175, ln(175 / 160)],
        [200, ln(200 / 160)],
        [125, ln(125 / 160)],
        [100, ln(100 / 160)],
      ],
    ]);
    expect(values("surfaceSpeed", SIDE, { surfaceSpeed: 151 }, { material })).toEqual([175, 125, 200, 100]);
    expect(values("surfaceSpeed", SIDE, { surfaceSpeed: 146 }, { material })).toContain(150);
    // in hardened steel and heat-resistant alloys, and where the spindle gives no more, no faster
    for (const Group of ["s", "h"])
      expect(values("surfaceSpeed", SIDE, { surfaceSpeed: 160 }, { material: { ...material, Group } })).toEqual([
        150, 125, 100,
      ]);
    expect(values("surfaceSpeed", SIDE, { surfaceSpeed: 150, wrong: { "speed-capped": "ok" } }, { material })).toEqual([
      125, 100,
    ]);
    // a range of one speed is tried once
    const one = { "Speed carbide low [m/min]": 100, "Speed carbide high [m/min]": 100 };
    expect(values("surfaceSpeed", SIDE, { surfaceSpeed: 160 }, { material: one })).toEqual([100]);
    expect(values("surfaceSpeed", SIDE, {}, { material })).toEqual([]);
    expect(
      values(
        "surfaceSpeed",
        SIDE,
        { surfaceSpeed: 160 },
        { material: { ...material, "Speed carbide high [m/min]": null } },
      ),
    ).toEqual([]);
  });
  it("a cap of the spindle: lower only", () => {
    const caps = tried("maxRpm", SIDE, { spindleSpeed: 1000 }) as number[][];
    expect(caps.length).toBeGreaterThan(2);
    for (const [to, size] of caps) {
      expect(to).toBeLessThan(1000);
      expect(size).toBe(ln(to! / 1000));
    }
    expect(tried("maxRpm", SIDE, {})).toEqual([]);
  });
  it("stick-out: in four steps to the shortest; 40 mm over flutes of 26 mm", () => {
    expect(tried("stickOut", SIDE)).toEqual([36.5, 33, 29.5, 26].map((to) => [to, ln(to / 40)]));
    expect(tried("stickOut", { ...SIDE, "Stick-out": 34 })).toEqual([
      ...[32, 30, 28].map((to) => [to, ln(to / 34)]),
      [null, 0.2],
      [26, ln(26 / 34)],
    ]);
    expect(tried("stickOut", { ...SIDE, "Stick-out": 26 })).toEqual([[null, 0.2]]);
  });
  it("levels of a wall: one, two, three and five more; down a helix less rise", () => {
    const wall = { rise: 0, depth: 12, levels: 2, axial: 6 };
    const path = (more: object) => ({ path: { kind: "wall", wall: { ...wall, ...more } } as Plan["path"] });
    expect(tried("axialDepth", BORE, {}, path({}))).toEqual(
      [3, 4, 5, 7].map((n) => [Math.round(12e9 / n) / 1e9, ln(n / 2)]),
    );
    const helix = tried("axialDepth", BORE, {}, path({ rise: 2 })) as number[][];
    expect(helix.length).toBeGreaterThan(2);
    for (const [to, size] of helix) {
      expect(to).toBeLessThan(2);
      expect(size).toBe(ln(to! / 2));
    }
    const typed = tried("axialDepth", { ...BORE, "Axial depth": 1 }, {}, path({ rise: 2 })).slice(1) as number[][];
    for (const [to, size] of typed) expect(size).toBe(ln(to!));
    expect(typed).toHaveLength(helix.length);
    expect(tried("axialDepth", BORE, {}, { path: { kind: "pecks", bottoms: [1] } })).toEqual([]);
    expect(tried("axialDepth", BORE)).toEqual([]);
  });
  it("radial depth: thinner; of a side wall the half, the third and the quarter", () => {
    expect(tried("radialDepth", SIDE)).toEqual([
      [1.5, ln(1 / 2)],
      [1, ln(1 / 3)],
      [0.75, ln(1 / 4)],
    ]);
    const bore = tried("radialDepth", BORE, { radialDepth: 5 }) as number[][];
    expect(bore.length).toBeGreaterThan(2);
    for (const [to, size] of bore) {
      expect(to).toBeLessThan(5);
      expect(size).toBe(ln(to! / 5));
    }
    // what the cell says goes before what came of it
    const typed = tried("radialDepth", { ...BORE, "Radial depth": 4 }, { radialDepth: 5 });
    for (const [to, size] of typed) if (typeof to === "number") expect(size).toBe(ln(to / 4));
    expect(tried("radialDepth", BORE)).toEqual([]);
  });
  it("wear value: what the plan proposes, before all else; none proposed, or none needed, none tried", () => {
    expect(tried("wearValue", BORE, { startWearValue: -0.02 })).toEqual([[-0.02, 0.05]]);
    expect(tried("wearValue", BORE, { startWearValue: 0 })).toEqual([]);
    expect(tried("wearValue", BORE)).toEqual([]);
  });
  it("machine: four others of the list in its order", () => {
    const machines = situation(SIDE).lists.machines.items.map((m) => m.machine);
    const others = machines.filter((name) => name !== "Centre V3");
    expect(others.length).toBeGreaterThanOrEqual(4);
    expect(values("machine", SIDE)).toEqual(others.slice(0, 4));
    expect(values("machine", { ...SIDE, Machine: "CENTRE V3" })).toEqual(others.slice(0, 4));
    expect(values("machine", { ...SIDE, Machine: null })).toEqual(machines.slice(0, 4));
  });
  it("tool: eight others, after a cleared cell and before half as much of anything", () => {
    const tools = Array.from({ length: 12 }, (_, i) => ({ ...E12, Tool: `E${12 + i}`, Diameter: 12 + i }));
    const all = tried("tool", SIDE, {}, { tools });
    expect(all.map(([to]) => to)).toEqual([null, ...[23, 22, 21, 20, 19, 18, 17, 16].map((d) => `E${d}`)]);
    const sizes = all.map(([, size]) => size as number);
    for (let i = 1; i < sizes.length; i++) expect(sizes[i]).toBeGreaterThan(sizes[i - 1]!);
    expect(sizes[1]).toBeLessThan(Math.log(2));
    expect(sizes[0]).toBeLessThan(sizes[1]!);
  });
  it("a blank start diameter is not filled in, a typed one cleared", () => {
    const thread = { Operation: "thread mill", Thread: "M10", Depth: 10 };
    expect(tried("startDiameter", thread)).toEqual([]);
    expect(tried("startDiameter", { ...thread, "Start diameter": 9 })).toEqual([[null, 0.2]]);
  });
  it("nothing of a cell that an operation does not have, or that no one asks for", () => {
    for (const operation of OPERATION_NAMES) {
      const own: readonly Lever[] = [...OPERATIONS[operation].levers, ...COMMON_LEVERS];
      const s = situation(
        { Operation: operation, Tool: "E12", "Wear value": 0.1, "Radial depth": 1 },
        { spindleSpeed: 1000 },
      );
      for (const key of ["wearValue", "radialDepth"] as const)
        if (!own.includes(key)) expect(candidatesFor(s, new Set([key])), `${operation} ${key}`).toEqual([]);
      expect(candidatesFor(s, new Set(["maxRpm"])).length).toBeGreaterThan(0);
      expect(candidatesFor(s, new Set())).toEqual([]);
    }
  });
});
