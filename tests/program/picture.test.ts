/** The picture of path and program: its points lie where the geometry says. */
import { describe, expect, it } from "vitest";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { ProgramCheck } from "../../src/program/check.ts";
import { tableFacts } from "../../src/program/facts.ts";
import { type Picture, pictureOf } from "../../src/program/picture.ts";
import { HOUSING, JOBS } from "./jobs.ts";
import { thread } from "./planted.ts";
import { table } from "./shop.ts";
import { writeProgram } from "./writer.ts";

const factsOf = (rows: (typeof HOUSING)["rows"]) =>
  tableFacts({ rows: table(rows), materials: MATERIALS, tools: TOOLS, machines: MACHINES });
const points = (picture: Picture, view: "above" | "section", kind: string) =>
  picture[view].lines.filter((l) => l.kind === kind).flatMap((l) => l.points);

describe("pictures (independent)", () => {
  for (const job of JOBS)
    it(`${job.name}: planned and made lie on each other where nothing differs`, () => {
      const facts = factsOf(job.rows);
      const reading = new ProgramCheck(writeProgram(job.cuts(), { name: "full", arcs: "ij 90" }), facts);
      reading.findings();
      for (const row of facts) {
        const made = reading.madeOf(row);
        expect(made, row.name).toBeDefined();
        const picture = pictureOf(row, made, "tip")!;
        for (const view of ["above", "section"] as const) {
          const { box, lines } = picture[view];
          expect([box.left, box.right, box.bottom, box.top].every(Number.isFinite), row.name).toBe(true);
          expect(lines.some((l) => l.kind === "planned")).toBe(true);
          for (const [x, y] of lines.flatMap((l) => l.points)) {
            expect(x >= box.left && x <= box.right && y >= box.bottom && y <= box.top, row.name).toBe(true);
          }
        }
        // the deepest planned point and the deepest made one
        const low = (kind: string) => Math.min(...points(picture, "section", kind).map(([, z]) => z));
        expect(Math.abs(low("planned") - low("program")), row.name).toBeLessThan(0.03);
      }
    });
  it("draws the grooves a pitch apart from the thread's depth up, and a wrong pitch as it is", () => {
    const facts = factsOf(HOUSING.rows);
    const cuts = HOUSING.cuts();
    Object.assign(thread(cuts), { pitch: 1.5 });
    const reading = new ProgramCheck(writeProgram(cuts, { name: "full", arcs: "ij 360" }), facts);
    reading.findings();
    const picture = pictureOf(facts[1]!, reading.madeOf(facts[1]!), "tip")!;
    const roots = (kind: string) => {
      const all = points(picture, "section", kind);
      const out = Math.max(...all.map(([x]) => x));
      return all.filter(([x]) => Math.abs(x - out) < 1e-9).map(([, z]) => z);
    };
    const [planned, program] = [roots("planned"), roots("program")];
    expect(planned[0]).toBeCloseTo(-16, 6);
    planned.slice(1).forEach((z, n) => {
      expect(z - planned[n]!).toBeCloseTo(1.25, 6);
    });
    program.slice(1).forEach((z, n) => {
      expect(z - program[n]!).toBeCloseTo(1.5, 2);
    });
  });
  it("is there for a row alone, and not for a row without a plan", () => {
    const [, row] = factsOf(HOUSING.rows);
    expect(points(pictureOf(row!, undefined, "tip")!, "above", "program")).toEqual([]);
    const [incomplete] = factsOf([{ ...HOUSING.rows[1]!, Depth: null }]);
    expect(pictureOf(incomplete!, undefined, "tip")).toBeUndefined();
  });
});
