/** The same rows on two machines, or in two materials. */
import { describe, expect, it } from "vitest";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { compare } from "../../src/quote/compare.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import { refusal } from "../refusal.ts";
import { all, consistent, demo, lists } from "./five.ts";
import { met } from "./met.ts";

describe("the same rows on two machines (independent)", () => {
  const rows = readRows(demo(all.slice(0, 17)));
  it("cost the same at the break-even batch that quotes of single batches bracket", () => {
    const c = compare(rows, lists, { machine: ["Centre V3", "small centre s5"] });
    const N = met(c).batch!;
    const dearer = (batch: number) => {
      const { quotes } = compare(rows, lists, { machine: ["Centre V3", "Small centre S5"] }, { batch });
      return quotes[0].money! - quotes[1].money!;
    };
    expect(N).toBeGreaterThan(1);
    expect(Math.sign(dearer(Math.floor(N)))).not.toBe(Math.sign(dearer(Math.ceil(N))));
    expect(met(c).text).toContain(`from ${Math.floor(N) + 1} on ${dearer(1e6) > 0 ? "Small" : "Centre V3"}`);
  });
  it("count the same rows on both sides, and say why the others are not there", () => {
    const c = compare(rows, lists, { machine: ["Knee mill K1", "Centre V4"] }, { batch: 10 });
    const [a, b] = c.quotes;
    expect(a.rows.map((r) => r.at)).toEqual(b.rows.map((r) => r.at));
    expect(a.rows.length + a.leftOut.length).toBe(rows.filter((r) => !r.empty).length);
    for (const q of c.quotes) consistent(q);
  });
  it("have no break-even when one is cheaper in setup and in each part, or when it is the same machine", () => {
    const machines = [...MACHINES, ["Dear centre", 60, 8000, 11, 80, 10, 24, 3, 6, 22, 0.03, 148, 70]];
    const more = readLists(MATERIALS, TOOLS, machines);
    const c = compare(rows, more, { machine: ["Dear centre", "Centre V3"] });
    expect(met(c).batch).toBeUndefined();
    expect(met(c).text).toMatch(/no break-even: Centre V3 costs less at every batch/);
    expect(met(compare(rows, more, { machine: ["Centre V3", "Centre V3"] })).text).toMatch(/Both cost the same/);
  });
  it("are timed but not priced when a machine has no rate", () => {
    const machines = MACHINES.map((m) => (m[0] === "Centre V4" ? [...m.slice(0, 11), null, 30] : m));
    const c = compare(rows, readLists(MATERIALS, TOOLS, machines), { machine: ["Centre V3", "Centre V4"] });
    expect(met(c).text).toMatch(/no rate/);
    expect(c.quotes[1].seconds).toBeGreaterThan(0);
  });
  it("name what is nearest when a machine or material is not in its list", () => {
    expect(refusal(() => compare(rows, lists, { machine: ["Centre V9", "Centre V3"] }))).toMatch(
      /nearest in the list: Centre V/,
    );
    expect(refusal(() => compare(rows, lists, { material: ["Granite", ""] }))).toMatch(/material/);
    expect(refusal(() => compare(rows, lists, {}))).toMatch(/pair/);
  });
  it("in two materials cost less in the one that cuts faster, at every batch", () => {
    const soft = "Aluminium EN AW-6082 T6 (AA 6061)";
    const hard = "Titanium Ti-6Al-4V (UNS R56400)";
    const c = compare(rows, lists, { material: [hard, soft] }, { batch: 5 });
    expect(c.names).toEqual([hard, soft]);
    expect(c.quotes[1].time.cutting).toBeLessThan(c.quotes[0].time.cutting);
    expect(met(c).text).toContain(`${soft} costs less to machine at every batch`);
  });
});
