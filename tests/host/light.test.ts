/** How little of a workbook is touched: syncs and bytes, counted by the strict stand-in for Excel. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { excelHost } from "../../taskpane/host/excel.ts";
import type { CellValue } from "../../taskpane/host/host.ts";
import { createSession } from "../../taskpane/work/session.ts";
import type { Planner, Session } from "../../taskpane/work/types.ts";
import { DRILL_PLAN } from "../pane/sample.ts";
import { FakeExcel } from "./excel-fake/excel.ts";

const [HEAD = [], ...JOB] = DEMO;
const ROWS: CellValue[][] = Array.from({ length: 400 }, (_, i) =>
  JOB[i % JOB.length]!.map((cell, c) => (c === 0 ? i + 1 : cell)),
);
const bytesOf = (value: unknown) => Buffer.byteLength(JSON.stringify(value));
/** Names, places and brackets that come with any answer. */
const FRAME = 250;

describe("light on the workbook", () => {
  let fake: FakeExcel;
  let session: Session;
  let planned: number;
  let from = 0;
  /** Lets all that is due happen, however long it is put off. */
  const rest = () => vi.runAllTimersAsync();
  /** Syncs and bytes since the last call. */
  const since = () => {
    const some = fake.batches.slice(from);
    from = fake.batches.length;
    const sum = (side: "request" | "response") => some.reduce((total, batch) => total + batch[side], 0);
    return { syncs: some.length, read: sum("response"), sent: sum("request") };
  };
  const select = (row: number, column = 2) => {
    fake.cursor = { row, column };
    fake.fire("selection", {});
  };
  const activate = (name: string) => {
    fake.active = fake.sheets.findIndex((sheet) => sheet.name === name);
    fake.fire("activated", {});
    select(5);
  };
  const type = (name: string, row: number, column: number, value: CellValue, address: string) => {
    const sheet = fake.sheet(name)!;
    sheet.cells.set(`${row},${column}`, { value });
    fake.changed("user", { sheet, address });
  };
  const state = () => session.store.get();

  beforeEach(() => {
    vi.useFakeTimers();
    fake = new FakeExcel();
    from = 0;
    fake.addSheet("Job", [HEAD, ...ROWS]);
    fake.addSheet("Materials", MATERIALS);
    fake.addSheet("Tools", TOOLS);
    fake.addSheet("Machines", MACHINES);
    fake.addSheet(
      "Stock",
      Array.from({ length: 3000 }, (_, r) => ["bar", r, "rack", r % 7, "Harrow Lane", r * 2]),
    );
    fake.cursor = { row: 5, column: 2 };
    fake.install();
    planned = 0;
    const plan: Planner = (blocks) => {
      planned++;
      return blocks.rows.slice(1).map(() => DRILL_PLAN);
    };
    session = createSession(excelHost(), plan);
  });
  afterEach(() => {
    session.destroy();
    fake.uninstall();
    vi.useRealTimers();
  });
  const open = async () => {
    session.open();
    await rest();
    since();
  };

  it("reads nothing before the pane is shown", async () => {
    fake.pane("Hidden");
    session.open();
    await rest();
    expect(since()).toEqual({ syncs: 0, read: 0, sent: 0 });
    expect(state().phase).toBe("reading");
    fake.pane("Taskpane");
    await rest();
    expect(state().phase).toBe("table");
  });

  it("opens with two syncs that read, and two that listen", async () => {
    session.open();
    await rest();
    const { syncs, read } = since();
    expect(syncs).toBe(4);
    const contents = bytesOf([HEAD, ...ROWS, ...MATERIALS, ...TOOLS, ...MACHINES]);
    expect(read).toBeLessThan(1.2 * contents);
    expect(state().lists.map((list) => list?.rows.length)).toEqual([
      MATERIALS.length - 1,
      TOOLS.length - 1,
      MACHINES.length - 1,
    ]);
    expect(state().table?.rows).toEqual(ROWS.map((row) => row.map((cell) => cell ?? null)));
  });

  it("reads the row and the headings at a click, and no more", async () => {
    await open();
    const before = planned;
    select(301);
    await rest();
    const { syncs, read } = since();
    expect(syncs).toBe(1);
    expect(read).toBeLessThan(bytesOf(HEAD) + bytesOf(ROWS[300]) + FRAME);
    expect(state().table?.selected).toBe(300);
    expect(planned).toBe(before + 1);
  });

  it("reads at a click what was edited in that row meanwhile", async () => {
    await open();
    fake.sheet("Job")!.cells.set(`301,${HEAD.indexOf("Operation")}`, { value: "face" });
    select(301);
    await rest();
    expect(state().table?.rows[300]?.[HEAD.indexOf("Operation")]).toBe("face");
  });

  it("reads again the rows that were edited, not the table", async () => {
    await open();
    const depth = HEAD.indexOf("Depth");
    type("Job", 12, depth, 17.5, "L13:L14");
    type("Job", 13, depth, 18.5, "L13:L14");
    await rest();
    const { syncs, read } = since();
    expect(syncs).toBe(1);
    expect(read).toBeLessThan(bytesOf([HEAD, ROWS[4], ROWS[11], ROWS[12]]) + FRAME);
    expect([11, 12].map((row) => state().table?.rows[row]?.[depth])).toEqual([17.5, 18.5]);
  });

  it("takes in a row that was typed below the table", async () => {
    await open();
    type("Job", 401, 2, "drill", "C402");
    await rest();
    expect(state().table?.rows).toHaveLength(401);
  });

  it("asks one small question of a sheet without a plan, and none of it again that was answered", async () => {
    await open();
    activate("Stock");
    await rest();
    const { syncs, read } = since();
    expect(syncs).toBe(1);
    // Sixty rows and the surroundings of the cell, of three thousand.
    expect(read).toBeLessThan(bytesOf(Array.from({ length: 66 }, () => ["bar", 3000, "rack", 6, "Harrow Lane", 6000])));
    expect(state().phase).toBe("none");
    fake.addSheet("Note", [["Ring the customer", "before Friday"]]);
    activate("Note");
    await rest();
    expect(since().syncs).toBe(1);
    select(30);
    await rest();
    expect(since().syncs).toBe(0);
  });

  it("reads the lists in one go when one has changed, and nothing else", async () => {
    await open();
    type("Tools", 1, 0, "EM 99", "A2");
    await rest();
    const { syncs, read } = since();
    expect(syncs).toBe(2);
    expect(read).toBeLessThan(1.2 * bytesOf([...MATERIALS, ...TOOLS, ...MACHINES]) + FRAME);
    expect(state().lists[1]?.rows[0]?.[0]).toBe("EM 99");
  });

  it("does not stir for cells that nothing hangs on", async () => {
    await open();
    select(301);
    await rest();
    since();
    fake.fire("calculated", { worksheetId: fake.sheet("Machines")!.id });
    await rest();
    expect(since().syncs).toBe(2);
    // Known by now, and neither the plan's sheet nor one of a list.
    type("Stock", 7, 1, 3, "B8");
    fake.fire("calculated", { worksheetId: fake.sheet("Stock")!.id });
    await rest();
    expect(since().syncs).toBe(0);
    // Beside a list, on its sheet.
    type("Tools", 90, 60, "note", "BI91");
    await rest();
    expect(since().syncs).toBe(0);
  });

  it("reads nothing while the pane is hidden, and then what has changed meanwhile", async () => {
    await open();
    fake.pane("Hidden");
    type("Tools", 1, 0, "EM 98", "A2");
    select(301);
    await rest();
    expect(since().syncs).toBe(0);
    fake.pane("Taskpane");
    await rest();
    // Names, and the lists; the selected row.
    expect(since().syncs).toBeLessThanOrEqual(3);
    expect(state().lists[1]?.rows[0]?.[0]).toBe("EM 98");
    expect(state().table?.selected).toBe(300);
    fake.pane("Hidden");
    fake.pane("Taskpane");
    await rest();
    expect(since().syncs).toBe(0);
  });

  it("writes a table's numbers in two syncs, with one formula and not one for each row", async () => {
    await open();
    let syncs = 0;
    let sent = 0;
    const run = (globalThis as any).Excel.run;
    (globalThis as any).Excel.run = async (options: unknown, batch: unknown) => {
      const at = fake.batches.length;
      const answer = await run(options, batch);
      const some = fake.batches.slice(at);
      if (some.some(({ writes }) => writes.length > 0)) {
        syncs += some.length;
        sent += some.reduce((total, { request }) => total + request, 0);
      }
      return answer;
    };
    await session.writeNumbers();
    (globalThis as any).Excel.run = run;
    expect(state().message).toMatchObject({ kind: "done" });
    expect(syncs).toBe(2);
    const own = [...fake.sheet("Job")!.cells].filter(([key]) => Number(key.split(",")[1]) > HEAD.length);
    const values = own.filter(([, cell]) => cell.formula === undefined);
    const formulas = own.flatMap(([, cell]) => cell.formula ?? []);
    expect(formulas).toHaveLength(ROWS.length);
    // Values once, one formula, and a few bytes for each blank and for each format.
    expect(sent).toBeLessThan(
      values.reduce((sum, [, cell]) => sum + bytesOf(cell.value) + 3, 0) + bytesOf(formulas[0]) + 3 * 400 * 40 + 8000,
    );
    expect(
      new Set(formulas.map((text, i) => text.replace(/(?<=[A-Z])\d+/g, (row) => String(Number(row) - i)))).size,
    ).toBe(1);
  });
});
