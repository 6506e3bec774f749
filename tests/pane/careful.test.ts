/** The session on the strict stand-in for Excel: what it asks, what it plans anew, and which rows it writes to. */
import { afterEach, describe, expect, it } from "vitest";
import { excelHost } from "../../taskpane/host/excel.ts";
import type { CellValue } from "../../taskpane/host/host.ts";
import { createSession } from "../../taskpane/work/session.ts";
import type { Session, Suggestion } from "../../taskpane/work/types.ts";
import { FakeExcel } from "../host/excel-fake/excel.ts";
import type { FakeSheet } from "../host/excel-fake/types.ts";
import { LISTS, PLAN_SHEET, samplePlanner } from "./sample.ts";

/** Columns: 10 RPM, 11 Table feed, 12 Inspector, 13 Verdict, 14 Basis, 15 Changed. */
const OWN: CellValue[][] = PLAN_SHEET.map((row, r) =>
  r < 2 ? row : [...row, ...(r === 2 ? ["Verdict", "Basis", "Changed"] : [null, null, null])],
);

let fake: FakeExcel;
let session: Session;
let plan: FakeSheet;
async function open(grid: CellValue[][] = OWN, prepare?: () => void, suggestions: Suggestion[] = []): Promise<void> {
  fake = new FakeExcel();
  plan = fake.addSheet("Plan", grid);
  for (const [name, rows] of Object.entries(LISTS)) fake.addSheet(name, rows);
  fake.cursor = { row: 4, column: 1 };
  prepare?.();
  fake.install();
  session = createSession(excelHost(), samplePlanner, function* () {
    yield;
    return suggestions;
  });
  await session.refresh();
}
afterEach(() => {
  session.destroy();
  fake.uninstall();
});
const message = () => session.store.get().message!;
const value = (row: number, column: number) => plan.cells.get(`${row},${column}`)?.value ?? null;
const formula = (row: number, column: number) => plan.cells.get(`${row},${column}`)?.formula;
/** By the number of the row: what stands in a column. */
const byRow = (column: number) =>
  Object.fromEntries(
    Array.from({ length: 12 }, (_, r) => [value(r, 0), value(r, column)] as const).filter(
      ([op]) => typeof op === "number",
    ),
  );
const idle = () => expect.poll(() => session.store.get().busy).toBe(false);

describe("formulas and values of the user's", () => {
  const withFormula = () => plan.cells.set("3,10", { value: 900, formula: "=Speed*12" });

  it("are asked about by the name of their column, and left as they are until then", async () => {
    await open(OWN, withFormula);
    await session.writeNumbers();
    expect(message()).toMatchObject({ kind: "asks", question: { points: ["“RPM”: 1 formula would be replaced"] } });
    expect([formula(3, 10), value(4, 10), value(3, 13)]).toEqual(["=Speed*12", null, null]);
  });

  it("are replaced after a yes", async () => {
    await open(OWN, withFormula);
    await session.writeNumbers();
    message().question!.answer([0]);
    await idle();
    expect(message()).toMatchObject({ kind: "done", text: "2 rows written: 1 ok, 1 check, 0 stop." });
    expect([formula(3, 10), value(3, 10), value(3, 13)]).toEqual([undefined, 2546.479, "check"]);
  });

  it("stay after a no, and the rest is written", async () => {
    await open(OWN, withFormula);
    await session.writeNumbers();
    message().question!.answer([]);
    await idle();
    expect(message().kind).toBe("done");
    expect([formula(3, 10), value(4, 10), value(3, 13)]).toEqual(["=Speed*12", 1528, "check"]);
  });

  it("stay with all the rest when the person backs out", async () => {
    await open(OWN, withFormula);
    await session.writeNumbers();
    message().question!.answer(undefined);
    expect(message().text).toBe("Nothing was written.");
    expect([formula(3, 10), value(4, 10)]).toEqual(["=Speed*12", null]);
  });

  const PATH = OWN.map((row, r) => (r === 2 ? row.map((cell) => (cell === "Inspector" ? "Path radius" : cell)) : row));
  it("of a column that the plan has nothing for are asked about before they are blanked", async () => {
    // A drilled row has no path radius.
    await open(PATH, () => plan.cells.set("4,12", { value: 3.5 }));
    await session.writeNumbers();
    expect(message().question?.points).toEqual(["“Path radius”: 1 value would be blanked"]);
    message().question!.answer([]);
    await idle();
    expect([value(4, 12), value(4, 13)]).toEqual([3.5, "ok"]);
  });

  it("are not asked about where an earlier fill wrote: the mark and its results are its own", async () => {
    await open(PATH);
    await session.writeNumbers();
    message().question!.answer([0]);
    await idle();
    expect(value(3, 12)).toBe(2.2934);
    plan.cells.set("3,2", { value: "drill" });
    await session.writeNumbers();
    expect(message()).toMatchObject({ kind: "done", text: "2 rows written: 2 ok, 0 check, 0 stop." });
    expect([value(3, 12), value(3, 13)]).toEqual([null, "ok"]);
  });
});

