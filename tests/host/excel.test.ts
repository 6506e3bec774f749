import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { rectangles } from "../../taskpane/host/excel/cells.ts";
import { toHostError } from "../../taskpane/host/excel/errors.ts";
import { excelReady, officeIsDark } from "../../taskpane/host/excel/versions.ts";
import { excelHost } from "../../taskpane/host/excel.ts";
import { type Host, HostError } from "../../taskpane/host/host.ts";
import { type Bench, contract, SHEETS, type Sheets } from "./contract.ts";
import { FakeExcel } from "./excel-fake/excel.ts";

function openFake(sheets: Sheets): { fake: FakeExcel; host: Host } {
  const fake = new FakeExcel();
  for (const [name, grid] of Object.entries(sheets)) fake.addSheet(name, grid);
  fake.install();
  return { fake, host: excelHost() };
}

/** Lets everything that is due go on: the fake's events wait one turn each, and what they set off a few more. */
const settle = async () => {
  for (let turn = 0; turn < 10; turn++) await new Promise((done) => setTimeout(done));
};

contract("excel", async (sheets): Promise<Bench> => {
  const { fake, host } = openFake(sheets);
  const cell = (sheet: string, row: number, column: number) => fake.sheet(sheet)?.cells.get(`${row},${column}`);
  return {
    host,
    probe: {
      async type(sheet, row, column, content) {
        const formula = typeof content === "string" && content.startsWith("=") ? content : undefined;
        const cell = formula === undefined ? { value: content } : { value: "", formula };
        fake.sheet(sheet)!.cells.set(`${row},${column}`, cell);
        fake.changed("user");
      },
      value: async (sheet, row, column) => cell(sheet, row, column)?.value ?? null,
      formula: async (sheet, row, column) => cell(sheet, row, column)?.formula ?? "",
      format: async (sheet, row, column) => cell(sheet, row, column)?.format ?? "General",
      async select(sheet, row, column) {
        fake.active = fake.sheets.findIndex((s) => s.name === sheet);
        fake.cursor = { row, column };
        fake.fire("selection", {});
      },
      activeSheet: async () => fake.sheets[fake.active]!.name,
      sheets: async () => fake.sheets.map((sheet) => sheet.name),
      settle,
    },
    async close() {
      fake.uninstall();
    },
  };
});

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

