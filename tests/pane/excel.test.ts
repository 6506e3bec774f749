import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { RESULT_COLUMNS } from "../../src/table/columns.ts";
import { excelHost } from "../../taskpane/host/excel.ts";
import { planner } from "../../taskpane/work/planner.ts";
import { createSession } from "../../taskpane/work/session.ts";
import { emptyTable, STARTING_LISTS } from "../../taskpane/work/starting.ts";
import type { Session } from "../../taskpane/work/types.ts";
import { FakeExcel } from "../host/excel-fake/excel.ts";

/** Rows of the demo job that are used here: enough of each operation, few enough to be quick. */
const ROWS = 24;

describe("the session on Excel with the trade behind it", () => {
  let fake: FakeExcel;
  let session: Session;
  const job = DEMO.slice(0, ROWS + 1);
  const value = (row: number, column: number) => fake.sheet("Job")!.cells.get(`${row},${column}`)?.value ?? null;
  const formula = (row: number, column: number) => fake.sheet("Job")!.cells.get(`${row},${column}`)?.formula;
  const first = job[0]!.length + 1;
  const column = (key: string) => first + RESULT_COLUMNS.findIndex((c) => c.key === key);
  beforeEach(async () => {
    fake = new FakeExcel();
    fake.addSheet("Job", job);
    fake.addSheet("Materials", MATERIALS);
    fake.addSheet("Tools", TOOLS);
    fake.addSheet("Machines", MACHINES);
    fake.cursor = { row: 5, column: 2 };
    fake.install();
    session = createSession(excelHost(), planner);
    await session.refresh();
  });
  afterEach(() => {
    session.destroy();
    fake.uninstall();
  });

  it("writes a verdict, numbers and a basis for every row beside the table, in two syncs of writing", async () => {
    const before = fake.syncs;
    await session.writeNumbers();
    expect(session.store.get().message).toMatchObject({ kind: "done" });
    for (let row = 1; row <= ROWS; row++) {
      expect(value(row, column("verdict")), `row ${row}`).toMatch(/^(?:ok|check|stop)$/);
      expect(value(row, first + RESULT_COLUMNS.length)).toMatch(/^of /);
      expect(formula(row, first + RESULT_COLUMNS.length + 1)).toMatch(/^=IF\(OR\(/);
    }
    // Two readings, of all before and of the table after, and one read and one write of the fill.
    expect(fake.syncs - before).toBe(2 * 2 + 2);
    expect(fake.suspended).toEqual(["calculation", "screen"]);
  });

  it("says the same of a row alone as of the row in its table", async () => {
    await session.writeNumbers();
    const { plan } = session.store.get();
    expect(value(5, column("verdict"))).toBe(plan!.verdict);
    expect(value(5, column("spindleSpeed"))).toBe(plan!.results.spindleSpeed);
    expect(value(5, column("cost"))).toBe(plan!.results.cost);
  });

  it("fills the same block again after a change, without a second one", async () => {
    await session.writeNumbers();
    const speed = value(5, column("spindleSpeed"));
    const maxRpm = job[0]!.indexOf("Max rpm");
    fake.sheet("Job")!.cells.set(`5,${maxRpm}`, { value: 1500 });
    await session.writeNumbers();
    expect(session.store.get().message).toMatchObject({ kind: "done", text: expect.stringContaining("up to date") });
    expect(value(5, column("spindleSpeed"))).toBe(1500);
    expect(speed).not.toBe(1500);
    expect(value(0, first + RESULT_COLUMNS.length + 3)).toBeNull();
  });

  it("draws the quote's minutes by operation from the cells that hold them, beside the printed page", async () => {
    await session.writeQuote({ batch: 20, currency: "Taler" });
    expect(session.store.get().message).toMatchObject({ kind: "done" });
    const sheet = fake.sheet("Quote")!;
    const [bars] = sheet.charts;
    const column = ({ row, column, rows }: { row: number; column: number; rows: number }) =>
      Array.from({ length: rows }, (_, r) => sheet.cells.get(`${row + r},${column}`)?.value);
    const names = column(bars!.names!).map(String);
    expect(new Set(names)).toEqual(new Set(names.filter((name) => job.some((row) => row.includes(name)))));
    expect(sheet.cells.get(`${bars!.values.row},0`)?.value).toBe("By operation");
    expect(sheet.cells.get(`${bars!.values.row + bars!.values.rows},0`)?.value).toBe("By machine");
    // Every minute of the part is in one of the bars.
    const total = column(bars!.values).reduce<number>((sum, minutes) => sum + Number(minutes), 0);
    expect(total).toBeCloseTo(Number(sheet.cells.get("1,3")?.value), 9);
    expect(bars!.at!.column).toBeGreaterThan(sheet.page.area!.column + sheet.page.area!.columns - 1);
    expect(fake.tables.some((table) => table.sheet === sheet)).toBe(false);
  });

  it("writes one row out with its worksheet functions, as cells that can spill", async () => {
    await session.workOut();
    expect(session.store.get().message).toMatchObject({ kind: "done" });
    const sheet = fake.sheets.find((one) => one.name.startsWith("Worked"))!;
    const formulas = [...sheet.cells.values()].flatMap((cell) => cell.formula ?? []);
    expect(formulas.length).toBeGreaterThan(5);
    for (const text of formulas) expect(text).toMatch(/^=(?:TRANSPOSE\()?CUT\.[A-Z]+\(/);
    expect(fake.tables).toEqual([]);
  });

  it("gives an empty workbook lists and a table that it then recognises", async () => {
    session.destroy();
    fake.uninstall();
    fake = new FakeExcel();
    fake.addSheet("Sheet1");
    fake.install();
    session = createSession(excelHost(), planner);
    await session.refresh();
    expect(session.store.get().phase).toBe("none");
    await session.addLists(STARTING_LISTS);
    expect(session.store.get().message).toMatchObject({ kind: "done" });
    await session.addTable(emptyTable(session.store.get().lists));
    const rules = fake
      .sheet("Plan")!
      .validations.map(({ rule }) => (rule as { list: { source: unknown } }).list.source);
    expect(rules).toContain("mm,in");
    expect(rules.filter((source) => typeof source === "object")).toHaveLength(3);
    expect(session.store.get()).toMatchObject({ phase: "table", message: { kind: "done" } });
    expect(fake.tables.map((table) => table.name)).toEqual(["Materials", "Tools", "Machines", "Plan"]);
    expect(session.store.get().lists.map((list) => list?.rows.length)).toEqual([
      MATERIALS.length - 1,
      TOOLS.length - 1,
      MACHINES.length - 1,
    ]);
  });
});