describe("rows that move while numbers are written", () => {
  it.each([1, 2, 3, 4])("numbers go to their rows when one comes in before sync %i", async (sync) => {
    await open();
    fake.between.set(sync, () => fake.insertRows(plan, 4, 1));
    await session.writeNumbers();
    expect(message()).toMatchObject({ kind: "done", text: "2 rows written: 1 ok, 1 check, 0 stop." });
    expect(byRow(13)).toEqual({ 10: "check", 20: "ok", 30: null });
    expect(byRow(10)).toEqual({ 10: 2546.479, 20: 1528, 30: null });
  });

  it("numbers go to a table that somebody has moved meanwhile", async () => {
    await open(OWN, () => fake.addTable("Jobs", plan, 2, 0, 3, 16));
    fake.between.set(3, () => {
      fake.moveTable("Jobs", 5, 2);
      fake.cursor = { row: 9, column: 3 };
    });
    await session.writeNumbers();
    expect(message()).toMatchObject({ kind: "done", text: "2 rows written: 1 ok, 1 check, 0 stop." });
    expect([value(8, 2), value(8, 15), value(9, 15)]).toEqual([10, "check", "ok"]);
    expect([value(3, 13), value(4, 13)]).toEqual([null, null]);
  });

  it("nothing is written to a table that changes each time, and the message says so", async () => {
    await open();
    for (let sync = 1; sync < 40; sync++) fake.between.set(sync, () => plan.cells.set("3,8", { value: 24 + sync }));
    await session.writeNumbers();
    expect(message()).toMatchObject({
      kind: "failed",
      text: expect.stringMatching(/has changed.*nothing was written/),
    });
    expect(byRow(13)).toEqual({ 10: null, 20: null, 30: null });
  });

  it("callouts go under the last row when one comes in before", async () => {
    await open();
    fake.between.set(3, () => fake.insertRows(plan, 4, 1));
    const { readCallouts } = await import("../../src/callouts/callouts.ts");
    await session.addCallouts(readCallouts("4X ⌀8.5 THRU", { units: "mm" }).rows);
    expect(message().kind).toBe("done");
    expect(value(6, 2)).toBe("drill");
    expect(byRow(2)).toEqual({ 10: "thread mill", 20: "drill", 30: "drill" });
  });
});

describe("a recalculation that is told late", () => {
  it("changes nothing of what was said and written", async () => {
    await open();
    fake.recalculates = true;
    await session.writeNumbers();
    const said = message();
    for (let turn = 0; turn < 60; turn++) await new Promise((done) => setTimeout(done));
    expect(message()).toBe(said);
    expect(byRow(13)).toEqual({ 10: "check", 20: "ok", 30: null });
  });
});