describe("the Excel host", () => {
  let fake: FakeExcel;
  let host: Host;
  beforeEach(() => {
    ({ fake, host } = openFake(SHEETS));
  });
  afterEach(() => {
    vi.useRealTimers();
    fake.uninstall();
  });

  it("reads the table in one sync, and writes in one read and one write sync", async () => {
    const table = (await host.readTable(score))!;
    expect(fake.syncs).toBe(1);
    const changes = table.rows.flatMap((_, row) =>
      [2, 3].map((column) => ({ row, column, value: row + column, format: "0.0" })),
    );
    await host.writeCells(table, changes);
    expect(fake.syncs).toBe(3);
  });

  it("holds calculation and screen during a fill", async () => {
    const table = (await host.readTable(score))!;
    await host.writeCells(table, [{ row: 0, column: 2, value: 1 }]);
    expect(fake.suspended).toEqual(["calculation", "screen"]);
  });

  it("says that a sheet is protected, and writes nothing on it", async () => {
    const table = (await host.readTable(score))!;
    fake.sheet("Job")!.protected = true;
    const refused = await problem(host.writeCells(table, [{ row: 0, column: 2, value: 1 }]));
    expect(refused.code).toBe("protected");
    expect(refused.message).toMatch(/"Job" is protected; nothing was written\. Unprotect it/);
    expect((await problem(host.insertCells({ sheet: "Job", row: 20, column: 0 }, [["x"]]))).code).toBe("protected");
    expect((await problem(host.insertFormula({ sheet: "Job", row: 20, column: 0 }, "=1", [1, 1]))).code).toBe(
      "protected",
    );
    expect(fake.sheet("Job")!.cells.get("3,2")?.value).toBe(6.8);
    expect(fake.sheet("Job")!.cells.has("20,0")).toBe(false);
  });

  it("adds no sheet to a workbook whose structure is protected", async () => {
    fake.structureProtected = true;
    expect((await problem(host.addSheet({ name: "Tools", headings: ["Tool", "Kind"], rows: [] }))).code).toBe(
      "protected",
    );
    expect(fake.sheet("Tools")).toBeUndefined();
  });

  it("says that the table is gone when its sheet is deleted", async () => {
    const table = (await host.readTable(score))!;
    fake.sheets.splice(0, 1);
    expect((await problem(host.writeCells(table, [{ row: 0, column: 2, value: 1 }]))).code).toBe("gone");
  });

  it("waits while a cell is being edited", async () => {
    let stopEditing = () => {};
    fake.editing = new Promise<void>((done) => {
      stopEditing = done;
    });
    let read = false;
    const reading = host.readTable(score).then(() => {
      read = true;
    });
    await settle();
    expect(read).toBe(false);
    stopEditing();
    await reading;
    expect(read).toBe(true);
  });

  it.each([
    ["AccessDenied", "protected"],
    ["ItemNotFound", "gone"],
    ["InvalidOperationInCellEditMode", "editing"],
    ["ApiNotFound", "unsupported"],
    ["RequestPayloadSizeLimitExceeded", "failed"],
    ["GeneralException", "failed"],
  ])("turns %s into a sentence that says what to do", async (code, ours) => {
    fake.fault = { sync: 1, at: "request", code };
    const refused = await problem(host.readTable(score));
    expect(refused.code).toBe(ours);
    expect(refused.message).toMatch(/[Tt]ry again|Unprotect|Update|Split|Select/);
    expect(refused.message).not.toMatch(/undefined|Error:/);
  });

  it("keeps what it already understands, and has a sentence for anything thrown", () => {
    const own = new HostError("occupied", "Cell B2 is in the way.");
    expect(toHostError(own)).toBe(own);
    for (const thrown of [new Error("boom"), "boom", null, undefined, 7, { code: 7 }])
      expect(toHostError(thrown).message).toMatch(/^Excel could not do it/);
  });

  it("writes text as text where Excel would make a date, a number or a truth value of it", async () => {
    const texts = ["1/2", "3-4", "12", "TRUE", "-5 off", "+x", "'quoted", "ok", "M12x1.75", "0.31 · 0.44", "=SUM(A1)"];
    await host.insertCells(
      { sheet: "Empty", row: 0, column: 0 },
      texts.map((text) => [text]),
    );
    expect(texts.map((_, r) => fake.sheet("Empty")!.cells.get(`${r},0`)?.value)).toEqual(texts);
    expect([...fake.sheet("Empty")!.cells.values()].filter((cell) => cell.formula !== undefined)).toEqual([]);
  });

  it("makes a table of an added list, with words to choose from, and adds rows to the table", async () => {
    const kinds = ["drill", "end mill"];
    await host.addSheet({
      name: "Tools",
      headings: ["Tool", "Kind"],
      rows: [["D 5", "drill"]],
      choices: [undefined, kinds],
    });
    expect(fake.tables.map((table) => table.name)).toEqual(["Tools"]);
    expect(fake.sheet("Tools")!.frozen).toBe(1);
    expect(fake.sheet("Tools")!.validations[0]?.rule).toEqual({
      list: { inCellDropDown: true, source: "drill,end mill" },
    });
    const list = (await host.readList("Tools"))!;
    expect(list.reference).toBe("Tools[#All]");
    await host.appendRows(list, [
      ["D 6", "drill"],
      ["D 7", "drill"],
    ]);
    expect(fake.tables[0]!.rows).toBe(3);
    expect((await host.readList("Tools"))!.rows.map((row) => row[0])).toEqual(["D 5", "D 6", "D 7"]);
  });

  it("grows a table so that its calculated columns go on, and adds rows the older way where it must", async () => {
    for (const [version, calculated] of [
      ["1.17", "=C4*2"],
      ["1.9", undefined],
    ] as const) {
      const name = `T${version.replace(".", "_")}`;
      const sheet = fake.addSheet(name, [
        ["Op", "Operation", "Dia", "Twice"],
        [10, "drill", 5, null],
      ]);
      sheet.cells.set("1,3", { value: 10, formula: "=C2*2" });
      fake.addTable(name, sheet, 0, 0, 1, 4);
      fake.active = fake.sheets.length - 1;
      fake.cursor = { row: 1, column: 0 };
      fake.version = version;
      const table = (await host.readTable(score))!;
      const runs = fake.runs.length;
      await host.appendRows(table, [
        [20, "drill", 6, null],
        [30, "drill", 7, null],
      ]);
      expect(fake.runs.length).toBe(runs + 1);
      expect(fake.tables.at(-1)!.rows).toBe(3);
      expect(sheet.cells.get("3,2")?.value).toBe(7);
      expect(sheet.cells.get("3,3")?.formula).toBe(calculated);
      expect(sheet.cells.get("1,3")?.formula).toBe("=C2*2");
    }
  });

  it("does not push down or write over what stands below a table, nor a formula that shows nothing", async () => {
    const sheet = fake.addSheet("Own", [
      ["Op", "Operation"],
      [10, "drill"],
      [20, null],
    ]);
    fake.addTable("Own", sheet, 0, 0, 2, 2);
    fake.active = fake.sheets.length - 1;
    fake.cursor = { row: 1, column: 0 };
    const table = (await host.readTable(score))!;
    sheet.cells.set("4,1", { value: "notes" });
    const rows = [[30, "drill"] as const, [40, "drill"] as const];
    expect((await problem(host.appendRows(table, rows))).message).toMatch(/^Cell Own B5 is in the way/);
    expect([fake.tables.at(-1)!.rows, sheet.cells.get("4,1")?.value]).toEqual([2, "notes"]);
    sheet.cells.delete("4,1");
    sheet.cells.set("2,1", { value: "", formula: '=IF(A3>50,"late","")' });
    expect((await problem(host.appendRows(table, [[null, "drill"]], 1))).code).toBe("occupied");
    expect(sheet.cells.get("2,1")?.formula).toMatch(/^=IF/);
  });

  it("stops where the answers for new rows would have no room", async () => {
    const table = (await host.readTable(score))!;
    const job = fake.sheet("Job")!;
    job.cells.set("2,6", { value: "Row", formula: "=CUT.PLAN(Job!$A$3:$E$7)" });
    job.cells.set("2,7", { value: "Verdict" });
    job.cells.set("8,7", { value: "mine" });
    const rows = [[40, "drill"] as const, [50, "drill"] as const];
    expect((await problem(host.appendRows(table, rows))).message).toMatch(/^Cell Job H9 is in the way/);
    expect(job.cells.has("7,0")).toBe(false);
    job.cells.delete("8,7");
    await host.appendRows(table, rows);
    expect(job.cells.get("2,6")?.formula).toBe("=CUT.PLAN(Job!$A$3:$E$9)");
  });

  it("takes the words of a choice from a range of another sheet", async () => {
    await host.addSheet({
      name: "Plan",
      headings: ["Row", "Material"],
      rows: [[1, null]],
      choices: [undefined, "Materials!$A$2:$A$3"],
    });
    expect(fake.sheet("Plan")!.validations).toHaveLength(1);
  });

  it("leaves a sheet with formulas without a table, as a list of answers cannot spill inside one", async () => {
    await host.addSheet({
      name: "Worked 10",
      headings: ["Step", "Again"],
      rows: [["Speed", { formula: '=CUT.RPM(60,8,"mm")' }]],
    });
    expect(fake.tables).toEqual([]);
  });

  const page = {
    name: "Quote",
    headings: ["Section", "Item", "Minutes"],
    rows: [
      ["By part", "total", 12],
      ["By operation", "drill", 7.5],
      [null, "thread mill", 4.5],
    ],
    formats: [undefined, undefined, "0.00"],
    rowFormats: ["0"],
    page: true,
    chart: { title: "Minutes", names: 1, values: 2, from: 1, count: 2 },
  } as const;

  it("dresses a page for paper: no table to sort, one page across, the headings on each", async () => {
    await host.addSheet(page, true);
    const made = fake.sheet("Quote")!;
    expect(fake.tables.filter((t) => t.sheet === made)).toEqual([]);
    expect(made.page).toMatchObject({
      titleRows: "$1:$1",
      across: 1,
      area: { row: 0, column: 0, rows: 4, columns: 3 },
    });
    expect(made.bold).toMatchObject([{ row: 0, rows: 1, columns: 3 }]);
    expect([1, 2, 3].map((r) => made.cells.get(`${r},2`)?.format)).toEqual(["0", "0.00", "0.00"]);
  });

  it("draws the bars from the cells of the sheet, in their order, beside the block and off the printed page", async () => {
    await host.addSheet(page, true);
    const [bars, ...more] = fake.sheet("Quote")!.charts;
    expect(more).toEqual([]);
    expect(bars).toMatchObject({
      title: "Minutes",
      legend: false,
      fromTop: true,
      values: { row: 2, column: 2, rows: 2, columns: 1 },
      names: { row: 2, column: 1, rows: 2, columns: 1 },
    });
    expect(bars!.at!.column).toBeGreaterThan(page.headings.length - 1);
  });

  it("keeps the numbers and the bars where the page cannot be set up, as without a printer", async () => {
    fake.printerless = true;
    const warn = vi.spyOn(console, "warn").mockImplementation(() => {});
    await host.addSheet(page, true);
    expect(warn).toHaveBeenCalledOnce();
    warn.mockRestore();
    const made = fake.sheet("Quote")!;
    expect(made.cells.get("2,2")?.value).toBe(7.5);
    expect(made.charts).toHaveLength(1);
    expect(made.page).toEqual({});
  });

  it("hears of other people's changes and not of its own, in every version", async () => {
    vi.useFakeTimers({ toFake: ["Date"], now: 0 });
    for (const version of ["1.17", "1.9"]) {
      fake.version = version;
      let told = 0;
      const stop = host.onDataChange(() => told++);
      await settle();
      const table = (await host.readTable(score))!;
      await host.writeCells(table, [{ row: 0, column: 2, value: 7 }]);
      await settle();
      expect(told).toBe(0);
      fake.changed("remote");
      await settle();
      expect(told).toBe(1);
      // An older host does not say who changed a cell: what comes later than this is not its own.
      vi.setSystemTime(Date.now() + 401);
      fake.changed("user");
      await settle();
      expect(told).toBe(2);
      stop();
      await settle();
      expect(fake.listeners.changed.size).toBe(0);
    }
  });

  it("needs no more than the version it declares", async () => {
    fake.version = "1.9";
    expect(await excelReady()).toBe(true);
    const table = (await host.readTable(score))!;
    await host.writeCells(table, [{ row: 0, column: 2, value: 7 }]);
    await host.addSheet({ name: "Machines", headings: ["Machine", "Max rpm"], rows: [["Mill A", 12000]] });
    await host.appendRows((await host.readList("Machines"))!, [["Mill B", 9000]]);
    await host.insertFormula({ sheet: "Job", row: 20, column: 0 }, "=1", [1, 1]);
    await host.select({ sheet: "Machines", row: 1, column: 0 });
    expect(fake.runs.some((options) => "mergeUndoGroup" in options)).toBe(false);
    fake.version = "1.8";
    expect(await excelReady()).toBe(false);
  });

  it("asks for one step of undo where the version has it", async () => {
    fake.version = "1.20";
    const table = (await host.readTable(score))!;
    await host.writeCells(table, [{ row: 0, column: 2, value: 7 }]);
    expect(fake.runs.at(-1)).toMatchObject({ mergeUndoGroup: true, delayForCellEdit: true });
  });

  it("takes an Office theme that is not there as a light one", () => {
    expect(officeIsDark()).toBe(false);
    (globalThis as any).Office.context.officeTheme = { bodyBackgroundColor: "#262626" };
    expect(officeIsDark()).toBe(true);
    (globalThis as any).Office.context.officeTheme = { bodyBackgroundColor: "#FFFFFF" };
    expect(officeIsDark()).toBe(false);
  });

  it("finds a table that does not begin at A1", async () => {
    fake.addSheet("Far", []);
    const far = fake.sheet("Far")!;
    [
      ["Op", "Operation"],
      [10, "drill"],
    ].forEach((row, r) => {
      row.forEach((value, c) => {
        far.cells.set(`${r + 9},${c + 4}`, { value });
      });
    });
    fake.active = fake.sheets.length - 1;
    fake.cursor = { row: 10, column: 5 };
    expect(await host.readTable(score)).toMatchObject({
      top: 9,
      left: 4,
      selected: 0,
      address: "Far E10:F11",
      reference: "Far!$E$10:$F$11",
    });
  });
});

describe("changes gathered into rectangles", () => {
  it("writes neighbouring cells together and skips what is between", () => {
    const changes = [
      { row: 0, column: 2, value: 1 },
      { row: 1, column: 2, value: 2 },
      { row: 0, column: 3, value: 3 },
      { row: 1, column: 3, value: 4 },
      { row: 3, column: 2, value: 5 },
      { row: 0, column: 6, value: 6 },
    ];
    expect(rectangles(changes).map(({ row, column, cells }) => [row, column, cells])).toEqual([
      [
        0,
        2,
        [
          [1, 3],
          [2, 4],
        ],
      ],
      [3, 2, [[5]]],
      [0, 6, [[6]]],
    ]);
  });

  it("lets the last of two changes of one cell stand", () => {
    const changes = [
      { row: 0, column: 0, value: "first" },
      { row: 0, column: 0, value: "second" },
    ];
    expect(rectangles(changes)).toMatchObject([{ row: 0, column: 0, cells: [["second"]] }]);
  });
});
