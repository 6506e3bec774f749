/** What Excel is asked before anything is written: each refusal, with a neighbour that is written. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { excelHost } from "../../taskpane/host/excel.ts";
import { type Change, type Host, HostError } from "../../taskpane/host/host.ts";
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
const text = (sheet: FakeSheet) =>
  JSON.stringify(
    [...sheet.cells]
      .filter(([, cell]) => cell.value !== null || cell.formula !== undefined)
      .map(([key, { value, formula, format }]) => [key, value, formula, format ?? "General"])
      .sort(),
  );

describe("before anything is written", () => {
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

  /** Two columns of the row in question; the row above or below is the neighbour. */
  const row = (r: number): Change[] => [
    { row: r, column: 2, value: 7, format: "0.0" },
    { row: r, column: 3, value: 21, format: "0.0" },
  ];
  const refused = async (changes: readonly Change[], code: string, words: RegExp) => {
    const table = (await host.readTable(score))!;
    const before = text(job);
    const said = await problem(host.writeCells(table, changes));
    expect(said.code).toBe(code);
    expect(said.message).toMatch(words);
    expect(said.message).toMatch(/nothing was written/i);
    expect(text(job)).toBe(before);
    return table;
  };
  const written = async (changes: readonly Change[]) => {
    await host.writeCells((await host.readTable(score))!, changes);
    for (const { row: r, column, value } of changes) expect(job.cells.get(`${3 + r},${column}`)?.value).toBe(value);
  };

  it("merged cells in the way", async () => {
    job.merged.push({ sheet: job, row: 3, column: 3, rows: 1, columns: 2 });
    await refused(row(0), "occupied", /^Cell Job D4 is merged/);
    await written(row(1));
    // Merged cells that are not written are nobody's business.
    await written([{ row: 0, column: 2, value: 7 }]);
  });

  it("merged cells on a version that cannot be asked for them: what does not stand is taken back", async () => {
    fake.version = "1.12";
    job.merged.push({ sheet: job, row: 3, column: 3, rows: 1, columns: 2 });
    const table = (await host.readTable(score))!;
    const before = text(job);
    const said = await problem(host.writeCells(table, [...row(0), { row: 0, column: 4, value: "ok" }]));
    expect(said.message).toMatch(/taken back/);
    expect(text(job)).toBe(before);
    await written(row(1));
  });

  it("rows that a filter hides, and no others", async () => {
    job.filtered = true;
    job.hidden.add(4);
    await refused(row(1), "failed", /^A filter hides rows/);
    await written(row(0));
    // Rows that a person hid are no filter's.
    job.filtered = false;
    await written(row(1));
  });

  it("rows that the filter of a Table hides", async () => {
    const table = fake.addTable("Jobs", job, 2, 0, 4, 5);
    table.filtered = true;
    job.hidden.add(6);
    await refused(row(3), "failed", /^A filter hides rows/);
    await written(row(0));
  });

  it("locked cells of a protected sheet; unlocked ones are written, and keep their formats", async () => {
    job.protected = true;
    for (const column of [2, 3])
      job.cells.set(`4,${column}`, { ...job.cells.get(`4,${column}`)!, value: 1, locked: false });
    await refused(row(0), "protected", /^The sheet "Job" is protected/);
    await written(row(1));
    expect(job.cells.get("4,2")?.format).toBeUndefined();
  });

  it("cells that a formula spills into, and its own cell", async () => {
    fake.calculate = (formula) => (formula === "=SEQ()" ? [[1], [2]] : undefined);
    job.cells.delete("3,2");
    job.cells.delete("4,2");
    const table = (await host.readTable(score))!;
    await host.writeCells(table, [{ row: 0, column: 2, value: { formula: "=SEQ()" } }]);
    expect([job.cells.get("3,2")?.value, job.cells.get("4,2")?.value]).toEqual([1, 2]);
    await refused([{ row: 1, column: 2, value: 7 }], "occupied", /^Cells from Job C5 on are filled by a formula/);
    expect(job.cells.get("3,2")?.value).toBe(1);
    await written([{ row: 1, column: 3, value: 7 }]);
  });

  it("parts of a fixed array, also where the person said yes to the formula", async () => {
    for (const r of [3, 4]) job.cells.set(`${r},3`, { value: 5, formula: "=C4:C5*2", array: "D4:D5" });
    const table = (await host.readTable(score))!;
    const agreed = [{ what: "formula", column: 3, heading: "Depth", cells: 2 }] as const;
    const both = [0, 1].map((r): Change => ({ row: r, column: 3, value: 9 }));
    const said = await problem(host.writeCells(table, both, { agreed }));
    expect(said.message).toMatch(/^Cell Job D4 is part of a fixed array formula.*nothing was written/);
    expect(job.cells.get("3,3")?.value).toBe(5);
    // The same formula filled down reads differently in each row.
    job.cells.set("3,3", { value: 5, formula: "=C4*2" });
    job.cells.set("4,3", { value: 5, formula: "=C5*2" });
    await host.writeCells(table, both, { agreed });
    expect(job.cells.get("4,3")?.value).toBe(9);
  });

  it("a fixed array that only Excel knows of: half a write is taken back", async () => {
    for (const r of [4, 5]) job.cells.set(`${r},3`, { value: 5, formula: "=$C$4:$C$5*2", array: "D5:D6" });
    const table = (await host.readTable(score))!;
    const before = text(job);
    const agreed = [{ what: "formula", column: 3, heading: "Depth", cells: 1 }] as const;
    const changes = [{ row: 0, column: 2, value: 7 }, ...row(1).slice(1)];
    const said = await problem(host.writeCells(table, changes, { agreed }));
    expect(said.message).toMatch(/taken back/);
    expect(text(job)).toBe(before);
  });

  it("numbers into a column of text become numbers, and a text stays text", async () => {
    for (const r of [3, 4]) job.cells.set(`${r},3`, { value: "x", format: "@" });
    const table = (await host.readTable(score))!;
    await host.writeCells(table, [
      { row: 0, column: 3, value: 21 },
      { row: 1, column: 3, value: "1/4-20" },
    ]);
    expect(job.cells.get("3,3")).toMatchObject({ value: 21, format: "General" });
    expect(job.cells.get("4,3")).toMatchObject({ value: "1/4-20", format: "@" });
  });

  it("a formula without room is taken out again", async () => {
    job.merged.push({ sheet: job, row: 10, column: 7, rows: 1, columns: 2 });
    fake.calculate = (formula) => (formula === "=SEQ()" ? [[1, 2, 3]] : undefined);
    const before = text(job);
    const said = await problem(host.insertFormula({ sheet: "Job", row: 10, column: 6 }, "=SEQ()", [1, 3]));
    expect(said.message).toMatch(/^The formula in Job G11 has no room.*taken back/);
    expect(text(job)).toBe(before);
    await host.insertFormula({ sheet: "Job", row: 11, column: 6 }, "=SEQ()", [1, 3]);
    expect(job.cells.get("11,8")?.value).toBe(3);
  });

  describe("of a Table", () => {
    beforeEach(() => {
      const table = fake.addTable("Jobs", job, 2, 0, 4, 5);
      table.totals = true;
      job.cells.set("7,0", { value: "Total" });
      job.cells.set("7,2", { value: 38.8, formula: "=SUBTOTAL(109,[Dia])" });
    });

    it("the totals are no row to be planned, and go down with new rows", async () => {
      const table = (await host.readTable(score))!;
      expect(table.rows).toHaveLength(4);
      await host.appendRows(table, [[40, "drill", 3, null, null]]);
      expect([job.cells.get("7,0")?.value, job.cells.get("8,2")?.formula]).toEqual([40, "=SUBTOTAL(109,[Dia])"]);
    });

    it("what stands below the totals is not pushed down", async () => {
      job.cells.set("8,3", { value: "notes" });
      const table = (await host.readTable(score))!;
      const before = text(job);
      const said = await problem(host.appendRows(table, [[40, "drill", 3, null, null]]));
      expect(said.message).toMatch(/^Cell Job D9 is in the way/);
      expect(text(job)).toBe(before);
    });

    it("a protected sheet lets no table grow, though its cells are unlocked", async () => {
      job.protected = true;
      for (let c = 0; c < 5; c++) job.cells.set(`7,${c}`, { value: null, locked: false });
      const table = (await host.readTable(score))!;
      expect((await problem(host.appendRows(table, [[40, "drill", 3, null, null]]))).code).toBe("protected");
    });
  });

  it("a formula that fills its column is the same in every row: nothing else is put there", async () => {
    const own = fake.addSheet("Own", [
      ["Op", "Operation", "Dia", "Changed"],
      [10, "drill", 5, null],
      [20, null, null, null],
      [30, "drill", 7, null],
    ]);
    fake.addTable("Own", own, 0, 0, 3, 4);
    fake.active = fake.sheets.length - 1;
    fake.cursor = { row: 1, column: 0 };
    const table = (await host.readTable(score))!;
    const marks = [0, 2].map((r): Change => ({ row: r, column: 3, value: { formula: `=IF($C${r + 2}="","","x")` } }));
    await host.writeCells(table, marks);
    expect([1, 2, 3].map((r) => own.cells.get(`${r},3`)?.formula)).toEqual([
      '=IF($C2="","","x")',
      '=IF($C3="","","x")',
      '=IF($C4="","","x")',
    ]);
  });
});
