import { describe, expect, it } from "vitest";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { planTable } from "../../src/plan/table.ts";
import { readLists } from "../../src/table/read.ts";

const { tools } = readLists(MATERIALS, TOOLS, MACHINES);
const offered = (text: string) => (tools.find(text) ? "found" : tools.nearest(text));

describe("tools by their description (independent: what a person would take from the crib by these words)", () => {
  it.each([
    ["letter F drill", "D-F"],
    ["8.5mm carbide drill", "D-8.5C"],
    ["8,5 mm VHM-Bohrer", "D-8.5C"],
    ["face mill 50", "FM-50-5"],
    ["50mm facemill", "FM-50-5"],
    ["reamer 8 H7", "R-8"],
    ["8H7 reamer", "R-8"],
    ["Reibahle 8 H7", "R-8"],
    ["12mm HSS endmill", "EM-12-4H"],
    ["12 mm 3 flute end mill", "EM-12-3"],
    ["3/4 endmill", "EM-3/4-4"],
    ["ball nose 10mm", "BM-10-2"],
    ["エンドミル 4mm 4枚刃", "EM-4-4"],
  ])("finds %s, as one tool fits", (text, tool) => {
    expect(tools.find(text)?.tool).toBe(tool);
  });
  it.each([
    ["10mm 4 flute carbide endmill", ["EM-10-4", "EM-10-4L"]],
    ["10 mm end mill", ["EM-10-4", "EM-10-4L"]],
    ["EM 10mm 4FL", ["EM-10-4", "EM-10-4L"]],
    ["VHM-Fräser 10 Z4", ["EM-10-4", "EM-10-4L"]],
    ['1/2" endmill', ["EM-1/2-4", "EM-1/2-4H"]],
    ["M6 tap", ["T-M6", "T-M6B"]],
    ["M6x1 tap", ["T-M6", "T-M6B"]],
    ["drill 6.8", ["D-6.8", "D-6.8C"]],
    ["6,8 mm Bohrer", ["D-6.8", "D-6.8C"]],
    ["Ø6.8", ["D-6.8", "D-6.8C"]],
    ["foret 8.5", ["D-8.5", "D-8.5C"]],
    ["ball mill 6mm", ["BM-6-2", "BM-6-2L"]],
    ["drill #7", ["D-#7", "D-#7C"]],
    ["thread mill M6", ["TM-M6-S", "TM-M6-SL", "TM-M6-SX", "TM-M6x1-F"]],
  ])("offers every tool that fits %s, and chooses none", (text, wanted) => {
    expect(offered(text)).toEqual(wanted);
  });
  it("chooses none with a word that is not understood, of another pitch or size, or without a size", () => {
    for (const text of [
      "50mm facemill for Bob's job",
      "face mill 51",
      "M8x1 tap",
      "reamer 8 H6",
      "end mill",
      "10",
      "drill",
    ])
      expect(tools.find(text), text).toBeUndefined();
  });
  it("offers the next in size of its kind where none fits, and nothing for what resembles nothing", () => {
    expect(tools.nearest("face mill 51")[0]).toBe("FM-2in-5");
    expect(tools.nearest("1/4 drill")).toEqual(["D-F", "D-6.6", "D-6.8"]);
    for (const text of ["zzz", "pocket 3 left", ""]) expect(tools.nearest(text), text).toEqual([]);
    // One slip of the finger in a name of the crib.
    expect(tools.nearest("EM-10-5")[0]).toMatch(/^EM-10-4/);
  });
  it("prefers the shop's own name, whatever it describes", () => {
    const { tools: own } = readLists(
      [["Material"]],
      [
        ["Tool", "Kind", "Units", "Diameter"],
        ["drill 6.8", "drill", "mm", 7],
        ["other", "drill", "mm", 6.8],
      ],
      [["Machine"]],
    );
    expect(own.find("Drill 6.8")?.diameter).toBe(7);
    expect(own.find("6.8 drill")?.tool).toBe("other");
  });
  it("says in the row which tool was taken, and which may have been meant", () => {
    const rows = [
      ["Row", "Operation", "Units", "Material", "Machine", "Tool", "Finish diameter", "Depth"],
      [1, "drill", "mm", "1.0503", "Centre V3", "8.5mm carbide drill", 8.5, 20],
      [2, "drill", "mm", "1.0503", "Centre V3", "drill 8.5", 8.5, 20],
    ];
    const { lines } = planTable({ rows, materials: MATERIALS, tools: TOOLS, machines: MACHINES });
    expect(lines[0]!.results.tool).toBe("D-8.5C");
    expect(lines[0]!.verdict).not.toBe("stop");
    expect(lines[1]!.verdict).toBe("stop");
    expect(JSON.stringify(lines[1]!.reasons)).toMatch(/drill 8\.5\\" is not in the list.*D-8\.5.*D-8\.5C/);
  });
});
