import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DRILL_SETS, drillDiameter, drillName, drillNamed, drillsOf, nearestDrill } from "../../src/drill/sizes.ts";
import published from "../published/drill-sizes.json";
import { refusal } from "../refusal.ts";

describe("drill sizes (published)", () => {
  it("holds the printed number and letter sizes", () => {
    const all = { ...published.numbers, ...published.letters };
    expect(Object.keys(all)).toHaveLength(106);
    for (const [name, size] of Object.entries(all)) expect(drillDiameter(drillNamed(name), "in")).toBe(size);
    expect(drillsOf("number")).toHaveLength(80);
    expect(drillsOf("letter")).toHaveLength(26);
  });
  it("holds the metric steps of the trade: 0.05 to 3, 0.1 to 14, 0.25 to 32, 0.5 above", () => {
    const sizes = new Set(drillsOf("metric").map((d) => d.diameter));
    for (const d of [0.2, 0.75, 1.25, 2.05, 2.95, 3, 3.1, 10.2, 13.9, 14, 14.25, 15.25, 31.75, 32, 32.5, 39.5, 100]) {
      expect(sizes.has(d), String(d)).toBe(true);
    }
    for (const d of [3.05, 3.25, 14.1, 32.25, 0.15]) expect(sizes.has(d), String(d)).toBe(false);
  });
  it("writes the names of the trade", () => {
    expect(drillName(0.201 * 25.4)).toBe("#7");
    expect(drillName(0.257 * 25.4)).toBe("F");
    expect(drillName((13 * 25.4) / 64)).toBe("13/64");
    expect(drillName(5.1)).toBe("5.1 mm");
    expect(drillName(38.1)).toBe("1-1/2");
    expect(drillName(25.4)).toBe("1 in");
  });
});

describe("drill names (identity)", () => {
  it("go round: every drill is found by its name, and by its diameter in its own set", () => {
    for (const set of DRILL_SETS) {
      let last = 0;
      for (const drill of drillsOf(set)) {
        expect(drill.diameter).toBeGreaterThan(last);
        last = drill.diameter;
        expect(drillNamed(drill.name)).toEqual(drill);
        expect(nearestDrill(drill.diameter, [set])).toEqual(drill);
      }
    }
  });
  it("have one diameter in both units, an inch of 25.4 mm", () => {
    for (const set of DRILL_SETS)
      for (const drill of drillsOf(set)) {
        expect(drillDiameter(drill, "mm")).toBe(drill.diameter);
        expect(drillDiameter(drill, "in")).toBeCloseTo(drill.diameter / 25.4, 12);
      }
  });
  it("are read as people write them", () => {
    for (const name of ["#7", "no. 7", "No.7", "no.  7", "No 7", "NUMBER 7", "Number  7", "nr. 7", "Nr7", " # 7 "])
      expect(drillNamed(name).name).toBe("#7");
    for (const name of ["f", "letter F", "letter  F", "Ltr. f", "Ltr.f", "ltr.  F", "LTR F"])
      expect(drillNamed(name).name).toBe("F");
    for (const name of ["1-1/16", "1 - 1/16", "1 1/16", "1  1 / 16", '1-1/16"', "1-1/16  in.", "17/16", "1-2/32 in"])
      expect(drillNamed(name).name).toBe("1-1/16");
    for (const name of ["5.1mm", "5.10 MM", "5.1  mm"]) expect(drillNamed(name).name).toBe("5.1 mm");
  });
  it("that do not exist say what is near", () => {
    expect(refusal(() => drillNamed("#81"))).toMatch(/#1 to #80/);
    expect(refusal(() => drillNamed("5.13 mm"))).toMatch(/5.1 mm and 5.2 mm/);
    expect(refusal(() => drillNamed("13/63"))).toMatch(/13\/64 and 7\/32/);
    for (const name of ["7", "0.201", "AA", "5,1 mm", "1/0"])
      expect(refusal(() => drillNamed(name))).toMatch(/not known/);
    expect(refusal(() => drillNamed(" "))).toMatch(/blank/);
  });
});

describe("nearest drill (independent)", () => {
  it("is the one a full search finds", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.4, max: 40, noNaN: true }),
        fc.subarray([...DRILL_SETS], { minLength: 1 }),
        (diameter, sets) => {
          const all = sets.flatMap((s) => [...drillsOf(s)]);
          const least = Math.min(...all.map((d) => Math.abs(d.diameter - diameter)));
          const inside = all.some((d) => d.diameter >= diameter) && all.some((d) => d.diameter <= diameter);
          if (!inside) return;
          expect(Math.abs(nearestDrill(diameter, sets).diameter - diameter)).toBeCloseTo(least, 9);
        },
      ),
    );
  });
  it("breaks ties upwards and by the preferred system", () => {
    expect(nearestDrill(8.75, ["metric"]).diameter).toBe(8.8);
    expect(nearestDrill(2.025, ["metric"]).diameter).toBe(2.05);
    expect(nearestDrill(12.7, DRILL_SETS, "mm").name).toBe("12.7 mm");
    expect(nearestDrill(12.7, DRILL_SETS, "in").name).toBe("1/2");
    expect(nearestDrill(6.35).name).toBe("1/4");
    expect(nearestDrill(6.35, ["letter"]).name).toBe("E");
  });
  it("is not known far outside the set", () => {
    expect(refusal(() => nearestDrill(500))).toMatch(/100 mm/);
    expect(refusal(() => nearestDrill(1e308))).toMatch(/100 mm/);
    expect(refusal(() => nearestDrill(5, ["letter"]))).toMatch(/nearest standard drill is A/);
    expect(refusal(() => nearestDrill(0.1))).toMatch(/0.2 mm/);
    expect(nearestDrill(0.19).name).toBe("0.2 mm");
    expect(refusal(() => nearestDrill(0))).toMatch(/more than 0/);
  });
  it("is known up to a tenth outside the set, the tenth included", () => {
    const [a, z] = [drillNamed("A").diameter, drillNamed("Z").diameter];
    expect(nearestDrill(a * 0.9, ["letter"]).name).toBe("A");
    expect(nearestDrill(z * 1.1, ["letter"]).name).toBe("Z");
    expect(refusal(() => nearestDrill(a * 0.8999, ["letter"]))).toMatch(/nearest standard drill is A/);
    expect(refusal(() => nearestDrill(z * 1.1001, ["letter"]))).toMatch(/nearest standard drill is Z/);
    expect(refusal(() => nearestDrill(5, []))).toMatch(/no drill set is named/);
  });
});

describe("drills that do not exist (published: the sizes of the sets)", () => {
  it.each([
    ["900 mm", /nearest that exist: \d+ mm"?$/],
    ["0.01 mm", /nearest that exist: 0\.\d+ mm/],
    ["#0", /#1 to #80/],
    ["AA", /names such as/],
  ])("%s", (name, why) => expect(refusal(() => drillNamed(name))).toMatch(why));
});

describe("fractional drills (published, ASME B94.11M, from memory)", () => {
  it("go to 1-3/4 by 64ths, to 2-1/4 by 32nds, to 3-1/2 by 16ths", () => {
    const by = (from: number, to: number, step: number) =>
      Array.from({ length: Math.round((to - from) / step) }, (_, i) => from + (i + 1) * step);
    const wanted = [...by(0, 1.75, 1 / 64), ...by(1.75, 2.25, 1 / 32), ...by(2.25, 3.5, 1 / 16)];
    expect(wanted).toHaveLength(148);
    expect(drillsOf("fraction").map((d) => d.diameter / 25.4)).toEqual(wanted.map((size) => expect.closeTo(size, 9)));
  });
});
