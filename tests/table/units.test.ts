/** Units that people write, and the limits of each cell. */
import { describe, expect, it } from "vitest";
import { readLists, readRows } from "../../src/table/read.ts";
import { sentence } from "../refusal.ts";

function cell(heading: string, value: unknown, units: string | null = "mm"): unknown {
  const [only] = readRows([
    ["Row", "Units", heading],
    [1, units, value],
  ]);
  if (only!.problems[0]) return sentence(only!.problems[0].error);
  const { units: _, row: __, ...rest } = only!.row as Record<string, unknown>;
  return Object.values(rest)[0];
}
function machine(heading: string, value: unknown): unknown {
  const { machines } = readLists(
    [["Material"]],
    [["Tool"]],
    [
      ["Machine", heading],
      ["A", value],
    ],
  );
  const problem = machines.problems.get("a")?.[0];
  if (problem) return sentence(problem.error);
  const { machine: _, ...rest } = machines.find("A") as unknown as Record<string, unknown>;
  return Object.values(rest)[0];
}
function tool(heading: string, value: unknown): unknown {
  const { tools } = readLists(
    [["Material"]],
    [
      ["Tool", "Units", heading],
      ["A", "mm", value],
    ],
    [["Machine"]],
  );
  const { tool: _, units: __, ...rest } = tools.find("A") as unknown as Record<string, unknown>;
  return Object.values(rest)[0];
}

/** Factors of NIST SP 811, appendix B.8 (from memory), to the unit of the column. */
describe("units behind a number (published, NIST SP 811)", () => {
  it.each([
    ["Depth", "2 cm", 20],
    ["Depth", "500 micron", 0.5],
    ["Depth", "0.5 inches", 12.7],
    ["Depth", "40 thou", 1.016],
    ["Depth", "40 mils", 1.016],
    ["Feed per tooth", "0.002 ipt", 0.0508],
    ["Feed per tooth", "0.05 mm/flute", 0.05],
    ["Surface speed", "100 ft/min", 30.48],
    ["Surface speed", "100 m/min", 100],
    ["Roughness", "63 µin", 1.6002],
    ["Roughness", "1.6 µm", 1.6],
    ["Max rpm", "3000 rpm", 3000],
    ["Max rpm", "3000 U/min", 3000],
  ])("%s: %s", (heading, text, wanted) => {
    expect(cell(heading, text)).toBeCloseTo(wanted, 9);
    expect(cell(heading, text, "in")).toBeCloseTo(wanted, 9);
  });
  it.each([
    ["Power [kW]", "10 hp", 7.456998716],
    ["Power [kW]", "10 PS", 7.3549875],
    ["Power [kW]", "7500 W", 7.5],
    ["Power [kW]", "7.5 kW", 7.5],
    ["Torque [N·m]", "10 ft-lb", 13.55817948],
    ["Torque [N·m]", "100 in-lb", 11.298482903],
    ["Torque [N·m]", "80 Nm", 80],
    ["Acceleration [m/s²]", "0.5 g", 4.903325],
    ["Acceleration [m/s²]", "3 m/s2", 3],
    ["Tool change [s]", "1.5 min", 90],
    ["Tool change [s]", "4 s", 4],
    ["Setup [min]", "0.5 h", 30],
    ["Setup [min]", "90 s", 1.5],
    ["Rapid [m/min]", "24000 mm/min", 24],
    ["Rapid [m/min]", "1000 ipm", 25.4],
    ["Rapid [m/min]", "24 m/min", 24],
    ["Max feed [m/min]", "400 in/min", 10.16],
    ["Ramp time [s]", "0.001 min", 0.06],
  ])("%s: %s", (heading, text, wanted) => expect(machine(heading, text)).toBeCloseTo(wanted, 7));
  it.each([
    ["Power (hp)", 10, 7.456998716],
    ["Torque (ft-lb)", 10, 13.55817948],
    ["Torque [lbf·ft]", 10, 13.55817948],
    ["Rapid (ipm)", 1000, 25.4],
    ["Setup (h)", 2, 120],
    ["Acceleration (g)", 1, 9.80665],
  ])("in the heading: %s", (heading, value, wanted) => expect(machine(heading, value)).toBeCloseTo(wanted, 7));
  it("of stress and of angles", () => {
    expect(tool("Rupture strength [MPa]", "3.5 GPa")).toBeCloseTo(3500, 9);
    expect(tool("Rupture strength [MPa]", "3500 N/mm2")).toBeCloseTo(3500, 9);
    expect(tool("Modulus [GPa]", "600000 MPa")).toBeCloseTo(600, 9);
    expect(tool("Point angle", "118°")).toBe(118);
    expect(tool("Point angle", "118 deg")).toBe(118);
  });
  it("after each digit", () => {
    for (const digit of "0123456789") {
      expect(cell("Depth", `12.5${digit} mm`), digit).toBeCloseTo(Number(`12.5${digit}`), 12);
      expect(cell("Depth", `1${digit}mm`), digit).toBe(Number(`1${digit}`));
      expect(cell("Max rpm", `1${digit} 1/min`), digit).toBe(Number(`1${digit}`));
    }
  });
  it("that measure something else are refused", () => {
    expect(machine("Power [kW]", "10 Nm")).toMatch(/alone or with kW/);
    expect(machine("Torque [N·m]", "10 kW")).toMatch(/alone or with N·m/);
    expect(machine("Setup [min]", "10 mm")).toMatch(/alone or with min/);
    expect(cell("Surface speed", "10 mm")).toMatch(/with m\/min or ft\/min/);
    expect(cell("Roughness", "3.2 mm")).toMatch(/with µm or µin/);
    expect(cell("Roughness", "Ra 3.2")).toMatch(/number/);
    expect(cell("Max rpm", "10 mm")).toMatch(/with 1\/min/);
    expect(cell("Passes", "2 mm")).toMatch(/without a unit/);
    expect(cell("Depth", "2 mm/z")).toMatch(/with mm or in/);
    expect(machine("Rate [per hour]", "80 mm")).toMatch(/without a unit/);
  });
});

