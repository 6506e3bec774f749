/** Tolerance classes and limits of callouts, as people write them. */
import { describe, expect, it } from "vitest";
import { readCallouts } from "../../src/callouts/callouts.ts";

describe("tolerance classes of callouts", () => {
  const read = (text: string) => readCallouts(text, { units: "mm" }).rows[0]!;
  it.each([
    // ISO 286-2: lower and upper deviation at 20 mm [µm]; those over 24 mm begin later
    ["E5", 40, 49],
    ["H5", 0, 9],
    ["H13", 0, 330],
    ["JS6", -6.5, 6.5],
    ["S7", -48, -27],
    ["h6", -13, 0],
    ["e8", -73, -40],
    ["k6", 2, 15],
  ])("%s of 20 mm lies between %d and %d µm (published)", (name, lower, upper) => {
    const row = read(`⌀20 ${name}`);
    expect(row.understood, row.note).toBe(true);
    const limits = row.note
      .match(/limits ([\d.]+) to ([\d.]+)/)!
      .slice(1)
      .map(Number);
    expect(limits[0]).toBeCloseTo(20 + lower / 1000, 6);
    expect(limits[1]).toBeCloseTo(20 + upper / 1000, 6);
  });
  it.each(["H4", "H14", "C9", "V7", "T7"])(
    "%s of 20 mm is no class of a drawing, not in the tables or not in use",
    (name) => {
      const row = read(`⌀20 ${name}`);
      expect(row.understood).toBe(false);
      expect(row.note).toContain(`tolerance class ${name} is not in the table: no limits`);
      expect(row.cells["Size tolerance"]).toBeNull();
    },
  );
  it("end where the tables end, at 500 mm", () => {
    expect(read("⌀500 H7").note).toContain("limits 500 to 500.063");
    expect(read("⌀501 H7").note).toContain("tolerance class H7 is not in the table: no limits");
  });
});

describe("limits that people write (a machinist's rules)", () => {
  /** Middle and half width of the row of a callout. */
  const row = (text: string, units: "mm" | "in" = "mm") => readCallouts(text, { units }).rows[0]!.cells;
  it.each([
    ["⌀20 ±0.05 ↧ 20", 20, 0.05],
    ["⌀20 +0.02/-0 ↧ 20", 20.01, 0.01],
    // ISO 286-2: 20 H7 is 20.000 to 20.021
    ["⌀20 H7 ↧ 20", 20.0105, 0.0105],
  ])("%s", (text, size, tolerance) => {
    const cells = row(text);
    expect(cells["Finish diameter"] as number).toBeCloseTo(size, 6);
    expect(cells["Size tolerance"] as number).toBeCloseTo(tolerance, 6);
  });
  it("one that does not begin at 0 too: 0.5 F8 is 12.7 F8, 16 to 43 µm (ISO 286-2)", () => {
    const cells = row("⌀.500 F8 ↧ .75", "in");
    expect(cells["Finish diameter"] as number).toBeCloseTo(0.5 + 0.0295 / 25.4, 6);
    expect(cells["Size tolerance"] as number).toBeCloseTo(0.0135 / 25.4, 6);
  });
  it("a class in an inch drawing is worked out in mm: 0.5 H7 is 12.7 H7, 0 to 18 µm", () => {
    const cells = row("⌀.500 H7 ↧ .75", "in");
    expect(cells["Finish diameter"] as number).toBeCloseTo(0.5 + 0.009 / 25.4, 6);
    expect(cells["Size tolerance"] as number).toBeCloseTo(0.009 / 25.4, 6);
  });
  it.each(["⌀.5 ±.6 ↧ 1", "⌀10 ±0 ↧ 20"])("%s leaves nothing between its limits, and is asked about", (text) => {
    const { cells, note, understood } = readCallouts(text, { units: "mm" }).rows[0]!;
    expect(note).toContain("tolerance not understood");
    expect(cells["Size tolerance"]).toBeNull();
    expect(understood).toBe(false);
  });
});

describe("what a row says", () => {
  const rows = (text: string) => readCallouts(text, { units: "mm" }).rows;
  it("speaks of an angle where there is a countersink only", () => {
    expect(rows("⌀5 THRU")[0]!.note).not.toContain("angle");
    expect(rows("⌀5 THRU ⌵ ⌀10")[1]!.note).toContain("angle is not told");
    expect(rows("⌀5 THRU ⌵ ⌀10 x 82°")[1]!.note).toContain("countersink 82°");
  });
  it("keeps the hole of a thread that does not exist", () => {
    const operations = (text: string) => rows(text).map(({ cells }) => cells.Operation);
    expect(operations("M6.5 ↧ 10")).toEqual(["thread mill"]);
    expect(operations("M6.5 ↧ 10, PILOT ⌀5.5 ↧ 14")).toEqual(["drill", "thread mill"]);
    expect(rows("M6.5 ↧ 10")[0]!.note).toContain("the nearest are M5.5, M6, M7");
  });
  it("gives one row for more text than a drawing has, with the beginning of it", () => {
    const text = `⌀6 THRU ${"x".repeat(2_000_000)}`;
    const [row, ...more] = rows(text);
    expect(more).toEqual([]);
    expect(row!.understood).toBe(false);
    expect(row!.cells.Feature).toBe(`${text.slice(0, 120)} …`);
    expect(row!.cells.Remark).toBe(
      "not understood: 2000008 characters are more than a drawing has; paste its callouts only",
    );
  });
});
