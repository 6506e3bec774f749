/** What others do to the workbook between the reading and the writing, faults on the way, and writes of any size. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { excelHost } from "../../taskpane/host/excel.ts";
import { type Change, type Host, HostError, type Table } from "../../taskpane/host/host.ts";
import { SHEETS } from "./contract.ts";
import { FakeExcel } from "./excel-fake/excel.ts";
import type { FakeSheet } from "./excel-fake/types.ts";

const score = (headings: readonly unknown[]) => (headings.includes("Operation") ? headings.length : 0);
const problem = async (work: Promise<unknown>): Promise<HostError> => {
  try {
    await work;
  } catch (thrown) {
    if (thrown instanceof HostError) return thrown;
    throw thrown;
  }
  throw new Error("nothing was refused");
};

let fake: FakeExcel;
let host: Host;
let job: FakeSheet;
beforeEach(() => {
  fake = new FakeExcel();
  for (const [name, grid] of Object.entries(SHEETS)) fake.addSheet(name, grid);
  fake.install();
  host = excelHost();
  job = fake.sheet("Job")!;
});
afterEach(() => fake.uninstall());

const value = (row: number, column: number) => job.cells.get(`${row},${column}`)?.value ?? null;
/** The row number of each row, and what was written beside it. */
const lines = () =>
  Array.from({ length: 12 }, (_, r) => r)
    .map((r) => [value(r, 0), value(r, 4)])
    .filter(([op]) => typeof op === "number");
const notes = [0, 1, 3].map((row): Change => ({ row, column: 4, value: `note ${row}` }));
const care = (table: Table) => ({ same: { block: table, columns: [0, 1, 2, 3] } });

describe("others at work in the same table", () => {
  it("rows inserted above it between the two syncs: results go along with their rows", async () => {
    const table = (await host.readTable(score))!;
    fake.between.set(2, () => fake.insertRows(job, 1, 2));
    await host.writeCells(table, notes, care(table));
    expect(lines()).toEqual([
      [10, "note 0"],
      [20, "note 1"],
      [30, "note 3"],
    ]);
    expect(value(5, 0)).toBe(10);
  });

  it("a row inserted into it: nothing is written, and it is to be planned again", async () => {
    const table = (await host.readTable(score))!;
    fake.between.set(2, () => fake.insertRows(job, 4, 1));
    const said = await problem(host.writeCells(table, notes, care(table)));
    expect([said.code, said.message]).toEqual([
      "changed",
      "Rows have come into the table, or gone, while it was written. Nothing was written.",
    ]);
    expect(lines()).toEqual([
      [10, "=not a formula"],
      [20, null],
      [30, true],
    ]);
  });

  it("a row inserted before the write reads: seen at once", async () => {
    const table = (await host.readTable(score))!;
    fake.between.set(1, () => fake.insertRows(job, 4, 1));
    expect((await problem(host.writeCells(table, notes, care(table)))).code).toBe("changed");
    expect(value(4, 4)).toBeNull();
  });

  it("an input changed between the two syncs: what was written is taken back", async () => {
    const table = (await host.readTable(score))!;
    fake.between.set(2, () => job.cells.set("4,2", { value: 8.5 }));
    const said = await problem(host.writeCells(table, notes, care(table)));
    expect(said.code).toBe("changed");
    expect(lines()).toEqual([
      [10, "=not a formula"],
      [20, null],
      [30, true],
    ]);
    expect(job.cells.get("3,4")?.formula).toBeUndefined();
    expect(value(4, 2)).toBe(8.5);
  });

  it("ranges that do not follow: what went to other rows does not stay there", async () => {
    fake.follows = false;
    const table = (await host.readTable(score))!;
    fake.between.set(2, () => fake.insertRows(job, 1, 2));
    expect((await problem(host.writeCells(table, notes, care(table)))).code).toBe("changed");
    expect(lines().flat()).not.toContain("note 0");
  });

  it("a table that somebody moves away is gone", async () => {
    fake.addTable("Jobs", job, 2, 0, 4, 5);
    const table = (await host.readTable(score))!;
    fake.between.set(1, () => fake.moveTable("Jobs", 10, 1));
    expect((await problem(host.writeCells(table, notes, care(table)))).code).toBe("gone");
    expect(value(13, 1)).toBe(10);
    expect(value(13, 5)).toBe("=not a formula");
  });

  it("rows that others add under it: new rows are not put over them", async () => {
    const table = (await host.readTable(score))!;
    fake.between.set(1, () => job.cells.set("7,1", { value: "drill" }));
    expect((await problem(host.appendRows(table, [[40, "bore", 3, null, null]], 0, care(table).same))).code).toBe(
      "occupied",
    );
    expect(value(7, 1)).toBe("drill");
  });
});

describe("after a fault", () => {
  const changes: Change[] = [
    { row: 0, column: 2, value: 7 },
    { row: 1, column: 3, value: 21 },
  ];
  const broken = async (fault: NonNullable<FakeExcel["fault"]>) => {
    const table = (await host.readTable(score))!;
    fake.fault = fault;
    return host.writeCells(table, changes);
  };
  const now = () => [value(3, 2), value(4, 3)];
  const writes = () => fake.batches.at(-1)!.writes;

  it("says that nothing was written when nothing was", async () => {
    expect((await problem(broken({ sync: 2, at: "request" }))).message).toMatch(/ Nothing was written\.$/);
    expect((await problem(broken({ sync: 1, at: "request" }))).message).toMatch(/ Nothing was written\.$/);
    expect(now()).toEqual([6.8, null]);
  });

  it("says that all of it was written when only the answer was lost", async () => {
    expect((await broken({ sync: 2, at: "response" })).note).toMatch(/all of it is written/);
    expect(now()).toEqual([7, 21]);
  });

  it("takes back what was written when it stopped half way, and says so", async () => {
    await broken({ sync: 9, at: 0 });
    fake.fault = undefined;
    const last = writes().at(-1)!;
    job.cells.set("3,2", { value: 6.8 });
    job.cells.delete("4,3");
    expect((await problem(broken({ sync: 2, at: last }))).message).toMatch(
      /half way: what had been written was taken back\.$/,
    );
    expect(now()).toEqual([6.8, null]);
  });

  it("asks again when it is not answered at once, and owns up when it never is", async () => {
    expect((await broken({ sync: 2, at: "response", times: 3 })).note).toMatch(/all of it is written/);
    job.cells.set("3,2", { value: 6.8 });
    job.cells.delete("4,3");
    const said = await problem(broken({ sync: 2, at: "response", times: 99 }));
    expect(said.message).toMatch(/may have stopped half way.*press Ctrl\+Z/);
  });

  it("puts text back as text, dates and formulas as they were", async () => {
    job.cells.set("3,2", { value: "1/2" });
    job.cells.set("3,3", { value: 45_000, format: "d-mmm" });
    job.cells.set("4,2", { value: 3, formula: "=C4*2" });
    const table = (await host.readTable(score))!;
    const all = [2, 3].flatMap((column) => [0, 1].map((row): Change => ({ row, column, value: 9, format: "0.0" })));
    fake.between.set(2, () => job.cells.set("3,0", { value: 11 }));
    const agreed = [{ what: "formula", column: 2, heading: "Dia", cells: 1 }] as const;
    expect((await problem(host.writeCells(table, all, { ...care(table), agreed }))).code).toBe("changed");
    expect([value(3, 2), job.cells.get("3,3"), job.cells.get("4,2")?.formula]).toEqual([
      "1/2",
      { value: 45_000, format: "d-mmm" },
      "=C4*2",
    ]);
  });
});