describe("limits of the cells (a machinist's rules)", () => {
  const refused = /is allowed/;
  it.each([
    ["Quantity", [1, 250], [1.5, -1]],
    ["Batch", [1], [0.5, -1]],
    ["Passes", [1, 200], [201, 2.5]],
    ["Spring passes", [0, 200], [-1, 201, 0.5]],
    ["Wear factor", [1, 3], [0.99, 3.01]],
    ["Start diameter", [0, 0.1], [-0.1]],
    ["Spacing", [0], [-1]],
    ["Drilling oversize", [0, 0.2], [-0.01]],
    ["Finish diameter", [0.01], [-0.01, -1]],
    ["Depth", [0.01], [-0.01, -1]],
    ["Length", [1], [-0.001]],
    ["Radial depth", [0.01], [-0.001]],
    ["Axial depth", [0.01], [-0.001]],
    ["Stick-out", [1], [-0.001]],
    ["Feed per tooth", [0.001], [-0.001]],
    ["Surface speed", [1], [-0.001]],
    ["Max rpm", [1], [-0.001]],
    ["Size tolerance", [0.001], [-0.001]],
    ["Roughness", [0.1], [-0.001]],
    ["Wear value", [-0.1, 0, 0.1], []],
    ["Measured", [0.1], [-0.001]],
    ["Inside corner", [0.1], [-0.001]],
  ] as const)("%s", (heading, inside, outside) => {
    for (const value of inside) expect(cell(heading, value), String(value)).toBe(value);
    for (const value of outside) expect(cell(heading, value), String(value)).toMatch(refused);
    for (const value of [Number.POSITIVE_INFINITY, Number.NaN, true])
      expect(typeof cell(heading, value)).toBe("string");
  });
  it.each([
    ["Hand", ["right", "left"]],
    ["Way", ["climb", "conventional"]],
    ["Side", ["straight", "inside", "outside"]],
    ["Coolant", ["flood", "through", "air", "dry"]],
  ] as const)("%s: its words, and what a slip is told", (heading, words) => {
    for (const word of words) expect(cell(heading, word)).toBe(word);
    const told = cell(heading, "qwxz") as string;
    for (const word of words) expect(told).toContain(word);
    expect(told).toMatch(/ or \w+ is allowed/);
  });
  it("an error of the sheet is named, whatever the column", () => {
    for (const heading of ["Depth", "Feature", "Through", "Hand"])
      expect(cell(heading, { code: "#N/A" })).toMatch(/#N\/A.*a value is wanted, not an error/);
  });
  it("yes and no, as a tick or in words", () => {
    expect([true, false, "yes", "no", "Yes", "NO"].map((v) => cell("Through", v))).toEqual([
      true,
      false,
      true,
      false,
      true,
      false,
    ]);
  });
  it("a size without units is asked for them, but not one that brings its own", () => {
    expect(cell("Depth", 5, null)).toMatch(/Units must say mm or in/);
    expect(cell("Depth", "5 mm", null)).toBe(5);
    expect(cell("Depth (in)", 1, null)).toBeCloseTo(25.4, 12);
    expect(cell("Passes", 2, null)).toBe(2);
  });
});

describe("a list of the shop (identity)", () => {
  const lists = (...names: readonly unknown[]) =>
    readLists([["Material"]], [["Tool", "Units", "Diameter"], ...names.map((n, i) => [n, "mm", i + 1])], [["Machine"]])
      .tools;
  it("is looked up without regard to case and outer blanks; of two of a name the first counts", () => {
    const list = lists("EM-10", "em-10", "D-5");
    expect(list.items.map((t) => t.tool)).toEqual(["EM-10", "D-5"]);
    expect(list.find(" em-10 ")?.diameter).toBe(1);
    expect(list.find("EM-1")).toBeUndefined();
  });
  it("leaves out entries without a name", () => {
    expect(lists("", null, "A", "  ").items.map((t) => t.tool)).toEqual(["A"]);
  });
  it("offers at most three names, the most alike first", () => {
    const list = lists("EM-12-4", "EM-10-4L", "EM-10-4", "FM-40-5", "D-10.2", "EM-8-3");
    expect(list.nearest("EM-10-5")[0]).toBe("EM-10-4");
    expect(list.nearest("EM-10-5").length).toBeLessThanOrEqual(3);
    expect(list.nearest("EM-10-5")).not.toContain("D-10.2");
    // What is offered once is offered again, whatever the one who asked did with it.
    const offered = list.nearest("EM-10-5");
    expect(offered.splice(0)).toEqual(list.nearest("EM-10-5"));
    // nothing is alike: nothing is offered
    expect(list.nearest("qqq")).toEqual([]);
    expect(lists().nearest("qqq")).toEqual([]);
  });
  it("keeps what could not be read with the entry", () => {
    const { tools } = readLists(
      [["Material"]],
      [
        ["Tool", "Units", "Diameter"],
        ["A", "mm", "x"],
        ["B", "mm", 5],
      ],
      [["Machine"]],
    );
    expect([...tools.problems.keys()]).toEqual(["a"]);
    expect(tools.problems.get("a")![0]!.key).toBe("diameter");
    expect(tools.find("A")).toMatchObject({ tool: "A" });
  });
});

describe("a table of rows (identity)", () => {
  it("is in the units of its headings where they agree and no column says any", () => {
    const [row] = readRows([
      ["Depth (in)", "Length (in)", "Operation", "Feed per tooth"],
      [1, 2, "slot", 0.002],
    ]);
    expect(row!.row).toMatchObject({ units: "in", depth: 25.4, length: 50.8 });
    expect(row!.row.feedPerTooth).toBeCloseTo(0.0508, 12);
    const [mixed] = readRows([
      ["Depth (in)", "Length (mm)", "Feed per tooth"],
      [1, 2, 0.002],
    ]);
    expect(mixed!.row).toMatchObject({ depth: 25.4, length: 2 });
    expect(mixed!.row.units).toBeUndefined();
    expect(mixed!.problems.map((p) => p.key)).toEqual(["feedPerTooth"]);
  });
  it("takes the units that it is given only where no column says any", () => {
    expect(readRows([["Depth"], [1]], "in")[0]!.row).toMatchObject({ units: "in", depth: 25.4 });
    expect(
      readRows(
        [
          ["Depth", "Units"],
          [1, "mm"],
        ],
        "in",
      )[0]!.row,
    ).toMatchObject({ units: "mm", depth: 1 });
    expect(
      readRows(
        [
          ["Depth", "Units"],
          [1, null],
        ],
        "in",
      )[0]!.row.units,
    ).toBeUndefined();
  });
  it("keeps a row's name as it came, and knows a row that is blank but for it", () => {
    const rows = readRows([
      ["Row", "Depth", "Units"],
      [7, null, null],
      ["seven", 2, "mm"],
      [null, " ", ""],
      [true, 1, "mm"],
    ]);
    expect(rows.map((r) => r.name)).toEqual([7, "seven", null, null]);
    expect(rows.map((r) => r.empty)).toEqual([true, false, true, false]);
    expect(readRows([])).toEqual([]);
    expect(readRows([["Row"]])).toEqual([]);
  });
});
