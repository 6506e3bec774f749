/** Sound programs in the styles of many posts: nothing is found in them that is not ok. */
import { describe, expect, it } from "vitest";
import { JOBS } from "./jobs.ts";
import type { Style } from "./post.ts";
import { alarms, check, planned } from "./shop.ts";
import { writeProgram } from "./writer.ts";

const STYLES: readonly Style[] = [
  {
    name: "full circles by I J, leading and trailing zeros",
    arcs: "ij 360",
    lead: "half rising",
    compensation: "wear",
  },
  { name: "quarter circles by I J, cycles, N numbers", arcs: "ij 90", cycles: true, blockNumbers: true, lead: "half" },
  {
    name: "quarter circles by R, trimmed numbers, modal words left out",
    arcs: "r 90",
    numbers: "trimmed",
    modal: true,
  },
  {
    name: "thirds of a circle by R, straight leads",
    arcs: "r 120",
    lead: "straight",
    cycles: true,
    compensation: "wear",
  },
  { name: "incremental, half circles by I J", arcs: "ij 180", incremental: true, lead: "half rising" },
  { name: "incremental with cycles, by R, small letters", arcs: "r 90", incremental: true, cycles: true, small: true },
  { name: "the other unit, full circles", arcs: "ij 360", units: "in", numbers: "plus", compensation: "wear" },
  { name: "the other unit, eighths of a circle, no spaces", arcs: "ij 45", units: "in", tight: true, cycles: true },
  { name: "programmed at the contour with compensation", arcs: "ij 180", compensation: "contour", lead: "straight" },
  {
    ...{ name: "steps without a point, feed per turn, tools by T alone", arcs: "ij 90" as const },
    ...{ numbers: "increments" as const, perTurn: true, tools: "T" as const, comments: "semicolon" as const },
  },
];

describe("sound programs (independent)", () => {
  it("are made from plans that are worked out", () => {
    for (const job of JOBS)
      for (const plan of planned(job.rows)) expect(plan["Table feed"], job.name).toBeTypeOf("number");
  });
  for (const job of JOBS)
    for (const style of STYLES)
      it(`${job.name}: ${style.name}`, () => {
        const text = writeProgram(job.cuts(), style);
        const found = check(text, job.rows);
        expect(alarms(found), `${found.map((f) => f.text).join("\n")}\n${text.slice(0, 3000)}`).toEqual([]);
        // and each row is told as found
        for (const row of job.rows)
          expect(found.some((f) => f.row === String(row.Row) && f.code === "" && /as planned/.test(f.text))).toBe(true);
      });
});
