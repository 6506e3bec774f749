/** What every host has to do, run against each of them. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { CellValue, Host, HostError } from "../../taskpane/host/host.ts";

/** The workbook from the user's side, past the host under test. */
export interface Probe {
  /** Types a value or a formula ("=…") into a cell. */
  type(sheet: string, row: number, column: number, content: CellValue): Promise<void>;
  value(sheet: string, row: number, column: number): Promise<CellValue>;
  /** "=…" or "". */
  formula(sheet: string, row: number, column: number): Promise<string>;
  format(sheet: string, row: number, column: number): Promise<string>;
  select(sheet: string, row: number, column: number): Promise<void>;
  activeSheet(): Promise<string>;
  sheets(): Promise<string[]>;
  /** Undoes one step; undefined where the program, not the host, keeps the steps. */
  undo?: () => Promise<void>;
  /** Waits until events and calculations are through. */
  settle(): Promise<void>;
}

export interface Bench {
  readonly host: Host;
  readonly probe: Probe;
  close(): Promise<void>;
}

/** Sheets to start with, cells from A1. The first one is active. */
export type Sheets = Readonly<Record<string, readonly (readonly CellValue[])[]>>;

export const SHEETS: Sheets = {
  Job: [
    ["Harrow Lane Machine Works", null, null, null, null],
    [null, null, null, null, null],
    ["Op", "Operation", "Dia", "Depth", "Note"],
    [10, "drill", 6.8, 20, "=not a formula"],
    [20, "thread mill", 8, null, null],
    [null, null, null, null, null],
    [30, "bore", 24, 12, true],
  ],
  Materials: [
    ["Material", "Group"],
    ["Steel 42", "P"],
    ["Aluminium 6", "N"],
  ],
  Empty: [],
};

const score = (headings: readonly CellValue[]) => (headings.includes("Operation") ? headings.length : 0);

const codeOf = async (work: Promise<unknown>): Promise<string> => {
  try {
    await work;
    return "none";
  } catch (problem) {
    // By name: a bundled host brings its own copy of the class.
    return (problem as HostError).name === "HostError"
      ? (problem as HostError).code
      : `another error: ${String(problem)}`;
  }
};

