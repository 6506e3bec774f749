/** Blocks of cells as rows and lists: what is taken, what is said of what is not (independent: what the cells say). */
import { describe, expect, it } from "vitest";
import { readLists, readRows } from "../../src/table/read.ts";
import { sentence } from "../refusal.ts";

describe("rows", () => {
  it("are none of no block, and none of headings alone", () => {
    expect(readRows([])).toEqual([]);
    expect(readRows([["Row", "Depth"]])).toEqual([]);
  });
  it("have the name that stands in their first column, as it came", () => {
    const names = (cells: readonly unknown[]) =>
      readRows([["Row", "Operation"], ...cells.map((c) => [c, "slot"])]).map((r) => r.name);
    expect(names([10, "10a", 0, true, null, undefined, { code: "#N/A" }])).toEqual([
      10,
      "10a",
      0,
      null,
      null,
      null,
      null,
    ]);
    expect(readRows([["Operation"], ["slot"]])[0]!.name).toBeNull();
  });
  it("are empty where nothing stands but their name, blanks and zeros", () => {
    const empty = (...cells: unknown[]) => readRows([["Row", "Operation", "Depth"], cells])[0]!.empty;
    expect(empty(1, null, null)).toBe(true);
    expect(empty(0, 0, 0)).toBe(true);
    expect(empty(1, " ", 0)).toBe(true);
    expect(empty(1)).toBe(true);
    expect(empty(1, "slot", null)).toBe(false);
    expect(empty(null, null, 2)).toBe(false);
    expect(empty(null, null, "0")).toBe(false);
  });
  it("say once what is wrong with a cell, and read the others", () => {
    const [row] = readRows([
      ["Units", "Operation", "Depth", "Quantity"],
      ["furlongs", "slot", 5, 2],
    ]);
    expect(row!.problems.map(({ key }) => key)).toEqual(["units", "depth"]);
    expect(sentence(row!.problems[1]!.error)).toMatch(/Units must say mm or in/);
    expect(row!.row).toEqual({ operation: "slot", quantity: 2 });
  });
  it("take their units wherever the column stands", () => {
    expect(
      readRows([
        ["Depth", "Units"],
        [1, "in"],
      ])[0]!.row,
    ).toEqual({ units: "in", depth: 25.4 });
  });
  it("pass on a fault that is none of the cell", () => {
    const planted = {
      get code(): string {
        throw new Error("planted");
      },
    };
    expect(() => readRows([["Depth"], [planted]])).toThrow("planted");
  });
});

describe("the units of a table", () => {
  const depths = (headings: readonly string[], units?: "mm" | "in") => {
    const [read] = readRows([headings, headings.map((h) => (h === "Units" ? "in" : 1))], units);
    return { ...read!.row, problems: read!.problems.map(({ key }) => key) };
  };
  it("are those that all headings with a unit agree on, where no column says them", () => {
    expect(depths(["Depth (mm)", "Length"])).toEqual({ units: "mm", depth: 1, length: 1, problems: [] });
    expect(depths(["Depth (in)", "Length"])).toEqual({ units: "in", depth: 25.4, length: 25.4, problems: [] });
    expect(depths(["Depth (in)", "Length (mm)"])).toEqual({ depth: 25.4, length: 1, problems: [] });
    expect(depths(["Depth (in)", "Length (mm)", "Stick-out"]).problems).toEqual(["stickOut"]);
    expect(depths(["Depth", "Length"]).problems).toEqual(["depth", "length"]);
    // Of lengths: a speed in m/min says nothing of the sizes.
    expect(depths(["Surface speed (m/min)", "Length"])).toEqual({ surfaceSpeed: 1, problems: ["length"] });
  });
  it("are given to a table that has none, and not to one that has a column of them", () => {
    expect(depths(["Depth", "Length (in)"], "mm")).toEqual({ units: "mm", depth: 1, length: 25.4, problems: [] });
    expect(depths(["Depth (mm)", "Length", "Units"], "mm")).toEqual({
      units: "in",
      depth: 1,
      length: 25.4,
      problems: [],
    });
    const [blank] = readRows(
      [
        ["Depth (mm)", "Length", "Units"],
        [1, 1, null],
      ],
      "mm",
    );
    expect(blank!.row).toEqual({ depth: 1 });
    expect(blank!.problems.map(({ key }) => key)).toEqual(["length"]);
  });
});

describe("lists", () => {
  const toolsOf = (...lines: unknown[][]) => readLists([], [["Tool", "Units", "Diameter"], ...lines], []).tools;
  it("hold each named entry once, the first; case and outer blanks are no difference", () => {
    const tools = toolsOf(["A", "mm", 1], ["a", "mm", 2], [null, "mm", 3], ["B ", "mm", 4]);
    expect(tools.items.map(({ tool, diameter }) => [tool, diameter])).toEqual([
      ["A", 1],
      ["B", 4],
    ]);
    expect(tools.find(" a ")).toBe(tools.items[0]);
    expect(tools.find("b")).toBe(tools.items[1]);
    expect(tools.nameOf(tools.items[1]!)).toBe("B");
    expect(tools.find("C")).toBeUndefined();
  });
  it("keep what could not be read by the entry's name, and nothing for the others", () => {
    const tools = toolsOf(["Good", "mm", 1], ["Bad", "mm", "abc"]);
    expect([...tools.problems.keys()]).toEqual(["bad"]);
    expect(tools.problems.get("bad")!.map(({ key }) => key)).toEqual(["diameter"]);
  });
  it("are none of no block", () => {
    const { materials, tools, machines } = readLists([], [], []);
    for (const list of [materials, tools, machines]) {
      expect(list.items).toEqual([]);
      expect(list.find("x")).toBeUndefined();
      expect(list.nearest("x")).toEqual([]);
    }
  });
  it("hand out what resembles a name as the asker's own: what is done to it is forgotten", () => {
    const { machines } = readLists([], [], [["Machine"], ["Centre V3"], ["Centre V5"], ["Lathe"]]);
    expect(machines.find("Centre V4")).toBeUndefined();
    const names = machines.nearest("Centre V4");
    expect([...names].sort()).toEqual(["Centre V3", "Centre V5"]);
    names.length = 0;
    expect(machines.nearest("Centre V4")).toHaveLength(2);
  });
  it("find a material by a designation that is its own, offer the owners of one that two have, else its kind", () => {
    const { materials } = readLists(
      [
        ["Material", "Designations"],
        ["Mild", "1.0037;A36"],
        ["Shaft", "1.0503;1045"],
        ["Shaft QT", "1.0503;1045"],
        ["Soft", null],
      ],
      [],
      [],
    );
    expect(materials.find("A36")?.material).toBe("Mild");
    expect(materials.find("1045")).toBeUndefined();
    expect(materials.nearest("1045")).toEqual(["Shaft", "Shaft QT"]);
    expect(materials.find("1018")).toBeUndefined();
    expect(materials.nearest("1018").sort()).toEqual(["Mild", "Shaft", "Shaft QT"]);
  });
});
