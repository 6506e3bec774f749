import { describe, expect, it } from "vitest";
import type { CellError } from "../../functions/cells.ts";
import * as engagement from "../../functions/engagement.ts";
import * as force from "../../functions/force.ts";

type Worksheet = (...args: any[][][]) => any[][];
const call = (f: Worksheet, ...args: unknown[]) =>
  f(...args.map((a) => (Array.isArray(a) ? a : [[a]]) as any[][]))[0]![0];
const code = (cell: unknown) => (cell as CellError).code;
const message = (cell: unknown) => (cell as CellError).message;

// exact by definition
const LBF = 4.4482216152605;
const KSI = 6.894757293168361;
const HP = 0.7456998715822702;
const LBFIN = (LBF * 25.4) / 1000;

describe("inch twins of the force functions (identity)", () => {
  const cases: [string, Worksheet, unknown[], unknown[], number][] = [
    [
      "SPECIFICFORCE",
      force.SPECIFICFORCE as Worksheet,
      [1800, 0.25, 0.0508, "mm"],
      [1800 / KSI, 0.25, 0.002, "in"],
      KSI,
    ],
    ["SPINDLEPOWER", force.SPINDLEPOWER as Worksheet, [60, 2500, "mm"], [60 / 16.387064, 2500 / KSI, "in"], HP],
    ["SPINDLETORQUE", force.SPINDLETORQUE as Worksheet, [5, 3000, "mm"], [5 / HP, 3000, "in"], LBFIN],
    [
      "DRILLTHRUST",
      force.DRILLTHRUST as Worksheet,
      [12.7, 0.254, 1800, 0.25, "mm"],
      [0.5, 0.01, 1800 / KSI, 0.25, "in"],
      LBF,
    ],
    [
      "DRILLTORQUE",
      force.DRILLTORQUE as Worksheet,
      [12.7, 0.254, 1800, 0.25, "mm", 140],
      [0.5, 0.01, 1800 / KSI, 0.25, "in", 140],
      LBFIN,
    ],
    ...(["peak", "mean", "peak tangential", "mean torque"] as const).flatMap(
      (which): [string, Worksheet, unknown[], unknown[], number][] => {
        const unit = which === "mean torque" ? LBFIN : LBF;
        return [
          [
            `MILLFORCE ${which}`,
            force.MILLFORCE as Worksheet,
            [1800, 0.25, 0.0508, 3.175, 12.7, 12.7, 4, 38, "mm", which],
            [1800 / KSI, 0.25, 0.002, 0.125, 0.5, 0.5, 4, 38, "in", which],
            unit,
          ],
          [
            `THREADMILLFORCE ${which}`,
            force.THREADMILLFORCE as Worksheet,
            ["1/2-13 UNC-2B", 10.795, 8.89, 0.1016, 0.0254, 3, 1800, 0.25, "mm", 0.254, 0.9, which],
            ["1/2-13 UNC-2B", 0.425, 0.35, 0.004, 0.001, 3, 1800 / KSI, 0.25, "in", 0.01, 0.9 / 25.4, which],
            unit,
          ],
          [
            `THREADMILLFORCE ${which}, full depth`,
            force.THREADMILLFORCE as Worksheet,
            ["1/2-13 UNC-2B", 10.795, 8.89, 0.1016, 0.0254, 3, 1800, 0.25, "mm", null, null, which],
            ["1/2-13 UNC-2B", 0.425, 0.35, 0.004, 0.001, 3, 1800 / KSI, 0.25, "in", null, null, which],
            unit,
          ],
        ];
      },
    ),
  ];
  for (const [name, f, metric, inch, factor] of cases) {
    it(`${name} is the same quantity in both systems`, () => {
      const [a, b] = [call(f, ...metric) as number, call(f, ...inch) as number];
      expect(a).toBeTypeOf("number");
      expect((b * factor) / a).toBeCloseTo(1, 9);
    });
  }
});

