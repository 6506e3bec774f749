/** Designations and sizes that a spreadsheet took for dates: which cell, which date, what to type. */
import { describe, expect, it } from "vitest";
import type { CellError } from "../../functions/cells.ts";
import { THREADLEAD } from "../../functions/index.ts";
import { PLAN } from "../../functions/plan.ts";
import { dayLike } from "../../src/calendar.ts";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { readRows } from "../../src/table/read.ts";
import { dayText } from "../../src/words/en/days.ts";
import type { CellValue } from "../../taskpane/host/host.ts";
import { planner } from "../../taskpane/work/planner.ts";
import { sentence } from "../refusal.ts";

/** Serial number of a day by the calendar of the language itself (independent). */
const serial = (year: number, month: number, day: number) =>
  (Date.UTC(year, month - 1, day) - Date.UTC(1899, 11, 30)) / 864e5;

describe("days", () => {
  it("are those of the calendar, each from 1930 to 2099 (independent)", () => {
    for (let count = serial(1930, 1, 1); count <= serial(2099, 12, 31); count++) {
      const date = new Date(Date.UTC(1899, 11, 30) + count * 864e5);
      const day = { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
      expect(dayLike(count)).toEqual(day);
    }
  });
  it("are printed in Microsoft's page on DATE: 1 January 2008 is serial number 39448 (published)", () => {
    expect(dayText(dayLike(39_448)!)).toBe("1 Jan 2008");
  });
  it.each([serial(1929, 12, 31), serial(2100, 1, 1), 43_834.5, -43_834, 0, Number.NaN])("%s is none", (count) => {
    expect(dayLike(count)).toBeUndefined();
  });
});

describe("a thread that was taken for a date", () => {
  // What a spreadsheet makes of it, month first or day first (common behaviour of spreadsheets; from memory).
  const CASES: readonly (readonly [typed: string, made: number, date: string])[] = [
    ["1/4-20", serial(2020, 1, 4), "4 Jan 2020"],
    ["1/4-20", serial(2020, 4, 1), "1 Apr 2020"],
    ["1/2-13", serial(2013, 1, 2), "2 Jan 2013"],
    ["3/8-16", serial(2016, 3, 8), "8 Mar 2016"],
    ["5/16-18", serial(2018, 5, 16), "16 May 2018"],
    ["10-24", serial(2026, 10, 24), "24 Oct 2026"],
    ["10-32", serial(1932, 10, 1), "1 Oct 1932"],
    ["8-32", serial(1932, 8, 1), "1 Aug 1932"],
    ["4-40", serial(1940, 4, 1), "1 Apr 1940"],
  ];
  it.each(CASES)("%s, now %i, is named with what to type", (typed, made, date) => {
    const [row] = readRows([
      ["Operation", "Units", "Thread"],
      ["tap", "in", made],
    ]);
    // The row keeps the cell as its name; the thread itself says what happened.
    expect(row!.row.thread).toBe(String(made));
    const error = THREADLEAD([[made]], [["in"]])[0]![0] as CellError;
    expect(error.code).toBe("#N/A");
    expect(error.message).toBe(
      `thread ${made} is not known; the cell holds the date ${date}, which the spreadsheet made of what was typed: format the cell as text and type it again, such as ${typed}`,
    );
  });

  const copy = (block: readonly (readonly CellValue[])[]) => block.map((line) => [...line]);
  const lines = (heading: string, cell: CellValue) => {
    const row = DEMO.findIndex((line) => line[DEMO[0]!.indexOf("Operation")] === "thread mill");
    return [[...DEMO[0]!], DEMO[row]!.map((old, c) => (DEMO[0]![c] === heading ? cell : old))];
  };
  const plan = (heading: string, cell: CellValue) => {
    const [head, answer] = PLAN(lines(heading, cell), copy(MATERIALS), copy(TOOLS), copy(MACHINES));
    return (name: string) => String(answer![head!.indexOf(name)]);
  };

  it("stops its row, with the sentence among the reasons", () => {
    const answer = plan("Thread", serial(1940, 4, 1));
    expect(answer("Verdict")).toBe("stop");
    expect(answer("Reasons")).toMatch(/the cell holds the date 1 Apr 1940.*such as 4-40/);
  });

  it.each(["Tool", "Material", "Machine"])(
    "may be a %s, too, or a name that is not in the list: the way out says so",
    (heading) => {
      const blocks = {
        rows: lines(heading, serial(2026, 10, 4)),
        materials: copy(MATERIALS),
        tools: copy(TOOLS),
        machines: copy(MACHINES),
      };
      const reason = planner(blocks)[0]!.reasons.find(({ text }) => text.includes("is not in the list"))!;
      expect(reason.text).toContain('"46299"');
      expect(reason.wayOut).toMatch(
        /how a spreadsheet counts 4 Oct 2026: if a date was made of the name, format the cell as text/,
      );
    },
  );

  it("is not suspected in a designation that is text, or in other numbers", () => {
    expect(plan("Thread", "1/4-20 UNC")("Reasons")).not.toMatch(/date/);
    expect(plan("Thread", 8)("Reasons")).not.toMatch(/date/);
  });
});

describe("a size that was taken for a date", () => {
  const read = (cell: unknown) => {
    const [row] = readRows([
      ["Operation", "Units", "Finish diameter"],
      ["drill", "in", cell],
    ]);
    const problem = row!.problems[0];
    return problem ? sentence(problem.error) : row!.row.finishDiameter;
  };
  it("is named with the fraction that was typed", () => {
    expect(read(serial(2026, 1, 2))).toBe(
      `Finish diameter is ${serial(2026, 1, 2)}; the cell holds the date 2 Jan 2026, which the spreadsheet made of what was typed: format the cell as text and type it again, such as 1/2`,
    );
  });
  it("is a size when it is one", () => {
    expect(read(0.5)).toBeCloseTo(12.7, 9);
    expect(read(serial(2019, 12, 31))).toBeCloseTo(serial(2019, 12, 31) * 25.4, 3);
    expect(read("1/2")).toBeCloseTo(12.7, 9);
  });
});
