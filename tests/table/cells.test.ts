import { describe, expect, it } from "vitest";
import { readLists, readRows } from "../../src/table/read.ts";
import { sentence } from "../refusal.ts";

function read(heading: string, cell: unknown, units: string | null = "mm"): unknown {
  const [only] = readRows([
    ["Row", "Units", heading],
    [1, units, cell],
  ]);
  const problem = only!.problems[0];
  if (problem) return sentence(problem.error);
  const { units: _, row: __, ...rest } = only!.row as Record<string, unknown>;
  return Object.values(rest)[0];
}

describe("numbers in cells as people type them (independent: the value that the text says)", () => {
  it.each([
    ["12,5", 12.5],
    ["12.5 mm", 12.5],
    ["12,5mm", 12.5],
    ["0,5 mm", 0.5],
    ["0,125", 0.125],
    [",5", 0.5],
    ["１２．５", 12.5],
    ["１２，５ ｍｍ", 12.5],
    ["12 ㎜", 12],
    ["Ø8", 8],
    ["⌀ 8,5 mm", 8.5],
    ["1.234,5", 1234.5],
    ["1,234.5", 1234.5],
    ["1 234,5", 1234.5],
    ["1’234", 1234],
    ["1,234,567", 1234567],
    ["1234,567", 1234.567],
    ["1e1", 10],
    ["½", 12.7],
    ["1 1/2", 38.1],
    ["1½", 38.1],
    ['1-1/2"', 38.1],
    ["1/2 mm", 0.5],
    ["0.5 in", 12.7],
    ["3/8 in", 9.525],
    ["½ Zoll", 12.7],
    ["0,25 pouce", 6.35],
    [".375″", 9.525],
    ["500 µm", 0.5],
  ])("reads %s as a depth of %d mm in a row in mm", (text, wanted) => {
    expect(read("Depth", text)).toBeCloseTo(wanted, 9);
  });
  it("lets the unit of the cell beat the row's and the heading's", () => {
    expect(read("Depth", "12.7 mm", "in")).toBeCloseTo(12.7, 9);
    expect(read("Depth (in)", "12.7 mm", "in")).toBeCloseTo(12.7, 9);
    expect(read("Depth", "0.5", "in")).toBeCloseTo(12.7, 9);
    expect(read("Surface speed", "300 sfm")).toBeCloseTo(91.44, 9);
    expect(read("Surface speed", "120 m/min", "in")).toBeCloseTo(120, 9);
    expect(read("Feed per tooth", "0,05 mm/z", "in")).toBeCloseTo(0.05, 9);
    expect(read("Max rpm", "8 000 tr/min")).toBe(8000);
    expect(read("Max rpm", "3000 1/min")).toBe(3000);
    expect(read("Roughness", "3,2 µm", "in")).toBeCloseTo(3.2, 9);
    // A unit of its own needs none of the row.
    expect(read("Depth", "12 mm", null)).toBe(12);
  });
  it.each([
    ["1,234", /comma may mark decimals or thousands: write 1\.234 or 1234/],
    ["12,345 mm", /comma may mark decimals or thousands: write 12\.345 or 12345/],
    ["12 kg", /"12 kg".*with mm or in/],
    ["12 m/min", /with mm or in/],
    ["0.05 mm/z", /with mm or in/],
    ["1,2,3", /a number more than 0 is allowed/],
    ["12 34", /a number more than 0/],
    ["abc", /a number more than 0/],
    ["1/0", /a number more than 0/],
    ["-3 mm", /a number more than 0/],
  ])("refuses %s as a depth, and says why", (text, why) => {
    expect(read("Depth", text)).toMatch(why);
  });
  it("refuses what fits only inside: one digit more or less beside the doubtful comma is read", () => {
    expect(read("Depth", "1,23")).toBe(1.23);
    expect(read("Depth", "1,2345")).toBe(1.2345);
    expect(read("Depth", "0,234")).toBe(0.234);
    expect(read("Quantity", "4,5")).toMatch(/whole number/);
    expect(read("Quantity", "½")).toMatch(/whole number/);
    expect(read("Quantity", "4 mm")).toMatch(/without a unit/);
    expect(read("Surface speed", "120 rpm")).toMatch(/m\/min or ft\/min/);
  });
  it("costs its length and no more, whatever the text", () => {
    for (const junk of ["1", "1,", ".1", " ", "½", "1 ", "/1", "-", "e"]) {
      const start = process.cpuUsage();
      read("Depth", junk.repeat(32_000));
      read("Operation", junk.repeat(32_000));
      read("Through", junk.repeat(32_000));
      expect(process.cpuUsage(start).user / 1000, junk).toBeLessThan(200);
    }
  });
});

describe("words in cells (identity)", () => {
  it("names what a doubtful word may mean", () => {
    for (const word of ["Gewinde", "threading", "fileter", "roscar", "filettatura", "ねじ加工"])
      expect(read("Operation", word), word).toMatch(
        /may mean (?:thread mill or tap|tap or thread mill): write one of them/,
      );
    expect(read("Operation", "alesatura")).toMatch(/may mean bore or ream/);
    expect(read("Operation", "fraisage")).toMatch(/drill, thread mill, .* or counterbore is allowed/);
    expect(read("Through", "maybe")).toMatch(/yes or no is allowed/);
    expect(read("Through", true)).toBe(true);
    expect(read("Operation", "Thread_Mill")).toBe("thread mill");
  });
  it("reads fixed units of a list by the heading's own unit", () => {
    const { machines } = readLists(
      [["Material"]],
      [["Tool"]],
      [
        ["Maschine", "Leistung (PS)", "Drehzahl max."],
        ["A", 10, "8.000.000"],
        ["B", "7,5 kW", "12 000 U/min"],
      ],
    );
    // 1 PS = 75 kgf·m/s = 0.73549875 kW (NIST SP 811, B.8).
    expect(machines.find("a")?.power).toBeCloseTo(7.3549875, 9);
    expect(machines.find("b")).toMatchObject({ power: 7.5, maxRpm: 12000 });
  });
});
