/** Tolerance classes of callouts against the table of fits, which was made apart from it; and limits that people write. */
import { describe, expect, it } from "vitest";
import { readCallouts } from "../../src/callouts/callouts.ts";
import { fitDeviations, standardTolerance } from "../../src/callouts/fits.ts";
import { classLimits } from "../../src/fits/limits.ts";

const HOLES = ["D", "E", "F", "G", "H", "JS"];
const GRADES = [5, 6, 7, 8, 9, 10, 11, 12, 13];
/** Just inside each end of every range of sizes. */
const SIZES = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500].flatMap((end) => [end - 0.5, end]);

describe("tolerance classes of callouts (independent: a second table of ISO 286)", () => {
  it.each([...HOLES, ...HOLES.map((letter) => letter.toLowerCase())])("%s in each grade and range", (letter) => {
    let compared = 0;
    for (const grade of GRADES)
      for (const size of SIZES) {
        const name = `${letter}${grade}`;
        const got = fitDeviations(size, name);
        let wanted: ReturnType<typeof classLimits>;
        try {
          wanted = classLimits(size, name);
        } catch {
          continue;
        }
        compared++;
        expect(got?.lower, `${name} at ${size}`).toBeCloseTo(wanted.lower, 9);
        expect(got?.upper, `${name} at ${size}`).toBeCloseTo(wanted.upper, 9);
        expect(got?.shaft).toBe(letter === letter.toLowerCase());
        expect(standardTolerance(size, grade)).toBeCloseTo(wanted.upper - wanted.lower, 9);
      }
    expect(compared).toBeGreaterThan(100);
  });
  it.each(["K7", "M7", "N7", "P7"])("%s in each range, and in no other grade", (name) => {
    for (const size of SIZES) {
      const [got, wanted] = [fitDeviations(size, name)!, classLimits(size, name)];
      expect(got.lower, String(size)).toBeCloseTo(wanted.lower, 9);
      expect(got.upper, String(size)).toBeCloseTo(wanted.upper, 9);
    }
    expect(fitDeviations(20, name.replace("7", "6"))).toBeUndefined();
    expect(fitDeviations(20, name.toLowerCase())).toBeUndefined();
  });
  it("answers nothing outside its sizes, grades and letters", () => {
    for (const [size, name] of [
      [0, "H7"],
      [-5, "H7"],
      [500.1, "H7"],
      [20, "H4"],
      [20, "H14"],
      [20, "S7"],
      [20, "H"],
      [20, "7"],
      [20, "HH7"],
      [20, "H7/g6"],
    ] as const)
      expect(fitDeviations(size, name), `${size} ${name}`).toBeUndefined();
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
});