describe("force functions in cells (identity)", () => {
  it("puts the full depth at the tip that makes the basic pitch diameter", () => {
    // M6: D2 = 5.350481, tip at D2/2 + (P/4 − f/2)·√3
    const tip = (6 - 0.75 * (Math.sqrt(3) / 2)) / 2 + (0.25 - 0.05) * Math.sqrt(3);
    const args = ["M6", 5, 4.6, 0.1, 0.02, 3, 1800, 0.25, "mm"];
    const f = force.THREADMILLFORCE as Worksheet;
    expect(call(f, ...args)).toBeCloseTo(call(f, ...args, 0, tip - 2.5) as number, 9);
  });
  it("takes an external thread by its class", () => {
    const f = force.THREADMILLFORCE as Worksheet;
    expect(call(f, "M6-6g", 6, 8, 0.1, 0.02, 3, 1800, 0.25, "mm")).toBeGreaterThan(0);
    expect(message(call(f, "M6-6g", 4.6, 8, 0.1, 0.02, 3, 1800, 0.25, "mm"))).toMatch(/holeDiameter is 4.6/);
  });
  it("says which argument is wrong, in the user's unit", () => {
    const f = force.MILLFORCE as Worksheet;
    const bad = call(f, 300, 0.25, 0.002, 0.6, 0.5, 0.5, 4, 30, "in");
    expect(code(bad)).toBe("#VALUE!");
    expect(message(bad)).toBe("radialDepth is 0.6; more than 0 in and at most 0.5 in is allowed");
    expect(message(call(f, 300, 0.25, 0.002, 0.3, 0.5, 0.5, 4, 30, "in", "average"))).toMatch(/^which is "average"/);
    expect(message(call(f, 300, 0.25, 0.002, 0.3, 0.5, 0.5, 4, null, "in"))).toMatch(/^helixAngle is blank/);
  });
  it("rejects a cutter that does not enter the hole and a hole beyond the thread", () => {
    const f = force.THREADMILLFORCE as Worksheet;
    expect(message(call(f, "M6", 5, 5.2, 0.1, 0.02, 3, 1800, 0.25, "mm"))).toMatch(/^cutterDiameter is 5.2/);
    expect(message(call(f, "M6", 6.2, 4, 0.1, 0.02, 3, 1800, 0.25, "mm"))).toMatch(/^holeDiameter is 6.2/);
    expect(message(call(f, "M6", 5, 4, 0.1, 0.02, 3, 1800, 0.25, "mm", 0.6, 0.5))).toMatch(
      /^endDepth is 0.5; more than/,
    );
  });
  it("fills a column in one call, each cell with its own figure and unit", () => {
    const column = force.MILLFORCE(
      [[1800]],
      [[0.25]],
      [[0.05], [0.05], ["x"]],
      [[1]],
      [[5]],
      [[10]],
      [[4]],
      [[30]],
      [["mm"]],
      [["peak"], ["Mean Torque "], ["peak"]],
    );
    expect(column).toHaveLength(3);
    expect(column[0]![0]).toBeGreaterThan(column[1]![0]);
    expect(code(column[2]![0])).toBe("#VALUE!");
  });
});

describe("engagement functions in cells (identity)", () => {
  it("takes no unit: the answer is in the unit of the lengths", () => {
    const f = engagement.CHIPTHICKNESS as Worksheet;
    expect((call(f, 0.1, 1, 10) as number) / (call(f, 0.1 / 25.4, 1 / 25.4, 10 / 25.4) as number)).toBeCloseTo(25.4, 9);
  });
  it("reads the words without regard to case", () => {
    expect(call(engagement.CHIPTHICKNESS as Worksheet, 0.1, 10, 10, " MEAN ")).toBeCloseTo(0.2 / Math.PI, 12);
    expect(call(engagement.ARCFEED as Worksheet, 300, 20, 12, "Inside")).toBeCloseTo(120, 12);
  });
  it("tells a blank start hole from a solid one", () => {
    const f = engagement.ARCDEPTH as Worksheet;
    expect(call(f, 0, 20, 12, "inside")).toBeCloseTo(12, 12);
    expect(message(call(f, null, 20, 12, "inside"))).toMatch(/^startDiameter is blank/);
  });
  it("refuses a radial depth above the diameter", () => {
    const bad = call(engagement.ENGAGEANGLE as Worksheet, 11, 10);
    expect(code(bad)).toBe("#VALUE!");
    expect(message(bad)).toMatch(/^radialDepth is 11; more than 0 and at most 10/);
  });
});
