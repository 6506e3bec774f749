/** The live block in Excel: what it points at, and what it looks like. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { RESULT_COLUMNS } from "../../src/table/columns.ts";
import { excelHost } from "../../taskpane/host/excel.ts";
import { planner } from "../../taskpane/work/planner.ts";
import { createSession } from "../../taskpane/work/session.ts";
import { emptyTable, STARTING_LISTS } from "../../taskpane/work/starting.ts";
import type { Session } from "../../taskpane/work/types.ts";
import { FakeExcel } from "../host/excel-fake/excel.ts";

describe("the live block beside the table that the pane puts in", () => {
  let fake: FakeExcel;
  let session: Session;
  const state = () => session.store.get();
  const headings = () => state().table!.headings;
  const type = (row: number, heading: string, value: string | number) => {
    fake.sheet("Plan")!.cells.set(`${row},${headings().indexOf(heading)}`, { value });
  };
  beforeEach(async () => {
    fake = new FakeExcel();
    fake.addSheet("Sheet1");
    fake.install();
    session = createSession(excelHost(), planner);
    await session.refresh();
    await session.addLists(STARTING_LISTS);
    await session.addTable(emptyTable(state().lists));
    type(1, "Operation", "drill");
    type(1, "Units", "in");
    await session.refresh();
  });
  afterEach(() => {
    session.destroy();
    fake.uninstall();
  });

  it("points at the table and the lists by their names", async () => {
    await session.insertLive();
    expect(state().message).toMatchObject({ kind: "done" });
    const left = headings().length + 1;
    expect(fake.sheet("Plan")!.cells.get(`0,${left}`)?.formula).toBe(
      "=CUT.PLAN(Plan[#All],Materials[#All],Tools[#All],Machines[#All])",
    );
    // Told by its formula, and not put in twice.
    expect(state().beside?.formula).toMatch(/^=CUT\.PLAN/);
    await session.insertLive();
    expect(state().message).toMatchObject({ kind: "failed", text: "The live block is there already." });
  });

  it("has number formats where it spills, those of inches for a row in inches, and none on its headings", async () => {
    await session.insertLive();
    const left = headings().length + 1;
    const format = (row: number, key: string) =>
      fake.sheet("Plan")!.cells.get(`${row},${left + RESULT_COLUMNS.findIndex((c) => c.key === key)}`)?.format ??
      "General";
    expect([1, 20].map((row) => format(row, "feedPerTooth"))).toEqual(["0.00000", "0.00000"]);
    expect([format(0, "feedPerTooth"), format(1, "reasons"), format(21, "feedPerTooth")]).toEqual([
      "General",
      "General",
      "General",
    ]);
  });
});