describe("a suggestion", () => {
  const depth: Suggestion = {
    change: "Less depth",
    before: "120 %",
    after: "80 %",
    writes: [{ key: "depth", value: 12.7 }],
  };
  const ready = async () => {
    await open(OWN, undefined, [depth]);
    await expect.poll(() => session.store.get().suggestions).toEqual([depth]);
  };

  it("goes to the row it was made for when rows have come in above it", async () => {
    await ready();
    fake.between.set(1, () => fake.insertRows(plan, 4, 1));
    await session.apply(depth);
    expect(message()).toMatchObject({ kind: "done", text: expect.stringContaining("line 6 of the sheet now") });
    expect(byRow(8)).toEqual({ 10: 24, 20: 0.5, 30: null });
  });

  it("goes to its row also when rows come in between the reading and the writing", async () => {
    await ready();
    fake.between.set(4, () => fake.insertRows(plan, 1, 1));
    await session.apply(depth);
    expect(message().kind).toBe("done");
    expect(byRow(8)).toEqual({ 10: 24, 20: 0.5, 30: null });
  });

  it("is not written into a row that has changed since, and is into one whose neighbour has", async () => {
    await ready();
    plan.cells.set("4,9", { value: 0.3 });
    await session.apply(depth);
    expect(message()).toMatchObject({ kind: "failed", text: expect.stringContaining("changed since") });
    expect(byRow(8)).toEqual({ 10: 24, 20: 0.75, 30: null });
    session.destroy();
    fake.uninstall();
    await ready();
    plan.cells.set("3,9", { value: 0.3 });
    await session.apply(depth);
    expect(byRow(8)).toEqual({ 10: 24, 20: 0.5, 30: null });
  });

  it("tells its row from a twin by number and name, wherever they are now", async () => {
    const twins = OWN.map((row, r) => (r === 3 ? [10, "Dowel", ...OWN[4]!.slice(2)] : row));
    await open(twins, undefined, [depth]);
    await expect.poll(() => session.store.get().suggestions).toEqual([depth]);
    // Row 10, its twin, stands where row 20 stood.
    fake.between.set(1, () => fake.insertRows(plan, 3, 1));
    await session.apply(depth);
    expect(byRow(8)).toEqual({ 10: 0.75, 20: 0.5, 30: null });
  });

  it("asks before it replaces a formula", async () => {
    await ready();
    plan.cells.set("4,8", { value: 0.75, formula: "=H5/2" });
    await session.apply(depth);
    expect(message().question?.points).toEqual(["“Depth”: 1 formula would be replaced"]);
    expect(formula(4, 8)).toBe("=H5/2");
    message().question!.answer([0]);
    await idle();
    expect([formula(4, 8), value(4, 8)]).toEqual([undefined, 0.5]);
  });
});

describe("totals", () => {
  it("of a Table are not planned, and their sums stay", async () => {
    await open(OWN, () => {
      const table = fake.addTable("Jobs", plan, 2, 0, 3, 16);
      table.totals = true;
      plan.cells.set("6,0", { value: "Total" });
      plan.cells.set("6,2", { value: "drill" });
      plan.cells.set("6,10", { value: 0, formula: "=SUBTOTAL(109,[RPM])" });
    });
    await session.writeNumbers();
    expect(message()).toMatchObject({ kind: "done", text: "2 rows written: 1 ok, 1 check, 0 stop." });
    expect([formula(6, 10), value(6, 13), value(5, 13)]).toEqual(["=SUBTOTAL(109,[RPM])", null, null]);
  });
});

describe("a block beside the table", () => {
  it("loses the lines of rows that the table no longer has", async () => {
    const plain = PLAN_SHEET.map((row) => row.filter((_, c) => row.length < 4 || (c !== 10 && c !== 11)));
    await open(plain);
    await session.writeNumbers();
    expect(byRow(13)).toEqual({ 10: "check", 20: "ok", 30: null });
    for (let c = 0; c < 11; c++) {
      plan.cells.delete(`4,${c}`);
      plan.cells.delete(`5,${c}`);
    }
    await session.writeNumbers();
    expect(message().kind).toBe("done");
    expect([value(3, 13), value(4, 13)]).toEqual(["check", null]);
  });
});