export function contract(name: string, open: (sheets: Sheets) => Promise<Bench>): void {
  describe(`${name} host (contract)`, () => {
    let bench: Bench;
    let host: Host;
    let probe: Probe;
    beforeEach(async () => {
      bench = await open(SHEETS);
      ({ host, probe } = bench);
    });
    afterEach(() => bench.close());

    it("reads the planning table below a title, over a blank row, with raw values", async () => {
      const table = await host.readTable(score);
      expect(table).toMatchObject({
        sheet: "Job",
        top: 2,
        left: 0,
        headings: ["Op", "Operation", "Dia", "Depth", "Note"],
      });
      expect(table!.rows).toEqual([
        [10, "drill", 6.8, 20, "=not a formula"],
        [20, "thread mill", 8, null, null],
        [null, null, null, null, null],
        [30, "bore", 24, 12, true],
      ]);
      expect(table!.address).toBe("Job A3:E7");
    });

    it("says which row of the table is selected, and null on its headings", async () => {
      await probe.select("Job", 4, 1);
      expect((await host.readTable(score))!.selected).toBe(1);
      await probe.select("Job", 2, 1);
      expect((await host.readTable(score))!.selected).toBeNull();
    });

    it("reads rows again without the table, as they are now, and says when that will not do", async () => {
      await probe.select("Job", 3, 1);
      const table = (await host.readTable(score))!;
      await probe.type("Job", 4, 2, 8.5);
      await probe.type("Job", 6, 2, 25);
      await probe.select("Job", 4, 3);
      const again = (await host.readRows(table, [3]))!;
      expect(again.selected).toBe(1);
      expect(again.rows.get(1)).toEqual([20, "thread mill", 8.5, null, null]);
      expect(again.rows.get(3)).toEqual([30, "bore", 25, 12, true]);
      await probe.select("Job", 2, 3);
      expect((await host.readRows(table, []))?.selected).toBeNull();
      await probe.type("Job", 2, 2, "Length");
      expect(await host.readRows(table, [])).toBeNull();
      await probe.select("Materials", 1, 0);
      expect(await host.readRows(table, [])).toBeNull();
    });

    it("reads table, block beside it and lists in one go, and only what is wanted", async () => {
      const all = await host.read({ table: score, beside: () => 0, lists: ["Materials", "Machines"] });
      expect(all).toMatchObject({ sheet: "Job", table: { address: "Job A3:E7" }, beside: null });
      expect(all.lists!.map((list) => list?.rows.length)).toEqual([2, undefined]);
      expect(await host.read({ lists: ["Materials"] })).toEqual({ lists: [all.lists![0]] });
      expect(Object.keys(await host.read({ table: score }))).not.toContain("lists");
    });

    it("finds no planning table on a sheet without one", async () => {
      await probe.select("Materials", 1, 0);
      expect(await host.readTable(score)).toBeNull();
      await probe.select("Empty", 0, 0);
      expect(await host.readTable(score)).toBeNull();
    });

    it("reads a list by its name without regard to case, and null without it", async () => {
      const list = await host.readList("materials");
      expect(list).toMatchObject({
        headings: ["Material", "Group"],
        rows: [
          ["Steel 42", "P"],
          ["Aluminium 6", "N"],
        ],
      });
      expect(list!.reference).toMatch(/^(?:Materials!\$A\$1:\$B\$3|[A-Za-z_]\w*\[#All\])$/);
      expect(await host.readList("Machines")).toBeNull();
    });

    it("writes only the cells it is told to, with their formats", async () => {
      const table = (await host.readTable(score))!;
      await host.writeCells(
        table,
        [
          { row: 0, column: 2, value: 6.9, format: "0.000" },
          { row: 3, column: 3, value: null },
          { row: -1, column: 5, value: "Verdict" },
          { row: 1, column: 5, value: "check" },
        ],
        { filled: new Set([3]) },
      );
      await probe.settle();
      expect(await probe.value("Job", 3, 2)).toBe(6.9);
      expect(await probe.format("Job", 3, 2)).toBe("0.000");
      expect(await probe.value("Job", 6, 3)).toBeNull();
      expect(await probe.value("Job", 2, 5)).toBe("Verdict");
      expect(await probe.value("Job", 4, 5)).toBe("check");
      expect(await probe.value("Job", 3, 3)).toBe(20);
      expect(await probe.value("Job", 6, 2)).toBe(24);
    });

    it("keeps text that begins with an equals sign as text, and writes a formula as a formula", async () => {
      const table = (await host.readTable(score))!;
      await host.writeCells(table, [
        { row: 0, column: 4, value: "=1+1" },
        { row: 1, column: 4, value: { formula: "=C4*2" } },
        { row: 3, column: 4, value: "12.70" },
      ]);
      await probe.settle();
      expect(await probe.formula("Job", 3, 4)).toBe("");
      expect(await probe.value("Job", 3, 4)).toBe("=1+1");
      expect(await probe.formula("Job", 4, 4)).toBe("=C4*2");
      expect(await probe.value("Job", 6, 4)).toBe("12.70");
    });

    it("undoes all cells of one write in one step", async ({ skip }) => {
      if (!probe.undo) return skip();
      const table = (await host.readTable(score))!;
      await host.writeCells(table, [
        { row: 0, column: 2, value: 7 },
        { row: 3, column: 2, value: 25 },
      ]);
      await probe.undo();
      await probe.settle();
      expect(await probe.value("Job", 3, 2)).toBe(6.8);
      expect(await probe.value("Job", 6, 2)).toBe(24);
    });

    it("refuses to write into a table that is no longer where it was", async () => {
      const table = (await host.readTable(score))!;
      await probe.type("Job", 2, 2, "Length");
      expect(await codeOf(host.writeCells(table, [{ row: 0, column: 2, value: 7 }]))).toBe("gone");
      expect(await probe.value("Job", 3, 2)).toBe(6.8);
    });

    it("refuses to write over something beside the table", async () => {
      const table = (await host.readTable(score))!;
      await probe.type("Job", 3, 6, "keep me");
      const changes = [
        { row: -1, column: 6, value: "Verdict" },
        { row: 0, column: 6, value: "ok" },
      ];
      expect(await codeOf(host.writeCells(table, changes))).toBe("occupied");
      expect(await probe.value("Job", 3, 6)).toBe("keep me");
      expect(await probe.value("Job", 2, 6)).toBeNull();
    });

    it("takes a formula beside the table for something, though it shows nothing", async () => {
      const table = (await host.readTable(score))!;
      await probe.type("Job", 3, 6, '=IF(1=1,"","")');
      expect(await codeOf(host.writeCells(table, [{ row: 0, column: 6, value: "ok" }]))).toBe("occupied");
      expect(await codeOf(host.insertCells({ sheet: "Job", row: 3, column: 6 }, [["ok"]]))).toBe("occupied");
      expect(await codeOf(host.insertFormula({ sheet: "Job", row: 2, column: 6 }, "=1", [2, 1]))).toBe("occupied");
      expect(await probe.formula("Job", 3, 6)).toBe('=IF(1=1,"","")');
      expect(await codeOf(host.writeCells(table, [{ row: 1, column: 6, value: "ok" }]))).toBe("none");
    });

    const formula = { what: "formula", column: 3, heading: "Depth", cells: 1 } as const;
    it("asks before a formula in the table is replaced, and replaces numbers without asking", async () => {
      await probe.type("Job", 3, 3, "=C4*3");
      const table = (await host.readTable(score))!;
      const changes = [
        { row: 0, column: 2, value: 7 },
        { row: 0, column: 3, value: 21 },
      ];
      expect(await codeOf(host.writeCells(table, changes))).toBe("asks");
      expect(await host.writeCells(table, changes).catch((problem) => problem.losses)).toEqual([formula]);
      expect([await probe.value("Job", 3, 2), await probe.formula("Job", 3, 3)]).toEqual([6.8, "=C4*3"]);
      // A no for the column: the rest is written.
      await host.writeCells(table, changes, { kept: [formula] });
      await probe.settle();
      expect([await probe.value("Job", 3, 2), await probe.formula("Job", 3, 3)]).toEqual([7, "=C4*3"]);
      await host.writeCells(table, changes, { agreed: [formula] });
      await probe.settle();
      expect([await probe.value("Job", 3, 3), await probe.formula("Job", 3, 3)]).toEqual([21, ""]);
    });

    it("does not ask for formulas of its own", async () => {
      await probe.type("Job", 3, 3, "=C4*3");
      const table = (await host.readTable(score))!;
      await host.writeCells(table, [{ row: 0, column: 3, value: 21 }], { ours: (text) => text === "=C4*3" });
      await probe.settle();
      expect(await probe.value("Job", 3, 3)).toBe(21);
    });

    it("asks before a value is blanked, but not in a row that an earlier fill wrote", async () => {
      const table = (await host.readTable(score))!;
      const changes = [
        { row: 0, column: 3, value: null },
        { row: 1, column: 3, value: null },
      ];
      expect(await host.writeCells(table, changes).catch((problem) => problem.losses)).toEqual([
        { what: "value", column: 3, heading: "Depth", cells: 1 },
      ]);
      expect(await probe.value("Job", 3, 3)).toBe(20);
      await host.writeCells(table, changes, { filled: new Set([0]) });
      await probe.settle();
      expect(await probe.value("Job", 3, 3)).toBeNull();
    });

    it("writes nothing when a cell that was planned from has changed, and looks at these cells alone", async () => {
      const table = (await host.readTable(score))!;
      const same = { block: table, columns: [1, 2, 3] };
      const changes = [{ row: 0, column: 4, value: "ok" }];
      await probe.type("Job", 4, 2, 9);
      expect(await codeOf(host.writeCells(table, changes, { same }))).toBe("changed");
      expect(await codeOf(host.appendRows(table, [[40, "drill", 3, null, null]], 0, same))).toBe("changed");
      expect([await probe.value("Job", 3, 4), await probe.value("Job", 7, 0)]).toEqual(["=not a formula", null]);
      expect(await codeOf(host.writeCells(table, changes, { same: { ...same, rows: [0] } }))).toBe("none");
      expect(await codeOf(host.writeCells(table, changes, { same: { ...same, columns: [1, 3] } }))).toBe("none");
    });

    it("writes over a block of an earlier fill beside the table, and not beyond it", async () => {
      const table = (await host.readTable(score))!;
      const beside = [
        ["Row", "Verdict"],
        [10, "ok"],
      ];
      await host.insertCells({ sheet: "Job", row: 2, column: 6 }, beside);
      await probe.type("Job", 4, 7, "mine");
      const over = { ...table, left: 6, headings: beside[0]!, rows: [beside[1]!] };
      const first = { row: 0, column: 7, value: "stop" };
      expect(await codeOf(host.writeCells(table, [first, { row: 1, column: 7, value: "ok" }], { over }))).toBe(
        "occupied",
      );
      expect(await codeOf(host.writeCells(table, [first]))).toBe("occupied");
      await host.writeCells(table, [first], { over });
      await probe.settle();
      expect([await probe.value("Job", 3, 7), await probe.value("Job", 4, 7)]).toEqual(["stop", "mine"]);
    });

    it("inserts a formula into a free place, and refuses an occupied one", async () => {
      await host.insertFormula({ sheet: "Job", row: 2, column: 6 }, "=SUM(C4:C7)", [2, 2]);
      await probe.settle();
      expect(await probe.formula("Job", 2, 6)).toBe("=SUM(C4:C7)");
      expect(await codeOf(host.insertFormula({ sheet: "Job", row: 1, column: 3 }, "=1", [2, 2]))).toBe("occupied");
      expect(await probe.formula("Job", 1, 3)).toBe("");
    });

    it("gives the cells that a formula will fill their number formats, and writes nothing into them", async () => {
      await host.insertFormula({ sheet: "Job", row: 2, column: 6 }, "=SUM(C4:C7)", [3, 3], [undefined, "0.000", "0"]);
      await probe.settle();
      // Hosts say "General" or "" for a cell without a format of its own.
      const format = async (row: number, column: number) =>
        (await probe.format("Job", row, column)).replace("General", "");
      expect(await Promise.all([2, 3, 4, 5].map((row) => format(row, 7)))).toEqual(["", "0.000", "0.000", ""]);
      expect(await format(4, 8)).toBe("0");
      expect(await format(3, 6)).toBe("");
      expect(await probe.value("Job", 3, 7)).toBeNull();
      expect(await probe.formula("Job", 2, 6)).toBe("=SUM(C4:C7)");
    });

    it("inserts a block of cells into a free place, and refuses an occupied one", async () => {
      const cells = [
        ["Step", "Value"],
        ["n", { formula: "=C4*1000" }],
      ];
      await host.insertCells({ sheet: "Job", row: 9, column: 0 }, cells, [undefined, "0.0"]);
      await probe.settle();
      expect(await probe.value("Job", 9, 1)).toBe("Value");
      expect(await probe.formula("Job", 10, 1)).toBe("=C4*1000");
      expect(await codeOf(host.insertCells({ sheet: "Job", row: 10, column: 0 }, cells))).toBe("occupied");
    });

    it("adds a sheet with a list that can be read back, stays where it was, and refuses the name twice", async () => {
      const sheet = {
        name: "Machines",
        headings: ["Machine", "Max rpm"],
        rows: [
          ["Mill A", 12000],
          ["Mill B", null],
        ],
        formats: [undefined, "0"],
        choices: [undefined, ["8000", "12000"]],
      } as const;
      await host.addSheet(sheet);
      await probe.settle();
      expect(await probe.sheets()).toContain("Machines");
      expect(await probe.activeSheet()).toBe("Job");
      expect(await host.readList("Machines")).toMatchObject({
        headings: ["Machine", "Max rpm"],
        rows: [
          ["Mill A", 12000],
          ["Mill B", null],
        ],
      });
      expect(await codeOf(host.addSheet(sheet))).toBe("occupied");
    });

    it("adds rows under a list", async () => {
      const list = (await host.readList("Materials"))!;
      await host.appendRows(list, [["Brass 3", "N"]]);
      await probe.settle();
      expect((await host.readList("Materials"))!.rows.at(-1)).toEqual(["Brass 3", "N"]);
    });

    it("adds rows under the planning table, and leaves what is beside it alone", async () => {
      const table = (await host.readTable(score))!;
      await probe.type("Job", 7, 6, "beside");
      await host.appendRows(table, [
        [40, "drill", 3.3, null, "M4"],
        [50, null, null, null, "=not read"],
      ]);
      await probe.settle();
      expect((await host.readTable(score))!.rows.slice(4)).toEqual([
        [40, "drill", 3.3, null, "M4"],
        [50, null, null, null, "=not read"],
      ]);
      expect(await probe.value("Job", 7, 6)).toBe("beside");
    });

    it("adds no row when there is something below the table, and writes nothing at all", async () => {
      const table = (await host.readTable(score))!;
      await probe.type("Job", 8, 3, "keep me");
      const rows = [
        [40, "drill", null, null, null],
        [50, "drill", null, null, null],
      ];
      expect(await codeOf(host.appendRows(table, rows))).toBe("occupied");
      expect(await probe.value("Job", 7, 0)).toBeNull();
      expect(await probe.value("Job", 8, 3)).toBe("keep me");
    });

    it("fills spare rows of the table first, keeps what is in them, and refuses a cell that is taken", async () => {
      await probe.type("Job", 7, 0, 40);
      await probe.type("Job", 8, 0, 50);
      const table = (await host.readTable(score))!;
      const rows = [
        [null, "drill", 3.3, null, null],
        [null, "bore", 20, null, null],
        [60, "face", null, null, null],
      ];
      await host.appendRows(table, rows, 2);
      await probe.settle();
      const after = (await host.readTable(score))!;
      expect(after.rows.slice(4)).toEqual([
        [40, "drill", 3.3, null, null],
        [50, "bore", 20, null, null],
        [60, "face", null, null, null],
      ]);
      expect(await codeOf(host.appendRows(after, [[null, null, 9, null, null]], 1))).toBe("none");
      expect(await codeOf(host.appendRows(after, [[null, "drill", null, null, null]], 1))).toBe("occupied");
    });

    it("makes the live formulas beside the table long enough for new rows", async () => {
      await host.insertFormula({ sheet: "Job", row: 2, column: 6 }, "=SUM($A$3:$E$7,Materials!$A$3:$B$7)", [1, 1]);
      await probe.settle();
      const table = (await host.readTable(score))!;
      await host.appendRows(table, [
        [40, "drill", null, null, null],
        [50, "drill", null, null, null],
      ]);
      await probe.settle();
      expect(await probe.formula("Job", 2, 6)).toBe("=SUM($A$3:$E$9,Materials!$A$3:$B$7)");
    });

    it("undoes added rows and the longer formula in one step", async ({ skip }) => {
      if (!probe.undo) return skip();
      await host.insertFormula({ sheet: "Job", row: 2, column: 6 }, "=SUM($A$3:$E$7)", [1, 1]);
      await probe.settle();
      await host.appendRows((await host.readTable(score))!, [[40, "drill", 3.3, null, null]]);
      await probe.settle();
      await probe.undo();
      await probe.settle();
      expect(await probe.value("Job", 7, 0)).toBeNull();
      expect(await probe.value("Job", 7, 2)).toBeNull();
      expect(await probe.formula("Job", 2, 6)).toBe("=SUM($A$3:$E$7)");
      expect(await probe.value("Job", 6, 2)).toBe(24);
    });

    it("tells when the selection moves, until it is told to stop", async () => {
      let told = 0;
      const stop = host.onSelectionChange(() => told++);
      await probe.settle();
      await probe.select("Job", 3, 1);
      await probe.settle();
      expect(told).toBeGreaterThan(0);
      stop();
      const before = told;
      await probe.select("Job", 6, 1);
      await probe.settle();
      expect(told).toBe(before);
    });

    it("tells when the user changes a cell, but not of its own writing", async () => {
      const table = (await host.readTable(score))!;
      await probe.settle();
      let told = 0;
      const stop = host.onDataChange(() => told++);
      await host.writeCells(table, [{ row: 0, column: 2, value: 7 }]);
      await probe.settle();
      expect(told).toBe(0);
      await probe.type("Job", 3, 2, 7.5);
      await probe.settle();
      expect(told).toBeGreaterThan(0);
      stop();
    });

    it("keeps texts in the workbook beside its cells, and reads them in the same read as the table", async () => {
      expect(await host.read({ settings: true })).toMatchObject({ settings: {} });
      const long = `{"Ø fertig":"in:finishDiameter","送り":"out:tableFeed"} & <x> ${"abc ".repeat(400)}`;
      await host.keep("headings", long);
      await host.keep("other", "x");
      expect(await host.read({ table: score, settings: true })).toMatchObject({
        table: { sheet: "Job" },
        settings: { headings: long, other: "x" },
      });
      await host.keep("headings", "y");
      await host.keep("other", null);
      await host.keep("never", null);
      expect((await host.read({ settings: true })).settings).toEqual({ headings: "y" });
      // What was not asked for is not read.
      expect((await host.read({ table: score })).settings).toBeUndefined();
      expect(await probe.value("Job", 3, 1)).toBe("drill");
    });

    it("reads the row of the selection, wherever it is", async () => {
      await probe.select("Job", 2, 3);
      const { line } = await host.read({ line: true });
      expect(line!.filter((cell) => cell !== null)).toEqual(["Op", "Operation", "Dia", "Depth", "Note"]);
      await probe.select("Job", 1, 0);
      expect((await host.read({ line: true })).line!.filter((cell) => cell !== null)).toEqual([]);
    });

    it("goes to a cell on another sheet", async () => {
      await host.select({ sheet: "Materials", row: 2, column: 1 });
      await probe.settle();
      expect(await probe.activeSheet()).toBe("Materials");
    });
  });
}
